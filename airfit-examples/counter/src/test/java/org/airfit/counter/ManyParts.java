package org.airfit.counter;

import java.util.Locale;

/** Tables of as many invented articles as are wanted, for the boatyard's shop: each kind has a share of them. */
final class ManyParts {

  private static final String HEADING =
      "kind,id,name,price,cost,quantity,takes,profile,capacity,hose,bore,length,wall,end,otherEnd,rated,material\n";

  private static final String[] SIZES = {"1/4", "3/8", "1/2"};

  private ManyParts() {}

  /** Of five articles two are hoses; the others a socket, a plug and an adapter. None is like another. */
  static String table(int articles) {
    StringBuilder table = new StringBuilder(HEADING);
    for (int i = 0; i < articles; i++) {
      String size = SIZES[i / 5 % SIZES.length];
      String kind = i % 5 == 0 ? "socket" : i % 5 == 1 ? "plug" : i % 5 == 2 ? "adapter" : "hose";
      double price = 3.0 + (i * 7919L % 9973) / 100.0;
      String fields = switch (kind) {
        case "socket" ->
          "gannet,,Cv %.3f,,,,,%s NPT female,".formatted(1.0 + i % 997 / 500.0, size);
        case "plug" -> ",gannet,,,,,,%s NPT male,".formatted(size);
        case "adapter" ->
          ",,,,%.2f mm,40 mm,drawn copper or brass,%s NPT male,%s NPT female"
              .formatted(7.0 + i % 991 / 200.0, size, SIZES[i / 15 % SIZES.length]);
        default ->
          ",,,3/8 in,%.3f mm,%.2f m,smooth rubber hose,%s NPT male,%s NPT male"
              .formatted(8.0 + i % 983 / 100.0, 10.0 + i % 499 / 100.0, size, size);
      };
      table.append(String.format(
          Locale.ROOT,
          "%s,M-%d,%s %d,%.2f,%.2f,9,%s,16 bar(g),%s%n",
          kind,
          i,
          kind,
          i,
          price,
          price / 2,
          fields,
          i % 2 == 0 ? "brass" : "stainless steel"));
    }
    return table.toString();
  }
}
