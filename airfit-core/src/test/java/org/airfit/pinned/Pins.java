package org.airfit.pinned;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.airfit.quantity.Quantity;
import org.airfit.quantity.Unit;

/** Collects questions and what the library answers to them now. */
final class Pins {

  private final List<Pin> pins = new ArrayList<>();
  private final Set<String> asked = new HashSet<>();

  /** {@return all that was asked, in order} */
  List<Pin> all() {
    return List.copyOf(pins);
  }

  /** A number in a unit; "1" is the unit of a ratio. */
  void number(String area, String question, double answer, String unit) {
    if (!Double.isFinite(answer)) {
      throw new IllegalStateException(
          "an answer to be pinned must be finite, was " + answer + " for: " + question);
    }
    add(new Pin(area, question, Double.toString(answer), unit));
  }

  /** A ratio. */
  void ratio(String area, String question, double answer) {
    number(area, question, answer, "1");
  }

  /** A quantity in its SI unit. */
  <Q extends Quantity<Q, U>, U extends Unit> void quantity(
      String area, String question, Quantity<Q, U> answer) {
    number(area, question, answer.in(answer.siUnit()), answer.siUnit().symbol());
  }

  /** A word, such as a verdict. */
  void word(String area, String question, Object answer) {
    add(new Pin(area, question, answer.toString(), Pin.WORD));
  }

  private void add(Pin pin) {
    if (!asked.add(pin.question())) {
      throw new IllegalStateException("asked twice: " + pin.question());
    }
    pins.add(pin);
  }
}
