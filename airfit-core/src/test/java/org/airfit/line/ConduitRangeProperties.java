package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;

/** The ends of a range bound the loss of every conduit within; the argument is in the javadoc, this tries it. */
class ConduitRangeProperties {

  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));

  private static double between(double low, double high, double share) {
    return low + share * (high - low);
  }

  private static Conduit conduit(double bore, double metres, double roughness, double k) {
    return Conduit.of(
            Length.ofMillimetres(bore),
            Length.ofMetres(metres),
            Length.ofMillimetres(Math.min(roughness, 0.05 * bore)))
        .withFittings(k);
  }

  /** The drop [Pa], or infinity where the line chokes: more than any drop. */
  private static double drop(LossModel model, Conduit conduit, double kilogramsPerSecond) {
    return model
        .loss(conduit, MassFlow.ofKilogramsPerSecond(kilogramsPerSecond), AIR)
        .fold(flowing -> flowing.drop().pascals(), choked -> Double.POSITIVE_INFINITY);
  }

  private static void isBounded(ConduitRange range, Conduit within, double flow) {
    for (PipeEquation equation : PipeEquation.values()) {
      LossModel model = LossModels.of(equation, FrictionLaw.COLEBROOK);
      assertThat(drop(model, within, flow))
          .as(equation.title())
          .isGreaterThanOrEqualTo(drop(model, range.most(), flow) * (1.0 - 1.0e-9))
          .isLessThanOrEqualTo(drop(model, range.least(), flow) * (1.0 + 1.0e-9));
    }
  }

  private static ConduitRange range(double bore, double wider, double rough, double rougher) {
    return new ConduitRange(
        conduit(bore, 12.0, rougher, 4.0),
        conduit(bore * wider, 10.0, Math.min(rough, 0.05 * bore), 1.0),
        Source.demo("a hose"));
  }

  @Property(tries = 300)
  void every_conduit_within_loses_what_lies_between_the_ends(
      @ForAll @Scale(12) @DoubleRange(min = 4.0, max = 30.0) double bore,
      @ForAll @Scale(12) @DoubleRange(min = 1.0, max = 1.6) double wider,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 0.1) double rough,
      @ForAll @Scale(12) @DoubleRange(min = 0.1, max = 1.5) double rougher,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 1.0) double share,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 1.0) double roughShare,
      @ForAll @Scale(12) @DoubleRange(min = -6.0, max = -0.5) double exponent) {
    ConduitRange range = range(bore, wider, rough, rougher);
    Conduit within = conduit(
        between(bore, bore * wider, share),
        between(10.0, 12.0, roughShare),
        between(
            range.most().roughness().millimetres(),
            range.least().roughness().millimetres(),
            roughShare),
        between(1.0, 4.0, 1.0 - share));
    isBounded(range, within, Math.pow(10.0, exponent));
  }

  /** The flow is such that some bore of the range stands at Re 2300, a digit below or above. */
  @Property(tries = 300)
  void the_order_holds_across_the_jump_of_friction(
      @ForAll @Scale(12) @DoubleRange(min = 4.0, max = 30.0) double bore,
      @ForAll @Scale(12) @DoubleRange(min = 1.0, max = 1.6) double wider,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 1.0) double share,
      @ForAll @Scale(12) @DoubleRange(min = 0.0, max = 1.0) double atJump,
      @ForAll @Scale(12) @DoubleRange(min = -1.0e-9, max = 1.0e-9) double off) {
    double viscosity = AIR.viscosity().pascalSeconds();
    double flow = 2300.0
        * Math.PI
        * between(bore, bore * wider, atJump)
        / 1000.0
        * viscosity
        / 4.0
        * (1.0 + off);
    isBounded(
        range(bore, wider, 0.01, 0.1),
        conduit(between(bore, bore * wider, share), 11.0, 0.05, 2.0),
        flow);
  }
}
