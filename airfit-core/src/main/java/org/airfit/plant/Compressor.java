package org.airfit.plant;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/**
 * A compressor that loads and unloads, with the receiver behind it.
 *
 * <p>While it delivers more than is taken, the pressure swings between cut-in and cut-out. A run is then computed at
 * cut-in, the lowest it falls to. Where more is taken
 * than it delivers at cut-in, the pressure sinks along the curve of delivery until the two are equal. Where more is
 * taken than the curve shows anywhere, it can't.
 *
 * <p>In a swing the receiver takes up and gives back V (p2 − p1)/(R T), so that
 *
 * <pre>
 *   t = V (p2 − p1)/(R T) (1/(ṁc − ṁ) + 1/ṁ)
 * </pre>
 *
 * <p>is the time from one start to the next; V receiver [m³], p1 and p2 cut-in and cut-out [Pa], ṁc delivery at the
 * mean of the two and ṁ flow taken [kg/s]. It is shortest where ṁ is
 * half of ṁc. <b>Source:</b> balance of mass.
 *
 * @param curve what it delivers against which pressure, pressures rising, deliveries not; at least two points,
 *     straight lines between
 * @param cutIn the pressure at which it begins to deliver, on the curve
 * @param cutOut the pressure at which it stops, above cut-in and on the curve
 * @param receiver the volume of the receiver, above 0
 * @param temperature the temperature of the air in the receiver
 */
