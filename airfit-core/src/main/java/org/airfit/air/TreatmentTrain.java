package org.airfit.air;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;

/**
 * A train of coolers, filters and dryers at its worst: what comes to each stage, and the water along it.
 *
 * @param supply the air that comes in
 * @param stages the stages in the order of the air
 * @param along the train at each of them
 */
record TreatmentTrain(TreatmentSupply supply, List<TreatmentStage> stages, List<Point> along) {

  /**
   * The train at one of its stages; see {@code AirTreatment.At}.
   *
   * @param stage the stage
   * @param inlet the pressure in front of it
   * @param outlet the pressure behind it
   * @param hottest the hottest air that comes to it
   * @param loss the pressure that it takes
   */
  record Point(
      TreatmentStage stage,
      Range<GaugePressure> inlet,
      Range<GaugePressure> outlet,
      Optional<Temperature> hottest,
      Optional<FilterLoss> loss) {}

  /** Refuses stages that leave nothing above the atmosphere. */
  static TreatmentTrain of(TreatmentSupply supply, List<TreatmentStage> stages) {
    return new TreatmentTrain(supply, stages, along(supply, stages));
  }

  private static List<Point> along(TreatmentSupply supply, List<TreatmentStage> stages) {
    List<Point> along = new ArrayList<>();
    Range<GaugePressure> inlet = supply.pressure();
    for (TreatmentStage stage : stages) {
      GaugePressure low = inlet.least();
      GaugePressure high = inlet.most();
      Optional<FilterLoss> most =
          stage.loss().map(told -> told.at(supply.flow().most(), low, supply.atmosphere()));
      PressureDrop least = stage
          .loss()
          .map(told ->
              told.at(supply.flow().least(), high, supply.atmosphere()).clean().least())
          .orElse(PressureDrop.ofPascals(0.0));
      GaugePressure lowest =
          low.minus(most.map(FilterLoss::most).orElse(PressureDrop.ofPascals(0.0)));
      GaugePressure highest = high.minus(least);
      if (!(lowest.pascals() > 0.0)) {
        throw new IllegalArgumentException("pressure behind " + stage.name()
            + " must be above the atmosphere, was " + Digits.told(lowest.bar()) + " bar(g)"
            + " with all elements at change-out; give a higher pressure or fewer stages");
      }
      Range<GaugePressure> outlet =
          new Range<>(lowest, highest.compareTo(lowest) < 0 ? lowest : highest);
      Optional<Temperature> hottest = along.isEmpty()
          ? supply.discharge().map(Range::most)
          : Optional.of(along.get(along.size() - 1).stage().air().most());
      along.add(new Point(stage, inlet, outlet, hottest, most));
      inlet = outlet;
    }
    return List.copyOf(along);
  }

  /** The water along the first stages, those that do not count without their duty. */
  WaterAlongLine water(List<TreatmentStage> counted) {
    List<WaterPlace> places = new ArrayList<>();
    for (int i = 0; i < counted.size(); i++) {
      TreatmentStage stage = counted.get(i);
      Range<GaugePressure> pressure = along.get(i).outlet();
      Optional<Temperature> dewPoint = dewPoint(stage);
      boolean isChilled =
          stage.kind() == TreatmentKind.REFRIGERATED_DRYER; // has a drain, however far it dries
      places.add(new WaterPlace(
          stage.name(),
          stage.air(),
          new Range<>(
              pressure.least().absolute(supply.atmosphere()),
              pressure.most().absolute(supply.atmosphere())),
          dewPoint,
          stage.isDrained() || (isChilled && dewPoint.isEmpty())));
    }
    return new WaterAlongLine(
        supply.flow().most().dryAirMassFlow(), supply.driest(), supply.dampest(), places);
  }

  /** Up to which flow the maker's rating of a stage holds in such air; empty where that is not told. */
  Optional<TreatmentRating.Capacity> capacity(
      TreatmentStage stage, GaugePressure lowest, Optional<Temperature> hottest) {
    return hottest.flatMap(most -> stage
        .duty()
        .flatMap(duty -> duty.rating().capacity(lowest, most, supply.room().most())));
  }

  /** The pressure dew point that the maker of a stage tells. */
  static Optional<Temperature> dewPoint(TreatmentStage stage) {
    return stage.duty().flatMap(TreatmentStage.Duty::dewPoint);
  }

  /** Whether it is a dryer of which nobody told how far it dries. */
  static boolean isUntoldDryer(TreatmentStage stage) {
    return stage.kind().isDryer() && dewPoint(stage).isEmpty();
  }

  /** Where the last filter or dryer stands; -1 where there is none. */
  int lastTreatment() {
    int last = -1;
    for (int i = 0; i < stages.size(); i++) {
      TreatmentKind kind = stages.get(i).kind();
      last = kind.isDryer() || kind.isFilter() ? i : last;
    }
    return last;
  }
}
