package org.airfit.select;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.source.Source;

/**
 * What is wrong with a price list.
 *
 * <p>A fault says what no part can have ({@link ListFault#isImpossible}), or what somebody must look at. The bounds on
 * figures of the air are:
 *
 * <pre>
 *   C ≤ C(Kv, xT = 1) 3/(2√2)      no b of ISO 6358 and no xT of IEC 60534 gives more
 *   C ≤ ψ (π/4) d² / (ρ0 √(R T0))  a discharge coefficient of 1 at most, ψ = 0.684731
 *   q ≤ C p1 √(T0/T1)              a full flow is the choked flow at most
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>C, b</td><td>sonic conductance and critical pressure ratio</td><td>m³/(s·Pa), -</td></tr>
 * <tr><td>Kv, xT</td><td>flow coefficient and pressure ratio factor of a valve</td><td>m³/h, -</td></tr>
 * <tr><td>d</td><td>narrowest bore</td><td>m</td></tr>
 * <tr><td>q, p1, T1</td><td>full flow, and the air in front of the part</td><td>m³/s, Pa, K</td></tr>
 * </tbody>
 * </table>
 *
 * <p>What lies above a bound by no more than printed figures are rounded (two figures by 5 % each, a bore by a
 * quarter of a millimetre) is to be checked, and never called impossible. <b>Cost:</b> grows with the articles, and
 * with the squares of the profiles in use and of the different ends: 10,000 articles with 60 profiles and some
 * hundred ends took 2 to 5 s.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class PriceListCheck {

  /** What the bounds rest on. */
  public static final Source SOURCE = Source.derived(
      "IEC 60534-2-1 with xT of 1 at most, ISO 6358-1 with b of 0 at least, and the choked flow of"
          + " a nozzle without loss");

  /**
   * How many articles were looked at for one kind of fault, and how many faults were found.
   *
   * @param kind the kind
   * @param lookedAt how many articles, or profiles, could be looked at for it
   * @param found how many faults of it were found
   */
  public record Looked(FaultKind kind, int lookedAt, int found) {
    /**
     * Refuses what is null.
     *
     * @param kind the kind
     * @param lookedAt how many articles, or profiles, could be looked at for it
     * @param found how many faults of it were found
     */
    public Looked {
      Objects.requireNonNull(kind, "kind");
    }
  }

  private static final Caution RATED = new Caution(
      "An assembly is rated as its lowest part",
      "Sell nothing for a pressure above the lowest rating of its parts, and no part for pressure"
          + " whose rating its maker has not told.",
      Source.handbook("29 CFR 1926.302(b)(5): not above the maker's safe operating pressure"));

  private static final Caution NOT_PROVEN = new Caution(
      "A list without a fault is not proven right",
      "Figures that agree can be wrong together. Hold the list against the makers' sheets before a"
          + " part goes where its failure hurts somebody.",
      Source.commonPractice("figures are taken from the makers' sheets"));

  private final PriceList list;
  private final List<ListFault> faults;
  private final List<Looked> looked;

  private PriceListCheck(PriceList list, List<ListFault> faults, List<Looked> looked) {
    this.list = list;
    this.faults = faults;
    this.looked = looked;
  }

  /**
   * Checks a price list.
   *
   * @param list the list
   * @return its faults
   */
  public static PriceListCheck of(PriceList list) {
    Objects.requireNonNull(list, "list");
    List<ListFault> found = new ArrayList<>();
    FlowFaults flows = new FlowFaults(found);
    list.articles().forEach(flows::check);
    ListOrder order = new ListOrder(found);
    order.check(list.articles());
    HalfFaults halves = new HalfFaults(list, found);
    halves.check();
    AdapterUse adapters = new AdapterUse(list);
    adapters.addTo(found);
    List<ListFault> faults =
        found.stream().distinct().sorted(ListFault.WORST_FIRST).toList();
    int all = list.articles().size();
    List<Looked> looked = Arrays.stream(FaultKind.values())
        .map(kind -> new Looked(
            kind,
            switch (kind) {
              case RATING_BELOW, RATING_BEYOND_USE -> halves.rated();
              case C_AGAINST_CV -> flows.pairs();
              case ABOVE_CHOKING -> flows.choked();
              case BORE_BEYOND_ENDS -> flows.bores();
              case PROFILES_TOO_ALIKE -> halves.profiles();
              case PRICE_OUT_OF_LINE -> order.compared();
              case PRICE_NOT_ABOVE_COST -> order.costed();
              case AIR_FIGURE_OPEN -> flows.capacities();
              case NO_OTHER_HALF -> halves.halves();
              case ORPHAN_ADAPTER -> adapters.adapters();
              case ARTICLE_TWICE, TWO_PRICES, RATING_NOT_TOLD, PRICE_NOT_TOLD, SAME_DATA -> all;
            },
            (int) faults.stream().filter(fault -> fault.kind() == kind).count()))
        .toList();
    return new PriceListCheck(list, faults, looked);
  }

  /** {@return the list} */
  public PriceList list() {
    return list;
  }

  /** {@return the faults, the worst first, and among them what is only to be checked} */
  public List<ListFault> faults() {
    return faults;
  }

  /** {@return of each kind of fault, how many were looked at and how many were found} */
  public List<Looked> looked() {
    return looked;
  }

  /**
   * Counts faults.
   *
   * @param effect what they do
   * @return how many do that
   */
  public int count(FaultEffect effect) {
    Objects.requireNonNull(effect, "effect");
    return (int) faults.stream().filter(fault -> fault.effect() == effect).count();
  }

  /** {@return the answer in one sentence} */
  public String inWords() {
    int articles = list.articles().size();
    String of = articles + (articles == 1 ? " article" : " articles");
    if (articles == 0) {
      return "There was no article to check.";
    }
    int toCheck = count(FaultEffect.TO_BE_CHECKED);
    int wrong = faults.size() - toCheck;
    if (wrong == 0) {
      return "No fault was found in " + of
          + (toCheck == 0
              ? "."
              : "; " + toCheck + (toCheck == 1 ? " thing is" : " things are") + " to be checked.");
    }
    List<String> counts = new ArrayList<>();
    for (FaultEffect effect : FaultEffect.values()) {
      if (effect != FaultEffect.TO_BE_CHECKED && count(effect) > 0) {
        counts.add(count(effect) + " " + effect);
      }
    }
    long impossible = faults.stream().filter(ListFault::isImpossible).count();
    return wrong + (wrong == 1 ? " fault" : " faults") + " in " + of + ": "
        + String.join(", ", counts)
        + (impossible == 0
            ? "; no figures that no part can have"
            : "; figures that no part can have in " + impossible + " of them")
        + (toCheck == 0
            ? "."
            : "; " + toCheck + (toCheck == 1 ? " more is" : " more are") + " to be checked.");
  }

  /**
   * Lists the warnings that go with a checked list.
   *
   * @return the cautions; the last defers to local codes
   */
  public List<Caution> cautions() {
    return List.of(RATED, NOT_PROVEN, SafetyRules.usFederal().deference());
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PriceListCheck that && list.equals(that.list);
  }

  @Override
  public int hashCode() {
    return list.hashCode();
  }

  /** {@return the answer in one sentence} */
  @Override
  public String toString() {
    return inWords();
  }
}
