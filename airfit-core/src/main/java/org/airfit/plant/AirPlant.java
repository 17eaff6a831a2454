package org.airfit.plant;

import java.time.Duration;
import java.util.List;
import org.airfit.air.Compression;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.PressureDrop;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.Working;

/**
 * What compresses the air of a shop, and what its electricity costs: the answers to what a leak, a pressure drop or a setting too high costs in a year.
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
 * <p><b>Source:</b> steady-flow work as in Cengel and Boles, Thermodynamics, chapter 7, with the cost of a leak in example 7-22; a setting too high feeds openings in proportion to the absolute
 * pressure. Compressors idle at a good part of their power: what is saved in air is saved in money only as far as the compressor follows the demand.
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

  /**
   * Checks the components.
   *
   * @param compression from where to where the air is compressed, and how
   * @param compressorEfficiency work without losses over shaft work [-], in (0, 1]
   * @param motorEfficiency shaft work over electric work [-], in (0, 1]
   * @param time the time in the year the plant runs
   * @param perKilowattHour the rate
   */
  public AirPlant {
    compression.stages(); // null fails here
    YearlyCost.requireEfficiency("compressor efficiency", compressorEfficiency);
    YearlyCost.requireEfficiency("motor efficiency", motorEfficiency);
    YearlyCost.requireTime(time);
    perKilowattHour.amount();
  }

  /**
   * Finds the power at the shaft for a flow.
   *
   * @param flow the flow
   * @return the power
   */
  public Power shaftPower(MassFlow flow) {
    return Power.ofWatts(compression.power(flow).watts() / compressorEfficiency);
  }

  /**
   * Finds the electric power for a flow.
   *
   * @param flow the flow
   * @return the power
   */
  public Power electricPower(MassFlow flow) {
    return Power.ofWatts(shaftPower(flow).watts() / motorEfficiency);
  }

  /**
   * Finds what a flow costs in a year, be it of tools or of a leak.
   *
   * @param what what takes the flow
   * @param flow its mean flow over the time the plant runs
   * @return the cost
   */
  public YearlyCost ofFlow(String what, MassFlow flow) {
    Working.Builder working =
        Working.titled("Yearly cost of " + what).include(compression.working());
    return cost(what, flow.kilogramsPerSecond(), compression.joulesPerKilogram(), working);
  }

  /**
   * Finds what a pressure drop costs in a year, as the compressor makes it good.
   *
   * @param what what takes the pressure
   * @param flow the mean flow that is compressed higher for it: of the whole plant, where the plant's pressure is raised
   * @param drop the pressure it takes
   * @return the cost
   * @throws IllegalArgumentException if nothing would be left to compress to without the drop
   */
  public YearlyCost ofDrop(String what, MassFlow flow, PressureDrop drop) {
    Compression without = compression.to(compression.discharge().minus(drop));
    double more = compression.joulesPerKilogram() - without.joulesPerKilogram();
    Working.Builder working = Working.titled("Yearly cost of " + what)
        .include(compression.working())
        .include(without.working())
        .step(
            "Work that the drop costs",
            "⟨w⟩ = ⟨w1⟩ − ⟨w2⟩",
            "⟨w⟩ = ⟨w1⟩ - ⟨w2⟩",
            List.of(
                Term.of("w1", "w_1", compression.joulesPerKilogram(), "J/kg", 12),
                Term.of("w2", "w_2", without.joulesPerKilogram(), "J/kg", 12)),
            Term.of("w", "w", more, "J/kg", 5),
            SOURCE);
    return cost(what, flow.kilogramsPerSecond(), more, working);
  }

  /**
   * Finds what a regulator set too high costs in a year, where openings behind it take more the higher the pressure.
   *
   * @param what what is set too high
   * @param flow the mean flow at the pressure needed
   * @param needed the pressure needed, above a vacuum
   * @param set the pressure set, at least that needed
   * @return the cost of the air taken on top
   * @throws IllegalArgumentException if {@code set} is below {@code needed}, or that is a vacuum
   */
  public YearlyCost ofSetting(
      String what, MassFlow flow, AbsolutePressure needed, AbsolutePressure set) {
    if (!(needed.pascals() > 0.0 && set.compareTo(needed) >= 0)) {
      throw new IllegalArgumentException(
          "pressure set must be at least that needed, and that above 0 Pa(a), was " + set + " and "
              + needed);
    }
    double more = flow.kilogramsPerSecond() * (set.pascals() / needed.pascals() - 1.0);
    Working.Builder working = Working.titled("Yearly cost of " + what)
        .include(compression.working())
        .step(
            "Air taken on top",
            "⟨ṁ⟩ = ⟨ṁn⟩ × (⟨ps⟩ / ⟨pn⟩ − 1)",
            "⟨ṁ⟩ = ⟨ṁn⟩ \\left(\\frac{⟨ps⟩}{⟨pn⟩} - 1\\right)",
            List.of(
                Term.of("ṁn", "\\dot m_n", flow.kilogramsPerSecond(), "kg/s", 12),
                Term.of("ps", "p_s", set.pascals(), "Pa", 12),
                Term.of("pn", "p_n", needed.pascals(), "Pa", 12)),
            Term.of("ṁ", "\\dot m", more, "kg/s", 5),
            Source.derived("choked flow is in proportion to the absolute pressure"));
    return cost(what, more, compression.joulesPerKilogram(), working);
  }

  private YearlyCost cost(String what, double flow, double work, Working.Builder working) {
    Power electric = Power.ofWatts(flow * work / (compressorEfficiency * motorEfficiency));
    working.step(
        "Electric power",
        "⟨P⟩ = ⟨ṁ⟩ × ⟨w⟩ / (1000 × ⟨ηc⟩ × ⟨ηm⟩)",
        "⟨P⟩ = \\frac{⟨ṁ⟩ \\cdot ⟨w⟩}{1000 \\cdot ⟨ηc⟩ \\cdot ⟨ηm⟩}",
        List.of(
            Term.of("ṁ", "\\dot m", flow, "kg/s", 12),
            Term.of("w", "w", work, "J/kg", 12),
            Term.of("ηc", "\\eta_c", compressorEfficiency, "", 12),
            Term.of("ηm", "\\eta_m", motorEfficiency, "", 12)),
        Term.of("P", "P", electric.kilowatts(), "kW", 4),
        SOURCE);
    return YearlyCost.of(what, electric, time, perKilowattHour, working);
  }
}
