package org.airfit.counter.stock;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.airfit.files.CellWords;
import org.jspecify.annotations.Nullable;

/**
 * A field of an article: what a catalogue file and a table of articles call it, and what the database does.
 *
 * <p>A field inside an object, such as "capacity.flow", has the name of both.
 */
enum Column {
  KIND("kind", "kind", Form.TEXT),
  ID("id", "number", Form.TEXT),
  NAME("name", "name", Form.TEXT),
  PRICE("price", "price", Form.MONEY),
  COST("cost", "cost", Form.MONEY),
  RATED("rated", "rated", Form.TEXT),
  COLDEST("coldest", "coldest", Form.TEXT),
  HOTTEST("hottest", "hottest", Form.TEXT),
  MATERIAL("material", "material", Form.TEXT),
  KEPT_FOR("keptFor", "kept_for", Form.TEXT),
  SLEEVE_GUARDED("sleeveGuarded", "sleeve_guarded", Form.YES),
  VENTED("vented", "vented", Form.YES),
  ALREADY_THERE("alreadyThere", "already_there", Form.YES),
  TAKES("takes", "takes", Form.WORDS),
  PROFILE("profile", "profile", Form.TEXT),
  END("end", "one_end", Form.TEXT),
  OTHER_END("otherEnd", "other_end", Form.TEXT),
  OUTLETS("outlets", "outlets", Form.WORDS),
  CAPACITY("capacity", "capacity", Form.TEXT),
  CAPACITY_CONDUCTANCE("capacity.conductance", "capacity_conductance", Form.TEXT),
  CAPACITY_RATIO("capacity.criticalPressureRatio", "capacity_ratio", Form.NUMBER),
  CAPACITY_FLOW("capacity.flow", "capacity_flow", Form.TEXT),
  CAPACITY_INLET("capacity.inlet", "capacity_inlet", Form.TEXT),
  CAPACITY_DROP("capacity.drop", "capacity_drop", Form.TEXT),
  CAPACITY_TEMPERATURE("capacity.temperature", "capacity_temperature", Form.TEXT),
  DROOP("droop", "droop", Form.TEXT),
  AT_FLOW("atFlow", "at_flow", Form.TEXT),
  HOSE("hose", "hose", Form.TEXT),
  BORE("bore", "bore", Form.TEXT),
  SIZE("size", "nominal_size", Form.TEXT),
  LENGTH("length", "length", Form.TEXT),
  WALL("wall", "wall", Form.TEXT),
  ROUGHNESS("roughness", "roughness", Form.TEXT),
  FITTINGS("fittings", "fittings", Form.COUNTED),
  OUTSIDE_DIAMETER("outsideDiameter", "outside_diameter", Form.TEXT),
  STATIC_DISSIPATIVE("staticDissipative", "static_dissipative", Form.YES),
  FROM("from", "range_from", Form.TEXT),
  TO("to", "range_to", Form.TEXT),
  UP_TO("upTo", "up_to", Form.TEXT),
  THREAD("thread", "thread", Form.TEXT);

  /** How a value is written. */
  private enum Form {
    TEXT,
    MONEY,
    NUMBER,
    /** A number, or words that count pieces. */
    COUNTED,
    YES,
    WORDS
  }

