package org.airfit.air;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.Density;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.TemperatureUnit;

/** Which class of water a train reaches, and which of its dryers do not count. */
final class WaterJudge {

  /** Dry air at 20 °C and 1 bar(a), the state at which contents are counted [kg/m³]. */
  private static final double DRY_DENSITY = 1.0e5 / (AirState.GAS_CONSTANT * 293.15);

  private final CountedStages counted;

  WaterJudge(CountedStages counted) {
    this.counted = counted;
  }

  PurityAnswer.Part judge(PurityClass asked) {
    List<String> reasons = new ArrayList<>();
    boolean beyond = false;
    for (int i = 0; i < counted.stages().size(); i++) {
      beyond |= counted.explain(i, TreatmentTrain.dewPoint(counted.told(i)).isPresent(), reasons);
    }
    WaterAlongLine water = counted.train().water(counted.stages());
    List<WaterAlongLine.AtPlace> warm = water.warmDay();
    WaterAlongLine.AtPlace end = warm.get(warm.size() - 1);
    List<WaterAlongLine.AtMost> most = water.most();
    WaterAlongLine.AtPlace wettest = most.get(most.size() - 1).most();
    double liquid =
        Math.max(wettest.carriedOn().kilogramsPerSecond(), end.carriedOn().kilogramsPerSecond());
    boolean isNotTold = false;
    for (TreatmentStage stage : counted.train().stages()) {
      if (TreatmentTrain.isUntoldDryer(stage)) {
        isNotTold = true;
        reasons.add(noDewPoint(stage));
      }
    }
    boolean stands = stand(water, reasons);
    Optional<PurityClass> told;
    if (liquid > 0.0) {
      double content = liquid / water.dryAir().kilogramsPerSecond() * DRY_DENSITY;
      told = Optional.of(AirPurity.ofLiquidWater(Density.ofKilogramsPerCubicMetre(content)));
      reasons.add("Liquid water can arrive at the end, behind " + end.name() + ": up to "
          + Digits.significant(1000.0 * content, 3) + " g/m³.");
    } else {
      Optional<DewPoint> dampest = water.dampestEnd();
      told = dampest.flatMap(AirPurity::ofWater);
      reasons.add(dampest
          .map(point -> "The dew point at the end is at most " + said(point)
              + (told(point) ? "." : ", for which there is no class."))
          .orElse("The dew point at the end lies outside of -100 to 100 °C."));
      dampest.flatMap(this::statedOtherwise).ifPresent(reasons::add);
    }
    boolean gap = isNotTold || (!beyond && hasGapOfDryer());
    boolean isSpoilt = stands && asked.compareTo(PurityClass.CLASS_9) <= 0;
    boolean meets = told.isPresent() && told.get().meets(asked);
    if (meets && !isSpoilt) {
      return PurityAnswer.Part.judged(asked, told, false, false, reasons);
    }
    boolean mayHoldLiquid = asked.compareTo(PurityClass.CLASS_6) > 0;
    if (gap || (meets && mayHoldLiquid)) {
      return PurityAnswer.Part.judged(asked, Optional.empty(), false, false, reasons);
    }
    return PurityAnswer.Part.judged(
        asked,
        meets || (isSpoilt && liquid == 0.0) ? Optional.empty() : told,
        true,
        beyond,
        reasons);
  }

  /**
   * Tells where water or ice stands behind the last dryer that counts; true where it may reach the end in another
   * amount than the air carries there.
   */
  private boolean stand(WaterAlongLine water, List<String> reasons) {
    List<WaterAlongLine.AtMost> most = water.most();
    boolean stands = false;
    for (int i = most.size() - 1; i >= 0; i--) {
      WaterPlace place = water.places().get(i);
      if (place.dewPoint().isPresent()) {
        break;
      }
      if (TreatmentDrains.standing(place, most.get(i).most()).isPresent()) {
        boolean freezes = TreatmentDrains.isBelowFreezing(place.air().least());
        stands |= freezes || i < most.size() - 1;
        reasons.add(
            freezes
                ? "Water can freeze in " + place.name() + ", which gets as cold as "
                    + counted.units().say(place.air().least())
                    + ": no drain takes ice out, and what thaws goes on. Dry the air to a dew"
                    + " point below that, or keep it warmer."
                : "Water can stand in " + place.name()
                    + ", which is not told to be drained, and go on from there.");
      }
    }
    return stands;
  }

  List<String> idleDryers() {
    List<String> idle = new ArrayList<>();
    for (int i = 0; i < counted.stages().size(); i++) {
      TreatmentStage stage = counted.told(i);
      if (stage.kind().isDryer() && !counted.counts(i)) {
        idle.add(counted.why(i));
      } else if (TreatmentTrain.isUntoldDryer(stage)) {
        idle.add(noDewPoint(stage));
      }
    }
    return idle;
  }

  /** Public texts state the dew point at the pressure of the line, or at 7 bar: told where the classes differ. */
  private Optional<String> statedOtherwise(DewPoint point) {
    DewPoint other;
    try {
      other =
          point.at(GaugePressure.ofBar(7.0).absolute(counted.train().supply().atmosphere()));
    } catch (IllegalArgumentException e) {
      return Optional.empty(); // outside of -100 to 100 °C there is nothing to tell
    }
    Optional<PurityClass> here = AirPurity.ofWater(point);
    Optional<PurityClass> there = AirPurity.ofWater(other);
    return here.equals(there)
        ? Optional.empty()
        : Optional.of("One public text states the dew point at 7 bar instead of the pressure of"
            + " the line: there it is " + said(other) + ", "
            + there.map(name -> "class " + name).orElse("without a class")
            + ". Agree on the pressure.");
  }

  /** To a tenth of a degree, which is more than it is worth and tells it from the limits of classes. */
  private String said(DewPoint point) {
    return point
            .temperature()
            .format(counted.units().either(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT), 1)
        + (point.isFrostPoint() ? " (frost point)" : "") + " at "
        + counted.units().say(point.pressure());
  }

  private static boolean told(DewPoint point) {
    return AirPurity.ofWater(point).isPresent();
  }

  /** Whether of a dryer whose dew point is told something else is not, without which it does not count. */
  private boolean hasGapOfDryer() {
    for (int i = 0; i < counted.stages().size(); i++) {
      if (TreatmentTrain.dewPoint(counted.told(i)).isPresent()
          && !counted.counts(i)
          && !counted.isBeyond(i)) {
        return true;
      }
    }
    return false;
  }

  private static String noDewPoint(TreatmentStage dryer) {
    return "No pressure dew point is told of " + dryer.name() + ".";
  }
}
