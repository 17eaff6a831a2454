package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;
import static org.airfit.browser.lessons.Numbers.plain;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.airfit.lesson.Plot;
import org.airfit.lesson.Table;
import org.airfit.network.DayResult;
import org.airfit.network.DemandTimes;
import org.airfit.network.LineReceiver;
import org.airfit.network.PlantDay;
import org.airfit.network.TimedUse;
import org.airfit.plant.PressureBand;
import org.airfit.plant.TimedCompressor;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Power;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.ToolDemand;

/** A day of air: a receiver, a compressor that answers late, and a user that draws in bursts. */
final class Lesson11 {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.parse("1.013 bar(a)");

  private static final DemandTimes.Span SHIFT =
      new DemandTimes.Span(Duration.ofMinutes(450), Duration.ofHours(17), 1.0);

  /** The larger receiver of the picture [L]. */
  private static final double LARGER = 1500;

  private Lesson11() {}

  static List<Figure> figures() {
    return List.of(new Figure(
        "11-burst",
        11,
        "Change the compressor, the receiver and the lance",
        List.of(
            Input.of(
                "capacity",
                "capacity of the compressor",
                Kind.LITRES_PER_SECOND,
                "40 L/s ANR",
                30,
                100,
                1),
            Input.of("receiver", "receiver", Kind.LITRES, "800 L", 300, 5000, 10),
            Input.of("lance", "air of the lance", Kind.LITRES_PER_SECOND, "50 L/s ANR", 5, 100, 1),
            Input.of("lasting", "time of a burst", Kind.SECONDS, "30 s", 5, 50, 1),
            Input.of("need", "what the lance needs", Kind.BAR_GAUGE, "6 bar(g)", 4, 7, 0.1),
            Input.of(
                "leaks", "leaks at 7.4 bar(g)", Kind.LITRES_PER_SECOND, "9.6 L/s ANR", 1, 15, 0.1)),
        "cell-06-0",
        Lesson11::show));
  }

  private static GaugePressure bar(double bar) {
    return GaugePressure.ofBar(bar);
  }

  private static TimedUse use(String name, FreeAirFlow flow, double need, DemandTimes when) {
    return new TimedUse(
        name, Optional.empty(), ToolDemand.fixed(name, flow), Optional.of(bar(need)), when);
  }

  /** The plant with what the fields hold. */
  private record Yard(Given given) {

    TimedCompressor compressor(int startDelay) {
      return new TimedCompressor(
          "compressor",
          given.flow("capacity"),
          Optional.of(new PressureBand(bar(7.0), bar(7.8))),
          Duration.ofSeconds(startDelay),
          Duration.ofSeconds(2),
          Optional.of(Duration.ofMinutes(5)),
          Duration.ofSeconds(20),
          Power.parse("15 kW"),
          Power.parse("4.5 kW"),
          bar(7.4));
    }

    PlantDay plant(
        PlantDay.Builder begun,
        TimedCompressor compressor,
        Volume receiver,
        double start,
        DemandTimes tools,
        DemandTimes bursts) {
      return begun
          .receiver(new LineReceiver("receiver", Optional.empty(), receiver, bar(start)))
          .compressor(compressor)
          .use(new TimedUse(
              "leaks",
              Optional.empty(),
              ToolDemand.following("leaks", given.flow("leaks"), bar(7.4).absolute(ATMOSPHERE)),
              Optional.empty(),
              DemandTimes.always()))
          .use(use("tools", FreeAirFlow.ofAnrLitresPerSecond(14), 5.5, tools))
          .use(use("lance", given.flow("lance"), given.number("need"), bursts))
          .build();
    }

    Duration lasting() {
      return Duration.ofMillis(Math.round(1000 * given.number("lasting")));
    }

    PlantDay day() {
      return plant(
          PlantDay.at(ATMOSPHERE, Temperature.parse("20 °C")),
          compressor(10),
          Volume.parse(given.text("receiver")),
          7.4,
          DemandTimes.of(List.of(SHIFT)),
          DemandTimes.repeated(
              Duration.ofHours(8), lasting(), Duration.ofMinutes(10), Duration.ofHours(16)));
    }

    /** One burst from 10 s on, which begins as the pressure passes 7.0 bar. */
    PlantDay burst(int startDelay, double litres) {
      double start = 7.0 + (given.number("leaks") + 14) * 10 / litres;
      return plant(
          PlantDay.at(ATMOSPHERE, Temperature.parse("20 °C")).lasting(Duration.ofSeconds(90)),
          compressor(startDelay),
          Volume.ofLitres(litres),
          start,
          DemandTimes.always(),
          DemandTimes.of(List.of(new DemandTimes.Span(
              Duration.ofSeconds(10), Duration.ofSeconds(10).plus(lasting()), 1.0))));
    }
  }

  private static void show(Given given, Shown shown) {
    Yard yard = new Yard(given);
    DayResult day = yard.day().simulate();
    shown.markdown("cell-06-0", () -> users(day));
    DayResult.CompressorDay did = day.compressors().get(0);
    shown.said(
        "cell-07-0",
        form(
            "The compressor is loaded for %.1f h, idles for %.1f h and stands for %.1f h.",
            did.loaded().toMinutes() / 60.0,
            did.idle().toMinutes() / 60.0,
            did.standing().toMinutes() / 60.0),
        form(
            "Loadings: %d. Starts of its motor: %d, at most %d in an hour. Energy: %.0f kWh.",
            did.loads(), did.starts(), did.mostStartsInAnHour(), did.energy().kilowattHours()),
        form(
            "Air made: %.0f kg; what is not accounted for: %.6f kg.",
            day.balance().madeKilograms(), Math.abs(day.balance().unaccountedKilograms())));
    double litres = given.number("receiver");
    shown.svg("cell-09-0", () -> picture(given, yard, litres));
    DayResult.UseDay lance = day.uses().get(2);
    double lowest = lance.lowest().orElseThrow().atTool().bar();
    shown.sum(form(
        "The lance has %.2f bar at the lowest and is short for %s min of the day.",
        lowest, minutes(lance.below())));
  }

  private static String picture(Given given, Yard yard, double litres) {
    double end = 10 + given.number("lasting");
    Plot plot = Plot.of(
        "One burst of the lance, from 10 to " + plain(end) + " s", "time [s]", "pressure [bar(g)]");
    course(plot, plain(litres) + " L, the compressor idles", yard.burst(2, litres));
    course(plot, plain(litres) + " L, its motor must start", yard.burst(10, litres));
    course(plot, plain(LARGER) + " L, the compressor idles", yard.burst(2, LARGER));
    return plot.level(form("the lance needs %.1f bar", given.number("need")), given.number("need"))
        .svg();
  }

  private static void course(Plot plot, String name, PlantDay day) {
    List<DayResult.Stretch> course = day.simulate().course();
    plot.line(
        name,
        course.stream().mapToDouble(one -> one.from().toMillis() / 1000.0).toArray(),
        course.stream().mapToDouble(one -> one.lowest().bar()).toArray());
  }

  private static String users(DayResult day) {
    Table users =
        Table.of("user", "needs [bar(g)]", "lowest [bar(g)]", "short for [min]", "runs for [min]");
    day.uses()
        .forEach(each -> users.row(
            each.name(),
            each.need().map(need -> form("%.1f", need.bar())).orElse("-"),
            form("%.2f", each.lowest().orElseThrow().atTool().bar()),
            minutes(each.below()),
            minutes(each.runs())));
    return users.toMarkdown();
  }

  private static String minutes(Duration time) {
    return form("%.1f", time.toMillis() / 60000.0);
  }
}
