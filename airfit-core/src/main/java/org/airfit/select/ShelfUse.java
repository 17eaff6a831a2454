package org.airfit.select;

import java.util.Arrays;

/**
 * Which pieces of the shelf go to which rows, so that most money is saved: a transportation problem.
 *
 * <pre>
 *   max Σ s(r,p) x(r,p)   with   Σ_p x(r,p) ≤ need(r),   Σ_r x(r,p) ≤ have(p),   x whole and ≥ 0
 * </pre>
 *
 * <p>Solved exactly by successive best augmenting paths. A path may give a piece back that another row took before;
 * among all paths that with the largest gain is gone, until none gains. <b>Source:</b> R. K. Ahuja, T. L. Magnanti, J.
 * B. Orlin, <cite>Network Flows</cite>, 1993, section 9.7, from memory; held against trying everything in a test.
 */
final class ShelfUse {

  private static final long NEVER = Long.MIN_VALUE / 4;

  private final int[] need;
  private final int[] have;
  private final long[][] saving;
  private final int[][] taken;

  private ShelfUse(int[] need, int[] have, long[][] saving) {
    this.need = need.clone();
    this.have = have.clone();
    this.saving = saving;
    this.taken = new int[need.length][have.length];
  }

  /**
   * Finds what to take.
   *
   * @param need how many pieces each row needs
   * @param have how many pieces of each part there are
   * @param saving what one piece of a part saves in a row; 0 or less where it is not to be used
   * @return how many pieces of each part each row takes
   */
  static int[][] best(int[] need, int[] have, long[][] saving) {
    ShelfUse use = new ShelfUse(need, have, saving);
    while (use.improve()) {
      // goes on until no path gains
    }
    return use.taken;
  }

  private boolean improve() {
    long[] toRow = new long[need.length];
    long[] toPart = new long[have.length];
    int[] rowOf = new int[have.length];
    int[] partOf = new int[need.length];
    Arrays.fill(toPart, NEVER);
    Arrays.fill(partOf, -1);
    for (int r = 0; r < need.length; r++) {
      toRow[r] = need[r] > 0 ? 0 : NEVER;
    }
    boolean changed = true;
    while (changed) {
      changed = false;
      for (int r = 0; r < need.length; r++) {
        for (int p = 0; p < have.length; p++) {
          if (saving[r][p] > 0 && toRow[r] > NEVER && toRow[r] + saving[r][p] > toPart[p]) {
            toPart[p] = toRow[r] + saving[r][p];
            rowOf[p] = r;
            changed = true;
          }
          if (taken[r][p] > 0 && toPart[p] > NEVER && toPart[p] - saving[r][p] > toRow[r]) {
            toRow[r] = toPart[p] - saving[r][p];
            partOf[r] = p;
            changed = true;
          }
        }
      }
    }
    int last = -1;
    for (int p = 0; p < have.length; p++) {
      if (have[p] > 0 && toPart[p] > 0 && (last < 0 || toPart[p] > toPart[last])) {
        last = p;
      }
    }
    if (last < 0) {
      return false;
    }
    move(last, rowOf, partOf);
    return true;
  }

  /** Goes the path back from the part at its end, with as many pieces as it bears. */
  private void move(int last, int[] rowOf, int[] partOf) {
    int pieces = have[last];
    int part = last;
    while (partOf[rowOf[part]] >= 0) {
      int row = rowOf[part];
      part = partOf[row];
      pieces = Math.min(pieces, taken[row][part]);
    }
    pieces = Math.min(pieces, need[rowOf[part]]);
    have[last] -= pieces;
    part = last;
    while (true) {
      int row = rowOf[part];
      taken[row][part] += pieces;
      if (partOf[row] < 0) {
        need[row] -= pieces;
        return;
      }
      part = partOf[row];
      taken[row][part] -= pieces;
    }
  }
}
