package org.airfit.line;

import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.hipparchus.analysis.solvers.BrentSolver;
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
 * How long a friction factor takes, beside Haaland's formula written plainly and a general root finder; and how long
 * the pressure behind a line takes, the viscosity and the density of its air included. Inputs vary, the seed is fixed.
 *
 * <p>It lies in the package of what it measures, as the kernels are not public.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class FrictionBenchmark {

  private static final int N = 256;
  private static final double LOOSE = 1.0e-14;

  private final double[] reynolds = new double[N];
  private final double[] roughness = new double[N];
  private final double[] flows = new double[N];
  private final double[] kelvins = new double[N];
  private final PipeElement line = new PipeElement(
      PipeEquation.ISOTHERMAL,
      FrictionLaw.COLEBROOK,
      Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01)));
  private final BrentSolver brent = new BrentSolver(LOOSE, LOOSE);

  /** Fills the inputs and refuses to time wrong answers. */
  @Setup
  public void fill() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < N; i++) {
      reynolds[i] = Math.pow(10.0, random.nextDouble(Math.log10(4.0e3), 8.0));
      roughness[i] = i % 8 == 0 ? 0.0 : Math.pow(10.0, random.nextDouble(-6.0, Math.log10(0.05)));
      flows[i] = random.nextDouble(0.001, 0.02);
      kelvins[i] = random.nextDouble(273.15, 313.15);
      double ours = FrictionKernels.colebrook(reynolds[i], roughness[i]);
      double general = byBrent(reynolds[i], roughness[i]);
      if (!(Math.abs(ours - general) <= 1.0e-13 * general)) {
        throw new IllegalStateException(ours + " is not " + general);
      }
    }
  }

  private double byBrent(double re, double rough) {
    double x = brent.solve(1000, y -> y + 2.0 * Math.log10(rough / 3.7 + 2.51 / re * y), 2.0, 30.0);
    return 1.0 / (x * x);
  }

  /**
   * Friction factors after Colebrook.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void colebrook(Blackhole sink) {
    for (int i = 0; i < N; i++) {
      sink.consume(FrictionKernels.colebrook(reynolds[i], roughness[i]));
    }
  }

  /**
   * Haaland's approximation of them, with a power and a logarithm.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void haaland(Blackhole sink) {
    for (int i = 0; i < N; i++) {
      double root = -1.8 * Math.log10(Math.pow(roughness[i] / 3.7, 1.11) + 6.9 / reynolds[i]);
      sink.consume(1.0 / (root * root));
    }
  }

  /**
   * The same as of Colebrook by a general root finder.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void colebrookByBrent(Blackhole sink) {
    for (int i = 0; i < N; i++) {
      sink.consume(byBrent(reynolds[i], roughness[i]));
    }
  }

  /**
   * The pressure behind a hose, isothermal with the logarithm, from the temperature of its air.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void isothermalOutlet(Blackhole sink) {
    for (int i = 0; i < N; i++) {
      sink.consume(line.outlet(flows[i], 8.0e5, kelvins[i], viscosity(kelvins[i])));
    }
  }

  private static double viscosity(double kelvins) {
    return AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofKelvins(kelvins))
        .viscosity()
        .pascalSeconds();
  }
}
