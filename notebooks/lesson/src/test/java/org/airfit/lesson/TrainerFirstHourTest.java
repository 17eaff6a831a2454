package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.plug.Dimension;
import org.junit.jupiter.api.Test;

/**
 * The first hour of a trainer: lesson 1 is taught from what was printed, without a computer. The book and the guide
 * hold the plan with its minutes, what to bring, the question with its answers, the drawing to scale, the list of sizes, the
 * numbers for the board, the exercises with hints and answers, and the form.
 */
class TrainerFirstHourTest {

  private static final Path NOTEBOOKS = Path.of("..");
  private static final Path PAGES = NOTEBOOKS.resolve("pages");

  private static String read(String page) throws IOException {
    return Files.readString(PAGES.resolve(page));
  }

  /** What is read on paper: without drawings, style and script. */
  private static String seen(String html) {
    return html.replaceAll("(?s)<(style|script|svg)\\b.*?</\\1>", " ")
        .replaceAll("<[^>]*>", " ")
        .replace("&quot;", "\"")
        .replace("&amp;", "&")
        .replaceAll("\\s+", " ");
  }

  /** What the guide says of lesson 1. */
  private static String plan() throws IOException {
    String guide = Files.readString(NOTEBOOKS.resolve("TRAINER.md"));
    return guide
        .substring(guide.indexOf("\n### 1 "), guide.indexOf("\n### 2 "))
        .replaceAll("\\s+", " ");
  }

  /** The key of lesson 1: exercise, answer, unit, tolerance and its reason, hints, the way. */
  private static Map<String, List<String>> key() throws IOException {
    Map<String, List<String>> key = new LinkedHashMap<>();
    Files.readString(Path.of("src/main/resources/org/airfit/lesson/exercises.txt"))
        .lines()
        .filter(line -> line.matches("1[a-z] \\|.*"))
        .forEach(line -> key.put(line.substring(0, 2), List.of(line.split(" \\| ?", -1))));
    assertThat(key).hasSizeBetween(3, 5);
    return key;
  }

  @Test
  void the_plan_tells_what_to_bring_what_to_ask_and_what_may_be_answered() throws IOException {
    assertThat(plan())
        .containsSubsequence(
            "- Bring: ",
            "- Ask before you start: ",
            "- Common mistakes: ",
            "- Answers to the question: ")
        .containsSubsequence("- On the board", "- Exercises: ", "**0 to 4:**", "**30 to 45:**");
    String materials = Files.readString(NOTEBOOKS.resolve("TRAINER.md"))
        .replaceAll("(?s)^.*\n## Materials\n|\n## Air supply.*$", "");
    List<String> ofLesson1 = materials
        .lines()
        .filter(row -> row.matches("\\|.*\\| *(all|1(,.*)?) *\\|"))
        .toList();
    assertThat(String.join("\n", ofLesson1))
        .contains(
            "the book, pencil, pocket calculator", "measuring form", "caliper", "plugs of two");
  }

  @Test
  void the_answers_of_the_exercises_stand_in_the_plan_and_their_ways_in_the_marking_key()
      throws IOException {
    String marking = seen(read("marking-key.html"));
    for (Map.Entry<String, List<String>> exercise : key().entrySet()) {
      String answer = exercise.getValue().get(1).split(";", -1)[0];
      assertThat(plan()).containsPattern(exercise.getKey() + " (is )?" + Pattern.quote(answer));
      assertThat(marking)
          .as(exercise.getKey())
          .contains(" " + exercise.getKey() + " ", answer)
          .contains(exercise.getValue().get(6).replaceAll("\\s+", " ").trim());
    }
  }

  /** The numbers for the board are those of the book, and their results come out of them. */
  @Test
  void the_numbers_for_the_board_are_those_of_the_book() throws IOException {
    Matcher board = Pattern.compile(
            "reads ([0-9.]+) mm; a Gannet has ([0-9.]+) mm, a Tern ([0-9.]+) mm;"
                + " parts vary by ([0-9.]+) mm, the reading by ([0-9.]+) mm\\. √.* = ([0-9.]+) mm\\."
                + " So −[0-9.]+ / [0-9.]+ = −([0-9.]+) against Gannet, and −[0-9.]+ / [0-9.]+ = −([0-9.]+) against")
        .matcher(plan());
    assertThat(board.find()).isTrue();
    List<Double> said = new ArrayList<>();
    for (int group = 1; group <= board.groupCount(); group++) {
      said.add(Double.parseDouble(board.group(group)));
    }
    double scatter = Math.hypot(said.get(3), said.get(4));
    assertThat(said.get(5)).as("half of the last digit").isCloseTo(scatter, within(0.00005));
    assertThat(said.get(6)).isCloseTo((said.get(1) - said.get(0)) / scatter, within(0.005));
    assertThat(said.get(7)).isCloseTo((said.get(2) - said.get(0)) / scatter, within(0.05));
    assertThat(seen(read("book.html")))
        .contains(
            "a Gannet has " + board.group(2) + " mm",
            "a Tern has " + board.group(3) + " mm",
            "it is " + board.group(1) + " mm",
            "uncertain by " + board.group(5) + " mm");
  }

  /** A drawing to scale has a size in millimetres that is that of its own unit, and a mark to hold a rule against. */
  @Test
  void the_drawing_of_the_plug_is_to_scale_and_can_be_checked_with_a_rule() throws IOException {
    for (String page : List.of("01-identify-a-plug.html", "book.html")) {
      Matcher drawing = Pattern.compile(
              "<svg [^>]*width=\"([0-9.]+)mm\" height=\"([0-9.]+)mm\""
                  + " viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\"[^>]*>(.*?)</svg>",
              Pattern.DOTALL)
          .matcher(read(page));
      assertThat(drawing.find()).as(page).isTrue();
      assertThat(drawing.group(1)).isEqualTo(drawing.group(3));
      assertThat(drawing.group(2)).isEqualTo(drawing.group(4));
      assertThat(drawing.group(5)).contains("50 mm");
      assertThat(Double.parseDouble(drawing.group(1))).as("fits on Letter").isLessThan(190.0);
    }
  }

  @Test
  void the_book_holds_the_lesson_the_list_of_sizes_the_exercises_the_hints_and_the_form()
      throws IOException {
    String book = seen(read("book.html"));
    assertThat(book)
        .containsSubsequence(
            "Identify an unmarked plug",
            "Where to put the caliper",
            "The yard's list",
            "Given",
            "Step 1",
            "Step 2",
            "Check it with a pencil",
            "Remember");
    for (Dimension dimension : Dimension.values()) {
      assertThat(book).contains(dimension.label(), dimension.howToMeasure());
    }
    for (Map.Entry<String, List<String>> exercise : key().entrySet()) {
      assertThat(book).contains(" " + exercise.getKey() + ". ");
      for (String hint : exercise.getValue().get(5).split(" // ", -1)) {
        assertThat(book).contains(hint.trim());
      }
    }
    assertThat(book).contains("Measuring form");
  }

  /** Nothing on paper is made by the script: with scripts off the page shows the same numbers. */
  @Test
  void the_lesson_is_whole_without_a_script() throws IOException {
    String page = read("01-identify-a-plug.html");
    assertThat(seen(page))
        .contains(
            "11.90", "11.94", "9.20", "49.8 %", "99.8 %", "Candidate only", "5.16 mm", "9.77 mm");
  }
}
