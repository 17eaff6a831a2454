package org.airfit;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import java.util.ArrayList;
import java.util.List;

/** The types that users of the library can name, for tests that go through all of them. */
final class PublicTypes {

  private PublicTypes() {}

  static List<Class<?>> all() {
    List<Class<?>> types = new ArrayList<>();
    for (JavaClass type : LibraryClasses.ALL) {
      boolean exported = !type.getPackageName().equals("org.airfit.internal");
      if (exported && isPublic(type)) {
        types.add(type.reflect());
      }
    }
    return types;
  }

  private static boolean isPublic(JavaClass type) {
    return type.getModifiers().contains(JavaModifier.PUBLIC)
        && type.getEnclosingClass().map(PublicTypes::isPublic).orElse(true);
  }
}
