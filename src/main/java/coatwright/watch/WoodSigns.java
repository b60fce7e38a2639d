package coatwright.watch;

import coatwright.air.MoistAir;
import coatwright.climate.AirPoint;
import coatwright.climate.Climate;
import coatwright.climate.RoomAir;
import coatwright.climate.WoodPoint;
import coatwright.quantity.Show;
import coatwright.watch.Sign.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Wood below or near the dew point, where a probe on the wood says so. The distance is shown and
 * judged less its uncertainty: the probe's error and what the air sensor's errors do to the dew
 * point.
 */
final class WoodSigns {
  private static final String KIND = "wood-near-dew-point";
  private static final double DRIEST_PCT = 0.1;

  private final Climate climate;
  private final WatchSettings settings;

  WoodSigns(Climate climate, WatchSettings settings) {
    this.climate = climate;
    this.settings = settings;
  }

  List<Sign> look(Instant now) {
    List<Sign> signs = new ArrayList<>();
    for (String room : climate.rooms()) {
      RoomAir air = climate.now(room);
      signs.add(sign(room, air, now));
    }
    return signs;
  }

  private Sign sign(String room, RoomAir roomAir, Instant now) {
    Optional<WoodPoint> wood =
        roomAir.wood().filter(w -> !w.at().plus(settings.woodFreshFor()).isBefore(now));
    if (roomAir.air().isEmpty() || wood.isEmpty()) {
      return sign(room, Verdict.UNKNOWN, 0, "");
    }
    AirPoint air = roomAir.air().get();
    double spreadK = wood.get().woodTempC() - air.dewPointC();
    double leastK = spreadK - Math.hypot(wood.get().errorK(), dewPointErrorK(air));
    boolean below = spreadK <= 0;
    String message =
        "%s in %s: wood %s °C, dew point %s °C; lay no coat before the wood stands %s K above it,"
            + " so warm the wood slowly or dry the air with the jar shut";
    return sign(
        room,
        roomAir.mistrust().isPresent() && verdict(leastK) == Verdict.CLEAR
            ? Verdict.BETWEEN
            : verdict(leastK),
        below ? 1 : 0,
        message.formatted(
            below ? "Wood below the dew point" : "Wood near the dew point",
            room,
            Show.fixed(wood.get().woodTempC(), 1),
            Show.fixed(air.dewPointC(), 1),
            Show.fixed(settings.woodEndK(), 0)));
  }

  private Sign sign(String room, Verdict verdict, int grave, String message) {
    return new Sign(
        KIND + "/" + room,
        KIND,
        Optional.of(room),
        Optional.empty(),
        verdict,
        grave,
        message,
        Duration.ZERO,
        settings.woodClearFor());
  }

  private Verdict verdict(double leastK) {
    if (leastK < settings.woodBeginK()) {
      return Verdict.ON;
    }
    return leastK > settings.woodEndK() ? Verdict.CLEAR : Verdict.BETWEEN;
  }

  /** What one standard error of each reading does to the dew point, K, taken together. */
  static double dewPointErrorK(AirPoint air) {
    double rhPct = Math.min(100, Math.max(DRIEST_PCT, air.rhPct()));
    double away =
        rhPct + air.rhErrorPct() <= 100 ? air.rhErrorPct() : -Math.min(air.rhErrorPct(), rhPct / 2);
    double base = MoistAir.of(air.airTempC(), rhPct).dewPointC();
    double byHumidity = MoistAir.of(air.airTempC(), rhPct + away).dewPointC() - base;
    double byWarmth =
        MoistAir.of(air.airTempC() + air.temperatureErrorK(), rhPct).dewPointC() - base;
    return Math.hypot(byHumidity, byWarmth);
  }
}
