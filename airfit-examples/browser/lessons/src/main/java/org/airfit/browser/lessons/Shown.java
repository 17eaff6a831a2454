package org.airfit.browser.lessons;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.Supplier;

/** What a figure shows: for each output of a cell its text, in the form that the notebook has it. */
final class Shown {

  /** One output, such as the second of cell-08: its place is "cell-08-1". A place with a plus is only in the page. */
  record Output(String place, String form, String text) {}

  private final Predicate<String> wanted;
  private final List<Output> outputs = new ArrayList<>();
  private final List<String> left = new ArrayList<>();
  private String summary = "";

  /** Takes only what stands in the places that are wanted; the rest is not computed. */
  Shown(Predicate<String> wanted) {
    this.wanted = wanted;
  }

  void markdown(String place, Supplier<String> text) {
    add(place, "text/markdown", text);
  }

  void svg(String place, Supplier<String> text) {
    add(place, "image/svg+xml", text);
  }

  void html(String place, Supplier<String> text) {
    add(place, "text/html", text);
  }

  /** Lines as a cell prints them. */
  void said(String place, String... lines) {
    add(place, "text/plain", () -> String.join("\n", lines) + "\n");
  }

  private void add(String place, String form, Supplier<String> text) {
    if (wanted.test(place)) {
      outputs.add(new Output(place, form, text.get()));
    } else {
      left.add(place);
    }
  }

  /** The one sentence that matters; it is read out when it changes. */
  void sum(String sentence) {
    summary = sentence;
  }

  String summary() {
    return summary;
  }

  /** The places that were not wanted. */
  List<String> left() {
    return List.copyOf(left);
  }

  List<Output> outputs() {
    return List.copyOf(outputs);
  }
}
