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
  void a_flare_in_a_port_of_its_thread_gets_the_adapter_what_seals_and_the_order() {
    assertThat(run("joint", "-6 flare male", "9/16-18 O-ring port")).isZero();
    assertThat(told())
        .startsWith("-6 flare male: read as 37° flare")
        .contains("so that nothing seals. Between them goes a port adapter")
        .contains("Kept tight by the metal cones of both parts.")
        .contains("Kept tight by a ring or gasket that belongs to the part.")
        .contains("To buy beside the parts: nothing.")
        .contains("To put it together: Close the joint of 37° flare 9/16-18 male and")
        .contains("The thread is not the joint");
  }

  @Test
  void a_claw_is_told_with_its_clip_and_a_garden_hose_is_refused_with_the_reason() {
    assertThat(run("joint", "two-lug claw", "1/2 NPT male")).isZero();
    assertThat(told())
        .contains(
            "To buy beside the parts: retaining clip or pin for a two-lug claw; thread sealant for 1/2 NPT.")
        .contains("Clip or pin in every pair");
    out.reset();
    assertThat(run("joint", "garden hose female", "3/4 NPT male")).isZero();
    assertThat(told())
        .contains("for water: neither coupling nor hose is made or rated for compressed air")
        .doesNotContain("To buy beside the parts")
        .contains("Never put compressed air on a garden or fire hose");
    assertThat(run("joint", "universal claw", "1/2 NPT male")).isEqualTo(2);
    assertThat(complained()).contains("heads that do not mate").hasLineCount(1);
  }

  @Test
  void what_two_joints_of_a_chain_take_alike_is_counted_but_sealant_is_told_once() {
    assertThat(run("joint", "G 1/2 male", "G 1/2 male")).isZero();
    assertThat(told()).contains("To buy beside the parts: 2 × sealing washer for G 1/2.");
    out.reset();
    assertThat(run("joint", "1/4 in barb", "3/8 in hose")).isZero();
    assertThat(told())
        .contains(
            "To buy beside the parts: 2 × clamp or ferrule for 1/4 in hose; clamp or ferrule for 3/8 in hose.");
    out.reset();
    assertThat(run("joint", "1/2 NPT male", "1/2 NPT male")).isZero();
    assertThat(told()).contains("To buy beside the parts: thread sealant for 1/2 NPT.");
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
