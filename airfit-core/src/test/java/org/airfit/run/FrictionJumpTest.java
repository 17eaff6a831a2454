package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.airfit.Pencil;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.line.Conduit;
import org.airfit.line.LossModels;
import org.airfit.plant.Compressor;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/**
 * A tool whose curve passes through the jump of friction at Re 2300: no flow meets both, and every answer says so. What
 * is right is taken from the law of the hose on either side of the jump.
 */
class FrictionJumpTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState FOUR =
      AirState.of(AbsolutePressure.ofBar(4.0), Temperature.ofCelsius(20.0));
  private static final double VISCOSITY = FOUR.viscosity().pascalSeconds();
  private static final double BORE = 0.001;
  private static final Conduit TUBE =
      Conduit.of(Length.ofMetres(BORE), Length.ofMetres(7.0), Length.ofMillimetres(0.001));

  /** Re = 4 ṁ/(π D μ) = 2300. */
  private static final double JUMP = 0.25 * 2300.0 * Math.PI * BORE * VISCOSITY;

  private static double behindTube(double flow) {
    FlowElement tube = LossModels.isothermal().element(TUBE);
    return tube.outlet(flow, 4.0e5, 293.15, VISCOSITY);
  }

  private static double laminar() {
    return behindTube(JUMP * (1.0 - 1.0e-9));
  }

  private static double turbulent() {
    return behindTube(JUMP * (1.0 + 1.0e-9));
  }

  private static Run run() {
    return Run.from(FOUR, ATMOSPHERE).through("tube", TUBE);
  }

  /** A tool that takes a flow at a pressure at which it chokes: its flow is in proportion to the pressure. */
  private static ToolDemand taking(double flow, double pascals) {
    return ToolDemand.following(
        "tool",
        FreeAirFlow.from(
            MassFlow.ofKilogramsPerSecond(flow * 7.0e5 / pascals), ReferenceState.COMPRESSOR_INLET),
        AbsolutePressure.ofBar(7.0));
  }

  private static RunResult.Delivered delivered(RunResult result) {
    return (RunResult.Delivered) result;
  }

  /** Hagen and Poiseuille with the gas law: p1² − p2² = 256 μ L R T ṁ/(π D⁴), but for the speeding up of the air. */
  @Test
  void the_two_sides_are_those_of_laminar_and_turbulent_flow() {
    double squares =
        256.0 * VISCOSITY * 7.0 * 287.055 * 293.15 * JUMP / (Math.PI * Math.pow(BORE, 4));
    assertThat(laminar()).isCloseTo(Math.sqrt(16.0e10 - squares), within(2.0e-3 * laminar()));
    assertThat(turbulent()).isLessThan(0.95 * laminar()).isGreaterThan(2.0e5);
  }

  @Property(tries = 100)
  void a_tool_that_crosses_the_jump_stands_there_and_says_so(
      @ForAll @Scale(9) @DoubleRange(min = 0.01, max = 0.99) double part) {
    double wanted = laminar() + part * (turbulent() - laminar());
    ToolDemand tool = taking(JUMP, wanted);
    RunResult.Delivered balance = delivered(run().balance(tool));
    assertThat(balance.massFlow().kilogramsPerSecond()).isCloseTo(JUMP, within(1.0e-11 * JUMP));
    assertThat(balance.atTool().pascals()).isCloseTo(wanted, within(1.0e-8 * wanted));
    FrictionJump jump = balance.jump().orElseThrow();
    assertThat(jump.elements()).containsExactly("tube");
    assertThat(jump.most().pascals()).isCloseTo(laminar(), within(1.0e-7 * laminar()));
    assertThat(jump.least().pascals()).isCloseTo(turbulent(), within(1.0e-7 * turbulent()));
    assertThat(balance.leastAtTool()).isEqualTo(jump.least());
    assertThat(balance.shares().get(0).unsettled()).isTrue();
    assertThat(balance.choking()).isEmpty();
    // without the tube the tool has the supply's pressure
    assertThat(balance.bottleneck().gain().pascals())
        .isCloseTo(4.0e5 - wanted, within(1.0e-8 * wanted));
  }

  /** What a tool needs is kept at the jump only where the lower side keeps it. */
  @Test
  void a_pressure_between_the_sides_of_a_jump_is_not_kept() {
    double middle = 0.5 * (laminar() + turbulent());
    RunResult stands = run().balance(taking(JUMP, middle));
    for (double needed : new double[] {turbulent() - 1.0, turbulent() + 1.0, middle - 1.0}) {
      GaugePressure least = GaugePressure.of(AbsolutePressure.ofPascals(needed), ATMOSPHERE);
      assertThat(run().keeps(least, stands)).isEqualTo(needed < turbulent());
    }
  }

  @Test
  void beside_the_jump_nothing_is_unsettled() {
    RunResult.Delivered before = delivered(run().balance(taking(JUMP, laminar() * 1.0001)));
    RunResult.Delivered behind = delivered(run().balance(taking(JUMP, turbulent() * 0.9999)));
    assertThat(before.massFlow().kilogramsPerSecond()).isLessThan(JUMP);
    assertThat(behind.massFlow().kilogramsPerSecond()).isGreaterThan(JUMP);
    for (RunResult.Delivered balance : List.of(before, behind)) {
      assertThat(balance.jump()).isEmpty();
      assertThat(balance.leastAtTool()).isEqualTo(balance.atTool());
      assertThat(balance.shares().get(0).unsettled()).isFalse();
      assertThat(balance.cautions()).extracting(Caution::title).noneMatch(t -> t.contains("jumps"));
      assertThat(balance.working().toText()).doesNotContain("2300, where", "No flow is steady");
    }
  }

  /** A tube of 0.01 mm jumps by less than a pascal: both sides print as 4 bar(a), so there is nothing to warn of. */
  @Test
  void a_jump_below_the_digits_printed_is_no_caution() {
    FlowElement shortTube =
        LossModels.isothermal().element(TUBE.withLength(Length.ofMillimetres(0.01)));
    double before = shortTube.outlet(JUMP * (1.0 - 1.0e-9), 4.0e5, 293.15, VISCOSITY);
    double behind = shortTube.outlet(JUMP * (1.0 + 1.0e-9), 4.0e5, 293.15, VISCOSITY);
    assertThat(before - behind).isBetween(1.0e-3, 1.0);
    Run run =
        Run.from(FOUR, ATMOSPHERE).through("tube", TUBE.withLength(Length.ofMillimetres(0.01)));
    RunResult.Delivered balance = delivered(run.balance(taking(JUMP, 0.5 * (before + behind))));
    assertThat(balance.jump()).as("it is there").isPresent();
    assertThat(balance.leastAtTool().pascals()).isCloseTo(behind, within(1.0e-4));
    assertThat(balance.cautions()).extracting(Caution::title).noneMatch(t -> t.contains("jumps"));
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(balance.working(units).toText()).doesNotContain("No flow is steady");
    }
    assertThat(delivered(run().balance(taking(JUMP, 0.5 * (laminar() + turbulent()))))
            .cautions())
        .as("a jump that shows")
        .extracting(Caution::title)
        .anyMatch(t -> t.contains("jumps"));
  }

  @Test
  void the_words_of_the_answer_tell_both_sides_and_count_on_the_lower() {
    double wanted = 0.5 * (laminar() + turbulent());
    RunResult.Delivered balance = delivered(run().balance(taking(JUMP, wanted)));
    Pencil.check(balance);
    String most = AbsolutePressure.ofPascals(laminar()).format(UnitSystem.SI.pressureUnit());
    String least = AbsolutePressure.ofPascals(turbulent()).format(UnitSystem.SI.pressureUnit());
    assertThat(balance.working().toText().replaceAll("\\s+", " "))
        .contains("tube is at Re 2300, where friction jumps: its loss lies between the laminar and"
            + " the turbulent one.")
        .contains("No flow is steady here: laminar, the air arrives with " + most
            + ", turbulent with " + least + ". Count on the lower one.");
    assertThat(balance.jump().orElseThrow())
        .hasToString("tube at Re 2300: " + least + " to " + most + " at the tool");
    Caution last = balance.cautions().get(balance.cautions().size() - 1);
    assertThat(last.title()).isEqualTo("The friction jumps at this flow");
    assertThat(last.text())
        .isEqualTo(
            "The flow in tube is at Re 2300, between laminar and turbulent. The pressure at the"
                + " tool may stand anywhere between the two, or swing: count on the lower one.");
  }

  /** Two tubes of one bore jump at one flow; half the loss each. */
  @Test
  void two_lines_of_one_bore_stand_together() {
    Conduit half = TUBE.withLength(Length.ofMetres(3.5));
    Run two = Run.from(FOUR, ATMOSPHERE)
        .through("first", half)
        .through(
            "valve", FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(50.0), 0.3))
        .through("second", half);
    double wanted = 0.5 * (laminar() + turbulent());
    RunResult.Delivered balance = delivered(two.balance(taking(JUMP, wanted)));
    assertThat(balance.jump().orElseThrow().elements()).containsExactly("first", "second");
    assertThat(balance.jump().orElseThrow()).asString().startsWith("first and second at Re 2300: ");
    assertThat(balance.atTool().pascals()).isCloseTo(wanted, within(1.0e-8 * wanted));
    assertThat(balance.shares())
        .extracting(ElementLoss::unsettled)
        .containsExactly(true, false, true);
  }

  /** What the laminar side has and the turbulent side has not is no gain. */
  @Test
  void a_change_is_judged_by_the_lower_side() {
    double wanted = 0.5 * (laminar() + turbulent());
    ToolDemand tool = taking(JUMP, wanted);
    Change same = new Change("nothing", run(), Money.parse("1 USD"));
    RankedChange ranked = RankedChange.rank(run(), tool, List.of(same)).get(0);
    assertThat(ranked.gain().pascals()).isZero();
    assertThat(ranked.loss().pascals()).isZero();
    assertThat(ranked.pressureAfter().pascals()).isCloseTo(turbulent() - 1.0e5, within(0.1));
  }

  /** Laminar it arrives with more than is asked for, turbulent with less: the largest flow ends at the jump. */
  @Test
  void the_largest_flow_that_ends_at_the_jump_says_what_a_little_more_would_leave() {
    GaugePressure wanted = GaugePressure.ofPascals(0.5 * (laminar() + turbulent()) - 1.0e5);
    LargestFlow most = run().largestFlow(wanted).orElseThrow();
    assertThat(most.massFlow().kilogramsPerSecond())
        .isLessThan(JUMP)
        .isCloseTo(JUMP, within(1.0e-11 * JUMP));
    assertThat(most.stopping()).isEmpty();
    RunResult.Delivered result = delivered(most.result());
    assertThat(result.atTool().pascals()).isCloseTo(laminar(), within(0.1));
    assertThat(result.leastAtTool().pascals()).isCloseTo(turbulent(), within(0.1));
    assertThat(result.bottleneck().gain()).isEqualTo(result.lost());
    assertThat(most.working().toText())
        .contains("a little more of it would leave less than "
            + wanted.format(UnitSystem.SI.pressureUnit()) + " at the tool at once.")
        .doesNotContain("was left at the tool");
    LargestFlow before =
        run().largestFlow(GaugePressure.ofPascals(laminar() + 1.0e3 - 1.0e5)).orElseThrow();
    assertThat(delivered(before.result()).jump()).isEmpty();
    assertThat(before.working().toText()).contains("until just ").doesNotContain("at once");
  }

  /** Turbulent flow of that size does not pass so long a tube at all: nothing is sure but the atmosphere. */
  @Test
  void where_the_turbulent_side_does_not_arrive_the_least_is_the_atmosphere() {
    Conduit tube = TUBE.withLength(Length.ofMetres(22.0));
    FlowElement law = LossModels.isothermal().element(tube);
    double laminar = law.outlet(JUMP * (1.0 - 1.0e-9), 4.0e5, 293.15, VISCOSITY);
    double more = law.outlet(JUMP * (1.0 + 1.0e-9), 4.0e5, 293.15, VISCOSITY);
    assertThat(laminar).isGreaterThan(2.0e5);
    assertThat(more >= 1.0e5).isFalse();
    RunResult.Delivered balance = delivered(
        Run.from(FOUR, ATMOSPHERE).through("tube", tube).balance(taking(JUMP, 0.95 * laminar)));
    assertThat(balance.leastAtTool()).isEqualTo(ATMOSPHERE);
    assertThat(balance.atTool().pascals()).isCloseTo(0.95 * laminar, within(1.0));
    assertThat(balance.choking()).isEmpty();
  }

  /** Behind the tube a part that passes the flow from the laminar pressure and not from the turbulent one. */
  @Test
  void a_part_behind_that_chokes_on_the_way_over_the_jump_is_what_chokes() {
    double at = 0.3 * turbulent() + 0.7 * laminar();
    // ṁ* = C p1 ρ0 at 20 °C, ρ0 = 1.185 kg/m³ (ISO 6358)
    double c = JUMP / at / (1.0e5 / (287.055 * 293.15));
    FlowCapacity part = FlowCapacity.of(SonicConductance.ofCubicMetresPerSecondPascal(c), 0.3);
    Run run = run().through("part", part);
    ToolDemand tool = taking(JUMP, 1.9e5 * 0.25);
    RunResult.Delivered balance = delivered(run.balance(tool));
    assertThat(balance.massFlow().kilogramsPerSecond()).isCloseTo(JUMP, within(1.0e-9 * JUMP));
    ElementLoss tube = balance.share("tube");
    assertThat(tube.unsettled()).isTrue();
    assertThat(part.chokedFlow(FOUR.at(tube.outlet())).kilogramsPerSecond())
        .isCloseTo(JUMP, within(1.0e-8 * JUMP));
    assertThat(balance.choking().map(ElementLoss::name)).isEqualTo(Optional.of("part"));
    assertThat(tool.flowAt(balance.atTool(), ATMOSPHERE).kilogramsPerSecond())
        .isCloseTo(JUMP, within(1.0e-8 * JUMP));
  }

  /** A compressor that delivers one flow from 6 to 8 bar holds that flow at any pressure between. */
  @Test
  void a_supply_of_one_flow_at_many_pressures_sinks_to_what_the_tool_needs() {
    FreeAirFlow full = FreeAirFlow.ofAnrLitresPerSecond(5.0);
    Compressor compressor = new Compressor(
        List.of(
            new Compressor.Point(AbsolutePressure.ofBar(3.0), full.times(1.1)),
            new Compressor.Point(AbsolutePressure.ofBar(5.0), full),
            new Compressor.Point(AbsolutePressure.ofBar(9.0), full)),
        AbsolutePressure.ofBar(7.0),
        AbsolutePressure.ofBar(8.0),
        Volume.ofLitres(100.0),
        Temperature.ofCelsius(20.0));
    Run run = Run.from(compressor, ATMOSPHERE)
        .through(
            "valve", FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(500.0), 0.3));
    ToolDemand tool = taking(full.massFlow().kilogramsPerSecond(), 6.0e5);
    RunResult.Delivered balance = delivered(run.balance(tool));
    assertThat(balance.massFlow().kilogramsPerSecond())
        .isCloseTo(full.massFlow().kilogramsPerSecond(), within(1.0e-12));
    assertThat(balance.atTool().bar()).isCloseTo(6.0, within(1.0e-6));
    assertThat(balance.atSupply().bar()).isBetween(6.0, 6.01);
    assertThat(balance.jump()).isEmpty();
    assertThat(balance.choking()).isEmpty();
    Pencil.check(balance);
    assertThat(balance.working().toText())
        .contains(
            "The supply gives this flow at any pressure from 7 bar(a) down: it sinks until the tool"
                + " takes no more.")
        .doesNotContain("It keeps up");
  }
}
