package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.quantity.Area;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Velocity;
import org.airfit.quantity.VelocityUnit;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * How fast the air goes in a pipe, held against the rule for what the pipe does.
 *
 * <pre>
 *   v = 4 ṁ/(π D² ρ)
 * </pre>
 *
 * @param duty what the pipe does
 * @param bore its inside diameter, above 0
 * @param massFlow the flow
 * @param air the air in it
 */
public record PipeVelocity(PipeDuty duty, Length bore, MassFlow massFlow, AirState air)
    implements Worked {

  /** How a velocity stands to the rule. */
  public enum Verdict {
    /** At most what the rule allows. */
    WITHIN,
    /** Faster than the rule allows. */
    ABOVE
  }

  private static final Velocity CARRIES_WATER = Velocity.ofFeetPerSecond(25.0);
  private static final Source CARRY_OVER =
      Source.fromMemory("Compressed Air and Gas Institute handbook, chapter 4: 25 to 30 ft/s");

  /**
   * Checks the components.
   *
   * @param duty what the pipe does
   * @param bore its inside diameter, above 0
   * @param massFlow the flow
   * @param air the air in it
   */
  public PipeVelocity {
    duty.label(); // null fails here
    if (!(bore.metres() > 0.0)) {
      throw new IllegalArgumentException(
          "bore must be above 0 mm, was " + bore.format(LengthUnit.MILLIMETRE));
    }
  }

  /** {@return the mean velocity in the bore} */
  public Velocity velocity() {
    return Velocity.ofMetresPerSecond(massFlow.kilogramsPerSecond()
        / (air.density().kilogramsPerCubicMetre() * Area.ofCircle(bore).squareMetres()));
  }

  /** {@return how it stands to the rule} */
  public Verdict verdict() {
    return velocity().compareTo(duty.highest()) <= 0 ? Verdict.WITHIN : Verdict.ABOVE;
  }

  /** {@return whether water standing in the pipe is carried along with the air} */
  public boolean carriesWater() {
    return velocity().compareTo(CARRIES_WATER) >= 0;
  }

  /** {@return the warnings that go with it; none where it keeps to the rule} */
  public List<Caution> cautions() {
    List<Caution> cautions = new ArrayList<>();
    if (verdict() == Verdict.ABOVE) {
      cautions.add(new Caution(
          "Air too fast in the pipe",
          "In a " + duty.label() + " air should go at most " + inWords(duty.highest())
              + "; here it goes " + inWords(velocity()) + ". A bore of "
              + duty.boreFor(massFlow, air).format(LengthUnit.MILLIMETRE, 1) + " would do.",
          duty.source()));
    }
    if (carriesWater() && duty != PipeDuty.BRANCH) {
      cautions.add(new Caution(
          "Water is carried along",
          "From 7.6 to 9.1 m/s (25 to 30 ft/s) air carries water out of a wet main into the drops."
              + " Take branches from the top, drain the low points, or dry the air.",
          CARRY_OVER));
    }
    return List.copyOf(cautions);
  }

  private static String inWords(Velocity velocity) {
    return velocity.format(VelocityUnit.METRE_PER_SECOND, 1) + " ("
        + velocity.format(VelocityUnit.FOOT_PER_SECOND, 0) + ")";
  }

  @Override
  public Working working(UnitSystem units) {
    return Working.titled("Velocity in the " + duty.label())
        .step(
            "Velocity, the density being p/(R T)",
            "⟨v⟩ = 4 × ⟨ṁ⟩ × ⟨R⟩ × ⟨T⟩ / (π × ⟨D⟩² × ⟨p⟩" + units.either("", " × 144") + ")",
            "⟨v⟩ = \\frac{4 ⟨ṁ⟩ ⟨R⟩ ⟨T⟩}{\\pi ⟨D⟩^2 \\cdot ⟨p⟩" + units.either("", " \\cdot 144")
                + "}",
            List.of(
                units.massFlow("ṁ", "\\dot m", massFlow.kilogramsPerSecond(), 9),
                units.heatCapacity("R", "R", AirState.GAS_CONSTANT, 8),
                units.temperature("T", "T", air.temperature().kelvins(), 9),
                units.length("D", "D", bore.metres(), 9),
                units.pressure("p", "p", air.pressure().pascals(), 9)),
            units.velocity("v", "v", velocity().metresPerSecond(), 4),
            Source.derived("mass flow over density and section, ideal gas with R of ISO 2533"))
        .note("It should be at most " + inWords(duty.highest()) + " in a " + duty.label() + " ["
            + duty.source() + "].")
        .build();
  }
}
