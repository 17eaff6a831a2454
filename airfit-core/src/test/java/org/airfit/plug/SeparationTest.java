package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SeparationTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  static Stream<Row> needed() {
    return Rows.of(SeparationTest.class, "separation_needed.csv");
  }

  @ParameterizedTest
  @MethodSource("needed")
  void the_risk_at_the_printed_difference_is_the_risk_it_was_printed_for(Row row) {
    double sigma = row.number("sigma_mm");
    double difference = row.number("min_difference_of_nominals_mm");
    double risk = row.number("misidentification_risk");
    double z = 0.5 * difference / sigma;
    double density = Math.exp(-0.5 * z * z) / Math.sqrt(2.0 * Math.PI);
    double byDifference = row.halfDigit("min_difference_of_nominals_mm") / (2.0 * sigma);
    double bySigma = z * row.halfDigit("sigma_mm") / sigma;
    Comparison.of(
            "Plugs: difference needed to tell apart",
            row.text("case") + ", risk " + row.text("misidentification_risk"),
            risk,
            "-",
            row.evidence("min_difference_of_nominals_mm"))
        .isMetBy(
            Separation.riskAt(difference / sigma),
            1.1 * density * (byDifference + bySigma),
            "half the last digits of difference and sigma, carried into the risk");
  }

  private static PlugProfile profile(String id, double tip, double part) {
    return PlugProfile.builder(id)
        .from(Provenance.standardEntered(), Source.demo("a pair for a test"))
        .dimension(Dimension.TIP_DIAMETER, PartSpread.normal(mm(tip), mm(part)))
        .build();
  }

  private static Separation pair(double apart, double part, Instrument instrument) {
    return Separation.of(profile("a", 10.0, part), profile("b", 10.0 + apart, part), instrument);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.05, 0.01, 0.001})
  void the_needed_uncertainty_gives_the_risk_it_was_asked_for(double risk) {
    double part = 0.01;
    Separation separation = pair(0.15, part, Instrument.VERNIER_CALIPER_0_05);
    double u = separation.neededUncertainty(risk).orElseThrow().millimetres();
    assertThat(Separation.riskAt(0.15 / Math.hypot(part, u))).isCloseTo(risk, within(1.0e-12));
  }

  @Test
  void a_pair_is_named_with_the_instrument_that_would_do() {
    Separation coarse = pair(0.10, 0.01, Instrument.VERNIER_CALIPER_0_05);
    assertThat(coarse.instruments(0.01))
        .containsExactly(Instrument.VERNIER_CALIPER_0_02, Instrument.DIGITAL_CALIPER);
    assertThat(coarse.inWords(0.01))
        .contains("cannot be told apart", "A vernier caliper 0.02 mm would do.");
    assertThat(pair(0.10, 0.01, Instrument.DIGITAL_CALIPER).inWords(0.01))
        .contains("can be told apart", "tip diameter (D_t) differs most, by 0.10 mm");
  }

  @Test
  void a_finer_instrument_than_any_caliper_is_asked_for_where_that_helps() {
    Separation fine = pair(0.04, 0.004, Instrument.DIGITAL_CALIPER);
    assertThat(fine.instruments(0.01)).isEmpty();
    assertThat(fine.inWords(0.01)).contains("Only an instrument with a standard uncertainty of");
  }

  @Test
  void plugs_that_scatter_too_much_are_parted_by_no_instrument() {
    Separation twins = pair(0.04, 0.03, Instrument.DIGITAL_CALIPER);
    assertThat(twins.neededUncertainty(0.01)).isEmpty();
    assertThat(twins.inWords(0.01)).contains("No instrument would do", "Use a gauge");
  }

  @Test
  void every_dimension_that_both_know_counts() {
    List<Separation> pairs = Separation.within(DemoProfiles.birds(), Instrument.DIGITAL_CALIPER);
    assertThat(pairs).hasSize(6);
    Separation hardest = pairs.get(0);
    assertThat(List.of(hardest.one().id(), hardest.other().id()))
        .containsExactly("demo-curlew", "demo-plover");
    assertThat(hardest.dimensions().get(0).dimension())
        .isIn(Dimension.GROOVE_WIDTH, Dimension.TIP_TO_COLLAR);
    assertThat(hardest.risk()).isLessThan(hardest.dimensions().get(0).risk());
    assertThat(hardest.instrument()).isEqualTo(Instrument.DIGITAL_CALIPER);
    assertThat(pairs).isSortedAccordingTo((one, other) -> Double.compare(other.risk(), one.risk()));
  }

  @Test
  void profiles_without_a_common_dimension_are_a_toss_of_a_coin() {
    PlugProfile length = PlugProfile.builder("l")
        .from(Provenance.standardEntered(), Source.demo("a pair for a test"))
        .dimension(Dimension.TIP_LENGTH, PartSpread.normal(mm(20.0), mm(0.05)))
        .build();
    Separation none = Separation.of(profile("a", 10.0, 0.02), length, Instrument.DIGITAL_CALIPER);
    assertThat(none.risk()).isEqualTo(0.5);
    assertThat(none.inWords(0.01)).contains("no dimension in common");
    assertThat(none.neededUncertainty(0.01)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 0.5, Double.NaN})
  void a_risk_that_is_none_is_refused(double risk) {
    Separation separation = pair(0.1, 0.02, Instrument.DIGITAL_CALIPER);
    assertThatIllegalArgumentException().isThrownBy(() -> separation.inWords(risk));
    assertThatIllegalArgumentException().isThrownBy(() -> separation.neededUncertainty(risk));
    assertThatIllegalArgumentException().isThrownBy(() -> separation.instruments(risk));
  }
}
