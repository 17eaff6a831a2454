package org.airfit.benchmarks;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.airfit.internal.Statistics;
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

/**
 * What the bare operations cost in which {@link Floor floors} are counted: one after the other, none waiting for the one
 * before, so that no program has them for less. Numbers vary, the seed is fixed.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class FloorBenchmark {

  private static final int N = 256;

  /** So many operations on each number that loading it counts for little. */
  private static final int TERMS = 8;

  /** As large as a catalogue of ten thousand parts. */
  private static final int PLACES = 8 << 18;

  private static final double FREEDOM = 4.0;

  private final double[] ones = new double[N];
  private final double[] others = new double[N];
  private final int[] following = new int[PLACES];
  private int start;

  /** Draws numbers from 0.1 to 4, and a way through memory that leads through every place. */
  @Setup
  public void fill() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < N; i++) {
      ones[i] = random.nextDouble(0.1, 4.0);
      others[i] = random.nextDouble(0.1, 4.0);
    }
    for (int i = 0; i < PLACES; i++) {
      following[i] = i;
    }
    // Sattolo's shuffle: one cycle
    for (int i = PLACES - 1; i > 0; i--) {
      int j = random.nextInt(i);
      int kept = following[i];
      following[i] = following[j];
      following[j] = kept;
    }
  }

  /**
   * Multiplications and additions, half of each.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(2 * TERMS * N)
  public void multiplyOrAdd(Blackhole sink) {
    for (int i = 0; i < N; i++) {
      double x = ones[i];
      double y = others[i];
      double a = x * 1.1 + y;
      double b = x * 1.2 + y;
      double c = x * 1.3 + y;
      double d = x * 1.4 + y;
      double e = y * 1.5 + x;
      double f = y * 1.6 + x;
      double g = y * 1.7 + x;
      double h = y * 1.8 + x;
      sink.consume(a);
      sink.consume(b);
      sink.consume(c);
      sink.consume(d);
      sink.consume(e);
      sink.consume(f);
      sink.consume(g);
      sink.consume(h);
    }
  }

  /**
   * A division.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void divide(Blackhole sink) {
    for (int i = 0; i < N; i++) {
      sink.consume(ones[i] / others[i]);
    }
  }

  /**
   * A square root.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void root(Blackhole sink) {
    for (double one : ones) {
      sink.consume(Math.sqrt(one));
    }
  }

  /**
   * A logarithm.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void logarithm(Blackhole sink) {
    for (double one : ones) {
      sink.consume(Math.log(one));
    }
  }

  /**
   * An exponential.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void exponential(Blackhole sink) {
    for (double one : ones) {
      sink.consume(Math.exp(-one));
    }
  }

  /**
   * A power.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void power(Blackhole sink) {
    for (int i = 0; i < N; i++) {
      sink.consume(Math.pow(ones[i], others[i]));
    }
  }

  /**
   * A tail of the normal distribution.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void normalTail(Blackhole sink) {
    for (double one : ones) {
      sink.consume(Statistics.normalAbove(one));
    }
  }

  /**
   * A tail of Student's distribution.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void studentTail(Blackhole sink) {
    for (double one : ones) {
      sink.consume(Statistics.studentAbove(one, FREEDOM));
    }
  }

  /**
   * A load whose place the load before tells, out of 8 MB: the caches of a core do not hold them.
   *
   * @return the last place, so that none is left out
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public int load() {
    int place = start;
    for (int i = 0; i < N; i++) {
      place = following[place];
    }
    start = place;
    return place;
  }
}
