package org.airfit.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.airfit.quantity.NearWord;
import org.airfit.quantity.Quantity;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.Range;
import org.jspecify.annotations.Nullable;

/**
 * A place in a file that knows its name, so that every complaint can say where it is.
 *
 * <p>Each object remembers which of its fields were asked for: {@link #requireNothingElse()} finds the misspelt ones.
 */
final class Field {

  /** Two numbers with a dash between them; a length such as 1-1/4 in is one. */
  private static final Pattern DASHED =
      Pattern.compile("^[0-9.]+[^0-9/]*[-\u2013\u2014]\\s*[0-9.]+(?![0-9./])");

  private final String file;
  private final String name;
  private final @Nullable Object value;
  private final Notation notation;
  private final String accepted;
  private final Set<String> known = new LinkedHashSet<>();

  private Field(
      String file, String name, @Nullable Object value, Notation notation, String accepted) {
    this.file = file;
    this.name = name;
    this.value = value;
    this.notation = notation;
    this.accepted = accepted;
  }

  /** The outermost object of a JSON file. */
  static Field of(Document document) throws WrongFileException {
    if (!(document.content() instanceof Map)) {
      throw new WrongFileException(
          document.name(),
          "",
          "holds " + Notation.kind(document.content())
              + "; a JSON object is wanted, see docs/job-file.md");
    }
    return new Field(document.name(), "", document.content(), Notation.JSON, "");
  }

  /** A file as a whole. */
  static Field ofFile(String file) {
    return new Field(file, "", Map.of(), Notation.TABLE, "");
  }

  /** A row of a table, with its filled cells by the names of their columns. */
  static Field ofRow(String file, int number, Map<String, String> cells) {
    return new Field(file, "row " + number, cells, Notation.TABLE, "");
  }

  /** The name of this place in its file, such as "tool.inlet". */
  String place() {
    return name;
  }

  /** A complaint about this place. */
  WrongFileException wrong(String complaint) {
    return new WrongFileException(file, name, complaint);
  }

  /** A complaint about the text that stands here: what it must be. */
  WrongFileException refused(String must) throws WrongFileException {
    return wrong("was \"" + text().strip() + "\"; " + must);
  }

  private Map<?, ?> object() throws WrongFileException {
    if (value instanceof Map<?, ?> object) {
      return object;
    }
    throw wrong("was " + Notation.kind(value) + "; an object in braces is wanted" + example());
  }

  /** What is accepted here, as the end of a complaint; empty where nobody said. */
  private String example() {
    return accepted.isEmpty() ? "" : ": " + accepted;
  }

  /** Whether an object stands here: fields in braces. */
  boolean isObject() {
    return value instanceof Map;
  }

  /** Whether a text stands here, with a unit or without. */
  boolean isText() {
    return value instanceof String;
  }

  /** Whether a list stands here. */
  boolean isList() {
    return value instanceof List;
  }

  /** A field that may be missing. */
  Optional<Field> find(String field) throws WrongFileException {
    return find(field, "");
  }

  /** A field that may be missing, and what is accepted in it. */
  Optional<Field> find(String field, String wanted) throws WrongFileException {
    Object found = object().get(field);
    known.add(field);
    return found == null
        ? Optional.empty()
        : Optional.of(new Field(file, notation.place(name, field), found, notation, wanted));
  }

  /** The value of a field that may be missing, and what is accepted in it. */
  <T> Optional<T> find(String field, String wanted, Function<String, T> parser)
      throws WrongFileException {
    Optional<Field> found = find(field, wanted);
    return found.isPresent() ? Optional.of(found.get().as(parser)) : Optional.empty();
  }

  /** A field that must be there. */
  Field field(String field, String wanted) throws WrongFileException {
    Optional<Field> found = find(field, wanted);
    if (found.isEmpty()) {
      String misspelt = misspelt(field);
      throw new WrongFileException(
          file, notation.place(name, field), "is missing" + misspelt + "; accepted: " + wanted);
    }
    return found.get();
  }

  /** A field of this object that is most likely a missing one misspelt, as the middle of a complaint. */
  private String misspelt(String missing) throws WrongFileException {
    List<String> others = names();
    others.removeAll(known);
    return NearWord.to(missing, others)
        .map(near -> "; \"" + near + "\" stands there, which is most likely meant")
        .orElse("");
  }

  /** A field that is true or false, and false where it is missing. */
  boolean flag(String field) throws WrongFileException {
    Optional<Field> found = find(field);
    return found.isPresent() && found.get().yes();
  }

