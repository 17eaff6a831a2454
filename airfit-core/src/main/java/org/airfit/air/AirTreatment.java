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
import org.airfit.safety.SafetyRules;
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
 *   <li><b>Water.</b> A dryer counts with its pressure dew point, unless liquid water reaches it. A refrigerated dryer
 *       counts only where its maker tells the room that it is rated in. Behind the last dryer that counts, no water
 *       stands in a place without a drain, and none freezes: no drain takes ice out.
 *   <li><b>Oil.</b> Mist and vapour are added. A coalescing filter takes no vapour out, so that a class of oil is told
 *       only where somebody told the vapour too. It counts only with a drain for what it gathers. A carbon filter, a
 *       desiccant and a membrane dryer count only behind a coalescing filter that counts, as oil mist spoils them.
 *   <li><b>Particles.</b> The class that the maker tells, until a stage follows that may shed dust: desiccant,
 *       carbon, a vessel, a pipe. They are judged behind the last filter or dryer; a pipe behind that may add rust.
 *   <li><b>Frost.</b> In a room below 0 °C, whatever water falls out in front of a stage or in it may freeze in its
 *       drain: nothing is told of such a stage.
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
      "A class of particles, water and oil says nothing of carbon monoxide and other gases. Air to"
          + " breathe has its own rules, equipment and tests; never take it from such a train"
          + " without them.",
      Source.commonPractice("breathing air is a separate duty"));

  private static final Caution PRESSURE_OFF = new Caution(
      "Take the pressure off before opening a filter, a drain or a dryer",
      "A housing under pressure can throw its bowl or cover. Shut it off on both sides, lock it,"
          + " let the pressure out and see the gauge at zero before anything is opened.",
      Source.commonPractice("work on pressure vessels and filter housings"));

  private static final Caution CONDENSATE = new Caution(
      "Condensate is oily waste",
      "Condensate of a lubricated compressor holds oil. Collect it and part the oil from the water"
          + " before it goes to a sewer; local rules say how much oil may stay in it.",
      Source.commonPractice("condensate of lubricated compressors"));

  /**
   * The train at one of its stages.
   *
   * @param stage the stage
   * @param inlet the pressure in front of it, from that with all elements at change-out to that with clean ones
   * @param outlet the pressure behind it
   * @param hottest the hottest air that comes to it; empty for the first stage where nobody told how hot the air leaves
   *     the compressor
   * @param loss the pressure that it takes at most flow and lowest pressure; empty where that is not told
   */
  public record At(
      TreatmentStage stage,
      Range<GaugePressure> inlet,
      Range<GaugePressure> outlet,
      Optional<Temperature> hottest,
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
      return stage + "; inlet " + inlet.least().shown() + " to " + inlet.most().shown()
          + hottest.map(most -> ", up to " + most.shown()).orElse("");
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
            + " must be above the atmosphere, was " + Digits.told(lowest.bar()) + " bar(g)"
            + " with all elements at change-out; give a higher pressure or fewer stages");
      }
      Range<GaugePressure> outlet =
          new Range<>(lowest, highest.compareTo(lowest) < 0 ? lowest : highest);
      Optional<Temperature> hottest = along.isEmpty()
          ? supply.discharge().map(Range::most)
          : Optional.of(along.get(along.size() - 1).stage().air().most());
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

  /** The pressure dew point that the maker of a stage tells. */
  private static Optional<Temperature> dewPoint(TreatmentStage stage) {
    return stage.duty().flatMap(TreatmentStage.Duty::dewPoint);
  }

  private static boolean isUntoldDryer(TreatmentStage stage) {
    return stage.kind().isDryer() && dewPoint(stage).isEmpty();
  }

  private static int lastTreatment(List<TreatmentStage> stages) {
    int last = -1;
    for (int i = 0; i < stages.size(); i++) {
      TreatmentKind kind = stages.get(i).kind();
      last = kind.isDryer() || kind.isFilter() ? i : last;
    }
    return last;
  }

  /**
   * {@return the last filter or dryer, where something follows it that may add rust or scale, which no class of
   * particles counts; empty where nothing does}
   */
  public Optional<TreatmentStage> lastBeforeRust() {
    int last = lastTreatment(stages);
    boolean isFollowed =
        stages.stream().skip(last + 1L).anyMatch(stage -> stage.kind().mayShedDust());
    return last >= 0 && isFollowed ? Optional.of(stages.get(last)) : Optional.empty();
  }

  /**
   * Finds the flow up to which the maker's rating of a stage holds in the worst air that comes to it.
   *
   * @param at the train at the stage, of {@link #along()}
   * @return the flow with its factors; empty where nothing is rated, or the maker has not told it for such air
   */
  public Optional<TreatmentRating.Capacity> capacity(At at) {
    Objects.requireNonNull(at, "at");
    return at.hottest()
        .flatMap(hottest -> at.stage()
            .duty()
            .flatMap(duty -> duty.rating()
                .capacity(at.inlet().least(), hottest, supply.room().most())));
  }

  /**
   * Tells why dryers do not count in the worst air.
   *
   * @param units the units to give reasons in
   * @return a sentence for each that does not; empty where all do
   */
  public List<String> idleDryers(UnitSystem units) {
    return new Judge(this, Objects.requireNonNull(units, "units")).idleDryers();
  }

  /** {@return what to mind before anyone works on such a train or trusts it; the last defers to local codes} */
  public List<Caution> cautions() {
    return List.of(
        PRESSURE_OFF, NOT_TO_BREATHE, CONDENSATE, SafetyRules.usFederal().deference());
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

    /** The oil mist that comes to the next stage at most, as far as it is told. */
    private Optional<Density> mist;

    private MistBehind mistBehind;

    /** What is known of oil mist behind the stages that were looked at. */
    private enum MistBehind {
      COMES,
      NOT_TOLD,
      CAUGHT
    }

    Judge(AirTreatment train, UnitSystem units) {
      this.train = train;
      this.units = units;
      this.along = train.along();
      this.mist = train.supply.mist();
      this.mistBehind = MistBehind.COMES;
      if (mist.isEmpty()) {
        this.mistBehind = MistBehind.NOT_TOLD;
      } else if (isMistZero()) {
        this.mistBehind = MistBehind.CAUGHT;
      }
      for (At at : along) {
        look(at);
      }
    }

    private void look(At at) {
      TreatmentStage stage = at.stage();
      Optional<String> wet = stage.duty().isPresent() ? liquidBefore() : Optional.empty();
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
      counted.add(
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
      boolean isWithin =
          mist.filter(coming -> isAtMost(coming, retention.testedWith())).isPresent();
      if (counts && isWithin) {
        mist = Optional.of(less(mist.get(), retention.leaves()));
        mistBehind = MistBehind.CAUGHT;
      } else if (mistBehind == MistBehind.COMES) {
        mistBehind = MistBehind.NOT_TOLD;
      }
    }

    /** Why a stage is loaded with what it is not made for; blank where it is not. */
    private String beyond(At at, Optional<String> wet) {
      TreatmentStage stage = at.stage();
      boolean suffers = stage.kind().isDryer() || stage.kind().isSpoiltByLiquid();
      if (suffers && wet.isPresent() && isWaterKnown()) {
        return "Liquid water can reach " + stage.name() + " from " + wet.get() + ": " + stage.name()
            + " counts for nothing; drain that first.";
      }
      if (stage.kind().isFilter()
          && !stage.isDrained()
          && isWaterKnown()
          && gathersWater(stage, wet)) {
        return "Water can gather in " + stage.name() + ", which is not told to be drained: it"
            + " counts for nothing; fit a drain there.";
      }
      if (stage.kind().isSpoiltByLiquid() && mistBehind == MistBehind.COMES) {
        return "Oil mist can reach the " + filling(stage.kind()) + " of " + stage.name() + " and "
            + (stage.kind() == TreatmentKind.CARBON_FILTER ? "fill" : "spoil")
            + " it: it counts for nothing without a coalescing filter in front that counts.";
      }
      MassFlow most = train.supply.flow().most().massFlow();
      Optional<TreatmentRating.Capacity> capacity = train.capacity(at);
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

    private static String filling(TreatmentKind kind) {
      return switch (kind) {
        case CARBON_FILTER -> "carbon";
        case MEMBRANE_DRYER -> "membrane";
        default -> "desiccant";
      };
    }

    /** What is not told of a stage, without which nobody can say what it does; blank where all is. */
    private String missing(At at, Optional<String> wet) {
      TreatmentStage stage = at.stage();
      TreatmentRating rating = stage.duty().orElseThrow().rating();
      if (at.hottest().isEmpty()) {
        return "Nobody told how hot the air comes from the compressor to " + stage.name()
            + ": tell its temperature behind the compressor (discharge), or the cooler in front.";
      }
      List<String> told = rating.gaps(
          at.inlet().least(), at.hottest().get(), train.supply.room().most(), units);
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
      if (stage.kind().isFilter() && !stage.isDrained() && gathersWater(stage, wet)) {
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
      return frost(stage);
    }

    /** Drains freeze in a cold room; a pipe is told with temperatures of its own. */
    private String frost(TreatmentStage stage) {
      Temperature coldest = train.supply.room().least();
      if (!isBelowFreezing(coldest)) {
        return "";
      }
      List<TreatmentStage> upTo = new ArrayList<>(counted);
      upTo.add(stage);
      List<WaterAlongLine.AtMost> most =
          AirTreatment.water(train.supply, upTo, along).most();
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

    private static boolean isBelowFreezing(Temperature air) {
      return air.celsius() < 0.0;
    }

    private boolean isMistZero() {
      return train
          .supply
          .mist()
          .filter(most -> most.kilogramsPerCubicMetre() == 0.0)
          .isPresent();
    }

    /** Whether no dryer stands in front of which nobody can say how far it dries. */
    private boolean isWaterKnown() {
      for (int i = 0; i < counted.size(); i++) {
        if (isUntoldDryer(counted.get(i)) && !isBeyond.get(i)) {
          return false;
        }
      }
      return true;
    }

    /** Whether water falls out in a filter, or comes on to it as liquid. */
    private boolean gathersWater(TreatmentStage filter, Optional<String> wet) {
      if (wet.isPresent()) {
        return true;
      }
      List<TreatmentStage> upTo = new ArrayList<>(counted);
      upTo.add(filter);
      List<WaterAlongLine.AtMost> most =
          AirTreatment.water(train.supply, upTo, along).most();
      return most.get(most.size() - 1).most().liquid().kilogramsPerSecond() > 0.0;
    }

    /** Where the liquid comes from that reaches the next stage, and why it is not drained. */
    private Optional<String> liquidBefore() {
      if (counted.isEmpty()) {
        return ofCompressor();
      }
      WaterAlongLine water = AirTreatment.water(train.supply, counted, along);
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
      Range<GaugePressure> pressure = train.supply.pressure();
      return train
          .supply
          .discharge()
          .map(air -> new WaterPlace(
              "the compressor",
              air,
              new Range<>(
                  pressure.least().absolute(train.supply.atmosphere()),
                  pressure.most().absolute(train.supply.atmosphere())),
              Optional.empty(),
              false))
          .filter(place -> train.supply.dampest().humidityRatio()
              > place.saturated(
                  place.air().least().kelvins(), place.pressure().most().pascals()))
          .map(place -> place.name() + ", behind which no drain is told");
    }

    /** Why water stays in a place; empty where there is none, or it leaves by a drain or in a dryer. */
    private static Optional<String> standing(WaterPlace place, WaterAlongLine.AtPlace most) {
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
        reasons.add(
            0, "Class 0 is what user and supplier agreed: hold their figures against these.");
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
      Optional<PurityClass> finest = Optional.empty();
      String finer = "";
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
      if (told.isPresent() && lastTreatment() < counted.size() - 1) {
        reasons.add("That is behind " + along.get(lastTreatment()).stage().name()
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
      return part(asked, told, false, beyond, reasons);
    }

    private int lastTreatment() {
      return AirTreatment.lastTreatment(train.stages);
    }

    private boolean isBeforeLastTreatment(int stage) {
      return stage <= lastTreatment();
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

    PurityAnswer.Part oil(PurityClass asked) {
      Left mistLeft = new Left("mist", train.supply.mist());
      Left vapour = new Left("vapour", train.supply.vapour());
      List<String> reasons = new ArrayList<>();
      for (int i = 0; i < counted.size(); i++) {
        Optional<TreatmentStage.Duty> duty = along.get(i).stage().duty();
        Optional<TreatmentStage.Retention> ofMist = duty.flatMap(TreatmentStage.Duty::mist);
        Optional<TreatmentStage.Retention> ofVapour = duty.flatMap(TreatmentStage.Duty::vapour);
        explain(i, ofMist.isPresent() || ofVapour.isPresent(), reasons);
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
        return part(
            asked, Optional.empty(), isWorse, mistLeft.isBeyond || vapour.isBeyond, reasons);
      }
      return part(asked, told, isWorse, mistLeft.isBeyond || vapour.isBeyond, reasons);
    }

    /** What a filter leaves: what its maker warrants where no more comes than he tested it with. */
    private void leave(
        int stage, Left left, TreatmentStage.Retention retention, List<String> reasons) {
      if (!why.get(stage).isEmpty()) {
        left.isBeyond |= isBeyond.get(stage);
        left.isGap |= !isBeyond.get(stage);
        return;
      }
      String name = along.get(stage).stage().name();
      String tested = said(retention.testedWith());
      if (left.most.isEmpty()) {
        reasons.add("Nobody told how much oil " + left.what + " comes to " + name
            + "; its maker tells what it leaves of " + tested + " at most.");
      } else if (isAtMost(left.most.get(), retention.testedWith())) {
        left.most = Optional.of(less(left.most.get(), retention.leaves()));
        left.isGap = false;
        left.isBeyond = false;
      } else {
        reasons.add(said(left.most.get()) + " of oil " + left.what + " can come to " + name
            + "; its maker tells what it leaves of " + tested
            + " at most, so it counts for nothing here.");
        left.isGap = true;
      }
    }

    private static boolean isAtMost(Density coming, Density tested) {
      return coming.kilogramsPerCubicMetre() <= tested.kilogramsPerCubicMetre() * (1.0 + 1.0e-12);
    }

    private static Density less(Density one, Density other) {
      return one.compareTo(other) < 0 ? one : other;
    }

    /** Carbon that counts in air that no dryer has dried. */
    private void damp(int stage, List<String> reasons) {
      boolean isDried =
          counted.subList(0, stage).stream().anyMatch(before -> dewPoint(before).isPresent());
      if (why.get(stage).isEmpty() && !isDried) {
        reasons.add("Damp air can come to " + along.get(stage).stage().name()
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

    PurityAnswer.Part water(PurityClass asked) {
      List<String> reasons = new ArrayList<>();
      boolean beyond = false;
      for (int i = 0; i < counted.size(); i++) {
        beyond |= explain(i, dewPoint(along.get(i).stage()).isPresent(), reasons);
      }
      WaterAlongLine water = AirTreatment.water(train.supply, counted, along);
      List<WaterAlongLine.AtPlace> warm = water.warmDay();
      WaterAlongLine.AtPlace end = warm.get(warm.size() - 1);
      List<WaterAlongLine.AtMost> most = water.most();
      WaterAlongLine.AtPlace wettest = most.get(most.size() - 1).most();
      double liquid =
          Math.max(wettest.carriedOn().kilogramsPerSecond(), end.carriedOn().kilogramsPerSecond());
      boolean isNotTold = false;
      for (At at : along) {
        if (isUntoldDryer(at.stage())) {
          isNotTold = true;
          reasons.add(noDewPoint(at.stage()));
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
        return part(asked, told, false, false, reasons);
      }
      boolean mayHoldLiquid = asked.compareTo(PurityClass.CLASS_6) > 0;
      if (gap || (meets && mayHoldLiquid)) {
        return part(asked, Optional.empty(), false, false, reasons);
      }
      return part(
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
        if (standing(place, most.get(i).most()).isPresent()) {
          boolean freezes = isBelowFreezing(place.air().least());
          stands |= freezes || i < most.size() - 1;
          reasons.add(
              freezes
                  ? "Water can freeze in " + place.name() + ", which gets as cold as "
                      + units.say(place.air().least())
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
      for (int i = 0; i < counted.size(); i++) {
        TreatmentStage stage = along.get(i).stage();
        if (stage.kind().isDryer() && !why.get(i).isEmpty()) {
          idle.add(why.get(i));
        } else if (isUntoldDryer(stage)) {
          idle.add(noDewPoint(stage));
        }
      }
      return idle;
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

    /** Whether of a dryer whose dew point is told something else is not, without which it does not count. */
    private boolean hasGapOfDryer() {
      for (int i = 0; i < counted.size(); i++) {
        if (dewPoint(along.get(i).stage()).isPresent()
            && !why.get(i).isEmpty()
            && !isBeyond.get(i)) {
          return true;
        }
      }
      return false;
    }

    private static String noDewPoint(TreatmentStage dryer) {
      return "No pressure dew point is told of " + dryer.name() + ".";
    }
  }
}
