package org.airfit.files;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonStreamContext;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.JsonTokenId;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** JSON text to plain values and back; the only class that knows the JSON library. */
public final class Json {

  /** Reads token by token: what binds texts to types is not needed, and its classes take time to load. */
  private static final JsonFactory FACTORY =
      JsonFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();

  private Json() {}

  /**
   * Reads a text.
   *
   * @param file the name of the file, for complaints
   * @param text the text of the file
   * @return the plain values, as {@link Document} lists them
   * @throws WrongFileException if the text is not JSON, is the word null, or a field stands twice in one object
   */
  public static Object read(String file, String text) throws WrongFileException {
    String json = text.startsWith("\ufeff") ? text.substring(1) : text; // editors put it there
    if (json.isBlank()) {
      throw new WrongFileException(
          file, "", "is empty; a JSON object is wanted, see docs/job-file.md");
    }
    try (JsonParser parser = FACTORY.createParser(json)) {
      parser.nextToken();
      @Nullable Object value = value(parser);
      if (parser.nextToken() != null) {
        throw new JsonParseException(
            parser,
            "more stands behind its end; a file holds one object",
            parser.currentTokenLocation());
      }
      if (value == null) {
        throw new WrongFileException(
            file, "", "holds null; a JSON object is wanted, see docs/job-file.md");
      }
      return value;
    } catch (JsonProcessingException e) {
      throw JsonSlip.of(json, offset(e), place(e), told(e)).in(file);
    } catch (IOException e) {
      throw new UncheckedIOException("a text in memory could not be read", e);
    }
  }

  /** The value whose first token was read; the parser limits how deep it may be. */
  private static @Nullable Object value(JsonParser parser) throws IOException {
    return switch (parser.currentTokenId()) {
      case JsonTokenId.ID_START_OBJECT -> {
        Map<String, @Nullable Object> object = new LinkedHashMap<>();
        for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
          parser.nextToken();
          object.put(name, value(parser));
        }
        yield object;
      }
      case JsonTokenId.ID_START_ARRAY -> {
        List<@Nullable Object> list = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
          list.add(value(parser));
        }
        yield list;
      }
      case JsonTokenId.ID_STRING -> parser.getText();
      case JsonTokenId.ID_NUMBER_INT, JsonTokenId.ID_NUMBER_FLOAT -> parser.getNumberValue();
      case JsonTokenId.ID_TRUE -> true;
      case JsonTokenId.ID_FALSE -> false;
      case JsonTokenId.ID_NULL -> null;
      default -> throw new IllegalStateException("no value begins with " + parser.currentToken());
    };
  }

  private static int offset(JsonProcessingException slip) {
    return slip.getLocation() == null ? -1 : (int) slip.getLocation().getCharOffset();
  }

  /** At which line and column, and at which field, such as "line 14, column 9, at line[2].reach". */
  private static String place(JsonProcessingException slip) {
    String place = slip.getLocation() == null
        ? ""
        : "line " + slip.getLocation().getLineNr() + ", column "
            + slip.getLocation().getColumnNr();
    String field =
        slip.getProcessor() instanceof JsonParser parser ? path(parser.getParsingContext()) : "";
    return field.isEmpty() ? place : place + ", at " + field;
  }

  private static String path(JsonStreamContext reached) {
    StringBuilder path = new StringBuilder();
    for (JsonStreamContext at = reached; at != null && !at.inRoot(); at = at.getParent()) {
      if (at.inArray()) {
        path.insert(0, "[" + (at.getCurrentIndex() + 1) + "]");
      } else if (at.getCurrentName() != null) {
        path.insert(0, "." + at.getCurrentName());
      }
    }
    return path.length() > 0 && path.charAt(0) == '.' ? path.substring(1) : path.toString();
  }

  /** What the library says, without what speaks of its own settings. */
  private static String told(JsonProcessingException slip) {
    return String.valueOf(slip.getOriginalMessage())
        .replaceAll(", from `[^`]*`", "")
        .replaceAll(": enable `[^`]*` to allow", "");
  }

  /**
   * Writes an object, indented by two.
   *
   * @param object plain values, as {@link Document} lists them
   * @return the text, which ends with a line feed
   */
  public static String write(Map<String, Object> object) {
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
    printer.indentArraysWith(new DefaultIndenter("  ", "\n"));
    try {
      return new JsonMapper().writer(printer).writeValueAsString(object) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(
          "object must hold maps, lists, texts, numbers and truth values only", e);
    }
  }
}
