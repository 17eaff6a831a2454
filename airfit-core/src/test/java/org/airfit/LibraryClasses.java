package org.airfit;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;

/** The classes of the library, imported once for all tests that go through them: it takes seconds. */
final class LibraryClasses {

  static final JavaClasses ALL = new ClassFileImporter()
      .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
      .importPackages("org.airfit");

  private LibraryClasses() {}
}
