package org.airfit.quantity;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;

/**
 * A flow of air counted as the volume it would fill at a named reference state, such as '34 scfm' or '16 L/s ANR'.
 *
 * <p>Not {@link ActualFlow}, which is counted under pressure. The {@link ReferenceState} is part of the value: two flows are
 * equal only at the same state, and there is no factory without one.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class FreeAirFlow {

  /** How people mark the state behind a unit. */
  private static final Map<String, ReferenceState> MARKS = Map.ofEntries(
      Map.entry("ANR", ReferenceState.ANR),
      Map.entry("ISO 8778", ReferenceState.ANR),
      Map.entry("DIN 1343", ReferenceState.NORMAL),
      Map.entry("normal", ReferenceState.NORMAL),
      Map.entry("ISO 1217", ReferenceState.COMPRESSOR_INLET),
      Map.entry("60 °F", ReferenceState.SCFM_60F),
      Map.entry("60F", ReferenceState.SCFM_60F),
      Map.entry("@60 °F", ReferenceState.SCFM_60F),
      Map.entry("@60F", ReferenceState.SCFM_60F),
      Map.entry("68 °F", ReferenceState.SCFM_68F),
      Map.entry("68F", ReferenceState.SCFM_68F),
      Map.entry("@68 °F", ReferenceState.SCFM_68F),
      Map.entry("@68F", ReferenceState.SCFM_68F));

  private static final Grammar<Counted> GRAMMAR = Grammar.ofWords(
      "free-air flow",
      words(),
      hints(),
      "scfm (60 °F), scfm (68 °F), L/s ANR, L/min ANR, m³/h ANR, cfm ANR, Nm³/h, or any unit of volume flow with"
          + " ANR, DIN 1343, ISO 1217, 60 °F or 68 °F behind it",
      List.of("34 scfm", "16 L/s ANR", "58 Nm3/h"));

  private final double cubicMetresPerSecond;
  private final ReferenceState reference;

  /** What a unit word stands for: a unit of volume flow and the state it is counted at. */
  record Counted(VolumeFlowUnit unit, ReferenceState reference) {}

  private FreeAirFlow(double value, VolumeFlowUnit unit, ReferenceState reference) {
    this.reference = Objects.requireNonNull(reference, "reference");
    this.cubicMetresPerSecond = unit.toSi(value) + 0.0; // -0.0 becomes 0.0
    if (!(cubicMetresPerSecond >= 0.0 && cubicMetresPerSecond <= Double.MAX_VALUE)) {
      throw new IllegalArgumentException("free-air flow must be finite and at least 0 "
          + written(unit) + ", was " + value + " " + written(unit));
    }
  }

  static Map<String, Counted> words() {
    Map<String, Counted> words = new LinkedHashMap<>();
    words.put("scfm", new Counted(VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, ReferenceState.SCFM_60F));
    words.put("scfh", new Counted(VolumeFlowUnit.CUBIC_FOOT_PER_HOUR, ReferenceState.SCFM_60F));
    for (VolumeFlowUnit unit : VolumeFlowUnit.values()) {
      for (String word : plainWords(unit)) {
        MARKS.forEach((mark, state) -> words.put(word + mark, new Counted(unit, state)));
        if (word.startsWith("m³")) {
          words.put("N" + word, new Counted(unit, ReferenceState.NORMAL));
        }
      }
    }
    MARKS.forEach((mark, state) -> {
      if (state.equals(ReferenceState.SCFM_60F) || state.equals(ReferenceState.SCFM_68F)) {
        words.put("scfm" + mark, new Counted(VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, state));
        words.put("scfh" + mark, new Counted(VolumeFlowUnit.CUBIC_FOOT_PER_HOUR, state));
      }
    });
    return words;
  }

  private static Map<String, String> hints() {
    Map<String, String> hints = new LinkedHashMap<>();
    for (VolumeFlowUnit unit : VolumeFlowUnit.values()) {
      String cure = ": say \"" + unit.symbol() + " ANR\" or \"" + unit.symbol() + " DIN 1343\"";
      for (String word : plainWords(unit)) {
        hints.put(word, "does not tell the reference state at which the air is counted" + cure);
        hints.put(
            word + "FAD",
            "is free air delivered, counted at the inlet of the compressor, wherever that stood: say \""
                + unit.symbol() + " ISO 1217\" if it was rated to that standard");
        hints.put("N" + word, "is counted at one state by some and at another by others" + cure);
        hints.put("S" + word, "is counted at one state by some and at another by others" + cure);
      }
    }
    return hints;
  }

  /** For somebody who typed free air where the air flows under pressure. */
  static Map<String, String> hintsForActualFlow() {
    Map<String, String> hints = new LinkedHashMap<>();
    words()
        .keySet()
        .forEach(word -> hints.put(
            word, "counts free air, not the volume the air has under pressure where it flows"));
    return hints;
  }

  /** The state that {@link #parse} reads in a mark, if it reads one. */
  static Optional<ReferenceState> stateMarked(String mark) {
    try {
      return Optional.of(parse("1 m³/s " + mark).reference());
    } catch (QuantityFormatException noMark) {
      return Optional.empty();
    }
  }

  private static List<String> plainWords(VolumeFlowUnit unit) {
    List<String> words = new ArrayList<>(unit.scale().spellings());
    words.add(unit.symbol());
    return words;
  }

  /**
   * Obtains a flow.
   *
   * @param value the volume flow in {@code unit}
   * @param unit the unit of volume flow
   * @param reference the state at which the volume is counted
   * @return the flow
   * @throws IllegalArgumentException if {@code value} is NaN, infinite or negative
   */
  public static FreeAirFlow of(double value, VolumeFlowUnit unit, ReferenceState reference) {
    return new FreeAirFlow(value, unit, reference);
  }

  private static FreeAirFlow ofSi(double cubicMetresPerSecond, ReferenceState reference) {
    return new FreeAirFlow(cubicMetresPerSecond, VolumeFlowUnit.CUBIC_METRE_PER_SECOND, reference);
  }

  /**
   * Obtains a flow from standard cubic feet per minute counted at 60 °F and 14.7 psia.
   *
   * @param scfm the flow [scfm at 60 °F]
   * @return the flow
   * @throws IllegalArgumentException if {@code scfm} is NaN, infinite or negative
   */
  public static FreeAirFlow ofScfm60F(double scfm) {
    return of(scfm, VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, ReferenceState.SCFM_60F);
  }

  /**
   * Obtains a flow from standard cubic feet per minute counted at 68 °F and 14.7 psia.
   *
   * @param scfm the flow [scfm at 68 °F]
   * @return the flow
   * @throws IllegalArgumentException if {@code scfm} is NaN, infinite or negative
   */
  public static FreeAirFlow ofScfm68F(double scfm) {
    return of(scfm, VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE, ReferenceState.SCFM_68F);
  }

  /**
   * Obtains a flow from litres per second ANR.
   *
   * @param litresPerSecond the flow [L/s ANR]
   * @return the flow
   * @throws IllegalArgumentException if {@code litresPerSecond} is NaN, infinite or negative
   */
  public static FreeAirFlow ofAnrLitresPerSecond(double litresPerSecond) {
    return of(litresPerSecond, VolumeFlowUnit.LITRE_PER_SECOND, ReferenceState.ANR);
  }

  /**
   * Obtains the free air in a mass flow.
   *
   * @param massFlow the mass flow
   * @param reference the state at which to count it
   * @return {@code massFlow} over the density of {@code reference}
   */
  public static FreeAirFlow from(MassFlow massFlow, ReferenceState reference) {
    return ofSi(
        massFlow.kilogramsPerSecond() / reference.density().kilogramsPerCubicMetre(), reference);
  }

  /**
   * Reads what people type. A bare "scfm" or "scfh" is counted at 60 °F and 14.7 psia, "Nm³" at DIN 1343. A unit without a
   * reference state is refused, and so is "NL/min", which means one state in a data sheet of pneumatics and another in DIN 1343. A
   * state of the user's own has no word: read the number and the unit, and use {@link #of}.
   *
   * @param text a number, a unit and a state, such as "34 scfm", "34 scfm (68 °F)", "16 L/s ANR", "58 Nm3/h"
   * @return the flow
   * @throws QuantityFormatException if the text is not a free-air flow; it tells where and what would be accepted
   */
  public static FreeAirFlow parse(String text) {
    return GRAMMAR.read(text, (value, counted) -> of(value, counted.unit(), counted.reference()));
  }

  /** {@return the state at which this flow is counted} */
  public ReferenceState reference() {
    return reference;
  }

  /** {@return the volume flow at the reference state [m³/s]} */
  public double cubicMetresPerSecond() {
    return cubicMetresPerSecond;
  }

  /** {@return the volume flow at the reference state [L/s]} */
  public double litresPerSecond() {
    return in(VolumeFlowUnit.LITRE_PER_SECOND);
  }

  /** {@return the volume flow at the reference state [ft³/min]} */
  public double cubicFeetPerMinute() {
    return in(VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE);
  }

  /**
   * Reads the volume flow in a unit, at the reference state it has.
   *
   * @param unit the unit asked for
   * @return the value in {@code unit}
   */
  public double in(VolumeFlowUnit unit) {
    return unit.fromSi(cubicMetresPerSecond);
  }

  /**
   * Counts the same air at another state, humidity ignored, as the trade does.
   *
   * <pre>
   *   q₂ = q₁ (p₁ / p₂) (T₂ / T₁)
   * </pre>
   *
   * <p>The amount of gas is the same. As ANR has a prescribed density, the mass flow read before and after a change to or from ANR
   * differs by 0.28 %; a calculation should go to mass once, at its door.
   *
   * @param other the state to count at
   * @return the same flow at {@code other}
   */
  public FreeAirFlow at(ReferenceState other) {
    if (other.equals(reference)) {
      return this;
    }
    double ratio = reference.pressure().pascals()
        / other.pressure().pascals()
        * (other.temperature().kelvins() / reference.temperature().kelvins());
    return ofSi(cubicMetresPerSecond * ratio, other);
  }

  /**
   * Counts the same air at another state so that the mass of dry air stays the same: what a dryer leaves of humid air.
   *
   * <pre>
   *   q₂ = q₁ ρ₁ / ρ₂,  ρ = (p − φ ps(T)) / (R T)
   * </pre>
   *
   * @param other the state to count at
   * @return the same dry air at {@code other}
   */
  public FreeAirFlow dryAirAt(ReferenceState other) {
    double ratio = reference.dryAirDensity().kilogramsPerCubicMetre()
        / other.dryAirDensity().kilogramsPerCubicMetre();
    return ofSi(cubicMetresPerSecond * ratio, other);
  }

  /** {@return the mass flow: this times the density of its reference state} */
  public MassFlow massFlow() {
    return MassFlow.ofKilogramsPerSecond(
        cubicMetresPerSecond * reference.density().kilogramsPerCubicMetre());
  }

  /** {@return the mass flow of the dry part of the air} */
  public MassFlow dryAirMassFlow() {
    return MassFlow.ofKilogramsPerSecond(
        cubicMetresPerSecond * reference.dryAirDensity().kilogramsPerCubicMetre());
  }

  /**
   * Multiplies this flow.
   *
   * @param factor the factor [-], at least 0
   * @return this times {@code factor}
   * @throws IllegalArgumentException if the product is negative or not finite
   */
  public FreeAirFlow times(double factor) {
    return ofSi(cubicMetresPerSecond * factor, reference);
  }

  /**
   * Prints this flow in a unit with its reference state, with four significant digits, no trailing zeros, whole digits never rounded
   * away, whatever the locale.
   *
   * @param unit the unit asked for
   * @return the flow, such as "34 scfm (60 °F)" or "16 L/s ANR"
   */
  public String format(VolumeFlowUnit unit) {
    return Digits.significant(in(unit), 4) + " " + written(unit);
  }

  /**
   * Prints this flow in a unit with its reference state, with a fixed number of decimals, whatever the locale.
   *
   * @param unit the unit asked for
   * @param decimals the number of digits after the point, from 0 to 15
   * @return the flow, such as "16.0 L/s ANR"
   * @throws IllegalArgumentException if {@code decimals} is out of range
   */
  public String format(VolumeFlowUnit unit, int decimals) {
    return Digits.fixed(in(unit), decimals) + " " + written(unit);
  }

  private String written(VolumeFlowUnit unit) {
    boolean isStandardCubicFeet =
        reference.equals(ReferenceState.SCFM_60F) || reference.equals(ReferenceState.SCFM_68F);
    if (!isStandardCubicFeet) {
      return unit.symbol() + " " + reference.name();
    }
    return (unit == VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE ? "scfm" : unit.symbol()) + " ("
        + reference.name() + ")";
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof FreeAirFlow that
        && cubicMetresPerSecond == that.cubicMetresPerSecond
        && reference.equals(that.reference);
  }

  @Override
  public int hashCode() {
    return 31 * Double.hashCode(cubicMetresPerSecond) + reference.hashCode();
  }

  /** {@return the flow in m³/s with all its digits and its state; {@code parse} reads it back where the state is well known} */
  @Override
  public String toString() {
    return cubicMetresPerSecond + " " + written(VolumeFlowUnit.CUBIC_METRE_PER_SECOND);
  }
}
