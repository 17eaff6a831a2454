package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;

/**
 * The pressure along a run as an SVG element: one row for each element from the supply down to the tool, the pressure
 * to the right.
 *
 * <p>A thick stroke is the pressure loss of the element; the line steps down to the next. The dashed upright is what
 * the tool needs.
 */
final class PressureChart {

  private static final double WIDTH = 640.0;
  private static final double LEFT = 232.0;
  private static final double RIGHT = 70.0;
  private static final double TOP = 40.0;
  private static final double ROW = 26.0;
  private static final double PSI_PER_BAR = 1.0e5 / GaugePressure.ofPsi(1.0).pascals();

  private final StringBuilder out = new StringBuilder();
  private final double from;
  private final double to;

  private PressureChart(double from, double to) {
    this.from = from;
    this.to = to;
  }

  /** The scale two charts of one job share [bar above atmosphere]. */
  record Scale(double from, double to) {

    static Scale of(
        List<RunResult> results,
        AbsolutePressure supply,
        AbsolutePressure atmosphere,
        GaugePressure need) {
      double low = need.bar();
      for (RunResult result : results) {
        for (ElementLoss share : shares(result)) {
          low = Math.min(low, share.outlet().bar() - atmosphere.bar());
        }
      }
      return new Scale(
          Math.max(0.0, Math.floor(2.0 * low - 0.6) / 2.0),
          Math.ceil(2.0 * (supply.bar() - atmosphere.bar()) + 0.2) / 2.0);
    }
  }

  static String of(
      String title,
      RunResult result,
      AbsolutePressure atmosphere,
      GaugePressure need,
      Scale scale) {
    return new PressureChart(scale.from(), scale.to()).draw(title, result, atmosphere, need);
  }

  private static List<ElementLoss> shares(RunResult result) {
    return result.fold(RunResult.Delivered::shares, RunResult.Starved::before);
  }

  private double x(double bar) {
    return LEFT + (WIDTH - LEFT - RIGHT) * (bar - from) / (to - from);
  }

  private static String n(double value) {
    return Amounts.fixed(value, 1);
  }

  private String draw(
      String title, RunResult result, AbsolutePressure atmosphere, GaugePressure need) {
    List<ElementLoss> shares = shares(result);
    boolean starves = result.fold(delivered -> false, starved -> true);
    double height = TOP + ROW * (shares.size() + 2) + 44.0;
    out.append(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + n(WIDTH) + " " + n(height)
            + "\" role=\"img\" aria-label=\"" + Html.escaped(title)
            + "\" font-family=\"Helvetica, Arial, sans-serif\" font-size=\"11\" fill=\"#1d2429\">\n");
    double bottom = height - 40.0;
    axis(bottom);
    needed(need, bottom);
    double y = TOP + 0.5 * ROW;
    label("supply", y);
    List<String> way = new ArrayList<>();
    double bar = shares.isEmpty()
        ? result.fold(d -> d.atSupply(), s -> s.inlet()).bar() - atmosphere.bar()
        : shares.get(0).inlet().bar() - atmosphere.bar();
    way.add(n(x(bar)) + "," + n(y));
    dot(bar, y);
    for (ElementLoss share : shares) {
      y += ROW;
      double in = share.inlet().bar() - atmosphere.bar();
      double end = share.outlet().bar() - atmosphere.bar();
      way.add(n(x(in)) + "," + n(y));
      way.add(n(x(end)) + "," + n(y));
      out.append("<line x1=\"" + n(x(in)) + "\" y1=\"" + n(y) + "\" x2=\"" + n(x(end)) + "\" y2=\""
          + n(y) + "\" stroke=\"#1d4e6b\" stroke-width=\"9\"/>\n");
      label(share.name(), y);
      text(x(in) + 6.0, y + 4.0, "start", "−" + n2(share.drop().bar()) + " bar", "#46525a");
      bar = end;
    }
    out.append("<polyline points=\"" + String.join(" ", way)
        + "\" fill=\"none\" stroke=\"#1d4e6b\" stroke-width=\"1.4\"/>\n");
    if (starves) {
      y += ROW;
      label(result.fold(d -> "", RunResult.Starved::element), y);
      text(x(bar) - 6.0, y + 4.0, "end", "stops here: the tool gets no such flow", "#8a1c1c");
    } else {
      y += ROW;
      double end = bar;
      out.append("<line x1=\"" + n(x(end)) + "\" y1=\"" + n(y - ROW) + "\" x2=\"" + n(x(end))
          + "\" y2=\"" + n(y) + "\" stroke=\"#1d4e6b\" stroke-width=\"1.4\"/>\n");
      dot(end, y);
      label("at the tool", y);
      out.append("<text x=\"" + n(x(end) - 9.0) + "\" y=\"" + n(y + 4.0)
          + "\" text-anchor=\"end\" font-weight=\"bold\">" + n2(end) + " bar</text>\n");
    }
    return out.append("</svg>\n").toString();
  }

  private static String n2(double value) {
    return Amounts.fixed(value, 2);
  }

  private void dot(double bar, double y) {
    out.append("<circle cx=\"" + n(x(bar)) + "\" cy=\"" + n(y) + "\" r=\"4\" fill=\"#1d4e6b\"/>\n");
  }

  private void label(String text, double y) {
    String shown = text.length() > 38 ? text.substring(0, 37) + "…" : text;
    text(LEFT - 14.0, y + 4.0, "end", shown, "#1d2429");
  }

  private void text(double x, double y, String anchor, String text, String ink) {
    out.append("<text x=\"" + n(x) + "\" y=\"" + n(y) + "\" text-anchor=\"" + anchor + "\" fill=\""
        + ink + "\">" + Html.escaped(text) + "</text>\n");
  }

  /** A mark each half bar, each bar, or so far apart that there are twenty at most. */
  private static double step(double range) {
    double step = range > 6.0 ? 1.0 : 0.5;
    double[] factors = {2.0, 2.5, 2.0}; // 1, 2, 5, 10, 20 …
    for (int i = 0; range / step > 20.0; i++) {
      step *= factors[i % 3];
    }
    return step;
  }

  private void axis(double bottom) {
    double step = step(to - from);
    for (double bar = from; bar <= to + 1.0e-9 * step; bar += step) {
      out.append("<line x1=\"" + n(x(bar)) + "\" y1=\"" + n(TOP) + "\" x2=\"" + n(x(bar))
          + "\" y2=\"" + n(bottom) + "\" stroke=\"#d5dadd\" stroke-width=\"1\"/>\n");
      text(x(bar), bottom + 14.0, "middle", n(bar), "#46525a");
      text(x(bar), bottom + 28.0, "middle", Amounts.fixed(bar * PSI_PER_BAR, 0), "#46525a");
    }
    text(LEFT - 14.0, bottom + 14.0, "end", "pressure above atmosphere, bar", "#46525a");
    text(LEFT - 14.0, bottom + 28.0, "end", "psig", "#46525a");
  }

  private void needed(GaugePressure need, double bottom) {
    double at = x(need.bar());
    out.append("<line x1=\"" + n(at) + "\" y1=\"" + n(TOP - 10.0) + "\" x2=\"" + n(at) + "\" y2=\""
        + n(bottom) + "\" stroke=\"#8a1c1c\" stroke-width=\"1.4\" stroke-dasharray=\"5 3\"/>\n");
    text(at, TOP - 16.0, "middle", "the tool needs " + n2(need.bar()) + " bar", "#8a1c1c");
  }
}
