package org.airfit.lesson;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Further variants of the exercises, with their key.
 *
 * <p>The numbers come from a seed: the same seed gives the same sheet on every computer. The answers are reckoned with
 * the formulas of the lessons, as one does with a pencil; the library is not asked. So the sheet also checks the
 * library, and the library the sheet: the tests compare the two.
 */
public final class Variants {

  private static final int LESSONS = 13;

  private static final String HELP = """
      Variants, further exercises of the lessons with other numbers, and their key

        java -cp airfit-lesson.jar org.airfit.lesson.Variants LESSON SEED > variants.html

      LESSON is the number of a lesson, or 0 for all; SEED is any whole number. The same seed gives the same
      sheet on every computer. It prints a page to print; the key begins on a side of its own.
        --help, -h   prints this
        --version    prints the version
      Example: java -cp airfit-lesson.jar org.airfit.lesson.Variants 4 2027 > variants.html
      Exit code 0: printed; 2: the words could not be used, which one line on the error output tells.
      """;

  private Variants() {}

  /**
   * Prints a sheet and its key as an HTML page.
   *
   * @param arguments the lesson, or 0 for all, and the seed, a whole number
   */
  public static void main(String... arguments) {
    OptionalInt answered = ProgramHelp.answered(arguments, 2, 2, HELP);
    if (answered.isPresent()) {
      System.exit(answered.getAsInt());
    }
    int lesson = 0;
    long seed = 0;
    try {
      lesson = Integer.parseInt(arguments[0]);
      seed = Long.parseLong(arguments[1]);
      if (lesson < 0 || lesson > LESSONS) {
        throw new NumberFormatException();
      }
    } catch (NumberFormatException unusable) {
      System.exit(ProgramHelp.refused("Variants wants LESSON SEED, a lesson from 1 to " + LESSONS
              + " or 0 for all, and a whole number, were " + arguments[0] + " " + arguments[1])
          .getAsInt());
    }
    List<Integer> lessons =
        lesson == 0 ? IntStream.rangeClosed(1, LESSONS).boxed().toList() : List.of(lesson);
    new PrintStream(System.out, true, StandardCharsets.UTF_8).print(html(lessons, seed));
  }

  /**
   * Makes a variant of each exercise of a lesson.
   *
   * @param lesson its number, 1 to 13
   * @param seed any number
   * @return the variants, in the order of the exercises
   * @throws IllegalArgumentException if there is no such lesson
   */
  public static List<Variant> of(int lesson, long seed) {
    return Exercises.of(lesson).ids().stream()
        .map(id -> variant(lesson, id, new Draw(seed, id)))
        .toList();
  }

  private static Variant variant(int lesson, String id, Draw draw) {
    return switch (lesson) {
      case 1, 2, 9 -> MeasuringVariants.of(id, draw);
      case 3, 4, 5 -> FlowVariants.of(id, draw);
      case 6, 7, 8 -> ShopVariants.of(id, draw);
      default -> PlantVariants.of(id, draw);
    };
  }

  /**
   * A page with the questions of some lessons, and their key on a side of its own.
   *
   * @param lessons their numbers, 1 to 13
   * @param seed any number
   * @return the page as HTML; it loads nothing and needs no script
   * @throws IllegalArgumentException if there is no such lesson
   */
  public static String html(List<Integer> lessons, long seed) {
    String questions = lessons.stream()
        .map(lesson -> "<h2>Lesson " + lesson + "</h2>\n"
            + of(lesson, seed).stream().map(Variants::question).collect(Collectors.joining()))
        .collect(Collectors.joining());
    String answers = lessons.stream()
        .flatMap(lesson -> of(lesson, seed).stream())
        .map(one -> "<tr><th scope=\"row\">" + one.id() + "</th><td><strong>"
            + escaped(one.answer()) + "</strong><br>" + escaped(one.way()) + "</td></tr>\n")
        .collect(Collectors.joining());
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
        + "<meta name=\"color-scheme\" content=\"light dark\">\n"
        + "<title>Further exercises, sheet " + seed + "</title>\n<style>\n"
        + "body { font: 16px/1.5 \"DejaVu Sans\", Verdana, Arial, sans-serif; max-width: 46rem; margin: 0 auto;"
        + " padding: 0 1rem; overflow-wrap: break-word; }\n"
        + "table { border-collapse: collapse; } th, td { border: 1px solid #888; padding: 0.3rem 0.6rem;"
        + " text-align: left; vertical-align: top; }\n"
        + ".rule { display: inline-block; width: 10rem; border-bottom: 1px solid; }\n"
        + "@media print { @page { margin: 16mm 17mm 18mm; @bottom-left { content: \"Sheet " + seed
        + "\"; font: 9pt sans-serif; } @bottom-right { content: counter(page); font: 9pt sans-serif; } }\n"
        + "body { max-width: none; padding: 0; font-size: 10pt; } h1, h2 { break-after: avoid; }\n"
        + ".question, tr { break-inside: avoid; } .question { padding-bottom: 22mm; } .key { break-before: page; } }\n"
        + "</style>\n</head>\n<body>\n<main>\n<h1>Further exercises, sheet " + seed + "</h1>\n"
        + "<p>Name: <span class=\"rule\"></span> Date: <span class=\"rule\"></span></p>\n"
        + "<p>Write the unit before the number, and say of every pressure whether it is gauge or absolute.</p>\n"
        + questions + "<section class=\"key\" aria-label=\"key\">\n<h2>Key of sheet " + seed
        + "</h2>\n"
        + "<p>For the trainer. The last digit may differ by what was rounded on the way.</p>\n<table>\n"
        + "<thead><tr><th scope=\"col\">exercise</th><th scope=\"col\">answer, and the way</th></tr></thead>\n<tbody>\n"
        + answers + "</tbody>\n</table>\n</section>\n</main>\n</body>\n</html>\n";
  }

  private static String question(Variant one) {
    return "<div class=\"question\">\n<p><strong>" + one.id() + ".</strong> "
        + escaped(one.question()) + "</p>\n"
        + "<p>Answer: <span class=\"rule\"></span></p>\n</div>\n";
  }

  /** The text as HTML, with the subscripts of pressures, temperatures, diameters and lengths. */
  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replaceAll("\\b([pTEL])([0-5])\\b", "$1<sub>$2</sub>")
        .replaceAll("\\bCd\\b", "C<sub>d</sub>");
  }
}
