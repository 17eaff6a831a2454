package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.select.Proposal.Coupling;
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
final class CatalogueSearch {

  /** What arrives is compared in whole pascals: less is noise of the computing, and no reason to prefer a part. */
  private static final double NOISE_PASCALS = 1.0e-3;

  /** The one group of plugs where none fits, so that a miss can be shown. */
  private static final String ANY = "";

  /** A part where it could sit, with the rules it breaks, what it costs and the numbers of its ends. */
  private record Option<T extends Part>(T part, int broken, long cost, int end, int otherEnd) {}

  /** Plugs of one profile and one end, the cheapest first. */
  private record PlugGroup(String profile, int end, List<Option<Part.Plug>> plugs) {
    long cheapest() {
      return plugs.get(0).cost;
    }
  }

  /** Such plugs with the way that joins their end. */
  private record PlugWay(PlugGroup group, AdapterPaths.Way way) {
    long cheapest() {
      return group.cheapest() + way.cost();
    }
  }

  /** A socket at the wall with the way before it, for plugs of one profile. */
  private record WallWay(
      Option<Part.Socket> socket,
      String profile,
      int broken,
      long cost,
      double gauge,
      @Nullable AirState air) {

    WallWay withCost(long whole) {
      return new WallWay(socket, profile, broken, whole, gauge, air);
    }
  }

  /** Sockets of the tool for plugs of one profile that begin alike, and what the cheapest costs with its plug. */
  private record ToolGroup(
      String profile, int end, List<Option<Part.Socket>> sockets, long plug, long cheapest) {}

  /** A socket of the tool with the way before it, for plugs of one profile; and at least what all of it costs together with the plug. */
  private record ToolWay(
      Option<Part.Socket> socket, String profile, AdapterPaths.Way way, long cost, long atLeast) {}

  /** Sockets of the tool of one cost, and those of them that could leave most. */
  private record Block(long cost, List<ToolWay> widest) {}

  /** All that can follow a hose that ends so. */
  private record Behind(List<ToolWay> ways, List<Block> blocks) {
    long cost() {
      return blocks.get(0).cost;
    }
  }

  /** What can come before a hose that begins so: plugs by profile, the least that socket and plug cost, the most pressure. */
  private record Before(
      Map<String, List<PlugWay>> plugs, long cost, @Nullable AirState air) {}

  /** A hose with what could become of it at best. */
  private record HoseWay(Option<Part.Hose> hose, Before before, long cost, double gauge) {}

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
  private final PressureCache air;
  private final @Nullable AirState outlet;
  private final AdapterPaths ways;
  private final int most;
  private final List<Option<Part.Hose>> hoses;
  private final List<Option<Part.Socket>> wallSockets;
  private final List<Option<Part.Socket>> toolSockets;
  private final List<Option<Part.Plug>> hosePlugs;
  private final List<Option<Part.Plug>> toolPlugs;
  private final Set<String> atWall;
  private final Set<String> atTool;
  private final List<WallWay> wallWays;

  CatalogueSearch(Requirement job, Catalogue catalogue, int most) {
    this.job = job;
    this.most = most;
    this.air = new PressureCache(job);
    this.outlet = job.atOutlet();
    this.ways = new AdapterPaths(job, catalogue.all(Part.Adapter.class), air, outlet);
    List<Part.Socket> sockets = catalogue.all(Part.Socket.class);
    List<Part.Plug> plugs = catalogue.all(Part.Plug.class);
    this.hoses = options(
        Slot.HOSE, job.hose().map(List::of).orElseGet(() -> catalogue.all(Part.Hose.class)));
    this.wallSockets = options(Slot.WALL_SOCKET, job.wallSocket().map(List::of).orElse(sockets));
    this.toolSockets = options(Slot.TOOL_SOCKET, sockets);
    this.hosePlugs = options(Slot.HOSE_PLUG, plugs);
    this.toolPlugs = options(Slot.TOOL_PLUG, job.toolPlug().map(List::of).orElse(plugs));
    this.atWall = mating(wallSockets, hosePlugs);
    this.atTool = mating(toolSockets, toolPlugs);
    this.wallWays = wallWays();
  }