  /** Refuses a field nobody asked for: it is misspelt, or does not do what its writer thinks. */
  void requireNothingElse() throws WrongFileException {
    for (String field : names()) {
      if (!known.contains(field) && !field.startsWith("//")) {
        throw new WrongFileException(
            file,
            notation.place(name, field),
            "is no field here" + NearWord.named(field, known) + "; accepted: "
                + String.join(", ", known));
      }
    }
  }

  /** The same object with another value of a field, or without it; nothing of it was asked for yet. */
  Field replacing(String field, Optional<Object> other) throws WrongFileException {
    Map<Object, Object> copy = new LinkedHashMap<>(object());
    copy.remove(field);
    other.ifPresent(instead -> copy.put(field, instead));
    return new Field(file, name, copy, notation, accepted);
  }

  /** The names of the fields of an object. */
  List<String> names() throws WrongFileException {
    List<String> names = new ArrayList<>();
    for (Object key : object().keySet()) {
      names.add(String.valueOf(key));
    }
    return names;
  }

  /** The items of a list. */
  List<Field> items() throws WrongFileException {
    if (!(value instanceof List<?> list)) {
      throw wrong(
          "was " + Notation.kind(value) + "; a list in square brackets is wanted" + example());
    }
    List<Field> items = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      items.add(new Field(file, name + "[" + (i + 1) + "]", list.get(i), notation, ""));
    }
    return items;
  }

  /** The words of a list; in a table they stand in one cell with a bar between. */
  List<String> words() throws WrongFileException {
    if (notation == Notation.TABLE) {
      return read(Notation::cellWords);
    }
    List<String> words = new ArrayList<>();
    for (Field item : items()) {
      words.add(item.text());
    }
    return words;
  }

  /** Values with their units: a list, or in a table one cell with a bar between. */
  <T> List<T> all(Function<String, T> parser) throws WrongFileException {
    List<T> values = new ArrayList<>();
    if (notation == Notation.TABLE) {
      for (String word : words()) {
        values.add(parsed(word, parser));
      }
    } else {
      for (Field item : items()) {
        values.add(item.as(parser));
      }
    }
    return values;
  }

  /** Whether words stand here: a text that is not the number that a cell of a table holds. */
  boolean isWords() {
    return value instanceof String words
        && (notation == Notation.JSON || !words.strip().matches("[0-9]*\\.?[0-9]*"));
  }

  String text() throws WrongFileException {
    return read(Notation::text);
  }

  double number() throws WrongFileException {
    double number = read(notation::number);
    build(() -> {
      Bounds.NUMBER.check(number);
      return number;
    });
    return number;
  }

  int wholeNumber() throws WrongFileException {
    return read(notation::wholeNumber);
  }

  boolean yes() throws WrongFileException {
    return read(notation::yes);
  }

  /** How a value is read; not a {@link Function}, because it may be given null. */
  private interface Reader<T> {
    T read(@Nullable Object value);
  }

  private <T> T read(Reader<T> reader) throws WrongFileException {
    try {
      return reader.read(value);
    } catch (IllegalArgumentException e) {
      throw wrong(String.valueOf(e.getMessage()));
    }
  }

  /** A value with its unit, read by one of airfit's parsers; what the parser refuses is told with this place. */
  <T> T as(Function<String, T> parser) throws WrongFileException {
    return one(parser, "give the one that holds");
  }

  /** One value of which the least is the worst that it can be: of a range it says which that is. */
  <Q extends Quantity<Q, ?>> Q least(Function<String, Q> parser) throws WrongFileException {
    return one(
        parser,
        sides -> "give the worst that it can be, which is the least"
            + quoted(sides, parser, /* isMost= */ false));
  }

  /** The same of which the most is the worst. */
  <Q extends Quantity<Q, ?>> Q most(Function<String, Q> parser) throws WrongFileException {
    return one(
        parser,
        sides -> "give the worst that it can be, which is the most"
            + quoted(sides, parser, /* isMost= */ true));
  }

  /** One end of a range as it is typed, with its unit; blank where it cannot be told. */
  private static <Q extends Quantity<Q, ?>> String quoted(
      Sides sides, Function<String, Q> parser, boolean isMost) {
    String last = sides.last();
    String first = sides.first();
    int unit = 0;
    while (unit < last.length() && "+-−./0123456789 ".indexOf(last.charAt(unit)) >= 0) {
      unit++;
    }
    try {
      Q second = parser.apply(last);
      Q begin;
      try {
        begin = parser.apply(first);
      } catch (IllegalArgumentException e) {
        first = first + " " + last.substring(unit);
        begin = parser.apply(first);
      }
      return ", \"" + ((begin.compareTo(second) > 0) == isMost ? first : last) + "\"";
    } catch (IllegalArgumentException e) {
      return "";
    }
  }

  /** The same, and what to give in place of a range. */
  <T> T one(Function<String, T> parser, String insteadOfRange) throws WrongFileException {
    return one(parser, sides -> insteadOfRange);
  }

  private <T> T one(Function<String, T> parser, Function<Sides, String> insteadOfRange)
      throws WrongFileException {
    refuseNumber();
    try {
      return parsed(text(), parser);
    } catch (WrongFileException e) {
      Optional<Sides> range = Sides.of(text()).filter(sides -> sides.areValues(parser));
      if (range.isPresent()) {
        throw wrong("was \"" + text().strip() + "\"; one value is wanted here, no range: "
            + insteadOfRange.apply(range.get()));
      }
      throw e;
    }
  }

  /** What one of airfit's parsers reads that takes a range too; what it refuses is told with this place. */
  <T> T typed(Function<String, T> parser) throws WrongFileException {
    refuseNumber();
    return parsed(text(), parser);
  }

  private void refuseNumber() throws WrongFileException {
    if (value instanceof Number) {
      throw wrong("was " + Notation.kind(value)
          + "; a value goes in quotation marks, with its unit if it has one"
          + example());
    }
  }

  /** What stands on both sides of a "to" or a dash, as it was typed. */
  private record Sides(String first, String last) {

    static Optional<Sides> of(String typed) {
      String text = (DASHED.matcher(typed).find() ? withTo(typed) : typed).strip();
      int to = text.indexOf(" to ");
      return to <= 0
          ? Optional.empty()
          : Optional.of(
              new Sides(text.substring(0, to).strip(), text.substring(to + 4).strip()));
    }

    /** Whether the last could be read alone, or begins with a number as the first does. */
    <T> boolean areValues(Function<String, T> parser) {
      if (startsWithNumber(first) && startsWithNumber(last)) {
        return true;
      }
      try {
        return parser.apply(last) != null;
      } catch (IllegalArgumentException e) {
        return false;
      }
    }
  }

  private static boolean startsWithNumber(String text) {
    return !text.isEmpty() && text.charAt(0) >= '0' && text.charAt(0) <= '9';
  }

  /** A value, or the two between which it lies, such as "90 to 110 psig". */
  <Q extends Quantity<Q, ?>> Range<Q> range(Function<String, Q> parser) throws WrongFileException {
    String text = value instanceof String told ? told : "";
    if (DASHED.matcher(text).find()) {
      throw wrong("was \"" + text + "\"; a range has the word to"
          + (text.chars().anyMatch(Character::isLetter) ? "" : " and a unit")
          + ": \"" + withTo(text)
          + (text.chars().anyMatch(Character::isLetter) ? "" : " …")
          + "\"" + (accepted.isEmpty() ? "" : "; accepted: " + accepted));
    }
    refuseNumber();
    try {
      return parsed(text(), typed -> Range.parse(typed, parser));
    } catch (WrongFileException e) {
      if (isTurned(text, parser)) {
        throw wrong("was \"" + text + "\"; the smaller value comes first");
      }
      throw e;
    }
  }

  private static String withTo(String dashed) {
    return dashed.replaceFirst("\\s*[-\u2013\u2014]\\s*", " to ");
  }

  /** Whether both values of a range can be read, and only their order is wrong. */
  private static <Q extends Quantity<Q, ?>> boolean isTurned(
      String text, Function<String, Q> parser) {
    try {
      Range.parse(text, parser);
      return false;
    } catch (QuantityFormatException e) {
      return false;
    } catch (IllegalArgumentException e) {
      return true;
    }
  }

  private <T> T parsed(String text, Function<String, T> parser) throws WrongFileException {
    try {
      return Bounds.within(parser.apply(text));
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

  /** One of several words, compared without regard to case. */
  <T> T oneOf(List<T> choices, Function<T, String> word) throws WrongFileException {
    if (value instanceof String empty && empty.isBlank()) {
      throw wrong("is empty; accepted: " + words(choices, word) + "; or leave it out");
    }
    String text = text().strip();
    for (T choice : choices) {
      if (word.apply(choice).equalsIgnoreCase(text)) {
        return choice;
      }
    }
    List<String> known = choices.stream().map(word).toList();
    throw wrong("was \"" + text + "\"" + TradeWord.named(text, known) + NearWord.named(text, known)
        + "; accepted: " + words(choices, word));
  }

  private static <T> String words(List<T> choices, Function<T, String> word) {
    return choices.stream().map(word).collect(Collectors.joining(", "));
  }
}
