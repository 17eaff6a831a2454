package org.airfit.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.LossModel;
import org.airfit.line.LossModels;
import org.airfit.line.PipeEquation;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;

class RunProperties {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);

  private static Conduit hose(double boreMm, double metres) {
    return Conduit.of(
        Length.ofMillimetres(boreMm), Length.ofMetres(metres), Length.ofMillimetres(0.01));
  }

  private static Run run(double bar, double c, double b, double boreMm, double metres) {
    return Run.from(
            AirState.of(AbsolutePressure.ofBar(bar), Temperature.ofCelsius(20.0)), ATMOSPHERE)
        .through("coupling", FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b))
        .through("hose", hose(boreMm, metres));
  }

  /**
   * Pressure is conserved along the way: what the elements take is what the tool misses, each beginning where the last
   * ended.
   */
  @Property(tries = 300)
  void what_the_elements_take_is_what_is_lost(
      @ForAll @Scale(9) @DoubleRange(min = 4.0, max = 12.0) double bar,
      @ForAll @Scale(9) @DoubleRange(min = 1.0, max = 20.0) double c,
      @ForAll @Scale(9) @DoubleRange(min = 0.0, max = 0.6) double b,
      @ForAll @Scale(9) @DoubleRange(min = 0.0, max = 0.05) double flow) {
    RunResult result = run(bar, c, b, 9.5, 10.0).at(MassFlow.ofKilogramsPerSecond(flow));
    List<ElementLoss> shares = result.fold(RunResult.Delivered::shares, RunResult.Starved::before);
    AbsolutePressure at = AbsolutePressure.ofBar(bar);
    double taken = 0.0;
    for (ElementLoss share : shares) {
      assertThat(share.inlet()).isEqualTo(at);
      at = share.outlet();
      taken += share.drop().pascals();
    }
    AbsolutePressure end = result.fold(RunResult.Delivered::atTool, RunResult.Starved::inlet);
    assertThat(end).isEqualTo(at);
    assertThat(taken).as("Pa").isCloseTo(bar * 1.0e5 - end.pascals(), within(1.0e-8));
  }

  @Property(tries = 300)
  void the_largest_flow_arrives_at_the_pressure_asked_for_or_something_chokes(
      @ForAll @Scale(9) @DoubleRange(min = 4.0, max = 12.0) double bar,
      @ForAll @Scale(9) @DoubleRange(min = 1.0, max = 20.0) double c,
      @ForAll @Scale(9) @DoubleRange(min = 6.0, max = 20.0) double bore,
      @ForAll @Scale(9) @DoubleRange(min = 0.05, max = 0.95) double part) {
    double atTool = part * (bar - 1.0);
    Run run = run(bar, c, 0.3, bore, 10.0);
    MassFlow most = run.largestFlow(GaugePressure.ofBar(atTool)).orElseThrow().massFlow();
    RunResult.Delivered delivered = (RunResult.Delivered) run.at(most);
    assertThat(delivered.atToolGauge().bar()).isGreaterThanOrEqualTo(atTool - 1.0e-12);
    RunResult more = run.at(most.times(1.0 + 1.0e-9));
    assertThat(more.<Double>fold(d -> d.atToolGauge().bar(), s -> -1.0)).isLessThan(atTool);
  }

  @Property(tries = 300)
  void more_flow_or_a_smaller_coupling_never_leaves_more_at_the_tool(
      @ForAll @Scale(9) @DoubleRange(min = 1.0, max = 20.0) double c,
      @ForAll @Scale(9) @DoubleRange(min = 0.005, max = 0.05) double flow,
      @ForAll @Scale(9) @DoubleRange(min = 0.2, max = 1.0) double part) {
    double all = atTool(run(8.0, c, 0.3, 9.5, 10.0), flow);
    assertThat(atTool(run(8.0, c, 0.3, 9.5, 10.0), flow / part)).isLessThanOrEqualTo(all);
    assertThat(atTool(run(8.0, c * part, 0.3, 9.5, 10.0), flow)).isLessThanOrEqualTo(all);
  }

  private static double atTool(Run run, double flow) {
    return run.at(MassFlow.ofKilogramsPerSecond(flow))
        .fold(delivered -> delivered.atTool().pascals(), starved -> 0.0);
  }

  /** A hose cut in two changes nothing; the issue asks for 1e-10. */
  @Property(tries = 300)
  void a_hose_cut_in_two_changes_nothing(
      @ForAll @Scale(9) @DoubleRange(min = 0.001, max = 0.02) double flow,
      @ForAll @Scale(9) @DoubleRange(min = 0.01, max = 0.99) double part) {
    AirState supply = AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
    double whole = atTool(Run.from(supply, ATMOSPHERE).through("whole", hose(9.5, 20.0)), flow);
    double cut = atTool(
        Run.from(supply, ATMOSPHERE)
            .through("one", hose(9.5, 20.0 * part))
            .through("other", hose(9.5, 20.0 * (1.0 - part))),
        flow);
    assertThat(cut).isCloseTo(whole, within(1.0e-10 * whole));
  }

  private static ToolDemand tool(double kilogramsPerSecond) {
    return ToolDemand.following(
        "tool",
        FreeAirFlow.from(
            MassFlow.ofKilogramsPerSecond(kilogramsPerSecond), ReferenceState.COMPRESSOR_INLET),
        AbsolutePressure.ofBar(7.0));
  }

  /** Balance: what the run brings at the tool's pressure is what the tool takes there, choked or not. */
  @Property(tries = 300)
  void a_balanced_tool_takes_what_arrives(
      @ForAll @Scale(9) @DoubleRange(min = 1.1, max = 12.0) double bar,
      @ForAll @Scale(9) @DoubleRange(min = 0.5, max = 20.0) double c,
      @ForAll @Scale(9) @DoubleRange(min = 0.0, max = 0.6) double b,
      @ForAll @Scale(9) @DoubleRange(min = 4.0, max = 20.0) double bore,
      @ForAll @Scale(9) @DoubleRange(min = 0.003, max = 0.2) double rated) {
    RunResult.Delivered balance =
        (RunResult.Delivered) run(bar, c, b, bore, 10.0).balance(tool(rated));
    double flow = balance.massFlow().kilogramsPerSecond();
    double taken = tool(rated).flowAt(balance.atTool(), ATMOSPHERE).kilogramsPerSecond();
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(balance.working(units).answers())
          .hasSize(1); // throws where it gives something else
    }
    // next to choking the pressure moves ten thousand times as fast as the flow, whose last digit
    // is 2e-16
    assertThat(taken).isCloseTo(flow, within(1.0e-8 * flow));
  }

  /** A wider hose, a shorter hose and a larger coupling never take pressure or flow from the tool. */
  @Property(tries = 300)
  void widening_never_hurts_a_balanced_tool(
      @ForAll @Scale(9) @DoubleRange(min = 1.0, max = 20.0) double c,
      @ForAll @Scale(9) @DoubleRange(min = 5.0, max = 20.0) double bore,
      @ForAll @Scale(9) @DoubleRange(min = 1.0, max = 2.0) double wider,
      @ForAll @Scale(9) @DoubleRange(min = 0.005, max = 0.1) double rated) {
    double now = balanced(run(8.0, c, 0.3, bore, 10.0), rated);
    double allowed = now * (1.0 - 1.0e-9);
    assertThat(balanced(run(8.0, c, 0.3, bore * wider, 10.0), rated))
        .isGreaterThanOrEqualTo(allowed);
    assertThat(balanced(run(8.0, c * wider, 0.3, bore, 10.0), rated))
        .isGreaterThanOrEqualTo(allowed);
    assertThat(balanced(run(8.0, c, 0.3, bore, 10.0 / wider), rated))
        .isGreaterThanOrEqualTo(allowed);
  }

  private static double balanced(Run run, double rated) {
    return ((RunResult.Delivered) run.balance(tool(rated))).atTool().pascals();
  }

  private static Run by(boolean adiabatic, Conduit line) {
    Run run = Run.from(
            AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)), ATMOSPHERE)
        .through("hose", line);
    return adiabatic ? run.by(LossModels.of(PipeEquation.ADIABATIC, FrictionLaw.COLEBROOK)) : run;
  }

  /** At one flow, isothermal and adiabatic, laminar to choking; a flow that stops arriving counts as no pressure. */
  @Property(tries = 300)
  void adding_length_never_raises_the_pressure_at_the_tool(
      @ForAll @Scale(9) @DoubleRange(min = 1.0e-5, max = 0.03) double flow,
      @ForAll @Scale(9) @DoubleRange(min = 4.0, max = 30.0) double bore,
      @ForAll @Scale(9) @DoubleRange(min = 0.0, max = 60.0) double metres,
      @ForAll @Scale(9) @DoubleRange(min = 0.0, max = 60.0) double more,
      @ForAll boolean adiabatic) {
    assertThat(atTool(by(adiabatic, hose(bore, metres + more)), flow))
        .isLessThanOrEqualTo(atTool(by(adiabatic, hose(bore, metres)), flow));
  }

  @Property(tries = 300)
  void a_bigger_bore_never_lowers_the_pressure_at_the_tool(
      @ForAll @Scale(9) @DoubleRange(min = 1.0e-5, max = 0.03) double flow,
      @ForAll @Scale(9) @DoubleRange(min = 4.0, max = 30.0) double bore,
      @ForAll @Scale(9) @DoubleRange(min = 1.0, max = 3.0) double wider,
      @ForAll @Scale(9) @DoubleRange(min = 0.1, max = 60.0) double metres,
      @ForAll boolean adiabatic) {
    assertThat(atTool(by(adiabatic, hose(bore * wider, metres)), flow))
        .isGreaterThanOrEqualTo(atTool(by(adiabatic, hose(bore, metres)), flow));
  }

  /** One computation: the pressure of the answer is that of the kernel to the last bit, by every kind of model. */
  @Property(tries = 300)
  void the_kernel_and_the_answer_are_the_same_to_the_last_bit(
      @ForAll @Scale(9) @DoubleRange(min = 0.0, max = 0.05) double flow,
      @ForAll @Scale(9) @DoubleRange(min = 4.0, max = 30.0) double bore,
      @ForAll @Scale(9) @DoubleRange(min = 0.1, max = 60.0) double metres,
      @ForAll @Scale(9) @DoubleRange(min = 1.0, max = 20.0) double c,
      @ForAll @Scale(9) @DoubleRange(min = 0.0, max = 0.6) double b,
      @ForAll @Scale(9) @DoubleRange(min = 0.2, max = 1.0) double index) {
    FlowCapacity coupling = FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(c), b)
        .withSubsonicIndex(index);
    List<LossModel> models = new ArrayList<>(LossModels.all());
    models.add(LossModels.fromReservoir(FrictionLaw.HAALAND));
    for (LossModel model : models) {
      Run run = Run.from(
              AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(35.0)), ATMOSPHERE)
          .through("coupling", coupling)
          .through("hose", hose(bore, metres), model)
          .through("end", hose(bore, 1.0));
      double kernel = run.path().pascalsAtTool(flow);
      run.at(MassFlow.ofKilogramsPerSecond(flow))
          .fold(
              delivered ->
                  assertThat(delivered.atTool().pascals()).as(model.title()).isEqualTo(kernel),
              starved ->
                  assertThat(kernel >= ATMOSPHERE.pascals()).as(model.title()).isFalse());
    }
  }

  /**
   * What a balance has to be, by the laws alone: the tool takes the flow at its pressure, and each element either
   * leaves what its law says, or lets no more through and leaves less. Where friction jumps at Re 2300, it leaves
   * something between the two sides of the jump, and the answer says so.
   */
  @Property(tries = 1000)
  void a_balance_obeys_the_law_of_every_element_and_of_the_tool(
      @ForAll @IntRange(min = 1, max = 5) int count,
      @ForAll @Scale(9) @DoubleRange(min = 1.5, max = 100.0) double bar,
      @ForAll @Scale(9) @DoubleRange(min = 0.0001, max = 10.0) double rated,
      @ForAll Random random) {
    AbsolutePressure supply = AbsolutePressure.ofBar(bar);
    AirState still = AirState.of(supply, Temperature.ofCelsius(20.0));
    Run run = Run.from(still, ATMOSPHERE);
    List<FlowElement> elements = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      if (random.nextInt(4) == 0) {
        Conduit hose = hose(1.0 + 9.0 * random.nextDouble(), 3.0 * random.nextDouble());
        run = run.through("hose " + i, hose);
        elements.add(LossModels.isothermal().element(hose));
      } else {
        FlowCapacity part = FlowCapacity.of(
            SonicConductance.ofCubicDecimetresPerSecondBar(Math.pow(10.0, random.nextDouble())),
            0.6 * random.nextDouble());
        run = run.through("part " + i, part);
        elements.add(part.element());
      }
    }
    ToolDemand tool = ToolDemand.following(
        "tool",
        FreeAirFlow.from(MassFlow.ofKilogramsPerSecond(rated), ReferenceState.ANR),
        AbsolutePressure.ofBar(7.3));
    RunResult.Delivered balance = (RunResult.Delivered) run.balance(tool);
    double flow = balance.massFlow().kilogramsPerSecond();
    double viscosity = still.viscosity().pascalSeconds();
    boolean choked = false;
    boolean jumps = false;
    for (int i = 0; i < count; i++) {
      ElementLoss share = balance.shares().get(i);
      FlowElement element = elements.get(i);
      double inlet = share.inlet().pascals();
      double outlet = element.outlet(flow, inlet, 293.15, viscosity);
      double behind = share.outlet().pascals();
      if (share.chokes()) {
        choked = true;
        assertThat(element.largest(inlet, 293.15, viscosity))
            .as("%s of %s", share, balance)
            .isCloseTo(flow, within(3.0e-9 * flow));
        assertThat(behind).isLessThanOrEqualTo(outlet * (1.0 + 1.0e-12));
      } else if (share.unsettled()) {
        jumps = true;
        double turbulent = element.outlet(flow * (1.0 + 1.0e-9), inlet, 293.15, viscosity);
        assertThat(element.nextJump(flow, viscosity)).isLessThan(flow * (1.0 + 1.0e-9));
        assertThat(behind)
            .as("%s of %s", share, balance)
            .isBetween(Double.isNaN(turbulent) ? 0.0 : turbulent, outlet);
      } else {
        assertThat(behind).as("%s of %s", share, balance).isCloseTo(outlet, within(1.0e-9 * inlet));
      }
    }
    double at = balance.atTool().pascals();
    assertThat(balance.jump().isPresent()).isEqualTo(jumps);
    if (choked || jumps) {
      // near the atmosphere the tool's flow is told by the last digits of the pressure
      double rounding = 1.0e-12 * supply.pascals();
      assertThat(flow)
          .as(balance.toString())
          .isBetween(
              tool.flow(at - rounding, ATMOSPHERE.pascals()) * (1.0 - 1.0e-9),
              tool.flow(at + rounding, ATMOSPHERE.pascals()) * (1.0 + 1.0e-9));
    } else {
      // where little is left for the tool, 1e-12 of the flow moves what it takes by far more
      assertThat(surplus(elements, tool, supply, flow * (1.0 - 1.0e-12), viscosity))
          .as(balance.toString())
          .isLessThanOrEqualTo(0.0);
      assertThat(surplus(elements, tool, supply, flow * (1.0 + 1.0e-12), viscosity))
          .as(balance.toString())
          .isNotNegative();
    }
  }

  /** How much more [kg/s] a flow is than the tool takes at what it leaves; infinite for one that does not pass. */
  private static double surplus(
      List<FlowElement> elements,
      ToolDemand tool,
      AbsolutePressure supply,
      double flow,
      double viscosity) {
    double pascals = supply.pascals();
    for (FlowElement element : elements) {
      pascals = element.outlet(flow, pascals, 293.15, viscosity);
    }
    return Double.isNaN(pascals)
        ? Double.POSITIVE_INFINITY
        : flow - tool.flow(pascals, ATMOSPHERE.pascals());
  }
}
