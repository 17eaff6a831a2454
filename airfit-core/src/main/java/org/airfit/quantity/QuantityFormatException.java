package org.airfit.quantity;

import java.util.Objects;

/** Thrown when a text does not say the quantity asked for: it tells the text, the place and what would be accepted. */
public final class QuantityFormatException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  /** A message stays one line, however much was pasted into the field. */
  private static final int SHOWN = 60;

  /** The text that was read. */
  private final String text;

  /** Where it stopped making sense. */
  private final int position;

  /** What is wrong there. */
  private final String problem;

  /** What would have been accepted. */
  private final String accepted;

  /**
   * Constructs the exception.
   *
   * @param text the text that was read
   * @param position where it stopped making sense, from 0
   * @param problem what is wrong there
   * @param accepted what would have been accepted
   */
  public QuantityFormatException(String text, int position, String problem, String accepted) {
    super("\"" + shown(Objects.requireNonNull(text, "text")) + "\": " + problem + ", at position "
        + position + "; accepted: " + accepted);
    this.text = text;
    this.position = position;
    this.problem = Objects.requireNonNull(problem, "problem");
    this.accepted = Objects.requireNonNull(accepted, "accepted");
  }

  /** The same refusal, told of the text in which the one that was read begins at {@code offset}. */
  QuantityFormatException inside(String whole, int offset) {
    QuantityFormatException wrong =
        new QuantityFormatException(whole, offset + position, problem, accepted);
    wrong.initCause(getCause());
    return wrong;
  }

  static String shown(String text) {
    StringBuilder oneLine = new StringBuilder();
    for (int i = 0; i < Math.min(text.length(), SHOWN); i++) {
      char c = text.charAt(i);
      oneLine.append(c < ' ' || c == '\u007f' ? ' ' : c);
    }
    return text.length() <= SHOWN ? oneLine.toString() : oneLine.append('…').toString();
  }

  /** {@return the whole text that was read} */
  public String text() {
    return text;
  }

  /** {@return where the text stopped making sense, from 0; its length where something is missing at the end} */
  public int position() {
    return position;
  }

  /** {@return what is wrong there, in words} */
  public String problem() {
    return problem;
  }

  /** {@return what would have been accepted, with examples} */
  public String accepted() {
    return accepted;
  }
}
