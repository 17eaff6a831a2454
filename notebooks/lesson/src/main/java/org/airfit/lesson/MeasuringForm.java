package org.airfit.lesson;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.airfit.drawing.PlugDrawing;
import org.airfit.plug.Dimension;

/**
 * A blank form for the readings of a plug and of a thread, with drawings of where the caliper goes.
 *
 * <p>It is a part of an HTML page; the pages of the lessons give it its frame. The outline of the plug is to true
 * scale, but only the places matter: its sizes are left out, so that nobody copies them.
 */
public final class MeasuringForm {

  private static final int READINGS = 3;

  private static final String HELP = """
      MeasuringForm, a blank form for the readings of a plug and of a thread

        java -cp airfit-lesson.jar org.airfit.lesson.MeasuringForm > form.html

      It prints a part of an HTML page; notebooks/run gives it its frame. It takes no words but these:
        --help, -h   prints this
        --version    prints the version
      Exit code 0: printed; 2: it was called with other words, which one line on the error output tells.
      """;

  /** What is read on a thread, and how. Our choice of words; the dimensions are those that the library asks for. */
  private static final List<List<String>> THREAD_READINGS = List.of(
      List.of("A", "first crest", "outside jaws over the first full crest"),
      List.of(
          "B",
          "last crest",
          "outside jaws over the last full crest; inside a female thread: inside jaws"),
      List.of("5 P", "five pitches", "from one crest to the fifth after it, along the axis"),
      List.of("L", "length of the thread", "from the end face to the last full crest"));

  private static final List<String> SEALS =
      List.of("the thread itself", "washer on a face", "O-ring", "flare or cone");

  private MeasuringForm() {}

  /**
   * Prints the form.
   *
   * @param arguments none
   */
  public static void main(String... arguments) {
    OptionalInt answered = ProgramHelp.answered(arguments, 0, 0, HELP);
    if (answered.isPresent()) {
      System.exit(answered.getAsInt());
    }
    new PrintStream(System.out, true, StandardCharsets.UTF_8).print(html());
  }

  /** {@return the form as HTML: a heading and two sides, one for a plug and one for a thread} */
  public static String html() {
    StringBuilder html = new StringBuilder("<h1>Measuring form</h1>\n");
    head(html);
    html.append("""
        <h2>A plug</h2>
        <p>Depressurise and take the plug off first. Clean it, close the jaws gently, set the caliper to zero.
        Turn the plug by a third of a turn between readings.</p>
        <p>Marks on it: <span class="blank"><span class="rule"></span></span> Worn or damaged where:
        <span class="blank"><span class="rule"></span></span></p>
        """);
    drawing(html, plug());
    StringBuilder rows = new StringBuilder();
    for (Dimension dimension : Dimension.values()) {
      row(rows, subscript(dimension.symbol()), dimension.label(), dimension.howToMeasure());
    }
    table(html, "dimension", rows);
    html.append("""
        <p>Sizes that agree with a kind do not prove that it holds and seals. Write every reading down as it is;
        do not leave out the one that looks wrong, take it again.</p>
        <div class="chapter">
        <h2>A thread</h2>
        """);
    head(html);
    drawing(html, thread());
    rows.setLength(0);
    THREAD_READINGS.forEach(reading -> row(rows, reading.get(0), reading.get(1), reading.get(2)));
    table(html, "reading", rows);
    ticks(html, "It is", List.of("male", "female"));
    ticks(
        html,
        "The leaf that fits has an angle of",
        List.of("55°", "60°", "37° or 45° cone", "none fits"));
    ticks(html, "What seals", SEALS);
    return html.append(
            "<p>Found: <span class=\"blank\"><span class=\"rule\"></span></span></p>\n</div>\n")
        .toString();
  }

  private static void head(StringBuilder html) {
    html.append("<p class=\"keep head\">");
    for (String what : List.of("Piece", "Date", "Name", "Caliper, its last digit")) {
      html.append(what).append(": <span class=\"blank\"><span class=\"rule\"></span></span>\n");
    }
    html.append("</p>\n");
  }

  private static void drawing(StringBuilder html, String svg) {
    html.append(
            "<figure class=\"drawing\"><div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"drawing\">")
        .append(svg)
        .append("</div></figure>\n");
  }

  private static void table(StringBuilder html, String first, StringBuilder rows) {
    html.append("<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"table\"><table"
            + " class=\"form\">\n<thead><tr>"
            + "<th scope=\"col\">sign</th><th scope=\"col\">")
        .append(first)
        .append(" [mm]</th><th scope=\"col\">how</th>");
    for (int i = 1; i <= READINGS; i++) {
      html.append("<th scope=\"col\">").append(i).append(".</th>");
    }
    html.append("<th scope=\"col\">mean</th></tr></thead>\n<tbody>\n")
        .append(rows)
        .append("</tbody>\n</table></div>\n");
  }

