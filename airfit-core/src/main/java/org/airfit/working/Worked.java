package org.airfit.working;

/** An answer that can tell how it was reached, in the units asked for. */
public interface Worked {

  /** {@return how the answer was reached, in SI units} */
  default Working working() {
    return working(UnitSystem.SI);
  }

  /**
   * Tells how the answer was reached.
   *
   * @param units the units to show numbers in
   * @return the working; an equation that is bound to units of its own says so
   */
  Working working(UnitSystem units);
}
