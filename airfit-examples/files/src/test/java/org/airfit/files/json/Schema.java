package org.airfit.files.json;

import com.fasterxml.jackson.databind.JavaType;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.airfit.files.ShopCatalogue;
import org.airfit.joint.End;
import org.airfit.quantity.Range;

/** The schema of what the module writes, made of the types; {@code SchemaTest} holds the shipped one to it. */
final class Schema {

  private static final String NAME_ALONE = "Named";

  private final Map<String, Object> defs = new TreeMap<>();
  private final Map<String, Class<?>> types = new LinkedHashMap<>();

  private Schema() {}

  static Map<String, Object> of(List<? extends Class<?>> roots) {
    Schema schema = new Schema();
    roots.forEach(schema::ref);
    schema.filed();
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    root.put("title", "Values and answers of airfit, form 1");
    root.put(
        "description",
        "Each type of the library by its name; refer to one, such as #/$defs/Identification. docs/embedding.md tells"
            + " the rules.");
    root.put("$defs", schema.defs);
    return root;
  }

  /** Jobs and networks, as their files say them. */
  private void filed() {
    Map<String, Object> rows = Map.of(
        "type", "array", "items", Map.of("type", "array", "items", Map.of("type", "string")));
    Map<String, Object> files = Map.of("type", "object", "additionalProperties", rows);
    Map<String, Object> job = new LinkedHashMap<>();
    job.put("job", Map.of("type", "object", "description", "see job-file-2.schema.json"));
    job.put("catalogue", ref(ShopCatalogue.class));
    job.put("files", files);
    defs.put("Job", object(job, List.of("job", "catalogue")));
    Map<String, Object> network = new LinkedHashMap<>();
    network.put("rows", rows);
    network.put("files", files);
    defs.put("NetworkJob", object(network, List.of("rows")));
  }

  private Map<String, Object> ref(Class<?> type) {
    String name = Fields.simple(type);
    Class<?> before = types.putIfAbsent(name, type);
    if (before == null) {
      Map<String, Object> def = new LinkedHashMap<>();
      defs.put(name, def);
      def.putAll(def(type));
    } else if (!before.equals(type)) {
      throw new IllegalStateException(before + " and " + type + " have one name");
    }
    return Map.of("$ref", "#/$defs/" + name);
  }

  private Map<String, Object> named(Class<?> type) {
    String name = Fields.simple(type) + NAME_ALONE;
    if (!defs.containsKey(name)) {
      Map<String, Object> properties = new LinkedHashMap<>();
      Fields.ofShort(type)
          .forEach(field -> properties.put(field.name(), value(field.type(), field, false)));
      defs.put(name, object(properties, List.copyOf(properties.keySet())));
    }
    return Map.of("$ref", "#/$defs/" + name);
  }

  private static Map<String, Object> object(Map<String, Object> properties, List<String> required) {
    Map<String, Object> object = new LinkedHashMap<>();
    object.put("type", "object");
    object.put("properties", properties);
    if (!required.isEmpty()) {
      object.put("required", required);
    }
    object.put("additionalProperties", false);
    return object;
  }

  private Map<String, Object> def(Class<?> type) {
    if (type.isEnum()) {
      return Map.of("enum", Words.ofAll(type));
    }
    if (type.equals(End.class) || Words.isWord(type)) {
      return Map.of("type", "string", "minLength", 1);
    }
    if (Kinds.isOneOfSeveral(type)) {
      Set<Object> kinds = new LinkedHashSet<>();
      Kinds.of(type).values().forEach(each -> kinds.add(ref(each)));
      return Map.of("oneOf", List.copyOf(kinds));
    }
    Map<String, Object> properties = new LinkedHashMap<>();
    List<String> required = new ArrayList<>();
    List<String> words = Kinds.wordsOf(type);
    if (Kinds.wordOf(type).isPresent()) {
      properties.put("kind", Map.of("const", words.get(0)));
      required.add("kind");
    }
    add(type, properties, required);
    if (Kinds.hasOwn(type)) {
      properties.put("kind", Map.of("enum", words));
    }
    return object(properties, required);
  }

  private void add(Class<?> type, Map<String, Object> properties, List<String> required) {
    boolean isInput = Inputs.of(type).isPresent();
    for (Fields.Field field : Fields.of(type)) {
      Class<?> raw = field.type().getRawClass();
      if (field.isInline()) {
        add(raw, properties, required);
        continue;
      }
      properties.put(field.name(), value(field.type(), field, isInput));
      boolean mayMiss = raw.equals(Optional.class)
          || raw.equals(OptionalDouble.class)
          || LeftOut.mayRefuse(field.method())
          || Fields.isWorking(field)
          || field.name().equals("ways")
          || (isInput && raw.equals(boolean.class));
      if (!mayMiss) {
        required.add(field.name());
      }
    }
  }

  private Map<String, Object> value(JavaType type, Fields.Field field, boolean isInput) {
    Class<?> raw = type.getRawClass();
    if (raw.equals(Optional.class)) {
      return value(type.containedTypeOrUnknown(0), field, isInput);
    }
    if (raw.equals(double.class) || raw.equals(Double.class) || raw.equals(OptionalDouble.class)) {
      return isInput
          ? Map.of("type", "number")
          : Map.of(
              "anyOf",
              List.of(
                  Map.of("type", "number"),
                  Map.of("enum", List.of("NaN", "Infinity", "-Infinity"))));
    }
    if (raw.equals(int.class) || raw.equals(Integer.class) || raw.equals(long.class)) {
      return Map.of("type", "integer");
    }
    if (raw.equals(boolean.class) || raw.equals(Boolean.class)) {
      return Map.of("type", "boolean");
    }
    if (type.isMapLikeType()) {
      return Map.of(
          "type", "object", "additionalProperties", value(type.getContentType(), field, isInput));
    }
    if (type.isCollectionLikeType()) {
      return Map.of("type", "array", "items", value(type.getContentType(), field, isInput));
    }
    if (field.isShort() && Fields.hasShort(raw)) {
      return named(raw);
    }
    if (raw.equals(Range.class)
        || !raw.getName().startsWith("org.airfit.")
        || raw.equals(Object.class)) {
      return Map.of("type", "string");
    }
    return ref(raw);
  }
}
