package org.airfit.thread;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;

/**
 * True threads for simulations, made from the tables of the standards and not from the library: evenly within the
 * tolerance, with cut crests, a pipe that ends the cone, form errors and wear.
 */
final class ThreadPieces {

  /** How a kind of thread is made; lengths in mm, {@code taper} the growth of the crest per mm into the thread. */
  record Kind(
      String label,
      Gender gender,
      double pitch,
      int flanks,
      double taper,
      double least,
      double most,
      double slack,
      double pipe,
      double length) {

    boolean isTapered() {
      return taper != 0.0;
    }
  }

  /** One thread that was made: its crest at the end, what has been worn off there, and how long its crests are whole. */
  record Piece(Kind kind, double atEnd, double wornAtEnd, double pipe, double length, double out) {

    /** The crest so far behind the end; wear fades away along the thread. */
    double crest(double depth) {
      double sign = kind.gender == Gender.MALE ? 1.0 : -1.0;
      double whole = Math.min(atEnd + kind.taper * depth, pipe) + out * depth / length;
      return whole - sign * wornAtEnd * Math.max(0.3, 1.0 - depth / length);
    }
  }

  private ThreadPieces() {}

  private static Stream<Row> rows(String file) {
    return Rows.of(ThreadPieces.class, file);
  }

  private static Kind straight(
      String label, Gender gender, double pitch, int flanks, double least, double most) {
    return new Kind(
        label,
        gender,
        pitch,
        flanks,
        0.0,
        least,
        most,
        0.0,
        Double.POSITIVE_INFINITY,
        10.0 * pitch);
  }

  /** NPT, R and G outside, NPT, Rc and G inside. */
  static List<Kind> common() {
    List<Kind> kinds = new ArrayList<>();
    rows("npt_caliper.csv").forEach(row -> {
      double p = 25.4 / row.number("tpi");
      double turn = p / 16.0;
      double first = row.number("male_od_first_thread_mm");
      double slack = row.number("crest_dia_slack_mm");
      double mouth = row.number("female_minor_at_mouth_mm");
      double inside = row.number("female_minor_at_l3_depth_mm");
      double depth = 16.0 * (mouth - inside);
      kinds.add(new Kind(
          row.text("size") + " NPT male",
          Gender.MALE,
          p,
          60,
          0.0625,
          first - turn,
          first + turn,
          slack,
          row.number("male_od_large_end_mm"),
          row.number("full_thread_length_l5_mm")));
      kinds.add(new Kind(
          row.text("size") + " NPT female",
          Gender.FEMALE,
          p,
          60,
          -0.0625,
          mouth - turn,
          mouth + turn,
          slack,
          Double.POSITIVE_INFINITY,
          depth));
    });
    rows("bsp_basic.csv").forEach(row -> {
      double p = row.number("pitch_mm");
      double male = row.number("gauge_tol_half_t1_mm") / 16.0;
      double female = row.number("internal_gauge_tol_half_t2_mm") / 16.0;
      double first = row.number("small_end_major_mm");
      double mouth = row.number("minor_mm");
      kinds.add(new Kind(
          "R " + row.text("size") + " male",
          Gender.MALE,
          p,
          55,
          0.0625,
          first - male,
          first + male,
          0.0,
          Double.POSITIVE_INFINITY,
          row.number("useful_thread_nominal_mm")));
      kinds.add(new Kind(
          "Rc " + row.text("size") + " female",
          Gender.FEMALE,
          p,
          55,
          -0.0625,
          mouth - female,
          mouth + female,
          0.0,
          Double.POSITIVE_INFINITY,
          row.number("internal_useful_min_t_mm")));
    });
    rows("iso228_limits.csv").forEach(row -> {
      double p = 25.4 / row.number("tpi");
      String label = "G " + row.text("size");
      kinds.add(straight(
          label + " male",
          Gender.MALE,
          p,
          55,
          row.number("male_od_min_mm"),
          row.number("male_od_max_mm")));
      kinds.add(straight(
          label + " female",
          Gender.FEMALE,
          p,
          55,
          row.number("female_minor_min_mm"),
          row.number("female_minor_max_mm")));
    });
    return kinds;
  }

