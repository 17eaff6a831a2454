package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.special.Erf;
import org.hipparchus.special.Gamma;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The likelihood under the integral over the error of a caliper against brute integration: panels of 20 points between
 * every place where a density turns, from 12 standard deviations of the error before the first reading to as many beyond
 * the last, with densities written down here. Wear is integrated likewise, but for limits, where the integral of Φ is written down.
 */
class SharedErrorIntegralTest {

  /** What is promised of the integral, as a share of it; the bound that the steps are chosen by allows 4.5e-10. */
  private static final double GOOD_TO = 1.0e-9;

  private static final double[] POINT = new double[20];
  private static final double[] WEIGHT = new double[20];

  static {
    // roots of the Legendre polynomial by Newton; weights 2/((1 − x²) P′²), DLMF 3.5.19
    int n = POINT.length;
    for (int i = 0; i < n; i++) {
      double x = Math.cos(Math.PI * (i + 0.75) / (n + 0.5));
      double slope = 0.0;
      for (int step = 0; step < 20; step++) {
        double before = 1.0;
        double value = x;
        for (int k = 2; k <= n; k++) {
          double next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
          before = value;
          value = next;
        }
        slope = n * (x * value - before) / (x * x - 1.0);
        x -= value / slope;
      }
      POINT[i] = x;
      WEIGHT[i] = 2.0 / ((1.0 - x * x) * slope * slope);
    }
  }

  /** One size of one part: its kind, and what a reading of it is off. */
  private record Size(
      Kind kind, double half, double s, double freedom, double u, double wear, int sign, double y) {

    double sigma() {
      return kind == Kind.LIMITS ? u : Math.hypot(s, u);
    }

    /** After Welch and Satterthwaite. */
    double effective() {
      return freedom * Math.pow(sigma() / s, 4.0);
    }

    ReadingDensity density() {
      return switch (kind) {
        case DEVIATION -> ReadingDensity.normal(0.0, s, u, wear, sign);
        case LIMITS -> ReadingDensity.within(-half, half, u, wear, sign);
        case PIECES -> ReadingDensity.student(0.0, s, freedom, u, wear, sign);
      };
    }

    /** Where the density turns, seen from the reading. */
    double[] turns() {
      double worn = sign * wear;
      return new double[] {
        y - half, y + half, y - half - worn, y + half - worn,
      };
    }

    double log(double at) {
      boolean isNew = sign == 0 || wear == 0.0;
      if (kind == Kind.LIMITS && isNew) {
        return logShare((at - half) / u, (at + half) / u) - Math.log(2.0 * half);
      }
      if (kind == Kind.DEVIATION) {
        double low = sign < 0 ? at : at - wear;
        return isNew
            ? -0.5 * (at / sigma()) * (at / sigma()) - Math.log(sigma() * Math.sqrt(2.0 * Math.PI))
            : logShare(low / sigma(), (low + wear) / sigma()) - Math.log(wear);
      }
      return Math.log(isNew ? fresh(at) : worn(at) / wear);
    }

    private double fresh(double at) {
      double sigma = sigma();
      return switch (kind) {
        case DEVIATION -> bell(at / sigma) / sigma;
        case LIMITS -> share((at - half) / u, (at + half) / u) / (2.0 * half);
        case PIECES -> student(at / sigma) / sigma;
      };
    }

    private double student(double t) {
      double nu = effective();
      // of two large logarithms no digits would be left; Γ(a + 1/2)/Γ(a) after DLMF 5.11.13
      double a = 0.5 * nu;
      double gammas = a < 200.0
          ? Gamma.logGamma(a + 0.5) - Gamma.logGamma(a)
          : 0.5 * Math.log(a) - 1.0 / (8.0 * a) + 1.0 / (192.0 * a * a * a);
      return Math.exp(
          gammas - 0.5 * Math.log(nu * Math.PI) - 0.5 * (nu + 1.0) * Math.log1p(t * t / nu));
    }

    /** ∫ f₀(at − sign δ) dδ. */
    private double worn(double at) {
      double low = sign < 0 ? at : at - wear;
      double high = low + wear;
      double step = 2.0 * sigma();
      return panels(this::fresh, low, high, step, new double[] {-half, half, 0.0});
    }
  }

