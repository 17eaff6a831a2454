package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Chances, χ², ranking and verdict against a second computation that is as plain as the formulas of {@link Identifier}:
 * every integral is a sum by Simpson's rule, nothing is left out for being out of reach, the distributions are those of
 * another library.
 */
class ScoresProperties {

  private static final List<Dimension> READ = List.of(
      Dimension.TIP_DIAMETER, Dimension.COLLAR_DIAMETER, Dimension.GROOVE_WIDTH, Dimension.BORE);
  private static final double[] MIDDLE = {10.0, 13.0, 4.0, 6.0};
  private static final NormalDistribution NORMAL = new NormalDistribution();

  /** Simpson's steps over e and over wear leave less than this of a chance. */
  private static final double STEPS = 1.0e-4;

  private static double mm(Length length) {
    return length.millimetres();
  }

  private static double simpson(double from, double to, int steps, DoubleUnaryOperator f) {
    double h = (to - from) / steps;
    double sum = f.applyAsDouble(from) + f.applyAsDouble(to);
    for (int i = 1; i < steps; i++) {
      sum += (i % 2 == 1 ? 4.0 : 2.0) * f.applyAsDouble(from + i * h);
    }
    return sum * h / 3.0;
  }

  private static double sigma(PartSpread spread, double u) {
    return spread instanceof PartSpread.Limits ? u : Math.hypot(mm(spread.standardDeviation()), u);
  }

  private static TDistribution student(PartSpread.Sample sample, double sigma) {
    double ratio = sigma / mm(sample.standardDeviation());
    return new TDistribution(sample.degreesOfFreedom() * Math.pow(ratio, 4.0));
  }

  private static double densityNew(PartSpread spread, double y, double u) {
    double sigma = sigma(spread, u);
    if (spread instanceof PartSpread.Limits limits) {
      double a = mm(limits.low());
      double b = mm(limits.high());
      return (NORMAL.cumulativeProbability((y - a) / u) - NORMAL.cumulativeProbability((y - b) / u))
          / (b - a);
    }
    double z = (y - mm(spread.nominal())) / sigma;
    return (spread instanceof PartSpread.Sample sample
            ? student(sample, sigma).density(z)
            : NORMAL.density(z))
        / sigma;
  }

  private static double density(
      Dimension dimension, PartSpread spread, double y, double u, double wear) {
    int sign = dimension.wear().sign();
    return wear == 0.0 || sign == 0
        ? densityNew(spread, y, u)
        : simpson(0.0, wear, 40, worn -> densityNew(spread, y - sign * worn, u)) / wear;
  }

  /** A dimension the profile does not know is as broad as for an unknown plug. */
  private static double density(
      PlugProfile profile, PlugReading reading, double e, double u, double wear) {
    return profile
        .spread(reading.dimension())
        .map(spread -> density(reading.dimension(), spread, mm(reading.length()) - e, u, wear))
        .orElse(0.1);
  }

  private static double likelihood(PlugProfile profile, List<PlugReading> readings, double wear) {
    double alone = 1.0;
    List<PlugReading> shared = new ArrayList<>();
    for (PlugReading reading : readings) {
      if (reading.caliper().isPresent() && profile.spread(reading.dimension()).isPresent()) {
        shared.add(reading);
      } else {
        alone *= density(profile, reading, 0.0, mm(reading.standardUncertainty()), wear);
      }
    }
    if (shared.size() < 2) {
      for (PlugReading reading : shared) {
        alone *= density(profile, reading, 0.0, mm(reading.standardUncertainty()), wear);
      }
      return alone;
    }
    double c = mm(shared.get(0).caliper().orElseThrow().commonUncertainty());
    return alone
        * simpson(-7.0 * c, 7.0 * c, 140, e -> {
          double product = NORMAL.density(e / c) / c;
          for (PlugReading reading : shared) {
            product *= density(profile, reading, e, own(reading, c), wear);
          }
          return product;
        });
  }

