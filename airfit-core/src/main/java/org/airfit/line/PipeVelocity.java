package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.quantity.Area;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Velocity;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * How fast the air goes in a pipe, held against the rule for what the pipe does.
 *
 * <pre>
 *   v = 4 ṁ/(π D² ρ)
 * </pre>
 *
 * <p>Whether air is too fast in a main:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.PipeDuty;
 * import org.airfit.line.PipeVelocity;
 * import org.airfit.line.Wall;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.Temperature;
 *
 * class TooFast {
 *   public static void main(String[] args) {
 *     Conduit main = Conduit.of(Length.parse("1 in"), Length.parse("30 m"), Wall.COMMERCIAL_STEEL);
 *     AirState air = AirState.of(AbsolutePressure.parse("8 bar(a)"), Temperature.parse("20 °C"));
 *     PipeVelocity velocity = PipeVelocity.of(
 *         PipeDuty.DISTRIBUTION, main, FreeAirFlow.parse("60 L/s ANR").massFlow(), air);
 *     System.out.println(velocity.verdict()); // ABOVE
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class PipeVelocity implements Worked {

  private static final Velocity CARRIES_WATER = Velocity.ofFeetPerSecond(25.0);
  private static final Source CARRY_OVER =
      Source.fromMemory("Compressed Air and Gas Institute handbook, chapter 4: 25 to 30 ft/s");

  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  private static final Symbol BORE = Symbol.of("D", ValueKind.LENGTH);
  private static final Symbol PRESSURE = Symbol.of("p", ValueKind.PRESSURE);
  private static final Symbol SPEED = Symbol.of("v", ValueKind.VELOCITY);

  private static final Formula VELOCITY = Formula.of(
      "Velocity, the density being p/(R T)",
      "⟨v⟩ = 4 × ⟨ṁ⟩ × ⟨R⟩ × ⟨T⟩ / (π × ⟨D⟩² × ⟨p⟩ × [144])",
      Source.derived("mass flow over density and section, ideal gas with R of ISO 2533"),
      SPEED,
      FLOW,
      CONSTANT,
      KELVINS,
      BORE,
      PRESSURE);

  private final PipeDuty duty;
  private final Length bore;
  private final MassFlow massFlow;
  private final AirState air;

  private PipeVelocity(PipeDuty duty, Length bore, MassFlow massFlow, AirState air) {
    this.duty = Objects.requireNonNull(duty, "duty");
    this.bore = bore;
    this.massFlow = Objects.requireNonNull(massFlow, "massFlow");
    this.air = Objects.requireNonNull(air, "air");
  }

  /**
   * Judges a flow in a pipe.
   *
   * @param duty what the pipe does
   * @param pipe the pipe
   * @param massFlow the flow
   * @param air the air in the pipe; that at its outlet is the fastest
   * @return the velocity and the verdict
   * @throws IllegalArgumentException if {@code massFlow} is above 10⁹⁰ kg/s, far beyond any line
   */
  public static PipeVelocity of(PipeDuty duty, Conduit pipe, MassFlow massFlow, AirState air) {
    PipeDuty.requireUsable(massFlow);
    return new PipeVelocity(duty, Objects.requireNonNull(pipe, "pipe").bore(), massFlow, air);
  }

  /** {@return what the pipe does} */
  public PipeDuty duty() {
    return duty;
  }

  /** {@return its inside diameter} */
  public Length bore() {
    return bore;
  }

  /** {@return the flow} */
  public MassFlow massFlow() {
    return massFlow;
  }

  /** {@return the air in it} */
  public AirState air() {
    return air;
  }

  /** {@return the mean velocity in the bore} */
  public Velocity velocity() {
    return Velocity.ofMetresPerSecond(massFlow.kilogramsPerSecond()
        / (air.density().kilogramsPerCubicMetre() * Area.ofCircle(bore).squareMetres()));
  }

  /** {@return how it stands to the rule} */
  public VelocityVerdict verdict() {
    return velocity().compareTo(duty.highest()) <= 0
        ? VelocityVerdict.WITHIN
        : VelocityVerdict.ABOVE;
  }

  /** {@return whether water standing in the pipe is carried along with the air} */
  public boolean carriesWater() {
    return velocity().compareTo(CARRIES_WATER) >= 0;
  }

  /** {@return the warnings that go with it; none where it keeps to the rule} */
  public List<Caution> cautions() {
    return cautions(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return the warnings that go with it; none where it keeps to the rule
   */
  public List<Caution> cautions(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    List<Caution> cautions = new ArrayList<>();
    if (verdict() == VelocityVerdict.ABOVE) {
      cautions.add(new Caution(
          "Air too fast in the pipe",
          "In a " + duty.label() + " air should go at most " + both(duty.highest(), units)
              + "; here it goes " + both(velocity(), units) + ". A bore of "
              + bore(duty.boreFor(massFlow, air), units) + " would do.",
          duty.source()));
    }
    if (carriesWater() && duty != PipeDuty.BRANCH) {
      cautions.add(new Caution(
          "Water is carried along",
          units.either("From 7.6 to 9.1 m/s (25 to 30 ft/s)", "From 25 to 30 ft/s (7.6 to 9.1 m/s)")
              + " air carries water out of a wet main into the drops."
              + " Take branches from the top, drain the low points, or dry the air.",
          CARRY_OVER));
    }
    return List.copyOf(cautions);
  }

  private static String both(Velocity velocity, UnitSystem units) {
    return units.say(velocity) + " (" + units.other().say(velocity) + ")";
  }

  /** A pipe is bought by its size, so the bore that would do is told as it is calculated. */
  private static String bore(Length bore, UnitSystem units) {
    return bore.format(units.smallLengthUnit(), units.either(1, 3));
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Velocity of the air in the " + duty.label(), units)
        .given(FLOW, massFlow.kilogramsPerSecond(), 9)
        .given(CONSTANT, AirState.GAS_CONSTANT, 8)
        .given(KELVINS, air.temperature().kelvins(), 9)
        .given(BORE, bore.metres(), 9)
        .given(PRESSURE, air.pressure().pascals(), 9)
        .step(VELOCITY, velocity().metresPerSecond(), 4)
        .answer(SPEED)
        .note("It should be at most " + both(duty.highest(), units) + " in a " + duty.label() + " ["
            + duty.source() + "].")
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PipeVelocity that
        && duty == that.duty
        && bore.equals(that.bore)
        && massFlow.equals(that.massFlow)
        && air.equals(that.air);
  }

  @Override
  public int hashCode() {
    return Objects.hash(duty, bore, massFlow, air);
  }

  /**
   * Tells the velocity.
   *
   * @param units the units; the other stand in brackets
   * @return the velocity and what the pipe does, such as "28 ft/s (8.5 m/s) in a branch or drop"
   */
  public String inWords(UnitSystem units) {
    return both(velocity(), Objects.requireNonNull(units, "units")) + " in a " + duty.label();
  }

  /** {@return the velocity and what the pipe does} */
  @Override
  public String toString() {
    return inWords(UnitSystem.SI);
  }
}
