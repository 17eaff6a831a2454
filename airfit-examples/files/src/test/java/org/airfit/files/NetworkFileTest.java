package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.List;
import java.util.stream.Stream;
import org.airfit.network.BranchFlow;
import org.airfit.network.NetworkResult;
import org.airfit.network.SupplyFlow;
import org.airfit.safety.Caution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
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

  @Test
  void a_part_and_a_coupling_may_have_the_rating_that_their_catalogue_prints()
      throws WrongFileException {
    String table = TABLE
        .replace("conductance,critical", "capacity,conductance,critical")
        .replace(",20 dm3/(s bar),0.4,", ",\"C 20 dm3/(s bar), b 0.4\",,,")
        .replace(",6 dm3/(s bar),0.3,", ",\"C 6 dm3/(s bar), b 0.3\",,,")
        .replaceAll("(?m)^(network|supply|pipe)(,[^,]*){8}", "$0,");
    NetworkResult.Solved printed =
        (NetworkResult.Solved) ofCsv("shed.csv", table).network().solve();
    NetworkResult.Solved plain =
        (NetworkResult.Solved) ofCsv("shed.csv", TABLE).network().solve();
    assertThat(printed.at("bench")).isEqualTo(plain.at("bench"));
    // without b it lets through any of a range: the least of it is taken
    NetworkResult.Solved least = (NetworkResult.Solved)
        ofCsv("shed.csv", table.replace(", b 0.4", "")).network().solve();
    assertThat(least.at("bench").pascals()).isLessThan(plain.at("bench").pascals());
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> ofCsv("shed.csv", table.replace("b 0.4\",,", "b 0.4\",20 dm3/(s bar),")))
        .withMessageContaining("row 5, column conductance")
        .withMessageContaining("one of them");
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
      assertThat(solved.deadLegs()).isEmpty();
      assertThat(solved.standingBy()).extracting(BranchFlow::name).containsExactly("cellar pipe");
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

  private static final String WORK = """
      record,name,from,to,bore,length,roughness,tool,air,needs,pressure,temperature,atmosphere,customer,%s
      network,Shed,,,,,,,,,,20 °C,1 bar(a),K.,%s
      supply,,,room,,,,,,,120 psig,,,,
      drop,bench,room,,16 mm,3 m,0.01 mm,tool,5 scfm,50 psig,,,,,%s
      """;

  private static List<String> titles(String column, String ofNetwork, String ofDrop)
      throws WrongFileException {
    return ofCsv("work.csv", String.format(WORK, column, ofNetwork, ofDrop))
        .network()
        .solve()
        .cautions()
        .stream()
        .map(Caution::title)
        .toList();
  }

  /** Each column has the caution that the field of its name has in a job file. */
  @ParameterizedTest
  @CsvSource({
    "onHose, yes, Whip restraint",
    "hoseBore, 0.75 in, Hose failure protection",
    "hammers, yes, Whip hose",
    "feedsFasteners, yes, Muzzle contact safety",
    "paints, yes, Oil in a paint line",
    "blasts, yes, Air for a blaster's hood",
    "cleans, yes, Cleaning pressure (general industry)",
    "atBlockedNozzle, 30 psig, Cleaning pressure (general industry)"
  })
  void what_a_drop_is_told_to_do_has_its_caution(String column, String cell, String title)
      throws WrongFileException {
    assertThat(titles(column, "", cell)).contains(title + " (tool at bench)");
    assertThat(titles(column, "", "")).noneMatch(other -> other.contains("(tool at bench)"));
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> titles(column, "", "perhaps"))
        .withMessageContaining("row 4, column " + column);
  }

  @Test
  void a_whip_hose_and_a_gun_that_lets_the_pressure_off_need_no_caution()
      throws WrongFileException {
    assertThat(titles("hammers,whipHose", ",", "yes,yes"))
        .noneMatch(title -> title.startsWith("Whip hose"));
    assertThat(titles("atBlockedNozzle", "", "29 psig"))
        .noneMatch(title -> title.startsWith("Cleaning pressure"));
  }

  @Test
  void an_oiled_line_feeds_no_paint_gun_whether_the_network_or_the_drop_is_oiled()
      throws WrongFileException {
    String forbidden = "Oiled air to a paint gun (tool at bench)";
    assertThat(titles("paints,lubricated", ",yes", "yes,")).contains(forbidden);
    assertThat(titles("paints,lubricated", ",", "yes,yes")).contains(forbidden);
    assertThat(titles("paints,lubricated", ",", "yes,no")).doesNotContain(forbidden);
  }

  @Test
  void the_rules_of_a_place_and_of_the_works_judge_a_network() throws WrongFileException {
    assertThat(titles("cleans,rulesPlace", ",GB", "yes,"))
        .contains("Advised cleaning pressure (Great Britain) (tool at bench)")
        .noneMatch(title -> title.startsWith("Cleaning pressure (general"));
    String own = """
        jurisdiction,citation,text,title,quantity,operator,limit,unit,source,basis
        Yard,rule 1,at most 140 psi,Yard rule,line pressure,<=,140,psi,notice board,read
        """;
    for (String highest : new String[] {"", "139 psig", "141 psig"}) {
      String table = String.format(WORK, "rulesOwn,highest", "own.csv,", ",")
          .replace("120 psig,,,,", "120 psig,,,,," + highest);
      NetworkJob job = NetworkFile.read(new Document(
          "work.csv", Csv.read("work.csv", table), path -> Document.of(path, Csv.read(path, own))));
      assertThat(job.network().solve().cautions().stream().map(Caution::title))
          .as(highest)
          .filteredOn("Yard rule"::equals)
          .hasSize(highest.startsWith("141") ? 1 : 0);
    }
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> ofCsv(
            "work.csv",
            String.format(WORK, "highest", "", "").replace("120 psig,,,,", "120 psig,,,,119 psig")))
        .withMessageContaining("row 3, column highest");
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
            "pipe,main",
            "pipes,main",
            "row 4, column record",
            "network, supply, pipe, part, check valve, regulator, drop, leak"),
        Arguments.of("main,,,,", "mains,,,,", "row 4, column serves", "header, main, branch"),
        Arguments.of("no,0.5", "perhaps,0.5", "row 6, column follows", "yes, no"),
        Arguments.of("no,0.5", "no,1.5", "row 6, column use", "must be in [0, 1]"),
        Arguments.of(
            "part,filter", "part,main", "row 5, column name", "must differ from the others"),
        Arguments.of("grinder", "", "row 6, column tool: is missing", "what stands at the drop"),
        Arguments.of(
            "2.0,main,,",
            "2.0,main,5 dm3/(s bar),",
            "row 4, column conductance: is no field",
            "accepted"),
        Arguments.of("use,pressure", "usage,pressure", "row 1: \"usage\" is no column", "use"),
        Arguments.of("use,pressure", "us,pressure", "row 1: \"us\" is no column", "nearest: use;"),
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
