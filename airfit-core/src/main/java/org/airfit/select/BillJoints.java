package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.joint.Seal;
import org.airfit.joint.StandardAdapter;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;
import org.airfit.thread.Gender;
import org.airfit.working.UnitSystem;

/**
 * What the joints of a proposal need beside its parts: the adapters that the catalogue lacks, and what seals and holds.
 * What that is, {@link Mating#seal()} says.
 */
final class BillJoints {

  private static final Source BY_OUTSIDE =
      Source.commonPractice("clamps and ferrules are chosen by the outside diameter of the hose");

  private final Assembly a;
  private final AccessoryShelf shelf;
  private final List<Part.Adapter> stock;
  private final UnitSystem units;
  private final List<Meeting> meetings;
  private final List<String> questions = new ArrayList<>();

  BillJoints(Assembly a, Catalogue catalogue, AccessoryShelf shelf, UnitSystem units) {
    this.a = a;
    this.shelf = shelf;
    this.stock = catalogue.parts().stream()
        .filter(Part.Adapter.class::isInstance)
        .map(Part.Adapter.class::cast)
        .toList();
    this.units = units;
    this.meetings = Meeting.of(a);
  }

  /** What nobody told and what nothing standard joins, after the lines were made. */
  List<String> questions() {
    return questions;
  }

  List<BillLine> lines() {
    List<BillLine> lines = new ArrayList<>(adapters());
    lines.addAll(clamps());
    lines.addAll(sealants());
    lines.addAll(washers());
    lines.addAll(retainers());
    askForUnusedOutlets();
    askForOutletsOfOthers();
    return lines;
  }

  /** An outlet of a splitter that no line uses must be closed. */
  private void askForUnusedOutlets() {
    UnusedOutlets.of(a)
        .forEach(unused -> questions.add("What closes " + unused.inWords() + ", "
            + String.join(", ", unused.ends())
            + "? A plug must go into each, or more lines onto them."));
  }

  /**
   * Others may draw behind a tee in front of a splitter too, so that one without an outlet for them is no fault; but
   * somebody must see to it that their air comes from somewhere.
   */
  private void askForOutletsOfOthers() {
    UnusedOutlets.noneForOthers(a)
        .forEach(splitter -> questions.add("Where do the others who draw air at " + splitter
            + " go on? The lines take all of its outlets: lead the others off with a tee in front of it, or take a"
            + " splitter with one outlet more."));
  }

  /** The pieces that go between where no adapters of the catalogue do alone, each by its standard shape. */
  private List<BillLine> adapters() {
    Map<StandardAdapter, Set<String>> where = new LinkedHashMap<>();
    Map<StandardAdapter, Integer> count = new LinkedHashMap<>();
    for (Assembly.Between each : a.between()) {
      Joint joint = each.joint();
      List<StandardAdapter> lacking = Meeting.lacking(joint);
      if (lacking.isEmpty() && !joint.isSound()) {
        questions.add("What goes between " + joint.upstream().label() + " and "
            + joint.downstream().label() + " (" + joint.where() + ")? "
            + joint.matings().get(0).reason(units));
      }
      for (StandardAdapter adapter : lacking) {
        where.computeIfAbsent(adapter, any -> new LinkedHashSet<>()).add(joint.where());
        count.merge(adapter, each.count(), Integer::sum);
      }
    }
    List<BillLine> lines = new ArrayList<>();
    where.forEach((adapter, joints) -> {
      int quantity = count.getOrDefault(adapter, 0);
      String why = ByLine.joined(
          a, joints.stream().map(joint -> ByLine.saying(a, "joins", joint)).toList(), "; ");
      lines.add(stocked(adapter)
          .map(facts -> BillLine.of(
              BillLine.Kind.ADAPTER,
              facts,
              quantity,
              why + "; its pressure loss is not reckoned",
              StandardAdapter.SOURCE))
          .orElseGet(() -> BillLine.lacking(
              BillLine.Kind.ADAPTER,
              adapter.name(),
              quantity,
              why + "; the catalogue has none, and its pressure loss is not reckoned",
              StandardAdapter.SOURCE)));
    });
    return lines;
  }

