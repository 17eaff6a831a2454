package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.airfit.ReliabilityTable;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.ToleranceInterval;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

/**
 * How often a shop's record, its outliers and its joining with another shop's are right, by drawing.
 *
 * <p>The drawing is not the judge's model: true pieces scatter evenly or bell-shaped around sizes nobody knows, one
 * caliper is off by one unknown amount for all readings and by another in bores, steps and grooves, the hand scatters,
 * and what is written down is rounded to the caliper's step. Numbers of records grow with {@code -Dairfit.simulate=N}.
 */
class SetsReliabilityTest {

  private static final Source BENCH = Source.measured("drawn for a simulation");
  private static final int TIMES = Integer.getInteger("airfit.simulate", 1);
  private static final List<Dimension> DIMENSIONS = List.of(Dimension.values());
  private static final double[] SIZES = {11.9, 15.3, 18.2, 24.6, 3.6, 9.1, 7.7, 14.4, 8.05};

  /** Where a shop's calipers and plugs come from. */
  private record Shop(SplittableRandom random, Instrument instrument, double partMm, boolean even) {

    private static double step(Instrument instrument) {
      return instrument.step().millimetres();
    }

    private double scatter(double mm) {
      return even ? (random.nextDouble() - 0.5) * Math.sqrt(12.0) * mm : random.nextGaussian() * mm;
    }

    /** Pieces of one kind as written down; shifts move the true sizes of all of them. */
    List<KnownPiece> pieces(String prefix, int count, double[] shifts, double caliper) {
      double[] access = new double[SIZES.length];
      for (int i = 0; i < access.length; i++) {
        access[i] = DIMENSIONS.get(i).access() == org.airfit.measure.Access.OUTSIDE
            ? 0.0
            : random.nextDouble(-0.02, 0.02);
      }
      List<KnownPiece> pieces = new ArrayList<>();
      for (int p = 0; p < count; p++) {
        Map<Dimension, Length> read = new EnumMap<>(Dimension.class);
        for (int i = 0; i < SIZES.length; i++) {
          double hand = random.nextDouble(-0.01, 0.01);
          double mm = SIZES[i] + shifts[i] + scatter(partMm) + caliper + access[i] + hand;
          read.put(
              DIMENSIONS.get(i),
              Length.ofMillimetres(Math.rint(mm / step(instrument)) * step(instrument)));
        }
        pieces.add(new KnownPiece(prefix + (p + 1), read));
      }
      return pieces;
    }

    double caliper() {
      double limit = instrument == Instrument.VERNIER_CALIPER_0_05 ? 0.05 : 0.02; // DIN 862
      return random.nextDouble(-limit, limit);
    }

    KnownPlugs record(List<KnownPiece> pieces) {
      KnownPlugs record = KnownPlugs.of("known", instrument);
      for (KnownPiece piece : pieces) {
        record = record.with(piece);
      }
      return record;
    }
  }

  /** A sub-step true offset of the kind, so that no size sits in the middle of a step by design. */
  private static double[] anywhere(SplittableRandom random) {
    double[] shifts = new double[SIZES.length];
    for (int i = 0; i < shifts.length; i++) {
      shifts[i] = random.nextDouble(0.05);
    }
    return shifts;
  }

  private static String percent(int count, int of) {
    return String.format(Locale.ROOT, "%.1f %%", 100.0 * count / of);
  }

  /** Grubbs' test at one in twenty in each dimension, uncorrected and unrounded: what was done before. */
  private static boolean rawGrubbs(KnownPlugs record) {
    int n = record.pieces().size();
    double t = new TDistribution(n - 2).inverseCumulativeProbability(1.0 - 0.05 / (2.0 * n));
    double limit = (n - 1) / Math.sqrt(n) * Math.sqrt(t * t / (n - 2 + t * t));
    for (Dimension dimension : record.dimensions()) {
      double[] mm = record.pieces().stream()
          .mapToDouble(
              piece -> Objects.requireNonNull(piece.sizes().get(dimension)).millimetres())
          .toArray();
      double mean = java.util.Arrays.stream(mm).average().orElseThrow();
      double s = Math.sqrt(
          java.util.Arrays.stream(mm).map(x -> (x - mean) * (x - mean)).sum() / (n - 1));
      double far =
          java.util.Arrays.stream(mm).map(x -> Math.abs(x - mean)).max().orElseThrow();
      if (far > limit * s && s > 0.0) {
        return true;
      }
    }
    return false;
  }

