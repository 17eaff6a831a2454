package org.airfit.joint;

import java.util.List;
import java.util.OptionalDouble;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.thread.Gender;
import org.airfit.thread.PipeThread;
import org.airfit.thread.ThreadSection;
import org.airfit.working.Term;
import org.airfit.working.Working;

/**
 * How far a male thread goes into a female one it was not made for, as rigid bodies of basic size.
 *
 * <pre>
 *   clearances at first contact:  pitch c = E_f − E_m,  crest = D_f − D_m,  root = K_f − K_m;  below 0 it does not start
 *   turns until the flanks meet   16 c / p          (one of them tapered, or both)
 *   turns until crest meets root  16 min(crest, root) / p
 *   turns until the difference of pitch has used up the play   c tan α / (|Δp| + p tan α / k)
 *   the estimate is the smallest; a pair that does not start at basic size may start if both pieces are loose
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>E, D, K</td><td>pitch, major, minor diameter; m at the small end of the male, f at the mouth of the female</td><td>mm</td></tr>
 * <tr><td>p, Δp</td><td>pitch of the male thread, difference of the pitches</td><td>mm</td></tr>
 * <tr><td>α</td><td>mean of the two half flank angles, 28.75° for 60° against 55°</td><td>°</td></tr>
 * <tr><td>k</td><td>16 if both are tapered, 32 if one is; without a taper the term is 0</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p>A model, not a measurement: good for the order of magnitude. It never says that a pair seals. <b>Source:</b> derived from the geometry of
 * the two standards.
 *
 * @param male the male thread
 * @param female the female thread
 */
public record ThreadMismatch(PipeThread male, PipeThread female) {

  /** From so many turns on the parts hold long enough to be taken for a joint. A choice of this project. */
  private static final double SEVERAL_TURNS = 3.0;

  private static final Length END = Length.ofMetres(0.0);

  /**
   * Checks that such threads exist.
   *
   * @param male the male thread
   * @param female the female thread
   * @throws IllegalArgumentException if {@code male} exists only inside
   */
  public ThreadMismatch {
    male.family().requireGender(Gender.MALE);
  }

  private ThreadSection maleEnd() {
    return male.section(Gender.MALE, END);
  }

  private ThreadSection femaleMouth() {
    return female.section(Gender.FEMALE, END);
  }

  /** {@return how much wider the female pitch diameter is at first contact [mm]; below 0 it is narrower} */
  public double pitchClearanceMillimetres() {
    return femaleMouth().pitch().millimetres() - maleEnd().pitch().millimetres();
  }

  /** {@return how much wider the female root is than the male crest at first contact [mm]} */
  public double crestClearanceMillimetres() {
    return femaleMouth().major().millimetres() - maleEnd().major().millimetres();
  }

  /** {@return how much wider the female crest is than the male root at first contact [mm]} */
  public double rootClearanceMillimetres() {
    return femaleMouth().minor().millimetres() - maleEnd().minor().millimetres();
  }

  private static double exactPitch(PipeThread thread) {
    return 25.4 / thread.threadsPerInch();
  }

  /** {@return by how much the male pitch is longer [mm]; below 0 it is shorter} */
  public double pitchDifferenceMillimetres() {
    return exactPitch(male) - exactPitch(female);
  }

  /** {@return whether both have the same threads per inch, so that the pitch stops nothing and the pair looks right} */
  public boolean isSamePitch() {
    return male.threadsPerInch() == female.threadsPerInch();
  }

  private int tapers() {
    return (male.family().isTapered() ? 1 : 0) + (female.family().isTapered() ? 1 : 0);
  }

  /** {@return the estimate at basic size, 0 if it does not start, empty if nothing stops it} */
  public OptionalDouble turns() {
    return turns(crestClearanceMillimetres(), rootClearanceMillimetres());
  }

  /** {@return the estimate with crests cut as far as their standards allow, 0 if it does not start, empty if nothing stops it} */
  public OptionalDouble turnsWithCutCrests() {
    return turns(
        crestClearanceMillimetres() + male.crestSlack().millimetres(),
        rootClearanceMillimetres() + female.crestSlack().millimetres());
  }

