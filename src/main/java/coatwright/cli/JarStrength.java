package coatwright.cli;

import coatwright.film.CoatOutcome;
import coatwright.film.FilmParameters;
import coatwright.film.JarCheck;
import coatwright.mix.Cut;
import coatwright.mix.Spirit;
import coatwright.outlook.Outlook;
import coatwright.quantity.Conversions;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** True strength of a spirit, what brings it to another, and what its water does to a film. */
@Command(
    name = "strength",
    description = {
      "True strength of spirit from its hydrometer and temperature; what brings it to another;",
      "and what the water in it does to a film."
    },
    footer = {
      "",
      "Example: coatwright jar strength --reading 94.1%% --temp 27C",
      "         coatwright jar strength --reading 94.1%% --temp 27C --volume 1L --to 90%%",
      "         coatwright jar strength --reading 90%% --temp 20C --air 20C,65%%"
    })
final class JarStrength implements Callable<Integer> {
  @Option(
      names = "--reading",
      required = true,
      paramLabel = "S",
      description = "What the hydrometer's stem shows: 94.1%%, 188proof.")
  String reading = "";

  @Option(
      names = "--temp",
      required = true,
      paramLabel = "T",
      description = "Of the spirit: 27C, 80F.")
  String temp = "";

  @Option(
      names = "--marked",
      paramLabel = "T",
      description = "Temperature on its scale: 20C or 60F. Default: 20C, for proof 60F.")
  @Nullable String marked;

  @Option(names = "--volume", paramLabel = "V", description = "How much of it there is: 1L.")
  @Nullable String volume;

  @Option(names = "--to", paramLabel = "S", description = "Strength wanted: 90%%.")
  @Nullable String to;

  @Option(
      names = "--with",
      paramLabel = "S",
      description = "Strength of what is poured in. Default: water, 0%%.")
  @Nullable String with;

  @Option(names = "--cut", paramLabel = "C", description = "Cut it is for. Default: 1.5lb.")
  String cut = "1.5lb";

  @Option(
      names = "--air",
      paramLabel = "T,H",
      description = "Air a coat would meet, to compare its clouding: 20C,65%%.")
  @Nullable String air;

  @Option(names = "--finish", paramLabel = "F", description = "Finish. Default: shellac-pale.")
  String finish = "shellac-pale";

  @Mixin Help help = new Help();
  private final Shared shared;

  JarStrength(Shared shared) {
    this.shared = shared;
  }

  /** What is poured in, and what comes of it. */
  record Blend(
      double volumeMl,
      double addMl,
      double addStrengthVolPct,
      double blendVolumeMl,
      double blendStrengthVolPct,
      double shrinkageMl) {}

  /** One strength's clouding in the air asked about. */
  record Clouding(double strengthVolPct, Outlook.Clouding clouding) {}

  /** The answer. */
  record Answer(
      double readingVolPct,
      double spiritTempC,
      double markedForC,
      double strengthVolPct,
      double proof,
      double waterVolPct,
      double cutLbPerUsGal,
      double cutGPerL,
      OptionalDouble jarWaterShareOfLimit,
      Optional<Blend> blend,
      Optional<Clouding> clouding,
      Optional<Clouding> cloudingAtUsualStrength) {}

  @Override
  public Integer call() {
    double readingPct = Quantities.volumeFractionPct("--reading", reading);
    double tempC = Quantities.temperatureC("--temp", temp);
    double markedC = markedC();
    double pct = Spirit.strengthFromReading(readingPct, tempC, markedC);
    Cut wanted = JarWords.cut("--cut", cut);
    Answer answer =
        new Answer(
            readingPct,
            tempC,
            markedC,
            pct,
            2 * Spirit.strengthAtProofTemperature(pct),
            100 - pct,
            wanted.lbPerUsGal(),
            wanted.gPerL(),
            jarShare(wanted, pct),
            blend(pct),
            clouding(pct),
            clouding(JarWords.USUAL_STRENGTH_PCT));
    if (shared.json) {
      shared.printJson(answer);
    } else {
      print(answer);
    }
    return 0;
  }

  private double markedC() {
    boolean proof = reading.toLowerCase(Locale.ROOT).contains("proof");
    if (marked == null) {
      return proof ? Spirit.PROOF_C : Spirit.REFERENCE_C;
    }
    double typed = Quantities.temperatureC("--marked", marked);
    for (double known : new double[] {Spirit.REFERENCE_C, Spirit.PROOF_C}) {
      if (Math.abs(typed - known) < 0.1) {
        return known;
      }
    }
    throw RefusedInput.of(
        "--marked \"" + marked + "\"",
        "alcoholometers reckoned with here are marked for 20C or 60F",
        "read the temperature printed on the scale");
  }

