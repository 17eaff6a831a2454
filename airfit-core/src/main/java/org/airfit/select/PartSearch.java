package org.airfit.select;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.airfit.internal.Interruption;
import org.airfit.joint.Chain;

/**
 * The best proposals of a catalogue, without building every combination.
 *
 * <p>It goes from the outlet to the tool, position by position; behind a splitter one line after another, each with all
 * that is behind it, and from the pressure at the splitter on. It does so with all choices that could still be listed:
 * of those that end alike, one goes only when as many others as are listed stand before it whatever follows, or one of
 * the same parts is as good ({@link Front}). Adapters are chosen in the same way. Nothing that could be listed is left
 * out, so that the list is that of all combinations, and an empty one proves that nothing fits.
 *
 * <p>It is gone several times: what cannot end before a {@link Horizon} with the best that is {@link Ahead} is not
 * followed, and of the rest that ends alike at first only some. As soon as as many as are listed end before the
 * horizon, it is set to the last of them, and gone once more with all: nothing else can come before that one.
 */
final class PartSearch {

  /** How many choices that end alike are followed at first. */
  private static final int SOME = 16;

  /** As many are followed as there are; once it is so, it stays so. */
  private static final int ALL = Integer.MAX_VALUE;

  private final Stock stock;
  private final SearchAir air;
  private final SearchAir airAtBest;
  private final int most;
  private final boolean isOfSeveralTools;
  private long looked;

  PartSearch(Requirement job, Catalogue catalogue, int most) {
    this(job, new Stock(job, catalogue, most), most);
  }

  private PartSearch(Requirement job, Stock stock, int most) {
    this.air = new SearchAir(job, Known.AT_WORST);
    this.airAtBest = new SearchAir(job, Known.AT_BEST);
    this.stock = stock;
    this.most = most;
    this.isOfSeveralTools = job.isOfSeveralTools();
  }

  /**
   * {@return a search among the same parts for the same job but for what its tools need}
   *
   * @param job the job with another pressure at its tools
   * @param most how many are listed
   */
  PartSearch needing(Requirement job, int most) {
    return new PartSearch(job, stock.needing(job, most), most);
  }

  /** {@return the kinds of part that the catalogue lacks, in words; empty where there is something to combine} */
  List<String> missing() {
    return stock.missing();
  }

  /** {@return at how many choices it looked: how often it put one more part or adapter on another choice} */
  long looked() {
    return looked;
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
    Interruption.check(Front.SEARCH);
    return new Proposal(stock.assembly(found.inRow()));
  }

  /** Choices by the number of the end that is open. */
  private static final class AtEnds {
    private final Map<Integer, List<Choice>> choices = new LinkedHashMap<>();

    void add(int end, Choice choice) {
      choices.computeIfAbsent(end, any -> new ArrayList<>()).add(choice);
    }

