package coatwright.sensors.modbus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coatwright.quantity.RefusedInput;
import coatwright.sensors.modbus.ModbusAnswer.Refusal;
import coatwright.sensors.modbus.ModbusAnswer.Registers;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ModbusRtuTest {
  private static final ModbusRequest ASKED = new ModbusRequest(1, 4, 1, 2);
  private static final String ECHO = "01 04 00 01 00 02 20 0b ";
  private static final String ANSWER = "01 04 04 00 d7 01 ce cb b8";

  private static byte[] bytes(String hex) {
    return HexFormat.of().parseHex(hex.replace(" ", ""));
  }

  private static ModbusAnswer heard(String hex) {
    return ModbusRtu.answer(bytes(hex), ASKED);
  }

  private static String refusal(String hex) {
    assertThat(heard(hex)).isInstanceOf(Refusal.class);
    return ((Refusal) heard(hex)).reason();
  }

  private static byte[] withChecksum(int... head) {
    byte[] frame = new byte[head.length + 2];
    for (int i = 0; i < head.length; i++) {
      frame[i] = (byte) head[i];
    }
    int crc = ModbusRtu.crc16(frame, 0, head.length);
    frame[head.length] = (byte) crc;
    frame[head.length + 1] = (byte) (crc >> 8);
    return frame;
  }

  /** The check value of CRC-16/MODBUS for the nine digits, as catalogues of CRCs print it. */
  @Test
  void reckonsTheChecksumOfTheDigitsOneToNine() {
    byte[] digits = "123456789".getBytes(StandardCharsets.US_ASCII);

    assertThat(ModbusRtu.crc16(digits, 0, digits.length)).isEqualTo(0x4B37);
  }

  /** MODBUS over Serial Line Specification V1.02, appendix B: frame 02 07 has checksum 41 12. */
  @Test
  void reckonsTheChecksumOfTheSpecificationsExample() {
    assertThat(ModbusRtu.crc16(new byte[] {2, 7}, 0, 2)).isEqualTo(0x1241);
  }

  @Test
  void asksForRegisters() {
    assertThat(ModbusRtu.request(1, 4, 1, 2)).isEqualTo(bytes(ECHO));
    assertThat(ModbusRtu.request(1, 3, 0, 4)).isEqualTo(bytes("01 03 00 00 00 04 44 09"));
    assertThat(ModbusRtu.requestIn(bytes(ECHO))).contains(ASKED);
    assertThat(ModbusRtu.requestIn(bytes("01 04 00 01 00 02 20 0c"))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0,4,1,2", "248,4,1,2", "1,5,1,2", "1,4,-1,2", "1,4,1,0", "1,4,1,126", "1,4,65535,2"})
  void refusesAQuestionOutsideTheProtocol(int address, int function, int start, int count) {
    assertThatThrownBy(() -> ModbusRtu.request(address, function, start, count))
        .isInstanceOf(RefusedInput.class);
  }

  @Test
  void readsRegisters() {
    assertThat(heard(ANSWER))
        .isEqualTo(new Registers(java.util.List.of(0x00D7, 0x01CE), false, false));
  }

  @Test
  void takesOffItsOwnRequestWhereTheAdapterEchoes() {
    assertThat(heard(ECHO + ANSWER))
        .isEqualTo(new Registers(java.util.List.of(0x00D7, 0x01CE), true, false));
    assertThat(heard("00 " + ECHO + ANSWER))
        .isEqualTo(new Registers(java.util.List.of(0x00D7, 0x01CE), true, true));
  }

  @ParameterizedTest
  @CsvSource({"00", "ff 00", "01", "01 04", "01 04 04", "7f 55 aa 01 04 04 00"})
  void findsTheFrameBehindNoise(String noise) {
    assertThat(heard(noise + ANSWER))
        .isEqualTo(new Registers(java.util.List.of(0x00D7, 0x01CE), false, true));
  }

  @Test
  void saysThatMoreMayCome() {
    for (int length = 0; length < 9; length++) {
      byte[] begun = Arrays.copyOf(bytes(ANSWER), length);
      assertThat(ModbusRtu.answer(begun, ASKED))
          .isInstanceOfSatisfying(
              Refusal.class, refusal -> assertThat(refusal.incomplete()).isTrue());
    }
    assertThat(refusal("01 04 04 00 d7 01")).contains("short frame: 6 of 9 bytes");
    assertThat(refusal(ECHO)).contains("only our own request came back");
  }

  @Test
  void refusesABrokenChecksum() {
    assertThat(refusal("01 04 04 00 d7 01 ce cb b9")).contains("checksum does not hold");
    assertThat(refusal("01 04 04 00 d6 01 ce cb b8")).contains("checksum does not hold");
  }

  @Test
  void namesASoundAnswerToAnotherRequest() {
    String otherUnit = HexFormat.of().formatHex(withChecksum(2, 4, 4, 0, 0xD7, 1, 0xCE));
    String otherFunction = HexFormat.of().formatHex(withChecksum(1, 3, 4, 0, 0xD7, 1, 0xCE));
    String fewer = HexFormat.of().formatHex(withChecksum(1, 4, 2, 0, 0xD7));

    assertThat(refusal(otherUnit)).contains("answer from unit 2 where unit 1 was asked");
    assertThat(refusal(otherFunction)).contains("answer to function 3 where function 4 was asked");
    assertThat(refusal(fewer)).contains("answer of 2 bytes where registers 1 to 2 make 4");
  }

  @ParameterizedTest
  @CsvSource({
    "1, exception 01 illegal function: unit 1 does not know function 4; try function 3",
    "2, exception 02 illegal data address: unit 1 has no registers 1 to 2",
    "4, exception 04 device failure",
    "6, exception 06 device busy",
    "9, exception 09"
  })
  void saysWhatAnExceptionMeansAndWhatToDo(int code, String said) {
    byte[] frame = withChecksum(1, 0x84, code);

    assertThat(ModbusRtu.answer(frame, ASKED))
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal -> {
              assertThat(refusal.incomplete()).isFalse();
              assertThat(refusal.reason()).startsWith(said.substring(0, 12)).contains(said);
            });
  }

  @Property(tries = 5000, seed = "20261125")
  void neverThrowsAndNeverReadsRegistersThatAreNotThere(@ForAll @Size(max = 300) byte[] noise) {
    ModbusAnswer answer = ModbusRtu.answer(noise, ASKED);

    if (answer instanceof Registers registers) {
      assertThat(HexFormat.of().formatHex(noise))
          .contains("010404%04x%04x".formatted(registers.words().get(0), registers.words().get(1)));
    } else {
      assertThat(((Refusal) answer).reason()).isNotBlank();
    }
  }

  @Property(tries = 1000, seed = "20261125")
  void readsWhatItAskedForWhateverStandsBefore(
      @ForAll @Size(max = 40) byte[] noise,
      @ForAll @IntRange(max = 65_535) int first,
      @ForAll @IntRange(max = 65_535) int second) {
    byte[] frame = withChecksum(1, 4, 4, first >> 8, first & 0xFF, second >> 8, second & 0xFF);
    byte[] line = Arrays.copyOf(noise, noise.length + frame.length);
    System.arraycopy(frame, 0, line, noise.length, frame.length);

    assertThat(ModbusRtu.answer(line, ASKED))
        .isEqualTo(new Registers(java.util.List.of(first, second), false, noise.length > 0));
  }
}
