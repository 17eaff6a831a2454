package org.airfit.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * How long it takes to tell a plug among twenty profiles by five dimensions, and to say what to measure next. All
 * readings of a plug are by
 * one caliper and share its error. Every second profile differs from the one before in the groove width only; one
 * plug in ten is of none.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
@State(Scope.Thread)
public class PlugBenchmark {

  private static final int N = 256;
  private static final double PART_MM = 0.03;
  private static final double TWINS_APART_MM = 0.5;
  private static final Instrument CALIPER = Instrument.DIGITAL_CALIPER;
  private static final List<Dimension> READ = List.of(
      Dimension.TIP_DIAMETER,
      Dimension.COLLAR_DIAMETER,
      Dimension.TIP_LENGTH,
      Dimension.GROOVE_WIDTH,
      Dimension.GROOVE_DIAMETER);

  /** How the set says that its parts vary: by a deviation, by limits, or by five measured pieces. */
  public enum Kind {
    /** Nominal and standard deviation. */
    DEVIATION,
    /** Limits. */
    LIMITS,
    /** The shop's own pieces. */
    PIECES
  }

  /** The kind of the set. */
  @Param
  public Kind kind = Kind.DEVIATION;

  /** How many profiles the set has. */
  @Param({"5", "20", "80"})
  public int profileCount = 20;

  /** The most that wear may have taken [mm]. */
  @Param({"0.0", "0.1"})
  public double wearMm;

  private final List<List<Length>> sizes = new ArrayList<>();
  private final List<List<PlugReading>> readings = new ArrayList<>();
  private Identifier identifier = Identifier.of(ReferenceSet.of("none yet", profiles()));

  /** Draws set and plugs, and refuses to time wrong answers. */
  @Setup
  public void fill() {
    List<PlugProfile> profiles = profiles();
    identifier = Identifier.of(ReferenceSet.of("twenty", profiles))
        .withWearAllowance(Length.ofMillimetres(wearMm));
    SplittableRandom random = new SplittableRandom(2);
    int right = 0;
    int known = 0;
    for (int i = 0; i < N; i++) {
      PlugProfile truth = profiles.get(random.nextInt(profileCount));
      boolean unknown = random.nextInt(10) == 0;
      double off = CALIPER.commonUncertainty().millimetres() * random.nextGaussian();
      List<Length> read = new ArrayList<>();
      for (Dimension dimension : READ) {
        double mm = truth.spread(dimension).orElseThrow().nominal().millimetres();
        read.add(Length.ofMillimetres(
            unknown
                ? mm + random.nextDouble(-2.0, 2.0)
                : mm + PART_MM * random.nextGaussian() + off));
      }
      sizes.add(read);
      readings.add(readings(read));
      boolean told = identifier.identify(readings.get(i)).best().profile().equals(truth);
      known += unknown ? 0 : 1;
      right += !unknown && told ? 1 : 0;
    }
    if (right < 0.95 * known) {
      throw new IllegalStateException(right + " of " + known + " plugs told right");
    }
  }

  private List<PlugProfile> profiles() {
    SplittableRandom random = new SplittableRandom(1);
    List<PlugProfile> profiles = new ArrayList<>();
    double[] nominal = new double[READ.size()];
    for (int k = 0; k < profileCount; k++) {
      if (k % 2 == 0) {
        double scale = random.nextDouble(0.8, 1.6);
        double[] middle = {10.0, 13.0, 18.0, 4.0, 9.0};
        for (int j = 0; j < nominal.length; j++) {
          nominal[j] = scale * (middle[j] + random.nextDouble(-0.4, 0.4));
        }
      } else {
        nominal[READ.indexOf(Dimension.GROOVE_WIDTH)] += TWINS_APART_MM;
      }
      PlugProfile.Builder builder = PlugProfile.builder("profile-" + k)
          .from(Provenance.standardEntered(), Source.demo("drawn by lot"));
      for (int j = 0; j < nominal.length; j++) {
        builder.dimension(READ.get(j), spread(nominal[j]));
      }
      profiles.add(builder.build());
    }
    return profiles;
  }

  private PartSpread spread(double nominal) {
    Length middle = Length.ofMillimetres(nominal);
    Length part = Length.ofMillimetres(PART_MM);
    return switch (kind) {
      case DEVIATION -> PartSpread.normal(middle, part);
      case LIMITS -> PartSpread.limits(middle.minus(part.times(2.0)), middle.plus(part.times(2.0)));
      case PIECES -> new PartSpread.Sample(5, middle, part);
    };
  }

  private static List<PlugReading> readings(List<Length> read) {
    List<PlugReading> taken = new ArrayList<>();
    for (int j = 0; j < read.size(); j++) {
      taken.add(PlugReading.of(READ.get(j), CALIPER, read.get(j)));
    }
    return taken;
  }

  /**
   * The verdict and the chance of the likeliest profile, readings at hand.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void verdictAndChance(Blackhole sink) {
    for (List<PlugReading> taken : readings) {
      Identification answer = identifier.identify(taken);
      sink.consume(answer.verdict());
      sink.consume(answer.best().probability());
    }
  }

  /**
   * The same from what the caliper showed.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void verdictAndChanceFromSizes(Blackhole sink) {
    for (List<Length> read : sizes) {
      Identification answer = identifier.identify(readings(read));
      sink.consume(answer.verdict());
      sink.consume(answer.best().probability());
    }
  }

  /**
   * The whole ranking, every residual with it.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void wholeRanking(Blackhole sink) {
    for (List<PlugReading> taken : readings) {
      sink.consume(identifier.identify(taken).candidates());
    }
  }

  /**
   * What to measure next once two diameters are read.
   *
   * @param sink takes the answers
   */
  @Benchmark
  @OperationsPerInvocation(N)
  public void nextReadingAfterTwo(Blackhole sink) {
    for (List<PlugReading> taken : readings) {
      sink.consume(identifier.identify(taken.subList(0, 2)).nextReadings());
    }
  }

  /**
   * What to measure first, every profile still possible.
   *
   * @param sink takes the answer
   */
  @Benchmark
  public void firstReading(Blackhole sink) {
    sink.consume(identifier.identify(List.of()).nextReadings());
  }
}
