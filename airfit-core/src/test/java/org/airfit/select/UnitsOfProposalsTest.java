package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.UnitsInText;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.airfit.safety.SafetyRules;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every rule, every line of a parts list, every caution and every working speaks in the units it is asked for. */
class UnitsOfProposalsTest {

  /** The names of the shelf, one of which has a unit. */
  private static final List<String> NAMES = List.of("part 10 mm hose");

  private static Requirement.Builder typedInUs() {
    return Requirement.forTool(FreeAirFlow.parse("22 scfm"), GaugePressure.parse("90 psig"))
        .toolRating(GaugePressure.parse("110 psig"))
        .toolInlet(Shelf.job().build().toolInlet())
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(Shelf.job().build().outlet())
        .reach(Length.parse("30 ft"))
        .lubrication(Lubrication.DRY);
  }

  /** Air outside its model, of which a caution and a note in the working speak with numbers. */
  private static AirState dense(String pressure) {
    return AirState.of(AbsolutePressure.parse(pressure), Temperature.ofCelsius(20.0));
  }

  /** Jobs that between them make each rule say each of the things it can say with a number. */
  private static List<Selection> selections() {
    SafetyRules own = SafetyRules.ofTable("""
        jurisdiction,citation,text,quantity,operator,limit,unit,source,basis,asks
        Works,W 1,no line above {limit},line pressure,<=,7.2,bar,own,practice,forbids
        Works,W 2,no hose above {limit},hose bore,<=,0.25,in,own,practice,forbids
        """);
    List<Requirement.Builder> jobs = List.of(
        typedInUs(),
        typedInUs().reach(Length.parse("60 ft")),
        typedInUs().highest(GaugePressure.parse("150 psig")),
        typedInUs().highest(GaugePressure.parse("150 psig")).regulated(),
        typedInUs().highest(GaugePressure.parse("300 psig")),
        typedInUs().temperatures(Temperature.parse("10 °F"), Temperature.parse("150 °F")),
        typedInUs().blowGun(GaugePressure.parse("28 psig")),
        typedInUs().blowGun(GaugePressure.parse("60 psig")),
        typedInUs().blowGun(GaugePressure.parse("28 psig")).rules(SafetyRules.ofTable("""
                jurisdiction,citation,text,quantity,operator,limit,unit,source,basis
                Works,W 3,clean below {limit},cleaning pressure,<,2,bar,own,practice
                """)),
        typedInUs().automaticFeed(),
        typedInUs().impactTool(),
        typedInUs().rules(own),
        Shelf.job().rules(own),
        Shelf.job(),
        typedInUs().supply(dense("60 bar(a)"), Shelf.ATMOSPHERE),
        typedInUs().supply(dense("150 bar(a)"), Shelf.ATMOSPHERE),
        Requirement.forTool(FreeAirFlow.parse("200 scfm"), GaugePressure.parse("90 psig"))
            .toolInlet(Shelf.job().build().toolInlet())
            .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
            .outlet(Shelf.job().build().outlet())
            .reach(Length.parse("30 ft")));
    List<Selection> selections = new ArrayList<>();
    for (Requirement.Builder job : jobs) {
      selections.add(Selection.of(job.build(), Catalogue.of(Shelf.parts())));
    }
    return selections;
  }

  private static Proposal shown(Selection selection) {
    return selection.fold(Selection.Proposals::best, miss -> miss.closest().get(0));
  }

  private static BillOfMaterials bill(Proposal proposal, UnitSystem units) {
    return BillOfMaterials.of(proposal, Catalogue.of(Shelf.parts()), units);
  }