  @Test
  void clean_records_of_nine_dimensions_are_flagged_in_one_of_twenty_at_most() {
    List<List<String>> rows = new ArrayList<>();
    for (Instrument instrument : Instrument.values()) {
      for (int n : new int[] {5, 8, 12, 20}) {
        for (boolean even : new boolean[] {false, true}) {
          List<String> row =
              new ArrayList<>(List.of(instrument.label(), "" + n, even ? "even" : "bell-shaped"));
          int raw = 0;
          int rawOf = 0;
          for (double part : new double[] {0.01, 0.03, 0.1}) {
            SplittableRandom random = new SplittableRandom(41);
            Shop shop = new Shop(random, instrument, part, even);
            int records = 100 * TIMES;
            int flagged = 0;
            for (int i = 0; i < records; i++) {
              KnownPlugs record = shop.record(shop.pieces("", n, anywhere(random), shop.caliper()));
              flagged += record.outliers().isEmpty() ? 0 : 1;
              raw += rawGrubbs(record) ? 1 : 0;
            }
            rawOf += records;
            row.add(percent(flagged, records));
            assertThat(flagged / (double) records)
                .as("%s, %d pieces, %s mm, even %s: one in twenty", instrument, n, part, even)
                .isLessThanOrEqualTo(0.05);
          }
          row.add(percent(raw, rawOf));
          rows.add(row);
        }
      }
    }
    ReliabilityTable.write(
        "setsClean",
        List.of(
            "caliper",
            "pieces",
            "scatter",
            "flagged, 0.01 mm",
            "flagged, 0.03 mm",
            "flagged, 0.1 mm",
            "nine raw tests"),
        rows);
  }

  @Test
  void strangers_are_named_where_the_record_can_show_them() {
    List<List<String>> rows = new ArrayList<>();
    for (int strangers : new int[] {1, 2, 3}) {
      for (int n : new int[] {6, 8, 12, 20}) {
        if (2 * strangers >= n) {
          continue;
        }
        List<String> row = new ArrayList<>(List.of("" + strangers, "" + n));
        int wrong = 0;
        int all = 0;
        for (double apart : new double[] {0.3, 0.5, 1.0}) {
          SplittableRandom random = new SplittableRandom(42);
          int records = 40 * TIMES;
          int found = 0;
          for (int i = 0; i < records; i++) {
            Shop shop = new Shop(random, Instrument.DIGITAL_CALIPER, 0.03, i % 2 == 0);
            double[] kind = anywhere(random);
            double[] other = kind.clone();
            for (int d = 0; d < 3; d++) { // a third of the sizes differ, up or down
              other[random.nextInt(other.length)] += random.nextBoolean() ? apart : -apart;
            }
            double caliper = shop.caliper();
            List<KnownPiece> pieces =
                new ArrayList<>(shop.pieces("own", n - strangers, kind, caliper));
            pieces.addAll(shop.pieces("stranger", strangers, other, caliper));
            List<String> named = shop.record(pieces).outliers().stream()
                .map(odd -> odd.piece().label())
                .toList();
            long right = named.stream()
                .filter(label -> label.startsWith("stranger"))
                .collect(java.util.stream.Collectors.toSet())
                .size();
            found += right == strangers ? 1 : 0;
            wrong += named.stream().anyMatch(label -> label.startsWith("own")) ? 1 : 0;
          }
          all += records;
          row.add(percent(found, records));
          if (apart >= 1.0 && n >= 8) {
            assertThat(found / (double) records)
                .as("%d strangers of %d, %s mm apart", strangers, n, apart)
                .isGreaterThan(0.95);
          }
        }
        row.add(percent(wrong, all));
        assertThat(wrong / (double) all).isLessThan(0.05 + 4.0 * Math.sqrt(0.05 * 0.95 / all));
        rows.add(row);
      }
    }
    ReliabilityTable.write(
        "setsStrangers",
        List.of(
            "strangers",
            "pieces in all",
            "all named, 0.3 mm off",
            "0.5 mm off",
            "1 mm off",
            "an own piece named too"),
        rows);
  }

