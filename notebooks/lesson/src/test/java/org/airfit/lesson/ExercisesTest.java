package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;

class ExercisesTest {

  private final Exercises sheet = Exercises.of(1);

  @Test
  void a_blank_asks_to_be_filled_and_is_no_try() {
    assertThat(sheet.check("1a", Double.NaN)).startsWith("1a: still blank");
    assertThat(sheet.check("1b", " ")).startsWith("1b: still blank");
    assertThat(sheet.reveal("1a")).contains("try it once first");
  }

  @Test
  void a_right_answer_is_told_with_its_tolerance_and_the_way() {
    assertThat(sheet.check("1a", 0.62))
        .startsWith("1a: right (within 0.02 standard deviations")
        .contains("√(0.03² + 0.013²)");
    assertThat(sheet.check("1b", " Not enough_readings ")).startsWith("1b: right");
    assertThat(sheet.check("1c", "TIP_DIAMETER")).startsWith("1c: right");
  }

  @Test
  void a_word_between_asterisks_is_found_among_others_but_not_inside_them() {
    Exercises threads = Exercises.of(2);
    for (String right : List.of(
        "face",
        "on the end face",
        "with a washer, at the face.",
        "O-ring",
        "a bonded seal",
        "(ring)")) {
      assertThat(threads.check("2c", right)).as(right).startsWith("2c: right");
    }
    for (String wrong :
        List.of("on the thread", "surface of the thread", "by a ringing sound", "*face")) {
      assertThat(threads.check("2c", wrong)).as(wrong).startsWith("2c: not yet");
    }
  }

  @Test
  void a_wrong_answer_brings_the_hint_then_the_direction_and_never_the_answer() {
    assertThat(sheet.check("1a", 6.1))
        .contains("Hint:")
        .doesNotContain("too large")
        .doesNotContain("0.61");
    assertThat(sheet.check("1a", 6.1)).contains("too large", "Hint:").doesNotContain("0.61");
    assertThat(sheet.check("1a", 0.1)).contains("too small");
    assertThat(sheet.check("1b", "tern")).contains("Hint:").doesNotContain("not enough");
  }

  @Test
  void the_answer_is_told_to_who_has_tried() {
    assertThat(sheet.check("1a", 5.0)).contains("not yet");
    assertThat(sheet.reveal("1a")).contains("0.61 standard deviations");
  }

  @Test
  void a_number_without_unit_is_told_without_one() {
    Exercises loss = Exercises.of(4);
    assertThat(loss.check("4e", Double.NaN)).contains("Put your number in place");
    assertThat(loss.check("4e", 0.0248)).startsWith("4e: right (within 0.0001: ");
    assertThat(loss.check("4e", 0.0250)).startsWith("4e: not yet");
    assertThat(loss.reveal("4e")).startsWith("4e: 0.0247. ");
  }

  @Test
  void what_does_not_exist_is_refused_with_what_does() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> sheet.check("9z", 1.0))
        .withMessageContaining("1a");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> sheet.check("1b", 1.0))
        .withMessageContaining("word");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> sheet.check("1a", "x"))
        .withMessageContaining("number");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Exercises.of(14))
        .withMessageContaining("[1, 13]");
  }

  @Test
  void a_typed_answer_may_have_its_unit_and_a_comma() {
    Exercises loss = Exercises.of(4);
    for (String right : List.of("5.51", "5.5 psi", "5,51 PSI", " 5.51psi ")) {
      assertThat(loss.checkTyped("4b", right).right()).as(right).isTrue();
    }
    for (String right : List.of("0.534 lb/ft³", "0.534 lb/ft^3", "0.534 lb / ft3")) {
      assertThat(loss.checkTyped("4a", right).right()).as(right).isTrue();
    }
    assertThat(sheet.checkTyped("1a", "0.61 standard deviation").right()).isTrue();
    assertThat(Exercises.of(8).checkTyped("8a", "12 %").right()).isTrue();
    assertThat(sheet.checkTyped("1c", "Tip diameter").text()).startsWith("Right.");
  }

  @Test
  void a_typed_answer_that_cannot_be_read_is_told_so_in_one_line_and_is_no_try() {
    Exercises loss = Exercises.of(4);
    assertThat(loss.checkTyped("4b", "38 kPa"))
        .isEqualTo(new Exercises.Reply(false, false, "Give it in psi; you wrote it in kPa."));
    assertThat(loss.checkTyped("4b", "five").text())
        .isEqualTo("Give a number in psi, such as 1.5.");
    assertThat(loss.checkTyped("4e", "0.0247 m").text()).contains("a number without a unit");
    assertThat(loss.checkTyped("4b", " ").text()).isEqualTo("Write your number first.");
    assertThat(sheet.checkTyped("1c", "").text()).isEqualTo("Write your answer first.");
    assertThat(loss.checkTyped("4b", "9 psi").text())
        .startsWith("Not yet. Hint: By which")
        .doesNotContain("too large");
    assertThat(loss.checkTyped("4b", "9 psi").text()).startsWith("Not yet. Yours is too large.");
  }
}
