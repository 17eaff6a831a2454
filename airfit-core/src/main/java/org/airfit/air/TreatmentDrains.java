package org.airfit.air;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;

/** Where liquid water stands or gathers in a train, and whether a drain takes it out or freezes. */
final class TreatmentDrains {

  private final TreatmentTrain train;

  TreatmentDrains(TreatmentTrain train) {
    this.train = train;
  }

  /** Where the liquid comes from that reaches the next stage, and why it is not drained. */
  Optional<String> liquidBefore(List<TreatmentStage> counted) {
    if (counted.isEmpty()) {
      return ofCompressor();
    }
    WaterAlongLine water = train.water(counted);
    List<WaterAlongLine.AtMost> most = water.most();
    for (int i = most.size() - 1; i >= 0; i--) {
      WaterPlace place = water.places().get(i);
      Optional<String> stands = standing(place, most.get(i).most());
      if (stands.isPresent()) {
        return Optional.of(place.name() + ", "
            + (counted.get(i).kind().isDryer()
                ? "a dryer that does not count here"
                : stands.get()));
      }
      if (place.drains() && !isBelowFreezing(place.air().least())) {
        return Optional.empty(); // what comes on from the places in front leaves here
      }
    }
    return Optional.empty();
  }

  private Optional<String> ofCompressor() {
    Range<GaugePressure> pressure = train.supply().pressure();
    return train
        .supply()
        .discharge()
        .map(air -> new WaterPlace(
            "the compressor",
            air,
            new Range<>(
                pressure.least().absolute(train.supply().atmosphere()),
                pressure.most().absolute(train.supply().atmosphere())),
            Optional.empty(),
            false))
        .filter(place -> train.supply().dampest().humidityRatio()
            > place.saturated(
                place.air().least().kelvins(), place.pressure().most().pascals()))
        .map(place -> place.name() + ", behind which no drain is told");
  }

  /** Why water stays in a place; empty where there is none, or it leaves by a drain or in a dryer. */
  static Optional<String> standing(WaterPlace place, WaterAlongLine.AtPlace most) {
    if (!(most.liquid().kilogramsPerSecond() > 0.0) || place.dewPoint().isPresent()) {
      return Optional.empty();
    }
    if (!place.isDrained()) {
      return Optional.of("which is not told to be drained");
    }
    return isBelowFreezing(place.air().least())
        ? Optional.of("where it freezes, and no drain takes ice out")
        : Optional.empty();
  }

  /** Whether water falls out in a filter, or comes on to it as liquid. */
  boolean gathersWater(List<TreatmentStage> counted, TreatmentStage filter, Optional<String> wet) {
    if (wet.isPresent()) {
      return true;
    }
    List<TreatmentStage> upTo = new ArrayList<>(counted);
    upTo.add(filter);
    List<WaterAlongLine.AtMost> most = train.water(upTo).most();
    return most.get(most.size() - 1).most().liquid().kilogramsPerSecond() > 0.0;
  }

  /** Drains freeze in a cold room; a pipe is told with temperatures of its own. */
  String frost(List<TreatmentStage> counted, TreatmentStage stage, UnitSystem units) {
    Temperature coldest = train.supply().room().least();
    if (!isBelowFreezing(coldest)) {
      return "";
    }
    List<TreatmentStage> upTo = new ArrayList<>(counted);
    upTo.add(stage);
    List<WaterAlongLine.AtMost> most = train.water(upTo).most();
    for (int i = 0; i < most.size(); i++) {
      if (upTo.get(i).kind() != TreatmentKind.PIPE
          && most.get(i).most().liquid().kilogramsPerSecond() > 0.0) {
        return "The room gets as cold as " + units.say(coldest) + ": water that falls out at "
            + most.get(i).most().name() + " may freeze there and in its drain, and nobody told"
            + " what " + stage.name() + " does then. Keep the room from frost, and tell it so.";
      }
    }
    return "";
  }

  static boolean isBelowFreezing(Temperature air) {
    return air.celsius() < 0.0;
  }
}
