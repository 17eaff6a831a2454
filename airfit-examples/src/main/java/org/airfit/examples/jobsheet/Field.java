package org.airfit.examples.jobsheet;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * A place in a JSON file, or in a table, that knows its name, so that every complaint can say where it is.
 *
 * <p>Each object remembers which of its fields were asked for: {@link #requireNothingElse()} finds the misspelt ones.
 */
final class Field {

  private static final JsonMapper MAPPER = JsonMapper.builder()
      .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
      .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
      .build();

  private final String file;
  private final String name;
  private final JsonNode node;
  private final boolean ofTable;
  private final Set<String> known = new LinkedHashSet<>();

  private Field(String file, String name, JsonNode node, boolean ofTable) {
    this.file = file;
    this.name = name;
    this.node = node;
    this.ofTable = ofTable;
  }

  /** A row of a table, with its filled cells by the names of their columns. */
  static Field ofRow(String file, int number, Map<String, String> cells) {
    ObjectNode row = MAPPER.createObjectNode();
    cells.forEach(row::put);
    return new Field(file, "row " + number, row, true);
  }

  /** Reads a file whose outermost value is an object. */
  static Field ofFile(Path path) throws WrongFileException {
    return ofText(String.valueOf(path.getFileName()), read(path, "a JSON file"));
  }

  /** The text of a file. */
  static String read(Path path, String kind) throws WrongFileException {
    String file = String.valueOf(path.getFileName());
    try {
      return Files.readString(path);
    } catch (NoSuchFileException e) {
      throw new WrongFileException(
          path.toString(), "", "there is no such file; give the path of " + kind);
    } catch (MalformedInputException e) {
      throw new WrongFileException(file, "", "is not text in UTF-8; save it as UTF-8");
    } catch (IOException e) {
      throw new WrongFileException(
          path.toString(), "", "can't be read (" + e.getClass().getSimpleName() + ")");
    }
  }

  /** Reads a text whose outermost value is an object. */
  static Field ofText(String file, String text) throws WrongFileException {
    if (text.isBlank()) {
      throw new WrongFileException(
          file, "", "is empty; a JSON object is wanted, see docs/job-file.md");
    }
    try {
      JsonNode root = MAPPER.readTree(text);
      if (!root.isObject()) {
        throw new WrongFileException(
            file, "", "holds " + kind(root) + "; a JSON object is wanted, see docs/job-file.md");
      }
      return new Field(file, "", root, false);
    } catch (JsonProcessingException e) {
      String where = e.getLocation() == null
          ? ""
          : "line " + e.getLocation().getLineNr() + ", column "
              + e.getLocation().getColumnNr();
      throw new WrongFileException(file, where, "is not JSON: " + e.getOriginalMessage());
    }
  }

  private static String kind(JsonNode node) {
    return switch (node.getNodeType()) {
      case OBJECT -> "an object";
      case ARRAY -> "a list";
      case STRING -> "the text \"" + node.textValue() + "\"";
      case NULL -> "null";
      default -> node.toString();
    };
  }

  private String path(String field) {
    if (ofTable) {
      return name + ", column " + field;
    }
    return name.isEmpty() ? field : name + "." + field;
  }

  /** A complaint about this place. */
  WrongFileException wrong(String complaint) {
    return new WrongFileException(file, name, complaint);
  }

  /** A field that may be missing. */
  Optional<Field> find(String field) throws WrongFileException {
    if (!node.isObject()) {
      throw wrong("was " + kind(node) + "; an object in braces is wanted");
    }
    known.add(field);
    JsonNode found = node.get(field);
    return found == null || found.isNull()
        ? Optional.empty()
        : Optional.of(new Field(file, path(field), found, ofTable));
  }

  /** A field that must be there. */
  Field field(String field, String accepted) throws WrongFileException {
    Optional<Field> found = find(field);
    if (found.isEmpty()) {
      throw new WrongFileException(file, path(field), "is missing; accepted: " + accepted);
    }
    return found.get();
  }

  /** Refuses a field nobody asked for: it is misspelt, or does not do what its writer thinks. */
  void requireNothingElse() throws WrongFileException {
    for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
      String field = names.next();
      if (!known.contains(field) && !field.startsWith("//")) {
        throw new WrongFileException(
            file, path(field), "is no field here; accepted: " + String.join(", ", known));
      }
    }
  }

  /** The items of a list. */
  List<Field> items() throws WrongFileException {
    if (!node.isArray()) {
      throw wrong("was " + kind(node) + "; a list in square brackets is wanted");
    }
    List<Field> items = new ArrayList<>();
    for (int i = 0; i < node.size(); i++) {
      items.add(new Field(file, name + "[" + (i + 1) + "]", node.get(i), false));
    }
    return items;
  }

  /** The words of a list; in a table they stand in one cell with a bar between. */
  List<String> words() throws WrongFileException {
    List<String> words = new ArrayList<>();
    if (ofTable) {
      for (String word : Csv.parts(text())) {
        if (word.isBlank()) {
          throw wrong("was \"" + text() + "\"; type the words with one bar between, such as A | B");
        }
        words.add(word);
      }
      return words;
    }
    for (Field item : items()) {
      words.add(item.text());
    }
    return words;
  }

  /** The names of the fields of an object, all of them taken as known. */
  List<String> names() throws WrongFileException {
    if (!node.isObject()) {
      throw wrong("was " + kind(node) + "; an object in braces is wanted");
    }
    List<String> names = new ArrayList<>();
    node.fieldNames().forEachRemaining(names::add);
    return names;
  }

  String text() throws WrongFileException {
    if (!node.isTextual() || node.textValue().isBlank()) {
      throw wrong("was " + kind(node) + "; a text in quotation marks is wanted");
    }
    return node.textValue();
  }

  /** A value with its unit, read by one of airfit's parsers; what the parser refuses is told with this place. */
  <T> T as(Function<String, T> parser) throws WrongFileException {
    String text = text();
    try {
      return parser.apply(text);
    } catch (IllegalArgumentException e) {
      String message = String.valueOf(e.getMessage());
      throw wrong(message.startsWith("\"") ? message : "\"" + text + "\": " + message);
    }
  }

  /** Something built from the fields below; what airfit refuses is told with this place. */
  <T> T build(Building<T> building) throws WrongFileException {
    try {
      return building.build();
    } catch (IllegalArgumentException e) {
      throw wrong(String.valueOf(e.getMessage()));
    }
  }

  /** What {@link #build} runs. */
  interface Building<T> {
    T build() throws WrongFileException;
  }

  double number() throws WrongFileException {
    if (ofTable) {
      if (!text().strip().matches("[0-9]{1,9}(\\.[0-9]{1,9})?")) {
        throw wrong("was \"" + text() + "\"; type a number with a point, such as 0.3");
      }
      return Double.parseDouble(text().strip());
    }
    if (!node.isNumber()) {
      throw wrong("was " + kind(node) + "; a number without quotation marks is wanted");
    }
    return node.doubleValue();
  }

  int wholeNumber() throws WrongFileException {
    if (ofTable) {
      if (!text().strip().matches("[0-9]{1,9}")) {
        throw wrong("was \"" + text() + "\"; type a whole number such as 5");
      }
      return Integer.parseInt(text().strip());
    }
    if (!node.isInt()) {
      throw wrong("was " + kind(node) + "; a whole number without quotation marks is wanted");
    }
    return node.intValue();
  }

  boolean yes() throws WrongFileException {
    if (ofTable) {
      return oneOf(List.of(true, false), choice -> choice ? "yes" : "no");
    }
    if (!node.isBoolean()) {
      throw wrong("was " + kind(node) + "; true or false is wanted, without quotation marks");
    }
    return node.booleanValue();
  }

  /** One of several words, compared without regard to case. */
  <T> T oneOf(List<T> choices, Function<T, String> word) throws WrongFileException {
    String text = text().strip();
    for (T choice : choices) {
      if (word.apply(choice).equalsIgnoreCase(text)) {
        return choice;
      }
    }
    throw wrong("was \"" + text + "\"; accepted: "
        + choices.stream().map(word).collect(Collectors.joining(", ")));
  }
}