  private static void row(StringBuilder rows, String sign, String name, String how) {
    rows.append("<tr><td>")
        .append(sign)
        .append("</td><th scope=\"row\">")
        .append(name)
        .append("</th><td>")
        .append(how)
        .append("</td>")
        .append("<td class=\"room-to-write\"></td>".repeat(READINGS + 1))
        .append("</tr>\n");
  }

  private static void ticks(StringBuilder html, String what, List<String> choices) {
    html.append("<p>").append(what).append(":");
    choices.forEach(choice -> html.append("\n<span class=\"tick\"></span> ").append(choice));
    html.append("</p>\n");
  }

  private static String subscript(String symbol) {
    return symbol.replaceFirst("_(\\w+)$", "<sub>$1</sub>");
  }

  /** The outline of a Gannet with the signs of its dimensions, without its name and sizes. */
  private static String plug() {
    String drawn =
        PlugDrawing.of(Boatyard.profiles().profile("gannet").orElseThrow()).svg();
    return Picture.saying(
        drawn
            .replaceAll("(<tspan [^>]*>)⌀ [0-9.]+</tspan>", "$1⌀</tspan>")
            .replaceAll("<tspan [^>]*>[0-9.]+</tspan>", "")
            .replaceFirst(">Gannet<", ">Where the dimensions lie<")
            .replaceFirst(
                ">Sizes invented[^<]*<", ">An invented plug, scale 1:1. Only the places matter.<")
            .replaceFirst("<text [^>]*>Nominal sizes in mm, scale 1:1\\.</text>\\s*", ""),
        "Outline of a plug, tip on the left: where the diameters of tip, collar, groove, shoulder and bore and the"
            + " lengths from tip to collar, of tip, of groove and of insertion are read");
  }

  /** A tapered male thread with the places of the readings. */
  private static String thread() {
    StringBuilder teeth = new StringBuilder("M30 33");
    StringBuilder mirrored = new StringBuilder("M30 57");
    int crests = 8;
    for (int i = 0; i < crests; i++) {
      double x = 30.0 + 5.0 * i;
      double rise = 0.35 * i;
      teeth.append(String.format(
          Locale.ROOT, " L%.2f %.2f L%.2f %.2f", x + 2.5, 29 - rise, x + 5, 33 - rise));
      mirrored.append(String.format(
          Locale.ROOT, " L%.2f %.2f L%.2f %.2f", x + 2.5, 61 + rise, x + 5, 57 + rise));
    }
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"110mm\" height=\"80mm\" viewBox=\"0 0 110 80\""
        + " role=\"img\""
        + " aria-label=\"A tapered male thread, end on the left: A over the first crest, B over the last crest,"
        + " 5 P from"
        + " crest to crest over five pitches, L from the end face to the last crest\""
        + " font-family=\"DejaVu Sans, Arial, sans-serif\" font-size=\"3.2\" fill=\"#111\">\n"
        + "<g fill=\"none\" stroke=\"#111\" stroke-width=\"0.4\"><path d=\"" + teeth
        + " H90\"/><path d=\"" + mirrored
        + " H90\"/><path d=\"M30 33 V57\"/></g>\n"
        + "<g fill=\"none\" stroke=\"#555\" stroke-width=\"0.2\"><path d=\"M24 45 H94\" stroke-dasharray=\"5 1 1 1\"/>"
        + "<path d=\"M32.5 29 H18 M32.5 61 H18 M20 29 V61\"/><path d=\"M67.5 26.5 H102 M67.5 63.4 H102 M100"
        + " 26.5 V63.4\"/>"
        + "<path d=\"M37.5 27 V12 M62.5 26 V12 M37.5 14 H62.5\"/><path d=\"M30 58 V74 M67.5 64 V74 M30 72"
        + " H67.5\"/></g>\n"
        + "<text x=\"18.5\" y=\"46\" text-anchor=\"end\">A</text><text x=\"101.5\" y=\"46\">B</text>"
        + "<text x=\"50\" y=\"12.5\" text-anchor=\"middle\">5 P</text>"
        + "<text x=\"49\" y=\"76.5\" text-anchor=\"middle\">L</text>\n"
        + "<text x=\"4\" y=\"6\" font-weight=\"bold\">Where the readings lie</text>\n</svg>\n";
  }
}
