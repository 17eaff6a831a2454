package org.airfit.plug;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.stream.Stream;
import org.airfit.internal.Digits;
import org.airfit.internal.Statistics;
import org.airfit.measure.Instrument;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * Whether two profiles can be told apart with an instrument.
 *
 * <pre>
 *   risk = Q(D/2),   D² = Σ Δ²/σ²,   σ² = (s₁² + s₂²)/2 + u²
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>risk</td><td>chance of taking one for the other, both equally likely</td><td>-</td></tr>
 * <tr><td>Δ</td><td>difference of the nominals, over one dimension or all that both know</td><td>mm</td></tr>
 * <tr><td>s, u</td><td>spread from part to part, and uncertainty of a reading</td><td>mm</td></tr>
 * </tbody>
 * </table>
 *
 * <p><b>Valid</b> for scatter that is about normal and alike in both; limits and small samples count with their
 * standard deviation. <b>Source:</b> the error of the best rule between two equal normal distributions, in one
 * dimension Δ = 2σz(1 − risk).
 */
public final class Separation {

  private static final Dimension[] DIMENSIONS = Dimension.values();

  private final PlugProfile one;
  private final PlugProfile other;
  private final Instrument instrument;
  private final List<ByDimension> dimensions;

  private Separation(
      PlugProfile one, PlugProfile other, Instrument instrument, List<ByDimension> dimensions) {
    this.one = one;
    this.other = other;
    this.instrument = instrument;
    this.dimensions = List.copyOf(dimensions);
  }

  /**
   * How far one dimension parts the two.
   *
   * @param dimension the dimension
   * @param difference how far the nominals lie apart
   * @param partSpread the standard deviation from part to part, the mean of both in squares
   * @param scatter the standard deviation of readings with the instrument
   */
  public record ByDimension(
      Dimension dimension, Length difference, Length partSpread, Length scatter) {
    /**
     * Checks that nothing is missing.
     *
     * @param dimension the dimension
     * @param difference how far the nominals lie apart
     * @param partSpread the standard deviation from part to part, the mean of both in squares
     * @param scatter the standard deviation of readings with the instrument
     * @throws IllegalArgumentException if the difference is below 0, or the scatter is not above 0
     */
    public ByDimension {
      Objects.requireNonNull(dimension, "dimension");
      Objects.requireNonNull(difference, "difference");
      Objects.requireNonNull(partSpread, "partSpread");
      Objects.requireNonNull(scatter, "scatter");
      if (!(difference.millimetres() >= 0.0 && scatter.millimetres() > 0.0)) {
        throw new IllegalArgumentException(
            "difference of nominals must be at least 0 mm and the scatter above 0 mm, were "
                + difference.inFull(LengthUnit.MILLIMETRE) + " and "
                + scatter.inFull(LengthUnit.MILLIMETRE));
      }
    }

    /** {@return the chance of taking one for the other by this dimension alone} */
    public double risk() {
      return riskAt(difference.millimetres() / scatter.millimetres());
    }
  }

  /**
   * Compares two profiles.
   *
   * @param one a profile
   * @param other another
   * @param instrument what a plug would be measured with
   * @return how far they can be told apart
   */
  public static Separation of(PlugProfile one, PlugProfile other, Instrument instrument) {
    Objects.requireNonNull(one, "one");
    Objects.requireNonNull(other, "other");
    Objects.requireNonNull(instrument, "instrument");
    List<ByDimension> found = new ArrayList<>();
    one.dimensions()
        .forEach((dimension, spread) -> other
            .sizes()
            .spread(dimension, one.tipLengthBall())
            .ifPresent(that -> {
              double a = spread.standardDeviation().millimetres();
              double b = that.standardDeviation().millimetres();
              double part = Math.sqrt(0.5 * (a * a + b * b));
              double u = instrument.standardUncertainty(dimension.access()).millimetres();
              found.add(new ByDimension(
                  dimension,
                  Length.ofMillimetres(
                      Math.abs(spread.nominal().millimetres() - that.nominal().millimetres())),
                  Length.ofMillimetres(part),
                  Length.ofMillimetres(Math.hypot(part, u))));
            }));
    found.sort(Comparator.comparingDouble(ByDimension::risk));
    return new Separation(one, other, instrument, found);
  }

