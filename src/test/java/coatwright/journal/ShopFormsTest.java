package coatwright.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coatwright.climate.TestClock;
import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShopFormsTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
  private static final Instant NOW = Instant.parse("2026-03-14T16:05:00Z");

  private final TestClock clock = new TestClock(NOW);
  private final LiveJournal journal = new LiveJournal(new MemoryLedger());
  private final ShopForms forms =
      new ShopForms(
          journal,
          clock,
          BERLIN,
          FinishNames.ofSpirit("shellac-pale", "shellac-dark"),
          List.of("bench room", "finishing room"),
          "bench room");

  @Test
  void aPromiseOfADayThatHasPassedIsRefused() {
    assertThatThrownBy(() -> forms.piece(Map.of("name", "stool", "promise", "2020-05-01")))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("promise \"2020-05-01\"")
        .hasMessageContaining("the day has passed");
  }

  @Test
  void aCutASpiritAndARetarderOfAFinishThatIsUsedAsItComesAreRefusedTogether() {
    ShopForms can =
        new ShopForms(
            journal,
            clock,
            BERLIN,
            new FinishNames(Set.of("shellac-pale", "varnish"), Set.of("shellac-pale")),
            List.of("bench room"),
            "bench room");
    assertThatThrownBy(
            () ->
                can.jar(
                    Map.of(
                        "name",
                        "V",
                        "finish",
                        "varnish",
                        "cut",
                        "2lb",
                        "strength",
                        "95%",
                        "retarder",
                        "2-butoxyethanol:3%")))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("cut \"2lb\"")
        .hasMessageContaining("strength \"95%\"")
        .hasMessageContaining("retarder");
    assertThat(can.jar(Map.of("name", "V", "finish", "varnish", "retarder", "none"))).hasSize(1);
  }

  @BeforeEach
  void enterACabinetAndAJar() {
    forms.piece(Map.of("name", "cabinet", "promise", "2026-05-01", "room", "finishing room"));
    forms.part(
        Map.of(
            "part",
            "cabinet/left-door",
            "area",
            "0.4m2",
            "thickness",
            "19mm",
            "species",
            "cherry"));
    forms.part(Map.of("part", "cabinet/right-door", "area", "4ft2"));
    forms.jar(
        Map.of(
            "name",
            "J1",
            "finish",
            "shellac-pale",
            "cut",
            "2lb",
            "strength",
            "95%",
            "opened",
            "2026-03-10"));
  }

  @Test
  void writesAPieceAPartAndAJarWithEveryQuantityInItsOwnUnit() {
    assertThat(journal.pieces())
        .containsExactly(
            new Piece(
                "cabinet", Optional.of("finishing room"), Optional.of(LocalDate.of(2026, 5, 1))));
    Part right = journal.part(PartPath.parse("cabinet/right-door")).orElseThrow();
    assertThat(right.areaM2().getAsDouble()).isBetween(0.3716, 0.3717);
    Jar jar = (Jar) journal.jars().get(0).body();
    assertThat(jar.cutGPerL().getAsDouble()).isBetween(239.6, 239.7);
    assertThat(jar.opened()).contains(LocalDate.of(2026, 3, 10));
  }

  @Test
  void writesACoatWithItsDefaults() {
    Entry entry = forms.coat(Map.of("part", "cabinet/left-door", "jar", "J1")).get(0);
    Coat coat = (Coat) entry.body();
    assertThat(coat.start()).isEqualTo(NOW);
    assertThat(coat.end()).isEmpty();
    assertThat(coat.room()).as("the piece's room").isEqualTo("finishing room");
    assertThat(coat.method()).isEqualTo(Method.BRUSH);
    assertThat(coat.wetFilmUm()).isEmpty();
    assertThat(coat.jarEntry()).isEqualTo(journal.jars().get(0).id());
    assertThat(entry.at()).isEqualTo(NOW);
  }

  @Test
  void writesACoatLate() {
    Entry entry =
        forms
            .coat(
                Map.of(
                    "part",
                    "cabinet/left-door",
                    "jar",
                    "J1",
                    "start",
                    "yesterday 16:20",
                    "end",
                    "yesterday 16:32",
                    "wetFilm",
                    "3mil",
                    "wood",
                    "64F",
                    "method",
                    "pad",
                    "who",
                    "Ann"))
            .get(0);
    Coat coat = (Coat) entry.body();
    assertThat(coat.start()).isEqualTo(Instant.parse("2026-03-13T15:20:00Z"));
    assertThat(entry.at()).isEqualTo(coat.start());
    assertThat(entry.writtenAt()).isEqualTo(NOW);
    assertThat(coat.wetFilmUm()).isEqualTo(OptionalDouble.of(3 * 25.4));
    assertThat(coat.woodTempC().getAsDouble()).isBetween(17.77, 17.78);
    assertThat(entry.who()).contains("Ann");
  }

  @Test
  void writesACoatOnSeveralPartsTogether() {
    List<Entry> told = new ArrayList<>();
    journal.onEntry(told::add);
    List<Entry> entries =
        forms.coat(Map.of("part", "cabinet/left-door/front, cabinet/right-door", "jar", "J1"));
    assertThat(entries).hasSize(2);
    assertThat(told).isEqualTo(entries);
    assertThat(journal.coats(PartPath.parse("cabinet/left-door/front"))).hasSize(1);
    assertThat(journal.coats(PartPath.parse("cabinet/left-door")))
        .as("a part's faces are apart")
        .isEmpty();
  }

  @Test
  void repeatsTheLastCoat() {
    forms.coat(
        Map.of(
            "part",
            "cabinet/left-door",
            "jar",
            "J1",
            "method",
            "wipe",
            "room",
            "bench room",
            "wetFilm",
            "60um"));
    clock.pass(Duration.ofMinutes(10));
    Coat again =
        (Coat) forms.coat(Map.of("part", "cabinet/right-door", "same", "true")).get(0).body();
    assertThat(again.jar()).isEqualTo("J1");
    assertThat(again.method()).isEqualTo(Method.WIPE);
    assertThat(again.room()).isEqualTo("bench room");
    assertThat(again.wetFilmUm()).hasValue(60);
    Coat changed =
        (Coat)
            forms
                .coat(Map.of("part", "cabinet/right-door", "same", "yes", "wetFilm", "70um"))
                .get(0)
                .body();
    assertThat(changed.wetFilmUm()).hasValue(70);
  }

  @Test
  void cannotRepeatWhatHasNotBeen() {
    assertThat(faults(() -> forms.coat(Map.of("part", "cabinet/left-door", "same", "true"))))
        .anySatisfy(fault -> assertThat(fault).contains("no coat stands in the journal yet"));
  }

  @Test
  void tellsEveryFaultOfAFormAtOnce() {
    List<Entry> before = journal.entries();
    List<String> faults =
        faults(
            () ->
                forms.coat(
                    Map.of(
                        "part", "cabinet/left-dor,cabinet/right-door",
                        "jar", "J2",
                        "start", "16:20",
                        "end", "16:10",
                        "room", "finishing rom",
                        "wetFilm", "3",
                        "wood", "300C",
                        "method", "mop")));
    assertThat(faults).hasSize(7);
    assertThat(faults)
        .anySatisfy(
            fault ->
                assertThat(fault)
                    .contains("cabinet/left-dor is not known; nearest is cabinet/left-door")
                    .contains("enter it with: coatwright part new cabinet/left-dor"))
        .anySatisfy(fault -> assertThat(fault).contains("J2 is not known; nearest is J1"))
        .anySatisfy(fault -> assertThat(fault).contains("before the start"))
        .anySatisfy(fault -> assertThat(fault).contains("did you mean finishing room?"))
        .anySatisfy(fault -> assertThat(fault).contains("a film thickness needs its unit"))
        .anySatisfy(fault -> assertThat(fault).contains("wood in a shop is from -20 to 60 °C"))
        .anySatisfy(fault -> assertThat(fault).contains("brush, pad, wipe, spray"));
    assertThat(journal.entries()).as("nothing is written").isEqualTo(before);
  }

  @Test
  void refusesACoatThatHasNotComeYet() {
    assertThat(
            faults(
                () ->
                    forms.coat(Map.of("part", "cabinet/left-door", "jar", "J1", "start", "18:00"))))
        .singleElement()
        .asString()
        .contains("has not come yet");
  }

  @Test
  void refusesACoatFromAJarNotYetOpened() {
    assertThat(
            faults(
                () ->
                    forms.coat(
                        Map.of(
                            "part",
                            "cabinet/left-door",
                            "jar",
                            "J1",
                            "start",
                            "2026-03-09T10:00"))))
        .singleElement()
        .asString()
        .contains("the jar J1 was opened on 2026-03-10, after this coat");
  }

  @Test
  void laysALateCoatFromTheFillingOfItsTime() {
    String first = journal.jars().get(0).id();
    Entry second =
        forms
            .jar(
                Map.of("name", "J1", "finish", "shellac-pale", "cut", "unknown", "opened", "today"))
            .get(0);
    Coat late =
        (Coat)
            forms
                .coat(Map.of("part", "cabinet/left-door", "jar", "J1", "start", "2026-03-12T10:00"))
                .get(0)
                .body();
    Coat now = (Coat) forms.coat(Map.of("part", "cabinet/left-door", "jar", "J1")).get(0).body();
    assertThat(late.jarEntry()).isEqualTo(first);
    assertThat(now.jarEntry()).isEqualTo(second.id());
    assertThat(journal.jars()).containsExactly(second);
    assertThat(((Jar) second.body()).cutGPerL()).as("unknown is not a number").isEmpty();
  }

  @Test
  void followsACorrectedFilling() {
    Entry wrong = journal.jars().get(0);
    Coat coat = (Coat) forms.coat(Map.of("part", "cabinet/left-door", "jar", "J1")).get(0).body();
    forms.strike(Map.of("entry", wrong.id(), "reason", "it was a 3 lb cut"));
    Entry right =
        forms
            .jar(
                Map.of(
                    "name", "J1", "finish", "shellac-pale", "cut", "3lb", "opened", "2026-03-10"))
            .get(0);
    assertThat(journal.filling(coat)).contains(right);
  }

  @Test
  void flagsCoatsThatOverlap() {
    forms.coat(Map.of("part", "cabinet/left-door", "jar", "J1", "start", "16:00", "end", "16:20"));
    Entry second =
        forms
            .coat(
                Map.of(
                    "part",
                    "cabinet/left-door/front",
                    "jar",
                    "J1",
                    "start",
                    "16:10",
                    "end",
                    "16:30"))
            .get(0);
    Entry apart =
        forms
            .coat(
                Map.of("part", "cabinet/left-door", "jar", "J1", "start", "16:30", "end", "16:40"))
            .get(0);
    assertThat(Overlaps.sentence(journal, second).orElseThrow())
        .isEqualTo("coat e6 overlaps e5 on the same surface; strike the one that is wrong");
    assertThat(Overlaps.of(journal, apart)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "16", "16m", "-0.4m2", "1e400m2", "0m2", "300m2", "NaNm2"})
  void refusesAnAreaThatIsNone(String area) {
    assertThat(faults(() -> forms.part(Map.of("part", "cabinet/shelf", "area", area)))).hasSize(1);
  }

  @Test
  void refusesAPartOfAnUnknownPieceAndOneEnteredBefore() {
    assertThat(faults(() -> forms.part(Map.of("part", "cabinte/shelf"))))
        .singleElement()
        .asString()
        .contains("cabinte is not known; nearest is cabinet", "coatwright piece new cabinte");
    assertThat(faults(() -> forms.part(Map.of("part", "cabinet/left-door"))))
        .singleElement()
        .asString()
        .contains("already in the journal, entry e2");
    assertThat(faults(() -> forms.part(Map.of("part", "left-door")))).hasSize(1);
    assertThat(faults(() -> forms.piece(Map.of("name", "a/b")))).hasSize(1);
  }

  @Test
  void namesAKeyTheFormDoesNotHave() {
    assertThat(
            faults(
                () ->
                    forms.coat(
                        Map.of("part", "cabinet/left-door", "jar", "J1", "wetfilm", "3mil"))))
        .singleElement()
        .asString()
        .contains("did you mean wetFilm?");
  }

  @Test
  void takesARetarderItKnowsAndRefusesOthersWithTheList() {
    assertThat(retarder("2-butoxyethanol:3%")).contains("2-butoxyethanol:3%");
    assertThat(retarder("2-Butoxyethanol: 2.5 %")).contains("2-butoxyethanol:2.5%");
    assertThat(retarder("drops:10/qt")).contains("drops:10/qt");
    assertThat(retarder("none")).isEmpty();
    assertThatThrownBy(() -> retarder("lavender oil:3%"))
        .hasMessageContaining("2-butoxyethanol (reckoned with) or drops (recorded only)");
    assertThatThrownBy(() -> retarder("2-butoxyethanol:40%")).hasMessageContaining("at most 20 %");
    assertThatThrownBy(() -> retarder("drops:10")).hasMessageContaining("drops:10/qt");
  }

  private Optional<String> retarder(String text) {
    Entry jar = forms.jar(Map.of("name", "J9", "finish", "shellac-dark", "retarder", text)).get(0);
    return ((Jar) jar.body()).retarder();
  }

  @Test
  void writesEveryObservationOfTheList() {
    String coat =
        forms.coat(Map.of("part", "cabinet/left-door", "jar", "J1", "start", "16:00")).get(0).id();
    Observation clouded = note(Map.of("part", coat, "what", "clouded=3", "text", "at the edge"));
    assertThat(clouded.grade()).isEqualTo(OptionalInt.of(3));
    assertThat(clouded.coat()).contains(coat);
    assertThat(clouded.part()).isEqualTo(PartPath.parse("cabinet/left-door"));
    assertThat(note(Map.of("coat", coat, "what", "cleared")).what())
        .isEqualTo(Observation.What.CLEARED);
    assertThat(note(Map.of("part", "cabinet/left-door", "what", "tacky")).coat()).isEmpty();
    for (String test : List.of("touch", "thumbnail", "powder", "smell", "print")) {
      assertThat(note(Map.of("part", "cabinet/left-door", "what", test + "=pass")).passed())
          .contains(true);
      assertThat(note(Map.of("part", "cabinet/left-door", "what", test + "=fail")).passed())
          .contains(false);
    }
    assertThat(note(Map.of("part", "cabinet/left-door", "what", "rubbed-out=not-fine")).passed())
        .contains(false);
    Observation weighed = note(Map.of("part", "cabinet/left-door", "what", "weighed=3.2%"));
    assertThat(weighed.what()).isEqualTo(Observation.What.WEIGHED);
    assertThat(weighed.residuePct()).hasValue(3.2);
    assertThat(clouded.residuePct()).isEmpty();
    assertThat(journal.observations(PartPath.parse("cabinet/left-door"))).hasSize(15);
  }

  private Observation note(Map<String, String> form) {
    return (Observation) forms.note(form).get(0).body();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "clouded",
        "clouded=6",
        "clouded=-1",
        "clouded=2.5",
        "cleared=yes",
        "thumbnail",
        "thumbnail=ok",
        "rubbed-out=pass",
        "weighed=61%",
        "shiny",
        "="
      })
  void refusesAnObservationOutsideTheList(String what) {
    assertThat(faults(() -> forms.note(Map.of("part", "cabinet/left-door", "what", what))))
        .singleElement()
        .asString()
        .contains("clouded=0..5, cleared, tacky");
  }

  @ParameterizedTest
  @ValueSource(strings = {"weighed", "weighed=much", "weighed=-3%", "weighed=3.2 g"})
  void refusesAResidueThatIsNoPercentage(String what) {
    assertThat(faults(() -> forms.note(Map.of("part", "cabinet/left-door", "what", what))))
        .singleElement()
        .asString()
        .contains(what);
  }

  @Test
  void refusesANoteBeforeItsCoatOrOnAStruckOne() {
    String coat =
        forms.coat(Map.of("part", "cabinet/left-door", "jar", "J1", "start", "16:00")).get(0).id();
    assertThat(faults(() -> forms.note(Map.of("coat", coat, "what", "tacky", "at", "15:00"))))
        .singleElement()
        .asString()
        .contains("before the coat was begun");
    forms.strike(Map.of("entry", coat, "reason", "wrong part"));
    assertThat(faults(() -> forms.note(Map.of("coat", coat, "what", "tacky")))).hasSize(1);
    assertThat(faults(() -> forms.note(Map.of("coat", "e1", "what", "tacky")))).hasSize(1);
  }

  @Test
  void strikesAnEntryAndBringsItBack() {
    String coat = forms.coat(Map.of("part", "cabinet/left-door", "jar", "J1")).get(0).id();
    Entry strike = forms.strike(Map.of("entry", coat, "reason", "wrong part")).get(0);
    assertThat(journal.coats()).isEmpty();
    assertThat(journal.entry(coat)).as("still readable").isPresent();
    assertThat(journal.struckBy(coat)).contains(strike);
    assertThat(faults(() -> forms.strike(Map.of("entry", coat, "reason", "again"))))
        .singleElement()
        .asString()
        .contains("already struck out by " + strike.id());
    forms.strike(Map.of("entry", strike.id(), "reason", "it was right after all"));
    assertThat(journal.coats()).hasSize(1);
    assertThat(journal.struckBy(coat)).isEmpty();
    assertThat(faults(() -> forms.strike(Map.of("entry", "e99")))).hasSize(2);
  }

  private static List<String> faults(ThrowingCallable call) {
    try {
      call.call();
    } catch (RefusedInput refused) {
      return refused.faults().stream().map(Fault::sentence).toList();
    } catch (Throwable other) {
      throw new AssertionError("not refused but failed", other);
    }
    return List.of();
  }
}