  private static double own(PlugReading reading, double c) {
    double u = mm(reading.standardUncertainty());
    return Math.sqrt(u * u - c * c);
  }

  private static double beyond(Dimension dimension, PartSpread spread, double y, double wear) {
    int sign = dimension.wear().sign();
    double low = spread instanceof PartSpread.Limits l ? mm(l.low()) : mm(spread.nominal());
    double high = spread instanceof PartSpread.Limits l ? mm(l.high()) : mm(spread.nominal());
    low -= sign < 0 ? wear : 0.0;
    high += sign > 0 ? wear : 0.0;
    return y < low ? y - low : y > high ? y - high : 0.0;
  }

  private static double squares(
      PlugProfile profile,
      List<PlugReading> readings,
      double wear,
      double e,
      double c,
      boolean scored) {
    double sum = c > 0.0 ? e * e / (c * c) : 0.0;
    for (PlugReading reading : readings) {
      PartSpread spread = profile.spread(reading.dimension()).orElse(null);
      if (spread == null) {
        continue;
      }
      double sigma = sigma(spread, c > 0.0 ? own(reading, c) : mm(reading.standardUncertainty()));
      double z =
          Math.abs(beyond(reading.dimension(), spread, mm(reading.length()) - e, wear)) / sigma;
      if (scored && spread instanceof PartSpread.Sample sample) {
        // the normal score of the same tail
        double tail = student(sample, sigma).cumulativeProbability(-z);
        z = tail > 1.0e-15 ? -NORMAL.inverseCumulativeProbability(tail) : 8.0;
      }
      sum += z * z;
    }
    return sum;
  }

  private static double chiSquare(PlugProfile profile, List<PlugReading> readings, double wear) {
    List<PlugReading> shared = readings.stream()
        .filter(reading -> reading.caliper().isPresent())
        .filter(reading -> profile.spread(reading.dimension()).isPresent())
        .toList();
    if (shared.size() < 2) {
      return squares(profile, readings, wear, 0.0, 0.0, true);
    }
    double c = mm(shared.get(0).caliper().orElseThrow().commonUncertainty());
    List<PlugReading> rest =
        readings.stream().filter(reading -> !shared.contains(reading)).toList();
    double low = -1.0;
    double high = 1.0;
    for (int i = 0; i < 120; i++) {
      double one = low + (high - low) / 3.0;
      double two = high - (high - low) / 3.0;
      if (squares(profile, shared, wear, one, c, false)
          < squares(profile, shared, wear, two, c, false)) {
        high = two;
      } else {
        low = one;
      }
    }
    return squares(profile, shared, wear, 0.5 * (low + high), c, true)
        + squares(profile, rest, wear, 0.0, 0.0, true);
  }

  private static PartSpread spread(SplittableRandom random, double nominal, int kind) {
    Length middle = Length.ofMillimetres(nominal);
    Length part = Length.ofMillimetres(random.nextDouble(0.02, 0.06));
    return switch (kind) {
      case 0 -> PartSpread.normal(middle, part);
      case 1 -> PartSpread.limits(middle.minus(part.times(2.0)), middle.plus(part.times(2.0)));
      default -> new PartSpread.Sample(random.nextInt(4, 9), middle, part);
    };
  }

  /** All of one kind, or each dimension of its own; some do not know the last dimension. */
  private static ReferenceSet set(SplittableRandom random) {
    int kinds = random.nextInt(4);
    List<PlugProfile> profiles = new ArrayList<>();
    for (int k = 0; k < 6; k++) {
      PlugProfile.Builder builder = PlugProfile.builder("profile-" + k)
          .from(Provenance.standardEntered(), Source.demo("drawn by lot"));
      double apart = k < 3 ? 0.1 : 0.6;
      for (int j = 0; j < READ.size() - (random.nextInt(4) == 0 ? 1 : 0); j++) {
        double nominal = MIDDLE[j] + random.nextDouble(-apart, apart);
        builder.dimension(
            READ.get(j), spread(random, nominal, kinds < 3 ? kinds : random.nextInt(3)));
      }
      profiles.add(builder.build());
    }
    return ReferenceSet.of("drawn by lot", profiles);
  }

