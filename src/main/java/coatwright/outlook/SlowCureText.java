package coatwright.outlook;

import coatwright.film.SlowCure;

/** A reason for a slow cure in a sentence. */
final class SlowCureText {
  private SlowCureText() {}

  static String of(SlowCure reason) {
    if (reason instanceof SlowCure.SlowRate slow) {
      return Judge.text(
          "It dries at %.2f of its speed in the reference air; under %.2f it is called slow.",
          slow.ratio(), slow.limitRatio());
    }
    if (reason instanceof SlowCure.Cold cold) {
      return Judge.text(
          "The colder of air and wood is %.1f °C; under %.0f °C it cures slowly.",
          cold.tempC(), cold.limitC());
    }
    if (reason instanceof SlowCure.NoAirExchange) {
      return "It takes oxygen from the air, and no fresh air comes in.";
    }
    if (reason instanceof SlowCure.Vitrifies stops) {
      return Judge.text(
          "It sets before it is done: at %.0f %% of the reaction, where %s needs %.0f %%; from"
              + " about %.0f °C it goes on.",
          100 * stops.stopsAtConversion(),
          stops.milestone(),
          100 * stops.neededConversion(),
          stops.warmToC());
    }
    if (reason instanceof SlowCure.NoCoalescence apart) {
      return Judge.text(
          "The film would dry at %.1f °C, colder than the %.1f °C its particles need to flow"
              + " together.",
          apart.filmLowC(), apart.lowestFilmC());
    }
    if (reason instanceof SlowCure.CloseToLowestFilm close) {
      return Judge.text(
          "The film would dry only %.1f K above its minimum film-forming temperature; %.0f K is"
              + " asked for.",
          close.marginK(), close.limitK());
    }
    if (reason instanceof SlowCure.NoDrying damp) {
      return Judge.text("At %.0f %% the air takes up next to no water.", damp.rhPct());
    }
    throw new IllegalStateException("no words for " + reason);
  }
}
