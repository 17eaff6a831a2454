package org.airfit.jobsheet;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.files.InventoryJob;
import org.airfit.measure.PartSpread;
import org.airfit.plug.Dimension;
import org.airfit.plug.PairOutcome;
import org.airfit.plug.PlugProfile;
import org.airfit.quantity.Money;
import org.airfit.safety.Caution;
import org.airfit.select.Bay;
import org.airfit.select.BayAir;
import org.airfit.select.ChangeOver;
import org.airfit.select.ChangeStep;
import org.airfit.select.CouplingInventory;
import org.airfit.select.CouplingPlan;
import org.airfit.select.MixedPair;
import org.airfit.select.NotKept;
import org.airfit.select.SpareStock;
import org.airfit.working.UnitSystem;

/**
 * Which coupling profile to keep, as text and page share it.
 *
 * @param job the inventory
 * @param found the answer
 */
public record InventorySheet(InventoryJob job, ChangeOver found) {

  /** What the sheet does not judge, at the place where its answer is read. */
  static final List<String> LIMITS = List.of(
      "Any plug can be carried to any socket of the inventory, in every bay; plugs and sockets that are not in it,"
          + " such as those in a van, are not judged.",
      "What happens in a wrong pair is what was told in the file. Where nobody told, it counts as if the plug could let"
          + " go; sizes do not tell it.",
      "Each tool is judged alone, through one coupling, the adapters and its hose, from the pressure that was told at"
          + " the sockets. Hoses with a coupling at both ends, and tools that run together, belong in a job file.",
      "A universal socket is changed like others, as it goes on taking every profile. Pieces that are taken out count"
          + " as scrap, adapters on the shelf are not counted, and a part without a price is not offered.",
      "Threads stay as they are: each half is bought for the end that is there, with adapters where it needs them.",
      "At most three profiles are kept. Colours and marks are for the shop to choose; none is prescribed here.");

  /** Sizes that say most of whether a plug enters a socket at all. */
  private static final List<Dimension> TOLD =
      List.of(Dimension.TIP_DIAMETER, Dimension.COLLAR_DIAMETER, Dimension.SHOULDER_DIAMETER);

  /**
   * Refuses what is null.
   *
   * @param job the inventory
   * @param found the answer
   */
  public InventorySheet {
    Objects.requireNonNull(job, "job");
    Objects.requireNonNull(found, "found");
  }

  /**
   * Answers an inventory.
   *
   * @param job the inventory
   * @return what to keep, to change and to mind
   */
  public static InventorySheet of(InventoryJob job) {
    return new InventorySheet(job, ChangeOver.of(job.inventory()));
  }

  UnitSystem units() {
    return job.units();
  }

  /** The whole sheet in a few lines. */
  List<Answer> inShort() {
    List<String> said = found.inWords(units());
    List<Answer> lines = new ArrayList<>();
    lines.add(new Answer("Answer", said.get(0)));
    if (said.size() > 1) {
      lines.add(new Answer("Why", String.join(" ", said.subList(1, said.size()))));
    }
    lines.add(new Answer("Today", danger(found.possibleNow())));
    for (Bay bay : job.inventory().apart()) {
      lines.add(new Answer(
          "Kept apart",
          bay.name() + " carries " + bay.medium()
              + ": it is not changed, and no profile of it is offered for air."));
    }
    job.remarks().forEach(remark -> lines.add(new Answer("In the file", remark)));
    return lines;
  }

  /** How many wrong pairs can be made that matter, in one sentence. */
  private static String danger(List<MixedPair> pairs) {
    List<String> said = new ArrayList<>();
    ways(
        said,
        pairs.stream().filter(pair -> pair.isDangerous() && pair.acrossMedia()),
        "in which the lines of two media are joined or may be");
    ways(
        said,
        pairs.stream().filter(pair -> pair.isDangerous() && !pair.acrossMedia()),
        "to put a plug into a socket that lets go, or of which nobody told what happens");
    ways(
        said,
        pairs.stream().filter(pair -> pair.outcome() == PairOutcome.LEAKS && !pair.acrossMedia()),
        "to put a plug into a socket that leaks");
    return said.isEmpty()
        ? "No plug can go into a socket of another profile that leaks, lets go or is not told."
        : String.join("; ", said) + " (each plug with each socket counts as one way).";
  }

  private static void ways(List<String> said, Stream<MixedPair> pairs, String what) {
    long ways = pairs.mapToLong(MixedPair::ways).sum();
    if (ways > 0) {
      said.add(ways + (ways == 1 ? " way " : " ways ") + what);
    }
  }

