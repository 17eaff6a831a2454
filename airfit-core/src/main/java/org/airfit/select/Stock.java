package org.airfit.select;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.flow.FlowElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;

/** The positions of a job from the outlet to the tool, each with the parts of a catalogue that could stand there. */
final class Stock {

  /** The one profile of all sockets and plugs where none mates, so that a miss can be shown. */
  private static final String ANY = "";

  /** The rules whose misses are measured, as bits: a hose that is a little too short is a near miss. */
  private static final int MEASURED = Rule.HOSE_REACHES.bit();

  private final Requirement job;
  private final int most;
  private final Map<String, String> ties;
  private final EndNumbers ends = new EndNumbers();
  private final List<Row> inRow = new ArrayList<>();
  private final List<Candidate> adapters;
  private boolean isMating = true;
  private boolean isExact;

  Stock(Requirement job, Catalogue catalogue, int most) {
    this.job = job;
    this.most = most;
    this.isExact = job.isExact();
    this.ties = ties(job.layout());
    Set<String> mating = Set.of();
    List<Position> positions = Position.of(job);
    Map<String, Set<String>> matingOf = matingOf(positions, job, catalogue);
    for (Position position : positions) {
      if (position.isSocket()) {
        mating = matingOf.getOrDefault(position.name(), Set.of());
        isMating &= !mating.isEmpty();
      }
      inRow.add(new Row(position, candidates(position, parts(position, catalogue), mating)));
    }
    this.adapters = candidates(Position.ADAPTER, catalogue.all(Part.Adapter.class), Set.of());
  }

