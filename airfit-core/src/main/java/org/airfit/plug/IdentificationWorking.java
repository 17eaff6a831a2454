package org.airfit.plug;

import java.util.ArrayList;
import java.util.List;
import org.airfit.internal.Digits;
import org.airfit.internal.ReadingDensity;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.LengthUnit;
import org.airfit.source.Source;
import org.airfit.working.Term;
import org.airfit.working.Working;

/** Writes down how an identification was reached. Takes its numbers from the result; computes only what it prints on the way. */
final class IdentificationWorking {

  private static final Source NORMAL =
      Source.handbook("normal distribution; variances of independent errors add (GUM 5.1.2)");
  private static final Source COVARIANCE = Source.handbook(
      "normal distribution with covariance c² between readings that share an error (GUM 5.2.2)");
  private static final Source CHI_SQUARE = Source.handbook("chi-square distribution");
  private static final Source BAYES = Source.handbook("Bayes' rule");
  private static final Source UNKNOWN = Source.commonPractice(
      "this project's choice: an unknown plug lies anywhere in 10 mm, dimension by dimension, and shows a clue as often as not");

  /** Profiles less likely than this change no printed digit of the others. */
  private static final double SHOWN_ABOVE = 1.0e-6;

  private static final int DIGITS = 7;

  /** What goes through a difference on the way is printed finer, so that the result keeps its digits. */
  private static final int FINE = 9;

  private static final int FINER = 10;
  private static final int FINEST = 12;

  private IdentificationWorking() {}

  static Working of(Evidence answer, String inWords) {
    Working.Builder out = Working.titled(
        "Identification of a plug against the set \"" + answer.set().name() + "\"");
    out.note("The set is " + answer.set().weakestProvenance() + ".");
    if (answer.readings().isEmpty() && answer.clues().isEmpty()) {
      return out.note("No readings: every profile keeps the chance it had.").build();
    }
    answer.readings().forEach(reading -> out.note("Read: " + reading + "."));
    answer.clues().forEach(clue -> out.note("Clue: " + clue + "."));
    List<ProfileCandidate> shown = new ArrayList<>();
    for (ProfileCandidate candidate : answer.candidates()) {
      if (shown.isEmpty() || candidate.probability() > SHOWN_ABOVE) {
        shown.add(candidate);
        out.include(profile(answer, candidate));
      }
    }
    int left = answer.candidates().size() - shown.size();
    if (left > 0) {
      out.note("Left out here: " + left + (left == 1 ? " profile" : " profiles")
          + " with a chance below one in a million each.");
    }
    posterior(out, answer, shown);
    return out.note(inWords).build();
  }

  private static Working profile(Evidence answer, ProfileCandidate candidate) {
    Working.Builder out = Working.titled(candidate.profile().toString());
    List<Term> misfits = new ArrayList<>();
    List<Term> densities = new ArrayList<>();
    List<CaliperGroup> groups = CaliperGroup.of(
        candidate.residuals().stream().map(Residual::reading).toList(),
        candidate.residuals().stream().map(Residual::spread).toList(),
        answer.assumptions().wear().millimetres());
    for (Residual residual : candidate.residuals()) {
      if (!answer.readings().contains(residual.reading())) {
        out.note(
            "The tip length was not taken as this profile states it. With the nominal collar and groove diameters it becomes "
                + residual.reading() + " (plane geometry, see GaugeBall).");
      }
      if (!CaliperGroup.shares(groups, residual.reading())) {
        reading(out, answer, residual, misfits, densities);
      }
    }
    for (CaliperGroup group : groups) {
      shared(out, candidate, group, misfits, densities);
    }
    int unread = answer.readings().size() - candidate.residuals().size();
    if (unread > 0) {
      out.note(
          "The profile does not know " + unread
              + " of the dimensions read as they were taken; each counts ln(1/10) = −2.302585, as for an unknown plug.");
    }
    if (!misfits.isEmpty()) {
      fit(out, candidate, misfits);
    }
    List<Term> terms = new ArrayList<>(densities);
    int number = 0;
    for (Clue clue : answer.clues()) {
      number++;
      double chance = clue.chance(candidate.profile());
      out.note("Clue " + number + ", " + clue + ": a plug of this profile shows it with the chance "
          + Digits.significant(chance, DIGITS) + ".");
      terms.add(Term.of("ln c" + number, "\\ln c_{" + number + "}", Math.log(chance), "", DIGITS));
    }
    String sum = joined(terms, "⟨", "⟩");
    String rest = "";
    String latexRest = "";
    if (unread > 0) {
      String plus = terms.isEmpty() ? "" : " + ";
      rest = plus + "⟨m⟩ × (−2.302585)";
      latexRest = plus + "⟨m⟩ \\times (-2.302585)";
      terms.add(Term.of("m", "m", unread, "", DIGITS));
    }
    out.step(
        "logarithm of the likelihood",
        "⟨ln L⟩ = " + sum + rest,
        "⟨ln L⟩ = " + sum + latexRest,
        terms,
        Term.of("ln L", "\\ln L", candidate.logLikelihood(), "", DIGITS),
        BAYES);
    return out.build();
  }

