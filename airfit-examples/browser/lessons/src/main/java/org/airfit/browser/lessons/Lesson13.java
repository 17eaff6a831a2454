package org.airfit.browser.lessons;

import static org.airfit.browser.lessons.Numbers.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.airfit.lesson.Table;
import org.airfit.quantity.Money;
import org.airfit.select.SpareStock;

/**
 * One plug for the whole shop: what the pencil counts of pieces, prices and spare pieces. The search over all profiles,
 * the air and the order of the stops are only in the notebook, because of the size of their code.
 */
final class Lesson13 {

  private static final List<String> PROFILES = List.of("Gannet", "Tern", "Skua");

  /** The work of a socket and of a plug [EUR]. */
  private static final double SOCKET_WORK = 9;

  private static final double PLUG_WORK = 4;

  private static final List<Double> PLUG_PRICES = List.of(3.0, 2.5, 2.0);

  private static final double DAYS_OF_A_YEAR = 365;

  private Lesson13() {}

  static List<Figure> figures() {
    return List.of(new Figure(
        "13-change",
        13,
        "Change pieces, prices and delivery: pencil and spare pieces follow, the other answers stay",
        List.of(
            pieces("sockets0", "Gannet sockets, hull hall", "6"),
            pieces("plugs0", "Gannet plugs, hull hall", "10"),
            pieces("sockets1", "Tern sockets, rigging loft", "4"),
            pieces("plugs1", "Tern plugs, rigging loft", "9"),
            pieces("sockets2", "Skua sockets, engine shop", "3"),
            pieces("plugs2", "Skua plugs, engine shop", "5"),
            price("price0", "price of a Gannet socket", "14 EUR"),
            price("price1", "price of a Tern socket", "11 EUR"),
            price("price2", "price of a Skua socket", "8 EUR"),
            Input.of("worn", "worn out in a year", Kind.PERCENT, "25 %", 1, 100, 1),
            Input.of("days", "days of delivery", Kind.NUMBER, "21", 1, 120, 1)),
        "pencil-code-0",
        Lesson13::show));
  }

  private static Input pieces(String id, String label, String count) {
    return Input.of(id, label, Kind.NUMBER, count, 1, 40, 1);
  }

  private static Input price(String id, String label, String price) {
    return Input.of(id, label, Kind.MONEY, price, 2, 40, 0.5);
  }

  /** The pieces of the three bays, and what a socket of each profile costs. */
  private record Yard(List<Integer> sockets, List<Integer> plugs, List<Double> prices) {

    static Yard of(Given given) {
      List<Integer> sockets = new ArrayList<>();
      List<Integer> plugs = new ArrayList<>();
      List<Double> prices = new ArrayList<>();
      for (int i = 0; i < PROFILES.size(); i++) {
        sockets.add((int) Math.round(given.number("sockets" + i)));
        plugs.add((int) Math.round(given.number("plugs" + i)));
        prices.add(Money.parse(given.text("price" + i)).amount().doubleValue());
      }
      return new Yard(sockets, plugs, prices);
    }

    int allSockets() {
      return sockets.stream().mapToInt(Integer::intValue).sum();
    }

    int allPlugs() {
      return plugs.stream().mapToInt(Integer::intValue).sum();
    }

    double cost(int keep) {
      return (allSockets() - sockets.get(keep)) * (prices.get(keep) + SOCKET_WORK)
          + (allPlugs() - plugs.get(keep)) * (PLUG_PRICES.get(keep) + PLUG_WORK);
    }
  }

  private static void show(Given given, Shown shown) {
    Yard yard = Yard.of(given);
    int dangerous = yard.plugs().get(1) * yard.sockets().get(0);
    shown.said(
        "pencil-code-0",
        form(
            "Ways in which a Tern plug lets go in a Gannet socket: %d. Ways in which a Skua plug leaks: %d.",
            dangerous,
            yard.plugs().get(2) * (yard.sockets().get(0) + yard.sockets().get(1))));
    Table byHand =
        Table.of("keep", "sockets to change", "plugs to change", "cost with the work [EUR]");
    for (int keep = 0; keep < PROFILES.size(); keep++) {
      byHand.row(
          PROFILES.get(keep),
          yard.allSockets() - yard.sockets().get(keep),
          yard.allPlugs() - yard.plugs().get(keep),
          form("%.2f", yard.cost(keep)));
    }
    shown.markdown("pencil-code-1", byHand::toMarkdown);
    shown.markdown("cell-11-0", () -> spare(given, yard));
    boolean gannet = yard.cost(0) <= yard.cost(1);
    shown.sum(form(
        "Of Gannet and Tern, which give the hull hall its air, %s is the cheaper: %.2f against %.2f EUR. Ways in"
            + " which a plug lets go today: %d.",
        gannet ? "Gannet" : "Tern",
        yard.cost(gannet ? 0 : 1),
        yard.cost(gannet ? 1 : 0),
        dangerous));
  }

  private static String spare(Given given, Yard yard) {
    double share = given.number("worn") / 100.0 * given.number("days") / DAYS_OF_A_YEAR;
    Table spare = Table.of("what", "in use", "spare pieces");
    for (int i = 0; i < PROFILES.size(); i++) {
      String profile = PROFILES.get(i).toLowerCase(Locale.ROOT);
      row(spare, "now: socket " + profile + " on 3/8 NPT female", yard.sockets().get(i), share);
      row(spare, "now: plug " + profile + " on 1/4 NPT female", yard.plugs().get(i), share);
    }
    row(spare, "after: socket gannet on 3/8 NPT female", yard.allSockets(), share);
    row(spare, "after: plug gannet on 1/4 NPT female", yard.allPlugs(), share);
    return spare.toMarkdown();
  }

  private static void row(Table spare, String what, int inUse, double share) {
    spare.row(what, inUse, SpareStock.least(inUse * share, 0.05));
  }
}
