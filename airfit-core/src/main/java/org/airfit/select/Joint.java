package org.airfit.select;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.joint.Chain;
import org.airfit.joint.ChainVerdict;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.safety.Caution;

/**
 * Two ends that must be joined, and the adapters that join them soundly: of all chains of at most three, the one that
 * breaks the fewest rules, then leaves the fewest adapters and threads to be asked about, then costs least by the
 * {@link Objective}, then has the fewest adapters, then has the least pressure loss.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Joint {

  private final String where;
  private final Chain<Part.Adapter> chain;

  Joint(String where, Chain<Part.Adapter> chain) {
    this.where = where;
    this.chain = chain;
  }

  /** {@return what is joined, such as "outlet to socket"} */
  public String where() {
    return where;
  }

  /** {@return the ends, the adapters between them and every pair that meets, from the supply on} */
  public Chain<Part.Adapter> chain() {
    return chain;
  }

  /** {@return the end towards the supply} */
  public End upstream() {
    return chain.from();
  }

  /** {@return the end towards the tool} */
  public End downstream() {
    return chain.to();
  }

  /** {@return the adapters between, from the supply on; empty where the ends meet directly or nothing joins them} */
  public List<Part.Adapter> adapters() {
    return chain.adapters();
  }

  /** {@return every pair of ends that meet, from the supply on} */
  public List<Mating> matings() {
    return chain.matings();
  }

  /** {@return whether every pair of ends that meet is sound} */
  public boolean isSound() {
    return chain.verdict() != ChainVerdict.NOT_JOINED;
  }

  /** {@return whether a pair that meets is meant for low pressure only} */
  public boolean isForLowPressure() {
    return matings().stream().anyMatch(Mating::isForLowPressure);
  }

  /** {@return the warnings of every pair of ends that meet, and of a stack of adapters} */
  public List<Caution> cautions() {
    Set<Caution> each = new LinkedHashSet<>();
    matings().forEach(mating -> each.addAll(mating.cautions()));
    each.addAll(chain.cautions());
    return List.copyOf(each);
  }

  /** {@return what meets what, in words; where nothing joins them, also which standard adapters would} */
  public String inWords() {
    if (!isSound()) {
      String reason = matings().get(0).reason();
      return where + ": " + upstream().label() + " and " + downstream().label()
          + " are not joined. " + reason.substring(0, reason.length() - 1);
    }
    if (adapters().isEmpty()) {
      return where + ": " + upstream().label() + " straight to " + downstream().label();
    }
    return where + ": " + upstream().label() + " to " + downstream().label() + " through "
        + adapters().stream().map(Part.Adapter::name).collect(Collectors.joining(" and "));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Joint that && where.equals(that.where) && chain.equals(that.chain);
  }

  @Override
  public int hashCode() {
    return Objects.hash(where, chain);
  }

  /** {@return what meets what, in words} */
  @Override
  public String toString() {
    return inWords();
  }
}
