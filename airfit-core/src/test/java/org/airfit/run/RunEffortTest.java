package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicInteger;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LossModels;
import org.airfit.line.PipeEquation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How often the questions that search lead a flow along the run, which is what they cost. */
class RunEffortTest {

  /**
   * What a question that searches may cost in forward runs, our choice; three more where what the tool would take at
   * most does not get through, as with the narrowest hose.
   */
  private static final int MOST = 11;

  private final AtomicInteger asked = new AtomicInteger();

  /** Lets all air pass, and counts how often it was asked. */
  private record Counting(AtomicInteger asked) implements FlowElement {

    @Override
    public double outlet(double flow, double pascals, double kelvins, double viscosity) {
      asked.incrementAndGet();
      return pascals;
    }

    @Override
    public double largest(double pascals, double kelvins, double viscosity) {
      return Double.POSITIVE_INFINITY;
    }
  }

  private Run run(double boreMm, double metres) {
    return Run.from(
            AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)),
            AbsolutePressure.STANDARD_ATMOSPHERE)
        .through("counter", new Counting(asked))
        .through(
            "filter", FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(8.0), 0.4))
        .through(
            "hose",
            Conduit.of(
                Length.ofMillimetres(boreMm), Length.ofMetres(metres), Length.ofMillimetres(0.01)),
            LossModels.of(PipeEquation.ISOTHERMAL, FrictionLaw.COLEBROOK))
        .through(
            "coupler", FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3));
  }

  @ParameterizedTest
  @CsvSource({"16, 20", "9.5, 10", "8, 30", "6, 15", "13, 60", "25, 200"})
  void aQuestionThatSearchesLeadsAFlowAlongElevenTimesAtMost(double boreMm, double metres) {
    Run run = run(boreMm, metres);
    for (double bar : new double[] {5.0, 6.0, 6.8}) {
      asked.set(0);
      assertThat(run.largestFlow(GaugePressure.ofBar(bar))).isPresent();
      assertThat(asked).as("largest flow at %s bar", bar).hasValueLessThanOrEqualTo(MOST);
    }
    for (double litres : new double[] {3.0, 10.0, 20.0}) {
      ToolDemand tool = ToolDemand.following(
          "tool", FreeAirFlow.ofAnrLitresPerSecond(litres), AbsolutePressure.ofBar(7.2));
      asked.set(0);
      asked.set(0);
      assertThat(run.balance(tool)).isInstanceOf(RunResult.Delivered.class);
      assertThat(asked)
          .as("balance at %s L/s", litres)
          .hasValueLessThanOrEqualTo(boreMm > 6.0 ? MOST : MOST + 3);
    }
  }
}
