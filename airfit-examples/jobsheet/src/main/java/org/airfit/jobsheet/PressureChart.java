package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.working.UnitSystem;

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

  private final StringBuilder out = new StringBuilder();
  private final Scale scale;

  private PressureChart(Scale scale) {
    this.scale = scale;
  }

  /** The scale two charts of one job share: pressures above the atmosphere in the unit of the sheet. */
  record Scale(double from, double to, UnitSystem units) {

    static Scale of(
        List<RunResult> results,
        AbsolutePressure supply,
        AbsolutePressure atmosphere,
        GaugePressure need,
        UnitSystem units) {
      double low = need.in(units.pressureUnit());
      for (RunResult result : results) {
        for (ElementLoss share : shares(result)) {
          low = Math.min(low, above(share.outlet(), atmosphere, units));
        }
      }
      double half = units.either(0.5, 5.0);
      return new Scale(
          Math.max(0.0, half * Math.floor(low / half - 0.6)),
          half * Math.ceil(above(supply, atmosphere, units) / half + 0.2),
          units);
    }
  }

  static String of(
      String title,
      RunResult result,
      AbsolutePressure atmosphere,
      GaugePressure need,
      Scale scale) {
    return new PressureChart(scale).draw(title, result, atmosphere, need);
  }

  private static List<ElementLoss> shares(RunResult result) {
    return result.fold(RunResult.Delivered::shares, RunResult.Starved::before);
  }

  private static double above(
      AbsolutePressure pressure, AbsolutePressure atmosphere, UnitSystem units) {
    return pressure.in(units.pressureUnit()) - atmosphere.in(units.pressureUnit());
  }

  private double x(double pressure) {
    return LEFT + (WIDTH - LEFT - RIGHT) * (pressure - scale.from()) / (scale.to() - scale.from());
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
    double now = above(
        shares.isEmpty()
            ? result.fold(d -> d.atSupply(), s -> s.inlet())
            : shares.get(0).inlet(),
        atmosphere,
        scale.units());
    way.add(n(x(now)) + "," + n(y));
    dot(now, y);
    for (ElementLoss share : shares) {
      y += ROW;
      double in = above(share.inlet(), atmosphere, scale.units());
      double end = above(share.outlet(), atmosphere, scale.units());
      way.add(n(x(in)) + "," + n(y));
      way.add(n(x(end)) + "," + n(y));
      out.append("<line x1=\"" + n(x(in)) + "\" y1=\"" + n(y) + "\" x2=\"" + n(x(end)) + "\" y2=\""
          + n(y) + "\" stroke=\"#1d4e6b\" stroke-width=\"9\"/>\n");
      label(share.name(), y);
      text(x(in) + 6.0, y + 4.0, "start", "−" + scale.units().say(share.drop()), "#46525a");
      now = end;
    }
    out.append("<polyline points=\"" + String.join(" ", way)
        + "\" fill=\"none\" stroke=\"#1d4e6b\" stroke-width=\"1.4\"/>\n");
    if (starves) {
      y += ROW;
      label(result.fold(d -> "", RunResult.Starved::element), y);
      text(x(now) - 6.0, y + 4.0, "end", "stops here: the tool gets no such flow", "#8a1c1c");
    } else {
      y += ROW;
      double end = now;
      out.append("<line x1=\"" + n(x(end)) + "\" y1=\"" + n(y - ROW) + "\" x2=\"" + n(x(end))
          + "\" y2=\"" + n(y) + "\" stroke=\"#1d4e6b\" stroke-width=\"1.4\"/>\n");
      dot(end, y);
      label("at the tool", y);
      out.append("<text x=\"" + n(x(end) - 9.0) + "\" y=\"" + n(y + 4.0)
          + "\" text-anchor=\"end\" font-weight=\"bold\">" + told(end)
          + "</text>\n");
    }
    return out.append("</svg>\n").toString();
  }

  private String told(double pressure) {
    return Amounts.fixed(pressure, scale.units().either(2, 1)) + " "
        + scale.units().pressureUnit().symbol();
  }

  private void dot(double pressure, double y) {
    out.append(
        "<circle cx=\"" + n(x(pressure)) + "\" cy=\"" + n(y) + "\" r=\"4\" fill=\"#1d4e6b\"/>\n");
  }

  private void label(String text, double y) {
    String shown = text.length() > 38 ? text.substring(0, 37) + "…" : text;
    text(LEFT - 14.0, y + 4.0, "end", shown, "#1d2429");
  }

  private void text(double x, double y, String anchor, String text, String ink) {
    out.append("<text x=\"" + n(x) + "\" y=\"" + n(y) + "\" text-anchor=\"" + anchor + "\" fill=\""
        + ink + "\">" + Html.escaped(text) + "</text>\n");
  }

  /** A mark each half bar, each bar, each 5 or 10 psi, or so far apart that there are twenty at most. */
  private double step(double range) {
    double half = scale.units().either(0.5, 5.0);
    double step = range > 12.0 * half ? 2.0 * half : half;
    double[] factors = {2.0, 2.5, 2.0}; // 1, 2, 5, 10, 20 …
    for (int i = 0; range / step > 20.0; i++) {
      step *= factors[i % 3];
    }
    return step;
  }

  private void axis(double bottom) {
    UnitSystem units = scale.units();
    double step = step(scale.to() - scale.from());
    for (double mark = scale.from(); mark <= scale.to() + 1.0e-9 * step; mark += step) {
      double pascals = units.pressureUnit().toSi(mark);
      double beside = units.other().pressureUnit().fromSi(pascals);
      out.append("<line x1=\"" + n(x(mark)) + "\" y1=\"" + n(TOP) + "\" x2=\"" + n(x(mark))
          + "\" y2=\"" + n(bottom) + "\" stroke=\"#d5dadd\" stroke-width=\"1\"/>\n");
      text(x(mark), bottom + 14.0, "middle", Amounts.fixed(mark, units.either(1, 0)), "#46525a");
      text(x(mark), bottom + 28.0, "middle", Amounts.fixed(beside, units.either(0, 1)), "#46525a");
    }
    text(
        LEFT - 14.0,
        bottom + 14.0,
        "end",
        "pressure above atmosphere, " + units.pressureUnit().symbol(),
        "#46525a");
    text(LEFT - 14.0, bottom + 28.0, "end", units.either("(psig)", "(bar)"), "#46525a");
  }

  private void needed(GaugePressure need, double bottom) {
    double at = x(need.in(scale.units().pressureUnit()));
    out.append("<line x1=\"" + n(at) + "\" y1=\"" + n(TOP - 10.0) + "\" x2=\"" + n(at) + "\" y2=\""
        + n(bottom) + "\" stroke=\"#8a1c1c\" stroke-width=\"1.4\" stroke-dasharray=\"5 3\"/>\n");
    text(
        at,
        TOP - 16.0,
        "middle",
        "the tool needs " + told(need.in(scale.units().pressureUnit())),
        "#8a1c1c");
  }
}
