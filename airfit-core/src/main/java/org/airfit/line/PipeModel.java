package org.airfit.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FrictionFactor;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Velocity;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;

/** An equation of pipe flow with a law of friction; see {@link LossModel#of}. */
record PipeModel(PipeEquation equation, FrictionLaw law) implements LossModel, LineKernels {

  private static final int HALVINGS = 200;

  @Override
  public LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet) {
    double flow = massFlow.kilogramsPerSecond();
    if (flow == 0.0) {
      return still(this, conduit, massFlow, inlet);
    }
    PipeKernel kernel = kernel(conduit);
    double p1 = inlet.pressure().pascals();
    double t1 = inlet.temperature().kelvins();
    double darcy = kernel.darcy(flow, inlet.viscosity().pascalSeconds());
    double k = kernel.resistance(darcy);
    double a = kernel.parameter(flow, p1, t1);
    if (equation.chokes(a, k)) {
      double largest = chokingFlow(kernel, conduit, inlet);
      double ratio = equation.chokingPressureRatio(kernel.parameter(largest, p1, t1));
      return new LineLoss.Choked(
          this,
          conduit,
          massFlow,
          inlet,
          MassFlow.ofKilogramsPerSecond(largest),
          AbsolutePressure.ofPascals(ratio * p1));
    }
    double root = equation.root(a, k);
    double share = equation.dropShare(a, k, root);
    AbsolutePressure p2 = AbsolutePressure.ofPascals(p1 * (1.0 - share));
    if (p2.pascals() == 0.0) {
      return new LineLoss.Choked(this, conduit, massFlow, inlet, massFlow, p2);
    }
    double cooling = equation.temperatureRatio(a, root);
    AirState outlet = cooling == 1.0
        ? inlet.at(p2)
        : AirState.of(p2, Temperature.ofKelvins(cooling * t1)).withViscosity(inlet.viscosity());
    return flowing(
        this,
        conduit,
        massFlow,
        inlet,
        outlet,
        PressureDrop.ofPascals(share * p1),
        Optional.of(FrictionFactor.ofDarcy(darcy)),
        warnings(conduit, reynolds(conduit, flow, inlet), share));
  }

  @Override
  public PipeKernel kernel(double bore, double length, double roughness, double fittingLoss) {
    return new PipeKernel(this, bore, length, roughness, fittingLoss);
  }

  private PipeKernel kernel(Conduit conduit) {
    return kernel(
        conduit.bore().metres(),
        conduit.length().metres(),
        conduit.roughness().metres(),
        conduit.fittingLoss());
  }

  double friction(Conduit conduit, double flow, AirState inlet) {
    return law.darcy(reynolds(conduit, flow, inlet), conduit.relativeRoughness());
  }

  static double resistance(Conduit conduit, double darcy) {
    return PipeKernel.resistance(
        darcy, conduit.length().metres(), conduit.bore().metres(), conduit.fittingLoss());
  }

  static double reynolds(Conduit conduit, double flow, AirState inlet) {
    return PipeKernel.reynolds(flow, conduit.bore().metres(), inlet.viscosity().pascalSeconds());
  }

  /** The largest flow [kg/s] the model gives an outlet pressure for, with the friction it has at that flow. By halving in ln ṁ. */
  private double chokingFlow(PipeKernel kernel, Conduit conduit, AirState inlet) {
    double p1 = inlet.pressure().pascals();
    double t1 = inlet.temperature().kelvins();
    double viscosity = inlet.viscosity().pascalSeconds();
    // at G = 10³ p1/√(RT) even the shortest bore has choked, or lost all its pressure
    double high = Math.log(
        1.0e3 * conduit.area().squareMetres() * p1 / Math.sqrt(AirState.GAS_CONSTANT * t1));
    double low = high - 70.0;
    for (int i = 0; i < HALVINGS && high - low > 1.0e-16 * Math.abs(low); i++) {
      double middle = 0.5 * (low + high);
      double flow = Math.exp(middle);
      double k = kernel.resistance(kernel.darcy(flow, viscosity));
      if (equation.chokes(kernel.parameter(flow, p1, t1), k)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return Math.exp(low);
  }

  /** The answer where nothing flows. */
  static LineLoss.Flowing still(
      LossModel model, Conduit conduit, MassFlow massFlow, AirState inlet) {
    Velocity none = Velocity.ofMetresPerSecond(0.0);
    return new LineLoss.Flowing(
        model,
        conduit,
        massFlow,
        inlet,
        inlet,
        PressureDrop.ofPascals(0.0),
        0.0,
        Optional.empty(),
        none,
        none,
        List.of());
  }

  /** The answer where something flows, with the velocities and the warning of a high one. */
  static LineLoss.Flowing flowing(
      LossModel model,
      Conduit conduit,
      MassFlow massFlow,
      AirState inlet,
      AirState outlet,
      PressureDrop drop,
      Optional<FrictionFactor> friction,
      List<String> warnings) {
    double flux = massFlow.kilogramsPerSecond() / conduit.area().squareMetres();
    Velocity in = Velocity.ofMetresPerSecond(flux / inlet.density().kilogramsPerCubicMetre());
    Velocity out = Velocity.ofMetresPerSecond(flux / outlet.density().kilogramsPerCubicMetre());
    List<String> all = new ArrayList<>(warnings);
    double mach = out.metresPerSecond() / outlet.speedOfSound().metresPerSecond();
    if (mach > 0.3) {
      all.add(
          "Mach " + Digits.significant(mach, 3)
              + " at the outlet: close to choking, where isothermal and adiabatic answers lie a few percent apart.");
    }
    return new LineLoss.Flowing(
        model,
        conduit,
        massFlow,
        inlet,
        outlet,
        drop,
        reynolds(conduit, massFlow.kilogramsPerSecond(), inlet),
        friction,
        in,
        out,
        List.copyOf(all));
  }

  private List<String> warnings(Conduit conduit, double reynolds, double share) {
    List<String> warnings = new ArrayList<>();
    if (FrictionLaw.isTransition(reynolds)) {
      warnings.add(
          "Re " + Digits.significant(reynolds, 4)
              + " lies between 2300 and 4000, where friction is not settled; the turbulent value was taken, which is the higher.");
    } else if (!law.holds(reynolds, conduit.relativeRoughness())) {
      warnings.add("Re " + Digits.significant(reynolds, 4) + " at a relative roughness of "
          + Digits.significant(conduit.relativeRoughness(), 3)
          + " lies outside what the friction formula was published for.");
    }
    double most = switch (equation) {
      case ISOTHERMAL, ADIABATIC -> 1.0;
      case DARCY_INLET_DENSITY -> 0.1;
      case DARCY_MEAN_DENSITY -> 0.4;
    };
    if (share > most) {
      warnings.add("The drop is " + Digits.significant(100.0 * share, 3)
          + " % of the inlet pressure; this model holds up to "
          + Digits.significant(100.0 * most, 3) + " %.");
    }
    return warnings;
  }

  @Override
  public Working working(LineLoss loss, UnitSystem units) {
    return loss.fold(
        flowing -> PipeWorking.of(this, flowing, units),
        choked -> PipeWorking.of(this, choked, units));
  }

  @Override
  public String title() {
    return equation.title() + ", "
        + (law == FrictionLaw.COLEBROOK
            ? "Colebrook friction"
            : "friction after " + law.source().citation());
  }

  @Override
  public String validity() {
    return equation.validity();
  }

  @Override
  public String fitBasis() {
    return "none: derived from the balances of mass and momentum; the friction law was fitted to measurements in pipes";
  }

  @Override
  public String bias() {
    return equation.bias();
  }

  @Override
  public Source source() {
    return Source.handbook(equation.citation());
  }
}
