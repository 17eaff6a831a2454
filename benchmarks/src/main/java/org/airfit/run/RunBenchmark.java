package org.airfit.run;

import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.line.PipeEquation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
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
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * How long a run of four elements takes: the pressure as a number, the answer with all that belongs to it, and the
 * questions
 * that search. Flows vary, the seed is fixed.
 *
 * <p>It lies in the package of what it measures, as {@code RunPath} is not public. With {@code -prof gc} the number
 * must show no
 * allocation.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class RunBenchmark {

  private static final int N = 256;

  /** Which equation of pipe flow. */
  @Param({"ISOTHERMAL", "ADIABATIC"})
  public PipeEquation equation = PipeEquation.ISOTHERMAL;

  private final double[] flows = new double[N];
  private final MassFlow[] typed = new MassFlow[N];
  private final ToolDemand tool = ToolDemand.following(
      "tool", FreeAirFlow.ofAnrLitresPerSecond(10.0), AbsolutePressure.ofBar(7.2));
  private final GaugePressure needed = GaugePressure.ofBar(6.0);
  private Run run = Run.from(
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)),
      AbsolutePressure.STANDARD_ATMOSPHERE);
  private RunPath path = run.path();

  private static Conduit line(double boreMm, double metres) {
    return Conduit.of(
        Length.ofMillimetres(boreMm), Length.ofMetres(metres), Length.ofMillimetres(0.01));
  }

  /** Builds the run and refuses to time wrong answers. */
  @Setup
  public void fill() {
    LossModel model = LossModels.of(equation, FrictionLaw.COLEBROOK);
    FlowCapacity filter = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(8.0), 0.4);
    FlowCapacity coupler =
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(6.0), 0.3);
    run = run.through("pipe", line(16.0, 20.0), model)
        .through("filter", filter)
        .through("coupler", coupler)
        .through("hose", line(9.5, 10.0), model);
    path = run.path();
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < N; i++) {
      flows[i] = random.nextDouble(0.001, 0.015);
      typed[i] = MassFlow.ofKilogramsPerSecond(flows[i]);
      double answer =
          run.at(typed[i]).fold(delivered -> delivered.atTool().pascals(), starved -> -1.0);
      if (!(answer > 0.0 && answer == path.pascalsAtTool(flows[i]))) {
        throw new IllegalStateException("the number and the answer differ");
      }
    }
  }

  /**
   * The pressure at the tool as a number.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void number(Blackhole sink) {
    for (double flow : flows) {
      sink.consume(path.pascalsAtTool(flow));
    }
  }

  /**
   * The answer with shares, gains, Mach numbers, warnings and cautions.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void at(Blackhole sink) {
    for (MassFlow flow : typed) {
      sink.consume(run.at(flow));
    }
  }

  /**
   * A tool whose demand follows its pressure.
   *
   * @return the answer
   */
  @Benchmark
  public RunResult balance() {
    return run.balance(tool);
  }

  /**
   * The largest flow that leaves a pressure.
   *
   * @return the answer
   */
  @Benchmark
  public Optional<LargestFlow> largestFlow() {
    return run.largestFlow(needed);
  }
}
