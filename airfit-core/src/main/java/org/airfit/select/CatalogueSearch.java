package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.airfit.select.SearchLists.Block;
import org.airfit.select.SearchLists.HoseWay;
import org.airfit.select.SearchLists.PlugWay;
import org.airfit.select.SearchLists.ToolWay;
import org.airfit.select.SearchStock.Option;
import org.airfit.select.SearchStock.OutletWay;
import org.jspecify.annotations.Nullable;

/**
 * The best proposals of a catalogue, without building every combination.
 *
 * <p>It goes hose, socket at the outlet, plug of the hose, socket of the tool, plug of the tool, and turns back as
 * soon as what is chosen so far,
 * with the best that could follow, no longer beats the last of a full list. Two bounds say what could follow: costs
 * sum, and the air behind a
 * part never gains by less pressure in front of it. Nothing that could enter the list is left out, so that the list
 * is that of all combinations.
 *
 * <p>It is done for one set of rules after the other that may be broken, the smallest first: parts that break other
 * rules do not take part. Within that it is done for one set of rules after the other that may be left open, the
 * smallest first, so that the fewest open questions come first; what leaves fewer open than the set was listed before.
 */
final class CatalogueSearch {

  /** What arrives is compared in whole pascals: less is noise of the computing, and no reason to prefer a part. */
  private static final double NOISE_PASCALS = 1.0e-3;

  private final SearchStock stock;
  private final PressureCache air;
  private final double leastPascals;
  private final int most;

  CatalogueSearch(Requirement job, Catalogue catalogue, int most) {
    this.stock = new SearchStock(job, catalogue);
    this.air = stock.air;
    this.leastPascals = job.least().pascals();
    this.most = most;
  }

  /** {@return the kinds of part that the catalogue lacks, in words; empty where there is something to combine} */
  List<String> missing() {
    return stock.missing();
  }

  /** {@return the best proposals that break no rule, the fewest open questions first; none where none does} */
  List<Proposal> fitting() {
    Level level = new Level(Combination.BY_COST);
    if (stock.alwaysBroken() == 0) {
      List<Integer> sets = subsetsOf(stock.everAsked());
      for (int asked = 0; asked <= questions() && !level.isFull(); asked++) {
        for (int open : sets) {
          if (PartQuestions.count(open) == asked && !PartQuestions.isBroken(open)) {
            level.search(0, open, true);
          }
        }
      }
    }
    return proposals(level);
  }

  /** {@return the proposals that break the fewest rules, the fewest open questions first, then most pressure} */
  List<Proposal> nearest() {
    int always = stock.alwaysBroken();
    List<Integer> sets = subsetsOf(stock.everBroken() & ~always);
    for (int size = always == 0 ? 1 : 0; ; size++) {
      Level level = new Level(Combination.BY_PRESSURE);
      for (int asked = 0; asked <= questions() && !level.isFull(); asked++) {
        for (int set : sets) {
          nearest(level, set | always, size + Integer.bitCount(always), asked);
        }
      }
      if (!level.list.isEmpty()) {
        return proposals(level);
      }
    }
  }

  /** Those that break such a set of rules, so many in all, and leave so many open. */
  private void nearest(Level level, int rules, int size, int asked) {
    if (Math.abs(size - Integer.bitCount(rules)) > 2) {
      return;
    }
    for (int open : subsetsOf(stock.everAsked() & ~rules)) {
      int broken = Integer.bitCount(rules) + (PartQuestions.isBroken(open) ? 1 : 0);
      // one rule more is broken where the air does not suffice; that it does was ruled out one
      // size before
      if (PartQuestions.count(open) == asked && (broken == size || broken == size - 1)) {
        level.search(rules, open, broken == size);
      }
    }
  }

  /** How many rules parts and joints can leave open at most. */
  private int questions() {
    return Integer.bitCount(stock.everAsked());
  }

  private static List<Integer> subsetsOf(int rules) {
    List<Integer> sets = new ArrayList<>();
    int set = 0;
    do {
      sets.add(set);
      set = (set - rules) & rules; // the next number whose bits all lie in those of rules
    } while (set != 0);
    return sets;
  }

