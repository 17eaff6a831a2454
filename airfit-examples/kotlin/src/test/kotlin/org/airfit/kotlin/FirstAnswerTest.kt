package org.airfit.kotlin

import org.assertj.core.api.Assertions.assertThat
import org.junit.jupiter.api.Test

/** The example of docs/embedding.md, which must be answered as the one in Java is. */
class FirstAnswerTest {

  @Test
  fun the_answer_is_that_of_java() {
    assertThat(firstAnswer())
        .isEqualTo("At the tool: 81.8 psig\nCaution. More pressure at the supply does not help")
  }
}
