package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.joint.MatingVerdict;
import org.airfit.line.Conduit;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Caution;
import org.airfit.safety.Medium;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What a customer may add to the bare job: other media, several profiles, heat and cold, a hose of their own, the
 * shop's own mark.
 */
class CustomerTest {

  private static Finding of(Proposal proposal, Rule rule) {
    return proposal.findings().stream()
        .filter(finding -> finding.rule() == rule)
        .findFirst()
        .orElseThrow();
  }

  private static Proposal best(Requirement.Builder job, List<Part> parts) {
    return Selection.of(job.build(), Catalogue.of(parts))
        .fold(Selection.Proposals::best, miss -> miss.nearest().get(0));
  }

  private static List<Part> with(Part... more) {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.addAll(List.of(more));
    return parts;
  }

  @ParameterizedTest
  @EnumSource(names = "COMPRESSED_AIR", mode = EnumSource.Mode.EXCLUDE)
  void another_medium_is_refused_with_the_reason(Medium medium) {
    Selection answer =
        Selection.of(Shelf.job().medium(medium).build(), Catalogue.of(Shelf.parts()));
    assertThat(answer).isInstanceOf(Selection.NothingFits.class);
    Selection.NothingFits nothing = (Selection.NothingFits) answer;
    assertThat(nothing.nearest()).isEmpty();
    assertThat(nothing.toGive())
        .singleElement()
        .asString()
        .contains("compressed air for tools only, not on " + medium)
        .contains(medium.refusal().orElseThrow().text());
    assertThat(nothing.working().toText()).contains("only, not on");
  }

  @Test
  void several_profiles_in_use_ask_for_a_socket_that_takes_them_all() {
    Part.Socket universal = new Part.Socket(
        Shelf.steel("universal"),
        Set.of("finch", "wren"),
        End.parse("3/8 NPT female"),
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(8.0), 0.3));
    Requirement.Builder job = Shelf.job().profilesInUse(Set.of("finch", "wren"));
    Proposal best = best(job, with(universal));
    assertThat(best.socket("outlet")).isEqualTo(universal);
    assertThat(of(best, Rule.PROFILES_IN_USE).outcome()).isEqualTo(RuleOutcome.MET);
    Finding miss = of(best(job, Shelf.parts()), Rule.PROFILES_IN_USE);
    assertThat(miss.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(miss.reason()).endsWith("does not take wren.");
    assertThat(of(best(Shelf.job(), Shelf.parts()), Rule.PROFILES_IN_USE).outcome())
        .isEqualTo(RuleOutcome.DOES_NOT_APPLY);
  }

  @Test
  void heat_and_cold_are_held_against_what_the_makers_allow() {
    Temperature frost = Temperature.ofCelsius(-20.0);
    Temperature warm = Temperature.ofCelsius(60.0);
    Requirement.Builder job = Shelf.job().temperatures(frost, warm);
    Finding unknown = of(best(job, Shelf.parts()), Rule.TEMPERATURE_SUITS);
    assertThat(unknown.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(unknown.reason()).contains("-20 °C to 60 °C").contains("ask the makers");
    PartFacts weak = Shelf.steel("10 mm hose").withTemperatures(Temperature.ofCelsius(-10.0), warm);
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.removeIf(part -> part.id().equals("10 mm hose"));
    parts.add(Shelf.hose(weak, 9.5, 10.0));
    assertThat(of(best(job, parts), Rule.TEMPERATURE_SUITS).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(of(best(Shelf.job(), parts), Rule.TEMPERATURE_SUITS).outcome())
        .isEqualTo(RuleOutcome.DOES_NOT_APPLY);
    assertThat(weak.coldest()).contains(Temperature.ofCelsius(-10.0));
    assertThat(weak.hottest()).contains(warm);
    PartFacts exact = Shelf.steel("x").withTemperatures(frost, warm);
    List<Part> all = List.of(
        Shelf.socket(exact, "finch", "3/8 NPT female", 9.0),
        Shelf.plug(facts("hose plug", frost, warm), "finch", "3/8 NPT female"),
        Shelf.plug(facts("tool plug", frost, warm), "finch", "1/4 NPT male"),
        Shelf.hose(facts("hose", frost, warm), 9.5, 10.0));
    assertThat(of(best(job, all), Rule.TEMPERATURE_SUITS).outcome()).isEqualTo(RuleOutcome.MET);
  }

  private static PartFacts facts(String id, Temperature coldest, Temperature hottest) {
    return Shelf.steel(id).withTemperatures(coldest, hottest);
  }

  @Test
  void turned_round_temperatures_are_refused() {
    Temperature cold = Temperature.ofCelsius(0.0);
    Temperature warm = Temperature.ofCelsius(1.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.job().temperatures(warm, cold))
        .withMessageStartingWith("highest temperature of the requirement must be at least");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.steel("valve").withTemperatures(warm, cold))
        .withMessageStartingWith("highest temperature of part valve must be at least");
  }

  @Test
  void the_customers_own_hose_is_kept() {
    Part.Hose own = Shelf.hose(Shelf.steel("own").asExisting(), 9.0, 10.0);
    Requirement.Builder job = Shelf.job().hose(own);
    assertThat(best(job, Shelf.parts()).hose("hose")).isEqualTo(own);
    assertThat(job.build().layout().slot("hose"))
        .contains(Slot.hose("hose", Length.ofMetres(10.0)).with(own));
  }

  @Test
  void the_shops_own_mark_is_named_and_none_is_prescribed() {
    Finding marked =
        of(best(Shelf.job().marking("two notches"), Shelf.parts()), Rule.AIR_KEPT_APART);
    assertThat(marked.reason()).contains("Mark the new ones: two notches.");
    assertThat(of(best(Shelf.job(), Shelf.parts()), Rule.AIR_KEPT_APART).reason())
        .contains("as your shop does");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.job().marking(" "))
        .withMessageStartingWith("marking must not be blank");
  }

