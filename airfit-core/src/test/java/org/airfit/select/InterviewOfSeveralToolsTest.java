package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.junit.jupiter.api.Test;

/** A talk about a job of several tools: what is not known of each line is asked by its name. 7 bar(g) at the supply. */
class InterviewOfSeveralToolsTest {

  private static final String GRINDER = "line 1, grinder";
  private static final String RATCHET = "lines 2 and 3, ratchet";

  private static ToolLine line(String tool, String reach) {
    return ToolLine.to(
        tool,
        FreeAirFlow.ofAnrLitresPerSecond(4.0),
        GaugePressure.ofBar(5.0),
        End.parse("3/8 NPT female"),
        List.of(Slot.hose("hose to " + tool, Range.parse(reach, Length::parse))));
  }

  private static Requirement.Builder job(ToolLine... lines) {
    return Requirement.forTools(Layout.of(List.of(Slot.splitter("manifold")), List.of(lines)))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .highest(GaugePressure.ofBar(7.0))
        .outlet(End.parse("3/8 NPT male"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .profile("finch");
  }

  private static List<Part> parts() {
    return new ArrayList<>(List.of(
        new Part.Splitter(
            Shelf.steel("manifold"),
            FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(30.0), 0.3),
            End.parse("3/8 NPT female"),
            Collections.nCopies(3, End.parse("3/8 NPT female"))),
        Shelf.hose(Shelf.steel("short"), 9.5, 10.0),
        Shelf.hose(Shelf.steel("long"), 9.5, 20.0)));
  }

  private static Interview talk(ToolLine... lines) {
    return Interview.of(job(lines).build(), Catalogue.of(parts()))
        .with(Topic.MEDIUM, "compressed air")
        .with(Topic.REGULATOR, "no")
        .with(Topic.PROFILES_IN_USE, "only one");
  }

  private static Optional<Question> of(Interview talk, Subject subject) {
    return talk.questions().stream()
        .filter(each -> each.subject().equals(subject))
        .findFirst();
  }

  private static Interview bothLines() {
    return talk(line("grinder", "10 m"), line("ratchet", "10 m").alike(2));
  }

  @Test
  void what_is_not_known_of_a_line_is_asked_by_its_name() {
    Question rating = of(bothLines(), Subject.of(Topic.TOOL_RATING, RATCHET)).orElseThrow();
    assertThat(rating.inWords())
        .isEqualTo("Lines 2 and 3, ratchet: What is the highest pressure that the maker of the"
            + " tool allows?");
    assertThat(rating.topic()).isEqualTo(Topic.TOOL_RATING);
    assertThat(of(bothLines(), Subject.of(Topic.TOOL_RATING, GRINDER))).isPresent();
    assertThat(of(bothLines(), Subject.ofJob(Topic.TOOL_RATING))).isEmpty();
    // 7 bar(g) can stand at a tool that takes no air: below it the rule is broken
    assertThat(rating.answers().get(0).inWords()).isEqualTo("less than 7 bar(g)");
    assertThat(rating.answers().get(0).changes().get(0))
        .isEqualTo("nothing in the catalogue fits, not met: Tool is not over-pressured (lines 2 and"
            + " 3, ratchet)");
    assertThat(rating.answers().get(1).inWords()).isEqualTo("7 bar(g) or more");
    assertThat(rating.answers().get(1).changes())
        .contains("settled: Tool is not over-pressured (lines 2 and 3, ratchet)");
  }

  /** Two tools of which something is open: the answer on one settles it of that one only. */
  @Test
  void an_answer_on_one_line_leaves_the_other_to_be_asked() {
    Interview talk = bothLines().with(Subject.of(Topic.TOOL_RATING, GRINDER), "8 bar(g)");
    assertThat(of(talk, Subject.of(Topic.TOOL_RATING, GRINDER))).isEmpty();
    assertThat(of(talk, Subject.of(Topic.TOOL_RATING, RATCHET))).isPresent();
    List<Requirement> ways = talk.requirement().orElseThrow().toEachTool();
    assertThat(ways.get(0).toolRating()).contains(GaugePressure.ofBar(8.0));
    assertThat(ways.get(1).toolRating()).isEmpty();
    assertThat(talk.answersBySubject())
        .containsEntry(Subject.of(Topic.TOOL_RATING, GRINDER), "8 bar(g)");
    assertThat(talk.answers()).doesNotContainKey(Topic.TOOL_RATING);
  }

  @Test
  void what_a_tool_does_is_told_to_its_line() {
    Interview talk = bothLines().with(Subject.of(Topic.USE, RATCHET), "hammers");
    List<Requirement> ways = talk.requirement().orElseThrow().toEachTool();
    assertThat(ways.get(0).isImpactTool()).isFalse();
    assertThat(ways.get(1).isImpactTool()).isTrue();
    Interview whip = talk.with(Subject.of(Topic.WHIP_HOSE, RATCHET), "yes");
    assertThat(whip.requirement().orElseThrow().toEachTool().get(1).hasWhipHose())
        .isTrue();
    assertThat(whip.requirement().orElseThrow().toEachTool().get(0).hasWhipHose())
        .isFalse();
    Interview none = talk.with(Subject.of(Topic.WHIP_HOSE, RATCHET), "no");
    assertThat(none.requirement().orElseThrow().toEachTool())
        .extracting(Requirement::lacksWhipHose)
        .containsExactly(false, true);
    Interview gun = talk.with(Subject.of(Topic.USE, GRINDER), "cleans with air")
        .with(Subject.of(Topic.BLOCKED_NOZZLE, GRINDER), "1.9 bar(g)");
    assertThat(gun.requirement().orElseThrow().toEachTool().get(0).cleaningDeadEnd())
        .contains(GaugePressure.ofBar(1.9));
  }

  /** Hoses of 10 and 20 m: of 8 to 12 m it turns at 10 m which is proposed. */
  @Test
  void how_far_a_hose_must_reach_is_asked_where_it_decides_which_one() {
    Interview talk =
        talk(line("grinder", "8 to 12 m"), line("ratchet", "8 to 9 m").alike(2));
    Question far = of(talk, Subject.of(Topic.REACH, "hose to grinder")).orElseThrow();
    assertThat(far.inWords()).isEqualTo("Hose to grinder: How long must it be at least, to reach?");
    assertThat(far.answers())
        .extracting(PossibleAnswer::inWords)
        .containsExactly("8 m or more, up to 10 m", "more than 10 m, up to 12 m");
    assertThat(far.answers().get(0).changes().toString()).contains("(short)");
    assertThat(far.answers().get(1).changes()).isEmpty();
    assertThat(of(talk, Subject.of(Topic.REACH, "hose to ratchet")))
        .as("10 m do anyway")
        .isEmpty();
    Requirement told = talk.with(Subject.of(Topic.REACH, "hose to grinder"), "10 m")
        .requirement()
        .orElseThrow();
    assertThat(told.layout().slot("hose to grinder"))
        .contains(Slot.hose("hose to grinder", Length.ofMetres(10.0)));
  }

  @Test
  void of_one_tool_too_a_reach_that_is_a_range_is_asked() {
    Requirement job = Shelf.job().reach(Range.parse("8 to 12 m", Length::parse)).build();
    Interview talk = Interview.of(job, Catalogue.of(Shelf.parts()));
    Subject hose = Subject.of(Topic.REACH, "hose");
    assertThat(of(talk, hose).orElseThrow().answers())
        .extracting(PossibleAnswer::inWords)
        .containsExactly("8 m or more, up to 10 m", "more than 10 m, up to 12 m");
    assertThat(talk.with(hose, "9 m").requirement().orElseThrow())
        .isEqualTo(Shelf.job().reach(Length.ofMetres(9.0)).build());
  }

  /** Every question is answered or not known, whatever comes: no answer on one line more changes what is proposed. */
  @Test
  void the_talk_ends_when_no_answer_can_change_the_proposal() {
    Interview talk = talk(line("grinder", "8 to 12 m"), line("ratchet", "10 m").alike(2));
    int asked = 0;
    boolean isKnown = true;
    while (talk.next().isPresent()) {
      Question next = talk.next().get();
      List<PossibleAnswer> answers = next.answers();
      talk = isKnown
          ? talk.with(next.subject(), answers.get(answers.size() - 1).text())
          : talk.withUnknown(next.subject());
      isKnown = !isKnown;
      assertThat(++asked).isLessThan(40);
    }
    assertThat(talk.subjectsNotKnown()).isNotEmpty();
    assertThat(talk.answersBySubject().keySet())
        .anyMatch(subject -> subject.of().filter(GRINDER::equals).isPresent());
    assertThat(talk.selection().orElseThrow()).isInstanceOf(Selection.Proposals.class);
  }

  @Test
  void a_line_or_a_hose_that_is_not_there_is_refused_with_those_that_are() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> bothLines().with(Subject.of(Topic.TOOL_RATING, "line 9, saw"), "8 bar(g)"))
        .withMessage(
            "line that is asked about must be one of the job, was \"line 9, saw\"; name one"
                + " of: line 1, grinder; lines 2 and 3, ratchet");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> bothLines().with(Subject.of(Topic.REACH, "manifold"), "8 m"))
        .withMessageContaining("was \"manifold\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> bothLines().with(Subject.of(Topic.PLACE, GRINDER), "outdoors"))
        .withMessageContaining("must be one of its tool, was place");
  }

  @Test
  void a_subject_names_its_line_or_is_of_the_job() {
    for (String blank : new String[] {"", " "}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Subject.of(Topic.TOOL_INLET, blank))
          .withMessage("name of the line or hose of a subject must not be blank, was \"" + blank
              + "\"; leave it out for the job");
    }
    assertThat(Subject.ofJob(Topic.TOOL_INLET).question()).isEqualTo(Topic.TOOL_INLET.question());
  }
}
