package org.airfit.plant;

import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.Orifice;
import org.airfit.flow.OrificeEdge;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;
import org.airfit.quantity.Volume;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;
import org.jspecify.annotations.Nullable;

/**
 * What is known of how much a leak loses: by the size of its hole, by a bag held over it, by a rotameter in its line, by
 * an ultrasonic reading, or as somebody told it.
 *
 * <pre>
 *   hole        ṁ as {@link Orifice} finds it
 *   bag         ṁ = p V / (R T t)
 *   rotameter   ṁ = q ρ √(p Tc / (pc T))
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>ṁ</td><td>what the leak loses</td><td>kg/s</td></tr>
 * <tr><td>p, T</td><td>of the air in the bag, or in the rotameter</td><td>Pa, K</td></tr>
 * <tr><td>V, t</td><td>volume of the bag, and the time that it takes to fill</td><td>m³, s</td></tr>
 * <tr><td>q, ρ</td><td>flow that the scale shows, and density of the air as it counts it</td><td>m³/s, kg/m³</td></tr>
 * <tr><td>pc, Tc</td><td>of the air for which the scale is drawn</td><td>Pa, K</td></tr>
 * </tbody>
 * </table>
 *
 * <p>What is not known exactly is a range, and so is the answer: each of the formulas rises or falls with each of its
 * values, so the ends of the range are exact. A size that is not known has no flow, which is not a flow of 0, and says
 * why. <b>Sources:</b> of the rotameter the balance of forces on the float, Mechanical Engineers' Handbook, vol. 2,
 * eq. (27) of the chapter on temperature and flow transducers; of the bag the ideal gas.
 *
 * <p>A leak by a bag held over it, with what the watch and the bag are off:
 *
 * <pre>{@code
 * import java.time.Duration;
 * import org.airfit.air.AirState;
 * import org.airfit.plant.LeakSize;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.Range;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.quantity.Volume;
 *
 * class BagOverALeak {
 *   public static void main(String[] args) {
 *     AirState room = AirState.of(AbsolutePressure.parse("14.7 psia"), Temperature.parse("68 °F"));
 *     LeakSize bag = LeakSize.ofBag(
 *         Range.parse("2 to 2.2 ft3", Volume::parse),
 *         Duration.ofSeconds(25),
 *         Duration.ofSeconds(1),
 *         room);
 *     System.out.println(bag); // bag: 0.00262353016155 kg/s to 0.00312637344251 kg/s
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class LeakSize implements Worked {

  private static final Source GAS = Source.derived("ideal gas");

  private static final Source FLOAT = Source.handbook(
      "balance of forces on the float, Mechanical Engineers' Handbook, vol. 2, flow transducers, eq. (27)");

  private static final Source COUNTED = Source.derived("mass of a volume counted at a state");

  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol LEAST = Symbol.of("ṁ1", ValueKind.MASS_FLOW);
  private static final Symbol MOST = Symbol.of("ṁ2", ValueKind.MASS_FLOW);
  private static final Symbol PRESSURE = Symbol.of("p", ValueKind.PRESSURE);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  private static final Symbol SCALE_PRESSURE = Symbol.of("pc", ValueKind.PRESSURE);
  private static final Symbol SCALE_KELVINS = Symbol.of("Tc", ValueKind.TEMPERATURE);
  private static final Symbol BAG = Symbol.of("V", ValueKind.VOLUME);
  private static final Symbol TIME = Symbol.of("t", ValueKind.SECONDS);
  private static final Symbol CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol SHOWN = Symbol.of("q", ValueKind.VOLUME_FLOW);
  private static final Symbol DENSITY = Symbol.of("ρ", ValueKind.DENSITY);

  private static final Formula FILLED = Formula.of(
      "Leak into the bag",
      "⟨ṁ⟩ = [144] × ⟨p⟩ × ⟨V⟩ / (⟨R⟩ × ⟨T⟩ × ⟨t⟩)",
      GAS,
      FLOW,
      PRESSURE,
      BAG,
      CONSTANT,
      KELVINS,
      TIME);

  private static final Formula CORRECTED = Formula.of(
      "Leak through the rotameter",
      "⟨ṁ⟩ = ⟨q⟩ × ⟨ρ⟩ × √(⟨p⟩ × ⟨Tc⟩ / (⟨pc⟩ × ⟨T⟩))",
      FLOAT,
      FLOW,
      SHOWN,
      DENSITY,
      PRESSURE,
      SCALE_KELVINS,
      SCALE_PRESSURE,
      KELVINS);

  private static final Formula TOLD =
      Formula.of("Leak as told", "⟨ṁ⟩ = ⟨q⟩ × ⟨ρ⟩", COUNTED, FLOW, SHOWN, DENSITY);

  /** No leak is larger, a choice of this project [kg/s]. */
  private static final double MOST_FLOW = 1.0e6;

  /** What a hole loses at least [kg/s]: it counts as a slip of units from there on; a choice of this project. */
  private static final double LEAST_FLOW = 1.0e-30;

  private static final LeakSize NOT_MEASURED = new LeakSize(
      "not measured",
      "nobody measured it; hold a bag over it, or measure its hole",
      null,
      null,
      null);

  private final String method;
  private final String reason;
  private final Optional<Range<MassFlow>> flow;
  private final Optional<Worked> least;
  private final Optional<Worked> most;

  private LeakSize(
      String method,
      String reason,
      @Nullable Range<MassFlow> flow,
      @Nullable Worked least,
      @Nullable Worked most) {
    this.method = method;
    this.reason = reason;
    this.flow = Optional.ofNullable(flow);
    this.least = Optional.ofNullable(least);
    this.most = Optional.ofNullable(most);
  }

  private static LeakSize known(
      String method, MassFlow leastFlow, MassFlow mostFlow, Worked least, Worked most) {
    if (!(mostFlow.kilogramsPerSecond() <= MOST_FLOW)) {
      throw new IllegalArgumentException("leak must lose at most 1e6 kg/s, was " + mostFlow.shown()
          + "; check the units of what was measured");
    }
    return new LeakSize(method, "", new Range<>(leastFlow, mostFlow), least, most);
  }

  /**
   * Obtains the size by a hole between two that it may be.
   *
   * @param smallest the hole that lets least through
   * @param largest the hole that lets most through
   * @param pressure the pressure in front of the hole, which is that of its place and not that of the compressor
   * @param outside the air around: its pressure, and the temperature that the air in the line has too
   * @return the size
   * @throws IllegalArgumentException if the pressure is not above 0, {@code smallest} lets more through than {@code
   *     largest}, or the leak is not from 1e-30 to 1e6 kg/s
   */
  public static LeakSize ofHole(
      Orifice smallest, Orifice largest, Range<GaugePressure> pressure, AirState outside) {
    Objects.requireNonNull(smallest, "smallest");
    Objects.requireNonNull(largest, "largest");
    Objects.requireNonNull(pressure, "pressure");
    Objects.requireNonNull(outside, "outside");
    if (!(pressure.least().pascals() > 0.0)) {
      throw new IllegalArgumentException("pressure at a leak must be above 0 bar(g), was "
          + pressure.least().shown() + "; give the gauge pressure in front of the hole");
    }
    if (smallest.effectiveArea().compareTo(largest.effectiveArea()) > 0) {
      throw new IllegalArgumentException(
          "smallest hole must be no larger than the largest, " + largest + ", was " + smallest);
    }
    var leastFlow = smallest.flow(
        outside.at(pressure.least().absolute(outside.pressure())), outside.pressure());
    var mostFlow =
        largest.flow(outside.at(pressure.most().absolute(outside.pressure())), outside.pressure());
    if (!(leastFlow.massFlow().kilogramsPerSecond() >= LEAST_FLOW)) {
      throw new IllegalArgumentException("hole must lose at least 1e-30 kg/s, was "
          + leastFlow.massFlow().shown() + "; check the units of the hole and of the pressure");
    }
    return known("hole", leastFlow.massFlow(), mostFlow.massFlow(), leastFlow, mostFlow);
  }

  /**
   * Obtains the size by a hole with an edge of a kind, with all discharge coefficients that are published for it.
   *
   * @param diameter its diameter, above 0
   * @param edge the kind of edge
   * @param pressure the pressure in front of the hole, which is that of its place and not that of the compressor
   * @param outside the air around: its pressure, and the temperature that the air in the line has too
   * @return the size
   * @throws IllegalArgumentException if the diameter or the pressure is not above 0, or the leak is not from 1e-30 to
   *     1e6 kg/s
   */
  public static LeakSize ofHole(
      Range<Length> diameter, OrificeEdge edge, Range<GaugePressure> pressure, AirState outside) {
    Objects.requireNonNull(diameter, "diameter");
    Objects.requireNonNull(edge, "edge");
    return ofHole(
        Orifice.of(diameter.least(), edge.least()),
        Orifice.of(diameter.most(), edge.most()),
        pressure,
        outside);
  }

  /**
   * Obtains the size by a hole of which nobody knows the edge: all from the least that is published for a sharp one to
   * the most for a well rounded one.
   *
   * @param diameter its diameter, above 0
   * @param pressure the pressure in front of the hole, which is that of its place and not that of the compressor
   * @param outside the air around: its pressure, and the temperature that the air in the line has too
   * @return the size
   * @throws IllegalArgumentException if the diameter or the pressure is not above 0, or the leak is not from 1e-30 to
   *     1e6 kg/s
   */
  public static LeakSize ofHole(
      Range<Length> diameter, Range<GaugePressure> pressure, AirState outside) {
    Objects.requireNonNull(diameter, "diameter");
    return ofHole(
        Orifice.of(diameter.least(), OrificeEdge.SHARP.least()),
        Orifice.of(diameter.most(), OrificeEdge.WELL_ROUNDED.most()),
        pressure,
        outside);
  }

  /**
   * Obtains the size by a bag held over the leak until it is full.
   *
   * @param bag the volume of the full bag, above 0
   * @param time the time that it took, above {@code error}
   * @param error by how much that time may be wrong, at least 0
   * @param outside the air around, which is that in the bag
   * @return the size
   * @throws IllegalArgumentException if an argument is out of range, or the leak is above 1e6 kg/s
   */
  public static LeakSize ofBag(Range<Volume> bag, Duration time, Duration error, AirState outside) {
    Objects.requireNonNull(bag, "bag");
    Objects.requireNonNull(time, "time");
    Objects.requireNonNull(error, "error");
    Objects.requireNonNull(outside, "outside");
    if (!(bag.least().cubicMetres() > 0.0)) {
      throw new IllegalArgumentException(
          "volume of the bag must be above 0 L, was " + bag.least().shown());
    }
    requireError(error);
    if (time.compareTo(error) <= 0) {
      throw new IllegalArgumentException("time to fill the bag must be above "
          + Seconds.told(error) + ", by which it may be wrong, was "
          + Seconds.told(time) + "; take a larger bag");
    }
    Bag least = new Bag(bag.least(), Seconds.of(time) + Seconds.of(error), outside);
    Bag most = new Bag(bag.most(), Seconds.of(time) - Seconds.of(error), outside);
    return known("bag", least.flow(), most.flow(), least, most);
  }

  /** Refuses an error of a stop-watch below 0. */
  static void requireError(Duration error) {
    if (error.isNegative()) {
      throw new IllegalArgumentException(
          "error of a time must be at least 0 s, was " + Seconds.told(error));
    }
  }

  /**
   * Obtains the size by a rotameter in the line that leads to the leak.
   *
   * @param shown what its scale shows
   * @param drawn the pressure and temperature of the air for which the scale is drawn
   * @param there the pressure and temperature of the air in it
   * @return the size
   * @throws IllegalArgumentException if the leak is above 1e6 kg/s
   */
  public static LeakSize ofRotameter(Range<FreeAirFlow> shown, AirState drawn, AirState there) {
    Objects.requireNonNull(shown, "shown");
    Objects.requireNonNull(drawn, "drawn");
    Objects.requireNonNull(there, "there");
    Rotameter least = new Rotameter(shown.least(), drawn, there);
    Rotameter most = new Rotameter(shown.most(), drawn, there);
    return known("rotameter", least.flow(), most.flow(), least, most);
  }

  /**
   * Obtains the size as it was told, be it measured in another way or estimated.
   *
   * @param flow the flow
   * @return the size
   * @throws IllegalArgumentException if the leak is above 1e6 kg/s
   */
  public static LeakSize ofFlow(Range<FreeAirFlow> flow) {
    Objects.requireNonNull(flow, "flow");
    return told("flow as told", flow);
  }

  private static LeakSize told(String method, Range<FreeAirFlow> flow) {
    return known(
        method,
        flow.least().massFlow(),
        flow.most().massFlow(),
        new Told(flow.least()),
        new Told(flow.most()));
  }

  /**
   * Obtains the size by an ultrasonic reading. Without a relation of the user's own it is recorded, and refused as a
   * flow; the same outside of the readings or the pressures of the relation.
   *
   * @param decibels the reading [dB], finite
   * @param pressure the pressure at the leak
   * @param relation how the readings of the instrument go with flow, where its user has such a table
   * @return the size
   * @throws IllegalArgumentException if {@code decibels} is not finite, or the leak is above 1e6 kg/s
   */
  public static LeakSize ofUltrasonic(
      double decibels, Range<GaugePressure> pressure, Optional<UltrasonicRelation> relation) {
    UltrasonicRelation.requireReading(decibels);
    Objects.requireNonNull(pressure, "pressure");
    Objects.requireNonNull(relation, "relation");
    String method = "ultrasonic reading of " + Digits.significant(decibels, 12) + " dB";
    if (relation.isEmpty()) {
      return new LeakSize(
          method,
          "no published relation tells a flow by decibels with its scatter; give a table of your own instrument",
          null,
          null,
          null);
    }
    UltrasonicRelation own = relation.get();
    if (!own.pressure().contains(pressure.least()) || !own.pressure().contains(pressure.most())) {
      return new LeakSize(
          method,
          "the table of " + own.instrument() + " holds for another pressure at the leak",
          null,
          null,
          null);
    }
    return own.flow(decibels)
        .map(flow -> told(method, flow))
        .orElseGet(() -> new LeakSize(
            method,
            "the table of " + own.instrument() + " has readings of " + own.span() + " only",
            null,
            null,
            null));
  }

  /** {@return a size that nobody measured} */
  public static LeakSize notMeasured() {
    return NOT_MEASURED;
  }

  /** {@return how it was measured, such as "bag"} */
  public String method() {
    return method;
  }

  /** {@return what the leak loses; empty where that is not known, which is not 0} */
  public Optional<Range<MassFlow>> flow() {
    return flow;
  }

  /** {@return why the flow is not known; empty where it is} */
  public Optional<String> notKnownBecause() {
    return reason.isEmpty() ? Optional.empty() : Optional.of(reason);
  }

  @Override
  public Working working(UnitSystem units) {
    if (least.isEmpty() || most.isEmpty()) {
      return Working.titled("Leak by " + method, units)
          .answer("The flow is not known: " + reason + ".")
          .build();
    }
    if (least.get().equals(most.get())) {
      return least.get().working(units);
    }
    return Working.titled("Leak by " + method + ", least and most", units)
        .include(least.get().working(units), LEAST)
        .include(most.get().working(units), MOST)
        .answer(LEAST, MOST)
        .build();
  }

  /** A bag that is full after so many seconds. */
  private record Bag(Volume volume, double seconds, AirState air) implements Worked {

    MassFlow flow() {
      return MassFlow.ofKilogramsPerSecond(air.pressure().pascals()
          * volume.cubicMetres()
          / (AirState.GAS_CONSTANT * air.temperature().kelvins() * seconds));
    }

    @Override
    public Working working(UnitSystem units) {
      return Working.titled("Leak of air into a bag", units)
          .given(PRESSURE, air.pressure().pascals(), 7)
          .given(BAG, volume.cubicMetres(), 7)
          .given(CONSTANT, AirState.GAS_CONSTANT, 8)
          .given(KELVINS, air.temperature().kelvins(), 7)
          .given(TIME, seconds, 8)
          .step(FILLED, flow().kilogramsPerSecond(), 4)
          .answer(FLOW)
          .build();
    }
  }

  /** A float that stands at a mark of a scale drawn for another air. */
  private record Rotameter(FreeAirFlow shown, AirState drawn, AirState there) implements Worked {

    MassFlow flow() {
      return MassFlow.ofKilogramsPerSecond(shown.massFlow().kilogramsPerSecond()
          * Math.sqrt(there.pressure().pascals()
              * drawn.temperature().kelvins()
              / (drawn.pressure().pascals() * there.temperature().kelvins())));
    }

    @Override
    public Working working(UnitSystem units) {
      return Working.titled("Leak of air through a rotameter", units)
          .given(SHOWN, shown.cubicMetresPerSecond(), 7)
          .given(DENSITY, shown.reference().density().kilogramsPerCubicMetre(), 7)
          .given(PRESSURE, there.pressure().pascals(), 7)
          .given(SCALE_KELVINS, drawn.temperature().kelvins(), 7)
          .given(SCALE_PRESSURE, drawn.pressure().pascals(), 7)
          .given(KELVINS, there.temperature().kelvins(), 7)
          .step(CORRECTED, flow().kilogramsPerSecond(), 4)
          .answer(FLOW)
          .build();
    }
  }

  /** A flow that was told. */
  private record Told(FreeAirFlow flow) implements Worked {

    @Override
    public Working working(UnitSystem units) {
      return Working.titled("Leak of air as it was told", units)
          .given(SHOWN, flow.cubicMetresPerSecond(), 7)
          .given(DENSITY, flow.reference().density().kilogramsPerCubicMetre(), 7)
          .step(TOLD, flow.massFlow().kilogramsPerSecond(), 4)
          .answer(FLOW)
          .build();
    }
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LeakSize that
        && method.equals(that.method)
        && reason.equals(that.reason)
        && flow.equals(that.flow)
        && least.equals(that.least)
        && most.equals(that.most);
  }

  @Override
  public int hashCode() {
    return Objects.hash(method, reason, flow, least, most);
  }

  /** {@return the size in one line, such as "bag: 0.01 to 0.02 kg/s", or why it is not known} */
  @Override
  public String toString() {
    return method + ": "
        + flow.map(range -> range.isExact()
                ? range.most().shown()
                : range.least().shown() + " to " + range.most().shown())
            .orElse(reason);
  }
}
