package org.airfit.calls;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.files.Document;
import org.jspecify.annotations.Nullable;

/** The object that a call is given; it remembers what was looked for, so that what is misspelt is found. */
final class Asked {

  private final Map<?, ?> fields;
  private final Set<String> known = new LinkedHashSet<>();

  private Asked(Map<?, ?> fields) {
    this.fields = fields;
  }

  static Asked of(@Nullable Object value) throws RefusedException {
    if (value instanceof Map<?, ?> map) {
      return new Asked(map);
    }
    throw RefusedException.field("", "an object is wanted, was " + kind(value), "");
  }

  private static String kind(@Nullable Object value) {
    return value == null ? "nothing" : value instanceof List ? "a list" : "\"" + value + "\"";
  }

  /** Whatever stands there; empty where it is left out. */
  Optional<Object> find(String name) {
    known.add(name);
    return Optional.ofNullable(fields.get(name));
  }

  /** What must stand there. */
  Object value(String name, String accepted) throws RefusedException {
    Optional<Object> found = find(name);
    if (found.isEmpty()) {
      throw RefusedException.field(name, "is missing", accepted);
    }
    return found.get();
  }

  /** A text that must stand there. */
  String text(String name, String accepted) throws RefusedException {
    return text(name, value(name, accepted), accepted);
  }

  /** A text; empty where it is left out. */
  Optional<String> findText(String name, String accepted) throws RefusedException {
    Optional<Object> found = find(name);
    return found.isEmpty() ? Optional.empty() : Optional.of(text(name, found.get(), accepted));
  }

  private static String text(String name, Object value, String accepted) throws RefusedException {
    if (value instanceof String text) {
      return text;
    }
    throw RefusedException.field(name, "a text is wanted, was " + kind(value), accepted);
  }

  /** Whether it is told to be true. */
  boolean flag(String name) throws RefusedException {
    Optional<Object> found = find(name);
    if (found.isPresent() && !(found.get() instanceof Boolean)) {
      throw RefusedException.field(name, "was " + kind(found.get()), "true, false");
    }
    return found.isPresent() && (Boolean) found.get();
  }

  /** A whole number of a range. */
  int number(String name, int usual, int least, int most) throws RefusedException {
    Optional<Object> found = find(name);
    if (found.isEmpty()) {
      return usual;
    }
    double told = found.get() instanceof Number number ? number.doubleValue() : Double.NaN;
    if (!(told >= least && told <= most && told == Math.rint(told))) {
      throw RefusedException.field(
          name, "was " + kind(found.get()), "a whole number from " + least + " to " + most);
    }
    return (int) told;
  }

  /** An object by the names of its fields; empty where it is left out. */
  Map<String, Object> object(String name, String accepted) throws RefusedException {
    Optional<Object> found = find(name);
    if (found.isEmpty()) {
      return Map.of();
    }
    if (!(found.get() instanceof Map)) {
      throw RefusedException.field(name, "was " + kind(found.get()), accepted);
    }
    return Document.fields(found.get());
  }

  /** Refuses what no call looked for. */
  void requireNothingElse() throws RefusedException {
    for (Object name : fields.keySet()) {
      if (!known.contains(String.valueOf(name))) {
        throw RefusedException.field(
            String.valueOf(name), "is no field here", String.join(", ", known));
      }
    }
  }
}
