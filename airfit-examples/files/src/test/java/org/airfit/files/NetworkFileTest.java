package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.stream.Stream;
import org.airfit.network.BranchFlow;
import org.airfit.network.NetworkResult;
import org.airfit.network.SupplyFlow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class NetworkFileTest {

  private static final String TABLE = """
      record,name,from,to,bore,length,roughness,fittings,serves,\
      conductance,criticalPressureRatio,tool,air,needs,follows,use,pressure,temperature,atmosphere,customer
      network,Shed,,,,,,,,,,,,,,,,20 °C,1 bar(a),K.
      supply,,,room,,,,,,,,,,,,,7 bar(g),,,
      pipe,main,room,wall,27 mm,30 m,0.045 mm,2.0,main,,,,,,,,,,,
      part,filter,wall,clean,,,,,,20 dm3/(s bar),0.4,,,,,,,,,
      drop,bench,clean,,16 mm,3 m,0.01 mm,,,6 dm3/(s bar),0.3,grinder,15 scfm,6 bar(g),no,0.5,,,,
      """;

  private static NetworkJob ofCsv(String file, String text) throws WrongFileException {
    return NetworkFile.read(Document.of(file, Csv.read(file, text)));
  }

  @Test
  void a_table_becomes_a_network() throws WrongFileException {
    NetworkJob job = ofCsv("shed.csv", TABLE);
    assertThat(job.network().nodes())
        .containsExactly("room", "wall", "clean", "bench, end of the pipe", "bench");
    assertThat(job.branches())
        .extracting(NetworkJob.Branch::name)
        .containsExactly("main", "filter", "bench", "coupling of bench");
    assertThat(job.drops().get(0).use()).isEqualTo(0.5);
    NetworkResult.Solved solved = (NetworkResult.Solved) job.network().solve();
    assertThat(solved.through("filter").massFlow())
        .isEqualTo(solved.through("main").massFlow());
  }

  private static final String TWO_ROOMS = """
      record,name,from,to,bore,length,roughness,nonReturnValve,tool,air,needs,pressure,temperature,atmosphere,customer
      network,Shed,,,,,,,,,,,20 °C,1 bar(a),K.
      supply,old,,cellar,,,,%s,,,,6.5 bar(g),,,
      supply,new,,room,,,,,,,,7 bar(g),,,
      pipe,main,room,wall,27 mm,30 m,0.045 mm,,,,,,,,
      pipe,cellar pipe,cellar,wall,27 mm,30 m,0.045 mm,,,,,,,,
      drop,bench,wall,,16 mm,3 m,0.01 mm,,grinder,15 scfm,6 bar(g),,,,
      """;

  @Test
  void a_supply_has_a_non_return_valve_unless_its_row_says_no() throws WrongFileException {
    for (String told : new String[] {"", "yes"}) {
      NetworkResult.Solved solved = (NetworkResult.Solved)
          ofCsv("rooms.csv", String.format(TWO_ROOMS, told)).network().solve();
      assertThat(solved.idleSupplies()).extracting(SupplyFlow::node).containsExactly("cellar");
      assertThat(solved.deadLegs()).extracting(BranchFlow::name).containsExactly("cellar pipe");
    }
    NetworkResult.Solved open = (NetworkResult.Solved)
        ofCsv("rooms.csv", String.format(TWO_ROOMS, "no")).network().solve();
    assertThat(open.idleSupplies()).isEmpty();
    assertThat(open.supplies().get(0).takenBack().kilogramsPerSecond()).isPositive();
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> ofCsv("rooms.csv", String.format(TWO_ROOMS, "perhaps")))
        .withMessageContaining("row 3, column nonReturnValve")
        .withMessageContaining("yes, no");
  }

  static Stream<Arguments> wrong_tables() {
    return Stream.of(
        Arguments.of("27 mm", "27", "row 4, column bore: \"27\"", "unit"),
        Arguments.of(
            "0.4,", "much,", "row 5, column criticalPressureRatio", "a number with a point"),
        Arguments.of("0.4,", "1.5,", "row 5", "must be in [0, 1)"),
        Arguments.of("20 dm3/(s bar)", "", "row 5, column conductance: is missing", "dm3/(s bar)"),
        Arguments.of("7 bar(g)", "7 bar", "row 3, column pressure", "gauge"),
        Arguments.of("7 bar(g)", "0 bar(g)", "row 3", "must be above the atmosphere"),
        Arguments.of("room,wall", "room,room", "row 4", "must be two nodes"),
        Arguments.of("wall,clean", "hall,clean", "row 5, column from: was \"hall\"", "to which no"),
        Arguments.of(
            "pipe,main", "pipes,main", "row 4, column record", "network, supply, pipe, part, drop"),
        Arguments.of("main,,,,", "mains,,,,", "row 4, column serves", "header, main, branch"),
        Arguments.of("no,0.5", "perhaps,0.5", "row 6, column follows", "yes, no"),
        Arguments.of("no,0.5", "no,1.5", "row 6", "must be in [0, 1]"),
        Arguments.of("part,filter", "part,main", "row 5", "must differ from the others"),
        Arguments.of("grinder", "", "row 6, column tool: is missing", "what stands at the drop"),
        Arguments.of(
            "2.0,main,,",
            "2.0,main,5 dm3/(s bar),",
            "row 4, column conductance: is no field",
            "accepted"),
        Arguments.of("use,pressure", "usage,pressure", "row 1: \"usage\" is no column", "use"),
        Arguments.of("supply,,,room,,,,,,,,,,,,,7 bar(g),,,\n", "", "has no supply", "add a row"),
        Arguments.of(
            "drop,bench,clean,,16 mm,3 m,0.01 mm,,,6 dm3/(s bar),0.3,grinder,15 scfm,6 bar(g),no,0.5,,,,\n",
            "",
            "has no drop",
            "add a row"),
        Arguments.of(
            "K.\n",
            "K.\nnetwork,Hut,,,,,,,,,,,,,,,,20 °C,1 bar(a),K.\n",
            "row 3, column name",
            "second network"),
        Arguments.of(
            "network,Shed,,,,,,,,,,,,,,,,20 °C,1 bar(a),K.\n",
            "",
            "begins without a network",
            "first"));
  }

  @ParameterizedTest
  @MethodSource("wrong_tables")
  void a_wrong_table_is_told_by_file_row_column_and_what_to_type(
      String from, String to, String where, String what) {
    assertThat(TABLE).contains(from);
    String wrong = TABLE.replace(from, to);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> ofCsv("shed.csv", wrong))
        .withMessageStartingWith("shed.csv: ")
        .withMessageContaining(where)
        .withMessageContaining(what);
  }
}
