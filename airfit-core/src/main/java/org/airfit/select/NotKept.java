package org.airfit.select;

import java.util.Objects;
import java.util.Optional;
import org.airfit.working.UnitSystem;

/**
 * Why a profile cannot be kept, for all bays or for one.
 *
 * @param profile the id of the profile
 * @param cause what stands against it
 * @param where the bay, and where a part is missing also the place or tool
 * @param air the judgement of the air, where that stands against it
 */
public record NotKept(String profile, Cause cause, String where, Optional<BayAir> air) {

  /** What stands against a profile. */
  public enum Cause {
    /** A line of another medium has it. */
    USED_FOR_ANOTHER_MEDIUM,
    /** It is told that it and the couplings of another medium go into each other. */
    TOLD_TO_GO_TOGETHER,
    /** It is not told that it and the couplings of another medium do not go into each other. */
    NOT_TOLD_APART,
    /** No part of it on offer has a price, is rated for the highest pressure and can be joined to the end there. */
    NO_PART,
    /** A tool does not get its air through it. */
    TOO_LITTLE_AIR
  }

  /**
   * Refuses what is null.
   *
   * @param profile the id of the profile
   * @param cause what stands against it
   * @param where the bay, and where a part is missing also the place or tool
   * @param air the judgement of the air, where that stands against it
   */
  public NotKept {
    Objects.requireNonNull(profile, "profile");
    Objects.requireNonNull(cause, "cause");
    Objects.requireNonNull(where, "where");
    Objects.requireNonNull(air, "air");
  }

  /**
   * Tells why.
   *
   * @param units the units
   * @return one sentence
   */
  public String inWords(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    return switch (cause) {
      case USED_FOR_ANOTHER_MEDIUM ->
        profile + " is the profile of " + where + ", whose line carries another medium: it is not"
            + " offered for air.";
      case TOLD_TO_GO_TOGETHER ->
        profile + " is never offered for air: it is told that its plugs go into the sockets of "
            + where + ", or the plugs of that line into its sockets.";
      case NOT_TOLD_APART ->
        profile + " is offered only where it is told that its plugs do not go into the sockets of "
            + where + ", nor the plugs of that line into its sockets: ask the makers.";
      case NO_PART ->
        profile + " has no part on offer for " + where
            + " that has a price, is rated for the highest pressure of all bays and can be joined to the"
            + " end that is there.";
      case TOO_LITTLE_AIR -> air.map(each -> each.inWords(units)).orElse(profile + ": " + where);
    };
  }

  /** {@return why, in SI units} */
  @Override
  public String toString() {
    return inWords(UnitSystem.SI);
  }
}
