package org.airfit.working;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Factors against NIST Special Publication 811, appendix B.8, at the digits printed there. */
class UnitSystemTest {

  private static double us(Term term) {
    return Double.parseDouble(term.value());
  }

  @Test
  void an_us_unit_has_the_worth_nist_prints() {
    assertThat(us(UnitSystem.US.length("L", "L", 0.3048, 9))).isCloseTo(1.0, within(1e-8));
    assertThat(us(UnitSystem.US.smallLength("D", "D", 0.0254, 9))).isCloseTo(1.0, within(1e-8));
    assertThat(us(UnitSystem.US.area("A", "A", 0.092_903_04, 9))).isCloseTo(1.0, within(1e-8));
    assertThat(us(UnitSystem.US.volume("V", "V", 0.028_316_85, 9))).isCloseTo(1.0, within(2e-7));
    assertThat(us(UnitSystem.US.massFlow("ṁ", "m", 0.453_592_4, 9))).isCloseTo(1.0, within(2e-7));
    assertThat(us(UnitSystem.US.pressure("p", "p", 6_894.757, 9))).isCloseTo(1.0, within(2e-7));
    assertThat(us(UnitSystem.US.saidPressure("p", "p", 6_894.757, 9))).isCloseTo(1.0, within(2e-7));
    assertThat(us(UnitSystem.US.density("ρ", "r", 16.018_46, 9))).isCloseTo(1.0, within(5e-7));
    assertThat(us(UnitSystem.US.viscosity("μ", "m", 1.488_164, 9))).isCloseTo(1.0, within(5e-7));
    assertThat(us(UnitSystem.US.velocity("c", "c", 0.3048, 9))).isCloseTo(1.0, within(1e-8));
    assertThat(us(UnitSystem.US.temperature("T", "T", 5.0 / 9.0, 9))).isCloseTo(1.0, within(1e-8));
    // 1 Btu/(lb °F) is 4186.8 J/(kg K), and a Btu (IT) 1055.056 J, a ft lbf 1.355818 J
    assertThat(us(UnitSystem.US.heatCapacity("c", "c", 4_186.8, 9)))
        .isCloseTo(1_055.056 / 1.355_818, within(1e-3));
    assertThat(us(UnitSystem.US.energyPerMass("e", "e", 2_326.0, 9)))
        .isCloseTo(1_055.056 / 1.355_818, within(1e-3));
    assertThat(us(UnitSystem.US.massFlux("G", "G", 4.882_428, 9))).isCloseTo(1.0, within(5e-7));
    assertThat(us(UnitSystem.US.conductance("C", "C", 0.028_316_85 / 6_894.757, 9)))
        .isCloseTo(1.0, within(5e-7));
    assertThat(Double.parseDouble(UnitSystem.G_C)).isCloseTo(32.174_05, within(5e-6));
  }

  @Test
  void units_are_named_beside_the_numbers() {
    assertThat(UnitSystem.SI.pressure("p", "p", 1.0e5, 3).quantity()).isEqualTo("100000 Pa");
    assertThat(UnitSystem.SI.saidPressure("p", "p", 1.0e5, 3).quantity()).isEqualTo("1 bar");
    assertThat(UnitSystem.SI.smallLength("D", "D", 0.025, 3).quantity()).isEqualTo("25 mm");
    assertThat(UnitSystem.SI.massFlux("G", "G", 2.0, 3).unit()).isEqualTo("kg/(s m²)");
    assertThat(UnitSystem.US.massFlux("G", "G", 2.0, 3).unit()).isEqualTo("lb/(s ft²)");
    assertThat(UnitSystem.SI.heatCapacity("R", "R", 287.0, 3).unit()).isEqualTo("J/(kg K)");
    assertThat(UnitSystem.US.heatCapacity("R", "R", 287.0, 3).unit()).isEqualTo("ft lbf/(lb °R)");
    assertThat(UnitSystem.SI.conductance("C", "C", 1.0e-8, 3).unit()).isEqualTo("m³/(s·Pa)");
    assertThat(UnitSystem.US.conductance("C", "C", 1.0e-8, 3).unit()).isEqualTo("ft³/(s·psi)");
    assertThat(UnitSystem.SI.viscosity("μ", "m", 1.8e-5, 3).unit()).isEqualTo("Pa·s");
    assertThat(UnitSystem.SI.volume("V", "V", 1.0, 3).quantity()).isEqualTo("1 m³");
  }

  @Test
  void sentences_name_the_units_of_the_terms() {
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(units.pressureUnit().symbol())
          .isEqualTo(units.saidPressure("p", "p", 1.0, 3).unit());
      assertThat(units.massFlowUnit().symbol())
          .isEqualTo(units.massFlow("m", "m", 1.0, 3).unit());
      assertThat(units.smallLengthUnit().symbol())
          .isEqualTo(units.smallLength("D", "D", 1.0, 3).unit());
    }
  }
}
