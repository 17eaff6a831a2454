package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;
import static org.airfit.browser.lessons.Numbers.plain;

import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.GroupFlow;
import org.airfit.flow.PartsInSeries;
import org.airfit.lesson.Bars;
import org.airfit.lesson.Plot;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;

/** Thread size is not flow size: rating and pressures, flow curve. */
final class Lesson3 {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofPsi(14.7);

  private Lesson3() {}

  static List<Figure> figures() {
    return List.of(new Figure(
        "3-couplers",
        3,
        "Change the couplers, the pressure and the flow",
        List.of(
            Input.of("flow", "flow of the sander", Kind.SCFM, "22 scfm", 1, 100, 0.5),
            Input.of("inlet", "pressure before the coupler", Kind.PSIG, "90 psig", 20, 250, 1),
            Input.of("old", "old: C", Kind.CONDUCTANCE, "3.1 dm³/(s·bar)", 0.5, 20, 0.1),
            Input.of("oldRatio", "old: b", Kind.NUMBER, "0.25", 0, 0.5, 0.01),
            Input.of("rated", "new: flow on its sheet", Kind.SCFM, "22 scfm", 1, 100, 0.5),
            Input.of("ratedAt", "new: pressure on its sheet", Kind.PSIG, "100 psig", 45, 250, 1),
            Input.of(
                "lost", "new: pressure loss on its sheet", Kind.PSI_LOST, "10 psi", 1, 40, 0.5),
            Input.of("shelf", "shelf: C", Kind.CONDUCTANCE, "6.2 dm³/(s·bar)", 0.5, 20, 0.1),
            Input.of("shelfRatio", "shelf: b", Kind.NUMBER, "0.28", 0, 0.5, 0.01)),
        "cell-08-0",
        Lesson3::show));
  }

  /** The part's pressure loss at the flow [psi], NaN if so much does not pass. */
  private record Case(AirState before, MassFlow flow) {

    double lost(FlowCapacity part) {
      return part.passage(flow, before).fold(passes -> passes.drop().psi(), chokes -> Double.NaN);
    }

    double scfm(FlowCapacity part, double psig) {
      return scfmOf(
          part.flow(before, GaugePressure.ofPsi(psig).absolute(ATMOSPHERE)).massFlow());
    }
  }

  private static void show(Given given, Shown shown) {
    AirState before =
        AirState.of(given.gauge("inlet").absolute(ATMOSPHERE), Temperature.parse("20 °C"));
    double inlet = given.number("inlet");
    Case now = new Case(before, given.flow("flow").massFlow());
    FlowCapacity old = FlowCapacity.of(given.conductance("old"), given.number("oldRatio"));
    FlowCapacity shelf = FlowCapacity.of(given.conductance("shelf"), given.number("shelfRatio"));
    CapacityRange rated = CapacityRange.ofRatedFlow(
        given.flow("rated"),
        given.gauge("ratedAt").absolute(ATMOSPHERE),
        PressureDrop.parse(given.text("lost")),
        Temperature.parse("20 °C"));
    double least = Math.min(c(rated.least()), c(rated.most()));
    double most = Math.max(c(rated.least()), c(rated.most()));
    shown.said(
        "cell-06-0",
        form("old, 1/4 NPT:    C = %.2f dm³/(s·bar)", c(old)),
        form(
            "new, 3/8 NPT:    C = %.2f to %.2f dm³/(s·bar)  (%s)",
            least, most, rated.assumption().citation()),
        form("shelf, 1/4 NPT:  C = %.2f dm³/(s·bar)", c(shelf)));
    shown.markdown(
        "cell-working-0",
        () -> old.passage(now.flow(), before)
            .fold(passes -> passes.working(UnitSystem.SI), chokes -> chokes.working(UnitSystem.SI))
            .toMarkdown());

    double one = now.lost(rated.least());
    double other = now.lost(rated.most());
    Bars bars = Bars.of("Pressure loss of each coupler at " + flow(given), "psi", 1);
    bar(bars, "old, 1/4 NPT", now.lost(old));
    bar(
        bars,
        "new, 3/8 NPT, at best",
        Double.isNaN(one) ? other : Double.isNaN(other) ? one : Math.min(one, other));
    bar(bars, "new, 3/8 NPT, at worst", Math.max(one, other));
    bar(bars, "on the shelf, 1/4 NPT", now.lost(shelf));
    shown.svg("cell-08-0", () -> bars.svg());

    shown.svg(
        "cell-09-0",
        () -> Plot.of(
                "Flow through each coupler from " + plain(inlet) + " psig",
                "pressure behind the coupler [psig]",
                "flow [scfm, 60 °F 14.7 psia]")
            .curve("old, 1/4 NPT, C " + plain(c(old)), 0, inlet - 0.1, p -> now.scfm(old, p))
            .curve(
                "on the shelf, 1/4 NPT, C " + plain(c(shelf)),
                0,
                inlet - 0.1,
                p -> now.scfm(shelf, p))
            .level("the sander, " + flow(given), given.number("flow"))
            .fromZero()
            .svg());

    double behind = inlet - 10.0;
    GroupFlow two = PartsInSeries.of(List.of(shelf, shelf))
        .flow(before, GaugePressure.ofPsi(behind).absolute(ATMOSPHERE));
    String pressures = form("%s to %s psig", plain(inlet), plain(behind));
    shown.said(
        "cell-15-0",
        form("one coupler,  %s: %.1f scfm", pressures, now.scfm(shelf, behind)),
        form(
            "two couplers, %s: %.1f scfm, with %.1f psig between them",
            pressures,
            scfmOf(two.massFlow()),
            GaugePressure.of(two.between().get(0), ATMOSPHERE).psi()));
    shown.sum(
        "Old coupler: " + told(now.lost(old)) + ". On the shelf: " + told(now.lost(shelf)) + ".");
  }

  private static String told(double lost) {
    return Double.isNaN(lost) ? "so much air does not pass" : form("%.1f psi lost", lost);
  }

  private static void bar(Bars bars, String name, double lost) {
    if (Double.isNaN(lost)) {
      bars.none(name, "choked");
    } else {
      bars.bar(name, lost);
    }
  }

  private static String flow(Given given) {
    return plain(given.number("flow")) + " scfm";
  }

  private static double c(FlowCapacity part) {
    return part.conductance().cubicDecimetresPerSecondBar();
  }

  private static double scfmOf(MassFlow flow) {
    return FreeAirFlow.from(flow, ReferenceState.SCFM_60F).cubicFeetPerMinute();
  }
}
