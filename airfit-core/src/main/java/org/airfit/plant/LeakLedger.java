package org.airfit.plant;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.airfit.internal.Digits;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Range;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.safety.Situation;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/**
 * The leaks of a plant, what they cost, which repairs pay first, and how much of what a test of the whole plant shows
 * they explain.
 *
 * <p>What is not known is a range: a leak that nobody measured loses at least nothing and at most whatever, so the sum
 * with it has a least and no most. A repair counts as done only after it was checked again; until then the leak loses
 * anything from nothing to what was found.
 *
 * @param price what air costs at the plant
 * @param leaks the leaks, in the order in which they were written down
 */
public record LeakLedger(AirPrice price, List<Leak> leaks) {

  /** More than any ledger has; a choice of this project. */
  private static final int MOST_LEAKS = 10_000;

  private static final Caution HEARING = new Caution(
      "Wear hearing protection at large leaks and while a line is blown off",
      "Air that escapes can be louder than 85 dB(A), at which ears are harmed in the course of a shift.",
      Source.fromMemory("limits of noise at work, such as 29 CFR 1910.95"));

  /**
   * A leak that still loses air, or may.
   *
   * @param leak the leak
   * @param bestRank its rank by cost, if it is as large as it can be and the others as small
   * @param worstRank its rank by cost, if it is as small as it can be and the others as large
   * @param least what it costs in a year at least; empty where what it loses is not known
   * @param most what it costs in a year at most; empty where what it loses is not known
   * @param payback when its repair is paid back; empty where it was repaired, or its flow or the cost of the repair is
   *     not known
   */
  public record Entry(
      Leak leak,
      int bestRank,
      int worstRank,
      Optional<YearlyCost> least,
      Optional<YearlyCost> most,
      Optional<Payback> payback) {

    /**
     * Refuses what is null.
     *
     * @param leak the leak
     * @param bestRank its rank by cost, if it is as large as it can be and the others as small
     * @param worstRank its rank by cost, if it is as small as it can be and the others as large
     * @param least what it costs in a year at least; empty where what it loses is not known
     * @param most what it costs in a year at most; empty where what it loses is not known
     * @param payback when its repair is paid back; empty where it was repaired, or its flow or the cost of the repair
     *     is not known
     * @throws IllegalArgumentException if the ranks do not rise from 1, or one of the two costs is known alone
     */
    public Entry {
      Objects.requireNonNull(leak, "leak");
      Objects.requireNonNull(least, "least");
      Objects.requireNonNull(most, "most");
      Objects.requireNonNull(payback, "payback");
      if (bestRank < 1 || worstRank < bestRank || least.isPresent() != most.isPresent()) {
        throw new IllegalArgumentException(
            "ranks must rise from 1, and both costs be known or none," + " were " + bestRank
                + " and " + worstRank + " of " + leak);
      }
    }

    /** {@return the leak with its rank and its cost in a year} */
    @Override
    public String toString() {
      return leak + "; rank " + bestRank + " to " + worstRank
          + least.map(cost -> "; at least " + cost.money().format(2)).orElse("; cost not known")
          + payback.map(known -> "; paid back in " + known.inWords()).orElse("");
    }
  }

