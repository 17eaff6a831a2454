package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a branch of a network is changed for: sizes that a shop keeps, bores of schedule 40 as ASME B36.10 has them. */
class WiderTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "15.8 mm  | SI | a 3/4 in pipe of schedule 40 (bore 20.9 mm)",
        "0.622 in | US | a 3/4 in pipe of schedule 40 (bore 0.824 in)",
        "9.5 mm   | SI | a 13 mm hose",
        "3/8 in   | US | a 1/2 in hose",
        "8 mm     | SI | a 10 mm hose",
        "7.5 mm   | SI | a bore of 9.4 mm",
        "19 mm    | SI | a bore of 23.8 mm"
      })
  void the_next_size_is_one_that_exists(String bore, UnitSystem units, String words) {
    Wider wider = Wider.all(Length.parse(bore), units).get(0);
    assertThat(wider.words()).isEqualTo(words);
    assertThat(wider.bore()).isGreaterThan(Length.parse(bore));
  }

  @Test
  void a_bore_a_little_off_that_of_a_pipe_is_taken_for_it() {
    assertThat(Wider.all(Length.parse("15.7 mm"), UnitSystem.SI).get(0).words())
        .contains("3/4 in pipe");
    assertThat(Wider.all(Length.parse("15.5 mm"), UnitSystem.SI).get(0).words())
        .isEqualTo("a bore of 19.4 mm");
  }

  /** Bores of 3/4 to 2 in schedule 40 of ASME B36.10; hoses by name end at 3/4 in. */
  @Test
  void further_sizes_follow_each_wider_than_the_one_before() {
    assertThat(Wider.all(Length.parse("0.622 in"), UnitSystem.US))
        .extracting(Wider::words)
        .startsWith(
            "a 3/4 in pipe of schedule 40 (bore 0.824 in)",
            "a 1 in pipe of schedule 40 (bore 1.049 in)",
            "a 1-1/4 in pipe of schedule 40 (bore 1.380 in)",
            "a 1-1/2 in pipe of schedule 40 (bore 1.610 in)",
            "a 2 in pipe of schedule 40 (bore 2.067 in)");
    assertThat(Wider.all(Length.parse("1/4 in"), UnitSystem.US))
        .extracting(Wider::words)
        .containsExactly("a 3/8 in hose", "a 1/2 in hose", "a 3/4 in hose");
  }
}
