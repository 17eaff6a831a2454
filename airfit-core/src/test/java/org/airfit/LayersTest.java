package org.airfit;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The packages are layers: each uses only those below it. */
class LayersTest {

  /** Lowest first. */
  private static final List<String> LAYERS = List.of(
      "internal",
      "source",
      "quantity",
      "working",
      "safety",
      "air",
      "measure",
      "thread",
      "joint",
      "plug",
      "drawing",
      "flow",
      "line",
      "plant",
      "run",
      "network",
      "select");

  private static final Path SOURCES = Path.of("src/main/java/org/airfit");

  private static final JavaClasses CLASSES = LibraryClasses.ALL;

  @Test
  void a_layer_uses_only_what_lies_below_it() {
    for (int i = 0; i < LAYERS.size(); i++) {
      List<String> allowed = new ArrayList<>(List.of("java..", "org.jspecify.."));
      LAYERS.subList(0, i + 1).forEach(layer -> allowed.add("org.airfit." + layer));
      classes()
          .that()
          .resideInAPackage("org.airfit." + LAYERS.get(i))
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(allowed.toArray(String[]::new))
          .allowEmptyShould(true)
          .check(CLASSES);
    }
  }

  @Test
  void no_packages_form_a_cycle() {
    slices().matching("org.airfit.(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void every_class_is_in_a_layer() {
    String[] packages = LAYERS.stream().map(layer -> "org.airfit." + layer).toArray(String[]::new);
    classes().should().resideInAnyPackage(packages).check(CLASSES);
  }

  @Test
  void every_package_tells_what_it_is_for() {
    for (Path folder : packageFolders()) {
      Path info = folder.resolve("package-info.java");
      assertThat(info).exists();
      assertThat(text(info)).as(info.toString()).contains("@NullMarked");
    }
  }

  @Test
  void nothing_prints() {
    noClasses().should().accessField(System.class, "out").check(CLASSES);
    noClasses().should().accessField(System.class, "err").check(CLASSES);
  }

  private static List<Path> packageFolders() {
    try (Stream<Path> paths = Files.walk(SOURCES)) {
      return paths
          .filter(Files::isDirectory)
          .filter(path -> !path.equals(SOURCES))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
