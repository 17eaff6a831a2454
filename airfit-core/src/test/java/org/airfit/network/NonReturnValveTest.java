package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.airfit.Pencil;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.plant.Compressor;
import org.airfit.plant.Regulator;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.ToolDemand;
import org.airfit.working.Completeness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Air never flows back into a supply with a non-return valve, and legs without flow are named. */
class NonReturnValveTest {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.STANDARD_ATMOSPHERE;

  private static AirState psig(double psi) {
    return AirState.of(GaugePressure.ofPsi(psi).absolute(ATMOSPHERE), Temperature.ofCelsius(20.0));
  }

  private static Conduit pipe(double millimetres, double metres) {
    return Conduit.of(
        Length.ofMillimetres(millimetres), Length.ofMetres(metres), Length.ofMillimetres(0.045));
  }

  private static ToolDemand tool(String name, double scfm) {
    return ToolDemand.fixed(name, FreeAirFlow.parse(scfm + " scfm"));
  }

  private static NetworkResult.Solved solved(Network network) {
    NetworkResult result = network.solve();
    assertThat(result).as(result.toString()).isInstanceOf(NetworkResult.Solved.class);
    return (NetworkResult.Solved) result;
  }

  /** A header of 2 in pipe between two compressor rooms, and tools half way. */
  private static Network.Builder rooms(double scfm) {
    return Network.at(ATMOSPHERE)
        .supply("room 1", Supply.fixed(psig(115.0)))
        .line("north", "room 1", "shop", pipe(52.5, 30.0))
        .line("south", "room 2", "shop", pipe(52.5, 30.0))
        .tool("shop", tool("all tools", scfm));
  }

  /** The first alone gives what it gives with the second shut: an answer that does not know of a second. */
  @ParameterizedTest
  @ValueSource(doubles = {20.0, 200.0, 600.0})
  void a_supply_at_110_psig_beside_one_at_115_gives_nothing_while_the_shop_stands_higher(
      double scfm) {
    NetworkResult.Solved both =
        solved(rooms(scfm).supply("room 2", Supply.fixed(psig(110.0))).build());
    NetworkResult.Solved one = solved(rooms(scfm).build());
    assertThat(one.at("shop")).isGreaterThan(psig(110.0).pressure());
    assertThat(both.at("shop").pascals()).isCloseTo(one.at("shop").pascals(), within(1.0e-3));
    assertThat(both.idleSupplies()).extracting(SupplyFlow::node).containsExactly("room 2");
    SupplyFlow second =
        both.supplies().stream().filter(SupplyFlow::idle).findFirst().orElseThrow();
    assertThat(second.given().kilogramsPerSecond()).isZero();
    assertThat(second.takenBack().kilogramsPerSecond()).isZero();
    assertThat(second.hasNonReturnValve()).isTrue();
    assertThat(second).hasToString("room 2 gives nothing, its non-return valve is shut");
    assertThat(both.at("room 2")).isGreaterThan(psig(110.0).pressure());
    assertThat(both.deadLegs()).as("a compressor that stands by is no dead leg").isEmpty();
    assertThat(both.standingBy()).extracting(BranchFlow::name).containsExactly("south");
    assertThat(both.through("south").massFlow().kilogramsPerSecond()).isZero();
    assertThat(both.through("south").dead()).isFalse();
    assertThat(both.through("south").standsBy()).isTrue();
    assertThat(both.through("north").dead()).isFalse();
    assertThat(both.working().toText())
        .contains("room 2 gives nothing: its node stands at")
        .contains("No air flows through south: the supply beyond is idle.");
    Pencil.check(both);
    Completeness.check(both);
  }

  /** With more air taken the shop falls below 110 psig: then the second gives, at its own pressure. */
  @Test
  void a_lower_supply_helps_as_soon_as_the_pressure_falls_below_its_own() {
    NetworkResult.Solved both =
        solved(rooms(2500.0).supply("room 2", Supply.fixed(psig(110.0))).build());
    assertThat(both.at("shop")).isLessThan(psig(110.0).pressure());
    assertThat(both.idleSupplies()).isEmpty();
    assertThat(both.deadLegs()).isEmpty();
    assertThat(both.supplies())
        .allSatisfy(supply -> assertThat(supply.given().kilogramsPerSecond()).isPositive());
    assertThat(both.at("room 2").pascals())
        .isCloseTo(psig(110.0).pressure().pascals(), within(1.0e-3));
  }

