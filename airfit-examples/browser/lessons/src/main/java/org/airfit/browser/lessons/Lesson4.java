package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;
import static org.airfit.browser.lessons.Numbers.plain;
import static org.airfit.browser.lessons.Numbers.written;

import java.util.List;
import java.util.stream.IntStream;
import org.airfit.air.AirState;
import org.airfit.lesson.Bars;
import org.airfit.lesson.Plot;
import org.airfit.lesson.Table;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LineFormula;
import org.airfit.line.LineLoss;
import org.airfit.line.LossComparison;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.line.PipeEquation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;

/** Pressure loss by hand: bore, length and flow, the loss and its working. */
final class Lesson4 {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofPsi(14.7);
  private static final LossModel DARCY =
      LossModels.of(PipeEquation.DARCY_INLET_DENSITY, FrictionLaw.COLEBROOK);

  /** The handbook's table: flow [scfm] and pressure loss of 100 ft [psi]. */
  private static final double[] TABLE_FLOW = {20, 40, 50, 60, 80};

  private static final double[] TABLE_DROP = {0.345, 1.3, 1.99, 2.85, 4.96};

  private Lesson4() {}

  static List<Figure> figures() {
    return List.of(new Figure(
        "4-pipe",
        4,
        "Change the pipe and the flow",
        List.of(
            Input.of("flow", "flow", Kind.SCFM, "60 scfm", 5, 150, 1),
            Input.of("bore", "bore of the pipe", Kind.INCHES, "0.824 in", 0.4, 2.1, 0.001),
            Input.of("length", "length", Kind.METRES, "38 m", 1, 200, 1),
            Input.of("rough", "roughness", Kind.INCHES, "0.0018 in", 0.0001, 0.02, 0.0001),
            Input.of("inlet", "pressure at the inlet", Kind.PSIG, "100 psig", 30, 200, 1)),
        "cell-06-0",
        Lesson4::show));
  }

  /** The steps of the pencil, with the numbers that are written down. */
  private record Pencil(
      double massFlow,
      double reynolds,
      double first,
      double lambda,
      double resistance,
      double perArea,
      double density,
      double drop) {

    /** Takes cubic feet a second of free air, bore and length in feet, roughness over bore, psia. */
    static Pencil of(double free, double bore, double length, double rough, double pressure) {
      double m = free * (144 * 14.7 / (53.35 * 519.67));
      double re = 4 * m / (Math.PI * bore * 1.2042e-5);
      double[] lambda = {0.02, 0.02, 0.02};
      for (int i = 1; i <= 2; i++) {
        double x = -2 * Math.log10(rough / 3.7 + 2.51 / (re * Math.sqrt(lambda[i - 1])));
        lambda[i] = 1 / (x * x);
      }
      double k = lambda[2] * length / bore;
      double g = 4 * m / (Math.PI * bore * bore);
      double rho = 144 * pressure / (53.35 * 519.67);
      return new Pencil(
          m, re, lambda[1], lambda[2], k, g, rho, k * g * g / (2 * rho * 144 * 32.174));
    }

    Table table() {
      return Table.of("step", "number", "unit")
          .row("mass flow", form("%.5f", massFlow), "lb/s")
          .row("Reynolds number", form("%.0f", 100 * Math.rint(reynolds / 100)), "none")
          .row("λ, first round", form("%.5f", first), "none")
          .row("λ, second round", form("%.5f", lambda), "none")
          .row("resistance k", form("%.2f", resistance), "none")
          .row("mass flow per area G", form("%.3f", perArea), "lb/(s·ft²)")
          .row("density at the inlet", form("%.4f", density), "lb/ft³")
          .row("pressure loss", form("%.3f", drop), "psi");
    }
  }

