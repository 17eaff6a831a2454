package org.airfit.plant;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Range;

/**
 * A leak as it stands in a ledger: where it is, what it loses, and what was done about it.
 *
 * @param tag the number on the tag that hangs at it; unlike that of any other leak
 * @param place where it is
 * @param what what leaks, such as "hose clamp"
 * @param found how much it lost when it was found
 * @param repair what the repair costs, or cost; empty where nobody knows
 * @param repairedOn the day of the repair; empty where it is not repaired
 * @param checked what was found when it was checked again after the repair; empty where nobody did
 */
public record Leak(
    String tag,
    String place,
    String what,
    LeakSize found,
    Optional<Money> repair,
    Optional<LocalDate> repairedOn,
    Optional<Check> checked) {

  /**
   * A look at a leak after its repair.
   *
   * @param on the day
   * @param left how much it still loses
   */
  public record Check(LocalDate on, LeakSize left) {

    /**
     * Refuses what is null.
     *
     * @param on the day
     * @param left how much it still loses
     */
    public Check {
      Objects.requireNonNull(on, "on");
      Objects.requireNonNull(left, "left");
    }
  }

  /**
   * Checks the components.
   *
   * @param tag the number on the tag that hangs at it; unlike that of any other leak
   * @param place where it is
   * @param what what leaks, such as "hose clamp"
   * @param found how much it lost when it was found
   * @param repair what the repair costs, or cost; empty where nobody knows
   * @param repairedOn the day of the repair; empty where it is not repaired
   * @param checked what was found when it was checked again after the repair; empty where nobody did
   * @throws IllegalArgumentException if the tag is blank, the repair costs less than nothing, or it was checked before it
   *     was repaired
   */
  public Leak {
    Objects.requireNonNull(tag, "tag");
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(found, "found");
    Objects.requireNonNull(repair, "repair");
    Objects.requireNonNull(repairedOn, "repairedOn");
    Objects.requireNonNull(checked, "checked");
    if (tag.isBlank()) {
      throw new IllegalArgumentException("tag of a leak must say something, was \"" + tag + "\"");
    }
    if (repair.isPresent() && repair.get().amount().signum() < 0) {
      throw new IllegalArgumentException("cost of the repair of leak " + tag
          + " must be at least 0, was " + repair.get().shown());
    }
    if (checked.isPresent()) {
      LocalDate day = checked.get().on();
      if (repairedOn.isEmpty() || day.isBefore(repairedOn.get())) {
        throw new IllegalArgumentException("leak " + tag + " must be repaired before it is checked"
            + " again, was checked on " + day + " and "
            + repairedOn.map(repaired -> "repaired on " + repaired).orElse("not repaired"));
      }
    }
  }

  /** {@return how far its repair has come} */
  public LeakState state() {
    if (repairedOn.isEmpty()) {
      return LeakState.OPEN;
    }
    if (checked.isEmpty()) {
      return LeakState.TO_BE_CHECKED;
    }
    boolean isTight = checked
        .get()
        .left()
        .flow()
        .filter(left -> left.most().kilogramsPerSecond() == 0.0)
        .isPresent();
    return isTight ? LeakState.DONE : LeakState.STILL_LEAKS;
  }

  /**
   * {@return what it loses now: what was found, or after a check what is left; from nothing to what was found where it
   * was repaired and not checked; empty where that is not known}
   */
  public Optional<Range<MassFlow>> flow() {
    return switch (state()) {
      case OPEN -> found.flow();
      case TO_BE_CHECKED -> found.flow().map(Leak::orNothing);
      case STILL_LEAKS, DONE -> checked.flatMap(check -> check.left().flow());
    };
  }

  private static Range<MassFlow> orNothing(Range<MassFlow> flow) {
    return new Range<>(MassFlow.ofKilogramsPerSecond(0.0), flow.most());
  }

  /**
   * Finds what it lost on a day, such as that of a test of the whole plant.
   *
   * @param day the day; what was repaired on it counts as repaired
   * @return what it lost; empty where that is not known
   */
  public Optional<Range<MassFlow>> flowOn(LocalDate day) {
    Objects.requireNonNull(day, "day");
    boolean wasRepaired = repairedOn.filter(repaired -> !repaired.isAfter(day)).isPresent();
    return wasRepaired ? flow() : found.flow();
  }

  /**
   * {@return what the repair has saved, as the check showed: at least what was found at least less what is left at most;
   * empty where it was not repaired and checked, or one of the two is not known}
   */
  public Optional<Range<MassFlow>> saved() {
    return checked.flatMap(check ->
        found.flow().flatMap(before -> check.left().flow().map(left -> less(before, left))));
  }

  private static Range<MassFlow> less(Range<MassFlow> before, Range<MassFlow> left) {
    return new Range<>(
        positive(before.least(), left.most()), positive(before.most(), left.least()));
  }

  private static MassFlow positive(MassFlow flow, MassFlow less) {
    return MassFlow.ofKilogramsPerSecond(
        Math.max(0.0, flow.kilogramsPerSecond() - less.kilogramsPerSecond()));
  }

  /** {@return the leak in one line, such as "leak 101, press line, hose clamp: bag: 0.001 kg/s; open"} */
  @Override
  public String toString() {
    return "leak " + tag + ", " + place + ", " + what + ": " + found + "; "
        + state().label() + checked.map(check -> ", left " + check.left()).orElse("");
  }
}
