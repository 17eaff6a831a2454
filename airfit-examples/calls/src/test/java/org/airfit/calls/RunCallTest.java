package org.airfit.calls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.airfit.files.Csv;
import org.junit.jupiter.api.Test;

/** What arrives at the end of a run: by a printed table, and by what was asked. */
class RunCallTest {

  private static final double BAR_PER_PSI = 0.0689475729;

  private static Map<String, Object> run(Object... fields) throws RefusedException {
    return Calls.answer("run", Spread.of(fields));
  }

  private static Map<String, Object> hose(String bore) {
    return Spread.of("name", "hose", "bore", bore, "length", "50 ft", "wall", "rubber hose");
  }

  private static double bar(Object pressure) {
    return ((Number) Example.at(pressure, "bar")).doubleValue();
  }

  /**
   * The table holds psi per 100 ft of Schedule 40 pipe at 100 psig and 60 °F, to three digits and with the density of
   * the inlet all along: 4 % holds the rounding and the fall of the density over 3 psi of 115.
   */
  @Test
  void the_loss_in_pipe_is_that_of_the_printed_table() throws Exception {
    Path table = Path.of(
        "..",
        "..",
        "airfit-core",
        "src",
        "test",
        "resources",
        "org",
        "airfit",
        "line",
        "air_schedule40_pressure_drop.csv");
    int rows = 0;
    for (List<String> row : Csv.read("table", Files.readString(table))) {
      if (!row.get(11).equals("ok")) {
        continue;
      }
      double printed = Double.parseDouble(row.get(6));
      if (printed < 0.3 || printed > 3.0) {
        continue;
      }
      Map<String, Object> answer = run(
          "supply",
          Spread.of("pressure", "100 psig", "temperature", "60 °F"),
          "atmosphere",
          "14.7 psia",
          "flow",
          row.get(0) + " scfm",
          "elements",
          List.of(Spread.of(
              "name",
              "pipe",
              "bore",
              row.get(3) + " in",
              "length",
              "100 ft",
              "roughness",
              "0.0018 in")));
      double lost =
          (bar(Example.at(answer, "atSupply")) - bar(Example.at(answer, "atTool"))) / BAR_PER_PSI;
      assertThat(lost).as("%s", row).isCloseTo(printed, within(0.04 * printed));
      assertThat(answer.get("kind")).isEqualTo("delivered");
      rows++;
    }
    assertThat(rows).isGreaterThan(30);
  }

  @Test
  void what_the_tool_needs_decides_and_a_wider_hose_is_told() throws Exception {
    Map<String, Object> answer = run(
        "supply",
        "90 psig",
        "elements",
        List.of(hose("3/8 in")),
        "flow",
        "34 scfm",
        "needed",
        "80 psig");
    assertThat(answer.get("kind")).isEqualTo("tooLittle");
    assertThat(String.valueOf(answer.get("sentence"))).contains("needed 80 psig", "too little");
    assertThat(answer.get("biggest")).isEqualTo("hose");
    assertThat(String.valueOf(answer.get("helps"))).contains("1/2 in hose");
    assertThat(String.valueOf(answer.get("carries"))).startsWith("The tool takes 34 scfm");
    assertThat(run(
                "supply",
                "90 psig",
                "elements",
                List.of(hose("3/4 in")),
                "flow",
                "34 scfm",
                "needed",
                "80 psig")
            .get("kind"))
        .isEqualTo("enough");
  }

  /** A rubber hose may be smooth or not, and 34 CFM has several usual readings: both ends of what arrives are told. */
  @Test
  void what_arrives_through_what_is_not_known_exactly_is_told_with_both_ends() throws Exception {
    for (String flow : List.of("34 scfm", "34 cfm")) {
      Map<String, Object> answer =
          run("supply", "90 psig", "elements", List.of(hose("3/4 in")), "flow", flow);
      assertThat(String.valueOf(answer.get("sentence")))
          .as(flow)
          .matches("At the tool from [0-9].* to [0-9].*, depending on what is not known\\.");
      assertThat(answer.get("kind")).isEqualTo("delivered");
    }
    Map<String, Object> known = run(
        "supply",
        "90 psig",
        "elements",
        List.of(Map.of(
            "name", "hose", "bore", "3/4 in", "length", "50 ft", "wall", "smooth rubber hose")),
        "flow",
        "34 scfm");
    assertThat(String.valueOf(known.get("sentence"))).matches("At the tool [0-9].*[0-9)]\\.");
  }

