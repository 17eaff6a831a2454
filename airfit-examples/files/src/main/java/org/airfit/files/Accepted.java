package org.airfit.files;

/** What is accepted in a field, in the words of a complaint. */
final class Accepted {

  static final String GAUGE = "a gauge pressure such as \"90 psig\" or \"6.2 bar(g)\"";
  static final String LENGTH = "a length such as \"12.7 mm\" or \"1/2 in\"";
  static final String END = "a text such as \"3/8 NPT male\", \"G 1/2 female\" or \"3/8 in barb\"";

  private Accepted() {}
}
