package org.airfit.counter.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The stock in a real PostgreSQL, whose address is told by a property; each test has a schema of its own. */
class PostgreSqlStockTest extends StockContract {

  private static final String URL = System.getProperty("airfit.postgresql", "");

  private static final boolean WANTED = Boolean.getBoolean("airfit.postgresql.wanted");

  private static int schemas;

  @BeforeAll
  static void requireServer() {
    if (WANTED) {
      assertThat(URL).as("-Dairfit.postgresql, see .ci/postgresql").startsWith("jdbc:postgresql:");
    }
    assumeTrue(
        !URL.isEmpty(),
        "skipped: no PostgreSQL; start one by .ci/postgresql and tell -Dairfit.postgresql=jdbc:…");
  }

  /** PostgreSQL tells which transaction wrote a row. */
  @Test
  void a_row_that_says_what_is_there_is_not_written_again() throws Exception {
    try (Database database = opened()) {
      Stock stock = Shops.boatyard(database);
      String one = Shops.socket("S-1", "one", "1.00", "5");
      String other = Shops.socket("S-2", "two", "2.00", "5");
      Shops.load(stock, Shops.HEADING + one + other);
      List<String> before = writers(database);
      assertThat(Shops.load(stock, Shops.HEADING + one + other).stored()).isEqualTo(2);
      assertThat(writers(database)).isEqualTo(before);
      for (String changed : List.of(
          Shops.socket("S-2", "two", "2.01", "5"),
          Shops.socket("S-2", "two", "2.01", "6"),
          Shops.socket("S-2", "2", "2.01", "6"))) {
        List<String> last = writers(database);
        assertThat(Shops.load(stock, Shops.HEADING + one + changed).stored()).isEqualTo(2);
        List<String> now = writers(database);
        assertThat(now.get(0)).isEqualTo(before.get(0));
        assertThat(now.get(1)).isNotEqualTo(last.get(1));
      }
    }
  }

  private static List<String> writers(Database database) throws Exception {
    return database.read(connection -> {
      List<String> writers = new ArrayList<>();
      try (PreparedStatement find =
              connection.prepareStatement("SELECT xmin::text FROM article ORDER BY number");
          ResultSet row = find.executeQuery()) {
        while (row.next()) {
          writers.add(row.getString(1));
        }
      }
      return writers;
    });
  }

  @Override
  Database opened() throws Exception {
    String schema = "stock_" + ProcessHandle.current().pid() + "_" + schemas++;
    try (Connection connection = DriverManager.getConnection(URL);
        PreparedStatement create = connection.prepareStatement("CREATE SCHEMA " + schema)) {
      create.execute();
    }
    return Database.open(URL + (URL.contains("?") ? "&" : "?") + "currentSchema=" + schema);
  }
}
