package org.airfit.benchmarks;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.network.Network;
import org.airfit.network.NetworkResult;
import org.airfit.network.NetworkSimulation;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.ToolDemand;
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

/** How long a header or a ring with many tools takes. The tools vary, the seed is fixed. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class NetworkBenchmark {

  private static final int DRAWS = 100;

  /** How many tools hang on the main. */
  @Param({"50", "200", "1000", "5000"})
  public int tools;

  /** Whether the main leads back to the supply. */
  @Param({"false", "true"})
  public boolean ring;

  private Network network = Network.at(AbsolutePressure.STANDARD_ATMOSPHERE)
      .supply("n0", Supply.fixed(eightBar()))
      .build();

  private static AirState eightBar() {
    return AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  }

  /** Builds the network and refuses to time wrong answers. */
  @Setup
  public void fill() {
    SplittableRandom random = new SplittableRandom(1);
    Conduit main =
        Conduit.of(Length.ofMillimetres(160.0), Length.ofMetres(5.0), Length.ofMillimetres(0.045));
    Network.Builder builder =
        Network.at(AbsolutePressure.STANDARD_ATMOSPHERE).supply("n0", Supply.fixed(eightBar()));
    for (int i = 0; i < tools; i++) {
      String next = "n" + (ring && i == tools - 1 ? 0 : i + 1);
      double litresPerSecond = random.nextDouble(1.0, 5.0);
      builder
          .line("main " + i, "n" + i, next, main)
          .part(
              "coupler " + i,
              "n" + i,
              "t" + i,
              FlowCapacity.of(
                  SonicConductance.ofCubicDecimetresPerSecondBar(random.nextDouble(3.0, 8.0)), 0.3))
          .tool(
              "t" + i,
              ToolDemand.following(
                      "tool " + i,
                      FreeAirFlow.ofAnrLitresPerSecond(litresPerSecond),
                      AbsolutePressure.ofBar(7.2))
                  .withDuty(0.5));
    }
    network = builder.build();
    if (!(network.solve() instanceof NetworkResult.Solved solved && solved.imbalance() < 1.0e-9)) {
      throw new IllegalStateException("mass is not conserved");
    }
  }

  /**
   * The steady flow with all tools running.
   *
   * @return the answer
   */
  @Benchmark
  public NetworkResult steadyFlow() {
    return network.solve();
  }

  /**
   * A hundred draws of which tools run, each of them half of the time: nearly all draws differ.
   *
   * @return what came of it
   */
  @Benchmark
  @OperationsPerInvocation(DRAWS)
  public NetworkSimulation draws() {
    return network.simulate(1L, DRAWS);
  }
}
