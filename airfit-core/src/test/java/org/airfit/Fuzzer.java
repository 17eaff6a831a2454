package org.airfit;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Calls the public members of types with arguments of all kinds, and notes what must not be: an exception that the
 * javadoc does not tell of, a NaN or an infinite number that it does not tell of, a call that takes long twice.
 *
 * <p>The same seed makes the same calls, but for those that are left out because a member has used up its time.
 */
final class Fuzzer {

  /** What is called. */
  enum Kind {
    /** Public constructors, and public static methods that do not parse. */
    FACTORIES,
    /** Public static methods named parse. */
    PARSERS,
    /** Public methods of values. */
    METHODS
  }

  /** What came of a kind. */
  record Count(long calls, long answers, long refusals, int members, List<String> never) {}

  /** A call that takes longer than this, twice, is listed. */
  private static final long SLOW_NANOS = 100_000_000L;

  /** A member that has taken this long in all is called no more. */
  private static final long BUDGET_NANOS = 15_000_000_000L;

  private static final Pattern NO_NUMBER =
      Pattern.compile("(?<![A-Za-z])(NaN|Infinity)(?![A-Za-z])");
  private static final Pattern FRACTION = Pattern.compile("[0-9]+\\.[0-9]+");

  /** More significant digits than these nobody types: they are what is left of a rounding. */
  private static final int TYPED = 12;

  /** What was typed is told as it was typed. */
  private static final Pattern QUOTED = Pattern.compile("\"[^\"]*\"");

  private static final Pattern NUMBERS = Pattern.compile("-?[0-9][0-9.]*([eE]-?[0-9]+)?");

  private final Random random;
  private final FuzzValues values;
  private final Documented documented;
  private final List<Class<?>> types;
  private final Map<String, String> found = new TreeMap<>();
  private final Map<String, String> noisy = new TreeMap<>();
  private final Map<String, String> slow = new TreeMap<>();
  private final Map<Executable, Long> spent = new HashMap<>();
  private final ThreadMXBean clock = ManagementFactory.getThreadMXBean();
  private boolean listening;
  private volatile @Nullable Executable running;
  private volatile Object[] with = {};
  private volatile long caller = -1L;
  private volatile long since;

  Fuzzer(long seed, List<Class<?>> types, Documented documented) {
    this.random = new Random(seed);
    this.values = new FuzzValues(random);
    this.documented = documented;
    this.types = types;
  }

  /** The public types of the core, but for the package that is not exported. */
  static List<Class<?>> publicTypes() {
    return PublicTypes.all().stream()
        .sorted(java.util.Comparator.comparing(Class::getName))
        .toList();
  }

  private List<Executable> members(Kind kind) {
    return types.stream()
        .flatMap(type -> Stream.concat(
            Modifier.isAbstract(type.getModifiers())
                ? Stream.<Executable>of()
                : Stream.<Executable>of(type.getConstructors()),
            Stream.<Executable>of(type.getMethods())
                .filter(method -> method.getDeclaringClass() == type)
                .filter(method -> !method.isSynthetic())))
        .filter(member -> kindOf(member) == kind)
        .filter(member -> !(member.getDeclaringClass().isEnum() && isOfEveryEnum(member)))
        .filter(member -> Stream.of(member.getParameterTypes())
            .allMatch(type ->
                type.isPrimitive() || type.isArray() || Modifier.isPublic(type.getModifiers())))
        .sorted(java.util.Comparator.comparing(Executable::toString))
        .toList();
  }

  private static boolean isOfEveryEnum(Executable member) {
    return member.getName().equals("valueOf") || member.getName().equals("values");
  }

  private static Kind kindOf(Executable member) {
    if (member instanceof Constructor<?>) {
      return Kind.FACTORIES;
    }
    if (!Modifier.isStatic(member.getModifiers())) {
      return Kind.METHODS;
    }
    return member.getName().equals("parse") ? Kind.PARSERS : Kind.FACTORIES;
  }

  /** Makes the first values, so that every type has one where {@link Samples} knows how to make it. */
  void warmUp() {
    for (Class<?> type : types) {
      if (type.isEnum()) {
        Stream.of(type.getEnumConstants()).forEach(values::keep);
      }
    }
    for (Kind kind : List.of(Kind.FACTORIES, Kind.PARSERS)) {
      for (Executable member : members(kind)) {
        try {
          Object[] arguments = Samples.arguments(member);
          if (arguments != null) {
            keep(Samples.call(member, arguments));
          }
        } catch (ReflectiveOperationException e) {
          // there are other ways to a value of this type
          running = member;
        }
      }
    }
    FuzzSeeds.values().stream()
        .filter(value -> types.stream().anyMatch(type -> type.isInstance(value)))
        .forEach(this::keep);
  }

