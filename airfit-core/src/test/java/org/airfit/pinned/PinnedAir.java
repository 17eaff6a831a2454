package org.airfit.pinned;

import java.time.Duration;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.air.Compression;
import org.airfit.air.DewPoint;
import org.airfit.air.FilterLoss;
import org.airfit.air.PipeSlope;
import org.airfit.air.RealAir;
import org.airfit.air.WaterBalance;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;

/** The state of air, its compression, its water. */
final class PinnedAir {

  private static final String AREA = "air";

  private PinnedAir() {}

  static void ask(Pins pins) {
    states(pins);
    compression(pins);
    water(pins);
    rest(pins);
  }

  private static void states(Pins pins) {
    for (double bar : new double[] {1.0, 7.0, 13.0}) {
      for (double celsius : new double[] {-20.0, 20.0, 80.0}) {
        String at = " of air at " + bar + " bar(a), " + celsius + " °C";
        AbsolutePressure pressure = AbsolutePressure.ofBar(bar);
        Temperature temperature = Temperature.ofCelsius(celsius);
        AirState state = AirState.of(pressure, temperature);
        pins.quantity(AREA, "Density" + at, state.density());
        pins.quantity(AREA, "Viscosity" + at, state.viscosity());
        RealAir real = RealAir.of(pressure, temperature);
        pins.ratio(AREA, "Compressibility factor" + at, real.compressibilityFactor());
        pins.quantity(AREA, "Viscosity, with that of density," + at, real.viscosity());
        if (bar > 1.0) {
          pins.quantity(AREA, "Speed of sound, real," + at, real.speedOfSound());
          pins.ratio(AREA, "Ratio of heat capacities, real," + at, real.heatCapacityRatio());
        } else {
          pins.quantity(AREA, "Speed of sound" + at, state.speedOfSound());
          if (celsius >= 0.0) {
            pins.quantity(AREA, "Density at 60 % humidity" + at, state.humidDensity(0.6));
          }
        }
      }
    }
  }

  private static void compression(Pins pins) {
    AirState intake = AirState.of(AbsolutePressure.ofBar(1.0), Temperature.ofCelsius(20.0));
    for (double bar : new double[] {4.0, 8.0, 11.0}) {
      AbsolutePressure discharge = AbsolutePressure.ofBar(bar);
      String to = " from 1 bar(a), 20 °C, to " + bar + " bar(a)";
      pins.number(
          AREA,
          "Isothermal work" + to,
          Compression.isothermal(intake, discharge).joulesPerKilogram(),
          "J/kg");
      pins.number(
          AREA,
          "Adiabatic work" + to,
          Compression.adiabatic(intake, discharge).joulesPerKilogram(),
          "J/kg");
      pins.number(
          AREA,
          "Work in two stages" + to,
          Compression.staged(intake, discharge, 2).joulesPerKilogram(),
          "J/kg");
      pins.quantity(
          AREA,
          "Adiabatic power for 0.1 kg/s" + to,
          Compression.adiabatic(intake, discharge).power(MassFlow.ofKilogramsPerSecond(0.1)));
    }
  }

  private static void water(Pins pins) {
    for (double celsius : new double[] {0.5, 20.0, 35.0}) {
      for (double humidity : new double[] {0.4, 0.9}) {
        String of = " of air at 1 bar(a), " + celsius + " °C, humidity " + humidity;
        Temperature temperature = Temperature.ofCelsius(celsius);
        DewPoint dewPoint =
            DewPoint.of(AirState.of(AbsolutePressure.ofBar(1.0), temperature), humidity);
        pins.quantity(AREA, "Dew point" + of, dewPoint.temperature());
        pins.quantity(
            AREA,
            "Dew point at 8 bar(a)" + of,
            dewPoint.at(AbsolutePressure.ofBar(8.0)).temperature());
        pins.quantity(AREA, "Vapour pressure" + of, dewPoint.vapourPressure());
        pins.ratio(AREA, "Humidity ratio" + of, dewPoint.humidityRatio());
        pins.quantity(AREA, "Vapour density" + of, dewPoint.vapourDensity(temperature));
      }
    }
    for (double behind : new double[] {3.0, 25.0, 40.0}) {
      WaterBalance balance = WaterBalance.ofMoistAir(
              FreeAirFlow.parse("100 L/s ANR"),
              DewPoint.of(
                  AirState.of(AbsolutePressure.ofBar(1.0), Temperature.ofCelsius(30.0)), 0.7))
          .through(
              "cooler", new DewPoint(Temperature.ofCelsius(behind), AbsolutePressure.ofBar(8.0)));
      String at =
          " of 100 L/s ANR from 30 °C, humidity 0.7, cooled to " + behind + " °C at 8 bar(a)";
      pins.quantity(AREA, "Water taken in" + at, balance.takenIn());
      pins.quantity(AREA, "Water left" + at, balance.left());
      pins.quantity(
          AREA,
          "Condensate in 8 hours" + at,
          balance.stages().get(0).collected(Duration.ofHours(8)));
    }
  }

  private static void rest(Pins pins) {
    for (double share : new double[] {0.5, 1.0, 1.4}) {
      FilterLoss loss = new FilterLoss(
          MassFlow.ofKilogramsPerSecond(0.05),
          AbsolutePressure.ofBar(8.0),
          PressureDrop.ofBar(0.1),
          PressureDrop.ofBar(0.35),
          MassFlow.ofKilogramsPerSecond(0.05 * share),
          AbsolutePressure.ofBar(7.0));
      String at = " of a filter of 0.1 bar at 0.05 kg/s and 8 bar(a), at " + share
          + " of that flow and 7 bar(a)";
      pins.quantity(AREA, "Loss in proportion" + at, loss.inProportion());
      pins.quantity(AREA, "Loss by the square" + at, loss.bySquare());
    }
    for (double slope : List.of(0.005, 0.01)) {
      pins.quantity(
          AREA,
          "Fall of a main of 30 m at a slope of " + slope,
          new PipeSlope(Length.ofMetres(30.0), slope, true).fall());
      pins.word(
          AREA,
          "Whether a main of 30 m at a slope of " + slope + " against the air is steep enough",
          new PipeSlope(Length.ofMetres(30.0), slope, false).verdict());
    }
  }
}
