package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The numbers of a sentence lie the way round that its judgement says, however near they are, in both units. */
class ComparedNumbersTest {

  private static final Pattern TOOL =
      Pattern.compile("up to ([0-9.]+) [a-z()]+, its maker allows ([0-9.]+) ");

  private static final Pattern REACH =
      Pattern.compile("([0-9.]+) (?:m|ft) of hose, ([0-9.]+) (?:m|ft) needed");

  private static final Pattern HELD = Pattern.compile(
      "is ([0-9.]+) [a-z()]+ while the regulator holds and ([0-9.]+) [a-z()]+ if it fails, its maker allows"
          + " ([0-9.]+) ");

  private static Finding finding(Requirement.Builder job, Rule rule, UnitSystem units) {
    return Selection.of(job.build(), Catalogue.of(Shelf.parts()))
        .fold(Selection.Proposals::best, miss -> miss.nearest().get(0))
        .findings(units)
        .stream()
        .filter(found -> found.rule() == rule)
        .findFirst()
        .orElseThrow();
  }

  private static double[] numbers(Pattern pattern, String text) {
    Matcher found = pattern.matcher(text);
    assertThat(found.find()).as(text).isTrue();
    double[] numbers = new double[found.groupCount()];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = Double.parseDouble(found.group(i + 1));
    }
    return numbers;
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void a_tool_is_over_pressured_by_what_is_printed(UnitSystem units) {
    for (double more : new double[] {1.0e-2, 1.0e-3, 1.0e-4, 1.0e-5}) {
      Finding finding = finding(
          Shelf.job()
              .highest(GaugePressure.ofBar(8.27371 + more))
              .toolRating(GaugePressure.ofBar(8.27371)),
          Rule.TOOL_RATED,
          units);
      assertThat(finding.outcome()).isEqualTo(RuleOutcome.UNMET);
      double[] numbers = numbers(TOOL, finding.reason());
      assertThat(numbers[0]).as(finding.reason()).isGreaterThan(numbers[1]);
    }
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void of_a_regulator_both_numbers_are_told_from_the_limit(UnitSystem units) {
    Finding finding = finding(
        Shelf.job()
            .highest(GaugePressure.ofBar(8.2738))
            .toolRating(GaugePressure.ofBar(8.27371))
            .regulated(),
        Rule.TOOL_RATED,
        units);
    assertThat(finding.outcome()).isEqualTo(RuleOutcome.MET_WHILE_REGULATED);
    double[] numbers = numbers(HELD, finding.reason());
    assertThat(numbers[0]).isLessThan(numbers[2]);
    assertThat(numbers[1]).as(finding.reason()).isGreaterThan(numbers[2]);
  }

  @ParameterizedTest
  @EnumSource(UnitSystem.class)
  void a_hose_is_too_short_by_what_is_printed(UnitSystem units) {
    for (double more : new double[] {1.0e-2, 1.0e-3, 1.0e-4}) {
      Finding finding =
          finding(Shelf.job().reach(Length.ofMetres(10.0 + more)), Rule.HOSE_REACHES, units);
      assertThat(finding.outcome()).isEqualTo(RuleOutcome.UNMET);
      double[] numbers = numbers(REACH, finding.reason());
      assertThat(numbers[0]).as(finding.reason()).isLessThan(numbers[1]);
    }
  }
}