  /** NPSC is meant for low pressure: it seals, and somebody must ask. */
  @Test
  void a_straight_coupling_thread_is_not_sold_without_asking() {
    List<Part> parts = List.of(
        Shelf.socket(Shelf.steel("wide"), "finch", "3/8 NPSC female", 9.0),
        Shelf.plug(Shelf.steel("hose plug"), "finch", "3/8 NPT female"),
        Shelf.plug(Shelf.steel("tool plug"), "finch", "1/4 NPT male"),
        Shelf.hose(Shelf.steel("10 mm hose"), 9.5, 10.0));
    Finding ends = of(best(Shelf.job(), parts), Rule.ENDS_MATE);
    assertThat(ends.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(ends.reason()).contains("low pressure: ask its maker");
  }

  private static Part.Hose bareHose(String bore) {
    return new Part.Hose(
        Shelf.steel("bare hose"),
        HoseBore.parse(bore),
        Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01)),
        End.parse(bore + " hose"),
        End.parse(bore + " hose"));
  }

  private static List<Part> barbed(String bore, Part.Hose hose) {
    return List.of(
        Shelf.socket(Shelf.steel("at the wall"), "finch", "3/8 NPT female", 9.0),
        Shelf.plug(Shelf.steel("hose plug"), "finch", bore + " barb"),
        hose,
        Shelf.socket(Shelf.steel("on the hose"), "finch", bore + " barb", 9.0),
        Shelf.plug(Shelf.steel("tool plug"), "finch", "1/4 NPT male"));
  }

  /** 3/8 in and 10 mm are two names of one bore; 8 mm is another. */
  @Test
  void a_bare_hose_goes_on_the_barbs_made_for_its_bore_and_on_no_others() {
    for (String bore : List.of("3/8 in", "10 mm")) {
      Proposal fits = best(Shelf.job(), barbed(bore, bareHose("3/8 in")));
      assertThat(fits.unmet()).as(bore).isEmpty();
      assertThat(fits.joints().get(1).matings())
          .singleElement()
          .extracting(Mating::verdict)
          .isEqualTo(MatingVerdict.HOLDS_WITH_CLAMP);
      assertThat(fits.cautions()).extracting(Caution::title).contains("Hose on a barb");
    }
    Proposal loose = best(Shelf.job(), barbed("8 mm", bareHose("3/8 in")));
    assertThat(loose.unmet()).extracting(Finding::rule).containsExactly(Rule.ENDS_MATE);
    assertThat(of(loose, Rule.ENDS_MATE).reason())
        .as("no adapter helps where a barb sits loose; a hose tail onto the other plug is near")
        .contains("plug to hose", "Between them goes a hose tail 3/8 in barb × 1/4 NPT female");
    assertThat(loose.joints())
        .as("the nearest miss has no more of it than must be")
        .extracting(Joint::isSound)
        .containsExactly(true, false, false, true);
  }

  @Test
  void a_barb_that_is_missing_comes_with_an_adapter() {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.removeIf(part -> part instanceof Part.Hose);
    parts.add(bareHose("3/8 in"));
    parts.add(Shelf.adapter("tail", "3/8 in barb", "3/8 NPT male"));
    Proposal best = best(Shelf.job(), parts);
    assertThat(best.fits()).isTrue();
    assertThat(Shelf.lines(best))
        .filteredOn(line -> Shelf.id(line).equals("tail"))
        .singleElement()
        .satisfies(line -> {
          assertThat(line.quantity()).isEqualTo(2);
          assertThat(line.reason()).contains("joins plug to hose", "joins hose to socket");
        });
  }

  /**
   * A check of the trade, without a source: two plugs of one profile carry the same flow, whatever thread is behind
   * them.
   */
  @Test
  void the_thread_of_a_plug_does_not_change_what_arrives() {
    List<Double> arrives = new ArrayList<>();
    for (String thread : List.of("1/8 NPT", "1/4 NPT", "3/8 NPT")) {
      List<Part> parts = new ArrayList<>(Shelf.parts());
      parts.removeIf(part -> part.id().equals("tool plug"));
      parts.add(Shelf.plug(Shelf.steel("tool plug"), "finch", thread + " male"));
      arrives.add(best(Shelf.job().toolInlet(End.parse(thread + " female")), parts)
          .result()
          .<Double>fold(delivered -> delivered.atToolGauge().pascals(), starved -> -1.0));
    }
    assertThat(arrives).allMatch(pascals -> pascals.equals(arrives.get(0)) && pascals > 0.0);
  }
}
