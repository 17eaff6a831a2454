package org.airfit.plug;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.internal.Statistics;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.SampleSize;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;

/**
 * A shop's record of plugs known to be of one profile, and what it says of the profile.
 *
 * <p>Collect pieces from different makers, boxes and years: the record shows only the spread of what was measured.
 *
 * <p><b>Outliers</b> are searched in every dimension, one at a time and in groups of fewer than half of the pieces (ten
 * at most), because two strangers of one kind hide each other from a test of single pieces. A group stands out if
 *
 * <pre>
 *   m · 2ᵏ · C(n, k) · q(T) ≤ 0.025,   T = ( min |x − x̄ₒ| − d/2 ) / max( sₒ, d/√12 )
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>x</td><td>sizes of the pieces in the group, the nearest to the others counts</td><td>m</td></tr>
 * <tr><td>x̄ₒ, sₒ</td><td>mean and standard deviation of the others</td><td>m</td></tr>
 * <tr><td>d</td><td>step of the caliper: a reading is half of it off, and equal readings are not equal sizes</td>
 * <td>m</td></tr>
 * <tr><td>q</td><td>chance that k pieces of the kind of the others all lie beyond T; for k = 1 Student's t</td>
 * <td>-</td></tr>
 * <tr><td>m, n, k</td><td>dimensions searched, pieces, pieces in the group</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p>For one dimension, k = 1 and a fine step this is Grubbs' two-sided test at a risk of 0.025/2. The factor
 * m 2ᵏ C(n, k) keeps the risk of the whole record at 0.025 (Bonferroni), where scatter is bell-shaped; with other
 * shapes,
 * a clean record is still called so in 19 of 20 cases or more. The risk, and half of it for k = 1, are our choice.
 *
 * <p><b>Pieces needed</b> for an error E of the mean, with the caliper's error shared by all pieces:
 *
 * <pre>
 *   E² = ( t(n − 1) · s/√n )² + ( z · MPE/√3 )²
 * </pre>
 *
 * <p><b>Sources:</b> F. E. Grubbs, <cite>Procedures for detecting outlying observations in samples</cite>,
 * Technometrics 11, 1969, 1–21, as restated by NIST; GUM 4.3.7 and 5.1.2.
 *
 * <p>Pieces of a known kind make a profile of a shop's own:
 *
 * <pre>{@code
 * import java.util.Map;
 * import org.airfit.measure.Instrument;
 * import org.airfit.plug.Dimension;
 * import org.airfit.plug.KnownPiece;
 * import org.airfit.plug.KnownPlugs;
 * import org.airfit.quantity.Length;
 *
 * class MeasuredPieces {
 *   public static void main(String[] args) {
 *     KnownPlugs record = KnownPlugs.of("tern", Instrument.DIGITAL_CALIPER)
 *         .with(new KnownPiece("1", Map.of(Dimension.TIP_DIAMETER, Length.parse("11.98 mm"))))
 *         .with(new KnownPiece("2", Map.of(Dimension.TIP_DIAMETER, Length.parse("12.01 mm"))))
 *         .with(new KnownPiece("3", Map.of(Dimension.TIP_DIAMETER, Length.parse("12.00 mm"))));
 *     System.out.println(record.pieces().size()); // 3
 *     System.out.println(record.outliers()); // []
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class KnownPlugs {

  /** Pieces that all read alike show no spread unless there are enough of them. */
  private static final int ALIKE_ENOUGH = Provenance.PIECES_TO_IDENTIFY;

  /** Nobody measures more. */
  private static final int MOST_PIECES = 10_000;

  private final String profileId;
  private final Instrument instrument;
  private final List<KnownPiece> pieces;

  private KnownPlugs(String profileId, Instrument instrument, List<KnownPiece> pieces) {
    this.profileId = profileId;
    this.instrument = instrument;
    this.pieces = pieces;
  }

  /**
   * Starts a record.
   *
   * @param profileId the id of the profile all pieces are known to be of
   * @param instrument what they are measured with
   * @return a record without pieces
   */
  public static KnownPlugs of(String profileId, Instrument instrument) {
    Objects.requireNonNull(profileId, "profileId");
    Objects.requireNonNull(instrument, "instrument");
    return new KnownPlugs(profileId, instrument, List.of());
  }

  /**
   * Adds a piece.
   *
   * @param piece the piece
   * @return a record with it
   * @throws IllegalArgumentException if a piece of that label is there already
   */
  public KnownPlugs with(KnownPiece piece) {
    Objects.requireNonNull(piece, "piece");
    if (pieces.stream().anyMatch(known -> known.label().equals(piece.label()))) {
      throw new IllegalArgumentException("label of each piece must be unique, \"" + piece.label()
          + "\" stands twice; a piece measured again is no second piece, enter the mean");
    }
    List<KnownPiece> more = new ArrayList<>(pieces);
    more.add(piece);
    return new KnownPlugs(profileId, instrument, List.copyOf(more));
  }

  /**
   * Leaves a piece out, such as one that was found to be worn or of another profile.
   *
   * @param label its label
   * @return a record without it
   * @throws IllegalArgumentException if no piece has that label
   */
  public KnownPlugs without(String label) {
    Objects.requireNonNull(label, "label");
    List<KnownPiece> fewer =
        pieces.stream().filter(piece -> !piece.label().equals(label)).toList();
    if (fewer.size() == pieces.size()) {
      throw new IllegalArgumentException(
          "label must be of a piece in the record, was \"" + label + "\"");
    }
    return new KnownPlugs(profileId, instrument, fewer);
  }

  /** {@return the id of the profile} */
  public String profileId() {
    return profileId;
  }

  /** {@return what the pieces are measured with} */
  public Instrument instrument() {
    return instrument;
  }

  /** {@return the pieces in the order they were added} */
  public List<KnownPiece> pieces() {
    return pieces;
  }

  /** {@return the dimensions that were measured on every piece, which are those the profile will know} */
  public Set<Dimension> dimensions() {
    Set<Dimension> common =
        pieces.isEmpty() ? EnumSet.noneOf(Dimension.class) : EnumSet.allOf(Dimension.class);
    pieces.forEach(piece -> common.retainAll(piece.sizes().keySet()));
    return common;
  }

  private List<Length> sizes(Dimension dimension) {
    if (!dimensions().contains(dimension)) {
      throw new IllegalArgumentException(
          "dimension must be measured on every piece, the " + dimension + " is not");
    }
    return pieces.stream()
        .map(piece -> Objects.requireNonNull(piece.sizes().get(dimension)))
        .toList();
  }

  /**
   * Obtains how a dimension varies over the pieces. Five pieces or more that all read alike give limits of half a step
   * of the instrument either side, because that is all it can show.
   *
   * @param dimension a dimension measured on every piece
   * @return its spread
   * @throws IllegalArgumentException if it was not measured on every piece, if there are fewer than two, or if fewer
   *     than five read alike
   */
  public PartSpread spread(Dimension dimension) {
    Objects.requireNonNull(dimension, "dimension");
    List<Length> sizes = sizes(dimension);
    Length first = sizes.get(0);
    if (sizes.size() >= ALIKE_ENOUGH && sizes.stream().allMatch(first::equals)) {
      Length half = instrument.step().times(0.5);
      return PartSpread.limits(first.minus(half), first.plus(half));
    }
    if (sizes.size() > 1 && sizes.stream().allMatch(first::equals)) {
      throw new IllegalArgumentException("pieces that all read alike must be at least "
          + ALIKE_ENOUGH + " to show a spread, were " + sizes.size() + " for the " + dimension
          + "; measure more");
    }
    return PartSpread.measured(sizes);
  }

  /**
   * Obtains the statistics of a dimension with the spread that the step of the instrument may hide: the standard
   * deviation is that of an even spread of one step at least, d/√12.
   *
   * @param dimension a dimension measured on every piece
   * @return count, mean and standard deviation
   * @throws IllegalArgumentException if it was not measured on every piece, or if there are fewer than two
   */
  public PartSpread.Sample sample(Dimension dimension) {
    Objects.requireNonNull(dimension, "dimension");
    return sampleOf(
        sizes(dimension).stream().mapToDouble(Length::metres).toArray(), 0, pieces.size());
  }

  private PartSpread.Sample sampleOf(double[] metres, int from, int to) {
    double[] some = Arrays.copyOfRange(metres, from, to);
    double mean = mean(some);
    double least = instrument.step().metres() / Math.sqrt(12.0);
    double s = some.length < 2 ? least : Math.max(deviation(some, mean), least);
    return new PartSpread.Sample(some.length, Length.ofMetres(mean), Length.ofMetres(s));
  }

  /**
   * Finds the pieces that stand out; see the class. Fewer than three pieces show none, and two strangers need five or
   * more.
   *
   * @return the pieces, dimension by dimension, in each the smallest first; empty if none stands out
   */
  public List<Outlier> outliers() {
    List<Outlier> found = new ArrayList<>();
    Set<Dimension> searched = dimensions();
    for (Dimension dimension : searched) {
      double[] sizes = sizes(dimension).stream().mapToDouble(Length::metres).toArray();
      Integer[] order = OutlierKernels.order(sizes);
      double[] sorted = Arrays.stream(order).mapToDouble(i -> sizes[i]).toArray();
      OutlierKernels.Found group =
          OutlierKernels.search(sorted, instrument.step().metres(), searched.size());
      if (group.k() > 0) {
        PartSpread.Sample others = sampleOf(sorted, group.first(), group.last() + 1);
        List<KnownPiece> out = new ArrayList<>();
        for (int i = 0; i < sorted.length; i++) {
          if (i < group.first() || i > group.last()) {
            out.add(pieces.get(order[i]));
          }
        }
        for (int i = 0; i < out.size(); i++) {
          List<KnownPiece> also = new ArrayList<>(out);
          KnownPiece piece = also.remove(i);
          found.add(
              new Outlier(piece, dimension, also, others, instrument.step(), searched.size()));
        }
      }
    }
    return List.copyOf(found);
  }

  /**
   * Works out how far a piece more must lie from these in a dimension to be named by {@link #outliers}: what the record
   * cannot see is no proof that all pieces are of one kind.
   *
   * @param dimension a dimension measured on every piece
   * @return the distance from the mean; empty for fewer than two pieces
   * @throws IllegalArgumentException if it was not measured on every piece
   */
  public Optional<Length> noticedFrom(Dimension dimension) {
    Objects.requireNonNull(dimension, "dimension");
    List<Length> sizes = sizes(dimension);
    return sizes.size() < 2
        ? Optional.empty()
        : Optional.of(Length.ofMetres(OutlierKernels.noticed(
            sample(dimension).sampleDeviation().metres(),
            instrument.step().metres(),
            sizes.size(),
            dimensions().size())));
  }

  private static double mean(double[] values) {
    double sum = 0.0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }

  private static double deviation(double[] values, double mean) {
    double squares = 0.0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    return Math.sqrt(squares / (values.length - 1));
  }

  /**
   * Works out how many pieces it takes until the mean of a dimension is sure enough.
   *
   * @param dimension a dimension measured on every piece
   * @param wanted the error wanted, either way, above 0
   * @param confidence the chance with which it is to be kept, in (0, 1)
   * @return the answer
   * @throws IllegalArgumentException if an argument is outside its range, or the pieces so far show no spread
   */
  public SampleSize piecesFor(Dimension dimension, Length wanted, double confidence) {
    Objects.requireNonNull(dimension, "dimension");
    Objects.requireNonNull(wanted, "wanted");
    if (!(wanted.metres() > 0.0)) {
      throw new IllegalArgumentException(
          "wanted error must be above 0 mm, was " + wanted.inFull(LengthUnit.MILLIMETRE));
    }
    if (!(confidence > 0.0 && confidence < 1.0)) {
      throw new IllegalArgumentException("confidence must be in (0, 1), was " + confidence);
    }
    int n = pieces.size();
    if (n < 2) {
      throw new IllegalArgumentException("pieces must be at least 2 to show a spread, was " + n);
    }
    PartSpread.Sample sample = sample(dimension);
    double s = sample.sampleDeviation().millimetres();
    double tail = 0.5 * (1.0 - confidence);
    double caliper = Statistics.normalScore(tail)
        * instrument.limitOfError(dimension.access(), sample.mean()).millimetres()
        / Math.sqrt(3.0);
    Length present = Length.ofMillimetres(error(n, s, tail, caliper));
    int needed = n;
    if (present.compareTo(wanted) > 0) {
      if (error(MOST_PIECES, s, tail, caliper) > wanted.millimetres()) {
        needed = 0;
      } else {
        while (error(needed, s, tail, caliper) > wanted.millimetres()) {
          needed++;
        }
      }
    }
    return new SampleSize(dimension.label(), wanted, present, n, needed);
  }

  private static double error(int n, double s, double tail, double caliper) {
    return Math.hypot(Statistics.studentScore(tail, n - 1.0) * s / Math.sqrt(n), caliper);
  }

  /**
   * Obtains a profile from the record: every dimension measured on all pieces, with the count of pieces as its
   * provenance.
   *
   * @param measured who measured what with what, and when
   * @return a builder that still takes a name, aliases and a groove form
   * @throws IllegalArgumentException if no dimension was measured on every piece, or there are too few pieces to show a
   *     spread
   */
  public PlugProfile.Builder toProfile(Source measured) {
    Objects.requireNonNull(measured, "measured");
    Set<Dimension> known = dimensions();
    if (known.isEmpty()) {
      throw new IllegalArgumentException("dimensions measured on every piece of " + profileId
          + " must be at least one, were none");
    }
    PlugProfile.Builder builder =
        PlugProfile.builder(profileId).from(Provenance.userMeasured(pieces.size()), measured);
    known.forEach(dimension -> builder.dimension(dimension, spread(dimension)));
    return builder;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof KnownPlugs that
        && profileId.equals(that.profileId)
        && instrument == that.instrument
        && pieces.equals(that.pieces);
  }

  @Override
  public int hashCode() {
    return Objects.hash(profileId, instrument, pieces);
  }

  /** {@return the profile, the count of pieces and the instrument} */
  @Override
  public String toString() {
    return pieces.size() + (pieces.size() == 1 ? " piece of " : " pieces of ") + profileId
        + ", measured with a " + instrument;
  }
}
