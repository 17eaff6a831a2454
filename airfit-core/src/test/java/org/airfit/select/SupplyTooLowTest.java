package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.airfit.line.Conduit;
import org.airfit.plant.Regulator;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** Where less stands in front of the parts than the tool needs, that is said first, and no parts are called near. */
class SupplyTooLowTest {

  private static final Slot.Hose HOSE = Slot.hose("hose", Length.ofMetres(5.0));

  private static Requirement.Builder job(double needed) {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(needed))
        .toolInlet(Shelf.job().build().toolInlet())
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(Shelf.job().build().outlet())
        .layout(Layout.of(List.of(Slot.coupling("outlet"), HOSE, Slot.coupling("tool"))));
  }

  private static Selection.NothingFits nothing(Requirement.Builder job) {
    Selection found = Selection.of(job.build(), Catalogue.of(Shelf.parts()));
    assertThat(found).isInstanceOf(Selection.NothingFits.class);
    return (Selection.NothingFits) found;
  }

  /** The supply of 7 bar(g) falls to 5.5; the tool needs 6. */
  @Test
  void a_supply_that_falls_below_what_the_tool_needs_is_said_first_and_alone() {
    Selection.NothingFits none = nothing(job(6.0).lowest(GaugePressure.ofBar(5.5)));
    assertThat(none.nearest()).isEmpty();
    assertThat(none.toGive())
        .containsExactly(
            "The supply itself stands at only 5.5 bar(g): couplings, hoses and adapters do not change that."
                + " The tool needs 6 bar(g) while it works, so that the supply must hold more than that, by as"
                + " much as hose and couplings lose.");
    assertThat(none.toGive(UnitSystem.US).get(0)).contains("79.8 psig", "87.0 psig");
    assertThat(none.working(UnitSystem.SI).toText()).contains("5.5 bar(g)");
  }

  /** A higher supply alone would not do: the longest hose of the shelf has 10 m. */
  @Test
  void what_parts_break_beside_it_is_told_too() {
    Selection.NothingFits none = nothing(job(6.0)
        .lowest(GaugePressure.ofBar(5.5))
        .layout(Layout.of(List.of(
            Slot.coupling("outlet"),
            HOSE.reaching(Range.exactly(Length.ofMetres(25.0))),
            Slot.coupling("tool")))));
    assertThat(none.toGive()).hasSize(2);
    assertThat(none.toGive().get(0)).startsWith("The supply itself stands at only 5.5 bar(g)");
    assertThat(none.toGive().get(1))
        .startsWith("Hose reaches: NOT MET. 10 m of hose, 25 m needed: too short. 3 × ");
  }

  @Test
  void just_what_the_tool_needs_is_too_low_as_every_part_loses_some() {
    assertThat(nothing(job(6.999)).nearest()).isNotEmpty();
    Selection.NothingFits none = nothing(job(7.0));
    assertThat(none.nearest()).isEmpty();
    assertThat(none.toGive().get(0))
        .startsWith(
            "The supply itself stands at just the 7 bar(g) that the tool needs, and every part loses"
                + " some: couplings, hoses and adapters do not change that.");
    assertThat(nothing(job(7.001)).toGive().get(0))
        .startsWith("The supply itself stands at only 7 bar(g)");
  }

  /** Of 6 bar set 1.5 are lost by droop: the supply of 7 is not what is too low, and a higher one would not help. */
  @Test
  void a_droop_in_front_of_the_piping_is_not_laid_to_the_supply() {
    Requirement.Builder job = job(5.0)
        .supply(
            new Regulator(
                Shelf.SUPPLY.at(GaugePressure.ofBar(6.0).absolute(Shelf.ATMOSPHERE)),
                FreeAirFlow.ofAnrLitresPerSecond(10.0),
                GaugePressure.ofBar(4.5).absolute(Shelf.ATMOSPHERE)),
            Shelf.ATMOSPHERE)
        .highest(GaugePressure.ofBar(7.0));
    assertThat(SupplyTooLow.inWords(job.build(), UnitSystem.SI))
        .singleElement()
        .asString()
        .startsWith(
            "Of the 6 bar(g) that the first regulator is set to only 4.5 bar(g) is left at the outlet")
        .contains("it must be set higher, by as much as it droops")
        .doesNotContain("the supply must hold");
  }

  /** A tool that may need less is not judged by the most that it may need. */
  @Test
  void what_may_be_enough_is_not_too_low() {
    Requirement.Builder job = Requirement.forTool(
            Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(3.0)),
            new Range<>(GaugePressure.ofBar(5.0), GaugePressure.ofBar(8.0)))
        .toolInlet(Shelf.job().build().toolInlet())
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(Shelf.job().build().outlet())
        .layout(Layout.of(List.of(Slot.coupling("outlet"), HOSE, Slot.coupling("tool"))));
    assertThat(SupplyTooLow.isSo(job.build())).isFalse();
    Requirement regulated = job(6.5)
        .regulated()
        .highest(GaugePressure.ofBar(10.0))
        .leastSetting(GaugePressure.ofBar(5.0))
        .build();
    assertThat(SupplyTooLow.isSo(regulated)).as("a setting that may be enough").isFalse();
  }

  /** What the pipe that is there loses counts, and what the supply needs for it is computed by the run. */
  @Test
  void pipes_that_are_there_count() {
    Conduit narrow =
        Conduit.of(Length.ofMillimetres(9.0), Length.ofMetres(20.0), Length.ofMillimetres(0.05));
    Requirement.Builder job = job(6.0).pipe("old pipe", narrow);
    Selection.NothingFits none = nothing(job);
    assertThat(none.nearest()).isEmpty();
    String said = none.toGive().get(0);
    assertThat(said)
        .startsWith("Of the 7 bar(g) at the supply only ")
        .contains(" is left at the outlet while the tool works", "for the piping alone");
    Conduit choking =
        Conduit.of(Length.ofMillimetres(4.0), Length.ofMetres(20.0), Length.ofMillimetres(0.05));
    assertThat(nothing(job(6.0).pipe("choking pipe", choking)).toGive().get(0))
        .startsWith("Of the 7 bar(g) at the supply nothing is left at the outlet");
    double needed = Double.parseDouble(
        said.substring(said.indexOf("at least ") + 9, said.indexOf(" bar(g) for the piping")));
    Requirement enough = job.supply(
            Shelf.SUPPLY.at(GaugePressure.ofBar(needed + 0.006).absolute(Shelf.ATMOSPHERE)),
            Shelf.ATMOSPHERE)
        .build();
    Requirement tooLow = job.supply(
            Shelf.SUPPLY.at(GaugePressure.ofBar(needed - 0.006).absolute(Shelf.ATMOSPHERE)),
            Shelf.ATMOSPHERE)
        .build();
    assertThat(SupplyTooLow.isSo(enough)).isFalse();
    assertThat(SupplyTooLow.isSo(tooLow)).isTrue();
  }

  @Test
  void a_regulator_that_is_set_too_low_is_named() {
    Requirement.Builder job = job(6.0)
        .layout(Layout.of(List.of(Slot.regulator("on the wall", GaugePressure.ofBar(5.0)), HOSE)));
    List<String> told = SupplyTooLow.inWords(job.build(), UnitSystem.SI);
    assertThat(told)
        .containsExactly(
            "The regulator holds only 5 bar(g): couplings, hoses and adapters do not change"
                + " that. The tool needs 6 bar(g) while it works, so that it must be set higher than that, by as"
                + " much as hose and couplings lose.");
  }

  /** What else forbids the job is still said. */
  @Test
  void what_the_job_itself_breaks_is_told_beside_it() {
    Selection.NothingFits none = nothing(job(7.5).toolRating(GaugePressure.ofBar(6.0)));
    assertThat(none.toGive()).hasSize(2);
    assertThat(none.toGive().get(1)).startsWith("Tool is not over-pressured: NOT MET.");
  }

  @Test
  void of_several_tools_the_one_is_named_that_cannot_have_its_pressure() {
    ToolLine low = line("drill", 5.0);
    ToolLine high = line("saw", 7.5);
    Requirement job = Requirement.forTools(
            Layout.of(List.of(Slot.splitter("tee")), List.of(low, high)))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(Shelf.job().build().outlet())
        .build();
    assertThat(SupplyTooLow.inWords(job, UnitSystem.SI))
        .singleElement()
        .asString()
        .startsWith("For line 2, saw: The supply itself stands at only 7 bar(g)");
  }

  private static ToolLine line(String tool, double bar) {
    return ToolLine.to(
        tool,
        FreeAirFlow.ofAnrLitresPerSecond(3.0),
        GaugePressure.ofBar(bar),
        Shelf.job().build().toolInlet(),
        List.of(Slot.hose("hose to " + tool, Length.ofMetres(5.0))));
  }
}
