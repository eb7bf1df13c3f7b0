/** A sink that writes down what rules say, and which rule said it. */
package fettle.engine;

import java.util.ArrayList;
import java.util.List;

final class Heard implements PairSink, WordSink, RuleListener {
    private final List<String> lines = new ArrayList<>();
    private String rule = "nobody";

    @Override
    public void aboutToRun(String name) {
        rule = name;
    }

    @Override
    public void pair(Socket socket, Widget widget) {
        say(socket.host() + "/" + socket.id() + " " + widget.id());
    }

    @Override
    public void say(String words) {
        lines.add(rule + ": " + words);
    }

    List<String> sorted() {
        return lines.stream().sorted().toList();
    }
}
