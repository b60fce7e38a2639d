package coatwright.cli;

import coatwright.mix.Cut;
import coatwright.mix.Solution;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How much spirit thins a mixture to a smaller cut. */
@Command(
    name = "thin",
    description = "How much spirit to add to a mixture for a smaller cut.",
    footer = {"", "Example: coatwright jar thin --have 500mL --from 3lb --to 1.5lb"})
final class JarThin implements Callable<Integer> {
  @Option(
      names = "--have",
      required = true,
      paramLabel = "V",
      description = "Mixture there is: 500mL, 1pt.")
  String have = "";

  @Option(names = "--from", required = true, paramLabel = "C", description = "Its cut: 3lb.")
  String from = "";

  @Option(names = "--to", required = true, paramLabel = "C", description = "Cut wanted: 1.5lb.")
  String to = "";

  @Option(names = "--strength", paramLabel = "S", description = "Of the spirit. Default: 95%%.")
  @Nullable String strength;

  @Mixin Help help = new Help();
  private final Shared shared;

  JarThin(Shared shared) {
    this.shared = shared;
  }

  /** The answer; the figures are of the thinned mixture. */
  record Answer(
      @JsonUnwrapped JarFigures mixture, double haveMl, double fromCutGPerL, double addSpiritMl) {}

  @Override
  public Integer call() {
    double strengthPct = JarWords.strengthPct(strength);
    Cut now = JarWords.cut("--from", from);
    Cut wanted = JarWords.cut("--to", to);
    if (now.gPerL() < 1 || wanted.gPerL() < 1) {
      throw RefusedInput.of("cut", "a mixture has at least 1 g/L", "write it like 2lb or 240g/L");
    }
    Solution had = Solution.ofVolume(now, Quantities.volumeMl("--have", have), strengthPct);
    if (wanted.gPerL() > now.gPerL()) {
      throw thicker(had, wanted);
    }
    Solution thinned = had.thinnedTo(wanted);
    double addMl = thinned.spiritMl() - had.spiritMl();
    if (shared.json) {
      shared.printJson(
          new Answer(JarFigures.of(thinned), had.volumeMl(), now.gPerL(), Math.max(0, addMl)));
    } else {
      print(had, thinned, Math.max(0, addMl));
    }
    return 0;
  }

  private RefusedInput thicker(Solution had, Cut wanted) {
    double moreG = had.strengthenedTo(wanted).flakesG() - had.flakesG();
    return RefusedInput.of(
        "--from \"%s\" and --to \"%s\"".formatted(from, to),
        "spirit only makes a cut smaller, and %s g/L is more than %s g/L"
            .formatted(Show.fixed(wanted.gPerL(), 0), Show.fixed(had.cut().gPerL(), 0)),
        "dissolve %s g more flakes in it instead".formatted(Show.fixed(moreG, moreG < 20 ? 1 : 0)));
  }

  private void print(Solution had, Solution thinned, double addMl) {
    JarText text = new JarText(shared);
    text.figure(
        "Add %s of spirit to %s: %s of a %s cut"
            .formatted(
                text.volume(addMl),
                text.volume(had.volumeMl()),
                text.volume(thinned.volumeMl()),
                text.cut(thinned.cut())));
    text.line(
        "in the jar now",
        "%s of flakes in %s of spirit"
            .formatted(text.mass(had.flakesG()), text.volume(had.spiritMl())));
    text.line("parts", Show.fixed(addMl / had.volumeMl(), 2) + " of spirit to 1 of mixture");
    text.line(
        "solids",
        "%s by weight, %s by volume, before %s and %s"
            .formatted(
                JarText.pct(thinned.solidsMassPct()),
                JarText.pct(thinned.solidsVolumePct()),
                JarText.pct(had.solidsMassPct()),
                JarText.pct(had.solidsVolumePct())));
    text.how("add nine tenths of it, stir, then the rest; write the new cut on the jar");
    text.from(
        "the flakes stay, the spirit grows; "
            + text.ideal()
            + "; "
            + JarWords.strengthFrom(strength)
            + "; a dilution chart in circulation is more than 15 % off this arithmetic in three of"
            + " its 26 cells");
    text.mind(JarText.SPIRIT);
    text.end();
  }
}
