package org.airfit.select;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;
import org.airfit.plant.SupplyRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Temperature;
import org.airfit.safety.SafetyRule;

/**
 * The values of an amount at which a rule can turn: each rule compares the amount with ratings, limits or lengths that
 * are known, so that between two of these neighbours no rule turns.
 */
final class Turns {

  /** Two values are the same where they differ by less than this part. */
  private static final double SAME = 1.0e-9;

  private Turns() {}

  /** An amount's values, from the first bound to the last, both included, in SI; an end that is infinite is open. */
  record Domain(double least, double most) {

    /** Whether it holds more than one value, those aside that differ by rounding alone. */
    boolean isOpen() {
      return most - least > SAME * most;
    }
  }

  /** What an amount can be, as far as the job leaves it. */
  static Domain domain(Topic topic, Requirement job) {
    double usual = job.pressures().usual().pascals();
    return switch (topic) {
      case DUTY -> duties(job);
      case EXACT_AIR ->
        new Domain(si(job.demandRange().least()), si(job.demandRange().most()));
      case EXACT_PRESSURE -> domain(job.leastRange());
      case SETTING -> domain(job.settingRange());
      case HIGHEST, RELIEF_VALVE ->
        new Domain(job.leastHighest().pascals(), Double.POSITIVE_INFINITY);
      case TOOL_RATING -> // what its maker marks on it, its maker allows
        new Domain(
            job.markedUpTo().map(GaugePressure::pascals).orElse(0.0), Double.POSITIVE_INFINITY);
      case REGULATOR_FAILED -> new Domain(usual, job.highest().pascals());
      case REGULATOR_DROOP -> new Domain(0.0, job.droopRange().most().pascals());
      case BLOCKED_NOZZLE -> new Domain(0.0, job.highest().pascals());
      case COLDEST -> new Domain(0.0, hottest(job));
      case HOTTEST -> new Domain(coldest(job), Double.POSITIVE_INFINITY);
      default -> new Domain(0.0, Double.POSITIVE_INFINITY);
    };
  }

  private static Domain domain(Range<GaugePressure> range) {
    return new Domain(range.least().pascals(), range.most().pascals());
  }

  /** Between which shares of the time the duty lies, of what is taken on the average and while it runs. */
  private static Domain duties(Requirement job) {
    Range<FreeAirFlow> running = job.demandRange();
    Range<FreeAirFlow> average = job.average().orElse(running);
    return new Domain(
        si(average.most()) / si(running.most()),
        Math.min(1.0, si(average.least()) / si(running.least())));
  }

  /** A flow in SI, counted at ISO 8778. */
  private static double si(FreeAirFlow flow) {
    return FreeAirFlow.from(flow.massFlow(), ReferenceState.ANR).cubicMetresPerSecond();
  }

  private static double coldest(Requirement job) {
    return job.coldest().orElse(Requirement.USUAL_LOWEST).kelvins();
  }

  private static double hottest(Requirement job) {
    return job.hottest().orElse(Requirement.USUAL_HIGHEST).kelvins();
  }

  /** Where a rule can turn, in SI, in order, inside the domain. */
  static List<Double> of(Topic topic, Requirement job, Catalogue catalogue) {
    TreeSet<Double> turns = new TreeSet<>();
    switch (topic) {
      case TOOL_RATING -> {
        job.heldAtToolWhenSetLowest().map(GaugePressure::pascals).ifPresent(turns::add);
        turns.add(job.pressuresAtTool().usual().pascals());
        turns.add(job.pressuresAtTool().highest().pascals());
      }
      case HOSE_RATING, SOCKET_RATING, PLUG_RATING, PART_RATING -> ratings(job).forEach(turns::add);
      case HIGHEST, RELIEF_VALVE, REGULATOR_FAILED -> pressures(job, catalogue, turns);
      case BLOCKED_NOZZLE -> limits(job).forEach(turns::add);
      case REACH ->
        parts(job, catalogue)
            .filter(Part.Hose.class::isInstance)
            .map(Part.Hose.class::cast)
            .forEach(hose -> {
              turns.add(hose.shortest().metres());
              turns.add(hose.longest().metres());
            });
      case REGULATOR_DROOP -> droops(job, catalogue, turns);
      case COLDEST -> {
        turns.add(Requirement.USUAL_LOWEST.kelvins());
        turns.add(Freezing.POINT.kelvins());
        temperatures(job, catalogue, PartFacts::coldest, turns);
      }
      case HOTTEST -> {
        turns.add(Requirement.USUAL_HIGHEST.kelvins());
        temperatures(job, catalogue, PartFacts::hottest, turns);
      }
      default -> {}
    }
    return List.copyOf(turns);
  }

