package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.Chain;
import org.airfit.joint.ChainVerdict;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.line.Conduit;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.Range;
import org.airfit.run.Run;
import org.airfit.source.Source;

/** What it takes to bring a bay to a profile: what is changed, what can go in its place, whether the air arrives. */
final class BayChanges {

  private static final Source OF_THE_SHOP =
      Source.derived("between the couplings of that profile in the catalogue");

  /**
   * A half of a coupling that can go in a place.
   *
   * @param part the socket or plug
   * @param adapters what goes between it and the end that is there
   * @param adaptersPrice what these cost [1/10⁴ of the currency]
   * @param price what the part costs [1/10⁴ of the currency]; negative where that is not told
   */
  record Offer(Part part, List<Part.Adapter> adapters, long adaptersPrice, long price) {

    /** Whether a rating is told of all its pieces. */
    boolean isRated() {
      return part.facts().rating().isPresent()
          && adapters.stream().allMatch(adapter -> adapter.facts().rating().isPresent());
    }

    boolean isPriced() {
      return price >= 0;
    }

    long bought() {
      return price + adaptersPrice;
    }
  }

  /**
   * Pieces of one kind that are changed.
   *
   * @param bay the name of the bay
   * @param where the place or tool
   * @param isSocket whether they are sockets
   * @param count how many
   * @param offers what can go in their place
   * @param cheapest the cheapest that can be bought
   */
  record Row(
      String bay, String where, boolean isSocket, int count, List<Offer> offers, Offer cheapest) {}

  /**
   * The change of a bay.
   *
   * @param rows what is changed
   * @param air the judgement of the air of each tool that tells its need
   * @param against what stands against it; empty where nothing does
   */
  record Change(List<Row> rows, List<BayAir> air, Optional<NotKept> against) {

    boolean isOpen() {
      return air.stream().anyMatch(each -> each.outcome() == RuleOutcome.OPEN);
    }

    private static Change refused(NotKept why) {
      return new Change(List.of(), List.of(), Optional.of(why));
    }
  }

  private final CouplingInventory inventory;

  /** The highest pressure of all bays of air: any plug can be carried to any of them. */
  private final GaugePressure highest;

  private final List<Part.Adapter> adapters;

  BayChanges(CouplingInventory inventory) {
    this.inventory = inventory;
    this.highest = inventory.air().stream()
        .map(bay -> bay.pressure().orElseThrow().most())
        .max(Comparator.naturalOrder())
        .orElseThrow();
    this.adapters = inventory.parts().parts().stream()
        .filter(Part.Adapter.class::isInstance)
        .map(Part.Adapter.class::cast)
        .filter(adapter -> adapter.facts().price().isPresent() && !isWeaker(adapter))
        .toList();
  }

  /** An amount in ten-thousandths of the currency: prices have no more decimals. */
  static long units(Money money) {
    return money.amount().setScale(PartFacts.PRICE_DECIMALS).unscaledValue().longValue();
  }

  /** A tool that draws air, with the adapters behind the plug that narrow it most. */
  private record Drawn(String tool, Bay.Need need, List<Part.Adapter> behind) {}

  /** What it takes to bring a bay of compressed air to a profile. */
  Change change(Bay bay, String profile) {
    List<Row> rows = new ArrayList<>();
    List<Drawn> drawn = new ArrayList<>();
    for (Bay.Plugs row : bay.plugs()) {
      List<Part.Adapter> behind = List.of();
      if (!row.profile().equals(profile)) {
        List<Offer> offers = toPrefer(offers(profile, /* isSocket= */ false, row.onto()));
        Optional<Offer> cheapest = cheapest(offers);
        if (cheapest.isEmpty()) {
          return Change.refused(missing(bay, profile, "a plug of " + row.tool()));
        }
        rows.add(new Row(
            bay.name(), row.tool(), /* isSocket= */ false, row.count(), offers, cheapest.get()));
        behind = narrowest(offers);
      }
      if (row.need().isPresent()) {
        drawn.add(new Drawn(row.tool(), row.need().get(), behind));
      }
    }
    List<BayAir> air = List.of();
    for (Bay.Sockets row : bay.sockets()) {
      Sockets changed = sockets(bay, profile, row, drawn);
      if (changed.against.isPresent()) {
        return Change.refused(changed.against.get());
      }
      changed.row.ifPresent(rows::add);
      air = worse(air, changed.air);
    }
    return new Change(List.copyOf(rows), air, Optional.empty());
  }

  private static NotKept missing(Bay bay, String profile, String what) {
    return new NotKept(
        profile, NotKept.Cause.NO_PART, what + " in " + bay.name(), Optional.empty());
  }

  private static NotKept tooLittle(List<BayAir> judged) {
    BayAir first = judged.stream()
        .filter(each -> each.outcome() == RuleOutcome.UNMET)
        .findFirst()
        .orElseThrow();
    return new NotKept(
        first.profile(), NotKept.Cause.TOO_LITTLE_AIR, first.bay(), Optional.of(first));
  }

