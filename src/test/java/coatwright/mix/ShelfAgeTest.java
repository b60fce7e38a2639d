package coatwright.mix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import coatwright.quantity.OutOfRange;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;

class ShelfAgeTest {
  @Test
  void theTestFallsDueMonthsAfterTheJarWasOpened() {
    ShelfAge age = new ShelfAge(LocalDate.of(2025, 8, 31), 6);
    assertThat(age.testDueOn()).isEqualTo(LocalDate.of(2026, 2, 28));
    assertThat(age.isDueOn(LocalDate.of(2026, 2, 27))).isFalse();
    assertThat(age.isDueOn(LocalDate.of(2026, 2, 28))).isTrue();
    assertThat(age.monthsOn(LocalDate.of(2025, 10, 30))).isEqualTo(1);
    assertThat(age.monthsOn(LocalDate.of(2025, 8, 1))).isZero();
  }

  @Test
  void aFinishWithoutAnAgeIsRefused() {
    assertThatThrownBy(() -> new ShelfAge(LocalDate.of(2026, 1, 1), 0))
        .isInstanceOf(OutOfRange.class);
  }
}
