package coatwright.air;

import coatwright.quantity.OutOfRange;
import java.util.Locale;

/**
 * What opening the door, or burning something in the room, does to the room's water.
 *
 * <p>Air that comes in brings its own vapour, whatever it does to the temperature; so inside and
 * outside are compared by vapour pressure, which is to compare their dew points. What the walls and
 * the wood give back is left out.
 */
public final class Airing {
  private static final double LARGEST_ROOM_M3 = 1e6;
  private static final double MOST_FUEL_KG = 100;

  private Airing() {}

  /** What the door does. */
  public enum Door {
    DRIES,
    WETS,
    /** The two airs hold the same water within what the sensors may err. */
    HARDLY;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * What is burnt in a heater without a flue. Water by mass of fuel, from the balance of its
   * burning, CxHy + (x + y/4) O2 = x CO2 + y/2 H2O, with the molar masses of carbon, hydrogen and
   * oxygen (IUPAC, abridged: 12.011, 1.008, 15.999). Kerosene is a mixture; n-dodecane stands for
   * it, as is usual in combustion work.
   */
  public enum Fuel {
    METHANE(1, 4),
    PROPANE(3, 8),
    BUTANE(4, 10),
    KEROSENE(12, 26);

    private static final double CARBON = 12.011;
    private static final double HYDROGEN = 1.008;
    private static final double OXYGEN = 15.999;

    private final int carbons;
    private final int hydrogens;

    Fuel(int carbons, int hydrogens) {
      this.carbons = carbons;
      this.hydrogens = hydrogens;
    }

    /** Water made by burning a kilogram, kg. */
    public double waterKgPerKg() {
      double water = hydrogens / 2.0 * (2 * HYDROGEN + OXYGEN);
      return water / (carbons * CARBON + hydrogens * HYDROGEN);
    }

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Whether air from outside would dry the room or wet it.
   *
   * @param errorK by how much the difference of the two dew points may be off, K; 0 or more
   */
  public static Door door(MoistAir inside, MoistAir outside, double errorK) {
    double apartK = outside.dewPointC() - inside.dewPointC();
    if (Math.abs(apartK) <= errorK) {
      return Door.HARDLY;
    }
    return apartK < 0 ? Door.DRIES : Door.WETS;
  }

  /**
   * The relative humidity of outside air once it has come to the room's temperature, %; more than
   * 100 is water on whatever is coldest.
   */
  public static double rhOnceInsidePct(MoistAir inside, MoistAir outside) {
    return 100 * outside.vapourPressurePa() / SaturationPressure.overWaterPa(inside.airTempC());
  }

  /**
   * The dew point after burning so much fuel without a flue in a room that is not aired, °C.
   *
   * @param roomVolumeM3 m³, 1 to 1e6
   * @param fuelKg kg, 0 to 100
   * @throws OutOfRange also when that is more vapour than air at 60 °C can hold
   */
  public static double dewPointAfterBurningC(
      MoistAir inside, double roomVolumeM3, Fuel fuel, double fuelKg) {
    OutOfRange.check("room volume", roomVolumeM3, "m³", 1, LARGEST_ROOM_M3);
    OutOfRange.check("fuel", fuelKg, "kg", 0, MOST_FUEL_KG);
    double kelvin = inside.airTempC() + 273.15;
    double waterKg = fuelKg * fuel.waterKgPerKg();
    double pa =
        inside.vapourPressurePa() + waterKg * MoistAir.GAS_CONSTANT_VAPOUR * kelvin / roomVolumeM3;
    if (pa > SaturationPressure.overWaterPa(MoistAir.WARMEST_C)) {
      throw new OutOfRange(
          "%s kg of %s make more water than the room's air can hold; burn less, or air the room"
              .formatted(fuelKg, fuel));
    }
    return SaturationPressure.dewPointC(pa);
  }
}
