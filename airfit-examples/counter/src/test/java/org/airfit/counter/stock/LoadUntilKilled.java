package org.airfit.counter.stock;

import java.nio.file.Path;
import java.util.Map;

/**
 * A program that loads two tables in turn and reserves a piece behind each, until it is killed; it tells what it was
 * answered. Its arguments are the folder of the database, the two tables, and how many were stored before.
 */
final class LoadUntilKilled {

  private LoadUntilKilled() {}

  public static void main(String[] args) throws Exception {
    Database database = Database.connect(Database.embedded(Path.of(args[0])));
    Stock stock = Stock.of(database, Shops.NOON);
    Shelf shelf = Shelf.of(database, Shops.NOON);
    for (int n = Integer.parseInt(args[3]); ; n++) {
      stock.load(Path.of(args[1 + n % 2]));
      System.out.println("stored " + (n + 1));
      ReserveAnswer answer = shelf.reserve("piece " + n, Map.of(KilledLoadTest.SCARCE, 1));
      System.out.println((answer instanceof ReserveAnswer.Held ? "held " : "refused ") + n);
    }
  }
}
