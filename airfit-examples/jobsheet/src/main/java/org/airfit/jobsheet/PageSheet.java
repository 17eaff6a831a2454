package org.airfit.jobsheet;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.files.Printable;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Offer;
import org.airfit.select.Offers;
import org.airfit.select.Proposal;

/**
 * The job sheet to hand over, as one HTML page that needs nothing but itself: to read on a screen and to print on one
 * side of A4 or Letter. Of more than twelve parts it takes a further side; every side has the job and its number.
 *
 * <p>It says what was found, what to buy at which price, what must still be asked, what to beware of, and has room for
 * notes, the measured pressure and two signatures. What all that rests on stands on {@link PageReasons}, a page of its
 * own.
 */
public final class PageSheet {

  static final String STYLE = """
      .heading { display: flex; flex-wrap: wrap; gap: 4px 24px; justify-content: space-between;
        border-bottom: 3px solid var(--line); padding-bottom: 8px; margin-bottom: 10px; }
      .heading p { margin: 0; }
      .heading dl { display: grid; align-content: start; grid-template-columns: auto minmax(8em, auto);
        gap: 1px 12px; margin: 0; }
      .heading dd { margin: 0; }
      .blank { display: inline-block; min-width: 8em; border-bottom: 1px solid var(--line); height: 1.1em; }
      .shop { font-size: 18px; font-weight: bold; }
      .parts td.n { font-variant-numeric: tabular-nums; }
      .parts .tax { font-weight: normal; padding-left: 1em; }
      ul.ask { list-style: none; padding: 0; }
      ul.ask li { padding-left: 1.7em; position: relative; }
      ul.ask li::before { content: ""; position: absolute; left: 0; top: .2em; width: .85em; height: .85em;
        border: 1.3px solid var(--ink); }
      .care { border: 1.5px solid var(--line); padding: 8px 14px 6px; margin: 14px 0 10px; }
      .care h2 { margin-top: 0; }
      .first { font-size: 1.12em; font-weight: bold; }
      .care ul { padding-left: 0; list-style: none; }
      .care .last { margin: 0; }
      .fill { display: grid; grid-template-columns: 1fr 1fr; gap: 0 24px; margin-top: 14px; }
      .fill h2 { grid-column: 1 / -1; margin: 0; }
      .fill p { border-bottom: 1px solid var(--line); padding-top: 1.5em; margin: 0 0 2px; display: flex;
        justify-content: space-between; gap: 12px; }
      .fill .all { grid-column: 1 / -1; }
      @media screen and (max-width: 700px) {
        .each { display: none; }
        .fill { grid-template-columns: 1fr; }
      }
      @media print {
        .heading { padding-bottom: 1mm; margin-bottom: 1.5mm; border-bottom-width: 2pt; }
        .shop { font-size: 12pt; }
        h1 { font-size: 14pt; margin: 0; }
        h2 { margin: 2.2mm 0 .5mm; }
        dl.facts { grid-template-columns: 27mm 1fr; gap: .2mm 3mm; margin-bottom: 1mm; }
        th, td { padding-top: .35mm; padding-bottom: .35mm; }
        p, ul, table { margin-bottom: .8mm; }
        li { margin-bottom: .4mm; }
        .care { padding: 1.4mm 3mm 1mm; margin: 2.2mm 0 2mm; border-width: 1pt; break-inside: avoid; }
        .care ul { columns: 2; column-gap: 6mm; margin-bottom: .8mm; }
        .care li { break-inside: avoid; }
        .fill { margin-top: 1.5mm; gap: 0 8mm; break-inside: avoid; }
        .fill p { padding-top: 5mm; margin: 0; }
        .more { font-size: 9.2pt; line-height: 1.24; }
        .full { font-size: 9pt; line-height: 1.17; }
        .full h2 { font-size: 10.5pt; margin-top: 1.6mm; }
        .full th, .full td { padding-top: .2mm; padding-bottom: .2mm; }
        .full .care { padding-top: 1mm; margin: 1.6mm 0 1.4mm; }
        .full .fill p { padding-top: 4mm; }
        .full .fill p.second { display: none; }
        .brim { font-size: 8.7pt; line-height: 1.12; }
        .brim h2 { margin-top: 1.2mm; }
        .brim .fill { margin-top: 1mm; }
      }
      """;

  /** Above about so many lines the letters are 9.2 pt, not 9.5 pt, so that one side of Letter holds them; tried. */
  private static final int MANY_LINES = 28;

  /** Above so many they are 9 pt, and lines stand closer; tried. */
  private static final int MOST_LINES = 31;

  /** Above so many they are 8.7 pt; tried with twelve parts, every caution and every question at once. */
  private static final int BRIM_LINES = 41;

  /** About so many letters stand on a line of the sheet. */
  private static final double LETTERS = 115.0;

  private final StringBuilder out = new StringBuilder();
  private final JobSheet sheet;
  private final Letterhead head;

  private PageSheet(JobSheet sheet, Letterhead head) {
    this.sheet = sheet;
    this.head = head;
  }

