package org.airfit.line;

import org.airfit.air.AirState;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Velocity;
import org.airfit.source.Source;

/**
 * What a pipe does in a shop, and how fast air should go in it: the rules by which mains are laid out before a pressure
 * loss is calculated.
 *
 * <p>The velocity is that of the compressed air in the bore, not of free air. A rule is no law of nature: a pipe
 * above it works, with more loss and with water carried along. {@link PipeVelocity} judges a flow by it.
 */
public enum PipeDuty {
  /** The header in the compressor room, at peak flow. */
  ROOM_HEADER(
      "header in the compressor room",
      20.0,
      Source.handbook("stored page on headers of a compressed-air information site")),
  /** The mains from the compressor room to the drops. */
  DISTRIBUTION(
      "main from the room to the drops",
      30.0,
      Source.handbook("stored page on headers of a compressed-air information site")),
  /** Branches and drops to the tools. */
  BRANCH(
      "branch or drop",
      50.0,
      Source.fromMemory("Compressed Air and Gas Institute handbook, chapter 4"));

  private final String label;
  private final Velocity highest;
  private final Source source;

  PipeDuty(String label, double feetPerSecond, Source source) {
    this.label = label;
    this.highest = Velocity.ofFeetPerSecond(feetPerSecond);
    this.source = source;
  }

  /** {@return the duty in words} */
  public String label() {
    return label;
  }

  /** {@return the velocity it should not exceed} */
  public Velocity highest() {
    return highest;
  }

  /** {@return what the rule rests on} */
  public Source source() {
    return source;
  }

  /**
   * Finds the least bore in which a flow keeps to the rule.
   *
   * <pre>
   *   D = √(4 ṁ/(π ρ v))
   * </pre>
   *
   * <p>D bore [m], ṁ flow [kg/s], ρ density of the compressed air [kg/m³], v highest velocity [m/s]. It is
   * A = 144 Q pa/(60 V (pd + pa)) of the handbooks, where free air and line have one temperature.
   *
   * @param massFlow the flow
   * @param air the air in the pipe
   * @return the bore; nothing where nothing flows
   * @throws IllegalArgumentException if {@code massFlow} is above 10⁹⁰ kg/s, far beyond any line
   */
  public Length boreFor(MassFlow massFlow, AirState air) {
    requireUsable(massFlow);
    return Length.ofMetres(Math.sqrt(4.0
        * massFlow.kilogramsPerSecond()
        / (Math.PI * air.density().kilogramsPerCubicMetre() * highest.metresPerSecond())));
  }

  /** Refuses a flow whose velocity no number may hold. */
  static void requireUsable(MassFlow massFlow) {
    if (PipeElement.passesNowhere(massFlow.kilogramsPerSecond())) {
      throw new IllegalArgumentException("mass flow in a pipe must be at most 1e90 kg/s, was "
          + massFlow.shown() + "; check its unit");
    }
  }
}
