package coatwright.sensors;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A SenML pack in JSON. Base fields hold for the records that follow; a record's name is base name
 * and name together, its time base time and time, its value base value and value. Records of one
 * device and one time are read together.
 *
 * <p>Source: RFC 8428, sections 4 (base fields, resolving, names ending in "_"), 5 and 12.1
 * (units); RFC 8798 (secondary units).
 */
final class SenmlForm implements PayloadForm {
  /** Place of the time of a record; a blank cannot stand in a record's name. */
  static final String TIME = "the time";

  private static final String DEVICE = "the device";
  private static final String UNIT = "unit of ";

  /** In a record's unit map: the unit the settings give, for packs that name none. */
  static final String UNNAMED = "";

  private static final int NEWEST_VERSION = 10;
  private static final int MOST_RECORDS = 1024;
  private static final int MOST_EXPONENT = 400;
  private static final Cell NO_UNIT =
      new Cell.Unusable("neither the pack nor the mapping names its unit; add unit to the record");
  private static final String NAME = "[A-Za-z0-9][A-Za-z0-9:./_-]*";

  private static final Map<String, Unit> TEMPERATURE = Map.of("Cel", Unit.CEL, "K", Unit.KELVIN);
  private static final Map<String, Unit> SHARE =
      Map.of(
          "%RH",
          Unit.PERCENT,
          "%EL",
          Unit.PERCENT,
          "%",
          Unit.PERCENT,
          "/100",
          Unit.PERCENT,
          "/",
          Unit.ONE);
  private static final Map<String, Unit> VOLTAGE = Map.of("V", Unit.VOLT, "mV", Unit.MILLIVOLT);

  /** What each field must be, where it stands. */
  private static final Set<String> TEXTS = Set.of("bn", "bu", "n", "u", "vs", "vd");

  private static final Set<String> NUMBERS = Set.of("bt", "bv", "bs", "bver", "v", "s", "t", "ut");

  private final List<String> names;
  private final Set<String> withUnit;

  SenmlForm(List<ReadingRule> readings) {
    this.names = readings.stream().map(ReadingRule::at).distinct().toList();
    this.withUnit =
        readings.stream()
            .filter(rule -> rule.unitMap().containsKey(UNNAMED))
            .map(ReadingRule::at)
            .collect(Collectors.toSet());
  }

  /** Place of the unit text of a record. */
  static String unitOf(String name) {
    return UNIT + name;
  }

  /** The registry's unit codes a quantity may come in, and what they are here. */
  static Map<String, Unit> unitsOf(Quantity quantity) {
    return switch (quantity) {
      case AIR_TEMPERATURE, SURFACE_TEMPERATURE -> TEMPERATURE;
      case RELATIVE_HUMIDITY, BATTERY_LEVEL -> SHARE;
      case BATTERY_VOLTAGE -> VOLTAGE;
    };
  }

  /** What the base fields have come to. */
  private static final class Base {
    private String name = "";
    private Optional<String> unit = Optional.empty();
    private BigDecimal time = BigDecimal.ZERO;
    private Optional<BigDecimal> value = Optional.empty();

    void take(JsonNode node) {
      name = node.path("bn").asText(name);
      unit = node.has("bu") ? Optional.of(node.path("bu").asText()) : unit;
      time = node.has("bt") ? node.path("bt").decimalValue() : time;
      value = node.has("bv") ? Optional.of(node.path("bv").decimalValue()) : value;
    }
  }

  private record Key(String device, BigDecimal time) {}

  @Override
  public Opened open(PayloadText payload) {
    JsonForm.Read read = JsonForm.read(payload);
    if (read.root().isEmpty()) {
      return new Opened.No(read.refusal());
    }
    JsonNode pack = read.root().get();
    if (!pack.isArray()) {
      return new Opened.No("not a SenML pack: it must be a list of records");
    }
    if (pack.size() > MOST_RECORDS) {
      return new Opened.No("more than %d records in a pack".formatted(MOST_RECORDS));
    }
    Base base = new Base();
    Map<Key, Map<String, Cell>> groups = new LinkedHashMap<>();
    for (JsonNode node : pack) {
      Optional<String> fault = fault(node);
      if (fault.isPresent()) {
        return new Opened.No("not a SenML pack: " + fault.get());
      }
      base.take(node);
      String whole = base.name + node.path("n").asText("");
      if (hasValue(node, base)) {
        if (!whole.matches(NAME)) {
          return new Opened.No(
              "not a SenML pack: \"%s\" is no name".formatted(Text.shortened(whole)));
        }
        take(node, whole, base, groups);
      }
    }
    List<Cells> parts = new ArrayList<>();
    groups.values().forEach(cells -> parts.add(place -> cells.getOrDefault(place, Cell.ABSENT)));
    return new Opened.Parts(parts, JsonForm.flags(payload), "");
  }