  private List<Proposal> proposals(Level level) {
    return level.list.stream().map(this::proposal).toList();
  }

  private Proposal proposal(Combination found) {
    Part.Socket outletSocket = chosen(found.outletSocket());
    Part.Plug hosePlug = chosen(found.hosePlug());
    Part.Hose hose = found.hose();
    Part.Socket toolSocket = chosen(found.toolSocket());
    Part.Plug toolPlug = chosen(found.toolPlug());
    Requirement job = stock.job;
    return new Proposal(Assembly.of(
        job,
        outletSocket,
        hosePlug,
        hose,
        toolSocket,
        toolPlug,
        List.of(
            stock.paths.joint("outlet to socket", job.outlet(), outletSocket.end()),
            stock.paths.joint("plug to hose", hosePlug.end(), hose.upstream()),
            stock.paths.joint("hose to socket", hose.downstream(), toolSocket.end()),
            stock.paths.joint("plug to tool", toolPlug.end(), job.toolInlet()))));
  }

  private static <T extends Part> T chosen(@Nullable T part) {
    if (part == null) {
      throw new IllegalStateException("a combination was listed before it was whole");
    }
    return part;
  }

  /** The best list so far, and the search for one set of rules after the other that may be broken. */
  private final class Level {

    private final Comparator<Combination> order;
    private final boolean byCost;
    private final List<Combination> list = new ArrayList<>();

    private SearchLists lists;
    private boolean wantsAir;
    private int asked;

    Level(Comparator<Combination> order) {
      this.order = order;
      this.byCost = order == Combination.BY_COST;
      this.lists = new SearchLists(stock, 0, 0, byCost);
    }

    private boolean suffices(double gauge) {
      return !wantsAir || gauge >= leastPascals;
    }

    private boolean isFull() {
      return list.size() == most;
    }

    private Combination last() {
      return list.get(list.size() - 1);
    }

    /** Whether something that has these bounds could enter the list. */
    private boolean couldEnter(Combination bound) {
      return !isFull() || order.compare(bound, last()) < 0;
    }

    /** Where list and ways are by cost: whether this and all that follow are out. */
    private boolean isTooDear(long cost) {
      return byCost && isFull() && cost > last().cost();
    }

    private void offer(Combination found) {
      int at = list.size();
      while (at > 0 && order.compare(found, list.get(at - 1)) < 0) {
        at--;
      }
      list.add(at, found);
      if (list.size() > most) {
        list.remove(most);
      }
    }

    /**
     * Lists what breaks no other than these rules and leaves just those open; withAir, where the air suffices.
     */
    void search(int rules, int open, boolean withAir) {
      if (!stock.canFill(rules, open)) {
        return;
      }
      lists = new SearchLists(stock, rules, open, byCost);
      wantsAir = withAir;
      asked = PartQuestions.count(open);
      for (HoseWay hose : lists.hoses()) {
        if (isWorthwhile(hose.cost(), hose.gauge(), hose.hose().part(), null, null, null)) {
          walls(hose);
        } else if (isTooDear(hose.cost())
            || (!byCost && isFull() && whole(hose.gauge()) < last().pascals())) {
          return;
        }
      }
    }

    private boolean isWorthwhile(
        long cost,
        double gauge,
        Part.Hose hose,
        Part.@Nullable Socket wall,
        Part.@Nullable Plug hosePlug,
        Part.@Nullable Socket tool) {
      return suffices(gauge + NOISE_PASCALS)
          && couldEnter(
              new Combination(asked, cost, whole(gauge), hose, wall, hosePlug, tool, null));
    }

    /** A bound in whole pascals; the noise must not make it smaller than what it bounds. */
    private static long whole(double gauge) {
      return gauge == PressureCache.STARVED ? -1L : (long) Math.floor(gauge + NOISE_PASCALS);
    }