  /** Told that it has none, air runs back into it, and the answer says how much. */
  @Test
  void without_a_non_return_valve_air_flows_back() {
    NetworkResult.Solved both = solved(rooms(20.0)
        .supplyWithoutNonReturnValve("room 2", Supply.fixed(psig(110.0)))
        .build());
    SupplyFlow second = both.supplies().get(1);
    assertThat(second.hasNonReturnValve()).isFalse();
    assertThat(second.idle()).isFalse();
    assertThat(second.given().kilogramsPerSecond()).isZero();
    assertThat(second.takenBack().kilogramsPerSecond())
        .isCloseTo(
            both.supplies().get(0).given().kilogramsPerSecond() - both.taken().kilogramsPerSecond(),
            within(1.0e-9));
    assertThat(both.at("room 2")).isEqualTo(psig(110.0).pressure());
    assertThat(both.deadLegs()).isEmpty();
    assertThat(second.toString()).startsWith("room 2 takes back ");
    assertThat(both.working().toText())
        .contains("room 2 has no non-return valve: ")
        .contains(" flow back into it.");
  }

  @Test
  void a_curve_says_nothing_of_air_that_flows_back() {
    Regulator regulator = new Regulator(
        psig(110.0), FreeAirFlow.parse(100.0 + " scfm"), psig(105.0).pressure());
    assertThatIllegalArgumentException()
        .isThrownBy(() -> rooms(20.0).supplyWithoutNonReturnValve("room 2", regulator))
        .withMessageStartingWith(
            "supply without a non-return valve at room 2 must hold its pressure whatever flows, was ")
        .withMessageEndingWith("; say supply(…)");
  }

  @Test
  void a_compressor_and_a_regulator_below_the_header_are_idle() {
    Compressor compressor = new Compressor(
        List.of(
            new Compressor.Point(psig(60.0).pressure(), FreeAirFlow.parse(80.0 + " scfm")),
            new Compressor.Point(psig(125.0).pressure(), FreeAirFlow.parse(60.0 + " scfm"))),
        psig(90.0).pressure(),
        psig(105.0).pressure(),
        Volume.ofLitres(500.0),
        Temperature.ofCelsius(20.0));
    Regulator regulator = new Regulator(
        psig(100.0), FreeAirFlow.parse(100.0 + " scfm"), psig(95.0).pressure());
    NetworkResult.Solved result = solved(rooms(100.0)
        .supply("room 2", compressor)
        .line("third", "shop", "room 3", pipe(26.6, 10.0))
        .supply("room 3", regulator)
        .build());
    assertThat(result.idleSupplies())
        .extracting(SupplyFlow::node)
        .containsExactly("room 2", "room 3");
    assertThat(result.idleSupplies()).noneMatch(SupplyFlow::exhausted);
    assertThat(result.deadLegs()).isEmpty();
    assertThat(result.standingBy()).extracting(BranchFlow::name).containsExactly("south", "third");
  }

  /** Three supplies, each lower than the one before: those whose node stays above them are shut, one after another. */
  @Test
  void supplies_are_shut_one_after_another_until_none_takes_air_back() {
    for (double scfm : new double[] {10.0, 300.0, 1000.0, 3000.0}) {
      NetworkResult.Solved result = solved(rooms(scfm)
          .supply("room 2", Supply.fixed(psig(113.0)))
          .line("third", "shop", "room 3", pipe(40.9, 20.0))
          .supply("room 3", Supply.fixed(psig(108.0)))
          .build());
      for (SupplyFlow supply : result.supplies()) {
        double own = supply.supply().still().pressure().pascals();
        double node = result.at(supply.node()).pascals();
        boolean gives = supply.given().kilogramsPerSecond() > 0.0;
        assertThat(supply.idle()).isEqualTo(!gives);
        assertThat(node).isGreaterThanOrEqualTo(own - 1.0e-3);
        assertThat(gives ? node : own).isCloseTo(own, within(1.0e-3));
      }
    }
  }

