package coatwright.sensors.mqtt;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** MQTT topic filters (MQTT 3.1.1, section 4.7): {@code +} is one level, {@code #} the rest. */
public final class TopicFilter {
  private static final int LONGEST_BYTES = 1024;

  private TopicFilter() {}

  /** What is wrong with a filter, or nothing. {@code #} alone would take in the whole broker. */
  public static Optional<String> faultOf(String filter) {
    if (filter.isEmpty()) {
      return Optional.of("is empty");
    }
    if (filter.length() > LONGEST_BYTES || filter.indexOf('\0') >= 0) {
      return Optional.of("is too long or holds a NUL");
    }
    String[] levels = filter.split("/", -1);
    for (int i = 0; i < levels.length; i++) {
      boolean last = i == levels.length - 1;
      if (levels[i].contains("#") && !(levels[i].equals("#") && last)) {
        return Optional.of("has # elsewhere than alone at the end");
      }
      if (levels[i].contains("+") && !levels[i].equals("+")) {
        return Optional.of("has + beside other characters of a level");
      }
    }
    boolean namesNothing = List.of(levels).stream().allMatch(l -> l.equals("+") || l.equals("#"));
    return namesNothing ? Optional.of("takes in everything the broker carries") : Optional.empty();
  }

  /** Whether the topic is one the filter takes in. */
  public static boolean matches(String filter, String topic) {
    return captures(filter, topic).isPresent();
  }

  /** The levels matched by each {@code +}, in order; empty when the topic does not match. */
  public static Optional<List<String>> captures(String filter, String topic) {
    String[] wanted = filter.split("/", -1);
    String[] given = topic.split("/", -1);
    List<String> caught = new ArrayList<>();
    for (int i = 0; i < wanted.length; i++) {
      if (wanted[i].equals("#")) {
        return given.length >= i ? Optional.of(caught) : Optional.empty();
      }
      if (i >= given.length || !(wanted[i].equals("+") || wanted[i].equals(given[i]))) {
        return Optional.empty();
      }
      if (wanted[i].equals("+")) {
        caught.add(given[i]);
      }
    }
    return given.length == wanted.length ? Optional.of(caught) : Optional.empty();
  }
}
