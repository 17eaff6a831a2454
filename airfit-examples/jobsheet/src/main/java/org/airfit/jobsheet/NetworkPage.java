package org.airfit.jobsheet;

import static org.airfit.jobsheet.Html.escaped;

import java.util.ArrayList;
import java.util.List;
import org.airfit.files.Printable;
import org.airfit.line.PipeDuty;
import org.airfit.line.PipeVelocity;
import org.airfit.line.VelocityVerdict;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;

/** The sheet of a network as one HTML page; a ring of six drops fits on one side of A4 or Letter. */
public final class NetworkPage {

  private static final double MUCH_PASCALS = 2.0e4;

  private static final String STYLE = """
      .top { padding-top: 16px; }
      .top h1 { margin: 0; }
      .heading { border-bottom: 3px solid var(--line); padding-bottom: 6px; margin-bottom: 10px; }
      .heading p { margin: 0; }
      .wide table { min-width: 34em; }
      .care { border: 1.5px solid var(--line); padding: 8px 14px 4px; margin-top: 16px; }
      .care h2 { margin-top: 0; }
      .first { font-size: 1.1em; font-weight: bold; }
      .wide .n + :not(.n) { padding-left: 12px; }
      @media print {
        body { font-size: 8.4pt; line-height: 1.24; }
        .heading { padding-bottom: 1mm; margin-bottom: 2mm; border-bottom-width: 2pt; }
        h2 { font-size: 10.5pt; margin: 2mm 0 .5mm; }
        h1 { font-size: 14pt; }
        p, ul, ol, dl.facts, table { margin-bottom: 1mm; }
        th, td { padding: .3mm 2mm .3mm 0; }
        li { margin-bottom: .2mm; }
        dl.facts { grid-template-columns: 24mm 1fr; gap: .3mm 3mm; }
        .wide { overflow: visible; }
        .wide table { min-width: 0; }
        .care { padding: 1.2mm 3mm .4mm; margin-top: 2mm; border-width: 1pt; font-size: 8pt; line-height: 1.18; }
        .care .cautions { columns: 2; column-gap: 5mm; }
        .care p { margin-bottom: .5mm; }
        .bottom { font-size: 7.5pt; margin-top: 1.5mm; }
        .full { font-size: 7.7pt; line-height: 1.15; }
        .full h2 { margin: 1.5mm 0 .3mm; }
        .full th, .full td { padding-top: .1mm; padding-bottom: .1mm; }
        .full tbody tr:first-child > * { padding-top: .5mm; }
        .full .care { font-size: 7.3pt; line-height: 1.12; padding: .8mm 3mm .2mm; margin-top: 1.5mm; }
        .long .care { break-inside: auto; }
      }
      """;

  /**
   * Above about so many lines letters are smaller and lines stand closer, so that one side of Letter holds them;
   * tried.
   */
  private static final int MANY_LINES = 40;

  /** Above so many they take several sides, and the letters are as large as ever; tried. */
  private static final int MOST_LINES = 58;

  /** So many changes are listed; our choice, so that a ring of six drops fits on one side. */
  private static final int MOST_CHANGES = 4;

  /** About so many letters stand on a line. */
  private static final double LETTERS = 120.0;

  private final StringBuilder out = new StringBuilder();

  private NetworkPage() {}

  /**
   * Writes the page.
   *
   * @param sheet what is answered
   * @return one HTML file that needs no other
   */
  public static String of(NetworkSheet sheet) {
    NetworkPage page = new NetworkPage();
    page.write(sheet);
    return Printable.lines(page.out.toString());
  }

  private void element(String tag, String text) {
    Html.element(out, tag, text);
  }

  private void write(NetworkSheet sheet) {
    String title = sheet.job().title();
    Html.head(out, "Network: " + title, PageStyle.of("Network, " + title, STYLE));
    out.append("<header class=\"top\">\n<div class=\"heading\">\n");
    element("h1", title);
    element("p", "Network sheet for " + sheet.job().customer());
    int lines = lines(sheet);
    String full =
        lines > MOST_LINES ? " class=\"long\"" : lines > MANY_LINES ? " class=\"full\"" : "";
    out.append("</div>\n</header>\n<main").append(full).append(">\n");
    element("h2", "In short");
    out.append("<dl class=\"facts\">\n");
    NetworkWords.inShort(sheet)
        .forEach(line -> Html.fact(out, line.what(), InWords.capital(line.answer())));
    out.append("</dl>\n");
    drops(sheet);
    branches(sheet);
    lists(sheet);
    out.append("<section class=\"care\">\n");
    element("h2", "Before anyone works on it");
    List<Caution> cautions = sheet.cautions();
    element(
        "p class=\"first\"", cautions.get(0).title() + ". " + cautions.get(0).text());
    out.append("<div class=\"cautions\">\n");
    for (Caution caution : cautions.subList(1, cautions.size() - 1)) {
      out.append("<p><strong>").append(escaped(caution.title())).append(".</strong> ");
      out.append(escaped(caution.text())).append("</p>\n");
    }
    out.append("</div>\n");
    element("p", cautions.get(cautions.size() - 1).text());
    out.append("</section>\n</main>\n");
    element(
        "footer class=\"bottom\"",
        "Pressures stand above an atmosphere of "
            + sheet.amounts().absolute(sheet.job().atmosphere())
            + "; free air is counted at "
            + sheet
                .job()
                .units()
                .either("20 °C, 1 bar and 65 % humidity (ANR)", "60 °F, 14.7 psi, dry (scfm)")
            + ". Isothermal flow with Colebrook"
            + " friction;"
            + " the program prints the working of every branch, and where each rule is from."
            + NetworkWords.checked(sheet).map(checked -> " " + checked).orElse(""));
    out.append("</body>\n</html>\n");
  }

