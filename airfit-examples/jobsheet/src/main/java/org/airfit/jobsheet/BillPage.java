package org.airfit.jobsheet;

import java.util.Optional;
import org.airfit.files.Shop;
import org.airfit.quantity.Money;
import org.airfit.select.BillLine;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Proposal;
import org.airfit.working.UnitSystem;

/** The bill of materials as a table of a page. */
final class BillPage {

  private BillPage() {}

  /** Writes what to buy, where each goes and what it costs. */
  static void handOver(
      StringBuilder out,
      BillOfMaterials bill,
      Proposal proposal,
      Optional<Shop> shop,
      UnitSystem units) {
    boolean priced = bill.total().isPresent();
    Optional<String> currency = currency(bill, shop);
    String unit = currency.map(letters -> ", " + letters).orElse("");
    out.append("<table class=\"parts\">\n<thead><tr><th scope=\"col\">pieces</th>")
        .append("<th scope=\"col\">part</th><th scope=\"col\">what, and where it goes</th>");
    if (priced) {
      out.append("<th scope=\"col\" class=\"n each\">each</th><th scope=\"col\" class=\"n\">price")
          .append(Html.escaped(unit))
          .append("</th>");
    }
    out.append("</tr></thead>\n<tbody>\n");
    for (BillLine line : bill.lines()) {
      String place = BillPlaces.of(line, proposal, units);
      out.append("<tr><td>")
          .append(line.existing() ? "there" : Integer.toString(line.quantity()))
          .append("</td><td class=\"id\">")
          .append(Html.escaped(BillText.id(line)))
          .append("</td><th scope=\"row\">")
          .append(Html.shown(line.name()))
          .append(place.isEmpty() ? "" : "<span class=\"soft\">, " + Html.shown(place) + "</span>");
      out.append("</th>");
      if (priced) {
        amount(out, line, line.priceEach(), currency, "n each");
        amount(out, line, line.price(), currency, "n");
      }
      out.append("</tr>\n");
    }
    out.append("</tbody>\n");
    bill.total()
        .ifPresent(total -> out.append("<tfoot><tr><th scope=\"row\" colspan=\"3\">")
            .append(bill.unpriced().isEmpty() ? "Together" : "Together, as far as prices are known")
            .append("<span class=\"soft tax\">")
            .append(Html.escaped(shop.flatMap(Shop::tax).orElse("No tax was added.")))
            .append("</span></th><td class=\"n each\"></td><td class=\"n\">")
            .append(Html.escaped(number(total, currency)))
            .append("</td></tr></tfoot>\n"));
    out.append("</table>\n");
  }

  private static void amount(
      StringBuilder out,
      BillLine line,
      Optional<Money> amount,
      Optional<String> currency,
      String kind) {
    out.append("<td class=\"").append(kind).append("\">");
    out.append(Html.escaped(amount
            .map(known -> number(known, currency))
            .orElse(line.existing() ? "" : "to be asked")))
        .append("</td>");
  }

  /** Without its currency where that stands over the column. */
  private static String number(Money money, Optional<String> currency) {
    String told = money.format(2);
    return currency.map(letters -> told.replace(" " + letters, "")).orElse(told);
  }

  /** The currency of the shop's settings, if the prices are in it; otherwise each amount tells its own. */
  private static Optional<String> currency(BillOfMaterials bill, Optional<Shop> shop) {
    return shop.flatMap(Shop::currency)
        .filter(letters ->
            bill.total().filter(total -> total.currency().equals(letters)).isPresent());
  }

  /** Writes the bill with its reasons. */
  static void write(StringBuilder out, BillOfMaterials bill, Proposal proposal) {
    out.append("<table>\n<thead><tr><th scope=\"col\">pieces</th><th scope=\"col\">part</th>")
        .append("<th scope=\"col\">what</th><th scope=\"col\">why</th></tr></thead>\n<tbody>\n");
    for (BillLine line : bill.lines()) {
      out.append("<tr><td>").append(line.existing() ? "there" : Integer.toString(line.quantity()));
      out.append("</td><td class=\"id\">").append(Html.escaped(BillText.id(line)));
      out.append("</td><th scope=\"row\">").append(Html.shown(line.name()));
      out.append("</th><td>").append(Html.shown(line.reason()));
      out.append("</td></tr>\n");
    }
    out.append("</tbody>\n</table>\n");
    InWords.together(bill, proposal).ifPresent(sum -> Html.element(out, "p", sum));
  }
}
