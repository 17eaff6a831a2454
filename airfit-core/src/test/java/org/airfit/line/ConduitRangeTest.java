package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ConduitRangeTest {

  private static final Source SEEN = Source.demo("seen in the shop");

  private static Conduit pipe(double bore, double metres, double roughness, double k) {
    return Conduit.of(
            Length.ofMillimetres(bore), Length.ofMetres(metres), Length.ofMillimetres(roughness))
        .withFittings(k);
  }

  @Test
  void a_conduit_that_is_known_is_both_ends_and_assumes_nothing() {
    Conduit known = pipe(10.0, 5.0, 0.1, 2.0);
    ConduitRange range = ConduitRange.exactly(known);
    assertThat(range.isExact()).isTrue();
    assertThat(range.least()).isEqualTo(known);
    assertThat(range.most()).isEqualTo(known);
    assertThat(range.assumption()).hasToString("as told, nothing assumed (derived)");
    assertThat(range).hasToString("5 m of 10 mm bore");
  }

  @Test
  void the_ends_are_told_where_they_differ() {
    ConduitRange range =
        new ConduitRange(pipe(5.6, 10.0, 0.1, 2.0), pipe(7.2, 9.0, 0.05, 1.0), SEEN);
    assertThat(range.isExact()).isFalse();
    assertThat(range.assumption()).isEqualTo(SEEN);
    assertThat(range).hasToString("from 10 m of 5.6 mm bore to 9 m of 7.2 mm bore");
  }

  @Test
  void the_end_that_lets_least_through_is_not_wider_shorter_smoother_or_with_fewer_fittings() {
    Conduit most = pipe(10.0, 5.0, 0.1, 2.0);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ConduitRange(pipe(10.1, 5.0, 0.1, 2.0), most, SEEN))
        .withMessage(
            "bore of the conduit that lets least through must be at most that of the other,"
                + " 10 mm, was 10.1 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ConduitRange(pipe(10.0, 4.9, 0.1, 2.0), most, SEEN))
        .withMessage(
            "length of the conduit that lets least through must be at least that of the other,"
                + " 5 m, was 4.9 m");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ConduitRange(pipe(10.0, 5.0, 0.09, 2.0), most, SEEN))
        .withMessage(
            "roughness of the conduit that lets least through must be at least that of the other,"
                + " 0.1 mm, was 0.09 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new ConduitRange(pipe(10.0, 5.0, 0.1, 1.9), most, SEEN))
        .withMessage(
            "sum of fitting losses K of the conduit that lets least through must be at least that"
                + " of the other, 2, was 1.9");
    assertThat(new ConduitRange(most, most, SEEN).isExact()).isTrue();
  }

  /** Of a bore of 4 mm a wall is at most 0.05 × 4 mm rough; all else of both ends stays. */
  @Test
  void a_measured_bore_is_that_of_both_ends_and_no_wall_is_rougher_than_it_may_be() {
    ConduitRange range =
        new ConduitRange(pipe(8.0, 5.0, 0.35, 2.0), pipe(10.0, 4.0, 0.1, 1.0), SEEN);
    assertThat(range.ofBore(Length.ofMillimetres(9.0)))
        .isEqualTo(new ConduitRange(pipe(9.0, 5.0, 0.35, 2.0), pipe(9.0, 4.0, 0.1, 1.0), SEEN));
    ConduitRange narrow = range.ofBore(Length.ofMillimetres(4.0));
    assertThat(narrow.least().roughness().millimetres()).isCloseTo(0.2, within(1.0e-12));
    assertThat(narrow.least().length()).isEqualTo(Length.ofMetres(5.0));
    assertThat(narrow.least().fittingLoss()).isEqualTo(2.0);
    assertThat(narrow.most()).isEqualTo(pipe(4.0, 4.0, 0.1, 1.0));
    ConduitRange hose = new ConduitRange(
        pipe(8.0, 5.0, 0.35, 2.0).withWall(Wall.SMOOTH_RUBBER_HOSE),
        pipe(10.0, 4.0, 0.1, 1.0),
        SEEN);
    assertThat(hose.ofBore(Length.ofMillimetres(4.0)).least().wall())
        .contains(Wall.SMOOTH_RUBBER_HOSE);
  }

  /** Of the name the narrowest bore allows 0.05 × 8.7 mm; measured it is as one told with that bore from the first. */
  @ParameterizedTest
  @ValueSource(doubles = {6.0, 9.0, 10.2, 15.0})
  void a_measured_bore_leaves_nothing_of_what_was_taken_for_it(double millimetres) {
    Length measured = Length.ofMillimetres(millimetres);
    for (String called : List.of("3/8 in hose, old", "3/8 in rubber hose, old", "3/8 in hose")) {
      ConduitName name = ConduitName.parse(called);
      ConduitRange byName = name.over(name.bore().orElseThrow(), Length.ofMetres(10.0));
      assertThat(byName.assumption().citation()).contains("ISO 1307");
      ConduitRange told = name.over(measured, Length.ofMetres(10.0));
      assertThat(told.assumption().citation()).doesNotContain("ISO 1307");
      assertThat(byName.ofBore(measured)).as(called).isEqualTo(told);
    }
  }
}
