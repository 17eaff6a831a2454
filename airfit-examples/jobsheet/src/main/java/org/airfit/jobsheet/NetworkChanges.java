package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.airfit.files.NetworkJob;
import org.airfit.network.Network;
import org.airfit.network.NetworkResult;
import org.airfit.quantity.GaugePressure;
import org.airfit.safety.Caution;
import org.airfit.safety.Judgement;

/**
 * What to change in a network whose drops are short, found by solving it again with each change: for every short drop
 * the single changes that are enough, each the least of its kind; where none is, two; and otherwise how far the best
 * goes.
 *
 * @param forEvery single changes after which no drop is short and nothing more is forbidden; the least of its kind each
 * @param drops the drops that are short, and what is enough for each; of many those that lack most
 * @param together where no single change is enough for every drop and each has one of its own: the first of each at
 *     once, whether or not a drop is short then
 * @param more how many more drops are short
 */
public record NetworkChanges(
    List<Change> forEvery, List<OfDrop> drops, Optional<Change> together, int more) {

  /** A gain below this is not worth a change [Pa]: our choice. */
  static final double WORTH_PASCALS = 1000.0;

  /** Of so many changes that bring a drop most, two at a time are tried where none is enough: our choice. */
  private static final int PAIRED = 4;

  /** Of so many drops that lack most, each is looked at alone: our choice. */
  private static final int LOOKED_AT = 12;

  /** Copies the lists; refuses what is null. */
  public NetworkChanges {
    forEvery = List.copyOf(forEvery);
    drops = List.copyOf(drops);
    Objects.requireNonNull(together, "together");
  }

  /**
   * A change and what it brings.
   *
   * @param what the change, or both of two, in words
   * @param pascals what the drop has more by it [Pa]
   * @param lackAfter what the drop still lacks [Pa]; negative where there is a margin
   * @param isEnough whether the drop then has the pressure and the air it needs
   * @param stillShort the other drops that are short now and then
   * @param newlyShort the drops that are short then and not now
   * @param newlyForbidden what the safety rules forbid then and not now, such as at a higher pressure
   * @param pressedMore the drops where the pressure is forbidden now and is higher then
   * @param newCautions the titles of the cautions that come with it
   * @param raises whether it raises the pressure for all that is behind it: a setting or a supply
   * @param ofSupply whether it asks for another supply, or the same at a higher pressure
   * @param highest the highest pressure that can occur then, such as the cut-out; empty where it stays as it is
   */
  public record Change(
      List<String> what,
      double pascals,
      double lackAfter,
      boolean isEnough,
      List<String> stillShort,
      List<String> newlyShort,
      List<String> newlyForbidden,
      List<String> pressedMore,
      List<String> newCautions,
      boolean raises,
      boolean ofSupply,
      Optional<GaugePressure> highest) {

    /** Copies the lists; refuses what is null. */
    public Change {
      what = List.copyOf(what);
      stillShort = List.copyOf(stillShort);
      newlyShort = List.copyOf(newlyShort);
      newlyForbidden = List.copyOf(newlyForbidden);
      pressedMore = List.copyOf(pressedMore);
      newCautions = List.copyOf(newCautions);
      Objects.requireNonNull(highest, "highest");
    }

    /** Whether another drop has too little then, or something is forbidden, that is not so now. */
    boolean isHarm() {
      return !newlyShort.isEmpty() || !newlyForbidden.isEmpty();
    }

    /** Whether as much as the drop needs is reckoned, but behind the end of a curve, where it is not told. */
    boolean isUntold() {
      return lackAfter <= 0.0 && !isEnough;
    }

    /** Whether every drop then has enough. */
    boolean isEnoughForEvery() {
      return isEnough && stillShort.isEmpty() && newlyShort.isEmpty();
    }
  }

  /**
   * A drop that is short.
   *
   * @param drop its name
   * @param lack what it lacks [Pa]
   * @param single single changes that are enough for it, those first that harm no other drop
   * @param two two changes that are enough together, where no single one that harms no other drop is but a supply
   * @param best the single change that brings it most, where no two are enough either; empty where
   *     none brings 0.01 bar
   */
  public record OfDrop(
      String drop, double lack, List<Change> single, Optional<Change> two, Optional<Change> best) {

    /** Copies the list; refuses what is null. */
    public OfDrop {
      Objects.requireNonNull(drop, "drop");
      single = List.copyOf(single);
      Objects.requireNonNull(two, "two");
      Objects.requireNonNull(best, "best");
    }

    /** The change to name first, which harms no other drop: a single one, two, or another supply. */
    Optional<Change> first() {
      return single.stream()
          .filter(change -> !change.ofSupply() && !change.isHarm())
          .findFirst()
          .or(() -> two.filter(change -> !change.isHarm()))
          .or(() -> single.stream().filter(change -> !change.isHarm()).findFirst());
    }

    /** Whether what is enough for it always harms another drop. */
    boolean isHarmAlone() {
      return first().isEmpty() && (!single.isEmpty() || two.isPresent());
    }
  }

  /** Tries what can be changed; empty lists where no drop is short. */
  static NetworkChanges of(NetworkJob job, NetworkResult.Solved now) {
    return new Trial(job, now).changes();
  }

  static NetworkChanges none() {
    return new NetworkChanges(List.of(), List.of(), Optional.empty(), 0);
  }

  /** Whether no drop is short. */
  boolean isNothing() {
    return drops.isEmpty();
  }

  /** Whether a change that is told raises the pressure for all that is behind it. */
  boolean raises() {
    return Stream.of(
            forEvery.stream(),
            together.stream(),
            drops.stream().flatMap(drop -> drop.single().stream()),
            drops.stream().flatMap(drop -> drop.two().stream()),
            drops.stream().flatMap(drop -> drop.best().stream()).filter(best -> !best.isUntold()))
        .flatMap(each -> each)
        .anyMatch(Change::raises);
  }

  /** One thing to change, at one of its steps; the first is the least. */
  private record Move(NetworkLever lever, int step) {}

  /** What each drop lacks after moves; no more is kept, as there may be many. */
  private static final class After {

    private final double[] lacks;
    private final boolean[] enough;
    private final boolean[] tooLittle;
    private final List<String> forbidden;
    private final List<String> cautions;

    After(NetworkJob job, NetworkResult.Solved solved) {
      List<DropAnswer> answers = DropAnswer.all(job, solved);
      lacks = answers.stream().mapToDouble(DropAnswer::lack).toArray();
      enough = new boolean[lacks.length];
      tooLittle = new boolean[lacks.length];
      for (int i = 0; i < lacks.length; i++) {
        enough[i] = answers.get(i).isEnough();
        tooLittle[i] = answers.get(i).isShort();
      }
      forbidden = ForbiddenWork.all(job, solved).stream()
          .map(each -> each.ruling().rule().title())
          .toList();
      cautions = solved.cautions(job.units()).stream().map(Caution::title).toList();
    }

    private double lack(int drop) {
      return lacks[drop];
    }

    /** Whether it has enough, and that is told. */
    private boolean isEnough(int drop) {
      return enough[drop];
    }

    /** Whether it has too little even of what is reckoned. */
    private boolean isShort(int drop) {
      return tooLittle[drop];
    }

    /** Whether it has as much as it needs behind the end of a curve only. */
    private boolean isUntold(int drop) {
      return !enough[drop] && !tooLittle[drop];
    }
  }

  /** Solves again and again, and remembers. */
  private static final class Trial {

    private final NetworkJob job;
    private final After now;
    private final List<NetworkLever> levers;
    private final List<Integer> lacking;
    private final Set<Integer> overpressed;
    private final Map<List<Move>, Optional<After>> solved = new HashMap<>();

    Trial(NetworkJob job, NetworkResult.Solved now) {
      this.job = job;
      this.now = new After(job, now);
      this.lacking = IntStream.range(0, job.drops().size())
          .filter(drop -> this.now.isShort(drop))
          .boxed()
          .toList();
      this.overpressed = IntStream.range(0, job.drops().size())
          .filter(drop -> now.tools().get(drop).rulings().stream()
              .anyMatch(ruling -> ruling.judgement() == Judgement.NOT_ALLOWED
                  && ruling.rule().pressureLimit().isPresent()))
          .boxed()
          .collect(Collectors.toSet());
      this.levers = lacking.isEmpty() ? List.of() : NetworkLever.all(job, now, isSettledBest(job));
    }

    private static boolean isSettledBest(NetworkJob job) {
      return job.networkAtBest()
          .map(Network::solve)
          .filter(best -> best.fold(
              solved -> DropAnswer.all(job, solved).stream().noneMatch(DropAnswer::isShort),
              none -> false))
          .isPresent();
    }

    /** What is left after moves; empty where nothing flows steadily then. */
    private Optional<After> after(List<Move> moves) {
      return solved.computeIfAbsent(moves, these -> {
        Network changed = job.network();
        // of several supplies the one that rises most comes last, as the highest pressure is that
        // of the last
        List<Move> inOrder = these.stream()
            .sorted(Comparator.comparingDouble(move ->
                move.lever().highest(move.step()).map(GaugePressure::pascals).orElse(0.0)))
            .toList();
        for (Move move : inOrder) {
          changed = move.lever().at(changed, move.step());
        }
        return changed
            .solve()
            .fold(found -> Optional.of(new After(job, found)), none -> Optional.empty());
      });
    }

    private boolean isEnough(List<Move> moves, int drop) {
      return after(moves).filter(it -> it.isEnough(drop)).isPresent();
    }

    /** Whether it is enough for a drop and harms no other. */
    private boolean isGood(List<Move> moves, int drop) {
      return isEnough(moves, drop) && !change(moves, drop).isHarm();
    }

    private boolean isEnoughForLacking(List<Move> moves) {
      return lacking.stream().allMatch(drop -> isEnough(moves, drop));
    }

    private double gain(List<Move> moves, int drop) {
      return after(moves).map(it -> now.lack(drop) - it.lack(drop)).orElse(0.0);
    }

    /**
     * How many of the steps of a lever leave it told what drops have: where more makes a tool take more, a regulator
     * may come behind the end of its curve.
     */
    private int told(NetworkLever lever, List<Integer> drops) {
      int steps = lever.steps();
      if (job.branches().stream()
          .noneMatch(branch -> branch
              .regulator()
              .filter(regulator -> regulator.curve().isPresent())
              .isPresent())) {
        return steps;
      }
      while (steps > 0
          && after(List.of(new Move(lever, steps - 1)))
              .filter(then -> drops.stream().anyMatch(then::isUntold))
              .isPresent()) {
        steps--;
      }
      return steps;
    }

    private static Move most(NetworkLever lever) {
      return new Move(lever, lever.steps() - 1);
    }

    /** The least step that does, where more never does less; empty where the last does not. */
    private static Optional<Integer> least(int steps, IntPredicate does) {
      if (steps == 0 || !does.test(steps - 1)) {
        return Optional.empty();
      }
      int tooLittle = -1;
      int enough = steps - 1;
      while (enough - tooLittle > 1) {
        int middle = (tooLittle + enough) / 2;
        if (does.test(middle)) {
          enough = middle;
        } else {
          tooLittle = middle;
        }
      }
      return Optional.of(enough);
    }

    private NetworkChanges changes() {
      if (lacking.isEmpty()) {
        return none();
      }
      int weakest = lacking.stream().max(Comparator.comparingDouble(now::lack)).orElseThrow();
      List<Move> every = new ArrayList<>();
      for (NetworkLever lever : levers) {
        // what is a little wider may harm another drop where what is just enough does not
        least(told(lever, lacking), step -> isEnoughForLacking(List.of(new Move(lever, step))))
            .map(step -> new Move(lever, step))
            .filter(move -> isGood(List.of(move), weakest))
            .ifPresent(every::add);
      }
      Map<Integer, List<Move>> firsts = new HashMap<>();
      List<OfDrop> drops = new ArrayList<>();
      List<Integer> lookedAt = lacking.stream()
          .sorted(Comparator.comparingDouble(now::lack).reversed())
          .limit(LOOKED_AT)
          .sorted()
          .toList();
      for (int drop : lookedAt) {
        drops.add(drop(drop, every, firsts));
      }
      Optional<Change> together = Optional.empty();
      if (every.stream().allMatch(Trial::isOfSupply)
          && drops.size() > 1
          && drops.size() == lacking.size()
          && firsts.size() == drops.size()) {
        List<Move> all = merged(lacking.stream()
            .flatMap(drop -> firsts.getOrDefault(drop, List.of()).stream())
            .toList());
        together = after(all).map(then -> change(all, weakest));
      }
      return new NetworkChanges(
          every.stream().map(move -> change(List.of(move), weakest)).toList(),
          drops,
          together,
          lacking.size() - drops.size());
    }

    /** Moves at once; of several with one lever the one that goes furthest. */
    private static List<Move> merged(List<Move> moves) {
      Map<NetworkLever, Integer> furthest = new LinkedHashMap<>();
      for (Move move : moves) {
        furthest.merge(move.lever(), move.step(), Math::max);
      }
      return furthest.entrySet().stream()
          .map(each -> new Move(each.getKey(), each.getValue()))
          .toList();
    }

    private OfDrop drop(int drop, List<Move> every, Map<Integer, List<Move>> firsts) {
      List<List<Move>> single = new ArrayList<>();
      for (NetworkLever lever : levers) {
        least(told(lever, List.of(drop)), step -> isEnough(List.of(new Move(lever, step)), drop))
            .map(step -> new Move(lever, step))
            .filter(move -> !every.contains(move))
            .ifPresent(move -> single.add(List.of(move)));
      }
      single.sort(Comparator.comparing(moves -> change(moves, drop).isHarm()));
      List<List<Move>> good =
          single.stream().filter(moves -> !change(moves, drop).isHarm()).toList();
      boolean isNone = good.isEmpty() && every.isEmpty();
      boolean isSupplyAlone = every.stream().allMatch(Trial::isOfSupply)
          && good.stream().allMatch(moves -> isOfSupply(moves.get(0)));
      Optional<List<Move>> two =
          isSupplyAlone ? two(drop, isNone, single.isEmpty()) : Optional.empty();
      good.stream()
          .filter(moves -> !isOfSupply(moves.get(0)))
          .findFirst()
          .or(() -> two.filter(moves -> isGood(moves, drop)))
          .or(() -> good.stream().findFirst())
          .ifPresent(moves -> firsts.put(drop, moves));
      return new OfDrop(
          job.drops().get(drop).name(),
          now.lack(drop),
          single.stream().map(moves -> change(moves, drop)).toList(),
          two.map(moves -> change(moves, drop)),
          isNone && single.isEmpty() && two.isEmpty()
              ? best(drop).map(moves -> change(moves, drop))
              : Optional.empty());
    }

    private static boolean isOfSupply(Move move) {
      return move.lever().kind() == NetworkLever.Kind.SUPPLY;
    }

    private Optional<List<Move>> best(int drop) {
      return levers.stream()
          .map(lever -> List.of(most(lever)))
          .filter(moves -> gain(moves, drop) >= WORTH_PASCALS)
          .max(Comparator.comparingDouble(moves -> gain(moves, drop)));
    }

    /**
     * Two of those that bring most, which harm no other drop; the second as little as is enough with the first, then
     * the first likewise. Where a single one is not enough either, two that harm another are better than none.
     */
    private Optional<List<Move>> two(int drop, boolean withSupply, boolean withHarm) {
      List<NetworkLever> others = levers.stream()
          .filter(lever -> lever.kind() != NetworkLever.Kind.SUPPLY)
          .toList();
      Optional<List<Move>> found = two(drop, others, moves -> isGood(moves, drop));
      if (found.isEmpty() && withSupply) {
        found = two(drop, levers, moves -> isGood(moves, drop));
      }
      if (found.isEmpty() && withHarm) {
        found = two(drop, withSupply ? levers : others, moves -> isEnough(moves, drop));
      }
      return found;
    }

    private Optional<List<Move>> two(
        int drop, List<NetworkLever> from, Predicate<List<Move>> does) {
      List<NetworkLever> best = from.stream()
          .filter(lever -> gain(List.of(most(lever)), drop) >= WORTH_PASCALS)
          .sorted(
              Comparator.comparingDouble((NetworkLever lever) -> gain(List.of(most(lever)), drop))
                  .reversed())
          .limit(PAIRED)
          .toList();
      for (int i = 1; i < best.size(); i++) {
        for (int j = 0; j < i; j++) {
          NetworkLever one = best.get(j);
          NetworkLever other = best.get(i);
          // one that is enough for this drop, and harms another, goes no further than that
          int furthest = least(one.steps(), step -> isEnough(List.of(new Move(one, step)), drop))
              .orElse(one.steps() - 1);
          Optional<List<Move>> found = least(
                  other.steps(),
                  step -> does.test(List.of(new Move(one, furthest), new Move(other, step))))
              .map(step -> new Move(other, step))
              .flatMap(second -> least(
                      furthest + 1, step -> does.test(List.of(new Move(one, step), second)))
                  .map(step -> List.of(new Move(one, step), second)));
          if (found.isPresent()) {
            return found;
          }
        }
      }
      return Optional.empty();
    }

    private static List<String> without(List<String> then, List<String> now) {
      return then.stream().filter(title -> !now.contains(title)).toList();
    }

    private Change change(List<Move> moves, int drop) {
      After then = after(moves).orElseThrow();
      List<String> still = new ArrayList<>();
      List<String> newly = new ArrayList<>();
      for (int i = 0; i < job.drops().size(); i++) {
        if (i != drop && !then.isEnough(i)) {
          (now.isEnough(i) ? newly : still)
              .add(job.drops().get(i).name()
                  + (then.isShort(i) ? "" : " (not told behind the end of a curve)"));
        }
      }
      return new Change(
          moves.stream().map(move -> move.lever().words(move.step())).toList(),
          now.lack(drop) - then.lack(drop),
          then.lack(drop),
          then.isEnough(drop),
          still,
          newly,
          without(then.forbidden, now.forbidden),
          overpressed.stream()
              .sorted()
              .filter(over -> now.lack(over) - then.lack(over) >= WORTH_PASCALS)
              .map(over -> job.drops().get(over).name())
              .toList(),
          without(then.cautions, now.cautions),
          moves.stream().anyMatch(move -> move.lever().kind() != NetworkLever.Kind.SIZE),
          moves.stream().anyMatch(Trial::isOfSupply),
          moves.stream()
              .flatMap(move -> move.lever().highest(move.step()).stream())
              .max(Comparator.naturalOrder()));
    }
  }
}
