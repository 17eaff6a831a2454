package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.line.FittingList.Item;
import org.airfit.line.PipeFitting.Method;
import org.airfit.quantity.Length;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.source.Basis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FittingListTest {

  /** The bore of 1/2 in pipe, schedule 40. */
  private static final Length BORE = Length.ofInches(0.622);

  /** λT of that pipe: 0.027 in Crane's table, by hand 1/(2 log10(3.7 × 0.622/0.0018))² = 0.02592. */
  private static final double TURBULENT = 0.02592;

  private static String pieces(String text) {
    return FittingList.parse(text).items().stream()
        .map(item -> item.count() + " " + item.name())
        .toList()
        .toString();
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
    "4 elbows, 1 tee, 1 ball valve|[4 elbow, 1 tee, 1 ball valve]",
    "4 elbows and 1 tee|[4 elbow, 1 tee]",
    "4 Elbows; a tee + Ball Valve|[4 elbow, 1 tee, 1 ball valve]",
    "4x elbow|[4 elbow]",
    "4 × 90° elbows|[4 elbow]",
    "2 x ells|[2 elbow]",
    "90° elbow, 90 elbow, 90 deg elbow|[1 elbow, 1 elbow, 1 elbow]",
    "90 elbows|[90 elbow]",
    "45 elbow, 2 45° elbows|[1 45° elbow, 2 45° elbow]",
    "2 long-radius elbows|[2 long elbow]",
    "180 bend, return bend|[1 return bend, 1 return bend]",
    "tee run, tee side|[1 tee run, 1 tee branch]",
    "non-return valve, 1000 checks|[1 check valve, 1000 check valve]",
    "swing check valves, lift check|[1 swing check, 1 lift check]",
    "full-port ball valve|[1 full-port ball valve]",
    "2 unions, entrance, exit|[2 union, 1 entrance, 1 exit]"
  })
  void what_people_type_is_counted(String text, String pieces) {
    assertThat(pieces(text)).isEqualTo(pieces);
  }

  /** By hand, L/D of Crane: elbow 30, tee 20 or 60, full-port ball valve 3; reduced (Hooper) 0.15 (1 + 1/0.622). */
  @Test
  void the_sums_are_those_of_the_pieces() {
    FittingList list = FittingList.parse("4 elbows, 1 tee, 1 ball valve");
    assertThat(list.leastLoss(BORE))
        .isCloseTo((4 * 30 + 20 + 3) * TURBULENT, within(0.001 * 143 * TURBULENT));
    assertThat(list.mostLoss(BORE))
        .isCloseTo(
            (4 * 30 + 60) * TURBULENT + 0.15 * (1.0 + 1.0 / 0.622),
            within(0.001 * 180 * TURBULENT));
    assertThat(list.isExact()).isFalse();
    FittingList elbows = FittingList.parse("3 elbows");
    assertThat(elbows.isExact()).isTrue();
    assertThat(elbows.leastLoss(BORE))
        .isEqualTo(elbows.mostLoss(BORE))
        .isCloseTo(90 * TURBULENT, within(0.001 * 90 * TURBULENT));
  }

  /** L/D of Crane TP-410 as the reference tables have them. */
  @ParameterizedTest
  @CsvSource({
    "elbow, 30, 30", "45° elbow, 16, 16", "long elbow, 14, 14", "bend, 12, 30", "mitre bend, 60, 60",
    "return bend, 50, 50", "tee, 20, 60", "tee run, 20, 20", "tee branch, 60, 60", "gate valve, 8, 8",
    "globe valve, 340, 340", "angle valve, 55, 150", "plug valve, 18, 18", "butterfly valve, 45, 45",
    "diaphragm valve, 39, 149", "check valve, 50, 600", "swing check, 50, 100", "lift check, 55, 600",
    "full-port ball valve, 3, 3"
  })
  void a_word_that_may_mean_two_pieces_has_both(String word, double least, double most) {
    FittingList list = FittingList.parse(word);
    assertThat(list.leastLoss(BORE)).isCloseTo(least * TURBULENT, within(0.001 * least * TURBULENT));
    assertThat(list.mostLoss(BORE)).isCloseTo(most * TURBULENT, within(0.001 * most * TURBULENT));
  }

  /** The order of the two pieces of a word holds in every bore. */
  @ParameterizedTest
  @ValueSource(doubles = {0.51, 3.0, 10.0, 50.0, 500.0})
  void the_piece_that_loses_least_does_in_every_bore(double millimetres) {
    Length bore = Length.ofMillimetres(millimetres);
    for (String word : List.of(
        "bend", "tee", "ball valve", "angle valve", "diaphragm valve", "check valve", "swing check",
        "lift check", "union")) {
      FittingList list = FittingList.parse(word);
      assertThat(list.leastLoss(bore)).as(word).isLessThan(list.mostLoss(bore));
    }
  }

  @Test
  void the_sources_and_what_is_open_are_told() {
    FittingList list = FittingList.parse("4 elbows, 1 tee, 1 tee, 1 ball valve");
    assertThat(list.assumptions().stream().map(Object::toString).toList())
        .containsExactly(
            "elbow by Crane TP-410 (2009), as coded in fluids 1.0.22 (handbook)",
            "tee from \"tee, flow through run\" to \"tee, flow through branch\" by Crane TP-410, editions"
                + " before 2009, page A-29 (from memory)",
            "ball valve from \"ball valve, full port\" to \"valve, ball, reduced trim, β 0.9\" by Crane TP-410"
                + " (2009), as coded in fluids 1.0.22 and Hooper 1981, as coded in fluids 1.0.22 (handbook)");
    assertThat(FittingList.parse("union").assumptions().get(0).basis()).isEqualTo(Basis.FROM_MEMORY);
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
    "4 elbos|0|\"elbos\" is no fitting known here",
    "4 elbows, 2 valves|10|\"valves\" is no fitting known here",
    "0 elbows|0|how many there are must be from 1 to 1000",
    "1001 elbows|0|how many there are must be from 1 to 1000",
    "99999999999 elbows|0|how many there are must be from 1 to 1000",
    "4 elbows,|9|the fitting is missing",
    "4|0|the fitting is missing",
    "1 coupling|0|a quick coupling is no pipe fitting: give it as an element with its capacity; a pipe coupling loses"
        + " as a \"union\"",
    "2 sockets|0|a quick coupling is no pipe fitting: give it as an element with its capacity; a pipe coupling loses"
        + " as a \"union\"",
    "elbow and coupler|10|a quick coupling is no pipe fitting: give it as an element with its capacity; a pipe"
        + " coupling loses as a \"union\""
  })
  void a_mistake_is_told_with_its_place(String text, int position, String problem) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> FittingList.parse(text))
        .satisfies(wrong -> {
          assertThat(wrong.problem()).isEqualTo(problem);
          assertThat(wrong.position()).isEqualTo(position);
          assertThat(wrong.accepted())
              .startsWith("a list such as \"4 elbows, 1 tee, 1 ball valve\" of elbow, 45° elbow, long elbow,")
              .endsWith("union, entrance, exit");
        });
    assertThatExceptionOfType(QuantityFormatException.class).isThrownBy(() -> FittingList.parse(""));
  }

  @Test
  void it_prints_what_was_typed_and_compares_by_its_pieces() {
    FittingList list = FittingList.parse(" 4 elbows, 1 tee ");
    assertThat(list).hasToString("4 elbows, 1 tee");
    assertThat(FittingList.parse(list.toString())).isEqualTo(list).hasSameHashCodeAs(list);
    assertThat(list)
        .isEqualTo(FittingList.parse("4 90° ells and a tee"))
        .isNotEqualTo(FittingList.parse("4 elbows"))
        .isNotEqualTo("4 elbows, 1 tee");
  }

  @Test
  void a_count_has_its_bounds() {
    PipeFitting elbow = PipeFitting.of(Method.LENGTH, "elbow 90°, standard, threaded");
    assertThat(new Item(1, "elbow", elbow, elbow).isExact()).isTrue();
    assertThat(new Item(1000, "elbow", elbow, elbow).count()).isEqualTo(1000);
    for (int count : new int[] {0, 1001}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new Item(count, "elbow", elbow, elbow))
          .withMessage("count of a fitting must be from 1 to 1000, was " + count);
    }
  }

  @Test
  void on_a_range_the_narrow_end_takes_the_largest_loss() {
    Conduit pipe = Conduit.of(BORE, Length.ofMetres(10.0), Wall.COMMERCIAL_STEEL);
    FittingList list = FittingList.parse("4 elbows, 1 tee");
    ConduitRange range = ConduitRange.exactly(pipe).withFittings(list);
    assertThat(range.least().fittingLoss()).isEqualTo(list.mostLoss(BORE));
    assertThat(range.most().fittingLoss()).isEqualTo(list.leastLoss(BORE));
    assertThat(range.assumption().citation())
        .startsWith("elbow by Crane TP-410 (2009), as coded in fluids 1.0.22; tee from");
    assertThat(ConduitRange.exactly(pipe).withFittings(FittingList.parse("2 elbows")).isExact())
        .isTrue();
    assertThat(ConduitName.parse("steel pipe, new")
            .over(BORE, Length.ofMetres(1.0))
            .withFittings(list)
            .assumption()
            .citation())
        .startsWith("roughness of commercial steel pipe, new by Binder 1973")
        .contains("; elbow by Crane");
  }
}