  private static boolean hasValue(JsonNode node, Base base) {
    return node.has("v")
        || node.has("vs")
        || node.has("vb")
        || node.has("vd")
        || node.has("s")
        || (node.has("n") && base.value.isPresent());
  }

  private static Optional<String> fault(JsonNode node) {
    if (!node.isObject()) {
      return Optional.of("a record is no object");
    }
    List<String> faults = new ArrayList<>();
    node.properties()
        .forEach(
            field -> {
              String name = field.getKey();
              JsonNode value = field.getValue();
              if (TEXTS.contains(name) && !value.isTextual()) {
                faults.add(name + " is no text");
              } else if (NUMBERS.contains(name) && !value.isNumber() && !name.equals("v")) {
                faults.add(name + " is no number");
              } else if (value.isNumber() && isBoundless(value.decimalValue())) {
                faults.add(name + " is not finite");
              } else if (name.equals("vb") && !value.isBoolean()) {
                faults.add("vb is neither true nor false");
              } else if (name.endsWith("_")) {
                faults.add(
                    "\"%s\" must be understood by its reader, and is not"
                        .formatted(Text.shortened(name)));
              }
            });
    if (node.path("bver").asInt(NEWEST_VERSION) > NEWEST_VERSION) {
      faults.add("its version %s is not known".formatted(node.path("bver").asText()));
    }
    return faults.stream().findFirst();
  }

  private void take(JsonNode node, String whole, Base base, Map<Key, Map<String, Cell>> groups) {
    Optional<String> name = names.stream().filter(each -> isNamed(whole, node, each)).findFirst();
    if (name.isEmpty()) {
      return;
    }
    String device = device(whole, name.get());
    BigDecimal time = base.time.add(decimal(node.path("t"))).stripTrailingZeros();
    Map<String, Cell> cells = groups.computeIfAbsent(new Key(device, time), key -> new HashMap<>());
    if (!device.isEmpty()) {
      cells.put(DEVICE, new Cell.Words(device));
    }
    if (time.signum() != 0) {
      cells.put(TIME, new Cell.Words(time.toPlainString()));
    }
    Optional<String> unit = node.has("u") ? Optional.of(node.path("u").asText()) : base.unit;
    cells.put(unitOf(name.get()), new Cell.Words(unit.orElse(UNNAMED)));
    boolean known = unit.isPresent() || withUnit.contains(name.get());
    Cell value = known ? value(node, base) : NO_UNIT;
    Cell before = cells.put(name.get(), value);
    if (before != null && !before.equals(value)) {
      cells.put(name.get(), new Cell.Unusable("stands twice in the pack, for one time"));
    }
  }

  /** A number too large or too fine for any sensor; adding to it would fill the memory. */
  private static boolean isBoundless(BigDecimal number) {
    return Math.abs((long) number.precision() - number.scale()) > MOST_EXPONENT
        || Math.abs((long) number.scale()) > MOST_EXPONENT;
  }

  private static BigDecimal decimal(JsonNode node) {
    return node.isNumber() ? node.decimalValue() : BigDecimal.ZERO;
  }

  private static Cell value(JsonNode node, Base base) {
    JsonNode own = node.path("v");
    if (own.isMissingNode() && node.has("vs")) {
      return new Cell.Unusable("text where a number is due");
    }
    if (own.isMissingNode() && node.has("vb")) {
      return new Cell.Other("boolean " + node.path("vb").asText());
    }
    if (own.isMissingNode() && node.has("vd")) {
      return new Cell.Unusable("data where a number is due");
    }
    if (own.isMissingNode() && node.has("s")) {
      return new Cell.Unusable("a sum over time is no reading");
    }
    if (!own.isMissingNode() && !own.isNumber()) {
      return JsonForm.cell(own) instanceof Cell.Words
          ? new Cell.Unusable("text where a number is due")
          : JsonForm.cell(own);
    }
    BigDecimal sum = decimal(own).add(base.value.orElse(BigDecimal.ZERO));
    return new Cell.Figure(sum.doubleValue(), sum.toString());
  }

  /** The record's own name, its whole name, or the end of it behind a separator. */
  private static boolean isNamed(String whole, JsonNode node, String name) {
    return whole.equals(name)
        || node.path("n").asText("").equals(name)
        || whole.endsWith("/" + name)
        || whole.endsWith(":" + name);
  }

  private static String device(String whole, String name) {
    String rest = whole.endsWith(name) ? whole.substring(0, whole.length() - name.length()) : "";
    int end = rest.length();
    while (end > 0 && "/:._-".indexOf(rest.charAt(end - 1)) >= 0) {
      end--;
    }
    return rest.substring(0, end);
  }

  /** Where the device's name stands, for a source that does not say otherwise. */
  static String deviceAt() {
    return DEVICE;
  }
}
