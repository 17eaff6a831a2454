package org.airfit.plant;

import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/**
 * What a piston compressor loses to the air left in its clearance, and so to the thin air of a height.
 *
 * <pre>
 *   ηv = 1 − c (r^(1/γ) − 1),  r = (p2/p1)^(1/z)
 *   p1 = 101325 (1 − 2.25577·10⁻⁵ h)^5.25588
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>ηv</td><td>volume taken in over volume swept</td><td>-</td></tr>
 * <tr><td>c</td><td>clearance over swept volume of a stage</td><td>-</td></tr>
 * <tr><td>p1, p2</td><td>pressure of the intake and discharge, absolute</td><td>Pa</td></tr>
 * <tr><td>z</td><td>stages of equal pressure ratio r</td><td>-</td></tr>
 * <tr><td>γ</td><td>1.4 of dry air</td><td>-</td></tr>
 * <tr><td>h</td><td>height above the sea</td><td>m</td></tr>
 * </tbody>
 * </table>
 *
 * <p>The air left in the clearance expands before new air comes in, the more the higher the ratio. At a height the
 * gauge at the discharge shows the same while the intake is thinner: the ratio rises. Leaks of
 * valves and rings and the heating of the intake are left out, as are rotary compressors, which have no clearance to
 * speak of. <b>Source:</b> clearance and re-expansion as in
 * textbooks of compressors, and pressure over height of the International Standard Atmosphere (ISO 2533), up to 11
 * 000 m; both from memory.
 *
 * @param stages the stages, in [1, 10]
 * @param clearance the clearance of a stage over its swept volume [-], in [0, 0.5]
 */
public record PistonCompressor(int stages, double clearance) {

  private static final double HIGHEST_METRES = 11_000.0;
  private static final Source EXPANSION =
      Source.fromMemory("re-expansion of the clearance, textbooks of compressors");
  private static final Source ATMOSPHERE =
      Source.fromMemory("ISO 2533, International Standard Atmosphere");

  private static final Symbol HEIGHT = Symbol.of("h", ValueKind.LENGTH);
  private static final Symbol GAUGE = Symbol.of("g", ValueKind.PRESSURE);
  private static final Symbol SEA_PRESSURE = Symbol.of("ps", ValueKind.PRESSURE);
  private static final Symbol INTAKE = Symbol.of("p1", ValueKind.PRESSURE);
  private static final Symbol CLEARANCE = Symbol.of("c", ValueKind.NUMBER);
  private static final Symbol RATIO = Symbol.of("γ", ValueKind.NUMBER);
  private static final Symbol STAGES = Symbol.of("z", ValueKind.NUMBER);
  private static final Symbol AT_SEA = Symbol.of("ηs", ValueKind.NUMBER);
  private static final Symbol AT_HEIGHT = Symbol.of("ηh", ValueKind.NUMBER);
  private static final Symbol VOLUME_SHARE = Symbol.of("x", ValueKind.NUMBER);
  private static final Symbol MASS_SHARE = Symbol.of("y", ValueKind.NUMBER);

  private static final Formula THIN_AIR = Formula.of(
      "Pressure of the atmosphere at that height",
      "⟨p1⟩ = [101325|14.695948776] × (1 − [2.25577e-5|6.87558696e-6] × ⟨h⟩)^5.25588",
      ATMOSPHERE,
      INTAKE,
      HEIGHT);

  private static final Formula BY_THE_SEA = Formula.of(
      "Volume taken in at sea level, over the volume swept",
      "⟨ηs⟩ = 1 − ⟨c⟩ × (((⟨g⟩ + ⟨ps⟩) / ⟨ps⟩)^(1 / (⟨γ⟩ × ⟨z⟩)) − 1)",
      EXPANSION,
      AT_SEA,
      CLEARANCE,
      GAUGE,
      SEA_PRESSURE,
      RATIO,
      STAGES);

  private static final Formula THERE = Formula.of(
      "Volume taken in at that height, over the volume swept",
      "⟨ηh⟩ = 1 − ⟨c⟩ × (((⟨g⟩ + ⟨p1⟩) / ⟨p1⟩)^(1 / (⟨γ⟩ × ⟨z⟩)) − 1)",
      EXPANSION,
      AT_HEIGHT,
      CLEARANCE,
      GAUGE,
      INTAKE,
      RATIO,
      STAGES);

  private static final Formula OF_VOLUME = Formula.of(
      "Volume delivered, over that at sea level",
      "⟨x⟩ = ⟨ηh⟩ / ⟨ηs⟩",
      EXPANSION,
      VOLUME_SHARE,
      AT_HEIGHT,
      AT_SEA);

  private static final Formula OF_MASS = Formula.of(
      "Mass delivered, over that at sea level, at one temperature of the intake",
      "⟨y⟩ = ⟨x⟩ × ⟨p1⟩ / ⟨ps⟩",
      EXPANSION,
      MASS_SHARE,
      VOLUME_SHARE,
      INTAKE,
      SEA_PRESSURE);

  /**
   * Checks the components.
   *
   * @param stages the stages, in [1, 10]
   * @param clearance the clearance of a stage over its swept volume [-], in [0, 0.5]
   * @throws IllegalArgumentException if an argument is out of range
   */
  public PistonCompressor {
    if (stages < 1 || stages > 10) {
      throw new IllegalArgumentException("stages must be in [1, 10], was " + stages);
    }
    if (!(clearance >= 0.0 && clearance <= 0.5)) {
      throw new IllegalArgumentException(
          "clearance must be in [0, 0.5], was " + Digits.told(clearance));
    }
  }

