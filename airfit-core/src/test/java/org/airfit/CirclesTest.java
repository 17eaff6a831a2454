package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Inside a package no two types use each other, directly or through others: each can be read without the ones above it.
 *
 * <p>A nested type counts as the type it is in. A sealed type must name the types it permits, so that arrow is not
 * counted.
 */
class CirclesTest {

  private static final JavaClasses CLASSES = LibraryClasses.ALL;

  @Test
  void no_types_of_a_package_use_each_other_in_a_circle() {
    assertThat(circles(arrows(CLASSES))).isEmpty();
  }

  @Test
  void a_circle_is_found_and_an_arrow_to_a_permitted_type_is_none() {
    JavaClasses samples = new ClassFileImporter()
        .importClasses(
            One.class,
            Two.class,
            Three.class,
            Whole.class,
            Whole.Part.class,
            Root.class,
            Leaf.class);
    Map<String, Set<String>> arrows = new TreeMap<>();
    addArrows(samples, arrows, JavaClass::getSimpleName);
    assertThat(circles(arrows)).containsExactly(new TreeSet<>(Set.of("One", "Three", "Two")));
  }

  private static Map<String, Set<String>> arrows(JavaClasses classes) {
    Map<String, Set<String>> arrows = new TreeMap<>();
    addArrows(classes, arrows, type -> outermost(type).getFullName());
    return arrows;
  }

  private static void addArrows(
      JavaClasses classes,
      Map<String, Set<String>> arrows,
      java.util.function.Function<JavaClass, String> node) {
    for (JavaClass from : classes) {
      Set<String> permitted = permitted(from);
      from.getDirectDependenciesFromSelf().forEach(dependency -> {
        JavaClass to = dependency.getTargetClass().getBaseComponentType();
        boolean counts = classes.contain(to.getFullName())
            && to.getPackageName().equals(from.getPackageName())
            && !permitted.contains(to.getFullName())
            && !node.apply(from).equals(node.apply(to));
        if (counts) {
          arrows.computeIfAbsent(node.apply(from), any -> new TreeSet<>()).add(node.apply(to));
        }
      });
    }
  }

  private static JavaClass outermost(JavaClass type) {
    return type.getEnclosingClass().map(CirclesTest::outermost).orElse(type);
  }

  /** The types that this one permits: where it is sealed. */
  private static Set<String> permitted(JavaClass type) {
    Class<?>[] permitted = type.reflect().getPermittedSubclasses();
    Set<String> names = new HashSet<>();
    if (permitted != null) {
      for (Class<?> one : permitted) {
        names.add(one.getName());
      }
    }
    return names;
  }

  /** Every set of nodes of which each reaches each other. */
  private static List<Set<String>> circles(Map<String, Set<String>> arrows) {
    Map<String, Set<String>> reached = new TreeMap<>();
    arrows.keySet().forEach(node -> reached.put(node, reachedFrom(node, arrows)));
    List<Set<String>> circles = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    reached.forEach((node, ahead) -> {
      if (ahead.contains(node) && seen.add(node)) {
        Set<String> circle = new TreeSet<>(Set.of(node));
        ahead.stream()
            .filter(other -> reached.getOrDefault(other, Set.of()).contains(node))
            .forEach(circle::add);
        seen.addAll(circle);
        circles.add(circle);
      }
    });
    return circles;
  }

  private static Set<String> reachedFrom(String node, Map<String, Set<String>> arrows) {
    Set<String> reached = new TreeSet<>();
    Deque<String> ahead = new ArrayDeque<>(arrows.getOrDefault(node, Set.of()));
    while (!ahead.isEmpty()) {
      String next = ahead.pop();
      if (reached.add(next)) {
        ahead.addAll(arrows.getOrDefault(next, Set.of()));
      }
    }
    return reached;
  }

  // three that use each other in a circle
  interface One {
    Two two();
  }

  interface Two {
    Three three();
  }

  interface Three {
    One one();
  }

  // a type and one it does not need to know
  interface Whole {
    Part part();

    interface Part {}
  }

  // a sealed type and the type it permits, which knows it
  sealed interface Root permits Leaf {}

  record Leaf() implements Root {}
}
