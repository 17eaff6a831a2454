package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;

class TableCorrectionTest {

  private static final Length BORE = Length.ofInches(1.049);

  private static TableCorrection correction(
      double psig, double fahrenheit, double feet, Length bore) {
    return new TableCorrection(
        PressureDrop.of(2.21, PressureUnit.PSI),
        BORE,
        GaugePressure.ofPsi(psig),
        Temperature.ofFahrenheit(fahrenheit),
        Conduit.of(bore, Length.ofFeet(feet), Length.ofMetres(0.0)));
  }

  @Test
  void the_line_of_the_table_itself_is_left_as_printed() {
    assertThat(correction(100.0, 60.0, 100.0, BORE).drop().psi()).isCloseTo(2.21, within(1e-12));
  }

  /** DR01 of the handbook examples: half the bore, 32 times the drop. */
  @Test
  void half_the_bore_loses_thirty_two_times_as_much() {
    assertThat(correction(100.0, 60.0, 100.0, BORE.times(0.5)).drop().psi() / 2.21)
        .isCloseTo(32.0, within(1e-9));
  }

  @Test
  void what_the_table_cannot_carry_is_refused() {
    Conduit bent = Conduit.of(BORE, Length.ofFeet(10.0), Length.ofMetres(0.0)).withFittings(0.9);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TableCorrection(
            PressureDrop.ofPascals(1.0),
            BORE,
            GaugePressure.ofPsi(100.0),
            Temperature.ofFahrenheit(60.0),
            bent))
        .withMessageContaining("was 0.9; the table knows no fittings");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> correction(-0.1, 60.0, 10.0, BORE))
        .withMessageStartingWith("pressure of the line must be at least 0 psi(g), was -0.1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new TableCorrection(
            PressureDrop.ofPascals(1.0),
            Length.ofMetres(0.0),
            GaugePressure.ofPsi(100.0),
            Temperature.ofFahrenheit(60.0),
            bent.withFittings(0.0)))
        .withMessageStartingWith("bore of the table's pipe must be above 0 in");
  }
}
