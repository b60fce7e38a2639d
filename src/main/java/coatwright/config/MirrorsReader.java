package coatwright.config;

import coatwright.quantity.Quantities;
import coatwright.store.influx.MirrorSettings;
import coatwright.store.influx.MirrorSettings.ReadBack;
import coatwright.store.influx.MirrorSettings.What;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Reads {@code mirrors} of {@code coatwright.yaml}. */
final class MirrorsReader {
  private static final List<String> WHAT = words(What.values());
  private static final List<String> READ_BACK = words(ReadBack.values());
  private static final List<String> HISTORY = List.of("all", "none");
  private static final int SMALLEST_BATCH = 500;
  private static final int LARGEST_BATCH = 5_000;

  private final Section section;
  private final Path beside;
  private final MirrorSettings usual = MirrorSettings.usual("", "");

  private MirrorsReader(Section section, Path beside) {
    this.section = section;
    this.beside = beside;
  }

  /** The mirrors, in the order they are written. */
  static List<MirrorSettings> mirrors(Section section, Path beside) {
    List<MirrorSettings> mirrors = new ArrayList<>();
    for (String name : List.copyOf(section.names())) {
      mirrors.add(new MirrorsReader(section.section(name), beside).mirror(name));
    }
    return mirrors;
  }

  private MirrorSettings mirror(String name) {
    Optional<Path> tokenFile = section.optional("token-file").map(beside::resolve);
    MirrorSettings mirror =
        new MirrorSettings(
            name,
            url(),
            filled("org", usual.org()),
            filled("bucket", usual.bucket()),
            tokenFile,
            what(),
            section.choice("history", HISTORY.get(0), HISTORY).equals(HISTORY.get(0)),
            section.whole("batch", usual.batch(), SMALLEST_BATCH, LARGEST_BATCH),
            alarmAfter(),
            ReadBack.valueOf(
                section
                    .choice("read-back", usual.readBack().toString(), READ_BACK)
                    .toUpperCase(Locale.ROOT)));
    section.refuseOthers();
    return mirror;
  }

  private String url() {
    String url = section.needed("url", "url: http://127.0.0.1:8086");
    if (url.matches("https?://[^/@\\s]*@.*")) {
      // Not shown again: it holds a password.
      section.faultUnshown(
          "url", "a name or password does not stand here", "give it in token-file");
    } else if (!url.isEmpty() && !url.matches("https?://[^/?#\\s:]+(:\\d{1,5})?(/[^?#\\s]*)?")) {
      section.fault(
          "url",
          "http://HOST:PORT or https://… is expected",
          "write it like http://127.0.0.1:8086");
    }
    return url;
  }

  private String filled(String key, String otherwise) {
    String text = section.text(key, otherwise);
    if (text.isBlank()) {
      section.fault(key, "it cannot be blank", "leave the line out for \"" + otherwise + "\"");
      return otherwise;
    }
    return text;
  }

  private Set<What> what() {
    if (!section.has("what")) {
      return usual.what();
    }
    Set<What> what = EnumSet.noneOf(What.class);
    for (String word : section.texts("what")) {
      if (WHAT.contains(word)) {
        what.add(What.valueOf(word.toUpperCase(Locale.ROOT)));
      } else {
        section.fault(
            "what",
            "\"%s\" is none of %s".formatted(word, String.join(", ", WHAT)),
            YamlText.nearest(word, WHAT).map(near -> "write " + near).orElse("leave it out"));
      }
    }
    if (what.isEmpty()) {
      section.fault("what", "nothing is left to mirror", "write one of " + String.join(", ", WHAT));
    }
    return what;
  }

  private Duration alarmAfter() {
    Duration after = section.quantity("alarm-after", usual.alarmAfter(), Quantities::duration);
    if (after.compareTo(Duration.ofMinutes(1)) < 0) {
      section.fault("alarm-after", "a minute is the least", "write it like 1h");
    }
    return after;
  }

  private static List<String> words(Object[] values) {
    return Arrays.stream(values).map(Object::toString).toList();
  }
}
