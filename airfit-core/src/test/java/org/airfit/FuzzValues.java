package org.airfit;

import java.lang.reflect.Array;
import java.lang.reflect.Executable;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Proxy;
import java.lang.reflect.Type;
import java.lang.reflect.WildcardType;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.flow.FlowElement;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Quantity;
import org.airfit.quantity.Range;
import org.jspecify.annotations.Nullable;

/**
 * Draws arguments of any type for {@link Fuzzer}: numbers of every size, words broken in many ways, and values of the
 * library that earlier calls returned.
 */
final class FuzzValues {

  /** Values kept of each type; a newer one takes the place of an older one by chance. */
  private static final int KEPT = 150;

  /** Numbers reach from 10 to the minus this to 10 to this. Beyond, a change of unit or a square leaves a double. */
  private static final double LARGEST_POWER = 120.0;

  private static final double[] SPECIAL = {
    0.0,
    -0.0,
    1.0,
    -1.0,
    Double.NaN,
    Double.POSITIVE_INFINITY,
    Double.NEGATIVE_INFINITY,
    Double.MIN_VALUE,
    0.5,
    100.0,
    2300.0
  };

  private static final int[] SPECIAL_INTS = {
    0, 1, 2, 3, -1, 7, 100, 100_000, Integer.MAX_VALUE, Integer.MIN_VALUE
  };

  private static final List<String> WORDS = List.of(
      "",
      " ",
      "1/4 NPT male",
      "R 1/2",
      "G 3/8 female",
      "M22x1.5",
      "10 mm",
      "3/8 in",
      "1 1/2\"",
      "8.27 bar(a)",
      "90 psig",
      "-0.3 bar(g)",
      "20 °C",
      "68 °F",
      "34 scfm",
      "12 L/s ANR",
      "Kv 1.2",
      "1e-3 kg/s",
      "3 dm³/(s·bar)",
      "Darcy 0.02",
      "12.50 USD",
      "ISO 6150-B",
      "NaN bar",
      "Infinity mm",
      "-",
      "⟨p⟩ = ⟨q⟩ × 2",
      "1,5 mm",
      "1e999 m");

  private static final String ODD = "\u0000\t\n\u00a0\u2007\u2212\u200f\ufeff\ud83d\uffff⅜½″′×·³";

  private final Random random;
  private final Map<Class<?>, List<Object>> kept = new HashMap<>();
  private final List<Class<?>> types = new ArrayList<>();
  private int digits = 17;

  FuzzValues(Random random) {
    this.random = random;
  }

  /** From now on numbers have at most so many digits, as people type them. */
  void roundTo(int most) {
    digits = most;
  }

  /** Keeps a value for later arguments and receivers. */
  void keep(Object value) {
    Class<?> type = value.getClass();
    List<Object> others = kept.get(type);
    if (others == null) {
      others = new ArrayList<>();
      kept.put(type, others);
      types.add(type);
    }
    if (others.size() < KEPT) {
      others.add(value);
    } else {
      others.set(random.nextInt(KEPT), value);
    }
  }

  /** A value of a type or of one below it; null where none was kept. */
  @Nullable
  Object kept(Class<?> type) {
    List<Object> exact = kept.get(type);
    if (exact != null) {
      return exact.get(random.nextInt(exact.size()));
    }
    if (type.isInterface() || java.lang.reflect.Modifier.isAbstract(type.getModifiers())) {
      List<Class<?>> below = types.stream().filter(type::isAssignableFrom).toList();
      if (!below.isEmpty()) {
        List<Object> some = kept.get(below.get(random.nextInt(below.size())));
        return some.get(random.nextInt(some.size()));
      }
    }
    return null;
  }

  /** How many types have values. */
  int types() {
    return types.size();
  }

  /** Arguments for an executable; null where one of them cannot be had. */
  Object @Nullable [] arguments(Executable member) {
    Type[] asked = member.getGenericParameterTypes();
    Class<?>[] raw = member.getParameterTypes();
    Object[] arguments = new Object[raw.length];
    if (FlowElement.class.isAssignableFrom(member.getDeclaringClass()) && onDoubles(raw)) {
      for (int i = 0; i < raw.length; i++) {
        arguments[i] = Math.pow(10.0, 12.0 * random.nextDouble() - 6.0);
      }
      return arguments;
    }
    for (int i = 0; i < raw.length; i++) {
      Object one = value(asked.length == raw.length ? asked[i] : raw[i], 0);
      if (one == null) {
        return null;
      }
      arguments[i] = one;
    }
    return arguments;
  }

  /** The plain doubles of an element: its caller passes numbers above 0 only. */
  private static boolean onDoubles(Class<?>... types) {
    return types.length > 0 && Stream.of(types).allMatch(double.class::equals);
  }

