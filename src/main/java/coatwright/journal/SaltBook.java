package coatwright.journal;

import coatwright.air.SaturatedSalt;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The book of checks against saturated salts: writes them down, and tells what they found. Readings
 * over several salts within two days are one check. A line struck out no longer counts; none is
 * ever deleted. Safe for many threads.
 */
public final class SaltBook {
  private static final Duration ONE_CHECK = Duration.ofDays(2);
  private static final Duration LONGEST_IN_BOX = Duration.ofHours(24);
  private static final Duration WINDOW = Duration.ofMinutes(10);
  private static final Duration SLACK = Duration.ofMinutes(1);
  private static final Duration OLDEST_LIVE = Duration.ofMinutes(5);
  private static final double SETTLED_PCT = 0.2;
  private static final double APART_K = 1;

  /** Port: what the running sensors say. */
  public interface Live {
    /** Sources that read humidity, each with the names of its sensors. */
    Map<String, List<String>> sensors();

    /** What a sensor sent over the last quarter of an hour, as it came, oldest first. */
    List<Sent> justSent(String source, String sensor);

    /** The humidity as it would be shown with the correction that holds at that time, %. */
    double corrected(String source, String sensor, double sentRhPct, Instant at);
  }

  /** A pair as it was sent, before any correction. */
  public record Sent(Instant at, OptionalDouble temperatureC, double rhPct) {}

  /**
   * A sensor as it reads now.
   *
   * @param changedPct over the last ten minutes; empty while it was not heard so long
   * @param settled it moved by less than 0.2 points in ten minutes
   */
  public record Reads(
      Instant at,
      OptionalDouble temperatureC,
      double sentRhPct,
      OptionalDouble changedPct,
      boolean settled) {}

  /** One check: the newest of its readings, and what they found together. */
  public record Found(Instant at, List<SaltCheck.Point> points, SaltFit fit) {
    public Found {
      points = List.copyOf(points);
    }
  }

  private final Journal journal;
  private final Live live;
  private final Clock clock;
  private final Known known;

  /**
   * @param zone the shop's; typed times are read on its clock
   */
  public SaltBook(Journal journal, Live live, Clock clock, ZoneId zone) {
    this.journal = journal;
    this.live = live;
    this.clock = clock;
    this.known = new Known(journal, clock, zone, Set.of(), List.of());
  }

  /**
   * Writes what a form says. Keys: source, sensor, step (begin, end), salt (one or several
   * separated by commas, each alone to be read live, or with what the sensor read: {@code
   * NaCl=73.2%}), temp (of the salt), sensorTemp, settled (yes), note, who, at.
   */
  public synchronized List<Entry> write(Map<String, String> given) {
    Form form =
        new Form(
            given,
            Set.of(
                "source",
                "sensor",
                "step",
                "salt",
                "temp",
                "sensorTemp",
                "settled",
                "note",
                "who",
                "at"));
    Optional<String> source =
        form.read(
            form.required("source", "name the sensor's source, like wall"), "source", this::source);
    Optional<String> sensor = source.flatMap(name -> sensor(form, name));
    Optional<Instant> at = form.read("at", "at", known::past);
    Optional<SaltCheck.Step> step = form.read("step", "step", SaltBook::step);
    if (step.isEmpty() && !form.has("salt")) {
      form.fault(
          "salt",
          "this is missing",
          "name the salt in the box, " + String.join(", ", SaturatedSalt.formulas()));
    }
    if (step.isPresent() && form.has("salt")) {
      form.fault("step \"" + step.get() + "\"", "a reading has no step", "leave one of them out");
    }
    List<SaltCheck.Point> points =
        sensor.isPresent() && form.has("salt")
            ? points(form, source.orElseThrow(), sensor.get(), at)
            : List.of();
    form.refuseFaults();
    Instant now = clock.instant();
    List<SaltCheck> bodies = new ArrayList<>();
    step.ifPresent(
        word ->
            bodies.add(
                new SaltCheck(
                    source.orElseThrow(),
                    sensor.orElseThrow(),
                    word,
                    Optional.empty(),
                    form.text("note"))));
    points.forEach(
        point ->
            bodies.add(
                new SaltCheck(
                    source.orElseThrow(),
                    sensor.orElseThrow(),
                    SaltCheck.Step.READ,
                    Optional.of(point),
                    form.text("note"))));
    return journal.write(
        bodies.stream()
            .map(body -> new Ledger.Line(at.orElse(now), now, form.text("who"), body))
            .toList());
  }

