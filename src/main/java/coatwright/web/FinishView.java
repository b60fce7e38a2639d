package coatwright.web;

import coatwright.film.Finish;
import coatwright.film.LacquerDrying;
import coatwright.film.Layer;
import coatwright.film.SolventDrying;
import coatwright.film.SpiritDrying;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A finish as the interface tells it: flat, with what only some families have left out. */
record FinishView(
    String name,
    String title,
    String family,
    String dryingSet,
    double referenceTempC,
    double referenceRhPct,
    OptionalDouble usualCutGPerL,
    OptionalDouble cutLnSd,
    OptionalDouble strengthVolPct,
    Optional<String> blend,
    OptionalDouble solidsVolPct,
    OptionalDouble solidsLnSd,
    Map<String, Double> wetFilmUmByMethod,
    double wetFilmLnSd,
    double lowestTempC,
    double highestTempC,
    OptionalDouble recoatUntilMin,
    int testDueMonths,
    double buildLimitUm,
    String waxNote,
    List<String> mayGoOver,
    List<String> mayGoUnder,
    List<String> basis,
    List<String> cautions) {

  static FinishView of(Finish f) {
    Optional<SpiritDrying> spirit =
        Optional.of(f.drying())
            .filter(SpiritDrying.class::isInstance)
            .map(SpiritDrying.class::cast);
    Optional<LacquerDrying> lacquer =
        Optional.of(f.drying())
            .filter(LacquerDrying.class::isInstance)
            .map(LacquerDrying.class::cast);
    return new FinishView(
        f.name(),
        f.title(),
        f.family(),
        f.drying() instanceof SolventDrying drying
            ? drying.parameters().name()
            : f.drying().stamp().name(),
        f.referenceTempC(),
        f.referenceRhPct(),
        number(spirit.map(SpiritDrying::usualCutGPerL)),
        number(spirit.map(SpiritDrying::cutLnSd)),
        number(spirit.map(SpiritDrying::strengthVolPct)),
        lacquer.map(l -> l.blend().name()),
        number(lacquer.map(LacquerDrying::solidsVolPct)),
        number(lacquer.map(LacquerDrying::solidsLnSd)),
        f.wetFilmUmByMethod(),
        f.wetFilmLnSd(),
        f.lowestTempC(),
        f.highestTempC(),
        f.recoatUntilMin(),
        f.testDueMonths(),
        f.buildLimitUm(),
        f.waxNote(),
        words(f.mayGoOver()),
        words(f.mayGoUnder()),
        f.basis(),
        f.cautions());
  }

  private static List<String> words(List<Layer> layers) {
    return layers.stream().map(Layer::toString).toList();
  }

  private static OptionalDouble number(Optional<Double> value) {
    return value.isPresent() ? OptionalDouble.of(value.get()) : OptionalDouble.empty();
  }
}
