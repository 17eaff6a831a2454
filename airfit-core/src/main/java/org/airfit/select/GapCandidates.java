package org.airfit.select;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.joint.Bore;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.joint.StandardAdapter;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.line.Wall;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;

/** What might solve jobs that a catalogue does not solve, each with how many jobs suggest it. */
final class GapCandidates {

  /** So many of the proposals that miss least are asked what they lack. */
  private static final int MOST_MISSES = 3;

  /** Bores of hoses that every counter knows: the names of ISO 1307 and those that the trade pairs with them. */
  private static final List<HoseBore> MILLIMETRES =
      bores("6.3 mm", "8 mm", "10 mm", "12.5 mm", "19 mm", "25 mm");

  private static final List<HoseBore> INCHES =
      bores("1/4 in", "5/16 in", "3/8 in", "1/2 in", "3/4 in", "1 in");

  /** An adapter is so long [m] with so much loss [-], and has no bore told: our own choice. */
  private static final double ADAPTER_LENGTH = 0.04;

  private static final double ADAPTER_LOSS = 1.0;
  private static final double ADAPTER_ROUGHNESS = 0.05e-3;

  /** A gap: a part to be added, or one with a figure more that replaces the part of its id. */
  record Candidate(CatalogueGap.Kind kind, Part part) {

    /** The catalogue with it. */
    Catalogue in(Catalogue catalogue) {
      List<Part> parts = new ArrayList<>(catalogue.parts());
      parts.removeIf(each -> each.id().equals(part.id()));
      parts.add(part);
      return Catalogue.of(parts, catalogue.accessories());
    }
  }

  private final Catalogue catalogue;
  private final GaugePressure highest;
  private final List<Length> lengths;
  private final List<HoseBore> bores;
  private final Optional<HoseEnds> usual;
  private final Map<Candidate, Integer> votes = new LinkedHashMap<>();

  GapCandidates(Catalogue catalogue, JobMix mix) {
    this.catalogue = catalogue;
    this.highest = mix.highest();
    this.lengths = mix.hoseLengths();
    List<Part.Hose> hoses = catalogue.all(Part.Hose.class);
    boolean isMetric = hoses.isEmpty()
        ? !lengths.equals(JobMix.FEET)
        : 2L * hoses.stream().filter(hose -> hose.bore().label().endsWith("mm")).count()
            >= hoses.size();
    this.bores = isMetric ? MILLIMETRES : INCHES;
    this.usual = hoses.isEmpty() ? HoseEnds.usual(catalogue) : Optional.empty();
  }

  private static List<HoseBore> bores(String... names) {
    return Stream.of(names).map(HoseBore::parse).toList();
  }

  /** How a hose ends, towards the outlet and towards the tool. */
  private record HoseEnds(End upstream, End downstream) {

    /**
     * Those of a hose for a catalogue without any: each the usual end on which most of its plugs, and of its sockets,
     * go; one for both if some goes on either. Empty where no plug or no socket has a thread of the usual ends.
     */
    static Optional<HoseEnds> usual(Catalogue catalogue) {
      List<End> plugs =
          catalogue.all(Part.Plug.class).stream().map(Part.Plug::end).toList();
      List<End> sockets =
          catalogue.all(Part.Socket.class).stream().map(Part.Socket::end).toList();
      Optional<End> both = PriceList.USUAL_ENDS.stream()
          .filter(end -> fits(end, plugs) > 0 && fits(end, sockets) > 0)
          .max(Comparator.comparing(end -> fits(end, plugs) + fits(end, sockets)));
      if (both.isPresent()) {
        return Optional.of(new HoseEnds(both.get(), both.get()));
      }
      return most(plugs).flatMap(up -> most(sockets).map(down -> new HoseEnds(up, down)));
    }

    private static Optional<End> most(List<End> ends) {
      return PriceList.USUAL_ENDS.stream()
          .filter(end -> fits(end, ends) > 0)
          .max(Comparator.comparing(end -> fits(end, ends)));
    }

    private static int fits(End end, List<End> others) {
      return (int) others.stream().filter(other -> Mating.isSound(end, other)).count();
    }
  }

  /** Adds what a job suggests, each once. */
  void add(Requirement job, Selection selection) {
    Set<Candidate> suggested = new LinkedHashSet<>();
    if (selection instanceof Selection.Proposals found) {
      figures(found.best(), suggested);
    } else if (selection instanceof Selection.NothingFits none) {
      List<Proposal> closest = none.closest();
      if (closest.isEmpty() && catalogue.all(Part.Hose.class).isEmpty()) {
        hoses(job, Optional.empty(), suggested);
      }
      for (Proposal miss : closest.subList(0, Math.min(MOST_MISSES, closest.size()))) {
        ofMiss(job, miss, suggested);
      }
    }
    suggested.forEach(candidate -> votes.merge(candidate, 1, Integer::sum));
  }

  /** {@return how many gaps of a kind are tried at most} */
  private static int mostOf(CatalogueGap.Kind kind) {
    return switch (kind) {
      case RATING, AIR_FIGURE -> 4;
      case ADAPTER -> 6;
      case HOSE -> 10;
    };
  }

