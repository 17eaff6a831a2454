package org.airfit.benchmarks;

import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.LossModels;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
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
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long a million questions take, on one core and on two: what arrives at the tool of a run of pipe, filter, coupling
 * and hose, whose flow varies. The seed is fixed.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Benchmark)
public class BatchBenchmark {

  private static final int N = 1_000_000;

  private final double[] flows = new double[N];
  private final double[] left = new double[N];
  private final ForkJoinPool two = new ForkJoinPool(2);
  private Run run = Run.from(
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)),
      AbsolutePressure.STANDARD_ATMOSPHERE);

  private static Conduit line(double boreMm, double metres) {
    return Conduit.of(
        Length.ofMillimetres(boreMm), Length.ofMetres(metres), Length.ofMillimetres(0.01));
  }

  /** Builds the run and draws the flows. */
  @Setup
  public void fill() {
    run = run.through("pipe", line(16.0, 20.0), LossModels.isothermal())
        .through(
            "filter", FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(8.0), 0.4))
        .through(
            "coupling", FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3))
        .through("hose", line(9.5, 10.0), LossModels.isothermal());
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < N; i++) {
      flows[i] = random.nextDouble(0.001, 0.015);
    }
  }

  /** Ends the threads. */
  @TearDown
  public void end() {
    two.shutdown();
  }

  private void ask(int i) {
    left[i] = run.at(MassFlow.ofKilogramsPerSecond(flows[i]))
        .fold(delivered -> delivered.atTool().pascals(), starved -> Double.NaN);
  }

  /**
   * On one core.
   *
   * @return the pressures at the tool [Pa]
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public double[] oneCore() {
    for (int i = 0; i < N; i++) {
      ask(i);
    }
    return left;
  }

  /**
   * On two, by a parallel stream.
   *
   * @return the pressures at the tool [Pa]
   * @throws InterruptedException if it is interrupted
   * @throws ExecutionException if a question fails
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public double[] twoCores() throws InterruptedException, ExecutionException {
    Callable<double[]> all = () -> {
      IntStream.range(0, N).parallel().forEach(this::ask);
      return left;
    };
    return two.submit(all).get();
  }
}
