package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Finds the keys of lessons 1 to 5 with the formulas that the lessons print, without the library. */
class PencilKeysTest {

  @Test
  void misfits_are_counted_in_the_scatter_of_parts_and_reading() {
    assertThat(Key.of("1a"))
        .isCloseTo(0.02 / Math.sqrt(0.03 * 0.03 + 0.013 * 0.013), within(0.005));
    double tip = 2.70 / Math.hypot(0.03, 0.013);
    assertThat(tip)
        .isGreaterThan(2.40 / Math.hypot(0.06, 0.037))
        .isGreaterThan(0.80 / Math.hypot(0.06, 0.0622));
    assertThat(Exercises.of(1).check("1c", "tip diameter")).startsWith("1c: right");
  }

  @Test
  void threads_follow_from_pitches_and_from_the_formula_of_the_standard() {
    assertThat(Key.of("2a")).isCloseTo(5.0 * 25.4 / 6.68, within(0.05));
    assertThat(Key.of("2d")).isCloseTo(1.315 - (0.05 * 1.315 + 1.1) / 11.5, within(0.000005));
  }

  @Test
  void the_flow_of_a_part_follows_from_its_two_numbers() {
    double bar = 89.7 * 0.0689476;
    assertThat(Key.of("3a")).isCloseTo(75.0 + 14.7, within(0.05));
    assertThat(Key.of("3b")).isCloseTo(4.0 * bar * Math.sqrt(293.15 / 313.15), within(0.05));
    double share = 17.32 / (4.0 * bar * 1.185);
    assertThat(Key.of("3c"))
        .isCloseTo(89.7 * 0.70 * (1.0 - Math.sqrt(1.0 - share * share)), within(0.05));
    assertThat(Key.of("3d")).isCloseTo(open(104.7 / 114.7) / open(111.7 / 114.7), within(0.006));
  }

  /** How much of the choked flow passes at this ratio of the pressures, with b 0.3. */
  private static double open(double ratio) {
    return Math.sqrt(1.0 - Math.pow((ratio - 0.3) / 0.7, 2));
  }

  @Test
  void the_loss_of_a_pipe_follows_from_density_square_law_and_friction() {
    assertThat(Key.of("4a")).isCloseTo(144.0 * 104.7 / (53.35 * 529.67), within(0.0005));
    assertThat(Key.of("4b")).isCloseTo(1.8 * Math.pow(70.0 / 40.0, 2), within(0.005));
    assertThat(Key.of("4c")).isCloseTo(0.819 * 2.5, within(0.005));
    assertThat(Key.of("4d")).isCloseTo(2.21 * 0.75 * 114.7 / 79.7 * 570.0 / 520.0, within(0.005));
    double friction = 0.02;
    for (int round = 0; round < 2; round++) {
      double root =
          -2.0 * Math.log10(0.0018 / 1.049 / 3.7 + 2.51 / (80_000.0 * Math.sqrt(friction)));
      friction = 1.0 / (root * root);
    }
    assertThat(Key.of("4e")).isCloseTo(friction, within(0.00005));
  }

  @Test
  void the_limits_of_the_simple_formula_follow_from_the_rules() {
    assertThat(Key.of("5a")).isCloseTo(0.5 * 100.0 * 18.0 / 104.7, within(0.05));
    assertThat(Key.of("5b")).isCloseTo(1.0 / Math.sqrt(1.67), within(0.0005));
    assertThat(Key.of("5c")).isCloseTo(openEnd(15.0), within(0.05));
    assertThat(Key.of("5d"))
        .isCloseTo(0.0404 * 1.0e-4 * 101_000.0 / Math.sqrt(288.0), within(0.0005));
  }

  /** The free air in scfm through so many metres of the hose of lesson 5 with an open end. */
  private static double openEnd(double metres) {
    double bore = 6.3 / 304.8;
    double viscosity = 1.2186e-5;
    double friction = 0.025;
    double perArea = 0.0;
    for (int round = 0; round < 30; round++) {
      double resistance = friction * metres * 1000.0 / 6.3 + 2.0 * Math.log(104.7 / 14.7);
      perArea = Math.sqrt(
          (104.7 * 104.7 - 14.7 * 14.7) * 32.174 * 144.0 * 144.0 / (53.35 * 527.67 * resistance));
      double reynolds = perArea * bore / viscosity;
      double root = -2.0 * Math.log10(0.01 / 6.3 / 3.7 + 2.51 / (reynolds * Math.sqrt(friction)));
      friction = 1.0 / (root * root);
    }
    return perArea * Math.PI / 4.0 * bore * bore * 60.0 / 0.07635;
  }
}
