package org.airfit.lesson;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Checks the answers that a learner writes into the blanks of an exercise sheet.
 *
 * <p>The first wrong answer gives a hint. The second one gives the next hint, if there is one, and says whether the
 * number is too large or too small. After one wrong answer {@link #reveal} tells the answer. An answer within the
 * tolerance of the task is right; the message gives the tolerance and its reason.
 */
public final class Exercises {

  /** How many columns a line of the key has. */
  private static final int COLUMNS = 7;

  private static final String NEXT_HINT = " // ";

  /** A number and what stands behind it. */
  private static final Pattern NUMBER = Pattern.compile(
      "([+\\-\u2212]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE][+-]?[0-9]+)?)(.*)");

  private final Map<String, Task> tasks;
  private final Map<String, Integer> tries = new HashMap<>();

  private record Task(
      String id,
      String answer,
      String unit,
      double tolerance,
      String why,
      List<String> hints,
      String reason) {

    boolean isNumber() {
      return tolerance > 0.0;
    }

    /** The hint after so many wrong answers; the last one stays. */
    String hint(int tried) {
      return hints.get(Math.max(0, Math.min(tried, hints.size()) - 1));
    }

    String solution() {
      return isNumber() ? (answer + " " + unit).strip() : answer.split(";", -1)[0].strip();
    }
  }

  private Exercises(Map<String, Task> tasks) {
    this.tasks = tasks;
  }

  /**
   * The exercises of one lesson.
   *
   * @param lesson its number, 1 to 13
   * @return its exercises, none tried yet
   * @throws IllegalArgumentException if there is no such lesson
   */
  public static Exercises of(int lesson) {
    Map<String, Task> tasks = new LinkedHashMap<>();
    for (String line : key().split("\n", -1)) {
      String[] cells =
          Arrays.stream(line.split("\\|", -1)).map(String::strip).toArray(String[]::new);
      if (cells.length == COLUMNS && lessonOf(cells[0]) == lesson) {
        double tolerance = cells[3].isEmpty() ? 0.0 : Double.parseDouble(cells[3]);
        tasks.put(
            cells[0],
            new Task(
                cells[0],
                cells[1],
                cells[2],
                tolerance,
                cells[4],
                List.of(cells[5].split(NEXT_HINT)),
                cells[6]));
      }
    }
    if (tasks.isEmpty()) {
      throw new IllegalArgumentException("lesson must be in [1, 13], was " + lesson);
    }
    return new Exercises(tasks);
  }

  /**
   * Finds the lesson of an exercise.
   *
   * @param id the exercise, such as "4b" or "12a"
   * @return the number of its lesson; 0 if {@code id} does not begin with one
   */
  public static int lessonOf(String id) {
    int lesson = 0;
    for (int at = 0; at < id.length() && id.charAt(at) >= '0' && id.charAt(at) <= '9'; at++) {
      lesson = 10 * lesson + id.charAt(at) - '0';
    }
    return lesson;
  }

  private static String key() {
    try (InputStream key = Exercises.class.getResourceAsStream("exercises.txt")) {
      if (key == null) {
        throw new IllegalStateException("exercises.txt is missing from the jar");
      }
      return new String(key.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException("exercises.txt cannot be read", unreadable);
    }
  }

  /** {@return the exercises of this lesson, in order} */
  public List<String> ids() {
    return List.copyOf(tasks.keySet());
  }

  /**
   * Checks a number.
   *
   * @param id the exercise, such as "4b"
   * @param answer the number in the unit the exercise asks for; NaN is a blank
   * @return the message for the learner
   * @throws IllegalArgumentException if there is no such exercise, or its answer is a word
   */
  public String check(String id, double answer) {
    Task task = task(id);
    if (!task.isNumber()) {
      throw new IllegalArgumentException(id + " needs a word in quotes, was a number");
    }
    if (Double.isNaN(answer)) {
      return id + ": still blank. Put your number"
          + (task.unit().isEmpty() ? "" : " [" + task.unit() + "]")
          + " in place of Double.NaN and run the cell.";
    }
    double right = Double.parseDouble(task.answer());
    if (Math.abs(answer - right) <= task.tolerance()) {
      return right(task);
    }
    return wrong(task, answer > right ? "Yours is too large." : "Yours is too small.");
  }

  /**
   * Checks a word.
   *
   * @param id the exercise
   * @param answer the word; an empty one is a blank
   * @return the message for the learner
   * @throws IllegalArgumentException if there is no such exercise, or its answer is a number
   */
  public String check(String id, String answer) {
    Task task = task(id);
    if (task.isNumber()) {
      throw new IllegalArgumentException(
          id + " needs a number in " + task.unit() + ", was \"" + answer + "\"");
    }
    if (answer.isBlank()) {
      return id + ": still blank. Put your answer between the quotes and run the cell.";
    }
    boolean known =
        Arrays.stream(task.answer().split(";", -1)).anyMatch(word -> same(word, answer));
    return known ? right(task) : wrong(task, "");
  }

  /**
   * What a page says to an answer that was typed into it.
   *
   * @param right whether it is right
   * @param judged whether it was judged; false if it could not be read, which is no try
   * @param text the message, without the name of the exercise
   */
  public record Reply(boolean right, boolean judged, String text) {}

  /**
   * Checks an answer as it was typed: a word, or a number with or without its unit.
   *
   * @param id the exercise
   * @param typed the text; a comma may stand for the point
   * @return whether it is right, and the message; an answer that cannot be read is told so in one line and is no try
   * @throws IllegalArgumentException if there is no such exercise
   */
  public Reply checkTyped(String id, String typed) {
    Task task = task(id);
    String text = typed.strip();
    if (text.isEmpty()) {
      return new Reply(
          false, false, task.isNumber() ? "Write your number first." : "Write your answer first.");
    }
    if (!task.isNumber()) {
      return reply(id, check(id, text));
    }
    Matcher parts = NUMBER.matcher(text);
    if (!parts.matches()) {
      return new Reply(false, false, "Give a number" + in(task) + ", such as 1.5.");
    }
    String unit = parts.group(2).strip();
    if (!unit.isEmpty() && !sameUnit(unit, task)) {
      return new Reply(
          false,
          false,
          isPure(task)
              ? "The answer is a number without a unit; \"" + unit + "\" does not belong to it."
              : "Give it" + in(task) + "; you wrote it in " + unit + ".");
    }
    return reply(
        id, check(id, Double.parseDouble(parts.group(1).replace(',', '.').replace('\u2212', '-'))));
  }

  private static Reply reply(String id, String message) {
    boolean right = message.startsWith(id + ": right");
    String text = message.substring(id.length() + 2);
    return new Reply(
        right, true, text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1));
  }

  private static String in(Task task) {
    return isPure(task) ? "" : " in " + task.unit();
  }

  /** A number of pieces or times has a word behind it that need not be written; some have nothing. */
  private static boolean isPure(Task task) {
    return task.unit().isEmpty() || task.unit().startsWith("(");
  }

  private static boolean sameUnit(String typed, Task task) {
    return !isPure(task) && plainUnit(typed).equals(plainUnit(task.unit()));
  }

  /** The unit without what people write in several ways: spaces, dots, raised digits, large letters, a plural. */
  private static String plainUnit(String unit) {
    return unit.toLowerCase(Locale.ROOT)
        .replace("²", "2")
        .replace("³", "3")
        .replaceAll("[\\s^·.]+", "")
        .replaceAll("s$", "");
  }

  /**
   * Tells the answer to a learner who has tried at least once.
   *
   * @param id the exercise
   * @return the answer and how to find it, or the request to try first
   * @throws IllegalArgumentException if there is no such exercise
   */
  public String reveal(String id) {
    Task task = task(id);
    if (tries.getOrDefault(id, 0) == 0) {
      return id + ": try it once first. Hint: " + task.hint(1);
    }
    return id + ": " + task.solution() + ". " + task.reason();
  }

  private Task task(String id) {
    Task task = tasks.get(id);
    if (task == null) {
      throw new IllegalArgumentException(
          "exercise must be one of " + tasks.keySet() + ", was " + id);
    }
    return task;
  }

  private static String right(Task task) {
    String allowed = task.isNumber()
        ? " (within " + (plain(task.tolerance()) + " " + task.unit()).strip() + ": " + task.why()
            + ")"
        : "";
    return task.id() + ": right" + allowed + ". " + task.reason();
  }

  private String wrong(Task task, String direction) {
    int tried = tries.merge(task.id(), 1, Integer::sum);
    String more = tried > 1 && !direction.isEmpty() ? " " + direction : "";
    return task.id() + ": not yet." + more + " Hint: " + task.hint(tried);
  }

  private static String plain(double value) {
    String text = Printed.text("%.6f", value);
    return text.replaceAll("\\.?0+$", "");
  }

  /** Whether the answer is the word of the key, or, if that stands between asterisks, has it among its words. */
  private static boolean same(String key, String answer) {
    String wanted = key.strip();
    if (wanted.length() > 2 && wanted.startsWith("*") && wanted.endsWith("*")) {
      String words = " " + normal(answer.replaceAll("[.,;:!()\"]", " ")) + " ";
      return words.contains(" " + normal(wanted.substring(1, wanted.length() - 1)) + " ");
    }
    return normal(wanted).equals(normal(answer));
  }

  private static String normal(String word) {
    return word.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
  }
}
