package org.airfit.select;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.airfit.air.AirState;
import org.airfit.plug.ToldPair;
import org.airfit.quantity.Money;

/**
 * The couplings that somebody has in use and on the shelf, what others cost, and what is known of wrong pairs.
 *
 * @param bays where couplings are in use; those of another medium are kept apart
 * @param parts sockets, plugs and adapters on offer, with prices
 * @param shelf what is on the shelf
 * @param labour what a change costs in work; empty where that is not counted
 * @param pairs what was told of plugs in sockets of another profile
 * @param outside the air around: its pressure is what gauges read against
 * @param restock by what the spare stock is reckoned; empty for one piece of each kind
 */
public record CouplingInventory(
    List<Bay> bays,
    Catalogue parts,
    List<OnShelf> shelf,
    Optional<Labour> labour,
    List<ToldPair> pairs,
    AirState outside,
    Optional<Restock> restock) {

  /** So many bays of compressed air can be put in order exactly. */
  public static final int MOST_BAYS = 10;

  /** So many profiles of compressed air are weighed against each other. */
  public static final int MOST_PROFILES = 10;

  /** So many bays of other media may be told. */
  private static final int MOST_APART = 10;

  /** So many pieces may wear out during a delivery: more is no stock of spare pieces. */
  private static final int MOST_WORN = 500;

  /**
   * Pieces of one part on the shelf.
   *
   * @param part the id of a socket or plug of the catalogue
   * @param count how many there are, from 1 to 1000
   */
  public record OnShelf(String part, int count) {
    /**
     * Checks the count.
     *
     * @param part the id of a socket or plug of the catalogue
     * @param count how many there are, from 1 to 1000
     * @throws IllegalArgumentException if the count is out of range
     */
    public OnShelf {
      Objects.requireNonNull(part, "part");
      if (count < 1 || count > Bay.MOST_PIECES) {
        throw new IllegalArgumentException("count of part " + part + " on the shelf must be in [1, "
            + Bay.MOST_PIECES + "], was " + count + "; leave out what is not there");
      }
    }

    /** {@return the pieces in one line, such as "4 of P-W"} */
    @Override
    public String toString() {
      return count + " of " + part;
    }
  }

  /**
   * What the change of one piece costs in work.
   *
   * @param perSocket of one socket
   * @param perPlug of one plug
   */
  public record Labour(Money perSocket, Money perPlug) {
    /**
     * Checks the amounts.
     *
     * @param perSocket of one socket
     * @param perPlug of one plug
     * @throws IllegalArgumentException if one is below 0, 10⁸ or more, has more than four decimals, or the two are in
     *     two currencies
     */
    public Labour {
      requireAmount("socket", Objects.requireNonNull(perSocket, "perSocket"));
      requireAmount("plug", Objects.requireNonNull(perPlug, "perPlug"));
      if (!perSocket.currency().equals(perPlug.currency())) {
        throw new IllegalArgumentException(
            "labour of a socket and of a plug must be in one currency," + " were "
                + perSocket.shown() + " and " + perPlug.shown());
      }
    }

    private static void requireAmount(String what, Money each) {
      if (each.amount().signum() < 0
          || each.amount().doubleValue() >= 1.0e8
          || each.amount().stripTrailingZeros().scale() > PartFacts.PRICE_DECIMALS) {
        throw new IllegalArgumentException("labour of a " + what + " must be in [0, 10^8) with at"
            + " most " + PartFacts.PRICE_DECIMALS + " decimals, was " + each);
      }
    }

    /** {@return what both cost} */
    @Override
    public String toString() {
      return perSocket.shown() + " for a socket, " + perPlug.shown() + " for a plug";
    }
  }

  /**
   * By what a spare stock is reckoned: how many pieces fail while more are on their way.
   *
   * @param wornPerYear the share of the pieces in use that is replaced in a year [-], in (0, 10]
   * @param deliveryDays how many days pass from the order to the shelf, from 1 to 365
   * @param risk the chance, at most, that more are wanted in that time than are there [-], in [0.001, 0.5]
   */
  public record Restock(double wornPerYear, int deliveryDays, double risk) {
    /**
     * Checks the components.
     *
     * @param wornPerYear the share of the pieces in use that is replaced in a year [-], in (0, 10]
     * @param deliveryDays how many days pass from the order to the shelf, from 1 to 365
     * @param risk the chance, at most, that more are wanted in that time than are there [-], in [0.001, 0.5]
     * @throws IllegalArgumentException if one is out of range
     */
    public Restock {
      if (!(wornPerYear > 0.0 && wornPerYear <= 10.0)) {
        throw new IllegalArgumentException(
            "share worn in a year must be in (0, 10], was " + wornPerYear);
      }
      if (deliveryDays < 1 || deliveryDays > 365) {
        throw new IllegalArgumentException(
            "days of delivery must be in [1, 365], were " + deliveryDays);
      }
      if (!(risk >= 0.001 && risk <= 0.5)) {
        throw new IllegalArgumentException(
            "risk of too few spare pieces must be in [0.001, 0.5], was " + risk);
      }
    }

    /** {@return the three in one line} */
    @Override
    public String toString() {
      return "worn in a year " + wornPerYear + ", delivery in " + deliveryDays + " days, risk "
          + risk;
    }
  }

  /**
   * Checks that the components belong together, and copies the lists.
   *
   * @param bays where couplings are in use
   * @param parts sockets, plugs and adapters on offer, with prices
   * @param shelf what is on the shelf
   * @param labour what a change costs in work
   * @param pairs what was told of plugs in sockets of another profile
   * @param outside the air around
   * @param restock by what the spare stock is reckoned
   * @throws IllegalArgumentException if there is no bay of compressed air, or more than 10 of these or of others; two
   *     bays have one name; a part on the shelf is no socket of one profile and no plug of the catalogue, or stands
   *     twice; a pair stands twice; no price is told, or two currencies are; there are more than 10 profiles, or more
   *     than 500 pieces wear out during a delivery
   */
  public CouplingInventory {
    bays = List.copyOf(Objects.requireNonNull(bays, "bays"));
    Objects.requireNonNull(parts, "parts");
    shelf = List.copyOf(Objects.requireNonNull(shelf, "shelf"));
    Objects.requireNonNull(labour, "labour");
    pairs = List.copyOf(Objects.requireNonNull(pairs, "pairs"));
    Objects.requireNonNull(outside, "outside");
    Objects.requireNonNull(restock, "restock");
    requireBays(bays);
    requireShelf(shelf, parts);
    Set<String> told = new HashSet<>();
    for (ToldPair pair : pairs) {
      // the profiles of a universal socket in any order
      Set<String> socket = new TreeSet<>(List.of(pair.socket().split("/", -1)));
      if (!told.add(pair.plug() + "," + String.join("/", socket))) {
        throw new IllegalArgumentException("pair of plug " + pair.plug() + " and socket "
            + pair.socket() + " must stand once, stands twice; keep the worse of the two");
      }
    }
    Optional<String> prices = priced(parts);
    Optional<String> work = labour.map(each -> each.perSocket().currency());
    if (prices.isEmpty() && work.isEmpty()) {
      throw new IllegalArgumentException("prices of parts must be told, none was; without prices"
          + " no profile is cheaper than another");
    }
    if (prices.isPresent() && work.isPresent() && !prices.equals(work)) {
      throw new IllegalArgumentException("labour must be in " + prices.get()
          + " as the prices of the parts, was in " + work.get());
    }
    if (restock.isPresent()) {
      requireSpare(bays, restock.get());
    }
    int profiles = profiles(bays, parts).size();
    if (profiles > MOST_PROFILES) {
      throw new IllegalArgumentException("profiles in use and on offer must be at most "
          + MOST_PROFILES + ", were " + profiles + "; leave out parts that are not to be kept");
    }
  }

  private static void requireSpare(List<Bay> bays, Restock restock) {
    int pieces = 0;
    for (Bay bay : bays) {
      pieces += bay.sockets().stream().mapToInt(Bay.Sockets::count).sum();
      pieces += bay.plugs().stream().mapToInt(Bay.Plugs::count).sum();
    }
    double worn = pieces * restock.wornPerYear() * restock.deliveryDays() / 365.0;
    if (worn > MOST_WORN) {
      throw new IllegalArgumentException(
          "pieces worn during a delivery must be at most " + MOST_WORN
              + " in all, were " + Math.round(worn)
              + "; look at the share worn in a year, and at the days of delivery");
    }
  }

  private static void requireBays(List<Bay> bays) {
    Set<String> names = new HashSet<>();
    int air = 0;
    for (Bay bay : bays) {
      if (!names.add(bay.name())) {
        throw new IllegalArgumentException(
            "name of each bay must be its own, " + bay.name() + " stands twice; rename one");
      }
      air += bay.isAir() ? 1 : 0;
    }
    if (air < 1 || air > MOST_BAYS || bays.size() - air > MOST_APART) {
      throw new IllegalArgumentException("bays must be 1 to " + MOST_BAYS
          + " of compressed air and at most " + MOST_APART + " of other media, were " + air
          + " and "
          + (bays.size() - air) + "; make one bay of places that share their tools");
    }
  }

  private static void requireShelf(List<OnShelf> shelf, Catalogue parts) {
    Set<String> ids = new HashSet<>();
    for (OnShelf each : shelf) {
      boolean isHalf =
          parts.part(each.part()).filter(CouplingInventory::isOffered).isPresent();
      if (!isHalf) {
        throw new IllegalArgumentException(
            "part " + each.part() + " on the shelf must be a socket of"
                + " one profile or a plug of the catalogue, is none; add it there, or leave it out");
      }
      if (!ids.add(each.part())) {
        throw new IllegalArgumentException("part " + each.part()
            + " must stand once on the shelf, stands twice; give the sum of the two");
      }
    }
  }

  /** Whether it is a half of a coupling that can be kept: a plug, or a socket of one profile. */
  static boolean isOffered(Part part) {
    return part instanceof Part.Plug
        || (part instanceof Part.Socket socket && socket.profiles().size() == 1);
  }

  private static Optional<String> priced(Catalogue parts) {
    return parts.parts().stream()
        .flatMap(part -> part.facts().price().stream())
        .map(Money::currency)
        .findFirst();
  }

  private static Set<String> profiles(List<Bay> bays, Catalogue parts) {
    Set<String> all = new LinkedHashSet<>();
    for (Bay bay : bays) {
      if (bay.isAir()) {
        bay.sockets().forEach(row -> all.addAll(row.takes()));
        bay.plugs().forEach(row -> all.add(row.profile()));
      }
    }
    for (Part part : parts.parts()) {
      if (part instanceof Part.Plug plug) {
        all.add(plug.profile());
      } else if (part instanceof Part.Socket socket && isOffered(part)) {
        all.addAll(socket.profiles());
      }
    }
    return all;
  }

  /** The ids of the profiles for compressed air that are in use or on offer, in the order in which they are met. */
  List<String> profiles() {
    return List.copyOf(profiles(bays, parts));
  }

  /** The currency of all prices. */
  String currency() {
    return Stream.of(priced(parts), labour.map(each -> each.perSocket().currency()))
        .flatMap(Optional::stream)
        .findFirst()
        .orElseThrow();
  }

  /** {@return the bays of compressed air, which may be changed} */
  public List<Bay> air() {
    return bays.stream().filter(Bay::isAir).toList();
  }

  /** {@return the bays of other media, which are kept apart} */
  public List<Bay> apart() {
    return bays.stream().filter(bay -> !bay.isAir()).toList();
  }

  /** {@return how much is told, in one line} */
  @Override
  public String toString() {
    return bays.size() + (bays.size() == 1 ? " bay" : " bays") + ", " + pairs.size()
        + (pairs.size() == 1 ? " pair" : " pairs") + " told, " + parts;
  }
}
