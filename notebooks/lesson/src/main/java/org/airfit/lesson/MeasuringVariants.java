package org.airfit.lesson;

import static org.airfit.lesson.Draw.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Variants of what is measured: plugs, threads, and the statistics of a set (lessons 1, 2 and 9). */
final class MeasuringVariants {

  private static final double MM = 25.4;

  /** Tip diameter, tip length and groove width of the yard's kinds [mm], as lesson 1 lists them. */
  private static final Map<String, double[]> KINDS = Map.of(
      "Tern", new double[] {11.90, 16.20, 3.60},
      "Gannet", new double[] {11.94, 16.30, 5.20},
      "Skua", new double[] {9.20, 19.50, 4.40});

  private static final List<String> NAMES = List.of("Tern", "Gannet", "Skua");

  /** Student's t for 95 of 100, two-sided, by the number of pieces; tables of statistics. */
  private static final Map<Integer, Double> STUDENT =
      Map.of(4, 3.182, 5, 2.776, 6, 2.571, 7, 2.447, 8, 2.365);

  /**
   * A thread: name, diameter over its first crest [mm], threads per inch, whether it is tapered.
   */
  record KnownThread(String name, double crest, double perInch, boolean tapered) {}

  /** Sizes with the pipe's diameter [in] and threads per inch of ASME B1.20.1. */
  private static final Map<String, double[]> NPT = Map.of(
      "1/8", new double[] {0.405, 27.0},
      "1/4", new double[] {0.540, 18.0},
      "3/8", new double[] {0.675, 18.0},
      "1/2", new double[] {0.840, 14.0},
      "3/4", new double[] {1.050, 14.0},
      "1", new double[] {1.315, 11.5});

  private static final List<String> SIZES = List.of("1/8", "1/4", "3/8", "1/2", "3/4", "1");

  /** Sizes of the 55° families: gauge diameter [mm], gauge length of R [mm], threads per inch; ISO 7-1, ISO 228-1. */
  private static final Map<String, double[]> WHITWORTH = Map.of(
      "1/4", new double[] {13.157, 6.0, 19.0},
      "3/8", new double[] {16.662, 6.4, 19.0},
      "1/2", new double[] {20.955, 8.2, 14.0},
      "3/4", new double[] {26.441, 9.5, 14.0});

  private MeasuringVariants() {}

  /** What a table of this class holds for a key that is in it. */
  private static <K, V> V in(Map<K, V> table, K key) {
    return Objects.requireNonNull(table.get(key));
  }

  static Variant of(String id, Draw draw) {
    return switch (id) {
      case "1a" -> misfit(id, draw);
      case "1b" -> oneReading(id, draw);
      case "1c" -> bestReading(id, draw);
      case "1d" -> whichKind(id, draw);
      case "2a" -> threadsPerInch(id, draw);
      case "2b" -> whichThread(id, draw);
      case "2c" -> seal(id, draw);
      case "2d" -> pitchDiameter(id, draw);
      case "9a" -> mean(id, draw);
      case "9b" -> nextPiece(id, draw);
      case "9c" -> standsOut(id, draw);
      case "9d" -> leaveOut(id, draw);
      default -> throw new IllegalArgumentException("no variants of " + id);
    };
  }

  private static Variant misfit(String id, Draw draw) {
    double nominal = draw.number(8.0, 16.0, 0.02);
    double parts = draw.number(0.03, 0.06, 0.01);
    double reading = draw.number(0.013, 0.033, 0.01);
    double off = draw.number(0.02, 0.20, 0.01) * (draw.coin() ? 1.0 : -1.0);
    double scatter = Math.sqrt(parts * parts + reading * reading);
    return new Variant(
        id,
        text(
            "A tip reads %.2f mm. The nominal tip of the kind is %.2f mm, its parts vary by %.2f mm, and the reading"
                + " is uncertain by %.3f mm. How many standard deviations is it off, and does the plug fit the kind?",
            nominal + off, nominal, parts, reading),
        text(
            "%.1f standard deviations: %s",
            Math.abs(off) / scatter, Math.abs(off) / scatter <= 2.0 ? "it fits" : "it hardly fits"),
        text(
            "scatter = √(%.2f² + %.3f²) = %.4f mm; misfit = %.2f / %.4f = %.2f. Up to 2 is usual.",
            parts, reading, scatter, Math.abs(off), scatter, Math.abs(off) / scatter));
  }

