package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whether Colebrook's friction factor fulfils the equation it is defined by, in the range of flows and beyond it. */
class ColebrookTest {

  /** Of 1/√λ; λ has twice that. */
  private static final double ALLOWED = 1.0e-14;

  private static void fulfils(double darcy, double re, double rough) {
    double x = 1.0 / Math.sqrt(darcy);
    double other = -2.0 * Math.log10(rough / 3.7 + 2.51 / re * x);
    assertThat(x).as("1/√λ at Re " + re + ", ε/D " + rough).isCloseTo(other, within(ALLOWED * x));
  }

  @Test
  void the_factor_fulfils_its_equation_wherever_air_flows() {
    SplittableRandom random = new SplittableRandom(19);
    for (int i = 0; i < 200_000; i++) {
      double re = Math.pow(10.0, random.nextDouble(Math.log10(2300.0), 9.0));
      double rough = i % 10 == 0 ? 0.0 : Math.pow(10.0, random.nextDouble(-9.0, Math.log10(0.05)));
      fulfils(FrictionKernels.colebrook(re, rough), re, rough);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 1.0e-12, 1.0e-6, 1.0e-3, 0.05})
  void the_factor_fulfils_its_equation_on_the_edges(double rough) {
    for (double re : new double[] {2300.0, 4.0e3, 1.0e8, 1.0e9}) {
      fulfils(FrictionKernels.colebrook(re, rough), re, rough);
    }
  }

  /** No guess is near there. */
  @ParameterizedTest
  @ValueSource(doubles = {500.0, 1.0e12, 1.0e20, 1.0e70, 1.0e150})
  void the_factor_fulfils_its_equation_far_outside(double re) {
    for (double rough : new double[] {0.0, 1.0e-3, 0.3}) {
      fulfils(FrictionKernels.colebrook(re, rough), re, rough);
    }
  }

  /** Both ways to the root end at it. */
  @Test
  void the_short_way_and_the_long_one_meet() {
    for (double re = 2300.0; re < 1.0e9; re *= 1.37) {
      for (double rough = 1.0e-8; rough < 0.05; rough *= 2.3) {
        double longWay = FrictionKernels.colebrookFromAfar(re, rough);
        assertThat(FrictionKernels.colebrook(re, rough))
            .isCloseTo(longWay, within(4.0e-15 * longWay));
      }
    }
  }
}
