package org.airfit.drawing;

import java.util.ArrayList;
import java.util.List;
import org.airfit.thread.ThreadForm;

/**
 * The outline of one turn of a taper thread: pure numbers in pitches, no checks.
 *
 * <pre>
 *   flanks: radius falls by s = cot α per length along the axis on either side of a crest,
 *           so that the line that halves the angle between them stands square to the axis, not to the cone
 *   above the pitch line, which itself climbs by t = 1/32:  H/2 − s |u| − t u,   u from the sharp crest
 *   H = (s² − t²) / (2 s)                                   as ThreadForm#taperSharpHeightOverPitch
 *   from the sharp crest to the sharp root: 1/2 − t/(2 s) towards the large end
 * </pre>
 *
 * <p>ASME B1.20.1 and ISO 7-1 lay the flanks so: their H of a taper thread, 0.865743 p and 0.960237 P, comes out for
 * no other stand of the flanks. Of the 60° form crests and roots are cut along the cone at h/2 from the pitch line; of
 * the 55° form they are arcs that touch both flanks and reach h/2, r = 0.13722 P, which leaves the printed 0.137278 P
 * by less than paper shows.
 */
final class ToothKernels {

  /** The steps of an arc over a crest or root of the 55° form. */
  private static final int STEPS = 6;

  /** How far the pitch line climbs along the axis. */
  static final double TAN_CONE = 1.0 / 32.0;

  private ToothKernels() {}

  /** Where in a turn, from one sharp crest to the next in [0, 1), the outline bends. */
  static List<Double> phases(ThreadForm form) {
    List<Double> phases = new ArrayList<>();
    double half = 0.5 * form.taperSharpHeightOverPitch();
    double cut = half - 0.5 * form.heightOverPitch();
    double slope = slope(form);
    double root = sharpRoot(form);
    if (form == ThreadForm.FLAT_60) {
      double down = cut / (slope + TAN_CONE);
      double up = cut / (slope - TAN_CONE);
      phases.addAll(List.of(down, root - down, root + up, 1.0 - up));
      return phases;
    }
    double reach = arcReach(form);
    for (int i = -STEPS; i <= STEPS; i++) {
      double at = reach * Math.sin(0.5 * Math.PI * i / STEPS);
      phases.add(at < 0.0 ? 1.0 + at : at);
      phases.add(root + at);
    }
    phases.sort(null);
    return phases;
  }

  /** How far the outline lies from the pitch line at a place in the turn, outward positive [pitches]. */
  static double offset(ThreadForm form, double phase) {
    double root = sharpRoot(form);
    double slope = slope(form);
    double half = 0.5 * form.heightOverPitch();
    double sharp = 0.5 * form.taperSharpHeightOverPitch();
    boolean before = phase >= 0.5 * (1.0 + root);
    boolean nearCrest = phase <= 0.5 * root || before;
    double along = nearCrest ? (before ? phase - 1.0 : phase) : phase - root;
    double away = Math.abs(along);
    double out = nearCrest ? 1.0 : -1.0;
    double climbed = TAN_CONE * along;
    if (form == ThreadForm.FLAT_60) {
      return Math.max(-half, Math.min(half, out * (sharp - slope * away) - climbed));
    }
    return away < arcReach(form)
        ? out * (half - radius(form) + arc(form, away)) - climbed
        : out * (sharp - slope * away) - climbed;
  }

  /** How steep the flanks stand to the axis, on either side the same. */
  private static double slope(ThreadForm form) {
    return 1.0 / Math.tan(Math.toRadians(0.5 * form.flankAngleDegrees()));
  }

  /** Where in the turn the flanks would meet below. */
  private static double sharpRoot(ThreadForm form) {
    return 0.5 - 0.5 * TAN_CONE / slope(form);
  }

  private static double arc(ThreadForm form, double aside) {
    return Math.sqrt(radius(form) * radius(form) - aside * aside);
  }

  /** The circle that touches both flanks and cuts (H − h)/2 off the sharp crest. */
  private static double radius(ThreadForm form) {
    double sine = Math.sin(Math.toRadians(0.5 * form.flankAngleDegrees()));
    return 0.5 * (form.taperSharpHeightOverPitch() - form.heightOverPitch()) * sine / (1.0 - sine);
  }

  /** The arc meets the flank where its tangent has the flank's slope: r cos α. */
  private static double arcReach(ThreadForm form) {
    return radius(form) * Math.cos(Math.toRadians(0.5 * form.flankAngleDegrees()));
  }
}
