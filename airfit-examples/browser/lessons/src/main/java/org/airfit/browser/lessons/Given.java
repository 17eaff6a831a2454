package org.airfit.browser.lessons;

import java.util.Map;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;

/** What the fields of a figure hold, each read and accepted already. */
final class Given {

  private final Map<String, Input> inputs;
  private final Map<String, String> texts;

  Given(Map<String, Input> inputs, Map<String, String> texts) {
    this.inputs = Map.copyOf(inputs);
    this.texts = Map.copyOf(texts);
  }

  String text(String id) {
    String text = texts.get(id);
    if (text == null) {
      throw new IllegalStateException("no input " + id);
    }
    return text;
  }

  boolean has(String id) {
    return !text(id).isEmpty();
  }

  /** Whether these fields hold what the lesson has. */
  boolean isLesson(String... ids) {
    for (String id : ids) {
      if (!text(id).equals(input(id).text())) {
        return false;
      }
    }
    return true;
  }

  private Input input(String id) {
    Input input = inputs.get(id);
    if (input == null) {
      throw new IllegalStateException("no input " + id);
    }
    return input;
  }

  /** The number in the unit of the slider. */
  double number(String id) {
    return input(id).kind().number(text(id));
  }

  /** The number in the unit of the slider; behind it what was typed, if that was in another unit. */
  String inUnit(String id) {
    Kind kind = input(id).kind();
    String told = Numbers.plain(number(id)) + " " + kind.unit();
    String typed = text(id);
    return typed.endsWith(" " + kind.unit()) ? told : told + " (" + typed + ")";
  }

  Length length(String id) {
    return Length.parse(text(id));
  }

  GaugePressure gauge(String id) {
    return GaugePressure.parse(text(id));
  }

  FreeAirFlow flow(String id) {
    return FreeAirFlow.parse(text(id));
  }

  SonicConductance conductance(String id) {
    return SonicConductance.parse(text(id));
  }
}
