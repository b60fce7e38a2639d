package coatwright.outlook;

import coatwright.air.MoistAir;
import coatwright.air.RoomWater;
import coatwright.film.AirCourse;
import coatwright.film.CoatOutcome;
import coatwright.film.FilmRun;
import coatwright.film.FilmSimulation;
import coatwright.film.LacquerBlend;
import coatwright.film.LaidCoat;
import coatwright.film.SimulationOptions;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.outlook.Outlook.DryingLevel;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What would help, found by changing one thing and computing the film again; nothing else is
 * offered.
 */
final class Remedies {
  private static final String RIDER =
      " Do it before the jar is opened, with the appliance off and out of the room before brushing."
          + " Never heat on a wet %s film.";
  private static final double LOOK_S = 3600;
  private static final double GRAMS_PER_LB = 119.826427;
  private static final double SLOW_SOLVENT_PCT = 3;

  private final Findings findings;
  private final Coating coating;
  private final CloudingLevel now;

  Remedies(Findings findings) {
    this.findings = findings;
    this.coating = findings.coating();
    this.now = findings.level();
  }

  List<String> actions() {
    List<String> actions = new ArrayList<>();
    if (now != CloudingLevel.NONE_EXPECTED) {
      boolean spirit = coating.coat().isSpirit();
      if (spirit) {
        strongerSpirit().ifPresent(actions::add);
      }
      warmerWood().ifPresent(actions::add);
      drierRoom().ifPresent(actions::add);
      if (spirit) {
        otherCut().ifPresent(actions::add);
      }
      (spirit ? slowSolvent() : slowerBlend()).ifPresent(actions::add);
    }
    OptionalDouble rest =
        findings.condensation() ? OptionalDouble.empty() : findings.restNeededMin();
    if (rest.isPresent()) {
      actions.add(
          Judge.text("Rest the part %.0f min more before the next coat.", rest.getAsDouble()));
    }
    if (!findings.condensation() && findings.dryingLevel().compareTo(DryingLevel.SLOW) >= 0) {
      warmerToHarden().ifPresent(actions::add);
    }
    return actions;
  }

  /** The level with one thing changed; the spread about S is taken to stay the same share of it. */
  private CloudingLevel level(LaidCoat coat, double rhPct, double woodC) {
    MoistAir air = new MoistAir(coating.air().airTempC(), rhPct, coating.air().pressurePa());
    double spreadK =
        woodC - air.dewPointC() - Math.hypot(coating.dewErrorK(), coating.woodErrorK());
    if (spreadK < 1) {
      return CloudingLevel.LIKELY;
    }
    AirCourse course =
        AirCourse.steady(air.airTempC(), rhPct / 100, coating.alone().job().air().draughtMPerS());
    FilmRun run =
        new FilmSimulation(coating.alone().parameters(), SimulationOptions.CLOUDING)
            .run(
                Described.job(
                    List.of(coat), course, woodC, coating.alone().job().boardThicknessMm()),
                LOOK_S);
    CoatOutcome o = run.lastCoat();
    return CloudingRule.level(
        spreadK, o.peakS(), o.peakS() * upper(), o.marginK() - findings.alone().marginErrorK());
  }

  private double upper() {
    return findings.condensation() ? 1.12 : Math.max(1, findings.peakS90() / findings.peakS());
  }

  private String rider() {
    return RIDER.formatted(coating.coat().isSpirit() ? "spirit" : "lacquer");
  }

  private boolean better(CloudingLevel level) {
    return level.compareTo(now) > 0;
  }

  private static String then(CloudingLevel level) {
    return level == CloudingLevel.NONE_EXPECTED
        ? "no clouding is then expected."
        : "clouding is then possible, no longer likely.";
  }

  private Optional<String> strongerSpirit() {
    double strength = Sets.spirit(coating.finish()).strengthVolPct();
    if (coating.coat().strengthVolPct() >= strength || findings.condensation()) {
      return Optional.empty();
    }
    LaidCoat c = coating.coat();
    LaidCoat stronger =
        new LaidCoat(0, c.wetFilmUm(), c.cutGPerL(), strength, c.retarderVolPct(), c.liquidTempC());
    CloudingLevel level = level(stronger, coating.air().rhPct(), coating.woodTempC());
    return better(level)
        ? Optional.of(
            Judge.text("Use a jar made with spirit of %.0f %%: %s", strength, then(level)))
        : Optional.empty();
  }

