package org.airfit.quantity;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The package keeps to what runs in a browser too, in time linear in what was typed. */
class ScannedByHandTest {

  private static final JavaClasses CLASSES = new ClassFileImporter()
      .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
      .importPackages("org.airfit.quantity");

  @Test
  void no_regular_expression_reads_a_quantity() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAPackage("java.util.regex..")
        .check(CLASSES);
    for (String method : new String[] {"matches", "replaceFirst", "split"}) {
      Class<?>[] parameters = method.startsWith("replace")
          ? new Class<?>[] {String.class, String.class}
          : new Class<?>[] {String.class};
      noClasses().should().callMethod(String.class, method, parameters).check(CLASSES);
    }
    noClasses()
        .should()
        .callMethod(String.class, "replaceAll", String.class, String.class)
        .check(CLASSES);
    noClasses()
        .should()
        .callMethod(String.class, "split", String.class, int.class)
        .check(CLASSES);
  }

  @Test
  void nothing_is_called_that_a_browser_lacks() {
    noClasses()
        .should()
        .callMethod(Math.class, "fma", double.class, double.class, double.class)
        .check(CLASSES);
    noClasses().should().callMethod(String.class, "lines").check(CLASSES);
    noClasses()
        .should()
        .callMethod(String.class, "format", String.class, Object[].class)
        .check(CLASSES);
    noClasses().should().callMethod(Stream.class, "distinct").check(CLASSES);
  }
}
