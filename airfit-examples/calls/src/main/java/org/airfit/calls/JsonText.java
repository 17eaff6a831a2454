package org.airfit.calls;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.files.WrongFileException;
import org.jspecify.annotations.Nullable;

/**
 * JSON text as plain values: maps, lists, texts, numbers, truth values and null. Strict, as the reader of the programs
 * is: a field that stands twice in one object is refused, and so is what follows the value.
 *
 * <p>The grammar is that of RFC 8259.
 */
final class JsonText {

  /** Deeper than any file of airfit; the reader of the programs stops there too. */
  static final int DEEPEST = 1000;

  private static final int LONGEST_NUMBER = 1000;

  /** So many digits fit into a long whatever they are. */
  private static final int DIGITS_OF_LONG = 18;

  private final String file;
  private final String text;
  private final List<Object> path = new ArrayList<>();
  private int at;

  private JsonText(String file, String text) {
    this.file = file;
    this.text = text;
  }

  /** Reads a text; null alone is no file. */
  static Object read(String file, String text) throws WrongFileException {
    JsonText reader = new JsonText(file, text.startsWith("\ufeff") ? text.substring(1) : text);
    if (reader.text.isBlank()) {
      throw new WrongFileException(
          file, "", "is empty; a JSON object is wanted, see docs/job-file.md");
    }
    @Nullable Object value = reader.value();
    reader.blanks();
    if (reader.at < reader.text.length()) {
      throw reader.wrong("something stands behind the end of the first value");
    }
    if (value == null) {
      throw new WrongFileException(
          file, "", "holds null; a JSON object is wanted, see docs/job-file.md");
    }
    return value;
  }

  private @Nullable Object value() throws WrongFileException {
    blanks();
    if (at >= text.length()) {
      throw ended();
    }
    char c = text.charAt(at);
    if (c == '{') {
      return object();
    }
    if (c == '[') {
      return list();
    }
    if (c == '"') {
      return string();
    }
    if (c == '-' || isDigit(c)) {
      return number();
    }
    return word();
  }

  private Map<String, @Nullable Object> object() throws WrongFileException {
    enter("");
    Map<String, @Nullable Object> fields = new LinkedHashMap<>();
    if (!closes('}')) {
      do {
        blanks();
        if (at >= text.length()) {
          throw ended();
        }
        if (text.charAt(at) != '"') {
          throw wrong(
              text.charAt(at) == '}'
                  ? "the comma in front of } is one too many"
                  : curlyOr("the name of a field goes in quotation marks"));
        }
        String name = string();
        path.set(path.size() - 1, name);
        if (fields.containsKey(name)) {
          throw wrong("the field \"" + name + "\" stands twice in one object");
        }
        blanks();
        if (at >= text.length() || text.charAt(at) != ':') {
          throw at >= text.length() ? ended() : wrong("a colon is missing behind \"" + name + "\"");
        }
        at++;
        fields.put(name, value());
      } while (goesOn('}'));
    }
    path.remove(path.size() - 1);
    return fields;
  }

  private List<@Nullable Object> list() throws WrongFileException {
    enter(1);
    List<@Nullable Object> items = new ArrayList<>();
    if (!closes(']')) {
      do {
        path.set(path.size() - 1, items.size() + 1);
        blanks();
        if (!items.isEmpty() && at < text.length() && text.charAt(at) == ']') {
          throw wrong("the comma in front of ] is one too many");
        }
        items.add(value());
      } while (goesOn(']'));
    }
    path.remove(path.size() - 1);
    return items;
  }

  private void enter(Object place) throws WrongFileException {
    at++;
    path.add(place);
    if (path.size() > DEEPEST) {
      throw wrong("lists and objects stand more than " + DEEPEST + " deep in each other");
    }
  }

  /** Whether an object or a list ends before it begins. */
  private boolean closes(char end) {
    blanks();
    if (at < text.length() && text.charAt(at) == end) {
      at++;
      return true;
    }
    return false;
  }