  /** Sockets of one row: changed or not, with the air through them; or what stands against them. */
  private record Sockets(Optional<Row> row, List<BayAir> air, Optional<NotKept> against) {}

  private Sockets sockets(Bay bay, String profile, Bay.Sockets row, List<Drawn> drawn) {
    if (row.takes().equals(Set.of(profile))) {
      List<BayAir> air = air(bay, profile, drawn, ofTheShop(profile), List.of());
      return new Sockets(
          Optional.empty(),
          air,
          worst(air) == RuleOutcome.UNMET ? Optional.of(tooLittle(air)) : Optional.empty());
    }
    List<Offer> met = new ArrayList<>();
    List<Offer> possible = new ArrayList<>();
    List<BayAir> ofMet = List.of();
    List<BayAir> ofPossible = List.of();
    Optional<NotKept> against = Optional.of(missing(bay, profile, "a socket at " + row.place()));
    for (Offer offer : offers(profile, /* isSocket= */ true, row.onto())) {
      CapacityRange capacity = ((Part.Socket) offer.part()).capacityRange();
      List<BayAir> air = air(bay, profile, drawn, Optional.of(capacity), offer.adapters());
      if (worst(air) == RuleOutcome.UNMET) {
        against = Optional.of(tooLittle(air));
        continue;
      }
      possible.add(offer);
      ofPossible = worse(ofPossible, air);
      if (worst(air) == RuleOutcome.MET) {
        met.add(offer);
        ofMet = worse(ofMet, air);
      }
    }
    boolean isMet = cheapest(met).isPresent(); // an open question never ranks above a met rule
    List<Offer> offers = toPrefer(isMet ? met : possible);
    List<BayAir> air = isMet ? ofMet : ofPossible;
    Optional<NotKept> why = against;
    return cheapest(offers)
        .map(cheapest -> new Sockets(
            Optional.of(new Row(
                bay.name(), row.place(), /* isSocket= */ true, row.count(), offers, cheapest)),
            air,
            Optional.empty()))
        .orElseGet(() -> new Sockets(Optional.empty(), List.of(), why));
  }

  private static Optional<Offer> cheapest(List<Offer> offers) {
    return offers.stream().filter(Offer::isPriced).min(Comparator.comparingLong(Offer::bought));
  }

  /**
   * Those of which all ratings are told, where such can be bought; of these those with as few adapters as any that can be
   * bought: no joint more for a piece that lies on the shelf.
   */
  private static List<Offer> toPrefer(List<Offer> all) {
    boolean hasRated = all.stream().anyMatch(offer -> offer.isRated() && offer.isPriced());
    List<Offer> offers =
        all.stream().filter(offer -> offer.isRated() || !hasRated).toList();
    int fewest = offers.stream()
        .filter(Offer::isPriced)
        .mapToInt(offer -> offer.adapters().size())
        .min()
        .orElse(0);
    return offers.stream().filter(offer -> offer.adapters().size() <= fewest).toList();
  }

  /** The adapters among those of some offers through which the way is narrowest. */
  private static List<Part.Adapter> narrowest(List<Offer> offers) {
    return offers.stream()
        .map(Offer::adapters)
        .min(Comparator.comparingDouble(BayChanges::bore))
        .orElse(List.of());
  }

