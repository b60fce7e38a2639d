package coatwright.cli;

import coatwright.film.CoatOutcome;
import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.film.JarCheck;
import coatwright.mix.Cut;
import coatwright.mix.FilmBuild;
import coatwright.mix.Solution;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What to weigh and measure for a cut: by volume, by what there is, or for a film over an area. */
@Command(
    name = "mix",
    description = {
      "What to weigh and measure for a cut. Say how much in one way: the mixture's volume,",
      "the spirit or the flakes at hand, or an area with the dry film it is to get."
    },
    footer = {
      "",
      "Example: coatwright jar mix --volume 1L --cut 2lb",
      "         coatwright jar mix --area 3m2 --dry-film 40um --coats 4 --waste 10%% --cut 1.5lb"
    })
final class JarMix implements Callable<Integer> {
  @Option(
      names = "--volume",
      paramLabel = "V",
      description = "Volume of the finished mixture: 1L, 1qt, 20floz/imp.")
  @Nullable String volume;

  @Option(names = "--spirit", paramLabel = "V", description = "Or all of this spirit: 500mL.")
  @Nullable String spirit;

  @Option(names = "--flakes", paramLabel = "W", description = "Or all of these flakes: 8oz.")
  @Nullable String flakes;

  @Option(names = "--area", paramLabel = "A", description = "Or for this area: 3m2, 32ft2 ...")
  @Nullable String area;

  @Option(
      names = "--dry-film",
      paramLabel = "X",
      description = "... and this dry film of all coats together: 40um, 1.5mil.")
  @Nullable String dryFilm;

  @Option(names = "--coats", paramLabel = "N", description = "... in so many coats. Default: 1.")
  @Nullable String coats;

  @Option(
      names = "--waste",
      paramLabel = "P",
      description = "... when this share of the mixture stays in brush and jar. Default: 0%%.")
  @Nullable String waste;

  @Option(names = "--cut", paramLabel = "C", description = "2lb (per US gallon of spirit), 240g/L.")
  @Nullable String cut;

  @Option(
      names = "--solids",
      paramLabel = "P",
      description = "Or the solids by weight of the mixture: 23%%.")
  @Nullable String solids;

  @Option(names = "--strength", paramLabel = "S", description = "Of the spirit. Default: 95%%.")
  @Nullable String strength;

  @Option(
      names = "--finish",
      paramLabel = "F",
      description = "Finish whose build limit counts. Default: shellac-pale.")
  String finish = "shellac-pale";

  @Mixin Help help = new Help();
  private final Shared shared;

  JarMix(Shared shared) {
    this.shared = shared;
  }

  /** The answer; the component names are JSON keys. */
  record Answer(
      @JsonUnwrapped JarFigures mixture,
      double spiritG,
      double flakesGPerLOfMixture,
      OptionalDouble areaM2,
      OptionalDouble dryFilmUm,
      OptionalDouble wetFilmPerCoatUm,
      OptionalInt coats,
      OptionalDouble wastePct,
      OptionalDouble buildLimitUm) {}

  /** A film over an area. */
  private record Job(double areaM2, double dryFilmUm, int coats, double wastePct, Finish finish) {}

  @Override
  public Integer call() {
    double strengthPct = JarWords.strengthPct(strength);
    Finish whose = JarWords.shellac(shared, finish);
    Optional<Job> job = job(whose);
    Solution mixture = mixture(job, strengthPct);
    if (shared.json) {
      shared.printJson(answer(mixture, job));
    } else {
      print(mixture, job);
    }
    return 0;
  }

