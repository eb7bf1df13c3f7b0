package fettle.document;

import com.networknt.schema.Error;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Words what a schema validator found in a document, each cause once, at the place where it stands. */
final class SchemaWording {
    private static final String PLACING = "parts";
    /** The properties that hold paths. */
    private static final Set<Object> PLACINGS = Set.of(PLACING, "factory");
    /** Where the schema says what a selector is. */
    private static final List<Object> SELECTOR = List.of("$defs", "selector");

    private final Node schema;
    private final Document document;
    private final Node root;
    private final Set<String> unreadable = new HashSet<>();
    private final boolean cutShort;

    /** What has been told already: the same place may break several keywords for one cause. */
    private final Set<String> told = new HashSet<>();

    SchemaWording(Node schema, Document document, Node root) {
        this.schema = schema;
        this.document = document;
        this.root = root;
        document.problems().forEach(problem -> unreadable.add(problem.origin().pointer()));
        this.cutShort = !document.problems().isEmpty();
    }

    List<SchemaProblem> problems(List<Error> errors) {
        List<SchemaProblem> problems = new ArrayList<>();
        Set<String> meantNames = new HashSet<>();
        Set<String> merging = new HashSet<>();
        List<Origin> surplus = new ArrayList<>();
        for (Error error : errors) {
            if (error.getKeyword().equals("additionalProperties")) {
                SchemaProblem unknown = unknownProperty(error);
                unknown.meant().ifPresentOrElse(name -> meantNames.add(error.getInstanceLocation() + "\n" + name), () -> surplus.add(unknown.origin()));
                if (unknown.isMerge()) {
                    merging.add(error.getInstanceLocation().toString());
                }
                // What can't be a name at all is told as that.
                if (document.problems().stream().noneMatch(problem -> problem.origin().coincides(unknown.origin()))) {
                    problems.add(unknown);
                }
            }
        }
        for (Error error : errors) {
            switch (error.getKeyword()) {
                case "additionalProperties" -> { }
                case "propertyNames" -> problems.add(badName(error));
                case "required" -> {
                    boolean isMisspelt = meantNames.contains(error.getInstanceLocation() + "\n" + error.getProperty());
                    boolean isCutOff = cutShort && error.getInstanceLocation().getNameCount() == 0;
                    // It may be among what was to be taken over.
                    boolean isMerged = merging.contains(error.getInstanceLocation().toString());
                    if (!isMisspelt && !isCutOff && !isMerged) {
                        missingProperty(error, surplus).ifPresent(problems::add);
                    }
                }
                case "false" -> surplusProperty(error).ifPresent(problems::add);
                default -> wrongValue(error).ifPresent(problems::add);
            }
        }
        return problems;
    }

    private SchemaProblem unknownProperty(Error error) {
        Node owner = schemaOwning(error);
        List<String> known = NodePaths.member(owner, "properties").map(SchemaWording::names).orElse(List.of());
        Optional<String> meant = Nearest.names(error.getProperty(), known).stream().findFirst();
        String expected = "a property of " + (Expectation.isOfSeveralTypes(owner) ? "this object" : Expectation.of(owner));
        return new SchemaProblem(keyOf(error), meant.isPresent() ? expected : expected + ": " + Words.anyOf(known),
                Words.quoted(error.getProperty()) + (meant.isPresent() ? "" : outer(error, error.getProperty())), meant);
    }

    private SchemaProblem badName(Error error) {
        Node owner = schemaOwning(error);
        Node naming = resolved(NodePaths.member(owner, "propertyNames").orElseThrow());
        return new SchemaProblem(keyOf(error), Expectation.of(naming) + " as the name", Words.quoted(error.getProperty()), Optional.empty());
    }

    /** Nothing where one of several is missing, and what stands there instead is told with all that could. */
    private Optional<SchemaProblem> missingProperty(Error error, List<Origin> surplus) {
        Node owner = schemaOwning(error);
        Node object = instance(error);
        boolean isConditional = NodePaths.member(owner, "properties").isEmpty();
        if (isConditional && surplus.stream().anyMatch(object.origin()::coincides)) {
            return Optional.empty();
        }
        String expected = isConditional
                ? Expectation.of(owner) + " in " + named(object, schemaAbove(error, owner))
                : "the property " + Words.quoted(error.getProperty()) + " in " + named(object, owner);
        return Optional.of(new SchemaProblem(object.origin(), expected, isConditional ? "neither" : "none", Optional.empty()));
    }

    /** What must not stand beside something else; told once an object. */
    private Optional<SchemaProblem> surplusProperty(Error error) {
        List<Object> steps = NodePaths.steps(error.getInstanceLocation());
        List<Node> along = NodePaths.along(root, steps);
        Node object = along.get(along.size() - 2);
        String name = steps.get(steps.size() - 1).toString();
        if (!told.add(object.origin().pointer() + "\nsurplus")) {
            return Optional.empty();
        }
        return Optional.of(new SchemaProblem(((Node.Obj) object).members().get(name).key(),
                nearestTitle(error), Words.quoted(name) + " too", Optional.empty()));
    }

