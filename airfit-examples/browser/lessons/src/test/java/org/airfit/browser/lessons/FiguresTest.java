package org.airfit.browser.lessons;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the figures show, held against what the notebooks hold. */
class FiguresTest {

  private static final Path NOTEBOOKS = Path.of("../../../notebooks");

  static Stream<Figure> figures() {
    return IntStream.rangeClosed(1, 13).boxed().flatMap(lesson -> Lessons.figures(lesson).stream());
  }

  /** The outputs of a notebook by their place. */
  private static Map<String, JsonObject> outputs(int lesson) throws IOException {
    Path file;
    try (Stream<Path> files = Files.list(NOTEBOOKS)) {
      file = files
          .filter(one -> one.getFileName().toString().matches("0?" + lesson + "-.*\\.ipynb"))
          .findFirst()
          .orElseThrow();
    }
    Map<String, JsonObject> outputs = new LinkedHashMap<>();
    for (JsonElement cell :
        JsonParser.parseString(Files.readString(file)).getAsJsonObject().getAsJsonArray("cells")) {
      JsonArray shown = cell.getAsJsonObject().getAsJsonArray("outputs");
      for (int i = 0; shown != null && i < shown.size(); i++) {
        outputs.put(
            cell.getAsJsonObject().get("id").getAsString() + "-" + i,
            shown.get(i).getAsJsonObject());
      }
    }
    return outputs;
  }

  private static String text(JsonElement lines) {
    if (!lines.isJsonArray()) {
      return lines.getAsString();
    }
    StringBuilder text = new StringBuilder();
    lines.getAsJsonArray().forEach(line -> text.append(line.getAsString()));
    return text.toString();
  }

  @ParameterizedTest
  @MethodSource("figures")
  void with_the_numbers_of_the_lesson_a_figure_shows_what_the_notebook_holds(Figure figure)
      throws IOException {
    Map<String, JsonObject> held = outputs(figure.lesson());
    List<String> places = new ArrayList<>();
    for (Shown.Output output : figure.ofLesson().outputs()) {
      if (output.place().startsWith("+")) {
        continue;
      }
      places.add(output.place());
      JsonObject of = Objects.requireNonNull(
          held.get(output.place()), output.place() + " of lesson " + figure.lesson());
      JsonElement lines = output.form().equals("text/plain")
          ? of.get("text")
          : of.getAsJsonObject("data").get(output.form());
      assertThat(lines).as(output.place() + " as " + output.form()).isNotNull();
      assertThat(output.text().strip()).as(output.place()).isEqualTo(text(lines).strip());
    }
    assertThat(places).isNotEmpty().doesNotHaveDuplicates();
  }

  /** So many numbers in all their ranges, drawn for each figure. */
  private static final int DRAWS = 60;

  private static String drawn(Input input, Random random) {
    if (!input.choices().isEmpty()) {
      return input.choices().get(2 * random.nextInt(input.choices().size() / 2));
    }
    if (input.optional() && random.nextInt(3) == 0) {
      return "";
    }
    double at = random.nextInt(8) / 7.0;
    double value = input.low() + at * (input.high() - input.low());
    double stepped = input.low() + input.step() * Math.rint((value - input.low()) / input.step());
    return (Numbers.exact(Numbers.written(stepped, 8)) + " " + input.kind().unit()).strip();
  }

