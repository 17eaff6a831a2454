package org.airfit.select;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.internal.Digits;
import org.airfit.joint.End;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.Money;

/**
 * Finds what stands twice in a price list, and prices that are far from those of the same kind and size.
 *
 * <pre>
 *   x = ln price,   |x − median| &gt; max(3.5 × 1.4826 MAD, ln 2),   MAD = median |x − median|
 * </pre>
 *
 * <p>1.4826 makes the MAD the standard deviation of a bell curve. The limits 3.5 and 2, and that at least five others
 * of the same kind and size must have a price, are our own choice: so that one slip of a decimal point is found and
 * usual differences of make and material are not. A few wrong prices move neither median nor MAD; half of them would.
 */
final class ListOrder {

  /** So many others of the same kind and size must have a price. */
  static final int LEAST_OTHERS = 5;

  /** So many spreads off the median counts as out of line, if it is also {@link #TIMES} dearer or cheaper. */
  static final double SPREADS = 3.5;

  /** So many times the median, or that part of it, at least. */
  static final double TIMES = 2.0;

  /** The standard deviation of a bell curve in medians of absolute deviations. */
  private static final double OF_BELL = 1.4826;

  private final List<ListFault> found;
  private int compared;
  private int priced;
  private int costed;

  ListOrder(List<ListFault> found) {
    this.found = found;
  }

  /** {@return how many prices had enough others to be held against} */
  int compared() {
    return compared;
  }

  /** {@return how many parts have a price} */
  int priced() {
    return priced;
  }

  /** {@return how many parts have a price and a cost} */
  int costed() {
    return costed;
  }

  void check(List<ListedPart> articles) {
    List<ListedPart> once = twice(articles);
    sameData(once);
    for (ListedPart article : once) {
      told(article.part());
    }
    inLine(once);
  }

  private void told(Part part) {
    PartFacts facts = part.facts();
    if (facts.isExisting()) {
      return;
    }
    if (facts.price().isEmpty()) {
      found.add(ListFault.of(
          FaultKind.PRICE_NOT_TOLD,
          List.of(part.id()),
          units -> part.name() + " has no price.",
          "Tell the price, or take the article out of the list."));
      return;
    }
    priced++;
    Money price = facts.price().get();
    if (isNothing(part)) {
      compared++;
      found.add(ListFault.of(
          FaultKind.PRICE_OUT_OF_LINE,
          List.of(part.id()),
          units ->
              part.name() + " is sold for " + price.shown() + ": every bill has it for nothing.",
          "Tell the price, or leave it out where it is not known."));
    }
    if (facts.cost().isPresent() && facts.cost().get().currency().equals(price.currency())) {
      costed++;
      Money cost = facts.cost().get();
      if (cost.amount().compareTo(price.amount()) >= 0) {
        found.add(ListFault.of(
            FaultKind.PRICE_NOT_ABOVE_COST,
            List.of(part.id()),
            units -> part.name() + " costs the shop " + cost.shown() + " and is sold for "
                + price.shown() + ".",
            "Look at both again: most likely they were swapped, or one is of another quantity."));
      }
    }
  }

  /** Tells ids that stand more than once; {@return each article once, the first of each id}. */
  private List<ListedPart> twice(List<ListedPart> articles) {
    Map<String, List<ListedPart>> byId = new LinkedHashMap<>();
    articles.forEach(
        article -> byId.computeIfAbsent(article.id(), any -> new ArrayList<>()).add(article));
    List<ListedPart> once = new ArrayList<>();
    byId.forEach((id, all) -> {
      once.add(all.get(0));
      if (all.size() == 1) {
        return;
      }
      Set<Optional<Money>> prices = new HashSet<>();
      Set<Object> others = new HashSet<>();
      for (ListedPart each : all) {
        prices.add(each.part().facts().price());
        others.add(dataOf(each.part()));
      }
      boolean samePart = others.size() == 1;
      if (samePart && prices.size() > 1) {
        found.add(ListFault.of(
            FaultKind.TWO_PRICES,
            List.of(id),
            units -> "Article " + id + " stands " + all.size()
                + " times in the list with the same data and at " + inWords(prices) + ".",
            "Find out which price holds, and take the other row out."));
        return;
      }
      found.add(ListFault.of(
          FaultKind.ARTICLE_TWICE,
          List.of(id),
          units -> "Article " + id + " stands " + all.size() + " times in the list, "
              + (samePart ? "each time the same." : "with different data."),
          samePart
              ? "Take the rows out that are too many."
              : "Find out which row holds; if they are two parts, give one another id."));
    });
    return once;
  }

  private static String inWords(Set<Optional<Money>> prices) {
    return String.join(
        " and ",
        prices.stream()
            .map(price -> price.map(Money::shown).orElse("no price"))
            .sorted()
            .toList());
  }

