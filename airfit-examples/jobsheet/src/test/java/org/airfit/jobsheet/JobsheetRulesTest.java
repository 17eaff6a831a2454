package org.airfit.jobsheet;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.files.Csv;
import org.airfit.files.Disk;
import org.airfit.files.Json;
import org.junit.jupiter.api.Test;

/** The sheets know no folder and no terminal, and keep to what a web page has. */
class JobsheetRulesTest {

  private static final JavaClasses CLASSES = new ClassFileImporter()
      .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
      .importPackages("org.airfit.jobsheet");

  private static final Set<String> PROGRAMS = Set.of(
      "Main",
      "CommandLine",
      "CardProgram",
      "JobProgram",
      "JointProgram",
      "NetworkProgram",
      "DayProgram",
      "DiagnosisProgram",
      "LeakProgram",
      "InventoryProgram",
      "PriceListProgram",
      "WaterProgram",
      "SetProgram",
      "InterviewProgram",
      "InterviewTalk",
      "PlugTalk");

  @Test
  void only_the_programs_know_folders_and_terminals() {
    JavaClasses sheets = CLASSES.that(
        describe("show sheets", type -> !PROGRAMS.contains(outer(type).getSimpleName())));
    assertThat(sheets).hasSizeLessThan(CLASSES.size());
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.io..", "java.nio..", "com.fasterxml..")
        .orShould()
        .dependOnClassesThat()
        .belongToAnyOf(Disk.class, Json.class, Csv.class)
        .check(sheets);
  }

  /** Calls that a browser's class library lacks, or answers otherwise: {@code format} rounds ties in another way. */
  private static final DescribedPredicate<JavaMethodCall> MISSING_IN_A_PAGE = describe(
      "a web page lacks",
      call -> Set.of(
              "java.lang.String.lines",
              "java.lang.String.format",
              "java.lang.String.formatted",
              "java.lang.Math.fma",
              "java.time.Duration.toSeconds")
          .contains(call.getTargetOwner().getName() + "." + call.getName()));

  @Test
  void nothing_is_called_that_a_web_page_lacks() {
    noClasses().should().callMethodWhere(MISSING_IN_A_PAGE).check(CLASSES);
  }

  @Test
  void no_pattern_has_a_class_that_a_web_page_lacks() throws IOException {
    List<Path> sources;
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      sources = files.filter(path -> path.toString().endsWith(".java")).toList();
    }
    assertThat(sources)
        .hasSizeGreaterThan(10)
        .allSatisfy(
            source -> assertThat(source).content().doesNotContain("\\\\h", "\\\\H", "\\\\R"));
  }

  @Test
  void no_classes_form_a_circle() {
    slices().assignedFrom(BY_FILE).should().beFreeOfCycles().check(CLASSES);
  }

  /** A class counts with those inside it. */
  private static JavaClass outer(JavaClass inner) {
    JavaClass outer = inner;
    while (outer.getEnclosingClass().isPresent()) {
      outer = outer.getEnclosingClass().get();
    }
    return outer;
  }

  private static final SliceAssignment BY_FILE = new SliceAssignment() {
    @Override
    public SliceIdentifier getIdentifierOf(JavaClass javaClass) {
      return SliceIdentifier.of(outer(javaClass).getName());
    }

    @Override
    public String getDescription() {
      return "classes with those inside them";
    }
  };
}