  private void keep(@Nullable Object value) {
    if (value instanceof java.util.Optional<?> some) {
      some.ifPresent(this::keep);
    } else if (value instanceof List<?> list) {
      list.stream().limit(5).forEach(this::keep);
    } else if (value != null
        && value.getClass().getName().startsWith("org.airfit.")
        && !print(value).startsWith("(toString")) {
      values.keep(value);
    }
  }

  /** Makes a number of calls of a kind, spread evenly over its members. */
  Count run(Kind kind, long calls) {
    List<Executable> members = members(kind);
    long made = 0;
    long answers = 0;
    long refused = 0;
    long skipped = 0;
    int next = 0;
    while (made < calls && skipped < 20 * calls) {
      Executable member = members.get(next);
      next = (next + 1) % members.size();
      if (spent.getOrDefault(member, 0L) > BUDGET_NANOS) {
        skipped++;
        continue;
      }
      Object receiver = kind == Kind.METHODS ? values.kept(member.getDeclaringClass()) : null;
      Object[] arguments = kind == Kind.PARSERS ? text((Method) member) : values.arguments(member);
      if (arguments == null || (kind == Kind.METHODS && receiver == null)) {
        skipped++;
        continue;
      }
      made++;
      if (call(member, receiver, arguments, true)) {
        answers++;
      } else {
        refused++;
      }
    }
    List<String> never = members.stream()
        .filter(member -> !spent.containsKey(member))
        .map(Fuzzer::name)
        .toList();
    return new Count(made, answers, refused, members.size(), never);
  }

  /** What a parser's own type prints, mostly broken; or any words. */
  private Object @Nullable [] text(Method parser) {
    if (parser.getParameterCount() != 1) {
      return values.arguments(parser);
    }
    Object own = random.nextInt(3) == 0 ? null : values.kept(parser.getReturnType());
    return new Object[] {
      own == null ? values.words() : values.broken(String.valueOf(own), random.nextInt(3))
    };
  }

  /** Makes one call; whether it gave an answer. */
  private boolean call(
      Executable member, @Nullable Object receiver, Object[] arguments, boolean first) {
    long start = clock.getCurrentThreadCpuTime();
    since = start;
    caller = Thread.currentThread().getId();
    running = member;
    with = arguments;
    boolean answered = false;
    try {
      Object result = member instanceof Constructor<?> constructor
          ? constructor.newInstance(arguments)
          : ((Method) member).invoke(receiver, arguments);
      answered = true;
      judge(member, receiver, arguments, result);
      if (result instanceof String text
          && !List.of("toString", "format").contains(member.getName())) {
        noise(member, receiver, arguments, text);
      }
      if (first && random.nextInt(4) == 0) {
        keep(result);
      }
    } catch (InvocationTargetException e) {
      Throwable thrown = e.getCause();
      noise(member, receiver, arguments, String.valueOf(thrown.getMessage()));
      // a compiler keeps typed callers from mixing the types of a generic class
      boolean mixed = thrown instanceof ClassCastException
          && member.getDeclaringClass().getTypeParameters().length > 0;
      if (!mixed && !documented.allows(member, receiver, thrown)) {
        note(member, receiver, arguments, thrown.toString(), thrown);
      }
    } catch (ReflectiveOperationException | IllegalArgumentException e) {
      note(member, receiver, arguments, "cannot be called: " + e, e);
    }
    long took = clock.getCurrentThreadCpuTime() - start;
    spent.merge(member, took, Long::sum);
    if (took > SLOW_NANOS) {
      if (first) {
        call(member, receiver, arguments, false);
      } else {
        slow.putIfAbsent(
            name(member),
            took / 1_000_000L + " ms: on " + print(receiver) + " " + print(arguments));
      }
    }
    return answered;
  }

