package org.airfit.select;

import java.util.List;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.line.Wall;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;

/** Invented parts and a job, for the tests of this package. */
public final class Shelf {

  static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  static final AirState SUPPLY =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));

  private Shelf() {}

  static PartFacts steel(String id) {
    return PartFacts.of(id, "part " + id)
        .withRating(GaugePressure.ofBar(16.0))
        .withMaterial(Material.HARDENED_STEEL);
  }

  static Part.Socket socket(PartFacts facts, String profile, String end, double c) {
    return new Part.Socket(
        facts,
        Set.of(profile),
        End.parse(end),
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3));
  }

  static Part.Plug plug(PartFacts facts, String profile, String end) {
    return new Part.Plug(facts, profile, End.parse(end));
  }

  static Part.Hose hose(PartFacts facts, double boreMm, double metres) {
    return new Part.Hose(
        facts,
        HoseBore.of(Length.ofMillimetres(boreMm)),
        Conduit.of(
            Length.ofMillimetres(boreMm), Length.ofMetres(metres), Length.ofMillimetres(0.01)),
        End.parse("3/8 NPT male"),
        End.parse("3/8 NPT male"));
  }

  /** The same hose with a wall that is known. */
  static Part.Hose of(Wall wall, Part.Hose hose) {
    return new Part.Hose(
        hose.facts(),
        hose.bore(),
        new ConduitRange(
            hose.conduitRange().least().withWall(wall),
            hose.conduitRange().most().withWall(wall),
            hose.conduitRange().assumption()),
        hose.upstream(),
        hose.downstream());
  }

  static Part.Adapter adapter(String id, String one, String other) {
    return new Part.Adapter(
        steel(id),
        End.parse(one),
        End.parse(other),
        Conduit.of(Length.ofMillimetres(9.0), Length.ofMillimetres(30.0), Length.ofMillimetres(0.0))
            .withFittings(1.5));
  }

  /** A job with what is there, the cheapest parts wanted. */
  static Requirement.Builder cheapest(Requirement.Builder job) {
    return job.supply(SUPPLY, ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .objective(Objective.LOWEST_PRICE);
  }

  /** A job that {@link #parts()} solves without an adapter. */
  public static Requirement.Builder job() {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.2))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(SUPPLY, ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(10.0))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY);
  }

  public static List<Part> parts() {
    return List.of(
        socket(steel("wide"), "finch", "3/8 NPT female", 9.0),
        socket(steel("narrow"), "finch", "3/8 NPT female", 2.0),
        plug(steel("hose plug"), "finch", "3/8 NPT female"),
        plug(steel("tool plug"), "finch", "1/4 NPT male"),
        hose(steel("10 mm hose"), 9.5, 10.0));
  }

  /** The lines of the parts that were chosen, without what goes with them. */
  static List<BillLine> lines(Proposal proposal) {
    return BillOfMaterials.of(proposal, Catalogue.of(List.of())).lines().stream()
        .filter(line -> line.facts().isPresent())
        .toList();
  }

  /** The id of a line of a part. */
  static String id(BillLine line) {
    return line.id().orElse("none");
  }

  /** What arrives at the tool [Pa above atmosphere]; below every other where it starves. */
  static double pascalsAtTool(Proposal proposal) {
    return proposal
        .result()
        .<Double>fold(delivered -> delivered.atToolGauge().pascals(), starved -> -1.0);
  }
}
