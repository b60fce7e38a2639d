package coatwright.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.quantity.OutOfRange;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class RoomWaterTest {
  /**
   * Saturated vapour at 20 °C is 17.3 g/m³ (1 / 57.76 m³/kg, steam tables), so 20 % of 28 m³ of it.
   */
  @Test
  void aSmallRoomHoldsATenthOfALitreBetween70And50Percent() {
    double waterKg = RoomWater.waterToRemoveKg(28, MoistAir.of(20, 70), 50);
    assertThat(waterKg).isCloseTo(0.20 * 28 / 57.76, within(0.0005));
  }

  @Test
  void warmingInsteadReachesTheSameHumidity() {
    MoistAir air = MoistAir.of(18, 75);
    double stepK = RoomWater.warmingInsteadK(air, 60);
    assertThat(air.warmedTo(18 + stepK).rhPct()).isCloseTo(60, within(1e-8));
    assertThat(stepK).isBetween(3.0, 4.5);
  }

  @Test
  void refusesToDryAirToMoreThanItHas() {
    assertThatThrownBy(() -> RoomWater.waterToRemoveKg(28, MoistAir.of(20, 50), 70))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("relative humidity wanted is 70.0 %");
  }

  @Test
  void saysToTakeWaterOutWhereWarmingAloneCannotDo() {
    assertThatThrownBy(() -> RoomWater.warmingInsteadK(MoistAir.of(35, 90), 15))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("take water out instead");
  }

  @Property(seed = "20261125")
  void takingTheWaterOutLeavesTheHumidityWanted(
      @ForAll @DoubleRange(min = -20, max = 50) double airTempC,
      @ForAll @DoubleRange(min = 30, max = 100) double rhPct,
      @ForAll @DoubleRange(min = 5, max = 30) double wantedPct) {
    MoistAir air = MoistAir.of(airTempC, rhPct);
    double waterKg = RoomWater.waterToRemoveKg(60, air, wantedPct);
    assertThat(RoomWater.rhAfterRemovingPct(60, air, waterKg)).isCloseTo(wantedPct, within(1e-9));
  }
}
