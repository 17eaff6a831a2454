package org.airfit.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Temperature;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TreatmentRatingTest {

  private static final FreeAirFlow FLOW = FreeAirFlow.parse("100 L/s ANR");

  private static TreatmentRating.PressureFactor at(String pressure, double factor) {
    return new TreatmentRating.PressureFactor(GaugePressure.parse(pressure), factor);
  }

  private static TreatmentRating.TemperatureFactor of(String temperature, double factor) {
    return new TreatmentRating.TemperatureFactor(Temperature.parse(temperature), factor);
  }

  private static TreatmentRating rating(
      List<TreatmentRating.PressureFactor> byPressure,
      List<TreatmentRating.TemperatureFactor> byInlet,
      List<TreatmentRating.TemperatureFactor> byRoom) {
    return new TreatmentRating(
        FLOW,
        GaugePressure.ofBar(7.0),
        Temperature.ofCelsius(35.0),
        Optional.of(Temperature.ofCelsius(25.0)),
        byPressure,
        byInlet,
        byRoom);
  }

  private static Optional<Double> share(
      TreatmentRating rating, String pressure, String inlet, String room) {
    return rating
        .capacity(GaugePressure.parse(pressure), Temperature.parse(inlet), Temperature.parse(room))
        .map(capacity ->
            capacity.flow().kilogramsPerSecond() / FLOW.massFlow().kilogramsPerSecond());
  }

  static Stream<Row> published() {
    return Rows.of(TreatmentRatingTest.class, "dryer_capacity_published.csv");
  }

  /** The flow is counted at one state throughout, so that any will do. */
  @ParameterizedTest
  @MethodSource("published")
  void printed_examples_of_makers_are_met(Row row) {
    FreeAirFlow rated = FreeAirFlow.ofScfm60F(row.number("rated"));
    TreatmentRating rating = new TreatmentRating(
        rated,
        GaugePressure.ofBar(7.0),
        Temperature.ofCelsius(35.0),
        Optional.empty(),
        List.of(at("7.9 bar(g)", row.number("factor_pressure"))),
        List.of(of("50 °C", row.number("factor_inlet"))),
        List.of(of("45 °C", row.number("factor_room"))));
    double ours = rating
            .capacity(
                GaugePressure.parse("8 bar(g)"),
                Temperature.parse("50 °C"),
                Temperature.parse("45 °C"))
            .orElseThrow()
            .flow()
            .kilogramsPerSecond()
        / rated.massFlow().kilogramsPerSecond()
        * row.number("rated");
    Comparison.of(
            "Air: capacity of dryers",
            row.text("id"),
            row.number("capacity"),
            row.text("unit"),
            row.evidence("capacity"))
        .isMetBy(ours, row.halfDigit("capacity"), "half a digit of the printed capacity");
  }

  @Test
  void without_tables_a_rating_holds_where_the_air_is_as_good_or_better() {
    TreatmentRating plain = rating(List.of(), List.of(), List.of());
    assertThat(share(plain, "7 bar(g)", "35 °C", "25 °C")).hasValue(1.0);
    assertThat(share(plain, "9 bar(g)", "10 °C", "5 °C")).hasValue(1.0);
    assertThat(share(plain, "6.9 bar(g)", "35 °C", "25 °C")).isEmpty();
    assertThat(share(plain, "7 bar(g)", "35.1 °C", "25 °C")).isEmpty();
    assertThat(share(plain, "7 bar(g)", "35 °C", "25.1 °C")).isEmpty();
    assertThat(plain.gaps(
            GaugePressure.ofBar(6.0),
            Temperature.ofCelsius(40.0),
            Temperature.ofCelsius(30.0),
            UnitSystem.SI))
        .containsExactly(
            "inlet pressure 6 bar(g), told down to 7 bar(g)",
            "inlet temperature 40 °C, told up to 35 °C",
            "temperature of the room 30 °C, told up to 25 °C");
  }

  @Test
  void between_two_points_of_a_table_the_worse_counts_and_beyond_its_end_none() {
    TreatmentRating told = rating(
        List.of(at("5 bar(g)", 0.8), at("7 bar(g)", 1.0), at("9 bar(g)", 1.1)),
        List.of(of("30 °C", 1.2), of("35 °C", 1.0), of("45 °C", 0.7)),
        List.of(of("25 °C", 1.0), of("40 °C", 0.9)));
    assertThat(share(told, "6.9 bar(g)", "35 °C", "25 °C").orElseThrow())
        .isCloseTo(0.8, within(1.0e-12));
    assertThat(share(told, "20 bar(g)", "35 °C", "25 °C").orElseThrow())
        .isCloseTo(1.1, within(1.0e-12));
    assertThat(share(told, "7 bar(g)", "35.1 °C", "25 °C").orElseThrow())
        .isCloseTo(0.7, within(1.0e-12));
    assertThat(share(told, "7 bar(g)", "10 °C", "26 °C").orElseThrow())
        .isCloseTo(1.2 * 0.9, within(1.0e-12));
    assertThat(share(told, "4.9 bar(g)", "35 °C", "25 °C")).isEmpty();
    assertThat(share(told, "7 bar(g)", "45.1 °C", "25 °C")).isEmpty();
    assertThat(share(told, "7 bar(g)", "35 °C", "41 °C")).isEmpty();
    assertThat(told.gaps(
            GaugePressure.ofBar(4.0),
            Temperature.ofCelsius(50.0),
            Temperature.ofCelsius(20.0),
            UnitSystem.SI))
        .containsExactly(
            "inlet pressure 4 bar(g), told down to 5 bar(g)",
            "inlet temperature 50 °C, told up to 45 °C");
  }

  @Test
  void tables_out_of_order_are_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> rating(List.of(at("7 bar(g)", 1.0), at("8 bar(g)", 0.9)), List.of(), List.of()))
        .withMessageContaining("must rise with the pressure");
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> rating(List.of(at("7 bar(g)", 1.0), at("7 bar(g)", 1.0)), List.of(), List.of()))
        .withMessageContaining("must rise with the pressure");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> rating(List.of(), List.of(of("35 °C", 0.9), of("40 °C", 1.0)), List.of()))
        .withMessageContaining("factors by inlet temperature must fall");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> rating(List.of(), List.of(), List.of(of("40 °C", 0.9), of("35 °C", 0.8))))
        .withMessageContaining("factors by temperature of the room must fall");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> at("7 bar(g)", 0.0))
        .withMessage("factor of a flow must be in (0, 10], was 0.0");
    assertThatIllegalArgumentException().isThrownBy(() -> of("7 °C", 10.1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TreatmentRating(
            FreeAirFlow.parse("0 scfm"),
            GaugePressure.ofBar(7.0),
            Temperature.ofCelsius(35.0),
            Optional.empty(),
            List.of(),
            List.of(),
            List.of()))
        .withMessageContaining("rated flow must be above 0");
  }

  @Test
  void the_printed_numbers_give_the_printed_answer() {
    TreatmentRating.Capacity capacity =
        new TreatmentRating.Capacity(FLOW.massFlow(), 1.07, 0.68, 0.78);
    Pencil.check(capacity);
    Completeness.check(capacity);
  }
}
