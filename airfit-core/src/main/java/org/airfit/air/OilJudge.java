package org.airfit.air;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.Density;
import org.airfit.quantity.DensityUnit;

/** Which class of oil, mist and vapour together, a train reaches. */
final class OilJudge {

  private final CountedStages counted;

  OilJudge(CountedStages counted) {
    this.counted = counted;
  }

  /** How much of something is left, and whether that is for certain. */
  private static final class Left {

    private final String what;
    private Optional<Density> most;
    private boolean isGap;
    private boolean isBeyond;

    Left(String what, Optional<Density> most) {
      this.what = what;
      this.most = most;
    }

    boolean isWorseThan(PurityClass asked) {
      return !isGap
          && asked != PurityClass.CLASS_0
          && most.filter(left -> !AirPurity.ofOil(left).meets(asked)).isPresent();
    }
  }

  PurityAnswer.Part judge(PurityClass asked) {
    Left mistLeft = new Left("mist", counted.train().supply().mist());
    Left vapour = new Left("vapour", counted.train().supply().vapour());
    List<String> reasons = new ArrayList<>();
    for (int i = 0; i < counted.stages().size(); i++) {
      Optional<TreatmentStage.Duty> duty = counted.told(i).duty();
      Optional<TreatmentStage.Retention> ofMist = duty.flatMap(TreatmentStage.Duty::mist);
      Optional<TreatmentStage.Retention> ofVapour = duty.flatMap(TreatmentStage.Duty::vapour);
      counted.explain(i, ofMist.isPresent() || ofVapour.isPresent(), reasons);
      if (ofMist.isPresent()) {
        leave(i, mistLeft, ofMist.get(), reasons);
      }
      if (ofVapour.isPresent()) {
        leave(i, vapour, ofVapour.get(), reasons);
        damp(i, reasons);
      }
    }
    say(mistLeft, reasons);
    say(vapour, reasons);
    Optional<PurityClass> told = mistLeft.most.flatMap(
        one -> vapour.most.map(other -> AirPurity.ofOil(Density.ofKilogramsPerCubicMetre(
            one.kilogramsPerCubicMetre() + other.kilogramsPerCubicMetre()))));
    boolean isGap = mistLeft.isGap || vapour.isGap;
    boolean isWorse = mistLeft.isWorseThan(asked) || vapour.isWorseThan(asked);
    if (isGap && told.filter(left -> left.meets(asked)).isEmpty()) {
      return PurityAnswer.Part.judged(
          asked, Optional.empty(), isWorse, mistLeft.isBeyond || vapour.isBeyond, reasons);
    }
    return PurityAnswer.Part.judged(
        asked, told, isWorse, mistLeft.isBeyond || vapour.isBeyond, reasons);
  }

  /** What a filter leaves: what its maker warrants where no more comes than he tested it with. */
  private void leave(
      int stage, Left left, TreatmentStage.Retention retention, List<String> reasons) {
    if (!counted.counts(stage)) {
      left.isBeyond |= counted.isBeyond(stage);
      left.isGap |= !counted.isBeyond(stage);
      return;
    }
    String name = counted.told(stage).name();
    String tested = said(retention.testedWith());
    if (left.most.isEmpty()) {
      reasons.add("Nobody told how much oil " + left.what + " comes to " + name
          + "; its maker tells what it leaves of " + tested + " at most.");
    } else if (retention.isTestedWith(left.most.get())) {
      left.most = Optional.of(retention.leavesOf(left.most.get()));
      left.isGap = false;
      left.isBeyond = false;
    } else {
      reasons.add(said(left.most.get()) + " of oil " + left.what + " can come to " + name
          + "; its maker tells what it leaves of " + tested
          + " at most, so it counts for nothing here.");
      left.isGap = true;
    }
  }

  /** Carbon that counts in air that no dryer has dried. */
  private void damp(int stage, List<String> reasons) {
    boolean isDried = counted.stages().subList(0, stage).stream()
        .anyMatch(before -> TreatmentTrain.dewPoint(before).isPresent());
    if (counted.counts(stage) && !isDried) {
      reasons.add("Damp air can come to " + counted.told(stage).name()
          + ", and damp carbon takes up less vapour: ask its maker, or dry the air in front.");
    }
  }

  /** What is not told stands first, as it decides. */
  private static void say(Left left, List<String> reasons) {
    if (left.most.isPresent()) {
      reasons.add("Oil " + left.what + " left at most: " + said(left.most.get()) + ".");
    } else {
      reasons.add(
          0,
          "Nobody told how much oil " + left.what + " is left."
              + (left.what.equals("vapour")
                  ? " A coalescing filter takes none out: ask the makers of compressor and"
                      + " filters."
                  : ""));
    }
  }

  private static String said(Density content) {
    return Digits.significant(content.in(DensityUnit.MILLIGRAM_PER_CUBIC_METRE), 4) + " mg/m³";
  }
}
