package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The end of a range that is worst for the air is the best for other rules: each is judged at its own worst. */
class RangeAtItsWorstTest {

  private static Part.Hose hose(
      double narrowMm, double wideMm, double longMetres, double shortMetres) {
    Conduit least = Conduit.of(
        Length.ofMillimetres(narrowMm), Length.ofMetres(longMetres), Length.ofMillimetres(0.01));
    Conduit most =
        least.withBore(Length.ofMillimetres(wideMm)).withLength(Length.ofMetres(shortMetres));
    return new Part.Hose(
        Shelf.steel("hose"),
        HoseBore.of(Length.ofMillimetres(narrowMm)),
        new ConduitRange(least, most, Source.derived("made up")),
        End.parse("3/8 NPT male"),
        End.parse("3/8 NPT male"));
  }

  private static Proposal with(Part.Hose hose, SafetyRules rules) {
    List<Part> stock = List.of(
        Shelf.socket(Shelf.steel("wide"), "finch", "3/8 NPT female", 9.0),
        Shelf.plug(Shelf.steel("hose plug"), "finch", "3/8 NPT female"),
        Shelf.plug(Shelf.steel("tool plug"), "finch", "1/4 NPT male"),
        hose);
    return Selection.of(Shelf.job().rules(rules).build(), Catalogue.of(stock))
        .fold(fitting -> fitting.best(), nothing -> nothing.closest().get(0));
  }

  private static RuleOutcome outcome(Proposal proposal, Rule rule) {
    return proposal.findings().stream()
        .filter(finding -> finding.rule() == rule)
        .map(Finding::outcome)
        .findFirst()
        .orElseThrow();
  }

  /** 29 CFR 1926.302(b)(7): more than 1/2 in, which is 12.7 mm. */
  @ParameterizedTest
  @CsvSource({"12.0, 12.7, false", "12.0, 12.8, true", "12.8, 12.9, true"})
  void a_hose_that_may_be_wider_than_half_an_inch_is_warned_of_and_restrained(
      double narrow, double wide, boolean isLarge) {
    Proposal proposal = with(hose(narrow, wide, 10.0, 10.0), SafetyRules.usFederal());
    assertThat(proposal.cautions())
        .extracting(Caution::title)
        .filteredOn("Hose failure protection"::equals)
        .hasSize(isLarge ? 1 : 0);
    BillOfMaterials bill = BillOfMaterials.of(
        proposal, Catalogue.of(proposal.parts().stream().distinct().toList()));
    assertThat(bill.lines(BillLine.Kind.WHIP_RESTRAINT).isEmpty()).isEqualTo(!isLarge);
    assertThat(bill.lines(BillLine.Kind.HOSE_FUSE).isEmpty()).isEqualTo(!isLarge);
  }

  @ParameterizedTest
  @CsvSource({
    "<=, 12.4, 12.0, 12.4, MET",
    "<=, 12.4, 12.0, 12.5, UNMET",
    ">=, 12.0, 12.0, 12.5, MET",
    ">=, 12.1, 12.0, 12.5, UNMET"
  })
  void a_rule_of_ones_own_on_the_bore_is_judged_at_the_end_that_breaks_it(
      String operator, double limit, double narrow, double wide, RuleOutcome outcome) {
    SafetyRules own = SafetyRules.ofTable(
        "jurisdiction,citation,text,quantity,operator,limit,unit,source,basis,asks\nWorks,W 1,a bore,hose bore,"
            + operator + "," + limit + ",mm,own,practice,forbids\n");
    assertThat(outcome(
            with(hose(narrow, wide, 10.0, 10.0), SafetyRules.usFederal().with(own)),
            Rule.SAFETY_RULES_ALLOW))
        .isEqualTo(outcome);
  }

  /** A caution that asks for something below a bore is due where the hose can be so narrow, above one where so wide. */
  @ParameterizedTest
  @CsvSource({
    "<, 12.1, 12.0, 12.5, true",
    "<, 12.0, 12.0, 12.5, false",
    "<=, 12.0, 12.0, 12.5, true",
    ">, 12.4, 12.0, 12.5, true",
    ">, 12.5, 12.0, 12.5, false"
  })
  void a_caution_on_the_bore_is_judged_at_the_end_that_calls_for_it(
      String operator, double limit, double narrow, double wide, boolean isDue) {
    SafetyRules own = SafetyRules.ofTable(
        "jurisdiction,citation,text,quantity,operator,limit,unit,source,basis,asks\nWorks,W 1,mind the bore,hose bore,"
            + operator + "," + limit + ",mm,own,practice,requires\n");
    Proposal proposal =
        with(hose(narrow, wide, 10.0, 10.0), SafetyRules.usFederal().with(own));
    assertThat(proposal.cautions().stream()
            .anyMatch(caution ->
                caution.toString().toLowerCase(java.util.Locale.ROOT).contains("mind the bore")))
        .isEqualTo(isDue);
  }

  @ParameterizedTest
  @CsvSource({"11.0, 10.0, MET", "11.0, 9.99, OPEN", "10.0, 9.0, OPEN", "9.99, 9.0, UNMET"})
  void a_hose_reaches_if_the_shortest_does_and_not_if_the_longest_does_not(
      double longest, double shortest, RuleOutcome outcome) {
    Proposal proposal = with(hose(12.0, 12.0, longest, shortest), SafetyRules.usFederal());
    assertThat(outcome(proposal, Rule.HOSE_REACHES)).isEqualTo(outcome);
  }

  @Test
  void what_is_known_is_its_own_worst() {
    Part.Hose known = hose(12.0, 12.0, 10.0, 10.0);
    assertThat(known.widestBore()).isEqualTo(known.conduit().bore());
    assertThat(Optional.of(known.shortest())).contains(known.conduit().length());
  }

  /** Whatever lets air through and is known between two bounds only: what it is at best and at worst differs. */
  @Test
  void a_part_of_any_kind_is_known_exactly_or_it_is_not() {
    FlowCapacity narrow = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(4.0), 0.3);
    FlowCapacity wide = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(5.0), 0.3);
    Source made = Source.derived("made up");
    for (boolean isExact : List.of(true, false)) {
      CapacityRange capacity =
          isExact ? CapacityRange.exactly(narrow) : new CapacityRange(narrow, wide, made);
      ConduitRange conduit = isExact
          ? hose(10.0, 10.0, 5.0, 5.0).conduitRange()
          : hose(10.0, 11.0, 5.0, 5.0).conduitRange();
      End end = End.parse("3/8 NPT male");
      PartFacts facts = Shelf.steel("part");
      for (Part part : List.of(
          new Part.Socket(facts, Set.of("finch"), end, capacity),
          new Part.Device(facts, DeviceKind.FILTER, capacity, end, end),
          new Part.Splitter(facts, capacity, end, List.of(end, end)),
          new Part.Regulator(
              facts,
              capacity,
              PressureDrop.ofBar(0.1),
              FreeAirFlow.ofAnrLitresPerSecond(10.0),
              end,
              end),
          new Part.Pipe(facts, conduit, end, end),
          new Part.Hose(facts, HoseBore.of(Length.ofMillimetres(10.0)), conduit, end, end))) {
        assertThat(Known.isExact(part)).as(part.getClass().getSimpleName()).isEqualTo(isExact);
      }
      assertThat(Known.isExact(Shelf.plug(facts, "finch", "3/8 NPT male"))).isTrue();
      assertThat(Known.isExact(Shelf.adapter("x", "3/8 NPT male", "1/4 NPT male")))
          .isTrue();
    }
  }
}
