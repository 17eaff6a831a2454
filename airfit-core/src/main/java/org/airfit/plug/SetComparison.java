package org.airfit.plug;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.internal.Statistics;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;

/**
 * What two reference sets say of the same profiles.
 *
 * <pre>
 *   the nominals agree where  |x̄₁ − x̄₂| ≤ t √(u₁² + u₂²),   u² = s²/n + (MPE/√3)² for measured pieces, 0 for sizes typed in
 * </pre>
 *
 * <p>with t of Student at 95 %, at the degrees of freedom of Welch and Satterthwaite. Half a hundredth of a millimetre is always allowed:
 * sizes are written down to two decimals. <b>Source:</b> B. L. Welch, <cite>The generalization of "Student's" problem …</cite>, Biometrika
 * 34, 1947, 28–35; GUM G.4.
 *
 * @param onlyInOne ids that only the first set has
 * @param onlyInOther ids that only the second has
 * @param differences dimension by dimension of the profiles both have
 */
public record SetComparison(
    List<String> onlyInOne, List<String> onlyInOther, List<Difference> differences) {

  private static final double WRITTEN_MM = 0.005 * (1.0 + 1.0e-9);
  private static final double TAIL = 0.025;

  /**
   * Keeps copies of the lists.
   *
   * @param onlyInOne ids that only the first set has
   * @param onlyInOther ids that only the second has
   * @param differences dimension by dimension of the profiles both have
   */
  public SetComparison {
    onlyInOne = List.copyOf(onlyInOne);
    onlyInOther = List.copyOf(onlyInOther);
    differences = List.copyOf(differences);
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

  static SetComparison of(ReferenceSet one, ReferenceSet other, Instrument instrument) {
    List<Difference> differences = new ArrayList<>();
    for (PlugProfile profile : one.profiles()) {
      other.profile(profile.id()).ifPresent(that -> {
        profile
            .dimensions()
            .forEach((dimension, spread) -> TipLength.spread(
                    that, dimension, profile.tipLengthBall())
                .ifPresent(twin -> differences.add(new Difference(
                    profile.id(),
                    dimension,
                    spread,
                    twin,
                    allowed(dimension, spread, twin, instrument)))));
      });
    }
    return new SetComparison(missing(one, other), missing(other, one), differences);
  }

  private static List<String> missing(ReferenceSet one, ReferenceSet other) {
    return one.profiles().stream()
        .map(PlugProfile::id)
        .filter(id -> other.profile(id).isEmpty())
        .toList();
  }

  private static Length allowed(
      Dimension dimension, PartSpread one, PartSpread other, Instrument instrument) {
    double square = 0.0;
    double overFreedom = 0.0;
    for (PartSpread spread : List.of(one, other)) {
      if (spread instanceof PartSpread.Sample sample) {
        double s = sample.sampleDeviation().millimetres();
        double ofMean = s * s / sample.pieces();
        double caliper = instrument.limitOfError(dimension.access(), sample.mean()).millimetres();
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
}
