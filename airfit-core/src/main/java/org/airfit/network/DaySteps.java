package org.airfit.network;

/**
 * One step in time, by the linearly implicit method of Shampine and Reichelt, <cite>The MATLAB ODE suite</cite>, SIAM J.
 * Sci. Comput. 18 (1997) 1-22, section 3 (their formulas of order 2 with an error of order 3).
 *
 * <p>It is L-stable: two receivers whose pressures are nearly alike, which force an explicit method to steps of a
 * fraction of a second all night, cost it nothing. What is linear and constant, such as the sum of all masses, it keeps
 * to rounding; a pressure that changes in a straight line it follows in one step of any length. The estimate of the
 * error is damped as the steps are, which is our addition.
 */
final class DaySteps {

  private static final double D = 1.0 / (2.0 + Math.sqrt(2.0));
  private static final double E32 = 6.0 + Math.sqrt(2.0);

  /** The step for a difference, as a part of the value [-]. */
  private static final double NEAR = 1.0e-8;

  /** The energy of a step may be wrong by so much more than the masses: 1e-5 of it. */
  private static final double LESS = 0.01;

  private final DayFlows flows;
  private final int size;
  private final int dynamic;
  private final double[] begin; // changes at the beginning of the step
  private final double[] middle;
  private final double[] end;
  private final double[] k1;
  private final double[] k2;
  private final double[] k3;
  private final double[] probe;
  private final double[][] jacobian; // by number of the state, then by what feeds back
  private final double[][] matrix;

  DaySteps(DayFlows flows) {
    this.flows = flows;
    this.size = flows.size();
    this.dynamic = flows.dynamic;
    this.begin = new double[size];
    this.middle = new double[size];
    this.end = new double[size];
    this.k1 = new double[size];
    this.k2 = new double[size];
    this.k3 = new double[size];
    this.probe = new double[size];
    this.jacobian = new double[size][dynamic];
    this.matrix = new double[dynamic][dynamic];
  }

  /** Looks at the changes of a state and how they follow from it; the flows stand as that state has them. */
  void begin(double[] state) {
    flows.evaluate(state, begin);
    double[] beside = state.clone();
    for (int j = 0; j < dynamic; j++) {
      double step = NEAR * Math.max(state[j], 1.0e-9);
      beside[j] = state[j] + step;
      double wide = beside[j] - state[j];
      flows.evaluate(beside, probe);
      for (int i = 0; i < size; i++) {
        jacobian[i][j] = (probe[i] - begin[i]) / wide;
      }
      beside[j] = state[j];
      jacobian[flows.receivers - 1][j] = lastReceiver(j);
    }
    flows.evaluate(state, begin);
  }

  /**
   * What the last receiver gains by a change elsewhere: that which was made and which neither the others nor the users
   * take. A difference of its own would break the balance of mass by its rounding.
   */
  private double lastReceiver(int changed) {
    double gain = jacobian[flows.made()][changed];
    for (int i = 0; i < flows.receivers - 1; i++) {
      gain -= jacobian[i][changed];
    }
    for (int user = 0; user < flows.users; user++) {
      gain -= jacobian[flows.taken(user)][changed];
    }
    return gain;
  }

  /** How fast a number of the state changes where the step began. */
  double change(int number) {
    return begin[number];
  }

  /** How fast it changes where the step ended. */
  double changeAtEnd(int number) {
    return end[number];
  }

  /**
   * Takes a step.
   *
   * @param state the state that {@link #begin} looked at
   * @param h its length [s]
   * @param then the state behind it, which is filled; the flows stand as that has them
   * @return the error of the step over the masses, and a hundredth of that over the electric energy [-]; NaN or infinite where it leads nowhere
   */
  double step(double[] state, double h, double[] then) {
    solve(h, begin, k1);
    for (int i = 0; i < size; i++) {
      then[i] = state[i] + 0.5 * h * k1[i];
    }
    flows.evaluate(then, middle);
    for (int i = 0; i < size; i++) {
      probe[i] = middle[i] - k1[i];
    }
    solve(h, probe, k2);
    for (int i = 0; i < size; i++) {
      k2[i] += k1[i];
      then[i] = state[i] + h * k2[i];
    }
    flows.evaluate(then, end);
    for (int i = 0; i < size; i++) {
      probe[i] = end[i] - E32 * (k2[i] - middle[i]) - 2.0 * (k1[i] - begin[i]);
    }
    solve(h, probe, k3);
    for (int i = 0; i < size; i++) {
      probe[i] = (k1[i] - 2.0 * k2[i] + k3[i]) / 6.0;
    }
    solve(h, probe, k3); // what dies away within the step is no error of it
    double worst = 0.0;
    for (int i = 0; i < dynamic; i++) {
      double error = Math.abs(h * k3[i] / state[i]);
      worst = error <= worst ? worst : error; // NaN is the worst
      if (!(then[i] > 0.0)) {
        return Double.POSITIVE_INFINITY;
      }
    }
    for (int c = 0; c < flows.compressors; c++) {
      int i = flows.energy(c);
      if (begin[i] > 0.0) {
        double error = LESS * Math.abs(k3[i] / begin[i]);
        worst = error <= worst ? worst : error;
      }
    }
    return worst;
  }

  /** Solves (I − h d J) x = right. */
  private void solve(double h, double[] right, double[] x) {
    for (int i = 0; i < dynamic; i++) {
      for (int j = 0; j < dynamic; j++) {
        matrix[i][j] = (i == j ? 1.0 : 0.0) - h * D * jacobian[i][j];
      }
      x[i] = right[i];
    }
    for (int column = 0; column < dynamic; column++) {
      eliminate(column, x);
    }
    for (int i = dynamic - 1; i >= 0; i--) {
      double sum = x[i];
      for (int j = i + 1; j < dynamic; j++) {
        sum -= matrix[i][j] * x[j];
      }
      x[i] = sum / matrix[i][i];
    }
    for (int i = dynamic; i < size; i++) {
      double sum = right[i];
      for (int j = 0; j < dynamic; j++) {
        sum += h * D * jacobian[i][j] * x[j];
      }
      x[i] = sum;
    }
  }

  private void eliminate(int column, double[] x) {
    int best = column;
    for (int i = column + 1; i < dynamic; i++) {
      if (Math.abs(matrix[i][column]) > Math.abs(matrix[best][column])) {
        best = i;
      }
    }
    double[] row = matrix[best];
    matrix[best] = matrix[column];
    matrix[column] = row;
    double other = x[best];
    x[best] = x[column];
    x[column] = other;
    for (int i = column + 1; i < dynamic; i++) {
      double factor = matrix[i][column] / row[column];
      if (factor != 0.0) {
        for (int j = column; j < dynamic; j++) {
          matrix[i][j] -= factor * row[j];
        }
        x[i] -= factor * x[column];
      }
    }
  }
}
