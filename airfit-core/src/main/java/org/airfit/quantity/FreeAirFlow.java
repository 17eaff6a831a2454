package org.airfit.quantity;

import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;

/**
 * A flow of air counted as the volume it would fill at a named reference state, such as '34 scfm' or '16 L/s ANR'.
 *
 * <p>Not the volume that the air has under pressure where it flows. The {@link ReferenceState} is part of the value:
 * two flows are equal only at the same state, and there is no factory without one.
 *
 * <p>The same air, counted at another state:
 *
 * <pre>{@code
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.ReferenceState;
 * import org.airfit.quantity.VolumeFlowUnit;
 * import org.airfit.working.UnitSystem;
 *
 * class CountedElsewhere {
 *   public static void main(String[] args) {
 *     FreeAirFlow flow = FreeAirFlow.parse("34 scfm");
 *     System.out.println(flow.at(ReferenceState.ANR).format(VolumeFlowUnit.LITRE_PER_SECOND, 2));
 *     // 16.51 L/s ANR
 *     System.out.println(UnitSystem.SI.say(flow.massFlow())); // 0.01962 kg/s
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class FreeAirFlow extends AdditiveQuantity<FreeAirFlow, VolumeFlowUnit> {

  private static final Grammar<FreeAirMarks.Counted> GRAMMAR = Grammar.ofWords(
      "free-air flow",
      FreeAirMarks.words(),
      FreeAirMarks.hints(),
      "scfm (60 °F), scfm (68 °F), L/s ANR, L/min ANR, m³/h ANR, cfm ANR, Nm³/h, or any unit of volume flow with"
          + " ANR, DIN 1343, ISO 1217, 60 °F or 68 °F behind it",
      List.of("34 scfm", "16 L/s ANR", "58 Nm3/h"));

  private static final Grammar<VolumeFlowUnit> VOLUME =
      Grammar.ofUnits("volume flow", VolumeFlowUnit.values(), List.of("5 L/s", "5 cfm"));

  private final ReferenceState reference;

  private FreeAirFlow(double value, VolumeFlowUnit unit, ReferenceState reference) {
    super(checked(value, unit, reference), VolumeFlowUnit.CUBIC_METRE_PER_SECOND, "free-air flow");
    this.reference = reference;
  }

  /** Converts to the SI unit, but complains in the unit and the state that were given. */
  private static double checked(double value, VolumeFlowUnit unit, ReferenceState reference) {
    Objects.requireNonNull(reference, "reference");
    double cubicMetresPerSecond = Objects.requireNonNull(unit, "unit").toSi(value);
    if (!(cubicMetresPerSecond >= 0.0 && cubicMetresPerSecond <= Double.MAX_VALUE)) {
      throw new IllegalArgumentException(
          "free-air flow must be finite and at least 0 " + written(unit, reference) + ", was "
              + Digits.told(value) + " " + written(unit, reference));
    }
    return cubicMetresPerSecond;
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
    Objects.requireNonNull(massFlow, "massFlow");
    Objects.requireNonNull(reference, "reference");
    return ofSi(
        massFlow.kilogramsPerSecond() / reference.density().kilogramsPerCubicMetre(), reference);
  }

  /**
   * Reads what people type. A bare "scfm" or "scfh" is counted at 60 °F and 14.7 psia, "Nm³" at DIN 1343. A unit
   * without a reference state is refused, and so is "NL/min", which means one state in a data sheet of pneumatics and
   * another in DIN 1343. A state of the user's own stands behind "at" with all that it is.
   *
   * @param text a number, a unit and a state, such as "34 scfm", "34 scfm (68 °F)", "16 L/s ANR", "58 Nm3/h",
   *     "16 L/s at shop (15 °C, 100 kPa(a), dry)"
   * @return the flow
   * @throws QuantityFormatException if the text is not a free-air flow; it tells where and what would be accepted
   */
  public static FreeAirFlow parse(String text) {
    int at = wordAt(Objects.requireNonNull(text, "text"));
    if (at < 0) {
      return GRAMMAR.read(
          text,
          (value, counted) -> of(value, counted.unit(), ReferenceState.wellKnown(counted.state())));
    }
    ReferenceState state = Grammar.readPart(text, at + 2, text.length(), ReferenceState::parse);
    return Grammar.readPart(
        text, 0, at, volume -> VOLUME.read(volume, (value, unit) -> of(value, unit, state)));
  }

  /** Where the word "at" stands, or -1. */
  private static int wordAt(String text) {
    for (int i = 1; i + 2 < text.length() && i < Grammar.LONGEST; i++) {
      if (text.startsWith("at", i)
          && Lexicon.isSpace(text.charAt(i - 1))
          && Lexicon.isSpace(text.charAt(i + 2))) {
        return i;
      }
    }
    return -1;
  }

  /** {@return the state at which this flow is counted} */
  public ReferenceState reference() {
    return reference;
  }

  /** {@return the volume flow at the reference state [m³/s]} */
  public double cubicMetresPerSecond() {
    return si();
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
   * Counts the same air at another state, humidity ignored, as the trade does.
   *
   * <pre>
   *   q₂ = q₁ (p₁ / p₂) (T₂ / T₁)
   * </pre>
   *
   * <p>The amount of gas is the same. As ANR has a prescribed density, the mass flow read before and after a change to
   * or from ANR differs by 0.28 %; a calculation should go to mass once, at its door.
   *
   * @param other the state to count at
   * @return the same flow at {@code other}
   */
  public FreeAirFlow at(ReferenceState other) {
    if (Objects.requireNonNull(other, "other").equals(reference)) {
      return this;
    }
    double ratio = reference.pressure().pascals()
        / other.pressure().pascals()
        * (other.temperature().kelvins() / reference.temperature().kelvins());
    return ofSi(si() * ratio, other);
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
    Objects.requireNonNull(other, "other");
    double ratio = reference.dryAirDensity().kilogramsPerCubicMetre()
        / other.dryAirDensity().kilogramsPerCubicMetre();
    return ofSi(si() * ratio, other);
  }

  /** {@return the mass flow: this times the density of its reference state} */
  public MassFlow massFlow() {
    return MassFlow.ofKilogramsPerSecond(si() * reference.density().kilogramsPerCubicMetre());
  }

  /** {@return the mass flow of the dry part of the air} */
  public MassFlow dryAirMassFlow() {
    return MassFlow.ofKilogramsPerSecond(si() * reference.dryAirDensity().kilogramsPerCubicMetre());
  }

  /**
   * Adds a flow counted at the same state.
   *
   * @param other the flow to add
   * @return this plus {@code other}
   * @throws IllegalArgumentException if the states differ or the sum is too large to hold
   */
  @Override
  public FreeAirFlow plus(FreeAirFlow other) {
    requireSameState(other);
    return super.plus(other);
  }

  /**
   * Takes away a flow counted at the same state.
   *
   * @param other the flow to take away, no larger than this
   * @return this minus {@code other}
   * @throws IllegalArgumentException if the states differ or {@code other} is larger than this
   */
  @Override
  public FreeAirFlow minus(FreeAirFlow other) {
    requireSameState(other);
    return super.minus(other);
  }

  private void requireSameState(FreeAirFlow other) {
    Objects.requireNonNull(other, "other");
    if (!other.reference.equals(reference)) {
      throw new IllegalArgumentException("reference state must be " + reference + ", was "
          + other.reference + ": count both flows at one state first, with at(...)");
    }
  }

  @Override
  FreeAirFlow ofSi(double value) {
    return ofSi(value, reference);
  }

  @Override
  public VolumeFlowUnit siUnit() {
    return VolumeFlowUnit.CUBIC_METRE_PER_SECOND;
  }

  @Override
  String written(VolumeFlowUnit unit) {
    return written(unit, reference);
  }

  private static String written(VolumeFlowUnit unit, ReferenceState reference) {
    if (!FreeAirMarks.isStandardCubicFoot(reference.name())) {
      return unit.symbol() + " " + reference.name();
    }
    return (unit == VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE ? "scfm" : unit.symbol()) + " ("
        + reference.name() + ")";
  }

  /**
   * Prints this flow in L/s or in cubic feet per minute, whichever takes fewer digits, as a refusal does: a flow that
   * somebody typed is most likely told in the unit that was typed.
   *
   * @return such as "10 L/s ANR", or "20 scfm (60 °F)"
   */
  public String inFewestDigits() {
    String litres = inFull(VolumeFlowUnit.LITRE_PER_SECOND);
    String feet = inFull(VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE);
    boolean isInFeet = FreeAirMarks.isStandardCubicFoot(reference.name());
    int more = feet.indexOf(' ') - litres.indexOf(' ');
    return more < 0 || (more == 0 && isInFeet) ? feet : litres;
  }

  /**
   * Compares by mass flow, as volumes counted at two states tell nothing. Flows of one mass flow, but not equal, stand
   * in an order without a meaning.
   *
   * @param other the flow to compare with
   * @return below 0, 0 or above 0 as this carries less air than, equals or carries more air than {@code other}
   */
  @Override
  public int compareTo(FreeAirFlow other) {
    int byMass = massFlow().compareTo(Objects.requireNonNull(other, "other").massFlow());
    if (byMass != 0) {
      return byMass;
    }
    int byVolume = Double.compare(si(), other.si());
    return byVolume != 0 ? byVolume : ReferenceState.ORDER.compare(reference, other.reference);
  }

  /** Flows are equal that count the same volume at the same state. */
  @Override
  public boolean equals(Object other) {
    return super.equals(other) && ((FreeAirFlow) other).reference.equals(reference);
  }

  @Override
  public int hashCode() {
    return 31 * super.hashCode() + reference.hashCode();
  }

  /** {@return the flow in m³/s with all its digits and its state, as {@code parse} reads it back} */
  @Override
  public String toString() {
    return FreeAirMarks.stateMarked(reference.name()) != null
        ? super.toString()
        : si() + " " + siUnit().symbol() + " at " + reference;
  }
}
