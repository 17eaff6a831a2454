package org.airfit.line;

import static org.airfit.line.LineSymbols.FRICTION;
import static org.airfit.line.LineSymbols.REYNOLDS;
import static org.airfit.line.LineSymbols.ROUGHNESS;

import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/** The step from the Reynolds number to the friction factor, for every law of friction. */
final class FrictionWorking {

  private static final String TURBULENT = "Friction factor (Darcy), turbulent";

  /** Digits of what comes between, of which more are printed where the friction factor needs them. */
  private static final int DIGITS = 4;

  private static final Symbol A = Symbol.of("a", ValueKind.NUMBER);
  private static final Symbol B = Symbol.of("b", ValueKind.NUMBER);
  private static final Symbol C = Symbol.of("c", ValueKind.NUMBER);

  private static final Formula LAMINAR = Formula.of(
      "Friction factor (Darcy), laminar",
      "⟨λ⟩ = 64 / ⟨Re⟩",
      Source.handbook("Hagen and Poiseuille"),
      FRICTION,
      REYNOLDS);

  private static final Formula COLEBROOK = Formula.solvedFor(
      FRICTION,
      TURBULENT,
      "1/√⟨λ⟩ = −2 × log10(⟨ε/D⟩ / 3.7 + 2.51 / (⟨Re⟩ × √⟨λ⟩))",
      FrictionLaw.COLEBROOK.source(),
      ROUGHNESS,
      REYNOLDS);

  private static final Formula HAALAND =
      explicit(FrictionLaw.HAALAND, "⟨λ⟩ = 1 / (1.8 × log10((⟨ε/D⟩ / 3.7)^1.11 + 6.9 / ⟨Re⟩))²");

  private static final Formula SWAMEE_JAIN =
      explicit(FrictionLaw.SWAMEE_JAIN, "⟨λ⟩ = 0.25 / log10(⟨ε/D⟩ / 3.7 + 5.74 / ⟨Re⟩^0.9)²");

  private static final Formula CHURCHILL_1973 =
      explicit(FrictionLaw.CHURCHILL_1973, "⟨λ⟩ = 0.25 / log10(⟨ε/D⟩ / 3.7 + (7 / ⟨Re⟩)^0.9)²");

  private static final Formula CHURCHILL_A = between(
      FrictionLaw.CHURCHILL_1977,
      A,
      "⟨a⟩ = (2.457 × ln((7 / ⟨Re⟩)^0.9 + 0.27 × ⟨ε/D⟩))^16",
      REYNOLDS,
      ROUGHNESS);

  private static final Formula CHURCHILL_B =
      between(FrictionLaw.CHURCHILL_1977, B, "⟨b⟩ = (37530 / ⟨Re⟩)^16", REYNOLDS);

  private static final Formula CHURCHILL_1977 = Formula.of(
      "Friction factor (Darcy)",
      "⟨λ⟩ = 8 × ((8 / ⟨Re⟩)^12 + (⟨a⟩ + ⟨b⟩)^(−1.5))^(1 / 12)",
      FrictionLaw.CHURCHILL_1977.source(),
      FRICTION,
      REYNOLDS,
      A,
      B);

  private static final Formula CHEN = explicit(
      FrictionLaw.CHEN,
      "⟨λ⟩ = 0.25 / log10(⟨ε/D⟩ / 3.7065 − 5.0452 / ⟨Re⟩ × log10(⟨ε/D⟩^1.1098 / 2.8257"
          + " + (7.149 / ⟨Re⟩)^0.8981))²");

  private static final Formula ZIGRANG_SYLVESTER_1 = explicit(
      FrictionLaw.ZIGRANG_SYLVESTER_1,
      "⟨λ⟩ = 0.25 / log10(⟨ε/D⟩ / 3.7 − 5.02 / ⟨Re⟩ × log10(⟨ε/D⟩ / 3.7 + 13 / ⟨Re⟩))²");

  private static final Formula ZIGRANG_SYLVESTER_2 = explicit(
      FrictionLaw.ZIGRANG_SYLVESTER_2,
      "⟨λ⟩ = 0.25 / log10(⟨ε/D⟩ / 3.7 − 5.02 / ⟨Re⟩ × log10(⟨ε/D⟩ / 3.7"
          + " − 5.02 / ⟨Re⟩ × log10(⟨ε/D⟩ / 3.7 + 13 / ⟨Re⟩)))²");

  private static final Formula SERGHIDES_A = between(
      FrictionLaw.SERGHIDES_1, A, "⟨a⟩ = −2 × log10(⟨ε/D⟩ / 3.7 + 12 / ⟨Re⟩)", ROUGHNESS, REYNOLDS);

  private static final Formula SERGHIDES_B = between(
      FrictionLaw.SERGHIDES_1,
      B,
      "⟨b⟩ = −2 × log10(⟨ε/D⟩ / 3.7 + 2.51 × ⟨a⟩ / ⟨Re⟩)",
      ROUGHNESS,
      REYNOLDS,
      A);

