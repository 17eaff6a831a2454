package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.joint.End;
import org.airfit.plant.Compressor;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TypedFlow;
import org.airfit.quantity.Volume;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InterviewTest {

  /** A job of which nothing is told that may stay open; 7 bar(g) at the supply. */
  private static Requirement.Builder bare() {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.2))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(10.0));
  }

  private static Interview talk(Requirement.Builder job, List<Part> parts) {
    return Interview.of(job.build(), Catalogue.of(parts)).with(Topic.MEDIUM, "compressed air");
  }

  private static Interview talk(Requirement.Builder job) {
    return talk(job, Shelf.parts());
  }

  private static List<Topic> topics(Interview talk) {
    return talk.questions().stream().map(Question::topic).toList();
  }

  private static Question question(Interview talk, Topic topic) {
    return talk.questions(UnitSystem.SI).stream()
        .filter(each -> each.topic() == topic)
        .findFirst()
        .orElseThrow();
  }

  private static List<String> answers(Interview talk, Topic topic) {
    return question(talk, topic).answers().stream()
        .map(PossibleAnswer::toString)
        .toList();
  }

  private static List<Part> with(Part... more) {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.addAll(List.of(more));
    return parts;
  }

  @Test
  void what_the_line_carries_comes_first_and_ends_it_where_that_is_no_air() {
    Interview begun = Interview.begin(Catalogue.of(Shelf.parts()));
    Question first = begun.next().orElseThrow();
    assertThat(first.topic()).isEqualTo(Topic.MEDIUM);
    assertThat(first.inWords()).isEqualTo("What does the line carry?");
    assertThat(first).hasToString(first.inWords());
    assertThat(first.answers())
        .extracting(PossibleAnswer::text)
        .startsWith("compressed air", "breathing air", "oxygen");
    assertThat(first.answers().get(0).changes()).isEmpty();
    assertThat(first.answers().get(0)).hasToString("compressed air: nothing changes");
    assertThat(first.answers().get(2).changes().get(0))
        .startsWith("airfit advises on compressed air for tools only, not on oxygen.");
    Interview nitrogen = begun.with(Topic.MEDIUM, "Nitrogen");
    assertThat(nitrogen.questions()).isEmpty();
    assertThat(nitrogen.next()).isEmpty();
    assertThat(nitrogen.refusal().orElseThrow()).contains("not on nitrogen").contains("suffocates");
    assertThat(begun.refusal()).isEmpty();
  }

  @Test
  void of_a_job_too_it_asks_for_the_medium_first_and_ends_with_another() {
    Interview begun = Interview.of(Shelf.job().build(), Catalogue.of(Shelf.parts()));
    assertThat(topics(begun)).startsWith(Topic.MEDIUM);
    assertThat(question(begun, Topic.MEDIUM).answers().get(7).changes().get(0))
        .contains("not on water");
    Interview water = begun.with(Topic.MEDIUM, "water");
    assertThat(water.next()).isEmpty();
    assertThat(water.refusal().orElseThrow()).contains("not on water");
    assertThat(water.selection().orElseThrow().toString()).contains("not on water");
  }

  @Test
  void what_no_parts_can_be_chosen_without_comes_next_in_its_order() {
    Interview talk =
        Interview.begin(Catalogue.of(Shelf.parts())).with(Topic.MEDIUM, "compressed air");
    assertThat(topics(talk))
        .containsExactly(
            Topic.AIR_NEEDED,
            Topic.PRESSURE_NEEDED,
            Topic.TOOL_INLET,
            Topic.SUPPLY,
            Topic.OUTLET,
            Topic.REACH);
    assertThat(talk.missing()).isEqualTo(topics(talk)).allMatch(Topic::isNecessary);
    assertThat(Topic.MEDIUM.isNecessary()).isFalse();
    assertThat(Topic.USE.isNecessary()).isFalse();
    assertThat(talk.questions()).allMatch(question -> question.answers().isEmpty());
    assertThat(talk.requirement()).isEmpty();
    assertThat(talk.selection()).isEmpty();
  }

  private static Interview toldButReach() {
    return Interview.begin(Catalogue.of(Shelf.parts()))
        .with(Topic.MEDIUM, "compressed air")
        .with(Topic.AIR_NEEDED, "10 L/s ANR")
        .with(Topic.PRESSURE_NEEDED, "6.2 bar(g)")
        .with(Topic.TOOL_INLET, "1/4 NPT female")
        .with(Topic.SUPPLY, "7 bar(g)")
        .with(Topic.OUTLET, "3/8 NPT male");
  }

  /** The one hose of the shelf is 10 m long. */
  @Test
  void the_reach_turns_at_the_lengths_of_the_hoses() {
    Question reach = toldButReach().next().orElseThrow();
    assertThat(reach.topic()).isEqualTo(Topic.REACH);
    assertThat(reach.answers())
        .extracting(PossibleAnswer::toString)
        .containsExactly(
            "up to 10 m: part wide + part hose plug + part 10 mm hose + part wide + part tool plug",
            "more than 10 m: nothing in the catalogue fits, not met: Hose reaches");
    Interview.begin(Catalogue.of(Shelf.parts()));
    assertThat(toldButReach().withUnknown(Topic.OUTLET).next().orElseThrow().answers())
        .as("while anything else is missing nothing can be tried")
        .isEmpty();
  }

  /** No part of the shelf goes on G 1/2, whatever the length: a customer is told that once, not by the hose. */
  @Test
  void lengths_that_come_to_the_same_words_are_one_answer() {
    List<Part> parts = with(
        Shelf.hose(Shelf.steel("5 m hose"), 10.0, 5.0),
        Shelf.hose(Shelf.steel("20 m hose"), 10.0, 20.0));
    Question reach = Interview.begin(Catalogue.of(parts))
        .with(Topic.MEDIUM, "compressed air")
        .with(Topic.AIR_NEEDED, "10 L/s ANR")
        .with(Topic.PRESSURE_NEEDED, "6.2 bar(g)")
        .with(Topic.TOOL_INLET, "1/4 NPT female")
        .with(Topic.SUPPLY, "7 bar(g)")
        .with(Topic.OUTLET, "G 1/2 female")
        .next()
        .orElseThrow();
    assertThat(reach.answers())
        .extracting(PossibleAnswer::toString)
        .allMatch(answer -> answer.contains("nothing in the catalogue fits"))
        .allMatch(answer -> answer.contains("Ends mate"))
        .hasSize(2);
  }

  @Test
  void the_job_that_was_told_is_the_requirement_of_the_answers() {
    Interview talk = toldButReach().with(Topic.REACH, " 20 ft to 10 m ");
    AbsolutePressure around = AbsolutePressure.STANDARD_ATMOSPHERE;
    assertThat(talk.requirement())
        .contains(Requirement.forTool(
                FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.2))
            .toolInlet(End.parse("1/4 NPT female"))
            .supply(
                AirState.of(GaugePressure.ofBar(7.0).absolute(around), Temperature.ofCelsius(20.0)),
                around)
            .outlet(End.parse("3/8 NPT male"))
            .reach(new Range<>(Length.parse("20 ft"), Length.ofMetres(10.0)))
            .build());
    assertThat(talk.answers()).containsEntry(Topic.REACH, "20 ft to 10 m");
    Requirement moving = talk.with(Topic.SUPPLY, "6 to 7 bar(g)").requirement().orElseThrow();
    assertThat(moving.pressures().lowest()).isEqualTo(GaugePressure.ofBar(6.0));
    assertThat(moving.highest().bar()).isEqualTo(7.0);
    Requirement most = talk.with(Topic.AIR_NEEDED, "8 to 12 L/s ANR")
        .with(Topic.PRESSURE_NEEDED, "5 to 6 bar(g)")
        .requirement()
        .orElseThrow();
    assertThat(most.demand()).isEqualTo(FreeAirFlow.ofAnrLitresPerSecond(12.0));
    assertThat(most.least()).isEqualTo(GaugePressure.ofBar(6.0));
  }

  /** As a customer says it at the counter: each has all its usual readings, and an average up to four times that. */
  @ParameterizedTest
  @CsvSource({
    "11 CFM, 11 cfm, 11 cfm",
    "11 scfm, 11 scfm, 11 scfm",
    "400 l/min, 400 l/min, 400 l/min",
    "11 to 14 cfm, 11 cfm, 14 cfm",
    "avg 4 CFM, 4 cfm, 16 cfm"
  })
  void air_is_taken_as_it_is_said(String said, String least, String most) {
    Range<FreeAirFlow> judged = toldButReach()
        .with(Topic.REACH, "10 m")
        .with(Topic.AIR_NEEDED, said)
        .requirement()
        .orElseThrow()
        .demandRange();
    Temperature indoors = Temperature.ofCelsius(20.0);
    AbsolutePressure around = AbsolutePressure.STANDARD_ATMOSPHERE;
    assertThat(judged.least().massFlow())
        .isEqualTo(TypedFlow.parse(least).range(around, indoors).least().massFlow());
    assertThat(judged.most().massFlow().kilogramsPerSecond())
        .isCloseTo(
            TypedFlow.parse(most).range(around, indoors).most().massFlow().kilogramsPerSecond(),
            within(1.0e-12));
  }

  @ParameterizedTest
  @CsvSource({"11, the unit is missing", "11-14 cfm, type \"11 to 14 cfm\"", "a lot, no number"})
  void air_that_cannot_be_read_is_refused_with_what_to_type(String said, String told) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> toldButReach().with(Topic.AIR_NEEDED, said))
        .withMessageContaining(told)
        .withMessageContaining("such as");
  }

  @Test
  void who_does_not_know_what_is_necessary_is_told_what_is_missing() {
    Interview talk = toldButReach().withUnknown(Topic.REACH);
    assertThat(talk.next()).isEmpty();
    assertThat(talk.missing()).containsExactly(Topic.REACH);
    assertThat(talk.notKnown()).containsExactly(Topic.REACH);
    assertThat(talk.with(Topic.REACH, "10 m").notKnown()).isEmpty();
    assertThat(talk.with(Topic.REACH, "10 m").withUnknown(Topic.REACH)).isEqualTo(talk);
  }

  @Test
  void the_limit_of_the_tool_turns_at_what_can_stand_at_it() {
    assertThat(answers(talk(bare()), Topic.TOOL_RATING))
        .containsExactly(
            "less than 7 bar(g): nothing in the catalogue fits, not met: Tool is not over-pressured",
            "7 bar(g) or more: settled: Tool is not over-pressured");
    Interview regulated = talk(bare().highest(GaugePressure.ofBar(8.5)).regulated());
    assertThat(answers(regulated, Topic.TOOL_RATING))
        .containsExactly(
            "less than 7 bar(g): nothing in the catalogue fits, not met: Tool is not over-pressured",
            "7 bar(g) or more, less than 8.5 bar(g): met only while the regulator holds: Tool is not"
                + " over-pressured; to heed: If the regulator fails",
            "8.5 bar(g) or more: settled: Tool is not over-pressured");
    assertThat(question(regulated, Topic.TOOL_RATING).why())
        .isEqualTo("A tool that takes no air has the whole pressure of the line on it [the dead-end"
            + " pressure at the tool is the highest that can occur; a regulator can fail open"
            + " (common practice, no source)].");
    assertThat(question(regulated, Topic.TOOL_RATING).source()).isEqualTo(Rule.TOOL_RATED.source());
    assertThat(regulated.next(UnitSystem.US).orElseThrow().answers().get(0).inWords())
        .isEqualTo("less than 101.5 psig");
  }

  /** All parts of the shelf are rated for 16 bar(g); a federal rule on couplers turns at 232 psig (16 bar(g)). */
  @Test
  void the_highest_pressure_turns_at_the_ratings_of_the_parts() {
    assertThat(answers(talk(Shelf.job().toolRating(GaugePressure.ofBar(30.0))), Topic.HIGHEST))
        .containsExactly(
            "7 bar(g) or more, up to 16 bar(g): nothing changes",
            "more than 16 bar(g), up to 30 bar(g): nothing in the catalogue fits, not met: Parts are rated;"
                + " still to be asked: Safety rules allow it; to heed: Rated pressure, Coupler working pressure",
            "more than 30 bar(g): nothing in the catalogue fits, not met: Parts are rated, Tool is not"
                + " over-pressured; still to be asked: Safety rules allow it; to heed: Rated pressure, Coupler"
                + " working pressure");
    assertThat(topics(talk(Shelf.job().highest(GaugePressure.ofBar(9.0)))))
        .doesNotContain(Topic.HIGHEST);
    Supply compressor = new Compressor(
        List.of(
            new Compressor.Point(AbsolutePressure.ofBar(5.0), FreeAirFlow.ofAnrLitresPerSecond(60)),
            new Compressor.Point(
                AbsolutePressure.ofBar(9.0), FreeAirFlow.ofAnrLitresPerSecond(50))),
        AbsolutePressure.ofBar(7.8),
        AbsolutePressure.ofBar(8.0),
        Volume.ofCubicMetres(0.5),
        Temperature.ofCelsius(20.0));
    assertThat(topics(talk(Shelf.job().supply(compressor, Shelf.ATMOSPHERE))))
        .as("a compressor tells where it stops")
        .doesNotContain(Topic.HIGHEST, Topic.REGULATOR);
  }

  @Test
  void
      a_regulator_is_asked_for_where_it_would_spare_the_tool_and_what_stands_behind_a_failed_one() {
    Requirement.Builder job =
        bare().toolRating(GaugePressure.ofBar(7.5)).highest(GaugePressure.ofBar(9.0));
    Interview talk = talk(job);
    assertThat(answers(talk, Topic.REGULATOR))
        .containsExactly(
            "yes: there are parts that fit; met only while the regulator holds: Tool is not"
                + " over-pressured; still to be asked: Air at the tool; to heed: If the regulator"
                + " fails",
            "no: nothing changes");
    assertThat(topics(talk)).doesNotContain(Topic.REGULATOR_FAILED);
    assertThat(answers(talk.with(Topic.REGULATOR, "yes"), Topic.REGULATOR_FAILED))
        .containsExactly(
            "7 bar(g) or more, up to 7.5 bar(g): met even if the regulator fails: Tool is not"
                + " over-pressured; no longer to heed: If the regulator fails",
            "more than 7.5 bar(g), up to 9 bar(g): nothing changes");
    assertThat(topics(talk.with(Topic.REGULATOR, "yes").with(Topic.REGULATOR_FAILED, "7.2 bar(g)")))
        .doesNotContain(Topic.REGULATOR, Topic.REGULATOR_FAILED);
    assertThat(topics(talk(bare()))).doesNotContain(Topic.REGULATOR);
  }

  /** A tool that is made for less than the supply holds: only a regulator set lower, which is no answer, would do. */
  @Test
  void where_nothing_can_fit_whatever_is_answered_it_stops_and_says_why() {
    Interview talk = Interview.of(
            Shelf.job().toolRating(GaugePressure.ofBar(6.5)).build(), Catalogue.of(Shelf.parts()))
        .with(Topic.MEDIUM, "compressed air");
    assertThat(talk.brokenWhateverIsAnswered()).containsExactly(Rule.TOOL_RATED);
    assertThat(talk.questions()).isEmpty();
    assertThat(talk.next()).isEmpty();
    Interview unasked = Interview.of(
        Shelf.job().toolRating(GaugePressure.ofBar(6.5)).build(), Catalogue.of(Shelf.parts()));
    assertThat(topics(unasked)).containsExactly(Topic.MEDIUM);
    Interview sound = talk.with(Topic.TOOL_RATING, "7.5 bar(g)");
    assertThat(sound.brokenWhateverIsAnswered()).isEmpty();
    assertThat(sound.questions()).isNotEmpty();
  }

  /**
   * All parts are rated for 8 bar, 9 can stand in front. That there is a regulator is not enough, as it can fail; that
   * no more than 7.5 bar stand behind a failed one is. So it is not said that nothing can fit, and both are asked.
   */
  @Test
  void what_two_answers_mend_one_behind_the_other_is_asked_about() {
    List<Part> parts = List.of(
        Shelf.socket(weak("socket"), "finch", "3/8 NPT female", 9.0),
        Shelf.plug(weak("hose plug"), "finch", "3/8 NPT female"),
        Shelf.plug(weak("tool plug"), "finch", "1/4 NPT male"),
        Shelf.hose(weak("hose"), 12.7, 10.0));
    Interview talk = talk(bare().highest(GaugePressure.ofBar(9.0)), parts);
    assertThat(talk.selection().orElseThrow()).isInstanceOf(Selection.NothingFits.class);
    assertThat(talk.brokenWhateverIsAnswered()).isEmpty();
    assertThat(topics(talk)).startsWith(Topic.REGULATOR);
    assertThat(answers(talk, Topic.REGULATOR).get(0))
        .startsWith("yes: ")
        .endsWith("parts may fit, by what is asked next");
    assertThat(answers(talk, Topic.REGULATOR).get(1)).doesNotContain("asked next");
    Interview regulated = talk.with(Topic.REGULATOR, "yes");
    assertThat(topics(regulated)).contains(Topic.REGULATOR_FAILED);
    assertThat(regulated.with(Topic.REGULATOR_FAILED, "7.5 bar(g)").selection().orElseThrow())
        .isInstanceOf(Selection.Proposals.class);
    assertThat(talk.with(Topic.REGULATOR, "no").brokenWhateverIsAnswered())
        .containsExactly(Rule.PARTS_RATED);
  }

  private static PartFacts weak(String id) {
    return Shelf.steel(id).withRating(GaugePressure.ofBar(8.0));
  }

  /** 7 bar are held, 9 can stand in front: broken without a regulator, and the answer that there is one mends it. */
  @Test
  void where_one_answer_may_mend_it_the_talk_goes_on() {
    Interview talk =
        talk(bare().toolRating(GaugePressure.ofBar(7.5)).highest(GaugePressure.ofBar(9.0)));
    assertThat(talk.selection().orElseThrow()).isInstanceOf(Selection.NothingFits.class);
    assertThat(talk.brokenWhateverIsAnswered()).isEmpty();
    assertThat(topics(talk)).as("what may mend it comes first").startsWith(Topic.REGULATOR);
    assertThat(talk.with(Topic.REGULATOR, "no").brokenWhateverIsAnswered())
        .containsExactly(Rule.TOOL_RATED);
  }

  private static Part.Plug plug(String id, Material material, String price) {
    return new Part.Plug(
        PartFacts.of(id, "plug of " + material)
            .withRating(GaugePressure.ofBar(16.0))
            .withMaterial(material)
            .withPrice(Money.parse(price)),
        "finch",
        End.parse("1/4 NPT male"));
  }

  /** All other parts of stainless steel, and with a price. */
  private static List<Part> plugsOfSteelAndBrass() {
    List<Part> parts = new ArrayList<>();
    for (Part part : Shelf.parts()) {
      PartFacts facts =
          part.facts().withMaterial(Material.STAINLESS_STEEL).withPrice(Money.parse("10 USD"));
      if (part instanceof Part.Socket it) {
        parts.add(new Part.Socket(facts, it.profiles(), it.end(), it.capacity()));
      } else if (part instanceof Part.Hose it) {
        parts.add(new Part.Hose(facts, it.bore(), it.conduit(), it.upstream(), it.downstream()));
      } else if (!part.id().equals("tool plug")) {
        parts.add(new Part.Plug(facts, ((Part.Plug) part).profile(), ((Part.Plug) part).end()));
      }
    }
    parts.add(plug("steel", Material.STEEL, "5 USD"));
    parts.add(plug("brass", Material.BRASS, "9 USD"));
    return parts;
  }

  @Test
  void a_place_says_which_part_changes_and_what_that_costs() {
    Interview talk = talk(bare(), plugsOfSteelAndBrass());
    assertThat(answers(talk, Topic.PLACE))
        .startsWith(
            "indoors: settled: Material suits the place",
            "outdoors: plug of brass (brass) instead of plug of steel (steel); 4.00 USD more;"
                + " settled: Material suits the place")
        .contains(
            "wash down: plug of brass (brass) instead of plug of steel (steel); 4.00 USD more;"
                + " left to ask the makers: Material suits the place");
    Interview washed = talk.with(Topic.PLACE, "wash down");
    assertThat(answers(washed, Topic.CLEANER))
        .containsExactly(
            "water: settled: Material suits the place",
            "caustic: nothing in the catalogue fits, not met: Material suits the place");
    assertThat(washed.with(Topic.CLEANER, "water").requirement().orElseThrow().environment())
        .contains(Environment.WASH_DOWN_WITH_WATER);
    assertThat(washed.with(Topic.CLEANER, "caustic").requirement().orElseThrow().environment())
        .contains(Environment.WASH_DOWN_WITH_CAUSTIC);
    assertThat(topics(talk.with(Topic.PLACE, "outdoors"))).doesNotContain(Topic.CLEANER);
  }

  @Test
  void what_the_tool_does_is_asked_once_and_what_follows_of_it() {
    Interview talk = talk(bare());
    assertThat(topics(talk))
        .contains(Topic.USE)
        .doesNotContain(Topic.WHIP_HOSE, Topic.BLOCKED_NOZZLE);
    Interview hammers = talk.with(Topic.USE, "hammers");
    assertThat(topics(hammers)).contains(Topic.WHIP_HOSE).doesNotContain(Topic.USE);
    assertThat(answers(hammers, Topic.WHIP_HOSE))
        .containsExactly(
            "yes: settled: Whip hose before a percussion tool; no longer to heed: Whip hose",
            "no: not met: Whip hose before a percussion tool");
    assertThat(topics(hammers.with(Topic.WHIP_HOSE, "yes"))).doesNotContain(Topic.WHIP_HOSE);
    assertThat(topics(hammers.with(Topic.WHIP_HOSE, "no"))).doesNotContain(Topic.WHIP_HOSE);
    for (Requirement.Builder told : List.of(
        bare().impactTool(),
        bare().blowGun(),
        bare().painting(),
        bare().blasting(),
        bare().automaticFeed())) {
      assertThat(topics(talk(told))).doesNotContain(Topic.USE);
    }
    assertThat(topics(talk.with(Topic.USE, "none of these"))).doesNotContain(Topic.USE);
  }

  @Test
  void each_use_is_told_to_the_job() {
    Interview talk = talk(bare());
    assertThat(job(talk, "hammers").isImpactTool()).isTrue();
    assertThat(job(talk, "cleans with air").cleaningDeadEnd()).isPresent();
    assertThat(job(talk, "sprays paint").isPainting()).isTrue();
    assertThat(job(talk, "blasts").isBlasting()).isTrue();
    assertThat(job(talk, "feeds fasteners").isAutomaticFeed()).isTrue();
    assertThat(job(talk, "none of these")).isEqualTo(talk.requirement().orElseThrow());
  }

  private static Requirement job(Interview talk, String use) {
    return talk.with(Topic.USE, use).requirement().orElseThrow();
  }

  /** 29 CFR 1910.242(b) and 1926.302(b)(4): less than 30 psi; 29 CFR 1917.154: not more than 30 psi. */
  @Test
  void a_blocked_nozzle_turns_at_thirty_psi_and_at_it_the_rules_differ() {
    Interview talk = talk(Shelf.job().blowGun());
    Question question = talk.questions(UnitSystem.US).stream()
        .filter(each -> each.topic() == Topic.BLOCKED_NOZZLE)
        .findFirst()
        .orElseThrow();
    assertThat(question.answers())
        .extracting(PossibleAnswer::inWords)
        .containsExactly(
            "less than 30 psig", "just 30 psig", "more than 30 psig, up to 101.5 psig");
    assertThat(question.answers().get(0).changes().get(0)).isEqualTo("there are parts that fit");
    assertThat(question.answers().get(1).changes())
        .contains("still to be asked: Cleaning pressure is kept down");
    assertThat(question.answers().get(2).changes()).isEmpty();
    assertThat(topics(talk.with(Topic.BLOCKED_NOZZLE, "28 psig")))
        .doesNotContain(Topic.BLOCKED_NOZZLE);
    assertThat(topics(talk(Shelf.job().blowGun(GaugePressure.ofPsi(28.0)))))
        .doesNotContain(Topic.BLOCKED_NOZZLE);
  }

  @Test
  void what_may_break_a_rule_of_safety_is_asked_before_what_settles_more() {
    Interview painting = talk(bare().painting().toolRating(GaugePressure.ofBar(9.0)));
    assertThat(answers(painting, Topic.AIR))
        .containsExactly(
            "dry: settled: Safety rules allow it, Dry and lubricated air stay apart",
            "lubricated: nothing in the catalogue fits, not met: Safety rules allow it;"
                + " settled: Dry and lubricated air stay apart; to heed: Oiled air to a paint gun");
    assertThat(topics(painting).subList(0, 2)).containsExactly(Topic.AIR, Topic.HIGHEST);
    assertThat(topics(painting).indexOf(Topic.PLACE))
        .as("settles one, and moves no part; the others settle none")
        .isEqualTo(2);
  }

  private static Part.Socket guarded(String id, String end) {
    return Shelf.socket(Shelf.steel(id).withSleeveGuarded().withVent(), "finch", end, 8.0);
  }

  @Test
  void how_it_is_used_is_asked_only_where_the_parts_differ() {
    Requirement.Builder job = Shelf.job();
    assertThat(answers(talk(job), Topic.DRAGGED))
        .containsExactly(
            "yes: nothing in the catalogue fits, not met: Sleeve is guarded",
            "no: nothing changes");
    assertThat(answers(talk(job, with(guarded("guarded", "3/8 NPT female"))), Topic.DRAGGED))
        .containsExactly(
            "yes: part guarded (guarded) instead of part wide (wide)", "no: nothing changes");
    assertThat(answers(talk(job, with(guarded("guarded", "3/8 NPT female"))), Topic.VENTED))
        .containsExactly(
            "yes: 2 x part guarded (guarded) instead of 2 x part wide (wide)",
            "no: nothing changes");
    assertThat(topics(talk(job))).as("all is of hardened steel").doesNotContain(Topic.DROPPED);
    assertThat(answers(talk(job, plugsOfSteelAndBrass()), Topic.DROPPED))
        .containsExactly(
            "yes: nothing in the catalogue fits, not met: Material suits the place",
            "no: nothing changes");
    Interview told =
        talk(job.dragged().ventRequired().dropped(), with(guarded("g", "3/8 NPT female")));
    assertThat(topics(told)).doesNotContain(Topic.DRAGGED, Topic.VENTED, Topic.DROPPED);
  }

  @Test
  void yes_is_told_to_the_job_and_no_is_not_asked_again() {
    Interview talk = talk(bare());
    Requirement before = talk.requirement().orElseThrow();
    assertThat(talk.with(Topic.DROPPED, "YES").requirement().orElseThrow().isDropped())
        .isTrue();
    assertThat(talk.with(Topic.DRAGGED, "yes").requirement().orElseThrow().isDragged())
        .isTrue();
    assertThat(talk.with(Topic.VENTED, "yes").requirement().orElseThrow().isVentRequired())
        .isTrue();
    for (Topic topic : List.of(Topic.DROPPED, Topic.DRAGGED, Topic.VENTED)) {
      assertThat(talk.with(topic, "No").requirement()).contains(before);
      assertThat(topics(talk.with(topic, "no"))).doesNotContain(topic);
    }
    assertThat(talk.with(Topic.AIR, "dry").requirement().orElseThrow().lubrication())
        .contains(Lubrication.DRY);
  }

  @Test
  void the_profiles_are_those_of_the_catalogue_and_another() {
    List<Part> parts = with(
        Shelf.plug(Shelf.steel("wren hose plug"), "wren", "3/8 NPT female"),
        Shelf.socket(Shelf.steel("owl socket"), "owl", "3/8 NPT female", 4.0));
    assertThat(answers(talk(Shelf.job(), parts), Topic.PROFILE))
        .hasSize(4)
        .startsWith("finch: nothing changes")
        .last()
        .isEqualTo("another one: nothing in the catalogue fits, not met: Profiles mate");
    Interview finch = talk(Shelf.job().profile("finch"), parts);
    assertThat(topics(finch)).doesNotContain(Topic.PROFILE);
    assertThat(question(finch, Topic.PROFILES_IN_USE).answers())
        .extracting(PossibleAnswer::text)
        .containsExactly(
            "only one", "finch, owl", "finch, wren", "finch, another one", "finch, owl, wren");
    assertThat(finch
            .with(Topic.PROFILES_IN_USE, "finch , wren")
            .requirement()
            .orElseThrow()
            .profilesInUse())
        .isEqualTo(Set.of("finch", "wren"));
    assertThat(topics(finch.with(Topic.PROFILES_IN_USE, "Only one")))
        .doesNotContain(Topic.PROFILES_IN_USE);
    assertThat(topics(talk(Shelf.job().profilesInUse(Set.of("finch")))))
        .doesNotContain(Topic.PROFILES_IN_USE);
  }

  /**
   * From 5 °C to 40 °C nobody is asked, below 0 °C water freezes; the hose may have -20 °C to 60 °C, of the others
   * nothing is known.
   */
  @Test
  void cold_and_heat_turn_where_a_shop_ends_and_at_what_the_makers_allow() {
    Interview talk = talk(
        Shelf.job(),
        List.of(
            Shelf.parts().get(0),
            Shelf.parts().get(2),
            Shelf.parts().get(3),
            Shelf.hose(
                Shelf.steel("hose")
                    .withTemperatures(Temperature.ofCelsius(-20.0), Temperature.ofCelsius(60.0)),
                9.5,
                10.0)));
    assertThat(answers(talk, Topic.COLDEST))
        .containsExactly(
            "less than -20 °C: nothing in the catalogue fits, not met: Temperature suits the parts;"
                + " to heed: Frost",
            "-20 °C or more, less than 0 °C: still to be asked: Temperature suits the parts;"
                + " to heed: Frost",
            "0 °C or more, less than 5 °C: still to be asked: Temperature suits the parts",
            "5 °C or more, up to 40 °C: nothing changes");
    assertThat(answers(talk, Topic.HOTTEST))
        .containsExactly(
            "5 °C or more, up to 40 °C: nothing changes",
            "more than 40 °C, up to 60 °C: still to be asked: Temperature suits the parts",
            "more than 60 °C: nothing in the catalogue fits, not met: Temperature suits the parts");
    Requirement usual = talk.requirement().orElseThrow();
    assertThat(talk.with(Topic.COLDEST, "5 °C").with(Topic.HOTTEST, "40 °C").requirement())
        .as("what a shop has needs no maker")
        .contains(usual);
    Requirement cold = talk.with(Topic.COLDEST, "-5 to 4 °C").requirement().orElseThrow();
    assertThat(cold.coldest()).contains(Temperature.ofCelsius(-5.0));
    assertThat(cold.hottest()).contains(Temperature.ofCelsius(40.0));
    Requirement hot = talk.with(Topic.HOTTEST, "41 to 50 °C").requirement().orElseThrow();
    assertThat(hot.coldest()).contains(Temperature.ofCelsius(5.0));
    assertThat(hot.hottest()).contains(Temperature.ofCelsius(50.0));
    Requirement foundry = talk.with(Topic.COLDEST, "45 °C").requirement().orElseThrow();
    assertThat(foundry.hottest()).contains(Temperature.ofCelsius(45.0));
    Requirement store = talk.with(Topic.HOTTEST, "-18 °C").requirement().orElseThrow();
    assertThat(store.coldest()).contains(Temperature.ofCelsius(-18.0));
    Interview told =
        talk(Shelf.job().temperatures(Temperature.ofCelsius(-20.0), Temperature.ofCelsius(50.0)));
    Requirement warmer = told.with(Topic.HOTTEST, "60 °C").requirement().orElseThrow();
    assertThat(warmer.coldest()).as("told before").contains(Temperature.ofCelsius(-20.0));
    assertThat(warmer.hottest()).contains(Temperature.ofCelsius(60.0));
    Requirement milder = told.with(Topic.COLDEST, "10 °C").requirement().orElseThrow();
    assertThat(milder.coldest()).contains(Temperature.ofCelsius(10.0));
    assertThat(milder.hottest()).as("told before").contains(Temperature.ofCelsius(50.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> told.with(Topic.HOTTEST, "-30 °C").requirement())
        .withMessage("highest temperature of the requirement must be at least -20 °C, was -30 °C");
    assertThat(topics(talk(
            Shelf.job().temperatures(Temperature.ofCelsius(0.0), Temperature.ofCelsius(30.0)))))
        .doesNotContain(Topic.COLDEST, Topic.HOTTEST);
  }

  @Test
  void what_is_not_known_stays_open_and_is_not_asked_again() {
    Interview talk = talk(bare());
    Topic first = talk.next().orElseThrow().topic();
    Interview after = talk.withUnknown(first);
    assertThat(topics(after)).doesNotContain(first).hasSize(topics(talk).size() - 1);
    assertThat(after.selection()).isEqualTo(talk.selection());
  }

  @Test
  void what_is_asked_of_a_part_is_not_told_of_the_job() {
    Interview talk = talk(bare());
    for (Topic topic : Topic.values()) {
      if (topic.isOfPart()) {
        String message = topic + " is asked of a part by the name of its slot, was told of the job;"
            + " answer the subject of the question";
        assertThatIllegalArgumentException()
            .isThrownBy(() -> talk.withUnknown(topic))
            .withMessage(message);
        assertThatIllegalArgumentException()
            .isThrownBy(() -> talk.with(topic, topic.example()))
            .withMessage(message);
      } else {
        assertThat(talk.withUnknown(topic).notKnown()).contains(topic);
      }
    }
  }

  @Test
  void an_answer_that_cannot_be_read_is_refused_with_what_is_accepted() {
    Interview talk = talk(bare());
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Topic.DROPPED, "maybe"))
        .withMessage("answer on the dropped must be yes or no, was \"maybe\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Topic.TOOL_RATING, " "))
        .withMessage(
            "answer on the tool rating must be told, was blank; such as \"110 psig, or 7.5 bar(g)\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Topic.TOOL_RATING, "110"))
        .withMessageContaining("110");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Topic.HIGHEST, "5 bar(g)"))
        .withMessageContaining("highest pressure must be at least the supply of 7 bar(g)");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Topic.PROFILES_IN_USE, "finch,,wren"))
        .withMessageContaining("with commas between them, was \"finch,,wren\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Topic.USE, "sings"))
        .withMessageContaining("use of the tool must be one of hammers");
    Interview begun = Interview.begin(Catalogue.of(Shelf.parts()));
    for (Topic topic : List.of(
        Topic.AIR_NEEDED,
        Topic.PRESSURE_NEEDED,
        Topic.SUPPLY,
        Topic.COLDEST,
        Topic.HOTTEST,
        Topic.TOOL_INLET,
        Topic.REACH)) {
      assertThatIllegalArgumentException()
          .as("at once, though nothing can be built yet: " + topic)
          .isThrownBy(() -> begun.with(topic, "much"));
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> begun.with(Topic.PRESSURE_NEEDED, "0 bar(g)"))
        .withMessageContaining("must be above 0");
  }

  @Test
  void every_topic_has_words_and_reads_itself() {
    for (Topic topic : Topic.values()) {
      assertThat(topic.question()).endsWith("?");
      assertThat(topic.why()).doesNotEndWith(".").isNotBlank();
      assertThat(topic.source()).isNotNull();
      assertThat(Topic.parse(topic.toString())).isEqualTo(topic);
    }
    assertThat(Topic.TOOL_RATING.isAmount()).isTrue();
    assertThat(Topic.PLACE.isAmount()).isFalse();
    assertThat(Topic.TOOL_RATING.isOfTool()).isTrue();
    assertThat(Topic.REACH.isOfTool()).isFalse();
  }

  @Test
  void talks_questions_and_answers_are_equal_by_value() {
    Interview one = talk(bare());
    Interview same = talk(bare());
    Interview more = one.with(Topic.AIR, "dry");
    assertThat(one).isEqualTo(same).hasSameHashCodeAs(same).isNotEqualTo(more);
    assertThat(one).isNotEqualTo(talk(bare(), plugsOfSteelAndBrass())).isNotEqualTo("talk");
    assertThat(one.withUnknown(Topic.AIR)).isNotEqualTo(one);
    assertThat(more.toString()).contains("AIR=dry".toLowerCase(java.util.Locale.ROOT));
    Question question = question(one, Topic.AIR);
    assertThat(question)
        .isEqualTo(question(same, Topic.AIR))
        .hasSameHashCodeAs(question(same, Topic.AIR))
        .isNotEqualTo(question(one, Topic.PLACE))
        .isNotEqualTo("question");
    PossibleAnswer answer = question.answers().get(0);
    assertThat(answer)
        .isEqualTo(question(same, Topic.AIR).answers().get(0))
        .hasSameHashCodeAs(question(same, Topic.AIR).answers().get(0))
        .isNotEqualTo(question.answers().get(1))
        .isNotEqualTo("answer");
  }

  @Test
  void with_every_answer_given_there_is_an_end() {
    Interview talk = talk(bare());
    int asked = 0;
    for (Optional<Question> next = talk.next(); next.isPresent(); next = talk.next()) {
      Question question = next.get();
      // the last answer with which something can fit still: behind another one nothing more is
      // asked
      Interview before = talk;
      talk = question.answers().stream()
          .map(answer -> before.with(question.topic(), answer.text()))
          .filter(after -> after.brokenWhateverIsAnswered().isEmpty())
          .reduce((first, last) -> last)
          .orElseThrow();
      asked++;
    }
    assertThat(asked).isBetween(5, Topic.values().length);
    assertThat(talk.questions()).isEmpty();
  }

  /** The shop has finch: beside it each other profile of the catalogue, one that is not in it, and all of them. */
  @Test
  void profiles_in_use_are_offered_one_by_one_and_all_together_where_there_are_several() {
    Requirement job = Shelf.job().profile("finch").build();
    Part wren = Shelf.plug(Shelf.steel("wren plug"), "wren", "3/8 NPT female");
    Part owl = Shelf.plug(Shelf.steel("owl plug"), "owl", "3/8 NPT female");
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.add(wren);
    List<String> one = AnswerText.words(Topic.PROFILES_IN_USE, job, Catalogue.of(parts));
    assertThat(one).hasSize(3).contains("finch, wren").doesNotHaveDuplicates();
    parts.add(owl);
    assertThat(AnswerText.words(Topic.PROFILES_IN_USE, job, Catalogue.of(parts)))
        .hasSize(5)
        .contains("finch, wren", "finch, owl", "finch, owl, wren")
        .doesNotHaveDuplicates();
  }

  /** A customer who speaks of psi is answered in psi, also where an answer is refused. */
  @Test
  void an_answer_in_psi_is_refused_in_psi() {
    Interview talk = talk(bare()
        .supply(
            AirState.of(
                GaugePressure.parse("120 psig").absolute(Shelf.ATMOSPHERE),
                Temperature.parse("68 °F")),
            Shelf.ATMOSPHERE));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Topic.HIGHEST, "110 psig"))
        .withMessageContaining("must be at least the supply of 120 psig, was 110 psig; give");
    Interview regulated = talk.with(Topic.HIGHEST, "150 psig").with(Topic.REGULATOR, "yes");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> regulated.with(Topic.REGULATOR_FAILED, "100 psig"))
        .withMessageContaining("at least the 120 psig it is set to, was 100 psig");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> regulated.with(Topic.REGULATOR_FAILED, "160 psig"))
        .withMessageContaining("at most the highest of 150 psig in front of it, was 160 psig");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(Topic.TOOL_RATING, "-5 psig"))
        .withMessageContaining("was -5 psig; leave it out");
  }
}
