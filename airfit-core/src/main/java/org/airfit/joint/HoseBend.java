package org.airfit.joint;

import java.util.List;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;
import org.airfit.working.Term;
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
 * <tr><td>OD</td><td>outside diameter of the hose; 0 where r runs to the centre line, as metal hose is rated</td><td>mm</td></tr>
 * </tbody>
 * </table>
 *
 * <p>The straight ends, where the fittings need the hose straight, come on top. <b>Source:</b> hose handbooks; an example of theirs
 * takes 70 mm of outside diameter for a radius in its text and for a diameter in its number.
 *
 * @param angleDegrees A [°], above 0, at most 360
 * @param radius r, above 0
 * @param outside OD; 0 where {@code radius} runs to the centre line
 */
public record HoseBend(double angleDegrees, Length radius, Length outside) {

  private static final Source SOURCE = Source.handbook("hose handbooks, length of hose in a bend");

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
    if (!(angleDegrees > 0.0 && angleDegrees <= 360.0)) {
      throw new IllegalArgumentException(
          "angle of the bend must be in (0, 360] °, was " + angleDegrees + " °");
    }
    if (!(radius.metres() > 0.0)) {
      throw new IllegalArgumentException(
          "bend radius must be above 0 mm, was " + radius.format(LengthUnit.MILLIMETRE));
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
   * @return six times the bore: common practice, and only where the maker states no radius; spirally reinforced hose wants 8 to 10 times
   */
  public static Length usualLeastRadius(Length bore) {
    return bore.times(BORES_TEXTILE);
  }

  /** {@return how the length was reached} */
  public Working working() {
    return Working.titled("Hose in a bend")
        .step(
            "Length along the axis",
            "⟨L⟩ = ⟨A⟩ / 360 × 2 × π × (⟨r⟩ + ⟨OD⟩ / 2)",
            "⟨L⟩ = \\frac{⟨A⟩}{360} \\cdot 2 \\pi \\left(⟨r⟩ + \\frac{⟨OD⟩}{2}\\right)",
            List.of(
                Term.of("A", "A", angleDegrees, "°", 6),
                Term.of("r", "r", radius.millimetres(), "mm", 6),
                Term.of("OD", "D_o", outside.millimetres(), "mm", 6)),
            Term.of("L", "L", length().millimetres(), "mm", 4),
            SOURCE)
        .build();
  }
}
