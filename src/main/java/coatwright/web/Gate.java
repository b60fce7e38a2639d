package coatwright.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Locale;

/**
 * Who may come in, and what every answer says about itself. Names in the {@code Host} header other
 * than ours are turned away (a page elsewhere cannot point its own name at this machine), and a
 * form is taken only from our own pages or from a program.
 */
final class Gate {
  private static final String POLICY =
      "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self';"
          + " object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

  private final WebSettings settings;

  Gate(WebSettings settings) {
    this.settings = settings;
  }

  void addTo(RoutesConfig routes) {
    routes.before(this::admit);
  }

  private void admit(Context ctx) {
    ctx.header("Content-Security-Policy", POLICY);
    ctx.header("X-Content-Type-Options", "nosniff");
    ctx.header("Referrer-Policy", "no-referrer");
    ctx.header("Cross-Origin-Opener-Policy", "same-origin");
    ctx.header("Cross-Origin-Resource-Policy", "same-origin");
    ctx.header("Permissions-Policy", "camera=(), geolocation=(), microphone=()");
    if (ctx.path().startsWith("/api/") || ctx.path().startsWith("/health")) {
      ctx.header("Cache-Control", "no-store");
    }
    String host = ctx.header("Host");
    if (host == null || !settings.answersTo(nameOf(host))) {
      throw refused(
          421, "wrong-host", "this door does not answer to that name; use 127.0.0.1 or localhost");
    }
    String method = ctx.method().name();
    if (!method.equals("GET") && !method.equals("HEAD") && !method.equals("OPTIONS")) {
      admitForm(ctx, host);
    }
  }

  private static void admitForm(Context ctx, String host) {
    String origin = ctx.header("Origin");
    String site = ctx.header("Sec-Fetch-Site");
    boolean ours =
        (origin == null || origin.equals("http://" + host) || origin.equals("https://" + host))
            && (site == null || site.equals("same-origin") || site.equals("none"));
    if (!ours) {
      throw refused(403, "foreign-page", "a form is taken from this shop's own pages only");
    }
    String type = ctx.contentType();
    if (type == null || !mediaType(type).equals("application/json")) {
      throw refused(
          415, "not-json", "a form is sent as application/json; set the Content-Type header so");
    }
  }

  private static String mediaType(String contentType) {
    int parameters = contentType.indexOf(';');
    return (parameters < 0 ? contentType : contentType.substring(0, parameters))
        .strip()
        .toLowerCase(Locale.ROOT);
  }

  /** The host name without its port; an IPv6 address keeps its brackets. */
  static String nameOf(String host) {
    String lower = host.strip().toLowerCase(Locale.ROOT);
    int colon = lower.lastIndexOf(':');
    return colon > lower.lastIndexOf(']') ? lower.substring(0, colon) : lower;
  }

  private static Problem.Thrown refused(int status, String name, String detail) {
    return new Problem.Thrown(Problem.of(status, name, "Not let in", detail));
  }
}
