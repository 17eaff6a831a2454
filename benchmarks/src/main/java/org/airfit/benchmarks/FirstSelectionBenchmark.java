package org.airfit.benchmarks;

import java.util.concurrent.TimeUnit;
import org.airfit.select.Selection;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** How long the first choice of a program takes, with nothing compiled: each in a JVM of its own. */
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
@Fork(10)
@State(Scope.Thread)
public class FirstSelectionBenchmark {

  private final SelectionBenchmark shop = new SelectionBenchmark();

  /** Stocks the shop. */
  @Setup
  public void stock() {
    shop.stock();
  }

  /**
   * The choice out of 10,000 parts.
   *
   * @return the answer
   */
  @Benchmark
  public Selection select() {
    return shop.select();
  }
}