  private void judge(
      Executable member, @Nullable Object receiver, Object[] arguments, @Nullable Object result) {
    String gave = "";
    if (result instanceof Double number && !Double.isFinite(number)) {
      gave = documented.speaksOf(member, "NaN", "nfinite", "nfinity") ? "" : "gave " + number;
    } else if (result != null && result.getClass().getName().startsWith("org.airfit.")) {
      try {
        String text = result.toString();
        gave = NO_NUMBER.matcher(text).find() ? "gave " + cut(text, 120) : "";
      } catch (RuntimeException e) {
        note(member, receiver, arguments, "toString of the answer: " + e, e);
      }
    }
    // what was put in may come out
    if (!gave.isEmpty() && !showsNoNumber(arguments) && !showsNoNumber(receiver)) {
      note(member, receiver, arguments, gave, null);
    }
  }

  /** Numbers are drawn as people type them from here on, and a text that shows more digits is noted. */
  void typeNumbers() {
    values.roundTo(4);
    listening = true;
  }

  /** Whether a text shows what is left of a rounding. */
  static boolean showsNoise(String text) {
    return FRACTION
        .matcher(QUOTED.matcher(text).replaceAll("\"\""))
        .results()
        .anyMatch(
            number -> number.group().replace(".", "").replaceFirst("^0+", "").length() > TYPED);
  }

  private void noise(
      Executable member, @Nullable Object receiver, Object[] arguments, String text) {
    boolean typed = Stream.of(arguments).anyMatch(one -> isText(one) && showsNoise(one.toString()));
    if (listening && showsNoise(text) && !typed) {
      noisy.putIfAbsent(
          name(member) + " " + NUMBERS.matcher(cut(text, 90)).replaceAll("#"),
          cut(text, 200) + ", on " + print(receiver) + " with " + print(arguments));
    }
  }

  /** Texts and names of the caller's are told as they are. */
  private static boolean isText(Object argument) {
    return argument instanceof CharSequence || argument instanceof java.util.Collection<?>;
  }

  private void note(
      Executable member,
      @Nullable Object receiver,
      Object[] arguments,
      String what,
      @Nullable Throwable thrown) {
    String place = "";
    if (thrown != null) {
      place = Arrays.stream(thrown.getStackTrace())
          .filter(frame -> frame.getClassName().startsWith("org.airfit.")
              && !frame.getClassName().contains("Fuzz"))
          .limit(2)
          .map(frame -> frame.getFileName() + ":" + frame.getLineNumber())
          .collect(Collectors.joining(" < ", " at ", ""));
    }
    String key = name(member) + " " + NUMBERS.matcher(cut(what, 90)).replaceAll("#");
    found.putIfAbsent(
        key, cut(what, 160) + place + ", on " + print(receiver) + " with " + print(arguments));
  }

  private static String name(Executable member) {
    return member.getDeclaringClass().getName().replace("org.airfit.", "")
        + (member instanceof Constructor<?> ? "" : "." + member.getName());
  }

  /** Whether the whole text of a value shows what is no number, be it in a name. */
  private static boolean showsNoNumber(@Nullable Object value) {
    if (value instanceof Object[] many) {
      return Stream.of(many).anyMatch(Fuzzer::showsNoNumber);
    }
    try {
      return value != null && NO_NUMBER.matcher(value.toString()).find();
    } catch (RuntimeException e) {
      return false; // noted where the value came out
    }
  }

  private static String print(@Nullable Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof Object[] many) {
      return Stream.of(many).map(Fuzzer::print).collect(Collectors.joining(", ", "(", ")"));
    }
    String text;
    try {
      text = value instanceof String ? "\"" + value + "\"" : String.valueOf(value);
    } catch (RuntimeException e) {
      text = "(toString: " + e + ")";
    }
    return cut(text, 90);
  }

  private static String cut(String whole, int length) {
    String text = whole.replaceAll("[\\p{Cntrl}\\p{Cs}]", "?");
    return text.length() > length ? text.substring(0, length) + "…" : text;
  }

  /** What must not be, by member and kind of fault. */
  Map<String, String> found() {
    return found;
  }

  /** Texts that show what is left of a rounding, by member. */
  Map<String, String> noisy() {
    return noisy;
  }

  /** Calls that took long twice. */
  Map<String, String> slow() {
    return slow;
  }

  /** The call that runs now, for a watchman. */
  String running() {
    Executable member = running;
    return member == null ? "" : name(member) + " " + print(with);
  }

  /** The CPU time it has taken [s]: on a busy machine a call waits without hanging. */
  double runningSeconds() {
    long thread = caller;
    return thread < 0L ? 0.0 : 1.0e-9 * (clock.getThreadCpuTime(thread) - since);
  }
}
