package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.airfit.flow.FlowCapacity;
import org.airfit.network.BranchFlow;
import org.airfit.network.NetworkResult;
import org.airfit.network.SupplyFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The networks that are shipped as examples, by hand calculation. */
class NetworkExamplesTest {

  private static NetworkJob read(String name) throws WrongFileException {
    return Disk.network(Path.of("..", "networks", name));
  }

  private static NetworkResult.Solved solved(NetworkJob job) {
    return (NetworkResult.Solved) job.network().solve();
  }

  private static double psig(NetworkResult.Solved solved, String node) {
    return GaugePressure.of(solved.at(node), solved.atmosphere()).psi();
  }

  /** The first holds 110 psig at least, the others 105 and 90: it gives all, and theirs stand by. */
  @Test
  void of_three_compressors_on_a_ring_the_highest_gives_what_little_is_taken()
      throws WrongFileException {
    NetworkJob job = read("three-compressors-ring.csv");
    assertThat(job.units()).isEqualTo(UnitSystem.US);
    NetworkResult.Solved solved = solved(job);
    assertThat(solved.idleSupplies())
        .extracting(SupplyFlow::node)
        .containsExactly("south room", "shed");
    assertThat(solved.deadLegs()).extracting(BranchFlow::name).containsExactly("old shop");
    assertThat(solved.standingBy())
        .extracting(BranchFlow::name)
        .containsExactly("south header", "shed header");
    assertThat(job.supplyAt("south room")).isEqualTo("second machine (at south room)");
    assertThat(job.supplyAt("nowhere")).isEqualTo("the supply at nowhere");
    assertThat(psig(solved, "north room")).isCloseTo(110.0, within(1.0e-6));
    assertThat(psig(solved, "old shop end")).isCloseTo(psig(solved, "W"), within(1.0e-6));
    assertThat(solved.supplies().get(0).given().kilogramsPerSecond())
        .isCloseTo(solved.taken().kilogramsPerSecond(), within(1.0e-9));
  }

  /** A hole that chokes loses in proportion to the absolute pressure: 6 scfm × (p + 14.7)/(100 + 14.7) psi. */
  @Test
  void a_leak_in_a_header_loses_air_by_its_pressure() throws WrongFileException {
    NetworkJob job = read("header-leak.csv");
    NetworkResult.Solved solved = solved(job);
    double at = psig(solved, "joint");
    double lost = solved.tools().get(2).massFlow().kilogramsPerSecond();
    double scfm = job.leaks().get(0).air().massFlow().kilogramsPerSecond() / 6.0;
    assertThat(job.leaks().get(0).air().reference()).isEqualTo(ReferenceState.SCFM_60F);
    assertThat(lost / scfm).isCloseTo(6.0 * (at + 14.7) / 114.7, within(1.0e-3));
    double header = solved.through("first header").massFlow().kilogramsPerSecond();
    double taken = solved.tools().get(0).massFlow().kilogramsPerSecond()
        + solved.tools().get(1).massFlow().kilogramsPerSecond();
    assertThat(header).isCloseTo(taken + lost, within(1.0e-9));
  }

  /** Set to 4.0 bar, with a droop of 0.3 bar at 10 L/s, it holds 4.0 − 0.3 × 6/10 bar at the 6 L/s of the gun. */
  @Test
  void a_regulator_behind_a_check_valve_holds_its_branch() throws WrongFileException {
    NetworkJob job = read("regulated-branch.csv");
    NetworkResult.Solved solved = solved(job);
    assertThat(GaugePressure.of(solved.at("P2"), solved.atmosphere()).bar())
        .isCloseTo(3.82, within(1.0e-6));
    assertThat(solved.through("paint check valve").drop().bar()).isBetween(0.05, 0.1);
    assertThat(solved.residual()).isLessThanOrEqualTo(1.0e-9);
    assertThat(job.units()).isEqualTo(UnitSystem.SI);
  }

