package railglow.journal;

import com.fasterxml.jackson.annotation.JsonAutoDetect;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Collection;
import java.util.Set;

/**
 * The one way values become JSON and back.
 *
 * <p>Numbers are written with as many digits as bring back the same bits. JSON has no word for
 * numbers that are none, so these are the strings {@code "NaN"}, {@code "Infinity"} and {@code
 * "-Infinity"}. A field that is missing is an error, never a zero; a field that is not known is
 * left aside. Maps and sets are written in order, so that the same value gives the same bytes.
 * Thread-safe.
 */
final class JournalJson {
  static final JsonMapper MAPPER =
      JsonMapper.builder()
          .visibility(PropertyAccessor.GETTER, JsonAutoDetect.Visibility.NONE)
          .visibility(PropertyAccessor.IS_GETTER, JsonAutoDetect.Visibility.NONE)
          .visibility(PropertyAccessor.FIELD, JsonAutoDetect.Visibility.ANY)
          .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
          .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
          .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
          .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
          .enable(DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
          .addMixIn(Entry.class, Kinds.class)
          .addModule(
              new SimpleModule()
                  .addSerializer(Instant.class, new InstantOut())
                  .addDeserializer(Instant.class, new InstantIn())
                  .addSerializer(new SortedSetOut()))
          .build();

  private JournalJson() {}

  /** Names the kinds of entries in the file, apart from their names in the program. */
  @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
  @JsonSubTypes({
    @JsonSubTypes.Type(value = Entry.Reading.class, name = "reading"),
    @JsonSubTypes.Type(value = Entry.EdgeMade.class, name = "edge"),
    @JsonSubTypes.Type(value = Entry.Output.class, name = "output"),
    @JsonSubTypes.Type(value = Entry.Cycle.class, name = "cycle"),
    @JsonSubTypes.Type(value = Entry.Looked.class, name = "look"),
    @JsonSubTypes.Type(value = Entry.Hottest.class, name = "hottest"),
    @JsonSubTypes.Type(value = Entry.PlaceNamed.class, name = "place"),
    @JsonSubTypes.Type(value = Entry.Followed.class, name = "followed"),
    @JsonSubTypes.Type(value = Entry.Marker.class, name = "marker"),
    @JsonSubTypes.Type(value = Entry.Aligned.class, name = "aligned"),
    @JsonSubTypes.Type(value = Entry.ContactSwung.class, name = "contact-swung"),
    @JsonSubTypes.Type(value = Entry.Stopped.class, name = "stopped"),
    @JsonSubTypes.Type(value = Entry.Note.class, name = "note"),
    @JsonSubTypes.Type(value = Entry.Closed.class, name = "closed"),
  })
  private interface Kinds {}

  private static final class InstantOut extends StdSerializer<Instant> {
    InstantOut() {
      super(Instant.class);
    }

    @Override
    public void serialize(Instant value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      out.writeString(value.toString());
    }
  }

  private static final class InstantIn extends StdDeserializer<Instant> {
    InstantIn() {
      super(Instant.class);
    }

    @Override
    public Instant deserialize(JsonParser in, DeserializationContext context) throws IOException {
      String text = in.getValueAsString();
      try {
        return Instant.parse(text == null ? "" : text);
      } catch (DateTimeException e) {
        return (Instant)
            context.handleWeirdStringValue(
                Instant.class, text, "not a time like 2026-01-31T12:00:00Z");
      }
    }
  }

  private static final class SortedSetOut extends StdSerializer<Set<?>> {
    SortedSetOut() {
      super(Set.class, false);
    }

    @Override
    public void serialize(Set<?> value, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      out.writeStartArray();
      for (Object element : sorted(value)) {
        provider.defaultSerializeValue(element, out);
      }
      out.writeEndArray();
    }

    private static Collection<?> sorted(Set<?> value) {
      return value.stream().sorted().toList();
    }
  }
}
