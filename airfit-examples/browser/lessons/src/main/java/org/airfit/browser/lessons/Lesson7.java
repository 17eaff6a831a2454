package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.joint.End;
import org.airfit.lesson.Bars;
import org.airfit.lesson.Boatyard;
import org.airfit.lesson.Table;
import org.airfit.line.Conduit;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Catalogue;
import org.airfit.select.Environment;
import org.airfit.select.Lubrication;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.Selection;
import org.airfit.working.UnitSystem;

/** Choose the parts: what changes when the reach, the flow, the pressure or the place changes. */
final class Lesson7 {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.parse("1.013 bar(a)");
  private static final Catalogue SHELF = Boatyard.catalogue();

  private Lesson7() {}

  static List<Figure> figures() {
    return List.of(new Figure(
        "7-job",
        7,
        "Change what the customer needs",
        List.of(
            Input.of("flow", "flow of the tool", Kind.SCFM, "22 scfm", 1, 120, 1),
            Input.of("least", "pressure that it needs", Kind.PSIG, "90 psig", 30, 106, 1),
            Input.of("rating", "pressure that its maker allows", Kind.PSIG, "110 psig", 60, 200, 1),
            Input.of("reach", "reach of the hose", Kind.METRES, "10 m", 1, 30, 1),
            Input.choice("air", "air", "DRY", "DRY", "dry", "LUBRICATED", "lubricated"),
            Input.choice(
                "place",
                "place",
                "OUTDOORS",
                "INDOORS",
                "indoors",
                "OUTDOORS",
                "outdoors",
                "SALT_AIR",
                "salt air"),
            Input.choice(
                "hands",
                "the hose and its couplings",
                "both",
                "both",
                "are dragged and dropped",
                "",
                "lie still")),
        "cell-10-0",
        Lesson7::show));
  }

  private static Requirement job(Given given) {
    AirState supply = AirState.of(
        GaugePressure.parse("7.4 bar(g)").absolute(ATMOSPHERE), Temperature.parse("15 °C"));
    Conduit pipe = Conduit.of(
            Length.parse("20.9 mm"), Length.parse("38 m"), Length.parse("0.045 mm"))
        .withFittings(6);
    Requirement.Builder job = Requirement.forTool(given.flow("flow"), given.gauge("least"))
        .toolRating(given.gauge("rating"))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(supply, ATMOSPHERE)
        .highest(GaugePressure.parse("7.5 bar(g)"))
        .pipe("3/4 in pipe along the slip", pipe)
        .outlet(End.parse("1/2 NPT female"))
        .profile("gannet")
        .reach(given.length("reach"))
        .environment(Environment.valueOf(given.text("place")));
    if (given.has("hands")) {
      job.dropped().dragged();
    }
    return job.lubrication(Lubrication.valueOf(given.text("air"))).build();
  }

  private static void show(Given given, Shown shown) {
    Selection chosen = Selection.of(job(given), SHELF);
    Optional<Proposal> shownOne = chosen.fold(
        fitting -> Optional.of(fitting.best()),
        nothing -> nothing.nearest().stream().findFirst());
    boolean fits = chosen.fold(fitting -> true, nothing -> false);
    shown.said(
        "cell-10-0",
        chosen.<String>fold(
            fitting ->
                fitting.proposals().size() + " combinations fit. " + fitting.whyBest(UnitSystem.US),
            nothing -> "Nothing fits. " + String.join(" ", nothing.toGive(UnitSystem.US))));
    if (shownOne.isEmpty()) {
      shown.said("cell-11-0", "No part can mend it, so none is compared.");
      shown.said("cell-12-0", "No part can mend it, so none is compared.");
      shown.markdown("working-code-0", () -> chosen.working(UnitSystem.US).toMarkdown());
      shown.said("cell-14-0", "Nothing fits, so there is no list.");
      shown.said("cell-15-0", "Nothing fits, so there are no joints.");
      shown.sum("Nothing on the shelf fits, and no other part would.");
      return;
    }
    Proposal best = shownOne.get();
    Table findings = Table.of("rule", "verdict", "reason");
    best.findings(UnitSystem.US)
        .forEach(found -> findings.row(found.rule().title(), found.outcome(), found.reason()));
    shown.markdown("cell-11-0", findings::toMarkdown);
    double atTool = best.result().fold(d -> d.atToolGauge().psi(), s -> Double.NaN);
    if (Double.isNaN(atTool)) {
      shown.said("cell-12-0", "So much air does not pass the nearest combination.");
    } else {
      Bars bars = Bars.of("Pressure loss of each part in the best proposal", "psi", 2);
      best.result()
          .fold(
              d -> {
                d.shares().forEach(share -> bars.bar(share.name(), share.drop().psi()));
                return true;
              },
              s -> false);
      shown.svg("cell-12-0", bars::svg);
    }
    shown.markdown("working-code-0", () -> best.result().working(UnitSystem.US).toMarkdown());
    Table list = Table.of("quantity", "part", "name", "why");
    BillOfMaterials.of(best, SHELF, UnitSystem.US)
        .lines()
        .forEach(line -> list.row(
            line.existing() ? "there" : line.quantity(),
            line.id().orElse("-"),
            line.name(),
            line.reason()));
    if (fits) {
      shown.markdown("cell-14-0", list::toMarkdown);
    } else {
      shown.said("cell-14-0", "Nothing fits, so there is no list.");
    }
    List<String> lines = new ArrayList<>();
    if (!Double.isNaN(atTool)) {
      lines.add(form(
          "At the tool: %.0f psig at %s; it needs %s.",
          atTool, given.inUnit("flow"), given.inUnit("least")));
    }
    best.joints().forEach(joint -> lines.add("- " + joint.inWords()));
    best.cautions(UnitSystem.US).forEach(caution -> lines.add("! " + caution.text()));
    shown.said("cell-15-0", lines.toArray(String[]::new));
    shown.sum(
        fits
            ? form("It fits: %.0f psig at the tool.", atTool)
            : "Nothing on the shelf fits. What stands below is the nearest combination.");
  }
}
