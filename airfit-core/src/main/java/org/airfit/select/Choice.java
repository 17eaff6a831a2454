package org.airfit.select;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What is chosen so far, from the outlet on, with what it breaks, asks, costs and leaves of the pressure. Not
 * thread-safe: the parts remember what follows them.
 */
final class Choice {

  /** What a rule that is broken counts as, where a miss is measured in billionths. */
  static final long WHOLE_MISS = 1_000_000_000L;

  /** The parts without their adapters: two choices that differ in adapters only are of the same parts. */
  static final class Parts {

    private static final int FEW = 4;

    private final int[] ranks;
    private @Nullable IdentityHashMap<Candidate, Parts> longer;

    private Parts(int... ranks) {
      this.ranks = ranks;
    }

    private Parts with(Candidate next) {
      if (longer == null) {
        longer = new IdentityHashMap<>(FEW);
      }
      return longer.computeIfAbsent(next, any -> {
        int[] more = Arrays.copyOf(ranks, ranks.length + 1);
        more[ranks.length] = next.rank();
        return new Parts(more);
      });
    }

    boolean isNamedBefore(Parts other) {
      return BY_NAME.compare(this, other) < 0;
    }
  }

  /** By name, in the order the air goes; Arrays.compare is not there in a browser. */
  private static final Comparator<Parts> BY_NAME = (one, other) -> {
    int same = Math.min(one.ranks.length, other.ranks.length);
    for (int i = 0; i < same; i++) {
      if (one.ranks[i] != other.ranks[i]) {
        return Integer.compare(one.ranks[i], other.ranks[i]);
      }
    }
    return Integer.compare(one.ranks.length, other.ranks.length);
  };

  /**
   * The order of proposals: least missed, then the fewest adapters missing and parts that break a rule, then the fewest
   * questions, then the least doubt about the air, then by the objective with the profiles, then most pressure, then by
   * name; of the same parts, the first adapters by name.
   */
  static final Comparator<Choice> ORDER = (one, other) -> {
    int order = Long.compare(one.missed(), other.missed());
    order = order == 0 ? Integer.compare(one.missing, other.missing) : order;
    order = order == 0 ? Integer.compare(one.faults, other.faults) : order;
    order = order == 0
        ? Integer.compare(Integer.bitCount(one.asked), Integer.bitCount(other.asked))
        : order;
    order =
        order == 0 ? Integer.compare(one.counted(one.doubt), other.counted(other.doubt)) : order;
    order = order == 0
        ? Long.compare(
            one.objective.beforeProfiles(one.cost), other.objective.beforeProfiles(other.cost))
        : order;
    order = order == 0 ? Integer.compare(one.profiles.count(), other.profiles.count()) : order;
    order = order == 0 ? Long.compare(one.cost, other.cost) : order;
    order = order == 0 ? Double.compare(other.pascals, one.pascals) : order;
    order = order == 0 ? BY_NAME.compare(one.parts, other.parts) : order;
    return order == 0 ? byAdapters(one, other) : order;
  };

  /**
   * What lines that are still to be begun begin with, behind a splitter.
   *
   * @param leg the number of the leg that ends at the splitter
   * @param next which of its lines is to be begun next, counted from 0
   * @param pascals the pressure there at worst [Pa]
   * @param atBest the pressure there at best [Pa]
   * @param outlets the end at which each line begins, by number
   * @param missedAhead the least that the air of each line will miss
   * @param doubtAhead the least doubt that will be left of the air of each line
   * @param before the same of the splitter in front of this one of whose lines some are still to be begun; null of none
   */
  record Held(
      int leg,
      int next,
      double pascals,
      double atBest,
      List<Integer> outlets,
      List<Long> missedAhead,
      List<Integer> doubtAhead,
      @Nullable Held before) {

    /** Of two that are at the same place of the layout. */
    private boolean isAsGoodAs(Held other) {
      return pascals >= other.pascals
          && atBest >= other.atBest
          && isToBeginLike(other)
          && (before == null || other.before == null || before.isAsGoodAs(other.before));
    }

    /** Whether the lines that are still to be begun begin at the same ends. */
    private boolean isToBeginLike(Held other) {
      if (outlets == other.outlets) { // mostly: of one splitter
        return true;
      }
      for (int i = next; i < outlets.size(); i++) {
        if (!outlets.get(i).equals(other.outlets.get(i))) {
          return false;
        }
      }
      return true;
    }

    /** The end at which the next line begins, by number. */
    int outlet() {
      return outlets.get(next);
    }

    /** With the next line begun; behind the last line what is held in front. */
    private @Nullable Held begun() {
      return next + 1 == outlets.size()
          ? before
          : new Held(leg, next + 1, pascals, atBest, outlets, missedAhead, doubtAhead, before);
    }
  }

