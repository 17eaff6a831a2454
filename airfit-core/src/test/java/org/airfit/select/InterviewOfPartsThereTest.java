package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import org.junit.jupiter.api.Test;

/** What is asked of parts that are there, of the air that others take, and of a limit that is only marked. */
class InterviewOfPartsThereTest {

  private static final CapacityRange WIDE = CapacityRange.exactly(
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(40.0), 0.3));

  private static FreeAirFlow litres(double litresPerSecond) {
    return FreeAirFlow.ofAnrLitresPerSecond(litresPerSecond);
  }

  /** A job of which nothing is told that may stay open; 7 bar(g) at the supply. */
  private static Requirement.Builder bare() {
    return Requirement.forTool(litres(10.0), GaugePressure.ofBar(5.0))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY);
  }

  private static Interview talk(Requirement.Builder job) {
    return Interview.of(job.build(), Catalogue.of(Shelf.parts()))
        .with(Topic.MEDIUM, "compressed air");
  }

  private static Optional<Question> asked(Interview talk, Subject subject) {
    return talk.questions().stream()
        .filter(each -> each.subject().equals(subject))
        .findFirst();
  }

  private static List<String> answers(Interview talk, Subject subject) {
    return asked(talk, subject).orElseThrow().answers().stream()
        .map(PossibleAnswer::toString)
        .toList();
  }

  private static RuleOutcome outcome(Interview talk, Rule rule) {
    return Standing.of(talk.requirement().orElseThrow(), Catalogue.of(Shelf.parts()))
        .shown()
        .orElseThrow()
        .of(rule)
        .outcome();
  }

  /** 7 bar(g) stand at the tool, and it is marked for up to 6.5: nobody told that this is a limit. */
  @Test
  void a_limit_that_is_only_marked_is_asked_for_and_stops_nothing() {
    Interview talk = talk(bare().reach(Length.ofMetres(10.0)).markedUpTo(GaugePressure.ofBar(6.5)));
    assertThat(outcome(talk, Rule.TOOL_RATED)).isEqualTo(RuleOutcome.OPEN);
    assertThat(talk.brokenWhateverIsAnswered()).isEmpty();
    assertThat(answers(talk, Subject.ofJob(Topic.TOOL_RATING)))
        .containsExactly(
            "6.5 bar(g) or more, less than 7 bar(g): nothing in the catalogue fits, not met: Tool is"
                + " not over-pressured",
            "7 bar(g) or more: settled: Tool is not over-pressured");
    assertThat(outcome(talk.with(Topic.TOOL_RATING, "6.5 bar(g)"), Rule.TOOL_RATED))
        .isEqualTo(RuleOutcome.UNMET);
    assertThat(outcome(talk.with(Topic.TOOL_RATING, "7.5 bar(g)"), Rule.TOOL_RATED))
        .isEqualTo(RuleOutcome.MET);
  }

  @Test
  void a_tool_that_is_marked_for_all_that_can_occur_is_not_asked_about() {
    Interview talk = talk(bare().reach(Length.ofMetres(10.0)).markedUpTo(GaugePressure.ofBar(7.0)));
    assertThat(outcome(talk, Rule.TOOL_RATED)).isEqualTo(RuleOutcome.MET);
    assertThat(asked(talk, Subject.ofJob(Topic.TOOL_RATING))).isEmpty();
  }

  private static Part.Hose hose(double least, double most) {
    Conduit longest =
        Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(most), Length.ofMillimetres(0.01));
    return new Part.Hose(
        PartFacts.of("old hose", "old hose")
            .withRating(GaugePressure.ofBar(16.0))
            .asExisting(),
        HoseBore.parse("3/8 in"),
        new ConduitRange(longest, longest.withLength(Length.ofMetres(least)), List.of()),
        End.parse("3/8 NPT male"),
        End.parse("3/8 NPT male"));
  }

  private static final Subject LENGTH = Subject.of(Topic.HOSE_LENGTH, Layout.HOSE);

  /** It must reach 10 m, and is somewhere from 8 to 12 m long. */
  @Test
  void the_length_of_an_old_hose_turns_at_how_far_it_must_reach() {
    Requirement.Builder job = bare().reach(Length.ofMetres(10.0)).hose(hose(8.0, 12.0));
    Interview talk = talk(job);
    assertThat(asked(talk, LENGTH).orElseThrow().inWords())
        .isEqualTo("Hose: How long is the hose, measured from end to end?");
    assertThat(answers(talk, LENGTH))
        .satisfiesExactly(
            less -> assertThat(less)
                .startsWith("8 m or more, less than 10 m: ")
                .contains("not met: Hose reaches"),
            more -> assertThat(more)
                .startsWith("10 m or more, up to 12 m: ")
                .contains("settled: Hose reaches"));
    Interview told = talk.with(LENGTH, "10.5 to 11 m");
    assertThat(outcome(told, Rule.HOSE_REACHES)).isEqualTo(RuleOutcome.MET);
    assertThat(told.questions()).noneMatch(each -> each.topic() == Topic.HOSE_LENGTH);
    Part.Hose there = ((Slot.Hose)
            told.requirement().orElseThrow().layout().slot(Layout.HOSE).orElseThrow())
        .hose()
        .orElseThrow();
    assertThat(there.shortest()).isEqualTo(Length.ofMetres(10.5));
    assertThat(there.longest()).isEqualTo(Length.ofMetres(11.0));
    assertThat(outcome(talk.with(LENGTH, "9 m"), Rule.HOSE_REACHES)).isEqualTo(RuleOutcome.UNMET);
    assertThat(asked(talk(bare().reach(Length.ofMetres(10.0)).hose(hose(11.0, 11.0))), LENGTH))
        .as("told exactly")
        .isEmpty();
    for (String wrong : List.of("0 m", "long", " ")) {
      assertThatIllegalArgumentException().isThrownBy(() -> talk.with(LENGTH, wrong));
    }
  }

  private static PartFacts unmarked(String id) {
    return PartFacts.of(id, id).withMaterial(Material.STEEL).asExisting();
  }

  private static final End MALE = End.parse("3/8 NPT male");
  private static final End FEMALE = End.parse("3/8 NPT female");

  /** A filter, a coupling and a plug of which nobody told a rating, and a hose to be chosen. */
  private static Requirement.Builder withUnmarkedParts() {
    Part.Device filter = new Part.Device(unmarked("F"), DeviceKind.FILTER, WIDE, FEMALE, MALE);
    Part.Socket socket = new Part.Socket(unmarked("S"), Set.of("finch"), FEMALE, WIDE);
    Part.Plug plug = new Part.Plug(unmarked("P"), "finch", FEMALE);
    return bare()
        .layout(Layout.of(List.of(
            Slot.inLine("filter", filter),
            Slot.coupling("old coupling").withSocket(socket).withPlug(plug),
            Slot.hose("hose", Length.ofMetres(10.0)),
            Slot.coupling("at the tool"))))
        .highest(GaugePressure.ofBar(9.0));
  }

  /** Up to 9 bar(g) can occur: a part must be rated for that, whichever it is. */
  @Test
  void the_rating_of_every_part_that_is_there_without_one_is_asked_for_by_its_name() {
    Interview talk = talk(withUnmarkedParts());
    assertThat(outcome(talk, Rule.PARTS_RATED)).isEqualTo(RuleOutcome.OPEN);
    List<Subject> subjects = List.of(
        Subject.of(Topic.PART_RATING, "filter"),
        Subject.of(Topic.SOCKET_RATING, "old coupling"),
        Subject.of(Topic.PLUG_RATING, "old coupling"));
    Interview all = talk;
    for (Subject subject : subjects) {
      assertThat(answers(talk, subject).get(0))
          .as(subject.toString())
          .startsWith("less than 9 bar(g): ")
          .contains("not met: Parts are rated");
      assertThat(outcome(talk.with(subject, "8.9 bar(g)"), Rule.PARTS_RATED))
          .as(subject.toString())
          .isEqualTo(RuleOutcome.UNMET);
      assertThat(outcome(all, Rule.PARTS_RATED)).isEqualTo(RuleOutcome.OPEN);
      all = all.with(subject, "10 to 12 bar(g)");
    }
    assertThat(outcome(all, Rule.PARTS_RATED))
        .as("of a range the lower counts")
        .isEqualTo(RuleOutcome.MET);
    assertThat(all.questions())
        .extracting(Question::topic)
        .doesNotContain(Topic.PART_RATING, Topic.SOCKET_RATING, Topic.PLUG_RATING);
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> talk.with(Subject.of(Topic.PART_RATING, "hose"), "10 bar(g)").requirement())
        .withMessageContaining("to be chosen");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> talk.with(subjects.get(0), "0 bar(g)"))
        .withMessageContaining("must be above 0");
  }

  private static final Subject OTHERS = Subject.of(Topic.AIR_OF_OTHERS, "manifold");

  private static Requirement.Builder sharing(Range<FreeAirFlow> air) {
    Part.Splitter manifold = new Part.Splitter(
        unmarked("M").withRating(GaugePressure.ofBar(16.0)), WIDE, FEMALE, List.of(MALE, MALE));
    Conduit before =
        Conduit.of(Length.ofMillimetres(12.0), Length.ofMetres(20.0), Length.ofMillimetres(0.05));
    return bare()
        .pipe("pipe", before)
        .layout(Layout.of(List.of(
            Slot.splitter("manifold").with(manifold).sharedWith(air),
            Slot.coupling("coupling"),
            Slot.hose("hose", Length.ofMetres(10.0)),
            Slot.coupling("at the tool"))));
  }

  /** The answer is put in again as one that is told exactly: below where it turns it is enough, above it is not. */
  @Test
  void what_others_take_is_asked_for_where_the_air_turns_within_it() {
    Interview talk = talk(sharing(new Range<>(litres(1.0), litres(40.0))));
    assertThat(outcome(talk, Rule.AIR_AT_TOOL)).isEqualTo(RuleOutcome.OPEN);
    assertThat(asked(talk, OTHERS).orElseThrow().inWords())
        .isEqualTo("Manifold: How much air do the others who draw from there take while the tool"
            + " works?");
    List<String> answers = answers(talk, OTHERS);
    assertThat(answers).hasSize(2);
    assertThat(answers.get(0)).contains("L/s ANR").contains("settled: Air at the tool");
    assertThat(answers.get(1)).contains("not met: Air at the tool");
    double turning = Double.parseDouble(answers.get(1).replaceFirst("[^0-9]*([0-9.]+).*", "$1"));
    Interview less = talk.with(OTHERS, 0.99 * turning + " L/s ANR");
    assertThat(outcome(less, Rule.AIR_AT_TOOL)).isEqualTo(RuleOutcome.MET);
    assertThat(asked(less, OTHERS)).isEmpty();
    assertThat(outcome(talk.with(OTHERS, 1.01 * turning + " L/s ANR"), Rule.AIR_AT_TOOL))
        .isEqualTo(RuleOutcome.UNMET);
    assertThat(outcome(talk(sharing(Range.exactly(litres(0.99 * turning)))), Rule.AIR_AT_TOOL))
        .isEqualTo(RuleOutcome.MET);
    assertThat(asked(talk(sharing(new Range<>(litres(0.5), litres(0.9 * turning)))), OTHERS))
        .as("enough whatever they take")
        .isEmpty();
  }

  /** What others take and what the tool needs settle it together only: each answer names the other question. */
  @Test
  void what_settles_only_together_names_what_it_settles_with() {
    double turning =
        Double.parseDouble(answers(talk(sharing(new Range<>(litres(1.0), litres(40.0)))), OTHERS)
            .get(1)
            .replaceFirst("[^0-9]*([0-9.]+).*", "$1"));
    Requirement.Builder both = Requirement.forTool(
            Range.exactly(litres(10.0)),
            new Range<>(GaugePressure.ofBar(4.0), GaugePressure.ofBar(6.95)))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .layout(sharing(new Range<>(litres(0.5 * turning), litres(1.5 * turning)))
            .build()
            .layout());
    Conduit before =
        Conduit.of(Length.ofMillimetres(12.0), Length.ofMetres(20.0), Length.ofMillimetres(0.05));
    Interview talk = talk(both.pipe("pipe", before));
    List<String> all = new ArrayList<>(answers(talk, OTHERS));
    assertThat(all)
        .anyMatch(answer -> answer.endsWith(
            "with the exact pressure, by the value, it may settle: Air at the tool"));
    assertThat(answers(talk, Subject.ofJob(Topic.EXACT_PRESSURE)))
        .anyMatch(answer -> answer.endsWith(
            "with the air of others (manifold), by the value, it may settle: Air at the tool"));
  }
}
