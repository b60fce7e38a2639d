package coatwright.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.OptionalDouble;

/**
 * Writes numbers to twelve significant digits: more than any of them is worth, and without the last
 * bit's noise ({@code 55.2}, not {@code 55.20000000000001}).
 */
final class TwelveDigits extends SimpleModule {
  private static final long serialVersionUID = 1L;
  private static final MathContext DIGITS = new MathContext(12);

  /** The longest text of a double that cannot have more digits than that: sign and point beside. */
  private static final int SHORT = 12;

  TwelveDigits() {
    super("twelve digits");
    addSerializer(Double.class, new OfDouble());
    addSerializer(double.class, new OfDouble());
    addSerializer(OptionalDouble.class, new OfOptional());
  }

  /** The nearest double of twelve digits; what is not finite stays as it is. */
  static double round(double value) {
    if (!Double.isFinite(value) || Double.toString(value).length() <= SHORT) {
      return value;
    }
    return BigDecimal.valueOf(value).round(DIGITS).doubleValue();
  }

  private static final class OfDouble extends StdSerializer<Double> {
    private static final long serialVersionUID = 1L;

    OfDouble() {
      super(Double.class);
    }

    @Override
    public void serialize(Double value, JsonGenerator to, SerializerProvider provider)
        throws IOException {
      to.writeNumber(round(value));
    }
  }

  private static final class OfOptional extends StdSerializer<OptionalDouble> {
    private static final long serialVersionUID = 1L;

    OfOptional() {
      super(OptionalDouble.class);
    }

    @Override
    public boolean isEmpty(SerializerProvider provider, OptionalDouble value) {
      return value.isEmpty();
    }

    @Override
    public void serialize(OptionalDouble value, JsonGenerator to, SerializerProvider provider)
        throws IOException {
      if (value.isPresent()) {
        to.writeNumber(round(value.getAsDouble()));
      } else {
        to.writeNull();
      }
    }
  }
}
