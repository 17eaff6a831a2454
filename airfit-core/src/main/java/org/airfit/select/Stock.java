package org.airfit.select;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.flow.FlowElement;
import org.airfit.internal.Interruption;
import org.airfit.joint.End;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.Range;
import org.jspecify.annotations.Nullable;

/** The positions of a job from the outlet to the tool, each with the parts of a catalogue that could stand there. */
final class Stock {

  /** The one profile of all sockets and plugs where none mates, so that a miss can be shown. */
  private static final String ANY = "";

  private final Requirement job;
  private final List<Stretch> stretches;
  private final Map<String, String> ties;
  private final EndNumbers ends;
  private final List<Row> inRow = new ArrayList<>();
  private final List<Leg> legs = new ArrayList<>();
  private final List<List<Candidate>> adapters = new ArrayList<>();
  private @Nullable Row lastPlug;
  private boolean isMating = true;
  private boolean arePartsKnown = true;
  private final boolean isExact;

  Stock(Requirement job, Catalogue catalogue, int most) {
    this.job = job;
    this.stretches = job.layout().stretches();
    this.ties = ties(job.layout());
    this.ends = new EndNumbers();
    Set<String> mating = Set.of();
    List<Position> positions = Position.of(job);
    Map<String, Set<String>> matingOf = matingOf(positions, job, catalogue);
    for (Position position : positions) {
      if (position.isSocket()) {
        mating = matingOf.getOrDefault(position.name(), Set.of());
        isMating &= !mating.isEmpty();
      }
      addRow(new Row(position, candidates(position, parts(position, catalogue), mating), most));
    }
    addLegs();
    for (Stretch stretch : stretches) {
      adapters.add(candidates(
          Position.adapter(stretch.line(), stretch.count()),
          catalogue.all(Part.Adapter.class),
          Set.of()));
    }
    this.isExact = arePartsKnown && job.isExact();
  }

  private Stock(Requirement job, Stock judged, int most) {
    this.job = job;
    this.stretches = job.layout().stretches();
    this.ties = judged.ties;
    this.ends = judged.ends;
    this.isMating = judged.isMating;
    this.arePartsKnown = judged.arePartsKnown;
    judged.inRow.forEach(row -> addRow(row.listing(most)));
    addLegs();
    adapters.addAll(judged.adapters);
    this.isExact = arePartsKnown && job.isExact();
  }

  /**
   * The same parts for the same job but for what its tools need: no part is judged by that, so that none is judged
   * again.
   *
   * @param other the job with another pressure at its tools
   * @param most how many are listed
   */
  Stock needing(Requirement other, int most) {
    return new Stock(other, this, most);
  }

  private void addRow(Row row) {
    inRow.add(row);
    lastPlug = row.place().isPlug() ? row : lastPlug;
  }

  private void addLegs() {
    for (Stretch stretch : stretches) {
      legs.add(leg(stretch));
    }
  }

  private Leg.Tool tool(Requirement way) {
    return new Leg.Tool(
        ends.number(way.toolInlet()),
        way.leastRange().most().pascals(),
        way.leastRange().least().pascals());
  }

  /** The flows at the end of a leg [kg/s]: what its tool takes, or what all lines behind it draw. */
  private record Drawn(double most, double least) {
    Drawn(Range<FreeAirFlow> air) {
      this(air.most().massFlow().kilogramsPerSecond(), air.least().massFlow().kilogramsPerSecond());
    }
  }

  /** The positions of a stretch with their flows: in front of a splitter also what others take behind it. */
  private Leg leg(Stretch stretch) {
    Requirement way = job.toEachTool().get(stretch.firstTool());
    Drawn atEnd = new Drawn(
        stretch.isToTool()
            ? way.demandRange()
            : Flows.sum(stretch.lines().stream().flatMap(line -> line.drawn(line.count()))));
    List<Row> rows =
        inRow.stream().filter(row -> row.place().line() == stretch.line()).toList();
    List<Double> most = new ArrayList<>(List.of(atEnd.most));
    List<Double> least = new ArrayList<>(List.of(atEnd.least));
    for (int i = rows.size() - 1; i >= 0; i--) {
      Drawn others = rows.get(i).place().others().map(Drawn::new).orElse(new Drawn(0.0, 0.0));
      most.add(0, most.get(0) + others.most);
      least.add(0, least.get(0) + others.least);
    }
    return new Leg(
        stretch,
        rows,
        stretch.isToTool() ? tool(way) : null,
        List.copyOf(most),
        List.copyOf(least));
  }

  /** What is asked of the ways that a position is part of. */
  private List<Requirement> ways(Position position) {
    Stretch stretch = stretch(position);
    return job.toEachTool().subList(stretch.firstTool(), stretch.firstTool() + stretch.tools());
  }

