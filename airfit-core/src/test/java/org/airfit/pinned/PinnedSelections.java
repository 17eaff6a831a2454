package org.airfit.pinned;

import java.util.List;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.RunResult;
import org.airfit.select.Catalogue;
import org.airfit.select.Environment;
import org.airfit.select.Finding;
import org.airfit.select.Lubrication;
import org.airfit.select.Material;
import org.airfit.select.Objective;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.Selection;
import org.airfit.select.SpareStock;

/** Which parts of a small invented catalogue are chosen for a job, and what they bring. */
final class PinnedSelections {

  private static final String AREA = "select";

  private PinnedSelections() {}

  static void ask(Pins pins) {
    for (double litres : new double[] {6.0, 10.0, 18.0, 40.0}) {
      for (Objective objective : Objective.values()) {
        job(pins, litres, objective);
      }
    }
    for (double mean : new double[] {0.5, 4.0}) {
      pins.word(
          AREA,
          "Spare couplings where " + mean + " fail meanwhile and a shortage may come once in 20",
          SpareStock.least(mean, 0.05));
    }
  }

  private static void job(Pins pins, double litres, Objective objective) {
    Requirement requirement = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(litres), GaugePressure.ofBar(5.8))
        .toolRating(GaugePressure.ofBar(8.0))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(
            AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)),
            AbsolutePressure.ofBar(1.0))
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(10.0))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .objective(objective)
        .build();
    Selection selection = Selection.of(requirement, Catalogue.of(parts()));
    String of = " for " + litres + " L/s ANR at 5.8 bar(g) over 10 m, " + objective;
    if (selection instanceof Selection.Proposals proposals) {
      pins.word(AREA, "How many proposals" + of, proposals.proposals().size());
      tell(pins, proposals.best(), of);
    } else if (selection instanceof Selection.NothingFits miss) {
      pins.word(AREA, "How many near misses" + of, miss.nearest().size());
      tell(pins, miss.nearest().get(0), of);
    }
  }

  private static void tell(Pins pins, Proposal first, String of) {
    pins.word(
        AREA,
        "The parts of the first" + of,
        first.parts().stream().map(Part::id).toList());
    first.price().ifPresent(price -> pins.word(AREA, "The price of the first" + of, price));
    pins.word(
        AREA,
        "What the first does not meet" + of,
        first.unmet().stream().map(Finding::rule).toList());
    if (first.result() instanceof RunResult.Delivered delivered) {
      pins.quantity(AREA, "Pressure at the tool with the first" + of, delivered.atToolGauge());
    }
  }

  private static PartFacts facts(String id, String price) {
    return PartFacts.of(id, id)
        .withRating(GaugePressure.ofBar(16.0))
        .withMaterial(Material.HARDENED_STEEL)
        .withPrice(Money.parse(price));
  }

  private static Part.Socket socket(String id, String price, double c) {
    return new Part.Socket(
        facts(id, price),
        Set.of("plover"),
        End.parse("3/8 NPT female"),
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3));
  }

  private static Part.Hose hose(String id, String price, double bore) {
    return new Part.Hose(
        facts(id, price),
        HoseBore.of(Length.ofMillimetres(bore)),
        Conduit.of(Length.ofMillimetres(bore), Length.ofMetres(10.0), Wall.SMOOTH_RUBBER_HOSE),
        End.parse("3/8 NPT male"),
        End.parse("3/8 NPT male"));
  }

  private static List<Part> parts() {
    return List.of(
        socket("narrow socket", "9 USD", 3.0),
        socket("usual socket", "14 USD", 6.0),
        socket("wide socket", "31 USD", 11.0),
        new Part.Plug(facts("hose plug", "3 USD"), "plover", End.parse("3/8 NPT female")),
        new Part.Plug(facts("tool plug", "2.5 USD"), "plover", End.parse("1/4 NPT male")),
        hose("hose of 8 mm", "28 USD", 8.0),
        hose("hose of 10 mm", "36 USD", 10.0),
        hose("hose of 13 mm", "52 USD", 13.0));
  }
}
