package coatwright.wood;

import coatwright.air.MoistAir;
import coatwright.quantity.OutOfRange;
import java.time.Duration;
import java.util.Optional;

/**
 * A board carried into a room, or standing in one whose heat was turned on: how its face follows,
 * and when it stands above the room's dew point.
 *
 * <p>The room's air is taken to stay as it is. Water that settles on a face below the dew point
 * warms it a little; that is left out, so the times are on the long side.
 *
 * @param board its faces in the room's air
 * @param boardTempC the whole board as it comes in, °C, -40 to 60
 * @param room the air it comes into
 */
public record CarriedIn(Board board, double boardTempC, MoistAir room) {
  public CarriedIn {
    OutOfRange.check(
        "temperature of the board", boardTempC, "°C", MoistAir.COLDEST_C, MoistAir.WARMEST_C);
  }

  /** Temperature of the face that long after it came in, °C. */
  public double faceTempC(Duration after) {
    double share = BoardWarming.faceShare(board, after.toMillis() / 1000.0);
    return boardTempC + share * (room.airTempC() - boardTempC);
  }

  /** By how much the face stands above the room's dew point as it comes in, K; negative below. */
  public double marginK() {
    return boardTempC - room.dewPointC();
  }

  /**
   * The time from which on the face stays above the room's dew point by that margin.
   *
   * @param marginK K, 0 to 40
   * @return zero where it comes in warm enough; empty where it never gets there, because the room's
   *     own air stands no further above its dew point
   */
  public Optional<Duration> untilAboveDewPointBy(double marginK) {
    OutOfRange.check("margin above the dew point", marginK, "K", 0, 40);
    return untilAtLeast(room.dewPointC() + marginK);
  }

  /**
   * The time in which the face rises by that much.
   *
   * @param stepK K, 0 to 100
   * @return empty where the room is not warm enough for it
   */
  public Optional<Duration> untilRisenBy(double stepK) {
    OutOfRange.check("rise of the face", stepK, "K", 0, 100);
    return untilAtLeast(boardTempC + stepK);
  }

  private Optional<Duration> untilAtLeast(double targetC) {
    double airC = room.airTempC();
    if (Math.min(boardTempC, airC) >= targetC) {
      return Optional.of(Duration.ZERO);
    }
    double share = (targetC - boardTempC) / (airC - boardTempC);
    boolean warms = airC > boardTempC;
    return warms && share < 0.9999
        ? Optional.of(after(BoardWarming.secondsToShare(board, share)))
        : Optional.empty();
  }

  /**
   * The time until the face is that near to the room's air, from either side.
   *
   * @param nearK K, 0.1 to 40
   */
  public Duration untilWithin(double nearK) {
    OutOfRange.check("nearness to the air", nearK, "K", 0.1, 40);
    double apartK = Math.abs(room.airTempC() - boardTempC);
    return apartK <= nearK
        ? Duration.ZERO
        : after(BoardWarming.secondsToShare(board, 1 - nearK / apartK));
  }

  private static Duration after(double seconds) {
    return Duration.ofMillis(Math.round(seconds * 1000));
  }
}
