package org.airfit.files.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JavaType;
import java.io.IOException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.joint.End;
import org.airfit.working.Working;
import org.junit.jupiter.api.Test;

/** Nothing that a public type of the core tells is lost without a reason that is written down. */
class EveryTypeTest {

  /** Types with nothing to write, and why. */
  private static final Map<String, String> NOTHING = Map.ofEntries(
      Map.entry("flow.FlowElement", "a function"),
      Map.entry("flow.FlowElements", "factories only"),
      Map.entry("joint.HoseRules", "functions only"),
      Map.entry("line.BoreStep", "factories only"),
      Map.entry("line.LossModels", "factories only"),
      Map.entry("network.Network$Builder", "a builder"),
      Map.entry("plug.DemoProfiles", "factories only"),
      Map.entry("plug.PlugProfile$Builder", "a builder; its findings are told by the exception"),
      Map.entry("quantity.NearWord", "functions only"),
      Map.entry("quantity.QuantityFormatException", "an exception"),
      Map.entry("safety.Situation", "tells nothing; it is only asked by rules"),
      Map.entry("safety.Situation$Builder", "a builder"),
      Map.entry("select.Requirement$Builder", "a builder"),
      Map.entry("thread.PipeThreads", "factories only"),
      Map.entry(
          "working.Worked", "whatever has a working; the working is written where it is asked for"),
      Map.entry("working.Working$Builder", "a builder"));

  private static final List<? extends Class<?>> TYPES = CoreTypes.all();

  private static String name(Class<?> type) {
    return type.getName().replace("org.airfit.", "");
  }

  @Test
  void all_exported_packages_are_looked_at() throws IOException {
    Set<String> exported = new TreeSet<>();
    Matcher named = Pattern.compile("exports (org\\.airfit\\.\\w+);")
        .matcher(Files.readString(
            Path.of("..", "..", "airfit-core", "src", "main", "java", "module-info.java")));
    while (named.find()) {
      exported.add(named.group(1));
    }
    assertThat(TYPES.stream().map(Class::getPackageName).collect(Collectors.toSet()))
        .containsExactlyInAnyOrderElementsOf(exported);
    assertThat(TYPES).hasSizeGreaterThan(300);
  }

  @Test
  void every_type_is_a_text_or_an_object_with_fields_or_has_nothing_to_tell() {
    Set<String> empty = new TreeSet<>();
    for (Class<?> type : TYPES) {
      boolean isOfKinds = Kinds.isOneOfSeveral(type) || type.equals(End.class);
      if (!Words.isWord(type)
          && !isOfKinds
          && Fields.of(type).stream().allMatch(Fields::isWorking)
          && !type.equals(Working.class)) {
        empty.add(name(type));
      }
    }
    Set<String> named = new TreeSet<>(NOTHING.keySet());
    named.removeIf(each -> each.endsWith("Builder") || each.endsWith("Exception"));
    empty.removeIf(each -> each.endsWith("Builder"));
    assertThat(empty).isEqualTo(named);
  }

  /** The methods that are asked here are found in another way than by the rule itself: all without parameters. */
  @Test
  void every_method_that_tells_something_is_written_or_left_out_with_a_reason() {
    List<String> lost = new ArrayList<>();
    for (Class<?> type : TYPES) {
      if (NOTHING.containsKey(name(type)) || Words.isWord(type)) {
        continue;
      }
      Set<String> written =
          Fields.of(type).stream().map(each -> each.method().getName()).collect(Collectors.toSet());
      for (Method method : type.getMethods()) {
        boolean tells = method.getParameterCount() == 0
            && !Modifier.isStatic(method.getModifiers())
            && !method.getReturnType().equals(void.class)
            && !Set.of("hashCode", "toString", "getClass", "toText", "toMarkdown", "toLatex")
                .contains(method.getName());
        if (!tells
            || written.contains(method.getName())
            || method.getReturnType().equals(type) // a change of it
            || method.getReturnType().getSimpleName().equals("Builder")
            || method.getReturnType().getSimpleName().equals("FlowElement")
            || LeftOut.reason(type, method.getName()).isPresent()
            || Inputs.of(type).isPresent()) { // told by what it is made of: RoundTripTest
          continue;
        }
        lost.add(name(type) + "." + method.getName());
      }
    }
    assertThat(lost).isEmpty();
  }

