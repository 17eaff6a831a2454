package org.airfit.files;

import java.util.Optional;
import org.airfit.quantity.Length;
import org.airfit.thread.ThreadReadings;

/** Reads what was measured on a thread. */
final class ThreadField {

  /** A flank angle held against the light, 1° standard uncertainty: a judgement, as the library's own. */
  private static final double FLANK_UNCERTAINTY = 1.0;

  private ThreadField() {}

  /** The readings of {@code atHand.thread}, if they are there. */
  static Optional<ThreadReadings> in(Field hand) throws WrongFileException {
    Optional<Field> found = hand.find("thread");
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Field field = found.get();
    Length first = field.field("firstCrest", Accepted.LENGTH).as(Length::parse);
    boolean female = field.flag("female");
    ThreadReadings readings =
        field.build(() -> female ? ThreadReadings.ofFemale(first) : ThreadReadings.ofMale(first));
    readings = diameters(field, readings);
    readings = pitch(field, readings);
    Optional<Field> taper = field.find("taperSeen");
    if (taper.isPresent()) {
      readings = readings.withTaperSeen(taper.get().yes());
    }
    Optional<Field> flanks = field.find("flankAngle");
    if (flanks.isPresent()) {
      ThreadReadings before = readings;
      double degrees = flanks.get().number();
      readings = flanks.get().build(() -> before.withFlankAngle(degrees, FLANK_UNCERTAINTY));
    }
    field.requireNothingElse();
    return Optional.of(readings);
  }

  private static ThreadReadings diameters(Field field, ThreadReadings readings)
      throws WrongFileException {
    Optional<Field> last = field.find("lastCrest");
    if (last.isEmpty()) {
      return readings;
    }
    Length crest = last.get().as(Length::parse);
    return last.get().build(() -> readings.withLastCrest(crest));
  }

  /** The pitch, counted, by a leaf of an inch gauge, or by one of a metric gauge. */
  private static ThreadReadings pitch(Field field, ThreadReadings bare) throws WrongFileException {
    ThreadReadings readings = bare;
    Optional<Field> over = field.find("overPitches");
    if (over.isPresent() || field.find("pitches").isPresent()) {
      int pitches =
          field.field("pitches", "how many pitches were measured over").wholeNumber();
      Length length = field.field("overPitches", Accepted.LENGTH).as(Length::parse);
      ThreadReadings before = readings;
      readings = field.build(() -> before.withPitches(length, pitches));
    }
    Optional<Field> inch = field.find("leafPerInch");
    Optional<Field> metric = field.find("leafPitch");
    if (inch.isPresent() && metric.isPresent()) {
      throw metric.get().wrong("stands beside leafPerInch; one leaf fits, so give one of the two");
    }
    if (inch.isPresent()) {
      ThreadReadings before = readings;
      double perInch = inch.get().number();
      readings = inch.get().build(() -> before.withThreadsPerInch(perInch));
    }
    if (metric.isPresent()) {
      ThreadReadings before = readings;
      Length pitch = metric.get().as(Length::parse);
      readings = metric.get().build(() -> before.withMetricLeaf(pitch));
    }
    return readings;
  }
}
