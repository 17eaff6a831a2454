package org.airfit.plug;

import org.airfit.measure.Instrument;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * What an identification takes for granted besides the reference set: the settings of an {@link Identifier}.
 *
 * @param unknownPrior the chance, before any reading, that a plug is of no profile in the set
 * @param confidence the chance a profile must reach to stand out
 * @param wear the most that wear is allowed to have taken away
 * @param instrument what next readings are expected to be taken with
 * @param sizeClasses whether answers also tell the size class
 * @param independent whether the error of a caliper is taken as independent from reading to reading
 * @param nearCopies whether near copies of the profiles are about
 * @param wearTold whether the user said how worn the plug may be
 */
record Assumptions(
    double unknownPrior,
    double confidence,
    Length wear,
    Instrument instrument,
    boolean sizeClasses,
    boolean independent,
    boolean nearCopies,
    boolean wearTold) {

  /** Width of the range an unknown plug may lie in, for each dimension; this project's choice, no source. */
  static final double UNKNOWN_WIDTH_MM = 10.0;

  /** Of unknown plugs so many are near copies, where those are about; this project's choice, no source. */
  static final double NEAR_COPY_SHARE = 0.1;

  /** So often is a size of a near copy not that of its profile; this project's choice, no source. */
  static final double CHANGED = 0.3;

  /** By so much on average, either way, falling off as an exponential; this project's choice, no source. */
  static final double CHANGED_BY_MM = 0.5;

  /** What is worn away at most where nobody said how worn a plug is; this project's choice, no source. */
  static final double USUAL_WEAR_MM = 0.2;

  /**
   * Chance of an unknown plug 0.05, confidence 0.95, near copies about, wear not told, next readings by digital caliper; this
   * project's choice.
   */
  static final Assumptions USUAL = new Assumptions(
      0.05, 0.95, Length.ofMetres(0.0), Instrument.DIGITAL_CALIPER, false, false, true, false);

  Assumptions {
    if (!(unknownPrior >= 0.0 && unknownPrior < 1.0)) {
      throw new IllegalArgumentException(
          "prior of the unknown must be in [0, 1), was " + unknownPrior);
    }
    if (!(confidence >= 0.5 && confidence < 1.0)) {
      throw new IllegalArgumentException("confidence must be in [0.5, 1), was " + confidence);
    }
    if (!(wear.millimetres() <= 2.0)) {
      throw new IllegalArgumentException(
          "wear allowance must be in [0, 2] mm, was " + wear.inFull(LengthUnit.MILLIMETRE)
              + "; a plug worn by more is scrap, not a case for identification");
    }
  }

  /** The chance, before any reading, of a plug that is elsewhere in the size class. */
  double elsewherePrior() {
    return unknownPrior - nearCopyPrior();
  }

  /** The chance, before any reading, of a near copy of any profile. */
  double nearCopyPrior() {
    return nearCopies ? NEAR_COPY_SHARE * unknownPrior : 0.0;
  }

  /** Whether a near copy can be meant: they are about, and unknown plugs are not ruled out. */
  boolean nearCopiesCount() {
    return nearCopyPrior() > 0.0;
  }

  Assumptions withUnknownPrior(double prior) {
    return new Assumptions(
        prior, confidence, wear, instrument, sizeClasses, independent, nearCopies, wearTold);
  }

  Assumptions withConfidence(double chance) {
    return new Assumptions(
        unknownPrior, chance, wear, instrument, sizeClasses, independent, nearCopies, wearTold);
  }

  Assumptions withWear(Length allowance) {
    return new Assumptions(
        unknownPrior,
        confidence,
        allowance,
        instrument,
        sizeClasses,
        independent,
        nearCopies,
        true);
  }

  Assumptions withInstrument(Instrument next) {
    return new Assumptions(
        unknownPrior, confidence, wear, next, sizeClasses, independent, nearCopies, wearTold);
  }

  Assumptions withSizeClasses() {
    return new Assumptions(
        unknownPrior, confidence, wear, instrument, true, independent, nearCopies, wearTold);
  }

  Assumptions withIndependentErrors() {
    return new Assumptions(
        unknownPrior, confidence, wear, instrument, sizeClasses, true, nearCopies, wearTold);
  }

  Assumptions withoutNearCopies() {
    return new Assumptions(
        unknownPrior, confidence, wear, instrument, sizeClasses, independent, false, wearTold);
  }
}
