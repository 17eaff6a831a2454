package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * A published number beside ours: asserts that they agree, and leaves a line in the verification report.
 *
 * <p>When the tests end, all lines are written to {@code target/verification.md}; {@code docs/verification.md} is its committed copy.
 */
public final class Comparison {

  private static final Map<String, List<Line>> CHAPTERS = new TreeMap<>();

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
  }

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

  private static void write() {
    StringBuilder out = new StringBuilder("# Verification\n\n");
    out.append("""
        Every published number the tests compare with, beside ours. The tests write this page; nobody edits it.
        The last column is the difference as a share of what is allowed: above 100 % the build fails.

        """);
    out.append("| chapter | rows | largest share of the allowance |\n|---|--:|--:|\n");
    synchronized (CHAPTERS) {
      CHAPTERS.forEach((chapter, lines) -> out.append("| ")
          .append(chapter)
          .append(" | ")
          .append(lines.size())
          .append(" | ")
          .append(percent(lines.stream().mapToDouble(Line::share).max().orElse(0.0)))
          .append(" |\n"));
      out.append("| **all** | **")
          .append(CHAPTERS.values().stream().mapToInt(List::size).sum())
          .append("** | |\n");
      CHAPTERS.forEach((chapter, lines) -> out.append(chapter(chapter, lines)));
    }
    try {
      Files.createDirectories(Path.of("target"));
      Files.writeString(Path.of("target", "verification.md"), out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String chapter(String title, List<Line> lines) {
    StringBuilder out = new StringBuilder("\n## " + title + "\n\n");
    out.append(
        "| what | published | ours | difference | unit | allowed | why so much | source | share |\n|---|--:|--:|--:|---|--:|---|---|--:|\n");
    lines.stream()
        .sorted((one, other) -> one.what().compareTo(other.what()))
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
                cell(line.evidence().source()),
                percent(line.share())))
            .append(" |\n"));
    return out.toString();
  }

  private static String cell(String text) {
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
