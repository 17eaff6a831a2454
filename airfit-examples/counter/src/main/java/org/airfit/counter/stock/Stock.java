package org.airfit.counter.stock;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.Currency;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.files.CatalogueFile;
import org.airfit.files.Document;
import org.airfit.files.Json;
import org.airfit.files.ReferenceSetFile;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.GaugePressure;
import org.airfit.select.Accessory;
import org.airfit.select.Catalogue;
import org.airfit.select.Part;
import org.jspecify.annotations.Nullable;

/** The catalogue of a shop in a database: its profiles and its articles. */
public final class Stock {

  /** The name of a catalogue that was read out of a database, for complaints. */
  public static final String FILE = "stock.json";

  private static final String PROFILES = "profiles.json";

  /** So many rows are read and sent at once; our own choice. */
  private static final int CHUNK = 5000;

  private static final String LOCKED_SHOP =
      "SELECT name, currency, profile_set, version FROM shop WHERE id = 1 FOR UPDATE";

  private static final String SHOP =
      "SELECT name, currency, profile_set, version FROM shop WHERE id = 1";

  private static final List<Column> COLUMNS = Column.single();

  private final Database database;
  private final Clock clock;

  private Stock(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Obtains the stock of a database.
   *
   * @param database the database
   * @param clock tells when a table was loaded
   * @return the stock
   */
  public static Stock of(Database database, Clock clock) {
    return new Stock(
        Objects.requireNonNull(database, "database"), Objects.requireNonNull(clock, "clock"));
  }

  /** What the shop is, beside its articles. */
  private record ShopRow(String name, Optional<String> currency, String profileSet, long version) {

    ReferenceSet set() throws SQLException {
      try {
        return ReferenceSetFile.read(profiles());
      } catch (WrongFileException e) {
        throw new SQLException("the profiles of the shop cannot be read: " + e.getMessage(), e);
      }
    }

    private Document profiles() throws WrongFileException {
      return Document.of(PROFILES, Json.read(PROFILES, profileSet));
    }

    /** A catalogue file of some articles, which names the profiles. */
    Document document(String file, List<Object> parts, List<Object> accessories) {
      Map<String, Object> content = head();
      content.put("profileSet", PROFILES);
      content.put("parts", parts);
      content.put("accessories", accessories);
      return new Document(file, content, path -> profiles());
    }

    Map<String, Object> head() {
      Map<String, Object> content = new LinkedHashMap<>();
      content.put("catalogue", name);
      currency.ifPresent(money -> content.put("currency", money));
      return content;
    }
  }

  private static Optional<ShopRow> shop(Connection connection, String query) throws SQLException {
    try (PreparedStatement find = connection.prepareStatement(query);
        ResultSet row = find.executeQuery()) {
      return row.next()
          ? Optional.of(new ShopRow(
              row.getString(1),
              Optional.ofNullable(row.getString(2)),
              row.getString(3),
              row.getLong(4)))
          : Optional.empty();
    }
  }

  private static SQLException noShop() {
    return new SQLException(
        "the database holds no shop yet; tell its name, currency and profiles first");
  }

  /**
   * Tells what the shop is. Its articles stay as they are: each must be one with these profiles and this currency too.
   *
   * @param name the name of its catalogue
   * @param currency what its prices are in, as ISO 4217 writes it; empty where it has none
   * @param profiles the plug profiles it knows
   * @throws SQLException if the database does not answer
   * @throws WrongFileException if an article that is there names a profile that is not among them, or has a price or a
   *     cost and the currency is missing or another than before
   * @throws IllegalArgumentException if {@code currency} is no code of ISO 4217
   */
  public void describe(String name, Optional<String> currency, ReferenceSet profiles)
      throws SQLException, WrongFileException {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(currency, "currency");
    currency.ifPresent(Stock::requireCode);
    String set = Json.write(ReferenceSetFile.toObject(profiles));
    Optional<WrongFileException> wrong = database.change(connection -> {
      Optional<ShopRow> before = shop(connection, LOCKED_SHOP);
      Optional<String> priced = before.flatMap(ShopRow::currency);
      if (priced.isPresent()
          && currency.isPresent()
          && !priced.equals(currency)
          && hasPrices(connection)) {
        return Optional.of(new WrongFileException(
            FILE,
            "currency",
            "must be " + priced.get() + " as that of the prices that are there, was "
                + currency.get() + "; airfit knows no rates"));
      }
      ShopRow shop =
          new ShopRow(name, currency, set, before.map(ShopRow::version).orElse(0L) + 1);
      try {
        CatalogueFile.read(Rows.of(connection, shop).document());
      } catch (WrongFileException e) {
        return Optional.of(e);
      }
      try (PreparedStatement put = connection.prepareStatement(
          before.isPresent()
              ? "UPDATE shop SET name = ?, currency = ?, profile_set = ?, version = ? WHERE id = 1"
              : "INSERT INTO shop (name, currency, profile_set, version, id) VALUES (?, ?, ?, ?, 1)")) {
        put.setString(1, shop.name());
        put.setString(2, currency.orElse(null));
        put.setString(3, set);
        put.setLong(4, shop.version());
        put.executeUpdate();
      }
      return Optional.empty();
    });
    if (wrong.isPresent()) {
      throw wrong.get();
    }
  }

  private static void requireCode(String currency) {
    if (Currency.getAvailableCurrencies().stream()
        .noneMatch(each -> each.getCurrencyCode().equals(currency))) {
      throw new IllegalArgumentException(
          "currency must be a code of ISO 4217 such as EUR or USD, was \"" + currency + "\"");
    }
  }

  private static boolean hasPrices(Connection connection) throws SQLException {
    try (PreparedStatement find = connection.prepareStatement(
            "SELECT COUNT(*) FROM article WHERE price IS NOT NULL OR cost IS NOT NULL");
        ResultSet row = find.executeQuery()) {
      return row.next() && row.getLong(1) > 0;
    }
  }

  /**
   * Loads a table of articles from a file. A row whose id is there already replaces that article, but for its
   * quantity where the table tells none; articles that do not stand in the table stay.
   *
   * @param file a CSV file in UTF-8
   * @return what became of its rows
   * @throws SQLException if the database does not answer; nothing is stored then
   * @throws WrongFileException if the table as a whole cannot be read; nothing is stored then
   * @throws IOException if the file cannot be opened
   */
  public LoadReport load(Path file) throws SQLException, WrongFileException, IOException {
    try (Reader reader =
        new InputStreamReader(Files.newInputStream(file), StandardCharsets.UTF_8.newDecoder())) {
      return load(String.valueOf(file.getFileName()), reader);
    }
  }

  /**
   * Loads a table of articles, all rows that can be stored in one transaction.
   *
   * @param file the name of the table, for complaints
   * @param text its text as CSV
   * @return what became of its rows
   * @throws SQLException if the database does not answer; nothing is stored then
   * @throws WrongFileException if the table as a whole cannot be read; nothing is stored then
   */
  public LoadReport load(String file, Reader text) throws SQLException, WrongFileException {
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(text, "text");
    Optional<String> currency = database
        .read(connection -> shop(connection, SHOP))
        .orElseThrow(Stock::noShop)
        .currency();
    ArticleTable table = ArticleTable.read(file, text, currency);
    return database.change(connection -> store(connection, file, table, currency));
  }

  private LoadReport store(
      Connection connection, String file, ArticleTable table, Optional<String> currency)
      throws SQLException {
    ShopRow shop = shop(connection, LOCKED_SHOP).orElseThrow(Stock::noShop);
    if (!shop.currency().equals(currency)) {
      throw new SQLException("the currency of the shop was changed meanwhile; load again");
    }
    List<Article> good = new ArrayList<>();
    Map<String, GaugePressure> ratings = new HashMap<>();
    List<Reject> rejects = new ArrayList<>(table.rejects());
    List<Article> articles = table.articles();
    for (int from = 0; from < articles.size(); from += CHUNK) {
      judge(
          shop,
          articles.subList(from, Math.min(from + CHUNK, articles.size())),
          good,
          ratings,
          rejects);
    }
    judgeRepeats(shop, table.repeats(), good, ratings, rejects);
    rejects.sort(Comparator.comparingLong(Reject::row));
    // Everyone who changes several articles does so in this order, or two might wait for each
    // other.
    good.sort(Comparator.comparing(Article::number));
    put(connection, good, ratings);
    LoadReport report = new LoadReport(file, table.rowsIn(), good.size(), rejects);
    note(connection, report);
    return report;
  }

  /** An id that stands again is taken where no row above could be. */
  private static void judgeRepeats(
      ShopRow shop,
      List<Article> repeats,
      List<Article> good,
      Map<String, GaugePressure> ratings,
      List<Reject> rejects) {
    if (repeats.isEmpty()) {
      return;
    }
    Map<String, Long> taken = new HashMap<>();
    good.forEach(article -> taken.put(article.number(), article.row()));
    for (Article repeat : repeats) {
      Long before = taken.get(repeat.number());
      if (before != null) {
        rejects.add(new Reject(
            repeat.row(),
            Column.ID.field(),
            repeat.number(),
            "stands in row " + before + " too, which was taken; keep one of the two"));
      } else {
        int others = good.size();
        judge(shop, List.of(repeat), good, ratings, rejects);
        if (good.size() > others) {
          taken.put(repeat.number(), repeat.row());
        }
      }
    }
  }

  /** Asks the reader of catalogue files; halves what it refuses until the row is found. */
  private static void judge(
      ShopRow shop,
      List<Article> articles,
      List<Article> good,
      Map<String, GaugePressure> ratings,
      List<Reject> rejects) {
    List<Object> parts = new ArrayList<>();
    List<Object> accessories = new ArrayList<>();
    articles.forEach(article -> Article.add(article.toObject(), parts, accessories));
    try {
      Catalogue read =
          CatalogueFile.read(shop.document(FILE, parts, accessories)).parts();
      Stream.concat(
              read.parts().stream().map(Part::facts),
              read.accessories().stream().map(Accessory::facts))
          .forEach(facts -> facts.rating().ifPresent(rated -> ratings.put(facts.id(), rated)));
      good.addAll(articles);
    } catch (WrongFileException e) {
      if (articles.size() == 1) {
        rejects.add(reject(articles.get(0), e));
      } else {
        int half = articles.size() / 2;
        judge(shop, articles.subList(0, half), good, ratings, rejects);
        judge(shop, articles.subList(half, articles.size()), good, ratings, rejects);
      }
    }
  }

  private static Reject reject(Article article, WrongFileException wrong) {
    String place = wrong.place();
    String field = place.substring(place.indexOf(']') + 1);
    Optional<Column> column =
        Column.named(field.startsWith(".") ? field.substring(1).replaceAll("\\[.*", "") : "");
    return new Reject(
        article.row(),
        column.map(Column::field).orElse(""),
        column.map(article.values()::get).map(Column::cell).orElse(""),
        wrong.complaint());
  }

  private static void put(
      Connection connection, List<Article> articles, Map<String, GaugePressure> ratings)
      throws SQLException {
    There there = There.of(connection, articles, ratings);
    List<Article> changed = articles.stream()
        .filter(
            each -> there.numbers.contains(each.number()) && !there.same.contains(each.number()))
        .toList();
    List<Article> added =
        articles.stream().filter(each -> !there.numbers.contains(each.number())).toList();
    List<Article> touched =
        articles.stream().filter(each -> !there.same.contains(each.number())).toList();
    List<Column> others = COLUMNS.stream().filter(column -> column != Column.ID).toList();
    String update = others.stream()
        .map(column -> column.sql() + " = ?")
        .collect(Collectors.joining(
            ", ",
            "UPDATE article SET ",
            ", rated_bar = ?, rated_read = ?, quantity = COALESCE(?, quantity) WHERE number = ?"));
    batch(connection, update, changed, (statement, article) -> {
      int at = setRating(statement, set(statement, article, others), article, ratings);
      if (article.quantity().isPresent()) {
        statement.setInt(at, article.quantity().get());
      } else {
        statement.setNull(at, Types.INTEGER);
      }
      statement.setString(at + 1, article.number());
      statement.addBatch();
    });
    String insert = COLUMNS.stream()
        .map(Column::sql)
        .collect(Collectors.joining(
            ", ",
            "INSERT INTO article (",
            ", rated_bar, rated_read, quantity) VALUES (" + "?, ".repeat(COLUMNS.size() + 2)
                + "?)"));
    added = added.stream().sorted(Comparator.comparingLong(Article::row)).toList();
    batch(connection, insert, added, (statement, article) -> {
      int at = setRating(statement, set(statement, article, COLUMNS), article, ratings);
      statement.setInt(at, article.quantity().orElse(0));
      statement.addBatch();
    });
    for (Column column : List.of(Column.TAKES, Column.OUTLETS)) {
      batch(
          connection,
          "DELETE FROM article_" + column.sql() + " WHERE number = ?",
          changed,
          (statement, article) -> {
            statement.setString(1, article.number());
            statement.addBatch();
          });
      batch(
          connection,
          "INSERT INTO article_" + column.sql() + " (number, place, word) VALUES (?, ?, ?)",
          touched,
          (statement, article) -> {
            int place = 0;
            for (Object word :
                article.values().get(column) instanceof List<?> list ? list : List.of()) {
              statement.setString(1, article.number());
              statement.setInt(2, place++);
              statement.setString(3, String.valueOf(word));
              statement.addBatch();
            }
          });
    }
  }

  /**
   * What stands there of the articles of a table.
   *
   * @param numbers the numbers of all articles that are there
   * @param same the numbers of those that stand there as the table tells them: nothing is written for these
   */
  private record There(Set<String> numbers, Set<String> same) {

    static There of(
        Connection connection, List<Article> articles, Map<String, GaugePressure> ratings)
        throws SQLException {
      Map<String, Article> told = new HashMap<>();
      articles.forEach(article -> told.put(article.number(), article));
      Map<Column, Map<String, List<String>>> words = new EnumMap<>(Column.class);
      for (Column column : List.of(Column.TAKES, Column.OUTLETS)) {
        words.put(column, words(connection, column));
      }
      There there = new There(new HashSet<>(), new HashSet<>());
      String query = COLUMNS.stream()
          .map(Column::sql)
          .collect(Collectors.joining(
              ", ", "SELECT ", ", rated_bar, rated_read, quantity, number FROM article"));
      try (PreparedStatement find = connection.prepareStatement(query)) {
        find.setFetchSize(CHUNK);
        try (ResultSet row = find.executeQuery()) {
          while (row.next()) {
            String number = row.getString(COLUMNS.size() + 4);
            there.numbers.add(number);
            Article article = told.get(number);
            if (article != null
                && isSame(row, article, ratings.get(number))
                && words.entrySet().stream()
                    .allMatch(each -> Objects.equals(
                        article.values().get(each.getKey()), each.getValue().get(number)))) {
              there.same.add(number);
            }
          }
        }
      }
      return there;
    }

    private static boolean isSame(ResultSet row, Article article, @Nullable GaugePressure rating)
        throws SQLException {
      for (int i = 0; i < COLUMNS.size(); i++) {
        if (!isSame(article.values().get(COLUMNS.get(i)), COLUMNS.get(i).get(row, i + 1))) {
          return false;
        }
      }
      int at = COLUMNS.size() + 1;
      double bar = row.getDouble(at);
      @Nullable Double read = row.wasNull() ? null : bar;
      int quantity = row.getInt(at + 2);
      return Objects.equals(rating == null ? null : rating.bar(), read)
          && Objects.equals(
              rating == null ? null : article.values().get(Column.RATED), row.getString(at + 1))
          && article.quantity().filter(each -> each != quantity).isEmpty();
    }

    private static boolean isSame(@Nullable Object told, @Nullable Object stored) {
      return (told instanceof BigDecimal one && stored instanceof BigDecimal other)
          ? one.compareTo(other) == 0
          : Objects.equals(told, stored);
    }
  }

  private static int set(PreparedStatement statement, Article article, List<Column> columns)
      throws SQLException {
    int at = 1;
    for (Column column : columns) {
      column.set(statement, at++, article.values().get(column));
    }
    return at;
  }

  /** The rating as a number, and the text that it was read out of. */
  private static int setRating(
      PreparedStatement statement, int at, Article article, Map<String, GaugePressure> ratings)
      throws SQLException {
    GaugePressure rating = ratings.get(article.number());
    if (rating == null) {
      statement.setNull(at, Types.DOUBLE);
    } else {
      statement.setDouble(at, rating.bar());
    }
    Column.RATED.set(statement, at + 1, rating == null ? null : article.values().get(Column.RATED));
    return at + 2;
  }

  private interface Adding {
    void to(PreparedStatement statement, Article article) throws SQLException;
  }

  private static void batch(
      Connection connection, String sql, Collection<Article> articles, Adding adding)
      throws SQLException {
    if (articles.isEmpty()) {
      return;
    }
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      int waiting = 0;
      for (Article article : articles) {
        adding.to(statement, article);
        if (++waiting == CHUNK) {
          statement.executeBatch();
          waiting = 0;
        }
      }
      statement.executeBatch();
    }
  }

