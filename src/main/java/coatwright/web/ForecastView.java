package coatwright.web;

import coatwright.climate.AirForecast;
import coatwright.climate.AirPoint;
import coatwright.climate.forecast.HourlyForecast;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The coming hours of a room: a middle and the range that holds in eight of ten.
 *
 * @param basis {@code stays}, {@code learning}, {@code own errors}, or {@code none}
 * @param outdoors whether an outdoor forecast went in
 * @param usualFrom from here on it is what is usual for the hour
 * @param sentence what it rests on, in words
 * @param hours the present, then the middle of every hour to come
 */
record ForecastView(
    String room,
    Instant at,
    String basis,
    boolean outdoors,
    Optional<Instant> usualFrom,
    String sentence,
    List<Hour> hours) {

  /** One hour; the air's mean over it. */
  record Hour(
      Instant at,
      boolean usual,
      double airTempC,
      double airTempP10C,
      double airTempP90C,
      double rhPct,
      double rhP10Pct,
      double rhP90Pct,
      double dewPointC,
      double dewPointP10C,
      double dewPointP90C) {}

  static ForecastView none(String room, Instant now) {
    return new ForecastView(
        room,
        now,
        "none",
        false,
        Optional.empty(),
        "Nothing of the last weeks is known of this room's air.",
        List.of());
  }

  static ForecastView of(AirForecast forecast) {
    List<Hour> hours = new ArrayList<>();
    for (int k = 0; k < forecast.knots(); k++) {
      hours.add(hour(forecast, k));
    }
    return new ForecastView(
        forecast.room(),
        forecast.now(),
        word(forecast.basis()),
        forecast.outdoors(),
        Optional.of(forecast.usualFrom()),
        sentence(forecast),
        hours);
  }

  private static Hour hour(AirForecast forecast, int knot) {
    AirPoint middle = forecast.middle(knot);
    AirForecast.Range temp = forecast.airTempC(knot);
    AirForecast.Range rh = forecast.rhPct(knot);
    AirForecast.Range dew = forecast.dewPointC(knot);
    return new Hour(
        middle.at(),
        !middle.at().isBefore(forecast.usualFrom()),
        middle.airTempC(),
        temp.p10(),
        temp.p90(),
        middle.rhPct(),
        rh.p10(),
        rh.p90(),
        middle.dewPointC(),
        dew.p10(),
        dew.p90());
  }

  private static String word(HourlyForecast.Basis basis) {
    return switch (basis) {
      case STAYS -> "stays";
      case LEARNING -> "learning";
      case OWN_ERRORS -> "own errors";
    };
  }

  private static String sentence(AirForecast forecast) {
    String outdoors = forecast.outdoors() ? " An outdoor forecast is taken in." : "";
    return switch (forecast.basis()) {
          case STAYS ->
              "Less than a day of this room is known: the air is taken to stay as it is, give or"
                  + " take what rooms do.";
          case LEARNING ->
              "From this room's own past, which is short: the ranges are still partly assumed.";
          case OWN_ERRORS ->
              "From this room's own past; the range is what such forecasts were off by here.";
        }
        + outdoors
        + " Beyond 24 hours it is what is usual for the hour, no forecast.";
  }
}
