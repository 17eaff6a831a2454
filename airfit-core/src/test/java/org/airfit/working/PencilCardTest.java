package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PencilCardTest {

  private static final Source SOURCE = Source.handbook("definition");
  private static final Symbol P1 = Symbol.of("p1", ValueKind.SAID_PRESSURE);
  private static final Symbol P2 = Symbol.of("p2", ValueKind.SAID_PRESSURE);
  private static final Symbol DROP = Symbol.of("Δp", ValueKind.SAID_PRESSURE);
  private static final Symbol X = Symbol.of("x", ValueKind.NUMBER);
  private static final Symbol Y = Symbol.of("y", ValueKind.NUMBER);
  private static final Symbol Z = Symbol.of("z", ValueKind.NUMBER);
  private static final Formula BEHIND =
      Formula.of("Pressure behind", "⟨p2⟩ = ⟨p1⟩ − ⟨Δp⟩", SOURCE, P2, P1, DROP);

  private static PencilCard.Builder builder() {
    return PencilCard.titled("Some card", UnitSystem.SI);
  }

  private static PencilCard filter() {
    return builder()
        .given(P1, 7.314e5)
        .given(DROP, 0.2164e5)
        .step(BEHIND)
        .answer(P2, 7.0976e5)
        .build();
  }

  @Test
  void a_step_is_worked_out_with_the_rounded_numbers() {
    PencilCard card = filter();
    assertThat(card.given())
        .extracting(Term::toString)
        .containsExactly("p1 = 7.31 bar", "Δp = 0.216 bar");
    CardLine line = card.lines().get(0);
    assertThat(line.kind()).isEqualTo(CardLine.Kind.STEP);
    assertThat(line.what()).isEqualTo("Pressure behind");
    assertThat(line.symbols()).isEqualTo("p2 = p1 − Δp");
    assertThat(line.numbers()).isEqualTo("7.31 − 0.216");
    assertThat(line.result()).isEqualTo("7.09 bar");
  }

  /** 7.31 − 0.216 = 7.094, carried as 7.09 or, cut off or rounded up, anything within 0.01 of it. */
  @Test
  void the_distance_is_that_of_the_worst_reader() {
    CardAnswer answer = filter().answers().get(0);
    assertThat(answer.onCard()).hasToString("p2 = 7.09 bar");
    assertThat(answer.exact()).isCloseTo(7.0976, within(1.0e-12));
    assertThat(answer.least().getAsDouble()).isCloseTo(7.084, within(1.0e-9));
    assertThat(answer.most().getAsDouble()).isCloseTo(7.104, within(1.0e-9));
    assertThat(answer.apart().getAsDouble()).isCloseTo(7.0976 - 7.084, within(1.0e-7));
    assertThat(answer.inWords())
        .isEqualTo(
            "p2 = 7.09 bar on this card, 7.0976 bar without rounding: at most 0.014 bar (0.2 %)"
                + " apart.");
  }

  @ParameterizedTest
  @CsvSource({
    "1.23456, 1.235",
    "1.9996, 2.000",
    "2.0004, 2.00",
    "9.996, 10.0",
    "42937, 42900",
    "117960, 118000",
    "0.0011543, 0.001154",
    "0.0234, 0.0234",
    "100, 100.0",
    "0, 0"
  })
  void three_digits_are_carried_and_four_where_the_first_is_1(double value, String printed) {
    Formula itself = Formula.of("The same", "⟨y⟩ = ⟨x⟩ × 1", SOURCE, Y, X);
    PencilCard card =
        builder().given(X, value, 12).step(itself).answer(Y, value).build();
    double carried = Double.parseDouble(printed);
    assertThat(Double.parseDouble(card.answers().get(0).onCard().value())).isEqualTo(carried);
    assertThat(card.answers().get(0).apart().getAsDouble())
        .isGreaterThanOrEqualTo(Math.abs(carried - value))
        .isLessThanOrEqualTo(0.0101 * Math.abs(value) + 1.0e-300);
  }

  @Test
  void a_step_of_more_than_six_operations_is_refused() {
    Formula six = Formula.of("Six", "⟨y⟩ = 1 + 1 + 1 + 1 + 1 + 1 + ⟨x⟩", SOURCE, Y, X);
    Formula seven = Formula.of("Seven", "⟨y⟩ = 1 + 1 + 1 + 1 + 1 + 1 + 1 + ⟨x⟩", SOURCE, Y, X);
    builder().given(X, 1.0).step(six);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0).step(seven))
        .withMessageContaining("at most 6 operations")
        .withMessageContaining("split into named steps");
  }

  @Test
  void what_cannot_be_worked_out_is_refused() {
    Formula solved = Formula.solvedFor(X, "Root", "⟨x⟩ = 1 + 1/⟨x⟩", SOURCE);
    assertThatIllegalStateException().isThrownBy(() -> builder().step(solved));
    Formula root = Formula.of("Root", "⟨y⟩ = √(1 − ⟨x⟩)", SOURCE, Y, X);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 2.0).step(root))
        .withMessageContaining("must have a result");
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().step(root))
        .withMessageContaining("x is not");
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0).given(X, 1.0))
        .withMessageContaining("x has two");
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 0.5).step(root).step(root))
        .withMessageContaining("y has two");
    Symbol pascals = P1.as(ValueKind.PRESSURE);
    Formula other = Formula.of("Half", "⟨x⟩ = ⟨p1⟩ / 2", SOURCE, X, pascals);
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(P1, 1.0e5).step(other))
        .withMessageContaining("must have one unit");
    assertThatIllegalStateException()
        .isThrownBy(() -> builder().given(X, 1.0).build())
        .withMessageContaining("must name its answer");
    assertThatIllegalStateException().isThrownBy(() -> builder().answer(Y, 1.0));
  }

  @Test
  void numbers_out_of_range_are_refused() {
    assertThatIllegalArgumentException().isThrownBy(() -> builder().given(X, Double.NaN));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder().given(X, 1.0, 0))
        .withMessageContaining("[1, 12], was 0");
    assertThatIllegalArgumentException().isThrownBy(() -> builder().given(X, 1.0, 13));
    PencilCard.Builder card = builder().given(X, 1.0);
    assertThatIllegalArgumentException().isThrownBy(() -> card.answer(X, Double.NaN));
    assertThatIllegalArgumentException().isThrownBy(() -> card.compare(X, 1.0, 2.0, 1.0, 2));
    assertThatIllegalArgumentException().isThrownBy(() -> card.compare(X, Double.NaN, 1.0, 2.0, 2));
    assertThatIllegalArgumentException().isThrownBy(() -> card.compare(X, 1.0, 1.0, 2.0, -1));
    assertThatIllegalArgumentException().isThrownBy(() -> card.compare(X, 1.0, 1.0, 2.0, 8));
    assertThatIllegalArgumentException().isThrownBy(() -> PencilCard.titled(" ", UnitSystem.SI));
    assertThatIllegalArgumentException().isThrownBy(() -> builder().heading(" "));
    assertThatIllegalArgumentException().isThrownBy(() -> builder().note(" "));
    assertThatIllegalArgumentException().isThrownBy(() -> builder().answer(" "));
  }

  /** The root may be of a number below 0 for some readers: then nothing is proved, and the card says so. */
  @Test
  void where_some_readers_come_to_nothing_no_distance_is_told() {
    Formula left = Formula.of("What is left", "⟨y⟩ = ⟨x⟩ × 1", SOURCE, Y, X);
    Formula root = Formula.of("Root", "⟨z⟩ = √(1 − ⟨y⟩)", SOURCE, Z, Y);
    PencilCard card =
        builder().given(X, 0.9995, 4).step(left).step(root).answer(Z, 0.02).build();
    assertThat(card.answers().get(0).apart()).isEmpty();
    assertThat(card.answers().get(0).least()).isEmpty();
    assertThat(card.answers().get(0).most()).isEmpty();
    assertThat(card.inWords().get(0)).endsWith("no distance between the two can be proved.");
  }

  @Test
  void a_reading_is_carried_on_and_its_figure_is_shown_once() {
    PencilChart circle = PencilChart.of(
            "Quarter of a circle",
            ChartAxis.even("x", 0.0, 1.0, 100.0),
            ChartAxis.even("y", 0.0, 1.0, 100.0))
        .with("circle", x -> Math.sqrt(Math.max(0.0, 1.0 - x * x)));
    PencilCard card = builder()
        .given(X, 0.6)
        .read("Height", circle, "circle", X, Y)
        .read("Once more", circle, "circle", X, Z)
        .answer(Y, 0.8)
        .build();
    assertThat(card.charts()).containsExactly(circle);
    assertThat(card.lines().get(0))
        .hasToString("Height: y from figure 1, curve circle at x = 0.6: 0.800");
    // 0.5 mm across on a slope of 3/4, 0.5 mm up, and a unit of the last digit
    assertThat(card.answers().get(0).apart().getAsDouble())
        .isCloseTo(0.005 * 0.75 + 0.005 + 0.001, within(5.0e-5));
    assertThat(card.rules()).hasSize(3);
    assertThat(card.rules().get(1)).isEqualTo("Read a figure to 0.5 mm on either axis.");
    assertThat(card.toText()).contains("Figure 1, to read from: Quarter of a circle");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder().given(X, 0.6).read("Height", circle, "oval", X, Y));
  }

  /** Three thirds of 1: whoever carries three digits inside of the step too comes out of the interval. */
  @Test
  void the_proof_holds_for_all_digits_within_a_step_only() {
    Formula step = Formula.of("Rest", "⟨y⟩ = 100 × (⟨x⟩ / 3) × 3 − 99", SOURCE, Y, X);
    PencilCard card = builder().given(X, 1.0).step(step).answer(Y, 1.0).build();
    CardAnswer answer = card.answers().get(0);
    double within = 1.0;
    double cutOffAtEachOperation = 99.9 - 99.0;
    assertThat(within).isBetween(answer.least().getAsDouble(), answer.most().getAsDouble());
    assertThat(cutOffAtEachOperation).isLessThan(answer.least().getAsDouble());
    assertThat(card.rules().get(0)).startsWith("Within a step keep all digits");
  }

  /** The mark that an inch rule has must not be coarser than what the proof takes. */
  @Test
  void a_sixty_fourth_of_an_inch_is_within_what_is_proved() {
    PencilChart line = PencilChart.of(
            "Line", ChartAxis.even("x", 0.0, 1.0, 100.0), ChartAxis.even("y", 0.0, 1.0, 100.0))
        .with("line", x -> x);
    PencilCard card = PencilCard.titled("Some card", UnitSystem.US)
        .given(X, 0.6)
        .read("Height", line, "line", X, Y)
        .answer(Y, 0.6)
        .build();
    assertThat(card.rules().get(1)).contains("1/64 in");
    assertThat(25.4 / 64.0).isLessThanOrEqualTo(ChartAxis.READING);
  }

  @Test
  void a_distance_as_large_as_the_number_tells_that_a_pencil_is_too_coarse() {
    PencilCard card = builder()
        .given(P1, 7.314e5)
        .given(DROP, 7.312e5)
        .step(BEHIND)
        .answer(P2, 200.0)
        .build();
    assertThat(card.inWords().get(0))
        .contains("That is too small for a pencil")
        .doesNotContain("%");
  }

  @Test
  void a_comparison_gets_the_digits_that_it_needs() {
    PencilCard.Builder card = builder().given(X, 13.16, 5);
    assertThat(card.compare(X, 13.16, 12.9, 13.616, 2)).hasToString("12.90 to 13.62: fits");
    assertThat(card.compare(X, 13.16, 13.2, 13.616, 2)).hasToString("13.20 to 13.62: does not fit");
    // with two decimals the limit would be the reading itself
    assertThat(card.compare(X, 13.16, 13.1604, 13.616, 2))
        .hasToString("13.1604 to 13.6160: does not fit");
    assertThat(card.compare(X, 13.16, 13.1596, 13.616, 2)).hasToString("13.1596 to 13.6160: fits");
    CardComparison same = card.compare(X, 13.16, 13.16, 13.616, 2);
    assertThat(same.isSettled()).isFalse();
    assertThat(same.fits()).isTrue();
    assertThat(same).hasToString("13.16 to 13.62: too near to a limit to tell by pencil");
    assertThat(builder().given(Y, -0.02).compare(Y, -0.02, -0.05, 0.05, 2))
        .hasToString("−0.05 to 0.05: fits");
  }

  @Test
  void a_table_has_a_cell_for_each_column() {
    CardTable table = CardTable.of("Threads", List.of("thread", "d"), List.of(List.of("A", "1")));
    assertThat(table).hasToString("Threads\nthread | d\nA | 1");
    PencilCard card = builder().table(table).answer("Left: A.").build();
    assertThat(card.tables()).containsExactly(table);
    assertThat(card.inWords()).containsExactly("Left: A.");
    assertThat(card.toText()).contains("thread | d", "Left: A.");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> CardTable.of("Threads", List.of("thread"), List.of(List.of("A", "1"))))
        .withMessageContaining("1 columns, one has 2");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> CardTable.of(" ", List.of("a"), List.of()));
  }

  @Test
  void lines_tell_themselves_and_compare_by_value() {
    PencilCard card = builder()
        .heading("at the filter")
        .note("It is new.")
        .given(P1, 7.314e5)
        .given(DROP, 0.2164e5)
        .step(BEHIND)
        .answer(P2, 7.0976e5)
        .build();
    assertThat(card.lines())
        .extracting(CardLine::toString)
        .containsExactly(
            "at the filter",
            "It is new.",
            "Pressure behind: p2 = p1 − Δp = 7.31 − 0.216 = 7.09 bar");
    assertThat(card.lines().get(2)).isEqualTo(filter().lines().get(0));
    assertThat(card.lines().get(2)).hasSameHashCodeAs(filter().lines().get(0));
    assertThat(card.answers()).isEqualTo(filter().answers());
    assertThat(card).hasToString(card.toText());
    assertThat(card.title()).isEqualTo("Some card");
    assertThat(card.units()).isEqualTo(UnitSystem.SI);
  }

  @Test
  void comparisons_turn_out_the_same_or_the_card_says_how_many_rounding_settles() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> builder().answerOfComparisons(-1))
        .withMessageContaining("at least 0, were -1");
    assertThat(builder().answer("One.").answerOfComparisons(0).build().inWords().get(1))
        .startsWith("With exact numbers each comparison");
    assertThat(builder().answer("One.").answerOfComparisons(1).build().inWords().get(1))
        .startsWith("Of the comparisons 1 lie so near");
  }
}
