package org.airfit.files.kept;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.airfit.working.UnitSystem;

/**
 * What is different between two answers that were kept: first in what they rest on, then in what was answered.
 *
 * <p>It tells what is different, and not what of it made the answer another one: where several inputs changed, compute
 * the answer again with one of them after the other.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class AnswerComparison {

  private final UnitSystem units;
  private final String library;
  private final List<Difference> differences;

  private AnswerComparison(UnitSystem units, String library, List<Difference> differences) {
    this.units = units;
    this.library = library;
    this.differences = List.copyOf(differences);
  }

  /**
   * Compares two answers. The days are not compared.
   *
   * @param then the earlier one
   * @param now the later one, such as the same computed again
   * @return what is different
   */
  public static AnswerComparison of(KeptAnswer then, KeptAnswer now) {
    Objects.requireNonNull(then, "then");
    Objects.requireNonNull(now, "now");
    List<Difference> differences = new ArrayList<>();
    if (!then.library().equals(now.library())) {
      differences.add(new Difference.OtherLibrary(then.library(), now.library()));
    }
    differences.addAll(InputDifferences.of(then, now));
    differences.addAll(AnswerDifferences.of(then, now));
    return new AnswerComparison(then.answered().units(), now.library(), differences);
  }

  /** {@return the differences, those of what the answers rest on first; empty where nothing differs} */
  public List<Difference> differences() {
    return differences;
  }

  /** {@return whether nothing differs: library, question, reference set, catalogue and answer are the same} */
  public boolean isSame() {
    return differences.isEmpty();
  }

  /** {@return whether the answer is the same, whatever it rests on} */
  public boolean isSameAnswer() {
    return differences.stream().allMatch(Difference::isOfInput);
  }

  /**
   * {@return a sentence for each difference in a line of its own, in the units of the earlier answer; last, where it is
   * so, that the answer is the same}
   */
  public String inWords() {
    if (isSame()) {
      return "The same version of the library, " + library
          + ", answers the same question out of the same reference set and catalogue. The answer is the same.";
    }
    return differences.stream()
            .map(difference -> difference.inWords(units))
            .collect(Collectors.joining("\n"))
        + (isSameAnswer() ? "\nThe answer is the same." : "");
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof AnswerComparison that
        && units == that.units
        && library.equals(that.library)
        && differences.equals(that.differences);
  }

  @Override
  public int hashCode() {
    return Objects.hash(units, library, differences);
  }

  /** {@return the same as {@link #inWords}} */
  @Override
  public String toString() {
    return inWords();
  }
}
