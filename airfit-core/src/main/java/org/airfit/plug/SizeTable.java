package org.airfit.plug;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.measure.PartSpread;

/**
 * The sizes of a set as plain numbers, dimension by dimension, worked out once: what does not depend on the plug in
 * hand.
 *
 * <p>Kernel: millimetres.
 */
final class SizeTable {

  /** What a profile says of a dimension. */
  enum Kind {
    NOTHING,
    DEVIATION,
    PIECES,
    LIMITS
  }

  final List<PlugProfile> profiles;
  private final Map<Dimension, Column> columns = new EnumMap<>(Dimension.class);
  private final Optional<GaugeBall> usualBall;

  /** Whether every profile that knows the tip length states it by the usual ball. */
  private final boolean oneBall;

  SizeTable(List<PlugProfile> profiles) {
    this.profiles = profiles;
    for (Dimension dimension : Dimension.values()) {
      columns.put(dimension, new Column(dimension, profiles));
    }
    this.usualBall = usual(profiles);
    this.oneBall = profiles.stream()
        .filter(profile -> profile.spread(Dimension.TIP_LENGTH).isPresent())
        .allMatch(profile -> profile.tipLengthBall().equals(usualBall));
  }

  /** One dimension, profile by profile. */
  static final class Column {

    /** A size class is hardly narrower, where few profiles tell how wide it is; this project's choice, no source. */
    private static final double NARROWEST_MM = 2.0;

    /** So many profiles tell by themselves how wide their size class is; this project's choice, no source. */
    private static final int MANY = 6;

    final int wearSign;
    final Kind[] kind;
    final double[] nominal;

    /** Half of the room between limits; 0 for any other kind. */
    final double[] half;

    /** Variance from part to part; 0 for limits, which are no scatter. */
    final double[] variance;

    /** Degrees of freedom of measured pieces. */
    final double[] freedom;

    /**
     * How wide the size class is: as wide as n evenly spread sizes make one expect, (n + 1)/(n − 1) times their range,
     * and at most what an unknown plug is given. Fewer than 6 profiles make it 2 mm at least.
     */
    final double classWidth;

    /** Whether every profile knows the dimension, by its deviation. */
    final boolean allNormal;

    private Column(Dimension dimension, List<PlugProfile> profiles) {
      int n = profiles.size();
      this.wearSign = dimension.wear().sign();
      this.kind = new Kind[n];
      this.nominal = new double[n];
      this.half = new double[n];
      this.variance = new double[n];
      this.freedom = new double[n];
      for (int k = 0; k < n; k++) {
        PartSpread spread = profiles.get(k).dimensions().get(dimension);
        kind[k] = spread == null ? Kind.NOTHING : fill(k, spread);
      }
      this.classWidth = classWidth();
      this.allNormal = Arrays.stream(kind).allMatch(of -> of == Kind.DEVIATION);
    }

    private double classWidth() {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      int known = 0;
      for (int k = 0; k < kind.length; k++) {
        if (kind[k] != Kind.NOTHING) {
          known++;
          low = Math.min(low, nominal[k]);
          high = Math.max(high, nominal[k]);
        }
      }
      double expected = known < 2 ? 0.0 : (high - low) * (known + 1.0) / (known - 1.0);
      return Math.max(
          known < MANY ? NARROWEST_MM : 0.0, Math.min(Assumptions.UNKNOWN_WIDTH_MM, expected));
    }

    private Kind fill(int k, PartSpread spread) {
      nominal[k] = spread.nominal().millimetres();
      if (spread instanceof PartSpread.Limits limits) {
        half[k] = 0.5 * (limits.high().millimetres() - limits.low().millimetres());
        return Kind.LIMITS;
      }
      double s = spread.standardDeviation().millimetres();
      variance[k] = s * s;
      if (spread instanceof PartSpread.Sample sample) {
        freedom[k] = sample.degreesOfFreedom();
        return Kind.PIECES;
      }
      return Kind.DEVIATION;
    }

    boolean isNormal(int k, double wear) {
      return kind[k] == Kind.DEVIATION && (wear == 0.0 || wearSign == 0);
    }

    /** Variance from part to part, of limits that of an even spread. */
    double scatter(int k) {
      return variance[k] + half[k] * half[k] / 3.0;
    }

    /** How far a reading lies from the nearest size that limits and wear allow. */
    double beyond(int k, double y, double wear) {
      double away = y - nominal[k];
      double low = -half[k] - (wearSign < 0 ? wear : 0.0);
      double high = half[k] + (wearSign > 0 ? wear : 0.0);
      return Math.max(0.0, Math.max(low - away, away - high));
    }
  }

  /** The same ball, or the edge, if all profiles that know the length state it so; the edge if they differ. */
  private static Optional<GaugeBall> usual(List<PlugProfile> profiles) {
    Optional<GaugeBall> first = Optional.empty();
    boolean any = false;
    for (PlugProfile profile : profiles) {
      if (profile.spread(Dimension.TIP_LENGTH).isEmpty()) {
        continue;
      }
      if (any && !profile.tipLengthBall().equals(first)) {
        return Optional.empty();
      }
      any = true;
      first = profile.tipLengthBall();
    }
    return first;
  }

  Column column(Dimension dimension) {
    return Objects.requireNonNull(columns.get(dimension));
  }

  /** The same ball, or the edge, if all profiles that know the tip length state it so; the edge if they differ. */
  Optional<GaugeBall> usualBall() {
    return usualBall;
  }

  /** Whether a reading needs no conversion for any profile that knows its dimension. */
  boolean takenAsStated(PlugReading reading) {
    return reading.dimension() != Dimension.TIP_LENGTH
        || (oneBall && reading.ball().equals(usualBall));
  }
}
