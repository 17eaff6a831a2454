package org.airfit.plug;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.source.Source;

/**
 * What two reference sets say of the same profiles.
 *
 * <pre>
 *   the nominals agree where  (x̄₁ − x̄₂)² ≤ t² Σ s²/n + z² Σ (d²/12 + MPE²/3), sums over measured pieces
 *   s at least d/√12, and s² at least half of that of as many pieces or more of the other set; 0 for sizes typed in
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>x̄, s, n</td><td>mean, standard deviation and count of the pieces</td><td>m</td></tr>
 * <tr><td>d</td><td>step of the caliper: the mean of rounded readings may be half of it off</td><td>m</td></tr>
 * <tr><td>MPE</td><td>limit of error of the caliper</td><td>m</td></tr>
 * <tr><td>t</td><td>Student's t, exceeded with the chance 0.0125/m, at the degrees of freedom of Welch and
 * Satterthwaite for s²/n</td><td>-</td></tr>
 * <tr><td>z</td><td>normal score, exceeded with the same chance</td><td>-</td></tr>
 * <tr><td>m</td><td>dimensions compared, of all profiles</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p>Divided among all that is compared (Bonferroni), the risk that two honest sets are said to differ is 0.025 where
 * scatter is bell-shaped, and 0.05 at most; that risk, and the half above, are our choice. Half a hundredth of a
 * millimetre is always allowed: sizes are written down to two decimals.
 * <b>Source:</b> B. L. Welch, <cite>The generalization of "Student's" problem …</cite>, Biometrika 34, 1947, 28–35; GUM
 * G.4.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class SetComparison {

  private final ReferenceSet one;
  private final ReferenceSet other;
  private final Instrument instrument;
  private final List<SizeDifference> differences;

  private SetComparison(
      ReferenceSet one,
      ReferenceSet other,
      Instrument instrument,
      List<SizeDifference> differences) {
    this.one = one;
    this.other = other;
    this.instrument = instrument;
    this.differences = List.copyOf(differences);
  }

  /**
   * Compares a set with another, profile by profile, by their ids.
   *
   * @param one a set
   * @param other another
   * @param instrument what measured pieces were measured with, or the coarser of two
   * @return where they agree and where not
   * @throws IllegalArgumentException if a dimension that pieces were measured for is above 600 mm in one of the sets
   */
  public static SetComparison of(ReferenceSet one, ReferenceSet other, Instrument instrument) {
    Objects.requireNonNull(one, "one");
    Objects.requireNonNull(other, "other");
    Objects.requireNonNull(instrument, "instrument");
    List<SizeDifference> found = new ArrayList<>();
    for (PlugProfile profile : one.profiles()) {
      other
          .profile(profile.id())
          .ifPresent(that -> profile
              .dimensions()
              .forEach((dimension, spread) -> that.sizes()
                  .spread(dimension, profile.tipLengthBall())
                  .ifPresent(twin -> found.add(new SizeDifference(
                      profile.id(),
                      dimension,
                      counted(spread, profile.provenance()),
                      counted(twin, that.provenance()),
                      instrument,
                      1)))));
    }
    List<SizeDifference> differences =
        found.stream().map(difference -> difference.among(found.size())).toList();
    return new SetComparison(one, other, instrument, differences);
  }

  /** What the pieces of a measured profile say, also where they all read alike and their spread is that of a step. */
  private static PartSpread counted(PartSpread spread, Provenance provenance) {
    boolean counts = provenance.kind() == Provenance.Kind.USER_MEASURED
        && provenance.pieces() > 1
        && !(spread instanceof PartSpread.Sample);
    return counts
        ? new PartSpread.Sample(provenance.pieces(), spread.nominal(), spread.standardDeviation())
        : spread;
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
  public List<SizeDifference> differences() {
    return differences;
  }

  /** {@return whether the sets agree wherever they speak of the same} */
  public boolean agrees() {
    return differences.stream().allMatch(SizeDifference::agrees);
  }

  /** {@return what differs, in words, one line each; one line if nothing does} */
  public String inWords() {
    String lines = differences.stream()
        .filter(difference -> !difference.agrees())
        .map(SizeDifference::inWords)
        .collect(Collectors.joining("\n"));
    return lines.isEmpty()
        ? "The sets agree in all " + differences.size() + " dimensions they share."
        : lines;
  }

  /**
   * Joins the two sets. A profile of one id in both must be measured in both and agree; its pieces then count together,
   * in the dimensions both know. A size typed in is kept where it is the same in both. Names, aliases of both, the
   * groove
   * form of the first set, and the universal sockets of both are kept.
   *
   * @param name what to call the joint set
   * @return the joint set
   * @throws IllegalArgumentException if a profile of one id is not measured in both, or the two do not agree
   */
  public ReferenceSet merged(String name) {
    Objects.requireNonNull(name, "name");
    if (!agrees()) {
      throw new IllegalArgumentException("profiles of one id must agree in both sets, but "
          + inWords() + "; they are two profiles, rename one, or measure again"
          + "; if you know that they are one, join them despite the differences");
    }
    return joined(name);
  }

  /**
   * Joins the two sets also where their nominals do not agree, because the user knows that they are of one profile. The
   * joint spread holds the difference.
   *
   * @param name what to call the joint set
   * @return the joint set
   * @throws IllegalArgumentException if a profile of one id is neither measured in both nor the same in both
   */
  public ReferenceSet mergedDespiteDifferences(String name) {
    Objects.requireNonNull(name, "name");
    return joined(name);
  }

  private ReferenceSet joined(String name) {
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
              && counted(spread, mine) instanceof PartSpread.Sample sample
              && counted(that, theirs) instanceof PartSpread.Sample more) {
            builder.dimension(dimension, sample.joinedWith(more));
          } else if (mine.equals(theirs) && spread.equals(that)) {
            builder.dimension(dimension, spread);
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
