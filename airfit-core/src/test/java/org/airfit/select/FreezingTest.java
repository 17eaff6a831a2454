package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** Water in the air freezes below 0 °C, and whoever is out there in winter must be told. */
class FreezingTest {

  private static Requirement.Builder job() {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(5.0), GaugePressure.ofBar(5.0))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .toolInlet(End.parse("3/8 NPT female"))
        .environment(Environment.OUTDOORS)
        .lubrication(Lubrication.DRY)
        .layout(Layout.of(List.of(Slot.hose("hose", Length.ofMetres(8.0)))));
  }

  private static List<Caution> frost(Requirement job, UnitSystem units) {
    Proposal proposal = Selection.of(
            job, Catalogue.of(List.of(Shelf.hose(Shelf.steel("hose"), 9.5, 10.0))))
        .fold(fitting -> fitting.best(), nothing -> nothing.nearest().get(0));
    List<Caution> ofParts = only(proposal.cautions(units));
    assertThat(only(JobFindings.of(job).cautions(units)))
        .as("without parts it is told in the same words")
        .isEqualTo(ofParts);
    return ofParts;
  }

  private static List<Caution> only(List<Caution> cautions) {
    return cautions.stream().filter(caution -> caution.title().equals("Frost")).toList();
  }

  private static Requirement coldest(double celsius) {
    return job()
        .temperatures(Temperature.ofCelsius(celsius), Temperature.ofCelsius(30.0))
        .build();
  }

  @Test
  void frost_is_told_below_the_freezing_point_alone() {
    assertThat(frost(job().build(), UnitSystem.SI)).isEmpty();
    assertThat(frost(coldest(0.1), UnitSystem.SI)).isEmpty();
    assertThat(frost(coldest(0.0), UnitSystem.SI)).isEmpty();
    assertThat(frost(coldest(-0.1), UnitSystem.SI)).hasSize(1);
  }

  @Test
  void it_says_what_freezes_and_what_helps_in_the_units_of_the_sheet() {
    Requirement cold = job()
        .temperatures(Temperature.parse("20 °F"), Temperature.parse("100 °F"))
        .build();
    assertThat(frost(cold, UnitSystem.US).get(0).text())
        .contains("It may be 20 °F there", "freezes below 32 °F", "drains", "Drain receivers")
        .doesNotContain("°C");
    assertThat(frost(cold, UnitSystem.SI).get(0).text())
        .contains("freezes below 0 °C", "2 to 4 °C")
        .doesNotContain("°F");
  }

  @Test
  void a_dryer_helps_only_with_a_dew_point_below_the_coldest_place() {
    Requirement dried = job()
        .dryer(true)
        .temperatures(Temperature.ofCelsius(-10.0), Temperature.ofCelsius(30.0))
        .build();
    assertThat(frost(dried, UnitSystem.SI).get(0).text())
        .contains("See that the pressure dew point of the dryer lies below", "is not enough");
  }
}
