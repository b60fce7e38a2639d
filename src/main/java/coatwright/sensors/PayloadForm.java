package coatwright.sensors;

/** One way a payload can be written. */
interface PayloadForm {
  /** Takes the payload apart; never throws for what a sender may send. */
  Opened open(PayloadText payload);

  /** Looks at a line said while the source settles, from which only a header may be learned. */
  default void overhear(PayloadText payload) {}

  static PayloadForm of(PayloadRules rules) {
    return switch (rules.kind()) {
      case NUMBER -> new NumberForm();
      case JSON -> new JsonForm(rules.each());
      case PATTERN -> new PatternForm(rules.pattern().orElseThrow());
      case COLUMNS -> new ColumnsForm(rules);
    };
  }
}
