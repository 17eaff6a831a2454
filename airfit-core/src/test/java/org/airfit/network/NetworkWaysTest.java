package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.airfit.air.AirState;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.airfit.run.ToolDemand;
import org.junit.jupiter.api.Test;

/**
 * With leaning lines the solver finds what it finds without, and meets every law that {@link NetworkLaws} reckons
 * without the solver. {@link NetworkReachTest} does the same with thousands of networks.
 */
class NetworkWaysTest {

  private static void holds(NetworkLaws laws, String what) {
    Network network = laws.build();
    NetworkResult.Solved quick = (NetworkResult.Solved) network.solve();
    NetworkResult.Solved found = (NetworkResult.Solved) network.solveLeaning();
    assertThat(found.lean()).as(what).isNotEqualTo(SolverBranch.JUST);
    assertThat(found.residual()).as(what).isLessThanOrEqualTo(1.0e-9);
    assertThat(laws.miss(found)).as(what).isLessThanOrEqualTo(1.0e-9);
    double highest = quick.pressures().values().stream()
        .mapToDouble(AbsolutePressure::pascals)
        .max()
        .orElseThrow();
    quick
        .pressures()
        .forEach((node, pressure) -> assertThat(found.at(node).pascals())
            .as("%s at %s", what, node)
            .isCloseTo(pressure.pascals(), within(1.0e-7 * highest)));
  }

  @Test
  void shops_and_wild_networks_are_solved_with_leaning_lines() {
    for (int seed = 0; seed < 6; seed++) {
      holds(DrawnNetworks.shop(seed), "shop " + seed);
      holds(DrawnNetworks.wild(seed), "wild " + seed);
    }
  }

  /** Near Re 2300 of the wider tube, where the flow of one or both stands at the jump. */
  @Test
  void tubes_side_by_side_are_solved_with_leaning_lines() {
    AirState seven = AirState.of(AbsolutePressure.ofBar(7.0), Temperature.ofCelsius(20.0));
    double jump = 0.25 * 2300.0 * Math.PI * 0.004 * seven.viscosity().pascalSeconds();
    for (double narrow : new double[] {1.5, 3.0, 4.0}) {
      for (double times : new double[] {0.9, 1.01, 1.2, 1.7, 2.05}) {
        NetworkLaws laws =
            new NetworkLaws(AbsolutePressure.ofBar(1.0)).supply("s", Supply.fixed(seven));
        int number = 0;
        for (double millimetres : new double[] {4.0, narrow}) {
          Length bore = Length.ofMillimetres(millimetres);
          Length rough = Wall.DRAWN_COPPER_OR_BRASS.roughness();
          laws.line("tube " + number++, "s", "t", Conduit.of(bore, Length.ofMetres(50.0), rough));
        }
        laws.tool("t", ToolDemand.fixed("tool", DrawnNetworks.air(times * jump)));
        holds(laws, narrow + " mm, " + times);
      }
    }
  }
}
