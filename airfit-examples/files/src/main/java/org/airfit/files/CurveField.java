package org.airfit.files;

import java.util.List;
import java.util.Optional;
import org.airfit.plant.RegulatorCurve;

/** A regulator's curve as its maker draws it, alike in a job, a catalogue and a network. */
final class CurveField {

  private static final String CURVE = "curve";
  private static final String ACCEPTED =
      "what it holds at some flows from none on, such as \"90 psig at 0 scfm; 86 psig at 20 scfm; 80 psig at 40"
          + " scfm\"";

  private CurveField() {}

  /** The curve of an item, if it has one; refused beside a droop. */
  static Optional<RegulatorCurve> in(Field item, String flowOfDroop) throws WrongFileException {
    Optional<Field> told = item.find(CURVE, ACCEPTED);
    if (told.isEmpty()) {
      return Optional.empty();
    }
    for (String other : List.of("droop", flowOfDroop)) {
      if (item.find(other).isPresent()) {
        throw told.get()
            .wrong("stands beside " + other
                + "; accepted: one of the two, as the curve tells the droop"
                + " at every flow up to its end");
      }
    }
    return Optional.of(told.get().as(RegulatorCurve::parse));
  }
}
