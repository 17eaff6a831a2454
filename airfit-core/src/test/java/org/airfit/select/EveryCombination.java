package org.airfit.select;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToLongBiFunction;
import org.airfit.MoreTries;
import org.airfit.joint.Chain;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;

/** What {@link Selection} promises, done the long way: every combination is built, judged and sorted. */
final class EveryCombination {

  /** A socket and the plug that goes into it. */
  private record Coupling(Part.Socket socket, Part.Plug plug) {

    boolean mates() {
      return socket.profiles().contains(plug.profile());
    }
  }

  /** So many can be built and judged in half a second. */
  private static final long MOST = MoreTries.isNight() ? 1_500L : 600L;

  private final Requirement job;
  private final Catalogue catalogue;
  private final ToldOnceMore rules;
  private final Map<List<End>, List<List<Part.Adapter>>> known = new HashMap<>();

  /** What is asked again and again while sorting. */
  private final IdentityHashMap<Proposal, Long> missed = new IdentityHashMap<>();

  private final IdentityHashMap<Proposal, Integer> asked = new IdentityHashMap<>();
  private final IdentityHashMap<Proposal, Integer> doubt = new IdentityHashMap<>();
  private final IdentityHashMap<Proposal, Double> spare = new IdentityHashMap<>();

  EveryCombination(Requirement job, Catalogue catalogue) {
    this.job = job;
    this.rules = new ToldOnceMore(job);
    this.catalogue = catalogue;
  }

