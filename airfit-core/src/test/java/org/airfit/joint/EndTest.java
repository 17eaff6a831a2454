package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.airfit.quantity.HoseBore;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.source.Basis;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Gender;
import org.airfit.thread.ThreadFamily;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EndTest {

  @ParameterizedTest
  @CsvSource({
    "3/8 NPT male, 3/8 NPT male",
    "NPT 3/8 female, 3/8 NPT female",
    "npt 1-1/4 FEMALE, 1-1/4 NPT female",
    "1/4-18 NPT male, 1/4 NPT male",
    "G 1/2 female, G 1/2 female",
    "1/2 BSPP male, G 1/2 male",
    "R 1/4 male, R 1/4 male",
    "BSPT 1/4 female, Rc 1/4 female",
    "Rc 1/4 female, Rc 1/4 female",
    "Rp 1/2 female, Rp 1/2 female",
    "1/2 NPSM male, 1/2 NPSM male",
    "NPSC 1/2 female, 1/2 NPSC female",
    "PTF-SAE SHORT 1/4 male, 1/4 PTF-SAE SHORT male",
    "1/4-18 NPTF male, 1/4 NPTF male",
    "¾ NPT male, 3/4 NPT male",
    "3/8 in barb, 3/8 in barb",
    "10 mm hose, 10 mm hose"
  })
  void ends_are_read_as_people_write_them_and_labels_read_back(String typed, String label) {
    assertThat(End.parse(typed).label()).isEqualTo(label);
    assertThat(End.parse(label)).isEqualTo(End.parse(typed));
  }

  @Test
  void what_is_read_is_typed() {
    assertThat(End.parse("1/2 NPT male"))
        .isEqualTo(new End.Threaded(ThreadFamily.NPT, NominalThreadSize.ONE_HALF, Gender.MALE));
    assertThat(End.parse("3/8 in barb")).isEqualTo(new End.Barb(HoseBore.parse("3/8 in")));
    assertThat(End.parse("3/8 in hose")).isEqualTo(new End.HoseEnd(HoseBore.parse("3/8 in")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "3/8", "NPT male", "3/8 NPT", "3/8 NPT 1/2 male", "XYZ 1/2 male"})
  void what_is_no_end_is_refused_with_what_would_be_accepted(String typed) {
    assertThatThrownBy(() -> End.parse(typed))
        .isInstanceOf(QuantityFormatException.class)
        .hasMessageContaining("G 1/2 female");
  }

  @ParameterizedTest
  @CsvSource({
    "1/4-19 NPT male, '1/4 NPT male has 18 threads per inch, not 19'",
    "1-11.5 BSPP male, 'G 1 male has 11 threads per inch, not 11.5'",
    "R 3-1/2 male, 'the nearest is 4'",
    "Rp 1/2 male, 'gender of Rp must be female'",
    "Rc 1/2 male, 'Rc is only female'",
    "NPSC 1/2 male, 'gender of NPSC must be female'",
    "5/8 NPT male, 'no such nominal thread size'",
    "1/16 NPSM male, 'the nearest is 1/8'"
  })
  void a_thread_its_standard_does_not_have_is_refused_with_the_nearest(
      String typed, String problem) {
    assertThatThrownBy(() -> End.parse(typed))
        .isInstanceOf(QuantityFormatException.class)
        .hasMessageContaining(problem);
  }

  @Test
  void a_threaded_end_knows_its_geometry_if_it_was_seen() {
    assertThat(((End.Threaded) End.parse("R 1/2 male")).thread())
        .contains(BsptThread.of(NominalThreadSize.ONE_HALF));
    assertThat(((End.Threaded) End.parse("1/2 NPTF male")).thread()).isEmpty();
  }

  @Test
  void a_family_tells_its_flanks_and_its_taper() {
    assertThat(ThreadFamily.NPT.flankAngleDegrees()).isEqualTo(60);
    assertThat(ThreadFamily.BSPT.flankAngleDegrees()).isEqualTo(55);
    assertThat(ThreadFamily.NPT.isTapered()).isTrue();
    assertThat(ThreadFamily.BSPT.isTapered()).isTrue();
    assertThat(ThreadFamily.BSPP.isTapered()).isFalse();
    assertThat(ThreadFamily.BSPP.source().citation()).contains("ISO 228-1");
  }

  @Test
  void the_clear_bore_of_an_end_says_what_it_assumes() {
    Bore nipple = End.parse("1/2 NPT male").clearBore().orElseThrow();
    assertThat(nipple).hasToString("13.87 to 15.8 mm if cut from schedule 80 to 40 pipe");
    assertThat(nipple.source().citation()).contains("ASME B36.10M");
    Bore barb = End.parse("10 mm barb").clearBore().orElseThrow();
    assertThat(barb).hasToString("7.6 to 8.4 mm if the barb has a wall of 0.8 to 1.2 mm");
    assertThat(barb.source().basis()).isEqualTo(Basis.FROM_MEMORY);
    assertThat(End.parse("3/8 in hose").clearBore().orElseThrow())
        .hasToString("8.7 to 10.3 mm if made to ISO 1307");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1/2 NPT female",
        "R 1/2 male",
        "G 1/2 male",
        "1/16 NPT male",
        "2 mm barb",
        "11 mm hose"
      })
  void where_no_source_tells_the_bore_there_is_none(String end) {
    assertThat(End.parse(end).clearBore()).isEmpty();
  }
}