  /** What lesson 1 reads of a kind, how much parts vary and how uncertain a reading is [mm]. */
  private static final List<String> READ = List.of("tip diameter", "tip length", "groove width");

  private static final double[] PARTS = {0.03, 0.06, 0.06};
  private static final double[] READING = {0.013, 0.062, 0.062};

  /** More standard deviations than this a kind is not off, by the lesson. */
  private static final double USUAL = 2.0;

  private static Variant oneReading(String id, Draw draw) {
    int which;
    double reads;
    do {
      which = draw.one(List.of(0, 1, 2));
      reads = in(KINDS, draw.one(NAMES))[which] + draw.number(-0.06, 0.06, 0.01);
    } while (left(which, reads).isEmpty() || isDoubtful(which, reads));
    List<String> left = left(which, reads);
    String next = left.size() == 1
        ? "any of the other two, because one dimension alone names no kind"
        : "the groove width, because there they differ most";
    double scatter = Math.hypot(PARTS[which], READING[which]);
    double told = reads;
    int read = which;
    return new Variant(
        id,
        text(
            "You have read one dimension of a plug: its %s is %.2f mm. The reading is uncertain by %.3f mm, and parts"
                + " vary by %.2f mm. Which of the yard's kinds are off by 2 standard deviations or less? Which of tip"
                + " diameter, tip length and groove width do you read next, and why?",
            READ.get(which), reads, READING[which], PARTS[which]),
        String.join(" and ", left) + "; " + next,
        text("Scatter √(%.2f² + %.3f²) = %.4f mm. ", PARTS[which], READING[which], scatter)
            + NAMES.stream()
                .map(name -> text(
                    "%s: %.2f / %.4f = %.1f",
                    name,
                    Math.abs(told - in(KINDS, name)[read]),
                    scatter,
                    Math.abs(told - in(KINDS, name)[read]) / scatter))
                .collect(Collectors.joining("; "))
            + ". Plugs that are not in the list may have the same size.");
  }

  private static double misfit(String name, int which, double reads) {
    return Math.abs(reads - in(KINDS, name)[which]) / Math.hypot(PARTS[which], READING[which]);
  }

  private static List<String> left(int which, double reads) {
    return NAMES.stream().filter(name -> misfit(name, which, reads) <= USUAL).toList();
  }

  /** Whether a kind is so near to the limit that rounding on the way decides. */
  private static boolean isDoubtful(int which, double reads) {
    return NAMES.stream().anyMatch(name -> Math.abs(misfit(name, which, reads) - USUAL) < 0.1);
  }

  private static Variant bestReading(String id, Draw draw) {
    List<String> names = List.of("tip diameter", "groove width", "bore");
    List<Double> parts = List.of(0.03, 0.06, 0.06);
    List<Double> reading = List.of(0.013, 0.062, 0.037);
    List<Double> apart = new ArrayList<>();
    List<Double> sure = new ArrayList<>();
    int best;
    do {
      apart.clear();
      sure.clear();
      for (int i = 0; i < names.size(); i++) {
        apart.add(draw.number(0.1, 1.5, 0.05));
        sure.add(apart.get(i) / Math.hypot(parts.get(i), reading.get(i)));
      }
      best = IntStream.range(0, names.size())
          .reduce(0, (one, other) -> sure.get(other) > sure.get(one) ? other : one);
    } while (!clear(sure, best));
    return new Variant(
        id,
        text(
            "A plug is one of two kinds. They differ by %.2f mm in the tip diameter (parts vary by 0.03 mm, the reading"
                + " is uncertain by 0.013 mm), by %.2f mm in the groove width (0.06 and 0.062 mm) and by %.2f mm in the"
                + " bore (0.06 and 0.037 mm). Which one reading tells them apart most surely?",
            apart.get(0), apart.get(1), apart.get(2)),
        names.get(best),
        IntStream.range(0, names.size())
                .mapToObj(i -> text(
                    "%s: %.2f / √(%.2f² + %.3f²) = %.0f",
                    names.get(i), apart.get(i), parts.get(i), reading.get(i), sure.get(i)))
                .collect(Collectors.joining("; "))
            + ".");
  }

