package org.airfit.files.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.Version;
import com.fasterxml.jackson.databind.BeanDescription;
import com.fasterxml.jackson.databind.DeserializationConfig;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.KeyDeserializer;
import com.fasterxml.jackson.databind.Module;
import com.fasterxml.jackson.databind.SerializationConfig;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.Deserializers;
import com.fasterxml.jackson.databind.deser.KeyDeserializers;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.jsontype.TypeDeserializer;
import com.fasterxml.jackson.databind.jsontype.TypeSerializer;
import com.fasterxml.jackson.databind.ser.Serializers;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Teaches a mapper of Jackson 2 the values and answers of airfit.
 *
 * <p>It may be registered with a mapper of your own, {@code mapper.registerModule(new AirfitModule())}, and is found by
 * {@code findAndRegisterModules()}. For what comes from outside use {@link #strictMapper()}: the module refuses what is
 * wrong inside of a value of airfit, and only the mapper can refuse what is wrong around it.
 */
public final class AirfitModule extends Module {

  private static final int LONGEST_TEXT = 1 << 20;
  private static final int LONGEST_NUMBER = 400;
  private static final int LONGEST_NAME = 1000;

  /** Those of the core, the inner ones too, as an answer may be of a class that is not public, and of the files. */
  private static final Set<String> PACKAGES = Set.of(
      "org.airfit.air",
      "org.airfit.drawing",
      "org.airfit.flow",
      "org.airfit.internal",
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
      "org.airfit.working",
      "org.airfit.files");

  private final boolean isWithWorkings;

  /** Obtains the module; workings are left out of what it writes. */
  public AirfitModule() {
    this(false);
  }

  private AirfitModule(boolean isWithWorkings) {
    this.isWithWorkings = isWithWorkings;
  }

  /**
   * Obtains the module that writes the working of every answer too, which makes an answer many times as long.
   *
   * @return the module
   */
  public AirfitModule withWorkings() {
    return new AirfitModule(true);
  }

  /**
   * Obtains a mapper with this module for texts from outside: it refuses fields that are not known, are missing or
   * stand twice, anything behind the value, objects and lists more than 32 deep and documents of more than 10 MB.
   *
   * @return a mapper
   */
  public static JsonMapper strictMapper() {
    StreamReadConstraints limits = StreamReadConstraints.builder()
        .maxNestingDepth(Plain.MOST_DEPTH)
        .maxDocumentLength(Plain.MOST_LENGTH)
        .maxStringLength(LONGEST_TEXT)
        .maxNumberLength(LONGEST_NUMBER)
        .maxNameLength(LONGEST_NAME)
        .build();
    return JsonMapper.builder(
            JsonFactory.builder().streamReadConstraints(limits).build())
        .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
        .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
        .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
        .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
        .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
        .addModule(new AirfitModule())
        .build();
  }

  @Override
  public String getModuleName() {
    return "airfit";
  }

  @Override
  public Version version() {
    return new Version(1, 0, 0, null, "org.airfit", "airfit-files");
  }

  @Override
  public Object getTypeId() {
    return getModuleName();
  }

  @Override
  public void setupModule(SetupContext context) {
    Objects.requireNonNull(context, "context");
    context.addSerializers(new Writers(isWithWorkings));
    context.addKeySerializers(new KeyWriters());
    context.addDeserializers(new Readers());
    context.addKeyDeserializers(new KeyReaders());
  }

  private static boolean isOurs(Class<?> type) {
    return PACKAGES.contains(type.getPackageName()) && !Throwable.class.isAssignableFrom(type);
  }

  private static final class Writers extends Serializers.Base {

    private final boolean isWithWorkings;

    Writers(boolean isWithWorkings) {
      this.isWithWorkings = isWithWorkings;
    }

    @Override
    public @Nullable JsonSerializer<?> findSerializer(
        SerializationConfig config, JavaType type, BeanDescription description) {
      return isOurs(type.getRawClass()) ? new ToJson(type, isWithWorkings) : null;
    }
  }

  private static final class KeyWriters extends Serializers.Base {

    @Override
    public @Nullable JsonSerializer<?> findSerializer(
        SerializationConfig config, JavaType type, BeanDescription description) {
      return isKey(type) ? new ToName() : null;
    }
  }

  private static boolean isKey(JavaType type) {
    return isOurs(type.getRawClass()) && Words.isWord(type.getRawClass());
  }

  private static final class Readers extends Deserializers.Base {

    @Override
    public @Nullable JsonDeserializer<?> findBeanDeserializer(
        JavaType type, DeserializationConfig config, BeanDescription description) {
      return isOurs(type.getRawClass()) ? new FromJson(type) : null;
    }

    @Override
    public @Nullable JsonDeserializer<?> findEnumDeserializer(
        Class<?> type, DeserializationConfig config, BeanDescription description) {
      return isOurs(type) ? new FromJson(Reader.type(type)) : null;
    }
  }

  private static final class KeyReaders implements KeyDeserializers {

    @Override
    public @Nullable KeyDeserializer findKeyDeserializer(
        JavaType type, DeserializationConfig config, BeanDescription description) {
      return isKey(type) ? new FromName(type) : null;
    }
  }

  private static final class ToJson extends StdSerializer<Object> {

    private static final long serialVersionUID = 1L;

    private final boolean isWithWorkings;

    ToJson(JavaType type, boolean isWithWorkings) {
      super(type.getRawClass(), false);
      this.isWithWorkings = isWithWorkings;
    }

    @Override
    public void serialize(Object value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      new Writer(out, isWithWorkings).write(value);
    }

    /** The kind stands in the value; nothing that a mapper adds is wanted. */
    @Override
    public void serializeWithType(
        Object value, JsonGenerator out, SerializerProvider provider, TypeSerializer types)
        throws IOException {
      serialize(value, out, provider);
    }
  }

  private static final class ToName extends JsonSerializer<Object> {

    @Override
    public void serialize(Object value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      out.writeFieldName(Words.of(value));
    }
  }

  private static final class FromJson extends StdDeserializer<Object> {

    private static final long serialVersionUID = 1L;

    private final JavaType type;

    FromJson(JavaType type) {
      super(type);
      this.type = type;
    }

    @Override
    public Object deserialize(JsonParser parser, DeserializationContext context)
        throws IOException {
      return new Reader(parser).read(type, Plain.read(parser));
    }

    @Override
    public Object deserializeWithType(
        JsonParser parser, DeserializationContext context, TypeDeserializer types)
        throws IOException {
      return deserialize(parser, context);
    }
  }

  private static final class FromName extends KeyDeserializer {

    private final JavaType type;

    FromName(JavaType type) {
      this.type = type;
    }

    @Override
    public Object deserializeKey(String name, DeserializationContext context) throws IOException {
      return new Reader(context.getParser()).read(type, name);
    }
  }
}