    private Optional<SchemaProblem> wrongValue(Error error) {
        Node owner = schemaOwning(error);
        Node found = instance(error);
        boolean isToldElsewhere = found instanceof Node.Nil && unreadable.contains(found.origin().pointer());
        if (isToldElsewhere || !told.add(found.origin().pointer())) {
            return Optional.empty();
        }
        if (found instanceof Node.Text text && isSelector(error)) {
            return Optional.of(new SchemaProblem(found.origin(), Expectation.of(owner), Words.describe(found) + SelectorSlip.unseen(text.value()), SelectorSlip.meant(text.value())));
        }
        boolean isOfWrongType = error.getKeyword().equals("type");
        Optional<String> meant = found instanceof Node.Text text
                ? Nearest.names(text.value(), Expectation.choices(owner)).stream().findFirst() : Optional.empty();
        return Optional.of(new SchemaProblem(found.origin(),
                isOfWrongType ? Expectation.ofType(owner, found) : Expectation.of(owner), Words.describe(found) + (isOfWrongType ? tooDeep(error) + wrapped(error, found) : ""), meant));
    }

    /** Of paths that stand in an object of their own, as those of a build do: where they belong. */
    private static String wrapped(Error error, Node found) {
        List<Object> place = NodePaths.steps(error.getInstanceLocation());
        boolean wrapped = found instanceof Node.Obj && place.size() > 1 && place.get(place.size() - 1).equals(PLACING) && PLACINGS.contains(place.get(place.size() - 2));
        return wrapped ? " as " + Words.quoted(PLACING) + ", and paths stand in " + Words.quoted(place.get(place.size() - 2).toString()) + " itself" : "";
    }

    /** Of what may have any name: that a property of this one is that of an object around it, and stands too deep. */
    private String tooDeep(Error error) {
        List<Object> steps = NodePaths.steps(error.getEvaluationPath());
        if (steps.size() < 2 || !steps.get(steps.size() - 2).equals("additionalProperties")) {
            return "";
        }
        List<Object> place = NodePaths.steps(error.getInstanceLocation());
        String name = place.get(place.size() - 1).toString();
        String outer = outer(error, name);
        return outer.isEmpty() ? "" : " as " + Words.quoted(name) + outer;
    }

    /** That an object around the place has a property of this name; empty where none has. */
    private String outer(Error error, String name) {
        Optional<String> found = Optional.empty();
        Node at = schema;
        List<Object> steps = NodePaths.steps(error.getEvaluationPath());
        for (Object step : steps.subList(0, steps.size() - 1)) {
            at = step.equals("$ref") ? resolved(at) : NodePaths.along(at, List.of(step)).get(1);
            if (NodePaths.member(at, "properties").flatMap(known -> NodePaths.member(known, name)).isPresent()) {
                found = Optional.of(noun(at));
            }
        }
        return found.map(noun -> ", which belongs to the " + noun + " around it").orElse("");
    }

    private static boolean isSelector(Error error) {
        List<Object> steps = NodePaths.steps(error.getSchemaLocation().getFragment());
        return steps.size() > 1 && steps.subList(0, 2).equals(SELECTOR);
    }

    private Node instance(Error error) {
        List<Node> along = NodePaths.along(root, NodePaths.steps(error.getInstanceLocation()));
        return along.get(along.size() - 1);
    }

    private Origin keyOf(Error error) {
        Map<String, Node.Member> members = ((Node.Obj) instance(error)).members();
        return members.get(error.getProperty()).key();
    }

    /** The piece of the schema in which the broken keyword stands. */
    private Node schemaOwning(Error error) {
        List<Node> along = alongSchema(error);
        return along.get(along.size() - 1);
    }

    private List<Node> alongSchema(Error error) {
        List<Object> steps = NodePaths.steps(error.getSchemaLocation().getFragment());
        return NodePaths.along(schema, steps.subList(0, steps.size() - 1));
    }

    /** The titled piece of the schema around a condition's branch. */
    private Node schemaAbove(Error error, Node branch) {
        List<Node> along = alongSchema(error);
        for (int i = along.size() - 1; i >= 0; i--) {
            if (along.get(i) != branch && NodePaths.text(along.get(i), "title").isPresent()) {
                return along.get(i);
            }
        }
        return branch;
    }

    private String nearestTitle(Error error) {
        List<Node> along = alongSchema(error);
        for (int i = along.size() - 1; i >= 0; i--) {
            Optional<String> title = NodePaths.text(along.get(i), "title");
            if (title.isPresent()) {
                return title.get();
            }
        }
        return "nothing";
    }

    private Node resolved(Node subschema) {
        return NodePaths.text(subschema, "$ref")
                .map(reference -> NodePaths.along(schema, List.of((Object[]) reference.substring(2).split("/"))))
                .map(along -> along.get(along.size() - 1))
                .orElse(subschema);
    }

    /** An object in words: {@code the part "x"} where it has an id, {@code this part} where it has none. */
    private static String named(Node object, Node objectSchema) {
        String noun = Expectation.isOfSeveralTypes(objectSchema)
                ? "object" : noun(objectSchema);
        return NodePaths.text(object, "id").map(id -> "the " + noun + " " + Words.quoted(id)).orElse("this " + noun);
    }

    private static String noun(Node objectSchema) {
        return Expectation.of(objectSchema).replaceFirst("^(?:an?|the) ", "");
    }

    private static List<String> names(Node object) {
        return List.copyOf(((Node.Obj) object).members().keySet());
    }
}
