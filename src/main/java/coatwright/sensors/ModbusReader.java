package coatwright.sensors;

import coatwright.quantity.RefusedInput;
import coatwright.sensors.modbus.ModbusRequest;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Reads which registers a source asks for. Makers count registers from 0, from 1, or from 30001 and
 * 40001, and sheets mix them; so the base is asked for and never guessed.
 */
final class ModbusReader {
  private static final String ASK_BASE =
      "say how the maker's sheet counts registers: 0 (as the protocol does), 1, 30001 (input "
          + "registers) or 40001 (holding registers)";
  private static final Map<Integer, Integer> FUNCTION_OF = Map.of(30001, 4, 40001, 3);

  private final Fields fields;
  private final boolean live;

  ModbusReader(Fields fields, boolean live) {
    this.fields = fields;
    this.live = live;
  }

  Optional<ModbusRules> read() {
    OptionalInt address = address();
    OptionalInt function =
        whole("function", "write 3 for holding registers or 4 for input registers");
    OptionalInt base = base(function);
    OptionalInt start = whole("start", "write the first register to read");
    OptionalInt count = whole("count", "write how many registers to read, 1 to 125");
    if (function.isEmpty() || base.isEmpty() || start.isEmpty() || count.isEmpty()) {
      return Optional.empty();
    }
    if (start.getAsInt() < base.getAsInt()) {
      fields.fault(
          "start",
          "is below its base " + base.getAsInt(),
          "write it as the maker's sheet does, or set another base");
      return Optional.empty();
    }
    if (base.getAsInt() == 0 && start.getAsInt() > 30_000) {
      fields.fault(
          "start",
          "looks like a number of the maker's sheet, not of the protocol",
          "set base: 30001 or 40001, or write it counted from 0");
      return Optional.empty();
    }
    return checked(
        address, function.getAsInt(), start.getAsInt() - base.getAsInt(), count.getAsInt());
  }

  private Optional<ModbusRules> checked(OptionalInt address, int function, int start, int count) {
    try {
      // The request checks itself; a mapping for recordings names no unit, so one stands in.
      ModbusRequest request = new ModbusRequest(address.orElse(1), function, start, count);
      return Optional.of(
          new ModbusRules(address, request.function(), request.start(), request.count()));
    } catch (RefusedInput refused) {
      refused
          .faults()
          .forEach(
              fault ->
                  fields.fault(
                      fault.input().replaceFirst(" .*$", ""), fault.rule(), fault.remedy()));
      return Optional.empty();
    }
  }

  private OptionalInt address() {
    if (!live && !fields.has("address")) {
      return OptionalInt.empty();
    }
    return whole("address", "write the unit's address, 1 to 247, as its switches or sheet say");
  }

  private OptionalInt base(OptionalInt function) {
    if (!live && !fields.has("base")) {
      return OptionalInt.of(0);
    }
    OptionalInt base = whole("base", ASK_BASE);
    if (base.isEmpty()) {
      return base;
    }
    int value = base.getAsInt();
    Integer fits = FUNCTION_OF.get(value);
    if (value != 0 && value != 1 && fits == null) {
      fields.fault("base", "is not a way of counting registers", ASK_BASE);
      return OptionalInt.empty();
    }
    if (fits != null && function.isPresent() && function.getAsInt() != fits) {
      fields.fault(
          "base",
          "belongs to function " + fits,
          "set function: " + fits + ", or count from 0 or 1");
      return OptionalInt.empty();
    }
    return base;
  }

  private OptionalInt whole(String word, String remedy) {
    if (!fields.has(word)) {
      fields.fault(word, "is missing", remedy);
      return OptionalInt.empty();
    }
    Optional<Setting> value = fields.raw(word);
    if (value.orElse(null) instanceof Setting.Num number) {
      try {
        return OptionalInt.of(number.value().intValueExact());
      } catch (ArithmeticException e) {
        fields.fault(word, "is not a whole number", remedy);
        return OptionalInt.empty();
      }
    }
    fields.fault(word, "is not a whole number", remedy);
    return OptionalInt.empty();
  }
}
