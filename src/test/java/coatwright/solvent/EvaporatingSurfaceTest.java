package coatwright.solvent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import coatwright.air.MoistAir;
import coatwright.air.SaturationFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EvaporatingSurfaceTest {
  private static final Solvent WATER =
      Solvent.WATER
          .with(new VapourPressure.OfWater(SaturationFunction.MAGNUS_WATER))
          .withLatentHeat(44.6e3);

  /** Our own prototype: agreement of two implementations, not truth. */
  @Test
  void coolsAsOurPrototypeFound() {
    SolventChecks.PROTOTYPE_WET_BULBS.holds();
  }

  /**
   * ASHRAE Handbook Fundamentals (2017), chapter 1, adiabatic saturation: a bare wet surface
   * without radiation reads a little low, by less than 0.4 K for depressions under 10 K and 0.6 K
   * above.
   */
  @ParameterizedTest(name = "{0} C, {1} %")
  @CsvSource({"20, 50", "30, 50", "25, 40", "30, 80", "15, 60", "35, 20", "24, 65"})
  void aWetSurfaceCoolsToTheThermodynamicWetBulb(double airC, double rhPct) {
    double adiabatic = MoistAir.of(airC, rhPct).wetBulbC();
    double room = rhPct / 100 * SaturationFunction.MAGNUS_WATER.pressurePa(airC);
    double wet = new EvaporatingSurface(WATER, airC, room, 20, 0).steadyTemperatureC();
    assertThat(wet).isCloseTo(adiabatic, within(airC - adiabatic < 10 ? 0.4 : 0.6));
  }

  /**
   * Our own prototype to 1e-6; Bedingfield and Drew's correlation (1388 and 927 J/kg K) from
   * memory.
   */
  @Test
  void hasThePsychrometricRatiosOfOurPrototype() {
    AirFlow air = new AirFlow(293.15);
    assertThat(air.psychrometricRatio(Solvent.ETHANOL))
        .isCloseTo(1465.5940271177492, withinPercentage(1e-4));
    assertThat(air.psychrometricRatio(Solvent.WATER))
        .isCloseTo(911.7422557613537, withinPercentage(1e-4));
  }

  /** Published: 95 % ethanol 1.4, water 0.3 (n-butyl acetate = 1; safety-data glossary figures). */
  @Test
  void evaporatesRelativeToButylAcetateAsPublishedOnceItCoolsItself() {
    assertThat(EvaporationNumber.selfCooled(Solvent.ETHANOL)).isCloseTo(1.4, withinPercentage(15));
    assertThat(EvaporationNumber.selfCooled(Solvent.WATER)).isBetween(0.3, 0.3 * 1.25);
    assertThat(EvaporationNumber.selfCooled(Solvent.BUTYL_ACETATE)).isEqualTo(1);
  }

  /** Our own prototype's numbers, for the liquids whose published ones contradict each other. */
  @Test
  void agreesWithOurPrototypeOnTheOtherEvaporationNumbers() {
    assertThat(EvaporationNumber.isothermal(Solvent.ETHANOL)).isCloseTo(3.4400933, within(1e-6));
    assertThat(EvaporationNumber.selfCooled(Solvent.ETHANOL)).isCloseTo(1.4779641, within(1e-6));
    assertThat(EvaporationNumber.isothermal(Solvent.METHANOL)).isCloseTo(6.4017923, within(1e-6));
    assertThat(EvaporationNumber.selfCooled(Solvent.METHANOL)).isCloseTo(1.6945071, within(1e-6));
    assertThat(EvaporationNumber.isothermal(Solvent.BUTANOL)).isCloseTo(0.4593139, within(1e-6));
    assertThat(EvaporationNumber.selfCooled(Solvent.BUTANOL)).isCloseTo(0.4627325, within(1e-6));
    assertThat(EvaporationNumber.isothermal(Solvent.BUTOXYETHANOL))
        .isCloseTo(0.0764963, within(1e-6));
    assertThat(EvaporationNumber.selfCooled(Solvent.BUTOXYETHANOL))
        .isCloseTo(0.1042648, within(1e-6));
  }

  @Test
  void holdingAVolatileLiquidAtAirTemperatureOverstatesItsNumberMoreThanTwofold() {
    assertThat(EvaporationNumber.isothermal(Solvent.ETHANOL))
        .isGreaterThan(2 * EvaporationNumber.selfCooled(Solvent.ETHANOL));
  }

  @Test
  void dampAirWetsAColdSurfaceInsteadOfDryingIt() {
    double room = 0.8 * SaturationFunction.HYLAND_WEXLER_WATER.pressurePa(28);
    var surface = new EvaporatingSurface(Solvent.WATER, 28, room, 5, 5);
    assertThat(surface.fluxMolPerM2S(20)).isNegative();
    assertThat(surface.fluxMolPerM2S(27)).isPositive();
  }

  @Test
  void streamingVapourLeavesALittleFasterThanDiffusionAloneWouldTakeIt() {
    assertThat(AirFlow.stefanFactor(5875, 0)).isCloseTo(1.03016, within(1e-5));
    assertThat(AirFlow.stefanFactor(2000, 2000)).isCloseTo(101325.0 / 99325, within(1e-9));
  }
}
