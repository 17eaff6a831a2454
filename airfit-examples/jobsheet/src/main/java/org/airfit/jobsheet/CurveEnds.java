package org.airfit.jobsheet;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.files.NetworkJob;
import org.airfit.network.BranchFlow;
import org.airfit.network.NetworkResult;
import org.airfit.network.SupplyFlow;

/** The regulators of a network through which more flows than their makers' curves tell, and what hangs on them. */
final class CurveEnds {

  private CurveEnds() {}

  /** The regulators behind the end of whose curves the flow is; what they hold then is not told. */
  static List<NetworkJob.Branch> regulators(NetworkJob job, NetworkResult.Solved solved) {
    return job.branches().stream()
        .filter(branch -> branch
            .regulator()
            .filter(regulator -> regulator.curve().isPresent()
                && !regulator.tells(solved.through(branch.name()).massFlow()))
            .isPresent())
        .toList();
  }

  /**
   * The junctions whose pressure is not told then: all that are joined to what is behind such a regulator by another
   * way than through it. What a supply holds does not change, whatever flows, as long as it gives air.
   */
  static Set<String> untold(NetworkJob job, NetworkResult.Solved solved) {
    Set<String> untold = new HashSet<>();
    Set<String> held = solved.supplies().stream()
        .filter(supply -> !supply.idle())
        .map(SupplyFlow::node)
        .collect(Collectors.toSet());
    for (NetworkJob.Branch regulator : regulators(job, solved)) {
      untold.addAll(behind(solved.through(regulator.name()), solved, held));
    }
    return untold;
  }

  private static Set<String> behind(
      BranchFlow regulator, NetworkResult.Solved solved, Set<String> held) {
    Set<String> reached = new HashSet<>();
    Deque<String> open = new ArrayDeque<>();
    open.add(regulator.to());
    while (!open.isEmpty()) {
      String node = open.remove();
      if (held.contains(node) || !reached.add(node)) {
        continue;
      }
      for (BranchFlow branch : solved.branches()) {
        if (branch.name().equals(regulator.name())) {
          continue;
        }
        if (branch.from().equals(node)) {
          open.add(branch.to());
        } else if (branch.to().equals(node)) {
          open.add(branch.from());
        }
      }
    }
    return reached;
  }
}
