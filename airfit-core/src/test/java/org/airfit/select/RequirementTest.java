package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Set;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;
import org.junit.jupiter.api.Test;

class RequirementTest {

  private static final FreeAirFlow AIR = FreeAirFlow.ofAnrLitresPerSecond(10.0);
  private static final GaugePressure LEAST = GaugePressure.ofBar(6.2);

  @Test
  void it_tells_what_it_was_told() {
    Requirement job =
        Shelf.job().dropped().dragged().ventRequired().impactTool().build();
    assertThat(job.demand()).isEqualTo(AIR);
    assertThat(job.least()).isEqualTo(LEAST);
    assertThat(job.toolRating()).contains(GaugePressure.ofBar(7.5));
    assertThat(job.toolInlet()).isEqualTo(End.parse("1/4 NPT female"));
    assertThat(job.outlet()).isEqualTo(End.parse("3/8 NPT male"));
    assertThat(job.layout()).isEqualTo(Layout.ofHose(Length.ofMetres(10.0)));
    assertThat(job.environment()).contains(Environment.INDOORS);
    assertThat(job.lubrication()).contains(Lubrication.DRY);
    assertThat(job.isDropped()).isTrue();
    assertThat(job.isDragged()).isTrue();
    assertThat(job.isVentRequired()).isTrue();
    assertThat(job.isImpactTool()).isTrue();
    assertThat(job.profile()).isEmpty();
    assertThat(job.layout().firstSocket()).isEmpty();
    assertThat(job.highest())
        .as("the supply's, as nothing higher was told")
        .isEqualTo(GaugePressure.ofBar(7.0));
  }

  @Test
  void a_builder_that_goes_on_does_not_change_what_it_built() {
    Requirement.Builder builder = Shelf.job();
    Requirement before = builder.build();
    builder.profile("finch").dropped();
    assertThat(before.profile()).isEmpty();
    assertThat(before.isDropped()).isFalse();
  }

  @Test
  void a_builder_of_a_requirement_goes_on_from_it_and_leaves_it_as_it_is() {
    Requirement before = Shelf.job().dropped().build();
    Requirement after = before.toBuilder().profile("finch").dragged().build();
    assertThat(after.profile()).contains("finch");
    assertThat(after.isDropped()).isTrue();
    assertThat(after.isDragged()).isTrue();
    assertThat(before).isEqualTo(Shelf.job().dropped().build()).isNotEqualTo(after);
  }

  @Test
  void what_is_missing_is_named() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Requirement.forTool(AIR, LEAST).build())
        .withMessageStartingWith("supply of the requirement must be told");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Requirement.forTool(AIR, LEAST)
            .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
            .build())
        .withMessageStartingWith("outlet of the requirement must be told");
  }

  @Test
  void a_tool_that_needs_no_pressure_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Requirement.forTool(AIR, GaugePressure.ofBar(0.0)))
        .withMessageStartingWith("least pressure at the tool must be above 0 bar(g), was 0 bar(g)");
  }

  @Test
  void a_limit_of_the_tool_at_or_below_the_atmosphere_is_refused() {
    for (double limit : new double[] {-0.2, 0.0}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Shelf.job().toolRating(GaugePressure.ofBar(limit)))
          .withMessageStartingWith(
              "highest pressure the tool's maker allows must be above 0 bar(g), was ");
    }
    assertThat(Shelf.job().toolRating(GaugePressure.ofBar(0.1)).build().toolRating())
        .contains(GaugePressure.ofBar(0.1));
  }

  @Test
  void a_dead_end_pressure_below_the_atmosphere_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.job().blowGun(GaugePressure.ofBar(-0.1)))
        .withMessageStartingWith(
            "dead-end pressure of a blow gun must be at least 0 bar(g), was -0.1 bar(g)");
    assertThat(Shelf.job().blowGun(GaugePressure.ofBar(0.0))).isNotNull();
  }

  @Test
  void a_highest_pressure_below_the_supply_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.job().highest(GaugePressure.ofBar(6.9)).build())
        .withMessageStartingWith(
            "highest pressure must be at least the supply of 7 bar(g), was 6.9 bar(g)");
  }

  @Test
  void two_parts_of_one_id_are_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Catalogue.of(List.of(
            Shelf.hose(Shelf.steel("x"), 9.5, 10.0), Shelf.hose(Shelf.steel("x"), 12.7, 10.0))))
        .withMessageContaining("id of a part must be unique");
  }

  @Test
  void a_catalogue_finds_its_parts() {
    Catalogue catalogue = Catalogue.of(Shelf.parts());
    assertThat(catalogue.parts()).hasSize(5);
    assertThat(catalogue.part("wide")).map(Part::name).contains("part wide");
    assertThat(catalogue.part("unknown")).isEmpty();
  }

  @Test
  void parts_without_id_name_rating_or_profile_are_refused() {
    assertThatIllegalArgumentException().isThrownBy(() -> PartFacts.of(" ", "x"));
    assertThatIllegalArgumentException().isThrownBy(() -> PartFacts.of("x", ""));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PartFacts.of("x", "x").withRating(GaugePressure.ofBar(0.0)))
        .withMessageStartingWith("rating of part x must be above 0 bar(g), was 0 bar(g)");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Part.Socket(
            Shelf.steel("x"),
            Set.of(),
            End.parse("3/8 NPT female"),
            FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(2.0), 0.3)))
        .withMessageStartingWith("profiles of socket x must be at least one");
  }

  @Test
  void facts_and_words_read_well() {
    assertThat(Shelf.steel("x")).hasToString("part x (x)");
    assertThat(Material.HARDENED_STEEL).hasToString("hardened steel");
    assertThat(Environment.WASH_DOWN).hasToString("wash down");
    assertThat(Lubrication.LUBRICATED).hasToString("lubricated");
  }
}
