package coatwright.cli;

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
import java.util.Map;

/**
 * The line to the running daemon. A refusal of the daemon ends the command with its words; a daemon
 * that is not there ends it with exit code 3.
 */
final class DaemonLine {
  private static final Duration PATIENCE = Duration.ofSeconds(30);
  private static final Duration TO_CONNECT = Duration.ofSeconds(3);
  private static final int BAD_REQUEST = 400;
  private static final int SERVER_ERROR = 500;

  private final String host;
  private final int port;

  DaemonLine(String host, int port) {
    // A daemon that listens everywhere is asked on this machine.
    this.host = host.equals("0.0.0.0") || host.equals("::") ? "127.0.0.1" : host;
    this.port = port;
  }

  /** Asks for what is at an address below {@code /api/v1}. */
  JsonNode get(String path) {
    return send(request(path).GET().build());
  }

  /** Hands in a form: option texts under their names. */
  JsonNode post(String path, Map<String, String> form) {
    return send(
        request(path)
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofString(Json.line(form)))
            .build());
  }

  /** One step of a path, so written that blanks and the like survive. */
  static String step(String name) {
    return URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
  }

  /** Where the pages are. */
  String address() {
    return "http://" + (host.contains(":") ? "[" + host + "]" : host) + ":" + port;
  }

  private HttpRequest.Builder request(String path) {
    return HttpRequest.newBuilder(URI.create(address() + "/api/v1/" + path))
        .timeout(PATIENCE)
        .header("Accept", "application/json");
  }

  private JsonNode send(HttpRequest request) {
    try {
      HttpClient client =
          HttpClient.newBuilder()
              .version(HttpClient.Version.HTTP_1_1)
              .connectTimeout(TO_CONNECT)
              .build();
      HttpResponse<String> response =
          client.send(request, HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
      JsonNode body = body(response.body());
      if (response.statusCode() >= BAD_REQUEST) {
        throw refusal(response.statusCode(), body);
      }
      return body;
    } catch (IOException unreachable) {
      throw new Stop(
          Stop.NOT_REACHABLE,
          "the daemon does not answer at %s; start it with: coatwright run (or coatwright demo)"
              .formatted(address()),
          unreachable);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new Stop(Stop.INTERNAL, "interrupted while asking the daemon", stopped);
    }
  }

  private JsonNode body(String text) {
    try {
      return Json.mapper().readTree(text);
    } catch (JsonProcessingException notJson) {
      throw new Stop(
          Stop.NOT_REACHABLE,
          "something else than Coatwright answers at %s; see web.port in the settings"
              .formatted(address()),
          notJson);
    }
  }

  /** The daemon's own words: the faults of a form one a line, else the detail of the problem. */
  private static Stop refusal(int status, JsonNode problem) {
    StringBuilder words = new StringBuilder();
    for (JsonNode fault : problem.path("faults")) {
      words.append(words.isEmpty() ? "" : System.lineSeparator());
      words.append(fault.isTextual() ? fault.asText() : sentence(fault));
    }
    if (words.isEmpty()) {
      words.append(problem.path("detail").asText(problem.path("title").asText("refused")));
    }
    return new Stop(status >= SERVER_ERROR ? Stop.INTERNAL : Stop.BAD_INPUT, words.toString());
  }

  private static String sentence(JsonNode fault) {
    return "%s: %s; %s"
        .formatted(
            fault.path("input").asText(),
            fault.path("rule").asText(),
            fault.path("remedy").asText());
  }
}