  private Optional<Job> job(Finish whose) {
    if (area == null && dryFilm == null) {
      if (coats != null || waste != null) {
        throw RefusedInput.of(
            coats != null ? "--coats" : "--waste",
            "it belongs to a film over an area",
            "add --area 3m2 --dry-film 40um");
      }
      return Optional.empty();
    }
    if (area == null || dryFilm == null) {
      throw RefusedInput.of(
          area == null ? "--dry-film" : "--area",
          "an area and its dry film go together",
          area == null ? "add --area 3m2" : "add --dry-film 40um");
    }
    return Optional.of(
        new Job(
            Quantities.areaM2("--area", area),
            Quantities.lengthUm("--dry-film", dryFilm),
            JarWords.coats(coats),
            waste == null ? 0 : Quantities.percent("--waste", waste),
            whose));
  }

  private Solution mixture(Optional<Job> job, double strengthPct) {
    if (flakes != null && spirit != null && volume == null && job.isEmpty()) {
      return weighed(flakes, spirit, strengthPct);
    }
    long ways =
        java.util.stream.Stream.of(volume, spirit, flakes).filter(w -> w != null).count()
            + (job.isPresent() ? 1 : 0);
    if (ways != 1) {
      throw RefusedInput.of(
          "jar mix",
          ways == 0 ? "it needs an amount" : "the amount is told in more than one way",
          "give one of --volume, --spirit, --flakes, or --area with --dry-film");
    }
    Cut wanted = JarWords.cut(cut, solids, strengthPct);
    if (wanted.gPerL() < 1) {
      throw RefusedInput.of("cut", "a mixture has at least 1 g/L", "write it like 2lb or 240g/L");
    }
    if (volume != null) {
      return Solution.ofVolume(wanted, Quantities.volumeMl("--volume", volume), strengthPct);
    }
    if (spirit != null) {
      return Solution.ofSpirit(wanted, Quantities.volumeMl("--spirit", spirit), strengthPct);
    }
    if (flakes != null) {
      return Solution.ofFlakes(wanted, Quantities.massG("--flakes", flakes), strengthPct);
    }
    Job j = job.orElseThrow();
    double ml =
        FilmBuild.mixtureMl(
            j.areaM2(), j.dryFilmUm(), wanted.solidsVolumePct() / 100, j.wastePct());
    return Solution.ofVolume(wanted, ml, strengthPct);
  }

  /** Both were weighed: the cut follows, and a cut that was told as well must agree. */
  private Solution weighed(String flakesTyped, String spiritTyped, double strengthPct) {
    Solution mixture =
        new Solution(
            Quantities.massG("--flakes", flakesTyped),
            Quantities.volumeMl("--spirit", spiritTyped),
            strengthPct,
            FilmBuild.RESIN_KG_PER_M3);
    if (cut != null || solids != null) {
      Cut told = JarWords.cut(cut, solids, strengthPct);
      if (JarWords.apart(told.gPerL(), mixture.cut().gPerL())) {
        throw RefusedInput.of(
            "--flakes \"%s\" with --spirit \"%s\" and %s"
                .formatted(
                    flakesTyped,
                    spiritTyped,
                    cut != null ? "--cut \"" + cut + "\"" : "--solids \"" + solids + "\""),
            "they contradict each other: so many flakes in so much spirit make a %s cut, and a %s cut was told"
                .formatted(JarWords.both(mixture.cut()), JarWords.both(told)),
            "leave one of them out; the cut counts flakes against spirit, not against the mixture");
      }
    }
    return mixture;
  }

  private static Answer answer(Solution mixture, Optional<Job> job) {
    return new Answer(
        JarFigures.of(mixture),
        mixture.spiritG(),
        mixture.flakesGPerLOfMixture(),
        job.map(j -> OptionalDouble.of(j.areaM2())).orElse(OptionalDouble.empty()),
        job.map(j -> OptionalDouble.of(j.dryFilmUm())).orElse(OptionalDouble.empty()),
        job.map(j -> OptionalDouble.of(wetPerCoat(mixture, j))).orElse(OptionalDouble.empty()),
        job.map(j -> OptionalInt.of(j.coats())).orElse(OptionalInt.empty()),
        job.map(j -> OptionalDouble.of(j.wastePct())).orElse(OptionalDouble.empty()),
        job.map(j -> OptionalDouble.of(j.finish().buildLimitUm())).orElse(OptionalDouble.empty()));
  }

