package org.airfit.plug;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.airfit.internal.ReadingDensity;
import org.airfit.internal.SharedError;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;

/**
 * The readings of one plug by one caliper, compared with one profile: brings readings and spreads to the plain
 * millimetres of {@link ReadingDensity} and {@link SharedError}.
 */
record CaliperGroup(Instrument caliper, SharedError error) {

  private static final List<Instrument> CALIPERS = List.of(Instrument.values());

  /**
   * What a reading with the standard uncertainty {@code u} [mm] should be on plugs of that spread, worn by up to
   * {@code wear} [mm].
   */
  static ReadingDensity density(PartSpread spread, double u, double wear, Dimension dimension) {
    int sign = dimension.wear().sign();
    if (spread instanceof PartSpread.Limits limits) {
      return ReadingDensity.within(
          limits.low().millimetres(), limits.high().millimetres(), u, wear, sign);
    }
    double nominal = spread.nominal().millimetres();
    double part = spread.standardDeviation().millimetres();
    return spread instanceof PartSpread.Sample sample
        ? ReadingDensity.student(nominal, part, sample.degreesOfFreedom(), u, wear, sign)
        : ReadingDensity.normal(nominal, part, u, wear, sign);
  }

  /** The readings by calipers that share their error with at least one other, caliper by caliper. */
  static List<CaliperGroup> of(List<PlugReading> readings, List<PartSpread> spreads, double wear) {
    List<CaliperGroup> groups = new ArrayList<>();
    for (Instrument caliper : CALIPERS) {
      int count = 0;
      for (PlugReading reading : readings) {
        count += isBy(caliper, reading) ? 1 : 0;
      }
      if (count > 1) {
        groups.add(of(caliper, readings, spreads, wear));
      }
    }
    return groups;
  }

  /** The readings by one caliper, any number of them. */
  static CaliperGroup of(
      Instrument caliper, List<PlugReading> readings, List<PartSpread> spreads, double wear) {
    double c = caliper.commonUncertainty().millimetres();
    double[] y = new double[readings.size()];
    ReadingDensity[] own = new ReadingDensity[y.length];
    int n = 0;
    for (int j = 0; j < y.length; j++) {
      PlugReading reading = readings.get(j);
      if (isBy(caliper, reading)) {
        double u = SharedError.ownUncertainty(reading.standardUncertainty().millimetres(), c);
        y[n] = reading.length().millimetres();
        own[n++] = density(spreads.get(j), u, wear, reading.dimension());
      }
    }
    return new CaliperGroup(caliper, SharedError.of(c, Arrays.copyOf(y, n), Arrays.copyOf(own, n)));
  }

  /** Whether a reading is by this caliper. */
  static boolean isBy(Instrument caliper, PlugReading reading) {
    return reading.caliper().isPresent() && reading.caliper().get() == caliper;
  }

  /** Whether a reading shares its error with another of these. */
  static boolean shares(List<CaliperGroup> groups, PlugReading reading) {
    for (CaliperGroup group : groups) {
      if (isBy(group.caliper, reading)) {
        return true;
      }
    }
    return false;
  }
}
