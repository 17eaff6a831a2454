package org.airfit.calls;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** The calls know neither who asks nor where the files lie. */
class CallsRulesTest {

  @Test
  void they_use_the_library_the_files_and_the_sheets_alone() {
    classes()
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(
            "org.airfit..",
            "java.lang..",
            "java.math..",
            "java.time..",
            "java.util..",
            "org.jspecify..")
        .check(new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.airfit.calls"));
  }
}
