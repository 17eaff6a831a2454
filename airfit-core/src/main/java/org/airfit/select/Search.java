package org.airfit.select;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.select.Proposal.Coupling;
import org.airfit.thread.End;
import org.jspecify.annotations.Nullable;

/**
 * The best proposals of a catalogue, without building every combination.
 *
 * <p>It goes hose, socket at the wall, plug of the hose, socket of the tool, plug of the tool, and turns back as soon as what is chosen so far,
 * with the best that could follow, no longer beats the last of a full list. Two bounds say what could follow: costs sum, and the air behind a
 * part never gains by less pressure in front of it. Nothing that could enter the list is left out, so that the list is that of all combinations.
 *
 * <p>It is done for one set of rules after the other that may be broken, the smallest first: parts that break other rules do not take part.
 */
final class Search {

  /** What arrives is compared in whole pascals: less is noise of the computing, and no reason to prefer a part. */
  private static final double NOISE_PASCALS = 1.0e-3;

  /** The one group of plugs where none fits, so that a miss can be shown. */
  private static final String ANY = "";

  /** A part where it could sit, with the rules it breaks and what it costs. */
  private record Option<T extends Part>(T part, int broken, long cost) {}

  /** A plug with the way that joins its thread. */
  private record PlugWay(Option<Part.Plug> plug, Ways.Way way, long cost) {}

  /** A socket at the wall with the way before it, for plugs of one profile. */
  private record WallWay(
      Option<Part.Socket> socket,
      String profile,
      long cost,
      double gauge,
      @Nullable AirState air) {}

  /** A socket of the tool with the way before it, for plugs of one profile, at least what is behind it. */
  private record ToolWay(
      Option<Part.Socket> socket, String profile, Ways.Way way, long cost, long atLeast) {}

  /** Sockets of the tool of one cost, and those of them that could let most through. */
  private record Block(long cost, List<FlowCapacity> widest) {}

  /** All that can follow a hose that ends so. */
  private record Behind(List<ToolWay> ways, List<Block> blocks, List<FlowCapacity> widest) {}

  /** All that can come before a hose that begins so, at the best cost and the most pressure of them. */
  private record Before(
      List<WallWay> ways, long cost, @Nullable AirState air) {}

  /** A hose with what could become of it at best. */
  private record HoseWay(
      Option<Part.Hose> hose, Before before, Behind behind, long cost, double gauge) {}

  /** A whole combination, or one as far as it is chosen, with its bounds. */
  private record Found(
      long cost,
      long pascals,
      Part.Hose hose,
      Part.@Nullable Socket wall,
      Part.@Nullable Plug hosePlug,
      Part.@Nullable Socket tool,
      Part.@Nullable Plug toolPlug) {

    private List<@Nullable Part> parts() {
      List<@Nullable Part> parts = new ArrayList<>();
      parts.add(hose);
      parts.add(wall);
      parts.add(hosePlug);
      parts.add(tool);
      parts.add(toolPlug);
      return parts;
    }

    /** By name, the hose first; what is not chosen yet comes before all. */
    static int byName(Found one, Found other) {
      List<@Nullable Part> own = one.parts();
      List<@Nullable Part> others = other.parts();
      for (int i = 0; i < own.size(); i++) {
        Part a = own.get(i);
        Part b = others.get(i);
        if (a == null || b == null) {
          return a == b ? 0 : a == null ? -1 : 1;
        }
        int order = a == b ? 0 : Catalogue.BY_NAME.compare(a, b);
        if (order != 0) {
          return order;
        }
      }
      return 0;
    }
  }

  private static final Comparator<Found> BY_COST = Comparator.comparingLong(Found::cost)
      .thenComparing(Comparator.comparingLong(Found::pascals).reversed())
      .thenComparing(Found::byName);

  private static final Comparator<Found> BY_PRESSURE = Comparator.comparingLong(Found::pascals)
      .reversed()
      .thenComparingLong(Found::cost)
      .thenComparing(Found::byName);

  private final Requirement job;
  private final RunAir air;
  private final @Nullable AirState outlet;
  private final Ways ways;
  private final int most;
  private final List<Option<Part.Hose>> hoses;
  private final List<Option<Part.Socket>> wallSockets;
  private final List<Option<Part.Socket>> toolSockets;
  private final List<Option<Part.Plug>> hosePlugs;
  private final List<Option<Part.Plug>> toolPlugs;
  private final Set<String> atWall;
  private final Set<String> atTool;
  private final List<Part.Adapter> adapters;

