package fettle.document;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaContext;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecificationVersion;
import com.networknt.schema.dialect.Dialect;
import com.networknt.schema.keyword.AdditionalPropertiesValidator;
import com.networknt.schema.keyword.ExclusiveMinimumValidator;
import com.networknt.schema.keyword.FalseValidator;
import com.networknt.schema.keyword.IfValidator;
import com.networknt.schema.keyword.ItemsValidator;
import com.networknt.schema.keyword.Keyword;
import com.networknt.schema.keyword.KeywordValidator;
import com.networknt.schema.keyword.MaxItemsValidator;
import com.networknt.schema.keyword.MaxLengthValidator;
import com.networknt.schema.keyword.MaximumValidator;
import com.networknt.schema.keyword.MinItemsValidator;
import com.networknt.schema.keyword.MinLengthValidator;
import com.networknt.schema.keyword.MinimumValidator;
import com.networknt.schema.keyword.NonValidationKeyword;
import com.networknt.schema.keyword.PatternValidator;
import com.networknt.schema.keyword.PropertiesValidator;
import com.networknt.schema.keyword.PropertyNamesValidator;
import com.networknt.schema.keyword.RefValidator;
import com.networknt.schema.keyword.RequiredValidator;
import com.networknt.schema.keyword.TypeValidator;
import java.util.List;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;

/**
 * The keywords of JSON Schema 2020-12 that the two schemas use, and no others: the library's own dialect sets up dozens of
 * formats and an object mapper at start, which takes longer than all checks together.
 */
enum SchemaKeyword implements Keyword {
    REF("$ref"),
    TYPE("type"),
    ENUM("enum"),
    PROPERTIES("properties"),
    REQUIRED("required"),
    ADDITIONAL_PROPERTIES("additionalProperties"),
    PROPERTY_NAMES("propertyNames"),
    ITEMS("items"),
    MIN_ITEMS("minItems"),
    MAX_ITEMS("maxItems"),
    PATTERN("pattern"),
    MIN_LENGTH("minLength"),
    MAX_LENGTH("maxLength"),
    MINIMUM("minimum"),
    MAXIMUM("maximum"),
    EXCLUSIVE_MINIMUM("exclusiveMinimum"),
    IF("if"),
    /** What a schema that is plainly false stands for; the library looks it up among the keywords. */
    FALSE("false");

    /** Keywords that only tell people something, or that others read. The library adds "format" itself, as one of them. */
    private static final List<String> SILENT =
            List.of("$schema", "$id", "$defs", "title", "description", "default", "then", "else");

    private final String keyword;

    SchemaKeyword(String keyword) {
        this.keyword = keyword;
    }

    static Dialect dialect() {
        List<Keyword> keywords = Stream.concat(
                Stream.<Keyword>of(values()), SILENT.stream().<Keyword>map(NonValidationKeyword::new)).toList();
        SpecificationVersion version = SpecificationVersion.DRAFT_2020_12;
        return Dialect.builder(version.getDialectId()).specificationVersion(version).idKeyword("$id").keywords(keywords).build();
    }

    @Override
    public String getValue() {
        return keyword;
    }

    @Override
    public KeywordValidator newValidator(SchemaLocation location, JsonNode value, Schema parent, SchemaContext context) {
        return switch (this) {
            case REF -> new RefValidator(location, value, parent, context);
            case TYPE -> new TypeValidator(location, value, parent, context);
            case ENUM -> new ChoiceValidator(location, value, parent, context);
            case PROPERTIES -> new PropertiesValidator(location, value, parent, context);
            case REQUIRED -> new RequiredValidator(location, value, parent, context);
            case ADDITIONAL_PROPERTIES -> new AdditionalPropertiesValidator(location, value, parent, context);
            case PROPERTY_NAMES -> new PropertyNamesValidator(location, value, parent, context);
            case ITEMS -> new ItemsValidator(location, value, parent, context);
            case MIN_ITEMS -> new MinItemsValidator(location, value, parent, context);
            case MAX_ITEMS -> new MaxItemsValidator(location, value, parent, context);
            case PATTERN -> new PatternValidator(location, value, parent, context);
            case MIN_LENGTH -> new MinLengthValidator(location, value, parent, context);
            case MAX_LENGTH -> new MaxLengthValidator(location, value, parent, context);
            case MINIMUM -> new MinimumValidator(location, value, parent, context);
            case MAXIMUM -> new MaximumValidator(location, value, parent, context);
            case EXCLUSIVE_MINIMUM -> new ExclusiveMinimumValidator(location, value, parent, context);
            case FALSE -> new FalseValidator(location, value, parent, context);
            case IF -> new IfValidator(location, value, parent, context);
        };
    }
}
