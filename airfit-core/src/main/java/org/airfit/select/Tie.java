package org.airfit.select;

/**
 * Which profile couplings have that must all be of one profile.
 *
 * @param coupling the first of these couplings, by name; blank where a plug is not tied
 * @param profile the profile
 */
record Tie(String coupling, String profile) {

  static final Tie NONE = new Tie("", "");

  boolean isNone() {
    return coupling.isEmpty();
  }
}
