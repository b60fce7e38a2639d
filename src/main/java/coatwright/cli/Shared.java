package coatwright.cli;

import coatwright.cli.Hall.Place;
import coatwright.cli.Hall.ShopFacts;
import coatwright.json.Json;
import coatwright.quantity.Reworded;
import coatwright.quantity.UnitSystem;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** The options every command takes, and what they mean for reading and printing. */
final class Shared {
  @Option(
      names = "--config",
      paramLabel = "FILE",
      scope = ScopeType.INHERIT,
      description = "Settings of the shop. Default: config/coatwright.yaml")
  @Nullable Path config;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      scope = ScopeType.INHERIT,
      description = "Folder of the database. Default: data, or what the settings say")
  @Nullable Path data;

  @Option(
      names = "--json",
      scope = ScopeType.INHERIT,
      description = "Print JSON, SI units in the names, for other programs.")
  boolean json;

  @Option(
      names = "--units",
      paramLabel = "us|metric|imperial",
      scope = ScopeType.INHERIT,
      description = "Units to print in. Default: the shop's.")
  @Nullable String units;

  final Hall hall;
  final Clock clock;
  final PrintWriter out;
  private @Nullable ShopFacts facts;

  Shared(Hall hall, Clock clock, PrintWriter out) {
    this.hall = hall;
    this.clock = clock;
    this.out = out;
  }

  /** Where the settings and data are. */
  Place place() {
    return new Place(Optional.ofNullable(config), Optional.ofNullable(data));
  }

  /** The shop's facts, its settings read once. */
  ShopFacts shop() {
    if (facts == null) {
      facts = hall.shop(place());
    }
    return facts;
  }

  /** The units to print in. */
  UnitSystem unitSystem() {
    if (units == null) {
      return shop().units();
    }
    return switch (units.toLowerCase(Locale.ROOT)) {
      case "us" -> UnitSystem.US;
      case "metric" -> UnitSystem.METRIC;
      case "imperial" -> UnitSystem.IMPERIAL;
      default ->
          throw new Stop(
              Stop.BAD_INPUT,
              "units \"%s\": there are us, metric and imperial; write --units metric"
                  .formatted(units));
    };
  }

  /** A sentence of the house in the units to print in. */
  String told(JsonNode sentence) {
    return told(sentence.asText());
  }

  /** A sentence of the house in the units to print in. */
  String told(String sentence) {
    return Reworded.in(unitSystem(), sentence);
  }

  /** The daemon of this shop. */
  DaemonLine daemon() {
    return new DaemonLine(shop().host(), shop().port());
  }

  /** Now, by the clock handed in. */
  OffsetDateTime now() {
    return clock.instant().atOffset(ZoneOffset.UTC);
  }

  /** Prints a line that must be seen at once. */
  void say(String line) {
    out.println(line);
    out.flush();
  }

  /** Prints a record of the contract on one line. */
  void printJson(Object answer) {
    out.println(Json.line(answer));
  }
}
