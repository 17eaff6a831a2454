package org.airfit.working;

import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.AreaUnit;
import org.airfit.quantity.ConductanceUnit;
import org.airfit.quantity.DensityUnit;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.PowerUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.quantity.Unit;
import org.airfit.quantity.Velocity;
import org.airfit.quantity.VelocityUnit;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.quantity.VolumeUnit;

/**
 * In which units sentences and workings show their numbers. {@link #say} writes a quantity for a sentence, with no more
 * digits than it is worth; a {@code ValueKind} knows the unit of a quantity in the equations of a working.
 *
 * <p>In US units force and mass have units of their own: an equation then needs {@link #G_C} wherever they meet, and
 * 144 in²/ft² wherever a pressure meets a length. A {@link Formula} has both forms from one definition.
 *
 * <p>One value, as people say it in either system:
 *
 * <pre>{@code
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.Length;
 * import org.airfit.working.UnitSystem;
 *
 * class SaidInBoth {
 *   public static void main(String[] args) {
 *     GaugePressure atTool = GaugePressure.parse("6.2 bar(g)");
 *     System.out.println(UnitSystem.SI.say(atTool)); // 6.2 bar(g)
 *     System.out.println(UnitSystem.US.sayBoth(atTool)); // 89.9 psig (6.2 bar(g))
 *     System.out.println(UnitSystem.US.sayBore(Length.parse("9.5 mm"))); // 3/8 in
 *   }
 * }
 * }</pre>
 */
public enum UnitSystem {
  /** kg, m, s, K, Pa and bar. */
  SI,
  /** lb, ft, s, °R and psi. */
  US;

  /** lb·ft/(lbf·s²), the standard acceleration of fall 9.80665 m/s² in ft/s², as it stands in equations in US units. */
  public static final String G_C = "32.17404856";

  /** A bore that lies within so much of a size in inches is called by that size [m]. */
  private static final double NAMED = 1.0e-4;

  /** The sizes in inches by which bores are called. */
  private static final List<String> INCH_NAMES = List.of(
      "1/8", "3/16", "1/4", "5/16", "3/8", "1/2", "5/8", "3/4", "1", "1 1/4", "1 1/2", "2", "2 1/2",
      "3", "4");

  /** The units of the United States. */
  private static final Set<Unit> OF_US = Set.of(
      LengthUnit.INCH,
      LengthUnit.FOOT,
      LengthUnit.YARD,
      LengthUnit.MILE,
      LengthUnit.MIL,
      AreaUnit.SQUARE_INCH,
      AreaUnit.SQUARE_FOOT,
      VolumeUnit.CUBIC_FOOT,
      VolumeUnit.CUBIC_INCH,
      VolumeUnit.US_GALLON,
      PressureUnit.PSI,
      PressureUnit.KSI,
      PressureUnit.POUND_PER_SQUARE_FOOT,
      PressureUnit.INCH_OF_MERCURY,
      PressureUnit.INCH_OF_WATER,
      VolumeFlowUnit.CUBIC_FOOT_PER_SECOND,
      VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE,
      VolumeFlowUnit.CUBIC_FOOT_PER_HOUR,
      MassFlowUnit.POUND_PER_SECOND,
      MassFlowUnit.POUND_PER_MINUTE,
      MassFlowUnit.POUND_PER_HOUR,
      DensityUnit.POUND_PER_CUBIC_FOOT,
      TemperatureUnit.FAHRENHEIT,
      TemperatureUnit.RANKINE,
      VelocityUnit.FOOT_PER_SECOND,
      VelocityUnit.FOOT_PER_MINUTE,
      PowerUnit.HORSEPOWER);

  /** Units that both use, or neither. */
  private static final Set<Unit> OF_NEITHER =
      Set.of(PressureUnit.ATMOSPHERE, PowerUnit.ELECTRIC_HORSEPOWER, VolumeUnit.IMPERIAL_GALLON);

  /** From here on a pressure in bar or psi, or a velocity, has no decimals to tell; no air has so much. */
  private static final double LARGEST_SAID = 1.0e9;

  /** A difference of pressures [Pa] that is no more than what the sums behind it round off; our choice. */
  private static final double ROUNDING = 1.0e-3;

