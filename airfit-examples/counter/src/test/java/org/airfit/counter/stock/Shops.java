package org.airfit.counter.stock;

import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.airfit.files.Disk;
import org.airfit.files.Json;
import org.airfit.files.ShopCatalogue;

/** Invented shops for tests. */
final class Shops {

  static final Path JOBS = Path.of("..", "jobs");

  static final Clock NOON = Clock.fixed(Instant.parse("2026-11-29T12:00:00Z"), ZoneOffset.UTC);

  private static final String SOCKET =
      "socket,%s,%s,%s,%s,gannet,3/8 NPT female,Cv 1.4,16 bar(g)\n";

  static final String HEADING = "kind,id,name,price,quantity,takes,end,capacity,rated\n";

  private Shops() {}

  /** A shop with the profiles of an example and no articles. */
  static Stock boatyard(Database database) throws Exception {
    ShopCatalogue example = Disk.catalogue(JOBS.resolve("boatyard").resolve("catalogue.json"));
    Stock stock = Stock.of(database, NOON);
    stock.describe(example.name(), Optional.of("USD"), example.profiles());
    return stock;
  }

  /** A row of a table with {@link #HEADING}. */
  static String socket(String number, String name, String price, String quantity) {
    return SOCKET.formatted(number, name, price, quantity);
  }

  static LoadReport load(Stock stock, String table) throws Exception {
    return stock.load("stock.csv", new StringReader(table));
  }

  static Map<String, Object> fields(Path file) throws Exception {
    Map<String, Object> fields = new LinkedHashMap<>();
    ((Map<?, ?>) Json.read(file.toString(), Files.readString(file)))
        .forEach((name, value) -> fields.put(String.valueOf(name), value));
    return fields;
  }
}
