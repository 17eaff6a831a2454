package org.airfit.working;

import java.util.Objects;
import org.airfit.internal.Digits;

/**
 * An axis of pure numbers, even or logarithmic.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class ChartAxis {

  /** What a careful reader with a ruler is off on an axis at most [mm]; our choice. */
  public static final double READING = 0.5;

  /** What a place or a curve's own number may be off, as a part of it [-], or in millimetres. */
  static final double KNOWN_TO = 1.0e-9;

  /** Nearer to the end of an axis than that is on it [mm]. */
  private static final double ON_THE_END = 1.0e-3;

  private final String symbol;
  private final boolean logarithmic;
  private final double from;
  private final double to;
  private final double millimetres;

  private ChartAxis(
      String symbol, boolean logarithmic, double from, double to, double millimetres) {
    this.symbol = Markup.requireProse(symbol, "symbol of an axis");
    if (!(from < to && to < Double.POSITIVE_INFINITY && from > Double.NEGATIVE_INFINITY)
        || (logarithmic && !(from > 0.0))) {
      throw new IllegalArgumentException(
          "axis must go from a number to a larger one, above 0 where it is"
              + " logarithmic, was from " + Digits.told(from) + " to " + Digits.told(to));
    }
    if (!(millimetres >= 20.0 && millimetres <= 250.0)) {
      throw new IllegalArgumentException(
          "length of an axis must be in [20, 250] mm, was " + Digits.told(millimetres) + " mm");
    }
    this.logarithmic = logarithmic;
    this.from = from;
    this.to = to;
    this.millimetres = millimetres;
  }

  /**
   * Obtains an axis on which equal lengths are equal differences.
   *
   * @param symbol what stands along it
   * @param from the number at its beginning
   * @param to the number at its end, above {@code from}
   * @param millimetres its length on paper [mm], in [20, 250]
   * @return the axis
   * @throws IllegalArgumentException if a number is out of range, or {@code symbol} is blank
   */
  public static ChartAxis even(String symbol, double from, double to, double millimetres) {
    return new ChartAxis(Objects.requireNonNull(symbol, "symbol"), false, from, to, millimetres);
  }

  /**
   * Obtains an axis on which equal lengths are equal ratios.
   *
   * @param symbol what stands along it
   * @param from the number at its beginning, above 0
   * @param to the number at its end, above {@code from}
   * @param millimetres its length on paper [mm], in [20, 250]
   * @return the axis
   * @throws IllegalArgumentException if a number is out of range, or {@code symbol} is blank
   */
  public static ChartAxis logarithmic(String symbol, double from, double to, double millimetres) {
    return new ChartAxis(Objects.requireNonNull(symbol, "symbol"), true, from, to, millimetres);
  }

  /** {@return what stands along it} */
  public String symbol() {
    return symbol;
  }

  /** {@return whether equal lengths are equal ratios} */
  public boolean isLogarithmic() {
    return logarithmic;
  }

  /** {@return the number at its beginning} */
  public double from() {
    return from;
  }

  /** {@return the number at its end} */
  public double to() {
    return to;
  }

  /** {@return its length on paper [mm]} */
  public double millimetres() {
    return millimetres;
  }

  /**
   * Tells where a number stands.
   *
   * @param value the number; above 0 on a logarithmic axis
   * @return its distance from the beginning [mm]; below 0 or above the length where it lies beyond the axis
   */
  public double at(double value) {
    double share =
        logarithmic ? Math.log(value / from) / Math.log(to / from) : (value - from) / (to - from);
    return millimetres * share;
  }

  /**
   * Tells which number stands at a place.
   *
   * @param at the distance from the beginning [mm]
   * @return the number
   */
  public double value(double at) {
    double share = at / millimetres;
    return logarithmic ? from * Math.pow(to / from, share) : from + share * (to - from);
  }

  boolean holds(Interval values) {
    return values.isThere()
        && at(values.lo()) >= -ON_THE_END
        && at(values.hi()) <= millimetres + ON_THE_END;
  }

  /** What may be read where these numbers stand; nobody reads beyond the ends of the axis. */
  Interval read(Interval values) {
    return new Interval(
            value(Math.max(0.0, at(values.lo()) - READING)),
            value(Math.min(millimetres, at(values.hi()) + READING)))
        .widened(KNOWN_TO * Math.abs(values.hi()));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ChartAxis that
        && symbol.equals(that.symbol)
        && logarithmic == that.logarithmic
        && from == that.from
        && to == that.to
        && millimetres == that.millimetres;
  }

  @Override
  public int hashCode() {
    return Objects.hash(symbol, logarithmic, from, to, millimetres);
  }

  /** {@return the axis in words, such as "Re from 10000.0 to 50000.0, logarithmic, on 90.0 mm"} */
  @Override
  public String toString() {
    return symbol + " from " + Digits.told(from) + " to " + Digits.told(to)
        + (logarithmic ? ", logarithmic" : "") + ", on " + Digits.told(millimetres) + " mm";
  }
}
