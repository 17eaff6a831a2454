package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.airfit.quantity.Money;

/** What is other in one standing than in another, a few words each. */
final class ChangeInWords {

  private ChangeInWords() {}

  /** What there is where nothing was before. */
  static List<String> of(Standing after) {
    if (after.shown().isEmpty()) {
      return after.missing();
    }
    Proposal shown = after.shown().get();
    List<String> words = new ArrayList<>();
    words.add(after.isFitting() ? shown.toString() : nothingFits(after));
    if (after.isFitting()) {
      shown.priceInWords().ifPresent(words::add);
    }
    return List.copyOf(words);
  }

  private static String nothingFits(Standing after) {
    return "nothing in the catalogue fits, not met: " + titles(rules(after, RuleOutcome.UNMET));
  }

  static List<String> of(Standing before, Standing after) {
    return of(before, after, /* isOfOne= */ true);
  }

  /** The same of several standings in which the same is met with other parts: what is met, and that the parts vary. */
  static List<String> ofSeveral(Standing before, Standing after) {
    return of(before, after, /* isOfOne= */ false);
  }

  private static List<String> of(Standing before, Standing after, boolean isOfOne) {
    if (after.shown().isEmpty()) {
      return before.missing().equals(after.missing()) ? List.of() : after.missing();
    }
    if (before.shown().isEmpty()) {
      return of(after);
    }
    List<String> words = new ArrayList<>();
    if (before.isFitting() && !after.isFitting()) {
      words.add(nothingFits(after));
    } else {
      if (!before.isFitting() && after.isFitting()) {
        words.add("there are parts that fit");
      }
      if (isOfOne) {
        words.addAll(exchanged(before.shown().get().parts(), after.shown().get().parts()));
        difference(before.shown().get(), after.shown().get()).ifPresent(words::add);
      } else {
        words.add("the parts go by the value");
      }
      rules(words, "not met: ", before, after, RuleOutcome.UNMET);
      met(words, before, after);
    }
    rules(
        words,
        "met only while the regulator holds: ",
        before,
        after,
        RuleOutcome.MET_WHILE_REGULATED);
    withoutRegulator(words, before, after);
    rules(words, "still to be asked: ", before, after, RuleOutcome.OPEN);
    settled(words, before, after);
    drain(words, before, after);
    if (isOfOne) {
      warnings(words, before, after);
    }
    return List.copyOf(words);
  }

  /** The parts of one kind that come, and those that go. */
  private static List<String> exchanged(List<Part> before, List<Part> after) {
    List<String> words = new ArrayList<>();
    for (Kind kind : Kind.values()) {
      List<Part> gone = kind.of(before);
      List<Part> come = kind.of(after);
      List<Part> there = List.copyOf(gone);
      come.forEach(part -> removeLike(gone, part));
      there.forEach(part -> removeLike(come, part));
      if (come.isEmpty() && !gone.isEmpty()) {
        words.add("without " + names(gone));
      } else if (!come.isEmpty()) {
        words.add(names(come) + (gone.isEmpty() ? " too" : " instead of " + names(gone)));
      }
    }
    if (words.isEmpty() && !ids(before).equals(ids(after))) {
      words.add("the same parts in other places");
    }
    return words;
  }

  /** Takes away one of the same id: of a part that is there, more may be known then. */
  private static void removeLike(List<Part> parts, Part part) {
    parts.stream().filter(each -> each.id().equals(part.id())).findFirst().ifPresent(parts::remove);
  }

  private static List<String> ids(List<Part> parts) {
    return parts.stream().map(Part::id).toList();
  }

  /** What parts are told apart by. */
  private enum Kind {
    SOCKET(Part.Socket.class::isInstance),
    PLUG(Part.Plug.class::isInstance),
    HOSE(Part.Hose.class::isInstance),
    ADAPTER(Part.Adapter.class::isInstance),
    REGULATOR(Part.Regulator.class::isInstance),
    DEVICE(Part.Device.class::isInstance),
    SPLITTER(Part.Splitter.class::isInstance);

    private final Predicate<Part> isOne;

    Kind(Predicate<Part> isOne) {
      this.isOne = isOne;
    }

    List<Part> of(List<Part> parts) {
      return new ArrayList<>(parts.stream().filter(isOne).toList());
    }
  }

