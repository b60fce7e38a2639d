package coatwright.web;

import coatwright.json.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** Listens to the event stream as a browser would. */
final class EventListener implements AutoCloseable {
  record Heard(String event, JsonNode data, long atNs) {}

  private final BlockingQueue<Heard> heard = new LinkedBlockingQueue<>();
  private final BlockingQueue<String> comments = new LinkedBlockingQueue<>();
  private final CountDownLatch ended = new CountDownLatch(1);
  private final InputStream stream;
  private final Thread thread;

  EventListener(String address) throws IOException, InterruptedException {
    HttpResponse<InputStream> answer =
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(URI.create(address + "/api/v1/events"))
                    .header("Accept", "text/event-stream")
                    .build(),
                HttpResponse.BodyHandlers.ofInputStream());
    stream = answer.body();
    thread = new Thread(this::read, "event-listener");
    thread.setDaemon(true);
    thread.start();
  }

  private void read() {
    try (BufferedReader lines =
        new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
      String event = "";
      StringBuilder data = new StringBuilder();
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.startsWith(":")) {
          comments.add(line);
        } else if (line.startsWith("event:")) {
          event = line.substring(6).strip();
        } else if (line.startsWith("data:")) {
          data.append(line.substring(5).strip());
        } else if (line.isEmpty() && data.length() > 0) {
          heard.add(new Heard(event, Json.mapper().readTree(data.toString()), System.nanoTime()));
          data.setLength(0);
        }
      }
    } catch (IOException over) {
      // The stream was cut, which is an end too.
    } finally {
      ended.countDown();
    }
  }

  /** The next event of that name; others before it are passed over. */
  Heard next(String event) throws InterruptedException {
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(10);
    while (true) {
      Heard one = heard.poll(until - System.nanoTime(), TimeUnit.NANOSECONDS);
      if (one == null) {
        throw new AssertionError("no " + event + " event within 10 s");
      }
      if (one.event().equals(event)) {
        return one;
      }
    }
  }

  String nextComment() throws InterruptedException {
    String comment = comments.poll(10, TimeUnit.SECONDS);
    if (comment == null) {
      throw new AssertionError("no comment within 10 s");
    }
    return comment;
  }

  boolean endsWithin(long seconds) throws InterruptedException {
    return ended.await(seconds, TimeUnit.SECONDS);
  }

  @Override
  public void close() throws IOException {
    stream.close();
    thread.interrupt();
  }
}