  private static void fit(Working.Builder out, ProfileCandidate candidate, List<Term> misfits) {
    Term chiSquare = Term.of("χ²", "\\chi^2", candidate.chiSquare(), "", DIGITS);
    out.step(
        "chi-square",
        "⟨χ²⟩ = " + joined(misfits, "⟨", "⟩²"),
        "⟨χ²⟩ = " + joined(misfits, "⟨", "⟩^2"),
        misfits,
        chiSquare,
        CHI_SQUARE);
    out.step(
        "how often a genuine plug fits as badly; below 0.01 it does not match",
        "⟨tail⟩ = Q(⟨k⟩/2, ⟨χ²⟩/2)",
        "⟨tail⟩ = Q(⟨k⟩/2, ⟨χ²⟩/2)",
        List.of(Term.of("k", "k", candidate.degreesOfFreedom(), "", DIGITS), chiSquare),
        Term.of("tail", "p_\\mathrm{tail}", candidate.tailProbability(), "", DIGITS),
        CHI_SQUARE);
  }

  private static String joined(List<Term> terms, String before, String after) {
    StringBuilder sum = new StringBuilder();
    for (Term term : terms) {
      sum.append(sum.length() == 0 ? "" : " + ")
          .append(before)
          .append(term.symbol())
          .append(after);
    }
    return sum.toString();
  }

  private static void reading(
      Working.Builder out,
      Evidence answer,
      Residual residual,
      List<Term> misfits,
      List<Term> densities) {
    Dimension dimension = residual.dimension();
    String name = dimension.symbol();
    double y = residual.reading().length().millimetres();
    double u = residual.reading().standardUncertainty().millimetres();
    double wear = answer.assumptions().wear().millimetres();
    ReadingDensity expected = CaliperGroup.density(residual.spread(), u, wear, dimension);
    out.note(residual.inWords() + ".");

    Term sigma = Term.of("σ", "\\sigma", expected.sigma(), "mm", DIGITS);
    if (residual.spread() instanceof PartSpread.Limits) {
      out.note(
          "Limits are no scatter: σ is the uncertainty of the reading, " + sigma.quantity() + ".");
    } else {
      out.step(
          "scatter expected of the " + dimension,
          "⟨σ⟩ = √(⟨s⟩² + ⟨u⟩²)",
          "⟨σ⟩ = \\sqrt{⟨s⟩^2 + ⟨u⟩^2}",
          List.of(
              Term.of("s", "s", residual.spread().standardDeviation().millimetres(), "mm", DIGITS),
              Term.of("u", "u", u, "mm", DIGITS)),
          sigma,
          NORMAL);
    }
    Term misfit = Term.of("z(" + name + ")", "z_{" + name + "}", residual.sigmas(), "", DIGITS);
    Term logDensity =
        Term.of("ln f(" + name + ")", "\\ln f_{" + name + "}", expected.logDensity(y), "", DIGITS);
    misfits.add(misfit);
    densities.add(logDensity);
    boolean plain = residual.spread() instanceof PartSpread.Normal && expected.wear() == 0.0;
    if (plain) {
      out.step(
          "misfit",
          "⟨" + misfit.symbol() + "⟩ = (⟨y⟩ − ⟨µ⟩)/⟨σ⟩",
          "⟨" + misfit.symbol() + "⟩ = (⟨y⟩ - ⟨µ⟩)/⟨σ⟩",
          List.of(
              Term.of("y", "y", y, "mm", DIGITS),
              Term.of("µ", "\\mu", residual.spread().nominal().millimetres(), "mm", DIGITS),
              sigma),
          misfit,
          NORMAL);
      out.step(
          "logarithm of its density, per mm",
          "⟨" + logDensity.symbol() + "⟩ = −⟨" + misfit.symbol() + "⟩²/2 − ln(⟨σ⟩ × √(2 × π))",
          "⟨" + logDensity.symbol() + "⟩ = -⟨" + misfit.symbol()
              + "⟩^2/2 - \\ln(⟨σ⟩ \\sqrt{2\\pi})",
          List.of(misfit, Term.of("σ", "\\sigma", expected.sigma(), "", DIGITS)),
          logDensity,
          NORMAL);
      return;
    }
    out.note("Nearest size allowed: from " + Digits.significant(expected.low(), DIGITS) + " mm to "
        + Digits.significant(expected.high(), DIGITS) + " mm"
        + (expected.wear() > 0.0
            ? ", wear of up to " + answer.assumptions().wear().format(LengthUnit.MILLIMETRE)
                + " included"
            : "")
        + "; the misfit from it is z = " + misfit.value() + ".");
    out.note(
        density(residual.spread(), expected.wear() > 0.0) + " ln f = " + logDensity.value() + ".");
  }