  /**
   * What several leaks lose together, or what their repairs save.
   *
   * @param least at least
   * @param most at most; empty where the flow of one of them is not known
   * @param leastMoney the money of that in a year at least
   * @param mostMoney the money of that in a year at most; empty where the flow of one of them is not known
   * @param notMeasured the tags of those of which the flow is not known
   */
  public record Total(
      MassFlow least,
      Optional<MassFlow> most,
      Money leastMoney,
      Optional<Money> mostMoney,
      List<String> notMeasured) {

    /**
     * Refuses what is null, and copies the list.
     *
     * @param least at least
     * @param most at most; empty where the flow of one of them is not known
     * @param leastMoney the money of that in a year at least
     * @param mostMoney the money of that in a year at most; empty where the flow of one of them is not known
     * @param notMeasured the tags of those of which the flow is not known
     * @throws IllegalArgumentException if {@code least} is above {@code most}
     */
    public Total {
      Objects.requireNonNull(least, "least");
      Objects.requireNonNull(most, "most");
      Objects.requireNonNull(leastMoney, "leastMoney");
      Objects.requireNonNull(mostMoney, "mostMoney");
      notMeasured = List.copyOf(Objects.requireNonNull(notMeasured, "notMeasured"));
      if (most.isPresent() && least.compareTo(most.get()) > 0) {
        throw new IllegalArgumentException(
            "least of a total must be at most " + most.get().shown() + ", was " + least.shown());
      }
    }

    /** {@return the total in one line} */
    @Override
    public String toString() {
      return "at least " + least.shown() + " and " + leastMoney.format(2) + " in a year"
          + most.map(flow -> ", at most " + flow.shown()).orElse("")
          + mostMoney.map(money -> " and " + money.format(2)).orElse("")
          + (notMeasured.isEmpty() ? "" : "; not measured: " + String.join(", ", notMeasured));
    }
  }

  /**
   * A round of repairs.
   *
   * @param inOrder the leaks to repair, those first that are paid back soonest at the latest
   * @param together when the round is paid back; empty where there is nothing to repair of which cost and flow are known
   * @param leftOut the tags of leaks to repair of which the cost of the repair or the flow is not known
   */
  public record Round(List<Entry> inOrder, Optional<Payback> together, List<String> leftOut) {

    /**
     * Refuses what is null, and copies the lists.
     *
     * @param inOrder the leaks to repair, those first that are paid back soonest at the latest
     * @param together when the round is paid back; empty where there is nothing to repair of which cost and flow are
     *     known
     * @param leftOut the tags of leaks to repair of which the cost of the repair or the flow is not known
     */
    public Round {
      inOrder = List.copyOf(Objects.requireNonNull(inOrder, "inOrder"));
      Objects.requireNonNull(together, "together");
      leftOut = List.copyOf(Objects.requireNonNull(leftOut, "leftOut"));
    }

    /** {@return the round in one line} */
    @Override
    public String toString() {
      return "repairs: " + inOrder.size()
          + together.map(all -> ", paid back in " + all.inWords()).orElse("")
          + (leftOut.isEmpty() ? "" : "; left out: " + String.join(", ", leftOut));
    }
  }

  /** What the leaks of a ledger say beside a test of the whole plant. */
  public enum Coverage {
    /** The test shows more than the measured leaks lose, whatever the errors: something is missing. */
    LOOK_ON,
    /** Within the errors the measured leaks may be all that leaks. */
    MAY_BE_ALL,
    /** The measured leaks lose more than the test shows, whatever the errors: one of the two is wrong. */
    MORE_THAN_TEST
  }

