package coatwright.outlook;

import coatwright.film.Curing;
import coatwright.film.Drying;
import coatwright.film.ShopPrior;
import java.util.ArrayList;
import java.util.List;

/**
 * What a shop's own journal has taught of its films of one finish, with the counts it rests on.
 *
 * @param prior where the shop's next film starts from
 * @param rubOuts rub-outs noted with their outcome
 * @param rubOutsFine how many of them stayed fine
 * @param coatsLookedAt coats of which clouding was noted, or that there was none
 * @param coatsClouded how many of them clouded
 */
public record ShopLearned(
    ShopPrior prior, int rubOuts, int rubOutsFine, int coatsLookedAt, int coatsClouded) {

  /** A shop that has taught nothing yet. */
  public static final ShopLearned NOTHING = new ShopLearned(ShopPrior.UNTAUGHT, 0, 0, 0, 0);

  private static final int FEW = 4;

  /** What rounds to once the model's water is not worth a sentence. */
  private static final double LEAST_TOLD_LN = 0.005;

  /** What is learned, a sentence each with its count; none from an untaught shop. */
  public List<String> sentences(Drying drying) {
    List<String> said = new ArrayList<>();
    if (prior.hardeningParts() > 0) {
      String from =
          Judge.text(
              ": learned from %s%s.", parts(prior.hardeningParts()), few(prior.hardeningParts()));
      said.add((drying instanceof Curing ? cures() : hardens()) + from);
    }
    if (rubOuts > 0) {
      said.add(
          Judge.text("Rub-outs in this shop that stayed fine: %d of %d.", rubOutsFine, rubOuts));
    }
    if (coatsLookedAt > 0) {
      said.add(
          Judge.text(
              "Coats looked at in this shop that clouded: %d of %d.", coatsClouded, coatsLookedAt));
    }
    if (Math.abs(prior.cloudingLn()) >= LEAST_TOLD_LN) {
      said.add(
          Judge.text(
              "This shop's films bear %.2f times the water the model says: learned from %s%s.",
              Math.exp(prior.cloudingLn()),
              parts(prior.cloudingParts()),
              few(prior.cloudingParts())));
    }
    return said;
  }

  private String hardens() {
    return Judge.text(
        "This shop's films harden %.1f times as fast as the model's middle, and are rubbed out at"
            + " %.1f times the residue",
        prior.hardensTimes(), Math.exp(prior.thresholdLn()));
  }

  private String cures() {
    return Judge.text(
        "This shop's films of this finish take %.2f times as long to harden as its file says",
        prior.curesTimes());
  }

  private static String parts(int count) {
    return count == 1 ? "1 part" : count + " parts";
  }

  private static String few(int count) {
    return count < FEW ? ", too few to say much" : "";
  }
}
