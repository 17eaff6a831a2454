package org.airfit.browser.lessons;

import java.util.Collection;
import org.teavm.extension.spi.resources.ResourcesPolicy;

/** The tables that the figures and exercises read; read by the compiler. */
public final class Tables implements ResourcesPolicy {

  @Override
  public String[] supplyResources(Collection<? extends String> classes) {
    return new String[] {
      "org/airfit/joint/hose_bores.csv",
      "org/airfit/joint/tube_threads.csv",
      "org/airfit/lesson/exercises.txt",
      "org/airfit/safety/rules.csv",
      "org/airfit/safety/rules_more.csv",
      "org/airfit/safety/rules_practice.csv"
    };
  }
}
