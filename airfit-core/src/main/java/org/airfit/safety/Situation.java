package org.airfit.safety;

import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.airfit.internal.NamedValues;
import org.airfit.internal.NamedValues.Name;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureUnit;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a piece of work with compressed air, as far as a safety rule may ask.
 *
 * <p>What was not told stays untold: a rule that asks for it answers {@link Judgement#DOES_NOT_APPLY}, never a guess.
 * What is told to be {@link Builder#notKnown not known} is a question: a rule that turns on it answers
 * {@link Judgement#DEPENDS}.
 *
 * <p>What is told of a job, for the rules to judge:
 *
 * <pre>{@code
 * import java.util.List;
 * import org.airfit.quantity.Length;
 * import org.airfit.safety.Judgement;
 * import org.airfit.safety.SafetyRules;
 * import org.airfit.safety.Situation;
 *
 * class JackHammer {
 *   public static void main(String[] args) {
 *     Situation hammer =
 *         Situation.describe().impactTool().toolOnHose(Length.parse("3/4 in")).build();
 *     List<String> asked = SafetyRules.bundled().rulings(hammer).stream()
 *         .filter(ruling -> ruling.judgement() == Judgement.REQUIRED)
 *         .map(ruling -> ruling.rule().title())
 *         .toList();
 *     System.out.println(asked.get(0)); // Connection restraint
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Situation {

  static final Name<Boolean> QUICK_COUPLERS = Name.flag("quick couplers");
  static final Name<Boolean> TOOL_ON_HOSE = Name.flag("tool on hose");
  static final Name<Boolean> IMPACT_TOOL = Name.flag("percussion tool");
  static final Name<Boolean> FORMS_OR_MILL_SCALE = Name.flag("forms or mill scale");
  static final Name<Boolean> HOISTED_BY_HOSE = Name.flag("hoisted by hose");
  static final Name<Boolean> MAINTENANCE = Name.flag("maintenance");
  static final Name<Boolean> AUTOMATIC_FEED = Name.flag("automatic feed");
  static final Name<Boolean> CLEANING = Name.flag("cleaning");
  static final Name<Boolean> AIR_ON_CLOTHING = Name.flag("air on clothing");
  static final Name<Boolean> BLASTING = Name.flag("blasting");
  static final Name<Boolean> PAINTING = Name.flag("painting");
  static final Name<Boolean> LUBRICATED_LINE = Name.flag("lubricated line");
  static final Name<Boolean> WHIP_HOSE = Name.flag("whip hose");
  static final Name<Boolean> PLASTIC_PIPE = Name.flag("plastic pipe");
  static final Name<Boolean> MINE = Name.flag("mine");
  static final Name<Boolean> MILITARY_CONSTRUCTION = Name.flag("military construction");
  static final Name<GaugePressure> CLOTHING_PRESSURE = Name.of("clothing pressure");
  static final Name<Length> MINE_HOSE_BORE = Name.of("mine hose bore");
  static final Name<GaugePressure> LINE_PRESSURE = Name.of("line pressure");
  static final Name<GaugePressure> LOWEST_RATING = Name.of("lowest rating");
  static final Name<GaugePressure> COUPLER_PRESSURE = Name.of("coupler pressure");
  static final Name<Length> HOSE_BORE = Name.of("hose bore");

  /** The narrowest the bore can be, of which {@link #HOSE_BORE} is then the widest. */
  static final Name<Length> NARROWEST_HOSE_BORE = Name.of("narrowest hose bore");

  static final Name<GaugePressure> AUTOMATIC_FEED_PRESSURE = Name.of("automatic feed pressure");
  static final Name<GaugePressure> CLEANING_PRESSURE = Name.of("cleaning pressure");
  static final Name<GaugePressure> RECEIVER_RATING = Name.of("receiver rating");
  static final Name<GaugePressure> RECEIVER_REACHES = Name.of("receiver reaches");

  /** Of the pressures in the line, at the couplers and at a tool that feeds: the lowest at which the supply stands. */
  static final Name<GaugePressure> LOWEST_LINE_PRESSURE = Name.of("lowest line pressure");

  private static final Name<Set<String>> NOT_KNOWN = new Name<>("not known", Set.of());

  private static final List<Name<?>> QUESTIONS = List.of(
      QUICK_COUPLERS,
      TOOL_ON_HOSE,
      IMPACT_TOOL,
      WHIP_HOSE,
      AUTOMATIC_FEED,
      CLEANING,
      FORMS_OR_MILL_SCALE,
      AIR_ON_CLOTHING,
      BLASTING,
      PAINTING,
      LUBRICATED_LINE,
      PLASTIC_PIPE,
      HOISTED_BY_HOSE,
      MAINTENANCE,
      MINE,
      MILITARY_CONSTRUCTION,
      LOWEST_RATING,
      RECEIVER_RATING);

  private final NamedValues told;

  private Situation(NamedValues told) {
    this.told = told;
  }

  boolean is(Name<Boolean> name) {
    return told.is(name);
  }

  /** Whether it was told that nobody knows this. */
  boolean isUnknown(Name<?> name) {
    return told.find(NOT_KNOWN).orElse(Set.of()).contains(name.text());
  }

  <T> @Nullable T get(Name<T> name) {
    return told.get(name);
  }

  /** {@return a builder of which nothing is known yet} */
  public static Builder describe() {
    return new Builder();
  }

  /**
   * Obtains this with what is known besides, such as what one tool does on a line of which this tells.
   *
   * @param more what is known besides; where it tells another pressure or bore, that counts
   * @return both
   */
  public Situation with(Situation more) {
    return new Situation(told.with(Objects.requireNonNull(more, "more").told));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Situation that && told.equals(that.told);
  }

  @Override
  public int hashCode() {
    return told.hashCode();
  }

  /** {@return what is known, by name} */
  @Override
  public String toString() {
    return "Situation" + told;
  }

  /** Collects what is known. Not thread-safe. */
  public static final class Builder {

    private NamedValues told = NamedValues.NONE;

    private Builder() {}

    /**
     * Tells that quick couplers are in the line.
     *
     * @return this builder
     */
    public Builder quickCouplers() {
      told = told.with(QUICK_COUPLERS);
      return this;
    }

    /**
     * Tells that the couplers are of the interchange that the federal item description A-A-59439 covers.
     *
     * @param highestPressure the highest pressure they see
     * @return this builder
     */
    public Builder federalCouplers(GaugePressure highestPressure) {
      return couplerPressure(highestPressure);
    }

    /**
     * Tells the highest pressure that couplers see, of whatever description they are.
     *
     * @param highestPressure the highest pressure they see
     * @return this builder
     */
    public Builder couplerPressure(GaugePressure highestPressure) {
      told =
          told.with(COUPLER_PRESSURE, Objects.requireNonNull(highestPressure, "highestPressure"));
      return quickCouplers();
    }

    /**
     * Tells between which pressures the line can stand. A rule is judged by the one that is worse for it.
     *
     * @param lowestPressure the lowest pressure of the supply
     * @param highestPressure the highest pressure that can occur, not below {@code lowestPressure}
     * @return this builder
     * @throws IllegalArgumentException if {@code highestPressure} is below {@code lowestPressure}
     */
    public Builder linePressure(GaugePressure lowestPressure, GaugePressure highestPressure) {
      Objects.requireNonNull(lowestPressure, "lowestPressure");
      Objects.requireNonNull(highestPressure, "highestPressure");
      if (highestPressure.compareTo(lowestPressure) < 0) {
        throw new IllegalArgumentException("highest line pressure must be at least "
            + lowestPressure.format(PressureUnit.PSI) + ", was "
            + highestPressure.format(PressureUnit.PSI));
      }
      told = told.with(LOWEST_LINE_PRESSURE, lowestPressure);
      told = told.with(LINE_PRESSURE, highestPressure);
      return this;
    }

    /**
     * Tells that nobody knows whether something is so, or how much it is: a rule that turns on it is a question.
     *
     * @param name a fact by the name it has in a table of rules, such as "lubricated line"; or "lowest rating",
     *     "receiver rating"
     * @return this builder
     * @throws IllegalArgumentException if {@code name} is none of these
     */
    public Builder notKnown(String name) {
      Objects.requireNonNull(name, "name");
      if (QUESTIONS.stream().noneMatch(question -> question.text().equals(name))) {
        throw new IllegalArgumentException("name of what is not known must be one of "
            + QUESTIONS.stream().map(Name::text).collect(Collectors.joining(", ")) + ", was \""
            + name + "\"");
      }
      Set<String> all = new TreeSet<>(told.find(NOT_KNOWN).orElse(Set.of()));
      all.add(name);
      told = told.with(NOT_KNOWN, Collections.unmodifiableSet(all));
      return this;
    }

    /**
     * Tells that air may blow dirt off clothing that somebody wears, which nobody knows.
     *
     * @param atNozzle the pressure at the nozzle
     * @return this builder
     */
    public Builder perhapsClothing(GaugePressure atNozzle) {
      told = told.with(CLOTHING_PRESSURE, Objects.requireNonNull(atNozzle, "atNozzle"));
      return notKnown(AIR_ON_CLOTHING.text());
    }

    /**
     * Tells that the line may be in a mine, which nobody knows.
     *
     * @param insideDiameter the inside diameter of the hose
     * @return this builder
     */
    public Builder perhapsHoseInMine(Length insideDiameter) {
      told = told.with(MINE_HOSE_BORE, Objects.requireNonNull(insideDiameter, "insideDiameter"));
      return notKnown(MINE.text());
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
      linePressure(highestPressure);
      told = told.with(LOWEST_RATING, rating(lowest, "lowest", "lowest rating"));
      return this;
    }

    /**
     * Tells the highest pressure that can occur in the line. It is also that of a tool that feeds its fasteners by
     * itself, and that at a blocked nozzle, where no other was told for them.
     *
     * @param highestPressure that pressure
     * @return this builder
     */
    public Builder linePressure(GaugePressure highestPressure) {
      told = told.with(LINE_PRESSURE, Objects.requireNonNull(highestPressure, "highestPressure"));
      return this;
    }

    /**
     * Tells that a pneumatic tool hangs on a hose.
     *
     * @param insideDiameter the inside diameter of the hose
     * @return this builder
     */
    public Builder toolOnHose(Length insideDiameter) {
      told = told.with(TOOL_ON_HOSE);
      told = told.with(HOSE_BORE, Objects.requireNonNull(insideDiameter, "insideDiameter"));
      return this;
    }

    /**
     * Tells that a pneumatic tool hangs on hoses whose bores lie between two: a rule is judged at the one that is worse by
     * its limit.
     *
     * @param narrowest the smallest inside diameter that it can be
     * @param widest the largest, not below {@code narrowest}
     * @return this builder
     * @throws IllegalArgumentException if {@code widest} is below {@code narrowest}
     */
    public Builder toolOnHose(Length narrowest, Length widest) {
      Objects.requireNonNull(narrowest, "narrowest");
      Objects.requireNonNull(widest, "widest");
      if (widest.compareTo(narrowest) < 0) {
        throw new IllegalArgumentException("widest bore of the hose must be at least "
            + narrowest.shown() + ", was " + widest.shown());
      }
      told = told.with(NARROWEST_HOSE_BORE, narrowest);
      return toolOnHose(widest);
    }

    /**
     * Tells that a pneumatic tool hangs on a hose of which the bore is not known yet.
     *
     * @return this builder
     */
    public Builder toolOnHose() {
      told = told.with(TOOL_ON_HOSE);
      return this;
    }

    /**
     * Tells that the tool is a percussion tool.
     *
     * @return this builder
     */
    public Builder impactTool() {
      told = told.with(IMPACT_TOOL);
      return this;
    }

    /**
     * Tells that the tool is a nailer, stapler or the like that feeds its fasteners by itself, at the highest pressure
     * of the line.
     *
     * @return this builder
     */
    public Builder automaticFeed() {
      told = told.with(AUTOMATIC_FEED);
      return this;
    }

    /**
     * Tells that the tool is a nailer, stapler or the like that feeds its fasteners by itself.
     *
     * @param atTool the pressure at the tool
     * @return this builder
     */
    public Builder automaticFeed(GaugePressure atTool) {
      told = told.with(AUTOMATIC_FEED_PRESSURE, Objects.requireNonNull(atTool, "atTool"));
      return automaticFeed();
    }

    /**
     * Tells that air is used for cleaning, with nothing that lets pressure off: when the nozzle is blocked, the highest
     * pressure of the line stands at it.
     *
     * @return this builder
     */
    public Builder cleaning() {
      told = told.with(CLEANING);
      return this;
    }

    /**
     * Tells that air is used for cleaning.
     *
     * @param deadEnd the pressure at the nozzle when it is blocked
     * @return this builder
     */
    public Builder cleaning(GaugePressure deadEnd) {
      told = told.with(CLEANING_PRESSURE, Objects.requireNonNull(deadEnd, "deadEnd"));
      return cleaning();
    }

    /**
     * Tells that what is cleaned is concrete form, mill scale or the like.
     *
     * @return this builder
     */
    public Builder formsOrMillScale() {
      told = told.with(FORMS_OR_MILL_SCALE);
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
      told = told.with(RECEIVER_RATING, rating(rating, "rating", "receiver rating"));
      told = told.with(RECEIVER_REACHES, Objects.requireNonNull(reaches, "reaches"));
      return this;
    }

    /**
     * Tells that a tool is hoisted or lowered by its hose.
     *
     * @return this builder
     */
    public Builder toolHoistedByHose() {
      told = told.with(HOISTED_BY_HOSE);
      return this;
    }

    /**
     * Tells that air blows dirt off clothing that somebody wears.
     *
     * @param atNozzle the pressure at the nozzle
     * @return this builder
     */
    public Builder clothing(GaugePressure atNozzle) {
      told = told.with(AIR_ON_CLOTHING);
      told = told.with(CLOTHING_PRESSURE, Objects.requireNonNull(atNozzle, "atNozzle"));
      return this;
    }

    /**
     * Tells that the line is in a mine.
     *
     * @param insideDiameter the inside diameter of the high-pressure hose
     * @return this builder
     */
    public Builder hoseInMine(Length insideDiameter) {
      told = told.with(MINE);
      told = told.with(MINE_HOSE_BORE, Objects.requireNonNull(insideDiameter, "insideDiameter"));
      return this;
    }

    /**
     * Tells that somebody works on the line or the machine itself.
     *
     * @return this builder
     */
    public Builder maintenance() {
      told = told.with(MAINTENANCE);
      return this;
    }

    /**
     * Tells that a whip hose lies between the tool and its coupler.
     *
     * @return this builder
     */
    public Builder whipHose() {
      told = told.with(WHIP_HOSE);
      return this;
    }

    /**
     * Tells that the air drives abrasive.
     *
     * @return this builder
     */
    public Builder blasting() {
      told = told.with(BLASTING);
      return this;
    }

    /**
     * Tells that the air sprays paint.
     *
     * @return this builder
     */
    public Builder painting() {
      told = told.with(PAINTING);
      return this;
    }

    /**
     * Tells that a lubricator oils the air of the line, or did.
     *
     * @return this builder
     */
    public Builder lubricatedLine() {
      told = told.with(LUBRICATED_LINE);
      return this;
    }

    /**
     * Tells that pipe or tube of plastic is in the line.
     *
     * @return this builder
     */
    public Builder plasticPipe() {
      told = told.with(PLASTIC_PIPE);
      return this;
    }

    /**
     * Tells that the work is construction for the military, which has rules of its own.
     *
     * @return this builder
     */
    public Builder militaryConstruction() {
      told = told.with(MILITARY_CONSTRUCTION);
      return this;
    }

    private static GaugePressure rating(GaugePressure rating, String parameter, String name) {
      Objects.requireNonNull(rating, parameter);
      if (!(rating.pascals() > 0.0)) {
        throw new IllegalArgumentException(
            name + " must be above 0 psig, was " + rating.inFull(PressureUnit.PSI));
      }
      return rating;
    }

    /** {@return what is known} */
    public Situation build() {
      return new Situation(told);
    }
  }
}
