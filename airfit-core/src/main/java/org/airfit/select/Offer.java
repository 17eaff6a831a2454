package org.airfit.select;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.plant.YearlyCost;
import org.airfit.quantity.Money;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;
import org.jspecify.annotations.Nullable;

/**
 * One way to serve a job: a proposal with its bill, what it is best at, and the figures by which it is.
 *
 * <p>Only {@link Offers} makes one. This class is immutable, thread-safe and value-based.
 */
public final class Offer implements Worked {

  /** What an offer is best at. */
  public enum Aim {
    /** Its bill sums to the least. */
    LEAST_NOW("least money now"),
    /** Its bill, the pressure that its parts lose and the leaks of its joints cost least in a year. */
    LEAST_IN_A_YEAR("least money in a year"),
    /** The shop earns most on its bill. */
    MOST_MARGIN("most margin");

    private final String label;

    Aim(String label) {
      this.label = label;
    }

    /** {@return the aim in words, such as "least money now"} */
    @Override
    public String toString() {
      return label;
    }
  }

  private static final Source SUM =
      Source.derived("what is paid once, and what the air that it takes costs in a year");
  private static final Source EARNED = Source.derived("prices less what the shop pays");

  private static final Symbol NOW = Symbol.of("Kb", ValueKind.MONEY);
  private static final Symbol PRESSURE = Symbol.of("Kp", ValueKind.MONEY);
  private static final Symbol LEAKS = Symbol.of("Kl", ValueKind.MONEY);
  private static final Symbol YEAR = Symbol.of("Ka", ValueKind.MONEY);
  private static final Symbol COST = Symbol.of("C", ValueKind.MONEY);
  private static final Symbol MARGIN = Symbol.of("M", ValueKind.MONEY);

  private static final Formula IN_A_YEAR = Formula.of(
      "Money in the first year", "⟨Ka⟩ = ⟨Kb⟩ + ⟨Kp⟩ + ⟨Kl⟩", SUM, YEAR, NOW, PRESSURE, LEAKS);

  private static final Formula EARNINGS =
      Formula.of("Margin", "⟨M⟩ = ⟨Kb⟩ − ⟨C⟩", EARNED, MARGIN, NOW, COST);

  private final Set<Aim> aims;
  private final Proposal proposal;
  private final BillOfMaterials bill;
  private final @Nullable YearlyCost pressure;
  private final @Nullable YearlyCost leaks;
  private final String why;

  Offer(
      Set<Aim> aims,
      Proposal proposal,
      BillOfMaterials bill,
      @Nullable YearlyCost pressure,
      @Nullable YearlyCost leaks,
      String why) {
    this.aims = aims;
    this.proposal = proposal;
    this.bill = bill;
    this.pressure = pressure;
    this.leaks = leaks;
    this.why = why;
  }

  /** {@return what it is best at, never empty; two or three aims where one proposal is best at them all} */
  public Set<Aim> aims() {
    return aims;
  }

  /** {@return the proposal} */
  public Proposal proposal() {
    return proposal;
  }

  /** {@return its bill of materials} */
  public BillOfMaterials bill() {
    return bill;
  }

  /** {@return what it costs now, as far as prices are known; empty if none is} */
  public Optional<Money> now() {
    return bill.total();
  }

  /** {@return what the pressure lost between outlet and tool costs in a year; empty without figures of a plant} */
  public Optional<YearlyCost> pressure() {
    return Optional.ofNullable(pressure);
  }

  /** {@return what the leaks of its joints cost in a year; empty without figures of a plant} */
  public Optional<YearlyCost> leaks() {
    return Optional.ofNullable(leaks);
  }

  /** {@return what it costs in the first year, bought and run; empty without figures of a plant} */
  public Optional<Money> inAYear() {
    return pressure == null || leaks == null
        ? Optional.empty()
        : Optional.of(paidNow().plus(pressure.money()).plus(leaks.money()));
  }

  /** Nothing where nothing is bought. */
  private Money paidNow() {
    String currency = Objects.requireNonNull(pressure).money().currency();
    return now().orElse(new Money(BigDecimal.ZERO, currency));
  }

  /** {@return what the shop earns on it; empty unless price and cost of every line are known} */
  public Optional<Money> margin() {
    return bill.margin();
  }

  /** {@return what it is best at and how it differs from the first offer, in plain words with its figures} */
  public String why() {
    return why;
  }

  /**
   * Tells how its figures were found.
   *
   * @param units the units to show numbers in
   */
  @Override
  public Working working(UnitSystem units) {
    Working.Builder out = Working.titled("Offer: " + aimsInWords(), units);
    Optional<Money> now = now();
    boolean years = aims.contains(Aim.LEAST_IN_A_YEAR) && pressure != null && leaks != null;
    boolean earns = aims.contains(Aim.MOST_MARGIN);
    if (now.isEmpty() && !years) {
      return out.answer("No price is known.").build();
    }
    if (now.isPresent()) {
      out.include(bill.working(units), NOW);
    } else {
      out.given(NOW, 0.0, 1);
    }
    if (earns) {
      double margin = margin().orElseThrow().amount().doubleValue();
      double cost = now.orElseThrow().amount().doubleValue() - margin;
      out.given(COST, cost, 6).step(EARNINGS, margin, 6);
    }
    if (years) {
      out.include(Objects.requireNonNull(pressure).working(units), PRESSURE)
          .include(Objects.requireNonNull(leaks).working(units), LEAKS)
          .step(IN_A_YEAR, inAYear().orElseThrow().amount().doubleValue(), 6);
    }
    if (aims.contains(Aim.LEAST_NOW)) {
      out.answer(NOW);
    }
    if (years) {
      out.answer(YEAR);
    }
    if (earns) {
      out.answer(MARGIN);
    }
    return out.build();
  }

  private String aimsInWords() {
    return String.join(", ", aims.stream().map(Aim::toString).toList());
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Offer that
        && aims.equals(that.aims)
        && proposal.equals(that.proposal)
        && bill.equals(that.bill)
        && Objects.equals(pressure, that.pressure)
        && Objects.equals(leaks, that.leaks)
        && why.equals(that.why);
  }

  @Override
  public int hashCode() {
    return Objects.hash(aims, proposal, bill, pressure, leaks, why);
  }

  /** {@return what it is best at, and why} */
  @Override
  public String toString() {
    return aimsInWords() + ": " + why;
  }
}
