package coatwright.web;

import coatwright.journal.NotKept;
import coatwright.quantity.RefusedInput;
import coatwright.watch.Warning;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.sse.SseHandler;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.UriCompliance;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The web door: pages, routes, events, health. Start it once every room stands; close it before
 * them, so that nobody asks a room that is gone. Safe to call from any thread.
 */
public final class WebServer implements AutoCloseable {
  static final String API = "/api/v1";

  private static final int MOST_THREADS = 24;
  private static final String EVENT_STREAM = "text/event-stream";
  private static final Logger LOG = LoggerFactory.getLogger(WebServer.class);

  private final WebSettings settings;
  private final Events events;
  private final Teller teller;
  private final ShopJson json;
  private final Javalin javalin;

  /** A door to those rooms; it opens at {@link #start}. */
  public WebServer(WebRooms rooms, WebSettings settings) {
    this.settings = settings;
    json = new ShopJson(rooms.zone());
    events = new Events(settings.heartbeat());
    Board board = new Board(rooms);
    teller = new Teller(rooms, board, events, json);
    javalin =
        Javalin.create(
            config -> {
              plain(config);
              new Gate(settings).addTo(config.routes);
              new Vitals(rooms, events, json).addTo(config.routes);
              new Reads(rooms, board, json).addTo(config.routes);
              new Writes(rooms, json).addTo(config.routes);
              config.routes.before(
                  API + "/events",
                  ctx -> {
                    takesTheStream(ctx);
                    roomForOneMore();
                  });
              config.routes.sse(API + "/events", new SseHandler(0, events::take));
              config.routes.get(API + "/<rest>", WebServer::noSuchRoute);
              new Pages().addTo(config.routes);
              troubles(config.routes);
            });
  }

  private static void plain(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.generateEtags = false;
    config.http.prefer405over404 = true;
    config.http.maxRequestSize = Writes.LONGEST_BODY_BYTES;
    QueuedThreadPool threads = new QueuedThreadPool(MOST_THREADS, 2);
    threads.setName("web");
    threads.setDaemon(true);
    config.jetty.threadPool = threads;
    // A part's name carries its slash as %2F.
    config.jetty.modifyHttpConfiguration(
        http -> {
          http.setUriCompliance(
              UriCompliance.DEFAULT.with(
                  "parts", UriCompliance.Violation.AMBIGUOUS_PATH_SEPARATOR));
          http.setSendServerVersion(false);
          http.addCustomizer(WebServer::streamForWhoeverTakesIt);
        });
    config.jetty.modifyServletContextHandler(
        context -> context.getServletHandler().setDecodeAmbiguousURIs(true));
  }

  /** Who names no form, or any, takes the stream; the handler itself asks for the exact word. */
  private static Request streamForWhoeverTakesIt(Request request, HttpFields.Mutable answer) {
    String accept = request.getHeaders().get(HttpHeader.ACCEPT);
    boolean any = accept == null || accept.contains("*/*") || accept.contains("text/*");
    if (!any || !request.getHttpURI().getPath().equals(API + "/events")) {
      return request;
    }
    HttpFields headers =
        HttpFields.build(request.getHeaders()).put(HttpHeader.ACCEPT, EVENT_STREAM).asImmutable();
    return new Request.Wrapper(request) {
      @Override
      public HttpFields getHeaders() {
        return headers;
      }
    };
  }

  private static void takesTheStream(Context ctx) {
    String accept = ctx.header("Accept");
    if (accept == null || !accept.contains(EVENT_STREAM)) {
      throw new Problem.Thrown(
          Problem.of(
              406,
              "stream-only",
              "Only a stream",
              "this is " + EVENT_STREAM + "; ask with that in Accept, or with none"));
    }
  }

  private void roomForOneMore() {
    if (!events.hasRoom()) {
      throw new Problem.Thrown(
          Problem.of(
              503,
              "too-many-listeners",
              "Too many pages open",
              Events.MOST_LISTENERS + " pages listen already; close one and load this one again"));
    }
  }

  private static void noSuchRoute(Context ctx) {
    throw new Problem.Thrown(
        Problem.of(
            404,
            "no-route",
            "No such route",
            "there is nothing at " + ctx.path() + "; /openapi.json lists every route"));
  }

  private void troubles(RoutesConfig routes) {
    routes.exception(RefusedInput.class, (refusal, ctx) -> write(ctx, Problem.refused(refusal)));
    routes.exception(Unknown.class, (unknown, ctx) -> write(ctx, Problem.unknown(unknown)));
    routes.exception(Problem.Thrown.class, (thrown, ctx) -> write(ctx, thrown.problem()));
    routes.exception(
        NotKept.class,
        (full, ctx) -> {
          LOG.error("{} {} was not kept", ctx.method(), ctx.path(), full);
          String why = full.getMessage() == null ? "it could not be written" : full.getMessage();
          write(ctx, Problem.of(503, "not-kept", "Not written down", why));
        });
    routes.exception(
        HttpResponseException.class,
        (thrown, ctx) ->
            write(
                ctx,
                Problem.of(
                    thrown.getStatus(),
                    "http",
                    "Not done",
                    thrown.getMessage() == null ? "not done" : thrown.getMessage())));
    routes.exception(
        Exception.class,
        (failure, ctx) -> {
          LOG.error("{} {} failed", ctx.method(), ctx.path(), failure);
          write(
              ctx,
              Problem.of(
                  500,
                  "internal",
                  "It failed here",
                  "this is a fault of the program, not of what was sent; its log says more"));
        });
  }

  private void write(Context ctx, Problem problem) {
    String accept = ctx.header("Accept");
    boolean page = accept != null && accept.contains("text/html") && !ctx.path().startsWith(API);
    if (problem.status() == 404 && page) {
      ctx.status(404).contentType("text/html; charset=utf-8").result(Pages.notFoundPage());
    } else {
      ctx.status(problem.status())
          .contentType(Problem.MEDIA_TYPE + "; charset=utf-8")
          .result(json.line(problem));
    }
  }

  /** Opens the door. Throws {@link WebException} when the port cannot be had. */
  public void start() {
    try {
      javalin.start(settings.host(), settings.port());
    } catch (RuntimeException e) {
      close();
      throw new WebException(
          "cannot listen on "
              + settings.host()
              + ":"
              + settings.port()
              + "; is another Coatwright running, or is web.port taken?",
          e);
    }
    events.start();
    teller.listen();
  }

  /** The port it listens on, once started. */
  public int port() {
    return javalin.port();
  }

  /** Every route, as {@code GET /api/v1/now}. */
  Set<String> routes() {
    return javalin.unsafe.internalRouter.allHttpHandlers().stream()
        .map(parsed -> parsed.endpoint.method.name() + " " + parsed.endpoint.path)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Tells every open page of a warning that began or ended. */
  public void tell(Warning warning) {
    teller.tell(warning);
  }

  /** Closes the door: first nobody tells, then the streams end, then the server stops. */
  @Override
  public void close() {
    teller.close();
    events.close();
    javalin.stop();
  }
}
