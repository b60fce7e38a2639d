package coatwright.sensors;

import java.util.Arrays;
import java.util.Optional;

/** Finds the constant whose word was written. */
final class Words {
  private Words() {}

  static <E extends Enum<E>> Optional<E> among(E[] known, String word) {
    return Arrays.stream(known).filter(each -> each.toString().equals(word)).findFirst();
  }

  static <E extends Enum<E>> String remedy(String word, E[] known) {
    return Nearest.remedy(word, Arrays.stream(known).map(Enum::toString).toList());
  }
}
