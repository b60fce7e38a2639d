package coatwright.watch;

import coatwright.climate.AirPoint;
import coatwright.climate.Climate;
import coatwright.climate.RoomAir;
import coatwright.climate.WoodPoint;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Journal;
import coatwright.outlook.Due;
import coatwright.outlook.Outlook;
import coatwright.outlook.Outlook.Clouding;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.outlook.Outlooks;
import coatwright.outlook.SessionOutlook;
import coatwright.quantity.Show;
import coatwright.watch.Sign.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Clouding where it can do harm: in a room where a film is wet, or where a next coat comes due
 * within three hours on a part coated in the last three. Judged by the outlook of the air now; a
 * room where nothing is wet or planned says nothing, however damp it is.
 */
final class CloudingSigns {
  private static final String KIND = "clouding";
  private static final int NAMED = 3;

  /** How grave: the words change when it grows. */
  private static final int UNCONFIRMED = 0;

  private static final int PLANNED = 1;
  private static final int WET = 2;

  /**
   * Ours: less than this moves the water ratio by less than 0.02, a tenth of the band it is judged
   * by.
   */
  private static final double MOVED_K = 0.3;

  private static final double MOVED_RH_PCT = 0.8;
  private static final Duration ANSWER_STANDS = Duration.ofMinutes(10);

  private final Outlooks outlooks;
  private final Climate climate;
  private final Journal journal;
  private final WatchSettings settings;
  private final Map<String, Asked> asked = new HashMap<>();

  CloudingSigns(Outlooks outlooks, Climate climate, Journal journal, WatchSettings settings) {
    this.outlooks = outlooks;
    this.climate = climate;
    this.journal = journal;
    this.settings = settings;
  }

  /** Parts at risk in one room. */
  private record AtRisk(Set<String> wet, Set<String> planned) {}

  List<Sign> look(Instant now) {
    Map<String, AtRisk> rooms = atRisk(now);
    List<Sign> signs = new ArrayList<>();
    rooms.forEach(
        (room, risk) -> {
          boolean any = !risk.wet().isEmpty() || !risk.planned().isEmpty();
          if (any && climate.rooms().contains(room)) {
            signs.add(sign(room, risk, now));
          }
        });
    return signs;
  }

  private Map<String, AtRisk> atRisk(Instant now) {
    Map<String, AtRisk> rooms = new LinkedHashMap<>();
    Set<String> due = recoatDue(now);
    for (Entry entry : journal.coats()) {
      if (!(entry.body() instanceof Coat coat) || coat.start().isAfter(now)) {
        continue;
      }
      AtRisk risk =
          rooms.computeIfAbsent(
              coat.room(), r -> new AtRisk(new LinkedHashSet<>(), new LinkedHashSet<>()));
      String part = coat.part().toString();
      Instant laid = coat.end().orElse(coat.start());
      if (Duration.between(laid, now).compareTo(settings.wetFor()) < 0) {
        risk.wet().add(part);
      } else if (Duration.between(laid, now).compareTo(settings.plannedWithin()) < 0
          && due.contains(part)) {
        risk.planned().add(part);
      }
    }
    rooms.values().forEach(risk -> risk.planned().removeAll(risk.wet()));
    return rooms;
  }

  private Set<String> recoatDue(Instant now) {
    Instant until = now.plus(settings.plannedWithin());
    Set<String> parts = new LinkedHashSet<>();
    for (Due due : outlooks.due(Optional.empty())) {
      if (due.milestone().equals("dry to recoat")
          && due.p50().filter(at -> at.isBefore(until)).isPresent()) {
        parts.add(due.part());
      }
    }
    return parts;
  }

  private Sign sign(String room, AtRisk risk, Instant now) {
    SessionOutlook session = session(room, now);
    Optional<Clouding> clouding = session.outlook().clouding();
    boolean wet = !risk.wet().isEmpty();
    Set<String> parts = wet ? risk.wet() : risk.planned();
    Verdict verdict = verdict(session.outlook());
    if (verdict == Verdict.CLEAR && climate.now(room).mistrust().isPresent()) {
      // A sensor in doubt may begin a warning; it never ends one.
      verdict = Verdict.BETWEEN;
    }
    Optional<SessionOutlook> doubt =
        verdict == Verdict.ON ? Optional.empty() : likelyIfDoubtHolds(room, now);
    if (doubt.isPresent()) {
      Clouding unsure = doubt.get().outlook().clouding().orElseThrow();
      String message = unconfirmed(message(room, parts, wet, unsure, doubt.get(), now), room);
      return sign(room, parts, Verdict.ON, UNCONFIRMED, message);
    }
    return sign(
        room,
        parts,
        verdict,
        wet ? WET : PLANNED,
        clouding.map(c -> message(room, parts, wet, c, session, now)).orElse(""));
  }