  private static ReferenceSet set(Shop shop, String name, int profiles, int n, double[][] kinds) {
    List<PlugProfile> known = new ArrayList<>();
    double caliper = shop.caliper();
    for (int p = 0; p < profiles; p++) {
      KnownPlugs record = KnownPlugs.of("kind" + p, shop.instrument);
      for (KnownPiece piece : shop.pieces("", n, kinds[p], caliper)) {
        record = record.with(piece);
      }
      known.add(record.toProfile(BENCH).confirmUnusual().build());
    }
    return ReferenceSet.of(name, known);
  }

  /** A set of few pieces; where all of one kind read alike it is refused, and others are measured. */
  private static ReferenceSet showingSpread(
      Shop shop, String name, int profiles, int pieces, double[][] kinds) {
    for (int tries = 0; tries < 50; tries++) {
      try {
        return set(shop, name, profiles, pieces, kinds);
      } catch (IllegalArgumentException e) {
        assertThat(e).hasMessageContaining("pieces that all read alike");
      }
    }
    throw new IllegalStateException("no pieces that show a spread");
  }

  /** Of few pieces some lie close together by chance, and of many sizes some do so in one set alone. */
  @Test
  void clean_pairs_of_few_pieces_are_refused_in_one_of_twenty_at_most() {
    List<List<String>> rows = new ArrayList<>();
    for (int profiles : new int[] {1, 8}) {
      for (int[] pieces : new int[][] {{3, 3}, {3, 8}, {3, 20}, {4, 4}, {5, 20}}) {
        List<String> row = new ArrayList<>(List.of("" + profiles, pieces[0] + " and " + pieces[1]));
        for (boolean even : new boolean[] {false, true}) {
          SplittableRandom random = new SplittableRandom(47);
          Shop shop = new Shop(random, Instrument.DIGITAL_CALIPER, 0.0866, even);
          int pairs = 200 * TIMES;
          int refused = 0;
          for (int i = 0; i < pairs; i++) {
            double[][] kinds = new double[profiles][];
            Arrays.setAll(kinds, p -> anywhere(random));
            ReferenceSet one = showingSpread(shop, "one", profiles, pieces[0], kinds);
            ReferenceSet other = showingSpread(shop, "other", profiles, pieces[1], kinds);
            refused += SetComparison.of(one, other, shop.instrument).agrees() ? 0 : 1;
          }
          row.add(percent(refused, pairs));
          assertThat(refused / (double) pairs)
              .as("%d profiles, %d and %d pieces, even %s", profiles, pieces[0], pieces[1], even)
              .isLessThanOrEqualTo(0.05);
        }
        rows.add(row);
      }
    }
    ReliabilityTable.write(
        "setsFew", List.of("profiles", "pieces of each set", "bell-shaped", "even"), rows);
  }

