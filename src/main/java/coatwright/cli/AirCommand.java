package coatwright.cli;

import coatwright.air.MoistAir;
import coatwright.air.StandardAtmosphere;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import coatwright.wood.EquilibriumMoisture;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says what an air is: its dew point, and where wood would settle in it. */
@Command(
    name = "air",
    description = "What an air holds: dew point, wet bulb, water, and where wood settles in it.",
    footer = {"", "Example: coatwright air --temp 25C --rh 50%%"})
final class AirCommand implements Callable<Integer> {
  @Option(names = "--temp", required = true, paramLabel = "T", description = "Air: 25C or 77F.")
  String temp = "";

  @Option(
      names = "--rh",
      required = true,
      paramLabel = "H",
      description = "Relative humidity over liquid water, as a hygrometer reads it: 50%%.")
  String rh = "";

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
      OptionalDouble woodMoisturePct) {
    static Answer of(MoistAir air) {
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
          EquilibriumMoisture.ofAir(air));
    }
  }

  @Override
  public Integer call() {
    double tempC = Quantities.temperatureC("--temp", temp);
    double rhPct = Quantities.relativeHumidityPct("--rh", rh);
    Answer answer = Answer.of(new MoistAir(tempC, rhPct, pressurePa()));
    if (shared.json) {
      shared.printJson(answer);
    } else {
      print(answer, shared.unitSystem());
    }
    return 0;
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
  }

  private void line(String name, String value) {
    shared.out.printf("  %-16s %s%n", name, value);
  }
}
