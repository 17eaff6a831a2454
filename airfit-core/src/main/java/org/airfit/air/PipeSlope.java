package org.airfit.air;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * How a main falls to its drains, so that water in it runs there.
 *
 * <pre>
 *   h = s L
 * </pre>
 *
 * <p>h fall, s slope, L length. Where water runs against the air, NAVFAC MO-209, paragraph 4(f), asks for 6 in in 100
 * ft at least (0.5 %). Where it runs with the air no source that was read gives a figure; 1 % is common practice.
 * Sources do not agree on the direction: an Army manual lets mains fall back to the receiver, a tool manual away from
 * it to a leg at the far end; both drain. Drip legs stand at low points, at the foot of risers and every 200 to 300
 * ft (MO-209, paragraph 4(e)).
 *
 * @param length the length of the main, above 0
 * @param slope how much it falls in its length [-], in [0, 0.2]
 * @param isWithAir whether water runs the way of the air; else against it
 */
public record PipeSlope(Length length, double slope, boolean isWithAir) implements Worked {

  private static final Source AGAINST_AIR = Source.handbook(
      "NAVFAC MO-209, paragraph 4(f): pitched against the air, 6 in in 100 ft at least");

  private static final Source WITH_AIR =
      Source.commonPractice("mains fall 1 % or more in the direction of the air");

  private static final Source LEGS = Source.handbook(
      "NAVFAC MO-209, paragraph 4(e): drip legs at low points, at the foot of risers, every 200 to"
          + " 300 ft");

  private static final Source GEOMETRY = Source.derived("slope times length");

  private static final double LEAST_AGAINST = 0.005;
  private static final double LEAST_WITH = 0.01;
  private static final double STEEPEST = 0.2;
  private static final double NEAREST_LEGS = 200.0 * 0.3048;
  private static final double FARTHEST_LEGS = 300.0 * 0.3048;

  /** What a slope may miss by its last digit, such as 0.6 % of 0.006. */
  private static final double ROUNDING = 1.0e-12;

  private static final Symbol LENGTH = Symbol.of("L", ValueKind.LENGTH);
  private static final Symbol SLOPE = Symbol.of("s", ValueKind.NUMBER);
  private static final Symbol FALL = Symbol.of("h", ValueKind.LENGTH);
  private static final Formula FALLS =
      Formula.of("Fall of the main", "⟨h⟩ = ⟨s⟩ × ⟨L⟩", GEOMETRY, FALL, SLOPE, LENGTH);

  /**
   * Checks the components.
   *
   * @param length the length of the main, above 0
   * @param slope how much it falls in its length [-], in [0, 0.2]
   * @param isWithAir whether water runs the way of the air; else against it
   * @throws IllegalArgumentException if a component is out of range
   */
  public PipeSlope {
    Objects.requireNonNull(length, "length");
    if (!(length.metres() > 0.0 && length.metres() <= 1.0e5)) {
      throw new IllegalArgumentException(
          "length of a main must be in (0, 100000] m, was " + length.shown());
    }
    if (!(slope >= 0.0 && slope <= STEEPEST)) {
      throw new IllegalArgumentException(
          "slope of a main must be in [0, 0.2], was " + Digits.told(slope) + "; 1 in 100 is 0.01");
    }
  }

  /** {@return how much lower its end is} */
  public Length fall() {
    return Length.ofMetres(slope * length.metres());
  }

  /** {@return the least slope that is asked for in its direction [-]} */
  public double leastSlope() {
    return isWithAir ? LEAST_WITH : LEAST_AGAINST;
  }

  /** {@return whether it falls enough} */
  public SlopeVerdict verdict() {
    return slope >= leastSlope() * (1.0 - ROUNDING) ? SlopeVerdict.ENOUGH : SlopeVerdict.TOO_FLAT;
  }

  /** {@return where the least slope is from} */
  public Source source() {
    return isWithAir ? WITH_AIR : AGAINST_AIR;
  }

  /** {@return the fewest drip legs on it: one every 300 ft, and one at its end} */
  public int fewestLegs() {
    return legs(FARTHEST_LEGS);
  }

  /** {@return the drip legs on it if they stand as near as is asked: one every 200 ft, and one at its end} */
  public int nearestLegs() {
    return legs(NEAREST_LEGS);
  }

  /** {@return where the distance of drip legs is from} */
  public Source legsSource() {
    return LEGS;
  }

  private int legs(double apart) {
    return (int) Math.ceil(length.metres() / apart * (1.0 - ROUNDING));
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Fall of a main", units)
        .given(SLOPE, slope, 6)
        .given(LENGTH, length.metres(), 6)
        .step(FALLS, fall().metres(), 4)
        .answer(FALL)
        .build();
  }
}