  private Stretch stretch(Position position) {
    return stretches.get(position.line() + 1);
  }

  /** What could stand at a position: what is there, or what the catalogue has. */
  private static List<? extends Part> parts(Position position, Catalogue catalogue) {
    if (position.slot() instanceof Slot.Coupling coupling) {
      return position.isSocket() ? sockets(coupling, catalogue) : plugs(coupling, catalogue);
    }
    if (position.slot() instanceof Slot.Hose hose) {
      return hose.hose()
          .map(List::of)
          .orElseGet(
              () -> catalogue.all(Part.Hose.class).stream().filter(hose::takes).toList());
    }
    if (position.slot() instanceof Slot.Regulated regulated) {
      return regulated
          .regulator()
          .map(List::of)
          .orElseGet(() -> catalogue.all(Part.Regulator.class).stream()
              .filter(each -> each.kind() == regulated.kind())
              .toList());
    }
    if (position.slot() instanceof Slot.Splitter splitter) {
      return splitter.splitter().map(List::of).orElseGet(() -> catalogue.all(Part.Splitter.class));
    }
    if (position.slot() instanceof Slot.Pipe pipe) {
      return List.of(pipe.pipe());
    }
    return position.slot() instanceof Slot.InLine line ? devices(line, catalogue) : List.of();
  }

  /** The lines that begin at a splitter: none where the way only goes on from it. */
  private List<ToolLine> linesBehind(Position position) {
    Stretch stretch = stretch(position);
    return stretch.last().equals(position.slot()) ? stretch.lines() : List.of();
  }

  /** Whether a splitter has an outlet for every line behind it, of one kind for those that are alike. */
  private boolean hasOutlets(Position position, Part.Splitter splitter) {
    int outlet = position.outlet();
    for (ToolLine line : linesBehind(position)) {
      List<End> outlets = splitter.outlets();
      int behind = outlet + line.count();
      if (behind > outlets.size()
          || outlets.subList(outlet, behind).stream().distinct().count() > 1) {
        return false;
      }
      outlet = behind;
    }
    return outlet < splitter.outlets().size() || !linesBehind(position).isEmpty();
  }

  /** Where the lines begin that a part leads to. */
  private List<Integer> outlets(Position position, Part part) {
    List<Integer> numbers = new ArrayList<>();
    if (part instanceof Part.Splitter splitter) {
      int outlet = position.outlet();
      for (ToolLine line : linesBehind(position)) {
        numbers.add(ends.number(splitter.outlets().get(outlet)));
        outlet += line.count();
      }
    }
    return List.copyOf(numbers);
  }

  private static List<Part.Device> devices(Slot.InLine line, Catalogue catalogue) {
    return line.device()
        .map(List::of)
        .orElseGet(() -> catalogue.all(Part.Device.class).stream()
            .filter(device -> device.kind() == line.kind())
            .toList());
  }

  private static List<Part.Socket> sockets(Slot.Coupling coupling, Catalogue catalogue) {
    return coupling.socket().map(List::of).orElseGet(() -> catalogue.all(Part.Socket.class));
  }

  private static List<Part.Plug> plugs(Slot.Coupling coupling, Catalogue catalogue) {
    return coupling.plug().map(List::of).orElseGet(() -> catalogue.all(Part.Plug.class));
  }

  private List<Candidate> candidates(
      Position position, List<? extends Part> parts, Set<String> mating) {
    List<Part> byName = new ArrayList<>(parts);
    byName.sort(
        Catalogue.BY_NAME); // what the catalogue has comes so already, and is only looked through
    List<Candidate> candidates = new ArrayList<>();
    AbsolutePressure atmosphere = job.toOutlet().atmosphere();
    Map<Set<String>, Set<String>> taken = new HashMap<>(); // a catalogue has few kinds of them
    for (Part part : byName) {
      Interruption.check(Front.SEARCH);
      Set<String> takes =
          taken.computeIfAbsent(profiles(part), profiles -> takes(position, profiles, mating));
      if (position.isCoupling() && takes.isEmpty()) {
        continue; // it mates with nothing here
      }
      if (part instanceof Part.Splitter splitter && !hasOutlets(position, splitter)) {
        continue;
      }
      int broken = 0;
      int asked = 0;
      for (Requirement way : ways(position)) {
        broken |= Rule.brokenBy(way, position, part);
        asked |= PartQuestions.of(way, position, part);
      }
      FlowElement worst = position.element(part, atmosphere, Known.AT_WORST);
      boolean isPartKnown = Known.isExact(part);
      boolean isKnown = position.isExact() && isPartKnown;
      candidates.add(new Candidate(
          part,
          position,
          candidates.size(),
          broken,
          asked,
          (broken & Candidate.MEASURED) == 0 ? 0L : position.count() * missedLength(position, part),
          position.count() * job.objective().cost(part.facts()),
          ends.number(Ends.upstream(part)),
          ends.number(Ends.downstream(position, part)),
          outlets(position, part),
          takes,
          tie(position, part, mating),
          isPartKnown,
          worst,
          isKnown ? worst : position.element(part, atmosphere, Known.AT_BEST)));
      arePartsKnown &= isKnown;
    }
    return candidates;
  }

