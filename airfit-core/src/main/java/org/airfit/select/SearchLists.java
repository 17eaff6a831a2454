package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.flow.FlowCapacity;
import org.airfit.select.SearchStock.Option;
import org.airfit.select.SearchStock.OutletWay;

/**
 * The parts that may be combined where one set of rules may be broken and another left open, in groups that are alike
 * and in the order in which they are tried, with bounds for what can follow. Not thread-safe: it remembers.
 */
final class SearchLists {

  /** Plugs of one profile and one end that leave the same rules open, the cheapest first. */
  record PlugGroup(String profile, int end, int asked, List<Option<Part.Plug>> plugs) {
    long cheapest() {
      return plugs.get(0).cost();
    }
  }

  /** What plugs of one group share. */
  private record Alike(int end, int asked) {}

  /** Such plugs with the way that joins their end. */
  record PlugWay(PlugGroup group, AdapterPaths.Way way) {
    int asked() {
      return group.asked | way.asked();
    }

    long cheapest() {
      return group.cheapest() + way.cost();
    }
  }

  /** Sockets of the tool for plugs of one profile that begin alike, and what the cheapest costs with its plug. */
  record ToolGroup(
      String profile, int end, List<Option<Part.Socket>> sockets, long plug, long cheapest) {}

  /**
   * A socket of the tool with the way before it, for plugs of one profile; and at least what all of it costs together
   * with the plug.
   */
  record ToolWay(
      Option<Part.Socket> socket, String profile, AdapterPaths.Way way, long cost, long atLeast) {
    int asked() {
      return socket.asked() | way.asked();
    }
  }

  /** Sockets of the tool of one cost, and those of them that could leave most. */
  record Block(long cost, List<ToolWay> widest) {}

  /** All that can follow a hose that ends so. */
  record Behind(List<ToolWay> ways, List<Block> blocks) {
    long cost() {
      return blocks.get(0).cost;
    }
  }

  /**
   * What can come before a hose that begins so: plugs by profile, the least that socket and plug cost, the most
   * pressure.
   */
  record Before(Map<String, List<PlugWay>> plugs, long cost, double pascals) {}

  /** A hose with what could become of it at best. */
  record HoseWay(Option<Part.Hose> hose, Before before, long cost, double gauge) {}

  private final SearchStock stock;
  private final int allowed;
  private final int open;
  private final boolean byCost;
  private final List<PlugGroup> hosePlugGroups;
  private final Map<String, List<PlugWay>> toolPlugs;
  private final List<ToolGroup> toolGroups;
  private final List<OutletWay> walls;
  private final Map<Integer, List<OutletWay>> wallsBefore = new HashMap<>();
  private final Map<Integer, Behind> behind = new HashMap<>();

  /**
   * Makes the lists.
   *
   * @param stock the parts
   * @param allowed the rules that may be broken, as bits
   * @param open the rules that may be left open, as bits
   * @param byCost whether the cheapest come first, else those that leave most pressure
   */
  SearchLists(SearchStock stock, int allowed, int open, boolean byCost) {
    this.stock = stock;
    this.allowed = allowed;
    this.open = open;
    this.byCost = byCost;
    this.hosePlugGroups = groups(stock.hosePlugs, stock.atOutlet);
    this.toolPlugs =
        ways(groups(stock.toolPlugs, stock.atTool), stock.paths.number(stock.job.toolInlet()));
    this.toolGroups = toolGroups();
    this.walls = walls();
  }

  private boolean isAllowed(int broken, int asked) {
    return SearchStock.isWithin(broken, asked, allowed, open);
  }

  private boolean isAllowed(Option<?> option) {
    return isAllowed(option.broken(), option.asked());
  }

  private boolean isAllowed(AdapterPaths.Way way) {
    return isAllowed(way.broken(), way.asked());
  }

  /** Whether parts that leave these rules open leave just those open that are looked for. */
  boolean isJustOpen(int asked) {
    return (asked & ~allowed) == open;
  }

