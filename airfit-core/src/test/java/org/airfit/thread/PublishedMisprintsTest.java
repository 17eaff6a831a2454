package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NominalThreadSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Printed values that are wrong are found by computing them again, not by a list of them. */
class PublishedMisprintsTest {

  private static final Map<String, ToDoubleFunction<NptThread>> COLUMNS = new LinkedHashMap<>();

  /** What a printed value of a topic should have been, from the sizes named beside it. */
  private static final Map<String, ToDoubleFunction<NominalThreadSize>> QUANTITIES =
      new LinkedHashMap<>();

  static {
    COLUMNS.put("tpi", NptThread::threadsPerInch);
    COLUMNS.put("pitch_in", t -> t.pitch().inches());
    COLUMNS.put("h_in", t -> t.height().inches());
    COLUMNS.put("trunc_max_in", t -> t.truncation().most().inches());
    COLUMNS.put("e1_in", t -> t.pitchDiameterAtHandTight().inches());
    COLUMNS.put("l1_in", t -> t.handTightLength().inches());
    COLUMNS.put("l1_turns", NptThread::handTightTurns);
    COLUMNS.put("l2_in", t -> t.effectiveLength().inches());
    COLUMNS.put("l2_turns", NptThread::effectiveTurns);
    COLUMNS.put("vanish_in", t -> t.vanishLength().inches());
    COLUMNS.put("vanish_turns", t -> t.vanishLength().inches() * t.threadsPerInch());

    QUANTITIES.put("D01", size -> NptThread.of(size).effectiveLength().inches());
    QUANTITIES.put("D02", size -> NptThread.of(size).handTightLength().inches());
    QUANTITIES.put(
        "D05",
        size -> NptThread.of(NominalThreadSize.ONE_HALF).crestFlat().most().inches());
    QUANTITIES.put("D08", size -> NptThread.of(size).pitchDiameterAtSmallEnd().inches());
    QUANTITIES.put("D12", size -> {
      NptThread thread = NptThread.of(NominalThreadSize.ONE_HALF);
      return thread.handTightLength().plus(thread.wrenchLength()).inches();
    });
    QUANTITIES.put("D13", size -> NptThread.of(size).handTightLength().inches());
    QUANTITIES.put("D14", size -> NptThread.of(size).effectiveLength().inches());
    QUANTITIES.put("D17", size -> ThreadForm.ROUND_55.sharpHeightOverPitch());
    QUANTITIES.put("D19", size -> BsppThread.of(size).pitchDiameter().millimetres());
    QUANTITIES.put(
        "D23", size -> RpThread.of(NominalThreadSize.ONE).diameterTolerance().millimetres());
    QUANTITIES.put(
        "D27", size -> NptThread.of(NominalThreadSize.ONE).pipeDiameter().millimetres());
  }

  static Stream<Row> page() {
    return Rows.of(PublishedMisprintsTest.class, "npt_page_with_misprints.csv");
  }

  static Stream<Row> disagreements() {
    return Rows.of(PublishedMisprintsTest.class, "published_disagreements.csv")
        .filter(row -> QUANTITIES.containsKey(row.text("id")));
  }

