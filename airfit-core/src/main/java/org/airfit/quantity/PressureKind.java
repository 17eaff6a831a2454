package org.airfit.quantity;

import java.util.List;

/** The three things a pressure can be measured from, and how people mark them. */
enum PressureKind {
  GAUGE("g", List.of("g", "gauge")),
  ABSOLUTE("a", List.of("a", "abs", "absolute")),
  DROP("", List.of("", "d", "diff"));

  private final String mark;
  private final List<String> spellings;

  PressureKind(String mark, List<String> spellings) {
    this.mark = mark;
    this.spellings = spellings;
  }

  /** The marks a typed unit may end in; spaces and brackets around them are ignored. */
  List<String> spellings() {
    return spellings;
  }

  String written(PressureUnit unit) {
    if (this == DROP) {
      return unit.symbol();
    }
    return unit == PressureUnit.PSI ? "psi" + mark : unit.symbol() + "(" + mark + ")";
  }
}
