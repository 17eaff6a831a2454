package org.airfit.select;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import org.airfit.flow.FlowElement;
import org.airfit.internal.Interruption;
import org.airfit.joint.Chain;
import org.jspecify.annotations.Nullable;

/**
 * What the way that is left of a leg costs at least, and what it leaves of the pressure at most. Both are bounds: the
 * cheapest parts and the widest parts, whether they are the same or not. Where the leg ends at a splitter, all
 * that follows it counts as well. Not thread-safe: it remembers.
 */
final class Ahead {

  /** What cannot be joined at all; small enough to sum. */
  static final long NEVER = Long.MAX_VALUE / 4;

  private final Leg leg;
  private final List<Row> inRow;
  private final AdapterStock adapters;
  private final SearchAir air;
  private final SearchAir airAtWorst;
  private final boolean isWhole;
  private final List<Ahead> lines;
  private final long[] missedLength;
  private final int[] faults;
  private final List<List<DoubleUnaryOperator>> widest = new ArrayList<>();
  private final List<List<DoubleUnaryOperator>> widestAtWorst = new ArrayList<>();
  private final Costs ofAny;
  private final Map<Set<String>, Costs> ofProfiles = new HashMap<>();
  private final Map<Integer, Map<Integer, Long>> joints = new HashMap<>();
  private final Map<Integer, Map<Integer, Long>> reached = new HashMap<>();

  /**
   * Looks ahead from a leg.
   *
   * @param leg the leg
   * @param adapters the adapters that may stand in it
   * @param air the air at best
   * @param airAtWorst the air at worst
   * @param isWhole whether no rule may be broken
   * @param lines the lines behind the splitter at its end; none where it ends at a tool
   */
  Ahead(
      Leg leg,
      AdapterStock adapters,
      SearchAir air,
      SearchAir airAtWorst,
      boolean isWhole,
      List<Ahead> lines) {
    this.leg = leg;
    this.inRow = leg.rows();
    this.ofAny = new Costs(inRow, null);
    this.adapters = adapters;
    this.air = air;
    this.airAtWorst = airAtWorst;
    this.isWhole = isWhole;
    this.lines = lines;
    this.missedLength = new long[inRow.size() + 1];
    this.faults = new int[inRow.size() + 1];
    for (Ahead line : lines) {
      missedLength[inRow.size()] += line.missedLength(0);
      faults[inRow.size()] += line.faults(0);
    }
    for (int i = inRow.size() - 1; i >= 0; i--) {
      int fewest = inRow.get(i).suited(isWhole).stream()
          .mapToInt(Candidate::faults)
          .min()
          .orElse(0);
      faults[i] = faults[i + 1] + fewest;
      long least = inRow.get(i).suited(isWhole).stream()
          .mapToLong(Candidate::missedLength)
          .min()
          .orElse(0L);
      missedLength[i] = missedLength[i + 1] + least;
    }
    for (int i = 0; i < inRow.size(); i++) {
      List<Candidate> wide = widest(inRow.get(i).suited(isWhole));
      widest.add(behind(wide, Candidate::atBest, air, leg.leastFlow(i)));
      widestAtWorst.add(behind(wide, Candidate::element, airAtWorst, leg.mostFlow(i)));
    }
  }

  /** The adapters that may stand in the leg. */
  AdapterStock adapters() {
    return adapters;
  }

  /** The rules that all candidates of some position break, as bits. */
  static int alwaysBroken(Stock stock, boolean isWhole) {
    return always(stock, isWhole, Candidate::broken);
  }

  /** The rules that all candidates of some position leave open, as bits; told only where none may be broken. */
  static int alwaysAsked(Stock stock, boolean isWhole) {
    return isWhole ? always(stock, true, Candidate::asked) : 0;
  }

  private static int always(Stock stock, boolean isWhole, ToIntFunction<Candidate> bits) {
    int always = 0;
    for (Row position : stock.inRow()) {
      always |=
          position.suited(isWhole).stream().mapToInt(bits).reduce(-1, (one, other) -> one & other);
    }
    return always == -1 ? 0 : always;
  }

  /** How much the positions from one on miss of what can be measured, at least. */
  long missedLength(int position) {
    return missedLength[position];
  }

  /** How many faults the parts of the positions from one on have, at least. */
  int faults(int position) {
    return faults[position];
  }

  /** How many faults the parts of one of the lines behind the splitter at the end have, at least. */
  int faultsOfLine(int line) {
    return lines.get(line).faults(0);
  }

