package org.airfit.joint;

import org.airfit.MoreTries;
import org.junit.jupiter.api.Test;

/** How far the search for adapters reaches: all pairs of all ends, which takes seconds. */
class AdapterSearchReachTest {

  /** All pairs at night; in a build those of every third end. */
  @Test
  void of_all_pairs_of_ends_each_gets_the_fewest_pieces_and_every_joint_of_them_mates() {
    new AdapterPairs().check(MoreTries.isNight() ? 1 : 3);
  }
}