  /** {@return how many gaps are tried at most} */
  static int mostTried() {
    return Arrays.stream(CatalogueGap.Kind.values())
        .mapToInt(GapCandidates::mostOf)
        .sum();
  }

  /**
   * Those of each kind that most jobs suggest; of equally many in an order that does not depend on how the catalogue is
   * written.
   */
  List<Candidate> most() {
    List<Candidate> most = new ArrayList<>();
    for (CatalogueGap.Kind kind : CatalogueGap.Kind.values()) {
      votes.entrySet().stream()
          .filter(each -> each.getKey().kind() == kind)
          .sorted(Comparator.comparing((Map.Entry<Candidate, Integer> each) -> -each.getValue())
              .thenComparing(each -> each.getKey().part().id()))
          .limit(mostOf(kind))
          .forEach(each -> most.add(each.getKey()));
    }
    return most;
  }

  /** Figures that nobody told of the parts of a proposal. */
  private void figures(Proposal proposal, Set<Candidate> suggested) {
    for (Part part : proposal.parts()) {
      PartFacts facts = part.facts();
      if (facts.rating().isEmpty()) {
        suggested.add(
            new Candidate(CatalogueGap.Kind.RATING, part.withFacts(facts.withRating(highest))));
      }
      PartFigures.atBest(part)
          .ifPresent(told -> suggested.add(new Candidate(CatalogueGap.Kind.AIR_FIGURE, told)));
    }
  }

  private void ofMiss(Requirement job, Proposal miss, Set<Candidate> suggested) {
    for (Joint joint : miss.joints()) {
      if (!joint.isSound()) {
        List<StandardAdapter> between =
            Mating.of(joint.upstream(), joint.downstream()).between();
        if (between.size() == 1) {
          adapter(between.get(0)).ifPresent(suggested::add);
        }
      }
    }
    figures(miss, suggested);
    boolean wantsHose = miss.unmet().stream()
        .map(Finding::rule)
        .anyMatch(rule -> rule == Rule.HOSE_REACHES
            || rule == Rule.AIR_AT_TOOL
            || rule == Rule.HOSE_SHORT_ENOUGH
            || rule == Rule.MATERIAL_SUITS
            || rule == Rule.PARTS_RATED
            || rule == Rule.STATIC_CARRIED_OFF);
    if (wantsHose) {
      hoses(
          job,
          miss.parts().stream()
              .filter(Part.Hose.class::isInstance)
              .map(Part.Hose.class::cast)
              .findFirst(),
          suggested);
    }
  }

  private PartFacts facts(String name) {
    return PartFacts.of("added: " + name, name)
        .withRating(highest)
        .withMaterial(Material.STAINLESS_STEEL)
        .withStaticDissipative(true)
        .withTemperatures(Temperature.ofCelsius(-20.0), Temperature.ofCelsius(60.0));
  }

  private Optional<Candidate> adapter(StandardAdapter shape) {
    Optional<Bore> one = shape.one().clearBore();
    Optional<Bore> other = shape.other().clearBore();
    Optional<Length> narrowest = Stream.of(one, other)
        .flatMap(Optional::stream)
        .map(bore -> bore.limits().least())
        .min(Comparator.naturalOrder());
    return narrowest.map(bore -> new Candidate(
        CatalogueGap.Kind.ADAPTER,
        new Part.Adapter(
            facts(shape.name()),
            shape.one(),
            shape.other(),
            Conduit.of(bore, Length.ofMetres(ADAPTER_LENGTH), Length.ofMetres(ADAPTER_ROUGHNESS))
                .withFittings(ADAPTER_LOSS))));
  }

  private void hoses(Requirement job, Optional<Part.Hose> like, Set<Candidate> suggested) {
    Length reach = job.layout().allSlots().stream()
        .filter(Slot.Hose.class::isInstance)
        .map(slot -> ((Slot.Hose) slot).reach())
        .findFirst()
        .orElse(lengths.get(0));
    for (Length length : lengths) {
      if (length.compareTo(reach) >= 0) {
        for (HoseBore bore : bores) {
          like.map(hose -> new HoseEnds(hose.upstream(), hose.downstream()))
              .or(() -> usual)
              .ifPresent(ends -> suggested.add(hose(bore, length, ends)));
        }
        return;
      }
    }
  }

  private Candidate hose(HoseBore bore, Length length, HoseEnds ends) {
    End up = ends.upstream();
    End down = ends.downstream();
    String name =
        "hose " + bore.label() + ", " + length.shown() + ", " + up.label() + " and " + down.label();
    return new Candidate(
        CatalogueGap.Kind.HOSE,
        new Part.Hose(
            facts(name),
            bore,
            ConduitRange.exactly(
                Conduit.of(bore.nominal(), length, Wall.SMOOTH_RUBBER_HOSE.roughness())
                    .withWall(Wall.SMOOTH_RUBBER_HOSE)),
            up,
            down));
  }
}
