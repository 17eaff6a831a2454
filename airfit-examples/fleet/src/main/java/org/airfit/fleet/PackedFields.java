package org.airfit.fleet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.airfit.files.CellWords;

/**
 * Fields of a row in one text, in a fixed order: Spark puts them together where its columns are, so that one text
 * instead of twenty crosses to the library, and equal texts are equal inputs.
 *
 * @param paths the fields as a job file names them, such as "supply.pressure"
 * @param numbers those of them that are numbers where they look like numbers
 * @param truths those that are true or false
 * @param lists those that may be several words with a bar between
 */
record PackedFields(
    List<String> paths, Set<String> numbers, Set<String> truths, Set<String> lists) {

  /** A control sign that no text of a file may hold: it stands between two fields. */
  private static final char BETWEEN = '\u001f';

  private static final Pattern NUMBER = Pattern.compile("-?[0-9]{1,9}(\\.[0-9]{1,12})?");

  /** Something in the row stands where it cannot be told apart. */
  static final class UnreadableException extends Exception {
    private static final long serialVersionUID = 1L;
  }

  /**
   * Writes how Spark puts the fields together.
   *
   * @param column the SQL of the column of a field; empty for none
   */
  String sql(Function<String, String> column) {
    return paths.stream()
        .map(column)
        .map(each -> each.isEmpty() ? "''" : "coalesce(cast(" + each + " as string), '')")
        .collect(Collectors.joining(", ", "concat_ws(char(" + (int) BETWEEN + "), ", ")"));
  }

  /** Whether nothing is told. */
  static boolean isBlank(String packed) {
    for (int i = 0; i < packed.length(); i++) {
      char c = packed.charAt(i);
      if (c != BETWEEN && c != ' ') {
        return false;
      }
    }
    return true;
  }

  /** Puts texts together as Spark does. */
  String pack(Map<String, String> values) {
    return paths.stream()
        .map(path -> values.getOrDefault(path, ""))
        .collect(Collectors.joining(String.valueOf(BETWEEN)));
  }

  /** The texts of all fields, blank ones too. */
  private List<String> texts(String packed) throws UnreadableException {
    List<String> texts = new ArrayList<>(paths.size());
    int from = 0;
    for (int at = packed.indexOf(BETWEEN); at >= 0; at = packed.indexOf(BETWEEN, from)) {
      texts.add(packed.substring(from, at));
      from = at + 1;
    }
    texts.add(packed.substring(from));
    if (texts.size() != paths.size()) {
      throw new UnreadableException();
    }
    return texts;
  }

  /** What stands in a field; empty for nothing. */
  String text(String packed, String path) throws UnreadableException {
    int at = paths.indexOf(path);
    return at < 0 ? "" : texts(packed).get(at);
  }

  /** The fields that are told, as a file has them: objects in objects. */
  Map<String, Object> unpack(String packed) throws UnreadableException {
    List<String> texts = texts(packed);
    Map<String, Object> root = new LinkedHashMap<>();
    for (int i = 0; i < texts.size(); i++) {
      if (!texts.get(i).isBlank()) {
        put(root, paths.get(i), value(paths.get(i), texts.get(i)));
      }
    }
    return root;
  }

  private Object value(String path, String text) {
    String plain = text.strip();
    if (numbers.contains(path) && NUMBER.matcher(plain).matches()) {
      return Double.valueOf(plain);
    }
    if (truths.contains(path) && (plain.equals("true") || plain.equals("false"))) {
      return Boolean.valueOf(plain);
    }
    return lists.contains(path) && plain.indexOf('|') >= 0 ? CellWords.split(plain) : text;
  }

  @SuppressWarnings("unchecked") // the objects are those that were put here
  private static void put(Map<String, Object> root, String path, Object value) {
    Map<String, Object> object = root;
    int from = 0;
    for (int at = path.indexOf('.'); at >= 0; at = path.indexOf('.', from)) {
      object = (Map<String, Object>)
          object.computeIfAbsent(path.substring(from, at), name -> new LinkedHashMap<>());
      from = at + 1;
    }
    object.put(path.substring(from), value);
  }
}
