package org.airfit.browser.runtime;

import org.teavm.extension.spi.substitution.SubstitutionPolicy;
import org.teavm.extension.spi.substitution.SubstitutionSink;

/** Puts the regular expressions of JavaScript in the place of the class library's; read by the compiler. */
public final class Substitutes implements SubstitutionPolicy {

  /** Made by the compiler. */
  public Substitutes() {}

  @Override
  public void contribute(SubstitutionSink sink) {
    sink.selectClasses(name ->
            name.equals("java.util.regex.Pattern") || name.equals("java.util.regex.Matcher"))
        .replacePackage("java.util.regex", "org.airfit.browser.runtime.regex");
  }
}
