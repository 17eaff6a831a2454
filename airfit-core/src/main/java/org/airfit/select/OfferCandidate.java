package org.airfit.select;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.internal.Interruption;
import org.airfit.internal.RootFinder;
import org.airfit.plant.YearlyCost;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.run.ElementLoss;
import org.jspecify.annotations.Nullable;

/**
 * A proposal with the figures by which it may become an {@link Offer}.
 *
 * @param proposal the proposal
 * @param bill its bill
 * @param pressure what its pressure loss costs in a year; null where no year is reckoned
 * @param leaks what its leaks cost in a year; null where no year is reckoned
 */
record OfferCandidate(
    Proposal proposal,
    BillOfMaterials bill,
    @Nullable YearlyCost pressure,
    @Nullable YearlyCost leaks) {

  /** By how many times less a further profile must cost in the first year: 5 %, a choice of this project. */
  private static final BigDecimal FOR_A_FURTHER_PROFILE = new BigDecimal("1.05");

  /**
   * What puts candidates in order for one aim: fewest questions left open by the parts, fewest pieces of unknown price,
   * least money.
   */
  record Key(int asked, long unpriced, BigDecimal money) implements Comparable<Key> {

    private static final Comparator<Key> ORDER = Comparator.comparingInt(Key::asked)
        .thenComparingLong(Key::unpriced)
        .thenComparing(Key::money);

    @Override
    public int compareTo(Key other) {
      return ORDER.compare(this, other);
    }
  }

  static OfferCandidate of(Proposal proposal, Catalogue catalogue, @Nullable PlantYear year) {
    Interruption.check(Front.SEARCH);
    BillOfMaterials bill = BillOfMaterials.of(proposal, catalogue);
    if (year == null) {
      return new OfferCandidate(proposal, bill, null, null);
    }
    int joints = joints(proposal.assembly());
    return new OfferCandidate(
        proposal, bill, ofPressure(year, lost(proposal.assembly())), leaks(year, joints));
  }

  /** Every pair of ends that meet, and every coupling. */
  private static int joints(Assembly a) {
    return a.between().stream()
            .mapToInt(each -> each.count() * each.joint().matings().size())
            .sum()
        + couplings(a);
  }

  private static int couplings(Assembly a) {
    return a.couplings().stream().mapToInt(pair -> pair.position().count()).sum();
  }

  private static YearlyCost leaks(PlantYear year, int joints) {
    MassFlow each = year.leakPerJoint().massFlow();
    return year.plant()
        .ofFlow(
            "leaks of " + joints + " joints",
            MassFlow.ofKilogramsPerSecond(joints * each.kilogramsPerSecond()));
  }

  /**
   * What the parts lose from the outlet on; of several tools on the way on which they lose most, by which the pressure
   * of the supply must be higher.
   *
   * <p>What a regulator takes down to what it is set to is wanted. By its droop it holds less at the same pressure in
   * front: that asks for a higher set point at most, and no compressor works more for it. In front of it must stand what
   * it holds and what it loses wide open, and that counts: a larger one needs less. This is a choice of this project.
   */
  private static PressureDrop lost(Assembly a) {
    return PressureDrop.ofPascals(
        a.toEachTool().stream().mapToDouble(OfferCandidate::lostOnTheWay).max().orElse(0.0));
  }

  private static double lostOnTheWay(Assembly way) {
    List<Placed> parts = way.slotParts();
    List<Optional<ElementLoss>> losses = way.losses();
    double flow = kilogramsPerSecond(way.requirement().airAtOutlet());
    double pascals = 0.0;
    for (int i = 0; i < parts.size(); i++) {
      Placed part = parts.get(i);
      double through = flow;
      pascals += losses.get(i).map(loss -> lost(part, loss, through, way)).orElse(0.0);
      flow -= part.position().others().map(OfferCandidate::kilogramsPerSecond).orElse(0.0);
    }
    return pascals;
  }

  private static double kilogramsPerSecond(Range<FreeAirFlow> air) {
    return air.most().massFlow().kilogramsPerSecond();
  }

  private static double lost(Placed placed, ElementLoss loss, double flow, Assembly way) {
    return placed.part() instanceof Part.Regulator regulator
        ? lostWideOpen(regulator, loss, flow, way.requirement().toOutlet().stillAir())
        : loss.drop().pascals();
  }

  /** By how much the pressure in front of a regulator must be higher at least than what it holds at a flow [kg/s]. */
  private static double lostWideOpen(
      Part.Regulator regulator, ElementLoss loss, double flow, AirState still) {
    FlowElement valve = regulator.capacity().element();
    double behind = loss.outlet().pascals();
    double kelvins = still.temperature().kelvins();
    double viscosity = still.viscosity().pascalSeconds();
    double inFront = loss.inlet().pascals();
    DoubleUnaryOperator lacking =
        pascals -> behind - valve.outlet(flow, pascals, kelvins, viscosity);
    return lacking.applyAsDouble(inFront) > 0.0
        ? inFront - behind
        : RootFinder.find(lacking, inFront, behind, SearchAir.NOISE_PASCALS) - behind;
  }

  /** What arrives at the tool that has least [Pa above atmosphere]; empty where one may starve. */
  OptionalDouble leastAtTool() {
    double least = proposal.assembly().toEachTool().stream()
        .mapToDouble(way -> way.result()
            .fold(delivered -> delivered.atToolGauge().pascals(), starved -> Double.NaN))
        .min()
        .orElse(Double.NaN);
    return Double.isNaN(least) ? OptionalDouble.empty() : OptionalDouble.of(least);
  }

  /** By what is paid now. */
  Key now() {
    return new Key(proposal.partQuestions(), unpriced(), amount(bill.total()));
  }

  private long unpriced() {
    return bill.unpriced().stream().mapToLong(BillLine::quantity).sum();
  }

  /** By what is paid in the first year, of more profiles than one as if each further one made it dearer. */
  Key inAYear() {
    return new Key(proposal.partQuestions(), unpriced(), weighed(moneyInAYear(), profiles()));
  }

  /** What is paid in the first year. */
  BigDecimal moneyInAYear() {
    return amount(bill.total()).add(running());
  }

  /** How many profiles the couplings have. */
  int profiles() {
    return (int) proposal.assembly().couplings().stream()
        .map(pair -> pair.plug().profile())
        .distinct()
        .count();
  }

  private static BigDecimal weighed(BigDecimal money, int profiles) {
    return money.multiply(FOR_A_FURTHER_PROFILE.pow(Math.max(0, profiles - 1)));
  }

  /** What pressure and leaks cost in a year. */
  BigDecimal running() {
    BigDecimal sum = pressure == null ? BigDecimal.ZERO : pressure.money().amount();
    return leaks == null ? sum : sum.add(leaks.money().amount());
  }

  /**
   * What no proposal that the search lists behind this one can go below now: its parts leave as many questions, as many
   * are of unknown price, and the others cost as much, and accessories only add to it.
   */
  Key leastNowBehind() {
    long unknown = proposal.parts().stream()
        .map(Part::facts)
        .filter(facts -> !facts.isExisting() && facts.price().isEmpty())
        .count();
    return new Key(proposal.partQuestions(), unknown, amount(proposal.price()));
  }

  /**
   * The same in a year of parts that cost so much, where joints leak: every layout has as many joints as this at least,
   * and as many profiles as the job asks for.
   */
  Key leastInAYearBehind(BigDecimal parts, PlantYear year) {
    Key now = leastNowBehind();
    return new Key(
        now.asked(), now.unpriced(), weighed(parts.add(leastLeaks(year)), leastProfiles()));
  }

  /** What the joints cost in a year that every layout has as many of at least. */
  private BigDecimal leastLeaks(PlantYear year) {
    Assembly a = proposal.assembly();
    return leaks(year, a.between().stream().mapToInt(Assembly.Between::count).sum() + couplings(a))
        .money()
        .amount();
  }

  /** As many profiles as the job asks for. */
  private int leastProfiles() {
    Assembly a = proposal.assembly();
    Set<String> profiles = new HashSet<>();
    for (Assembly.Pair pair : a.couplings()) {
      pair.position().profile(a.requirement()).ifPresent(profiles::add);
    }
    return profiles.size();
  }

  /**
   * What the pressure that is lost may cost in a year, so that one whose parts cost so much now comes before this in the
   * first year.
   */
  BigDecimal leftForPressure(BigDecimal parts, PlantYear year) {
    return inAYear()
        .money()
        .divide(weighed(BigDecimal.ONE, leastProfiles()), MathContext.DECIMAL64)
        .subtract(parts)
        .subtract(leastLeaks(year));
  }

  /** What a pressure that is lost costs in a year. */
  static YearlyCost ofPressure(PlantYear year, PressureDrop lost) {
    return year.plant()
        .ofDrop("pressure lost from the outlet to the tool", year.flow().massFlow(), lost);
  }

  private static BigDecimal amount(Optional<Money> money) {
    return money.map(Money::amount).orElse(BigDecimal.ZERO);
  }
}
