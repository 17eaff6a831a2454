package org.airfit.counter.stock;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The pieces on the shelf, those held for somebody among them.
 *
 * <p>A piece is taken by one statement that changes the row of its article only where enough are left, so that of two
 * who want the last one the second finds none. The rows of several articles are changed in the order of their numbers,
 * so that no two transactions wait for each other.
 */
public final class Shelf {

  /** So many articles may one reservation hold; our own choice. */
  private static final int MOST_ARTICLES = 1000;

  private static final int MOST_PIECES = 1_000_000;

  private static final int LONGEST_REFERENCE = 100;

  /** The SQL state of a row whose key is there already. */
  private static final String THERE_ALREADY = "23505";

  private final Database database;
  private final Clock clock;

  private Shelf(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Obtains the shelf of a database.
   *
   * @param database the database
   * @param clock tells when a reservation is made and ends
   * @return the shelf
   */
  public static Shelf of(Database database, Clock clock) {
    return new Shelf(
        Objects.requireNonNull(database, "database"), Objects.requireNonNull(clock, "clock"));
  }

  /**
   * Tells how many pieces of an article there are.
   *
   * @param number the number of the article
   * @return the pieces; empty where there is no such article
   * @throws SQLException if the database does not answer
   */
  public Optional<StockLevel> level(String number) throws SQLException {
    Objects.requireNonNull(number, "number");
    return database.read(connection -> level(connection, number));
  }

  private static Optional<StockLevel> level(Connection connection, String number)
      throws SQLException {
    if (!StorableText.isStorable(number)) {
      return Optional.empty();
    }
    try (PreparedStatement find =
        connection.prepareStatement("SELECT quantity, reserved FROM article WHERE number = ?")) {
      find.setString(1, number);
      try (ResultSet row = find.executeQuery()) {
        return row.next()
            ? Optional.of(new StockLevel(number, row.getInt(1), row.getInt(2)))
            : Optional.empty();
      }
    }
  }

  /**
   * Holds pieces for somebody: all that are wanted, or none. Asked for twice with one reference, the same pieces are
   * held once.
   *
   * @param reference what the caller calls the reservation, of 1 to 100 letters
   * @param pieces how many pieces of which articles, by their numbers
   * @return the answer
   * @throws SQLException if the database does not answer
   * @throws IllegalArgumentException if {@code reference} is blank, longer than 100 letters or holds what no database
   *     stores (NUL, half of a sign), {@code pieces} holds none or more than 1000 articles, or a count is not in
   *     [1, 1000000]
   */
  public ReserveAnswer reserve(String reference, Map<String, Integer> pieces) throws SQLException {
    Objects.requireNonNull(reference, "reference");
    SortedMap<String, Integer> wanted = new TreeMap<>(Objects.requireNonNull(pieces, "pieces"));
    if (reference.isBlank()) {
      throw new IllegalArgumentException("reference must not be blank, was \"" + reference
          + "\"; give 1 to " + LONGEST_REFERENCE + " letters");
    }
    if (reference.length() > LONGEST_REFERENCE) {
      throw new IllegalArgumentException(
          "reference must have 1 to " + LONGEST_REFERENCE + " letters, had " + reference.length());
    }
    if (!StorableText.isStorable(reference)) {
      throw new IllegalArgumentException(
          "reference must be text that can be stored, held NUL or half of a sign; leave that out");
    }
    if (wanted.isEmpty() || wanted.size() > MOST_ARTICLES) {
      throw new IllegalArgumentException(
          "pieces must be of 1 to " + MOST_ARTICLES + " articles, were of " + wanted.size());
    }
    wanted.forEach((number, count) -> {
      if (!(count >= 1 && count <= MOST_PIECES)) {
        throw new IllegalArgumentException(
            "pieces of " + number + " must be in [1, " + MOST_PIECES + "], were " + count);
      }
    });
    try {
      return database.change(connection -> hold(connection, reference, wanted));
    } catch (ShortException e) {
      return new ReserveAnswer.TooFew(e.shortages);
    } catch (SQLException e) {
      if (!THERE_ALREADY.equals(e.getSQLState())) {
        throw e;
      }
      Reservation before = find(reference).orElseThrow(() -> e);
      return before.pieces().equals(wanted)
          ? new ReserveAnswer.Held(before, false)
          : new ReserveAnswer.ReferenceTaken(before);
    }
  }

  private ReserveAnswer hold(
      Connection connection, String reference, SortedMap<String, Integer> wanted)
      throws SQLException {
    try (PreparedStatement insert = connection.prepareStatement(
        "INSERT INTO reservation (reference, state, made_at) VALUES (?, ?, ?)")) {
      insert.setString(1, reference);
      insert.setString(2, word(Reservation.State.HELD));
      insert.setObject(3, OffsetDateTime.now(clock));
      insert.executeUpdate();
    }
    List<ReserveAnswer.Shortage> shortages = new ArrayList<>();
    try (PreparedStatement take = connection.prepareStatement(
            "UPDATE article SET reserved = reserved + ? WHERE number = ? AND quantity - reserved >= ?");
        PreparedStatement line = connection.prepareStatement(
            "INSERT INTO reservation_line (reference, number, quantity) VALUES (?, ?, ?)")) {
      for (Map.Entry<String, Integer> each : wanted.entrySet()) {
        if (!takes(take, each.getKey(), each.getValue())) {
          shortages.add(new ReserveAnswer.Shortage(
              each.getKey(),
              each.getValue(),
              level(connection, each.getKey()).map(StockLevel::available)));
        } else {
          line.setString(1, reference);
          line.setString(2, each.getKey());
          line.setInt(3, each.getValue());
          line.executeUpdate();
        }
      }
    }
    if (!shortages.isEmpty()) {
      throw new ShortException(shortages);
    }
    return new ReserveAnswer.Held(new Reservation(reference, Reservation.State.HELD, wanted), true);
  }

  private static boolean takes(PreparedStatement take, String number, int pieces)
      throws SQLException {
    if (!StorableText.isStorable(number)) {
      return false; // so no article is called
    }
    take.setInt(1, pieces);
    take.setString(2, number);
    take.setInt(3, pieces);
    return take.executeUpdate() > 0;
  }

  /** Rolls the transaction back; not for callers. */
  private static final class ShortException extends SQLException {
    private static final long serialVersionUID = 1L;
    private final transient List<ReserveAnswer.Shortage> shortages;

    ShortException(List<ReserveAnswer.Shortage> shortages) {
      super("too few pieces");
      this.shortages = shortages;
    }
  }

  /**
   * Finds a reservation.
   *
   * @param reference what the caller calls it
   * @return the reservation; empty where there is none
   * @throws SQLException if the database does not answer
   */
  public Optional<Reservation> find(String reference) throws SQLException {
    Objects.requireNonNull(reference, "reference");
    return database.read(connection -> find(connection, reference));
  }

  private static Optional<Reservation> find(Connection connection, String reference)
      throws SQLException {
    if (!StorableText.isStorable(reference)) {
      return Optional.empty();
    }
    try (PreparedStatement head =
            connection.prepareStatement("SELECT state FROM reservation WHERE reference = ?");
        PreparedStatement lines = connection.prepareStatement(
            "SELECT number, quantity FROM reservation_line WHERE reference = ?")) {
      head.setString(1, reference);
      Reservation.State state;
      try (ResultSet row = head.executeQuery()) {
        if (!row.next()) {
          return Optional.empty();
        }
        state = Reservation.State.valueOf(row.getString(1).toUpperCase(Locale.ROOT));
      }
      Map<String, Integer> pieces = new TreeMap<>();
      lines.setString(1, reference);
      try (ResultSet row = lines.executeQuery()) {
        while (row.next()) {
          pieces.put(row.getString(1), row.getInt(2));
        }
      }
      return Optional.of(new Reservation(reference, state, pieces));
    }
  }

  /**
   * Takes the pieces of a reservation off the shelf: they were sold. What has ended before stays as it is.
   *
   * @param reference what the caller calls it
   * @return the reservation as it stands now; empty where there is none
   * @throws SQLException if the database does not answer
   */
  public Optional<Reservation> sell(String reference) throws SQLException {
    return end(reference, Reservation.State.SOLD);
  }

  /**
   * Gives the pieces of a reservation free again. What has ended before stays as it is.
   *
   * @param reference what the caller calls it
   * @return the reservation as it stands now; empty where there is none
   * @throws SQLException if the database does not answer
   */
  public Optional<Reservation> release(String reference) throws SQLException {
    return end(reference, Reservation.State.RELEASED);
  }

  private Optional<Reservation> end(String reference, Reservation.State state) throws SQLException {
    Objects.requireNonNull(reference, "reference");
    if (!StorableText.isStorable(reference)) {
      return Optional.empty();
    }
    return database.change(connection -> {
      int ended;
      try (PreparedStatement end = connection.prepareStatement(
          "UPDATE reservation SET state = ?, ended_at = ? WHERE reference = ? AND state = ?")) {
        end.setString(1, word(state));
        end.setObject(2, OffsetDateTime.now(clock));
        end.setString(3, reference);
        end.setString(4, word(Reservation.State.HELD));
        ended = end.executeUpdate();
      }
      Optional<Reservation> reservation = find(connection, reference);
      if (ended == 1) {
        try (PreparedStatement article = connection.prepareStatement(
            "UPDATE article SET reserved = reserved - ?, quantity = GREATEST(quantity - ?, 0) WHERE number = ?")) {
          for (Map.Entry<String, Integer> each :
              reservation.orElseThrow().pieces().entrySet()) {
            article.setInt(1, each.getValue());
            article.setInt(2, state == Reservation.State.SOLD ? each.getValue() : 0);
            article.setString(3, each.getKey());
            article.executeUpdate();
          }
        }
      }
      return reservation;
    });
  }

  private static String word(Reservation.State state) {
    return state.name().toLowerCase(Locale.ROOT);
  }
}
