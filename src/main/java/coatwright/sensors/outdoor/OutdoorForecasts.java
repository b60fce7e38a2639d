package coatwright.sensors.outdoor;

import coatwright.climate.RawText;
import coatwright.climate.Role;
import coatwright.climate.SourceState;
import coatwright.climate.SourceStatus;
import coatwright.climate.forecast.OutsideCourse;
import coatwright.quantity.RefusedInput;
import coatwright.sensors.mqtt.MqttLink;
import java.io.IOException;
import java.io.InputStream;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Fetches an outdoor forecast again and again, reads it by its mapping and hands on the course. Its
 * texts are kept as every payload is, and read again at a start, so that what a room learned of the
 * outdoors is not lost with the program. Nothing depends on it: a forecast that stays away or makes
 * no sense leaves the rooms to their own past.
 */
public final class OutdoorForecasts implements AutoCloseable {
  /** Its name among the sources. */
  public static final String SOURCE = "outdoor-forecast";

  private static final Logger LOG = LoggerFactory.getLogger(OutdoorForecasts.class);
  private static final int MOST_BYTES = 1_000_000;
  private static final int MOST_KEPT = 1_000;
  private static final int MOST_REFUSED = 20;
  private static final Duration PATIENCE = Duration.ofSeconds(20);
  private static final int FINE = 200;

  private final OutdoorSource source;
  private final OutdoorReader reader;
  private final Duration every;
  private final Clock clock;
  private final Consumer<OutsideCourse> taken;
  private final Consumer<RawText> raw;
  private final ScheduledExecutorService worker =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "outdoor-forecast");
            thread.setDaemon(true);
            return thread;
          });
  private @Nullable MqttLink link;
  private @Nullable HttpClient client;
  private String lastText = "";

  private final Object lock = new Object();
  private final List<RawText> refused = new ArrayList<>();
  private Optional<Instant> lastAt = Optional.empty();
  private Optional<String> trouble = Optional.empty();
  private long accepted;
  private long refusals;
  private int inARow;

  /**
   * @param every how often a file or an address is looked at
   * @param taken takes each course that was understood
   * @param raw keeps the texts
   */
  public OutdoorForecasts(
      OutdoorSource source,
      OutdoorMapping mapping,
      Duration every,
      Clock clock,
      Consumer<OutsideCourse> taken,
      Consumer<RawText> raw) {
    this.source = source;
    this.reader = new OutdoorReader(mapping);
    this.every = every;
    this.clock = clock;
    this.taken = taken;
    this.raw = raw;
  }

  /** Reads again what was kept, oldest first; what no longer fits the mapping is passed over. */
  public void recall(List<RawText> newestFirst) {
    for (int i = Math.min(MOST_KEPT, newestFirst.size()) - 1; i >= 0; i--) {
      RawText kept = newestFirst.get(i);
      try {
        taken.accept(reader.read(kept.text(), kept.arrivedAt()));
        lastText = kept.text();
        synchronized (lock) {
          lastAt = Optional.of(kept.arrivedAt());
        }
      } catch (RefusedInput mappedOtherwise) {
        LOG.debug("a kept outdoor forecast is passed over", mappedOtherwise);
      }
    }
  }

  /** Begins to look; returns at once. */
  public void start() {
    if (source instanceof OutdoorSource.OfTopic topic) {
      MqttLink opened =
          new MqttLink(
              topic.broker(),
              List.of(topic.topic()),
              new OutdoorListener(text -> worker.execute(() -> take(text))));
      link = opened;
      opened.start();
    } else {
      Future<?> unused =
          worker.scheduleWithFixedDelay(this::look, 0, every.toMillis(), TimeUnit.MILLISECONDS);
    }
  }

  private void look() {
    try {
      take(fetched());
    } catch (IOException | RuntimeException unreachable) {
      troubled(
          "outdoor forecast: %s cannot be had: %s; the rooms are forecast from their own past"
              .formatted(source.named(), unreachable.getMessage()));
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  private String fetched() throws IOException, InterruptedException {
    if (source instanceof OutdoorSource.OfFile file) {
      if (Files.size(file.file()) > MOST_BYTES) {
        throw new IOException("it is longer than a million bytes");
      }
      return Files.readString(file.file());
    }
    HttpRequest request =
        HttpRequest.newBuilder(((OutdoorSource.OfAddress) source).address())
            .timeout(PATIENCE)
            .header("Accept", "application/json, text/csv, */*;q=0.5")
            .GET()
            .build();
    HttpResponse<InputStream> response =
        client().send(request, HttpResponse.BodyHandlers.ofInputStream());
    try (InputStream body = response.body()) {
      byte[] bytes = body.readNBytes(MOST_BYTES + 1);
      if (response.statusCode() != FINE) {
        throw new IOException("it answers with status " + response.statusCode());
      }
      if (bytes.length > MOST_BYTES) {
        throw new IOException("it is longer than a million bytes");
      }
      return new String(bytes, StandardCharsets.UTF_8);
    }
  }

  /** One for all times it asks, made when it first does. */
  private HttpClient client() {
    HttpClient known = client;
    if (known == null) {
      known =
          HttpClient.newBuilder()
              .connectTimeout(PATIENCE)
              .followRedirects(HttpClient.Redirect.NEVER)
              .build();
      client = known;
    }
    return known;
  }

  /** A text as it came; one that is not new tells nothing new. */
  private void take(String text) {
    if (text.equals(lastText)) {
      return;
    }
    lastText = text;
    Instant now = clock.instant();
    try {
      OutsideCourse course = reader.read(text, now);
      raw.accept(new RawText(SOURCE, source.named(), now, text, "accepted", Optional.empty()));
      synchronized (lock) {
        accepted++;
        inARow = 0;
        lastAt = Optional.of(now);
        trouble = Optional.empty();
      }
      taken.accept(course);
    } catch (RefusedInput why) {
      String reason = String.valueOf(why.getMessage());
      RawText kept = new RawText(SOURCE, source.named(), now, text, "refused", Optional.of(reason));
      raw.accept(kept);
      synchronized (lock) {
        refusals++;
        inARow++;
        refused.add(0, kept);
        if (refused.size() > MOST_REFUSED) {
          refused.remove(MOST_REFUSED);
        }
      }
      troubled(reason);
    }
  }

  private void troubled(String sentence) {
    synchronized (lock) {
      if (!trouble.equals(Optional.of(sentence))) {
        LOG.warn("{}", sentence);
      }
      trouble = Optional.of(sentence);
    }
  }

  /** How it is doing, as a source. */
  public SourceStatus status() {
    synchronized (lock) {
      Instant now = clock.instant();
      Optional<Duration> age = lastAt.map(at -> Duration.between(at, now));
      boolean stale =
          age.isPresent() && age.get().compareTo(Duration.ofHours(OutsideCourse.STALE_H)) > 0;
      Optional<String> said =
          stale && trouble.isEmpty()
              ? Optional.of(
                  "its last forecast is older than a day and no longer used; see to "
                      + source.named())
              : trouble;
      return new SourceStatus(
          SOURCE,
          source.transport(),
          Optional.empty(),
          Role.OUTSIDE,
          SourceState.of(age, every.plus(every), inARow, false),
          every,
          lastAt,
          accepted,
          0,
          refusals,
          said,
          List.copyOf(refused));
    }
  }

  @Override
  public void close() {
    worker.shutdownNow();
    MqttLink opened = link;
    if (opened != null) {
      opened.close();
    }
  }
}
