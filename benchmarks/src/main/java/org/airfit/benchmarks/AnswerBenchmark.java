package org.airfit.benchmarks;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.airfit.air.AirState;
import org.airfit.circuit.Run;
import org.airfit.circuit.RunResult;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/** How long the answers of a counter take: a friction factor, a run from supply to tool. Inputs vary, the seed is fixed. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class AnswerBenchmark {

  private static final int N = 256;

  private final double[] reynolds = new double[N];
  private final MassFlow[] flows = new MassFlow[N];
  private Run run = Run.from(
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)),
      AbsolutePressure.STANDARD_ATMOSPHERE);

  /** Fills the inputs and refuses to time wrong answers. */
  @Setup
  public void fill() {
    SplittableRandom random = new SplittableRandom(1);
    FlowCapacity coupler =
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3);
    run = run.through("coupler", coupler)
        .through(
            "hose",
            Conduit.of(
                Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01)))
        .through("coupler", coupler);
    for (int i = 0; i < N; i++) {
      reynolds[i] = Math.pow(10.0, random.nextDouble(3.7, 8.0));
      flows[i] = MassFlow.ofKilogramsPerSecond(random.nextDouble(0.001, 0.015));
    }
    // Re 1e5, ε/D 1e-3: λ = 0.0221744, Colebrook 1939 in closed form
    double known = FrictionLaw.COLEBROOK.factor(1.0e5, 1.0e-3).darcy();
    if (!(Math.abs(known - 0.0221744) < 1.0e-6)) {
      throw new IllegalStateException("wrong friction factor " + known);
    }
    if (!(run.at(flows[0]) instanceof RunResult.Delivered)) {
      throw new IllegalStateException("the run starves");
    }
  }

  /**
   * Friction factors after Colebrook.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void colebrook(Blackhole sink) {
    for (double re : reynolds) {
      sink.consume(FrictionLaw.COLEBROOK.factor(re, 1.0e-4).darcy());
    }
  }

  /**
   * Runs of two couplers and a hose.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void runFromSupplyToTool(Blackhole sink) {
    for (MassFlow flow : flows) {
      sink.consume(run.at(flow));
    }
  }
}
