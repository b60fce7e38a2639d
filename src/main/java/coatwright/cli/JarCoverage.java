package coatwright.cli;

import static coatwright.quantity.Conversions.M2_PER_FT2;
import static coatwright.quantity.Conversions.ML_PER_IMP_GAL;
import static coatwright.quantity.Conversions.ML_PER_US_GAL;

import coatwright.film.Curing;
import coatwright.film.Drying;
import coatwright.film.Finish;
import coatwright.film.LacquerDrying;
import coatwright.film.SpiritDrying;
import coatwright.mix.Cut;
import coatwright.mix.FilmBuild;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Wet and dry film, how far a litre goes, and the build against the finish's limit. */
@Command(
    name = "coverage",
    description = {
      "Wet and dry film of a coat, how far the mixture goes, and the build after several.",
      "Say the film in one way: wet, dry, or by what was used over an area.",
      "What a shellac leaves follows from its cut; what a lacquer, varnish or oil leaves, from its",
      "solids by volume: the can's if you give them, else the finish file's."
    },
    footer = {
      "",
      "Example: coatwright jar coverage --cut 1.5lb --wet-film 3mil --coats 6",
      "         coatwright jar coverage --cut 2lb --used 250mL --area 3m2",
      "         coatwright jar coverage --finish varnish-alkyd --solids-volume 48% --wet-film 3mil"
    })
final class JarCoverage implements Callable<Integer> {
  @Option(names = "--cut", paramLabel = "C", description = "The cut: 2lb, 240g/L.")
  @Nullable String cut;

  @Option(names = "--solids", paramLabel = "P", description = "Or the solids by weight: 23%%.")
  @Nullable String solids;

  @Option(
      names = "--solids-volume",
      paramLabel = "P",
      description = "Solids by volume of what is no shellac: 48%%. Default: the finish file's.")
  @Nullable String solidsVolume;

  @Option(
      names = "--thinned",
      paramLabel = "P",
      description = "Thinner added to what is no shellac, of its volume: 10%%. Default: none.")
  @Nullable String thinned;

  @Option(names = "--strength", paramLabel = "S", description = "Of the spirit. Default: 95%%.")
  @Nullable String strength;

  @Option(names = "--wet-film", paramLabel = "X", description = "Wet film of a coat: 3mil, 75um.")
  @Nullable String wetFilm;

  @Option(names = "--dry-film", paramLabel = "X", description = "Or dry film of a coat: 10um.")
  @Nullable String dryFilm;

  @Option(names = "--used", paramLabel = "V", description = "Or mixture used for a coat: 250mL ...")
  @Nullable String used;

  @Option(names = "--area", paramLabel = "A", description = "... over this area: 3m2, 32ft2.")
  @Nullable String area;

  @Option(names = "--coats", paramLabel = "N", description = "Coats like that. Default: 1.")
  @Nullable String coats;

  @Option(
      names = "--finish",
      paramLabel = "F",
      description = "Finish whose build limit counts. Default: shellac-pale.")
  String finish = "shellac-pale";

  @Mixin Help help = new Help();
  private final Shared shared;

  JarCoverage(Shared shared) {
    this.shared = shared;
  }

  /** The answer. */
  record Answer(
      @JsonUnwrapped JarFigures mixture,
      double wetFilmUm,
      double dryFilmUm,
      int coats,
      double buildUm,
      double coverageM2PerL,
      OptionalDouble areaM2,
      OptionalDouble mixturePerCoatMl,
      String finish,
      double buildLimitUm,
      int coatsToLimit) {}

  /** What a wet film holds that stays. */
  private record Solids(double share, String mixture, JarFigures figures, String from) {}

  @Override
  public Integer call() {
    Finish whose = JarWords.finish(shared, finish);
    Solids stays = whose.drying() instanceof SpiritDrying ? ofCut() : ofCan(whose);
    OptionalDouble areaM2 =
        area == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(Quantities.areaM2("--area", area));
    double wetUm = wetUm(stays.share(), areaM2);
    double dryUm = wetUm * stays.share();
    int n = JarWords.coats(coats);
    Answer answer =
        new Answer(
            stays.figures(),
            wetUm,
            dryUm,
            n,
            n * dryUm,
            FilmBuild.coverageM2PerL(dryUm, stays.share()),
            areaM2,
            areaM2.isPresent()
                ? OptionalDouble.of(areaM2.getAsDouble() * wetUm)
                : OptionalDouble.empty(),
            whose.name(),
            whose.buildLimitUm(),
            (int) Math.floor(whose.buildLimitUm() / dryUm));
    if (shared.json) {
      shared.printJson(answer);
    } else {
      print(stays, answer);
    }
    return 0;
  }

  private Solids ofCut() {
    if (solidsVolume != null || thinned != null) {
      throw RefusedInput.of(
          solidsVolume == null ? "--thinned" : "--solids-volume",
          finish + " is a shellac, and what a shellac leaves follows from its cut",
          "give --cut 2lb or --solids 23%, after thinning; or name the finish you mean: --finish"
              + " varnish-alkyd");
    }
    double strengthPct = JarWords.strengthPct(strength);
    Cut known = JarWords.cut(cut, solids, strengthPct);
    double share = FilmBuild.solidsFraction(known.gPerL());
    if (share < 0.01) {
      throw RefusedInput.of(
          "cut", "a mixture that leaves a film has at least 12 g/L", "write it like 2lb");
    }
    return new Solids(
        share,
        "a " + new JarText(shared).cut(known) + " cut",
        JarFigures.of(known, strengthPct),
        "resin of 1140 kg/m³ and spirit taken to add up");
  }

