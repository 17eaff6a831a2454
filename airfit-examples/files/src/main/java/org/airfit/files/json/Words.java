package org.airfit.files.json;

import com.fasterxml.jackson.databind.JavaType;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.measure.Instrument;
import org.airfit.plug.Dimension;
import org.airfit.quantity.AreaUnit;
import org.airfit.quantity.ConductanceUnit;
import org.airfit.quantity.DensityUnit;
import org.airfit.quantity.EnergyUnit;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.Money;
import org.airfit.quantity.PowerUnit;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Quantity;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.Range;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.quantity.Unit;
import org.airfit.quantity.VelocityUnit;
import org.airfit.quantity.ViscosityUnit;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.quantity.VolumeUnit;
import org.airfit.select.RuleOutcome;
import org.airfit.thread.ThreadFamily;

/** Values that are one text: what has a {@code parse}, words of enums, times and days. */
final class Words {

  /** The units that people type, the usual ones first; what is typed in another is written in the SI unit. */
  private static final Map<Class<?>, List<? extends Unit>> USUAL = Map.ofEntries(
      Map.entry(
          LengthUnit.class,
          List.of(LengthUnit.MILLIMETRE, LengthUnit.INCH, LengthUnit.METRE, LengthUnit.FOOT)),
      Map.entry(
          PressureUnit.class,
          List.of(
              PressureUnit.BAR,
              PressureUnit.PSI,
              PressureUnit.KILOPASCAL,
              PressureUnit.MILLIBAR,
              PressureUnit.PASCAL)),
      Map.entry(
          VolumeFlowUnit.class,
          List.of(
              VolumeFlowUnit.LITRE_PER_SECOND,
              VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE,
              VolumeFlowUnit.LITRE_PER_MINUTE,
              VolumeFlowUnit.CUBIC_METRE_PER_MINUTE,
              VolumeFlowUnit.CUBIC_METRE_PER_HOUR)),
      Map.entry(
          TemperatureUnit.class,
          List.of(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT, TemperatureUnit.KELVIN)),
      Map.entry(
          VolumeUnit.class,
          List.of(
              VolumeUnit.LITRE,
              VolumeUnit.US_GALLON,
              VolumeUnit.CUBIC_METRE,
              VolumeUnit.CUBIC_FOOT)),
      Map.entry(
          AreaUnit.class,
          List.of(AreaUnit.SQUARE_MILLIMETRE, AreaUnit.SQUARE_INCH, AreaUnit.SQUARE_METRE)),
      Map.entry(
          MassFlowUnit.class,
          List.of(
              MassFlowUnit.KILOGRAM_PER_SECOND,
              MassFlowUnit.GRAM_PER_SECOND,
              MassFlowUnit.KILOGRAM_PER_HOUR,
              MassFlowUnit.POUND_PER_MINUTE)),
      Map.entry(
          ConductanceUnit.class,
          List.of(
              ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR,
              ConductanceUnit.LITRE_PER_MINUTE_BAR,
              ConductanceUnit.CUBIC_METRE_PER_SECOND_PASCAL)),
      Map.entry(PowerUnit.class, List.of(PowerUnit.KILOWATT, PowerUnit.HORSEPOWER, PowerUnit.WATT)),
      Map.entry(EnergyUnit.class, List.of(EnergyUnit.KILOWATT_HOUR, EnergyUnit.JOULE)),
      Map.entry(
          DensityUnit.class,
          List.of(DensityUnit.KILOGRAM_PER_CUBIC_METRE, DensityUnit.POUND_PER_CUBIC_FOOT)),
      Map.entry(
          VelocityUnit.class, List.of(VelocityUnit.METRE_PER_SECOND, VelocityUnit.FOOT_PER_SECOND)),
      Map.entry(
          ViscosityUnit.class,
          List.of(ViscosityUnit.MICROPASCAL_SECOND, ViscosityUnit.PASCAL_SECOND)));

  /** Enums that are told by a word of their own, not by the name of the constant and not by their text. */
  private static final Map<Class<?>, Function<Object, String>> OWN = Map.of(
      Dimension.class, value -> ((Dimension) value).label(),
      Instrument.class, value -> ((Instrument) value).label(),
      ThreadFamily.class, value -> ((ThreadFamily) value).symbol(),
      RuleOutcome.class, value -> camel(((RuleOutcome) value).name()));

  private static final Set<Unit> FROM_ONE_UP = Set.of(
      LengthUnit.METRE,
      LengthUnit.FOOT,
      VolumeUnit.CUBIC_METRE,
      VolumeUnit.CUBIC_FOOT,
      VolumeFlowUnit.CUBIC_METRE_PER_MINUTE);

