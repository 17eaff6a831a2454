package org.airfit.air;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Which class of particles a train reaches. */
final class ParticlesJudge {

  private final CountedStages counted;

  ParticlesJudge(CountedStages counted) {
    this.counted = counted;
  }

  PurityAnswer.Part judge(PurityClass asked) {
    Optional<PurityClass> told = Optional.empty();
    List<String> reasons = new ArrayList<>();
    boolean beyond = false;
    Optional<PurityClass> finest = Optional.empty();
    String finer = "";
    String last = "";
    for (int i = 0; i < counted.stages().size(); i++) {
      TreatmentStage stage = counted.told(i);
      boolean tells = stage.duty().flatMap(TreatmentStage.Duty::particles).isPresent();
      Optional<PurityClass> behind =
          counted.stages().get(i).duty().flatMap(TreatmentStage.Duty::particles);
      if (tells) {
        beyond = counted.explain(i, true, reasons);
      }
      if (behind.isPresent()) {
        told = behind;
        last = stage.name();
        if (finest.isEmpty()
            || stage.kind().mayShedDust()
            || behind.get().compareTo(finest.get()) <= 0) {
          finest = behind;
          finer = last;
        }
        reasons.clear();
        beyond = false;
        reasons.add("Behind " + last + " its maker warrants class " + behind.get() + ".");
      } else if (stage.kind().mayShedDust() && isBeforeLastTreatment(i)) {
        if (told.isPresent()) {
          reasons.clear();
          reasons.add("Dust may come out of " + stage.name() + ", a " + stage.kind()
              + ", and no filter behind it is told with a class of particles that counts.");
        }
        told = Optional.empty();
        finest = Optional.empty();
      } else if (tells) {
        told = Optional.empty();
      }
    }
    if (told.isEmpty() && reasons.isEmpty()) {
      reasons.add("No filter is told with a class of particles.");
    }
    if (told.isPresent() && lastTreatment() < counted.stages().size() - 1) {
      reasons.add("That is behind " + counted.told(lastTreatment()).name()
          + "; rust and scale of what follows it are not counted.");
    }
    if (told.isPresent()
        && !told.get().meets(asked)
        && finest.filter(better -> better.meets(asked)).isPresent()) {
      reasons.add(
          0,
          "Behind " + finer + " its maker warrants class " + finest.get() + ", and behind "
              + last + " nobody told a finer one than " + told.get()
              + ": put the finer filter last.");
      told = Optional.empty();
    }
    return PurityAnswer.Part.judged(asked, told, false, beyond, reasons);
  }

  private int lastTreatment() {
    return counted.train().lastTreatment();
  }

  private boolean isBeforeLastTreatment(int stage) {
    return stage <= lastTreatment();
  }
}
