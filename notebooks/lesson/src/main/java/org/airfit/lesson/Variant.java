package org.airfit.lesson;

import java.util.Objects;

/**
 * An exercise with other numbers than those of the sheet, and its answer.
 *
 * @param id the exercise that it is a variant of, such as "4b"
 * @param question what is asked
 * @param answer the answer with its unit, or a word
 * @param way how it is reached with a pencil
 */
public record Variant(String id, String question, String answer, String way) {

  /**
   * A variant.
   *
   * @throws NullPointerException if a part is null
   */
  public Variant {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(question, "question");
    Objects.requireNonNull(answer, "answer");
    Objects.requireNonNull(way, "way");
  }
}
