package org.airfit.browser.lessons;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.lesson.Say;
import org.airfit.lesson.Table;
import org.airfit.line.Conduit;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.Diagnosis;
import org.airfit.run.GaugeClass;
import org.airfit.run.GaugeReading;
import org.airfit.run.GaugeTest;
import org.airfit.run.PressureGauge;
import org.airfit.run.Run;
import org.airfit.run.Suspect;
import org.airfit.run.ToolDemand;
import org.airfit.run.ToolState;
import org.airfit.working.UnitSystem;

/** Two gauges: what they show at rest and at work, and which part that speaks against. */
final class Lesson10 {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.parse("1.013 bar(a)");

  /** Worked out once: what each suspect lets stand at each place. */
  private static final GaugeTest TEST = test();

  private Lesson10() {}

  static List<Figure> figures() {
    return List.of(new Figure(
        "10-gauges",
        10,
        "Change what the gauges show",
        List.of(
            Input.of("aRest", "A at the supply, at rest", Kind.BAR_GAUGE, "7 bar(g)", 5, 9, 0.1),
            Input.of("aRuns", "A, grinder running", Kind.BAR_GAUGE, "6.9 bar(g)", 4, 9, 0.1),
            Input.of(
                "bRest", "B behind the hose, at rest", Kind.BAR_GAUGE, "7.1 bar(g)", 5, 9, 0.1),
            Input.of("bRuns", "B, grinder running", Kind.BAR_GAUGE, "4.7 bar(g)", 1, 9, 0.1),
            Input.of(
                "between",
                "B behind the coupling, grinder running",
                Kind.BAR_GAUGE,
                "6.9 bar(g)",
                1,
                9,
                0.1)),
        "cell-07-0",
        Lesson10::show));
  }

  private static GaugeTest test() {
    AirState supply = AirState.of(
        GaugePressure.parse("7.0 bar(g)").absolute(ATMOSPHERE), Temperature.parse("20 °C"));
    Run told = Run.from(supply, ATMOSPHERE)
        .through("coupling", FlowCapacity.of(SonicConductance.parse("5.2 dm³/(s·bar)"), 0.30))
        .through(
            "hose",
            Conduit.of(Length.parse("9.5 mm"), Length.parse("10 m"), Length.parse("0.01 mm")));
    ToolDemand grinder = ToolDemand.following(
        "grinder",
        FreeAirFlow.parse("11 L/s ANR"),
        GaugePressure.parse("6.3 bar(g)").absolute(ATMOSPHERE));
    return GaugeTest.of(told, grinder)
        .suspecting(List.of(Suspect.part("coupling"), Suspect.bore("hose"), Suspect.toolAir()));
  }

  private static PressureGauge gauge(String name) {
    return PressureGauge.ofClass(
        name, GaugeClass.parse("1.6"), GaugePressure.ofBar(10), PressureDrop.ofBar(0.1));
  }

  private static void show(Given given, Shown shown) {
    PressureGauge a = gauge("A");
    PressureGauge b = gauge("B");
    List<GaugeReading> four = List.of(
        new GaugeReading(a, GaugeReading.SUPPLY, ToolState.AT_REST, given.gauge("aRest")),
        new GaugeReading(a, GaugeReading.SUPPLY, ToolState.RUNNING, given.gauge("aRuns")),
        new GaugeReading(b, "hose", ToolState.AT_REST, given.gauge("bRest")),
        new GaugeReading(b, "hose", ToolState.RUNNING, given.gauge("bRuns")));
    Diagnosis first = TEST.read(four);
    shown.said("cell-07-0", first.inWords(UnitSystem.SI).get(0));
    shown.markdown("cell-07-1", () -> explanations(first));
    shown.said(
        "cell-09-0",
        first.next().map(Object::toString).orElse("No other reading is expected to tell more."));
    List<GaugeReading> five = new ArrayList<>(four);
    five.add(new GaugeReading(b, "coupling", ToolState.RUNNING, given.gauge("between")));
    Diagnosis second = TEST.read(five);
    shown.said("cell-11-0", second.inWords(UnitSystem.SI).toArray(String[]::new));
    shown.markdown("cell-11-1", () -> explanations(second));
    shown.sum(second.inWords(UnitSystem.SI).get(0));
  }

  private static String explanations(Diagnosis found) {
    Table table = Table.of("explanation", "chance", "its value would be");
    found.explanations().stream()
        .limit(5)
        .forEach(each ->
            table.row(each.suspect(), Say.percent(each.probability()), each.value(UnitSystem.SI)));
    return table.toMarkdown();
  }
}
