package org.airfit.files.json;

import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.type.TypeFactory;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.flow.FlowElement;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.safety.SafetyRules;
import org.airfit.select.Accessory;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;
import org.airfit.working.Working;

/**
 * Which fields an object of a type has: for what can be handed in, what it is made of; for an answer, whatever its
 * methods without parameters tell.
 *
 * <p>Not written are: a method that answers another value of its own type, which is a change of it and no fact about
 * it; a builder; a function of flow; the working, unless it is asked for; what {@link LeftOut} names with a reason.
 */
final class Fields {

  private static final TypeFactory TYPES = TypeFactory.defaultInstance();

  /** No facts about a value, but ways to print, compare or change it. */
  private static final Set<String> NO_FACTS =
      Set.of("hashCode", "toString", "toText", "toMarkdown", "toLatex", "toBuilder", "getClass");

  /** Fields whose name is not that of the method, as job files, catalogues and set files have them. */
  private static final Map<String, String> NAMES = Map.ofEntries(
      Map.entry("verdict", "kind"),
      Map.entry("inWords", "sentence"),
      Map.entry("PartFacts.rating", "rated"),
      Map.entry("Part.Socket.profiles", "takes"),
      Map.entry("Accessory.ThreadSealant.largest", "upTo"),
      Map.entry("Part.Device.capacityRange", "capacity"),
      Map.entry("Part.Regulator.capacityRange", "capacity"),
      Map.entry("Part.Regulator.droopRange", "droop"),
      Map.entry("Part.Socket.capacityRange", "capacity"),
      Map.entry("Part.Splitter.capacityRange", "capacity"),
      Map.entry("Part.Hose.conduitRange", "conduit"),
      Map.entry("Part.Pipe.conduitRange", "conduit"),
      Map.entry("Slot.Hose.reachRange", "reach"),
      Map.entry("Slot.Regulated.setRange", "set"),
      Map.entry("PlugProfile.displayName", "name"),
      Map.entry("PlugProfile.aliases", "letters"),
      Map.entry("Identification.referenceSet", "set"),
      Map.entry("ToolLine.demandRange", "air"),
      Map.entry("ToolLine.leastRange", "pressure"),
      Map.entry("toEachTool", "ways"));

  /** What is told of a large value where it is only referred to. */
  private static final Map<Class<?>, List<String>> SHORT = Map.of(
      PlugProfile.class, List.of("id", "displayName"),
      ReferenceSet.class, List.of("name", "weakestProvenance"),
      SafetyRules.class, List.of("places"));

  /** Where such a value is not only referred to, but told. */
  private static final Set<String> TELLING =
      Set.of("ReferenceSet.profiles", "ShopCatalogue.profiles", "MeasuredSet.set");

  private static final ClassValue<List<Field>> OF = new ClassValue<>() {
    @Override
    protected List<Field> computeValue(Class<?> type) {
      return Inputs.of(type)
          .map(
              input -> input.accessors().stream().map(name -> field(type, name)).toList())
          .orElseGet(() -> told(type));
    }
  };

  private Fields() {}

  /**
   * A field of an object.
   *
   * @param name its name in JSON
   * @param method what tells it
   * @param type what the method answers
   * @param isInline whether the fields of its value stand in the object itself, as the facts of a part do
   * @param isShort whether its value is only referred to
   */
  record Field(String name, Method method, JavaType type, boolean isInline, boolean isShort) {

    /** What the value tells; empty where the value cannot tell it. */
    Optional<Object> of(Object value) {
      try {
        return Optional.ofNullable(method.invoke(value));
      } catch (InvocationTargetException e) {
        boolean isRefused = e.getCause() instanceof IllegalStateException
            || e.getCause() instanceof IllegalArgumentException;
        if (isRefused && LeftOut.mayRefuse(method)) {
          return Optional.empty();
        }
        throw new IllegalStateException(method + " failed", e.getCause());
      } catch (IllegalAccessException e) {
        throw new IllegalStateException(method + " must be public", e);
      }
    }
  }

  /** The fields of a type that is public, in the order in which they are written. */
  static List<Field> of(Class<?> type) {
    return OF.get(type);
  }

  /** The fields of a type where it is only referred to. */
  static List<Field> ofShort(Class<?> type) {
    return SHORT.getOrDefault(type, List.of()).stream()
        .map(name -> field(type, name))
        .toList();
  }

  /** Whether a value of this type can be only referred to. */
  static boolean hasShort(Class<?> type) {
    return SHORT.containsKey(type);
  }