  /** What sums and changes of unit leave open of a number that was typed, as a part of it or of one. */
  private static final double CONVERTED = 1.0e-10;

  /** From so many feet on a length is told with a digit more. */
  private static final double LONG_FEET = 1000.0;

  /** The same in metres. */
  private static final double LONG_METRES = 10.0;

  /** More decimals than a pressure in bar or psi is worth. */
  private static final int MOST_DECIMALS = 9;

  /** More digits than a length or a temperature is worth. */
  private static final int MOST_DIGITS = 12;

  /** Two numbers that differ by less than this part are one: what a sum and a change of unit round, and no more [-]. */
  private static final double SAME = 1.0e-12;

  /**
   * Chooses between the two forms of a unit, a symbol or a number of decimals.
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
   * Tells to which system a unit belongs.
   *
   * @param unit a unit
   * @return its system; empty for what belongs to neither, such as the standard atmosphere
   */
  public static Optional<UnitSystem> of(Unit unit) {
    Objects.requireNonNull(unit, "unit");
    if (OF_NEITHER.contains(unit)) {
      return Optional.empty();
    }
    return Optional.of(OF_US.contains(unit) ? US : SI);
  }

  /** {@return the other system, which stands in brackets where that helps} */
  public UnitSystem other() {
    return either(US, SI);
  }

  /**
   * Writes a gauge pressure: one that was typed with the digits it was typed with, such as 15 bar, one that was
   * computed with two decimals in bar or one in psi, be they zeros.
   *
   * @param pressure the pressure
   * @return such as "6.21 bar(g)", "15 bar(g)", or "90 psig"
   */
  public String say(GaugePressure pressure) {
    return withDecimals(pressure, decimals());
  }

  /**
   * Writes a gauge pressure that is compared with others: with as many decimals more as tell it from each. Where each
   * of two is written beside the other, the two numbers lie the same way round as the pressures.
   *
   * @param pressure the pressure
   * @param others what it is compared with
   * @return such as "6.2053 bar(g)" beside 6.2054 bar(g)
   */
  public String say(GaugePressure pressure, GaugePressure... others) {
    return said(pressure, RoundingMode.HALF_EVEN, others);
  }

  /**
   * Writes a gauge pressure that something has at least, or from which it goes on: rounded down, so that it is no more.
   *
   * @param pressure the pressure
   * @param others what it is compared with, as by {@link #say(GaugePressure, GaugePressure...)}
   * @return such as "4.49 bar(g)" of 4.499 bar(g)
   */
  public String sayAtLeast(GaugePressure pressure, GaugePressure... others) {
    return said(pressure, RoundingMode.FLOOR, others);
  }

  /**
   * Writes a gauge pressure that something has at most, or up to which it goes: rounded up, so that it is no less.
   *
   * @param pressure the pressure
   * @param others what it is compared with, as by {@link #say(GaugePressure, GaugePressure...)}
   * @return such as "4.51 bar(g)" of 4.501 bar(g)
   */
  public String sayAtMost(GaugePressure pressure, GaugePressure... others) {
    return said(pressure, RoundingMode.CEILING, others);
  }

  private String said(GaugePressure pressure, RoundingMode rounding, GaugePressure... others) {
    int decimals = decimals();
    for (GaugePressure other : Objects.requireNonNull(others, "others")) {
      decimals = telling(
          decimals,
          MOST_DECIMALS,
          pressure.pascals() - Objects.requireNonNull(other, "other").pascals(),
          SAME * Math.max(Math.abs(pressure.pascals()), Math.abs(other.pascals())),
          more ->
              number(withDecimals(pressure, more, rounding)) - number(withDecimals(other, more)));
    }
    return withDecimals(pressure, decimals, rounding);
  }

  /**
   * With how many digits two values are told in the order in which they lie, from some on; with those where they differ
   * by no more than what a sum and a change of unit round.
   */
  private static int telling(
      int least, int most, double apart, double same, IntToDoubleFunction printed) {
    int digits = least;
    while (digits < most
        && Math.abs(apart) > same
        && Math.signum(printed.applyAsDouble(digits)) != Math.signum(apart)) {
      digits++;
    }
    return digits;
  }

  /** The number in front of a unit. */
  private static double number(String told) {
    return Double.parseDouble(told.substring(0, told.indexOf(' ')));
  }

