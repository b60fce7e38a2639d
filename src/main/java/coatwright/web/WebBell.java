package coatwright.web;

import coatwright.watch.Bell;
import coatwright.watch.Warning;

/** Carries warnings to every open page, as they begin and as they end. */
public final class WebBell implements Bell {
  private final WebServer server;

  /** A bell heard on that server's pages. */
  public WebBell(WebServer server) {
    this.server = server;
  }

  @Override
  public void ring(Warning warning) {
    server.tell(warning);
  }

  @Override
  public void end(Warning warning) {
    server.tell(warning);
  }
}
