package coatwright.sensors;

import coatwright.sensors.modbus.ModbusRequest;

/** One way a payload can be written. */
interface PayloadForm {
  /** Takes the payload apart; never throws for what a sender may send. */
  Opened open(PayloadText payload);

  /**
   * Looks at a line said while the source settles, from which only a header may be learned.
   *
   * @param maybeCut its beginning may be missing
   */
  default void overhear(PayloadText payload, boolean maybeCut) {}

  /** Notes what was asked, where a recording tells it and not the settings. */
  default void asked(ModbusRequest request) {}

  static PayloadForm of(PayloadRules rules) {
    return switch (rules.kind()) {
      case NUMBER -> new NumberForm();
      case JSON -> new JsonForm(rules.each());
      case PATTERN -> new PatternForm(rules.form().pattern().orElseThrow());
      case COLUMNS -> new ColumnsForm(rules);
      case SENML -> new SenmlForm(rules.readings());
      case HEX -> new HexForm(rules);
      case MODBUS_RTU -> new ModbusForm(rules);
      case WORD -> new WordForm(rules.form().presence().orElseThrow());
    };
  }
}