  private enum Kind {
    DEVIATION,
    LIMITS,
    PIECES
  }

  private static double bell(double z) {
    return Math.exp(-0.5 * z * z) / Math.sqrt(2.0 * Math.PI);
  }

  /** Φ(high) − Φ(low), where nothing cancels. */
  private static double share(double low, double high) {
    double root = Math.sqrt(2.0);
    if (low > 0.0) {
      return 0.5 * (Erf.erfc(low / root) - Erf.erfc(high / root));
    }
    return high < 0.0
        ? 0.5 * (Erf.erfc(-high / root) - Erf.erfc(-low / root))
        : 0.5 * (Erf.erf(high / root) - Erf.erf(low / root));
  }

  /** The logarithm of the same, far out by the integral of the bell over its value at the nearer end. */
  private static double logShare(double low, double high) {
    if (low < 0.0 && high < 0.0) {
      return logShare(-high, -low);
    }
    if (low < 8.0 && high - low > 0.1) {
      return Math.log(share(low, high));
    }
    double far = Math.min(high - low, 45.0 / Math.max(1.0, Math.abs(low)));
    double rest = panels(
        t -> Math.exp(-t * (low + 0.5 * t)),
        0.0,
        far,
        2.0 / Math.max(1.0, Math.abs(low)),
        new double[0]);
    return -0.5 * low * low - 0.5 * Math.log(2.0 * Math.PI) + Math.log(rest);
  }

  private static double panels(
      DoubleUnaryOperator f, double low, double high, double widest, double[] turns) {
    double[] cuts = Arrays.copyOf(turns, turns.length + 2);
    cuts[turns.length] = low;
    cuts[turns.length + 1] = high;
    Arrays.sort(cuts);
    double sum = 0.0;
    for (int i = 1; i < cuts.length; i++) {
      double from = Math.max(low, cuts[i - 1]);
      double to = Math.min(high, cuts[i]);
      int n = (int) Math.max(1.0, Math.ceil((to - from) / widest));
      for (int panel = 0; panel < n && to > from; panel++) {
        double half = 0.5 * (to - from) / n;
        double middle = from + (2 * panel + 1) * half;
        for (int k = 0; k < POINT.length; k++) {
          sum += half * WEIGHT[k] * f.applyAsDouble(middle + half * POINT[k]);
        }
      }
    }
    return sum;
  }

  /** ln ∫ φ(e/c)/c Π f_j(y_j − e) de. */
  private static double brute(double c, List<Size> sizes) {
    double narrowest = c;
    double[] turns = new double[4 * sizes.size()];
    for (int j = 0; j < sizes.size(); j++) {
      narrowest = Math.min(narrowest, sizes.get(j).sigma());
      System.arraycopy(sizes.get(j).turns(), 0, turns, 4 * j, 4);
    }
    DoubleUnaryOperator log = e -> {
      double sum = Math.log(bell(e / c) / c);
      for (Size size : sizes) {
        sum += size.log(size.y - e);
      }
      return sum;
    };
    double least = Math.min(0.0, Arrays.stream(turns).min().orElse(0.0)) - 12.0 * c;
    double most = Math.max(0.0, Arrays.stream(turns).max().orElse(0.0)) + 12.0 * c;
    double scan = Math.max(narrowest, (most - least) / 400.0);
    double largest = Double.NEGATIVE_INFINITY;
    for (double e = least; e <= most; e += scan) {
      largest = Math.max(largest, log.applyAsDouble(e));
    }
    // what is e⁻⁶⁰ of the largest counts for nothing, but all between two places that count is
    // taken
    double peak = largest;
    double low = most;
    double high = least;
    for (double e = least; e <= most; e += scan) {
      if (log.applyAsDouble(e) > peak - 60.0) {
        low = Math.min(low, e - scan);
        high = Math.max(high, e + scan);
      }
    }
    return peak
        + Math.log(
            panels(e -> Math.exp(log.applyAsDouble(e) - peak), low, high, 2.0 * narrowest, turns));
  }

