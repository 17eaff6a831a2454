package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A number from elsewhere beside ours: asserts that they agree, and leaves a line in the verification report.
 *
 * <p>When the tests end, the report is written to {@code target}: {@code verification.md}, a page a chapter in
 * {@code verification}, and {@code sources.md}. Their committed copies are in {@code docs}.
 */
public final class Comparison {

  private static final Map<String, List<Line>> CHAPTERS = new TreeMap<>();

  /** Where the forks of one run of the tests leave their lines for one another. */
  private static final Path RUN = Path.of(
      "target",
      "comparisons",
      System.getProperty("airfit.run", "process-" + ProcessHandle.current().pid()));

  static {
    Runtime.getRuntime().addShutdownHook(new Thread(Comparison::write));
  }

  private record Line(
      String what,
      double published,
      double ours,
      String unit,
      double allowed,
      String why,
      Evidence evidence) {

    double share() {
      return allowed == 0.0 ? 0.0 : Math.abs(ours - published) / allowed;
    }

    void write(String chapter, DataOutputStream out) throws IOException {
      out.writeUTF(chapter);
      out.writeUTF(what);
      out.writeDouble(published);
      out.writeDouble(ours);
      out.writeUTF(unit);
      out.writeDouble(allowed);
      out.writeUTF(why);
      out.writeUTF(evidence.kind().name());
      out.writeUTF(evidence.source());
    }

    static Line read(DataInputStream in) throws IOException {
      return new Line(
          in.readUTF(),
          in.readDouble(),
          in.readDouble(),
          in.readUTF(),
          in.readDouble(),
          in.readUTF(),
          new Evidence(Evidence.Kind.valueOf(in.readUTF()), in.readUTF()));
    }
  }

  /** The same whichever fork has a line. */
  private static final Comparator<Line> ORDER = Comparator.comparing(Line::what)
      .thenComparing(line -> line.evidence().source())
      .thenComparingDouble(Line::published)
      .thenComparingDouble(Line::ours);

  private final String chapter;
  private final String what;
  private final double published;
  private final String unit;
  private final Evidence evidence;

  private Comparison(
      String chapter, String what, double published, String unit, Evidence evidence) {
    this.chapter = chapter;
    this.what = what;
    this.published = published;
    this.unit = unit;
    this.evidence = evidence;
  }

  /**
   * Starts a comparison.
   *
   * @param chapter the heading it stands under, such as "Threads: NPT basic dimensions"
   * @param what the row, such as "1/2, E0"; unique in its chapter
   * @param published the published value
   * @param unit its unit, "-" for none
   * @param evidence how it came about, and where it stands
   * @return the comparison, which still wants our value
   */
  public static Comparison of(
      String chapter, String what, double published, String unit, Evidence evidence) {
    return new Comparison(chapter, what, published, unit, evidence);
  }

  /**
   * Asserts an absolute agreement.
   *
   * @param ours our value in the same unit
   * @param allowed the largest difference allowed
   * @param why the reason of the allowance, from outside our code
   */
  public void isMetBy(double ours, double allowed, String why) {
    Sources.links(
        evidence.source()); // a source without a key fails here, where the test can be seen
    synchronized (CHAPTERS) {
      CHAPTERS
          .computeIfAbsent(chapter, any -> new ArrayList<>())
          .add(new Line(what, published, ours, unit, allowed, why, evidence));
    }
    assertThat(Math.abs(ours - published))
        .as("%s, %s: published %s %s, ours %s (%s)", chapter, what, published, unit, ours, evidence)
        .isLessThanOrEqualTo(allowed);
  }

  /**
   * Asserts a relative agreement.
   *
   * @param ours our value in the same unit
   * @param fraction the largest difference allowed, as a fraction of the published value
   * @param why the reason of the allowance, from outside our code
   */
  public void isMetWithinFraction(double ours, double fraction, String why) {
    isMetBy(ours, fraction * Math.abs(published), why);
  }

