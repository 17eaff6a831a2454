package org.airfit.quantity;

import java.util.Objects;
import java.util.function.Function;

/**
 * What is known of a quantity that is not known exactly: that it lies between two values, both included, such as "90 to
 * 110 psig".
 *
 * <p>What is known exactly is a range whose ends are equal. This class is immutable and thread-safe.
 *
 * <p>What is known only roughly stays a range:
 *
 * <pre>{@code
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.Range;
 *
 * class KnownRoughly {
 *   public static void main(String[] args) {
 *     Range<FreeAirFlow> air = Range.parse("8 to 30 L/s ANR", FreeAirFlow::parse);
 *     System.out.println(air.isExact()); // false
 *     System.out.println(air.contains(FreeAirFlow.parse("12 L/s ANR"))); // true
 *   }
 * }
 * }</pre>
 *
 * @param least the smallest it can be
 * @param most the largest it can be, at least {@code least}
 * @param <Q> the kind of quantity
 */
public record Range<Q extends Quantity<Q, ?>>(Q least, Q most) {

  /** What stands between the ends of a range. */
  static final String TO = " to ";

  /**
   * Checks the order.
   *
   * @param least the smallest it can be
   * @param most the largest it can be
   * @throws IllegalArgumentException if {@code least} is above {@code most}
   */
  public Range {
    Objects.requireNonNull(least, "least");
    Objects.requireNonNull(most, "most");
    if (least.compareTo(most) > 0) {
      throw new IllegalArgumentException("least of a range must be at most " + most.shown()
          + ", was " + least.shown() + "; say the smaller one first");
    }
  }

  /**
   * Obtains what is known exactly.
   *
   * @param value the value
   * @param <Q> the kind of quantity
   * @return the range from {@code value} to {@code value}
   */
  public static <Q extends Quantity<Q, ?>> Range<Q> exactly(Q value) {
    return new Range<>(Objects.requireNonNull(value, "value"), value);
  }

  /**
   * Reads what people type: one value, or two with the word "to" between them. The first of two may leave out its unit;
   * it is then that of the second.
   *
   * @param text the text, such as "90 to 110 psig", "90 psig to 7 bar(g)" or "100 psig"
   * @param parse what reads one value, such as {@code GaugePressure::parse}
   * @param <Q> the kind of quantity
   * @return the range
   * @throws QuantityFormatException if a value cannot be read; it tells where and what would be accepted
   * @throws IllegalArgumentException if the first value is above the second
   */
  public static <Q extends Quantity<Q, ?>> Range<Q> parse(String text, Function<String, Q> parse) {
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(parse, "parse");
    Ends<Q> ends = ends(text, parse);
    if (ends.least().compareTo(ends.most()) > 0) {
      int to = text.indexOf(TO);
      throw new IllegalArgumentException(
          "least of a range must be at most " + text.substring(to + TO.length()).strip() + ", was "
              + text.substring(0, to).strip() + "; say the smaller one first");
    }
    return new Range<>(ends.least(), ends.most());
  }

  /**
   * The two ends of what is typed; one value is both.
   *
   * @param least what stands in front of the word "to"
   * @param most what stands behind it
   * @param <E> what they are
   */
  record Ends<E>(E least, E most) {}

  /** Reads both ends, each with its place in the whole text; the first may leave out its unit. */
  static <E> Ends<E> ends(String text, Function<String, E> parse) {
    int to = text.indexOf(TO);
    if (to < 0) {
      E only = Objects.requireNonNull(parse.apply(text), "value of parse");
      return new Ends<>(only, only);
    }
    int second = to + TO.length();
    E most = Grammar.readPart(text, second, text.length(), parse);
    return new Ends<>(
        Grammar.readPart(text, 0, to, first -> first(first, text.substring(second), parse)), most);
  }

  /** The first of two values, with the unit of the second where it has none. */
  private static <Q> Q first(String first, String second, Function<String, Q> parse) {
    WrittenNumber number = WrittenNumber.at(first, Lexicon.skipSpaces(first, 0));
    WrittenNumber other = WrittenNumber.at(second, Lexicon.skipSpaces(second, 0));
    if (number == null
        || other == null
        || Lexicon.skipSpaces(first, number.end()) < first.length()) {
      return parse.apply(first);
    }
    return parse.apply(first + second.substring(other.end()));
  }

  /** {@return whether it is known exactly} */
  public boolean isExact() {
    return least.equals(most);
  }

  /**
   * Says whether a value is possible.
   *
   * @param value the value
   * @return whether it lies between the two or is one of them
   */
  public boolean contains(Q value) {
    Objects.requireNonNull(value, "value");
    return value.compareTo(least) >= 0 && value.compareTo(most) <= 0;
  }

  /** {@return both ends, as {@link #parse} reads them back; one where they are equal} */
  @Override
  public String toString() {
    return isExact() ? least.toString() : least + TO + most;
  }
}
