package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What rules say where two things count at once: two lines, two regulators, two temperatures. */
class RulesOfSeveralWaysTest {

  private static final End FEMALE = End.parse("3/8 NPT female");
  private static final End MALE = End.parse("3/8 NPT male");
  private static final FlowCapacity WIDE =
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(14.0), 0.3);

  private static Part.Splitter manifold() {
    return new Part.Splitter(Shelf.steel("manifold"), WIDE, FEMALE, Collections.nCopies(2, FEMALE));
  }

  private static Slot.Hose hose(String name, PartFacts facts) {
    return Slot.hose(name, Length.ofMetres(8.0)).with(Shelf.hose(facts, 9.5, 10.0));
  }

  private static Slot.InLine device(String name, DeviceKind kind, PartFacts facts) {
    return Slot.inLine(name, new Part.Device(facts, kind, WIDE, FEMALE, MALE));
  }

  private static ToolLine line(String tool, Slot... slots) {
    return ToolLine.to(
        tool,
        FreeAirFlow.ofAnrLitresPerSecond(3.0),
        GaugePressure.ofBar(5.0),
        FEMALE,
        List.of(slots));
  }

  private static Requirement.Builder job(List<Slot> shared, ToolLine... lines) {
    return Requirement.forTools(Layout.of(shared, List.of(lines)))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(MALE)
        .environment(Environment.INDOORS);
  }

  private static Finding finding(Requirement job, Rule rule, Part... parts) {
    Proposal shown = Selection.of(job, Catalogue.of(List.of(parts)))
        .fold(Selection.Proposals::best, nothing -> nothing.closest().get(0));
    return shown.findings().stream()
        .filter(finding -> finding.rule() == rule)
        .findFirst()
        .orElseThrow();
  }

  private static PartFacts kept(String id, Lubrication kind) {
    return Shelf.steel(id).withLubrication(kind);
  }

  /** One air feeds both lines: it is dry or oiled, and one of the two hoses is wrong on it. */
  @Test
  void what_lines_hold_for_either_kind_of_air_cannot_both_be_right() {
    List<Slot> shared = List.of(Slot.splitter("manifold").with(manifold()));
    Requirement apart = job(
            shared,
            line("gun", hose("to the gun", kept("dry hose", Lubrication.DRY))),
            line("wrench", hose("to the wrench", kept("oily hose", Lubrication.LUBRICATED))))
        .build();
    Finding against = finding(apart, Rule.AIR_KEPT_APART);
    assertThat(against.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(against.reason())
        .isEqualTo("Whatever the line carries, these do not belong on one line: part dry hose,"
            + " kept for dry air, and part oily hose, kept for lubricated air.");
    Requirement alike = job(
            shared,
            line("gun", hose("to the gun", kept("dry hose", Lubrication.DRY))),
            line("wrench", hose("to the wrench", kept("other hose", Lubrication.DRY))))
        .build();
    assertThat(finding(alike, Rule.AIR_KEPT_APART).outcome()).isEqualTo(RuleOutcome.OPEN);
  }

  /** The oiled hose has a lubricator of its own in front, and the other line is open to question: both may be right. */
  @Test
  void a_line_with_a_lubricator_of_its_own_is_not_held_against_another() {
    Requirement job = job(
            List.of(Slot.splitter("manifold").with(manifold())),
            line("gun", hose("to the gun", kept("dry hose", Lubrication.DRY))),
            line(
                "wrench",
                device("oiler", DeviceKind.LUBRICATOR, Shelf.steel("oiler")),
                hose("to the wrench", kept("oily hose", Lubrication.LUBRICATED))))
        .build();
    Finding apart = finding(job, Rule.AIR_KEPT_APART);
    assertThat(apart.outcome()).isNotEqualTo(RuleOutcome.UNMET);
    assertThat(apart.reason()).doesNotContain("do not belong on one line");
  }

  /** A dry filter in front of the splitter sees no oil, whichever line has a lubricator; behind it would. */
  @Test
  void what_stands_in_front_of_the_lubricator_of_a_line_may_be_kept_for_dry_air() {
    Slot filter = device("filter", DeviceKind.FILTER, kept("dry filter", Lubrication.DRY));
    Slot oiler = device("oiler", DeviceKind.LUBRICATOR, Shelf.steel("oiler"));
    Slot manifold = Slot.splitter("manifold").with(manifold());
    ToolLine plain = line("gun", hose("to the gun", Shelf.steel("plain hose")));
    Requirement infront = job(
            List.of(filter, manifold),
            plain,
            line("wrench", oiler, hose("to the wrench", Shelf.steel("other hose"))))
        .build();
    assertThat(finding(infront, Rule.AIR_KEPT_APART).outcome()).isNotEqualTo(RuleOutcome.UNMET);
    assertThat(infront.layout().isBeforeLubricator(filter)).isTrue();
    Requirement behind = job(
            List.of(manifold),
            plain,
            line("wrench", oiler, filter, hose("to the wrench", Shelf.steel("other hose"))))
        .build();
    assertThat(finding(behind, Rule.AIR_KEPT_APART).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(behind.layout().isBeforeLubricator(filter)).isFalse();
    assertThat(behind.layout().isBeforeLubricator(oiler)).isFalse();
    assertThat(behind.layout().isBeforeLubricator(manifold)).isTrue();
    Requirement none = job(List.of(filter, manifold), plain, plain("drill")).build();
    assertThat(none.layout().isBeforeLubricator(filter)).as("nothing oils").isFalse();
  }

  private static ToolLine plain(String tool) {
    return line(tool, hose("to the " + tool, Shelf.steel(tool + " hose")));
  }

  /** A job hammers if one of its tools does. */
  @Test
  void what_one_tool_is_the_job_is() {
    List<Slot> shared = List.of(Slot.splitter("manifold").with(manifold()));
    assertThat(job(shared, plain("drill"), plain("wrench")).build().isImpactTool())
        .isFalse();
    assertThat(job(shared, plain("drill"), plain("wrench").withImpactTool())
            .build()
            .isImpactTool())
        .isTrue();
    assertThat(job(shared, plain("drill"), plain("nailer").withAutomaticFeed())
            .build()
            .isAutomaticFeed())
        .isTrue();
  }

  /** The supply is at 20 °C: what was told of the surroundings does not make it colder or warmer than it is. */
  @ParameterizedTest
  @CsvSource({
    "5, 40, 0, 50, MET",
    "5, 40, 5, 40, MET",
    "5, 40, 6, 50, UNMET",
    "5, 40, 0, 39, UNMET",
    "30, 40, 20, 50, MET",
    "30, 40, 21, 50, UNMET",
    "5, 10, 0, 20, MET",
    "5, 10, 0, 19, UNMET"
  })
  void the_supply_and_the_surroundings_both_count(
      double coldest, double hottest, double from, double to, RuleOutcome expected) {
    PartFacts facts = Shelf.steel("hose").withTemperatures(celsius(from), celsius(to));
    Requirement job =
        Shelf.job().temperatures(celsius(coldest), celsius(hottest)).build();
    assertThat(finding(
                job,
                Rule.TEMPERATURE_SUITS,
                Shelf.socket(anyWeather("socket"), "finch", "3/8 NPT female", 9.0),
                Shelf.plug(anyWeather("hose plug"), "finch", "3/8 NPT female"),
                Shelf.plug(anyWeather("tool plug"), "finch", "1/4 NPT male"),
                Shelf.hose(facts, 9.5, 10.0))
            .outcome())
        .isEqualTo(expected);
  }

  private static PartFacts anyWeather(String id) {
    return Shelf.steel(id).withTemperatures(celsius(-40.0), celsius(80.0));
  }

  private static Temperature celsius(double degrees) {
    return Temperature.ofCelsius(degrees);
  }

  /** The tool needs 6.2 bar(g). What stands above that need not be raised. */
  @ParameterizedTest
  @CsvSource({
    "4.0, 3.5, 'set higher: the one in front of the piping 4 bar(g), in the bay 3.5 bar(g);'",
    "6.3, 3.5, 'The regulator holds only 3.5 bar(g):'",
    "7.0, 3.5, 'The regulator holds only 3.5 bar(g):'",
    "4.0, 6.3, 'The regulator holds only 4 bar(g):'",
    "4.0, 6.2, 'Each of these regulators is set too low, so that all must be set higher: '"
  })
  void the_regulator_in_front_of_the_piping_is_one_of_them(
      double infront, double inTheBay, String told) {
    AirState air =
        AirState.of(GaugePressure.ofBar(infront).absolute(Shelf.ATMOSPHERE), celsius(20.0));
    Slot.Regulated bay = Slot.regulator("in the bay", GaugePressure.ofBar(inTheBay))
        .with(new Part.Regulator(
            Shelf.steel("regulator"),
            WIDE,
            PressureDrop.ofBar(0.0),
            FreeAirFlow.ofAnrLitresPerSecond(10.0),
            FEMALE,
            MALE));
    Requirement job = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.2))
        .toolInlet(End.parse("1/4 NPT female"))
        .outlet(MALE)
        .supply(air, Shelf.ATMOSPHERE)
        .highest(GaugePressure.ofBar(9.0))
        .regulated()
        .layout(Layout.of(List.of(
            bay,
            Slot.coupling("outlet"),
            hose("hose", Shelf.steel("hose")),
            Slot.coupling("tool"))))
        .build();
    Finding air62 = finding(job, Rule.AIR_AT_TOOL, Shelf.parts().toArray(new Part[0]));
    assertThat(air62.outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(air62.reason()).contains(told);
  }
}
