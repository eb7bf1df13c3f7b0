package fettle.engine;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Reading of rule files and finding of places in them.
 *
 * <p>Text as people wrote it, with lines counted from 1.
 */
final class RuleText {
    private RuleText() {
    }

    static String read(Path path, String shown) {
        try {
            return Files.readString(path);
        } catch (CharacterCodingException notText) {
            throw new RuleErrors(RuleProblem.of(shown, "The file is not UTF-8 text; save it as UTF-8."));
        } catch (IOException unreadable) {
            throw new RuleErrors(RuleProblem.of(shown, "The file cannot be read: " + unreadable.getMessage() + "."));
        }
    }

    static int line(String text, int offset) {
        return 1 + (int) text.substring(0, offset).chars().filter(c -> c == '\n').count();
    }

    static String oneLine(String text) {
        return text.strip().replaceAll("\\s+", " ");
    }
}
