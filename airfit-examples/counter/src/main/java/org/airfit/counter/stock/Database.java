package org.airfit.counter.stock;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;

/** A database with the tables of a stock, brought up to date when it is opened. */
public final class Database implements AutoCloseable {

  private static final String H2 = "jdbc:h2:";
  private static final String POSTGRESQL = "jdbc:postgresql:";

  /** What H2 says where another process has the file. */
  private static final int OPEN_ELSEWHERE = 90020;

  /** So many transactions run at once; our own choice. */
  private static final int MOST_CONNECTIONS = 10;

  /** So long waits who finds all connections busy [ms]; our own choice. */
  private static final long LONGEST_WAIT = 10_000;

  /** So often a transaction is tried that another one got in the way of; our own choice. */
  private static final int MOST_TRIES = 5;

  /** The class of SQL states for transactions that were rolled back for the sake of others. */
  private static final String ROLLED_BACK = "40";

  private final HikariDataSource pool;
  private final ExecutorService threads = Executors.newCachedThreadPool(task -> {
    Thread thread = new Thread(task, "stock");
    thread.setDaemon(true);
    return thread;
  });

  private Database(HikariDataSource pool) {
    this.pool = pool;
  }

  /**
   * Obtains the address of a database in a folder, which H2 keeps there.
   *
   * @param folder the folder; it is made where it is not there
   * @return the address, for {@link #open}
   */
  public static String embedded(Path folder) {
    return H2 + "file:" + folder.toAbsolutePath().resolve("stock");
  }

  /**
   * Opens a database, and makes its tables or brings them up to date.
   *
   * @param url its address, which begins with "jdbc:h2:" or "jdbc:postgresql:"
   * @return the database
   * @throws SQLException if it cannot be opened or brought up to date
   * @throws IllegalArgumentException if {@code url} is of another kind
   */
  public static Database open(String url) throws SQLException {
    Database database = connect(url);
    try {
      Flyway.configure()
          .dataSource(database.pool)
          .locations(locations(url))
          .load()
          .migrate();
      return database;
    } catch (FlywayException e) {
      database.close();
      throw new SQLException("the tables cannot be brought up to date: " + e.getMessage(), e);
    }
  }

  /** Where the migrations are: those for all databases, and those of one kind alone. */
  private static String[] locations(String url) {
    String all = "classpath:org/airfit/counter/stock";
    return url.startsWith(H2)
        ? new String[] {all, "classpath:org/airfit/counter/h2"}
        : new String[] {all};
  }

  /** Opens a database whose tables are up to date. */
  static Database connect(String url) throws SQLException {
    HikariConfig config = new HikariConfig();
    config.setJdbcUrl(complete(Objects.requireNonNull(url, "url")));
    config.setMaximumPoolSize(MOST_CONNECTIONS);
    config.setMinimumIdle(1);
    config.setConnectionTimeout(LONGEST_WAIT);
    config.setAutoCommit(false);
    config.setPoolName("stock");
    try {
      return new Database(new HikariDataSource(config));
    } catch (RuntimeException e) {
      throw new SQLException(
          "the database cannot be opened: "
              + (isOpenElsewhere(e)
                  ? "another process has it open, such as a service that runs; stop that, do this, and start it"
                      + " again. PostgreSQL lets several in at once."
                  : e.getMessage()),
          e);
    }
  }

  private static boolean isOpenElsewhere(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLException sql && sql.getErrorCode() == OPEN_ELSEWHERE) {
        return true;
      }
    }
    return false;
  }

  /**
   * Adds what an answer relies on. H2 tells that a transaction is stored up to half a second before it is, and may
   * store the half of it, unless its write delay is 0.
   */
  private static String complete(String url) {
    if (url.startsWith(H2)) {
      String asked = url.toUpperCase(Locale.ROOT);
      if (asked.contains("WRITE_DELAY")) {
        throw new IllegalArgumentException(
            "url must not set WRITE_DELAY: it is 0 here, so that nothing stored is lost");
      }
      return url + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE"
          + (asked.contains("LOCK_TIMEOUT") ? "" : ";LOCK_TIMEOUT=" + LONGEST_WAIT);
    }
    if (url.startsWith(POSTGRESQL)) {
      return url.contains("reWriteBatchedInserts")
          ? url
          : url + (url.contains("?") ? "&" : "?") + "reWriteBatchedInserts=true";
    }
    throw new IllegalArgumentException(
        "url must begin with " + H2 + " or " + POSTGRESQL + ", was another; give such a one");
  }

  /** What runs in a transaction; tried again, it begins anew. */
  interface Work<T> {
    T on(Connection connection) throws SQLException;
  }

  /** Runs work in one transaction: all of it is stored, or nothing. */
  <T> T change(Work<T> work) throws SQLException {
    for (int tries = 1; ; tries++) {
      try {
        return run(work, Connection.TRANSACTION_READ_COMMITTED);
      } catch (SQLException e) {
        if (tries == MOST_TRIES
            || e.getSQLState() == null
            || !e.getSQLState().startsWith(ROLLED_BACK)) {
          throw e;
        }
      }
    }
  }

  /** Reads what stands there at one moment, in as many statements as it takes. */
  <T> T read(Work<T> work) throws SQLException {
    return run(work, Connection.TRANSACTION_REPEATABLE_READ);
  }

  /**
   * Runs work on a thread of its own and waits for its end, even where the caller is interrupted, who stays so: H2
   * closes its file for all when a thread is interrupted that reads or writes it.
   */
  private <T> T run(Work<T> work, int isolation) throws SQLException {
    Future<T> running = threads.submit(() -> runHere(work, isolation));
    boolean isInterrupted = false;
    try {
      while (true) {
        try {
          return running.get();
        } catch (InterruptedException e) {
          isInterrupted = true;
        }
      }
    } catch (ExecutionException e) {
      if (e.getCause() instanceof SQLException wrong) {
        throw wrong;
      }
      if (e.getCause() instanceof RuntimeException wrong) {
        throw wrong;
      }
      throw new IllegalStateException("work on the database failed", e.getCause());
    } finally {
      if (isInterrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private <T> T runHere(Work<T> work, int isolation) throws SQLException {
    try (Connection connection = pool.getConnection()) {
      connection.setTransactionIsolation(isolation);
      boolean isDone = false;
      try {
        T result = work.on(connection);
        connection.commit();
        isDone = true;
        return result;
      } finally {
        if (!isDone) {
          connection.rollback();
        }
      }
    }
  }

  /** Closes all connections. */
  @Override
  public void close() {
    threads.shutdown();
    pool.close();
  }
}
