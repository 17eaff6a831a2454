package org.airfit.browser.lessons;

import java.util.List;
import org.airfit.quantity.QuantityFormatException;

/**
 * A number, or a choice, that a reader may change.
 *
 * @param id its name in the figure
 * @param label what stands beside the field
 * @param kind what is typed
 * @param text the lesson's own, as people type it; empty for a reading that was not taken
 * @param low where the slider begins
 * @param high where the slider ends
 * @param step how far it goes at once
 * @param least the smallest that may be typed
 * @param most the largest that may be typed
 * @param optional whether the field may be empty
 * @param choices what may be chosen, value and text in turn; empty for a number
 */
record Input(
    String id,
    String label,
    Kind kind,
    String text,
    double low,
    double high,
    double step,
    double least,
    double most,
    boolean optional,
    List<String> choices) {

  static Input of(
      String id, String label, Kind kind, String text, double low, double high, double step) {
    return new Input(id, label, kind, text, low, high, step, low, high, false, List.of());
  }

  static Input choice(String id, String label, String chosen, String... choices) {
    return new Input(id, label, Kind.CHOICE, chosen, 0, 0, 0, 0, 0, false, List.of(choices));
  }

  /** The same, but more may be typed than the slider reaches. */
  Input typed(double from, double to) {
    return new Input(id, label, kind, text, low, high, step, from, to, optional, choices);
  }

  /** The same, but the field may be empty. */
  Input orNone() {
    return new Input(id, label, kind, text, low, high, step, least, most, true, choices);
  }

  /** The text as the figure reads it; refuses what it cannot use, in one line. */
  String accepted(String typed) {
    if (kind == Kind.CHOICE) {
      return typed;
    }
    String told = kind.complete(typed);
    if (told.isEmpty()) {
      if (optional) {
        return "";
      }
      throw new IllegalArgumentException("give a value, such as " + text);
    }
    double number = read(told);
    if (!(number >= least * (1.0 - 1.0e-12) && number <= most * (1.0 + 1.0e-12))) {
      throw new IllegalArgumentException(
          "give " + written(least) + " to " + written(most) + " here");
    }
    return told;
  }

  /** The number in the unit of the slider; what cannot be read is told in one short line, with an example. */
  private double read(String told) {
    try {
      return kind.number(told);
    } catch (QuantityFormatException e) {
      throw new IllegalArgumentException(e.problem() + "; write it such as " + example(), e);
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(e.getMessage() + "; write it such as " + example(), e);
    }
  }

  private String example() {
    return text.isEmpty() ? written(low) : text;
  }

  private String written(double value) {
    return (Numbers.plain(value) + " " + kind.unit()).strip();
  }
}