  @Test
  void equal_supplies_share_and_none_is_idle() {
    NetworkResult.Solved result =
        solved(rooms(200.0).supply("room 2", Supply.fixed(psig(115.0))).build());
    assertThat(result.idleSupplies()).isEmpty();
    assertThat(result.supplies().get(0).given().kilogramsPerSecond())
        .isCloseTo(result.supplies().get(1).given().kilogramsPerSecond(), within(1.0e-9));
  }

  /** Two shops that share nothing but the file: the lower supply is the highest of its own. */
  @Test
  void a_supply_is_idle_only_where_branches_join_it_to_a_higher_one() {
    for (double load : new double[] {0.0, 1.0}) {
      NetworkResult.Solved result = solved(rooms(100.0)
          .line("own", "room 2", "annex", pipe(26.6, 10.0))
          .supply("barn", Supply.fixed(psig(80.0)))
          .line("lane", "barn", "stall", pipe(26.6, 10.0))
          .tool("stall", tool("gun", 5.0).withLoad(load))
          .build());
      assertThat(result.idleSupplies()).isEmpty();
      assertThat(result.at("barn")).isEqualTo(psig(80.0).pressure());
      assertThat(result.through("lane").dead()).isEqualTo(load == 0.0);
    }
  }

  /** No tool runs: nothing flows at all, and the pressure is that of the highest supply everywhere. */
  @Test
  void with_all_tools_off_the_air_stands() {
    NetworkResult.Solved result = solved(Network.at(ATMOSPHERE)
        .supply("room 1", Supply.fixed(psig(115.0)))
        .supply("room 2", Supply.fixed(psig(110.0)))
        .line("main", "room 1", "room 2", pipe(52.5, 30.0))
        .tool("room 2", tool("gun", 5.0).withLoad(0.0))
        .build());
    assertThat(result.pressures().values()).containsOnly(psig(115.0).pressure());
    assertThat(result.taken().kilogramsPerSecond()).isZero();
    assertThat(result.idleSupplies()).extracting(SupplyFlow::node).containsExactly("room 2");
    assertThat(result.deadLegs()).extracting(BranchFlow::name).containsExactly("main");
    assertThat(result.residual()).isZero();
    assertThat(result.working()).isNotNull();
  }

