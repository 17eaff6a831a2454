package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which ends meet, also where standard pieces are still to be bought: each is sealed and clamped by what meets it. */
class MeetingTest {

  /** The meetings of a pipe with such ends, between an outlet and a tool that it may not fit. */
  private static List<Meeting> of(String outlet, String upstream, String downstream, String inlet) {
    Conduit pipe =
        Conduit.of(Length.ofMillimetres(12.0), Length.ofMetres(2.0), Length.ofMillimetres(0.01));
    Requirement job = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(3.0), GaugePressure.ofBar(5.0))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse(outlet))
        .toolInlet(End.parse(inlet))
        .layout(Layout.of(List.of(Slot.pipe(
            "pipe", ConduitRange.exactly(pipe), End.parse(upstream), End.parse(downstream)))))
        .build();
    Proposal proposal = Selection.of(job, Catalogue.of(List.of()))
        .fold(fitting -> fitting.best(), nothing -> nothing.nearest().get(0));
    return Meeting.of(proposal.assembly());
  }

  /** Nipple, coupling, reducer; whichever of its two ends is named first, each goes on the way it fits. */
  @ParameterizedTest
  @CsvSource({
    "3/8 NPT male, 3/8 NPT male",
    "3/8 NPT female, 3/8 NPT female",
    "1/2 NPT male, 3/8 NPT female",
    "3/8 NPT female, 1/2 NPT male",
    "3/8 NPT male, 1/2 NPT female",
    "1/2 NPT female, 3/8 NPT male",
    "1/4 NPT male, 1/2 NPT female"
  })
  void with_the_standard_pieces_that_are_lacking_every_end_meets_one_that_it_goes_onto(
      String outlet, String upstream) {
    List<Meeting> all = of(outlet, upstream, "3/8 NPT male", "3/8 NPT female");
    assertThat(all).hasSizeGreaterThan(2);
    List<Meeting> lacking = all.subList(0, all.size() - 1);
    assertThat(lacking)
        .allMatch(each -> Mating.isSound(each.mating().one(), each.mating().other()));
    assertThat(lacking.get(0).mating().one()).isEqualTo(End.parse(outlet));
    assertThat(lacking.get(lacking.size() - 1).mating().other()).isEqualTo(End.parse(upstream));
    assertThat(lacking.get(0).upstream()).as("the outlet is no part").isNull();
    assertThat(lacking.get(0).downstream()).as("a piece that no catalogue has").isNull();
    assertThat(lacking.get(lacking.size() - 1).downstream()).isInstanceOf(Part.Pipe.class);
    Meeting atTool = all.get(all.size() - 1);
    assertThat(atTool.upstream()).isInstanceOf(Part.Pipe.class);
    assertThat(atTool.downstream()).isNull();
  }

  /** A hose end is called by the part it belongs to, on whichever side of the joint it is. */
  @Test
  void the_hose_of_a_joint_is_called_by_its_name_on_either_side() {
    List<Meeting> all = of("10 mm barb", "10 mm hose", "10 mm hose", "10 mm barb");
    assertThat(all).hasSize(2);
    assertThat(all.get(0).hoseName()).isEqualTo("pipe");
    assertThat(all.get(1).hoseName()).isEqualTo("pipe");
    assertThat(of("10 mm hose", "10 mm barb", "10 mm barb", "10 mm hose").get(0).hoseName())
        .as("that of the outlet is no part")
        .isEqualTo(End.parse("10 mm hose").label());
  }
}