  /** Each bay: its name, what it has now, what it keeps, what is changed. */
  List<List<String>> bays() {
    List<List<String>> rows = new ArrayList<>();
    for (Bay bay : job.inventory().bays()) {
      Set<String> now = new LinkedHashSet<>();
      bay.sockets().forEach(row -> now.add(String.join("/", row.takes())));
      bay.plugs().forEach(row -> now.add(row.profile()));
      Optional<CouplingPlan.Kept> kept = found
          .best()
          .flatMap(plan ->
              plan.kept().stream().filter(each -> each.bay().equals(bay.name())).findFirst());
      rows.add(List.of(
          bay.name(),
          String.join(", ", now),
          bay.isAir()
              ? kept.map(CouplingPlan.Kept::profile).orElse("-")
              : "as it is (" + bay.medium() + ")",
          kept.map(each -> String.valueOf(each.sockets())).orElse("-"),
          kept.map(each -> String.valueOf(each.plugs())).orElse("-")));
    }
    return rows;
  }

  /** What is changed in a bay, in words. */
  List<String> baysInWords() {
    return bays().stream()
        .map(row -> row.get(0) + ": now " + row.get(1)
            + (row.get(3).equals("-")
                ? row.get(2).equals("-") ? "" : "; stays " + row.get(2)
                : "; keeps " + row.get(2)
                    + (row.get(3).equals("0") && row.get(4).equals("0")
                        ? "; nothing to change"
                        : "; to change: " + row.get(3) + " sockets, " + row.get(4) + " plugs")))
        .toList();
  }

  /** What is taken from the shelf and bought, in words. */
  List<String> purchasesInWords() {
    List<String> said = new ArrayList<>();
    found.best().ifPresent(plan -> {
      for (CouplingPlan.Purchase each : plan.purchases()) {
        List<String> ways = new ArrayList<>();
        if (each.fromShelf() > 0) {
          ways.add(each.fromShelf() + " from the shelf");
        }
        each.each()
            .ifPresent(price -> ways.add(each.bought() + " to buy at " + price.shown() + ", "
                + each.total().format(2)));
        said.add(each.part() + ", " + each.name() + ": " + String.join(", ", ways));
      }
      plan.labour()
          .ifPresent(work -> said.add("work on " + plan.sockets() + " sockets and " + plan.plugs()
              + " plugs: " + work.format(2)));
      said.add("together: " + plan.total().format(2));
    });
    return said;
  }

  /** What is taken from the shelf and bought: part, from the shelf, to buy, each, together. */
  List<List<String>> purchases() {
    List<List<String>> rows = new ArrayList<>();
    found.best().ifPresent(plan -> {
      for (CouplingPlan.Purchase each : plan.purchases()) {
        rows.add(List.of(
            each.part() + ", " + each.name(),
            String.valueOf(each.fromShelf()),
            String.valueOf(each.bought()),
            each.each().map(Money::shown).orElse("-"),
            each.total().format(2)));
      }
      plan.labour()
          .ifPresent(work -> rows.add(List.of(
              "work on " + plan.sockets() + " sockets and " + plan.plugs() + " plugs",
              "-",
              "-",
              "-",
              work.format(2))));
      rows.add(List.of("together", "", "", "", plan.total().format(2)));
    });
    return rows;
  }

  /** One stop as it is told: what is done, and what can be made wrongly until the next. */
  record Stop(String what, String gain, List<String> until) {}

  /** Why the stops come in this order. */
  static final String ORDER =
      "As few bays as can be are changed together. Of the orders that do so, this one leaves the fewest dangerous ways"
          + " between the stops, each plug with each socket counted as one: first those that join the lines of two media, then those that let go or are not told, then those"
          + " that leak.";

  List<Stop> stops() {
    List<Stop> stops = new ArrayList<>();
    for (ChangeStep step : found.steps()) {
      List<String> until = new ArrayList<>(harmful(step.possible()));
      if (until.isEmpty()) {
        until.add("From then on no wrong pair can be made that leaks, lets go or is not told.");
      }
      stops.add(new Stop(step.inWords(), step.gainInWords(), until));
    }
    return stops;
  }

  private static List<String> harmful(List<MixedPair> pairs) {
    return pairs.stream()
        .filter(pair -> pair.isDangerous() || pair.outcome() == PairOutcome.LEAKS)
        .map(MixedPair::inWords)
        .toList();
  }

