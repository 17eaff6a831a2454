package org.airfit.source;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * Where a number, a rule or a formula comes from.
 *
 * <p>A program that adds numbers of its own says where they are from:
 *
 * <pre>{@code
 * import org.airfit.source.Source;
 *
 * class OwnSource {
 *   public static void main(String[] args) {
 *     Source trial = Source.measured("bench trial of 3 May, caliper of 0.01 mm");
 *     Source habit = Source.commonPractice("the hose is as wide as the coupling");
 *     System.out.println(trial.basis() + ", " + habit.basis()); // MEASURED, COMMON_PRACTICE
 *   }
 * }
 * }</pre>
 *
 * @param basis what kind of place that is
 * @param citation the place itself, such as "ASME B1.20.1, table 1"; for common practice, what the practice is
 */
public record Source(Basis basis, String citation) {

  /**
   * Checks the components.
   *
   * @param basis what kind of place that is
   * @param citation the place itself, such as "ASME B1.20.1, table 1"; for common practice, what the practice is
   * @throws IllegalArgumentException if {@code citation} is blank
   */
  public Source {
    Objects.requireNonNull(basis, "basis");
    Objects.requireNonNull(citation, "citation");
    if (citation.isBlank()) {
      throw new IllegalArgumentException(
          "citation must say where the number comes from, was blank");
    }
  }

  /**
   * Cites a published standard.
   *
   * @param citation designation, edition and place
   * @return the source
   * @throws IllegalArgumentException if {@code citation} is blank
   */
  public static Source standard(String citation) {
    return new Source(Basis.STANDARD, citation);
  }

  /**
   * Cites the words of a law, a regulation or the rules of a works.
   *
   * @param citation the law and place, such as "29 CFR 1926.302(b)(7)"
   * @return the source
   * @throws IllegalArgumentException if {@code citation} is blank
   */
  public static Source regulation(String citation) {
    return new Source(Basis.REGULATION, citation);
  }

  /**
   * Cites a handbook, paper, government document or textbook.
   *
   * @param citation author, title, year and place
   * @return the source
   * @throws IllegalArgumentException if {@code citation} is blank
   */
  public static Source handbook(String citation) {
    return new Source(Basis.HANDBOOK, citation);
  }

  /**
   * Names what a value was computed from.
   *
   * @param citation the formula or the inputs
   * @return the source
   * @throws IllegalArgumentException if {@code citation} is blank
   */
  public static Source derived(String citation) {
    return new Source(Basis.DERIVED, citation);
  }

  /**
   * Names a measurement.
   *
   * @param citation who measured what, with which instrument
   * @return the source
   * @throws IllegalArgumentException if {@code citation} is blank
   */
  public static Source measured(String citation) {
    return new Source(Basis.MEASURED, citation);
  }

  /**
   * Marks what the trade does without a source that says so.
   *
   * @param practice the practice in words
   * @return the source
   * @throws IllegalArgumentException if {@code practice} is blank
   */
  public static Source commonPractice(String practice) {
    Objects.requireNonNull(practice, "practice");
    return new Source(Basis.COMMON_PRACTICE, practice);
  }

  /**
   * Marks a value that was recalled and seen nowhere.
   *
   * @param recollection what was recalled
   * @return the source
   * @throws IllegalArgumentException if {@code recollection} is blank
   */
  public static Source fromMemory(String recollection) {
    Objects.requireNonNull(recollection, "recollection");
    return new Source(Basis.FROM_MEMORY, recollection);
  }

  /**
   * Marks invented data.
   *
   * @param scenario what it was invented for
   * @return the source
   * @throws IllegalArgumentException if {@code scenario} is blank
   */
  public static Source demo(String scenario) {
    Objects.requireNonNull(scenario, "scenario");
    return new Source(Basis.DEMO, scenario);
  }

  /**
   * Puts several sources of one answer together.
   *
   * @param sources the sources, at least one
   * @return one source that cites them all, a semicolon between, with the weakest basis of them
   * @throws IllegalArgumentException if there is none
   */
  public static Source together(List<Source> sources) {
    Objects.requireNonNull(sources, "sources");
    if (sources.isEmpty()) {
      throw new IllegalArgumentException("sources must be at least 1, was 0");
    }
    return new Source(
        sources.stream().map(Source::basis).reduce(Basis.STANDARD, Basis::weaker),
        sources.stream().map(Source::citation).collect(Collectors.joining("; ")));
  }

  /** {@return the citation with the basis in brackets, such as "ASME B1.20.1 (standard)"} */
  @Override
  public String toString() {
    return citation + " (" + basis.label() + ")";
  }
}
