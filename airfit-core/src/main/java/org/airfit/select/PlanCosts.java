package org.airfit.select;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.airfit.quantity.Money;
import org.airfit.select.PlanSearch.Score;

/** What each profile costs for each set of bays, and the plan that follows from a sharing out. */
final class PlanCosts implements PlanSearch.Costs {

  private final CouplingInventory inventory;
  private final List<Bay> bays;
  private final List<String> profiles;
  private final List<List<BayChanges.Change>> changes = new ArrayList<>();

  PlanCosts(CouplingInventory inventory, List<String> profiles) {
    this.inventory = inventory;
    this.bays = inventory.air();
    this.profiles = profiles;
    BayChanges one = new BayChanges(inventory);
    for (String profile : profiles) {
      List<BayChanges.Change> ofProfile = new ArrayList<>();
      bays.forEach(bay -> ofProfile.add(one.change(bay, profile)));
      changes.add(ofProfile);
    }
  }

  /** What stands against a profile for one bay or another. */
  List<NotKept> against() {
    List<NotKept> all = new ArrayList<>();
    changes.forEach(ofProfile -> ofProfile.forEach(change -> change.against().ifPresent(all::add)));
    return all;
  }

  @Override
  public Optional<Score> of(int profile, int some) {
    int open = 0;
    for (int bay = 0; bay < bays.size(); bay++) {
      BayChanges.Change change = changes.get(profile).get(bay);
      if (isIn(bay, some)) {
        if (change.against().isPresent()) {
          return Optional.empty();
        }
        open += change.isOpen() ? 1 : 0;
      }
    }
    List<BayChanges.Row> rows = rows(profile, some);
    List<Part> shelf = shelf(profile);
    int[][] taken = taken(rows, shelf);
    long cost = 0;
    for (int r = 0; r < rows.size(); r++) {
      BayChanges.Row row = rows.get(r);
      cost += row.count() * (row.cheapest().bought() + labour(row));
      for (int p = 0; p < shelf.size(); p++) {
        if (taken[r][p] > 0) {
          cost -= taken[r][p] * saving(row, shelf.get(p));
        }
      }
    }
    return Optional.of(new Score(open, cost));
  }

  private static boolean isIn(int bay, int some) {
    return (some >> bay & 1) == 1;
  }

  private List<BayChanges.Row> rows(int profile, int some) {
    List<BayChanges.Row> rows = new ArrayList<>();
    for (int bay = 0; bay < bays.size(); bay++) {
      if (isIn(bay, some)) {
        rows.addAll(changes.get(profile).get(bay).rows());
      }
    }
    return rows;
  }

  /** What is on the shelf of a profile. */
  private List<Part> shelf(int profile) {
    return inventory.shelf().stream()
        .map(each -> inventory.parts().part(each.part()).orElseThrow())
        .filter(part -> part instanceof Part.Plug plug
            ? plug.profile().equals(profiles.get(profile))
            : part instanceof Part.Socket socket
                && socket.profiles().contains(profiles.get(profile)))
        .toList();
  }

  private int[][] taken(List<BayChanges.Row> rows, List<Part> shelf) {
    int[] need = rows.stream().mapToInt(BayChanges.Row::count).toArray();
    int[] have = shelf.stream().mapToInt(this::onShelf).toArray();
    long[][] saving = new long[need.length][have.length];
    for (int r = 0; r < need.length; r++) {
      for (int p = 0; p < have.length; p++) {
        saving[r][p] = saving(rows.get(r), shelf.get(p));
      }
    }
    return ShelfUse.best(need, have, saving);
  }

  private int onShelf(Part part) {
    return inventory.shelf().stream()
        .filter(each -> each.part().equals(part.id()))
        .mapToInt(CouplingInventory.OnShelf::count)
        .sum();
  }

  /** What a piece of the shelf saves in a row; 0 where it does not go there. */
  private static long saving(BayChanges.Row row, Part part) {
    return offer(row, part)
        .map(offer -> row.cheapest().bought() - offer.adaptersPrice())
        .orElse(0L);
  }

