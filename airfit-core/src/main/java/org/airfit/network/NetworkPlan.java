package org.airfit.network;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.run.ToolDemand;
import org.airfit.safety.SafetyRules;
import org.airfit.safety.Situation;

/**
 * What a {@link Network} is made of: supplies, branches and tools at named nodes.
 *
 * @param atmosphere the pressure against which gauges read and into which tools let their air out
 * @param supplies the supplies by their nodes, in the order they were added
 * @param open the nodes of the supplies without a non-return valve
 * @param branches the branches in the order they were added
 * @param outlets the tools in the order they were added
 * @param judged by what the work is judged
 */
record NetworkPlan(
    AbsolutePressure atmosphere,
    Map<String, Supply> supplies,
    Set<String> open,
    List<Branch> branches,
    List<Outlet> outlets,
    Judged judged) {

  /**
   * A tool at a node.
   *
   * @param node the node
   * @param tool the tool
   * @param situation what is known of the work there, that of the line with it
   */
  record Outlet(String node, ToolDemand tool, Situation situation) {}

  /**
   * By what the work is judged.
   *
   * @param rules the safety rules
   * @param line what is known of the line, whatever tool hangs on it
   */
  record Judged(SafetyRules rules, Situation line) {}

  NetworkPlan {
    supplies = Collections.unmodifiableMap(new LinkedHashMap<>(supplies));
    open = Set.copyOf(open);
    branches = List.copyOf(branches);
    outlets = List.copyOf(outlets);
  }

  /** {@return the names of the nodes, those of the supplies first} */
  List<String> nodes() {
    Set<String> all = new LinkedHashSet<>(supplies.keySet());
    branches.forEach(branch -> {
      all.add(branch.from());
      all.add(branch.to());
    });
    outlets.forEach(outlet -> all.add(outlet.node()));
    return List.copyOf(all);
  }

  /** {@return the same with other branches} */
  NetworkPlan with(List<Branch> others) {
    return new NetworkPlan(atmosphere, supplies, open, others, outlets, judged);
  }

  /** {@return the same with other supplies at the same nodes, judged by what is known of their pressure} */
  NetworkPlan with(Map<String, Supply> others, Situation pressure) {
    return new NetworkPlan(
        atmosphere,
        others,
        open,
        branches,
        outlets.stream()
            .map(outlet ->
                new Outlet(outlet.node(), outlet.tool(), outlet.situation().with(pressure)))
            .toList(),
        new Judged(judged.rules(), judged.line().with(pressure)));
  }
}
