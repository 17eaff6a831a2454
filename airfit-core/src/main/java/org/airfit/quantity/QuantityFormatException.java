package org.airfit.quantity;

/** Thrown when a text does not say the quantity asked for: it tells the text, the place and what would be accepted. */
public final class QuantityFormatException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  /** A message stays one line, however much was pasted into the field. */
  private static final int SHOWN = 60;

  /** The text that was read. */
  private final String text;

  /** Where it stopped making sense. */
  private final int position;

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
    super("\"" + shown(text) + "\": " + problem + ", at position " + position + "; accepted: "
        + accepted);
    this.text = text;
    this.position = position;
    this.accepted = accepted;
  }

  static String shown(String text) {
    String oneLine = text.replaceAll("\\p{Cntrl}", " ");
    return oneLine.length() <= SHOWN ? oneLine : oneLine.substring(0, SHOWN) + "…";
  }

  /** {@return the whole text that was read} */
  public String text() {
    return text;
  }

  /** {@return where the text stopped making sense, from 0; its length where something is missing at the end} */
  public int position() {
    return position;
  }

  /** {@return what would have been accepted, with examples} */
  public String accepted() {
    return accepted;
  }
}