  final @Nullable Choice before;
  final @Nullable Candidate last;
  final Parts parts;
  final int broken;
  final int asked;

  /** How many standard adapters are missing at the joints that nothing joins. */
  final int missing;

  /** How many parts break a rule that is not measured, one that breaks two counted twice. */
  final int faults;

  final long missedLength;

  /** By how much the air misses what is asked at the tools that were reached, in billionths. */
  final long missedAir;

  /** The doubt that is left of the air at the tools that were reached, the most of any, in tenths. */
  final int doubt;

  final long cost;

  /** Whether the air depends on nothing but settings, as far as was chosen: whoever turns the knob settles it. */
  private final boolean dependsOnSettingsAlone;

  private final Objective objective;

  /** The profiles of the couplings so far. */
  final Profiles profiles;

  /**
   * What the tools that were reached have at worst, the one that has least to spare [Pa]; infinite before the first.
   */
  final double spare;

  /** Where the next line begins; null where none is to be begun any more. */
  final @Nullable Held held;

  /** The profiles of couplings that later ones must have, by the name of the first of them. */
  private final Map<String, String> ties;

  /** The pressure that is left at worst [Pa], or {@link SearchAir#STARVED}. */
  final double pascals;

  /** The pressure that is left at best [Pa], or {@link SearchAir#STARVED}. */
  final double atBest;

  private Choice(
      @Nullable Choice before,
      @Nullable Candidate last,
      Parts parts,
      int broken,
      int asked,
      int missing,
      int faults,
      long missedLength,
      long missedAir,
      int doubt,
      long cost,
      boolean dependsOnSettingsAlone,
      Objective objective,
      Profiles profiles,
      double spare,
      @Nullable Held held,
      Map<String, String> ties,
      double pascals,
      double atBest) {
    int open = withOpen(broken, asked);
    this.before = before;
    this.last = last;
    this.parts = parts;
    this.broken = open;
    this.missing = missing;
    this.faults = faults;
    this.missedLength = missedLength;
    this.missedAir = missedAir;
    this.asked = asked & ~settledBy(open, missedAir);
    this.doubt = doubt;
    this.cost = cost;
    this.dependsOnSettingsAlone = dependsOnSettingsAlone;
    this.objective = objective;
    this.profiles = profiles;
    this.spare = spare;
    this.held = held;
    this.ties = ties;
    this.pascals = pascals;
    this.atBest = atBest;
  }

  /**
   * Nothing chosen yet, at an outlet, with what will be broken and asked whatever is chosen, and whether the job leaves
   * nothing of the air open but settings.
   */
  static Choice none(
      int broken,
      int asked,
      boolean dependsOnSettingsAlone,
      Objective objective,
      Profiles profiles,
      double pascals,
      double atBest) {
    return new Choice(
        null,
        null,
        new Parts(),
        broken,
        asked,
        /* missing= */ 0,
        /* faults= */ 0,
        /* missedLength= */ 0L,
        /* missedAir= */ 0L,
        /* doubt= */ 0,
        /* cost= */ 0L,
        dependsOnSettingsAlone,
        objective,
        profiles,
        Double.POSITIVE_INFINITY,
        /* held= */ null,
        Map.of(),
        pascals,
        atBest);
  }

  /** With one more part and the pressure behind it at worst and at best. */
  Choice with(Candidate next, double behind, double behindAtBest) {
    return new Choice(
        this,
        next,
        next.position().isAdapter() ? parts : parts.with(next),
        broken | next.broken(),
        asked | next.asked(),
        missing,
        faults + next.faults(),
        missedLength + next.missedLength(),
        missedAir,
        doubt,
        cost + next.cost(),
        dependsOnSettingsAlone && next.isExact(),
        objective,
        profiles,
        spare,
        held,
        tied(next.tie()),
        behind,
        behindAtBest);
  }

