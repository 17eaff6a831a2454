package org.airfit.air;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.Density;
import org.airfit.quantity.DensityUnit;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/**
 * A train of coolers, filters and dryers: which purity it reaches, where water falls out in it, and what pressure it
 * takes.
 *
 * <p>It is judged at its worst: the most flow, the hottest air that comes in, the warmest room, the lowest pressure
 * with all elements at change-out. A stage counts only for what its maker warrants, see {@link TreatmentStage}, and
 * only in air for which he warrants it, see {@link TreatmentRating}:
 *
 * <ul>
 *   <li><b>Water.</b> A dryer counts with its pressure dew point, unless liquid water reaches it. Behind it, the air is
 *       damper than the class nowhere, and no liquid arrives at the end.
 *   <li><b>Oil.</b> Mist and vapour are added. A coalescing filter takes no vapour out, so that a class of oil is told
 *       only where somebody told the vapour too. A carbon filter counts only behind a coalescing filter.
 *   <li><b>Particles.</b> The class that the maker tells, until a stage follows that may shed dust: desiccant,
 *       carbon, a vessel, a pipe. They are judged behind the last filter or dryer; a pipe behind that may add rust.
 * </ul>
 *
 * <p>What a maker's class of oil counts (mist alone, as tested after ISO 12500-1, or vapour too) is to be asked for:
 * that standard was not read. The answer never replaces a measurement, and is none for air to breathe.
 *
 * @param supply the air that comes in
 * @param stages the stages in the order of the air, at most 20, each with a name of its own
 */
public record AirTreatment(TreatmentSupply supply, List<TreatmentStage> stages) {

  private static final Caution NOT_TO_BREATHE = new Caution(
      "Not for breathing air",
      "A class of particles, water and oil says nothing of carbon monoxide and other gases. Air to breathe has its own"
          + " rules, equipment and tests; never take it from such a train without them.",
      Source.commonPractice("breathing air is a separate duty"));

  private static final Caution PRESSURE_OFF = new Caution(
      "Take the pressure off before opening a filter, a drain or a dryer",
      "A housing under pressure can throw its bowl or cover. Shut it off on both sides, lock it, let the pressure"
          + " out and see the gauge at zero before anything is opened.",
      Source.commonPractice("work on pressure vessels and filter housings"));

  private static final Caution CONDENSATE = new Caution(
      "Condensate is oily waste",
      "Condensate of a lubricated compressor holds oil. Collect it and part the oil from the water before it goes to a"
          + " sewer; local rules say how much oil may stay in it.",
      Source.commonPractice("condensate of lubricated compressors"));

  /**
   * The train at one of its stages.
   *
   * @param stage the stage
   * @param inlet the pressure in front of it, from that with all elements at change-out to that with clean ones
   * @param outlet the pressure behind it
   * @param hottest the hottest air that comes to it
   * @param loss the pressure that it takes at most flow and lowest pressure; empty where that is not told
   */
  public record At(
      TreatmentStage stage,
      Range<GaugePressure> inlet,
      Range<GaugePressure> outlet,
      Temperature hottest,
      Optional<FilterLoss> loss) {

    /**
     * Refuses what is null.
     *
     * @param stage the stage
     * @param inlet the pressure in front of it
     * @param outlet the pressure behind it
     * @param hottest the hottest air that comes to it
     * @param loss the pressure that it takes
     */
    public At {
      Objects.requireNonNull(stage, "stage");
      Objects.requireNonNull(inlet, "inlet");
      Objects.requireNonNull(outlet, "outlet");
      Objects.requireNonNull(hottest, "hottest");
      Objects.requireNonNull(loss, "loss");
    }

    /** {@return the stage and its pressure in one line} */
    @Override
    public String toString() {
      return stage + "; inlet " + inlet.least().shown() + " to " + inlet.most().shown() + ", up to "
          + hottest.shown();
    }
  }

  /**
   * Checks the components and copies the list.
   *
   * @param supply the air that comes in
   * @param stages the stages in the order of the air, at most 20, each with a name of its own
   * @throws IllegalArgumentException if there is no stage or more than 20, two have one name, or the stages take so
   *     much pressure that nothing is left above the atmosphere
   */
  public AirTreatment {
    Objects.requireNonNull(supply, "supply");
    stages = List.copyOf(Objects.requireNonNull(stages, "stages"));
    water(supply, stages, along(supply, stages)); // refuses names that stand twice
  }

