package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;
import static org.airfit.browser.lessons.Numbers.written;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.lesson.Bars;
import org.airfit.lesson.Plot;
import org.airfit.lesson.Table;
import org.airfit.line.Conduit;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.ElementLoss;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.working.UnitSystem;

/** The tool runs weak: which part of the run loses most, and which change helps most. */
final class Lesson6 {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.parse("1.013 bar(a)");
  private static final double NEEDED = 90.0;

  private static final String PIPE = "3/4 in pipe";
  private static final String OUTLET = "coupling at the outlet";
  private static final String HOSE = "hose";
  private static final String TOOL = "coupling at the tool";

  private Lesson6() {}

  static List<Figure> figures() {
    return List.of(new Figure(
        "6-run",
        6,
        "Change the run and the flow",
        List.of(
            Input.of("flow", "flow of the tool", Kind.SCFM, "22 scfm", 1, 60, 0.5),
            Input.of("supply", "supply", Kind.BAR_GAUGE, "7.4 bar(g)", 3, 13, 0.1),
            Input.of("bore", "bore of the hose", Kind.MILLIMETRES, "7.9 mm", 5, 20, 0.1),
            Input.of("length", "length of the hose", Kind.METRES, "15 m", 1, 60, 1),
            Input.of(
                "outlet",
                "coupling at the outlet: C",
                Kind.CONDUCTANCE,
                "3.1 dm³/(s·bar)",
                0.8,
                20,
                0.1),
            Input.of(
                "tool",
                "coupling at the tool: C",
                Kind.CONDUCTANCE,
                "3.1 dm³/(s·bar)",
                0.8,
                20,
                0.1),
            Input.of("pipeBore", "bore of the pipe", Kind.MILLIMETRES, "20.9 mm", 8, 54, 0.1),
            Input.of("pipeLength", "length of the pipe", Kind.METRES, "38 m", 1, 300, 1)),
        "pencil-code-0",
        Lesson6::show));
  }

  /** The parts of the run as they are. */
  private record Parts(
      AirState supply, Conduit pipe, FlowCapacity outlet, Conduit hose, FlowCapacity tool) {

    Run run() {
      return Run.from(supply, ATMOSPHERE)
          .through(PIPE, pipe)
          .through(OUTLET, outlet)
          .through(HOSE, hose)
          .through(TOOL, tool);
    }

    Parts with(FlowCapacity coupling) {
      return new Parts(supply, pipe, coupling, hose, coupling);
    }

    Parts with(Conduit other) {
      return new Parts(supply, pipe, outlet, other, tool);
    }

    Parts from(AirState other) {
      return new Parts(other, pipe, outlet, hose, tool);
    }
  }

