package tautlog.desk.use;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.TypeAdapter;
import com.google.gson.TypeAdapterFactory;
import com.google.gson.reflect.TypeToken;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.lang.reflect.ParameterizedType;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tautlog.usage.TimeSum;

/**
 * Our records as JSON: one key for each component; an instant is microseconds since 1970, what is not known is null. What there is most
 * of is shorter: an event is a list of its components, a sum of times its units by rate.
 */
final class UseJson {
    static final Gson GSON = new GsonBuilder()
            .serializeNulls()
            .serializeSpecialFloatingPointValues()
            .registerTypeAdapter(Instant.class, new Instants())
            .registerTypeAdapter(OptionalLong.class, new OptionalLongs())
            .registerTypeAdapter(TimeSum.class, new TimeSums())
            .registerTypeAdapter(UseEvent.class, new UseEvents())
            .registerTypeAdapterFactory(new Optionals())
            .create();

    private UseJson() {}

    private static final class Instants extends TypeAdapter<Instant> {
        @Override
        public void write(JsonWriter out, Instant value) throws IOException {
            out.value(ChronoUnit.MICROS.between(Instant.EPOCH, value));
        }

        @Override
        public Instant read(JsonReader in) throws IOException {
            return Instant.EPOCH.plus(in.nextLong(), ChronoUnit.MICROS);
        }
    }

    private static final class TimeSums extends TypeAdapter<TimeSum> {
        @Override
        public void write(JsonWriter out, TimeSum value) throws IOException {
            out.beginObject();
            for (Map.Entry<Long, Long> part : value.unitsByMillihertz().entrySet()) {
                out.name(String.valueOf(part.getKey())).value(part.getValue());
            }
            out.endObject();
        }

        @Override
        public TimeSum read(JsonReader in) throws IOException {
            TreeMap<Long, Long> unitsByMillihertz = new TreeMap<>();
            in.beginObject();
            while (in.hasNext()) {
                unitsByMillihertz.put(Long.valueOf(in.nextName()), in.nextLong());
            }
            in.endObject();
            return unitsByMillihertz.isEmpty() ? TimeSum.ZERO : new TimeSum(unitsByMillihertz);
        }
    }

    private static final class UseEvents extends TypeAdapter<UseEvent> {
        private final Instants instants = new Instants();

        @Override
        public void write(JsonWriter out, UseEvent value) throws IOException {
            out.beginArray().value(value.kind()).value(value.number());
            if (value.start().isPresent()) {
                instants.write(out, value.start().get());
            }
            out.endArray();
        }

        @Override
        public UseEvent read(JsonReader in) throws IOException {
            in.beginArray();
            String kind = in.nextString();
            long number = in.nextLong();
            Optional<Instant> start = in.hasNext() ? Optional.of(instants.read(in)) : Optional.empty();
            in.endArray();
            return new UseEvent(kind, number, start);
        }
    }

    private static final class OptionalLongs extends TypeAdapter<OptionalLong> {
        @Override
        public void write(JsonWriter out, OptionalLong value) throws IOException {
            if (value.isPresent()) {
                out.value(value.getAsLong());
            } else {
                out.nullValue();
            }
        }

        @Override
        public OptionalLong read(JsonReader in) throws IOException {
            if (in.peek() == JsonToken.NULL) {
                in.nextNull();
                return OptionalLong.empty();
            }
            return OptionalLong.of(in.nextLong());
        }
    }

    private static final class Optionals implements TypeAdapterFactory {
        @Override
        @SuppressWarnings("unchecked") // T is Optional<E>
        public <T> @Nullable TypeAdapter<T> create(Gson gson, TypeToken<T> type) {
            if (type.getRawType() != Optional.class || !(type.getType() instanceof ParameterizedType of)) {
                return null;
            }
            TypeAdapter<?> element = gson.getAdapter(TypeToken.get(of.getActualTypeArguments()[0]));
            return (TypeAdapter<T>) new OptionalOf<>(element);
        }
    }

    private static final class OptionalOf<E> extends TypeAdapter<Optional<E>> {
        private final TypeAdapter<E> element;

        OptionalOf(TypeAdapter<E> element) {
            this.element = element;
        }

        @Override
        public void write(JsonWriter out, Optional<E> value) throws IOException {
            if (value.isPresent()) {
                element.write(out, value.get());
            } else {
                out.nullValue();
            }
        }

        @Override
        public Optional<E> read(JsonReader in) throws IOException {
            if (in.peek() == JsonToken.NULL) {
                in.nextNull();
                return Optional.empty();
            }
            return Optional.of(element.read(in));
        }
    }
}
