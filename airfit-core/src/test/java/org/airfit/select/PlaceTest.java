package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the place, the knocks and the tool ask of the material of couplings, adapters and hoses. */
class PlaceTest {

  private static PartFacts facts(String id) {
    return PartFacts.of(id, "part " + id).withRating(GaugePressure.ofBar(16.0));
  }

  private static PartFacts of(String id, Material material) {
    return facts(id).withMaterial(material);
  }

  /** Couplings of one material, a hose and a nipple at the outlet. */
  private static Proposal best(
      Requirement.Builder job, Material couplings, PartFacts hose, PartFacts nipple) {
    return best(job, couplings, Shelf.hose(hose, 9.5, 10.0), nipple);
  }

  private static Part.Hose rubber() {
    return Shelf.of(Wall.SMOOTH_RUBBER_HOSE, Shelf.hose(of("hose", Material.STEEL), 9.5, 10.0));
  }

  private static Proposal best(
      Requirement.Builder job, Material couplings, Part.Hose hose, PartFacts nipple) {
    List<Part> parts = new ArrayList<>(List.of(
        Shelf.socket(of("socket", couplings), "finch", "3/8 NPT female", 9.0),
        Shelf.plug(of("hose plug", couplings), "finch", "3/8 NPT female"),
        Shelf.plug(of("tool plug", couplings), "finch", "1/4 NPT male"),
        hose));
    parts.add(new Part.Adapter(
        nipple,
        End.parse("1/2 NPT male"),
        End.parse("3/8 NPT male"),
        Conduit.of(
            Length.ofMillimetres(9.0), Length.ofMillimetres(30.0), Length.ofMillimetres(0.0))));
    return Selection.of(job.outlet(End.parse("1/2 NPT female")).build(), Catalogue.of(parts))
        .fold(Selection.Proposals::best, miss -> miss.nearest().get(0));
  }

  private static Finding material(
      Requirement.Builder job, Material couplings, PartFacts hose, PartFacts nipple) {
    return finding(best(job, couplings, hose, nipple), Rule.MATERIAL_SUITS);
  }

  private static Finding finding(Proposal proposal, Rule rule) {
    return proposal.findings().stream()
        .filter(each -> each.rule() == rule)
        .findFirst()
        .orElseThrow();
  }

  private static Finding allOf(Requirement.Builder job, Material material) {
    return material(job, material, of("hose", material), of("nipple", material));
  }