  private Sign sign(String room, Set<String> parts, Verdict verdict, int grave, String message) {
    return new Sign(
        KIND + "/" + room,
        KIND,
        Optional.of(room),
        Optional.of(last(parts)),
        verdict,
        grave,
        message,
        Duration.ZERO,
        settings.cloudingClearFor());
  }

  /** A reading in doubt may begin a warning; it never ends one. */
  private Optional<SessionOutlook> likelyIfDoubtHolds(String room, Instant now) {
    return outlooks
        .sessionIfDoubtHolds(room, now)
        .filter(session -> verdict(session.outlook()) == Verdict.ON);
  }

  private String unconfirmed(String message, String room) {
    return message
        + climate
            .doubted(room)
            .map(
                doubt ->
                    ". Unconfirmed: %s %s".formatted(doubt.reading().source(), doubt.sentence()))
            .orElse("");
  }

  /** The last answer stands while neither air, wood nor coats have changed enough to matter. */
  private SessionOutlook session(String room, Instant now) {
    RoomAir air = climate.now(room);
    Asked last = asked.get(room);
    int coats = journal.coats().size();
    if (last != null && last.stands(air, coats, now)) {
      return last.answer();
    }
    SessionOutlook answer = outlooks.session(room, now);
    asked.put(room, new Asked(air, coats, now, answer));
    return answer;
  }

  /** An answer and what it rested on. */
  private record Asked(RoomAir air, int coats, Instant at, SessionOutlook answer) {
    boolean stands(RoomAir now, int coatsNow, Instant at) {
      boolean recent =
          !at.isBefore(this.at) && Duration.between(this.at, at).compareTo(ANSWER_STANDS) < 0;
      return recent
          && coats == coatsNow
          && air.air().isPresent()
          && now.air().isPresent()
          && near(air.air().get(), now.air().get())
          && air.disagree() == now.disagree()
          && air.mistrust().equals(now.mistrust())
          && near(air.wood(), now.wood());
    }

    private static boolean near(AirPoint one, AirPoint other) {
      return Math.abs(one.airTempC() - other.airTempC()) < MOVED_K
          && Math.abs(one.rhPct() - other.rhPct()) < MOVED_RH_PCT;
    }

    private static boolean near(Optional<WoodPoint> one, Optional<WoodPoint> other) {
      return one.isPresent() == other.isPresent()
          && (one.isEmpty() || Math.abs(one.get().woodTempC() - other.get().woodTempC()) < MOVED_K);
    }
  }

  private Verdict verdict(Outlook outlook) {
    if (outlook.summary() == Outlook.Summary.CANT_TELL || outlook.clouding().isEmpty()) {
      return Verdict.UNKNOWN;
    }
    Clouding clouding = outlook.clouding().get();
    if (clouding.level() == CloudingLevel.LIKELY) {
      return Verdict.ON;
    }
    boolean well =
        clouding.waterPeakPct().isPresent()
            && clouding.waterLimitPct().isPresent()
            && clouding.waterPeakPct().getAsDouble()
                <= settings.cloudingClearRatio() * clouding.waterLimitPct().getAsDouble();
    return well ? Verdict.CLEAR : Verdict.BETWEEN;
  }

  private String message(
      String room,
      Set<String> parts,
      boolean wet,
      Clouding clouding,
      SessionOutlook session,
      Instant now) {
    String until =
        session
            .nextBetter()
            .map(at -> " until about " + ShopTime.hour(at, now, settings.zone()))
            .orElse(" until this has passed");
    String act =
        wet
            ? "finish the part in hand, start no other%s, and bring no heat near the wet film"
            : "leave the jar shut%s";
    return "Clouding likely in %s, %s %s: %s; %s"
        .formatted(
            room,
            named(parts),
            wet ? "still wet" : "due its next coat within " + hours(),
            because(clouding),
            act.formatted(until));
  }

  private String hours() {
    return Show.duration(settings.plannedWithin());
  }

  private static String because(Clouding clouding) {
    if (clouding.spreadAtWoodK() < 1) {
      return "the wood stands %s K from the dew point of %s °C"
          .formatted(Show.fixed(clouding.spreadAtWoodK(), 1), Show.fixed(clouding.dewPointC(), 1));
    }
    if (clouding.waterPeakPct().isPresent() && clouding.waterLimitPct().isPresent()) {
      return "the film would take up %s %% water and gives way at %s %%"
          .formatted(
              Show.fixed(clouding.waterPeakPct().getAsDouble(), 1),
              Show.fixed(clouding.waterLimitPct().getAsDouble(), 1));
    }
    return "the dew point is " + Show.fixed(clouding.dewPointC(), 1) + " °C";
  }

  private static String named(Set<String> parts) {
    List<String> names = new ArrayList<>(parts);
    if (names.size() <= NAMED) {
      return String.join(", ", names);
    }
    return String.join(", ", names.subList(names.size() - NAMED, names.size()))
        + " and "
        + (names.size() - NAMED)
        + " more";
  }

  private static String last(Set<String> parts) {
    List<String> names = List.copyOf(parts);
    return names.get(names.size() - 1);
  }
}
