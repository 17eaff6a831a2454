package org.airfit.plug;

import java.util.List;
import java.util.Optional;
import org.airfit.internal.ReadingDensity;
import org.airfit.internal.SharedError;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * Brings tip lengths by the edge and by balls together, see {@link GaugeBall}. Works with the nominal diameters of a profile; what they
 * may be off goes into the uncertainty.
 */
final class TipLength {

  private TipLength() {}

  /** What to add to a length by one way of taking it to get the other [mm], and how uncertain that is [mm]. */
  record Bridge(double shift, double u) {}

  private static final Bridge NONE = new Bridge(0.0, 0.0);
  private static final SharedError.Left NO_ERROR = new SharedError.Left(0.0, 0.0);

  /** The same ball, or the edge, if all profiles that know the length state it so; the edge if they differ. */
  static Optional<GaugeBall> usual(List<PlugProfile> profiles) {
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

  /** How a length taken by {@code from} becomes one taken by {@code to} on plugs of the profile; empty where the profile cannot tell. */
  static Optional<Bridge> bridge(
      PlugProfile profile, Optional<GaugeBall> from, Optional<GaugeBall> to) {
    if (from.equals(to)) {
      return Optional.of(NONE);
    }
    Optional<PartSpread> collar = profile.spread(Dimension.COLLAR_DIAMETER);
    Optional<PartSpread> groove = profile.spread(Dimension.GROOVE_DIAMETER);
    if (collar.isEmpty() || groove.isEmpty() || !goesIn(profile, from) || !goesIn(profile, to)) {
      return Optional.empty();
    }
    double h =
        0.5 * (collar.get().nominal().millimetres() - groove.get().nominal().millimetres());
    double u = 0.5
        * Math.hypot(
            collar.get().standardDeviation().millimetres(),
            groove.get().standardDeviation().millimetres());
    return Optional.of(
        new Bridge(offset(to, h) - offset(from, h), Math.abs(slope(to, h) - slope(from, h)) * u));
  }

  private static boolean goesIn(PlugProfile profile, Optional<GaugeBall> ball) {
    return ball.isEmpty()
        || profile
            .spread(Dimension.GROOVE_WIDTH)
            .map(width -> ball.get().diameter().compareTo(width.nominal()) < 0)
            .orElse(true);
  }

  /** L_b − L_g = x − d/2. */
  private static double offset(Optional<GaugeBall> ball, double h) {
    if (ball.isEmpty()) {
      return 0.0;
    }
    double d = ball.get().diameter().millimetres();
    return GaugeBall.fromWall(d, h) - 0.5 * d;
  }

  private static double slope(Optional<GaugeBall> ball, double h) {
    return ball.isEmpty() ? 0.0 : GaugeBall.slope(ball.get().diameter().millimetres(), h);
  }

  /** A reading as the profile states the dimension, which it knows; empty if the two cannot be compared. */
  static Optional<PlugReading> asStatedBy(PlugProfile profile, PlugReading reading) {
    if (reading.dimension() != Dimension.TIP_LENGTH
        || reading.ball().equals(profile.tipLengthBall())) {
      return Optional.of(reading);
    }
    return bridge(profile, reading.ball(), profile.tipLengthBall())
        .map(bridge -> new PlugReading(
            reading.dimension(),
            new Reading(
                Length.ofMillimetres(reading.length().millimetres() + bridge.shift()),
                Length.ofMillimetres(
                    Math.hypot(reading.standardUncertainty().millimetres(), bridge.u())),
                reading.caliper()),
            profile.tipLengthBall()));
  }

  /** What a reading to come should be on plugs of the profile, a tip length by {@code ball}; null if the profile cannot tell. */
  static @Nullable ReadingDensity expected(
      PlugProfile profile, Dimension dimension, Optional<GaugeBall> ball, double u, double wear) {
    return expected(profile, dimension, ball, NO_ERROR, u, wear);
  }

  /** The same by a caliper of whose error a part is known, with {@code u} what else the reading may be off. */
  static @Nullable ReadingDensity expected(
      PlugProfile profile,
      Dimension dimension,
      Optional<GaugeBall> ball,
      SharedError.Left error,
      double u,
      double wear) {
    Optional<PartSpread> spread = profile.spread(dimension);
    if (spread.isEmpty()) {
      return null;
    }
    Optional<Bridge> bridge = dimension == Dimension.TIP_LENGTH
        ? bridge(profile, profile.tipLengthBall(), ball)
        : Optional.of(NONE);
    return bridge
        .map(by -> CaliperGroup.density(
            shifted(spread.get(), by.shift() + error.mean()),
            Math.sqrt(u * u + by.u() * by.u() + error.variance()),
            wear,
            dimension))
        .orElse(null);
  }

  /** The spread of a dimension, a tip length as {@code ball} would give it; empty if the profile cannot tell. */
  static Optional<PartSpread> spread(
      PlugProfile profile, Dimension dimension, Optional<GaugeBall> ball) {
    return dimension == Dimension.TIP_LENGTH
        ? profile
            .spread(dimension)
            .flatMap(spread -> bridge(profile, profile.tipLengthBall(), ball)
                .map(by -> shifted(spread, by.shift())))
        : profile.spread(dimension);
  }

  private static PartSpread shifted(PartSpread spread, double mm) {
    if (mm == 0.0) {
      return spread;
    }
    if (spread instanceof PartSpread.Limits limits) {
      return PartSpread.limits(moved(limits.low(), mm), moved(limits.high(), mm));
    }
    return spread instanceof PartSpread.Sample sample
        ? new PartSpread.Sample(sample.pieces(), moved(sample.mean(), mm), sample.sampleDeviation())
        : PartSpread.normal(moved(spread.nominal(), mm), spread.standardDeviation());
  }

  private static Length moved(Length length, double mm) {
    return Length.ofMillimetres(length.millimetres() + mm);
  }
}