  private static Class<?> raw(Type type) {
    if (type instanceof Class<?> known) {
      return known;
    }
    if (type instanceof ParameterizedType made) {
      return (Class<?>) made.getRawType();
    }
    if (type instanceof WildcardType wild) {
      return raw(wild.getUpperBounds()[0]);
    }
    if (type instanceof java.lang.reflect.GenericArrayType array) {
      return Array.newInstance(raw(array.getGenericComponentType()), 0).getClass();
    }
    Class<?> bound = raw(((java.lang.reflect.TypeVariable<?>) type).getBounds()[0]);
    return bound == Quantity.class
        ? GaugePressure.class
        : bound; // one kind, as a compiler asks for
  }

  private static Type inner(Type type, int index) {
    return type instanceof ParameterizedType made
        ? made.getActualTypeArguments()[index]
        : Object.class;
  }

  /** Two of one kind in their order; null where there are none, or of different kinds. */
  @SuppressWarnings({"unchecked", "rawtypes"}) // the kind is that of the range asked for
  private static @Nullable Object range(@Nullable Object one, @Nullable Object other) {
    if (!(one instanceof Quantity a && other instanceof Quantity b)
        || a.getClass() != b.getClass()) {
      return null;
    }
    return a.compareTo(b) <= 0 ? new Range(a, b) : new Range(b, a);
  }

  private @Nullable Object value(Type type, int depth) {
    Class<?> raw = raw(type);
    if (raw == double.class || raw == Double.class) {
      return number();
    }
    if (raw == int.class || raw == Integer.class) {
      return whole();
    }
    if (raw == long.class || raw == Long.class) {
      return random.nextInt(3) == 0 ? random.nextLong() : (long) whole();
    }
    if (raw == boolean.class || raw == Boolean.class) {
      return random.nextBoolean();
    }
    if (raw == char.class) {
      return (char) random.nextInt(0x10000);
    }
    if (raw == String.class || raw == CharSequence.class) {
      return name();
    }
    if (raw == Object.class || raw == Comparable.class) {
      Object any = types.isEmpty() ? null : kept(types.get(random.nextInt(types.size())));
      return any == null ? name() : any;
    }
    if (raw == Duration.class) {
      return duration();
    }
    if (raw == LocalDate.class) {
      return LocalDate.of(2026, 1 + random.nextInt(12), 1 + random.nextInt(28));
    }
    if (raw == BigDecimal.class) {
      double number = number();
      return Double.isFinite(number) ? BigDecimal.valueOf(number) : BigDecimal.TEN;
    }
    if (raw.isEnum()) {
      Object[] constants = raw.getEnumConstants();
      return constants[random.nextInt(constants.length)];
    }
    if (raw == Optional.class) {
      Object content = random.nextInt(3) == 0 ? null : value(inner(type, 0), depth + 1);
      return Optional.ofNullable(content);
    }
    if (raw == Range.class) {
      return range(value(inner(type, 0), depth + 1), value(inner(type, 0), depth + 1));
    }
    if (raw == OptionalDouble.class) {
      return random.nextInt(3) == 0 ? OptionalDouble.empty() : OptionalDouble.of(number());
    }
    if (raw == OptionalInt.class) {
      return random.nextInt(3) == 0 ? OptionalInt.empty() : OptionalInt.of(whole());
    }
    if (raw == List.class || raw == Collection.class || raw == Iterable.class || raw == Set.class) {
      List<Object> list = new ArrayList<>();
      for (int i = depth > 2 ? 0 : size(); i > 0; i--) {
        Object one = value(inner(type, 0), depth + 1);
        if (one != null) {
          list.add(one);
        }
      }
      return raw == Set.class ? new HashSet<>(list) : list;
    }
    if (raw == Map.class) {
      Map<Object, Object> map = new LinkedHashMap<>();
      for (int i = depth > 2 ? 0 : size(); i > 0; i--) {
        Object key = value(inner(type, 0), depth + 1);
        Object value = value(inner(type, 1), depth + 1);
        if (key != null && value != null) {
          map.put(key, value);
        }
      }
      return map;
    }
    if (raw.isArray()) {
      int size = size();
      Object array = Array.newInstance(raw.getComponentType(), size);
      for (int i = 0; i < size; i++) {
        Object one = value(raw.getComponentType(), depth + 1);
        if (one == null) {
          return null;
        }
        Array.set(array, i, one);
      }
      return array;
    }
    Object known = kept(raw);
    if (known != null) {
      return known;
    }
    return raw.isInterface() && !raw.isSealed() ? standIn(type, raw) : null;
  }