  /** What could stand at a position: what is there, or what the catalogue has. */
  private static List<? extends Part> parts(Position position, Catalogue catalogue) {
    if (position.slot() instanceof Slot.Coupling coupling) {
      return position.isSocket() ? sockets(coupling, catalogue) : plugs(coupling, catalogue);
    }
    if (position.slot() instanceof Slot.Hose hose) {
      return hose.hose().map(List::of).orElseGet(() -> catalogue.all(Part.Hose.class));
    }
    if (position.slot() instanceof Slot.Regulated regulated) {
      return regulated
          .regulator()
          .map(List::of)
          .orElseGet(() -> catalogue.all(Part.Regulator.class));
    }
    return position.slot() instanceof Slot.InLine line ? devices(line, catalogue) : List.of();
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

  /** One position with its candidates. */
  final class Row {

    private final Position place;
    private final List<Candidate> kept;
    private final List<Candidate> unbroken;

    private Row(Position place, List<Candidate> candidates) {
      this.place = place;
      this.kept = Front.ofCandidates(candidates, most);
      this.unbroken = kept.stream().filter(Candidate::isSuited).toList();
    }

    Position place() {
      return place;
    }

    /** What may be listed here, by the profile of the plug. */
    Map<String, List<Candidate>> byProfile(boolean isSuited) {
      Map<String, List<Candidate>> groups = new LinkedHashMap<>();
      for (Candidate candidate : suited(isSuited)) {
        for (String profile : candidate.takes()) {
          groups.computeIfAbsent(profile, any -> new ArrayList<>()).add(candidate);
        }
      }
      return groups;
    }

    /** What may be listed here, by the end towards the supply. */
    Map<Integer, List<Candidate>> byEnd(boolean isSuited) {
      Map<Integer, List<Candidate>> groups = new LinkedHashMap<>();
      for (Candidate candidate : suited(isSuited)) {
        groups.computeIfAbsent(candidate.near(), any -> new ArrayList<>()).add(candidate);
      }
      return groups;
    }

    /** What may be listed here, all or what breaks nothing. */
    List<Candidate> suited(boolean isSuited) {
      return isSuited ? unbroken : kept;
    }
  }

  private List<Candidate> candidates(
      Position position, List<? extends Part> parts, Set<String> mating) {
    List<Part> byName = new ArrayList<>(parts);
    byName.sort(Catalogue.BY_NAME);
    List<Candidate> candidates = new ArrayList<>();
    AbsolutePressure atmosphere = job.toOutlet().atmosphere();
    for (Part part : byName) {
      Set<String> takes = takes(position, part, mating);
      if (position.isCoupling() && takes.isEmpty()) {
        continue; // it mates with nothing here
      }
      int broken = Rule.brokenBy(job, position, part);
      FlowElement worst = position.element(part, atmosphere, Known.AT_WORST);
      candidates.add(new Candidate(
          part,
          position,
          candidates.size(),
          broken & ~MEASURED,
          PartQuestions.of(job, position, part),
          (broken & MEASURED) == 0 ? 0L : shortBy(position, part),
          job.objective().cost(part.facts()),
          ends.number(Ends.upstream(part)),
          ends.number(Ends.downstream(part)),
          takes,
          tie(position, part, mating),
          worst,
          Known.isExact(part) ? worst : position.element(part, atmosphere, Known.AT_BEST)));
      isExact &= Known.isExact(part);
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
    for (Slot slot : layout.slots()) {
      if (slot instanceof Slot.Coupling coupling && coupling.sameAs().isPresent()) {
        String other = coupling.sameAs().get();
        firsts.putIfAbsent(other, other);
        firsts.put(coupling.name(), firsts.getOrDefault(other, other));
      }
    }
    return firsts;
  }

  private static Set<String> takes(Position position, Part part, Set<String> mating) {
    if (!position.isCoupling()) {
      return Set.of();
    }
    if (mating.isEmpty()) {
      return Set.of(ANY);
    }
    Set<String> takes = new TreeSet<>(
        part instanceof Part.Socket socket
            ? socket.profiles()
            : Set.of(((Part.Plug) part).profile()));
    takes.retainAll(mating);
    return takes;
  }

  /** How much of the reach a hose lacks, in billionths, at least one. */
  private static long shortBy(Position position, Part part) {
    double reach = position.reach().map(Length::metres).orElse(0.0);
    double lacking = reach - ((Part.Hose) part).shortest().metres();
    return Math.max(1L, Math.round(Choice.WHOLE_MISS * lacking / reach));
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
    Set<String> offered = new TreeSet<>();
    plugs.forEach(plug -> offered.add(plug.profile()));
    position.profile(job).ifPresent(wanted -> offered.retainAll(Set.of(wanted)));
    Set<String> taken = new TreeSet<>();
    sockets.forEach(socket -> taken.addAll(socket.profiles()));
    offered.retainAll(taken);
    return offered;
  }

  /** Whether all is known exactly, so that the air at worst is the air at best. */
  boolean isExact() {
    return isExact;
  }

  /** The positions in the order the air goes. */
  List<Row> inRow() {
    return inRow;
  }

  /** The number of the end that the piping has at the outlet. */
  int outlet() {
    return ends.number(job.outlet());
  }

  /** The number of the end that the tool has. */
  int toolInlet() {
    return ends.number(job.toolInlet());
  }

  /** The adapters, all or those that break nothing. */
  AdapterStock adapters(boolean isSuited) {
    return new AdapterStock(
        ends, isSuited ? adapters.stream().filter(Candidate::isSuited).toList() : adapters);
  }

  /** A little of what parts cost: the least price of one, or where none has a price, next to nothing. */
  long costStep() {
    return inRow.stream()
        .flatMap(row -> row.kept.stream())
        .flatMap(candidate -> candidate.part().facts().price().stream())
        .mapToLong(Objective::hundredthsOfCents)
        .filter(price -> price > 0L)
        .min()
        .orElse(1L);
  }

  /** The rules that no choice of parts mends, as bits: the job's own, and profiles where no pair mates. */
  int brokenByJob() {
    return Rule.brokenBy(job) | (isMating ? 0 : Rule.PROFILE_MATES.bit());
  }

  /** What the job itself misses, in billionths. */
  long missedByJob() {
    return Integer.bitCount(brokenByJob()) * Choice.WHOLE_MISS;
  }

  /** {@return the kinds of part that the catalogue lacks, in words; empty where there is something to combine} */
  List<String> missing() {
    List<String> missing = new ArrayList<>();
    if (inRow.stream().anyMatch(row -> row.place.isCoupling() && row.kept.isEmpty())) {
      missing.add("The catalogue has no socket and plug for every coupling: add them.");
    }
    if (inRow.stream().anyMatch(row -> row.place.isHose() && row.kept.isEmpty())) {
      missing.add("The catalogue has no hose: add one.");
    }
    if (inRow.stream().anyMatch(row -> row.place.isRegulator() && row.kept.isEmpty())) {
      missing.add("The catalogue has no regulator: add one.");
    }
    for (Row row : inRow) {
      if (row.place.slot() instanceof Slot.InLine line && row.kept.isEmpty()) {
        missing.add("The catalogue has no part of the kind " + line.kind() + " for " + line.name()
            + ": add one.");
      }
    }
    return missing;
  }

  /** The parts that were chosen, adapters among them, with the joints they make. */
  Assembly assembly(List<Candidate> chosen) {
    List<List<Part.Adapter>> adapters = new ArrayList<>();
    List<Placed> placed = new ArrayList<>();
    List<Part.Adapter> open = new ArrayList<>();
    for (Candidate each : chosen) {
      if (each.part() instanceof Part.Adapter adapter) {
        open.add(adapter);
      } else {
        if (!each.position().isPlug()) {
          adapters.add(List.copyOf(open));
          open.clear();
        }
        placed.add(new Placed(each.position(), each.part()));
      }
    }
    adapters.add(List.copyOf(open));
    return Assembly.of(job, placed, adapters);
  }
}