  /** Whether it is public, so that its methods may be asked. */
  static boolean isPublic(Class<?> type) {
    for (Class<?> at = type; at != null; at = at.getEnclosingClass()) {
      if (!Modifier.isPublic(at.getModifiers())) {
        return false;
      }
    }
    return true;
  }

  /** The fields of a value: those of its class, or of what that is to the public. */
  static List<Field> ofValue(Class<?> type) {
    if (isPublic(type)) {
      return of(type);
    }
    Map<String, Field> fields = new LinkedHashMap<>();
    Stream.concat(Stream.ofNullable(type.getSuperclass()), Stream.of(type.getInterfaces()))
        .filter(above -> above.getName().startsWith("org.airfit."))
        .flatMap(above -> ofValue(above).stream())
        .forEach(field -> fields.putIfAbsent(field.name(), field));
    return List.copyOf(fields.values());
  }

  /** All methods that tell something of a value, the left out ones too. */
  static List<Method> accessors(Class<?> type) {
    Map<String, Method> methods = new LinkedHashMap<>();
    Stream.of(type.getMethods())
        .filter(method -> method.getParameterCount() == 0
            && !Modifier.isStatic(method.getModifiers())
            && !method.isSynthetic()
            && !method.getReturnType().equals(void.class)
            && method.getDeclaringClass().getName().startsWith("org.airfit.")
            && !NO_FACTS.contains(method.getName())
            && !isChange(type, method))
        .sorted(Comparator.comparing(Method::getName))
        .forEach(method -> methods.putIfAbsent(method.getName(), method));
    List<Method> ordered = new ArrayList<>();
    if (type.isRecord()) {
      for (RecordComponent component : type.getRecordComponents()) {
        ordered.add(component.getAccessor());
        methods.remove(component.getName());
      }
    }
    ordered.addAll(methods.values());
    return ordered;
  }

  /** Whether it answers another value of this type or what makes one, or a function. */
  private static boolean isChange(Class<?> type, Method method) {
    Class<?> answered = method.getReturnType();
    return answered.equals(type)
        || answered.getSimpleName().equals("Builder")
        || FlowElement.class.isAssignableFrom(answered);
  }

  private static List<Field> told(Class<?> type) {
    return accessors(type).stream()
        .filter(method -> LeftOut.reason(type, method.getName()).isEmpty())
        .map(method -> field(type, method.getName()))
        .toList();
  }

  private static Field field(Class<?> type, String accessor) {
    try {
      Method method = type.getMethod(accessor);
      JavaType answered = TYPES.constructType(method.getGenericReturnType());
      Class<?> item = item(answered).getRawClass();
      boolean isShort = SHORT.containsKey(item) && !TELLING.contains(simple(type) + "." + accessor);
      boolean isInline = item.equals(PartFacts.class)
          && (Part.class.isAssignableFrom(type) || Accessory.class.isAssignableFrom(type));
      return new Field(name(type, accessor), method, answered, isInline, isShort);
    } catch (NoSuchMethodException e) {
      throw new IllegalStateException(type + " must have a method " + accessor, e);
    }
  }

  /** What stands inside of an Optional or a list. */
  static JavaType item(JavaType type) {
    Class<?> raw = type.getRawClass();
    if (raw.equals(Optional.class)) {
      return item(type.containedTypeOrUnknown(0));
    }
    return type.isContainerType() && type.getContentType() != null
        ? item(type.getContentType())
        : type;
  }

  /** The name of a class with that of the one around it, such as "Part.Socket". */
  static String simple(Class<?> type) {
    Class<?> outer = type.getEnclosingClass();
    return outer == null ? type.getSimpleName() : simple(outer) + "." + type.getSimpleName();
  }

  /** The name of a field. */
  static String name(Class<?> type, String accessor) {
    String own = NAMES.get(simple(type) + "." + accessor);
    if (own != null) {
      return own;
    }
    String known = NAMES.get(accessor);
    if (known != null) {
      return known;
    }
    boolean isFlag = accessor.startsWith("is")
        && accessor.length() > 2
        && Character.isUpperCase(accessor.charAt(2));
    return isFlag
        ? accessor.substring(2, 3).toLowerCase(Locale.ROOT) + accessor.substring(3)
        : accessor;
  }

  /** Whether it is a working, which is written only where it is asked for. */
  static boolean isWorking(Field field) {
    return item(field.type()).getRawClass().equals(Working.class);
  }

  /** Whether the kind of a value stands in a field of its own. */
  static boolean tellsKind(Class<?> type) {
    return of(type).stream().anyMatch(field -> field.name().equals("kind"));
  }
}
