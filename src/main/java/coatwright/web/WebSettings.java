package coatwright.web;

import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Where the door stands.
 *
 * <p>It opens on the machine itself only. There is no passcode here, so an address other machines
 * can reach is refused; a reverse proxy that asks for one may stand in front, and the name it is
 * reached by then belongs in {@code hostNames}.
 *
 * @param host address listened on: a loopback address
 * @param port TCP port; 0 takes any free one
 * @param hostNames further names browsers may reach it by, besides the loopback ones; lower case
 * @param heartbeat how often a silent event stream shows it is alive, 1 s to 60 s
 */
public record WebSettings(String host, int port, Set<String> hostNames, Duration heartbeat) {
  private static final Set<String> LOOPBACK = Set.of("127.0.0.1", "localhost", "::1", "[::1]");
  private static final Duration SHORTEST_HEARTBEAT = Duration.ofSeconds(1);
  private static final Duration LONGEST_HEARTBEAT = Duration.ofSeconds(60);

  public WebSettings {
    List<Fault> faults = new ArrayList<>();
    if (!LOOPBACK.contains(host)) {
      faults.add(
          Fault.of(
              "web.host \"" + host + "\"",
              "the pages have no passcode yet, so they open on this machine only",
              "write 127.0.0.1, and put a proxy that asks for a passcode in front for the shop's"
                  + " network"));
    }
    if (port < 0 || port > 65_535) {
      faults.add(
          Fault.of(
              "web.port " + port, "a port is 0 to 65535", "write one such as 8410; 0 takes any"));
    }
    if (heartbeat.compareTo(SHORTEST_HEARTBEAT) < 0 || heartbeat.compareTo(LONGEST_HEARTBEAT) > 0) {
      faults.add(
          Fault.of(
              "web.heartbeat " + heartbeat.toMillis() + " ms",
              "a heartbeat is 1 s to 60 s",
              "write one such as 10s"));
    }
    for (String name : hostNames) {
      if (!name.equals(name.toLowerCase(Locale.ROOT)) || name.isBlank()) {
        faults.add(
            Fault.of(
                "web.hostNames \"" + name + "\"",
                "a host name is written in lower case",
                "write it without capitals and without http://"));
      }
    }
    if (!faults.isEmpty()) {
      throw new RefusedInput(faults);
    }
    hostNames = Set.copyOf(hostNames);
  }

  /** On this machine only, at that port. */
  public static WebSettings loopback(int port) {
    return new WebSettings("127.0.0.1", port, Set.of(), Duration.ofSeconds(10));
  }

  /** Whether a browser may call this door by that name (without its port). */
  boolean answersTo(String name) {
    return LOOPBACK.contains(name) || hostNames.contains(name);
  }
}