  Search(Requirement job, Catalogue catalogue, int most) {
    this.job = job;
    this.most = most;
    this.air = new RunAir(job);
    this.outlet = job.atOutlet();
    this.adapters = catalogue.all(Part.Adapter.class);
    this.ways = new Ways(job, adapters, air, outlet);
    List<Part.Socket> sockets = catalogue.all(Part.Socket.class);
    List<Part.Plug> plugs = catalogue.all(Part.Plug.class);
    this.hoses = options(
        Seat.HOSE, job.hose().map(List::of).orElseGet(() -> catalogue.all(Part.Hose.class)));
    this.wallSockets = options(Seat.WALL_SOCKET, job.wallSocket().map(List::of).orElse(sockets));
    this.toolSockets = options(Seat.TOOL_SOCKET, sockets);
    this.hosePlugs = options(Seat.HOSE_PLUG, plugs);
    this.toolPlugs = options(Seat.TOOL_PLUG, job.toolPlug().map(List::of).orElse(plugs));
    this.atWall = mating(wallSockets, hosePlugs);
    this.atTool = mating(toolSockets, toolPlugs);
  }

  private <T extends Part> List<Option<T>> options(Seat seat, List<T> parts) {
    List<Option<T>> options = new ArrayList<>(parts.size());
    for (T part : parts) {
      options.add(
          new Option<>(part, Rule.brokenBy(job, seat, part), job.ranking().cost(part.facts())));
    }
    return options;
  }

  /** The profiles of pairs that mate and are wanted; none where no pair does. */
  private Set<String> mating(List<Option<Part.Socket>> sockets, List<Option<Part.Plug>> plugs) {
    Set<String> offered = new TreeSet<>();
    for (Option<Part.Plug> plug : plugs) {
      offered.add(plug.part.profile());
    }
    job.profile().ifPresent(wanted -> offered.retainAll(Set.of(wanted)));
    Set<String> taken = new TreeSet<>();
    for (Option<Part.Socket> socket : sockets) {
      for (String profile : socket.part.profiles()) {
        if (offered.contains(profile)) {
          taken.add(profile);
        }
      }
    }
    return taken;
  }

  /** {@return the kinds of part that the catalogue lacks, in words; empty where there is something to combine} */
  List<String> missing() {
    List<String> missing = new ArrayList<>();
    if (wallSockets.isEmpty()
        || hosePlugs.isEmpty()
        || toolSockets.isEmpty()
        || toolPlugs.isEmpty()) {
      missing.add("The catalogue has no socket and plug for both ends of the hose: add them.");
    }
    if (hoses.isEmpty()) {
      missing.add("The catalogue has no hose: add one.");
    }
    return missing;
  }

  /** {@return the best proposals that break no rule, best first; none where none does} */
  List<Proposal> fitting() {
    return alwaysBroken() == 0 ? proposals(new Level(BY_COST).search(0, true)) : List.of();
  }

  /** {@return the proposals that break the fewest rules, most pressure first} */
  List<Proposal> nearest() {
    int always = alwaysBroken();
    List<Integer> sets = subsetsOf(everBroken() & ~always);
    for (int size = always == 0 ? 1 : 0; ; size++) {
      Level level = new Level(BY_PRESSURE);
      for (int set : sets) {
        int broken = Integer.bitCount(set);
        // one rule more is broken where the air does not suffice; that it does was ruled out one
        // size before
        if (broken == size || broken == size - 1) {
          level.search(set | always, broken == size);
        }
      }
      if (!level.list.isEmpty()) {
        return proposals(level);
      }
    }
  }

  /** The rules that no choice of parts mends: the job's own, and profiles where no pair mates. */
  private int alwaysBroken() {
    int profiles = atWall.isEmpty() || atTool.isEmpty() ? Rule.PROFILE_MATES.bit() : 0;
    return Rule.brokenBy(job) | profiles;
  }

