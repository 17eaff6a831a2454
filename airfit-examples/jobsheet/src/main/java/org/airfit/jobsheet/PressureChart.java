package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.working.UnitSystem;

/**
 * The pressure along a run as an SVG element: one row for each element from the supply down to the tool, the pressure
 * to the right.
 *
 * <p>A thick stroke is the pressure loss of the element, a thin one what a regulator takes down to what it is set to;
 * the line steps down to the next. The dashed upright is what the tool needs. It is drawn twice, the names beside the
 * pressures for a wide screen and for paper, and above them for a telephone, so that letters are never smaller than
 * 11 px; the page shows one of the two.
 */
final class PressureChart {

  private static final double TOP = 40.0;
  private static final double LINE = 15.0;
  private static final double TEXT = 12.0;

  /** How wide a letter is in the mean, on the safe side. */
  private static final double LETTER = 0.56 * TEXT;

  private final StringBuilder out = new StringBuilder();
  private final Scale scale;
  private final boolean isNarrow;
  private final double width;
  private final double left;
  private final double right;

  private PressureChart(Scale scale, boolean isNarrow) {
    this.scale = scale;
    this.isNarrow = isNarrow;
    this.width = isNarrow ? 340.0 : 660.0;
    this.left = isNarrow ? 20.0 : 250.0;
    this.right = isNarrow ? 72.0 : 80.0;
  }

  /** The scale two charts of one job share: pressures above the atmosphere in the unit of the sheet. */
  record Scale(double from, double to, UnitSystem units) {

    static Scale of(
        List<RunResult> results,
        AbsolutePressure supply,
        AbsolutePressure atmosphere,
        Optional<GaugePressure> need,
        UnitSystem units) {
      double full = above(supply, atmosphere, units);
      double least = need.map(pressure -> pressure.in(units.pressureUnit())).orElse(full);
      double low = Math.min(full, least);
      for (RunResult result : results) {
        for (ElementLoss share : shares(result)) {
          low = Math.min(low, above(share.outlet(), atmosphere, units));
        }
      }
      double half = units.either(0.5, 5.0);
      return new Scale(
          Math.max(0.0, half * Math.floor(low / half - 0.6)),
          half * Math.ceil(Math.max(full, least) / half + 0.2),
          units);
    }
  }

  /** One of the two drawings, without the element that shows it in its place. */
  static String of(
      String title,
      RunResult result,
      AbsolutePressure atmosphere,
      Optional<GaugePressure> need,
      Scale scale,
      boolean isNarrow) {
    return new PressureChart(scale, isNarrow).draw(title, result, atmosphere, need);
  }

  /** Both drawings; what the picture shows is told once for each. */
  static String of(
      String title,
      RunResult result,
      AbsolutePressure atmosphere,
      GaugePressure need,
      Scale scale) {
    return "<div class=\"roomy\">\n"
        + of(title, result, atmosphere, Optional.of(need), scale, false)
        + "</div>\n<div class=\"narrow\">\n"
        + of(title, result, atmosphere, Optional.of(need), scale, true)
        + "</div>\n";
  }

  /** The elements that are drawn. */
  static List<ElementLoss> shares(RunResult result) {
    return result.fold(RunResult.Delivered::shares, RunResult.Starved::before);
  }

  private static double above(
      AbsolutePressure pressure, AbsolutePressure atmosphere, UnitSystem units) {
    return pressure.in(units.pressureUnit()) - atmosphere.in(units.pressureUnit());
  }

  private double x(double pressure) {
    return left + (width - left - right) * (pressure - scale.from()) / (scale.to() - scale.from());
  }

  private static String n(double value) {
    return Amounts.fixed(value, 1);
  }

  /** A row of the chart: its name in lines, and where it begins. */
  private final class Row {
    private final List<String> name;
    private final double top;

    Row(String name, double top) {
      this.name = lines(name, isNarrow ? width - 8.0 : left - 14.0);
      this.top = top;
    }

    double height() {
      return isNarrow ? LINE * name.size() + 22.0 : Math.max(28.0, LINE * name.size() + 10.0);
    }

    /** The height of the stroke. */
    double y() {
      return isNarrow ? top + LINE * name.size() + 8.0 : top + 0.5 * height();
    }

