package org.airfit.line;

import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Evidence;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The closed equations against the differential equations they come from, integrated by Hipparchus: friction, and
 * what it costs to speed the air up.
 */
class OdeTest {

  private static final double RT = AirState.GAS_CONSTANT * 293.15;
  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));

  /** Bore [mm], length [m], mass flow [kg/s]: from a gentle loss to outlets close to choking. */
  static Stream<Arguments> lines() {
    return Stream.of(
        Arguments.of(26.64, 100.0, 0.0611),
        Arguments.of(10.0, 10.0, 0.02),
        Arguments.of(10.0, 10.0, 0.037),
        Arguments.of(8.0, 2.0, 0.04),
        Arguments.of(13.0, 0.5, 0.2),
        Arguments.of(4.0, 30.0, 0.001));
  }

  private static double integrate(
      double from, double length, java.util.function.DoubleUnaryOperator slope) {
    OrdinaryDifferentialEquation equation = new OrdinaryDifferentialEquation() {
      @Override
      public int getDimension() {
        return 1;
      }

      @Override
      public double[] computeDerivatives(double x, double[] y) {
        return new double[] {slope.applyAsDouble(y[0])};
      }
    };
    return new DormandPrince853Integrator(1.0e-12, length, 1.0e-13, 1.0e-13)
        .integrate(equation, new ODEState(0.0, new double[] {from}), length)
        .getPrimaryState()[0];
  }

  private static LineLoss.Flowing loss(
      PipeEquation equation, double bore, double length, double flow) {
    Conduit pipe =
        Conduit.of(Length.ofMillimetres(bore), Length.ofMetres(length), Length.ofMillimetres(0.03));
    return (LineLoss.Flowing) LossModels.of(equation, FrictionLaw.COLEBROOK)
        .loss(pipe, MassFlow.ofKilogramsPerSecond(flow), AIR);
  }

  private static void compare(PipeEquation equation, String line, double integrated, double ours) {
    Comparison.of(
            "Line: differential equations integrated",
            equation.title() + ", " + line,
            integrated,
            "Pa",
            Evidence.recomputed("momentum balance, integrated by hipparchus-ode 4.0.3 to 1e-13"))
        .isMetWithinFraction(ours, 1.0e-8, "asked of an independent integration");
  }

  @ParameterizedTest
  @MethodSource("lines")
  void isothermal_flow_obeys_its_balance_of_momentum(double bore, double length, double flow) {
    LineLoss.Flowing loss = loss(PipeEquation.ISOTHERMAL, bore, length, flow);
    double friction = loss.friction().orElseThrow().darcy();
    double g = flow / loss.conduit().area().squareMetres();
    // dp/dx (1 − G² R T/p²) = −λ/(2D) G² R T/p
    double p2 = integrate(
        8.0e5,
        length,
        p -> -friction / (2.0e-3 * bore) * g * g * RT / p / (1.0 - g * g * RT / (p * p)));
    compare(
        PipeEquation.ISOTHERMAL,
        bore + " mm, " + length + " m, " + flow + " kg/s",
        p2,
        loss.outlet().pressure().pascals());
  }

  @ParameterizedTest
  @MethodSource("lines")
  void adiabatic_flow_obeys_its_balances(double bore, double length, double flow) {
    LineLoss.Flowing loss = loss(PipeEquation.ADIABATIC, bore, length, flow);
    double friction = loss.friction().orElseThrow().darcy();
    double m1 = loss.inletMach();
    // dM²/dx = γ M⁴ (1 + M²/5) λ/(D (1 − M²)), with γ = 1.4
    double square = integrate(
        m1 * m1,
        length,
        m -> 1.4 * m * m * (1.0 + 0.2 * m) / (1.0 - m) * friction / (1.0e-3 * bore));
    double p2 =
        8.0e5 * m1 / Math.sqrt(square) * Math.sqrt((1.0 + 0.2 * m1 * m1) / (1.0 + 0.2 * square));
    compare(
        PipeEquation.ADIABATIC,
        bore + " mm, " + length + " m, " + flow + " kg/s",
        p2,
        loss.outlet().pressure().pascals());
  }
}
