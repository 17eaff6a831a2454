package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * No test fails because a machine is slow. How fast the library is, commands measure: {@code benchmarks/run measure},
 * {@code .ci/load}, {@code .ci/browser/run measured}. A limit in a test ends what would hang for ever; it is told in
 * minutes.
 */
class NoTimeTest {

  private static final Path ROOT = Path.of("..");

  private static final Set<String> OTHERS = Set.of("target", "node_modules");
  private static final String OWN = "NoTimeTest.java";

  /** Limits of a test in seconds or less, and clocks whose difference is asserted. */
  private static final List<Pattern> BARS = List.of(
      Pattern.compile("assertTimeout\\w*\\("),
      Pattern.compile("@Timeout\\((?!value = \\d+, unit = TimeUnit\\.MINUTES)"),
      Pattern.compile("setSoTimeout\\(\\d"),
      Pattern.compile("\\.(?:await|get|join|waitFor)\\(\\d+, TimeUnit\\.(?!MINUTES)"),
      Pattern.compile(
          "(?:nanoTime|currentTimeMillis)\\(\\)[^;]*\\)\\s*\\.is(?:Less|Greater|Between|Close)"));

  @Test
  void no_test_of_any_module_fails_on_a_time() throws IOException {
    List<Path> tests = new ArrayList<>();
    Files.walkFileTree(ROOT, new SimpleFileVisitor<>() {
      @Override
      public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
        String name = folder.getFileName().toString();
        boolean isOurs = folder.equals(ROOT) || !(name.startsWith(".") || OTHERS.contains(name));
        return isOurs ? FileVisitResult.CONTINUE : FileVisitResult.SKIP_SUBTREE;
      }

      @Override
      public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
        String path = file.toString().replace('\\', '/');
        if (path.contains("/src/test/") && path.endsWith(".java") && !file.endsWith(OWN)) {
          tests.add(file);
        }
        return FileVisitResult.CONTINUE;
      }
    });
    assertThat(tests).hasSizeGreaterThan(300);
    List<String> found = tests.stream().flatMap(file -> bars(file).stream()).toList();
    assertThat(found).isEmpty();
  }

  @Test
  void each_kind_of_bar_is_found() {
    for (String bar : List.of(
        "assertTimeoutPreemptively(Duration.ofSeconds(2), () -> 1);",
        "@Timeout(30)",
        "socket.setSoTimeout(10_000);",
        "assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();",
        "assertThat(System.nanoTime() - began).isLessThan(2_900);")) {
      assertThat(in(bar)).as(bar).isNotEmpty();
    }
    assertThat(in("@Timeout(value = 10, unit = TimeUnit.MINUTES)")).isEmpty();
  }

  private static List<String> bars(Path file) {
    try {
      return in(Files.readString(file)).stream().map(bar -> file + ": " + bar).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> in(String text) {
    List<String> found = new ArrayList<>();
    for (Pattern bar : BARS) {
      Matcher matcher = bar.matcher(text);
      while (matcher.find()) {
        found.add(matcher.group());
      }
    }
    return found;
  }
}
