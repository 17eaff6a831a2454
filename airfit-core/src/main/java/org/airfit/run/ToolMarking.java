package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.UnmarkedFlow;
import org.jspecify.annotations.Nullable;

/**
 * What is printed on a tool, read as one text: "6.3 bar 400 l/min", "90 psi 4 CFM", "avg 4 CFM", "max 6,3 bar".
 *
 * <ul>
 *   <li>A pressure without a mark is a gauge pressure, as tools are marked so (common practice, no source). It is what
 *       the tool needs; with "max" it is what its maker allows, and of a range such as "6-8 bar" the lower is needed
 *       and the higher allowed.
 *   <li>A flow that does not tell where the air is counted has every usual reading of {@link UnmarkedFlow}. With "avg"
 *       it is an average over the time.
 *   <li>A comma with one or two digits behind it is a decimal comma. One with three digits may group thousands and is
 *       refused.
 *   <li>The same told twice, as in "90 psi (6.2 bar)", must agree: pressures within 3 %, which is our choice, and flows
 *       in one of their readings. The first counts.
 * </ul>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ToolMarking {

  private static final String ACCEPTED =
      "the pressure and the air as printed, such as \"6.3 bar 400 l/min\", \"90 psi 4 CFM\" or \"max 6.3 bar\"";

  private static final double AGREE = 0.03;

  /** A decimal comma, and one that may be none. */
  private static final Pattern COMMA = Pattern.compile("([0-9]),([0-9]+)");

  private static final Pattern NUMBER = Pattern.compile(
      "([0-9]+(?:[.][0-9]+)?|[.][0-9]+)(?: ?(?:-|–|to) ?([0-9]+(?:[.][0-9]+)?))? ?");

  /** The units of a plate, the longer of two alike first. */
  private static final Pattern UNIT = Pattern.compile(
      "(?i)(?:psi ?\\(?[ga]?\\)?|lbf?/in[²2]|bar ?\\([ga]\\)|bar[ga]?|mpa|kpa|kg?f?/cm[²2]"
          + "|scfm(?: ?\\(?@? ?6[08] ?°?f\\)?)?|scfh|cfm(?: anr)?|cfh|cu[.]? ?ft[.]?/min|ft[³3]/min"
          + "|[ns]?(?:lpm|l/min|l/s|l/sec|dm[³3]/min|dm[³3]/s)(?: ?\\(?anr\\)?)?"
          + "|n?m[³3]/(?:min|hr?|s)(?: ?\\(?anr\\)?)?)(?![A-Za-z0-9/])");

  /** Words of a plate that are left out, the longer of two alike first. */
  private static final Pattern FILLER = Pattern.compile(
      "(?i)(?:air consumption|free air|consumption|working|operating|rated|required|inlet|pressure|press[.]?"
          + "|air|flow|cons[.]?|at|and|of|is|needs?|uses?|with|p|q)(?![A-Za-z0-9])[.]?"
          + "|[@/|;:,()=&]|[.–-](?![0-9.])");

  private static final Pattern AVERAGE =
      Pattern.compile("(?i)(?:average|avg|mean|ø)[.]?(?![A-Za-z0-9])");

  private static final Pattern HIGHEST =
      Pattern.compile("(?i)(?:maximum|p ?max|max|not above|up to|≤)[.]?(?![A-Za-z])");

  private static final Pattern LEAST =
      Pattern.compile("(?i)(?:minimum|min|at least|≥)[.]?(?![A-Za-z])");

  private record Flow(Optional<FreeAirFlow> marked, Optional<UnmarkedFlow> bare) {

    Range<FreeAirFlow> range() {
      return marked.map(Range::exactly).orElseGet(() -> bare.orElseThrow().range());
    }

    Flow atSite(AbsolutePressure atmosphere, Temperature temperature) {
      return new Flow(marked, bare.map(flow -> flow.atSite(atmosphere, temperature)));
    }
  }

  private final String text;
  private final Optional<GaugePressure> needed;
  private final Optional<GaugePressure> allowed;
  private final boolean allowedOfRange;
  private final List<Flow> flows;
  private final boolean average;

  private ToolMarking(
      String text,
      Optional<GaugePressure> needed,
      Optional<GaugePressure> allowed,
      boolean allowedOfRange,
      List<Flow> flows,
      boolean average) {
    this.text = text;
    this.needed = needed;
    this.allowed = allowed;
    this.allowedOfRange = allowedOfRange;
    this.flows = List.copyOf(flows);
    this.average = average;
  }

  /**
   * Reads a marking.
   *
   * @param text what is printed, such as "6.3 bar 400 l/min"
   * @return what it tells
   * @throws QuantityFormatException if something in it cannot be read, or it tells neither a pressure nor a flow
   */
  public static ToolMarking parse(String text) {
    return new Reader(Objects.requireNonNull(text, "text")).read();
  }

  /** {@return the gauge pressure that the tool needs; empty where the marking tells none} */
  public Optional<GaugePressure> needed() {
    return needed;
  }

  /** {@return the highest gauge pressure that its maker allows; empty where the marking tells none} */
  public Optional<GaugePressure> allowed() {
    return allowed;
  }

  /**
   * {@return whether the highest pressure is the upper end of a range such as "90-100 psi", and not marked as the most:
   * that it is a limit is then taken for granted, to be on the safe side, and somebody should ask}
   */
  public boolean isAllowedOfRange() {
    return allowedOfRange;
  }

  /** {@return whether the air is an average over the time} */
  public boolean isAverage() {
    return average;
  }

  /**
   * Tells the air that the tool takes.
   *
   * @param atmosphere the atmosphere at the site, in [50, 200] kPa, for free air that is counted there
   * @param temperature the temperature there, in [-100, 100] °C
   * @return all that it may be; empty where the marking tells none
   * @throws IllegalArgumentException if an argument is out of range
   */
  public Optional<Range<FreeAirFlow>> air(AbsolutePressure atmosphere, Temperature temperature) {
    Objects.requireNonNull(atmosphere, "atmosphere");
    Objects.requireNonNull(temperature, "temperature");
    if (flows.isEmpty()) {
      return Optional.empty();
    }
    Range<FreeAirFlow> first = flows.get(0).atSite(atmosphere, temperature).range();
    Range<FreeAirFlow> last =
        flows.get(flows.size() - 1).atSite(atmosphere, temperature).range();
    return Optional.of(new Range<>(first.least(), last.most()));
  }

  /**
   * Tells how the air was read.
   *
   * @return the readings of a flow that does not tell where it is counted, such as "ISO 8778 (ANR)", beside free air at
   *     the site; empty where the flow tells it, or there is none
   */
  public List<String> readings() {
    return flows.stream()
        .limit(1)
        .flatMap(flow -> flow.bare().stream())
        .flatMap(flow -> flow
            .atSite(AbsolutePressure.STANDARD_ATMOSPHERE, Temperature.ofCelsius(20.0))
            .readings()
            .stream())
        .map(UnmarkedFlow.Reading::name)
        .toList();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ToolMarking that
        && needed.equals(that.needed)
        && allowed.equals(that.allowed)
        && allowedOfRange == that.allowedOfRange
        && flows.equals(that.flows)
        && average == that.average;
  }

  @Override
  public int hashCode() {
    return Objects.hash(needed, allowed, allowedOfRange, flows, average);
  }

  /** {@return the marking as it was given} */
  @Override
  public String toString() {
    return text;
  }

  /** Goes through a text piece by piece. */
  private static final class Reader {

    private static final int LONGEST = 200;

    private final String whole;
    private final String text;
    private final List<GaugePressure> pressures = new ArrayList<>();
    private @Nullable GaugePressure allowed;
    private final List<Flow> flows = new ArrayList<>();
    private boolean isRange;
    private boolean isAllowedOfRange;
    private boolean isHighest;
    private boolean isAverage;
    private boolean average;

    Reader(String whole) {
      if (whole.length() > LONGEST) {
        throw new QuantityFormatException(
            whole, LONGEST, "this text is longer than " + LONGEST + " characters", ACCEPTED);
      }
      this.whole = whole;
      this.text = withPoints(whole);
    }

    /** The text with decimal points, each sign where it was. */
    private static String withPoints(String whole) {
      StringBuilder points = new StringBuilder(whole);
      Matcher comma = COMMA.matcher(whole);
      int from = 0;
      while (comma.find(from)) {
        if (comma.group(2).length() > 2) {
          throw new QuantityFormatException(
              whole,
              comma.start(),
              "a comma with three digits behind it groups thousands in one country and begins the decimals in"
                  + " another: write 1200 without a mark, or 1.2",
              ACCEPTED);
        }
        points.setCharAt(comma.start() + 1, '.');
        from = comma.end();
      }
      return points.toString();
    }

    ToolMarking read() {
      int at = 0;
      while (at < text.length()) {
        int next = skip(at);
        at = next > at ? next : value(at);
      }
      if (pressures.isEmpty() && allowed == null && flows.isEmpty()) {
        throw wrong(0, "neither a pressure nor a flow of air stands in it");
      }
      return new ToolMarking(
          whole.strip(),
          pressures.stream().findFirst(),
          Optional.ofNullable(allowed),
          isAllowedOfRange,
          flows,
          average);
    }

    /** Past blanks and a word that is no value; where the next piece begins, or {@code at} before a value. */
    private int skip(int at) {
      if (Character.isWhitespace(text.charAt(at)) || text.charAt(at) == '\u00a0') {
        return at + 1;
      }
      for (Pattern word : List.of(AVERAGE, HIGHEST, LEAST, FILLER)) {
        Matcher matcher = word.matcher(text).region(at, text.length());
        if (matcher.lookingAt()) {
          isAverage |= word == AVERAGE;
          isHighest |= word == HIGHEST;
          return matcher.end();
        }
      }
      return at;
    }

    /** Reads a number, or two, with its unit; where the next piece begins. */
    private int value(int at) {
      Matcher number = NUMBER.matcher(text).region(at, text.length());
      if (!number.lookingAt()) {
        throw wrong(at, "\"" + wordAt(at) + "\" is not known on a tool");
      }
      Matcher unit = UNIT.matcher(text).region(number.end(), text.length());
      if (!unit.lookingAt()) {
        String word = number.end() < text.length() ? wordAt(number.end()) : "";
        throw wrong(
            word.isEmpty() ? at : number.end(),
            word.isEmpty()
                ? "\"" + number.group().strip() + "\" has no unit"
                : "\"" + word + "\" behind " + number.group().strip()
                    + " is no unit of a pressure or a flow of air");
      }
      String first = Objects.requireNonNull(number.group(1));
      String second = number.group(2);
      take(at, first, second, unit.group());
      isHighest = false;
      isAverage = false;
      return unit.end();
    }

    private String wordAt(int at) {
      int end = at;
      while (end < text.length() && !Character.isWhitespace(text.charAt(end))) {
        end++;
      }
      return text.substring(at, end);
    }

    private void take(int at, String first, @Nullable String second, String unit) {
      Optional<Flow> flow = flow(first + " " + unit);
      if (flow.isPresent()) {
        takeFlow(at, flow.get(), second == null ? flow : flow(second + " " + unit));
        return;
      }
      GaugePressure pressure = pressure(at, first, unit);
      if (second != null) {
        GaugePressure higher = pressure(at, second, unit);
        if (higher.compareTo(pressure) <= 0) {
          throw wrong(at, "of a range the lower pressure comes first");
        }
        takeNeeded(at, pressure);
        isAllowedOfRange |= allowed == null;
        takeAllowed(at, higher);
      } else if (isHighest) {
        takeAllowed(at, pressure);
        isAllowedOfRange = false;
      } else {
        takeNeeded(at, pressure);
      }
    }

    private void takeNeeded(int at, GaugePressure pressure) {
      if (!pressures.isEmpty()) {
        requireAgreement(at, pressures.get(0), pressure);
      }
      pressures.add(pressure);
    }

    private void takeAllowed(int at, GaugePressure pressure) {
      if (allowed != null) {
        requireAgreement(at, allowed, pressure);
      } else {
        allowed = pressure;
      }
    }

    private void requireAgreement(int at, GaugePressure one, GaugePressure other) {
      if (Math.abs(one.pascals() - other.pascals()) > AGREE * one.pascals()) {
        throw wrong(
            at,
            "a second pressure, " + other.inFewestDigits() + ", beside "
                + one.inFewestDigits()
                + ": put max before the highest that is allowed");
      }
    }

    private void takeFlow(int at, Flow least, Optional<Flow> most) {
      Flow last = most.orElseThrow();
      average |= isAverage;
      if (flows.isEmpty()) {
        flows.add(least);
        if (last.range().most().compareTo(least.range().most()) > 0) {
          flows.add(last);
          isRange = true;
        }
        return;
      }
      Range<FreeAirFlow> before = flows.get(0).range();
      Range<FreeAirFlow> other = least.range();
      boolean apart = other.most().massFlow().kilogramsPerSecond()
              < (1.0 - AGREE) * before.least().massFlow().kilogramsPerSecond()
          || other.least().massFlow().kilogramsPerSecond()
              > (1.0 + AGREE) * before.most().massFlow().kilogramsPerSecond();
      if (apart && !isRange) {
        throw wrong(
            at, "a second flow that is not the first in other units: leave one of them out");
      }
    }

    private static Optional<Flow> flow(String value) {
      Optional<FreeAirFlow> marked = maybe(value, FreeAirFlow::parse);
      return marked.isPresent()
          ? Optional.of(new Flow(marked, Optional.empty()))
          : maybe(value, UnmarkedFlow::parse)
              .map(bare -> new Flow(Optional.empty(), Optional.of(bare)));
    }

    private static <T> Optional<T> maybe(String value, Function<String, T> parse) {
      try {
        return Optional.of(parse.apply(value));
      } catch (QuantityFormatException e) {
        return Optional.empty();
      }
    }

    private GaugePressure pressure(int at, String number, String unit) {
      String plain = unit.toLowerCase(Locale.ROOT).replaceAll("[() ]", "");
      if (plain.equals("psia") || plain.equals("bara")) {
        throw wrong(
            at,
            "an absolute pressure on a tool: take the atmosphere off and say "
                + plain.replaceFirst("a$", ""));
      }
      String named = plain.endsWith("g") && !plain.endsWith("kg")
          ? plain.substring(0, plain.length() - 1)
          : plain;
      String said = switch (named) {
        case "mpa" -> "MPa(g)";
        case "kpa" -> "kPa(g)";
        case "psi", "lb/in2", "lb/in²", "lbf/in2", "lbf/in²" -> "psig";
        case "bar" -> "bar(g)";
        default -> "kgf/cm²(g)";
      };
      GaugePressure pressure = GaugePressure.parse(number + " " + said);
      if (!(pressure.pascals() > 0.0)) {
        throw wrong(at, "a pressure on a tool is above 0");
      }
      return pressure;
    }

    private QuantityFormatException wrong(int at, String problem) {
      return new QuantityFormatException(whole, at, problem, ACCEPTED);
    }
  }
}
