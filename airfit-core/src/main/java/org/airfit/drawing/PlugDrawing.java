package org.airfit.drawing;

import static org.airfit.drawing.PlugSvg.FINE;
import static org.airfit.drawing.PlugSvg.INK;
import static org.airfit.drawing.PlugSvg.METAL;
import static org.airfit.drawing.PlugSvg.RULER_LENGTH;
import static org.airfit.drawing.PlugSvg.TEXT;
import static org.airfit.drawing.PlugSvg.escaped;
import static org.airfit.drawing.PlugSvg.fine;
import static org.airfit.drawing.PlugSvg.label;
import static org.airfit.drawing.PlugSvg.n;
import static org.airfit.plug.Dimension.BORE;
import static org.airfit.plug.Dimension.COLLAR_DIAMETER;
import static org.airfit.plug.Dimension.GROOVE_DIAMETER;
import static org.airfit.plug.Dimension.GROOVE_WIDTH;
import static org.airfit.plug.Dimension.INSERTION_LENGTH;
import static org.airfit.plug.Dimension.SHOULDER_DIAMETER;
import static org.airfit.plug.Dimension.TIP_DIAMETER;
import static org.airfit.plug.Dimension.TIP_LENGTH;
import static org.airfit.plug.Dimension.TIP_TO_COLLAR;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.plug.Dimension;
import org.airfit.plug.PlugProfile;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;

