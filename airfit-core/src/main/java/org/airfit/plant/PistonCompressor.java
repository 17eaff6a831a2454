package org.airfit.plant;

import java.util.List;
import java.util.Objects;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.working.Term;
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
 * <p>The air left in the clearance expands before new air comes in, the more the higher the ratio. At a height the gauge at the discharge shows the same while the intake is thinner: the ratio rises. Leaks of
 * valves and rings and the heating of the intake are left out, as are rotary compressors, which have no clearance to speak of. <b>Source:</b> clearance and re-expansion as in
 * textbooks of compressors, and pressure over height of the International Standard Atmosphere (ISO 2533), up to 11 000 m; both from memory.
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

  /**
   * Checks the components.
   *
   * @param stages the stages, in [1, 10]
   * @param clearance the clearance of a stage over its swept volume [-], in [0, 0.5]
   */
  public PistonCompressor {
    if (stages < 1 || stages > 10) {
      throw new IllegalArgumentException("stages must be in [1, 10], was " + stages);
    }
    if (!(clearance >= 0.0 && clearance <= 0.5)) {
      throw new IllegalArgumentException("clearance must be in [0, 0.5], was " + clearance);
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
          "height must be in [0, 11000] m, was " + Digits.significant(height.metres(), 6) + " m");
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
              + " that above 0 Pa(a), was " + discharge + " and " + intake);
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
   * @throws IllegalArgumentException if {@code height} is out of range, {@code discharge} is below the atmosphere, or nothing is delivered by the sea
   */
  public double volumeShareAt(Length height, GaugePressure discharge) {
    Objects.requireNonNull(height, "height");
    Objects.requireNonNull(discharge, "discharge");
    double bySea = efficiencyAt(Length.ofMetres(0.0), discharge);
    if (bySea == 0.0) {
      throw new IllegalArgumentException(
          "discharge pressure must be one it reaches by the sea, was " + discharge
              + "; give a smaller clearance or more stages");
    }
    return efficiencyAt(height, discharge) / bySea;
  }

  /**
   * Finds what mass of air it delivers at a height, over what it delivers by the sea against the same gauge, at one temperature of the intake.
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
   * Tells how the share at a height was found.
   *
   * @param height the height above the sea, at most 11 000 m
   * @param discharge what the gauge at the discharge shows
   * @return the working
   * @throws IllegalArgumentException as for {@link #volumeShareAt}
   */
  public Working working(Length height, GaugePressure discharge) {
    double share = volumeShareAt(height, discharge);
    Working.Builder working = Working.titled("What a piston compressor delivers at a height");
    Length sea = Length.ofMetres(0.0);
    working.step(
        "Pressure of the atmosphere there",
        "⟨p1⟩ = 101325 × (1 − 2.25577 × 10^(−5) × ⟨h⟩)^5.25588",
        "⟨p1⟩ = 101325 \\left(1 - 2.25577 \\cdot 10^{-5} ⟨h⟩\\right)^{5.25588}",
        List.of(Term.of("h", "h", height.metres(), "m", 9)),
        Term.of("p1", "p_1", atmosphereAt(height).pascals(), "Pa", 6),
        ATMOSPHERE);
    efficiency(working, "ηs", "\\eta_s", "Volume taken in by the sea", sea, discharge);
    efficiency(working, "ηh", "\\eta_h", "Volume taken in there", height, discharge);
    return working
        .step(
            "Share of what it delivers by the sea",
            "⟨x⟩ = ⟨ηh⟩ / ⟨ηs⟩",
            "⟨x⟩ = \\frac{⟨ηh⟩}{⟨ηs⟩}",
            List.of(
                Term.of("ηh", "\\eta_h", efficiencyAt(height, discharge), "", 9),
                Term.of("ηs", "\\eta_s", efficiencyAt(sea, discharge), "", 9)),
            Term.of("x", "x", share, "", 4),
            EXPANSION)
        .build();
  }

  private void efficiency(
      Working.Builder working,
      String symbol,
      String latex,
      String title,
      Length height,
      GaugePressure discharge) {
    AbsolutePressure intake = atmosphereAt(height);
    working.step(
        title,
        "⟨" + symbol + "⟩ = 1 − ⟨c⟩ × ((⟨p2⟩ / ⟨p1⟩)^(1 / (⟨γ⟩ × ⟨z⟩)) − 1)",
        "⟨" + symbol
            + "⟩ = 1 - ⟨c⟩ \\left(\\left(\\frac{⟨p2⟩}{⟨p1⟩}\\right)^{\\frac{1}{⟨γ⟩ ⟨z⟩}} - 1\\right)",
        List.of(
            Term.of("c", "c", clearance, "", 9),
            Term.of("p2", "p_2", discharge.absolute(intake).pascals(), "Pa", 9),
            Term.of("p1", "p_1", intake.pascals(), "Pa", 9),
            Term.of("γ", "\\gamma", AirState.HEAT_CAPACITY_RATIO, "", 3),
            Term.of("z", "z", stages, "", 2)),
        Term.of(symbol, latex, efficiencyAt(height, discharge), "", 6),
        EXPANSION);
  }
}