  /**
   * Compares every pair of a set.
   *
   * @param set the set
   * @param instrument what a plug would be measured with
   * @return the pairs, the hardest to tell apart first
   */
  public static List<Separation> within(ReferenceSet set, Instrument instrument) {
    Objects.requireNonNull(set, "set");
    Objects.requireNonNull(instrument, "instrument");
    List<Separation> pairs = new ArrayList<>();
    List<PlugProfile> profiles = set.profiles();
    for (int i = 0; i < profiles.size(); i++) {
      for (int j = i + 1; j < profiles.size(); j++) {
        pairs.add(of(profiles.get(i), profiles.get(j), instrument));
      }
    }
    // by the distance: risks of pairs that lie far apart are all 0
    pairs.sort(Comparator.comparingDouble(Separation::square));
    return List.copyOf(pairs);
  }

  /**
   * Finds the pairs of a set that are hardest to tell apart, without keeping all of them: a set of thousands has
   * millions of pairs.
   *
   * @param set the set
   * @param instrument what a plug would be measured with
   * @param most how many pairs to give at most, above 0
   * @return the pairs, the hardest to tell apart first
   * @throws IllegalArgumentException if {@code most} is not above 0
   */
  public static List<Separation> hardest(ReferenceSet set, Instrument instrument, int most) {
    Objects.requireNonNull(set, "set");
    Objects.requireNonNull(instrument, "instrument");
    if (most < 1) {
      throw new IllegalArgumentException("pairs to give must be at least 1, were " + most);
    }
    List<PlugProfile> profiles = set.profiles();
    Comparator<Pair> byRisk = Comparator.comparingDouble(Pair::square);
    Comparator<Pair> order = byRisk.thenComparingInt(Pair::one).thenComparingInt(Pair::other);
    PriorityQueue<Pair> kept = new PriorityQueue<>(order.reversed());
    for (int i = 0; i < profiles.size(); i++) {
      for (int j = i + 1; j < profiles.size(); j++) {
        double square = square(set.sizes(), instrument, i, j);
        Pair easiest = kept.peek();
        if (easiest == null || kept.size() < most || square < easiest.square()) {
          kept.add(new Pair(square, i, j));
          if (kept.size() > most) {
            kept.remove();
          }
        }
      }
    }
    List<Pair> sorted = new ArrayList<>(kept);
    sorted.sort(order);
    return sorted.stream()
        .map(pair -> of(profiles.get(pair.one()), profiles.get(pair.other()), instrument))
        .toList();
  }

  private record Pair(double square, int one, int other) {}

  /** D² of a pair, from the plain numbers where both state the tip length alike. */
  private static double square(SizeTable sizes, Instrument instrument, int i, int j) {
    PlugProfile one = sizes.profiles.get(i);
    PlugProfile other = sizes.profiles.get(j);
    if (!one.tipLengthBall().equals(other.tipLengthBall())) {
      return of(one, other, instrument).square();
    }
    double square = 0.0;
    for (Dimension dimension : DIMENSIONS) {
      SizeTable.Column column = sizes.column(dimension);
      if (column.kind[i] != SizeTable.Kind.NOTHING && column.kind[j] != SizeTable.Kind.NOTHING) {
        double d = column.nominal[i] - column.nominal[j];
        double u = instrument.standardUncertainty(dimension.access()).millimetres();
        square += d * d / (0.5 * (column.scatter(i) + column.scatter(j)) + u * u);
      }
    }
    return square;
  }

  /** Chance of the wrong one of two, from their distance in standard deviations. */
  static double riskAt(double distance) {
    return Statistics.normalAbove(0.5 * distance);
  }

  /** {@return the one profile} */
  public PlugProfile one() {
    return one;
  }

  /** {@return the other} */
  public PlugProfile other() {
    return other;
  }

  /** {@return what a plug would be measured with} */
  public Instrument instrument() {
    return instrument;
  }

  /** {@return the dimensions both know, the one that parts them best first} */
  public List<ByDimension> dimensions() {
    return dimensions;
  }

