package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.safety.Caution;
import org.airfit.source.Basis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Barbs and hoses by the tolerance of the bore, tubes and push-in ends by the outside diameter. */
class HosePairsTest {

  private static Mating mating(String one, String other) {
    Mating mating = Mating.of(End.parse(one), End.parse(other));
    Mating turned = Mating.of(End.parse(other), End.parse(one));
    assertThat(turned.verdict()).isEqualTo(mating.verdict());
    return mating;
  }

  private static MatingVerdict hoseOnBarb(HoseBore hose, HoseBore barb) {
    return Mating.of(new End.HoseEnd(hose), new End.Barb(barb)).verdict();
  }

  private static HoseBore bore(double millimetres) {
    return HoseBore.of(Length.ofMillimetres(millimetres));
  }

  @ParameterizedTest(name = "{0}, {1}")
  @CsvSource({
    "3/8 in barb, 9.5 mm hose",
    "3/8 in barb, 10 mm hose",
    "3/8 in barb, 9 mm hose",
    "10 mm barb, 3/8 in hose",
    "9.5 mm barb, 3/8 in hose",
    "9.5 mm barb, 10 mm hose",
    "12.5 mm barb, 13 mm hose",
    "13 mm barb, 1/2 in hose",
    "1/4 in barb, 6 mm hose",
    "6 mm barb, 1/4 in hose",
    "19 mm barb, 3/4 in hose",
    "1 in barb, 25 mm hose",
    "11 mm barb, 11 mm hose"
  })
  void a_hose_goes_on_a_barb_whose_bores_include_its_own(String barb, String hose) {
    assertThat(mating(barb, hose).verdict()).isEqualTo(MatingVerdict.HOLDS_WITH_CLAMP);
    assertThat(mating(barb, hose).reason()).contains("clamp").doesNotContain("Between");
  }

  @ParameterizedTest(name = "{0}, {1}")
  @CsvSource({
    "3/8 in barb, 8 mm hose, would not go on",
    "3/8 in barb, 1/2 in hose, would sit loose",
    "3/4 in barb, 20 mm hose, would sit loose",
    "20 mm barb, 3/4 in hose, would not go on",
    "5/16 in barb, 3/8 in hose, would sit loose",
    "11 mm barb, 12 mm hose, would sit loose"
  })
  void a_hose_of_another_size_does_not(String barb, String hose, String why) {
    assertThat(mating(barb, hose).verdict()).isEqualTo(MatingVerdict.DOES_NOT_FIT);
    assertThat(mating(barb, hose).reason()).contains(why);
  }

  @ParameterizedTest(name = "{0}, {1}")
  @CsvSource({"12 mm barb, 1/2 in hose", "9 mm barb, 3/8 in hose", "11 mm barb, 11.5 mm hose"})
  void a_barb_of_no_standard_name_is_not_judged_for_a_bore_that_is_merely_near(
      String barb, String hose) {
    Mating mating = mating(barb, hose);
    assertThat(mating.verdict()).isEqualTo(MatingVerdict.NOT_JUDGED);
    assertThat(mating.verdict().isSound()).isFalse();
    assertThat(mating.inWords()).contains("not judged: table not seen").contains("measure");
    assertThat(mating.cautions()).extracting(Caution::title).containsExactly("Not judged");
    assertThat(mating.sealantNotes()).isEmpty();
  }

  @Test
  void names_that_differ_by_more_than_the_least_spread_are_refused() {
    assertThat(hoseOnBarb(bore(11.7), bore(11.0))).isEqualTo(MatingVerdict.NOT_JUDGED);
    assertThat(hoseOnBarb(bore(11.85), bore(11.0))).isEqualTo(MatingVerdict.DOES_NOT_FIT);
    assertThat(hoseOnBarb(bore(10.4), bore(11.1))).isEqualTo(MatingVerdict.NOT_JUDGED);
    assertThat(hoseOnBarb(bore(10.35), bore(11.2))).isEqualTo(MatingVerdict.DOES_NOT_FIT);
  }

  static Stream<Row> bores() {
    return Rows.of(HosePairsTest.class, "hose_bore_iso1307.csv");
  }

