package org.airfit.browser.runtime;

/** What stands for the name of a class where nobody reads it, so that the page need not carry the names of all. */
final class Names {

  private Names() {}

  static String of(Class<?> any) {
    return any.isInterface() ? "an interface" : "an object";
  }
}
