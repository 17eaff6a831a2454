package org.airfit.air;

import java.util.Objects;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Power;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * The work without losses that it takes to compress air from an intake to a pressure.
 *
 * <pre>
 *   isothermal  w = R T ln r
 *   adiabatic   w = z γ/(γ−1) R T (r^((γ−1)/(γ z)) − 1)
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>w</td><td>work on a kilogram of air</td><td>J/kg</td></tr>
 * <tr><td>r</td><td>pressure behind over pressure before, both absolute</td><td>-</td></tr>
 * <tr><td>T</td><td>temperature of the intake</td><td>K</td></tr>
 * <tr><td>z</td><td>stages of equal pressure ratio, cooled to T in between</td><td>-</td></tr>
 * <tr><td>R, γ</td><td>287.05287 and 1.4 of dry air</td><td>J/(kg K), -</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Per volume of intake air, R T ṁ is p1 Q: handbooks write the adiabatic power as p1 Q/65.4 (r^0.286 − 1) in psia,
 * ft³/min and hp, which is this with rounded constants. <b>Source:</b>
 * ideal gas in steady flow, as in Cengel and Boles, Thermodynamics, chapter 7.
 *
 * <p>Two stages with cooling between take less work than one:
 *
 * <pre>{@code
 * import java.util.Locale;
 * import org.airfit.air.AirState;
 * import org.airfit.air.Compression;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.Temperature;
 *
 * class TwoStages {
 *   public static void main(String[] args) {
 *     AirState intake = AirState.of(AbsolutePressure.STANDARD_ATMOSPHERE, Temperature.parse("20 °C"));
 *     AbsolutePressure discharge = AbsolutePressure.parse("8 bar(a)");
 *     double one = Compression.adiabatic(intake, discharge).joulesPerKilogram();
 *     double two = Compression.staged(intake, discharge, 2).joulesPerKilogram();
 *     System.out.printf(Locale.ROOT, "%.0f and %.0f kJ/kg%n", one / 1000.0, two / 1000.0);
 *     // 237 and 202 kJ/kg
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Compression implements Worked {

  private static final Source SOURCE = Source.handbook(
      "steady-flow work of an ideal gas, Cengel and Boles, Thermodynamics, chapter 7");

  private static final Symbol WORK = Symbol.of("w", ValueKind.ENERGY_PER_MASS);
  private static final Symbol GAS_CONSTANT_OF_AIR = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  private static final Symbol INTAKE = Symbol.of("p1", ValueKind.PRESSURE);
  private static final Symbol DISCHARGE = Symbol.of("p2", ValueKind.PRESSURE);
  private static final Symbol STAGES = Symbol.of("z", ValueKind.NUMBER);
  private static final Symbol RATIO = Symbol.of("γ", ValueKind.NUMBER);

  private static final Formula ISOTHERMAL = Formula.of(
      "Work at one temperature",
      "⟨w⟩ = ⟨R⟩ × ⟨T⟩ × ln(⟨p2⟩ / ⟨p1⟩)",
      SOURCE,
      WORK,
      GAS_CONSTANT_OF_AIR,
      KELVINS,
      DISCHARGE,
      INTAKE);

  private static final Formula ADIABATIC = Formula.of(
      "Work without heat",
      "⟨w⟩ = ⟨z⟩ × ⟨γ⟩ / (⟨γ⟩ − 1) × ⟨R⟩ × ⟨T⟩ × ((⟨p2⟩ / ⟨p1⟩)^((⟨γ⟩ − 1) / (⟨γ⟩ × ⟨z⟩)) − 1)",
      SOURCE,
      WORK,
      STAGES,
      RATIO,
      GAS_CONSTANT_OF_AIR,
      KELVINS,
      DISCHARGE,
      INTAKE);

  private static final int MOST_STAGES = 10;

  private final AirState intake;
  private final AbsolutePressure discharge;
  private final int stages; // 0 for isothermal

  private Compression(AirState intake, AbsolutePressure discharge, int stages) {
    Objects.requireNonNull(intake, "intake");
    Objects.requireNonNull(discharge, "discharge");
    if (discharge.compareTo(intake.pressure()) < 0) {
      throw new IllegalArgumentException("discharge pressure must be at least that of the intake, "
          + intake.pressure().shown() + ", was " + discharge.shown());
    }
    this.intake = intake;
    this.discharge = discharge;
    this.stages = stages;
  }

  /**
   * Obtains compression at one temperature: the least work there can be.
   *
   * @param intake the air taken in
   * @param discharge the pressure to reach
   * @return the compression
   * @throws IllegalArgumentException if {@code discharge} is below the intake
   */
  public static Compression isothermal(AirState intake, AbsolutePressure discharge) {
    return new Compression(intake, discharge, 0);
  }

  /**
   * Obtains compression in one stage without cooling (isentropic).
   *
   * @param intake the air taken in
   * @param discharge the pressure to reach
   * @return the compression
   * @throws IllegalArgumentException if {@code discharge} is below the intake
   */
  public static Compression adiabatic(AirState intake, AbsolutePressure discharge) {
    return new Compression(intake, discharge, 1);
  }

  /**
   * Obtains compression in stages of equal ratio, without cooling in them and cooled to the intake's temperature
   * between them.
   *
   * @param intake the air taken in
   * @param discharge the pressure to reach
   * @param stages the number of stages, in [1, 10]
   * @return the compression
   * @throws IllegalArgumentException if an argument is out of range
   */
  public static Compression staged(AirState intake, AbsolutePressure discharge, int stages) {
    if (stages < 1 || stages > MOST_STAGES) {
      throw new IllegalArgumentException("stages must be in [1, 10], was " + stages);
    }
    return new Compression(intake, discharge, stages);
  }

  /**
   * Obtains the same compression to another pressure.
   *
   * @param other the pressure to reach
   * @return this to {@code other}
   * @throws IllegalArgumentException if {@code other} is below the intake
   */
  public Compression to(AbsolutePressure other) {
    return new Compression(intake, Objects.requireNonNull(other, "other"), stages);
  }

  /** {@return the air taken in} */
  public AirState intake() {
    return intake;
  }

  /** {@return the pressure reached} */
  public AbsolutePressure discharge() {
    return discharge;
  }

  /** {@return the number of stages, 0 for isothermal compression} */
  public int stages() {
    return stages;
  }

  /** {@return the work on a kilogram of air, w [J/kg]} */
  public double joulesPerKilogram() {
    double rt = AirState.GAS_CONSTANT * intake.temperature().kelvins();
    double lnRatio = Math.log(discharge.pascals() / intake.pressure().pascals());
    if (stages == 0) {
      return rt * lnRatio;
    }
    double exponent = (AirState.HEAT_CAPACITY_RATIO - 1.0) / AirState.HEAT_CAPACITY_RATIO / stages;
    return rt / exponent * Math.expm1(exponent * lnRatio);
  }

  /**
   * Finds the power without losses that a flow takes.
   *
   * @param flow the flow
   * @return the power
   */
  public Power power(MassFlow flow) {
    return Power.ofWatts(
        Objects.requireNonNull(flow, "flow").kilogramsPerSecond() * joulesPerKilogram());
  }

  @Override
  public Working working(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    Working.Builder working = Working.titled("Work of " + in(units), units)
        .given(GAS_CONSTANT_OF_AIR, AirState.GAS_CONSTANT, 8)
        .given(KELVINS, intake.temperature().kelvins(), 6)
        .given(DISCHARGE, discharge.pascals(), 6)
        .given(INTAKE, intake.pressure().pascals(), 6);
    if (stages == 0) {
      return working.step(ISOTHERMAL, joulesPerKilogram(), 4).answer(WORK).build();
    }
    return working
        .given(STAGES, stages, 2)
        .given(RATIO, AirState.HEAT_CAPACITY_RATIO, 3)
        .step(ADIABATIC, joulesPerKilogram(), 4)
        .answer(WORK)
        .build();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Compression that
        && intake.equals(that.intake)
        && discharge.equals(that.discharge)
        && stages == that.stages;
  }

  @Override
  public int hashCode() {
    return 31 * (31 * intake.hashCode() + discharge.hashCode()) + stages;
  }

  private String in(UnitSystem units) {
    String kind = switch (stages) {
      case 0 -> "isothermal compression";
      case 1 -> "adiabatic compression";
      default -> "adiabatic compression in " + stages + " stages";
    };
    return kind + " from " + intake.pressure().format(units.pressureUnit()) + " to "
        + discharge.format(units.pressureUnit());
  }

  /** {@return the compression, such as "adiabatic compression in 2 stages from 1 bar(a) to 8 bar(a)"} */
  @Override
  public String toString() {
    return in(UnitSystem.SI);
  }
}
