package org.airfit.run;

import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Volume;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/**
 * The air a tool takes: a fixed flow, or a flow that follows the pressure at its inlet.
 *
 * <p>Most tools let their air out through openings that stay the same, and take more the more pressure they get:
 *
 * <pre>
 *   ṁ = u ṁr p/pr     while the atmosphere is at most 0.528 p
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>ṁ</td><td>flow the tool takes</td><td>kg/s</td></tr>
 * <tr><td>ṁr, pr</td><td>rated flow and the absolute inlet pressure it is rated at</td><td>kg/s, Pa</td></tr>
 * <tr><td>p</td><td>absolute pressure at the inlet</td><td>Pa</td></tr>
 * <tr><td>u</td><td>load: the part of the rated flow it takes while it runs</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Nearer to the atmosphere the flow falls off along the curve of ISO 6358 with b = 0.528, and is 0 at the
 * atmosphere. The temperature of the air is left out. A regulated or positive tool takes a fixed flow.
 *
 * <p>How much of the time a tool runs is its duty. Duty times load is the use factor: mean flow over rated flow.
 *
 * <p>A tool that takes more at a higher pressure:
 *
 * <pre>{@code
 * import java.util.Locale;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.ReferenceState;
 * import org.airfit.run.ToolDemand;
 *
 * class TakesMore {
 *   public static void main(String[] args) {
 *     AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
 *     ToolDemand wrench = ToolDemand.following(
 *         "wrench", FreeAirFlow.parse("25 scfm"), GaugePressure.parse("90 psig").absolute(atmosphere));
 *     AbsolutePressure higher = GaugePressure.parse("110 psig").absolute(atmosphere);
 *     FreeAirFlow taken =
 *         FreeAirFlow.from(wrench.flowAt(higher, atmosphere), ReferenceState.SCFM_60F);
 *     System.out.printf(Locale.ROOT, "%.1f scfm%n", taken.cubicFeetPerMinute()); // 29.8 scfm
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class ToolDemand {

  /** Where an ideal nozzle chokes: (2/(γ+1))^(γ/(γ−1)). */
  private static final double CRITICAL_PRESSURE_RATIO = Math.pow(
      2.0 / (AirState.HEAT_CAPACITY_RATIO + 1.0),
      AirState.HEAT_CAPACITY_RATIO / (AirState.HEAT_CAPACITY_RATIO - 1.0));

  private static final double LEAST_RATED_PASCALS =
      AbsolutePressure.STANDARD_ATMOSPHERE.pascals() / CRITICAL_PRESSURE_RATIO;

  private static final Source SOURCE = Source.derived(
      "choked flow through an opening is in proportion to the absolute pressure before it");

  private static final Source ISO_6358 = Source.handbook(
      "equation of ISO 6358-1:2013, read in documentation of general modelling libraries; the standard not seen");

  private static final Symbol LOAD = Symbol.of("u", ValueKind.NUMBER);
  private static final Symbol TAKEN = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol RATED = Symbol.of("ṁr", ValueKind.MASS_FLOW);
  private static final Symbol PRESSURE = Symbol.of("p", ValueKind.PRESSURE);
  private static final Symbol RATED_PRESSURE = Symbol.of("pr", ValueKind.PRESSURE);
  private static final Symbol ATMOSPHERE = Symbol.of("pa", ValueKind.PRESSURE);
  private static final Symbol CRITICAL_RATIO = Symbol.of("b", ValueKind.NUMBER);

  private static final Formula FIXED = Formula.of(
      "Flow, whatever the pressure",
      "⟨ṁ⟩ = ⟨u⟩ × ⟨ṁr⟩",
      Source.derived("rated flow and load as given"),
      TAKEN,
      LOAD,
      RATED);

  private static final Formula PROPORTIONAL = Formula.of(
      "Flow in proportion to the absolute pressure",
      "⟨ṁ⟩ = ⟨u⟩ × ⟨ṁr⟩ × ⟨p⟩ / ⟨pr⟩",
      SOURCE,
      TAKEN,
      LOAD,
      RATED,
      PRESSURE,
      RATED_PRESSURE);

  private static final Formula SUBSONIC = Formula.of(
      "Flow so near the atmosphere that the tool no longer chokes",
      "⟨ṁ⟩ = ⟨u⟩ × ⟨ṁr⟩ × ⟨p⟩ / ⟨pr⟩ × √(1 − ((⟨pa⟩ / ⟨p⟩ − ⟨b⟩) / (1 − ⟨b⟩))²)",
      ISO_6358,
      TAKEN,
      LOAD,
      RATED,
      PRESSURE,
      RATED_PRESSURE,
      ATMOSPHERE,
      CRITICAL_RATIO);

  private final String name;
  private final FreeAirFlow rated;
  private final Optional<AbsolutePressure> ratedInlet;
  private final double ratedFlow; // kg/s
  private final double ratedPascals; // NaN where the flow does not depend on the pressure
  private final double duty;
  private final double load;

  private ToolDemand(
      String name,
      FreeAirFlow rated,
      Optional<AbsolutePressure> ratedInlet,
      double duty,
      double load) {
    Objects.requireNonNull(rated, "rated");
    if (Objects.requireNonNull(name, "name").isBlank()) {
      throw new IllegalArgumentException("name of a tool must say which, was blank");
    }
    if (!(rated.cubicMetresPerSecond() > 0.0)) {
      throw new IllegalArgumentException(
          "rated flow of " + name + " must be above 0, was " + rated.shown());
    }
    this.name = name;
    this.rated = rated;
    this.ratedInlet = ratedInlet;
    this.ratedFlow = rated.massFlow().kilogramsPerSecond();
    this.ratedPascals = ratedInlet.map(AbsolutePressure::pascals).orElse(Double.NaN);
    this.duty = requireShare("duty", name, duty);
    this.load = requireShare("load", name, load);
  }

  private static double requireShare(String what, String name, double value) {
    if (!(value >= 0.0 && value <= 1.0)) {
      throw new IllegalArgumentException(
          what + " of " + name + " must be in [0, 1], was " + Digits.told(value));
    }
    return value + 0.0;
  }

  /**
   * Obtains a tool that takes the same flow at any pressure.
   *
   * @param name what to call it
   * @param flow the flow while it runs, above 0
   * @return the demand, at full duty and load
   * @throws IllegalArgumentException if {@code flow} is 0 or {@code name} is blank
   */
  public static ToolDemand fixed(String name, FreeAirFlow flow) {
    return new ToolDemand(name, Objects.requireNonNull(flow, "flow"), Optional.empty(), 1.0, 1.0);
  }

  /**
   * Obtains a tool whose flow is in proportion to the absolute pressure at its inlet.
   *
   * @param name what to call it
   * @param rated the flow it is rated at, above 0
   * @param ratedInlet the absolute pressure at its inlet in the rating, at least 191.8 kPa, so that the rating is
   *     a choked one
   * @return the demand, at full duty and load
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static ToolDemand following(String name, FreeAirFlow rated, AbsolutePressure ratedInlet) {
    Objects.requireNonNull(name, "name");
    if (!(Objects.requireNonNull(ratedInlet, "ratedInlet").pascals() >= LEAST_RATED_PASCALS)) {
      throw new IllegalArgumentException("rated inlet pressure of " + name + " must be at least "
          + Digits.significant(LEAST_RATED_PASCALS / 1000.0, 7)
          + " kPa(a), was " + Digits.inFull(ratedInlet.kilopascals())
          + " kPa(a); is it a gauge pressure?");
    }
    return new ToolDemand(name, rated, Optional.of(ratedInlet), 1.0, 1.0);
  }

  /**
   * Obtains a cylinder or another chamber that is filled again and again: a fixed flow.
   *
   * <pre>
   *   ṁ = ρ V n
   * </pre>
   *
   * <p>A cylinder driven by air both ways fills both sides in a cycle. What is left in it from the cycle before is
   * not taken off, as handbooks do not: it is counted full each time. <b>Source:</b> ideal gas; Sullivan, Fluid
   * Power, example 15.5.
   *
   * @param name what to call it
   * @param filledPerCycle the volume filled in a cycle
   * @param cyclesPerMinute how often it is filled in a minute while it runs [1/min], above 0
   * @param filled the air that fills it
   * @return the demand
   * @throws IllegalArgumentException if {@code cyclesPerMinute} is not above 0, NaN or infinite, or the volume is 0
   */
  public static ToolDemand filling(
      String name, Volume filledPerCycle, double cyclesPerMinute, AirState filled) {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(filledPerCycle, "filledPerCycle");
    Objects.requireNonNull(filled, "filled");
    if (!(cyclesPerMinute > 0.0 && cyclesPerMinute < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "cycles per minute must be above 0 and finite, was " + Digits.told(cyclesPerMinute));
    }
    double flow = filled.density().kilogramsPerCubicMetre()
        * filledPerCycle.cubicMetres()
        * cyclesPerMinute
        / 60.0;
    return fixed(
        name, FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(flow), ReferenceState.SCFM_60F));
  }

  /**
   * Obtains this tool run part of the time.
   *
   * @param share the part of the time it runs [-], in [0, 1]
   * @return this with {@code share}
   * @throws IllegalArgumentException if {@code share} is out of range
   */
  public ToolDemand withDuty(double share) {
    return new ToolDemand(name, rated, ratedInlet, share, load);
  }

  /**
   * Obtains this tool run at part of its rated flow.
   *
   * @param share the part of the rated flow it takes while it runs [-], in [0, 1]
   * @return this with {@code share}
   * @throws IllegalArgumentException if {@code share} is out of range
   */
  public ToolDemand withLoad(double share) {
    return new ToolDemand(name, rated, ratedInlet, duty, share);
  }

  /** {@return what it is called} */
  public String name() {
    return name;
  }

  /** {@return the flow it is rated at} */
  public FreeAirFlow rated() {
    return rated;
  }

  /** {@return the inlet pressure of the rating; empty where the flow does not depend on it} */
  public Optional<AbsolutePressure> ratedInlet() {
    return ratedInlet;
  }

  /** {@return the part of the time it runs [-]} */
  public double duty() {
    return duty;
  }

  /** {@return the part of the rated flow it takes while it runs [-]} */
  public double load() {
    return load;
  }

  /** {@return duty times load: mean flow over rated flow [-]} */
  public double useFactor() {
    return duty * load;
  }

  /** {@return the flow it takes on average, at its rated pressure} */
  public FreeAirFlow meanFlow() {
    return rated.times(useFactor());
  }

  /**
   * Finds the flow it takes while it runs.
   *
   * @param inlet the pressure at its inlet
   * @param atmosphere the pressure it lets its air out into
   * @return the flow; 0 where it follows the pressure and that is not above the atmosphere
   */
  public MassFlow flowAt(AbsolutePressure inlet, AbsolutePressure atmosphere) {
    Objects.requireNonNull(inlet, "inlet");
    Objects.requireNonNull(atmosphere, "atmosphere");
    return MassFlow.ofKilogramsPerSecond(flow(inlet.pascals(), atmosphere.pascals()));
  }

  /**
   * Finds the flow it takes while it runs, on plain doubles.
   *
   * @param pascals the absolute pressure at its inlet [Pa]; NaN or one below 0 is taken for none
   * @param atmosphere the absolute pressure it lets its air out into [Pa]; one below 0 is taken for none
   * @return the flow [kg/s]
   */
  public double flow(double pascals, double atmosphere) {
    if (ratedInlet.isEmpty()) {
      return load * ratedFlow;
    }
    double behind = Math.max(0.0, atmosphere);
    return pascals > behind
        ? load * ratedFlow * (pascals / ratedPascals) * subsonicShare(behind / pascals)
        : 0.0;
  }

  /**
   * Finds how fast that flow rises with the pressure.
   *
   * @param pascals the absolute pressure at its inlet [Pa]; NaN or one below 0 is taken for none
   * @param atmosphere the absolute pressure it lets its air out into [Pa]; one below 0 is taken for none
   * @return d flow / d pressure [kg/(s Pa)], at least 0; infinite where the two pressures differ by a last digit
   */
  public double slope(double pascals, double atmosphere) {
    double behind = Math.max(0.0, atmosphere);
    if (ratedInlet.isEmpty() || load == 0.0 || !(pascals > behind)) {
      return 0.0;
    }
    double ratio = behind / pascals;
    double share = subsonicShare(ratio);
    double z = beyondCritical(ratio);
    // d(p s)/dp = s + z (pa/p)/((1 − b) s)
    return load
        * (ratedFlow / ratedPascals)
        * (share + z * ratio / ((1.0 - CRITICAL_PRESSURE_RATIO) * share));
  }

  /** z = (pa/p − b)/(1 − b), and 0 where the flow is choked. */
  private static double beyondCritical(double ratio) {
    return Math.max(0.0, (ratio - CRITICAL_PRESSURE_RATIO) / (1.0 - CRITICAL_PRESSURE_RATIO));
  }

  /** √(1 − z²): what passes over what would pass if the flow were choked. */
  private static double subsonicShare(double ratio) {
    double z = beyondCritical(ratio);
    return Math.sqrt(1.0 - z * z);
  }

  /**
   * The pressure [Pa] at which a tool that follows the pressure takes a flow [kg/s]: p of {@link #flow} is the
   * smaller root of (1 − 2b) p² +
   * 2 b pa p − pa² − (1 − b)² q² = 0 with q = ṁ pr/(u ṁr) as long as pa > b p, and q itself beyond.
   */
  double pascalsFor(double flow, double atmosphere) {
    double b = CRITICAL_PRESSURE_RATIO;
    double q = flow * ratedPascals / (load * ratedFlow);
    if (atmosphere <= b * q) {
      return q;
    }
    double half = b * atmosphere;
    double last = atmosphere * atmosphere + (1.0 - b) * (1.0 - b) * q * q;
    return last / (half + Math.sqrt(half * half + (1.0 - 2.0 * b) * last));
  }

  boolean followsPressure() {
    return ratedInlet.isPresent();
  }

  /**
   * Tells how the flow follows from the pressure.
   *
   * @param inlet the pressure at its inlet
   * @param atmosphere the pressure it lets its air out into
   * @param units the units to show numbers in
   * @return the working
   */
  public Working working(AbsolutePressure inlet, AbsolutePressure atmosphere, UnitSystem units) {
    Objects.requireNonNull(inlet, "inlet");
    Objects.requireNonNull(atmosphere, "atmosphere");
    Working.Builder working = Working.titled("Air taken by " + name, units);
    if (ratedInlet.isPresent() && inlet.compareTo(atmosphere) <= 0) {
      return working
          .answer("The pressure is not above the atmosphere: it takes nothing.")
          .build();
    }
    double taken = flow(inlet.pascals(), atmosphere.pascals());
    working.given(LOAD, load, 4).given(RATED, ratedFlow, 6);
    if (ratedInlet.isEmpty()) {
      return working.step(FIXED, taken, 4).answer(TAKEN).build();
    }
    working.given(PRESSURE, inlet.pascals(), 6).given(RATED_PRESSURE, ratedPascals, 6);
    if (beyondCritical(atmosphere.pascals() / inlet.pascals()) == 0.0) {
      return working.step(PROPORTIONAL, taken, 4).answer(TAKEN).build();
    }
    return working
        .given(ATMOSPHERE, atmosphere.pascals(), 6)
        .given(CRITICAL_RATIO, CRITICAL_PRESSURE_RATIO, 6)
        .step(SUBSONIC, taken, 4)
        .answer(TAKEN)
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ToolDemand that
        && name.equals(that.name)
        && rated.equals(that.rated)
        && ratedInlet.equals(that.ratedInlet)
        && Double.compare(duty, that.duty) == 0
        && Double.compare(load, that.load) == 0;
  }

  @Override
  public int hashCode() {
    return Objects.hash(name, rated, ratedInlet, duty, load);
  }

  /** {@return the tool and what it takes, such as "grinder: 0.0085 kg/s while it runs"} */
  @Override
  public String toString() {
    return name + ": "
        + rated.massFlow().times(load).format(MassFlowUnit.KILOGRAM_PER_SECOND)
        + (ratedInlet.isPresent() ? " at its rated pressure" : " while it runs");
  }
}
