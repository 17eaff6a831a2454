package org.airfit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.airfit.internal.Later;
import org.airfit.internal.Sum;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.safety.Caution;
import org.airfit.source.Source;

/**
 * A flow that arrives, with what belongs to it. The pressures are known; what each element loses, and the cautions, are
 * worked out when they are first asked for, by whichever thread: all find the same.
 */
final class Arrival {

  private static final Caution BUDGET = new Caution(
      "More than a tenth of the pressure is lost",
      "Between the receiver and the tool at most 10 % of the pressure should be lost."
          + " Look at the largest shares first.",
      Source.handbook("Fluid Power Journal, article on Compressed Air Challenge training:"
          + " at most 10 percent from receiver to point of use"));

  private static final double BUDGET_SHARE = 0.1;

  private final RunPath path;
  private final MassFlow massFlow;
  private final Pass pass;
  private final IntToDoubleFunction gain;
  private final Optional<ToolDemand> tool;

  private final Later<List<ElementLoss>> shares;
  private final Later<List<Caution>> cautions;

  /** The pass is not changed afterwards. */
  Arrival(
      RunPath path,
      MassFlow massFlow,
      Pass pass,
      IntToDoubleFunction gain,
      Optional<ToolDemand> tool) {
    this.path = path;
    this.massFlow = massFlow;
    this.pass = pass;
    this.gain = gain;
    this.tool = tool;
    this.shares = Later.of(() -> shares(path, massFlow, pass, path.elements().size(), gain));
    this.cautions = Later.of(this::cautionsFound);
  }

  /** The same for a tool that takes this flow. */
  Arrival to(ToolDemand other) {
    return new Arrival(path, massFlow, pass, gain, Optional.of(other));
  }

  RunPath path() {
    return path;
  }

  /** What belongs to the numbers of an element. */
  Element.Explanation explanation(int at) {
    return path.elements().get(at).explain(massFlow, path.air(pass, at));
  }

  MassFlow massFlow() {
    return massFlow;
  }

  /** The flow with that of the others who take air. */
  MassFlow fromSupply() {
    return path.fromSupply(massFlow);
  }

  Supply supply() {
    return path.supply();
  }

  AbsolutePressure atSupply() {
    return AbsolutePressure.ofPascals(pass.pascals(0));
  }

  AbsolutePressure atTool() {
    return AbsolutePressure.ofPascals(pass.atTool());
  }

  AbsolutePressure atmosphere() {
    return path.atmosphere();
  }

  Optional<ToolDemand> tool() {
    return tool;
  }

  List<ElementLoss> shares() {
    return shares.get();
  }

  /** All but the caution on the air. */
  List<Caution> cautions() {
    return cautions.get();
  }

  /** The jump of friction at which it stands. */
  Optional<FrictionJump> jump() {
    if (Double.isNaN(pass.most())) {
      return Optional.empty();
    }
    List<String> names = new ArrayList<>();
    for (int i = 0; i < path.elements().size(); i++) {
      if (pass.unsettled(i)) {
        names.add(path.elements().get(i).name());
      }
    }
    return Optional.of(new FrictionJump(
        names, AbsolutePressure.ofPascals(pass.least()), AbsolutePressure.ofPascals(pass.most())));
  }

  /**
   * The gauge pressure is what there is to lose; at a jump of friction the most that may be lost is told. What a
   * regulator takes away down to its setting is no loss (this project's choice).
   */
  private List<Caution> cautionsFound() {
    List<Caution> cautions = new ArrayList<>(path.cautions());
    double wanted = regulated(path, pass, path.elements().size());
    double lost =
        pass.pascals(0) - wanted - (Double.isNaN(pass.least()) ? pass.atTool() : pass.least());
    double atSupply = pass.pascals(0) - path.atmosphere().pascals();
    if (lost > BUDGET_SHARE * atSupply) {
      cautions.add(BUDGET);
    }
    jump().filter(FrictionJump::shows).map(FrictionJump::caution).ifPresent(cautions::add);
    return List.copyOf(cautions);
  }

