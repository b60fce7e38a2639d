package coatwright.cli;

import coatwright.film.FilmParameters;
import coatwright.film.JarCheck;
import coatwright.mix.Cut;
import coatwright.mix.Dose;
import coatwright.mix.Solution;
import coatwright.mix.VapourLimits;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.Quantities;
import coatwright.quantity.Show;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How much of a slow solvent a dose is, in every way a dose is written. */
@Command(
    name = "retard",
    description = {
      "How much slow solvent a dose is, and the same dose in the other ways it is written.",
      "A dose in drops is converted and written down; the film model does not reckon with it."
    },
    footer = {
      "",
      "Example: coatwright jar retard --volume 1qt --dose 3%% --solvent 2-butoxyethanol --cut"
          + " 1.5lb",
      "         coatwright jar retard --volume 1qt --dose 10drops/qt"
    })
final class JarRetard implements Callable<Integer> {
  private static final String SIMULATED = "2-butoxyethanol";
  private static final double MOST_SIMULATED_PCT = 10;

  @Option(
      names = "--volume",
      required = true,
      paramLabel = "V",
      description = "Mixture it goes into: 1L, 1qt.")
  String volume = "";

  @Option(
      names = "--dose",
      required = true,
      paramLabel = "D",
      description = "3%%, 30mL/L, 1floz/qt or 10drops/qt, of the mixture as it stands.")
  String dose = "";

  @Option(names = "--solvent", paramLabel = "NAME", description = "Which: 2-butoxyethanol.")
  String solvent = SIMULATED;

  @Option(names = "--cut", paramLabel = "C", description = "Cut of the mixture: 1.5lb.")
  @Nullable String cut;

  @Option(names = "--strength", paramLabel = "S", description = "Of the spirit. Default: 95%%.")
  @Nullable String strength;

  @Mixin Help help = new Help();
  private final Shared shared;

  JarRetard(Shared shared) {
    this.shared = shared;
  }

  /** The answer; a dose in drops has two ends, and {@code addMl} is their middle. */
  record Answer(
      @JsonUnwrapped JarFigures mixture,
      double mixtureMl,
      String solvent,
      double addMl,
      double addLowMl,
      double addHighMl,
      double doseVolPct,
      double doseMlPerL,
      double doseFlOzPerUsQuart,
      double doseFlOzPerImpQuart,
      double shareOfWholePct,
      OptionalDouble dropsPerL,
      boolean reckonedWith,
      OptionalDouble shareOfSolventPct,
      OptionalDouble jarWaterShareOfLimit,
      OptionalDouble jarWaterShareOfLimitBefore) {}

  @Override
  public Integer call() {
    double mixtureMl = Quantities.volumeMl("--volume", volume);
    OutOfRange.check("mixture", mixtureMl, "mL", 1e-3, 1e6);
    Dose asked = Dose.parse("--dose", dose);
    Optional<Solution> mixture = mixture(mixtureMl);
    boolean simulated = solvent.equalsIgnoreCase(SIMULATED) && !asked.inDrops();
    OptionalDouble ofSolvent =
        mixture.isPresent()
            ? OptionalDouble.of(ofSolventPct(mixture.get(), asked.addMl(mixtureMl)))
            : OptionalDouble.empty();
    Answer answer =
        new Answer(
            mixture.map(JarFigures::of).orElseGet(() -> JarFigures.ofVolume(mixtureMl)),
            mixtureMl,
            solvent,
            asked.addMl(mixtureMl),
            asked.lowFraction() * mixtureMl,
            asked.highFraction() * mixtureMl,
            asked.pct(),
            asked.mlPerL(),
            asked.flOzPerUsQuart(),
            asked.flOzPerImpQuart(),
            asked.pctOfWhole(),
            asked.dropsPerL(),
            simulated && asked.pct() <= MOST_SIMULATED_PCT,
            ofSolvent,
            simulated ? jarShare(mixture, ofSolvent.orElse(0)) : OptionalDouble.empty(),
            jarShare(mixture, 0));
    if (shared.json) {
      shared.printJson(answer);
    } else {
      print(asked, answer);
    }
    return 0;
  }

  private Optional<Solution> mixture(double mixtureMl) {
    return cut == null
        ? Optional.empty()
        : Optional.of(
            Solution.ofVolume(
                JarWords.cut("--cut", cut), mixtureMl, JarWords.strengthPct(strength)));
  }

  private static double ofSolventPct(Solution mixture, double addMl) {
    return 100 * addMl / (mixture.spiritMl() + addMl);
  }

