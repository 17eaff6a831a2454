package org.airfit.lesson;

import java.math.BigDecimal;
import java.util.Locale;

/**
 * Published numbers and our numbers, side by side.
 *
 * <p>Each row is checked when it is added. A difference beyond its tolerance throws {@link WrongNumberException} and
 * stops the notebook.
 */
public final class Comparisons {

  private final Table table =
      Table.of("what", "published", "ours", "difference", "allowed, and why", "source");

  /** Starts an empty comparison. */
  public Comparisons() {}

  /**
   * Adds a published number and our number.
   *
   * @param what what the number is
   * @param published the published number
   * @param ours our number, in the same unit
   * @param unit the unit; empty for none
   * @param percent how far our number may be from the published number [%]
   * @param why the reason for the tolerance
   * @param source where the number is published
   * @return this
   * @throws WrongNumberException if our number is further away, or is NaN
   */
  public Comparisons add(
      String what,
      double published,
      double ours,
      String unit,
      double percent,
      String why,
      String source) {
    double difference = 100.0 * (ours - published) / Math.abs(published);
    if (!(Math.abs(difference) <= percent)) {
      throw new WrongNumberException(what + " must be within " + percent + " % of " + published
          + " " + unit + " (" + source + "), was " + ours + " " + unit);
    }
    table.row(
        what,
        printed(published) + " " + unit,
        number(ours) + " " + unit,
        String.format(Locale.ROOT, "%+.2f %%", Math.round(100.0 * difference) / 100.0),
        "±" + printed(percent) + " %: " + why,
        source);
    return this;
  }

  /**
   * Adds a verdict that must be the same word.
   *
   * @param what what was judged
   * @param published the published verdict
   * @param ours our verdict
   * @param source where it is published
   * @return this
   * @throws WrongNumberException if they differ
   */
  public Comparisons addWord(String what, String published, String ours, String source) {
    if (!published.equals(ours)) {
      throw new WrongNumberException(
          what + " must be \"" + published + "\" (" + source + "), was \"" + ours + "\"");
    }
    table.row(what, published, ours, "same", "must agree", source);
    return this;
  }

  /**
   * Adds a number that was copied out of its source and is not computed: a limit of a standard, for example.
   *
   * <p>Such a row shows only that the number was copied rightly. It is no check of a model, and the table says so.
   *
   * @param what what the number is
   * @param published the published number
   * @param ours the number that the library holds, in the same unit
   * @param unit the unit; empty for none
   * @param source where it is published
   * @return this
   * @throws WrongNumberException if they differ by more than the rounding of a double
   */
  public Comparisons transcribed(
      String what, double published, double ours, String unit, String source) {
    if (!(Math.abs(ours - published) <= 1.0e-12 * Math.abs(published))) {
      throw new WrongNumberException(what + " must be copied as " + published + " " + unit + " ("
          + source + "), was " + ours + " " + unit);
    }
    table.row(
        what,
        printed(published) + " " + unit,
        number(ours) + " " + unit,
        "none",
        "transcribed: shows only that the number was copied rightly",
        source);
    return this;
  }

  /** {@return the rows as a Markdown table} */
  public String toMarkdown() {
    return table.toMarkdown();
  }

  /** Prints a published number with exactly the digits that were entered. */
  private static String printed(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  /** More digits than any of the published numbers has. */
  private static String number(double value) {
    String text = String.format(Locale.ROOT, "%.6g", value);
    if (text.contains("e")) {
      return text;
    }
    return text.contains(".") ? text.replaceAll("\\.?0+$", "") : text;
  }
}
