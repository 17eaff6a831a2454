package org.airfit.jobsheet;

import static org.airfit.jobsheet.Html.escaped;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.airfit.files.Printable;
import org.airfit.safety.Caution;
import org.airfit.working.CardLine;
import org.airfit.working.CardTable;
import org.airfit.working.PencilCard;
import org.airfit.working.PencilChart;
import org.airfit.working.Term;
import org.airfit.working.UnitSystem;

/** The cards of a job as one HTML page, each on a side of its own, figures to scale. */
public final class CardPage {

  private static final String STYLE = """
      .card { max-width: 190mm; margin: 0 auto; padding: 16px; }
      .heading { border-bottom: 3px solid var(--line); padding-bottom: 4px; margin-bottom: 8px; }
      .heading p { margin: 0; }
      .given { display: flex; flex-wrap: wrap; gap: 2px 22px; margin: 0 0 8px; padding: 0; list-style: none; }
      .given li { white-space: nowrap; margin: 0; }
      table.steps th, table.steps td { padding-top: 2px; padding-bottom: 2px; }
      table.steps tbody th { width: 24%; font-weight: bold; }
      table.steps .part th, table.steps .part td { border-top: 1.5px solid var(--line); }
      table.steps td.r { font-weight: bold; }
      .figures { display: flex; flex-wrap: wrap; gap: 6px; margin-top: 8px; }
      .figures figure { margin: 0; flex: none; width: min-content; max-width: 100%; }
      .near { border: 1.5px solid var(--line); padding: 6px 12px 2px; margin: 10px 0; }
      .near p { margin: 0 0 4px; }
      .near .first { font-weight: bold; }
      .cautions p { margin: 0 0 4px; font-size: 14px; }
      @media print {
        .card { max-width: none; padding: 0; break-after: page; font-size: 7.6pt; line-height: 1.13; }
        .card:last-of-type { break-after: auto; }
        .card h1 { font-size: 13pt; } .card h2 { font-size: 9.5pt; margin: 1.6mm 0 .6mm; }
        .wide { overflow: visible; }
        table.steps th, table.steps td { padding: .1mm 2.4mm .1mm 0; border-bottom: 0; }
        table.steps thead th { border-bottom: 1.5px solid var(--line); }
        table.steps tbody th { width: auto; line-height: 1.05; }
        table.dense { line-height: 1.14; }
        table.dense td, table.dense th { padding-top: 0; padding-bottom: .5mm; }
        table.dense .part th { padding-top: .7mm; line-height: 1.2; }
        .card sub { font-size: 7pt; line-height: 0; vertical-align: -.2em; }
        figure.scale { overflow: visible; }
        .figures { gap: 2mm; margin-top: 1.2mm; flex-wrap: nowrap; }
        .figures figcaption { font-size: 7pt; line-height: 1.15; }
        .near { break-inside: avoid; padding: 1mm 2.5mm .4mm; margin: 1.4mm 0; }
        .near p { margin: 0 0 .4mm; }
        .cautions { columns: 2; column-gap: 5mm; }
        .cautions p { font-size: 7pt; line-height: 1.15; margin: 0 0 .7mm; }
      }
      """;

  /** A symbol with its index, such as "ΣK2", or a pressure with its place, such as "pa". */
  private static final Pattern INDEX =
      Pattern.compile("(Δpc|Δp|Δd|ΣK|Re|[A-Za-zλφṁ])(\\d+)|\\bp([agt])\\b");

  /** A card of more lines has headings in rows of their own, and a reading beside the step before it. */
  private static final int MANY = 26;

  private final StringBuilder out = new StringBuilder();

  private CardPage() {}