  private <T extends Part> List<T> all(Class<T> kind) {
    return catalogue.parts().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  /** Every set of parts that can be chosen, each with the adapters with which it stands first. */
  List<Proposal> proposals() {
    List<List<List<Part>>> slots = slots().stream().map(this::options).toList();
    List<Proposal> proposals = new ArrayList<>();
    for (List<List<Part>> chosen : ofOneProfile(product(slots))) {
      List<Part> parts = chosen.stream().flatMap(List::stream).toList();
      joined(parts).stream().min(amongAdapters()).ifPresent(proposals::add);
    }
    return proposals;
  }

  /** The slots of all lines, one line after another. */
  private List<Slot> slots() {
    List<Slot> all = new ArrayList<>(job.layout().slots());
    job.layout().lines().forEach(line -> addSlots(line, all));
    return all;
  }

  private static void addSlots(ToolLine line, List<Slot> all) {
    all.addAll(line.slots());
    line.lines().forEach(behind -> addSlots(behind, all));
  }

  /** The lines that begin at a splitter. */
  private static List<ToolLine> linesBehind(
      Slot.Splitter splitter, List<Slot> slots, List<ToolLine> lines) {
    if (slots.contains(splitter)) {
      return slots.get(slots.size() - 1).equals(splitter) ? lines : List.of();
    }
    return lines.stream()
        .flatMap(line -> linesBehind(splitter, line.slots(), line.lines()).stream())
        .toList();
  }

  /** The couplings that must be of one profile with the one of this name, itself among them. */
  private Map<Integer, Slot.Coupling> group(String first) {
    Map<Integer, Slot.Coupling> group = new HashMap<>();
    Set<String> names = new HashSet<>(Set.of(first));
    List<Slot> slots = slots();
    for (int i = 0; i < slots.size(); i++) {
      if (slots.get(i) instanceof Slot.Coupling coupling
          && (coupling.name().equals(first)
              || coupling.sameAs().filter(names::contains).isPresent())) {
        names.add(coupling.name());
        group.put(i, coupling);
      }
    }
    return group;
  }

  private boolean isTied(Slot.Coupling coupling) {
    return coupling.sameAs().isPresent() || group(coupling.name()).size() > 1;
  }

  /** Where couplings must be of one profile, those choices in which they are and mate; all, where there are none. */
  private List<List<List<Part>>> ofOneProfile(List<List<List<Part>>> all) {
    List<List<List<Part>>> left = all;
    for (Slot slot : slots()) {
      if (slot instanceof Slot.Coupling first && first.sameAs().isEmpty() && isTied(first)) {
        Map<Integer, Slot.Coupling> group = group(first.name());
        List<List<List<Part>>> good =
            left.stream().filter(chosen -> isOfOneProfile(chosen, group)).toList();
        left = good.isEmpty() ? left : good;
      }
    }
    return left;
  }

  private boolean isOfOneProfile(List<List<Part>> chosen, Map<Integer, Slot.Coupling> group) {
    Set<String> profiles = new HashSet<>();
    boolean isGood = true;
    for (Map.Entry<Integer, Slot.Coupling> each : group.entrySet()) {
      List<Part> pair = chosen.get(each.getKey());
      Coupling made = new Coupling((Part.Socket) pair.get(0), (Part.Plug) pair.get(1));
      String profile = made.plug().profile();
      profiles.add(profile);
      isGood &= made.mates()
          && each.getValue().profile().or(job::profile).map(profile::equals).orElse(true);
    }
    return isGood && profiles.size() == 1;
  }

  /** What can stand in a slot: a pair, or one part. */
  private List<List<Part>> options(Slot slot) {
    if (slot instanceof Slot.Coupling coupling && isTied(coupling)) {
      List<List<Part>> pairs = new ArrayList<>();
      for (Part socket : coupling.socket().map(List::of).orElse(all(Part.Socket.class))) {
        for (Part plug : coupling.plug().map(List::of).orElse(all(Part.Plug.class))) {
          pairs.add(List.of(socket, plug));
        }
      }
      return pairs;
    }
    if (slot instanceof Slot.Coupling coupling) {
      return couplings(
              coupling.socket().map(List::of).orElse(all(Part.Socket.class)),
              coupling.plug().map(List::of).orElse(all(Part.Plug.class)),
              coupling.profile().or(job::profile))
          .stream()
          .map(pair -> List.<Part>of(pair.socket(), pair.plug()))
          .toList();
    }
    if (slot instanceof Slot.Hose hose) {
      return hose.hose().map(List::of).orElse(all(Part.Hose.class)).stream()
          .filter(each -> hose.bore().isEmpty()
              || each.bore().nominal().metres() == hose.bore().get().nominal().metres())
          .map(List::<Part>of)
          .toList();
    }
    if (slot instanceof Slot.Regulated regulated) {
      return regulated.regulator().map(List::of).orElse(all(Part.Regulator.class)).stream()
          .filter(each -> each.kind() == regulated.kind())
          .map(List::<Part>of)
          .toList();
    }
    if (slot instanceof Slot.Splitter splitter) {
      return splitter.splitter().map(List::of).orElse(all(Part.Splitter.class)).stream()
          .filter(each -> leadsToAll(
              each, linesBehind(splitter, job.layout().slots(), job.layout().lines())))
          .map(List::<Part>of)
          .toList();
    }
    Slot.InLine line = (Slot.InLine) slot;
    return line
        .device()
        .map(List::of)
        .orElseGet(() -> all(Part.Device.class).stream()
            .filter(device -> device.kind() == line.kind())
            .toList())
        .stream()
        .map(List::<Part>of)
        .toList();
  }

  /** Whether every line has an outlet, and those that are alike have the same. */
  private static boolean leadsToAll(Part.Splitter splitter, List<ToolLine> lines) {
    int next = 0;
    for (ToolLine line : lines) {
      Set<End> ends = new HashSet<>();
      for (int i = 0; i < line.count(); i++) {
        if (next == splitter.outlets().size()) {
          return false;
        }
        ends.add(splitter.outlets().get(next++));
      }
      if (ends.size() > 1) {
        return false;
      }
    }
    return true;
  }

  private static <T> List<List<T>> product(List<List<T>> each) {
    List<List<T>> all = List.of(List.of());
    for (List<T> options : each) {
      List<List<T>> longer = new ArrayList<>();
      for (List<T> row : all) {
        options.forEach(option -> longer.add(with(row, option)));
      }
      all = longer;
    }
    return all;
  }

  /** How many combinations there are, adapters told apart: with too many this takes too long. */
  boolean isSmall() {
    return isSmall(MOST);
  }

  boolean isSmall(long most) {
    long count = 0L;
    for (List<List<Part>> chosen :
        ofOneProfile(product(slots().stream().map(this::options).toList()))) {
      long joined = 1L;
      for (List<List<Part.Adapter>> joint :
          joints(chosen.stream().flatMap(List::stream).toList())) {
        joined *= joint.size();
      }
      count += joined;
      if (count > most) {
        return false;
      }
    }
    return true;
  }

  /** The same parts with all adapters that could go between them. */
  private List<Proposal> joined(List<Part> parts) {
    List<Placed> placed = new ArrayList<>();
    List<Position> positions = Position.of(job);
    for (int i = 0; i < parts.size(); i++) {
      placed.add(new Placed(positions.get(i), parts.get(i)));
    }
    return product(joints(parts)).stream()
        .map(adapters -> new Proposal(Assembly.of(job, placed, adapters)))
        .toList();
  }

  /** The adapters that could go at each joint. */
  private List<List<List<Part.Adapter>>> joints(List<Part> parts) {
    Walk walk = new Walk(parts);
    walk.from(
        job.outlet(),
        job.layout().slots(),
        job.layout().lines(),
        job.layout().lines().isEmpty() ? Optional.of(job.toolInlet()) : Optional.empty());
    return walk.joints;
  }

  /** Goes from the outlet to every tool, line after line, each from the outlet of its splitter that it takes. */
  private final class Walk {

    private final List<List<List<Part.Adapter>>> joints = new ArrayList<>();
    private final List<Part> parts;
    private int next;

    Walk(List<Part> parts) {
      this.parts = parts;
    }

    void from(End first, List<Slot> slots, List<ToolLine> lines, Optional<End> inlet) {
      End open = first;
      List<End> outlets = List.of();
      for (int i = 0; i < slots.size(); i++) {
        Part part = parts.get(next++);
        if (part instanceof Part.Socket socket) {
          joints.add(chains(open, socket.end()));
          open = ((Part.Plug) parts.get(next++)).end();
        } else if (part instanceof Part.Hose hose) {
          joints.add(chains(open, hose.upstream()));
          open = hose.downstream();
        } else if (part instanceof Part.Device device) {
          joints.add(chains(open, device.upstream()));
          open = device.downstream();
        } else if (part instanceof Part.Regulator regulator) {
          joints.add(chains(open, regulator.upstream()));
          open = regulator.downstream();
        } else if (part instanceof Part.Splitter splitter) {
          joints.add(chains(open, splitter.upstream()));
          outlets = splitter.outlets();
          open = outlets.get(0);
        }
      }
      if (inlet.isPresent()) {
        joints.add(chains(open, inlet.get()));
      }
      int outlet = 0;
      for (ToolLine line : lines) {
        Optional<End> end = line.isToTool() ? Optional.of(line.inlet()) : Optional.empty();
        from(outlets.get(outlet), line.slots(), line.lines(), end);
        outlet += line.count();
      }
    }
  }

  /** Pairs that mate and are of the wanted profile; where there are none, every pair. */
  private static List<Coupling> couplings(
      List<Part.Socket> sockets, List<Part.Plug> plugs, Optional<String> profile) {
    List<Coupling> all = new ArrayList<>();
    sockets.forEach(socket -> plugs.forEach(plug -> all.add(new Coupling(socket, plug))));
    List<Coupling> mating = all.stream()
        .filter(Coupling::mates)
        .filter(pair -> profile.map(pair.plug().profile()::equals).orElse(true))
        .toList();
    return mating.isEmpty() ? all : mating;
  }

  private List<List<Part.Adapter>> chains(End from, End to) {
    return known.computeIfAbsent(List.of(from, to), any -> allChains(from, to));
  }

  private List<List<Part.Adapter>> allChains(End from, End to) {
    List<Chain<Part.Adapter>> chains = new ArrayList<>();
    if (!Mating.of(from, to).verdict().isSound()) {
      extend(from, to, from, List.of(), List.of(), chains);
    }
    return chains.isEmpty()
        ? List.of(List.of())
        : chains.stream().map(Chain::adapters).toList();
  }

  private void extend(
      End from,
      End to,
      End open,
      List<Part.Adapter> adapters,
      List<Mating> matings,
      List<Chain<Part.Adapter>> chains) {
    Mating last = Mating.of(open, to);
    if (!adapters.isEmpty() && last.verdict().isSound()) {
      chains.add(new Chain<>(from, to, adapters, with(matings, last)));
    }
    if (adapters.size() == Chain.MOST_ADAPTERS) {
      return;
    }
    for (Part.Adapter adapter : all(Part.Adapter.class)) {
      Mating one = Mating.of(open, adapter.one());
      if (one.verdict().isSound()) {
        extend(from, to, adapter.other(), with(adapters, adapter), with(matings, one), chains);
      }
      Mating other = Mating.of(open, adapter.other());
      if (other.verdict().isSound()) {
        extend(from, to, adapter.one(), with(adapters, adapter), with(matings, other), chains);
      }
    }
  }

  private static <T> List<T> with(List<T> list, T last) {
    List<T> longer = new ArrayList<>(list);
    longer.add(last);
    return longer;
  }

  private static List<Part> bought(List<? extends Part> parts) {
    List<Part> bought = new ArrayList<>(parts);
    bought.removeIf(part -> part.facts().isExisting());
    return bought;
  }

  static Comparator<List<? extends Part>> byCost(Requirement job) {
    Comparator<List<? extends Part>> pieces =
        Comparator.comparingInt(parts -> bought(parts).size());
    Function<List<? extends Part>, Long> unknown = parts ->
        bought(parts).stream().filter(part -> part.facts().price().isEmpty()).count();
    Function<List<? extends Part>, BigDecimal> sum = parts -> bought(parts).stream()
        .flatMap(part -> part.facts().price().stream())
        .map(Money::amount)
        .reduce(BigDecimal.ZERO, BigDecimal::add);
    Comparator<List<? extends Part>> price =
        Comparator.<List<? extends Part>, Long>comparing(unknown).thenComparing(sum);
    Comparator<List<? extends Part>> profiles =
        Comparator.comparingLong(EveryCombination::profiles);
    return job.objective() == Objective.FEWEST_PIECES
        ? pieces.thenComparing(profiles).thenComparing(price)
        : price.thenComparing(pieces).thenComparing(profiles);
  }

  /** How many profiles the couplings have. */
  static long profiles(List<? extends Part> parts) {
    return parts.stream()
        .filter(Part.Plug.class::isInstance)
        .map(plug -> ((Part.Plug) plug).profile())
        .distinct()
        .count();
  }

  private static int byName(List<? extends Part> one, List<? extends Part> other) {
    for (int i = 0; i < Math.min(one.size(), other.size()); i++) {
      int order = one.get(i).name().compareTo(other.get(i).name());
      order = order != 0 ? order : one.get(i).id().compareTo(other.get(i).id());
      if (order != 0) {
        return order;
      }
    }
    return Integer.compare(one.size(), other.size());
  }

  private static List<Part> inRow(Proposal p) {
    return p.parts().stream().filter(part -> !(part instanceof Part.Adapter)).toList();
  }

  /**
   * How far a proposal misses what is asked, in billionths: a rule that is broken is one, a hose that is too short by
   * the part of the reach that lacks, one that is too long by what is too much in parts of the longest it may be, and
   * the air by the part of the pressure that lacks.
   */
  private long missed(Proposal p) {
    return missed.computeIfAbsent(p, this::missedOnce);
  }

  private int asked(Proposal p) {
    return asked.computeIfAbsent(p, each -> rules.asked(each).size());
  }

  private long missedOnce(Proposal p) {
    long missed = 0L;
    for (Finding finding : p.unmet()) {
      missed += switch (finding.rule()) {
        case HOSE_REACHES -> hoses(p, ConduitRange::least, EveryCombination::lacking);
        case HOSE_SHORT_ENOUGH -> hoses(p, ConduitRange::most, EveryCombination::excess);
        case AIR_AT_TOOL -> missedAir(p);
        default -> 1_000_000_000L;
      };
    }
    return missed;
  }

  private long missedAir(Proposal p) {
    long missed = 0L;
    for (int i = 0; i < p.toEachTool().size(); i++) {
      Proposal way = p.toEachTool().get(i);
      double needed = way.requirement().leastRange().least().pascals();
      double atBest = Math.max(0.0, new ToldOnceMore(way.requirement()).atBest(way));
      missed += atBest < needed ? count(i) * part(needed - atBest, needed) : 0L;
    }
    return missed;
  }

  /** How often each line to a tool is there, counted through all lines alike; the only way counts once. */
  private int count(int tool) {
    List<Integer> counts = new ArrayList<>();
    job.layout().lines().forEach(line -> addCounts(line, 1, counts));
    return counts.isEmpty() ? 1 : counts.get(tool);
  }

  private static void addCounts(ToolLine line, int times, List<Integer> counts) {
    if (line.lines().isEmpty()) {
      counts.add(times * line.count());
    }
    line.lines().forEach(behind -> addCounts(behind, times * line.count(), counts));
  }

  private long hoses(
      Proposal p, Function<ConduitRange, Conduit> end, ToLongBiFunction<Slot.Hose, Double> share) {
    return hoses(p, job.layout().slots(), end, share)
        + job.layout().lines().stream()
            .mapToLong(line -> hoses(p, line, end, share))
            .sum();
  }

  private static long hoses(
      Proposal p,
      ToolLine line,
      Function<ConduitRange, Conduit> end,
      ToLongBiFunction<Slot.Hose, Double> share) {
    return line.count()
        * (hoses(p, line.slots(), end, share)
            + line.lines().stream()
                .mapToLong(behind -> hoses(p, behind, end, share))
                .sum());
  }

  private static long hoses(
      Proposal p,
      List<Slot> slots,
      Function<ConduitRange, Conduit> end,
      ToLongBiFunction<Slot.Hose, Double> share) {
    long missed = 0L;
    for (Slot slot : slots) {
      if (slot instanceof Slot.Hose hose) {
        missed += share.applyAsLong(
            hose, end.apply(p.hose(slot.name()).conduitRange()).length().metres());
      }
    }
    return missed;
  }

  private static long lacking(Slot.Hose hose, double metres) {
    double wanted = hose.reachRange().least().metres();
    return metres < wanted ? part(wanted - metres, wanted) : 0L;
  }

  /** Of one that is there the length is what it is; a whip hose of which no length is told is 10 ft long at most. */
  private static long excess(Slot.Hose hose, double metres) {
    double most = hose.atMost()
        .map(Length::metres)
        .orElse(
            hose.isWhip() && hose.hose().isEmpty()
                ? Math.max(10 * 0.3048, hose.reachRange().most().metres())
                : metres);
    return metres > most ? part(metres - most, most) : 0L;
  }

  private static long part(double lacking, double wanted) {
    return Math.max(1L, Math.round(1.0e9 * lacking / wanted));
  }

  /** What counts before the pressure. */
  private Comparator<Proposal> byWhatCounts() {
    return Comparator.comparingLong(this::missed)
        .thenComparingLong(EveryCombination::missingPieces)
        .thenComparingInt(EveryCombination::faults)
        .thenComparingInt(this::asked)
        .thenComparingInt(this::doubt)
        .thenComparing(Proposal::parts, byCost(job));
  }

  private static final Set<String> SIXTY = Set.of("NPT", "NPTF", "NPSC", "NPSM", "NPSF");
  private static final Set<String> FIFTY_FIVE = Set.of("G", "R", "Rc", "Rp");

  /** The letters of a thread; of what is no pipe thread its first word. */
  private static String standard(End end) {
    for (String word : end.toString().split(" ", -1)) {
      if (SIXTY.contains(word) || FIFTY_FIVE.contains(word)) {
        return word;
      }
    }
    return "";
  }

  /** In how many tenths of what may arrive a tool has too little, the most of any; none where that is sure. */
  int doubt(Proposal p) {
    return doubt.computeIfAbsent(
        p,
        each -> each.toEachTool().stream()
            .mapToInt(EveryCombination::doubtOfWay)
            .map(tenths -> turnsWithSettingsAlone(each) ? Math.min(1, tenths) : tenths)
            .max()
            .orElseThrow());
  }

  private static boolean turnsWithSettingsAlone(Proposal p) {
    Requirement job = p.requirement();
    return job.droopRange().isExact()
        && job.toEachTool().stream()
            .allMatch(way -> way.airAtOutlet().isExact()
                && way.demandRange().isExact()
                && way.leastRange().isExact())
        && job.pipes().stream().allMatch(pipe -> pipe.conduit().isExact())
        && p.parts().stream().allMatch(Known::isExact);
  }

  private static int doubtOfWay(Proposal way) {
    Requirement asked = way.requirement();
    double most =
        new ToldOnceMore(asked).atBest(way) - asked.leastRange().least().pascals();
    double least =
        Math.max(0.0, Shelf.pascalsAtTool(way)) - asked.leastRange().most().pascals();
    if (most < 0.0 || least >= 0.0) {
      return 0;
    }
    int tenths = 0;
    while (tenths < 9
        && most - least > 0.0
        && (tenths + 1) * (most - least) <= 10.0 * most + 1.0e-4) {
      tenths++;
    }
    return 10 - tenths;
  }

  /** The standard adapters that would join what nothing in the catalogue joins; what none join counts most of all. */
  private static long missingPieces(Proposal p) {
    long missing = 0L;
    for (Assembly.Between each : p.assembly().between()) {
      if (!each.joint().isSound()) {
        int pieces = each.joint().matings().get(0).between().size();
        boolean isOfTwoStandards = (SIXTY.contains(standard(each.joint().upstream()))
                && FIFTY_FIVE.contains(standard(each.joint().downstream())))
            || (FIFTY_FIVE.contains(standard(each.joint().upstream()))
                && SIXTY.contains(standard(each.joint().downstream())));
        missing +=
            each.count() * ((pieces == 0 ? 10_000L : pieces) + (isOfTwoStandards ? 100L : 0L));
      }
    }
    return missing;
  }

  /** How many parts break a rule, each in its place once, on whichever way; how far a hose reaches is measured. */
  private static int faults(Proposal p) {
    Requirement job = p.requirement();
    int faults = 0;
    for (Placed each : p.assembly().slotParts()) {
      int broken = 0;
      for (Stretch stretch : job.layout().stretches()) {
        if (stretch.line() == each.position().line()) {
          List<Requirement> ways =
              job.toEachTool().subList(stretch.firstTool(), stretch.firstTool() + stretch.tools());
          for (Requirement way : ways) {
            broken |= Rule.brokenBy(way, each.position(), each.part());
          }
        }
      }
      int measured = Rule.HOSE_REACHES.bit() | Rule.HOSE_SHORT_ENOUGH.bit();
      faults += Integer.bitCount(broken & ~measured);
    }
    return faults;
  }

  /** Of the same parts with different adapters. */
  private Comparator<Proposal> amongAdapters() {
    return byWhatCounts()
        .thenComparing(Comparator.comparingDouble(this::spare).reversed())
        .thenComparing(EveryCombination::byAdapters);
  }

  /** The pressure at the tool; of several tools what the one that has least to spare has over its need [Pa]. */
  private double spare(Proposal p) {
    return spare.computeIfAbsent(p, EveryCombination::spareOnce);
  }

  private static double spareOnce(Proposal p) {
    return p.requirement().layout().lines().isEmpty()
        ? Shelf.pascalsAtTool(p)
        : p.toEachTool().stream()
            .mapToDouble(
                way -> Shelf.pascalsAtTool(way) - way.requirement().least().pascals())
            .min()
            .orElseThrow();
  }

  /** At the first place where the adapters differ: none first, else by name. */
  private static int byAdapters(Proposal one, Proposal other) {
    for (int joint = 0; joint < one.joints().size(); joint++) {
      List<Part.Adapter> own = one.joints().get(joint).adapters();
      List<Part.Adapter> others = other.joints().get(joint).adapters();
      int order = byName(own, others);
      if (order != 0) {
        return order;
      }
    }
    return 0;
  }

  /** The list that {@link Selection} must give, whether something fits or not. */
  List<Proposal> best() {
    Comparator<Proposal> pressure =
        Comparator.<Proposal>comparingDouble(p -> Math.floor(spare(p))).reversed();
    Comparator<Proposal> name =
        Comparator.comparing(EveryCombination::inRow, EveryCombination::byName);
    List<Proposal> all = proposals();
    boolean isAny = all.stream().anyMatch(Proposal::fits);
    return all.stream()
        .filter(p -> !isAny || p.fits())
        .sorted(byWhatCounts().thenComparing(pressure).thenComparing(name))
        .limit(Selection.LISTED)
        .toList();
  }
}
