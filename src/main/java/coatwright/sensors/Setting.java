package coatwright.sensors;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One value of a settings file, whatever the file's own form, with the line it stands on (0 when
 * the form has no lines).
 */
public sealed interface Setting {
  /** The line it stands on, counted from 1; 0 when unknown. */
  int line();

  /** Words. */
  record Text(String value, int line) implements Setting {}

  /** A number written without quotes. */
  record Num(BigDecimal value, int line) implements Setting {}

  /** True or false. */
  record Flag(boolean value, int line) implements Setting {}

  /** A name with nothing after it. */
  record Nothing(int line) implements Setting {}

  /** Several values in order. */
  record ListOf(List<Setting> values, int line) implements Setting {
    public ListOf {
      values = List.copyOf(values);
    }
  }

  /** Named values, in the order written. */
  record MapOf(Map<String, Setting> values, int line) implements Setting {
    public MapOf {
      values = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }
  }

  /** The same value, read from JSON. */
  static Setting of(JsonNode node) {
    if (node.isObject()) {
      Map<String, Setting> values = new LinkedHashMap<>();
      node.properties().forEach(field -> values.put(field.getKey(), of(field.getValue())));
      return new MapOf(values, 0);
    }
    if (node.isArray()) {
      List<Setting> values = new ArrayList<>();
      node.forEach(child -> values.add(of(child)));
      return new ListOf(values, 0);
    }
    if (node.isNumber()) {
      return new Num(node.decimalValue(), 0);
    }
    if (node.isBoolean()) {
      return new Flag(node.booleanValue(), 0);
    }
    return node.isNull() || node.isMissingNode() ? new Nothing(0) : new Text(node.asText(), 0);
  }
}
