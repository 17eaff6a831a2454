package org.airfit.thread;

import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.ValueKind;

/**
 * The equations of the 55° pipe threads, see {@link BsppThread}. Their standards round pitch and height to 0.001 mm, so
 * that these two stand in mm whatever the units of a working.
 */
final class BspFormulas {

  static final Symbol N = Symbol.of("n", ValueKind.PER_INCH);
  static final Symbol P = Symbol.of("P", ValueKind.MILLIMETRES);
  static final Symbol H = Symbol.of("h", ValueKind.MILLIMETRES);
  static final Symbol D = length("d");
  static final Symbol D2 = length("d2");
  static final Symbol D1 = length("d1");

  private static final Source SOURCE = ThreadFamily.BSPP.source();
  private static final Symbol HEIGHT_OF_DIAMETERS = H.as(ValueKind.SMALL_LENGTH);

  static final Formula PITCH =
      Formula.of("Pitch, to 0.001 mm", "⟨P⟩ = 25.4 mm / ⟨n⟩", SOURCE, P, N);
  static final Formula HEIGHT =
      Formula.of("Height of the thread, to 0.001 mm", "⟨h⟩ = 0.640327 × ⟨P⟩", SOURCE, H, P);
  static final Formula PITCH_DIAMETER =
      Formula.of("Pitch diameter", "⟨d2⟩ = ⟨d⟩ − ⟨h⟩", SOURCE, D2, D, HEIGHT_OF_DIAMETERS);
  static final Formula MINOR_DIAMETER =
      Formula.of("Minor diameter", "⟨d1⟩ = ⟨d⟩ − 2 × ⟨h⟩", SOURCE, D1, D, HEIGHT_OF_DIAMETERS);

  private BspFormulas() {}

  static Symbol length(String text) {
    return Symbol.of(text, ValueKind.SMALL_LENGTH);
  }
}
