package org.airfit.browser.lessons;

import java.util.Collection;
import org.teavm.extension.spi.resources.ResourcesPolicy;

/** The tables that the figures and exercises read; read by the compiler. */
public final class Tables implements ResourcesPolicy {

  @Override
  public String[] supplyResources(Collection<? extends String> classes) {
    return new String[] {"org/airfit/lesson/exercises.txt"};
  }
}
