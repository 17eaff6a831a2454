package org.airfit.select;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.airfit.internal.RootFinder;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/**
 * Up to three ways to serve a job: the one that costs least now, the one that costs least in a year, and the one on
 * which the shop earns most. One proposal that is best at two of them is one offer.
 *
 * <p>All offers are of proposals that break no rule and leave as few questions about their parts open as can be, each
 * set of parts with the adapters that stand first at the lowest price. What is not priced comes after what is.
 *
 * <ul>
 *   <li><b>Least money now</b> is the least sum of a whole {@link BillOfMaterials}.
 *   <li><b>Least money in a year</b> adds what the {@link PlantYear} makes of the pressure lost between outlet and tool,
 *       and of a leak at every pair of ends and every coupling. Of several tools the way on which most is lost counts. A
 *       regulator counts with what it loses wide open, by which the pressure in front of it must be higher than what it
 *       holds; what it takes down to its setting is wanted, and its droop asks for a higher setting at most. A shop keeps
 *       one profile apart more easily than several: each further profile of the couplings must make the first year 5 %
 *       cheaper, a choice of this project. Where that sets a cheaper one aside {@link #remarks()} tell what it would save.
 *   <li><b>Most margin</b> is the greatest sum of prices less costs to the shop, among the proposals that were looked at
 *       for the other two: where none of them has all costs told, it is not made.
 * </ul>
 *
 * <p>The first two are the least of all proposals where {@link #isProven()}: proposals are looked at in the order of the
 * prices of their parts, until none that follows can cost less, because accessories, pressure and leaks only add to it.
 * What follows can cost less in a year only where it loses so much less pressure, so that without a regulator in the line
 * the search goes on among proposals that leave more at the tool. With very many proposals it ends at {@link #MOST} in
 * one search, and {@link #remarks()} say so.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class Offers {

  /** How many proposals are looked at in one search, at most; a choice of this project. */
  public static final int MOST = 320;

  private static final int STEP = 4;

  /** How often the search goes on among those that lose less, at most; a choice of this project. */
  private static final int ROUNDS = 24;

  /** By so much more must be left at the tool each time [Pa]; a choice of this project. */
  private static final double LEAST_STEP_PASCALS = 10.0;

  /** A remark in both systems of units. */
  private record Remark(String si, String us) {

    static Remark of(String remark) {
      return new Remark(remark, remark);
    }

    static Remark of(Function<UnitSystem, String> remark) {
      return new Remark(remark.apply(UnitSystem.SI), remark.apply(UnitSystem.US));
    }

    String in(UnitSystem units) {
      return units.either(si, us);
    }
  }

  private final List<Offer> offers;
  private final boolean isProven;
  private final List<Remark> remarks;
  private final @Nullable PlantYear year;

  private Offers(
      List<Offer> offers, boolean isProven, List<Remark> remarks, @Nullable PlantYear year) {
    this.offers = List.copyOf(offers);
    this.isProven = isProven;
    this.remarks = List.copyOf(remarks);
    this.year = year;
  }

  /**
   * Finds the offers of a job without figures of a plant: none is made for the least money in a year.
   *
   * @param job what the job asks; its {@link Objective} counts for nothing here
   * @param catalogue the parts and accessories to choose from
   * @return the offers
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public static Offers of(Requirement job, Catalogue catalogue) {
    return new Search(job, catalogue, null).offers();
  }

  /**
   * Finds the offers of a job.
   *
   * @param job what the job asks; its {@link Objective} counts for nothing here
   * @param catalogue the parts and accessories to choose from
   * @param year the figures of the customer's plant
   * @return the offers
   * @throws IllegalArgumentException if what the air costs in a year, at the flow of the job, is 10³⁰ or more
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public static Offers of(Requirement job, Catalogue catalogue, PlantYear year) {
    return new Search(job, catalogue, Objects.requireNonNull(year, "year")).offers();
  }

  /** {@return the offers, in the order of {@link Offer.Aim}; empty where no proposal fits or nothing has a price} */
  public List<Offer> offers() {
    return offers;
  }

  /**
   * Finds the offer that is best at something.
   *
   * @param aim what
   * @return the offer, empty where it is not made; {@link #remarks()} say why
   */
  public Optional<Offer> offer(Offer.Aim aim) {
    Objects.requireNonNull(aim, "aim");
    return offers.stream().filter(offer -> offer.aims().contains(aim)).findFirst();
  }

  /**
   * {@return whether no proposal at all costs less than those offered, now and in a year, there with what a further
   * profile must save}
   */
  public boolean isProven() {
    return isProven;
  }

  /** {@return what was taken for granted, which offers are not made, and what to tell so that they are} */
  public List<String> remarks() {
    return remarks(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return what was taken for granted, which offers are not made, and what to tell so that they are
   */
  public List<String> remarks(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    List<String> all = new ArrayList<>();
    if (year != null) {
      all.add(year.assumptions(units));
    }
    remarks.forEach(remark -> all.add(remark.in(units)));
    return List.copyOf(all);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Offers that
        && offers.equals(that.offers)
        && isProven == that.isProven
        && remarks.equals(that.remarks)
        && Objects.equals(year, that.year);
  }

  @Override
  public int hashCode() {
    return Objects.hash(offers, isProven, remarks, year);
  }

  /** {@return the offers in one line} */
  @Override
  public String toString() {
    return offers.isEmpty()
        ? String.join(" ", remarks())
        : String.join(" ", offers.stream().map(Offer::toString).toList());
  }

  /** Finds the offers of one job. */
  private static final class Search {

    private static final Comparator<OfferCandidate> BY_NOW =
        Comparator.comparing(OfferCandidate::now);
    private static final Comparator<OfferCandidate> BY_YEAR =
        Comparator.comparing(OfferCandidate::inAYear);

    private final Requirement told;
    private final Requirement job;
    private final Catalogue catalogue;
    private final @Nullable PlantYear year;
    private @Nullable PartSearch first;
    private final List<Remark> remarks = new ArrayList<>();
    private final Map<Offer.Aim, OfferCandidate> best = new LinkedHashMap<>();
    private final Map<Proposal, OfferCandidate> looked = new LinkedHashMap<>();
    private boolean isProven = true;

    Search(Requirement told, Catalogue catalogue, @Nullable PlantYear year) {
      this.told = Objects.requireNonNull(told, "job");
      this.catalogue = Objects.requireNonNull(catalogue, "catalogue");
      this.job = told.toBuilder().objective(Objective.LOWEST_PRICE).build();
      this.year = year == null || refused(year) ? null : year;
      if (year == null) {
        remarks.add(Remark.of(
            "No offer for the least money in a year: tell the hours in the year, the price of electricity and"
                + " the flow of the plant."));
      }
    }

    /** Whether the figures cannot be those of the plant that feeds this job. */
    private boolean refused(PlantYear figures) {
      AbsolutePressure atmosphere = job.toOutlet().atmosphere();
      AbsolutePressure discharge = figures.plant().compression().discharge();
      AbsolutePressure supply = job.pressures().lowest().absolute(atmosphere);
      AbsolutePressure intake = figures.plant().compression().intake().pressure();
      if (discharge.compareTo(supply) < 0
          || intake.compareTo(job.least().absolute(atmosphere)) > 0) {
        remarks.add(
            Remark.of(units -> "No offer for the least money in a year: the plant compresses from "
                + units.say(intake) + " to " + units.say(discharge)
                + ", which does not feed a supply at " + units.say(supply)
                + "; tell the pressures of the plant again."));
        return true;
      }
      String currency = figures.plant().perKilowattHour().currency();
      Optional<Money> price = catalogue.parts().stream()
          .flatMap(part -> part.facts().price().stream())
          .findFirst();
      if (price.filter(each -> !each.currency().equals(currency)).isPresent()) {
        remarks.add(
            Remark.of(
                "No offer for the least money in a year: electricity is priced in " + currency
                    + ", the catalogue in " + price.get().currency()
                    + "; airfit knows no rates, tell the price of electricity in that of the catalogue."));
        return true;
      }
      return false;
    }

    Offers offers() {
      Optional<String> refusal = job.medium().refusalInWords();
      if (refusal.isPresent()) {
        return new Offers(List.of(), false, List.of(Remark.of(refusal.get())), null);
      }
      if (look().isEmpty()) {
        return new Offers(
            List.of(),
            true,
            List.of(Remark.of("No offer: nothing in the catalogue fits without breaking a rule.")),
            null);
      }
      remarkUnproven();
      choose();
      return new Offers(
          made(), isProven, remarks, best.containsKey(Offer.Aim.LEAST_IN_A_YEAR) ? year : null);
    }

    /**
     * As many proposals, cheapest parts first, as it takes to be sure. What is not among them costs as much as the last
     * at least, so that to cost less in a year it must lose so much less: the search goes on among those alone.
     */
    private List<OfferCandidate> look() {
      Optional<GaugePressure> needed = Optional.empty();
      BigDecimal price = BigDecimal.ZERO;
      int rounds = 0;
      for (int most = Selection.LISTED; most <= MOST; ) {
        List<Proposal> listed = look(needed, most);
        if (listed.size() < most) {
          return looked();
        }
        OfferCandidate last = OfferCandidate.of(listed.get(most - 1), catalogue, year);
        price = price.max(last.leastNowBehind().money());
        if (needed.isEmpty() && !isSureOfNow(last)) {
          if (most * STEP <= MOST) {
            most *= STEP;
            continue;
          }
          isProven = false;
        }
        if (year == null || isSureInAYear(last, price, year)) {
          return looked();
        }
        Optional<GaugePressure> farther = leastAtTool(price, year);
        if (!isMore(farther, needed)) {
          climb();
          farther = leastAtTool(price, year);
        }
        if (rounds < ROUNDS && isMore(farther, needed)) {
          needed = farther;
          rounds++;
        } else {
          most *= STEP;
        }
      }
      isProven = false;
      return looked();
    }

    private void remarkUnproven() {
      if (!isProven) {
        remarks.add(Remark.of("Looked at the " + looked.size() + " proposals whose parts cost least"
            + (looked.size() > MOST ? " or lose less pressure" : "")
            + "; one behind them may cost less with what goes with it."));
      }
    }

    private List<OfferCandidate> looked() {
      return List.copyOf(looked.values());
    }

    /** Looks at the cheapest that leave so much at the tools at least; none where a kind of part is missing. */
    private List<Proposal> look(Optional<GaugePressure> needed, int most) {
      PartSearch judged = first == null ? new PartSearch(job, catalogue, most) : first;
      first = judged;
      PartSearch search = judged.needing(needed.map(job::needing).orElse(job), most);
      List<Proposal> listed = search.missing().isEmpty() ? search.fitting() : List.of();
      listed.forEach(each -> looked.computeIfAbsent(
          as(job, each), proposal -> OfferCandidate.of(proposal, catalogue, year)));
      return listed;
    }

    /**
     * Looks at the cheapest that leave more at the tools than the best in a year, and at those that leave more than what
     * is best then, as long as that finds a better one. It proves nothing, but the better the best, the more is proven.
     */
    private void climb() {
      OfferCandidate best;
      do {
        best = first(BY_YEAR);
        OfferCandidate from = best;
        from.leastAtTool()
            .ifPresent(least -> look(
                Optional.of(GaugePressure.ofPascals(least + LEAST_STEP_PASCALS)),
                Selection.LISTED));
      } while (!first(BY_YEAR).equals(best));
    }

    private static boolean isMore(Optional<GaugePressure> farther, Optional<GaugePressure> needed) {
      double before = needed.map(GaugePressure::pascals).orElse(0.0);
      return farther
          .filter(each -> each.pascals() - before >= LEAST_STEP_PASCALS)
          .isPresent();
    }

    private boolean isSureOfNow(OfferCandidate last) {
      return first(BY_NOW).now().compareTo(last.leastNowBehind()) <= 0;
    }

    private boolean isSureInAYear(OfferCandidate last, BigDecimal price, PlantYear figures) {
      return first(BY_YEAR).inAYear().compareTo(last.leastInAYearBehind(price, figures)) <= 0;
    }

    /**
     * What a proposal whose parts cost so much must leave at the tool at least to cost less in a year than those looked
     * at; empty where that does not tell: a regulator takes pressure down that is not lost.
     */
    private Optional<GaugePressure> leastAtTool(BigDecimal price, PlantYear figures) {
      OfferCandidate best = first(BY_YEAR);
      double outlet =
          job.atOutlet(Known.AT_WORST).map(AbsolutePressure::pascals).orElse(0.0)
              - job.toOutlet().atmosphere().pascals();
      double mayBeLost = outlet - job.least().pascals();
      if (best.proposal().assembly().isAirOpen()
          || job.layout().allSlots().stream().anyMatch(Slot.Regulated.class::isInstance)
          || !(mayBeLost > 0.0)) {
        return Optional.empty();
      }
      BigDecimal left = best.leftForPressure(price, figures);
      DoubleUnaryOperator tooDear =
          lost -> OfferCandidate.ofPressure(figures, PressureDrop.ofPascals(lost))
              .money()
              .amount()
              .subtract(left)
              .doubleValue();
      if (!(tooDear.applyAsDouble(mayBeLost) > 0.0)) {
        return Optional.empty();
      }
      double lost = tooDear.applyAsDouble(0.0) > 0.0
          ? 0.0
          : RootFinder.find(tooDear, 0.0, mayBeLost, SearchAir.NOISE_PASCALS);
      // a search may end short of the place by twice its tolerance
      GaugePressure least = GaugePressure.ofPascals(outlet - lost - 3.0 * SearchAir.NOISE_PASCALS);
      return Optional.of(least).filter(each -> each.compareTo(job.least()) > 0);
    }

    private OfferCandidate first(Comparator<OfferCandidate> order) {
      return looked.values().stream().min(order).orElseThrow();
    }

    private void choose() {
      List<OfferCandidate> all = looked();
      OfferCandidate now = first(BY_NOW);
      boolean isPriced = now.bill().total().isPresent();
      if (isPriced) {
        best.put(Offer.Aim.LEAST_NOW, now);
        if (all.stream().anyMatch(each -> mayCostLess(each, now))) {
          remarks.add(Remark.of(
              "A proposal with a piece of unknown price comes behind one of which all prices are"
                  + " known, though it may cost less: ask for that price."));
        }
      } else {
        remarks.add(Remark.of(
            "No offer for the least money now: no price is known; tell the prices of the parts."));
      }
      if (year != null && isPriced) {
        OfferCandidate inAYear = first(BY_YEAR);
        best.put(Offer.Aim.LEAST_IN_A_YEAR, inAYear);
        all.stream()
            .filter(each -> each.now().asked() == inAYear.now().asked()
                && each.now().unpriced() == inAYear.now().unpriced())
            .min(Comparator.comparing(OfferCandidate::moneyInAYear))
            .filter(each -> each.moneyInAYear().compareTo(inAYear.moneyInAYear()) < 0)
            .ifPresent(each -> remarks.add(ofMoreProfiles(each, inAYear)));
      }
      Optional<OfferCandidate> earning = all.stream()
          .filter(each ->
              each.now().asked() == now.now().asked() && each.bill().margin().isPresent())
          .max(Comparator.comparing((OfferCandidate each) -> earned(each))
              .thenComparing(BY_NOW.reversed()));
      earning.ifPresentOrElse(
          each -> {
            best.put(Offer.Aim.MOST_MARGIN, each);
            remarks.add(Remark.of("Most margin was sought among the " + all.size()
                + " proposals that were looked at for the other offers."));
          },
          () -> remarks.add(Remark.of(
              "No offer for the most margin: of no proposal is known what every line costs the shop; tell"
                  + " the cost of the articles.")));
    }

    /** That one of more profiles would cost less in the first year, and why it is not offered. */
    private static Remark ofMoreProfiles(OfferCandidate cheaper, OfferCandidate offered) {
      BigDecimal saved = offered.moneyInAYear().subtract(cheaper.moneyInAYear());
      String currency = offered.bill().total().orElseThrow().currency();
      return Remark.of("Couplings of " + cheaper.profiles() + " profiles in place of "
          + offered.profiles() + " would save " + new Money(saved, currency).format(2)
          + " in the first year; they are not offered, as each further profile must save 5 %"
          + " of what the year costs (a choice of airfit).");
    }

    /** Whether one comes behind another only because a price is not known. */
    private static boolean mayCostLess(OfferCandidate each, OfferCandidate now) {
      OfferCandidate.Key one = each.now();
      return one.asked() == now.now().asked()
          && one.unpriced() > now.now().unpriced()
          && one.money().compareTo(now.now().money()) < 0;
    }

    private static BigDecimal earned(OfferCandidate each) {
      return each.bill().margin().map(Money::amount).orElse(BigDecimal.ZERO);
    }

    /** Each proposal once, with all it is best at. */
    private List<Offer> made() {
      Map<OfferCandidate, Set<Offer.Aim>> aims = new LinkedHashMap<>();
      best.forEach(
          (aim, each) -> aims.computeIfAbsent(each, any -> new TreeSet<>()).add(aim));
      List<Offer> offers = new ArrayList<>();
      OfferCandidate first = aims.keySet().stream().findFirst().orElse(null);
      aims.forEach((each, of) -> offers.add(new Offer(
          Collections.unmodifiableSet(of),
          asTold(each.proposal()),
          each.bill(),
          each.pressure(),
          each.leaks(),
          OfferInWords.of(of, each, Objects.requireNonNull(first)))));
      return offers;
    }

    /** The same parts for the job as it was told, with its own objective. */
    private Proposal asTold(Proposal found) {
      return as(told, found);
    }

    private static Proposal as(Requirement job, Proposal found) {
      Assembly a = found.assembly();
      return a.requirement().equals(job)
          ? found
          : new Proposal(Assembly.of(
              job, a.placed(), a.joints().stream().map(Joint::adapters).toList()));
    }
  }
}
