package org.airfit.air;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.Density;
import org.airfit.quantity.MassFlow;
import org.airfit.working.UnitSystem;

/** What each stage of a train counts for in the worst air, and why one does not. */
final class CountedStages {

  private final TreatmentTrain train;
  private final UnitSystem units;
  private final TreatmentDrains drains;

  /** The stages, those that do not count without their duty. */
  private final List<TreatmentStage> stages = new ArrayList<>();

  /** Why a stage does not count; blank where it does. */
  private final List<String> why = new ArrayList<>();

  private final List<Boolean> isBeyond = new ArrayList<>();

  /** The oil mist that comes to the next stage at most, as far as it is told. */
  private Optional<Density> mist;

  private MistBehind mistBehind;

  /** What is known of oil mist behind the stages that were looked at. */
  private enum MistBehind {
    COMES,
    NOT_TOLD,
    CAUGHT
  }

  CountedStages(TreatmentTrain train, UnitSystem units) {
    this.train = train;
    this.units = units;
    this.drains = new TreatmentDrains(train);
    this.mist = train.supply().mist();
    this.mistBehind = MistBehind.COMES;
    if (mist.isEmpty()) {
      this.mistBehind = MistBehind.NOT_TOLD;
    } else if (isMistZero()) {
      this.mistBehind = MistBehind.CAUGHT;
    }
    for (TreatmentTrain.Point at : train.along()) {
      look(at);
    }
  }

  /** The stages, those that do not count without their duty. */
  List<TreatmentStage> stages() {
    return stages;
  }

  /** The stage as it was told. */
  TreatmentStage told(int stage) {
    return train.stages().get(stage);
  }

  TreatmentTrain train() {
    return train;
  }

  UnitSystem units() {
    return units;
  }

  boolean counts(int stage) {
    return why.get(stage).isEmpty();
  }

  /** Why a stage does not count; blank where it does. */
  String why(int stage) {
    return why.get(stage);
  }

  /** Whether a stage is loaded with what it is not made for, so that it surely does nothing. */
  boolean isBeyond(int stage) {
    return isBeyond.get(stage);
  }

  private void look(TreatmentTrain.Point at) {
    TreatmentStage stage = at.stage();
    Optional<String> wet =
        stage.duty().isPresent() ? drains.liquidBefore(stages) : Optional.empty();
    String beyond = stage.duty().isPresent() ? beyond(at, wet) : "";
    String missing = stage.duty().isPresent() && beyond.isEmpty() ? missing(at, wet) : "";
    boolean counts = beyond.isEmpty() && missing.isEmpty();
    stage
        .duty()
        .flatMap(TreatmentStage.Duty::mist)
        .filter(retention -> beyond.isEmpty())
        .ifPresent(retention -> catchMist(retention, counts));
    why.add(beyond.isEmpty() ? missing : beyond);
    isBeyond.add(!beyond.isEmpty());
    stages.add(
        counts
            ? stage
            : new TreatmentStage(
                stage.name(),
                stage.kind(),
                stage.air(),
                stage.isDrained(),
                Optional.empty(),
                stage.loss()));
  }

  /** A filter that counts catches the mist where no more comes than it was tested with. */
  private void catchMist(TreatmentStage.Retention retention, boolean counts) {
    boolean isWithin = mist.filter(retention::isTestedWith).isPresent();
    if (counts && isWithin) {
      mist = Optional.of(retention.leavesOf(mist.get()));
      mistBehind = MistBehind.CAUGHT;
    } else if (mistBehind == MistBehind.COMES) {
      mistBehind = MistBehind.NOT_TOLD;
    }
  }