  /**
   * The sum of the ledger beside a test of the whole plant.
   *
   * @param test the test
   * @param measured what those leaks lose together whose flow is known
   * @param notMeasured the tags of those that lost air then and whose flow is not known
   * @param leastShare the part of what the test shows that the measured leaks explain at least [-]
   * @param mostShare the same at most [-]; empty where the test may show nothing at all
   * @param missing what the test shows beyond the measured leaks
   * @param coverage what follows
   */
  public record Explained(
      LeakTest test,
      Range<MassFlow> measured,
      List<String> notMeasured,
      double leastShare,
      OptionalDouble mostShare,
      Range<MassFlow> missing,
      Coverage coverage) {

    /**
     * Checks the components, and copies the list.
     *
     * @param test the test
     * @param measured what those leaks lose together whose flow is known
     * @param notMeasured the tags of those that lost air then and whose flow is not known
     * @param leastShare the part of what the test shows that the measured leaks explain at least [-]
     * @param mostShare the same at most [-]; empty where the test may show nothing at all
     * @param missing what the test shows beyond the measured leaks
     * @param coverage what follows
     * @throws IllegalArgumentException if a share is below 0 or not finite, or the least above the most
     */
    public Explained {
      Objects.requireNonNull(test, "test");
      Objects.requireNonNull(measured, "measured");
      notMeasured = List.copyOf(Objects.requireNonNull(notMeasured, "notMeasured"));
      Objects.requireNonNull(mostShare, "mostShare");
      Objects.requireNonNull(missing, "missing");
      Objects.requireNonNull(coverage, "coverage");
      double most = mostShare.orElse(Double.MAX_VALUE);
      if (!(leastShare >= 0.0 && leastShare <= most && most <= Double.MAX_VALUE)) {
        throw new IllegalArgumentException(
            "shares of a test must be finite, at least 0 and rise, were " + Digits.told(leastShare)
                + " and " + Digits.told(most));
      }
    }

    /** {@return the answer in words, such as "The measured leaks explain 40 to 60 % of what the test shows: look on."} */
    public String inWords() {
      String share = "The measured leaks explain " + percent() + " of what the test shows";
      String others = notMeasured.isEmpty()
          ? ""
          : (notMeasured.size() == 1 ? " A leak is" : " " + notMeasured.size() + " leaks are")
              + " not measured: " + String.join(", ", notMeasured) + ".";
      return switch (coverage) {
        case LOOK_ON ->
          share
              + (notMeasured.isEmpty()
                  ? ": look on."
                  : ": look on, and first measure what is found." + others);
        case MAY_BE_ALL -> share + ": within the errors they may be all." + others;
        case MORE_THAN_TEST ->
          share + ", which cannot be: look for a leak that stands twice, that is"
              + " repaired already or is smaller than it was taken for, and time the test again.";
      };
    }

    /** {@return the same as {@link #inWords}} */
    @Override
    public String toString() {
      return inWords();
    }

    private String percent() {
      String first = Digits.fixed(100.0 * leastShare, 0);
      if (mostShare.isEmpty()) {
        return "at least " + first + " %";
      }
      String last = Digits.fixed(100.0 * mostShare.getAsDouble(), 0);
      return first.equals(last) ? last + " %" : first + " to " + last + " %";
    }
  }

  /**
   * Checks the components and copies the list.
   *
   * @param price what air costs at the plant
   * @param leaks the leaks, in the order in which they were written down
   * @throws IllegalArgumentException if two leaks have one tag, there are more than 10,000, a repair is paid in another
   *     currency than electricity, or the money is not below 1e30
   */
  public LeakLedger {
    Objects.requireNonNull(price, "price");
    leaks = List.copyOf(Objects.requireNonNull(leaks, "leaks"));
    if (leaks.size() > MOST_LEAKS) {
      throw new IllegalArgumentException(
          "leaks of a ledger must be at most " + MOST_LEAKS + ", were " + leaks.size());
    }
    String currency = price.perKilowattHour().currency();
    Set<String> tags = new HashSet<>();
    Money repairs = price.perKilowattHour().times(0.0);
    double most = 0.0;
    for (Leak leak : leaks) {
      if (!tags.add(leak.tag())) {
        throw new IllegalArgumentException(
            "tag " + leak.tag() + " must stand once, stands twice; give each leak its own");
      }
      if (leak.repair().filter(cost -> !cost.currency().equals(currency)).isPresent()) {
        throw new IllegalArgumentException("cost of the repair of leak " + leak.tag()
            + " must be in " + currency + " as the price of electricity, was "
            + leak.repair().get().shown());
      }
      repairs = leak.repair().map(repairs::plus).orElse(repairs);
      most +=
          most(leak.found()) + leak.checked().map(check -> most(check.left())).orElse(0.0);
    }
    price.cost("leaks", MassFlow.ofKilogramsPerSecond(most)); // refuses what no money tells
  }

  private static double most(LeakSize size) {
    return size.flow().map(flow -> flow.most().kilogramsPerSecond()).orElse(0.0);
  }

