package org.airfit.plug;

import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * A piece that lies too far from the others of its record to be one of them; see {@link KnownPlugs} for the test.
 *
 * @param piece the piece
 * @param dimension where it differs
 * @param alsoOut the other pieces that stand out with it in this dimension; each can hide the rest from a test of one
 *     piece at a time
 * @param others what the pieces measure that do not stand out, with half a step of the caliper as the least spread
 * @param step the step of the caliper, above 0
 * @param dimensions how many dimensions were searched, at least 1
 */
public record Outlier(
    KnownPiece piece,
    Dimension dimension,
    List<KnownPiece> alsoOut,
    PartSpread.Sample others,
    Length step,
    int dimensions)
    implements Worked {

  private static final int DIGITS = 6;

  /** The sizes are summed in another order here than in the search. */
  private static final double ROUNDED = 1.0 + 1.0e-9;

  private static final Source GRUBBS = Source.handbook(
      "F. E. Grubbs, Technometrics 11, 1969, 1-21, as restated by NIST: Student's t of a piece against the others");
  private static final Source BONFERRONI =
      Source.handbook("Bonferroni's inequality: chances of all that could have stood out add up");

  private static final Symbol SIZE = Symbol.of("x", ValueKind.SMALL_LENGTH);
  private static final Symbol MEAN = Symbol.of("x̄o", "\\bar x_o", ValueKind.SMALL_LENGTH);
  private static final Symbol DEVIATION = Symbol.of("so", "s_o", ValueKind.SMALL_LENGTH);
  private static final Symbol STEP = Symbol.of("d", ValueKind.SMALL_LENGTH);
  private static final Symbol STANDING = Symbol.of("T", ValueKind.NUMBER);
  private static final Symbol TAIL = Symbol.of("q", ValueKind.NUMBER);
  private static final Symbol DIMENSIONS = Symbol.of("m", ValueKind.NUMBER);
  private static final Symbol TOGETHER = Symbol.of("k", ValueKind.NUMBER);
  private static final Symbol GROUPS = Symbol.of("w", ValueKind.NUMBER);
  private static final Symbol CHANCE = Symbol.of("P", ValueKind.NUMBER);
  private static final Formula ABOVE = Formula.of(
      "How far it lies from the others",
      "⟨T⟩ = (⟨x⟩ − ⟨x̄o⟩ − ⟨d⟩/2) / ⟨so⟩",
      GRUBBS,
      STANDING,
      SIZE,
      MEAN,
      STEP,
      DEVIATION);
  private static final Formula BELOW = Formula.of(
      "How far it lies from the others",
      "⟨T⟩ = (⟨x̄o⟩ − ⟨x⟩ − ⟨d⟩/2) / ⟨so⟩",
      GRUBBS,
      STANDING,
      SIZE,
      MEAN,
      STEP,
      DEVIATION);
  private static final Formula SUM = Formula.of(
      "Chance that a record of pieces that are all alike shows as much anywhere",
      "⟨P⟩ = ⟨m⟩ × 2^⟨k⟩ × ⟨w⟩ × ⟨q⟩",
      BONFERRONI,
      CHANCE,
      DIMENSIONS,
      TOGETHER,
      GROUPS,
      TAIL);

  /** A step hides an even spread of its own width: 1/√12, less what rounding takes. */
  private static final double LEAST_SPREAD = (1.0 - 1.0e-9) / Math.sqrt(12.0);

  /**
   * Checks that the piece does stand out.
   *
   * @param piece the piece
   * @param dimension where it differs
   * @param alsoOut the other pieces that stand out with it in this dimension; each can hide the rest from a test of one
   *     piece at a time
   * @param others what the pieces measure that do not stand out, with half a step of the caliper as the least spread
   * @param step the step of the caliper, in [0.001, 1] mm: our choice
   * @param dimensions how many dimensions were searched, at least 1
   * @throws IllegalArgumentException if the piece lacks the dimension, the step is out of range, the others have a mean
   *     above 600 mm or a standard deviation below step/√12, no dimension was searched, those that stand out are not
   *     fewer than the others, or a record of pieces that are all alike shows as much in more than 0.025 of cases
   */
  public Outlier {
    Objects.requireNonNull(piece, "piece");
    Objects.requireNonNull(dimension, "dimension");
    Objects.requireNonNull(alsoOut, "alsoOut");
    Objects.requireNonNull(others, "others");
    Objects.requireNonNull(step, "step");
    alsoOut = List.copyOf(alsoOut);
    if (!piece.sizes().containsKey(dimension)
        || alsoOut.stream().anyMatch(also -> !also.sizes().containsKey(dimension))) {
      throw new IllegalArgumentException(
          "pieces that stand out must be measured in the " + dimension + ", one is not");
    }
    if (step.metres() > 0.0 && !(step.millimetres() >= 0.001 && step.millimetres() <= 1.0)) {
      throw new IllegalArgumentException("step of a caliper must be in [0.001, 1] mm, was "
          + step.inFull(LengthUnit.MILLIMETRE) + "; give that of the instrument");
    }
    if (!(others.mean().millimetres() <= KnownPiece.MOST_MM)
        || others.sampleDeviation().metres() < LEAST_SPREAD * step.metres()) {
      throw new IllegalArgumentException(
          "others must have a mean of at most 600 mm and a standard deviation of at least the step"
              + " over √12, were " + others.mean().inFull(LengthUnit.MILLIMETRE) + " and "
              + others.sampleDeviation().inFull(LengthUnit.MILLIMETRE)
              + "; take KnownPlugs.sample");
    }
    if (!(step.metres() > 0.0) || dimensions < 1 || alsoOut.size() + 1 >= others.pieces()) {
      throw new IllegalArgumentException(
          "step must be above 0 mm, dimensions at least 1 and those that stand out fewer than the others, were "
              + step.inFull(LengthUnit.MILLIMETRE) + ", " + dimensions + ", "
              + (alsoOut.size() + 1) + " of " + (alsoOut.size() + 1 + others.pieces()));
    }
    double chance = chance(piece, dimension, alsoOut, others, step, dimensions);
    if (!(chance <= OutlierKernels.RISK * ROUNDED)) {
      throw new IllegalArgumentException(
          "chance that pieces all alike show an outlier must be at most " + OutlierKernels.RISK
              + ", was " + Digits.told(chance));
    }
  }

  private static double chance(
      KnownPiece piece,
      Dimension dimension,
      List<KnownPiece> alsoOut,
      PartSpread.Sample others,
      Length step,
      int dimensions) {
    return OutlierKernels.chance(
        nearest(piece, dimension, alsoOut, others, step),
        others.pieces() + alsoOut.size() + 1,
        alsoOut.size() + 1,
        dimensions);
  }

  /** {@return the chance that a record of pieces that are all alike shows as much anywhere, at most 0.025} */
  public double chance() {
    return chance(piece, dimension, alsoOut, others, step, dimensions);
  }

  /** T of the nearest of those that stand out: the group is judged by it. */
  private static double nearest(
      KnownPiece piece,
      Dimension dimension,
      List<KnownPiece> alsoOut,
      PartSpread.Sample others,
      Length step) {
    double nearest = standing(piece, dimension, others, step);
    for (KnownPiece also : alsoOut) {
      nearest = Math.min(nearest, standing(also, dimension, others, step));
    }
    return nearest;
  }

  private static double standing(
      KnownPiece piece, Dimension dimension, PartSpread.Sample others, Length step) {
    double size = Objects.requireNonNull(piece.sizes().get(dimension)).metres();
    return OutlierKernels.standing(
        Math.abs(size - others.mean().metres()), others.sampleDeviation().metres(), step.metres());
  }

  /** {@return the size that differs} */
  public Length length() {
    return Objects.requireNonNull(piece.sizes().get(dimension));
  }

  /** {@return how far it lies from the mean of the others, less half a step, in their standard deviations: T} */
  public double standing() {
    return standing(piece, dimension, others, step);
  }

  /** {@return what to do about it, in plain words} */
  public String inWords() {
    String with = alsoOut.isEmpty()
        ? ""
        : " together with " + String.join(", ", labels())
            + " (" + (alsoOut.size() == 1 ? "each hides the other" : "they hide one another")
            + " where only one piece is looked at)";
    return "Piece " + piece.label() + " stands out" + with + ": its " + dimension + " is "
        + length().format(LengthUnit.MILLIMETRE, 2) + ", the other " + others.pieces() + " are "
        + others.mean().format(LengthUnit.MILLIMETRE, 2) + " ± "
        + others.sampleDeviation().format(LengthUnit.MILLIMETRE, 3)
        + ". Pieces that are all alike show as much in " + Digits.percent(chance())
        + " of records. Measure it again. If it stays so, find out why before it is left out: "
        + "it may be worn, or of another profile.";
  }

  private List<String> labels() {
    return alsoOut.stream().map(KnownPiece::label).toList();
  }

  @Override
  public Working working(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    KnownPiece judged = piece;
    for (KnownPiece also : alsoOut) {
      if (standing(also, dimension, others, step) < standing(judged, dimension, others, step)) {
        judged = also;
      }
    }
    double size = Objects.requireNonNull(judged.sizes().get(dimension)).metres();
    int k = alsoOut.size() + 1;
    int n = others.pieces() + k;
    double t = standing(judged, dimension, others, step);
    Working.Builder out =
        Working.titled("Piece " + piece.label() + " among " + n + " in its " + dimension, units);
    if (k > 1) {
      out.note(k + " pieces stand out together; the nearest of them is judged, piece "
          + judged.label() + ".");
    }
    return out.note(
            "A reading may be half a step off, and the others may differ by more than they show: their "
                + "standard deviation is taken as d/√12 at least.")
        .given(SIZE, size, DIGITS)
        .given(MEAN, others.mean().metres(), DIGITS)
        .given(DEVIATION, others.sampleDeviation().metres(), DIGITS)
        .given(STEP, step.metres(), DIGITS)
        .step(size > others.mean().metres() ? ABOVE : BELOW, t, DIGITS)
        .note(
            k == 1
                ? "q is the chance of Student's t with " + (others.pieces() - 1)
                    + " degrees of freedom, either way, beyond T / √(1 + 1/" + others.pieces()
                    + ")."
                : "q is the chance that " + k
                    + " pieces all lie beyond T, the integral over mean and deviation of the "
                    + others.pieces() + " others.")
        .note("m dimensions were searched, w is the number of groups of k pieces among " + n
            + ", and 2^k shares the risk among groups of 1, 2, 3 … pieces.")
        .given(DIMENSIONS, dimensions, DIGITS)
        .given(TOGETHER, k, DIGITS)
        .given(GROUPS, OutlierKernels.groups(n, k), DIGITS)
        .given(TAIL, OutlierKernels.tail(t, others.pieces(), k), DIGITS)
        .step(SUM, chance(), DIGITS)
        .answer(STANDING, CHANCE)
        .build();
  }
}
