package org.airfit.pinned;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.air.Compression;
import org.airfit.flow.FlowCapacity;
import org.airfit.plant.AirPlant;
import org.airfit.plant.Compressor;
import org.airfit.plant.LeakSize;
import org.airfit.plant.LeakTest;
import org.airfit.plant.PistonCompressor;
import org.airfit.plant.ReceiverSize;
import org.airfit.plant.ReceiverUse;
import org.airfit.plant.RegulatorCurve;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.YearlyCost;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;

/** Compressors, receivers, regulators, leaks, and what air costs. */
final class PinnedPlants {

  private static final String AREA = "plant";
  private static final Temperature ROOM = Temperature.ofCelsius(20.0);
  private static final AirState OUTSIDE = AirState.of(AbsolutePressure.ofBar(1.0), ROOM);

  private PinnedPlants() {}

  static void ask(Pins pins) {
    costs(pins);
    receivers(pins);
    supplies(pins);
    leaks(pins);
  }

  private static void costs(Pins pins) {
    for (double bar : new double[] {7.0, 9.0, 11.0}) {
      AirPlant plant = new AirPlant(
          Compression.staged(OUTSIDE, AbsolutePressure.ofBar(bar), 2),
          0.75,
          0.92,
          Duration.ofHours(4000),
          Money.parse("0.11 USD"));
      String of = " in 4000 h at " + bar + " bar(a), two stages, 0.75, 0.92, 0.11 USD";
      YearlyCost flow = plant.ofFlow("flow", MassFlow.ofKilogramsPerSecond(0.05));
      pins.quantity(AREA, "Electric power of 0.05 kg/s" + of, flow.electric());
      pins.quantity(AREA, "Energy of 0.05 kg/s" + of, flow.energy());
      pins.quantity(
          AREA,
          "Energy of a loss of 0.5 bar at 0.05 kg/s" + of,
          plant
              .ofDrop("loss", MassFlow.ofKilogramsPerSecond(0.05), PressureDrop.ofBar(0.5))
              .energy());
    }
    AirPlant measured = AirPlant.measured(
        Compression.adiabatic(OUTSIDE, AbsolutePressure.ofBar(8.0)),
        FreeAirFlow.ofAnrLitresPerSecond(50.0),
        Power.ofKilowatts(19.0),
        Duration.ofHours(2000),
        Money.parse("0.20 EUR"));
    pins.quantity(
        AREA,
        "Energy of 5 g/s in 2000 h of a plant measured at 19 kW for 50 L/s ANR",
        measured.ofFlow("flow", MassFlow.ofGramsPerSecond(5.0)).energy());
  }

