package org.airfit.plant;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;

/**
 * How the readings of one ultrasonic instrument go with flow, as its user found or was told: a table of readings, with
 * the least and the most that leaks of this reading lost.
 *
 * <p>The library has no such table. What a leak sounds like depends on its shape, its pressure, the distance and the
 * angle, and no public relation with its scatter could be read. Between two readings of the table a leak loses at
 * least the least of the lower and at most the most of the higher one; outside of the table nothing is told.
 *
 * @param instrument which instrument, held how, such as "detector at 15 in, 40 kHz"
 * @param pressure the pressures at the leak for which the table holds
 * @param points the table, by rising reading; both flows of a point are at least those of the point before
 */
public record UltrasonicRelation(
    String instrument, Range<GaugePressure> pressure, List<Point> points) {

  /**
   * One reading of the table.
   *
   * @param decibels what the instrument shows [dB]
   * @param flow what leaks of this reading lose
   */
  public record Point(double decibels, Range<FreeAirFlow> flow) {

    /**
     * Checks the components.
     *
     * @param decibels what the instrument shows [dB]
     * @param flow what leaks of this reading lose
     * @throws IllegalArgumentException if {@code decibels} is not finite
     */
    public Point {
      requireReading(decibels);
      Objects.requireNonNull(flow, "flow");
    }
  }

  /**
   * Checks the components and copies the table.
   *
   * @param instrument which instrument, held how, such as "detector at 15 in, 40 kHz"
   * @param pressure the pressures at the leak for which the table holds
   * @param points the table, by rising reading; both flows of a point are at least those of the point before
   * @throws IllegalArgumentException if there are fewer than two points, or the readings or the flows do not rise
   */
  public UltrasonicRelation {
    Objects.requireNonNull(instrument, "instrument");
    Objects.requireNonNull(pressure, "pressure");
    points = List.copyOf(Objects.requireNonNull(points, "points"));
    if (points.size() < 2) {
      throw new IllegalArgumentException("points of the relation of " + instrument
          + " must be at least two, were " + points.size());
    }
    for (int i = 1; i < points.size(); i++) {
      Point before = points.get(i - 1);
      Point point = points.get(i);
      boolean rises = point.decibels > before.decibels
          && point.flow.least().compareTo(before.flow.least()) >= 0
          && point.flow.most().compareTo(before.flow.most()) >= 0;
      if (!rises) {
        throw new IllegalArgumentException("reading and flow of the relation of " + instrument
            + " must rise from point to point, was " + Digits.significant(point.decibels, 12)
            + " dB after "
            + Digits.significant(before.decibels, 12) + " dB with "
            + point.flow.least().shown() + " after "
            + before.flow.least().shown());
      }
    }
  }

  /** Refuses what no instrument shows. */
  static void requireReading(double decibels) {
    if (!Double.isFinite(decibels)) {
      throw new IllegalArgumentException(
          "reading in decibels must be finite, was " + Digits.told(decibels));
    }
  }

  /**
   * Finds what a leak loses.
   *
   * @param decibels the reading [dB], finite
   * @return the least and the most; empty outside of the table
   * @throws IllegalArgumentException if {@code decibels} is not finite
   */
  public Optional<Range<FreeAirFlow>> flow(double decibels) {
    requireReading(decibels);
    for (int i = 0; i < points.size(); i++) {
      Point point = points.get(i);
      if (point.decibels == decibels) {
        return Optional.of(point.flow);
      }
      if (i > 0 && points.get(i - 1).decibels < decibels && decibels < point.decibels) {
        return Optional.of(new Range<>(points.get(i - 1).flow.least(), point.flow.most()));
      }
    }
    return Optional.empty();
  }

  /** The readings that it has, such as "20 to 60 dB". */
  String span() {
    return Digits.significant(points.get(0).decibels, 12) + " to "
        + Digits.significant(points.get(points.size() - 1).decibels, 12) + " dB";
  }
}