  private static final double[] CALIPERS = {0.01, 0.01118, 0.025};
  private static final double[] WEARS = {0.0, 1.0e-6, 1.0e-3, 0.02, 0.1, 0.3, 2.0};

  private static Size draw(SplittableRandom random, Kind kind, double c, double wear, double off) {
    double u = c * random.nextDouble(0.4, 6.0);
    double s = c * Math.exp(random.nextDouble(-1.5, 2.0));
    double half = kind == Kind.LIMITS ? c * Math.exp(random.nextDouble(-3.0, 3.0)) : 0.0;
    int sign = random.nextInt(3) - 1;
    double spread = kind == Kind.LIMITS ? Math.hypot(u, half) : Math.hypot(s, u);
    double worn = sign * wear * random.nextDouble();
    double away = off * random.nextDouble(-1.0, 1.0) * spread;
    if (kind == Kind.LIMITS && wear > 0.0) { // further out worn limits underflow here
      away = Math.max(-half - 20.0 * u, Math.min(half + 20.0 * u, away));
    }
    return new Size(kind, half, s, random.nextInt(2, 30), u, wear, sign, worn + away);
  }

  /** All readings of one kind, or of the kinds in turn; near, strained, and far from the profile. */
  @ParameterizedTest
  @EnumSource
  void likelihood_is_the_integral_over_the_error(Mix mix) {
    SplittableRandom random = new SplittableRandom(mix.seed);
    for (int i = 0; i < 36; i++) {
      double c = CALIPERS[i % CALIPERS.length];
      double wear = WEARS[i % WEARS.length];
      double off = new double[] {0.5, 2.0, 4.0, 8.0}[i % 4];
      List<Size> sizes = new ArrayList<>();
      for (int j = 0; j < 1 + i % 9; j++) {
        Kind kind = mix.kind(j);
        // the widest wear of other kinds would take this test too long
        double most = kind == Kind.DEVIATION ? wear : Math.min(wear, 0.5);
        sizes.add(draw(random, kind, c, most, off));
      }
      double[] y = sizes.stream().mapToDouble(Size::y).toArray();
      ReadingDensity[] own = sizes.stream().map(Size::density).toArray(ReadingDensity[]::new);
      double brute = brute(c, sizes);
      double ours = SharedError.of(c, y, own).logLikelihood();
      assertThat(ours).as("%d: c = %s, %s", i, c, sizes).isCloseTo(brute, within(GOOD_TO));
    }
  }

  /**
   * Pieces that hardly scatter, read with a coarse caliper far from where they were: the integrand has one hump where
   * the error is small and another, away from it, where the pieces are. Both count, whichever the search begins with.
   */
  @ParameterizedTest
  @ValueSource(doubles = {3.0, 4.0, 5.0, 6.0, 7.0})
  void both_humps_count_where_pieces_are_far(double off) {
    for (double freedom : new double[] {2.0, 3.0, 5.0}) {
      Size far = new Size(Kind.PIECES, 0.0, 0.05, freedom, 1.0e-3, 0.0, 0, off);
      Size other = new Size(Kind.PIECES, 0.0, 0.2, freedom, 1.0e-3, 0.0, 0, -0.3 * off);
      for (List<Size> sizes : List.of(List.of(far), List.of(far, other))) {
        double[] y = sizes.stream().mapToDouble(Size::y).toArray();
        ReadingDensity[] own = sizes.stream().map(Size::density).toArray(ReadingDensity[]::new);
        assertThat(SharedError.of(1.0, y, own).logLikelihood())
            .as("%s", sizes)
            .isCloseTo(brute(1.0, sizes), within(GOOD_TO));
      }
    }
  }

  private enum Mix {
    DEVIATION(1, Kind.DEVIATION),
    LIMITS(2, Kind.LIMITS),
    PIECES(3, Kind.PIECES),
    ANY(4, Kind.values());

    private final long seed;
    private final List<Kind> kinds;

    Mix(long seed, Kind... kinds) {
      this.seed = seed;
      this.kinds = List.of(kinds);
    }

    Kind kind(int j) {
      return kinds.get(j % kinds.size());
    }
  }
}
