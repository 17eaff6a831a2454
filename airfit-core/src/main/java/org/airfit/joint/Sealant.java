package org.airfit.joint;

import java.util.List;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.safety.Caution;
import org.airfit.source.Source;

/** What is known of sealants on pipe threads. Most of it is common practice: no standard says it. */
final class Sealant {

  static final Caution LOOSE = new Caution(
      "Sealant on taper threads",
      "Nothing loose may get into the air: keep the first thread bare.",
      Source.commonPractice("first thread bare, so that no tape enters the air"));

  static final Caution DRY = new Caution(
      "Dryseal threads",
      "No sealant is needed; a lubricant against galling is still usual.",
      Source.standard("ASME B1.20.3-1976 (R2018) section 1.4.1"));

  static final Caution NOT_ON_PARALLEL = new Caution(
      "No tape on a parallel thread",
      "Tape has no purpose on it: the thread carries no wedge force and does not seal.",
      Source.commonPractice("tape is for taper threads"));

  static final Caution NOT_ON_CONE = new Caution(
      "No sealant on a flare",
      "Metal cones seal: tape or paste on cone or thread does no good and gets into the air.",
      Source.commonPractice("flares are made up dry"));

  static final Caution NO_CURE = new Caution(
      "Sealant cures no mismatch",
      "Tape or paste does not change the geometry; under pressure the parts can separate.",
      Source.handbook("article on thread compatibility"));

  private static final Caution DIRECTION = new Caution(
      "Direction of tape",
      "Wrap the male thread the way the female part is turned to tighten: clockwise, seen from the open end of the "
          + "male.",
      Source.commonPractice("direction of thread seal tape"));

  private static final Caution TO_SIZE_TWO = new Caution(
      "Wraps of tape",
      "About four wraps; advice runs from two to eight.",
      Source.commonPractice("four wraps to size 2; sources disagree, from 2 to 8"));

  private static final Caution ABOVE_TWO = new Caution(
      "Wraps of tape",
      "Eight wraps, or paste.",
      Source.commonPractice("eight wraps or paste from size 2-1/2"));

  private static final Caution NEVER_BACK = new Caution(
      "Never turn back",
      "A taper joint that was turned back has lost its seal: undo it, clean both threads and seal again.",
      Source.commonPractice("taper joints are not backed off"));

  private static final Caution HAND_TIGHT = new Caution(
      "Hand tight is a place",
      "Each part may be one turn off, so that a sound joint may sit up to two turns from the nominal place. "
          + "Workshops go two to three turns past"
          + " hand tight to size 1.",
      Source.derived("gauging tolerance of ASME B1.20.1; the turns are common practice"));

  private Sealant() {}

  static List<Caution> onTaper(NominalThreadSize size) {
    boolean large = size.compareTo(NominalThreadSize.TWO) > 0;
    return List.of(LOOSE, DIRECTION, large ? ABOVE_TWO : TO_SIZE_TWO, NEVER_BACK, HAND_TIGHT);
  }
}
