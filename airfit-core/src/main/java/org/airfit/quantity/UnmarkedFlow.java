package org.airfit.quantity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.source.Source;

/**
 * A flow of air that does not tell where it is counted, such as the '4 CFM' on a tool or '400 l/min', with every usual
 * reading of it.
 *
 * <p>{@link FreeAirFlow} refuses such a text, because the readings differ by as much as 9 %. Here each is named, and a
 * judgement that holds for the {@linkplain #least least} and the {@linkplain #most most} holds whatever was meant.
 *
 * <ul>
 *   <li>Cubic feet: standard cubic feet at 60 °F and at 68 °F (both 14.7 psia), and ISO 8778 (ANR).
 *   <li>Cubic metres and litres: ISO 8778 (ANR), DIN 1343 and ISO 1217.
 *   <li>Either, where the site is known: free air at the site; see {@link #atSite}.
 *   <li>Normal litres and standard litres ('400 Nl/min', 'slpm'): DIN 1343 at 0 °C, as the word once meant, and ISO 8778
 *       (ANR) at 20 °C, as makers of pneumatic parts often mean it; never the air of the site.
 * </ul>
 *
 * <p>Which readings are usual is common practice, no source. This class is immutable, thread-safe and value-based.
 */
public final class UnmarkedFlow {

  /**
   * One way to read the flow.
   *
   * @param name where the air is counted, in words
   * @param flow the flow counted there
   */
  public record Reading(String name, FreeAirFlow flow) {

    /**
     * Refuses {@code null}.
     *
     * @param name where the air is counted, in words
     * @param flow the flow counted there
     */
    public Reading {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(flow, "flow");
    }
  }

  private static final String SITE = "free air at the site";

  /** The marks of litres that are counted at one state by some and at another by others. */
  private static final List<String> NORMAL_MARKS = List.of("N", "S");

  /** A unit of volume flow with such a mark, or without one. */
  private record Marked(VolumeFlowUnit unit, String mark) {}

  private static final Grammar<Marked> GRAMMAR = Grammar.ofWords(
      "flow of air",
      words(),
      Map.of(),
      Arrays.stream(VolumeFlowUnit.values())
          .map(VolumeFlowUnit::symbol)
          .collect(Collectors.joining(", ")),
      List.of("4 cfm", "400 L/min", "1.2 m3/min", "400 NL/min"));

  private final double value;
  private final Marked unit;
  private final List<Reading> readings;

  private UnmarkedFlow(double value, Marked unit, List<Reading> readings) {
    this.value = value;
    this.unit = unit;
    this.readings = List.copyOf(readings);
  }

  private static Map<String, Marked> words() {
    Map<String, Marked> words = new LinkedHashMap<>();
    for (VolumeFlowUnit unit : VolumeFlowUnit.values()) {
      List<String> plain = new ArrayList<>(unit.scale().spellings());
      plain.add(unit.symbol());
      for (String word : plain) {
        words.put(word, new Marked(unit, ""));
        if (isLitre(unit)) {
          NORMAL_MARKS.forEach(mark -> words.put(mark + word, new Marked(unit, mark)));
        }
      }
    }
    return words;
  }

  private static boolean isLitre(VolumeFlowUnit unit) {
    return switch (unit) {
      case LITRE_PER_SECOND, LITRE_PER_MINUTE -> true;
      default -> false;
    };
  }

  /**
   * Obtains the usual readings of a flow.
   *
   * @param value the flow in {@code unit}
   * @param unit the unit of volume flow
   * @return the readings
   * @throws IllegalArgumentException if {@code value} is NaN, infinite or negative
   */
  public static UnmarkedFlow of(double value, VolumeFlowUnit unit) {
    return of(value, new Marked(Objects.requireNonNull(unit, "unit"), ""));
  }