  private static OptionalDouble jarShare(Optional<Solution> mixture, double ofSolventPct) {
    if (mixture.isEmpty()) {
      return OptionalDouble.empty();
    }
    Cut known = mixture.get().cut();
    double strengthPct = mixture.get().strengthVolPct();
    boolean held =
        known.gPerL() >= 20
            && known.gPerL() <= 600
            && strengthPct >= 50
            && ofSolventPct <= MOST_SIMULATED_PCT;
    return held
        ? OptionalDouble.of(
            JarCheck.blushNumber(FilmParameters.SHELLAC, known.gPerL(), strengthPct, ofSolventPct))
        : OptionalDouble.empty();
  }

  private void print(Dose asked, Answer answer) {
    JarText text = new JarText(shared);
    if (asked.inDrops()) {
      double drops = answer.dropsPerL().orElse(0) * answer.mixtureMl() / 1000;
      text.figure(
          "Count %s drops of %s into %s"
              .formatted(Show.fixed(drops, 0), solvent, text.volume(answer.mixtureMl())));
      text.line(
          "that is",
          "%s to %s mL, by the size of the drop"
              .formatted(small(answer.addLowMl()), small(answer.addHighMl())));
      text.line(
          "as a share",
          "%s to %s of the mixture"
              .formatted(
                  JarText.share(100 * asked.lowFraction()),
                  JarText.share(100 * asked.highFraction())));
    } else {
      text.figure(
          "Add %s of %s to %s"
              .formatted(text.volume(answer.addMl()), solvent, text.volume(answer.mixtureMl())));
      text.line(
          "the same dose",
          "%s, %s mL a litre, %s fl oz a US quart, %s fl oz an imperial quart"
              .formatted(
                  JarText.share(answer.doseVolPct()),
                  small(answer.doseMlPerL()),
                  Show.fixed(answer.doseFlOzPerUsQuart(), 2),
                  Show.fixed(answer.doseFlOzPerImpQuart(), 2)));
      text.line("of the whole", JarText.share(answer.shareOfWholePct()) + " once it is in");
    }
    answer
        .shareOfSolventPct()
        .ifPresent(pct -> text.line("of the solvent", JarText.share(pct) + " of what evaporates"));
    if (answer.jarWaterShareOfLimit().isPresent()) {
      text.line(
          "clouding",
          "in the jar the water is %s of what makes the resin give way, without it %s"
              .formatted(
                  JarText.share(100 * answer.jarWaterShareOfLimit().getAsDouble()),
                  JarText.share(100 * answer.jarWaterShareOfLimitBefore().orElse(0))));
    }
    text.how(how(asked, answer));
    text.from(reckoned(asked, answer));
    VapourLimits.named(solvent)
        .ifPresent(
            limits ->
                text.mind(
                    "%s: lower explosive limit %s %%, exposure limit %s ppm over eight hours (%s)%s"
                        .formatted(
                            limits.solvent(),
                            Show.fixed(limits.lelPct(), 1),
                            Show.fixed(limits.eightHourPpm(), 0),
                            limits.eightHourWhose(),
                            limits.passesSkin() ? "; it passes the skin" : "")));
    text.mind(
        "a slow solvent stays in the film: rub-out comes later; read its safety data sheet before"
            + " it goes into a jar");
    text.end();
  }

  private String how(Dose asked, Answer answer) {
    if (asked.inDrops()) {
      return "write it on the jar and in the log as --retarder drops:N/qt";
    }
    return "measure it with a syringe, stir, and write it on the jar"
        + (answer.reckonedWith()
            ? ", and in the log as --retarder %s:%s".formatted(SIMULATED, written(answer))
            : "");
  }

  private static String written(Answer answer) {
    return JarText.share(answer.doseVolPct()).replace(" ", "");
  }

  private static String reckoned(Dose asked, Answer answer) {
    if (asked.inDrops()) {
      return "20 to 60 drops a millilitre: a drop of water by the old pharmacy convention (common"
          + " practice, no source), of spirit from memory; the film model does not reckon with"
          + " drops, it is your own figure";
    }
    if (answer.reckonedWith()) {
      return "a dose counts on the mixture as it stands; the film model reckons with "
          + SIMULATED
          + ": see coatwright outlook --retarder "
          + SIMULATED
          + ":"
          + written(answer);
    }
    return "a dose counts on the mixture as it stands; the film model reckons with "
        + SIMULATED
        + " up to 10 % only, so this one is arithmetic and no forecast";
  }

  private static String small(double ml) {
    return Show.fixed(ml, ml < 1 ? 2 : ml < 20 ? 1 : 0);
  }
}
