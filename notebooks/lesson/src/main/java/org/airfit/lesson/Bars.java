package org.airfit.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Named amounts as horizontal bars, as SVG. Each bar has its name and its number beside it. */
public final class Bars {

  private static final double WIDTH = 680.0;
  private static final double LEAST_NAMES = 160.0;
  private static final double LETTER = 7.6;
  private static final double NUMBERS = 70.0;
  private static final double LINE = 28.0;
  private static final double TOP = 40.0;

  private final String title;
  private final String unit;
  private final int digits;
  private final List<Bar> bars = new ArrayList<>();

  private record Bar(String name, double amount) {}

  private Bars(String title, String unit, int digits) {
    this.title = title;
    this.unit = unit;
    this.digits = digits;
  }

  /**
   * Starts a chart.
   *
   * @param title what it shows
   * @param unit the unit of the amounts
   * @param digits how many digits to write after the point
   * @return the chart, without bars
   */
  public static Bars of(String title, String unit, int digits) {
    return new Bars(title, unit, digits);
  }

  /**
   * Adds a bar below the others.
   *
   * @param name what it is
   * @param amount how long it is, 0 or more
   * @return this
   * @throws IllegalArgumentException if {@code amount} is negative or not finite
   */
  public Bars bar(String name, double amount) {
    if (!(amount >= 0.0 && amount < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "amount must be in [0, infinity), was " + amount + " " + unit);
    }
    bars.add(new Bar(name, amount));
    return this;
  }

  /** {@return the drawing} */
  public String svg() {
    int longest = bars.stream().mapToInt(bar -> bar.name().length()).max().orElse(0);
    double names = Math.max(LEAST_NAMES, 16.0 + LETTER * longest);
    double room = WIDTH - names - NUMBERS;
    double most = bars.stream().mapToDouble(Bar::amount).max().orElse(1.0);
    StringBuilder svg = Drawing.begin(WIDTH, TOP + LINE * bars.size() + 6.0, title);
    Drawing.text(svg, 10, 20, "start", "bold", title + " [" + unit + "]");
    for (int i = 0; i < bars.size(); i++) {
      Bar bar = bars.get(i);
      double y = TOP + LINE * i;
      double length = most > 0.0 ? room * bar.amount() / most : 0.0;
      Drawing.text(svg, names - 8, y + 14, "end", "normal", bar.name());
      Drawing.box(svg, names, y, length, LINE - 10.0);
      String amount = String.format(Locale.ROOT, "%." + digits + "f", bar.amount());
      Drawing.text(svg, names + length + 6, y + 14, "start", "normal", amount);
    }
    return svg.append("</svg>\n").toString();
  }
}
