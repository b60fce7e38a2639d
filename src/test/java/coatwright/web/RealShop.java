package coatwright.web;

import coatwright.climate.LiveClimate;
import coatwright.climate.MemoryReadingLog;
import coatwright.climate.Reading;
import coatwright.climate.Role;
import coatwright.config.SettingsFolder;
import coatwright.film.Finish;
import coatwright.journal.FinishNames;
import coatwright.journal.LiveJournal;
import coatwright.journal.MemoryLedger;
import coatwright.journal.SaltBook;
import coatwright.journal.ShopForms;
import coatwright.outlook.FilmJobs;
import coatwright.outlook.FilmOutlooks;
import coatwright.outlook.OutlookForm;
import coatwright.outlook.OutlookSettings;
import coatwright.outlook.PredictionLog;
import coatwright.quantity.UnitSystem;
import coatwright.review.FilmReviews;
import coatwright.watch.Warning;
import coatwright.watch.Watch;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The door before the shop's own rooms: real climate, journal, forms, film and review. */
final class RealShop implements AutoCloseable {
  static final String ROOM = "finishing room";

  final WebFixture.MovableClock clock =
      new WebFixture.MovableClock(Instant.parse("2026-07-14T14:20:00Z"));
  final LiveClimate climate =
      new LiveClimate(List.of(ROOM), new MemoryReadingLog(), clock, Duration.ofMinutes(5));
  final LiveJournal journal = new LiveJournal(new MemoryLedger());
  final FilmOutlooks outlooks;
  final WebServer server;

  RealShop() {
    Map<String, Finish> finishes = SettingsFolder.finishes(Path.of("config", "finishes"));
    ShopForms forms =
        new ShopForms(
            journal,
            clock,
            WebFixture.ZONE,
            new FinishNames(finishes.keySet(), finishes.keySet()),
            List.of(ROOM),
            ROOM);
    OutlookSettings settings = OutlookSettings.usual("shellac-pale", WebFixture.ZONE);
    outlooks = new FilmOutlooks(finishes, climate, journal, new KeptPredictions(), clock, settings);
    FilmJobs jobs = new FilmJobs(journal, climate, finishes, settings);
    server =
        new WebServer(
            new WebRooms(
                climate,
                journal,
                forms,
                new SaltBook(journal, new StandingHygrometers(), clock, WebFixture.ZONE),
                new MemoryReadingLog(),
                outlooks,
                new QuietWatch(),
                new FilmReviews(jobs, journal, climate, WebFixture.ZONE, clock),
                finishes,
                List::of,
                Optional::empty,
                List::of,
                () -> "none yet",
                (from, to) -> List.of(),
                OutlookForm::read,
                "Harbour Lane workshop",
                WebFixture.ZONE,
                UnitSystem.METRIC,
                true,
                clock),
            WebSettings.loopback(0));
    live(forms);
    server.start();
  }

  /** Three days of air, a foggy evening with a coat in it, and two coats this afternoon. */
  private void live(ShopForms forms) {
    Instant now = clock.instant();
    Instant foggy = now.minus(Duration.ofHours(20));
    for (long minute = 72 * 60; minute >= 0; minute -= 5) {
      Instant at = now.minus(Duration.ofMinutes(minute));
      clock.moveTo(at);
      double day = Math.sin(2 * Math.PI * (at.getEpochSecond() % 86_400 - 32_400) / 86_400);
      boolean fog = Duration.between(foggy, at).abs().toMinutes() < 150;
      reading(at, 19.5 + 2.5 * day, fog ? 84 : 52 - 6 * day, 18.9 + 1.8 * day);
      if (minute == 71 * 60) {
        forms.jar(Map.of("name", "J1", "finish", "shellac-pale", "cut", "1.5lb"));
        forms.piece(Map.of("name", "cabinet", "room", ROOM));
        forms.part(Map.of("part", "cabinet/left-door", "species", "cherry", "thickness", "19mm"));
        forms.part(Map.of("part", "cabinet/back", "species", "cherry"));
      } else if (minute == 20 * 60) {
        forms.coat(Map.of("part", "cabinet/back", "jar", "J1"));
      } else if (minute == 18 * 60) {
        forms.note(Map.of("part", "cabinet/back", "what", "clouded=3"));
      } else if (minute == 150 || minute == 60) {
        forms.coat(Map.of("part", "cabinet/left-door", "jar", "J1"));
      }
    }
    clock.moveTo(now);
    outlooks.refresh(now, "the day's readings came in");
  }

  void reading(Instant at, double airC, double rhPct, double woodC) {
    climate.accept(
        new Reading(
            "finishing-wall",
            "finishing-wall",
            Role.ROOM,
            Optional.of(ROOM),
            Optional.empty(),
            at,
            OptionalDouble.of(airC),
            OptionalDouble.of(rhPct),
            OptionalDouble.of(woodC),
            0.2,
            2,
            List.of()));
  }

  String address() {
    return "http://127.0.0.1:" + server.port();
  }

  @Override
  public void close() {
    server.close();
  }

  private static final class KeptPredictions implements PredictionLog {
    private final List<Kept> kept = new ArrayList<>();

    @Override
    public synchronized void keep(Kept prediction) {
      kept.add(prediction);
    }

    @Override
    public synchronized List<Kept> history(String part, String milestone) {
      return kept.stream()
          .filter(one -> one.part().equals(part) && one.milestone().equals(milestone))
          .toList();
    }
  }

  private static final class QuietWatch implements Watch {
    @Override
    public void judge(Instant now) {}

    @Override
    public List<Warning> open() {
      return List.of();
    }

    @Override
    public List<Warning> between(Instant from, Instant to) {
      return List.of();
    }
  }
}
