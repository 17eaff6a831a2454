package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;

/** Where gauge pressure, absolute pressure and drop meet. */
class PressureTest {

  private static final AbsolutePressure SEA = AbsolutePressure.STANDARD_ATMOSPHERE;

  @Test
  void ninety_psig_at_sea_level_is_104_7_psia() {
    assertThat(GaugePressure.ofPsi(90).absolute(SEA).format(PressureUnit.PSI))
        .isEqualTo("104.7 psia");
    assertThat(GaugePressure.of(AbsolutePressure.ofPascals(101_325 + 620_000), SEA))
        .isEqualTo(GaugePressure.ofKilopascals(620));
  }

  @Test
  void a_vacuum_gauge_cannot_read_below_a_vacuum() {
    assertThat(GaugePressure.ofPascals(-101_325).absolute(SEA))
        .isEqualTo(AbsolutePressure.ofBar(0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> GaugePressure.ofPascals(-101_326).absolute(SEA))
        .withMessage("gauge pressure must be at least minus the atmosphere of 1.01325 bar(a),"
            + " was -1.01326 bar(g)");
  }

  @Test
  void a_refused_vacuum_is_told_in_a_unit_people_read() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> GaugePressure.parse("-1e6 bar(g)").absolute(SEA))
        .withMessageEndingWith("was -1000000 bar(g)");
  }

  @Test
  void a_drop_cannot_go_uphill_or_below_a_vacuum() {
    AbsolutePressure low = AbsolutePressure.ofBar(6);
    AbsolutePressure high = AbsolutePressure.ofBar(7);
    assertThat(high.dropTo(low)).isEqualTo(PressureDrop.ofBar(1));
    assertThat(high.dropTo(high)).isEqualTo(PressureDrop.ofBar(0));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> low.dropTo(high))
        .withMessage("downstream pressure must be at most the upstream 6 bar(a), was 7 bar(a)");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> low.minus(PressureDrop.ofBar(7)))
        .withMessageStartingWith("absolute pressure must be finite and at least 0 Pa(a), was -");
  }

  @Test
  void a_length_cannot_be_cut_from_a_shorter_one() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Length.ofMetres(1).minus(Length.ofMetres(1.5)))
        .withMessage("length must be finite and at least 0 m, was -0.5 m");
  }

  /** What somebody typed is told as it was typed, whatever its digits are in the other unit. */
  @Test
  void a_refusal_tells_a_pressure_in_the_unit_in_which_it_was_typed() {
    assertThat(GaugePressure.parse("90 psig").inFewestDigits()).isEqualTo("90 psig");
    assertThat(PressureUnit.inFewestDigits(GaugePressure.parse("6.2 bar(g)")))
        .isEqualTo("6.2 bar(g)");
    assertThat(PressureDrop.parse("5 psi").inFewestDigits()).isEqualTo("5 psi");
    assertThat(AbsolutePressure.parse("14.7 psia").inFewestDigits()).isEqualTo("14.7 psia");
    assertThat(GaugePressure.parse("0 psig").inFewestDigits()).isEqualTo("0 bar(g)");
  }
}
