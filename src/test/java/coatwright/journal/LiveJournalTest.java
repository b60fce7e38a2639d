package coatwright.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class LiveJournalTest {
  private static final Instant NOON = Instant.parse("2026-03-14T12:00:00Z");
  private static final PartPath DOOR = PartPath.parse("cabinet/door");

  private final MemoryLedger ledger = new MemoryLedger();

  @Test
  void readsWhatTheLedgerHolds() {
    LiveJournal first = new LiveJournal(ledger);
    first.write(List.of(line(coat(NOON)), line(coat(NOON.minusSeconds(600)))));
    LiveJournal reopened = new LiveJournal(ledger);
    assertThat(reopened.entries()).isEqualTo(first.entries());
    assertThat(reopened.coats(DOOR))
        .as("oldest start first")
        .extracting(Entry::id)
        .containsExactly("e2", "e1");
  }

  @Test
  void tellsListenersOnceTheLinesStand() {
    LiveJournal journal = new LiveJournal(ledger);
    List<Integer> coatsSeen = new ArrayList<>();
    journal.onEntry(entry -> coatsSeen.add(journal.coats().size()));
    journal.write(List.of(line(coat(NOON)), line(coat(NOON.plusSeconds(60)))));
    assertThat(coatsSeen).containsExactly(2, 2);
  }

  @Test
  void givesTheFacesOwnEntryElseTheParts() {
    LiveJournal journal = new LiveJournal(ledger);
    Part whole = new Part(DOOR, OptionalDouble.of(1), OptionalDouble.empty(), Optional.empty());
    PartPath front = PartPath.parse("cabinet/door/front");
    Part face = new Part(front, OptionalDouble.of(0.4), OptionalDouble.empty(), Optional.empty());
    journal.write(List.of(line(whole), line(face)));
    assertThat(journal.part(front)).contains(face);
    assertThat(journal.part(PartPath.parse("cabinet/door/back"))).contains(whole);
    assertThat(journal.part(PartPath.parse("cabinet/shelf"))).isEmpty();
    assertThat(journal.parts("cabinet")).containsExactly(whole, face);
  }

  @Test
  void refusesALedgerThatContradictsItself() {
    ledger.append(List.of(line(new Strike("e7", "not written yet"))));
    assertThatThrownBy(() -> new LiveJournal(ledger))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("entry e1 strikes e7, which no earlier line holds");
  }

  private static Coat coat(Instant start) {
    return new Coat(
        DOOR,
        "J1",
        "e0",
        start,
        Optional.empty(),
        "bench",
        Method.BRUSH,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty());
  }

  private static Ledger.Line line(EntryBody body) {
    return new Ledger.Line(NOON, NOON, Optional.empty(), body);
  }
}
