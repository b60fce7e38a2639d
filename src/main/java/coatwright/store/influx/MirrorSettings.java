package coatwright.store.influx;

import coatwright.store.Outbox;
import coatwright.store.Outbox.Stream;
import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * A mirror as a person set it up.
 *
 * @param name its name in settings and figures
 * @param url where the server is; {@code /api/v2/write} is asked below it
 * @param org the organisation, where the server knows such a thing
 * @param bucket the bucket; the database, where the server calls it so
 * @param tokenFile a file with the token as its first line
 * @param what what it is given
 * @param history whether it is also given what was written before it was set up
 * @param batch points in one request
 * @param alarmAfter how long it may be behind before that is told as a trouble
 * @param readBack how to ask the server how many points it has
 */
public record MirrorSettings(
    String name,
    String url,
    String org,
    String bucket,
    Optional<Path> tokenFile,
    Set<What> what,
    boolean history,
    int batch,
    Duration alarmAfter,
    ReadBack readBack) {
  public MirrorSettings {
    what = Set.copyOf(what);
  }

  /** One with what holds where nothing is written. */
  public static MirrorSettings usual(String name, String url) {
    return new MirrorSettings(
        name,
        url,
        "coatwright",
        "coatwright",
        Optional.empty(),
        EnumSet.allOf(What.class),
        true,
        5_000,
        Duration.ofHours(1),
        ReadBack.NONE);
  }

  /** The kinds of things a mirror is given. */
  public enum What {
    /** Every believed reading. */
    READINGS,
    /** Every date that moved. */
    OUTLOOKS,
    /** Coats and what was seen on them. */
    COATS;

    /** The word of the settings. */
    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** The language in which a server is asked how many points it has. */
  public enum ReadBack {
    /** It is not asked. */
    NONE,
    /** {@code /query}. */
    INFLUXQL,
    /** {@code /api/v1/query}. */
    PROMQL;

    /** The word of the settings. */
    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** What the store is told of it. */
  public Outbox.Wish wish() {
    Set<Stream> streams = EnumSet.noneOf(Stream.class);
    what.forEach(one -> streams.add(Stream.valueOf(one.name())));
    if (history) {
      streams.add(Stream.HISTORY);
    }
    return new Outbox.Wish(name, String.join(" ", url, org, bucket), streams);
  }
}
