package org.airfit.benchmarks;

import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.airfit.line.FrictionLaw;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.Instrument;
import org.airfit.quantity.Length;
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

/** How long the answers of a counter take: a friction factor, a plug. Inputs vary, the seed is fixed. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class AnswerBenchmark {

  private static final int N = 256;

  private final double[] reynolds = new double[N];
  private final double[] tips = new double[N];

  /** Fills the inputs and refuses to time wrong answers. */
  @Setup
  public void fill() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < N; i++) {
      reynolds[i] = Math.pow(10.0, random.nextDouble(3.7, 8.0));
      tips[i] = random.nextDouble(18.0, 19.5);
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

  /**
   * Plugs by two readings against four profiles, with the next reading.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void identification(Blackhole sink) {
    for (double tip : tips) {
      Identification answer = Identifier.of(DemoProfiles.birds())
          .identify(List.of(
              Instrument.DIGITAL_CALIPER.reading(Dimension.TIP_DIAMETER, Length.ofMillimetres(tip)),
              Instrument.DIGITAL_CALIPER.reading(
                  Dimension.TIP_LENGTH, Length.ofMillimetres(21.05))));
      sink.consume(answer);
    }
  }
}
