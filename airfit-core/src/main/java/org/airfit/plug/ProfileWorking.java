package org.airfit.plug;

import java.util.ArrayList;
import java.util.List;
import org.airfit.internal.Digits;
import org.airfit.internal.ReadingDensity;
import org.airfit.internal.SharedError;
import org.airfit.measure.PartSpread;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/** Writes down how the readings and clues lie to one profile, up to the logarithm of their likelihood. */
final class ProfileWorking {

  /** How many digits of a likelihood are printed. */
  static final int DIGITS = 4;

  /** How many digits of a size are printed that a reading is compared with: micrometres up to 999 mm. */
  private static final int SIZE_DIGITS = 6;

  static final Source BAYES = Source.handbook("Bayes' rule");

  private static final double METRES_PER_MM = 1.0e-3;

  private static final Source NORMAL =
      Source.handbook("normal distribution; variances of independent errors add (GUM 5.1.2)");
  private static final Source COVARIANCE = Source.handbook(
      "normal distribution with covariance c² between readings that share an error (GUM 5.2.2)");
  private static final Source CHI_SQUARE = Source.handbook("chi-square distribution");

  private static final Symbol S = Symbol.of("s", ValueKind.SMALL_LENGTH);
  private static final Symbol U = Symbol.of("u", ValueKind.SMALL_LENGTH);
  private static final Symbol Y = Symbol.of("y", ValueKind.SMALL_LENGTH);
  private static final Symbol NOMINAL = Symbol.of("µ", "\\mu", ValueKind.SMALL_LENGTH);
  private static final Symbol NEAREST = Symbol.of("a", ValueKind.SMALL_LENGTH);
  private static final Symbol SIGMA = Symbol.of("σ", "\\sigma", ValueKind.SMALL_LENGTH);
  private static final Symbol SQUARE = Symbol.of("χ²", "\\chi^2", ValueKind.NUMBER);
  private static final Symbol FREEDOM = Symbol.of("k", ValueKind.NUMBER);
  private static final Symbol TAIL = Symbol.of("tail", "p_\\mathrm{tail}", ValueKind.NUMBER);
  private static final Symbol MISSING = Symbol.of("m", ValueKind.NUMBER);

  private static final Formula SCATTER =
      Formula.of("scatter expected of the reading", "⟨σ⟩ = √(⟨s⟩² + ⟨u⟩²)", NORMAL, SIGMA, S, U);
  private static final Formula HOW_OFTEN = Formula.of(
      "how often a genuine plug fits as badly; below 0.01 it does not match",
      "⟨tail⟩ = Q(⟨k⟩/2, ⟨χ²⟩/2)",
      CHI_SQUARE,
      TAIL,
      FREEDOM,
      SQUARE);

  private final Evidence evidence;
  private final ProfileCandidate candidate;
  private final UnitSystem units;
  private final double wear;
  private final Working.Builder out;

  /** What adds up to χ² when squared, and to the logarithm of the likelihood. */
  private final List<Symbol> misfits = new ArrayList<>();

  private final List<Symbol> densities = new ArrayList<>();

  private ProfileWorking(Evidence evidence, ProfileCandidate candidate, UnitSystem units) {
    this.evidence = evidence;
    this.candidate = candidate;
    this.units = units;
    this.wear = evidence.assumptions().wear().millimetres();
    this.out = Working.titled(candidate.profile().toString(), units);
  }

  /** The working of one profile, whose answer is {@code result}, the logarithm of the likelihood. */
  static Working of(
      Evidence evidence, ProfileCandidate candidate, Symbol result, UnitSystem units) {
    return new ProfileWorking(evidence, candidate, units).written(result);
  }

