package coatwright.config;

import coatwright.config.Settings.Broker;
import coatwright.config.Settings.Own;
import coatwright.config.Settings.Room;
import coatwright.config.Settings.Shop;
import coatwright.config.Settings.Store;
import coatwright.config.Settings.Web;
import coatwright.film.Finish;
import coatwright.quantity.Quantities;
import coatwright.quantity.UnitSystem;
import coatwright.sensors.SourceMapping;
import coatwright.store.influx.MirrorSettings;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Collectors;

/** Reads {@code coatwright.yaml} key by key. */
final class SettingsReader {

  /** There is no passcode yet, so the pages open on this machine only. */
  private static final List<String> LOOPBACK = List.of("127.0.0.1", "localhost", "::1");

  private static final List<String> CLOCKS = List.of("network", "by-hand");

  /** The url of the broker inside this program. */
  private static final String IN_PROCESS = "in-process";

  private static final List<String> UNITS = List.of("us", "metric", "imperial");

  private final Section root;
  private final Path beside;

  /**
   * @param beside the folder the file lies in
   */
  SettingsReader(Section root, Path beside) {
    this.root = root;
    this.beside = beside;
  }

  /** A folder given from the file's own, such as {@code finishes}, under a key of that name. */
  Path folder(String key) {
    return beside.resolve(root.text(key, key)).normalize();
  }

  /**
   * Everything; faults are in the list.
   *
   * @param sources reads the sensors' files, given the names of the rooms and of the brokers
   */
  Settings settings(
      Map<String, Finish> finishes,
      BiFunction<Set<String>, Set<String>, List<SourceMapping>> sources) {
    Shop shop = shop(root.section("shop"), finishes);
    List<Room> rooms = rooms(shop.zone());
    Map<String, Broker> brokers = brokers(root.section("brokers"));
    List<MirrorSettings> mirrors = MirrorsReader.mirrors(root.section("mirrors"), beside);
    Web web = web(root.section("web"));
    Store store = store(root.section("store"));
    Optional<Settings.Outdoor> outdoor =
        new OutdoorForecastReader(root.section("outdoor-forecast"), beside, brokers.keySet())
            .read();
    root.refuseOthers();
    Set<String> roomNames = rooms.stream().map(Room::name).collect(Collectors.toSet());
    return new Settings(
        shop,
        rooms,
        brokers,
        mirrors,
        web,
        store,
        sources.apply(roomNames, brokers.keySet()),
        finishes,
        outdoor);
  }

  private Shop shop(Section section, Map<String, Finish> finishes) {
    String name = section.text("name", Shop.DEFAULT.name());
    if (name.matches(".*[/+#].*") || name.isBlank()) {
      section.fault(
          "name", "it stands in MQTT topics, where / + # mean something", "leave them out");
    }
    String usualFinish = section.text("usual-finish", Shop.DEFAULT.usualFinish());
    if (!finishes.containsKey(usualFinish)) {
      String known = String.join(", ", finishes.keySet());
      section.fault("usual-finish", "no such finish", "choose one of: " + known);
    }
    Shop shop =
        new Shop(
            name,
            zone(section),
            section.quantity("altitude", Shop.DEFAULT.altitudeM(), SettingsReader::altitudeM),
            units(section),
            usualFinish,
            section.choice("clock", "network", CLOCKS).equals("by-hand"));
    section.refuseOthers();
    return shop;
  }

  private static double altitudeM(String what, String text) {
    return Quantities.altitudeM(what, text);
  }

  private static UnitSystem units(Section section) {
    String word = Shop.DEFAULT.units().name().toLowerCase(Locale.ROOT);
    return UnitSystem.valueOf(section.choice("units", word, UNITS).toUpperCase(Locale.ROOT));
  }

  private static ZoneId zone(Section section) {
    String name = section.text("zone", "system");
    try {
      return name.equals("system") ? ZoneId.systemDefault() : ZoneId.of(name);
    } catch (DateTimeException unknown) {
      String remedy =
          YamlText.nearest(name, ZoneId.getAvailableZoneIds())
              .map(near -> "did you mean " + near + "?")
              .orElse("write it like Europe/Lisbon");
      section.fault("zone", "no such time zone", remedy);
      return ZoneId.systemDefault();
    }
  }