  private static boolean clear(List<Double> sure, int best) {
    return IntStream.range(0, sure.size())
        .allMatch(i -> i == best || sure.get(i) < 0.8 * sure.get(best));
  }

  private static Variant whichKind(String id, Draw draw) {
    String kind = draw.one(List.of("Tern", "Gannet", "Skua", "none of these"));
    double[] sizes = KINDS.getOrDefault(kind, new double[] {
      draw.number(9.9, 11.3, 0.05), draw.number(17.2, 18.6, 0.05), draw.number(3.9, 4.1, 0.05)
    });
    double[] reads = new double[sizes.length];
    for (int i = 0; i < sizes.length; i++) {
      reads[i] = sizes[i] + draw.number(-0.03, 0.03, 0.01);
    }
    return new Variant(
        id,
        text(
            "A plug has a tip diameter of %.2f mm, a tip length of %.2f mm and a groove of %.2f mm. Which of the yard's"
                + " kinds agrees with all three? (The sizes are in the table of the lesson.)",
            reads[0], reads[1], reads[2]),
        kind,
        NAMES.stream()
                .map(name -> text(
                    "%s: off by %.2f, %.2f and %.2f mm",
                    name,
                    Math.abs(reads[0] - in(KINDS, name)[0]),
                    Math.abs(reads[1] - in(KINDS, name)[1]),
                    Math.abs(reads[2] - in(KINDS, name)[2])))
                .collect(Collectors.joining("; "))
            + ". Up to 0.1 mm is usual. Sizes that agree do not prove a safe joint.");
  }

  private static Variant threadsPerInch(String id, Draw draw) {
    double perInch = draw.one(List.of(27.0, 18.0, 14.0, 11.5, 28.0, 19.0, 11.0));
    double five = Math.round(100.0 * (5.0 * MM / perInch + draw.number(-0.02, 0.02, 0.01))) / 100.0;
    return new Variant(
        id,
        text("Five pitches of a thread read %.2f mm. How many threads per inch is that?", five),
        text("%s per inch", plain(perInch)),
        text("5 × 25.4 / %.2f = %.2f, so %s.", five, 5.0 * MM / five, plain(perInch)));
  }

  /** The threads that a variant of 2b may be: their first crests by the formulas of the lesson. */
  static List<KnownThread> threads() {
    List<KnownThread> threads = new ArrayList<>();
    for (String size : List.of("1/4", "3/8", "1/2", "3/4")) {
      double[] npt = in(NPT, size);
      double small = npt[0] - (0.05 * npt[0] + 1.1) / npt[1];
      threads.add(new KnownThread(size + " NPT", MM * (small + 0.8 / npt[1]), npt[1], true));
      double[] whitworth = in(WHITWORTH, size);
      threads.add(
          new KnownThread("R " + size, whitworth[0] - whitworth[1] / 16.0, whitworth[2], true));
      threads.add(new KnownThread("G " + size, whitworth[0], whitworth[2], false));
    }
    return threads;
  }

