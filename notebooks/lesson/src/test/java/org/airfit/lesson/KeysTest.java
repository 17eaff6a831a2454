package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Finds keys of exercises by the method of the lesson, in plain arithmetic, without the library. */
class KeysTest {

  /** Pounds per second in one scfm at 60 °F and 14.7 psia: 14.7 × 144 / (53.35 × 519.67) / 60. */
  private static final double POUNDS_PER_SCFM = 14.7 * 144.0 / (53.352 * 519.67) / 60.0;

  /** The temperature of the run, 59 °F, and the viscosity of air there, as lesson 6 gives them. */
  private static final double RANKINE = 518.67;

  private static final double VISCOSITY = 1.2024e-5;

  /** The pressure in psia behind a pipe or hose, by the isothermal equation and Colebrook's formula. */
  private static double behindLine(
      double psia, double boreMm, double lengthM, double roughnessMm, double sumK, double scfm) {
    double bore = boreMm / 304.8;
    double perArea = POUNDS_PER_SCFM * scfm / (Math.PI / 4.0 * bore * bore);
    double reynolds = perArea * bore / VISCOSITY;
    double friction = 0.03;
    for (int i = 0; i < 20; i++) {
      double root =
          -2.0 * Math.log10(roughnessMm / boreMm / 3.7 + 2.51 / (reynolds * Math.sqrt(friction)));
      friction = 1.0 / (root * root);
    }
    double resistance = friction * lengthM * 1000.0 / boreMm + sumK;
    double each = perArea * perArea * 53.352 * RANKINE / (32.174 * 144.0 * 144.0);
    double behind = psia;
    for (int i = 0; i < 60; i++) {
      behind = Math.sqrt(psia * psia - each * (resistance + 2.0 * Math.log(psia / behind)));
    }
    return behind;
  }

  /** The pressure in psia behind a coupling of C 3.1 and b 0.25, by ISO 6358. */
  private static double behindCoupling(double psia, double scfm) {
    double perSecond = scfm * POUNDS_PER_SCFM * 0.45359237;
    double choked = 3.1e-3 * 1.185 * psia * 0.0689476 * Math.sqrt(293.15 / 288.15);
    double part = perSecond / choked;
    return psia * (1.0 - 0.75 * (1.0 - Math.sqrt(1.0 - part * part)));
  }

  private static double behindPipe(double scfm) {
    return behindLine((7.4 + 1.013) / 0.0689476, 20.9, 38.0, 0.045, 6.0, scfm);
  }

  private static double behindOldHose(double psia, double scfm) {
    return behindLine(psia, 7.9, 15.0, 0.02, 2.0, scfm);
  }

  private static double atSmallSander() {
    return behindCoupling(behindOldHose(behindCoupling(behindPipe(15.0), 15.0), 15.0), 15.0);
  }

  private static double gauge(double psia) {
    return psia - 1.013 / 0.0689476;
  }

  @Test
  void the_pressure_at_the_small_sander_is_that_of_the_method() {
    assertThat(Key.of("6a")).isCloseTo(gauge(atSmallSander()), within(0.06));
  }

  @Test
  void the_pressure_with_a_wider_hose_is_that_of_the_method() {
    double before = behindCoupling(behindPipe(22.0), 22.0);
    double behind = behindCoupling(behindLine(before, 9.5, 15.0, 0.01, 2.0, 22.0), 22.0);
    assertThat(Key.of("6c")).isCloseTo(gauge(behind), within(0.06));
  }

  @Test
  void the_gain_without_a_coupling_is_that_of_the_method() {
    double without = behindCoupling(behindOldHose(behindPipe(15.0), 15.0), 15.0);
    assertThat(Key.of("6d")).isCloseTo(without - atSmallSander(), within(0.06));
  }

