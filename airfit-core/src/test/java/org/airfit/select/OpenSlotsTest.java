package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.junit.jupiter.api.Test;

/** Slots to be filled with conditions: a device of a kind, a coupling of another's profile, a regulator that fails. */
class OpenSlotsTest {

  private static final Slot.Coupling OUTLET = Slot.coupling("outlet");
  private static final Slot.Coupling TOOL = Slot.coupling("tool");
  private static final Slot.Hose HOSE = Slot.hose("hose", Length.ofMetres(10.0));

  private static Requirement.Builder job(Slot... slots) {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.2))
        .toolRating(GaugePressure.ofBar(7.5))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .toolInlet(End.parse("1/4 NPT female"))
        .environment(Environment.INDOORS)
        .lubrication(Lubrication.DRY)
        .layout(Layout.of(List.of(slots)));
  }

  private static Part.Device device(String id, DeviceKind kind, double c) {
    return new Part.Device(
        Shelf.steel(id),
        kind,
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), 0.3),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT male"));
  }

  private static Catalogue with(Part... more) {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.addAll(List.of(more));
    return Catalogue.of(parts);
  }

  private static Proposal best(Selection answer) {
    assertThat(answer).as(answer.toString()).isInstanceOf(Selection.Proposals.class);
    return ((Selection.Proposals) answer).best();
  }

  @Test
  void a_device_to_be_chosen_is_one_of_its_kind_that_lets_the_air_through() {
    Catalogue catalogue = with(
        device("narrow filter", DeviceKind.FILTER, 1.0),
        device("wide filter", DeviceKind.FILTER, 20.0),
        device("very wide reel", DeviceKind.REEL, 90.0));
    Requirement job =
        job(Slot.inLine("filter", DeviceKind.FILTER), OUTLET, HOSE, TOOL).build();
    assertThat(best(Selection.of(job, catalogue)).parts())
        .extracting(Part::id)
        .contains("wide filter")
        .doesNotContain("narrow filter", "very wide reel");
    assertThat(Selection.of(
                job(Slot.inLine("oiler", DeviceKind.SWIVEL), OUTLET, HOSE, TOOL).build(), catalogue)
            .toString())
        .contains("The catalogue has no part of the kind swivel for oiler: add one.");
  }

  @Test
  void a_device_of_another_kind_does_not_stand_in_a_slot() {
    Slot.InLine filter = Slot.inLine("filter", DeviceKind.FILTER);
    assertThat(filter).hasToString("filter: filter");
    assertThat(filter.with(device("f", DeviceKind.FILTER, 9.0)))
        .hasToString("filter: filter, it is part f");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> filter.with(device("r", DeviceKind.REEL, 9.0)))
        .withMessage("device of filter must be of the kind filter, was part r of the kind reel");
  }

  /** A cheap wren pair for the tool stands in the catalogue, but the outlet has finch: both must be finch. */
  @Test
  void couplings_of_one_profile_are_of_one_profile_whichever_that_is() {
    Part.Plug wren = Shelf.plug(
        Shelf.steel("wren plug").withPrice(Money.parse("1 EUR")), "wren", "1/4 NPT male");
    Part.Socket cheap = Shelf.socket(
        Shelf.steel("wren socket").withPrice(Money.parse("1 EUR")), "wren", "3/8 NPT female", 90.0);
    Requirement free = job(OUTLET, HOSE, TOOL).objective(Objective.LOWEST_PRICE).build();
    assertThat(best(Selection.of(free, with(wren, cheap))).plug("tool").profile())
        .as("the only one of known price")
        .isEqualTo("wren");
    Requirement tied = job(OUTLET, HOSE, TOOL.ofSameProfileAs("outlet"))
        .objective(Objective.LOWEST_PRICE)
        .build();
    Proposal of = best(Selection.of(tied, with(wren, cheap)));
    assertThat(of.plug("outlet").profile()).isEqualTo("finch");
    assertThat(of.plug("tool").profile()).isEqualTo("finch");
  }

  /**
   * A cheap wren pair stands at the outlet, but the tool's wren plug fits nothing; where only the best is asked for, the
   * dearer finch at the outlet must not go because wren is cheaper there.
   */
  @Test
  void a_cheaper_profile_that_cannot_go_on_does_not_drive_out_the_one_that_can() {
    Part.Plug cheap = Shelf.plug(
        Shelf.steel("wren hose plug").withPrice(Money.parse("1 EUR")), "wren", "3/8 NPT female");
    Part.Plug strange = Shelf.plug(Shelf.steel("wren tool plug"), "wren", "400 mm tube");
    Part.Socket socket = Shelf.socket(
        Shelf.steel("wren socket").withPrice(Money.parse("1 EUR")), "wren", "3/8 NPT female", 9.0);
    Requirement tied = job(OUTLET, HOSE, TOOL.ofSameProfileAs("outlet"))
        .objective(Objective.LOWEST_PRICE)
        .build();
    Part.Plug onTool = Shelf.plug(Shelf.steel("wren adapterless"), "wren", "3/8 NPT male");
    List<Proposal> best = new PartSearch(tied, with(cheap, strange, socket, onTool), 1).fitting();
    assertThat(best).hasSize(1);
    assertThat(best.get(0).plug("outlet").profile()).isEqualTo("finch");
    assertThat(best.get(0).plug("tool").profile()).isEqualTo("finch");
  }

  @Test
  void where_no_profile_does_for_both_the_miss_says_so() {
    Requirement tied = job(
            OUTLET.ofProfile("wren"), HOSE, TOOL.ofProfile("finch").ofSameProfileAs("outlet"))
        .build();
    Part.Plug wren = Shelf.plug(Shelf.steel("wren plug"), "wren", "3/8 NPT female");
    Part.Socket socket = Shelf.socket(Shelf.steel("wren socket"), "wren", "3/8 NPT female", 9.0);
    Selection answer = Selection.of(tied, with(wren, socket));
    assertThat(answer).isInstanceOf(Selection.NothingFits.class);
    for (Proposal near : ((Selection.NothingFits) answer).nearest()) {
      assertThat(near.unmet()).extracting(Finding::rule).contains(Rule.PROFILE_MATES);
    }
  }

  @Test
  void a_coupling_is_tied_to_one_that_stands_before_it() {
    assertThat(TOOL.ofSameProfileAs("outlet"))
        .hasToString("tool: coupling of the same profile as outlet");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Layout.of(List.of(OUTLET, HOSE, TOOL.ofSameProfileAs("hose"))))
        .withMessage("coupling of which tool has the profile must stand before it, was \"hose\";"
            + " name one of: outlet");
  }

  private static Part.Regulator regulator(String id) {
    return new Part.Regulator(
        Shelf.steel(id),
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(30.0), 0.3),
        PressureDrop.ofBar(0.1),
        FreeAirFlow.ofAnrLitresPerSecond(20.0),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT male"));
  }

  /** With 12 bar(g) in front, parts rated 10 bar(g) behind a regulator whose maker tells 9 bar(g) are rated. */
  @Test
  void what_the_maker_tells_of_a_failed_regulator_counts_for_what_stands_behind_it() {
    Slot.Regulated regulated =
        Slot.regulator("regulator", GaugePressure.ofBar(7.0)).with(regulator("there"));
    List<Part> rated = List.of(
        Shelf.hose(Shelf.steel("weak hose").withRating(GaugePressure.ofBar(10.0)), 12.7, 10.0),
        Shelf.adapter("reducer", "3/8 NPT female", "1/4 NPT male"),
        Shelf.adapter("socket", "3/8 NPT female", "3/8 NPT female"));
    Requirement untold = job(regulated, HOSE).highest(GaugePressure.ofBar(12.0)).build();
    Requirement told = job(regulated.failingAt(GaugePressure.ofBar(9.0)), HOSE)
        .highest(GaugePressure.ofBar(12.0))
        .build();
    assertThat(untold.pressuresAtTool().highest()).isEqualTo(GaugePressure.ofBar(12.0));
    assertThat(told.pressuresAtTool().highest()).isEqualTo(GaugePressure.ofBar(9.0));
    assertThat(Selection.of(untold, Catalogue.of(rated))).isInstanceOf(Selection.NothingFits.class);
    assertThat(best(Selection.of(told, Catalogue.of(rated))).parts())
        .extracting(Part::id)
        .contains("weak hose");
  }

  @Test
  void behind_a_second_regulator_counts_what_the_first_lets_through_when_it_fails() {
    Requirement two = job(
            Slot.regulator("first", GaugePressure.ofBar(7.0)).failingAt(GaugePressure.ofBar(8.0)),
            Slot.regulator("second", GaugePressure.ofBar(6.5)),
            HOSE)
        .highest(GaugePressure.ofBar(12.0))
        .build();
    assertThat(two.pressuresAtTool().whileRegulated()).contains(GaugePressure.ofBar(6.5));
    assertThat(two.pressuresAtTool().highest()).isEqualTo(GaugePressure.ofBar(8.0));
    Requirement beyond = job(
            Slot.regulator("first", GaugePressure.ofBar(7.0)).failingAt(GaugePressure.ofBar(20.0)),
            HOSE)
        .highest(GaugePressure.ofBar(12.0))
        .build();
    assertThat(beyond.pressuresAtTool().highest())
        .as("no more than what stands in front of it")
        .isEqualTo(GaugePressure.ofBar(12.0));
  }

  @Test
  void a_failed_regulator_lets_through_no_less_than_it_holds() {
    Slot.Regulated set = Slot.regulator("regulator", GaugePressure.ofBar(7.0));
    assertThat(set.failingAt(GaugePressure.ofBar(7.0)).ifFails())
        .isEqualTo(Optional.of(GaugePressure.ofBar(7.0)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> set.failingAt(GaugePressure.ofBar(6.99)))
        .withMessageStartingWith(
            "pressure behind regulator when it fails must be at least the 7 bar(g)"
                + " it is set to, was 6.99 bar(g)");
  }
}
