package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.files.NetworkJob;
import org.airfit.network.NetworkResult;
import org.airfit.safety.Judgement;
import org.airfit.safety.Ruling;

/** A ruling that does not allow something, and the drops that it speaks of; none named where it is every one. */
record ForbiddenWork(Ruling ruling, List<String> drops) {

  /** What the rules forbid in a flow. */
  static List<ForbiddenWork> all(NetworkJob job, NetworkResult.Solved solved) {
    Map<Ruling, List<String>> at = new LinkedHashMap<>();
    solved
        .tools()
        .forEach(tool -> tool.rulings().stream()
            .filter(ruling -> ruling.judgement() == Judgement.NOT_ALLOWED)
            .forEach(
                ruling -> at.computeIfAbsent(ruling.toldIn(job.units()), any -> new ArrayList<>())
                    .add(tool.node())));
    return at.entrySet().stream()
        .map(each -> new ForbiddenWork(
            each.getKey(),
            each.getValue().size() == job.drops().size() ? List.of() : each.getValue()))
        .toList();
  }
}