  /** A plug of one of several couplings that must be of one profile is tied to the first of them. */
  private Tie tie(Position position, Part part, Set<String> mating) {
    String first = ties.getOrDefault(position.name(), "");
    return first.isEmpty() || mating.isEmpty() || !(part instanceof Part.Plug plug)
        ? Tie.NONE
        : new Tie(first, plug.profile());
  }

  /** The couplings that must be of one profile, each with the first of them. */
  private static Map<String, String> ties(Layout layout) {
    Map<String, String> firsts = new HashMap<>();
    for (Slot slot : layout.allSlots()) {
      if (slot instanceof Slot.Coupling coupling && coupling.sameAs().isPresent()) {
        String other = coupling.sameAs().get();
        firsts.putIfAbsent(other, other);
        firsts.put(coupling.name(), firsts.getOrDefault(other, other));
      }
    }
    return firsts;
  }

  /** The profiles that a part is made for; none where it is no half of a coupling. */
  private static Set<String> profiles(Part part) {
    return part instanceof Part.Socket socket
        ? socket.profiles()
        : part instanceof Part.Plug plug ? Set.of(plug.profile()) : Set.of();
  }

  private static Set<String> takes(Position position, Set<String> profiles, Set<String> mating) {
    if (!position.isCoupling()) {
      return Set.of();
    }
    if (mating.isEmpty()) {
      return Set.of(ANY);
    }
    Set<String> takes = new TreeSet<>(profiles);
    takes.retainAll(mating);
    return new LinkedHashSet<>(takes); // in order, and quick to look through
  }

  /** How much of the reach a hose lacks, or by which part of the longest it may be it is too long, in billionths. */
  private static long missedLength(Position position, Part part) {
    double shortest = ((Part.Hose) part).shortest().metres();
    double longest = ((Part.Hose) part).longest().metres();
    double reach = position.reach().map(range -> range.least().metres()).orElse(longest);
    double limit = position.longest().map(Length::metres).orElse(shortest);
    return share(reach - longest, reach) + share(shortest - limit, limit);
  }

  /** What a length misses of what is wanted, in billionths, at least one; none where it misses nothing. */
  private static long share(double missed, double wanted) {
    return missed > 0.0 ? Math.max(1L, Math.round(Choice.WHOLE_MISS * missed / wanted)) : 0L;
  }

  /**
   * The profiles of pairs that mate and are wanted at every coupling; none where no pair does. Couplings of one profile
   * have those that mate at each of them.
   */
  private static Map<String, Set<String>> matingOf(
      List<Position> positions, Requirement job, Catalogue catalogue) {
    Map<String, Set<String>> mating = new HashMap<>();
    for (Position position : positions) {
      if (position.isSocket() && position.slot() instanceof Slot.Coupling coupling) {
        Set<String> own =
            mating(position, job, sockets(coupling, catalogue), plugs(coupling, catalogue));
        coupling.sameAs().map(mating::get).ifPresent(tied -> {
          tied.retainAll(own);
          mating.put(coupling.name(), tied);
        });
        mating.putIfAbsent(coupling.name(), own);
      }
    }
    return mating;
  }

  private static Set<String> mating(
      Position position, Requirement job, List<Part.Socket> sockets, List<Part.Plug> plugs) {
    // thousands of parts have a few profiles, which are put in order at last
    Set<String> offered = new HashSet<>();
    plugs.forEach(plug -> offered.add(plug.profile()));
    position.profile(job).ifPresent(wanted -> offered.retainAll(Set.of(wanted)));
    Set<String> taken = new HashSet<>();
    sockets.forEach(socket -> taken.addAll(socket.profiles()));
    offered.retainAll(taken);
    return new TreeSet<>(offered);
  }

  /** Whether all is known exactly, so that the air at worst is the air at best. */
  boolean isExact() {
    return isExact;
  }

  /** Whether at every coupling some profiles mate, so that each plug counts by its own. */
  boolean isMating() {
    return isMating;
  }

  /** Whether what regulators are set to is not known, and all else that the job tells of the air is. */
  boolean dependsOnSettings() {
    return job.isExactButForSettings()
        && !(job.settingRange().isExact()
            && inRow.stream().allMatch(row -> row.place().isExact()));
  }

  /** The positions in the order the air goes, one line after another. */
  List<Row> inRow() {
    return inRow;
  }

  /** By what proposals are put in order. */
  Objective objective() {
    return job.objective();
  }

