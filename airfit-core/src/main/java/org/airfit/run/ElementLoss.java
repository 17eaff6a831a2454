package org.airfit.run;

import java.util.List;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What one element takes of the pressure on the way to the tool.
 *
 * @param name the element
 * @param inlet the pressure in front of it
 * @param outlet the pressure behind it
 * @param drop the pressure it takes
 * @param fraction its part of all that is lost on the way [-]; 0 where nothing is lost
 * @param gain how much more pressure the tool would have if this element took nothing
 * @param chokes whether it lets no more through however low the pressure behind it
 * @param inletMach velocity over speed of sound at the inlet of a line [-]; 0 for a part
 * @param outletMach velocity over speed of sound at the outlet of a line, before the pressure falls further where it chokes [-]; 0 for a part
 * @param warnings where the model is near or outside what it holds for
 * @param reached the answer of line or part that the drop was taken from
 */
public record ElementLoss(
    String name,
    AbsolutePressure inlet,
    AbsolutePressure outlet,
    PressureDrop drop,
    double fraction,
    PressureDrop gain,
    boolean chokes,
    double inletMach,
    double outletMach,
    List<String> warnings,
    Worked reached)
    implements Worked {

  @Override
  public Working working(UnitSystem units) {
    return reached.working(units);
  }
}
