package coatwright.sensors;

import coatwright.sensors.modbus.ModbusAnswer;
import coatwright.sensors.modbus.ModbusRequest;
import coatwright.sensors.modbus.ModbusRtu;
import coatwright.sensors.serial.Poll;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Asks one station of a line for its registers, and takes the answers to its source. */
final class ModbusPoll implements Poll {
  private static final int EXCEPTION = 0x80;
  private static final int CODE_AT = 2;

  /** Illegal function, address or value: asking the same again brings the same. */
  private static final int LAST_OF_OUR_FAULTS = 3;

  private final Source source;
  private final ModbusRequest request;
  private final String device;
  private final Inbox inbox;
  private final Clock clock;
  private final Runnable onChange;
  private volatile @Nullable String trouble;

  ModbusPoll(
      Source source,
      ModbusRequest request,
      String device,
      Inbox inbox,
      Clock clock,
      Runnable onChange) {
    this.source = source;
    this.request = request;
    this.device = device;
    this.inbox = inbox;
    this.clock = clock;
    this.onChange = onChange;
  }

  /** Why the station does not answer, and what to do. */
  Optional<String> trouble() {
    return Optional.ofNullable(trouble);
  }

  @Override
  public Duration every() {
    return source.mapping().every();
  }

  @Override
  public byte[] request() {
    return request.frame();
  }

  @Override
  public Verdict judge(byte[] answer) {
    ModbusAnswer read = ModbusRtu.answer(answer, request);
    if (read instanceof ModbusAnswer.Refusal refusal) {
      return refusal.incomplete()
          ? new Verdict.Unfinished(refusal.reason())
          : new Verdict.Wrong(refusal.reason(), !isOurFault(answer));
    }
    return new Verdict.Right();
  }

  private static boolean isOurFault(byte[] answer) {
    return answer.length > CODE_AT
        && (answer[1] & EXCEPTION) != 0
        && answer[CODE_AT] <= LAST_OF_OUR_FAULTS;
  }

  @Override
  public void heard(byte[] answer) {
    say(null);
    read(answer);
  }

  @Override
  public void unheard(byte[] answer, String why) {
    if (answer.length == 0) {
      say(
          "station %d on %s does not answer; look at its power, its address, the two wires (they may be crossed) and the speed"
              .formatted(request.address(), device));
    } else {
      say("station %d on %s: %s".formatted(request.address(), device, why));
      read(answer);
    }
  }

  private void read(byte[] answer) {
    RawReading raw = RawReading.of(device, answer, clock.instant(), RawReading.Way.LINE);
    inbox.put(() -> source.read(raw));
  }

  private void say(@Nullable String sentence) {
    if (!java.util.Objects.equals(trouble, sentence)) {
      trouble = sentence;
      onChange.run();
    }
  }
}
