package org.airfit.flow;

import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.source.Source;

/**
 * A capacity as well as it is known: one, or somewhere between two because a rating does not tell enough.
 *
 * <p>The two ends bound the flow between any two pressures: no capacity that fits the rating passes less than {@code
 * least} or more than {@code most}. One capacity is rarely both the narrowest near closing and the narrowest when it
 * chokes, so an end need not fit the rating itself. {@link #spanning} says how the ends are found, and why they bound.
 *
 * <p>Where b is not told it is taken from {@link #LEAST_B} to {@link #MOST_B}.
 *
 * @param least a capacity that passes at most as much as any that the rating allows
 * @param most a capacity that passes at least as much as any that the rating allows
 * @param assumption what was taken for what the rating does not tell
 */
public record CapacityRange(FlowCapacity least, FlowCapacity most, Source assumption) {

  /** The least b taken where none is told [-]: there is no lower one. */
  public static final double LEAST_B = 0.0;

  /**
   * The highest b taken where none is told [-]: (2/(γ + 1))^(γ/(γ − 1)) of a loss-free nozzle, 0.528 for air. Only a
   * part that widens gently behind its narrowest place has more, as a full-bore ball valve or a venturi: its b must
   * be told. Couplers and valves lie mostly from 0.2 to 0.5 (common practice, no source).
   */
  public static final double MOST_B = OrificeFlow.CRITICAL_PRESSURE_RATIO;

  /** The least xT taken of a valve where none is told [-], that of a full-bore ball valve (from memory). */
  public static final double LEAST_XT = 0.2;

  static final Source TOLD = Source.derived("as told, nothing assumed");

  static final Source ANY_B =
      Source.commonPractice("b not told: from 0 to 0.528, that of a loss-free nozzle");

  /**
   * Checks the components.
   *
   * @param least a capacity that passes at most as much as any that the rating allows
   * @param most a capacity that passes at least as much as any that the rating allows
   * @param assumption what was taken for what the rating does not tell
   * @throws IllegalArgumentException if {@code least} passes more than {@code most} between some two pressures
   */
  public CapacityRange {
    Objects.requireNonNull(least, "least");
    Objects.requireNonNull(most, "most");
    Objects.requireNonNull(assumption, "assumption");
    if (least.conductance().compareTo(most.conductance()) > 0) {
      throw new IllegalArgumentException("smallest capacity must be at most the largest, "
          + most.conductance().shown() + ", was " + least.conductance().shown());
    }
    if (!CapacityBounds.isAtMost(least.figures(), most.figures())) {
      throw new IllegalArgumentException(
          "smallest capacity must pass at most what the largest passes between any two pressures, "
              + most + ", was " + least);
    }
  }

  /**
   * Obtains the range of a capacity that is known.
   *
   * @param capacity the capacity
   * @return the range with {@code capacity} at both ends
   */
  public static CapacityRange exactly(FlowCapacity capacity) {
    Objects.requireNonNull(capacity, "capacity");
    return new CapacityRange(capacity, capacity, TOLD);
  }

  /**
   * Obtains the narrowest range that holds several capacities, and all that lie between them.
   *
   * <pre>
   *   least:  C = min C,  1 − b = max (1 − b)(min C/C)²
   *   most:   C = max C,  1 − b = min (1 − b)(max C/C)²
   * </pre>
   *
   * <p><b>Why the ends bound.</b> With w = 1 − b, s = 1 − p2/p1 and κ = C²/w the square of the flow, over (ρ0 p1)²
   * T0/T1, is
   *
   * <pre>
   *   2 κ s − κ² s²/C²   for s &lt; C²/κ,     C²   from there on
   * </pre>
   *
   * <p>It rises with C² at a fixed κ (slope κ²s²/C⁴ or 1) and with κ at a fixed C² (slope 2s (1 − κs/C²), which is not
   * negative below choking, or 0). So whatever has C and κ not below those of {@code least} passes not less, between
   * any two pressures, and the same upwards. The formulas above give the least C and the least κ to one end, the
   * largest of both to the other. Both w lie in (0, 1]: the first is at most its own 1 − b, as min C/C is at most 1,
   * the second at most that of the part of the largest C.
   *
   * <p>With a subsonic index other than 0.5 or a cracking pressure the ends have the least and the largest of each
   * figure instead: the flow rises with C and with b, and falls as m or Δpc rises.
   *
   * @param capacities the capacities, at least one
   * @param assumption what was taken for what is not known
   * @return the range
   * @throws IllegalArgumentException if there is none
   */
  public static CapacityRange spanning(List<FlowCapacity> capacities, Source assumption) {
    Objects.requireNonNull(capacities, "capacities");
    Objects.requireNonNull(assumption, "assumption");
    List<FlowCoefficients> figures =
        List.copyOf(capacities).stream().map(FlowCapacity::figures).toList();
    if (figures.isEmpty()) {
      throw new IllegalArgumentException("capacities of a range must be at least 1, was 0");
    }
    return new CapacityRange(
        FlowCapacity.of(CapacityBounds.least(figures)),
        FlowCapacity.of(CapacityBounds.most(figures)),
        assumption);
  }

