package coatwright.journal;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.climate.TestClock;
import coatwright.quantity.RefusedInput;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** No sequence of forms and strikes loses, alters or reorders what was written before it. */
class NothingIsLostTest {
  private enum Kind {
    PIECE,
    PART,
    JAR,
    COAT,
    NOTE,
    STRIKE
  }

  /** A form filled in with one of a few names, right or wrong. */
  record Deed(Kind kind, int name, int number, boolean sound) {}

  @Provide
  Arbitrary<Deed> deeds() {
    return Combinators.combine(
            Arbitraries.of(Kind.class),
            Arbitraries.integers().between(0, 2),
            Arbitraries.integers().between(1, 30),
            Arbitraries.of(true, true, true, false))
        .as(Deed::new);
  }

  @Property(tries = 300, seed = "20261125")
  void everyEntryStaysAsItWasWritten(@ForAll List<@From("deeds") Deed> someDeeds) {
    List<Deed> deeds =
        new ArrayList<>(
            List.of(
                new Deed(Kind.PIECE, 0, 1, true),
                new Deed(Kind.PART, 0, 1, true),
                new Deed(Kind.JAR, 0, 1, true)));
    deeds.addAll(someDeeds);
    TestClock clock = new TestClock(Instant.parse("2026-03-14T12:00:00Z"));
    MemoryLedger ledger = new MemoryLedger();
    LiveJournal journal = new LiveJournal(ledger);
    ShopForms forms =
        new ShopForms(
            journal,
            clock,
            ZoneOffset.UTC,
            FinishNames.ofSpirit("shellac-pale"),
            List.of("bench"),
            "bench");
    List<Entry> expected = new ArrayList<>();
    for (Deed deed : deeds) {
      clock.pass(java.time.Duration.ofMinutes(7));
      try {
        expected.addAll(fill(forms, deed));
      } catch (RefusedInput refused) {
        assertThat(refused.faults()).isNotEmpty();
      }
      assertThat(journal.entries()).isEqualTo(expected);
    }
    assertThat(ledger.entries()).isEqualTo(expected);
    assertThat(new LiveJournal(ledger).coats()).isEqualTo(journal.coats());
    long standing =
        expected.stream()
            .filter(entry -> journal.struckBy(entry.id()).isEmpty())
            .filter(entry -> entry.body() instanceof Coat)
            .count();
    assertThat(journal.coats()).hasSize((int) standing);
  }

  private static List<Entry> fill(ShopForms forms, Deed deed) {
    String piece = "piece" + deed.name();
    String part = piece + "/part" + deed.number() % 3;
    return switch (deed.kind()) {
      case PIECE -> forms.piece(Map.of("name", deed.sound() ? piece : "a/b"));
      case PART -> forms.part(Map.of("part", part, "area", deed.sound() ? "1m2" : "-1m2"));
      case JAR ->
          forms.jar(
              Map.of("name", "J" + deed.name(), "finish", deed.sound() ? "shellac-pale" : "paint"));
      case COAT ->
          forms.coat(
              Map.of(
                  "part",
                  part,
                  "jar",
                  "J" + deed.name(),
                  "start",
                  deed.sound() ? "-5min" : "23:59"));
      case NOTE ->
          forms.note(
              Map.of(
                  "part",
                  deed.sound() ? part : "e" + deed.number(),
                  "what",
                  "clouded=" + deed.number() % 6));
      case STRIKE ->
          forms.strike(Map.of("entry", "e" + deed.number(), "reason", deed.sound() ? "wrong" : ""));
    };
  }
}