  private static Set<String> numbers(Connection connection, String query) throws SQLException {
    Set<String> numbers = new HashSet<>();
    try (PreparedStatement find = connection.prepareStatement(query);
        ResultSet row = find.executeQuery()) {
      while (row.next()) {
        numbers.add(row.getString(1));
      }
    }
    return numbers;
  }

  private void note(Connection connection, LoadReport report) throws SQLException {
    try (PreparedStatement insert = connection.prepareStatement(
            "INSERT INTO loaded_file (name, rows_in, stored, rejected, loaded_at) VALUES (?, ?, ?, ?, ?)");
        PreparedStatement version =
            connection.prepareStatement("UPDATE shop SET version = version + 1 WHERE id = 1")) {
      String name = report.file();
      insert.setString(1, name.substring(0, Math.min(name.length(), 400)));
      insert.setInt(2, report.rowsIn());
      insert.setInt(3, report.stored());
      insert.setInt(4, report.rejects().size());
      insert.setObject(5, OffsetDateTime.now(clock));
      insert.executeUpdate();
      version.executeUpdate();
    }
  }

  /**
   * Tells which state the catalogue has: the number grows when what it holds changes, and not with a reservation.
   *
   * @return the number; 0 where the database holds no shop yet
   * @throws SQLException if the database does not answer
   */
  public long version() throws SQLException {
    return database.read(
        connection -> shop(connection, SHOP).map(ShopRow::version).orElse(0L));
  }

