package org.airfit.select;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.plant.SupplyRange;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Judgement;
import org.airfit.safety.Ruling;

/**
 * What a job or a single part breaks whatever else is chosen. The search leaves such parts out, and the sentences of
 * the rules ask the same, so
 * that nothing is lost. True means broken.
 */
final class PartChecks {

  private PartChecks() {}

  /** Tells whether a part breaks a rule at its position. */
  interface OfPart {
    boolean isBroken(Requirement job, Position position, Part part);
  }

  /** Of a rule that no single part breaks. */
  static final OfPart NEVER = (job, position, part) -> false;

  static boolean takesNotAllInUse(Requirement job, Position position, Part part) {
    return position.isSocket()
        && position.isAtOutlet()
        && !takes(part).containsAll(job.profilesInUse());
  }

  private static Set<String> takes(Part part) {
    return part instanceof Part.Socket socket ? socket.profiles() : Set.of();
  }

  static boolean isNotRated(Requirement job, Position position, Part part) {
    return isTooWeak(job, position, part) || isUnmarkedToBuy(part);
  }

  static boolean isTooWeak(Requirement job, Position position, Part part) {
    return part.facts()
        .rating()
        .filter(rating -> position.canExceed(rating, job))
        .isPresent();
  }

  static boolean isUnmarkedToBuy(Part part) {
    return part.facts().rating().isEmpty() && !part.facts().isExisting();
  }

  /** The coldest that the parts see: the air of the supply, or what was told. */
  static Temperature coldest(Requirement job) {
    Temperature supply = job.supplyTemperature();
    return job.coldest().filter(told -> told.compareTo(supply) < 0).orElse(supply);
  }

  /** The hottest that the parts see: the air of the supply, or what was told. */
  static Temperature hottest(Requirement job) {
    Temperature supply = job.supplyTemperature();
    return job.hottest().filter(told -> told.compareTo(supply) > 0).orElse(supply);
  }

  /** Whether the makers must be asked what they allow: temperatures were told, or the supply is no usual one. */
  static boolean isUnusuallyWarmOrCold(Requirement job) {
    return job.coldest().isPresent()
        || job.hottest().isPresent()
        || coldest(job).compareTo(Requirement.USUAL_LOWEST) < 0
        || hottest(job).compareTo(Requirement.USUAL_HIGHEST) > 0;
  }

  /** What its maker does not tell does not break the rule; it is asked for. */
  static boolean isOutOfTemperature(Requirement job, Position position, Part part) {
    return isOutOfTemperature(job, part.facts());
  }

  static boolean isOutOfTemperature(Requirement job, PartFacts facts) {
    return facts.coldest().map(t -> t.compareTo(coldest(job)) > 0).orElse(false)
        || facts.hottest().map(t -> t.compareTo(hottest(job)) < 0).orElse(false);
  }

  static boolean isOfUnknownTemperature(Requirement job, Position position, Part part) {
    return isUnusuallyWarmOrCold(job)
        && !(part instanceof Part.Pipe)
        && (part.facts().coldest().isEmpty() || part.facts().hottest().isEmpty());
  }

  /**
   * A tool that takes no air has the highest pressure at it that can occur, or what a regulator holds, however low that
   * is set.
   */
  static boolean isToolOverPressured(Requirement job) {
    SupplyRange least =
        job.heldAtToolWhenSetLowest().map(SupplyRange::of).orElseGet(job::pressuresAtTool);
    return job.toolRating().filter(least::exceeds).isPresent();
  }

  /** It depends on what a regulator is set to whether the tool is kept within its maker's limit. */
  static boolean mayBeSetTooHighForTool(Requirement job) {
    return !isToolOverPressured(job)
        && job.toolRating().filter(job.pressuresAtTool()::exceeds).isPresent();
  }

  /** Only a regulator keeps the tool within its maker's limit, whatever it is set to. */
  static boolean isToolSparedByRegulator(Requirement job) {
    return job.toolRating()
        .filter(limit -> !job.pressuresAtTool().exceeds(limit))
        .filter(job.pressuresAtTool()::canExceed)
        .isPresent();
  }

  /**
   * Not allowed by any rule, or by one of the place or works that the job names. Of the federal ones, each is on a
   * trade of its own, and only one holds.
   */
  static boolean isCleaningForbidden(Requirement job) {
    List<Ruling> rulings = cleaningRulings(job);
    List<Ruling> law =
        rulings.stream().filter(ruling -> !ruling.rule().isAdvice()).toList();
    return !law.isEmpty()
        && (law.stream().noneMatch(PartChecks::isAllowed)
            || law.stream().anyMatch(Forbidden::isBroken));
  }