  private static OptionalDouble jarShare(Cut wanted, double pct) {
    boolean held = pct >= 50 && wanted.gPerL() >= 20 && wanted.gPerL() <= 600;
    return held
        ? OptionalDouble.of(JarCheck.blushNumber(FilmParameters.SHELLAC, wanted.gPerL(), pct, 0))
        : OptionalDouble.empty();
  }

  private Optional<Blend> blend(double pct) {
    if (to == null) {
      if (with != null || volume != null) {
        throw RefusedInput.of(
            with != null ? "--with" : "--volume", "it belongs to a blend", "add --to 90%");
      }
      return Optional.empty();
    }
    double wantedPct = Quantities.volumeFractionPct("--to", to);
    double addPct = with == null ? 0 : Quantities.volumeFractionPct("--with", with);
    if (with == null && wantedPct > pct) {
      throw RefusedInput.of(
          "--reading \"%s\" and --to \"%s\"".formatted(reading, to),
          "water only makes spirit weaker, and this is %s by volume".formatted(JarText.pct(pct)),
          "say how strong the stronger spirit is: --with 99.5%");
    }
    Spirit have = new Spirit(volume == null ? 1000 : Quantities.volumeMl("--volume", volume), pct);
    Spirit add = have.toReach(wantedPct, addPct);
    Spirit blend = have.with(add);
    return Optional.of(
        new Blend(
            have.volumeMl(),
            add.volumeMl(),
            addPct,
            blend.volumeMl(),
            blend.strengthVolPct(),
            have.shrinkageMl(add)));
  }

  private Optional<Clouding> clouding(double strengthPct) {
    if (air == null) {
      return Optional.empty();
    }
    Map<String, String> form = new LinkedHashMap<>();
    form.put("finish", finish);
    form.put("air", air);
    form.put("cut", cut);
    form.put("strength", strengthPct + "%");
    return shared
        .hall
        .outlook(shared.place(), form)
        .clouding()
        .map(clouding -> new Clouding(strengthPct, clouding));
  }

  private void print(Answer answer) {
    JarText text = new JarText(shared);
    text.figure(
        "This spirit is %s by volume at %s (%s proof)"
            .formatted(
                JarText.pct(answer.strengthVolPct()),
                text.temperature(20),
                Show.fixed(answer.proof(), 1)));
    text.line(
        "the stem showed",
        "%s at %s, on a scale for %s"
            .formatted(
                reading,
                text.temperature(answer.spiritTempC()),
                text.temperature(answer.markedForC())));
    text.line("water in it", JarText.pct(answer.waterVolPct()));
    answer
        .jarWaterShareOfLimit()
        .ifPresent(share -> text.line("in a %s cut".formatted(cut), jarSays(share)));
    answer.clouding().ifPresent(c -> text.line("in this air", cloudingSays(c)));
    answer.cloudingAtUsualStrength().ifPresent(c -> text.line("", cloudingSays(c)));
    answer.blend().ifPresent(blend -> printBlend(text, blend));
    text.from(
        "density of ethanol and water, and the glass, after OIML R 22; denatured alcohol holds"
            + " other things too and reads that much less exactly; US proof is twice the strength"
            + " at "
            + text.temperature(Conversions.celsiusFromFahrenheit(60)));
    if (answer.jarWaterShareOfLimit().orElse(0) > CoatOutcome.WEAK_SPIRIT_S) {
      text.mind(
          "the spirit itself is too weak for this cut, whatever the weather: a coat would start"
              + " close to clouding");
    }
    text.mind(JarText.SPIRIT);
    text.end();
  }

  private static String jarSays(double share) {
    return "the water is %s of what makes the resin give way, in the jar, before any weather"
        .formatted(JarText.share(100 * share));
  }

  private static String cloudingSays(Clouding one) {
    Outlook.Clouding clouding = one.clouding();
    String words =
        "spirit of %s: clouding %s".formatted(JarText.pct(one.strengthVolPct()), clouding.level());
    if (clouding.waterPeakPct().isEmpty() || clouding.waterLimitPct().isEmpty()) {
      return words;
    }
    return words
        + ", water in the film peaks at %s by volume of %s"
            .formatted(
                JarText.pct(clouding.waterPeakPct().getAsDouble()),
                JarText.pct(clouding.waterLimitPct().getAsDouble()));
  }

  private void printBlend(JarText text, Blend blend) {
    text.line(
        "for " + to,
        "add %s of %s to %s: %s"
            .formatted(
                text.volume(blend.addMl()),
                blend.addStrengthVolPct() == 0
                    ? "water"
                    : "spirit of " + JarText.pct(blend.addStrengthVolPct()),
                text.volume(blend.volumeMl()),
                text.volume(blend.blendVolumeMl())));
    text.line("shrinks by", text.volume(blend.shrinkageMl()));
  }
}