  private String source(String what, String text) {
    Map<String, List<String>> sensors = live.sensors();
    if (sensors.containsKey(text)) {
      return text;
    }
    throw RefusedInput.of(
        what + " \"" + text + "\"",
        "no source of this shop that reads humidity has this name",
        Nearest.to(text, sensors.keySet())
            .map(near -> "did you mean " + near + "?")
            .orElse("use one of: " + String.join(", ", sensors.keySet())));
  }

  private Optional<String> sensor(Form form, String source) {
    List<String> names = live.sensors().getOrDefault(source, List.of());
    Optional<String> typed = form.text("sensor");
    if (typed.isEmpty() && names.size() > 1) {
      form.fault("sensor", "this source has several", "name one of: " + String.join(", ", names));
    }
    if (typed.isPresent() && !names.contains(typed.get())) {
      form.fault(
          "sensor \"" + typed.get() + "\"",
          "this source has no such sensor",
          names.isEmpty() ? "leave it out" : "use one of: " + String.join(", ", names));
      return Optional.empty();
    }
    return typed.or(() -> names.size() > 1 ? Optional.empty() : Optional.of(source(names, source)));
  }

  private static String source(List<String> names, String source) {
    return names.isEmpty() ? source : names.get(0);
  }

  private static SaltCheck.Step step(String what, String text) {
    return switch (text) {
      case "begin" -> SaltCheck.Step.BEGIN;
      case "end" -> SaltCheck.Step.END;
      default ->
          throw RefusedInput.of(
              what + " \"" + text + "\"", "it is begin or end", "or name a salt to read over");
    };
  }

  private List<SaltCheck.Point> points(
      Form form, String source, String sensor, Optional<Instant> at) {
    Optional<Double> saltTempC = form.read("temp", "temp", Quantities::temperatureC);
    Optional<Double> sensorTempC = form.read("sensorTemp", "sensorTemp", Quantities::temperatureC);
    boolean settled = form.text("settled").filter("yes"::equals).isPresent();
    List<SaltCheck.Point> points = new ArrayList<>();
    for (String one : form.text("salt").orElseThrow().split(",", -1)) {
      String[] two = one.strip().split("=", 2);
      Optional<SaturatedSalt> salt = form.read(Optional.of(two[0].strip()), "salt", SaltBook::salt);
      Optional<Typed> read =
          two.length == 2
              ? typed(form, two[1].strip(), saltTempC, sensorTempC, settled)
              : live(form, source, sensor, saltTempC, sensorTempC, settled, at);
      if (salt.isPresent() && read.isPresent()) {
        form.read(
                Optional.of(one.strip()),
                "salt",
                (what, text) -> point(what, text, salt.get(), read.get(), source, sensor, at))
            .ifPresent(points::add);
      }
    }
    return points;
  }

  /** What the sensor read, typed or live. */
  private record Typed(
      double sentRhPct, double saltTempC, double sensorTempC, OptionalDouble changedPct) {}

  private static SaturatedSalt salt(String what, String text) {
    return SaturatedSalt.named(text)
        .orElseThrow(
            () ->
                RefusedInput.of(
                    what + " \"" + text + "\"",
                    "its humidity is not known here",
                    "use one of: " + String.join(", ", SaturatedSalt.formulas())));
  }