  @Test
  void clean_pairs_of_sets_are_refused_in_one_of_twenty_at_most() {
    List<List<String>> rows = new ArrayList<>();
    for (Instrument instrument : Instrument.values()) {
      for (double part : new double[] {0.01, 0.03, 0.1}) {
        List<String> row = new ArrayList<>(List.of(instrument.label(), plain(part) + " mm"));
        for (double apart : new double[] {0.0, 0.1, 0.3}) {
          SplittableRandom random = new SplittableRandom(43);
          int pairs = 60 * TIMES;
          int refused = 0;
          for (int i = 0; i < pairs; i++) {
            double[][] kinds = {anywhere(random), anywhere(random), anywhere(random)};
            Shop here = new Shop(random, instrument, part, i % 2 == 0);
            Shop there = new Shop(random, instrument, 1.5 * part, i % 3 == 0);
            ReferenceSet one = set(here, "one", 3, 5 + random.nextInt(5), kinds);
            double[][] theirs = {kinds[0].clone(), kinds[1], kinds[2]};
            for (int d = 0; d < 3; d++) {
              theirs[0][random.nextInt(SIZES.length)] += apart;
            }
            ReferenceSet other = set(there, "other", 3, 5 + random.nextInt(8), theirs);
            SetComparison comparison = SetComparison.of(one, other, instrument);
            refused += comparison.agrees() ? 0 : 1;
            if (comparison.agrees()) {
              assertThat(comparison.merged("joint").profiles()).hasSize(3);
            } else {
              assertThat(comparison.mergedDespiteDifferences("joint").profiles())
                  .hasSize(3);
            }
          }
          row.add(percent(refused, pairs));
          if (apart == 0.0) {
            assertThat(refused / (double) pairs)
                .as("%s, %s mm", instrument, part)
                .isLessThanOrEqualTo(0.05);
          }
        }
        rows.add(row);
      }
    }
    ReliabilityTable.write(
        "setsMerged",
        List.of(
            "caliper",
            "scatter",
            "clean pairs refused",
            "refused, 3 of 27 sizes 0.1 mm off",
            "refused, 0.3 mm off"),
        rows);
  }

  private static String plain(double value) {
    return String.format(Locale.ROOT, "%s", value);
  }

  /** What share of an even or bell-shaped spread of readings lies between two limits, rounding left aside. */
  private static double held(double low, double high, double mean, double part, boolean even) {
    if (even) {
      double half = part * Math.sqrt(3.0);
      double from = Math.max(low, mean - half);
      double to = Math.min(high, mean + half);
      return Math.max(0.0, to - from) / (2.0 * half);
    }
    NormalDistribution normal = new NormalDistribution(mean, part);
    return normal.cumulativeProbability(high) - normal.cumulativeProbability(low);
  }

  @Test
  void tolerance_limits_hold_their_share_as_often_as_they_say() {
    List<List<String>> rows = new ArrayList<>();
    for (Instrument instrument : Instrument.values()) {
      for (int n : new int[] {5, 10, 30}) {
        List<String> row = new ArrayList<>(List.of(instrument.label(), "" + n));
        for (boolean even : new boolean[] {false, true}) {
          for (double part : new double[] {0.02, 0.1}) {
            SplittableRandom random = new SplittableRandom(44);
            int records = 150 * TIMES;
            int held = 0;
            double k = ToleranceInterval.between(
                    new PartSpread.Sample(n, Length.ofMillimetres(1), Length.ofMillimetres(1)),
                    0.95,
                    0.95)
                .factor();
            for (int i = 0; i < records; i++) {
              Shop shop = new Shop(random, instrument, part, even);
              double[] kind = anywhere(random);
              double caliper = shop.caliper();
              KnownPlugs record = shop.record(shop.pieces("", n, kind, caliper));
              PartSpread.Sample sample = record.sample(DIMENSIONS.get(0));
              double mean = sample.mean().millimetres();
              double reach = k * sample.sampleDeviation().millimetres();
              held +=
                  held(mean - reach, mean + reach, SIZES[0] + kind[0] + caliper, part, even) >= 0.95
                      ? 1
                      : 0;
            }
            row.add(percent(held, records));
            assertThat(held / (double) records)
                .as(
                    "%s, %d pieces, %s mm, even %s: 95 %% less four standard errors",
                    instrument, n, part, even)
                .isGreaterThanOrEqualTo(0.95 - 4.0 * Math.sqrt(0.05 * 0.95 / records));
          }
        }
        rows.add(row);
      }
    }
    ReliabilityTable.write(
        "setsTolerance",
        List.of(
            "caliper",
            "pieces",
            "bell-shaped 0.02 mm",
            "bell-shaped 0.1 mm",
            "even 0.02 mm",
            "even 0.1 mm"),
        rows);
  }
}
