package org.airfit.jobsheet;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.working.UnitSystem;

/**
 * What leads from a number of a page to its equation in the working, and from the equation to its source at the end of
 * the page. The workings are written first, so that no number leads to an equation that is not there.
 */
final class WorkingLinks {

  private final UnitSystem units;

  /** By the line of a working in front of an equation, the places where it stands, in the order of the page. */
  private final Map<String, Deque<String>> equations = new HashMap<>();

  /** By citation, which equations come from it. */
  private final Map<String, List<String>> sources = new LinkedHashMap<>();

  private int places;

  WorkingLinks(UnitSystem units) {
    this.units = units;
  }

  /** Notes the elements of a run, whose losses shall lead to their equations. */
  void expect(RunResult result) {
    for (ElementLoss share : sharesOf(result)) {
      equations.putIfAbsent(lineOf(share), new ArrayDeque<>());
    }
  }

  static List<ElementLoss> sharesOf(RunResult result) {
    return result.fold(RunResult.Delivered::shares, RunResult.Starved::before);
  }

  /** What the working of a run says in front of the equations of an element. */
  private String lineOf(ElementLoss share) {
    return share.name() + ": from " + share.inlet().format(units.pressureUnit()) + " to "
        + share.outlet().format(units.pressureUnit());
  }

  /** The place of a line of a working, if a number leads there. */
  Optional<String> place(String line) {
    Deque<String> found = equations.get(line);
    if (found == null) {
      return Optional.empty();
    }
    String place = "w" + ++places;
    found.addLast(place);
    return Optional.of(place);
  }

  /** The equation of the loss of an element: each place once, in the order of the page. */
  Optional<String> equationOf(ElementLoss share) {
    Deque<String> found = equations.get(lineOf(share));
    return found == null ? Optional.empty() : Optional.ofNullable(found.pollFirst());
  }

  /** The place of a source in the list at the end; notes the equation that comes from it. */
  String source(String citation, String equation) {
    List<String> from = sources.computeIfAbsent(citation, cited -> new ArrayList<>());
    if (!from.contains(equation)) {
      from.add(equation);
    }
    return "s" + (List.copyOf(sources.keySet()).indexOf(citation) + 1);
  }

  /** The list of the sources, each with the equations that come from it; nothing where no working has any. */
  String list() {
    if (sources.isEmpty()) {
      return "";
    }
    StringBuilder out = new StringBuilder();
    Html.element(out, "h2", "The sources of the equations");
    out.append("<ol class=\"sources\">\n");
    int number = 0;
    for (Map.Entry<String, List<String>> source : sources.entrySet()) {
      out.append("<li id=\"s").append(++number).append("\">");
      out.append('[')
          .append(Html.shown(source.getKey()))
          .append("] <span class=\"soft\">From it: ");
      out.append(Html.shown(String.join("; ", source.getValue()))).append(".</span></li>\n");
    }
    return out.append("</ol>\n").toString();
  }
}
