package org.airfit.counter.stock;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.files.Document;
import org.airfit.files.Json;
import org.airfit.files.WrongFileException;
import org.airfit.files.kept.KeptAnswer;

/** Answers kept for a claim, in a database, by the shop's own numbers. */
public final class KeptAnswers {

  private static final int LONGEST_NUMBER = 100;
  private static final String NUMBER = "number";
  private static final String SET = "set";
  private static final String CATALOGUE = "catalogue";

  /** The SQL state of a row that is there already. */
  private static final String THERE_ALREADY = "23505";

  private final Database database;

  private KeptAnswers(Database database) {
    this.database = database;
  }

  /**
   * Obtains the kept answers of a database.
   *
   * @param database the database
   * @return its kept answers
   */
  public static KeptAnswers of(Database database) {
    return new KeptAnswers(Objects.requireNonNull(database, "database"));
  }

  /**
   * Stores an answer. Stored again under its number, it is the same; an answer is never written over.
   *
   * @param number what the shop calls it, of 1 to 100 letters
   * @param answer the answer
   * @return whether it is stored under this number, now or from before; false where that number holds another answer,
   *     and nothing was stored
   * @throws SQLException if the database does not answer; nothing is stored then
   * @throws IllegalArgumentException if {@code number} is blank, longer than 100 letters or holds what no database
   *     stores (NUL, half of a sign)
   */
  public boolean store(String number, KeptAnswer answer) throws SQLException {
    Objects.requireNonNull(number, "number");
    Objects.requireNonNull(answer, "answer");
    if (number.isBlank() || number.length() > LONGEST_NUMBER) {
      throw new IllegalArgumentException(
          "number must have 1 to " + LONGEST_NUMBER + " letters, had " + number.length());
    }
    if (!StorableText.isStorable(number)) {
      throw new IllegalArgumentException(
          "number must be text that can be stored, held NUL or half of a sign; leave that out");
    }
    keep(answer.setHash(), answer.set());
    keep(answer.catalogueHash(), answer.catalogue());
    try {
      database.change(connection -> insert(connection, number, answer));
      return true;
    } catch (SQLException e) {
      if (!THERE_ALREADY.equals(e.getSQLState())) {
        throw e;
      }
      return hash(number).equals(Optional.of(answer.hash()));
    }
  }

  /** A text that is there is the same text: its hash says so. */
  private void keep(String hash, String text) throws SQLException {
    boolean isThere = database.read(connection -> {
      try (PreparedStatement find =
          connection.prepareStatement("SELECT 1 FROM kept_text WHERE sha256 = ?")) {
        find.setString(1, hash);
        try (ResultSet row = find.executeQuery()) {
          return row.next();
        }
      }
    });
    if (isThere) {
      return;
    }
    try {
      database.change(connection -> {
        try (PreparedStatement insert =
            connection.prepareStatement("INSERT INTO kept_text (sha256, text) VALUES (?, ?)")) {
          insert.setString(1, hash);
          insert.setString(2, text);
          return insert.executeUpdate();
        }
      });
    } catch (SQLException e) {
      if (!THERE_ALREADY.equals(e.getSQLState())) { // somebody else was first
        throw e;
      }
    }
  }

