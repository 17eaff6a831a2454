package org.airfit.line;

import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Temperature;

/**
 * A drop read from the handbook table of schedule 40 pipe, carried over to another line.
 *
 * <pre>
 *   Δp = Δp100 (L/100 ft) (114.7/(P + 14.7)) ((460 + t)/520) (d40/d)⁵
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>Δp100</td><td>the table's drop over 100 ft, for air of 100 psig and 60 °F</td><td>psi</td></tr>
 * <tr><td>P, t</td><td>pressure and temperature of the line</td><td>psig, °F</td></tr>
 * <tr><td>d40, d</td><td>bore of the table's pipe and of the line</td><td>in</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Holds for drops below a tenth of the absolute pressure, and for bores near the table's: the friction factor is
 * taken along unchanged. <b>Source:</b> R. Darby and R. P. Chhabra, <cite>Chemical Engineering Fluid
 * Mechanics</cite>, 3rd ed., appendix G; the table is that of Crane TP-410.
 *
 * @param printed the drop the table prints for 100 ft
 * @param tableBore the bore of the pipe the table means
 * @param pressure the pressure of the line, as a gauge at sea level reads it
 * @param temperature the temperature of the air
 * @param conduit the line; its roughness does not enter, its fittings are refused
 */
record TableCorrection(
    PressureDrop printed,
    Length tableBore,
    GaugePressure pressure,
    Temperature temperature,
    Conduit conduit) {

  private static final double ATMOSPHERE_PSI = 14.7;
  private static final double RANKINE_AT_ZERO = 460.0;

  /**
   * Checks the components.
   *
   * @param printed the drop the table prints for 100 ft
   * @param tableBore the bore of the pipe the table means
   * @param pressure the pressure of the line, as a gauge at sea level reads it
   * @param temperature the temperature of the air
   * @param conduit the line; its roughness does not enter, its fittings are refused
   * @throws IllegalArgumentException if there is no bore, the line is in vacuum or has fittings
   */
  TableCorrection {
    if (!(tableBore.metres() > 0.0)) {
      throw new IllegalArgumentException(
          "bore of the table's pipe must be above 0 in, was " + tableBore.format(LengthUnit.INCH));
    }
    if (pressure.pascals() < 0.0) {
      throw new IllegalArgumentException("pressure of the line must be at least 0 psi(g), was "
          + pressure.format(PressureUnit.PSI));
    }
    if (conduit.fittingLoss() != 0.0) {
      throw new IllegalArgumentException("sum of fitting losses K must be 0, was "
          + conduit.fittingLoss()
          + "; the table knows no fittings: give their equivalent length with the conduit");
    }
  }

  private double fahrenheit() {
    return temperature.kelvins() * 1.8 - 459.67;
  }

  /** {@return the drop of the line} */
  public PressureDrop drop() {
    double bores = tableBore.metres() / conduit.bore().metres();
    return PressureDrop.ofPascals(printed.pascals()
        * conduit.length().feet()
        / 100.0
        * (100.0 + ATMOSPHERE_PSI)
        / (pressure.psi() + ATMOSPHERE_PSI)
        * (RANKINE_AT_ZERO + fahrenheit())
        / (RANKINE_AT_ZERO + 60.0)
        * Math.pow(bores, 5.0));
  }
}
