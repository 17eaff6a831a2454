package org.airfit.flow;

import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlow;
import org.airfit.working.UnitSystem;

/**
 * A hole: a leak, a nozzle, the tip of a blow gun.
 *
 * <pre>
 *   ṁ = Cd A p1 / √(R T1) ψ(M),  ψ as in {@link IsentropicFlow} at p/p0 = p2/p1, or at Mach 1 where p2/p1 ≤ 0.528
 * </pre>
 *
 * <p>The pressure in front is that of air at rest. The discharge coefficient Cd carries the whole uncertainty: {@link
 * OrificeEdge} has what is published, from 0.56 to 0.84 for a sharp edge.
 *
 * <p>What a sharp hole of 1/8 in loses:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.flow.Orifice;
 * import org.airfit.flow.OrificeFlow;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.working.UnitSystem;
 *
 * class SharpHole {
 *   public static void main(String[] args) {
 *     AirState line = AirState.of(AbsolutePressure.parse("114.7 psia"), Temperature.parse("68 °F"));
 *     OrificeFlow leak =
 *         Orifice.sharp(Length.parse("1/8 in")).flow(line, AbsolutePressure.parse("14.7 psia"));
 *     System.out.println(leak.regime()); // CHOKED
 *     System.out.println(UnitSystem.US.say(leak.freeAir())); // 16.7 scfm
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Orifice {

  private final Length diameter;
  private final double dischargeCoefficient;

  private Orifice(Length diameter, double dischargeCoefficient) {
    if (!(diameter.metres() > 0.0)) {
      throw new IllegalArgumentException("diameter of an orifice must be above 0 mm, was "
          + diameter.inFull(LengthUnit.MILLIMETRE));
    }
    if (!(dischargeCoefficient > 0.0 && dischargeCoefficient <= 1.0)) {
      throw new IllegalArgumentException(
          "discharge coefficient must be in (0, 1], was " + Digits.told(dischargeCoefficient));
    }
    this.diameter = diameter;
    this.dischargeCoefficient = dischargeCoefficient;
  }

  /**
   * Obtains a round hole.
   *
   * @param diameter its diameter, above 0
   * @param dischargeCoefficient the share of the loss-free flow it passes, Cd [-], in (0, 1]
   * @return the orifice
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static Orifice of(Length diameter, double dischargeCoefficient) {
    return new Orifice(diameter, dischargeCoefficient);
  }

  /**
   * Obtains a round hole with an edge of a kind.
   *
   * @param diameter its diameter, above 0
   * @param edge the kind of edge, which brings the discharge coefficient
   * @return the orifice
   * @throws IllegalArgumentException if {@code diameter} is 0
   */
  public static Orifice of(Length diameter, OrificeEdge edge) {
    return new Orifice(diameter, edge.coefficient());
  }

  /**
   * Obtains a sharp-edged hole, Cd = 0.65 after the orifice tables of compressed-air handbooks.
   *
   * @param diameter its diameter, above 0
   * @return the orifice
   * @throws IllegalArgumentException if {@code diameter} is 0
   */
  public static Orifice sharp(Length diameter) {
    return of(diameter, OrificeEdge.SHARP);
  }

  /**
   * Obtains a hole with a well rounded entrance, Cd = 0.97 after the orifice tables of compressed-air handbooks.
   *
   * @param diameter its diameter, above 0
   * @return the orifice
   * @throws IllegalArgumentException if {@code diameter} is 0
   */
  public static Orifice rounded(Length diameter) {
    return of(diameter, OrificeEdge.WELL_ROUNDED);
  }

  /** {@return the diameter} */
  public Length diameter() {
    return diameter;
  }

  /** {@return Cd [-]} */
  public double dischargeCoefficient() {
    return dischargeCoefficient;
  }

  /** {@return Cd times the section} */
  public Area effectiveArea() {
    return Area.ofSquareMetres(dischargeCoefficient * Area.ofCircle(diameter).squareMetres());
  }

  /**
   * Finds the flow between two pressures.
   *
   * @param inlet the air in front of the hole, at rest
   * @param outlet the pressure behind it, at most that in front
   * @return the flow and its regime
   * @throws IllegalArgumentException if {@code outlet} is above the inlet pressure
   */
  public OrificeFlow flow(AirState inlet, AbsolutePressure outlet) {
    if (inlet.pressure().dropTo(outlet).pascals() == 0.0) {
      return new OrificeFlow(
          diameter,
          dischargeCoefficient,
          inlet,
          outlet,
          FlowRegime.CLOSED,
          MassFlow.ofKilogramsPerSecond(0.0));
    }
    double ratio = outlet.pascals() / inlet.pressure().pascals();
    boolean choked = ratio <= OrificeFlow.CRITICAL_PRESSURE_RATIO;
    double psi = choked
        ? GasKernels.CHOKED
        : GasKernels.massFlowFunction(GasKernels.machAtPressureRatio(ratio));
    double flow = psi
        * effectiveArea().squareMetres()
        * inlet.pressure().pascals()
        / Math.sqrt(AirState.GAS_CONSTANT * inlet.temperature().kelvins());
    return new OrificeFlow(
        diameter,
        dischargeCoefficient,
        inlet,
        outlet,
        choked ? FlowRegime.CHOKED : FlowRegime.SUBSONIC,
        MassFlow.ofKilogramsPerSecond(flow));
  }

  /**
   * Obtains the capacity of ISO 6358 that chokes at the same flow and the same p2/p1.
   *
   * <p>In between the nozzle passes up to 0.31 % more than this capacity.
   *
   * @return the capacity, with b = 0.528
   * @throws IllegalArgumentException if the hole is so small that its conductance is 0 to a double
   */
  public FlowCapacity capacity() {
    return FlowCapacity.ofEffectiveArea(effectiveArea(), OrificeFlow.CRITICAL_PRESSURE_RATIO);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Orifice that
        && diameter.equals(that.diameter)
        && dischargeCoefficient == that.dischargeCoefficient;
  }

  @Override
  public int hashCode() {
    return 31 * diameter.hashCode() + Double.hashCode(dischargeCoefficient);
  }

  /**
   * Writes it out.
   *
   * @param units the units to write it in
   * @return the hole, such as "orifice of 0.125 in, Cd 0.65"
   */
  public String in(UnitSystem units) {
    return OrificeFlow.hole(diameter, dischargeCoefficient, units);
  }

  /** {@return the hole, such as "orifice of 3 mm, Cd 0.65"} */
  @Override
  public String toString() {
    return in(UnitSystem.SI);
  }
}
