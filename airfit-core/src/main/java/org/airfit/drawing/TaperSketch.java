package org.airfit.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.airfit.quantity.Length;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Gender;
import org.airfit.thread.NptThread;
import org.airfit.thread.PipeThread;
import org.airfit.thread.ThreadSection;

/**
 * A taper thread to be drawn: where its planes, lengths and outline lie, in mm of the thread, from the small end of the
 * male thread on. Only this differs between the families.
 *
 * @param small the pitch diameter at the small end
 * @param turn the pitch
 * @param useful where the roots begin to run out
 * @param end where the thread has run out
 * @param outside the greatest crest diameter
 * @param mouth where the mouth of the female thread stands when hand tight
 * @param depth how far the female thread is drawn beyond the small end of the male one
 */
record TaperSketch(
    PipeThread thread,
    double small,
    double turn,
    double useful,
    double end,
    double outside,
    double mouth,
    double depth,
    String outsideName,
    List<Plane> planes,
    List<Span> spans,
    List<Span> femaleSpans) {

  /** A plane square to the axis where the standard names a diameter. */
  record Plane(String name, double at, double pitchDiameter, boolean male, int row) {}

  /** A length the standard names. */
  record Span(String symbol, String words, double from, double to, int row) {

    /** The symbol with the words that say what it is. */
    String name() {
      return symbol + " " + words;
    }
  }

  static TaperSketch of(NptThread thread) {
    double l1 = thread.handTightLength().millimetres();
    double l2 = thread.effectiveLength().millimetres();
    double l3 = thread.wrenchLength().millimetres();
    double l4 = thread.overallLength().millimetres();
    double l5 = thread.fullCrestLength().millimetres();
    return new TaperSketch(
        thread,
        thread.pitchDiameterAtSmallEnd().millimetres(),
        thread.pitch().millimetres(),
        l2,
        l4,
        thread.pipeDiameter().millimetres(),
        l1,
        l3,
        "pipe D",
        List.of(
            new Plane("E_3", -l3, thread.pitchDiameterInside().millimetres(), false, 0),
            new Plane("E_0", 0.0, thread.pitchDiameterAtSmallEnd().millimetres(), true, 1),
            new Plane("E_1", l1, thread.pitchDiameterAtHandTight().millimetres(), true, 0),
            new Plane("E_5", l5, thread.pitchDiameterAtFullCrests().millimetres(), true, 1),
            new Plane("E_2", l2, thread.pitchDiameterAtEffectiveEnd().millimetres(), true, 0)),
        List.of(
            new Span("L_1", "hand tight", 0.0, l1, 0),
            new Span("L_5", "full crests", 0.0, l5, 1),
            new Span("L_2", "effective", 0.0, l2, 2),
            new Span("V", "vanish", l2, l4, 2),
            new Span("L_4", "whole", 0.0, l4, 3)),
        List.of(new Span("L_3", "wrench", -l3, 0.0, 0), new Span("L_1", "hand tight", 0.0, l1, 0)));
  }

  static TaperSketch of(BsptThread thread) {
    double a = thread.gaugeLength().millimetres();
    double useful = thread.usefulLength().millimetres();
    double t = thread.leastFemaleUsefulLength().millimetres();
    double turn = 25.4 / thread.threadsPerInch();
    Length end = Length.ofMetres(0.0);
    ThreadSection large = thread.section(Gender.MALE, thread.usefulLength());
    return new TaperSketch(
        thread,
        thread.section(Gender.MALE, end).pitch().millimetres(),
        turn,
        useful,
        useful + 2.0 * turn,
        large.major().millimetres(),
        a,
        Math.max(t - a, turn),
        "large end",
        List.of(
            new Plane(
                "small end", 0.0, thread.section(Gender.MALE, end).pitch().millimetres(), true, 1),
            new Plane("gauge plane d_2", a, thread.atGaugePlane().pitch().millimetres(), true, 0),
            new Plane("useful end", useful, large.pitch().millimetres(), true, 1)),
        List.of(
            new Span("a", "gauge length", 0.0, a, 0),
            new Span("f", "fitting allowance", a, useful, 0),
            new Span("a + f", "useful thread", 0.0, useful, 1)),
        List.of(new Span("t", "useful, at least", a - t, a, 0)));
  }

  /** Where along the axis the outline bends, from {@code from} to {@code to}. */
  List<Double> bends(double from, double to) {
    List<Double> at = new ArrayList<>();
    at.add(from);
    double p = turn;
    List<Double> phases = ToothKernels.phases(thread.family().form());
    int first = (int) Math.floor(from / p) - 1;
    int last = (int) Math.ceil(to / p) + 1;
    for (int turn = first; turn <= last; turn++) {
      for (double phase : phases) {
        double here = (turn + phase) * p;
        if (here > from && here < to) {
          at.add(here);
        }
      }
    }
    at.add(to);
    return at;
  }

  /** The bends of the male outline, also where a flank runs into the pipe above or the vanishing root below. */
  List<Double> maleBends(double from, double to) {
    List<Double> at = new ArrayList<>();
    double before = from;
    for (double here : bends(from, to)) {
      crossing(at, before, here, along -> pitchRadius(along) + tooth(along) - 0.5 * outside);
      crossing(at, before, here, along -> pitchRadius(along) + tooth(along) - root(along));
      at.add(here);
      before = here;
    }
    at.sort(null);
    return at;
  }

  /** Adds where a difference changes its sign between two bends, along the straight line between them. */
  private static void crossing(
      List<Double> at, double from, double to, DoubleUnaryOperator difference) {
    double one = difference.applyAsDouble(from);
    double other = difference.applyAsDouble(to);
    if (one * other < 0.0) {
      at.add(from + (to - from) * one / (one - other));
    }
  }

  private double tooth(double along) {
    double p = turn;
    return p * ToothKernels.offset(thread.family().form(), along / p - Math.floor(along / p));
  }

  double maleRadius(double along) {
    double pitch = pitchRadius(along);
    double half = 0.5 * thread.height().millimetres();
    double crest = Math.min(pitch + half, 0.5 * outside);
    return Math.max(Math.min(crest, pitch + tooth(along)), Math.min(root(along), crest));
  }

  /** The floor of the male thread: behind the useful length it climbs to the pipe. */
  private double root(double along) {
    double half = 0.5 * thread.height().millimetres();
    double atUseful = pitchRadius(useful) - half;
    double runOut = Math.max(0.0, along - useful) / (end - useful);
    return runOut == 0.0
        ? pitchRadius(along) - half
        : atUseful + runOut * (0.5 * outside - atUseful);
  }

  double femaleRadius(double along) {
    return pitchRadius(along) + tooth(along);
  }

  double pitchRadius(double along) {
    return 0.5 * small + ToothKernels.TAN_CONE * along;
  }
}