  /** Up to which droop the parts that would be proposed are enough. */
  private static void droops(Requirement job, Catalogue catalogue, Set<Double> turns) {
    Standing.of(job, catalogue)
        .shown()
        .ifPresent(shown -> shown.assembly().toEachTool().stream()
            .map(Doubts::enoughDroop)
            .flatMap(Optional::stream)
            .map(PressureDrop::pascals)
            .forEach(turns::add));
  }

  /** The parts there are: of the catalogue, and those of the layout that stay. */
  private static Stream<Part> parts(Requirement job, Catalogue catalogue) {
    List<Part> parts = new ArrayList<>(catalogue.parts());
    for (Slot slot : job.layout().allSlots()) {
      parts.addAll(there(slot));
    }
    return parts.stream();
  }

  private static List<Part> there(Slot slot) {
    List<Part> there = new ArrayList<>();
    if (slot instanceof Slot.Coupling coupling) {
      coupling.socket().ifPresent(there::add);
      coupling.plug().ifPresent(there::add);
    } else if (slot instanceof Slot.Hose hose) {
      hose.hose().ifPresent(there::add);
    } else if (slot instanceof Slot.Regulated regulated) {
      regulated.regulator().ifPresent(there::add);
    } else if (slot instanceof Slot.InLine line) {
      line.device().ifPresent(there::add);
    } else if (slot instanceof Slot.Splitter splitter) {
      splitter.splitter().ifPresent(there::add);
    }
    return there;
  }

  /** Ratings of parts, whole and the share of them that a rule allows, the tool's limit, and limits of rules. */
  private static void pressures(Requirement job, Catalogue catalogue, Set<Double> turns) {
    List<SafetyRule> rules = job.rules().rules();
    parts(job, catalogue)
        .map(part -> part.facts().rating())
        .flatMap(Optional::stream)
        .forEach(rating -> {
          turns.add(rating.pascals());
          rules.forEach(
              rule -> rule.pressureLimit(rating).map(GaugePressure::pascals).ifPresent(turns::add));
        });
    for (Slot slot : job.layout().allSlots()) {
      if (slot instanceof Slot.Regulated regulated) {
        turns.add(regulated.setRange().least().pascals());
        turns.add(regulated.setRange().most().pascals());
        regulated.ifFails().map(GaugePressure::pascals).ifPresent(turns::add);
      }
    }
    job.toEachTool().stream()
        .flatMap(way -> way.toolRating().stream())
        .map(GaugePressure::pascals)
        .forEach(turns::add);
    limits(job).forEach(turns::add);
  }

  /** The ratings at which a part may stand in some place of the job, or may not, by itself or by a share of them. */
  private static Stream<Double> ratings(Requirement job) {
    List<Double> standing = new ArrayList<>();
    add(standing, job.pressures());
    add(standing, job.pressuresAtTool());
    for (Slot slot : job.layout().allSlots()) {
      if (slot instanceof Slot.Regulated regulated) {
        standing.add(regulated.setRange().least().pascals());
        standing.add(regulated.setRange().most().pascals());
        regulated.ifFails().map(GaugePressure::pascals).ifPresent(standing::add);
      }
    }
    GaugePressure one = GaugePressure.ofPascals(1.0);
    List<Double> shares = Stream.concat(
            Stream.of(1.0),
            job.rules().rules().stream()
                .map(rule -> rule.pressureLimit(one))
                .flatMap(Optional::stream)
                .map(GaugePressure::pascals))
        .toList();
    return standing.stream().flatMap(pressure -> shares.stream().map(share -> pressure / share));
  }

  private static void add(List<Double> standing, SupplyRange range) {
    standing.add(range.usual().pascals());
    standing.add(range.highest().pascals());
    range.whileRegulated().map(GaugePressure::pascals).ifPresent(standing::add);
  }

