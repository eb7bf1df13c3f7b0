package fettle.command;

import java.util.List;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Takes one of a few words for an option's value.
 *
 * <p>A class rather than a lambda: Java keeps the argument parser's own classes, which are in an old format, out of the archive of
 * loaded classes as soon as a lambda stands for one of them.
 */
final class OneOf implements ITypeConverter<String> {

    private final List<String> words;

    OneOf(List<String> words) {
        this.words = words;
    }

    @Override
    public String convert(String value) {
        if (!words.contains(value)) {
            throw new TypeConversionException("expected " + String.join(", ", words) + ", not '" + value + "'");
        }
        return value;
    }
}
