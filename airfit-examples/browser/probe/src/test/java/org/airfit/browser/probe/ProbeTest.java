package org.airfit.browser.probe;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** Leaves the JVM's values in target/values.txt, with which a script compares those of the JavaScript. */
class ProbeTest {

  @Test
  void more_than_a_hundred_thousand_values_are_compared() throws Exception {
    String values = Probe.values();
    assertThat(values.lines()).hasSizeGreaterThan(100_000);
    Files.writeString(Path.of("target", "values.txt"), values);
  }
}