  private static String density(PartSpread spread, boolean worn) {
    String fresh;
    if (spread instanceof PartSpread.Limits) {
      fresh = "Density of an even spread from a to b: f = (Φ((y−a)/u) − Φ((y−b)/u))/(b−a)";
    } else if (spread instanceof PartSpread.Sample sample) {
      fresh = "Density of Student's t from " + sample.pieces()
          + " pieces, with s√(1+1/n) for s and the misfit turned into the normal score of the same tail";
    } else {
      fresh = "Density of the normal distribution";
    }
    return worn
        ? fresh + ", averaged over every amount of wear from nothing to the allowance:"
        : fresh + ":";
  }

  /** Readings by one caliper: its error first, then each reading less that error. */
  private static void shared(
      Working.Builder out,
      ProfileCandidate candidate,
      CaliperGroup group,
      List<Term> misfits,
      List<Term> densities) {
    String caliper = group.caliper().label();
    out.note(
        "The readings with the " + caliper
            + " share its error e, which has the standard deviation c; what else they may be off is each one's own.");
    Term c = Term.of("c", "c", group.error().c(), "mm", FINEST);
    List<Residual> residuals = candidate.residuals().stream()
        .filter(residual -> residual.reading().caliper().isPresent()
            && residual.reading().caliper().get() == group.caliper())
        .toList();
    List<Term> given = new ArrayList<>();
    StringBuilder over = new StringBuilder();
    StringBuilder weights = new StringBuilder();
    List<Term> sigmas = new ArrayList<>();
    for (int j = 0; j < residuals.size(); j++) {
      Residual residual = residuals.get(j);
      String name = residual.dimension().symbol();
      out.note(residual.inWords() + ".");
      Term sigma = Term.of(
          "σ(" + name + ")", "\\sigma_{" + name + "}", group.error().own(j).sigma(), "mm", FINER);
      Term difference = Term.of(
          "r(" + name + ")", "r_{" + name + "}", residual.differenceMillimetres(), "mm", DIGITS);
      sigmas.add(sigma);
      if (residual.spread() instanceof PartSpread.Limits) {
        out.note("Limits are no scatter: " + sigma.symbol()
            + " is the reading's own uncertainty, √(u² − c²) = " + sigma.quantity() + ".");
      } else {
        out.step(
            "scatter expected of the " + residual.dimension() + ", without e",
            "⟨" + sigma.symbol() + "⟩ = √(⟨s⟩² + ⟨u⟩² − ⟨c⟩²)",
            "⟨" + sigma.symbol() + "⟩ = \\sqrt{⟨s⟩^2 + ⟨u⟩^2 - ⟨c⟩^2}",
            List.of(
                Term.of(
                    "s", "s", residual.spread().standardDeviation().millimetres(), "mm", FINEST),
                Term.of(
                    "u", "u", residual.reading().standardUncertainty().millimetres(), "mm", FINEST),
                c),
            sigma,
            NORMAL);
      }
      if (group.error().isPlain()) {
        out.step(
            "reading less nominal",
            "⟨" + difference.symbol() + "⟩ = ⟨y⟩ − ⟨µ⟩",
            "⟨" + difference.symbol() + "⟩ = ⟨y⟩ - ⟨µ⟩",
            List.of(
                Term.of("y", "y", residual.reading().length().millimetres(), "mm", DIGITS),
                Term.of("µ", "\\mu", residual.spread().nominal().millimetres(), "mm", DIGITS)),
            difference,
            NORMAL);
        given.add(difference);
        over.append(j == 0 ? "" : " + ")
            .append("⟨" + difference.symbol() + "⟩/⟨" + sigma.symbol() + "⟩²");
        weights.append(j == 0 ? "" : " + ").append("1/⟨" + sigma.symbol() + "⟩²");
      }
    }
    Term error = Term.of("e", "e", group.error().best(), "mm", FINE);
    Term weight = Term.of("W", "W", group.error().weight(), "", FINE);
    if (group.error().isPlain()) {
      List<Term> scatter = new ArrayList<>(sigmas);
      scatter.add(c);
      out.step(
          "weight of the readings against the caliper's own limits",
          "⟨W⟩ = ⟨c⟩² × (" + weights + ")",
          "⟨W⟩ = ⟨c⟩^2 \\times (" + weights.toString().replace("²", "^2") + ")",
          scatter,
          weight,
          COVARIANCE);
      given.addAll(scatter);
      given.add(weight);
      out.step(
          "the caliper's most likely error, were the plug of this profile",
          "⟨e⟩ = ⟨c⟩² × (" + over + ") / (1 + ⟨W⟩)",
          "⟨e⟩ = ⟨c⟩^2 \\times (" + over.toString().replace("²", "^2") + ") / (1 + ⟨W⟩)",
          given,
          error,
          COVARIANCE);
    } else {
      out.note("The caliper's most likely error, were the plug of this profile: e = "
          + error.quantity() + ", where χ² with its own (e/c)² is least.");
    }
    for (int j = 0; j < residuals.size(); j++) {
      less(out, residuals.get(j), group, j, sigmas.get(j), error, misfits, densities);
    }
    Term own = Term.of("z(e)", "z_e", group.error().best() / group.error().c(), "", DIGITS);
    out.step(
        "misfit of the caliper itself",
        "⟨z(e)⟩ = ⟨e⟩/⟨c⟩",
        "⟨z(e)⟩ = ⟨e⟩/⟨c⟩",
        List.of(error, c),
        own,
        COVARIANCE);
    misfits.add(own);
    if (group.error().isPlain()) {
      Term log = Term.of(
          "ln g",
          "\\ln g",
          -0.5
                  * (group.error().best() / group.error().c())
                  * (group.error().best() / group.error().c())
              - 0.5 * Math.log1p(group.error().weight()),
          "",
          DIGITS);
      out.step(
          "what every error the caliper may have adds",
          "⟨ln g⟩ = −⟨z(e)⟩²/2 − ln(1 + ⟨W⟩)/2",
          "⟨ln g⟩ = -⟨z(e)⟩^2/2 - \\ln(1 + ⟨W⟩)/2",
          List.of(own, weight),
          log,
          COVARIANCE);
      densities.add(log);
    } else {
      Term log = Term.of("ln F", "\\ln F", group.error().logLikelihood(), "", DIGITS);
      out.note(
          "Density of these readings together, averaged over every error the caliper may have, "
              + "∫ φ(e/c)/c Π f(y − e) de by small even steps: ln F = " + log.value() + ".");
      densities.add(log);
    }
  }

