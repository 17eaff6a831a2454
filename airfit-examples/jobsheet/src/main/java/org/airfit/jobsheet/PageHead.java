package org.airfit.jobsheet;

import java.util.Optional;
import org.airfit.files.Shop;

/** Writes the head of a sheet. */
final class PageHead {

  private PageHead() {}

  /** The head of a sheet: the shop, the job, and for whom. */
  static void write(
      StringBuilder out, Letterhead head, String title, String customer, String shopName) {
    out.append("<header class=\"top\">\n<div class=\"heading\">\n<div>\n");
    Html.element(out, "p class=\"shop\"", head.shop().map(Shop::name).orElse(shopName));
    head.shop().ifPresent(shop -> {
      shop.address().forEach(line -> Html.element(out, "p", line));
      shop.phone().ifPresent(phone -> Html.element(out, "p", "Telephone " + phone));
    });
    out.append("</div>\n<dl>\n");
    filled(out, "Job no.", head.number());
    filled(out, "Date", head.date().map(String::valueOf));
    head.validity().ifPresent(until -> Html.fact(out, "Offer valid until", until));
    out.append("</dl>\n</div>\n");
    Html.element(out, "h1", title);
    if (!customer.isBlank()) {
      Html.element(out, "p", "Job sheet for " + customer);
    }
    out.append("</header>\n");
  }

  private static void filled(StringBuilder out, String name, Optional<String> said) {
    if (said.isPresent()) {
      Html.fact(out, name, said.get());
    } else {
      out.append("<dt>").append(name).append("</dt><dd><span class=\"blank\"></span></dd>\n");
    }
  }
}
