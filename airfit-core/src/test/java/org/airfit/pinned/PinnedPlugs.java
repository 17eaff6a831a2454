package org.airfit.pinned;

import java.util.ArrayList;
import java.util.List;
import org.airfit.measure.Access;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.ToleranceInterval;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.Separation;
import org.airfit.quantity.Length;

/** Plugs of the invented set, read well, short and badly. */
final class PinnedPlugs {

  private static final String AREA = "plug";

  private PinnedPlugs() {}

  static void ask(Pins pins) {
    ReferenceSet birds = DemoProfiles.birds();
    for (PlugProfile profile : birds.profiles()) {
      for (double off : new double[] {0.0, 0.04, 0.3}) {
        identified(pins, profile, off, 9);
      }
      identified(pins, profile, 0.02, 3);
    }
    for (Separation pair : Separation.within(birds, Instrument.VERNIER_CALIPER_0_05)) {
      if (pair.risk() > 1.0e-12) {
        pins.ratio(
            AREA,
            "Risk of taking " + pair.one().id() + " for " + pair.other().id()
                + " with a vernier of 0.05 mm",
            pair.risk());
      }
    }
    for (Instrument instrument : Instrument.values()) {
      for (Access access : Access.values()) {
        pins.quantity(
            "measure",
            "Standard uncertainty of a " + instrument.label() + ", " + access,
            instrument.standardUncertainty(access));
      }
    }
    for (int pieces : new int[] {5, 12, 40}) {
      ToleranceInterval interval = ToleranceInterval.between(
          new PartSpread.Sample(pieces, Length.ofMillimetres(11.2), Length.ofMillimetres(0.03)),
          0.95,
          0.9);
      pins.ratio(
          "measure",
          "Two-sided tolerance factor of " + pieces + " pieces, share 0.95, confidence 0.9",
          interval.factor());
    }
  }

  private static void identified(Pins pins, PlugProfile profile, double off, int sizes) {
    List<PlugReading> readings = new ArrayList<>();
    for (Dimension dimension : Dimension.values()) {
      if (readings.size() < sizes) {
        double nominal = profile.spread(dimension).orElseThrow().nominal().millimetres();
        readings.add(PlugReading.of(
            dimension,
            Instrument.DIGITAL_CALIPER,
            Length.ofMillimetres(Math.rint((nominal + off) * 100.0) / 100.0)));
      }
    }
    Identification answer = Identifier.of(DemoProfiles.birds()).identify(readings);
    String of = " of " + sizes + " sizes " + off + " mm above those of " + profile.id();
    pins.word(AREA, "Verdict" + of, answer.verdict());
    pins.word(AREA, "Best profile" + of, answer.best().profile().id());
    pins.number(AREA, "Logarithm of the likelihood" + of, answer.best().logLikelihood(), "1");
    pins.ratio(AREA, "χ²" + of, answer.best().chiSquare());
    pins.ratio(AREA, "Chance of an unknown plug" + of, answer.unknownProbability());
  }
}
