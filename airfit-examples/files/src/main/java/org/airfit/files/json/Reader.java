package org.airfit.files.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.type.TypeFactory;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.airfit.files.Job;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.jspecify.annotations.Nullable;

/** Makes a value of airfit from plain values, and says where they are wrong. */
final class Reader {

  private static final TypeFactory TYPES = TypeFactory.defaultInstance();

  /** A number that a whole number of the library holds. */
  private static final Pattern WHOLE = Pattern.compile("-?[0-9]{1,9}");

  private final JsonParser parser;

  Reader(JsonParser parser) {
    this.parser = parser;
  }

  /** Reads a value of this type. */
  Object read(JavaType type, @Nullable Object plain) throws WrongJsonException {
    return value("", type, plain);
  }

  private WrongJsonException wrong(String place, String complaint) {
    return new WrongJsonException(parser, place, complaint);
  }

  private Object value(String place, JavaType type, @Nullable Object plain)
      throws WrongJsonException {
    Class<?> raw = type.getRawClass();
    if (raw.equals(Optional.class)) {
      return plain == null
          ? Optional.empty()
          : Optional.of(value(place, type.containedTypeOrUnknown(0), plain));
    }
    if (raw.equals(OptionalDouble.class)) {
      return plain == null ? OptionalDouble.empty() : OptionalDouble.of(number(place, plain));
    }
    if (raw.equals(double.class) || raw.equals(Double.class)) {
      return number(place, plain);
    }
    if (raw.equals(int.class) || raw.equals(Integer.class)) {
      return whole(place, plain);
    }
    if (raw.equals(boolean.class) || raw.equals(Boolean.class)) {
      if (plain instanceof Boolean flag) {
        return flag;
      }
      throw wrong(place, "was " + Plain.told(plain) + "; accepted: true, false");
    }
    if (Words.isWord(raw)) {
      return word(place, type, plain);
    }
    if (type.isMapLikeType()) {
      return map(place, type, plain);
    }
    if (type.isCollectionLikeType()) {
      List<Object> items = list(place, type.getContentType(), plain);
      return Set.class.isAssignableFrom(raw)
          ? Collections.unmodifiableSet(set(place, items))
          : List.copyOf(items);
    }
    return object(place, raw, plain);
  }

  private double number(String place, @Nullable Object plain) throws WrongJsonException {
    if (!(plain instanceof Plain.Numeral numeral)) {
      throw wrong(place, "was " + Plain.told(plain) + "; accepted: a number such as 0.25");
    }
    double value = numeral.value();
    if (!Double.isFinite(value)) {
      throw wrong(
          place, "was " + Plain.told(numeral) + ", which is too large; accepted: up to 1.79e308");
    }
    return value;
  }

  private int whole(String place, @Nullable Object plain) throws WrongJsonException {
    if (plain instanceof Plain.Numeral numeral && WHOLE.matcher(numeral.text()).matches()) {
      return Integer.parseInt(numeral.text());
    }
    throw wrong(
        place,
        "was " + Plain.told(plain) + "; accepted: a whole number of up to nine digits such as 3");
  }

  private Object word(String place, JavaType type, @Nullable Object plain)
      throws WrongJsonException {
    if (!(plain instanceof String text)) {
      throw wrong(
          place,
          "was " + Plain.told(plain) + (plain instanceof Plain.Numeral ? ", without a unit" : "")
              + "; accepted: " + accepted(type.getRawClass()));
    }
    try {
      return Words.read(type, text);
    } catch (IllegalArgumentException e) {
      throw wrong(place, Plain.told(text) + ": " + e.getMessage());
    }
  }

  private static String accepted(Class<?> type) {
    return type.isEnum()
        ? "a text, one of " + String.join(", ", Words.ofAll(type))
        : "a text, with its unit where it has one";
  }

  private List<Object> list(String place, JavaType item, @Nullable Object plain)
      throws WrongJsonException {
    if (!(plain instanceof List<?> items)) {
      throw wrong(place, "was " + Plain.told(plain) + "; accepted: a list in brackets");
    }
    List<Object> read = new ArrayList<>(items.size());
    for (Object each : items) {
      read.add(value(place + "[" + (read.size() + 1) + "]", item, each));
    }
    return read;
  }

