package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.joint.Chain;

/**
 * The best proposals of a catalogue, without building every combination.
 *
 * <p>It goes from the outlet to the tool, position by position, with all choices that could still be listed: of those
 * that end alike, one goes only when as many others as are listed stand before it whatever follows, or one of the same
 * parts is as good ({@link Front}). Adapters are chosen in the same way. Nothing that could be listed is left out, so
 * that the list is that of all combinations, and an empty one proves that nothing fits.
 *
 * <p>It is gone several times: what cannot end before a {@link Horizon} with the best that is {@link Ahead} is not
 * followed, and of the rest that ends alike at first only some. As soon as as many as are listed end before the horizon,
 * it is set to the last of them, and gone once more with all: nothing else can come before that one.
 */
final class PartSearch {

  /** How many choices that end alike are followed at first. */
  private static final int SOME = 16;

  private final Stock stock;
  private final SearchAir air;
  private final SearchAir airAtBest;
  private final int most;

  /** The pressure that the tool needs at most [Pa above atmosphere], and at least. */
  private final double mostNeeded;

  private final double leastNeeded;

  PartSearch(Requirement job, Catalogue catalogue, int most) {
    this.air = new SearchAir(job, Known.AT_WORST);
    this.airAtBest = new SearchAir(job, Known.AT_BEST);
    this.stock = new Stock(job, catalogue, most);
    this.most = most;
    this.mostNeeded = job.leastRange().most().pascals();
    this.leastNeeded = job.leastRange().least().pascals();
  }

  /** {@return the kinds of part that the catalogue lacks, in words; empty where there is something to combine} */
  List<String> missing() {
    return stock.missing();
  }

  /** {@return the best proposals that break no rule; none where none does} */
  List<Proposal> fitting() {
    return stock.brokenByJob() == 0
        ? new Level(Wanted.ALL).search().stream().map(this::proposal).toList()
        : List.of();
  }

  /** {@return the proposals that miss least} */
  List<Proposal> nearest() {
    List<Choice> found = new Level(Wanted.AIR).search();
    boolean isFull = found.size() == most;
    // to starve misses a whole rule more than what the job itself misses
    if (!isFull || found.get(most - 1).missed() >= stock.missedByJob() + Choice.WHOLE_MISS) {
      found = new Level(Wanted.ANYTHING).search();
    }
    return found.stream().map(this::proposal).toList();
  }

  private Proposal proposal(Choice found) {
    return new Proposal(stock.assembly(found.inRow()));
  }

  /** Choices by the number of the end that is open. */
  private static final class AtEnds {
    private final Map<Integer, List<Choice>> choices = new LinkedHashMap<>();

    void add(int end, Choice choice) {
      choices.computeIfAbsent(end, any -> new ArrayList<>()).add(choice);
    }
  }

  /** What a search is for. */
  private enum Wanted {
    /** No rule is broken. */
    ALL,
    /** Some air arrives, and as little as possible is missed. */
    AIR,
    /** As little as possible is missed. */
    ANYTHING
  }

  /** One search. */
  private final class Level {

    private final boolean isWhole;
    private final boolean airArrives;
    private final AdapterStock adapters;
    private final Ahead ahead;
    private final Front front;
    private final Horizon horizon;
    private int followed = SOME;
    private boolean leftAside;

    Level(Wanted wanted) {
      this.isWhole = wanted == Wanted.ALL;
      this.airArrives = wanted != Wanted.ANYTHING;
      this.adapters = stock.adapters(isWhole);
      this.ahead = new Ahead(stock, adapters, airAtBest, isWhole);
      this.front = new Front(most);
      this.horizon = new Horizon(best(start(), 0, ahead.cost(0, stock.outlet())), stock.costStep());
    }

    private Choice start() {
      return Choice.none(
          ahead.alwaysBroken() | stock.brokenByJob(),
          ahead.alwaysAsked(),
          air.outlet(),
          airAtBest.outlet());
    }

    List<Choice> search() {
      List<Choice> found = once();
      while (found.size() < most && (leftAside || !horizon.isAll())) {
        followed = horizon.isAll() ? Integer.MAX_VALUE : followed + SOME;
        horizon.setFarther();
        found = once();
      }
      if (leftAside) {
        horizon.setTo(found.get(most - 1).key(0L, 0L));
        followed = Integer.MAX_VALUE;
        found = once();
      }
      return found;
    }

