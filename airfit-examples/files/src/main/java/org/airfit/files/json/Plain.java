package org.airfit.files.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.files.Printable;
import org.jspecify.annotations.Nullable;

/**
 * A JSON value as maps, lists, texts, {@link Numeral}s, truth values and null, whatever the settings of the mapper: a
 * field that stands twice, depth and length are refused here.
 */
final class Plain {

  /** Objects and lists inside one another. */
  static final int MOST_DEPTH = 32;

  /** Signs of a document, or bytes where it is read from bytes. */
  static final long MOST_LENGTH = 10L << 20;

  private static final int LONGEST_SHOWN = 60;

  private final JsonParser parser;

  private Plain(JsonParser parser) {
    this.parser = parser;
  }

  /**
   * A number as it stands.
   *
   * @param text its digits
   */
  record Numeral(String text) {

    double value() {
      return Double.parseDouble(text);
    }

    @Override
    public String toString() {
      return text;
    }
  }

  /** The value that begins at the parser's token; the parser stands at its last token then. */
  static @Nullable Object read(JsonParser parser) throws IOException {
    return new Plain(parser).value("");
  }

  private @Nullable Object value(String path) throws IOException {
    if (parser.getParsingContext().getNestingDepth() > MOST_DEPTH) {
      throw new WrongJsonException(
          parser, path, "is too deep; accepted: objects and lists up to " + MOST_DEPTH + " deep");
    }
    long signs = Math.max(
        parser.currentTokenLocation().getCharOffset(),
        parser.currentTokenLocation().getByteOffset());
    if (signs > MOST_LENGTH) {
      throw new WrongJsonException(
          parser, path, "is too long; accepted: a document of up to 10 MB");
    }
    JsonToken token = parser.currentToken();
    return switch (token) {
      case START_OBJECT -> object(path);
      case START_ARRAY -> list(path);
      case VALUE_STRING -> parser.getText();
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new Numeral(parser.getText());
      case VALUE_TRUE -> true;
      case VALUE_FALSE -> false;
      case VALUE_NULL -> null;
      default ->
        throw new WrongJsonException(parser, path, "holds " + token + "; accepted: plain JSON");
    };
  }

  private Map<String, @Nullable Object> object(String path) throws IOException {
    Map<String, @Nullable Object> fields = new LinkedHashMap<>();
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String name = parser.currentName();
      String place = path.isEmpty() ? shown(name) : path + "." + shown(name);
      if (fields.containsKey(name)) {
        throw new WrongJsonException(parser, place, "stands twice; leave one out");
      }
      parser.nextToken();
      fields.put(name, value(place));
    }
    return fields;
  }

  private List<@Nullable Object> list(String path) throws IOException {
    List<@Nullable Object> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(value(path + "[" + (items.size() + 1) + "]"));
    }
    return items;
  }

  /** A text of the document, short and harmless. */
  static String shown(String text) {
    return Printable.line(
        text.length() > LONGEST_SHOWN ? text.substring(0, LONGEST_SHOWN) + "…" : text);
  }

  /** What stands somewhere, for a complaint. */
  static String told(@Nullable Object value) {
    if (value == null) {
      return "null";
    }
    if (value instanceof Map) {
      return "an object";
    }
    if (value instanceof List) {
      return "a list";
    }
    return value instanceof String text ? "\"" + shown(text) + "\"" : shown(value.toString());
  }
}
