package org.airfit.quantity;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.internal.Saturation;
import org.airfit.source.Source;

/**
 * The temperature, pressure and humidity at which a volume of free air is counted.
 *
 * <p>A litre of free air is not one amount of air until its reference state is named: 100 scfm are 2914 L/min ANR where
 * the standard cubic foot is counted at 60 °F, and 2870 where it is counted at 68 °F.
 *
 * <p>One number of standard cubic feet, in two states:
 *
 * <pre>{@code
 * import org.airfit.quantity.ReferenceState;
 *
 * class WhichStandard {
 *   public static void main(String[] args) {
 *     System.out.println(ReferenceState.SCFM_60F); // 60 °F (15.56 °C, 101.353 kPa(a), dry)
 *     System.out.println(ReferenceState.NORMAL); // DIN 1343 (0 °C, 101.325 kPa(a), dry)
 *     System.out.println(ReferenceState.ANR.density().kilogramsPerCubicMetre()); // 1.185
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ReferenceState {

  /** Specific gas constant of dry air [J/(kg K)], ISO 2533. */
  private static final double GAS_CONSTANT = 287.05287;

  /**
   * The reference atmosphere of ISO 8778, marked ANR: 20 °C, 100 kPa, 65 % relative humidity. ISO 6358 counts its flows
   * here, at a density of 1.185 kg/m³.
   */
  public static final ReferenceState ANR = new ReferenceState(
      FreeAirMarks.ANR,
      Temperature.ofCelsius(20),
      AbsolutePressure.ofKilopascals(100),
      0.65,
      1.185,
      Source.fromMemory("ISO 8778:2003; density ISO 6358"));

  /** The normal state of DIN 1343: 0 °C, 101.325 kPa, dry. */
  public static final ReferenceState NORMAL = dry(
      FreeAirMarks.NORMAL,
      Temperature.ofCelsius(0),
      AbsolutePressure.STANDARD_ATMOSPHERE,
      Source.standard("DIN 1343:1990"));

  /** The standard cubic foot at 60 °F and 14.7 psia, dry, as handbooks of pipe flow count it. */
  public static final ReferenceState SCFM_60F = dry(
      FreeAirMarks.SCFM_60F,
      Temperature.ofFahrenheit(60),
      AbsolutePressure.ofPsi(14.7),
      Source.handbook("Crane TP-410, heading of the table of air flow through schedule 40 pipe"));

  /** The standard cubic foot at 68 °F and 14.7 psia, dry, as makers of pneumatic parts often count it. */
  public static final ReferenceState SCFM_68F = dry(
      FreeAirMarks.SCFM_68F,
      Temperature.ofFahrenheit(68),
      AbsolutePressure.ofPsi(14.7),
      Source.fromMemory("convention of US pneumatics: 68 °F, 14.7 psia"));

  /** The inlet state of ISO 1217, in which compressors are rated: 20 °C, 100 kPa, dry. */
  public static final ReferenceState COMPRESSOR_INLET = dry(
      FreeAirMarks.COMPRESSOR_INLET,
      Temperature.ofCelsius(20),
      AbsolutePressure.ofKilopascals(100),
      Source.fromMemory("ISO 1217:2009, standard inlet point"));

  /** Some order of states that differ, for what must have one. */
  static final Comparator<ReferenceState> ORDER = Comparator.comparing(ReferenceState::name)
      .thenComparing(ReferenceState::temperature)
      .thenComparing(ReferenceState::pressure)
      .thenComparing(ReferenceState::relativeHumidity)
      .thenComparing(ReferenceState::density);

  private final String name;
  private final Temperature temperature;
  private final AbsolutePressure pressure;
  private final double relativeHumidity;
  private final double kilogramsPerCubicMetre;
  private final Source source;

  private static final Grammar<Double> HUMIDITY = Grammar.ofWords(
      "relative humidity",
      Map.of("% humidity", 100.0, "% relative humidity", 100.0, "% RH", 100.0, "humidity", 1.0),
      Map.of(),
      "% humidity",
      List.of("65 % humidity", "dry"));

  private static final String ACCEPTED =
      "ANR, DIN 1343, ISO 1217, 60 °F, 68 °F, or a name and its state, such as"
          + " \"shop (15 °C, 100 kPa(a), dry)\"";

  private static final int LONGEST_NAME = 60;

  private ReferenceState(
      String name,
      Temperature temperature,
      AbsolutePressure pressure,
      double relativeHumidity,
      double kilogramsPerCubicMetre,
      Source source) {
    if (name.isBlank()) {
      throw new IllegalArgumentException("name of a reference state must not be blank");
    }
    if (name.length() > LONGEST_NAME) {
      throw new IllegalArgumentException("name of a reference state must have at most "
          + LONGEST_NAME + " characters, had " + name.length());
    }
    if (!(temperature.kelvins() >= 173.15 && temperature.kelvins() <= 373.15)) {
      throw new IllegalArgumentException("reference temperature must be in [-100, 100] °C, was "
          + Digits.inFull(temperature.celsius()) + " °C");
    }
    if (!(pressure.pascals() >= 50.0e3 && pressure.pascals() <= 200.0e3)) {
      throw new IllegalArgumentException("reference pressure must be in [50, 200] kPa(a), was "
          + Digits.inFull(pressure.kilopascals()) + " kPa(a)");
    }
    if (!(relativeHumidity >= 0.0 && relativeHumidity <= 1.0)) {
      throw new IllegalArgumentException(
          "relative humidity must be in [0, 1], was " + relativeHumidity);
    }
    if (relativeHumidity > 0.0 && temperature.kelvins() < 273.15) {
      throw new IllegalArgumentException(
          "temperature of a humid reference state must be in [0, 100] °C, was "
              + Digits.inFull(temperature.celsius()) + " °C");
    }
    if (!(vapourPascals(temperature, relativeHumidity) < pressure.pascals())) {
      throw new IllegalArgumentException("vapour pressure must lie below the reference pressure of "
          + Digits.inFull(pressure.kilopascals()) + " kPa(a), was "
          + Digits.inFull(vapourPascals(temperature, relativeHumidity) / 1000.0) + " kPa");
    }
    this.name = name;
    this.temperature = temperature;
    this.pressure = pressure;
    this.relativeHumidity = relativeHumidity;
    this.kilogramsPerCubicMetre = kilogramsPerCubicMetre;
    this.source = Objects.requireNonNull(source, "source");
  }

  private static ReferenceState dry(
      String name, Temperature temperature, AbsolutePressure pressure, Source source) {
    return new ReferenceState(
        name, temperature, pressure, 0.0, idealDensity(temperature, pressure), source);
  }

  /**
   * Obtains a state of the user's own.
   *
   * @param name how the state is marked behind a flow, such as "15 °C dry"; not a mark that {@link FreeAirFlow#parse}
   *     reads as a well-known state
   * @param temperature the temperature at which volumes are counted, in [-100, 100] °C
   * @param pressure the pressure at which volumes are counted, in [50, 200] kPa
   * @param relativeHumidity the relative humidity [-], in [0, 1]; 0 for dry air, and only 0 below 0 °C
   * @param source where the state comes from
   * @return the state, at the density of the ideal gas law for dry air
   * @throws IllegalArgumentException if an argument lies outside its range or {@code name} is taken
   */
  public static ReferenceState of(
      String name,
      Temperature temperature,
      AbsolutePressure pressure,
      double relativeHumidity,
      Source source) {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(temperature, "temperature");
    Objects.requireNonNull(pressure, "pressure");
    Objects.requireNonNull(source, "source");
    String known = FreeAirMarks.stateMarked(name);
    if (known != null) {
      throw new IllegalArgumentException("name of a reference state of your own must differ from "
          + wellKnown(known) + ", was \"" + name + "\"");
    }
    return new ReferenceState(
        name.strip(),
        temperature,
        pressure,
        relativeHumidity + 0.0,
        idealDensity(temperature, pressure),
        source);
  }

  /**
   * Reads a well-known state by its mark, or a state of the user's own as {@link #toString} writes it. A state that
   * is read has no source but the text.
   *
   * @param text a state, such as "ANR", "60 °F", "shop (15 °C, 100 kPa(a), dry)"
   * @return the state
   * @throws QuantityFormatException if the text is no reference state; it tells where and what would be accepted
   */
  public static ReferenceState parse(String text) {
    Grammar.requireShort(text, ACCEPTED);
    String mark = FreeAirMarks.stateMarked(text);
    if (mark != null) {
      return wellKnown(mark);
    }
    StateText parts = StateText.of(text);
    if (parts == null) {
      throw new QuantityFormatException(
          text,
          text.length(),
          "the temperature, pressure and humidity of the state are missing in a bracket at the end",
          ACCEPTED);
    }
    String name = text.substring(0, parts.open()).strip();
    String known = FreeAirMarks.stateMarked(name);
    if (known != null) {
      return wellKnown(known, text, parts);
    }
    Temperature temperature =
        Grammar.readPart(text, parts.open() + 1, parts.first(), Temperature::parse);
    AbsolutePressure pressure =
        Grammar.readPart(text, parts.first() + 1, parts.second(), AbsolutePressure::parse);
    double humidity =
        Grammar.readPart(text, parts.second() + 1, parts.close(), ReferenceState::humidity);
    try {
      return of(
          name, temperature, pressure, humidity, Source.fromMemory("typed in without a source"));
    } catch (IllegalArgumentException refused) {
      QuantityFormatException wrong =
          new QuantityFormatException(text, 0, String.valueOf(refused.getMessage()), ACCEPTED);
      wrong.initCause(refused);
      throw wrong;
    }
  }

  /** The well-known state of that name, if what stands in the bracket behind it is that state. */
  private static ReferenceState wellKnown(String name, String text, StateText parts) {
    ReferenceState state = wellKnown(name);
    if (!state.toString().equals(name + " " + text.substring(parts.open(), parts.close() + 1))) {
      throw new QuantityFormatException(
          text, parts.open(), "this mark has a state of its own: " + state, ACCEPTED);
    }
    return state;
  }

  private static double humidity(String text) {
    return text.strip().equals("dry")
        ? 0.0
        : HUMIDITY.read(text, (number, whole) -> number / whole);
  }

  private static double idealDensity(Temperature temperature, AbsolutePressure pressure) {
    return pressure.pascals() / (GAS_CONSTANT * temperature.kelvins());
  }

  private static double vapourPascals(Temperature temperature, double relativeHumidity) {
    return relativeHumidity == 0.0
        ? 0.0
        : relativeHumidity * Saturation.pressure(temperature.kelvins());
  }

  /** {@return the states that have a constant here} */
  public static List<ReferenceState> wellKnown() {
    return List.of(ANR, NORMAL, SCFM_60F, SCFM_68F, COMPRESSOR_INLET);
  }

  /** The well-known state of that name. */
  static ReferenceState wellKnown(String name) {
    return wellKnown().stream()
        .filter(state -> state.name.equals(name))
        .findFirst()
        .orElseThrow();
  }

  /** {@return how this state is marked behind a flow, such as "ANR"} */
  public String name() {
    return name;
  }

  /** {@return the temperature at which volumes are counted} */
  public Temperature temperature() {
    return temperature;
  }

  /** {@return the pressure at which volumes are counted} */
  public AbsolutePressure pressure() {
    return pressure;
  }

  /** {@return the relative humidity [-], 0 for dry air} */
  public double relativeHumidity() {
    return relativeHumidity;
  }

  /** {@return where this state comes from} */
  public Source source() {
    return source;
  }

  /**
   * The mass of air counted per volume, as the trade counts it: humidity is ignored.
   *
   * <pre>
   *   ρ = p / (R T),  R = 287.05287 J/(kg K)
   * </pre>
   *
   * <p>ANR alone has a density of its own, the 1.185 kg/m³ that ISO 6358 prescribes. It lies 0.28 % below dry air and
   * 0.29 % above air of 65 % humidity at that state.
   *
   * @return the density of the free air
   */
  public Density density() {
    return Density.ofKilogramsPerCubicMetre(kilogramsPerCubicMetre);
  }

  /**
   * The mass of dry air per volume, the water vapour taken off.
   *
   * <pre>
   *   ρ = (p − φ ps(T)) / (R T)
   * </pre>
   *
   * <p>φ is the relative humidity and ps the saturation pressure of water after Wagner and Pruss (1993).
   *
   * @return the density of the dry part of the air
   */
  public Density dryAirDensity() {
    return Density.ofKilogramsPerCubicMetre(
        (pressure.pascals() - vapourPascals(temperature, relativeHumidity))
            / (GAS_CONSTANT * temperature.kelvins()));
  }

  /**
   * The mass of the humid air per volume, water vapour and all: what a weighed litre would show.
   *
   * <pre>
   *   ρ = (p − φ ps(T)) / (R T) + φ ps(T) / (Rw T),  Rw = 461.523 J/(kg K)
   * </pre>
   *
   * @return the density of the humid air
   */
  public Density humidAirDensity() {
    return Density.ofKilogramsPerCubicMetre(dryAirDensity().kilogramsPerCubicMetre()
        + vapourPascals(temperature, relativeHumidity)
            / (Saturation.GAS_CONSTANT_OF_VAPOUR * temperature.kelvins()));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ReferenceState that
        && name.equals(that.name)
        && temperature.equals(that.temperature)
        && pressure.equals(that.pressure)
        && relativeHumidity == that.relativeHumidity
        && kilogramsPerCubicMetre == that.kilogramsPerCubicMetre;
  }

  @Override
  public int hashCode() {
    return 31 * (31 * name.hashCode() + temperature.hashCode()) + pressure.hashCode();
  }

  /** {@return the name and the state, such as "ANR (20 °C, 100 kPa(a), 65 % humidity)"; {@code parse} reads it back} */
  @Override
  public String toString() {
    boolean isWellKnown = FreeAirMarks.stateMarked(name) != null;
    String celsius = isWellKnown
        ? temperature.format(TemperatureUnit.CELSIUS)
        : Digits.plain(temperature.celsius()) + " °C";
    String absolute =
        isWellKnown ? Digits.significant(pressure.kilopascals(), 6) + " kPa(a)" : exact(pressure);
    return name + " (" + celsius + ", " + absolute + ", " + exactHumidity() + ")";
  }

  /** In kilopascals, unless the way there and back would not return to the same value. */
  private static String exact(AbsolutePressure pressure) {
    String kilopascals = Digits.plain(pressure.kilopascals()) + " kPa(a)";
    return AbsolutePressure.parse(kilopascals).equals(pressure) ? kilopascals : pressure.toString();
  }

  private String exactHumidity() {
    if (relativeHumidity == 0.0) {
      return "dry";
    }
    double percent = Math.rint(1.0e11 * relativeHumidity) / 1.0e9;
    return percent / 100.0 == relativeHumidity
        ? Digits.plain(percent) + " % humidity"
        : Digits.plain(relativeHumidity) + " humidity";
  }
}
