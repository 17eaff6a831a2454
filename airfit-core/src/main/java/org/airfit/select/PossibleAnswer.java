package org.airfit.select;

import java.util.List;
import java.util.Objects;

/**
 * What a customer may answer to a {@link Question}, and what would then be other than it is now.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class PossibleAnswer {

  private final String text;
  private final String inWords;
  private final List<String> changes;

  PossibleAnswer(String text, String inWords, List<String> changes) {
    this.text = text;
    this.inWords = inWords;
    this.changes = List.copyOf(changes);
  }

  /**
   * {@return what to tell the interview, such as "outdoors"} Of an amount it is one value of those that the words name:
   * tell the customer's own in its place, the proposal is the same, or meets the same where the parts go by the value.
   */
  public String text() {
    return text;
  }

  /** {@return the answer in words, such as "yes" or "more than 7.4 bar(g), up to 8.5 bar(g)"} */
  public String inWords() {
    return inWords;
  }

  /** {@return what it changes, a few words each, such as "4.00 USD more"; empty where it changes nothing} */
  public List<String> changes() {
    return changes;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PossibleAnswer that
        && text.equals(that.text)
        && inWords.equals(that.inWords)
        && changes.equals(that.changes);
  }

  @Override
  public int hashCode() {
    return Objects.hash(text, inWords, changes);
  }

  /** {@return the answer with what it changes, such as "outdoors: Plug of brass instead of Plug; 4.00 USD more"} */
  @Override
  public String toString() {
    return inWords + ": " + (changes.isEmpty() ? "nothing changes" : String.join("; ", changes));
  }
}
