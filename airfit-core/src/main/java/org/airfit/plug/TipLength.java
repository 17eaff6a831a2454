package org.airfit.plug;

import java.util.Map;
import java.util.Optional;
import org.airfit.internal.ReadingDensity;
import org.airfit.internal.SharedError;
import org.airfit.measure.PartSpread;
import org.airfit.measure.Reading;
import org.airfit.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * The sizes of one profile, its tip length by the edge or by any ball, see {@link GaugeBall}. Converts with the nominal
 * diameters of the profile; what they may be off goes into the uncertainty. Every other dimension is taken as it
 * stands.
 *
 * @param sizes what the profile knows
 * @param statedBy the ball its tip length is stated by; empty for the edge
 */
record TipLength(Map<Dimension, PartSpread> sizes, Optional<GaugeBall> statedBy) {

  /** What to add to a length by one way of taking it to get the other [mm], and how uncertain that is [mm]. */
  record Bridge(double shift, double u) {}

  private static final Bridge NONE = new Bridge(0.0, 0.0);
  private static final SharedError.Left NO_ERROR = new SharedError.Left(0.0, 0.0);

  private Optional<PartSpread> size(Dimension dimension) {
    return Optional.ofNullable(sizes.get(dimension));
  }

  /**
   * How a length taken by {@code from} becomes one taken by {@code to} on plugs of the profile; empty where the profile
   * cannot tell.
   */
  Optional<Bridge> bridge(Optional<GaugeBall> from, Optional<GaugeBall> to) {
    if (from.equals(to)) {
      return Optional.of(NONE);
    }
    Optional<PartSpread> collar = size(Dimension.COLLAR_DIAMETER);
    Optional<PartSpread> groove = size(Dimension.GROOVE_DIAMETER);
    if (collar.isEmpty() || groove.isEmpty() || !goesIn(from) || !goesIn(to)) {
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

  private boolean goesIn(Optional<GaugeBall> ball) {
    return ball.isEmpty()
        || size(Dimension.GROOVE_WIDTH)
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
  Optional<PlugReading> asStated(PlugReading reading) {
    if (reading.dimension() != Dimension.TIP_LENGTH || reading.ball().equals(statedBy)) {
      return Optional.of(reading);
    }
    return bridge(reading.ball(), statedBy)
        .map(bridge -> new PlugReading(
            reading.dimension(),
            new Reading(
                Length.ofMillimetres(reading.length().millimetres() + bridge.shift()),
                Length.ofMillimetres(
                    Math.hypot(reading.standardUncertainty().millimetres(), bridge.u())),
                reading.caliper()),
            statedBy));
  }

  /**
   * What a reading to come should be on plugs of the profile, a tip length by {@code ball}; null if the profile cannot
   * tell.
   */
  @Nullable
  ReadingDensity expected(Dimension dimension, Optional<GaugeBall> ball, double u, double wear) {
    return expected(dimension, ball, NO_ERROR, u, wear);
  }

  /** The same by a caliper of whose error a part is known, with {@code u} what else the reading may be off. */
  @Nullable
  ReadingDensity expected(
      Dimension dimension,
      Optional<GaugeBall> ball,
      SharedError.Left error,
      double u,
      double wear) {
    PartSpread spread = sizes.get(dimension);
    if (spread == null) {
      return null;
    }
    Optional<Bridge> bridge =
        dimension == Dimension.TIP_LENGTH ? bridge(statedBy, ball) : Optional.of(NONE);
    return bridge
        .map(by -> CaliperGroup.density(
            shifted(spread, by.shift() + error.mean()),
            Math.sqrt(u * u + by.u() * by.u() + error.variance()),
            wear,
            dimension))
        .orElse(null);
  }

  /** The spread of a dimension, a tip length as {@code ball} would give it; empty if the profile cannot tell. */
  Optional<PartSpread> spread(Dimension dimension, Optional<GaugeBall> ball) {
    return dimension == Dimension.TIP_LENGTH
        ? size(dimension)
            .flatMap(spread -> bridge(statedBy, ball).map(by -> shifted(spread, by.shift())))
        : size(dimension);
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
