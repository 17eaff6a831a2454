package org.airfit.working;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.airfit.internal.Digits;
import org.airfit.internal.SvgWriter;

/**
 * Draws a chart for a ruler: axes with marks on both sides, curves as lines of short straight pieces. Not thread-safe.
 */
final class ChartSvg extends SvgWriter {

  /** Where the axes meet, from the left and from the foot [mm]. */
  static final double LEFT = 13.0;

  static final double FOOT = 10.0;
  static final double TOP = 5.0;
  static final double RIGHT = 5.0;

  /** Room for the names of several curves behind their ends [mm]. */
  static final double NAMES = 16.0;

  /** By how much a straight piece may leave its curve [mm]; a reader's half millimetre covers it. */
  static final double CHORD = 0.02;

  private static final String INK = "#111417";
  private static final String FINE = "#9aa3a8";

  /** 8.4 pt on paper, and 11 px on a telephone [mm]. */
  private static final double TEXT = 2.95;

  private static final double LEAST_MARKS = 1.2;
  private static final int MOST_HALVINGS = 12;

  private static final double[] STEPS = {1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0};

  private final String title;
  private final ChartAxis across;
  private final ChartAxis up;

  private ChartSvg(String title, ChartAxis across, ChartAxis up) {
    this.title = title;
    this.across = across;
    this.up = up;
  }

  static String of(String title, ChartAxis across, ChartAxis up, List<ChartCurve> curves) {
    return new ChartSvg(title, across, up).draw(curves);
  }

  private double x(double at) {
    return LEFT + at;
  }

  private double y(double at) {
    return TOP + up.millimetres() - at;
  }

  private String draw(List<ChartCurve> curves) {
    marks(across, true);
    marks(up, false);
    path(
        "M" + n(x(0.0)) + " " + n(y(up.millimetres())) + "h" + n(across.millimetres()) + "v"
            + n(up.millimetres()) + "h" + n(-across.millimetres()) + "Z",
        "none",
        INK,
        0.25);
    for (ChartCurve curve : curves) {
      curve(curve);
    }
    if (curves.size() > 1) {
      namesBeside(curves);
    } else {
      curves.forEach(this::nameOn);
    }
    textOf(
        x(across.millimetres()),
        y(-8.6),
        "end",
        TEXT,
        "font-weight=\"bold\"",
        escaped(across.symbol()));
    textOf(1.0, TOP - 1.8, "start", TEXT, "font-weight=\"bold\"", escaped(up.symbol()));
    return svg(
        LEFT + across.millimetres() + (curves.size() > 1 ? NAMES : RIGHT),
        TOP + up.millimetres() + FOOT,
        title + ", drawn to scale: " + up.symbol() + " over " + across.symbol(),
        TEXT,
        INK);
  }

  /** Marks with lines across the chart. */
  private void marks(ChartAxis axis, boolean isAcross) {
    List<Mark> marks = marks(axis);
    for (Mark mark : marks) {
      double at = axis.at(mark.value);
      double tick = mark.rank == 0 ? 2.0 : mark.rank == 1 ? 1.5 : 0.9;
      String colour = mark.rank == 2 ? FINE : INK;
      double weight = mark.rank == 0 ? 0.2 : mark.rank == 1 ? 0.13 : 0.07;
      String from = "M" + n(isAcross ? x(at) : x(0.0)) + " " + n(isAcross ? y(0.0) : y(at));
      path(
          from + (isAcross ? "V" + n(y(up.millimetres())) : "H" + n(x(across.millimetres()))),
          "none",
          "#c3cacd",
          weight);
      path(from + (isAcross ? "v" + n(tick) : "h" + n(-tick)), "none", colour, 0.15);
    }
    figures(axis, isAcross, marks);
  }