  private static int insert(Connection connection, String number, KeptAnswer answer)
      throws SQLException {
    try (PreparedStatement insert = connection.prepareStatement(
        "INSERT INTO kept_answer (number, kept_on, library, sha256, question_sha256, set_sha256,"
            + " catalogue_sha256, answer_sha256, answer) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
      Map<String, Object> rest = Document.fields(Json.read(number, answer.toText()));
      rest.remove(SET);
      rest.remove(CATALOGUE);
      rest.put(NUMBER, number);
      insert.setString(1, number);
      insert.setObject(2, answer.day());
      insert.setString(3, answer.library());
      insert.setString(4, answer.hash());
      insert.setString(5, answer.questionHash());
      insert.setString(6, answer.setHash());
      insert.setString(7, answer.catalogueHash());
      insert.setString(8, answer.answerHash());
      insert.setString(9, Json.write(rest));
      return insert.executeUpdate();
    } catch (WrongFileException e) {
      throw new IllegalStateException("a kept answer must be JSON", e);
    }
  }

  private Optional<String> hash(String number) throws SQLException {
    return database.read(connection -> {
      try (PreparedStatement find =
          connection.prepareStatement("SELECT sha256 FROM kept_answer WHERE number = ?")) {
        find.setString(1, number);
        try (ResultSet row = find.executeQuery()) {
          return row.next() ? Optional.of(row.getString(1)) : Optional.empty();
        }
      }
    });
  }

  /** The texts of a row, and what its columns say of them. */
  private record Row(String answer, String set, String catalogue, Map<String, String> columns) {}

  /** The columns that say again what the answer says. */
  private static Map<String, String> columns(ResultSet row) throws SQLException {
    Map<String, String> columns = new LinkedHashMap<>();
    columns.put("kept_on", row.getObject("kept_on", LocalDate.class).toString());
    for (String column : List.of(
        "library",
        "sha256",
        "question_sha256",
        "set_sha256",
        "catalogue_sha256",
        "answer_sha256")) {
      columns.put(column, row.getString(column));
    }
    return columns;
  }

  private static Map<String, String> columns(KeptAnswer answer) {
    return Map.of(
        "kept_on",
        answer.day().toString(),
        "library",
        answer.library(),
        "sha256",
        answer.hash(),
        "question_sha256",
        answer.questionHash(),
        "set_sha256",
        answer.setHash(),
        "catalogue_sha256",
        answer.catalogueHash(),
        "answer_sha256",
        answer.answerHash());
  }

  private static void requireSame(String number, String column, Object written, Object told)
      throws WrongFileException {
    if (!told.equals(written)) {
      throw new WrongFileException(
          number,
          column,
          "was changed after the answer was kept: the answer says " + told + ", the column says "
              + written + "; take an unchanged copy of the table");
    }
  }

  /**
   * Finds an answer.
   *
   * @param number what the shop calls it
   * @return the answer; empty where there is none of this number
   * @throws SQLException if the database does not answer
   * @throws WrongFileException if what stands in the database was changed after it was stored; the field is told
   */
  public Optional<KeptAnswer> find(String number) throws SQLException, WrongFileException {
    Objects.requireNonNull(number, "number");
    if (!StorableText.isStorable(number)) {
      return Optional.empty();
    }
    Optional<Row> found = database.read(connection -> {
      try (PreparedStatement find = connection.prepareStatement(
          "SELECT k.*, s.text AS set_text, c.text AS catalogue_text FROM kept_answer k"
              + " JOIN kept_text s ON s.sha256 = k.set_sha256"
              + " JOIN kept_text c ON c.sha256 = k.catalogue_sha256 WHERE k.number = ?")) {
        find.setString(1, number);
        try (ResultSet row = find.executeQuery()) {
          return row.next()
              ? Optional.of(new Row(
                  row.getString("answer"),
                  row.getString("set_text"),
                  row.getString("catalogue_text"),
                  columns(row)))
              : Optional.empty();
        }
      }
    });
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Map<String, Object> whole = Document.fields(Json.read(number, found.get().answer()));
    Object stored = whole.remove(NUMBER);
    if (stored != null) { // an answer that was stored by an earlier version does not tell it
      requireSame(number, NUMBER, number, stored);
    }
    whole.put(SET, Json.read(SET, found.get().set()));
    whole.put(CATALOGUE, Json.read(CATALOGUE, found.get().catalogue()));
    KeptAnswer read = KeptAnswer.read(number, Json.write(whole));
    Map<String, String> written = found.get().columns();
    for (Map.Entry<String, String> told : columns(read).entrySet()) {
      requireSame(
          number, told.getKey(), written.getOrDefault(told.getKey(), "none"), told.getValue());
    }
    return Optional.of(read);
  }

  /**
   * Lists what was kept on some days, such as those of a recall of parts.
   *
   * @param first the first day
   * @param last the last day
   * @return the numbers of the answers, by day and number
   * @throws SQLException if the database does not answer
   */
  public List<String> numbers(LocalDate first, LocalDate last) throws SQLException {
    Objects.requireNonNull(first, "first");
    Objects.requireNonNull(last, "last");
    return database.read(connection -> {
      try (PreparedStatement find = connection.prepareStatement(
          "SELECT number FROM kept_answer WHERE kept_on >= ? AND kept_on <= ? ORDER BY kept_on, number")) {
        find.setObject(1, first);
        find.setObject(2, last);
        List<String> numbers = new ArrayList<>();
        try (ResultSet row = find.executeQuery()) {
          while (row.next()) {
            numbers.add(row.getString(1));
          }
        }
        return List.copyOf(numbers);
      }
    });
  }
}