  private Solids ofCan(Finish whose) {
    if (cut != null || solids != null || strength != null) {
      String given = cut != null ? "--cut" : solids != null ? "--solids" : "--strength";
      throw RefusedInput.of(
          given,
          "a cut counts flakes in spirit, and %s is no shellac".formatted(whose.title()),
          "give its solids by volume from the data sheet, --solids-volume 48%, or leave all out for"
              + " the finish file's");
    }
    double statedPct =
        solidsVolume == null
            ? solidsVolPct(whose.drying())
            : Quantities.percent("--solids-volume", solidsVolume);
    if (statedPct < 2 || statedPct > 100) {
      throw RefusedInput.of(
          "--solids-volume \"" + solidsVolume + "\"",
          "a finish that leaves a film has 2 to 100 % solids by volume",
          "take it from the data sheet, like 48%");
    }
    double thinnedPct = thinned == null ? 0 : Quantities.percent("--thinned", thinned);
    double share = FilmBuild.thinnedSolidsFraction(statedPct / 100, thinnedPct);
    return new Solids(
        share,
        whose.title()
            + (thinned == null ? "" : " with %s thinner".formatted(JarText.pct(thinnedPct))),
        JarFigures.ofSolids(100 * share),
        solidsVolume == null
            ? "solids of %s by volume are the finish file's, not your can's"
                .formatted(JarText.pct(statedPct))
            : "solids by volume as you gave them");
  }

  private static double solidsVolPct(Drying drying) {
    if (drying instanceof Curing curing) {
      return curing.facts().solidsVolPct();
    }
    if (drying instanceof LacquerDrying lacquer) {
      return lacquer.solidsVolPct();
    }
    throw new IllegalArgumentException("solids of " + drying.family() + " follow from a cut");
  }

  private double wetUm(double share, OptionalDouble areaM2) {
    int ways = (wetFilm == null ? 0 : 1) + (dryFilm == null ? 0 : 1) + (used == null ? 0 : 1);
    if (ways != 1) {
      throw RefusedInput.of(
          "jar coverage",
          ways == 0 ? "it needs a film" : "the film is told in more than one way",
          "give one of --wet-film, --dry-film, or --used with --area");
    }
    if (wetFilm != null) {
      return Quantities.lengthUm("--wet-film", wetFilm);
    }
    if (dryFilm != null) {
      return FilmBuild.wetFilmUm(Quantities.lengthUm("--dry-film", dryFilm), share);
    }
    if (areaM2.isEmpty()) {
      throw RefusedInput.of("--used", "it needs the area it went over", "add --area 3m2");
    }
    return FilmBuild.wetFilmUmFromConsumption(
        Quantities.volumeMl("--used", used == null ? "" : used) / 1000, areaM2.getAsDouble());
  }

  private void print(Solids stays, Answer answer) {
    JarText text = new JarText(shared);
    text.figure(
        "%s wet of %s leaves %s dry"
            .formatted(
                text.film(answer.wetFilmUm()), stays.mixture(), text.film(answer.dryFilmUm())));
    text.line("solids", JarText.pct(100 * stays.share()) + " by volume");
    text.line("goes as far as", reach(answer.coverageM2PerL(), text.units()));
    answer
        .mixturePerCoatMl()
        .ifPresent(ml -> text.line("a coat takes", text.volume(ml) + ", nothing wasted"));
    text.line(
        "build",
        "%s make%s %s, %s %% of %s's limit of %s"
            .formatted(
                answer.coats() == 1 ? "1 coat" : answer.coats() + " coats",
                answer.coats() == 1 ? "s" : "",
                text.film(answer.buildUm()),
                Show.fixed(100 * answer.buildUm() / answer.buildLimitUm(), 0),
                answer.finish(),
                text.film(answer.buildLimitUm())));
    text.line("coats to limit", String.valueOf(answer.coatsToLimit()));
    text.from(
        "dry film = wet film × solids by volume; "
            + stays.from()
            + "; what is sanded away or soaks in is not counted; the limit is the finish file's");
    if (answer.buildUm() > answer.buildLimitUm()) {
      text.mind(
          "the build is past the limit; thicker is likely to craze later (common practice, no"
              + " source)");
    }
    text.end();
  }

  private static String reach(double m2PerL, UnitSystem units) {
    String metric = Show.fixed(m2PerL, 1) + " m²/L";
    return switch (units) {
      case METRIC -> metric;
      case US ->
          Show.fixed(m2PerL * ML_PER_US_GAL / 1000 / M2_PER_FT2, 0)
              + " ft² a gallon ("
              + metric
              + ")";
      case IMPERIAL ->
          Show.fixed(m2PerL * ML_PER_IMP_GAL / 1000 / M2_PER_FT2, 0)
              + " ft² an imperial gallon ("
              + metric
              + ")";
    };
  }
}
