package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.WaterAlongLine;
import org.airfit.files.WaterJob;

/**
 * The water along a train on a warm day as an SVG element: for the air taken in and for each place a bar of all water
 * that comes there, to scale, of what stays in the air, what leaves as liquid and what goes on as liquid.
 *
 * <p>It is drawn twice, for a wide screen and for paper, and for a telephone, so that letters are never smaller than
 * 11 px; the page shows one of the two.
 */
final class WaterChart {

  private static final double TEXT = 12.0;
  private static final double TOP = 30.0;
  private static final double TALL = 190.0;
  private static final double LEFT = 46.0;
  private static final double RIGHT = 8.0;

  /** Where bars stand closer, no amounts are written over them. */
  private static final double CLOSE = 52.0;

  private final StringBuilder out = new StringBuilder();
  private final WaterSheet sheet;
  private final List<Bar> bars = new ArrayList<>();
  private final double width;
  private final double high;
  private final double step;

  /** One bar, each part in litres or gallons. */
  private record Bar(String name, double vapour, double drained, double carried) {

    double all() {
      return vapour + drained + carried;
    }
  }

  private WaterChart(WaterSheet sheet, WaterJob.Train train, boolean isNarrow) {
    this.sheet = sheet;
    this.width = isNarrow ? 340.0 : 660.0;
    WaterAlongLine water = train.treatment().water();
    bars.add(new Bar("air in", sheet.amount(water.takenIn()), 0.0, 0.0));
    for (WaterAlongLine.AtPlace at : water.warmDay()) {
      bars.add(new Bar(
          at.name(),
          sheet.amount(at.vapour()),
          sheet.amount(at.drainedOff()),
          sheet.amount(at.carriedOn())));
    }
    double most = Math.max(1.0e-6, bars.stream().mapToDouble(Bar::all).max().orElse(1.0));
    this.step = step(most);
    this.high = step * Math.ceil(most / step);
  }

  /** Marks at 1, 2 or 5 times a power of ten, six at most. */
  private static double step(double most) {
    double step = Math.pow(10.0, Math.floor(Math.log10(most / 6.0)));
    for (double times : new double[] {1.0, 2.0, 5.0, 10.0}) {
      if (most / (times * step) <= 6.0) {
        return times * step;
      }
    }
    return 10.0 * step;
  }

  /** Both drawings. */
  static String of(WaterSheet sheet, WaterJob.Train train) {
    return "<div class=\"roomy\">\n" + new WaterChart(sheet, train, false).draw()
        + "</div>\n<div class=\"narrow\">\n" + new WaterChart(sheet, train, true).draw()
        + "</div>\n";
  }

  private double y(double amount) {
    return TOP + TALL * (high - amount) / high;
  }

  private static String n(double value) {
    return Amounts.fixed(value, 1);
  }

  private String draw() {
    int decimals = Math.max(0, (int) -Math.floor(Math.log10(step) + 1.0e-9));
    for (int i = 0; i * step <= high * (1.0 + 1.0e-9); i++) {
      out.append("<line class=\"hair\" x1=\"" + n(LEFT) + "\" y1=\"" + n(y(i * step)) + "\" x2=\""
          + n(width - RIGHT) + "\" y2=\"" + n(y(i * step)) + "\" stroke-width=\"1\"/>\n");
      text(LEFT - 6.0, y(i * step) + 4.0, "end", Amounts.fixed(i * step, decimals));
    }
    text(4.0, 14.0, "start", "water in " + sheet.shift() + ", " + sheet.units().either("L", "gal"));
    double wide = (width - LEFT - RIGHT) / bars.size();
    for (int i = 0; i < bars.size(); i++) {
      Bar bar = bars.get(i);
      double x = LEFT + wide * (i + 0.15);
      piece("pale", x, 0.7 * wide, 0.0, bar.vapour());
      piece("dark", x, 0.7 * wide, bar.vapour(), bar.vapour() + bar.drained());
      piece("short", x, 0.7 * wide, bar.vapour() + bar.drained(), bar.all());
      double middle = x + 0.35 * wide;
      text(middle, TOP + TALL + 16.0, "middle", i == 0 ? "in" : String.valueOf(i));
      double liquid = bar.drained() + bar.carried();
      if (wide >= CLOSE && liquid >= 0.005 * high) {
        text(middle, y(bar.all()) - 4.0, "middle", Amounts.digits(liquid, 2));
      }
    }
    double height = TOP + TALL + 24.0;
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + n(width) + " " + n(height)
        + "\" role=\"img\" aria-label=\"" + Html.escaped(shows())
        + "\" font-family=\"Arial, Helvetica, DejaVu Sans Condensed, sans-serif\" font-size=\""
        + n(TEXT) + "\">\n" + out + "</svg>\n";
  }

  private String shows() {
    List<String> said = new ArrayList<>();
    for (int i = 1; i < bars.size(); i++) {
      Bar bar = bars.get(i);
      said.add(i + " " + bar.name() + " "
          + Amounts.digits(bar.drained() + bar.carried(), 2)
          + sheet.units().either(" L", " gal"));
    }
    return "The water along the train on a warm day; liquid at " + String.join(", ", said) + ".";
  }

  private void piece(String kind, double x, double wide, double from, double to) {
    if (to > from) {
      out.append("<rect class=\"" + kind + "\" x=\"" + n(x) + "\" y=\"" + n(y(to)) + "\" width=\""
          + n(wide) + "\" height=\"" + n(Math.max(0.4, y(from) - y(to))) + "\"/>\n");
    }
  }

  private void text(double x, double y, String anchor, String text) {
    out.append("<text class=\"soft\" x=\"" + n(x) + "\" y=\"" + n(y) + "\" text-anchor=\"" + anchor
        + "\">" + Html.escaped(text) + "</text>\n");
  }
}
