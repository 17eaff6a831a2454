package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.thread.Mating.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class MatingTest {

  private static Mating mating(String one, String other) {
    return Mating.of(End.parse(one), End.parse(other));
  }

  static Stream<Row> cases() {
    return Rows.of(MatingTest.class, "mating_cases.csv")
        .filter(row -> !(row.text("male") + row.text("female")).matches(".*(Rp|NPSM).*"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void worked_verdicts_are_met(Row row) {
    Mating mating = mating(row.text("male"), row.text("female"));
    String seal = row.text("seal");
    if (seal.startsWith("thread")) {
      assertThat(mating.verdict()).isEqualTo(Verdict.SEALS_WITH_SEALANT);
    } else if (seal.startsWith("face")) {
      assertThat(mating.verdict()).isEqualTo(Verdict.SEALS_ON_FACE);
    } else {
      assertThat(mating.verdict().isSound()).as(row.text("why")).isFalse();
    }
    if (row.text("assembles").equals("no")) {
      assertThat(mating.verdict()).isEqualTo(Verdict.DOES_NOT_FIT);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "NPT 1/2 male, NPT 1/2 male",
    "R 1/2 female, NPT 1/2 female",
    "NPT 1/2 male, 1/2 in hose",
    "1/2 in barb, 1/2 in barb",
    "1/2 in barb, 3/8 in hose"
  })
  void what_has_nothing_to_hold_on_to_does_not_fit(String one, String other) {
    assertThat(mating(one, other).verdict()).isEqualTo(Verdict.DOES_NOT_FIT);
    assertThat(mating(other, one).verdict()).isEqualTo(Verdict.DOES_NOT_FIT);
  }

  @Test
  void a_barb_holds_the_hose_it_is_made_for_in_either_order() {
    assertThat(mating("3/8 in barb", "3/8 in hose").verdict()).isEqualTo(Verdict.HOLDS_WITH_CLAMP);
    assertThat(mating("3/8 in hose", "3/8 in barb").verdict()).isEqualTo(Verdict.HOLDS_WITH_CLAMP);
    assertThat(mating("3/8 in hose", "3/8 in barb").verdict().isSound()).isTrue();
  }

  @Test
  void taper_in_taper_of_one_standard_seals_with_sealant() {
    assertThat(mating("R 1/4 male", "Rc 1/4 female").verdict())
        .isEqualTo(Verdict.SEALS_WITH_SEALANT);
  }

  @Test
  void documents_disagree_on_r_in_g_and_no_standard_pairs_g_with_rc() {
    assertThat(mating("R 1/4 male", "G 1/4 female").verdict())
        .isEqualTo(Verdict.NOT_TO_BE_RELIED_ON);
    assertThat(mating("G 1/4 male", "Rc 1/4 female").verdict())
        .isEqualTo(Verdict.NOT_TO_BE_RELIED_ON);
  }
}