  private static Optional<BayChanges.Offer> offer(BayChanges.Row row, Part part) {
    return row.offers().stream()
        .filter(each -> each.part().id().equals(part.id()))
        .findFirst();
  }

  private long labour(BayChanges.Row row) {
    return inventory
        .labour()
        .map(each -> BayChanges.units(row.isSocket() ? each.perSocket() : each.perPlug()))
        .orElse(0L);
  }

  private Money money(long units) {
    return new Money(BigDecimal.valueOf(units, PartFacts.PRICE_DECIMALS), inventory.currency());
  }

  /** Pieces of one part that a plan wants. */
  private static final class Wanted {
    private final Part part;
    private int fromShelf;
    private int bought;

    private Wanted(Part part) {
      this.part = part;
    }
  }

  /** The plan that follows from a sharing out. */
  CouplingPlan plan(PlanSearch.Found found) {
    Map<Integer, CouplingPlan.Kept> kept = new TreeMap<>();
    Map<String, Wanted> wanted = new LinkedHashMap<>();
    Map<Integer, List<BayAir>> air = new TreeMap<>();
    long labour = 0;
    for (int k = 0; k < found.profiles().size(); k++) {
      int profile = found.profiles().get(k);
      int some = found.bays().get(k);
      List<BayChanges.Row> rows = rows(profile, some);
      List<Part> shelf = shelf(profile);
      int[][] taken = taken(rows, shelf);
      for (int r = 0; r < rows.size(); r++) {
        labour += rows.get(r).count() * labour(rows.get(r));
        want(wanted, rows.get(r), shelf, taken[r]);
      }
      for (int bay = 0; bay < bays.size(); bay++) {
        if (isIn(bay, some)) {
          kept.put(bay, kept(bay, profile));
          air.put(bay, changes.get(profile).get(bay).air());
        }
      }
    }
    List<CouplingPlan.Purchase> purchases = new ArrayList<>();
    wanted.values().forEach(each -> purchases.add(purchase(each)));
    List<BayAir> judged = new ArrayList<>();
    air.values().forEach(judged::addAll);
    return new CouplingPlan(
        found.profiles().stream().map(profiles::get).toList(),
        List.copyOf(kept.values()),
        purchases,
        inventory.labour().isPresent() ? Optional.of(money(labour)) : Optional.empty(),
        money(found.score().cost()),
        judged);
  }

  private CouplingPlan.Kept kept(int bay, int profile) {
    int sockets = 0;
    int plugs = 0;
    for (BayChanges.Row row : changes.get(profile).get(bay).rows()) {
      sockets += row.isSocket() ? row.count() : 0;
      plugs += row.isSocket() ? 0 : row.count();
    }
    return new CouplingPlan.Kept(bays.get(bay).name(), profiles.get(profile), sockets, plugs);
  }

  private static void want(
      Map<String, Wanted> wanted, BayChanges.Row row, List<Part> shelf, int[] taken) {
    int bought = row.count();
    for (int p = 0; p < taken.length; p++) {
      if (taken[p] > 0) {
        bought -= taken[p];
        of(wanted, shelf.get(p)).fromShelf += taken[p];
        for (Part.Adapter adapter : offer(row, shelf.get(p)).orElseThrow().adapters()) {
          of(wanted, adapter).bought += taken[p];
        }
      }
    }
    if (bought > 0) {
      of(wanted, row.cheapest().part()).bought += bought;
      for (Part.Adapter adapter : row.cheapest().adapters()) {
        of(wanted, adapter).bought += bought;
      }
    }
  }

  private static Wanted of(Map<String, Wanted> wanted, Part part) {
    return wanted.computeIfAbsent(part.id(), any -> new Wanted(part));
  }

  private CouplingPlan.Purchase purchase(Wanted wanted) {
    Optional<Money> each = wanted.bought > 0 ? wanted.part.facts().price() : Optional.empty();
    return new CouplingPlan.Purchase(
        wanted.part.id(),
        wanted.part.name(),
        wanted.fromShelf,
        wanted.bought,
        each,
        money(each.map(BayChanges::units).orElse(0L) * wanted.bought));
  }
}
