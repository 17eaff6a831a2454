package org.airfit.internal;

/** Short names by which people and files call things. */
public final class Ids {

  private Ids() {}

  /**
   * Refuses what cannot stand in a list of ids.
   *
   * @param what what the id is of, for the complaint
   * @param id the id
   * @return {@code id}
   * @throws IllegalArgumentException if it is blank or holds a comma
   */
  public static String require(String what, String id) {
    if (id.isBlank()) {
      throw new IllegalArgumentException(what + " must not be blank, was \"" + id + "\"");
    }
    if (id.indexOf(',') >= 0) {
      throw new IllegalArgumentException(
          what + " must hold no comma, which parts the ids of a list, was \"" + id + "\"");
    }
    return id;
  }
}