  private static void show(Given given, Shown shown) {
    double scfm = given.number("flow");
    FreeAirFlow demand = given.flow("flow");
    Parts parts = new Parts(
        air(given.number("supply")),
        Conduit.of(given.length("pipeBore"), given.length("pipeLength"), Length.parse("0.045 mm"))
            .withFittings(6),
        FlowCapacity.of(given.conductance("outlet"), 0.25),
        Conduit.of(given.length("bore"), given.length("length"), Length.parse("0.02 mm"))
            .withFittings(2),
        FlowCapacity.of(given.conductance("tool"), 0.25));
    Run today = parts.run();

    Pencil pencil = new Pencil(scfm, written(given.gauge("supply").psi(), 5) + 14.69);
    pencil.line(PIPE, given.number("pipeBore"), given.number("pipeLength"), 0.045, 6);
    pencil.coupling(OUTLET, given.number("outlet"));
    pencil.line(HOSE, given.number("bore"), given.number("length"), 0.02, 2);
    pencil.coupling(TOOL, given.number("tool"));
    shown.markdown("pencil-code-0", () -> pencil.table.toMarkdown());
    shown.said(
        "pencil-answer-0",
        Double.isNaN(pencil.pressure)
            ? "By pencil: so much air does not pass. The tool needs 90 psig."
            : form(
                "At the tool, by pencil: %.1f psia − 14.7 psi = %.0f psig. It needs 90 psig.",
                pencil.pressure, pencil.pressure - 14.69));

    RunResult now = today.at(demand);
    shown.markdown("working-code-0", () -> now.working(UnitSystem.US).toMarkdown());
    now.fold(
        delivered -> {
          delivered(given, delivered, shown);
          return true;
        },
        starved -> {
          starved(starved, shown);
          return false;
        });

    Conduit wide = Conduit.of(
            Length.parse("12.7 mm"), given.length("length"), Length.parse("0.01 mm"))
        .withFittings(2.5);
    FlowCapacity big = FlowCapacity.of(SonicConductance.parse("8.1 dm³/(s·bar)"), 0.28);
    Bars changes = Bars.of("Pressure at the tool; it needs 90", "psig", 0);
    bar(changes, "now", gauge(today, demand));
    bar(changes, "wider hose", gauge(parts.with(wide).run(), demand));
    bar(changes, "bigger couplings", gauge(parts.with(big).run(), demand));
    Run best = parts.with(big).with(wide).run();
    bar(changes, "both", gauge(best, demand));
    bar(
        changes,
        "compressor raised by 14.5 psi",
        gauge(parts.from(air(given.number("supply") + 1)).run(), demand));
    shown.svg("cell-11-0", () -> changes.svg());
    shown.said(
        "cell-12-0",
        form(
            "Largest flow with 90 psig at the tool: now %.1f scfm, with both changes %.1f scfm.",
            most(today), most(best)),
        "(Counted by mass, as lesson 3 says.)");
    double end = Math.max(26, scfm);
    shown.svg(
        "cell-12-1",
        () -> Plot.of(
                "Pressure at the tool against the flow that it takes",
                "flow [scfm, 60 °F 14.7 psia]",
                "pressure at the tool [psig]")
            .curve("now", 1, end, s -> Math.max(0, orZero(today, s)))
            .curve("wider hose and bigger couplings", 1, end, s -> Math.max(0, orZero(best, s)))
            .level("the tool needs 90 psig", NEEDED)
            .svg());
  }

  private static void delivered(Given given, RunResult.Delivered delivered, Shown shown) {
    double atTool = delivered.atToolGauge().psi();
    shown.said("cell-06-0", form("At the tool: %.0f psig. It needs 90 psig.", atTool));
    Bars shares = Bars.of("Pressure loss of each part", "psi", 1);
    Table gains = Table.of(
        "part", "pressure loss [psi]", "share of all that is lost", "the tool would gain [psi]");
    List<Double> pressures = new ArrayList<>(List.of(given.gauge("supply").psi()));
    List<String> names = new ArrayList<>(List.of("at the supply"));
    for (ElementLoss share : delivered.shares()) {
      shares.bar(share.name(), share.drop().psi());
      gains.row(
          share.name(),
          form("%.1f", share.drop().psi()),
          form("%.0f %%", 100 * share.fraction()),
          form("%.1f", share.gain().psi()));
      names.add("behind the " + share.name());
      pressures.add(pressures.get(pressures.size() - 1) - share.drop().psi());
    }
    shown.svg("cell-06-1", () -> shares.svg());
    shown.markdown("cell-08-0", () -> gains.toMarkdown());
    List<String> lines = new ArrayList<>();
    lines.add("Biggest restriction: " + delivered.bottleneck().name());
    delivered.cautions(UnitSystem.US).forEach(caution -> lines.add("! " + caution.text()));
    shown.said("cell-09-0", lines.toArray(String[]::new));
    shown.svg("+along", () -> along(names, pressures));
    shown.sum(form("At the tool: %.0f psig; it needs 90 psig. ", atTool) + "Biggest restriction: "
        + delivered.bottleneck().name() + ".");
  }

  /** The pressure from the supply to the tool, behind each part. */
  private static String along(List<String> names, List<Double> pressures) {
    Bars bars = Bars.of("Pressure along the run; the tool needs 90", "psig", 0);
    for (int i = 0; i < names.size(); i++) {
      bar(bars, names.get(i), pressures.get(i));
    }
    return bars.svg();
  }

