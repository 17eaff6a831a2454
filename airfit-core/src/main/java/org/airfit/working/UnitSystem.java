package org.airfit.working;

import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.PressureUnit;

/**
 * In which units a working shows its numbers. Each method takes a value in SI and obtains its term in these units.
 *
 * <p>In US units force and mass have units of their own: an equation then needs {@link #G_C} wherever they meet, and
 * 144 in²/ft² wherever a pressure meets a length. {@link #either} keeps the two forms of such an equation side by side.
 */
public enum UnitSystem {
  /** kg, m, s, K, Pa and bar. */
  SI(1.0, 1.0, 1.0, 1.0, "kg", "m", "K", "Pa"),
  /** lb, ft, s, °R and psi. */
  US(1.0 / 0.453_592_37, 1.0 / 0.3048, 1.8, 1.0 / 6_894.757_293_168_361, "lb", "ft", "°R", "psi");

  /** lb·ft/(lbf·s²), the standard acceleration of fall 9.80665 m/s² in ft/s², as it stands in equations in US units. */
  public static final String G_C = "32.17404856";

  private final double mass;
  private final double length;
  private final double temperature;
  private final double pressure;
  private final String massUnit;
  private final String lengthUnit;
  private final String temperatureUnit;
  private final String pressureUnit;

  UnitSystem(
      double mass,
      double length,
      double temperature,
      double pressure,
      String massUnit,
      String lengthUnit,
      String temperatureUnit,
      String pressureUnit) {
    this.mass = mass;
    this.length = length;
    this.temperature = temperature;
    this.pressure = pressure;
    this.massUnit = massUnit;
    this.lengthUnit = lengthUnit;
    this.temperatureUnit = temperatureUnit;
    this.pressureUnit = pressureUnit;
  }

  /**
   * Chooses between the two forms of an equation, a unit or a term.
   *
   * @param <T> what is chosen
   * @param si the form in SI
   * @param us the form in US units
   * @return the form in these units
   */
  public <T> T either(T si, T us) {
    return this == SI ? si : us;
  }

  /** {@return the unit of a mass flow in a sentence, kg/s or lb/s} */
  public MassFlowUnit massFlowUnit() {
    return either(MassFlowUnit.KILOGRAM_PER_SECOND, MassFlowUnit.POUND_PER_SECOND);
  }

  /** {@return the unit of a small length in a sentence, mm or in} */
  public LengthUnit smallLengthUnit() {
    return either(LengthUnit.MILLIMETRE, LengthUnit.INCH);
  }

  /** {@return the unit of a pressure in a sentence, bar or psi} */
  public PressureUnit pressureUnit() {
    return either(PressureUnit.BAR, PressureUnit.PSI);
  }

