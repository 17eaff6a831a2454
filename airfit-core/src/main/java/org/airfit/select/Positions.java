package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.joint.End;
import org.airfit.quantity.Length;

/** The positions of a job from the outlet to the tool, each with the parts of a catalogue that could stand there. */
final class Positions {

  /** The one profile of all sockets and plugs where none mates, so that a miss can be shown. */
  private static final String ANY = "";

  /** The rules whose misses are measured, as bits: a hose that is a little too short is a near miss. */
  private static final int MEASURED = Rule.HOSE_REACHES.bit();

  private final Requirement job;
  private final int most;
  private final EndNumbers ends = new EndNumbers();
  private final List<Position> inRow;
  private final List<Candidate> adapters;
  private final boolean isMating;

  Positions(Requirement job, Catalogue catalogue, int most) {
    this.job = job;
    this.most = most;
    List<Part.Socket> sockets = catalogue.all(Part.Socket.class);
    List<Part.Plug> plugs = catalogue.all(Part.Plug.class);
    List<Part.Socket> outletSockets = job.outletSocket().map(List::of).orElse(sockets);
    List<Part.Plug> toolPlugs = job.toolPlug().map(List::of).orElse(plugs);
    Set<String> atOutlet = mating(outletSockets, plugs);
    Set<String> atTool = mating(sockets, toolPlugs);
    this.isMating = !atOutlet.isEmpty() && !atTool.isEmpty();
    this.inRow = List.of(
        position(Slot.OUTLET_SOCKET, outletSockets, atOutlet),
        position(Slot.HOSE_PLUG, plugs, atOutlet),
        position(
            Slot.HOSE,
            job.hose().map(List::of).orElseGet(() -> catalogue.all(Part.Hose.class)),
            Set.of()),
        position(Slot.TOOL_SOCKET, sockets, atTool),
        position(Slot.TOOL_PLUG, toolPlugs, atTool));
    this.adapters = candidates(Slot.ADAPTER, catalogue.all(Part.Adapter.class), Set.of());
  }

  /** One position with its candidates. */
  final class Position {

    private final Slot slot;
    private final List<Candidate> kept;
    private final List<Candidate> unbroken;

    private Position(Slot slot, List<Candidate> candidates) {
      this.slot = slot;
      this.kept = Front.ofCandidates(candidates, most);
      this.unbroken = kept.stream().filter(Candidate::isSuited).toList();
    }

    /** Whether a socket stands here, and its plug at the next position. */
    boolean isSocket() {
      return slot.isSocket();
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

  private Position position(Slot slot, List<? extends Part> parts, Set<String> mating) {
    return new Position(slot, candidates(slot, parts, mating));
  }

  private List<Candidate> candidates(Slot slot, List<? extends Part> parts, Set<String> mating) {
    List<Part> byName = new ArrayList<>(parts);
    byName.sort(Catalogue.BY_NAME);
    List<Candidate> candidates = new ArrayList<>();
    for (Part part : byName) {
      Set<String> takes = takes(slot, part, mating);
      if (slot.isCoupling() && takes.isEmpty()) {
        continue; // it mates with nothing here
      }
      int broken = Rule.brokenBy(job, slot, part);
      candidates.add(new Candidate(
          part,
          slot,
          candidates.size(),
          broken & ~MEASURED,
          PartQuestions.of(job, slot, part),
          (broken & MEASURED) == 0 ? 0L : shortBy(part),
          job.objective().cost(part.facts()),
          ends.number(upstream(part)),
          ends.number(downstream(part)),
          takes,
          SearchAir.element(part)));
    }
    return candidates;
  }

  private static Set<String> takes(Slot slot, Part part, Set<String> mating) {
    if (!slot.isCoupling()) {
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
  private long shortBy(Part part) {
    Length reach = job.reach();
    double lacking = reach.metres() - ((Part.Hose) part).conduit().length().metres();
    return Math.max(1L, Math.round(Choice.WHOLE_MISS * lacking / reach.metres()));
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
    if (part instanceof Part.Adapter adapter) {
      return adapter.other();
    }
    return part instanceof Part.Hose hose ? hose.downstream() : upstream(part);
  }

  /** The profiles of pairs that mate and are wanted; none where no pair does. */
  private Set<String> mating(List<Part.Socket> sockets, List<Part.Plug> plugs) {
    Set<String> offered = new TreeSet<>();
    plugs.forEach(plug -> offered.add(plug.profile()));
    job.profile().ifPresent(wanted -> offered.retainAll(Set.of(wanted)));
    Set<String> taken = new TreeSet<>();
    sockets.forEach(socket -> taken.addAll(socket.profiles()));
    offered.retainAll(taken);
    return offered;
  }

  /** The positions in the order the air goes. */
  List<Position> inRow() {
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
        .flatMap(position -> position.kept.stream())
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
    if (inRow.stream().anyMatch(each -> each.slot.isCoupling() && each.kept.isEmpty())) {
      missing.add("The catalogue has no socket and plug for both ends of the hose: add them.");
    }
    if (inRow.stream().anyMatch(each -> each.slot == Slot.HOSE && each.kept.isEmpty())) {
      missing.add("The catalogue has no hose: add one.");
    }
    return missing;
  }

  /** The parts that were chosen, adapters among them, with the joints they make. */
  Assembly assembly(List<Candidate> chosen) {
    List<List<Part.Adapter>> between = new ArrayList<>();
    List<Part> parts = new ArrayList<>();
    List<Part.Adapter> open = new ArrayList<>();
    for (Candidate each : chosen) {
      if (each.part() instanceof Part.Adapter adapter) {
        open.add(adapter);
      } else {
        between.add(List.copyOf(open));
        open.clear();
        parts.add(each.part());
      }
    }
    between.add(List.copyOf(open));
    Part.Socket outletSocket = (Part.Socket) parts.get(0);
    Part.Plug hosePlug = (Part.Plug) parts.get(1);
    Part.Hose hose = (Part.Hose) parts.get(2);
    Part.Socket toolSocket = (Part.Socket) parts.get(3);
    Part.Plug toolPlug = (Part.Plug) parts.get(4);
    return Assembly.of(
        job,
        outletSocket,
        hosePlug,
        hose,
        toolSocket,
        toolPlug,
        List.of(
            Joint.of("outlet to socket", job.outlet(), outletSocket.end(), between.get(0)),
            Joint.of("plug to hose", hosePlug.end(), hose.upstream(), between.get(2)),
            Joint.of("hose to socket", hose.downstream(), toolSocket.end(), between.get(3)),
            Joint.of("plug to tool", toolPlug.end(), job.toolInlet(), between.get(5))));
  }
}
