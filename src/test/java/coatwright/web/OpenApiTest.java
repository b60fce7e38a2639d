package coatwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The document and the server are walked against each other, both ways. */
class OpenApiTest {
  private static final Map<String, String> FILLED =
      Map.of(
          "/api/v1/rooms/{room}/readings",
              "/api/v1/rooms/finishing%20room/readings?to=2026-07-14T21:00",
          "/api/v1/parts/{part}", "/api/v1/parts/wall%20cabinet%2Fleft%20door",
          "/api/v1/coats/{coat}", "/api/v1/coats/e8",
          "/api/v1/why/{coat}", "/api/v1/why/e8");
  private static final Map<String, String> FORMS =
      Map.of(
          "/api/v1/pieces", "{\"name\": \"chest\"}",
          "/api/v1/parts", "{\"part\": \"chest/lid\"}",
          "/api/v1/jars", "{\"name\": \"amber\", \"finish\": \"shellac-pale\"}",
          "/api/v1/coats", "{\"part\": \"wall cabinet/carcase,stools/first\", \"jar\": \"pale-2\"}",
          "/api/v1/notes", "{\"part\": \"stools/first\", \"what\": \"clouded=3\"}",
          "/api/v1/strikes", "{\"entry\": \"e2\", \"reason\": \"written twice\"}",
          "/api/v1/outlook", "{\"finish\": \"shellac-pale\", \"air\": \"20C,50%\"}");

  private static WebFixture shop;
  private static Caller caller;
  private static JsonNode document;

  @BeforeAll
  static void openTheDoor() {
    shop = new WebFixture();
    caller = new Caller(shop.address());
    document = caller.get("/openapi.json").json();
  }

  @AfterAll
  static void closeTheDoor() {
    shop.close();
  }

  @Test
  void everyDocumentedRouteAnswersAsDocumented() {
    List<String> faults = new ArrayList<>();
    document
        .path("paths")
        .properties()
        .forEach(
            path ->
                path.getValue()
                    .properties()
                    .forEach(
                        operation ->
                            check(
                                path.getKey(), operation.getKey(), operation.getValue(), faults)));

    assertThat(faults).isEmpty();
  }

  private static void check(String path, String method, JsonNode operation, List<String> faults) {
    if (path.endsWith("/events")) {
      return;
    }
    Caller.Answer answer =
        method.equals("post")
            ? caller.post(path, FORMS.get(path))
            : caller.get(FILLED.getOrDefault(path, path));
    String where = method + " " + path + " → " + answer.status();
    JsonNode response = operation.path("responses").path(Integer.toString(answer.status()));
    String type = answer.type().replaceAll(";.*", "");
    JsonNode schema = response.path("content").path(type).path("schema");
    if (response.isMissingNode() || schema.isMissingNode() || answer.status() >= 300) {
      faults.add(where + " (" + type + ") is not as documented: " + answer.body());
    } else if (type.equals("application/json")) {
      compare(where, schema, answer.json(), faults);
    }
  }

  @Test
  void everyRouteIsDocumentedAndNothingElseIs() {
    Set<String> documented = new TreeSet<>();
    document
        .path("paths")
        .properties()
        .forEach(
            path ->
                path.getValue()
                    .fieldNames()
                    .forEachRemaining(
                        method ->
                            documented.add(method.toUpperCase(Locale.ROOT) + " " + path.getKey())));
    Set<String> served =
        shop.server.routes().stream()
            .filter(route -> route.startsWith("GET ") || route.startsWith("POST "))
            .map(route -> route.replace('<', '{').replace('>', '}'))
            .filter(route -> !isPage(route))
            .collect(Collectors.toCollection(TreeSet::new));

    assertThat(documented).isEqualTo(served);
  }

  private static boolean isPage(String route) {
    return Set.of(
            "GET /",
            "GET /due",
            "GET /why",
            "GET /lib/uplot/{file}",
            "GET /css/{file}",
            "GET /js/{file}",
            "GET /{file}",
            "GET /api/v1/{rest}")
        .contains(route);
  }

  @Test
  void aProblemIsAsDocumented() {
    List<String> faults = new ArrayList<>();
    JsonNode schema = document.path("components").path("schemas").path("Problem");
    compare("refused", schema, caller.post("/api/v1/coats", "{}").json(), faults);
    compare("unknown", schema, caller.get("/api/v1/coats/e999").json(), faults);

    assertThat(faults).isEmpty();
  }

  @Test
  void eventsComeAsAnEventStream() throws IOException, InterruptedException {
    HttpResponse<InputStream> answer =
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(URI.create(shop.address() + "/api/v1/events"))
                    .header("Accept", "text/event-stream")
                    .build(),
                HttpResponse.BodyHandlers.ofInputStream());
    try (InputStream stream = answer.body()) {
      assertThat(answer.headers().firstValue("Content-Type").orElse(""))
          .startsWith("text/event-stream");
      assertThat(stream.read()).isGreaterThanOrEqualTo(0);
    }
  }

  /** As much of JSON Schema as the document uses. */
  private static void compare(String where, JsonNode schema, JsonNode value, List<String> faults) {
    if (schema.has("$ref")) {
      compare(where, document.at(schema.path("$ref").asText().substring(1)), value, faults);
      return;
    }
    switch (schema.path("type").asText()) {
      case "object" -> compareObject(where, schema, value, faults);
      case "array" -> {
        if (!value.isArray()) {
          faults.add(where + " should be a list: " + value);
        }
        value.forEach(item -> compare(where + "[]", schema.path("items"), item, faults));
      }
      case "string" -> compareText(where, schema, value, faults);
      case "number" -> expect(value.isNumber(), where + " should be a number: " + value, faults);
      case "integer" ->
          expect(value.isIntegralNumber(), where + " should be whole: " + value, faults);
      case "boolean" -> expect(value.isBoolean(), where + " should be yes or no: " + value, faults);
      default -> faults.add(where + " has no type in the document: " + schema);
    }
  }

  private static void compareObject(
      String where, JsonNode schema, JsonNode value, List<String> faults) {
    expect(value.isObject(), where + " should be an object: " + value, faults);
    schema
        .path("required")
        .forEach(key -> expect(value.has(key.asText()), where + " lacks " + key.asText(), faults));
    value
        .properties()
        .forEach(
            field -> {
              JsonNode known = schema.path("properties").path(field.getKey());
              JsonNode others = schema.path("additionalProperties");
              if (!known.isMissingNode()) {
                compare(where + "." + field.getKey(), known, field.getValue(), faults);
              } else if (others.isObject()) {
                compare(where + "." + field.getKey(), others, field.getValue(), faults);
              } else if (others.isBoolean()) {
                faults.add(where + "." + field.getKey() + " is not in the document");
              }
            });
  }

  private static void compareText(
      String where, JsonNode schema, JsonNode value, List<String> faults) {
    expect(value.isTextual(), where + " should be text: " + value, faults);
    if (schema.has("enum")) {
      boolean listed = false;
      for (JsonNode word : schema.path("enum")) {
        listed |= word.equals(value);
      }
      expect(listed, where + " is none of " + schema.path("enum") + ": " + value, faults);
    }
    try {
      switch (schema.path("format").asText()) {
        case "date-time" -> OffsetDateTime.parse(value.asText());
        case "date" -> LocalDate.parse(value.asText());
        default -> {
          // Any text.
        }
      }
    } catch (DateTimeException wrong) {
      faults.add(where + " should be a " + schema.path("format").asText() + ": " + value);
    }
  }

  private static void expect(boolean right, String fault, List<String> faults) {
    if (!right) {
      faults.add(fault);
    }
  }
}
