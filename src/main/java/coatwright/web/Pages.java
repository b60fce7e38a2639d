package coatwright.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/**
 * The pages and what they load, out of the program itself: nothing comes from another host. Each
 * file is read once and carries a tag of its content, so a browser asks and is told "unchanged".
 */
final class Pages {
  private static final Pattern PLAIN_NAME =
      Pattern.compile("[A-Za-z0-9_-]+(?:\\.[A-Za-z0-9_-]+)*\\.[a-z0-9]+");
  private static final String CHART_LIBRARY = "META-INF/resources/webjars/uplot/1.6.30/dist/";
  private static final Map<String, String> MEDIA_TYPES =
      Map.of(
          "html", "text/html; charset=utf-8",
          "css", "text/css; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "json", "application/json; charset=utf-8",
          "svg", "image/svg+xml",
          "png", "image/png",
          "webmanifest", "application/manifest+json");

  private final Map<String, Held> held = new ConcurrentHashMap<>();

  /** A file as it is sent; its bytes are never written to. */
  private static final class Held {
    private final byte[] bytes;
    private final String mediaType;
    private final String tag;

    Held(byte[] bytes, String mediaType) {
      this.bytes = bytes;
      this.mediaType = mediaType;
      this.tag = tagOf(bytes);
    }
  }

  void addTo(RoutesConfig routes) {
    routes.get("/", ctx -> serve(ctx, "web/index.html"));
    routes.get("/air", ctx -> serve(ctx, "web/air.html"));
    routes.get("/due", ctx -> serve(ctx, "web/due.html"));
    routes.get("/why", ctx -> serve(ctx, "web/why.html"));
    routes.get("/openapi.json", ctx -> serve(ctx, "coatwright/web/openapi.json"));
    routes.get("/lib/uplot/{file}", ctx -> serveFrom(CHART_LIBRARY, ctx));
    routes.get("/css/{file}", ctx -> serveFrom("web/css/", ctx));
    routes.get("/js/{file}", ctx -> serveFrom("web/js/", ctx));
    routes.get("/{file}", ctx -> serveFrom("web/", ctx));
  }

  /** A file straight in that folder; a name that could lead out of it is no name. */
  private void serveFrom(String folder, Context ctx) {
    String name = ctx.pathParam("file");
    if (!PLAIN_NAME.matcher(name).matches()) {
      throw missing(ctx);
    }
    serve(ctx, folder + name);
  }

  private void serve(Context ctx, String resource) {
    Optional<Held> found = found(resource);
    if (found.isEmpty()) {
      throw missing(ctx);
    }
    Held file = found.get();
    ctx.header("ETag", file.tag);
    ctx.header("Cache-Control", "no-cache");
    ctx.contentType(file.mediaType);
    if (file.tag.equals(ctx.header("If-None-Match"))) {
      ctx.status(304);
    } else {
      ctx.result(file.bytes);
    }
  }

  /** Only what is there is remembered: guessed names must not fill the memory. */
  private Optional<Held> found(String resource) {
    Held before = held.get(resource);
    if (before != null) {
      return Optional.of(before);
    }
    Optional<Held> file = read(resource);
    file.ifPresent(one -> held.put(resource, one));
    return file;
  }

  private static Problem.Thrown missing(Context ctx) {
    return new Problem.Thrown(
        Problem.of(404, "no-page", "No such page", "there is nothing at " + ctx.path()));
  }

  private static Optional<Held> read(String resource) {
    String mediaType = MEDIA_TYPES.get(resource.substring(resource.lastIndexOf('.') + 1));
    if (mediaType == null) {
      return Optional.empty();
    }
    try (InputStream in = Pages.class.getClassLoader().getResourceAsStream(resource)) {
      if (in == null) {
        return Optional.empty();
      }
      return Optional.of(new Held(in.readAllBytes(), mediaType));
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read " + resource + " out of the program", e);
    }
  }

  private static String tagOf(byte[] bytes) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
      return "\"" + HexFormat.of().formatHex(digest, 0, 12) + "\"";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** A plain page for a path nobody knows. */
  static byte[] notFoundPage() {
    return """
    <!doctype html>
    <html lang="en">
    <meta charset="utf-8">
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <title>No such page</title>
    <link rel="stylesheet" href="/css/base.css">
    <main class="lost"><h1>No such page</h1><p><a href="/">Back to Now</a></p></main>
    </html>
    """
        .getBytes(StandardCharsets.UTF_8);
  }
}