  @Test
  void no_two_fields_of_a_type_have_one_name() {
    for (Class<?> type : TYPES) {
      if (!Words.isWord(type) && !Kinds.isOneOfSeveral(type)) {
        List<String> names = Reader.names(type);
        assertThat(new HashSet<>(names)).as(name(type) + " " + names).hasSameSizeAs(names);
      }
    }
  }

  /** Whatever a field holds is a text, a number, a truth value, or again a type of airfit. */
  @Test
  void every_field_holds_something_that_is_written() {
    for (Class<?> type : TYPES) {
      if (Words.isWord(type) || NOTHING.containsKey(name(type))) {
        continue;
      }
      for (Fields.Field field : Fields.of(type)) {
        JavaType item = Fields.item(field.type());
        Class<?> raw = item.getRawClass();
        assertThat(Words.isWord(raw)
                || raw.isPrimitive()
                || Set.of(OptionalDouble.class, Boolean.class, Double.class, Integer.class)
                    .contains(raw)
                || (TYPES.contains(raw) && !NOTHING.containsKey(name(raw))))
            .as(name(type) + "." + field.name() + " of " + item)
            .isTrue();
      }
    }
  }

  @Test
  void every_kind_of_a_sealed_type_has_its_word() {
    for (Class<?> type : TYPES) {
      if (!type.isSealed()
          || !type.isInterface()
          || Words.isWord(type)
          || type.equals(End.class)
          || name(type).equals("quantity.Unit")) {
        continue;
      }
      assertThat(Kinds.of(type).values())
          .as(name(type))
          .containsAll(List.of(type.getPermittedSubclasses()));
    }
    assertThat(Kinds.sealedTypes())
        .allSatisfy(type -> assertThat(type.isSealed()).isTrue());
  }

  /** The words stand in files and programs of users; a test knows them, so that they do not change by themselves. */
  @Test
  void the_words_are_these() {
    assertThat(Kinds.sealedTypes().stream().flatMap(type -> Kinds.of(type).keySet().stream()))
        .containsExactly(
            "passes",
            "chokes",
            "flowing",
            "choked",
            "delivered",
            "starved",
            "solved",
            "noSolution",
            "fits",
            "nothingFits",
            "limits",
            "normal",
            "sample",
            "fixed",
            "regulator",
            "compressor",
            "thread sealant",
            "whip restraint",
            "hose clamp",
            "sealing washer",
            "drain",
            "end cap",
            "hose hook",
            "socket",
            "plug",
            "hose",
            "splitter",
            "pipe",
            "adapter",
            "regulator",
            "filter regulator",
            "filter regulator lubricator",
            "filter",
            "lubricator",
            "shut off valve",
            "non return valve",
            "hose fuse",
            "reel",
            "swivel",
            "other",
            "coupling",
            "hose",
            "splitter",
            "pipe",
            "regulator",
            "filter regulator",
            "filter regulator lubricator",
            "filter",
            "lubricator",
            "shut off valve",
            "non return valve",
            "hose fuse",
            "reel",
            "swivel",
            "other",
            "pipeThread",
            "foreignThread",
            "npt",
            "npsc",
            "npsm",
            "bspt",
            "rp",
            "bspp");
  }

  @Test
  void what_is_left_out_is_there_to_be_left_out() {
    LeftOut.all()
        .forEach((type, methods) -> methods.forEach((method, reason) -> {
          assertThat(Stream.of(type.getMethods()).map(Method::getName))
              .as(type.getName())
              .contains(method);
          assertThat(reason).isNotBlank();
        }));
  }
}
