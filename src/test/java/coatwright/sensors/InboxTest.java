package coatwright.sensors;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;

class InboxTest {
  private final List<String> read = new CopyOnWriteArrayList<>();
  private final List<String> dropped = new CopyOnWriteArrayList<>();

  private void put(Inbox inbox, String what) {
    inbox.put(() -> read.add(what), () -> dropped.add(what));
  }

  @Test
  void dropsTheOldestAndSaysWhoseItWas() {
    try (Inbox inbox = new Inbox(2)) {
      put(inbox, "first");
      put(inbox, "second");
      put(inbox, "third");
      put(inbox, "fourth");
      assertThat(dropped).containsExactly("first", "second");
      assertThat(inbox.dropped()).isEqualTo(2);

      inbox.start();
      Eventually.within(Duration.ofSeconds(10), "the rest is read", () -> read.size() == 2);
      assertThat(read).containsExactly("third", "fourth");
    }
  }

  @Test
  void readsOnAfterOneThatThrows() {
    try (Inbox inbox = new Inbox(10)) {
      inbox.start();
      inbox.put(
          () -> {
            throw new IllegalStateException("thrown on purpose by a test");
          });
      put(inbox, "next");
      Eventually.within(Duration.ofSeconds(10), "the next is read", () -> !read.isEmpty());

      assertThat(read).containsExactly("next");
      assertThat(dropped).isEmpty();
    }
  }
}