  private Optional<String> warmerWood() {
    Optional<String> some = Optional.empty();
    CloudingLevel best = now;
    double most = Math.min(45, coating.finish().highestTempC()) - coating.woodTempC();
    for (int byK = 1; byK <= most && byK <= 25; byK++) {
      CloudingLevel level = level(coating.coat(), coating.air().rhPct(), coating.woodTempC() + byK);
      if (level.compareTo(best) > 0) {
        best = level;
        some =
            Optional.of(
                Judge.text(
                        "Warm the wood by %d K, to %s, in a warmer room: %s",
                        byK,
                        Show.temperature(coating.woodTempC() + byK, UnitSystem.METRIC),
                        then(level))
                    + rider());
      }
      if (best == CloudingLevel.NONE_EXPECTED) {
        break;
      }
    }
    return some;
  }

  private Optional<String> drierRoom() {
    Optional<String> some = Optional.empty();
    CloudingLevel best = now;
    double start = Math.ceil(coating.air().rhPct() / 5) * 5 - 5;
    for (double rh = start; rh >= 30; rh -= 5) {
      CloudingLevel level = level(coating.coat(), rh, coating.woodTempC());
      if (level.compareTo(best) > 0) {
        best = level;
        some =
            Optional.of(
                Judge.text("Dry the room to %.0f %%%s: %s", rh, litres(rh), then(level)) + rider());
      }
      if (best == CloudingLevel.NONE_EXPECTED) {
        break;
      }
    }
    return some;
  }

  private String litres(double rhPct) {
    OptionalDouble volume = coating.roomVolumeM3();
    return volume.isEmpty()
        ? ""
        : Judge.text(
            ", at least %.2f L of water out of its air",
            RoomWater.waterToRemoveKg(volume.getAsDouble(), coating.air(), rhPct));
  }

  private Optional<String> otherCut() {
    LaidCoat c = coating.coat();
    for (double lb : new double[] {1.5, 2, 2.5}) {
      double cut = lb * GRAMS_PER_LB;
      if (cut > 1.1 * c.cutGPerL()) {
        LaidCoat heavier =
            new LaidCoat(
                0, c.wetFilmUm(), cut, c.strengthVolPct(), c.retarderVolPct(), c.liquidTempC());
        CloudingLevel level = level(heavier, coating.air().rhPct(), coating.woodTempC());
        if (better(level)) {
          return Optional.of(
              "Use a heavier cut, "
                  + Show.cut(cut, UnitSystem.US)
                  + ": by the model "
                  + then(level)
                  + " It builds faster and hardens later.");
        }
      }
    }
    return Optional.empty();
  }

  private Optional<String> slowSolvent() {
    LaidCoat c = coating.coat();
    if (c.retarderVolPct() >= SLOW_SOLVENT_PCT) {
      return Optional.empty();
    }
    LaidCoat slower =
        new LaidCoat(
            0, c.wetFilmUm(), c.cutGPerL(), c.strengthVolPct(), SLOW_SOLVENT_PCT, c.liquidTempC());
    CloudingLevel level = level(slower, coating.air().rhPct(), coating.woodTempC());
    return better(level)
        ? Optional.of(
            Judge.text(
                "Add %.0f %% of 2-butoxyethanol: %s It hardens later.",
                SLOW_SOLVENT_PCT, then(level)))
        : Optional.empty();
  }

  private Optional<String> slowerBlend() {
    Optional<LaidCoat> slower = coating.coat().withBlend(LacquerBlend.SLOWED);
    if (slower.isEmpty() || slower.get().equals(coating.coat())) {
      return Optional.empty();
    }
    CloudingLevel level = level(slower.get(), coating.air().rhPct(), coating.woodTempC());
    return better(level)
        ? Optional.of(
            "Use a slower blend, a tenth of it 2-butoxyethanol: "
                + then(level)
                + " It hardens later.")
        : Optional.empty();
  }

  /** Once the solvent is out of the film it may be moved where it is warm. */
  private Optional<String> warmerToHarden() {
    double reference = coating.finish().referenceTempC();
    return coating.air().airTempC() < reference - 1 && findings.referenceRubOutS().isPresent()
        ? Optional.of(
            Judge.text(
                "Once dry hard, bring the part where it is %.0f °C: rubbing out then takes about"
                    + " %s from there.",
                reference,
                Show.duration(
                    Duration.ofSeconds(Math.round(findings.referenceRubOutS().getAsDouble())))))
        : Optional.empty();
  }
}