  private int decimals() {
    return either(2, 1);
  }

  private String withDecimals(GaugePressure pressure, int decimals) {
    return withDecimals(pressure, decimals, RoundingMode.HALF_EVEN);
  }

  private String withDecimals(GaugePressure pressure, int decimals, RoundingMode rounding) {
    double value = pressure.in(pressureUnit());
    if (!(Math.abs(value) < LARGEST_SAID)) {
      return Digits.told(value) + either(" bar(g)", " psig");
    }
    return worth(value, decimals + 1, decimals, rounding) + either(" bar(g)", " psig");
  }

  /**
   * Writes a gauge pressure that is not known exactly.
   *
   * @param range between which pressures it lies
   * @return such as "80 to 90 psig"; one pressure where both ends are written alike
   */
  public String sayRange(Range<GaugePressure> range) {
    String least = say(Objects.requireNonNull(range, "range").least());
    String most = say(range.most());
    return least.equals(most) ? most : least.substring(0, least.indexOf(' ')) + " to " + most;
  }

  /**
   * Writes a gauge pressure in these units, and in the other behind it.
   *
   * @param pressure the pressure
   * @return such as "6.21 bar(g) (90 psig)"
   */
  public String sayBoth(GaugePressure pressure) {
    return say(pressure) + " (" + other().say(pressure) + ")";
  }

  /**
   * Writes a gauge pressure that is compared with another, in these units, and in the other behind it.
   *
   * @param pressure the pressure
   * @param other what it is compared with
   * @return such as "6.2053 bar(g) (90.001 psig)" beside 6.2054 bar(g)
   */
  public String sayBoth(GaugePressure pressure, GaugePressure other) {
    return say(pressure, other) + " (" + other().say(pressure, other) + ")";
  }

  /**
   * Writes a gauge pressure that something has at least in these units, and in the other behind it: both rounded down.
   *
   * @param pressure the pressure
   * @param others what it is compared with, as by {@link #say(GaugePressure, GaugePressure...)}
   * @return such as "6.20 bar(g) (89.9 psig)"
   */
  public String sayBothAtLeast(GaugePressure pressure, GaugePressure... others) {
    return sayAtLeast(pressure, others) + " (" + other().sayAtLeast(pressure, others) + ")";
  }

  /**
   * Writes a gauge pressure that something has at most in these units, and in the other behind it: both rounded up.
   *
   * @param pressure the pressure
   * @param others what it is compared with, as by {@link #say(GaugePressure, GaugePressure...)}
   * @return such as "6.21 bar(g) (90.1 psig)"
   */
  public String sayBothAtMost(GaugePressure pressure, GaugePressure... others) {
    return sayAtMost(pressure, others) + " (" + other().sayAtMost(pressure, others) + ")";
  }

  /**
   * Writes a gauge pressure that is not known exactly in these units, and in the other behind it.
   *
   * @param range between which pressures it lies
   * @return such as "80 to 90 psig (5.52 to 6.21 bar(g))"
   */
  public String sayBothOfRange(Range<GaugePressure> range) {
    return sayRange(range) + " (" + other().sayRange(range) + ")";
  }

  /**
   * Writes an absolute pressure.
   *
   * @param pressure the pressure
   * @return such as "1.013 bar(a)", or "14.7 psia"
   */
  public String say(AbsolutePressure pressure) {
    return pressure.format(pressureUnit());
  }

  /**
   * Writes a difference of pressures. One that is lost among the digits is told as less than the last of them, so that
   * only what loses nothing is told as 0.
   *
   * @param drop the difference
   * @return such as "0.34 bar", "4.9 psi", or "{@literal <} 0.1 psi"
   */
  public String say(PressureDrop drop) {
    boolean isLost = Double.parseDouble(Digits.fixed(drop.in(pressureUnit()), decimals())) == 0.0;
    if (isLost && drop.pascals() > ROUNDING) {
      return either("< 0.01 bar", "< 0.1 psi");
    }
    return worth(drop.in(pressureUnit()), decimals(), decimals()) + either(" bar", " psi");
  }