  private <T extends Part> List<Option<T>> options(Slot seat, List<T> parts) {
    List<Option<T>> options = new ArrayList<>(parts.size());
    for (T part : parts) {
      options.add(new Option<>(
          part,
          Rule.brokenBy(job, seat, part),
          job.ranking().cost(part.facts()),
          ways.number(upstream(part)),
          ways.number(downstream(part))));
    }
    return options;
  }

  private static End upstream(Part part) {
    if (part instanceof Part.Socket socket) {
      return socket.end();
    }
    if (part instanceof Part.Plug plug) {
      return plug.end();
    }
    return part instanceof Part.Hose hose ? hose.upstream() : ((Part.Adapter) part).one();
  }

  private static End downstream(Part part) {
    return part instanceof Part.Hose hose ? hose.downstream() : upstream(part);
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

  private static List<String> profiles(Part.Socket socket, Set<String> mating) {
    if (mating.isEmpty()) {
      return List.of(ANY);
    }
    List<String> profiles = new ArrayList<>(socket.profiles());
    profiles.retainAll(mating);
    return profiles;
  }

  /** The sockets at the wall with the ways before them; without their plugs yet. */
  private List<WallWay> wallWays() {
    int end = ways.number(job.outlet());
    List<WallWay> joined = new ArrayList<>();
    for (Option<Part.Socket> socket : wallSockets) {
      AdapterPaths.Way way = ways.between(end, socket.end);
      AirState after = air.behind(socket.part.capacity(), air.behind(way.adapters(), outlet));
      double gauge = air.gaugePascals(after);
      for (String profile : profiles(socket.part, atWall)) {
        joined.add(new WallWay(
            socket, profile, socket.broken | way.broken(), socket.cost + way.cost(), gauge, after));
      }
    }
    return joined;
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
    return broken | ways.everBroken();
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
    private List<PlugGroup> hosePlugGroups = List.of();
    private Map<String, List<PlugWay>> atTools = Map.of();
    private List<ToolGroup> toolGroups = List.of();
    private List<WallWay> walls = List.of();
    private final Map<Integer, List<WallWay>> wallsBefore = new HashMap<>();
    private final Map<Integer, Behind> behind = new HashMap<>();

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

    /** Where list and ways are by cost: whether this and all that follow are out. */
    private boolean isTooDear(long cost) {
      return byCost && isFull() && cost > last().cost;
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
      wallsBefore.clear();
      behind.clear();
      hosePlugGroups = groups(hosePlugs, atWall);
      atTools = ways(groups(toolPlugs, atTool), ways.number(job.toolInlet()));
      toolGroups = toolGroups();
      walls = walls();
      if (walls.isEmpty() || toolGroups.isEmpty()) {
        return this;
      }
      for (HoseWay hose : hoses()) {
        if (isWorthwhile(hose.cost, hose.gauge, hose.hose.part, null, null, null)) {
          walls(hose);
        } else if (isTooDear(hose.cost)
            || (!byCost && isFull() && whole(hose.gauge) < last().pascals)) {
          return this;
        }
      }
      return this;
    }

    private List<PlugGroup> groups(List<Option<Part.Plug>> plugs, Set<String> mating) {
      Map<String, Map<Integer, List<Option<Part.Plug>>>> byProfile = new HashMap<>();
      for (Option<Part.Plug> plug : plugs) {
        if (isAllowed(plug.broken) && (mating.isEmpty() || mating.contains(plug.part.profile()))) {
          byProfile
              .computeIfAbsent(mating.isEmpty() ? ANY : plug.part.profile(), any -> new HashMap<>())
              .computeIfAbsent(plug.end, any -> new ArrayList<>())
              .add(plug);
        }
      }
      List<PlugGroup> groups = new ArrayList<>();
      byProfile.forEach((profile, byEnd) -> byEnd.forEach((end, alike) -> {
        alike.sort(Comparator.<Option<Part.Plug>>comparingLong(Option::cost)
            .thenComparing(Option::part, Catalogue.BY_NAME));
        groups.add(new PlugGroup(profile, end, alike));
      }));
      return groups;
    }

    /** The plugs that can be joined to an end, by profile. */
    private Map<String, List<PlugWay>> ways(List<PlugGroup> groups, int end) {
      Map<String, List<PlugWay>> joined = new HashMap<>();
      for (PlugGroup group : groups) {
        AdapterPaths.Way way = ways.between(group.end, end);
        if (isAllowed(way.broken())) {
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

    private long cheapest(List<PlugWay> plugs) {
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
      for (Option<Part.Socket> socket : toolSockets) {
        if (isAllowed(socket.broken)) {
          for (String profile : profiles(socket.part, atTool)) {
            byProfile
                .computeIfAbsent(profile, any -> new HashMap<>())
                .computeIfAbsent(socket.end, any -> new ArrayList<>())
                .add(socket);
          }
        }
      }
      List<ToolGroup> groups = new ArrayList<>();
      byProfile.forEach((profile, byEnd) -> {
        List<PlugWay> plugs = atTools.get(profile);
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

    private List<WallWay> walls() {
      Set<String> offered = new TreeSet<>();
      hosePlugGroups.forEach(group -> offered.add(group.profile));
      List<WallWay> joined = new ArrayList<>();
      for (WallWay wall : wallWays) {
        if (isAllowed(wall.broken) && offered.contains(wall.profile)) {
          joined.add(wall);
        }
      }
      return joined;
    }

    private List<HoseWay> hoses() {
      Map<String, Long> socketAtWall = new HashMap<>();
      Map<String, WallWay> bestAtWall = new HashMap<>();
      for (WallWay wall : walls) {
        socketAtWall.merge(wall.profile, wall.cost, Math::min);
        bestAtWall.merge(wall.profile, wall, (a, b) -> b.gauge > a.gauge ? b : a);
      }
      List<ToolWay> widest = new ArrayList<>(); // as if each went straight to the hose
      toolGroups.forEach(group -> group.sockets.forEach(socket ->
          widen(widest, new ToolWay(socket, group.profile, AdapterPaths.Way.DIRECT, 0L, 0L))));
      Map<Integer, Before> before = new HashMap<>();
      Map<Integer, Long> costBehind = new HashMap<>();
      List<HoseWay> ordered = new ArrayList<>();
      for (Option<Part.Hose> hose : hoses) {
        if (!isAllowed(hose.broken)) {
          continue;
        }
        Before upstream =
            before.computeIfAbsent(hose.end, end -> before(end, socketAtWall, bestAtWall));
        long downstream = costBehind.computeIfAbsent(hose.otherEnd, this::costBehind);
        if (upstream.cost != Long.MAX_VALUE && downstream != Long.MAX_VALUE) {
          ordered.add(new HoseWay(
              hose,
              upstream,
              hose.cost + upstream.cost + downstream,
              best(widest, air.behind(hose.part.conduit(), upstream.air))));
        }
      }
      Comparator<HoseWay> byCostFirst = Comparator.comparingLong(HoseWay::cost);
      Comparator<HoseWay> byGauge = Comparator.comparingDouble(HoseWay::gauge).reversed();
      ordered.sort(
          (byCost ? byCostFirst.thenComparing(byGauge) : byGauge.thenComparing(byCostFirst))
              .thenComparing(hose -> hose.hose.part, Catalogue.BY_NAME));
      return ordered;
    }

    private Before before(
        int end, Map<String, Long> socketAtWall, Map<String, WallWay> bestAtWall) {
      Map<String, List<PlugWay>> plugs = ways(hosePlugGroups, end);
      long cost = Long.MAX_VALUE;
      WallWay best = null;
      for (Map.Entry<String, List<PlugWay>> plug : plugs.entrySet()) {
        Long socket = socketAtWall.get(plug.getKey());
        WallWay wall = bestAtWall.get(plug.getKey());
        if (socket != null && wall != null) {
          cost = Math.min(cost, socket + cheapest(plug.getValue()));
          best = best == null || wall.gauge > best.gauge ? wall : best;
        }
      }
      return new Before(plugs, cost, best == null ? null : best.air);
    }

    /** The least that socket and plug of the tool cost behind a hose that ends so. */
    private long costBehind(int end) {
      long cost = Long.MAX_VALUE;
      for (ToolGroup group : toolGroups) {
        AdapterPaths.Way way = ways.between(end, group.end);
        if (isAllowed(way.broken())) {
          cost = Math.min(cost, group.cheapest + way.cost());
        }
      }
      return cost;
    }

    /** The sockets at the wall before a hose that begins so, each with the least its plug costs. */
    private List<WallWay> wallsBefore(HoseWay hose) {
      return wallsBefore.computeIfAbsent(hose.hose.end, any -> {
        Map<String, Long> least = new HashMap<>();
        hose.before.plugs.forEach((profile, plugs) -> least.put(profile, cheapest(plugs)));
        List<WallWay> here = new ArrayList<>();
        for (WallWay wall : walls) {
          Long plug = least.get(wall.profile);
          if (plug != null) {
            here.add(wall.withCost(wall.cost + plug));
          }
        }
        Comparator<WallWay> byCostFirst = Comparator.comparingLong(WallWay::cost);
        Comparator<WallWay> byGauge = Comparator.comparingDouble(WallWay::gauge).reversed();
        here.sort((byCost ? byCostFirst.thenComparing(byGauge) : byGauge.thenComparing(byCostFirst))
            .thenComparing(wall -> wall.socket.part, Catalogue.BY_NAME));
        return here;
      });
    }

    private Behind behind(HoseWay hose) {
      return behind.computeIfAbsent(hose.hose.otherEnd, end -> {
        List<ToolWay> here = new ArrayList<>();
        for (ToolGroup group : toolGroups) {
          AdapterPaths.Way way = ways.between(end, group.end);
          if (isAllowed(way.broken())) {
            for (Option<Part.Socket> socket : group.sockets) {
              long cost = socket.cost + way.cost();
              here.add(new ToolWay(socket, group.profile, way, cost, cost + group.plug));
            }
          }
        }
        Comparator<ToolWay> byCostFirst = Comparator.comparingLong(ToolWay::atLeast);
        Comparator<ToolWay> byWidth = Comparator.<ToolWay>comparingDouble(
                tool -> tool.socket.part.capacity().conductance().cubicMetresPerSecondPascal())
            .reversed();
        here.sort((byCost ? byCostFirst.thenComparing(byWidth) : byWidth.thenComparing(byCostFirst))
            .thenComparing(tool -> tool.socket.part, Catalogue.BY_NAME));
        return new Behind(here, byCost ? blocks(here) : List.of(block(here)));
      });
    }

    private static List<Block> blocks(List<ToolWay> byCostFirst) {
      List<Block> blocks = new ArrayList<>();
      int from = 0;
      for (int i = 1; i <= byCostFirst.size(); i++) {
        if (i == byCostFirst.size()
            || byCostFirst.get(i).atLeast != byCostFirst.get(from).atLeast) {
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
          && isAsWide(one.socket.part.capacity(), other.socket.part.capacity());
    }

    /** More of C and of b and less cracking pressure leave more behind; the index is not weighed against them. */
    private static boolean isAsWide(FlowCapacity one, FlowCapacity other) {
      return one.subsonicIndex() == other.subsonicIndex()
          && one.conductance().compareTo(other.conductance()) >= 0
          && one.criticalPressureRatio() >= other.criticalPressureRatio()
          && one.crackingPressure().compareTo(other.crackingPressure()) <= 0;
    }

    private @Nullable AirState behind(ToolWay tool, @Nullable AirState inlet) {
      return air.behind(tool.socket.part.capacity(), air.behind(tool.way.adapters(), inlet));
    }

    /** The most gauge pressure [Pa] that any of the sockets leaves. */
    private double best(List<ToolWay> widest, @Nullable AirState inlet) {
      double best = PressureCache.STARVED;
      if (inlet != null) {
        for (ToolWay tool : widest) {
          best = Math.max(best, air.gaugePascals(behind(tool, inlet)));
        }
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
      return gauge == PressureCache.STARVED ? -1L : (long) Math.floor(gauge + NOISE_PASCALS);
    }

    /** Whether anything that can follow a hose is worth a look. */
    private boolean isWorthwhileBehind(
        HoseWay hose,
        long cost,
        @Nullable AirState after,
        Part.@Nullable Socket wall,
        Part.@Nullable Plug plug) {
      for (Block block : behind(hose).blocks) {
        if (isTooDear(cost + block.cost)) {
          return false;
        }
        double gauge = best(block.widest, after);
        if (isWorthwhile(cost + block.cost, gauge, hose.hose.part, wall, plug, null)) {
          return true;
        }
      }
      return false;
    }

    private void walls(HoseWay hose) {
      long costBehind = behind(hose).cost();
      long hopeless = Long.MIN_VALUE;
      for (WallWay wall : wallsBefore(hose)) {
        long cost = hose.hose.cost + wall.cost;
        if (isTooDear(cost + costBehind)) {
          return;
        }
        if (cost == hopeless) {
          continue;
        }
        AirState after = air.behind(hose.hose.part.conduit(), wall.air);
        if (isWorthwhileBehind(hose, cost, after, wall.socket.part, null)) {
          plugs(hose, wall, wall.cost);
        } else if (byCost && !isWorthwhileBehind(hose, cost, after, null, null)) {
          hopeless = cost; // it is not the name: the next of this cost leave less pressure still
        } else if (!byCost
            && !isWorthwhileBehind(hose, hose.hose.cost + hose.before.cost, after, null, null)) {
          return;
        }
      }
    }

    private void plugs(HoseWay hose, WallWay wall, long wallCost) {
      List<PlugWay> plugs = hose.before.plugs.getOrDefault(wall.profile, List.of());
      long costWithout = hose.hose.cost + wallCost - cheapest(plugs);
      long costBehind = behind(hose).cost();
      for (PlugWay way : plugs) {
        if (isTooDear(costWithout + way.cheapest() + costBehind)) {
          return;
        }
        AirState after =
            air.behind(hose.hose.part.conduit(), air.behind(way.way.adapters(), wall.air));
        for (Option<Part.Plug> plug : way.group.plugs) {
          long cost = costWithout + way.way.cost() + plug.cost;
          if (isWorthwhileBehind(hose, cost, after, wall.socket.part, plug.part)) {
            tools(hose, wall, plug.part, cost, after);
          } else {
            break; // the plugs of a group are in order, and alike but for cost and name
          }
        }
      }
    }

    private void tools(
        HoseWay hose, WallWay wall, Part.Plug plug, long cost, @Nullable AirState before) {
      for (ToolWay tool : behind(hose).ways) {
        if (isTooDear(cost + tool.atLeast)) {
          return;
        }
        AirState after = behind(tool, before);
        if (isWorthwhile(
            cost + tool.atLeast,
            air.gaugePascals(after),
            hose.hose.part,
            wall.socket.part,
            plug,
            tool.socket.part)) {
          toolPlugs(hose, wall, plug, tool, cost + tool.cost, after);
        }
      }
    }

    private void toolPlugs(
        HoseWay hose,
        WallWay wall,
        Part.Plug plug,
        ToolWay tool,
        long cost,
        @Nullable AirState before) {
      for (PlugWay way : atTools.getOrDefault(tool.profile, List.of())) {
        double gauge = air.gaugePascals(air.behind(way.way.adapters(), before));
        for (Option<Part.Plug> last : way.group.plugs) {
          Found found = new Found(
              cost + way.way.cost() + last.cost,
              (long) Math.floor(gauge),
              hose.hose.part,
              wall.socket.part,
              plug,
              tool.socket.part,
              last.part);
          if (!suffices(gauge) || !couldEnter(found)) {
            break; // the plugs of a group are in order, and alike but for cost and name
          }
          offer(found);
        }
      }
    }
  }
}
