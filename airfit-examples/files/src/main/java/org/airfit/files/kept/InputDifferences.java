package org.airfit.files.kept;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.airfit.files.Document;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.QuantityFormatException;
import org.jspecify.annotations.Nullable;

/** What is different in what two answers rest on: the question, the reference set and the catalogue. */
final class InputDifferences {

  private static final String SUPPLY = "job.supply.pressure";
  private static final String JOB = "job.";
  private static final String ID = "id";
  private static final String NAME = "name";
  private static final String PRICE = "price";
  private static final String RATED = "rated";
  private static final String TAKES = "takes";
  private static final String CONDUIT = "conduit.";
  private static final String LEAST = ".least.";
  private static final String MOST = ".most.";

  /** What a catalogue file calls fields of parts that have other names in the JSON of values. */
  private static final Map<String, String> FILED = Map.of(
      "bore", "hose",
      "existing", "alreadyThere",
      "conduit.fittingLoss", "fittings",
      "one", "end",
      "upstream", "end",
      "other", "otherEnd",
      "downstream", "otherEnd");

  private final List<Difference> found = new ArrayList<>();

  private InputDifferences() {}

  static List<Difference> of(KeptAnswer then, KeptAnswer now) {
    InputDifferences all = new InputDifferences();
    all.told("question", then, now, KeptAnswer::question, all::question);
    all.told("reference set", then, now, KeptAnswer::set, all::set);
    Set<String> proposed = new LinkedHashSet<>();
    for (KeptAnswer each : List.of(then, now)) {
      each.answered().proposals().forEach(proposal -> {
        proposed.addAll(proposal.ids());
        proposal
            .bill()
            .ifPresent(lines -> lines.forEach(line -> line.id().ifPresent(proposed::add)));
      });
    }
    all.told(
        "catalogue",
        then,
        now,
        KeptAnswer::catalogue,
        (before, after) -> all.catalogue(before, after, proposed));
    return all.found;
  }

  private interface Comparing {
    void of(Object then, Object now);
  }

  /** Whatever is not the same is told, if only that it is not. */
  private void told(
      String what,
      KeptAnswer then,
      KeptAnswer now,
      Function<KeptAnswer, String> text,
      Comparing comparing) {
    if (!text.apply(then).equals(text.apply(now))) {
      int before = found.size();
      comparing.of(Canonical.plain(text.apply(then)), Canonical.plain(text.apply(now)));
      if (found.size() == before) {
        found.add(new Difference.OtherText(what, true));
      }
    }
  }

  private void question(Object then, Object now) {
    Map<String, String> before = flat(then);
    Map<String, String> after = flat(now);
    for (String field : fields(before, after)) {
      String was = before.getOrDefault(field, "");
      String is = after.getOrDefault(field, "");
      Optional<GaugePressure> fell = field.equals(SUPPLY) ? pressure(was) : Optional.empty();
      Optional<GaugePressure> to = field.equals(SUPPLY) ? pressure(is) : Optional.empty();
      if (fell.isPresent() && to.isPresent() && !fell.equals(to)) {
        found.add(new Difference.OtherSupply(fell.get(), to.get()));
      } else {
        found.add(new Difference.AskedOtherwise(
            field.startsWith(JOB) ? field.substring(JOB.length()) : field, was, is));
      }
    }
  }

  /** A pressure; empty where a range or nothing is told. */
  private static Optional<GaugePressure> pressure(String text) {
    try {
      return Optional.of(GaugePressure.parse(text));
    } catch (QuantityFormatException e) {
      return Optional.empty();
    }
  }

  private void set(Object then, Object now) {
    Map<String, Object> before = byId(then, "profiles");
    Map<String, Object> after = byId(now, "profiles");
    for (String id : both(before, after)) {
      if (!after.containsKey(id)) {
        found.add(new Difference.OtherProfile(id, "", id, ""));
      } else if (!before.containsKey(id)) {
        found.add(new Difference.OtherProfile(id, "", "", id));
      } else {
        otherFields(
            before.get(id),
            after.get(id),
            (field, was, is) -> found.add(new Difference.OtherProfile(id, field, was, is)));
      }
    }
    otherFields(
        without(then, "profiles"),
        without(now, "profiles"),
        (field, was, is) -> found.add(new Difference.OtherProfile("", field, was, is)));
  }

  private void catalogue(Object then, Object now, Set<String> proposed) {
    Map<String, Object> before = articles(then);
    Map<String, Object> after = articles(now);
    int changed = 0;
    int gone = 0;
    int added = 0;
    for (String id : both(before, after)) {
      Object was = before.get(id);
      Object is = after.get(id);
      if (proposed.contains(id)) {
        part(id, was, is);
      } else if (is == null) {
        gone++;
      } else if (was == null) {
        added++;
      } else if (!was.equals(is)) {
        changed++;
      }
    }
    if (changed + gone + added > 0) {
      found.add(new Difference.OtherArticles(changed, gone, added));
    }
  }

