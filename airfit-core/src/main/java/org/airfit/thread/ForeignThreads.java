package org.airfit.thread;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.source.Source;

/** The foreign threads that are known, see {@link ForeignThread}. */
final class ForeignThreads {

  /** Diameter, coarse pitch, and the fine pitches [mm]: ISO 261, from memory beyond the reference rows. */
  private static final double[][] METRIC = {
    {5, 0.8, 0.5},
    {6, 1, 0.75},
    {7, 1, 0.75},
    {8, 1.25, 1, 0.75},
    {10, 1.5, 1.25, 1, 0.75},
    {12, 1.75, 1.5, 1.25, 1},
    {14, 2, 1.5, 1.25, 1},
    {16, 2, 1.5, 1},
    {18, 2.5, 2, 1.5, 1},
    {20, 2.5, 2, 1.5, 1},
    {22, 2.5, 2, 1.5, 1},
    {24, 3, 2, 1.5, 1},
    {26, Double.NaN, 1.5},
    {27, 3, 2, 1.5, 1},
    {30, 3.5, 3, 2, 1.5, 1},
    {33, 3.5, 3, 2, 1.5}
  };

  /** Metric threads of ports and of 24° cones. */
  private static final List<String> METRIC_PORTS = List.of(
      "M8x1", "M10x1", "M12x1.5", "M14x1.5", "M16x1.5", "M18x1.5", "M20x1.5", "M22x1.5", "M24x1.5",
      "M26x1.5", "M27x2", "M30x2", "M33x2");

  private static final List<ForeignGeometry> ALL = make();

  /** Each by its whole name and, where no other has that name, by its short one. */
  private static final Map<String, ForeignGeometry> NAMED = named();

  private ForeignThreads() {}

  static List<ForeignGeometry> all() {
    return ALL;
  }

  private static List<ForeignGeometry> make() {
    List<ForeignGeometry> all = new ArrayList<>();
    for (double[] row : METRIC) {
      for (int i = 1; i < row.length; i++) {
        if (!Double.isNaN(row[i])) {
          String name = "M" + Digits.plain(row[0]) + "x" + Digits.plain(row[i]);
          boolean isPort = METRIC_PORTS.contains(name);
          Optional<String> use =
              isPort ? Optional.of("metric port or 24° cone fitting") : Optional.empty();
          all.add(ForeignGeometry.metric(name, row[0], row[i], isPort, use));
        }
      }
    }
    unified(all);
    Source g = ForeignStandard.PARALLEL_PIPE.source();
    Source recalled = Source.fromMemory("ISO 228-1, rows of sizes that air parts do not have");
    all.add(ForeignGeometry.parallelPipe("G 5/8", 22.911, 14, 0.142, 0.541, g));
    all.add(ForeignGeometry.parallelPipe("G 7/8", 30.201, 14, 0.142, 0.541, g));
    all.add(ForeignGeometry.parallelPipe("G 1-1/8", 37.897, 11, 0.180, 0.640, recalled));
    all.add(ForeignGeometry.parallelPipe("G 1-3/4", 53.746, 11, 0.180, 0.640, recalled));
    all.add(ForeignGeometry.parallelPipe("G 2-1/4", 65.710, 11, 0.217, 0.640, recalled));
    all.add(ForeignGeometry.hose(
        "3/4-11.5 NH",
        "garden hose",
        1.0625,
        11.5,
        0.0170,
        0.0100,
        Source.fromMemory(
            "ASME B1.20.7, 3/4-11.5 NH: limits; size and threads per inch were read")));
    Source fire = ForeignStandard.HOSE.source();
    all.add(ForeignGeometry.hose(
        "1-8 NH", "fire hose, also called 3/4-8 NH", 1.375, 8, 0.0222, 0.0120, fire));
    all.add(ForeignGeometry.hose("1-1/2-9 NH", "fire hose", 1.990, 9, 0.0222, 0.0120, fire));
    return List.copyOf(all);
  }