  /**
   * A catalogue as it stood at one moment.
   *
   * @param version which state it is, see {@link #version}
   * @param file the plain values of a catalogue file that stands alone, with its profiles in it: docs/job-file.md
   * @param catalogue what they say, with the whole set of profiles
   */
  public record Moment(long version, Map<String, Object> file, ShopCatalogue catalogue) {}

  /**
   * Reads the whole catalogue as it stands at one moment, as a file and as what it says.
   *
   * @return the catalogue
   * @throws SQLException if the database does not answer, or holds no shop yet
   * @throws WrongFileException if another program has put something into the database that is no article
   */
  public Moment moment() throws SQLException, WrongFileException {
    Rows rows = rows();
    return new Moment(rows.shop.version(), rows.file(), CatalogueFile.read(rows.document()));
  }

  /**
   * Reads the whole catalogue as it stands at one moment.
   *
   * @return the catalogue
   * @throws SQLException if the database does not answer, or holds no shop yet
   * @throws WrongFileException if another program has put something into the database that is no article
   */
  public ShopCatalogue catalogue() throws SQLException, WrongFileException {
    return CatalogueFile.read(rows().document());
  }

  /**
   * Reads some articles as a catalogue, such as those that a query of the view suitable_parts found, in the order of
   * the whole catalogue.
   *
   * @param numbers the numbers of the articles; one that is not there is passed over
   * @return the catalogue of these articles, with all profiles of the shop
   * @throws SQLException if the database does not answer, or holds no shop yet
   * @throws WrongFileException if another program has put something into the database that is no article
   */
  public ShopCatalogue catalogue(Collection<String> numbers)
      throws SQLException, WrongFileException {
    Set<String> wanted = Set.copyOf(numbers);
    Rows all = rows();
    return CatalogueFile.read(
        new Rows(all.shop, only(wanted, all.parts), only(wanted, all.accessories)).document());
  }