  /** Whether a comma follows; else the end must. */
  private boolean goesOn(char end) throws WrongFileException {
    blanks();
    if (at >= text.length()) {
      throw ended();
    }
    char c = text.charAt(at);
    if (c != ',' && c != end) {
      throw wrong(curlyOr("a comma is missing"));
    }
    at++;
    return c == ',';
  }

  private String string() throws WrongFileException {
    at++;
    StringBuilder escaped = new StringBuilder();
    int from = at;
    while (at < text.length()) {
      char c = text.charAt(at);
      if (c == '"') {
        String rest = text.substring(from, at);
        at++;
        return escaped.length() == 0 ? rest : escaped.append(rest).toString();
      }
      if (c < ' ') {
        throw wrong(
            "a line end or tab stands in a text; close its quotation mark, \", on its line");
      }
      at++;
      if (c == '\\') {
        escaped.append(text, from, at - 1).append(escape());
        from = at;
      }
    }
    throw ended();
  }

  private char escape() throws WrongFileException {
    if (at >= text.length()) {
      throw ended();
    }
    char c = text.charAt(at++);
    return switch (c) {
      case '"', '\\', '/' -> c;
      case 'b' -> '\b';
      case 'f' -> '\f';
      case 'n' -> '\n';
      case 'r' -> '\r';
      case 't' -> '\t';
      case 'u' -> unicode();
      default -> throw wrong("\\" + c + " is no sign; for a backslash type two");
    };
  }

  private char unicode() throws WrongFileException {
    int code = 0;
    for (int i = 0; i < 4; i++) {
      int digit = at < text.length() ? hex(text.charAt(at)) : -1;
      if (digit < 0) {
        throw wrong("four digits from 0 to F follow \\u");
      }
      code = 16 * code + digit;
      at++;
    }
    return (char) code;
  }

  private static int hex(char c) {
    if (isDigit(c)) {
      return c - '0';
    }
    if (c >= 'a' && c <= 'f') {
      return c - 'a' + 10;
    }
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
  }

  private Number number() throws WrongFileException {
    int from = at;
    if (text.charAt(at) == '-') {
      at++;
    }
    int first = at;
    digits();
    if (at - first > 1 && text.charAt(first) == '0') {
      throw wrong("a number does not begin with a nought before other digits");
    }
    boolean isWhole = true;
    if (at < text.length() && text.charAt(at) == '.') {
      isWhole = false;
      at++;
      digits();
    }
    if (at < text.length() && (text.charAt(at) == 'e' || text.charAt(at) == 'E')) {
      isWhole = false;
      at++;
      if (at < text.length() && (text.charAt(at) == '+' || text.charAt(at) == '-')) {
        at++;
      }
      digits();
    }
    String told = text.substring(from, at);
    if (told.length() > LONGEST_NUMBER) {
      throw wrong("a number has more than " + LONGEST_NUMBER + " signs");
    }
    if (at < text.length() && ",]} \t\r\n".indexOf(text.charAt(at)) < 0) {
      throw wrong("a value with its unit goes in quotation marks, such as \"" + told + " mm\"");
    }
    return isWhole ? whole(told) : (Number) Double.parseDouble(told);
  }

  private static Number whole(String told) {
    if (told.length() > DIGITS_OF_LONG) {
      BigInteger large = new BigInteger(told);
      return large.bitLength() > 63 ? large : (Number) large.longValue();
    }
    long value = Long.parseLong(told);
    return value == (int) value ? (Number) (int) value : (Number) value;
  }