  private static Stream<Double> limits(Requirement job) {
    return job.rules().rules().stream()
        .map(SafetyRule::pressureLimit)
        .flatMap(Optional::stream)
        .map(GaugePressure::pascals);
  }

  private static void temperatures(
      Requirement job,
      Catalogue catalogue,
      Function<PartFacts, Optional<Temperature>> bound,
      Set<Double> turns) {
    parts(job, catalogue)
        .map(part -> bound.apply(part.facts()))
        .flatMap(Optional::stream)
        .map(Temperature::kelvins)
        .forEach(turns::add);
  }

  /**
   * The values and the gaps between them, one to try of each: every turn itself, since a rule may turn at it or behind
   * it, and one value of every gap.
   */
  static List<Span> spans(Topic topic, Requirement job, Catalogue catalogue) {
    return spans(topic, of(topic, job, catalogue), domain(topic, job));
  }

  /** The same of how far a hose must reach, which lies between two lengths. */
  static List<Span> spans(Slot.Hose hose, Requirement job, Catalogue catalogue) {
    Domain domain =
        new Domain(hose.reachRange().least().metres(), hose.reachRange().most().metres());
    return spans(Topic.REACH, of(Topic.REACH, job, catalogue), domain);
  }

  /** The same of the bore of a hose that is there, which lies between two. */
  static List<Span> boreSpans(Part.Hose hose) {
    return spans(
        Topic.HOSE_BORE,
        List.of(),
        new Domain(
            hose.conduitRange().least().bore().metres(),
            hose.conduitRange().most().bore().metres()));
  }

  /** The same of the length of a hose that is there, which lies between two; it turns at how far it must reach. */
  static List<Span> lengthSpans(Slot.Hose slot, Part.Hose hose) {
    return spans(
        Topic.HOSE_LENGTH,
        Stream.of(slot.reachRange().least().metres(), slot.reachRange().most().metres())
            .distinct()
            .sorted()
            .toList(),
        new Domain(hose.shortest().metres(), hose.longest().metres()));
  }

  /** The same of the air that others take, which lies between two flows. */
  static List<Span> othersSpans(Range<FreeAirFlow> air) {
    return spans(Topic.AIR_OF_OTHERS, List.of(), new Domain(si(air.least()), si(air.most())));
  }

  /** The same of what a regulator is set to, which lies between two pressures. */
  static List<Span> settingSpans(Range<GaugePressure> set) {
    return spans(Topic.SETTING, List.of(), domain(set));
  }

  /** The same of by how much a regulator droops, which lies between two losses. */
  static List<Span> droopSpans(Range<PressureDrop> droop) {
    return spans(
        Topic.REGULATOR_DROOP,
        List.of(),
        new Domain(droop.least().pascals(), droop.most().pascals()));
  }

  private static List<Span> spans(Topic topic, List<Double> all, Domain domain) {
    List<Double> turns = all.stream()
        .filter(turn -> turn > domain.least() && turn < domain.most())
        .toList();
    List<Span> spans = new ArrayList<>();
    double from = domain.least();
    // what must be above 0 has no value at 0; of a temperature nothing is tried at absolute zero
    boolean startsAbove =
        from == 0.0 && topic != Topic.BLOCKED_NOZZLE && topic != Topic.REGULATOR_DROOP;
    if (!startsAbove) {
      spans.add(Span.at(from));
    }
    for (double turn : turns) {
      spans.add(Span.between(from, turn));
      spans.add(Span.at(turn));
      from = turn;
    }
    if (Double.isInfinite(domain.most())) {
      spans.add(Span.above(from));
    } else if (domain.most() > from) {
      spans.add(Span.between(from, domain.most()));
      spans.add(Span.at(domain.most()));
    }
    return List.copyOf(spans);
  }

  /** The text of a value in SI, as its reader reads it back. */
  static String text(Topic topic, double si) {
    return switch (topic) {
      case REACH, HOSE_BORE, HOSE_LENGTH -> Length.ofMetres(si).toString();
      case DUTY -> new BigDecimal(si).toPlainString();
      case EXACT_AIR, AIR_OF_OTHERS -> AmountWords.flow(si).toString();
      case COLDEST, HOTTEST -> Temperature.ofKelvins(si).toString();
      case REGULATOR_DROOP -> PressureDrop.ofPascals(si).toString();
      default -> GaugePressure.ofPascals(si).toString();
    };
  }
}