  private Map<String, String> tied(Tie tie) {
    if (tie.isNone() || ties.containsKey(tie.coupling())) {
      return ties;
    }
    Map<String, String> more = new HashMap<>(ties);
    more.put(tie.coupling(), tie.profile());
    return more;
  }

  /** Whether a part may stand here: a plug has the profile of the coupling that it is tied to. */
  boolean allows(Candidate next) {
    Tie tie = next.tie();
    return tie.isNone() || ties.getOrDefault(tie.coupling(), tie.profile()).equals(tie.profile());
  }

  /** With a joint that leaves questions open. */
  Choice asking(int question) {
    return question == 0 ? this : joined(/* moreBroken= */ 0, question, /* moreMissing= */ 0);
  }

  /** With a joint that nothing joins, and how many standard adapters would. */
  Choice unjoined(int pieces) {
    return joined(Rule.ENDS_MATE.bit(), /* question= */ 0, pieces);
  }

  private Choice joined(int moreBroken, int question, int moreMissing) {
    return new Choice(
        before,
        last,
        parts,
        broken | moreBroken,
        asked | question,
        missing + moreMissing,
        faults,
        missedLength,
        missedAir,
        doubt,
        cost,
        dependsOnSettingsAlone,
        objective,
        profiles,
        spare,
        held,
        ties,
        pascals,
        atBest);
  }

  /**
   * At a tool, with what it has to spare at worst [Pa], by how much more the air misses what is asked, and its doubt.
   */
  Choice atTool(double spareThere, long missed, int doubtThere) {
    return at(
        missedAir + missed,
        Math.max(doubt, doubtThere),
        profiles,
        Math.min(spare, spareThere),
        held,
        pascals,
        atBest);
  }

  /** With the profile of one more coupling, whether that is the last of the job or not. */
  Choice coupled(String profile, boolean isLast) {
    return at(missedAir, doubt, profiles.with(profile, isLast), spare, held, pascals, atBest);
  }

  /** Behind a splitter, from where lines begin. */
  Choice holding(List<Integer> outlets, List<Long> missedAhead, List<Integer> doubtAhead, int leg) {
    return at(
        missedAir,
        doubt,
        profiles,
        spare,
        new Held(leg, 0, pascals, atBest, outlets, missedAhead, doubtAhead, held),
        pascals,
        atBest);
  }

  /** At the beginning of the next line, once more at its splitter. */
  Choice atLine() {
    Held from = Objects.requireNonNull(held);
    return at(missedAir, doubt, profiles, spare, from.begun(), from.pascals, from.atBest);
  }

  /** As a whole, with what the tools have to spare as its pressure. */
  Choice whole() {
    return at(missedAir, doubt, profiles, spare, held, spare, spare);
  }

  /** The same in whole pascals, by which sets of parts are put in order. */
  Choice inWholePascals() {
    return at(missedAir, doubt, profiles, spare, held, Math.floor(pascals), Math.floor(pascals));
  }

  /** The same parts and joints at another place. */
  private Choice at(
      long missedThere,
      int doubtThere,
      Profiles profilesThere,
      double spareThere,
      @Nullable Held heldThere,
      double there,
      double thereAtBest) {
    return new Choice(
        before,
        last,
        parts,
        broken,
        asked,
        missing,
        faults,
        missedLength,
        missedThere,
        doubtThere,
        cost,
        dependsOnSettingsAlone,
        objective,
        profilesThere,
        spareThere,
        heldThere,
        ties,
        there,
        thereAtBest);
  }

  /** How far it misses what is asked, in billionths: each rule that is broken, and what can be measured by its size. */
  long missed() {
    return wholeMissed(broken) + missedLength + missedAir;
  }

  private static long wholeMissed(int broken) {
    return Integer.bitCount(broken & ~Candidate.MEASURED) * WHOLE_MISS;
  }

  /** What puts it in order. */
  Key key() {
    return key(0L, 0, 0, 0L);
  }

  /**
   * What puts it in order, with what it will miss, its faults, doubt and cost beside; what it will miss may settle what
   * it asks now, and a doubt about the air is a question.
   */
  Key key(long moreMissed, int moreFaults, int doubtAhead, long moreCost) {
    return key(
        asked,
        missed() + moreMissed,
        moreMissed,
        faults + moreFaults,
        Math.max(doubt, doubtAhead),
        cost + moreCost,
        profiles.count());
  }