  /**
   * Obtains the range of a part of which only the choked flow is known.
   *
   * @param conductance the sonic conductance C, above 0
   * @return the range over every b taken
   * @throws IllegalArgumentException if {@code conductance} is 0
   */
  public static CapacityRange ofConductance(SonicConductance conductance) {
    return new CapacityRange(
        FlowCapacity.of(conductance, LEAST_B), FlowCapacity.of(conductance, MOST_B), ANY_B);
  }

  /**
   * Obtains the range of a part of which only the effective section is known; see {@link
   * FlowCapacity#ofEffectiveArea(Area, double)}.
   *
   * @param area the effective section, above 0
   * @return the range over every b taken
   * @throws IllegalArgumentException if {@code area} is 0
   */
  public static CapacityRange ofEffectiveArea(Area area) {
    return ofConductance(FlowCapacity.ofEffectiveArea(area, LEAST_B).conductance());
  }

  /**
   * Obtains the range of a part of which only Kv or Cv is known, with xT from 0.2 to 1.
   *
   * <pre>
   *   least:  xT = 0.2,  b = 1 − xT
   *   most:   xT = 1,    b = 1 − (8/9) xT
   * </pre>
   *
   * <p>The flow after IEC 60534 rises with xT, and the capacity of {@link FlowCapacity#ofValveCoefficient} lies below
   * it or on it. The curve of the most lies above it: with s = x/xT the squares of the two, over N² Kv² xT p1 ρ1, are
   * s − (9/16) s² and s (1 − s/3)² = s − (2/3) s² + s³/9, and the difference (5/48 − s/9) s² is above 0 below s =
   * 15/16; from s = 8/9 the most is choked at 4/9, which the other reaches at s = 1. So both curves lie in the range
   * for every xT taken.
   *
   * @param coefficient Kv or Cv
   * @return the range
   * @throws IllegalArgumentException if the conductance would be too small to hold
   */
  public static CapacityRange ofValveCoefficient(ValveCoefficient coefficient) {
    SonicConductance most = FlowCapacity.ofValveCoefficient(coefficient, 1.0).conductance();
    return new CapacityRange(
        FlowCapacity.ofValveCoefficient(coefficient, LEAST_XT),
        FlowCapacity.of(most, 1.0 / 9.0),
        Source.commonPractice("xT not told: from 0.2, that of a ball valve, to 1"));
  }

  /**
   * Obtains the Kv or Cv with which a part has a conductance whatever its xT is: the least that {@link
   * #ofValveCoefficient} takes of it.
   *
   * @param conductance the conductance, above 0
   * @return the coefficient
   * @throws IllegalArgumentException if {@code conductance} is 0
   */
  public static ValveCoefficient coefficientFor(SonicConductance conductance) {
    Objects.requireNonNull(conductance, "conductance");
    double ofOne = FlowCapacity.ofValveCoefficient(ValveCoefficient.ofCv(1.0), LEAST_XT)
        .conductance()
        .cubicMetresPerSecondPascal();
    return ValveCoefficient.ofCv(conductance.cubicMetresPerSecondPascal() / ofOne);
  }