    /** Whether a line of the name, which begins at the left, goes as far as that. */
    boolean reaches(double at) {
      return name.stream().anyMatch(line -> 4.0 + LETTER * line.length() > at - 3.0);
    }

    void label() {
      double y = isNarrow ? top + 11.0 : y() - 0.5 * LINE * (name.size() - 1) + 4.0;
      for (String line : name) {
        text(isNarrow ? 4.0 : left - 14.0, y, isNarrow ? "start" : "end", line, "ink");
        y += LINE;
      }
    }
  }

  private String draw(
      String title, RunResult result, AbsolutePressure atmosphere, Optional<GaugePressure> need) {
    List<ElementLoss> shares = shares(result);
    boolean starves = result.fold(delivered -> false, starved -> true);
    List<Row> rows = new ArrayList<>();
    double at = TOP;
    List<String> names = new ArrayList<>(List.of("supply"));
    shares.forEach(share -> names.add(share.name()));
    names.add(result.fold(d -> "at the tool", RunResult.Starved::element));
    for (String name : names) {
      Row row = new Row(name, at);
      rows.add(row);
      at += row.height();
    }
    double bottom = at + 4.0;
    double height = bottom + (isNarrow ? 62.0 : 40.0);
    axis(bottom);
    need.ifPresent(least -> needed(least, bottom, rows));
    List<String> way = new ArrayList<>();
    double now = above(
        shares.isEmpty()
            ? result.fold(d -> d.atSupply(), s -> s.inlet())
            : shares.get(0).inlet(),
        atmosphere,
        scale.units());
    double supply = now;
    double y = rows.get(0).y();
    way.add(n(x(now)) + "," + n(y));
    dot(now, y);
    for (int i = 0; i < shares.size(); i++) {
      ElementLoss share = shares.get(i);
      y = rows.get(i + 1).y();
      double in = above(share.inlet(), atmosphere, scale.units());
      double end = above(share.outlet(), atmosphere, scale.units());
      way.add(n(x(in)) + "," + n(y));
      way.add(n(x(end)) + "," + n(y));
      double set = in - scale.units().pressureUnit().fromSi(share.regulated().pascals());
      out.append("<line class=\"bar\" x1=\"" + n(x(set)) + "\" y1=\"" + n(y) + "\" x2=\""
          + n(x(end)) + "\" y2=\"" + n(y) + "\" stroke-width=\"9\"/>\n");
      text(x(in) + 6.0, y + 4.0, "start", lost(share), "soft");
      now = end;
    }
    y = rows.get(rows.size() - 1).y();
    if (!starves) {
      way.add(n(x(now)) + "," + n(y));
    }
    out.append("<polyline class=\"bar\" points=\"" + String.join(" ", way)
        + "\" fill=\"none\" stroke-width=\"1.4\"/>\n");
    rows.forEach(Row::label);
    if (starves) {
      String stops = result.fold(delivered -> "", AirStops::onChart);
      boolean fits = x(now) - 6.0 > LETTER * stops.length();
      text(fits ? x(now) - 6.0 : left, y + 4.0, fits ? "end" : "start", stops, "warn");
    } else {
      dot(now, y);
      boolean before = x(now) - left > LETTER * told(now).length() + 9.0;
      out.append("<text class=\"ink\" x=\"" + n(x(now) + (before ? -9.0 : 9.0)) + "\" y=\""
          + n(y + 4.0) + "\" text-anchor=\"" + (before ? "end" : "start")
          + "\" font-weight=\"bold\">" + told(now) + "</text>\n");
    }
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + n(width) + " " + n(height)
        + "\" role=\"img\" aria-label=\"" + Html.escaped(shows(title, result, supply, now, need))
        + "\" font-family=\"Arial, Helvetica, DejaVu Sans Condensed, sans-serif\" font-size=\""
        + n(TEXT)
        + "\">\n" + out + "</svg>\n";
  }

  /** What an element loses, with a minus; of less than the last digit its own sign tells enough. */
  private String lost(ElementLoss share) {
    String told = scale.units().say(share.lost());
    return told.startsWith("<") ? told : "−" + told;
  }

