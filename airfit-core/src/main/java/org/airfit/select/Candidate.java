package org.airfit.select;

import java.util.List;
import java.util.Set;
import org.airfit.flow.FlowElement;
import org.jspecify.annotations.Nullable;

/**
 * A part that could stand at a position of the run, with all that a search asks of it there.
 *
 * @param part the part
 * @param position the position it would take
 * @param rank its place among the parts of its position by name
 * @param broken the rules it breaks there, as bits
 * @param asked the rules it leaves open there, as bits
 * @param missedLength how far it misses the rules that can be measured, in billionths of what is wanted, in all
 *     lines alike
 * @param cost what it costs by the objective, in all lines alike
 * @param near its end towards the supply, by number
 * @param far its end towards the tool, by number
 * @param outlets of the splitter in front of several lines the end at which each of them begins, by number; else none
 * @param takes the profiles a socket takes, of a plug the one it has; none of other parts
 * @param tie of a plug whose coupling must have the profile of others, which couplings and which profile; else blank
 * @param isExact whether the part is known exactly, asked once as it is wanted of every pair
 * @param element what it does to the air at worst; null of a plug, which counts with its socket
 * @param atBest what it does to the air at best; the same where it is known
 */
record Candidate(
    Part part,
    Position position,
    int rank,
    int broken,
    int asked,
    long missedLength,
    long cost,
    int near,
    int far,
    List<Integer> outlets,
    Set<String> takes,
    Tie tie,
    boolean isExact,
    @Nullable FlowElement element,
    @Nullable FlowElement atBest) {

  /** The rules whose misses are measured, as bits: a hose that is a little too short or too long is a near miss. */
  static final int MEASURED = Rule.HOSE_REACHES.bit() | Rule.HOSE_SHORT_ENOUGH.bit();

  /** Whether it breaks nothing. */
  boolean isSuited() {
    return broken == 0 && missedLength == 0;
  }

  /** How many rules it breaks that are not measured. */
  int faults() {
    return Integer.bitCount(broken & ~MEASURED);
  }

  /** The same the other way round, as adapters may stand. */
  Candidate turned() {
    return new Candidate(
        part,
        position,
        rank,
        broken,
        asked,
        missedLength,
        cost,
        /* near= */ far,
        /* far= */ near,
        outlets,
        takes,
        tie,
        isExact,
        element,
        atBest);
  }

  /** A plug of another profile may be the better one with what else is chosen. */
  private boolean isOfProfileOf(Candidate other) {
    return !(part instanceof Part.Plug plug)
        || (other.part instanceof Part.Plug that && plug.profile().equals(that.profile()));
  }

  /** Whether it is at least as good as another in all that counts and takes its place among the ends. */
  boolean isAsGoodAs(Candidate other) {
    return near == other.near
        && far == other.far
        && (broken & ~other.broken) == 0
        && (asked & ~other.asked) == 0
        && missedLength <= other.missedLength
        && cost <= other.cost
        && (isExact || !other.isExact)
        && Width.isAsWide(part, other.part)
        && isOfProfileOf(other)
        && outlets.equals(other.outlets)
        && takes.containsAll(other.takes);
  }
}