  private OptionalDouble turns(double crest, double root) {
    double turns = MixUpKernels.turns(
        pitchClearanceMillimetres(),
        Math.min(crest, root),
        exactPitch(male),
        Math.abs(pitchDifferenceMillimetres()),
        tanHalfFlank(),
        tapers());
    return Double.isInfinite(turns) ? OptionalDouble.empty() : OptionalDouble.of(turns);
  }

  private double tanHalfFlank() {
    return Math.tan(Math.toRadians(
        0.25 * (male.family().flankAngleDegrees() + female.family().flankAngleDegrees())));
  }

  /** {@return whether a pair starts if both pieces are as loose as their standards allow; roots are no looser than their flanks} */
  public boolean startsAtTheLimits() {
    double maleLoose = male.looseness(Gender.MALE).millimetres();
    double femaleLoose = female.looseness(Gender.FEMALE).millimetres();
    double crestLoose = maleEnd().major().millimetres()
        - male.firstCrest(Gender.MALE).least().millimetres()
        + (female.family().isTapered() ? femaleLoose : 0.0);
    double rootLoose = female.firstCrest(Gender.FEMALE).most().millimetres()
        - femaleMouth().minor().millimetres()
        + maleLoose;
    return pitchClearanceMillimetres() + maleLoose + femaleLoose > 0.0
        && crestClearanceMillimetres() + crestLoose > 0.0
        && rootClearanceMillimetres() + rootLoose > 0.0;
  }

  private boolean startsWithCutCrests() {
    return turnsWithCutCrests().orElse(SEVERAL_TURNS) > 0.0;
  }

  /** {@return what becomes of the attempt: never a sound joint} */
  public MatingVerdict verdict() {
    if (!startsWithCutCrests()) {
      return startsAtTheLimits() ? MatingVerdict.STARTS_AND_JAMS : MatingVerdict.DOES_NOT_FIT;
    }
    boolean runsIn = (isSamePitch() && turns().orElse(SEVERAL_TURNS) > 0.0)
        || turns().orElse(SEVERAL_TURNS) >= SEVERAL_TURNS;
    return runsIn ? MatingVerdict.NOT_TO_BE_RELIED_ON : MatingVerdict.STARTS_AND_JAMS;
  }

  /** {@return what becomes of the attempt, in plain words} */
  public String inWords() {
    return switch (verdict()) {
      case DOES_NOT_FIT ->
        "It does not start: at basic size the male is "
            + (pitchClearanceMillimetres() < 0.0
                ? "too large on the flanks"
                : "too large over the crests")
            + " by " + Digits.fixed(-lacking(), 2) + " mm" + ".";
      case STARTS_AND_JAMS ->
        turns().orElse(0.0) > 0.0
            ? "It starts, and jams after " + counted(turns()) + " turns."
            : !startsWithCutCrests()
                ? "At basic size it does not start, but loose pieces within their tolerances do, and jam."
                : "It starts only if its crests are cut short, and jams within "
                    + counted(turnsWithCutCrests()) + " turns.";
      default ->
        isSamePitch()
            ? "At the same threads per inch it runs in "
                + (turns().isEmpty() ? "all the way" : "for " + counted(turns()) + " turns")
                + " and looks right."
            : "It starts loose and runs in for " + counted(turns()) + " turns.";
    };
  }

  private double lacking() {
    return pitchClearanceMillimetres() < 0.0
        ? pitchClearanceMillimetres()
        : Math.min(crestClearanceMillimetres(), rootClearanceMillimetres());
  }

  private static String counted(OptionalDouble turns) {
    return "about " + Digits.fixed(turns.orElse(0.0), 1);
  }

  private static Term millimetres(String symbol, String latex, double value) {
    return new Term(symbol, latex, Digits.fixed(value, 4), "mm");
  }

  /** One place more than the clearance, so that the difference of two printed diameters is the printed clearance. */
  private static Term diameter(String symbol, String latex, Length value) {
    return new Term(symbol, latex, Digits.fixed(value.millimetres(), 5), "mm");
  }

