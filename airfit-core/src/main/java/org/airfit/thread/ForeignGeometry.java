package org.airfit.thread;

import java.util.Optional;
import org.airfit.quantity.Length;
import org.airfit.source.Source;

/**
 * The geometry of one foreign thread, outside and inside; lengths in metres.
 *
 * @param name such as "M14x1.5"
 * @param standard the standard
 * @param use what it is used for
 * @param isPort whether flares, ports or tube ends have it, so that it is often met beside pipe threads
 * @param pitch P
 * @param major d, the basic major diameter
 * @param maleAllowance es, by how much the male thread is kept below basic
 * @param maleTolerance Td, of the male crests
 * @param minor d1, the least minor diameter of the female thread
 * @param femaleTolerance TD1, of the female crests
 * @param pitchBands limits of the pitch diameters
 * @param source where it is from
 */
record ForeignGeometry(
    String name,
    ForeignStandard standard,
    Optional<String> use,
    boolean isPort,
    double pitch,
    double major,
    double maleAllowance,
    double maleTolerance,
    double minor,
    double femaleTolerance,
    Optional<PitchBands> pitchBands,
    Source source) {

  /**
   * Limits of the pitch diameters [m].
   *
   * @param maleLeast least of the male thread
   * @param maleMost most of the male thread
   * @param femaleLeast least of the female thread
   * @param femaleMost most of the female thread
   */
  record PitchBands(double maleLeast, double maleMost, double femaleLeast, double femaleMost) {}

  private static final double INCH = 0.0254;
  private static final double MM = 1.0e-3;
  private static final double UM = 1.0e-6;

  private static final double PITCH_DIAMETER_60 = 0.649519;
  private static final double MINOR_60 = 1.082532;

  /** A metric thread of {@code diameter} and {@code pitch} [mm]. */
  static ForeignGeometry metric(
      String name, double diameter, double pitch, boolean isPort, Optional<String> use) {
    double es = MetricLimits.allowance(pitch) * UM;
    double d2 = (diameter - PITCH_DIAMETER_60 * pitch) * MM;
    return new ForeignGeometry(
        name,
        ForeignStandard.METRIC,
        use,
        isPort,
        pitch * MM,
        diameter * MM,
        es,
        MetricLimits.maleMajor(pitch) * UM,
        (diameter - MINOR_60 * pitch) * MM,
        MetricLimits.femaleMinor(pitch) * UM,
        Optional.of(new PitchBands(
            d2 - es - MetricLimits.malePitch(diameter, pitch) * UM,
            d2 - es,
            d2,
            d2 + MetricLimits.femalePitch(diameter, pitch) * UM)),
        ForeignStandard.METRIC.source());
  }

  /**
   * A unified thread of {@code diameter} [in]; {@code fixedSeries} is whether its length of engagement is the diameter,
   * as of the coarse and fine series.
   */
  static ForeignGeometry unified(
      String name, double diameter, double threadsPerInch, boolean fixedSeries, String use) {
    double p = 1.0 / threadsPerInch;
    double engagement = fixedSeries ? diameter : 9.0 * p;
    double es = UnifiedLimits.allowance(diameter, p, engagement);
    double d2 = UnifiedLimits.toTenThousandth(diameter - PITCH_DIAMETER_60 * p);
    double d1 = diameter - MINOR_60 * p;
    double minor = UnifiedLimits.toThousandth(d1);
    double minorMost = UnifiedLimits.toThousandth(d1 + UnifiedLimits.femaleMinor(p));
    return new ForeignGeometry(
        name,
        ForeignStandard.UNIFIED,
        Optional.of(use),
        true,
        p * INCH,
        diameter * INCH,
        es * INCH,
        UnifiedLimits.maleMajor(p) * INCH,
        minor * INCH,
        (minorMost - minor) * INCH,
        Optional.of(new PitchBands(
            (d2 - es - UnifiedLimits.malePitch(diameter, p, engagement)) * INCH,
            (d2 - es) * INCH,
            d2 * INCH,
            (d2 + UnifiedLimits.femalePitch(diameter, p, engagement)) * INCH)),
        ForeignStandard.UNIFIED.source());
  }

  /** A G thread, class A of its male pitch diameter; all but {@code threadsPerInch} in mm. */
  static ForeignGeometry parallelPipe(
      String name, double major, double threadsPerInch, double td2, double td1, Source source) {
    double p = Math.rint(25.4e3 / threadsPerInch) / 1.0e3;
    double h = Math.rint(ThreadForm.ROUND_55.heightOverPitch() * p * 1.0e3) / 1.0e3;
    return new ForeignGeometry(
        name,
        ForeignStandard.PARALLEL_PIPE,
        Optional.empty(),
        false,
        p * MM,
        major * MM,
        0.0,
        2.0 * td2 * MM,
        (major - 2.0 * h) * MM,
        td1 * MM,
        Optional.of(new PitchBands(
            (major - h - td2) * MM, (major - h) * MM, (major - h) * MM, (major - h + td2) * MM)),
        source);
  }

  /** A hose thread; {@code allowance} is by how much the female thread is wider. All in inches. */
  static ForeignGeometry hose(
      String name,
      String use,
      double major,
      double threadsPerInch,
      double tolerance,
      double allowance,
      Source source) {
    double p = 1.0 / threadsPerInch;
    return new ForeignGeometry(
        name,
        ForeignStandard.HOSE,
        Optional.of(use),
        true,
        p * INCH,
        major * INCH,
        0.0,
        tolerance * INCH,
        (major - 2.0 * PITCH_DIAMETER_60 * p + allowance) * INCH,
        tolerance * INCH,
        Optional.empty(),
        source);
  }

  Limits crest(Gender gender) {
    return gender == Gender.MALE
        ? limits(major - maleAllowance - maleTolerance, major - maleAllowance)
        : limits(minor, minor + femaleTolerance);
  }

  Optional<Limits> pitchDiameter(Gender gender) {
    return pitchBands.map(bands -> gender == Gender.MALE
        ? limits(bands.maleLeast, bands.maleMost)
        : limits(bands.femaleLeast, bands.femaleMost));
  }

  private static Limits limits(double least, double most) {
    return new Limits(Length.ofMetres(least), Length.ofMetres(most));
  }
}
