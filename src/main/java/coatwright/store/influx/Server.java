package coatwright.store.influx;

import com.influxdb.client.InfluxDBClient;
import com.influxdb.client.InfluxDBClientFactory;
import com.influxdb.client.InfluxDBClientOptions;
import com.influxdb.client.domain.WritePrecision;
import com.influxdb.exceptions.InfluxException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import okhttp3.Dispatcher;
import okhttp3.OkHttpClient;
import org.jspecify.annotations.Nullable;

/**
 * The server of one mirror, written to by the blocking interface only: the other one takes points
 * it may drop. Belongs to its mirror's thread.
 */
final class Server implements AutoCloseable {
  private static final Duration CONNECT = Duration.ofSeconds(10);
  private static final Duration WHOLE_CALL = Duration.ofSeconds(60);
  private static final Pattern DROPPED = Pattern.compile("\\bdropped=(\\d{1,9})\\b");

  /** Kept here, or the setting would be collected with its logger. What happens is told by us. */
  private static final List<Logger> QUIET =
      List.of(Logger.getLogger("com.influxdb"), Logger.getLogger("okhttp3"));

  static {
    QUIET.forEach(logger -> logger.setLevel(Level.OFF));
  }

  private final MirrorSettings settings;
  private final Dispatcher calls = new Dispatcher();
  private @Nullable InfluxDBClient client;
  private String token = "";

  Server(MirrorSettings settings) {
    this.settings = settings;
  }

  /** Sends lines in one request. */
  Answer send(List<String> lines) {
    try {
      client().getWriteApiBlocking().writeRecords(WritePrecision.MS, lines);
      return new Answer.Stored();
    } catch (InfluxException told) {
      return answer(told);
    } catch (IOException unreadable) {
      return new Answer.Away(
          "the token file cannot be read (%s); see its rights, or mend %s"
              .formatted(unreadable.getMessage(), key("token-file")),
          Optional.empty());
    }
  }

  private InfluxDBClient client() throws IOException {
    String now = token(settings.tokenFile());
    InfluxDBClient open = client;
    if (open != null && now.equals(token)) {
      return open;
    }
    close();
    InfluxDBClientOptions.Builder options =
        InfluxDBClientOptions.builder()
            .url(settings.url())
            .org(settings.org())
            .bucket(settings.bucket())
            .okHttpClient(
                new OkHttpClient.Builder()
                    .dispatcher(calls)
                    .connectTimeout(CONNECT)
                    .writeTimeout(WHOLE_CALL)
                    .readTimeout(WHOLE_CALL)
                    .callTimeout(WHOLE_CALL));
    if (!now.isEmpty()) {
      options.authenticateToken(now.toCharArray());
    }
    InfluxDBClient made = InfluxDBClientFactory.create(options.build());
    client = made;
    token = now;
    return made;
  }

  /** The token: the first line of its file, read anew each time so that it can be changed. */
  static String token(Optional<Path> file) throws IOException {
    return file.isEmpty()
        ? ""
        : Files.readString(file.get()).lines().findFirst().map(String::strip).orElse("");
  }

  /** Breaks off the request under way, from any thread. */
  void breakOff() {
    calls.cancelAll();
  }

  private Answer answer(InfluxException told) {
    int status = told.status();
    String said = said(told);
    return switch (status) {
      case 0 ->
          new Answer.Away(
              "nobody answers at %s (%s); start the server, or mend %s"
                  .formatted(settings.url(), said, key("url")),
              Optional.empty());
      case 400, 422 -> new Answer.Refused(said, dropped(said));
      case 413 -> new Answer.TooLarge(said);
      case 401, 403 ->
          new Answer.Away(
              "the server does not let us write (%s); see %s".formatted(said, key("token-file")),
              Optional.empty());
      case 404 ->
          new Answer.Away(
              "the server knows no such place (%s); see %s and %s"
                  .formatted(said, key("url"), key("bucket")),
              Optional.empty());
      default ->
          new Answer.Away(
              "the server answers %d (%s); see its own log".formatted(status, said),
              retryAfter(told));
    };
  }

  /** What the server itself said, without what the library puts before it. */
  private static String said(InfluxException told) {
    return Optional.ofNullable(told.getMessage())
        .map(text -> text.replaceFirst("^HTTP status code: \\d+; Message: ", "").strip())
        .filter(text -> !text.isEmpty())
        .orElse("no reason given");
  }

  private String key(String key) {
    return "mirrors." + settings.name() + "." + key;
  }

  private static OptionalInt dropped(String said) {
    Matcher found = DROPPED.matcher(said);
    return found.find() ? OptionalInt.of(Integer.parseInt(found.group(1))) : OptionalInt.empty();
  }

  private static Optional<Duration> retryAfter(InfluxException told) {
    return Optional.ofNullable(told.headers().get("Retry-After"))
        .filter(text -> text.matches("\\d{1,6}"))
        .map(text -> Duration.ofSeconds(Long.parseLong(text)));
  }

  @Override
  public void close() {
    InfluxDBClient open = client;
    if (open != null) {
      open.close();
      client = null;
    }
  }
}
