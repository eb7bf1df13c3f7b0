package fettle.command;

import java.nio.file.Path;
import java.util.Collection;
import java.util.stream.Stream;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** Refuses paths that are empty, as a variable leaves them that nobody set: they would mean the current directory, which nobody named. */
final class EmptyPaths {

    private EmptyPaths() {}

    /** Refuses them wherever something is read; where something is written, {@link Overwriting} does. */
    static void refuse(ParseResult said) {
        Stream.concat(said.matchedPositionals().stream(), said.matchedOptions().stream().filter(option -> !option.longestName().equals(Options.OUTPUT)))
                .filter(argument -> paths(argument).anyMatch(path -> path.toString().isEmpty()))
                .findFirst()
                .ifPresent(argument -> {
                    throw refused(argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel());
                });
    }

    /** What to say of an argument that is one. */
    static NotChecked refused(String argument) {
        return new NotChecked("the path for " + argument + " is empty; name one, or write . for the current directory");
    }

    /** The paths that an argument names. */
    static Stream<Path> paths(ArgSpec argument) {
        Object value = argument.getValue();
        Stream<?> values = value instanceof Collection<?> several ? several.stream() : Stream.ofNullable(value);
        return values.filter(Path.class::isInstance).map(Path.class::cast);
    }
}
