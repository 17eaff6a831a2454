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

class SetProgramTest {

  private static final Path WORKSHOP = Path.of("..", "sets", "workshop.csv");

  @TempDir
  Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    return SetProgram.run(
        args,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  @Test
  void the_program_checks_a_set_says_what_to_measure_and_writes_it() throws IOException {
    Path json = folder.resolve("workshop.json");
    assertThat(run(WORKSHOP.toString(), json.toString())).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8))
        .contains(
            "Ferry Lane workshop set",
            "tern: Tern, invented",
            "socket Two-way socket (invented) takes tern, gannet",
            "Which pairs can be told apart",
            "can be told apart with a digital caliper",
            "1  Measure the ",
            "Written: ");
    assertThat(json).exists();
    Path page = folder.resolve("sheet.html");
    assertThat(run(json.toString(), page.toString())).isZero();
    assertThat(Files.readString(page)).contains("50 mm", "Gannet", "@page { size: A4;");
  }

  @Test
  void the_page_is_drawn_for_the_paper_that_is_named() throws IOException {
    Path page = folder.resolve("sheet.html");
    assertThat(run(WORKSHOP.toString(), page.toString(), "letter")).isZero();
    assertThat(Files.readString(page))
        .contains("@page { size: letter;", "width=\"215.9mm\" height=\"279.4mm\"");
    assertThat(run(WORKSHOP.toString(), page.toString(), "A4")).isZero();
    assertThat(Files.readString(page)).contains("@page { size: A4;", "width=\"210mm\"");
    assertThat(run(WORKSHOP.toString(), page.toString(), "foolscap")).isEqualTo(2);
    assertThat(run(WORKSHOP.toString(), page.toString(), "A4", "A4")).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8))
        .contains("foolscap", "is no paper; type A4 or Letter", "give a set file");
  }

  @Test
  void the_program_refuses_in_one_line() throws IOException {
    assertThat(run()).isEqualTo(2);
    assertThat(run(WORKSHOP.toString(), folder.resolve("x.txt").toString())).isEqualTo(2);
    assertThat(run(folder.resolve("none.csv").toString())).isEqualTo(2);
    assertThat(err.toString(StandardCharsets.UTF_8))
        .contains("give a set file", "must end in .csv, .json or .html", "there is no such file");
    Files.writeString(folder.resolve("one.csv"), """
        record,id,name,from,source,basis,dimension,nominal,deviation
        set,,One,,,,,,
        profile,a,Ay,invented,x,invented for demonstration,tip diameter,12 mm,0.03 mm
        """);
    assertThat(run(folder.resolve("one.csv").toString())).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8)).contains("There is one profile only.");
  }
}
