package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

/**
 * Calls every public factory, parser and method of the core, a million times each kind. Runs in the Maven profile
 * {@code fuzz} only; {@code DEVELOPERS.md} says how.
 */
class CoreFuzz {

  /** A call that takes longer than this is a hang [s]. */
  private static final double HANG = 60.0;

  /**
   * Members that no call reaches: a search for a change simulates days over and over and takes seconds, and what it
   * finds comes of it alone.
   */
  private static final Set<String> NOT_REACHED = Set.of(
      "network.DayChange.largerReceiver",
      "network.DayChange.movedBands",
      "network.DayChange.regulatedHeader",
      "network.DayChange.kind",
      "network.DayChange.day",
      "network.DayChange.result",
      "network.DayChange.equals",
      "network.DayChange.hashCode",
      "network.DayChange.toString");

  private static final long CALLS = Long.getLong("airfit.fuzz.calls", 1_000_000L);
  private static final long SEED = Long.getLong("airfit.fuzz.seed", 1L);

  @Test
  void nothing_but_what_is_documented_comes_of_any_call() throws IOException {
    Fuzzer fuzzer =
        new Fuzzer(SEED, Fuzzer.publicTypes(), Documented.in(Path.of("src", "main", "java")));
    AtomicBoolean done = new AtomicBoolean();
    Thread watchman = new Thread(() -> watch(fuzzer, done), "watchman");
    watchman.setDaemon(true);
    watchman.start();
    List<String> lines = new ArrayList<>();
    List<String> never = new ArrayList<>();
    fuzzer.warmUp();
    for (Fuzzer.Kind kind : Fuzzer.Kind.values()) {
      Fuzzer.Count count = fuzzer.run(kind, CALLS);
      assertThat(count.calls()).as(kind.toString()).isEqualTo(CALLS);
      lines.add(kind + ": " + count.calls() + " calls of " + count.members() + " members, "
          + count.answers() + " answers, " + count.refusals() + " exceptions; never called: "
          + count.never());
      never.addAll(count.never());
      report(lines, fuzzer);
    }
    done.set(true);
    assertThat(fuzzer.found()).as("see target/fuzz.txt").isEmpty();
    assertThat(never).as("never called, see target/fuzz.txt").isSubsetOf(NOT_REACHED);
  }

  /** Writes what is known so far, so that a run that is broken off is not lost. */
  private static void report(List<String> counts, Fuzzer fuzzer) throws IOException {
    List<String> lines = new ArrayList<>(counts);
    write(lines, "not documented", fuzzer.found());
    write(lines, "over 100 ms twice", fuzzer.slow());
    Files.createDirectories(Path.of("target"));
    Files.write(Path.of("target", "fuzz.txt"), lines);
  }

  private static void write(List<String> lines, String title, Map<String, String> found) {
    lines.add(title + ": " + found.size());
    found.forEach((key, value) -> lines.add("  " + key + "\n      " + value));
  }

  /** A call that never ends cannot be stopped: the machine is, with the call's name. */
  private static void watch(Fuzzer fuzzer, AtomicBoolean done) {
    while (!done.get()) {
      try {
        Thread.sleep(1000L);
      } catch (InterruptedException e) {
        return;
      }
      if (fuzzer.runningSeconds() > HANG) {
        System.err.println("hangs: " + fuzzer.running());
        Thread.getAllStackTraces().forEach((thread, frames) -> {
          if (thread.getName().equals("main")) {
            List.of(frames).stream().limit(25).forEach(frame -> System.err.println("  " + frame));
          }
        });
        Runtime.getRuntime().halt(3);
      }
    }
  }
}
