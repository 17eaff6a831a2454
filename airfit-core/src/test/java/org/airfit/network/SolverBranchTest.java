package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.LossModels;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A branch as the solver sees it, held against the public losses of lines and parts, and its slopes against
 * differences of these.
 */
class SolverBranchTest {

  private static final AirState EIGHT =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));
  private static final double KELVINS = 293.15;
  private static final double VISCOSITY = EIGHT.viscosity().pascalSeconds();
  private static final Conduit PIPE =
      Conduit.of(Length.ofMillimetres(10.0), Length.ofMetres(10.0), Length.ofMillimetres(0.0015));
  private static final FlowCapacity COUPLING =
      FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(3.0), 0.3);

  /** ṁ* = C ρ0 p1 √(T0/T1), ISO 6358, at 20 °C. */
  private static final double CHOKED = 3.0e-8 * 1.185 * 8.0e5;

  /** Re 2300 in the pipe: ṁ = Re π d μ/4. */
  private static final double JUMP = 2300.0 * Math.PI * 0.010 * VISCOSITY / 4.0;

  private static final SolverBranch.Scales SCALES =
      new SolverBranch.Scales(8.0e5, 0.05, SolverBranch.JUST);

  private static SolverBranch pipe(double flow) {
    SolverBranch branch =
        new SolverBranch(LossModels.isothermal().element(PIPE), false, 0, 1, KELVINS, VISCOSITY);
    branch.start(flow, SCALES);
    return branch;
  }

  private static SolverBranch coupling(double flow) {
    SolverBranch branch = new SolverBranch(COUPLING.element(), false, 0, 1, KELVINS, VISCOSITY);
    branch.start(flow, SCALES);
    return branch;
  }

  /** The pressure [Pa] behind the pipe, by the public model. */
  private static double behindPipe(double flow, double inlet) {
    return LossModels.isothermal()
        .loss(
            PIPE, MassFlow.ofKilogramsPerSecond(flow), EIGHT.at(AbsolutePressure.ofPascals(inlet)))
        .<Double>fold(flowing -> flowing.outlet().pressure().pascals(), choked -> Double.NaN);
  }

  @Test
  void the_air_goes_from_the_first_node_unless_the_flow_is_negative() {
    SolverBranch branch = pipe(0.01);
    assertThat(branch.isForward()).isTrue();
    assertThat(branch.inletNode()).isZero();
    assertThat(branch.outletNode()).isEqualTo(1);
    branch.flow = -0.01;
    assertThat(branch.isForward()).isFalse();
    assertThat(branch.inletNode()).isEqualTo(1);
    assertThat(branch.outletNode()).isZero();
    branch.stands = true;
    branch.stop();
    assertThat(branch.flow).isZero();
    assertThat(branch.stands).isFalse();
    assertThat(branch.isForward()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.0e-5, 1.0e-4, 0.005, 0.02, -0.005})
  void what_is_left_of_a_pipes_law_and_its_slopes_are_those_of_the_public_model(double flow) {
    double q = Math.abs(flow);
    SolverBranch branch = pipe(flow);
    double behind = behindPipe(q, 8.0e5);
    branch.evaluate(8.0e5, behind - 10.0, SCALES);
    assertThat(branch.left).isCloseTo(10.0, within(1.0e-6));
    double step = 1.0e-4;
    double falls = (behindPipe(q * (1.0 - step), 8.0e5) - behindPipe(q * (1.0 + step), 8.0e5))
        / (2.0 * step * q);
    assertThat(branch.slope).isCloseTo(falls, within(1.0e-2 * falls));
    double higher = (behindPipe(q, 8.0e5 * (1.0 + step)) - behindPipe(q, 8.0e5 * (1.0 - step)))
        / (2.0 * step * 8.0e5);
    assertThat(branch.byInlet)
        .as("the solver takes the friction factor as constant here, which it nearly is")
        .isCloseTo(higher, within(2.0e-2 * higher));
  }

  /** Below 1e-7 of the largest flow it passes, or of the network's: half the flow has half the loss. */
  @Test
  void near_no_flow_the_law_is_a_straight_line_through_nothing() {
    double small = 1.0e-7 * 0.05;
    SolverBranch half = pipe(0.5 * small);
    half.evaluate(8.0e5, 8.0e5, SCALES);
    SolverBranch whole = pipe(small);
    whole.evaluate(8.0e5, 8.0e5, SCALES);
    assertThat(half.left).isCloseTo(0.5 * whole.left, within(1.0e-9));
    assertThat(whole.left).isCloseTo(behindPipe(small, 8.0e5) - 8.0e5, within(1.0e-9));
    assertThat(half.byInlet).isEqualTo(1.0);
    SolverBranch none = pipe(0.0);
    none.evaluate(8.0e5, 7.9e5, SCALES);
    assertThat(none.left).isCloseTo(0.1e5, within(1.0e-9));
    assertThat(none.slope).isPositive();
  }

  /** Newton's step takes away what the line through law and slopes leaves: r + f_p δp1 − δp2 = slope × δq. */
  @ParameterizedTest
  @ValueSource(doubles = {0.01, -0.01})
  void a_step_makes_up_for_what_is_left_and_follows_the_pressures(double flow) {
    for (double damping : new double[] {1.0, 0.5}) {
      SolverBranch branch = pipe(flow);
      branch.evaluate(8.0e5, 7.9e5, SCALES);
      double expected =
          0.01 + (damping * branch.left + branch.byInlet * 200.0 - 300.0) / branch.slope;
      branch.advance(200.0, 300.0, damping, true);
      assertThat(Math.abs(branch.flow)).isCloseTo(expected, within(1.0e-15));
      assertThat(Math.signum(branch.flow)).isEqualTo(Math.signum(flow));
    }
  }

  /** Loss just below and just above Re 2300. */
  private static double[] jumpLosses(double inlet) {
    return new double[] {
      inlet - behindPipe(JUMP * (1.0 - 1.0e-12), inlet),
      inlet - behindPipe(JUMP * (1.0 + 1.0e-11), inlet)
    };
  }

  /** A step over the jump stops half way between the losses; the law holds there with every loss between them. */
  private static SolverBranch standing(double direction, double to) {
    SolverBranch branch = pipe(direction * 0.5 * JUMP);
    branch.evaluate(8.0e5, 8.0e5, SCALES);
    branch.advance(0.0, branch.left - JUMP * branch.slope, 1.0, true);
    double[] losses = jumpLosses(8.0e5);
    branch.evaluate(8.0e5, 8.0e5 - losses[0] - 0.5 * (losses[1] - losses[0]), SCALES);
    branch.advance(0.0, (0.5 - to) * (losses[1] - losses[0]), 1.0, true);
    return branch;
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.25, 0.5, 0.9})
  void between_the_losses_at_re_2300_a_branch_stands_at_the_jump(double part) {
    double[] losses = jumpLosses(8.0e5);
    double spread = losses[1] - losses[0];
    assertThat(losses[1]).isGreaterThan(1.2 * losses[0]);
    double low = 8.0e5 - losses[0] - part * spread;
    for (double direction : new double[] {1.0, -1.0}) {
      SolverBranch branch = standing(direction, part);
      assertThat(branch.stands).isTrue();
      assertThat(branch.flow).isCloseTo(direction * JUMP, within(1.0e-10 * JUMP));
      branch.evaluate(8.0e5, low, SCALES);
      assertThat(branch.left).isCloseTo(0.0, within(1.0e-3 * losses[0]));
      // the whole jump within a leaning of 1e-12 of the flow
      double slope = spread / (1.0e-12 * JUMP);
      assertThat(branch.slope).isCloseTo(slope, within(1.0e-3 * slope));
      assertThat(branch.byInlet).isEqualTo(1.0);
      assertThat(branch.miss(8.0e5, low, 1.0e-11)).isCloseTo(0.0, within(1.0e-6));
    }
  }

  @Test
  void a_standing_branch_leaves_the_jump_at_its_ends() {
    for (double to : new double[] {1.2, -0.2}) {
      SolverBranch branch = standing(1.0, to);
      assertThat(branch.stands).isFalse();
      assertThat(branch.flow > JUMP).isEqualTo(to > 1.0);
      assertThat(branch.flow).isCloseTo(JUMP, within(1.0e-11 * JUMP));
    }
  }

  /** At 0.9 of the jump's inlet pressure less than nothing is left of a loss that 8 bar can bear. */
  @Test
  void where_the_jump_is_gone_it_leaves_to_the_smaller_flows() {
    SolverBranch branch = standing(1.0, 0.5);
    branch.evaluate(1.0e3, 0.5e3, SCALES);
    assertThat(branch.stands).as("1 kPa does not drive the flow of the jump").isFalse();
    assertThat(branch.flow).isLessThan(JUMP);
  }

  @Test
  void a_step_over_the_jump_stops_there_when_it_has_to() {
    for (boolean stops : new boolean[] {true, false}) {
      for (double[] way : new double[][] {{0.5, 2.0}, {2.0, 0.5}, {-0.5, -2.0}}) {
        SolverBranch branch = pipe(way[0] * JUMP);
        branch.evaluate(8.0e5, 8.0e5, SCALES);
        double to = (Math.abs(way[1]) - Math.abs(way[0])) * JUMP;
        branch.advance(0.0, branch.left - to * branch.slope, 1.0, stops);
        assertThat(branch.stands).isEqualTo(stops);
        assertThat(branch.flow)
            .isCloseTo(stops ? Math.copySign(JUMP, way[0]) : way[1] * JUMP, within(1.0e-11 * JUMP));
      }
    }
    SolverBranch turned = pipe(0.5 * JUMP);
    turned.evaluate(8.0e5, 8.0e5, SCALES);
    turned.advance(0.0, turned.left + 2.5 * JUMP * turned.slope, 1.0, true);
    assertThat(turned.stands)
        .as("a flow that turns round passes no flow, no jump")
        .isFalse();
    assertThat(turned.flow).isCloseTo(-2.0 * JUMP, within(1.0e-9 * JUMP));
  }

  @Test
  void behind_a_choking_part_every_lower_pressure_obeys_the_law() {
    SolverBranch branch = coupling(CHOKED);
    branch.flow = COUPLING.element().largest(8.0e5, KELVINS, VISCOSITY);
    assertThat(branch.flow).isCloseTo(CHOKED, within(1.0e-3 * CHOKED));
    for (double outlet : new double[] {0.1e5, 1.0e5, 2.0e5}) {
      assertThat(branch.chokes(8.0e5, outlet)).isTrue();
      assertThat(branch.miss(8.0e5, outlet, 1.0e-11)).isZero();
    }
    assertThat(branch.chokes(8.0e5, 7.0e5)).isFalse();
    branch.flow *= 0.999;
    assertThat(branch.chokes(8.0e5, 1.0e5)).isFalse();
    assertThat(branch.miss(8.0e5, 1.0e5, 1.0e-11)).isGreaterThan(1.0e3);
    branch.flow = 0.0;
    assertThat(branch.chokes(8.0e5, 1.0e5)).isFalse();
  }

  /** Ten pascals above or below the law at this very flow are missed by ten pascals. */
  @Test
  void a_miss_is_how_far_the_pressure_behind_lies_from_the_law() {
    SolverBranch branch = pipe(0.01);
    double law = behindPipe(0.01, 8.0e5);
    for (double off : new double[] {0.0, 10.0, -10.0}) {
      assertThat(branch.miss(8.0e5, law + off, 1.0e-11)).isCloseTo(Math.abs(off), within(1.0e-5));
    }
    assertThat(branch.miss(8.0e5, law, 0.0)).isCloseTo(0.0, within(1.0e-6));
    double nearly = behindPipe(0.01 * (1.0 + 1.0e-4), 8.0e5);
    assertThat(branch.miss(8.0e5, nearly, 1.0e-4)).isCloseTo(0.0, within(1.0e-6));
    assertThat(branch.miss(8.0e5, nearly, 0.0)).isGreaterThan(1.0);
  }

  /** Beyond the largest flow the law falls so steeply that the step back ends at the largest. */
  @Test
  void beyond_choking_a_step_leads_back_to_the_largest_flow() {
    SolverBranch branch = coupling(1.5 * CHOKED);
    branch.evaluate(8.0e5, 1.0e5, SCALES);
    assertThat(branch.left).isNegative();
    branch.advance(0.0, 0.0, 1.0, true);
    assertThat(branch.flow).isCloseTo(CHOKED, within(1.0e-3 * CHOKED));
    branch.evaluate(8.0e5, 7.9e5, SCALES);
    double most = branch.flow;
    branch.advance(0.0, 0.0, 1.0, true);
    assertThat(branch.flow).as("from there the way back leads along the curve").isLessThan(most);
  }

  /** In front of choking the chord goes round the corner: a step does not overshoot the largest flow. */
  @Test
  void just_before_choking_the_slope_is_that_of_the_chord_round_the_corner() {
    double most = COUPLING.element().largest(8.0e5, KELVINS, VISCOSITY);
    for (double part : new double[] {1.0e-7, 0.01, 0.1}) {
      SolverBranch near = coupling(most * (1.0 - part));
      near.evaluate(8.0e5, 1.0e5, SCALES);
      // Newton's step at another pressure in front as well: the largest flow goes in proportion to
      // it
      near.advance(8.0, 0.0, 1.0, true);
      assertThat(near.flow).isCloseTo(most * (1.0 + 1.0e-5), within(2.0e-6 * most));
    }
    // where the pressure behind is met before it chokes, the chord to the corner leads to a flow
    // below the largest
    double corner = COUPLING.element().outlet(most * (1.0 - 1.0e-12), 8.0e5, KELVINS, VISCOSITY);
    SolverBranch before = coupling(most * 0.99);
    before.evaluate(8.0e5, corner + 100.0, SCALES);
    before.advance(0.0, 0.0, 1.0, true);
    assertThat(before.flow).isBetween(most * 0.99, most);
  }

  private static final double LEAN = 0.3;

  private static final SolverBranch.Scales LEANING = new SolverBranch.Scales(8.0e5, 0.05, LEAN);

  private static SolverBranch leaning(double flow) {
    SolverBranch branch =
        new SolverBranch(LossModels.isothermal().element(PIPE), false, 0, 1, KELVINS, VISCOSITY);
    branch.start(flow, LEANING);
    return branch;
  }

  /** The loss [Pa] before the jump, and that behind it, which lies 0.3 of the flow further. */
  private static double[] drawnOut() {
    return new double[] {
      8.0e5 - behindPipe(JUMP * (1.0 - 1.0e-12), 8.0e5),
      8.0e5 - behindPipe(JUMP * (1.0 + LEAN + 2.0e-12), 8.0e5)
    };
  }

  /** A jump that leans over by 0.3 of its flow: the loss goes in a straight line from that before to that behind it. */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.5, 0.9})
  void along_a_leaning_jump_the_loss_goes_in_a_straight_line_with_the_flow(double part) {
    double[] losses = drawnOut();
    double spread = losses[1] - losses[0];
    double low = 8.0e5 - losses[0] - part * spread;
    SolverBranch branch = leaning(0.5 * JUMP);
    branch.evaluate(8.0e5, 8.0e5, LEANING);
    double there = JUMP * (1.0 + LEAN * part) - 0.5 * JUMP;
    branch.advance(0.0, branch.left - there * branch.slope, 1.0, false);
    assertThat(branch.stands).isTrue();
    branch.evaluate(8.0e5, low, LEANING);
    assertThat(branch.flow).isCloseTo(JUMP * (1.0 + LEAN * part), within(1.0e-6 * JUMP));
    assertThat(branch.slope)
        .isCloseTo(spread / (LEAN * JUMP), within(1.0e-6 * spread / (LEAN * JUMP)));
    branch.evaluate(8.0e5, low - 5.0, LEANING);
    assertThat(branch.left).isCloseTo(5.0, within(1.0e-3));
    assertThat(branch.flow).isCloseTo(JUMP * (1.0 + LEAN * part), within(1.0e-6 * JUMP));
    branch.advance(0.0, -0.05 * spread, 0.0, true);
    assertThat(branch.flow).isCloseTo(JUMP * (1.0 + LEAN * (part + 0.05)), within(1.0e-6 * JUMP));
  }

  @Test
  void a_step_that_lands_on_a_leaning_jump_stands_where_it_lands() {
    for (double way : new double[] {1.0, -1.0}) {
      for (double part : new double[] {0.1, 0.5, 0.9}) {
        SolverBranch branch = leaning(way * 0.5 * JUMP);
        branch.evaluate(8.0e5, 8.0e5, LEANING);
        double to = JUMP * (1.0 + LEAN * part) - 0.5 * JUMP;
        branch.advance(0.0, branch.left - to * branch.slope, 1.0, false);
        assertThat(branch.stands).isTrue();
        assertThat(branch.flow).isCloseTo(way * JUMP * (1.0 + LEAN * part), within(1.0e-9 * JUMP));
      }
      SolverBranch over = leaning(way * 0.5 * JUMP);
      over.evaluate(8.0e5, 8.0e5, LEANING);
      over.advance(0.0, over.left - JUMP * over.slope, 1.0, true);
      assertThat(over.flow)
          .as("a step over it stops half way")
          .isCloseTo(way * JUMP * (1.0 + 0.5 * LEAN), within(1.0e-9 * JUMP));
      over.evaluate(8.0e5, 7.0e5, LEANING);
      over.advance(0.0, -8.0e5, 0.0, true);
      assertThat(over.stands).as("past its end it leaves").isFalse();
      assertThat(over.flow).isCloseTo(way * JUMP * (1.0 + LEAN), within(1.0e-9 * JUMP));
    }
  }
}
