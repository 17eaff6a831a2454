package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class SumTest {

  @Test
  void it_is_that_of_a_stream_to_the_last_bit() {
    SplittableRandom random = new SplittableRandom(7);
    int unlikeThePlainSum = 0;
    for (int i = 0; i < 10_000; i++) {
      double[] numbers = random
          .doubles(random.nextInt(12))
          .map(number -> (number - 0.3) * Math.pow(10.0, random.nextInt(9)))
          .toArray();
      double sum = Sum.of(numbers.length, at -> numbers[at]);
      assertThat(Double.doubleToRawLongBits(sum))
          .isEqualTo(Double.doubleToRawLongBits(DoubleStream.of(numbers).sum()));
      double plain = 0.0;
      for (double number : numbers) {
        plain += number;
      }
      unlikeThePlainSum += plain == sum ? 0 : 1;
    }
    assertThat(unlikeThePlainSum).isGreaterThan(1000);
  }

  @Test
  void of_nothing_it_is_none() {
    assertThat(Sum.of(0, at -> Double.NaN)).isZero();
  }
}