  /** The plugs of the tool for a profile, with the ways that join them to it. */
  List<PlugWay> toolPlugs(String profile) {
    return toolPlugs.getOrDefault(profile, List.of());
  }

  private List<PlugGroup> groups(List<Option<Part.Plug>> plugs, Set<String> mating) {
    Map<String, Map<Alike, List<Option<Part.Plug>>>> byProfile = new HashMap<>();
    for (Option<Part.Plug> plug : plugs) {
      if (isAllowed(plug) && (mating.isEmpty() || mating.contains(plug.part().profile()))) {
        byProfile
            .computeIfAbsent(
                mating.isEmpty() ? SearchStock.ANY : plug.part().profile(), any -> new HashMap<>())
            .computeIfAbsent(new Alike(plug.end(), plug.asked()), any -> new ArrayList<>())
            .add(plug);
      }
    }
    List<PlugGroup> groups = new ArrayList<>();
    byProfile.forEach((profile, byEnd) -> byEnd.forEach((key, alike) -> {
      alike.sort(Comparator.<Option<Part.Plug>>comparingLong(Option::cost)
          .thenComparing(Option::part, Catalogue.BY_NAME));
      groups.add(new PlugGroup(profile, key.end, key.asked, alike));
    }));
    return groups;
  }

  /** The plugs that can be joined to an end, by profile. */
  private Map<String, List<PlugWay>> ways(List<PlugGroup> groups, int end) {
    Map<String, List<PlugWay>> joined = new HashMap<>();
    for (PlugGroup group : groups) {
      AdapterPaths.Way way = stock.paths.between(group.end, end);
      if (isAllowed(way)) {
        joined
            .computeIfAbsent(group.profile, any -> new ArrayList<>())
            .add(new PlugWay(group, way));
      }
    }
    Comparator<PlugWay> byCostFirst = Comparator.comparingLong(PlugWay::cheapest);
    Comparator<PlugWay> byDropFirst =
        Comparator.<PlugWay>comparingLong(plug -> plug.way.drop()).thenComparing(byCostFirst);
    joined.values().forEach(all -> all.sort(byCost ? byCostFirst : byDropFirst));
    return joined;
  }

  long cheapest(List<PlugWay> plugs) {
    if (byCost) {
      return plugs.get(0).cheapest();
    }
    long cheapest = Long.MAX_VALUE;
    for (PlugWay plug : plugs) {
      cheapest = Math.min(cheapest, plug.cheapest());
    }
    return cheapest;
  }

  private List<ToolGroup> toolGroups() {
    Map<String, Map<Integer, List<Option<Part.Socket>>>> byProfile = new HashMap<>();
    for (Option<Part.Socket> socket : stock.toolSockets) {
      if (isAllowed(socket)) {
        for (String profile : SearchStock.profiles(socket.part(), stock.atTool)) {
          byProfile
              .computeIfAbsent(profile, any -> new HashMap<>())
              .computeIfAbsent(socket.end(), any -> new ArrayList<>())
              .add(socket);
        }
      }
    }
    List<ToolGroup> groups = new ArrayList<>();
    byProfile.forEach((profile, byEnd) -> {
      List<PlugWay> plugs = toolPlugs.get(profile);
      if (plugs != null) {
        long plug = cheapest(plugs);
        byEnd.forEach((end, alike) -> {
          long cheapest = alike.stream().mapToLong(Option::cost).min().orElseThrow();
          groups.add(new ToolGroup(profile, end, alike, plug, cheapest + plug));
        });
      }
    });
    return groups;
  }

  private List<OutletWay> walls() {
    Set<String> offered = new TreeSet<>();
    hosePlugGroups.forEach(group -> offered.add(group.profile));
    List<OutletWay> joined = new ArrayList<>();
    for (OutletWay wall : stock.outletWays) {
      if (isAllowed(wall.broken(), wall.asked()) && offered.contains(wall.profile())) {
        joined.add(wall);
      }
    }
    return joined;
  }

