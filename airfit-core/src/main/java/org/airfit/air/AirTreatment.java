package org.airfit.air;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
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
    TreatmentTrain.of(supply, stages).water(stages); // refuses names that stand twice
  }

  private TreatmentTrain train() {
    return TreatmentTrain.of(supply, stages);
  }

  /** {@return the train at each of its stages, at its worst} */
  public List<At> along() {
    return train().along().stream()
        .map(point ->
            new At(point.stage(), point.inlet(), point.outlet(), point.hottest(), point.loss()))
        .toList();
  }

  /** {@return the water along the train, as if each dryer does what its maker says} */
  public WaterAlongLine water() {
    return train().water(stages);
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

  /**
   * {@return the last filter or dryer, where something follows it that may add rust or scale, which no class of
   * particles counts; empty where nothing does}
   */
  public Optional<TreatmentStage> lastBeforeRust() {
    int last = train().lastTreatment();
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
    return train().capacity(at.stage(), at.inlet().least(), at.hottest());
  }

  /**
   * Tells why dryers do not count in the worst air.
   *
   * @param units the units to give reasons in
   * @return a sentence for each that does not; empty where all do
   */
  public List<String> idleDryers(UnitSystem units) {
    return new WaterJudge(new CountedStages(train(), Objects.requireNonNull(units, "units")))
        .idleDryers();
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
    CountedStages counted = new CountedStages(train(), Objects.requireNonNull(units, "units"));
    return new PurityAnswer(
        asked,
        new ParticlesJudge(counted).judge(asked.particles()),
        new WaterJudge(counted).judge(asked.water()),
        new OilJudge(counted).judge(asked.oil()));
  }
}
