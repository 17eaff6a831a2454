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
record PipeModel(PipeEquation equation, FrictionLaw law) implements LossModel {

  private static final int HALVINGS = 200;

  @Override
  public LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet) {
    double flow = massFlow.kilogramsPerSecond();
    if (flow == 0.0) {
      return still(this, conduit, massFlow, inlet);
    }
    double area = conduit.area().squareMetres();
    double rt = AirState.GAS_CONSTANT * inlet.temperature().kelvins();
    double p1 = inlet.pressure().pascals();
    double reynolds = reynolds(conduit, flow, inlet);
    double darcy = friction(conduit, flow, inlet);
    double k = resistance(conduit, darcy);
    double a = IsothermalKernels.parameter(flow, area, rt, p1);
    if (chokes(a, k)) {
      double largest = chokingFlow(conduit, inlet, area, rt);
      double ratio =
          equation.chokingPressureRatio(IsothermalKernels.parameter(largest, area, rt, p1));
      return new LineLoss.Choked(
          this,
          conduit,
          massFlow,
          inlet,
          MassFlow.ofKilogramsPerSecond(largest),
          AbsolutePressure.ofPascals(ratio * p1));
    }
    double share = equation.dropShare(a, k);
    AbsolutePressure p2 = AbsolutePressure.ofPascals(p1 * (1.0 - share));
    if (p2.pascals() == 0.0) {
      return new LineLoss.Choked(this, conduit, massFlow, inlet, massFlow, p2);
    }
    double cooling = equation.temperatureRatio(a, k);
    AirState outlet = cooling == 1.0
        ? inlet.at(p2)
        : AirState.of(p2, Temperature.ofKelvins(cooling * inlet.temperature().kelvins()))
            .withViscosity(inlet.viscosity());
    return flowing(
        this,
        conduit,
        massFlow,
        inlet,
        outlet,
        PressureDrop.ofPascals(share * p1),
        Optional.of(FrictionFactor.ofDarcy(darcy)),
        warnings(conduit, reynolds, share));
  }

  private boolean chokes(double a, double k) {
    boolean supersonicInlet = switch (equation) {
      case ISOTHERMAL -> a >= 1.0;
      case ADIABATIC -> a >= AirState.HEAT_CAPACITY_RATIO;
      case DARCY_INLET_DENSITY, DARCY_MEAN_DENSITY -> false;
    };
    return supersonicInlet || k > equation.largestResistance(a);
  }

  double friction(Conduit conduit, double flow, AirState inlet) {
    return law.darcy(reynolds(conduit, flow, inlet), conduit.relativeRoughness());
  }

  /** k = λL/D + ΣK. */
  static double resistance(Conduit conduit, double darcy) {
    return darcy * conduit.length().metres() / conduit.bore().metres() + conduit.fittingLoss();
  }

  static double reynolds(Conduit conduit, double flow, AirState inlet) {
    return 4.0 * flow / (Math.PI * conduit.bore().metres() * inlet.viscosity().pascalSeconds());
  }

  /** The largest flow [kg/s] the model gives an outlet pressure for, with the friction it has at that flow. By halving in ln ṁ. */
  private double chokingFlow(Conduit conduit, AirState inlet, double area, double rt) {
    double p1 = inlet.pressure().pascals();
    // at G = 10³ p1/√(RT) even the shortest bore has choked, or lost all its pressure
    double high = Math.log(1.0e3 * area * p1 / Math.sqrt(rt));
    double low = high - 70.0;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = 0.5 * (low + high);
      double flow = Math.exp(middle);
      double k = resistance(conduit, friction(conduit, flow, inlet));
      if (chokes(IsothermalKernels.parameter(flow, area, rt, p1), k)) {
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
