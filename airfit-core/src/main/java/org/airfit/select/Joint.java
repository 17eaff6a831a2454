package org.airfit.select;

import java.util.List;
import org.airfit.thread.Chain;
import org.airfit.thread.End;
import org.airfit.thread.Mating;

/**
 * Two ends of a run that must be joined, with the shortest chain of the catalogue's adapters between them.
 *
 * @param where what is joined, such as "wall outlet to socket"
 * @param chain the ends, the adapters between, and every pair of ends that meets
 */
public record Joint(String where, Chain<Part.Adapter> chain) {

  static Joint of(String where, End upstream, End downstream, List<Part.Adapter> stock) {
    return new Joint(where, Chain.between(upstream, downstream, stock));
  }

  /** {@return the adapters between, from the supply on; empty where the ends meet directly or nothing joins them} */
  public List<Part.Adapter> adapters() {
    return chain.adapters();
  }

  /** {@return every pair of ends that meets, from the supply on} */
  public List<Mating> matings() {
    return chain.matings();
  }

  /** {@return whether every pair of ends that meets is sound} */
  public boolean isSound() {
    return chain.verdict() != Chain.Verdict.NOT_JOINED;
  }

  /** {@return what meets what, in words} */
  public String inWords() {
    return where + ", " + chain.inWords();
  }
}
