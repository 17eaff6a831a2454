package org.airfit.plug;

import java.util.Objects;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * A steel ball laid into the locking groove, to take the tip length where jaws find no good edge.
 *
 * <p>The ball lies on the root of the groove and is pushed against the wall that carries the locking balls. Measure
 * with outside jaws from the tip face over the ball; {@link PlugReading#overBall} works out the tip length.
 *
 * <pre>
 *   L_g = M − d/2 − x,   x = d/2          where the wall is as high as half the ball, h ≥ d/2
 *                        x = √(h(d − h))  where it is lower: the ball touches its edge,   h = (D_c − D_g)/2
 *   u² = u(M)² + (∂x/∂h)² (u(D_c)² + u(D_g)²)/4,   ∂x/∂h = (d − 2h)/(2x), 0 for the high wall
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>L_g, L_b</td><td>tip length to the edge and by the ball</td><td>mm</td></tr>
 * <tr><td>M</td><td>what was measured over the ball</td><td>mm</td></tr>
 * <tr><td>d, h</td><td>diameter of the ball and height of the wall above the root</td><td>mm</td></tr>
 * <tr><td>D_c, D_g</td><td>collar and groove diameter</td><td>mm</td></tr>
 * </tbody>
 * </table>
 *
 * <p><b>Valid</b> for an upright wall with a sharp edge, and a ball that is smaller than the groove is wide, so that it
 * lies on the root. <b>Source:</b> plane geometry; the uncertainty after GUM 5.1.2, the ball taken as exact. A length
 * that a standard refers to a gauge ball and a gauge diameter, as ISO 7241 does, is yet another one: convert it before
 * it is compared.
 *
 * <p><b>By the ball.</b> Where the edge is rounded or the groove is of no plain form, the length itself may be stated
 * by the ball,
 *
 * <pre>
 *   L_b = M − d = L_g + x − d/2
 * </pre>
 *
 * <p>which is L_g where the wall is high and a little less where it is low. A profile may state its tip length so, see
 * {@link PlugProfile.Builder#tipLengthBy}. A reading by the same ball is compared with it as it is; a reading by the
 * edge or another ball is converted by the equation above with the collar and groove diameters of the profile, and
 * where the profile does not know them, or the ball is wider than its groove, it is not compared at all.
 *
 * @param diameter the diameter of the ball, in (0, 10] mm
 */
public record GaugeBall(Length diameter) {

  private static final double LARGEST_MM = 10.0;

  /**
   * Checks the diameter.
   *
   * @param diameter the diameter of the ball, in (0, 10] mm
   * @throws IllegalArgumentException if it is outside its range
   */
  public GaugeBall {
    Objects.requireNonNull(diameter, "diameter");
    if (!(diameter.metres() > 0.0 && diameter.millimetres() <= LARGEST_MM)) {
      throw new IllegalArgumentException("diameter of a gauge ball must be in (0, 10] mm, was "
          + diameter.inFull(LengthUnit.MILLIMETRE) + "; it must go into the groove of a plug");
    }
  }

  /** {@return the ball in words, such as "a ball of 4 mm"} */
  @Override
  public String toString() {
    return "a ball of " + diameter.format(LengthUnit.MILLIMETRE);
  }

  /** How far the middle of the ball lies behind the wall [mm]. */
  static double fromWall(double d, double h) {
    return h < 0.5 * d ? Math.sqrt(h * (d - h)) : 0.5 * d;
  }

  /** How much further for a higher wall, ∂x/∂h. */
  static double slope(double d, double h) {
    return h < 0.5 * d ? (d - 2.0 * h) / (2.0 * fromWall(d, h)) : 0.0;
  }
}
