package fettle.engine;

import java.util.ArrayList;
import java.util.List;
/** A sink that writes down what rules say, and which rule said it. */
final class Heard implements PairSink, WordSink {
    private final List<String> lines = new ArrayList<>();

    @Override
    public void pair(String rule, Socket socket, Widget widget) {
        say(rule, socket.host() + "/" + socket.id() + " " + widget.id());
    }

    @Override
    public void say(String rule, String words) {
        lines.add(rule + ": " + words);
    }

    List<String> sorted() {
        return lines.stream().sorted().toList();
    }
}
