package fettle.document;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** A value of a document, of JSON or YAML alike, which knows where it stands. */
public sealed interface Node {
    /** Where the value begins. */
    Origin origin();

    /** An object; its members keep the order in which they were written. */
    record Obj(Map<String, Member> members, Origin origin) implements Node {
        public Obj {
            members = Collections.unmodifiableMap(new LinkedHashMap<>(members));
            Objects.requireNonNull(origin);
        }
    }

    /** A value in an object, with the place of its name; the name's pointer is that of the value. */
    record Member(Origin key, Node value) {
        public Member {
            Objects.requireNonNull(key);
            Objects.requireNonNull(value);
        }
    }

    /** A list. */
    record Arr(List<Node> items, Origin origin) implements Node {
        public Arr {
            items = List.copyOf(items);
            Objects.requireNonNull(origin);
        }
    }

    /** A text. */
    record Text(String value, Origin origin) implements Node {
        public Text {
            Objects.requireNonNull(value);
            Objects.requireNonNull(origin);
        }
    }

    /** A number, exactly as written: {@code 1.50} keeps its two places. */
    record Num(BigDecimal value, Origin origin) implements Node {
        public Num {
            Objects.requireNonNull(value);
            Objects.requireNonNull(origin);
        }
    }

    /** A truth value. */
    record Bool(boolean value, Origin origin) implements Node {
        public Bool {
            Objects.requireNonNull(origin);
        }
    }

    /** A null, which the format never asks for. */
    record Nil(Origin origin) implements Node {
        public Nil {
            Objects.requireNonNull(origin);
        }
    }
}
