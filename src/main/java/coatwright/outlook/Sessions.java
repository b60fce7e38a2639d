package coatwright.outlook;

import coatwright.climate.Climate;
import coatwright.climate.RoomAir;
import coatwright.film.Finish;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Journal;
import coatwright.journal.PartPath;
import coatwright.outlook.Outlook.CloudingLevel;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** The one line at the bench, for each room. */
final class Sessions {
  private static final Duration OPEN = Duration.ofHours(3);
  private static final Duration FRESH = Duration.ofSeconds(15);

  private final Climate climate;
  private final Journal journal;
  private final PartOutlooks parts;
  private final Map<String, Kept> kept = new ConcurrentHashMap<>();

  private record Kept(Instant at, int entries, Object air, SessionOutlook outlook) {}

  Sessions(Climate climate, Journal journal, PartOutlooks parts) {
    this.climate = climate;
    this.journal = journal;
    this.parts = parts;
  }

  /** Computed at most every quarter of a minute while neither air nor journal has changed. */
  SessionOutlook of(String room, Instant now) {
    RoomAir airNow = climate.now(room);
    Object air = List.of(airNow.air(), airNow.mistrust());
    int entries = journal.entries().size();
    Optional<Kept> fresh =
        Optional.ofNullable(kept.get(room))
            .filter(k -> k.entries() == entries && k.air().equals(air))
            .filter(k -> Duration.between(k.at(), now).abs().compareTo(FRESH) < 0);
    if (fresh.isPresent()) {
      return fresh.get().outlook();
    }
    SessionOutlook outlook = compute(room, now);
    kept.put(room, new Kept(now, entries, air, outlook));
    return outlook;
  }

  /** The line as it would be if the room's reading in doubt were right. */
  Optional<SessionOutlook> ifDoubtHolds(String room, Instant now) {
    RoomAir believed = climate.now(room);
    return climate
        .doubted(room)
        .flatMap(doubt -> doubt.air(believed.air()))
        .map(
            air ->
                compute(
                    room,
                    now,
                    new RoomAir(
                        room,
                        Optional.of(air),
                        believed.wood(),
                        Optional.of(Duration.between(air.at(), now)),
                        believed.sources(),
                        believed.disagree(),
                        believed.trouble())));
  }

  private SessionOutlook compute(String room, Instant now) {
    return compute(room, now, climate.now(room));
  }

  private SessionOutlook compute(String room, Instant now, RoomAir air) {
    Optional<Coat> open = lastCoat(room, now);
    Optional<PartPath> part = open.map(Coat::part);
    PartOutlooks.Answer a = parts.answer(part, room, air, now);
    Finish finish = a.finish();
    return new SessionOutlook(
        room,
        open.isPresent(),
        finish.name(),
        finish.title(),
        open.map(Coat::jar).or(a::jar),
        part.map(PartPath::toString),
        a.method(),
        line(a, open.isPresent()),
        a.nextBetter(),
        a.nextBetterShare(),
        a.airAgeSeconds(),
        a.woodFrom(),
        a.outlook());
  }

  private Optional<Coat> lastCoat(String room, Instant now) {
    List<Entry> coats = journal.coats();
    for (int i = coats.size() - 1; i >= 0; i--) {
      Coat coat = (Coat) coats.get(i).body();
      if (coat.start().isBefore(now.minus(OPEN))) {
        return Optional.empty();
      }
      if (coat.room().equals(room) && !coat.start().isAfter(now)) {
        return Optional.of(coat);
      }
    }
    return Optional.empty();
  }

  private static String line(PartOutlooks.Answer a, boolean open) {
    Outlook o = a.outlook();
    String with = open ? "" : " with " + a.finish().title();
    String what =
        switch (o.summary()) {
          case BRUSH ->
              capital(a.method())
                  + (open ? "" : " " + a.finish().title())
                  + ": no clouding expected";
          case TAKE_CARE -> "Take care" + with + ": " + because(o);
          case HOLD_OFF -> "Hold off" + with + ": " + because(o);
          case CANT_TELL -> "Can't tell" + with + ": " + because(o);
        };
    return what;
  }

  private static String capital(String verb) {
    return verb.substring(0, 1).toUpperCase(Locale.ROOT) + verb.substring(1);
  }

  private static String because(Outlook o) {
    boolean likely = o.clouding().isPresent() && o.clouding().get().level() == CloudingLevel.LIKELY;
    return switch (o.decidedBy()) {
      case "condensation" -> "dew would form on the wood";
      case "clouding" -> likely ? "the film would cloud" : "the film may cloud";
      case "weak-spirit" -> "the spirit in the jar is too weak";
      case "too-tacky" -> "the film beneath is not ready";
      case "film-forming" -> "too cold for its film to form";
      case "drying" ->
          o.summary() == Outlook.Summary.HOLD_OFF ? "it would hardly dry" : "it dries slowly";
      case "open-time" -> "the wet edge is short";
      case "layers" -> "this finish may not hold on the one beneath";
      case "recoat-window" -> "mind the recoat window";
      case "limits" -> "outside what the finish is stated for";
      case "air-in-doubt" -> "the sensor is in doubt";
      case "no-air" -> "no air reading to believe";
      case "wood-unknown" -> "measure the wood first";
      default -> o.reason();
    };
  }
}
