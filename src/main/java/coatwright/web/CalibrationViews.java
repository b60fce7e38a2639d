package coatwright.web;

import coatwright.air.SaturatedSalt;
import coatwright.climate.Reading;
import coatwright.climate.SourceStatus;
import coatwright.climate.SourceTrust;
import coatwright.journal.Entry;
import coatwright.journal.SaltBook;
import coatwright.journal.SaltCheck;
import coatwright.journal.SaltFit;
import coatwright.web.Answers.EntryView;
import coatwright.web.Answers.StruckView;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the routes of the checks against salts answer with. */
final class CalibrationViews {
  private static final double USUAL_C = 20;

  private final WebRooms rooms;

  CalibrationViews(WebRooms rooms) {
    this.rooms = rooms;
  }

  /** All of it: every hygrometer, and the salts to test by. */
  record Calibrations(List<Sheet> sensors, List<Salt> salts) {}

  /** A salt and what it makes at 20 °C. */
  record Salt(String salt, String name, double rhAt20CPct) {}

  /**
   * One sensor of humidity.
   *
   * @param boxedSince it lies in the box with a salt, and what it says is kept aside
   * @param reads what it says now, as sent; absent while it is silent
   * @param checks what each check found, oldest first
   * @param lines the lines of the book, oldest first
   */
  record Sheet(
      String source,
      String sensor,
      Optional<String> room,
      Optional<SourceTrust> trust,
      Optional<Instant> boxedSince,
      Optional<Reads> reads,
      List<Check> checks,
      List<Line> lines) {}

  record Reads(
      Instant at,
      OptionalDouble temperatureC,
      double sentRhPct,
      double shownRhPct,
      OptionalDouble changedPct,
      boolean settled) {}

  record Check(
      Instant at, double gain, double offsetPct, int points, boolean passed, String finding) {
    static Check of(SaltBook.Found found) {
      SaltFit fit = found.fit();
      return new Check(
          found.at(), fit.gain(), fit.offsetPct(), fit.points(), fit.isPassed(), fit.sentence());
    }
  }

  /**
   * One line of the book.
   *
   * @param afterRhPct what the sensor's reading becomes by this check's correction
   */
  record Line(
      String entry,
      Instant at,
      Instant writtenAt,
      Optional<String> who,
      String step,
      Optional<String> salt,
      OptionalDouble saltTempC,
      OptionalDouble sensorTempC,
      OptionalDouble expectedRhPct,
      OptionalDouble sentRhPct,
      OptionalDouble shownRhPct,
      OptionalDouble afterRhPct,
      OptionalDouble changedPct,
      Optional<String> note,
      Optional<StruckView> struck) {}

  /** The written line, with the sensor's whole sheet. */
  record Written(@JsonUnwrapped EntryView entry, Sheet calibration) {}

  /** A stretch of one source's humidity, as sent, as it was used, and by what is known now. */
  record Again(String source, Instant from, Instant to, List<Point> points) {}

  /**
   * @param rhPct as it was used then
   * @param recalibratedRhPct by the checks before and after it; absent before the first
   */
  record Point(
      String sensor,
      Instant at,
      double sentRhPct,
      double rhPct,
      OptionalDouble recalibratedRhPct) {}

  Calibrations all() {
    List<Sheet> sheets = new ArrayList<>();
    rooms
        .saltBook()
        .hygrometers()
        .forEach((source, sensors) -> sensors.forEach(name -> sheets.add(sheet(source, name))));
    List<Salt> salts = new ArrayList<>();
    for (SaturatedSalt salt : SaturatedSalt.values()) {
      salts.add(new Salt(salt.formula(), salt.toString(), salt.rhPct(USUAL_C)));
    }
    return new Calibrations(sheets, salts);
  }

  Written written(List<Entry> entries) {
    Entry last = entries.get(entries.size() - 1);
    SaltCheck body = (SaltCheck) last.body();
    return new Written(EntryView.of(last), sheet(body.source(), body.sensor()));
  }

  private Sheet sheet(String source, String sensor) {
    SaltBook book = rooms.saltBook();
    Optional<SourceStatus> status =
        rooms.sources().get().stream().filter(one -> one.source().equals(source)).findFirst();
    List<SaltBook.Found> found = book.found(source, sensor);
    return new Sheet(
        source,
        sensor,
        status.flatMap(SourceStatus::room),
        status.flatMap(SourceStatus::trust),
        book.boxedSince(source, sensor, rooms.clock().instant()),
        book.reads(source, sensor)
            .map(
                reads ->
                    new Reads(
                        reads.at(),
                        reads.temperatureC(),
                        reads.sentRhPct(),
                        book.corrected(source, sensor, reads.sentRhPct()),
                        reads.changedPct(),
                        reads.settled())),
        found.stream().map(Check::of).toList(),
        book.lines().stream()
            .filter(entry -> isOf(entry, source, sensor))
            .map(entry -> line(entry, found))
            .toList());
  }

  private static boolean isOf(Entry entry, String source, String sensor) {
    SaltCheck body = (SaltCheck) entry.body();
    return body.source().equals(source) && body.sensor().equals(sensor);
  }

  private Line line(Entry entry, List<SaltBook.Found> found) {
    SaltCheck body = (SaltCheck) entry.body();
    Optional<SaltCheck.Point> point = body.point();
    Optional<SaltFit> fit =
        found.stream()
            .filter(check -> point.isPresent() && check.points().contains(point.get()))
            .map(SaltBook.Found::fit)
            .findFirst();
    return new Line(
        entry.id(),
        entry.at(),
        entry.writtenAt(),
        entry.who(),
        body.step().toString(),
        point.map(SaltCheck.Point::salt),
        figure(point.map(SaltCheck.Point::saltTempC)),
        figure(point.map(SaltCheck.Point::sensorTempC)),
        figure(point.map(SaltCheck.Point::expectedRhPct)),
        figure(point.map(SaltCheck.Point::sentRhPct)),
        figure(point.map(SaltCheck.Point::shownRhPct)),
        figure(point.flatMap(read -> fit.map(of -> of.applyTo(read.sentRhPct())))),
        point.map(SaltCheck.Point::changedPct).orElse(OptionalDouble.empty()),
        body.note(),
        rooms.journal().struckBy(entry.id()).flatMap(StruckView::of));
  }

  private static OptionalDouble figure(Optional<Double> value) {
    return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }

  Again again(String source, Instant from, Instant to) {
    Map<String, List<String>> known = rooms.saltBook().hygrometers();
    if (!known.containsKey(source)) {
      throw Unknown.of("source", source, List.copyOf(known.keySet()));
    }
    List<Point> points =
        rooms.readings().readingsOf(source, from, to).stream()
            .filter(reading -> reading.rhPct().isPresent())
            .map(this::again)
            .toList();
    return new Again(source, from, to, points);
  }

  private Point again(Reading reading) {
    double shown = reading.rhPct().orElseThrow();
    double sent =
        reading.sent().map(Reading.Sent::rhPct).orElse(OptionalDouble.empty()).orElse(shown);
    List<SaltBook.Found> found =
        rooms.saltBook().found(reading.source(), reading.sensor()).stream()
            .filter(check -> check.fit().isPassed())
            .toList();
    Optional<SaltFit> held = SaltBook.heldAt(found, reading.at());
    return new Point(
        reading.sensor(),
        reading.at(),
        sent,
        shown,
        figure(held.map(fit -> Math.max(0, Math.min(100, fit.applyTo(sent))))));
  }
}
