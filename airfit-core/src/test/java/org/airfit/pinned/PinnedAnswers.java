package org.airfit.pinned;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * The pinned answers as a command: compares them with what the library answers now, and writes them anew where a change
 * has its entry in the change log. {@code .ci/pinned} calls it.
 */
public final class PinnedAnswers {

  /** Where the pinned answers lie in a checkout. */
  static final Path FOLDER = Path.of("airfit-core/src/test/resources/org/airfit/pinned");

  private PinnedAnswers() {}

  /** {@return what the library answers now} */
  static List<Pin> now() {
    Pins pins = new Pins();
    PinnedQuantities.ask(pins);
    PinnedAir.ask(pins);
    PinnedThreads.ask(pins);
    PinnedPlugs.ask(pins);
    PinnedFlow.ask(pins);
    PinnedLines.ask(pins);
    PinnedPlants.ask(pins);
    PinnedRuns.ask(pins);
    PinnedSelections.ask(pins);
    return pins.all();
  }

  /**
   * Compares or renews.
   *
   * @param arguments the folder of the checkout, then "compare", "renew" with or without the entry of the change log,
   *     or "since" with a folder of earlier pinned answers
   * @throws IOException if a file cannot be read or written
   */
  public static void main(String[] arguments) throws IOException {
    Path root = Path.of(arguments[0]);
    Path folder = root.resolve(FOLDER);
    String changeLog = Files.readString(root.resolve("CHANGELOG.md"));
    try {
      switch (arguments[1]) {
        case "renew" -> {
          String entry = arguments.length > 2 ? arguments[2] : "";
          PinnedFile renewed = PinnedFile.in(folder).renewed(now(), entry, changeLog);
          renewed.writeTo(folder);
          System.out.println(renewed.pins().size() + " answers are pinned");
        }
        case "since" -> {
          PinnedFile.in(folder).requireAllOf(PinnedFile.in(Path.of(arguments[2])));
          System.out.println(
              "every answer pinned then is pinned still, or its change has an entry");
        }
        default -> {
          PinnedFile pinned = PinnedFile.in(folder);
          pinned.requireEntriesIn(changeLog);
          List<String> changed = pinned.changes(now());
          changed.forEach(System.out::println);
          if (!changed.isEmpty()) {
            throw new IllegalStateException(changed.size() + " answers are not those pinned");
          }
          System.out.println(pinned.pins().size() + " answers are as they were pinned");
        }
      }
    } catch (IllegalStateException e) {
      System.err.println("pinned: " + e.getMessage());
      System.exit(1);
    }
  }
}