  private static List<String> texts(UnitSystem units) {
    List<String> texts = new ArrayList<>();
    for (Selection selection : selections()) {
      Proposal proposal = shown(selection);
      texts.add(selection.fold(
          fitting -> fitting.whyBest(units), miss -> String.join(" ", miss.toGive(units))));
      proposal.findings(units).forEach(finding -> texts.add(finding.toString()));
      bill(proposal, units).lines().forEach(line -> texts.add(line.reason()));
      proposal.cautions(units).forEach(caution -> texts.add(caution.text()));
      JobFindings job = JobFindings.of(proposal.requirement());
      job.findings(units).forEach(finding -> texts.add(finding.toString()));
      job.cautions(units).forEach(caution -> texts.add(caution.text()));
      texts.addAll(selection.working(units).toText().lines().toList());
    }
    return texts;
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void every_text_keeps_to_the_units(UnitSystem units) {
    List<String> texts = texts(units);
    assertThat(texts).hasSizeGreaterThan(1000);
    assertThat(texts.stream().flatMap(text -> UnitsInText.strange(text, units, NAMES).stream()))
        .isEmpty();
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void the_same_search_finds_the_other_units(UnitSystem units) {
    assertThat(texts(units.other()))
        .filteredOn(text -> !UnitsInText.strange(text, units, NAMES).isEmpty())
        .hasSizeGreaterThan(200);
  }

  @Test
  void the_units_change_no_outcome_and_the_usual_ones_are_si() {
    for (Selection selection : selections()) {
      Proposal proposal = shown(selection);
      assertThat(proposal.findings(UnitSystem.US))
          .extracting(Finding::outcome)
          .isEqualTo(proposal.findings().stream().map(Finding::outcome).toList());
      assertThat(proposal.findings(UnitSystem.SI)).isEqualTo(proposal.findings());
      assertThat(bill(proposal, UnitSystem.SI))
          .isEqualTo(BillOfMaterials.of(proposal, Catalogue.of(Shelf.parts())));
      assertThat(proposal.cautions(UnitSystem.SI)).isEqualTo(proposal.cautions());
      assertThat(proposal.cautions(UnitSystem.US)).hasSameSizeAs(proposal.cautions());
    }
  }

  /** Else the search above would look through sentences without numbers. */
  @Test
  void the_jobs_make_the_rules_with_numbers_speak() {
    Map<Rule, Set<RuleOutcome>> outcomes = new EnumMap<>(Rule.class);
    for (Selection selection : selections()) {
      shown(selection)
          .findings()
          .forEach(finding -> outcomes
              .computeIfAbsent(finding.rule(), any -> EnumSet.noneOf(RuleOutcome.class))
              .add(finding.outcome()));
    }
    assertThat(outcomes.get(Rule.AIR_AT_TOOL)).contains(RuleOutcome.MET, RuleOutcome.UNMET);
    assertThat(outcomes.get(Rule.HOSE_REACHES)).contains(RuleOutcome.MET, RuleOutcome.UNMET);
    assertThat(outcomes.get(Rule.PARTS_RATED)).contains(RuleOutcome.MET, RuleOutcome.UNMET);
    assertThat(outcomes.get(Rule.TOOL_RATED))
        .contains(
            RuleOutcome.MET, RuleOutcome.UNMET, RuleOutcome.OPEN, RuleOutcome.MET_WHILE_REGULATED);
    assertThat(outcomes.get(Rule.CLEANING_PRESSURE)).contains(RuleOutcome.MET, RuleOutcome.UNMET);
    assertThat(outcomes.get(Rule.SAFETY_RULES_ALLOW)).contains(RuleOutcome.UNMET);
    assertThat(outcomes.get(Rule.TEMPERATURE_SUITS)).contains(RuleOutcome.OPEN);
  }

  @Test
  void air_outside_its_model_is_told_in_the_units() {
    Proposal proposal = shown(Selection.of(
        typedInUs().supply(dense("150 bar(a)"), Shelf.ATMOSPHERE).build(),
        Catalogue.of(Shelf.parts())));
    assertThat(proposal.cautions(UnitSystem.US))
        .anySatisfy(caution -> assertThat(caution.text())
            .startsWith("Above 1450 psig, at 2176 psia, 68 °F, nothing was held against"));
    assertThat(proposal.cautions())
        .anySatisfy(caution -> assertThat(caution.text())
            .startsWith("Above 100 bar(g), at 150 bar(a), 20 °C, nothing was held against"));
  }

  @Test
  void what_was_typed_is_said_as_it_was_typed() {
    Proposal proposal = shown(Selection.of(typedInUs().build(), Catalogue.of(Shelf.parts())));
    assertThat(proposal.findings(UnitSystem.US).toString())
        .contains("it needs 90 psig at 22 scfm.", "32.8 ft of hose, 30 ft needed");
    assertThat(bill(proposal, UnitSystem.US).lines().toString())
        .contains("of hose with 3/8 in of bore");
  }
}
