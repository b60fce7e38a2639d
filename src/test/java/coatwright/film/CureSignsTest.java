package coatwright.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.film.CureMoment.AirExchange;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.ReferenceTable;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** What the air at the moment of coating says, and what a data sheet does to the thresholds. */
class CureSignsTest {
  private static <T extends SlowCure> Optional<T> reason(CureSigns signs, Class<T> kind) {
    return signs.slowCure().stream().filter(kind::isInstance).map(kind::cast).findFirst();
  }

  @Test
  void nothingIsSlowInTheReferenceAir() {
    for (Curing curing : Cures.all()) {
      CureSigns signs = CureSigns.at(curing, CureMoment.of(20, 50, 20, 90));
      assertThat(signs.ratioToReference()).isCloseTo(1, within(1e-9));
      assertThat(signs.slowCure()).isEmpty();
      assertThat(signs.stops()).isFalse();
      assertThat(signs.recoatUntilMin().orElseThrow())
          .isGreaterThan(signs.recoatFromMin().orElseThrow());
    }
  }

  @Test
  void anUnairedRoomAndColdAreToldForOilEachWithItsNumber() {
    CureMoment cellar = new CureMoment(8, 60, 7, 0.1, 80, 0, AirExchange.NO);
    CureSigns signs = CureSigns.at(Cures.varnish(), cellar);
    assertThat(reason(signs, SlowCure.NoAirExchange.class)).isPresent();
    assertThat(reason(signs, SlowCure.Cold.class)).contains(new SlowCure.Cold(7, 10));
    assertThat(reason(signs, SlowCure.SlowRate.class).orElseThrow().ratio()).isBetween(0.3, 0.4);
    assertThat(signs.filmLowC()).isEqualTo(7);
  }

  /** The prototype prints a margin of 0.17 K at 10 °C and 50 %. */
  @Test
  void waterborneWarnsUnderTwoKelvinAboveItsFilmFormingTemperatureAndStopsBelowIt() {
    CureSigns close = CureSigns.at(Cures.water(), CureMoment.of(10, 50, 10, 100));
    assertThat(close.mfftMarginK().orElseThrow()).isCloseTo(0.17, within(0.01));
    assertThat(reason(close, SlowCure.CloseToLowestFilm.class)).isPresent();
    assertThat(close.stops()).isFalse();
    CureSigns below = CureSigns.at(Cures.water(), CureMoment.of(9, 50, 9, 100));
    assertThat(reason(below, SlowCure.NoCoalescence.class)).isPresent();
    assertThat(below.stops()).isTrue();
    assertThat(below.ratioToReference()).isZero();
    assertThat(below.recoatFromMin()).isEmpty();
  }

  @Test
  void coldWoodAloneCanKeepWaterborneFromForming() {
    CureSigns warm = CureSigns.at(Cures.water(), CureMoment.of(14, 50, 14, 100));
    CureSigns cold = CureSigns.at(Cures.water(), CureMoment.of(14, 50, 6, 100));
    assertThat(warm.mfftMarginK().orElseThrow()).isPositive();
    assertThat(cold.filmLowC()).isLessThan(warm.filmLowC() - 2);
    assertThat(reason(cold, SlowCure.CloseToLowestFilm.class).isPresent() || cold.stops()).isTrue();
  }

  @Test
  void saturatedAirTakesUpNoWater() {
    CureSigns signs = CureSigns.at(Cures.water(), CureMoment.of(20, 100, 20.5, 100));
    assertThat(signs.marginK()).isLessThan(1);
    assertThat(CureSigns.at(Cures.water(), CureMoment.of(20, 100, 20, 100)).stops()).isTrue();
  }

  @Test
  void twoPartInTheColdSaysWhereItStopsAndHowWarmItNeeds() {
    CureSigns signs = CureSigns.at(Cures.twoPart(), CureMoment.of(10, 50, 10, 100));
    SlowCure.Vitrifies stops = reason(signs, SlowCure.Vitrifies.class).orElseThrow();
    assertThat(stops.milestone()).isEqualTo(Milestone.RUB_OUT);
    assertThat(stops.stopsAtConversion()).isCloseTo(0.83, within(0.01));
    assertThat(stops.warmToC()).isBetween(15.0, 20.0);
    assertThat(signs.stops()).isTrue();
    Conversion warmed = Conversion.steady(Cures.twoPart(), stops.warmToC());
    assertThat(warmed.hoursTo(0.85)).isLessThan(30 * 24);
  }

  /** 4.44, 2.0 and 0.95 h at 10, 20 and 30 °C are the prototype's. */
  @Test
  void thePotLivesShorterInTheWarmth() {
    assertThat(potLifeH(10)).isCloseTo(4.44, within(0.006));
    assertThat(potLifeH(20)).isCloseTo(2.0, within(1e-9));
    assertThat(potLifeH(30)).isCloseTo(0.95, within(0.006));
  }

  private static double potLifeH(double airC) {
    return CureSigns.at(Cures.twoPart(), CureMoment.of(airC, 50, airC, 100))
        .potLifeH()
        .orElseThrow();
  }

  @Test
  void dewOnTheWoodIsToldForEveryFamily() {
    for (Curing curing : Cures.all()) {
      assertThat(CureSigns.at(curing, CureMoment.of(20, 80, 15, 90)).condensation()).isTrue();
      assertThat(CureSigns.at(curing, CureMoment.of(20, 50, 20, 90)).condensation()).isFalse();
    }
  }

