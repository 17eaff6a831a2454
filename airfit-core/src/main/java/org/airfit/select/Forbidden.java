package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.line.Wall;
import org.airfit.quantity.Length;
import org.airfit.safety.Judgement;
import org.airfit.safety.Ruling;
import org.airfit.safety.SafetyRule;
import org.airfit.safety.Situation;

/**
 * What the safety rules that forbid something say of a job and of each part in its slot, with what the job and that
 * part tell together. What the rules on cleaning pressure say of a job is judged by {@link Rule#CLEANING_PRESSURE}.
 *
 * <p>The rules of a place, of general practice and of one's own are broken where they forbid. A bundled federal rule
 * is on one trade, and a job does not tell its trade: where it forbids, somebody must be asked; so where advice is against it. Of a rule of one's own
 * every fact that nobody told is a question; of a bundled one only those that a job can tell.
 */
final class Forbidden {

  private Forbidden() {}

  static boolean isBroken(Ruling ruling) {
    return ruling.judgement() == Judgement.NOT_ALLOWED
        && !ForbiddingRules.isOfOneTrade(ruling.rule())
        && !ruling.rule().isAdvice();
  }

  static boolean isOpen(Ruling ruling) {
    return ruling.judgement() == Judgement.DEPENDS
        || (ruling.judgement() == Judgement.NOT_ALLOWED && !isBroken(ruling));
  }

  /** What each of them says of the job, whatever the parts; those that do not apply are left out. */
  static List<Ruling> ofJob(Requirement job) {
    List<Ruling> rulings = new ArrayList<>();
    for (SafetyRule rule : job.forbidding()) {
      Ruling ruling = Ruling.of(rule, ofJob(job, rule).build());
      boolean isJudgedApart = ForbiddingRules.limits(rule, "cleaning pressure")
          && ruling.judgement() != Judgement.DEPENDS;
      if (ruling.judgement() != Judgement.DOES_NOT_APPLY && !isJudgedApart) {
        rulings.add(ruling);
      }
    }
    return List.copyOf(rulings);
  }

  /** What the rules on cleaning pressure say of the job, those that depend on what is not known left out. */
  static List<Ruling> ofCleaning(Requirement job) {
    return job.forbidding().stream()
        .filter(rule -> ForbiddingRules.limits(rule, "cleaning pressure"))
        .map(rule -> Ruling.of(rule, ofJob(job, rule).build()))
        .filter(ruling -> ruling.judgement() != Judgement.DOES_NOT_APPLY
            && ruling.judgement() != Judgement.DEPENDS)
        .toList();
  }

  /** What those that single parts decide say of one. */
  static List<Ruling> ofPart(Requirement job, Part part) {
    List<Ruling> rulings = new ArrayList<>();
    for (SafetyRule rule : job.forbiddingParts()) {
      Ruling ruling = Ruling.of(rule, ofPart(job, rule, part));
      if (ruling.judgement() != Judgement.DOES_NOT_APPLY) {
        rulings.add(ruling);
      }
    }
    return List.copyOf(rulings);
  }

  private static Situation.Builder ofJob(Requirement job, SafetyRule rule) {
    Optional<Boolean> plastic = job.plasticPipes();
    boolean isDoubtful =
        rule.excepts().contains(ForbiddingRules.PLASTIC_PIPE) && !plastic.orElse(false);
    Situation.Builder situation = told(job, rule, isDoubtful ? Optional.empty() : plastic);
    return ForbiddingRules.limits(rule, ForbiddingRules.SHARE_OF_RATING)
            && ForbiddingRules.isUpwards(rule)
        ? situation.notKnown(
            "lowest rating") // a line has many ratings, and such a rule means no one of them
        : situation;
  }

  private static Situation.Builder told(
      Requirement job, SafetyRule rule, Optional<Boolean> plastic) {
    Situation.Builder situation = ForbiddingRules.isOwn(rule)
        ? JobSituation.withAllQuestions(job)
        : JobSituation.withQuestions(job);
    if (plastic.isEmpty()) {
      return situation.notKnown(ForbiddingRules.PLASTIC_PIPE);
    }
    return plastic.get() ? situation.plasticPipe() : situation;
  }

  private static Situation ofPart(Requirement job, SafetyRule rule, Part part) {
    Optional<Boolean> plastic = isPlastic(part);
    if (ForbiddingRules.limitsParts(rule)) {
      plastic = ForbiddingRules.either(plastic, job.plasticPipes());
    }
    Situation.Builder situation = told(job, rule, plastic);
    if (part instanceof Part.Hose hose) {
      // a bore that is not known is judged at its worst end: the widest by what it may not exceed
      Length bore = ForbiddingRules.isUpwards(rule) ? hose.conduit().bore() : hose.widestBore();
      situation.toolOnHose(bore);
      if (ForbiddingRules.isOwn(rule)) {
        situation.perhapsHoseInMine(bore);
      }
    }
    return part.facts()
        .rating()
        .map(rating -> situation.ratedParts(job.highest(), rating))
        .orElseGet(() -> situation.notKnown("lowest rating"))
        .build();
  }

  /** Whether pipe, tube or hose is of plastic, or an adapter; empty where nobody knows. Couplings are none of these. */
  private static Optional<Boolean> isPlastic(Part part) {
    if (part instanceof Part.Hose hose) {
      return hose.conduit().wall().map(Wall::isPlastic);
    }
    if (part instanceof Part.Pipe pipe) {
      return pipe.conduit().wall().map(Wall::isPlastic);
    }
    return part instanceof Part.Adapter adapter
        ? adapter
            .conduit()
            .wall()
            .map(Wall::isPlastic)
            .or(() -> adapter.facts().material().map(Material.PLASTIC::equals))
        : Optional.of(false);
  }
}
