package org.airfit.select;

import org.airfit.safety.Situation;

/** What a job tells, as far as a safety rule may ask. */
final class JobSituation {

  private JobSituation() {}

  /**
   * What was told, with the pressures at which the supply can stand; of the parts only whether there
   * are couplings, hoses, a whip hose before the tool and a lubricator.
   */
  static Situation.Builder of(Requirement job) {
    Situation.Builder situation =
        Situation.describe().linePressure(job.pressures().lowest(), job.highest());
    if (job.layout().hasCoupling()) {
      situation.couplerPressure(job.highest());
    }
    if (job.layout().hasHose()) {
      situation.toolOnHose();
    }
    if (job.isImpactTool()) {
      situation.impactTool();
    }
    if (job.hasWhipHose()) {
      situation.whipHose();
    }
    if (job.isAutomaticFeed()) {
      situation.automaticFeed(job.pressuresAtTool().highest());
    }
    if (job.isBlasting()) {
      situation.blasting();
    }
    if (job.isPainting()) {
      situation.painting();
    }
    if (job.lubrication().filter(Lubrication.LUBRICATED::equals).isPresent()) {
      situation.lubricatedLine();
    }
    job.cleaningDeadEnd().ifPresent(situation::cleaning);
    return situation;
  }

  /** The same for cautions: where any hose goes straight to the tool, no coupling sits on it, as with a whip hose. */
  static Situation.Builder ofCautions(Requirement job) {
    Situation.Builder situation = of(job);
    return job.layout().endsInHose() ? situation.whipHose() : situation;
  }

  /** The same with the questions that a job leaves open where nobody told. */
  static Situation.Builder withQuestions(Requirement job) {
    Situation.Builder situation = of(job);
    if (job.lubrication().isEmpty()) {
      situation.notKnown("lubricated line");
    }
    if (!job.isWhipHoseTold()) {
      situation.notKnown("whip hose");
    }
    return situation;
  }

  /** The same with all that no job can tell, for rules of one's own: they were brought because they matter here. */
  static Situation.Builder withAllQuestions(Requirement job) {
    Situation.Builder situation = withQuestions(job)
        .notKnown("maintenance")
        .notKnown("hoisted by hose")
        .notKnown("mine")
        .notKnown("military construction")
        .notKnown("receiver rating");
    job.cleaningDeadEnd()
        .ifPresent(deadEnd -> situation.notKnown("forms or mill scale").perhapsClothing(deadEnd));
    return situation;
  }
}