  private static List<Object> only(Set<String> numbers, List<Object> articles) {
    return articles.stream()
        .filter(article -> article instanceof Map<?, ?> fields
            && fields.get(Column.ID.field()) instanceof String number
            && numbers.contains(number))
        .toList();
  }

  /**
   * Tells which articles may be offered now: those of which a piece is on the shelf and not held, and those that are
   * the customer's own. A reservation changes it, and does not change {@link #version}.
   *
   * @return their numbers
   * @throws SQLException if the database does not answer
   */
  public Set<String> available() throws SQLException {
    return database.read(connection -> numbers(
        connection,
        "SELECT number FROM article WHERE quantity > reserved OR COALESCE(already_there, FALSE)"));
  }

  /**
   * Reads the whole catalogue as the plain values of a catalogue file that stands alone, with its profiles in it.
   *
   * @return the fields of the file, docs/job-file.md
   * @throws SQLException if the database does not answer, or holds no shop yet
   */
  public Map<String, Object> catalogueFile() throws SQLException {
    return rows().file();
  }

  /**
   * Reads the plug profiles that the shop knows.
   *
   * @return the profiles
   * @throws SQLException if the database does not answer, or holds no shop yet
   */
  public ReferenceSet profiles() throws SQLException {
    return database
        .read(connection -> shop(connection, SHOP))
        .orElseThrow(Stock::noShop)
        .set();
  }

