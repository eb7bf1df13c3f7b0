package fettle.document;

import com.networknt.schema.ExecutionContext;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaContext;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.keyword.BaseKeywordValidator;
import com.networknt.schema.path.NodePath;
import java.util.HashSet;
import java.util.Set;
import tools.jackson.databind.JsonNode;

/** Checks that a value is one of the listed ones; unlike the library's own check it words nothing before anything is wrong. */
final class ChoiceValidator extends BaseKeywordValidator {
    private final Set<JsonNode> choices = new HashSet<>();

    ChoiceValidator(SchemaLocation location, JsonNode value, Schema parent, SchemaContext context) {
        super(SchemaKeyword.ENUM, value, location, parent, context);
        value.forEach(choices::add);
    }

    @Override
    public void validate(ExecutionContext execution, JsonNode node, JsonNode root, NodePath instance) {
        if (!choices.contains(node)) {
            execution.addError(error().instanceNode(node).instanceLocation(instance)
                    .evaluationPath(execution.getEvaluationPath()).arguments(getSchemaNode()).build());
        }
    }
}
