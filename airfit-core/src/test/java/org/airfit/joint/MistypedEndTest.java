package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.airfit.quantity.QuantityFormatException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a hand slips in when it types an end. */
class MistypedEndTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "1/4 NTP | 'NTP' is not understood; nearest: NPT",
        "1/4 NTP male | 'NTP' is not understood; nearest: NPT",
        "1/4 ntp male | 'ntp' is not understood; nearest: NPT",
        "G1/4 femal | 'femal' is not understood; nearest: female",
        "G 1/4 femlae | 'femlae' is not understood; nearest: female",
        "1/4 NPT mael | 'mael' is not understood; nearest: male",
        "3/8 BSBP male | 'BSBP' is not understood; nearest: BSPP",
        "3/8 in bard | 'bard' is not understood; nearest: barb",
        "1/2 NPT female swivle | 'swivle' is not understood; nearest: swivel"
      })
  void the_nearest_word_is_named(String typed, String told) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> End.parse(typed))
        .withMessageContaining(told);
  }

  @Test
  void a_word_that_is_near_none_has_none_named() {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> End.parse("1/4 whatsit male"))
        .withMessageContaining("'whatsit' is not understood")
        .satisfies(refused -> assertThat(refused.getMessage()).doesNotContain("nearest"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "3/4 garden hose",
        "garden hose",
        "3/4 GHT",
        "3/4-11.5 NH",
        "3/4 in garden hose thread"
      })
  void a_garden_hose_is_refused_as_one_for_water_whichever_half_it_is(String typed) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> End.parse(typed))
        .withMessageContaining("a garden hose is for water: never put compressed air on it");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1 in fire hose", "1-1/2 NH"})
  void so_is_a_fire_hose(String typed) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> End.parse(typed))
        .withMessageContaining("a fire hose is for water");
  }

  @Test
  void with_its_half_told_it_is_an_end_that_nothing_of_the_air_goes_on() {
    End hose = End.parse("3/4 garden hose female");
    assertThat(Mating.of(End.parse("3/4 NPT male"), hose).cautions().toString())
        .contains("Never put compressed air on a garden or fire hose");
  }

  /** What people type for a push-in end, in the words and spellings of the counter. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "6 mm push-in",
        "6mm push in",
        "6 mm pushin",
        "6mm PushIn",
        "6 mm push-to-connect",
        "6 mm push to connect",
        "pushin 6 mm",
        "push-to-connect for 6 mm"
      })
  void a_push_in_end_is_known_by_every_word_for_it(String typed) {
    assertThat(End.parse(typed)).isEqualTo(End.parse("6 mm push-in"));
  }

  /** The part is named, not its end: one line says what to type. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "3/8 NPT quick connect female | quick",
        "1/4 in quick connect | quick",
        "1/4 NPT coupler | coupler",
        "1/4 NPT male plug | plug",
        "1/4 NPT male industrial interchange | industrial"
      })
  void a_word_for_the_part_is_answered_with_what_to_type(String typed, String word) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> End.parse(typed))
        .withMessageContaining("'" + word + "' tells the part, not how it ends: type its thread"
            + " without that word, such as \"1/4 NPT male\"");
  }
}