  /** The limits of the published table, whatever the type of hose, before, at and after. */
  @ParameterizedTest(name = "{0} mm")
  @MethodSource("bores")
  void the_bores_of_iso_1307_are_the_limits_of_what_goes_on(Row row) {
    double least = Math.min(row.number("type_a_id_min_mm"), row.number("type_c_id_min_mm"));
    double most = Math.max(row.number("type_a_id_max_mm"), row.number("type_c_id_max_mm"));
    List<HoseBore> names = row.has("trade_inch")
        ? List.of(
            bore(row.number("nominal_size_iso1307")),
            HoseBore.parse(row.text("trade_inch") + " in"))
        : List.of(bore(row.number("nominal_size_iso1307")));
    for (HoseBore barb : names) {
      assertThat(hoseOnBarb(bore(least), barb)).isEqualTo(MatingVerdict.HOLDS_WITH_CLAMP);
      assertThat(hoseOnBarb(bore(most), barb)).isEqualTo(MatingVerdict.HOLDS_WITH_CLAMP);
      assertThat(hoseOnBarb(bore(least - 0.01), barb)).isEqualTo(MatingVerdict.DOES_NOT_FIT);
      assertThat(hoseOnBarb(bore(most + 0.01), barb)).isEqualTo(MatingVerdict.DOES_NOT_FIT);
      for (HoseBore hose : names) {
        assertThat(hoseOnBarb(hose, barb)).isEqualTo(MatingVerdict.HOLDS_WITH_CLAMP);
      }
    }
  }

  @Test
  void a_hose_is_called_by_its_names_by_what_lies_between_them_and_by_their_roundings() {
    StandardHose ten = StandardHose.of(bore(10.0)).orElseThrow();
    for (double name : new double[] {9.5, 9.525, 9.7, 10.0}) {
      assertThat(StandardHose.calledBy(bore(name))).contains(ten);
    }
    // 19.05 mm and 6.35 mm are 3/4 and 1/4 in; halves are rounded up
    assertThat(StandardHose.calledBy(bore(19.1))).isEqualTo(StandardHose.of(bore(19.0)));
    assertThat(StandardHose.calledBy(bore(6.4))).isEqualTo(StandardHose.of(bore(6.3)));
    assertThat(StandardHose.calledBy(bore(6.0))).isEqualTo(StandardHose.of(bore(6.3)));
    assertThat(StandardHose.calledBy(bore(19.2))).isEmpty();
    assertThat(StandardHose.calledBy(bore(6.5))).isEmpty();
    assertThat(StandardHose.calledBy(bore(9.4))).isEmpty();
    assertThat(StandardHose.calledBy(bore(10.1))).isEmpty();
    assertThat(StandardHose.calledBy(bore(13.0))).isEqualTo(StandardHose.of(bore(12.5)));
    assertThat(StandardHose.calledBy(bore(15.9))).isEqualTo(StandardHose.of(bore(16.0)));
    assertThat(StandardHose.calledBy(bore(20.0))).isEqualTo(StandardHose.of(bore(20.0)));
    assertThat(StandardHose.calledBy(bore(19.5))).isEmpty();
  }

  @Test
  void a_hose_inside_the_limits_of_one_type_only_says_so() {
    assertThat(mating("3/8 in barb", "9 mm hose").reason())
        .contains("8.7 to 10.3 mm")
        .contains("without a mandrel");
    assertThat(mating("1/4 in barb", "7 mm hose").reason()).doesNotContain("mandrel");
    assertThat(mating("3/8 in barb", "9 mm hose").source().basis()).isEqualTo(Basis.STANDARD);
    assertThat(mating("11 mm barb", "11 mm hose").source().basis())
        .isEqualTo(Basis.COMMON_PRACTICE);
  }

  @Test
  void a_refusal_names_both_bores_and_how_the_hose_would_sit() {
    assertThat(mating("11 mm barb", "12 mm hose").reason())
        .startsWith(
            "The barb is made for an 11 mm bore, the hose has a 12 mm bore. It would sit loose. ");
    assertThat(mating("3/8 in barb", "8 mm hose").reason())
        .startsWith(
            "The barb is made for a 3/8 in bore, the hose has an 8 mm bore. ISO 1307 lets a 3/8 in"
                + " hose measure 8.7 to 10.3 mm: it would not go on, or split. ");
    assertThat(mating("10 mm barb", "3/8 in hose").reason())
        .isEqualTo(
            "The barb is made for this bore: 10 mm and 3/8 in are names of one hose. ISO 1307 lets a 10 mm"
                + " hose measure 8.7 to 10.3 mm. It holds with a clamp or ferrule of the hose maker's choosing.");
    assertThat(mating("1/4 in tube", "6 mm push-in").reason())
        .startsWith("The tube measures 6.35 mm, the grip is made for 6 mm: it does not enter. ");
  }

  static Stream<Row> tubes() {
    return Rows.of(HosePairsTest.class, "tube_od_push_in.csv")
        .filter(row -> row.text("system").equals("inch"));
  }