  List<HoseWay> hoses() {
    if (walls.isEmpty() || toolGroups.isEmpty()) {
      return List.of();
    }
    Map<String, Long> socketAtWall = new HashMap<>();
    Map<String, OutletWay> bestAtWall = new HashMap<>();
    for (OutletWay wall : walls) {
      socketAtWall.merge(wall.profile(), wall.cost(), Math::min);
      bestAtWall.merge(wall.profile(), wall, (a, b) -> b.gauge() > a.gauge() ? b : a);
    }
    List<ToolWay> widest = new ArrayList<>(); // as if each went straight to the hose
    toolGroups.forEach(group -> group.sockets.forEach(socket ->
        widen(widest, new ToolWay(socket, group.profile, AdapterPaths.Way.DIRECT, 0L, 0L))));
    Map<Integer, Before> before = new HashMap<>();
    Map<Integer, Long> costBehind = new HashMap<>();
    List<HoseWay> ordered = new ArrayList<>();
    for (Option<Part.Hose> hose : stock.hoses) {
      if (!isAllowed(hose)) {
        continue;
      }
      Before upstream =
          before.computeIfAbsent(hose.end(), end -> before(end, socketAtWall, bestAtWall));
      long downstream = costBehind.computeIfAbsent(hose.otherEnd(), this::costBehind);
      if (upstream.cost != Long.MAX_VALUE && downstream != Long.MAX_VALUE) {
        ordered.add(new HoseWay(
            hose,
            upstream,
            hose.cost() + upstream.cost + downstream,
            best(widest, stock.air.behind(hose.part().conduit(), upstream.pascals))));
      }
    }
    Comparator<HoseWay> byCostFirst = Comparator.comparingLong(HoseWay::cost);
    Comparator<HoseWay> byGauge = Comparator.comparingDouble(HoseWay::gauge).reversed();
    ordered.sort((byCost ? byCostFirst.thenComparing(byGauge) : byGauge.thenComparing(byCostFirst))
        .thenComparing(hose -> hose.hose.part(), Catalogue.BY_NAME));
    return ordered;
  }

  private Before before(
      int end, Map<String, Long> socketAtWall, Map<String, OutletWay> bestAtWall) {
    Map<String, List<PlugWay>> plugs = ways(hosePlugGroups, end);
    long cost = Long.MAX_VALUE;
    OutletWay best = null;
    for (Map.Entry<String, List<PlugWay>> plug : plugs.entrySet()) {
      Long socket = socketAtWall.get(plug.getKey());
      OutletWay wall = bestAtWall.get(plug.getKey());
      if (socket != null && wall != null) {
        cost = Math.min(cost, socket + cheapest(plug.getValue()));
        best = best == null || wall.gauge() > best.gauge() ? wall : best;
      }
    }
    return new Before(plugs, cost, best == null ? Double.NaN : best.pascals());
  }

  /** The least that socket and plug of the tool cost behind a hose that ends so. */
  private long costBehind(int end) {
    long cost = Long.MAX_VALUE;
    for (ToolGroup group : toolGroups) {
      AdapterPaths.Way way = stock.paths.between(end, group.end);
      if (isAllowed(way)) {
        cost = Math.min(cost, group.cheapest + way.cost());
      }
    }
    return cost;
  }

  /** The sockets at the outlet before a hose that begins so, each with the least its plug costs. */
  List<OutletWay> wallsBefore(HoseWay hose) {
    return wallsBefore.computeIfAbsent(hose.hose.end(), any -> {
      Map<String, Long> least = new HashMap<>();
      hose.before.plugs.forEach((profile, plugs) -> least.put(profile, cheapest(plugs)));
      List<OutletWay> here = new ArrayList<>();
      for (OutletWay wall : walls) {
        Long plug = least.get(wall.profile());
        if (plug != null) {
          here.add(wall.withCost(wall.cost() + plug));
        }
      }
      Comparator<OutletWay> byCostFirst = Comparator.comparingLong(OutletWay::cost);
      Comparator<OutletWay> byGauge =
          Comparator.comparingDouble(OutletWay::gauge).reversed();
      here.sort((byCost ? byCostFirst.thenComparing(byGauge) : byGauge.thenComparing(byCostFirst))
          .thenComparing(wall -> wall.socket().part(), Catalogue.BY_NAME));
      return here;
    });
  }

