package coatwright.store.influx;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.json.Json;
import coatwright.sensors.Eventually;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A real time-series server in a process of its own, in a folder and on ports of its own, which can
 * be killed and brought back.
 */
public abstract class TestServer implements AutoCloseable {
  private static final Duration START = Duration.ofSeconds(30);

  /** InfluxDB 1.6 behind nginx, which gives it the address for writing of the newer versions. */
  public static final class Influx extends TestServer {
    private final int behind = freePort();
    private final Path config;
    private final Process nginx;

    public Influx(Path folder) {
      super(folder);
      this.config =
          written(
              "influxdb.conf",
              """
              reporting-disabled = true
              bind-address = "127.0.0.1:%d"
              [meta]
                dir = "%s/meta"
              [data]
                dir = "%s/data"
                wal-dir = "%s/wal"
              [http]
                bind-address = "127.0.0.1:%d"
                log-enabled = false
              """
                  .formatted(freePort(), folder, folder, folder, behind));
      Path front =
          written(
              "nginx.conf",
              """
              daemon off;
              master_process off;
              pid %1$s/nginx.pid;
              events {}
              http {
                access_log off;
                client_max_body_size 20m;
                client_body_temp_path %1$s/body;
                proxy_temp_path %1$s/proxy;
                fastcgi_temp_path %1$s/fastcgi;
                uwsgi_temp_path %1$s/uwsgi;
                scgi_temp_path %1$s/scgi;
                server {
                  listen 127.0.0.1:%2$d;
                  location /api/v2/write {
                    set $args db=$arg_bucket&precision=$arg_precision;
                    rewrite ^ /write break;
                    proxy_pass http://127.0.0.1:%3$d;
                  }
                  location / {
                    proxy_pass http://127.0.0.1:%3$d;
                  }
                }
              }
              """
                  .formatted(folder, port(), behind));
      this.nginx =
          run(List.of(found("nginx"), "-c", front.toString(), "-e", folder + "/nginx.log"));
      start();
    }

    @Override
    List<String> command() {
      return List.of(found("influxd"), "run", "-config", config.toString());
    }

    @Override
    boolean answers() {
      return status(url() + "/ping") == 204;
    }

    public void createDatabase(String name) {
      influxql("", "CREATE DATABASE " + name);
    }

    JsonNode influxql(String database, String query) {
      return asked("/query?db=%s&q=%s".formatted(encoded(database), encoded(query)));
    }

    /** The number a query answers with, in its first column after the time. */
    public long number(String database, String query) {
      return influxql(database, query)
          .path("results")
          .path(0)
          .path("series")
          .path(0)
          .path("values")
          .path(0)
          .path(1)
          .asLong();
    }

    @Override
    public void close() {
      super.close();
      kill(nginx);
    }
  }

  /** VictoriaMetrics, which takes lines by the newer address and answers PromQL. */
  static final class Victoria extends TestServer {
    private final String retention;

    Victoria(Path folder, String retention) {
      super(folder);
      this.retention = retention;
      start();
    }

    @Override
    List<String> command() {
      return List.of(
          found("victoria-metrics"),
          "-storageDataPath=" + folder().resolve("storage"),
          "-httpListenAddr=127.0.0.1:" + port(),
          "-retentionPeriod=" + retention,
          "-dedup.minScrapeInterval=1ms",
          "-memory.allowedBytes=100MB",
          "-loggerLevel=ERROR");
    }

    @Override
    boolean answers() {
      return status(url() + "/health") == 200;
    }

    JsonNode promql(String query, long atS) {
      return asked("/api/v1/query?nocache=1&time=%d&query=%s".formatted(atS, encoded(query)));
    }

    /** The one number a query answers with, 0 where there is none. */
    long number(String query, long atS) {
      JsonNode result = promql(query, atS).path("data").path("result");
      return Math.round(result.path(0).path("value").path(1).asDouble());
    }

    /** Makes what was just taken visible to queries. */
    void settle() {
      status(url() + "/internal/force_flush");
    }
  }

  private static final HttpClient HTTP = HttpClient.newHttpClient();

  private final Path folder;
  private final int port = freePort();
  private Process process;

  TestServer(Path folder) {
    this.folder = folder;
  }

  abstract List<String> command();

  abstract boolean answers();

  Path folder() {
    return folder;
  }

  int port() {
    return port;
  }

  public String url() {
    return "http://127.0.0.1:" + port;
  }

  public final void start() {
    process = run(command());
    Eventually.within(START, "the server answers", this::answers);
  }

  /** As a power cut would: no time to say goodbye. */
  public final void kill() {
    kill(process);
  }

  static void kill(Process process) {
    process.destroyForcibly();
    try {
      assertThat(process.waitFor(20, TimeUnit.SECONDS)).as("killed").isTrue();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  final Process run(List<String> command) {
    try {
      return new ProcessBuilder(command)
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.appendTo(folder.resolve("server.log").toFile()))
          .start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  final Path written(String name, String text) {
    try {
      return Files.writeString(folder.resolve(name), text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Sends lines as anybody would. */
  final int write(String bucket, String lines) {
    String path = "/api/v2/write?org=-&precision=ms&bucket=" + encoded(bucket);
    return answer(
            HttpRequest.newBuilder(URI.create(url() + path))
                .POST(BodyPublishers.ofString(lines))
                .build())
        .statusCode();
  }

  final JsonNode asked(String path) {
    try {
      return Json.mapper()
          .readTree(answer(HttpRequest.newBuilder(URI.create(url() + path)).build()).body());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static int status(String url) {
    try {
      return HTTP.send(
              HttpRequest.newBuilder(URI.create(url)).timeout(Duration.ofSeconds(5)).build(),
              BodyHandlers.discarding())
          .statusCode();
    } catch (IOException away) {
      return 0;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return 0;
    }
  }

  private static HttpResponse<String> answer(HttpRequest request) {
    try {
      return HTTP.send(request, BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private static String found(String program) {
    Path beside = Path.of("/usr/sbin", program);
    return Files.isExecutable(beside) ? beside.toString() : program;
  }

  public static int freePort() {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    kill();
  }
}
