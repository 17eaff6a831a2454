package org.airfit.counter;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * The first hour of a developer who embeds the library: five minutes of reading lead from the top of the README to the
 * first answer. {@code .ci/first-hours} runs its commands in a project of its own.
 */
class EmbedderFirstHourTest {

  private static final Path ROOT = Path.of("..", "..");

  /** A usual speed of reading for texts that are not fiction is 200 to 250 words a minute: common practice, no source. */
  private static final int WORDS_A_MINUTE = 200;

  private static final int MOST_MINUTES = 5;

  private static String readme() throws IOException {
    return Files.readString(ROOT.resolve("README.md"));
  }

  private static EmbeddingDocumentTest.Program program() throws IOException {
    return EmbeddingDocumentTest.programs().findFirst().orElseThrow();
  }

  @Test
  void the_first_answer_is_at_most_five_minutes_of_reading_away() throws IOException {
    String printed = program().printed();
    assertThat(readme()).containsOnlyOnce(printed);
    String read = readme().substring(0, readme().indexOf(printed) + printed.length());
    assertThat(read.strip().split("\\s+").length).isBetween(300, MOST_MINUTES * WORDS_A_MINUTE);
  }

  /** There it is compiled and run, and what it prints is compared. */
  @Test
  void the_program_is_the_first_of_the_document_for_embedders() throws IOException {
    Matcher code = Pattern.compile("(?ms)^```java\n(.*?)^```$").matcher(readme());
    assertThat(code.find()).isTrue();
    assertThat(code.group(1)).isEqualTo(program().source());
    assertThat(code.find()).as("another program in the README").isFalse();
  }

  @Test
  void the_project_needs_the_core_in_this_version_and_nothing_else() throws IOException {
    Matcher version = Pattern.compile("(?m)^  <version>(.*)</version>$")
        .matcher(Files.readString(ROOT.resolve("pom.xml")));
    assertThat(version.find()).isTrue();
    Matcher pom = Pattern.compile("(?ms)^```xml\n(.*?)^```$").matcher(readme());
    assertThat(pom.find()).isTrue();
    assertThat(pom.group(1))
        .containsOnlyOnce("<dependency>")
        .contains("<artifactId>airfit-core</artifactId>\n      <version>" + version.group(1) + "<");
  }
}