  Behind behind(HoseWay hose) {
    return behind.computeIfAbsent(hose.hose.otherEnd(), end -> {
      List<ToolWay> here = new ArrayList<>();
      for (ToolGroup group : toolGroups) {
        AdapterPaths.Way way = stock.paths.between(end, group.end);
        if (isAllowed(way)) {
          for (Option<Part.Socket> socket : group.sockets) {
            long cost = socket.cost() + way.cost();
            here.add(new ToolWay(socket, group.profile, way, cost, cost + group.plug));
          }
        }
      }
      Comparator<ToolWay> byCostFirst = Comparator.comparingLong(ToolWay::atLeast);
      Comparator<ToolWay> byWidth = Comparator.<ToolWay>comparingDouble(
              tool -> tool.socket.part().capacity().conductance().cubicMetresPerSecondPascal())
          .reversed();
      here.sort((byCost ? byCostFirst.thenComparing(byWidth) : byWidth.thenComparing(byCostFirst))
          .thenComparing(tool -> tool.socket.part(), Catalogue.BY_NAME));
      return new Behind(here, byCost ? blocks(here) : List.of(block(here)));
    });
  }

  private static List<Block> blocks(List<ToolWay> byCostFirst) {
    List<Block> blocks = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= byCostFirst.size(); i++) {
      if (i == byCostFirst.size() || byCostFirst.get(i).atLeast != byCostFirst.get(from).atLeast) {
        blocks.add(block(byCostFirst.subList(from, i)));
        from = i;
      }
    }
    return blocks;
  }

  private static Block block(List<ToolWay> ways) {
    long cost = Long.MAX_VALUE;
    List<ToolWay> widest = new ArrayList<>();
    for (ToolWay way : ways) {
      cost = Math.min(cost, way.atLeast);
      widen(widest, way);
    }
    return new Block(cost, widest);
  }

  /** Keeps the sockets of which no other leaves at least as much at every pressure. */
  private static void widen(List<ToolWay> widest, ToolWay way) {
    for (ToolWay other : widest) {
      if (isAsWide(other, way)) {
        return;
      }
    }
    widest.removeIf(other -> isAsWide(way, other));
    widest.add(way);
  }

  private static boolean isAsWide(ToolWay one, ToolWay other) {
    return (one.way.adapters().isEmpty() || one.way.adapters().equals(other.way.adapters()))
        && isAsWide(one.socket.part().capacity(), other.socket.part().capacity());
  }

  /** More of C and of b and less cracking pressure leave more behind; the index is not weighed against them. */
  private static boolean isAsWide(FlowCapacity one, FlowCapacity other) {
    return one.subsonicIndex() == other.subsonicIndex()
        && one.conductance().compareTo(other.conductance()) >= 0
        && one.criticalPressureRatio() >= other.criticalPressureRatio()
        && one.crackingPressure().compareTo(other.crackingPressure()) <= 0;
  }

  double behind(ToolWay tool, double inlet) {
    return stock.air.behind(
        tool.socket.part().capacity(), stock.air.behind(tool.way.adapters(), inlet));
  }

  /** The most gauge pressure [Pa] that any of the sockets leaves. */
  double best(List<ToolWay> widest, double inlet) {
    double best = PressureCache.STARVED;
    if (!Double.isNaN(inlet)) {
      for (ToolWay tool : widest) {
        best = Math.max(best, stock.air.gaugePascals(behind(tool, inlet)));
      }
    }
    return best;
  }
}
