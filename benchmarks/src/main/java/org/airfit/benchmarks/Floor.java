package org.airfit.benchmarks;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/**
 * The least that an answer can take: how many logarithms, divisions and the like it needs, times what one of them costs in
 * the same call of the command. The counts come from the equations and from how many of their values an answer takes, not
 * from a profile; what is counted is named at each.
 */
final class Floor {

  /** A bare operation and the benchmark that times it. */
  enum Operation {
    /** A multiplication or an addition. */
    FLOP("multiplication or addition", "multiplications and additions", "multiplyOrAdd"),
    /** A division. */
    DIVISION("division", "divisions", "divide"),
    /** A square root. */
    ROOT("square root", "square roots", "root"),
    /** A logarithm. */
    LOGARITHM("logarithm", "logarithms", "logarithm"),
    /** An exponential. */
    EXPONENTIAL("exponential", "exponentials", "exponential"),
    /** A power. */
    POWER("power", "powers", "power"),
    /** A tail of the normal distribution. */
    NORMAL_TAIL(
        "tail of the normal distribution", "tails of the normal distribution", "normalTail"),
    /** A tail of Student's distribution. */
    STUDENT_TAIL(
        "tail of Student's distribution", "tails of Student's distribution", "studentTail"),
    /** A load that the caches of a core do not hold. */
    LOAD("load from 8 MB", "loads from 8 MB", "load");

    private final String one;
    private final String many;
    private final String benchmark;

    Operation(String one, String many, String benchmark) {
      this.one = one;
      this.many = many;
      this.benchmark = "FloorBenchmark." + benchmark;
    }

    /** {@return the benchmark that times it} */
    String benchmark() {
      return benchmark;
    }

    /** {@return its name} */
    String called() {
      return one;
    }

    private String counted(double count) {
      return Performance.count(count) + " " + (count == 1.0 ? one : many);
    }
  }

  /** One true logarithm, and the divisions R/y, 1/(y + c) and 1/x². */
  static final Floor COLEBROOK = none().with(1, Operation.LOGARITHM).with(3, Operation.DIVISION);

  /**
   * Of a pipe: its friction factor; divisions for Re, for a = G² R T/p² and for the step; the logarithm of the pressures,
   * the root for the pressure from its square. What hangs on the pipe alone, such as L/D, is divided once for all.
   */
  private static final Floor PIPE = none()
      .with(1, COLEBROOK)
      .with(1, Operation.LOGARITHM)
      .with(3, Operation.DIVISION)
      .with(1, Operation.ROOT);

  /** With Sutherland's viscosity: a root and a division. */
  static final Floor OUTLET =
      none().with(1, PIPE).with(1, Operation.ROOT).with(1, Operation.DIVISION);

  /** Two pipes, and two parts after ISO 6358 with a root each. */
  static final Floor RUN = none().with(2, PIPE).with(2, Operation.ROOT);

  /** Forward runs of a search: two flows that hold what is looked for, two that hold it to fourteen digits, the answer. */
  static final double RUNS_OF_SEARCH = 5.0;

  private static final int READINGS = 5;
  private static final int PROFILES = 20;

  /** Of two profiles, that of the plug and its twin, as near copies: at nine steps of the caliper's error each. */
  private static final int COPIES = 2 * 9 * READINGS;

  /** By each part a look at what it is: itself, its facts, its rating, its two temperatures, its price, its two ends. */
  static final Floor CHOICE = none().with(8 * 10_000, Operation.LOAD);

  /** By the definition of the bar. */
  static final Floor BAR_TO_PASCALS = none().with(1, Operation.FLOP);

  /**
   * The nearest double to the product with a fraction: the product, the halves of the number, what the product rounds
   * off, the second part of the factor, and the test that the rounding is sure.
   */
  static final Floor PSI_TO_PASCALS = none().with(20, Operation.FLOP);

  static final Floor PSI_TO_BAR = none().with(1, PSI_TO_PASCALS).with(1, Operation.DIVISION);

  /**
   * Looks at all laws of a network: five Newton steps, whose errors are a tenth, its square and so on to the last digit of a
   * double, and the look at what they led to.
   */
  private static final int LOOKS = 6;

  private final EnumMap<Operation, Double> counts = new EnumMap<>(Operation.class);

  /**
   * Of a plug. One integral over the error of the caliper for its profile, by as many steps as 10⁻⁹ of it ask for; near
   * copies, in which each size is the same or changed, an exponential for the change.
   *
   * @param kind how the set says that parts vary
   * @param worn whether wear is allowed for
   */
  static Floor ofPlug(String kind, boolean worn) {
    Floor changed = none().with(COPIES, Operation.EXPONENTIAL);
    return switch (kind) {
      // weights of all readings for all profiles; the bells of near copies by ratios, four
      // exponentials for each; worn, a density is a share between two tails
      case "DEVIATION" ->
        worn
            ? changed.with(2 * (18 * READINGS + COPIES), Operation.NORMAL_TAIL)
            : none()
                .with(PROFILES * READINGS, Operation.DIVISION)
                .with(4 * 2 * READINGS, Operation.EXPONENTIAL);
      // two tails for each density; worn, four
      case "LIMITS" ->
        changed.with((worn ? 4 : 2) * (35 * READINGS + COPIES), Operation.NORMAL_TAIL);
      // a logarithm and an exponential for all readings of a step, and for each size of a copy;
      // worn, ten for each density; a tail of Student's for each misfit
      case "PIECES" -> {
        double densities = worn ? 10 * (18 * READINGS + COPIES) : 18 + COPIES;
        yield changed
            .with(densities, Operation.LOGARITHM)
            .with(densities, Operation.EXPONENTIAL)
            .with(READINGS, Operation.STUDENT_TAIL);
      }
      default -> throw new IllegalArgumentException("kind of a set was " + kind);
    };
  }

  /**
   * Of a network: for each tool a piece of the main and a coupling, whose slope takes a division, and two places whose
   * balance is eliminated, each by a division and two multiplications and additions.
   *
   * @param tools how many tools hang on it
   */
  static Floor ofNetwork(int tools) {
    return none()
        .with(LOOKS * tools, PIPE)
        .with(LOOKS * tools, Operation.DIVISION)
        .with(LOOKS * tools, Operation.ROOT)
        .with(LOOKS * 2 * tools, Operation.DIVISION)
        .with(LOOKS * 4 * tools, Operation.FLOP);
  }

  /** Nothing yet. */
  static Floor none() {
    return new Floor();
  }

  /** This with so many of an operation more. */
  Floor with(double count, Operation operation) {
    Floor more = none();
    more.counts.putAll(counts);
    more.counts.merge(operation, count, Double::sum);
    return more;
  }

  /** This with all of another, so many times. */
  Floor with(double times, Floor other) {
    Floor more = none();
    more.counts.putAll(counts);
    other.counts.forEach(
        (operation, count) -> more.counts.merge(operation, times * count, Double::sum));
    return more;
  }

  /** What it costs [ns]. */
  double nanoseconds(ToDoubleFunction<Operation> cost) {
    double sum = 0.0;
    for (Map.Entry<Operation, Double> entry : counts.entrySet()) {
      sum += entry.getValue() * cost.applyAsDouble(entry.getKey());
    }
    return sum;
  }

  /** {@return what is counted, such as "2 logarithms, 10 divisions"} */
  @Override
  public String toString() {
    return counts.entrySet().stream()
        .map(entry -> entry.getKey().counted(entry.getValue()))
        .collect(Collectors.joining(", "));
  }
}