  private Working written(Symbol result) {
    List<Residual> residuals = candidate.residuals();
    List<CaliperGroup> groups = CaliperGroup.of(
        residuals.stream().map(Residual::reading).toList(),
        residuals.stream().map(Residual::spread).toList(),
        wear);
    for (Residual residual : residuals) {
      if (!evidence.readings().contains(residual.reading())) {
        out.note(
            "The tip length was not taken as this profile states it. With the nominal collar and groove diameters it "
                + "becomes "
                + residual.reading().inWords(units) + " (plane geometry, see GaugeBall).");
      }
      if (!CaliperGroup.shares(groups, residual.reading())) {
        alone(residual);
      }
    }
    for (CaliperGroup group : groups) {
      new SharedWorking(group, groups.size() == 1 ? "" : " " + (groups.indexOf(group) + 1)).write();
    }
    int unread = evidence.readings().size() - residuals.size();
    if (unread > 0) {
      out.note(
          "The profile does not know " + unread
              + " of the dimensions read as they were taken; each counts ln(1/10), as for an unknown plug.");
    }
    List<Symbol> answers = new ArrayList<>();
    if (!misfits.isEmpty()) {
      fit();
      answers.add(TAIL);
    }
    clues();
    likelihood(result, unread);
    answers.add(result);
    return out.answer(answers.toArray(new Symbol[0])).build();
  }

  private void fit() {
    out.step(
        Formula.of(
            "chi-square",
            "⟨χ²⟩ = " + joined(misfits, "⟨", "⟩²"),
            CHI_SQUARE,
            with(misfits, SQUARE)),
        candidate.chiSquare(),
        DIGITS);
    out.given(FREEDOM, candidate.degreesOfFreedom(), DIGITS);
    out.step(HOW_OFTEN, candidate.tailProbability(), DIGITS);
  }

  private void clues() {
    int number = 0;
    for (Clue clue : evidence.clues()) {
      number++;
      double chance = clue.chance(candidate.profile());
      out.note("Clue " + number + ", " + clue + ": a plug of this profile shows it with the chance "
          + Digits.read(Digits.significant(chance, DIGITS)) + ".");
      Symbol log = Symbol.of("ln c" + number, "\\ln c_{" + number + "}", ValueKind.NUMBER);
      out.given(log, Math.log(chance), DIGITS);
      densities.add(log);
    }
  }

  private void likelihood(Symbol result, int unread) {
    List<Symbol> symbols = new ArrayList<>(densities);
    String sum = joined(densities, "⟨", "⟩");
    if (unread > 0) {
      out.given(MISSING, unread, DIGITS);
      symbols.add(MISSING);
      sum += (sum.isEmpty() ? "" : " + ") + "⟨m⟩ × ln(1/10)";
    }
    out.step(
        Formula.of(
            "logarithm of the likelihood",
            "⟨" + result.text() + "⟩ = " + sum,
            BAYES,
            with(symbols, result)),
        candidate.logLikelihood(),
        DIGITS);
  }

  private static String joined(List<Symbol> symbols, String before, String after) {
    StringBuilder sum = new StringBuilder();
    for (Symbol symbol : symbols) {
      sum.append(sum.length() == 0 ? "" : " + ")
          .append(before)
          .append(symbol.text())
          .append(after);
    }
    return sum.toString();
  }

  private static Symbol[] with(List<Symbol> symbols, Symbol... more) {
    List<Symbol> all = new ArrayList<>(List.of(more));
    all.addAll(symbols);
    return all.toArray(new Symbol[0]);
  }

  private static Symbol misfit(String name) {
    return Symbol.of("z(" + name + ")", "z_{" + name + "}", ValueKind.NUMBER);
  }

  private static Symbol logDensity(String name) {
    return Symbol.of("ln f(" + name + ")", "\\ln f_{" + name + "}", ValueKind.NUMBER);
  }

  private String said(double mm) {
    return ValueKind.SMALL_LENGTH.format(mm * METRES_PER_MM, DIGITS, units);
  }

  /** A size from which a reading is taken: with the digits that the difference needs. */
  private String size(double mm) {
    return ValueKind.SMALL_LENGTH.format(mm * METRES_PER_MM, SIZE_DIGITS, units);
  }

  /** ln f = −z²/2 − ln(σ√(2π)), per millimetre. */
  private static Formula density(Symbol result, Symbol misfit, Symbol sigma) {
    return Formula.of(
        "logarithm of its density, per mm",
        "⟨" + result.text() + "⟩ = −⟨" + misfit.text() + "⟩²/2 − ln([25.4] × ⟨" + sigma.text()
            + "⟩ × √(2 × π))",
        NORMAL,
        result,
        misfit,
        sigma);
  }

