package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.joint.End;
import org.airfit.line.ConduitName;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Range;
import org.airfit.run.ToolAir;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** What an interview asks of that of which a job tells a range, or a name only: each where it decides something. */
class InterviewOfRangesTest {

  private static FreeAirFlow litres(double perSecond) {
    return FreeAirFlow.ofAnrLitresPerSecond(perSecond);
  }

  /** A job with a range of air and of pressure; 7 bar(g) at the supply. */
  private static Requirement.Builder job(Range<FreeAirFlow> air, Range<GaugePressure> least) {
    return Requirement.forTool(air, least)
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(10.0))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY);
  }

  private static Requirement.Builder job(double least, double most) {
    return job(new Range<>(litres(least), litres(most)), Range.exactly(GaugePressure.ofBar(6.2)));
  }

  private static Interview talk(Requirement.Builder job) {
    return talk(job, Shelf.parts());
  }

  private static Interview talk(Requirement.Builder job, List<Part> parts) {
    return Interview.of(job.build(), Catalogue.of(parts)).with(Topic.MEDIUM, "compressed air");
  }

  private static Optional<Question> asked(Interview talk, Topic topic) {
    return talk.questions().stream().filter(each -> each.topic() == topic).findFirst();
  }

  private static List<String> answers(Interview talk, Topic topic) {
    return asked(talk, topic).orElseThrow().answers().stream()
        .map(PossibleAnswer::toString)
        .toList();
  }

  private static RuleOutcome air(Interview talk) {
    Requirement job = talk.requirement().orElseThrow();
    return Standing.of(job, Catalogue.of(Shelf.parts()))
        .shown()
        .orElseThrow()
        .of(Rule.AIR_AT_TOOL)
        .outcome();
  }

  /** What the best parts of the shelf leave of a pressure turns at one flow, which the run itself tells. */
  private static double turningLitres() {
    Proposal best =
        Standing.of(job(1.0, 1.0).build(), Catalogue.of(Shelf.parts())).shown().orElseThrow();
    return best.run()
        .largestFlow(GaugePressure.ofBar(6.2))
        .map(flow -> FreeAirFlow.from(flow.massFlow(), litres(1.0).reference()))
        .orElseThrow()
        .litresPerSecond();
  }

  @Test
  void a_range_of_air_is_asked_for_where_the_answer_turns_within_it() {
    double turning = turningLitres();
    Interview talk = talk(job(0.5 * turning, 1.5 * turning));
    assertThat(air(talk)).isEqualTo(RuleOutcome.OPEN);
    List<String> answers = answers(talk, Topic.EXACT_AIR);
    assertThat(answers).hasSize(2);
    assertThat(answers.get(0)).contains("L/s ANR").contains("settled: Air at the tool");
    assertThat(answers.get(1)).contains("not met: Air at the tool");
    assertThat(air(talk.with(Topic.EXACT_AIR, 0.99 * turning + " L/s ANR")))
        .isEqualTo(RuleOutcome.MET);
    Interview much = talk.with(Topic.EXACT_AIR, 1.01 * turning + " L/s ANR");
    assertThat(air(much)).isEqualTo(RuleOutcome.UNMET);
    assertThat(much.requirement().orElseThrow().demandRange().isExact()).isTrue();
    assertThat(asked(much, Topic.EXACT_AIR)).isEmpty();
    double said = Double.parseDouble(answers.get(1).replaceFirst("[^0-9]*([0-9.]+).*", "$1"));
    assertThat(said)
        .as("to some ten thousandths of the most, as it is found by halving")
        .isCloseTo(turning, within(3.0e-4 * turning));
  }

  /** Narrow parts that cost less do with less air: the answers are told apart by what is met, not by each set of parts. */
  @Test
  void where_other_parts_do_at_other_values_that_is_said_in_a_word() {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    for (double bore : new double[] {7.0, 8.0, 9.0}) {
      parts.add(Shelf.hose(
          Shelf.steel(bore + " mm hose").withPrice(Money.parse(bore + " EUR")), bore, 10.0));
    }
    double turning = turningLitres();
    Interview talk =
        talk(job(0.1 * turning, 1.5 * turning).objective(Objective.LOWEST_PRICE), parts);
    List<String> answers = answers(talk, Topic.EXACT_AIR);
    assertThat(answers).hasSize(2);
    assertThat(answers.get(0)).contains("the parts go by the value; settled: Air at the tool");
    Interview little =
        talk(job(0.1 * turning, 0.9 * turning).objective(Objective.LOWEST_PRICE), parts);
    assertThat(answers(little, Topic.EXACT_AIR))
        .as("enough at worst, yet other parts do at less")
        .singleElement()
        .asString()
        .contains("the parts go by the value");
  }

  @Test
  void a_range_of_air_that_decides_nothing_is_not_asked_for() {
    double turning = turningLitres();
    assertThat(asked(talk(job(0.2 * turning, 0.9 * turning)), Topic.EXACT_AIR)).isEmpty();
    assertThat(asked(talk(job(turning, turning)), Topic.EXACT_AIR)).isEmpty();
    assertThat(asked(
            talk(job(0.5 * turning, 1.5 * turning)).withUnknown(Topic.EXACT_AIR), Topic.EXACT_AIR))
        .isEmpty();
  }

  @Test
  void of_a_range_the_most_counts_and_air_that_is_not_counted_is_refused() {
    double turning = turningLitres();
    Interview talk = talk(job(0.5 * turning, 1.5 * turning));
    assertThat(talk.with(Topic.EXACT_AIR, "3 to 4 L/s ANR")
            .requirement()
            .orElseThrow()
            .demand())
        .isEqualTo(litres(4.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Topic.EXACT_AIR, "11 CFM"))
        .withMessageContaining("scfm");
  }

  /** An average over a duty nobody told lies between that and four times that; the duty settles it. */
  @Test
  void the_duty_of_an_average_is_asked_for_in_place_of_the_air() {
    double turning = turningLitres();
    Range<FreeAirFlow> average = Range.exactly(litres(0.5 * turning));
    Interview talk = talk(job(1.0, 1.0).average(average, ToolAir.LEAST_DUTY, 1.0));
    assertThat(air(talk)).isEqualTo(RuleOutcome.OPEN);
    assertThat(asked(talk, Topic.EXACT_AIR)).isEmpty();
    List<String> answers = answers(talk, Topic.DUTY);
    assertThat(answers).hasSize(2);
    assertThat(answers.get(0)).contains(" %").contains("not met: Air at the tool");
    assertThat(answers.get(1)).contains("settled: Air at the tool");
    assertThat(asked(talk, Topic.DUTY).orElseThrow().inWords())
        .isEqualTo("Which share of the time does the tool run?");
    Interview half = talk.with(Topic.DUTY, "51 %");
    assertThat(air(half)).isEqualTo(RuleOutcome.MET);
    assertThat(half.requirement().orElseThrow().demand().litresPerSecond())
        .isCloseTo(0.5 * turning / 0.51, within(1.0e-9));
    assertThat(asked(half, Topic.DUTY)).isEmpty();
    assertThat(asked(half, Topic.EXACT_AIR)).isEmpty();
    assertThat(air(talk.with(Topic.DUTY, "0.49"))).isEqualTo(RuleOutcome.UNMET);
    assertThat(air(talk.with(Topic.DUTY, "49 to 60 %")))
        .as("the least counts")
        .isEqualTo(RuleOutcome.UNMET);
    for (String wrong : List.of("0 %", "51", "often", "25 to")) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> talk.with(Topic.DUTY, wrong))
          .withMessageContaining("duty");
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk(job(1.0, 1.0)).with(Topic.DUTY, "50 %").requirement())
        .withMessageContaining("tell the air it takes while it runs");
  }

  @Test
  void an_average_that_is_enough_whatever_the_duty_is_asks_nothing() {
    double turning = turningLitres();
    Interview talk =
        talk(job(1.0, 1.0).average(Range.exactly(litres(0.2 * turning)), ToolAir.LEAST_DUTY, 1.0));
    assertThat(asked(talk, Topic.DUTY)).isEmpty();
    assertThat(asked(talk, Topic.EXACT_AIR)).isEmpty();
  }

  /** In a talk from the beginning too: what was said to be an average is asked for its duty. */
  @Test
  void what_a_customer_calls_an_average_is_one() {
    Interview talk = Interview.begin(Catalogue.of(Shelf.parts()))
        .with(Topic.MEDIUM, "compressed air")
        .with(Topic.AIR_NEEDED, "avg " + 0.5 * turningLitres() + " L/s ANR")
        .with(Topic.PRESSURE_NEEDED, "6.2 bar(g)")
        .with(Topic.TOOL_INLET, "1/4 NPT female")
        .with(Topic.SUPPLY, "7 bar(g)")
        .with(Topic.OUTLET, "3/8 NPT male")
        .with(Topic.REACH, "10 m");
    assertThat(asked(talk, Topic.DUTY)).isPresent();
    Requirement told = talk.with(Topic.DUTY, "50 %").requirement().orElseThrow();
    assertThat(told.demand().litresPerSecond()).isCloseTo(turningLitres(), within(1.0e-9));
  }

  @Test
  void a_range_of_pressure_is_asked_for_where_the_answer_turns_within_it() {
    double turning = turningLitres();
    Interview talk = talk(job(
        Range.exactly(litres(turning)),
        new Range<>(GaugePressure.ofBar(6.0), GaugePressure.ofBar(6.4))));
    List<String> answers = answers(talk, Topic.EXACT_PRESSURE);
    assertThat(answers).hasSize(2);
    assertThat(answers.get(0)).contains("6.2 bar(g)").contains("settled: Air at the tool");
    assertThat(answers.get(1)).contains("not met: Air at the tool");
    Interview told = talk.with(Topic.EXACT_PRESSURE, "6.05 to 6.1 bar(g)");
    assertThat(told.requirement().orElseThrow().least()).isEqualTo(GaugePressure.ofBar(6.1));
    assertThat(asked(told, Topic.EXACT_PRESSURE)).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Topic.EXACT_PRESSURE, "0 bar(g)"))
        .withMessageContaining("above 0");
    assertThat(asked(talk.with(Topic.EXACT_AIR, "1 L/s ANR"), Topic.EXACT_PRESSURE))
        .as("enough at any of them")
        .isEmpty();
  }

  /** A regulator that is set to a range: at the supply, and in the line. */
  @Test
  void what_a_regulator_is_set_to_is_asked_for_where_it_decides() {
    Requirement.Builder supply = Shelf.job()
        .highest(GaugePressure.ofBar(7.3))
        .regulated()
        .leastSetting(GaugePressure.ofBar(6.3));
    Interview talk = talk(supply);
    List<String> answers = answers(talk, Topic.SETTING);
    assertThat(answers).hasSizeBetween(2, 3);
    assertThat(answers.get(0))
        .startsWith("6.3 bar(g) or more")
        .contains("not met: Air at the tool");
    Interview told = talk.with(Topic.SETTING, "6.9 bar(g)");
    Requirement set = told.requirement().orElseThrow();
    assertThat(set.pressures().usual().bar()).isCloseTo(6.9, within(1.0e-9));
    assertThat(set.isExact()).isTrue();
    assertThat(air(told)).isEqualTo(RuleOutcome.MET);
    assertThat(asked(told, Topic.SETTING)).isEmpty();
  }

  /** Set to the least a tool may have too little, to the most more than its maker allows: no end is the worst. */
  @Test
  void of_a_range_as_the_setting_both_ends_are_judged() {
    Interview talk = talk(Shelf.job()
        .toolRating(GaugePressure.ofBar(6.8))
        .highest(GaugePressure.ofBar(7.3))
        .regulated()
        .leastSetting(GaugePressure.ofBar(6.3)));
    Interview told = talk.with(Topic.SETTING, "6.6 to 6.9 bar(g)");
    Requirement job = told.requirement().orElseThrow();
    assertThat(job.settingRange().least().bar()).isCloseTo(6.6, within(1.0e-9));
    assertThat(job.settingRange().most().bar()).isCloseTo(6.9, within(1.0e-9));
    assertThat(over(told))
        .as("6.9 bar(g) is above 6.8 bar(g)")
        .isNotEqualTo(over(talk.with(Topic.SETTING, "6.6 bar(g)")));
    assertThat(over(told)).isNotIn(RuleOutcome.MET, RuleOutcome.MET_WHILE_REGULATED);
    assertThat(asked(told, Topic.SETTING)).isEmpty();
  }

  /** Parts are rated for 16 bar(g), the tool for 7.5: behind a regulator that fails open the relief valve decides. */
  @Test
  void behind_a_regulator_too_it_is_asked_how_far_the_pressure_can_rise() {
    Requirement.Builder job = Shelf.job()
        .inFront(new Range<>(GaugePressure.ofBar(7.2), GaugePressure.ofBar(7.4)))
        .regulated();
    Interview talk = talk(job);
    assertThat(over(talk)).isEqualTo(RuleOutcome.MET);
    assertThat(answers(talk, Topic.RELIEF_VALVE).get(0))
        .startsWith("7.4 bar(g) or more, up to 7.5 bar(g)");
    assertThat(asked(talk, Topic.HIGHEST)).isEmpty();
    Interview told = talk.with(Topic.RELIEF_VALVE, "8 bar(g)");
    assertThat(over(told)).isEqualTo(RuleOutcome.MET_WHILE_REGULATED);
    assertThat(asked(told, Topic.RELIEF_VALVE)).isEmpty();
    assertThat(told.requirement().orElseThrow().highest()).isEqualTo(GaugePressure.ofBar(8.0));
    Interview exact = talk(job.inFront(Range.exactly(GaugePressure.ofBar(7.4))));
    assertThat(asked(exact, Topic.RELIEF_VALVE)).isEmpty();
    assertThat(asked(exact, Topic.HIGHEST)).isPresent();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Topic.RELIEF_VALVE, "7.3 bar(g)"))
        .withMessageContaining("at least what stands in front of the regulator, 7.4 bar(g)");
  }

  /** What is typed as scfm is told back as scfm, and the turn that is told has its air. */
  @Test
  void the_air_at_which_it_turns_is_enough_when_it_is_typed() {
    Interview talk = talk(job(
        new Range<>(FreeAirFlow.ofScfm60F(8.0), FreeAirFlow.ofScfm60F(40.0)),
        Range.exactly(GaugePressure.ofBar(6.2))));
    String settled = talk.questions(UnitSystem.US).stream()
        .filter(each -> each.topic() == Topic.EXACT_AIR)
        .flatMap(each -> each.answers().stream())
        .map(PossibleAnswer::toString)
        .filter(each -> each.contains("settled: Air at the tool"))
        .findFirst()
        .orElseThrow();
    assertThat(settled).matches("8 scfm or more, up to [0-9.]+ scfm: .*");
    String turn = settled.replaceFirst(".*up to ([0-9.]+ scfm): .*", "$1");
    assertThat(air(talk.with(Topic.EXACT_AIR, turn))).isEqualTo(RuleOutcome.MET);
  }

  /** To the nearest these would be 6.619 psi, which is more than is enough. */
  @Test
  void a_droop_that_is_enough_is_told_no_higher_than_it_is() {
    double pascals = PressureUnit.PSI.toSi(6.6189);
    assertThat(
            new Span(0.0, true, pascals, true, 1.0).inWords(Topic.REGULATOR_DROOP, UnitSystem.US))
        .isEqualTo("up to 6.618 psi");
    assertThat(Span.above(pascals).inWords(Topic.REGULATOR_DROOP, UnitSystem.US))
        .isEqualTo("more than 6.619 psi");
    assertThat(Span.at(PressureUnit.PSI.toSi(6.0)).inWords(Topic.REGULATOR_DROOP, UnitSystem.US))
        .isEqualTo("just 6 psi");
    assertThat(Span.at(0.0).inWords(Topic.REGULATOR_DROOP, UnitSystem.SI)).isEqualTo("just 0 bar");
  }

  /** Of two ratings of one hose the lower counts. */
  @Test
  void what_is_printed_on_a_hose_does_not_raise_the_rating_of_its_data() {
    Part.Hose hose = Shelf.hose(Shelf.steel("hose"), 9.5, 10.0);
    assertThat(hose.rated(GaugePressure.ofBar(20.0)).facts().rating())
        .contains(GaugePressure.ofBar(16.0));
    assertThat(hose.rated(GaugePressure.ofBar(10.0)).facts().rating())
        .contains(GaugePressure.ofBar(10.0));
  }

  private static RuleOutcome over(Interview talk) {
    Requirement job = talk.requirement().orElseThrow();
    return Standing.of(job, Catalogue.of(Shelf.parts()))
        .shown()
        .orElseThrow()
        .of(Rule.TOOL_RATED)
        .outcome();
  }

  /** A hose that is there, of which only the name is known; the job is given so much air that the bore decides. */
  private static Requirement.Builder oldHose() {
    ConduitRange conduit = ConduitName.parse("3/8 in hose, old")
        .over(ConduitName.parse("3/8 in hose, old").bore().orElseThrow(), Length.ofMetres(10.0));
    Part.Hose hose = new Part.Hose(
        PartFacts.of("old hose", "old hose").asExisting(),
        HoseBore.parse("3/8 in"),
        conduit,
        End.parse("3/8 NPT male"),
        End.parse("3/8 NPT male"));
    return Shelf.job().hose(hose);
  }

  /** With so much air that the bore of the old hose decides. */
  private static Requirement.Builder oldHoseThatDecides() {
    for (double litres = 1.0; litres < 20.0; litres += 0.25) {
      Requirement.Builder job = oldHose().taking(Range.exactly(litres(litres)));
      if (air(talk(job)) == RuleOutcome.OPEN) {
        return job;
      }
    }
    throw new AssertionError("no flow at which the bore decides");
  }

  private static final Subject BORE = Subject.of(Topic.HOSE_BORE, Layout.HOSE);
  private static final Subject RATING = Subject.of(Topic.HOSE_RATING, Layout.HOSE);

  @Test
  void the_bore_of_an_old_hose_is_asked_for_by_its_name_where_it_decides() {
    Interview talk = talk(oldHoseThatDecides());
    Question bore = talk.questions().stream()
        .filter(each -> each.subject().equals(BORE))
        .findFirst()
        .orElseThrow();
    assertThat(bore.inWords()).isEqualTo("Hose: How wide is the hose inside, measured at its end?");
    assertThat(bore.answers().get(bore.answers().size() - 1).toString()).contains("mm");
    Interview wide = talk.with(BORE, "25 mm");
    assertThat(air(wide)).isNotEqualTo(RuleOutcome.UNMET);
    assertThat(wide.questions()).noneMatch(each -> each.topic() == Topic.HOSE_BORE);
    Part.Hose there = ((Slot.Hose)
            wide.requirement().orElseThrow().layout().slot(Layout.HOSE).orElseThrow())
        .hose()
        .orElseThrow();
    assertThat(there.conduit().bore()).isEqualTo(Length.ofMillimetres(25.0));
    assertThat(there.widestBore()).isEqualTo(Length.ofMillimetres(25.0));
    assertThat(bore.answers()).anyMatch(answer -> !answer.changes().isEmpty());
    assertThat(air(talk.with(BORE, "4 mm")))
        .as("narrower than its name says, with a wall no rougher than 0.05 of that")
        .isEqualTo(RuleOutcome.UNMET);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Subject.of(Topic.HOSE_BORE, "reel"), "6 mm").requirement())
        .withMessageContaining("must be one of the layout");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk(Shelf.job()).with(BORE, "6 mm").requirement())
        .withMessageContaining("is to be chosen");
  }

  @Test
  void the_rating_of_an_old_hose_turns_at_what_can_stand_in_it() {
    Interview talk = talk(oldHose().highest(GaugePressure.ofBar(9.0)));
    Question rating = talk.questions().stream()
        .filter(each -> each.subject().equals(RATING))
        .findFirst()
        .orElseThrow();
    assertThat(rating.answers())
        .extracting(PossibleAnswer::toString)
        .satisfiesExactly(
            less -> assertThat(less)
                .startsWith("less than 9 bar(g)")
                .doesNotContain("instead of")
                .contains("not met: Parts are rated"),
            more -> assertThat(more).startsWith("9 bar(g) or more").contains("settled: "));
    Interview told = talk.with(RATING, "10 to 12 bar(g)");
    assertThat(told.questions()).noneMatch(each -> each.topic() == Topic.HOSE_RATING);
    assertThat(((Slot.Hose)
                told.requirement().orElseThrow().layout().slot(Layout.HOSE).orElseThrow())
            .hose()
            .orElseThrow()
            .facts()
            .rating())
        .contains(GaugePressure.ofBar(10.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(RATING, "0 psig"))
        .withMessageContaining("above 0");
  }

  /** Of a compressor of which it was told when it stops, only the relief valve is asked for. */
  @Test
  void when_a_compressor_stops_is_not_asked_where_it_was_told() {
    Interview talk = Interview.begin(Catalogue.of(Shelf.parts()))
        .with(Topic.MEDIUM, "compressed air")
        .with(Topic.AIR_NEEDED, "5 L/s ANR")
        .with(Topic.PRESSURE_NEEDED, "5 bar(g)")
        .with(Topic.TOOL_INLET, "1/4 NPT female")
        .with(Topic.OUTLET, "3/8 NPT male")
        .with(Topic.REACH, "10 m");
    assertThat(asked(talk.with(Topic.SUPPLY, "8 bar(g)"), Topic.HIGHEST)).isPresent();
    assertThat(asked(talk.with(Topic.SUPPLY, "8 bar(g)"), Topic.RELIEF_VALVE)).isEmpty();
    Interview swings = talk.with(Topic.SUPPLY, "6.5 to 8 bar(g)");
    assertThat(asked(swings, Topic.HIGHEST)).isEmpty();
    Question relief = asked(swings, Topic.RELIEF_VALVE).orElseThrow();
    assertThat(relief.inWords())
        .isEqualTo("At what pressure does the relief valve of the compressor open?");
    assertThat(relief.answers().get(relief.answers().size() - 1).toString())
        .startsWith("more than 16 bar(g)")
        .contains("not met: Parts are rated");
    Interview told = swings.with(Topic.RELIEF_VALVE, "10 bar(g)");
    assertThat(told.requirement().orElseThrow().highest()).isEqualTo(GaugePressure.ofBar(10.0));
    assertThat(asked(told, Topic.RELIEF_VALVE)).isEmpty();
    assertThat(asked(told, Topic.HIGHEST)).isEmpty();
  }

  /** Without a dryer the bill has a drain; without a pipe nothing hangs on it. */
  @Test
  void a_dryer_is_asked_for_where_a_pipe_may_need_a_drain() {
    assertThat(asked(talk(Shelf.job()), Topic.DRYER)).isEmpty();
    Requirement.Builder piped =
        Shelf.job().pipe("pipe", Shelf.hose(Shelf.steel("pipe"), 25.0, 5.0).conduit());
    Interview talk = talk(piped);
    assertThat(answers(talk, Topic.DRYER))
        .containsExactly(
            "yes: settled: the pipe needs no drain",
            "no: drain valve too, in the pipe, without a price yet");
    assertThat(asked(talk.with(Topic.DRYER, "no"), Topic.DRYER)).isEmpty();
    assertThat(talk.with(Topic.DRYER, "no").requirement().orElseThrow().isDried())
        .contains(false);
    Catalogue withDrain = Catalogue.of(
        Shelf.parts(),
        List.of(new Accessory.Drain(
            PartFacts.of("D-1", "Drain 1/4").withPrice(Money.parse("12.50 EUR")))));
    assertThat(Interview.of(piped.build(), withDrain).questions().stream()
            .filter(each -> each.topic() == Topic.DRYER)
            .flatMap(each -> each.answers().stream())
            .map(PossibleAnswer::toString))
        .contains("no: Drain 1/4 too, in the pipe, 12.50 EUR");
  }

  /** Of several tools each is asked by its line, and told to it. */
  @Test
  void of_several_tools_each_is_asked_by_the_name_of_its_line() {
    Range<FreeAirFlow> average = Range.exactly(litres(3.0));
    ToolLine sander = ToolLine.to(
            "sander",
            litres(1.0),
            GaugePressure.ofBar(6.0),
            End.parse("1/4 NPT female"),
            List.of(Slot.coupling("at the sander")))
        .withAverage(average, ToolAir.LEAST_DUTY, 1.0);
    ToolLine drill = ToolLine.to(
        "drill",
        Range.exactly(litres(2.0)),
        new Range<>(GaugePressure.ofBar(5.0), GaugePressure.ofBar(6.9)),
        End.parse("1/4 NPT female"),
        List.of(Slot.coupling("at the drill")));
    Requirement job = Requirement.forTools(
            Layout.of(List.of(Slot.splitter("manifold")), List.of(sander, drill)))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .build();
    Interview talk = Interview.of(job, Catalogue.of(Shelf.parts()));
    Subject duty = Subject.of(Topic.DUTY, "line 1, sander");
    Requirement told = talk.with(duty, "50 %")
        .with(Subject.of(Topic.EXACT_PRESSURE, "line 2, drill"), "5.5 bar(g)")
        .with(Subject.of(Topic.EXACT_AIR, "line 2, drill"), "2.5 L/s ANR")
        .requirement()
        .orElseThrow();
    assertThat(told.toEachTool().get(0).demand().litresPerSecond()).isCloseTo(6.0, within(1.0e-9));
    assertThat(told.toEachTool().get(1).least()).isEqualTo(GaugePressure.ofBar(5.5));
    assertThat(told.toEachTool().get(1).demand()).isEqualTo(litres(2.5));
  }

  /** Neither the air nor the pressure settles it alone, both together do: each is asked for, and says so. */
  @Test
  void what_settles_the_air_only_together_is_asked_for_too() {
    double turning = turningLitres();
    Interview talk = talk(job(
        new Range<>(litres(0.5 * turning), litres(1.5 * turning)),
        new Range<>(GaugePressure.ofBar(5.0), GaugePressure.ofBar(6.95))));
    assertThat(air(talk)).isEqualTo(RuleOutcome.OPEN);
    for (String litres : List.of("0.5", "1.5")) {
      double told = Double.parseDouble(litres) * turning;
      assertThat(air(talk.with(Topic.EXACT_AIR, told + " L/s ANR")))
          .as("not settled by the air alone")
          .isEqualTo(RuleOutcome.OPEN);
    }
    assertThat(answers(talk, Topic.EXACT_AIR))
        .allMatch(answer -> answer.endsWith(
            "with the exact pressure, by the value, it may settle: Air at the tool"));
    assertThat(asked(talk, Topic.EXACT_PRESSURE)).isPresent();
    Interview narrower = talk.with(Topic.EXACT_AIR, turning + " L/s ANR");
    assertThat(answers(narrower, Topic.EXACT_PRESSURE))
        .anyMatch(answer -> answer.contains("settled: Air at the tool"))
        .anyMatch(answer -> answer.contains("not met: Air at the tool"));
    Interview unknown = talk.withUnknown(Topic.EXACT_AIR);
    assertThat(asked(unknown, Topic.EXACT_PRESSURE).stream()
            .flatMap(question -> question.answers().stream())
            .flatMap(answer -> answer.changes().stream()))
        .as("alone it settles nothing any more")
        .noneMatch(change -> change.contains("by the value, it may settle"));
  }

  @Test
  void amounts_are_told_in_the_units_of_the_customer() {
    double turning = turningLitres();
    Interview talk = talk(job(0.5 * turning, 1.5 * turning));
    List<String> us = new ArrayList<>();
    for (Question question : talk.questions(UnitSystem.US)) {
      if (question.topic() == Topic.EXACT_AIR) {
        question.answers().forEach(answer -> us.add(answer.inWords()));
      }
    }
    assertThat(us).hasSize(2).allMatch(words -> words.contains("scfm"));
  }
}
