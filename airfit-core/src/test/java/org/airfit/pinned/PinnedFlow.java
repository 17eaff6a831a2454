package org.airfit.pinned;

import java.time.Duration;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.BleedDown;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.CoefficientRule;
import org.airfit.flow.ControlValve;
import org.airfit.flow.FannoFlow;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.IsentropicFlow;
import org.airfit.flow.IsothermalFlow;
import org.airfit.flow.LoadTiming;
import org.airfit.flow.Orifice;
import org.airfit.flow.OrificeEdge;
import org.airfit.flow.OutletAtFlow;
import org.airfit.flow.PartsInSeries;
import org.airfit.flow.Rating;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.quantity.Volume;

/** Flow through couplings, valves, orifices and leaks. */
final class PinnedFlow {

  private static final String AREA = "flow";
  private static final AirState INLET =
      AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));

  private PinnedFlow() {}

  static void ask(Pins pins) {
    couplings(pins);
    valves(pins);
    orifices(pins);
    ratings(pins);
    machs(pins);
    leaks(pins);
  }

  private static FlowCapacity coupling(double c, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b);
  }

  private static void couplings(Pins pins) {
    for (double c : new double[] {2.0, 8.0}) {
      for (double b : new double[] {0.0, 0.3, 0.5}) {
        FlowCapacity part = coupling(c, b);
        String of = " of a coupling of C " + c + " dm³/(s·bar), b " + b + ", from 7 bar(a), 20 °C";
        for (double outlet : new double[] {6.9, 6.0, 1.0}) {
          pins.quantity(
              AREA,
              "Mass flow to " + outlet + " bar(a)" + of,
              part.flow(INLET, AbsolutePressure.ofBar(outlet)).massFlow());
        }
        MassFlow wanted = MassFlow.ofKilogramsPerSecond(0.0012 * c);
        OutletAtFlow passage = part.passage(wanted, INLET);
        if (passage instanceof OutletAtFlow.Passes passing) {
          pins.quantity(AREA, "Pressure loss at " + 1.2 * c + " g/s" + of, passing.drop());
        }
      }
    }
    for (double outlet : new double[] {6.5, 3.0}) {
      pins.quantity(
          AREA,
          "Mass flow of two couplings in a row, C 5 and 8, b 0.3, from 7 to " + outlet + " bar(a)",
          PartsInSeries.of(List.of(coupling(5.0, 0.3), coupling(8.0, 0.3)))
              .flow(INLET, AbsolutePressure.ofBar(outlet))
              .massFlow());
    }
    FlowCapacity tube = FlowCapacity.ofTube(Length.ofMillimetres(6.0), Length.ofMetres(5.0));
    pins.quantity(AREA, "C of a tube of 6 mm, 5 m", tube.conductance());
    pins.ratio(AREA, "b of a tube of 6 mm, 5 m", tube.criticalPressureRatio());
    pins.quantity(
        AREA,
        "C of an effective area of 20 mm², b 0.4",
        FlowCapacity.ofEffectiveArea(Area.ofSquareMillimetres(20.0), 0.4).conductance());
  }

  private static void valves(Pins pins) {
    ControlValve valve = new ControlValve(ValveCoefficient.ofCv(1.8), 0.7);
    for (double outlet : new double[] {6.5, 5.0, 1.0}) {
      AbsolutePressure to = AbsolutePressure.ofBar(outlet);
      String at = " of a valve of Cv 1.8, xT 0.7, from 7 bar(a), 20 °C, to " + outlet + " bar(a)";
      pins.quantity(AREA, "Mass flow" + at, valve.flow(INLET, to));
      pins.ratio(AREA, "Expansion factor" + at, valve.expansionFactor(INLET, to));
    }
    for (CoefficientRule rule : CoefficientRule.values()) {
      pins.quantity(
          AREA,
          "Mass flow by rule " + rule + " of Cv 1.8 from 7 to 6.5 bar(a)",
          rule.flow(ValveCoefficient.ofCv(1.8), INLET, AbsolutePressure.ofBar(6.5))
              .massFlow());
    }
    CapacityRange range = CapacityRange.ofValveCoefficient(ValveCoefficient.ofCv(1.8));
    pins.quantity(AREA, "Least C of a Cv of 1.8", range.least().conductance());
    pins.quantity(AREA, "Most C of a Cv of 1.8", range.most().conductance());
  }

  private static void orifices(Pins pins) {
    for (OrificeEdge edge : OrificeEdge.values()) {
      pins.quantity(
          AREA,
          "Mass flow of a hole of 2 mm, " + edge.label() + ", from 7 bar(a), 20 °C, to 1 bar(a)",
          Orifice.of(Length.ofMillimetres(2.0), edge)
              .flow(INLET, AbsolutePressure.ofBar(1.0))
              .massFlow());
    }
    for (double outlet : new double[] {6.8, 5.0, 3.0}) {
      pins.quantity(
          AREA,
          "Mass flow of a sharp hole of 3 mm from 7 bar(a), 20 °C, to " + outlet + " bar(a)",
          Orifice.sharp(Length.ofMillimetres(3.0))
              .flow(INLET, AbsolutePressure.ofBar(outlet))
              .massFlow());
    }
  }

  private static void ratings(Pins pins) {
    for (String text : List.of(
        "40 scfm at 100 psig, 5 psi drop",
        "40 scfm at 100 psig",
        "40 scfm",
        "C 5.5 dm³/(s·bar)",
        "Cv 1.2",
        "Kv 1.5")) {
      CapacityRange range = Rating.parse(text).capacity();
      pins.quantity(AREA, "Least C of the rating " + text, range.least().conductance());
      pins.quantity(AREA, "Most C of the rating " + text, range.most().conductance());
      pins.ratio(AREA, "b at the least C of " + text, range.least().criticalPressureRatio());
    }
    pins.quantity(
        AREA,
        "C of 34 scfm at 100 psig and a drop of 5 psi, b 0.4",
        FlowCapacity.ofRatedFlow(
                FreeAirFlow.ofScfm68F(34.0),
                AbsolutePressure.ofPsi(114.7),
                PressureDrop.ofPsi(5.0),
                Temperature.ofCelsius(20.0),
                0.4)
            .conductance());
  }

  private static void machs(Pins pins) {
    for (double mach : new double[] {0.1, 0.5, 0.9}) {
      IsentropicFlow isentropic = IsentropicFlow.atMach(mach);
      pins.ratio(AREA, "p/p0, isentropic, at Mach " + mach, isentropic.pressureRatio());
      pins.ratio(AREA, "A/A*, isentropic, at Mach " + mach, isentropic.areaRatio());
      FannoFlow fanno = FannoFlow.atMach(mach);
      pins.ratio(AREA, "fL*/D, Fanno, at Mach " + mach, fanno.resistanceLeft());
      pins.ratio(AREA, "p/p*, Fanno, at Mach " + mach, fanno.pressureRatio());
    }
    for (double resistance : new double[] {0.5, 5.0, 50.0}) {
      pins.ratio(
          AREA,
          "Mach number, Fanno, at fL*/D " + resistance,
          FannoFlow.subsonicAtResistance(resistance).mach());
      pins.ratio(
          AREA,
          "Mach number, isothermal, at fL*/D " + resistance,
          IsothermalFlow.atResistance(resistance).mach());
    }
  }

  private static void leaks(Pins pins) {
    pins.quantity(
        AREA,
        "Leak of 1 m³ that falls from 8 to 7 bar(a) in 10 minutes at 20 °C",
        new BleedDown(
                Volume.ofCubicMetres(1.0),
                AbsolutePressure.ofBar(8.0),
                AbsolutePressure.ofBar(7.0),
                Duration.ofMinutes(10),
                Temperature.ofCelsius(20.0))
            .leak());
    pins.quantity(
        AREA,
        "Leak of 200 scfm (60 °F) loaded for 90 s and unloaded for 510 s",
        new LoadTiming(
                Duration.ofSeconds(90), Duration.ofSeconds(510), FreeAirFlow.ofScfm60F(200.0))
            .leak()
            .massFlow());
  }
}
