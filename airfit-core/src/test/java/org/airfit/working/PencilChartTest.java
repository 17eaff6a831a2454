package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class PencilChartTest {

  private static final ChartAxis Q = ChartAxis.even("q", 0.0, 1.0, 100.0);
  private static final ChartAxis PHI = ChartAxis.even("φ", 0.0, 1.0, 100.0);

  private static double circle(double q) {
    return Math.sqrt(Math.max(0.0, 1.0 - q * q));
  }

  private static final PencilChart QUARTER =
      PencilChart.of("Quarter of a circle", Q, PHI).with("circle", PencilChartTest::circle);

  private static final ChartAxis RE = ChartAxis.logarithmic("Re", 1.0e3, 1.0e5, 80.0);
  private static final ChartAxis LAMBDA = ChartAxis.logarithmic("λ", 0.01, 0.1, 60.0);

  /** Falls on either side of 2300, where it jumps up. */
  private static double jumping(double re) {
    return re < 2300.0 ? 64.0 / re : 0.3164 / Math.pow(re, 0.25);
  }

  private static final PencilChart FRICTION =
      PencilChart.of("Friction", RE, LAMBDA).with("smooth", PencilChartTest::jumping, 2300.0);

  @Test
  void numbers_stand_where_the_ruler_says() {
    assertThat(Q.at(0.37)).isCloseTo(37.0, within(1.0e-12));
    assertThat(RE.at(1.0e4)).isCloseTo(40.0, within(1.0e-12));
    assertThat(RE.at(2.0e3)).isCloseTo(80.0 * Math.log10(2.0) / 2.0, within(1.0e-12));
    for (double at : new double[] {0.0, 13.7, 80.0}) {
      assertThat(RE.at(RE.value(at))).isCloseTo(at, within(1.0e-9));
    }
  }

  private static List<double[]> points(String svg) {
    Matcher group =
        Pattern.compile("data-curve=\"[^\"]*\">\\s*<path d=\"([^\"]+)\"").matcher(svg);
    assertThat(group.find()).isTrue();
    List<double[]> points = new ArrayList<>();
    Matcher number = Pattern.compile("([ML])(-?[0-9.]+) (-?[0-9.]+)").matcher(group.group(1));
    while (number.find()) {
      points.add(new double[] {
        number.group(1).equals("M") ? 1.0 : 0.0,
        Double.parseDouble(number.group(2)),
        Double.parseDouble(number.group(3))
      });
    }
    return points;
  }

  /** Measured in the drawing itself: along every straight piece the curve is nearer than a tenth of what is read. */
  private static void keepsToTheCurve(PencilChart chart, String curve, double jump) {
    double top = ChartSvg.TOP + chart.up().millimetres();
    List<double[]> points = points(chart.toSvg());
    assertThat(points).hasSizeGreaterThan(20);
    for (int i = 1; i < points.size(); i++) {
      if (points.get(i)[0] == 1.0) {
        continue;
      }
      for (int j = 0; j <= 10; j++) {
        double share = j / 10.0;
        double x = (1.0 - share) * points.get(i - 1)[1] + share * points.get(i)[1] - ChartSvg.LEFT;
        double y = top - (1.0 - share) * points.get(i - 1)[2] - share * points.get(i)[2];
        if (Math.abs(x - jump) < 0.01) {
          continue;
        }
        double exact = chart.up().at(chart.read(curve, chart.across().value(x)));
        double beside =
            chart.up().at(chart.read(curve, chart.across().value(Math.max(0.0, x - 0.05))));
        double steep = Math.abs(exact - beside);
        assertThat(y).as("at %s mm", x).isCloseTo(exact, within(0.05 + steep));
      }
    }
  }

  @Test
  void the_curve_is_drawn_to_scale() {
    keepsToTheCurve(QUARTER, "circle", -1.0);
    keepsToTheCurve(FRICTION, "smooth", RE.at(2300.0));
    List<double[]> circle = points(QUARTER.toSvg());
    assertThat(circle.get(0)[1]).isEqualTo(ChartSvg.LEFT);
    assertThat(circle.get(0)[2]).isEqualTo(ChartSvg.TOP);
    assertThat(circle.get(circle.size() - 1)[1]).isEqualTo(ChartSvg.LEFT + 100.0);
    assertThat(circle.get(circle.size() - 1)[2]).isEqualTo(ChartSvg.TOP + 100.0);
  }

  @Test
  void the_drawing_is_as_large_as_it_says() {
    assertThat(QUARTER.toSvg())
        .contains("width=\"118mm\" height=\"115mm\" viewBox=\"0 0 118 115\"")
        .contains("data-curve=\"circle\"");
    // the frame of the axes, 100 mm by 100 mm
    assertThat(QUARTER.toSvg()).contains("d=\"M13 5h100v100h-100Z\"");
  }

  /** Two curves that end close together: their names stand apart, in the order of the curves, a line from each end. */
  @Test
  void several_curves_are_named_behind_their_ends() {
    PencilChart chart =
        PencilChart.of("Two", Q, PHI).with("e = 0.2", x -> 0.51 * x).with("e = 0.1", x -> 0.50 * x);
    String svg = chart.toSvg();
    assertThat(svg).contains("width=\"129mm\"").contains(">e</text>");
    // the lower ends at 50 mm, 105 − 50 down; the higher at 51 mm, its name pushed up to 53.35 mm
    assertThat(svg)
        .contains("d=\"M113 55L115.8 55\"")
        .contains(
            "<text x=\"116.2\" y=\"55.9\" text-anchor=\"start\" font-size=\"2.95\">0.1</text>")
        .contains("d=\"M113 54L115.8 51.65\"")
        .contains(
            "<text x=\"116.2\" y=\"52.55\" text-anchor=\"start\" font-size=\"2.95\">0.2</text>");
    assertThat(PencilChart.of("Two", Q, PHI)
            .with("a", x -> x)
            .with("b", x -> 0.5 * x)
            .toSvg())
        .contains(">a</text>")
        .contains(">b</text>");
  }

  @Test
  void marks_lie_apart_and_name_round_numbers() {
    for (ChartAxis axis : List.of(
        Q,
        RE,
        LAMBDA,
        ChartAxis.logarithmic("λ", 0.015, 0.03, 80.0),
        ChartAxis.even("φ", 0.85, 1.0, 80.0))) {
      List<ChartSvg.Mark> marks = ChartSvg.marks(axis);
      assertThat(marks).hasSizeGreaterThan(10);
      assertThat(marks.stream().filter(mark -> mark.rank() == 0).count())
          .as("%s", axis)
          .isGreaterThan(2);
      double last = Double.NEGATIVE_INFINITY;
      for (ChartSvg.Mark mark : marks) {
        double at = axis.at(mark.value());
        assertThat(at).isBetween(-1.0e-6, axis.millimetres() + 1.0e-6);
        assertThat(at - last).as("%s before %s", axis, mark).isGreaterThan(0.79);
        last = at;
      }
    }
  }

  /** Whoever reads to half a millimetre reads a number that the interval holds. */
  @Test
  void every_reading_is_held() {
    Random random = new Random(61);
    for (int i = 0; i < 20_000; i++) {
      PencilChart chart = i % 2 == 0 ? QUARTER : FRICTION;
      String curve = chart.curves().get(0);
      ChartAxis across = chart.across();
      ChartAxis up = chart.up();
      double at = random.nextDouble() * across.millimetres();
      double wide = Math.min(across.millimetres(), at + 3.0 * random.nextDouble());
      Interval x = new Interval(across.value(at), across.value(wide));
      Interval found = chart.read(curve, x);
      double setOff = at + random.nextDouble() * (wide - at) + random.nextDouble() - 0.5;
      double on = Math.max(0.0, Math.min(across.millimetres(), setOff));
      double height = up.at(chart.read(curve, across.value(on))) + random.nextDouble() - 0.5;
      if (found.isThere()) {
        double read = up.value(Math.max(0.0, Math.min(up.millimetres(), height)));
        assertThat(found.holds(read)).as("%s read at %s in %s", read, x, found).isTrue();
      }
    }
  }

  @Test
  void a_reading_is_as_wide_as_half_a_millimetre_makes_it() {
    Interval level = QUARTER.read("circle", Interval.of(0.0));
    // the circle is level there: half a millimetre below the top, and nothing above it
    assertThat(level.hi()).isCloseTo(1.0, within(1.0e-8));
    assertThat(level.lo()).isCloseTo(Math.sqrt(1.0 - 0.005 * 0.005) - 0.005, within(1.0e-8));
    Interval slope = QUARTER.read("circle", Interval.of(0.6));
    assertThat(slope.width()).isCloseTo(0.01 + 0.01 * 0.75, within(1.0e-4));
    Interval laminar = FRICTION.read("smooth", Interval.of(1500.0));
    assertThat(laminar.hi() / laminar.lo())
        .isCloseTo(Math.pow(10.0, 2.0 / 80.0 + 1.0 / 60.0), within(1.0e-6));
  }

  @Test
  void at_a_jump_both_sides_may_be_read() {
    Interval both = FRICTION.read("smooth", Interval.of(2300.0));
    assertThat(both.holds(64.0 / 2300.0)).isTrue();
    assertThat(both.holds(0.3164 / Math.pow(2300.0, 0.25))).isTrue();
    Interval beyond = FRICTION.read("smooth", Interval.of(3000.0));
    assertThat(beyond.holds(64.0 / 2300.0)).isFalse();
  }

  @Test
  void beyond_the_chart_nothing_is_read() {
    assertThat(QUARTER.read("circle", new Interval(0.9, 1.1)).isThere()).isFalse();
    assertThat(QUARTER.read("circle", Interval.NONE).isThere()).isFalse();
    PencilChart cropped = PencilChart.of("Part of it", Q, ChartAxis.even("φ", 0.8, 1.0, 80.0))
        .with("circle", PencilChartTest::circle);
    assertThat(cropped.read("circle", Interval.of(0.9)).isThere()).isFalse();
    assertThat(cropped.read("circle", Interval.of(0.3)).isThere()).isTrue();
  }

  @Test
  void axes_and_curves_are_refused_with_a_reason() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChartAxis.logarithmic("Re", 0.0, 1.0, 50.0))
        .withMessageContaining("above 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChartAxis.even("x", 1.0, 1.0, 50.0))
        .withMessageContaining("from 1.0 to 1.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChartAxis.even("x", Double.NaN, 1.0, 50.0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChartAxis.even("x", 0.0, 1.0, 19.9))
        .withMessageContaining("[20, 250] mm, was 19.9 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ChartAxis.even("x", 0.0, 1.0, Double.NaN));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> QUARTER.with("circle", PencilChartTest::circle))
        .withMessageContaining("\"circle\" is there");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> QUARTER.read("ellipse", 0.5))
        .withMessageContaining("[circle]");
  }

  @Test
  void axes_compare_by_value_and_tell_themselves() {
    assertThat(ChartAxis.even("q", 0.0, 1.0, 100.0)).isEqualTo(Q).hasSameHashCodeAs(Q);
    assertThat(Q).isNotEqualTo(PHI).isNotEqualTo(ChartAxis.logarithmic("q", 0.1, 1.0, 100.0));
    assertThat(RE).hasToString("Re from 1000.0 to 100000.0, logarithmic, on 80.0 mm");
    assertThat(RE.isLogarithmic()).isTrue();
    assertThat(Q.isLogarithmic()).isFalse();
    assertThat(FRICTION.toString()).startsWith("Friction: Re from").endsWith("[smooth]");
  }
}
