package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.plant.LeakLedger;
import org.airfit.plant.LeakState;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Range;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LeakFileTest {

  private static final String HEADING =
      "record,name,customer,atmosphere,temperature,hours,electricity,loadedPower,unloadedPower,delivery,timing,gauge,"
          + "tag,place,what,pressure,hole,edge,coefficient,bag,time,rotameter,scalePressure,air,decibels,repairCost,"
          + "repaired,checked,left\n";

  /** 100 scfm take 20 kW for 5000 h at 0.10 USD: a scfm costs 100 USD in a year. */
  private static final String PLANT = HEADING
      + "plant,Shed,K.,14.7 psia,60 °F,5000,0.10 USD,20 kW,5 to 10 kW,100 scfm,1 s,1 psi,,,,,,,,,,,,,,,,,\n";

  private static String leak(String tag, String cells) {
    return "leak,,,,,,,,,,,," + tag + ",hall,clamp," + cells + "\n";
  }

  private static LeakJob of(String text) throws WrongFileException {
    return LeakFile.read(Document.of("leaks.csv", Csv.read("leaks.csv", text)));
  }

  private static double scfm(MassFlow flow) {
    return flow.kilogramsPerSecond() / FreeAirFlow.ofScfm60F(1.0).massFlow().kilogramsPerSecond();
  }

  private static Range<MassFlow> only(String cells) throws WrongFileException {
    return of(PLANT + leak("1", cells)).ledger().leaks().get(0).flow().orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({"-100 °C, -100.1 °C", "300 °C, 300.1 °C"})
  void air_is_as_cold_and_as_hot_as_is_reckoned_with_and_no_more(String at, String beyond)
      throws WrongFileException {
    String leaks = leak("1", ",,,,,,,,3 scfm,,,,,");
    assertThat(of(PLANT.replace("60 °F", at) + leaks).ledger().leaks()).hasSize(1);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> of(PLANT.replace("60 °F", beyond) + leaks))
        .withMessageContaining("row 2, column temperature")
        .withMessageContaining("was \"" + beyond + "\"; that of air must be in [-100, 300] °C");
  }

  @Test
  void each_way_to_measure_a_leak_is_read() throws WrongFileException {
    // told
    assertThat(scfm(only(",,,,,,,,3 to 4 scfm,,,,,").most())).isCloseTo(4.0, within(1.0e-9));
    // by hand: 1 ft³ in 29 to 31 s at 60 °F and 14.7 psia is 60/31 to 60/29 scfm
    Range<MassFlow> bag = only(",,,,1 ft3,30 s,,,,,,,,");
    assertThat(scfm(bag.least())).isCloseTo(60.0 / 31.0, within(0.001));
    assertThat(scfm(bag.most())).isCloseTo(60.0 / 29.0, within(0.001));
    // by hand: a scale for 0 psig in a line of 44.1 psig, which is four times as dense, shows half
    assertThat(scfm(only("44.1 psig,,,,,,2 scfm,0 psig,,,,,,").most()))
        .isCloseTo(4.0, within(1.0e-9));
    // a hole by its coefficient is exact, by its edge a range around it, and wider where no edge is
    // told
    Range<MassFlow> exact = only("100 psig,1/16 in,,0.65,,,,,,,,,,");
    Range<MassFlow> sharp = only("100 psig,1/16 in,sharp edge,,,,,,,,,,,");
    Range<MassFlow> any = only("100 psig,1/16 in,,,,,,,,,,,,");
    assertThat(exact.isExact()).isTrue();
    assertThat(sharp.contains(exact.most())).isTrue();
    assertThat(any.most()).isGreaterThan(sharp.most());
    // decibels beside another measure are recorded, and the other counts
    assertThat(scfm(only(",,,,,,,,3 scfm,61,,,,").most())).isCloseTo(3.0, within(1.0e-9));
  }

  @Test
  void a_reading_in_decibels_is_refused_as_a_flow_unless_the_user_has_a_table()
      throws WrongFileException {
    String heard = leak("1", "90 psig,,,,,,,,,42,,,,");
    assertThat(of(PLANT + heard).ledger().lost().notMeasured()).containsExactly("1");
    String table = """
        relation,my detector,,,,,,,,,,,,,,80 to 110 psig,,,,,,,,0.5 to 2 scfm,40,,,,
        relation,my detector,,,,,,,,,,,,,,80 to 110 psig,,,,,,,,1 to 5 scfm,50,,,,
        """;
    // wherever the table stands
    for (String text : List.of(PLANT + table + heard, PLANT + heard + table)) {
      Range<MassFlow> flow = of(text).ledger().leaks().get(0).flow().orElseThrow();
      assertThat(scfm(flow.least())).isCloseTo(0.5, within(1.0e-9));
      assertThat(scfm(flow.most())).isCloseTo(5.0, within(1.0e-9));
    }
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> of(PLANT + table.replaceFirst("my detector", "another") + heard))
        .withMessageContaining("row 4, column name")
        .withMessageContaining("second relation");
  }

  @Test
  void a_repair_goes_from_open_to_done() throws WrongFileException {
    LeakJob job = of(PLANT
        + leak("1", ",,,,,,,,3 scfm,,20.00 USD,,,")
        + leak("2", ",,,,,,,,3 scfm,,20.00 USD,2026-03-02,,")
        + leak("3", ",,,,,,,,3 scfm,,,2026-03-02,2026-03-09,1 scfm")
        + leak("4", ",,,,,,,,3 scfm,,,2026-03-02,2026-03-09,not measured")
        + leak("5", ",,,,,,,,3 scfm,,,2026-03-02,2026-03-09,none"));
    assertThat(job.ledger().leaks())
        .extracting(leak -> leak.state())
        .containsExactly(
            LeakState.OPEN,
            LeakState.TO_BE_CHECKED,
            LeakState.STILL_LEAKS,
            LeakState.STILL_LEAKS,
            LeakState.DONE);
    assertThat(job.units()).isEqualTo(UnitSystem.US);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "3 scfm,,,,,            | 3,,,,,                      | row 3, column air            | 3",
        "3 scfm,,,,,            | -3 scfm,,,,,                | row 3, column air            | -3 scfm",
        "3 scfm,,,,,            | 5 to 3 scfm,,,,,            | row 3, column air            | the smaller value comes first",
        "3 scfm,,,,,            | 3 scfm,loud,,,,             | row 3, column decibels       | loud",
        "3 scfm,,,,,            | 3 scfm,,20 EUR,,,           | row 3, column repairCost     | give it in USD",
        "3 scfm,,,,,            | 3 scfm,,,2026-02-30,,       | row 3, column repaired       | 2026-11-28",
        "3 scfm,,,,,            | 3 scfm,,,,2026-03-02,none   | row 3                        | must be repaired before",
        "3 scfm,,,,,            | 3 scfm,,,2026-03-02,2026-03-03, | row 3, column left       | is missing",
        "3 scfm,,,,,            | 3 scfm,,,2026-03-02,,none   | row 3, column left           | no day under checked",
        "'hall,clamp,,,,,,,,,3' | 'hall,clamp,,1 mm,,,,,,,3'  | row 3                        | has hole and air",
        "'hall,clamp,,,,,,,,,3 scfm' | 'hall,clamp,,1 mm,,,,,,,'  | row 3, column pressure  | not at the compressor",
        "'hall,clamp,,,,,,,,,3 scfm' | 'hall,clamp,,,,,1 L,,,,'   | row 3, column time      | is missing",
        "'hall,clamp,,,,,,,,,3 scfm' | 'hall,clamp,90 psig,1 mm,blunt,,,,,,' | row 3, column edge | sharp edge",
        "'hall,clamp,,,,,,,,,3 scfm' | 'hall,clamp,90 psig,1 mm,sharp edge,0.6,,,,,' | row 3, column edge | beside a coefficient",
        "'hall,clamp,,,,,,,,,3 scfm' | 'hall,clamp,80 to 90 psig,,,,,,1 scfm,0 psig,' | row 3, column pressure | one pressure",
        "',1,hall'              | ',,hall'                    | row 3, column tag            | is missing",
        "',1,hall'              | ',1,'                       | row 3, column place          | is missing",
        "'leak,,'               | 'leek,,'                    | row 3, column record         | leak",
        "0.10 USD               | 0.10 to 0.15 USD            | row 2, column electricity    | one value is wanted here",
        "0.10 USD               | 10 c/kWh                    | row 2, column electricity    | one word such as USD",
        "0.10 USD               | -0.10 USD                   | row 2, column electricity    | at least 0",
        "3 scfm,,,,,            | 3 scfm,,20 to 40 USD,,,     | row 3, column repairCost     | one value is wanted here",
        "3 scfm,,,,,            | 101 scfm,,,,,               | row 3, column air            | more than the delivery of 100 scfm",
        "3 scfm,,,,,            | 3 scfm,,,2026-03-02,2026-03-03,101 scfm | row 3, column left | more than the delivery of 100 scfm",
        "'hall,clamp,,,,,,,,,3 scfm' | 'hall,clamp,90 psig,100 mm,,,,,,,' | row 3, column hole | what all deliver together",
        "'hall,clamp,,,,,,,,,3 scfm' | 'hall,clamp,90 psig,2 m,,,,,,,' | row 3, column hole | more than the delivery of 100 scfm",
        "'hall,clamp,,,,,,,,,3 scfm' | 'hall,clamp,90 psig,0 mm,,,,,,,' | row 3, column hole | above 0 mm",
        "'hall,clamp,,,,,,,,,3 scfm' | 'hall,clamp,-5 psig,1 mm,,,,,,,' | row 3, column pressure | above 0 bar(g), 0 psig",
        "'hall,clamp,,,,,,,,,3 scfm' | 'hall,clamp,90 psig,,sharp edge,,,,,,' | row 3, column hole | is missing",
        "60 °F                  | 600 °F                      | row 2, column temperature    | [-148, 572] °F",
        "20 kW                  | 0 kW                        | row 2, column loadedPower    | above 0 kW",
        "'100 scfm,1 s'         | '0 scfm,1 s'                | row 2, column delivery       | above 0",
        "5000,0.10              | 9000,0.10                   | row 2, column hours          | 8784",
        "5 to 10 kW             | 5 to 30 kW                  | row 2, column unloadedPower  | at most the loaded power, 20 kW",
        "5 to 10 kW             | ''                          | row 2, column unloadedPower  | 0 kW where it stops",
        "14.7 psia              | 14.7 psig                   | row 2, column atmosphere     | 14.7 psig",
        "'plant,Shed'           | 'leak,Shed'                 | row 2                        | plant under record first"
      })
  void a_row_with_a_fault_is_refused_by_row_column_value_and_reason(
      String from, String to, String place, String reason) {
    String good = PLANT + leak("1", ",,,,,,,,3 scfm,,,,,");
    assertThat(good).contains(from);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> of(good.replace(from, to == null ? "" : to)))
        .withMessageStartingWith("leaks.csv: ")
        .withMessageContaining(place)
        .withMessageContaining(reason);
  }

  /** By hand: 100 scfm and no more is what the compressor delivers; a range counts by its least. */
  @Test
  void a_leak_may_take_all_that_is_delivered_and_a_range_reach_beyond_it()
      throws WrongFileException {
    assertThat(scfm(only(",,,,,,,,100 scfm,,,,,").most())).isCloseTo(100.0, within(1.0e-9));
    assertThat(scfm(only(",,,,,,,,90 to 120 scfm,,,,,").most())).isCloseTo(120.0, within(1.0e-9));
  }

  @Test
  void a_tag_stands_once_and_a_plant_too() {
    String told = leak("1", ",,,,,,,,3 scfm,,,,,");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> of(PLANT + told + told))
        .withMessageContaining("row 4, column tag")
        .withMessageContaining("stands above");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> of(PLANT + PLANT.substring(HEADING.length())))
        .withMessageContaining("row 3, column name")
        .withMessageContaining("second plant");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> of(HEADING))
        .withMessageContaining("has no plant");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> of(PLANT.replace(",gauge,", ",gage,")))
        .withMessageContaining("\"gage\" is no column here");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> of(PLANT.replace("timing,", "medium,").replace("1 s,", "oxygen,")))
        .withMessageContaining("oxygen");
  }

  private static final String TESTS = """
      record,name,customer,atmosphere,temperature,hours,electricity,loadedPower,unloadedPower,delivery,timing,gauge,\
      day,at,loaded,unloaded,stopped,cycles,cutIn,cutOut,volume,start,end,time,coldest
      plant,Shed,K.,14.7 psia,60 °F,5000,0.10 USD,20 kW,0 kW,100 scfm,,,,,,,,,,,,,,,
      test,night,,,,,,,,,1 s,0 psi,2026-03-02,100 psig,50 s,100 s,50 s,5,100 psig,100 psig,,,,,
      test,fall,,,,,,,,,0 s,0 psi,,100 psig,,,,,,,629 ft3,100 psig,50 psig,12 min,60 °F
      """;

  /** By hand: 45 to 55 of 200 s loaded, time stopped is time unloaded; the fall is BD1, 234.2 scfm. */
  @Test
  void both_tests_of_a_whole_plant_are_read() throws WrongFileException {
    LeakJob job = of(TESTS);
    assertThat(scfm(job.tests().get(0).result().leak().least())).isCloseTo(22.5, within(1.0e-6));
    assertThat(scfm(job.tests().get(0).result().leak().most())).isCloseTo(27.5, within(1.0e-6));
    assertThat(job.tests().get(0).day().orElseThrow()).hasToString("2026-03-02");
    assertThat(scfm(job.tests().get(1).result().leak().least())).isCloseTo(234.17, within(0.1));
    assertThat(scfm(job.tests().get(1).result().leak().most())).isCloseTo(234.17, within(0.1));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "',1 s,0 psi,2026'   | ',,0 psi,2026'    | row 3, column timing   | 0.5 s",
        "',1 s,0 psi,2026'   | ',1 s,,2026'      | row 3, column gauge    | 0.1 bar",
        "',5,100 psig'       | ',,100 psig'      | row 3, column cycles   | whole cycles",
        "'50 s,100 s'        | ',100 s'          | row 3                  | fill one of the two columns",
        "'50 s,100 s'        | '50 s,'           | row 3, column unloaded | is missing",
        "'50 s,100 s'        | '50 x,100 s'      | row 3, column loaded   | is no time",
        "'629 ft3'           | '629'             | row 4, column volume   | 629",
        "'50 psig,12'        | '10 psig,12'      | row 4                  | where leaks choke",
        "'50 psig,12'        | '120 psig,12'     | row 4                  | at most that at the start",
        "'12 min,60 °F'      | '12 min,70 °F'    | row 4                  | at most that of the walls"
      })
  void a_test_with_a_fault_is_refused_by_row_column_value_and_reason(
      String from, String to, String place, String reason) {
    assertThat(TESTS).contains(from);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> of(TESTS.replace(from, to)))
        .withMessageContaining(place)
        .withMessageContaining(reason);
  }

  private static Path joinery() {
    return Path.of("..", "jobs", "joinery", "leaks.csv");
  }

  @TempDir
  Path folder;

  @Test
  void the_ledger_is_written_anew_with_what_was_computed_and_reads_back() throws Exception {
    LeakJob job = Disk.leaks(joinery(), new ArrayList<>());
    Path written = folder.resolve("new.csv");
    Disk.write(written, job);
    List<List<String>> rows = Csv.read("new.csv", Files.readString(written));
    assertThat(rows.get(0))
        .endsWith("state", "rank", "leastAir", "mostAir", "leastCost", "mostCost", "payback");
    assertThat(rows)
        .anySatisfy(row -> assertThat(row)
            .contains("101")
            .endsWith(
                "open",
                "1 to 3",
                "3.85 L/s ANR",
                "4.51 L/s ANR",
                "1028.15 EUR",
                "1204.71 EUR",
                "2.6 to 3.3 weeks"));
    assertThat(rows)
        .anySatisfy(row -> assertThat(row)
            .contains("108")
            .endsWith("open", "1 to 7", "not known", "not known", "", "", ""));
    LeakJob again = Disk.leaks(written, new ArrayList<>());
    assertThat(again.ledger()).isEqualTo(job.ledger());
    assertThat(again.tests()).isEqualTo(job.tests());
    Path twice = folder.resolve("twice.csv");
    Disk.write(twice, again);
    assertThat(Files.readString(twice)).isEqualTo(Files.readString(written));
  }

  /** A cell that a spreadsheet would compute is kept from it, however often the ledger is written. */
  @Test
  void no_spreadsheet_computes_a_cell_of_the_ledger() throws Exception {
    String evil = "=HYPERLINK(\"\"http://x\"\",\"\"y\"\")";
    LeakJob job = of(PLANT.replace("60 °F", "-10 °C")
        + leak("\"=1+1\"", ",,,,,,,,3 scfm,,,,,").replace("clamp", "\"" + evil + "\"")
        + leak("@x", ",,,,,,,,3 scfm,,,,,"));
    Path first = folder.resolve("first.csv");
    Disk.write(first, job);
    LeakJob again = Disk.leaks(first, new ArrayList<>());
    assertThat(again.ledger()).isEqualTo(job.ledger());
    Path second = folder.resolve("second.csv");
    Disk.write(second, again);
    assertThat(Files.readString(second)).isEqualTo(Files.readString(first));
    for (List<String> row : Csv.read("first.csv", Files.readString(first))) {
      for (String cell : row) {
        assertThat(cell).doesNotStartWith("=").doesNotStartWith("@").doesNotStartWith("-");
      }
    }
    assertThat(Files.readString(first)).contains("'=1+1", "'@x", "'-10 °C");
  }

  /** By hand: 30 kW for 85 L/s at 3600 h and 0.21 EUR; a bag of 55 to 60 L in 13.5 to 14.5 s. */
  @Test
  void the_joinery_is_as_its_rows_tell() throws Exception {
    LeakJob job = Disk.leaks(joinery(), new ArrayList<>());
    LeakLedger ledger = job.ledger();
    LeakLedger.Entry first = ledger.entries().get(0);
    assertThat(first.leak().tag()).isEqualTo("101");
    double density = 101_300.0 / (287.05287 * 293.15);
    double anr = density / 1.185;
    double perLitre = 30.0 / 85.0 * 3600.0 * 0.21;
    assertThat(first.least().orElseThrow().money().amount().doubleValue())
        .isCloseTo(55.0 / 14.5 * anr * perLitre, within(0.01));
    assertThat(first.most().orElseThrow().money().amount().doubleValue())
        .isCloseTo(60.0 / 13.5 * anr * perLitre, within(0.01));
    assertThat(ledger.lost().notMeasured()).containsExactly("104", "108");
    assertThat(ledger.round().inOrder())
        .extracting(entry -> entry.leak().tag())
        .containsExactly("101", "102", "103", "107");
    assertThat(job.tests())
        .extracting(test -> ledger.against(test.result(), test.day()).coverage())
        .containsExactly(LeakLedger.Coverage.LOOK_ON, LeakLedger.Coverage.MAY_BE_ALL);
    assertThat(job.units()).isEqualTo(UnitSystem.SI);
  }

  /** The table of the document is a ledger, and every column that it names is one. */
  @Test
  void the_document_tells_columns_that_there_are() throws IOException, WrongFileException {
    String document = Files.readString(Path.of("..", "..", "docs", "leak-ledger-file.md"));
    Matcher example = Pattern.compile("```\n(record.*?)```", Pattern.DOTALL).matcher(document);
    assertThat(example.find()).isTrue();
    LeakJob job = of(example.group(1));
    assertThat(job.title()).isEqualTo("Mill Street Garage");
    String wrong = "";
    try {
      of("x\n");
    } catch (WrongFileException e) {
      wrong = e.accepted();
    }
    List<String> columns = List.of(wrong.split(", ", -1));
    assertThat(columns).hasSizeGreaterThan(40);
    for (String column : columns) {
      if (!column.equals("record")) {
        assertThat(document).contains("`" + column + "`");
      }
    }
  }
}