  /** {@return the clearances and the three limits, with the numbers put in} */
  public Working working() {
    Source source =
        Source.derived("geometry of " + male + " and " + female + ", rigid and of basic size");
    Term c = millimetres("c", "c", pitchClearanceMillimetres());
    double tightest = Math.min(crestClearanceMillimetres(), rootClearanceMillimetres());
    Term q = millimetres("q", "q", tightest);
    Working.Builder out = Working.titled(male + " male into " + female + " female")
        .step(
            "Clearance on the pitch diameter",
            "⟨c⟩ = ⟨Ef⟩ − ⟨Em⟩",
            "⟨c⟩ = ⟨Ef⟩ - ⟨Em⟩",
            List.of(
                diameter("Ef", "E_f", femaleMouth().pitch()),
                diameter("Em", "E_m", maleEnd().pitch())),
            c,
            source)
        .note("Crest under root: " + Digits.fixed(crestClearanceMillimetres(), 3)
            + " mm. Root under crest: " + Digits.fixed(rootClearanceMillimetres(), 3)
            + " mm. The smaller is q.");
    if (pitchClearanceMillimetres() > 0.0 && tightest > 0.0) {
      limits(out, c, q, source);
    }
    return out.note(inWords() + " It is never relied on to seal.").build();
  }

  private void limits(Working.Builder out, Term c, Term q, Source source) {
    double p = exactPitch(male);
    Term pitch = Term.of("p", "p", p, "mm", 5);
    if (tapers() > 0) {
      out.step(
              "Turns until the flanks meet",
              "⟨n⟩ = 16 × ⟨c⟩ / ⟨p⟩",
              "⟨n⟩ = \\frac{16 ⟨c⟩}{⟨p⟩}",
              List.of(c, pitch),
              Term.of("n", "n", 16.0 * pitchClearanceMillimetres() / p, "", 3),
              source)
          .step(
              "Turns until crest meets root",
              "⟨m⟩ = 16 × ⟨q⟩ / ⟨p⟩",
              "⟨m⟩ = \\frac{16 ⟨q⟩}{⟨p⟩}",
              List.of(q, pitch),
              Term.of(
                  "m",
                  "m",
                  16.0 * Math.min(crestClearanceMillimetres(), rootClearanceMillimetres()) / p,
                  "",
                  3),
              source);
    }
    if (!isSamePitch()) {
      double closing = tapers() == 0 ? 0.0 : p * tanHalfFlank() / (tapers() == 2 ? 16.0 : 32.0);
      double difference = Math.abs(pitchDifferenceMillimetres());
      out.step(
          "Turns until the pitch difference has used up the play",
          "⟨s⟩ = ⟨c⟩ × ⟨t⟩ / (⟨g⟩ + ⟨k⟩)",
          "⟨s⟩ = \\frac{⟨c⟩ ⟨t⟩}{⟨g⟩ + ⟨k⟩}",
          List.of(
              c,
              Term.of("t", "\\tan\\alpha", tanHalfFlank(), "", 5),
              Term.of("g", "|\\Delta p|", difference, "mm", 5),
              Term.of("k", "k", closing, "mm", 5)),
          Term.of(
              "s",
              "s",
              pitchClearanceMillimetres() * tanHalfFlank() / (difference + closing),
              "",
              3),
          source);
    }
  }
}

/** Numeric kernel of the mix-up: millimetres in, turns out, no checks. */
final class MixUpKernels {

  private MixUpKernels() {}

  /** Turns until something meets, see {@link ThreadMismatch}; 0 if it does not start, infinite if nothing stops it. */
  static double turns(
      double clearance,
      double tightest,
      double pitch,
      double pitchDifference,
      double tanHalfFlank,
      int tapers) {
    if (!(clearance > 0.0 && tightest > 0.0)) {
      return 0.0;
    }
    double closing = tapers == 0 ? 0.0 : pitch * tanHalfFlank / (tapers == 2 ? 16.0 : 32.0);
    double consumed = pitchDifference + closing;
    double turns = consumed == 0.0 ? Double.POSITIVE_INFINITY : clearance * tanHalfFlank / consumed;
    return tapers == 0 ? turns : Math.min(turns, 16.0 * Math.min(clearance, tightest) / pitch);
  }
}