  @Test
  void the_leaks_are_those_of_the_formulas() {
    assertThat(Key.of("8a")).isCloseTo(100.0 * 42.0 / (42.0 + 308.0), within(0.01));
    assertThat(Key.of("8b")).isCloseTo(629.0 * 10.0 / (15.29 * 14.7), within(0.05));
    double choked = Math.sqrt(1.4) * Math.pow(2.0 / 2.4, 3.0);
    double square = Math.PI / 4.0 * 0.125 * 0.125;
    double pounds = choked * square * 104.7 * Math.sqrt(32.174 / (53.352 * 530.0));
    double perCubicFoot = 14.7 * 144.0 / (53.352 * 530.0);
    assertThat(Key.of("8d")).isCloseTo(60.0 * pounds / perCubicFoot, within(0.05));
  }

  @Test
  void the_spread_of_the_skuas_is_that_of_the_formulas() {
    double[] pieces = {19.46, 19.55, 19.51, 19.60, 19.43};
    double mean = Arrays.stream(pieces).sum() / 5.0;
    double squares = Arrays.stream(pieces).map(x -> (x - mean) * (x - mean)).sum();
    double deviation = Math.sqrt(squares / 4.0);
    double band = 2.776 * deviation * Math.sqrt(1.2);
    assertThat(Key.of("9a")).isCloseTo(deviation, within(0.0005));
    assertThat(Key.of("9b")).isCloseTo(band, within(0.0006));
    assertThat(Key.of("9c")).isCloseTo((mean - 18.88) / band, within(0.06));
  }

  @Test
  void what_gauges_show_follows_from_the_definitions() {
    assertThat(Key.of("10a")).isCloseTo(6.6 - 5.1 + 0.2, within(0.005));
    assertThat(Key.of("10b")).isCloseTo(2.5 / 100.0 * 160.0, within(0.005));
    double share = Math.sqrt(1.0 - Math.pow((6.0 / 7.5 - 0.3) / 0.7, 2));
    assertThat(Key.of("10c")).isCloseTo(9.0 / (7.5 * share), within(0.006));
  }

  @Test
  void receivers_follow_from_the_balance_of_air() {
    assertThat(Key.of("11a")).isCloseTo(120.0 * 15.0 / 300.0, within(0.005));
    assertThat(Key.of("11b")).isCloseTo(5.0 * 100.0 * 14.7 / 40.0, within(0.005));
    assertThat(Key.of("11c")).isCloseTo(60.0 * 300.0 / 7.4805 * 10.0 / (14.7 * 50.0), within(0.06));
    assertThat(Key.of("11d")).isCloseTo(20.0 * 114.7 / 89.7, within(0.05));
  }

  /** The saturation pressure is that of the steam tables, 2.339 kPa at 20 °C. */
  @Test
  void water_follows_from_the_balance_of_vapour() {
    double vapour = 0.6 * 2.339;
    assertThat(Key.of("12a")).isCloseTo(621.945 * vapour / (101.3 - vapour), within(0.006));
    assertThat(Key.of("12b")).isCloseTo(100.0 * 0.0075 * 8.0, within(0.005));
    assertThat(Key.of("12c")).isCloseTo(2.339 / 7.0, within(0.0005));
    assertThat(Exercises.of(12).check("12d", "yes")).startsWith("12d: not yet");
    assertThat(Exercises.of(12).check("12d", "no")).startsWith("12d: right");
  }

  @Test
  void a_change_of_couplings_follows_from_counts_and_prices() {
    assertThat(Key.of("13a")).isCloseTo(12.0 * 7.0, within(0.005));
    assertThat(Key.of("13b")).isCloseTo(8.0 * 20.0 + 15.0 * 6.5, within(0.005));
    assertThat(Key.of("13c")).isCloseTo(100.0 * (1.0 - 2.0 / Math.E), within(0.05));
    // a nozzle without loss: 0.6847 p A / √(R T), counted at 1.185 kg/m³ and 20 °C
    double each = 0.6847 * 1.0e-6 / (1.185 * Math.sqrt(287.05 * 293.15)) * 1.0e8;
    assertThat(Key.of("13d")).isCloseTo(each * Math.PI / 4.0 * 36.0, within(0.02));
  }
}