  private static void less(
      Working.Builder out,
      Residual residual,
      CaliperGroup group,
      int j,
      Term sigma,
      Term error,
      List<Term> misfits,
      List<Term> densities) {
    String name = residual.dimension().symbol();
    double y = residual.reading().length().millimetres() - group.error().best();
    ReadingDensity expected = group.error().own(j);
    Term misfit = Term.of("z(" + name + ")", "z_{" + name + "}", expected.misfit(y), "", DIGITS);
    misfits.add(misfit);
    if (!group.error().isPlain()) {
      out.note("Less e, the " + residual.dimension() + " misses the nearest size allowed, from "
          + Digits.significant(expected.low(), DIGITS) + " mm to "
          + Digits.significant(expected.high(), DIGITS) + " mm, by z = " + misfit.value() + ".");
      return;
    }
    Term difference = Term.of(
        "r(" + name + ")", "r_{" + name + "}", residual.differenceMillimetres(), "mm", DIGITS);
    out.step(
        "misfit less the caliper's error",
        "⟨" + misfit.symbol() + "⟩ = (⟨" + difference.symbol() + "⟩ − ⟨e⟩)/⟨" + sigma.symbol()
            + "⟩",
        "⟨" + misfit.symbol() + "⟩ = (⟨" + difference.symbol() + "⟩ - ⟨e⟩)/⟨" + sigma.symbol()
            + "⟩",
        List.of(difference, error, sigma),
        misfit,
        NORMAL);
    Term logDensity =
        Term.of("ln f(" + name + ")", "\\ln f_{" + name + "}", expected.logDensity(y), "", DIGITS);
    out.step(
        "logarithm of its density, per mm",
        "⟨" + logDensity.symbol() + "⟩ = −⟨" + misfit.symbol() + "⟩²/2 − ln(⟨" + sigma.symbol()
            + "⟩ × √(2 × π))",
        "⟨" + logDensity.symbol() + "⟩ = -⟨" + misfit.symbol() + "⟩^2/2 - \\ln(⟨" + sigma.symbol()
            + "⟩ \\sqrt{2\\pi})",
        List.of(
            misfit, Term.of(sigma.symbol(), "\\sigma_{" + name + "}", expected.sigma(), "", FINER)),
        logDensity,
        NORMAL);
    densities.add(logDensity);
  }

