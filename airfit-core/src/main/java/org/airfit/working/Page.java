package org.airfit.working;

import java.util.ArrayList;
import java.util.List;

/** What a working prints: its title and, in order, its steps, its sentences and the pages of included workings. */
record Page(String title, List<Item> items) {

  /** One thing on a page. */
  sealed interface Item {}

  /** A step with its equation. */
  record Equation(Step step) implements Item {}

  /** A sentence in words. */
  record Sentence(String text) implements Item {}

  /** The page of a working that was used. */
  record Included(Page page) implements Item {}

  Page {
    items = List.copyOf(items);
  }

  /** All steps in order, those of included pages among them. */
  List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    for (Item item : items) {
      if (item instanceof Equation equation) {
        steps.add(equation.step());
      } else if (item instanceof Included included) {
        steps.addAll(included.page().steps());
      }
    }
    return List.copyOf(steps);
  }
}
