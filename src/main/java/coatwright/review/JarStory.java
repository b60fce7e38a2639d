package coatwright.review;

import coatwright.film.Finish;
import coatwright.film.SpiritDrying;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Jar;
import coatwright.journal.Journal;
import coatwright.mix.ShelfAge;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What is known of the jar, for which no model exists: its age against its test, what it is, and
 * what became of everything else coated from it.
 *
 * @param told sentences, the age first
 * @param pastItsTest older than the age at which its test falls due
 * @param spoiledElsewhere coats from the same filling, on other parts, noted clouded or soft
 * @param clearInTheSameAir coats on other parts within two hours in the same room with no fault
 *     noted
 */
record JarStory(
    List<String> told,
    boolean pastItsTest,
    List<String> spoiledElsewhere,
    List<String> clearInTheSameAir) {

  private static final Duration SAME_AIR = Duration.ofHours(2);
  private static final int NAMED = 4;

  static JarStory of(Journal journal, Entry coatEntry, Finish finish, ZoneId zone) {
    Coat coat = (Coat) coatEntry.body();
    Optional<Jar> jar =
        journal
            .entry(coat.jarEntry())
            .flatMap(e -> Optional.ofNullable(e.body() instanceof Jar j ? j : null));
    List<String> told = new ArrayList<>();
    boolean old = jar.isPresent() && age(told, jar.get(), coat, finish, zone);
    if (finish.drying() instanceof SpiritDrying) {
      jar.ifPresent(j -> contents(told, j));
    }
    Others others = Others.of(journal, coatEntry, coat);
    others.tell(told, coat.jar());
    return new JarStory(told, old, others.spoiled, others.clearInTheSameAir);
  }

  /**
   * Where to look when it was not the air.
   *
   * @param otherwise what is said when nothing speaks against the jar
   */
  String suspects(String otherwise) {
    if (!spoiledElsewhere.isEmpty()) {
      return "the same jar spoiled " + spoiledElsewhere.get(0) + ", so look at the jar first";
    }
    return pastItsTest
        ? "its jar is past the age of its test, so look at the jar first"
        : otherwise;
  }

  private static boolean age(List<String> told, Jar jar, Coat coat, Finish finish, ZoneId zone) {
    if (jar.opened().isEmpty()) {
      told.add(
          "Jar %s: nobody wrote down when it was opened; %s"
              .formatted(
                  jar.name(),
                  finish.drying() instanceof SpiritDrying
                      ? ShelfAge.DROP_TEST
                      : ShelfAge.SCRAP_TEST));
      return false;
    }
    LocalDate laid = coat.start().atZone(zone).toLocalDate();
    long months = ChronoUnit.MONTHS.between(jar.opened().get(), laid);
    boolean old = months >= finish.testDueMonths();
    told.add(
        "Jar %s was %s old when this coat was laid; %s's %s falls due at %s%s"
            .formatted(
                jar.name(),
                months < 1 ? "less than a month" : counted(months, "month"),
                finish.title(),
                finish.drying() instanceof SpiritDrying ? "drop test" : "test",
                counted(finish.testDueMonths(), "month"),
                old ? ", so test it before anything else" : ""));
    return old;
  }

  private static void contents(List<String> told, Jar jar) {
    if (jar.cutGPerL().isEmpty()) {
      told.add("Its cut is unknown; weigh a sample, let it dry and weigh it again");
    }
    if (jar.strengthVolPct().isEmpty()) {
      told.add("The strength of its spirit is unknown; a hydrometer tells water that got in");
    }
    jar.retarder().ifPresent(r -> told.add("It holds a slow solvent: " + r));
  }

  private static String counted(long n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }

  /** Coats on other parts, sorted by what was noted of them. */
  private static final class Others {
    private final List<String> spoiled = new ArrayList<>();
    private final List<String> soundFromTheJar = new ArrayList<>();
    private final List<String> clearInTheSameAir = new ArrayList<>();
    private final List<String> tests = new ArrayList<>();

    static Others of(Journal journal, Entry asked, Coat coat) {
      Others others = new Others();
      for (Entry entry : journal.coats()) {
        if (entry.body() instanceof Coat other
            && !entry.id().equals(asked.id())
            && !other.part().equals(coat.part())) {
          others.sort(journal, entry, other, coat);
        }
      }
      return others;
    }

    private void sort(Journal journal, Entry entry, Coat other, Coat asked) {
      boolean sameJar = other.jarEntry().equals(asked.jarEntry());
      boolean sameAir = other.room().equals(asked.room()) && within(other.start(), asked.start());
      if (!sameJar && !sameAir) {
        return;
      }
      CoatNotes notes = CoatNotes.of(journal, entry);
      String name = other.part().toString();
      if (sameAir && notes.clouded().isEmpty()) {
        put(clearInTheSameAir, name);
      }
      if (sameJar && notes.hasFault()) {
        put(spoiled, name + (notes.clouded().isPresent() ? " clouded" : " stayed soft"));
      } else if (sameJar) {
        put(soundFromTheJar, name);
      }
      if (sameJar) {
        notes.tests().forEach(t -> put(tests, name + ": " + t));
      }
    }

    private static boolean within(Instant one, Instant other) {
      return Duration.between(one, other).abs().compareTo(SAME_AIR) <= 0;
    }

    private static void put(List<String> list, String name) {
      if (!list.contains(name)) {
        list.add(name);
      }
    }

    void tell(List<String> told, String jar) {
      if (spoiled.isEmpty() && soundFromTheJar.isEmpty()) {
        told.add("Nothing else was coated from this filling of jar " + jar);
      }
      if (!spoiled.isEmpty()) {
        told.add("From the same filling: " + some(spoiled));
      }
      if (!soundFromTheJar.isEmpty()) {
        told.add("From the same filling, with no fault noted: " + some(soundFromTheJar));
      }
      if (!clearInTheSameAir.isEmpty()) {
        told.add(
            "In the same room within two hours, with no clouding noted: "
                + some(clearInTheSameAir));
      }
      if (!tests.isEmpty()) {
        told.add("Tests on parts coated from it: " + some(tests));
      }
    }

    private static String some(List<String> names) {
      int more = names.size() - NAMED;
      String first = String.join(", ", names.subList(0, Math.min(NAMED, names.size())));
      return more > 0 ? String.format(Locale.ROOT, "%s and %d more", first, more) : first;
    }
  }
}
