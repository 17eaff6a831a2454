package org.airfit.select;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a job while a customer is asked: a job told before, if there is one, the answers by subject, and
 * what the customer does not know. Immutable, and equal by value.
 */
final class ToldSoFar {

  private final @Nullable Requirement before;
  private final SortedMap<Subject, String> answers;
  private final SortedSet<Subject> notKnown;
  private final @Nullable Requirement job;

  private ToldSoFar(
      @Nullable Requirement before,
      SortedMap<Subject, String> answers,
      SortedSet<Subject> notKnown) {
    this.before = before;
    this.answers = answers;
    this.notKnown = notKnown;
    this.job = missing().isEmpty() ? build() : null;
  }

  /** Nothing told but a job, or nothing at all. */
  static ToldSoFar of(@Nullable Requirement before) {
    return new ToldSoFar(before, new TreeMap<>(), new TreeSet<>());
  }

  /** This with an answer, in place of what was said of that subject before. */
  ToldSoFar with(Subject subject, String text) {
    SortedMap<Subject, String> fuller = new TreeMap<>(answers);
    fuller.put(subject, text.strip());
    SortedSet<Subject> fewer = new TreeSet<>(notKnown);
    fewer.remove(subject);
    return new ToldSoFar(before, fuller, fewer);
  }

  /** This, where the customer does not know. */
  ToldSoFar withUnknown(Subject subject) {
    SortedMap<Subject, String> fewer = new TreeMap<>(answers);
    fewer.remove(subject);
    SortedSet<Subject> more = new TreeSet<>(notKnown);
    more.add(subject);
    return new ToldSoFar(before, fewer, more);
  }

  /** The answers of the job itself. */
  Map<Topic, String> answers() {
    Map<Topic, String> ofJob = new EnumMap<>(Topic.class);
    answers.forEach((subject, text) -> {
      if (subject.of().isEmpty()) {
        ofJob.put(subject.topic(), text);
      }
    });
    return Collections.unmodifiableMap(ofJob);
  }

  /** All answers. */
  Map<Subject, String> answersBySubject() {
    return Collections.unmodifiableMap(answers);
  }

  /** What of the job itself the customer does not know. */
  Set<Topic> notKnown() {
    Set<Topic> ofJob = EnumSet.noneOf(Topic.class);
    for (Subject subject : notKnown) {
      if (subject.of().isEmpty()) {
        ofJob.add(subject.topic());
      }
    }
    return Collections.unmodifiableSet(ofJob);
  }

  /** All that the customer does not know. */
  Set<Subject> subjectsNotKnown() {
    return Collections.unmodifiableSet(notKnown);
  }

  /** Whether it was asked already. */
  boolean isAsked(Subject subject) {
    return answers.containsKey(subject) || notKnown.contains(subject);
  }

  /** The necessary topics that were not told, in their order. */
  List<Topic> missing() {
    return before != null
        ? List.of()
        : List.of(Topic.values()).stream()
            .filter(topic -> topic.isNecessary() && !answers.containsKey(Subject.ofJob(topic)))
            .toList();
  }

  /** The job, if enough is known. */
  Optional<Requirement> job() {
    return Optional.ofNullable(job);
  }

  private Optional<String> said(Topic topic) {
    return Optional.ofNullable(answers.get(Subject.ofJob(topic)));
  }

  private Requirement build() {
    Requirement.Builder job = before == null
        ? AnswerText.tool(
            said(Topic.AIR_NEEDED).orElse(""), said(Topic.PRESSURE_NEEDED).orElse(""))
        : before.toBuilder();
    // in the order of the topics, so that a later one may say more of what an earlier one said
    for (Map.Entry<Subject, String> each : answers.entrySet()) {
      if (each.getKey().of().isEmpty()) {
        AnswerText.tell(job, each.getKey().topic(), each.getValue());
      }
    }
    AnswerText.temperatures(
        job, Optional.ofNullable(before), said(Topic.COLDEST), said(Topic.HOTTEST));
    Requirement told = job.build();
    for (Map.Entry<Subject, String> each : answers.entrySet()) {
      if (each.getKey().of().isPresent()) {
        told = told(told, each.getKey().topic(), each.getKey().of().get(), each.getValue());
      }
    }
    return told;
  }

  /** A job with what was answered of one of its tools or hoses. */
  private static Requirement told(Requirement job, Topic topic, String of, String text) {
    Layout layout = job.layout();
    if (topic == Topic.REACH) {
      Slot.Hose hose = hose(layout, of);
      return job.isLayoutTold()
          ? job.toBuilder()
              .layout(layout.replacing(of, hose.reaching(AnswerText.reach(text))))
              .build()
          : job.toBuilder().reach(AnswerText.reach(text)).build();
    }
    if (topic.isOfPart()) {
      Slot slot = layout
          .slot(of)
          .orElseThrow(() -> new IllegalArgumentException("part that is asked about must be one of"
              + " the layout (" + layout + "), was \"" + of + "\""));
      Slot told = AnswerText.told(slot, topic, text);
      return job.isLayoutTold()
          ? job.toBuilder().layout(layout.replacing(of, told)).build()
          : usual(job, told);
    }
    if (topic == Topic.SETTING || topic == Topic.REGULATOR_DROOP) {
      if (!(layout.slot(of).orElse(null) instanceof Slot.Regulated regulated)) {
        throw new IllegalArgumentException("regulator that is asked about must be one of the"
            + " layout (" + layout + "), was \"" + of + "\"");
      }
      return job.toBuilder()
          .layout(layout.replacing(of, AnswerText.told(regulated, topic, text)))
          .build();
    }
    int tool = way(job, of);
    return job.toBuilder()
        .layout(layout.withTool(tool, line -> AnswerText.told(line, topic, text)))
        .build();
  }

  /** A job of the usual layout with what is there in one of its slots. */
  private static Requirement usual(Requirement job, Slot slot) {
    Requirement.Builder told = job.toBuilder();
    if (slot instanceof Slot.Hose hose) {
      hose.hose().ifPresent(told::hose);
    } else if (slot instanceof Slot.Coupling coupling) {
      coupling.socket().ifPresent(told::outletSocket);
      coupling.plug().ifPresent(told::toolPlug);
    }
    return told.build();
  }

  /** A hose of a layout by the name of its slot. */
  private static Slot.Hose hose(Layout layout, String name) {
    if (layout.slot(name).orElse(null) instanceof Slot.Hose hose) {
      return hose;
    }
    throw new IllegalArgumentException("hose that is asked about must be one of the layout ("
        + layout + "), was \"" + name + "\"");
  }

  /** Which of several lines bears a name. */
  private static int way(Requirement job, String name) {
    List<String> ways =
        job.toEachTool().stream().flatMap(way -> way.way().stream()).toList();
    int line = ways.indexOf(name);
    if (line < 0) {
      throw new IllegalArgumentException("line that is asked about must be one of the job, was \""
          + name + "\"; name one of: " + String.join("; ", ways));
    }
    return line;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ToldSoFar that
        && Objects.equals(before, that.before)
        && answers.equals(that.answers)
        && notKnown.equals(that.notKnown);
  }

  @Override
  public int hashCode() {
    return Objects.hash(before, answers, notKnown);
  }

  @Override
  public String toString() {
    return (before == null ? "" : before + " and ") + answers + ", not known: " + notKnown;
  }
}
