package org.airfit.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRule;
import org.airfit.safety.SafetyRules;
import org.airfit.safety.Situation;
import org.airfit.working.UnitSystem;

/**
 * The warnings that go with the work in a network: those of the line first, then those of its tools in the order of the
 * rules, each with the tools that it speaks of, and last that codes, makers and licensed practice come first.
 */
final class WorkCautions {

  private WorkCautions() {}

  static List<Caution> of(NetworkPlan plan, UnitSystem units) {
    SafetyRules rules = plan.judged().rules().toldIn(units);
    List<Caution> all = new ArrayList<>(rules.cautions(plan.judged().line()));
    Caution deference = all.remove(all.size() - 1);
    Map<Situation, List<Caution>> known = new HashMap<>();
    Map<Caution, List<String>> tools = new LinkedHashMap<>();
    for (NetworkPlan.Outlet outlet : plan.outlets()) {
      String where = outlet.tool().name() + " at " + outlet.node();
      known
          .computeIfAbsent(outlet.situation(), rules::cautions)
          .forEach(caution ->
              tools.computeIfAbsent(caution, any -> new ArrayList<>()).add(where));
    }
    tools.keySet().removeAll(all);
    tools.remove(deference);
    List<String> order = rules.rules().stream().map(SafetyRule::title).toList();
    tools.entrySet().stream()
        .sorted(Comparator.comparingInt(each -> order.indexOf(each.getKey().title())))
        .forEach(
            each -> all.add(named(each.getKey(), each.getValue(), plan.outlets().size())));
    all.add(deference);
    return List.copyOf(all);
  }

  private static Caution named(Caution caution, List<String> where, int tools) {
    String which = where.size() == tools && tools > 1 ? "every tool" : String.join("; ", where);
    return new Caution(caution.title() + " (" + which + ")", caution.text(), caution.source());
  }
}
