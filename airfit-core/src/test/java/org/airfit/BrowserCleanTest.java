package org.airfit;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The core keeps to what a compiler from Java to JavaScript has, so that a web page runs the same code.
 *
 * <p>What stands here was found missing or wrong in TeaVM 0.16.0.
 */
class BrowserCleanTest {

  private static final JavaClasses CLASSES = LibraryClasses.ALL;

  /**
   * Classes of blanks and line ends that its regular expressions do not know, and a conversion that its formatter
   * lacks.
   */
  private static final Pattern UNKNOWN =
      Pattern.compile("\"[^\"\n]*(\\\\\\\\[hHR](?![a-z])|%[-#+ 0-9.]*[eE])");

  @Test
  void calls_what_is_there() {
    noClasses()
        .should()
        .callMethod(Math.class, "fma", double.class, double.class, double.class)
        .check(CLASSES);
    noClasses().should().callMethod(String.class, "lines").check(CLASSES);
    noClasses()
        .should()
        .callMethod(Arrays.class, "compare", int[].class, int[].class)
        .check(CLASSES);
    noClasses().should().callMethod(Matcher.class, "replaceAll", Function.class).check(CLASSES);
    noClasses()
        .should()
        .dependOnClassesThat()
        .belongToAnyOf(SplittableRandom.class)
        .check(CLASSES);
  }

  /** There distinct() removes nothing behind flatMap or concat. */
  @Test
  void asks_for_distinct_elements_of_plain_streams_only() {
    List<String> found = CLASSES.stream()
        .flatMap(type -> type.getCodeUnits().stream())
        .filter(method -> calls(method).contains("distinct"))
        .filter(method -> calls(method).contains("flatMap") || calls(method).contains("concat"))
        .map(JavaCodeUnit::getFullName)
        .toList();
    assertThat(found).isEmpty();
  }

  private static Set<String> calls(JavaCodeUnit method) {
    return method.getMethodCallsFromSelf().stream()
        .filter(call -> call.getTargetOwner().isEquivalentTo(Stream.class))
        .map(call -> call.getTarget().getName())
        .collect(Collectors.toSet());
  }

  @Test
  void writes_no_pattern_and_no_format_that_is_unknown_there() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
        assertThat(Files.readString(file)).as("%s", file).doesNotContainPattern(UNKNOWN);
      }
    }
  }

  @Test
  void the_patterns_of_this_test_find_what_they_are_for() {
    assertThat("Pattern.compile(\"[\\\\s\\\\h]+\")").containsPattern(UNKNOWN);
    assertThat("String.format(\"%.3e\", x)").containsPattern(UNKNOWN);
    assertThat("String.format(\"%d ends\", x)").doesNotContainPattern(UNKNOWN);
  }

  /** A page brings its tables along: one class asks for them. */
  @Test
  void resources_come_through_one_door() {
    Set<String> askers = CLASSES.stream()
        .filter(type -> type.getMethodCallsFromSelf().stream()
            .anyMatch(call -> call.getTarget().getName().startsWith("getResource")
                && call.getTargetOwner().getPackageName().startsWith("java.lang")))
        .map(type -> type.getFullName())
        .collect(Collectors.toSet());
    assertThat(askers).containsExactly("org.airfit.internal.Table");
  }
}
