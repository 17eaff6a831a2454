package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.junit.jupiter.api.Test;

/** A regulator in one piece with a filter, and with a lubricator too. */
class FilterRegulatorTest {

  private static final End FEMALE = End.parse("3/8 NPT female");
  private static final End MALE = End.parse("3/8 NPT male");
  private static final GaugePressure SIX = GaugePressure.ofBar(6.0);

  private static Part.Regulator regulator(String id, RegulatorKind kind) {
    return new Part.Regulator(
            Shelf.steel(id).withPrice(Money.parse("50 EUR")),
            FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(9.0), 0.3),
            PressureDrop.ofBar(0.4),
            FreeAirFlow.ofAnrLitresPerSecond(10.0),
            FEMALE,
            FEMALE)
        .as(kind);
  }

  private static Requirement.Builder job(Slot... slots) {
    List<Slot> all = new ArrayList<>(List.of(slots));
    all.add(Slot.hose("hose", Length.ofMetres(8.0)));
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(5.0), GaugePressure.ofBar(4.0))
        .toolInlet(FEMALE)
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(MALE)
        .environment(Environment.INDOORS)
        .layout(Layout.of(all));
  }

  private static Catalogue catalogue(RegulatorKind... kinds) {
    List<Part> parts = new ArrayList<>();
    parts.add(Shelf.hose(Shelf.steel("hose"), 9.5, 10.0));
    Stream.of(kinds).map(kind -> regulator(kind.toString(), kind)).forEach(parts::add);
    return Catalogue.of(parts);
  }

  private static Slot.Regulated slot(RegulatorKind kind) {
    return Slot.regulator("at the drop", kind, SIX);
  }

  private static Proposal best(Requirement job, Catalogue catalogue) {
    return Selection.of(job, catalogue)
        .fold(fitting -> fitting.best(), nothing -> nothing.nearest().get(0));
  }

  /** 6 bar less 0.4 bar × 5 / 10 behind it, as the same regulator alone, and one piece of one price. */
  @Test
  void one_piece_holds_droops_and_costs_once_as_a_regulator_alone() {
    Proposal one = best(
        job(slot(RegulatorKind.FILTER_REGULATOR)).build(),
        catalogue(RegulatorKind.FILTER_REGULATOR));
    Proposal alone =
        best(job(slot(RegulatorKind.REGULATOR)).build(), catalogue(RegulatorKind.REGULATOR));
    assertThat(one.fits()).isTrue();
    assertThat(one.parts()).hasSize(2);
    assertThat(one.price()).contains(Money.parse("50 EUR"));
    assertThat(Shelf.pascalsAtTool(one)).isEqualTo(Shelf.pascalsAtTool(alone));
    assertThat(one.result()
                .<Double>fold(
                    delivered -> delivered.shares().get(0).outlet().pascals(), starved -> 0.0)
            - Shelf.ATMOSPHERE.pascals())
        .isBetween(5.8e5 - 1.0, 5.8e5 + 1.0);
    assertThat(one.joints().stream().map(Joint::where))
        .containsExactly("outlet to filter regulator", "filter regulator to hose", "hose to tool");
    assertThat(Shelf.lines(one).toString()).contains("filter regulator in the line, set to 6");
    assertThat(one.requirement().pressuresAtTool().whileRegulated()).contains(SIX);
  }

  @Test
  void each_kind_is_chosen_among_its_own() {
    Catalogue all = catalogue(RegulatorKind.values());
    for (RegulatorKind kind : RegulatorKind.values()) {
      assertThat(best(job(slot(kind)).build(), all).regulator("at the drop").kind())
          .isEqualTo(kind);
    }
    Selection none = Selection.of(
        job(slot(RegulatorKind.FILTER_REGULATOR)).build(), catalogue(RegulatorKind.REGULATOR));
    assertThat(none.<List<String>>fold(fitting -> List.of(), nothing -> nothing.toGive()))
        .containsExactly("The catalogue has no filter regulator: add one.");
  }

  @Test
  void only_the_one_with_a_lubricator_oils_the_air_behind_it() {
    Requirement oiled = job(slot(RegulatorKind.FILTER_REGULATOR_LUBRICATOR)).build();
    assertThat(oiled.lubrication()).contains(Lubrication.LUBRICATED);
    assertThat(oiled.layout().isBeforeLubricator(oiled.layout().slots().get(0))).isFalse();
    assertThat(job(slot(RegulatorKind.FILTER_REGULATOR)).build().lubrication()).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> job(slot(RegulatorKind.FILTER_REGULATOR_LUBRICATOR))
            .lubrication(Lubrication.DRY)
            .build())
        .withMessageContaining("where a lubricator stands in the layout");
  }

  @Test
  void one_that_is_there_must_be_of_the_kind_of_its_slot() {
    Part.Regulator one = regulator("fr", RegulatorKind.FILTER_REGULATOR);
    Slot.Regulated there = slot(RegulatorKind.FILTER_REGULATOR).with(one).failingAt(SIX);
    assertThat(there.regulator()).contains(one);
    assertThat(there.kind()).isEqualTo(RegulatorKind.FILTER_REGULATOR);
    assertThat(there).hasToString("at the drop: filter regulator set to 6 bar(g), it is part fr");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> slot(RegulatorKind.REGULATOR).with(one))
        .withMessage(
            "regulator of at the drop must be of the kind regulator, was part fr of the kind"
                + " filter regulator");
    for (RegulatorKind kind : RegulatorKind.values()) {
      assertThat(RegulatorKind.parse(kind.toString())).isEqualTo(kind);
    }
  }
}
