package org.airfit.browser.compiler;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;

/** What the small programs of the build answer before they begin: help, the version, and wrong words. */
final class ProgramHelp {

  private static final int WRONG_WORDS = 2;

  private ProgramHelp() {}

  /**
   * Answers a call that asks for help or the version, and refuses one with an option, with too few words or too many.
   *
   * @param help all that the program tells of itself; begins with its name and a comma
   * @return the exit code, if the call is answered by this
   */
  static OptionalInt answered(String[] arguments, int least, int most, String help)
      throws IOException {
    List<String> words = List.of(arguments);
    String name = help.substring(0, help.indexOf(','));
    if (words.contains("--help") || words.contains("-h")) {
      System.out.print(help);
      return OptionalInt.of(0);
    }
    if (words.equals(List.of("--version"))) {
      System.out.println(name + " " + version());
      return OptionalInt.of(0);
    }
    boolean isOption = words.stream().anyMatch(word -> word.startsWith("-"));
    if (isOption || words.size() < least || words.size() > most) {
      System.err.println(name + " cannot be called with "
          + (words.isEmpty() ? "no words" : String.join(" ", words))
          + "; --help tells how it is called");
      return OptionalInt.of(WRONG_WORDS);
    }
    return OptionalInt.empty();
  }

  private static String version() throws IOException {
    try (InputStream in = ProgramHelp.class.getResourceAsStream("version.txt")) {
      return in == null
          ? "of unknown version"
          : new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
    }
  }
}