  private void part(String id, @Nullable Object was, @Nullable Object is) {
    if (was == null || is == null) {
      Object there = was == null ? is : was;
      if (there != null) {
        found.add(new Difference.PartCameOrWent(named(id, there), was == null));
      }
      return;
    }
    String part = named(id, is);
    fieldsOfPart(was, is, (field, then, now) -> {
      switch (field) {
        case PRICE ->
          found.add(new Difference.OtherPrice(
              part, some(then).map(Money::parse), some(now).map(Money::parse)));
        case RATED ->
          found.add(new Difference.OtherRating(
              part, some(then).map(GaugePressure::parse), some(now).map(GaugePressure::parse)));
        default -> found.add(new Difference.OtherPart(part, field, then, now));
      }
    });
  }

  /** Tells the fields as a catalogue file has them; bounds of a range that changed alike once. */
  private static void fieldsOfPart(Object then, Object now, Telling telling) {
    Map<String, String> before = flat(then);
    Map<String, String> after = flat(now);
    otherFields(then, now, (field, was, is) -> {
      String other =
          field.contains(LEAST) ? field.replace(LEAST, MOST) : field.replace(MOST, LEAST);
      boolean isAlike =
          was.equals(before.getOrDefault(other, "")) && is.equals(after.getOrDefault(other, ""));
      boolean isToldWithLeast = field.contains(MOST) && isAlike;
      if (!isToldWithLeast) {
        String bound = isAlike
            ? ""
            : field.contains(LEAST) ? " at least" : field.contains(MOST) ? " at most" : "";
        String bare = field.replace(LEAST, ".").replace(MOST, ".");
        telling.of(
            FILED.getOrDefault(
                    bare, bare.startsWith(CONDUIT) ? bare.substring(CONDUIT.length()) : bare)
                + bound,
            was,
            is);
      }
    });
  }

  private static Optional<String> some(String text) {
    return Optional.of(text).filter(each -> !each.isEmpty());
  }

  private static String named(String id, Object part) {
    return part instanceof Map<?, ?> fields && fields.get(NAME) instanceof String name
        ? name + " (" + id + ")"
        : id;
  }

  /** Parts and accessories by their numbers. */
  static Map<String, Object> articles(Object catalogue) {
    Map<String, Object> articles = new LinkedHashMap<>();
    if (catalogue instanceof Map<?, ?> fields && fields.get("parts") instanceof Map<?, ?> inner) {
      articles.putAll(byId(inner, "parts"));
      articles.putAll(byId(inner, "accessories"));
    }
    articles.replaceAll((id, article) -> anyOrder(article));
    return articles;
  }

  /** A socket takes its profiles in any order. */
  private static Object anyOrder(Object article) {
    Map<String, Object> fields = Document.fields(article);
    if (fields.get(TAKES) instanceof List<?> takes) {
      fields.put(TAKES, takes.stream().map(String::valueOf).sorted().toList());
    }
    return fields;
  }

  private static Map<String, Object> byId(Object plain, String list) {
    Map<String, Object> found = new LinkedHashMap<>();
    if (plain instanceof Map<?, ?> fields && fields.get(list) instanceof List<?> items) {
      for (Object item : items) {
        if (item instanceof Map<?, ?> each && each.get(ID) instanceof String id) {
          found.put(id, item);
        }
      }
    }
    return found;
  }

  private static Object without(Object plain, String field) {
    Map<String, Object> rest = Document.fields(plain);
    rest.remove(field);
    return rest;
  }

  private static Set<String> both(Map<String, Object> then, Map<String, Object> now) {
    Set<String> ids = new LinkedHashSet<>(then.keySet());
    ids.addAll(now.keySet());
    return ids;
  }

  private interface Telling {
    void of(String field, String then, String now);
  }

  private static void otherFields(@Nullable Object then, @Nullable Object now, Telling telling) {
    Map<String, String> before = flat(then);
    Map<String, String> after = flat(now);
    for (String field : fields(before, after)) {
      telling.of(field, before.getOrDefault(field, ""), after.getOrDefault(field, ""));
    }
  }

  /** The fields that are not the same, in the order of their names. */
  private static List<String> fields(Map<String, String> then, Map<String, String> now) {
    Set<String> names = new TreeSet<>(Comparator.naturalOrder());
    names.addAll(then.keySet());
    names.addAll(now.keySet());
    return names.stream()
        .filter(name -> !then.getOrDefault(name, "").equals(now.getOrDefault(name, "")))
        .toList();
  }

  /** What stands at the end of each path; items of a list are counted from 1. */
  private static Map<String, String> flat(@Nullable Object plain) {
    Map<String, String> ends = new LinkedHashMap<>();
    flat("", plain, ends);
    return ends;
  }

  private static void flat(String path, @Nullable Object plain, Map<String, String> ends) {
    if (plain instanceof Map<?, ?> map) {
      map.forEach(
          (name, value) -> flat(path.isEmpty() ? "" + name : path + "." + name, value, ends));
    } else if (plain instanceof List<?> list) {
      int at = 1;
      for (Object item : list) {
        flat(path + "[" + at++ + "]", item, ends);
      }
    } else if (plain != null) {
      ends.put(path, plain instanceof String text ? text : Canonical.text(plain));
    }
  }
}