  private static void receivers(Pins pins) {
    for (double seconds : new double[] {10.0, 60.0}) {
      pins.quantity(
          AREA,
          "Receiver for 50 L/s ANR beside a delivery of 20 L/s for " + seconds
              + " s from 8 to 7 bar(a)",
          new ReceiverSize(
                  FreeAirFlow.ofAnrLitresPerSecond(50.0),
                  FreeAirFlow.ofAnrLitresPerSecond(20.0),
                  Duration.ofSeconds((long) seconds),
                  AbsolutePressure.ofBar(8.0),
                  AbsolutePressure.ofBar(7.0),
                  ROOM,
                  Volume.ofLitres(0.0))
              .volume());
    }
    ReceiverUse use = new ReceiverUse(
        Volume.ofLitres(270.0),
        GaugePressure.ofBar(9.0),
        GaugePressure.ofBar(6.0),
        AbsolutePressure.ofBar(1.0),
        ROOM,
        Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(30.0)),
        Optional.of(Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(12.0))),
        Duration.ofSeconds(30),
        Duration.ofSeconds(300));
    pins.word(AREA, "Verdict of a receiver of 270 L for 30 L/s ANR in 30 s", use.verdict());
    pins.quantity(AREA, "Volume needed for 30 L/s ANR in 30 s", use.needed());
    pins.number(
        AREA,
        "How long 270 L carry 30 L/s ANR beside 12 L/s from 9 to 6 bar(g)",
        use.carriesAtLeast().orElseThrow().toNanos() / 1.0e9,
        "s");
  }

  private static void supplies(Pins pins) {
    for (double height : new double[] {0.0, 500.0, 1500.0}) {
      pins.quantity(
          AREA,
          "Atmosphere at a height of " + height + " m",
          PistonCompressor.atmosphereAt(Length.ofMetres(height)));
      PistonCompressor piston = new PistonCompressor(1, 0.05);
      pins.ratio(
          AREA,
          "Share of the mass that one stage of clearance 0.05 delivers to 7 bar(g) at " + height
              + " m",
          piston.massShareAt(Length.ofMetres(height), GaugePressure.ofBar(7.0)));
    }
    Compressor compressor = new Compressor(
        List.of(
            new Compressor.Point(
                AbsolutePressure.ofBar(7.0), FreeAirFlow.ofAnrLitresPerSecond(20.0)),
            new Compressor.Point(
                AbsolutePressure.ofBar(10.0), FreeAirFlow.ofAnrLitresPerSecond(17.0))),
        AbsolutePressure.ofBar(8.0),
        AbsolutePressure.ofBar(9.5),
        Volume.ofLitres(250.0),
        ROOM);
    for (double flow : new double[] {0.005, 0.015}) {
      pins.number(
          AREA,
          "Pressure of a compressor of 20 L/s ANR at 7, 17 at 10 bar(a), 8 to 9.5, at " + flow
              + " kg/s",
          compressor.pascals(flow),
          "Pa");
      pins.number(
          AREA,
          "Time between its starts at " + flow + " kg/s",
          compressor
                  .timeBetweenStarts(MassFlow.ofKilogramsPerSecond(flow))
                  .orElseThrow()
                  .toNanos()
              / 1.0e9,
          "s");
    }
    RegulatorElement regulator = RegulatorElement.of(
            FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3),
            AbsolutePressure.ofBar(6.0))
        .withDroop(PressureDrop.ofBar(0.4), FreeAirFlow.ofAnrLitresPerSecond(15.0));
    for (double flow : new double[] {0.004, 0.02, 0.035}) {
      pins.number(
          AREA,
          "Outlet of a regulator of C 6, b 0.3, 6 bar(a), droop 0.4 at 15 L/s ANR, from 9 bar(a)"
              + " at "
              + flow + " kg/s",
          regulator.outlet(flow, 9.0e5, 293.15, 1.8e-5),
          "Pa");
    }
    RegulatorCurve curve =
        RegulatorCurve.parse("90 psig at 0 scfm; 86 psig at 20 scfm; 80 psig at 40 scfm");
    for (double scfm : new double[] {10.0, 30.0}) {
      pins.quantity(
          AREA,
          "Droop of 90 psig at 0, 86 at 20, 80 at 40 scfm, at " + scfm + " scfm (68 °F)",
          curve.droop(FreeAirFlow.ofScfm68F(scfm).massFlow()).orElseThrow());
    }
  }

  private static void leaks(Pins pins) {
    for (double mm : new double[] {0.5, 2.0}) {
      Range<MassFlow> flow = LeakSize.ofHole(
              Range.exactly(Length.ofMillimetres(mm)),
              Range.exactly(GaugePressure.ofBar(7.0)),
              OUTSIDE)
          .flow()
          .orElseThrow();
      pins.quantity(AREA, "Least leak of a hole of " + mm + " mm at 7 bar(g)", flow.least());
      pins.quantity(AREA, "Most leak of a hole of " + mm + " mm at 7 bar(g)", flow.most());
    }
    Range<MassFlow> cycling = LeakTest.of(
            new LeakTest.Cycling(
                Duration.ofSeconds(60),
                Duration.ofSeconds(240),
                5,
                Duration.ofSeconds(1),
                Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(40.0)),
                new Range<>(GaugePressure.ofBar(6.8), GaugePressure.ofBar(7.5))),
            AbsolutePressure.ofBar(1.0),
            GaugePressure.ofBar(7.0))
        .leak();
    pins.quantity(AREA, "Least leak of 40 L/s ANR loaded 60 of 300 s, five times", cycling.least());
    pins.quantity(AREA, "Most leak of 40 L/s ANR loaded 60 of 300 s, five times", cycling.most());
    Range<MassFlow> falling = LeakTest.of(
            new LeakTest.Falling(
                Range.exactly(Volume.ofCubicMetres(1.5)),
                Range.exactly(GaugePressure.ofBar(7.0)),
                Range.exactly(GaugePressure.ofBar(6.0)),
                Duration.ofSeconds(400),
                Duration.ofSeconds(1),
                ROOM,
                Optional.empty()),
            AbsolutePressure.ofBar(1.0),
            GaugePressure.ofBar(7.0))
        .leak();
    pins.quantity(AREA, "Least leak of 1.5 m³ from 7 to 6 bar(g) in 400 s", falling.least());
    pins.quantity(AREA, "Most leak of 1.5 m³ from 7 to 6 bar(g) in 400 s", falling.most());
  }
}