  /**
   * Writes a difference of pressures in these units, and in the other behind it.
   *
   * @param drop the difference
   * @return such as "4.9 psi (0.34 bar)"
   */
  public String sayBoth(PressureDrop drop) {
    return say(drop) + " (" + other().say(drop) + ")";
  }

  /**
   * Writes a length as of a pipe, a hose or a reach with three digits, as nobody lays a hose to a hundredth of a foot or
   * a millimetre; from 10 m and from 1000 ft on with four.
   *
   * @param length the length
   * @return such as "10 m", or "30 ft"
   */
  public String say(Length length) {
    return withDigits(length, digits(length));
  }

  /**
   * Writes a length that is compared with another, with as many digits more as tell it from that.
   *
   * @param length the length
   * @param other what it is compared with
   * @return such as "9.998 ft" beside 10 ft
   */
  public String say(Length length, Length other) {
    int digits = telling(
        digits(length),
        MOST_DIGITS,
        length.metres() - other.metres(),
        SAME * Math.max(length.metres(), other.metres()),
        more -> number(withDigits(length, more)) - number(withDigits(other, more)));
    return withDigits(length, digits);
  }

  private int digits(Length length) {
    boolean isLong =
        this == SI ? length.metres() >= LONG_METRES : length.in(LengthUnit.FOOT) >= LONG_FEET;
    return isLong ? 4 : 3;
  }

  private String withDigits(Length length, int digits) {
    LengthUnit unit = either(LengthUnit.METRE, LengthUnit.FOOT);
    return Digits.significant(length.in(unit), digits) + " " + unit.symbol();
  }

  /**
   * Writes a bore; in US units by the size that the trade calls it, where one lies within 0.1 mm.
   *
   * @param bore the bore
   * @return such as "9.5 mm", "3/8 in", "0.824 in"
   */
  public String sayBore(Length bore) {
    if (this == SI) {
      return bore.format(LengthUnit.MILLIMETRE);
    }
    for (String name : INCH_NAMES) {
      String size = name + " in";
      if (Math.abs(bore.metres() - Length.parse(size).metres()) <= NAMED) {
        return size;
      }
    }
    return shortened(bore.in(LengthUnit.INCH), 3) + " in";
  }

  /**
   * Writes a small length that a caliper measures.
   *
   * @param length the length
   * @return such as "11.92 mm", or "0.4693 in"
   */
  public String saySmall(Length length) {
    return length.format(smallLengthUnit());
  }

  /**
   * Writes a temperature.
   *
   * @param temperature the temperature
   * @return such as "20 °C", or "68 °F"
   */
  public String say(Temperature temperature) {
    return temperature.format(either(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT));
  }

  /**
   * Writes a temperature that is compared with another, with as many digits more as tell it from that.
   *
   * @param temperature the temperature
   * @param other what it is compared with
   * @return such as "60.001 °C" beside 60 °C
   */
  public String say(Temperature temperature, Temperature other) {
    int digits = telling(
        /* least= */ 4,
        MOST_DIGITS,
        temperature.kelvins() - other.kelvins(),
        SAME * Math.max(temperature.kelvins(), other.kelvins()),
        more -> number(withDigits(temperature, more)) - number(withDigits(other, more)));
    return withDigits(temperature, digits);
  }

  private String withDigits(Temperature temperature, int digits) {
    TemperatureUnit unit = either(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT);
    return Digits.significant(temperature.in(unit), digits) + " " + unit.symbol();
  }

  /**
   * Writes a velocity.
   *
   * @param velocity the velocity
   * @return such as "9.1 m/s", or "30 ft/s"
   */
  public String say(Velocity velocity) {
    VelocityUnit unit = either(VelocityUnit.METRE_PER_SECOND, VelocityUnit.FOOT_PER_SECOND);
    return velocity.in(unit) < LARGEST_SAID
        ? velocity.format(unit, either(1, 0))
        : velocity.format(unit);
  }

  /**
   * Writes a mass flow.
   *
   * @param flow the flow
   * @return such as "0.0127 kg/s", or "0.02799 lb/s"
   */
  public String say(MassFlow flow) {
    return flow.format(massFlowUnit());
  }

