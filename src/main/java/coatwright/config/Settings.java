package coatwright.config;

import coatwright.film.Finish;
import coatwright.quantity.UnitSystem;
import coatwright.sensors.SourceMapping;
import coatwright.sensors.outdoor.OutdoorMapping;
import coatwright.store.influx.MirrorSettings;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * All that a person set, checked: what each room is given at the start. The defaults stand in the
 * records; {@code config/coatwright.yaml} shows the same ones.
 *
 * @param mirrors copies of what is kept, in other databases
 * @param sources the sensors, in the order of their files
 * @param finishes by name; never empty, and the usual one is among them
 * @param outdoor where an outdoor forecast comes from, if there is one
 */
public record Settings(
    Shop shop,
    List<Room> rooms,
    Map<String, Broker> brokers,
    List<MirrorSettings> mirrors,
    Web web,
    Store store,
    List<SourceMapping> sources,
    Map<String, Finish> finishes,
    Optional<Outdoor> outdoor) {
  public Settings {
    sources = List.copyOf(sources);
    rooms = List.copyOf(rooms);
    brokers = Map.copyOf(brokers);
    mirrors = List.copyOf(mirrors);
    finishes = Map.copyOf(finishes);
  }

  /**
   * The shop.
   *
   * @param name stands in the topics of what goes out
   * @param altitudeM metres above the sea
   * @param usualFinish name of the finish Now speaks of while no jar is open
   * @param clockSetByHand a person answers for the machine's clock; no network sets it
   */
  public record Shop(
      String name,
      ZoneId zone,
      double altitudeM,
      UnitSystem units,
      String usualFinish,
      boolean clockSetByHand) {
    /** What holds where nothing is written. */
    public static final Shop DEFAULT =
        new Shop("shop", ZoneId.systemDefault(), 0, UnitSystem.METRIC, "shellac-pale", false);
  }

  /**
   * A room of the shop.
   *
   * @param volumeM3 m³, where known
   * @param heatingChanged when its heating, or its use, was last changed for good; the usual day
   *     that the forecast rests on begins anew then
   */
  public record Room(String name, OptionalDouble volumeM3, Optional<Instant> heatingChanged) {}

  /**
   * An MQTT broker.
   *
   * @param url where a client finds it
   * @param ca certificate of a private authority, PEM
   * @param clientId the name to go by there; empty = made from the shop's name
   * @param own where it listens, if it is the one inside this program
   */
  public record Broker(
      String url,
      Optional<String> user,
      Optional<Path> passwordFile,
      Optional<Path> ca,
      Optional<String> clientId,
      Optional<Own> own) {
    /** A broker that is a program of its own. */
    public Broker(
        String url,
        Optional<String> user,
        Optional<Path> passwordFile,
        Optional<Path> ca,
        Optional<String> clientId) {
      this(url, user, passwordFile, ca, clientId, Optional.empty());
    }
  }

  /**
   * The address the broker inside this program listens at.
   *
   * @param host an address of this machine; {@code 0.0.0.0} is all of them
   */
  public record Own(String host, int port) {
    /** What holds where nothing is written: this machine only. */
    public static final Own DEFAULT = new Own("127.0.0.1", 1883);

    /** True where only this machine can reach it. */
    public boolean loopback() {
      return host.startsWith("127.") || host.equals("localhost") || host.equals("::1");
    }
  }

  /**
   * An outdoor forecast, by one of file, address and topic.
   *
   * @param every how often a file or an address is looked at
   */
  public record Outdoor(
      Optional<Path> file,
      Optional<URI> url,
      Optional<String> broker,
      Optional<String> topic,
      Duration every,
      OutdoorMapping mapping) {}

  /** Where the pages are served. */
  public record Web(String host, int port) {
    /** What holds where nothing is written: this machine only. */
    public static final Web DEFAULT = new Web("127.0.0.1", 8410);
  }

  /**
   * Where the database lies.
   *
   * @param folder as written, from the folder the program is started in
   */
  public record Store(Path folder) {
    /** What holds where nothing is written. */
    public static final Store DEFAULT = new Store(Path.of("data"));
  }
}