  /** A reading that shares its error with no other. */
  private void alone(Residual residual) {
    String name = residual.dimension().symbol();
    double y = residual.reading().length().millimetres();
    double u = residual.reading().standardUncertainty().millimetres();
    ReadingDensity expected =
        CaliperGroup.density(residual.spread(), u, wear, residual.dimension());
    out.note(residual.inWords(units) + ".");
    Symbol misfit = misfit(name);
    Symbol logDensity = logDensity(name);
    misfits.add(misfit);
    densities.add(logDensity);
    if (!(residual.spread() instanceof PartSpread.Normal)) {
      out.note(scatterInWords("σ", residual, expected.sigma(), 0.0));
      out.note(nearest(expected) + "; the misfit from it is z = "
          + Digits.read(Digits.significant(residual.sigmas(), DIGITS)) + ".");
      told(residual, expected, y, misfit, logDensity);
      return;
    }
    out.given(S, residual.spread().standardDeviation().metres(), DIGITS);
    out.given(U, u * METRES_PER_MM, DIGITS);
    out.step(SCATTER, expected.sigma() * METRES_PER_MM, DIGITS);
    out.given(Y, y * METRES_PER_MM, DIGITS);
    if (expected.wear() > 0.0) {
      out.note(nearest(expected) + ".");
      out.given(
          NEAREST, Math.max(expected.low(), Math.min(expected.high(), y)) * METRES_PER_MM, DIGITS);
      out.step(
          difference("misfit from the nearest size allowed", misfit, NEAREST),
          residual.sigmas(),
          DIGITS);
      out.note(density(residual.spread(), true) + " ln f = "
          + Digits.read(Digits.significant(expected.logDensity(y), DIGITS)) + ".");
      out.given(logDensity, expected.logDensity(y), DIGITS);
      out.forget(S, U, SIGMA, Y, NEAREST);
      return;
    }
    out.given(NOMINAL, residual.spread().nominal().metres(), DIGITS);
    out.step(difference("misfit", misfit, NOMINAL), residual.sigmas(), DIGITS);
    out.step(density(logDensity, misfit, SIGMA), expected.logDensity(y), DIGITS);
    out.forget(S, U, SIGMA, Y, NOMINAL);
  }

  private static Formula difference(String what, Symbol misfit, Symbol from) {
    return Formula.of(
        what,
        "⟨" + misfit.text() + "⟩ = (⟨y⟩ − ⟨" + from.text() + "⟩)/⟨σ⟩",
        NORMAL,
        misfit,
        Y,
        from,
        SIGMA);
  }

  /** Where the density is no normal one its values are told, not worked out. */
  private void told(
      Residual residual, ReadingDensity expected, double y, Symbol misfit, Symbol logDensity) {
    out.given(misfit, residual.sigmas(), DIGITS);
    out.note(density(residual.spread(), expected.wear() > 0.0) + " ln f = "
        + Digits.read(Digits.significant(expected.logDensity(y), DIGITS)) + ".");
    out.given(logDensity, expected.logDensity(y), DIGITS);
  }

  /** The scatter without c, the part of the uncertainty that readings share; c is 0 where they share none [mm]. */
  private String scatterInWords(String symbol, Residual residual, double sigma, double c) {
    PartSpread spread = residual.spread();
    String u = "u = " + said(residual.reading().standardUncertainty().millimetres());
    return spread instanceof PartSpread.Limits
        ? "Limits are no scatter: " + symbol + " is the uncertainty of the reading, " + said(sigma)
            + "."
        : "Scatter expected of the reading, √(s² + u²" + (c > 0.0 ? " − c²" : "") + ") with s = "
            + said(spread.standardDeviation().millimetres())
            + ", " + u + (c > 0.0 ? ", c = " + said(c) : "") + ": " + symbol + " = "
            + said(sigma) + ".";
  }

  /** The degrees of freedom of Welch and Satterthwaite, where only the part s of the scatter is known from pieces. */
  private static String freedomInWords(PartSpread.Sample sample, double sigma) {
    double part = sigma / sample.standardDeviation().millimetres();
    return "Its density f is Student's t with (n − 1) × (σ/s)⁴ = "
        + Digits.read(Digits.significant(sample.degreesOfFreedom() * part * part * part * part, 4))
        + " degrees of freedom, from n = " + sample.pieces()
        + " pieces; the misfit z is the normal score of the same tail.";
  }