  private static void unified(List<ForeignGeometry> all) {
    unf(
        all,
        "10",
        0.19,
        32,
        "small pneumatic parts"); // number 10: 0.060 in + 10 × 0.013 in, ASME B1.1
    unf(all, "5/16", 0.3125, 24, "37° and 45° flare for 1/8 tube, O-ring port");
    unf(all, "3/8", 0.375, 24, "37° and 45° flare for 3/16 tube, O-ring port");
    unf(all, "7/16", 0.4375, 20, "37° and 45° flare for 1/4 tube, O-ring port");
    unf(all, "1/2", 0.5, 20, "37° and 45° flare for 5/16 tube, O-ring port");
    unf(all, "9/16", 0.5625, 18, "37° flare for 3/8 tube, O-ring port");
    unf(all, "5/8", 0.625, 18, "45° flare for 3/8 tube");
    unf(all, "3/4", 0.75, 16, "37° and 45° flare for 1/2 tube, O-ring port");
    unf(all, "7/8", 0.875, 14, "37° and 45° flare for 5/8 tube, O-ring port");
    un(all, "1-1/16", 1.0625, 12, "37° flare for 3/4 tube, O-ring port");
    un(all, "1-3/16", 1.1875, 12, "37° flare for 7/8 tube, O-ring port");
    un(all, "1-5/16", 1.3125, 12, "37° flare for 1 tube, O-ring port");
    un(all, "1-5/8", 1.625, 12, "37° flare for 1-1/4 tube, O-ring port");
    un(all, "1-7/8", 1.875, 12, "37° flare for 1-1/2 tube, O-ring port");
    un(all, "2-1/2", 2.5, 12, "37° flare for 2 tube, O-ring port");
    un(all, "11/16", 0.6875, 16, "45° flare for 7/16 tube");
    un(all, "1-1/16", 1.0625, 14, "45° flare for 3/4 tube");
    unf(all, "1-1/4", 1.25, 12, "45° flare for 7/8 tube");
    unf(all, "1-3/8", 1.375, 12, "45° flare for 1 tube");
    un(all, "5/16", 0.3125, 28, "inverted flare for 1/8 tube");
    un(all, "7/16", 0.4375, 24, "inverted flare for 1/4 tube");
    un(all, "11/16", 0.6875, 18, "inverted flare for 7/16 tube");
    un(all, "3/4", 0.75, 18, "inverted flare for 1/2 tube");
    un(all, "7/8", 0.875, 18, "inverted flare for 5/8 tube");
    un(all, "1-1/16", 1.0625, 16, "inverted flare for 3/4 tube");
  }

  private static void unf(
      List<ForeignGeometry> all, String size, double diameter, int threadsPerInch, String use) {
    all.add(ForeignGeometry.unified(
        size + "-" + threadsPerInch + " UNF", diameter, threadsPerInch, true, use));
  }

  private static void un(
      List<ForeignGeometry> all, String size, double diameter, int threadsPerInch, String use) {
    all.add(ForeignGeometry.unified(
        size + "-" + threadsPerInch + " UN", diameter, threadsPerInch, false, use));
  }

  /** Finds by the whole name, a unified one without its series, or a coarse metric one without its pitch. */
  static Optional<ForeignGeometry> find(String name) {
    return Optional.ofNullable(NAMED.get(plain(name)));
  }

  private static Map<String, ForeignGeometry> named() {
    Map<String, ForeignGeometry> named = new HashMap<>();
    ALL.forEach(each -> named.putIfAbsent(plain(each.name()), each));
    ALL.forEach(each -> named.putIfAbsent(shortName(each), each));
    return named;
  }

  private static String shortName(ForeignGeometry each) {
    String name = each.name();
    return switch (each.standard()) {
      // the coarse pitch stands first among those of its diameter
      case METRIC -> plain(name.substring(0, name.indexOf('x')));
      case UNIFIED -> plain(name.substring(0, name.indexOf(' ')));
      case PARALLEL_PIPE, HOSE -> plain(name);
    };
  }

  private static String plain(String name) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i) == '×' ? 'x' : name.charAt(i);
      if (!Character.isWhitespace(c) && !Character.isSpaceChar(c)) {
        out.append(c);
      }
    }
    return out.toString().toUpperCase(Locale.ROOT);
  }
}
