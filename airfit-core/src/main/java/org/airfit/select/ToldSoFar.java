package org.airfit.select;

import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a job while a customer is asked: a job told before, if there is one, the answers by topic, and what
 * the customer does not know. Immutable, and equal by value.
 */
final class ToldSoFar {

  private final @Nullable Requirement before;
  private final Map<Topic, String> answers;
  private final Set<Topic> notKnown;
  private final @Nullable Requirement job;

  private ToldSoFar(@Nullable Requirement before, Map<Topic, String> answers, Set<Topic> notKnown) {
    this.before = before;
    this.answers = answers;
    this.notKnown = notKnown;
    this.job = missing().isEmpty() ? build() : null;
  }

  /** Nothing told but a job, or nothing at all. */
  static ToldSoFar of(@Nullable Requirement before) {
    return new ToldSoFar(before, new EnumMap<>(Topic.class), EnumSet.noneOf(Topic.class));
  }

  /** This with an answer, in place of what was said of that topic before. */
  ToldSoFar with(Topic topic, String text) {
    Map<Topic, String> fuller = new EnumMap<>(Topic.class);
    fuller.putAll(answers);
    fuller.put(topic, text.strip());
    Set<Topic> fewer = EnumSet.noneOf(Topic.class);
    fewer.addAll(notKnown);
    fewer.remove(topic);
    return new ToldSoFar(before, fuller, fewer);
  }

  /** This, where the customer does not know. */
  ToldSoFar withUnknown(Topic topic) {
    Map<Topic, String> fewer = new EnumMap<>(Topic.class);
    fewer.putAll(answers);
    fewer.remove(topic);
    Set<Topic> more = EnumSet.noneOf(Topic.class);
    more.addAll(notKnown);
    more.add(topic);
    return new ToldSoFar(before, fewer, more);
  }

  Map<Topic, String> answers() {
    return Collections.unmodifiableMap(answers);
  }

  Set<Topic> notKnown() {
    return Collections.unmodifiableSet(notKnown);
  }

  /** Whether it was asked already. */
  boolean isAsked(Topic topic) {
    return answers.containsKey(topic) || notKnown.contains(topic);
  }

  /** The necessary topics that were not told, in their order. */
  List<Topic> missing() {
    return before != null
        ? List.of()
        : List.of(Topic.values()).stream()
            .filter(topic -> topic.isNecessary() && !answers.containsKey(topic))
            .toList();
  }

  /** The job, if enough is known. */
  Optional<Requirement> job() {
    return Optional.ofNullable(job);
  }

  private Requirement build() {
    Requirement.Builder job = before == null
        ? AnswerText.tool(
            answers.getOrDefault(Topic.AIR_NEEDED, ""),
            answers.getOrDefault(Topic.PRESSURE_NEEDED, ""))
        : before.toBuilder();
    // in the order of the topics, so that a later one may say more of what an earlier one said
    answers.forEach((topic, text) -> AnswerText.tell(job, topic, text));
    AnswerText.temperatures(
        job,
        Optional.ofNullable(answers.get(Topic.COLDEST)),
        Optional.ofNullable(answers.get(Topic.HOTTEST)));
    return job.build();
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
