package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.airfit.measure.Instrument;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;

/** What to read next is told whatever was read, by which caliper, and of which plugs. */
class NextReadingsOfManyPlugsTest {

  @Test
  void a_chance_that_is_all_but_certain_is_never_told_as_more_than_that() {
    Random random = new Random(11);
    int certain = 0;
    for (int i = 0; i < 1500; i++) {
      PlugProfile plug = DemoProfiles.birds().profiles().get(random.nextInt(4));
      Instrument caliper = List.of(Instrument.values()).get(random.nextInt(3));
      List<PlugReading> readings = new ArrayList<>();
      for (Dimension dimension : Dimension.values()) {
        if (random.nextInt(3) > 0) {
          double mm = plug.spread(dimension).orElseThrow().nominal().millimetres()
              + 0.05 * random.nextGaussian();
          readings.add(PlugReading.of(dimension, caliper, Length.ofMillimetres(mm)));
        }
      }
      Identifier identifier = Identifier.of(DemoProfiles.birds())
          .withInstrument(caliper)
          .withWearAllowance(Identifier.usualWear());
      List<NextReading> next = (random.nextBoolean() ? identifier : identifier.withoutNearCopies())
          .identify(readings)
          .nextReadings();
      assertThat(next).hasSize(Dimension.values().length - readings.size());
      assertThat(next).allMatch(each -> each.chanceOfSettling() <= 1.0);
      certain += next.stream().anyMatch(each -> each.chanceOfSettling() > 0.9999) ? 1 : 0;
    }
    assertThat(certain).isGreaterThan(100);
  }
}
