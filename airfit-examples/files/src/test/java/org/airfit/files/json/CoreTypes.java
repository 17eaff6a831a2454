package org.airfit.files.json;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;

/** Every public type of the core that is exported. */
final class CoreTypes {

  private CoreTypes() {}

  static List<? extends Class<?>> all() {
    return new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages(
                "org.airfit.air",
                "org.airfit.drawing",
                "org.airfit.flow",
                "org.airfit.joint",
                "org.airfit.line",
                "org.airfit.measure",
                "org.airfit.network",
                "org.airfit.plant",
                "org.airfit.plug",
                "org.airfit.quantity",
                "org.airfit.run",
                "org.airfit.safety",
                "org.airfit.select",
                "org.airfit.source",
                "org.airfit.thread",
                "org.airfit.working")
            .stream()
            .filter(
                type -> !type.isAnonymousClass() && !type.getSimpleName().equals("package-info"))
            .map(JavaClass::reflect)
            .filter(Fields::isPublic)
            .sorted(java.util.Comparator.comparing(Class::getName))
            .toList();
  }
}