  private static Variant whichThread(String id, Draw draw) {
    KnownThread thread = draw.one(threads());
    double first = thread.crest() + draw.number(-0.02, 0.02, 0.01);
    double grown = thread.tapered() ? draw.number(0.5, 0.7, 0.02) : draw.number(-0.02, 0.02, 0.01);
    double five = 5.0 * MM / thread.perInch() + draw.number(-0.02, 0.02, 0.01);
    String same = threads().stream()
        .filter(other -> other.perInch() == thread.perInch())
        .map(other -> text("%s %.2f mm", other.name(), other.crest()))
        .collect(Collectors.joining(", "));
    return new Variant(
        id,
        text(
            "A male thread measures %.2f mm over its first crest, %.2f mm over its last crest, and %.2f mm over five"
                + " pitches. Which thread is it?",
            first, first + grown, five),
        thread.name() + " male",
        text(
            "5 × 25.4 / %.2f = %.1f per inch. It %s. First crests of this pitch: %s.",
            five,
            5.0 * MM / five,
            thread.tapered()
                ? text("grows by %.2f mm, so it is tapered", grown)
                : "does not grow, so it is parallel",
            same));
  }

  private static Variant seal(String id, Draw draw) {
    List<String> choice = draw.one(List.of(
        List.of(
            "A G 3/8 male is turned into a G 3/8 female",
            "on the face, by a washer or ring",
            "Two parallel threads leave a gap along the flanks; they only hold the parts together."),
        List.of(
            "A 1/2 NPT male is turned into a 1/2 NPT female, with sealant",
            "on the thread, with its sealant",
            "Two tapered threads wedge; the sealant fills the spiral gap between crest and root."),
        List.of(
            "An R 1/4 male is turned into an Rp 1/4 female, with sealant",
            "on the thread, with its sealant",
            "The tapered male wedges into the parallel female; the sealant fills what is left."),
        List.of(
            "A swivel nut with a 37° cone is tightened on a flare",
            "on the cone",
            "The nut only pulls the two cones together. Its thread needs no sealant.")));
    return new Variant(
        id,
        choice.get(0) + ". The joint is sound. Where does it seal?",
        choice.get(1),
        choice.get(2));
  }

  private static Variant pitchDiameter(String id, Draw draw) {
    String size = draw.one(SIZES);
    double pipe = in(NPT, size)[0];
    double perInch = in(NPT, size)[1];
    double inner = 0.05 * pipe + 1.1;
    return new Variant(
        id,
        text(
            "Calculate the pitch diameter at the small end, E0, of %s NPT: pipe diameter %.3f in, %s threads per inch."
                + " (Five decimals.)",
            size, pipe, plain(perInch)),
        text("%.5f in", pipe - inner / perInch),
        text(
            "%.3f − (0.05 × %.3f + 1.1) / %s = %.3f − %.5f / %s.",
            pipe, pipe, plain(perInch), pipe, inner, plain(perInch)));
  }

  private static double[] pieces(Draw draw, int count) {
    double nominal = draw.number(10.0, 20.0, 0.1);
    double[] pieces = new double[count];
    do {
      for (int i = 0; i < count; i++) {
        pieces[i] = Math.round(100.0 * (nominal + draw.number(-0.10, 0.10, 0.01))) / 100.0;
      }
    } while (deviation(pieces) < 0.02);
    return pieces;
  }

  private static double average(double... pieces) {
    double sum = 0.0;
    for (double piece : pieces) {
      sum += piece;
    }
    return sum / pieces.length;
  }

  private static double deviation(double... pieces) {
    double mean = average(pieces);
    double sum = 0.0;
    for (double piece : pieces) {
      sum += (piece - mean) * (piece - mean);
    }
    return Math.sqrt(sum / (pieces.length - 1));
  }

  private static String listed(double... pieces) {
    return IntStream.range(0, pieces.length)
        .mapToObj(i -> text("%.2f", pieces[i]))
        .collect(Collectors.joining(", "));
  }

  private static Variant mean(String id, Draw draw) {
    double[] pieces = pieces(draw, draw.one(List.of(4, 5, 6)));
    return new Variant(
        id,
        text(
            "%d pieces of one kind read %s mm. What are their mean and their standard deviation?",
            pieces.length, listed(pieces)),
        text("%.3f mm and %.3f mm", average(pieces), deviation(pieces)),
        text(
            "Their sum divided by %d is %.3f. The squares of the distances from it add up to %.5f; divided by %d, and"
                + " the root of that.",
            pieces.length,
            average(pieces),
            deviation(pieces) * deviation(pieces) * (pieces.length - 1),
            pieces.length - 1));
  }

