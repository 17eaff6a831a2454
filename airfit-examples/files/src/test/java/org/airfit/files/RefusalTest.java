package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import org.airfit.safety.Medium;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RefusalTest {

  private static Optional<String> reason(String medium) {
    return Refusal.of(Document.of("job.json", Map.of("conditions", Map.of("medium", medium))))
        .map(Refusal::reason);
  }

  /** A cylinder is marked with the symbol; its own reason is told, not that of any other medium. */
  @ParameterizedTest
  @CsvSource({
    "N2, NITROGEN",
    "nitrogen, NITROGEN",
    "o2, OXYGEN",
    "H2O, WATER",
    "breathing  air, BREATHING_AIR",
    "' Welding gas ', WELDING_GAS"
  })
  void a_medium_is_refused_with_its_own_reason(String told, Medium medium) {
    assertThat(reason(told)).isEqualTo(medium.refusalInWords()).isPresent();
    assertThat(Refusal.of(Document.of("job.json", Map.of("medium", told))).map(Refusal::caution))
        .isEqualTo(medium.refusal());
    assertThat(Refusal.of(Document.of("job.json", Map.of("medium", told))).map(Refusal::medium))
        .as("known by its kind, not by its words")
        .contains(medium);
  }

  @ParameterizedTest
  @ValueSource(strings = {"compressed air", "Compressed  Air", " compressed\tair "})
  void compressed_air_is_compressed_air_however_it_is_spaced(String told) {
    assertThat(reason(told)).isEmpty();
  }

  @Test
  void any_other_word_is_told_back() {
    assertThat(reason("Argon").orElseThrow())
        .startsWith("airfit advises on compressed air for tools only, not on \"Argon\".")
        .endsWith("If it is compressed air, type compressed air.");
    assertThat(Refusal.of(Document.of("job.json", Map.of("medium", "Argon"))).map(Refusal::medium))
        .contains(Medium.OTHER);
    assertThat(reason("Another  medium")).isEqualTo(Medium.OTHER.refusalInWords());
  }

  /** A refused job is filed as any other; a number or a day that is not in its form is left out. */
  @ParameterizedTest
  @CsvSource({
    "2041-B, 2026-03-05, 2041-B, 2026-03-05",
    "' ', 2026-02-31, , ",
    "'a\u001bb', 5 March, , ",
  })
  void the_number_and_the_day_of_a_job_are_kept(
      String number, String date, String keptNumber, String keptDate) {
    Map<String, Object> job = Map.of("medium", "oxygen", "number", number, "date", date);
    JobLabel label = Refusal.of(Document.of("job.json", job)).orElseThrow().label();
    assertThat(label.number()).isEqualTo(Optional.ofNullable(keptNumber));
    assertThat(label.date().map(String::valueOf)).isEqualTo(Optional.ofNullable(keptDate));
  }
}