  @ParameterizedTest
  @MethodSource("figures")
  void every_place_of_the_sliders_is_answered_or_refused_in_words(Figure figure) {
    Random random = new Random(20261129);
    List<String> places =
        figure.ofLesson().outputs().stream().map(Shown.Output::place).sorted().toList();
    int answered = 0;
    for (int i = 0; i < DRAWS; i++) {
      List<String> texts =
          figure.inputs().stream().map(input -> drawn(input, random)).toList();
      try {
        Shown shown = figure.of(texts, place -> true);
        assertThat(shown.outputs().stream().map(Shown.Output::place).sorted())
            .as("%s", texts)
            .isEqualTo(places);
        assertThat(shown.summary()).as("%s", texts).isNotBlank().doesNotContain("NaN");
        for (Shown.Output output : shown.outputs()) {
          assertThat(output.text())
              .as("%s of %s", output.place(), texts)
              .isNotBlank()
              .doesNotContainPattern("\\b(NaN|Infinity|null)\\b");
        }
        answered++;
      } catch (IllegalArgumentException refused) {
        assertThat(refused.getMessage()).as("%s", texts).isNotBlank();
      }
    }
    assertThat(answered).as(figure.id()).isGreaterThan(DRAWS / 2);
  }

  @Test
  void a_field_takes_other_units_and_a_bare_number_and_refuses_the_rest_in_one_line() {
    Figure pipe = Lessons.figure("4-pipe");
    List<String> inch = List.of(Script.answer(
        "4-pipe",
        new String[] {"60", "0.824", "124.67 ft", "0.0018 in", "100 psig"},
        new String[0]));
    assertThat(inch).contains("at", "bore", "0.824").doesNotContain("wrong");
    assertThat(pipe.inputs()).hasSize(5);
    List<String> wrong = List.of(Script.answer(
        "4-pipe",
        new String[] {"60 scfm", "wide", "38 m", "0.0018 in", "900 psig"},
        new String[0]));
    assertThat(wrong)
        .containsSequence("wrong", "bore")
        .contains("this is no number; write it such as 0.824 in", "give 30 psig to 200 psig here")
        .doesNotContain("place");
    assertThat(wrong.stream().filter(text -> text.contains("\n"))).isEmpty();
  }

  @Test
  void a_bare_number_is_told_with_the_unit_that_it_was_taken_in() {
    List<String> told = List.of(Script.answer(
        "4-pipe",
        new String[] {"60", "0.824 in", "124.67 ft", "0.0018 in", "100 psig"},
        new String[0]));
    assertThat(told)
        .containsSequence("at", "flow", "60 scfm", "60")
        .containsSequence("at", "bore", "", "0.824");
  }

  @Test
  void a_comma_is_told_in_readings_and_in_seconds() {
    for (String typed : List.of("1,5", "96,5 s", "1,5 min")) {
      String[] texts = lesson("8-leaks");
      texts[0] = typed;
      assertThat(Script.answer("8-leaks", texts, new String[0])[3])
          .as(typed)
          .contains("a comma means different things");
    }
    assertThat(Script.answer("1-tip", new String[] {"11,92 mm"}, new String[0])[3])
        .contains("a comma means different things");
  }

  /** What is none of the list has no "most likely of the list". */
  @Test
  void a_tip_far_from_all_is_none_of_the_list() {
    List<String> told = List.of(Script.answer("1-tip", new String[] {"14.9 mm"}, new String[0]));
    assertThat(told.get(told.size() - 1))
        .startsWith("None of the list: the nearest, Gannet, has a chance of < 0.1 %")
        .doesNotContain("Read next");
  }

  @Test
  void what_was_typed_in_another_unit_stands_behind_the_lessons_unit() {
    String[] texts = lesson("7-job");
    texts[0] = "10 L/s ANR";
    texts[1] = "6 bar(g)";
    assertThat(String.join("\n", Script.answer("7-job", texts, new String[] {"cell-15-0"})))
        .contains(" scfm (10 L/s ANR); it needs 87.02 psig (6 bar(g)).");
  }

  private static String[] lesson(String figure) {
    return Lessons.figure(figure).inputs().stream().map(Input::text).toArray(String[]::new);
  }

  @Test
  void only_the_places_that_are_wanted_are_computed() {
    Figure pipe = Lessons.figure("4-pipe");
    List<String> texts = pipe.inputs().stream().map(Input::text).toList();
    assertThat(pipe.of(texts, place -> place.equals("cell-10-0")).outputs())
        .extracting(Shown.Output::place)
        .containsExactly("cell-10-0");
  }
}
