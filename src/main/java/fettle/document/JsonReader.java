package fettle.document;

import fettle.document.PlaceFinder.Place;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.UnexpectedEndOfInputException;
import tools.jackson.core.json.JsonFactory;

/** Reads JSON into located nodes, token by token. */
final class JsonReader {
    /** Size and depth are bounded before the parser could mind them, and numbers are kept as text until they are checked. */
    private static final JsonFactory FACTORY = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(TreeBuilder.DEEPEST + 2)
                    .maxNumberLength(Integer.MAX_VALUE)
                    .maxNameLength(Integer.MAX_VALUE)
                    .maxStringLength(Integer.MAX_VALUE)
                    .build())
            .build();

    private final String text;
    private final TreeBuilder tree;
    private final PlaceFinder places;

    private JsonReader(String text, TreeBuilder tree) {
        this.text = text;
        this.tree = tree;
        this.places = new PlaceFinder(text);
    }

    static Document read(String file, String text) {
        TreeBuilder tree = new TreeBuilder(file);
        return new JsonReader(text, tree).read();
    }

    private Document read() {
        try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), text)) {
            JsonToken first = parser.nextToken();
            if (first == null) {
                EmptyText.report(tree);
                return tree.finished();
            }
            readValues(parser, first);
            JsonToken more = parser.nextToken();
            if (more != null) {
                Place place = places.at(offset(parser.currentTokenLocation()));
                tree.report(tree.here(place.line(), place.column()), "the document has ended, but something follows",
                        "delete what follows, or move it to a file of its own");
            }
            return tree.finished();
        } catch (StopReading reported) {
            return tree.cutShort();
        } catch (JacksonException notJson) {
            reportSyntax(notJson);
            return tree.cutShort();
        }
    }

    /** Reads one value, however deep, without recursion. */
    private void readValues(JsonParser parser, JsonToken first) throws StopReading {
        int depth = 0;
        JsonToken token = first;
        while (true) {
            Place place = places.at(offset(parser.currentTokenLocation()));
            switch (token) {
                case START_OBJECT -> {
                    tree.beginObject(place.line(), place.column());
                    depth++;
                }
                case START_ARRAY -> {
                    tree.beginList(place.line(), place.column());
                    depth++;
                }
                case END_OBJECT, END_ARRAY -> {
                    tree.end();
                    depth--;
                }
                case PROPERTY_NAME -> tree.name(parser.currentName(), place.line(), place.column());
                case VALUE_STRING -> tree.text(parser.getString(), place.line(), place.column());
                case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> tree.number(parser.getString(), place.line(), place.column());
                case VALUE_TRUE, VALUE_FALSE -> tree.bool(token == JsonToken.VALUE_TRUE, place.line(), place.column());
                case VALUE_NULL -> tree.nil(place.line(), place.column());
                default -> throw new IllegalStateException("JSON text has no such token: " + token);
            }
            if (depth == 0) {
                return;
            }
            token = parser.nextToken();
        }
    }

    private static int offset(TokenStreamLocation location) {
        return (int) Math.max(0, location.getCharOffset());
    }

    private void reportSyntax(JacksonException notJson) {
        boolean endsEarly = notJson instanceof UnexpectedEndOfInputException;
        int offset = endsEarly ? text.stripTrailing().length() : faultyOffset(notJson);
        Place place = places.at(offset);
        Optional<MergeMarker> merge = MergeMarker.in(text, place.line());
        if (merge.isPresent()) {
            tree.report(tree.here(merge.get().place().line(), merge.get().place().column()), merge.get().what(), merge.get().remedy());
            return;
        }
        JsonFault fault = endsEarly ? JsonFault.ENDS_EARLY : JsonFault.at(text, offset, notJson.getOriginalMessage());
        tree.report(tree.here(place.line(), place.column()), fault.what(), fault.remedy());
    }

    private int faultyOffset(JacksonException notJson) {
        return notJson.getLocation() == null ? 0 : Math.min(offset(notJson.getLocation()), text.length());
    }
}
