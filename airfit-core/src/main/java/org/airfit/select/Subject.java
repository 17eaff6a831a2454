package org.airfit.select;

import java.util.Comparator;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Capital;

/**
 * What a question is about: a topic of the job, or a topic of one of several tools or hoses.
 *
 * @param topic the topic
 * @param of the way to the tool it is asked of, such as "line 2, sander" (see {@link Requirement#way}), or the hose or
 *     the regulator by the name of its slot; empty where it is asked of the job
 */
public record Subject(Topic topic, Optional<String> of) implements Comparable<Subject> {

  private static final Comparator<Subject> ORDER =
      Comparator.comparing(Subject::topic).thenComparing(subject -> subject.of.orElse(""));

  /**
   * Refuses null and a blank name.
   *
   * @param topic the topic
   * @param of the way to the tool or the hose it is asked of; empty where it is asked of the job
   * @throws IllegalArgumentException if the name in {@code of} is blank
   */
  public Subject {
    Objects.requireNonNull(topic, "topic");
    Objects.requireNonNull(of, "of");
    if (of.filter(String::isBlank).isPresent()) {
      throw new IllegalArgumentException(
          "name of the line or hose of a subject must not be blank, was \"" + of.get()
              + "\"; leave it out for the job");
    }
  }

  /**
   * Obtains a topic of the job.
   *
   * @param topic the topic
   * @return the subject
   */
  public static Subject ofJob(Topic topic) {
    return new Subject(topic, Optional.empty());
  }

  /**
   * Obtains a topic of one tool or hose.
   *
   * @param topic the topic
   * @param name the way to the tool, such as "line 2, sander", or the hose or the regulator by the name of its slot
   * @return the subject
   * @throws IllegalArgumentException if {@code name} is blank
   */
  public static Subject of(Topic topic, String name) {
    return new Subject(topic, Optional.of(Objects.requireNonNull(name, "name")));
  }

  /** {@return the question in words that a customer understands, behind the name of the line or hose} */
  public String question() {
    return of.map(name -> Capital.first(name) + ": ").orElse("")
        + (topic == Topic.REACH && of.isPresent()
            ? "How long must it be at least, to reach?"
            : topic.question());
  }

  /** {@return why it matters, a sentence with what that rests on} */
  public String why() {
    return Capital.first(topic.why()) + " [" + topic.source() + "].";
  }

  /** By topic, then by name. */
  @Override
  public int compareTo(Subject other) {
    return ORDER.compare(this, other);
  }

  /** {@return the topic, with the name of the line or hose, such as "tool rating (line 2, sander)"} */
  @Override
  public String toString() {
    return topic + of.map(name -> " (" + name + ")").orElse("");
  }
}
