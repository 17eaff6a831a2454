package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NetworkProgramTest {

  private static final String TABLE = """
      record,name,from,to,bore,length,roughness,fittings,serves,\
      conductance,criticalPressureRatio,tool,air,needs,follows,use,pressure,temperature,atmosphere,customer
      network,Shed,,,,,,,,,,,,,,,,20 °C,1 bar(a),K.
      supply,,,room,,,,,,,,,,,,,7 bar(g),,,
      pipe,main,room,wall,27 mm,30 m,0.045 mm,2.0,main,,,,,,,,,,,
      part,filter,wall,clean,,,,,,20 dm3/(s bar),0.4,,,,,,,,,
      drop,bench,clean,,16 mm,3 m,0.01 mm,,,6 dm3/(s bar),0.3,grinder,15 scfm,6 bar(g),no,0.5,,,,
      """;

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    return NetworkProgram.run(
        args,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  @Test
  void the_program_refuses_in_one_line() throws IOException {
    assertThat(run()).isEqualTo(2);
    assertThat(run(folder.resolve("none.csv").toString())).isEqualTo(2);
    Files.writeString(folder.resolve("empty.csv"), "");
    assertThat(run(folder.resolve("empty.csv").toString())).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8))
        .contains("give a network file", "there is no such file", "type the heading record,name");
    assertThat(out.toString(StandardCharsets.UTF_8)).isEmpty();
  }

  @Test
  void a_tool_that_nothing_can_feed_is_told_and_a_page_is_made_all_the_same() throws IOException {
    Path file = folder.resolve("shed.csv");
    Path page = folder.resolve("shed.html");
    Files.writeString(file, TABLE.replace("room,wall,", "wall,yard,"));
    assertThat(run(file.toString(), page.toString())).isEqualTo(2);
    Files.writeString(
        file,
        TABLE + "pipe,island,far,near,27 mm,30 m,0.045 mm,,,,,,,,,,,,,\n"
            + "pipe,back,near,far,27 mm,30 m,0.045 mm,,,,,,,,,,,,,\n");
    assertThat(run(file.toString(), page.toString())).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8)).contains("No way leads from a supply to");
    assertThat(Files.readString(page)).contains("No way leads from a supply to", "near");
  }

  @Test
  void the_first_line_tells_that_the_air_is_outside_its_model() throws IOException {
    Path file = folder.resolve("shed.csv");
    String page = folder.resolve("shed.html").toString();
    Files.writeString(file, TABLE.replace("7 bar(g)", "101 bar(g)"));
    assertThat(run(file.toString(), page)).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " "))
        .contains(
            "needed 6 bar(g) (87.0 psig). Outside the range of the air model: take the numbers for no"
                + " more than a first guess. As they run");
    out.reset();
    Files.writeString(file, TABLE.replace("7 bar(g)", "20 bar(g)"));
    assertThat(run(file.toString(), page)).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " "))
        .contains("needed 6 bar(g) (87.0 psig). As they run");
  }

  @Test
  void idle_supplies_dead_legs_and_the_residual_are_told() throws IOException {
    Path file = folder.resolve("shed.csv");
    Path page = folder.resolve("shed.html");
    String second = TABLE
        + "supply,,,cellar,,,,,,,,,,,,,6.5 bar(g),,,\n"
        + "pipe,cellar pipe,cellar,wall,27 mm,30 m,0.045 mm,,,,,,,,,,,,,\n";
    Files.writeString(file, second);
    assertThat(run(file.toString(), page.toString())).isZero();
    for (String said :
        new String[] {out.toString(StandardCharsets.UTF_8), Files.readString(page)}) {
      assertThat(said.replaceAll("\\s+", " "))
          .containsIgnoringCase(
              "the supply at cellar gives nothing: the network stands above its pressure")
          .containsIgnoringCase("cellar pipe: no air flows through")
          .containsPattern("none is missed by more than 10⁻¹[⁰¹²³⁴⁵⁶⁷⁸⁹] of the highest pressure");
    }
    assertThat(out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " "))
        .contains("cellar pipe: 0 L/s ANR, pressure loss 0 bar (0 psi)")
        .contains(", stands by")
        .doesNotContain("Dead legs");
    out.reset();
    Files.writeString(
        file,
        second
            .replaceFirst("customer\n", "customer,nonReturnValve\n")
            .replaceFirst("6.5 bar\\(g\\),,,\n", "6.5 bar(g),,,,no\n"));
    assertThat(run(file.toString(), page.toString())).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " "))
        .contains("into the supply at cellar, which has no non-return valve: fit one")
        .doesNotContain("Dead legs");
  }

  @Test
  void a_coupling_too_small_starves_the_tool_and_is_named() throws IOException {
    Path file = folder.resolve("shed.csv");
    Path page = folder.resolve("shed.html");
    Files.writeString(file, TABLE.replace("6 dm3/(s bar)", "0.5 dm3/(s bar)"));
    assertThat(run(file.toString(), page.toString())).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8))
        .contains("Chokes: coupling of bench", "starved", "too little at the drop: bench");
    assertThat(Files.readString(page)).contains("coupling of bench (chokes)");
  }
}
