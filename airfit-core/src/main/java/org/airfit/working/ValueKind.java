package org.airfit.working;

import java.util.Objects;
import org.airfit.internal.Digits;

/**
 * What kind of quantity a symbol stands for, and in which unit its value is printed in SI and in US units.
 *
 * <p>Values are passed in the coherent SI unit, the {@linkplain #base() base}, whatever unit they are printed in. Two
 * kinds with one base show the same quantity in different units: {@link #PRESSURE} a pressure as an equation needs
 * it, {@link #SAID_PRESSURE} as people say it. The kinds named after a unit print that unit in both systems.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ValueKind {

  private static final double POUND = 0.453_592_37;
  private static final double FOOT = 0.3048;
  private static final double INCH = 0.0254;
  private static final double RANKINE = 1.0 / 1.8;
  private static final double PSI_PASCALS = 6_894.757_293_168_361;

  /** 1 ft lbf/lb in J/kg: the standard acceleration of fall along one foot. */
  private static final double FOOT_POUND_PER_POUND = 9.806_65 * FOOT;

  /** A pure number. */
  public static final ValueKind NUMBER = only("", "", 1.0);
  /** A length in an equation: m or ft. */
  public static final ValueKind LENGTH = of("m", "m", 1.0, "ft", FOOT);
  /** A small length such as a wall: mm or in. */
  public static final ValueKind SMALL_LENGTH = of("m", "mm", 1.0e-3, "in", INCH);
  /** A small length in an equation without a square foot: m or in. */
  public static final ValueKind BORE = of("m", "m", 1.0, "in", INCH);
  /** An area: m² or ft². */
  public static final ValueKind AREA = of("m²", "m²", 1.0, "ft²", FOOT * FOOT);
  /** A volume: m³ or ft³. */
  public static final ValueKind VOLUME = of("m³", "m³", 1.0, "ft³", FOOT * FOOT * FOOT);
  /** A mass flow: kg/s or lb/s. */
  public static final ValueKind MASS_FLOW = of("kg/s", "kg/s", 1.0, "lb/s", POUND);
  /** A mass flow per area: kg/(s m²) or lb/(s ft²). */
  public static final ValueKind MASS_FLUX =
      of("kg/(s m²)", "kg/(s m²)", 1.0, "lb/(s ft²)", POUND / (FOOT * FOOT));
  /** An absolute pressure or a difference of pressures in an equation: Pa or psi. */
  public static final ValueKind PRESSURE = of("Pa", "Pa", 1.0, "psi", PSI_PASCALS);
  /** A pressure as people say it: bar or psi. */
  public static final ValueKind SAID_PRESSURE = of("Pa", "bar", 1.0e5, "psi", PSI_PASCALS);
  /** The square of a pressure: Pa² or psi². */
  public static final ValueKind PRESSURE_SQUARED =
      of("Pa²", "Pa²", 1.0, "psi²", PSI_PASCALS * PSI_PASCALS);
  /** A thermodynamic temperature: K or °R. */
  public static final ValueKind TEMPERATURE = of("K", "K", 1.0, "°R", RANKINE);
  /** A temperature as people say it: °C or °F. The value passed is in K. */
  public static final ValueKind SAID_TEMPERATURE =
      new ValueKind("K", new Unit("°C", 1.0, 273.15), new Unit("°F", RANKINE, 459.67 * RANKINE));
  /** A density: kg/m³ or lb/ft³. */
  public static final ValueKind DENSITY =
      of("kg/m³", "kg/m³", 1.0, "lb/ft³", POUND / (FOOT * FOOT * FOOT));
  /** A dynamic viscosity: Pa·s or lb/(ft s). */
  public static final ValueKind VISCOSITY = of("Pa·s", "Pa·s", 1.0, "lb/(ft s)", POUND / FOOT);
  /** A speed: m/s or ft/s. */
  public static final ValueKind VELOCITY = of("m/s", "m/s", 1.0, "ft/s", FOOT);
  /** A gas constant or a heat capacity: J/(kg K) or ft lbf/(lb °R). */
  public static final ValueKind HEAT_CAPACITY =
      of("J/(kg K)", "J/(kg K)", 1.0, "ft lbf/(lb °R)", FOOT_POUND_PER_POUND / RANKINE);
  /** An energy per mass: J/kg or ft lbf/lb. */
  public static final ValueKind ENERGY_PER_MASS =
      of("J/kg", "J/kg", 1.0, "ft lbf/lb", FOOT_POUND_PER_POUND);
  /** A sonic conductance: m³/(s·Pa) or ft³/(s·psi). */
  public static final ValueKind CONDUCTANCE =
      of("m³/(s·Pa)", "m³/(s·Pa)", 1.0, "ft³/(s·psi)", FOOT * FOOT * FOOT / PSI_PASCALS);
  /** A volume flow: m³/s or ft³/s. */
  public static final ValueKind VOLUME_FLOW = of("m³/s", "m³/s", 1.0, "ft³/s", FOOT * FOOT * FOOT);
  /** A flow of free air as people say it: m³/h or scfm. */
  public static final ValueKind FREE_AIR =
      of("m³/s", "m³/h", 1.0 / 3600.0, "scfm", FOOT * FOOT * FOOT / 60.0);
  /** A power: kW or hp (550 ft lbf/s). The value passed is in W. */
  public static final ValueKind POWER =
      of("W", "kW", 1_000.0, "hp", 550.0 * FOOT_POUND_PER_POUND * POUND);

  /** A length in mm. */
  public static final ValueKind MILLIMETRES = only("m", "mm", 1.0e-3);
  /** A length in in. */
  public static final ValueKind INCHES = only("m", "in", INCH);
  /** A length in ft. */
  public static final ValueKind FEET = only("m", "ft", FOOT);
  /** A length in m. */
  public static final ValueKind METRES = only("m", "m", 1.0);
  /** Threads per inch; the value passed is per inch too. */
  public static final ValueKind PER_INCH = only("1/in", "", 1.0);
  /** An angle in degrees; the value passed is in degrees too. */
  public static final ValueKind DEGREES = only("°", "°", 1.0);
  /** A pressure in Pa. */
  public static final ValueKind PASCALS = only("Pa", "Pa", 1.0);
  /** A pressure in psi. */
  public static final ValueKind PSI = only("Pa", "psi", PSI_PASCALS);
  /** An absolute pressure in psi, marked as such. */
  public static final ValueKind PSIA = only("Pa", "psia", PSI_PASCALS);
  /** A temperature in K. */
  public static final ValueKind KELVINS = only("K", "K", 1.0);
  /** A power in kW. The value passed is in W. */
  public static final ValueKind KILOWATTS = only("W", "kW", 1_000.0);
  /** An energy in kWh. The value passed is in J. */
  public static final ValueKind KILOWATT_HOURS = only("J", "kWh", 3.6e6);
  /** A time in s. */
  public static final ValueKind SECONDS = only("s", "s", 1.0);
  /** A time in h. The value passed is in s. */
  public static final ValueKind HOURS = only("s", "h", 3_600.0);
  /** A sum of money, in whatever currency the working names. */
  public static final ValueKind MONEY = only("money", "", 1.0);
  /** A price per kWh. The value passed is per kWh too. */
  public static final ValueKind MONEY_PER_KILOWATT_HOUR = only("money/kWh", "per kWh", 1.0);

  /** A unit, what one of it is worth in the base, and where its zero lies in the base. */
  private record Unit(String name, double worth, double zero) {}

  private final String base;
  private final Unit si;
  private final Unit us;

  private ValueKind(String base, Unit si, Unit us) {
    this.base = Objects.requireNonNull(base, "base");
    this.si = si;
    this.us = us;
  }

  /**
   * Obtains a kind that has a unit in each system.
   *
   * @param base the coherent SI unit in which values are passed, such as "Pa"
   * @param siUnit the unit printed in SI, such as "bar"; empty for none
   * @param siWorth what one of it is in the base, above 0
   * @param usUnit the unit printed in US units, such as "psi"; empty for none
   * @param usWorth what one of it is in the base, above 0
   * @return the kind
   * @throws IllegalArgumentException if a worth is not finite and above 0
   */
  public static ValueKind of(
      String base, String siUnit, double siWorth, String usUnit, double usWorth) {
    Objects.requireNonNull(siUnit, "siUnit");
    Objects.requireNonNull(usUnit, "usUnit");
    return new ValueKind(base, unit(siUnit, siWorth), unit(usUnit, usWorth));
  }

  /**
   * Obtains a kind that has one unit whatever the system, such as a formula made for pounds a minute.
   *
   * @param base the coherent SI unit in which values are passed, such as "kg/s"
   * @param unit the unit printed, such as "lb/min"; empty for none
   * @param worth what one of it is in the base, above 0
   * @return the kind
   * @throws IllegalArgumentException if {@code worth} is not finite and above 0
   */
  public static ValueKind only(String base, String unit, double worth) {
    Objects.requireNonNull(unit, "unit");
    return of(base, unit, worth, unit, worth);
  }

  private static Unit unit(String name, double worth) {
    if (!(worth > 0.0 && worth < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "worth of the unit \"" + name + "\" must be above 0, was " + Digits.told(worth));
    }
    return new Unit(Objects.requireNonNull(name, "unit"), worth, 0.0);
  }

  /** {@return the SI unit in which values are passed, such as "Pa"; empty for a pure number} */
  public String base() {
    return base;
  }

  /**
   * Tells the unit that is printed.
   *
   * @param units SI or US units
   * @return the unit, such as "bar"; empty for none
   */
  public String unit(UnitSystem units) {
    return shown(units).name;
  }

  /**
   * Turns a value in SI into the value that is printed.
   *
   * @param value the value in the base
   * @param units SI or US units
   * @return the value in the unit printed; infinite beyond the range of a double
   */
  public double shown(double value, UnitSystem units) {
    Unit unit = shown(units);
    return value / unit.worth - unit.zero / unit.worth;
  }

  /**
   * Turns a printed value into one in SI.
   *
   * @param shown the value in the unit printed
   * @param units SI or US units
   * @return the value in the base; infinite beyond the range of a double
   */
  public double value(double shown, UnitSystem units) {
    Unit unit = shown(units);
    return shown * unit.worth + unit.zero;
  }

  /**
   * Writes a value for a sentence.
   *
   * @param value the value in the base, finite
   * @param digits the number of significant digits, from 1 to 17
   * @param units SI or US units
   * @return the text, such as "6.2 bar"
   * @throws IllegalArgumentException if {@code value} is not finite or {@code digits} is out of range
   */
  public String format(double value, int digits, UnitSystem units) {
    String number = Digits.read(Digits.significant(shown(value, units), digits));
    return unit(units).isEmpty() ? number : number + " " + unit(units);
  }

  private Unit shown(UnitSystem units) {
    return units.either(si, us);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ValueKind that
        && base.equals(that.base)
        && si.equals(that.si)
        && us.equals(that.us);
  }

  @Override
  public int hashCode() {
    return Objects.hash(base, si, us);
  }

  /** {@return the units, such as "bar or psi"} */
  @Override
  public String toString() {
    if (si.name.isEmpty() && us.name.isEmpty()) {
      return "number";
    }
    return si.name.equals(us.name) ? si.name : si.name + " or " + us.name;
  }
}
