package org.airfit.files.json;

import java.lang.reflect.Method;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.flow.GroupFlow;
import org.airfit.flow.IsentropicFlow;
import org.airfit.flow.PartsInSeries;
import org.airfit.network.Network;
import org.airfit.network.PlantDay;
import org.airfit.plant.SupplyRange;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Interview;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.Selection;
import org.airfit.select.ToolLine;

/** What an answer tells and JSON does not, and why; what can be told of some values only. */
final class LeftOut {

  private static final String OF_FINDINGS = "the findings of this outcome, which stand in findings";
  private static final String OF_PARTS = "the parts without a price, which stand in parts";

  /** Why a method is not written, by type and method. */
  private static final Map<Class<?>, Map<String, String>> REASONS = Map.ofEntries(
      Map.entry(
          Proposal.class,
          Map.of(
              "requirement", "the question; whoever asked has it",
              "metWhileRegulated", OF_FINDINGS,
              "open", OF_FINDINGS,
              "unmet", OF_FINDINGS,
              "unpriced", OF_PARTS)),
      Map.entry(
          Network.class,
          Map.of(
              "solve", "an answer of its own, to be asked for",
              "solveMean", "an answer of its own, to be asked for")),
      Map.entry(PlantDay.class, Map.of("simulate", "an answer of its own, to be asked for")),
      Map.entry(
          Interview.class,
          Map.of(
              "selection", "an answer of its own, to be asked for",
              "requirement", "the question that the answers make; it is asked by select")),
      Map.entry(
          GroupFlow.class,
          Map.of("parts", "what each part shows is its working; working has them")),
      Map.entry(Selection.Proposals.class, Map.of("best", "the first of proposals")),
      Map.entry(
          BillOfMaterials.class,
          Map.of("unpriced", "the lines that are unpriced, which stand in lines")));

  /** Methods that refuse where the value cannot tell; the field is left out then. */
  private static final Map<Class<?>, Set<String>> MAY_REFUSE = Map.of(
      AirState.class, Set.of("real"),
      IsentropicFlow.class, Set.of("areaRatio"),
      PartsInSeries.class, Set.of("approximation"),
      SupplyRange.class, Set.of("highest"),
      Requirement.class, Set.of("toolInlet"),
      ToolLine.class, Set.of("demandRange", "leastRange", "inlet"));

  private LeftOut() {}

  /** Why a method of an answer is not written; empty where it is. */
  static Optional<String> reason(Class<?> type, String accessor) {
    return Optional.ofNullable(REASONS.getOrDefault(type, Map.of()).get(accessor));
  }

  /** The types with methods that are not written. */
  static Map<Class<?>, Map<String, String>> all() {
    return REASONS;
  }

  /** Whether a method may have nothing to tell. */
  static boolean mayRefuse(Method method) {
    return MAY_REFUSE.getOrDefault(method.getDeclaringClass(), Set.of()).contains(method.getName());
  }
}
