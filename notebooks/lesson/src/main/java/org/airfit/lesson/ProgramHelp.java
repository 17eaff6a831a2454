package org.airfit.lesson;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;
import org.airfit.working.Working;

/** What every small program answers before it begins: {@code --help}, {@code -h} and {@code --version}. */
public final class ProgramHelp {

  /** The exit code where words could not be used. */
  public static final int WRONG_WORDS = 2;

  private static final String VERSION = "/META-INF/airfit/core-version.txt";

  private ProgramHelp() {}

  /**
   * Answers a call that asks for help or the version, and refuses a call with too few or too many words, or an option,
   * in one line on the error output.
   *
   * @param arguments the words of the call
   * @param least how many words the program wants at least
   * @param most how many words it takes at most
   * @param help all that the program tells of itself; begins with its name and a comma
   * @return the exit code, if the call is answered by this
   */
  public static OptionalInt answered(String[] arguments, int least, int most, String help) {
    List<String> words = List.of(arguments);
    String name = help.substring(0, help.indexOf(','));
    if (words.contains("--help") || words.contains("-h")) {
      utf8(System.out).print(help);
      return OptionalInt.of(0);
    }
    if (words.equals(List.of("--version"))) {
      utf8(System.out).println(name + " " + version());
      return OptionalInt.of(0);
    }
    for (String word : words) {
      if (word.startsWith("-") && !word.matches("-[0-9]+")) {
        return refused("\"" + word + "\" is no option of " + name);
      }
    }
    if (words.size() < least || words.size() > most) {
      String wanted = least == most ? String.valueOf(least) : least + " to " + most;
      return refused(
          name + " wants " + wanted + (most == 1 ? " word" : " words") + ", were " + words.size());
    }
    return OptionalInt.empty();
  }

  /**
   * Refuses words in one line on the error output.
   *
   * @param complaint what is wrong, and what was wanted
   * @return the exit code
   */
  public static OptionalInt refused(String complaint) {
    utf8(System.err).println(complaint + "; --help tells how it is called");
    return OptionalInt.of(WRONG_WORDS);
  }

  /** The version of the library that is on the class path. */
  private static String version() {
    try (InputStream in = Working.class.getResourceAsStream(VERSION)) {
      return in == null
          ? "of unknown version"
          : new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      return "of unknown version";
    }
  }

  private static PrintStream utf8(PrintStream stream) {
    return new PrintStream(stream, true, StandardCharsets.UTF_8);
  }
}