  private static final Formula SERGHIDES_C = between(
      FrictionLaw.SERGHIDES_1,
      C,
      "⟨c⟩ = −2 × log10(⟨ε/D⟩ / 3.7 + 2.51 × ⟨b⟩ / ⟨Re⟩)",
      ROUGHNESS,
      REYNOLDS,
      B);

  private static final Formula SERGHIDES_1 = Formula.of(
      TURBULENT,
      "⟨λ⟩ = 1 / (⟨a⟩ − (⟨b⟩ − ⟨a⟩)² / (⟨c⟩ − 2 × ⟨b⟩ + ⟨a⟩))²",
      FrictionLaw.SERGHIDES_1.source(),
      FRICTION,
      A,
      B,
      C);

  private static final Formula SERGHIDES_2 = Formula.of(
      TURBULENT,
      "⟨λ⟩ = 1 / (4.781 − (⟨a⟩ − 4.781)² / (⟨b⟩ − 2 × ⟨a⟩ + 4.781))²",
      FrictionLaw.SERGHIDES_2.source(),
      FRICTION,
      A,
      B);

  private static final Formula ALTSHUL =
      explicit(FrictionLaw.ALTSHUL, "⟨λ⟩ = 0.11 × (68 / ⟨Re⟩ + ⟨ε/D⟩)^0.25");

  private static final Formula MOODY =
      explicit(FrictionLaw.MOODY, "⟨λ⟩ = 0.0055 × (1 + (20000 × ⟨ε/D⟩ + 10^6 / ⟨Re⟩)^(1 / 3))");

  private static final Formula MANADILLI = explicit(
      FrictionLaw.MANADILLI, "⟨λ⟩ = 0.25 / log10(⟨ε/D⟩ / 3.7 + 95 / ⟨Re⟩^0.983 − 96.82 / ⟨Re⟩)²");

  private static final Formula BLASIUS = Formula.of(
      TURBULENT, "⟨λ⟩ = 0.3164 / ⟨Re⟩^0.25", FrictionLaw.BLASIUS.source(), FRICTION, REYNOLDS);

  private FrictionWorking() {}

  private static Formula explicit(FrictionLaw law, String definition) {
    return Formula.of(TURBULENT, definition, law.source(), FRICTION, REYNOLDS, ROUGHNESS);
  }

  private static Formula between(
      FrictionLaw law, Symbol result, String definition, Symbol... inputs) {
    Symbol[] symbols = new Symbol[inputs.length + 1];
    symbols[0] = result;
    System.arraycopy(inputs, 0, symbols, 1, inputs.length);
    return Formula.of("In between, for the friction factor", definition, law.source(), symbols);
  }

  /** Adds the steps to λ; Re was found before. */
  static void add(
      Working.Builder working,
      FrictionLaw law,
      double reynolds,
      double relativeRoughness,
      double darcy) {
    boolean laminar =
        reynolds < (law == FrictionLaw.CHURCHILL_1977 ? 1.0 : FrictionLaw.LAMINAR_BELOW);
    if (!laminar && law != FrictionLaw.BLASIUS) {
      working.given(ROUGHNESS, relativeRoughness, 8);
    }
    working.step(laminar ? LAMINAR : turbulent(working, law), darcy, DIGITS);
  }

  /** The formula of λ, after the steps to what comes between. */
  private static Formula turbulent(Working.Builder working, FrictionLaw law) {
    return switch (law) {
      case COLEBROOK -> COLEBROOK;
      case HAALAND -> HAALAND;
      case SWAMEE_JAIN -> SWAMEE_JAIN;
      case CHURCHILL_1973 -> CHURCHILL_1973;
      case CHURCHILL_1977 -> {
        working.step(CHURCHILL_A, DIGITS).step(CHURCHILL_B, DIGITS);
        yield CHURCHILL_1977;
      }
      case CHEN -> CHEN;
      case ZIGRANG_SYLVESTER_1 -> ZIGRANG_SYLVESTER_1;
      case ZIGRANG_SYLVESTER_2 -> ZIGRANG_SYLVESTER_2;
      case SERGHIDES_1 -> {
        working.step(SERGHIDES_A, DIGITS).step(SERGHIDES_B, DIGITS).step(SERGHIDES_C, DIGITS);
        yield SERGHIDES_1;
      }
      case SERGHIDES_2 -> {
        working.step(SERGHIDES_A, DIGITS).step(SERGHIDES_B, DIGITS);
        yield SERGHIDES_2;
      }
      case ALTSHUL -> ALTSHUL;
      case MOODY -> MOODY;
      case MANADILLI -> MANADILLI;
      case BLASIUS -> BLASIUS;
    };
  }
}