  /** All that a catalogue holds, as plain values. */
  private record Rows(ShopRow shop, List<Object> parts, List<Object> accessories) {

    static Rows of(Connection connection, ShopRow shop) throws SQLException {
      Rows rows = new Rows(shop, new ArrayList<>(), new ArrayList<>());
      articles(connection, rows.parts, rows.accessories);
      return rows;
    }

    /** A catalogue file that names the profiles. */
    Document document() {
      return shop.document(FILE, parts, accessories);
    }

    /** A catalogue file with the profiles in it. */
    Map<String, Object> file() throws SQLException {
      Map<String, Object> file = shop.head();
      Object profiles = ReferenceSetFile.toObject(shop.set()).get("profiles");
      file.put("profiles", profiles == null ? List.of() : profiles);
      file.put("parts", parts);
      file.put("accessories", accessories);
      return file;
    }
  }

  private Rows rows() throws SQLException {
    return database.read(
        connection -> Rows.of(connection, shop(connection, SHOP).orElseThrow(Stock::noShop)));
  }

  private static void articles(Connection connection, List<Object> parts, List<Object> accessories)
      throws SQLException {
    Map<String, List<String>> takes = words(connection, Column.TAKES);
    Map<String, List<String>> outlets = words(connection, Column.OUTLETS);
    String query = COLUMNS.stream()
        .map(Column::sql)
        .collect(Collectors.joining(", ", "SELECT ", " FROM article ORDER BY place"));
    try (PreparedStatement find = connection.prepareStatement(query)) {
      find.setFetchSize(CHUNK);
      try (ResultSet row = find.executeQuery()) {
        while (row.next()) {
          Map<Column, Object> values = new EnumMap<>(Column.class);
          for (int i = 0; i < COLUMNS.size(); i++) {
            @Nullable Object value = COLUMNS.get(i).get(row, i + 1);
            if (value != null) {
              values.put(COLUMNS.get(i), value);
            }
          }
          String number = String.valueOf(values.get(Column.ID));
          put(values, Column.TAKES, takes.get(number));
          put(values, Column.OUTLETS, outlets.get(number));
          Article.add(Article.object(values), parts, accessories);
        }
      }
    }
  }

