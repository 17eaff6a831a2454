package org.airfit.joint;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;
import org.airfit.thread.Gender;
import org.airfit.thread.PipeThread;
import org.airfit.thread.ThreadSection;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * How far a male thread goes into a female one it was not made for, as rigid bodies of basic size.
 *
 * <pre>
 *   clearances at first contact:  pitch c = E_f − E_m,  crest = D_f − D_m,  root = K_f − K_m;
 *                                 below 0 it does not start
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
 * <tr><td>E, D, K</td><td>pitch, major, minor diameter; m at the small end of the male, f at the mouth of the
 *     female</td><td>mm</td></tr>
 * <tr><td>p, Δp</td><td>pitch of the male thread, difference of the pitches</td><td>mm</td></tr>
 * <tr><td>α</td><td>mean of the two half flank angles, 28.75° for 60° against 55°</td><td>°</td></tr>
 * <tr><td>k</td><td>16 if both are tapered, 32 if one is; without a taper the term is 0</td><td>-</td></tr>
 * </tbody>
 * </table>
 *
 * <p>A model, not a measurement: good for the order of magnitude. It never says that a pair seals. <b>Source:</b>
 * derived from the geometry of the two standards.
 *
 * @param male the male thread
 * @param female the female thread
 */
public record ThreadMismatch(PipeThread male, PipeThread female) implements Worked {

  /** From so many turns on the parts hold long enough to be taken for a joint. A choice of this project. */
  private static final double SEVERAL_TURNS = 3.0;

  private static final Length END = Length.ofMetres(0.0);

  private static final Source GEOMETRY = Source.derived("geometry of the two standards");

  private static final Symbol FEMALE_PITCH_DIAMETER = Symbol.of("Ef", ValueKind.SMALL_LENGTH);
  private static final Symbol MALE_PITCH_DIAMETER = Symbol.of("Em", ValueKind.SMALL_LENGTH);
  private static final Symbol C = Symbol.of("c", ValueKind.SMALL_LENGTH);
  private static final Symbol Q = Symbol.of("q", ValueKind.SMALL_LENGTH);
  private static final Symbol P = Symbol.of("p", ValueKind.SMALL_LENGTH);
  private static final Symbol G = Symbol.of("g", "|\\Delta p|", ValueKind.SMALL_LENGTH);
  private static final Symbol K = Symbol.of("k", ValueKind.SMALL_LENGTH);
  private static final Symbol T = Symbol.of("t", "\\tan\\alpha", ValueKind.NUMBER);
  private static final Symbol N = Symbol.of("n", ValueKind.NUMBER);
  private static final Symbol M = Symbol.of("m", ValueKind.NUMBER);
  private static final Symbol S = Symbol.of("s", ValueKind.NUMBER);

  private static final Formula CLEARANCE = Formula.of(
      "Clearance on the pitch diameter",
      "⟨c⟩ = ⟨Ef⟩ − ⟨Em⟩",
      GEOMETRY,
      C,
      FEMALE_PITCH_DIAMETER,
      MALE_PITCH_DIAMETER);
  private static final Formula FLANKS_MEET =
      Formula.of("Turns until the flanks meet", "⟨n⟩ = 16 × ⟨c⟩ / ⟨p⟩", GEOMETRY, N, C, P);
  private static final Formula CREST_MEETS_ROOT =
      Formula.of("Turns until crest meets root", "⟨m⟩ = 16 × ⟨q⟩ / ⟨p⟩", GEOMETRY, M, Q, P);
  private static final Formula CLOSING_OF_TWO = Formula.of(
      "Play that two tapers take away in a turn", "⟨k⟩ = ⟨p⟩ × ⟨t⟩ / 16", GEOMETRY, K, P, T);
  private static final Formula CLOSING_OF_ONE = Formula.of(
      "Play that one taper takes away in a turn", "⟨k⟩ = ⟨p⟩ × ⟨t⟩ / 32", GEOMETRY, K, P, T);
  private static final String USED_UP = "Turns until the pitch difference has used up the play";
  private static final Formula PLAY_IS_USED_UP =
      Formula.of(USED_UP, "⟨s⟩ = ⟨c⟩ × ⟨t⟩ / ⟨g⟩", GEOMETRY, S, C, T, G);
  private static final Formula PLAY_AND_TAPER_ARE_USED_UP =
      Formula.of(USED_UP, "⟨s⟩ = ⟨c⟩ × ⟨t⟩ / (⟨g⟩ + ⟨k⟩)", GEOMETRY, S, C, T, G, K);

  /**
   * Checks that such threads exist.
   *
   * @param male the male thread
   * @param female the female thread
   * @throws IllegalArgumentException if {@code male} exists only inside
   */
  public ThreadMismatch {
    Objects.requireNonNull(male, "male");
    Objects.requireNonNull(female, "female");
    male.family().requireGender(Gender.MALE);
  }

  private ThreadSection maleEnd() {
    return male.section(Gender.MALE, END);
  }

  private ThreadSection femaleMouth() {
    return female.section(Gender.FEMALE, END);
  }

  /** {@return how much wider the female pitch diameter is at first contact; below 0 it is narrower} */
  public LengthDifference pitchClearance() {
    return new LengthDifference(femaleMouth().pitch(), maleEnd().pitch());
  }

  /** {@return how much wider the female root is than the male crest at first contact} */
  public LengthDifference crestClearance() {
    return new LengthDifference(femaleMouth().major(), maleEnd().major());
  }

  /** {@return how much wider the female crest is than the male root at first contact} */
  public LengthDifference rootClearance() {
    return new LengthDifference(femaleMouth().minor(), maleEnd().minor());
  }

  private static Length exactPitch(PipeThread thread) {
    return Length.ofMillimetres(25.4 / thread.threadsPerInch());
  }