  private static void starved(RunResult.Starved starved, Shown shown) {
    String sentence = "So much air does not pass: the flow chokes in " + starved.element() + ".";
    shown.said("cell-06-0", sentence + " The tool needs 90 psig.");
    shown.said("cell-06-1", sentence);
    shown.said("cell-08-0", sentence);
    shown.said("cell-09-0", sentence);
    shown.said("+along", sentence);
    shown.sum(sentence);
  }

  /** The pencil's steps: the same two equations, with the numbers that are written down. */
  private static final class Pencil {

    private static final double RT = 53.35 * (459.67 + 59);
    private static final double GC = 32.174;
    private static final double VISCOSITY = 1.2024e-5;
    /** Choked flow of a part of C 1 dm³/(s·bar) at 59 °F [scfm/psia]. */
    private static final double CHOKED =
        0.06894757 * Math.sqrt(293.15 / 288.15) * 1.185 / 1.2230 * 2.118880;

    private final Table table =
        Table.of("part", "p1 [psia]", "on the way", "p2 [psia]", "pressure loss [psi]");
    private final double scfm;
    private double pressure;

    Pencil(double scfm, double supply) {
      this.scfm = scfm;
      this.pressure = supply;
    }

    void line(String name, double millimetres, double metres, double rough, double fittings) {
      double bore = written(millimetres / 25.4, 4) / 12;
      double length = written(metres / 0.3048, 4);
      double massFlow = scfm / 60 * 0.07635;
      double g = massFlow / (Math.PI / 4 * bore * bore);
      double reynolds = g * bore / VISCOSITY;
      double lambda = 0.02;
      for (int i = 0; i < 2; i++) {
        lambda = Math.pow(
            -2 * Math.log10(rough / millimetres / 3.7 + 2.51 / (reynolds * Math.sqrt(lambda))), -2);
      }
      double k = lambda * length / bore + fittings;
      double perK = g * g * RT / (GC * 144 * 144);
      double first = Math.sqrt(pressure * pressure - perK * k);
      double p2 = Math.sqrt(pressure * pressure - perK * (k + 2 * Math.log(pressure / first)));
      row(
          name,
          form(
              "G = %.2f lb/(s·ft²), Re = %.0f, λ = %.4f, k = %.1f, p2 ≈ %s",
              g,
              100 * Math.rint(reynolds / 100),
              lambda,
              k,
              Double.isNaN(first) ? "no root" : form("%.2f psia", first)),
          p2);
    }

    void coupling(String name, double conductance) {
      double choked = written(CHOKED * conductance, 4) * pressure;
      double part = scfm / choked;
      row(
          name,
          form("q* = %s scfm, q/q* = %s", told(choked, "%.2f"), told(part, "%.4f")),
          pressure - pressure * (1 - 0.25) * (1 - Math.sqrt(1 - Math.pow(part, 2))));
    }

    private void row(String name, String way, double behind) {
      table.row(
          name,
          told(pressure, "%.2f"),
          Double.isNaN(pressure) ? "nothing left" : way,
          told(behind, "%.2f"),
          told(pressure - behind, "%.2f"));
      pressure = behind;
    }

    private static String told(double value, String format) {
      return Double.isNaN(value) ? "choked" : form(format, value);
    }
  }

  private static AirState air(double bar) {
    return AirState.of(GaugePressure.ofBar(bar).absolute(ATMOSPHERE), Temperature.parse("15 °C"));
  }

  private static double gauge(Run run, FreeAirFlow demand) {
    return run.at(demand).fold(d -> d.atToolGauge().psi(), s -> Double.NaN);
  }

  private static double orZero(Run run, double scfm) {
    return run.at(FreeAirFlow.ofScfm60F(scfm)).fold(d -> d.atToolGauge().psi(), s -> 0.0);
  }

  private static double most(Run run) {
    Optional<Double> most = run.largestFlow(GaugePressure.ofPsi(NEEDED))
        .map(flow ->
            FreeAirFlow.from(flow.massFlow(), ReferenceState.SCFM_60F).cubicFeetPerMinute());
    return most.orElse(0.0);
  }

  private static void bar(Bars bars, String name, double psig) {
    if (Double.isNaN(psig)) {
      bars.none(name, "so much air does not pass");
    } else if (psig < 0.0) {
      bars.none(name, "less than the atmosphere");
    } else {
      bars.bar(name, psig);
    }
  }
}
