package org.airfit.files.kept;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.files.Document;

/** Tells an answer with the names that parts have later: a part is the same by its number, whatever it is called. */
final class Renaming {

  /** The fields of an answer in which parts are called by their names. */
  private static final Set<String> TELLING =
      Set.of("headline", "sentence", "name", "restriction", "reason", "toGive", "text");

  /** The later names by the earlier ones, the longest first: a name may stand within another. */
  private final List<Map.Entry<String, String>> names;

  private Renaming(List<Map.Entry<String, String>> names) {
    this.names = names;
  }

  static Renaming of(KeptAnswer then, KeptAnswer now) {
    if (then.catalogue().equals(now.catalogue())) {
      return new Renaming(List.of());
    }
    Map<String, String> after = names(now);
    Map<String, String> later = new HashMap<>();
    boolean isChanged = false;
    for (Map.Entry<String, String> part : names(then).entrySet()) {
      String name = part.getValue();
      String other = after.getOrDefault(part.getKey(), name);
      String before = later.putIfAbsent(name, other);
      if (before != null && !before.equals(other)) {
        later.put(name, name); // two parts had this name: it does not tell which of them is meant
      }
    }
    List<Map.Entry<String, String>> names = new ArrayList<>();
    for (Map.Entry<String, String> each : later.entrySet()) {
      isChanged |= !each.getKey().equals(each.getValue());
      names.add(each);
    }
    names.sort(Comparator.comparing(each -> -each.getKey().length()));
    return new Renaming(isChanged ? names : List.of());
  }

  private static Map<String, String> names(KeptAnswer kept) {
    Map<String, String> names = new LinkedHashMap<>();
    InputDifferences.articles(Canonical.plain(kept.catalogue())).forEach((id, part) -> {
      if (part instanceof Map<?, ?> fields
          && fields.get("name") instanceof String name
          && !name.isBlank()) {
        names.put(id, name);
      }
    });
    return names;
  }

  Answered of(Answered then) {
    return names.isEmpty() ? then : AnswerText.of(renamed("", AnswerText.toPlain(then)));
  }

  private Object renamed(String field, Object plain) {
    if (plain instanceof Map<?, ?> fields) {
      Map<String, Object> other = Document.fields(fields);
      other.replaceAll(this::renamed);
      return other;
    }
    if (plain instanceof List<?> items) {
      List<Object> other = new ArrayList<>();
      for (Object item : items) {
        if (item != null) {
          other.add(renamed(field, item));
        }
      }
      return other;
    }
    return plain instanceof String text && TELLING.contains(field) ? renamed(text) : plain;
  }

  private String renamed(String text) {
    StringBuilder other = new StringBuilder();
    int at = 0;
    while (at < text.length()) {
      Optional<Map.Entry<String, String>> found = nameAt(text, at);
      other.append(found.map(Map.Entry::getValue).orElse(text.substring(at, at + 1)));
      at += found.map(name -> name.getKey().length()).orElse(1);
    }
    return other.toString();
  }

  /** A name that stands there as words of its own. */
  private Optional<Map.Entry<String, String>> nameAt(String text, int at) {
    return names.stream()
        .filter(each -> text.startsWith(each.getKey(), at)
            && isEdge(text, at)
            && isEdge(text, at + each.getKey().length()))
        .findFirst();
  }

  private static boolean isEdge(String text, int at) {
    return at == 0
        || at == text.length()
        || !Character.isLetterOrDigit(text.charAt(at - 1))
        || !Character.isLetterOrDigit(text.charAt(at));
  }
}