  private static Optional<Typed> typed(
      Form form,
      String text,
      Optional<Double> saltTempC,
      Optional<Double> sensorTempC,
      boolean settled) {
    Optional<Double> read = form.read(Optional.of(text), "salt", Quantities::relativeHumidityPct);
    if (saltTempC.isEmpty() && !form.has("temp")) {
      form.fault("temp", "this is missing", "say how warm the salt is, like --temp 21.4C");
    }
    if (!settled) {
      form.fault(
          "settled",
          "a sensor takes 20 min to an hour in the box",
          "say --settled once it moved by less than 0.2 % in 10 min");
    }
    return read.isPresent() && saltTempC.isPresent() && settled
        ? Optional.of(
            new Typed(
                read.get(),
                saltTempC.get(),
                sensorTempC.orElse(saltTempC.get()),
                OptionalDouble.empty()))
        : Optional.empty();
  }

  private Optional<Typed> live(
      Form form,
      String source,
      String sensor,
      Optional<Double> saltTempC,
      Optional<Double> sensorTempC,
      boolean settled,
      Optional<Instant> at) {
    Optional<Reads> reads = reads(source, sensor);
    if (at.isPresent() || reads.isEmpty()) {
      form.fault(
          "salt",
          at.isPresent() ? "a reading of then must be typed" : source + " says nothing now",
          "type what it read, like NaCl=73.2%");
      return Optional.empty();
    }
    Reads now = reads.get();
    if (!now.settled() && !settled) {
      form.fault(
          "salt",
          now.changedPct().isPresent()
              ? "the reading moved by %s %% over the last 10 min"
                  .formatted(Show.fixed(now.changedPct().getAsDouble(), 1))
              : "it has not been heard for 10 min yet",
          "wait until it moves by less than 0.2 % in 10 min");
    }
    OptionalDouble ownTempC = now.temperatureC();
    if (saltTempC.isEmpty() && ownTempC.isEmpty()) {
      form.fault("temp", "the sensor tells no temperature", "say how warm the salt is: 21.4C");
      return Optional.empty();
    }
    double salt = saltTempC.orElseGet(() -> sensorTempC.orElseGet(ownTempC::orElseThrow));
    double own = sensorTempC.orElseGet(() -> ownTempC.orElse(salt));
    return Optional.of(new Typed(now.sentRhPct(), salt, own, now.changedPct()));
  }

  private SaltCheck.Point point(
      String what,
      String text,
      SaturatedSalt salt,
      Typed read,
      String source,
      String sensor,
      Optional<Instant> at) {
    double apartK = read.sensorTempC() - read.saltTempC();
    if (Math.abs(apartK) > APART_K) {
      throw RefusedInput.of(
          what + " \"" + text + "\"",
          "sensor and salt are %s K apart, and 1 K is some 4.5 points at 75 %%"
              .formatted(Show.fixed(Math.abs(apartK), 1)),
          "let both come to one temperature");
    }
    return new SaltCheck.Point(
        salt.formula(),
        read.saltTempC(),
        read.sensorTempC(),
        salt.rhAtSensorPct(read.saltTempC(), read.sensorTempC()),
        read.sentRhPct(),
        live.corrected(source, sensor, read.sentRhPct(), at.orElseGet(clock::instant)),
        read.changedPct());
  }

  /** How a sensor reads now, as it sends it; empty when it was not heard over the last minutes. */
  public Optional<Reads> reads(String source, String sensor) {
    List<Sent> sent =
        live.justSent(source, sensor).stream().sorted(Comparator.comparing(Sent::at)).toList();
    Instant now = clock.instant();
    if (sent.isEmpty() || sent.get(sent.size() - 1).at().isBefore(now.minus(OLDEST_LIVE))) {
      return Optional.empty();
    }
    Sent newest = sent.get(sent.size() - 1);
    Instant then = newest.at().minus(WINDOW);
    boolean heardSoLong = !sent.get(0).at().isAfter(then.plus(SLACK));
    List<Sent> over = sent.stream().filter(one -> !one.at().isBefore(then.minus(SLACK))).toList();
    double high = over.stream().mapToDouble(Sent::rhPct).max().orElseThrow();
    double low = over.stream().mapToDouble(Sent::rhPct).min().orElseThrow();
    OptionalDouble changed = heardSoLong ? OptionalDouble.of(high - low) : OptionalDouble.empty();
    return Optional.of(
        new Reads(
            newest.at(),
            newest.temperatureC(),
            newest.rhPct(),
            changed,
            heardSoLong && high - low < SETTLED_PCT));
  }

