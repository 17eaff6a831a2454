package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpareStockTest {

  /** One digit of the table more than its rounding. */
  private static final double DIGIT = 1.0e-4;

  /**
   * Chances that a Poisson number of this mean is at most so large, as printed to four digits in a table of the
   * cumulative Poisson distribution (read in an excerpt of a stored page, scribd 96601458). A risk that this chance
   * just covers needs no more pieces, one that it just misses needs one more.
   */
  @ParameterizedTest(name = "mean {0}, {1} pieces: {2}")
  @CsvSource({
    "0.5, 0, 0.6065",
    "0.5, 1, 0.9098",
    "0.5, 2, 0.9856",
    "1.0, 1, 0.7358",
    "1.0, 2, 0.9197",
    "1.0, 3, 0.9810",
    "2.0, 2, 0.6767",
    "2.0, 4, 0.9473",
    "2.0, 5, 0.9834",
    "3.0, 5, 0.9161",
    "3.0, 7, 0.9881",
    "4.0, 7, 0.9489",
    "4.0, 9, 0.9919",
    "5.0, 8, 0.9319",
    "5.0, 10, 0.9863",
    "5.0, 11, 0.9945"
  })
  void the_stock_agrees_with_a_printed_table(double mean, int pieces, double chance) {
    assertThat(SpareStock.least(mean, 1.0 - chance + DIGIT)).isEqualTo(pieces);
    assertThat(SpareStock.least(mean, 1.0 - chance - DIGIT)).isEqualTo(pieces + 1);
  }

  @Test
  void nothing_that_wears_needs_no_spare_and_bounds_are_kept() {
    assertThat(SpareStock.least(0.0, 0.05)).isZero();
    assertThat(SpareStock.least(500.0, 0.05)).isBetween(530, 545); // 500 + 1.645 √500 = 537
    for (double mean : new double[] {-0.1, 500.1, Double.NaN}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> SpareStock.least(mean, 0.05))
          .withMessageContaining("[0, 500]");
    }
    for (double risk : new double[] {0.0, 0.51, Double.NaN}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> SpareStock.least(1.0, risk))
          .withMessageContaining("[0.001, 0.5]");
    }
  }
}
