package org.airfit.benchmarks;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureUnit;
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

/** How long it takes to make, convert, print and read a quantity. The numbers vary, the seed is fixed. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class QuantityBenchmark {

  private static final int N = 256;
  private static final double PASCALS_PER_BAR = 1.0e5;

  private final double[] numbers = new double[N];
  private final GaugePressure[] pressures = new GaugePressure[N];
  private final String[] texts = new String[N];

  /** Draws pressures as people type them. */
  @Setup
  public void fill() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < N; i++) {
      numbers[i] = Math.round(10.0 * random.nextDouble(60.0, 150.0)) / 10.0;
      texts[i] = (i % 4 == 0 ? String.valueOf(numbers[i]) : Math.round(numbers[i])) + " psig";
      pressures[i] = GaugePressure.ofPsi(numbers[i]);
      if (!GaugePressure.parse(pressures[i].format(PressureUnit.PSI)).equals(pressures[i])) {
        throw new IllegalStateException("what is printed is not what is read: " + texts[i]);
      }
    }
  }

  /**
   * What the others stand beside: one multiplication.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void multiply(Blackhole sink) {
    for (double number : numbers) {
      sink.consume(number * PASCALS_PER_BAR);
    }
  }

  /**
   * Made in bar and read in pascals, which is one multiplication by the definition of the bar.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void barToPascals(Blackhole sink) {
    for (double number : numbers) {
      sink.consume(GaugePressure.ofBar(number).pascals());
    }
  }

  /**
   * Made in psi and read in bar: the factor of the psi is a fraction, and the answer the double nearest to the true
   * value.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void psiToBar(Blackhole sink) {
    for (double number : numbers) {
      sink.consume(GaugePressure.ofPsi(number).bar());
    }
  }

  /**
   * Read from a text such as "90 psig".
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void parse(Blackhole sink) {
    for (String text : texts) {
      sink.consume(GaugePressure.parse(text));
    }
  }

  /**
   * Printed with four digits.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void format(Blackhole sink) {
    for (GaugePressure pressure : pressures) {
      sink.consume(pressure.format(PressureUnit.PSI));
    }
  }
}
