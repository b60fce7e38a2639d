package coatwright.web;

import coatwright.json.Json;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;

/** A plain program that calls the door. */
final class Caller {
  private final HttpClient client = HttpClient.newHttpClient();
  private final String address;

  Caller(String address) {
    this.address = address;
  }

  record Answer(int status, String type, String body, java.net.http.HttpHeaders headers) {
    JsonNode json() {
      try {
        return Json.mapper().readTree(body);
      } catch (JsonProcessingException e) {
        throw new AssertionError("not JSON: " + body, e);
      }
    }
  }

  Answer get(String path, String... headers) {
    return send(request(path, headers).GET().build());
  }

  Answer post(String path, String body, String... headers) {
    return send(
        request(path, headers)
            .setHeader("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build());
  }

  HttpRequest.Builder request(String path, String... headers) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create(address + path)).timeout(Duration.ofSeconds(20));
    return headers.length == 0 ? request : request.headers(headers);
  }

  Answer send(HttpRequest request) {
    try {
      HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
      return new Answer(
          answer.statusCode(),
          answer.headers().firstValue("Content-Type").orElse(""),
          answer.body(),
          answer.headers());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