  /**
   * Obtains a mass flow, in kg/s or lb/s.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param kilogramsPerSecond the value [kg/s]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term massFlow(String symbol, String latex, double kilogramsPerSecond, int digits) {
    return Term.of(symbol, latex, mass * kilogramsPerSecond, massUnit + "/s", digits);
  }

  /**
   * Obtains a mass flow per area, in kg/(s m²) or lb/(s ft²).
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param kilograms the value [kg/(s m²)]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term massFlux(String symbol, String latex, double kilograms, int digits) {
    double value = mass / (length * length) * kilograms;
    return Term.of(symbol, latex, value, massUnit + "/(s " + lengthUnit + "²)", digits);
  }

  /**
   * Obtains a length, in m or ft.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param metres the value [m]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term length(String symbol, String latex, double metres, int digits) {
    return Term.of(symbol, latex, length * metres, lengthUnit, digits);
  }

  /**
   * Obtains a small length such as a bore, in mm or in.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param metres the value [m]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term smallLength(String symbol, String latex, double metres, int digits) {
    return Term.of(symbol, latex, metres / either(1.0e-3, 0.0254), either("mm", "in"), digits);
  }

  /**
   * Obtains an area, in m² or ft².
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param squareMetres the value [m²]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term area(String symbol, String latex, double squareMetres, int digits) {
    return Term.of(symbol, latex, length * length * squareMetres, lengthUnit + "²", digits);
  }

  /**
   * Obtains a volume, in m³ or ft³.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param cubicMetres the value [m³]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term volume(String symbol, String latex, double cubicMetres, int digits) {
    double value = length * length * length * cubicMetres;
    return Term.of(symbol, latex, value, lengthUnit + "³", digits);
  }

  /**
   * Obtains a thermodynamic temperature, in K or °R.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param kelvins the value [K]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term temperature(String symbol, String latex, double kelvins, int digits) {
    return Term.of(symbol, latex, temperature * kelvins, temperatureUnit, digits);
  }

  /**
   * Obtains an absolute pressure or a difference of pressures for an equation, in Pa or psi.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param pascals the value [Pa]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term pressure(String symbol, String latex, double pascals, int digits) {
    return Term.of(symbol, latex, pressure * pascals, pressureUnit, digits);
  }

  /**
   * Obtains a pressure as people say it, in bar or psi.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param pascals the value [Pa]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term saidPressure(String symbol, String latex, double pascals, int digits) {
    return either(
        Term.of(symbol, latex, pascals / 1.0e5, "bar", digits),
        pressure(symbol, latex, pascals, digits));
  }

  /**
   * Obtains a density, in kg/m³ or lb/ft³.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param kilogramsPerCubicMetre the value [kg/m³]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term density(String symbol, String latex, double kilogramsPerCubicMetre, int digits) {
    double value = mass / (length * length * length) * kilogramsPerCubicMetre;
    return Term.of(symbol, latex, value, massUnit + "/" + lengthUnit + "³", digits);
  }

  /**
   * Obtains a dynamic viscosity, in Pa·s or lb/(ft s).
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param pascalSeconds the value [Pa·s]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term viscosity(String symbol, String latex, double pascalSeconds, int digits) {
    double value = mass / length * pascalSeconds;
    return Term.of(symbol, latex, value, either("Pa·s", "lb/(ft s)"), digits);
  }

  /**
   * Obtains a speed, in m/s or ft/s.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param metresPerSecond the value [m/s]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term velocity(String symbol, String latex, double metresPerSecond, int digits) {
    return Term.of(symbol, latex, length * metresPerSecond, lengthUnit + "/s", digits);
  }

  /**
   * Obtains a gas constant or a heat capacity, in J/(kg K) or ft lbf/(lb °R).
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param joules the value [J/(kg K)]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term heatCapacity(String symbol, String latex, double joules, int digits) {
    double value = specificEnergy() / temperature * joules;
    return Term.of(symbol, latex, value, either("J/(kg K)", "ft lbf/(lb °R)"), digits);
  }

  /**
   * Obtains an energy per mass, in J/kg or ft lbf/lb.
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param joules the value [J/kg]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term energyPerMass(String symbol, String latex, double joules, int digits) {
    return Term.of(symbol, latex, specificEnergy() * joules, either("J/kg", "ft lbf/lb"), digits);
  }

  /** A J/kg is an ft lbf/lb this many times: m²/s² over the acceleration of fall, in ft. */
  private double specificEnergy() {
    return either(1.0, length / 9.80665);
  }

  /**
   * Obtains a sonic conductance, in m³/(s·Pa) or ft³/(s·psi).
   *
   * @param symbol the symbol in plain text
   * @param latex the symbol in LaTeX
   * @param conductance the value [m³/(s·Pa)]
   * @param digits the number of significant digits
   * @return the term
   */
  public Term conductance(String symbol, String latex, double conductance, int digits) {
    double value = length * length * length / pressure * conductance;
    return Term.of(symbol, latex, value, lengthUnit + "³/(s·" + pressureUnit + ")", digits);
  }
}
