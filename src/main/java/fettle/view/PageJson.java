package fettle.view;

import java.util.Collection;
import java.util.Optional;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;

/** Writes a report page's data: every text harmless and on one line, so that equal ids stay equal wherever they stand. */
record PageJson(JsonGenerator json) {

    void text(String name, String value) {
        json.writeStringProperty(name, SafeText.of(value));
    }

    void text(String name, Optional<String> value) {
        if (value.isPresent()) {
            text(name, value.get());
        } else {
            json.writeNullProperty(name);
        }
    }

    void texts(String name, Collection<String> values) {
        list(name, values, this::text);
    }

    void text(String value) {
        json.writeString(SafeText.of(value));
    }

    <T> void list(String name, Collection<T> items, Consumer<T> item) {
        json.writeArrayPropertyStart(name);
        items.forEach(item);
        json.writeEndArray();
    }

    void object(Runnable members) {
        json.writeStartObject();
        members.run();
        json.writeEndObject();
    }

    void row(Runnable cells) {
        json.writeStartArray();
        cells.run();
        json.writeEndArray();
    }
}
