package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.FlowElement;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FrictionFactor;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/** An equation of pipe flow with a law of friction; see {@link LossModels#of}. */
record PipeModel(PipeEquation equation, FrictionLaw law) implements LossModel {

  @Override
  public LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet) {
    double flow = massFlow.kilogramsPerSecond();
    if (PipeElement.countsAsNone(flow)) {
      return PipeModel.losesNothing(this, conduit, massFlow, inlet);
    }
    PipeElement element = new PipeElement(equation, law, conduit);
    double p1 = inlet.pressure().pascals();
    double t1 = inlet.temperature().kelvins();
    double viscosity = inlet.viscosity().pascalSeconds();
    double darcy = element.darcy(flow, viscosity);
    double k = element.resistance(darcy);
    double a = element.parameter(flow, p1, t1);
    boolean chokes = PipeElement.passesNowhere(flow) || equation.chokes(a, k);
    double root = chokes ? 0.0 : equation.root(a, k);
    double share = chokes ? 1.0 : equation.dropShare(a, k, root);
    AbsolutePressure p2 = AbsolutePressure.ofPascals(p1 * (1.0 - share));
    if (p2.pascals() == 0.0) {
      double largest =
          Math.min(Math.min(flow, PipeElement.MOST_FLOW), element.largest(p1, t1, viscosity));
      double ratio = equation.chokingPressureRatio(element.parameter(largest, p1, t1));
      return LineLoss.choked(
          this,
          conduit,
          massFlow,
          inlet,
          MassFlow.ofKilogramsPerSecond(largest),
          AbsolutePressure.ofPascals(ratio * p1));
    }
    double cooling = equation.temperatureRatio(a, root);
    AirState outlet = cooling == 1.0
        ? inlet.at(p2)
        : AirState.of(p2, Temperature.ofKelvins(cooling * t1)).withViscosity(inlet.viscosity());
    double reynolds = PipeElement.reynolds(flow, conduit.bore().metres(), viscosity);
    return LineLoss.flowing(
        this,
        conduit,
        massFlow,
        inlet,
        outlet,
        PressureDrop.ofPascals(share * p1),
        Optional.of(FrictionFactor.ofDarcy(darcy)),
        warnings(conduit, reynolds, share));
  }

  /** The answer of a flow that counts as none. */
  static LineLoss losesNothing(
      LossModel model, Conduit conduit, MassFlow massFlow, AirState inlet) {
    return LineLoss.flowing(
        model,
        conduit,
        massFlow,
        inlet,
        inlet,
        PressureDrop.ofPascals(0.0),
        Optional.empty(),
        List.of());
  }

  @Override
  public FlowElement element(Conduit conduit) {
    return new PipeElement(equation, law, Objects.requireNonNull(conduit, "conduit"));
  }

  /** Refuses to explain what another model found. */
  static void requireOwn(LossModel model, LineLoss loss) {
    if (!loss.model().equals(model)) {
      throw new IllegalArgumentException("loss must be one that " + model.title()
          + " gave, was one of " + loss.model().title());
    }
  }

  private List<String> warnings(Conduit conduit, double reynolds, double share) {
    List<String> warnings = new ArrayList<>();
    if (FrictionLaw.isTransition(reynolds)) {
      warnings.add("Re " + Digits.significant(reynolds, 4)
          + " lies between 2300 and 4000, where friction is not settled;"
          + " the turbulent value was taken, which is the higher.");
    } else if (!law.holds(reynolds, conduit.relativeRoughness())) {
      warnings.add("Re " + Digits.significant(reynolds, 4) + " at a relative roughness of "
          + Digits.significant(conduit.relativeRoughness(), 3)
          + " lies outside what the friction formula was published for.");
    }
    double most = equation.largestDropShare();
    if (share > most) {
      warnings.add("The drop is " + Digits.significant(100.0 * share, 3)
          + " % of the inlet pressure; this model holds up to "
          + Digits.significant(100.0 * most, 3) + " %.");
    }
    return warnings;
  }

  @Override
  public Working working(LineLoss loss, UnitSystem units) {
    PipeModel.requireOwn(this, loss);
    return loss.fold(
        flowing -> PipeWorking.of(equation, law, source(), flowing, units),
        choked -> PipeWorking.of(equation, source(), choked, units));
  }

  @Override
  public String title() {
    return equation.title() + ", " + law.title();
  }

  @Override
  public String validity() {
    return equation.validity();
  }

  @Override
  public String fitBasis() {
    return FIT_BASIS;
  }

  static final String FIT_BASIS =
      "none: derived from the balances of mass and momentum; the friction law was fitted to measurements in pipes";

  @Override
  public String bias() {
    return equation.bias();
  }

  @Override
  public Source source() {
    return Source.handbook(equation.citation());
  }
}
