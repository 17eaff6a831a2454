package org.airfit.files;

import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Range;
import org.airfit.quantity.TypedFlow;
import org.airfit.run.ToolAir;

/** Reads the air that a tool takes, as its plate and its catalogue print it. */
final class AirField {

  private static final String ACCEPTED = "a free-air flow such as \"34 scfm\" or \"16 L/s ANR\"";

  private AirField() {}

  /**
   * The air while the tool runs: one flow, a range that was told, or all that the words may mean.
   *
   * @param average what it takes on the average, where that was told
   */
  record Air(Range<FreeAirFlow> whileRunning, Optional<Average> average) {}

  /** What a tool takes on the average, and between which shares of the time its duty lies. */
  record Average(Range<FreeAirFlow> flow, double leastDuty, double mostDuty) {

    Air air() {
      return new Air(ToolAir.whileRunning(flow, leastDuty, mostDuty), Optional.of(this));
    }
  }

  /** What is told of the air of a tool. */
  static Air of(Field tool, Optional<MarkingField> marked, AirState around, List<String> remarks)
      throws WrongFileException {
    Optional<DutyField> duty = DutyField.in(tool);
    Optional<Range<FreeAirFlow>> ofMarking =
        marked.isPresent() ? marked.get().air(around, remarks) : Optional.empty();
    if (ofMarking.isPresent() && tool.find("air").isEmpty()) {
      MarkingField marking = marked.orElseThrow();
      return marking.isAverage()
          ? whileRunning(ofMarking.get(), duty, marking.typed(), "tool.marking", remarks)
          : withoutDuty(ofMarking.get(), duty);
    }
    Field field = tool.field("air", MarkingField.besides(marked, "air") + ACCEPTED);
    if (ofMarking.isPresent()) {
      throw field.wrong("stands beside a marking that tells the air; keep one of the two");
    }
    ToolAir air = field.typed(ToolAir::parse);
    Range<FreeAirFlow> told = at(
        air.flow(),
        air.isAverage() ? air.flow().toString() : air.toString(),
        field,
        around,
        remarks);
    return air.isAverage()
        ? whileRunning(told, duty, air.toString(), field.place(), remarks)
        : withoutDuty(told, duty);
  }

  private static Air withoutDuty(Range<FreeAirFlow> air, Optional<DutyField> duty)
      throws WrongFileException {
    if (duty.isPresent()) {
      throw duty.get().wrong("goes with an average, such as \"air\": \"avg 4 scfm\"");
    }
    return new Air(air, Optional.empty());
  }

  /** What the tool takes while it runs, of what it takes on the average. */
  private static Air whileRunning(
      Range<FreeAirFlow> average,
      Optional<DutyField> duty,
      String typed,
      String place,
      List<String> remarks) {
    remarks.add("\"" + Printable.line(typed) + "\" in " + place
        + " is an average: while it runs the tool takes more, "
        + duty.map(told -> "by its duty of " + told.inWords() + ".")
            .orElse("up to four times as much if it runs a quarter of the time (common practice, no"
                + " source); tell tool.duty, the share of the time that it runs."));
    return duty.map(told -> new Average(average, told.least(), told.most()))
        .orElseGet(() -> new Average(average, ToolAir.LEAST_DUTY, 1.0))
        .air();
  }

  /** What was typed, or all that it may mean where it does not tell where the air is counted. */
  static Range<FreeAirFlow> readings(Field field, AirState around, List<String> remarks)
      throws WrongFileException {
    TypedFlow flow = field.typed(TypedFlow::parse);
    return at(flow, flow.toString(), field, around, remarks);
  }

  private static Range<FreeAirFlow> at(
      TypedFlow flow, String typed, Field field, AirState around, List<String> remarks)
      throws WrongFileException {
    if (!flow.isCounted()) {
      remarks.add("\"" + Printable.line(typed) + "\" in " + field.place() + " " + flow.openInWords()
          + ". All of these are judged.");
    }
    Range<FreeAirFlow> range =
        field.build(() -> flow.range(around.pressure(), around.temperature()));
    return field.typed(text -> range);
  }
}