  /** How far from the mean of some pieces the next can lie in 95 of 100 cases. */
  static double next(int count, double deviation) {
    return in(STUDENT, count) * deviation * Math.sqrt(1.0 + 1.0 / count);
  }

  private static Variant nextPiece(String id, Draw draw) {
    int count = draw.one(List.of(4, 5, 6, 7, 8));
    double deviation = draw.number(0.02, 0.12, 0.005);
    return new Variant(
        id,
        text(
            "The standard deviation of %d pieces is %.3f mm. How far from their mean can the next piece lie, in 95 of"
                + " 100 cases? (t = %.3f)",
            count, deviation, in(STUDENT, count)),
        text("%.3f mm", next(count, deviation)),
        text("%.3f × %.3f × √(1 + 1/%d).", in(STUDENT, count), deviation, count));
  }

  private static Variant standsOut(String id, Draw draw) {
    double[] pieces = pieces(draw, 5);
    double limit = next(5, deviation(pieces));
    boolean out = draw.coin();
    double away = out ? limit * draw.number(1.5, 2.5, 0.1) : limit * draw.number(0.1, 0.6, 0.1);
    double sixth = Math.round(100.0 * (average(pieces) + (draw.coin() ? away : -away))) / 100.0;
    return new Variant(
        id,
        text(
            "Five pieces read %s mm. A sixth piece reads %.2f mm. Does it lie where the next piece lies in 95 of 100"
                + " cases? (t = 2.776)",
            listed(pieces), sixth),
        out ? "no: it stands out" : "yes",
        text(
            "The mean is %.3f and the standard deviation %.3f mm. The next piece lies within %.3f mm of the mean; this"
                + " one is %.3f mm away.",
            average(pieces), deviation(pieces), limit, Math.abs(sixth - average(pieces))));
  }

  /** What is found out about a piece that stands out, whether that is a cause to leave it out, and why. */
  private static final List<List<String>> FOUND = List.of(
      List.of(
          "Its tip is worn flat on one side",
          "leave it out",
          "Wear is a cause that does not depend on the number"),
      List.of(
          "Without it the mean is nearer to the catalogue",
          "keep it",
          "A size that one would like to have is no cause; the set would look better than it is"),
      List.of(
          "It has another groove than the rest",
          "leave it out",
          "It is of another kind, whatever it reads"),
      List.of(
          "It was read again, with the same result, and nothing is wrong with it",
          "keep it",
          "Somebody has to be the largest or the smallest, and a reading that repeats is a good reading"),
      List.of(
          "The caliper was not at zero when it was read, and the piece is gone",
          "leave it out",
          "The reading is known to be wrong, for a cause outside the number"));

  private static Variant leaveOut(String id, Draw draw) {
    double[] five = pieces(draw, 5);
    double limit = next(5, deviation(five));
    double away = (draw.coin() ? 1.0 : -1.0) * limit * draw.number(1.5, 2.5, 0.1);
    double[] six = Arrays.copyOf(five, 6);
    six[5] = Math.round(100.0 * (average(five) + away)) / 100.0;
    List<String> found = draw.one(FOUND);
    double[] kept = "keep it".equals(found.get(1)) ? six : five;
    return new Variant(
        id,
        text(
            "Six pieces read %s mm. The last one stands out. %s. Do you keep it or leave it out, and why? Which mean and"
                + " which standard deviation go into the set?",
            listed(six), found.get(0)),
        text("%s: %.3f mm and %.3f mm", found.get(1), average(kept), deviation(kept)),
        text("%s. So %d pieces count. Write down what was found.", found.get(2), kept.length));
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? text("%.0f", value) : text("%.1f", value);
  }
}