  /** What the picture shows, in a sentence for those who do not see it. */
  private String shows(
      String title, RunResult result, double supply, double end, Optional<GaugePressure> need) {
    String needs = need.map(
            least -> " The tool needs " + told(least.in(scale.units().pressureUnit())) + ".")
        .orElse("");
    return title + ": the pressure falls from " + told(supply) + " at the supply to " + told(end)
        + result.<String>fold(
            delivered ->
                " at the tool; most is lost in " + delivered.bottleneck().name() + ".",
            AirStops::besideChart)
        + needs;
  }

  /** A name broken into lines at its blanks; it is never cut short. */
  private static List<String> lines(String name, double room) {
    int most = Math.max(8, (int) (room / LETTER));
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : name.split(" ", -1)) {
      if (line.length() > 0 && line.length() + 1 + word.length() > most) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() == 0 ? "" : " ").append(word);
      while (line.length() > most) { // a word longer than the row goes on below
        lines.add(line.substring(0, most));
        line.delete(0, most);
      }
    }
    lines.add(line.toString());
    return lines;
  }

  private String told(double pressure) {
    UnitSystem units = scale.units();
    GaugePressure above =
        units == UnitSystem.SI ? GaugePressure.ofBar(pressure) : GaugePressure.ofPsi(pressure);
    return units.say(above).replaceFirst("\\(g\\)$|g$", "");
  }

  private void dot(double pressure, double y) {
    out.append(
        "<circle class=\"run\" cx=\"" + n(x(pressure)) + "\" cy=\"" + n(y) + "\" r=\"4\"/>\n");
  }

  private void text(double x, double y, String anchor, String text, String ink) {
    out.append("<text class=\"" + ink + "\" x=\"" + n(x) + "\" y=\"" + n(y) + "\" text-anchor=\""
        + anchor + "\">" + Html.escaped(text) + "</text>\n");
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
    // figures of 34 units each must keep apart
    int each = (int) Math.ceil(34.0 / Math.max(1.0, x(scale.from() + step) - x(scale.from())));
    int count = 0;
    for (double mark = scale.from(); mark <= scale.to() + 1.0e-9 * step; mark += step) {
      double pascals = units.pressureUnit().toSi(mark);
      double beside = units.other().pressureUnit().fromSi(pascals);
      out.append("<line class=\"hair\" x1=\"" + n(x(mark)) + "\" y1=\"" + n(TOP) + "\" x2=\""
          + n(x(mark)) + "\" y2=\"" + n(bottom) + "\" stroke-width=\"1\"/>\n");
      if (count++ % each == 0) {
        text(x(mark), bottom + 14.0, "middle", Amounts.fixed(mark, units.either(1, 0)), "soft");
        text(x(mark), bottom + 29.0, "middle", Amounts.fixed(beside, units.either(0, 1)), "soft");
      }
    }
    String above = "pressure above atmosphere, " + units.pressureUnit().symbol();
    String other = units.either("(psig)", "(bar)");
    if (isNarrow) {
      text(4.0, bottom + 50.0, "start", above + " " + other, "soft");
    } else {
      text(left - 14.0, bottom + 14.0, "end", above, "soft");
      text(left - 14.0, bottom + 29.0, "end", other, "soft");
    }
  }

  /** The dashed upright; on a narrow drawing it leaves out the names that lie across it. */
  private void needed(GaugePressure need, double bottom, List<Row> rows) {
    double at = x(need.in(scale.units().pressureUnit()));
    double from = TOP - 10.0;
    for (Row row : rows) {
      if (isNarrow && row.reaches(at)) {
        upright(at, from, row.top);
        from = row.top + LINE * row.name.size() + 1.0;
      }
    }
    upright(at, from, bottom);
    String words = "the tool needs " + told(need.in(scale.units().pressureUnit()));
    double half = 0.5 * LETTER * words.length();
    double middle = Math.max(half + 2.0, Math.min(width - half - 2.0, at));
    text(middle, TOP - 16.0, "middle", words, "warn");
  }

  private void upright(double at, double from, double to) {
    out.append("<line class=\"need\" x1=\"" + n(at) + "\" y1=\"" + n(from) + "\" x2=\"" + n(at)
        + "\" y2=\"" + n(to) + "\" stroke-width=\"1.4\" stroke-dasharray=\"5 3\"/>\n");
  }
}
