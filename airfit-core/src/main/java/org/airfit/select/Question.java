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

  private final Subject subject;
  private final List<PossibleAnswer> answers;

  Question(Subject subject, List<PossibleAnswer> answers) {
    this.subject = subject;
    this.answers = List.copyOf(answers);
  }

  /** {@return what it is about} */
  public Topic topic() {
    return subject.topic();
  }

  /** {@return what it is about, and of which of several tools or hoses} */
  public Subject subject() {
    return subject;
  }

  /** {@return the question in words that a customer understands, behind the name of one of several lines or hoses} */
  public String inWords() {
    return subject.question();
  }

  /** {@return why it matters, with what that rests on} */
  public String why() {
    return subject.why();
  }

  /** {@return what that rests on} */
  public Source source() {
    return topic().source();
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
    return other instanceof Question that
        && subject.equals(that.subject)
        && answers.equals(that.answers);
  }

  @Override
  public int hashCode() {
    return Objects.hash(subject, answers);
  }

  /** {@return the question} */
  @Override
  public String toString() {
    return inWords();
  }
}
