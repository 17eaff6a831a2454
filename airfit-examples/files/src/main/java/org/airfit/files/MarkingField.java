package org.airfit.files;

import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Range;
import org.airfit.run.ToolMarking;

/** The marking of a tool as it is printed, in place of its air and its pressure. */
final class MarkingField {

  private static final String ACCEPTED =
      "what is printed on the tool, such as \"6.3 bar 400 l/min\" or \"max 90 psi, 4 CFM\"";

  /** Where a marking tells only the highest pressure, the tool is taken to need at least so much [bar]: our choice. */
  private static final double LITTLE = 0.1;

  private final Field field;
  private final ToolMarking marking;

  private MarkingField(Field field, ToolMarking marking) {
    this.field = field;
    this.marking = marking;
  }

  /** The marking of a tool; empty where it has none. */
  static Optional<MarkingField> in(Field tool) throws WrongFileException {
    Optional<Field> told = tool.find("marking", ACCEPTED);
    if (told.isEmpty()) {
      return Optional.empty();
    }
    ToolMarking marking = told.get().as(ToolMarking::parse);
    for (Optional<GaugePressure> each : List.of(marking.needed(), marking.allowed())) {
      if (each.isPresent()) {
        told.get().typed(text -> each.get());
      }
    }
    return Optional.of(new MarkingField(told.get(), marking));
  }

  /** Where it stands. */
  Field field() {
    return field;
  }

  /** The marking as it was typed. */
  String typed() {
    return marking.toString();
  }

  /** What a complaint says first of something that a marking does not tell. */
  static String besides(Optional<MarkingField> marked, String what) {
    return marked
        .map(it ->
            "the " + what + ", as the marking \"" + Printable.line(it.typed()) + "\" tells none: ")
        .orElse("");
  }

  boolean isAverage() {
    return marking.isAverage();
  }

  /** The highest pressure that the maker allows, where the marking tells it as the most. */
  Optional<GaugePressure> allowed() {
    return marking.isAllowedOfRange() ? Optional.empty() : marking.allowed();
  }

  /** The higher pressure of a range, which is a limit only if the maker says so; empty of all else. */
  Optional<GaugePressure> endOfRange() {
    return marking.isAllowedOfRange() ? marking.allowed() : Optional.empty();
  }

  /** Says what the pressures of a range were taken for. */
  void remarkOnRange(List<String> remarks) {
    remarks.add(
        "\"" + Printable.line(typed())
            + "\" in tool.marking tells a range of pressure: the lower is taken for what the tool needs, and the tool works"
            + " up to the higher. Whether that is a limit is not told: tell in tool.notAbove what the maker allows.");
  }

  /**
   * Says that the highest pressure of a marking and the limit that is told beside it do not go together: they are not
   * the same, or the tool is marked to work above the limit. That a tool may have more than it is marked to work with is
   * no contradiction.
   */
  void remarkOnLimit(Field beside, GaugePressure told, List<String> remarks)
      throws WrongFileException {
    Optional<GaugePressure> marked = marking.allowed();
    boolean isWithin = marked.isEmpty()
        || (marking.isAllowedOfRange()
            ? marked.get().compareTo(told) <= 0
            : marked.get().shown().equals(told.shown()));
    if (isWithin) {
      return;
    }
    remarks.add("\"" + Printable.line(typed()) + "\" in " + field.place() + " and \""
        + Printable.line(beside.text().strip()) + "\" in " + beside.place()
        + " do not agree on the highest pressure of the tool: the lower is taken as its limit. Look which of the two"
        + " its maker tells.");
  }

  /** The air that the marking tells, with how it was read among the remarks. */
  Optional<Range<FreeAirFlow>> air(AirState around, List<String> remarks)
      throws WrongFileException {
    Optional<Range<FreeAirFlow>> air =
        field.build(() -> marking.air(around.pressure(), around.temperature()));
    if (air.isPresent()) {
      field.typed(text -> air.get());
    }
    if (air.isPresent() && !marking.readings().isEmpty()) {
      remarks.add("\"" + Printable.line(typed())
          + "\" in tool.marking does not tell where the air is counted; it may be "
          + String.join(", ", marking.readings()) + ". All of these are judged.");
    }
    return air;
  }

  /** The pressure that a tool needs: told, or as its marking tells it. */
  static Range<GaugePressure> pressure(
      Field tool, Optional<MarkingField> marked, List<String> remarks) throws WrongFileException {
    Optional<GaugePressure> needed = marked.flatMap(it -> it.marking.needed());
    Optional<Field> told = tool.find("pressure", Accepted.GAUGE);
    if (needed.isPresent()) {
      if (told.isPresent()) {
        throw told.get()
            .wrong("stands beside a marking that tells the pressure; keep one of the two");
      }
      return Range.exactly(needed.get());
    }
    Optional<GaugePressure> allowed = marked.flatMap(MarkingField::allowed);
    if (told.isEmpty() && allowed.isPresent()) {
      remarks.add("\"" + Printable.line(marked.orElseThrow().typed())
          + "\" in tool.marking tells the highest pressure that its maker allows, not the pressure that the tool"
          + " needs: anything up to that is judged; tell tool.pressure if its papers do.");
      return new Range<>(
          GaugePressure.of(Math.min(LITTLE, allowed.get().bar()), PressureUnit.BAR), allowed.get());
    }
    return tool.field("pressure", besides(marked, "pressure") + Accepted.GAUGE)
        .range(GaugePressure::parse);
  }
}