  /**
   * Writes the sonic conductance of a part.
   *
   * @param conductance the conductance
   * @return such as "8.6 dm³/(s·bar)", or "0.02094 ft³/(s·psi)"
   */
  public String say(SonicConductance conductance) {
    return this == SI
        ? conductance.format(ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR)
        : Digits.significant(
                conductance.cubicMetresPerSecondPascal()
                    * PressureUnit.PSI.toSi(1.0)
                    / VolumeUnit.CUBIC_FOOT.toSi(1.0),
                4)
            + " ft³/(s·psi)";
  }

  /**
   * Writes a flow of free air. It keeps the state at which it is counted, unless that belongs to the other system: the
   * standard cubic foot is counted at ANR in SI, and ANR, DIN 1343 and ISO 1217 at 60 °F and 14.7 psia in US units.
   *
   * @param flow the flow
   * @return such as "10.7 L/s ANR", "22 scfm", "22 scfm (68 °F)"
   */
  public String say(FreeAirFlow flow) {
    FreeAirFlow here = counted(flow);
    if (this == SI) {
      return flowNumber(here.litresPerSecond()) + " L/s " + here.reference().name();
    }
    String number = flowNumber(here.cubicFeetPerMinute());
    if (here.reference().equals(ReferenceState.SCFM_60F)) {
      return number + " scfm"; // whoever types a bare scfm has it counted at 60 °F
    }
    return number
        + (here.reference().equals(ReferenceState.SCFM_68F)
            ? " scfm (68 °F)"
            : " cfm " + here.reference().name());
  }

  /**
   * Counts a flow of free air at the state at which {@link #say(FreeAirFlow)} writes it.
   *
   * @param flow the flow
   * @return the same flow, counted at the state of this system
   */
  public FreeAirFlow counted(FreeAirFlow flow) {
    return flow.at(state(Objects.requireNonNull(flow, "flow").reference()));
  }

  /** The state at which a flow is counted here. */
  private ReferenceState state(ReferenceState typed) {
    boolean standardFoot =
        typed.equals(ReferenceState.SCFM_60F) || typed.equals(ReferenceState.SCFM_68F);
    if (this == SI) {
      return standardFoot ? ReferenceState.ANR : typed;
    }
    return !standardFoot && ReferenceState.wellKnown().contains(typed)
        ? ReferenceState.SCFM_60F
        : typed;
  }

  /** One decimal, and below ten three digits. */
  private static String flowNumber(double value) {
    return value < 10.0 ? Digits.significant(value, 3) : shortened(value, 1);
  }

  /**
   * A number that somebody typed as it was typed, with so many decimals at most; what was computed with all decimals
   * that it is worth.
   */
  private static String worth(double value, int most, int decimals) {
    return worth(value, most, decimals, RoundingMode.HALF_EVEN);
  }

  private static String worth(double value, int most, int decimals, RoundingMode rounding) {
    for (int typed = 0; typed <= most; typed++) {
      String text = Digits.fixed(value, typed);
      if (Math.abs(Double.parseDouble(text) - value)
          <= CONVERTED * Math.max(1.0, Math.abs(value))) {
        return text;
      }
    }
    return turned(Digits.fixed(value, decimals), value, decimals, rounding);
  }

  /** A number that was rounded, by one of its last digit on the other side of the value if it is rounded elsewhere. */
  private static String turned(String fixed, double value, int decimals, RoundingMode rounding) {
    double number = Double.parseDouble(fixed);
    double last = Math.pow(10.0, -decimals);
    if (rounding == RoundingMode.FLOOR && number > value) {
      return Digits.fixed(number - last, decimals);
    }
    return rounding == RoundingMode.CEILING && number < value
        ? Digits.fixed(number + last, decimals)
        : fixed;
  }

  /** With so many decimals at most, and no zeros at their end. */
  private static String shortened(double value, int decimals) {
    String fixed = Digits.fixed(value, decimals);
    int end = fixed.length();
    while (fixed.charAt(end - 1) == '0') {
      end--;
    }
    return fixed.substring(0, fixed.charAt(end - 1) == '.' ? end - 1 : end);
  }

  /**
   * Writes a flow of free air in these units, and in the other behind it.
   *
   * @param flow the flow
   * @return such as "22 scfm (10.7 L/s ANR)"
   */
  public String sayBoth(FreeAirFlow flow) {
    return say(flow) + " (" + other().say(flow) + ")";
  }
}