  /** What can be made wrongly today: plug, socket, what happens, ways. */
  List<List<String>> wrongToday() {
    return found.possibleNow().stream()
        .map(pair -> List.of(
            pair.plug() + " (" + pair.plugs() + ", " + String.join(", ", pair.plugsIn()) + ")",
            String.join("/", pair.takes()) + " (" + pair.sockets() + ", "
                + String.join(", ", pair.socketsIn()) + ")",
            pair.outcome() + (pair.acrossMedia() ? "; lines of two media" : ""),
            String.valueOf(pair.ways())))
        .toList();
  }

  /** What is said where no pair is wrong today. */
  String noneWrong() {
    Set<String> inUse = new LinkedHashSet<>();
    for (Bay bay : job.inventory().bays()) {
      bay.sockets().forEach(row -> inUse.addAll(row.takes()));
      bay.plugs().forEach(row -> inUse.add(row.profile()));
    }
    return inUse.size() == 1
        ? "Nothing: one profile is in use."
        : "Nothing: each plug in use is told to go in and seal in each socket in use.";
  }

  /** The sizes of profiles of which nobody told what they do in each other's sockets. */
  List<String> sizes() {
    Set<String> told = new LinkedHashSet<>();
    for (MixedPair pair : found.possibleNow()) {
      if (pair.outcome() == PairOutcome.NOT_TOLD && pair.takes().size() == 1) {
        Optional<PlugProfile> plug = job.profiles().profile(pair.plug());
        Optional<PlugProfile> own =
            pair.takes().stream().findFirst().flatMap(id -> job.profiles().profile(id));
        if (plug.isPresent() && own.isPresent()) {
          told.add(sizes(plug.get(), own.get()));
        }
      }
    }
    return List.copyOf(told);
  }

  private String sizes(PlugProfile plug, PlugProfile own) {
    String beside = TOLD.stream()
        .filter(each -> plug.spread(each).isPresent() && own.spread(each).isPresent())
        .map(each -> each.label() + " " + said(plug, each) + " against " + said(own, each))
        .collect(Collectors.joining(", "));
    return "Plug " + plug.id() + " in socket " + own.id() + ": "
        + (beside.isEmpty() ? "no size is known of both." : beside + ".");
  }

  private String said(PlugProfile profile, Dimension dimension) {
    PartSpread spread = profile.spread(dimension).orElseThrow();
    return units().saySmall(spread.nominal());
  }

  List<String> air() {
    return found.best().map(CouplingPlan::air).orElse(List.of()).stream()
        .map((BayAir each) -> each.inWords(units()))
        .toList();
  }

  List<String> notKept() {
    return found.notKept().stream()
        .map((NotKept each) -> InWords.capital(each.inWords(units())))
        .toList();
  }

  /** The spare pieces of each kind: the kind, in use, to keep. */
  List<List<String>> spare(boolean isAfter) {
    return (isAfter ? found.spareAfter() : found.spareNow())
        .stream()
            .map((SpareStock each) ->
                List.of(each.what(), String.valueOf(each.inUse()), String.valueOf(each.spare())))
            .toList();
  }

  /** How the spare pieces were reckoned, and how many there are before and after. */
  String spareInWords() {
    int now = found.spareNow().stream().mapToInt(SpareStock::spare).sum();
    int after = found.spareAfter().stream().mapToInt(SpareStock::spare).sum();
    String rule = job.inventory()
        .restock()
        .map((CouplingInventory.Restock each) ->
            "The fewest pieces that are enough, for each kind by itself, with a chance of "
                + Amounts.percent(1.0 - each.risk()) + " while more are on their way for "
                + each.deliveryDays() + " days, where " + perHundred(each.wornPerYear())
                + " of 100 pieces wear out in a year, one by one.")
        .orElse(
            "One piece of each kind (common practice, no source), as nobody told how many wear out"
                + " and how long a delivery takes.");
    return rule + " Today that is " + now + " pieces of " + found.spareNow().size() + " kinds"
        + (found.best().isPresent()
            ? ", afterwards " + after + " of " + found.spareAfter().size()
                + ". What is on the shelf is not" + " taken off."
            : ". What is on the shelf is not taken off.");
  }

  private static String perHundred(double share) {
    return BigDecimal.valueOf(share).movePointRight(2).stripTrailingZeros().toPlainString();
  }

  List<Caution> cautions() {
    return found.cautions(units());
  }
}
