package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * What DEVELOPERS.md says of the recipes and of the dependencies is so: files and tests are there, versions are those
 * of the build.
 */
class UpkeepTest {

  private static final Path ROOT = Path.of("..");

  /** Folders in which nothing is written by hand. */
  private static final Set<String> MADE = Set.of("target", "node_modules", ".fast", ".git");

  private static String section(String heading) throws IOException {
    String developers = Files.readString(ROOT.resolve("DEVELOPERS.md"));
    int begin = developers.indexOf("\n## " + heading + "\n");
    assertThat(begin).as(heading).isPositive();
    return developers.substring(begin, developers.indexOf("\n## ", begin + 4));
  }

  private static List<Path> files(String ending) throws IOException {
    List<Path> files = new ArrayList<>();
    Files.walkFileTree(ROOT, new SimpleFileVisitor<>() {
      @Override
      public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
        return MADE.contains(String.valueOf(folder.getFileName()))
            ? FileVisitResult.SKIP_SUBTREE
            : FileVisitResult.CONTINUE;
      }

      @Override
      public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
        if (file.toString().endsWith(ending)) {
          files.add(file);
        }
        return FileVisitResult.CONTINUE;
      }
    });
    return files;
  }

  @Test
  void every_file_and_test_that_a_recipe_names_is_there() throws IOException {
    String recipes = section("Recipes");
    assertThat(recipes)
        .contains(
            "### Add a fitting loss",
            "### Add a unit",
            "### Add a safety rule",
            "### Add a lesson");
    List<String> paths = Pattern.compile("`([A-Za-z0-9._-]+(?:/[A-Za-z0-9._-]+)+)`")
        .matcher(recipes)
        .results()
        .map(found -> found.group(1))
        .filter(path -> !path.contains("NN"))
        .toList();
    assertThat(paths)
        .hasSizeGreaterThan(12)
        .allSatisfy(path -> assertThat(ROOT.resolve(path)).exists());
    Set<String> tests = files(".java").stream()
        .map(file -> file.getFileName().toString().replace(".java", ""))
        .collect(Collectors.toSet());
    assertThat(Pattern.compile("\\b[A-Z][A-Za-z]+(?:Test|Properties)\\b")
            .matcher(recipes)
            .results())
        .extracting(MatchResult::group)
        .hasSizeGreaterThan(20)
        .isSubsetOf(tests);
    for (MatchResult method : Pattern.compile("([A-Z][A-Za-z]+Test)[.]([a-z]+_[a-z_]+)`")
        .matcher(recipes)
        .results()
        .toList()) {
      Path test = files(method.group(1) + ".java").get(0);
      assertThat(test).content().contains(" " + method.group(2) + "(");
    }
  }

  /** Versions with a number of their own, by artifact, in all POMs; of a property, what it says. */
  private static List<String> versionsOfTheBuild() throws IOException {
    List<String> versions = new ArrayList<>();
    for (Path pom : files("pom.xml")) {
      String text = Files.readString(pom);
      Pattern.compile("<([a-z]+)[.]version>([^<$]+)</")
          .matcher(text)
          .results()
          .forEach(found -> versions.add(found.group(1) + " " + found.group(2)));
      Pattern.compile("<artifactId>([^<]+)</artifactId>\\s*<version>([0-9v][^<]*)</version>")
          .matcher(text)
          .results()
          .filter(found -> !found.group(1).matches("airfit-.*|benchmarks|maven-.*"))
          .forEach(found -> versions.add(found.group(1) + " " + found.group(2)));
    }
    assertThat(versions).hasSizeGreaterThan(20);
    return versions;
  }

  @Test
  void the_table_of_dependencies_has_every_version_of_the_build() throws IOException {
    Set<String> told = Pattern.compile("v?[0-9]+(?:[.][0-9a-z-]+)*")
        .matcher(rows())
        .results()
        .map(MatchResult::group)
        .collect(Collectors.toSet());
    assertThat(versionsOfTheBuild())
        .allSatisfy(version -> assertThat(told)
            .as("DEVELOPERS.md, Dependencies: %s", version)
            .contains(version.split(" ", -1)[1]));
  }

  @Test
  void the_table_has_the_packages_of_the_pages_and_no_version_that_the_build_has_not()
      throws IOException {
    StringBuilder build = new StringBuilder(packages().toString());
    for (Path pom : files("pom.xml")) {
      build.append(Files.readString(pom));
    }
    packages().forEach((name, version) -> assertThat(rows()).contains(name).contains(version));
    for (String row : rows().lines().toList()) {
      String versions = row.split(" \\| ", -1)[1];
      Pattern.compile("v?[0-9]+(?:[.][0-9a-z-]+)+|v[0-9]+")
          .matcher(versions)
          .results()
          .map(MatchResult::group)
          .forEach(version -> assertThat(build.toString()).as(row).contains(version));
    }
  }

  private static String rows() {
    try {
      return section("Dependencies")
          .lines()
          .filter(line -> line.startsWith("| ") && !line.startsWith("| what "))
          .collect(Collectors.joining("\n"));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Map<String, String> packages() throws IOException {
    String all = "";
    for (String folder : List.of("notebooks/book", ".ci/browser", ".ci/browser/firefox")) {
      String text = Files.readString(ROOT.resolve(folder).resolve("package.json"));
      all += text.substring(text.indexOf("\"dependencies\""));
    }
    return Pattern.compile("\"([a-z.-]+)\": \"([0-9.]+)\"")
        .matcher(all)
        .results()
        .collect(Collectors.toMap(
            found -> found.group(1).replace("typescript", "TypeScript"), found -> found.group(2)));
  }

  @Test
  void the_page_on_security_names_tests_that_are_there() throws IOException {
    String page = Files.readString(ROOT.resolve("docs/security.md"));
    Set<String> tests = files("Test.java").stream()
        .map(file -> file.getFileName().toString().replace(".java", ""))
        .collect(Collectors.toSet());
    assertThat(Pattern.compile("`([A-Z][A-Za-z]+Test)`").matcher(page).results())
        .extracting(found -> found.group(1))
        .hasSizeGreaterThan(5)
        .isSubsetOf(tests);
    assertThat(page)
        .contains("## What is trusted", "## What is read from outside", "## To report a weakness");
  }
}
