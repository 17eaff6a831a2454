package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.source.Basis;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Gender;
import org.airfit.thread.PipeThread;
import org.airfit.thread.PipeThreads;
import org.airfit.thread.ThreadFamily;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
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

  @ParameterizedTest
  @CsvSource({
    "R 1/4, R 1/4 male",
    "Rc 1/4, Rc 1/4 female",
    "Rp 1/4, Rp 1/4 female",
    "1/2 NPSC, 1/2 NPSC female",
    "1/4 MNPT, 1/4 NPT male",
    "FNPT 1/4, 1/4 NPT female",
    "3/4 MIP, 3/4 NPT male",
    "1/4 in FIP, 1/4 NPT female",
    "1/4 NPT M, 1/4 NPT male",
    "F 1/2 G, G 1/2 female",
    "M1/2 NPT, 1/2 NPT male",
    "1/2 FBSPP, G 1/2 female",
    "1/4 in NPT male, 1/4 NPT male",
    "1/4-in. NPT male, 1/4 NPT male",
    "0.25 NPT male, 1/4 NPT male",
    ".375 NPT male, 3/8 NPT male",
    "1.25 in NPT male, 1-1/4 NPT male",
    "1 1/4 NPT male, 1-1/4 NPT male",
    "1¼ NPT male, 1-1/4 NPT male",
    "1/4” NPT male, 1/4 NPT male",
    "1/4“ NPT male, 1/4 NPT male",
    "1/4″ NPT male, 1/4 NPT male",
    "1/4’’ NPT male, 1/4 NPT male",
    "1/4\" NPT male, 1/4 NPT male",
    "1⁄4 NPT male, 1/4 NPT male",
    "1–1/4 NPT male, 1-1/4 NPT male",
    "1/4-18 NPT male, 1/4 NPT male",
    "NPT 1/4-18 male, 1/4 NPT male",
    "1/4 - 18 NPT male, 1/4 NPT male",
    "1-1/4-11.5 NPT male, 1-1/4 NPT male",
    "1-11 1/2 NPT male, 1 NPT male",
    "1-11-1/2 NPTF male, 1 NPTF male",
    "2-1/2-8 NPT male, 2-1/2 NPT male",
    "3/8-18 NPTF male, 3/8 NPTF male",
    "1/4-18 NPSF female, 1/4 NPSF female",
    "1/4NPTmale, 1/4 NPT male",
    "G1/2female, G 1/2 female",
    "male 1/4 NPT, 1/4 NPT male",
    "1/4 ptf-sae short female, 1/4 PTF-SAE SHORT female",
    "1/4 PTF - SAE - SHORT female, 1/4 PTF-SAE SHORT female",
    "1 / 4 NPT male, 1/4 NPT male",
    "1/4 \" NPT male, 1/4 NPT male",
    "NPT male 1/4 in., 1/4 NPT male",
    "NPT male 1/4 inch, 1/4 NPT male",
    "NPT male 1 1/4 inches, 1-1/4 NPT male",
    "NPT male 1/4'', 1/4 NPT male",
    "1/4- NPT male, 1/4 NPT male",
    "1/4 PTF SAE SHORT male, 1/4 PTF-SAE SHORT male"
  })
  void ends_are_read_as_other_people_write_them_too(String typed, String label) {
    assertThat(End.parse(typed)).hasToString(label);
  }

  /** 10-32 is met on small pneumatic parts beside M5: 0.190 in over the crests, sealed with a washer on a face. */
  @ParameterizedTest
  @ValueSource(strings = {"10-32 female", "#10-32 female", "10-32 UNF female", "10-32 UNF F"})
  void ten_thirty_two_is_an_end_as_m5_is(String text) {
    End female = End.parse(text);
    assertThat(female).hasToString("10-32 female");
    assertThat(End.parse(female.toString())).isEqualTo(female);
    assertThat(Mating.of(female, End.parse("10-32 male")).toString())
        .contains("A sealing washer between the shoulder of the male end and the flat face seals");
    assertThat(Mating.of(female, End.parse("M5 male")).toString()).contains("does not go together");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "10 x 1 mm tube",
        "10x1 mm tube",
        "10 mm x 1 mm tube",
        "10 x 8 mm tube",
        "10 x 1 mm nylon tube",
        "tube 10 x 1 mm"
      })
  void a_tube_may_be_told_by_outside_and_wall(String text) {
    assertThat(End.parse(text)).hasToString("10 mm tube, wall 1 mm");
    assertThat(End.parse(text.replace("tube", "push-in"))).hasToString("10 mm push-in");
  }

  /** One clear line: what is wrong, and examples once. */
  @Test
  void a_refused_end_names_its_examples_once() {
    assertThatThrownBy(() -> End.parse("3/8 male"))
        .isInstanceOf(QuantityFormatException.class)
        .hasMessageContaining("3/8 NPT male")
        .satisfies(
            wrong -> assertThat(String.valueOf(wrong.getMessage()).length()).isLessThan(260));
  }

  @Test
  void blanks_that_do_not_break_are_blanks() {
    assertThat(End.parse("\u00a01/4\u00a0NPT\u202fmale\u2007")).hasToString("1/4 NPT male");
    assertThat(End.parse("10\u00a0mm\u00a0hose\u00a0")).hasToString("10 mm hose");
    assertThat(End.parse("\t1/4\nNPT\r\nmale")).hasToString("1/4 NPT male");
  }

  @ParameterizedTest
  @CsvSource({
    "1/4 NPT, male or female is missing",
    "3/8 BSPT, male or female is missing",
    "G 1/2, male or female is missing",
    "NPT male, the size is missing",
    "1/4 male, 'the thread, such as NPT or G, is missing'",
    "NPT, the size and male or female are missing",
    "3/8, 'the thread, such as NPT or G, and male or female are missing'",
    "barb, the bore of the hose is missing"
  })
  void what_is_missing_is_named(String typed, String problem) {
    refused(typed, problem);
  }

  @ParameterizedTest
  @CsvSource({
    "1/4 BSP male, 'BSP is either R (taper, Rc inside) or G (parallel): which of them?'",
    "PT 1/4 male, 'PT is the old name of R (Rc inside)'",
    "PF 1/2 female, PF is the old name of G",
    "PS 1/2, PS is the old name of Rp",
    "1/4 PTF male, PTF is NPTF or PTF-SAE SHORT"
  })
  void letters_that_do_not_tell_the_thread_are_answered_with_those_that_do(
      String typed, String problem) {
    refused(typed, problem);
  }

  @ParameterizedTest
  @CsvSource({
    "1-8 NPTF male, '1 NPTF male has 11.5 threads per inch, not 8', 1-11.5 NPTF",
    "1-8 NPTF male, '1 NPTF male has 11.5 threads per inch, not 8', or size 1/8 if that is meant",
    "3/8-14 NPTF male, '3/8 NPTF male has 18 threads per inch, not 14', 3/8-18 NPTF",
    "1/4-27 NPSF female, '1/4 NPSF female has 18 threads per inch, not 27', 1/4-18 NPSF",
    "3-4 NPT male, '3 NPT male has 8 threads per inch, not 4', or size 3/4 if that is meant",
    "G 1/4-18 male, 'G 1/4 male has 19 threads per inch, not 18', G 1/4-19"
  })
  void threads_per_inch_of_another_size_are_refused_with_those_that_belong(
      String typed, String problem, String accepted) {
    refused(typed, problem);
    assertThatThrownBy(() -> End.parse(typed)).hasMessageContaining(accepted);
  }

  /** ASME B1.20.1: 14 threads per inch are those of 1/2 and 3/4 NPT, 27 those of 1/16 and 1/8; no NPT has 2. */
  @Test
  void sizes_that_have_the_threads_per_inch_typed_are_named_and_none_where_there_is_none() {
    assertThatThrownBy(() -> End.parse("3/8-14 NPT male"))
        .hasMessageContaining("3/8-18 NPT, or size 1/2 or 3/4, which have 14 threads per inch");
    assertThatThrownBy(() -> End.parse("G 1-19 female"))
        .hasMessageContaining("G 1-11, or size 1/4 or 3/8, which have 19 threads per inch");
    assertThatThrownBy(() -> End.parse("1-2 NPT male"))
        .hasMessageContaining("1-11.5 NPT, or size 1/2 if that is meant")
        .hasMessageNotContaining("which ha");
  }

  @Test
  void a_dash_and_8_behind_size_3_are_its_threads_per_inch_with_a_remark() {
    assertThat(End.parse("3-8 NPT male")).hasToString("3 NPT male");
    assertThat(End.remarkOn("3-8 NPT male"))
        .contains(
            "read as size 3 with 8 threads per inch, as the standard writes it, and not as size 3/8");
    assertThat(End.remarkOn("3/8 NPT male")).isEmpty();
    assertThat(End.remarkOn("2-1/2-8 NPT male")).isEmpty();
    assertThat(End.remarkOn("2-11.5 NPT male")).isEmpty();
    assertThat(End.remarkOn("10 mm hose")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "\u201c1/4\u201d NPT male, 1/4 NPT male",
        "\"1/4\" NPT male, 1/4 NPT male",
        "\u201e1/4\u201c NPT male, 1/4 NPT male",
        "\u201c1/4 NPT male\u201d, 1/4 NPT male",
        "\u00abG 1/2 female\u00bb, G 1/2 female",
        "NPT \u201c1/4\u201d male, 1/4 NPT male",
        "\u201c3/8\u201d barb, 3/8\u201d barb"
      })
  void quotation_marks_around_a_size_or_an_end_are_read_over(String typed, String end) {
    assertThat(End.parse(typed)).hasToString(end);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "`NPT \u201d 1/4 male`, 4",
        "`1/4 NPT male \u201d`, 13",
        "`\u201c\u201c1/4 NPT male`, 0",
        "`\u201c1/4 NPT male\u201d\u201d`, 14"
      })
  void a_quotation_mark_that_neither_opens_nor_closes_is_refused(String typed, int position) {
    assertThatThrownBy(() -> End.parse(typed))
        .hasMessageContaining("is not understood")
        .hasMessageContaining("at position " + position);
  }

  @ParameterizedTest
  @CsvSource({"R 1/4 female", "FEMALE R 1/4", "R 1/4-19 F"})
  void r_female_is_read_as_rc_and_that_is_told(String typed) {
    assertThat(End.parse(typed)).hasToString("Rc 1/4 female");
    assertThat(End.remarkOn(typed).orElseThrow())
        .contains("read as Rc 1/4 female")
        .contains("R marks the male thread")
        .contains("Rp 1/4");
    assertThat(End.remarkOn("Rc 1/4")).isEmpty();
    assertThat(End.remarkOn("R 1/4 male")).isEmpty();
    assertThat(End.remarkOn("BSPT 1/4 female")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "1/4 3/8 NPT male, a second size, 4",
        "1 4/4 NPT male, a second size, 2",
        "1 5/4 NPT male, a second size, 2",
        "1/4' NPT male, ''' is not understood, 3",
        "NPT male 1/4', ''' is not understood, 12",
        "XYZ 1/4 male, 'XYZ' is not understood, 0",
        "1/4 azAZ male, 'azAZ' is not understood, 4",
        "Rc 1/2 male, Rc is only female, 7",
        "1/2 Rp male, gender of Rp must be female, 4",
        "NPT male, the size is missing, 8",
        "`   `, no end of a part, 3",
        "1 8 NPT male, a second size, 2",
        "1/4 NPT G male, a second thread, 8",
        "1/4 FNPT male, female and male at once, 9",
        "1/4 NPT male?, '?' is not understood, 12",
        "`0,25 NPT male`, write 0.25 with a point, 1",
        "1/4 mm NPT male, 'mm' is not understood, 4",
        "1/0 NPT male, a fraction needs a number above 0 below its line, 2",
        "1/ NPT male, a fraction needs a number above 0 below its line, 3",
        ". NPT male, '.' is no number, 0",
        "`1-0.25 NPT male`, `1 NPT male has 11.5 threads per inch, not 0.25`, 2"
      })
  void what_does_not_belong_is_refused_where_it_stands(String typed, String problem, int position) {
    assertThatThrownBy(() -> End.parse(typed))
        .hasMessageContaining(problem)
        .hasMessageContaining("at position " + position);
  }

  @Test
  void at_most_200_characters_are_read() {
    String end = "1/4 NPT male";
    String full = " ".repeat(200 - end.length()) + end;
    assertThat(End.parse(full)).hasToString(end);
    refused(" " + full, "longer than 200 characters");
    refused("9".repeat(201), "longer than 200 characters");
    refused("9".repeat(188) + " NPT male", "no such nominal thread size");
  }

  @Test
  void a_long_text_is_refused_without_reading_it() {
    for (String unit : List.of(" ", "1/", "1-", "M", "\"", "1 ", "NPT ", "1 mm")) {
      String text = unit.repeat(100_000 / unit.length());
      for (String each : List.of(text, text + "1 mm", "1/4" + text + "barb")) {
        refused(each, "longer than 200 characters");
      }
    }
  }

  @ParameterizedTest
  @MethodSource("ends")
  void every_end_is_read_back_from_what_it_prints(End end) {
    assertThat(End.parse(end.toString())).isEqualTo(end);
    assertThat(end.label()).isEqualTo(end.toString());
    assertThat(End.remarkOn(end.toString())).isEmpty();
  }

  static List<End> ends() {
    List<End> ends = new ArrayList<>();
    for (ThreadFamily family : ThreadFamily.values()) {
      for (NominalThreadSize size : family.sizes()) {
        for (Gender gender : Gender.values()) {
          if (family.has(gender)) {
            ends.add(new End.Threaded(family, size, gender));
          }
        }
      }
    }
    for (String bore : List.of("3/8 in", "10 mm", "1-1/4 in", "0.5 in", "9.5 mm", "1 in")) {
      ends.add(new End.Barb(HoseBore.parse(bore)));
      ends.add(new End.HoseEnd(HoseBore.parse(bore)));
    }
    return ends;
  }

  @ParameterizedTest
  @MethodSource("geometries")
  void what_a_thread_calls_itself_is_read_with_its_gender(PipeThread thread) {
    assertThat(End.parse(thread + " female"))
        .isEqualTo(new End.Threaded(thread.family(), thread.size(), Gender.FEMALE));
  }

  static Stream<PipeThread> geometries() {
    return Arrays.stream(ThreadFamily.values())
        .flatMap(family ->
            family.sizes().stream().flatMap(size -> PipeThreads.of(family, size).stream()));
  }

  private static void refused(String typed, String problem) {
    assertThatThrownBy(() -> End.parse(typed))
        .isInstanceOf(QuantityFormatException.class)
        .hasMessageContaining(problem);
  }

  @Test
  void what_is_read_is_typed() {
    assertThat(End.parse("1/2 NPT male"))
        .isEqualTo(new End.Threaded(ThreadFamily.NPT, NominalThreadSize.ONE_HALF, Gender.MALE));
    assertThat(End.parse("3/8 in barb")).isEqualTo(new End.Barb(HoseBore.parse("3/8 in")));
    assertThat(End.parse("3/8 in hose")).isEqualTo(new End.HoseEnd(HoseBore.parse("3/8 in")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", " ", "3/8", "NPT male", "3/8 NPT", "3/8 NPT 1/2 male", "XYZ 1/2 male"})
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
    assertThat(((End.Threaded) End.parse("R 1/2 male")).thread().geometry())
        .contains(BsptThread.of(NominalThreadSize.ONE_HALF));
    assertThat(((End.Threaded) End.parse("1/2 NPTF male")).thread().geometry()).isEmpty();
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
    assertThat(
            End.parse("2.5 mm barb").clearBore().orElseThrow().limits().least().millimetres())
        .isCloseTo(0.1, org.assertj.core.api.Assertions.within(1.0e-9));
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
        "2.4 mm barb",
        "11 mm hose"
      })
  void where_no_source_tells_the_bore_there_is_none(String end) {
    assertThat(End.parse(end).clearBore()).isEmpty();
  }
}
