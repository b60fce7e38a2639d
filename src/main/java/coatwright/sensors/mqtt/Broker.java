package coatwright.sensors.mqtt;

import java.net.URI;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A broker of the settings.
 *
 * @param name as sources refer to it
 * @param url {@code tcp://host:1883} or {@code ssl://host:8883}
 * @param passwordFile a file holding the password on its first line
 * @param ca PEM file of a private certificate authority
 * @param clientId must be unique at the broker
 */
public record Broker(
    String name,
    URI url,
    Optional<String> user,
    Optional<Path> passwordFile,
    Optional<Path> ca,
    String clientId) {
  private static final String KEPT = "-kept";
  private static final String OUTDOOR = "-outdoor";
  private static final int LONGEST_ID = 64;

  public Broker {
    String scheme = String.valueOf(url.getScheme());
    if (!(scheme.equals("tcp") || scheme.equals("ssl"))
        || url.getHost() == null
        || url.getPort() < 1) {
      throw new IllegalArgumentException(
          "broker " + name + ": " + url + " must look like tcp://host:1883 or ssl://host:8883");
    }
    int longest = LONGEST_ID + OUTDOOR.length();
    if (clientId.isBlank() || clientId.length() > longest) {
      throw new IllegalArgumentException(
          "broker %s: a client id has 1 to %d characters, this has %d"
              .formatted(name, LONGEST_ID, clientId.length()));
    }
  }

  /** A broker without user, password or private authority. */
  public static Broker open(String name, URI url, String clientId) {
    return new Broker(name, url, Optional.empty(), Optional.empty(), Optional.empty(), clientId);
  }

  /** The same under a name of its own, for the session the broker keeps. */
  public Broker forKeptSession() {
    return new Broker(name, url, user, passwordFile, ca, clientId + KEPT);
  }

  /** The same under a name of its own: two clients with one name throw each other out. */
  public Broker forOutdoorForecast() {
    return new Broker(
        name + " (outdoor forecast)", url, user, passwordFile, ca, clientId + OUTDOOR);
  }
}
