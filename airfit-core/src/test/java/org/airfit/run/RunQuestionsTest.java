package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.Pencil;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.internal.Digits;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LineLoss;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.line.PipeEquation;
import org.airfit.line.Wall;
import org.airfit.plant.Compressor;
import org.airfit.plant.Regulator;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.safety.Caution;
import org.airfit.working.Completeness;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The questions of a run that go beyond one flow: where a tool balances, what supply it needs, which change is
 * cheapest.
 */
class RunQuestionsTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState EIGHT =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final Conduit HOSE =
      Conduit.of(Length.ofMillimetres(9.5), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
  private static final LossModel ADIABATIC =
      LossModels.of(PipeEquation.ADIABATIC, FrictionLaw.COLEBROOK);
  private static final ToolDemand GRINDER = following(0.012);

  private static FlowCapacity part(double c, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b);
  }

  private static Run shop() {
    return Run.from(EIGHT, ATMOSPHERE)
        .through("wall coupling", part(6.0, 0.3))
        .through("hose", HOSE)
        .through("tool coupling", part(6.0, 0.3));
  }

  private static FreeAirFlow air(double kilogramsPerSecond) {
    return FreeAirFlow.from(
        MassFlow.ofKilogramsPerSecond(kilogramsPerSecond), ReferenceState.COMPRESSOR_INLET);
  }

  private static ToolDemand following(double kilogramsPerSecond) {
    return ToolDemand.following("grinder", air(kilogramsPerSecond), AbsolutePressure.ofBar(7.2));
  }

  private static RunResult.Delivered delivered(RunResult result) {
    return (RunResult.Delivered) result;
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.0e-5, 0.002, 0.012, 0.03})
  void a_tool_balances_where_the_run_brings_what_it_takes(double rated) {
    ToolDemand tool = following(rated);
    RunResult.Delivered balance = delivered(shop().balance(tool));
    double flow = balance.massFlow().kilogramsPerSecond();
    assertThat(tool.flowAt(balance.atTool(), ATMOSPHERE).kilogramsPerSecond())
        .isCloseTo(flow, within(1.0e-11 * flow));
    assertThat(delivered(shop().at(balance.massFlow())).atTool()).isEqualTo(balance.atTool());
    assertThat(balance.choking()).isEmpty();
    Pencil.check(balance);
    Completeness.check(balance);
    assertThat(balance.working().toText()).contains("Air taken by grinder");
  }

  /**
   * A coupling of C 2 chokes; the tool, three times its size, then takes what passes, at the pressure that leaves of
   * it: p = pr ṁ/ṁr.
   */
  @Test
  void a_tool_too_large_chokes_the_coupling_and_has_what_that_leaves() {
    FlowCapacity small = part(2.0, 0.3);
    Run run = Run.from(EIGHT, ATMOSPHERE)
        .through("feed", HOSE)
        .through("coupling", small)
        .through("hose", HOSE.withLength(Length.ofMetres(0.2)));
    ToolDemand tool = following(0.06);
    RunResult.Delivered balance = delivered(run.balance(tool));
    ElementLoss choking = balance.choking().orElseThrow();
    assertThat(choking.name()).isEqualTo("coupling");
    double flow = balance.massFlow().kilogramsPerSecond();
    assertThat(small.chokedFlow(EIGHT.at(choking.inlet())).kilogramsPerSecond())
        .isCloseTo(flow, within(1.0e-10 * flow));
    assertThat(balance.atTool().bar()).isCloseTo(7.2 * flow / 0.06, within(1.0e-9));
    assertThat(choking.outlet().bar()).isLessThan(0.3 * choking.inlet().bar());
    double taken =
        balance.shares().stream().mapToDouble(s -> s.drop().pascals()).sum();
    assertThat(taken).isCloseTo(balance.lost().pascals(), within(1.0e-7));
    assertThat(balance.working().toText()).contains("coupling chokes: it lets no more through");
    assertThat(balance.ranked().get(0).name()).isEqualTo("coupling");
    assertThat(balance.shares())
        .extracting(ElementLoss::chokes)
        .containsExactly(false, true, false);
    // what the tool has without an element is another run, where another flow agrees
    for (ElementLoss share : balance.shares()) {
      double without =
          delivered(run.without(share.name()).balance(tool)).atTool().pascals();
      assertThat(share.gain().pascals())
          .isCloseTo(Math.max(0.0, without - balance.atTool().pascals()), within(1.0e-4));
    }
    assertThat(balance.bottleneck().name()).isEqualTo("coupling");
  }

  /**
   * By hand: C 1 passes 15 L/s ANR from 15 bar whatever is behind it; C 3 passes that from 5 bar or more. The tool
   * takes 80 L/s at 7.3 bar. At 1.461 bar it takes 80 × 1.461/7.3 × √(1 − ((1.01325/1.461 − 0.528)/0.472)²) = 15.0 L/s.
   */
  @Test
  void behind_two_parts_that_choke_the_tool_has_what_its_flow_leaves() {
    ToolDemand tool = ToolDemand.following(
        "tool",
        FreeAirFlow.from(
            MassFlow.ofKilogramsPerSecond(
                0.080 * ReferenceState.ANR.density().kilogramsPerCubicMetre()),
            ReferenceState.ANR),
        AbsolutePressure.ofBar(7.3));
    Run run = Run.from(EIGHT.at(AbsolutePressure.ofBar(15.0)), AbsolutePressure.STANDARD_ATMOSPHERE)
        .through("first", part(1.0, 0.35))
        .through("second", part(3.0, 0.5));
    RunResult.Delivered balance = delivered(run.balance(tool));
    assertThat(balance.atTool().bar()).isCloseTo(1.461, within(5.0e-4));
    assertThat(balance.shares()).allMatch(ElementLoss::chokes);
    assertThat(balance.shares().get(0).outlet().bar()).isCloseTo(5.0, within(1.0e-9));
    assertThat(balance.choking().orElseThrow().name()).isEqualTo("first");
    // without the second nothing is gained, because the first still holds the flow
    assertThat(balance.shares().get(1).gain().bar()).isCloseTo(0.0, within(1.0e-9));
    assertThat(balance.bottleneck().name()).isEqualTo("first");
    assertThat(balance.working().toText())
        .contains(
            "first chokes: it lets no more through, and the pressure behind it is the least at"
                + " which second passes the flow.")
        .contains("second chokes: it lets no more through, and the pressure behind it is what the"
            + " tool leaves of the flow.");
    Pencil.check(balance);
    Completeness.check(balance);
  }

  @Test
  void a_choking_hose_is_found_as_well() {
    Conduit thin =
        Conduit.of(Length.ofMillimetres(5.0), Length.ofMetres(3.0), Length.ofMillimetres(0.01));
    Run run =
        Run.from(EIGHT, ATMOSPHERE).through("thin", thin).through("coupling", part(20.0, 0.3));
    RunResult.Delivered balance = delivered(run.balance(following(0.2)));
    assertThat(balance.choking().orElseThrow().name()).isEqualTo("thin");
    assertThat(balance.shares().get(0).inletMach()).isBetween(0.05, 0.5);
    assertThat(balance.shares().get(0).outletMach()).isGreaterThan(0.8);
  }

  /**
   * Next to choking two roots of the line's equation lie close together; the ten digits of g_c once moved one by 0.005
   * psi.
   */
  @Test
  void the_working_of_a_choking_hose_can_be_told_in_both_systems() {
    Run run = Run.from(EIGHT.at(AbsolutePressure.ofBar(12.0)), ATMOSPHERE)
        .through("coupling", part(0.500933847, 1.0069e-5))
        .through("hose", HOSE.withBore(Length.ofMillimetres(4.00000023)));
    RunResult balance =
        run.balance(ToolDemand.following("tool", air(0.155396584), AbsolutePressure.ofBar(7.0)));
    assertThat(delivered(balance).choking()).isPresent();
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(balance.working(units).answers()).hasSize(1);
    }
  }

  @Test
  void a_tool_of_fixed_flow_has_it_or_starves() {
    ToolDemand gun = ToolDemand.fixed("gun", air(0.01));
    assertThat(shop().balance(gun)).isInstanceOf(RunResult.Delivered.class);
    assertThat(shop().balance(ToolDemand.fixed("gun", air(0.2))))
        .isInstanceOf(RunResult.Starved.class);
  }

  @Test
  void a_supply_at_the_atmosphere_feeds_nothing() {
    RunResult.Delivered balance =
        delivered(shop().suppliedBy(Supply.fixed(EIGHT.at(ATMOSPHERE))).balance(GRINDER));
    assertThat(balance.massFlow().kilogramsPerSecond()).isZero();
    // of nothing, not more than a tenth is lost
    assertThat(balance.cautions())
        .extracting(Caution::title)
        .containsExactly("More pressure at the supply does not help");
  }

  @Test
  void a_drooping_regulator_begins_the_run_with_what_it_holds_at_the_flow() {
    Regulator regulator = new Regulator(EIGHT, air(0.02), AbsolutePressure.ofBar(7.4));
    RunResult.Delivered result =
        delivered(shop().suppliedBy(regulator).at(MassFlow.ofKilogramsPerSecond(0.01)));
    assertThat(result.atSupply().bar()).isCloseTo(7.7, within(1.0e-12));
    assertThat(result.shares().get(0).inlet()).isEqualTo(result.atSupply());
    assertThat(result.working().toText()).contains("Pressure of the air behind the regulator");
    Pencil.check(result);
    assertThat(shop().suppliedBy(regulator).supply()).isEqualTo(regulator);
  }

  @Test
  void a_supply_that_gives_no_more_is_what_starves() {
    Regulator regulator = new Regulator(EIGHT, air(0.02), AbsolutePressure.ofBar(7.4));
    RunResult.Starved starved =
        (RunResult.Starved) shop().suppliedBy(regulator).at(MassFlow.ofKilogramsPerSecond(0.25));
    assertThat(starved.element()).isEqualTo("supply");
    assertThat(starved.inlet()).isEqualTo(EIGHT.pressure());
    assertThat(starved.largest().kilogramsPerSecond())
        .as("down to 1 bar: 7 bar of droop at 30 bar per kg/s")
        .isCloseTo(7.0 / 30.0, within(1.0e-9));
    assertThat(starved.before()).isEmpty();
    assertThat(starved.working().toText()).contains("Pressure of the air behind the regulator");
  }

  @Test
  void a_tool_larger_than_the_compressor_sinks_along_the_curve_or_starves() {
    Compressor compressor = new Compressor(
        List.of(
            new Compressor.Point(AbsolutePressure.ofBar(4.0), air(0.012)),
            new Compressor.Point(AbsolutePressure.ofBar(9.0), air(0.008))),
        AbsolutePressure.ofBar(7.0),
        AbsolutePressure.ofBar(8.0),
        Volume.ofLitres(200.0),
        Temperature.ofCelsius(20.0));
    Run run = shop().suppliedBy(compressor);
    RunResult.Delivered sinking = delivered(run.balance(following(0.016)));
    assertThat(sinking.atSupply().bar()).isBetween(4.0, 7.0);
    assertThat(following(0.016).flowAt(sinking.atTool(), ATMOSPHERE).kilogramsPerSecond())
        .isCloseTo(sinking.massFlow().kilogramsPerSecond(), within(1.0e-12));
    RunResult.Starved starved = (RunResult.Starved) run.balance(following(0.05));
    assertThat(starved.element()).isEqualTo("supply");
    assertThat(starved.largest().kilogramsPerSecond()).isCloseTo(0.012, within(1.0e-12));
    LargestFlow most = run.largestFlow(GaugePressure.ofBar(0.5)).orElseThrow();
    assertThat(most.massFlow().kilogramsPerSecond()).isCloseTo(0.012, within(1.0e-12));
    assertThat(most.stopping()).contains("supply");
    assertThat(most.working().toText())
        .contains("The flow was raised until more of it would not get through: supply stops it.");
    assertThat(run.largestFlow(GaugePressure.ofBar(6.0))).isPresent();
    // between cut-in and cut-out nothing can be counted on
    assertThat(run.largestFlow(GaugePressure.ofBar(6.001))).isEmpty();
  }

  @Test
  void the_run_is_adiabatic_when_asked() {
    MassFlow flow = MassFlow.ofKilogramsPerSecond(0.03);
    Run adiabatic = Run.from(EIGHT, ATMOSPHERE).through("hose", HOSE).by(ADIABATIC);
    LineLoss.Flowing alone = (LineLoss.Flowing) ADIABATIC.loss(HOSE, flow, EIGHT);
    assertThat(delivered(adiabatic.at(flow)).atTool()).isEqualTo(alone.outlet().pressure());
    assertThat(adiabatic.at(flow).working().toText()).contains("adiabatic");
  }

  /** The colder air behind an adiabatic hose reaches the next element in every question alike. */
  @Test
  void the_largest_flow_of_an_adiabatic_run_arrives_at_just_the_pressure_asked_for() {
    Run run = shop().by(ADIABATIC);
    MassFlow most = run.largestFlow(GaugePressure.ofBar(4.0)).orElseThrow().massFlow();
    assertThat(delivered(run.at(most)).atToolGauge().bar()).isCloseTo(4.0, within(1.0e-9));
  }

  @Test
  void the_supply_needed_is_that_at_which_the_tool_has_its_pressure() {
    SupplyNeeded needed = shop().supplyNeeded(GRINDER, GaugePressure.ofBar(6.2)).orElseThrow();
    RunResult.Delivered then =
        delivered(shop().suppliedBy(Supply.fixed(EIGHT.at(needed.needed()))).balance(GRINDER));
    assertThat(then.atToolGauge().bar()).isCloseTo(6.2, within(1.0e-9));
    assertThat(needed.massFlow().kilogramsPerSecond()).isCloseTo(0.012, within(1.0e-14));
    assertThat(needed.present()).isEqualTo(EIGHT.pressure());
    assertThat(needed.isMet()).isTrue();
    assertThat(needed.givesFlow()).isTrue();
    assertThat(needed.toString())
        .isEqualTo(needed.needed().format(PressureUnit.BAR) + " needed, 8 bar(a) at present");
    assertThat(needed.working().toText()).doesNotContain("does not give");
    assertThat(needed.rise().pascals()).isZero();
    assertThat(needed.needed()).isLessThan(needed.present());
    assertThat(needed.extraWork()).isNegative();
  }

  @Test
  void raising_the_supply_is_shown_to_be_the_costly_way() {
    SupplyNeeded needed =
        shop().supplyNeeded(following(0.02), GaugePressure.ofBar(6.2)).orElseThrow();
    assertThat(needed.isMet()).isFalse();
    double rise = needed.rise().bar();
    assertThat(rise).isPositive();
    assertThat(needed.extraUnregulatedFlow()).isCloseTo(rise / 8.0, within(1.0e-12));
    assertThat(needed.extraWorkByRule()).isCloseTo(0.005 * rise * 14.503774, within(1.0e-8));
    assertThat(needed.extraWork())
        .as("one adiabatic stage lies above the rule, by a fifth at 100 psig")
        .isBetween(needed.extraWorkByRule(), 1.4 * needed.extraWorkByRule());
    assertThat(needed.cautions()).isNotEmpty();
    assertThat(needed.neededGauge().bar()).isCloseTo(7.0 + rise, within(1.0e-9));
    Pencil.check(needed);
    Completeness.check(needed);
  }

  @Test
  void a_supply_that_gives_nothing_at_the_flow_is_compared_at_rest() {
    Regulator weak = new Regulator(EIGHT, air(0.005), AbsolutePressure.ofBar(3.0));
    SupplyNeeded needed = shop()
        .suppliedBy(weak)
        .supplyNeeded(ToolDemand.fixed("gun", air(0.0075)), GaugePressure.ofBar(6.0))
        .orElseThrow();
    assertThat(needed.present()).isEqualTo(EIGHT.pressure());
    // the regulator has nothing left at 0.0075 kg/s: the 8 bar at rest are not enough
    assertThat(needed.needed()).isLessThan(needed.present());
    assertThat(needed.givesFlow()).isFalse();
    assertThat(needed.isMet()).isFalse();
    assertThat(needed.rise().pascals()).isZero();
    assertThat(needed.toString())
        .endsWith(" needed, 8 bar(a) at present, which does not give the flow");
    assertThat(needed.working().toText())
        .contains("The present supply does not give 0.0075 kg/s above the atmosphere: it wants a"
            + " larger supply. It is compared at rest.");
    SupplyNeeded none = shop()
        .suppliedBy(Supply.fixed(EIGHT.at(ATMOSPHERE)))
        .supplyNeeded(GRINDER, GaugePressure.ofBar(6.0))
        .orElseThrow();
    assertThat(none.extraWork()).isInfinite();
    assertThat(none.working().toText()).contains("Nothing is compressed at present");
    SupplyNeeded met = shop()
        .suppliedBy(Supply.fixed(EIGHT.at(ATMOSPHERE)))
        .supplyNeeded(GRINDER, GaugePressure.ofBar(0.0))
        .orElseThrow();
    assertThat(met.isMet()).isTrue();
    assertThat(met.extraWork()).isZero();
  }

  @Test
  void a_check_valve_too_strong_for_any_supply_has_no_answer() {
    Run run = Run.from(EIGHT, ATMOSPHERE)
        .through("valve", part(5.0, 0.3).withCrackingPressure(PressureDrop.ofBar(2000.0)));
    assertThat(run.supplyNeeded(GRINDER, GaugePressure.ofBar(6.0))).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> run.supplyNeeded(GRINDER, GaugePressure.ofBar(-0.1)))
        .withMessageStartingWith("pressure at the tool must be at least 0 Pa(g)");
  }

  @Test
  void the_cheapest_change_comes_first() {
    Conduit wide = HOSE.withBore(Length.ofMillimetres(12.7));
    Change hose = new Change("wider hose", shop().replacing("hose", wide), Money.parse("30 USD"));
    Change coupling = new Change(
        "larger tool coupling",
        shop().replacing("tool coupling", part(12.0, 0.3)),
        Money.parse("12 USD"));
    Change nothing = new Change("talk about it", shop(), Money.parse("0 USD"));
    Change shorter = new Change(
        "cut the hose",
        shop().replacing("hose", HOSE.withLength(Length.ofMetres(5.0))),
        Money.parse("0 USD"));
    Change worse = new Change(
        "narrower hose",
        shop().replacing("hose", HOSE.withBore(Length.ofMillimetres(8.0))),
        Money.parse("0 USD"));
    List<RankedChange> ranked =
        RankedChange.rank(shop(), GRINDER, List.of(worse, hose, nothing, coupling, shorter));
    assertThat(ranked.get(0).change()).isEqualTo(shorter);
    assertThat(ranked.get(0).pascalsPerUnit()).isInfinite();
    assertThat(ranked.get(4).change()).isEqualTo(worse);
    assertThat(ranked.get(4).toString()).contains("bar less for 0 USD");
    assertThat(ranked.get(3).pascalsPerUnit()).isZero();
    RankedChange first = ranked.get(1);
    RankedChange second = ranked.get(2);
    assertThat(first.pascalsPerUnit()).isGreaterThan(second.pascalsPerUnit()).isPositive();
    double gain =
        delivered(shop().replacing("hose", wide).balance(GRINDER)).atTool().pascals()
            - delivered(shop().balance(GRINDER)).atTool().pascals();
    RankedChange ofHose =
        ranked.stream().filter(r -> r.change().equals(hose)).findFirst().orElseThrow();
    assertThat(ofHose.gain().pascals()).isCloseTo(gain, within(1.0e-9));
    assertThat(ofHose.pascalsPerUnit()).isCloseTo(gain / 30.0, within(1.0e-9));
    assertThat(ofHose.loss().pascals()).isZero();
    assertThat(ofHose.flowAfter()).isGreaterThan(ofHose.flowBefore());
    assertThat(ranked.get(4).loss().pascals()).isPositive();
    assertThat(ranked.get(4).gain().pascals()).isZero();
    assertThat(ofHose.toString()).startsWith("wider hose: 0.").endsWith("bar more for 30 USD");
    assertThat(ofHose.result()).isInstanceOf(RunResult.Delivered.class);
  }

  @Test
  void a_change_that_feeds_a_starved_tool_gains_all_it_has_then() {
    ToolDemand gun = ToolDemand.fixed("gun", air(0.06));
    Change wider = new Change(
        "wider",
        shop()
            .replacing("hose", HOSE.withBore(Length.ofMillimetres(19.0)))
            .replacing("wall coupling", part(20.0, 0.3))
            .replacing("tool coupling", part(20.0, 0.3)),
        Money.parse("100 USD"));
    RankedChange ranked = RankedChange.rank(shop(), gun, List.of(wider)).get(0);
    assertThat(shop().balance(gun)).isInstanceOf(RunResult.Starved.class);
    // the most that gets through the whole run, not through the one element that stops it
    assertThat(ranked.flowBefore())
        .isEqualTo(shop().largestFlow(GaugePressure.ofBar(0.0)).orElseThrow().massFlow());
    assertThat(ranked.pressureBefore().pascals()).isZero();
    assertThat(ranked.pressureAfter()).isEqualTo(delivered(ranked.result()).atToolGauge());
    assertThat(ranked.gain().pascals()).isEqualTo(ranked.pressureAfter().pascals());
    assertThat(RankedChange.rank(shop(), gun, List.of())).isEmpty();
  }

  @Test
  void of_changes_that_cost_nothing_the_largest_gain_comes_first_and_a_loss_last() {
    Money free = Money.parse("0 USD");
    Change wide = new Change(
        "wide", shop().replacing("hose", HOSE.withBore(Length.ofMillimetres(19.0))), free);
    Change wider = new Change("wide and short", wide.run().without("tool coupling"), free);
    Change same = new Change("nothing", shop(), free);
    Change narrow = new Change(
        "narrow", shop().replacing("hose", HOSE.withBore(Length.ofMillimetres(6.0))), free);
    assertThat(RankedChange.rank(shop(), GRINDER, List.of(narrow, wide, same, wider)))
        .extracting(ranked -> ranked.change().name())
        .containsExactly("wide and short", "wide", "nothing", "narrow");
    RankedChange nothing = RankedChange.rank(shop(), GRINDER, List.of(same)).get(0);
    assertThat(nothing).hasToString("nothing: 0 bar more for 0 USD");
    assertThat(nothing.pascalsPerUnit()).isZero();
  }

  /** A valve that opens at 3 bar leaves 5 of 8 bar also without flow. */
  @Test
  void what_a_check_valve_keeps_is_never_at_the_tool() {
    Run run = Run.from(EIGHT, ATMOSPHERE)
        .through("valve", part(5.0, 0.3).withCrackingPressure(PressureDrop.ofBar(3.0)));
    assertThat(run.largestFlow(GaugePressure.ofBar(4.001))).isEmpty();
    assertThat(run.largestFlow(GaugePressure.ofBar(3.9))).isPresent();
  }

  /** Behind an adiabatic hose the next of the same bore begins with the same air: the Mach numbers are one. */
  @Test
  void an_adiabatic_hose_begins_with_the_colder_air_of_the_one_before() {
    Run run = Run.from(EIGHT, ATMOSPHERE)
        .through("one", HOSE)
        .through("other", HOSE.withLength(Length.ofMetres(1.0)))
        .by(ADIABATIC);
    RunResult.Delivered result = delivered(run.at(MassFlow.ofKilogramsPerSecond(0.035)));
    assertThat(result.shares().get(0).outletMach()).isGreaterThan(0.2);
    assertThat(result.shares().get(1).inletMach())
        .isCloseTo(result.shares().get(0).outletMach(), within(1.0e-9));
  }

  @Test
  void the_cautions_of_a_pipe_go_with_every_answer_of_the_run() {
    Conduit plastic =
        Conduit.of(Length.ofMillimetres(20.0), Length.ofMetres(10.0), Wall.SMOOTH_PLASTIC);
    Run run = Run.from(EIGHT, ATMOSPHERE).through("pipe", plastic);
    assertThat(plastic.cautions()).isNotEmpty();
    assertThat(run.at(MassFlow.ofKilogramsPerSecond(0.01)).cautions())
        .containsAll(plastic.cautions());
    assertThat(run.at(MassFlow.ofKilogramsPerSecond(9.0)).cautions())
        .containsAll(plastic.cautions());
  }

  /** Each element's loss is taken off once, under its own number. */
  @Test
  void the_working_takes_off_the_loss_of_each_element_in_order() {
    RunResult.Delivered result = delivered(shop().at(MassFlow.ofKilogramsPerSecond(0.012)));
    String text = result.working().toText();
    assertThat(text).contains("pt = ps − Δp1 − Δp2 − Δp3");
    assertThat(result.working().toLatex()).contains("\\Delta p_{1}", "\\Delta p_{3}");
    ElementLoss hose = result.share("hose");
    assertThat(hose.toString())
        .isEqualTo("hose: "
            + Digits.significant((hose.inlet().pascals() - hose.outlet().pascals()) / 1.0e5, 3)
            + " bar of " + hose.inlet().format(PressureUnit.BAR));
  }

  @Test
  void a_change_without_name_or_with_a_strange_price_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Change("", shop(), Money.parse("1 USD")));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Change("gift", shop(), Money.parse("-1 USD")))
        .withMessage("price of gift must be at least 0, was -1 USD");
    Change one = new Change("one", shop(), Money.parse("1 USD"));
    Change other = new Change("other", shop(), Money.parse("1 EUR"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> RankedChange.rank(shop(), GRINDER, List.of(one, other)))
        .withMessageContaining("currency must be");
  }

  @Test
  void elements_are_exchanged_by_name() {
    Run without = shop().without("hose");
    MassFlow flow = MassFlow.ofKilogramsPerSecond(0.01);
    assertThat(delivered(without.at(flow)).shares())
        .extracting(ElementLoss::name)
        .containsExactly("wall coupling", "tool coupling");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> shop().without("filter"))
        .withMessage(
            "name must be that of an element of this run, of [wall coupling, hose, tool coupling], was \"filter\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> shop().replacing("wall coupling", HOSE))
        .withMessageStartingWith("name must be that of a line of this run");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> shop().replacing("hose", part(3.0, 0.3)))
        .withMessageStartingWith("name must be that of a part of this run");
  }

  /**
   * Doubling the loss of a line far from choking doubles its drop, and so it is for a part: both to the size of the
   * drop over the pressure.
   */
  @Test
  void wear_and_dirt_multiply_the_loss() {
    MassFlow flow = MassFlow.ofKilogramsPerSecond(0.002);
    Run line = Run.from(EIGHT, ATMOSPHERE).through("hose", HOSE.withFittings(2.0));
    Run coupling = Run.from(EIGHT, ATMOSPHERE).through("coupling", part(6.0, 0.3));
    for (Run run : List.of(line, coupling)) {
      double clean = delivered(run.at(flow)).lost().pascals();
      double worn = delivered(run.withLossFactor(2.0).at(flow)).lost().pascals();
      assertThat(worn).isCloseTo(2.0 * clean, within(0.02 * clean));
    }
    double most = delivered(line.withLossFactor(10.0).at(flow)).lost().pascals();
    double least = delivered(line.at(flow)).lost().pascals();
    assertThat(most).isCloseTo(10.0 * least, within(0.5 * least));
    assertThat(delivered(line.withLossFactor(1.0).at(flow)).atTool())
        .isEqualTo(delivered(line.at(flow)).atTool());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.999999, 10.000001, Double.NaN})
  void a_margin_that_helps_or_has_no_bound_is_refused(double factor) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> shop().withLossFactor(factor))
        .withMessage("factor on the loss must be in [1, 10], was " + factor);
  }

  @Test
  void a_run_of_nothing_answers_no_question() {
    Run nothing = Run.from(EIGHT, ATMOSPHERE);
    assertThatExceptionOfType(IllegalStateException.class)
        .isThrownBy(() -> nothing.balance(GRINDER));
    assertThatExceptionOfType(IllegalStateException.class)
        .isThrownBy(() -> nothing.supplyNeeded(GRINDER, GaugePressure.ofBar(6.0)));
    assertThatExceptionOfType(IllegalStateException.class)
        .isThrownBy(() -> nothing.sensitivities(MassFlow.ofKilogramsPerSecond(0.01)));
  }
}
