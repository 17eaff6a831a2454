package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;

/** A working refuses a number that its formulas do not give: no line, however odd, may bring that about. */
class WorkingProperties {

  private static final List<LossModel> MODELS = Stream.of(
          Stream.of(PipeEquation.values())
              .flatMap(equation ->
                  Stream.of(FrictionLaw.values()).map(law -> LossModels.of(equation, law))),
          Stream.<LossModel>of(LineFormula.values()),
          Stream.of(LossModels.fromReservoir(FrictionLaw.COLEBROOK)))
      .flatMap(models -> models)
      .toList();

  @Provide
  Arbitrary<LossModel> models() {
    return Arbitraries.of(MODELS);
  }

  @Property(tries = 1000)
  void every_answer_has_a_working(
      @ForAll("models") LossModel model,
      @ForAll @DoubleRange(min = -2.6, max = -0.7) double bore,
      @ForAll @DoubleRange(min = -3.0, max = 4.0) double length,
      @ForAll @DoubleRange(min = 0.0, max = 0.05) double rough,
      @ForAll @DoubleRange(min = 0.0, max = 200.0) double fittings,
      @ForAll @DoubleRange(min = -8.0, max = 1.0) double flow,
      @ForAll @DoubleRange(min = -1.0, max = 1.5) double bar,
      @ForAll @DoubleRange(min = -60.0, max = 200.0) double celsius) {
    Length diameter = Length.ofMetres(Math.pow(10.0, bore));
    Conduit conduit = Conduit.of(
            diameter, Length.ofMetres(Math.pow(10.0, length)), diameter.times(rough))
        .withFittings(fittings);
    AirState inlet =
        AirState.of(AbsolutePressure.ofBar(Math.pow(10.0, bar)), Temperature.ofCelsius(celsius));
    LineLoss loss = model.loss(conduit, MassFlow.ofKilogramsPerSecond(Math.pow(10.0, flow)), inlet);
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(loss.working(units).toText()).isNotBlank();
    }
  }
}