  private static final String TO = " to ";

  private static final Pattern TIME = Pattern.compile("([0-9]{1,12}(?:\\.[0-9]{1,9})?) ?(s|min|h)");

  private static final Map<String, Long> SECONDS = Map.of("s", 1L, "min", 60L, "h", 3600L);

  private static final ClassValue<Method[]> PARSE = new ClassValue<>() {
    @Override
    protected Method[] computeValue(Class<?> type) {
      return parsers(type);
    }
  };

  private Words() {}

  /** The factory that reads a type, or none: its own, or that of the sealed type it belongs to. */
  private static Method[] parsers(Class<?> type) {
    for (Method method : type.getDeclaredMethods()) {
      if (method.getName().equals("parse")
          && method.getParameterCount() == 1
          && method.getParameterTypes()[0].equals(String.class)
          && method.getReturnType().isAssignableFrom(type)) {
        return new Method[] {method};
      }
    }
    for (Class<?> above : type.getInterfaces()) {
      Method[] found = above.isSealed() ? parsers(above) : new Method[0];
      if (found.length > 0) {
        return found;
      }
    }
    return new Method[0];
  }

  /** Whether values of this type are one text. */
  static boolean isWord(Class<?> type) {
    return type.isEnum()
        || type.equals(String.class)
        || type.equals(Duration.class)
        || type.equals(LocalDate.class)
        || type.equals(BigDecimal.class)
        || type.equals(Range.class)
        || Quantity.class.isAssignableFrom(type)
        || Enum.class.isAssignableFrom(type)
        || PARSE.get(type).length > 0;
  }

  /** The text of a value. */
  static String of(Object value) {
    if (value instanceof Quantity<?, ?> quantity) {
      return ofQuantity(quantity);
    }
    if (value instanceof Range<?> range) {
      return ofRange(range);
    }
    if (value instanceof Enum<?> constant) {
      return ofEnum(constant);
    }
    if (value instanceof Duration time) {
      return new BigDecimal(time.getSeconds())
              .add(BigDecimal.valueOf(time.getNano(), 9))
              .stripTrailingZeros()
              .toPlainString()
          + " s";
    }
    if (value instanceof Money money) {
      String typed = money.amount().toPlainString() + " " + money.currency(); // 12.50 stays 12.50
      return reads(typed, money) ? typed : money.toString();
    }
    if (value instanceof BigDecimal number) {
      return number.toPlainString();
    }
    return value.toString();
  }

  private static String ofEnum(Enum<?> constant) {
    Class<?> type = constant.getDeclaringClass();
    Function<Object, String> own = OWN.get(type);
    if (own != null) {
      return own.apply(constant);
    }
    return PARSE.get(type).length > 0 ? constant.toString() : camel(constant.name());
  }

  /** NOT_TO_BE_RELIED_ON becomes notToBeReliedOn. */
  private static String camel(String name) {
    StringBuilder word = new StringBuilder();
    for (String piece : name.split("_", -1)) {
      String small = piece.toLowerCase(Locale.ROOT);
      word.append(
          word.length() == 0
              ? small
              : small.substring(0, 1).toUpperCase(Locale.ROOT) + small.substring(1));
    }
    return word.toString();
  }

  /** All words of an enum. */
  static List<String> ofAll(Class<?> type) {
    return List.of(type.getEnumConstants()).stream().map(Words::of).toList();
  }

  /** In the usual unit in which it has the fewest digits; in the SI unit where no usual one holds it. */
  private static <Q extends Quantity<Q, U>, U extends Unit> String ofQuantity(
      Quantity<Q, U> quantity) {
    String shortest = quantity.toString();
    int least = Integer.MAX_VALUE;
    for (U unit : usual(quantity.siUnit())) {
      String text = quantity.inFull(unit);
      if (digits(text) < least && suits(quantity.in(unit), unit) && reads(text, quantity)) {
        shortest = text;
        least = digits(text);
      }
    }
    return shortest;
  }

  /** Whether people would say it in this unit: nobody says 0.1 m for 100 mm. */
  private static boolean suits(double value, Unit unit) {
    return Math.abs(value) >= 1.0 || !FROM_ONE_UP.contains(unit);
  }

  /** The units of the table are those of the key. */
  @SuppressWarnings("unchecked")
  private static <U extends Unit> List<U> usual(U si) {
    return (List<U>) USUAL.getOrDefault(si.getClass(), List.of());
  }

