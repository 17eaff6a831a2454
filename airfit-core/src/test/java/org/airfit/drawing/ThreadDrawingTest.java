package org.airfit.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.thread.BsptThread;
import org.airfit.thread.NptThread;
import org.airfit.thread.ThreadForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The drawing is read back as XML, and measured. */
class ThreadDrawingTest {

  /** What the numbers of an SVG are rounded to [mm on paper]. */
  private static final double PAPER = 0.0011;

  static Stream<ThreadDrawing> all() {
    return Stream.concat(
        NptThread.all().stream().map(ThreadDrawing::of),
        BsptThread.all().stream().map(ThreadDrawing::of));
  }

  static Stream<Row> npt() {
    return Rows.of(ThreadDrawingTest.class, "/org/airfit/thread/npt_basic.csv");
  }

  private static final Pattern TAG =
      Pattern.compile("<(/?)([a-z]+)((?: [a-zA-Z0-9-]+=\"[^\"<>]*\")*)(/?)>([^<>]*)");

  private static final Pattern ATTRIBUTE = Pattern.compile(" ([a-zA-Z0-9-]+)=\"([^\"]*)\"");

  /** One element of a drawing. */
  private record Element(String name, Map<String, String> attributes, String text) {

    String attribute(String attribute) {
      return Objects.requireNonNull(attributes.get(attribute), attribute);
    }

    double number(String attribute) {
      return Double.parseDouble(attribute(attribute));
    }
  }

  /** Reads the drawing back, and fails where it is not well formed. */
  private static List<Element> elements(ThreadDrawing drawing) {
    List<Element> elements = new ArrayList<>();
    Deque<String> open = new ArrayDeque<>();
    Matcher tag = TAG.matcher(drawing.svg());
    int end = 0;
    while (tag.find()) {
      assertThat(tag.start()).as("text that is no tag").isEqualTo(end);
      end = tag.end();
      if (!tag.group(1).isEmpty()) {
        assertThat(open.pop()).isEqualTo(tag.group(2));
        continue;
      }
      if (tag.group(4).isEmpty()) {
        open.push(tag.group(2));
      }
      Map<String, String> attributes = new HashMap<>();
      Matcher attribute = ATTRIBUTE.matcher(tag.group(3));
      while (attribute.find()) {
        assertThat(attributes.put(attribute.group(1), attribute.group(2))).isNull();
      }
      elements.add(new Element(tag.group(2), attributes, tag.group(5).strip()));
    }
    assertThat(end).isEqualTo(drawing.svg().length());
    assertThat(open).isEmpty();
    return elements;
  }

  private static List<Element> elements(ThreadDrawing drawing, String name) {
    return elements(drawing).stream()
        .filter(element -> element.name.equals(name))
        .toList();
  }

  private static final Pattern TEXT = Pattern.compile("<text[^>]*>(.*?)</text>");

  /** What can be read, with an index written behind its symbol. */
  private static List<String> texts(ThreadDrawing drawing) {
    return TEXT.matcher(drawing.svg())
        .results()
        .map(text -> text.group(1).replaceAll("<[^>]*>", ""))
        .toList();
  }