  /** NPSM, NPSC and Rp. */
  static List<Kind> rare() {
    List<Kind> kinds = new ArrayList<>();
    rows("npsm_mechanical_thread.csv").forEach(row -> {
      double p = 25.4 / row.number("tpi");
      String label = row.text("size") + " NPSM";
      kinds.add(straight(
          label + " male",
          Gender.MALE,
          p,
          60,
          25.4 * row.number("ext_major_min_in"),
          25.4 * row.number("ext_major_max_in")));
      kinds.add(straight(
          label + " female",
          Gender.FEMALE,
          p,
          60,
          25.4 * row.number("int_minor_min_in"),
          25.4 * row.number("int_minor_max_in")));
    });
    rows("npsc_coupling_thread.csv").forEach(row -> {
      double width = row.number("pitch_dia_max_in") - row.number("pitch_dia_min_in");
      double minor = row.number("minor_dia_min_in");
      kinds.add(straight(
          row.text("size") + " NPSC female",
          Gender.FEMALE,
          25.4 / row.number("tpi"),
          60,
          25.4 * minor,
          25.4 * (minor + width)));
    });
    rows("bsp_basic.csv").forEach(row -> {
      double tolerance = row.number("rp_dia_tol_pm_mm");
      kinds.add(straight(
          "Rp " + row.text("size") + " female",
          Gender.FEMALE,
          row.number("pitch_mm"),
          55,
          row.number("minor_mm") - tolerance,
          row.number("minor_mm") + tolerance));
    });
    return kinds;
  }

  /** Metric, unified, G of odd size and hose. */
  static List<Kind> foreign() {
    List<Kind> kinds = new ArrayList<>();
    rows("metric_thread_limits.csv").forEach(row -> {
      double p = row.number("pitch_mm");
      String label = row.text("size");
      String name = label.indexOf('x') < 0 ? label + "x" + row.text("pitch_mm") : label;
      kinds.add(straight(
          name + " male",
          Gender.MALE,
          p,
          60,
          row.number("ext_6g_major_min_mm"),
          row.number("ext_6g_major_max_mm")));
      kinds.add(straight(
          name + " female",
          Gender.FEMALE,
          p,
          60,
          row.number("int_6h_minor_min_mm"),
          row.number("int_6h_minor_max_mm")));
    });
    rows("un_thread_limits.csv").forEach(row -> {
      double p = row.number("pitch_mm");
      String name = row.text("size") + "-" + row.text("tpi") + " " + row.text("series");
      kinds.add(straight(
          name + " male",
          Gender.MALE,
          p,
          60,
          row.number("ext_2a_major_min_mm"),
          row.number("ext_2a_major_max_mm")));
      kinds.add(straight(
          name + " female",
          Gender.FEMALE,
          p,
          60,
          row.number("int_2b_minor_min_mm"),
          row.number("int_2b_minor_max_mm")));
    });
    rows("other_threads.csv").forEach(row -> {
      String written = row.text("thread");
      int note = written.indexOf(" (");
      String name = note < 0 ? written : written.substring(0, note);
      name = name.equals("3/4-8 NH") ? "1-8 NH" : name;
      int flanks = row.text("form").startsWith("Whitworth") ? 55 : 60;
      kinds.add(straight(
          name + " male",
          Gender.MALE,
          row.number("pitch_mm"),
          flanks,
          row.number("male_major_min_mm"),
          row.number("male_major_max_mm")));
      if (row.has("female_minor_max_mm")) {
        kinds.add(straight(
            name + " female",
            Gender.FEMALE,
            row.number("pitch_mm"),
            flanks,
            row.number("female_minor_min_mm"),
            row.number("female_minor_max_mm")));
      }
    });
    return kinds;
  }

  /** A thread of no standard: any diameter, and a pitch in the usual proportion to it. */
  static Kind strange(Random random) {
    double diameter = 5.0 + 45.0 * random.nextDouble();
    double pitch = 0.6 + random.nextDouble() * Math.min(2.4, 0.08 * diameter);
    Gender gender = random.nextBoolean() ? Gender.MALE : Gender.FEMALE;
    return straight("strange", gender, pitch, 60, diameter, diameter + 0.2);
  }

  /**
   * Makes a piece.
   *
   * @param random chance
   * @param kind which thread
   * @param worn the share of pieces that are worn
   */
  static Piece make(Random random, Kind kind, double worn) {
    double sign = kind.gender == Gender.MALE ? 1.0 : -1.0;
    double atEnd = kind.least
        + (kind.most - kind.least) * random.nextDouble()
        - sign * kind.slack * random.nextDouble();
    double wear = random.nextDouble() < worn
        ? Math.min(0.15, -0.04 * Math.log(1.0 - random.nextDouble()))
        : 0.0;
    // half of the male NPT are cut on pipe, the others are turned on as a cone
    double pipe =
        random.nextBoolean() ? kind.pipe + 0.05 * random.nextGaussian() : Double.POSITIVE_INFINITY;
    double length = kind.length + (kind.pipe < pipe ? 0.0 : 1.5 * kind.pitch * random.nextDouble());
    return new Piece(kind, atEnd, wear, pipe, length, 0.008 * random.nextGaussian());
  }
}