  private String nearest(ReadingDensity expected) {
    return expected.low() == expected.high()
        ? "Nominal size: " + size(expected.low())
        : "Nearest size allowed: from " + size(expected.low()) + " to " + size(expected.high())
            + (expected.wear() > 0.0 ? ", wear of up to " + said(wear) + " included" : "");
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
  private final class SharedWorking {

    private final CaliperGroup group;
    private final SharedError error;
    private final List<Residual> residuals;
    private final Symbol c;
    private final Symbol e;
    private final Symbol weight;
    private final Symbol ownMisfit;
    private final Symbol ofErrors;

    SharedWorking(CaliperGroup group, String tag) {
      String number = tag.strip();
      this.group = group;
      this.error = group.error();
      this.residuals = candidate.residuals().stream()
          .filter(residual -> CaliperGroup.isBy(group.caliper(), residual.reading()))
          .toList();
      this.c = Symbol.of("c" + number, ValueKind.SMALL_LENGTH);
      this.e = Symbol.of("e" + number, ValueKind.SMALL_LENGTH);
      this.weight = Symbol.of("W" + number, ValueKind.NUMBER);
      this.ownMisfit = Symbol.of("z(e" + number + ")", "z_{e" + number + "}", ValueKind.NUMBER);
      String letter = error.isPlain() ? "g" : "F";
      this.ofErrors = Symbol.of(
          "ln " + letter + number,
          "\\ln " + letter + (number.isEmpty() ? "" : "_{" + number + "}"),
          ValueKind.NUMBER);
    }

    void write() {
      out.note(
          "The readings with the " + group.caliper().label()
              + " share its error e, which has the standard deviation c; what else they may be off is each one's own.");
      out.given(c, error.c() * METRES_PER_MM, DIGITS);
      if (error.isPlain()) {
        plain();
      } else {
        told();
      }
    }

    private Symbol sigma(Residual residual) {
      String name = residual.dimension().symbol();
      return Symbol.of("σ(" + name + ")", "\\sigma_{" + name + "}", ValueKind.SMALL_LENGTH);
    }

    private Symbol off(Residual residual) {
      String name = residual.dimension().symbol();
      return Symbol.of("r(" + name + ")", "r_{" + name + "}", ValueKind.SMALL_LENGTH);
    }

    private void plain() {
      List<Symbol> sigmas = new ArrayList<>();
      List<Symbol> all = new ArrayList<>();
      List<String> over = new ArrayList<>();
      for (int j = 0; j < residuals.size(); j++) {
        Residual residual = residuals.get(j);
        Symbol sigma = sigma(residual);
        Symbol off = off(residual);
        out.note(residual.inWords(units) + ".");
        out.given(S, residual.spread().standardDeviation().metres(), DIGITS);
        out.given(U, residual.reading().standardUncertainty().metres(), DIGITS);
        out.step(
            Formula.of(
                "scatter expected of the " + residual.dimension() + ", without e",
                "⟨" + sigma.text() + "⟩ = √(⟨s⟩² + ⟨u⟩² − ⟨" + c.text() + "⟩²)",
                NORMAL,
                sigma,
                S,
                U,
                c),
            error.own(j).sigma() * METRES_PER_MM,
            DIGITS);
        out.given(Y, residual.reading().length().metres(), DIGITS);
        out.given(NOMINAL, residual.spread().nominal().metres(), DIGITS);
        out.step(
            Formula.of(
                "reading less nominal",
                "⟨" + off.text() + "⟩ = ⟨y⟩ − ⟨µ⟩",
                NORMAL,
                off,
                Y,
                NOMINAL),
            residual.differenceMillimetres() * METRES_PER_MM,
            DIGITS);
        out.forget(S, U, Y, NOMINAL);
        sigmas.add(sigma);
        all.add(off);
        over.add("⟨" + off.text() + "⟩/⟨" + sigma.text() + "⟩²");
      }
      String c2 = "⟨" + c.text() + "⟩²";
      out.step(
          Formula.of(
              "weight of the readings against the caliper's own limits",
              "⟨" + weight.text() + "⟩ = " + c2 + " × (" + joined(sigmas, "1/⟨", "⟩²") + ")",
              COVARIANCE,
              with(sigmas, weight, c)),
          error.weight(),
          DIGITS);
      all.addAll(sigmas);
      out.step(
          Formula.of(
              "the caliper's most likely error, were the plug of this profile",
              "⟨" + e.text() + "⟩ = " + c2 + " × (" + String.join(" + ", over) + ") / (1 + ⟨"
                  + weight.text() + "⟩)",
              COVARIANCE,
              with(all, e, c, weight)),
          error.best() * METRES_PER_MM,
          DIGITS);
      for (int j = 0; j < residuals.size(); j++) {
        lessError(residuals.get(j), error.own(j));
      }
      ofTheCaliper();
      out.step(
          Formula.of(
              "what every error the caliper may have adds",
              "⟨" + ofErrors.text() + "⟩ = −⟨" + ownMisfit.text() + "⟩²/2 − ln(1 + ⟨"
                  + weight.text() + "⟩)/2",
              COVARIANCE,
              ofErrors,
              ownMisfit,
              weight),
          -0.5 * (error.best() / error.c()) * (error.best() / error.c())
              - 0.5 * Math.log1p(error.weight()),
          DIGITS);
      densities.add(ofErrors);
    }

    private void lessError(Residual residual, ReadingDensity own) {
      String name = residual.dimension().symbol();
      double y = residual.reading().length().millimetres() - error.best();
      Symbol misfit = misfit(name);
      Symbol sigma = sigma(residual);
      Symbol off = off(residual);
      out.step(
          Formula.of(
              "misfit less the caliper's error",
              "⟨" + misfit.text() + "⟩ = (⟨" + off.text() + "⟩ − ⟨" + e.text() + "⟩)/⟨"
                  + sigma.text() + "⟩",
              NORMAL,
              misfit,
              off,
              e,
              sigma),
          own.misfit(y),
          DIGITS);
      out.step(density(logDensity(name), misfit, sigma), own.logDensity(y), DIGITS);
      misfits.add(misfit);
      densities.add(logDensity(name));
    }

    private void ofTheCaliper() {
      out.step(
          Formula.of(
              "misfit of the caliper itself",
              "⟨" + ownMisfit.text() + "⟩ = ⟨" + e.text() + "⟩/⟨" + c.text() + "⟩",
              COVARIANCE,
              ownMisfit,
              e,
              c),
          error.best() / error.c(),
          DIGITS);
      misfits.add(ownMisfit);
    }

    /** Where one of the densities is no normal one. */
    private void told() {
      for (int j = 0; j < residuals.size(); j++) {
        Residual residual = residuals.get(j);
        out.note(residual.inWords(units) + ".");
        out.note(scatterInWords(
            sigma(residual).text() + ", without e,", residual, error.own(j).sigma(), error.c()));
        if (residual.spread() instanceof PartSpread.Sample sample) {
          out.note(freedomInWords(sample, error.own(j).sigma()));
        }
      }
      out.given(e, error.best() * METRES_PER_MM, DIGITS);
      out.note("The caliper's most likely error, were the plug of this profile: e = "
          + said(error.best()) + ", where χ² with its own (e/c)² is least.");
      for (int j = 0; j < residuals.size(); j++) {
        Residual residual = residuals.get(j);
        ReadingDensity own = error.own(j);
        double z = own.misfit(residual.reading().length().millimetres() - error.best());
        Symbol misfit = misfit(residual.dimension().symbol());
        String missed = own.low() == own.high()
            ? " misses the nominal size " + size(own.low())
            : " misses the nearest size allowed, from " + size(own.low()) + " to "
                + size(own.high()) + ",";
        out.note("Less e, the " + residual.dimension() + missed + " by z = "
            + Digits.read(Digits.significant(z, DIGITS)) + ".");
        out.given(misfit, z, DIGITS);
        misfits.add(misfit);
      }
      ofTheCaliper();
      out.note(
          "Density of these readings together, averaged over every error the caliper may have, "
              + "∫ φ(e/c)/c Π f(y − e) de, added up over e in small equal steps: " + ofErrors.text()
              + " = "
              + Digits.read(Digits.significant(error.logLikelihood(), DIGITS)) + ".");
      out.given(ofErrors, error.logLikelihood(), DIGITS);
      densities.add(ofErrors);
    }
  }
}
