package coatwright.cli;

import coatwright.air.Airing;
import coatwright.air.MoistAir;
import coatwright.air.StandardAtmosphere;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import coatwright.wood.EquilibriumMoisture;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says what an air is: its dew point, and where wood would settle in it. */
@Command(
    name = "air",
    description = {
      "What an air holds: dew point, wet bulb, water, and where wood settles in it; what the door"
          + " or",
      "a heater without a flue would do to it. With --room: a room of the shop, as it is now."
    },
    footer = {
      "",
      "Example: coatwright air --temp 25C --rh 50%%",
      "         coatwright air --temp 18C --rh 60%% --outside 5C,85%% --volume 60m3 --fuel"
          + " propane=200g",
      "         coatwright air --room \"finishing room\""
    })
final class AirCommand implements Callable<Integer> {
  @Option(names = "--temp", paramLabel = "T", description = "Air: 25C or 77F.")
  @Nullable String temp;

  @Option(
      names = "--rh",
      paramLabel = "H",
      description = "Relative humidity over liquid water, as a hygrometer reads it: 50%%.")
  @Nullable String rh;

  @Option(names = "--room", paramLabel = "R", description = "Or a room of the shop: bench room.")
  @Nullable String room;

  @Option(
      names = "--outside",
      paramLabel = "T,H",
      description = "The air outside: would opening the door dry the room? 5C,85%%.")
  @Nullable String outside;

  @Option(
      names = "--volume",
      paramLabel = "V",
      description = "Of the room, for --fuel: 60m3, 2000ft3.")
  @Nullable String volume;

  @Option(
      names = "--fuel",
      paramLabel = "F=W",
      description = "Burnt in it without a flue: methane|propane|butane|kerosene=200g.")
  @Nullable String fuel;

  @Option(names = "--pressure", paramLabel = "P", description = "Air pressure: 1013hPa, 29.92inHg.")
  @Nullable String pressure;

  @Option(
      names = "--altitude",
      paramLabel = "M",
      description = "Or the height above the sea: 50m. Without either: sea level.")
  @Nullable String altitude;

  @Mixin Help help = new Help();
  private final Shared shared;

  AirCommand(Shared shared) {
    this.shared = shared;
  }

  /** The air's answer; the component names are the contract's JSON keys. */
  record Answer(
      double airTempC,
      double rhPct,
      double pressurePa,
      double dewPointC,
      double wetBulbC,
      OptionalDouble frostPointC,
      double vapourPressurePa,
      double humidityRatio,
      double absoluteHumidityGm3,
      double enthalpyKjKg,
      double densityKgm3,
      OptionalDouble woodMoisturePct,
      Optional<DoorAnswer> outside,
      Optional<FuelAnswer> fuel) {
    static Answer of(MoistAir air, Optional<DoorAnswer> outside, Optional<FuelAnswer> fuel) {
      return new Answer(
          air.airTempC(),
          air.rhPct(),
          air.pressurePa(),
          air.dewPointC(),
          air.wetBulbC(),
          air.frostPointC(),
          air.vapourPressurePa(),
          air.humidityRatio(),
          air.absoluteHumidityGm3(),
          air.enthalpyKjKg(),
          air.densityKgm3(),
          EquilibriumMoisture.ofAir(air),
          outside,
          fuel);
    }
  }

  /**
   * What opening the door does.
   *
   * @param door {@code dries}, {@code wets} or {@code hardly}
   * @param rhOnceInsidePct what outside air reads once it is as warm as the room; above 100 it
   *     sheds water
   */
  record DoorAnswer(
      double airTempC, double rhPct, double dewPointC, String door, double rhOnceInsidePct) {
    static DoorAnswer of(MoistAir inside, MoistAir outside) {
      return new DoorAnswer(
          outside.airTempC(),
          outside.rhPct(),
          outside.dewPointC(),
          Airing.door(inside, outside, 0).toString(),
          Airing.rhOnceInsidePct(inside, outside));
    }
  }

  /**
   * What burning without a flue does, in a room that is not aired.
   *
   * @param dewPointAfterC the room's dew point then
   */
  record FuelAnswer(String fuel, double fuelKg, double waterKg, double dewPointAfterC) {}

  @Override
  public Integer call() {
    if (room != null) {
      return ofRoom(room);
    }
    if (temp == null || rh == null) {
      throw new Stop(
          Stop.BAD_INPUT,
          "missing: %s; see coatwright air --help".formatted(temp == null ? "--temp" : "--rh"));
    }
    double tempC = Quantities.temperatureC("--temp", temp);
    double rhPct = Quantities.relativeHumidityPct("--rh", rh);
    MoistAir air = new MoistAir(tempC, rhPct, pressurePa());
    Optional<DoorAnswer> door =
        Optional.ofNullable(outside).map(text -> DoorAnswer.of(air, outsideAir(text)));
    Answer answer = Answer.of(air, door, burnt(air));
    if (shared.json) {
      shared.printJson(answer);
    } else {
      print(answer, shared.unitSystem());
    }
    return 0;
  }

