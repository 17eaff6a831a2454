package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;
import static org.airfit.browser.lessons.Numbers.plain;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.lesson.Plot;
import org.airfit.lesson.Table;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.line.PipeEquation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;

/** When the simple formula fails: flow and pressure, where the two models part, curves. */
final class Lesson5 {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofPsi(14.7);
  private static final LossModel SIMPLE =
      LossModels.of(PipeEquation.DARCY_INLET_DENSITY, FrictionLaw.COLEBROOK);
  private static final LossModel MEAN =
      LossModels.of(PipeEquation.DARCY_MEAN_DENSITY, FrictionLaw.COLEBROOK);
  private static final LossModel EXACT = LossModels.isothermal();

  private Lesson5() {}

  static List<Figure> figures() {
    return List.of(new Figure(
        "5-hose",
        5,
        "Change the hose, the pressure and the flow",
        List.of(
            Input.of("flow", "flow wanted at the end", Kind.SCFM, "14 scfm", 1, 80, 0.5),
            Input.of("other", "a smaller flow", Kind.SCFM, "8 scfm", 1, 80, 0.5),
            Input.of("bore", "bore of the hose", Kind.MILLIMETRES, "6.3 mm", 4, 20, 0.1),
            Input.of("length", "length of the hose", Kind.METRES, "30 m", 2, 100, 1),
            Input.of("inlet", "pressure where it begins", Kind.PSIG, "90 psig", 20, 200, 1)),
        "cell-06-0",
        Lesson5::show));
  }

  /** The hose and the air that comes into it. */
  private record Hose(Conduit conduit, AirState inlet, double inletPsig) {

    /** The pressure at its end [psig], NaN if so much does not pass. */
    double end(LossModel model, double scfm) {
      return model
          .loss(conduit, mass(scfm), inlet)
          .fold(f -> GaugePressure.of(f.outlet().pressure(), ATMOSPHERE).psi(), c -> Double.NaN);
    }

    Hose of(double metres) {
      return new Hose(conduit.withLength(Length.ofMetres(metres)), inlet, inletPsig);
    }

    String left(LossModel model, double scfm) {
      double end = end(model, scfm);
      return Double.isNaN(end) ? "choked" : form("%.1f psig", end);
    }
  }

  private static MassFlow mass(double scfm) {
    return FreeAirFlow.ofScfm60F(scfm).massFlow();
  }

  private static void show(Given given, Shown shown) {
    double wanted = given.number("flow");
    double other = given.number("other");
    Hose hose = new Hose(
        Conduit.of(given.length("bore"), given.length("length"), Length.parse("0.01 mm")),
        AirState.of(given.gauge("inlet").absolute(ATMOSPHERE), Temperature.ofCelsius(20)),
        given.number("inlet"));
    Set<Double> flows = new LinkedHashSet<>(List.of(4.0, other, wanted));
    List<String> headings = new ArrayList<>(List.of("model"));
    flows.forEach(flow -> headings.add(plain(flow) + " scfm"));
    Table answers = Table.of(headings.toArray(String[]::new));
    for (LossModel model : List.of(SIMPLE, MEAN, EXACT)) {
      List<Object> cells = new ArrayList<>(List.of(model.title()));
      flows.forEach(flow -> cells.add(hose.left(model, flow)));
      answers.row(cells.toArray());
    }
    shown.markdown("cell-06-0", answers::toMarkdown);

    double open = FreeAirFlow.from(
            EXACT.flowFor(hose.conduit(), hose.inlet(), ATMOSPHERE).massFlow(),
            ReferenceState.SCFM_60F)
        .cubicFeetPerMinute();
    double largest = EXACT
        .loss(hose.conduit(), mass(wanted), hose.inlet())
        .fold(
            f -> Double.NaN,
            c -> FreeAirFlow.from(c.largest(), ReferenceState.SCFM_60F).cubicFeetPerMinute());
    String flow = plain(wanted) + " scfm";
    shown.said(
        "cell-07-0",
        Double.isNaN(largest)
            ? flow + " pass."
            : form("%s do not pass. The largest flow is %.1f scfm.", flow, largest),
        form("With an open end, at 14.7 psia, the hose passes %.1f scfm.", open));
    shown.markdown(
        "cell-eight-0",
        () -> EXACT
            .loss(hose.conduit(), mass(other), hose.inlet())
            .working(UnitSystem.US)
            .toMarkdown());
    curves(hose, other, open, given, shown);
    rule(hose, other, open, given, shown);
    wider(hose, wanted, shown);
    shown.markdown(
        "cell-working-0",
        () -> EXACT
            .flowFor(hose.conduit(), hose.inlet(), ATMOSPHERE)
            .working(UnitSystem.US)
            .toMarkdown());
    shown.sum("At " + flow + " the simple formula says: " + hose.left(SIMPLE, wanted)
        + "; the exact equation: " + hose.left(EXACT, wanted)
        + form(". With an open end %.1f scfm pass.", open));
  }