  private static List<PlugReading> readings(SplittableRandom random, PlugProfile truth) {
    Instrument caliper =
        List.of(Instrument.values()).get(random.nextInt(Instrument.values().length));
    double off = caliper.commonUncertainty().millimetres() * random.nextGaussian();
    List<PlugReading> readings = new ArrayList<>();
    for (int j = 0; j < random.nextInt(1, READ.size() + 1); j++) {
      double size = truth.spread(READ.get(j)).map(s -> mm(s.nominal())).orElse(MIDDLE[j])
          + random.nextDouble(-0.08, 0.08);
      PlugReading reading = PlugReading.of(READ.get(j), caliper, Length.ofMillimetres(size + off));
      readings.add(random.nextInt(5) == 0 ? reading.alone() : reading);
    }
    return readings;
  }

  @Property(tries = 60, seed = "20261125")
  void chances_chi_square_ranking_and_verdict_are_those_of_the_plain_formulas(@ForAll long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    ReferenceSet set = set(random);
    double wear = random.nextInt(3) == 0 ? 0.1 : 0.0;
    List<PlugReading> readings = readings(random, set.profiles().get(random.nextInt(6)));
    Identification answer = Identifier.of(set)
        .withoutNearCopies()
        .withWearAllowance(Length.ofMillimetres(wear))
        .identify(readings);

    int n = set.profiles().size();
    double[] weight = new double[n + 1];
    for (int k = 0; k < n; k++) {
      weight[k] = 0.95 / n * likelihood(set.profiles().get(k), readings, wear);
    }
    weight[n] = 0.05 * Math.pow(0.1, readings.size());
    double total = IntStream.rangeClosed(0, n).mapToDouble(k -> weight[k]).sum();

    assertThat(answer.unknownProbability()).isCloseTo(weight[n] / total, within(STEPS));
    assertThat(answer.best()).isEqualTo(answer.candidates().get(0));
    for (ProfileCandidate candidate : answer.candidates()) {
      int k = set.profiles().indexOf(candidate.profile());
      assertThat(candidate.probability())
          .as("%s in %s", candidate, readings)
          .isCloseTo(weight[k] / total, within(STEPS));
      double chiSquare = chiSquare(candidate.profile(), readings, wear);
      if (chiSquare < 40.0) { // further out the other library has no score to give
        assertThat(candidate.chiSquare())
            .as("%s in %s", candidate, readings)
            .isCloseTo(chiSquare, within(1.0e-5 * (1.0 + chiSquare)));
      }
    }
    List<Integer> order = IntStream.range(0, n)
        .boxed()
        .sorted(Comparator.<Integer>comparingDouble(k -> -weight[k]))
        .toList();
    for (int i = 0; i < n && weight[order.get(i)] > STEPS * total; i++) {
      assertThat(answer.candidates().get(i).probability())
          .isCloseTo(weight[order.get(i)] / total, within(STEPS));
    }
    verdict(answer, readings, weight, total, order, wear);
  }

