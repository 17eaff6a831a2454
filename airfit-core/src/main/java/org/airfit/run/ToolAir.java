package org.airfit.run;

import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TypedFlow;

/**
 * The air of a tool as a customer says it: "11 scfm", "11 CFM", "400 l/min", "11 to 14 cfm", "avg 4 CFM".
 *
 * <p>A flow that does not tell where it is counted has every usual reading. An average over the time tells less than the
 * tool takes while it runs: that is the average over the duty, the share of the time that the tool runs. This class is
 * immutable, thread-safe and value-based.
 */
public final class ToolAir {

  /** The least share of the time that a tool is taken to run where nobody told [-]: common practice, no source. */
  public static final double LEAST_DUTY = 0.25;

  private static final String AVERAGE = "(?:average|avg|mean|ø)[.]?";

  private static final Pattern IN_FRONT = Pattern.compile("(?i)^" + AVERAGE + "(?![a-z])\\s*(.*)$");

  private static final Pattern BEHIND =
      Pattern.compile("(?i)^(.*?[^a-z])\\(?" + AVERAGE + "\\)?$");

  private final String text;
  private final TypedFlow flow;
  private final boolean average;

  private ToolAir(String text, TypedFlow flow, boolean average) {
    this.text = text;
    this.flow = flow;
    this.average = average;
  }

  /**
   * Reads what a customer says.
   *
   * @param text a flow or a range of it, of which "avg" or "average" may stand in front or behind
   * @return what it tells
   * @throws QuantityFormatException if the text is no such flow; it tells where and what would be accepted
   */
  public static ToolAir parse(String text) {
    String plain = Objects.requireNonNull(text, "text").strip();
    Matcher average = IN_FRONT.matcher(plain);
    if (!average.matches()) {
      average = BEHIND.matcher(plain);
    }
    if (average.matches()) {
      return new ToolAir(
          plain, TypedFlow.parse(Objects.requireNonNull(average.group(1)).strip()), true);
    }
    return new ToolAir(plain, TypedFlow.parse(plain), false);
  }

  /** {@return whether the air is an average over the time} */
  public boolean isAverage() {
    return average;
  }

  /** {@return the flow, of an average without that word} */
  public TypedFlow flow() {
    return flow;
  }

  /**
   * Tells what the tool may take while it runs; of an average from that to four times that, as one takes whose tool runs
   * a quarter of the time (common practice, no source).
   *
   * @param atmosphere the atmosphere at the site, in [50, 200] kPa, for air that is counted there
   * @param temperature the temperature there, in [-100, 100] °C
   * @return from the least to the most
   * @throws IllegalArgumentException if an argument is out of range
   */
  public Range<FreeAirFlow> whileRunning(AbsolutePressure atmosphere, Temperature temperature) {
    Range<FreeAirFlow> told = flow.range(atmosphere, temperature);
    return average ? whileRunning(told, LEAST_DUTY, 1.0) : told;
  }

  /**
   * Tells what a tool takes while it runs, of what it takes on the average: the average over the duty. That falls as the
   * duty grows and rises with the average, so that two ends are enough.
   *
   * <pre>
   *   ṁ = ṁ(average) / duty
   * </pre>
   *
   * @param average what it takes on the average
   * @param leastDuty the least share of the time that it runs [-], in (0, 1]
   * @param mostDuty the most [-], in [{@code leastDuty}, 1]
   * @return from the least to the most
   * @throws IllegalArgumentException if a share is out of range
   */
  public static Range<FreeAirFlow> whileRunning(
      Range<FreeAirFlow> average, double leastDuty, double mostDuty) {
    Objects.requireNonNull(average, "average");
    if (!(leastDuty > 0.0 && leastDuty <= 1.0)) {
      throw new IllegalArgumentException("least duty must be in (0, 1], was " + leastDuty);
    }
    if (!(mostDuty >= leastDuty && mostDuty <= 1.0)) {
      throw new IllegalArgumentException(
          "most duty must be in [" + leastDuty + ", 1], was " + mostDuty);
    }
    return new Range<>(over(average.least(), mostDuty), over(average.most(), leastDuty));
  }

  private static FreeAirFlow over(FreeAirFlow average, double share) {
    return share == 1.0
        ? average
        : FreeAirFlow.from(average.massFlow().times(1.0 / share), average.reference());
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ToolAir that && flow.equals(that.flow) && average == that.average;
  }

  @Override
  public int hashCode() {
    return Objects.hash(flow, average);
  }

  /** {@return the air as it was said} */
  @Override
  public String toString() {
    return text;
  }
}
