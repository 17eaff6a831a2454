package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;

/** What an interview promises, on small catalogues and jobs at random. */
class InterviewProperties {

  private final Random random = new Random(20260704);

  private static Interview begun(long seed) {
    Jumble jumble = new Jumble(seed);
    List<Part> parts = jumble.parts();
    return Interview.of(jumble.job().build(), Catalogue.of(parts))
        .with(Topic.MEDIUM, "compressed air");
  }

  /** A customer who knows some things, and answers at random. */
  private Interview ended(Interview begun, int ofTen) {
    Interview talk = begun;
    Set<Subject> asked = new HashSet<>();
    for (Optional<Question> next = talk.next(); next.isPresent(); next = talk.next()) {
      Question question = next.get();
      assertThat(asked.add(question.subject())).as("asked again: " + question).isTrue();
      PossibleAnswer answer =
          question.answers().get(random.nextInt(question.answers().size()));
      talk = random.nextInt(10) < ofTen
          ? talk.with(question.subject(), answer.text())
          : talk.withUnknown(question.subject());
    }
    return talk;
  }

  /** What a customer sees of a selection, told without the interview: the parts, and what is not simply met. */
  private static String seen(Interview talk) {
    Selection selection = talk.selection().orElseThrow();
    Optional<Proposal> best = shown(selection);
    Map<String, Object> seen = new TreeMap<>();
    seen.put("fits", selection instanceof Selection.Proposals);
    seen.put("parts", best.map(p -> p.parts().stream().map(Part::id).toList()).orElse(List.of()));
    best.ifPresent(proposal -> proposal.findings().forEach(finding -> {
      if (!EnumSet.of(RuleOutcome.MET, RuleOutcome.DOES_NOT_APPLY).contains(finding.outcome())) {
        seen.put(finding.rule().title(), finding.outcome());
      }
    }));
    return seen.toString();
  }

  /** Answers that a customer might think of on a topic, not those the interview lists. */
  private List<String> thoughtOf(Topic topic) {
    return switch (topic) {
      case USE ->
        List.of("hammers", "cleans with air", "sprays paint", "blasts", "feeds fasteners");
      case PLACE ->
        List.of(Environment.values()).stream().map(Environment::toString).toList();
      case CLEANER -> List.of("water", "caustic");
      case AIR -> List.of("dry", "lubricated");
      case WHIP_HOSE -> List.of("yes", "no");
      case REGULATOR, DROPPED, DRAGGED, VENTED -> List.of("yes");
      case PROFILES_IN_USE -> List.of("finch", "wren", "finch, wren", "owl");
      case PROFILE -> List.of("finch", "wren", "owl");
      case TOOL_RATING, BLOCKED_NOZZLE -> List.of(random.nextInt(150) + 1 + " psig");
      case HIGHEST, RELIEF_VALVE, REGULATOR_FAILED -> List.of(102 + random.nextInt(200) + " psig");
      case DUTY -> List.of(25 + random.nextInt(75) + " %");
      case HOSE_RATING -> List.of(20 + random.nextInt(300) + " psig");
      case DRYER -> List.of("yes", "no");
      case COLDEST -> List.of(random.nextInt(70) - 40 + " °C");
      case HOTTEST -> List.of(30 + random.nextInt(60) + " °C");
      default -> List.of();
    };
  }

  /** Whether a job says nothing of a topic, so that a customer may add it. */
  private static boolean isFree(Topic topic, Requirement job) {
    boolean isPlain = !job.isImpactTool()
        && job.cleaningDeadEnd().isEmpty()
        && !job.isPainting()
        && !job.isBlasting()
        && !job.isAutomaticFeed();
    boolean isRegulated = job.pressures().whileRegulated().isPresent();
    return switch (topic) {
      case USE -> isPlain;
      case WHIP_HOSE -> job.isImpactTool();
      case BLOCKED_NOZZLE -> job.cleaningDeadEnd().isPresent() && !job.isDeadEndTold();
      case PLACE -> job.environment().isEmpty();
      case CLEANER -> job.environment().equals(Optional.of(Environment.WASH_DOWN));
      case AIR -> job.lubrication().isEmpty();
      case TOOL_RATING -> job.toolRating().isEmpty();
      case HIGHEST ->
        !job.isCutOutTold() && job.pressures().highest().equals(job.pressures().usual());
      case RELIEF_VALVE ->
        job.isCutOutTold() && job.pressures().highest().equals(job.pressures().usual());
      case DUTY -> job.average().isPresent();
      case HOSE_RATING -> false; // asked of a hose by its name
      case REGULATOR -> !isRegulated;
      case REGULATOR_FAILED -> isRegulated;
      case PROFILE -> job.profile().isEmpty();
      case PROFILES_IN_USE -> job.profilesInUse().isEmpty();
      case COLDEST, HOTTEST -> job.coldest().isEmpty();
      default -> true;
    };
  }