  /**
   * Writes the sheet with lines to fill in number and date.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(JobSheet sheet) {
    return of(sheet, Letterhead.BLANK, Optional.empty());
  }

  /**
   * Writes the sheet.
   *
   * @param sheet what is answered
   * @param head the shop, the number of the job and the date
   * @param reasons where the page with the reasons is; empty if there is none
   * @return one HTML file that needs no other
   */
  public static String of(JobSheet sheet, Letterhead head, Optional<String> reasons) {
    Objects.requireNonNull(sheet, "sheet");
    Objects.requireNonNull(head, "head");
    Objects.requireNonNull(reasons, "reasons");
    if (sheet.refusal().isPresent()) {
      return Printable.lines(RefusalSheet.page(sheet.refusal().get(), head));
    }
    PageSheet page = new PageSheet(sheet, head);
    page.write(reasons);
    return Printable.lines(page.out.toString());
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void write(Optional<String> reasons) {
    String title = sheet.job().title();
    Html.head(out, "Job sheet: " + title, PageStyle.of(head.footer(title), STYLE));
    PageHead.write(
        out, head, title, sheet.job().customer(), sheet.job().catalogue().name());
    int lines = lines();
    String full = lines > BRIM_LINES
        ? " class=\"full brim\""
        : lines > MOST_LINES ? " class=\"full\"" : lines > MANY_LINES ? " class=\"more\"" : "";
    out.append("<main").append(full).append(">\n");
    found();
    parts();
    open();
    cautions();
    fill(out, sheet.units().either("bar(g)", "psig"));
    out.append("</main>\n");
    reasons.ifPresent(file -> out.append("<footer class=\"bottom screen\"><a href=\"")
        .append(Html.escaped(file))
        .append("\">What this rests on, and the working</a></footer>\n"));
    out.append("</body>\n</html>\n");
  }

  /** About how many lines the sheet has, by its letters. */
  private int lines() {
    double lines = 0.0;
    for (Answer found : PageFound.found(sheet)) {
      lines += Math.ceil(found.answer().length() / 95.0);
    }
    for (Answer caution : PageFound.cautions(sheet)) {
      lines += 0.15 + (caution.what().length() + caution.answer().length()) / LETTERS;
    }
    for (String open : PageFound.open(sheet)) {
      lines += Math.ceil(open.length() / LETTERS);
    }
    Optional<Proposal> proposal = PageFound.proposal(sheet);
    if (proposal.isPresent()) {
      lines += 2.0 + 1.3 * InWords.bill(sheet, proposal.get()).lines().size();
    }
    if (sheet.offers().isPresent()) {
      lines += 9.0;
    }
    return (int) Math.ceil(lines);
  }

  private void found() {
    out.append("<section>\n");
    element("h2", "What was found");
    out.append("<dl class=\"facts\">\n");
    PageFound.found(sheet).forEach(line -> Html.fact(out, line.what(), line.answer()));
    out.append("</dl>\n");
    List<String> wrong = PageFound.wrong(sheet);
    if (!wrong.isEmpty()) {
      element("p class=\"warn\"", "Not right with it:");
      out.append("<ul>\n");
      wrong.forEach(finding -> element("li", finding));
      out.append("</ul>\n");
    }
    out.append("</section>\n");
  }

  private void parts() {
    PageFound.proposal(sheet).ifPresent(proposal -> {
      BillOfMaterials bill = InWords.bill(sheet, proposal);
      out.append("<section>\n");
      element("h2", "Recommended parts");
      InWords.tradeWords(sheet, proposal).ifPresent(words -> element("p class=\"soft\"", words));
      BillPage.handOver(out, bill, proposal, head.shop(), sheet.units());
      sheet.offers().ifPresent(this::offers);
      out.append("</section>\n");
    });
  }

  /** For the customer: what the shop earns stands on the sheet for the terminal alone. */
  private void offers(Offers offers) {
    List<Offer> shown = offers.offers().stream()
        .filter(offer -> !offer.aims().equals(Set.of(Offer.Aim.MOST_MARGIN)))
        .toList();
    element("h2", "Which offer?");
    out.append("<ul class=\"ask\">\n");
    shown.forEach(offer -> element("li", InWords.capital(offer.toString())));
    out.append("</ul>\n");
  }

  private void open() {
    List<String> open = PageFound.open(sheet);
    if (open.isEmpty()) {
      return;
    }
    out.append("<section>\n");
    element("h2", "Still open");
    out.append("<ul class=\"ask\">\n");
    open.forEach(question -> element("li", question));
    out.append("</ul>\n</section>\n");
  }

  private void cautions() {
    List<Answer> cautions = PageFound.cautions(sheet);
    Answer first = cautions.get(0);
    Answer last = cautions.get(cautions.size() - 1);
    out.append("<section class=\"care\">\n");
    element("h2", "Before anyone connects this");
    element("p class=\"first\"", first.what() + ". " + first.answer());
    out.append("<ul>\n");
    for (Answer caution : cautions.subList(1, cautions.size() - 1)) {
      out.append("<li><strong>").append(Html.shown(caution.what())).append(".</strong> ");
      out.append(Html.shown(caution.answer())).append("</li>\n");
    }
    out.append("</ul>\n");
    element("p class=\"last\"", last.answer());
    out.append("</section>\n");
  }

  /** What is filled in by hand. */
  static void fill(StringBuilder out, String unit) {
    out.append("<section class=\"fill\">\n");
    Html.element(out, "h2", "Measured at the tool while it runs, and notes");
    line(out, "Pressure before the change", unit);
    line(out, "Pressure after the change", unit);
    out.append("<p class=\"all\"><span>Notes</span></p>\n<p class=\"all second\"></p>\n");
    line(out, "For the shop", "date");
    line(out, "For the customer", "date");
    out.append("</section>\n");
  }

  private static void line(StringBuilder out, String what, String end) {
    out.append("<p><span>").append(Html.shown(what)).append("</span><span>");
    out.append(Html.shown(end)).append("</span></p>\n");
  }
}
