package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** Two ends on the command line. */
class JointProgramTest {

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    return Main.run(
        args,
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  /** What was printed, whatever lines it was wrapped into. */
  private String told() {
    assertThat(out.toString(StandardCharsets.UTF_8).split("\n", -1))
        .allMatch(line -> line.length() <= 100);
    return out.toString(StandardCharsets.UTF_8).replaceAll("\\s+", " ");
  }

  private String complained() {
    return err.toString(StandardCharsets.UTF_8);
  }

  @Test
  void two_sizes_get_the_reducer_that_goes_between_and_its_joints() {
    assertThat(run("joint", "1/2 NPT male", "1/4 NPT female")).isZero();
    assertThat(told())
        .contains("does not go together")
        .contains("Between them goes a female × male reducer 1/2 NPT female × 1/4 NPT male.")
        .contains("1/2 NPT male and 1/2 NPT female: seals on the thread")
        .contains("1/4 NPT male and 1/4 NPT female: seals on the thread")
        .contains("must be rated for the pressure")
        .contains("Nothing loose may get into the air");
    assertThat(complained()).isEmpty();
  }

  @Test
  void what_goes_together_is_told_with_its_cautions_alone() {
    assertThat(run("joint", "3/8 in barb", "9.5 mm hose")).isZero();
    assertThat(told()).contains("holds with a clamp").doesNotContain("The joints with it");
    assertThat(told())
        .contains("Before anyone connects this")
        .contains("clamp it behind the ridge");
  }

  @Test
  void a_text_that_may_be_meant_otherwise_is_remarked_on() {
    assertThat(run("joint", "3-8 NPT male", "3 NPT female")).isZero();
    assertThat(told()).startsWith("3-8 NPT male: read as size 3 with 8 threads per inch");
  }

  @Test
  void what_is_no_end_or_one_end_alone_is_one_line() {
    assertThat(run("joint", "1/4 NPT", "1/4 NPT female")).isEqualTo(2);
    assertThat(complained()).contains("male or female is missing").hasLineCount(1);
    err.reset();
    assertThat(run("joint", "1/4 NPT male")).isEqualTo(2);
    assertThat(complained()).contains("give two ends").hasLineCount(1);
    assertThat(told()).isEmpty();
  }
}
