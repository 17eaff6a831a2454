package org.airfit.plant;

import java.time.Duration;
import java.util.Objects;
import org.airfit.air.Compression;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.PressureDrop;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * What compresses the air of a shop, and what its electricity costs: the answers to what a leak, a pressure drop or a
 * setting too high costs in a year.
 *
 * <pre>
 *   flow                P = ṁ w(p) / (ηc ηm)
 *   pressure drop       P = ṁ (w(p) − w(p − Δp)) / (ηc ηm)
 *   setting too high    P = ṁ (ps/pn − 1) w(p) / (ηc ηm)
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>P</td><td>electric power</td><td>W</td></tr>
 * <tr><td>ṁ</td><td>mean flow; of a setting, what is taken at the pressure needed</td><td>kg/s</td></tr>
 * <tr><td>w(p)</td><td>work without losses to the discharge pressure p, see {@link Compression}</td><td>J/kg</td></tr>
 * <tr><td>Δp</td><td>drop that the compressor makes good</td><td>Pa</td></tr>
 * <tr><td>ps, pn</td><td>pressure set and pressure needed, absolute</td><td>Pa</td></tr>
 * <tr><td>ηc, ηm</td><td>efficiency of the compressor against that work, and of the motor</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p><b>Source:</b> steady-flow work as in Cengel and Boles, Thermodynamics, chapter 7, with the cost of a leak in
 * example 7-22; a setting too high feeds openings in proportion to the absolute
 * pressure. Compressors idle at a good part of their power: what is saved in air is saved in money only as far as the
 * compressor follows the demand.
 *
 * <p>What a pressure that is set too high costs:
 *
 * <pre>{@code
 * import java.time.Duration;
 * import org.airfit.air.AirState;
 * import org.airfit.air.Compression;
 * import org.airfit.plant.AirPlant;
 * import org.airfit.plant.YearlyCost;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.Money;
 * import org.airfit.quantity.Temperature;
 *
 * class SetTooHigh {
 *   public static void main(String[] args) {
 *     AirState intake = AirState.of(AbsolutePressure.STANDARD_ATMOSPHERE, Temperature.parse("20 °C"));
 *     AirPlant plant = new AirPlant(
 *         Compression.adiabatic(intake, AbsolutePressure.parse("8 bar(a)")),
 *         0.75,
 *         0.92,
 *         Duration.ofHours(4000),
 *         Money.parse("0.11 USD"));
 *     YearlyCost bar = plant.ofSetting(
 *         "one bar too much",
 *         FreeAirFlow.parse("100 L/s ANR").massFlow(),
 *         AbsolutePressure.parse("7 bar(a)"),
 *         AbsolutePressure.parse("8 bar(a)"));
 *     System.out.println(bar.money().format(0)); // 2558 USD
 *   }
 * }
 * }</pre>
 *
 * @param compression from where to where the air is compressed, and how
 * @param compressorEfficiency work without losses over shaft work [-], in (0, 1]
 * @param motorEfficiency shaft work over electric work [-], in (0, 1]
 * @param time the time in the year the plant runs
 * @param perKilowattHour the rate
 */