  private static double bore(List<Part.Adapter> chain) {
    return chain.stream()
        .mapToDouble(adapter -> adapter.conduit().bore().metres())
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** What can go onto an end: parts of the profile, with adapters if need be, none rated below the highest pressure. */
  private List<Offer> offers(String profile, boolean isSocket, Optional<End> onto) {
    List<Offer> offers = new ArrayList<>();
    for (Part part : inventory.parts().parts()) {
      Optional<End> end = end(part, profile, isSocket);
      if (end.isEmpty() || isWeaker(part)) {
        continue;
      }
      Chain<Part.Adapter> chain = chain(end.get(), onto.orElseThrow());
      if (chain.verdict() == ChainVerdict.NOT_JOINED
          || chain.matings().stream().anyMatch(Mating::isForLowPressure)) {
        continue;
      }
      long between = 0;
      for (Part.Adapter adapter : chain.adapters()) {
        between += units(adapter.facts().price().orElseThrow());
      }
      offers.add(new Offer(
          part,
          chain.adapters(),
          between,
          part.facts().price().map(BayChanges::units).orElse(-1L)));
    }
    return offers;
  }

  /** Through adapters whose rating is told where these join the ends, else through any. */
  private Chain<Part.Adapter> chain(End from, End onto) {
    Chain<Part.Adapter> rated = Chain.between(
        from,
        onto,
        adapters.stream()
            .filter(adapter -> adapter.facts().rating().isPresent())
            .toList());
    return rated.verdict() == ChainVerdict.NOT_JOINED ? Chain.between(from, onto, adapters) : rated;
  }

  /** Whether a part is rated below the highest pressure; one whose rating nobody tells is not. */
  private boolean isWeaker(Part part) {
    return part.facts().rating().filter(rating -> rating.compareTo(highest) < 0).isPresent();
  }

  /** The end of a part that is a half of this profile. */
  private static Optional<End> end(Part part, String profile, boolean isSocket) {
    if (isSocket && part instanceof Part.Socket socket) {
      return socket.profiles().equals(Set.of(profile))
          ? Optional.of(socket.end())
          : Optional.empty();
    }
    return !isSocket && part instanceof Part.Plug plug && plug.profile().equals(profile)
        ? Optional.of(plug.end())
        : Optional.empty();
  }

  /** What couplings of a profile let through that are in use already: one of those on offer, nobody tells which. */
  private Optional<CapacityRange> ofTheShop(String profile) {
    List<FlowCapacity> all = new ArrayList<>();
    for (Part part : inventory.parts().parts()) {
      if (part instanceof Part.Socket socket && socket.profiles().equals(Set.of(profile))) {
        all.add(socket.capacityRange().least());
        all.add(socket.capacityRange().most());
      }
    }
    return all.isEmpty() ? Optional.empty() : Optional.of(CapacityRange.spanning(all, OF_THE_SHOP));
  }

  private List<BayAir> air(
      Bay bay,
      String profile,
      List<Drawn> drawn,
      Optional<CapacityRange> coupling,
      List<Part.Adapter> before) {
    List<BayAir> judged = new ArrayList<>();
    for (Drawn tool : drawn) {
      GaugePressure needed = tool.need().pressure();
      if (coupling.isEmpty()) {
        judged.add(new BayAir(
            bay.name(),
            tool.tool(),
            profile,
            RuleOutcome.OPEN,
            needed,
            Optional.empty(),
            Optional.empty()));
        continue;
      }
      Range<GaugePressure> pressure = bay.pressure().orElseThrow();
      Range<FreeAirFlow> flow = tool.need().air();
      Optional<GaugePressure> least = arriving(
          pressure.least(),
          flow.most(),
          coupling.get().least(),
          before,
          tool.behind(),
          tool.need().hose().map(hose -> hose.least()));
      Optional<GaugePressure> most = arriving(
          pressure.most(),
          flow.least(),
          coupling.get().most(),
          before,
          List.of(),
          tool.need().hose().map(hose -> hose.most()));
      RuleOutcome outcome = isEnough(least, needed)
          ? RuleOutcome.MET
          : isEnough(most, needed) ? RuleOutcome.OPEN : RuleOutcome.UNMET;
      judged.add(new BayAir(bay.name(), tool.tool(), profile, outcome, needed, least, most));
    }
    return List.copyOf(judged);
  }

  private static boolean isEnough(Optional<GaugePressure> arriving, GaugePressure needed) {
    return arriving.filter(pressure -> pressure.compareTo(needed) >= 0).isPresent();
  }

  private Optional<GaugePressure> arriving(
      GaugePressure pressure,
      FreeAirFlow flow,
      FlowCapacity coupling,
      List<Part.Adapter> before,
      List<Part.Adapter> behind,
      Optional<Conduit> hose) {
    AirState outside = inventory.outside();
    Run run = Run.from(
        AirState.of(pressure.absolute(outside.pressure()), outside.temperature()),
        outside.pressure());
    for (int i = 0; i < before.size(); i++) {
      run = run.through("adapter " + (i + 1) + " before", before.get(i).conduit());
    }
    run = run.through("coupling", coupling);
    for (int i = 0; i < behind.size(); i++) {
      run = run.through("adapter " + (i + 1) + " behind", behind.get(i).conduit());
    }
    if (hose.isPresent()) {
      run = run.through("hose", hose.get());
    }
    return run.arriving(flow);
  }

  private static RuleOutcome worst(List<BayAir> air) {
    return RuleOutcome.worst(air.stream().map(BayAir::outcome)).orElse(RuleOutcome.MET);
  }

  /** Tool by tool the worse of two judgements: what arrives there at least. */
  private static List<BayAir> worse(List<BayAir> one, List<BayAir> other) {
    if (one.isEmpty()) {
      return other;
    }
    List<BayAir> worse = new ArrayList<>();
    for (int i = 0; i < one.size(); i++) {
      worse.add(
          arrivesAtLeast(other.get(i)) < arrivesAtLeast(one.get(i)) ? other.get(i) : one.get(i));
    }
    return List.copyOf(worse);
  }

  private static double arrivesAtLeast(BayAir air) {
    return air.least().map(GaugePressure::pascals).orElse(Double.NEGATIVE_INFINITY);
  }
}
