package org.airfit.plant;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
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
 * <p>At the temperature of the reference state this is V = 14.7 t (Qd − Qc)/(p1 − p2) of the handbooks. The
 * temperature is taken to hold; a fast emptying cools the air, and
 * the pressure then falls further. <b>Source:</b> Esposito, Fluid Power with Applications, section 13;
 * MIL-HDBK-1028/6A, table 2, for the pipes.
 *
 * <p>The receiver that carries a draw:
 *
 * <pre>{@code
 * import java.time.Duration;
 * import java.util.Locale;
 * import org.airfit.plant.ReceiverSize;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.quantity.Volume;
 *
 * class CarriesADraw {
 *   public static void main(String[] args) {
 *     ReceiverSize size = new ReceiverSize(
 *         FreeAirFlow.parse("60 L/s ANR"),
 *         FreeAirFlow.parse("40 L/s ANR"),
 *         Duration.ofSeconds(30),
 *         AbsolutePressure.parse("8 bar(a)"),
 *         AbsolutePressure.parse("7 bar(a)"),
 *         Temperature.parse("20 °C"),
 *         Volume.parse("0 L"));
 *     System.out.printf(Locale.ROOT, "%.0f L%n", size.volume().litres()); // 598 L
 *   }
 * }
 * }</pre>
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
    Volume pipes)
    implements Worked {

  private static final Source SOURCE = Source.handbook(
      "Esposito, Fluid Power with Applications, example 13-7; MIL-HDBK-1028/6A, table 2, for the pipes");

  private static final Symbol TIME = Symbol.of("t", ValueKind.SECONDS);
  private static final Symbol TAKEN = Symbol.of("ṁd", ValueKind.MASS_FLOW);
  private static final Symbol DELIVERED = Symbol.of("ṁc", ValueKind.MASS_FLOW);
  private static final Symbol GAS_CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  private static final Symbol START = Symbol.of("p1", ValueKind.PRESSURE);
  private static final Symbol LEAST = Symbol.of("p2", ValueKind.PRESSURE);
  private static final Symbol STORING = Symbol.of("Vs", ValueKind.VOLUME);
  private static final Symbol PIPES = Symbol.of("Vp", ValueKind.VOLUME);
  private static final Symbol RECEIVER = Symbol.of("V", ValueKind.VOLUME);

  private static final Formula STORES = Formula.of(
      "Volume that stores what is lacking",
      "⟨Vs⟩ = ⟨t⟩ × (⟨ṁd⟩ − ⟨ṁc⟩) × ⟨R⟩ × ⟨T⟩ / ([144] × (⟨p1⟩ − ⟨p2⟩))",
      SOURCE,
      STORING,
      TIME,
      TAKEN,
      DELIVERED,
      GAS_CONSTANT,
      KELVINS,
      START,
      LEAST);

  private static final Formula LESS_PIPES = Formula.of(
      "Volume of the receiver, the pipes taken off",
      "⟨V⟩ = ⟨Vs⟩ − ⟨Vp⟩",
      SOURCE,
      RECEIVER,
      STORING,
      PIPES);

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
   * @throws IllegalArgumentException if an argument is out of range
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
      throw new IllegalArgumentException("delivery must be at most the demand, " + demand.shown()
          + ", was " + delivery.shown() + "; no receiver is needed");
    }
    if (time.isNegative()) {
      throw new IllegalArgumentException("time must be at least 0 s, was " + Seconds.told(time));
    }
    if (least.compareTo(start) >= 0) {
      throw new IllegalArgumentException("least pressure must be below that at the start, "
          + start.shown() + ", was " + least.shown());
    }
    if (!(temperature.kelvins() > 0.0)) {
      throw new IllegalArgumentException("temperature must be above 0 K, was "
          + Digits.significant(temperature.kelvins(), 12) + " K");
    }
  }

  private double lacking() {
    return demand.massFlow().kilogramsPerSecond() - delivery.massFlow().kilogramsPerSecond();
  }

  private double stores() {
    return Seconds.of(time)
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
    return List.of(SafetyRules.usFederal().reminder("Receiver protection"));
  }

  @Override
  public Working working(UnitSystem units) {
    double needed = stores();
    Working.Builder working = Working.titled("Volume of the receiver", units)
        .given(TIME, Seconds.of(time), 6)
        .given(TAKEN, demand.massFlow().kilogramsPerSecond(), 6)
        .given(DELIVERED, delivery.massFlow().kilogramsPerSecond(), 6)
        .given(GAS_CONSTANT, AirState.GAS_CONSTANT, 8)
        .given(KELVINS, temperature.kelvins(), 6)
        .given(START, start.pascals(), 6)
        .given(LEAST, least.pascals(), 6)
        .step(STORES, needed, 4);
    if (pipes.cubicMetres() >= needed) {
      return working
          .answer(STORING)
          .answer("The pipes alone store as much: no receiver is needed.")
          .build();
    }
    return working
        .given(PIPES, pipes.cubicMetres(), 6)
        .step(LESS_PIPES, volume().cubicMetres(), 4)
        .answer(RECEIVER)
        .build();
  }
}