  private static void verdict(
      Identification answer,
      List<PlugReading> readings,
      double[] weight,
      double total,
      List<Integer> order,
      double wear) {
    List<PlugProfile> profiles = answer.referenceSet().profiles();
    int n = profiles.size();
    double sum = 0.0;
    boolean unknown = false;
    boolean close = false;
    boolean fits = false;
    List<PlugProfile> likely = new ArrayList<>();
    for (int k : order) {
      double chance = weight[k] / total;
      if (!unknown && sum < 0.95 && weight[n] > weight[k]) {
        unknown = true;
        sum += weight[n] / total;
      }
      close |= Math.abs(sum - 0.95) < 2.0 * STEPS
          || (likely.size() < n && Math.abs(weight[n] / total - chance) < 2.0 * STEPS);
      if (sum >= 0.95) {
        break;
      }
      likely.add(profiles.get(k));
      sum += chance;
      int known = (int) readings.stream()
          .filter(reading -> profiles.get(k).spread(reading.dimension()).isPresent())
          .count();
      double tail = known == 0
          ? 1.0
          : 1.0
              - new ChiSquaredDistribution(known)
                  .cumulativeProbability(chiSquare(profiles.get(k), readings, wear));
      close |= Math.abs(tail - 0.01) < 1.0e-5;
      fits |= tail >= 0.01;
    }
    if (close) {
      return;
    }
    unknown |= sum < 0.95;
    PlugVerdict plain = !fits
        ? PlugVerdict.NO_MATCH
        : likely.size() > 1 || unknown
            ? PlugVerdict.AMBIGUOUS
            : readings.stream()
                        .filter(
                            reading -> likely.get(0).spread(reading.dimension()).isPresent())
                        .count()
                    < 2
                ? PlugVerdict.INSUFFICIENT_DATA
                : PlugVerdict.IDENTIFIED;
    if (plain == PlugVerdict.NO_MATCH && !answer.slips().isEmpty()) {
      plain = PlugVerdict.AMBIGUOUS; // by a slip, which SlipSearchTest looks at
    }
    if (plain == PlugVerdict.IDENTIFIED) {
      double misfit = largestMisfit(likely.get(0), readings, wear);
      double tail = 1.0
          - Math.pow(
              1.0 - 2.0 * NORMAL.cumulativeProbability(-misfit), answer.best().degreesOfFreedom());
      double coincidence = coincidence(profiles, readings, wear);
      if (Math.abs(tail - 0.01) < 1.0e-4 || Math.abs(coincidence - 0.01) < 1.0e-5) {
        return;
      }
      // all on which the mating depends, whether or not the set knows it
      boolean all = readings.size() == Dimension.values().length
          && likely.get(0).dimensions().size() == Dimension.values().length;
      plain = tail < 0.01 || (coincidence > 0.01 && !all)
          ? PlugVerdict.CANDIDATE
          : PlugVerdict.IDENTIFIED;
    }
    assertThat(answer.verdict()).as("%s", readings).isEqualTo(plain);
    assertThat(answer.likely())
        .extracting(ProfileCandidate::profile)
        .containsExactlyInAnyOrderElementsOf(likely);
  }

  private static double largestMisfit(
      PlugProfile profile, List<PlugReading> readings, double wear) {
    double largest = 0.0;
    for (PlugReading reading : readings) {
      PartSpread spread = profile.spread(reading.dimension()).orElse(null);
      if (spread != null) {
        double square = squares(profile, List.of(reading.alone()), wear, 0.0, 0.0, true);
        largest = Math.max(largest, Math.sqrt(square));
      }
    }
    return largest;
  }

  private static double coincidence(
      List<PlugProfile> profiles, List<PlugReading> readings, double wear) {
    double sum = 0.0;
    for (PlugProfile profile : profiles) {
      double chance = 1.0;
      for (PlugReading reading : readings) {
        PartSpread spread = profile.spread(reading.dimension()).orElse(null);
        if (spread != null) {
          double[] nominals = profiles.stream()
              .flatMap(p -> p.spread(reading.dimension()).stream())
              .mapToDouble(s -> mm(s.nominal()))
              .sorted()
              .toArray();
          int n = nominals.length;
          double range = n < 2 ? 0.0 : (nominals[n - 1] - nominals[0]) * (n + 1.0) / (n - 1.0);
          double room = spread instanceof PartSpread.Limits limits
              ? mm(limits.high()) - mm(limits.low())
              : 0.0;
          double width = room
              + 2.0 * 2.576 * sigma(spread, mm(reading.standardUncertainty()))
              + (reading.dimension().wear().sign() == 0 ? 0.0 : wear);
          double of = Math.max(n < 6 ? 2.0 : 0.0, Math.min(10.0, range));
          chance *= width < of ? width / of : 1.0;
        }
      }
      sum += chance;
    }
    return Math.min(1.0, sum);
  }

