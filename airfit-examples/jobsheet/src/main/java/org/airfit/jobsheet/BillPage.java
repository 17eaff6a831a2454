package org.airfit.jobsheet;

import org.airfit.select.BillLine;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Proposal;

/** The bill of materials as a table of the page. */
final class BillPage {

  private BillPage() {}

  /** Writes the table, what it sums to, and what must still be asked for it. */
  static void write(StringBuilder out, BillOfMaterials bill, Proposal proposal) {
    boolean priced = bill.total().isPresent();
    out.append("<table>\n<tr><th class=\"n\">pieces</th><th>part</th><th>what</th><th>why</th>")
        .append(priced ? "<th class=\"n\">each</th><th class=\"n\">price</th>" : "")
        .append("</tr>\n");
    for (BillLine line : bill.lines()) {
      out.append("<tr><td class=\"n\">")
          .append(line.existing() ? "there" : Integer.toString(line.quantity()));
      out.append("</td><td class=\"nowrap\">").append(Html.escaped(BillText.id(line)));
      out.append("</td><td>").append(Html.escaped(line.name()));
      out.append("</td><td>").append(Html.escaped(line.reason()));
      if (priced) {
        String each = BillText.money(line, line.priceEach());
        String all = BillText.money(line, line.price());
        out.append("</td><td class=\"n\">").append(Html.escaped(each));
        out.append("</td><td class=\"n\">").append(Html.escaped(all));
      }
      out.append("</td></tr>\n");
    }
    bill.total()
        .ifPresent(total -> out.append("<tr class=\"total\"><td></td><td></td><td></td><td>")
            .append(bill.unpriced().isEmpty() ? "together" : "together, as far as prices are known")
            .append("</td><td></td><td class=\"n\">")
            .append(Html.escaped(total.format(2)))
            .append("</td></tr>\n"));
    out.append("</table>\n");
    InWords.together(bill, proposal).ifPresent(sum -> Html.element(out, "p", sum));
    if (!bill.questions().isEmpty()) {
      Html.element(out, "p", "To be asked for this list:");
      out.append("<ul>\n");
      bill.questions().forEach(question -> Html.element(out, "li", question));
      out.append("</ul>\n");
    }
  }
}