  /** What the rules of the job say of the pressure of a tool that cleans with air; nothing for another. */
  static List<Ruling> cleaningRulings(Requirement job) {
    return job.cleaningDeadEnd().isEmpty() ? List.of() : Forbidden.ofCleaning(job);
  }

  static boolean isAllowed(Ruling ruling) {
    return ruling.judgement() != Judgement.NOT_ALLOWED;
  }

  /** Whether a safety rule forbids what the job tells, whatever the parts. */
  static boolean isForbidden(Requirement job) {
    return Forbidden.ofJob(job).stream().anyMatch(Forbidden::isBroken);
  }

  static boolean isForbidden(Requirement job, Position position, Part part) {
    return Forbidden.ofPart(job, part).stream().anyMatch(Forbidden::isBroken);
  }

  static boolean mayBeForbidden(Requirement job, Position position, Part part) {
    return Forbidden.ofPart(job, part).stream().anyMatch(Forbidden::isOpen);
  }

  /** Shorter, however long it is, than the least that it can have to be. */
  static boolean isTooShort(Requirement job, Position position, Part part) {
    return part instanceof Part.Hose hose
        && position
            .reach()
            .filter(reach -> hose.longest().compareTo(reach.least()) < 0)
            .isPresent();
  }

  /** Perhaps long enough for the least that it can have to be, and perhaps not for the most. */
  static boolean mayBeTooShort(Requirement job, Position position, Part part) {
    return part instanceof Part.Hose hose
        && !isTooShort(job, position, part)
        && position
            .reach()
            .filter(reach -> hose.shortest().compareTo(reach.most()) < 0)
            .isPresent();
  }

  /** Longer than it may be, however long it is. */
  static boolean isTooLong(Requirement job, Position position, Part part) {
    return part instanceof Part.Hose hose
        && position
            .longest()
            .filter(longest -> hose.shortest().compareTo(longest) > 0)
            .isPresent();
  }

  /** Perhaps longer than it may be, where it is not known how long it is. */
  static boolean mayBeTooLong(Requirement job, Position position, Part part) {
    return part instanceof Part.Hose hose
        && !isTooLong(job, position, part)
        && position
            .longest()
            .filter(longest -> hose.longest().compareTo(longest) > 0)
            .isPresent();
  }

  static boolean hasNoMaterial(Requirement job) {
    return MaterialFit.good(job, true).isEmpty();
  }

  static boolean isOfWrongMaterial(Requirement job, Position position, Part part) {
    return MaterialFit.of(job, position, part) == MaterialFit.OUT;
  }

  static boolean isOfDoubtfulMaterial(Requirement job, Position position, Part part) {
    return MaterialFit.of(job, position, part) == MaterialFit.ASK;
  }

  /** Where sparks are a hazard the hose must carry off its charge. */
  static boolean keepsCharge(Requirement job, Position position, Part part) {
    return mustCarryOffCharge(job, position)
        && !part.facts().staticDissipative().orElse(true);
  }

  static boolean mayKeepCharge(Requirement job, Position position, Part part) {
    return mustCarryOffCharge(job, position) && part.facts().staticDissipative().isEmpty();
  }

  private static boolean mustCarryOffCharge(Requirement job, Position position) {
    return position.isHose()
        && job.environment().filter(Environment.SPARKING_HAZARD::equals).isPresent();
  }

  static boolean isUnguarded(Requirement job, Position position, Part part) {
    return job.isDragged()
        && position.isSocket()
        && position.isBehindHose()
        && !part.facts().isSleeveGuarded();
  }

  static boolean isUnvented(Requirement job, Position position, Part part) {
    return job.isVentRequired() && position.isSocket() && !part.facts().isVented();
  }

  static boolean isKeptForOtherAir(Requirement job, Position position, Part part) {
    Optional<Lubrication> kept = part.facts().lubrication();
    return kept.isPresent()
        && job.lubricationAt(position.slot()).filter(here -> here != kept.get()).isPresent();
  }

  /** On a line of which nobody told whether it has a lubricator, what is kept for one kind of air depends on it. */
  static boolean isKeptOnUnknownLine(Requirement job, Position position, Part part) {
    return job.lubrication().isEmpty() && part.facts().lubrication().isPresent();
  }

  /** Of an unmarked part that is there, somebody must find out the rating. */
  static boolean isUnmarkedAndThere(Requirement job, Position position, Part part) {
    return part.facts().rating().isEmpty()
        && part.facts().isExisting()
        && !(part instanceof Part.Pipe);
  }

  /** The parts of an assembly that break a rule, in order from the outlet. */
  static List<Part> breaking(Assembly assembly, OfPart check) {
    return assembly.slotParts().stream()
        .filter(each -> check.isBroken(assembly.requirement(), each.position(), each.part()))
        .map(Placed::part)
        .toList();
  }
}