  /** The adapter of the catalogue with the same two ends that stands what the job asks of it, the cheapest first. */
  private Optional<PartFacts> stocked(StandardAdapter adapter) {
    Set<End> ends = Set.copyOf(List.of(adapter.one(), adapter.other()));
    return stock.stream()
        .filter(each -> Set.copyOf(List.of(each.one(), each.other())).equals(ends))
        .filter(each -> !PartChecks.isUnmarkedToBuy(each))
        .filter(each -> !PartChecks.isOfWrongMaterial(a.requirement(), Position.ADAPTER, each))
        .map(Part.Adapter::facts)
        .filter(shelf::stands)
        .min(AccessoryShelf.CHEAPEST);
  }

  private List<Meeting> sealedBy(Seal seal) {
    return meetings.stream()
        .filter(each -> each.mating().seal().filter(seal::equals).isPresent())
        .toList();
  }

  /** A clamp or ferrule for every hose on a barb; those of one hose on one line. */
  private List<BillLine> clamps() {
    Map<List<String>, List<Meeting>> alike = new LinkedHashMap<>();
    for (Meeting each : sealedBy(Seal.CLAMP_OR_FERRULE)) {
      String outside = each.hoseOutside().map(this::words).orElse("");
      alike
          .computeIfAbsent(List.of(each.hoseName(), outside), any -> new ArrayList<>())
          .add(each);
    }
    List<BillLine> lines = new ArrayList<>();
    alike.values().forEach(clamped -> lines.add(clamp(clamped)));
    return together(lines);
  }

  private BillLine clamp(List<Meeting> clamped) {
    Meeting first = clamped.get(0);
    String why = "holds " + first.hoseName() + " on its barb: " + where(clamped);
    Optional<Length> outside = first.hoseOutside();
    if (outside.isEmpty()) {
      questions.add("What does " + first.hoseName()
          + " measure outside? Clamps and ferrules are chosen by it.");
      return BillLine.lacking(
          BillLine.Kind.CLAMP,
          first.mating().sealItem().orElseThrow(),
          clamped.size(),
          why + "; its outside diameter was not told",
          BY_OUTSIDE);
    }
    String measures = words(outside.get());
    return shelf
        .find(Accessory.HoseClamp.class, clamp -> clamp.holds(outside.get()))
        .map(clamp -> BillLine.of(
            BillLine.Kind.CLAMP,
            clamp.facts(),
            clamped.size(),
            why + "; it measures " + measures + " outside",
            BY_OUTSIDE))
        .orElseGet(() -> BillLine.lacking(
            BillLine.Kind.CLAMP,
            "clamp or ferrule for " + measures + " outside",
            clamped.size(),
            why + "; the catalogue has none",
            BY_OUTSIDE));
  }

  private String words(Length length) {
    return length.format(units.smallLengthUnit());
  }

  /** One sealant for all taper joints where one will do, else one for each size of them. */
  private List<BillLine> sealants() {
    List<Meeting> taper = sealedBy(Seal.THREAD_SEALANT);
    if (taper.isEmpty()) {
      return List.of();
    }
    NominalThreadSize largest =
        taper.stream().map(BillJoints::size).max(NominalThreadSize::compareTo).orElseThrow();
    Optional<Accessory.ThreadSealant> forAll = sealant(largest);
    if (forAll.isPresent()) {
      return List.of(sealant(forAll.map(Accessory::facts), taper));
    }
    Map<Optional<PartFacts>, List<Meeting>> alike = new LinkedHashMap<>();
    for (Meeting each : taper) {
      alike
          .computeIfAbsent(sealant(size(each)).map(Accessory::facts), any -> new ArrayList<>())
          .add(each);
    }
    List<BillLine> lines = new ArrayList<>();
    alike.forEach((facts, joined) -> lines.add(sealant(facts, joined)));
    return lines;
  }

