package coatwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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
          "/api/v1/rooms/{room}", "/api/v1/rooms/finishing%20room",
          "/api/v1/rooms/{room}/readings",
              "/api/v1/rooms/finishing%20room/readings?to=2026-07-14T21:00",
          "/api/v1/rooms/{room}/forecast", "/api/v1/rooms/finishing%20room/forecast",
          "/api/v1/parts/{part}", "/api/v1/parts/wall%20cabinet%2Fleft%20door",
          "/api/v1/coats/{coat}", "/api/v1/coats/e8",
          "/api/v1/why/{coat}", "/api/v1/why/e8",
          "/api/v1/calibrations/{source}/readings", "/api/v1/calibrations/wall/readings");
  private static final Map<String, String> FORMS =
      Map.of(
          "/api/v1/pieces", "{\"name\": \"chest\"}",
          "/api/v1/parts", "{\"part\": \"chest/lid\"}",
          "/api/v1/jars", "{\"name\": \"amber\", \"finish\": \"shellac-pale\"}",
          "/api/v1/coats", "{\"part\": \"wall cabinet/carcase,stools/first\", \"jar\": \"pale-2\"}",
          "/api/v1/notes", "{\"part\": \"stools/first\", \"what\": \"clouded=3\"}",
          "/api/v1/strikes", "{\"entry\": \"e2\", \"reason\": \"written twice\"}",
          "/api/v1/calibrations",
              "{\"source\": \"wall\", \"salt\": \"NaCl=73.2%\", \"temp\": \"21.4C\","
                  + " \"settled\": \"yes\"}",
          "/api/v1/outlook", "{\"finish\": \"shellac-pale\", \"air\": \"20C,50%\"}");

  private static WebFixture shop;
  private static Caller caller;
  private static JsonNode document;
  private static Shape shape;

  @BeforeAll
  static void openTheDoor() {
    shop = new WebFixture();
    shop.mirrors =
        List.of(
            new MirrorView(
                "house",
                false,
                "behind",
                3,
                2,
                1,
                Optional.of(shop.clock.instant()),
                Optional.of(shop.clock.instant())));
    caller = new Caller(shop.address());
    document = caller.get("/openapi.json").json();
    shape = new Shape(document);
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
      faults.addAll(shape.faults(where, schema, answer.json()));
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
            "GET /air",
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
    faults.addAll(shape.faults("refused", schema, caller.post("/api/v1/coats", "{}").json()));
    faults.addAll(shape.faults("unknown", schema, caller.get("/api/v1/coats/e999").json()));

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
}
