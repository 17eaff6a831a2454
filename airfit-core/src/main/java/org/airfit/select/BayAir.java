package org.airfit.select;

import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.working.UnitSystem;

/**
 * Whether a tool of a bay gets its air through couplings of a profile.
 *
 * @param bay the name of the bay
 * @param tool the tool
 * @param profile the id of the profile
 * @param outcome met however the ranges lie, unmet however they lie, or open
 * @param needed what it needs at its inlet
 * @param least what arrives at least; empty where nothing may arrive, or where no capacity is known
 * @param most what arrives at most; empty where nothing arrives, or where no capacity is known
 */
public record BayAir(
    String bay,
    String tool,
    String profile,
    RuleOutcome outcome,
    GaugePressure needed,
    Optional<GaugePressure> least,
    Optional<GaugePressure> most) {

  /**
   * Checks the components.
   *
   * @param bay the name of the bay
   * @param tool the tool
   * @param profile the id of the profile
   * @param outcome met however the ranges lie, unmet however they lie, or open
   * @param needed what it needs at its inlet
   * @param least what arrives at least; empty where nothing may arrive, or where no capacity is known
   * @param most what arrives at most; empty where nothing arrives, or where no capacity is known
   * @throws IllegalArgumentException if {@code least} is above {@code most}, or there without it
   */
  public BayAir {
    Objects.requireNonNull(bay, "bay");
    Objects.requireNonNull(tool, "tool");
    Objects.requireNonNull(profile, "profile");
    Objects.requireNonNull(outcome, "outcome");
    Objects.requireNonNull(needed, "needed");
    Objects.requireNonNull(least, "least");
    Objects.requireNonNull(most, "most");
    if (least.isPresent() && (most.isEmpty() || least.get().compareTo(most.get()) > 0)) {
      throw new IllegalArgumentException("least that arrives at " + tool + " must be at most "
          + most.map(GaugePressure::shown).orElse("nothing") + ", was "
          + least.get().shown());
    }
  }

  /**
   * Tells the judgement.
   *
   * @param units the units
   * @return one sentence, such as "Grinder in assembly needs 6 bar(g), and 5.4 to 5.8 bar(g) arrive: not enough."
   */
  public String inWords(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    String needs = tool + " in " + bay + " needs " + units.say(needed) + " through " + profile;
    if (most.isEmpty()) {
      return outcome == RuleOutcome.OPEN
          ? needs + ": not known, as no capacity of such a coupling is told."
          : needs + ", and the air does not get there: not enough.";
    }
    String arrives = least.isEmpty()
        ? "at most " + units.say(most.get()) + " arrives, or the flow does not get through at all"
        : least.equals(most)
            ? units.say(most.get())
            : units.sayRange(new Range<>(least.get(), most.get()));
    String word = switch (outcome) {
      case MET, MET_WHILE_REGULATED, DOES_NOT_APPLY -> "enough";
      case UNMET -> "not enough";
      case OPEN -> "it depends on what is not known exactly; measure it before buying";
    };
    return needs + ", and " + arrives + (least.isEmpty() ? ": " : " arrive: ") + word + ".";
  }

  /** {@return the judgement in SI units} */
  @Override
  public String toString() {
    return inWords(UnitSystem.SI);
  }
}