  /**
   * Common practice, without a source; that of the caustic cleaner is from memory. Whether the wall of the hose stands
   * that is asked in any case.
   */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "outdoors, steel, UNMET",
    "outdoors, hardened steel, UNMET",
    "outdoors, plated hardened steel, MET",
    "outdoors, brass, MET",
    "salt air, plated hardened steel, UNMET",
    "salt air, stainless steel, MET",
    "salt air, brass, MET",
    "wash down, brass, OPEN",
    "wash down, plated brass, MET",
    "wash down, stainless steel, MET",
    "wash down, plated hardened steel, UNMET",
    "wash down with water, brass, MET",
    "wash down with caustic, brass, UNMET",
    "wash down with caustic, aluminium, UNMET",
    "wash down with caustic, plated brass, OPEN",
    "wash down with caustic, stainless steel, OPEN",
    "sparking hazard, plated brass, UNMET",
    "sparking hazard, brass, MET",
    "indoors, plastic, DOES_NOT_APPLY"
  })
  void a_material_suits_its_place_or_does_not(String place, String material, RuleOutcome outcome) {
    Requirement.Builder job = Shelf.job().environment(Environment.parse(place));
    assertThat(allOf(job, Material.parse(material)).outcome()).isEqualTo(outcome);
  }

  @Test
  void plated_hardened_steel_outdoors_comes_with_a_remark() {
    Requirement.Builder job = Shelf.job().environment(Environment.OUTDOORS).dropped();
    Finding plated = allOf(job, Material.PLATED_HARDENED_STEEL);
    assertThat(plated.outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(plated.reason())
        .contains("All parts suit outdoors with couplings dropped on concrete.")
        .contains("A plating on steel wears off where it is knocked: look for rust there.");
    assertThat(allOf(job, Material.STAINLESS_STEEL).reason()).doesNotContain("plating");
  }

  @Test
  void whether_the_cleaner_is_caustic_is_asked_where_it_decides() {
    Finding brass = allOf(Shelf.job().environment(Environment.WASH_DOWN), Material.BRASS);
    assertThat(brass.reason())
        .contains("part nipple (brass)", "part hose (end fittings: brass)", "part socket (brass)")
        .contains(
            "Ask whether the cleaner is caustic: that eats plain brass and aluminium (from memory).");
  }

  @Test
  void adapters_and_the_end_fittings_of_hoses_are_judged_too() {
    Requirement.Builder job = Shelf.job().environment(Environment.SALT_AIR);
    Finding nipple =
        material(job, Material.BRASS, of("hose", Material.BRASS), of("nipple", Material.STEEL));
    assertThat(nipple.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(nipple.reason()).startsWith("Not suited in salt air: part nipple (steel).");
    Finding hose =
        material(job, Material.BRASS, of("hose", Material.STEEL), of("nipple", Material.BRASS));
    assertThat(hose.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(hose.reason())
        .startsWith("Not suited in salt air: part hose (end fittings: steel).");
    Finding unknown = material(job, Material.BRASS, facts("hose"), facts("nipple"));
    assertThat(unknown.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(unknown.reason())
        .contains("part nipple (not known), part hose (end fittings: not known)")
        .contains("Ask the makers for what is not known.");
  }

  @Test
  void knocks_are_asked_of_couplings_only() {
    Finding brassNipple = material(
        Shelf.job().dropped(),
        Material.HARDENED_STEEL,
        of("hose", Material.BRASS),
        of("nipple", Material.BRASS));
    assertThat(brassNipple.outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(allOf(Shelf.job().dropped(), Material.BRASS).reason())
        .contains(
            "New couplings must be of hardened steel, plated hardened steel or stainless steel");
  }

  @Test
  void what_is_there_already_may_rust_but_must_not_spark() {
    PartFacts rusty = of("nipple", Material.STEEL).asExisting();
    Finding outdoors = material(
        Shelf.job().environment(Environment.OUTDOORS),
        Material.BRASS,
        of("hose", Material.BRASS),
        rusty);
    assertThat(outdoors.outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(outdoors.reason())
        .contains("All parts to buy suit outdoors.")
        .contains("There already, so not judged for rust and knocks: part nipple.");
    Requirement.Builder sparks = Shelf.job().environment(Environment.SPARKING_HAZARD);
    assertThat(
            material(sparks, Material.BRASS, of("hose", Material.BRASS), rusty).outcome())
        .isEqualTo(RuleOutcome.UNMET);
    assertThat(material(
                sparks,
                Material.BRASS,
                of("hose", Material.BRASS),
                facts("nipple").asExisting())
            .outcome())
        .isEqualTo(RuleOutcome.OPEN);
  }

  @Test
  void a_bare_hose_has_no_fittings_to_judge() {
    PartFacts facts = facts("bare");
    Part.Hose bare = new Part.Hose(
        facts,
        HoseBore.parse("3/8 in"),
        Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01)),
        End.parse("3/8 in hose"),
        End.parse("3/8 in hose"));
    Requirement job = Shelf.job().environment(Environment.SALT_AIR).build();
    Position hose = Position.of(job).get(2);
    assertThat(MaterialFit.of(job, hose, bare)).isEqualTo(MaterialFit.SUITS);
    assertThat(MaterialFit.of(job, hose, Shelf.hose(facts, 9.5, 10.0))).isEqualTo(MaterialFit.ASK);
  }

  @Test
  void where_sparks_are_a_hazard_the_hose_carries_its_charge_off() {
    Requirement.Builder job = Shelf.job().environment(Environment.SPARKING_HAZARD);
    PartFacts hose = of("hose", Material.BRASS);
    PartFacts nipple = of("nipple", Material.BRASS);
    assertThat(finding(best(job, Material.BRASS, hose, nipple), Rule.STATIC_CARRIED_OFF))
        .satisfies(asked -> assertThat(asked.outcome()).isEqualTo(RuleOutcome.OPEN))
        .extracting(Finding::reason)
        .asString()
        .contains("Ask the maker whether part hose is static-dissipative");
    assertThat(finding(
                best(job, Material.BRASS, hose.withStaticDissipative(true), nipple),
                Rule.STATIC_CARRIED_OFF)
            .outcome())
        .isEqualTo(RuleOutcome.MET);
    assertThat(finding(
                best(job, Material.BRASS, hose.withStaticDissipative(false), nipple),
                Rule.STATIC_CARRIED_OFF)
            .outcome())
        .isEqualTo(RuleOutcome.UNMET);
    assertThat(finding(
                best(Shelf.job(), Material.BRASS, hose.withStaticDissipative(false), nipple),
                Rule.STATIC_CARRIED_OFF)
            .outcome())
        .isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    assertThat(hose.withStaticDissipative(false).staticDissipative()).contains(false);
    assertThat(hose.staticDissipative()).isEmpty();
  }

  @Test
  void percussion_tools_get_no_plastic() {
    Requirement.Builder job = Shelf.job().impactTool();
    PartFacts steel = of("nipple", Material.STEEL);
    assertThat(material(best(job, Material.STEEL, rubber(), steel)).outcome())
        .isEqualTo(RuleOutcome.MET);
    assertThat(material(best(job, Material.PLASTIC, rubber(), steel)).reason())
        .contains("part socket (plastic)", "on a percussion tool");
    assertThat(material(best(job, Material.STEEL, rubber(), of("nipple", Material.PLASTIC)))
            .reason())
        .startsWith("Not suited indoors on a percussion tool: part nipple (plastic).");
    Finding plasticHose =
        material(best(job, Material.STEEL, Shelf.of(Wall.SMOOTH_PLASTIC, rubber()), steel));
    assertThat(plasticHose.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(plasticHose.reason())
        .contains("part hose (wall: plastic)", "The wall of the hose must not be of plastic.");
    Finding untold = material(job, Material.STEEL, of("hose", Material.STEEL), steel);
    assertThat(untold.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(untold.reason()).contains("part hose (wall: not known)");
  }

  private static Finding material(Proposal proposal) {
    return finding(proposal, Rule.MATERIAL_SUITS);
  }

  @Test
  void no_coupling_sits_straight_on_a_percussion_tool() {
    PartFacts nipple = of("nipple", Material.STEEL);
    Proposal straight = best(Shelf.job().impactTool(), Material.STEEL, rubber(), nipple);
    assertThat(straight.open()).extracting(Finding::rule).containsExactly(Rule.WHIP_HOSE);
    assertThat(finding(straight, Rule.WHIP_HOSE).reason())
        .contains("part tool plug would sit on a percussion tool")
        .contains("a short whip hose must go between");
    Proposal whipped = best(Shelf.job().impactTool().whipHose(), Material.STEEL, rubber(), nipple);
    assertThat(finding(whipped, Rule.WHIP_HOSE).outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(whipped.requirement().hasWhipHose()).isTrue();
    assertThat(finding(best(Shelf.job(), Material.STEEL, rubber(), nipple), Rule.WHIP_HOSE)
            .outcome())
        .isEqualTo(RuleOutcome.DOES_NOT_APPLY);
  }

  /** Knocks alone do not tell the place: brass may still be asked for. */
  @Test
  void the_place_is_asked_for_though_it_is_known_that_couplings_are_dropped() {
    Requirement.Builder job = Requirement.forTool(
            Shelf.job().build().demand(), GaugePressure.ofBar(6.2))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .reach(Length.ofMetres(10.0))
        .lubrication(Lubrication.DRY)
        .dropped();
    Finding place = allOf(job, Material.HARDENED_STEEL);
    assertThat(place.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(place.reason()).isEqualTo("Ask where it will be used.");
  }
}
