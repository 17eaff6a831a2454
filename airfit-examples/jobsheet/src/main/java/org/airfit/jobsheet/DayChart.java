package org.airfit.jobsheet;

import java.time.Duration;
import java.util.List;
import java.util.function.Function;
import org.airfit.network.DayResult;
import org.airfit.quantity.GaugePressure;
import org.airfit.working.UnitSystem;

/**
 * The pressure over a day as an SVG element: for each stretch of some minutes a bar from the lowest to the highest
 * pressure, at the compressors pale, in the header dark. A dot is the lowest moment of a user that is short.
 *
 * <p>It is drawn twice, for a wide screen and for paper, and for a telephone, so that letters are never smaller than
 * 11 px; the page shows one of the two.
 */
final class DayChart {

  private static final double TEXT = 12.0;
  private static final double TOP = 30.0;
  private static final double TALL = 200.0;
  private static final double LEFT = 40.0;
  private static final double RIGHT = 12.0;

  private final StringBuilder out = new StringBuilder();
  private final DaySheet sheet;
  private final UnitSystem units;
  private final double width;
  private final double low;
  private final double high;
  private final double seconds;

  private DayChart(DaySheet sheet, boolean isNarrow) {
    this.sheet = sheet;
    this.units = sheet.job().units();
    this.width = isNarrow ? 340.0 : 660.0;
    this.seconds = sheet.job().day().length().toNanos() * 1.0e-9;
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (DayResult.Stretch stretch : sheet.day().course()) {
      least =
          Math.min(least, Math.min(shown(stretch.lowest()), shown(stretch.lowestAtCompressors())));
      most =
          Math.max(most, Math.max(shown(stretch.highest()), shown(stretch.highestAtCompressors())));
    }
    double half = units.either(0.5, 5.0);
    this.low = half * Math.floor(least / half);
    this.high = Math.max(low + half, half * Math.ceil(most / half));
  }

  /** Both drawings. */
  static String of(DaySheet sheet) {
    return "<div class=\"roomy\">\n" + new DayChart(sheet, false).draw()
        + "</div>\n<div class=\"narrow\">\n" + new DayChart(sheet, true).draw() + "</div>\n";
  }

  private double shown(GaugePressure pressure) {
    return pressure.in(units.pressureUnit());
  }

  private double x(double at) {
    return LEFT + (width - LEFT - RIGHT) * at / seconds;
  }

  private double y(double pressure) {
    return TOP + TALL * (high - pressure) / (high - low);
  }

  private static String n(double value) {
    return Amounts.fixed(value, 1);
  }

  private String draw() {
    axes();
    band("pale", DayResult.Stretch::lowestAtCompressors, DayResult.Stretch::highestAtCompressors);
    band("dark", DayResult.Stretch::lowest, DayResult.Stretch::highest);
    for (DayResult.UseDay use : sheet.day().uses()) {
      if (use.isShort()) {
        DayResult.Lowest lowest = use.lowest().orElseThrow();
        GaugePressure header =
            GaugePressure.of(lowest.header(), sheet.job().day().atmosphere());
        out.append("<circle class=\"short\" cx=\"" + n(x(lowest.when().toNanos() * 1.0e-9))
            + "\" cy=\"" + n(y(shown(header))) + "\" r=\"4\"/>\n");
      }
    }
    double height = TOP + TALL + 24.0;
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + n(width) + " " + n(height)
        + "\" role=\"img\" aria-label=\"" + Html.escaped(shows())
        + "\" font-family=\"Arial, Helvetica, DejaVu Sans Condensed, sans-serif\" font-size=\""
        + n(TEXT) + "\">\n" + out + "</svg>\n";
  }

  private String shows() {
    return "The pressure over the day, between " + Amounts.fixed(low, 1) + " and "
        + Amounts.fixed(high, 1) + " " + units.pressureUnit().symbol()
        + " above the atmosphere. " + new DayWords(sheet).headline();
  }

  /** A band of bars as one path, from stretch to stretch along the highest and back along the lowest. */
  private void band(
      String kind,
      Function<DayResult.Stretch, GaugePressure> lowest,
      Function<DayResult.Stretch, GaugePressure> highest) {
    List<DayResult.Stretch> course = sheet.day().course();
    double wide = seconds / course.size();
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < course.size(); i++) {
      double top = y(shown(highest.apply(course.get(i))));
      path.append(i == 0 ? "M" : "L").append(n(x(i * wide))).append(' ').append(n(top - 0.4));
      path.append('L').append(n(x((i + 1) * wide))).append(' ').append(n(top - 0.4));
    }
    for (int i = course.size() - 1; i >= 0; i--) {
      double bottom = y(shown(lowest.apply(course.get(i))));
      path.append('L').append(n(x((i + 1) * wide))).append(' ').append(n(bottom + 0.4));
      path.append('L').append(n(x(i * wide))).append(' ').append(n(bottom + 0.4));
    }
    out.append("<path class=\"" + kind + "\" d=\"" + path + "Z\"/>\n");
  }

  private void axes() {
    double step = units.either(0.5, 5.0);
    while ((high - low) / step > 8.0) {
      step *= 2.0;
    }
    for (double mark = low; mark <= high + 1.0e-9; mark += step) {
      line(LEFT, y(mark), width - RIGHT, y(mark));
      text(LEFT - 6.0, y(mark) + 4.0, "end", Amounts.fixed(mark, units.either(1, 0)));
    }
    text(
        4.0, 14.0, "start", "pressure above atmosphere, " + units.pressureUnit().symbol());
    double[] steps = {
      300.0, 900.0, 1800.0, 3600.0, 7200.0, 10_800.0, 14_400.0, 21_600.0, 43_200.0, 86_400.0
    };
    int chosen = 0;
    while (chosen < steps.length - 1 && x(steps[chosen]) - LEFT < 44.0) {
      chosen++;
    }
    double begins = sheet.job().begins().toNanos() * 1.0e-9;
    double first = steps[chosen] * Math.ceil(begins / steps[chosen]) - begins;
    for (double at = first; at <= seconds; at += steps[chosen]) {
      line(x(at), TOP, x(at), TOP + TALL);
      if (x(at) + 16.0 <= width) {
        String clock = sheet.clock(Duration.ofSeconds(Math.round(at)));
        text(x(at), TOP + TALL + 16.0, "middle", clock.substring(0, 5));
      }
    }
  }

  private void line(double x1, double y1, double x2, double y2) {
    out.append("<line class=\"hair\" x1=\"" + n(x1) + "\" y1=\"" + n(y1) + "\" x2=\"" + n(x2)
        + "\" y2=\"" + n(y2) + "\" stroke-width=\"1\"/>\n");
  }

  private void text(double x, double y, String anchor, String text) {
    out.append("<text class=\"soft\" x=\"" + n(x) + "\" y=\"" + n(y) + "\" text-anchor=\"" + anchor
        + "\">" + Html.escaped(text) + "</text>\n");
  }
}
