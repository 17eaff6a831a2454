package org.airfit.plug;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.internal.Statistics;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;

/**
 * What two reference sets say of the same profiles.
 *
 * <pre>
 *   the nominals agree where  |x̄₁ − x̄₂| ≤ t √(u₁² + u₂²)
 *   u² = s²/n + (MPE/√3)² for measured pieces, 0 for sizes typed in
 * </pre>
 *
 * <p>with t of Student at 95 %, at the degrees of freedom of Welch and Satterthwaite. Half a hundredth of a millimetre
 * is always allowed: sizes are written down to two decimals. <b>Source:</b> B. L. Welch, <cite>The generalization of
 * "Student's" problem …</cite>, Biometrika 34, 1947, 28–35; GUM G.4.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class SetComparison {

  private static final double WRITTEN_MM = 0.005 * (1.0 + 1.0e-9);
  private static final double TAIL = 0.025;

  private final ReferenceSet one;
  private final ReferenceSet other;
  private final Instrument instrument;
  private final List<Difference> differences;

  private SetComparison(
      ReferenceSet one, ReferenceSet other, Instrument instrument, List<Difference> differences) {
    this.one = one;
    this.other = other;
    this.instrument = instrument;
    this.differences = List.copyOf(differences);
  }

  /**
   * One dimension of one profile in both sets.
   *
   * @param profileId the id of the profile
   * @param dimension the dimension
   * @param one what the first set says
   * @param other what the second says
   * @param allowed how far their nominals may lie apart
   */
  public record Difference(
      String profileId, Dimension dimension, PartSpread one, PartSpread other, Length allowed) {
    /**
     * Checks that nothing is missing.
     *
     * @param profileId the id of the profile
     * @param dimension the dimension
     * @param one what the first set says
     * @param other what the second says
     * @param allowed how far their nominals may lie apart
     * @throws IllegalArgumentException if what is allowed is below 0 mm
     */
    public Difference {
      Objects.requireNonNull(profileId, "profileId");
      Objects.requireNonNull(dimension, "dimension");
      Objects.requireNonNull(one, "one");
      Objects.requireNonNull(other, "other");
      Objects.requireNonNull(allowed, "allowed");
      if (!(allowed.millimetres() >= 0.0)) {
        throw new IllegalArgumentException("difference allowed must be at least 0 mm, was "
            + allowed.format(LengthUnit.MILLIMETRE));
      }
    }

    /** {@return the nominal of the second less that of the first [mm]} */
    public double millimetres() {
      return other.nominal().millimetres() - one.nominal().millimetres();
    }

    /** {@return whether the two say the same} */
    public boolean agrees() {
      return Math.abs(millimetres()) <= allowed.millimetres();
    }

    /** {@return the difference in words} */
    public String inWords() {
      return profileId + ", " + dimension + ": " + one.nominal().format(LengthUnit.MILLIMETRE, 3)
          + " and " + other.nominal().format(LengthUnit.MILLIMETRE, 3) + ", "
          + Digits.fixed(Math.abs(millimetres()), 3) + " mm apart, "
          + (agrees() ? "agree" : "do not agree") + " (" + allowed.format(LengthUnit.MILLIMETRE, 3)
          + " allowed)";
    }
  }

  /**
   * Compares a set with another, profile by profile, by their ids.
   *
   * @param one a set
   * @param other another
   * @param instrument what measured pieces were measured with, or the coarser of two
   * @return where they agree and where not
   */
  public static SetComparison of(ReferenceSet one, ReferenceSet other, Instrument instrument) {
    Objects.requireNonNull(one, "one");
    Objects.requireNonNull(other, "other");
    Objects.requireNonNull(instrument, "instrument");
    List<Difference> differences = new ArrayList<>();
    for (PlugProfile profile : one.profiles()) {
      other.profile(profile.id()).ifPresent(that -> {
        profile
            .dimensions()
            .forEach((dimension, spread) -> that.sizes()
                .spread(dimension, profile.tipLengthBall())
                .ifPresent(twin -> differences.add(new Difference(
                    profile.id(),
                    dimension,
                    spread,
                    twin,
                    allowed(dimension, spread, twin, instrument)))));
      });
    }
    return new SetComparison(one, other, instrument, differences);
  }

  private static List<String> missing(ReferenceSet from, ReferenceSet of) {
    return of.profiles().stream()
        .map(PlugProfile::id)
        .filter(id -> from.profile(id).isEmpty())
        .toList();
  }

  /** {@return ids that only the first set has} */
  public List<String> onlyInOne() {
    return missing(other, one);
  }

  /** {@return ids that only the second set has} */
  public List<String> onlyInOther() {
    return missing(one, other);
  }

  /** {@return dimension by dimension of the profiles both have} */
  public List<Difference> differences() {
    return differences;
  }

  private static Length allowed(
      Dimension dimension, PartSpread one, PartSpread other, Instrument instrument) {
    double square = 0.0;
    double overFreedom = 0.0;
    for (PartSpread spread : List.of(one, other)) {
      if (spread instanceof PartSpread.Sample sample) {
        double s = sample.sampleDeviation().millimetres();
        double ofMean = s * s / sample.pieces();
        double caliper =
            instrument.limitOfError(dimension.access(), sample.mean()).millimetres();
        square += ofMean + caliper * caliper / 3.0;
        overFreedom += ofMean * ofMean / sample.degreesOfFreedom();
      }
    }
    double t =
        overFreedom > 0.0 ? Statistics.studentScore(TAIL, square * square / overFreedom) : 0.0;
    return Length.ofMillimetres(Math.max(WRITTEN_MM, t * Math.sqrt(square)));
  }

  /** {@return whether the sets agree wherever they speak of the same} */
  public boolean agrees() {
    return differences.stream().allMatch(Difference::agrees);
  }

  /** {@return what differs, in words, one line each; one line if nothing does} */
  public String inWords() {
    String lines = differences.stream()
        .filter(difference -> !difference.agrees())
        .map(Difference::inWords)
        .collect(Collectors.joining("\n"));
    return lines.isEmpty()
        ? "The sets agree in all " + differences.size() + " dimensions they share."
        : lines;
  }

  /**
   * Joins the two sets. A profile of one id in both must be measured in both and agree; its pieces then count together,
   * in the dimensions both know. Names, aliases of both, the groove form of the first set, and the universal sockets of
   * both are kept.
   *
   * @param name what to call the joint set
   * @return the joint set
   * @throws IllegalArgumentException if a profile of one id is not measured in both, or the two do not agree
   */
  public ReferenceSet merged(String name) {
    Objects.requireNonNull(name, "name");
    if (!agrees()) {
      throw new IllegalArgumentException("profiles of one id must agree in both sets, but "
          + inWords() + "; they are two profiles, rename one, or measure again");
    }
    List<PlugProfile> joint = new ArrayList<>();
    one.profiles()
        .forEach(profile -> joint.add(
            other.profile(profile.id()).map(that -> joined(profile, that)).orElse(profile)));
    other.profiles().stream()
        .filter(profile -> one.profile(profile.id()).isEmpty())
        .forEach(joint::add);
    List<UniversalSocket> known = new ArrayList<>(one.sockets());
    other.sockets().stream().filter(socket -> !one.sockets().contains(socket)).forEach(known::add);
    return ReferenceSet.of(name, joint).withSockets(known);
  }

  private static PlugProfile joined(PlugProfile one, PlugProfile other) {
    PlugProfile.Builder builder = PlugProfile.builder(one.id())
        .displayName(one.displayName())
        .aliases(one.aliases().toArray(new String[0]))
        .aliases(other.aliases().toArray(new String[0]))
        .confirmUnusual();
    if (!one.tipLengthBall().equals(other.tipLengthBall())) {
      throw new IllegalArgumentException("tip length of profile " + one.id()
          + " must be taken alike in both sets, was by "
          + one.tipLengthBall().map(GaugeBall::toString).orElse("the edge") + " and by "
          + other.tipLengthBall().map(GaugeBall::toString).orElse("the edge")
          + "; convert one, or leave it out");
    }
    one.tipLengthBall().ifPresent(builder::tipLengthBy);
    one.grooveForm().or(other::grooveForm).ifPresent(builder::grooveForm);
    Provenance mine = one.provenance();
    Provenance theirs = other.provenance();
    boolean measured = mine.kind() == Provenance.Kind.USER_MEASURED
        && theirs.kind() == Provenance.Kind.USER_MEASURED;
    one.dimensions()
        .forEach((dimension, spread) -> other.spread(dimension).ifPresent(that -> {
          if (measured
              && spread instanceof PartSpread.Sample sample
              && that instanceof PartSpread.Sample more) {
            builder.dimension(dimension, sample.joinedWith(more));
          } else {
            throw new IllegalArgumentException(
                "profile of one id in two sets must be measured in both, "
                    + one.id() + " is " + mine + " and " + theirs + " in its " + dimension
                    + "; keep the better one, or rename one");
          }
        }));
    String citation = one.source().citation().equals(other.source().citation())
        ? one.source().citation()
        : one.source().citation() + "; " + other.source().citation();
    return builder
        .from(
            measured ? Provenance.userMeasured(mine.pieces() + theirs.pieces()) : mine,
            new Source(one.source().basis().weaker(other.source().basis()), citation))
        .build();
  }

  @Override
  public boolean equals(Object object) {
    return object instanceof SetComparison that
        && one.equals(that.one)
        && other.equals(that.other)
        && instrument == that.instrument;
  }

  @Override
  public int hashCode() {
    return Objects.hash(one, other, instrument);
  }

  /** {@return what differs, in words} */
  @Override
  public String toString() {
    return inWords();
  }
}