  /** About how many lines the sheet has, by its letters; headings of tables are two. */
  private static int lines(NetworkSheet sheet) {
    double lines = 4.0 + sheet.drops().size();
    for (Answer said : NetworkWords.inShort(sheet)) {
      lines += Math.ceil(said.answer().length() / LETTERS);
    }
    lines += sheet.branches().stream().filter(NetworkPage::isShown).count();
    if (!sheet.changes().isNothing()) {
      for (String change : changes(sheet)) {
        lines += Math.ceil(change.length() / LETTERS);
      }
    }
    for (NetworkSheet.Closure closure : sheet.closures()) {
      lines += isLeftOut(closure) ? 0.0 : Math.ceil(closure.answer().length() / LETTERS);
    }
    for (Caution caution : sheet.cautions()) {
      lines += (caution.title().length() + caution.text().length()) / LETTERS;
    }
    return (int) Math.ceil(lines);
  }

  private void drops(NetworkSheet sheet) {
    element("h2", "At the drops");
    UnitSystem units = sheet.job().units();
    String flow = units.either("L/s ANR", "scfm");
    String pressures = units.either("bar / psi (g)", "psi / bar (g)");
    wide("At the drops");
    out.append("<table>\n<thead><tr>");
    heading("drop", "");
    heading("tool", "");
    heading("needs,<br>" + pressures, "n");
    heading("all running,<br>" + pressures, "n");
    heading("that is", "");
    heading("gets / wants,<br>" + flow, "n");
    heading("19 of 20 times<br>at least, " + pressures, "n");
    out.append("</tr></thead>\n<tbody>\n");
    for (DropAnswer answer : sheet.drops()) {
      out.append(answer.isEnough() && !answer.depends() ? "<tr>" : "<tr class=\"unmet\">");
      rowHead(answer.drop().name());
      cell(answer.drop().tool(), false);
      cell(both(answer.drop().needs(), units), true);
      cell(
          answer.isTold()
              ? both(answer.flow().atTool(), units)
              : "at most " + both(answer.atBest().orElse(answer.flow()).atTool(), units),
          true);
      cell(answer.verdict(), false);
      cell(
          free(sheet, answer.flow().massFlow()) + " / "
              + free(sheet, answer.flow().wanted()),
          true);
      cell(
          answer.isTold()
              ? answer.usual().map(usual -> both(usual, units)).orElse("never runs")
              : "not told",
          true);
      out.append("</tr>\n");
    }
    out.append("</tbody>\n</table>\n</div>\n");
  }

  /** A pressure in both systems, that of the sheet first. */
  private static String both(GaugePressure pressure, UnitSystem units) {
    String bar = NetworkAmounts.number(UnitSystem.SI.say(pressure));
    String psi = Amounts.fixed(pressure.psi(), 0);
    return units.either(bar + " / " + psi, psi + " / " + bar);
  }

  /** A loss in both systems without their units, that of the sheet first. */
  private static String loss(PressureDrop loss, UnitSystem units) {
    String first = units.say(loss).replace(" " + units.pressureUnit().symbol(), "");
    String second =
        units.other().say(loss).replace(" " + units.other().pressureUnit().symbol(), "");
    return first + " / " + second;
  }

  private static String free(NetworkSheet sheet, MassFlow flow) {
    return NetworkAmounts.number(sheet.amounts().flow(flow));
  }

