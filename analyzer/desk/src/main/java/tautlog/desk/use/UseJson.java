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
import java.util.Optional;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/** Our records as JSON: one key for each component; an instant is microseconds since 1970, what is not known is null. */
final class UseJson {
    static final Gson GSON = new GsonBuilder()
            .serializeNulls()
            .serializeSpecialFloatingPointValues()
            .registerTypeAdapter(Instant.class, new Instants())
            .registerTypeAdapter(OptionalLong.class, new OptionalLongs())
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