  @Test
  void recomputing_a_printed_page_finds_its_two_misprints_and_no_others() {
    List<String> found = new ArrayList<>();
    page().forEach(row -> {
      NptThread thread = NptThread.of(NominalThreadSize.parse(row.text("size")));
      COLUMNS.forEach((column, ours) -> {
        // twice the rounding: such tables are made from parts that were rounded before
        if (Math.abs(ours.applyAsDouble(thread) - row.number(column))
            > 2.0 * row.halfDigit(column)) {
          found.add(row + " " + column);
        }
      });
    });
    assertThat(found).containsExactlyInAnyOrder("3/8 l2_in", "1-1/2 l1_in");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("disagreements")
  void a_disputed_value_leaves_what_the_formula_gives_and_the_expected_one_does_not(Row row) {
    double ours = Objects.requireNonNull(QUANTITIES.get(row.text("id"))).applyAsDouble(size(row));
    double published = number(row.text("published"));
    double expected = number(row.text("expected"));
    double half = halfDigit(row.text("expected"));
    assertThat(Math.abs(ours - expected)).as(row.text("argument")).isLessThanOrEqualTo(2.0 * half);
    assertThat(Math.abs(ours - published)).as(row.text("argument")).isGreaterThan(half);
  }

  private static NominalThreadSize size(Row row) {
    Matcher size = Pattern.compile(
            "(?:size |blog: )?((?:[12]-)?[0-9]/[0-9]+|(?<=size )[1-4])(?![0-9])")
        .matcher(row.text("where") + " " + row.text("published"));
    return size.find() ? NominalThreadSize.parse(size.group(1)) : NominalThreadSize.ONE;
  }

  private static final Pattern NUMBER = Pattern.compile("(?<![-0-9/])[0-9]+\\.[0-9]+");

  private static double number(String text) {
    Matcher number = NUMBER.matcher(text);
    assertThat(number.find()).as(text).isTrue();
    return Double.parseDouble(number.group());
  }

  private static double halfDigit(String text) {
    Matcher number = NUMBER.matcher(text);
    assertThat(number.find()).as(text).isTrue();
    return 0.5
        * Math.pow(10.0, number.group().indexOf('.') + 1 - number.group().length())
        * (1.0 + 1.0e-9);
  }

  @Test
  void the_vanish_length_at_fourteen_per_inch_is_printed_cut_off() {
    NptThread half = NptThread.of(NominalThreadSize.ONE_HALF);
    assertThat(half.vanishLength().inches()).isBetween(0.24785, 0.24795); // printed 0.2478
    assertThat(half.overallLength().inches()).isBetween(0.78155, 0.78165); // printed 0.7815
    assertThat(NptThread.of(NominalThreadSize.TWO).overallLength().inches())
        .isBetween(1.05825, 1.05835); // printed 1.0582
  }

  @Test
  void an_old_edition_has_another_hand_tight_length_and_its_own_plane() {
    assertThat(planeAt(NominalThreadSize.ONE_EIGHTH, 0.180)).isEqualTo("0.37476");
    assertThat(planeAt(NominalThreadSize.ONE_QUARTER, 0.200)).isEqualTo("0.48989");
  }

  private static String planeAt(NominalThreadSize size, double inches) {
    return NptThread.of(size)
        .section(Gender.MALE, Length.ofInches(inches))
        .pitch()
        .format(LengthUnit.INCH, 5)
        .replace(" in", "");
  }

  @Test
  void the_effective_length_is_not_the_engagement() {
    NptThread eighth = NptThread.of(NominalThreadSize.ONE_EIGHTH);
    NptThread quarter = NptThread.of(NominalThreadSize.ONE_QUARTER);
    assertThat(eighth.effectiveLength())
        .isLessThan(eighth.handTightLength().plus(eighth.wrenchLength()));
    assertThat(quarter.effectiveLength())
        .isGreaterThan(quarter.handTightLength().plus(quarter.wrenchLength()));
  }

  /** D26: a page lists them for G; they are drills for Rp. */
  @Test
  void tap_drills_below_the_least_minor_diameter_are_not_for_g() {
    assertThat(18.5)
        .isLessThan(BsppThread.of(NominalThreadSize.ONE_HALF)
            .femaleMinorDiameter()
            .least()
            .millimetres());
    assertThat(24.0)
        .isLessThan(BsppThread.of(NominalThreadSize.THREE_QUARTERS)
            .femaleMinorDiameter()
            .least()
            .millimetres());
    assertThat(RpThread.of(NominalThreadSize.ONE_HALF)
            .minorDiameter()
            .contains(Length.ofMillimetres(18.5)))
        .isTrue();
  }

  @Test
  void old_inch_based_diameters_are_one_or_two_microns_larger() {
    double[] old = {13.158, 20.956, 33.250, 41.912, 47.805, 59.616};
    NominalThreadSize[] sizes = {
      NominalThreadSize.ONE_QUARTER, NominalThreadSize.ONE_HALF, NominalThreadSize.ONE,
      NominalThreadSize.ONE_AND_A_QUARTER, NominalThreadSize.ONE_AND_A_HALF, NominalThreadSize.TWO
    };
    for (int i = 0; i < old.length; i++) {
      assertThat(old[i] - BsppThread.of(sizes[i]).majorDiameter().millimetres())
          .isBetween(0.0009, 0.0021);
    }
  }
}
