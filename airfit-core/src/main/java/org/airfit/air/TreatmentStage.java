package org.airfit.air;

import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Density;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;

/**
 * One of what compressed air passes between compressor and use: a cooler, a receiver, a filter, a dryer, a pipe, with
 * what its maker tells of it. What the maker does not tell is empty, and is never filled from elsewhere.
 *
 * @param name what it is called, such as "fine filter"
 * @param kind what it is
 * @param air the temperature of the air that leaves it
 * @param isDrained whether a drain that works takes out the liquid there
 * @param duty what it does to the air; empty for what is not told
 * @param loss what pressure it takes; empty where that is not told
 */
public record TreatmentStage(
    String name,
    TreatmentKind kind,
    Range<Temperature> air,
    boolean isDrained,
    Optional<Duty> duty,
    Optional<Loss> loss) {

  /** Oil or dust in air is told in less than this; a choice of this project [kg/m³]. */
  private static final double MOST_HELD = 1.0;

  /**
   * What a filter leaves of something.
   *
   * @param leaves what is left at most, in a volume at 20 °C and 1 bar(a)
   * @param testedWith what may come in at most for that, at least {@code leaves}
   */
  public record Retention(Density leaves, Density testedWith) {

    /**
     * Checks the components.
     *
     * @param leaves what is left at most, in a volume at 20 °C and 1 bar(a)
     * @param testedWith what may come in at most for that, at least {@code leaves}
     * @throws IllegalArgumentException if less comes in than is left, or more than 1 kg/m³
     */
    public Retention {
      Objects.requireNonNull(leaves, "leaves");
      Objects.requireNonNull(testedWith, "testedWith");
      if (!(testedWith.compareTo(leaves) >= 0
          && testedWith.kilogramsPerCubicMetre() <= MOST_HELD)) {
        throw new IllegalArgumentException("what a filter is tested with must be in ["
            + leaves.shown() + ", 1 kg/m³], was " + testedWith.shown());
      }
    }

    /** Whether no more comes in than it was tested with, rounding aside. */
    boolean isTestedWith(Density coming) {
      return coming.kilogramsPerCubicMetre()
          <= testedWith.kilogramsPerCubicMetre() * (1.0 + 1.0e-12);
    }

    /** What is left of what comes in, which is no more than that. */
    Density leavesOf(Density coming) {
      return coming.compareTo(leaves) < 0 ? coming : leaves;
    }
  }

  /**
   * What a stage does to the air as its maker warrants it.
   *
   * @param rating for which air that holds
   * @param dewPoint of a dryer the pressure dew point behind it
   * @param particles the class of particles behind it
   * @param mist the oil mist and liquid oil behind it
   * @param vapour the oil vapour behind it
   */
  public record Duty(
      TreatmentRating rating,
      Optional<Temperature> dewPoint,
      Optional<PurityClass> particles,
      Optional<Retention> mist,
      Optional<Retention> vapour) {

    /**
     * Checks the components.
     *
     * @param rating for which air that holds
     * @param dewPoint of a dryer the pressure dew point behind it
     * @param particles the class of particles behind it, 1 to 7
     * @param mist the oil mist and liquid oil behind it
     * @param vapour the oil vapour behind it
     * @throws IllegalArgumentException if the class of particles is not 1 to 7
     */
    public Duty {
      Objects.requireNonNull(rating, "rating");
      Objects.requireNonNull(dewPoint, "dewPoint");
      Objects.requireNonNull(particles, "particles");
      Objects.requireNonNull(mist, "mist");
      Objects.requireNonNull(vapour, "vapour");
      if (particles.isPresent()
          && (particles.get().compareTo(PurityClass.CLASS_1) < 0
              || particles.get().compareTo(PurityClass.CLASS_7) > 0)) {
        throw new IllegalArgumentException(
            "class of particles behind a stage must be 1 to 7, was " + particles.get());
      }
    }

    /** {@return the duty in one line, such as "100 L/s ANR at 7 bar(g) and 35 °C: dew point 3 °C"} */
    @Override
    public String toString() {
      return rating + ":" + dewPoint.map(point -> " dew point " + point.shown()).orElse("")
          + particles.map(behind -> " particles " + behind).orElse("")
          + mist.map(left -> " oil mist " + left.leaves().shown()).orElse("")
          + vapour.map(left -> " oil vapour " + left.leaves().shown()).orElse("");
    }
  }

  /**
   * What pressure a stage takes as its maker tells it.
   *
   * @param flow the flow at which the loss of the clean element is told, above 0
   * @param pressure the inlet pressure at which it is told
   * @param clean the loss of the clean element there; of a filter that is wet in use the wet one
   * @param changeOut the loss at which the element is changed; what has no element never takes more than clean
   */
  public record Loss(
      FreeAirFlow flow, GaugePressure pressure, PressureDrop clean, PressureDrop changeOut) {

    /**
     * Checks the components.
     *
     * @param flow the flow at which the loss of the clean element is told, above 0
     * @param pressure the inlet pressure at which it is told
     * @param clean the loss of the clean element there
     * @param changeOut the loss at which the element is changed
     * @throws IllegalArgumentException if the flow is 0, a loss is negative, or the loss at change-out is below that of
     *     the clean element
     */
    public Loss {
      Objects.requireNonNull(flow, "flow");
      Objects.requireNonNull(pressure, "pressure");
      Objects.requireNonNull(clean, "clean");
      Objects.requireNonNull(changeOut, "changeOut");
      if (!(flow.massFlow().kilogramsPerSecond() > 0.0)) {
        throw new IllegalArgumentException(
            "flow at which a pressure loss is told must be above 0, was " + flow.shown());
      }
      if (!(clean.pascals() >= 0.0 && changeOut.compareTo(clean) >= 0)) {
        throw new IllegalArgumentException("pressure loss at change-out must be at least that of"
            + " the clean element, and that at least 0, was " + changeOut.shown() + " and "
            + clean.shown());
      }
    }

    /**
     * Finds the loss at a flow.
     *
     * @param here the flow
     * @param inlet the inlet pressure
     * @param atmosphere the pressure around
     * @return the loss, clean and at change-out
     * @throws IllegalArgumentException if a flow or a pressure is out of the range of {@link FilterLoss}, or a pressure
     *     lies below a vacuum
     */
    public FilterLoss at(FreeAirFlow here, GaugePressure inlet, AbsolutePressure atmosphere) {
      Objects.requireNonNull(here, "here");
      Objects.requireNonNull(inlet, "inlet");
      Objects.requireNonNull(atmosphere, "atmosphere");
      return new FilterLoss(
          flow.massFlow(),
          pressure.absolute(atmosphere),
          clean,
          changeOut,
          here.massFlow(),
          inlet.absolute(atmosphere));
    }
  }

  /**
   * Checks the components.
   *
   * @param name what it is called, such as "fine filter"
   * @param kind what it is
   * @param air the temperature of the air that leaves it, in [-100, 100] °C
   * @param isDrained whether a drain that works takes out the liquid there
   * @param duty what it does to the air
   * @param loss what pressure it takes
   * @throws IllegalArgumentException if the name is blank, the temperature out of range, or what is told does not
   *     belong to such a stage: a dew point to a dryer alone, of a refrigerated dryer at least 0 °C; oil mist to a
   *     coalescing filter, oil vapour to a carbon filter, particles to filters and dryers
   */
  public TreatmentStage {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(air, "air");
    Objects.requireNonNull(duty, "duty");
    Objects.requireNonNull(loss, "loss");
    if (name.isBlank()) {
      throw new IllegalArgumentException("name of a stage must say something, was blank");
    }
    if (!(air.least().celsius() >= -100.0 && air.most().celsius() <= 100.0)) {
      throw new IllegalArgumentException("air behind " + name + " must be in [-100, 100] °C, was "
          + Digits.told(air.least().celsius()) + " to " + Digits.told(air.most().celsius())
          + " °C");
    }
    if (duty.isPresent() && !kind.isDryer() && !kind.isFilter()) {
      throw new IllegalArgumentException("what a maker warrants of the purity behind " + name
          + " must belong to a filter or a dryer, which a " + kind + " is not");
    }
    if (duty.flatMap(Duty::dewPoint).isPresent() && !kind.isDryer()) {
      throw new IllegalArgumentException("a pressure dew point behind " + name
          + " must belong to a dryer, which a " + kind + " is not");
    }
    if (kind == TreatmentKind.REFRIGERATED_DRYER
        && duty.flatMap(Duty::dewPoint).filter(point -> point.celsius() < 0.0).isPresent()) {
      throw new IllegalArgumentException("pressure dew point of " + name + ", a " + kind
          + ", must be at least 0 °C, as its condensate freezes below, was "
          + Digits.told(duty.get().dewPoint().orElseThrow().celsius()) + " °C"
          + "; a desiccant dryer dries further");
    }
    if (duty.flatMap(Duty::mist).isPresent() && kind != TreatmentKind.COALESCING_FILTER) {
      throw new IllegalArgumentException(
          "oil mist is taken out by a coalescing filter alone, which " + name + ", a " + kind
              + ", is not; leave it out");
    }
    if (duty.flatMap(Duty::vapour).isPresent() && kind != TreatmentKind.CARBON_FILTER) {
      throw new IllegalArgumentException("oil vapour is taken out by a carbon filter alone, which "
          + name + ", a " + kind + ", is not; leave it out");
    }
  }

  /** {@return the stage in one line, such as "fine filter, a coalescing filter, drained"} */
  @Override
  public String toString() {
    return name + ", a " + kind + (isDrained ? ", drained" : ", not drained")
        + duty.map(told -> "; " + told).orElse("")
        + loss.map(told ->
                "; takes " + told.clean().shown() + " to " + told.changeOut().shown())
            .orElse("");
  }
}
