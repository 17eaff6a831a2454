package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.airfit.plant.Regulator;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.working.UnitSystem;

/** What is said where nobody told by how much a regulator droops, and the air is enough whatever it is. */
final class UntoldDroop {

  private UntoldDroop() {}

  /** The regulators of which nobody told it, with what is reckoned with, in a sentence; blank where there are none. */
  static String inWords(Assembly a, UnitSystem units) {
    Set<String> untold = new LinkedHashSet<>();
    if (isUntold(a.requirement().droopRange())) {
      untold.add(Unknowns.AT_SUPPLY);
    }
    for (Part part : a.parts()) {
      if (part instanceof Part.Regulator regulator && isUntold(regulator.droopRange())) {
        untold.add(regulator.name());
      }
    }
    List<String> names = new ArrayList<>(untold);
    PressureDrop most = Regulator.UNTOLD_DROOP.most();
    return names.isEmpty()
        ? ""
        : " It is enough whatever the droop of " + String.join(" and of ", names)
            + " is, which nobody told: up to " + units.say(most)
            + " are reckoned with (common practice, no source).";
  }

  static boolean isUntold(Range<PressureDrop> droop) {
    return droop.equals(Regulator.UNTOLD_DROOP);
  }
}