  /**
   * A spur, a loop at its end, and a leg to a tool that is off are dead. A ring is not, nor the branch between its
   * halves, though by symmetry nothing flows there.
   */
  @Test
  void dead_legs_are_told_by_name() {
    Network.Builder builder = Network.at(ATMOSPHERE)
        .supply("s", Supply.fixed(psig(115.0)))
        .line("west", "s", "a", pipe(26.6, 10.0))
        .line("east", "s", "b", pipe(26.6, 10.0))
        .line("bridge", "a", "b", pipe(26.6, 10.0))
        .line("far west", "a", "t", pipe(26.6, 10.0))
        .line("far east", "b", "t", pipe(26.6, 10.0))
        .tool("t", tool("grinder", 40.0))
        .line("spur", "a", "old bench", pipe(15.8, 6.0))
        .line("loop 1", "old bench", "x", pipe(15.8, 6.0))
        .line("loop 2", "x", "y", pipe(15.8, 6.0))
        .line("loop 3", "y", "old bench", pipe(15.8, 6.0))
        .part(
            "valve",
            "b",
            "off",
            FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(4.0), 0.3))
        .tool("off", tool("gun", 10.0).withLoad(0.0));
    NetworkResult.Solved result = solved(builder.build());
    assertThat(result.deadLegs())
        .extracting(BranchFlow::name)
        .containsExactly("spur", "loop 1", "loop 2", "loop 3", "valve");
    assertThat(result.deadLegs()).allSatisfy(leg -> {
      assertThat(leg.massFlow().kilogramsPerSecond()).isZero();
      assertThat(leg.drop().pascals()).isCloseTo(0.0, within(1.0e-6));
    });
    assertThat(result.through("bridge").massFlow().kilogramsPerSecond())
        .isCloseTo(0.0, within(1.0e-9));
    assertThat(result.working().toText())
        .contains("No air flows through spur, loop 1, loop 2, loop 3, valve:");
    // with the tool at the old bench on, the loop carries air
    NetworkResult.Solved used = solved(builder.tool("y", tool("sander", 10.0)).build());
    assertThat(used.deadLegs()).extracting(BranchFlow::name).containsExactly("valve");
  }

  /** A spur at the header of a compressor that stands by is a dead leg, the header is not. */
  @Test
  void a_spur_at_the_header_of_an_idle_supply_is_a_dead_leg_and_the_header_is_not() {
    NetworkResult.Solved result = solved(rooms(100.0)
        .supply("room 2", Supply.fixed(psig(90.0)))
        .line("spur", "room 2", "old bench", pipe(15.8, 6.0))
        .build());
    assertThat(result.idleSupplies()).extracting(SupplyFlow::node).containsExactly("room 2");
    assertThat(result.deadLegs()).extracting(BranchFlow::name).containsExactly("spur");
    assertThat(result.standingBy()).extracting(BranchFlow::name).containsExactly("south");
    Pencil.check(result);
  }

  private static double between(Random random, double least, double most) {
    return least + (most - least) * random.nextDouble();
  }

  private static double spread(Random random, double least, double most) {
    return least * Math.pow(most / least, random.nextDouble());
  }

  private static Compressor drawnCompressor(Random random) {
    double bar = between(random, 4.0, 8.0);
    double delivers = spread(random, 0.01, 0.15);
    List<Compressor.Point> points = new ArrayList<>();
    int count = 2 + random.nextInt(3);
    boolean flat = random.nextInt(3) == 0;
    for (int i = 0; i < count; i++) {
      points.add(new Compressor.Point(AbsolutePressure.ofBar(bar), DrawnNetworks.air(delivers)));
      bar += between(random, 1.5, 3.0);
      delivers *= flat ? 1.0 : between(random, 0.8, 1.0);
    }
    double lowest = points.get(0).pressure().bar();
    double highest = points.get(count - 1).pressure().bar();
    double cutIn = between(random, lowest, lowest + 0.7 * (highest - lowest));
    return new Compressor(
        points,
        AbsolutePressure.ofBar(cutIn),
        AbsolutePressure.ofBar(Math.min(highest, cutIn + 0.5)),
        Volume.ofCubicMetres(0.5),
        Temperature.ofCelsius(20.0));
  }

  /**
   * Three compressors on a short wide ring of which next to nothing is taken: with valves that let back, the higher ones
   * would blow a thousand times as much into the lower ones as the tool takes. The highest alone gives it.
   */
  @ParameterizedTest
  // the last three are rare: a search that opens all valves at once does not solve them
  @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 18, 1764, 2376})
  void the_highest_of_three_compressors_gives_what_little_is_taken(int seed) {
    highestAlone(seed);
  }

  static void highestAlone(int seed) {
    Random random = new Random(seed);
    NetworkLaws laws = new NetworkLaws(AbsolutePressure.ofBar(1.0));
    for (int i = 0; i < 3; i++) {
      laws.supply("h" + i, drawnCompressor(random));
      Length long10 = Length.ofMetres(spread(random, 1.0, 10.0));
      Length rough = Length.ofMillimetres(random.nextBoolean() ? 0.0015 : 0.02);
      laws.line(
          "main " + i,
          "h" + i,
          "h" + (i + 1) % 3,
          Conduit.of(Length.ofMillimetres(50.0), long10, rough));
    }
    String at = "h" + random.nextInt(3);
    Length bore = Length.ofMillimetres(between(random, 6.0, 18.0));
    Length drop = Length.ofMetres(spread(random, 1.0, 10.0));
    laws.line("drop", at, "outlet", Conduit.of(bore, drop, Length.ofMillimetres(0.0015)));
    SonicConductance c = SonicConductance.ofCubicDecimetresPerSecondBar(spread(random, 0.3, 12.0));
    laws.part("coupling", "outlet", "gun", FlowCapacity.of(c, between(random, 0.05, 0.55)));
    laws.tool("gun", ToolDemand.fixed("gun", DrawnNetworks.air(spread(random, 1.0e-6, 1.0e-3))));
    NetworkResult.Solved solved = solved(laws.build());
    assertThat(laws.miss(solved)).isLessThanOrEqualTo(1.0e-9);
    double most = solved.supplies().stream()
        .mapToDouble(supply -> supply.supply().pascals(0.0))
        .max()
        .orElseThrow();
    assertThat(solved.supplies())
        .filteredOn(supply -> supply.supply().pascals(0.0) < most - 1000.0)
        .allMatch(SupplyFlow::idle);
  }
}
