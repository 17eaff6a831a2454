package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.SampleSize;
import org.airfit.measure.SampleSizeVerdict;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class KnownPlugsTest {

  private static final Source BENCH = Source.measured("invented readings for a test");

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static KnownPlugs tips(double... sizes) {
    KnownPlugs plugs = KnownPlugs.of("known", Instrument.DIGITAL_CALIPER);
    for (int i = 0; i < sizes.length; i++) {
      plugs = plugs.with(
          new KnownPiece("no. " + (i + 1), Map.of(Dimension.TIP_DIAMETER, mm(sizes[i]))));
    }
    return plugs;
  }

  @Test
  void the_statistics_of_the_record_are_those_of_the_worked_vector() {
    PartSpread.Sample sample =
        (PartSpread.Sample) tips(20.02, 19.98, 20.0, 20.03, 19.99).spread(Dimension.TIP_DIAMETER);
    Row row = Rows.of(KnownPlugsTest.class, "worked_vector_user_measured.csv")
        .findFirst()
        .orElseThrow();
    assertThat(sample.mean().millimetres()).isCloseTo(row.number("mean_mm"), within(1.0e-9));
    assertThat(sample.sampleDeviation().millimetres())
        .isCloseTo(row.number("s_mm"), within(5.0e-7));
  }

  @Test
  void five_pieces_become_a_profile_that_can_identify_and_four_do_not() {
    KnownPlugs four = tips(20.02, 19.98, 20.0, 20.03);
    assertThat(four.toProfile(BENCH).confirmUnusual().build().provenance().canIdentify())
        .isFalse();
    PlugProfile five = four.with(new KnownPiece("no. 5", Map.of(Dimension.TIP_DIAMETER, mm(19.99))))
        .toProfile(BENCH)
        .displayName("Known")
        .build();
    assertThat(five.provenance()).isEqualTo(Provenance.userMeasured(5));
    assertThat(five.provenance().canIdentify()).isTrue();
    assertThat(five.source()).isEqualTo(BENCH);
  }

  @Test
  void only_dimensions_measured_on_every_piece_enter() {
    KnownPlugs plugs = KnownPlugs.of("known", Instrument.DIGITAL_CALIPER)
        .with(
            new KnownPiece("a", Map.of(Dimension.TIP_DIAMETER, mm(20.0), Dimension.BORE, mm(9.0))))
        .with(new KnownPiece("b", Map.of(Dimension.TIP_DIAMETER, mm(20.04))));
    assertThat(plugs.dimensions()).containsExactly(Dimension.TIP_DIAMETER);
    assertThat(plugs.toProfile(BENCH).build().dimensions())
        .containsOnlyKeys(Dimension.TIP_DIAMETER);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plugs.spread(Dimension.BORE))
        .withMessageContaining("measured on every piece");
    KnownPlugs strangers = plugs.with(new KnownPiece("c", Map.of(Dimension.BORE, mm(9.0))));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> strangers.toProfile(BENCH))
        .withMessageContaining("must be at least one");
    assertThat(KnownPlugs.of("none", Instrument.DIGITAL_CALIPER).dimensions()).isEmpty();
  }

  @Test
  void pieces_that_read_alike_show_a_step_if_there_are_five() {
    PartSpread spread = tips(20.0, 20.0, 20.0, 20.0, 20.0).spread(Dimension.TIP_DIAMETER);
    assertThat(spread).isInstanceOf(PartSpread.Limits.class);
    assertThat(((PartSpread.Limits) spread).high().millimetres()).isCloseTo(20.005, within(1.0e-9));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> tips(20.0, 20.0, 20.0).spread(Dimension.TIP_DIAMETER))
        .withMessageContainingAll("at least 5", "were 3");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> tips(20.0).spread(Dimension.TIP_DIAMETER));
  }

  /** The equation's own residual: the number found keeps the error, one fewer does not. */
  @ParameterizedTest
  @ValueSource(doubles = {0.03, 0.04, 0.05})
  void the_pieces_needed_are_the_fewest_that_keep_the_error(double wanted) {
    KnownPlugs plugs = tips(20.2, 19.8, 20.0, 20.1);
    SampleSize answer = plugs.piecesFor(Dimension.TIP_DIAMETER, mm(wanted), 0.95);
    assertThat(answer.verdict()).isEqualTo(SampleSizeVerdict.MEASURE_MORE);
    assertThat(error(answer.needed())).isLessThanOrEqualTo(wanted);
    assertThat(error(answer.needed() - 1)).isGreaterThan(wanted);
    assertThat(answer.inWords())
        .contains("measure " + (answer.needed() - 4) + " more", answer.needed() + " in all");
  }

  private static double error(int n) {
    double t = new org.hipparchus.distribution.continuous.TDistribution(n - 1)
        .inverseCumulativeProbability(0.975);
    double s = Math.sqrt((0.175 * 0.175 + 0.225 * 0.225 + 0.025 * 0.025 + 0.075 * 0.075) / 3.0);
    return Math.hypot(t * s / Math.sqrt(n), 1.959964 * 0.02 / Math.sqrt(3.0));
  }

  @Test
  void a_coarse_caliper_is_told_and_so_is_enough() {
    KnownPlugs plugs = tips(20.02, 19.98, 20.0, 20.03, 19.99);
    SampleSize coarse = plugs.piecesFor(Dimension.TIP_DIAMETER, mm(0.02), 0.95);
    assertThat(coarse.verdict()).isEqualTo(SampleSizeVerdict.CALIPER_TOO_COARSE);
    assertThat(coarse.needed()).isZero();
    assertThat(coarse.inWords()).contains("no number of pieces is enough");
    SampleSize enough = plugs.piecesFor(Dimension.TIP_DIAMETER, mm(0.1), 0.95);
    assertThat(enough.verdict()).isEqualTo(SampleSizeVerdict.ENOUGH);
    assertThat(enough.inWords()).contains("within");
    assertThat(tips(20.0, 20.0)
            .piecesFor(Dimension.TIP_DIAMETER, mm(0.1), 0.9)
            .present()
            .metres())
        .as("pieces that read alike may still differ by what the step hides")
        .isPositive();
  }

  @Test
  void what_makes_no_record_is_refused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new KnownPiece(" ", Map.of()));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new KnownPiece("a", Map.of()))
        .withMessageContaining("at least one");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new KnownPiece("a", Map.of(Dimension.BORE, mm(0.0))))
        .withMessageContaining("leave out what was not measured");
    KnownPiece piece = new KnownPiece("a", Map.of(Dimension.BORE, mm(9.0)));
    KnownPlugs plugs = KnownPlugs.of("known", Instrument.VERNIER_CALIPER_0_05).with(piece);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plugs.with(piece))
        .withMessageContaining("no second piece");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plugs.piecesFor(Dimension.BORE, mm(0.1), 0.95))
        .withMessageContaining("at least 2");
    KnownPlugs two = tips(20.0, 20.1);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> two.piecesFor(Dimension.TIP_DIAMETER, mm(0.0), 0.95));
    for (double wrong : new double[] {0.0, 1.0, Double.NaN}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> two.piecesFor(Dimension.TIP_DIAMETER, mm(0.1), wrong));
    }
    assertThat(plugs.profileId()).isEqualTo("known");
    assertThat(plugs.instrument()).isEqualTo(Instrument.VERNIER_CALIPER_0_05);
    assertThat(plugs.pieces()).containsExactly(piece);
  }

  private static ReferenceSet measured(String name, String id, double... sizes) {
    KnownPlugs plugs = KnownPlugs.of(id, Instrument.DIGITAL_CALIPER);
    for (int i = 0; i < sizes.length; i++) {
      Map<Dimension, Length> both = new EnumMap<>(Dimension.class);
      both.put(Dimension.TIP_DIAMETER, mm(sizes[i]));
      both.put(Dimension.TIP_LENGTH, mm(2.0 * sizes[i]));
      plugs = plugs.with(new KnownPiece(name + i, both));
    }
    return ReferenceSet.of(
        name, List.of(plugs.toProfile(BENCH).aliases(name).confirmUnusual().build()));
  }

  @Test
  void two_shops_join_their_pieces_as_if_one_had_measured_them_all() {
    ReferenceSet joint = SetComparison.of(
            measured("one", "known", 12.02, 11.98, 12.0),
            measured("two", "known", 12.03, 11.99),
            Instrument.DIGITAL_CALIPER)
        .merged("joint");
    PlugProfile profile = joint.profile("known").orElseThrow();
    PartSpread.Sample all = (PartSpread.Sample)
        PartSpread.measured(List.of(mm(12.02), mm(11.98), mm(12.0), mm(12.03), mm(11.99)));
    PartSpread.Sample joined =
        (PartSpread.Sample) profile.spread(Dimension.TIP_DIAMETER).orElseThrow();
    assertThat(joined.pieces()).isEqualTo(5);
    assertThat(joined.mean().millimetres()).isCloseTo(all.mean().millimetres(), within(1.0e-12));
    assertThat(joined.sampleDeviation().millimetres())
        .isCloseTo(all.sampleDeviation().millimetres(), within(1.0e-12));
    assertThat(profile.provenance()).isEqualTo(Provenance.userMeasured(5));
    assertThat(profile.aliases()).containsExactly("one", "two");
    assertThat(joint.name()).isEqualTo("joint");
  }

  @Test
  void sets_of_different_profiles_are_put_side_by_side() {
    ReferenceSet joint = SetComparison.of(
            measured("one", "a", 12.02, 11.98),
            measured("two", "b", 12.03, 11.99),
            Instrument.DIGITAL_CALIPER)
        .merged("joint");
    assertThat(joint.profiles()).extracting(PlugProfile::id).containsExactly("a", "b");
  }

  @Test
  void sets_that_disagree_are_compared_in_words_and_not_joined() {
    ReferenceSet one = measured("one", "known", 12.02, 11.98, 12.0, 12.01);
    ReferenceSet two = measured("two", "known", 12.33, 12.31, 12.29, 12.30);
    SetComparison comparison = SetComparison.of(one, two, Instrument.DIGITAL_CALIPER);
    assertThat(comparison.agrees()).isFalse();
    assertThat(comparison.inWords()).contains("known, tip diameter", "do not agree");
    assertThat(comparison.differences().get(0).millimetres()).isCloseTo(0.305, within(1.0e-9));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SetComparison.of(one, two, Instrument.DIGITAL_CALIPER).merged("joint"))
        .withMessageContainingAll("rename one", "join them despite the differences");
    PartSpread.Sample all = (PartSpread.Sample) comparison
        .mergedDespiteDifferences("joint")
        .profile("known")
        .orElseThrow()
        .spread(Dimension.TIP_DIAMETER)
        .orElseThrow();
    assertThat(all.pieces()).isEqualTo(8);
    assertThat(all.mean().millimetres()).isCloseTo(12.155, within(1.0e-9));
    assertThat(all.sampleDeviation().millimetres())
        .as("the joint spread holds the difference of 0.305 mm")
        .isGreaterThan(0.15);
    SetComparison same = SetComparison.of(one, one, Instrument.DIGITAL_CALIPER);
    assertThat(same.agrees()).isTrue();
    assertThat(same.inWords()).isEqualTo("The sets agree in all 2 dimensions they share.");
    SetComparison apart = SetComparison.of(one, DemoProfiles.birds(), Instrument.DIGITAL_CALIPER);
    assertThat(apart.onlyInOne()).containsExactly("known");
    assertThat(apart.onlyInOther()).hasSize(4);
  }

  @Test
  void typed_in_profiles_are_not_joined_with_measured_ones() {
    ReferenceSet typed = ReferenceSet.of(
        "typed",
        List.of(PlugProfile.builder("known")
            .from(Provenance.standardEntered(), Source.demo("typed for a test"))
            .dimension(Dimension.TIP_DIAMETER, PartSpread.normal(mm(12.0), mm(0.02)))
            .build()));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SetComparison.of(
                typed, measured("one", "known", 12.02, 11.98, 12.0), Instrument.DIGITAL_CALIPER)
            .merged("joint"))
        .withMessageContaining("must be measured in both");
    assertThat(SetComparison.of(typed, typed, Instrument.DIGITAL_CALIPER)
            .merged("same")
            .profiles())
        .as("the same size typed in twice is the same size")
        .isEqualTo(typed.profiles());
  }
}
