package org.airfit.benchmarks;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.airfit.line.FrictionLaw;
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

/** How long a friction factor takes. Inputs vary, the seed is fixed. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class FrictionBenchmark {

  private static final int N = 256;

  private final double[] reynolds = new double[N];

  /** Fills the inputs and refuses to time wrong answers. */
  @Setup
  public void fill() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < N; i++) {
      reynolds[i] = Math.pow(10.0, random.nextDouble(3.7, 8.0));
    }
    // Re 1e5, ε/D 1e-3: λ = 0.0221744, Colebrook 1939 in closed form
    double known = FrictionLaw.COLEBROOK.factor(1.0e5, 1.0e-3).darcy();
    if (!(Math.abs(known - 0.0221744) < 1.0e-6)) {
      throw new IllegalStateException("wrong friction factor " + known);
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
}
