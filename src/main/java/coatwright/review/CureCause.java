package coatwright.review;

import coatwright.film.CureDew;
import coatwright.film.CureSigns;
import coatwright.film.WaterborneCure;
import coatwright.outlook.CuringJob;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import coatwright.review.Why.AirAtFault;
import java.time.Duration;

/**
 * Decides what clouded a coat of a finish that cures.
 *
 * <ol>
 *   <li>The film came within 1 K of the dew point while it was wet: yes, the air (on wood that
 *       cold).
 *   <li>It dried colder than its particles need to flow together: yes; within 2 K of that: partly.
 *   <li>Else no: such a film takes no water in from air that is merely damp.
 * </ol>
 */
final class CureCause {
  private final CureCase theCase;
  private final boolean noted;
  private final JarStory jar;
  private final String part;

  CureCause(CureCase theCase, boolean noted, JarStory jar) {
    this.theCase = theCase;
    this.noted = noted;
    this.jar = jar;
    this.part = theCase.known().part().toString();
  }

  Finding find() {
    CureCase.Look base = theCase.base();
    if (base.dewed()) {
      return dew(base.dew());
    }
    if (base.level() != CloudingLevel.NONE_EXPECTED) {
      return apart(base);
    }
    CuringJob known = theCase.known();
    return new Finding(
        "The air was not the cause: until it was dry to touch the film on %s stood %s above the dew point, and %s takes no water in from damp air%s; %s"
            .formatted(
                part,
                step(base.dew().marginK()),
                known.finish().title(),
                formed(base),
                noted ? suspects() : "no clouding is noted on it"),
        AirAtFault.NO);
  }

  private static String formed(CureCase.Look base) {
    return base.signs().mfftMarginK().isPresent()
        ? ", and its particles had %s to spare to flow together"
            .formatted(step(base.signs().mfftMarginK().getAsDouble()))
        : "";
  }

  private Finding dew(CureDew dew) {
    double afterS = dew.atS() - theCase.known().lastCoatS();
    String when =
        afterS < 60
            ? "as the coat went on"
            : Show.duration(Duration.ofSeconds((long) afterS))
                + " after it went on, still wet by the model";
    String stood =
        dew.marginK() <= 0
            ? step(-dew.marginK()) + " below the dew point, so water formed on it"
            : "only " + step(dew.marginK()) + " above the dew point";
    return new Finding(
        head(
                "clouded because water settled on it",
                "should have clouded, because water settled on it")
            + ": %s its film stood %s of %s"
                .formatted(when, stood, Show.temperature(dew.dewPointC(), UnitSystem.METRIC)),
        AirAtFault.YES);
  }

  private Finding apart(CureCase.Look base) {
    double lowestC = ((WaterborneCure) theCase.curing()).lowestFilmC();
    boolean below = base.apart(0);
    String margin =
        below
            ? "colder than the %s its particles need to flow together"
            : "hardly warmer than the %s its particles need to flow together ("
                + step(CureSigns.LEAST_MFFT_MARGIN_K)
                + " is asked for)";
    return new Finding(
        head(
                below
                    ? "clouded because it dried too cold"
                    : "was near drying too cold, and the air may have helped",
                below ? "should have clouded, drying too cold" : "came near drying too cold")
            + ": the wet film stood at %s, "
                .formatted(Show.temperature(base.signs().filmLowC(), UnitSystem.METRIC))
            + margin.formatted(Show.temperature(lowestC, UnitSystem.METRIC)),
        below ? AirAtFault.YES : AirAtFault.PARTLY);
  }

  private String head(String whenNoted, String whenNot) {
    return noted
        ? part + " " + whenNoted
        : "No clouding is noted on " + part + ", though by the model it " + whenNot;
  }

  private String suspects() {
    return jar.suspects("look at the jar, at what lay under it, and at how it was laid");
  }

  private static String step(double stepK) {
    return Show.temperatureStep(stepK, UnitSystem.METRIC);
  }
}