  /** A near copy, by every choice of changed sizes in turn, against the product the library takes. */
  @Property(tries = 40, seed = "20261128")
  void near_copies_are_weighed_as_the_sum_over_all_that_may_be_changed(@ForAll long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    ReferenceSet set = set(random);
    List<PlugReading> readings = readings(random, set.profiles().get(random.nextInt(6)));
    Identification answer = Identifier.of(set)
        .withUnknownPrior(0.3)
        .withWearAllowance(Length.ofMillimetres(0.0))
        .identify(readings);
    int n = set.profiles().size();
    double genuine = 0.0;
    double copies = 0.0;
    for (PlugProfile profile : set.profiles()) {
      genuine += 0.7 / n * likelihood(profile, readings, 0.0);
      long agree = readings.stream()
          .filter(reading -> profile
              .spread(reading.dimension())
              .map(
                  spread -> Math.abs(beyond(reading.dimension(), spread, mm(reading.length()), 0.0))
                      <= 6.0 * sigma(spread, mm(reading.standardUncertainty())))
              .orElse(false))
          .count();
      long known = readings.stream()
          .filter(reading -> profile.spread(reading.dimension()).isPresent())
          .count();
      copies += 2 * agree >= known ? 0.03 / n * likelihoodOfCopy(profile, readings) : 0.0;
    }
    double elsewhere = 0.27 * Math.pow(0.1, readings.size());
    double total = genuine + copies + elsewhere;
    assertThat(answer.elsewhereProbability()).isCloseTo(elsewhere / total, within(0.005));
    assertThat(answer.nearCopyProbability())
        .as("%s", readings)
        .isCloseTo(copies / total, within(1.0e-3 + 0.05 * copies / total));
  }

  private static double likelihoodOfCopy(PlugProfile profile, List<PlugReading> readings) {
    List<PlugReading> known = readings.stream()
        .filter(reading -> profile.spread(reading.dimension()).isPresent())
        .toList();
    int all = profile.dimensions().size();
    List<PlugReading> shared =
        known.stream().filter(reading -> reading.caliper().isPresent()).toList();
    double c =
        shared.size() < 2 ? 0.0 : mm(shared.get(0).caliper().orElseThrow().commonUncertainty());
    double sum = 0.0;
    for (int changed = 0; changed < 1 << known.size(); changed++) {
      int which = changed;
      int count = Integer.bitCount(changed);
      // of the sizes not read any may be changed; if none read is, one of those must be
      double prior = Math.pow(0.3, count) * Math.pow(0.7, known.size() - count)
          - (count == 0 ? Math.pow(0.7, all) : 0.0);
      DoubleUnaryOperator at = e -> {
        double product = 1.0;
        for (int j = 0; j < known.size(); j++) {
          PlugReading reading = known.get(j);
          boolean with = c > 0.0 && reading.caliper().isPresent();
          double y = mm(reading.length()) - (with ? e : 0.0);
          PartSpread spread = profile.spread(reading.dimension()).orElseThrow();
          double room = spread instanceof PartSpread.Limits limits
              ? mm(limits.high()) - mm(limits.low())
              : 0.0;
          product *= (which >> j & 1) == 0
              ? densityNew(spread, y, with ? own(reading, c) : mm(reading.standardUncertainty()))
              : Math.exp(-Math.abs(beyond(reading.dimension(), spread, y, 0.0)) / 0.5)
                  / (1.0 + room);
        }
        return product;
      };
      sum += prior
          * (c == 0.0
              ? at.applyAsDouble(0.0)
              : simpson(
                  -6.0 * c, 6.0 * c, 120, e -> NORMAL.density(e / c) / c * at.applyAsDouble(e)));
    }
    return sum / (1.0 - Math.pow(0.7, all)) * Math.pow(0.1, readings.size() - known.size());
  }
}
