package coatwright.store.influx;

import coatwright.json.Json;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;

/**
 * Asks a server how many values of readings it has. Some accept a bad line, or one that is too old
 * for them, without a word; only their own count tells.
 */
final class Counter {
  /** The server does not say; why. */
  static final class CannotCount extends Exception {
    private static final long serialVersionUID = 1L;

    CannotCount(String why) {
      super(why);
    }
  }

  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private final MirrorSettings settings;
  private final String shop;
  private final HttpClient http = HttpClient.newBuilder().connectTimeout(PATIENCE).build();

  Counter(MirrorSettings settings, String shop) {
    this.settings = settings;
    this.shop = shop;
  }

  /**
   * Air temperatures, humidities and surface temperatures of this shop measured in [from, to).
   *
   * @throws IOException if it does not answer
   */
  long values(Instant from, Instant to) throws CannotCount, IOException, InterruptedException {
    return switch (settings.readBack()) {
      case INFLUXQL -> influxql(from, to);
      case PROMQL -> promql(from, to);
      case NONE -> throw new CannotCount("it is not asked");
    };
  }

  private long influxql(Instant from, Instant to)
      throws CannotCount, IOException, InterruptedException {
    String query =
        "SELECT COUNT(\"%s\"), COUNT(\"%s\"), COUNT(\"%s\") FROM \"%s\" WHERE \"shop\" = '%s'"
                .formatted(
                    Lines.TEMPERATURE,
                    Lines.HUMIDITY,
                    Lines.SURFACE,
                    Lines.READING,
                    escaped(Lines.tagged(shop), '\''))
            + " AND time >= %dms AND time < %dms".formatted(from.toEpochMilli(), to.toEpochMilli());
    JsonNode answer = ask("/query?db=" + encoded(settings.bucket()) + "&q=" + encoded(query));
    JsonNode result = answer.path("results").path(0);
    if (result.has("error")) {
      throw new CannotCount(result.path("error").asText());
    }
    long values = 0;
    for (JsonNode series : result.path("series")) {
      for (JsonNode row : series.path("values")) {
        for (int column = 1; column < row.size(); column++) {
          values += row.get(column).asLong();
        }
      }
    }
    return values;
  }

  /** A range there is open at its begin and closed at its end, hence the millisecond. */
  private long promql(Instant from, Instant to)
      throws CannotCount, IOException, InterruptedException {
    String query =
        "sum(count_over_time({__name__=~\"%s_(%s|%s|%s)\",shop=\"%s\"}[%dms]))"
            .formatted(
                Lines.READING,
                Lines.TEMPERATURE,
                Lines.HUMIDITY,
                Lines.SURFACE,
                escaped(Lines.tagged(shop), '"'),
                Duration.between(from, to).toMillis());
    long at = to.toEpochMilli() - 1;
    String time = at / 1000 + "." + "%03d".formatted(at % 1000);
    JsonNode answer = ask("/api/v1/query?nocache=1&time=" + time + "&query=" + encoded(query));
    if (!answer.path("status").asText().equals("success")) {
      throw new CannotCount(answer.path("error").asText("no success"));
    }
    long values = 0;
    for (JsonNode series : answer.path("data").path("result")) {
      values += Math.round(series.path("value").path(1).asDouble());
    }
    return values;
  }

  private JsonNode ask(String path) throws CannotCount, IOException, InterruptedException {
    String url = settings.url().replaceFirst("/$", "");
    HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(url + path)).timeout(PATIENCE);
    String token = Server.token(settings.tokenFile());
    if (!token.isEmpty()) {
      request.header("Authorization", "Token " + token);
    }
    HttpResponse<String> answer =
        http.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
    if (answer.statusCode() != 200) {
      throw new CannotCount("it answers %d to %s".formatted(answer.statusCode(), pathOnly(path)));
    }
    try {
      return Json.mapper().readTree(answer.body());
    } catch (JsonProcessingException noJson) {
      throw new CannotCount("its answer to %s is no JSON".formatted(pathOnly(path)));
    }
  }

  private static String pathOnly(String path) {
    return path.substring(0, path.indexOf('?'));
  }

  private static String escaped(String text, char quote) {
    return text.replace("\\", "\\\\").replace(String.valueOf(quote), "\\" + quote);
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
