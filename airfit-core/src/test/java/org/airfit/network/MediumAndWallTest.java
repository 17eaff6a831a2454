package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.measure.PartSpread;
import org.airfit.plant.Supply;
import org.airfit.plug.Dimension;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.run.ToolDemand;
import org.airfit.safety.Caution;
import org.airfit.safety.Medium;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a line carries is asked before anything is computed, and what it is made of goes into every answer. */
class MediumAndWallTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState EIGHT =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final Conduit STEEL =
      Conduit.of(Length.ofMillimetres(20.0), Length.ofMetres(20.0), Wall.COMMERCIAL_STEEL);
  private static final Conduit PLASTIC =
      Conduit.of(Length.ofMillimetres(20.0), Length.ofMetres(20.0), Wall.SMOOTH_PLASTIC);
  private static final FreeAirFlow FLOW = FreeAirFlow.ofAnrLitresPerSecond(10.0);

  private static List<String> titles(List<Caution> cautions) {
    return cautions.stream().map(Caution::title).toList();
  }

  private static Run run(Conduit conduit) {
    return Run.from(EIGHT, ATMOSPHERE).carrying(Medium.COMPRESSED_AIR).through("pipe", conduit);
  }

  private static List<String> network(Conduit conduit) {
    NetworkResult result = Network.at(ATMOSPHERE)
        .carrying(Medium.COMPRESSED_AIR)
        .supply("a", Supply.fixed(EIGHT))
        .line("first", "a", "b", conduit)
        .line("second", "b", "c", conduit)
        .tool("c", ToolDemand.fixed("tool", FLOW))
        .build()
        .solve();
    return titles(result.cautions());
  }

  @Test
  void plastic_pipe_is_warned_of_wherever_it_is_in_a_line_and_steel_is_not() {
    assertThat(titles(PLASTIC.cautions())).containsExactly("Plastic pipe for compressed air");
    assertThat(PLASTIC.cautions().get(0).text()).contains("PVC", "shatter", "encased");
    assertThat(PLASTIC.cautions().get(0).source().citation())
        .contains("OSHA bulletin 1990-12-13", "OSHA memorandum 1991-02-28");
    assertThat(titles(run(PLASTIC).at(FLOW).cautions()))
        .contains("Plastic pipe for compressed air");
    assertThat(titles(run(STEEL).at(FLOW).cautions()))
        .doesNotContain("Plastic pipe for compressed air");
    assertThat(network(PLASTIC)).containsOnlyOnce("Plastic pipe for compressed air");
    assertThat(network(STEEL)).doesNotContain("Plastic pipe for compressed air");
    for (Wall wall : Wall.values()) {
      assertThat(wall.cautions().isEmpty()).isEqualTo(wall != Wall.SMOOTH_PLASTIC);
    }
    assertThat(Wall.SMOOTH_PLASTIC.toString()).contains("no PVC for compressed air");
  }

  @Test
  void it_is_warned_of_behind_what_stops_the_air_too_and_after_every_change() {
    FlowCapacity needle =
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(0.01), 0.3);
    RunResult starved = Run.from(EIGHT, ATMOSPHERE)
        .through("needle valve", needle)
        .through("pipe", PLASTIC)
        .at(FLOW);
    assertThat(starved).isInstanceOf(RunResult.Starved.class);
    assertThat(titles(starved.cautions())).contains("Plastic pipe for compressed air");
    assertThat(titles(run(PLASTIC).withLossFactor(2.0).at(FLOW).cautions()))
        .contains("Plastic pipe for compressed air");
    Conduit changed = PLASTIC
        .withFittings(3.0)
        .withLength(Length.ofMetres(3.0))
        .withBore(Length.ofMillimetres(15.0));
    assertThat(changed.wall()).contains(Wall.SMOOTH_PLASTIC);
    assertThat(changed.roughness()).isEqualTo(Wall.SMOOTH_PLASTIC.roughness());
    Conduit own =
        Conduit.of(Length.ofMillimetres(20.0), Length.ofMetres(20.0), Length.ofMillimetres(0.004));
    assertThat(own.wall()).isEmpty();
    assertThat(own.cautions()).isEmpty();
    assertThat(own.withWall(Wall.SMOOTH_PLASTIC).roughness()).isEqualTo(own.roughness());
    assertThat(own.withWall(Wall.SMOOTH_PLASTIC)).isNotEqualTo(own);
    assertThat(own.withWall(Wall.SMOOTH_PLASTIC).cautions()).hasSize(1);
  }

  @ParameterizedTest
  @EnumSource(names = "COMPRESSED_AIR", mode = EnumSource.Mode.EXCLUDE)
  void every_other_medium_is_refused_with_its_reason_by_run_network_and_set(Medium medium) {
    String reason = medium.refusal().orElseThrow().text();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Run.from(EIGHT, ATMOSPHERE).carrying(medium))
        .withMessageStartingWith(
            "medium must be compressed air, was " + medium + ": airfit advises")
        .withMessageContaining(reason);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Network.at(ATMOSPHERE).carrying(medium))
        .withMessageContaining(reason);
    PlugProfile profile = PlugProfile.builder("x")
        .displayName("X")
        .from(Provenance.synthetic(), Source.demo("a test"))
        .dimension(
            Dimension.TIP_DIAMETER,
            PartSpread.normal(Length.ofMillimetres(10.0), Length.ofMillimetres(0.05)))
        .medium(medium)
        .confirmUnusual()
        .build();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ReferenceSet.of("set", List.of(profile)))
        .withMessageContaining("medium of profile x must be compressed air", "was " + medium)
        .withMessageContaining(reason);
    assertThat(medium.refusalInWords().orElseThrow())
        .startsWith(
            "airfit advises on compressed air for tools only, not on " + medium + ". Not for ")
        .contains(reason);
    assertThat(Set.of(Medium.values())).hasSize(9).contains(Medium.NITROGEN, Medium.OTHER);
  }

  @Test
  void nitrogen_is_refused_because_it_suffocates() {
    assertThat(Medium.NITROGEN.refusal().orElseThrow().text()).contains("suffocates");
    assertThat(Medium.COMPRESSED_AIR.requireCompressedAir()).isEqualTo(Medium.COMPRESSED_AIR);
    assertThat(Medium.COMPRESSED_AIR.refusalInWords()).isEmpty();
  }
}
