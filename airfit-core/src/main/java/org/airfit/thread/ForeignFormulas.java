package org.airfit.thread;

import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;

/** The equations of {@link ForeignThread}; each standard's working is in its own unit, mm or inches. */
final class ForeignFormulas {

  private ForeignFormulas() {}

  private static Formula minor(String right, Source source, Symbol... symbols) {
    return Formula.of(
        "Least minor diameter of the female thread", "⟨d1⟩ = " + right, source, symbols);
  }

  static Working working(String label, Gender gender, ForeignGeometry geometry, UnitSystem units) {
    boolean inches = geometry.standard() == ForeignStandard.UNIFIED
        || geometry.standard() == ForeignStandard.HOSE;
    ValueKind kind = inches ? ValueKind.only("m", "in", 0.0254) : ValueKind.MILLIMETRES;
    Source source = geometry.source();
    Limits crest = geometry.crest(gender);
    Working.Builder out = Working.titled(label + ", limits of the crests", units)
        .given(Symbol.of("d", kind), geometry.major(), 5);
    Symbol d = Symbol.of("d", kind);
    if (gender == Gender.MALE) {
      Symbol es = Symbol.of("es", kind);
      Symbol tolerance = Symbol.of("Td", kind);
      Formula most =
          Formula.of("Largest crest", "⟨x⟩ = ⟨d⟩ − ⟨es⟩", source, Symbol.of("x", kind), d, es);
      Formula least = Formula.of(
          "Smallest crest",
          "⟨y⟩ = ⟨d⟩ − ⟨es⟩ − ⟨Td⟩",
          source,
          Symbol.of("y", kind),
          d,
          es,
          tolerance);
      return out.given(es, geometry.maleAllowance(), 4)
          .given(tolerance, geometry.maleTolerance(), 4)
          .step(most, crest.most().metres(), 5)
          .step(least, crest.least().metres(), 5)
          .answer(most.result(), least.result())
          .build();
    }
    Symbol p = Symbol.of("P", kind);
    Symbol d1 = Symbol.of("d1", kind);
    Symbol tolerance = Symbol.of("TD1", kind);
    out.given(p, geometry.pitch(), 5);
    Formula least = switch (geometry.standard()) {
      case METRIC, UNIFIED -> minor("⟨d⟩ − 1.082532 × ⟨P⟩", source, d1, d, p);
      case PARALLEL_PIPE -> minor("⟨d⟩ − 2 × 0.640327 × ⟨P⟩", source, d1, d, p);
      case HOSE -> {
        Symbol a = Symbol.of("a", kind);
        out.given(a, geometry.minor() - geometry.major() + 2.0 * 0.649519 * geometry.pitch(), 4);
        yield minor("⟨d⟩ − 2 × 0.649519 × ⟨P⟩ + ⟨a⟩", source, d1, d, p, a);
      }
    };
    Formula most = Formula.of(
        "Largest bore between the crests",
        "⟨x⟩ = ⟨d1⟩ + ⟨TD1⟩",
        source,
        Symbol.of("x", kind),
        d1,
        tolerance);
    int digits = geometry.standard() == ForeignStandard.UNIFIED ? 3 : 5;
    return out.given(tolerance, geometry.femaleTolerance(), 4)
        .step(least, crest.least().metres(), digits)
        .step(most, crest.most().metres(), digits)
        .answer(least.result(), most.result())
        .build();
  }
}
