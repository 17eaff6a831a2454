package org.airfit.thread;

import java.util.OptionalDouble;
import org.airfit.source.Source;

/**
 * The two shapes a pipe thread is cut in.
 *
 * <pre>
 *   parallel: H/p = 1 / (2 tan α)      taper: H/p = (cot α − tan²β tan α) / 2,  tan β = 1/32
 *   60°: h = 0.8 p (the most a truncated thread may be high)      55°: h = 0.640327 P = 2/3 of the parallel H
 *   55°, parallel: r = (H/6) sin α / (1 − sin α) = 0.137329 P,
 *                  the circle that touches both flanks and cuts H/6 off the sharp crest
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>α</td><td>half of the angle between the flanks</td><td>°</td></tr>
 * <tr><td>β</td><td>half of the angle of the cone, 1.78991°</td><td>°</td></tr>
 * <tr><td>H</td><td>height of the sharp triangle the thread is cut from</td><td>mm or in</td></tr>
 * <tr><td>h</td><td>height of the thread</td><td>mm or in</td></tr>
 * <tr><td>r</td><td>radius of crest and root</td><td>mm or in</td></tr>
 * <tr><td>p, P</td><td>pitch</td><td>mm or in</td></tr>
 * </tbody>
 * </table>
 *
 * <p><b>Source:</b> ASME B1.20.1-2013, section 2; ISO 228-1:2003 and JIS B 0203 as quoted in other documents.
 */
public enum ThreadForm {
  /** 60° between the flanks, crests and roots cut flat. */
  FLAT_60(60, 0.8, Source.standard("ASME B1.20.1-2013, section 2")),
  /** 55° between the flanks, crests and roots rounded. */
  ROUND_55(
      55, 0.640327, Source.standard("ISO 228-1:2003 and ISO 7-1, as quoted in other documents"));

  private static final double TAN_BETA = 1.0 / 32.0;

  private final int flankAngleDegrees;
  private final double heightOverPitch;
  private final Source source;

  ThreadForm(int flankAngleDegrees, double heightOverPitch, Source source) {
    this.flankAngleDegrees = flankAngleDegrees;
    this.heightOverPitch = heightOverPitch;
    this.source = source;
  }

  /** {@return the angle between the flanks [°]} */
  public int flankAngleDegrees() {
    return flankAngleDegrees;
  }

  /** {@return h/p, the height of the thread over its pitch [-]} */
  public double heightOverPitch() {
    return heightOverPitch;
  }

  /** {@return H/p of a parallel thread, the height of the sharp triangle over the pitch [-]} */
  public double sharpHeightOverPitch() {
    return 0.5 / tanHalfFlank();
  }

  /** {@return H/p of a thread of taper 1:16, the height of the sharp triangle over the pitch [-]} */
  public double taperSharpHeightOverPitch() {
    return 0.5 * (1.0 / tanHalfFlank() - TAN_BETA * TAN_BETA * tanHalfFlank());
  }

  /** {@return r/P of a parallel thread, the radius of its crests and roots over the pitch [-]; empty for flat ones} */
  public OptionalDouble crestRadiusOverPitch() {
    if (this == FLAT_60) {
      return OptionalDouble.empty();
    }
    double sine = Math.sin(Math.toRadians(0.5 * flankAngleDegrees));
    return OptionalDouble.of(sharpHeightOverPitch() / 6.0 * sine / (1.0 - sine));
  }

  /** {@return half of the angle of the cone of a taper thread, atan(1/32) [°]} */
  public static double coneHalfAngleDegrees() {
    return Math.toDegrees(Math.atan(TAN_BETA));
  }

  /** {@return where the form is laid down} */
  public Source source() {
    return source;
  }

  private double tanHalfFlank() {
    return Math.tan(Math.toRadians(0.5 * flankAngleDegrees));
  }
}
