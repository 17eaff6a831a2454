package org.airfit.select;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of the way of the air with what could stand on it: from the outlet to the tool, or where there are several
 * tools from the outlet to the first splitter, and from a splitter to the next or to a tool.
 *
 * @param stretch the stretch
 * @param rows its positions in the order the air goes
 * @param tool the tool at its end; null where it ends at a splitter
 * @param mostFlows the flow in front of each position and at the end [kg/s], where all tools take most
 * @param leastFlows the same where all tools take least
 */
record Leg(
    Stretch stretch,
    List<Row> rows,
    @Nullable Tool tool,
    List<Double> mostFlows,
    List<Double> leastFlows) {

  /**
   * What the tool at the end of a leg needs.
   *
   * @param inlet its end, by number
   * @param mostNeeded the pressure that it needs at most [Pa above atmosphere]
   * @param leastNeeded the pressure that it needs at least [Pa above atmosphere]
   */
  record Tool(int inlet, double mostNeeded, double leastNeeded) {

    private static final int TENTHS = 10;

    /** What computing may round off a share, and much more. */
    private static final double ROUNDED_OFF = 1.0e-9;

    /** By how much less than needed arrives at best [Pa above atmosphere], in billionths; none where it is enough. */
    long missedAir(double atBest) {
      double missing = (leastNeeded - Math.max(0.0, atBest)) / leastNeeded;
      return atBest >= leastNeeded ? 0L : Math.max(1L, Math.round(Choice.WHOLE_MISS * missing));
    }

    /**
     * In how many tenths of what can arrive, from worst to best [Pa above atmosphere], the air is too little: none
     * where it is enough at worst, and none where it is too little even at best, as that is no doubt but a miss. Of
     * what is enough at best, more at worst or at best never raises it. Tenths are our own choice: what differs by less
     * is as good, and the price decides.
     */
    int doubt(double atWorst, double atBest) {
      double tooLittle = mostNeeded - Math.max(0.0, atWorst);
      if (atBest < leastNeeded || tooLittle <= 0.0) {
        return 0;
      }
      double enough = atBest - leastNeeded;
      int good = (int) Math.floor(TENTHS * enough / (enough + tooLittle) + ROUNDED_OFF);
      return Math.max(1, TENTHS - good);
    }
  }

  /** Whether it begins at a splitter. */
  boolean isLine() {
    return stretch.line() != Stretch.SHARED;
  }

  /** How many there are of it, alike in all. */
  int count() {
    return stretch.count();
  }

  int size() {
    return rows.size();
  }

  /** The flow at worst in front of a position, of as many as there are at the end [kg/s]. */
  double mostFlow(int position) {
    return mostFlows.get(position);
  }

  /** The flow at best in front of a position, of as many as there are at the end [kg/s]. */
  double leastFlow(int position) {
    return leastFlows.get(position);
  }
}