  @ParameterizedTest(name = "{0} in")
  @MethodSource("tubes")
  void an_inch_tube_in_a_metric_push_in_end_is_judged_as_the_table_judges_it(Row row) {
    End tube = End.parse(row.text("name") + " in tube");
    End metric = End.parse(row.text("nearest_metric_mm") + " mm push-in");
    assertThat(((End.TubeEnd) tube).outside().millimetres())
        .isEqualTo(row.number("od_mm"), org.assertj.core.api.Assertions.within(5.0e-5));
    Mating mating = Mating.of(tube, metric);
    String advice = row.text("advice");
    if (advice.contains("ask, do not accept")) {
      assertThat(mating.verdict()).isEqualTo(MatingVerdict.NOT_JUDGED);
      assertThat(mating.reason()).contains("ask the maker").contains("do not accept");
    } else {
      assertThat(mating.verdict()).isEqualTo(MatingVerdict.DOES_NOT_FIT);
      assertThat(mating.reason())
          .contains(advice.contains("does not enter") ? "does not enter" : "blows out");
    }
    // its own end takes it
    Mating own = Mating.of(tube, End.parse(row.text("name") + " in push-in"));
    assertThat(own.verdict()).isEqualTo(MatingVerdict.HOLDS_IN_GRIP);
    assertThat(own.verdict().isSound()).isTrue();
    assertThat(own.cautions()).extracting(Caution::title).containsExactly("Tube in a push-in end");
    assertThat(own.sealantNotes()).isEmpty();
  }

  static Stream<Row> tubeCases() {
    return Rows.of(HosePairsTest.class, "end_mating_cases.csv")
        .filter(row -> row.text("offered").startsWith("tube"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("tubeCases")
  void worked_verdicts_on_tubes_are_met(Row row) {
    String size = row.text("offered").substring("tube ".length());
    Mating mating =
        mating(size + " tube", row.text("onto").substring("push-in for ".length()) + " push-in");
    assertThat(mating.verdict())
        .isEqualTo(
            row.text("verdict").equals("never")
                ? MatingVerdict.DOES_NOT_FIT
                : MatingVerdict.NOT_JUDGED);
  }

  @Test
  void the_nearness_of_two_tubes_ends_at_a_tenth_of_a_millimetre() {
    assertThat(mating("8.09 mm tube", "8 mm push-in").verdict())
        .isEqualTo(MatingVerdict.NOT_JUDGED);
    assertThat(mating("8.11 mm tube", "8 mm push-in").reason()).contains("does not enter");
    assertThat(mating("7.91 mm tube", "8 mm push-in").verdict())
        .isEqualTo(MatingVerdict.NOT_JUDGED);
    assertThat(mating("7.89 mm tube", "8 mm push-in").reason()).contains("blows out");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "8 mm tube",
        "5/16 in tube",
        "1-1/4 in tube",
        "1 in push-in",
        "2 in tube",
        "3-1/32 in tube",
        "5/32 in push-in",
        "7.5 mm push-in"
      })
  void a_tube_and_a_push_in_end_print_as_they_are_typed(String text) {
    assertThat(End.parse(text)).hasToString(text);
    assertThat(End.parse(text).clearBore()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "8mm push in, 8 mm push-in",
    "8 MM PUSH‑IN, 8 mm push-in",
    "5/16\" tube, 5/16 in tube",
    "0.5 in TUBE , 1/2 in tube",
    "25.4 mm tube, 1 in tube"
  })
  void they_are_read_as_people_write_them(String typed, String end) {
    assertThat(End.parse(typed)).isEqualTo(End.parse(end)).hasToString(end);
  }

  @ParameterizedTest
  @CsvSource({
    "tube, outside diameter of the tube is missing",
    "push-in, outside diameter of the tube is missing",
    "barb, bore of the hose is missing",
    "8 tube, unit is missing",
    "600 mm tube, 'must be in [1, 500] mm'",
    "0.5 mm push-in, 'must be in [1, 500] mm'",
    "tubeless, is not understood"
  })
  void what_is_missing_or_out_of_range_is_named_with_what_to_type(String typed, String problem) {
    assertThatThrownBy(() -> End.parse(typed))
        .isInstanceOf(QuantityFormatException.class)
        .hasMessageContaining(problem)
        .hasMessageContaining("accepted: ");
  }

  @Test
  void a_diameter_of_many_digits_prints_as_what_reads_it_back() {
    End.TubeEnd odd = new End.TubeEnd(Length.ofMillimetres(8.1234567));
    assertThat(End.parse(odd.label())).isEqualTo(odd);
  }

  @Test
  void a_tube_that_is_made_by_hand_is_held_to_the_same_range() {
    assertThatThrownBy(() -> new End.TubeEnd(Length.ofMillimetres(0.9)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("outside diameter of a tube must be in [1, 500] mm, was 0.9 mm");
    assertThatThrownBy(() -> new End.PushIn(Length.ofMillimetres(500.1)))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(End.parse("1 mm tube")).hasToString("1 mm tube");
    assertThat(End.parse("500 mm push-in")).hasToString("500 mm push-in");
    assertThat(new End.PushIn(Length.ofMillimetres(1.0)).outside().millimetres())
        .isEqualTo(1.0);
    assertThat(new End.TubeEnd(Length.ofMillimetres(500.0)).label()).isEqualTo("500 mm tube");
  }
}
