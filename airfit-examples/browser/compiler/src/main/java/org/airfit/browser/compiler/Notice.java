package org.airfit.browser.compiler;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.OptionalInt;

/** Puts the licences of what the JavaScript holds at its head: of airfit, and of the compiler's class library. */
public final class Notice {

  private static final String HELP = """
      Notice, writes the notice of the licences in front of the JavaScript; the build starts it

        java -cp CLASSES org.airfit.browser.compiler.Notice FILE

      FILE is the JavaScript; it is written over.
        --help, -h   prints this
        --version    prints the version
      Exit code 0: written; 1: it could not be; 2: it was called with words that it cannot use.
      """;

  private Notice() {}

  /**
   * Puts the notice at the head of a file, once.
   *
   * @param args the file
   * @throws IOException if it cannot be read or written
   */
  public static void main(String[] args) throws IOException {
    OptionalInt answered = ProgramHelp.answered(args, 1, 1, HELP);
    if (answered.isPresent()) {
      System.exit(answered.getAsInt());
    }
    Path file = Path.of(args[0]);
    String code = Files.readString(file);
    String notice = text();
    if (!code.startsWith(notice)) {
      Files.writeString(file, notice + code);
    }
  }

  /** The notice, a comment that tools for JavaScript keep. */
  static String text() throws IOException {
    try (InputStream in = Notice.class.getResourceAsStream("notice.txt")) {
      return new String(
          Objects.requireNonNull(in, "notice.txt").readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
