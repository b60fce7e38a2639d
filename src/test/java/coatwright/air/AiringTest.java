package coatwright.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AiringTest {
  @Test
  void coldFoggyAirDriesAWarmRoom() {
    MoistAir room = MoistAir.of(20, 50);
    MoistAir fog = MoistAir.of(4, 100);
    assertThat(Airing.door(room, fog, 1)).isEqualTo(Airing.Door.DRIES);
    // ASHRAE Fundamentals 2017, chapter 1, table 3: saturation at 4 °C 0.8135 kPa, at 20 °C 2.3392.
    assertThat(Airing.rhOnceInsidePct(room, fog)).isCloseTo(100 * 0.8135 / 2.3392, within(0.1));
  }

  @Test
  void mildDampAirWetsACoolShopAndTheSensorsMayNotTell() {
    MoistAir shop = MoistAir.of(14, 60);
    assertThat(Airing.door(shop, MoistAir.of(18, 80), 1)).isEqualTo(Airing.Door.WETS);
    assertThat(Airing.door(shop, MoistAir.of(10, 80), 1)).isEqualTo(Airing.Door.HARDLY);
  }

  @ParameterizedTest
  @CsvSource({"METHANE, 2.246", "PROPANE, 1.634", "BUTANE, 1.550", "KEROSENE, 1.375"})
  void burningMakesTheWaterThatTheFuelsHydrogenMakes(Airing.Fuel fuel, double waterKgPerKg) {
    // By hand from the balance, CxHy + (x + y/4) O2 = x CO2 + y/2 H2O, molar masses of IUPAC:
    // 2 x 18.015/16.043, 4 x 18.015/44.097, 5 x 18.015/58.124, 13 x 18.015/170.34.
    assertThat(fuel.waterKgPerKg()).isCloseTo(waterKgPerKg, within(0.001));
  }

  @Test
  void aHundredGramsOfPropaneShowInASmallRoom() {
    MoistAir room = MoistAir.of(18, 55);
    double after = Airing.dewPointAfterBurningC(room, 28, Airing.Fuel.PROPANE, 0.1);
    // 163 g of water in 28 m3 are 5.8 g/m3 more, by the gas law 784 Pa at 18 °C.
    double beforePa = room.vapourPressurePa();
    assertThat(SaturationPressure.overWaterPa(after) - beforePa).isCloseTo(784, within(10.0));
    assertThatThrownBy(() -> Airing.dewPointAfterBurningC(room, 28, Airing.Fuel.PROPANE, 50))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("air the room");
  }

  @Property(seed = "20261125")
  void theDoorGoesByTheDewPointAlone(
      @ForAll @DoubleRange(min = 5, max = 30) double inC,
      @ForAll @DoubleRange(min = 20, max = 95) double inPct,
      @ForAll @DoubleRange(min = -10, max = 35) double outC,
      @ForAll @DoubleRange(min = 20, max = 100) double outPct) {
    MoistAir inside = MoistAir.of(inC, inPct);
    MoistAir outside = MoistAir.of(outC, outPct);
    Airing.Door door = Airing.door(inside, outside, 0);
    boolean drier = Airing.rhOnceInsidePct(inside, outside) < inside.rhPct();
    assertThat(door == Airing.Door.DRIES).isEqualTo(drier);
  }
}