  /** The profiles that the plug of each coupling may have. */
  List<Set<String>> profiles(boolean isWhole) {
    List<Set<String>> profiles = new ArrayList<>();
    for (Row row : inRow) {
      if (row.place().isPlug()) {
        Set<String> there = new HashSet<>();
        for (Candidate plug : row.suited(isWhole)) {
          there.add(((Part.Plug) plug.part()).profile());
        }
        profiles.add(there);
      }
    }
    return profiles;
  }

  /** Whether no coupling is chosen behind the plugs of a row. */
  boolean isLastPlug(Row plugs) {
    return plugs.equals(lastPlug);
  }

  /**
   * The legs: from the outlet, and where there are several tools those of all lines, as the stretches of the layout.
   */
  List<Leg> legs() {
    return legs;
  }

  /** The number of the end that the piping has at the outlet. */
  int outlet() {
    return ends.number(job.outlet());
  }

  /** The adapters of a leg, all or those that break nothing. */
  AdapterStock adapters(Leg leg, boolean isSuited) {
    List<Candidate> all = adapters.get(legs.indexOf(leg));
    return new AdapterStock(
        ends, isSuited ? all.stream().filter(Candidate::isSuited).toList() : all);
  }

  /** A little of what parts cost: the least price of one, or where none has a price, next to nothing. */
  long costStep() {
    Money least = null;
    for (Row row : inRow) {
      for (Candidate candidate : row.candidates()) {
        Money price = candidate.part().facts().price().orElse(null);
        if (price != null
            && price.amount().signum() > 0
            && (least == null || price.compareTo(least) < 0)) {
          least = price;
        }
      }
    }
    return least == null ? 1L : Objective.hundredthsOfCents(least);
  }

  /** The rules that no choice of parts mends, as bits: the job's own, and profiles where no pair mates. */
  int brokenByJob() {
    int broken = isMating ? 0 : Rule.PROFILE_MATES.bit();
    for (Requirement way : job.toEachTool()) {
      broken |= Rule.brokenBy(way);
    }
    return broken;
  }

  /** What the job itself misses, in billionths. */
  long missedByJob() {
    return Integer.bitCount(brokenByJob()) * Choice.WHOLE_MISS;
  }

  /** {@return the kinds of part that the catalogue lacks, in words; empty where there is something to combine} */
  List<String> missing() {
    List<String> missing = new ArrayList<>();
    if (inRow.stream().anyMatch(row -> row.place().isCoupling() && row.isEmpty())) {
      missing.add("The catalogue has no socket and plug for every coupling: add them.");
    }
    inRow.stream()
        .filter(row -> row.place().isHose() && row.isEmpty())
        .map(row -> noHose(row.place()))
        .distinct()
        .forEach(missing::add);
    inRow.stream()
        .filter(row -> row.place().isRegulator() && row.isEmpty())
        .map(row -> "The catalogue has no " + row.place().noun() + ": add one.")
        .distinct()
        .forEach(missing::add);
    for (Row row : inRow) {
      if (row.place().slot() instanceof Slot.Splitter splitter && row.isEmpty()) {
        int outlets = Math.max(
            splitter.outlet()
                + linesBehind(row.place()).stream().mapToInt(ToolLine::count).sum(),
            2);
        missing.add("The catalogue has no splitter with " + outlets + " outlets for "
            + splitter.name() + ", those of lines that are alike with the same end: add one.");
      }
      if (row.place().slot() instanceof Slot.InLine line && row.isEmpty()) {
        missing.add("The catalogue has no part of the kind " + line.kind() + " for " + line.name()
            + ": add one.");
      }
    }
    return missing;
  }

  private static String noHose(Position position) {
    String bore = position.slot() instanceof Slot.Hose hose
        ? hose.bore().map(said -> " of " + said.label() + " bore").orElse("")
        : "";
    return "The catalogue has no hose" + bore + ": add one.";
  }

  /** The parts that were chosen, adapters among them, with the joints they make. */
  Assembly assembly(List<Candidate> chosen) {
    List<List<Part.Adapter>> between = new ArrayList<>();
    List<Placed> placed = new ArrayList<>();
    List<Part.Adapter> open = new ArrayList<>();
    Stretch stretch = stretches.get(0);
    for (Candidate each : chosen) {
      if (each.position().line() != stretch.line()) {
        if (stretch.isToTool()) {
          between.add(List.copyOf(open)); // at the tool of the line before
          open.clear();
        }
        stretch = stretch(each.position());
      }
      if (each.part() instanceof Part.Adapter adapter) {
        open.add(adapter);
      } else {
        if (!each.position().isPlug()) {
          between.add(List.copyOf(open));
          open.clear();
        }
        placed.add(new Placed(each.position(), each.part()));
      }
    }
    between.add(List.copyOf(open));
    return Assembly.of(job, placed, between);
  }
}