  private List<Interview> oneMore(Interview talk) {
    List<Interview> more = new ArrayList<>();
    for (Topic topic : Topic.values()) {
      if (!talk.answers().containsKey(topic)
          && !talk.notKnown().contains(topic)
          && isFree(topic, talk.requirement().orElseThrow())) {
        for (String text : thoughtOf(topic)) {
          try {
            more.add(talk.with(topic, text));
          } catch (IllegalArgumentException atOdds) {
            // such as a highest pressure below that of a compressor that stops: no answer
          }
        }
      }
    }
    return more;
  }

  @Property(tries = 5, shrinking = ShrinkingMode.OFF)
  void after_the_end_no_answer_changes_the_proposal(@ForAll long seed) {
    Interview talk = ended(begun(seed), 7);
    String end = seen(talk);
    List<Rule> broken = talk.brokenWhateverIsAnswered();
    List<Interview> ones = oneMore(talk);
    for (Interview one : ones) {
      if (!broken
          .isEmpty()) { // it ended because no parts meet these rules: none fit, or one shown breaks
        // a rule
        assertThat(seen(one))
            .as(broken + " by " + one.answers())
            .matches(seen -> seen.contains("fits=false")
                || broken.stream().allMatch(rule -> seen.contains(rule.title() + "=unmet")));
      } else {
        assertThat(seen(one)).as(one.answers().toString()).isEqualTo(end);
      }
    }
  }

  @Property(tries = 5, shrinking = ShrinkingMode.OFF)
  void who_knows_nothing_gets_to_an_end_with_the_job_as_it_was(@ForAll long seed) {
    Interview begun = begun(seed);
    Interview talk = ended(begun, 0);
    assertThat(talk.selection()).isEqualTo(begun.selection());
    assertThat(talk.answers()).isEqualTo(begun.answers());
  }

  /** A value inside a span, of whatever span, gives what the span says; and what changes nothing says nothing. */
  @Property(tries = 4, shrinking = ShrinkingMode.OFF)
  void an_answer_says_something_just_where_the_customer_would_notice(@ForAll long seed) {
    Interview talk = begun(seed);
    String now = seen(talk);
    Set<String> warned = warnings(talk);
    List<String> drained = drains(talk);
    for (Question question : talk.questions()) {
      boolean isOne = false;
      for (PossibleAnswer answer : question.answers()) {
        Interview after = talk.with(question.subject(), answer.text());
        boolean isOther = !seen(after).equals(now)
            || !warnings(after).equals(warned)
            || !drains(after).equals(drained);
        if (question.topic()
            != Topic.PLACE) { // of a material that stays open it says that the place is told
          if (answer.changes().isEmpty() || !isOpen(answer)) {
            assertThat(!answer.changes().isEmpty()).as(question + " " + answer).isEqualTo(isOther);
          }
        }
        isOne |= !answer.changes().isEmpty();
      }
      assertThat(isOne).as(question.toString()).isTrue();
    }
  }

  /**
   * Whether an answer says what the value it is tried with need not do: what it does with others, or that the parts go
   * by the value. Both are held by InterviewOfRangesTest.
   */
  private static boolean isOpen(PossibleAnswer answer) {
    return answer.changes().stream()
        .allMatch(
            change -> change.startsWith("with the ") || change.equals("the parts go by the value"));
  }

  private static Optional<Proposal> shown(Selection selection) {
    return selection.fold(
        fitting -> Optional.of(fitting.best()),
        nothing -> nothing.closest().stream().findFirst());
  }

  /** What the bill says of a drain: its line, or the question whether it needs one. */
  private static List<String> drains(Interview talk) {
    return shown(talk.selection().orElseThrow())
        .map(proposal -> BillOfMaterials.of(proposal, Catalogue.of(List.of())))
        .map(bill -> Stream.concat(
                bill.lines(BillLine.Kind.DRAIN).stream().map(BillLine::name),
                bill.questions().stream().filter(asked -> asked.contains("dryer")))
            .toList())
        .orElse(List.of());
  }

  private static Set<String> warnings(Interview talk) {
    return shown(talk.selection().orElseThrow())
        .map(proposal -> proposal.cautions().stream()
            .map(caution -> caution.title())
            .collect(Collectors.toSet()))
        .orElse(Set.of());
  }

  /** Whatever amount a customer tells, it lies in a span, and does what that span says. */
  @Property(tries = 4, shrinking = ShrinkingMode.OFF)
  void an_amount_does_what_its_span_says(@ForAll long seed) {
    Interview talk = begun(seed);
    for (Question question : talk.questions()) {
      if (question.topic().isAmount()) {
        Set<String> listed = question.answers().stream()
            .map(answer -> seen(talk.with(question.topic(), answer.text())))
            .collect(Collectors.toSet());
        for (int i = 0; i < 5; i++) {
          for (String text : thoughtOf(question.topic())) {
            assertThat(listed).as(text).contains(seen(talk.with(question.topic(), text)));
          }
        }
      }
    }
  }

  @Property(tries = 10, shrinking = ShrinkingMode.OFF)
  void where_it_stands_is_the_first_of_the_list(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.parts());
    Requirement job = jumble.job().build();
    assertThat(Standing.of(job, catalogue).shown()).isEqualTo(shown(Selection.of(job, catalogue)));
  }
}
