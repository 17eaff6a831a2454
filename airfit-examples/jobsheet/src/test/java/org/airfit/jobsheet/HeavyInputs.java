package org.airfit.jobsheet;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** Runs the program several times in one small heap: each argument is a call, its words with a bar between. */
final class HeavyInputs {

  private HeavyInputs() {}

  /**
   * Prints a line for each call: exit code, length of the output, and what was complained of.
   *
   * @param calls the calls
   */
  public static void main(String[] calls) {
    for (String call : calls) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      ByteArrayOutputStream err = new ByteArrayOutputStream();
      int code = Main.run(
          call.split("\\|"),
          new PrintStream(out, true, StandardCharsets.UTF_8),
          new PrintStream(err, true, StandardCharsets.UTF_8));
      System.out.println(code + " " + out.size() + " "
          + err.toString(StandardCharsets.UTF_8).strip().replace("\n", "<line end>"));
    }
  }
}