  private Set<Object> set(String place, List<Object> items) throws WrongJsonException {
    Set<Object> set = new LinkedHashSet<>();
    for (Object item : items) {
      if (!set.add(item)) {
        throw wrong(place, "holds " + Plain.told(Words.of(item)) + " twice; leave one out");
      }
    }
    return set;
  }

  private Map<Object, Object> map(String place, JavaType type, @Nullable Object plain)
      throws WrongJsonException {
    Map<Object, Object> read = new LinkedHashMap<>();
    for (Map.Entry<?, ?> entry : fields(place, plain).entrySet()) {
      String name = String.valueOf(entry.getKey());
      String at = inside(place, name);
      Object key = word(at, type.getKeyType(), name);
      if (read.put(key, value(at, type.getContentType(), entry.getValue())) != null) {
        throw wrong(at, "stands twice; leave one out");
      }
    }
    return Collections.unmodifiableMap(read);
  }

  private Map<?, ?> fields(String place, @Nullable Object plain) throws WrongJsonException {
    if (plain instanceof Map<?, ?> fields) {
      return fields;
    }
    throw wrong(place, "was " + Plain.told(plain) + "; accepted: an object in braces");
  }

  private static String inside(String place, String field) {
    return place.isEmpty() ? Plain.shown(field) : place + "." + Plain.shown(field);
  }

  private Object object(String place, Class<?> declared, @Nullable Object plain)
      throws WrongJsonException {
    Class<?> type = declared;
    if (Filed.isFiled(declared)) {
      return filed(place, declared, fields(place, plain));
    }
    if (Inputs.of(declared).isEmpty() && !Kinds.isOneOfSeveral(declared)) {
      throw wrong(
          place,
          "is a " + Fields.simple(declared)
              + ", an answer of airfit; accepted: nothing, ask airfit for it");
    }
    Map<?, ?> fields = fields(place, plain);
    if (Kinds.isOneOfSeveral(declared)) {
      type = ofKind(place, declared, fields.get("kind"));
    }
    Optional<Inputs.Input> input = Inputs.of(type);
    if (input.isEmpty()) {
      throw wrong(
          place,
          "is a " + Fields.simple(type)
              + ", an answer of airfit; accepted: nothing, ask airfit for it");
    }
    Set<Object> left = new LinkedHashSet<>(fields.keySet());
    Optional<String> word = Kinds.wordOf(type);
    if (word.isPresent() && left.remove("kind") && !word.get().equals(fields.get("kind"))) {
      throw wrong(
          inside(place, "kind"),
          "was " + Plain.told(fields.get("kind")) + "; accepted: " + word.get());
    }
    Object made = make(place, type, input.get(), fields, left);
    if (!left.isEmpty()) {
      throw wrong(
          inside(place, String.valueOf(left.iterator().next())),
          "is no field here; accepted: " + String.join(", ", names(type)));
    }
    return made;
  }

  /** A job or a network, as its file says it. */
  private Object filed(String place, Class<?> type, Map<?, ?> fields) throws WrongJsonException {
    for (Object name : fields.keySet()) {
      if (!Filed.fields(type).contains(name)) {
        throw wrong(
            inside(place, String.valueOf(name)),
            "is no field here; accepted: "
                + Filed.fields(type).stream().sorted().collect(Collectors.joining(", ")));
      }
    }
    Map<String, Object> files = new LinkedHashMap<>();
    Object named = fields.get(Filed.FILES);
    if (named != null) {
      String at = inside(place, Filed.FILES);
      for (Map.Entry<?, ?> file : fields(at, named).entrySet()) {
        String name = String.valueOf(file.getKey());
        files.put(name, said(inside(at, name), file.getValue(), "the rows of a table"));
      }
    }
    boolean isJob = type.equals(Job.class);
    String said = inside(place, isJob ? Filed.JOB : Filed.ROWS);
    Object content = said(
        said,
        fields.get(isJob ? Filed.JOB : Filed.ROWS),
        isJob ? "the fields of a job file" : "the rows of a network file");
    try {
      if (!isJob) {
        return Filed.network(content, files);
      }
      String at = inside(place, Filed.CATALOGUE);
      Object catalogue = value(at, type(ShopCatalogue.class), fields.get(Filed.CATALOGUE));
      return Filed.job(content, (ShopCatalogue) catalogue, files);
    } catch (WrongFileException e) {
      throw wrong(e.place().isEmpty() ? said : said + "." + e.place(), e.complaint());
    }
  }

