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
  public Broker {
    String scheme = String.valueOf(url.getScheme());
    if (!(scheme.equals("tcp") || scheme.equals("ssl"))
        || url.getHost() == null
        || url.getPort() < 1) {
      throw new IllegalArgumentException(
          "broker " + name + ": " + url + " must look like tcp://host:1883 or ssl://host:8883");
    }
    if (clientId.isBlank() || clientId.length() > 64) {
      throw new IllegalArgumentException(
          "broker " + name + ": a client id has 1 to 64 characters, this has " + clientId.length());
    }
  }

  /** A broker without user, password or private authority. */
  public static Broker open(String name, URI url, String clientId) {
    return new Broker(name, url, Optional.empty(), Optional.empty(), Optional.empty(), clientId);
  }
}
