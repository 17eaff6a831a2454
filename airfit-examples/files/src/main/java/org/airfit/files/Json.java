package org.airfit.files;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonStreamContext;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** JSON text to plain values and back; the only class that knows the JSON library. */
public final class Json {

  private static final JsonMapper MAPPER = JsonMapper.builder()
      .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
      .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
      .build();

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
    try {
      @Nullable Object value = MAPPER.readValue(json, Object.class);
      if (value == null) {
        throw new WrongFileException(
            file, "", "holds null; a JSON object is wanted, see docs/job-file.md");
      }
      return value;
    } catch (JsonProcessingException e) {
      throw JsonSlip.of(json, offset(e), place(e), told(e)).in(file);
    }
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
      return MAPPER.writer(printer).writeValueAsString(object) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(
          "object must hold maps, lists, texts, numbers and truth values only", e);
    }
  }
}
