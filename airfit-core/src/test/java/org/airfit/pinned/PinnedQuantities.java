package org.airfit.pinned;

import java.util.List;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.Density;
import org.airfit.quantity.Energy;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Power;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.quantity.Velocity;
import org.airfit.quantity.Volume;

/** What typed quantities are in SI units. */
final class PinnedQuantities {

  private static final String AREA = "quantity";

  private PinnedQuantities() {}

  static void ask(Pins pins) {
    for (String typed :
        List.of("90 psig", "6.2 bar(g)", "620 kPa(g)", "7 kgf/cm²(g)", "-20 kPa(g)")) {
      pins.quantity(AREA, "Pressure above the atmosphere: " + typed, GaugePressure.parse(typed));
    }
    for (String typed :
        List.of("14.7 psia", "8 bar(a)", "1 atm(a)", "760 mmHg(a)", "29.92 inHg(a)")) {
      pins.quantity(AREA, "Absolute pressure: " + typed, AbsolutePressure.parse(typed));
    }
    for (String typed : List.of("3/8 in", "50 ft", "11.2 mm", "1-1/4 in", "2.5 cm")) {
      pins.quantity(AREA, "Length: " + typed, Length.parse(typed));
    }
    for (String typed : List.of("68 °F", "-40 °C", "293.15 K")) {
      pins.quantity(AREA, "Temperature: " + typed, Temperature.parse(typed));
    }
    for (String typed :
        List.of("20 scfm (60 °F)", "20 scfm (68 °F)", "10 L/s ANR", "1 Nm³/min", "600 L/min ANR")) {
      FreeAirFlow flow = FreeAirFlow.parse(typed);
      pins.quantity(AREA, "Mass flow of free air: " + typed, flow.massFlow());
      pins.number(
          AREA,
          "Free air in litres a second of ANR: " + typed,
          flow.at(ReferenceState.ANR).litresPerSecond(),
          "L/s");
    }
    for (ReferenceState state : ReferenceState.wellKnown()) {
      pins.quantity(AREA, "Density of the reference air " + state.name(), state.density());
    }
    pins.quantity(AREA, "Mass flow: 100 kg/h", MassFlow.parse("100 kg/h"));
    pins.quantity(AREA, "Mass flow: 2 lb/min", MassFlow.parse("2 lb/min"));
    pins.quantity(AREA, "Volume: 80 gal", Volume.ofUsGallons(80.0));
    pins.quantity(AREA, "Volume: 12 cubic feet", Volume.ofCubicFeet(12.0));
    pins.quantity(AREA, "Power: 25 hp", Power.ofHorsepower(25.0));
    pins.quantity(AREA, "Energy: 3 kWh", Energy.ofKilowattHours(3.0));
    pins.quantity(AREA, "Area: 0.5 square inches", Area.ofSquareInches(0.5));
    pins.quantity(AREA, "Velocity: 20 ft/s", Velocity.ofFeetPerSecond(20.0));
    pins.quantity(AREA, "Density: 0.075 lb/ft³", Density.ofPoundsPerCubicFoot(0.075));
    pins.quantity(
        AREA,
        "Sonic conductance: 5.5 dm³/(s·bar)",
        SonicConductance.ofCubicDecimetresPerSecondBar(5.5));
    pins.number(AREA, "Kv of a Cv of 1.8", ValveCoefficient.ofCv(1.8).kv(), "m³/h");
  }
}