  /**
   * Writes the page.
   *
   * @param sheet the cards
   * @return one HTML file that needs no other
   */
  public static String of(CardSheet sheet) {
    CardPage page = new CardPage();
    page.write(sheet);
    return Printable.lines(page.out.toString());
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void write(CardSheet sheet) {
    String title = sheet.job().title();
    Html.head(out, "Pencil cards: " + title, PageStyle.of("Pencil card, " + title, STYLE));
    out.append("<main>\n");
    for (CardSheet.Card card : sheet.cards()) {
      out.append("<section class=\"card\">\n");
      card(sheet, card);
      out.append("</section>\n");
    }
    if (!sheet.without().isEmpty() || sheet.cards().isEmpty()) {
      out.append("<section class=\"card")
          .append(sheet.cards().isEmpty() ? "" : " screen")
          .append("\">\n");
      if (sheet.cards().isEmpty()) {
        element("h1", title);
        element("p", "This job has no answer that a card can hold.");
      }
      sheet.without().forEach(each -> element("p", each));
      out.append("</section>\n");
    }
    out.append("</main>\n</body>\n</html>\n");
  }

  private void card(CardSheet sheet, CardSheet.Card answered) {
    PencilCard card = answered.card();
    out.append("<header class=\"heading\">\n");
    element("h1", answered.question());
    element(
        "p",
        sheet.job().title() + ", for " + sheet.job().customer()
            + ". By pencil, ruler and pocket calculator. Read the cautions at its end first.");
    out.append("</header>\n");
    element("h2", "Given, rounded");
    out.append("<ul class=\"given\">\n");
    for (Term term : card.given()) {
      out.append("<li>").append(low(term.symbol())).append(" = ").append(escaped(term.quantity()));
      out.append("</li>\n");
    }
    out.append("</ul>\n");
    steps(card.lines(), answered.question());
    card.tables().forEach(this::table);
    figures(card);
    out.append("<div class=\"near\">\n");
    List<String> inWords = new ArrayList<>(answered.basis());
    inWords.addAll(card.inWords());
    for (int i = 0; i < inWords.size(); i++) {
      out.append(i == 0 ? "<p class=\"first\">" : "<p>")
          .append(low(inWords.get(i)))
          .append("</p>\n");
    }
    out.append("<p>").append(escaped(String.join(" ", card.rules()))).append("</p>\n</div>\n");
    if (!answered.cautions().isEmpty()) {
      element("h2", "Before anyone works on it: " + small(answered.question()));
      out.append("<div class=\"cautions\">\n");
      for (Caution caution : answered.cautions()) {
        out.append("<p><strong>").append(escaped(caution.title())).append(".</strong> ");
        out.append(escaped(caution.text())).append("</p>\n");
      }
      out.append("</div>\n");
    }
  }

  private static String low(String text) {
    return Html.replaced(
        Html.shown(text),
        INDEX,
        found -> found.group(3) != null
            ? "p<sub>" + found.group(3) + "</sub>"
            : found.group(1) + "<sub>" + found.group(2) + "</sub>");
  }

  /** The lines under each heading in rows beside it; what the symbols mean stands below, once. */
  private void steps(List<CardLine> lines, String question) {
    boolean hasHeadings = lines.stream().anyMatch(line -> line.kind() == CardLine.Kind.HEADING);
    boolean isDense = lines.size() > MANY;
    out.append("<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"Steps: ")
        .append(escaped(question))
        .append("\">\n");
    out.append("<table class=\"steps" + (isDense ? " dense" : "") + "\">\n<thead><tr>");
    String where = hasHeadings ? "where" : "what";
    for (String head :
        List.of(where, "equation", "numbers", "result").subList(isDense ? 1 : 0, 4)) {
      out.append(head.equals("result") ? "<th class=\"n\" scope=\"col\">" : "<th scope=\"col\">");
      out.append(head).append("</th>");
    }
    out.append("</tr></thead>\n<tbody>\n");
    Map<String, String> meanings = new LinkedHashMap<>();
    String first = "";
    for (int i = 0; i < lines.size(); i++) {
      CardLine line = lines.get(i);
      if (line.kind() == CardLine.Kind.HEADING && isDense) {
        out.append("<tr class=\"part\"><th scope=\"rowgroup\" colspan=\"3\">")
            .append(escaped(line.what()))
            .append("</th></tr>\n");
        continue;
      }
      if (line.kind() == CardLine.Kind.HEADING) {
        first = "<th scope=\"rowgroup\" rowspan=\"" + rows(lines, i) + "\">" + escaped(line.what())
            + "</th>";
        continue;
      }
      boolean isNote = line.kind() == CardLine.Kind.NOTE;
      out.append(first.isEmpty() ? "<tr>" : "<tr class=\"part\">").append(first);
      first = "";
      if (isNote) {
        out.append("<td colspan=\"").append(hasHeadings ? 3 : 4).append("\">");
        out.append(low(line.what())).append("</td></tr>\n");
        continue;
      }
      if (hasHeadings) {
        meanings.putIfAbsent(letter(line), line.what());
      } else {
        out.append("<th scope=\"row\">").append(escaped(line.what())).append("</th>");
      }
      CardLine next = i + 1 < lines.size() ? lines.get(i + 1) : line;
      if (isDense && line.kind() == CardLine.Kind.STEP && next.kind() == CardLine.Kind.READING) {
        meanings.putIfAbsent(letter(next), next.what() + ", " + figure(next));
        row(
            low(line.symbols()) + "; "
                + low(next.symbols().substring(0, next.symbols().indexOf(' '))),
            low(line.numbers()) + " = <strong>" + escaped(line.result()) + "</strong>;"
                + escaped(next.symbols().substring(next.symbols().indexOf(", ") + 1)),
            next.result());
        i++;
      } else {
        row(low(line.symbols()), low(line.numbers()), line.result());
      }
    }
    out.append("</tbody>\n</table>\n</div>\n");
    if (!meanings.isEmpty()) {
      out.append("<p class=\"soft\">");
      List<String> told = new ArrayList<>();
      meanings.forEach((letter, what) -> told.add(low(letter) + ": " + escaped(small(what))));
      out.append(String.join("; ", told)).append(".</p>\n");
    }
  }

  /** With a small letter at its beginning, unless it is a name. */
  private static String small(String what) {
    return what.startsWith("Reynolds")
        ? what
        : Character.toLowerCase(what.charAt(0)) + what.substring(1);
  }

  private void row(String symbols, String numbers, String result) {
    out.append("<td>").append(symbols).append("</td><td>").append(numbers);
    out.append("</td><td class=\"n r\">").append(escaped(result)).append("</td></tr>\n");
  }

  /** How many rows belong to a heading. */
  private static int rows(List<CardLine> lines, int heading) {
    int end = heading + 1;
    while (end < lines.size() && lines.get(end).kind() != CardLine.Kind.HEADING) {
      end++;
    }
    return end - heading - 1;
  }

  /** From which figure a line reads. */
  private static String figure(CardLine reading) {
    String symbols = reading.symbols();
    return symbols.substring(symbols.indexOf(' ') + 1, symbols.indexOf(", "));
  }

  /** The symbol that a line finds, without the number of its element. */
  private static String letter(CardLine line) {
    String symbol = line.symbols().substring(0, line.symbols().indexOf(' '));
    return symbol.replaceAll("\\d+$", "");
  }

  private void table(CardTable table) {
    out.append("<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"")
        .append(escaped(table.title()))
        .append("\">\n<table>\n<caption>")
        .append(escaped(table.title()))
        .append("</caption>\n<thead><tr>");
    table
        .heads()
        .forEach(head -> out.append("<th scope=\"col\">").append(low(head)).append("</th>"));
    out.append("</tr></thead>\n<tbody>\n");
    for (List<String> row : table.rows()) {
      out.append("<tr><th scope=\"row\">").append(escaped(row.get(0))).append("</th>");
      row.subList(1, row.size())
          .forEach(cell -> out.append("<td>").append(escaped(cell)).append("</td>"));
      out.append("</tr>\n");
    }
    out.append("</tbody>\n</table>\n</div>\n");
  }

  private void figures(PencilCard card) {
    if (card.charts().isEmpty()) {
      return;
    }
    out.append("<div class=\"figures\">\n");
    for (int i = 0; i < card.charts().size(); i++) {
      PencilChart chart = card.charts().get(i);
      out.append("<figure class=\"scale\" tabindex=\"0\">\n").append(chart.toSvg());
      element(
          "figcaption",
          "Figure " + (i + 1) + ". " + chart.title() + ". " + scale(chart, card.units()));
      out.append("</figure>\n");
    }
    out.append("</div>\n");
  }

  /** How long the axes are on paper, to see by a ruler that the printer kept to it. */
  private static String scale(PencilChart chart, UnitSystem units) {
    return "Printed at full size the lower axis is " + length(chart.across().millimetres(), units)
        + " long, the upright one " + length(chart.up().millimetres(), units) + ".";
  }

  private static String length(double millimetres, UnitSystem units) {
    return units.either(
        Amounts.fixed(millimetres, 0) + " mm", Amounts.fixed(millimetres / 25.4, 2) + " in");
  }
}
