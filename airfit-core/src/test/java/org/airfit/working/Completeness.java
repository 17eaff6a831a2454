package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

/** Takes each step out of a working in turn and sees it missed. */
public final class Completeness {

  private Completeness() {}

  /**
   * Asserts that no step of a working, or of one it includes, can be left out, and that it has a step.
   *
   * @param working a working made of formulas
   */
  public static void check(Working working) {
    assertThat(working.steps()).as(working.title()).isNotEmpty();
    each(working);
  }

  /**
   * Asserts the same of an answer in SI and in US units.
   *
   * @param answer the answer
   */
  public static void check(Worked answer) {
    for (UnitSystem units : UnitSystem.values()) {
      check(answer.working(units));
    }
  }

  private static void each(Working working) {
    for (int i = 0; i < working.ownSteps(); i++) {
      int step = i;
      assertThatIllegalStateException()
          .as("%s without step %s", working.title(), i)
          .isThrownBy(() -> working.without(step));
    }
    working.included().forEach(Completeness::each);
  }
}