  /** How much one of the lines behind the splitter at the end misses of what can be measured, at least. */
  long missedLengthOfLine(int line) {
    return lines.get(line).missedLength(0);
  }

  /** The candidates of which no other leaves at least as much behind. */
  private static List<Candidate> widest(List<Candidate> candidates) {
    List<Candidate> kept = new ArrayList<>();
    for (Candidate candidate : candidates) {
      Interruption.check(Front.SEARCH);
      if (kept.stream().noneMatch(other -> Width.isAsWide(other.part(), candidate.part()))) {
        kept.removeIf(other -> Width.isAsWide(candidate.part(), other.part()));
        kept.add(candidate);
      }
    }
    return kept;
  }

  /** What candidates leave of the pressure of a flow; a plug does nothing. */
  private static List<DoubleUnaryOperator> behind(
      List<Candidate> candidates,
      Function<Candidate, @Nullable FlowElement> known,
      SearchAir air,
      double flow) {
    List<DoubleUnaryOperator> behind = new ArrayList<>();
    for (Candidate candidate : candidates) {
      FlowElement element = known.apply(candidate);
      if (element != null) {
        behind.add(air.behind(element, flow));
      }
    }
    return behind;
  }

  /**
   * The least doubt that will be left of the air at the tools ahead, the most of any, from the pressures at a position
   * at worst and at best [Pa].
   */
  int doubt(int position, double worst, double best) {
    double leftAtWorst = pascals(position, worst, widestAtWorst);
    double left = pascals(position, best, widest);
    Leg.Tool tool = leg.tool();
    if (tool != null) {
      return tool.doubt(
          airAtWorst.gaugePascals(leftAtWorst) + SearchAir.NOISE_PASCALS,
          air.gaugePascals(left) + SearchAir.NOISE_PASCALS);
    }
    int doubt = 0;
    for (Ahead line : lines) {
      doubt = Math.max(doubt, line.doubt(0, leftAtWorst, left));
    }
    return doubt;
  }

  /** The same for each of the lines behind the splitter at the end, from the pressures there [Pa]. */
  List<Integer> doubtOfLines(double worst, double best) {
    return lines.stream().map(line -> line.doubt(0, worst, best)).toList();
  }

  /** The least that the air will miss of what is needed at the tools ahead, from a pressure at a position [Pa]. */
  long missedAir(int position, double inFront) {
    double left = pascals(position, inFront, widest);
    Leg.Tool tool = leg.tool();
    if (tool != null) {
      return leg.count() * tool.missedAir(air.gaugePascals(left) + SearchAir.NOISE_PASCALS);
    }
    long missed = 0L;
    for (Ahead line : lines) {
      missed += line.missedAir(0, left);
    }
    return missed;
  }

  /** The same for each of the lines behind the splitter at the end, from a pressure there [Pa]. */
  List<Long> missedAirOfLines(double atSplitter) {
    return lines.stream().map(line -> line.missedAir(0, atSplitter)).toList();
  }

  /** The most that can be left of a pressure in front of a position at the end of the leg [Pa]. */
  private static double pascals(
      int position, double inFront, List<List<DoubleUnaryOperator>> widestOfAll) {
    double left = inFront;
    for (List<DoubleUnaryOperator> parts : widestOfAll.subList(position, widestOfAll.size())) {
      double best = parts.isEmpty() ? left : SearchAir.STARVED;
      for (DoubleUnaryOperator behind : parts) {
        best = Math.max(best, behind.applyAsDouble(left));
      }
      left = best;
    }
    return left;
  }

  /** The least that the positions from one on cost, from an end that is open. */
  long cost(int position, int end) {
    return ofAny.from(position, end);
  }

  /** The least that the positions from one on cost, from a socket that takes these profiles. */
  long cost(int position, Set<String> profiles) {
    return ofAny.from(position, profiles);
  }

  /** The least that the lines from one on cost that begin at these ends. */
  long cost(List<Integer> outlets, int from) {
    long sum = 0L;
    for (int i = from; i < outlets.size(); i++) {
      sum = Math.min(NEVER, sum + lines.get(i).cost(0, outlets.get(i)));
    }
    return sum;
  }

  /** The least that a part and the positions behind it cost. */
  long costFrom(int position, Candidate part) {
    return ofAny.from(position, part);
  }