  /**
   * The energies at which a rate doubles over ten kelvin, worked outside this project from the
   * Arrhenius law, drive the oil film's clock to twice its pace.
   */
  @Test
  void theOilsClockDoublesAtTheEnergyThatMakesARateDouble() {
    OxidativeCure v = Cures.varnish();
    for (ReferenceTable.Row row : ReferenceTable.read("kinetics/doubling_energy.csv")) {
      OxidativeCure doubling =
          new OxidativeCure(
              v.facts(),
              1000 * row.number("ea_for_doubling_kJ_per_mol"),
              v.damp(),
              v.referenceDryUm(),
              v.thicknessExponent(),
              v.hours(),
              v.recoatUntilHours());
      double ratio =
          doubling.rate(row.number("t2_C"), 0.5) / doubling.rate(row.number("t1_C"), 0.5);
      assertThat(ratio).isCloseTo(2, withinPercentage(0.001));
    }
  }

  /**
   * Oil on cotton (cotton-seed, peanut, rape): 61, 56 and 88 kJ/mol, from the abstract of "The
   * spontaneous igniting behaviour of oil-contaminated cotton"; ours lies among them.
   */
  @Test
  void theOilsEnergyLiesAmongThoseMeasuredOnOtherOils() {
    assertThat(Cures.varnish().energyJPerMol()).isBetween(56e3, 88e3);
  }

  private static StatedTimes stated(double tempC, Map<Milestone, Double> hours) {
    return new StatedTimes(
        tempC,
        50,
        90,
        hours,
        OptionalDouble.of(60),
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  @Test
  void aFittedFinishReachesWhatItsDataSheetStatesInTheStatedAir() {
    Map<Milestone, Double> hours = new EnumMap<>(Milestone.class);
    hours.put(Milestone.DRY_TO_TOUCH, 3.0);
    hours.put(Milestone.DRY_TO_RECOAT, 8.0);
    hours.put(Milestone.RUB_OUT, 120.0);
    for (Curing curing : Cures.all()) {
      Curing fitted = curing.fitted(stated(23, hours));
      double[] seconds =
          CureWalk.of(Cures.steady(fitted, 23, 0.5, 90)).secondsTo(CureMember.MIDDLE);
      hours.forEach(
          (m, h) ->
              assertThat(seconds[m.index()] / 3600)
                  .as("%s %s", fitted.family(), m)
                  .isCloseTo(h, withinPercentage(0.1)));
      assertThat(seconds[CureWalk.RECOAT_UNTIL] / 3600).isCloseTo(60, withinPercentage(0.1));
      assertThat(fitted.basisOf("touch")).isEqualTo(Basis.DATA_SHEET);
      assertThat(fitted.basisOf("sand")).isEqualTo(Basis.ASSUMED);
      assertThat(fitted.basisOf("recoat-until")).isEqualTo(Basis.DATA_SHEET);
      assertThat(fitted.basisOf("full-hardness").estimate()).isTrue();
    }
  }

  /** Twice every stated time is twice every time that is not stated. */
  @Test
  void whatIsNotStatedMovesAlongWithWhatIs() {
    OxidativeCure twice =
        Cures.varnish()
            .fitted(
                new StatedTimes(
                    20,
                    50,
                    80,
                    Map.of(Milestone.DRY_TO_TOUCH, 12.04, Milestone.RUB_OUT, 673.9),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty()));
    assertThat(twice.hours().get(Milestone.DRY_TO_RECOAT)).isCloseTo(48, withinPercentage(0.2));
    assertThat(twice.hours().get(Milestone.FULL_HARDNESS)).isCloseTo(1344, withinPercentage(0.2));
    assertThat(twice.recoatUntilHours().orElseThrow()).isCloseTo(144, withinPercentage(0.2));
  }

  @Test
  void theStatedPotLifeAndFilmFormingTemperatureReplaceTheFamilys() {
    StatedTimes sheet =
        new StatedTimes(
            25,
            50,
            100,
            Map.of(Milestone.DRY_TO_RECOAT, 4.0),
            OptionalDouble.empty(),
            OptionalDouble.of(3),
            OptionalDouble.of(12));
    assertThat(Cures.twoPart().fitted(sheet).potLifeH(25).orElseThrow()).isCloseTo(3, within(1e-9));
    assertThat(Cures.water().fitted(sheet).lowestFilmC()).isEqualTo(12);
    assertThat(Cures.water().fitted(sheet).basisOf("mfft")).isEqualTo(Basis.DATA_SHEET);
  }

  @Test
  void timesOutOfOrderAreRefusedInWords() {
    assertThatThrownBy(
            () -> stated(23, Map.of(Milestone.DRY_TO_TOUCH, 3.0, Milestone.DRY_TO_RECOAT, 2.0)))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("dry to recoat, 2.0 h, is shorter");
    assertThatThrownBy(() -> stated(23, Map.of(Milestone.DRY_TO_RECOAT, 80.0)))
        .hasMessageContaining("recoat window ends, at");
    assertThatThrownBy(() -> CureMoment.of(20, 50, 20, 2000)).hasMessageContaining("wet film");
  }
}
