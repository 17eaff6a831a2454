package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.air.AirState;
import org.airfit.files.NetworkJob;
import org.airfit.line.PipeDuty;
import org.airfit.line.PipeVelocity;
import org.airfit.network.BranchFlow;
import org.airfit.network.Network;
import org.airfit.network.NetworkResult;
import org.airfit.network.NetworkSimulation;
import org.airfit.network.ToolFlow;
import org.airfit.safety.Caution;
import org.airfit.safety.Situation;

/**
 * What a network does with all its tools running, as they run by their use factors, with each main closed in turn, and
 * where a drop has too little, with something changed.
 *
 * @param job the network
 * @param all all tools at once, with the worst of what is not known exactly
 * @param atBest the same with the best of it; empty where all is known exactly
 * @param simulation tools drawn at random by their use factors
 * @param closures what is left with each main closed
 * @param changes what to change where a drop has too little
 */
public record NetworkSheet(
    NetworkJob job,
    NetworkResult all,
    Optional<NetworkResult> atBest,
    NetworkSimulation simulation,
    List<Closure> closures,
    NetworkChanges changes) {

  /** How often the tools are drawn by their use factors. */
  static final int TRIALS = 400;

  private static final long SEED = 1;

  /** Copies the lists; refuses what is null. */
  public NetworkSheet {
    Objects.requireNonNull(job, "job");
    Objects.requireNonNull(all, "all");
    Objects.requireNonNull(atBest, "atBest");
    Objects.requireNonNull(simulation, "simulation");
    closures = List.copyOf(closures);
    Objects.requireNonNull(changes, "changes");
  }

  /**
   * A pipe closed for repair.
   *
   * @param pipe the name of the pipe
   * @param answer what is left, in words
   * @param serves whether no drop is short then
   * @param noFurther whether only drops are short then that are short with it open
   */
  public record Closure(String pipe, String answer, boolean serves, boolean noFurther) {}

  /**
   * Answers a network.
   *
   * @param job the network
   * @return the answers
   */
  public static NetworkSheet of(NetworkJob job) {
    NetworkResult all = job.network().solve();
    List<Closure> closures = new ArrayList<>();
    NetworkChanges changes = NetworkChanges.none();
    if (all instanceof NetworkResult.Solved solved) {
      for (NetworkJob.Branch branch : job.branches()) {
        boolean main = branch.duty().filter(duty -> duty != PipeDuty.BRANCH).isPresent();
        if (main) {
          closures.add(closed(job, solved, branch.name()));
        }
      }
      changes = NetworkChanges.of(job, solved);
    }
    return new NetworkSheet(
        job,
        all,
        job.networkAtBest().map(Network::solve),
        job.network().simulate(SEED, TRIALS),
        closures,
        changes);
  }

  private static Closure closed(NetworkJob job, NetworkResult.Solved open, String pipe) {
    List<String> before = lacking(job, open);
    return job.network()
        .without(pipe)
        .solve()
        .fold(
            solved -> {
              List<String> then = lacking(job, solved);
              List<String> more =
                  then.stream().filter(drop -> !before.contains(drop)).toList();
              DropAnswer worst = weakest(job, solved);
              String least =
                  "; weakest is " + worst.drop().name() + " with " + worst.has(amounts(job));
              List<String> untold = untold(job, solved);
              if (!untold.isEmpty()) {
                return new Closure(
                    pipe,
                    (more.isEmpty() ? "" : "too little at " + String.join(", ", more) + "; ")
                        + "not told behind the end of a regulator's curve at "
                        + String.join(", ", untold) + least,
                    false,
                    false);
              }
              if (then.isEmpty()) {
                return new Closure(pipe, "no drop falls short" + least, true, false);
              }
              return more.isEmpty()
                  ? new Closure(
                      pipe, "no further drop falls short" + less(job, open, solved), false, true)
                  : new Closure(
                      pipe, "too little at " + String.join(", ", more) + least, false, false);
            },
            none ->
                cutOff(job, pipe, none, before.isEmpty() && untold(job, open).isEmpty()));
  }

  /** What the drops that are short have with a pipe closed, where that is less by what can be told. */
  private static String less(
      NetworkJob job, NetworkResult.Solved open, NetworkResult.Solved closed) {
    List<DropAnswer> before = DropAnswer.all(job, open);
    List<DropAnswer> then = DropAnswer.all(job, closed);
    List<String> less = new ArrayList<>();
    List<String> same = new ArrayList<>();
    for (int i = 0; i < then.size(); i++) {
      DropAnswer drop = then.get(i);
      if (drop.isShort()) {
        if (drop.lack() - before.get(i).lack() >= NetworkChanges.WORTH_PASCALS) {
          less.add(drop.drop().name() + " has still less: "
              + amounts(job).pressure(drop.flow().atTool()));
        } else {
          same.add(drop.drop().name());
        }
      }
    }
    return less.isEmpty()
        ? ", " + String.join(", ", same) + (same.size() == 1 ? " is" : " are") + " as short as now"
        : ", but " + String.join(", ", less);
  }

  /**
   * What a closed pipe cuts off. Where that is a leak alone, nothing else hung on the pipe, so the drops keep what they
   * have.
   */
  private static Closure cutOff(
      NetworkJob job, String pipe, NetworkResult.NoSolution none, boolean wasEnough) {
    String drops = job.drops().stream()
        .map(NetworkJob.Drop::name)
        .filter(none.nodes()::contains)
        .collect(Collectors.joining(", "));
    String leaks = job.leaks().stream()
        .filter(leak -> none.nodes().contains(leak.junction()))
        .map(NetworkJob.Leak::name)
        .collect(Collectors.joining(", "));
    if (!drops.isEmpty()) {
      return new Closure(pipe, "cut off: " + drops, false, false);
    }
    return leaks.isEmpty()
        ? new Closure(pipe, none.reason(), false, false)
        : new Closure(
            pipe,
            "no drop is cut off; what leaks behind it stops: " + leaks,
            wasEnough,
            !wasEnough);
  }

  /** The drops that are short with the best of what is not known exactly; empty where all is known. */
  Optional<List<String>> lackingAtBest() {
    return atBest.flatMap(
        best -> best.fold(solved -> Optional.of(lacking(job, solved)), none -> Optional.empty()));
  }

  private static List<String> lacking(NetworkJob job, NetworkResult.Solved solved) {
    return DropAnswer.all(job, solved).stream()
        .filter(DropAnswer::isShort)
        .map(answer -> answer.drop().name())
        .toList();
  }

  /** The drops that have as much as they need behind the end of a curve only, where nobody told it. */
  private static List<String> untold(NetworkJob job, NetworkResult.Solved solved) {
    return DropAnswer.all(job, solved).stream()
        .filter(answer -> !answer.isEnough() && !answer.isShort())
        .map(answer -> answer.drop().name())
        .toList();
  }

  private static NetworkAmounts amounts(NetworkJob job) {
    return new NetworkAmounts(job.units());
  }

  /** How its amounts are shown. */
  NetworkAmounts amounts() {
    return amounts(job);
  }

  /** The drop that lacks most, or has the least margin. */
  private static DropAnswer weakest(NetworkJob job, NetworkResult.Solved solved) {
    return DropAnswer.all(job, solved).stream()
        .max(Comparator.comparingDouble(DropAnswer::lack))
        .orElseThrow();
  }

  /** The drop that lacks most, or has the least margin; none where there is no steady flow. */
  Optional<DropAnswer> weakest() {
    return drops().stream().max(Comparator.comparingDouble(DropAnswer::lack));
  }

  /** What every drop has; none where there is no steady flow. */
  List<DropAnswer> drops() {
    List<DropAnswer> answers = new ArrayList<>();
    if (all instanceof NetworkResult.Solved solved) {
      Optional<NetworkResult.Solved> best =
          atBest.flatMap(result -> result.fold(Optional::of, none -> Optional.empty()));
      Set<String> untold = new HashSet<>(CurveEnds.untold(job, solved));
      best.ifPresent(flow -> untold.addAll(CurveEnds.untold(job, flow)));
      for (int i = 0; i < job.drops().size(); i++) {
        int drop = i;
        ToolFlow flow = solved.tools().get(i);
        answers.add(new DropAnswer(
            job.drops().get(i),
            flow,
            simulation.tools().isEmpty()
                ? Optional.empty()
                : simulation.tools().get(i).quantile(0.05),
            !untold.contains(flow.node()),
            best.map(solution -> solution.tools().get(drop))));
      }
    }
    return answers;
  }

  /** A pipe or part with its flow. */
  record BranchAnswer(BranchFlow flow, Optional<PipeVelocity> velocity, boolean setsDown) {}

  /** Whether a regulator leaves what it is set to; one that stands wide open only loses pressure. */
  private boolean setsDown(NetworkJob.Branch branch, BranchFlow flow) {
    return branch
        .regulator()
        .filter(regulator -> !regulator.isWideOpen(flow.massFlow(), job.supply().at(flow.inlet())))
        .isPresent();
  }

  List<BranchAnswer> branches() {
    List<BranchAnswer> answers = new ArrayList<>();
    if (all instanceof NetworkResult.Solved solved) {
      for (NetworkJob.Branch branch : job.branches()) {
        BranchFlow flow = solved.through(branch.name());
        AirState fastest = job.supply().at(flow.outlet());
        answers.add(new BranchAnswer(
            flow,
            branch
                .duty()
                .flatMap(duty -> branch
                    .pipe()
                    .map(pipe -> PipeVelocity.of(duty, pipe, flow.massFlow(), fastest))),
            setsDown(branch, flow)));
      }
    }
    return answers;
  }

  /**
   * {@return every caution once, to isolate the energy first as the sheet tells of mains closed for repair; those of
   * the work with the tools they speak of; of several alike on velocity that of the fastest pipe; last the one that
   * defers to local codes}
   */
  public List<Caution> cautions() {
    Situation repair = Situation.describe().quickCouplers().maintenance().build();
    Set<Caution> once =
        new LinkedHashSet<>(job.network().rules().toldIn(job.units()).cautions(repair));
    once.addAll(all.cautions(job.units()));
    once.addAll(velocityCautions());
    Caution deference = job.network().rules().toldIn(job.units()).deference();
    once.remove(deference);
    once.add(deference);
    return List.copyOf(once);
  }

  /** What a rule forbids, and the tools at which it does; none named where it does at every one. */
  List<ForbiddenWork> forbidden() {
    return all.fold(solved -> ForbiddenWork.all(job, solved), none -> List.of());
  }

  /** Those of the pipes, of several alike that of the fastest, with the names of all. */
  private List<Caution> velocityCautions() {
    Map<String, Caution> fastest = new LinkedHashMap<>();
    Map<String, List<String>> names = new LinkedHashMap<>();
    branches().stream()
        .filter(branch -> branch.velocity().isPresent())
        .sorted(Comparator.comparingDouble(NetworkSheet::overTheRule).reversed())
        .forEach(branch -> branch
            .velocity()
            .orElseThrow()
            .cautions(job.units())
            .forEach(caution -> {
              fastest.putIfAbsent(caution.title(), caution);
              names
                  .computeIfAbsent(caution.title(), any -> new ArrayList<>())
                  .add(branch.flow().name());
            }));
    return fastest.values().stream()
        .map(caution -> {
          List<String> of = names.getOrDefault(caution.title(), List.of());
          String others = String.join(", ", of.subList(1, of.size()));
          return new Caution(
              caution.title() + " (" + of.get(0) + (others.isEmpty() ? "" : "; also in " + others)
                  + ")",
              caution.text(),
              caution.source());
        })
        .toList();
  }

  private static double overTheRule(BranchAnswer branch) {
    return branch
        .velocity()
        .map(velocity ->
            velocity.velocity().metresPerSecond() / velocity.duty().highest().metresPerSecond())
        .orElse(0.0);
  }
}
