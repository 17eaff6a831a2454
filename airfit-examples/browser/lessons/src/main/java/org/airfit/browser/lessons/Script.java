package org.airfit.browser.lessons;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.lesson.Exercises;
import org.teavm.jso.JSExport;

/**
 * What the script of the pages calls. Everything goes over as rows of four texts: what it is, its name, its form, and
 * the text itself.
 */
public final class Script {

  private static final int LESSONS = 13;

  private static final Map<Integer, Exercises> SHEETS = new HashMap<>();

  private Script() {}

  /**
   * Begins nothing: all is done when it is asked for.
   *
   * @param args none
   */
  public static void main(String[] args) {}

  /**
   * Describes the figures of a lesson.
   *
   * @param lesson its number
   * @return rows (figure, id, title, the place of its fields), behind each (input, id, label, the lesson's text), for a
   *     choice (choice, id, value, text), else (slider, low, high, step) and (unit, its unit, digits, "optional" or
   *     ""); then (place, id of an output, "", ""), with form and text if it is only in the page, and (sum, "", "",
   *     the sentence)
   */
  @JSExport
  public static String[] figures(int lesson) {
    List<String> rows = new ArrayList<>();
    if (lesson >= 1 && lesson <= LESSONS) {
      Lessons.figures(lesson).forEach(figure -> describe(figure, rows));
    }
    return rows.toArray(new String[0]);
  }

  private static void describe(Figure figure, List<String> rows) {
    add(rows, "figure", figure.id(), figure.title(), figure.heart());
    for (Input input : figure.inputs()) {
      add(rows, "input", input.id(), input.label(), input.text());
      for (int i = 0; i + 1 < input.choices().size(); i += 2) {
        add(rows, "choice", input.id(), input.choices().get(i), input.choices().get(i + 1));
      }
      if (input.kind() != Kind.CHOICE) {
        add(rows, "slider", text(input.low()), text(input.high()), text(input.step()));
        add(
            rows,
            "unit",
            input.kind().unit(),
            String.valueOf(decimals(input.step())),
            input.optional() ? "optional" : "");
      }
    }
    Shown shown = figure.of(
        figure.inputs().stream().map(Input::text).toList(), place -> place.startsWith("+"));
    shown.left().forEach(place -> add(rows, "place", place, "", ""));
    for (Shown.Output output : shown.outputs()) {
      add(rows, "place", output.place(), output.form(), output.text());
    }
    add(rows, "sum", "", "", shown.summary());
  }

  /**
   * Computes a figure.
   *
   * @param figure its id
   * @param texts what its fields hold, in the order of its inputs
   * @param places the outputs that are wanted; none for all
   * @return rows (at, id of an input, what a bare number was taken for, number of its slider), (wrong, id of an input
   * or "", "", one line), and if
   *     nothing is wrong (place, id of an output, its form, its text) and (sum, "", "", the sentence)
   */
  @JSExport
  public static String[] answer(String figure, String[] texts, String[] places) {
    Figure asked = Lessons.figure(figure);
    List<String> rows = new ArrayList<>();
    List<String> accepted = new ArrayList<>();
    for (int i = 0; i < texts.length; i++) {
      Input input = asked.inputs().get(i);
      try {
        String text = input.accepted(texts[i]);
        accepted.add(text);
        if (input.kind() != Kind.CHOICE && !text.isEmpty()) {
          String taken = text.equals(texts[i].strip()) ? "" : text;
          add(rows, "at", input.id(), taken, text(input.kind().number(text)));
        }
      } catch (IllegalArgumentException e) {
        add(rows, "wrong", input.id(), "", String.valueOf(e.getMessage()));
      }
    }
    if (accepted.size() == texts.length) {
      show(asked, accepted, Set.of(places), rows);
    }
    return rows.toArray(new String[0]);
  }

  private static void show(
      Figure asked, List<String> accepted, Set<String> places, List<String> rows) {
    try {
      Shown shown = asked.of(accepted, place -> places.isEmpty() || places.contains(place));
      for (Shown.Output output : shown.outputs()) {
        add(rows, "place", output.place(), output.form(), output.text());
      }
      add(rows, "sum", "", "", shown.summary());
    } catch (IllegalArgumentException e) {
      add(rows, "wrong", "", "", String.valueOf(e.getMessage()));
    }
  }

  /**
   * Checks an answer to an exercise.
   *
   * @param id the exercise, such as "4b"
   * @param typed what was typed
   * @return one row (reply, "right" or "not yet" or "unread", "", the message)
   */
  @JSExport
  public static String[] check(String id, String typed) {
    int lesson = Exercises.lessonOf(id);
    Exercises sheet = SHEETS.get(lesson);
    if (sheet == null) {
      sheet = Exercises.of(lesson);
      SHEETS.put(lesson, sheet);
    }
    Exercises.Reply reply = sheet.checkTyped(id, typed);
    String kind = reply.right() ? "right" : reply.judged() ? "not yet" : "unread";
    return new String[] {"reply", kind, "", reply.text()};
  }

  private static void add(List<String> rows, String what, String name, String form, String text) {
    rows.addAll(List.of(what, name, form, text));
  }

  private static String text(double value) {
    return Numbers.exact(value);
  }

  /** How many digits stand behind the point of a step. */
  private static int decimals(double step) {
    String text = text(step);
    return text.indexOf('.') < 0 ? 0 : text.length() - text.indexOf('.') - 1;
  }
}
