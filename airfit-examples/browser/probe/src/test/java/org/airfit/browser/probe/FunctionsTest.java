package org.airfit.browser.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every function of {@link Math} that airfit calls is compared. */
class FunctionsTest {

  private static final Pattern CALL = Pattern.compile("\\bMath\\.([a-zA-Z0-9]+)\\(");

  private static Set<String> called(Path folder) throws IOException {
    Set<String> called = new TreeSet<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
        Matcher call = CALL.matcher(Files.readString(file));
        while (call.find()) {
          called.add(call.group(1));
        }
      }
    }
    return called;
  }

  @Test
  void every_function_that_is_called_is_compared() throws IOException {
    Set<String> called = new TreeSet<>();
    for (String module : new String[] {
      "airfit-core", "airfit-examples/files", "airfit-examples/jobsheet", "airfit-examples/calls"
    }) {
      called.addAll(called(Path.of("..", "..", "..", module, "src", "main", "java")));
    }
    assertThat(called).hasSizeGreaterThan(20);
    assertThat(called(Path.of("src", "main", "java"))).containsAll(called);
  }
}
