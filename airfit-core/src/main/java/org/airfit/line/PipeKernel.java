package org.airfit.line;

import org.airfit.air.AirState;
import org.airfit.flow.AirKernel;

/** One line by an equation of pipe flow: plain doubles in SI, no checks, no allocation. {@link PipeModel} wraps it. */
final class PipeKernel implements AirKernel {

  private final PipeEquation equation;
  private final FrictionLaw law;
  private final double bore;
  private final double length;
  private final double relativeRoughness;
  private final double fittingLoss;
  private final double area;

  PipeKernel(PipeModel model, double bore, double length, double roughness, double fittingLoss) {
    this.equation = model.equation();
    this.law = model.law();
    this.bore = bore;
    this.length = length;
    this.relativeRoughness = roughness / bore;
    this.fittingLoss = fittingLoss;
    this.area = 0.25 * Math.PI * bore * bore;
  }

  /** Re = 4 ṁ/(π D μ). */
  static double reynolds(double massFlow, double bore, double viscosity) {
    return 4.0 * massFlow / (Math.PI * bore * viscosity);
  }

  /** k = λL/D + ΣK. */
  static double resistance(double darcy, double length, double bore, double fittingLoss) {
    return darcy * length / bore + fittingLoss;
  }

  double darcy(double massFlow, double viscosity) {
    return law.darcy(reynolds(massFlow, bore, viscosity), relativeRoughness);
  }

  double resistance(double darcy) {
    return resistance(darcy, length, bore, fittingLoss);
  }

  /** a = G² R T/p1². */
  double parameter(double massFlow, double p1, double t1) {
    return IsothermalKernels.parameter(massFlow, area, AirState.GAS_CONSTANT * t1, p1);
  }

  @Override
  public boolean pass(double massFlow, double[] air) {
    if (massFlow == 0.0) {
      return true;
    }
    double k = resistance(darcy(massFlow, air[VISCOSITY]));
    double a = parameter(massFlow, air[PASCALS], air[KELVINS]);
    if (equation.chokes(a, k)) {
      return false;
    }
    double root = equation.root(a, k);
    double outlet = air[PASCALS] * (1.0 - equation.dropShare(a, k, root));
    if (outlet == 0.0) {
      return false;
    }
    air[PASCALS] = outlet;
    air[KELVINS] *= equation.temperatureRatio(a, root);
    return true;
  }
}
