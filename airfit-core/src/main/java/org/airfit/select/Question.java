package org.airfit.select;

import java.util.List;
import java.util.Objects;
import org.airfit.source.Source;

/**
 * A question to a customer, why it matters, and what each answer would change.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Question {

  private final Topic topic;
  private final List<PossibleAnswer> answers;

  Question(Topic topic, List<PossibleAnswer> answers) {
    this.topic = topic;
    this.answers = List.copyOf(answers);
  }

  /** {@return what it is about} */
  public Topic topic() {
    return topic;
  }

  /** {@return the question in words that a customer understands} */
  public String inWords() {
    return topic.question();
  }

  /** {@return why it matters, with what that rests on} */
  public String why() {
    return Character.toUpperCase(topic.why().charAt(0)) + topic.why().substring(1) + " ["
        + topic.source() + "].";
  }

  /** {@return what that rests on} */
  public Source source() {
    return topic.source();
  }

  /**
   * {@return what may be answered; of an amount the spans between the values at which a rule turns, empty where the
   * answer is a flow, a pressure or a thread without which nothing can be chosen yet}
   */
  public List<PossibleAnswer> answers() {
    return answers;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Question that && topic == that.topic && answers.equals(that.answers);
  }

  @Override
  public int hashCode() {
    return Objects.hash(topic, answers);
  }

  /** {@return the question} */
  @Override
  public String toString() {
    return inWords();
  }
}
