package org.airfit.examples.jobsheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.PipeDuty;
import org.airfit.line.PipeVelocity;
import org.airfit.network.BranchFlow;
import org.airfit.network.Network;
import org.airfit.network.NetworkResult;
import org.airfit.network.NetworkSimulation;
import org.airfit.network.ToolFlow;
import org.airfit.quantity.ConductanceUnit;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRule;

/**
 * What a network does with all its tools running, as they run by their use factors, with each pipe closed in turn, and with single branches made wider.
 *
 * @param job the network
 * @param all all tools at once
 * @param shop tools drawn at random by their use factors
 * @param closures what is left with each main closed
 * @param cures what single changes give to the drop that lacks most, the most first; only those worth 0.01 bar
 */
record NetworkSheet(
    NetworkJob job,
    NetworkResult all,
    NetworkSimulation shop,
    List<Closure> closures,
    List<Cure> cures) {

  private static final int TRIALS = 400;
  private static final long SEED = 1;
  private static final double WIDER = 1.25;
  private static final double LARGER = 1.5;
  private static final double WORTH_PASCALS = 1000.0;
  private static final double HIGH_PASCALS = 1.0e5;

  /** A pipe closed for repair. */
  record Closure(String pipe, String answer, boolean serves) {}

  /** A change and what the weakest drop gains by it. */
  record Cure(String what, double pascals, double lackAfter) {}

  /** What a drop has: its pressure with all running, and what it has or exceeds in 95 % of the time it runs. */
  record Fare(NetworkJob.Drop drop, ToolFlow flow, Optional<GaugePressure> usual) {

    /** How much is missing [Pa]; negative where there is a margin. */
    double lack() {
      return drop.needs().pascals() - flow.atTool().pascals();
    }

    boolean isEnough() {
      return lack() <= 0.0 && !flow.isStarved();
    }

    /** What becomes of it in a few words. */
    String verdict() {
      if (isEnough()) {
        return "enough";
      }
      // a tool of fixed flow that does not get it has nothing left at its inlet
      boolean fixed = flow.tool().ratedInlet().isEmpty();
      return fixed && flow.isStarved() ? "starved" : "too little";
    }
  }

  static NetworkSheet of(NetworkJob job) {
    NetworkResult all = job.network().solve();
    List<Closure> closures = new ArrayList<>();
    List<Cure> cures = new ArrayList<>();
    if (all instanceof NetworkResult.Solved solved) {
      for (NetworkJob.Branch branch : job.branches()) {
        boolean main = branch.duty().filter(duty -> duty != PipeDuty.BRANCH).isPresent();
        if (main) {
          closures.add(closed(job, solved, branch.name()));
        }
      }
      cures.addAll(cures(job, solved));
    }
    return new NetworkSheet(job, all, job.network().simulate(SEED, TRIALS), closures, cures);
  }

  private static Closure closed(NetworkJob job, NetworkResult.Solved open, String pipe) {
    List<String> before = lacking(job, open);
    return job.network()
        .without(pipe)
        .solve()
        .fold(
            solved -> {
              List<String> more = new ArrayList<>(lacking(job, solved));
              more.removeAll(before);
              Fare worst = weakest(job, solved);
              String least = "; weakest is " + worst.drop().name() + " with "
                  + InWords.pressure(worst.flow().atTool());
              return more.isEmpty()
                  ? new Closure(pipe, "no drop falls short that did not before" + least, true)
                  : new Closure(pipe, "too little at " + String.join(", ", more) + least, false);
            },
            none -> new Closure(
                pipe,
                "cut off: "
                    + job.drops().stream()
                        .map(NetworkJob.Drop::name)
                        .filter(none.nodes()::contains)
                        .collect(Collectors.joining(", ")),
                false));
  }

  private static List<String> lacking(NetworkJob job, NetworkResult.Solved solved) {
    return fares(job, solved).stream()
        .filter(fare -> !fare.isEnough())
        .map(fare -> fare.drop().name())
        .toList();
  }

  private static String names(List<Fare> fares) {
    return fares.stream().map(fare -> fare.drop().name()).collect(Collectors.joining(", "));
  }

  private static List<Cure> cures(NetworkJob job, NetworkResult.Solved now) {
    double lack = weakest(job, now).lack();
    List<Cure> cures = new ArrayList<>();
    for (NetworkJob.Branch branch : job.branches()) {
      branch.pipe().ifPresent(pipe -> {
        Conduit wider = pipe.withBore(pipe.bore().times(WIDER));
        gain(
                job,
                job.network().replacing(branch.name(), wider),
                lack,
                branch.name() + ": a bore of " + wider.bore().format(LengthUnit.MILLIMETRE, 1)
                    + " instead of " + pipe.bore().format(LengthUnit.MILLIMETRE, 1))
            .ifPresent(cures::add);
      });
      branch.part().ifPresent(part -> {
        FlowCapacity larger = FlowCapacity.of(
            SonicConductance.ofCubicMetresPerSecondPascal(
                LARGER * part.conductance().cubicMetresPerSecondPascal()),
            part.criticalPressureRatio());
        gain(
                job,
                job.network().replacing(branch.name(), larger),
                lack,
                branch.name() + ": one of "
                    + larger.conductance().format(ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR, 1)
                    + " instead of "
                    + part.conductance().format(ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR, 1))
            .ifPresent(cures::add);
      });
    }
    cures.sort(Comparator.comparingDouble(Cure::pascals).reversed());
    return cures;
  }

  private static Optional<Cure> gain(NetworkJob job, Network changed, double lack, String what) {
    return changed
        .solve()
        .fold(
            solved -> {
              double after = weakest(job, solved).lack();
              return lack - after >= WORTH_PASCALS
                  ? Optional.of(new Cure(what, lack - after, after))
                  : Optional.empty();
            },
            none -> Optional.empty());
  }

  private static List<Fare> fares(NetworkJob job, NetworkResult.Solved solved) {
    List<Fare> fares = new ArrayList<>();
    for (int i = 0; i < job.drops().size(); i++) {
      fares.add(new Fare(job.drops().get(i), solved.tools().get(i), Optional.empty()));
    }
    return fares;
  }

  /** The drop that lacks most, or has the least margin. */
  private static Fare weakest(NetworkJob job, NetworkResult.Solved solved) {
    return fares(job, solved).stream()
        .max(Comparator.comparingDouble(Fare::lack))
        .orElseThrow();
  }

  /** What every drop has; none where there is no steady flow. */
  List<Fare> fares() {
    List<Fare> fares = new ArrayList<>();
    if (all instanceof NetworkResult.Solved solved) {
      for (int i = 0; i < job.drops().size(); i++) {
        fares.add(new Fare(
            job.drops().get(i),
            solved.tools().get(i),
            shop.tools().isEmpty() ? Optional.empty() : shop.tools().get(i).quantile(0.05)));
      }
    }
    return fares;
  }

  /** A pipe or part with its flow. */
  record Way(BranchFlow flow, Optional<PipeVelocity> velocity) {}

  List<Way> ways() {
    List<Way> ways = new ArrayList<>();
    if (all instanceof NetworkResult.Solved solved) {
      for (NetworkJob.Branch branch : job.branches()) {
        BranchFlow flow = solved.through(branch.name());
        AirState fastest = job.supply().at(flow.outlet());
        ways.add(new Way(
            flow,
            branch
                .duty()
                .flatMap(duty ->
                    branch.pipe().map(pipe -> duty.judge(pipe, flow.massFlow(), fastest)))));
      }
    }
    return ways;
  }

  /** The whole sheet in a few lines. */
  List<InWords.Line> inShort() {
    List<InWords.Line> lines = new ArrayList<>();
    all.fold(
        solved -> {
          List<Fare> fares = fares();
          List<Fare> lacking = fares.stream().filter(fare -> !fare.isEnough()).toList();
          Fare worst = weakest(job, solved);
          lines.add(new InWords.Line(
              "All at once",
              (lacking.isEmpty()
                      ? "all " + fares.size() + " drops have what they need. "
                      : "too little at " + lacking.size() + " of " + fares.size() + " drops: "
                          + names(lacking) + ". ")
                  + "Weakest is " + worst.drop().name() + " with "
                  + InWords.pressure(worst.flow().atTool()) + ", needed "
                  + InWords.pressure(worst.drop().needs()) + "."));
          if (!solved.choking().isEmpty()) {
            lines.add(new InWords.Line(
                "Chokes",
                solved.choking().stream()
                        .map(BranchFlow::name)
                        .collect(Collectors.joining(", "))
                    + ": no more goes through, whatever the pressure behind."));
          }
          lines.add(new InWords.Line("As they run", usual(fares)));
          lines.add(new InWords.Line(
              "To change",
              cures.isEmpty()
                  ? "no single branch made wider gives the weakest drop as much as 0.01 bar."
                  : InWords.sentence(cures.get(0), worst.drop().name())));
          List<Fare> high =
              fares.stream().filter(fare -> -fare.lack() > HIGH_PASCALS).toList();
          if (!high.isEmpty()) {
            lines.add(new InWords.Line(
                "Set down",
                "more than 1 bar above the need at " + names(high)
                    + ": a regulator at the drop spares air and tool."));
          }
          List<String> must =
              closures.stream().filter(c -> !c.serves()).map(Closure::pipe).toList();
          lines.add(new InWords.Line(
              "For repair",
              must.isEmpty()
                  ? "any one main may be closed with all tools running."
                  : "with all tools running any one main may be closed but "
                      + String.join(", ", must) + "."));
          return lines;
        },
        none -> {
          lines.add(new InWords.Line("No answer", none.reason()));
          return lines;
        });
    return lines;
  }

  private static String usual(List<Fare> fares) {
    List<Fare> lacking = fares.stream()
        .filter(fare -> fare.usual()
            .filter(pressure -> pressure.compareTo(fare.drop().needs()) < 0)
            .isPresent())
        .toList();
    return "by their use factors, drawn " + TRIALS + " times, "
        + (lacking.isEmpty()
            ? "every drop has what it needs in 95 % of its running time or more."
            : "short in more than 5 % of their running time: " + names(lacking) + ".");
  }

  /** Every caution once; of several alike that of the fastest pipe. */
  List<Caution> cautions() {
    Map<String, Caution> once = new LinkedHashMap<>();
    all.cautions().forEach(caution -> once.putIfAbsent(caution.title(), caution));
    ways().stream()
        .flatMap(way -> way.velocity().stream())
        .sorted(Comparator.comparingDouble(
                (PipeVelocity velocity) -> velocity.velocity().metresPerSecond()
                    / velocity.duty().highest().metresPerSecond())
            .reversed())
        .flatMap(velocity -> velocity.cautions().stream())
        .forEach(caution -> once.putIfAbsent(caution.title(), caution));
    // the sheet tells of mains closed for repair
    SafetyRule isolate = SafetyRule.ENERGY_ISOLATION;
    once.put(isolate.title(), new Caution(isolate.title(), isolate.demand(), isolate.source()));
    return List.copyOf(once.values());
  }

  static String gained(double pascals) {
    return InWords.drop(PressureDrop.ofPascals(pascals));
  }
}
