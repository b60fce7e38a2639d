package coatwright;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Forms;
import coatwright.journal.PartPath;
import coatwright.outlook.Due;
import coatwright.quantity.RefusedInput;
import coatwright.review.Why;
import coatwright.store.SqliteStore;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One coat walks through the house: form, entry, ledger, outlook, due list, observation, review,
 * prediction beside fact.
 */
class OneCoatTest {
  private static final Instant MORNING = Instant.parse("2026-03-20T09:00:00Z");
  private static final PartPath FRONT = PartPath.parse("frame/front");

  @TempDir Path folder;

  @Test
  void aFormBecomesAnEntryThatOutlivesTheProgram() throws IOException {
    try (SmallShop quay = shopWithAFrame()) {
      Entry coat = quay.shop.forms(quay.clock).coat(coatForm()).get(0);
      assertThat(coat.body()).isInstanceOf(Coat.class);
    }
    try (SqliteStore reopened = SqliteStore.openToRead(folder.resolve("data"))) {
      assertThat(reopened.ledger().entries())
          .extracting(entry -> entry.body().kind())
          .containsExactly("piece", "part", "jar", "coat");
    }
  }

  @Test
  void aFormWithFaultsWritesNothingAndTellsThemAll() throws IOException {
    try (SmallShop quay = shopWithAFrame()) {
      Map<String, String> form =
          Map.of("part", "frame/frunt", "jar", "B", "wetFilm", "75", "start", "tomorrow");

      Assertions.assertThatThrownBy(() -> quay.shop.forms(quay.clock).coat(form))
          .isInstanceOfSatisfying(
              RefusedInput.class, refused -> assertThat(refused.faults()).hasSize(4));
      assertThat(quay.shop.journal().coats()).isEmpty();
    }
  }

  @Test
  void theCoatIsDueItsTestsOneAfterAnother() throws IOException {
    try (SmallShop quay = shopWithAFrame()) {
      quay.shop.forms(quay.clock).coat(coatForm());
      quay.meaning.outlooks().refresh(quay.clock.instant(), "the coat");

      List<Due> due = quay.meaning.outlooks().due(Optional.of("frame"));

      assertThat(due).extracting(Due::part).containsOnly("frame/front");
      assertThat(due).extracting(Due::milestone).contains("dry to touch", "dry to recoat");
      Due touch =
          due.stream()
              .filter(one -> one.milestone().equals("dry to touch"))
              .findFirst()
              .orElseThrow();
      assertThat(touch.p50().orElseThrow())
          .isBetween(
              quay.clock.instant().plus(Duration.ofMinutes(3)),
              quay.clock.instant().plus(Duration.ofMinutes(12)));
    }
  }

  @Test
  void aCloudedCoatIsExplainedByTheAirItWasLaidIn() throws IOException {
    try (SmallShop quay = shopWithAFrame()) {
      quay.breathes(20, 86, Duration.ofMinutes(40));
      quay.shop.forms(quay.clock).coat(coatForm());
      quay.breathes(20, 88, Duration.ofMinutes(70));
      quay.shop.forms(quay.clock).note(Map.of("part", "frame/front", "what", "clouded=4"));

      Why why = quay.meaning.reviews().why("frame/front");

      assertThat(why.airAtFault()).isEqualTo(Why.AirAtFault.YES);
      assertThat(why.part()).isEqualTo("frame/front");
      assertThat(why.air()).hasSizeGreaterThan(60);
      assertThat(why.counterfactuals()).isNotEmpty();
      assertThat(why.sentence()).isNotBlank();
    }
  }

  private SmallShop shopWithAFrame() throws IOException {
    SmallShop quay = new SmallShop(folder, MORNING);
    quay.breathes(20, 50, Duration.ofHours(4));
    Forms forms = quay.shop.forms(quay.clock);
    forms.piece(Map.of("name", "frame", "room", SmallShop.ROOM));
    forms.part(Map.of("part", FRONT.toString(), "thickness", "19mm"));
    forms.jar(Map.of("name", "A", "finish", "shellac-pale", "cut", "1.5lb", "strength", "95%"));
    return quay;
  }

  private static Map<String, String> coatForm() {
    return Map.of("part", FRONT.toString(), "jar", "A", "method", "brush");
  }
}
