package coatwright.sensors;

import coatwright.sensors.serial.SerialSettings;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** The way a source's payloads come in. */
public sealed interface Transport {
  /** The word used in settings and shown in states. */
  String word();

  /**
   * By topics of a broker.
   *
   * @param broker name of an entry of the settings
   * @param filters MQTT topic filters, never {@code #} alone
   * @param captures names for the levels matched by {@code +}, in order; the one named {@code
   *     sensor} tells the sensors of the filter apart, without it all of them do
   */
  record Mqtt(
      String broker,
      List<String> filters,
      List<String> captures,
      Retained retained,
      Optional<Presence> presence)
      implements Transport {
    public Mqtt {
      filters = List.copyOf(filters);
      captures = List.copyOf(captures);
    }

    @Override
    public String word() {
      return "mqtt";
    }
  }

  /**
   * By a serial line.
   *
   * @param device stable path under by-id or by-path, or an absolute path
   * @param settle how long after opening whatever is said is boot text
   */
  record Serial(String device, SerialSettings line, Duration settle) implements Transport {
    @Override
    public String word() {
      return "serial";
    }
  }

  /** What a value the broker kept from earlier is worth. */
  enum Retained {
    LAST_KNOWN("last-known"),
    READING_IF_TIMED("reading-if-timed"),
    IGNORE("ignore");

    private final String word;

    Retained(String word) {
      this.word = word;
    }

    @Override
    public String toString() {
      return word;
    }
  }

  /** A topic that only says whether a node is there. */
  record Presence(String filter, List<String> present, List<String> absent, boolean ignoreCase) {
    public Presence {
      present = List.copyOf(present);
      absent = List.copyOf(absent);
    }

    /** Whether the word means present (true) or absent (false); empty when it means neither. */
    Optional<Boolean> says(String word) {
      if (among(present, word)) {
        return Optional.of(true);
      }
      return among(absent, word) ? Optional.of(false) : Optional.empty();
    }

    private boolean among(List<String> words, String word) {
      return words.stream()
          .anyMatch(known -> ignoreCase ? known.equalsIgnoreCase(word) : known.equals(word));
    }
  }
}
