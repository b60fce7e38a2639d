package coatwright.sensors.proposal;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes a draft as a settings file, its doubts as comments. */
final class Yaml {
  private static final int WIDE = 100;

  private Yaml() {}

  static String of(Draft draft) {
    StringBuilder text = new StringBuilder();
    draft.words().forEach((word, value) -> text.append(line(word, value)));
    if (!draft.readings().isEmpty()) {
      boolean records = "senml".equals(draft.words().get("payload"));
      text.append(records ? "records:\n" : "readings:\n");
      for (int i = 0; i < draft.readings().size(); i++) {
        text.append(comment("  ", "unsure: ", draft.doubts().get(i)));
        text.append("  - ").append(flow(draft.readings().get(i))).append('\n');
      }
    }
    if (!draft.filters().isEmpty()) {
      text.append("filters:\n");
      int i = 0;
      for (Map.Entry<String, Map<String, Object>> each : draft.filters().entrySet()) {
        text.append(comment("  ", "unsure: ", draft.doubts().get(i)));
        text.append("  ").append(scalar(each.getKey())).append(": ");
        text.append(flow(each.getValue())).append('\n');
        i++;
      }
    }
    for (String note : draft.notes()) {
      text.append(comment("", "", note));
    }
    return text.toString();
  }

  private static String line(String word, Object value) {
    return word + ": " + value(value) + "\n";
  }

  /** A comment broken into lines of a readable length; nothing for an empty one. */
  static String comment(String indent, String head, String says) {
    if (says.isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder(indent).append("# ").append(head);
    int from = text.length();
    int width = from;
    for (String word : List.of(says.replaceAll("[\\r\\n]+", " ").split(" ", -1))) {
      if (width + word.length() > WIDE && width > from) {
        text.setLength(text.length() - 1);
        text.append('\n').append(indent).append("#   ");
        width = indent.length() + 4;
      }
      text.append(word).append(' ');
      width += word.length() + 1;
    }
    return text.toString().stripTrailing() + "\n";
  }

  private static String value(Object value) {
    if (value instanceof List<?> list) {
      return list.stream().map(Yaml::value).collect(Collectors.joining(", ", "[", "]"));
    }
    return value instanceof Map<?, ?> map ? flow(map) : scalar(value);
  }

  private static String flow(Map<?, ?> map) {
    return map.entrySet().stream()
        .map(each -> scalar(each.getKey()) + ": " + value(each.getValue()))
        .collect(Collectors.joining(", ", "{", "}"));
  }

  /** Words that YAML would read otherwise are quoted; a quote inside is written twice. */
  private static String scalar(Object value) {
    String text = String.valueOf(value);
    if (!(value instanceof String)) {
      return text;
    }
    if (text.indexOf('\t') >= 0) {
      return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"").replace("\t", "\\t") + '"';
    }
    boolean plain =
        text.matches("[A-Za-z/][A-Za-z0-9_./ -]*")
            && !text.endsWith(" ")
            && !text.matches("(?i)true|false|yes|no|on|off|null|y|n");
    return plain ? text : "'" + text.replace("'", "''") + "'";
  }
}
