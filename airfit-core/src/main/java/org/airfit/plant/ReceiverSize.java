package org.airfit.plant;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRule;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.Working;

/**
 * The receiver that carries a demand over a time in which the compressor does not keep up.
 *
 * <pre>
 *   V = t (ṁd − ṁc) R T / (p1 − p2) − Vp
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>V</td><td>volume of the receiver</td><td>m³</td></tr>
 * <tr><td>t</td><td>how long the event lasts</td><td>s</td></tr>
 * <tr><td>ṁd, ṁc</td><td>flow taken and flow delivered meanwhile</td><td>kg/s</td></tr>
 * <tr><td>R, T</td><td>287.05287 and temperature in the receiver</td><td>J/(kg K), K</td></tr>
 * <tr><td>p1, p2</td><td>pressure when the event begins and the least it may fall to</td><td>Pa</td></tr>
 * <tr><td>Vp</td><td>volume of the pipes, which store air as well</td><td>m³</td></tr>
 * </tbody>
 * </table>
 *
 * <p>At the temperature of the reference state this is V = 14.7 t (Qd − Qc)/(p1 − p2) of the handbooks. The temperature is taken to hold; a fast emptying cools the air, and
 * the pressure then falls further. <b>Source:</b> Esposito, Fluid Power with Applications, section 13; MIL-HDBK-1028/6A, table 2, for the pipes.
 *
 * @param demand the flow taken
 * @param delivery the flow delivered meanwhile, at most the demand
 * @param time how long the event lasts
 * @param start the pressure when it begins
 * @param least the least pressure it may fall to, below {@code start}
 * @param temperature the temperature in the receiver, above 0 K
 * @param pipes the volume of the pipes between receiver and tools
 */
public record ReceiverSize(
    FreeAirFlow demand,
    FreeAirFlow delivery,
    Duration time,
    AbsolutePressure start,
    AbsolutePressure least,
    Temperature temperature,
    Volume pipes) {

  private static final Source SOURCE = Source.handbook(
      "Esposito, Fluid Power with Applications, example 13-7; MIL-HDBK-1028/6A, table 2, for the pipes");

  /**
   * Checks the components.
   *
   * @param demand the flow taken
   * @param delivery the flow delivered meanwhile, at most the demand
   * @param time how long the event lasts
   * @param start the pressure when it begins
   * @param least the least pressure it may fall to, below {@code start}
   * @param temperature the temperature in the receiver, above 0 K
   * @param pipes the volume of the pipes between receiver and tools
   */
  public ReceiverSize {
    Objects.requireNonNull(demand, "demand");
    Objects.requireNonNull(delivery, "delivery");
    Objects.requireNonNull(time, "time");
    Objects.requireNonNull(start, "start");
    Objects.requireNonNull(least, "least");
    Objects.requireNonNull(temperature, "temperature");
    Objects.requireNonNull(pipes, "pipes");
    if (delivery.massFlow().compareTo(demand.massFlow()) > 0) {
      throw new IllegalArgumentException("delivery must be at most the demand, " + demand + ", was "
          + delivery + "; no receiver is needed");
    }
    if (time.isNegative()) {
      throw new IllegalArgumentException(
          "time must be at least 0 s, was " + Digits.plain(seconds(time)) + " s");
    }
    if (least.compareTo(start) >= 0) {
      throw new IllegalArgumentException(
          "least pressure must be below that at the start, " + start + ", was " + least);
    }
    if (!(temperature.kelvins() > 0.0)) {
      throw new IllegalArgumentException(
          "temperature must be above 0 K, was " + Digits.plain(temperature.kelvins()) + " K");
    }
  }

  private static double seconds(Duration time) {
    return time.getSeconds() + 1.0e-9 * time.getNano();
  }

  private double lacking() {
    return demand.massFlow().kilogramsPerSecond() - delivery.massFlow().kilogramsPerSecond();
  }

  private double stores() {
    return seconds(time)
        * lacking()
        * AirState.GAS_CONSTANT
        * temperature.kelvins()
        / (start.pascals() - least.pascals());
  }

  /** {@return the volume of the receiver; 0 where the pipes store enough} */
  public Volume volume() {
    return Volume.ofCubicMetres(Math.max(0.0, stores() - pipes.cubicMetres()));
  }

  /** {@return the warnings that go with a receiver} */
  public List<Caution> cautions() {
    return List.of(new Caution(
        SafetyRule.RECEIVER.title(), SafetyRule.RECEIVER.demand(), SafetyRule.RECEIVER.source()));
  }

  /** {@return how the volume was found} */
  public Working working() {
    Working.Builder working = Working.titled("Volume of the receiver");
    double needed = stores();
    working.step(
        "Volume that stores what is lacking",
        "⟨Vs⟩ = ⟨t⟩ × (⟨ṁd⟩ − ⟨ṁc⟩) × ⟨R⟩ × ⟨T⟩ / (⟨p1⟩ − ⟨p2⟩)",
        "⟨Vs⟩ = \\frac{⟨t⟩ (⟨ṁd⟩ - ⟨ṁc⟩) ⟨R⟩ \\cdot ⟨T⟩}{⟨p1⟩ - ⟨p2⟩}",
        List.of(
            Term.of("t", "t", seconds(time), "s", 12),
            Term.of("ṁd", "\\dot m_d", demand.massFlow().kilogramsPerSecond(), "kg/s", 12),
            Term.of("ṁc", "\\dot m_c", delivery.massFlow().kilogramsPerSecond(), "kg/s", 12),
            Term.of("R", "R", AirState.GAS_CONSTANT, "J/(kg K)", 8),
            Term.of("T", "T", temperature.kelvins(), "K", 12),
            Term.of("p1", "p_1", start.pascals(), "Pa", 12),
            Term.of("p2", "p_2", least.pascals(), "Pa", 12)),
        Term.of("Vs", "V_s", needed, "m³", 4),
        SOURCE);
    if (pipes.cubicMetres() >= needed) {
      return working
          .note("The pipes alone store as much: no receiver is needed.")
          .build();
    }
    return working
        .step(
            "Volume of the receiver, the pipes taken off",
            "⟨V⟩ = ⟨Vs⟩ − ⟨Vp⟩",
            "⟨V⟩ = ⟨Vs⟩ - ⟨Vp⟩",
            List.of(
                Term.of("Vs", "V_s", needed, "m³", 12),
                Term.of("Vp", "V_p", pipes.cubicMetres(), "m³", 12)),
            Term.of("V", "V", volume().cubicMetres(), "m³", 4),
            SOURCE)
        .build();
  }
}
