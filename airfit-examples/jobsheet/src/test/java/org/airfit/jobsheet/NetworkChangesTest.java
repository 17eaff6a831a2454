package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.airfit.files.Csv;
import org.airfit.files.Disk;
import org.airfit.files.Document;
import org.airfit.files.NetworkFile;
import org.airfit.files.NetworkJob;
import org.airfit.files.WrongFileException;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.network.Network;
import org.airfit.network.NetworkResult;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What to change in a network: only where a drop is short, each solved again; in its units. */
class NetworkChangesTest {

  private static final String TABLE = """
      record,name,from,to,bore,length,roughness,conductance,criticalPressureRatio,set,droop,droopAt,tool,air,needs,follows,pressure,units,temperature,atmosphere,customer
      network,Shed,,,,,,,,,,,,,,,,%s,20 °C,1 bar(a),K.
      supply,,,room,,,,,,,,,,,,,8 bar(g),,,,
      pipe,main,room,a,15 mm,60 m,0.045 mm,,,,,,,,,,,,,,
      regulator,set,a,b,,,,10 dm3/(s bar),0.3,%s,%s,,,,,,,,,
      drop,bench,b,,16 mm,3 m,0.01 mm,,,,,,gun,10 L/s ANR,5 bar(g),no,,,,,
      """;

  private static NetworkJob job(String units, String set) throws WrongFileException {
    return job(units, set, "0 bar,10 L/s ANR");
  }

  private static NetworkJob job(String units, String set, String droop) throws WrongFileException {
    String table = TABLE.formatted(units, set, droop);
    return NetworkFile.read(Document.of("shed.csv", Csv.read("shed.csv", table)));
  }

  private static double bench(Network network) {
    return ((NetworkResult.Solved) network.solve()).at("bench").pascals();
  }

  @Test
  void nothing_is_proposed_where_nothing_is_short() throws WrongFileException {
    NetworkSheet sheet = NetworkSheet.of(job("SI", "5.5 bar(g)"));
    assertThat(sheet.changes().isNothing()).isTrue();
    assertThat(NetworkText.of(sheet)).contains("To change: nothing: no drop is short.");
    assertThat(NetworkPage.of(sheet))
        .contains("Nothing: no drop is short.")
        .doesNotContain("What to change");
  }