  private List<Room> rooms(ZoneId zone) {
    List<Room> rooms = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (Section section : root.sections("rooms")) {
      String name = section.needed("name", "name: finishing room");
      if (name.matches(".*[/+#].*")) {
        section.fault(
            "name",
            "it stands in topics and addresses, where / + # mean something",
            "leave them out");
      }
      if (!name.isEmpty() && !names.add(name)) {
        section.fault("name", "two rooms have this name", "rename one of them");
      }
      OptionalDouble volumeM3 = section.optionalQuantity("volume", Quantities::roomVolumeM3);
      Optional<Instant> heatingChanged =
          section.optional("heating-changed").flatMap(text -> time(section, text, zone));
      section.refuseOthers();
      rooms.add(new Room(name, volumeM3, heatingChanged));
    }
    if (rooms.isEmpty()) {
      root.fault("rooms", "at least one room is needed", "write - name: finishing room below it");
    }
    return rooms;
  }

  private static Optional<Instant> time(Section section, String text, ZoneId zone) {
    try {
      return Optional.of(LocalDateTime.parse(text).atZone(zone).toInstant());
    } catch (DateTimeException unreadable) {
      section.fault(
          "heating-changed",
          "a date and a time of day is expected",
          "write it like 2026-11-02T08:00");
      return Optional.empty();
    }
  }

  private Map<String, Broker> brokers(Section section) {
    Map<String, Broker> brokers = new LinkedHashMap<>();
    for (String name : Set.copyOf(section.names())) {
      brokers.put(name, broker(section.section(name)));
    }
    return brokers;
  }

  private Broker broker(Section section) {
    String url = section.needed("url", "url: tcp://127.0.0.1:1883");
    boolean inside = url.equals(IN_PROCESS);
    if (!url.isEmpty() && !inside && !url.matches("(tcp|ssl)://[^/\\s:]+:\\d{1,5}")) {
      section.fault(
          "url",
          "tcp://HOST:PORT, ssl://HOST:PORT or in-process is expected",
          "write it like tcp://127.0.0.1:1883");
    }
    Optional<String> user = section.optional("user");
    Optional<Path> passwordFile = section.optional("password-file").map(beside::resolve);
    if (passwordFile.isPresent() && user.isEmpty()) {
      section.fault("password-file", "a password goes with a name", "give user as well");
    }
    Optional<Path> ca = section.optional("ca").map(beside::resolve);
    Optional<Own> own =
        inside
            ? Optional.of(own(section, user.isPresent() && passwordFile.isPresent()))
            : notOwn(section);
    Broker broker =
        new Broker(
            own.map(SettingsReader::urlOf).orElse(url),
            user,
            passwordFile,
            ca,
            section.optional("client-id"),
            own);
    section.refuseOthers();
    return broker;
  }

  /** Off this machine it wants a password: whoever may send readings may clear a warning. */
  private static Own own(Section section, boolean locked) {
    Own own =
        new Own(
            section.optional("host").orElse(Own.DEFAULT.host()),
            section.optional("port").isPresent()
                ? section.whole("port", Own.DEFAULT.port(), 1, 65_535)
                : Own.DEFAULT.port());
    if (!own.host().matches("[0-9a-fA-F:.]+|localhost")) {
      section.fault(
          "host", "an address of this machine is expected", "write 127.0.0.1, or 0.0.0.0 for all");
    }
    if (!own.loopback() && !locked) {
      section.fault(
          "host",
          "others than this machine could send readings without a password",
          "give user and password-file, or write 127.0.0.1");
    }
    if (section.has("ca")) {
      section.fault("ca", "the broker inside this program has no certificate", "take it out");
    }
    return own;
  }

  private static Optional<Own> notOwn(Section section) {
    for (String key : List.of("host", "port")) {
      if (section.optional(key).isPresent()) {
        section.fault(key, "goes with url: in-process only", "write host and port into the url");
      }
    }
    return Optional.empty();
  }

  private static String urlOf(Own own) {
    boolean all = own.host().equals("0.0.0.0") || own.host().equals("::");
    String host = all ? Own.DEFAULT.host() : own.host();
    return "tcp://%s:%d".formatted(host.contains(":") ? "[" + host + "]" : host, own.port());
  }

  private static Web web(Section section) {
    Web web =
        new Web(
            section.choice("host", Web.DEFAULT.host(), LOOPBACK),
            section.whole("port", Web.DEFAULT.port(), 1, 65_535));
    section.refuseOthers();
    return web;
  }

  private static Store store(Section section) {
    Store store = new Store(Path.of(section.text("folder", Store.DEFAULT.folder().toString())));
    section.refuseOthers();
    return store;
  }
}
