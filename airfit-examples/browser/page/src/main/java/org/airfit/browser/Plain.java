package org.airfit.browser;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.calls.RefusedException;
import org.jspecify.annotations.Nullable;
import org.teavm.jso.JSBody;
import org.teavm.jso.JSObject;
import org.teavm.jso.core.JSArray;
import org.teavm.jso.core.JSBoolean;
import org.teavm.jso.core.JSNumber;
import org.teavm.jso.core.JSString;

/** JSON as the browser parsed it, as the plain values that airfit's files are read from. */
final class Plain {

  private Plain() {}

  /** A value of JavaScript as maps, lists, texts, numbers and truth values. */
  static @Nullable Object of(@Nullable JSObject value) {
    if (value == null) {
      return null;
    }
    return switch (kind(value)) {
      case "string" -> ((JSString) value).stringValue();
      case "number" -> number(((JSNumber) value).doubleValue());
      case "true" -> true;
      case "false" -> false;
      case "array" -> list((JSArray<?>) value);
      case "object" -> map(value);
      default -> null;
    };
  }

  /** Maps, lists, texts, numbers and truth values as those of JavaScript. */
  static JSObject toScript(Object value) {
    if (value instanceof Map<?, ?> map) {
      JSObject object = object();
      map.forEach((name, field) -> put(object, String.valueOf(name), toScript(field)));
      return object;
    }
    if (value instanceof List<?> list) {
      JSArray<JSObject> array = new JSArray<>();
      list.forEach(each -> array.push(toScript(each)));
      return array;
    }
    if (value instanceof Number number) {
      return JSNumber.valueOf(number.doubleValue());
    }
    if (value instanceof Boolean truth) {
      return JSBoolean.valueOf(truth);
    }
    return JSString.valueOf(String.valueOf(value));
  }

  /** Refuses in JavaScript's way: an error with a name, a message, and what a form needs to point at the field. */
  static RuntimeException refusal(RefusedException refused) {
    String message = String.valueOf(refused.getMessage());
    refuse(refused.name(), message, refused.file(), refused.field(), refused.accepted());
    return new IllegalStateException(message);
  }

  /** A whole number is one for a reader of JSON on the JVM too. */
  private static Object number(double value) {
    int whole = (int) value;
    if (whole == value && (whole != 0 || 1.0 / value > 0.0)) {
      return whole;
    }
    return value;
  }

  private static List<@Nullable Object> list(JSArray<?> array) {
    List<@Nullable Object> list = new ArrayList<>();
    for (int i = 0; i < array.getLength(); i++) {
      list.add(of((JSObject) array.get(i)));
    }
    return list;
  }

  private static Map<String, @Nullable Object> map(JSObject object) {
    Map<String, @Nullable Object> map = new LinkedHashMap<>();
    String[] names = names(object);
    for (String name : names) {
      map.put(name, of(field(object, name)));
    }
    return map;
  }

  @JSBody(
      params = "value",
      script = "if (value === null || value === undefined) { return 'null'; }"
          + "if (Array.isArray(value)) { return 'array'; }"
          + "return typeof value === 'boolean' ? String(value) : typeof value;")
  private static native String kind(@Nullable JSObject value);

  @JSBody(params = "object", script = "return Object.keys(object);")
  private static native String[] names(JSObject object);

  @JSBody(
      params = {"object", "name"},
      script = "return object[name];")
  private static native JSObject field(JSObject object, String name);

  @JSBody(script = "return {};")
  private static native JSObject object();

  @JSBody(
      params = {"object", "name", "value"},
      script = "object[name] = value;")
  private static native void put(JSObject object, String name, JSObject value);

  @JSBody(
      params = {"name", "message", "file", "field", "accepted"},
      script = "throw Object.assign(new Error(message),"
          + " { name: name, file: file, field: field, accepted: accepted });")
  private static native void refuse(
      String name, String message, String file, String field, String accepted);
}