  private static List<At> along(TreatmentSupply supply, List<TreatmentStage> stages) {
    List<At> along = new ArrayList<>();
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
            + " must be above the atmosphere, was " + lowest.shown()
            + " with all elements at change-out; give a higher pressure or fewer stages");
      }
      Range<GaugePressure> outlet =
          new Range<>(lowest, highest.compareTo(lowest) < 0 ? lowest : highest);
      Temperature hottest = along.isEmpty()
          ? stage.air().most()
          : along.get(along.size() - 1).stage().air().most();
      along.add(new At(stage, inlet, outlet, hottest, most));
      inlet = outlet;
    }
    return List.copyOf(along);
  }

  private static WaterAlongLine water(
      TreatmentSupply supply, List<TreatmentStage> counted, List<At> along) {
    List<WaterPlace> places = new ArrayList<>();
    for (int i = 0; i < counted.size(); i++) {
      TreatmentStage stage = counted.get(i);
      Range<GaugePressure> pressure = along.get(i).outlet();
      places.add(new WaterPlace(
          stage.name(),
          stage.air(),
          new Range<>(
              pressure.least().absolute(supply.atmosphere()),
              pressure.most().absolute(supply.atmosphere())),
          stage.duty().flatMap(TreatmentStage.Duty::dewPoint),
          stage.isDrained()));
    }
    return new WaterAlongLine(
        supply.flow().most().dryAirMassFlow(), supply.driest(), supply.dampest(), places);
  }

  /** {@return the train at each of its stages, at its worst} */
  public List<At> along() {
    return along(supply, stages);
  }

  /** {@return the water along the train, as if each dryer does what its maker says} */
  public WaterAlongLine water() {
    return water(supply, stages, along());
  }

  /** {@return the pressure that all stages take together while their elements are clean, of those that tell it} */
  public Range<PressureDrop> cleanLoss() {
    double least = 0.0;
    double most = 0.0;
    for (At at : along()) {
      least += at.loss().map(loss -> loss.clean().least().pascals()).orElse(0.0);
      most += at.loss().map(loss -> loss.clean().most().pascals()).orElse(0.0);
    }
    return new Range<>(PressureDrop.ofPascals(least), PressureDrop.ofPascals(most));
  }

  /** {@return the pressure that all stages take together with all elements at change-out, of those that tell it} */
  public PressureDrop changeOutLoss() {
    double sum = 0.0;
    for (At at : along()) {
      sum += at.loss().map(loss -> loss.most().pascals()).orElse(0.0);
    }
    return PressureDrop.ofPascals(sum);
  }

  /** {@return what to mind before anyone works on such a train or trusts it} */
  public List<Caution> cautions() {
    return List.of(PRESSURE_OFF, NOT_TO_BREATHE, CONDENSATE);
  }

  /**
   * Judges whether the train reaches a purity.
   *
   * @param asked the purity asked for
   * @param units the units to give reasons in
   * @return the answer for particles, water and oil
   */
  public PurityAnswer judge(AirPurity asked, UnitSystem units) {
    Objects.requireNonNull(asked, "asked");
    Judge judge = new Judge(this, Objects.requireNonNull(units, "units"));
    return new PurityAnswer(
        asked,
        judge.particles(asked.particles()),
        judge.water(asked.water()),
        judge.oil(asked.oil()));
  }

  /** Finds what each stage counts for, and from that the three answers. */
  private static final class Judge {

    /** Dry air at 20 °C and 1 bar(a), the state at which contents are counted [kg/m³]. */
    private static final double DRY_DENSITY = 1.0e5 / (AirState.GAS_CONSTANT * 293.15);

    private final AirTreatment train;
    private final UnitSystem units;
    private final List<At> along;

    /** The stages, those that do not count without their duty. */
    private final List<TreatmentStage> counted = new ArrayList<>();

    /** Why a stage does not count; blank where it does. */
    private final List<String> why = new ArrayList<>();

    private final List<Boolean> isBeyond = new ArrayList<>();

    Judge(AirTreatment train, UnitSystem units) {
      this.train = train;
      this.units = units;
      this.along = train.along();
      for (At at : along) {
        look(at);
      }
    }

    private void look(At at) {
      TreatmentStage stage = at.stage();
      String beyond = stage.duty().isPresent() ? beyond(at) : "";
      String missing = stage.duty().isPresent() && beyond.isEmpty() ? missing(at) : "";
      why.add(beyond.isEmpty() ? missing : beyond);
      isBeyond.add(!beyond.isEmpty());
      counted.add(
          beyond.isEmpty() && missing.isEmpty()
              ? stage
              : new TreatmentStage(
                  stage.name(),
                  stage.kind(),
                  stage.air(),
                  stage.isDrained(),
                  Optional.empty(),
                  stage.loss()));
    }

    /** Why a stage is loaded with what it is not made for; blank where it is not. */
    private String beyond(At at) {
      TreatmentStage stage = at.stage();
      if (stage.kind().isDryer() || stage.kind().isSpoiltByLiquid()) {
        Optional<String> wet = liquidBefore();
        if (wet.isPresent()) {
          return "Liquid water can reach " + stage.name() + " from " + wet.get()
              + ", which is not told to be drained: " + stage.name()
              + " counts for nothing; drain that first.";
        }
      }
      if (stage.kind() == TreatmentKind.CARBON_FILTER
          && !isMistZero()
          && counted.stream()
              .noneMatch(
                  before -> before.duty().flatMap(TreatmentStage.Duty::mist).isPresent())) {
        return "Oil mist can reach the carbon of " + stage.name()
            + " and fill it: it counts for nothing without a coalescing filter in front that counts.";
      }
      MassFlow most = train.supply.flow().most().massFlow();
      Optional<TreatmentRating.Capacity> capacity = capacity(at);
      if (capacity.isPresent()
          && capacity.get().flow().kilogramsPerSecond()
              < most.kilogramsPerSecond() * (1.0 - 1.0e-12)) {
        double percent =
            100.0 * most.kilogramsPerSecond() / capacity.get().flow().kilogramsPerSecond();
        return "Overloaded: " + stage.name() + ". In this air its maker's rating holds up to "
            + units.say(train.supply.flow().most().times(100.0 / percent)) + ", and "
            + units.say(train.supply.flow().most()) + " may come ("
            + Digits.significant(percent, 4) + " %).";
      }
      return "";
    }

    private Optional<TreatmentRating.Capacity> capacity(At at) {
      return at.stage()
          .duty()
          .flatMap(duty -> duty.rating()
              .capacity(at.inlet().least(), at.hottest(), train.supply.room().most()));
    }

    private String missing(At at) {
      List<String> told = at.stage()
          .duty()
          .map(duty -> duty.rating()
              .gaps(at.inlet().least(), at.hottest(), train.supply.room().most(), units))
          .orElse(List.of());
      return told.isEmpty()
          ? ""
          : at.stage().name() + ": its maker has not told what it does at "
              + String.join("; ", told) + ".";
    }

    private boolean isMistZero() {
      return train
          .supply
          .mist()
          .filter(mist -> mist.kilogramsPerCubicMetre() == 0.0)
          .isPresent();
    }

    /** Where the liquid comes from that reaches the next stage. */
    private Optional<String> liquidBefore() {
      if (counted.isEmpty()) {
        return Optional.empty();
      }
      List<WaterAlongLine.AtMost> most =
          AirTreatment.water(train.supply, counted, along).most();
      WaterAlongLine.AtPlace last = most.get(most.size() - 1).most();
      return last.carriedOn().kilogramsPerSecond() > 0.0
          ? Optional.of(last.name())
          : Optional.empty();
    }

    private PurityAnswer.Part part(
        PurityClass asked,
        Optional<PurityClass> told,
        boolean isWorseForCertain,
        boolean isBeyondHere,
        List<String> reasons) {
      PurityVerdict verdict;
      if (asked == PurityClass.NOT_SPECIFIED || (told.isPresent() && told.get().meets(asked))) {
        verdict = PurityVerdict.REACHED;
      } else if (asked == PurityClass.CLASS_0) {
        verdict = PurityVerdict.NOT_TOLD;
        reasons.add("Class 0 is what user and supplier agreed: hold their figures against these.");
      } else if (told.isPresent() || isWorseForCertain || isBeyondHere) {
        verdict = PurityVerdict.NOT_REACHED;
      } else {
        verdict = PurityVerdict.NOT_TOLD;
      }
      return new PurityAnswer.Part(asked, verdict, told, reasons);
    }

    /** Adds why a stage does not count that would do something here; tells whether one is overloaded. */
    private boolean explain(int stage, boolean matters, List<String> reasons) {
      if (matters && !why.get(stage).isEmpty()) {
        reasons.add(why.get(stage));
        return isBeyond.get(stage);
      }
      return false;
    }

    PurityAnswer.Part particles(PurityClass asked) {
      Optional<PurityClass> told = Optional.empty();
      List<String> reasons = new ArrayList<>();
      boolean beyond = false;
      String last = "";
      for (int i = 0; i < counted.size(); i++) {
        TreatmentStage stage = along.get(i).stage();
        boolean tells = stage.duty().flatMap(TreatmentStage.Duty::particles).isPresent();
        Optional<PurityClass> behind =
            counted.get(i).duty().flatMap(TreatmentStage.Duty::particles);
        if (tells) {
          beyond = explain(i, true, reasons);
        }
        if (behind.isPresent()) {
          told = behind;
          last = stage.name();
          reasons.clear();
          beyond = false;
          reasons.add("Behind " + last + " its maker warrants class " + behind.get() + ".");
        } else if (stage.kind().mayShedDust() && isBeforeLastTreatment(i)) {
          if (told.isPresent()) {
            reasons.add("Dust may come out of " + stage.name() + ", a " + stage.kind()
                + ", and no filter behind it is told with a class of particles that counts.");
          }
          told = Optional.empty();
        } else if (tells) {
          told = Optional.empty();
        }
      }
      if (told.isEmpty() && reasons.isEmpty()) {
        reasons.add("No filter is told with a class of particles.");
      }
      if (told.isPresent() && lastTreatment() < counted.size() - 1) {
        reasons.add("That is behind " + along.get(lastTreatment()).stage().name()
            + "; rust and scale of what follows it are not counted.");
      }
      return part(asked, told, false, beyond, reasons);
    }

    private int lastTreatment() {
      int last = -1;
      for (int i = 0; i < along.size(); i++) {
        TreatmentKind kind = along.get(i).stage().kind();
        last = kind.isDryer() || kind.isFilter() ? i : last;
      }
      return last;
    }

    private boolean isBeforeLastTreatment(int stage) {
      return stage <= lastTreatment();
    }

    PurityAnswer.Part oil(PurityClass asked) {
      Optional<Density> mist = train.supply.mist();
      Optional<Density> vapour = train.supply.vapour();
      List<String> reasons = new ArrayList<>();
      boolean beyond = false;
      for (int i = 0; i < counted.size(); i++) {
        TreatmentStage stage = along.get(i).stage();
        Optional<TreatmentStage.Duty> told = stage.duty();
        boolean isMist = told.flatMap(TreatmentStage.Duty::mist).isPresent();
        boolean isVapour = told.flatMap(TreatmentStage.Duty::vapour).isPresent();
        beyond |= explain(i, isMist || isVapour, reasons);
        Optional<TreatmentStage.Duty> duty = counted.get(i).duty();
        mist = behind(
            stage.name(), "oil mist", mist, duty.flatMap(TreatmentStage.Duty::mist), reasons);
        vapour = behind(
            stage.name(), "oil vapour", vapour, duty.flatMap(TreatmentStage.Duty::vapour), reasons);
      }
      say("mist", mist, reasons);
      say("vapour", vapour, reasons);
      Optional<Density> left = vapour;
      Optional<PurityClass> told =
          mist.flatMap(one -> left.map(other -> AirPurity.ofOil(Density.ofKilogramsPerCubicMetre(
              one.kilogramsPerCubicMetre() + other.kilogramsPerCubicMetre()))));
      boolean isWorse = asked != PurityClass.CLASS_0
          && (mist.filter(one -> !AirPurity.ofOil(one).meets(asked)).isPresent()
              || vapour.filter(one -> !AirPurity.ofOil(one).meets(asked)).isPresent());
      return part(asked, told, isWorse, beyond, reasons);
    }

    /** What a filter leaves: what its maker warrants where no more comes than he tested it with. */
    private Optional<Density> behind(
        String name,
        String what,
        Optional<Density> coming,
        Optional<TreatmentStage.Retention> retention,
        List<String> reasons) {
      if (retention.isEmpty()) {
        return coming;
      }
      Density leaves = retention.get().leaves();
      Density tested = retention.get().testedWith();
      if (coming.isEmpty()) {
        reasons.add("Nobody told how much " + what + " comes to " + name
            + "; its maker tells what it leaves of " + said(tested) + " at most.");
        return coming;
      }
      if (coming.get().compareTo(tested) > 0
          && coming.get().kilogramsPerCubicMetre()
              > tested.kilogramsPerCubicMetre() * (1.0 + 1.0e-12)) {
        reasons.add(said(coming.get()) + " of " + what + " can come to " + name
            + "; its maker tells what it leaves of " + said(tested)
            + " at most, so it counts for nothing here.");
        return coming;
      }
      return Optional.of(coming.get().compareTo(leaves) < 0 ? coming.get() : leaves);
    }

    private void say(String what, Optional<Density> left, List<String> reasons) {
      reasons.add(left.map(most -> "Oil " + what + " left at most: " + said(most) + ".")
          .orElse("Nobody told how much oil " + what + " is left."
              + (what.equals("vapour")
                  ? " A coalescing filter takes none out: ask the makers of compressor and filters."
                  : "")));
    }

    private static String said(Density content) {
      return Digits.significant(content.in(DensityUnit.MILLIGRAM_PER_CUBIC_METRE), 4) + " mg/m³";
    }

    PurityAnswer.Part water(PurityClass asked) {
      List<String> reasons = new ArrayList<>();
      boolean beyond = false;
      for (int i = 0; i < counted.size(); i++) {
        beyond |= explain(
            i,
            along.get(i).stage().duty().flatMap(TreatmentStage.Duty::dewPoint).isPresent(),
            reasons);
      }
      WaterAlongLine water = AirTreatment.water(train.supply, counted, along);
      List<WaterAlongLine.AtPlace> warm = water.warmDay();
      WaterAlongLine.AtPlace end = warm.get(warm.size() - 1);
      List<WaterAlongLine.AtMost> most = water.most();
      WaterAlongLine.AtPlace wettest = most.get(most.size() - 1).most();
      double liquid =
          Math.max(wettest.carriedOn().kilogramsPerSecond(), end.carriedOn().kilogramsPerSecond());
      boolean isNotTold = along.stream()
          .anyMatch(at -> at.stage().kind().isDryer()
              && at.stage().duty().flatMap(TreatmentStage.Duty::dewPoint).isEmpty());
      for (At at : along) {
        if (at.stage().kind().isDryer()
            && at.stage().duty().flatMap(TreatmentStage.Duty::dewPoint).isEmpty()) {
          reasons.add("No pressure dew point is told of " + at.stage().name() + ".");
        }
      }
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
      boolean gap = isNotTold || (!beyond && !gapsOfDryers().isEmpty());
      if (told.isPresent() && told.get().meets(asked)) {
        return part(asked, told, false, false, reasons);
      }
      return gap
          ? part(asked, Optional.empty(), false, false, reasons)
          : part(asked, told, true, beyond, reasons);
    }

    /** Public texts state the dew point at the pressure of the line, or at 7 bar: told where the classes differ. */
    private Optional<String> statedOtherwise(DewPoint point) {
      DewPoint other;
      try {
        other = point.at(GaugePressure.ofBar(7.0).absolute(train.supply.atmosphere()));
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
              .format(units.either(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT), 1)
          + (point.isFrostPoint() ? " (frost point)" : "") + " at "
          + units.say(point.pressure());
    }

    private static boolean told(DewPoint point) {
      return AirPurity.ofWater(point).isPresent();
    }

    private List<String> gapsOfDryers() {
      List<String> dryers = new ArrayList<>();
      for (int i = 0; i < counted.size(); i++) {
        if (along.get(i).stage().duty().flatMap(TreatmentStage.Duty::dewPoint).isPresent()
            && !why.get(i).isEmpty()
            && !isBeyond.get(i)) {
          dryers.add(why.get(i));
        }
      }
      return dryers;
    }
  }
}
