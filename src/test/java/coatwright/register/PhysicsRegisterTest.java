package coatwright.register;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.air.AirChecks;
import coatwright.film.FilmChecks;
import coatwright.mix.MixChecks;
import coatwright.quantity.OutsideCheck;
import coatwright.quantity.OutsideCheck.Kind;
import coatwright.solvent.SolventChecks;
import coatwright.wood.WoodChecks;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/**
 * The register's tables of deviations are measured, not typed: this runs every check and holds
 * docs/physics.md to what it finds.
 */
class PhysicsRegisterTest {
  private static final Path REGISTER = Path.of("docs/physics.md");
  private static final String WRITE = "coatwright.register.write";
  private static final String HEADER =
      """
      | no. | question | compared with | kind | range | values | largest deviation | allowed |
      |---|---|---|---|---|---|---|---|
      """;

  private record Room(String name, List<OutsideCheck> checks) {
    String table() {
      StringBuilder table = new StringBuilder(HEADER);
      char letter = Character.toUpperCase(name.charAt(0));
      for (int i = 0; i < checks.size(); i++) {
        table.append(checks.get(i).row("" + letter + (i + 1))).append('\n');
      }
      return table.toString();
    }
  }

  private static final List<Room> ROOMS =
      List.of(
          new Room("air", AirChecks.all()),
          new Room("wood", WoodChecks.all()),
          new Room("solvent", SolventChecks.all()),
          new Room("mix", MixChecks.all()),
          new Room("film", FilmChecks.all()));

  @Test
  void everyTableOfDeviationsIsWhatTheChecksMeasureToday() throws IOException {
    String found = Files.readString(REGISTER);
    String expected = between(found, "count", count());
    for (Room room : ROOMS) {
      expected = between(expected, room.name, room.table());
    }
    if (Boolean.getBoolean(WRITE)) {
      Files.writeString(REGISTER, expected);
    }
    assertThat(Files.readString(REGISTER))
        .as(
            "%s no longer says what the checks measure; if the change is meant, write it again:"
                + " mvn -o -Dquick test -Dtest=PhysicsRegisterTest -D%s=true",
            REGISTER, WRITE)
        .isEqualTo(expected);
  }

  @Test
  void atLeastFortyChecksStandOutsideTheProject() {
    assertThat(all().stream().filter(OutsideCheck::outside)).hasSizeGreaterThanOrEqualTo(40);
  }

  @Test
  void noCheckIsListedTwice() {
    assertThat(all().stream().map(check -> check.question() + check.against()))
        .doesNotHaveDuplicates();
  }

  private static List<OutsideCheck> all() {
    List<OutsideCheck> all = new ArrayList<>();
    ROOMS.forEach(room -> all.addAll(room.checks));
    return all;
  }

  private static String count() {
    return String.format(
        Locale.ROOT,
        "**%d checks against the outside**: %d numbers found printed, %d measurements, %d programs"
            + " and %d%nequations of others. %d more are against our own prototype or the trade's"
            + " word and are not counted.%n",
        all().stream().filter(OutsideCheck::outside).count(),
        ofKind(Kind.PRINTED),
        ofKind(Kind.MEASURED),
        ofKind(Kind.PROGRAM),
        ofKind(Kind.EQUATION),
        ofKind(Kind.OWN));
  }

  private static long ofKind(Kind kind) {
    return all().stream().filter(check -> check.kind() == kind).count();
  }

  /** The text with what stands between the markers of a name replaced. */
  private static String between(String text, String name, String filling) {
    String begin = "<!-- measured: " + name + " -->\n";
    String end = "<!-- end: " + name + " -->";
    int from = text.indexOf(begin);
    int to = text.indexOf(end);
    assertThat(from).as("%s has no line %s", REGISTER, begin).isNotNegative();
    assertThat(to).as("%s has no line %s", REGISTER, end).isGreaterThan(from);
    return text.substring(0, from + begin.length()) + filling + text.substring(to);
  }
}
