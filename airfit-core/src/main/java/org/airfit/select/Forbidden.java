package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.safety.Judgement;
import org.airfit.safety.Ruling;
import org.airfit.safety.SafetyRule;
import org.airfit.safety.Situation;

/**
 * What the safety rules that forbid something say of a job and of each part in its slot, with what the job and that
 * part tell together. What the rules on cleaning pressure say of a job is judged by {@link Rule#CLEANING_PRESSURE}.
 *
 * <p>The rules of a place, of general practice and of one's own are broken where they forbid. A bundled federal rule
 * is on one trade, and a job does not tell its trade: where it forbids, somebody must be asked. Of a rule of one's own
 * every fact that nobody told is a question; of a bundled one only those that a job can tell.
 */
final class Forbidden {

  private Forbidden() {}

  static boolean isBroken(Ruling ruling) {
    return ruling.judgement() == Judgement.NOT_ALLOWED
        && !ForbiddingRules.isOfOneTrade(ruling.rule());
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

  /** What those that hang on parts say of one, where it adds to what they say of the job. */
  static List<Ruling> ofPart(Requirement job, Part part) {
    List<Ruling> rulings = new ArrayList<>();
    for (SafetyRule rule : job.forbidding()) {
      if (ForbiddingRules.isOfParts(rule)) {
        Ruling ruling = Ruling.of(rule, ofPart(job, rule, part));
        if (ruling.judgement() != Judgement.DOES_NOT_APPLY
            && !ruling.equals(Ruling.of(rule, ofJob(job, rule).build()))) {
          rulings.add(ruling);
        }
      }
    }
    return List.copyOf(rulings);
  }

  private static Situation.Builder ofJob(Requirement job, SafetyRule rule) {
    Situation.Builder situation = ForbiddingRules.isOwn(rule)
        ? JobSituation.withAllQuestions(job)
        : JobSituation.withQuestions(job);
    List<Optional<Boolean>> pipes =
        job.pipeConduits().stream().map(Forbidden::isPlastic).toList();
    if (pipes.contains(Optional.of(true))) {
      situation.plasticPipe();
    } else if (pipes.contains(Optional.<Boolean>empty())
        || rule.excepts().contains(ForbiddingRules.PLASTIC_PIPE)) {
      situation.notKnown(ForbiddingRules.PLASTIC_PIPE);
    }
    if (ForbiddingRules.limits(rule, ForbiddingRules.SHARE_OF_RATING)
        && ForbiddingRules.isUpwards(rule)) {
      situation.notKnown("lowest rating"); // of which part, no rule can mean
    }
    return situation;
  }

  private static Situation ofPart(Requirement job, SafetyRule rule, Part part) {
    Situation.Builder situation = ofJob(job, rule);
    Optional<Boolean> plastic = Optional.of(false);
    if (part instanceof Part.Hose hose) {
      situation.toolOnHose(hose.conduit().bore());
      if (ForbiddingRules.isOwn(rule)) {
        situation.perhapsHoseInMine(hose.conduit().bore());
      }
      plastic = isPlastic(hose.conduit());
    } else if (part instanceof Part.Adapter adapter) {
      plastic = isPlastic(adapter.conduit())
          .or(() -> adapter.facts().material().map(Material.PLASTIC::equals));
    }
    if (plastic.isEmpty()) {
      situation.notKnown(ForbiddingRules.PLASTIC_PIPE);
    } else if (plastic.get()) {
      situation.plasticPipe();
    }
    if (part.facts().rating().isPresent()) {
      situation.ratedParts(job.highest(), part.facts().rating().get());
    } else {
      situation.notKnown("lowest rating");
    }
    return situation.build();
  }

  /** Whether it is of plastic; empty where nobody knows. */
  private static Optional<Boolean> isPlastic(Conduit conduit) {
    return conduit.wall().map(Wall::isPlastic);
  }
}