public record Compressor(
    List<Point> curve,
    AbsolutePressure cutIn,
    AbsolutePressure cutOut,
    Volume receiver,
    Temperature temperature)
    implements Supply {

  private static final Source SOURCE = Source.derived("balance of mass of the receiver");

  private static final Source CURVE =
      Source.derived("straight line between two stated points of the curve");

  /** A time between two starts that counts as never [s]: 100 years of 365.25 days; our choice. */
  private static final double LONGEST_SWING = 100.0 * 365.25 * 86_400.0;

  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol DELIVERED = Symbol.of("ṁc", ValueKind.MASS_FLOW);
  private static final Symbol FLOW_BEFORE = Symbol.of("ṁa", ValueKind.MASS_FLOW);
  private static final Symbol FLOW_BEHIND = Symbol.of("ṁb", ValueKind.MASS_FLOW);
  private static final Symbol BEFORE = Symbol.of("pa", ValueKind.SAID_PRESSURE);
  private static final Symbol BEHIND = Symbol.of("pb", ValueKind.SAID_PRESSURE);
  private static final Symbol PRESSURE = Symbol.of("p", ValueKind.SAID_PRESSURE);
  private static final Symbol CUT_IN = Symbol.of("p1", ValueKind.PRESSURE);
  private static final Symbol CUT_OUT = Symbol.of("p2", ValueKind.PRESSURE);
  private static final Symbol RECEIVER = Symbol.of("V", ValueKind.VOLUME);
  private static final Symbol GAS_CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  private static final Symbol TIME = Symbol.of("t", ValueKind.SECONDS);

  private static final Formula SINKING = Formula.of(
      "Pressure on the curve",
      "⟨p⟩ = ⟨pa⟩ + (⟨pb⟩ − ⟨pa⟩) × (⟨ṁa⟩ − ⟨ṁ⟩) / (⟨ṁa⟩ − ⟨ṁb⟩)",
      CURVE,
      PRESSURE,
      BEFORE,
      BEHIND,
      FLOW_BEFORE,
      FLOW_BEHIND,
      FLOW);

  private static final Formula CYCLE = Formula.of(
      "Time from one start to the next",
      "⟨t⟩ = [144] × ⟨V⟩ × (⟨p2⟩ − ⟨p1⟩) / (⟨R⟩ × ⟨T⟩) × (1 / (⟨ṁc⟩ − ⟨ṁ⟩) + 1 / ⟨ṁ⟩)",
      SOURCE,
      TIME,
      RECEIVER,
      CUT_OUT,
      CUT_IN,
      GAS_CONSTANT,
      KELVINS,
      DELIVERED,
      FLOW);

  /**
   * A point of the curve.
   *
   * @param pressure the pressure it delivers against
   * @param delivery what it delivers
   */
  public record Point(AbsolutePressure pressure, FreeAirFlow delivery) {

    /**
     * Checks the components.
     *
     * @param pressure the pressure it delivers against
     * @param delivery what it delivers
     */
    public Point {
      Objects.requireNonNull(pressure, "pressure");
      Objects.requireNonNull(delivery, "delivery");
    }
  }

  /**
   * Checks the components.
   *
   * @param curve what it delivers against which pressure, pressures rising, deliveries not; at least two points
   * @param cutIn the pressure at which it begins to deliver, on the curve
   * @param cutOut the pressure at which it stops, above cut-in and on the curve
   * @param receiver the volume of the receiver, above 0
   * @param temperature the temperature of the air in the receiver
   * @throws IllegalArgumentException if an argument breaks what is said above
   */
  public Compressor {
    curve = List.copyOf(Objects.requireNonNull(curve, "curve"));
    Objects.requireNonNull(cutIn, "cutIn");
    Objects.requireNonNull(cutOut, "cutOut");
    Objects.requireNonNull(receiver, "receiver");
    Objects.requireNonNull(temperature, "temperature");
    if (curve.size() < 2) {
      throw new IllegalArgumentException(
          "points of a compressor's curve must be at least 2, was " + curve.size());
    }
    for (int i = 1; i < curve.size(); i++) {
      Point one = curve.get(i - 1);
      Point next = curve.get(i);
      if (!(next.pressure.compareTo(one.pressure) > 0 && mass(next) <= mass(one))) {
        throw new IllegalArgumentException(
            "points of a compressor's curve must have rising pressures and deliveries that do not rise, was "
                + told(one) + " before " + told(next));
      }
    }
    if (!(cutIn.compareTo(curve.get(0).pressure) >= 0
        && cutIn.compareTo(cutOut) < 0
        && cutOut.compareTo(curve.get(curve.size() - 1).pressure) <= 0)) {
      throw new IllegalArgumentException("cut-in must be below cut-out and both on the curve, in ["
          + curve.get(0).pressure.shown() + ", "
          + curve.get(curve.size() - 1).pressure.shown() + "], was "
          + cutIn.shown() + " and " + cutOut.shown());
    }
    if (!(receiver.cubicMetres() > 0.0)) {
      throw new IllegalArgumentException("receiver must be above 0 m³, was " + receiver.shown());
    }
    AirState.of(cutIn, temperature); // refuses a temperature that air cannot have
  }

  private static String told(Point point) {
    return point.delivery.shown() + " at " + point.pressure.shown();
  }

  private static double mass(Point point) {
    return point.delivery.massFlow().kilogramsPerSecond();
  }

  /**
   * Finds what it delivers against a pressure.
   *
   * @param pressure the pressure, on the curve
   * @return the delivery
   * @throws IllegalArgumentException if {@code pressure} lies off the curve
   */
  public MassFlow delivery(AbsolutePressure pressure) {
    Objects.requireNonNull(pressure, "pressure");
    AbsolutePressure first = curve.get(0).pressure;
    AbsolutePressure last = curve.get(curve.size() - 1).pressure;
    if (pressure.compareTo(first) < 0 || pressure.compareTo(last) > 0) {
      throw new IllegalArgumentException("pressure must be on the compressor's curve, in ["
          + first.shown() + ", " + last.shown() + "], was " + pressure.shown());
    }
    int i = 1;
    while (curve.get(i).pressure.compareTo(pressure) < 0) {
      i++;
    }
    double p0 = curve.get(i - 1).pressure.pascals();
    double p1 = curve.get(i).pressure.pascals();
    double part = (pressure.pascals() - p0) / (p1 - p0);
    double before = mass(curve.get(i - 1));
    double behind = mass(curve.get(i));
    // between two equal deliveries exactly that one, and never less than behind: rounding must not
    // pass the curve
    return MassFlow.ofKilogramsPerSecond(Math.max(behind, before + part * (behind - before)));
  }

  @Override
  public AirState still() {
    return AirState.of(cutOut, temperature);
  }

  @Override
  public double pascals(double flow) {
    if (flow <= delivery(cutIn).kilogramsPerSecond()) {
      return cutIn.pascals();
    }
    int i = behind(flow);
    if (i == 0) {
      return Double.NaN;
    }
    Point before = curve.get(i - 1);
    Point behind = curve.get(i);
    double part = (mass(before) - flow) / (mass(before) - mass(behind));
    return (1.0 - part) * before.pressure.pascals() + part * behind.pressure.pascals();
  }

  @Override
  public double largest() {
    return mass(curve.get(0));
  }

  @Override
  public double slope(double flow) {
    if (flow <= delivery(cutIn).kilogramsPerSecond()) {
      return 0.0;
    }
    int i = behind(flow);
    if (i == 0) {
      return Double.NaN;
    }
    Point before = curve.get(i - 1);
    Point behind = curve.get(i);
    return (before.pressure.pascals() - behind.pressure.pascals()) / (mass(before) - mass(behind));
  }

  /**
   * The first point that delivers less than a flow [kg/s] above what it delivers at cut-in; 0 where none delivers as
   * much.
   */
  private int behind(double flow) {
    int i = 0;
    while (mass(curve.get(i)) >= flow) {
      i++;
    }
    return i;
  }

  /**
   * Finds the time from one start of the compressor to the next.
   *
   * @param flow the flow taken
   * @return the time; empty where it runs on (as much is taken as it delivers), or does not start within 100 years
   *     (nothing is taken, or next to nothing)
   */
  public Optional<Duration> timeBetweenStarts(MassFlow flow) {
    double delivered = meanDelivery();
    double taken = Objects.requireNonNull(flow, "flow").kilogramsPerSecond();
    if (!(taken > 0.0 && taken < delivered)) {
      return Optional.empty();
    }
    double seconds = secondsBetweenStarts(taken);
    return seconds <= LONGEST_SWING
        ? Optional.of(Duration.ofNanos(Math.round(1.0e9 * seconds)))
        : Optional.empty();
  }

  private double secondsBetweenStarts(double taken) {
    return stored() * (1.0 / (meanDelivery() - taken) + 1.0 / taken);
  }

  private double meanDelivery() {
    return delivery(AbsolutePressure.ofPascals(0.5 * (cutIn.pascals() + cutOut.pascals())))
        .kilogramsPerSecond();
  }

  /** The air [kg] the receiver takes up from cut-in to cut-out. */
  private double stored() {
    return receiver.cubicMetres()
        * (cutOut.pascals() - cutIn.pascals())
        / (AirState.GAS_CONSTANT * temperature.kelvins());
  }

  @Override
  public Working working(MassFlow flow, UnitSystem units) {
    Working.Builder working = Working.titled("Pressure of the air at the receiver", units);
    MassFlow full = delivery(cutIn);
    double taken = Objects.requireNonNull(flow, "flow").kilogramsPerSecond();
    double pascals = pascals(taken);
    if (Double.isNaN(pascals)) {
      return working
          .answer(flow.format(units.massFlowUnit())
              + " is more than the compressor delivers anywhere on its curve.")
          .build();
    }
    if (flow.compareTo(full) > 0) {
      Point before = curve.get(behind(taken) - 1);
      Point behind = curve.get(behind(taken));
      return working
          .note("More is taken than the " + full.format(units.massFlowUnit())
              + " it delivers at cut-in: the pressure sinks along the curve to "
              + AbsolutePressure.ofPascals(pascals).format(units.pressureUnit()) + ".")
          .given(BEFORE, before.pressure.pascals(), 6)
          .given(BEHIND, behind.pressure.pascals(), 6)
          .given(FLOW_BEFORE, mass(before), 6)
          .given(FLOW_BEHIND, mass(behind), 6)
          .given(FLOW, taken, 6)
          .step(SINKING, pascals, 4)
          .answer(PRESSURE)
          .build();
    }
    working.answer("It keeps up. The pressure swings between cut-in and cut-out; "
        + cutIn.format(units.pressureUnit()) + " at cut-in is the lowest, and taken here.");
    if (timeBetweenStarts(flow).isEmpty()) {
      return working.build();
    }
    return working
        .given(RECEIVER, receiver.cubicMetres(), 6)
        .given(CUT_OUT, cutOut.pascals(), 6)
        .given(CUT_IN, cutIn.pascals(), 6)
        .given(GAS_CONSTANT, AirState.GAS_CONSTANT, 8)
        .given(KELVINS, temperature.kelvins(), 6)
        .given(DELIVERED, meanDelivery(), 6)
        .given(FLOW, taken, 6)
        .step(CYCLE, secondsBetweenStarts(taken), 4)
        .answer(TIME)
        .build();
  }

  /** {@return the compressor, such as "compressor, cut-in 7 bar(a), cut-out 8 bar(a), 500 L"} */
  @Override
  public String toString() {
    return "compressor, cut-in " + cutIn.format(PressureUnit.BAR) + ", cut-out "
        + cutOut.format(PressureUnit.BAR) + ", "
        + Digits.significant(1000.0 * receiver.cubicMetres(), 4) + " L";
  }
}
