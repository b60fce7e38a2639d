package coatwright.cli;

import coatwright.film.Finish;
import coatwright.film.SpiritDrying;
import coatwright.mix.Cut;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What the mixing commands read alike, and the sentences for what contradicts itself. */
final class JarWords {
  /** Strength taken where nobody says; common practice, no source. */
  static final double USUAL_STRENGTH_PCT = 95;

  private static final double DISAGREE = 1.05;

  private JarWords() {}

  static double strengthPct(@Nullable String typed) {
    return typed == null ? USUAL_STRENGTH_PCT : Quantities.volumeFractionPct("--strength", typed);
  }

  /** "95 % spirit, as typed" or the assumption. */
  static String strengthFrom(@Nullable String typed) {
    return typed == null
        ? "spirit taken as 95 % by volume, common practice (no source); --strength says otherwise"
        : "spirit of " + typed + " as told, its density after OIML R 22";
  }

  static Cut cut(String option, String typed) {
    return new Cut(Quantities.cutGPerL(option, typed));
  }

  /**
   * A cut told as flakes to spirit, as solids by weight, or as both if they agree.
   *
   * @throws RefusedInput if neither was given or they contradict each other
   */
  static Cut cut(@Nullable String cutTyped, @Nullable String solidsTyped, double strengthPct) {
    if (cutTyped == null && solidsTyped == null) {
      throw RefusedInput.of("cut", "it is needed", "add --cut 2lb or --solids 23%");
    }
    if (solidsTyped == null) {
      return cut("--cut", cutTyped == null ? "" : cutTyped);
    }
    Cut bySolids = Cut.ofSolidsMassPct(Quantities.percent("--solids", solidsTyped), strengthPct);
    if (cutTyped != null) {
      Cut named = cut("--cut", cutTyped);
      if (apart(named.gPerL(), bySolids.gPerL())) {
        throw RefusedInput.of(
            "--cut \"%s\" and --solids \"%s\"".formatted(cutTyped, solidsTyped),
            "they contradict each other: a %s cut has %s %% solids by weight, and %s solids is a %s cut"
                .formatted(
                    cutTyped,
                    Show.fixed(named.solidsMassPct(strengthPct), 1),
                    solidsTyped,
                    both(bySolids)),
            "leave out the one you did not weigh, or let a sample dry: coatwright jar residue");
      }
      return named;
    }
    return bySolids;
  }

  /** Whether two figures for one thing differ by more than a twentieth. */
  static boolean apart(double one, double other) {
    double low = Math.min(one, other);
    return Math.max(one, other) > DISAGREE * low + 1e-9;
  }

  static String both(Cut cut) {
    return "%s lb (%s g/L)".formatted(Show.fixed(cut.lbPerUsGal(), 2), Show.fixed(cut.gPerL(), 0));
  }

  /** A finish this shop knows. */
  static Finish finish(Shared shared, String name) {
    Map<String, Finish> known = shared.hall.finishes(shared.place());
    Finish finish = known.get(name);
    if (finish == null) {
      throw RefusedInput.of(
          "--finish \"" + name + "\"",
          "this is not a finish this shop knows (" + String.join(", ", known.keySet()) + ")",
          "use one of them, or add a finish file to the settings");
    }
    return finish;
  }

  /**
   * A finish this shop knows that is flakes in spirit: only that has a cut.
   *
   * @throws RefusedInput for any other, naming it and what a cut is
   */
  static Finish shellac(Shared shared, String name) {
    Finish finish = finish(shared, name);
    if (!(finish.drying() instanceof SpiritDrying)) {
      throw RefusedInput.of(
          "--finish \"" + name + "\"",
          "a cut counts flakes in spirit, and %s is no shellac".formatted(finish.title()),
          "name a shellac; what such a can leaves on the wood, coatwright outlook --finish %s --air 20C,50%% --wet-film 75um says"
              .formatted(name));
    }
    return finish;
  }

  /** A whole number of coats. */
  static int coats(@Nullable String typed) {
    if (typed == null) {
      return 1;
    }
    if (!typed.matches("[1-9][0-9]?")) {
      throw RefusedInput.of(
          "--coats \"" + typed + "\"", "coats are counted from 1 to 99", "write it like 4");
    }
    return Integer.parseInt(typed);
  }
}
