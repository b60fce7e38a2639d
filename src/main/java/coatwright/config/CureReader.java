package coatwright.config;

import coatwright.film.CureFacts;
import coatwright.film.Curing;
import coatwright.film.Milestone;
import coatwright.film.StatedTimes;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.StrictNumber;
import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the readers of all curing families share. */
final class CureReader {
  /** Late end of the recoat window, among the milestones. */
  static final String UNTIL = "recoat-until";

  static final String THRESHOLDS = "thresholds";
  static final String DATA_SHEET = "data-sheet";

  private static final String POT_LIFE = "pot-life";
  private static final String LOWEST_FILM = "mfft";
  private static final Pattern ENERGY = Pattern.compile("(\\S+?) ?kJ/mol");
  private static final Pattern PER_HOUR = Pattern.compile("(\\S+?) ?/ ?h");
  private static final String CHANGE = "change it";

  private CureReader() {}

  /**
   * The facts all curing finishes have.
   *
   * @param solidsVolPct of the family, where the file does not say
   * @param oil whether it takes up oxygen, and may be wiped off
   */
  static CureFacts facts(
      Section file,
      DryingReader.ReferenceAir reference,
      BasisReader basis,
      double solidsVolPct,
      boolean oil) {
    basis.know("solids", "cold-below", "slow-below");
    double solids = file.quantity("solids", solidsVolPct, Quantities::percent);
    double coldBelowC = file.quantity("cold-below", 10.0, Quantities::temperatureC);
    double slowBelow = file.number("slow-below", 0.6, 0.05, 1);
    OptionalDouble wipeOffMin =
        oil ? wiping(file, basis, "wipe-off-after") : OptionalDouble.empty();
    OptionalDouble bleedMin = oil ? wiping(file, basis, "bleed-every") : OptionalDouble.empty();
    return checked(
        file,
        "solids",
        new CureFacts(
            solidsVolPct,
            20,
            50,
            10,
            0.6,
            oil,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            basis.byKey()),
        () ->
            new CureFacts(
                solids,
                reference.tempC(),
                reference.rhPct(),
                coldBelowC,
                slowBelow,
                oil,
                wipeOffMin,
                bleedMin,
                basis.byKey()));
  }

  private static OptionalDouble wiping(Section file, BasisReader basis, String key) {
    basis.know(key);
    OptionalDouble hours = hours(file, key);
    return hours.isPresent() ? OptionalDouble.of(hours.getAsDouble() * 60) : hours;
  }

  /** A record that checks itself; refused, its fault is put down and the other taken to read on. */
  static <T> T checked(Section at, String key, T otherwise, Supplier<T> made) {
    try {
      return made.get();
    } catch (OutOfRange outside) {
      at.fault(key, String.valueOf(outside.getMessage()), CHANGE);
      return otherwise;
    }
  }

  /** Hours, or nothing where the key is absent or says none. */
  static OptionalDouble hours(Section section, String key) {
    return section.optionalQuantity(
        key,
        (what, text) -> {
          Duration read = Quantities.duration(what, text);
          return read.toMillis() / 3.6e6;
        });
  }

  /** An activation energy, J/mol. */
  static double energyJPerMol(Section section, String key, double otherwiseJPerMol) {
    return section.quantity(
        key,
        otherwiseJPerMol,
        (what, text) -> 1000 * number(ENERGY, what, text, "an activation energy", "60kJ/mol"));
  }

  /** A rate, 1/h. */
  static double perHour(Section section, String key, double otherwise) {
    return section.quantity(
        key, otherwise, (what, text) -> number(PER_HOUR, what, text, "a rate", "0.1/h"));
  }

  private static double number(
      Pattern form, String what, String text, String name, String example) {
    Matcher matcher = form.matcher(text);
    OptionalDouble number =
        matcher.matches() ? StrictNumber.parse(matcher.group(1), '.') : OptionalDouble.empty();
    return number.orElseThrow(
        () ->
            RefusedInput.of(
                what + " \"" + text + "\"", name + " needs its unit", "write it like " + example));
  }

  /**
   * What each milestone needs, by the words of the file; the family's own where it does not say.
   */
  static <T> Map<Milestone, T> milestones(
      BasisReader basis, Map<Milestone, T> seeds, ByKey<T> reader) {
    Map<Milestone, T> read = new EnumMap<>(Milestone.class);
    Curing.keys()
        .forEach(
            (milestone, key) -> {
              basis.know(key);
              T seed = seeds.get(milestone);
              if (seed != null) {
                read.put(milestone, reader.read(key, seed));
              }
            });
    basis.know(UNTIL);
    return read;
  }

  /** Reads one milestone's value, or hands the seed back. */
  interface ByKey<T> {
    T read(String key, T seed);
  }

  /** The finish as its file has it, moved to what the data sheet states where there is one. */
  static Curing fitted(Section file, Curing finish, boolean potLife, boolean lowestFilm) {
    if (!file.has(DATA_SHEET)) {
      return finish;
    }
    Section sheet = file.section(DATA_SHEET);
    Optional<StatedTimes> stated = stated(file, sheet, finish, potLife, lowestFilm);
    sheet.refuseOthers();
    return stated
        .map(times -> checked(file, DATA_SHEET, finish, () -> finish.fitted(times)))
        .orElse(finish);
  }

  private static Optional<StatedTimes> stated(
      Section file, Section sheet, Curing finish, boolean potLife, boolean lowestFilm) {
    Section at = sheet.section("at");
    // All three are asked for, so that every missing one is told at once.
    boolean tempTold = !at.needed("temperature", "23C").isEmpty();
    boolean rhTold = !at.needed("humidity", "50%").isEmpty();
    boolean filmTold = !at.needed("wet-film", "100um").isEmpty();
    boolean told = tempTold && rhTold && filmTold;
    CureFacts facts = finish.facts();
    double tempC = at.quantity("temperature", facts.referenceTempC(), Quantities::temperatureC);
    double rhPct = at.quantity("humidity", facts.referenceRhPct(), Quantities::relativeHumidityPct);
    double wetUm = at.quantity("wet-film", 100.0, Quantities::lengthUm);
    at.refuseOthers();
    Map<Milestone, Double> hours = new EnumMap<>(Milestone.class);
    Curing.keys().forEach((m, key) -> hours(sheet, key).ifPresent(h -> hours.put(m, h)));
    OptionalDouble until = hours(sheet, UNTIL);
    OptionalDouble potH = potLife ? hours(sheet, POT_LIFE) : OptionalDouble.empty();
    OptionalDouble lowestC =
        lowestFilm
            ? sheet.optionalQuantity(LOWEST_FILM, Quantities::temperatureC)
            : OptionalDouble.empty();
    if (hours.isEmpty()) {
      file.fault(
          DATA_SHEET,
          "it states no time to any milestone",
          "write at least one, such as recoat: 4h");
    }
    if (!told || hours.isEmpty()) {
      return Optional.empty();
    }
    return checked(
        file,
        DATA_SHEET,
        Optional.empty(),
        () -> Optional.of(new StatedTimes(tempC, rhPct, wetUm, hours, until, potH, lowestC)));
  }
}
