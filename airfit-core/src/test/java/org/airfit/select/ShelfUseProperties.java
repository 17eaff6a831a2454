package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** The use of the shelf against trying every way to hand its pieces out. */
class ShelfUseProperties {

  @Property(tries = 500)
  void no_other_way_to_hand_out_the_pieces_saves_more(@ForAll long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int[] need = random.ints(1 + random.nextInt(3), 1, 4).toArray();
    int[] have = random.ints(1 + random.nextInt(3), 1, 4).toArray();
    long[][] saving = new long[need.length][];
    for (int r = 0; r < need.length; r++) {
      saving[r] = random.longs(have.length, -3, 12).toArray();
    }
    int[][] taken = ShelfUse.best(need, have, saving);
    long saved = 0;
    int[] given = new int[have.length];
    for (int r = 0; r < need.length; r++) {
      int got = 0;
      for (int p = 0; p < have.length; p++) {
        assertThat(taken[r][p]).isNotNegative();
        got += taken[r][p];
        given[p] += taken[r][p];
        saved += taken[r][p] * saving[r][p];
      }
      assertThat(got).isLessThanOrEqualTo(need[r]);
    }
    for (int p = 0; p < have.length; p++) {
      assertThat(given[p]).isLessThanOrEqualTo(have[p]);
    }
    assertThat(saved).isEqualTo(most(0, need, have, saving));
  }

  /** Piece by piece of the shelf: to any row that still needs one, or to none. */
  private static long most(int part, int[] need, int[] have, long[][] saving) {
    if (part == have.length) {
      return 0;
    }
    if (have[part] == 0) {
      return most(part + 1, need, have, saving);
    }
    have[part]--;
    long best = most(part, need, have, saving);
    for (int r = 0; r < need.length; r++) {
      if (need[r] > 0) {
        need[r]--;
        best = Math.max(best, saving[r][part] + most(part, need, have, saving));
        need[r]++;
      }
    }
    have[part]++;
    return best;
  }

  /** The first row takes the first part at 10; it must give it back, as the second row has no other. */
  @Example
  void a_piece_is_given_back_where_another_row_needs_it_more() {
    int[][] taken =
        ShelfUse.best(new int[] {1, 1}, new int[] {1, 1}, new long[][] {{10, 9}, {8, 0}});
    assertThat(taken[0]).containsExactly(0, 1);
    assertThat(taken[1]).containsExactly(1, 0);
  }
}
