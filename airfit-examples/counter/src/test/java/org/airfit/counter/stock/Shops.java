package org.airfit.counter.stock;

import java.io.StringReader;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.files.Disk;
import org.airfit.files.ShopCatalogue;

/** Invented shops for tests. */
public final class Shops {

  static final Path JOBS = Path.of("..", "jobs");

  static final Clock NOON = Clock.fixed(Instant.parse("2026-11-29T12:00:00Z"), ZoneOffset.UTC);

  private static final String SOCKET =
      "socket,%s,%s,%s,%s,gannet,3/8 NPT female,Cv 1.4,16 bar(g)\n";

  static final String HEADING = "kind,id,name,price,quantity,takes,end,capacity,rated\n";

  private Shops() {}

  /** A shop with the profiles of an example and no articles. */
  static Stock boatyard(Database database) throws Exception {
    return described(database, JOBS.resolve("boatyard").resolve("catalogue.json"));
  }

  /** The same of any example, in the currency of its catalogue. */
  static Stock described(Database database, Path catalogue) throws Exception {
    ShopCatalogue example = Disk.catalogue(catalogue);
    Stock stock = Stock.of(database, NOON);
    stock.describe(
        example.name(),
        Optional.ofNullable(fields(catalogue).get("currency")).map(String::valueOf),
        example.profiles());
    return stock;
  }

  /**
   * A shop with the articles of an example, some pieces of each on the shelf.
   *
   * @param database where it stands
   * @param catalogue the catalogue file of the example
   * @return its stock
   * @throws Exception if that cannot be
   */
  public static Stock stocked(Database database, Path catalogue) throws Exception {
    Stock stock = described(database, catalogue);
    load(
        stock,
        Stock.toTable(fields(catalogue))
            .lines()
            .map(line -> line
                + (line.startsWith("id,") || line.startsWith("kind,") ? ",quantity\n" : ",9\n"))
            .collect(Collectors.joining()));
    return stock;
  }

  static Map<String, Object> fields(Path file) throws Exception {
    return Disk.fields(file, new ArrayList<>());
  }

  /** A row of a table with {@link #HEADING}. */
  static String socket(String number, String name, String price, String quantity) {
    return SOCKET.formatted(number, name, price, quantity);
  }

  static LoadReport load(Stock stock, String table) throws Exception {
    return stock.load("stock.csv", new StringReader(table));
  }
}