  /** By hand: 6.3 bar less 1 bar is 5.3 bar in front of the hose, 6.1 bar is 5.1 bar; the hose loses less than 0.1. */
  @Test
  void a_droop_that_nobody_told_is_taken_at_its_most_and_the_sheet_says_so()
      throws WrongFileException {
    NetworkJob untold = job("SI", "6.3 bar(g)", ",");
    assertThat(6.3e5 - bench(untold.network()) + 1.0e5).isBetween(1.0e5, 1.1e5);
    assertThat(bench(job("SI", "6.3 bar(g)").network()) - bench(untold.network()))
        .isBetween(0.98e5, 1.02e5);
    String said = NetworkText.of(NetworkSheet.of(untold)).replaceAll("\\s+", " ");
    assertThat(said)
        .contains("Weakest is bench with 5.2")
        .contains(
            "Not known exactly: set: droop of 1 bar taken, may be down to none; nobody told it"
                + " (common practice, no source). The worst of each was taken.");
    assertThat(NetworkText.of(NetworkSheet.of(job("SI", "6.3 bar(g)"))))
        .doesNotContain("not known exactly", "droop");
    String psi = NetworkText.of(NetworkSheet.of(job("US", "6.3 bar(g)", ",")));
    assertThat(psi.replaceAll("\\s+", " ")).contains("droop of 14.5 psi taken");
    assertThat(bench(job("SI", "0.6 bar(g)", ",").network()))
        .as("it leaves nothing")
        .isLessThan(1.01e5);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> job("SI", "60 psig", "80 psi,10 scfm"))
        .withMessageContaining("column droop: was 80 psi, not below the 60 psig that it is set to");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> job("SI", "60 psig", "60 psi,10 scfm"))
        .withMessageContaining("column droop: was 60 psi, not below the 60 psig that it is set to");
    assertThat(bench(job("SI", "60 psig", "59.9 psi,10 scfm").network())).isLessThan(1.01e5);
    for (String half : List.of("0.3 bar,", ",10 L/s ANR")) {
      assertThatExceptionOfType(WrongFileException.class)
          .isThrownBy(() -> job("SI", "6.3 bar(g)", half))
          .withMessageContaining(
              half.startsWith(",") ? "column droop: is missing" : "column droopAt: is missing");
    }
  }

  private static NetworkJob network(String table) throws WrongFileException {
    return NetworkFile.read(Document.of("shed.csv", Csv.read("shed.csv", table)));
  }

  private static List<String> words(List<NetworkChanges.Change> changes) {
    return changes.stream().map(change -> String.join("; ", change.what())).toList();
  }

  /** Set to 4.5 bar, it cannot hold 5: only the setting helps; wider pipes and more supply in front do not. */
  @Test
  void a_regulator_that_is_set_too_low_is_set_to_the_least_tenth_of_a_bar_that_is_enough()
      throws WrongFileException {
    NetworkJob job = job("SI", "4.5 bar(g)");
    NetworkSheet sheet = NetworkSheet.of(job);
    double now = bench(job.network());
    assertThat(6.0e5 - now).isBetween(0.5e5, 0.6e5);
    assertThat(sheet.changes().forEvery()).hasSize(1);
    NetworkChanges.Change only = sheet.changes().forEvery().get(0);
    String told = only.what().get(0);
    assertThat(told)
        .startsWith("set: set to 5.1 bar(g) (74")
        .endsWith("instead of 4.5 bar(g) (65.3 psig)");
    assertThat(only.pascals()).isCloseTo(bench(set(job, 6.1e5)) - now, within(1.0));
    assertThat(bench(set(job, 6.1e5))).isGreaterThan(6.0e5);
    assertThat(bench(set(job, 6.0e5))).isLessThan(6.0e5);
    assertThat(NetworkText.of(sheet).replaceAll("\\s+", " "))
        .contains("a higher setting or supply raises the pressure at every tool behind it");
  }

  private static Network set(NetworkJob job, double pascals) {
    return job.network()
        .replacing(
            "set",
            job.branches()
                .get(1)
                .regulator()
                .orElseThrow()
                .withSet(AbsolutePressure.ofPascals(pascals)));
  }

  /** With a main that is far too narrow the setting does not help: it is made as wide as needed, not one step wider. */
  @Test
  void a_main_that_is_too_narrow_is_made_as_wide_as_is_enough_and_no_wider()
      throws WrongFileException {
    NetworkJob job =
        network(TABLE.formatted("SI", "7.5 bar(g)", "0 bar,10 L/s ANR").replace("15 mm", "7 mm"));
    Conduit pipe = job.branches().get(0).pipe().orElseThrow();
    double tooLittle =
        bench(job.network().replacing("main", pipe.withBore(pipe.bore().times(1.25))));
    Length enough = pipe.bore().times(1.25).times(1.25);
    assertThat(tooLittle).isLessThan(6.0e5);
    assertThat(bench(job.network().replacing("main", pipe.withBore(enough)))).isGreaterThan(6.0e5);
    assertThat(words(NetworkSheet.of(job).changes().forEvery()))
        .contains("main: a bore of 10.9 mm instead of 7.0 mm")
        .noneMatch(each -> each.startsWith("set:"));
  }

  /** A compressor that holds more cures what a header loses; what is judged by its pressure is told with it. */
  @Test
  void a_supply_that_holds_more_is_tried_and_the_caution_that_comes_with_it_is_told()
      throws WrongFileException {
    String table = """
        record,name,from,to,bore,length,roughness,tool,air,needs,pressure,cutIn,cutOut,units,temperature,\
        atmosphere,customer,follows,feedsFasteners,onHose
        network,Shed,,,,,,,,,,,,US,68 °F,14.7 psia,K.,,,
        supply,,,room,,,,,,,,95 psig,100 psig,,,,,,,
        pipe,main,room,a,1.049 in,60 ft,0.045 mm,,,,,,,,,,,,,
        drop,bench,a,,0.622 in,20 ft,0.045 mm,nailer,20 scfm,98 psig,,,,,,,,no,yes,yes
        """;
    NetworkJob job = network(table);
    assertThat(job.highest().psi()).isCloseTo(100.0, within(1.0e-9));
    NetworkChanges changes = NetworkSheet.of(job).changes();
    assertThat(words(changes.forEvery()))
        .hasSize(1)
        .first()
        .asString()
        .startsWith("the supply at room: one that holds 99 psig")
        .endsWith("instead of 95 psig (6.55 bar(g))");
    // a nailer above 100 psig
    assertThat(changes.forEvery().get(0).newCautions())
        .containsExactly("Muzzle contact safety (nailer at bench)");
    assertThat(NetworkText.of(NetworkSheet.of(job)).replaceAll("\\s+", " "))
        .contains("It brings a caution with it: Muzzle contact safety");
    assertThat(changes.forEvery().get(0).raises()).isTrue();
  }

  /** Two drops, each short by its own hose: no single change is enough for both, one for each is, solved together. */
  @Test
  void each_short_drop_gets_its_own_change_and_all_are_solved_together() throws WrongFileException {
    String table = TWO_DROPS.formatted("3/8 in", "3/8 in", "102 psig");
    NetworkSheet sheet = NetworkSheet.of(network(table));
    NetworkChanges changes = sheet.changes();
    assertThat(changes.drops())
        .extracting(NetworkChanges.OfDrop::drop)
        .containsExactly("north", "south");
    assertThat(words(changes.drops().get(0).single()))
        .contains("north: a 1/2 in hose instead of 3/8 in");
    assertThat(words(changes.drops().get(1).single()))
        .contains("south: a 1/2 in hose instead of 3/8 in");
    assertThat(changes.drops().get(0).single()).allMatch(NetworkChanges.Change::isEnough);
    assertThat(changes.together().orElseThrow().what())
        .containsExactly(
            "north: a 1/2 in hose instead of 3/8 in", "south: a 1/2 in hose instead of 3/8 in");
    assertThat(changes.together().orElseThrow().isEnoughForEvery()).isTrue();
    String text = NetworkText.of(sheet).replaceAll("\\s+", " ");
    assertThat(text)
        .contains(
            "To change: north: a 1/2 in hose instead of 3/8 in; and south: a 1/2 in hose instead of 3/8 in:"
                + " together they are enough for every drop.")
        .contains("All at once: too little at every drop: north, south.")
        .contains("which is enough for it alone.");
    assertThat(NetworkPage.of(sheet)).contains("<h2>What to change</h2>", "South: a 1/2 in hose");
  }

  /** A main and a hose that both lose too much: neither alone is enough, and what two give is solved again. */
  @Test
  void two_changes_are_told_where_no_single_one_is_enough() throws WrongFileException {
    NetworkJob job = network(NEEDY.formatted("108.5 psig"));
    NetworkChanges.OfDrop drop = NetworkSheet.of(job).changes().drops().get(0);
    assertThat(drop.single()).isEmpty();
    NetworkChanges.Change two = drop.two().orElseThrow();
    assertThat(two.what()).hasSize(2);
    assertThat(two.isEnough()).isTrue();
    assertThat(two.lackAfter()).isNegative();
    assertThat(NetworkText.of(NetworkSheet.of(job)).replaceAll("\\s+", " "))
        .contains(
            "no single change but at the supply is enough for bench, these two are: ",
            " give bench ");
  }

  /** More than the supply can ever be raised to: no change is told as enough, but how far the best one gets. */
  @Test
  void how_far_the_best_change_gets_is_told_where_none_is_enough() throws WrongFileException {
    NetworkJob job = network(NEEDY.formatted("220 psig"));
    NetworkSheet sheet = NetworkSheet.of(job);
    NetworkChanges.OfDrop drop = sheet.changes().drops().get(0);
    assertThat(drop.first()).isEmpty();
    assertThat(drop.best().orElseThrow().isEnough()).isFalse();
    assertThat(drop.best().orElseThrow().lackAfter()).isPositive();
    assertThat(NetworkText.of(sheet).replaceAll("\\s+", " "))
        .contains(
            "To change: no single change is enough for bench, nor are two of those that bring most: ")
        .contains(" are still missing.")
        .doesNotContain("which is enough");
  }

  private static final String TWO_DROPS = """
      record,name,from,to,bore,length,roughness,tool,air,needs,pressure,units,temperature,atmosphere,customer,\
      onHose,follows
      network,Shed,,,,,,,,,,US,68 °F,14.7 psia,K.,,
      supply,,,room,,,,,,,110 psig,,,,,,
      pipe,main,room,a,2.067 in,60 ft,0.045 mm,,,,,,,,,,
      drop,north,a,,%s,50 ft,0.01 mm,grinder,26 scfm,%3$s,,,,,,yes,no
      drop,south,a,,%s,50 ft,0.01 mm,sander,25 scfm,%3$s,,,,,,yes,no
      """;

  private static final String NEEDY = """
      record,name,from,to,bore,length,roughness,tool,air,needs,pressure,units,temperature,atmosphere,customer,\
      onHose,follows
      network,Shed,,,,,,,,,,US,68 °F,14.7 psia,K.,,
      supply,,,room,,,,,,,110 psig,,,,,,
      pipe,main,room,a,0.622 in,120 ft,0.045 mm,,,,,,,,,,
      drop,bench,a,,3/8 in,50 ft,0.01 mm,grinder,24 scfm,%s,,,,,,yes,no
      """;

  /**
   * Set to 7.5 bar in front of a pipe that takes a bar, it never regulates: its valve stands wide open, and what it
   * loses is a pressure loss as that of any part.
   */
  @Test
  void a_regulator_that_stands_wide_open_sets_nothing_down() throws WrongFileException {
    String open = NetworkText.of(NetworkSheet.of(job("SI", "7.9 bar(g)"))).replaceAll("\\s+", " ");
    assertThat(open).contains("set: 10 L/s ANR, pressure loss ").doesNotContain("set down by");
    String held = NetworkText.of(NetworkSheet.of(job("SI", "4.5 bar(g)"))).replaceAll("\\s+", " ");
    assertThat(held).contains(", set down by ");
  }

  /** 1 m/s is 3.28 ft/s, 1 L/s at 20 °C is 2.12 cubic feet a minute: the figures of the two sheets are the same. */
  @Test
  void a_sheet_in_us_units_tells_velocities_flows_and_bores_in_them() throws WrongFileException {
    String us = NetworkText.of(NetworkSheet.of(job("US", "4.5 bar(g)")));
    String shown = us.substring(0, us.indexOf("BEFORE ANYONE")).replaceAll("\\s+", " ");
    assertThat(shown)
        .contains("main: 20.", " scfm, pressure loss ", "ft/s (", "rule: at most 30 ft/s")
        .contains("needs 72.5 psig (5 bar(g))")
        .contains("set: 20.", ", set down by ")
        .doesNotContain("m/s", "L/s", "mm");
    String page = NetworkPage.of(NetworkSheet.of(job("US", "4.5 bar(g)")));
    assertThat(page)
        .contains("velocity and rule,<br>ft/s", "air,<br>scfm")
        .contains("needs,<br>psi / bar (g)", "pressure loss,<br>psi / bar", "set down by ")
        .doesNotContain("m/s<", "L/s ANR");
    String si = NetworkText.of(NetworkSheet.of(job("SI", "4.5 bar(g)"))).replaceAll("\\s+", " ");
    assertThat(si).contains("main: 10 L/s ANR, pressure loss ", "rule: at most 9.1 m/s");
  }

  /** Typed 24 scfm and 14.7 psia, told 24 scfm and psia: no other count of free air stands between. */
  @Test
  void a_sheet_in_us_units_tells_the_air_as_it_was_typed_and_no_bar_alone()
      throws WrongFileException {
    NetworkSheet sheet =
        NetworkSheet.of(Disk.network(Path.of("..", "networks", "header-leak.csv")));
    String text = NetworkText.of(sheet).replaceAll("\\s+", " ");
    assertThat(text)
        .contains(" of 24 scfm; ", " of 18 scfm; ")
        .contains("Set down: more than 14.5 psi (1 bar) above the need at bay 1, bay 2")
        .contains("Pressures stand above an atmosphere of 14.7 psia (1.014 bar(a)).");
    assertThat(NetworkPage.of(sheet)).contains("atmosphere of 14.7 psia (1.014 bar(a))");
  }

  @Test
  void a_main_that_feeds_a_leak_alone_may_be_closed() throws WrongFileException {
    String table = TABLE.formatted("SI", "5.5 bar(g)", "0 bar,10 L/s ANR")
        + "pipe,old,a,end,15 mm,9 m,0.045 mm,,,,,,,,,,,,,,\n"
        + "leak,flange,end,,,,,,,,,,,2 L/s ANR,,,7 bar(g),,,,\n";
    String text = NetworkText.of(
            NetworkSheet.of(NetworkFile.read(Document.of("shed.csv", Csv.read("shed.csv", table)))))
        .replaceAll("\\s+", " ");
    assertThat(text)
        .contains("- old: no drop is cut off; what leaks behind it stops: flange")
        .contains("- main: cut off: bench")
        .contains("For repair: with all tools running any one main may be closed but main.");
  }

  @Test
  void the_examples_tell_idle_compressors_dead_legs_and_leaks() throws WrongFileException {
    Path networks = Path.of("..", "networks");
    String ring = NetworkText.of(
            NetworkSheet.of(Disk.network(networks.resolve("three-compressors-ring.csv"))))
        .replaceAll("\\s+", " ");
    assertThat(ring)
        .contains("Idle: second machine (at south room), old piston machine (at shed) give nothing")
        .contains("Dead legs: old shop: no air flows through")
        .contains("Standing by: south header, shed header: no air flows through while")
        .contains("south header: 0", ", stands by");
    String leak = NetworkText.of(NetworkSheet.of(Disk.network(networks.resolve("header-leak.csv"))))
        .replaceAll("\\s+", " ");
    assertThat(leak)
        .contains("Leak: flange at joint loses 6.")
        .contains("scfm, day and night: mend it");
  }

  private static final String DROPS_OF_A_MAIN = """
      record,name,from,to,bore,length,wall,fittings,conductance,criticalPressureRatio,tool,air,needs,pressure,\
      cutIn,cutOut,temperature,atmosphere,units,customer,onHose,cleans,paints,lubricated
      network,Shed,,,,,,,,,,,,,,,68 °F,14.7 psia,US,K.,,,,%s
      """;

  private static String supply(String pressures) {
    return "supply,,,A,,,,,,,,,," + pressures + ",,,,,,,,\n";
  }

  private static String main(String bore, String length) {
    return "pipe,main,A,B," + bore + "," + length + ",commercial steel,1,,,,,,,,,,,,,,,,\n";
  }

  /** A drop at B behind a coupling, with what is known of its work: whether it cleans, whether it paints. */
  private static String drop(String name, String hose, String air, String needs, String work) {
    return "drop," + name + ",B,," + hose + ",smooth rubber hose,1,6 dm3/(s bar),0.3,tool of "
        + name + "," + air + "," + needs + ",,,,,,,,yes," + work + ",\n";
  }

  private static NetworkSheet shed(String... rows) throws WrongFileException {
    return NetworkSheet.of(network(DROPS_OF_A_MAIN.formatted("no") + String.join("", rows)));
  }

  private static String headline(NetworkSheet sheet) {
    return NetworkWords.inShort(sheet).stream()
        .filter(line -> line.what().equals("To change"))
        .map(Answer::answer)
        .collect(Collectors.joining());
  }

  private static String repair(NetworkSheet sheet) {
    return NetworkWords.inShort(sheet).stream()
        .filter(line -> line.what().equals("For repair"))
        .map(Answer::answer)
        .collect(Collectors.joining());
  }

  /** 60 scfm each through 300 ft of 3/8 in pipe and 1/4 in hoses: nothing helps, and the first line says so. */
  @Test
  void the_first_line_says_that_nothing_is_enough_where_nothing_is() throws WrongFileException {
    NetworkSheet sheet = shed(
        supply("100 psig,,"),
        main("0.364 in", "300 ft"),
        drop("d1", "0.25 in,100 ft", "60 scfm", "95 psig", ","),
        drop("d2", "0.25 in,100 ft", "60 scfm", "95 psig", ","));
    assertThat(sheet.changes().drops()).allMatch(drop -> drop.first().isEmpty());
    assertThat(headline(sheet)).isEqualTo("no change tried is enough for d1, d2.");
  }

  /** 85 psig cannot give two tools 90: only the supply can, and it is named first. */
  @Test
  void a_supply_that_is_enough_for_every_drop_is_named_in_the_first_line()
      throws WrongFileException {
    NetworkSheet sheet = shed(
        supply("85 psig,,"),
        main("1.05 in", "60 ft"),
        drop("d1", "0.5 in,25 ft", "15 scfm", "90 psig", ","),
        drop("d2", "0.5 in,25 ft", "18 scfm", "88 psig", ","));
    assertThat(headline(sheet))
        .startsWith("the supply at A: one that holds 92 psig")
        .endsWith(": then every drop has enough.");
    // without a cut-out of its own the pressure it holds is the highest, and is not told twice
    assertThat(String.join(" ", NetworkWords.changes(sheet))).doesNotContain("cut-out");
  }

  /**
   * A wider hose lets each of two tools have enough while the other starves; both together take more than the main
   * carries.
   */
  @Test
  void changes_of_single_drops_that_are_not_enough_together_are_told_as_such()
      throws WrongFileException {
    NetworkSheet sheet = shed(
        supply("100 psig,,"),
        main("0.824 in", "200 ft"),
        drop("d1", "0.25 in,50 ft", "35 scfm", "88 psig", ","),
        drop("d2", "0.25 in,50 ft", "30 scfm", "85 psig", ","));
    assertThat(sheet.changes().drops()).allMatch(drop -> drop.first().isPresent());
    NetworkChanges.Change all = sheet.changes().together().orElseThrow();
    assertThat(all.what()).hasSize(2);
    assertThat(all.isEnoughForEvery()).isFalse();
    assertThat(headline(sheet))
        .isEqualTo("each of d1, d2 has a change of its own below; together they are not enough:"
            + " too little is left at d1, d2.");
    assertThat(NetworkWords.changes(sheet))
        .anyMatch(line -> line.startsWith("the first change of each drop at once, d1: ")
            && line.endsWith("together they are not enough: too little is left at d1, d2."));
  }

  /**
   * The page has room for the first changes only, but not for a supply raised without a word on the tools behind it.
   */
  @Test
  void a_page_that_leaves_changes_out_keeps_what_goes_with_more_pressure()
      throws WrongFileException {
    NetworkSheet sheet = shed(
        supply("85 psig,,"),
        main("0.824 in", "100 ft"),
        drop("d1", "0.25 in,25 ft", "12 scfm", "78 psig", ","),
        drop("d2", "0.25 in,30 ft", "12 scfm", "78 psig", ","),
        drop("d3", "0.25 in,40 ft", "12 scfm", "78 psig", ","));
    List<String> all = NetworkWords.changes(sheet);
    assertThat(all.size()).isGreaterThan(5);
    String raising = "raises the pressure at every tool behind it: ask their makers first";
    assertThat(all.get(all.size() - 1)).contains(raising);
    assertThat(NetworkPage.of(sheet)).contains("There are more", raising);
  }

  /** Three drops at a main that each wants wider, one by more than another: the widest counts for all. */
  @Test
  void where_drops_want_one_main_wider_the_widest_is_tried_for_all() throws WrongFileException {
    NetworkSheet sheet = blowGun();
    NetworkChanges.Change all = sheet.changes().together().orElseThrow();
    assertThat(all.what().stream().filter(what -> what.startsWith("main: "))).hasSize(1);
    assertThat(all.isEnoughForEvery()).isTrue();
    assertThat(headline(sheet)).contains(": together they are enough for every drop.");
  }

  private static NetworkSheet blowGun() throws WrongFileException {
    return shed(
        supply(",95 psig,120 psig"),
        main("0.622 in", "150 ft"),
        drop("d1", "0.25 in,40 ft", "20 scfm", "80 psig", "yes,"),
        drop("d2", "0.5 in,25 ft", "60 scfm", "80 psig", ","),
        drop("d3", "0.375 in,50 ft", "8 scfm", "85 psig", ","));
  }

  /** Air for cleaning above 30 psig is forbidden: what raises it further says so, wherever it is told. */
  @Test
  void more_pressure_where_it_is_forbidden_already_is_told_with_the_change()
      throws WrongFileException {
    NetworkSheet sheet = blowGun();
    String remark = "still more pressure to d1, where the pressure is not allowed already.";
    assertThat(headline(sheet)).contains(remark);
    assertThat(NetworkWords.changes(sheet).stream().filter(line -> line.contains(" give")))
        .hasSizeGreaterThan(3)
        .allMatch(line -> line.contains(remark));
    assertThat(NetworkWords.changes(sheet))
        .anyMatch(line -> line.contains("one that holds 138 psig")
            && line.contains("The highest pressure (cut-out) rises by as much, to 163 psig")
            && line.contains("instead of 120 psig"));
    // what is forbidden for another reason than its pressure is no matter of pressure
    NetworkSheet painter = NetworkSheet.of(network(DROPS_OF_A_MAIN.formatted("yes")
        + supply("85 psig,,")
        + main("1.05 in", "60 ft")
        + drop("d1", "0.5 in,25 ft", "15 scfm", "90 psig", ",yes")));
    assertThat(painter.forbidden()).isNotEmpty();
    assertThat(NetworkWords.changes(painter)).noneMatch(line -> line.contains("not allowed"));
    assertThat(NetworkWords.inShort(painter))
        .anyMatch(line -> line.answer().contains("must not feed painting. The air sprays paint"));
  }

  /** The hose that is enough for one drop takes from the other what it needs: with a wider main it does not. */
  @Test
  void two_changes_after_which_no_drop_is_short_come_before_one_that_harms_another()
      throws WrongFileException {
    NetworkSheet sheet = shed(
        supply("100 psig,,"),
        main("0.824 in", "120 ft"),
        drop("d1", "0.25 in,50 ft", "35 scfm", "88 psig", ","),
        drop("d2", "0.5 in,25 ft", "30 scfm", "91 psig", ","));
    NetworkChanges.OfDrop drop = sheet.changes().drops().get(0);
    assertThat(drop.single())
        .isNotEmpty()
        .allMatch(change -> !change.newlyShort().isEmpty());
    NetworkChanges.Change two = drop.two().orElseThrow();
    assertThat(two.isEnoughForEvery()).isTrue();
    assertThat(drop.first()).hasValue(two);
    assertThat(headline(sheet))
        .startsWith("d1: a 3/4 in hose instead of 1/4 in; and main: a 1 in pipe")
        .endsWith("which is enough for every drop.");
    List<String> lines = NetworkWords.changes(sheet);
    assertThat(lines.get(0))
        .startsWith("every single change that is enough for d1 leaves too little at another drop,"
            + " these two are enough without that: ");
    assertThat(lines.get(lines.size() - 1))
        .startsWith("d1: a 3/4 in hose instead of 1/4 in gives d1 ")
        .endsWith("But then too little is left at d2, which has enough now.");
  }

  /** A blow gun that wants 29.5 of 29 psig: only 30 are enough, and 30 are forbidden. */
  @Test
  void a_change_that_is_forbidden_is_told_last_and_not_named_first() throws WrongFileException {
    NetworkSheet sheet = shed(
        supply("29 psig,,"),
        main("1.05 in", "10 ft"),
        drop("d1", "0.5 in,10 ft", "2 scfm", "29.5 psig", "yes,"));
    assertThat(sheet.forbidden()).isEmpty();
    assertThat(sheet.changes().forEvery()).isEmpty();
    NetworkChanges.OfDrop drop = sheet.changes().drops().get(0);
    assertThat(drop.single())
        .hasSize(1)
        .allMatch(change -> !change.newlyForbidden().isEmpty());
    assertThat(drop.first()).isEmpty();
    assertThat(headline(sheet)).isEqualTo("what is enough for d1 is not allowed, see below.");
    assertThat(NetworkWords.changes(sheet).get(0))
        .startsWith("the supply at A: one that holds 30 psig")
        .contains("But then it is not allowed any more: Cleaning pressure");
  }

  /** Two mains from one supply to a drop that is short with both: with one closed it has still less. */
  @Test
  void a_main_is_not_said_to_be_dispensable_where_a_drop_is_short_and_loses_more()
      throws WrongFileException {
    String twin = main("0.622 in", "60 ft");
    NetworkSheet sheet = shed(
        supply("110 psig,,"),
        twin,
        twin.replace("pipe,main", "pipe,twin"),
        "pipe,spare,B,E,1.05 in,40 ft,commercial steel,1,,,,,,,,,,,,,,,,\n",
        drop("d1", "0.25 in,50 ft", "15 scfm", "90 psig", ","));
    assertThat(sheet.closures()).noneMatch(NetworkSheet.Closure::serves);
    NetworkResult.Solved closed =
        (NetworkResult.Solved) sheet.job().network().without("main").solve();
    String less =
        new NetworkAmounts(sheet.job().units()).pressure(closed.tools().get(0).atTool());
    assertThat(repair(sheet))
        .startsWith("no main may be closed with all tools running; with main or twin closed"
            + " no further drop falls short, but d1 has still less: " + less)
        .endsWith("; with spare closed no further drop falls short, d1 is as short as now.");
    assertThat(NetworkPage.of(sheet))
        .containsIgnoringCase("no main may be closed with all tools running")
        .doesNotContain("Mains that may not be closed");
    NetworkSheet enough = shed(
        supply("110 psig,,"),
        twin,
        twin.replace("pipe,main", "pipe,twin"),
        drop("d1", "0.5 in,50 ft", "15 scfm", "90 psig", ","));
    assertThat(repair(enough)).isEqualTo("any one main may be closed with all tools running.");
  }

  private static NetworkJob onHose(String bore, String tool) throws WrongFileException {
    String table = """
        record,name,from,to,bore,length,roughness,wall,tool,air,needs,pressure,units,temperature,atmosphere,customer,onHose
        network,Shed,,,,,,,,,,,US,68 °F,14.7 psia,K.,
        supply,,,room,,,,,,,,110 psig,,,,,
        pipe,main,room,a,1.05 in,60 ft,0.045 mm,,,,,,,,,,
        drop,bench,a,,%s,50 ft,0.01 mm,,grinder,60 scfm,102 psig,,,,,,%s
        """.formatted(bore, tool);
    return NetworkFile.read(Document.of("shed.csv", Csv.read("shed.csv", table)));
  }

  /** Rules of velocity are for pipe: 60 scfm in 1/2 in are far above what a branch of pipe may have. */
  @Test
  void a_hose_has_no_rule_of_velocity_and_is_called_by_its_size() throws WrongFileException {
    NetworkSheet hose = NetworkSheet.of(onHose("0.5 in", "yes"));
    assertThat(hose.branches().get(1).velocity()).isEmpty();
    assertThat(hose.job().branches().get(1).isHose()).isTrue();
    assertThat(words(hose.changes().forEvery())).contains("bench: a 3/4 in hose instead of 1/2 in");
    NetworkSheet pipe = NetworkSheet.of(onHose("0.622 in", "yes"));
    assertThat(pipe.branches().get(1).velocity()).isPresent();
    assertThat(pipe.job().branches().get(1).isHose()).isFalse();
    assertThat(NetworkSheet.of(onHose("0.5 in", "no")).branches().get(1).velocity())
        .isPresent();
    assertThat(NetworkText.of(hose)).doesNotContain("0.500 in");
  }

  /**
   * The wall of an old steel pipe has a range: the roughest is taken, and the sheet says so; an exact one says
   * nothing.
   */
  @Test
  void what_is_not_known_exactly_of_a_pipe_is_told_with_what_was_taken() throws WrongFileException {
    NetworkSheet sheet =
        NetworkSheet.of(network(WALLS.formatted("\"steel pipe, old\"", "14 scfm")));
    ConduitRange told = sheet.job().branches().get(0).told().orElseThrow();
    assertThat(told.least().roughness()).isGreaterThan(told.most().roughness());
    assertThat(sheet.job().branches().get(0).pipe()).hasValue(told.least());
    assertThat(NetworkText.of(sheet).replaceAll("\\s+", " "))
        .contains("Not known exactly: main: roughness of "
            + told.least().roughness().format(LengthUnit.INCH, 4) + " taken, may be down to "
            + told.most().roughness().format(LengthUnit.INCH, 4))
        .contains(
            "The worst of each was taken.", "That is with the worst of what is not known exactly");
    assertThat(NetworkPage.of(sheet)).contains("Not known exactly");
    assertThat(NetworkText.of(
            NetworkSheet.of(network(WALLS.formatted("commercial steel", "14 scfm")))))
        .doesNotContain("Not known exactly: main", "main: roughness");
  }

  @ParameterizedTest
  @ValueSource(strings = {"11 to 14 cfm", "11 to 14 scfm", "11-14 scfm"})
  void a_range_of_air_is_refused_with_the_end_to_give(String air) {
    assertThatThrownBy(() -> network(WALLS.formatted("commercial steel", air)))
        .isInstanceOf(WrongFileException.class)
        .hasMessageStartingWith(
            "shed.csv: row 5, column air: was \"" + air
                + "\"; one value is wanted here, no range: give the worst that it can be, which is the most");
  }

  private static final String WALLS = """
      record,name,from,to,bore,length,roughness,wall,tool,air,needs,pressure,units,temperature,atmosphere,customer,\
      onHose,follows
      network,Shed,,,,,,,,,,,US,68 °F,14.7 psia,K.,,
      supply,,,room,,,,,,,,110 psig,,,,,,
      pipe,main,room,a,0.622 in,120 ft,,%s,,,,,,,,,,
      drop,bench,a,,3/8 in,50 ft,0.01 mm,,grinder,%s,90 psig,,,,,,yes,no
      """;
}
