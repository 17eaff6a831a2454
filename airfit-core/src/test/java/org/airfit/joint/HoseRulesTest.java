package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.source.Basis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Facts of {@code hose_facts.csv}; its rules on safety are in the tests of {@code safety}, its example of a bend in
 * {@link HoseBendTest}.
 */
class HoseRulesTest {

  private static Row fact(String topic) {
    return Rows.of(HoseRulesTest.class, "hose_facts.csv")
        .filter(row -> row.text("topic").equals(topic))
        .findFirst()
        .orElseThrow();
  }

  private static void meets(String topic, double ours) {
    Row row = fact(topic);
    Comparison.of(
            "Hose: rules", topic, row.number("value"), row.text("unit"), row.evidence("value"))
        .isMetBy(ours, row.halfDigit("value"), "digits printed");
  }

  @Test
  void burst_and_test_pressure_are_the_handbooks_multiples() {
    GaugePressure working = GaugePressure.ofBar(10.0);
    meets("design ratio air hose", HoseRules.leastBurst(working).bar() / working.bar());
    meets("test pressure", HoseRules.test(working).bar() / working.bar());
    assertThat(HoseRules.mostWorking(HoseRules.leastBurst(working)).bar())
        .isCloseTo(10.0, within(1e-12));
    assertThat(HoseRules.DESIGN.basis()).isEqualTo(Basis.HANDBOOK);
  }

  /** "up to 12 in: 0.125 in; to 24: 0.188; to 36: 0.250; to 48: 0.375; to 72: 0.5; above: 1 percent" */
  @ParameterizedTest
  @CsvSource({
    "0.1, 0.125", "12, 0.125", "12.01, 0.188", "24, 0.188", "24.01, 0.250", "36, 0.250",
    "36.01, 0.375", "48, 0.375", "48.01, 0.5", "72, 0.5", "72.01, 0.7201", "100, 1.0"
  })
  void a_cut_length_may_be_off_by_the_handbooks_steps(double inches, double tolerance) {
    assertThat(fact("cut length tolerance").text("fact")).contains("above: 1 percent");
    assertThat(HoseRules.cutTolerance(Length.ofInches(inches)).inches())
        .isCloseTo(tolerance, within(1e-12));
  }

  @Test
  void hose_is_named_by_its_bore_and_tube_by_its_outside() {
    assertThat(fact("hose is named by bore").text("fact")).contains("inside diameter");
    assertThat(HoseBore.parse("1/4 in hose").nominal().inches()).isEqualTo(0.25);
    assertThat(fact("tubing is named by outside").text("fact")).contains("outside diameter");
    assertThat(Tube.all(Tube.Kind.PLASTIC_TUBE))
        .filteredOn(tube -> tube.name().startsWith("6 "))
        .isNotEmpty()
        .allSatisfy(tube -> assertThat(tube.outside().millimetres()).isEqualTo(6.0));
  }

  @Test
  void a_bend_is_measured_to_the_inside_of_rubber_hose() {
    assertThat(fact("bend radius reference").text("fact")).contains("inside of the curve");
    assertThat(fact("bend radius rule of thumb").number("value"))
        .isEqualTo(HoseBend.usualLeastRadius(Length.ofMetres(1.0)).metres());
  }

  @Test
  void what_no_hose_can_have_is_refused() {
    assertThatThrownBy(() -> HoseRules.leastBurst(GaugePressure.ofBar(-0.1)))
        .hasMessageStartingWith("pressure of a hose must be at least 0 Pa(g), was ");
    assertThatThrownBy(() -> HoseRules.cutTolerance(Length.ofMetres(0.0)))
        .hasMessageStartingWith("length of a cut hose must be above 0 m, was 0");
    assertThat(HoseRules.test(GaugePressure.ofBar(0.0)).bar()).isZero();
  }
}