  /** Something that implements an interface of one method or several, such as a function: it gives what is asked. */
  private Object standIn(Type type, Class<?> raw) {
    Type last = type instanceof ParameterizedType made
        ? made.getActualTypeArguments()[made.getActualTypeArguments().length - 1]
        : Object.class;
    return Proxy.newProxyInstance(
        FuzzValues.class.getClassLoader(), new Class<?>[] {raw}, (proxy, method, arguments) -> {
          if (method.getDeclaringClass() == Object.class) {
            return switch (method.getName()) {
              case "equals" -> proxy == arguments[0];
              case "hashCode" -> System.identityHashCode(proxy);
              default -> raw.getSimpleName();
            };
          }
          Class<?> wanted = method.getReturnType();
          if (wanted == void.class) {
            return null;
          }
          if (arguments != null && arguments.length > 0 && wanted.isInstance(arguments[0])) {
            return arguments[0];
          }
          return value(wanted == Object.class ? last : method.getGenericReturnType(), 3);
        });
  }

  /** From nothing to a year in half of them, the others anything. */
  private Duration duration() {
    return switch (random.nextInt(4)) {
      case 0 -> Duration.ofSeconds(random.nextLong(), random.nextInt(1_000_000_000));
      case 1 -> Duration.ofMillis(whole());
      default -> Duration.ofMillis((long) (random.nextDouble() * 3.2e10));
    };
  }

  private int size() {
    return random.nextInt(20) == 0 ? 12 + random.nextInt(20) : random.nextInt(5);
  }

  private int whole() {
    return random.nextInt(3) == 0
        ? SPECIAL_INTS[random.nextInt(SPECIAL_INTS.length)]
        : random.nextInt(12);
  }

  /** Half of them of a size met in a shop, the others anything. */
  double number() {
    double number = anyNumber();
    return digits == 17 || !Double.isFinite(number)
        ? number
        : new BigDecimal(number).round(new MathContext(digits)).doubleValue();
  }

  private double anyNumber() {
    int kind = random.nextInt(20);
    if (kind < 7) {
      return random.nextDouble();
    }
    if (kind < 13) {
      return Math.exp(random.nextGaussian() * 5.0);
    }
    if (kind < 15) {
      return SPECIAL[random.nextInt(SPECIAL.length)];
    }
    double sign = random.nextInt(4) == 0 ? -1.0 : 1.0;
    return sign * Math.pow(10.0, LARGEST_POWER * (2.0 * random.nextDouble() - 1.0));
  }

  /**
   * Words without those that a number prints that is none, and where numbers are rounded without more digits than
   * these have: a name may hold them, and then an answer prints them.
   */
  private String name() {
    String name = words().replace("NaN", "Nan").replace("Infinity", "infinity");
    return digits < 17 && Fuzzer.showsNoise(name) ? "a part" : name;
  }

  /** A word of the trade or a value that was printed, as it is or broken; sometimes only odd characters. */
  String words() {
    int kind = random.nextInt(10);
    if (kind == 0) {
      StringBuilder odd = new StringBuilder();
      for (int i = random.nextInt(12); i > 0; i--) {
        odd.append(
            random.nextBoolean()
                ? ODD.charAt(random.nextInt(ODD.length()))
                : (char) random.nextInt(0x10000));
      }
      return odd.toString();
    }
    String text = WORDS.get(random.nextInt(WORDS.size()));
    if (kind < 5 && !types.isEmpty()) {
      Object printed = kept(types.get(random.nextInt(types.size())));
      if (printed != null) {
        String all = print(printed);
        text = all.substring(0, Math.min(60, all.length()));
      }
    }
    if (kind == 9 && random.nextInt(20) == 0) {
      return text.repeat(1 + random.nextInt(2000));
    }
    return broken(text, kind < 3 ? 0 : random.nextInt(3));
  }

  private static String print(Object value) {
    try {
      return value.toString();
    } catch (RuntimeException e) {
      return e.toString();
    }
  }

  /** A text with some of its characters inserted, left out or cut off. */
  String broken(String text, int times) {
    StringBuilder broken = new StringBuilder(text);
    for (int i = times; i > 0; i--) {
      int at = random.nextInt(broken.length() + 1);
      switch (random.nextInt(5)) {
        case 0 -> broken.insert(at, ODD.charAt(random.nextInt(ODD.length())));
        case 1 -> broken.insert(at, WORDS.get(random.nextInt(WORDS.size())));
        case 2 -> broken.insert(at, "0123456789.,/-+eE \"'".charAt(random.nextInt(20)));
        case 3 -> broken.setLength(at);
        default -> {
          if (at < broken.length()) {
            broken.deleteCharAt(at);
          }
        }
      }
    }
    return broken.toString();
  }
}
