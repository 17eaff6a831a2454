package org.airfit.safety;

import java.util.Objects;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureUnit;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a piece of work with compressed air, as far as a safety rule may ask.
 *
 * <p>What was not told stays untold: a rule that asks for it answers {@link Judgement#NOT_CONCERNED}, never a guess.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Situation {

  final boolean quickCouplers;
  final boolean toolOnHose;
  final boolean impactTool;
  final boolean formsOrMillScale;
  final boolean hoistedByHose;
  final boolean maintenance;
  final @Nullable GaugePressure clothingPressure;
  final @Nullable Length mineHoseBore;
  final @Nullable GaugePressure linePressure;
  final @Nullable GaugePressure lowestRating;
  final @Nullable GaugePressure couplerPressure;
  final @Nullable Length hoseBore;
  final @Nullable GaugePressure automaticFeedPressure;
  final @Nullable GaugePressure cleaningPressure;
  final @Nullable GaugePressure receiverRating;
  final @Nullable GaugePressure receiverReaches;

  private Situation(Builder builder) {
    quickCouplers = builder.quickCouplers;
    toolOnHose = builder.toolOnHose;
    impactTool = builder.impactTool;
    formsOrMillScale = builder.formsOrMillScale;
    hoistedByHose = builder.hoistedByHose;
    maintenance = builder.maintenance;
    clothingPressure = builder.clothingPressure;
    mineHoseBore = builder.mineHoseBore;
    linePressure = builder.linePressure;
    lowestRating = builder.lowestRating;
    couplerPressure = builder.couplerPressure;
    hoseBore = builder.hoseBore;
    automaticFeedPressure = builder.automaticFeedPressure;
    cleaningPressure = builder.cleaningPressure;
    receiverRating = builder.receiverRating;
    receiverReaches = builder.receiverReaches;
  }

  /** {@return a builder of which nothing is known yet} */
  public static Builder describe() {
    return new Builder();
  }

  /** Collects what is known. Not thread-safe. */
  public static final class Builder {

    private boolean quickCouplers;
    private boolean toolOnHose;
    private boolean impactTool;
    private boolean formsOrMillScale;
    private boolean hoistedByHose;
    private boolean maintenance;
    private @Nullable GaugePressure clothingPressure;
    private @Nullable Length mineHoseBore;
    private @Nullable GaugePressure linePressure;
    private @Nullable GaugePressure lowestRating;
    private @Nullable GaugePressure couplerPressure;
    private @Nullable Length hoseBore;
    private @Nullable GaugePressure automaticFeedPressure;
    private @Nullable GaugePressure cleaningPressure;
    private @Nullable GaugePressure receiverRating;
    private @Nullable GaugePressure receiverReaches;

    private Builder() {}

    /**
     * Tells that quick couplers are in the line.
     *
     * @return this builder
     */
    public Builder quickCouplers() {
      quickCouplers = true;
      return this;
    }

    /**
     * Tells that the couplers are of the interchange that the federal item description A-A-59439 covers.
     *
     * @param highestPressure the highest pressure they see
     * @return this builder
     */
    public Builder federalCouplers(GaugePressure highestPressure) {
      couplerPressure = Objects.requireNonNull(highestPressure, "highestPressure");
      return quickCouplers();
    }

    /**
     * Tells the highest pressure in the line and the lowest rating of any part in it.
     *
     * @param highestPressure the highest pressure in the line
     * @param lowest the lowest rated pressure of the parts, above 0
     * @return this builder
     * @throws IllegalArgumentException if {@code lowest} is not above 0
     */
    public Builder ratedParts(GaugePressure highestPressure, GaugePressure lowest) {
      linePressure = Objects.requireNonNull(highestPressure, "highestPressure");
      lowestRating = rating(lowest, "lowest rating");
      return this;
    }

    /**
     * Tells that a pneumatic tool hangs on a hose.
     *
     * @param insideDiameter the inside diameter of the hose
     * @return this builder
     */
    public Builder toolOnHose(Length insideDiameter) {
      toolOnHose = true;
      hoseBore = Objects.requireNonNull(insideDiameter, "insideDiameter");
      return this;
    }

    /**
     * Tells that the tool is a percussion tool.
     *
     * @return this builder
     */
    public Builder impactTool() {
      impactTool = true;
      return this;
    }

    /**
     * Tells that the tool is a nailer, stapler or the like that feeds its fasteners by itself.
     *
     * @param atTool the pressure at the tool
     * @return this builder
     */
    public Builder automaticFeed(GaugePressure atTool) {
      automaticFeedPressure = Objects.requireNonNull(atTool, "atTool");
      return this;
    }

    /**
     * Tells that air is used for cleaning.
     *
     * @param deadEnd the pressure at the nozzle when it is blocked
     * @return this builder
     */
    public Builder cleaning(GaugePressure deadEnd) {
      cleaningPressure = Objects.requireNonNull(deadEnd, "deadEnd");
      return this;
    }

    /**
     * Tells that what is cleaned is concrete form, mill scale or the like.
     *
     * @return this builder
     */
    public Builder formsOrMillScale() {
      formsOrMillScale = true;
      return this;
    }

    /**
     * Tells of a receiver and how far its safety valve lets the pressure rise.
     *
     * @param rating the maximum allowable working pressure of the receiver, above 0
     * @param reaches the highest pressure its safety valve allows
     * @return this builder
     * @throws IllegalArgumentException if {@code rating} is not above 0
     */
    public Builder receiver(GaugePressure rating, GaugePressure reaches) {
      receiverRating = rating(rating, "receiver rating");
      receiverReaches = Objects.requireNonNull(reaches, "reaches");
      return this;
    }

    /**
     * Tells that a tool is hoisted or lowered by its hose.
     *
     * @return this builder
     */
    public Builder toolHoistedByHose() {
      hoistedByHose = true;
      return this;
    }

    /**
     * Tells that air blows dirt off clothing that somebody wears.
     *
     * @param atNozzle the pressure at the nozzle
     * @return this builder
     */
    public Builder clothing(GaugePressure atNozzle) {
      clothingPressure = Objects.requireNonNull(atNozzle, "atNozzle");
      return this;
    }

    /**
     * Tells that the line is in a mine.
     *
     * @param insideDiameter the inside diameter of the high-pressure hose
     * @return this builder
     */
    public Builder hoseInMine(Length insideDiameter) {
      mineHoseBore = Objects.requireNonNull(insideDiameter, "insideDiameter");
      return this;
    }

    /**
     * Tells that somebody works on the line or the machine itself.
     *
     * @return this builder
     */
    public Builder maintenance() {
      maintenance = true;
      return this;
    }

    private static GaugePressure rating(GaugePressure rating, String name) {
      if (!(rating.pascals() > 0.0)) {
        throw new IllegalArgumentException(
            name + " must be above 0 psig, was " + rating.format(PressureUnit.PSI));
      }
      return rating;
    }

    /** {@return what is known} */
    public Situation build() {
      return new Situation(this);
    }
  }
}
