package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;

import java.time.Duration;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.air.DewPoint;
import org.airfit.air.WaterBalance;
import org.airfit.lesson.Plot;
import org.airfit.lesson.Table;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/** Water in the line: what comes in with the air, and where it falls out. */
final class Lesson12 {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.parse("1.013 bar(a)");

  private static final Duration WORK = Duration.ofHours(8);

  private static final Source OWN = Source.derived("as it is at the intake");

  private Lesson12() {}

  static List<Figure> figures() {
    return List.of(new Figure(
        "12-water",
        12,
        "Change the weather, the pressure and the places",
        List.of(
            Input.of("intake", "air taken in", Kind.CELSIUS, "30 °C", 0, 45, 1),
            Input.of("humid", "its relative humidity", Kind.PERCENT, "70 %", 5, 100, 1),
            Input.of("air", "flow taken in", Kind.LITRES_AS_IS, "40 L/s", 1, 400, 1),
            Input.of("line", "pressure in the line", Kind.BAR_GAUGE, "7.4 bar(g)", 1, 13, 0.1),
            Input.of("cooler", "behind the aftercooler", Kind.CELSIUS, "38 °C", 5, 60, 1),
            Input.of("receiver", "in the receiver", Kind.CELSIUS, "30 °C", 1, 60, 1),
            Input.of("main", "in the main to slip 4", Kind.CELSIUS, "12 °C", 1, 60, 1),
            Input.of("dryer", "dew point of the dryer", Kind.CELSIUS, "3 °C", 1, 20, 0.5)),
        "cell-08-0",
        Lesson12::show));
  }

  /** The air that is taken in, and the pressure in the line. */
  private record Air(FreeAirFlow drawn, DewPoint intake, AbsolutePressure line) {

    static Air of(Given given) {
      Temperature taken = Temperature.ofCelsius(given.number("intake"));
      ReferenceState asItIs = ReferenceState.of("intake", taken, ATMOSPHERE, 0.0, OWN);
      return new Air(
          FreeAirFlow.of(given.number("air"), VolumeFlowUnit.LITRE_PER_SECOND, asItIs),
          DewPoint.of(AirState.of(ATMOSPHERE, taken), given.number("humid") / 100),
          given.gauge("line").absolute(ATMOSPHERE));
    }

    DewPoint saturated(double celsius) {
      return new DewPoint(Temperature.ofCelsius(celsius), line);
    }

    WaterBalance begun() {
      return WaterBalance.ofMoistAir(drawn, intake);
    }

    double inPipe(String before, double dewPoint, double celsius) {
      return begun()
          .through(before, saturated(dewPoint))
          .through("pipe", saturated(celsius))
          .stages()
          .get(1)
          .collected(WORK)
          .litres();
    }
  }

  private static void show(Given given, Shown shown) {
    Air air = Air.of(given);
    WaterBalance water = air.begun()
        .through("aftercooler", air.saturated(given.number("cooler")))
        .through("receiver", air.saturated(given.number("receiver")))
        .through("main to slip 4", air.saturated(given.number("main")));
    shown.markdown("cell-08-0", () -> places(water));
    DewPoint compressed = air.intake().at(air.line());
    DewPoint dried = air.saturated(given.number("dryer"));
    shown.said(
        "cell-11-0",
        form(
            "Dew point of the air taken in: %.1f °C. In the line: %.1f °C.",
            air.intake().temperature().celsius(), compressed.temperature().celsius()),
        form(
            "Dried to a dew point of %s: %.0f °C as a frost point when it is let out at 1.013 bar(a).",
            dried.in(UnitSystem.SI), dried.at(ATMOSPHERE).temperature().celsius()));
    shown.svg(
        "cell-11-1",
        () -> Plot.of(
                "Water that falls out in a pipe behind the receiver, or behind a dryer",
                "temperature of the pipe [°C]",
                "falls out in a shift of 8 h [L]")
            .curve(
                "without a dryer",
                0.1,
                35,
                celsius -> air.inPipe("receiver", given.number("receiver"), celsius))
            .curve(
                "with a dryer to " + Numbers.plain(given.number("dryer")) + " °C",
                0.1,
                35,
                celsius -> air.inPipe("dryer", given.number("dryer"), celsius))
            .fromZero()
            .svg());
    shown.sum(form(
        "In a shift of 8 h %.1f L come in, and %.1f L fall out in the main to slip 4.",
        WaterBalance.litres(water.takenIn(), WORK).litres(),
        water.stages().get(2).collected(WORK).litres()));
  }

  private static String places(WaterBalance water) {
    Table places = Table.of("place", "falls out [kg/h]", "in a shift [L]");
    places.row(
        "taken in",
        form("%.2f", 3600 * water.takenIn().kilogramsPerSecond()),
        form("%.1f", WaterBalance.litres(water.takenIn(), WORK).litres()));
    water
        .stages()
        .forEach(stage -> places.row(
            stage.name(),
            form("%.2f", 3600 * stage.takenOut().kilogramsPerSecond()),
            form("%.1f", stage.collected(WORK).litres())));
    places.row(
        "left as vapour",
        form("%.2f", 3600 * water.left().kilogramsPerSecond()),
        form("%.1f", WaterBalance.litres(water.left(), WORK).litres()));
    return places.toMarkdown();
  }
}
