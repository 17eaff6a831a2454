package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.junit.jupiter.api.Test;

class SparseSystemTest {

  /** A grid of 6 × 6 with conductances over six powers of ten, against a dense factorisation with exchange of rows. */
  @Test
  void it_agrees_with_a_dense_solution() {
    int side = 6;
    int n = side * side;
    int[] one = new int[2 * side * (side - 1)];
    int[] other = new int[one.length];
    int count = 0;
    for (int i = 0; i < n; i++) {
      if (i % side < side - 1) {
        one[count] = i;
        other[count++] = i + 1;
      }
      if (i < n - side) {
        one[count] = i;
        other[count++] = i + side;
      }
    }
    Random random = new Random(7);
    EliminationOrder order = new EliminationOrder(n, one, other);
    SparseSystem system = new SparseSystem(order);
    double[][] dense = new double[n][n];
    for (int k = 0; k < count; k++) {
      double forth = Math.pow(10.0, 6.0 * random.nextDouble() - 3.0);
      double back = forth * (1.0 + random.nextDouble());
      system.couple(order.place(one[k], other[k]), -forth);
      system.couple(order.place(other[k], one[k]), -back);
      dense[one[k]][other[k]] = -forth;
      dense[other[k]][other[k]] += forth;
      dense[other[k]][one[k]] = -back;
      dense[one[k]][one[k]] += back;
    }
    double[] right = new double[n];
    for (int i = 0; i < n; i++) {
      double held = i % 5 == 0 ? random.nextDouble() : 0.0;
      system.hold(i, held);
      dense[i][i] += held;
      right[i] = random.nextDouble() - 0.5;
    }
    double[] reference = new LUDecomposition(new Array2DRowRealMatrix(dense))
        .getSolver()
        .solve(new ArrayRealVector(right))
        .toArray();
    system.solve(right);
    for (int i = 0; i < n; i++) {
      assertThat(right[i])
          .isCloseTo(reference[i], within(1.0e-10 * (1.0 + Math.abs(reference[i]))));
    }
  }

  /**
   * A chain of conductances 1 and 1e-20 held at one end by 1: all the flow put in at the other end goes through, and
   * the pressures add up.
   */
  @Test
  void it_keeps_its_digits_over_twenty_powers_of_ten() {
    EliminationOrder order = new EliminationOrder(3, new int[] {0, 1}, new int[] {1, 2});
    SparseSystem system = new SparseSystem(order);
    double[] conductance = {1.0, 1.0e-20};
    for (int i = 0; i < 2; i++) {
      system.couple(order.place(i, i + 1), -conductance[i]);
      system.couple(order.place(i + 1, i), -conductance[i]);
    }
    system.hold(0, 1.0);
    double[] right = {0.0, 0.0, 1.0};
    system.solve(right);
    assertThat(right[0]).isCloseTo(1.0, within(1.0e-15));
    assertThat(right[1]).isCloseTo(2.0, within(1.0e-15));
    assertThat(right[2]).isCloseTo(1.0e20, within(1.0e5));
    system.clear();
    system.hold(0, 1.0);
    system.hold(1, 2.0);
    system.hold(2, 4.0);
    double[] alone = {1.0, 1.0, 1.0};
    system.solve(alone);
    assertThat(alone).containsExactly(1.0, 0.5, 0.25);
  }

  @Test
  void unknowns_that_were_not_paired_cannot_be_coupled() {
    EliminationOrder order = new EliminationOrder(3, new int[] {0, -1}, new int[] {1, 2});
    assertThatIllegalArgumentException()
        .isThrownBy(() -> order.place(0, 2))
        .withMessageContaining("was 0, 2");
  }
}
