package org.airfit.safety;

import java.util.Arrays;
import java.util.stream.Collectors;

/** How a rule holds a quantity against its limit: what it allows, or from where on it asks for something. */
enum RuleOperator {
  BELOW("<", "less than", "below"),
  AT_MOST("<=", "at most", "up to"),
  ABOVE(">", "more than", "above"),
  FROM(">=", "at least", "from");

  /**
   * Two numbers that differ by less than this part are one [-]: a gauge pressure found as a difference of two absolute
   * ones is that much off the number somebody typed. Our own choice.
   */
  private static final double ROUNDING = 1.0e-13;

  private final String sign;
  private final String allowed;
  private final String askedFor;

  RuleOperator(String sign, String allowed, String askedFor) {
    this.sign = sign;
    this.allowed = allowed;
    this.askedFor = askedFor;
  }

  /** Such as "at most", before a limit that must be kept. */
  String allowed() {
    return allowed;
  }

  /** Such as "above", before a limit beyond which something is asked for. */
  String askedFor() {
    return askedFor;
  }

  /**
   * Of two printed values that are one limit, the one that decides: whatever the text says of its own number is so at
   * both.
   */
  double deciding(double one, double other) {
    return this == AT_MOST || this == ABOVE ? Math.max(one, other) : Math.min(one, other);
  }

  /** Whether two numbers are one but for rounding. */
  static boolean isSame(double one, double other) {
    return Math.abs(one - other) <= ROUNDING * Math.max(Math.abs(one), Math.abs(other));
  }

  boolean holds(double value, double limit) {
    boolean same = isSame(value, limit);
    return switch (this) {
      case BELOW -> value < limit && !same;
      case AT_MOST -> value < limit || same;
      case ABOVE -> value > limit && !same;
      case FROM -> value > limit || same;
    };
  }

  static RuleOperator parse(String text) {
    for (RuleOperator operator : values()) {
      if (operator.sign.equals(text.strip())) {
        return operator;
      }
    }
    throw new IllegalArgumentException("was \"" + text + "\"; accepted: "
        + Arrays.stream(values()).map(RuleOperator::toString).collect(Collectors.joining(", ")));
  }

  @Override
  public String toString() {
    return sign;
  }
}
