package org.airfit.counter.stock;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.airfit.files.CatalogueFile;
import org.airfit.files.Csv;
import org.airfit.files.WrongFileException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A table of articles as CSV: a heading with the names of the fields of a catalogue file, the quantity on the shelf and
 * the currency of the prices, and a row for each article.
 */
final class ArticleTable {

  /** Pieces on the shelf. */
  static final String QUANTITY = "quantity";

  /** What the prices are in. */
  static final String CURRENCY = "currency";

  /** So many rows may a table have; our own choice. */
  static final int MOST_ROWS = 1_000_000;

  /** So long may a heading be [letters]; our own choice. */
  private static final int LONGEST_HEADING = 16_384;

  private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");

  private final String file;
  private final Optional<String> currency;
  private final List<Article> articles = new ArrayList<>();
  private final List<Reject> rejects = new ArrayList<>();
  private final List<Article> repeats = new ArrayList<>();
  private final Set<String> numbers = new HashSet<>();
  private int rowsIn;

  private ArticleTable(String file, Optional<String> currency) {
    this.file = file;
    this.currency = currency;
  }

  /**
   * Reads a table.
   *
   * @param file its name, for complaints
   * @param text its text
   * @param currency that of the shop
   * @throws WrongFileException if the table as a whole cannot be read: its heading, its quotation marks or its letters
   */
  static ArticleTable read(String file, Reader text, Optional<String> currency)
      throws WrongFileException {
    ArticleTable table = new ArticleTable(file, currency);
    try {
      BufferedReader reader = new BufferedReader(text, 2 * LONGEST_HEADING);
      CSVFormat format = CSVFormat.RFC4180
          .builder()
          .setDelimiter(delimiter(reader))
          .setIgnoreEmptyLines(false)
          .get();
      try (CSVParser parser =
          CSVParser.builder().setReader(reader).setFormat(format).get()) {
        table.read(parser);
      }
    } catch (UncheckedIOException e) {
      throw table.unreadable(e.getCause() == null ? new IOException(e) : e.getCause());
    } catch (IOException e) {
      throw table.unreadable(e);
    }
    return table;
  }

  private WrongFileException unreadable(IOException slip) {
    return new WrongFileException(
        file,
        "",
        slip instanceof CharacterCodingException
            ? "is not text in UTF-8; save it as UTF-8"
            : "cannot be read as CSV: " + slip.getMessage()
                + "; close every quotation mark, and double those inside");
  }

  /** Spreadsheets in some countries separate cells by semicolons; the heading tells which. Skips a byte order mark. */
  private static String delimiter(BufferedReader reader) throws IOException {
    reader.mark(1);
    if (reader.read() != '\ufeff') {
      reader.reset();
    }
    reader.mark(LONGEST_HEADING);
    StringBuilder heading = new StringBuilder();
    for (int i = 0; i < LONGEST_HEADING - 1; i++) {
      int c = reader.read();
      if (c < 0 || (c == '\n' && heading.length() > 0)) {
        break;
      }
      heading.append((char) c);
    }
    reader.reset();
    long commas = heading.chars().filter(c -> c == ',').count();
    long semicolons = heading.chars().filter(c -> c == ';').count();
    return semicolons > commas ? ";" : ",";
  }

  private void read(CSVParser parser) throws WrongFileException {
    List<String> heading = null;
    for (CSVRecord cells : parser) {
      if (cells.stream().allMatch(String::isBlank)) {
        continue;
      }
      if (heading == null) {
        heading = heading(cells);
      } else {
        rowsIn++;
        if (rowsIn > MOST_ROWS) {
          throw new WrongFileException(
              file, "", "has more than " + MOST_ROWS + " rows; split the table");
        }
        read(heading, cells);
      }
    }
    if (heading == null) {
      throw new WrongFileException(
          file, "", "is empty; type a heading such as id,kind,name,price,quantity");
    }
  }

  private List<String> heading(CSVRecord cells) throws WrongFileException {
    List<String> heading = new ArrayList<>();
    Set<String> known = new LinkedHashSet<>();
    Arrays.stream(Column.values()).forEach(column -> known.add(column.field()));
    known.add(QUANTITY);
    known.add(CURRENCY);
    for (String cell : cells) {
      String name = cell.strip();
      if (!known.contains(name) && !name.startsWith("//")) {
        throw new WrongFileException(
            file,
            "row " + cells.getRecordNumber(),
            "\"" + name + "\" is no column here; accepted: " + String.join(", ", known)
                + ", and // in front of a name for a column that is passed over");
      }
      if (heading.contains(name)) {
        throw new WrongFileException(
            file,
            "row " + cells.getRecordNumber(),
            "column " + name + " stands twice; leave one out");
      }
      heading.add(name);
    }
    for (Column needed : List.of(Column.ID, Column.KIND, Column.NAME)) {
      if (!heading.contains(needed.field())) {
        throw new WrongFileException(
            file,
            "row " + cells.getRecordNumber(),
            "the column " + needed.field() + " is missing; each row tells id, kind and name");
      }
    }
    return heading;
  }