  private static double wetPerCoat(Solution mixture, Job job) {
    return FilmBuild.wetFilmUm(job.dryFilmUm(), mixture.solidsVolumePct() / 100) / job.coats();
  }

  private void print(Solution mixture, Optional<Job> job) {
    JarText text = new JarText(shared);
    text.figure(
        "Weigh %s of flakes into %s of spirit: %s of a %s cut"
            .formatted(
                text.mass(mixture.flakesG()),
                text.volume(mixture.spiritMl()),
                text.volume(mixture.volumeMl()),
                text.cut(mixture.cut())));
    text.line(
        "solids",
        "%s by weight, %s by volume"
            .formatted(
                JarText.pct(mixture.solidsMassPct()), JarText.pct(mixture.solidsVolumePct())));
    text.line(
        "swell",
        "the flakes take %s of the jar"
            .formatted(text.volume(mixture.volumeMl() - mixture.spiritMl())));
    text.line("spirit weighs", text.mass(mixture.spiritG()));
    job.ifPresent(j -> printJob(text, mixture, j));
    text.how(
        "stand the jar on the scale, pour in the spirit, zero the scale, add the flakes, and stir"
            + " now and then until they are gone");
    text.from(
        "a cut is flakes to a volume of spirit, not of mixture; "
            + text.ideal()
            + "; "
            + JarWords.strengthFrom(strength));
    if (weak(mixture)) {
      text.mind(
          "spirit of %s is too weak for this cut, whatever the weather: a coat would start close to"
                  .formatted(JarText.pct(mixture.strengthVolPct()))
              + " clouding");
    }
    text.mind(JarText.SPIRIT);
    text.end();
  }

  /** Where the jar's own check does not reach, below half spirit, it is weak for certain. */
  private static boolean weak(Solution mixture) {
    double cutGPerL = mixture.cut().gPerL();
    double strengthPct = mixture.strengthVolPct();
    if (strengthPct < 50) {
      return true;
    }
    boolean modelled = cutGPerL >= 20 && cutGPerL <= 600;
    return modelled
        && JarCheck.blushNumber(FilmParameters.SHELLAC, cutGPerL, strengthPct, 0)
            > CoatOutcome.WEAK_SPIRIT_S;
  }

  private void printJob(JarText text, Solution mixture, Job job) {
    double onWoodMl = mixture.volumeMl() * (1 - job.wastePct() / 100);
    text.line(
        "on the wood",
        "%s over %s, %s wasted"
            .formatted(
                text.volume(onWoodMl),
                text.area(job.areaM2()),
                text.volume(mixture.volumeMl() - onWoodMl)));
    text.line(
        "each coat",
        "%s wet, of which %s stays"
            .formatted(
                text.film(wetPerCoat(mixture, job)), text.film(job.dryFilmUm() / job.coats())));
    Finish usual = job.finish();
    double brushUm = usual.wetFilmUmByMethod().getOrDefault("brush", 75.0);
    if (wetPerCoat(mixture, job) > 1.5 * brushUm) {
      int enough = (int) Math.ceil(wetPerCoat(mixture, job) * job.coats() / brushUm);
      text.mind(
          "a brushed coat is usually %s wet (common practice, no source); at that it takes %d coats"
              .formatted(text.film(brushUm), enough));
    }
    if (job.dryFilmUm() > usual.buildLimitUm()) {
      text.mind(
          "%s dry is more than %s's build limit of %s; thicker is likely to craze later (common practice, no source)"
              .formatted(
                  text.film(job.dryFilmUm()), usual.name(), text.film(usual.buildLimitUm())));
    } else {
      text.line(
          "build",
          "%s %% of %s's limit of %s"
              .formatted(
                  Show.fixed(100 * job.dryFilmUm() / usual.buildLimitUm(), 0),
                  usual.name(),
                  text.film(usual.buildLimitUm())));
    }
  }
}