  @ParameterizedTest(name = "{index}")
  @MethodSource("all")
  void every_drawing_is_well_formed_fits_a_page_and_stays_on_its_sheet(ThreadDrawing drawing) {
    double width = drawing.width().millimetres();
    double height = drawing.height().millimetres();
    assertThat(elements(drawing).get(0).attribute("viewBox"))
        .isEqualTo("0 0 " + ThreadSvg.n(width) + " " + ThreadSvg.n(height));
    assertThat(width).isLessThanOrEqualTo(190.0);
    assertThat(height).isLessThanOrEqualTo(277.0);
    for (Element text : elements(drawing, "text")) {
      // 0.56 em is the mean width of a Helvetica letter or digit
      double length = 0.56 * text.number("font-size") * text.text().length();
      String anchor = text.attribute("text-anchor");
      double left = text.number("x")
          - (anchor.equals("end") ? length : anchor.equals("middle") ? 0.5 * length : 0.0);
      assertThat(left).as(text.text()).isGreaterThanOrEqualTo(0.0);
      if (!text.text().startsWith("Source")) {
        assertThat(left + length).as(text.text()).isLessThanOrEqualTo(width);
      }
      assertThat(text.number("y")).isBetween(0.0, height);
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("npt")
  void planes_stand_where_the_standard_has_them(Row row) {
    NptThread thread = NptThread.of(NominalThreadSize.parse(row.text("size")));
    ThreadDrawing drawing = ThreadDrawing.of(thread);
    List<Element> dots = elements(drawing, "circle");
    List<Double> places =
        dots.stream().map(dot -> dot.number("cx")).distinct().sorted().toList();
    // E3, E0, E1, E5, E2 from the inner end of the female thread on
    double l3 = row.number("l3_in");
    List<Double> printed = List.of(
        0.0,
        l3,
        l3 + row.number("l1_in"),
        l3 + thread.fullCrestLength().inches(),
        l3 + row.number("l2_in"));
    assertThat(places).hasSize(5);
    for (int i = 0; i < 5; i++) {
      assertThat((places.get(i) - places.get(0)) / drawing.scale() / 25.4)
          .isCloseTo(printed.get(i), within(0.0001 + PAPER / drawing.scale() / 25.4));
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("npt")
  void dots_climb_along_the_pitch_cone(Row row) {
    ThreadDrawing drawing =
        ThreadDrawing.of(NptThread.of(NominalThreadSize.parse(row.text("size"))));
    Map<Boolean, List<Element>> byPart = elements(drawing, "circle").stream()
        .collect(Collectors.partitioningBy(dot -> isMale(drawing, dot)));
    assertThat(byPart.get(true)).hasSize(4);
    assertThat(byPart.get(false)).hasSize(3);
    for (List<Element> part : byPart.values()) {
      Element first = part.get(0);
      Element last = part.get(part.size() - 1);
      // 1:16 on the diameter is 1:32 on the radius
      assertThat(first.number("cy") - last.number("cy"))
          .isCloseTo((last.number("cx") - first.number("cx")) / 32.0, within(2.0 * PAPER));
    }
  }

  private static boolean isMale(ThreadDrawing drawing, Element dot) {
    double half = drawing.thread().height().millimetres() * drawing.scale();
    return dot.number("cy") > 52.0 + 9.0 + 2.0 * half + 6.0;
  }

  @Test
  void every_dimension_of_the_standard_stands_in_the_drawing() {
    assertThat(texts(ThreadDrawing.of(NptThread.of(NominalThreadSize.ONE_HALF))))
        .contains(
            "1/2 NPT",
            "E0",
            "⌀ 19.264",
            "E1",
            "⌀ 19.772",
            "E2",
            "⌀ 20.111",
            "E3",
            "⌀ 18.924",
            "E5",
            "pipe D",
            "⌀ 21.336",
            "L1 hand tight 8.128",
            "L2 effective 13.556",
            "L3 wrench 5.443",
            "crest ⌀ 20.716",
            "root ⌀ 17.813",
            "p 1.8143");
    assertThat(texts(ThreadDrawing.of(BsptThread.of(NominalThreadSize.ONE_HALF))))
        .contains(
            "R and Rc 1/2",
            "gauge plane d2",
            "⌀ 19.793",
            "a gauge length 8.200",
            "a + f useful thread 13.200");
    assertThat(texts(ThreadDrawing.of(BsptThread.of(NominalThreadSize.ONE))))
        .contains("a 10.400", "f 6.400", "a + f 16.800");
  }

  @ParameterizedTest
  @CsvSource({"1/16, 10", "1/2, 5", "2, 2.5", "4, 2"})
  void the_scale_is_one_a_scale_rule_has(String size, double scale) {
    ThreadDrawing drawing = ThreadDrawing.of(NptThread.of(NominalThreadSize.parse(size)));
    assertThat(drawing.scale()).isEqualTo(scale);
    assertThat(drawing.svg()).contains("Scale " + size(scale) + " : 1");
  }

  private static String size(double scale) {
    return scale == Math.rint(scale) ? Integer.toString((int) scale) : Double.toString(scale);
  }

  /** A point of an outline [mm on paper]. */
  private record Point(double x, double y) {}

  /** The bends of the outline of the female thread, then those of the male, as drawn in ink. */
  private static List<List<Point>> outlines(ThreadDrawing drawing) {
    return elements(drawing, "path").stream()
        .filter(path -> path.attribute("fill").equals("none"))
        .map(path -> path.attribute("d"))
        .filter(d -> d.split("L", -1).length > 12)
        .map(d -> {
          List<Point> points = new ArrayList<>();
          Matcher point = Pattern.compile("[ML]([0-9.-]+) ([0-9.-]+)").matcher(d);
          while (point.find()) {
            points.add(
                new Point(Double.parseDouble(point.group(1)), Double.parseDouble(point.group(2))));
          }
          return points;
        })
        .toList();
  }

  /**
   * ASME B1.20.1 and ISO 7-1: the line that halves the angle between the flanks is perpendicular to the axis, so both
   * flanks stand 30° (NPT) or 27.5° (R) from it. Square to the cone one would stand 1.79° nearer, the other further.
   * Every end of a straight flank is printed to {@code PAPER}; that over its length is the tolerance.
   */
  @ParameterizedTest(name = "{index}")
  @MethodSource("all")
  void both_flanks_stand_half_the_angle_from_a_line_square_to_the_axis(ThreadDrawing drawing) {
    double half = 0.5 * drawing.thread().family().flankAngleDegrees();
    double height = drawing.scale() * drawing.thread().height().millimetres();
    List<List<Point>> outlines = outlines(drawing);
    assertThat(outlines).hasSize(2);
    int flanks = 0;
    for (List<Point> outline : outlines) {
      for (int i = 1; i < outline.size(); i++) {
        double along = outline.get(i).x - outline.get(i - 1).x;
        double across = Math.abs(outline.get(i).y - outline.get(i - 1).y);
        if (across > 0.45 * height) { // an arc has shorter steps, and so has what runs out
          flanks++;
          double tolerance = Math.toDegrees(2.0 * PAPER / across);
          assertThat(Math.toDegrees(Math.atan2(along, across))).isCloseTo(half, within(tolerance));
        }
      }
    }
    assertThat(flanks).isGreaterThanOrEqualTo(12);
  }

  /**
   * The printed height of the sharp triangle of a taper thread: the flanks of a drawn turn, prolonged, meet half of it
   * above and below the pitch line, and from there to the next such place is one pitch.
   */
  @Test
  void the_flanks_of_a_drawn_turn_meet_at_the_height_the_standards_print() {
    // as thread_forms.csv has them, read in two prints
    Map<ThreadForm, Double> printed =
        Map.of(ThreadForm.FLAT_60, 0.865743, ThreadForm.ROUND_55, 0.960237);
    printed.forEach((form, high) -> {
      double down = (ToothKernels.offset(form, 0.24) - ToothKernels.offset(form, 0.26)) / 0.02;
      double up = (ToothKernels.offset(form, 0.76) - ToothKernels.offset(form, 0.74)) / 0.02;
      double right = ToothKernels.offset(form, 0.25) / down + 0.25; // where the pitch line is met
      double left = 0.75 - ToothKernels.offset(form, 0.75) / up;
      // parted by half a pitch on the pitch line, and the sharp root lies between
      assertThat(left - right).isCloseTo(0.5, within(1.0e-12));
      assertThat(2.0 * (left - right) * down * up / (down + up)).isCloseTo(high, within(1.0e-6));
      // radius along the axis: the pitch line climbs by 1/32, on either side the flanks slope alike
      assertThat(down - 1.0 / 32.0).isCloseTo(up + 1.0 / 32.0, within(1.0e-9));
    });
  }

  @Test
  void crests_and_roots_reach_half_the_height_from_the_pitch_line() {
    for (ThreadForm form : ThreadForm.values()) {
      double half = 0.5 * form.heightOverPitch();
      assertThat(ToothKernels.offset(form, 0.0)).isCloseTo(half, within(1.0e-12));
      assertThat(ToothKernels.offset(form, 0.49)).isCloseTo(-half, within(2.0e-4));
      // an arc whose tangent lies along the cone rises 7e-5 above its middle
      for (int i = 0; i <= 1000; i++) {
        assertThat(Math.abs(ToothKernels.offset(form, i / 1001.0))).isLessThan(half + 1.0e-4);
      }
    }
    // an arc joins its flank without a step; r is the printed 0.137278 P to 0.05 %
    double reach = 0.137224 * Math.cos(Math.toRadians(27.5));
    assertThat(ToothKernels.offset(ThreadForm.ROUND_55, reach - 1.0e-6))
        .isCloseTo(ToothKernels.offset(ThreadForm.ROUND_55, reach + 1.0e-6), within(1.0e-5));
  }

  /** The plane E5 and every other stands clear of the words beside the bore. */
  @ParameterizedTest(name = "{index}")
  @MethodSource("all")
  void no_plane_strikes_through_the_size_of_the_bore(ThreadDrawing drawing) {
    Element bore = elements(drawing, "text").stream()
        .filter(text -> text.text().startsWith("bore"))
        .findFirst()
        .orElseThrow();
    double left = bore.number("x");
    double right = left + 0.56 * bore.number("font-size") * bore.text().length();
    double high = bore.number("y");
    Pattern upright = Pattern.compile("M([0-9.]+) ([0-9.]+)L\\1 ([0-9.]+)");
    int tried = 0;
    for (Element path : elements(drawing, "path")) {
      Matcher line = upright.matcher(path.attribute("d"));
      if (line.matches()
          && Double.parseDouble(line.group(2)) < high
          && Double.parseDouble(line.group(3)) > high - 2.0) {
        tried++;
        double x = Double.parseDouble(line.group(1));
        assertThat(x < left - 0.5 || x > right).as("a line at %s", x).isTrue();
      }
    }
    assertThat(tried).isGreaterThanOrEqualTo(2);
  }

  /** 7 pt is 2.47 mm. */
  @ParameterizedTest(name = "{index}")
  @MethodSource("all")
  void no_letter_is_smaller_than_7_pt(ThreadDrawing drawing) {
    assertThat(drawing.svg()).doesNotContainPattern("font-size=\"([01]|2\\.[0-3]|2\\.4[0-6])");
  }
}