  private int everBroken() {
    int broken = Rule.ENDS_MATE.bit();
    for (List<? extends Option<?>> options :
        List.of(hoses, wallSockets, toolSockets, hosePlugs, toolPlugs)) {
      for (Option<?> option : options) {
        broken |= option.broken;
      }
    }
    for (Part.Adapter adapter : adapters) {
      broken |= Rule.brokenBy(job, Seat.ADAPTER, adapter);
    }
    return broken;
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

  private Proposal proposal(Found found) {
    Part.Socket wall = chosen(found.wall);
    Part.Plug hosePlug = chosen(found.hosePlug);
    Part.Socket tool = chosen(found.tool);
    Part.Plug toolPlug = chosen(found.toolPlug);
    return new Proposal(
        job,
        new Coupling(wall, hosePlug),
        found.hose,
        new Coupling(tool, toolPlug),
        List.of(
            ways.joint("wall outlet to socket", job.outlet(), wall.end()),
            ways.joint("plug to hose", hosePlug.end(), found.hose.upstream()),
            ways.joint("hose to socket", found.hose.downstream(), tool.end()),
            ways.joint("plug to tool", toolPlug.end(), job.toolInlet())));
  }

  private static <T extends Part> T chosen(@Nullable T part) {
    if (part == null) {
      throw new IllegalStateException("a combination was listed before it was whole");
    }
    return part;
  }

  /** The best list so far, and the search for one set of rules after the other that may be broken. */
  private final class Level {

    private final Comparator<Found> order;
    private final boolean byCost;
    private final List<Found> list = new ArrayList<>();

    private int allowed;
    private boolean wantsAir;
    private Map<String, List<Option<Part.Plug>>> plugsAtWall = Map.of();
    private Map<String, List<PlugWay>> plugsAtTool = Map.of();
    private final Map<End, Map<String, List<PlugWay>>> plugsBefore = new HashMap<>();

    Level(Comparator<Found> order) {
      this.order = order;
      this.byCost = order == BY_COST;
    }

    private boolean isAllowed(int broken) {
      return (broken & ~allowed) == 0;
    }

    private boolean suffices(double gauge) {
      return !wantsAir || gauge >= job.least().pascals();
    }

    private boolean isFull() {
      return list.size() == most;
    }

    private Found last() {
      return list.get(list.size() - 1);
    }

    /** Whether something that has these bounds could enter the list. */
    private boolean couldEnter(Found bound) {
      return !isFull() || order.compare(bound, last()) < 0;
    }

    private void offer(Found found) {
      int at = list.size();
      while (at > 0 && order.compare(found, list.get(at - 1)) < 0) {
        at--;
      }
      list.add(at, found);
      if (list.size() > most) {
        list.remove(most);
      }
    }

    Level search(int rules, boolean withAir) {
      allowed = rules;
      wantsAir = withAir;
      plugsBefore.clear();
      plugsAtWall = new HashMap<>();
      for (Option<Part.Plug> plug : hosePlugs) {
        String group = atWall.isEmpty() ? ANY : plug.part.profile();
        if (isAllowed(plug.broken) && (atWall.isEmpty() || atWall.contains(group))) {
          plugsAtWall.computeIfAbsent(group, any -> new ArrayList<>()).add(plug);
        }
      }
      plugsAtTool = new HashMap<>();
      for (Option<Part.Plug> plug : toolPlugs) {
        String group = atTool.isEmpty() ? ANY : plug.part.profile();
        if (isAllowed(plug.broken) && (atTool.isEmpty() || atTool.contains(group))) {
          add(plugsAtTool, group, plug, job.toolInlet());
        }
      }
      plugsAtTool.values().forEach(this::sort);
      List<WallWay> walls = walls();
      if (walls.isEmpty() || plugsAtTool.isEmpty()) {
        return this;
      }
      List<HoseWay> ordered = hoses(walls);
      for (HoseWay hose : ordered) {
        if (!isWorthwhile(hose.cost, hose.gauge, hose.hose.part, null, null, null)) {
          if (isFull() && (byCost ? hose.cost > last().cost : whole(hose.gauge) < last().pascals)) {
            return this;
          }
          continue;
        }
        walls(hose);
      }
      return this;
    }

    private void add(
        Map<String, List<PlugWay>> groups, String group, Option<Part.Plug> plug, End end) {
      Ways.Way way = ways.between(plug.part.end(), end);
      if (isAllowed(way.broken())) {
        groups
            .computeIfAbsent(group, any -> new ArrayList<>())
            .add(new PlugWay(plug, way, plug.cost + way.cost()));
      }
    }

    private void sort(List<PlugWay> plugs) {
      Comparator<PlugWay> byPart =
          Comparator.comparing((PlugWay way) -> (Part) way.plug.part, Catalogue.BY_NAME);
      Comparator<PlugWay> byCostFirst = Comparator.comparingLong(PlugWay::cost);
      plugs.sort(
          byCost
              ? byCostFirst.thenComparing(byPart)
              : Comparator.comparingLong((PlugWay way) -> way.way.drop())
                  .thenComparing(byCostFirst)
                  .thenComparing(byPart));
    }

    private static long cheapest(Collection<PlugWay> plugs) {
      long cheapest = Long.MAX_VALUE;
      for (PlugWay plug : plugs) {
        cheapest = Math.min(cheapest, plug.cost);
      }
      return cheapest;
    }

    /** The sockets at the wall with the ways before them; without their plugs yet. */
    private List<WallWay> walls() {
      List<WallWay> walls = new ArrayList<>();
      for (Option<Part.Socket> socket : wallSockets) {
        if (!isAllowed(socket.broken)) {
          continue;
        }
        Ways.Way way = ways.between(job.outlet(), socket.part.end());
        if (!isAllowed(way.broken())) {
          continue;
        }
        AirState behind = air.behind(socket.part.capacity(), air.behind(way.adapters(), outlet));
        for (String profile : groups(socket.part, atWall)) {
          if (plugsAtWall.containsKey(profile)) {
            walls.add(new WallWay(
                socket, profile, socket.cost + way.cost(), air.gaugePascals(behind), behind));
          }
        }
      }
      return walls;
    }

    private Collection<String> groups(Part.Socket socket, Set<String> mating) {
      if (mating.isEmpty()) {
        return List.of(ANY);
      }
      List<String> groups = new ArrayList<>(socket.profiles());
      groups.retainAll(mating);
      return groups;
    }

    private List<HoseWay> hoses(List<WallWay> walls) {
      Map<End, Before> before = new HashMap<>();
      Map<End, Behind> behind = new HashMap<>();
      List<HoseWay> ordered = new ArrayList<>();
      for (Option<Part.Hose> hose : hoses) {
        if (!isAllowed(hose.broken)) {
          continue;
        }
        Before upstream = before.computeIfAbsent(hose.part.upstream(), end -> before(end, walls));
        Behind downstream = behind.computeIfAbsent(hose.part.downstream(), this::behind);
        if (!upstream.ways.isEmpty() && !downstream.ways.isEmpty()) {
          ordered.add(new HoseWay(
              hose,
              upstream,
              downstream,
              hose.cost + upstream.cost + downstream.blocks.get(0).cost,
              best(downstream.widest, air.behind(hose.part.conduit(), upstream.air))));
        }
      }
      Comparator<HoseWay> byCostFirst = Comparator.comparingLong(HoseWay::cost);
      Comparator<HoseWay> byGauge = Comparator.comparingDouble(HoseWay::gauge).reversed();
      Comparator<HoseWay> byPart =
          Comparator.comparing((HoseWay way) -> (Part) way.hose.part, Catalogue.BY_NAME);
      ordered.sort(
          byCost
              ? byCostFirst.thenComparing(byGauge).thenComparing(byPart)
              : byGauge.thenComparing(byCostFirst).thenComparing(byPart));
      return ordered;
    }

    private Before before(End end, List<WallWay> walls) {
      Map<String, List<PlugWay>> plugs = new HashMap<>();
      plugsAtWall.forEach((group, all) -> all.forEach(plug -> add(plugs, group, plug, end)));
      plugs.values().forEach(this::sort);
      plugsBefore.put(end, plugs);
      Map<String, Long> least = new HashMap<>();
      plugs.forEach((group, all) -> least.put(group, cheapest(all)));
      List<WallWay> here = new ArrayList<>();
      long cost = Long.MAX_VALUE;
      WallWay best = null;
      for (WallWay wall : walls) {
        Long plug = least.get(wall.profile);
        if (plug == null) {
          continue;
        }
        WallWay whole =
            new WallWay(wall.socket, wall.profile, wall.cost + plug, wall.gauge, wall.air);
        here.add(whole);
        cost = Math.min(cost, whole.cost);
        best = best == null || whole.gauge > best.gauge ? whole : best;
      }
      Comparator<WallWay> byCostFirst = Comparator.comparingLong(WallWay::cost);
      Comparator<WallWay> byGauge = Comparator.comparingDouble(WallWay::gauge).reversed();
      Comparator<WallWay> byPart =
          Comparator.comparing((WallWay way) -> (Part) way.socket.part, Catalogue.BY_NAME);
      here.sort(
          byCost
              ? byCostFirst.thenComparing(byGauge).thenComparing(byPart)
              : byGauge.thenComparing(byCostFirst).thenComparing(byPart));
      return new Before(here, cost, best == null ? null : best.air);
    }

    private Behind behind(End end) {
      List<ToolWay> here = new ArrayList<>();
      for (Option<Part.Socket> socket : toolSockets) {
        if (!isAllowed(socket.broken)) {
          continue;
        }
        Ways.Way way = ways.between(end, socket.part.end());
        if (!isAllowed(way.broken())) {
          continue;
        }
        for (String profile : groups(socket.part, atTool)) {
          List<PlugWay> plugs = plugsAtTool.get(profile);
          if (plugs != null) {
            long plug = cheapest(plugs);
            here.add(new ToolWay(
                socket, profile, way, socket.cost + way.cost(), socket.cost + way.cost() + plug));
          }
        }
      }
      Comparator<ToolWay> byCostFirst = Comparator.comparingLong(ToolWay::atLeast);
      Comparator<ToolWay> byWidth = Comparator.comparingDouble((ToolWay way) ->
              way.socket.part.capacity().conductance().cubicMetresPerSecondPascal())
          .reversed();
      Comparator<ToolWay> byPart =
          Comparator.comparing((ToolWay way) -> (Part) way.socket.part, Catalogue.BY_NAME);
      here.sort(
          byCost
              ? byCostFirst.thenComparing(byWidth).thenComparing(byPart)
              : byWidth.thenComparing(byCostFirst).thenComparing(byPart));
      return new Behind(
          here,
          byCost ? blocks(here) : List.of(new Block(least(here), widest(here))),
          widest(here));
    }

    private static long least(List<ToolWay> ways) {
      long least = Long.MAX_VALUE;
      for (ToolWay way : ways) {
        least = Math.min(least, way.atLeast);
      }
      return least;
    }

    private List<Block> blocks(List<ToolWay> byCostFirst) {
      List<Block> blocks = new ArrayList<>();
      int from = 0;
      for (int i = 1; i <= byCostFirst.size(); i++) {
        if (i == byCostFirst.size()
            || byCostFirst.get(i).atLeast != byCostFirst.get(from).atLeast) {
          blocks.add(
              new Block(byCostFirst.get(from).atLeast, widest(byCostFirst.subList(from, i))));
          from = i;
        }
      }
      return blocks;
    }

    /** The capacities of which no other lets through at least as much at every pressure. */
    private List<FlowCapacity> widest(List<ToolWay> ways) {
      List<FlowCapacity> widest = new ArrayList<>();
      for (ToolWay way : ways) {
        FlowCapacity capacity = way.socket.part.capacity();
        if (widest.stream().noneMatch(other -> isAsWide(other, capacity))) {
          widest.removeIf(other -> isAsWide(capacity, other));
          widest.add(capacity);
        }
      }
      return widest;
    }

    /** More of C and of b and less cracking pressure leave more behind; the index is not weighed against them. */
    private static boolean isAsWide(FlowCapacity one, FlowCapacity other) {
      return one.subsonicIndex() == other.subsonicIndex()
          && one.conductance().compareTo(other.conductance()) >= 0
          && one.criticalPressureRatio() >= other.criticalPressureRatio()
          && one.crackingPressure().compareTo(other.crackingPressure()) <= 0;
    }

    /** The most gauge pressure [Pa] that any of the sockets leaves. */
    private double best(List<FlowCapacity> widest, @Nullable AirState inlet) {
      double best = RunAir.STARVED;
      for (FlowCapacity capacity : widest) {
        best = Math.max(best, air.gaugePascals(air.behind(capacity, inlet)));
      }
      return best;
    }

    private boolean isWorthwhile(
        long cost,
        double gauge,
        Part.Hose hose,
        Part.@Nullable Socket wall,
        Part.@Nullable Plug hosePlug,
        Part.@Nullable Socket tool) {
      return suffices(gauge + NOISE_PASCALS)
          && couldEnter(new Found(cost, whole(gauge), hose, wall, hosePlug, tool, null));
    }

    /** A bound in whole pascals; the noise must not make it smaller than what it bounds. */
    private static long whole(double gauge) {
      return gauge == RunAir.STARVED ? -1L : (long) Math.floor(gauge + NOISE_PASCALS);
    }

    private void walls(HoseWay hose) {
      long hopeless = Long.MIN_VALUE;
      for (WallWay wall : hose.before.ways) {
        long cost = hose.hose.cost + wall.cost;
        if (byCost && isFull() && cost + hose.behind.blocks.get(0).cost > last().cost) {
          return;
        }
        if (cost == hopeless) {
          continue;
        }
        AirState behind = air.behind(hose.hose.part.conduit(), wall.air);
        if (isWorthwhileBehind(hose, cost, behind, wall.socket.part, null)) {
          plugs(hose, wall, cost);
        } else if (byCost && !isWorthwhileBehind(hose, cost, behind, null, null)) {
          hopeless = cost; // it is not the name: the next of this cost leave less pressure still
        } else if (!byCost
            && !isWorthwhileBehind(hose, hose.hose.cost + hose.before.cost, behind, null, null)) {
          return;
        }
      }
    }

    /** Whether anything that can follow a hose is worth a look. */
    private boolean isWorthwhileBehind(
        HoseWay hose,
        long cost,
        @Nullable AirState behind,
        Part.@Nullable Socket wall,
        Part.@Nullable Plug plug) {
      for (Block block : hose.behind.blocks) {
        long whole = cost + block.cost;
        if (byCost && isFull() && whole > last().cost) {
          return false;
        }
        if (isWorthwhile(whole, best(block.widest, behind), hose.hose.part, wall, plug, null)) {
          return true;
        }
      }
      return false;
    }

    private void plugs(HoseWay hose, WallWay wall, long costWithCheapest) {
      List<PlugWay> plugs = plugsBefore
          .getOrDefault(hose.hose.part.upstream(), Map.of())
          .getOrDefault(wall.profile, List.of());
      long cheapest = cheapest(plugs);
      for (PlugWay plug : plugs) {
        long cost = costWithCheapest - cheapest + plug.cost;
        if (byCost && isFull() && cost + hose.behind.blocks.get(0).cost > last().cost) {
          return;
        }
        AirState behind =
            air.behind(hose.hose.part.conduit(), air.behind(plug.way.adapters(), wall.air));
        if (isWorthwhileBehind(hose, cost, behind, wall.socket.part, plug.plug.part)) {
          tools(hose, wall, plug, cost, behind);
        }
      }
    }

    private void tools(
        HoseWay hose, WallWay wall, PlugWay plug, long cost, @Nullable AirState before) {
      for (ToolWay tool : hose.behind.ways) {
        if (byCost && isFull() && cost + tool.atLeast > last().cost) {
          return;
        }
        AirState behind =
            air.behind(tool.socket.part.capacity(), air.behind(tool.way.adapters(), before));
        if (isWorthwhile(
            cost + tool.atLeast,
            air.gaugePascals(behind),
            hose.hose.part,
            wall.socket.part,
            plug.plug.part,
            tool.socket.part)) {
          toolPlugs(hose, wall, plug, tool, cost + tool.cost, behind);
        }
      }
    }

    private void toolPlugs(
        HoseWay hose,
        WallWay wall,
        PlugWay plug,
        ToolWay tool,
        long cost,
        @Nullable AirState before) {
      for (PlugWay last : plugsAtTool.getOrDefault(tool.profile, List.of())) {
        double gauge = air.gaugePascals(air.behind(last.way.adapters(), before));
        Found found = new Found(
            cost + last.cost,
            (long) Math.floor(gauge),
            hose.hose.part,
            wall.socket.part,
            plug.plug.part,
            tool.socket.part,
            last.plug.part);
        if (suffices(gauge) && couldEnter(found)) {
          offer(found);
        }
      }
    }
  }
}
