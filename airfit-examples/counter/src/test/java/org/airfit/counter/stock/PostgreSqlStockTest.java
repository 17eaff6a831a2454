package org.airfit.counter.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import org.junit.jupiter.api.BeforeAll;

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
