package coatwright;

import coatwright.cli.Hall;
import coatwright.cli.Stop;
import coatwright.config.RefusedSettings;
import coatwright.config.Settings;
import coatwright.config.SettingsFolder;
import coatwright.film.Finish;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** What the commands ask of the house: settings found, rooms wired, the daemon started. */
final class House implements Hall {
  private static final String SETTINGS = "coatwright.yaml";

  @Override
  public ShopFacts shop(Place place) {
    Path file = settingsFile(place);
    if (place.config().isEmpty() && !Files.exists(file)) {
      return new ShopFacts(
          Settings.Web.DEFAULT.host(),
          Settings.Web.DEFAULT.port(),
          Settings.Shop.DEFAULT.units(),
          Settings.Shop.DEFAULT.zone());
    }
    Settings settings = settings(place);
    return new ShopFacts(
        settings.web().host(),
        settings.web().port(),
        settings.shop().units(),
        settings.shop().zone());
  }

  @Override
  public Map<String, Finish> finishes(Place place) {
    Path folder = settingsFile(place).resolveSibling("finishes");
    return refusing(() -> SettingsFolder.finishes(folder));
  }

  private static Settings settings(Place place) {
    return refusing(() -> SettingsFolder.read(settingsFile(place)));
  }

  /** The settings named, else those of the checkout or installation. */
  private static Path settingsFile(Place place) {
    return place
        .config()
        .map(named -> Files.isDirectory(named) ? named.resolve(SETTINGS) : named)
        .orElseGet(
            () ->
                home()
                    .map(home -> home.resolve("config"))
                    .orElse(Path.of("config"))
                    .resolve(SETTINGS));
  }

  private static Optional<Path> home() {
    return Optional.ofNullable(System.getProperty("coatwright.home")).map(Path::of);
  }

  private static <T> T refusing(Supplier<T> reading) {
    try {
      return reading.get();
    } catch (RefusedSettings refused) {
      throw new Stop(Stop.BAD_INPUT, String.valueOf(refused.getMessage()), refused);
    }
  }
}
