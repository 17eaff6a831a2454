package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.thread.Gender;
import org.airfit.thread.NptThread;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Printed values that are wrong are found by computing them again, not by a list of them. */
class PublishedMisprintsTest {

  private static final Map<String, ToDoubleFunction<NptThread>> COLUMNS = new LinkedHashMap<>();

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
  }

  static Stream<Row> page() {
    return Rows.of(PublishedMisprintsTest.class, "npt_page_with_misprints.csv");
  }

  /** What is printed in the documents of {@code published_disagreements.csv}, right and wrong alike. */
  static Stream<Row> printed() {
    return Rows.of(PublishedMisprintsTest.class, "printed_values.csv");
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

  @ParameterizedTest(name = "{0} {index}")
  @MethodSource("printed")
  void computing_a_printed_value_again_tells_what_it_is(Row row) {
    String what = (row.text("series") + " " + row.text("size") + " " + row.text("quantity"))
        .replace("  ", " ");
    assertThat(Recomputed.judge(what, row.number("printed"), row.halfDigit("printed")))
        .as("%s, %s: %s", row, row.text("document"), what)
        .contains(row.text("found"));
  }

  @Test
  void every_disagreement_that_can_be_computed_is_among_them() {
    Set<String> judged = printed().map(Row::toString).collect(Collectors.toSet());
    assertThat(Rows.of(PublishedMisprintsTest.class, "published_disagreements.csv")
            .map(Row::toString)
            .filter(id -> !judged.contains(id)))
        // four on roughness (WallTest), a bend (HoseBendTest), the thickness of a tape that nobody
        // settled, and R in Rp and Rc (below)
        .containsExactly("D30", "D31", "D32", "D33", "D34", "D35", "D37");
  }

  /** D37: a copy of an article says that the taper thread goes into the parallel one only. */
  @Test
  void the_taper_thread_goes_into_both_female_threads_of_its_standard() {
    assertThat(List.of("Rc 1/2 female", "Rp 1/2 female"))
        .allSatisfy(female -> assertThat(
                Mating.of(End.parse("R 1/2 male"), End.parse(female)).verdict())
            .isEqualTo(MatingVerdict.SEALS_WITH_SEALANT));
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
}