  /** Figures at the long marks where there is room, and at those between where there is room left. */
  private void figures(ChartAxis axis, boolean isAcross, List<Mark> marks) {
    List<double[]> taken = new ArrayList<>();
    for (int rank = 0; rank <= 1; rank++) {
      for (Mark mark : marks) {
        String figure = Digits.plain(Double.parseDouble(Digits.significant(mark.value, 6)));
        double at = axis.at(mark.value);
        double half = 0.5 * (isAcross ? 0.58 * TEXT * figure.length() + 1.4 : TEXT + 0.8);
        boolean fits = mark.rank == rank
            && taken.stream().allMatch(other -> Math.abs(at - other[0]) >= half + other[1]);
        if (fits) {
          taken.add(new double[] {at, half});
          textOf(
              isAcross ? x(at) : x(-2.6),
              isAcross ? y(-5.2) : y(at) + 0.9,
              isAcross ? "middle" : "end",
              TEXT,
              "",
              figure);
        }
      }
    }
  }

  /** A mark: 0 with a figure, 1 longer, 2 short. */
  record Mark(double value, int rank) {}

  /** The marks of an axis, from its beginning on. */
  static List<Mark> marks(ChartAxis axis) {
    return axis.isLogarithmic() ? logarithmic(axis) : even(axis);
  }

  private static List<Mark> even(ChartAxis axis) {
    double range = axis.to() - axis.from();
    double fine = fineStep(range, range * LEAST_MARKS / axis.millimetres());
    List<Mark> marks = new ArrayList<>();
    long first = (long) Math.ceil(axis.from() / fine - 1.0e-6);
    for (long i = first; i * fine <= axis.to() + 1.0e-6 * fine; i++) {
      marks.add(new Mark(i * fine, i % 10 == 0 ? 0 : i % 5 == 0 ? 1 : 2));
    }
    return marks;
  }

  /** Each stretch between two figures has marks of its own step. */
  private static List<Mark> logarithmic(ChartAxis axis) {
    List<Mark> marks = new ArrayList<>();
    double decade = Math.pow(10.0, Math.floor(Math.log10(axis.from())));
    for (; decade <= axis.to(); decade *= 10.0) {
      for (int i = 0; i < STEPS.length - 1; i++) {
        stretch(axis, decade * STEPS[i], decade * STEPS[i + 1], marks);
      }
    }
    if (axis.at(decade) <= axis.millimetres() + 1.0e-6) {
      marks.add(new Mark(decade, 0));
    }
    return marks;
  }

  private static void stretch(ChartAxis axis, double from, double to, List<Mark> marks) {
    // the marks stand closest at the end of the stretch
    double perMillimetre = to * Math.log(axis.to() / axis.from()) / axis.millimetres();
    double fine = fineStep(to - from, LEAST_MARKS * perMillimetre);
    int pieces = (int) Math.rint((to - from) / fine);
    for (int i = 0; i < pieces; i++) {
      double value = from + i * fine;
      boolean inside = axis.at(value) >= -1.0e-6 && axis.at(value) <= axis.millimetres() + 1.0e-6;
      if (inside) {
        marks.add(new Mark(value, i == 0 ? 0 : pieces >= 10 && i % 5 == 0 ? 1 : 2));
      }
    }
  }

  /** The least of 1, 2 or 5 times a power of ten that is at least so much and divides a range into whole pieces. */
  private static double fineStep(double range, double least) {
    double power = Math.pow(10.0, Math.floor(Math.log10(least)));
    for (int i = 0; i < 12; i++) {
      for (double step : new double[] {1.0, 2.0, 5.0}) {
        double fine = power * step;
        double pieces = range / fine;
        if (fine >= least * (1.0 - 1.0e-9)
            && Math.abs(pieces - Math.rint(pieces)) < 1.0e-6
            && pieces >= 0.5) {
          return fine;
        }
      }
      power *= 10.0;
    }
    return range;
  }

