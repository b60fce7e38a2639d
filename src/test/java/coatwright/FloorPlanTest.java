package coatwright;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The rules of the house: which room may open a door to which. The same table stands in
 * docs/design.md.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class FloorPlanTest {
  /**
   * Room to the rooms it opens doors to; {@code quantity} is open to every room and is left out.
   */
  private static final Map<String, Set<String>> DOORS =
      Map.ofEntries(
          Map.entry("quantity", Set.of()),
          Map.entry("air", Set.of()),
          Map.entry("solvent", Set.of("air")),
          Map.entry("wood", Set.of("air")),
          Map.entry("mix", Set.of("solvent")),
          Map.entry("film", Set.of("air", "solvent", "wood", "mix")),
          Map.entry("climate", Set.of("air")),
          Map.entry("journal", Set.of("air", "mix")),
          Map.entry("outlook", Set.of("film", "climate", "journal", "air", "wood", "mix")),
          Map.entry("watch", Set.of("outlook", "climate", "journal", "mix", "film", "air")),
          Map.entry(
              "review", Set.of("outlook", "climate", "journal", "film", "air", "wood", "mix")),
          Map.entry("json", Set.of()),
          Map.entry("sensors", Set.of("air", "climate", "json")),
          Map.entry("store", Set.of("climate", "journal", "outlook", "watch", "json")),
          Map.entry(
              "web",
              Set.of(
                  "climate", "journal", "outlook", "watch", "review", "mix", "wood", "air", "film",
                  "json")),
          Map.entry(
              "cli",
              Set.of(
                  "climate", "journal", "outlook", "watch", "review", "mix", "wood", "air", "film",
                  "json")));

  /** Rooms of the hall open every door; nobody opens a door to them. */
  private static final Set<String> HALL = Set.of("", "config", "demo", "replay");

  private static final Set<String> CELLAR =
      Set.of("quantity", "air", "solvent", "wood", "mix", "film");

  private final JavaClasses house =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("coatwright");

  static List<String> rooms() {
    return DOORS.keySet().stream().sorted().toList();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("rooms")
  void opensOnlyTheDoorsOfThePlan(String room) {
    Set<String> open = DOORS.get(room);
    noClasses()
        .that(describe("are in " + room, c -> roomOf(c).equals(room)))
        .should()
        .dependOnClassesThat(
            describe(
                "are in a room that " + room + " has no door to",
                c ->
                    isOurs(c)
                        && !roomOf(c).equals(room)
                        && !roomOf(c).equals("quantity")
                        && !open.contains(roomOf(c))))
        .allowEmptyShould(true)
        .check(house);
  }

  @Test
  void everyRoomIsOnThePlan() {
    Set<String> built =
        house.stream().map(FloorPlanTest::roomOf).collect(Collectors.toCollection(TreeSet::new));
    built.removeAll(DOORS.keySet());
    built.removeAll(HALL);
    assertThat(built).as("rooms that stand but are not on the plan").isEmpty();
  }

  @Test
  void theCellarSeesTheJdkOnly() {
    classes()
        .that(describe("are in the cellar", c -> CELLAR.contains(roomOf(c))))
        .should()
        .onlyDependOnClassesThat(
            describe(
                "are of the JDK or the cellar",
                c ->
                    c.getPackageName().startsWith("java.")
                        || c.isPrimitive()
                        || c.isArray()
                        || c.getPackageName().startsWith("org.jspecify.")
                        || (isOurs(c) && CELLAR.contains(roomOf(c)))))
        .check(house);
  }

  @Test
  void librariesStayBehindTheDoorThatNeedsThem() {
    keeps("java.sql", Set.of("store"));
    keeps("org.jdbi", Set.of("store"));
    keeps("org.flywaydb", Set.of("store"));
    keeps("org.eclipse.paho", Set.of("sensors", "notices"));
    keeps("com.fazecast", Set.of("sensors"));
    keeps("io.moquette", Set.of("sensors"));
    keeps("io.javalin", Set.of("web"));
    keeps("java.net.http", Set.of("cli", "notices", "sensors", "store"));
    keeps("com.influxdb", Set.of("store"));
    keeps("okhttp3", Set.of("store"));
    keeps("picocli", Set.of("cli"));
    keeps("org.snakeyaml", Set.of("config"));
    keeps(
        "com.fasterxml",
        Set.of("json", "sensors", "store", "web", "cli", "config", "demo", "replay"));
  }

  @Test
  void noRingsBetweenRooms() {
    slices().matching("coatwright.(*)..").should().beFreeOfCycles().check(house);
  }

  private void keeps(String library, Set<String> rooms) {
    noClasses()
        .that(describe("are outside " + rooms, c -> isOurs(c) && !rooms.contains(roomOf(c))))
        .should()
        .dependOnClassesThat(
            describe("belong to " + library, c -> c.getPackageName().startsWith(library)))
        .allowEmptyShould(true)
        .check(house);
  }

  private static boolean isOurs(JavaClass c) {
    return c.getPackageName().equals("coatwright") || c.getPackageName().startsWith("coatwright.");
  }

  private static String roomOf(JavaClass c) {
    String inside = c.getPackageName().substring("coatwright".length());
    int end = inside.indexOf('.', 1);
    return inside.isEmpty() ? "" : inside.substring(1, end < 0 ? inside.length() : end);
  }
}
