package org.airfit.joint;

import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * How much hose a bend takes, measured along its axis.
 *
 * <pre>
 *   L = (A/360) 2π (r + OD/2)
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>A</td><td>angle of the bend</td><td>°</td></tr>
 * <tr><td>r</td><td>bend radius, to the inside of the curve, as rubber hose is rated</td><td>mm</td></tr>
 * <tr><td>OD</td><td>outside diameter of the hose; 0 where r runs to the centre line, as metal hose is rated</td>
 *     <td>mm</td></tr>
 * </tbody>
 * </table>
 *
 * <p>The straight ends, where the fittings need the hose straight, come on top. <b>Source:</b> hose handbooks; an
 * example of theirs takes 70 mm of outside diameter for a radius in its text and for a diameter in its number.
 *
 * @param angleDegrees A [°], above 0, at most 360
 * @param radius r, above 0
 * @param outside OD; 0 where {@code radius} runs to the centre line
 */
public record HoseBend(double angleDegrees, Length radius, Length outside) implements Worked {

  private static final Source SOURCE = Source.handbook("hose handbooks, length of hose in a bend");

  private static final Symbol ANGLE = Symbol.of("A", ValueKind.DEGREES);
  private static final Symbol RADIUS = Symbol.of("r", ValueKind.SMALL_LENGTH);
  private static final Symbol OUTSIDE = Symbol.of("OD", "D_o", ValueKind.SMALL_LENGTH);
  private static final Formula LENGTH = Formula.of(
      "Length along the axis",
      "⟨L⟩ = ⟨A⟩ / 360 × 2 × π × (⟨r⟩ + ⟨OD⟩ / 2)",
      SOURCE,
      Symbol.of("L", ValueKind.SMALL_LENGTH),
      ANGLE,
      RADIUS,
      OUTSIDE);

  /** From how many bores on a hose is usually bent. */
  private static final double BORES_TEXTILE = 6.0;

  /**
   * Checks the components.
   *
   * @param angleDegrees A [°], above 0, at most 360
   * @param radius r, above 0
   * @param outside OD; 0 where {@code radius} runs to the centre line
   * @throws IllegalArgumentException if an argument is out of range
   */
  public HoseBend {
    Objects.requireNonNull(radius, "radius");
    Objects.requireNonNull(outside, "outside");
    if (!(angleDegrees > 0.0 && angleDegrees <= 360.0)) {
      throw new IllegalArgumentException(
          "angle of the bend must be in (0, 360] °, was " + Digits.told(angleDegrees) + " °");
    }
    if (!(radius.metres() > 0.0)) {
      throw new IllegalArgumentException(
          "bend radius must be above 0 mm, was " + radius.inFull(LengthUnit.MILLIMETRE));
    }
  }

  /** {@return L, the length of hose in the bend} */
  public Length length() {
    return radius.plus(outside.times(0.5)).times(2.0 * Math.PI * angleDegrees / 360.0);
  }

  /**
   * Obtains the radius below which a mandrel-built hose with textile reinforcement is not usually bent.
   *
   * @param bore the bore of the hose
   * @return six times the bore: common practice, and only where the maker states no radius; spirally reinforced hose
   *     wants 8 to 10 times
   */
  public static Length usualLeastRadius(Length bore) {
    Objects.requireNonNull(bore, "bore");
    return bore.times(BORES_TEXTILE);
  }

  /**
   * Tells how the length was reached.
   *
   * @param units the units to show numbers in
   */
  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Hose in a bend", units)
        .given(ANGLE, angleDegrees, 6)
        .given(RADIUS, radius.metres(), 6)
        .given(OUTSIDE, outside.metres(), 6)
        .step(LENGTH, length().metres(), 4)
        .answer(LENGTH.result())
        .build();
  }
}
