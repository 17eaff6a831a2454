package org.airfit.select;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.quantity.Money;

/** Why an offer is made and how it differs from the first, in sentences. */
final class OfferInWords {

  private OfferInWords() {}

  static String of(Set<Offer.Aim> aims, OfferCandidate offered, OfferCandidate first) {
    List<String> sentences = new ArrayList<>();
    for (Offer.Aim aim : aims) {
      sentences.add(
          switch (aim) {
            case LEAST_NOW ->
              "It costs " + offered.bill().total().orElseThrow().format(2) + " now"
                  + unpriced(offered) + ".";
            case LEAST_IN_A_YEAR -> inAYear(offered);
            case MOST_MARGIN ->
              "The shop earns " + offered.bill().margin().orElseThrow().format(2) + " on it.";
          });
    }
    if (!offered.equals(first)) {
      sentences.add(instead(offered, first));
      sentences.add(difference(offered, first));
    }
    return String.join(" ", sentences);
  }

  private static String unpriced(OfferCandidate offered) {
    List<String> without =
        offered.bill().unpriced().stream().map(BillLine::name).distinct().toList();
    return without.isEmpty() ? "" : " without " + String.join(", ", without) + ", of unknown price";
  }

  private static String inAYear(OfferCandidate offered) {
    Money now = offered.bill().total().orElseThrow();
    Money running = new Money(offered.running(), now.currency());
    return "In the first year it costs " + now.plus(running).format(2) + ", of which "
        + now.format(2) + " now" + unpriced(offered) + " and " + running.format(2)
        + " for the pressure that its parts lose and the leaks of its joints.";
  }

  /** Which parts it has that the first has not, and the other way round. */
  private static String instead(OfferCandidate offered, OfferCandidate first) {
    String more = others(offered, first);
    String less = others(first, offered);
    if (more.isEmpty()) {
      return "It does without " + less + ".";
    }
    return "It has " + more + (less.isEmpty() ? " besides." : " instead of " + less + ".");
  }

  private static String others(OfferCandidate one, OfferCandidate other) {
    Map<List<Object>, Integer> more = new LinkedHashMap<>();
    for (BillLine line : one.bill().lines()) {
      more.merge(article(line), line.quantity(), Integer::sum);
    }
    for (BillLine line : other.bill().lines()) {
      more.merge(article(line), -line.quantity(), Integer::sum);
    }
    return more.entrySet().stream()
        .filter(each -> each.getValue() > 0)
        .map(each -> each.getValue() + " × " + each.getKey().get(0))
        .collect(Collectors.joining(", "));
  }

  /** What a line is of: the same article may stand in two lines, for two reasons. */
  private static List<Object> article(BillLine line) {
    return List.of(line.name(), line.id());
  }

  private static String difference(OfferCandidate offered, OfferCandidate first) {
    Money now = offered.bill().total().orElseThrow();
    BigDecimal more = now.amount().subtract(first.bill().total().orElseThrow().amount());
    String sentence =
        "Now it costs " + new Money(more, now.currency()).format(2) + " more than the first offer";
    if (offered.pressure() == null) {
      return sentence + ".";
    }
    BigDecimal saved = first.running().subtract(offered.running());
    return sentence + ", and in every year "
        + new Money(saved.abs(), now.currency()).format(2)
        + (saved.signum() < 0 ? " more" : " less") + " for pressure and leaks.";
  }
}
