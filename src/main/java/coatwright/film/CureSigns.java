package coatwright.film;

import coatwright.air.MoistAir;
import coatwright.film.CureMoment.AirExchange;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What the air at the moment of coating says of a curing finish. Middle values, no range; the dates
 * with their ranges are the {@link CureEnsemble}'s.
 *
 * @param filmLowC lowest film temperature, °C: the wood's, or the wet film's while water leaves it
 * @param marginK film less dew point, K; at or below 0 water stays on it
 * @param condensation the wood is at or below the dew point: do not coat
 * @param mfftMarginK wet film less minimum film-forming temperature, K, where there is one
 * @param ratioToReference time to dry hard in the reference air over that in this air; 0 where it
 *     does not get there
 * @param potLifeH of the mixed pot at this temperature, where there is one
 * @param slowCure every reason for a slow cure, none that stops it being hidden behind another
 * @param coldBelowC under this it cures slowly, °C
 * @param wipeOffAfterMin where it is wiped off, after how many minutes
 * @param bleedEveryMin where pores weep, how often to wipe
 * @param recoatFromMin from when, were the air to stay as it is; absent where not reached
 * @param recoatUntilMin until when, were the air to stay as it is; absent where there is no late
 *     end or it is not reached
 */
public record CureSigns(
    double filmLowC,
    double marginK,
    boolean condensation,
    OptionalDouble mfftMarginK,
    double ratioToReference,
    OptionalDouble potLifeH,
    List<SlowCure> slowCure,
    double coldBelowC,
    OptionalDouble wipeOffAfterMin,
    OptionalDouble bleedEveryMin,
    OptionalDouble recoatFromMin,
    OptionalDouble recoatUntilMin) {

  /** A wet film should stand so far above its minimum film-forming temperature, K; assumed. */
  public static final double LEAST_MFFT_MARGIN_K = 2;

  private static final double WARMEST_C = 45;

  /** Longer than this to a milestone up to rubbing out counts as standing still, s; assumed. */
  private static final double STILL_S = 60 * 86_400.0;

  /** Warm enough to get there within this is warm enough, h; assumed. */
  private static final double SOON_H = 30 * 24;

  public CureSigns {
    slowCure = List.copyOf(slowCure);
  }

  /** The signs in that air. */
  public static CureSigns at(Curing curing, CureMoment moment) {
    double dewC = MoistAir.of(moment.airTempC(), moment.rhPct()).dewPointC();
    double filmLowC = filmLowC(curing, moment);
    double[] seconds = CureWalk.of(moment.job(curing)).secondsTo(CureMember.MIDDLE);
    CureFacts facts = curing.facts();
    double ratio = ratio(curing, moment, seconds);
    OptionalDouble mfftMarginK =
        curing instanceof WaterborneCure w
            ? OptionalDouble.of(filmLowC - w.lowestFilmC())
            : OptionalDouble.empty();
    return new CureSigns(
        filmLowC,
        filmLowC - dewC,
        moment.woodTempC() <= dewC,
        mfftMarginK,
        ratio,
        curing.potLifeH(moment.airTempC()),
        reasons(curing, moment, ratio, filmLowC, seconds),
        facts.coldBelowC(),
        facts.wipeOffAfterMin(),
        facts.bleedEveryMin(),
        minutes(seconds[Milestone.DRY_TO_RECOAT.index()]),
        minutes(seconds[CureWalk.RECOAT_UNTIL]));
  }

  private static double filmLowC(Curing curing, CureMoment m) {
    return curing instanceof WaterborneCure w
        ? WetFilm.in(w, m.airTempC(), m.rhPct() / 100, m.woodTempC(), m.draughtMPerS()).tempC()
        : Math.min(m.woodTempC(), m.airTempC());
  }

  private static double ratio(Curing curing, CureMoment m, double[] secondsNow) {
    CureFacts f = curing.facts();
    CureMoment usual =
        new CureMoment(
            f.referenceTempC(),
            f.referenceRhPct(),
            f.referenceTempC(),
            m.draughtMPerS(),
            m.wetFilmUm(),
            m.reducedPct(),
            m.airExchange());
    int hard = Milestone.DRY_HARD.index();
    double usualS = CureWalk.of(usual.job(curing)).secondsTo(CureMember.MIDDLE)[hard];
    boolean never = secondsNow[hard] > CureEnsemble.HORIZON_S;
    return never ? 0 : usualS / secondsNow[hard];
  }

  private static List<SlowCure> reasons(
      Curing curing, CureMoment m, double ratio, double filmLowC, double[] seconds) {
    List<SlowCure> reasons = new ArrayList<>();
    CureFacts facts = curing.facts();
    if (curing instanceof WaterborneCure w) {
      addFilmForming(w, m, filmLowC, reasons);
    }
    if (curing instanceof TwoPartCure t) {
      addVitrification(t, m, seconds, reasons);
    }
    double coldestC = Math.min(m.airTempC(), m.woodTempC());
    if (coldestC < facts.coldBelowC()) {
      reasons.add(new SlowCure.Cold(coldestC, facts.coldBelowC()));
    }
    if (facts.needsAirExchange() && m.airExchange() == AirExchange.NO) {
      reasons.add(new SlowCure.NoAirExchange());
    }
    if (ratio < facts.slowBelowRatio()) {
      reasons.add(new SlowCure.SlowRate(ratio, facts.slowBelowRatio()));
    }
    return reasons;
  }

  private static void addFilmForming(
      WaterborneCure w, CureMoment m, double filmLowC, List<SlowCure> reasons) {
    double marginK = filmLowC - w.lowestFilmC();
    if (marginK < 0) {
      reasons.add(new SlowCure.NoCoalescence(filmLowC, w.lowestFilmC()));
    } else if (marginK < LEAST_MFFT_MARGIN_K) {
      reasons.add(new SlowCure.CloseToLowestFilm(marginK, LEAST_MFFT_MARGIN_K));
    }
    WetFilm wet = WetFilm.in(w, m.airTempC(), m.rhPct() / 100, m.woodTempC(), m.draughtMPerS());
    if (wet.waterKgPerM2S() * CureEnsemble.HORIZON_S
        < w.waterKgPerM2(m.wetFilmUm(), m.reducedPct())) {
      reasons.add(new SlowCure.NoDrying(m.rhPct()));
    }
  }

  private static void addVitrification(
      TwoPartCure t, CureMoment m, double[] seconds, List<SlowCure> reasons) {
    for (Milestone milestone : t.milestones()) {
      boolean later = milestone.compareTo(Milestone.RUB_OUT) > 0;
      if (!later && seconds[milestone.index()] > STILL_S) {
        double stopsAt = Conversion.steady(t, m.airTempC()).after(STILL_S / 3600);
        reasons.add(
            new SlowCure.Vitrifies(
                milestone, stopsAt, t.conversion(milestone), warmTo(t, milestone, m.airTempC())));
        return;
      }
    }
  }

  private static double warmTo(TwoPartCure t, Milestone milestone, double fromC) {
    double tempC = Math.floor(fromC) + 1;
    while (tempC < WARMEST_C
        && Conversion.steady(t, tempC).hoursTo(t.conversion(milestone)) > SOON_H) {
      tempC++;
    }
    return tempC;
  }

  private static OptionalDouble minutes(double seconds) {
    return seconds <= CureEnsemble.HORIZON_S
        ? OptionalDouble.of(seconds / 60)
        : OptionalDouble.empty();
  }

  /** Whether the cure stops, not only slows. */
  public boolean stops() {
    return slowCure.stream().anyMatch(SlowCure::stops);
  }

  @Override
  public String toString() {
    return "CureSigns[film %.1f °C, %.2f of the reference speed, %s]"
        .formatted(filmLowC, ratioToReference, Arrays.toString(slowCure.toArray()));
  }
}