  /** Begins a table that moves sideways where the screen is narrow. */
  private void wide(String label) {
    out.append("<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"Table: ")
        .append(escaped(label))
        .append("\">\n");
  }

  /** Heads a column; the words are our own and may hold a break. */
  private void heading(String words, String kind) {
    out.append("<th scope=\"col\"").append(kind.isEmpty() ? "" : " class=\"" + kind + "\"");
    out.append('>').append(words).append("</th>");
  }

  private void rowHead(String text) {
    out.append("<th scope=\"row\">").append(Html.shown(text)).append("</th>");
  }

  private void cell(String text, boolean number) {
    out.append(number ? "<td class=\"n\">" : "<td>").append(escaped(text)).append("</td>");
  }

  private void branches(NetworkSheet sheet) {
    element("h2", "On the way there, all tools running");
    wide("On the way there");
    out.append("<table>\n<thead><tr>");
    heading("pipe or part", "");
    heading("towards", "");
    heading("air,<br>" + sheet.job().units().either("L/s ANR", "scfm"), "n");
    heading("pressure loss,<br>" + sheet.job().units().either("bar / psi", "psi / bar"), "n");
    heading("velocity and rule,<br>" + sheet.job().units().either("m/s", "ft/s"), "n");
    out.append("</tr></thead>\n<tbody>\n");
    List<NetworkSheet.BranchAnswer> shown =
        sheet.branches().stream().filter(NetworkPage::isShown).toList();
    for (NetworkSheet.BranchAnswer branch : shown) {
      out.append(isMarked(branch) ? "<tr class=\"unmet\">" : "<tr>");
      rowHead(branch.flow().name()
          + (branch.flow().chokes() ? " (chokes)" : "")
          + (branch.flow().dead() ? " (dead leg)" : "")
          + (branch.flow().standsBy() ? " (stands by)" : "")
          + (branch.flow().shut() ? " (shut)" : ""));
      cell(branch.velocity().isPresent() && isMain(branch) ? branch.flow().to() : "", false);
      cell(free(sheet, branch.flow().massFlow()), true);
      cell(
          (branch.setsDown() ? "set down by " : "")
              + loss(branch.flow().drop(), sheet.job().units()),
          true);
      cell(branch.velocity().map(velocity -> velocity(sheet, velocity)).orElse(""), true);
      out.append("</tr>\n");
    }
    out.append("</tbody>\n</table>\n</div>\n");
    int left = sheet.branches().size() - shown.size();
    if (left > 0) {
      out.append("<p class=\"soft\">")
          .append(left + " drops and parts that each lose less than 0.2 bar are left out.")
          .append("</p>\n");
    }
  }

  private static boolean isMarked(NetworkSheet.BranchAnswer branch) {
    return branch.flow().chokes()
        || branch
            .velocity()
            .filter(velocity -> velocity.verdict() == VelocityVerdict.ABOVE)
            .isPresent();
  }

  private static boolean isMain(NetworkSheet.BranchAnswer branch) {
    return branch
        .velocity()
        .filter(velocity -> velocity.duty() != PipeDuty.BRANCH)
        .isPresent();
  }

  private static String velocity(NetworkSheet sheet, PipeVelocity velocity) {
    return (velocity.verdict() == VelocityVerdict.ABOVE ? "too fast: " : "")
        + NetworkAmounts.number(sheet.amounts().velocity(velocity.velocity())) + " / "
        + NetworkAmounts.number(sheet.amounts().velocity(velocity.duty().highest()));
  }

  /** Mains, what is marked, and what takes much; the rest would fill a second page. */
  private static boolean isShown(NetworkSheet.BranchAnswer branch) {
    return isMain(branch) || isMarked(branch) || branch.flow().drop().pascals() >= MUCH_PASCALS;
  }

  /** What the first lines leave out: changes that are enough, and what is left with a main closed that is needed. */
  private void lists(NetworkSheet sheet) {
    if (!sheet.changes().isNothing()) {
      element("h2", "What to change");
      out.append("<ul>\n");
      changes(sheet).forEach(change -> element("li", InWords.capital(change)));
      out.append("</ul>\n");
    }
    List<NetworkSheet.Closure> needed =
        sheet.closures().stream().filter(closure -> !isLeftOut(closure)).toList();
    if (!needed.isEmpty()) {
      element("h2", "Mains that may not be closed with all tools running");
      out.append("<ul>\n");
      needed.forEach(
          closure -> element("li", InWords.capital(closure.pipe() + ": " + closure.answer())));
      out.append("</ul>\n");
    }
  }

  /** Whether the first lines tell enough of a closed main: by it no drop falls short that is not short already. */
  private static boolean isLeftOut(NetworkSheet.Closure closure) {
    return closure.serves() || closure.noFurther();
  }

  /** Of many changes the first, which cost least, and what goes with those that raise the pressure. */
  private static List<String> changes(NetworkSheet sheet) {
    List<String> all = NetworkWords.changes(sheet);
    if (all.size() <= MOST_CHANGES) {
      return all;
    }
    List<String> first = new ArrayList<>(all.subList(0, MOST_CHANGES - 1));
    first.add(
        "there are more, such as at the supply: the program prints them with what they ask for.");
    NetworkWords.raising(sheet).ifPresent(first::add);
    return first;
  }
}
