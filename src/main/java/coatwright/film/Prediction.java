package coatwright.film;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the ensemble says of a film: every number with its range.
 *
 * @param model which model and set
 * @param condensation dew stood on the wood: no times are given
 * @param run the one full run with the middle values, where the film model was run; its hardening
 *     times look at the residue alone
 * @param milestones seconds from the last coat
 * @param plainS the model's own answers, s from the last coat, whatever tests and shop say; a
 *     milestone that is not reached has none
 * @param recoatUntilS when the recoat window of a film that cures closes by itself, s from the last
 *     coat; {@link Percentiles#NONE} where it does not
 * @param openTimeS of the last coat, s; not defined above a 2.5 lb cut
 * @param peakS blush number of the last coat at its highest
 * @param marginK lowest film temperature less dew point, K
 * @param marginErrorK what of it comes from the sensors: standard uncertainty of the margin, K
 * @param softBeforeK softness of the film when the last coat went on it, K
 * @param effectiveMembers how many equal members the tests have left
 * @param nextTest the one piece of knowledge that would narrow the rub-out date most
 * @param sensitivity to hand in again while only the air has gone on
 */
public record Prediction(
    ModelStamp model,
    boolean condensation,
    Optional<FilmRun> run,
    Map<Milestone, Percentiles> milestones,
    Map<Milestone, Double> plainS,
    Percentiles recoatUntilS,
    Percentiles openTimeS,
    Percentiles peakS,
    Percentiles marginK,
    double marginErrorK,
    Percentiles softBeforeK,
    double effectiveMembers,
    Optional<NextTest> nextTest,
    Optional<Sensitivity> sensitivity) {

  public Prediction {
    milestones = new EnumMap<>(milestones);
    plainS = Map.copyOf(plainS);
  }

  /** Dew on the wood: nothing else can be told. */
  static Prediction ofDew(FilmRun run) {
    return ofDew(run.model(), Optional.of(run));
  }

  /** The same of a film that is not simulated. */
  static Prediction ofDew(ModelStamp model) {
    return ofDew(model, Optional.empty());
  }

  private static Prediction ofDew(ModelStamp model, Optional<FilmRun> run) {
    return new Prediction(
        model,
        true,
        run,
        new EnumMap<>(Milestone.class),
        Map.of(),
        Percentiles.NONE,
        Percentiles.NONE,
        Percentiles.NONE,
        Percentiles.NONE,
        0,
        Percentiles.NONE,
        0,
        Optional.empty(),
        Optional.empty());
  }

  /**
   * The full run.
   *
   * @throws IllegalStateException where the film hardens by a clock and no film was simulated
   */
  public FilmRun film() {
    return run.orElseThrow(() -> new IllegalStateException("no film was simulated"));
  }

  /** The model's own answer for a milestone; empty where it is not reached. */
  public OptionalDouble plain(Milestone m) {
    Double s = plainS.get(m);
    return s == null ? OptionalDouble.empty() : OptionalDouble.of(s);
  }

  /** The milestone's range; {@link Percentiles#NONE} where it is not reached. */
  public Percentiles milestone(Milestone m) {
    return milestones.getOrDefault(m, Percentiles.NONE);
  }

  /** Knowledge that can still be had. */
  public enum Knowledge {
    /** What left the jar, over the area coated; or a wet-film comb on the next coat. */
    WET_FILM,
    /** A dried sample from the jar. */
    CUT,
    /** The thumbnail test, at the best moment. */
    THUMBNAIL,
    /** Rub out a spot and write down whether it stayed fine. */
    RUBBED_OUT
  }

  /**
   * One piece of knowledge, and what it would be worth.
   *
   * @param bestAtS when to make it, seconds from the last coat; 0 where it does not matter
   * @param narrowsBy share of the variance of ln(rub-out) it takes away, 0 to 1
   */
  public record NextTest(Knowledge knowledge, double bestAtS, double narrowsBy) {}
}