  private Optional<Accessory.ThreadSealant> sealant(NominalThreadSize size) {
    return shelf.find(
        Accessory.ThreadSealant.class, sealant -> sealant.largest().compareTo(size) >= 0);
  }

  private BillLine sealant(Optional<PartFacts> facts, List<Meeting> joined) {
    String why =
        "seals " + (joined.size() == 1 ? "the taper thread" : joined.size() + " taper threads")
            + ": " + where(joined)
            + "; leave the first thread bare, so that nothing loose gets into the air";
    Source source = joined.get(0).mating().source();
    Set<String> threads = new LinkedHashSet<>();
    joined.forEach(each -> threads.add(male(each).label()));
    return facts
        .map(told -> BillLine.of(BillLine.Kind.SEALANT, told, 1, why, source))
        .orElseGet(() -> BillLine.lacking(
            BillLine.Kind.SEALANT,
            "thread sealant for " + String.join(", ", threads),
            1,
            why + "; the catalogue has none",
            source));
  }

  /** A washer for every joint that seals between two flat faces; those of one size on one line. */
  private List<BillLine> washers() {
    Map<String, List<Meeting>> alike = new LinkedHashMap<>();
    for (Meeting each : sealedBy(Seal.WASHER)) {
      alike
          .computeIfAbsent(each.mating().sealItem().orElseThrow(), any -> new ArrayList<>())
          .add(each);
    }
    List<BillLine> lines = new ArrayList<>();
    alike.forEach((item, joined) -> {
      Meeting first = joined.get(0);
      String why = "seals between the faces: " + where(joined)
          + "; the thread does not seal, and a part that carries its own ring needs none";
      Source source = first.mating().source();
      lines.add(shelf
          .find(Accessory.SealingWasher.class, washer -> washer.isFor(item))
          .map(
              washer -> BillLine.of(BillLine.Kind.SEAL, washer.facts(), joined.size(), why, source))
          .orElseGet(() -> BillLine.lacking(
              BillLine.Kind.SEAL, item, joined.size(), why + "; the catalogue has none", source)));
    });
    return lines;
  }

  /** What keeps the halves of a claw coupling from turning back. */
  private List<BillLine> retainers() {
    Map<String, List<Meeting>> alike = new LinkedHashMap<>();
    for (Meeting each : meetings) {
      each.mating()
          .retainer()
          .ifPresent(
              item -> alike.computeIfAbsent(item, any -> new ArrayList<>()).add(each));
    }
    List<BillLine> lines = new ArrayList<>();
    alike.forEach((item, held) -> lines.add(BillLine.lacking(
        BillLine.Kind.RETAINER,
        item,
        held.size(),
        "keeps the halves from parting by themselves: " + where(held),
        held.get(0).mating().source())));
    return lines;
  }

  private static NominalThreadSize size(Meeting meeting) {
    return male(meeting).size();
  }

  private static End.Threaded male(Meeting meeting) {
    End one = meeting.mating().one();
    return one instanceof End.Threaded threaded && threaded.gender() == Gender.MALE
        ? threaded
        : (End.Threaded) meeting.mating().other();
  }

  /** Where pairs meet, each joint once. */
  private String where(List<Meeting> meetings) {
    return ByLine.joined(a, meetings.stream().map(Meeting::where).distinct().toList(), ", ");
  }

  /** Lines of one article made one. */
  static List<BillLine> together(List<BillLine> lines) {
    Map<List<Object>, BillLine> byArticle = new LinkedHashMap<>();
    for (BillLine line : lines) {
      byArticle.merge(
          List.of(line.kind(), line.name(), line.id()),
          line,
          (one, other) -> new BillLine(
              one.kind(),
              one.name(),
              one.facts(),
              one.quantity() + other.quantity(),
              one.reason() + "; " + other.reason(),
              one.source()));
    }
    return List.copyOf(byArticle.values());
  }
}
