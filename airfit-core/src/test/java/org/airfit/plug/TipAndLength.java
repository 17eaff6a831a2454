package org.airfit.plug;

import java.util.List;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.source.Source;

/**
 * Profiles of one or two sizes that scatter normally, for answers worked out by hand. Of two sizes both decide the
 * mating and nothing else does.
 */
final class TipAndLength {

  /** The standard deviations of the parts [mm]. */
  static final double S_TIP = 0.03;

  static final double S_LENGTH = 0.05;

  private TipAndLength() {}

  static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  static PlugProfile.Builder tip(String id, double tip) {
    return PlugProfile.builder(id)
        .displayName(id)
        .from(Provenance.standardEntered(), Source.demo("a set for a test"))
        .dimension(Dimension.TIP_DIAMETER, PartSpread.normal(mm(tip), mm(S_TIP)));
  }

  static PlugProfile both(String id, double tip, double length) {
    return tip(id, tip)
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(length), mm(S_LENGTH)))
        .deciding(List.of(Dimension.TIP_DIAMETER, Dimension.TIP_LENGTH))
        .build();
  }

  static ReferenceSet set(PlugProfile... profiles) {
    return ReferenceSet.of("shop", List.of(profiles));
  }

  /** The density of a normal distribution. */
  static double normal(double off, double sigma) {
    return Math.exp(-0.5 * off * off / (sigma * sigma)) / (sigma * Math.sqrt(2.0 * Math.PI));
  }
}
