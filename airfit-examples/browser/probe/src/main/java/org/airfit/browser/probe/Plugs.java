package org.airfit.browser.probe;

import java.util.ArrayList;
import java.util.List;
import org.airfit.measure.Instrument;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.ProfileCandidate;
import org.airfit.plug.Residual;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;

/** What plugs are, at random: invented ones, read well and badly. */
final class Plugs {

  private static final List<Instrument> CALIPERS = List.of(Instrument.values());

  private Plugs() {}

  static void tell(Tape tape, int each, int workings) {
    Draw draw = new Draw(10);
    tape.group("plug");
    List<PlugProfile> profiles = DemoProfiles.birds().profiles();
    for (int i = 0; i < each; i++) {
      Instrument caliper = CALIPERS.get(draw.below(CALIPERS.size()));
      PlugProfile plug = profiles.get(draw.below(profiles.size()));
      double off = draw.below(4) == 0 ? draw.between(-1.0, 1.0) : 0.0;
      List<PlugReading> readings = new ArrayList<>();
      for (Dimension dimension : Dimension.values()) {
        if (draw.below(3) > 0) {
          double mm = plug.spread(dimension).orElseThrow().nominal().millimetres()
              + off
              + draw.between(-0.08, 0.08);
          readings.add(PlugReading.of(
              dimension, caliper, Length.ofMillimetres(Math.rint(mm * 100.0) / 100.0)));
        }
      }
      Identifier identifier = Identifier.of(DemoProfiles.birds())
          .withInstrument(caliper)
          .withWearAllowance(
              draw.below(2) == 0 ? Identifier.usualWear() : Length.ofMillimetres(0.0));
      tell(
          tape,
          (draw.below(2) == 0 ? identifier : identifier.withoutNearCopies()).identify(readings),
          i < workings);
    }
  }

  private static void tell(Tape tape, Identification answer, boolean isWorked) {
    tape.text(answer.verdict().label());
    for (UnitSystem units : UnitSystem.values()) {
      tape.text(answer.inWords(units));
      if (isWorked) {
        tape.text(answer.working(units).toText());
      }
    }
    for (ProfileCandidate candidate : answer.candidates()) {
      tape.text(candidate.profile().id());
      // of what is all but impossible the logarithm alone is a number with digits
      tape.number(candidate.logLikelihood());
      for (Residual residual : candidate.residuals()) {
        tape.number(residual.sigmas());
      }
    }
    tape.number(answer.unknownProbability());
    answer.slips().forEach(slip -> tape.text(slip.inWords()));
  }
}
