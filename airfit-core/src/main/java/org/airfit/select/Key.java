package org.airfit.select;

/**
 * What puts proposals in order before their pressure and their names. Of a choice that is not whole it is the least
 * that can become of it.
 *
 * @param missed how far it misses what is asked, in billionths
 * @param missing how many standard adapters are missing where nothing joins two ends, those between standards counted
 *     as more
 * @param faults how many parts break a rule, one that breaks two counted twice
 * @param asked how many rules the parts leave open
 * @param doubt in how many tenths of what can arrive at the tool it is too little, see {@link Leg.Tool#doubt}; one
 *     where settings alone decide
 * @param first what counts before the profiles by the objective: the pieces, or all that it costs
 * @param profiles how many profiles the couplings have
 * @param cost what it costs by the objective
 */
record Key(
    long missed, int missing, int faults, int asked, int doubt, long first, int profiles, long cost)
    implements Comparable<Key> {

  /** Written out, as it is asked of every choice that a search looks at. */
  @Override
  public int compareTo(Key other) {
    int order = Long.compare(missed, other.missed);
    order = order == 0 ? Integer.compare(missing, other.missing) : order;
    order = order == 0 ? Integer.compare(faults, other.faults) : order;
    order = order == 0 ? Integer.compare(asked, other.asked) : order;
    order = order == 0 ? Integer.compare(doubt, other.doubt) : order;
    order = order == 0 ? Long.compare(first, other.first) : order;
    order = order == 0 ? Integer.compare(profiles, other.profiles) : order;
    return order == 0 ? Long.compare(cost, other.cost) : order;
  }

  /** Whether they differ in the cost and the profiles at most. */
  boolean isAsWellSuitedAs(Key other) {
    return missed == other.missed
        && missing == other.missing
        && faults == other.faults
        && asked == other.asked
        && doubt == other.doubt;
  }

  /** The same at another cost. */
  Key costing(long other, Objective objective) {
    return new Key(
        missed, missing, faults, asked, doubt, objective.beforeProfiles(other), profiles, other);
  }

  /** The same with more profiles. */
  Key with(int moreProfiles) {
    return new Key(missed, missing, faults, asked, doubt, first, moreProfiles, cost);
  }
}