  /**
   * Obtains the range that a rating leaves open which tells the inlet pressure and the drop, but not b.
   *
   * <p>C(b) is the conductance that gives the rated flow with one b. At a fixed flow and share s of the drop C² = q²
   * w²/(2sw − s²) falls as b rises, and κ = C²/w = q² w/(2sw − s²) rises; where the part chokes in its rating, C is the
   * same for every b and κ rises with b. So the capacities of the two ends of b span all between them; see {@link
   * #spanning}.
   *
   * @param rated the flow
   * @param inlet the pressure in front of the part in the rating
   * @param drop the drop across the part in the rating, above 0 and less than {@code inlet}
   * @param temperature the temperature of the air in the rating
   * @return the range over every b taken
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static CapacityRange ofRatedFlow(
      FreeAirFlow rated, AbsolutePressure inlet, PressureDrop drop, Temperature temperature) {
    return spanning(
        List.of(
            FlowCapacity.ofRatedFlow(rated, inlet, drop, temperature, LEAST_B),
            FlowCapacity.ofRatedFlow(rated, inlet, drop, temperature, MOST_B)),
        ANY_B);
  }

  /**
   * Obtains the range that a rating leaves open which tells a flow and nothing else.
   *
   * <p>Taken are an inlet of 100 psig and a drop that may be anything from 5 psi, as couplers are mostly rated, to
   * all of it, which is the most the part can pass. C and κ fall as the drop rises (see {@link #spanning}), so the
   * corners of drop and b span all between them. The two ends lie far apart: ask for the conditions.
   *
   * @param rated the flow
   * @return the range
   */
  public static CapacityRange ofRatedFlow(FreeAirFlow rated) {
    return ofRatedFlow(rated, Temperature.ofCelsius(20.0));
  }

  /** The same of a rating that tells the temperature of the air too. */
  static CapacityRange ofRatedFlow(FreeAirFlow rated, Temperature temperature) {
    return ofRatedFlow(
        rated, AbsolutePressure.ofPsi(114.7), temperature, "inlet taken as 100 psig, drop");
  }

  /**
   * Obtains the range that a rating leaves open which tells the inlet pressure, but not the drop: a drop from 5 psi to
   * all that there is above 14.7 psia.
   *
   * @param rated the flow
   * @param inlet the pressure in front of the part in the rating, above 19.7 psia
   * @param temperature the temperature of the air in the rating
   * @return the range
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static CapacityRange ofRatedFlow(
      FreeAirFlow rated, AbsolutePressure inlet, Temperature temperature) {
    Objects.requireNonNull(inlet, "inlet");
    return ofRatedFlow(
        rated,
        inlet,
        temperature,
        "inlet at " + Digits.significant(inlet.psi() - 14.7, 4) + " psig as told, drop taken");
  }

  private static CapacityRange ofRatedFlow(
      FreeAirFlow rated, AbsolutePressure inlet, Temperature temperature, String how) {
    Objects.requireNonNull(rated, "rated");
    if (!(inlet.psi() > 19.7)) {
      throw new IllegalArgumentException(
          "inlet of a rating without a drop must be above 19.7 psia, was " + inlet.shown());
    }
    PressureDrop usual = PressureDrop.ofPsi(5.0);
    PressureDrop all = PressureDrop.ofPsi(inlet.psi() - 14.7);
    return spanning(
        List.of(
            FlowCapacity.ofRatedFlow(rated, inlet, all, temperature, LEAST_B),
            FlowCapacity.ofRatedFlow(rated, inlet, all, temperature, MOST_B),
            FlowCapacity.ofRatedFlow(rated, inlet, usual, temperature, LEAST_B),
            FlowCapacity.ofRatedFlow(rated, inlet, usual, temperature, MOST_B)),
        Source.commonPractice(how + " from 5 psi to all of it; " + ANY_B.citation()));
  }

  /**
   * Obtains the range of a table of points: of all curves that come nearly as close to the points as the nearest one,
   * through whichever point. How far the points lie off the nearest curve stands in the assumption.
   *
   * <p>Only b from {@link #LEAST_B} to {@link #MOST_B} is looked at. A b counts as one that fits where the C of the
   * points differ at most 1.02 times as much as at the best b, which is our own choice.
   *
   * @param points the points, at least one
   * @return the range
   * @throws IllegalArgumentException if there is none
   */
  public static CapacityRange ofPoints(List<RatedPoint> points) {
    Objects.requireNonNull(points, "points");
    if (points.isEmpty()) {
      throw new IllegalArgumentException("points of a rating must be at least 1, was 0");
    }
    PointsFit fit = new PointsFit(points, LEAST_B, MOST_B);
    return spanning(fit.corners(), fit.source());
  }

  /** {@return whether all is as told: nothing was taken for what is not known} */
  public boolean isTold() {
    return assumption.equals(TOLD);
  }

  /** {@return whether the two ends are one capacity} */
  public boolean isExact() {
    return least.equals(most);
  }

  /** {@return the ends, such as "from C 3.5 … to C 4.4 …, uncertain"; the capacity where it is known} */
  @Override
  public String toString() {
    return isExact() ? least.toString() : "from " + least + " to " + most + ", uncertain";
  }
}