    private List<Choice> once() {
      leftAside = false;
      AtEnds open = new AtEnds();
      open.add(stock.outlet(), start());
      List<Stock.Row> inRow = stock.inRow();
      for (int i = 0; i < inRow.size(); i++) {
        if (inRow.get(i).place().isSocket()) {
          open = coupled(open, i);
          i++;
        } else {
          open = attached(open, i);
        }
      }
      List<Choice> last = new ArrayList<>();
      joined(open, inRow.size(), Set.of(stock.toolInlet()))
          .values()
          .forEach(choices -> choices.forEach(choice -> last.add(whole(choice))));
      last.removeIf(
          choice -> (isWhole && choice.missed() > 0) || horizon.isBehind(choice.key(0L, 0L)));
      return best(last);
    }

    /** With what arrives above the atmosphere, by how much that misses what the tool needs, or whether it depends. */
    private Choice whole(Choice choice) {
      double gauge = air.gaugePascals(choice.pascals);
      long missed = missedAir(air.gaugePascals(choice.atBest));
      boolean depends = missed == 0L && gauge < mostNeeded;
      return choice.asking(depends ? Rule.AIR_AT_TOOL.bit() : 0).arriving(gauge, missed);
    }

    private long missedAir(double atBest) {
      double missing = (leastNeeded - Math.max(0.0, atBest)) / leastNeeded;
      return atBest >= leastNeeded ? 0L : Math.max(1L, Math.round(Choice.WHOLE_MISS * missing));
    }

    /** Of each set of parts the best adapters, of these the first, as many as are listed. */
    private List<Choice> best(List<Choice> last) {
      Map<Choice.Parts, Choice> best = new LinkedHashMap<>();
      for (Choice choice : last) {
        best.merge(
            choice.parts,
            choice,
            (one, other) -> Choice.ORDER.compare(one, other) <= 0 ? one : other);
      }
      return best.values().stream()
          .map(choice -> choice.arriving(Math.floor(choice.pascals), 0L))
          .sorted(Choice.ORDER)
          .limit(most)
          .toList();
    }

    /** The best that can become of a choice at an open end. */
    private Key best(Choice choice, int position, long costAhead) {
      double gauge = air.gaugePascals(ahead.pascals(position, choice.atBest));
      return choice.key(
          ahead.shortBy(position) + missedAir(gauge + SearchAir.NOISE_PASCALS), costAhead);
    }

    /** Whether nothing that follows a choice at this open end can be listed. */
    private boolean isHopeless(Choice choice, int position, long costAhead) {
      if (costAhead >= Ahead.NEVER || (airArrives && choice.atBest == SearchAir.STARVED)) {
        return true;
      }
      Key best = best(choice, position, costAhead);
      return (isWhole && best.missed() > 0) || horizon.isBehind(best);
    }

    /**
     * Whether a difference of pressure in front of a position is left at the tool: a regulator makes them equal, and so
     * does it where no air arrives at worst.
     */
    private boolean staysDifferent(int position) {
      List<Stock.Row> inRow = stock.inRow();
      return airArrives
          && stock.isExact()
          && inRow.subList(position, inRow.size()).stream()
              .noneMatch(row -> row.place().isRegulator());
    }

    /** Those of choices that end alike that are followed: at first some of the cheapest and of the widest. */
    private List<Choice> followed(List<Choice> choices, int position) {
      List<Choice> kept = front.of(choices, staysDifferent(position));
      if (kept.size() <= followed) {
        return kept;
      }
      leftAside = true;
      List<Choice> some = new ArrayList<>(kept.subList(0, followed / 2));
      kept.subList(followed / 2, kept.size()).stream()
          .sorted(Comparator.comparingDouble((Choice choice) -> choice.pascals).reversed())
          .limit(followed - followed / 2)
          .forEach(some::add);
      return some;
    }

