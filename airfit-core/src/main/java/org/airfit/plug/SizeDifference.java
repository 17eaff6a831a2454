package org.airfit.plug;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.internal.Statistics;
import org.airfit.measure.Instrument;
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
 * What two sets say of one dimension of one profile; see {@link SetComparison} for what is allowed.
 *
 * @param profileId the id of the profile
 * @param dimension the dimension
 * @param one what the first set says
 * @param other what the second says
 * @param instrument what measured pieces were measured with, or the coarser of two
 * @param compared how many dimensions are compared in all, at least 1; they share the risk
 */
public record SizeDifference(
    String profileId,
    Dimension dimension,
    PartSpread one,
    PartSpread other,
    Instrument instrument,
    int compared)
    implements Worked {

  /**
   * How often two honest sets of bell-shaped scatter may be said to differ: our choice, half of the one in twenty that
   * is promised.
   */
  private static final double RISK = 0.025;

  /** The square of s is taken to be at least so much of that of as many pieces or more of the other set: our choice. */
  private static final double LEAST_SHARE = 0.5;

  /** Sizes are written down to two decimals of a millimetre. */
  private static final double WRITTEN = 0.005e-3 * (1.0 + 1.0e-9);

  private static final int DIGITS = 6;
  private static final Source GUM = Source.standard("JCGM 100:2008, 4.3.7, 5.1.2, F.2.2.1 and G.4");
  private static final Symbol D = Symbol.of("d", ValueKind.SMALL_LENGTH);
  private static final Symbol T = Symbol.of("t", ValueKind.NUMBER);
  private static final Symbol Z = Symbol.of("z", ValueKind.NUMBER);
  private static final Symbol TAIL = Symbol.of("p", ValueKind.NUMBER);
  private static final Symbol COMPARED = Symbol.of("m", ValueKind.NUMBER);
  private static final Symbol SCATTER = Symbol.of("us", "u_s", ValueKind.SMALL_LENGTH);
  private static final Symbol READING = Symbol.of("uc", "u_c", ValueKind.SMALL_LENGTH);
  private static final Symbol ALLOWED = Symbol.of("a", ValueKind.SMALL_LENGTH);
  private static final Symbol MEAN_1 = Symbol.of("x̄1", "\\bar x_1", ValueKind.SMALL_LENGTH);
  private static final Symbol MEAN_2 = Symbol.of("x̄2", "\\bar x_2", ValueKind.SMALL_LENGTH);
  private static final Symbol APART = Symbol.of("Δ", "\\Delta", ValueKind.SMALL_LENGTH);
  private static final Formula SHARE = Formula.of(
      "Chance shared among all that is compared, on each side",
      "⟨p⟩ = 0.0125 / ⟨m⟩",
      Source.handbook("Bonferroni's inequality"),
      TAIL,
      COMPARED);
  private static final Formula LIMIT = Formula.of(
      "Difference allowed",
      "⟨a⟩ = √((⟨t⟩ × ⟨us⟩)² + (⟨z⟩ × ⟨uc⟩)²)",
      GUM,
      ALLOWED,
      T,
      SCATTER,
      Z,
      READING);
  private static final Formula DIFFERENCE =
      Formula.of("Difference", "⟨Δ⟩ = ⟨x̄2⟩ − ⟨x̄1⟩", GUM, APART, MEAN_1, MEAN_2);

  /**
   * Checks that nothing is missing.
   *
   * @param profileId the id of the profile
   * @param dimension the dimension
   * @param one what the first set says
   * @param other what the second says
   * @param instrument what measured pieces were measured with, or the coarser of two
   * @param compared how many dimensions are compared in all, at least 1; they share the risk
   * @throws IllegalArgumentException if {@code compared} is below 1, or pieces that were measured have a mean or a
   *     standard deviation above 600 mm, where no caliper reads
   */
  public SizeDifference {
    Objects.requireNonNull(profileId, "profileId");
    Objects.requireNonNull(dimension, "dimension");
    Objects.requireNonNull(one, "one");
    Objects.requireNonNull(other, "other");
    Objects.requireNonNull(instrument, "instrument");
    if (compared < 1) {
      throw new IllegalArgumentException(
          "dimensions compared must be at least 1, were " + compared);
    }
    requireReadable(one);
    requireReadable(other);
  }

  private static void requireReadable(PartSpread spread) {
    if (spread instanceof PartSpread.Sample sample
        && !(sample.mean().millimetres() <= KnownPiece.MOST_MM
            && sample.sampleDeviation().millimetres() <= KnownPiece.MOST_MM)) {
      throw new IllegalArgumentException("mean and standard deviation of pieces measured must be at"
          + " most 600 mm, where calipers end, were " + sample.mean().inFull(LengthUnit.MILLIMETRE)
          + " and " + sample.sampleDeviation().inFull(LengthUnit.MILLIMETRE)
          + "; check their units");
    }
  }

  /** The same among so many. */
  SizeDifference among(int all) {
    return new SizeDifference(profileId, dimension, one, other, instrument, all);
  }

  /** {@return the nominal of the second less that of the first [mm]} */
  public double millimetres() {
    return other.nominal().millimetres() - one.nominal().millimetres();
  }

  private List<PartSpread.Sample> samples() {
    List<PartSpread.Sample> samples = new ArrayList<>();
    for (PartSpread spread : List.of(one, other)) {
      if (spread instanceof PartSpread.Sample sample) {
        samples.add(sample);
      }
    }
    return samples;
  }

  /**
   * The pieces of both sets are of one kind: few that lie close together by chance do not scatter much less than the
   * more of the other set.
   */
  private double deviation(PartSpread.Sample sample) {
    double least = instrument.step().metres() / Math.sqrt(12.0);
    for (PartSpread.Sample each : samples()) {
      if (each.pieces() >= sample.pieces()) {
        least = Math.max(least, Math.sqrt(LEAST_SHARE) * each.sampleDeviation().metres());
      }
    }
    return Math.max(sample.sampleDeviation().metres(), least);
  }

  private double limitOfError(PartSpread.Sample sample) {
    return instrument.limitOfError(dimension.access(), sample.mean()).metres();
  }

  /** The square of the standard uncertainty of a mean that the scatter of the pieces leaves. */
  private double ofScatter(PartSpread.Sample sample) {
    double s = deviation(sample);
    return s * s / sample.pieces();
  }

  /** The square of the standard uncertainty of a mean that the caliper leaves. */
  private double ofReading(PartSpread.Sample sample) {
    double d = instrument.step().metres();
    double mpe = limitOfError(sample);
    return d * d / 12.0 + mpe * mpe / 3.0;
  }

  private double scatter() {
    return Math.sqrt(samples().stream().mapToDouble(this::ofScatter).sum());
  }

  private double reading() {
    return Math.sqrt(samples().stream().mapToDouble(this::ofReading).sum());
  }

  /**
   * Degrees of freedom of Welch and Satterthwaite for the scatter alone: the error of the caliper is known, and would
   * make a scatter that is small by chance look well known.
   */
  private double freedom() {
    double square = 0.0;
    double over = 0.0;
    for (PartSpread.Sample sample : samples()) {
      double ofMean = ofScatter(sample);
      square += ofMean;
      over += ofMean * ofMean / sample.degreesOfFreedom();
    }
    return square * square / over;
  }

  private double tail() {
    return 0.5 * RISK / compared;
  }

  private double score() {
    return Statistics.studentScore(tail(), freedom());
  }

  private double limit() {
    return samples().isEmpty()
        ? 0.0
        : Math.hypot(score() * scatter(), Statistics.normalScore(tail()) * reading());
  }

  /** {@return how far the nominals may lie apart} */
  public Length allowed() {
    return Length.ofMetres(Math.max(WRITTEN, limit()));
  }

  /** {@return whether the two say the same} */
  public boolean agrees() {
    return Math.abs(millimetres()) <= allowed().millimetres();
  }

  /** {@return the difference in words} */
  public String inWords() {
    return profileId + ", " + dimension + ": " + one.nominal().format(LengthUnit.MILLIMETRE, 3)
        + " and " + other.nominal().format(LengthUnit.MILLIMETRE, 3) + ", "
        + Digits.fixed(Math.abs(millimetres()), 3) + " mm apart, "
        + (agrees() ? "agree" : "do not agree") + " (" + allowed().format(LengthUnit.MILLIMETRE, 3)
        + " allowed)";
  }

  @Override
  public Working working(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    Working.Builder out = Working.titled(
            "Whether both sets mean the same " + dimension + " of " + profileId, units)
        .given(MEAN_1, one.nominal().metres(), DIGITS)
        .given(MEAN_2, other.nominal().metres(), DIGITS)
        .step(DIFFERENCE, other.nominal().metres() - one.nominal().metres(), DIGITS);
    if (limit() <= WRITTEN) {
      return out.note(
              "Sizes are written down to two decimals: half a hundredth of a millimetre is allowed.")
          .answer(APART)
          .build();
    }
    out.given(D, instrument.step().metres(), DIGITS);
    List<Symbol> scatter = new ArrayList<>(List.of(SCATTER));
    List<Symbol> reading = new ArrayList<>(List.of(READING, D));
    List<String> scatters = new ArrayList<>();
    List<String> readings = new ArrayList<>();
    int number = 0;
    for (PartSpread spread : List.of(one, other)) {
      number++;
      if (spread instanceof PartSpread.Sample sample) {
        Symbol s = Symbol.of("s" + number, "s_" + number, ValueKind.SMALL_LENGTH);
        Symbol n = Symbol.of("n" + number, "n_" + number, ValueKind.NUMBER);
        Symbol mpe = Symbol.of("MPE" + number, "\\mathit{MPE}_" + number, ValueKind.SMALL_LENGTH);
        if (deviation(sample) > sample.sampleDeviation().metres()) {
          out.note("The pieces of set " + number + " scatter less than s" + number
              + ", which is the least that is taken: d/√12, or √½ of that of the other set.");
        }
        out.given(s, deviation(sample), DIGITS)
            .given(n, sample.pieces(), DIGITS)
            .given(mpe, limitOfError(sample), DIGITS);
        scatter.addAll(List.of(s, n));
        reading.add(mpe);
        scatters.add("⟨s" + number + "⟩²/⟨n" + number + "⟩");
        readings.add("⟨d⟩²/12 + ⟨MPE" + number + "⟩²/3");
      }
    }
    return out.step(
            Formula.of(
                "Standard uncertainty of the difference by the scatter of the pieces",
                "⟨us⟩ = √(" + String.join(" + ", scatters) + ")",
                GUM,
                scatter.toArray(new Symbol[0])),
            scatter(),
            DIGITS)
        .step(
            Formula.of(
                "Standard uncertainty of the difference by the caliper",
                "⟨uc⟩ = √(" + String.join(" + ", readings) + ")",
                GUM,
                reading.toArray(new Symbol[0])),
            reading(),
            DIGITS)
        .given(COMPARED, compared, DIGITS)
        .step(SHARE, tail(), DIGITS)
        .note("Student's t is exceeded with the chance p at " + Digits.significant(freedom(), 3)
            + " degrees of freedom, by Welch and Satterthwaite for the scatter; z of the normal distribution with the"
            + " same chance.")
        .given(T, score(), DIGITS)
        .given(Z, Statistics.normalScore(tail()), DIGITS)
        .step(LIMIT, limit(), DIGITS)
        .answer(APART, TAIL, ALLOWED)
        .build();
  }
}
