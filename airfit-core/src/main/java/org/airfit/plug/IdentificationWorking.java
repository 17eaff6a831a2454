package org.airfit.plug;

import java.util.ArrayList;
import java.util.List;
import org.airfit.internal.Digits;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/**
 * Writes down how the chances of an identification follow from the likelihoods of its profiles, each of which
 * {@link ProfileWorking} works out. Takes its numbers from the evidence.
 */
final class IdentificationWorking {

  private static final Source UNKNOWN = Source.commonPractice(
      "this project's choice: a plug from elsewhere lies anywhere in 10 mm, dimension by dimension, and shows a clue "
          + "as often as not");

  private static final int DIGITS = ProfileWorking.DIGITS;

  /** Profiles less likely than this are not shown one by one. */
  private static final double SHOWN_ABOVE = 1.0e-6;

  /** Below this a chance has lost its digits, and so has a logarithm beyond that. */
  private static final double TOLD_ABOVE = 1.0e-250;

  private static final double LOGARITHM_KNOWN_TO = 1.0e7;

  private static final Symbol READ = Symbol.of("n", ValueKind.NUMBER);
  private static final Symbol CLUES = Symbol.of("c", ValueKind.NUMBER);
  private static final Symbol UNKNOWN_PRIOR = Symbol.of("pe", "p_e", ValueKind.NUMBER);
  private static final Symbol LN_UNKNOWN = Symbol.of("ln Le", "\\ln L_e", ValueKind.NUMBER);
  private static final Symbol LEFT_OUT = Symbol.of("rest", "w_\\mathrm{rest}", ValueKind.NUMBER);
  private static final Symbol COPIES = Symbol.of("copies", "w_\\mathrm{copies}", ValueKind.NUMBER);
  private static final Symbol SUM = Symbol.of("S", ValueKind.NUMBER);

  private static final String OF_UNKNOWN = "logarithm of the likelihood of a plug from elsewhere";
  private static final Formula UNKNOWN_BY_READINGS =
      Formula.of(OF_UNKNOWN, "⟨ln Le⟩ = ⟨n⟩ × ln(1/10)", UNKNOWN, LN_UNKNOWN, READ);
  private static final Formula UNKNOWN_WITH_CLUES = Formula.of(
      OF_UNKNOWN, "⟨ln Le⟩ = ⟨n⟩ × ln(1/10) + ⟨c⟩ × ln(1/2)", UNKNOWN, LN_UNKNOWN, READ, CLUES);

  private IdentificationWorking() {}

  /** The working of evidence, with the answer in words at its end. */
  static Working of(Evidence evidence, String inWords, UnitSystem units) {
    Working.Builder out = Working.titled(
        "Identification of a plug against the set \"" + evidence.set().name() + "\"", units);
    out.note("The set is " + evidence.set().weakestProvenance() + ".");
    if (evidence.readings().isEmpty() && evidence.clues().isEmpty()) {
      return out.answer("No readings: every profile keeps the chance it had.").build();
    }
    evidence.readings().forEach(reading -> out.note("Read: " + reading.inWords(units) + "."));
    evidence.clues().forEach(clue -> out.note("Clue: " + clue + "."));
    List<ProfileCandidate> shown = new ArrayList<>();
    double leftOut = 0.0;
    for (ProfileCandidate candidate : evidence.candidates()) {
      if (shown.isEmpty() || candidate.probability() > SHOWN_ABOVE) {
        shown.add(candidate);
      } else {
        leftOut += candidate.probability();
      }
    }
    ProfileCandidate best = shown.get(0);
    boolean inNumbers =
        best.probability() > TOLD_ABOVE && Math.abs(best.logLikelihood()) < LOGARITHM_KNOWN_TO;
    for (int k = 1; k <= shown.size(); k++) {
      Working profile = ProfileWorking.of(evidence, shown.get(k - 1), logLikelihood(k), units);
      if (inNumbers) {
        out.include(profile, logLikelihood(k));
      } else {
        out.include(profile);
      }
    }
    int left = evidence.candidates().size() - shown.size();
    if (left > 0) {
      out.note("Left out here: " + left + (left == 1 ? " profile" : " profiles")
          + " with a chance below one in a million each.");
    }
    if (inNumbers) {
      posterior(out, evidence, shown, left, leftOut, units);
      return out.note(inWords).build();
    }
    return out.note(
            "The likelihood of the best profile is too small to print the chances step by step; the chance of the "
                + "unknown is "
                + Digits.percent(evidence.unknownProbability()) + ".")
        .answer(inWords)
        .build();
  }

  private static Symbol logLikelihood(int k) {
    return Symbol.of("ln L" + k, "\\ln L_{" + k + "}", ValueKind.NUMBER);
  }

