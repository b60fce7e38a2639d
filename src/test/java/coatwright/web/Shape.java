package coatwright.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/** Holds an answer against its schema in the OpenAPI document. */
final class Shape {
  private final JsonNode document;

  Shape(JsonNode document) {
    this.document = document;
  }

  /** What in the value is not as the schema says. */
  List<String> faults(String where, JsonNode schema, JsonNode value) {
    List<String> faults = new ArrayList<>();
    compare(where, schema, value, faults);
    return faults;
  }

  /** The same, by the schema's name. */
  List<String> faults(String name, JsonNode value) {
    return faults(name, document.path("components").path("schemas").path(name), value);
  }

  /** As much of JSON Schema as the document uses. */
  private void compare(String where, JsonNode schema, JsonNode value, List<String> faults) {
    if (schema.has("$ref")) {
      compare(where, document.at(schema.path("$ref").asText().substring(1)), value, faults);
      return;
    }
    switch (schema.path("type").asText()) {
      case "object" -> compareObject(where, schema, value, faults);
      case "array" -> {
        if (!value.isArray()) {
          faults.add(where + " should be a list: " + value);
        }
        value.forEach(item -> compare(where + "[]", schema.path("items"), item, faults));
      }
      case "string" -> compareText(where, schema, value, faults);
      case "number" -> expect(value.isNumber(), where + " should be a number: " + value, faults);
      case "integer" ->
          expect(value.isIntegralNumber(), where + " should be whole: " + value, faults);
      case "boolean" -> expect(value.isBoolean(), where + " should be yes or no: " + value, faults);
      default -> faults.add(where + " has no type in the document: " + schema);
    }
  }

  private void compareObject(String where, JsonNode schema, JsonNode value, List<String> faults) {
    expect(value.isObject(), where + " should be an object: " + value, faults);
    schema
        .path("required")
        .forEach(key -> expect(value.has(key.asText()), where + " lacks " + key.asText(), faults));
    value
        .properties()
        .forEach(
            field -> {
              JsonNode known = schema.path("properties").path(field.getKey());
              JsonNode others = schema.path("additionalProperties");
              if (!known.isMissingNode()) {
                compare(where + "." + field.getKey(), known, field.getValue(), faults);
              } else if (others.isObject()) {
                compare(where + "." + field.getKey(), others, field.getValue(), faults);
              } else if (others.isBoolean()) {
                faults.add(where + "." + field.getKey() + " is not in the document");
              }
            });
  }

  private void compareText(String where, JsonNode schema, JsonNode value, List<String> faults) {
    expect(value.isTextual(), where + " should be text: " + value, faults);
    if (schema.has("enum")) {
      boolean listed = false;
      for (JsonNode word : schema.path("enum")) {
        listed |= word.equals(value);
      }
      expect(listed, where + " is none of " + schema.path("enum") + ": " + value, faults);
    }
    try {
      switch (schema.path("format").asText()) {
        case "date-time" -> OffsetDateTime.parse(value.asText());
        case "date" -> LocalDate.parse(value.asText());
        default -> {
          // Any text.
        }
      }
    } catch (DateTimeException wrong) {
      faults.add(where + " should be a " + schema.path("format").asText() + ": " + value);
    }
  }

  private void expect(boolean right, String fault, List<String> faults) {
    if (!right) {
      faults.add(fault);
    }
  }
}
