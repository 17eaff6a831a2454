package org.airfit.select;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.quantity.Money;

/**
 * Which profile each bay keeps, what is changed and bought for it, and what that costs.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class CouplingPlan {

  /**
   * The profile of one bay.
   *
   * @param bay the name of the bay
   * @param profile the id of the profile that it keeps
   * @param sockets how many sockets are changed
   * @param plugs how many plugs are changed
   */
  public record Kept(String bay, String profile, int sockets, int plugs) {
    /**
     * Refuses what is null.
     *
     * @param bay the name of the bay
     * @param profile the id of the profile that it keeps
     * @param sockets how many sockets are changed
     * @param plugs how many plugs are changed
     */
    public Kept {
      Objects.requireNonNull(bay, "bay");
      Objects.requireNonNull(profile, "profile");
    }

    /** {@return the bay in one line, such as "paint keeps wren: 2 sockets and 4 plugs to change"} */
    @Override
    public String toString() {
      return bay + " keeps " + profile + ": " + sockets + " sockets and " + plugs
          + " plugs to change";
    }
  }

  /**
   * Pieces of one part.
   *
   * @param part the id of the part
   * @param name what people call it
   * @param fromShelf how many are taken from the shelf
   * @param bought how many are bought
   * @param each what one costs; empty where none is bought
   * @param total what those that are bought cost
   */
  public record Purchase(
      String part, String name, int fromShelf, int bought, Optional<Money> each, Money total) {
    /**
     * Refuses what is null.
     *
     * @param part the id of the part
     * @param name what people call it
     * @param fromShelf how many are taken from the shelf
     * @param bought how many are bought
     * @param each what one costs; empty where none is bought
     * @param total what those that are bought cost
     */
    public Purchase {
      Objects.requireNonNull(part, "part");
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(each, "each");
      Objects.requireNonNull(total, "total");
    }

    /** {@return the pieces in one line, such as "P-W, plug wren: 2 from the shelf, 2 bought, 6.00 USD"} */
    @Override
    public String toString() {
      return part + ", " + name + ": " + fromShelf + " from the shelf, " + bought + " bought, "
          + total.format(2);
    }
  }

  private final List<String> profiles;
  private final List<Kept> kept;
  private final List<Purchase> purchases;
  private final Optional<Money> labour;
  private final Money total;
  private final List<BayAir> air;

  CouplingPlan(
      List<String> profiles,
      List<Kept> kept,
      List<Purchase> purchases,
      Optional<Money> labour,
      Money total,
      List<BayAir> air) {
    this.profiles = List.copyOf(profiles);
    this.kept = List.copyOf(kept);
    this.purchases = List.copyOf(purchases);
    this.labour = labour;
    this.total = total;
    this.air = List.copyOf(air);
  }

  /** {@return the ids of the profiles that are kept} */
  public List<String> profiles() {
    return profiles;
  }

  /** {@return the profile of each bay, in the order of the inventory} */
  public List<Kept> kept() {
    return kept;
  }

  /** {@return what is taken from the shelf or bought} */
  public List<Purchase> purchases() {
    return purchases;
  }

  /** {@return what the work costs; empty where that is not counted} */
  public Optional<Money> labour() {
    return labour;
  }

  /** {@return what is bought and the work, together} */
  public Money total() {
    return total;
  }

  /** {@return the judgement of the air, of each tool that tells its need} */
  public List<BayAir> air() {
    return air;
  }

  /** {@return how many bays have a tool of which it depends whether it gets its air} */
  public int openBays() {
    return (int) kept.stream()
        .filter(each -> air.stream()
            .anyMatch(tool -> tool.bay().equals(each.bay()) && tool.outcome() == RuleOutcome.OPEN))
        .count();
  }

  /** {@return how many sockets are changed} */
  public int sockets() {
    return kept.stream().mapToInt(Kept::sockets).sum();
  }

  /** {@return how many plugs are changed} */
  public int plugs() {
    return kept.stream().mapToInt(Kept::plugs).sum();
  }

  /** {@return which profile is kept where, such as "heron for all bays" or "curlew for paint and heron for forge"} */
  public String inWords() {
    return profiles.size() == 1
        ? profiles.get(0) + " for all bays"
        : profiles.stream()
            .map(profile -> profile + " for "
                + kept.stream()
                    .filter(each -> each.profile().equals(profile))
                    .map(Kept::bay)
                    .collect(Collectors.joining(", ")))
            .collect(Collectors.joining(" and "));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof CouplingPlan that
        && kept.equals(that.kept)
        && purchases.equals(that.purchases)
        && labour.equals(that.labour)
        && total.equals(that.total)
        && air.equals(that.air);
  }

  @Override
  public int hashCode() {
    return Objects.hash(kept, purchases, labour, total, air);
  }

  /** {@return what is kept and what that costs} */
  @Override
  public String toString() {
    return inWords() + ": " + total.format(2);
  }
}