  /** The curve as far as it lies in the chart. */
  private void curve(ChartCurve curve) {
    StringBuilder d = new StringBuilder();
    List<Double> cuts = new ArrayList<>(List.of(across.from()));
    for (double jump : curve.jumps()) {
      if (jump > across.from() && jump < across.to()) {
        cuts.add(jump);
      }
    }
    cuts.add(across.to());
    for (int i = 1; i < cuts.size(); i++) {
      boolean last = i == cuts.size() - 1;
      double from = across.at(cuts.get(i - 1));
      double to = across.at(cuts.get(i)) - (last ? 0.0 : 1.0e-6);
      List<double[]> points = points(curve.function(), from, to);
      boolean drawing = false;
      for (double[] point : points) {
        boolean inside = point[1] >= -1.0e-6 && point[1] <= up.millimetres() + 1.0e-6;
        if (inside) {
          d.append(drawing ? "L" : "M").append(n(x(point[0]))).append(' ').append(n(y(point[1])));
        }
        drawing = inside;
      }
    }
    out.append("<g data-curve=\"").append(escaped(curve.name())).append("\">\n");
    path(d.toString(), "none", INK, 0.2);
    out.append("</g>\n");
  }

  /** Points of a curve [mm], so close that straight pieces between them keep to it. */
  private List<double[]> points(DoubleUnaryOperator function, double from, double to) {
    List<double[]> points = new ArrayList<>();
    int pieces = Math.max(1, (int) Math.ceil((to - from) / 4.0));
    double[] before = point(function, from);
    points.add(before);
    for (int i = 1; i <= pieces; i++) {
      double[] next = point(function, i == pieces ? to : from + i * (to - from) / pieces);
      add(points, function, before, next, 0);
      before = next;
    }
    return points;
  }

  private double[] point(DoubleUnaryOperator function, double at) {
    return new double[] {at, up.at(function.applyAsDouble(across.value(at)))};
  }

  private void add(
      List<double[]> points, DoubleUnaryOperator function, double[] a, double[] b, int halvings) {
    double[] middle = point(function, 0.5 * (a[0] + b[0]));
    double off = Math.abs(middle[1] - 0.5 * (a[1] + b[1]));
    if (off > CHORD && halvings < MOST_HALVINGS) {
      add(points, function, a, middle, halvings + 1);
      add(points, function, middle, b, halvings + 1);
    } else {
      points.add(b);
    }
  }

  /** Writes the name of the only curve on it. */
  private void nameOn(ChartCurve curve) {
    double width = 0.54 * TEXT * curve.name().length();
    double at = across.millimetres() - 3.0 - width;
    double here = height(curve, at + 0.5 * width);
    textOf(
        x(at),
        y(Math.max(2.0, Math.min(up.millimetres() - 4.0, here + 1.6))),
        "start",
        TEXT,
        "stroke=\"#ffffff\" stroke-width=\"0.9\" stroke-linejoin=\"round\" paint-order=\"stroke\"",
        escaped(curve.name()));
  }

  private double height(ChartCurve curve, double at) {
    double height = up.at(curve.function().applyAsDouble(across.value(at)));
    return Math.max(0.0, Math.min(up.millimetres(), height));
  }

  /**
   * Writes what several curves are called behind their ends, from the lowest up and apart, with a line to each; what
   * all names begin with stands above them once.
   */
  private void namesBeside(List<ChartCurve> curves) {
    double end = across.millimetres();
    String first = curves.get(0).name();
    String head = first.substring(0, first.indexOf(" = ") + 1);
    boolean isShared =
        !head.isEmpty() && curves.stream().allMatch(curve -> curve.name().startsWith(head + "= "));
    if (isShared) {
      textOf(x(end) + 3.2, TOP - 1.8, "start", TEXT, "font-weight=\"bold\"", escaped(head.strip()));
    }
    List<ChartCurve> rising = new ArrayList<>(curves);
    rising.sort(Comparator.comparingDouble(curve -> height(curve, end)));
    double free = 0.0;
    for (ChartCurve curve : rising) {
      double here = height(curve, end);
      double at = Math.max(free, here);
      path(
          "M" + n(x(end)) + " " + n(y(here)) + "L" + n(x(end) + 2.8) + " " + n(y(at)),
          "none",
          INK,
          0.12);
      String name = isShared ? curve.name().substring(head.length() + 2) : curve.name();
      textOf(x(end) + 3.2, y(at) + 0.9, "start", TEXT, "", escaped(name));
      free = at + TEXT + 0.4;
    }
  }
}