  /** Under one lock, so that the fork that ends last writes the report of all. */
  private static void write() {
    try (FileChannel lock = FileChannel.open(
            Path.of("target", "comparisons.lock"),
            StandardOpenOption.CREATE,
            StandardOpenOption.WRITE);
        FileLock held = lock.lock()) {
      if (held.isValid()) {
        report();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void report() {
    Path target = Path.of("target");
    Path pages = target.resolve("verification");
    try {
      Files.createDirectories(pages);
      Files.createDirectories(RUN);
      synchronized (CHAPTERS) {
        withThoseOfOtherForks();
        Files.writeString(target.resolve("verification.md"), index());
        for (Map.Entry<String, List<Line>> chapter : CHAPTERS.entrySet()) {
          Files.writeString(
              pages.resolve(file(chapter.getKey())), page(chapter.getKey(), chapter.getValue()));
        }
      }
      Files.writeString(target.resolve("sources.md"), Sources.page());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Leaves the lines of this fork for the others, and takes those that the others left. */
  private static void withThoseOfOtherForks() throws IOException {
    Path mine = RUN.resolve("fork-" + ProcessHandle.current().pid());
    List<Path> others;
    try (Stream<Path> files = Files.list(RUN)) {
      others = files.filter(file -> !file.equals(mine)).toList();
    }
    try (DataOutputStream out = new DataOutputStream(Files.newOutputStream(mine))) {
      for (Map.Entry<String, List<Line>> chapter : CHAPTERS.entrySet()) {
        for (Line line : chapter.getValue()) {
          line.write(chapter.getKey(), out);
        }
      }
    }
    for (Path other : others) {
      try (DataInputStream in = new DataInputStream(Files.newInputStream(other))) {
        while (in.available() > 0) {
          String chapter = in.readUTF();
          CHAPTERS.computeIfAbsent(chapter, any -> new ArrayList<>()).add(Line.read(in));
        }
      }
    }
  }

  private static String file(String chapter) {
    return chapter.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-") + ".md";
  }

  private static String index() {
    List<Line> all = CHAPTERS.values().stream().flatMap(List::stream).toList();
    StringBuilder out = new StringBuilder("# Verification\n\n");
    out.append(String.format(
        Locale.ROOT,
        """
        airfit's numbers beside the same numbers from elsewhere, %d in all. They are not worth the same:

        | evidence | numbers | what it is |
        |---|--:|---|
        | printed | %d | stands in a standard, a handbook or a paper; airfit computes it |
        | recomputed | %d | another program computed it, from the same equation or by another method |
        | transcribed | %d | a constant of airfit, held against the table it was copied from |
        | recalled | %d | nobody saw it while this was written; never the only check of anything |

        The tests write these pages; nobody edits them. The last column of a page is the difference as a share of what
        is allowed: above 100 %% the build fails. [Sources](sources.md) tells what the keys stand for.

        """,
        all.size(),
        count(all, Evidence.Kind.PRINTED),
        count(all, Evidence.Kind.RECOMPUTED),
        count(all, Evidence.Kind.TRANSCRIBED),
        count(all, Evidence.Kind.RECALLED)));
    out.append(
        "| chapter | printed | recomputed | transcribed | recalled | largest share of what is allowed |\n");
    out.append("|---|--:|--:|--:|--:|--:|\n");
    CHAPTERS.forEach((chapter, lines) -> {
      out.append("| [")
          .append(chapter)
          .append("](verification/")
          .append(file(chapter))
          .append(") |");
      for (Evidence.Kind kind : Evidence.Kind.values()) {
        long count = count(lines, kind);
        out.append(' ').append(count == 0 ? "" : count).append(" |");
      }
      out.append(' ')
          .append(percent(lines.stream().mapToDouble(Line::share).max().orElse(0.0)))
          .append(" |\n");
    });
    return out.toString();
  }

  private static long count(List<Line> lines, Evidence.Kind kind) {
    return lines.stream().filter(line -> line.evidence().kind() == kind).count();
  }

  private static String page(String title, List<Line> lines) {
    StringBuilder out = new StringBuilder("# " + title + "\n\n");
    out.append("Written by the tests. [All chapters](../verification.md)\n\n");
    out.append(
        "| what | theirs | ours | difference | unit | allowed | why so much | evidence | source | share |\n");
    out.append("|---|--:|--:|--:|---|--:|---|---|---|--:|\n");
    lines.stream()
        .sorted(ORDER)
        .forEach(line -> out.append("| ")
            .append(String.join(
                " | ",
                cell(line.what()),
                digits(line.published()),
                digits(line.ours()),
                difference(line),
                cell(line.unit()),
                String.format(Locale.ROOT, "%.2g", line.allowed()),
                cell(line.why()),
                line.evidence().kind().word(),
                cell(Sources.links(line.evidence().source())),
                percent(line.share())))
            .append(" |\n"));
    return out.toString();
  }

  /** A text as a cell of a Markdown table. */
  static String cell(String text) {
    return text.replace("|", "\\|").replace('\n', ' ');
  }

  /** Seven digits: more would change with the processor. */
  private static String digits(double value) {
    return String.format(Locale.ROOT, "%.7g", value);
  }

  /** Of the numbers as printed: that of the doubles would change with the processor. */
  private static String difference(Line line) {
    double printed =
        Double.parseDouble(digits(line.ours())) - Double.parseDouble(digits(line.published()));
    return printed == 0.0 ? "0" : String.format(Locale.ROOT, "%+.2g", printed);
  }

  private static String percent(double share) {
    return share < 0.005 ? "< 1 %" : Math.round(100.0 * share) + " %";
  }
}
