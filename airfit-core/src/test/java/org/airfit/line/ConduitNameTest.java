package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.Rows;
import org.airfit.quantity.Length;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.source.Basis;
import org.airfit.source.Source;
import org.airfit.thread.Limits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConduitNameTest {

  private static final Length TEN = Length.ofMetres(10.0);

  private static List<String> assumed(String text) {
    return ConduitName.parse(text).assumptions().stream().map(Source::citation).toList();
  }

  private static void hasBore(String text, double least, double most) {
    Limits bore = ConduitName.parse(text).bore().orElseThrow();
    assertThat(bore.least().millimetres()).as(text).isCloseTo(least, within(1.0e-9));
    assertThat(bore.most().millimetres()).as(text).isCloseTo(most, within(1.0e-9));
  }

  /** Every row of ISO 1307 as read: the widest limits of its types, by the metric name and by that of the trade. */
  @Test
  void a_tube_may_have_its_wall_behind_its_name() {
    for (String text :
        new String[] {"10 x 1 mm tube", "10 mm tube, wall 1 mm", "10 mm nylon tube, wall 1 mm"}) {
      assertThat(ConduitName.parse(text).bore().orElseThrow().least().millimetres())
          .as(text)
          .isCloseTo(8.0, within(1.0e-9));
    }
  }

  @Test
  void a_hose_has_the_bore_its_standard_allows() {
    Rows.of(ConduitNameTest.class, "/org/airfit/joint/hose_bore_iso1307.csv").forEach(row -> {
      double least = Math.min(row.number("type_a_id_min_mm"), row.number("type_c_id_min_mm"));
      double most = Math.max(row.number("type_a_id_max_mm"), row.number("type_c_id_max_mm"));
      hasBore(row.text("nominal_size_iso1307") + " mm hose", least, most);
      if (row.has("trade_inch")) {
        hasBore(row.text("trade_inch") + " in rubber hose, old", least, most);
        hasBore("hose " + row.text("trade_inch") + "\"", least, most);
      }
    });
    hasBore("1/4 hose", 5.6, 7.2);
    hasBore("¼ in hose", 5.6, 7.2);
    assertThat(assumed("1/4 in rubber hose"))
        .containsExactly(
            "bore of the hose by ISO 1307, however it is made",
            "roughness of rubber hose, smooth bore by two public tables");
  }

  /** Outside less twice the wall of ASME B36.10M: 0.840 − 2 × 0.109 and 0.840 − 2 × 0.147 in. */
  @Test
  void a_pipe_has_the_bore_of_its_schedule_and_without_one_of_both() {
    for (String text : List.of(
        "1/2 in steel pipe, sch 40",
        "1/2 steel pipe sch40, old",
        "sch. 40 black iron pipe 1/2\"",
        "1/2 in sch 40",
        "schedule 40 galvanised pipe, 1/2 in")) {
      hasBore(text, 25.4 * 0.622, 25.4 * 0.622);
    }
    hasBore("1/2 in steel pipe", 25.4 * 0.546, 25.4 * 0.622);
    hasBore("1 1/4 in pipe, sch 80", 25.4 * 1.278, 25.4 * 1.278);
    hasBore("1/2 in steel pipe sch", 25.4 * 0.546, 25.4 * 0.622);
    hasBore("1-1/4 in stainless steel pipe, sch 80", 25.4 * 1.278, 25.4 * 1.278);
    assertThat(assumed("1/2 in steel pipe")).contains("schedule not told: from 80 to 40");
    assertThat(assumed("1/2 in sch 40"))
        .contains("pipe of a schedule taken as steel")
        .doesNotContain("schedule not told: from 80 to 40");
    assertThat(assumed("1/2 in steel pipe, sch 40").get(0)).startsWith("bore by ASME B36.10M");
  }

  /** ASTM B88, type L of 3/4: 0.875 ± 0.003 and 0.045 ± 0.004 in; K is the thickest, M the thinnest wall. */
  @Test
  void a_copper_tube_has_the_tolerances_of_its_type_and_without_one_of_all() {
    hasBore("3/4 in copper type L", 25.4 * (0.785 - 0.011), 25.4 * (0.785 + 0.011));
    hasBore("copper tube 3/4 in type l", 25.4 * (0.785 - 0.011), 25.4 * (0.785 + 0.011));
    hasBore("3/4 in copper pipe, type", 25.4 * (0.745 - 0.015), 25.4 * 0.811);
    hasBore("3/4 in copper pipe", 25.4 * (0.745 - 0.015), 25.4 * 0.811);
    assertThat(assumed("3/4 in copper pipe"))
        .contains("type of the copper tube not told: K, L or M");
  }

  @Test
  void a_tube_is_named_by_its_outside_and_its_wall_or_its_bore() {
    hasBore("8 x 1 mm tube", 6.0, 6.0);
    hasBore("8x1 mm nylon tube", 6.0, 6.0);
    hasBore("8 × 6 mm PU tube", 6.0, 6.0);
    hasBore("8 mm x 1 mm tubing", 6.0, 6.0);
    hasBore("8 X 1 mm tube", 6.0, 6.0);
    hasBore("8 x 3.9 mm tube", 0.2, 0.2);
    // two walls of 4 mm would leave nothing of 8 mm, so that 4 mm is the bore
    hasBore("8 x 4 mm tube", 4.0, 4.0);
    hasBore("3/8 x 1/4 in tube", 6.35, 6.35);
    hasBore("8 mm tube", 5.0, 6.0);
    hasBore("8 mm plastic", 5.0, 6.0);
    assertThat(assumed("8 x 1 mm nylon tube"))
        .containsExactly(
            "bore from outside and wall",
            "roughness of smooth plastic pipe or tube (no PVC for"
                + " compressed air) by public tables of roughness");
    assertThat(assumed("8 x 6 mm nylon tube")).contains("second size taken as the bore");
    assertThat(assumed("8 mm nylon tube"))
        .contains("wall of the tube not told: every tube of that outside in the tables");
  }

  @ParameterizedTest
  @CsvSource({
    "rubber hose, 0.006, 0.07, SMOOTH_RUBBER_HOSE",
    "'rubber hose, old', 0.006, 0.7, SMOOTH_RUBBER_HOSE",
    "corrugated rubber hose, 0.3, 4, CORRUGATED_RUBBER_HOSE",
    "wire hose, 0.3, 4, CORRUGATED_RUBBER_HOSE",
    "PVC hose, 0.0015, 0.01, SMOOTH_PLASTIC",
    "polyurethane hose, 0.0015, 0.01, SMOOTH_PLASTIC",
    "hose, 0.0015, 0.07, ",
    "'hose, old', 0.0015, 0.7, ",
    "tube, 0.001, 0.01, ",
    "worn tube, 0.001, 0.1, ",
    "pipe, 0.001, 1, ",
    "'pipe, old', 0.001, 1, ",
    "steel pipe, 0.02, 1, STEEL_IN_AIR_SERVICE",
    "'steel pipe, new', 0.02, 0.1, COMMERCIAL_STEEL",
    "old steel pipe, 0.15, 1, STEEL_IN_AIR_SERVICE",
    "'steel pipe, in service', 0.15, 1, STEEL_IN_AIR_SERVICE",
    "black iron pipe, 0.02, 1, STEEL_IN_AIR_SERVICE",
    "iron pipe, 0.02, 1, STEEL_IN_AIR_SERVICE",
    "galvanized pipe, 0.025, 1, GALVANIZED",
    "'galvanized steel pipe, new', 0.025, 0.152, GALVANIZED",
    "cast iron pipe, 0.259, 1, CAST_IRON",
    "asphalted cast iron pipe, 0.122, 1, ASPHALTED_CAST_IRON",
    "stainless steel pipe, 0.002, 0.03, STAINLESS_STEEL",
    "lined steel pipe, 0.005, 0.005, LINED_STEEL",
    "copper pipe, 0.0015, 0.01, DRAWN_COPPER_OR_BRASS",
    "'copper pipe, old', 0.0015, 0.1, DRAWN_COPPER_OR_BRASS",
    "aluminum pipe, 0.001, 0.01, DRAWN_ALUMINIUM",
    "plastic pipe, 0.0015, 0.01, SMOOTH_PLASTIC"
  })
  void a_wall_has_what_is_published_of_it_and_more_when_it_may_be_old(
      String text, double least, double most, Wall wall) {
    ConduitName name = ConduitName.parse(text);
    assertThat(name.roughness().least().millimetres()).isCloseTo(least, within(1.0e-12));
    assertThat(name.roughness().most().millimetres()).isCloseTo(most, within(1.0e-12));
    assertThat(name.wall().orElse(null)).isEqualTo(wall);
    assertThat(name.bore()).isEmpty();
    assertThat(name.assumptions()).isNotEmpty();
  }

  @Test
  void what_was_taken_is_said() {
    assertThat(assumed("hose, old"))
        .containsExactly(
            "inner wall not told: from smooth plastic to smooth rubber",
            "an old wall up to ten times as rough as the roughest new, as steel (our choice)");
    assertThat(assumed("steel pipe"))
        .containsExactly(
            "roughness of steel pipe, compressed air, in service by Idelchik 2007",
            "roughness of commercial steel pipe, new by Binder 1973; Crane TP-410 0.0018 in; Idelchik 2007"
                + " gives 0.02 to 0.1 mm",
            "age not told: from new to years in service");
    assertThat(assumed("old steel pipe"))
        .containsExactly("roughness of steel pipe, compressed air, in service by Idelchik 2007");
    assertThat(assumed("tube"))
        .containsExactly("wall of the tube not told: drawn metal or smooth plastic");
    assertThat(assumed("pipe"))
        .containsExactly("wall of the pipe not told: from drawn metal to steel in air service");
  }

  @Test
  void a_length_of_it_is_a_range_of_conduits() {
    ConduitRange range = ConduitName.parse("1/4 in rubber hose").over(TEN);
    assertThat(range.least().bore()).isEqualTo(Length.ofMillimetres(5.6));
    assertThat(range.most().bore()).isEqualTo(Length.ofMillimetres(7.2));
    assertThat(range.least().roughness()).isEqualTo(Wall.SMOOTH_RUBBER_HOSE.most());
    assertThat(range.most().roughness()).isEqualTo(Wall.SMOOTH_RUBBER_HOSE.least());
    assertThat(range.least().length()).isEqualTo(TEN);
    assertThat(range.most().length()).isEqualTo(TEN);
    assertThat(range.least().wall()).contains(Wall.SMOOTH_RUBBER_HOSE);
    assertThat(range.most().wall()).contains(Wall.SMOOTH_RUBBER_HOSE);
    assertThat(range.assumption())
        .isEqualTo(new Source(
            Basis.HANDBOOK,
            "bore of the hose by ISO 1307, however it is made; roughness of rubber hose, smooth bore by two"
                + " public tables"));
    ConduitRange measured = ConduitName.parse("hose").over(Length.ofMillimetres(6.1), TEN);
    assertThat(measured.least().bore()).isEqualTo(measured.most().bore());
    assertThat(measured.least().wall()).isEmpty();
    assertThat(ConduitName.parse("PVC pipe")
            .over(Length.ofMillimetres(20.0), TEN)
            .least()
            .cautions())
        .isNotEmpty();
  }

  /** By hand: 0.05 × 5.6 mm is 0.28 mm, less than 0.7 mm; of 16 mm it is 0.8 mm. */
  @Test
  void no_wall_is_rougher_than_the_laws_of_friction_hold() {
    ConduitRange narrow = ConduitName.parse("1/4 in hose, old").over(TEN);
    assertThat(narrow.least().roughness().millimetres()).isCloseTo(0.28, within(1.0e-12));
    assertThat(narrow.assumption().citation())
        .endsWith("; roughness at most 0.28 mm (0.011 in), 0.05 of the bore");
    ConduitRange wide = ConduitName.parse("hose, old").over(Length.ofMillimetres(16.0), TEN);
    assertThat(wide.least().roughness().millimetres()).isCloseTo(0.7, within(1.0e-12));
    assertThat(wide.assumption().citation()).doesNotContain("of the bore");
    ConduitRange tiny = ConduitName.parse("corrugated hose").over(Length.ofMillimetres(4.0), TEN);
    assertThat(tiny.least().roughness().millimetres()).isCloseTo(0.2, within(1.0e-12));
    assertThat(tiny.most().roughness()).isEqualTo(tiny.least().roughness());
  }

  @Test
  void a_name_without_a_size_has_no_bore() {
    assertThatIllegalStateException()
        .isThrownBy(() -> ConduitName.parse("rubber hose").over(TEN))
        .withMessage("\"rubber hose\" does not tell the bore: give it too");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "bananas|0|\"bananas\" tells nothing of a pipe, tube or hose",
        "1/4 in red hose|7|\"red\" tells nothing of a pipe, tube or hose",
        "1/4 in|0|whether it is a pipe, a tube or a hose is missing",
        "old|0|whether it is a pipe, a tube or a hose is missing",
        "` `|0|whether it is a pipe, a tube or a hose is missing",
        "9 mm hose|0|no hose of that name stands in ISO 1307 as far as it was seen: give the bore, or one of 4 mm, 1/4"
            + " in (6.3 mm), 5/16 in (8 mm), 3/8 in (10 mm), 1/2 in (12.5 mm), 5/8 in (16 mm), 3/4 in (19 mm),"
            + " 20 mm, 1 in"
            + " (25 mm), 2 in (51 mm)",
        "0 mm hose|0|hose bore must be in [1, 500] mm, was 0 mm",
        "hose 10|7|the unit is missing",
        "7/16 in steel pipe|0|\"7/16 in\" is no size of pipe: say such as \"1/2 in\", or leave the"
            + " size out and give the bore",
        "pipe, sch 30, 1/2 in|14|no steel pipe of this size and schedule stands in the tables:"
            + " leave the size out and give the bore",
        "4 in copper tube|0|no copper tube of this size and type stands in the tables: leave the"
            + " size out and give the bore",
        "25 mm tube|0|no tube of this outside stands in the tables: leave the size out and give"
            + " the bore",
        "8 x 8 mm tube|0|a tube is named by its outside and its wall: the outside must be the"
            + " larger",
        "1/4 in hose 5 mm|12|\"5\" tells nothing of a pipe, tube or hose",
        "6 x 8 mm tube|0|a tube is named by its outside and its wall: the outside must be the larger",
        "1 in aluminium pipe|0|no table tells the bore of such a pipe by its size: leave the size out and give the bore"
      })
  void a_mistake_is_told_with_its_place(String text, int position, String problem) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> ConduitName.parse(text))
        .satisfies(wrong -> {
          assertThat(wrong.problem()).isEqualTo(problem);
          assertThat(wrong.position()).isEqualTo(position);
          assertThat(wrong.accepted())
              .startsWith("what it is of, its size and its age as far as known");
        });
  }

  @Test
  void a_text_longer_than_any_name_is_refused() {
    assertThat(ConduitName.parse("hose" + " ".repeat(196))).hasToString("hose");
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> ConduitName.parse("hose" + " ".repeat(197)))
        .withMessageContaining("longer than 200 characters");
  }

  @Test
  void it_prints_what_was_typed_and_compares_by_what_it_means() {
    ConduitName name = ConduitName.parse(" 1/4 in hose, old ");
    assertThat(name).hasToString("1/4 in hose, old");
    assertThat(name.meaning()).isEqualTo("bore 5.600 to 7.200 mm, roughness 0.0015 to 0.7 mm");
    assertThat(ConduitName.parse("hose").meaning()).isEqualTo("roughness 0.0015 to 0.07 mm");
    assertThat(ConduitName.parse(name.toString())).isEqualTo(name).hasSameHashCodeAs(name);
    assertThat(name)
        .isEqualTo(ConduitName.parse("old 1/4\" hose"))
        .isNotEqualTo(ConduitName.parse("1/4 in hose"))
        .isNotEqualTo("1/4 in hose, old");
  }
}
