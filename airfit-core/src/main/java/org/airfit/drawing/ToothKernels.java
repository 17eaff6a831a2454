package org.airfit.drawing;

import java.util.ArrayList;
import java.util.List;
import org.airfit.thread.ThreadForm;

/** The outline of one turn: pure numbers in pitches, no checks. */
final class ToothKernels {

  /** The steps of an arc over a crest or root of the 55° form. */
  private static final int STEPS = 6;

  /** r/P of the 55° form. */
  private static final double RADIUS_OVER_PITCH =
      ThreadForm.ROUND_55.crestRadiusOverPitch().orElseThrow();

  private ToothKernels() {}

  /** Where in a turn, from crest to crest in [0, 1), the outline bends. */
  static List<Double> phases(ThreadForm form) {
    List<Double> phases = new ArrayList<>();
    if (form == ThreadForm.FLAT_60) {
      double flat = halfFlat();
      phases.addAll(List.of(0.0, flat, 0.5 - flat, 0.5 + flat, 1.0 - flat));
      return phases;
    }
    double reach = arcReach();
    for (int i = -STEPS; i <= STEPS; i++) {
      double at = reach * Math.sin(0.5 * Math.PI * i / STEPS);
      phases.add(at < 0.0 ? 1.0 + at : at);
      phases.add(0.5 + at);
    }
    phases.sort(null);
    return phases;
  }

  /** How far the outline lies from the pitch line at a place in the turn, outward positive [pitches]. */
  static double offset(ThreadForm form, double phase) {
    double fromCrest = Math.min(phase, 1.0 - phase);
    double half = 0.5 * form.heightOverPitch();
    double flank = form.sharpHeightOverPitch() * (0.5 - 2.0 * fromCrest);
    if (form == ThreadForm.FLAT_60) {
      return Math.max(-half, Math.min(half, flank));
    }
    double reach = arcReach();
    double fromRoot = 0.5 - fromCrest;
    if (fromCrest < reach) {
      return half - RADIUS_OVER_PITCH + arc(fromCrest);
    }
    if (fromRoot < reach) {
      return -half + RADIUS_OVER_PITCH - arc(fromRoot);
    }
    return flank;
  }

  private static double arc(double aside) {
    return Math.sqrt(RADIUS_OVER_PITCH * RADIUS_OVER_PITCH - aside * aside);
  }

  /** Half of the flat on a crest of full height, (p/4)(1 − h/H). */
  private static double halfFlat() {
    return 0.25
        * (1.0 - ThreadForm.FLAT_60.heightOverPitch() / ThreadForm.FLAT_60.sharpHeightOverPitch());
  }

  /** The arc meets the flank where its tangent has the flank's slope: r cos 27.5°. */
  private static double arcReach() {
    return RADIUS_OVER_PITCH * Math.cos(Math.toRadians(27.5));
  }
}