  private static UnmarkedFlow of(double value, Marked marked) {
    VolumeFlowUnit unit = marked.unit();
    List<Reading> readings = new ArrayList<>();
    if (!marked.mark().isEmpty()) {
      String litre = marked.mark().equals("N") ? "normal litres" : "standard litres";
      readings.add(reading(litre + " at 0 °C (DIN 1343)", value, unit, ReferenceState.NORMAL));
      readings.add(reading(litre + " at 20 °C (ISO 8778, ANR)", value, unit, ReferenceState.ANR));
    } else if (isCubicFoot(unit)) {
      readings.add(reading("standard cubic feet at 60 °F", value, unit, ReferenceState.SCFM_60F));
      readings.add(reading("standard cubic feet at 68 °F", value, unit, ReferenceState.SCFM_68F));
      readings.add(reading("ISO 8778 (ANR)", value, unit, ReferenceState.ANR));
    } else {
      readings.add(reading("ISO 8778 (ANR)", value, unit, ReferenceState.ANR));
      readings.add(reading("DIN 1343 (0 °C)", value, unit, ReferenceState.NORMAL));
      readings.add(
          reading("ISO 1217 (compressor inlet)", value, unit, ReferenceState.COMPRESSOR_INLET));
    }
    return new UnmarkedFlow(value, marked, readings);
  }

  private static boolean isCubicFoot(VolumeFlowUnit unit) {
    return switch (unit) {
      case CUBIC_FOOT_PER_SECOND, CUBIC_FOOT_PER_MINUTE, CUBIC_FOOT_PER_HOUR -> true;
      default -> false;
    };
  }

  private static Reading reading(
      String name, double value, VolumeFlowUnit unit, ReferenceState state) {
    return new Reading(name, FreeAirFlow.of(value, unit, state));
  }

  /**
   * Reads what people type.
   *
   * @param text a number and a unit of volume flow without a mark that tells where it is counted, such as "4 CFM",
   *     "400 l/min" or "400 Nl/min"
   * @return the readings
   * @throws QuantityFormatException if the text is no such flow; it tells where and what would be accepted
   */
  public static UnmarkedFlow parse(String text) {
    return GRAMMAR.read(text, UnmarkedFlow::of);
  }

  /**
   * Adds the reading of free air as it is where the tool or the compressor stands; dry air is counted. A flow in normal
   * or standard litres has no such reading and stays as it is.
   *
   * @param pressure the atmosphere at the site, in [50, 200] kPa
   * @param temperature the temperature there, in [-100, 100] °C
   * @return this with the reading of the site, in the place of one there was
   * @throws IllegalArgumentException if an argument is out of range
   */
  public UnmarkedFlow atSite(AbsolutePressure pressure, Temperature temperature) {
    ReferenceState site =
        ReferenceState.of("site", temperature, pressure, 0.0, Source.derived("air at the site"));
    if (!unit.mark().isEmpty()) {
      return this;
    }
    List<Reading> all = new ArrayList<>();
    readings.stream().filter(reading -> !reading.name().equals(SITE)).forEach(all::add);
    all.add(reading(SITE, value, unit.unit(), site));
    return new UnmarkedFlow(value, unit, all);
  }

  /** {@return every usual reading, the most usual first} */
  public List<Reading> readings() {
    return readings;
  }

  /** {@return the reading with least air} */
  public FreeAirFlow least() {
    return readings.stream().map(Reading::flow).min(Comparator.naturalOrder()).orElseThrow();
  }

  /** {@return the reading with most air} */
  public FreeAirFlow most() {
    return readings.stream().map(Reading::flow).max(Comparator.naturalOrder()).orElseThrow();
  }

  /**
   * {@return all that the flow may be, both ends counted at one state: that of the most usual reading}
   */
  public Range<FreeAirFlow> range() {
    ReferenceState state = readings.get(0).flow().reference();
    return new Range<>(
        FreeAirFlow.from(least().massFlow(), state), FreeAirFlow.from(most().massFlow(), state));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof UnmarkedFlow that && readings.equals(that.readings);
  }

  @Override
  public int hashCode() {
    return readings.hashCode();
  }

  /** {@return the flow as it was given, such as "4 cfm", as {@code parse} reads it back but for a site} */
  @Override
  public String toString() {
    return Digits.plain(value) + " " + unit.mark() + unit.unit().symbol();
  }
}