    List<Choice> all() {
      List<Choice> all = new ArrayList<>();
      choices.values().forEach(all::addAll);
      return all;
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

  /** The pressure behind a part that stands at a place, by that in front, at worst and at best. */
  private record Passage(DoubleUnaryOperator atWorst, DoubleUnaryOperator atBest) {}

  /**
   * What follows a choice costs at least.
   *
   * @param cost whatever the profiles of the couplings that follow
   * @param alike where they have none that the choice has not
   */
  private record Following(long cost, long alike) {

    /** The best that can become of the choice: it stays with its profiles, or has one more at least. */
    Key least(Choice choice, long missed, int faults, int doubt) {
      Key any = choice.key(missed, faults, doubt, cost);
      if (alike == cost) {
        return any;
      }
      Key more = any.with(choice.profiles.countWithAnother());
      Key same = choice.key(missed, faults, doubt, alike);
      return same.compareTo(more) <= 0 ? same : more;
    }
  }

  /** Parts that go onto one end, each with what it and all that follows it cost at least. */
  private record Group(List<Candidate> parts, List<Long> costs) {}

  /** One search. */
  private final class Level {

    private final boolean isWhole;
    private final boolean airArrives;
    private final Map<Integer, Ahead> aheads = new HashMap<>();
    private final List<List<Place>> places = new ArrayList<>();
    private final Front front;
    private final Horizon horizon;
    private int followed = SOME;
    private boolean leftAside;

    Level(Wanted wanted) {
      this.isWhole = wanted == Wanted.ALL;
      this.airArrives = wanted != Wanted.ANYTHING;
      ahead(0);
      for (int number = 0; number < stock.legs().size(); number++) {
        List<Place> inLeg = new ArrayList<>();
        for (int position = 0; position <= stock.legs().get(number).size(); position++) {
          inLeg.add(new Place(number, position));
        }
        places.add(inLeg);
      }
      this.front = new Front(most);
      Choice start = start();
      Place outlet = place(0, 0);
      this.horizon = new Horizon(
          stock.objective(),
          outlet.best(start, outlet.following(start, stock.outlet())),
          stock.costStep());
    }

    /** Looks ahead from a leg, and from all that follow it. */
    private Ahead ahead(int number) {
      Leg leg = stock.legs().get(number);
      List<Ahead> lines = new ArrayList<>();
      for (int other = number + 1; other < stock.legs().size(); other++) {
        Leg line = stock.legs().get(other);
        if (line.isLine() && line.stretch().before() == leg.stretch().line()) {
          lines.add(ahead(other));
        }
      }
      Ahead ahead =
          new Ahead(leg, stock.adapters(leg, isWhole), airAtBest, air, isWhole, List.copyOf(lines));
      aheads.put(number, ahead);
      return ahead;
    }

    private Ahead aheadOf(int number) {
      return Objects.requireNonNull(aheads.get(number));
    }

    private Place place(int number, int position) {
      return places.get(number).get(position);
    }

    private Choice start() {
      return Choice.none(
          Ahead.alwaysBroken(stock, isWhole) | stock.brokenByJob(),
          Ahead.alwaysAsked(stock, isWhole),
          stock.dependsOnSettings(),
          stock.objective(),
          Profiles.ahead(stock.profiles(isWhole)),
          air.outlet(),
          airAtBest.outlet());
    }

    List<Choice> search() {
      List<Choice> found = once();
      while (found.size() < most && (leftAside || !horizon.isAll())) {
        followed = horizon.isAll() || followed == ALL ? ALL : followed + SOME;
        horizon.setFarther();
        found = once();
      }
      if (leftAside) {
        horizon.setTo(found.get(most - 1).key());
        followed = ALL;
        found = once();
      }
      return found;
    }

    private List<Choice> once() {
      leftAside = false;
      AtEnds open = new AtEnds();
      open.add(stock.outlet(), start());
      List<Choice> reached = List.of();
      for (int number = 0; number < stock.legs().size(); number++) {
        Leg leg = stock.legs().get(number);
        open = leg.isLine() ? atLine(reached, number) : open;
        open = through(open, number);
        reached = leg.tool() == null ? open.all() : atTool(open, leg.tool(), number);
      }
      List<Choice> last = new ArrayList<>();
      reached.forEach(choice -> last.add(choice.whole()));
      last.removeIf(choice -> (isWhole && choice.missed() > 0) || horizon.isBehind(choice.key()));
      return best(last);
    }

    /** The choices at the splitter of the next line once more, each at the outlet where that begins. */
    private AtEnds atLine(List<Choice> choices, int number) {
      AtEnds open = new AtEnds();
      for (Choice choice : choices) {
        open.add(Objects.requireNonNull(choice.held).outlet(), choice.atLine());
      }
      open.choices.replaceAll((end, alike) -> place(number, 0).followed(alike));
      return open;
    }

    /** From position to position to the end of a leg. */
    private AtEnds through(AtEnds open, int number) {
      Leg leg = stock.legs().get(number);
      AtEnds next = open;
      for (int i = 0; i < leg.size(); i++) {
        if (leg.rows().get(i).place().isSocket()) {
          next = place(number, i).coupled(next);
          i++;
        } else {
          next = place(number, i).attached(next);
        }
      }
      return next;
    }

    /** With what joins the end of a leg to its tool. */
    private List<Choice> atTool(AtEnds open, Leg.Tool tool, int number) {
      Leg leg = stock.legs().get(number);
      List<Choice> reached = new ArrayList<>();
      place(number, leg.size())
          .joined(open, Set.of(tool.inlet()))
          .values()
          .forEach(choices -> choices.forEach(choice -> reached.add(atTool(choice, leg, tool))));
      return reached;
    }

    /** With what arrives above the atmosphere, by how much that misses what the tool needs, or whether it depends. */
    private Choice atTool(Choice choice, Leg leg, Leg.Tool tool) {
      double gauge = air.gaugePascals(choice.pascals);
      long missed = leg.count() * tool.missedAir(air.gaugePascals(choice.atBest));
      boolean depends = missed == 0L && gauge < tool.mostNeeded();
      return choice
          .asking(depends ? Rule.AIR_AT_TOOL.bit() : 0)
          .atTool(
              isOfSeveralTools ? gauge - tool.mostNeeded() : gauge,
              missed,
              tool.doubt(gauge, air.gaugePascals(choice.atBest)));
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
          .map(Choice::inWholePascals)
          .sorted(Choice.ORDER)
          .limit(most)
          .toList();
    }

    /** A position of a leg, or its end. */
    private final class Place {

      private final int number;
      private final Leg leg;
      private final int position;
      private final Ahead ahead;
      private final IdentityHashMap<Candidate, Passage> passages = new IdentityHashMap<>();
      private final Map<Integer, Group> groupsByEnd = new HashMap<>();
      private final Map<String, Group> groupsByProfile = new HashMap<>();

      Place(int number, int position) {
        this.number = number;
        this.leg = stock.legs().get(number);
        this.position = position;
        this.ahead = aheadOf(number);
      }

      private Place next() {
        return place(number, position + 1);
      }

      private Row row() {
        return leg.rows().get(position);
      }

      /** The least that follows a choice at an open end costs, with the lines that are still to be begun. */
      Following following(Choice choice, int end) {
        long lines = ofLines(choice);
        long any = ahead.cost(position, end);
        long alike = mayAddProfile(choice) ? costsOfProfilesOf(choice).from(position, end) : any;
        return new Following(sum(any, lines), sum(alike, lines));
      }

      private Following following(Choice choice, Set<String> profiles) {
        long lines = ofLines(choice);
        long any = ahead.cost(position, profiles);
        long alike =
            mayAddProfile(choice) ? costsOfProfilesOf(choice).from(position, profiles) : any;
        return new Following(sum(any, lines), sum(alike, lines));
      }

      /** Whether one profile more than a choice has would count. */
      private boolean mayAddProfile(Choice choice) {
        return stock.isMating() && choice.profiles.countWithAnother() > choice.profiles.count();
      }

      private Ahead.Costs costsOfProfilesOf(Choice choice) {
        return ahead.costsOf(choice.profiles.had());
      }

      private static long sum(long one, long other) {
        return Math.min(Ahead.NEVER, one + other);
      }

      /** What the lines cost at least that are still to be begun, at whichever splitter. */
      private long ofLines(Choice choice) {
        long sum = 0L;
        for (Choice.Held held = choice.held; held != null; held = held.before()) {
          sum = sum(sum, aheadOf(held.leg()).cost(held.outlets(), held.next()));
        }
        return sum;
      }

      /** The best that can become of a choice here. What is ahead of the leg counts the lines at its own end. */
      Key best(Choice choice, Following following) {
        long missed = ahead.missedLength(position) + ahead.missedAir(position, choice.atBest);
        int faults = ahead.faults(position);
        int doubt = stock.isExact() ? 0 : ahead.doubt(position, choice.pascals, choice.atBest);
        for (Choice.Held held = choice.held; held != null; held = held.before()) {
          for (int line = held.next();
              held.leg() != number && line < held.outlets().size();
              line++) {
            missed += aheadOf(held.leg()).missedLengthOfLine(line)
                + held.missedAhead().get(line);
            faults += aheadOf(held.leg()).faultsOfLine(line);
            doubt = Math.max(doubt, held.doubtAhead().get(line));
          }
        }
        return following.least(choice, missed, faults, doubt);
      }

      /** Whether nothing that follows a choice here can be listed. */
      private boolean isHopeless(Choice choice, Following following) {
        if (following.cost >= Ahead.NEVER || (airArrives && choice.atBest == SearchAir.STARVED)) {
          return true;
        }
        if (horizon.isSurelyBehind(
            following.least(choice, ahead.missedLength(position), ahead.faults(position), 0))) {
          return true; // without a look at the air ahead
        }
        Key best = best(choice, following);
        return (isWhole && best.missed() > 0) || horizon.isBehind(best);
      }

      /**
       * Whether a choice with one part more can surely not be listed, by all but its air and without making it.
       *
       * @param cost what the part and all behind it cost at least
       */
      private boolean isLookedAtInVain(Choice choice, Candidate part, long cost) {
        Interruption.check(Front.SEARCH);
        looked++;
        return cost >= Ahead.NEVER
            || horizon.isSurelyBehind(
                choice.keyWith(part, ahead.missedLength(position), ahead.faults(position), cost));
      }

      /**
       * Whether a difference of pressure in front of this position is left at the tool: a regulator makes them equal,
       * and so does it where no air arrives at worst. In one of several lines another tool may be what counts.
       */
      private boolean staysDifferent() {
        return airArrives
            && stock.isExact()
            && !leg.isLine()
            && leg.rows().subList(position, leg.size()).stream()
                .noneMatch(row -> row.place().isRegulator())
            && stock.legs().stream()
                .skip(1L)
                .flatMap(line -> line.rows().stream())
                .noneMatch(row -> row.place().isRegulator());
      }

      /** Those of choices that end alike that are followed: at first some of the cheapest and of the widest. */
      List<Choice> followed(List<Choice> choices) {
        List<Choice> kept = front.of(choices, staysDifferent());
        if (kept.size() <= followed) {
          return kept;
        }
        leftAside = true;
        List<Choice> some = new ArrayList<>(kept.subList(0, followed / 2));
        kept.subList(followed / 2, kept.size()).stream()
            .sorted(
                Comparator.comparingDouble((Choice choice) -> choice.pascals).reversed())
            .limit(followed - followed / 2)
            .forEach(some::add);
        return some;
      }

      /** With a socket and its plug. */
      AtEnds coupled(AtEnds open) {
        Map<Set<String>, List<Choice>> waiting = new LinkedHashMap<>();
        Place plug = next();
        joined(open, row().byEnd(isWhole).keySet()).forEach((end, choices) -> {
          Group sockets = byEnd(end);
          for (Choice choice : choices) {
            long lines = ofLines(choice);
            for (int i = 0; i < sockets.parts.size(); i++) {
              Candidate socket = sockets.parts.get(i);
              if (plug.isLookedAtInVain(choice, socket, sum(lines, sockets.costs.get(i)))) {
                continue;
              }
              Choice longer = with(choice, socket);
              if (!plug.isHopeless(longer, plug.following(longer, socket.takes()))) {
                waiting
                    .computeIfAbsent(socket.takes(), any -> new ArrayList<>())
                    .add(longer);
              }
            }
          }
        });
        AtEnds next = new AtEnds();
        plug.row().byProfile(isWhole).forEach((profile, plugs) -> {
          List<Choice> taking = new ArrayList<>();
          waiting.forEach((takes, choices) -> {
            if (takes.contains(profile)) {
              taking.addAll(choices);
            }
          });
          plug.attach(plug.followed(taking), plug.byProfile(profile), next);
        });
        next.choices.replaceAll((end, choices) -> plug.next().followed(choices));
        return next;
      }

      /** With one part more on the ends that are open. */
      AtEnds attached(AtEnds open) {
        AtEnds next = new AtEnds();
        joined(open, row().byEnd(isWhole).keySet())
            .forEach((end, choices) -> attach(choices, byEnd(end), next));
        next.choices.replaceAll((end, choices) -> next().followed(choices));
        return next;
      }

      private Group byEnd(int end) {
        return groupsByEnd.computeIfAbsent(
            end, any -> group(row().byEnd(isWhole).getOrDefault(end, List.of())));
      }

      private Group byProfile(String profile) {
        return groupsByProfile.computeIfAbsent(
            profile, any -> group(row().byProfile(isWhole).getOrDefault(profile, List.of())));
      }

      private Group group(List<Candidate> parts) {
        return new Group(
            parts, parts.stream().map(part -> ahead.costFrom(position, part)).toList());
      }

      private void attach(List<Choice> choices, Group group, AtEnds next) {
        for (Choice choice : choices) {
          long lines = ofLines(choice);
          for (int i = 0; i < group.parts.size(); i++) {
            Candidate part = group.parts.get(i);
            if (!choice.allows(part)
                || next().isLookedAtInVain(choice, part, sum(lines, group.costs.get(i)))) {
              continue;
            }
            Choice longer = split(profiled(with(choice, part), part), part);
            if (!next().isHopeless(longer, next().following(longer, part.far()))) {
              next.add(part.far(), longer);
            }
          }
        }
      }

      /** Behind a splitter in front of several lines, with what they begin with. */
      private Choice split(Choice choice, Candidate part) {
        if (part.outlets().isEmpty()) {
          return choice;
        }
        return choice.holding(
            part.outlets(),
            ahead.missedAirOfLines(choice.atBest),
            stock.isExact()
                ? Collections.nCopies(part.outlets().size(), 0)
                : ahead.doubtOfLines(choice.pascals, choice.atBest),
            number);
      }

      /** With the profile of a coupling behind its plug. */
      private Choice profiled(Choice choice, Candidate part) {
        return part.part() instanceof Part.Plug plug
            ? choice.coupled(plug.profile(), stock.isLastPlug(row()))
            : choice;
      }

      private Choice with(Choice choice, Candidate part) {
        Passage passage = passages.computeIfAbsent(part, this::passage);
        double behind = passage.atWorst().applyAsDouble(choice.pascals);
        return choice.with(
            part, behind, stock.isExact() ? behind : passage.atBest().applyAsDouble(choice.atBest));
      }

      private Passage passage(Candidate part) {
        return new Passage(
            air.behind(part.element(), leg.mostFlow(position)),
            airAtBest.behind(part.atBest(), leg.leastFlow(position)));
      }

      /** What can be joined to each of these ends: directly where they mate, else through adapters. */
      Map<Integer, List<Choice>> joined(AtEnds open, Set<Integer> goals) {
        AtEnds joined = new AtEnds();
        open.choices.forEach((from, choices) -> join(from, choices, goals, joined));
        boolean isLast = position == leg.size() && number == stock.legs().size() - 1;
        joined.choices.replaceAll(
            (any, choices) -> isLast ? front.of(choices, staysDifferent()) : followed(choices));
        return joined.choices;
      }

      private void join(int from, List<Choice> choices, Set<Integer> goals, AtEnds joined) {
        AdapterStock adapters = ahead.adapters();
        List<Integer> far = new ArrayList<>();
        for (int goal : goals) {
          if (adapters.isSound(from, goal)) {
            offer(joined, from, goal, choices);
          } else if (adapters.isWithinReach(from, goal)) {
            far.add(goal);
          } else if (!isWhole) {
            int missing = leg.count() * adapters.piecesMissing(from, goal);
            choices.forEach(choice -> joined.add(goal, choice.unjoined(missing)));
          }
        }
        Map<Integer, List<Choice>> layer = far.isEmpty() ? Map.of() : Map.of(from, choices);
        for (int count = 1; count <= Chain.MOST_ADAPTERS; count++) {
          layer = oneMore(layer);
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
        int question = ahead.adapters().question(end, goal);
        choices.forEach(choice -> joined.add(goal, choice.asking(question)));
      }

      private Map<Integer, List<Choice>> oneMore(Map<Integer, List<Choice>> layer) {
        AdapterStock adapters = ahead.adapters();
        AtEnds next = new AtEnds();
        layer.forEach((end, choices) -> adapters.onto(end).forEach(adapter -> {
          int question = adapters.question(end, adapter.near());
          long cost = sum(adapter.cost(), ahead.cost(position, adapter.far()));
          for (Choice choice : choices) {
            if (isLookedAtInVain(choice, adapter, sum(cost, ofLines(choice)))) {
              continue;
            }
            Choice longer = with(choice.asking(question), adapter);
            if (!isHopeless(longer, following(longer, adapter.far()))) {
              next.add(adapter.far(), longer);
            }
          }
        }));
        next.choices.replaceAll((any, choices) -> followed(choices));
        return next.choices;
      }
    }
  }
}
