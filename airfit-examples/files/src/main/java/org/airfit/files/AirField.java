package org.airfit.files;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.air.AirState;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.Range;
import org.airfit.quantity.UnmarkedFlow;

/** Reads the air that a tool takes, as its plate and its catalogue print it. */
final class AirField {

  private static final String ACCEPTED = "a free-air flow such as \"34 scfm\" or \"16 L/s ANR\"";

  /** The least share of the time that a tool is taken to run where nobody told: common practice, no source. */
  private static final double LEAST_DUTY = 0.25;

  private AirField() {}

  /** The air while the tool runs: one flow, a range that was told, or all that the words may mean. */
  static Range<FreeAirFlow> of(
      Field tool, Optional<MarkingField> marked, AirState around, List<String> remarks)
      throws WrongFileException {
    Optional<Field> duty =
        tool.find("duty", "the share of the time that the tool runs, such as 0.25");
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
    String typed = field.isText() ? field.text().strip() : "";
    String plain = typed.replaceFirst("(?i)^(average|avg\\.?)\\s*", "");
    return plain.equals(typed)
        ? withoutDuty(readings(field, typed, around, remarks), duty)
        : whileRunning(
            readings(field, plain, around, remarks), duty, typed, field.place(), remarks);
  }

  private static Range<FreeAirFlow> withoutDuty(Range<FreeAirFlow> air, Optional<Field> duty)
      throws WrongFileException {
    if (duty.isPresent()) {
      throw duty.get().wrong("goes with an average, such as \"air\": \"avg 4 scfm\"");
    }
    return air;
  }

  /** What the tool takes while it runs, of what it takes on the average. */
  private static Range<FreeAirFlow> whileRunning(
      Range<FreeAirFlow> average,
      Optional<Field> duty,
      String typed,
      String place,
      List<String> remarks)
      throws WrongFileException {
    double share = duty.isPresent() ? share(duty.get()) : LEAST_DUTY;
    FreeAirFlow most = over(average.most(), share);
    remarks.add("\"" + Printable.line(typed) + "\" in " + place
        + " is an average: while it runs the tool takes more, "
        + (duty.isPresent()
            ? "by its duty of " + share + "."
            : "up to four times as much if it runs a quarter of the time (common practice, no source); tell"
                + " tool.duty, the share of the time that it runs."));
    return duty.isPresent()
        ? new Range<>(over(average.least(), share), most)
        : new Range<>(average.least(), most);
  }

  private static FreeAirFlow over(FreeAirFlow average, double share) {
    return FreeAirFlow.from(average.massFlow().times(1.0 / share), average.reference());
  }

  private static double share(Field duty) throws WrongFileException {
    double share = duty.number();
    if (!(share > 0.0 && share <= 1.0)) {
      throw duty.wrong("must be above 0 and at most 1, was " + share);
    }
    return share;
  }

  /** What was typed, or all that it may mean where it does not tell where the air is counted. */
  static Range<FreeAirFlow> readings(
      Field field, String typed, AirState around, List<String> remarks) throws WrongFileException {
    UnmarkedFlow flow;
    try {
      flow = UnmarkedFlow.parse(typed);
    } catch (QuantityFormatException e) {
      return field.isText() && !typed.equals(field.text().strip())
          ? Range.exactly(field.build(() -> FreeAirFlow.parse(typed)))
          : field.range(FreeAirFlow::parse);
    }
    UnmarkedFlow here = field.build(() -> flow.atSite(around.pressure(), around.temperature()));
    remarks.add("\"" + Printable.line(typed)
        + "\" in " + field.place() + " does not tell where the air is counted; it may be "
        + here.readings().stream().map(UnmarkedFlow.Reading::name).collect(Collectors.joining(", "))
        + ". All of these are judged.");
    return here.range();
  }
}