  /**
   * {@return the chance of taking one for the other when every dimension both know is read; one half if there is none}
   */
  public double risk() {
    return riskAt(Math.sqrt(square()));
  }

  private double square() {
    double square = 0.0;
    for (ByDimension by : dimensions) {
      double d = by.difference().millimetres() / by.scatter().millimetres();
      square += d * d;
    }
    return square;
  }

  /**
   * Lists the instruments that would do, all dimensions read.
   *
   * @param risk the chance of taking one for the other that is accepted, in (0, 0.5)
   * @return the instruments, the coarsest that does first; empty if none does
   * @throws IllegalArgumentException if {@code risk} is outside its range
   */
  public List<Instrument> instruments(double risk) {
    checked(risk);
    return Stream.of(Instrument.values())
        .filter(candidate -> of(one, other, candidate).risk() <= risk)
        .sorted(Comparator.comparing(Instrument::step).reversed())
        .toList();
  }

  /**
   * Obtains how fine a reading of the best dimension must be to part the two by that dimension alone.
   *
   * <pre>
   *   u² = (Δ / (2 z(1 − risk)))² − s²
   * </pre>
   *
   * @param risk the chance of taking one for the other that is accepted, in (0, 0.5)
   * @return the largest standard uncertainty that does; empty if the plugs themselves scatter too much for any
   *     instrument
   * @throws IllegalArgumentException if {@code risk} is outside its range
   */
  public Optional<Length> neededUncertainty(double risk) {
    checked(risk);
    double largest = 0.0;
    for (ByDimension by : dimensions) {
      double sigma = by.difference().millimetres() / (2.0 * Statistics.normalScore(risk));
      double part = by.partSpread().millimetres();
      largest = Math.max(largest, sigma > part ? Math.sqrt(sigma * sigma - part * part) : 0.0);
    }
    return largest > 0.0 ? Optional.of(Length.ofMillimetres(largest)) : Optional.empty();
  }

  private static void checked(double risk) {
    if (!(risk > 0.0 && risk < 0.5)) {
      throw new IllegalArgumentException("risk must be in (0, 0.5), was " + risk);
    }
  }

  /**
   * Says it in plain words.
   *
   * @param risk the chance of taking one for the other that is accepted, in (0, 0.5)
   * @return one or two sentences
   * @throws IllegalArgumentException if {@code risk} is outside its range
   */
  public String inWords(double risk) {
    checked(risk);
    String pair = one.displayName() + " and " + other.displayName();
    if (dimensions.isEmpty()) {
      return pair + " have no dimension in common and cannot be compared.";
    }
    ByDimension best = dimensions.get(0);
    String chance = Digits.percent(risk());
    String by = "the " + best.dimension() + " differs most, by "
        + best.difference().format(LengthUnit.MILLIMETRE, 2) + " or "
        + Digits.fixed(best.difference().millimetres() / best.scatter().millimetres(), 1)
        + " times the scatter";
    if (risk() <= risk) {
      return pair + " can be told apart with a " + instrument.label() + ", risk " + chance + ": "
          + by + ".";
    }
    List<Instrument> others = instruments(risk);
    String way;
    if (!others.isEmpty()) {
      way = "A " + others.get(0).label() + " would do.";
    } else {
      way = neededUncertainty(risk)
          .map(u -> "Only an instrument with a standard uncertainty of "
              + u.format(LengthUnit.MILLIMETRE, 4) + " or better would do.")
          .orElse("No instrument would do: the plugs themselves differ too much from part to part. "
              + "Use a gauge, or the mating half.");
    }
    return pair + " cannot be told apart with a " + instrument.label() + ", risk " + chance + ": "
        + by + ". " + way;
  }

  @Override
  public boolean equals(Object object) {
    return object instanceof Separation that
        && one.equals(that.one)
        && other.equals(that.other)
        && instrument == that.instrument;
  }

  @Override
  public int hashCode() {
    return Objects.hash(one, other, instrument);
  }

  /** {@return the two names, the instrument and the risk} */
  @Override
  public String toString() {
    return one.displayName() + " and " + other.displayName() + " by " + instrument + ", risk "
        + Digits.percent(risk());
  }
}