  /** What regulators among the first elements take down to what they are set to [Pa]. */
  private static double regulated(RunPath path, Pass pass, int count) {
    double sum = 0.0;
    for (int i = 0; i < count; i++) {
      sum += regulated(path.elements().get(i), pass, i);
    }
    return sum;
  }

  /** What a regulator takes down to what it is set to [Pa]; none of all else. */
  private static double regulated(Element element, Pass pass, int at) {
    return pass.pascals(at) - element.withoutLoss(pass.pascals(at));
  }

  /** What an element loses [Pa]; what a regulator takes down to what it is set to is none of it. */
  private static double lost(Element element, Pass pass, int at) {
    return Math.max(0.0, pass.pascals(at) - pass.pascals(at + 1) - regulated(element, pass, at));
  }

  /** The sum of what the elements lose [Pa]. */
  double lostByElements() {
    return Sum.of(path.elements().size(), i -> lost(path.elements().get(i), pass, i));
  }

  /** What is lost between supply and tool [Pa], without what regulators take down to what they are set to. */
  double lost() {
    double regulated =
        Sum.of(path.elements().size(), i -> regulated(path.elements().get(i), pass, i));
    return Math.max(0.0, atSupply().dropTo(atTool()).pascals() - regulated);
  }

  /** The first of the elements without which the tool would gain most; no other is explained for it. */
  ElementLoss bottleneck() {
    int count = path.elements().size();
    int at = 0;
    double most = gain.applyAsDouble(0);
    for (int i = 1; i < count; i++) {
      double other = gain.applyAsDouble(i);
      if (other > most) {
        at = i;
        most = other;
      }
    }
    double gained = most;
    double lost = lost(path, pass, count);
    return share(path, massFlow, pass, at, lost, Later.of(() -> PressureDrop.ofPascals(gained)));
  }

  /** What the first elements lose, and how much more pressure [Pa] the tool would have without each. */
  static List<ElementLoss> shares(
      RunPath path, MassFlow demand, Pass pass, int count, IntToDoubleFunction gain) {
    double lost = lost(path, pass, count);
    List<ElementLoss> shares = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int at = i;
      Later<PressureDrop> gained = Later.of(() -> PressureDrop.ofPascals(gain.applyAsDouble(at)));
      shares.add(share(path, demand, pass, i, lost, gained));
    }
    return List.copyOf(shares);
  }

  /** What the first elements lose together [Pa]. */
  private static double lost(RunPath path, Pass pass, int count) {
    return pass.pascals(0) - pass.pascals(count) - regulated(path, pass, count);
  }

  private static ElementLoss share(
      RunPath path, MassFlow demand, Pass pass, int at, double lost, Later<PressureDrop> gain) {
    Element element = path.elements().get(at);
    return new ElementLoss(
        element.name(),
        AbsolutePressure.ofPascals(pass.pascals(at)),
        AbsolutePressure.ofPascals(pass.pascals(at + 1)),
        PressureDrop.ofPascals(regulated(element, pass, at)),
        lost > 0.0 ? lost(element, pass, at) / lost : 0.0,
        gain,
        pass.chokes(at),
        pass.unsettled(at),
        Later.of(() -> element.explain(demand, path.air(pass, at))));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Arrival that
        && massFlow.equals(that.massFlow)
        && fromSupply().equals(that.fromSupply())
        && supply().equals(that.supply())
        && atmosphere().equals(that.atmosphere())
        && tool.equals(that.tool)
        && jump().equals(that.jump())
        && shares().equals(that.shares())
        && cautions().equals(that.cautions());
  }

  @Override
  public int hashCode() {
    return 31 * (31 * massFlow.hashCode() + supply().hashCode()) + Double.hashCode(pass.atTool());
  }
}
