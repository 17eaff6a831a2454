package org.airfit.counter;

import java.util.Map;

/** Who answers the questions that the guard lets through. */
interface Answering {

  /** A status of HTTP and an object. */
  record Answer(int status, Map<String, Object> object) {}

  /**
   * Answers a question.
   *
   * @param endpoint what is asked
   * @param word the word of the caller's in the path; empty where it has none
   * @param body the object that came with it; empty where none did
   * @throws Problem if it cannot be answered
   */
  Answer answer(Endpoint endpoint, String word, Map<String, Object> body) throws Problem;
}
