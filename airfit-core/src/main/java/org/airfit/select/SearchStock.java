package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.joint.End;

/**
 * The parts of a catalogue in the slots they could take, with what each breaks and costs there, for one job. It is
 * made once for a search.
 */
final class SearchStock {

  /** The one group of plugs where none fits, so that a miss can be shown. */
  static final String ANY = "";

  /**
   * A part in a slot it could take, with the rules it breaks and those it leaves open, what it costs and the numbers of
   * its ends.
   */
  record Option<T extends Part>(T part, int broken, int asked, long cost, int end, int otherEnd) {}

  /** A socket at the outlet with the way before it, for plugs of one profile. */
  record OutletWay(
      Option<Part.Socket> socket,
      String profile,
      int broken,
      int asked,
      long cost,
      double gauge,
      double pascals) {

    OutletWay withCost(long whole) {
      return new OutletWay(socket, profile, broken, asked, whole, gauge, pascals);
    }
  }

  final Requirement job;
  final PressureCache air;
  final AdapterPaths paths;
  final List<Option<Part.Hose>> hoses;
  final List<Option<Part.Socket>> toolSockets;
  final List<Option<Part.Plug>> hosePlugs;
  final List<Option<Part.Plug>> toolPlugs;
  final Set<String> atOutlet;
  final Set<String> atTool;
  final List<OutletWay> outletWays;
  private final List<Option<Part.Socket>> outletSockets;

  SearchStock(Requirement job, Catalogue catalogue) {
    this.job = job;
    this.air = new PressureCache(job);
    this.paths = new AdapterPaths(job, catalogue.all(Part.Adapter.class), air);
    List<Part.Socket> sockets = catalogue.all(Part.Socket.class);
    List<Part.Plug> plugs = catalogue.all(Part.Plug.class);
    this.hoses = options(
        Slot.HOSE, job.hose().map(List::of).orElseGet(() -> catalogue.all(Part.Hose.class)));
    this.outletSockets =
        options(Slot.OUTLET_SOCKET, job.outletSocket().map(List::of).orElse(sockets));
    this.toolSockets = options(Slot.TOOL_SOCKET, sockets);
    this.hosePlugs = options(Slot.HOSE_PLUG, plugs);
    this.toolPlugs = options(Slot.TOOL_PLUG, job.toolPlug().map(List::of).orElse(plugs));
    this.atOutlet = mating(outletSockets, hosePlugs);
    this.atTool = mating(toolSockets, toolPlugs);
    this.outletWays = outletWays();
  }

  private <T extends Part> List<Option<T>> options(Slot slot, List<T> parts) {
    List<Option<T>> options = new ArrayList<>(parts.size());
    for (T part : parts) {
      options.add(new Option<>(
          part,
          Rule.brokenBy(job, slot, part),
          PartQuestions.of(job, slot, part),
          job.objective().cost(part.facts()),
          paths.number(upstream(part)),
          paths.number(downstream(part))));
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

  /** The profiles of a socket that mate. */
  static List<String> profiles(Part.Socket socket, Set<String> mating) {
    if (mating.isEmpty()) {
      return List.of(ANY);
    }
    List<String> profiles = new ArrayList<>(socket.profiles());
    profiles.retainAll(mating);
    return profiles;
  }

  /** The sockets at the outlet with the ways before them; without their plugs yet. */
  private List<OutletWay> outletWays() {
    int end = paths.number(job.outlet());
    List<OutletWay> joined = new ArrayList<>();
    for (Option<Part.Socket> socket : outletSockets) {
      AdapterPaths.Way way = paths.between(end, socket.end);
      double after = air.behind(socket.part.capacity(), air.behind(way.adapters(), air.outlet()));
      double gauge = air.gaugePascals(after);
      for (String profile : profiles(socket.part, atOutlet)) {
        joined.add(new OutletWay(
            socket,
            profile,
            socket.broken | way.broken(),
            socket.asked | way.asked(),
            socket.cost + way.cost(),
            gauge,
            after));
      }
    }
    return joined;
  }

  /** {@return the kinds of part that the catalogue lacks, in words; empty where there is something to combine} */
  List<String> missing() {
    List<String> missing = new ArrayList<>();
    if (outletSockets.isEmpty()
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

  /** The rules that no choice of parts mends: the job's own, and profiles where no pair mates. */
  int alwaysBroken() {
    int profiles = atOutlet.isEmpty() || atTool.isEmpty() ? Rule.PROFILE_MATES.bit() : 0;
    return Rule.brokenBy(job) | profiles;
  }

  /** The rules that some part breaks, as bits. */
  int everBroken() {
    int broken = Rule.ENDS_MATE.bit();
    for (List<? extends Option<?>> options : slots()) {
      for (Option<?> option : options) {
        broken |= option.broken;
      }
    }
    return broken | paths.everBroken();
  }

  /** What must be asked of some part or joint, as bits. */
  int everAsked() {
    int asked = PartQuestions.ofJoint(true);
    for (List<? extends Option<?>> options : slots()) {
      for (Option<?> option : options) {
        asked |= option.asked;
      }
    }
    return asked | paths.everAsked();
  }

  private List<List<? extends Option<?>>> slots() {
    return List.of(hoses, outletSockets, toolSockets, hosePlugs, toolPlugs);
  }

  /** Whether every slot has a part that breaks no other rules and leaves no others open. */
  boolean canFill(int allowed, int open) {
    for (List<? extends Option<?>> options : slots()) {
      if (options.stream()
          .noneMatch(option -> isWithin(option.broken(), option.asked(), allowed, open))) {
        return false;
      }
    }
    return true;
  }

  /** What is broken may be broken, and what must be asked may be, or belongs to a rule that is broken anyway. */
  static boolean isWithin(int broken, int asked, int allowed, int open) {
    return (broken & ~allowed) == 0 && (asked & ~allowed & ~open) == 0;
  }
}
