package org.airfit.browser.runtime;

import java.util.Collection;
import org.teavm.extension.spi.resources.ResourcesPolicy;

/** The tables of the core that every page carries; read by the compiler. */
public final class Tables implements ResourcesPolicy {

  @Override
  public String[] supplyResources(Collection<? extends String> classes) {
    return new String[] {
      "org/airfit/joint/hose_bores.csv",
      "org/airfit/joint/port_passages.csv",
      "org/airfit/joint/tube_threads.csv",
      "org/airfit/joint/tubes.csv",
      "org/airfit/line/fittings.csv",
      "org/airfit/plug/size_class_envelope.csv",
      "org/airfit/safety/rules.csv",
      "org/airfit/safety/rules_more.csv",
      "org/airfit/safety/rules_practice.csv"
    };
  }
}