  private static void show(Given given, Shown shown) {
    double scfm = given.number("flow");
    double inches = given.number("bore");
    Conduit pipe = Conduit.of(given.length("bore"), given.length("length"), given.length("rough"));
    AirState inlet =
        AirState.of(given.gauge("inlet").absolute(ATMOSPHERE), Temperature.ofFahrenheit(60));
    MassFlow flow = given.flow("flow").massFlow();
    double feet = written(pipe.length().feet(), 5);
    Pencil pencil = Pencil.of(
        scfm / 60, inches / 12, feet, given.number("rough") / inches, given.number("inlet") + 14.7);
    shown.markdown("cell-06-0", () -> pencil.table().toMarkdown());

    LineLoss byDarcy = DARCY.loss(pipe, flow, inlet);
    shown.markdown("cell-08-0", () -> byDarcy.working(UnitSystem.US).toMarkdown());

    LineLoss byHarris = LineFormula.HARRIS.loss(pipe, flow, inlet);
    LineLoss exact = LossModels.isothermal().loss(pipe, flow, inlet);
    Bars bars = Bars.of(
        "Pressure loss of " + plain(given.number("length")) + " m of " + pipe(given) + " at "
            + plain(scfm) + " scfm",
        "psi",
        2);
    bar(bars, "by hand, Darcy", pencil.drop());
    bar(bars, "library, Darcy", psi(byDarcy));
    bar(bars, "library, exact isothermal", psi(exact));
    for (int i = 0; i < TABLE_FLOW.length; i++) {
      if (isTable(given) && TABLE_FLOW[i] == scfm) {
        bars.bar("the handbook's table", TABLE_DROP[i] * feet / 100);
      }
    }
    bar(bars, "Harris", psi(byHarris));
    shown.svg("cell-10-0", () -> bars.svg());

    LossComparison comparison = LossComparison.of(
        List.of(DARCY, LineFormula.HARRIS, LineFormula.UNWIN, LineFormula.SPITZGLASS_HIGH),
        pipe,
        flow,
        inlet);
    Table others = Table.of(
        "formula", "pressure loss [psi]", "against the exact equation", "fitted to", "usually");
    for (LineLoss loss : comparison.losses()) {
      others.row(
          loss.model().title(),
          told(psi(loss)),
          comparison.deviation(loss).isPresent()
              ? form("%+.0f %%", 100 * comparison.deviation(loss).getAsDouble())
              : "none: choked",
          loss.model().fitBasis(),
          loss.model().bias());
    }
    shown.markdown("cell-11-0", () -> others.toMarkdown());
    shown.svg("cell-13-0", () -> curve(given, pipe, inlet));

    shown.said("cell-17-0", hidden(given, pencil, psi(byHarris) / psi(byDarcy)));
    shown.sum(
        Double.isNaN(psi(exact))
            ? "So much air does not pass: the exact equation says choked."
            : form(
                "Lost: %.2f psi by pencil, %.2f psi by the exact equation. At the end: %.1f psig.",
                pencil.drop(), psi(exact), given.number("inlet") - psi(exact)));
  }

  /** The friction factor that is hidden in Harris's formula. */
  private static String[] hidden(Given given, Pencil pencil, double ofDarcy) {
    double inches = given.number("bore");
    double hidden = pencil.lambda() * ofDarcy;
    if (Double.isNaN(hidden)) {
      return new String[] {"Harris or Darcy has no answer: so much pressure is not there."};
    }
    double rougher = IntStream.range(0, 400)
        .mapToDouble(i -> given.number("rough") + i * 0.00005)
        .filter(e -> e / inches < 0.05
            && FrictionLaw.COLEBROOK.factor(pencil.reynolds(), e / inches).darcy() >= hidden)
        .findFirst()
        .orElse(Double.NaN);
    String numbers = form(
        "λ by Colebrook at Re = %.0f: %.4f;   λ inside Harris: %.4f;   ratio %.2f",
        100 * Math.rint(pencil.reynolds() / 100),
        pencil.lambda(),
        hidden,
        hidden / pencil.lambda());
    if (hidden <= pencil.lambda()) {
      return new String[] {numbers, "It is not above Colebrook's: no rust is hidden in it."};
    }
    return new String[] {
      numbers,
      Double.isNaN(rougher)
          ? "No pipe of this bore is rough enough for this λ."
          : form(
              "This λ belongs to a roughness of %.4f in instead of %s in: a pipe with some rust.",
              rougher, plain(given.number("rough")))
    };
  }

  private static String curve(Given given, Conduit pipe, AirState inlet) {
    Conduit hundredFeet = pipe.withLength(Length.ofFeet(100));
    double most = Math.max(80, given.number("flow"));
    double end = most;
    while (end > 1 && Double.isNaN(per100(DARCY, hundredFeet, inlet, end))) {
      end -= 1;
    }
    while (end > 1 && Double.isNaN(per100(LineFormula.HARRIS, hundredFeet, inlet, end))) {
      end -= 1;
    }
    Plot plot = Plot.of(
            "Pressure loss per 100 ft of " + pipe(given) + " from " + plain(given.number("inlet"))
                + " psig",
            "flow [scfm]",
            "pressure loss [psi]")
        .curve("Darcy with Colebrook", 1, end, s -> per100(DARCY, hundredFeet, inlet, s))
        .curve("Harris", 1, end, s -> per100(LineFormula.HARRIS, hundredFeet, inlet, s));
    if (isTable(given)) {
      plot.points("handbook table", TABLE_FLOW, TABLE_DROP);
    }
    return plot.fromZero().svg();
  }

  private static double per100(LossModel model, Conduit pipe, AirState inlet, double scfm) {
    return psi(model.loss(pipe, FreeAirFlow.ofScfm60F(scfm).massFlow(), inlet));
  }

  /** The handbook's table is of new 3/4 in pipe at 100 psig. */
  private static boolean isTable(Given given) {
    return given.isLesson("bore", "inlet");
  }

  private static String pipe(Given given) {
    return given.isLesson("bore")
        ? "3/4 in pipe"
        : "pipe of " + plain(given.number("bore")) + " in bore";
  }

  private static void bar(Bars bars, String name, double psi) {
    if (Double.isNaN(psi)) {
      bars.none(name, "choked");
    } else {
      bars.bar(name, psi);
    }
  }

  private static String told(double psi) {
    return Double.isNaN(psi) ? "choked" : form("%.2f", psi);
  }

  private static double psi(LineLoss loss) {
    return loss.fold(flowing -> flowing.drop().psi(), choked -> Double.NaN);
  }
}
