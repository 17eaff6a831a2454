package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.line.Conduit;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;

class SelectionProperties {

  private static List<Proposal> listed(Selection selection) {
    return selection.fold(Selection.Proposals::proposals, Selection.NothingFits::nearest);
  }

  private static List<String> ids(Proposal proposal) {
    return proposal.parts().stream().map(Part::id).toList();
  }

  private static List<List<String>> ids(List<Proposal> proposals) {
    return proposals.stream().map(SelectionProperties::ids).toList();
  }

  @Property(tries = 300)
  void the_list_is_that_of_every_combination_built_judged_and_sorted(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.parts());
    Requirement job = jumble.job().build();
    Selection found = Selection.of(job, catalogue);
    List<Proposal> known = new EveryCombination(job, catalogue).best();
    assertThat(ids(listed(found))).isEqualTo(ids(known));
    assertThat(found instanceof Selection.Proposals).isEqualTo(known.get(0).fits());
    for (int i = 0; i < known.size(); i++) {
      assertThat(Shelf.pascalsAtTool(listed(found).get(i)))
          .isEqualTo(Shelf.pascalsAtTool(known.get(i)));
      assertThat(listed(found).get(i).joints()).isEqualTo(known.get(i).joints());
    }
  }

  private static List<SlotPart> slotParts(Proposal p) {
    List<SlotPart> parts = new ArrayList<>(List.of(
        new SlotPart(Slot.OUTLET_SOCKET, p.outletSocket()),
        new SlotPart(Slot.HOSE_PLUG, p.hosePlug()),
        new SlotPart(Slot.HOSE, p.hose()),
        new SlotPart(Slot.TOOL_SOCKET, p.toolSocket()),
        new SlotPart(Slot.TOOL_PLUG, p.toolPlug())));
    p.joints()
        .forEach(joint ->
            joint.adapters().forEach(adapter -> parts.add(new SlotPart(Slot.ADAPTER, adapter))));
    return parts;
  }

  @Property(tries = 100)
  void a_part_breaks_a_rule_on_its_own_just_where_the_rule_is_not_met(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.parts());
    Requirement job = jumble.job().build();
    Set<Rule> ofOnePart =
        EnumSet.complementOf(EnumSet.of(Rule.PROFILE_MATES, Rule.ENDS_MATE, Rule.AIR_AT_TOOL));
    for (Proposal proposal : new EveryCombination(job, catalogue).proposals()) {
      int broken = slotParts(proposal).stream()
          .mapToInt(each -> Rule.brokenBy(job, each.slot(), each.part()))
          .reduce(Rule.brokenBy(job), (one, other) -> one | other);
      for (Finding finding : proposal.findings()) {
        if (ofOnePart.contains(finding.rule())) {
          assertThat((broken & finding.rule().bit()) != 0)
              .as(finding.toString())
              .isEqualTo(finding.outcome() == RuleOutcome.UNMET);
        }
      }
    }
  }

  @Property(tries = 200)
  void the_order_of_the_catalogue_changes_nothing(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    List<Part> parts = jumble.parts();
    Requirement job = jumble.job().build();
    List<List<String>> before = ids(listed(Selection.of(job, Catalogue.of(parts))));
    Collections.shuffle(parts, new Random(seed));
    assertThat(ids(listed(Selection.of(job, Catalogue.of(parts))))).isEqualTo(before);
  }

  private static Optional<Proposal> winner(Requirement job, List<Part> parts) {
    return Selection.of(job, Catalogue.of(parts))
        .fold(fitting -> Optional.of(fitting.best()), nothing -> Optional.empty());
  }

  @Property(tries = 300)
  void without_any_part_it_does_not_use_the_winner_stays(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    List<Part> parts = jumble.parts();
    Requirement job = jumble.job().build();
    Optional<Proposal> winner = winner(job, parts);
    Assume.that(winner.isPresent());
    for (Part part : parts) {
      if (!winner.get().parts().contains(part)) {
        List<Part> fewer = new ArrayList<>(parts);
        fewer.remove(part);
        assertThat(winner(job, fewer).map(SelectionProperties::ids))
            .as("without " + part)
            .contains(ids(winner.get()));
      }
    }
  }

  @Property(tries = 200)
  void a_part_that_nothing_of_the_job_takes_changes_nothing(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    List<Part> parts = jumble.parts();
    Requirement job = jumble.job().build();
    Optional<Proposal> winner = winner(job, parts);
    Assume.that(winner.isPresent());
    PartFacts facts = Shelf.steel("stranger");
    Conduit wide =
        Conduit.of(Length.ofMillimetres(50.0), Length.ofMetres(30.0), Length.ofMillimetres(0.01));
    End big = End.parse("G 4 male");
    for (Part stranger : List.of(
        new Part.Socket(
            facts,
            Set.of("owl"),
            big,
            FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(99.0), 0.5)),
        new Part.Plug(facts, "owl", big),
        new Part.Hose(facts, HoseBore.of(Length.ofMillimetres(50.0)), wide, big, big),
        new Part.Adapter(facts, big, End.parse("G 3 male"), wide))) {
      List<Part> more = new ArrayList<>(parts);
      more.add(0, stranger);
      assertThat(winner(job, more).map(SelectionProperties::ids)).contains(ids(winner.get()));
    }
  }

  /** The rules said once more, from the parts alone. */
  @Property(tries = 300)
  void every_proposal_passes_every_hard_rule_when_checked_again(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    List<Part> parts = jumble.parts();
    Requirement job = jumble.job().build();
    Selection selection = Selection.of(job, Catalogue.of(parts));
    Assume.that(selection instanceof Selection.Proposals);
    for (Proposal p : listed(selection)) {
      assertThat(p.outletSocket().profiles()).contains(p.hosePlug().profile());
      assertThat(p.toolSocket().profiles()).contains(p.toolPlug().profile());
      job.profile()
          .ifPresent(
              profile -> assertThat(List.of(p.hosePlug().profile(), p.toolPlug().profile()))
                  .containsOnly(profile));
      assertThat(p.outletSocket().profiles()).containsAll(job.profilesInUse());
      checkEnds(p);
      assertThat(p.parts()).noneMatch(part -> EveryCombination.breaksARule(job, part));
      job.toolRating()
          .ifPresent(rating -> assertThat(rating.pascals())
              .isGreaterThanOrEqualTo(
                  Shelf.SUPPLY.pressure().pascals() - Shelf.ATMOSPHERE.pascals()));
      assertThat(p.run().largestFlow(job.least()).orElseThrow().massFlow().kilogramsPerSecond())
          .as("the run carries the tool's air at its pressure")
          .isGreaterThanOrEqualTo(job.demand().massFlow().kilogramsPerSecond() * (1.0 - 1.0e-9));
      assertThat(p.hose().conduit().length()).isGreaterThanOrEqualTo(job.reach());
      checkMaterial(job, p);
      if (job.isDragged()) {
        assertThat(p.toolSocket().facts().isSleeveGuarded()).isTrue();
      }
      if (job.isVentRequired()) {
        assertThat(p.outletSocket().facts().isVented() && p.toolSocket().facts().isVented())
            .isTrue();
      }
    }
  }

  private static void checkEnds(Proposal p) {
    Requirement job = p.requirement();
    List<End> froms = List.of(
        job.outlet(), p.hosePlug().end(), p.hose().downstream(), p.toolPlug().end());
    List<End> tos =
        List.of(p.outletSocket().end(), p.hose().upstream(), p.toolSocket().end(), job.toolInlet());
    for (int i = 0; i < 4; i++) {
      List<Mating> matings = p.joints().get(i).matings();
      assertThat(matings).allMatch(mating -> mating.verdict().isSound());
      assertThat(matings.get(0).one()).isEqualTo(froms.get(i));
      assertThat(matings.get(matings.size() - 1).other()).isEqualTo(tos.get(i));
      List<Part.Adapter> adapters = p.joints().get(i).adapters();
      for (int j = 0; j < adapters.size(); j++) {
        assertThat(List.of(matings.get(j).other(), matings.get(j + 1).one()))
            .containsExactlyInAnyOrder(adapters.get(j).one(), adapters.get(j).other());
      }
    }
  }

  private static void checkMaterial(Requirement job, Proposal p) {
    Stream.<Part>of(p.outletSocket(), p.hosePlug(), p.toolSocket(), p.toolPlug())
        .filter(part -> !part.facts().isExisting())
        .forEach(part -> {
          Optional<Material> material = part.facts().material();
          if (job.isDropped()) {
            assertThat(material).get().isIn(Material.HARDENED_STEEL, Material.STAINLESS_STEEL);
          }
          job.environment()
              .filter(place -> place == Environment.OUTDOORS || place == Environment.WASH_DOWN)
              .ifPresent(place ->
                  assertThat(material).get().isIn(Material.BRASS, Material.STAINLESS_STEEL));
          job.environment()
              .filter(place -> place == Environment.SPARKING_HAZARD)
              .ifPresent(place -> assertThat(material).contains(Material.BRASS));
        });
  }
}
