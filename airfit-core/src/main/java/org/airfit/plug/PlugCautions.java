package org.airfit.plug;

import java.util.ArrayList;
import java.util.List;
import org.airfit.safety.Caution;
import org.airfit.source.Source;

/** The warnings that go with every answer about a plug. */
final class PlugCautions {

  static final Caution MATING = new Caution(
      "Mating check",
      "Dimensions that agree do not prove that two halves mate safely. Try them depressurised first, then raise the "
          + "pressure "
          + "slowly and check for leaks, and pull at the joint.",
      Source.commonPractice(
          "depressurised mating check, then slow pressurised leak and pull check"));

  static final Caution RATING = new Caution(
      "Pressure rating",
      "A pair is rated for the lower of the pressures its two halves are marked with. An unmarked half has no rating; "
          + "ask its maker or replace it.",
      Source.commonPractice("a joint is as strong as its weaker half"));

  static final Caution AIR_ONLY = new Caution(
      "Compressed air only",
      "Welding-gas and hydraulic couplings are made not to fit air couplings, and are never offered here. Do not "
          + "force a plug "
          + "that nearly fits.",
      Source.standard(
          "ISO 7289, scope: not interchangeable with ISO 6150; seen in a secondary transcription"));

  static final Caution MARKINGS = new Caution(
      "Markings",
      "Letters and trade words mean different profiles in different places. A marking hints; the caliper decides.",
      Source.commonPractice("stored trade pages give the letters A and B to several families"));

  private PlugCautions() {}

  static Caution provenance(Provenance weakest) {
    return new Caution(
        "Reference set",
        "The set holds dimensions that are " + weakest
            + ", so an answer from it is a candidate at most. Use a set that was entered from a standard or measured "
            + "on "
            + "five known plugs of each profile.",
        Source.commonPractice("this project's rule: only a standard, or "
            + Provenance.PIECES_TO_IDENTIFY + " measured pieces, identify"));
  }

  static List<Caution> forAnswer(Provenance weakest, boolean marked) {
    List<Caution> cautions = new ArrayList<>(List.of(MATING, RATING, AIR_ONLY));
    if (!weakest.canIdentify()) {
      cautions.add(0, provenance(weakest));
    }
    if (marked) {
      cautions.add(MARKINGS);
    }
    return List.copyOf(cautions);
  }
}
