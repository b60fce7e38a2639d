package coatwright.sensors.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Asks several stations on one line, one question at a time.
 *
 * <p>Our own, because the Modbus library at hand waits for ever on a port that was unplugged. Every
 * question has its own deadline; what lay on the line before it is thrown away, so that a late
 * answer is not taken for the next one's; the bytes we sent, where an adapter gives them back, are
 * taken off exactly. Three tries, then the station is late. A port on which even a write hangs is
 * closed from outside.
 */
public final class PolledLine implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(PolledLine.class);
  private static final int READ_MS = 50;
  private static final int BUFFER = 512;
  private static final int TRIES = 3;
  private static final Duration BETWEEN = Duration.ofMillis(20);
  private static final Duration LONGEST_WAIT = Duration.ofMillis(250);
  private static final int HANGS_AFTER_ANSWERS = 3;

  private final SerialDevice device;
  private final Duration answerWithin;
  private final List<Turn> turns = new ArrayList<>();
  private final AtomicLong asked = new AtomicLong();
  private final ScheduledExecutorService guard =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "serial-guard");
            thread.setDaemon(true);
            return thread;
          });

  /** When a question is due. */
  private static final class Turn {
    private final Poll poll;
    private long dueNanos = System.nanoTime();

    Turn(Poll poll) {
      this.poll = poll;
    }
  }

  /**
   * @param device a name under {@code /dev/serial} or an absolute path
   * @param answerWithin how long a station has to answer, 1 s in the house
   * @param changed is run when the device was opened or closed, or is in another trouble
   */
  public PolledLine(
      String device,
      SerialSettings line,
      Duration answerWithin,
      Duration reopenEvery,
      List<Poll> polls,
      Runnable changed) {
    this.answerWithin = answerWithin;
    polls.forEach(poll -> turns.add(new Turn(poll)));
    this.device = new SerialDevice(device, line, reopenEvery, READ_MS, this::ask, changed);
  }

  /** Begins to ask; returns at once and needs no device to be there yet. */
  public void start() {
    device.start();
  }

  /** True while the device is open. */
  public boolean isOpen() {
    return device.isOpen();
  }

  /** How many questions went out. */
  public long asked() {
    return asked.get();
  }

  /** What is wrong with the line itself and what to do, in one sentence. */
  public Optional<String> trouble() {
    return device.trouble();
  }

  private void ask(SerialPort port) {
    while (!device.isClosing()) {
      Turn next = turns.get(0);
      for (Turn turn : turns) {
        next = turn.dueNanos - next.dueNanos < 0 ? turn : next;
      }
      Duration wait = Duration.ofNanos(next.dueNanos - System.nanoTime());
      if (wait.isNegative() || wait.isZero()) {
        if (!ask(port, next.poll)) {
          return;
        }
        next.dueNanos = nextDue(next);
        wait = BETWEEN;
      }
      if (device.waits(wait.compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : wait)) {
        return;
      }
      if (!device.isThere()) {
        return;
      }
    }
  }

  /** In step with its interval; turns that were missed are not made up for. */
  private static long nextDue(Turn turn) {
    long every = turn.poll.every().toNanos();
    long due = turn.dueNanos + every;
    long now = System.nanoTime();
    return due - now < 0 ? now + every : due;
  }

  /** Asks one station, up to three times; false when the device is gone. */
  private boolean ask(SerialPort port, Poll poll) {
    byte[] last = new byte[0];
    String why = "no answer";
    for (int attempt = 0; attempt < TRIES; attempt++) {
      if (attempt > 0 && device.waits(BETWEEN)) {
        return false;
      }
      Answer answer = guarded(port, poll);
      if (answer.gone) {
        return false;
      }
      last = answer.bytes;
      if (answer.verdict instanceof Poll.Verdict.Right) {
        hand(() -> poll.heard(answer.bytes));
        return true;
      }
      if (answer.verdict instanceof Poll.Verdict.Wrong wrong) {
        why = wrong.why();
        if (!wrong.askAgain()) {
          break;
        }
      } else if (answer.verdict instanceof Poll.Verdict.Unfinished unfinished) {
        why = last.length == 0 ? "no answer" : unfinished.why();
      }
    }
    byte[] told = last;
    String reason = why;
    hand(() -> poll.unheard(told, reason));
    return true;
  }

  private void hand(Runnable telling) {
    try {
      telling.run();
    } catch (RuntimeException e) {
      LOG.error("an answer on {} could not be handed on", device.path(), e);
    }
  }

  /** What came back, or that the device is no longer there. */
  private static final class Answer {
    private final byte[] bytes;
    private final Poll.Verdict verdict;
    private final boolean gone;

    Answer(byte[] bytes, Poll.Verdict verdict, boolean gone) {
      this.bytes = bytes;
      this.verdict = verdict;
      this.gone = gone;
    }

    static Answer ofGoneDevice() {
      return new Answer(new byte[0], new Poll.Verdict.Unfinished("the device is gone"), true);
    }
  }

  private Answer guarded(SerialPort port, Poll poll) {
    Future<?> hanging =
        guard.schedule(
            () -> {
              LOG.warn("{} hangs; closing it", device.path());
              device.closeElsewhere(port);
            },
            answerWithin.multipliedBy(HANGS_AFTER_ANSWERS).toMillis(),
            TimeUnit.MILLISECONDS);
    try {
      return once(port, poll);
    } finally {
      hanging.cancel(false);
    }
  }

  private Answer once(SerialPort port, Poll poll) {
    byte[] request = poll.request();
    if (!emptied(port) || port.writeBytes(request, request.length) != request.length) {
      return Answer.ofGoneDevice();
    }
    asked.incrementAndGet();
    long deadline = System.nanoTime() + answerWithin.toNanos();
    byte[] buffer = new byte[BUFFER];
    byte[] come = new byte[0];
    Poll.Verdict verdict = new Poll.Verdict.Unfinished("no answer");
    while (System.nanoTime() - deadline < 0 && come.length < BUFFER) {
      int count = port.readBytes(buffer, buffer.length);
      if (count < 0 || !device.isThere()) {
        return Answer.ofGoneDevice();
      }
      if (count > 0) {
        come = joined(come, buffer, count);
        byte[] answer = withoutEcho(come, request);
        verdict = answer == null ? verdict : poll.judge(answer);
        if (answer != null && !(verdict instanceof Poll.Verdict.Unfinished)) {
          return new Answer(answer, verdict, false);
        }
      } else if (device.isClosing()) {
        return Answer.ofGoneDevice();
      }
    }
    byte[] answer = withoutEcho(come, request);
    return new Answer(answer == null ? new byte[0] : answer, verdict, false);
  }

  /** Throws away what came before the question; false when the device is gone. */
  private boolean emptied(SerialPort port) {
    byte[] stale = new byte[BUFFER];
    int waiting = port.bytesAvailable();
    while (waiting > 0) {
      if (port.readBytes(stale, Math.min(waiting, stale.length)) < 0) {
        return false;
      }
      waiting = port.bytesAvailable();
    }
    return waiting == 0;
  }

  private static byte[] joined(byte[] before, byte[] next, int count) {
    byte[] all = Arrays.copyOf(before, before.length + count);
    System.arraycopy(next, 0, all, before.length, count);
    return all;
  }

  /** The answer behind our own bytes; null while what has come may yet turn out to be these. */
  private static byte @Nullable [] withoutEcho(byte[] come, byte[] request) {
    int same = Math.min(come.length, request.length);
    if (!Arrays.equals(come, 0, same, request, 0, same)) {
      return come;
    }
    return come.length < request.length
        ? null
        : Arrays.copyOfRange(come, request.length, come.length);
  }

  /** Stops asking and closes the device. */
  @Override
  public void close() {
    device.close();
    guard.shutdownNow();
  }
}
