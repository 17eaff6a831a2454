package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/**
 * Where the answer to a question on an amount can turn. A value that is left out here makes one answer of two: the
 * customer is told that 10 bar changes nothing where a part is rated for 9.
 */
class TurnsTest {

  private static final End FEMALE = End.parse("3/8 NPT female");
  private static final End MALE = End.parse("3/8 NPT male");
  private static final CapacityRange WIDE = CapacityRange.exactly(
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(20.0), 0.3));

  /** Rated for so many bar(g), and allowed from so many degrees below zero to ten times as many above. */
  private static PartFacts rated(String id, double bar) {
    return PartFacts.of(id, "part " + id)
        .withRating(GaugePressure.ofBar(bar))
        .withTemperatures(Temperature.ofCelsius(-bar), Temperature.ofCelsius(10.0 * bar));
  }

  private static Part.Hose hose(String id, double bar, double metres) {
    Part.Hose hose = Shelf.hose(rated(id, bar), 12.7, metres);
    return new Part.Hose(
        hose.facts(), HoseBore.of(Length.ofMillimetres(12.7)), hose.conduitRange(), FEMALE, MALE);
  }

  /** A job of two tools in which a part of every kind is there, each with a rating of its own. */
  private static Requirement job() {
    Slot.Coupling coupling = Slot.coupling("outlet")
        .withSocket(new Part.Socket(rated("socket", 11.0), Set.of("finch"), FEMALE, WIDE))
        .withPlug(new Part.Plug(rated("plug", 12.0), "finch", MALE));
    Slot.Hose hose = Slot.hose("hose", Length.ofMetres(5.0)).with(hose("hose", 13.0, 7.0));
    Slot.Regulated regulated = Slot.regulator("regulator", GaugePressure.ofBar(6.5))
        .failingAt(GaugePressure.ofBar(6.75))
        .with(new Part.Regulator(
            rated("regulator", 14.0),
            WIDE,
            PressureDrop.ofBar(0.0),
            FreeAirFlow.ofAnrLitresPerSecond(10.0),
            FEMALE,
            MALE));
    Slot.InLine filter = Slot.inLine("filter", DeviceKind.FILTER)
        .with(new Part.Device(rated("filter", 15.0), DeviceKind.FILTER, WIDE, FEMALE, MALE));
    Slot.Splitter splitter = Slot.splitter("manifold")
        .with(
            new Part.Splitter(rated("manifold", 16.0), WIDE, FEMALE, Collections.nCopies(2, MALE)));
    ToolLine drill = line("drill").withToolRating(GaugePressure.ofBar(7.25));
    ToolLine saw = line("saw").withToolRating(GaugePressure.ofBar(7.75));
    return Requirement.forTools(
            Layout.of(List.of(coupling, hose, regulated, filter, splitter), List.of(drill, saw)))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(MALE)
        .rules(OwnRulesTest.own("share of lowest rating,<=,60,percent of the rating,forbids,,"))
        .build();
  }

  private static ToolLine line(String tool) {
    return ToolLine.to(
        tool,
        FreeAirFlow.ofAnrLitresPerSecond(3.0),
        GaugePressure.ofBar(5.0),
        FEMALE,
        List.of(Slot.hose("hose to " + tool, Length.ofMetres(5.0))));
  }

  private static final Catalogue CATALOGUE = Catalogue.of(List.of(hose("other", 9.0, 15.0)));

  private static List<Double> turns(Topic topic) {
    return Turns.of(topic, job(), CATALOGUE);
  }

  private static Double[] pascals(double... bar) {
    List<Double> all = new ArrayList<>();
    for (double each : bar) {
      all.add(GaugePressure.ofBar(each).pascals());
    }
    return all.toArray(Double[]::new);
  }

  @Test
  void every_rating_of_a_part_that_is_there_or_may_be_chosen_may_turn_the_highest_pressure() {
    assertThat(turns(Topic.HIGHEST))
        .as("ratings")
        .contains(pascals(9.0, 11.0, 12.0, 13.0, 14.0, 15.0, 16.0))
        .as("60 % of them, by the rule of the works")
        .contains(GaugePressure.ofPascals(9.0e5 * 60.0 / 100.0).pascals())
        .contains(GaugePressure.ofPascals(16.0e5 * 60.0 / 100.0).pascals())
        .as("what the regulator is set to, and what it fails at")
        .contains(pascals(6.5, 6.75))
        .as("what the tools stand")
        .contains(pascals(7.25, 7.75))
        .as("30 psi, 29 CFR 1910.242(b)")
        .contains(GaugePressure.ofPsi(30.0).pascals())
        .isSorted()
        .isEqualTo(turns(Topic.REGULATOR_FAILED));
  }

  @Test
  void limits_of_rules_alone_turn_the_pressure_of_a_blocked_nozzle() {
    assertThat(turns(Topic.BLOCKED_NOZZLE))
        .contains(GaugePressure.ofPsi(30.0).pascals())
        .doesNotContain(pascals(11.0, 6.5, 7.25));
  }

  /** In a usual shop, from 5 to 40 °C, nobody asks what a part stands; at 0 °C water freezes. */
  @Test
  void what_parts_are_allowed_at_and_what_is_usual_turn_temperatures() {
    assertThat(turns(Topic.COLDEST))
        .containsExactly(kelvins(-16.0, -15.0, -14.0, -13.0, -12.0, -11.0, -9.0, 0.0, 5.0));
    assertThat(turns(Topic.HOTTEST))
        .containsExactly(kelvins(40.0, 90.0, 110.0, 120.0, 130.0, 140.0, 150.0, 160.0));
  }

  private static Double[] kelvins(double... celsius) {
    List<Double> all = new ArrayList<>();
    for (double each : celsius) {
      all.add(Temperature.ofCelsius(each).kelvins());
    }
    return all.toArray(Double[]::new);
  }

  @Test
  void the_lengths_of_hoses_turn_how_far_one_must_reach() {
    assertThat(turns(Topic.REACH)).containsExactly(7.0, 15.0);
  }

  /** Behind the regulator of 6.5 bar(g) that fails at 6.75: the tools see 6.5, and 6.75 at most. */
  @Test
  void what_stands_at_the_tool_turns_what_it_must_stand() {
    assertThat(Turns.of(Topic.TOOL_RATING, job().toEachTool().get(0), CATALOGUE))
        .containsExactly(pascals(6.5, 6.75));
  }

  private static List<String> words(Topic topic, Requirement job) {
    return Turns.spans(topic, job, CATALOGUE).stream()
        .map(span -> span.inWords(topic, UnitSystem.SI))
        .toList();
  }

  /** The supply is 7 bar(g). */
  @Test
  void a_regulator_cannot_fail_beyond_the_highest_pressure_nor_below_the_usual() {
    assertThat(words(Topic.REGULATOR_FAILED, Shelf.job().build()))
        .as("no more than is there: one value")
        .containsExactly("just 7 bar(g)");
    assertThat(words(
            Topic.REGULATOR_FAILED,
            Shelf.job().highest(GaugePressure.ofBar(10.0)).build()))
        .containsExactly(
            "just 7 bar(g)",
            "more than 7 bar(g), less than 7.5 bar(g)",
            "just 7.5 bar(g)",
            "more than 7.5 bar(g), less than 9 bar(g)",
            "just 9 bar(g)",
            "more than 9 bar(g), less than 9.9 bar(g)",
            "just 9.9 bar(g)",
            "more than 9.9 bar(g), less than 10 bar(g)",
            "just 10 bar(g)");
  }

  @Test
  void how_far_a_hose_must_reach_turns_between_what_is_told_at_most_and_at_least() {
    Slot.Hose hose = Slot.hose("hose", Length.ofMetres(15.0))
        .reaching(new Range<>(Length.ofMetres(6.0), Length.ofMetres(15.0)));
    assertThat(Turns.spans(hose, job(), CATALOGUE))
        .extracting(Span::inside)
        .containsExactly(6.0, 6.5, 7.0, 11.0, 15.0);
  }
}
