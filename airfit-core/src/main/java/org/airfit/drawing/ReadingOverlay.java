package org.airfit.drawing;

import static org.airfit.drawing.PlugSvg.BAND;
import static org.airfit.drawing.PlugSvg.FINE;
import static org.airfit.drawing.PlugSvg.INK;
import static org.airfit.drawing.PlugSvg.METAL;
import static org.airfit.drawing.PlugSvg.READ;
import static org.airfit.drawing.PlugSvg.TEXT;
import static org.airfit.drawing.PlugSvg.escaped;
import static org.airfit.drawing.PlugSvg.fine;
import static org.airfit.drawing.PlugSvg.label;
import static org.airfit.drawing.PlugSvg.n;
import static org.airfit.plug.Dimension.BORE;
import static org.airfit.plug.Dimension.GROOVE_WIDTH;
import static org.airfit.plug.Dimension.INSERTION_LENGTH;
import static org.airfit.plug.Dimension.TIP_LENGTH;
import static org.airfit.plug.Dimension.TIP_TO_COLLAR;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.measure.PartSpread;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ProfileCandidate;
import org.airfit.plug.Residual;
import org.airfit.quantity.Length;

/**
 * The readings of one plug laid over the profiles it may be, with their deviations magnified.
 *
 * <p>A deviation of a few hundredths of a millimetre cannot be seen at true scale. Here the outline stands at its
 * nominal size, and each reading beside its edge, as many times further away as {@link #magnification()} says. The band
 * around an edge is where about 19 of 20 plugs of that profile would read, wear allowed for. A ladder beside it counts
 * the same deviations in standard deviations.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class ReadingOverlay {

  private static final int MOST_CANDIDATES = 3;

  /** Further than this from its edge nothing is drawn: it would lie on the next edge. */
  private static final double REACH = 4.0;

  private static final int[] MAGNIFICATIONS = {100, 50, 20, 10, 5, 2};
  private static final double BAND_SIGMAS = 2.0;

  private static final double EDGE = 4.0;
  private static final double LEFT = 16.0;
  private static final double HEAD = 15.0;
  private static final double TITLE = 9.0;
  private static final double ABOVE = 9.0;
  private static final double TIER = 6.0;
  private static final double FOOT = 3.0;
  private static final double GAP = 5.0;

  private final Identification identification;
  private final List<ProfileCandidate> candidates;
  private final int magnification;
  private final double ladder;
  private final double width;
  private final double height;
  private final String svg;

  private ReadingOverlay(Identification identification, List<ProfileCandidate> candidates) {
    this.identification = identification;
    this.candidates = candidates;
    this.magnification = magnification(candidates.get(0));
    double longest = 0.0;
    double high = HEAD + FOOT;
    for (ProfileCandidate candidate : candidates) {
      if (isDrawable(candidate)) {
        longest = Math.max(longest, mm(candidate.profile(), INSERTION_LENGTH));
      }
      high += blockHeight(candidate);
    }
    this.ladder = longest == 0.0 ? EDGE : LEFT + longest + 12.0;
    this.width = Math.max(ladder + DeviationLadder.WIDTH + EDGE, 150.0);
    this.height = high + legendHeight();
    this.svg = draw();
  }

  /**
   * Lays the readings of an answer over the profiles that remain likely, three at most; over the nearest one if none
   * does.
   *
   * @param identification the answer
   * @return the drawing
   * @throws IllegalArgumentException if nothing was read that those profiles know
   */
  public static ReadingOverlay of(Identification identification) {
    Objects.requireNonNull(identification, "identification");
    List<ProfileCandidate> shown = identification.likely().isEmpty()
        ? identification.candidates().subList(0, 1)
        : identification.likely();
    List<ProfileCandidate> compared = shown.stream()
        .filter(candidate -> !candidate.residuals().isEmpty())
        .limit(MOST_CANDIDATES)
        .toList();
    if (compared.isEmpty()) {
      throw new IllegalArgumentException(
          "readings that can be compared must be at least 1 for an overlay, were none; measure a "
              + "dimension that the set knows first");
    }
    return new ReadingOverlay(identification, compared);
  }

  /** {@return the answer whose readings are drawn} */
  public Identification identification() {
    return identification;
  }

  /** {@return the profiles they are laid over, the likeliest first} */
  public List<ProfileCandidate> candidates() {
    return candidates;
  }

  /** {@return how many times as large as they are deviations are drawn} */
  public int magnification() {
    return magnification;
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

  /** Where one dimension is drawn: how far the allowed ends of it and the reading lie from its nominal [mm]. */
  private record Deviation(double low, double high, double read) {

    static Deviation of(Residual residual) {
      double nominal = residual.spread().nominal().millimetres();
      double scatter = BAND_SIGMAS * residual.scatter().millimetres();
      double wear =
          residual.allowedWear().millimetres() * residual.dimension().wear().sign();
      double low = 0.0;
      double high = 0.0;
      if (residual.spread() instanceof PartSpread.Limits limits) {
        low = limits.low().millimetres() - nominal;
        high = limits.high().millimetres() - nominal;
      }
      return new Deviation(
          low - scatter + Math.min(0.0, wear),
          high + scatter + Math.max(0.0, wear),
          residual.differenceMillimetres());
    }

    double furthest() {
      return Math.max(Math.abs(read), Math.max(high, -low));
    }
  }

  /** The largest round one that keeps all of the likeliest profile within reach. */
  private static int magnification(ProfileCandidate likeliest) {
    double furthest = 0.0;
    for (Residual residual : likeliest.residuals()) {
      furthest = Math.max(
          furthest, share(residual.dimension()) * Deviation.of(residual).furthest());
    }
    for (int magnification : MAGNIFICATIONS) {
      if (magnification * furthest <= REACH) {
        return magnification;
      }
    }
    return 1;
  }

  /** Half of a diameter's deviation lies on each side. */
  private static double share(Dimension dimension) {
    return isLength(dimension) ? 1.0 : 0.5;
  }

  private static boolean isLength(Dimension dimension) {
    return dimension == TIP_LENGTH
        || dimension == INSERTION_LENGTH
        || dimension == GROOVE_WIDTH
        || dimension == TIP_TO_COLLAR;
  }

  private static double mm(PlugProfile profile, Dimension dimension) {
    return dimension == TIP_LENGTH
        ? profile.tipLengthToEdge().millimetres()
        : profile.spread(dimension).orElseThrow().nominal().millimetres();
  }

  private static boolean isDrawable(ProfileCandidate candidate) {
    return PlugDrawing.missing(candidate.profile()).isEmpty();
  }

  private static double radius(PlugProfile profile) {
    return 0.5
        * Math.max(
            mm(profile, Dimension.COLLAR_DIAMETER), mm(profile, Dimension.SHOULDER_DIAMETER));
  }

  private static double blockHeight(ProfileCandidate candidate) {
    double list = TITLE + 5.0 + candidate.residuals().size() * DeviationLadder.ROW;
    double figure = isDrawable(candidate)
        ? TITLE + ABOVE + 2.0 * radius(candidate.profile()) + 2.0 * TIER + 5.0
        : 0.0;
    return Math.max(list, figure) + GAP;
  }

  private double legendHeight() {
    return legend().stream()
        .mapToDouble(each ->
            PlugSvg.LINE * Paragraph.lines(each, TEXT, width - 2.0 * EDGE).size())
        .sum();
  }

  private String draw() {
    PlugSvg out = new PlugSvg(
        width,
        height,
        "Readings of a plug laid over " + candidates.size()
            + (candidates.size() == 1 ? " profile" : " profiles"));
    out.text(EDGE, 7.0, "start", 4.0, "font-weight=\"bold\"", "How the readings lie");
    out.text(
        EDGE, 11.6, "start", TEXT, fine(), escaped(identification.referenceSet().toString()));
    double y = HEAD;
    for (ProfileCandidate candidate : candidates) {
      out.rule(EDGE, y, width - EDGE, y, FINE, 0.13);
      block(out, candidate, y);
      y += blockHeight(candidate);
    }
    out.rule(EDGE, y, width - EDGE, y, FINE, 0.13);
    double line = y + 4.8;
    for (String sentence : legend()) {
      line = out.sentence(EDGE, line, width - 2.0 * EDGE, sentence);
    }
    return out.close();
  }

  /** What the marks mean, of those alone that are drawn. */
  private List<String> legend() {
    List<String> legend = new ArrayList<>();
    if (candidates.stream().anyMatch(ReadingOverlay::isDrawable)) {
      legend.add("Outline at nominal size, 1:1. Red line: as read, its deviation drawn "
          + (magnification == 1 ? "as large as it is" : magnification + " times as large")
          + ", half of it for a diameter.");
    }
    if (candidates.stream().anyMatch(ReadingOverlay::hasSquare)) {
      legend.add("Red square: the reading, in standard deviations σ from nominal.");
    }
    legend.add("Shaded: where about 19 of 20 plugs of the profile would read, wear allowed for.");
    if (candidates.stream().anyMatch(this::hasTriangle)) {
      legend.add("Red triangle: further away than can be drawn here.");
    }
    return legend;
  }

  private static boolean hasSquare(ProfileCandidate candidate) {
    return candidate.residuals().stream()
        .anyMatch(residual -> Math.abs(residual.sigmas()) <= DeviationLadder.SIGMAS);
  }

  private boolean hasTriangle(ProfileCandidate candidate) {
    return candidate.residuals().stream()
        .anyMatch(residual -> Math.abs(residual.sigmas()) > DeviationLadder.SIGMAS
            || (isDrawable(candidate)
                && magnification
                        * share(residual.dimension())
                        * Math.abs(residual.differenceMillimetres())
                    > REACH));
  }

  private void block(PlugSvg out, ProfileCandidate candidate, double top) {
    out.text(
        EDGE,
        top + 5.6,
        "start",
        3.4,
        "",
        "<tspan font-weight=\"bold\">" + escaped(candidate.profile().displayName())
            + "</tspan><tspan dx=\"2.5\" font-size=\"2.95\" " + fine() + ">"
            + escaped(Digits.percent(candidate.probability()))
            + (candidate.fits() ? "" : "; does not fit") + "</tspan>");
    if (isDrawable(candidate)) {
      figure(out, candidate, top + TITLE + ABOVE + radius(candidate.profile()));
    }
    DeviationLadder.draw(out, candidate, ladder, top + TITLE);
  }

  private void figure(PlugSvg out, ProfileCandidate candidate, double axis) {
    PlugProfile profile = candidate.profile();
    List<PlugDrawing.Stretch> stretches = PlugDrawing.of(profile).stretches();
    StringBuilder upper = new StringBuilder("M" + n(LEFT) + " " + n(axis));
    StringBuilder lower = new StringBuilder("M" + n(LEFT) + " " + n(axis));
    for (PlugDrawing.Stretch stretch : stretches) {
      for (double x : new double[] {LEFT + stretch.from(), LEFT + stretch.to()}) {
        upper.append('L').append(n(x)).append(' ').append(n(axis - 0.5 * stretch.outside()));
        lower.append('L').append(n(x)).append(' ').append(n(axis + 0.5 * stretch.outside()));
      }
    }
    double end = LEFT + mm(profile, INSERTION_LENGTH);
    String closing = "L" + n(end) + " " + n(axis);
    out.path(upper + closing, METAL, INK, 0.25);
    out.path(lower + closing, METAL, INK, 0.25);
    double bore = 0.5 * mm(profile, BORE);
    for (double edge : new double[] {axis - bore, axis + bore}) {
      out.dashed("M" + n(LEFT) + " " + n(edge) + "H" + n(end), FINE, 0.18, "1.6 0.9");
    }
    out.dashed(
        "M" + n(LEFT - 4.0) + " " + n(axis) + "H" + n(end + 4.0), FINE, 0.15, "5 0.8 0.8 0.8");
    for (Residual residual : candidate.residuals()) {
      out.groupOf("reading", residual.dimension());
      if (isLength(residual.dimension())) {
        length(out, profile, residual, axis);
      } else {
        diameter(out, profile, residual, axis);
      }
      out.endGroup();
    }
  }

  private void diameter(PlugSvg out, PlugProfile profile, Residual residual, double axis) {
    double groove = mm(profile, TIP_LENGTH) + mm(profile, GROOVE_WIDTH);
    double from;
    double to;
    switch (residual.dimension()) {
      case TIP_DIAMETER -> {
        from = 0.0;
        to = mm(profile, TIP_TO_COLLAR);
      }
      case COLLAR_DIAMETER -> {
        from = mm(profile, TIP_TO_COLLAR);
        to = mm(profile, TIP_LENGTH);
      }
      case GROOVE_DIAMETER -> {
        from = mm(profile, TIP_LENGTH);
        to = groove;
      }
      case SHOULDER_DIAMETER -> {
        from = groove;
        to = mm(profile, INSERTION_LENGTH);
      }
      default -> { // the bore shows at the tip
        from = 0.0;
        to = mm(profile, TIP_TO_COLLAR);
      }
    }
    Deviation deviation = Deviation.of(residual);
    double x1 = LEFT + from + 0.5;
    double x2 = LEFT + to - 0.5;
    double edge = axis - 0.5 * mm(profile, residual.dimension());
    double half = 0.5 * magnification;
    double top = edge - half * deviation.high;
    out.box(x1, top, x2 - x1, half * (deviation.high - deviation.low), BAND);
    out.rule(x1, edge, x2, edge, INK, 0.25);
    double read = edge - half * deviation.read;
    if (Math.abs(read - edge) <= REACH) {
      out.rule(x1, read, x2, read, READ, 0.5);
    } else {
      int up = read < edge ? -1 : 1;
      out.triangle(0.5 * (x1 + x2), edge + up * REACH, 0, up);
    }
    double text = residual.dimension() == BORE ? axis - 1.0 : axis - radius(profile) - REACH - 1.0;
    out.text(0.5 * (x1 + x2), text, "middle", TEXT, "", label(residual.dimension(), ""));
  }

  /** Lengths stand below the outline in two tiers, so that neighbours keep apart. */
  private void length(PlugSvg out, PlugProfile profile, Residual residual, double axis) {
    Dimension dimension = residual.dimension();
    double nominal = mm(profile, dimension)
        + (dimension == GROOVE_WIDTH ? mm(profile, TIP_LENGTH) : 0.0); // its front wall as nominal
    boolean near = dimension == TIP_TO_COLLAR || dimension == GROOVE_WIDTH;
    double y1 = axis + radius(profile) + 1.5 + (near ? 0.0 : TIER);
    double y2 = y1 + TIER - 1.5;
    double edge = LEFT + nominal;
    Deviation deviation = Deviation.of(residual);
    out.box(
        edge + magnification * deviation.low,
        y1,
        magnification * (deviation.high - deviation.low),
        y2 - y1,
        BAND);
    out.rule(edge, axis + radius(profile) + 0.6, edge, y2, FINE, 0.18);
    double read = edge + magnification * deviation.read;
    if (Math.abs(read - edge) <= REACH) {
      out.rule(read, y1, read, y2, READ, 0.5);
    } else {
      int right = read > edge ? 1 : -1;
      out.triangle(edge + right * REACH, 0.5 * (y1 + y2), right, 0);
    }
    out.text(edge, y2 + 3.0, "middle", TEXT, "", label(dimension, ""));
  }
}
