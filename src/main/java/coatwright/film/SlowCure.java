package coatwright.film;

/**
 * A reason why a film would cure slowly or not at all in this air, with the numbers it rests on.
 */
public sealed interface SlowCure {
  /** Whether it stops the cure, not only slows it. */
  default boolean stops() {
    return false;
  }

  /**
   * It takes far longer than in the reference air.
   *
   * @param ratio of the reference air's speed
   * @param limitRatio under this it is called slow
   */
  record SlowRate(double ratio, double limitRatio) implements SlowCure {}

  /**
   * Air or wood is colder than what such finishes bear.
   *
   * @param tempC the colder of air and wood, °C
   * @param limitC °C
   */
  record Cold(double tempC, double limitC) implements SlowCure {}

  /** It takes oxygen from the air, and none is let in. */
  record NoAirExchange() implements SlowCure {}

  /**
   * The network becomes a glass before it is there; heat starts it again.
   *
   * @param milestone the first one, up to rubbing out, that is not reached within 60 days
   * @param stopsAtConversion where it stands after them, 0 to 1
   * @param neededConversion what the milestone needs
   * @param warmToC the lowest whole degree at which it is reached within 30 days
   */
  record Vitrifies(
      Milestone milestone, double stopsAtConversion, double neededConversion, double warmToC)
      implements SlowCure {
    @Override
    public boolean stops() {
      return true;
    }
  }

  /**
   * The film dries colder than its particles flow together.
   *
   * @param filmLowC °C
   * @param lowestFilmC minimum film-forming temperature, °C
   */
  record NoCoalescence(double filmLowC, double lowestFilmC) implements SlowCure {
    @Override
    public boolean stops() {
      return true;
    }
  }

  /**
   * The film dries hardly warmer than its particles need.
   *
   * @param marginK film less minimum film-forming temperature, K
   * @param limitK what it should have, K
   */
  record CloseToLowestFilm(double marginK, double limitK) implements SlowCure {}

  /**
   * The air takes up next to no water.
   *
   * @param rhPct per cent RH
   */
  record NoDrying(double rhPct) implements SlowCure {
    @Override
    public boolean stops() {
      return true;
    }
  }
}