  private static String names(List<Part> parts) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    parts.forEach(part -> counts.merge(part.name() + " (" + part.id() + ")", 1, Integer::sum));
    return counts.entrySet().stream()
        .map(each -> (each.getValue() > 1 ? each.getValue() + " x " : "") + each.getKey())
        .collect(Collectors.joining(" and "));
  }

  /** What it costs more or less; empty where a price is not known. */
  private static Optional<String> difference(Proposal before, Proposal after) {
    Optional<Money> one = whole(before);
    Optional<Money> other = whole(after);
    if (one.isEmpty() || other.isEmpty()) {
      return Optional.empty();
    }
    int more = other.get().amount().compareTo(one.get().amount());
    return more == 0
        ? Optional.empty()
        : Optional.of(new Money(
                    other.get().amount().subtract(one.get().amount()).abs(),
                    one.get().currency())
                .format(2)
            + (more > 0 ? " more" : " less"));
  }

  private static Optional<Money> whole(Proposal proposal) {
    return proposal.unpriced().isEmpty() ? proposal.price() : Optional.empty();
  }

  private static Set<Standing.Point> rules(Standing standing, RuleOutcome outcome) {
    Set<Standing.Point> rules = new LinkedHashSet<>();
    for (Map.Entry<Standing.Point, RuleOutcome> each : standing.told().entrySet()) {
      if (each.getValue() == outcome) {
        rules.add(each.getKey());
      }
    }
    return rules;
  }

  /** The titles of rules, each once with the lines that it is said of. */
  private static String titles(Set<Standing.Point> rules) {
    Map<String, List<String>> ways = new LinkedHashMap<>();
    for (Standing.Point point : rules) {
      List<String> of = ways.computeIfAbsent(point.rule().title(), any -> new ArrayList<>());
      if (!point.way().isEmpty()) {
        of.add(point.way());
      }
    }
    return ways.entrySet().stream()
        .map(each -> each.getKey()
            + (each.getValue().isEmpty() ? "" : " (" + String.join("; ", each.getValue()) + ")"))
        .collect(Collectors.joining(", "));
  }

  private static void rules(
      List<String> words, String what, Standing before, Standing after, RuleOutcome outcome) {
    Set<Standing.Point> rules = rules(after, outcome);
    rules.removeAll(rules(before, outcome));
    if (!rules.isEmpty()) {
      words.add(what + titles(rules));
    }
  }

  /** Broken before, and no longer. */
  private static void met(List<String> words, Standing before, Standing after) {
    Set<Standing.Point> rules = rules(before, RuleOutcome.UNMET);
    rules.removeAll(after.told().keySet());
    if (!rules.isEmpty()) {
      words.add("met then: " + titles(rules));
    }
  }

  /** Met by a regulator only before, and by itself then. */
  private static void withoutRegulator(List<String> words, Standing before, Standing after) {
    Set<Standing.Point> rules = rules(before, RuleOutcome.MET_WHILE_REGULATED);
    rules.removeAll(after.told().keySet());
    if (!rules.isEmpty()) {
      words.add("met even if the regulator fails: " + titles(rules));
    }
  }

  /** Open before, and neither open nor broken then; or only the makers can tell what is left of it. */
  private static void settled(List<String> words, Standing before, Standing after) {
    Set<Standing.Point> rules = rules(before, RuleOutcome.OPEN);
    rules.removeAll(after.told().keySet());
    if (!rules.isEmpty()) {
      words.add("settled: " + titles(rules));
    }
    if (before.asksForPlace() && !after.asksForPlace() && after.isMaterialOpen()) {
      words.add("left to ask the makers: " + Rule.MATERIAL_SUITS.title());
    }
  }

  /** What lets the water out, beside the parts that lead the air; or that it needs nothing. */
  private static void drain(List<String> words, Standing before, Standing after) {
    if (before.drain().isEmpty() && after.drain().isPresent()) {
      BillLine drain = after.drain().get();
      words.add(drain.name() + " too, in the pipe"
          + drain.price().map(price -> ", " + price.format(2)).orElse(", without a price yet"));
    } else if (before.drain().isPresent() && after.drain().isEmpty()) {
      words.add("without " + before.drain().get().name());
    } else if (before.asksForDryer() && !after.asksForDryer()) {
      words.add("settled: the pipe needs no drain");
    }
  }

  private static void warnings(List<String> words, Standing before, Standing after) {
    Set<String> more = new LinkedHashSet<>(after.warnings());
    more.removeAll(before.warnings());
    if (!more.isEmpty()) {
      words.add("to heed: " + String.join(", ", more));
    }
    Set<String> fewer = new LinkedHashSet<>(before.warnings());
    fewer.removeAll(after.warnings());
    if (!fewer.isEmpty()) {
      words.add("no longer to heed: " + String.join(", ", fewer));
    }
  }
}