  private static void put(Map<Column, Object> values, Column column, @Nullable List<String> words) {
    if (words != null) {
      values.put(column, words);
    }
  }

  private static Map<String, List<String>> words(Connection connection, Column column)
      throws SQLException {
    Map<String, List<String>> words = new LinkedHashMap<>();
    try (PreparedStatement find = connection.prepareStatement(
            "SELECT number, word FROM article_" + column.sql() + " ORDER BY number, place");
        ResultSet row = find.executeQuery()) {
      while (row.next()) {
        words.computeIfAbsent(row.getString(1), number -> new ArrayList<>()).add(row.getString(2));
      }
    }
    return words;
  }

  /**
   * Writes the articles of a catalogue file as a table that {@link #load} takes.
   *
   * @param catalogue the fields of a catalogue file, docs/job-file.md
   * @return the table as CSV
   * @throws IllegalArgumentException if an article has a field that no column holds
   */
  public static String toTable(Map<String, ?> catalogue) {
    List<Map<?, ?>> articles = new ArrayList<>();
    for (String list : List.of("parts", "accessories")) {
      if (catalogue.get(list) instanceof List<?> items) {
        for (Object item : items) {
          if (item instanceof Map<?, ?> article) {
            articles.add(article);
          }
        }
      }
    }
    return ArticleTable.write(articles);
  }
}