  /** All that a part tells but id, name and what it costs. */
  private static Object dataOf(Part part) {
    PartFacts facts = part.facts();
    List<Object> data = new ArrayList<>(List.of(
        part.getClass(),
        facts.rating(),
        facts.material(),
        facts.lubrication(),
        facts.coldest(),
        facts.hottest(),
        facts.outsideDiameter(),
        facts.staticDissipative(),
        facts.isSleeveGuarded(),
        facts.isVented(),
        facts.isExisting(),
        Ends.all(part)));
    part.line().ifPresent(data::add);
    part.passage().ifPresent(data::add);
    if (part instanceof Part.Socket socket) {
      data.add(socket.profiles());
    } else if (part instanceof Part.Plug plug) {
      data.add(plug.profile());
    } else if (part instanceof Part.Hose hose) {
      data.add(hose.bore());
    } else if (part instanceof Part.Device device) {
      data.add(device.kind());
    } else if (part instanceof Part.Regulator regulator) {
      data.addAll(List.of(regulator.kind(), regulator.range()));
    }
    return data;
  }

  private void sameData(List<ListedPart> once) {
    Map<Object, List<Part>> alike = new LinkedHashMap<>();
    for (ListedPart article : once) {
      Part part = article.part();
      alike
          .computeIfAbsent(
              List.of(dataOf(part), article.coefficient(), article.bore(), article.fullFlow()),
              any -> new ArrayList<>())
          .add(part);
    }
    alike.values().stream().filter(parts -> parts.size() > 1).forEach(parts -> {
      Set<Optional<Money>> prices = new HashSet<>();
      parts.forEach(part -> prices.add(part.facts().price()));
      List<String> ids = parts.stream().map(Part::id).toList();
      String all = String.join(", ", ids);
      found.add(
          prices.size() > 1
              ? ListFault.of(
                  FaultKind.TWO_PRICES,
                  ids,
                  units ->
                      "Articles " + all + " have the same data, and cost " + inWords(prices) + ".",
                  "If they are one part, keep one article and one price; if not, tell what sets"
                      + " them apart.")
              : ListFault.of(
                  FaultKind.SAME_DATA,
                  ids,
                  units -> "Articles " + all + " have the same data and the same price.",
                  "If they are one part, keep one article; if not, tell what sets them apart."));
    });
  }

  /** What parts must share so that their prices are held against each other. */
  private static String kindAndSize(Part part) {
    if (part instanceof Part.Hose hose) {
      return "hoses " + hose.bore().label() + ", about "
          + Digits.significant((double) Math.round(hose.longest().in(LengthUnit.METRE)), 3)
          + " m long";
    }
    List<String> ends = Ends.all(part).stream().map(End::label).sorted().toList();
    return noun(part) + " with " + String.join(" and ", ends);
  }

  private static String noun(Part part) {
    if (part instanceof Part.Socket socket) {
      return socket.profiles().size() > 1 ? "universal sockets" : "sockets";
    }
    if (part instanceof Part.Plug) {
      return "plugs";
    }
    if (part instanceof Part.Device device) {
      return "parts of kind " + device.kind();
    }
    if (part instanceof Part.Regulator regulator) {
      return "parts of kind " + regulator.kind();
    }
    if (part instanceof Part.Splitter) {
      return "splitters";
    }
    return part instanceof Part.Adapter ? "adapters" : "pipes";
  }

  private void inLine(List<ListedPart> once) {
    Map<Object, List<Part>> groups = new LinkedHashMap<>();
    for (ListedPart article : once) {
      Part part = article.part();
      if (part.facts().price().isPresent() && !part.facts().isExisting() && !isNothing(part)) {
        groups
            .computeIfAbsent(
                List.of(kindAndSize(part), part.facts().price().get().currency()),
                any -> new ArrayList<>())
            .add(part);
      }
    }
    groups.forEach((group, parts) -> {
      if (parts.size() > LEAST_OTHERS) {
        compared += parts.size();
        outOfLine(parts);
      }
    });
  }

  private void outOfLine(List<Part> parts) {
    double[] logs = parts.stream().mapToDouble(ListOrder::log).toArray();
    double median = median(logs);
    double mad = median(Arrays.stream(logs).map(x -> Math.abs(x - median)).toArray());
    double limit = Math.max(SPREADS * OF_BELL * mad, Math.log(TIMES));
    for (Part part : parts) {
      double off = log(part) - median;
      if (!(Math.abs(off) > limit)) {
        continue;
      }
      Money price = part.facts().price().orElseThrow();
      Money middle = new Money(
          BigDecimal.valueOf(Math.exp(median)).setScale(2, RoundingMode.HALF_EVEN),
          price.currency());
      String times = Digits.significant(Math.exp(Math.abs(off)), 2) + " times "
          + (off > 0.0 ? "as much" : "less");
      found.add(ListFault.of(
          FaultKind.PRICE_OUT_OF_LINE,
          List.of(part.id()),
          units -> part.name() + " costs " + price.shown() + ", " + times + " beside a median of "
              + middle.shown() + " of " + parts.size() + " "
              + kindAndSize(part)
              + "; up to " + Digits.significant(Math.exp(limit), 2)
              + " times as much or less counts as in line, by our choice.",
          "Look for a slip of the decimal point, or a price for a pack; else nothing need be"
              + " done."));
    }
  }

  private static double log(Part part) {
    return Math.log(part.facts().price().orElseThrow().amount().doubleValue());
  }

  /** Whether a part has a price, and that is 0. */
  private static boolean isNothing(Part part) {
    return part.facts().price().filter(price -> price.amount().signum() == 0).isPresent();
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : 0.5 * (sorted[half - 1] + sorted[half]);
  }
}
