package org.airfit.files.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JavaType;
import java.io.IOException;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.airfit.files.Job;
import org.airfit.files.NetworkJob;
import org.airfit.plug.PlugProfile;

/** Writes a value of airfit, and what stands in it. */
final class Writer {

  private final JsonGenerator out;
  private final boolean isWithWorkings;

  Writer(JsonGenerator out, boolean isWithWorkings) {
    this.out = out;
    this.isWithWorkings = isWithWorkings;
  }

  /** Writes a value as such, not as what another one refers to. */
  void write(Object value) throws IOException {
    if (Words.isWord(value.getClass())) {
      out.writeString(Words.of(value));
    } else if (value instanceof Job job) {
      Filed.write(job, this::write, out);
    } else if (value instanceof NetworkJob network) {
      Filed.write(network, out);
    } else {
      object(value, Fields.ofValue(value.getClass()), true);
    }
  }

  private void object(Object value, List<Fields.Field> fields, boolean isWhole) throws IOException {
    out.writeStartObject();
    Optional<String> kind = Kinds.wordOf(value.getClass());
    if (isWhole && kind.isPresent()) {
      out.writeStringField("kind", kind.get());
    }
    fields(value, fields);
    out.writeEndObject();
  }

  private void fields(Object value, List<Fields.Field> fields) throws IOException {
    for (Fields.Field field : fields) {
      if (!isWithWorkings && Fields.isWorking(field)) {
        continue;
      }
      Optional<Object> told = field.of(value).flatMap(Writer::content);
      if (told.isEmpty() || isItself(told.get(), value)) {
        continue;
      }
      if (field.isInline()) {
        fields(told.get(), Fields.of(told.get().getClass()));
      } else {
        out.writeFieldName(field.name());
        content(told.get(), field);
      }
    }
  }

  /** A list of the value alone, such as that of the ways to a single tool. */
  private static boolean isItself(Object told, Object value) {
    return told instanceof List<?> list && list.size() == 1 && list.get(0) == value;
  }

  /** What an Optional holds, and any other value itself. */
  private static Optional<Object> content(Object value) {
    if (value instanceof Optional<?> maybe) {
      return maybe.map(held -> held);
    }
    if (value instanceof OptionalDouble maybe) {
      return maybe.isPresent() ? Optional.of(maybe.getAsDouble()) : Optional.empty();
    }
    return Optional.of(value);
  }

  private void content(Object value, Fields.Field field) throws IOException {
    if (value instanceof Collection<?> items) {
      out.writeStartArray();
      for (Object item : items) {
        content(item, field);
      }
      out.writeEndArray();
    } else if (value instanceof Map<?, ?> map) {
      out.writeStartObject();
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        out.writeFieldName(key(entry.getKey()));
        content(entry.getValue(), field);
      }
      out.writeEndObject();
    } else if (value instanceof Double number) {
      number(number);
    } else if (value instanceof Integer number) {
      out.writeNumber(number);
    } else if (value instanceof Long number) {
      out.writeNumber(number);
    } else if (value instanceof Boolean flag) {
      out.writeBoolean(flag);
    } else if (field.isShort() && Fields.hasShort(value.getClass())) {
      object(value, Fields.ofShort(value.getClass()), false);
    } else {
      declared(value, Fields.item(field.type()));
    }
  }

  /** What is declared as an interface of several kinds of classes tells what that interface tells. */
  private void declared(Object value, JavaType type) throws IOException {
    Class<?> raw = type.getRawClass();
    if (raw.isInterface()
        && !raw.isSealed()
        && Fields.isPublic(raw)
        && raw.getName().startsWith("org.airfit.")) {
      object(value, Fields.of(raw), false);
    } else {
      write(value);
    }
  }

  private static String key(Object key) {
    if (key instanceof PlugProfile profile) {
      return profile.id();
    }
    return Words.of(key);
  }

  /** JSON has no word for what is no number; it is a text then. */
  private void number(double number) throws IOException {
    if (Double.isFinite(number)) {
      out.writeNumber(number);
    } else {
      out.writeString(Double.toString(number));
    }
  }
}
