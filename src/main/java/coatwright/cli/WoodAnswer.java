package coatwright.cli;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a board does in the airs asked about; the component names are the contract's JSON keys.
 * Present is what was asked for.
 */
record WoodAnswer(
    Optional<String> species,
    Optional<String> latin,
    OptionalDouble thicknessMm,
    Optional<Movement> movement,
    Optional<Equalising> equalising,
    Optional<CarryingIn> carriedIn,
    List<String> assumptions) {
  /**
   * How far its width moves, and the film on it with it.
   *
   * @param airTempC of both airs, absent for moistures of a meter
   * @param coefficientPerPct change as a fraction of the width for each point of moisture
   * @param strainPct change as a share of the width; positive swells and stretches the film
   */
  record Movement(
      String cut,
      double coefficientPerPct,
      String coefficientFrom,
      OptionalDouble airTempC,
      OptionalDouble fromRhPct,
      OptionalDouble toRhPct,
      double fromMoisturePct,
      double toMoisturePct,
      OptionalDouble widthMm,
      OptionalDouble movementMm,
      double strainPct,
      Film film) {}

  /** The movement against what the film bears. */
  record Film(
      String level,
      double yieldStrainPct,
      double breakStrainPct,
      boolean toleranceAssumed,
      OptionalDouble buildUm,
      OptionalDouble buildLimitUm,
      boolean overBuilt) {}

  /** Days until the bare board's mean moisture has gone that share of the way, an estimate. */
  record Equalising(
      double sharePct,
      double bothFacesQuickestDays,
      double bothFacesSlowestDays,
      double oneFaceQuickestDays,
      double oneFaceSlowestDays) {}

  /** A board carried in, against the dew point of the room. */
  record CarryingIn(
      double boardTempC,
      double airTempC,
      double rhPct,
      double dewPointC,
      double marginK,
      double wantedMarginK,
      double specificGravity,
      String specificGravityFrom,
      Face bothFaces,
      Face oneFace) {}

  /** Minutes from carrying in; absent is never, in that air. */
  record Face(
      OptionalDouble aboveDewPointMin, OptionalDouble aboveMarginMin, double withinOneKelvinMin) {}
}