  private static final String TABLE = """
      record,name,from,to,bore,length,roughness,conductance,criticalPressureRatio,cracking,set,droop,droopAt,tool,air,needs,pressure,cutIn,cutOut,units,temperature,atmosphere,customer
      network,Shed,,,,,,,,,,,,,,,,,,,20 °C,1 bar(a),K.
      supply,,,room,,,,,,,,,,,,,,110 psig,125 psig,,,,
      check valve,check,room,a,,,,10 dm3/(s bar),0.3,0.1 bar,,,,,,,,,,,,,
      regulator,set,a,b,,,,10 dm3/(s bar),0.3,,60 psig,5 psi,10 scfm,,,,,,,,,,
      leak,hole,b,,,,,,,,,,,,1 scfm,,50 psig,,,,,,
      drop,bench,b,,16 mm,3 m,0.01 mm,,,,,,,gun,5 scfm,50 psig,,,,,,,
      """;

  private static NetworkJob of(String text) throws WrongFileException {
    return NetworkFile.read(Document.of("shed.csv", Csv.read("shed.csv", text)));
  }

  @Test
  void the_cut_in_feeds_and_the_units_are_those_that_were_typed_or_told()
      throws WrongFileException {
    NetworkResult.Solved solved = solved(of(TABLE));
    assertThat(psig(solved, "room")).isCloseTo(110.0, within(1.0e-6));
    assertThat(of(TABLE).units()).isEqualTo(UnitSystem.US);
    assertThat(of(TABLE.replace(",,20 °C", ",SI,20 °C")).units()).isEqualTo(UnitSystem.SI);
    assertThat(of(TABLE.replace("110 psig,125 psig", "7.6 bar(g),8.6 bar(g)")).units())
        .isEqualTo(UnitSystem.SI);
  }

  /** Of the two ends of such a rating the narrower has the higher b. */
  @ParameterizedTest
  @ValueSource(
      strings = {"Cv 6", "37 scfm at 100 psig, 5 psi drop", "40 scfm at 100 psig", "S 60 mm2"})
  void a_check_valve_that_opens_at_a_pressure_has_any_rating_as_printed(String printed)
      throws WrongFileException {
    String rated = TABLE
        .replace("conductance,criticalPressureRatio", "capacity,criticalPressureRatio")
        .replace("check,room,a,,,,10 dm3/(s bar),0.3,", "check,room,a,,,,\"" + printed + "\",,")
        .replace("set,a,b,,,,10 dm3/(s bar),0.3,", "set,a,b,,,,\"C 10 dm3/(s bar), b 0.3\",,");
    NetworkJob job = of(rated);
    FlowCapacity least = job.branches().stream()
        .filter(each -> each.name().equals("check"))
        .findFirst()
        .orElseThrow()
        .part()
        .orElseThrow();
    assertThat(least.crackingPressure()).isEqualTo(PressureDrop.parse("0.1 bar"));
    assertThat(psig(solved(job), "a"))
        .isLessThan(110.0 - PressureDrop.parse("0.1 bar").psi());
  }

  @ParameterizedTest
  @CsvSource({
    "'110 psig', '', 'row 3, column cutIn'",
    "'125 psig', '105 psig', 'row 3, column cutOut'",
    "'0.1 bar', '0.1', 'row 4, column cracking'",
    "'60 psig', '', 'row 5, column set'",
    "'60 psig', '60', 'row 5, column set'",
    "'10 scfm', '', 'row 5, column droopAt'",
    "'hole,b', 'hole,c', 'row 6, column from'",
    "',,20 °C', ',metric,20 °C', 'row 2, column units'"
  })
  void a_wrong_cell_is_told_by_its_row_and_column(String from, String to, String place) {
    assertThat(TABLE).contains(from);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> of(TABLE.replace(from, to)))
        .withMessageContaining(place);
  }
}
