package org.airfit.lesson;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A table of chances that belong together: the printed numbers add up to 100.0 %.
 *
 * <p>Each chance is cut to a tenth of a percent, and what is missing to the whole goes, a tenth each, to those that lost
 * most by the cut. A chance below 0.05 % is printed as "< 0.1 %"; one that would be printed as 100.0 % is "> 99.9 %".
 */
public final class Chances {

  /** How far the chances may be from the whole together: the rounding of sums of doubles. */
  private static final double ROUNDING = 1.0e-9;

  private static final int TENTHS = 1000;

  private final String heading;
  private final List<Row> rows = new ArrayList<>();

  private record Row(String name, double chance) {

    int cut() {
      return (int) Math.floor(TENTHS * chance);
    }

    double lost() {
      return TENTHS * chance - cut();
    }
  }

  private Chances(String heading) {
    this.heading = heading;
  }

  /**
   * Starts a table.
   *
   * @param heading what the chances are of
   * @return the table, without rows
   */
  public static Chances of(String heading) {
    return new Chances(heading);
  }

  /**
   * Adds a chance.
   *
   * @param name what has it
   * @param chance the chance, from 0 to 1
   * @return this
   * @throws IllegalArgumentException if {@code chance} is outside the range or all together exceed 1
   */
  public Chances row(String name, double chance) {
    if (!(chance >= 0.0 && chance <= 1.0 && told() + chance <= 1.0 + ROUNDING)) {
      throw new IllegalArgumentException(
          "chance must be in [0, 1] and all together not above 1, was " + chance + " beside "
              + told());
    }
    rows.add(new Row(name, chance));
    return this;
  }

  /**
   * Adds what is left to the whole.
   *
   * @param name what has it
   * @return this
   */
  public Chances rest(String name) {
    return row(name, Math.max(0.0, 1.0 - told()));
  }

  private double told() {
    return rows.stream().mapToDouble(Row::chance).sum();
  }

  /**
   * {@return the table in Markdown, its rows in the order in which they were added}
   *
   * @throws IllegalStateException if the chances do not add up to 1
   */
  public String toMarkdown() {
    if (!(Math.abs(told() - 1.0) <= ROUNDING)) {
      throw new IllegalStateException(
          "chances must add up to 1, were " + told() + "; add what is left with rest(name)");
    }
    int[] tenths = rows.stream().mapToInt(Row::cut).toArray();
    List<Integer> byLoss = IntStream.range(0, tenths.length)
        .boxed()
        .sorted(Comparator.comparingDouble((Integer i) -> rows.get(i).lost()).reversed())
        .toList();
    int missing = TENTHS - IntStream.of(tenths).sum();
    for (int i = 0; i < missing; i++) {
      tenths[byLoss.get(i % tenths.length)]++;
    }
    Table table = Table.of(heading, "chance");
    for (int i = 0; i < tenths.length; i++) {
      table.row(rows.get(i).name(), printed(tenths[i]));
    }
    return table.toMarkdown();
  }

  private static String printed(int tenths) {
    if (tenths == 0) {
      return "< 0.1 %";
    }
    return tenths == TENTHS ? "> 99.9 %" : Printed.text("%.1f %%", tenths / 10.0);
  }
}