  private static void posterior(
      Working.Builder out, Evidence answer, List<ProfileCandidate> shown) {
    List<Term> given = new ArrayList<>();
    StringBuilder sum = new StringBuilder();
    StringBuilder latex = new StringBuilder();
    // all weights are taken against the best, which keeps them printable where every likelihood is
    // minute
    double best = shown.get(0).logLikelihood();
    given.add(Term.of("ln L1", "\\ln L_1", best, "", DIGITS));
    int k = 0;
    for (ProfileCandidate candidate : shown) {
      k++;
      String p = "p" + k;
      String l = "ln L" + k;
      given.add(Term.of(p, "p_{" + k + "}", candidate.prior(), "", DIGITS));
      if (k > 1) {
        given.add(Term.of(l, "\\ln L_{" + k + "}", candidate.logLikelihood(), "", DIGITS));
      }
      sum.append(k == 1 ? "" : " + ").append("⟨" + p + "⟩ × exp(⟨" + l + "⟩ − ⟨ln L1⟩)");
      latex.append(k == 1 ? "" : " + ").append("⟨" + p + "⟩ e^{⟨" + l + "⟩ - ⟨ln L1⟩}");
    }
    double unknownPrior = answer.assumptions().unknownPrior();
    if (unknownPrior > 0.0) {
      int clues = answer.clues().size();
      double logUnknown = answer.logUnknownLikelihood();
      Term count = Term.of("n", "n", answer.readings().size(), "", DIGITS);
      Term unknown = Term.of("ln Lu", "\\ln L_u", logUnknown, "", DIGITS);
      out.step(
          "logarithm of the likelihood of an unknown plug",
          "⟨ln Lu⟩ = ⟨n⟩ × ln(1/10)" + (clues == 0 ? "" : " + ⟨c⟩ × ln(1/2)"),
          "⟨ln Lu⟩ = ⟨n⟩ \\ln(1/10)" + (clues == 0 ? "" : " + ⟨c⟩ \\ln(1/2)"),
          clues == 0 ? List.of(count) : List.of(count, Term.of("c", "c", clues, "", DIGITS)),
          unknown,
          UNKNOWN);
      given.add(Term.of("pu", "p_u", unknownPrior, "", DIGITS));
      given.add(unknown);
      sum.append(" + ⟨pu⟩ × exp(⟨ln Lu⟩ − ⟨ln L1⟩)");
      latex.append(" + ⟨pu⟩ e^{⟨ln Lu⟩ - ⟨ln L1⟩}");
    }
    double total = shown.get(0).prior() / shown.get(0).probability();
    if (!Double.isFinite(total)) {
      out.note(
          "The likelihood of the best profile is nothing beside that of an unknown plug; the chance of the unknown is "
              + Digits.percent(answer.unknownProbability()) + ".");
      return;
    }
    Term sumTerm = Term.of("S", "S", total, "", DIGITS);
    out.step(
        "sum of all weights, against the best profile",
        "⟨S⟩ = " + sum,
        "⟨S⟩ = " + latex,
        given,
        sumTerm,
        BAYES);
    k = 0;
    for (ProfileCandidate candidate : shown) {
      k++;
      chance(
          out,
          candidate.profile().displayName(),
          k,
          candidate.prior(),
          candidate.logLikelihood(),
          best,
          sumTerm,
          candidate.probability());
    }
    if (unknownPrior > 0.0) {
      out.note("None of the set: what is left, "
          + Digits.significant(answer.unknownProbability(), 5) + ".");
    }
  }

  private static void chance(
      Working.Builder out,
      String name,
      int k,
      double prior,
      double logLikelihood,
      double best,
      Term sum,
      double probability) {
    List<Term> given = List.of(
        Term.of("p" + k, "p_{" + k + "}", prior, "", DIGITS),
        Term.of("Δ", "\\Delta", logLikelihood - best, "", DIGITS),
        sum);
    out.step(
        "chance of " + name + ", with Δ the difference of ln L to the best",
        "⟨P" + k + "⟩ = ⟨p" + k + "⟩ × exp(⟨Δ⟩) / ⟨S⟩",
        "⟨P" + k + "⟩ = ⟨p" + k + "⟩ e^{⟨Δ⟩} / ⟨S⟩",
        given,
        Term.of("P" + k, "P_{" + k + "}", probability, "", DIGITS),
        BAYES);
  }
}