/**
 * The outline of a profile to true scale, to hold a plug against, with its dimensions and a ruler to check the printer
 * by.
 *
 * <p>The upper half shows the outside, the lower half is cut open. Edges are drawn sharp, because a profile holds no
 * roundings or chamfers, and the body behind the stop face is only hinted at. The drawing is an SVG element with its
 * size in millimetres: it stands by itself in a file or inside an HTML page.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class PlugDrawing {

  /** Above this line stands the name. */
  static final double HEAD = 17.8;

  private static final double LEFT = 28.0;
  private static final double RIGHT = 24.0;
  private static final double BODY_LENGTH = 9.0;
  private static final double BODY_RISE = 2.5;
  private static final double OUTLINE_TOP = 34.8;
  private static final double UPPER_SHELF = 23.8;
  private static final double LOWER_SHELF = 28.8;
  private static final double ROW = 6.0;
  private static final double HATCH = 1.3;
  private static final double SPAN_TEXT = 13.0;

  private final PlugProfile profile;
  private final UnitSystem units;
  private final double width;
  private final double height;
  private final String svg;

  private PlugDrawing(PlugProfile profile, UnitSystem units, String ifItDiffers) {
    this.profile = profile;
    this.units = units;
    this.width = Math.max(figureWidth(), LEFT + RULER_LENGTH + RIGHT);
    double ruler = HEAD + figureHeight() + 8.0;
    this.height = ruler + 22.0;

    PlugSvg out = new PlugSvg(
        width,
        height,
        "Outline of the plug " + profile.displayName()
            + " to true scale: from outside above, cut open below, with its nine sizes");
    head(out);
    figure(out);
    ruler(out, ruler, ifItDiffers);
    this.svg = out.close();
  }

  /**
   * Draws a profile.
   *
   * @param profile a profile that knows every {@link Dimension}
   * @return the drawing, its sizes and its ruler in millimetres
   * @throws IllegalArgumentException if dimensions are missing; the message names them
   */
  public static PlugDrawing of(PlugProfile profile) {
    return of(profile, UnitSystem.SI);
  }

  /**
   * Draws a profile with its sizes and its ruler in millimetres or in inches.
   *
   * @param profile a profile that knows every {@link Dimension}
   * @param units the units
   * @return the drawing
   * @throws IllegalArgumentException if dimensions are missing; the message names them
   */
  public static PlugDrawing of(PlugProfile profile, UnitSystem units) {
    Objects.requireNonNull(profile, "profile");
    Objects.requireNonNull(units, "units");
    Set<Dimension> missing = missing(profile);
    if (!missing.isEmpty()) {
      throw new IllegalArgumentException(
          "dimensions of profile " + profile.id() + " must be complete for a drawing, missing: "
              + missing.stream().map(Dimension::toString).collect(Collectors.joining(", "))
              + "; add them, or do without the drawing");
    }
    return new PlugDrawing(
        profile, units, " this sheet: print again at 100 %, not fitted to the page.");
  }

  /**
   * Draws the same for a screen: what is to be done where the ruler differs is told in words for a screen.
   *
   * @return the drawing, of the same size
   */
  public PlugDrawing onScreen() {
    return new PlugDrawing(profile, units, " this drawing: stretch it until they match.");
  }

  /**
   * Obtains what a profile lacks for a drawing.
   *
   * @param profile the profile
   * @return the dimensions it does not know, in the order of {@link Dimension}; empty if it can be drawn
   */
  public static Set<Dimension> missing(PlugProfile profile) {
    Objects.requireNonNull(profile, "profile");
    Set<Dimension> missing = EnumSet.allOf(Dimension.class);
    missing.removeAll(profile.dimensions().keySet());
    return missing;
  }

  /** {@return the profile drawn} */
  public PlugProfile profile() {
    return profile;
  }

  /** {@return the width of the drawing on paper} */
  public Length width() {
    return Length.ofMillimetres(width);
  }

  /** {@return the height of the drawing on paper} */
  public Length height() {
    return Length.ofMillimetres(height);
  }

  /** {@return the drawing as one SVG element; its units are millimetres} */
  public String svg() {
    return svg;
  }

  /** The width on paper of the outline with its sizes. */
  double figureWidth() {
    return LEFT + mm(INSERTION_LENGTH) + BODY_LENGTH + RIGHT;
  }

  /** The height on paper of the outline with its sizes, without name and ruler. */
  double figureHeight() {
    return axis() + radius() + 3 * ROW - HEAD + 3.0;
  }

  /** Draws the outline with its sizes, from {@link #HEAD} downward. */
  void figure(PlugSvg out) {
    double axis = axis();
    metal(out, axis);
    body(out, axis, radius());
    axisLine(out, axis);
    diameters(out, axis);
    bore(out, axis);
    lengths(out, axis, axis + radius());
  }

  private double axis() {
    return OUTLINE_TOP + radius();
  }

  private double radius() {
    return Math.max(mm(COLLAR_DIAMETER), mm(SHOULDER_DIAMETER)) / 2.0 + BODY_RISE;
  }

  private double mm(Dimension dimension) {
    return dimension == TIP_LENGTH
        ? profile.tipLengthToEdge().millimetres()
        : profile.spread(dimension).orElseThrow().nominal().millimetres();
  }

  private String size(Dimension dimension) {
    return units == UnitSystem.SI
        ? Digits.fixed(mm(dimension), 2)
        : Digits.fixed(mm(dimension) / 25.4, 3);
  }

  /** A stretch of the outline with one outside diameter. */
  record Stretch(double from, double to, double outside) {}

  List<Stretch> stretches() {
    double groove = mm(TIP_LENGTH) + mm(GROOVE_WIDTH);
    Stretch collar = new Stretch(mm(TIP_TO_COLLAR), mm(TIP_LENGTH), mm(COLLAR_DIAMETER));
    List<Stretch> stretches = new ArrayList<>();
    addUnlessEmpty(stretches, new Stretch(0.0, mm(TIP_TO_COLLAR), mm(TIP_DIAMETER)));
    stretches.add(collar); // even if it is only a ridge
    addUnlessEmpty(stretches, new Stretch(mm(TIP_LENGTH), groove, mm(GROOVE_DIAMETER)));
    addUnlessEmpty(stretches, new Stretch(groove, mm(INSERTION_LENGTH), mm(SHOULDER_DIAMETER)));
    return stretches;
  }

  private static void addUnlessEmpty(List<Stretch> stretches, Stretch stretch) {
    if (stretch.to > stretch.from) {
      stretches.add(stretch);
    }
  }

  private void head(PlugSvg out) {
    out.text(4.0, 7.0, "start", 4.0, "font-weight=\"bold\"", escaped(profile.displayName()));
    out.text(
        4.0,
        11.6,
        "start",
        TEXT,
        fine(),
        "Sizes " + escaped(profile.provenance().toString()) + ".");
    out.text(
        4.0,
        11.6 + PlugSvg.LINE,
        "start",
        TEXT,
        fine(),
        "Nominal sizes in " + units.either("mm", "inches") + ", scale 1:1.");
    out.rule(4.0, HEAD, width - 4.0, HEAD, FINE, 0.13);
  }

  private void metal(PlugSvg out, double axis) {
    double inner = mm(BORE) / 2.0;
    StringBuilder upper = new StringBuilder("M" + n(LEFT) + " " + n(axis));
    StringBuilder hatch = new StringBuilder();
    StringBuilder steps = new StringBuilder();
    StringBuilder lower = new StringBuilder();
    List<Stretch> stretches = stretches();
    double before = 0.0;
    for (Stretch stretch : stretches) {
      double from = LEFT + stretch.from;
      double to = LEFT + stretch.to;
      double r = stretch.outside / 2.0;
      upper.append(" L").append(n(from)).append(' ').append(n(axis - r));
      upper.append(" L").append(n(to)).append(' ').append(n(axis - r));
      lower
          .append(lower.length() == 0 ? "M" : " L")
          .append(n(from))
          .append(' ')
          .append(n(axis + r));
      lower.append(" L").append(n(to)).append(' ').append(n(axis + r));
      if (before > 0.0) { // an edge seen from outside
        double seen = Math.max(before, r);
        steps
            .append('M')
            .append(n(from))
            .append(' ')
            .append(n(axis - seen))
            .append('V')
            .append(n(axis));
      }
      hatch(hatch, from, to, axis + inner, axis + r);
      before = r;
    }
    double end = LEFT + mm(INSERTION_LENGTH);
    upper.append(" L").append(n(end)).append(' ').append(n(axis)).append('Z');
    String cut = lower + " L" + n(end) + " " + n(axis + inner) + " L" + n(LEFT) + " "
        + n(axis + inner) + "Z";
    out.path(upper.toString(), METAL, INK, 0.0);
    out.path(hatch.toString(), "none", "#9aa5ac", 0.12);
    out.path(steps.toString(), "none", INK, 0.25);
    out.path(cut, "none", INK, 0.4);
    String outline = upper.substring(0, upper.length() - 1);
    out.path(outline, "none", INK, 0.4);
    // the face of the tip below the axis, and the bore seen through the cut
    out.rule(LEFT, axis, LEFT, axis + inner, INK, 0.25);
    out.rule(end, axis, end, axis + inner, INK, 0.25);
  }

  /** Lines at 45°, one family for all stretches, clipped to one rectangle. */
  private static void hatch(
      StringBuilder out, double left, double right, double top, double bottom) {
    double first = Math.ceil((left - bottom) / HATCH) * HATCH;
    for (double c = first; c <= right - top; c += HATCH) { // the line x − y = c
      double x1 = Math.max(left, c + top);
      double x2 = Math.min(right, c + bottom);
      if (x2 > x1) {
        out.append('M')
            .append(n(x1))
            .append(' ')
            .append(n(x1 - c))
            .append('L')
            .append(n(x2))
            .append(' ')
            .append(n(x2 - c));
      }
    }
  }

  private void body(PlugSvg out, double axis, double radius) {
    double from = LEFT + mm(INSERTION_LENGTH);
    double to = from + BODY_LENGTH;
    double wave = radius / 3.0;
    double shoulder = mm(SHOULDER_DIAMETER) / 2.0;
    String shape = "M" + n(from) + " " + n(axis - shoulder) + "V" + n(axis - radius) + "H" + n(to)
        + wave(to, wave, axis - radius, axis) + wave(to, wave, axis, axis + radius) + "H" + n(from)
        + "V" + n(axis + shoulder);
    out.dashed(shape, FINE, 0.18, "1.2 0.7");
    out.text(to + 3.0, axis - radius + 2.4, "start", TEXT, fine(), "body of");
    out.text(to + 3.0, axis - radius + 6.2, "start", TEXT, fine(), "any shape");
  }

  private static String wave(double x, double reach, double from, double to) {
    double middle = 0.5 * (from + to);
    return "C" + n(x + reach) + " " + n(middle) + " " + n(x - reach) + " " + n(middle) + " " + n(x)
        + " " + n(to);
  }

  private void axisLine(PlugSvg out, double axis) {
    out.dashed(
        "M" + n(LEFT - 4.0) + " " + n(axis) + "H"
            + n(LEFT + mm(INSERTION_LENGTH) + BODY_LENGTH + 4.0),
        FINE,
        0.15,
        "5 0.8 0.8 0.8");
  }

  private void diameters(PlugSvg out, double axis) {
    double groove = mm(TIP_LENGTH) + mm(GROOVE_WIDTH) / 2.0;
    double shoulder = (mm(TIP_LENGTH) + mm(GROOVE_WIDTH) + mm(INSERTION_LENGTH)) / 2.0;
    leader(out, TIP_DIAMETER, mm(TIP_TO_COLLAR) / 2.0, axis, LOWER_SHELF, "end");
    leader(
        out, COLLAR_DIAMETER, (mm(TIP_TO_COLLAR) + mm(TIP_LENGTH)) / 2.0, axis, UPPER_SHELF, "end");
    leader(out, GROOVE_DIAMETER, groove, axis, UPPER_SHELF, "start");
    leader(out, SHOULDER_DIAMETER, shoulder, axis, LOWER_SHELF, "start");
  }

  private void leader(
      PlugSvg out, Dimension dimension, double at, double axis, double shelf, String anchor) {
    double x = LEFT + at;
    double y = axis - mm(dimension) / 2.0;
    double reach = anchor.equals("end") ? -17.0 : 17.0;
    out.path("M" + n(x) + " " + n(y) + "V" + n(shelf) + "h" + n(reach), "none", FINE, 0.15);
    out.arrow(x, y, 0, 1);
    out.text(
        x + (anchor.equals("end") ? -0.6 : 0.6),
        shelf - 1.2,
        anchor,
        TEXT,
        "",
        label(dimension, "⌀ " + size(dimension)));
  }

  private void bore(PlugSvg out, double axis) {
    double x = LEFT - 7.0;
    double r = mm(BORE) / 2.0;
    out.path(
        "M" + n(LEFT - 0.8) + " " + n(axis + r) + "H" + n(x - 1.2) + "M" + n(x) + " " + n(axis + r)
            + "V" + n(axis - r) + "M" + n(LEFT - 0.8) + " " + n(axis - r) + "H" + n(x - 1.2),
        "none",
        FINE,
        0.15);
    out.arrow(x, axis + r, 0, 1);
    out.arrow(x, axis - r, 0, -1);
    out.text(x - 1.2, axis + 0.9, "end", TEXT, "", label(BORE, "⌀ " + size(BORE)));
    // the bore itself is hidden in the upper half
    out.dashed(
        "M" + n(LEFT) + " " + n(axis - r) + "H" + n(LEFT + mm(INSERTION_LENGTH)),
        FINE,
        0.18,
        "1.6 0.9");
  }

  private void lengths(PlugSvg out, double axis, double bottom) {
    double groove = mm(TIP_LENGTH) + mm(GROOVE_WIDTH);
    double first = bottom + ROW - 1.0;
    extension(out, 0.0, axis + mm(TIP_DIAMETER) / 2.0, first + 2 * ROW);
    extension(out, mm(TIP_TO_COLLAR), axis + mm(COLLAR_DIAMETER) / 2.0, first);
    extension(out, mm(TIP_LENGTH), axis + mm(COLLAR_DIAMETER) / 2.0, first + ROW);
    extension(out, groove, axis + mm(SHOULDER_DIAMETER) / 2.0, first);
    extension(out, mm(INSERTION_LENGTH), bottom, first + 2 * ROW);
    span(out, TIP_TO_COLLAR, 0.0, mm(TIP_TO_COLLAR), first);
    span(out, GROOVE_WIDTH, mm(TIP_LENGTH), groove, first);
    span(out, TIP_LENGTH, 0.0, mm(TIP_LENGTH), first + ROW);
    span(out, INSERTION_LENGTH, 0.0, mm(INSERTION_LENGTH), first + 2 * ROW);
  }

  private static void extension(PlugSvg out, double at, double from, double to) {
    out.rule(LEFT + at, from + 0.8, LEFT + at, to + 1.0, FINE, 0.15);
  }

  private void span(PlugSvg out, Dimension dimension, double from, double to, double y) {
    double x1 = LEFT + from;
    double x2 = LEFT + to;
    if (to - from > SPAN_TEXT + 1.0) {
      out.rule(x1, y, x2, y, FINE, 0.15);
      out.arrow(x1, y, -1, 0);
      out.arrow(x2, y, 1, 0);
      out.text(0.5 * (x1 + x2), y - 1.1, "middle", TEXT, "", label(dimension, size(dimension)));
      return;
    }
    // too narrow: arrows from outside, the text beside them on the free side; other lines give way
    // to it
    boolean left = from == 0.0;
    double edge = left ? x1 - 3.0 - SPAN_TEXT : x2 + 3.0;
    out.rule(left ? edge : x1 - 4.0, y, left ? x2 + 4.0 : edge + SPAN_TEXT, y, FINE, 0.15);
    out.arrow(x1, y, 1, 0);
    out.arrow(x2, y, -1, 0);
    out.box(edge - 0.4, y - 3.7, SPAN_TEXT + 0.4, 3.3, "#ffffff");
    out.text(edge, y - 1.1, "start", TEXT, "", label(dimension, size(dimension)));
  }

  private void ruler(PlugSvg out, double y, String ifItDiffers) {
    out.rulerAcross(LEFT, y, units);
    out.sentence(
        4.0,
        y + 11.5,
        width - 8.0,
        "Lay a steel rule on this one. If they differ, do not hold a plug against" + ifItDiffers);
  }
}
