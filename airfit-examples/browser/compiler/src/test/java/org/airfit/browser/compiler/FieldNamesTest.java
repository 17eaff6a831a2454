package org.airfit.browser.compiler;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.teavm.backend.javascript.codegen.MinifyingAliasProvider;
import org.teavm.model.ClassHolder;
import org.teavm.model.FieldReference;
import org.teavm.model.MethodDescriptor;

/** Fields share names where no object has both, and only there. */
class FieldNamesTest {

  private final Map<String, ClassHolder> classes = new HashMap<>();
  private final MinifyingAliasProvider names = new MinifyingAliasProvider(10_000);

  private void declare(String name, String parent) {
    ClassHolder declared = new ClassHolder(name);
    declared.setParent(parent);
    classes.put(name, declared);
  }

  private String nameOf(String className, String field) {
    return names.getFieldAlias(new FieldReference(className, field));
  }

  @Test
  void classes_that_do_not_extend_one_another_share_names() {
    declare("A", "Object");
    declare("B", "A");
    declare("C", "Object");
    MinifyingAliasProvider.tell(classes::get);
    assertThat(nameOf("B", "lower")).isEqualTo("_a");
    assertThat(nameOf("A", "upper")).isEqualTo("_b");
    assertThat(nameOf("C", "alone")).isEqualTo("_a");
    assertThat(nameOf("A", "second")).isEqualTo("_c");
    assertThat(nameOf("B", "last")).isEqualTo("_d");
    assertThat(nameOf("not known", "field")).isEqualTo("_a");
  }

  @Test
  void no_method_has_the_name_of_a_field() {
    declare("A", "Object");
    MinifyingAliasProvider.tell(classes::get);
    Set<String> methods = new HashSet<>();
    Set<String> fields = new HashSet<>();
    for (int i = 0; i < 5000; i++) {
      methods.add(names.getMethodAlias(new MethodDescriptor("m" + i, void.class)));
      fields.add(nameOf("A", "f" + i));
    }
    assertThat(methods).hasSize(5000).doesNotContainAnyElementsOf(fields);
    assertThat(fields).hasSize(5000).allMatch(name -> name.startsWith("_"));
  }

  /** Before the classes are told, a name is nobody else's. */
  @Test
  void without_classes_no_name_is_shared() {
    assertThat(nameOf("A", "one")).isNotEqualTo(nameOf("C", "other")).doesNotStartWith("_");
  }

  @Test
  void no_object_has_two_fields_of_one_name_in_whatever_order_they_are_named() {
    Random random = new Random(7);
    for (int round = 0; round < 200; round++) {
      classes.clear();
      MinifyingAliasProvider fresh = new MinifyingAliasProvider(10_000);
      List<String> order = new ArrayList<>();
      for (int i = 0; i < 30; i++) {
        declare("C" + i, i == 0 ? "Object" : "C" + random.nextInt(i));
        int fields = random.nextInt(4);
        for (int f = 0; f < fields; f++) {
          order.add("C" + i + " " + f);
        }
      }
      java.util.Collections.shuffle(order, random);
      MinifyingAliasProvider.tell(classes::get);
      Map<String, List<String>> named = new HashMap<>();
      for (String each : order) {
        String[] words = each.split(" ", -1);
        named
            .computeIfAbsent(words[0], name -> new ArrayList<>())
            .add(fresh.getFieldAlias(new FieldReference(words[0], words[1])));
      }
      for (String each : classes.keySet()) {
        List<String> whole = new ArrayList<>();
        for (ClassHolder at = classes.get(each); at != null; at = classes.get(at.getParent())) {
          whole.addAll(named.getOrDefault(at.getName(), List.of()));
        }
        assertThat(whole).as(each).doesNotHaveDuplicates();
      }
    }
  }
}