  private Object said(String place, @Nullable Object plain, String wanted)
      throws WrongJsonException {
    Object counted = Filed.counted(plain);
    if (counted == null) {
      throw wrong(place, "is missing; accepted: " + wanted);
    }
    return counted;
  }

  /** The names of all fields of an object, those of inline ones among them. */
  static List<String> names(Class<?> type) {
    List<String> names = new ArrayList<>();
    if (Kinds.wordOf(type).isPresent()) {
      names.add("kind");
    }
    for (Fields.Field field : Fields.of(type)) {
      if (field.isInline()) {
        names.addAll(names(field.type().getRawClass()));
      } else {
        names.add(field.name());
      }
    }
    return names;
  }

  private Class<?> ofKind(String place, Class<?> declared, @Nullable Object kind)
      throws WrongJsonException {
    Map<String, Class<?>> kinds = Kinds.of(declared);
    Class<?> type = kind instanceof String word ? kinds.get(word) : null;
    if (type == null) {
      throw wrong(
          inside(place, "kind"),
          (kind == null ? "is missing" : "was " + Plain.told(kind)) + "; accepted: "
              + String.join(", ", kinds.keySet()));
    }
    return type;
  }

  private Object make(
      String place, Class<?> type, Inputs.Input input, Map<?, ?> fields, Set<Object> left)
      throws WrongJsonException {
    Map<String, Object> told = new LinkedHashMap<>();
    for (Fields.Field field : Fields.of(type)) {
      Class<?> raw = field.type().getRawClass();
      if (field.isInline()) {
        told.put(
            field.method().getName(), make(place, raw, Inputs.of(raw).orElseThrow(), fields, left));
        continue;
      }
      boolean isThere = left.remove(field.name()) && fields.get(field.name()) != null;
      boolean isOptional = raw.equals(Optional.class) || raw.equals(OptionalDouble.class);
      if (!isThere && raw.equals(boolean.class)) {
        told.put(field.method().getName(), false);
        continue;
      }
      if (!isThere && LeftOut.mayRefuse(field.method())) {
        continue; // its maker says whether it can do without
      }
      String at = inside(place, field.name());
      if (!isThere && !isOptional) {
        throw wrong(at, "is missing" + "; accepted: " + wanted(field.type()));
      }
      told.put(field.method().getName(), value(at, field.type(), fields.get(field.name())));
    }
    try {
      return input.maker().apply(told);
    } catch (IllegalArgumentException e) {
      String complaint = String.valueOf(e.getMessage());
      throw wrong(
          blamed(type, complaint).map(name -> inside(place, name)).orElse(place), complaint);
    }
  }

  /** The field that a complaint of the library is about: its first words are the name of it. */
  private static Optional<String> blamed(Class<?> type, String complaint) {
    return Fields.of(type).stream()
        .map(Fields.Field::name)
        .filter(name -> complaint.startsWith(inWords(name) + " "))
        .max(Comparator.comparingInt(String::length));
  }

  /** A name of several words, such as outsideDiameter, as words. */
  private static String inWords(String name) {
    StringBuilder words = new StringBuilder();
    for (int i = 0; i < name.length(); i++) {
      char letter = name.charAt(i);
      if (letter >= 'A' && letter <= 'Z') {
        words.append(' ').append((char) (letter - 'A' + 'a'));
      } else {
        words.append(letter);
      }
    }
    return words.toString();
  }

  private static String wanted(JavaType type) {
    Class<?> raw = type.getRawClass();
    if (type.isContainerType()) {
      return type.isMapLikeType() ? "an object in braces" : "a list in brackets";
    }
    if (raw.isPrimitive()) {
      return "a number";
    }
    return Words.isWord(raw) ? accepted(raw) : "an object in braces, a " + Fields.simple(raw);
  }

  /** The type of a class without parameters. */
  static JavaType type(Class<?> type) {
    return TYPES.constructType(type);
  }
}