  private static Symbol prior(int k) {
    return Symbol.of("p" + k, "p_{" + k + "}", ValueKind.NUMBER);
  }

  private static Symbol chance(int k) {
    return Symbol.of("P" + k, "P_{" + k + "}", ValueKind.NUMBER);
  }

  /** All weights are taken against the best, which keeps them printable where every likelihood is minute. */
  private static void posterior(
      Working.Builder out,
      Evidence evidence,
      List<ProfileCandidate> shown,
      int left,
      double leftOut,
      UnitSystem units) {
    ProfileCandidate best = shown.get(0);
    double total = best.prior() / best.probability();
    StringBuilder sum = new StringBuilder("⟨S⟩ = ");
    List<Symbol> symbols = new ArrayList<>(List.of(SUM));
    for (int k = 1; k <= shown.size(); k++) {
      sum.append(k == 1 ? "" : " + ").append(weight(prior(k), logLikelihood(k)));
      symbols.add(prior(k));
      symbols.add(logLikelihood(k));
      out.given(prior(k), shown.get(k - 1).prior(), DIGITS);
    }
    double unknownPrior = evidence.assumptions().elsewherePrior();
    if (unknownPrior > 0.0) {
      unknown(out, evidence);
      out.given(UNKNOWN_PRIOR, unknownPrior, DIGITS);
      sum.append(" + ").append(weight(UNKNOWN_PRIOR, LN_UNKNOWN));
      symbols.add(UNKNOWN_PRIOR);
      symbols.add(LN_UNKNOWN);
    }
    if (evidence.assumptions().nearCopiesCount()) {
      double weight = evidence.nearCopyProbability() * total;
      out.note(
          "Near copies: of every profile most of whose sizes read agree, ∫ φ(e/c)/c Π (0.7 f + 0.3 g) de, with "
              + "g = exp(−|y − µ|/" + units.either("0.5 mm)/(1 mm)", "0.019685 in)/(0.03937 in)")
              + ", less the part with no size changed; prior together "
              + Digits.read(Digits.significant(evidence.assumptions().nearCopyPrior(), DIGITS))
              + " (this project's choice). Together they weigh "
              + Digits.read(Digits.significant(weight, DIGITS)) + ".");
      out.given(COPIES, weight, DIGITS);
      sum.append(" + ⟨copies⟩");
      symbols.add(COPIES);
    }
    if (left > 0) {
      out.note("The profiles left out weigh together "
          + Digits.read(Digits.significant(leftOut * total, DIGITS)) + ".");
      out.given(LEFT_OUT, leftOut * total, DIGITS);
      sum.append(" + ⟨rest⟩");
      symbols.add(LEFT_OUT);
    }
    out.step(
        Formula.of(
            "sum of all weights, against the best profile",
            sum.toString(),
            ProfileWorking.BAYES,
            symbols.toArray(new Symbol[0])),
        total,
        DIGITS);
    List<Symbol> chances = new ArrayList<>();
    for (int k = 1; k <= shown.size(); k++) {
      ProfileCandidate candidate = shown.get(k - 1);
      chances.add(chance(k));
      out.step(chanceOf(candidate, k), candidate.probability(), DIGITS);
    }
    if (unknownPrior > 0.0) {
      out.note("None of the set: what is left, "
          + Digits.read(Digits.significant(evidence.unknownProbability(), 5)) + ".");
    }
    out.answer(chances.toArray(new Symbol[0]));
  }

  private static String weight(Symbol prior, Symbol logLikelihood) {
    return "⟨" + prior.text() + "⟩ × exp(⟨" + logLikelihood.text() + "⟩ − ⟨ln L1⟩)";
  }

  private static Formula chanceOf(ProfileCandidate candidate, int k) {
    String what = "chance of " + candidate.profile().displayName();
    String result = "⟨" + chance(k).text() + "⟩ = ";
    return k == 1
        ? Formula.of(what, result + "⟨p1⟩ / ⟨S⟩", ProfileWorking.BAYES, chance(1), prior(1), SUM)
        : Formula.of(
            what,
            result + weight(prior(k), logLikelihood(k)) + " / ⟨S⟩",
            ProfileWorking.BAYES,
            chance(k),
            prior(k),
            logLikelihood(k),
            logLikelihood(1),
            SUM);
  }

  private static void unknown(Working.Builder out, Evidence evidence) {
    int clues = evidence.clues().size();
    out.given(READ, evidence.readings().size(), DIGITS);
    if (clues > 0) {
      out.given(CLUES, clues, DIGITS);
    }
    out.step(
        clues > 0 ? UNKNOWN_WITH_CLUES : UNKNOWN_BY_READINGS,
        evidence.logElsewhereLikelihood(),
        DIGITS);
  }
}