    /** Whether anything that can follow a hose is worth a look. */
    private boolean isWorthwhileBehind(
        HoseWay hose,
        long cost,
        double after,
        Part.@Nullable Socket wall,
        Part.@Nullable Plug plug) {
      for (Block block : lists.behind(hose).blocks()) {
        if (isTooDear(cost + block.cost())) {
          return false;
        }
        double gauge = lists.best(block.widest(), after);
        if (isWorthwhile(cost + block.cost(), gauge, hose.hose().part(), wall, plug, null)) {
          return true;
        }
      }
      return false;
    }

    private void walls(HoseWay hose) {
      long costBehind = lists.behind(hose).cost();
      long hopeless = Long.MIN_VALUE;
      for (OutletWay wall : lists.wallsBefore(hose)) {
        long cost = hose.hose().cost() + wall.cost();
        if (isTooDear(cost + costBehind)) {
          return;
        }
        if (cost == hopeless) {
          continue;
        }
        double after = air.behind(hose.hose().part().conduit(), wall.pascals());
        if (isWorthwhileBehind(hose, cost, after, wall.socket().part(), null)) {
          plugs(hose, wall, wall.cost());
        } else if (byCost && !isWorthwhileBehind(hose, cost, after, null, null)) {
          hopeless = cost; // it is not the name: the next of this cost leave less pressure still
        } else if (!byCost
            && !isWorthwhileBehind(
                hose, hose.hose().cost() + hose.before().cost(), after, null, null)) {
          return;
        }
      }
    }

    private void plugs(HoseWay hose, OutletWay wall, long wallCost) {
      List<PlugWay> plugs = hose.before().plugs().getOrDefault(wall.profile(), List.of());
      long costWithout = hose.hose().cost() + wallCost - lists.cheapest(plugs);
      long costBehind = lists.behind(hose).cost();
      for (PlugWay way : plugs) {
        if (isTooDear(costWithout + way.cheapest() + costBehind)) {
          return;
        }
        double after = air.behind(
            hose.hose().part().conduit(), air.behind(way.way().adapters(), wall.pascals()));
        for (Option<Part.Plug> plug : way.group().plugs()) {
          long cost = costWithout + way.way().cost() + plug.cost();
          if (isWorthwhileBehind(hose, cost, after, wall.socket().part(), plug.part())) {
            tools(hose, wall, way, plug.part(), cost, after);
          } else {
            break; // the plugs of a group are in order, and alike but for cost and name
          }
        }
      }
    }

    private void tools(
        HoseWay hose, OutletWay wall, PlugWay plugWay, Part.Plug plug, long cost, double before) {
      int asks = hose.hose().asked() | wall.asked() | plugWay.asked();
      for (ToolWay tool : lists.behind(hose).ways()) {
        if (isTooDear(cost + tool.atLeast())) {
          return;
        }
        double after = lists.behind(tool, before);
        if (isWorthwhile(
            cost + tool.atLeast(),
            air.gaugePascals(after),
            hose.hose().part(),
            wall.socket().part(),
            plug,
            tool.socket().part())) {
          toolPlugs(hose, wall, plug, tool, asks | tool.asked(), cost + tool.cost(), after);
        }
      }
    }

    private void toolPlugs(
        HoseWay hose,
        OutletWay wall,
        Part.Plug plug,
        ToolWay tool,
        int asks,
        long cost,
        double before) {
      for (PlugWay way : lists.toolPlugs(tool.profile())) {
        if (!lists.isJustOpen(asks | way.asked())) {
          continue; // what leaves fewer open was listed before
        }
        double gauge = air.gaugePascals(air.behind(way.way().adapters(), before));
        for (Option<Part.Plug> last : way.group().plugs()) {
          Combination found = new Combination(
              asked,
              cost + way.way().cost() + last.cost(),
              (long) Math.floor(gauge),
              hose.hose().part(),
              wall.socket().part(),
              plug,
              tool.socket().part(),
              last.part());
          if (!suffices(gauge) || !couldEnter(found)) {
            break; // the plugs of a group are in order, and alike but for cost and name
          }
          offer(found);
        }
      }
    }
  }
}
