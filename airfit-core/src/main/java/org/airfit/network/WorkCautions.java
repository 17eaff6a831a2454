package org.airfit.network;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.safety.Situation;

/**
 * The warnings that go with the work in a network: those of the line first, then those of its tools, each with the tools
 * that it speaks of, and last that codes, makers and licensed practice come first.
 */
final class WorkCautions {

  private WorkCautions() {}

  static List<Caution> of(NetworkPlan plan) {
    SafetyRules rules = plan.judged().rules();
    List<Caution> all = new ArrayList<>(rules.cautions(plan.judged().line()));
    Caution deference = all.remove(all.size() - 1);
    Map<Situation, List<Caution>> known = new HashMap<>();
    Map<Caution, List<String>> tools = new LinkedHashMap<>();
    for (NetworkPlan.Outlet outlet : plan.outlets()) {
      String where = outlet.tool().name() + " at " + outlet.node();
      known
          .computeIfAbsent(outlet.situation(), rules::cautions)
          .forEach(
              caution -> tools.computeIfAbsent(caution, any -> new ArrayList<>()).add(where));
    }
    tools.keySet().removeAll(all);
    tools.keySet().removeAll(Collections.singleton(deference));
    tools.forEach((caution, where) -> all.add(new Caution(
        caution.title() + " (" + String.join("; ", where) + ")",
        caution.text(),
        caution.source())));
    all.add(deference);
    return List.copyOf(all);
  }
}
