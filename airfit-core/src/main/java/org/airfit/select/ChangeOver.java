package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.internal.Capital;
import org.airfit.internal.Digits;
import org.airfit.plug.PairOutcome;
import org.airfit.plug.SocketAnswer;
import org.airfit.plug.ToldPair;
import org.airfit.quantity.Money;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.safety.Situation;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/**
 * Which profile to keep where several are in use, what to change in which order, and what can go wrong on the way.
 *
 * <p>The fewest profiles through which every tool gets its air are kept, at most three, and of these sets the cheapest.
 * Where it depends whether a tool gets its air, that is an open question: plans with fewer of them go first.
 * Profiles are kept side by side only where it is told that their halves do not go into each other, or fit and seal; a
 * profile is offered for air only where it is told that it and the couplings of every other medium do not go into each
 * other. Lines of other media are never changed and never joined.
 *
 * <p>A bay is changed whole, sockets and plugs, in one stop. Bays are changed together only where otherwise a pair
 * could be made that lets go, or of which that is not told, and that could not be made before.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class ChangeOver {

  private static final Caution WHOLE = new Caution(
      "Change a bay whole",
      "Shut off and vent the bay, change each of its sockets and plugs in one stop, and take the old halves out of"
          + " the building: one that is left behind makes the pair that the change was to end. Do the same with what is"
          + " on the shelf, in vans and on hired tools.",
      Source.commonPractice("a change of couplings, place by place"));

  private static final Caution WRONG_PAIR = new Caution(
      "Never force a plug",
      "A plug of another profile may go in, seem to lock, and be thrown out under pressure. Until the last bay is"
          + " changed, mark the tools of each bay and keep them there.",
      Source.commonPractice("several profiles in one building"));

  private static final Caution AT_REST = new Caution(
      "Hold ratings against the pressure at rest",
      "Ratings were held against the highest pressure told of any bay, as any plug can be carried to any bay. That is"
          + " the pressure while the tools run: at rest it is higher, up to that at which the compressor stops or the"
          + " regulator holds, and the safety valve opens above it. Hold the rating of each coupling and adapter, also"
          + " of those that stay, against the highest that can occur.",
      Source.commonPractice("parts are rated for the highest pressure that can occur"));

  /** So many sets of profiles are told of which it is not known whether they can be kept side by side. */
  private static final int MOST_IF_TOLD = 3;

  /** So many cheaper plans with more open questions are told. */
  private static final int MOST_BUT_OPEN = 3;

  /**
   * Profiles that could be kept side by side for less, were it told that their halves do not go into each other.
   *
   * @param plan the plan that could be offered then
   * @param pairs the pairs of which it is not told
   */
  public record IfTold(CouplingPlan plan, List<MixedPair> pairs) {
    /**
     * Refuses what is null, and copies the list.
     *
     * @param plan the plan that could be offered then
     * @param pairs the pairs of which it is not told
     */
    public IfTold {
      Objects.requireNonNull(plan, "plan");
      pairs = List.copyOf(Objects.requireNonNull(pairs, "pairs"));
    }

    /** {@return the plan, and how many pairs are not told} */
    @Override
    public String toString() {
      return plan + " if " + pairs.size() + (pairs.size() == 1 ? " pair" : " pairs") + " were told";
    }
  }

  private final CouplingInventory inventory;
  private final List<NotKept> notKept;
  private final List<CouplingPlan> plans;
  private final List<IfTold> ifTold;
  private final List<MixedPair> possibleNow;
  private final List<ChangeStep> steps;

  private ChangeOver(CouplingInventory inventory) {
    this.inventory = inventory;
    List<NotKept> against = new ArrayList<>();
    List<String> candidates = new ArrayList<>();
    for (String profile : inventory.profiles()) {
      Optional<NotKept> apart = againstOtherMedia(inventory, profile);
      apart.ifPresent(against::add);
      if (apart.isEmpty()) {
        candidates.add(profile);
      }
    }
    PlanCosts costs = new PlanCosts(inventory, candidates);
    against.addAll(costs.against());
    this.notKept = List.copyOf(against);
    PlanSearch search = new PlanSearch(candidates.size(), inventory.air().size(), costs);
    List<PlanSearch.Found> found = new ArrayList<>();
    List<PlanSearch.Found> untold = new ArrayList<>();
    for (List<Integer> set : PlanSearch.sets(candidates.size())) {
      Side side = side(set.stream().map(candidates::get).toList());
      if (side != Side.NEVER) {
        search.best(set).ifPresent((side == Side.SAFE ? found : untold)::add);
      }
    }
    found.sort(ChangeOver::compare);
    this.plans = found.stream().map(costs::plan).toList();
    untold.sort((one, other) -> compareScores(one.score(), other.score()));
    this.ifTold = untold.stream()
        .filter(each -> found.isEmpty() || each.score().isBelow(found.get(0).score()))
        .limit(MOST_IF_TOLD)
        .map(each -> ifTold(costs.plan(each)))
        .toList();
    MixedShop shop = new MixedShop(inventory);
    this.possibleNow = List.copyOf(shop.pairs(Map.of()));
    this.steps = plans.isEmpty() ? List.of() : steps(shop, plans.get(0));
  }

  /**
   * Answers an inventory.
   *
   * @param inventory what is in use, on the shelf and on offer
   * @return what to keep, to change and to mind
   * @throws IllegalArgumentException if a pressure, a flow or a hose lies outside of what a run can be computed for
   */
  public static ChangeOver of(CouplingInventory inventory) {
    return new ChangeOver(Objects.requireNonNull(inventory, "inventory"));
  }

  private static int compare(PlanSearch.Found one, PlanSearch.Found other) {
    int fewerOpen = Integer.compare(one.score().open(), other.score().open());
    int fewer = Integer.compare(one.profiles().size(), other.profiles().size());
    return fewerOpen != 0
        ? fewerOpen // an open question never ranks above a met rule
        : fewer != 0 ? fewer : compareScores(one.score(), other.score());
  }

  private static int compareScores(PlanSearch.Score one, PlanSearch.Score other) {
    return one.isBelow(other) ? -1 : other.isBelow(one) ? 1 : 0;
  }

  private static Optional<NotKept> againstOtherMedia(CouplingInventory inventory, String profile) {
    for (Bay bay : inventory.apart()) {
      boolean isUsed = bay.plugs().stream().anyMatch(row -> row.profile().equals(profile))
          || bay.sockets().stream().anyMatch(row -> row.takes().contains(profile));
      Set<PairOutcome> met = new LinkedHashSet<>();
      bay.plugs()
          .forEach(
              row -> met.add(ToldPair.judge(inventory.pairs(), row.profile(), Set.of(profile))));
      bay.sockets()
          .forEach(row -> met.add(ToldPair.judge(inventory.pairs(), profile, row.takes())));
      met.remove(PairOutcome.DOES_NOT_GO_IN);
      if (isUsed || !met.isEmpty()) {
        boolean isTold = met.stream().anyMatch(each -> each != PairOutcome.NOT_TOLD);
        return Optional.of(new NotKept(
            profile,
            isUsed
                ? NotKept.Cause.USED_FOR_ANOTHER_MEDIUM
                : isTold ? NotKept.Cause.TOLD_TO_GO_TOGETHER : NotKept.Cause.NOT_TOLD_APART,
            bay.name(),
            Optional.empty()));
      }
    }
    return Optional.empty();
  }

  /** Whether profiles can be kept side by side. */
  private enum Side {
    SAFE,
    NOT_TOLD,
    NEVER
  }

  private Side side(List<String> profiles) {
    Side side = Side.SAFE;
    for (String plug : profiles) {
      for (String socket : profiles) {
        switch (ToldPair.judge(inventory.pairs(), plug, Set.of(socket))) {
          case LEAKS, LETS_GO -> {
            return Side.NEVER;
          }
          case NOT_TOLD -> side = Side.NOT_TOLD;
          case FITS, DOES_NOT_GO_IN -> {
            // safe
          }
        }
      }
    }
    return side;
  }

  private IfTold ifTold(CouplingPlan plan) {
    List<MixedPair> asked = new MixedShop(inventory)
        .pairs(changed(plan)).stream()
            .filter(pair -> !pair.acrossMedia() && pair.outcome() == PairOutcome.NOT_TOLD)
            .filter(pair ->
                plan.profiles().contains(pair.plug()) && plan.profiles().containsAll(pair.takes()))
            .toList();
    return new IfTold(plan, asked);
  }

  private static Map<String, String> changed(CouplingPlan plan) {
    Map<String, String> all = new LinkedHashMap<>();
    plan.kept().forEach(each -> all.put(each.bay(), each.profile()));
    return all;
  }

  private List<ChangeStep> steps(MixedShop shop, CouplingPlan plan) {
    List<CouplingPlan.Kept> changing =
        plan.kept().stream().filter(each -> each.sockets() + each.plugs() > 0).toList();
    List<List<MixedPair>> states = new ArrayList<>();
    for (int state = 0; state < 1 << changing.size(); state++) {
      Map<String, String> changed = new LinkedHashMap<>();
      for (int i = 0; i < changing.size(); i++) {
        if ((state >> i & 1) == 1) {
          changed.put(changing.get(i).bay(), changing.get(i).profile());
        }
      }
      states.add(shop.pairs(changed));
    }
    List<Integer> stops = ChangeOrder.best(
        changing.size(),
        state -> states.get(state).stream()
            .allMatch(pair ->
                !pair.isDangerous() || possibleNow.stream().anyMatch(now -> now.isLike(pair))),
        state -> ChangeOrder.Ways.of(states.get(state)));
    List<ChangeStep> all = new ArrayList<>();
    int done = 0;
    for (int stop : stops) {
      List<MixedPair> before = states.get(done);
      done |= stop;
      List<String> bays = new ArrayList<>();
      int sockets = 0;
      int plugs = 0;
      for (int i = 0; i < changing.size(); i++) {
        if ((stop >> i & 1) == 1) {
          bays.add(changing.get(i).bay());
          sockets += changing.get(i).sockets();
          plugs += changing.get(i).plugs();
        }
      }
      all.add(new ChangeStep(bays, sockets, plugs, before, states.get(done)));
    }
    return List.copyOf(all);
  }

  /** {@return the inventory that is answered} */
  public CouplingInventory inventory() {
    return inventory;
  }

  /** {@return whether there is something to keep, and something to change} */
  public ChangeOverVerdict verdict() {
    return plans.isEmpty()
        ? ChangeOverVerdict.NOTHING_CAN_BE_KEPT
        : steps.isEmpty() ? ChangeOverVerdict.NOTHING_TO_CHANGE : ChangeOverVerdict.CHANGE;
  }

  /**
   * {@return the best plan for each set of profiles that can be kept: those with the fewest open questions first, of
   * these those of fewest profiles, and then the cheapest}
   */
  public List<CouplingPlan> plans() {
    return plans;
  }

  /** {@return the plan to follow: the first; empty where nothing can be kept} */
  public Optional<CouplingPlan> best() {
    return plans.stream().findFirst();
  }

  /** {@return the next best that keeps as many profiles, others} */
  public Optional<CouplingPlan> runnerUp() {
    return plans.stream()
        .skip(1)
        .filter(each -> each.profiles().size() == plans.get(0).profiles().size())
        .findFirst();
  }

  /** {@return plans that keep more profiles and cost less than the best: the cheapest of each number of profiles} */
  public List<CouplingPlan> cheaperWithMore() {
    List<CouplingPlan> cheaper = new ArrayList<>();
    for (CouplingPlan plan : plans) {
      CouplingPlan last = cheaper.isEmpty() ? plans.get(0) : cheaper.get(cheaper.size() - 1);
      if (plan.profiles().size() > last.profiles().size()
          && plan.openBays() <= last.openBays()
          && plan.total().compareTo(last.total()) < 0) {
        cheaper.add(plan);
      }
    }
    return List.copyOf(cheaper);
  }

  /**
   * {@return plans that cost less than the best and leave more bays in which it depends whether a tool gets its air: at
   * most three, those with the fewest such bays first}
   */
  public List<CouplingPlan> cheaperButOpen() {
    List<CouplingPlan> cheaper = new ArrayList<>();
    for (CouplingPlan plan : plans) {
      CouplingPlan last = cheaper.isEmpty() ? plans.get(0) : cheaper.get(cheaper.size() - 1);
      if (cheaper.size() < MOST_BUT_OPEN
          && plan.openBays() > plans.get(0).openBays()
          && plan.total().compareTo(last.total()) < 0) {
        cheaper.add(plan);
      }
    }
    return List.copyOf(cheaper);
  }

  /** {@return plans that would be cheaper and may be offered once it is told what certain pairs do} */
  public List<IfTold> ifTold() {
    return ifTold;
  }

  /**
   * Tells by how much the sockets and plugs of what is kept may get dearer before the runner-up is as cheap: of those
   * profiles that the runner-up does not keep.
   *
   * @return the share, such as 0.25; empty where there is no runner-up, nothing of them is bought, or the two differ in
   *     open questions
   */
  public OptionalDouble mayGetDearer() {
    Optional<CouplingPlan> next = runnerUp();
    if (next.isEmpty() || next.get().openBays() != plans.get(0).openBays()) {
      return OptionalDouble.empty();
    }
    double own = 0.0;
    for (CouplingPlan.Purchase each : plans.get(0).purchases()) {
      Part part = inventory.parts().part(each.part()).orElseThrow();
      boolean isOwn = part instanceof Part.Plug plug
          ? !next.get().profiles().contains(plug.profile())
          : part instanceof Part.Socket socket
              && socket.profiles().stream().noneMatch(next.get().profiles()::contains);
      own += isOwn ? each.total().amount().doubleValue() : 0.0;
    }
    double more = difference(next.get(), plans.get(0)).amount().doubleValue();
    return own > 0.0 ? OptionalDouble.of(more / own) : OptionalDouble.empty();
  }

  private static Money difference(CouplingPlan dearer, CouplingPlan cheaper) {
    return new Money(
        dearer.total().amount().subtract(cheaper.total().amount()),
        dearer.total().currency());
  }

  /** {@return why profiles cannot be kept, for all bays or for one} */
  public List<NotKept> notKept() {
    return notKept;
  }

  /** {@return the wrong pairs that can be made today, the worst first} */
  public List<MixedPair> possibleNow() {
    return possibleNow;
  }

  /**
   * {@return the parts of the best plan of which nobody told a rating, each with its id and name: ask the maker before one
   * is bought or put in}
   */
  public List<String> unrated() {
    return best().stream()
        .flatMap(plan -> plan.purchases().stream())
        .filter(each -> inventory
            .parts()
            .part(each.part())
            .filter(part -> part.facts().rating().isEmpty())
            .isPresent())
        .map(each -> each.part() + ", " + each.name())
        .toList();
  }

  /** {@return the stops of the best plan, in order} */
  public List<ChangeStep> steps() {
    return steps;
  }

  /** {@return the least stock of spare pieces for what is in use today} */
  public List<SpareStock> spareNow() {
    return spare(Map.of());
  }

  /** {@return the least stock of spare pieces once the best plan is done; empty where nothing can be kept} */
  public List<SpareStock> spareAfter() {
    return best().map(plan -> spare(changed(plan))).orElse(List.of());
  }

  private List<SpareStock> spare(Map<String, String> changed) {
    Map<String, Integer> inUse = new LinkedHashMap<>();
    for (Bay bay : inventory.air()) {
      String profile = changed.get(bay.name());
      for (Bay.Sockets row : bay.sockets()) {
        String takes = profile == null ? String.join("/", row.takes()) : profile;
        inUse.merge(
            "socket " + takes + " on " + row.onto().orElseThrow(), row.count(), Integer::sum);
      }
      for (Bay.Plugs row : bay.plugs()) {
        inUse.merge(
            "plug " + (profile == null ? row.profile() : profile) + " on "
                + row.onto().orElseThrow(),
            row.count(),
            Integer::sum);
      }
    }
    List<SpareStock> stock = new ArrayList<>();
    inUse.forEach((kind, count) -> stock.add(inventory
        .restock()
        .map(restock -> SpareStock.of(kind, count, restock))
        .orElseGet(() -> new SpareStock(kind, count, 1))));
    return List.copyOf(stock);
  }

  /**
   * Tells what to do and why.
   *
   * @param units the units
   * @return sentences, the answer first
   */
  public List<String> inWords(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    List<String> said = new ArrayList<>();
    if (plans.isEmpty()) {
      said.add("No profile can be kept for all bays, nor can a few be kept side by side.");
      notKept.forEach(each -> said.add(Capital.first(each.inWords(units))));
      ifTold.forEach(each -> said.add(inWords(each)));
      return said;
    }
    CouplingPlan best = plans.get(0);
    said.add("Keep " + best.inWords() + ": "
        + (steps.isEmpty()
            ? "nothing is changed."
            : pieces(best.sockets(), "socket") + " and " + pieces(best.plugs(), "plug")
                + (best.sockets() + best.plugs() == 1 ? " is" : " are") + " changed, which costs "
                + best.total().format(2)
                + (inventory.labour().isPresent()
                    ? " with the work."
                    : "; the work is not counted.")));
    said.add(why(best));
    for (String part : unrated()) {
      said.add("No rating is told of " + part + ": ask the maker before it is bought or put in.");
    }
    runnerUp()
        .ifPresent(next -> said.add("The next would be " + next.inWords() + " at "
            + next.total().format(2) + ", " + besides(next, best)
            + (next.openBays() > best.openBays() ? ", with more open questions of air." : ".")));
    mayGetDearer()
        .ifPresent(
            share -> said.add("That stands as long as the sockets and plugs " + notOfNext(best)
                + " get no more than " + Digits.fixed(Math.floor(100.0 * share), 0)
                + " % dearer."));
    for (CouplingPlan more : cheaperWithMore()) {
      said.add("Keeping " + more.inWords() + " would cost " + more.total().format(2) + ", "
          + difference(best, more).format(2)
          + " less, and leaves more than one profile to buy, to keep in stock and to mistake.");
    }
    for (CouplingPlan open : cheaperButOpen()) {
      if (!runnerUp().equals(Optional.of(open))) {
        said.add("Keeping " + open.inWords() + " would cost " + open.total().format(2) + ", "
            + difference(best, open).format(2) + " less, and in " + bays(open.openBays())
            + " it depends on what is not known exactly whether a tool gets its air: measure that before you"
            + " take it.");
      }
    }
    ifTold.forEach(each -> said.add(inWords(each)));
    if (best.openBays() > 0) {
      said.add("In " + bays(best.openBays())
          + " it depends on what is not known exactly whether a tool gets its air; measure that before"
          + " buying.");
    }
    return said;
  }

  /** What is bought and belongs to no profile of the runner-up. */
  private String notOfNext(CouplingPlan best) {
    if (best.profiles().size() == 1) {
      return "that are bought for it";
    }
    return "of "
        + best.profiles().stream()
            .filter(
                profile -> runnerUp().stream().noneMatch(next -> next.profiles().contains(profile)))
            .collect(Collectors.joining(" and "))
        + " that are bought";
  }

  private static String bays(int count) {
    return pieces(count, "bay");
  }

  private static String pieces(int count, String what) {
    return count + " " + what + (count == 1 ? "" : "s");
  }

  /** What a plan costs more or less than another. */
  private static String besides(CouplingPlan plan, CouplingPlan other) {
    return plan.total().compareTo(other.total()) < 0
        ? difference(other, plan).format(2) + " less"
        : difference(plan, other).format(2) + " more";
  }

  private String why(CouplingPlan best) {
    int count = best.profiles().size();
    if (count > 1 && plans.stream().anyMatch(plan -> plan.profiles().size() < count)) {
      return "With fewer profiles it depends in more bays whether a tool gets its air; "
          + sideBySide(best) + ".";
    }
    if (count > 1) {
      return "No single profile can be kept for all bays" + (count > 2 ? ", nor can two" : "")
          + "; " + sideBySide(best) + ".";
    }
    return plansOf(1) == 1
        ? "It is the only one that can be kept for all bays."
        : "Of the " + plansOf(1) + " profiles that can be kept for all bays it is " + cheapest(best)
            + ".";
  }

  private String sideBySide(CouplingPlan best) {
    int count = best.profiles().size();
    return plansOf(count) == 1
        ? "it is the only way to keep " + count + " side by side"
        : "of the " + plansOf(count) + " ways to keep " + count + " side by side this is "
            + cheapest(best);
  }

  /** In what way a plan is the cheapest of those with as many profiles. */
  private String cheapest(CouplingPlan best) {
    boolean isCheapest = plans.stream()
        .filter(plan -> plan.profiles().size() == best.profiles().size())
        .allMatch(plan -> plan.total().compareTo(best.total()) >= 0);
    return isCheapest
        ? "the cheapest"
        : "the cheapest of those with the fewest open questions of air";
  }

  private long plansOf(int count) {
    return plans.stream().filter(plan -> plan.profiles().size() == count).count();
  }

  private String inWords(IfTold each) {
    String asked = each.pairs().stream()
        .map(pair -> "plug " + pair.plug() + " into socket " + String.join("/", pair.takes()))
        .collect(Collectors.joining(", "));
    return "Not offered, because nobody told what happens with " + asked + ": "
        + each.plan().inWords() + " at " + each.plan().total().format(2)
        + ". If the makers state that they do not go into each other, say so and ask again.";
  }

  /**
   * Lists the warnings that go with a change of couplings.
   *
   * @param units the units in which rules tell their limits
   * @return the cautions; the last defers to local codes
   */
  public List<Caution> cautions(UnitSystem units) {
    SafetyRules rules = SafetyRules.usFederal().toldIn(Objects.requireNonNull(units, "units"));
    Set<Caution> once = new LinkedHashSet<>();
    once.add(WHOLE);
    once.add(WRONG_PAIR);
    once.add(AT_REST);
    inventory.apart().forEach(bay -> bay.medium().refusal().ifPresent(once::add));
    once.addAll(SocketAnswer.alone().cautions());
    once.addAll(
        rules.cautions(Situation.describe().quickCouplers().maintenance().build()));
    Caution deference = rules.deference();
    once.remove(deference);
    once.add(deference);
    return List.copyOf(once);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ChangeOver that && inventory.equals(that.inventory);
  }

  @Override
  public int hashCode() {
    return inventory.hashCode();
  }

  /** {@return the answer in its first sentence} */
  @Override
  public String toString() {
    return inWords(UnitSystem.SI).get(0);
  }
}
