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
import org.airfit.quantity.Velocity;
import org.airfit.source.Source;

/** See {@link LossModel#isothermal()}; the equation stands in {@link IsothermalKernels}. */
enum IsothermalModel implements LossModel {
  MODEL;

  private static final FrictionLaw LAW = FrictionLaw.COLEBROOK;

  @Override
  public LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet) {
    double flow = massFlow.kilogramsPerSecond();
    if (flow == 0.0) {
      Velocity still = Velocity.ofMetresPerSecond(0.0);
      return new LineLoss.Flowing(
          this,
          conduit,
          massFlow,
          inlet,
          inlet,
          PressureDrop.ofPascals(0.0),
          0.0,
          Optional.empty(),
          still,
          still,
          List.of());
    }
    double area = conduit.area().squareMetres();
    double bore = conduit.bore().metres();
    double mu = inlet.viscosity().pascalSeconds();
    double rt = AirState.GAS_CONSTANT * inlet.temperature().kelvins();
    double p1 = inlet.pressure().pascals();
    double reynolds = 4.0 * flow / (Math.PI * bore * mu);
    double darcy = LAW.darcy(reynolds, conduit.relativeRoughness());
    double k = darcy * conduit.length().metres() / bore + conduit.fittingLoss();
    double a = IsothermalKernels.parameter(flow, area, rt, p1);
    if (a >= 1.0 || k > IsothermalKernels.largestResistance(a)) {
      double largest = IsothermalKernels.chokingFlow(
          LAW,
          bore,
          area,
          conduit.length().metres(),
          conduit.relativeRoughness(),
          conduit.fittingLoss(),
          mu,
          rt,
          p1);
      return new LineLoss.Choked(
          this,
          conduit,
          massFlow,
          inlet,
          MassFlow.ofKilogramsPerSecond(largest),
          AbsolutePressure.ofPascals(largest / area * Math.sqrt(rt)));
    }
    double u = IsothermalKernels.logSquaredRatio(a, k);
    AirState outlet = inlet.at(AbsolutePressure.ofPascals(p1 * Math.exp(-0.5 * u)));
    Velocity in =
        Velocity.ofMetresPerSecond(flow / (area * inlet.density().kilogramsPerCubicMetre()));
    Velocity out =
        Velocity.ofMetresPerSecond(flow / (area * outlet.density().kilogramsPerCubicMetre()));
    return new LineLoss.Flowing(
        this,
        conduit,
        massFlow,
        inlet,
        outlet,
        PressureDrop.ofPascals(-p1 * Math.expm1(-0.5 * u)),
        reynolds,
        Optional.of(FrictionFactor.ofDarcy(darcy)),
        in,
        out,
        warnings(reynolds, out, inlet));
  }

  private static List<String> warnings(double reynolds, Velocity out, AirState inlet) {
    List<String> warnings = new ArrayList<>();
    if (FrictionLaw.isTransition(reynolds)) {
      warnings.add(
          "Re " + Digits.significant(reynolds, 4)
              + " lies between 2300 and 4000, where friction is not settled; the turbulent value was taken, which is the higher.");
    }
    if (reynolds > FrictionLaw.HIGHEST) {
      warnings.add(
          "Re " + Digits.significant(reynolds, 4)
              + " is above 1e9, beyond every measurement of friction; Colebrook was taken all the same.");
    }
    double mach = out.metresPerSecond() / inlet.speedOfSound().metresPerSecond();
    if (mach > 0.3) {
      warnings.add(
          "Mach " + Digits.significant(mach, 3)
              + " at the outlet: close to choking, where air cools and an isothermal answer is a few percent off.");
    }
    return List.copyOf(warnings);
  }

  @Override
  public String title() {
    return "isothermal flow, Colebrook friction";
  }

  @Override
  public String validity() {
    return "ideal gas at one temperature, any length, up to choking at Mach 0.845; within 0.5 % of adiabatic flow in long shop lines";
  }

  @Override
  public Source source() {
    return Source.handbook(
        "isothermal pipe flow, as in Crane TP-410 and textbooks of gas dynamics");
  }
}