  /** The sources that read humidity, each with the names of its sensors. */
  public Map<String, List<String>> hygrometers() {
    return live.sensors();
  }

  /** A humidity as sent, with the correction that holds now, %. */
  public double corrected(String source, String sensor, double sentRhPct) {
    return live.corrected(source, sensor, sentRhPct, clock.instant());
  }

  /** Every line of the book, struck ones too, oldest first. */
  public List<Entry> lines() {
    return journal.entries().stream()
        .filter(entry -> entry.body() instanceof SaltCheck)
        .sorted(Comparator.comparing(Entry::at))
        .toList();
  }

  private List<Entry> standing(String source, String sensor) {
    return lines().stream()
        .filter(entry -> journal.struckBy(entry.id()).isEmpty())
        .filter(entry -> ((SaltCheck) entry.body()).source().equals(source))
        .filter(entry -> ((SaltCheck) entry.body()).sensor().equals(sensor))
        .toList();
  }

  /** What the checks of a sensor found, oldest first. */
  public List<Found> found(String source, String sensor) {
    List<Found> checks = new ArrayList<>();
    List<SaltCheck.Point> points = new ArrayList<>();
    Optional<Instant> last = Optional.empty();
    for (Entry entry : standing(source, sensor)) {
      Optional<SaltCheck.Point> point = ((SaltCheck) entry.body()).point();
      if (point.isPresent()) {
        boolean other =
            last.map(before -> Duration.between(before, entry.at()).compareTo(ONE_CHECK) > 0)
                .orElse(true);
        if (other) {
          points.clear();
        } else {
          checks.remove(checks.size() - 1);
        }
        points.add(point.get());
        last = Optional.of(entry.at());
        checks.add(new Found(entry.at(), points, SaltFit.of(points)));
      }
    }
    return checks;
  }

  /**
   * What held between checks, reckoned afterwards: gain and offset drawn straight from each check
   * to the next, and the last one's from then on.
   *
   * @return empty before the first check, of which nothing can be said
   */
  public static Optional<SaltFit> heldAt(List<Found> checks, Instant at) {
    Optional<Found> before = Optional.empty();
    for (Found check : checks) {
      if (check.at().isAfter(at)) {
        return before.map(last -> between(last, check, at));
      }
      before = Optional.of(check);
    }
    return before.map(Found::fit);
  }

  private static SaltFit between(Found last, Found next, Instant at) {
    double share =
        (double) Duration.between(last.at(), at).toMillis()
            / Duration.between(last.at(), next.at()).toMillis();
    return new SaltFit(
        last.fit().gain() + share * (next.fit().gain() - last.fit().gain()),
        last.fit().offsetPct() + share * (next.fit().offsetPct() - last.fit().offsetPct()),
        Math.min(last.fit().points(), next.fit().points()));
  }

  /**
   * Since when a sensor lies in the salt box; a box forgotten for a day counts as opened, and a
   * reading over the last salt does not open it.
   */
  public Optional<Instant> boxedSince(String source, String sensor, Instant now) {
    Optional<Instant> since = Optional.empty();
    for (Entry entry : standing(source, sensor)) {
      SaltCheck.Step step = ((SaltCheck) entry.body()).step();
      if (step == SaltCheck.Step.BEGIN) {
        since = Optional.of(entry.at());
      } else if (step == SaltCheck.Step.END) {
        since = Optional.empty();
      }
    }
    return since.filter(at -> now.isBefore(at.plus(LONGEST_IN_BOX)));
  }
}