    /** With a socket and its plug. */
    private AtEnds coupled(AtEnds open, int position) {
      Map<Set<String>, List<Choice>> waiting = new LinkedHashMap<>();
      Map<Integer, List<Candidate>> byEnd = stock.inRow().get(position).byEnd(isWhole);
      joined(open, position, byEnd.keySet()).forEach((end, choices) -> {
        for (Choice choice : choices) {
          for (Candidate socket : byEnd.getOrDefault(end, List.of())) {
            Choice longer = with(choice, socket);
            if (!isHopeless(longer, position + 1, ahead.cost(position + 1, socket.takes()))) {
              waiting.computeIfAbsent(socket.takes(), any -> new ArrayList<>()).add(longer);
            }
          }
        }
      });
      waiting.replaceAll((takes, choices) -> followed(choices, position + 1));
      AtEnds next = new AtEnds();
      stock.inRow().get(position + 1).byProfile(isWhole).forEach((profile, plugs) -> {
        List<Choice> taking = new ArrayList<>();
        waiting.forEach((takes, choices) -> {
          if (takes.contains(profile)) {
            taking.addAll(choices);
          }
        });
        attach(followed(taking, position + 1), plugs, position + 1, next);
      });
      next.choices.replaceAll((end, choices) -> followed(choices, position + 2));
      return next;
    }

    /** With one part more on the ends that are open. */
    private AtEnds attached(AtEnds open, int position) {
      AtEnds next = new AtEnds();
      Map<Integer, List<Candidate>> byEnd = stock.inRow().get(position).byEnd(isWhole);
      joined(open, position, byEnd.keySet())
          .forEach((end, choices) ->
              attach(choices, byEnd.getOrDefault(end, List.of()), position, next));
      next.choices.replaceAll((end, choices) -> followed(choices, position + 1));
      return next;
    }

    private void attach(List<Choice> choices, List<Candidate> parts, int position, AtEnds next) {
      for (Choice choice : choices) {
        for (Candidate part : parts) {
          if (!choice.allows(part)) {
            continue;
          }
          Choice longer = with(choice, part);
          if (!isHopeless(longer, position + 1, ahead.cost(position + 1, part.far()))) {
            next.add(part.far(), longer);
          }
        }
      }
    }

    private Choice with(Choice choice, Candidate part) {
      double behind = air.behind(part.element(), choice.pascals);
      return choice.with(
          part, behind, stock.isExact() ? behind : airAtBest.behind(part.atBest(), choice.atBest));
    }

    /** What can be joined to each of these ends: directly where they mate, else through adapters. */
    private Map<Integer, List<Choice>> joined(AtEnds open, int position, Set<Integer> goals) {
      AtEnds joined = new AtEnds();
      open.choices.forEach((from, choices) -> join(from, choices, position, goals, joined));
      boolean isLast = position == stock.inRow().size();
      joined.choices.replaceAll((any, choices) ->
          isLast ? front.of(choices, staysDifferent(position)) : followed(choices, position));
      return joined.choices;
    }

    private void join(
        int from, List<Choice> choices, int position, Set<Integer> goals, AtEnds joined) {
      List<Integer> far = new ArrayList<>();
      for (int goal : goals) {
        if (adapters.isSound(from, goal)) {
          offer(joined, from, goal, choices);
        } else if (adapters.isWithinReach(from, goal)) {
          far.add(goal);
        } else if (!isWhole) {
          choices.forEach(choice -> joined.add(goal, choice.unjoined()));
        }
      }
      Map<Integer, List<Choice>> layer = far.isEmpty() ? Map.of() : Map.of(from, choices);
      for (int count = 1; count <= Chain.MOST_ADAPTERS; count++) {
        layer = oneMore(layer, position);
        layer.forEach((end, through) -> {
          for (int goal : far) {
            if (adapters.isSound(end, goal)) {
              offer(joined, end, goal, through);
            }
          }
        });
      }
    }

    private void offer(AtEnds joined, int end, int goal, List<Choice> choices) {
      int question = adapters.question(end, goal);
      choices.forEach(choice -> joined.add(goal, choice.asking(question)));
    }

    private Map<Integer, List<Choice>> oneMore(Map<Integer, List<Choice>> layer, int position) {
      AtEnds next = new AtEnds();
      layer.forEach((end, choices) -> adapters.onto(end).forEach(adapter -> {
        int question = adapters.question(end, adapter.near());
        long costAhead = ahead.cost(position, adapter.far());
        for (Choice choice : choices) {
          Choice longer = with(choice.asking(question), adapter);
          if (!isHopeless(longer, position, costAhead)) {
            next.add(adapter.far(), longer);
          }
        }
      }));
      next.choices.replaceAll((any, choices) -> followed(choices, position));
      return next.choices;
    }
  }
}