  private static void curves(Hose hose, double other, double open, Given given, Shown shown) {
    double end = 0.9999 * open;
    shown.svg(
        "cell-09-0",
        () -> Plot.of("Pressure at the end of the hose", "flow [scfm]", "pressure [psig]")
            .curve("exact, isothermal", Math.min(1, end / 2), end, s -> hose.end(EXACT, s))
            .curve(
                "Darcy at the inlet's density", Math.min(1, end / 2), end, s -> hose.end(SIMPLE, s))
            .svg());
    double metres = given.number("length");
    double low = Math.min(other, 0.66 * open);
    double high = given.isLesson("other", "bore", "length", "inlet") ? 11 : 0.91 * open;
    shown.svg(
        "cell-10-0",
        () -> Plot.of("Along the hose, exact", "distance from the outlet [m]", "pressure [psig]")
            .curve(named(low), 0, metres, m -> at(hose, m, low))
            .curve(named(high), 0, metres, m -> at(hose, m, high))
            .curve(form("%.1f scfm, open end", end), 0, metres, m -> at(hose, m, end))
            .fromZero()
            .svg());
  }

  private static String named(double scfm) {
    return (scfm == Math.rint(scfm) ? form("%.0f", scfm) : form("%.1f", scfm)) + " scfm";
  }

  private static double at(Hose hose, double metres, double scfm) {
    return metres == 0 ? hose.inletPsig() : hose.of(metres).end(EXACT, scfm);
  }

  private static void rule(Hose hose, double other, double open, Given given, Shown shown) {
    Table rule =
        Table.of("flow [scfm]", "Δp/p1, exact", "simple formula is off by", "half of Δp/p1");
    double[] flows = given.isLesson("other", "bore", "length", "inlet")
        ? new double[] {2, 4, other, 12}
        : new double[] {0.17 * open, 0.33 * open, 0.66 * open, 0.99 * open};
    for (double scfm : flows) {
      double p1 = hose.inlet().pressure().psi();
      double exact = hose.inletPsig() - hose.end(EXACT, scfm);
      double simple = hose.inletPsig() - hose.end(SIMPLE, scfm);
      rule.row(
          scfm == Math.rint(scfm) ? form("%.0f", scfm) : form("%.1f", scfm),
          form("%.0f %%", 100 * exact / p1),
          form("%.1f %%", 100 * (simple / exact - 1)),
          form("%.1f %%", -50 * exact / p1));
    }
    shown.markdown("cell-12-0", rule::toMarkdown);
  }

  private static void wider(Hose hose, double wanted, Shown shown) {
    AbsolutePressure sixty = GaugePressure.ofPsi(60).absolute(ATMOSPHERE);
    String flow = plain(wanted);
    String metres = plain(hose.conduit().length().metres());
    String bore = EXACT
        .boreFor(hose.conduit(), mass(wanted), hose.inlet(), sixty)
        .map(found -> form(
            "For %s scfm at 60 psig over %s m: a bore of %.1f mm or more.",
            flow, metres, found.conduit().bore().millimetres()))
        .orElse("No bore brings " + flow + " scfm to 60 psig.");
    String length = EXACT
        .lengthFor(hose.conduit(), mass(wanted), hose.inlet(), sixty)
        .map(found -> form(
            "With %s mm: a length of %.1f m or less.",
            plain(hose.conduit().bore().millimetres()), found.conduit().length().metres()))
        .orElse("No length of this bore does.");
    shown.said("cell-14-0", bore, length);
  }
}
