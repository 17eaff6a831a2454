package org.airfit.select;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.airfit.joint.Chain;
import org.airfit.joint.ChainVerdict;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.quantity.Money;

/** What {@link Selection} promises, done the long way: every combination is built, judged and sorted. */
final class EveryCombination {

  /** A socket and the plug that goes into it. */
  private record Coupling(Part.Socket socket, Part.Plug plug) {

    boolean mates() {
      return socket.profiles().contains(plug.profile());
    }
  }

  private final Requirement job;
  private final Catalogue catalogue;
  private final ToldOnceMore rules;

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
    List<Part.Socket> sockets = all(Part.Socket.class);
    List<Part.Plug> plugs = all(Part.Plug.class);
    List<Coupling> atWall = couplings(job.outletSocket().map(List::of).orElse(sockets), plugs);
    List<Coupling> atTool = couplings(sockets, job.toolPlug().map(List::of).orElse(plugs));
    List<Proposal> proposals = new ArrayList<>();
    for (Coupling wall : atWall) {
      for (Part.Hose hose : job.hose().map(List::of).orElse(all(Part.Hose.class))) {
        for (Coupling tool : atTool) {
          proposals.add(joined(wall, hose, tool).stream().min(amongAdapters()).orElseThrow());
        }
      }
    }
    return proposals;
  }

  /** The same parts with all adapters that could go between them. */
  private List<Proposal> joined(Coupling wall, Part.Hose hose, Coupling tool) {
    List<Proposal> all = new ArrayList<>();
    for (Joint first : joints("outlet to socket", job.outlet(), wall.socket().end())) {
      for (Joint second : joints("plug to hose", wall.plug().end(), hose.upstream())) {
        for (Joint third :
            joints("hose to socket", hose.downstream(), tool.socket().end())) {
          for (Joint last : joints("plug to tool", tool.plug().end(), job.toolInlet())) {
            all.add(new Proposal(Assembly.of(
                job,
                wall.socket(),
                wall.plug(),
                hose,
                tool.socket(),
                tool.plug(),
                List.of(first, second, third, last))));
          }
        }
      }
    }
    return all;
  }

  /** Pairs that mate and are of the wanted profile; where there are none, every pair. */
  private List<Coupling> couplings(List<Part.Socket> sockets, List<Part.Plug> plugs) {
    List<Coupling> all = new ArrayList<>();
    sockets.forEach(socket -> plugs.forEach(plug -> all.add(new Coupling(socket, plug))));
    List<Coupling> mating = all.stream()
        .filter(Coupling::mates)
        .filter(pair -> job.profile().map(pair.plug().profile()::equals).orElse(true))
        .toList();
    return mating.isEmpty() ? all : mating;
  }

  private List<Joint> joints(String where, End from, End to) {
    Chain<Part.Adapter> direct = new Chain<>(from, to, List.of(), List.of(Mating.of(from, to)));
    List<Chain<Part.Adapter>> chains = new ArrayList<>();
    if (direct.verdict() != ChainVerdict.DIRECT) {
      extend(from, to, from, List.of(), List.of(), chains);
    }
    return (chains.isEmpty() ? List.of(direct) : chains)
        .stream().map(chain -> new Joint(where, chain)).toList();
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
    return job.objective() == Objective.FEWEST_PIECES
        ? pieces.thenComparing(price)
        : price.thenComparing(pieces);
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
    return List.of(p.outletSocket(), p.hosePlug(), p.hose(), p.toolSocket(), p.toolPlug());
  }

  /**
   * How far a proposal misses what is asked, in billionths: a rule that is broken is one, a hose that is too short by
   * the part of the reach that lacks, and the air by the part of the pressure that lacks.
   */
  private long missed(Proposal p) {
    long missed = 0L;
    for (Finding finding : p.unmet()) {
      missed += switch (finding.rule()) {
        case HOSE_REACHES ->
          part(
              job.reach().metres() - p.hose().conduit().length().metres(),
              job.reach().metres());
        case AIR_AT_TOOL ->
          part(
              job.least().pascals() - Math.max(0.0, Shelf.pascalsAtTool(p)),
              job.least().pascals());
        default -> 1_000_000_000L;
      };
    }
    return missed;
  }

  private static long part(double lacking, double wanted) {
    return Math.max(1L, Math.round(1.0e9 * lacking / wanted));
  }

  /** What counts before the pressure. */
  private Comparator<Proposal> byWhatCounts() {
    return Comparator.comparingLong(this::missed)
        .thenComparingLong(
            p -> p.joints().stream().filter(joint -> !joint.isSound()).count())
        .thenComparingInt(p -> rules.asked(p).size())
        .thenComparing(Proposal::parts, byCost(job));
  }

  /** Of the same parts with different adapters. */
  private Comparator<Proposal> amongAdapters() {
    return byWhatCounts()
        .thenComparing(Comparator.comparingDouble(Shelf::pascalsAtTool).reversed())
        .thenComparing(EveryCombination::byAdapters);
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
    Comparator<Proposal> pressure = Comparator.<Proposal>comparingDouble(
            p -> Math.floor(Shelf.pascalsAtTool(p)))
        .reversed();
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
