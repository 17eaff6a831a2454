package org.airfit.select;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.air.AirState;
import org.airfit.joint.Chain;
import org.airfit.joint.ChainVerdict;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.run.Run;

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

  List<Proposal> proposals() {
    List<Part.Socket> sockets = all(Part.Socket.class);
    List<Part.Plug> plugs = all(Part.Plug.class);
    List<Coupling> atWall = couplings(job.outletSocket().map(List::of).orElse(sockets), plugs);
    List<Coupling> atTool = couplings(sockets, job.toolPlug().map(List::of).orElse(plugs));
    List<Proposal> proposals = new ArrayList<>();
    for (Coupling wall : atWall) {
      for (Part.Hose hose : job.hose().map(List::of).orElse(all(Part.Hose.class))) {
        for (Coupling tool : atTool) {
          proposals.add(new Proposal(Assembly.of(
              job,
              wall.socket(),
              wall.plug(),
              hose,
              tool.socket(),
              tool.plug(),
              List.of(
                  joint("outlet to socket", job.outlet(), wall.socket().end()),
                  joint("plug to hose", wall.plug().end(), hose.upstream()),
                  joint("hose to socket", hose.downstream(), tool.socket().end()),
                  joint("plug to tool", tool.plug().end(), job.toolInlet())))));
        }
      }
    }
    return proposals;
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

  private Joint joint(String where, End from, End to) {
    Chain<Part.Adapter> direct = new Chain<>(from, to, List.of(), List.of(Mating.of(from, to)));
    if (direct.verdict() == ChainVerdict.DIRECT) {
      return new Joint(where, direct);
    }
    List<Chain<Part.Adapter>> chains = new ArrayList<>();
    extend(from, to, from, List.of(), List.of(), chains);
    return new Joint(where, chains.stream().min(byRank()).orElse(direct));
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

  private Comparator<Chain<Part.Adapter>> byRank() {
    return Comparator.<Chain<Part.Adapter>>comparingLong(chain -> chain.adapters().stream()
            .filter(part -> !rules.broken(Slot.ADAPTER, part).isEmpty())
            .count())
        .thenComparingLong(chain -> chain.adapters().stream()
                .filter(part -> !rules.asked(Slot.ADAPTER, part).isEmpty())
                .count()
            + chain.matings().stream().filter(Mating::isForLowPressure).count())
        .thenComparing(Chain::adapters, byCost(job))
        .thenComparingInt(chain -> chain.adapters().size())
        .thenComparingLong(
            chain -> chain.adapters().stream().mapToLong(this::drop).sum())
        .thenComparing(Chain::adapters, EveryCombination::byName);
  }

  /** The drop of an adapter in front of everything else [mPa]. */
  private long drop(Part.Adapter adapter) {
    Run alone =
        Run.from(atOutlet().orElse(job.toOutlet().stillAir()), job.toOutlet().atmosphere());
    return atOutlet().isEmpty()
        ? Long.MAX_VALUE / 100
        : alone
            .through("adapter", adapter.conduit())
            .at(job.demand())
            .fold(
                delivered -> Math.round(1.0e3
                    * (GaugePressure.of(delivered.atSupply(), alone.atmosphere())
                            .pascals()
                        - delivered.atToolGauge().pascals())),
                starved -> Long.MAX_VALUE / 100);
  }

  private Optional<AirState> atOutlet() {
    return job.atOutlet().map(job.toOutlet().stillAir()::at);
  }

  private static List<Part> bought(List<? extends Part> parts) {
    List<Part> bought = new ArrayList<>(parts);
    bought.removeIf(part -> part.facts().isExisting());
    return bought;
  }

  static Comparator<List<? extends Part>> byCost(Requirement job) {
    Comparator<List<? extends Part>> pieces =
        Comparator.comparingInt(parts -> bought(parts).size());
    if (job.objective() == Objective.FEWEST_PIECES) {
      return pieces;
    }
    Function<List<? extends Part>, Long> unknown = parts ->
        bought(parts).stream().filter(part -> part.facts().price().isEmpty()).count();
    Function<List<? extends Part>, BigDecimal> sum = parts -> bought(parts).stream()
        .flatMap(part -> part.facts().price().stream())
        .map(Money::amount)
        .reduce(BigDecimal.ZERO, BigDecimal::add);
    return Comparator.<List<? extends Part>, Long>comparing(unknown)
        .thenComparing(sum)
        .thenComparing(pieces);
  }

  private static int byName(List<? extends Part> one, List<? extends Part> other) {
    for (int i = 0; i < one.size(); i++) {
      int order = one.get(i).name().compareTo(other.get(i).name());
      order = order != 0 ? order : one.get(i).id().compareTo(other.get(i).id());
      if (order != 0) {
        return order;
      }
    }
    return 0;
  }

  private static List<Part> fromTheHose(Proposal p) {
    return List.of(p.hose(), p.outletSocket(), p.hosePlug(), p.toolSocket(), p.toolPlug());
  }

  /** The list that {@link Selection} must give, whether something fits or not. */
  List<Proposal> best() {
    Comparator<Proposal> pressure = Comparator.<Proposal>comparingDouble(
            p -> Math.floor(Shelf.pascalsAtTool(p)))
        .reversed();
    Comparator<Proposal> cost = Comparator.comparing(Proposal::parts, byCost(job));
    Comparator<Proposal> name =
        Comparator.comparing(EveryCombination::fromTheHose, EveryCombination::byName);
    Comparator<Proposal> questions =
        Comparator.comparingInt(proposal -> rules.asked(proposal).size());
    List<Proposal> all = proposals();
    int fewest = all.stream().mapToInt(p -> p.unmet().size()).min().orElseThrow();
    return all.stream()
        .filter(p -> p.unmet().size() == fewest)
        .sorted(
            fewest == 0
                ? questions.thenComparing(cost).thenComparing(pressure).thenComparing(name)
                : questions
                    .thenComparing(pressure)
                    .thenComparing(p ->
                        p.joints().stream().filter(joint -> !joint.isSound()).count())
                    .thenComparing(cost)
                    .thenComparing(name))
        .limit(Selection.LISTED)
        .toList();
  }
}
