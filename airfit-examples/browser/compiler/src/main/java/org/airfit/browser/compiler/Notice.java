package org.airfit.browser.compiler;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/** Puts the licences of what the JavaScript holds at its head: of airfit, and of the compiler's class library. */
public final class Notice {

  private Notice() {}

  /**
   * Puts the notice at the head of a file, once.
   *
   * @param args the file
   * @throws IOException if it cannot be read or written
   */
  public static void main(String[] args) throws IOException {
    if (args.length != 1) {
      throw new IOException("give the file with the JavaScript");
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
