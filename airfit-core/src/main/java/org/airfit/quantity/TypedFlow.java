package org.airfit.quantity;

import java.util.List;
import java.util.Objects;

/**
 * A flow of air as people type it, whether or not it tells where it is counted: one value such as "11 scfm", "11 CFM" or
 * "400 l/min", or two with the word "to" between them, such as "11 to 14 cfm".
 *
 * <p>What does not tell where it is counted has every usual reading of {@link UnmarkedFlow}. This class is immutable,
 * thread-safe and value-based.
 */
public final class TypedFlow {

  private static final String DASHES = "-\u2013\u2014";

  private static final String ACCEPTED =
      "a flow of air with its unit, such as \"11 scfm\", \"11 CFM\" or \"400 l/min\", or a range such as \"11 to 14 cfm\"";

  /** One end: counted somewhere, or open to all readings. */
  private sealed interface End {

    /** All that it may be at a site. */
    Range<FreeAirFlow> at(AbsolutePressure atmosphere, Temperature temperature);

    /** The names of its readings at any site; none where it is counted somewhere. */
    List<String> readings();
  }

  private record Counted(FreeAirFlow flow) implements End {

    @Override
    public Range<FreeAirFlow> at(AbsolutePressure atmosphere, Temperature temperature) {
      return Range.exactly(flow);
    }

    @Override
    public List<String> readings() {
      return List.of();
    }
  }

  private record Open(UnmarkedFlow flow) implements End {

    @Override
    public Range<FreeAirFlow> at(AbsolutePressure atmosphere, Temperature temperature) {
      return flow.atSite(atmosphere, temperature).range();
    }

    @Override
    public List<String> readings() {
      return flow
          .atSite(AbsolutePressure.STANDARD_ATMOSPHERE, Temperature.ofCelsius(20.0))
          .readings()
          .stream()
          .map(UnmarkedFlow.Reading::name)
          .toList();
    }
  }

  private final String text;
  private final End least;
  private final End most;

  private TypedFlow(String text, End least, End most) {
    this.text = text;
    this.least = least;
    this.most = most;
  }

  /**
   * Reads what people type.
   *
   * @param text a flow or two, such as "11 scfm", "11 CFM" or "11 to 14 cfm"; the first of two may leave out its unit,
   *     which is then that of the second
   * @return the flow
   * @throws QuantityFormatException if the text is no such flow; it tells where and what would be accepted
   */
  public static TypedFlow parse(String text) {
    Grammar.requireShort(Objects.requireNonNull(text, "text"), ACCEPTED);
    if (!text.contains(Range.TO)) {
      refuseDash(text);
    }
    Range.Ends<End> ends = Range.ends(text, TypedFlow::end);
    TypedFlow flow = new TypedFlow(text.strip(), ends.least(), ends.most());
    flow.requireOrder(text);
    return flow;
  }

  private static End end(String text) {
    try {
      return new Open(UnmarkedFlow.parse(text));
    } catch (QuantityFormatException counted) {
      return new Counted(FreeAirFlow.parse(text));
    }
  }

  /** Refuses two numbers with a dash between them; the dash of 1-1/2 belongs to one number. */
  private static void refuseDash(String text) {
    int dash = dashIn(text);
    int second = dash < 0 ? text.length() : pastBlanks(text, dash + 1);
    int behind = second;
    while (behind < text.length() && isOfNumber(text.charAt(behind))) {
      behind++;
    }
    if (behind == second || (behind < text.length() && text.charAt(behind) == '/')) {
      return;
    }
    throw new QuantityFormatException(
        text,
        second,
        "a range has the word to: type \"" + text.substring(0, dash).strip() + Range.TO
            + text.substring(second).strip() + "\"",
        ACCEPTED);
  }

  /** The first dash, a number in front of it; -1 where there is none. */
  private static int dashIn(String text) {
    int from = pastBlanks(text, 0);
    for (int i = from + 1; from < text.length() && i < text.length(); i++) {
      if (DASHES.indexOf(text.charAt(i)) >= 0) {
        return isOfNumber(text.charAt(from)) ? i : -1;
      }
    }
    return -1;
  }

  /** Where the blanks end. */
  private static int pastBlanks(String text, int from) {
    int at = from;
    while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
      at++;
    }
    return at;
  }

  private static boolean isOfNumber(char sign) {
    return (sign >= '0' && sign <= '9') || sign == '.';
  }

  /** Refuses the larger in front. Each is taken at one site, as every reading keeps the order of like flows. */
  private void requireOrder(String whole) {
    AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
    Temperature temperature = Temperature.ofCelsius(20.0);
    if (least
            .at(atmosphere, temperature)
            .least()
            .compareTo(most.at(atmosphere, temperature).most())
        > 0) {
      throw new QuantityFormatException(whole, 0, "the smaller flow comes first", ACCEPTED);
    }
  }

  /** {@return whether it tells where the air is counted, so that it has one reading} */
  public boolean isCounted() {
    return readings().isEmpty();
  }

  /**
   * {@return the names of its readings, such as "ISO 8778 (ANR)", that of the air at the site among them; none where it
   * tells where the air is counted}
   */
  public List<String> readings() {
    return least.readings().isEmpty() ? most.readings() : least.readings();
  }

  /**
   * {@return what it leaves open, such as "does not tell where the air is counted; it may be ISO 8778 (ANR), DIN 1343 (0
   * °C)"; empty where it tells that}
   */
  public String openInWords() {
    return isCounted()
        ? ""
        : "does not tell where the air is counted; it may be " + String.join(", ", readings());
  }

  /**
   * Tells all that the flow may be.
   *
   * @param atmosphere the atmosphere at the site, in [50, 200] kPa, for air that is counted there
   * @param temperature the temperature there, in [-100, 100] °C
   * @return from the least reading to the most
   * @throws IllegalArgumentException if an argument is out of range
   */
  public Range<FreeAirFlow> range(AbsolutePressure atmosphere, Temperature temperature) {
    Objects.requireNonNull(atmosphere, "atmosphere");
    Objects.requireNonNull(temperature, "temperature");
    Range<FreeAirFlow> low = least.at(atmosphere, temperature);
    return least.equals(most)
        ? low
        : new Range<>(low.least(), most.at(atmosphere, temperature).most());
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof TypedFlow that && least.equals(that.least) && most.equals(that.most);
  }

  @Override
  public int hashCode() {
    return Objects.hash(least, most);
  }

  /** {@return the flow as it was typed} */
  @Override
  public String toString() {
    return text;
  }
}