  /**
   * {@return the leaks that still lose air, or may, the dearest first: by what they cost at least, then at most; those
   * of which nothing is known last}
   */
  public List<Entry> entries() {
    List<Leak> losing =
        leaks.stream().filter(leak -> leak.state() != LeakState.DONE).toList();
    double[] least = losing.stream().mapToDouble(LeakLedger::least).sorted().toArray();
    double[] most = losing.stream().mapToDouble(LeakLedger::most).sorted().toArray();
    List<Entry> entries = new ArrayList<>();
    for (Leak leak : losing) {
      boolean self = most(leak) > least(leak); // counts itself among those that may be larger
      entries.add(new Entry(
          leak,
          1 + above(least, most(leak)),
          1 + above(most, least(leak)) - (self ? 1 : 0),
          leak.flow().map(flow -> price.cost(named(leak), flow.least())),
          leak.flow().map(flow -> price.cost(named(leak), flow.most())),
          payback(leak)));
    }
    entries.sort(Comparator.comparingDouble((Entry entry) -> -least(entry.leak()))
        .thenComparing(entry -> entry.leak().flow().isEmpty())
        .thenComparingDouble(entry -> -most(entry.leak())));
    return List.copyOf(entries);
  }

  private static String named(Leak leak) {
    return "leak " + leak.tag();
  }

  private static double least(Leak leak) {
    return leak.flow().map(flow -> flow.least().kilogramsPerSecond()).orElse(0.0);
  }