  /** {@return by how much the male pitch is longer; below 0 it is shorter} */
  public LengthDifference pitchDifference() {
    return new LengthDifference(exactPitch(male), exactPitch(female));
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
    return turns(crestClearance().millimetres(), rootClearance().millimetres());
  }

  /**
   * {@return the estimate with crests cut as far as their standards allow, 0 if it does not start, empty if nothing
   * stops it}
   */
  public OptionalDouble turnsWithCutCrests() {
    return turns(
        crestClearance().millimetres() + male.crestSlack().millimetres(),
        rootClearance().millimetres() + female.crestSlack().millimetres());
  }

  private OptionalDouble turns(double crest, double root) {
    double turns = MismatchKernels.turns(
        pitchClearance().millimetres(),
        Math.min(crest, root),
        exactPitch(male).millimetres(),
        Math.abs(pitchDifference().millimetres()),
        tanHalfFlank(),
        tapers());
    return Double.isInfinite(turns) ? OptionalDouble.empty() : OptionalDouble.of(turns);
  }

  private double tanHalfFlank() {
    return Math.tan(Math.toRadians(
        0.25 * (male.family().flankAngleDegrees() + female.family().flankAngleDegrees())));
  }

  /**
   * {@return whether a pair starts if both pieces are as loose as their standards allow; roots are no looser than their
   * flanks}
   */
  public boolean startsAtTheLimits() {
    double maleLoose = male.looseness(Gender.MALE).millimetres();
    double femaleLoose = female.looseness(Gender.FEMALE).millimetres();
    double crestLoose = maleEnd().major().millimetres()
        - male.firstCrest(Gender.MALE).least().millimetres()
        + (female.family().isTapered() ? femaleLoose : 0.0);
    double rootLoose = female.firstCrest(Gender.FEMALE).most().millimetres()
        - femaleMouth().minor().millimetres()
        + maleLoose;
    return pitchClearance().millimetres() + maleLoose + femaleLoose > 0.0
        && crestClearance().millimetres() + crestLoose > 0.0
        && rootClearance().millimetres() + rootLoose > 0.0;
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
    return inWords(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return what becomes of the attempt, in plain words
   */
  public String inWords(UnitSystem units) {
    return switch (verdict()) {
      case DOES_NOT_FIT ->
        "It does not start: at basic size the male is "
            + (pitchClearance().millimetres() < 0.0
                ? "too large on the flanks"
                : "too large over the crests")
            + " by " + Digits.fixed(lacking().in(units.smallLengthUnit()), units.either(2, 3))
            + units.either(" mm.", " in.");
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

  private Length lacking() {
    return (pitchClearance().isNegative() ? pitchClearance() : tightest()).magnitude();
  }

  private static String counted(OptionalDouble turns) {
    return "about " + Digits.fixed(turns.orElse(0.0), 1);
  }

  /** The smaller of the clearances of crest under root and root under crest. */
  private LengthDifference tightest() {
    return crestClearance().compareTo(rootClearance()) <= 0 ? crestClearance() : rootClearance();
  }

  /**
   * Tells the clearances and the three limits, with the numbers put in.
   *
   * @param units the units to show numbers in
   */
  @Override
  public Working working(UnitSystem units) {
    Source source =
        Source.derived("geometry of " + male + " and " + female + ", rigid and of basic size");
    LengthUnit unit = units.smallLengthUnit();
    LengthDifference tightest = tightest();
    Working.Builder out = Working.titled(male + " male into " + female + " female", units)
        .given(FEMALE_PITCH_DIAMETER, femaleMouth().pitch().metres(), 6)
        .given(MALE_PITCH_DIAMETER, maleEnd().pitch().metres(), 6)
        .step(CLEARANCE.from(source), metres(pitchClearance()), 4)
        .note("Crest under root: " + in(unit, crestClearance()) + ". Root under crest: "
            + in(unit, rootClearance()) + ". The smaller is q.");
    List<Symbol> answers = new ArrayList<>(List.of(C));
    if (pitchClearance().millimetres() > 0.0 && tightest.millimetres() > 0.0) {
      limits(out, answers, tightest, source);
    }
    return out.answer(answers.toArray(new Symbol[0]))
        .note(inWords(units) + " It is never relied on to seal.")
        .build();
  }

  private void limits(
      Working.Builder out, List<Symbol> answers, LengthDifference tightest, Source source) {
    double c = metres(pitchClearance());
    double p = exactPitch(male).metres();
    if (tapers() > 0) {
      out.given(P, p, 5)
          .given(Q, metres(tightest), 4)
          .step(FLANKS_MEET.from(source), 16.0 * c / p, 3)
          .step(CREST_MEETS_ROOT.from(source), 16.0 * metres(tightest) / p, 3);
      answers.addAll(List.of(N, M));
    }
    if (!isSamePitch()) {
      double t = tanHalfFlank();
      double g = pitchDifference().magnitude().metres();
      out.given(T, t, 5).given(G, g, 5);
      if (tapers() == 0) {
        out.step(PLAY_IS_USED_UP.from(source), c * t / g, 3);
      } else {
        double closing = p * t / (tapers() == 2 ? 16.0 : 32.0);
        out.step((tapers() == 2 ? CLOSING_OF_TWO : CLOSING_OF_ONE).from(source), 5)
            .step(PLAY_AND_TAPER_ARE_USED_UP.from(source), c * t / (g + closing), 3);
      }
      answers.add(S);
    }
  }

  private static double metres(LengthDifference difference) {
    return difference.of().metres() - difference.over().metres();
  }

  private static String in(LengthUnit unit, LengthDifference difference) {
    return (difference.isNegative() ? "-" : "") + difference.magnitude().format(unit, 3);
  }
}
