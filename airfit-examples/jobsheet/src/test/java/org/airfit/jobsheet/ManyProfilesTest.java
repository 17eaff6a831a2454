package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sheet lists the likeliest profiles of a large set, and the others in one line. */
class ManyProfilesTest {

  private static Map<String, Double> chances(int profiles) {
    List<PlugProfile> set = new ArrayList<>();
    for (int i = 0; i < profiles; i++) {
      set.add(PlugProfile.builder("p" + i)
          .displayName("Profile " + i)
          .from(Provenance.synthetic(), Source.demo("test"))
          .dimension(
              Dimension.TIP_DIAMETER,
              PartSpread.normal(Length.ofMillimetres(12 + 0.01 * i), Length.ofMillimetres(0.1)))
          .build());
    }
    return InWords.chances(Identifier.of(ReferenceSet.of("many", set))
        .identify(List.of(PlugReading.of(
            Dimension.TIP_DIAMETER, Instrument.DIGITAL_CALIPER, Length.ofMillimetres(12.0)))));
  }

  @ParameterizedTest
  @CsvSource({
    "11, 11, ''",
    "12, 12, ''",
    "13, 11, 2 others of the set",
    "300, 11, 289 others of the set"
  })
  void the_chances_of_a_large_set_are_summed_up(int profiles, int listed, String others) {
    Map<String, Double> chances = chances(profiles);
    assertThat(chances.keySet().stream().filter(name -> name.startsWith("Profile")))
        .hasSize(listed)
        .startsWith("Profile 0");
    assertThat(chances.containsKey(others)).isEqualTo(!others.isEmpty());
    assertThat(chances.values().stream().mapToDouble(Double::doubleValue).sum())
        .isCloseTo(1.0, within(1.0e-9));
  }
}
