package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The project has one version, wherever it stands. */
class VersionTest {

  private static final Path ROOT = Path.of("..");

  private static String read(String file) throws IOException {
    return Files.readString(ROOT.resolve(file));
  }

  private static String version() throws IOException {
    Matcher first = Pattern.compile("<version>([^<]+)</version>").matcher(read("pom.xml"));
    assertThat(first.find()).isTrue();
    return first.group(1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "docs/embedding.md | <artifactId>airfit-files</artifactId>\\s*<version>([^<]+)</version>",
        "docs/embedding.md | npm install airfit-(\\d[^ ]*)\\.tgz",
        "docs/counter-service.md | airfit-counter-(\\d[^ ]*)\\.jar",
        "airfit-examples/counter/src/main/resources/org/airfit/counter/openapi.json"
            + " | \"title\": \"[^\"]*\",\\s*\"version\": \"([^\"]+)\"",
      })
  void documents_tell_it(String file, String pattern) throws IOException {
    Matcher found = Pattern.compile(pattern).matcher(read(file));
    List<String> told = new ArrayList<>();
    while (found.find()) {
      told.add(found.group(1));
    }
    assertThat(told).isNotEmpty().allSatisfy(each -> assertThat(version()).startsWith(each));
  }

  @Test
  void every_module_has_it() throws IOException {
    Matcher module = Pattern.compile("<module>([^<]+)</module>").matcher(read("pom.xml"));
    List<String> modules = new ArrayList<>();
    while (module.find()) {
      modules.add(module.group(1));
    }
    assertThat(modules).contains("airfit-core", "airfit-examples", "release");
    for (String each :
        List.of("files", "jobsheet", "calls", "browser", "counter", "kotlin", "fleet")) {
      modules.add("airfit-examples/" + each);
    }
    for (String each : List.of("compiler", "runtime", "page", "lessons", "probe")) {
      modules.add("airfit-examples/browser/" + each);
    }
    for (String each : modules) {
      assertThat(read(each + "/pom.xml"))
          .as(each)
          .containsPattern("<parent>[^/]*</groupId>[^/]*</artifactId>\\s*<version>"
              + Pattern.quote(version()) + "</version>");
    }
  }

  @Test
  void its_release_is_told_of() throws IOException {
    String released = version().replace("-SNAPSHOT", "");
    assertThat(ROOT.resolve("docs/releases/" + released + ".md")).exists();
  }
}
