package org.airfit.browser.lessons;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * A figure of a lesson that follows its numbers.
 *
 * @param id its name, which begins with the number of the lesson
 * @param lesson the number of the lesson
 * @param title what it asks the reader to do
 * @param inputs what can be changed
 * @param heart the place above which the fields stand open; above its other outputs they are folded
 * @param follow what it shows
 */
record Figure(
    String id, int lesson, String title, List<Input> inputs, String heart, Follow follow) {

  /** Computes what is shown. */
  interface Follow {

    void show(Given given, Shown shown);
  }

  Figure {
    inputs = List.copyOf(inputs);
  }

  /** What it shows with the lesson's own numbers. */
  Shown ofLesson() {
    return of(inputs.stream().map(Input::text).toList(), place -> true);
  }

  /** What it shows in some places with texts that were accepted, one for each input. */
  Shown of(List<String> texts, Predicate<String> wanted) {
    Map<String, Input> named = new LinkedHashMap<>();
    Map<String, String> told = new LinkedHashMap<>();
    for (int i = 0; i < inputs.size(); i++) {
      named.put(inputs.get(i).id(), inputs.get(i));
      told.put(inputs.get(i).id(), inputs.get(i).accepted(texts.get(i)));
    }
    Shown shown = new Shown(wanted);
    follow.show(new Given(named, told), shown);
    return shown;
  }
}
