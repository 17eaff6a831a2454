package org.airfit.select;

import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.ValveCoefficient;

/**
 * A part of a price list, with the figures that stand beside those by which its air is judged: they say the same in
 * another way, so that one can be held against the other.
 *
 * @param part the part
 * @param coefficient Kv or Cv, if it is printed beside another capacity
 * @param bore the narrowest bore of its passage, if that is printed
 * @param fullFlow the most it lets through, if that is printed
 */
public record ListedPart(
    Part part,
    Optional<ValveCoefficient> coefficient,
    Optional<Length> bore,
    Optional<FullFlow> fullFlow) {

  /**
   * The most air that a part lets through from an inlet, whatever is behind it.
   *
   * @param flow the flow, above 0
   * @param inlet the air in front of the part
   */
  public record FullFlow(FreeAirFlow flow, AirState inlet) {
    /**
     * Checks the flow.
     *
     * @param flow the flow, above 0
     * @param inlet the air in front of the part
     * @throws IllegalArgumentException if {@code flow} is not above 0
     */
    public FullFlow {
      Objects.requireNonNull(flow, "flow");
      Objects.requireNonNull(inlet, "inlet");
      if (!(flow.cubicMetresPerSecond() > 0.0)) {
        throw new IllegalArgumentException("full flow must be above 0, was " + flow.shown()
            + "; leave it out where it is not told");
      }
    }
  }

  /**
   * Checks the bore.
   *
   * @param part the part
   * @param coefficient Kv or Cv, if it is printed beside another capacity
   * @param bore the narrowest bore of its passage, above 0, if that is printed
   * @param fullFlow the most it lets through, if that is printed
   * @throws IllegalArgumentException if {@code bore} is not above 0
   */
  public ListedPart {
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(coefficient, "coefficient");
    Objects.requireNonNull(bore, "bore");
    Objects.requireNonNull(fullFlow, "fullFlow");
    if (bore.isPresent() && !(bore.get().metres() > 0.0)) {
      throw new IllegalArgumentException("narrowest bore of part " + part.id()
          + " must be above 0 mm, was " + bore.get().shown());
    }
  }

  /**
   * Obtains a part beside which no other figure is printed.
   *
   * @param part the part
   * @return the part alone
   */
  public static ListedPart of(Part part) {
    return new ListedPart(part, Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** {@return what the list calls it} */
  public String id() {
    return part.id();
  }

  /** {@return the part} */
  @Override
  public String toString() {
    return part.facts().toString();
  }
}
