package coatwright.watch;

import coatwright.watch.Sign.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What has been said and not yet taken back. Turns the signs of each look into beginnings and ends,
 * each once.
 *
 * <p>A warning's id is its key and the second it began, so that a restart finds it again by its
 * key.
 */
final class Said {
  /** What one look changed. */
  record Changes(List<Warning> begun, List<Warning> ended, List<Warning> reworded) {}

  /** Gravest first: what spoils a film within minutes, then what hides it, then what costs days. */
  private static final List<String> GRAVITY =
      List.of("clouding", "wood-near-dew-point", "sensor", "slow-cure");

  private final Map<String, Warning> open = new LinkedHashMap<>();
  private final Map<String, Integer> saidAs = new HashMap<>();
  private final Map<String, Instant> onSince = new HashMap<>();
  private final Map<String, Instant> clearSince = new HashMap<>();

  /**
   * @param stillOpen warnings that had not ended when the shop was last watched
   */
  Said(List<Warning> stillOpen) {
    for (Warning warning : stillOpen) {
      open.putIfAbsent(keyOf(warning), warning);
    }
  }

  /** Warnings that stand, gravest first, then oldest first. */
  List<Warning> open() {
    return open.values().stream()
        .sorted(
            Comparator.comparingInt((Warning w) -> gravity(w.kind())).thenComparing(Warning::from))
        .toList();
  }

  boolean isOpen(String key) {
    return open.containsKey(key);
  }

  /**
   * One look. A key that no sign names any more is over: its film is dry, its sensor was taken
   * away.
   */
  Changes look(List<Sign> signs, Instant now) {
    Changes changes = new Changes(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    Set<String> seen = new HashSet<>();
    for (Sign sign : signs) {
      seen.add(sign.key());
      time(sign, now);
      if (open.containsKey(sign.key())) {
        goOn(sign, now, changes);
      } else if (heldFor(onSince.get(sign.key()), sign.holdOn(), now)) {
        begin(sign, now, changes);
      }
    }
    for (String key : List.copyOf(open.keySet())) {
      if (!seen.contains(key)) {
        end(key, now, changes);
      }
    }
    onSince.keySet().retainAll(seen);
    clearSince.keySet().retainAll(seen);
    saidAs.keySet().retainAll(seen);
    return changes;
  }

  private void time(Sign sign, Instant now) {
    Verdict verdict = sign.verdict();
    if (verdict == Verdict.ON) {
      since(onSince, sign.key(), now);
    } else if (verdict != Verdict.UNKNOWN) {
      onSince.remove(sign.key());
    }
    if (verdict == Verdict.CLEAR) {
      since(clearSince, sign.key(), now);
    } else {
      clearSince.remove(sign.key());
    }
  }

  /** A clock set back starts the wait again rather than stretching it. */
  private static void since(Map<String, Instant> times, String key, Instant now) {
    times.merge(key, now, (was, is) -> was.isAfter(is) ? is : was);
  }

  private static boolean heldFor(@Nullable Instant since, Duration hold, Instant now) {
    return since != null && !since.plus(hold).isAfter(now);
  }

  private void begin(Sign sign, Instant now, Changes changes) {
    Warning warning =
        new Warning(
            sign.key() + "@" + now.getEpochSecond(),
            sign.kind(),
            now,
            Optional.empty(),
            sign.room(),
            sign.part(),
            sign.message());
    open.put(sign.key(), warning);
    saidAs.put(sign.key(), sign.grave());
    changes.begun().add(warning);
  }

  private void goOn(Sign sign, Instant now, Changes changes) {
    if (heldFor(clearSince.get(sign.key()), sign.holdClear(), now)) {
      end(sign.key(), now, changes);
      return;
    }
    Integer before = saidAs.putIfAbsent(sign.key(), sign.grave());
    if (sign.verdict() == Verdict.ON && before != null && sign.grave() > before) {
      Warning reworded = reworded(sign);
      open.put(sign.key(), reworded);
      saidAs.put(sign.key(), sign.grave());
      changes.reworded().add(reworded);
    }
  }

  private Warning reworded(Sign sign) {
    Warning old = open.get(sign.key());
    if (old == null) {
      throw new IllegalStateException("reworded a warning that is not open: " + sign.key());
    }
    return new Warning(
        old.id(), old.kind(), old.from(), Optional.empty(), old.room(), old.part(), sign.message());
  }

  private void end(String key, Instant now, Changes changes) {
    Warning old = open.remove(key);
    clearSince.remove(key);
    saidAs.remove(key);
    if (old != null) {
      // A clock set back must not end a warning before it began.
      Instant to = now.isBefore(old.from()) ? old.from() : now;
      changes
          .ended()
          .add(
              new Warning(
                  old.id(),
                  old.kind(),
                  old.from(),
                  Optional.of(to),
                  old.room(),
                  old.part(),
                  old.message()));
    }
  }

  private static String keyOf(Warning warning) {
    int cut = warning.id().lastIndexOf('@');
    return cut < 0 ? warning.id() : warning.id().substring(0, cut);
  }

  private static int gravity(String kind) {
    int place = GRAVITY.indexOf(kind);
    return place < 0 ? GRAVITY.size() : place;
  }
}
