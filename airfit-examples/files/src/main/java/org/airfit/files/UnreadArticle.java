package org.airfit.files;

import java.util.Objects;

/**
 * What keeps an article of a price list from being read.
 *
 * @param id what the list calls it; empty where that is not told
 * @param place the field in the file
 * @param complaint what was found there and what is accepted instead
 */
public record UnreadArticle(String id, String place, String complaint) {

  /**
   * Refuses what is null.
   *
   * @param id what the list calls it; empty where that is not told
   * @param place the field in the file
   * @param complaint what was found there and what is accepted instead
   */
  public UnreadArticle {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(complaint, "complaint");
  }
}