  private static final int LONGEST_NUMBER = 100;
  private static final int LONGEST_TEXT = 400;
  private static final int MOST_WORDS = 1000;
  private static final Pattern NUMBER = Pattern.compile("[0-9]{1,9}(\\.[0-9]{1,9})?");
  private static final Pattern MONEY = Pattern.compile("[0-9]{1,15}(\\.[0-9]{1,4})?");
  private static final int USUAL_DECIMALS = 2;
  private static final Map<String, Column> BY_FIELD =
      Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(Column::field, each -> each));

  private final String field;
  private final String sql;
  private final Form form;

  Column(String field, String sql, Form form) {
    this.field = field;
    this.sql = sql;
    this.form = form;
  }

  /** What a catalogue file and a table of articles call it. */
  String field() {
    return field;
  }

  /** What the database calls it. */
  String sql() {
    return sql;
  }

  /** Whether it holds several words, which stand in a table of their own. */
  boolean isWords() {
    return form == Form.WORDS;
  }

  /** The columns of the table of articles itself. */
  static List<Column> single() {
    return Arrays.stream(values()).filter(column -> !column.isWords()).toList();
  }

  /** The column that a heading names. */
  static Optional<Column> named(String field) {
    return Optional.ofNullable(BY_FIELD.get(field));
  }

  /**
   * A cell that is not blank as the value that is stored.
   *
   * @throws IllegalArgumentException if it cannot be stored so; the message tells what can
   */
  Object ofCell(String cell) {
    String text = cell.strip();
    if (!StorableText.isStorable(cell)) {
      throw new IllegalArgumentException("holds NUL or half of a sign; leave that out");
    }
    return switch (form) {
      case TEXT -> fitting(text, this == ID ? LONGEST_NUMBER : LONGEST_TEXT);
      case COUNTED -> fitting(text, LONGEST_TEXT);
      case MONEY ->
        new BigDecimal(
            required(
                text,
                MONEY,
                "an amount from 0 to below 100000000 with a point and at most 4 decimals, such as 12.50"));
      case NUMBER ->
        new BigDecimal(required(
            text,
            NUMBER,
            "a number from 0 to 999999999 with a point and at most 9 decimals, such as 0.3"));
      case YES -> yes(text);
      case WORDS -> words(cell);
    };
  }

  private static String fitting(String text, int most) {
    if (text.length() > most) {
      throw new IllegalArgumentException(
          "has " + text.length() + " letters; at most " + most + " are accepted");
    }
    return text;
  }

  private static String required(String text, Pattern pattern, String accepted) {
    if (!pattern.matcher(text).matches()) {
      throw new IllegalArgumentException("was \"" + text + "\"; accepted: " + accepted);
    }
    return text;
  }

  private static Boolean yes(String text) {
    if (text.equalsIgnoreCase("yes")) {
      return true;
    }
    if (text.equalsIgnoreCase("no")) {
      return false;
    }
    throw new IllegalArgumentException("is not accepted; accepted: yes, no");
  }

  private static List<String> words(String cell) {
    List<String> words = CellWords.split(cell);
    if (words.size() > MOST_WORDS) {
      throw new IllegalArgumentException(
          "holds " + words.size() + " words; at most " + MOST_WORDS + " are accepted");
    }
    for (String word : words) {
      if (word.isEmpty()) {
        throw new IllegalArgumentException(
            "has an empty word; type one bar between, such as A | B");
      }
      fitting(word, LONGEST_TEXT);
    }
    return words;
  }

  /** Puts a stored value into the object of a catalogue file. */
  void putInto(Map<String, Object> article, Object stored) {
    int point = field.indexOf('.');
    if (point < 0) {
      article.put(field, plain(stored));
      return;
    }
    Object inner = article.computeIfAbsent(
        field.substring(0, point), name -> new LinkedHashMap<String, Object>());
    if (inner instanceof Map<?, ?> before) {
      Map<String, Object> object = new LinkedHashMap<>();
      before.forEach((name, value) -> object.put(String.valueOf(name), value));
      object.put(field.substring(point + 1), plain(stored));
      article.put(field.substring(0, point), object);
    }
  }

  private Object plain(Object stored) {
    if (stored instanceof BigDecimal number) {
      return form == Form.MONEY
          ? number
              .setScale(
                  Math.max(USUAL_DECIMALS, number.stripTrailingZeros().scale()),
                  RoundingMode.UNNECESSARY)
              .toPlainString()
          : number.doubleValue();
    }
    return form == Form.COUNTED
            && stored instanceof String text
            && NUMBER.matcher(text).matches()
        ? Double.valueOf(text)
        : stored;
  }

  /** Puts a stored value, or none, into a statement. */
  void set(PreparedStatement statement, int at, @Nullable Object stored) throws SQLException {
    if (stored == null) {
      statement.setNull(
          at,
          switch (form) {
            case MONEY, NUMBER -> Types.NUMERIC;
            case YES -> Types.BOOLEAN;
            case TEXT, COUNTED, WORDS -> Types.VARCHAR;
          });
    } else if (stored instanceof BigDecimal number) {
      statement.setBigDecimal(at, number);
    } else if (stored instanceof Boolean yes) {
      statement.setBoolean(at, yes);
    } else {
      statement.setString(at, String.valueOf(stored));
    }
  }

  /** Takes a stored value out of a row; null where there is none. */
  @Nullable
  Object get(ResultSet row, int at) throws SQLException {
    if (form == Form.MONEY || form == Form.NUMBER) {
      return row.getBigDecimal(at);
    }
    if (form == Form.YES) {
      boolean yes = row.getBoolean(at);
      return row.wasNull() ? null : yes;
    }
    return row.getString(at);
  }

  /** What a table of articles writes for the value of a field of a catalogue file. */
  static String cell(@Nullable Object plain) {
    if (plain instanceof List<?> words) {
      List<String> texts = new ArrayList<>();
      words.forEach(word -> texts.add(String.valueOf(word)));
      return CellWords.join(texts);
    }
    return plain == null
        ? ""
        : plain instanceof Boolean yes ? (yes ? "yes" : "no") : String.valueOf(plain);
  }
}
