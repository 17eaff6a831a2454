package org.airfit.select;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.airfit.plant.YearlyCost;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
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
    BillOfMaterials bill = BillOfMaterials.of(proposal, catalogue);
    if (year == null) {
      return new OfferCandidate(proposal, bill, null, null);
    }
    int joints = joints(proposal.assembly());
    return new OfferCandidate(
        proposal,
        bill,
        year.plant()
            .ofDrop(
                "pressure lost from the outlet to the tool",
                year.flow().massFlow(),
                lost(proposal.assembly())),
        leaks(year, joints));
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

  /** What the parts lose from the outlet on, without what a regulator takes off. */
  private static PressureDrop lost(Assembly a) {
    List<Placed> parts = a.slotParts();
    List<Optional<ElementLoss>> losses = a.losses();
    double pascals = 0.0;
    for (int i = 0; i < parts.size(); i++) {
      if (!parts.get(i).position().isRegulator()) {
        pascals += losses.get(i).map(loss -> loss.drop().pascals()).orElse(0.0);
      }
    }
    return PressureDrop.ofPascals(pascals);
  }

  /** By what is paid now. */
  Key now() {
    return new Key(proposal.partQuestions(), unpriced(), amount(bill.total()));
  }

  private long unpriced() {
    return bill.unpriced().stream().mapToLong(BillLine::quantity).sum();
  }

  /** By what is paid in the first year. */
  Key inAYear() {
    return new Key(proposal.partQuestions(), unpriced(), amount(bill.total()).add(running()));
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

  /** The same in a year, where joints leak: every layout has as many joints as this at least. */
  Key leastInAYearBehind(@Nullable PlantYear year) {
    Key now = leastNowBehind();
    if (year == null) {
      return now;
    }
    Assembly a = proposal.assembly();
    YearlyCost least =
        leaks(year, a.between().stream().mapToInt(Assembly.Between::count).sum() + couplings(a));
    return new Key(now.asked(), now.unpriced(), now.money().add(least.money().amount()));
  }

  private static BigDecimal amount(Optional<Money> money) {
    return money.map(Money::amount).orElse(BigDecimal.ZERO);
  }
}
