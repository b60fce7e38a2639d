package coatwright.outlook;

import coatwright.climate.AirForecast;
import coatwright.climate.Climate;
import coatwright.climate.forecast.HourlyForecast;
import coatwright.journal.PartPath;
import coatwright.outlook.BrushingWindows.Hour;
import coatwright.outlook.BrushingWindows.Window;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The hours to come in which a coat may be brushed, of a shop's rooms, parts and jars. */
final class ShopWindows {
  private final Climate climate;
  private final PartOutlooks parts;
  private final OutlookSettings settings;

  ShopWindows(Climate climate, PartOutlooks parts, OutlookSettings settings) {
    this.climate = climate;
    this.parts = parts;
    this.settings = settings;
  }

  BrushingWindows of(WindowQuestion question, Instant now) {
    PartOutlooks.Needs needs = parts.needs(question, now);
    Optional<AirForecast> forecast = climate.forecast(needs.room());
    if (needs.fitness().isEmpty()) {
      return none(needs, now, needs.trouble());
    }
    if (forecast.isEmpty()) {
      return none(needs, now, "Nothing of the last weeks is known of this room's air.");
    }
    List<Hour> hours =
        new WindowFinder(
                forecast.get(),
                needs.fitness().get(),
                needs.woodTempC(),
                needs.board(),
                settings.zone())
            .hours();
    List<Window> windows = WindowFinder.windows(hours);
    return answer(
        needs,
        now,
        word(forecast.get().basis()),
        forecast.get().outdoors(),
        sentence(hours, windows, forecast.get(), now),
        hours,
        windows);
  }

  private static String word(HourlyForecast.Basis basis) {
    return switch (basis) {
      case STAYS -> "stays";
      case LEARNING -> "learning";
      case OWN_ERRORS -> "own errors";
    };
  }

  private BrushingWindows none(PartOutlooks.Needs needs, Instant now, String why) {
    return answer(
        needs, now, "none", false, why + " No window can be promised.", List.of(), List.of());
  }

  private static BrushingWindows answer(
      PartOutlooks.Needs needs,
      Instant now,
      String basis,
      boolean outdoors,
      String sentence,
      List<Hour> hours,
      List<Window> windows) {
    return new BrushingWindows(
        needs.room(),
        needs.finish().name(),
        needs.finish().title(),
        needs.part().map(PartPath::toString),
        needs.jar(),
        now,
        now.plus(AirForecast.AHEAD),
        basis,
        outdoors,
        WindowFinder.LEAST_SHARE,
        !windows.isEmpty(),
        sentence,
        hours,
        windows);
  }

  private String sentence(
      List<Hour> hours, List<Window> windows, AirForecast forecast, Instant now) {
    String known =
        forecast.basis() == HourlyForecast.Basis.STAYS
            ? " Less than a day of this room is known: the air is taken to stay as it is."
            : "";
    Optional<Window> soon = windows.stream().filter(window -> !window.usual()).findFirst();
    if (soon.isPresent()) {
      return Judge.text(
              "From %s to %s a coat may be brushed: every hour is fine in at least %.0f of 100"
                  + " courses the air may take.",
              Times.near(soon.get().from(), now, settings.zone()),
              Times.near(soon.get().until(), now, settings.zone()),
              100 * soon.get().share())
          + known;
    }
    Optional<Hour> best =
        hours.stream().filter(hour -> !hour.usual()).max(Comparator.comparingDouble(Hour::share));
    String atBest =
        best.filter(hour -> hour.share() > 0.005)
            .map(
                hour ->
                    Judge.text(
                        "; at best, from %s, it is fine in %.0f of 100 courses the air may take",
                        Times.near(hour.from(), now, settings.zone()), 100 * hour.share()))
            .orElse("; in none of the courses the air may take is an hour fine");
    String later =
        windows.isEmpty()
            ? ""
            : " Later hours are usually fine, which is no forecast: "
                + Times.show(windows.get(0).from(), settings.zone())
                + ".";
    return "No window can be promised for the next 24 hours" + atBest + "." + later + known;
  }
}
