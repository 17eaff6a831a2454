package org.airfit.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PrintedTest {

  @Test
  void a_number_is_printed_as_the_platform_prints_it() {
    Random random = new Random(20261129);
    for (int i = 0; i < 200_000; i++) {
      int decimals = random.nextInt(7);
      double size = Math.pow(10.0, random.nextInt(16) - 6);
      double value = size * (2.0 * random.nextDouble() - 1.0);
      double told = i % 3 == 0 ? Math.rint(value * 8.0) / 8.0 : value;
      assertThat(Printed.fixed(told, decimals))
          .as("%s with %d decimals", told, decimals)
          .isEqualTo(String.format(Locale.ROOT, "%." + decimals + "f", told));
    }
  }

  @Test
  void a_text_takes_its_values_in_order() {
    assertThat(Printed.text("%s: %.1f %% of %d, %+.2f and %+.2f", "leak", 24.04, 7, 0.5, -0.25))
        .isEqualTo("leak: 24.0 % of 7, +0.50 and -0.25");
    assertThat(Printed.text("%.1f", Double.NaN)).isEqualTo("NaN");
    assertThat(Printed.text("%.1f", -0.0)).isEqualTo("-0.0");
  }

  @Test
  void what_it_cannot_print_is_refused() {
    assertThatIllegalArgumentException().isThrownBy(() -> Printed.text("%x", 1));
    assertThatIllegalArgumentException().isThrownBy(() -> Printed.text("%.2f", "one"));
    assertThatIllegalArgumentException().isThrownBy(() -> Printed.text("%s %s", "one"));
  }
}