  /**
   * Finds the pressure of the standard atmosphere at a height.
   *
   * @param height the height above the sea, at most 11 000 m
   * @return the pressure
   * @throws IllegalArgumentException if {@code height} is out of range
   */
  public static AbsolutePressure atmosphereAt(Length height) {
    Objects.requireNonNull(height, "height");
    if (!(height.metres() <= HIGHEST_METRES)) {
      throw new IllegalArgumentException(
          "height must be in [0, 11000] m, was " + Digits.inFull(height.metres()) + " m");
    }
    return AbsolutePressure.ofPascals(
        101_325.0 * Math.pow(1.0 - 2.25577e-5 * height.metres(), 5.25588));
  }

  /**
   * Finds the volume taken in over the volume swept.
   *
   * @param intake the pressure of the intake, above a vacuum
   * @param discharge the pressure to reach, at least that of the intake
   * @return ηv [-]; 0 where the air left in the clearance fills the whole stroke and nothing is delivered
   * @throws IllegalArgumentException if a pressure is out of range
   */
  public double volumetricEfficiency(AbsolutePressure intake, AbsolutePressure discharge) {
    Objects.requireNonNull(intake, "intake");
    Objects.requireNonNull(discharge, "discharge");
    if (!(intake.pascals() > 0.0 && discharge.compareTo(intake) >= 0)) {
      throw new IllegalArgumentException(
          "discharge pressure must be at least that of the intake, and"
              + " that above 0 Pa(a), was " + discharge.shown() + " and " + intake.shown());
    }
    double ratio = Math.pow(discharge.pascals() / intake.pascals(), 1.0 / stages);
    double left = clearance * (Math.pow(ratio, 1.0 / AirState.HEAT_CAPACITY_RATIO) - 1.0);
    return Math.max(0.0, 1.0 - left);
  }

  /**
   * Finds what volume of free air it delivers at a height, over what it delivers by the sea against the same gauge.
   *
   * <p>Counted in the air of the place. In mass it delivers less still, in proportion to the pressure of that air.
   *
   * @param height the height above the sea, at most 11 000 m
   * @param discharge what the gauge at the discharge shows
   * @return the share [-]
   * @throws IllegalArgumentException if {@code height} is out of range, {@code discharge} is below the
   *     atmosphere, or nothing is delivered by the sea
   */
  public double volumeShareAt(Length height, GaugePressure discharge) {
    Objects.requireNonNull(height, "height");
    Objects.requireNonNull(discharge, "discharge");
    double bySea = efficiencyAt(Length.ofMetres(0.0), discharge);
    if (bySea == 0.0) {
      throw new IllegalArgumentException(
          "discharge pressure must be one it reaches by the sea, was " + discharge.shown()
              + "; give a smaller clearance or more stages");
    }
    return efficiencyAt(height, discharge) / bySea;
  }

  /**
   * Finds what mass of air it delivers at a height, over what it delivers by the sea against the same gauge, at one
   * temperature of the intake.
   *
   * @param height the height above the sea, at most 11 000 m
   * @param discharge what the gauge at the discharge shows
   * @return the share [-]
   * @throws IllegalArgumentException as for {@link #volumeShareAt}
   */
  public double massShareAt(Length height, GaugePressure discharge) {
    return volumeShareAt(height, discharge)
        * atmosphereAt(height).pascals()
        / atmosphereAt(Length.ofMetres(0.0)).pascals();
  }

  private double efficiencyAt(Length height, GaugePressure discharge) {
    AbsolutePressure intake = atmosphereAt(height);
    return volumetricEfficiency(intake, discharge.absolute(intake));
  }

  /**
   * Tells how the shares at a height were found.
   *
   * @param height the height above the sea, at most 11 000 m
   * @param discharge what the gauge at the discharge shows
   * @param units the units to show numbers in
   * @return the working
   * @throws IllegalArgumentException as for {@link #volumeShareAt}
   */
  public Working working(Length height, GaugePressure discharge, UnitSystem units) {
    double share = volumeShareAt(height, discharge);
    Working.Builder working =
        Working.titled("What a piston compressor delivers at a height", units);
    if (share == 0.0) {
      return working
          .answer("Nothing: the air left in the clearance fills the whole stroke.")
          .build();
    }
    Length sea = Length.ofMetres(0.0);
    return working
        .given(HEIGHT, height.metres(), 6)
        .step(THIN_AIR, atmosphereAt(height).pascals(), 4)
        .given(CLEARANCE, clearance, 6)
        .given(GAUGE, discharge.pascals(), 6)
        .given(SEA_PRESSURE, atmosphereAt(sea).pascals(), 6)
        .given(RATIO, AirState.HEAT_CAPACITY_RATIO, 3)
        .given(STAGES, stages, 2)
        .step(BY_THE_SEA, efficiencyAt(sea, discharge), 4)
        .step(THERE, efficiencyAt(height, discharge), 4)
        .step(OF_VOLUME, share, 4)
        .step(OF_MASS, massShareAt(height, discharge), 4)
        .answer(VOLUME_SHARE, MASS_SHARE)
        .build();
  }
}