  private static double most(Leak leak) {
    return leak.flow()
        .map(flow -> flow.most().kilogramsPerSecond())
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** How many of some sorted numbers lie above one. */
  private static int above(double[] sorted, double limit) {
    int low = 0;
    int high = sorted.length;
    while (low < high) {
      int middle = (low + high) / 2;
      if (sorted[middle] > limit) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return sorted.length - low;
  }

  private static boolean isToRepair(Leak leak) {
    return leak.state() == LeakState.OPEN || leak.state() == LeakState.STILL_LEAKS;
  }

  private Optional<Payback> payback(Leak leak) {
    if (!isToRepair(leak) || leak.repair().isEmpty() || leak.flow().isEmpty()) {
      return Optional.empty();
    }
    Range<MassFlow> flow = leak.flow().get();
    return Optional.of(new Payback(
        "the repair of " + named(leak),
        leak.repair().get(),
        price.leastSaved(named(leak), flow.least()).money(),
        price.mostSaved(named(leak), flow.most()).money()));
  }

  /** {@return what all leaks lose now, and what that air costs in a year} */
  public Total lost() {
    return total(leaks, Leak::flow, /* isSaving= */ false);
  }

  /** {@return what the repairs have saved that were checked again, and the money of that in a year} */
  public Total saved() {
    return total(
        leaks.stream().filter(leak -> leak.checked().isPresent()).toList(),
        Leak::saved,
        /* isSaving= */ true);
  }

  /** {@return what the leaks lose that are to be repaired, and the money that their repair saves in a year} */
  public Total toSave() {
    return total(
        leaks.stream().filter(LeakLedger::isToRepair).toList(), Leak::flow, /* isSaving= */ true);
  }

  /** What is known of a leak. */
  private interface Known {
    Optional<Range<MassFlow>> of(Leak leak);
  }

  /** What is known of some leaks, summed [kg/s], and the tags of those of which nothing is. */
  private record Measured(double least, double most, List<String> notMeasured) {

    static Measured of(List<Leak> some, Known known) {
      double least = 0.0;
      double most = 0.0;
      List<String> notMeasured = new ArrayList<>();
      for (Leak leak : some) {
        Optional<Range<MassFlow>> flow = known.of(leak);
        if (flow.isPresent()) {
          least += flow.get().least().kilogramsPerSecond();
          most += flow.get().most().kilogramsPerSecond();
        } else {
          notMeasured.add(leak.tag());
        }
      }
      return new Measured(least, most, notMeasured);
    }
  }

  private Total total(List<Leak> some, Known known, boolean isSaving) {
    Measured sum = Measured.of(some, known);
    MassFlow atLeast = MassFlow.ofKilogramsPerSecond(sum.least);
    MassFlow atMost = MassFlow.ofKilogramsPerSecond(sum.most);
    String what = "leaks";
    Money leastMoney =
        (isSaving ? price.leastSaved(what, atLeast) : price.cost(what, atLeast)).money();
    Money mostMoney = (isSaving ? price.mostSaved(what, atMost) : price.cost(what, atMost)).money();
    boolean isAll = sum.notMeasured.isEmpty();
    return new Total(
        atLeast,
        isAll ? Optional.of(atMost) : Optional.empty(),
        leastMoney,
        isAll ? Optional.of(mostMoney) : Optional.empty(),
        sum.notMeasured);
  }

  /** {@return the next round of repairs: which pay first, and when all of them together are paid back} */
  public Round round() {
    List<Entry> inOrder = new ArrayList<>();
    List<String> leftOut = new ArrayList<>();
    Money cost = price.perKilowattHour().times(0.0);
    Money least = cost;
    Money most = cost;
    for (Entry entry : entries()) {
      if (entry.payback().isPresent()) {
        Payback payback = entry.payback().get();
        inOrder.add(entry);
        cost = cost.plus(payback.cost());
        least = least.plus(payback.leastSaved());
        most = most.plus(payback.mostSaved());
      } else if (isToRepair(entry.leak())) {
        leftOut.add(entry.leak().tag());
      }
    }
    inOrder.sort(Comparator.comparingDouble((Entry entry) -> latest(entry))
        .thenComparingDouble(LeakLedger::earliest));
    return new Round(
        inOrder,
        inOrder.isEmpty()
            ? Optional.empty()
            : Optional.of(new Payback("the round of repairs", cost, least, most)),
        leftOut);
  }

  private static double latest(Entry entry) {
    return entry
        .payback()
        .map(Payback::longestYears)
        .orElse(OptionalDouble.empty())
        .orElse(Double.POSITIVE_INFINITY);
  }

  private static double earliest(Entry entry) {
    return entry
        .payback()
        .map(Payback::shortestYears)
        .orElse(OptionalDouble.empty())
        .orElse(Double.POSITIVE_INFINITY);
  }

  /**
   * Holds the sum of the ledger against a test of the whole plant. The flows of the ledger are taken as they were
   * measured: the test should tell the leak at the pressure that the line had then.
   *
   * @param test the test
   * @param day its day: what was repaired then counts by what is left; empty for today
   * @return how much of the test the measured leaks explain
   */
  public Explained against(LeakTest test, Optional<LocalDate> day) {
    Objects.requireNonNull(test, "test");
    Objects.requireNonNull(day, "day");
    Measured then = Measured.of(leaks, leak -> day.map(leak::flowOn).orElseGet(leak::flow));
    double testLeast = test.leak().least().kilogramsPerSecond();
    double testMost = test.leak().most().kilogramsPerSecond();
    Coverage coverage = then.most < testLeast
        ? Coverage.LOOK_ON
        : then.least > testMost ? Coverage.MORE_THAN_TEST : Coverage.MAY_BE_ALL;
    return new Explained(
        test,
        new Range<>(
            MassFlow.ofKilogramsPerSecond(then.least), MassFlow.ofKilogramsPerSecond(then.most)),
        then.notMeasured,
        testMost > 0.0 ? then.least / testMost : 0.0,
        testLeast > 0.0 ? OptionalDouble.of(then.most / testLeast) : OptionalDouble.empty(),
        new Range<>(
            MassFlow.ofKilogramsPerSecond(Math.max(0.0, testLeast - then.most)),
            MassFlow.ofKilogramsPerSecond(Math.max(0.0, testMost - then.least))),
        coverage);
  }

  /**
   * Lists the warnings that go with looking for leaks and repairing them.
   *
   * @param units the units in which rules tell their limits
   * @return the cautions; the last defers to local codes
   */
  public List<Caution> cautions(UnitSystem units) {
    SafetyRules rules = SafetyRules.usFederal().toldIn(Objects.requireNonNull(units, "units"));
    Set<Caution> once = new LinkedHashSet<>();
    once.add(Caution.FEELING_FOR_LEAKS);
    once.addAll(rules.cautions(Situation.describe().maintenance().build()));
    once.add(HEARING);
    Caution deference = rules.deference();
    once.remove(deference);
    once.add(deference);
    return List.copyOf(once);
  }
}
