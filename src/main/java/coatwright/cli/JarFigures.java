package coatwright.cli;

import coatwright.mix.Cut;
import coatwright.mix.Solution;
import java.util.OptionalDouble;

/** What every mixing command tells of a mixture; the names are the contract's JSON keys. */
record JarFigures(
    OptionalDouble cutLbPerUsGal,
    OptionalDouble cutLbPerImpGal,
    OptionalDouble cutGPerL,
    OptionalDouble flakesG,
    OptionalDouble spiritMl,
    OptionalDouble volumeMl,
    OptionalDouble solidsMassPct,
    OptionalDouble solidsVolumePct,
    OptionalDouble densityKgPerM3,
    OptionalDouble strengthVolPct) {

  /** Of a mixture of known size. */
  static JarFigures of(Solution mixture) {
    return new JarFigures(
        OptionalDouble.of(mixture.cut().lbPerUsGal()),
        OptionalDouble.of(mixture.cut().lbPerImpGal()),
        OptionalDouble.of(mixture.cut().gPerL()),
        OptionalDouble.of(mixture.flakesG()),
        OptionalDouble.of(mixture.spiritMl()),
        OptionalDouble.of(mixture.volumeMl()),
        OptionalDouble.of(mixture.solidsMassPct()),
        OptionalDouble.of(mixture.solidsVolumePct()),
        OptionalDouble.of(mixture.densityKgPerM3()),
        OptionalDouble.of(mixture.strengthVolPct()));
  }

  /** Of a cut, whatever the size of the jar. */
  static JarFigures of(Cut cut, double strengthVolPct) {
    Solution litre = Solution.ofSpirit(cut, 1000, strengthVolPct);
    JarFigures all = of(litre);
    OptionalDouble none = OptionalDouble.empty();
    return new JarFigures(
        all.cutLbPerUsGal(),
        all.cutLbPerImpGal(),
        all.cutGPerL(),
        none,
        none,
        none,
        all.solidsMassPct(),
        all.solidsVolumePct(),
        all.densityKgPerM3(),
        all.strengthVolPct());
  }

  /** Of a finish that is no shellac: nothing but what stays of its volume. */
  static JarFigures ofSolids(double solidsVolumePct) {
    OptionalDouble none = OptionalDouble.empty();
    return new JarFigures(
        none, none, none, none, none, none, none, OptionalDouble.of(solidsVolumePct), none, none);
  }

  /** Where nothing but the volume is known. */
  static JarFigures ofVolume(double volumeMl) {
    OptionalDouble none = OptionalDouble.empty();
    return new JarFigures(
        none, none, none, none, none, OptionalDouble.of(volumeMl), none, none, none, none);
  }

  /** Where nothing is known of the mixture. */
  static JarFigures none() {
    OptionalDouble none = OptionalDouble.empty();
    return new JarFigures(none, none, none, none, none, none, none, none, none, none);
  }
}