  /** Why a stage is loaded with what it is not made for; blank where it is not. */
  private String beyond(TreatmentTrain.Point at, Optional<String> wet) {
    TreatmentStage stage = at.stage();
    boolean suffers = stage.kind().isDryer() || stage.kind().isSpoiltByLiquid();
    if (suffers && wet.isPresent() && isWaterKnown()) {
      return "Liquid water can reach " + stage.name() + " from " + wet.get() + ": " + stage.name()
          + " counts for nothing; drain that first.";
    }
    if (stage.kind().isFilter()
        && !stage.isDrained()
        && isWaterKnown()
        && drains.gathersWater(stages, stage, wet)) {
      return "Water can gather in " + stage.name() + ", which is not told to be drained: it"
          + " counts for nothing; fit a drain there.";
    }
    if (stage.kind().isSpoiltByLiquid() && mistBehind == MistBehind.COMES) {
      return "Oil mist can reach the " + filling(stage.kind()) + " of " + stage.name() + " and "
          + (stage.kind() == TreatmentKind.CARBON_FILTER ? "fill" : "spoil")
          + " it: it counts for nothing without a coalescing filter in front that counts.";
    }
    MassFlow most = train.supply().flow().most().massFlow();
    Optional<TreatmentRating.Capacity> capacity =
        train.capacity(stage, at.inlet().least(), at.hottest());
    if (capacity.isPresent()
        && capacity.get().flow().kilogramsPerSecond()
            < most.kilogramsPerSecond() * (1.0 - 1.0e-12)) {
      double percent =
          100.0 * most.kilogramsPerSecond() / capacity.get().flow().kilogramsPerSecond();
      return "Overloaded: " + stage.name() + ". In this air its maker's rating holds up to "
          + units.say(train.supply().flow().most().times(100.0 / percent)) + ", and "
          + units.say(train.supply().flow().most()) + " may come ("
          + Digits.significant(percent, 4) + " %).";
    }
    return "";
  }

  private static String filling(TreatmentKind kind) {
    return switch (kind) {
      case CARBON_FILTER -> "carbon";
      case MEMBRANE_DRYER -> "membrane";
      default -> "desiccant";
    };
  }

  /** What is not told of a stage, without which nobody can say what it does; blank where all is. */
  private String missing(TreatmentTrain.Point at, Optional<String> wet) {
    TreatmentStage stage = at.stage();
    TreatmentRating rating = stage.duty().orElseThrow().rating();
    if (at.hottest().isEmpty()) {
      return "Nobody told how hot the air comes from the compressor to " + stage.name()
          + ": tell its temperature behind the compressor (discharge), or the cooler in front.";
    }
    List<String> told = rating.gaps(
        at.inlet().least(), at.hottest().get(), train.supply().room().most(), units);
    if (!told.isEmpty()) {
      return stage.name() + ": its maker has not told what it does at " + String.join("; ", told)
          + ".";
    }
    if (stage.kind() == TreatmentKind.REFRIGERATED_DRYER
        && rating.room().isEmpty()
        && rating.byRoom().isEmpty()) {
      return stage.name() + ": its maker has not told up to which temperature of the room it"
          + " holds; it gives its heat off there. Tell the room that it is rated at.";
    }
    if (wet.isPresent()) {
      return "Liquid water can reach " + stage.name() + " from " + wet.get()
          + ", and nobody told what " + stage.name() + " does then; drain that first.";
    }
    if (stage.kind().isFilter() && !stage.isDrained() && drains.gathersWater(stages, stage, wet)) {
      return "Water can gather in " + stage.name() + ", which is not told to be drained, and"
          + " nobody told how far the air in front of it is dried.";
    }
    if (stage.duty().flatMap(TreatmentStage.Duty::mist).isPresent()
        && !stage.isDrained()
        && !isMistZero()) {
      return stage.name() + " gathers oil, and no drain is told that takes it out: fit one, or"
          + " the oil goes on in the end.";
    }
    if (stage.kind().isSpoiltByLiquid() && mistBehind == MistBehind.NOT_TOLD) {
      return "Nobody told how much oil mist comes to the " + filling(stage.kind()) + " of "
          + stage.name() + ", which it spoils: tell the mist behind the compressor, and a"
          + " coalescing filter in front that is told for it.";
    }
    return drains.frost(stages, stage, units);
  }

  private boolean isMistZero() {
    return train
        .supply()
        .mist()
        .filter(most -> most.kilogramsPerCubicMetre() == 0.0)
        .isPresent();
  }

  /** Whether no dryer stands in front of which nobody can say how far it dries. */
  private boolean isWaterKnown() {
    for (int i = 0; i < stages.size(); i++) {
      if (TreatmentTrain.isUntoldDryer(stages.get(i)) && !isBeyond.get(i)) {
        return false;
      }
    }
    return true;
  }

  /** Adds why a stage does not count that would do something here; tells whether one is overloaded. */
  boolean explain(int stage, boolean matters, List<String> reasons) {
    if (matters && !why.get(stage).isEmpty()) {
      reasons.add(why.get(stage));
      return isBeyond.get(stage);
    }
    return false;
  }
}
