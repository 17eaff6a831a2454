package org.airfit.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.airfit.internal.Digits;
import org.airfit.quantity.Length;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Gender;
import org.airfit.thread.NptThread;
import org.airfit.thread.PipeThread;
import org.airfit.thread.ThreadFamily;
import org.airfit.thread.ThreadForm;
import org.airfit.thread.ThreadSection;

/**
 * A taper thread and its gauge planes, drawn to scale for teaching: the male thread, the female thread lifted off it as
 * it stands when hand tight, the pitch cone, every plane with its pitch diameter, and the lengths between them.
 *
 * <pre>
 *   pitch line r(x) = E0/2 + x/32                          x behind the small end of the male thread
 *   the flanks stand alike on either side of a line square to the axis, not to the cone
 *   crests and roots are cut (60°) or rounded (55°) at h/2 from the pitch line
 * </pre>
 *
 * <p>E0, h as on {@link NptThread}, H and the two forms as on {@link ThreadForm}. Lengths, heights, the taper and the
 * angles are to scale; the parts are broken towards the axis, which the drawing says. How the thread runs out behind
 * its useful length is only hinted at. The drawing is an SVG element with its size in millimetres, at most 190 mm wide:
 * it stands by itself in a file or inside an HTML page. <b>Source:</b> of the thread drawn, see {@link
 * PipeThread#source()}.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class ThreadDrawing {

  /** The scales that a scale rule has, largest first. */
  private static final double[] SCALES = {20.0, 10.0, 5.0, 2.5, 2.0, 1.0};

  private static final double MOST_WIDTH = 190.0;
  private static final double LEAST_WIDTH = 170.0;
  private static final double LEFT = 12.0;
  private static final double SMALL_END = 42.0;
  private static final double RIGHT = 30.0;
  private static final double PLANE_LABELS = 30.0;
  private static final double FEMALE_TOP = 52.0;
  private static final double BACK = 9.0;
  private static final double PIPE = 11.0;
  private static final double LIFT = 12.0;
  private static final double ROW = 6.5;

  /** The size of letters: 11 px on a screen, 8.4 pt on paper [mm]. */
  private static final double TEXT = 2.95;

  private static final double LINE = 3.8;

  private static final String INK = "#1d2429";
  private static final String FINE = "#5d6a73";
  private static final String MALE = "#e3e8ea";
  private static final String FEMALE = "#f1ece1";
  private static final String CONE = "#a3341f";

  private final TaperSketch sketch;
  private final double scale;
  private final double width;
  private final double height;
  private final String svg;

  private ThreadDrawing(TaperSketch sketch) {
    this.sketch = sketch;
    double chosen = SCALES[SCALES.length - 1];
    for (int i = SCALES.length - 1; i >= 0; i--) {
      if (width(sketch, SCALES[i]) <= MOST_WIDTH) {
        chosen = SCALES[i];
      }
    }
    this.scale = chosen;
    this.width = Math.max(LEAST_WIDTH, width(sketch, chosen));
    double rows =
        1.0 + sketch.spans().stream().mapToInt(TaperSketch.Span::row).max().orElse(0);
    double dimensions = maleBottom() + 5.0;
    double foot = dimensions + ROW * rows + 6.0;
    this.height = foot + 27.0 + LINE * source().size();
    this.svg = draw(dimensions, foot);
  }

  /**
   * Draws an American taper thread.
   *
   * @param thread the thread
   * @return its drawing
   */
  public static ThreadDrawing of(NptThread thread) {
    Objects.requireNonNull(thread, "thread");
    return new ThreadDrawing(TaperSketch.of(thread));
  }

  /**
   * Draws a taper thread R and its Rc.
   *
   * @param thread the thread
   * @return its drawing
   */
  public static ThreadDrawing of(BsptThread thread) {
    Objects.requireNonNull(thread, "thread");
    return new ThreadDrawing(TaperSketch.of(thread));
  }

  /** {@return the thread drawn} */
  public PipeThread thread() {
    return sketch.thread();
  }

  /** {@return how many times larger than the thread the drawing is} */
  public double scale() {
    return scale;
  }

  /** {@return the width of the drawing on paper} */
  public Length width() {
    return Length.ofMillimetres(width);
  }

  /** {@return the height of the drawing on paper} */
  public Length height() {
    return Length.ofMillimetres(height);
  }

  /** {@return the drawing as one SVG element; its units are millimetres} */
  public String svg() {
    return svg;
  }

  private static double smallEnd(TaperSketch sketch, double scale) {
    return Math.max(SMALL_END, LEFT + scale * sketch.depth());
  }

  private static double width(TaperSketch sketch, double scale) {
    return smallEnd(sketch, scale) + scale * sketch.end() + PIPE + RIGHT;
  }

  /** Where a length along the axis lies on paper. */
  private double x(double along) {
    return smallEnd(sketch, scale) + scale * along;
  }

  private double femalePitchLine() {
    return FEMALE_TOP
        + BACK
        + scale * (sketch.pitchRadius(sketch.mouth()) - sketch.pitchRadius(-sketch.depth()))
        + scale * sketch.thread().height().millimetres();
  }

  /**
   * Where a radius of the female thread lies on paper; its pitch cone meets {@link #femalePitchLine()} at the inner
   * end.
   */
  private double yFemale(double radius) {
    return femalePitchLine() - scale * (radius - sketch.pitchRadius(-sketch.depth()));
  }

  private double lifted() {
    return LIFT + 2.0 * scale * sketch.thread().height().millimetres();
  }

  private double yMale(double radius) {
    return yFemale(radius) + lifted();
  }

  private double maleBottom() {
    double root = sketch.pitchRadius(0.0) - 0.5 * sketch.thread().height().millimetres();
    return yMale(root) + 13.0;
  }

  private String draw(double dimensions, double foot) {
    ThreadSvg sheet = new ThreadSvg();
    PipeThread thread = sketch.thread();
    head(sheet, thread);
    female(sheet);
    male(sheet);
    cones(sheet);
    planes(sheet);
    crests(sheet);
    onePitch(sheet);
    for (TaperSketch.Span span : sketch.femaleSpans()) {
      span(sheet, span, FEMALE_TOP - 5.5, FEMALE_TOP - 1.0, true);
    }
    for (TaperSketch.Span span : sketch.spans()) {
      span(sheet, span, dimensions + ROW * (span.row() + 1.0) - 1.0, maleBottom() + 1.0, false);
    }
    foot(sheet, thread, foot);
    String label = "Section of " + thread
        + " hand tight, with its gauge planes and lengths, at scale " + ratio();
    return sheet.svg(width, height, label, TEXT, INK);
  }

  private String ratio() {
    return Digits.plain(scale) + " : 1";
  }

  private void head(ThreadSvg sheet, PipeThread thread) {
    boolean rc = thread.family() == ThreadFamily.BSPT;
    String title =
        rc ? "R and Rc " + thread.size() : thread.size() + " " + thread.family().symbol();
    sheet.text(LEFT - 6.0, 9.0, "start", 5.0, "font-weight=\"bold\"", title);
    sheet.text(
        LEFT - 6.0,
        14.2,
        "start",
        TEXT,
        fine(),
        "Gauge planes with the pitch diameters there, hand tight, at basic size. Lengths in mm.");
    sheet.text(
        LEFT - 6.0,
        18.0,
        "start",
        TEXT,
        fine(),
        "Scale " + ratio() + ", broken towards the axis. The female thread is drawn "
            + Digits.fixed(lifted(), 0) + " mm off the male.");
    sheet.line(LEFT - 6.0, 20.8, width - 6.0, 20.8, FINE, 0.15, "");
  }

  private static String outline(List<Double> at, DoubleUnaryOperator x, DoubleUnaryOperator y) {
    StringBuilder path = new StringBuilder();
    for (double along : at) {
      path.append(path.length() == 0 ? "M" : "L")
          .append(ThreadSvg.n(x.applyAsDouble(along)))
          .append(' ')
          .append(ThreadSvg.n(y.applyAsDouble(along)));
    }
    return path.toString();
  }

  private void female(ThreadSvg sheet) {
    double from = -sketch.depth();
    double to = sketch.mouth();
    String thread =
        outline(sketch.bends(from, to), this::x, along -> yFemale(sketch.femaleRadius(along)));
    double inner = x(from);
    String wave = "C" + ThreadSvg.n(inner - 2.0) + " " + ThreadSvg.n(FEMALE_TOP + 5.0) + " "
        + ThreadSvg.n(inner + 2.0) + " " + ThreadSvg.n(FEMALE_TOP + 9.0) + " " + ThreadSvg.n(inner)
        + " "
        + ThreadSvg.n(yFemale(sketch.femaleRadius(from)));
    sheet.path(
        thread + "V" + ThreadSvg.n(FEMALE_TOP) + "H" + ThreadSvg.n(inner) + wave + "Z",
        FEMALE,
        "",
        0.0);
    sheet.path(
        thread + "V" + ThreadSvg.n(FEMALE_TOP) + "H" + ThreadSvg.n(inner), "none", INK, 0.35);
    sheet.path("M" + ThreadSvg.n(inner) + " " + ThreadSvg.n(FEMALE_TOP) + wave, "none", FINE, 0.18);
    sheet.text(x(to) - 3.5, FEMALE_TOP + 5.0, "end", TEXT, "font-weight=\"bold\"", "female");
  }

  private void male(ThreadSvg sheet) {
    double to = sketch.end() + PIPE / scale;
    List<Double> at = new ArrayList<>(sketch.maleBends(0.0, sketch.end()));
    at.add(to);
    String thread = outline(at, this::x, along -> yMale(sketch.maleRadius(along)));
    double bottom = maleBottom();
    double back = x(to);
    double middle = 0.5 * (yMale(0.5 * sketch.outside()) + bottom);
    String end = "C" + ThreadSvg.n(back + 3.0) + " " + ThreadSvg.n(middle - 2.0) + " "
        + ThreadSvg.n(back - 3.0) + " " + ThreadSvg.n(middle + 2.0) + " " + ThreadSvg.n(back) + " "
        + ThreadSvg.n(bottom);
    StringBuilder broken = new StringBuilder();
    double wave = (back - x(0.0)) / 6.0;
    for (int i = 0; i < 3; i++) {
      broken
          .append("q")
          .append(ThreadSvg.n(-0.5 * wave))
          .append(" -1.6 ")
          .append(ThreadSvg.n(-wave))
          .append(" 0");
      broken
          .append("q")
          .append(ThreadSvg.n(-0.5 * wave))
          .append(" 1.6 ")
          .append(ThreadSvg.n(-wave))
          .append(" 0");
    }
    sheet.path(thread + end + broken + "Z", MALE, "", 0.0);
    sheet.path(thread, "none", INK, 0.35);
    sheet.line(x(0.0), yMale(sketch.maleRadius(0.0)), x(0.0), bottom, INK, 0.35, "");
    String backLine =
        "M" + ThreadSvg.n(back) + " " + ThreadSvg.n(yMale(0.5 * sketch.outside())) + end + broken;
    sheet.path(backLine, "none", FINE, 0.18);
    sheet.text(x(0.0) + 3.5, bottom - 3.5, "start", TEXT, "font-weight=\"bold\"", "male");
    sheet.text(
        back + 2.5, yMale(0.5 * sketch.outside()) + 1.0, "start", TEXT, "", sketch.outsideName());
    sheet.text(
        back + 2.5,
        yMale(0.5 * sketch.outside()) + 4.6,
        "start",
        TEXT,
        "",
        diameter(sketch.outside()));
  }

  private void cones(ThreadSvg sheet) {
    double last = sketch.useful() + sketch.turn();
    String dashes = "stroke-dasharray=\"6 1 1 1\"";
    sheet.line(
        x(-0.6 * sketch.turn()),
        yMale(sketch.pitchRadius(-0.6 * sketch.turn())),
        x(last),
        yMale(sketch.pitchRadius(last)),
        CONE,
        0.25,
        dashes);
    double out = sketch.mouth() + 0.6 * sketch.turn();
    sheet.line(
        x(-sketch.depth()),
        yFemale(sketch.pitchRadius(-sketch.depth())),
        x(out),
        yFemale(sketch.pitchRadius(out)),
        CONE,
        0.25,
        dashes);
    sheet.text(
        x(last) + 1.0,
        yMale(sketch.pitchRadius(last)) + 3.6,
        "start",
        TEXT,
        "fill=\"" + CONE + "\"",
        "pitch cone");
  }

  private void planes(ThreadSvg sheet) {
    for (TaperSketch.Plane plane : sketch.planes()) {
      double at = x(plane.at());
      double top = PLANE_LABELS + plane.row() * 8.0;
      double radius = 0.5 * plane.pitchDiameter();
      double bottom = plane.male() ? yMale(radius) : yFemale(radius);
      sheet.line(at, top + 1.2, at, bottom, CONE, 0.18, "stroke-dasharray=\"2 1\"");
      if (plane.at() <= sketch.mouth()) {
        sheet.dot(at, yFemale(radius), CONE);
      }
      if (plane.male()) {
        sheet.dot(at, yMale(radius), CONE);
      }
      sheet.label(at, top - 3.4, "middle", TEXT, "fill=\"" + CONE + "\"", plane.name());
      sheet.label(
          at, top, "middle", TEXT, "fill=\"" + CONE + "\"", diameter(plane.pitchDiameter()));
    }
  }

  /**
   * What a caliper reads on the first thread, and the root below it; the bore stands behind the last plane, whose line
   * would run through its words.
   */
  private void crests(ThreadSvg sheet) {
    ThreadSection first = sketch.thread().section(Gender.MALE, Length.ofMetres(0.0));
    double end = x(0.0) - 2.0;
    double crest = yMale(0.5 * first.major().millimetres());
    double root = yMale(0.5 * first.minor().millimetres());
    sheet.line(end - 3.0, crest, x(0.0), crest, FINE, 0.15, "");
    sheet.line(end - 3.0, root, x(0.0), root, FINE, 0.15, "");
    sheet.label(
        end - 3.6,
        crest + 0.2,
        "end",
        TEXT,
        "",
        "crest " + diameter(first.major().millimetres()));
    sheet.label(
        end - 3.6, root + 1.0, "end", TEXT, "", "root " + diameter(first.minor().millimetres()));
    ThreadSection mouth = sketch.thread().section(Gender.FEMALE, Length.ofMetres(0.0));
    double bore = yFemale(0.5 * mouth.minor().millimetres());
    double face = x(sketch.mouth());
    double clear =
        sketch.planes().stream().mapToDouble(plane -> x(plane.at())).max().orElse(face);
    sheet.line(face, bore, clear + 2.0, bore, FINE, 0.15, "");
    sheet.label(
        clear + 2.8,
        bore + 1.0,
        "start",
        TEXT,
        "",
        "bore " + diameter(mouth.minor().millimetres()));
  }

  /** One pitch, from crest to crest, between the two parts. */
  private void onePitch(ThreadSvg sheet) {
    double from = sketch.turn();
    double to = 2.0 * sketch.turn();
    double y = yMale(sketch.pitchRadius(to) + 0.5 * sketch.thread().height().millimetres()) - 3.2;
    double crestFrom = yMale(sketch.maleRadius(from));
    double crestTo = yMale(sketch.maleRadius(to));
    sheet.line(x(from), crestFrom - 0.4, x(from), y - 0.8, FINE, 0.15, "");
    sheet.line(x(to), crestTo - 0.4, x(to), y - 0.8, FINE, 0.15, "");
    sheet.measure(x(from), x(to), y, FINE);
    sheet.label(x(to) + 1.5, y + 0.9, "start", TEXT, "", "p " + Digits.fixed(sketch.turn(), 4));
  }

  private void span(ThreadSvg sheet, TaperSketch.Span span, double y, double from, boolean above) {
    double x1 = x(span.from());
    double x2 = x(span.to());
    double edge = above ? y - 1.0 : y + 1.0;
    sheet.line(x1, from, x1, edge, FINE, 0.15, "");
    sheet.line(x2, from, x2, edge, FINE, 0.15, "");
    sheet.measure(x1, x2, y, FINE);
    String value = " " + Digits.fixed(span.to() - span.from(), 3);
    String symbol = span.symbol();
    if (fits(span.name() + value, x2 - x1)) {
      sheet.label(0.5 * (x1 + x2), y - 1.4, "middle", TEXT, "", span.name() + value);
    } else if (fits(symbol + value, x2 - x1)) {
      sheet.label(0.5 * (x1 + x2), y - 1.4, "middle", TEXT, "", symbol + value);
    } else if (above) {
      sheet.label(x1 - 1.5, y + 1.0, "end", TEXT, "", symbol + value);
    } else {
      sheet.label(x2 + 1.5, y + 1.0, "start", TEXT, "", span.name() + value);
    }
  }

  /** 0.56 em is the mean width of a letter or digit; the line under an index is none. */
  private static boolean fits(String words, double room) {
    return 0.56 * TEXT * words.replace("_", "").length() < room - 2.0;
  }

  private void foot(ThreadSvg sheet, PipeThread thread, double y) {
    sheet.text(
        LEFT - 6.0,
        y + 1.0,
        "start",
        TEXT,
        "",
        Digits.plain(thread.threadsPerInch()) + " threads per inch, flanks "
            + thread.family().flankAngleDegrees() + "°, height h "
            + Digits.fixed(thread.height().millimetres(), 4) + " mm. Taper 1:16 on the diameter:");
    sheet.text(
        LEFT - 6.0,
        y + 4.8,
        "start",
        TEXT,
        "",
        "one turn changes a diameter by p/16 = " + Digits.fixed(sketch.turn() / 16.0, 4) + " mm.");
    double line = y + 8.8;
    for (String source : source()) {
      sheet.text(LEFT - 6.0, line, "start", TEXT, fine(), source);
      line += LINE;
    }
    double top = line + 2.0;
    StringBuilder ticks = new StringBuilder();
    int most = scale >= 10.0 ? 10 : scale >= 5.0 ? 20 : 50;
    for (int i = 0; i <= most; i++) {
      double tick = i % 10 == 0 ? 3.2 : i % 5 == 0 ? 2.4 : 1.5;
      ticks
          .append('M')
          .append(ThreadSvg.n(LEFT + scale * i))
          .append(' ')
          .append(ThreadSvg.n(top))
          .append('v')
          .append(ThreadSvg.n(tick));
      if (i % 5 == 0 && (most <= 20 || i % 10 == 0)) {
        sheet.text(LEFT + scale * i, top + 6.2, "middle", TEXT, "", Integer.toString(i));
      }
    }
    sheet.path(ticks.toString(), "none", INK, 0.15);
    sheet.line(LEFT, top, LEFT + scale * most, top, INK, 0.3, "");
    sheet.text(
        LEFT - 6.0,
        top + 11.5,
        "start",
        TEXT,
        fine(),
        "mm of the thread. Printed at 100 %, " + most + " mm of this ruler measure "
            + Digits.plain(most * scale) + " mm on a steel rule.");
  }

  private List<String> source() {
    return Paragraph.lines("Source: " + sketch.thread().source(), TEXT, width - LEFT);
  }

  private static String diameter(double millimetres) {
    return "⌀ " + Digits.fixed(millimetres, 3);
  }

  private static String fine() {
    return "fill=\"" + FINE + "\"";
  }
}
