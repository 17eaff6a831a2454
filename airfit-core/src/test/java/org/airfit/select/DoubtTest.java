package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** What is not known is a range: the answer is the same whatever it is, or it depends and tells where it turns. */
class DoubtTest {

  private static final Source MADE_UP = Source.derived("made up");

  private static FlowCapacity capacity(double c, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b);
  }

  private static Part.Socket socket(double least, double most) {
    return new Part.Socket(
        Shelf.steel("socket"),
        Set.of("finch"),
        End.parse("3/8 NPT female"),
        new CapacityRange(capacity(least, 0.3), capacity(most, 0.3), MADE_UP));
  }

  private static Part.Hose hose(double leastBore, double mostBore) {
    Conduit least = Conduit.of(
        Length.ofMillimetres(leastBore), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
    return new Part.Hose(
        Shelf.steel("hose"),
        HoseBore.of(Length.ofMillimetres(mostBore)),
        new ConduitRange(least, least.withBore(Length.ofMillimetres(mostBore)), MADE_UP),
        End.parse("3/8 NPT male"),
        End.parse("3/8 NPT male"));
  }

  private static Requirement.Builder job(
      double leastFlow, double mostFlow, double leastBar, double mostBar) {
    return Requirement.forTool(
            new Range<>(
                FreeAirFlow.ofAnrLitresPerSecond(leastFlow),
                FreeAirFlow.ofAnrLitresPerSecond(mostFlow)),
            new Range<>(GaugePressure.ofBar(leastBar), GaugePressure.ofBar(mostBar)))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("3/8 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .layout(
            Layout.of(List.of(Slot.coupling("outlet"), Slot.hose("hose", Length.ofMetres(10.0)))));
  }

  private static Proposal only(Requirement.Builder job, Part.Socket socket, Part.Hose hose) {
    Part.Plug plug = Shelf.plug(Shelf.steel("plug"), "finch", "3/8 NPT female");
    return Selection.of(job.build(), Catalogue.of(List.of(socket, plug, hose)))
        .fold(fitting -> fitting.proposals(), nothing -> nothing.closest())
        .get(0);
  }

  private static Finding air(Proposal proposal) {
    return proposal.findings().stream()
        .filter(finding -> finding.rule() == Rule.AIR_AT_TOOL)
        .findFirst()
        .orElseThrow();
  }

  private static double arriving(double c, double bore, double flow) {
    return Shelf.pascalsAtTool(only(job(flow, flow, 1.0, 1.0), socket(c, c), hose(bore, bore)));
  }

  /** Both ends are found again as runs of their own in which all is known. */
  @Test
  void the_pressure_lies_between_that_of_the_worst_and_that_of_the_best() {
    Proposal proposal = only(job(8.0, 12.0, 5.0, 5.0), socket(3.0, 6.0), hose(8.0, 9.5));
    assertThat(Shelf.pascalsAtTool(proposal)).isEqualTo(arriving(3.0, 8.0, 12.0));
    assertThat(proposal
            .resultAtBest()
            .<Double>fold(delivered -> delivered.atToolGauge().pascals(), starved -> -1.0))
        .isEqualTo(arriving(6.0, 9.5, 8.0));
  }

  @Test
  void it_is_met_or_broken_whatever_it_is_or_it_depends() {
    double worst = arriving(3.0, 8.0, 12.0) / 1.0e5;
    double best = arriving(6.0, 9.5, 8.0) / 1.0e5;
    assertThat(best - worst).isGreaterThan(0.5);
    Part.Socket socket = socket(3.0, 6.0);
    Part.Hose hose = hose(8.0, 9.5);
    Finding met = air(only(job(8.0, 12.0, worst - 0.01, worst - 0.01), socket, hose));
    assertThat(met.outcome()).isEqualTo(RuleOutcome.MET);
    assertThat(met.reason()).startsWith("The tool has at least ");
    Finding broken = air(only(job(8.0, 12.0, best + 0.01, best + 0.01), socket, hose));
    assertThat(broken.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(broken.reason()).contains(" at best, it needs ");
    Finding open = air(only(job(8.0, 12.0, worst + 0.01, best - 0.01), socket, hose));
    assertThat(open.outcome()).isEqualTo(RuleOutcome.OPEN);
    assertThat(open.reason()).startsWith("It depends: the tool has from ");
  }

  /** Both runs stand there to be checked by hand, in either system, and each doubt with where it turns. */
  @Test
  void the_working_shows_the_run_at_worst_and_at_best() {
    double needed = arriving(4.0, 9.5, 10.0) / 1.0e5;
    Proposal open = only(job(10.0, 10.0, needed, needed), socket(3.0, 6.0), hose(9.5, 9.5));
    for (UnitSystem units : UnitSystem.values()) {
      String told = open.working(units).toText();
      assertThat(told)
          .contains("So far all that is not known was taken at its worst. At its best:")
          .contains(open.doubts().get(0).inWords(units));
      assertThat(told.indexOf(units.sayAtLeast(GaugePressure.ofPascals(arriving(3.0, 9.5, 10.0)))))
          .isBetween(0, told.indexOf("At its best:"));
    }
    Proposal known = only(job(10.0, 10.0, needed, needed), socket(6.0, 6.0), hose(9.5, 9.5));
    assertThat(known.working(UnitSystem.SI).toText()).doesNotContain("At its best");
  }

  /** The conductance at which it turns is put in again: just there it is enough. */
  @Test
  void the_value_at_which_the_answer_turns_is_told_on_the_safe_side() {
    double needed = (arriving(4.0, 9.5, 10.0) / 1.0e5);
    Proposal proposal = only(job(10.0, 10.0, needed, needed), socket(3.0, 6.0), hose(9.5, 9.5));
    assertThat(proposal.doubts()).hasSize(1);
    Doubt doubt = proposal.doubts().get(0);
    assertThat(doubt.what()).isEqualTo("conductance C of outlet coupling, part socket");
    assertThat(doubt.settles()).isTrue();
    assertThat(doubt.known(UnitSystem.SI)).isEqualTo("3 to 6 dm³/(s·bar)");
    assertThat(doubt.enoughIf(UnitSystem.SI)).isPresent();
    String told = doubt.enoughIf(UnitSystem.SI).orElseThrow();
    assertThat(told).startsWith("at least ").endsWith(" dm³/(s·bar)");
    double turning = Double.parseDouble(told.substring(9, told.indexOf(" dm³")));
    assertThat(turning).as("to three digits, upwards").isBetween(4.0, 4.01);
    assertThat(arriving(turning, 9.5, 10.0)).isGreaterThanOrEqualTo(needed * 1.0e5 - 1.0e-6);
  }

  /** It turns at 4.003 and 8.996: what is told between three digits lies on the side on which there is enough. */
  @Test
  void three_digits_are_told_on_the_side_on_which_there_is_enough() {
    double ofConductance = arriving(4.003, 9.5, 10.0) / 1.0e5;
    assertThat(only(job(10.0, 10.0, ofConductance, ofConductance), socket(3.0, 6.0), hose(9.5, 9.5))
            .doubts()
            .get(0)
            .enoughIf(UnitSystem.SI))
        .contains("at least 4.01 dm³/(s·bar)");
    double ofFlow = arriving(4.0, 9.5, 8.996) / 1.0e5;
    assertThat(only(job(6.0, 12.0, ofFlow, ofFlow), socket(4.0, 4.0), hose(9.5, 9.5))
            .doubts()
            .get(0)
            .enoughIf(UnitSystem.SI))
        .contains("at most 8.99 L/s ANR");
  }

  @Test
  void less_flow_settles_it_where_the_tool_takes_less() {
    double needed = arriving(4.0, 9.5, 9.0) / 1.0e5;
    Doubt doubt = only(job(6.0, 12.0, needed, needed), socket(4.0, 4.0), hose(9.5, 9.5))
        .doubts()
        .get(0);
    assertThat(doubt.what()).isEqualTo("air the tool takes");
    assertThat(doubt.enoughIf(UnitSystem.SI).orElseThrow())
        .startsWith("at most ")
        .endsWith(" L/s ANR");
    assertThat(doubt.known(UnitSystem.US))
        .as("12 L/s at 20 °C, 1 bar: 12 × 2.1189 × (288.71/293.15) × (100000/101353) = 24.7 scfm")
        .isEqualTo("12.4 to 24.7 scfm");
    double turning =
        Double.parseDouble(doubt.enoughIf(UnitSystem.SI).orElseThrow().replaceAll("[^0-9.]", ""));
    assertThat(turning).isLessThanOrEqualTo(9.0).isCloseTo(9.0, within(0.01));
  }

  @Test
  void what_settles_it_alone_is_asked_first() {
    double needed = arriving(4.0, 8.0, 12.0) / 1.0e5 + 0.001;
    List<Doubt> doubts =
        only(job(6.0, 12.0, needed, needed), socket(4.0, 4.001), hose(8.0, 9.5)).doubts();
    assertThat(doubts).extracting(Doubt::what).last().asString().startsWith("conductance C");
    assertThat(doubts.get(2).settles())
        .as("its best is hardly better than its worst")
        .isFalse();
    assertThat(doubts.get(0).settles()).isTrue();
    assertThat(doubts.get(1).settles()).isTrue();
  }

  @Test
  void where_nothing_settles_it_alone_the_sentence_says_so() {
    double best = arriving(6.0, 9.5, 8.0) / 1.0e5 - 0.001;
    Proposal proposal = only(job(8.0, 12.0, best, best), socket(3.0, 6.0), hose(8.0, 9.5));
    assertThat(proposal.doubts()).noneMatch(Doubt::settles).hasSize(3);
    assertThat(air(proposal).reason())
        .contains("No single answer settles it; most depends on the ");
  }

  @Test
  void where_the_answer_is_known_there_is_no_doubt() {
    assertThat(
            only(job(10.0, 10.0, 5.0, 5.0), socket(9.0, 9.0), hose(12.7, 12.7)).doubts())
        .isEmpty();
    assertThat(only(job(8.0, 12.0, 1.0, 1.0), socket(3.0, 6.0), hose(8.0, 9.5)).doubts())
        .as("met whatever it is")
        .isEmpty();
  }

  /** The same parts, but of one nothing is known of its wall: what is known comes first. */
  @Test
  void a_part_of_which_the_answer_depends_ranks_below_one_of_which_it_does_not() {
    double needed = arriving(6.0, 9.0, 10.0) / 1.0e5;
    Part.Hose doubtful = hose(6.0, 9.5);
    Part.Hose known = new Part.Hose(
        Shelf.steel("dear hose").withPrice(org.airfit.quantity.Money.parse("90 EUR")),
        HoseBore.of(Length.ofMillimetres(9.5)),
        hose(9.5, 9.5).conduit(),
        End.parse("3/8 NPT male"),
        End.parse("3/8 NPT male"));
    Part.Plug plug = Shelf.plug(Shelf.steel("plug"), "finch", "3/8 NPT female");
    Selection answer = Selection.of(
        job(10.0, 10.0, needed, needed).build(),
        Catalogue.of(List.of(socket(6.0, 6.0), plug, doubtful, known)));
    List<Proposal> proposals = answer.fold(fitting -> fitting.proposals(), nothing -> List.of());
    assertThat(proposals).hasSize(2);
    assertThat(proposals.get(0).hose("hose").id()).isEqualTo("dear hose");
    assertThat(proposals.get(1).open()).extracting(Finding::rule).containsExactly(Rule.AIR_AT_TOOL);
  }
}
