package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.Pencil;
import org.airfit.internal.Digits;
import org.airfit.measure.Access;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.SampleSizeVerdict;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

/** Records of pieces and their comparison, worked again by hand and read word by word. */
class RecordByHandTest {

  private static final Source BENCH = Source.measured("a bench, for a test");
  private static final Instrument CALIPER = Instrument.DIGITAL_CALIPER;

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static KnownPlugs tips(double... sizes) {
    KnownPlugs plugs = KnownPlugs.of("known", CALIPER);
    for (int i = 0; i < sizes.length; i++) {
      plugs = plugs.with(
          new KnownPiece("no. " + (i + 1), Map.of(Dimension.TIP_DIAMETER, mm(sizes[i]))));
    }
    return plugs;
  }

  private static double student(double tail, double freedom) {
    return new TDistribution(freedom).inverseCumulativeProbability(1.0 - tail);
  }

  @Test
  void a_record_says_how_many_pieces_it_holds_and_of_what() {
    assertThat(tips()).hasToString("0 pieces of known, measured with a " + CALIPER);
    assertThat(tips(20.0)).hasToString("1 piece of known, measured with a " + CALIPER);
    assertThat(tips(20.0, 20.1)).hasToString("2 pieces of known, measured with a " + CALIPER);
    assertThat(tips(20.0, 20.1).without("no. 1").pieces())
        .extracting(KnownPiece::label)
        .containsExactly("no. 2");
    KnownPlugs two = tips(20.0, 20.1);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> two.without("no. 3"))
        .withMessage("label must be of a piece in the record, was \"no. 3\"");
  }

  @Test
  void pieces_that_read_alike_scatter_by_what_the_step_hides() {
    double hidden = 0.01 / Math.sqrt(12.0);
    PartSpread.Sample alike = tips(20.0, 20.0).sample(Dimension.TIP_DIAMETER);
    assertThat(alike.sampleDeviation().millimetres()).isCloseTo(hidden, within(1.0e-12));
    PartSpread.Sample apart = tips(20.0, 20.06, 20.03).sample(Dimension.TIP_DIAMETER);
    assertThat(apart.mean().millimetres()).isCloseTo(20.03, within(1.0e-12));
    assertThat(apart.sampleDeviation().millimetres()).isCloseTo(0.03, within(1.0e-12));
    KnownPlugs four = tips(20.0, 20.0, 20.0, 20.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> four.spread(Dimension.TIP_DIAMETER))
        .withMessage(
            "pieces that all read alike must be at least 5 to show a spread, were 4 for the "
                + Dimension.TIP_DIAMETER + "; measure more");
    KnownPlugs single = tips(20.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> single.sample(Dimension.TIP_DIAMETER))
        .withMessageContaining("pieces must be at least 2 to show a spread, was 1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> single.spread(Dimension.TIP_DIAMETER))
        .withMessageNotContaining("read alike");
  }

  /** t √(1 + 1/n) max(s, d/√12) + d/2, the chance 0.025 halved for one piece, shared by m dimensions and n + 1. */
  @Test
  void what_would_be_noticed_is_the_limit_of_student() {
    double t = student(0.025 / 2.0 / 3.0 / 2.0, 1.0) * Math.sqrt(1.5);
    assertThat(
            tips(20.0, 20.06).noticedFrom(Dimension.TIP_DIAMETER).orElseThrow().millimetres())
        .isCloseTo(t * 0.06 / Math.sqrt(2.0) + 0.005, within(1.0e-6));
    assertThat(
            tips(20.0, 20.0).noticedFrom(Dimension.TIP_DIAMETER).orElseThrow().millimetres())
        .isCloseTo(t * 0.01 / Math.sqrt(12.0) + 0.005, within(1.0e-6));
  }

  @Test
  void an_error_that_is_just_kept_is_enough_and_any_less_is_not() {
    KnownPlugs plugs = tips(20.02, 19.98, 20.0, 20.03, 19.99);
    Length present = plugs.piecesFor(Dimension.TIP_DIAMETER, mm(1.0), 0.95).present();
    double s = plugs.sample(Dimension.TIP_DIAMETER).sampleDeviation().millimetres();
    double limit = CALIPER.limitOfError(Access.OUTSIDE, mm(20.0)).millimetres();
    assertThat(present.millimetres())
        .isCloseTo(
            Math.hypot(
                student(0.025, 4.0) * s / Math.sqrt(5.0), 1.959963985 * limit / Math.sqrt(3.0)),
            within(1.0e-8));
    assertThat(plugs.piecesFor(Dimension.TIP_DIAMETER, present, 0.95).verdict())
        .isEqualTo(SampleSizeVerdict.ENOUGH);
    Length less = mm(present.millimetres() - 1.0e-6);
    assertThat(plugs.piecesFor(Dimension.TIP_DIAMETER, less, 0.95).needed()).isEqualTo(6);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plugs.piecesFor(Dimension.TIP_DIAMETER, mm(0.0), 0.95))
        .withMessage("wanted error must be above 0 mm, was 0 mm");
  }

  private static PartSpread.Sample sample(int pieces, double mean, double s) {
    return new PartSpread.Sample(pieces, mm(mean), mm(s));
  }

  private static SizeDifference difference(PartSpread one, PartSpread other, int compared) {
    return new SizeDifference("known", Dimension.TIP_DIAMETER, one, other, CALIPER, compared);
  }

  /** B. L. Welch: only Σ s²/n is known to few degrees of freedom; what the caliper leaves, d²/12 + MPE²/3, is known. */
  private static double allowed(double tail, double scatter, double freedom, double reading) {
    double z = -new NormalDistribution().inverseCumulativeProbability(tail);
    return Math.hypot(student(tail, freedom) * Math.sqrt(scatter), z * Math.sqrt(reading));
  }

  @Test
  void two_means_may_differ_by_student_s_t_times_their_uncertainty() {
    double mpe = CALIPER.limitOfError(Access.OUTSIDE, mm(12.0)).millimetres();
    double rest = 0.01 * 0.01 / 12.0 + mpe * mpe / 3.0;
    double a = 0.03 * 0.03 / 5.0;
    double b = 0.03 * 0.03 / 4.0;
    double wanted =
        allowed(0.0125 / 3.0, a + b, (a + b) * (a + b) / (a * a / 4.0 + b * b / 3.0), 2.0 * rest);
    SizeDifference both = difference(sample(5, 12.0, 0.03), sample(4, 12.06, 0.03), 3);
    assertThat(both.allowed().millimetres()).isCloseTo(wanted, within(1.0e-9));
    assertThat(both.millimetres()).isCloseTo(0.06, within(1.0e-12));
    assertThat(both.agrees()).isTrue();
    assertThat(both.inWords())
        .isEqualTo("known, " + Dimension.TIP_DIAMETER
            + ": 12.000 mm and 12.060 mm, 0.060 mm apart, agree (" + Digits.fixed(wanted, 3)
            + " mm allowed)");
    Pencil.check(both);

    SizeDifference typed =
        difference(sample(5, 12.0, 0.03), PartSpread.normal(mm(12.5), mm(0.5)), 1);
    assertThat(typed.allowed().millimetres())
        .isCloseTo(allowed(0.0125, a, 4.0, rest), within(1.0e-9));
    assertThat(typed.agrees()).isFalse();
    assertThat(typed.inWords()).contains("0.500 mm apart, do not agree (");
    Pencil.check(typed);
    // pieces that read alike hide d/√12
    double hidden = 0.01 * 0.01 / 12.0 / 5.0;
    SizeDifference alike =
        difference(PartSpread.normal(mm(12.0), mm(0.5)), sample(5, 12.0, 0.001), 1);
    assertThat(alike.allowed().millimetres())
        .isCloseTo(allowed(0.0125, hidden, 4.0, rest), within(1.0e-9));
  }

  /** Four pieces that lie close together by chance scatter by half the variance of seven; the seven as they do. */
  @Test
  void few_pieces_scatter_not_much_less_than_more_of_the_other_set() {
    double mpe = CALIPER.limitOfError(Access.OUTSIDE, mm(12.0)).millimetres();
    double rest = 0.01 * 0.01 / 12.0 + mpe * mpe / 3.0;
    double a = 0.5 * 0.04 * 0.04 / 4.0;
    double b = 0.04 * 0.04 / 7.0;
    double wanted =
        allowed(0.0125, a + b, (a + b) * (a + b) / (a * a / 3.0 + b * b / 6.0), 2.0 * rest);
    SizeDifference few = difference(sample(4, 12.0, 0.004), sample(7, 12.06, 0.04), 1);
    assertThat(few.allowed().millimetres()).isCloseTo(wanted, within(1.0e-9));
    Pencil.check(few);
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(few.working(units).toText()).contains("The pieces of set 1 scatter less than s1");
    }
    assertThat(difference(sample(7, 12.06, 0.04), sample(4, 12.0, 0.004), 1)
            .allowed()
            .millimetres())
        .as("whichever set is named first")
        .isCloseTo(wanted, within(1.0e-9));
    double e = 0.5 * 0.04 * 0.04 / 5.0;
    double f = 0.04 * 0.04 / 5.0;
    assertThat(difference(sample(5, 12.0, 0.004), sample(5, 12.06, 0.04), 1)
            .allowed()
            .millimetres())
        .as("as many of the other set are more than few")
        .isCloseTo(
            allowed(0.0125, e + f, (e + f) * (e + f) / (e * e / 4.0 + f * f / 4.0), 2.0 * rest),
            within(1.0e-9));
    double c = 0.06 * 0.06 / 4.0;
    double d = 0.01 * 0.01 / 7.0;
    assertThat(difference(sample(4, 12.0, 0.06), sample(7, 12.06, 0.01), 1)
            .allowed()
            .millimetres())
        .as("more pieces are believed beside fewer")
        .isCloseTo(
            allowed(0.0125, c + d, (c + d) * (c + d) / (c * c / 3.0 + d * d / 6.0), 2.0 * rest),
            within(1.0e-9));
  }

  @Test
  void sizes_typed_in_agree_within_half_of_what_is_written() {
    PartSpread one = PartSpread.normal(mm(12.0), mm(0.5));
    for (double apart : new double[] {0.0, 0.005, -0.005}) {
      assertThat(
              difference(one, PartSpread.normal(mm(12.0 + apart), mm(0.1)), 1).agrees())
          .isTrue();
    }
    for (double apart : new double[] {0.0051, -0.0051}) {
      assertThat(
              difference(one, PartSpread.normal(mm(12.0 + apart), mm(0.1)), 1).agrees())
          .isFalse();
    }
    SizeDifference typed = difference(one, PartSpread.normal(mm(11.99), mm(0.1)), 1);
    assertThat(typed.inWords())
        .isEqualTo("known, " + Dimension.TIP_DIAMETER
            + ": 12.000 mm and 11.990 mm, 0.010 mm apart, do not agree (0.005 mm allowed)");
    assertThat(typed.working().toText())
        .contains(
            "Whether both sets mean the same " + Dimension.TIP_DIAMETER + " of known",
            "Sizes are written down to two decimals: half a hundredth of a millimetre is allowed.");
    Pencil.check(typed);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> difference(one, one, 0))
        .withMessage("dimensions compared must be at least 1, were 0");
    assertThat(difference(sample(2, 600.0, 600.0), one, 1).compared()).isEqualTo(1);
    for (PartSpread.Sample wrong : List.of(sample(2, 600.1, 1.0), sample(2, 600.0, 600.1))) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> difference(one, wrong, 1))
          .withMessageContaining("at most 600 mm");
    }
  }

  private static PlugProfile.Builder measured(String id, int pieces, double... sizes) {
    KnownPlugs plugs = KnownPlugs.of(id, CALIPER);
    for (int i = 0; i < pieces; i++) {
      Map<Dimension, Length> all = new EnumMap<>(Dimension.class);
      all.put(Dimension.TIP_DIAMETER, mm(sizes[i % sizes.length]));
      all.put(Dimension.TIP_LENGTH, mm(2.0 * sizes[i % sizes.length]));
      plugs = plugs.with(new KnownPiece("no. " + i, all));
    }
    return plugs.toProfile(BENCH).confirmUnusual();
  }

  private static ReferenceSet set(String name, PlugProfile... profiles) {
    return ReferenceSet.of(name, List.of(profiles));
  }

  @Test
  void measured_pieces_that_read_alike_are_compared_as_the_pieces_they_are() {
    PlugProfile alike = measured("known", 5, 12.0).build();
    assertThat(alike.spread(Dimension.TIP_DIAMETER).orElseThrow())
        .isInstanceOf(PartSpread.Limits.class);
    SetComparison comparison = SetComparison.of(set("a", alike), set("b", alike), CALIPER);
    assertThat(comparison.differences()).hasSize(2).allSatisfy(difference -> {
      assertThat(difference.one()).isInstanceOf(PartSpread.Sample.class);
      assertThat(((PartSpread.Sample) difference.other()).pieces()).isEqualTo(5);
      assertThat(difference.compared()).isEqualTo(2);
    });
    PartSpread.Sample joint = (PartSpread.Sample) comparison
        .merged("joint")
        .profile("known")
        .orElseThrow()
        .spread(Dimension.TIP_DIAMETER)
        .orElseThrow();
    assertThat(joint.pieces()).isEqualTo(10);
    PlugProfile typed = PlugProfile.builder("known")
        .from(Provenance.standardEntered(), Source.demo("typed for a test"))
        .dimension(Dimension.TIP_DIAMETER, PartSpread.limits(mm(11.9), mm(12.1)))
        .build();
    assertThat(SetComparison.of(set("a", typed), set("b", typed), CALIPER).differences())
        .allSatisfy(
            difference -> assertThat(difference.one()).isInstanceOf(PartSpread.Limits.class));
  }

  @Test
  void what_differs_is_told_line_by_line_and_what_only_one_has_by_name() {
    PlugProfile only = measured("only", 3, 9.0, 9.01).build();
    SetComparison comparison = SetComparison.of(
        set("a", measured("known", 4, 12.0, 12.01).build(), only),
        set(
            "b",
            measured("known", 4, 12.5, 12.51).build(),
            measured("new", 3, 9.0, 9.01).build()),
        CALIPER);
    assertThat(comparison.onlyInOne()).containsExactly("only");
    assertThat(comparison.onlyInOther()).containsExactly("new");
    assertThat(comparison.inWords().split("\n"))
        .hasSize(2)
        .allSatisfy(line -> assertThat(line).startsWith("known, ").contains("do not agree"));
    assertThat(comparison.mergedDespiteDifferences("joint").profiles())
        .extracting(PlugProfile::id)
        .containsExactly("known", "only", "new");
  }

  @Test
  void a_joint_profile_keeps_what_either_set_knows() {
    PlugProfile one = measured("known", 3, 12.0, 12.02).aliases("one").build();
    KnownPlugs other = KnownPlugs.of("known", CALIPER);
    for (double size : new double[] {12.0, 12.01, 12.02}) {
      other = other.with(new KnownPiece("" + size, Map.of(Dimension.TIP_DIAMETER, mm(size))));
    }
    PlugProfile two = other
        .toProfile(Source.measured("another bench"))
        .confirmUnusual()
        .grooveForm(GrooveForm.VEE)
        .build();
    PlugProfile more = measured("more", 3, 9.0, 9.01).build();
    UniversalSocket wide = new UniversalSocket(
        "wide", Set.of("known", "more"), Source.measured("tried, says this test"));
    UniversalSocket own = new UniversalSocket(
        "own", Set.of("known", "more"), Source.measured("tried, says this test"));
    ReferenceSet joint = SetComparison.of(
            set("a", one, more).withSockets(List.of(wide)),
            set("b", two, more).withSockets(List.of(wide, own)),
            CALIPER)
        .merged("joint");
    PlugProfile known = joint.profile("known").orElseThrow();
    assertThat(known.grooveForm()).contains(GrooveForm.VEE);
    assertThat(known.source().citation())
        .isEqualTo(one.source().citation() + "; " + two.source().citation());
    assertThat(known.dimensions()).containsOnlyKeys(Dimension.TIP_DIAMETER);
    assertThat(known.provenance()).isEqualTo(Provenance.userMeasured(6));
    assertThat(joint.sockets()).containsExactly(wide, own);
    assertThat(SetComparison.of(set("a", one), set("b", one), CALIPER)
            .merged("twice")
            .profile("known")
            .orElseThrow()
            .source())
        .isEqualTo(one.source());
  }

  @Test
  void tip_lengths_taken_otherwise_are_not_joined() {
    GaugeBall ball = new GaugeBall(mm(4.0));
    PlugProfile edge = measured("known", 3, 12.0, 12.02).build();
    PlugProfile over = measured("known", 3, 12.0, 12.02).tipLengthBy(ball).build();
    SetComparison comparison = SetComparison.of(set("a", edge), set("b", over), CALIPER);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> comparison.mergedDespiteDifferences("joint"))
        .withMessage(
            "tip length of profile known must be taken alike in both sets, was by the edge and by "
                + "a ball of 4 mm; convert one, or leave it out");
    assertThat(SetComparison.of(set("a", over), set("b", over), CALIPER)
            .merged("joint")
            .profile("known")
            .orElseThrow()
            .tipLengthBall())
        .contains(ball);
  }

  @Test
  void a_piece_that_stands_out_is_told_with_the_chance_of_student() {
    KnownPlugs plugs = tips(20.02, 19.98, 20.0, 20.03, 20.61, 19.99);
    Outlier odd = plugs.outliers().get(0);
    double mean = 20.004;
    double s = Math.sqrt(
        (0.016 * 0.016 + 0.024 * 0.024 + 0.004 * 0.004 + 0.026 * 0.026 + 0.014 * 0.014) / 4.0);
    double t = (20.61 - mean - 0.005) / s;
    double chance = 1.0
        * 2.0
        * 6.0
        * 2.0
        * (1.0 - new TDistribution(4).cumulativeProbability(t / Math.sqrt(1.2)));
    assertThat(odd.standing()).isCloseTo(t, within(1.0e-8));
    assertThat(odd.chance()).isCloseTo(chance, within(1.0e-9));
    assertThat(odd.length()).isEqualTo(mm(20.61));
    assertThat(odd.inWords())
        .isEqualTo("Piece no. 5 stands out: its " + Dimension.TIP_DIAMETER
            + " is 20.61 mm, the other 5 are 20.00 mm ± " + Digits.fixed(s, 3)
            + " mm. Pieces that are all alike show as much in " + Digits.percent(chance)
            + " of records. Measure it again. If it stays so, find out why before it is left out: it may be "
            + "worn, or of another profile.");
    String text = odd.working(UnitSystem.SI).toText();
    assertThat(text)
        .contains(
            "Piece no. 5 among 6 in its " + Dimension.TIP_DIAMETER,
            "q is the chance of Student's t with 4 degrees of freedom, either way, beyond T / √(1 + 1/5).",
            "w is the number of groups of k pieces among 6")
        .doesNotContain("stand out together");
    String three = tips(20.02, 19.98, 20.51, 20.0, 20.03, 20.53, 19.99, 20.01, 20.52, 20.01, 20.02)
        .outliers()
        .get(0)
        .inWords();
    assertThat(three)
        .startsWith(
            "Piece no. 3 stands out together with no. 9, no. 6 (they hide one another where only one "
                + "piece is looked at): its");
  }

  @Test
  void the_doors_of_an_outlier_stand_at_their_bounds() {
    KnownPiece far = new KnownPiece("far", Map.of(Dimension.TIP_DIAMETER, mm(599.0)));
    KnownPiece near = new KnownPiece("near", Map.of(Dimension.TIP_DIAMETER, mm(1.0)));
    for (double step : new double[] {0.001, 1.0}) {
      assertThat(
              new Outlier(far, Dimension.TIP_DIAMETER, List.of(), sample(9, 20.0, 0.3), mm(step), 1)
                  .step())
          .isEqualTo(mm(step));
    }
    assertThat(
            new Outlier(near, Dimension.TIP_DIAMETER, List.of(), sample(9, 600.0, 0.3), mm(0.01), 1)
                .others()
                .mean())
        .isEqualTo(mm(600.0));
    double least = 0.01 / Math.sqrt(12.0);
    assertThat(new Outlier(
                near, Dimension.TIP_DIAMETER, List.of(), sample(9, 20.0, least), mm(0.01), 1)
            .chance())
        .isPositive();
    assertThat(new Outlier(
                near, Dimension.TIP_DIAMETER, List.of(far), sample(3, 300.0, 0.1), mm(0.01), 1)
            .alsoOut())
        .containsExactly(far);
    List<KnownPiece> also = new ArrayList<>(List.of(far));
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            new Outlier(near, Dimension.TIP_DIAMETER, also, sample(2, 300.0, 0.1), mm(0.01), 1))
        .withMessageContaining("fewer than the others, were 0.01 mm, 1, 2 of 4");
    KnownPiece without = new KnownPiece("without", Map.of(Dimension.BORE, mm(9.0)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Outlier(
            near, Dimension.TIP_DIAMETER, List.of(without), sample(9, 300.0, 0.1), mm(0.01), 1))
        .withMessage("pieces that stand out must be measured in the " + Dimension.TIP_DIAMETER
            + ", one is not");
  }

  /** C(n, k), and what several pieces share: the nearest of a group is judged. */
  @Test
  void groups_are_counted_and_the_nearest_of_them_is_judged() {
    assertThat(OutlierKernels.groups(8, 2)).isEqualTo(28.0);
    assertThat(OutlierKernels.groups(11, 3)).isEqualTo(165.0);
    assertThat(OutlierKernels.groups(5, 1)).isEqualTo(5.0);
    assertThat(OutlierKernels.standing(0.3, 0.02, 0.01)).isCloseTo(14.75, within(1.0e-12));
    assertThat(OutlierKernels.standing(0.3, 0.0, 0.01))
        .isCloseTo(29.5 * Math.sqrt(12.0), within(1.0e-9));
    assertThat(OutlierKernels.noticed(0.1, 0.01, 1, 1)).isInfinite();
    double t = 12.0;
    double student =
        2.0 * (1.0 - new TDistribution(5).cumulativeProbability(t / Math.sqrt(1.0 + 1.0 / 6.0)));
    assertThat(OutlierKernels.chance(t, 7, 1, 3))
        .isCloseTo(3.0 * 2.0 * 7.0 * student, within(1e-12));
    assertThat(OutlierKernels.chance(0.0, 7, 1, 3)).isEqualTo(1.0);
    double pair = OutlierKernels.tail(t, 6, 2);
    assertThat(OutlierKernels.chance(t, 8, 2, 3)).isCloseTo(3.0 * 4.0 * 28.0 * pair, within(1e-15));
  }
}