  private void digits() throws WrongFileException {
    int from = at;
    while (at < text.length() && isDigit(text.charAt(at))) {
      at++;
    }
    if (at == from) {
      throw at >= text.length() ? ended() : wrong("a digit is wanted in a number");
    }
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private @Nullable Object word() throws WrongFileException {
    int from = at;
    while (at < text.length() && Character.isLetterOrDigit(text.charAt(at))) {
      at++;
    }
    String word = text.substring(from, at);
    return switch (word) {
      case "true" -> true;
      case "false" -> false;
      case "null" -> null;
      default -> throw unknown(word, from);
    };
  }

  private WrongFileException unknown(String word, int from) {
    at = from;
    return wrong(curlyOr(
        word.isEmpty()
            ? "a value is missing"
            : "'" + word
                + "' is no word here; type true or false, or put a text in quotation marks"));
  }

  private void blanks() {
    while (at < text.length()) {
      char c = text.charAt(at);
      if (c != ' ' && c != '\n' && c != '\r' && c != '\t') {
        return;
      }
      at++;
    }
  }

  /** Curly quotation marks are the slip behind most others. */
  private String curlyOr(String complaint) {
    boolean isCurly = at < text.length()
        && "\u2018\u2019\u201c\u201d\u201e\u201f\u00ab\u00bb".indexOf(text.charAt(at)) >= 0;
    return isCurly
        ? "curly quotation marks; type the straight one, \", on both sides of a text"
        : complaint;
  }

  private WrongFileException ended() {
    return wrong("it ends too soon; a quotation mark, ] or } is not closed");
  }

  private WrongFileException wrong(String complaint) {
    int line = 1;
    int start = 0;
    for (int i = text.indexOf('\n'); i >= 0 && i < at; i = text.indexOf('\n', i + 1)) {
      line++;
      start = i + 1;
    }
    StringBuilder place =
        new StringBuilder("line " + line + ", column " + (Math.min(at, text.length()) - start + 1));
    StringBuilder field = new StringBuilder();
    for (Object each : path) {
      if (each instanceof Integer) {
        field.append('[').append(each).append(']');
      } else if (!each.equals("")) {
        field.append(field.length() == 0 ? "" : ".").append(each);
      }
    }
    if (field.length() > 0) {
      place.append(", at ").append(field);
    }
    return new WrongFileException(file, place.toString(), "is not JSON: " + complaint);
  }

  /** Writes plain values, indented by two, as the programs do; ends with a line feed. */
  static String write(Object value) {
    StringBuilder out = new StringBuilder();
    write(out, value, "\n");
    return out.append('\n').toString();
  }

  private static void write(StringBuilder out, @Nullable Object value, String indent) {
    String deeper = indent + "  ";
    if (value instanceof Map<?, ?> map) {
      String before = "{";
      for (Map.Entry<?, ?> field : map.entrySet()) {
        out.append(before).append(deeper);
        quoted(out, String.valueOf(field.getKey()));
        out.append(" : ");
        write(out, field.getValue(), deeper);
        before = ",";
      }
      out.append(map.isEmpty() ? "{ }" : indent + "}");
    } else if (value instanceof List<?> list) {
      String before = "[";
      for (Object item : list) {
        out.append(before).append(deeper);
        write(out, item, deeper);
        before = ",";
      }
      out.append(list.isEmpty() ? "[ ]" : indent + "]");
    } else if (value instanceof String text) {
      quoted(out, text);
    } else {
      out.append(value);
    }
  }

  private static void quoted(StringBuilder out, String text) {
    out.append('"');
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '"' -> out.append("\\\"");
        case '\\' -> out.append("\\\\");
        case '\n' -> out.append("\\n");
        case '\r' -> out.append("\\r");
        case '\t' -> out.append("\\t");
        case '\b' -> out.append("\\b");
        case '\f' -> out.append("\\f");
        default -> {
          if (c < ' ') {
            out.append("\\u00").append(c < 16 ? "0" : "");
            out.append(Integer.toHexString(c).toUpperCase(java.util.Locale.ROOT));
          } else {
            out.append(c);
          }
        }
      }
    }
    out.append('"');
  }
}
