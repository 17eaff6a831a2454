package org.airfit.drawing;

import static org.airfit.drawing.PlugSvg.BAND;
import static org.airfit.drawing.PlugSvg.FINE;
import static org.airfit.drawing.PlugSvg.READ;
import static org.airfit.drawing.PlugSvg.TEXT;
import static org.airfit.drawing.PlugSvg.fine;
import static org.airfit.drawing.PlugSvg.label;

import org.airfit.internal.Digits;
import org.airfit.plug.ProfileCandidate;
import org.airfit.plug.Residual;
import org.airfit.quantity.LengthUnit;

/** The readings one below the other, each with its deviation from a profile in millimetres and in standard deviations. */
final class DeviationLadder {

  /** How high the row of one reading is [mm]. */
  static final double ROW = 4.8;

  /** How much room the whole takes to the right [mm]. */
  static final double WIDTH = 86.0;

  private static final double PER_SIGMA = 5.0;

  /** A reading further away than so many standard deviations is a triangle. */
  static final double SIGMAS = 4.0;

  private static final double BAND_SIGMAS = 2.0;

  private DeviationLadder() {}

  /** Draws the readings of a candidate from the left edge and from the top down. */
  static void draw(PlugSvg out, ProfileCandidate candidate, double left, double top) {
    double read = left + 19.0;
    double difference = left + 36.0;
    double zero = left + 39.0 + SIGMAS * PER_SIGMA + 2.0;
    double first = top + 5.0;
    double last = first + candidate.residuals().size() * ROW;
    out.text(read, top + 2.6, "end", TEXT, fine(), "read, mm");
    out.text(difference, top + 2.6, "end", TEXT, fine(), "to nominal");
    out.box(
        zero - BAND_SIGMAS * PER_SIGMA, first, 2.0 * BAND_SIGMAS * PER_SIGMA, last - first, BAND);
    for (int sigma = -4; sigma <= 4; sigma += 2) {
      double x = zero + sigma * PER_SIGMA;
      out.rule(x, first, x, last, FINE, sigma == 0 ? 0.3 : 0.1);
      String figure = sigma < 0 ? "−" + -sigma : Integer.toString(sigma);
      out.text(x, top + 2.6, "middle", TEXT, fine(), sigma == 0 ? "0 σ" : figure);
    }
    double y = first;
    for (Residual residual : candidate.residuals()) {
      double middle = y + 0.5 * ROW;
      out.text(left, middle + 0.9, "start", TEXT, "", label(residual.dimension(), ""));
      out.text(
          read,
          middle + 0.9,
          "end",
          TEXT,
          "",
          residual.reading().length().format(LengthUnit.MILLIMETRE, 2).replace(" mm", ""));
      out.text(
          difference, middle + 0.9, "end", TEXT, fine(), signed(residual.differenceMillimetres()));
      double sigmas = residual.sigmas();
      if (Math.abs(sigmas) <= SIGMAS) {
        out.box(zero + sigmas * PER_SIGMA - 0.7, middle - 0.7, 1.4, 1.4, READ);
      } else {
        int side = sigmas > 0.0 ? 1 : -1;
        out.triangle(zero + side * (SIGMAS * PER_SIGMA + 1.5), middle, side, 0);
      }
      y += ROW;
      out.rule(left, y, zero + SIGMAS * PER_SIGMA, y, FINE, 0.08);
    }
  }

  private static String signed(double mm) {
    String size = Digits.fixed(Math.abs(mm), 2);
    return size.equals("0.00") ? size : (mm > 0.0 ? "+" : "−") + size;
  }
}
