package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.airfit.internal.ReadingDensity;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The doubt that one more reading leaves, against a plain sum over a fine grid: at every reading Bayes' rule, −Σ p log₂ p
 * of what it gives, and whether the likeliest profile has the confidence; a plug of which nothing is expected reads
 * evenly over ten millimetres, or over all that others reach where that is more.
 */
class InformationByHandTest {

  private static final double S = 0.05;

  /** A normal density, its mean and its chance; a copy is no profile, and without a mean nothing is expected. */
  private record Case(double chance, double mean, boolean copy) {

    static Case of(double chance, double mean) {
      return new Case(chance, mean, false);
    }

    static Case silent(double chance) {
      return new Case(chance, Double.NaN, false);
    }

    static Case copy(double chance, double mean) {
      return new Case(chance, mean, true);
    }

    boolean isSilent() {
      return Double.isNaN(mean);
    }
  }

  private static Information.Outlook outlook(List<Case> cases, double unknown, double confidence) {
    double[] chances = cases.stream().mapToDouble(Case::chance).toArray();
    @Nullable ReadingDensity[] models = new ReadingDensity[chances.length];
    int profiles = 0;
    for (int k = 0; k < models.length; k++) {
      Case each = cases.get(k);
      models[k] = each.isSilent() ? null : ReadingDensity.normal(each.mean, 0.04, 0.03, 0.0, 0);
      profiles += each.copy ? 0 : 1;
    }
    return Information.of(chances, models, profiles, unknown, confidence);
  }

  private static double plogp(double p) {
    return p > 0.0 ? -p * Math.log(p) / Math.log(2.0) : 0.0;
  }

  /** What is left of the doubt and the chance to settle it, by a grid of a thousandth of a millimetre. */
  private static double[] byHand(
      List<Case> cases, double unknown, double confidence, double width) {
    double reach = ReadingDensity.normal(0.0, 0.04, 0.03, 0.0, 0).reach();
    double low = cases.stream()
            .filter(each -> !each.isSilent())
            .mapToDouble(Case::mean)
            .min()
            .orElse(0.0)
        - reach;
    double high = cases.stream()
            .filter(each -> !each.isSilent())
            .mapToDouble(Case::mean)
            .max()
            .orElse(0.0)
        + reach;
    double step = 0.0005;
    double doubt = 0.0;
    double settled = 0.0;
    double covered = 0.0;
    List<NormalDistribution> bells = new ArrayList<>();
    cases.forEach(each -> bells.add(each.isSilent() ? null : new NormalDistribution(each.mean, S)));
    for (double y = low + 0.5 * step; y < high; y += step) {
      double[] w = new double[cases.size() + 1];
      boolean reached = false;
      double total = 0.0;
      for (int k = 0; k < cases.size(); k++) {
        Case each = cases.get(k);
        boolean near = !each.isSilent() && Math.abs(y - each.mean) < reach;
        reached |= near;
        w[k] =
            each.chance * (each.isSilent() ? 1.0 / width : near ? bells.get(k).density(y) : 0.0);
        total += w[k];
      }
      w[cases.size()] = unknown / width;
      total += unknown / width;
      if (reached) {
        covered += step;
        for (int k = 0; k < w.length; k++) {
          doubt += step * total * plogp(w[k] / total);
          if (k < cases.size()
              && !cases.get(k).copy
              && !cases.get(k).isSilent()
              && w[k] >= confidence * total) {
            settled += step * total;
          }
        }
      }
    }
    // elsewhere only those read of which nothing is expected, and the doubt among them is what it
    // was
    double broad = unknown;
    double among = plogp(unknown);
    for (Case each : cases) {
      if (each.isSilent()) {
        broad += each.chance;
        among += plogp(each.chance);
      }
    }
    return new double[] {doubt + (1.0 - covered / width) * (among - plogp(broad)), settled};
  }

  private static void compare(List<Case> cases, double unknown, double confidence, double width) {
    Information.Outlook ours = outlook(cases, unknown, confidence);
    double[] known = byHand(cases, unknown, confidence, width);
    assertThat(ours.expectedBits()).as("bits").isCloseTo(known[0], within(1.0e-4));
    // the edge of what settles falls between two of eight nodes in a standard deviation: half of
    // the
    // largest weight, 0.363, times half a deviation, times 0.4 and 0.6 at most
    assertThat(ours.chanceOfSettling()).as("settled").isCloseTo(known[1], within(0.022));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 0.05, 0.1, 0.2, 0.5})
  void two_profiles_and_the_unknown(double apart) {
    compare(List.of(Case.of(0.6, 15.0), Case.of(0.3, 15.0 + apart)), 0.1, 0.9, 10.0);
    compare(List.of(Case.of(0.6, 15.0), Case.of(0.4, 15.0 + apart)), 0.0, 0.9, 10.0);
  }

  @Test
  void a_profile_that_does_not_know_the_dimension_reads_as_anything() {
    compare(List.of(Case.of(0.5, 15.0), Case.silent(0.3), Case.of(0.1, 15.2)), 0.1, 0.8, 10.0);
    compare(List.of(Case.silent(0.5), Case.of(0.5, 15.0)), 0.0, 0.8, 10.0);
    Information.Outlook none = outlook(List.of(Case.silent(0.5), Case.silent(0.4)), 0.1, 0.8);
    assertThat(none.expectedBits())
        .isCloseTo(plogp(0.5) + plogp(0.4) + plogp(0.1), within(1.0e-12));
    assertThat(none.chanceOfSettling()).isZero();
  }

  @Test
  void a_near_copy_takes_from_the_doubt_but_settles_nothing() {
    compare(List.of(Case.of(0.45, 15.0), Case.copy(0.5, 15.4)), 0.05, 0.9, 10.0);
    assertThat(outlook(List.of(Case.of(0.45, 15.0), Case.copy(0.5, 15.4)), 0.05, 0.9)
            .chanceOfSettling())
        .isBetween(0.44, 0.46);
    assertThat(
            outlook(List.of(Case.of(0.45, 15.0), Case.of(0.5, 15.4)), 0.05, 0.9).chanceOfSettling())
        .isBetween(0.94, 0.96);
  }

  /** Sixty profiles two millimetres apart reach more than ten millimetres, and so does an unknown plug. */
  @Test
  void an_unknown_plug_reads_as_wide_as_the_profiles_reach() {
    List<Case> many = new ArrayList<>();
    for (int k = 0; k < 60; k++) {
      many.add(Case.of(0.5 / 60.0, 10.0 + 2.0 * k));
    }
    double reach = 2.0 * ReadingDensity.normal(0.0, 0.04, 0.03, 0.0, 0).reach();
    assertThat(60.0 * reach).isGreaterThan(10.0);
    compare(many, 0.5, 0.9, 60.0 * reach);
  }

  /** One in ten million is not integrated; two in ten million are, and change the doubt in the sixth digit. */
  @Test
  void a_chance_that_is_negligible_is_left_out() {
    List<Case> pair = List.of(Case.of(0.5, 15.0), Case.of(0.4, 15.1));
    double without = outlook(pair, 0.1, 0.9).expectedBits();
    List<Case> less = new ArrayList<>(pair);
    less.add(Case.of(0.99e-7, 15.05));
    assertThat(outlook(less, 0.1, 0.9).expectedBits()).isEqualTo(without);
    List<Case> more = new ArrayList<>(pair);
    more.add(Case.of(1.01e-7, 15.05));
    assertThat(outlook(more, 0.1, 0.9).expectedBits() - without).isBetween(1.0e-7, 1.0e-5);
  }
}
