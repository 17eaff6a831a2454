package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What goes with the parts must stand what they must stand. */
class AccessoryShelfTest {

  private static Optional<Accessory.ThreadSealant> found(Requirement job, PartFacts facts) {
    Accessory tape = new Accessory.ThreadSealant(facts, NominalThreadSize.TWO);
    return new AccessoryShelf(job, Catalogue.of(List.of(), List.of(tape)))
        .find(Accessory.ThreadSealant.class, any -> true);
  }

  /** Air of 95 °C is as warm for the tape as for a hose, though the job tells no temperatures of its parts. */
  @ParameterizedTest
  @CsvSource({"94.9, false", "95.0, true", "95.1, true"})
  void the_temperature_of_the_supply_counts_for_accessories_too(double hottest, boolean isFound) {
    Requirement job = Shelf.job()
        .supply(
            AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(95.0)), Shelf.ATMOSPHERE)
        .build();
    PartFacts tape = PartFacts.of("tape", "tape")
        .withTemperatures(Temperature.ofCelsius(-20.0), Temperature.ofCelsius(hottest));
    assertThat(found(job, tape).isPresent()).isEqualTo(isFound);
  }

  @ParameterizedTest
  @CsvSource({"9.99, false", "10.0, true", "10.01, true"})
  void the_highest_pressure_that_can_occur_counts(double rating, boolean isFound) {
    Requirement job = Shelf.job().highest(GaugePressure.ofBar(10.0)).build();
    PartFacts tape = PartFacts.of("tape", "tape").withRating(GaugePressure.ofBar(rating));
    assertThat(found(job, tape).isPresent()).isEqualTo(isFound);
  }
}
