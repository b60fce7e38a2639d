package coatwright.store.influx;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.store.Outbox.Parked;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class DeliveryTest {
  /** A server of a few rules; keeps the good lines of a batch it refuses, as some do. */
  private static final class Picky {
    private final Set<String> stored = new HashSet<>();
    private final Set<String> bad;
    private final int most;
    private final boolean tellsCount;
    private int requests;

    Picky(Set<String> bad, int most, boolean tellsCount) {
      this.bad = bad;
      this.most = most;
      this.tellsCount = tellsCount;
    }

    Answer take(List<String> lines) {
      requests++;
      if (lines.size() > most) {
        return new Answer.TooLarge("too large");
      }
      List<String> good = lines.stream().filter(line -> !bad.contains(line)).toList();
      stored.addAll(good);
      int dropped = lines.size() - good.size();
      return dropped == 0
          ? new Answer.Stored()
          : new Answer.Refused(
              "field type conflict", tellsCount ? OptionalInt.of(dropped) : OptionalInt.empty());
    }
  }

  @Property(seed = "20261125")
  void storesEveryGoodLineAndParksEveryBadOne(
      @ForAll @IntRange(min = 1, max = 200) int count,
      @ForAll @Size(max = 12) Set<@IntRange(max = 199) Integer> badOnes,
      @ForAll @IntRange(min = 1, max = 300) int most,
      @ForAll boolean tellsCount) {
    List<String> lines = IntStream.range(0, count).mapToObj(i -> "line " + i).toList();
    Set<String> bad = new HashSet<>();
    badOnes.stream().filter(i -> i < count).forEach(i -> bad.add("line " + i));
    Picky server = new Picky(bad, most, tellsCount);

    Delivery delivery = Delivery.of(lines, server::take);

    Set<String> good = new HashSet<>(lines);
    good.removeAll(bad);
    assertThat(server.stored).isEqualTo(good);
    assertThat(delivery.stored()).isEqualTo(good.size());
    assertThat(delivery.refused())
        .extracting(Parked::line)
        .containsExactlyInAnyOrderElementsOf(bad);
    assertThat(delivery.away()).isEmpty();
  }

  @Test
  void doesNotHalveWhatTheServerSaysIsBadThroughout() {
    List<String> lines = IntStream.range(0, 500).mapToObj(i -> "line " + i).toList();
    Picky server = new Picky(Set.copyOf(lines), 5_000, true);

    Delivery delivery = Delivery.of(lines, server::take);

    assertThat(delivery.refused()).hasSize(500);
    assertThat(server.requests).isEqualTo(1);
  }

  @Test
  void countsWhatIsTooOldForTheServerWithoutParkingIt() {
    Delivery delivery =
        Delivery.of(
            List.of("a", "b"),
            lines ->
                new Answer.Refused(
                    "partial write: points beyond retention policy dropped=2", OptionalInt.of(2)));

    assertThat(delivery.tooOld()).isEqualTo(2);
    assertThat(delivery.refused()).isEmpty();
  }

  @Test
  void stopsWhereTheServerGoesAwayInTheMiddle() {
    List<List<String>> asked = new ArrayList<>();

    Delivery delivery =
        Delivery.of(
            List.of("a", "b", "c", "d"),
            lines -> {
              asked.add(lines);
              return asked.size() == 1
                  ? new Answer.Refused("bad", OptionalInt.empty())
                  : new Answer.Away("gone", Optional.empty());
            });

    assertThat(delivery.away()).isPresent();
    assertThat(asked).containsExactly(List.of("a", "b", "c", "d"), List.of("a", "b"));
  }

  @Test
  void asksNothingForNoLines() {
    Delivery delivery =
        Delivery.of(
            List.of(),
            lines -> {
              throw new AssertionError("asked");
            });

    assertThat(delivery.stored()).isZero();
    assertThat(delivery.away()).isEmpty();
  }
}
