package org.airfit.thread;

import java.util.Random;
import org.airfit.quantity.Length;
import org.airfit.thread.ThreadPieces.Kind;
import org.airfit.thread.ThreadPieces.Piece;

/**
 * Somebody with a caliper and pitch gauges, who measures the pieces of {@link ThreadPieces}: the jaws rest on the
 * highest crest under them, the caliper rounds to its step, sets of leaves are not complete, and mistakes are made. None
 * of it is the model that the identification assumes.
 */
final class ThreadWorkbench {

  /** Leaves of a 55° set and of a 60° set per inch, as they are sold; from memory. */
  private static final double[][] INCH_SETS = {
    {4, 4.5, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 18, 19, 20, 22, 24, 25, 26, 28, 30, 32, 36, 40},
    {4, 4.5, 5, 5.5, 6, 7, 8, 9, 10, 11, 11.5, 12, 13, 14, 16, 18, 20, 22, 24, 27, 28, 32, 36, 40}
  };

  private static final double[] METRIC_SET = {
    0.4, 0.5, 0.6, 0.7, 0.75, 0.8, 0.9, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4
  };

  private final Random random;
  private final double mistakes;
  private double bias;
  private double step;

  /**
   * A person.
   *
   * @param random chance
   * @param mistakes the share of leaves misread, of counts that are wrong and of diameters given the wrong way round
   */
  ThreadWorkbench(Random random, double mistakes) {
    this.random = random;
    this.mistakes = mistakes;
  }

  private double even(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  private double shown(double value) {
    double read = value + bias + 0.012 * random.nextGaussian();
    return Math.rint(read / step) * step;
  }

  /** The diameter where jaws of {@code width} rest, their outer edge {@code depth} behind the end. */
  private double rests(Piece piece, double depth, double width, double phase) {
    double pitch = piece.kind().pitch();
    double best = Double.NaN;
    for (double at = phase; at <= depth + width || Double.isNaN(best); at += pitch) {
      if (at >= depth) {
        double crest = piece.crest(at);
        boolean higher = piece.kind().gender() == Gender.MALE ? crest > best : crest < best;
        best = Double.isNaN(best) || higher ? crest : best;
      }
    }
    // the blades that go into a bore cut a chord
    return piece.kind().gender() == Gender.MALE ? best : best - even(0.0, 0.03);
  }

  private ThreadReadings diameters(Piece piece, boolean both) {
    Kind kind = piece.kind();
    bias = even(-0.02, 0.02);
    step = random.nextInt(4) == 0 ? 0.02 : 0.01;
    double phase = even(0.1, 0.9) * kind.pitch();
    double first = shown(rests(piece, 0.0, even(0.3, 1.5), phase));
    double deepest = kind.gender() == Gender.MALE
        ? piece.length() - even(0.0, 1.5) * kind.pitch()
        : Math.min(piece.length(), even(4.0, 12.0)) - even(0.0, 1.0) * kind.pitch();
    double last = shown(rests(piece, Math.max(kind.pitch(), deepest), 0.3, phase));
    if (both && random.nextDouble() < 0.5 * mistakes) {
      double kept = first;
      first = last;
      last = kept;
    }
    Gender said = random.nextDouble() < 0.25 * mistakes ? kind.gender().other() : kind.gender();
    Length read = Length.ofMillimetres(first);
    ThreadReadings readings =
        said == Gender.MALE ? ThreadReadings.ofMale(read) : ThreadReadings.ofFemale(read);
    return both ? readings.withLastCrest(Length.ofMillimetres(last)) : readings;
  }

  /** First and last crest. */
  ThreadReadings twoDiameters(Piece piece) {
    return diameters(piece, true);
  }

  /** The first crest. */
  ThreadReadings oneDiameter(Piece piece) {
    return diameters(piece, false);
  }

  /** The length over so many pitches, from crest to crest. */
  ThreadReadings count(ThreadReadings readings, Piece piece, int pitches) {
    double lead = piece.kind().pitch() * (1.0 + even(-0.0007, 0.0007));
    // each jaw stands on a crest within a tenth of a millimetre, most often near its middle
    double placed = even(-0.05, 0.05) + even(-0.05, 0.05);
    double over = Math.rint((pitches * lead + placed) / step) * step;
    double slip = random.nextDouble();
    int said = slip < 0.7 * mistakes ? pitches + 1 : slip < mistakes ? pitches - 1 : pitches;
    return readings.withPitches(Length.ofMillimetres(over), said);
  }

  /** The leaf that seems to fit; no leaf where none does. */
  ThreadReadings leaf(ThreadReadings readings, Piece piece) {
    return leaf(readings, piece, mistakes);
  }

  /** A leaf that does not fit, most often the one next to that which does. */
  ThreadReadings wrongLeaf(ThreadReadings readings, Piece piece) {
    return leaf(readings, piece, 1.0);
  }

  private ThreadReadings leaf(ThreadReadings readings, Piece piece, double misread) {
    double pitch = piece.kind().pitch();
    boolean metric = Math.abs(METRIC_SET[nearest(METRIC_SET, pitch, false)] / pitch - 1.0) < 0.005;
    double[] set = metric ? METRIC_SET : INCH_SETS[random.nextInt(2)];
    int fits = nearest(set, pitch, !metric);
    double off = (metric ? set[fits] : 25.4 / set[fits]) / pitch - 1.0;
    if (Math.abs(off) > 0.03) {
      return readings;
    }
    if (random.nextDouble() < misread) {
      int far = 1;
      while (random.nextDouble() < 0.25) {
        far++;
      }
      fits = Math.max(0, Math.min(set.length - 1, fits + (random.nextBoolean() ? far : -far)));
    }
    return metric
        ? readings.withMetricLeaf(Length.ofMillimetres(set[fits]))
        : readings.withThreadsPerInch(set[fits]);
  }

  private static int nearest(double[] set, double pitch, boolean perInch) {
    int nearest = 0;
    for (int i = 0; i < set.length; i++) {
      if (off(set[i], pitch, perInch) < off(set[nearest], pitch, perInch)) {
        nearest = i;
      }
    }
    return nearest;
  }

  private static double off(double mark, double pitch, boolean perInch) {
    return Math.abs(Math.log((perInch ? 25.4 / mark : mark) / pitch));
  }

  /** The flanks against the light, to one degree or so. */
  ThreadReadings flanks(ThreadReadings readings, Piece piece) {
    double read = Math.rint(2.0 * (piece.kind().flanks() + even(-1.7, 1.7))) / 2.0;
    return readings.withFlankAngle(read, 1.0);
  }
}