  private void read(List<String> heading, CSVRecord cells) {
    long row = cells.getRecordNumber();
    if (cells.size() != heading.size()) {
      reject(
          row,
          "",
          "",
          "has " + cells.size() + " cells, the heading " + heading.size()
              + "; put cells with a comma in quotation marks");
      return;
    }
    Map<Column, Object> values = new EnumMap<>(Column.class);
    Optional<Integer> quantity = Optional.empty();
    for (int i = 0; i < heading.size(); i++) {
      String name = heading.get(i);
      String cell = cells.get(i);
      if (cell.isBlank() || name.startsWith("//")) {
        continue;
      }
      try {
        if (name.equals(QUANTITY)) {
          quantity = Optional.of(pieces(cell.strip()));
        } else if (name.equals(CURRENCY)) {
          requireCurrency(cell.strip());
        } else {
          Column column = Column.named(name).orElseThrow();
          values.put(column, column.ofCell(cell));
        }
      } catch (IllegalArgumentException e) {
        reject(row, name, cell, String.valueOf(e.getMessage()));
        return;
      }
    }
    values.computeIfPresent(
        Column.KIND,
        (column, kind) -> Article.kind(String.valueOf(kind)).orElse(String.valueOf(kind)));
    add(new Article(row, values, quantity));
  }

  private static int pieces(String cell) {
    if (!WHOLE.matcher(cell).matches()) {
      throw new IllegalArgumentException(
          "was \"" + cell + "\"; accepted: a whole number of pieces from 0 to 999999999");
    }
    return Integer.parseInt(cell);
  }

  private void requireCurrency(String cell) {
    if (!currency.equals(Optional.of(cell))) {
      throw new IllegalArgumentException("must be that of the shop, "
          + currency.orElse("which has none") + "; airfit knows no rates");
    }
  }

  private void add(Article article) {
    for (Column needed : List.of(Column.ID, Column.KIND, Column.NAME)) {
      if (!article.values().containsKey(needed)) {
        reject(article.row(), needed.field(), "", "is empty; each row tells id, kind and name");
        return;
      }
    }
    String kind = String.valueOf(article.values().get(Column.KIND));
    if (Article.kind(kind).isEmpty()) {
      reject(
          article.row(),
          Column.KIND.field(),
          kind,
          "is no kind; accepted: " + String.join(", ", CatalogueFile.partKinds()) + ", "
              + String.join(", ", CatalogueFile.accessoryKinds()));
      return;
    }
    if (article.values().containsKey(Column.CAPACITY)) {
      for (Column other : article.values().keySet()) {
        if (other.field().startsWith("capacity.")) {
          reject(
              article.row(),
              other.field(),
              String.valueOf(article.values().get(other)),
              "stands beside capacity; keep one of the two");
          return;
        }
      }
    }
    (numbers.add(article.number()) ? articles : repeats).add(article);
  }

  private void reject(long row, String column, String value, String reason) {
    rejects.add(new Reject(row, column, value, reason));
  }

  /** The rows that can be stored as far as the table alone tells; of each id the first. */
  List<Article> articles() {
    return List.copyOf(articles);
  }

  /** Rows that could be stored too, each with an id that stands in a row above. */
  List<Article> repeats() {
    return List.copyOf(repeats);
  }

  /** The others. */
  List<Reject> rejects() {
    return List.copyOf(rejects);
  }

  int rowsIn() {
    return rowsIn;
  }

  /** Writes the articles of a catalogue file as a table, without what only an object can hold. */
  static String write(Collection<? extends Map<?, ?>> articles) {
    Set<Column> used = new LinkedHashSet<>();
    List<Map<Column, String>> rows = new ArrayList<>();
    for (Map<?, ?> article : articles) {
      Map<Column, String> cells = new EnumMap<>(Column.class);
      article.forEach((name, value) -> {
        if (value instanceof Map<?, ?> inner) {
          inner.forEach((field, each) -> put(cells, name + "." + field, each));
        } else {
          put(cells, String.valueOf(name), value);
        }
      });
      rows.add(cells);
      used.addAll(cells.keySet());
    }
    List<Column> columns = Arrays.stream(Column.values()).filter(used::contains).toList();
    List<List<String>> table = new ArrayList<>();
    table.add(columns.stream().map(Column::field).toList());
    for (Map<Column, String> cells : rows) {
      table.add(columns.stream().map(column -> cells.getOrDefault(column, "")).toList());
    }
    return Csv.write(table);
  }

  private static void put(Map<Column, String> cells, String field, Object value) {
    if (!field.startsWith("//")) {
      cells.put(
          Column.named(field)
              .orElseThrow(() -> new IllegalArgumentException(
                  "field " + field + " of an article has no column; leave it out")),
          Column.cell(value));
    }
  }
}
