package org.airfit.joint;

import org.junit.jupiter.api.Test;

/** How far the search for adapters reaches: all pairs of all ends, which takes seconds. */
class AdapterSearchReachTest {

  @Test
  void of_all_pairs_of_ends_each_gets_the_fewest_pieces_and_every_joint_of_them_mates() {
    new AdapterPairs().check(1);
  }
}
