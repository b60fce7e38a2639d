package coatwright.wood;

import coatwright.quantity.OutOfRange;

/**
 * A board as heat sees it.
 *
 * @param thicknessMm mm, 0.5 to 200
 * @param facesInAir which faces meet the room's air; the other is taken as perfectly insulated
 * @param conductivityWPerMK across the grain, W/(m K), 0.03 to 1
 * @param heatPerVolumeJPerM3K density times heat capacity, J/(m³ K), 1e5 to 5e6
 * @param surfaceWPerM2K heat passed between air and face, by convection and radiation together,
 *     W/(m² K), 0.5 to 100
 */
public record Board(
    double thicknessMm,
    Faces facesInAir,
    double conductivityWPerMK,
    double heatPerVolumeJPerM3K,
    double surfaceWPerM2K) {
  /** Which faces of a board meet the room's air. */
  public enum Faces {
    /** Standing, hanging or on points. */
    BOTH,
    /** Lying flat on something, or the outside of a closed case. */
    ONE
  }

  /**
   * Surface coefficient of an indoor face in calm air, convection and radiation together: the
   * inverse of the internal surface resistance 0.13 m² K/W for horizontal heat flow in ISO
   * 6946:2017, which also gives 0.10 for heat rising from a face and 0.17 for heat sinking. A fan
   * raises it.
   */
  public static final double CALM_AIR_W_PER_M2K = 1 / 0.13;

  public Board {
    OutOfRange.check("board thickness", thicknessMm, "mm", 0.5, 200);
    OutOfRange.check("conductivity", conductivityWPerMK, "W/(m K)", 0.03, 1);
    OutOfRange.check("heat per volume", heatPerVolumeJPerM3K, "J/(m³ K)", 1e5, 5e6);
    OutOfRange.check("surface coefficient", surfaceWPerM2K, "W/(m² K)", 0.5, 100);
  }

  /** A board of wood at about 20 °C in calm air, with its constants from {@link WoodThermal}. */
  public static Board ofWood(
      double thicknessMm, Faces facesInAir, double specificGravity, double moisturePct) {
    double heatPerVolume =
        WoodThermal.densityKgPerM3(specificGravity, moisturePct)
            * WoodThermal.heatCapacityJPerKgK(20, moisturePct);
    return new Board(
        thicknessMm,
        facesInAir,
        WoodThermal.conductivityWPerMK(specificGravity, moisturePct),
        heatPerVolume,
        CALM_AIR_W_PER_M2K);
  }

  /** From a face in the air to where no heat flows: the middle, or the covered face. */
  double depthM() {
    double thicknessM = thicknessMm / 1000;
    return facesInAir == Faces.BOTH ? thicknessM / 2 : thicknessM;
  }

  /**
   * How much the board's own resistance counts against that of the air at its face (Biot number).
   */
  public double biot() {
    return surfaceWPerM2K * depthM() / conductivityWPerMK;
  }
}