  private static MoistAir outsideAir(String text) {
    String[] two = text.split(",", -1);
    if (two.length != 2) {
      throw RefusedInput.of(
          "--outside \"" + text + "\"",
          "it is two quantities with a comma between",
          "write it like 5C,85%");
    }
    return MoistAir.of(
        Quantities.temperatureC("--outside", two[0]),
        Quantities.relativeHumidityPct("--outside", two[1]));
  }

  private Optional<FuelAnswer> burnt(MoistAir air) {
    if (fuel == null) {
      return Optional.empty();
    }
    String[] two = fuel.split("=", 2);
    Optional<Airing.Fuel> known =
        Arrays.stream(Airing.Fuel.values())
            .filter(each -> each.toString().equalsIgnoreCase(two[0].strip()))
            .findFirst();
    if (known.isEmpty() || two.length != 2 || volume == null) {
      throw RefusedInput.of(
          "--fuel \"" + fuel + "\"",
          known.isEmpty()
              ? "this fuel is not known here"
              : "it needs its weight and the room's --volume",
          "write it like --fuel propane=200g --volume 60m3; there are methane, propane, butane,"
              + " kerosene");
    }
    double kg = Quantities.massG("--fuel", two[1]) / 1000;
    double m3 = Quantities.roomVolumeM3("--volume", volume);
    return Optional.of(
        new FuelAnswer(
            known.get().toString(),
            kg,
            kg * known.get().waterKgPerKg(),
            Airing.dewPointAfterBurningC(air, m3, known.get(), kg)));
  }

  /** A room of the shop as its daemon tells it. */
  private int ofRoom(String name) {
    if (temp != null || rh != null || outside != null || fuel != null) {
      throw new Stop(
          Stop.BAD_INPUT, "--room tells its own air; leave --temp, --rh, --outside and --fuel out");
    }
    JsonNode sheet = shared.daemon().get("rooms/" + DaemonLine.step(name));
    if (shared.json) {
      shared.printJson(sheet);
    } else {
      new RoomText(shared).print(sheet);
    }
    return sheet.has("air") ? 0 : 1;
  }

  private double pressurePa() {
    if (pressure != null && altitude != null) {
      throw RefusedInput.of(
          "--pressure and --altitude", "either gives the air's pressure", "leave one of them out");
    }
    if (pressure != null) {
      return Quantities.pressurePa("--pressure", pressure);
    }
    return altitude == null
        ? MoistAir.SEA_LEVEL_PA
        : StandardAtmosphere.pressurePa(Quantities.altitudeM("--altitude", altitude));
  }

  private void print(Answer air, UnitSystem units) {
    shared.out.printf(
        "Air at %s, %s humidity, %s%n",
        Show.temperature(air.airTempC(), units),
        Show.relativeHumidity(air.rhPct()),
        Show.pressure(air.pressurePa(), units));
    line(
        "dew point",
        "%s, %s below the air"
            .formatted(
                Show.temperature(air.dewPointC(), units),
                Show.temperatureStep(air.airTempC() - air.dewPointC(), units)));
    air.frostPointC().ifPresent(c -> line("frost point", Show.temperature(c, units)));
    line("wet bulb", Show.temperature(air.wetBulbC(), units));
    line("water in it", shared.told(Show.fixed(air.absoluteHumidityGm3(), 1) + " g/m³"));
    air.woodMoisturePct()
        .ifPresent(pct -> line("wood settles at", Show.fixed(pct, 1) + " % moisture"));
    air.outside()
        .ifPresent(
            out ->
                line(
                    "the door",
                    "%s: dew point outside %s; outside air as warm as the room reads %s"
                        .formatted(
                            switch (out.door()) {
                              case "dries" -> "opening it dries the room";
                              case "wets" -> "opening it makes the room damper";
                              default -> "opening it changes the room's water by nothing";
                            },
                            Show.temperature(out.dewPointC(), units),
                            Show.relativeHumidity(Math.min(100, out.rhOnceInsidePct())))));
    air.fuel()
        .ifPresent(
            burnt ->
                line(
                    "burning it",
                    "%s of %s without a flue make %s of water; unaired, the dew point goes to %s"
                        .formatted(
                            grams(burnt.fuelKg()),
                            burnt.fuel(),
                            grams(burnt.waterKg()),
                            Show.temperature(burnt.dewPointAfterC(), units))));
  }

  private static String grams(double kg) {
    return Show.fixed(kg * 1000, 0) + " g";
  }

  private void line(String name, String value) {
    shared.out.printf("  %-16s %s%n", name, value);
  }
}