  /** What the positions of the leg cost where all its couplings that are left have one of some profiles. */
  Costs costsOf(Set<String> profiles) {
    return ofProfiles.computeIfAbsent(profiles, any -> new Costs(inRow, any));
  }

  /** The least that positions cost, where the plugs have any profile or one of some. */
  final class Costs {

    private final @Nullable Set<String> profiles;
    private final List<Map<Integer, Long>> fromEnd = new ArrayList<>();
    private final List<Map<Integer, Long>> fromGoal = new ArrayList<>();
    private final List<Map<String, Long>> fromProfile = new ArrayList<>();

    private Costs(List<Row> inRow, @Nullable Set<String> profiles) {
      this.profiles = profiles;
      for (int i = 0; i <= inRow.size(); i++) {
        fromEnd.add(new HashMap<>());
        fromGoal.add(new HashMap<>());
        fromProfile.add(new HashMap<>());
      }
    }

    /** The least that the positions from one on cost, from an end that is open. */
    long from(int position, int end) {
      Map<Integer, Long> known = fromEnd.get(position);
      Long found = known.get(end);
      if (found == null) {
        found = position == inRow.size() ? atEnd(end) : reaching(position, end);
        known.put(end, found);
      }
      return found;
    }

    private long atEnd(int end) {
      Leg.Tool tool = leg.tool();
      return tool == null ? 0L : join(end, tool.inlet());
    }

    private long reaching(int position, int end) {
      Map<Integer, Long> goals = fromGoal.get(position);
      if (goals.isEmpty()) {
        inRow
            .get(position)
            .byEnd(isWhole)
            .forEach((goal, parts) -> goals.put(goal, least(position, parts)));
      }
      long least = NEVER;
      for (Map.Entry<Integer, Long> goal : goals.entrySet()) {
        long beyond = goal.getValue();
        if (beyond < least) {
          least = Math.min(least, join(end, goal.getKey()) + beyond);
        }
      }
      return least;
    }

    /** The least that one of some parts and all behind it cost. */
    private long least(int position, List<Candidate> parts) {
      long least = NEVER;
      for (Candidate part : parts) {
        least = Math.min(least, from(position, part));
      }
      return least;
    }

    /** The least that a part and all behind it cost. */
    private long from(int position, Candidate part) {
      long behind = part.part() instanceof Part.Socket
          ? from(position + 1, part.takes())
          : from(position + 1, part.far());
      return Math.min(NEVER, part.cost() + behind + cost(part.outlets(), 0));
    }

    /** The least that the positions from one on cost, from a socket that takes some profiles. */
    long from(int position, Set<String> taken) {
      long least = NEVER;
      for (String profile : taken) {
        if (profiles == null || profiles.contains(profile)) {
          least = Math.min(least, ofPlug(position, profile));
        }
      }
      return least;
    }

    private long ofPlug(int position, String profile) {
      Long known = fromProfile.get(position).get(profile);
      if (known == null) {
        known = least(
            position, inRow.get(position).byProfile(isWhole).getOrDefault(profile, List.of()));
        fromProfile.get(position).put(profile, known);
      }
      return known;
    }
  }

  /** The least that the adapters between two ends cost. */
  private long join(int from, int goal) {
    Map<Integer, Long> known = joints.computeIfAbsent(from, any -> new HashMap<>());
    Long found = known.get(goal);
    if (found == null) {
      found = joining(from, goal);
      known.put(goal, found);
    }
    return found;
  }

  private long joining(int from, int goal) {
    long least = NEVER;
    for (Map.Entry<Integer, Long> end :
        reached.computeIfAbsent(from, this::reach).entrySet()) {
      if (end.getValue() < least && adapters.isSound(end.getKey(), goal)) {
        least = end.getValue();
      }
    }
    return least == NEVER && !isWhole ? 0L : least;
  }

  /** The ends that can be reached with the cheapest adapters to each. */
  private Map<Integer, Long> reach(int from) {
    Map<Integer, Long> all = new HashMap<>(Map.of(from, 0L));
    Map<Integer, Long> last = Map.of(from, 0L);
    for (int count = 1; count <= Chain.MOST_ADAPTERS; count++) {
      Map<Integer, Long> next = new HashMap<>();
      last.forEach((end, cost) -> adapters
          .onto(end)
          .forEach(adapter -> next.merge(adapter.far(), cost + adapter.cost(), Math::min)));
      next.forEach((end, cost) -> all.merge(end, cost, Math::min));
      last = next;
    }
    return all;
  }
}
