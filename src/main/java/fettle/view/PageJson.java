package fettle.view;

import fettle.document.Origin;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;

/**
 * Writes a report page's data: every text harmless and on one line, so that equal ids stay equal wherever they stand.
 *
 * @param files by name, the numbers of the files that were named, in order
 */
record PageJson(JsonGenerator json, Map<String, Integer> files) {

    PageJson(JsonGenerator json) {
        this(json, new LinkedHashMap<>());
    }

    /** A place as three cells: the number of its file among {@link #files()}, line and column. */
    void place(Origin origin) {
        json.writeNumber(files.computeIfAbsent(origin.file().equals("-") ? "standard input" : origin.file(), unused -> files.size()));
        json.writeNumber(origin.line());
        json.writeNumber(origin.column());
    }

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
