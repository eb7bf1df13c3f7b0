package fettle.rules;

import java.io.IOException;
import java.nio.file.Files;

/**
 * Writes each case's {@code expected.txt} anew from what the program says now. To be run by hand after a change of wording, and what it changes is to be
 * read like code.
 */
final class WriteExpected {

    private WriteExpected() {}

    public static void main(String[] rules) throws IOException {
        for (RuleCase each : RuleCase.all()) {
            if (rules.length == 0 || java.util.List.of(rules).contains(each.rule())) {
                Files.writeString(each.expectedFile(), each.answer("text").out());
                System.out.println(each.expectedFile());
            }
        }
    }
}
