package org.airfit.thread;

import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.ValueKind;

/** The equations of the American pipe threads, which their standard writes in inches; see {@link NptThread}. */
final class NptFormulas {

  private static final Source SOURCE = ThreadFamily.NPT.source();

  static final Symbol D = inches("D");
  static final Symbol N = Symbol.of("n", ValueKind.PER_INCH);
  static final Symbol P = inches("p");
  static final Symbol H = inches("h");
  static final Symbol E0 = inches("E0");
  static final Symbol E1 = inches("E1");
  static final Symbol E2 = inches("E2");
  static final Symbol E3 = inches("E3");
  static final Symbol E5 = inches("E5");
  static final Symbol L1 = inches("L1");
  static final Symbol L2 = inches("L2");
  static final Symbol L3 = inches("L3");
  static final Symbol L4 = inches("L4");
  static final Symbol L5 = inches("L5");
  static final Symbol V = inches("V");
  static final Symbol W = Symbol.of("w", ValueKind.NUMBER);
  static final Symbol K0 = inches("K0");
  static final Symbol FIRST_CREST = inches("d");
  static final Symbol PIPE_CREST = inches("c");
  static final Symbol MOUTH = inches("b");

  static final Formula PITCH = formula("Pitch", "⟨p⟩ = 1 in / ⟨n⟩", P, N);
  static final Formula HEIGHT = formula("Height of the thread", "⟨h⟩ = 0.8 × ⟨p⟩", H, P);
  static final Formula SMALL_END = formula(
      "Pitch diameter at the small end",
      "⟨E0⟩ = ⟨D⟩ − (0.05 × ⟨D⟩ + 1.1 in) × ⟨p⟩ / 1 in",
      E0,
      D,
      P);
  static final Formula HAND_TIGHT =
      formula("Pitch diameter at the hand-tight plane", "⟨E1⟩ = ⟨E0⟩ + ⟨L1⟩ / 16", E1, E0, L1);
  static final Formula EFFECTIVE_LENGTH =
      formula("Effective length", "⟨L2⟩ = (0.8 × ⟨D⟩ + 6.8 in) × ⟨p⟩ / 1 in", L2, D, P);
  static final Formula EFFECTIVE_END = formula(
      "Pitch diameter at the end of the effective thread", "⟨E2⟩ = ⟨E0⟩ + ⟨L2⟩ / 16", E2, E0, L2);
  static final Formula WRENCH = formula("Wrench make-up", "⟨L3⟩ = ⟨w⟩ × ⟨p⟩", L3, W, P);
  static final Formula INSIDE =
      formula("Pitch diameter inside the female thread", "⟨E3⟩ = ⟨E0⟩ − ⟨L3⟩ / 16", E3, E0, L3);
  static final Formula VANISH = formula("Vanish thread", "⟨V⟩ = 3.47 × ⟨p⟩", V, P);
  static final Formula WHOLE = formula("Whole length", "⟨L4⟩ = ⟨L2⟩ + ⟨V⟩", L4, L2, V);
  static final Formula FULL_CRESTS = formula("Full crests", "⟨L5⟩ = ⟨L2⟩ − 2 × ⟨p⟩", L5, L2, P);
  static final Formula FULL_CRESTS_END = formula(
      "Pitch diameter at the end of the full crests", "⟨E5⟩ = ⟨E0⟩ + ⟨L5⟩ / 16", E5, E0, L5);
  static final Formula CRESTS_MEET_PIPE = formula(
      "Check: the crest there is the outside of the pipe, D",
      "⟨c⟩ = ⟨E5⟩ + ⟨h⟩",
      PIPE_CREST,
      E5,
      H);
  static final Formula MINOR =
      formula("Minor diameter at the small end", "⟨K0⟩ = ⟨E0⟩ − ⟨h⟩", K0, E0, H);
  static final Formula CREST =
      formula("Crest of the first thread", "⟨d⟩ = ⟨E0⟩ + ⟨h⟩", FIRST_CREST, E0, H);
  static final Formula BORE =
      formula("Bore at the mouth of the female thread", "⟨b⟩ = ⟨E1⟩ − ⟨h⟩", MOUTH, E1, H);

  private NptFormulas() {}

  static Symbol inches(String text) {
    return Symbol.of(text, ValueKind.INCHES);
  }

  private static Formula formula(String what, String definition, Symbol... symbols) {
    return Formula.of(what, definition, SOURCE, symbols);
  }
}
