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

  private static List<String> texts(ThreadDrawing drawing) {
    return elements(drawing, "text").stream().map(Element::text).toList();
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

  @Test
  void the_outline_of_a_turn_is_that_of_the_standards() {
    for (ThreadForm form : ThreadForm.values()) {
      double half = 0.5 * form.heightOverPitch();
      assertThat(ToothKernels.offset(form, 0.0)).isCloseTo(half, within(1.0e-12));
      assertThat(ToothKernels.offset(form, 0.5)).isCloseTo(-half, within(1.0e-12));
      assertThat(ToothKernels.offset(form, 0.25)).isCloseTo(0.0, within(1.0e-12));
      // the slope of a flank is the cotangent of half the flank angle
      double slope = (ToothKernels.offset(form, 0.24) - ToothKernels.offset(form, 0.26)) / 0.02;
      assertThat(slope)
          .isCloseTo(
              1.0 / Math.tan(Math.toRadians(0.5 * form.flankAngleDegrees())), within(1.0e-9));
    }
    // an arc joins its flank without a step: 1e-6 of the printed radius is its last digit
    double reach = 0.137329 * Math.cos(Math.toRadians(27.5));
    assertThat(ToothKernels.offset(ThreadForm.ROUND_55, reach - 1.0e-9))
        .isCloseTo(ToothKernels.offset(ThreadForm.ROUND_55, reach + 1.0e-9), within(2.0e-6));
  }
}
