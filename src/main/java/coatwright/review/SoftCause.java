package coatwright.review;

import coatwright.quantity.Show;
import coatwright.review.Why.AirAtFault;
import java.util.OptionalDouble;

/**
 * Decides why a film was still soft when it was noted so: the air, the time, or neither.
 *
 * <ol>
 *   <li>Older than nine in ten such films need in this very air: no; the jar first, then the coats.
 *   <li>In the finish's reference air it would have been ready by then, and in this air not yet:
 *       yes.
 *   <li>It would not have been ready in the reference air either: no, it is early; partly where
 *       this air adds a quarter or more.
 *   <li>Past the middle of its range but inside it: partly where the air adds a quarter, else it
 *       can't be told, and the test decides.
 * </ol>
 */
final class SoftCause {
  private final Softness soft;
  private final double ageS;
  private final JarStory jar;

  /**
   * @param ageS how old the film was when it was noted soft, s from its last coat
   */
  SoftCause(Softness soft, double ageS, JarStory jar) {
    this.soft = soft;
    this.ageS = ageS;
    this.jar = jar;
  }

  Finding find() {
    String age = soft.days(OptionalDouble.of(ageS));
    String range =
        "%s in this air (%s to %s)"
            .formatted(
                soft.days(soft.readyS()),
                soft.days(soft.ready().p10()),
                soft.days(soft.ready().p90()));
    if (soft.ready().p90().isPresent() && ageS > soft.ready().p90().getAsDouble()) {
      return new Finding(
          "The air was not the cause: %s was still soft after %s, and a film like it is %s after %s; %s"
              .formatted(soft.part(), age, soft.goal(), range, suspects()),
          AirAtFault.NO);
    }
    boolean readyByNow = soft.readyS().isPresent() && soft.readyS().getAsDouble() <= ageS;
    if (readyByNow) {
      return new Finding(
          "%s was soft after %s, within the range of such films (%s); the test decides, not the clock%s"
              .formatted(soft.part(), age, range, jar.pastItsTest() ? ", and " + suspects() : ""),
          soft.slower() ? AirAtFault.PARTLY : AirAtFault.CANT_TELL);
    }
    String inReference = soft.days(soft.inReferenceS());
    if (soft.inReferenceS().isPresent() && soft.inReferenceS().getAsDouble() <= ageS) {
      return new Finding(
          "%s was still soft after %s because of its air, %s on average: there it needs %s, where %s °C would have let it be ready after %s"
              .formatted(
                  soft.part(),
                  age,
                  soft.meanAir(ageS),
                  soft.days(soft.readyS()),
                  Show.fixed(soft.finish().referenceTempC(), 0),
                  inReference),
          AirAtFault.YES);
    }
    return new Finding(
        "%s is not late: it was noted soft after %s, and a film like it is %s after %s; at %s °C it would be %s"
            .formatted(
                soft.part(),
                age,
                soft.goal(),
                range,
                Show.fixed(soft.finish().referenceTempC(), 0),
                inReference),
        soft.slower() ? AirAtFault.PARTLY : AirAtFault.NO);
  }

  private String suspects() {
    return jar.suspects("look at the jar, then at how heavy and how close its coats were");
  }
}
