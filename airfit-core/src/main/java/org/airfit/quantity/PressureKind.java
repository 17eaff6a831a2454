package org.airfit.quantity;

import java.util.ArrayList;
import java.util.List;

/** The three things a pressure can be measured from, and how people mark them. */
enum PressureKind {
  GAUGE("gauge pressure", "g", List.of("g", "gauge", "gage")),
  ABSOLUTE("absolute pressure", "a", List.of("a", "abs", "absolute")),
  DROP("pressure drop", "", List.of("", "d", "diff"));

  private final String quantity;
  private final String mark;
  private final List<String> spellings;

  PressureKind(String quantity, String mark, List<String> spellings) {
    this.quantity = quantity;
    this.mark = mark;
    this.spellings = spellings;
  }

  String quantity() {
    return quantity;
  }

  /** All words for a unit with the mark of this kind. */
  List<String> words(PressureUnit unit) {
    List<String> words = new ArrayList<>();
    for (String spelling : spellings) {
      words.add(unit.symbol() + spelling);
      unit.scale().spellings().forEach(word -> words.add(word + spelling));
    }
    return words;
  }

  String written(PressureUnit unit) {
    if (this == DROP) {
      return unit.symbol();
    }
    return unit == PressureUnit.PSI ? "psi" + mark : unit.symbol() + "(" + mark + ")";
  }

  /**
   * What to say to somebody who marked a pressure of this kind as another: the rest of a sentence that begins with his
   * word.
   */
  String insteadOf(PressureKind typed, PressureUnit unit) {
    if (this == DROP) {
      return "marks a pressure against the " + (typed == GAUGE ? "atmosphere" : "vacuum")
          + "; a drop between two places has no such mark: say " + written(unit);
    }
    return switch (typed) {
      case GAUGE -> "is a gauge reading: add the atmosphere to it and say " + written(unit);
      case ABSOLUTE -> "is an absolute pressure: take the atmosphere off and say " + written(unit);
      case DROP ->
        "does not tell from where the pressure counts: say " + GAUGE.written(unit)
            + " for a gauge reading or " + ABSOLUTE.written(unit) + " for an absolute one";
    };
  }
}