  /**
   * The least that puts it in order with one more part, without a look at the air and without making it.
   *
   * @param next the part
   * @param moreMissed what the parts behind it will miss
   * @param moreFaults the faults of the parts behind it
   * @param moreCost what it and the parts behind it cost
   */
  Key keyWith(Candidate next, long moreMissed, int moreFaults, long moreCost) {
    int askedThen = asked | next.asked();
    int brokenThen = withOpen(broken | next.broken(), askedThen);
    return key(
        askedThen & ~settledBy(brokenThen, missedAir),
        wholeMissed(brokenThen) + missedLength + next.missedLength() + missedAir + moreMissed,
        moreMissed,
        faults + next.faults() + moreFaults,
        doubt,
        cost + moreCost,
        next.part() instanceof Part.Plug plug
            ? profiles.countWith(plug.profile())
            : profiles.count());
  }

  private Key key(
      int askedThen,
      long missedThen,
      long moreMissed,
      int faultsThen,
      int inDoubt,
      long whole,
      int profilesThen) {
    int stillAsked =
        askedThen & ~settledBy(moreMissed > 0L ? Rule.HOSE_REACHES.bit() : 0, moreMissed);
    if (inDoubt > 0 && missedAir + moreMissed == 0L) {
      stillAsked |= Rule.AIR_AT_TOOL.bit();
    }
    return new Key(
        missedThen,
        missing,
        faultsThen,
        Integer.bitCount(stillAsked),
        counted(inDoubt),
        objective.beforeProfiles(whole),
        profilesThen,
        whole);
  }

  /**
   * What a doubt counts as: where settings alone decide, one tenth, however much of them is too low. What turning a
   * knob settles shall not cost money.
   */
  private int counted(int tenths) {
    return dependsOnSettingsAlone ? Math.min(1, tenths) : tenths;
  }

  /** What is broken, with what questions break together, as bits. */
  private static int withOpen(int broken, int asked) {
    return PartQuestions.isBroken(asked) ? broken | Rule.AIR_KEPT_APART.bit() : broken;
  }

  /** The questions that no longer matter, as bits: their rules are broken anyway, or the air is missed. */
  private static int settledBy(int broken, long missedAir) {
    return PartQuestions.settledBy(broken) | (missedAir > 0L ? Rule.AIR_AT_TOOL.bit() : 0);
  }

  /** Whether it is at least as good in all that counts, now and whatever follows. */
  boolean isAsGoodAs(Choice other) {
    return (broken & ~other.broken) == 0
        && (asked & ~(other.asked | settledBy(other.broken, other.missedAir))) == 0
        && missing <= other.missing
        && faults <= other.faults
        && missedLength <= other.missedLength
        && missedAir <= other.missedAir
        && doubt <= other.doubt
        && (dependsOnSettingsAlone || !other.dependsOnSettingsAlone)
        && cost <= other.cost
        && pascals >= other.pascals
        && atBest >= other.atBest
        && spare >= other.spare
        && profiles.areAsFewAs(other.profiles)
        && ties.equals(other.ties)
        && (held == null || other.held == null || held.isAsGoodAs(other.held));
  }

  /** The parts from the outlet on, adapters where they stand. */
  List<Candidate> inRow() {
    List<Candidate> row = new ArrayList<>();
    for (Choice choice = this; choice != null && choice.last != null; choice = choice.before) {
      row.add(choice.last);
    }
    Collections.reverse(row);
    return row;
  }

  /** Of the same parts: where the first adapter is another one, by its name; where one has none, that first. */
  static int byAdapters(Choice one, Choice other) {
    List<Candidate> own = one.inRow();
    List<Candidate> others = other.inRow();
    for (int i = 0; i < Math.min(own.size(), others.size()); i++) {
      int order = byAdapters(own.get(i), others.get(i));
      if (order != 0) {
        return order;
      }
    }
    return Integer.compare(own.size(), others.size());
  }

  /** An adapter at the tool of one line stands before one where the next begins: there the other has none. */
  private static int byAdapters(Candidate one, Candidate other) {
    boolean areAdapters = one.position().isAdapter() && other.position().isAdapter();
    return areAdapters && one.position().line() != other.position().line()
        ? Integer.compare(other.position().line(), one.position().line())
        : Integer.compare(adapterRank(one), adapterRank(other));
  }

  private static int adapterRank(Candidate part) {
    return part.position().isAdapter() ? part.rank() : -1;
  }
}