  /** Whether 1/4 in of rubber hose is enough turns on its wall: yes, no or depends, by what is needed. */
  @Test
  void whether_it_is_enough_may_depend_on_what_is_not_known() throws Exception {
    Map<String, Object> at =
        run("supply", "90 psig", "elements", List.of(hose("3/8 in")), "flow", "20 scfm");
    String said = String.valueOf(at.get("sentence"));
    double worst =
        Double.parseDouble(said.substring("At the tool from ".length(), said.indexOf(" psig")));
    int to = said.indexOf(" to ") + 4;
    double best = Double.parseDouble(said.substring(to, said.indexOf(" psig", to)));
    assertThat(kind(worst - 0.5)).isEqualTo("enough");
    assertThat(kind((worst + best) / 2.0)).isEqualTo("depends");
    assertThat(kind(best + 0.5)).isEqualTo("tooLittle");
  }

  private static String kind(double needed) throws Exception {
    return String.valueOf(run(
            "supply",
            "90 psig",
            "elements",
            List.of(hose("3/8 in")),
            "flow",
            "20 scfm",
            "needed",
            needed + " psig")
        .get("kind"));
  }

  @Test
  void a_supply_below_what_the_tool_needs_is_drawn_too() throws Exception {
    Map<String, Object> answer = run(
        "supply",
        "74 psig",
        "elements",
        List.of(hose("1/4 in")),
        "flow",
        "56 scfm",
        "needed",
        "80 psig");
    assertThat(answer.get("kind")).isEqualTo("starved");
    assertThat(String.valueOf(answer.get("picture")))
        .contains("the tool needs 80")
        .doesNotContain("NaN");
  }

  /** Of the boatyard the adapter A-1 is rated for 20 bar(g), the socket S-12 for 16. */
  @Test
  void a_part_that_is_too_weak_for_the_supply_is_told_and_warned_of() throws Exception {
    Map<String, Object> weak = ofBoatyard("17 bar(g)");
    assertThat(String.valueOf(weak.get("remarks")))
        .contains("elements[2]: ", "is rated for ", "up to 17 bar(g)", "take it out of use");
    assertThat(String.valueOf(weak.get("cautions"))).contains("Rated pressure");
    for (String supply : List.of("15.9 bar(g)", "16 bar(g)")) {
      Map<String, Object> strong = ofBoatyard(supply);
      assertThat(String.valueOf(strong.get("remarks"))).doesNotContain("is rated for");
      assertThat(String.valueOf(strong.get("cautions"))).doesNotContain("Rated pressure");
    }
  }

  private static Map<String, Object> ofBoatyard(String supply) throws Exception {
    return run(
        "supply",
        supply,
        "elements",
        List.of(Map.of("part", "A-1"), Map.of("part", "S-12")),
        "flow",
        "10 L/s ANR",
        "needed",
        "6 bar(g)",
        "catalogue",
        Example.plain(Example.JOBS.resolve("boatyard").resolve("catalogue.json")));
  }

  @Test
  void cautions_go_with_it_and_the_last_defers_to_codes() throws Exception {
    List<?> cautions = Example.list(
        run("supply", "90 psig", "elements", List.of(hose("3/8 in")), "flow", "34 scfm"),
        "cautions");
    assertThat(String.valueOf(cautions.get(cautions.size() - 1))).contains("Local codes");
  }

  @Test
  void a_refusal_names_the_field_of_the_call() {
    assertRefused(
        "elements[1].bor",
        "supply",
        "90 psig",
        "flow",
        "9 scfm",
        "elements",
        List.of(Spread.of(
            "name",
            "hose",
            "bor",
            "3/8 in",
            "bore",
            "3/8 in",
            "length",
            "5 m",
            "wall",
            "rubber hose")));
    assertRefused("flow", "supply", "90 psig", "flow", "9", "elements", List.of(hose("3/8 in")));
    assertRefused("supply", "supply", "90", "flow", "9 scfm", "elements", List.of(hose("3/8 in")));
    assertRefused(
        "supply.pressure",
        "supply",
        Spread.of("pressure", "90"),
        "flow",
        "9 scfm",
        "atmosphere",
        "14.7 psia",
        "elements",
        List.of(hose("3/8 in")));
    assertRefused(
        "atmosphere",
        "supply",
        "90 psig",
        "flow",
        "9 scfm",
        "atmosphere",
        "14.7 psig",
        "elements",
        List.of(hose("3/8 in")));
    assertRefused(
        "needed",
        "supply",
        "90 psig",
        "flow",
        "9 scfm",
        "needed",
        "80",
        "elements",
        List.of(hose("3/8 in")));
    assertRefused("elements", "supply", "90 psig", "flow", "9 scfm", "elements", List.of());
    assertRefused("elements", "supply", "90 psig", "flow", "9 scfm");
  }

  private static void assertRefused(String field, Object... fields) {
    assertThatExceptionOfType(RefusedException.class)
        .isThrownBy(() -> run(fields))
        .satisfies(refused -> assertThat(refused.field()).isEqualTo(field));
  }
}