public record AirPlant(
    Compression compression,
    double compressorEfficiency,
    double motorEfficiency,
    Duration time,
    Money perKilowattHour) {

  private static final Source SOURCE = Source.handbook(
      "cost of compressed air from the work of compression, Cengel and Boles, Thermodynamics, chapter 7, example 7-22");

  private static final Source CHOKED =
      Source.derived("choked flow is in proportion to the absolute pressure");

  private static final Symbol FLOW = Symbol.of("ṁ", ValueKind.MASS_FLOW);
  private static final Symbol FLOW_NEEDED = Symbol.of("ṁn", ValueKind.MASS_FLOW);
  private static final Symbol SET = Symbol.of("ps", ValueKind.PRESSURE);
  private static final Symbol NEEDED = Symbol.of("pn", ValueKind.PRESSURE);
  private static final Symbol WORK = Symbol.of("w", ValueKind.ENERGY_PER_MASS);
  private static final Symbol WORK_NOW = Symbol.of("w1", ValueKind.ENERGY_PER_MASS);
  private static final Symbol WORK_WITHOUT = Symbol.of("w2", ValueKind.ENERGY_PER_MASS);
  private static final Symbol OF_COMPRESSOR = Symbol.of("ηc", ValueKind.NUMBER);
  private static final Symbol OF_MOTOR = Symbol.of("ηm", ValueKind.NUMBER);

  private static final Formula POWER = Formula.of(
      "Electric power",
      "⟨P⟩ = ⟨ṁ⟩ × ⟨w⟩ / ([1000|550] × ⟨ηc⟩ × ⟨ηm⟩)",
      SOURCE,
      YearlyCost.POWER,
      FLOW,
      WORK,
      OF_COMPRESSOR,
      OF_MOTOR);

  private static final Formula MORE_WORK = Formula.of(
      "Work that the drop costs", "⟨w⟩ = ⟨w1⟩ − ⟨w2⟩", SOURCE, WORK, WORK_NOW, WORK_WITHOUT);

  private static final Formula MORE_AIR = Formula.of(
      "Air taken on top", "⟨ṁ⟩ = ⟨ṁn⟩ × (⟨ps⟩ / ⟨pn⟩ − 1)", CHOKED, FLOW, FLOW_NEEDED, SET, NEEDED);

  /**
   * Checks the components.
   *
   * @param compression from where to where the air is compressed, and how
   * @param compressorEfficiency work without losses over shaft work [-], in (0, 1]
   * @param motorEfficiency shaft work over electric work [-], in (0, 1]
   * @param time the time in the year the plant runs
   * @param perKilowattHour the rate
   * @throws IllegalArgumentException if an efficiency is out of range, or {@code time} is negative
   */
  public AirPlant {
    Objects.requireNonNull(compression, "compression");
    Objects.requireNonNull(perKilowattHour, "perKilowattHour");
    YearlyCost.requireEfficiency("compressor efficiency", compressorEfficiency);
    YearlyCost.requireEfficiency("motor efficiency", motorEfficiency);
    YearlyCost.requireTime(time);
  }

  /**
   * Obtains a plant of which the electric power was measured while the compressor delivers: what is lost in
   * compressor and motor together follows from it.
   *
   * @param compression from where to where the air is compressed, and how
   * @param delivery what the compressor delivers while loaded, above 0
   * @param loaded the electric power it takes then
   * @param time the time in the year the plant runs
   * @param perKilowattHour the rate
   * @return the plant, with all losses in the efficiency of the compressor and a motor without losses
   * @throws IllegalArgumentException if the power is below the work without losses, which cannot be, the compression
   *     does no work, or {@code time} is negative
   */
  public static AirPlant measured(
      Compression compression,
      FreeAirFlow delivery,
      Power loaded,
      Duration time,
      Money perKilowattHour) {
    Objects.requireNonNull(compression, "compression");
    Objects.requireNonNull(delivery, "delivery");
    Objects.requireNonNull(loaded, "loaded");
    Power least = compression.power(delivery.massFlow());
    if (!(least.watts() > 0.0 && loaded.compareTo(least) >= 0)) {
      throw new IllegalArgumentException("loaded power must be at least the work without losses, "
          + least.shown() + ", and that above 0 W, was " + loaded.shown()
          + "; check power, delivery and pressure");
    }
    return new AirPlant(compression, least.watts() / loaded.watts(), 1.0, time, perKilowattHour);
  }

  /**
   * Finds the power at the shaft for a flow.
   *
   * @param flow the flow
   * @return the power
   * @throws IllegalArgumentException if the flow is so large that no number holds the power
   */
  public Power shaftPower(MassFlow flow) {
    Objects.requireNonNull(flow, "flow");
    return Power.ofWatts(compression.power(flow).watts() / compressorEfficiency);
  }

  /**
   * Finds the electric power for a flow.
   *
   * @param flow the flow
   * @return the power
   * @throws IllegalArgumentException if the flow is so large that no number holds the power
   */
  public Power electricPower(MassFlow flow) {
    Objects.requireNonNull(flow, "flow");
    return Power.ofWatts(shaftPower(flow).watts() / motorEfficiency);
  }

  /**
   * Finds what a flow costs in a year, be it of tools or of a leak.
   *
   * @param what what takes the flow
   * @param flow its mean flow over the time the plant runs
   * @return the cost
   * @throws IllegalArgumentException if the cost is not below 1e30
   */
  public YearlyCost ofFlow(String what, MassFlow flow) {
    Objects.requireNonNull(flow, "flow");
    return cost(what, new OfFlow(this, flow));
  }

  /**
   * Finds what a pressure drop costs in a year, as the compressor makes it good.
   *
   * @param what what takes the pressure
   * @param flow the mean flow that is compressed higher for it: of the whole plant, where the plant's pressure is
   *     raised
   * @param drop the pressure it takes
   * @return the cost
   * @throws IllegalArgumentException if nothing would be left to compress to without the drop, or the cost is not below
   *     1e30
   */
  public YearlyCost ofDrop(String what, MassFlow flow, PressureDrop drop) {
    Objects.requireNonNull(flow, "flow");
    Objects.requireNonNull(drop, "drop");
    Compression without = compression.to(compression.discharge().minus(drop));
    return cost(what, new OfDrop(this, flow, without));
  }

  /**
   * Finds what a regulator set too high costs in a year, where openings behind it take more the higher the pressure.
   *
   * @param what what is set too high
   * @param flow the mean flow at the pressure needed
   * @param needed the pressure needed, above a vacuum
   * @param set the pressure set, at least that needed
   * @return the cost of the air taken on top
   * @throws IllegalArgumentException if {@code set} is below {@code needed}, or that is a vacuum, or the cost is not
   *     below 1e30
   */
  public YearlyCost ofSetting(
      String what, MassFlow flow, AbsolutePressure needed, AbsolutePressure set) {
    Objects.requireNonNull(flow, "flow");
    Objects.requireNonNull(needed, "needed");
    Objects.requireNonNull(set, "set");
    if (!(needed.pascals() > 0.0 && set.compareTo(needed) >= 0)) {
      throw new IllegalArgumentException(
          "pressure set must be at least that needed, and that above 0 Pa(a), was " + set.shown()
              + " and " + needed.shown());
    }
    return cost(what, new OfSetting(this, flow, needed, set));
  }

  private YearlyCost cost(String what, PowerTaken power) {
    double watts = power.kilogramsPerSecond()
        * power.joulesPerKilogram()
        / (compressorEfficiency * motorEfficiency);
    return YearlyCost.of(what, Power.ofWatts(watts), time, perKilowattHour, power);
  }

  /** The electric power that something takes: a flow, the work on each kilogram of it, and the two efficiencies. */
  private sealed interface PowerTaken extends Worked {

    AirPlant plant();

    double kilogramsPerSecond();

    double joulesPerKilogram();

    /** Gives, or finds by steps, the flow and the work. */
    void begin(Working.Builder working, UnitSystem units);

    @Override
    default Working working(UnitSystem units) {
      Working.Builder working = Working.titled("Electric power", units);
      begin(working, units);
      return working
          .given(OF_COMPRESSOR, plant().compressorEfficiency, 4)
          .given(OF_MOTOR, plant().motorEfficiency, 4)
          .step(POWER, watts(), 4)
          .answer(YearlyCost.POWER)
          .build();
    }

    default double watts() {
      return kilogramsPerSecond()
          * joulesPerKilogram()
          / (plant().compressorEfficiency * plant().motorEfficiency);
    }
  }

  /** Of a flow compressed all the way. */
  private record OfFlow(AirPlant plant, MassFlow flow) implements PowerTaken {

    @Override
    public double kilogramsPerSecond() {
      return flow.kilogramsPerSecond();
    }

    @Override
    public double joulesPerKilogram() {
      return plant.compression.joulesPerKilogram();
    }

    @Override
    public void begin(Working.Builder working, UnitSystem units) {
      working
          .given(FLOW, flow.kilogramsPerSecond(), 5)
          .include(plant.compression.working(units), WORK);
    }
  }

  /** Of a flow compressed higher than it would have to be without a drop. */
  private record OfDrop(AirPlant plant, MassFlow flow, Compression without) implements PowerTaken {

    @Override
    public double kilogramsPerSecond() {
      return flow.kilogramsPerSecond();
    }

    @Override
    public double joulesPerKilogram() {
      return plant.compression.joulesPerKilogram() - without.joulesPerKilogram();
    }

    @Override
    public void begin(Working.Builder working, UnitSystem units) {
      working
          .given(FLOW, flow.kilogramsPerSecond(), 5)
          .include(plant.compression.working(units), WORK_NOW)
          .include(without.working(units), WORK_WITHOUT)
          .step(MORE_WORK, joulesPerKilogram(), 4);
    }
  }

  /** Of the air that openings take on top at a pressure set too high. */
  private record OfSetting(
      AirPlant plant, MassFlow flow, AbsolutePressure needed, AbsolutePressure set)
      implements PowerTaken {

    @Override
    public double kilogramsPerSecond() {
      return flow.kilogramsPerSecond() * (set.pascals() / needed.pascals() - 1.0);
    }

    @Override
    public double joulesPerKilogram() {
      return plant.compression.joulesPerKilogram();
    }

    @Override
    public void begin(Working.Builder working, UnitSystem units) {
      working
          .include(plant.compression.working(units), WORK)
          .given(FLOW_NEEDED, flow.kilogramsPerSecond(), 5)
          .given(SET, set.pascals(), 6)
          .given(NEEDED, needed.pascals(), 6)
          .step(MORE_AIR, kilogramsPerSecond(), 4);
    }
  }
}
