package coatwright.cli;

import coatwright.mix.Cut;
import coatwright.mix.DriedSample;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The cut of a jar nobody knows, from a sample weighed wet and dry. */
@Command(
    name = "residue",
    description = {
      "The cut of an unknown jar: weigh a sample, let it dry right out, weigh what stayed.",
      "With --dish both weights are with the dish; without, of the sample alone."
    },
    footer = {
      "",
      "Example: coatwright jar residue --wet 10.0g --dry 1.8g",
      "         coatwright jar residue --dish 2.10g --wet 3.11g --dry 2.35g --step 0.01g"
    })
final class JarResidue implements Callable<Integer> {
  @Option(
      names = "--wet",
      required = true,
      paramLabel = "W",
      description = "Before: 10.0g, 0.35oz.")
  String wet = "";

  @Option(names = "--dry", required = true, paramLabel = "W", description = "After drying: 1.8g.")
  String dry = "";

  @Option(
      names = {"--dish", "--tare"},
      paramLabel = "W",
      description = "The empty dish, if it was weighed along.")
  @Nullable String dish;

  @Option(names = "--step", paramLabel = "W", description = "Smallest step of the scale: 0.1g.")
  @Nullable String step;

  @Option(names = "--called", paramLabel = "C", description = "The cut the jar is called: 2lb.")
  @Nullable String called;

  @Option(names = "--strength", paramLabel = "S", description = "Of the spirit. Default: 95%%.")
  @Nullable String strength;

  @Mixin Help help = new Help();
  private final Shared shared;

  JarResidue(Shared shared) {
    this.shared = shared;
  }

  /** The answer. */
  record Answer(
      @JsonUnwrapped JarFigures mixture,
      double wetG,
      double residueG,
      OptionalDouble cutErrorGPerL,
      OptionalDouble calledCutGPerL,
      OptionalDouble calledSolidsMassPct) {}

  @Override
  public Integer call() {
    double strengthPct = JarWords.strengthPct(strength);
    DriedSample sample = sample();
    OptionalDouble errorGPerL =
        step == null
            ? OptionalDouble.empty()
            : OptionalDouble.of(
                sample.cutErrorGPerL(Quantities.massG("--step", step), strengthPct));
    if (shared.json) {
      OptionalDouble calledGPerL =
          called == null
              ? OptionalDouble.empty()
              : OptionalDouble.of(JarWords.cut("--called", called).gPerL());
      OptionalDouble calledPct =
          called == null
              ? OptionalDouble.empty()
              : OptionalDouble.of(JarWords.cut("--called", called).solidsMassPct(strengthPct));
      shared.printJson(
          new Answer(
              JarFigures.of(sample.cut(strengthPct), strengthPct),
              sample.wetG(),
              sample.dryG(),
              errorGPerL,
              calledGPerL,
              calledPct));
    } else {
      print(sample, strengthPct, errorGPerL);
    }
    return 0;
  }

  private DriedSample sample() {
    double wetG = Quantities.massG("--wet", wet);
    double dryG = Quantities.massG("--dry", dry);
    double dishG = dish == null ? 0 : Quantities.massG("--dish", dish);
    if (dish != null && (dishG > dryG || dishG >= wetG)) {
      throw RefusedInput.of(
          "--dish \"%s\" and --%s \"%s\""
              .formatted(dish, dishG > dryG ? "dry" : "wet", dishG > dryG ? dry : wet),
          "the empty dish cannot weigh more than the dish with the sample in it",
          "weigh the dish empty, then wet, then dry, or leave --dish out");
    }
    if (dryG >= wetG) {
      throw RefusedInput.of(
          "--wet \"%s\" and --dry \"%s\"".formatted(wet, dry),
          "a sample cannot weigh as much dry as it did wet",
          "check which weight was which");
    }
    if (dryG - dishG > 0.55 * (wetG - dishG)) {
      throw RefusedInput.of(
          "--wet \"%s\" and --dry \"%s\"".formatted(wet, dry),
          "%s %% would have stayed, and no spirit solution that pours holds over 55 %%"
              .formatted(Show.fixed(100 * (dryG - dishG) / (wetG - dishG), 0)),
          dish == null
              ? "let it dry longer, or give the empty dish with --dish"
              : "let it dry longer and weigh again");
    }
    return dish == null ? new DriedSample(wetG, dryG) : DriedSample.inDish(dishG, wetG, dryG);
  }

  private void print(DriedSample sample, double strengthPct, OptionalDouble errorGPerL) {
    JarText text = new JarText(shared);
    Cut cut = sample.cut(strengthPct);
    text.figure(
        "%s stayed of %s: a %s cut"
            .formatted(text.mass(sample.dryG()), text.mass(sample.wetG()), text.cut(cut)));
    text.line(
        "solids",
        "%s by weight, %s by volume"
            .formatted(JarText.pct(sample.solidsMassPct()), JarText.pct(cut.solidsVolumePct())));
    errorGPerL.ifPresent(
        error ->
            text.line(
                "the scale alone",
                "may put it %s wrong either way; a larger sample narrows that"
                    .formatted(text.cutStep(error))));
    if (called != null) {
      called(text, cut, called, strengthPct);
    }
    text.how(
        "spread a thin layer, let the spirit go in open air, then warm the residue until two"
            + " weighings agree; write the cut on the jar");
    text.from(
        "the principle of ISO 3251, 100 (dry − dish)/(wet − dish), from memory; "
            + JarWords.strengthFrom(strength)
            + "; spirit left in the residue counts as resin, so the cut errs on the thick side");
    text.mind(
        "no oven while spirit is left in it: the vapour can ignite; some denatured alcohols hold"
            + " methanol, which passes the skin; read the safety data sheet");
    text.end();
  }

  private static void called(JarText text, Cut cut, String typed, double strengthPct) {
    Cut named = JarWords.cut("--called", typed);
    if (JarWords.apart(named.gPerL(), cut.gPerL())) {
      text.mind(
          "the jar is called %s, which is %s solids by weight, and the sample has %s: one of the two is wrong"
              .formatted(
                  typed,
                  JarText.pct(named.solidsMassPct(strengthPct)),
                  JarText.pct(cut.solidsMassPct(strengthPct))));
    } else {
      text.line("called", typed + ", and the sample agrees within a twentieth");
    }
  }
}