  /** How many digits stand to the left of the unit, zeros in front of them not counted. */
  private static int digits(String text) {
    String number = text.substring(0, Math.max(0, text.indexOf(' ')));
    return number.replaceAll("[^0-9E]", "").replaceAll("^0+", "").length();
  }

  private static boolean reads(String text, Object value) {
    try {
      return value.equals(parse(value.getClass(), text));
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  private static String ofRange(Range<?> range) {
    Quantity<?, ?> least = range.least();
    Quantity<?, ?> most = range.most();
    return range.isExact() ? ofQuantity(least) : inOneUnit(least, most);
  }

  /** Both ends in the usual unit that holds both, such as "25 to 30 ft", or each in its own. */
  private static String inOneUnit(Quantity<?, ?> least, Quantity<?, ?> most) {
    List<String> of = spellings(least);
    List<String> to = spellings(most);
    String shortest = ofQuantity(least) + TO + ofQuantity(most);
    int digits = Integer.MAX_VALUE;
    for (int i = 0; i < of.size(); i++) {
      String one = of.get(i);
      String other = to.get(i);
      int needed = digits(one) + digits(other);
      if (!one.isEmpty()
          && !other.isEmpty()
          && needed < digits
          && behindNumber(one).equals(behindNumber(other))) {
        shortest = one.substring(0, one.indexOf(' ')) + TO + other;
        digits = needed;
      }
    }
    return shortest;
  }

  /** A quantity in each usual unit; empty where a unit does not hold it to the last bit. */
  private static <Q extends Quantity<Q, U>, U extends Unit> List<String> spellings(
      Quantity<Q, U> quantity) {
    return usual(quantity.siUnit()).stream()
        .map(quantity::inFull)
        .map(text -> reads(text, quantity) ? text : "")
        .toList();
  }

  private static String behindNumber(String text) {
    return text.substring(Math.max(0, text.indexOf(' ')));
  }

  /**
   * Reads a text.
   *
   * @throws IllegalArgumentException if it is no such value; its message says what is accepted
   */
  static Object read(JavaType type, String text) {
    Class<?> raw = type.getRawClass();
    if (raw.equals(String.class)) {
      return text;
    }
    if (raw.equals(Range.class)) {
      return range(type.containedTypeOrUnknown(0).getRawClass(), text);
    }
    if (raw.equals(Duration.class)) {
      return time(text);
    }
    if (raw.equals(LocalDate.class)) {
      try {
        return LocalDate.parse(text);
      } catch (DateTimeParseException e) {
        throw new IllegalArgumentException("is no day; accepted: a day such as 2026-11-28", e);
      }
    }
    if (raw.isEnum()) {
      return constant(raw, text);
    }
    return parse(raw, text);
  }

  private static Object constant(Class<?> type, String text) {
    for (Object constant : type.getEnumConstants()) {
      if (of(constant).equals(text)) {
        return constant;
      }
    }
    throw new IllegalArgumentException(
        "is not known here; accepted: " + String.join(", ", ofAll(type)));
  }

  private static Duration time(String text) {
    Matcher time = TIME.matcher(text);
    if (!time.matches()) {
      throw new IllegalArgumentException(
          "is no time; accepted: a number of s, min or h such as 40 s");
    }
    BigDecimal seconds = new BigDecimal(time.group(1))
        .multiply(BigDecimal.valueOf(SECONDS.getOrDefault(time.group(2), 1L)));
    return Duration.ofSeconds(
        seconds.longValue(), seconds.remainder(BigDecimal.ONE).movePointRight(9).longValue());
  }

  /** The type parameter is checked by nobody but the reader of the quantity. */
  @SuppressWarnings({"unchecked", "rawtypes"})
  private static Object range(Class<?> of, String text) {
    Function<String, Quantity> reader = each -> (Quantity) parse(of, each);
    return Range.parse(text, (Function) reader);
  }

  private static Object parse(Class<?> type, String text) {
    Method[] found = PARSE.get(type);
    if (found.length == 0) {
      throw new IllegalArgumentException("is an answer of airfit, which nobody can hand in");
    }
    try {
      return found[0].invoke(null, text);
    } catch (InvocationTargetException e) {
      if (e.getCause() instanceof QuantityFormatException slip) {
        throw new IllegalArgumentException(
            slip.problem() + (slip.accepted().isEmpty() ? "" : "; accepted: " + slip.accepted()),
            slip);
      }
      if (e.getCause() instanceof IllegalArgumentException refused) {
        throw refused;
      }
      throw new IllegalStateException("parse of " + type.getName() + " failed", e);
    } catch (IllegalAccessException e) {
      throw new IllegalStateException("parse of " + type.getName() + " must be public", e);
    }
  }
}
