package org.airfit.select;

import java.util.Locale;
import java.util.Objects;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NominalThreadSize;

/**
 * An article of a catalogue that a {@link BillOfMaterials} needs and no air goes through: it is never searched for a
 * combination, only chosen for one that was found.
 */
public sealed interface Accessory {

  /** {@return what it tells of itself} */
  PartFacts facts();

  /** {@return what the catalogue calls it} */
  default String id() {
    return facts().id();
  }

  /** {@return what people call it} */
  default String name() {
    return facts().name();
  }

  /**
   * A clamp or a ferrule that holds a hose on a barb. It is chosen by what the hose measures outside, not by its bore.
   *
   * @param facts what it tells of itself
   * @param from the least outside diameter that it holds, above 0
   * @param to the greatest outside diameter that it holds
   */
  record HoseClamp(PartFacts facts, Length from, Length to) implements Accessory {
    /**
     * Checks the components.
     *
     * @param facts what it tells of itself
     * @param from the least outside diameter that it holds, above 0
     * @param to the greatest outside diameter that it holds
     * @throws IllegalArgumentException if {@code from} is not above 0 or {@code to} is below it
     */
    public HoseClamp {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(from, "from");
      Objects.requireNonNull(to, "to");
      if (!(from.metres() > 0.0 && to.compareTo(from) >= 0)) {
        throw new IllegalArgumentException("outside diameters that " + facts.id()
            + " holds must be above 0 and in order, were "
            + from.inFull(LengthUnit.MILLIMETRE) + " to " + to.inFull(LengthUnit.MILLIMETRE));
      }
    }

    /** Whether it holds a hose that measures so much outside. */
    boolean holds(Length outside) {
      return outside.compareTo(from) >= 0 && outside.compareTo(to) <= 0;
    }
  }

  /**
   * A roll of tape or a bottle of paste for taper threads. One of it is taken to do for every joint of a bill.
   *
   * @param facts what it tells of itself
   * @param largest the largest thread it is for
   */
  record ThreadSealant(PartFacts facts, NominalThreadSize largest) implements Accessory {
    /**
     * Refuses {@code null}.
     *
     * @param facts what it tells of itself
     * @param largest the largest thread it is for
     */
    public ThreadSealant {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(largest, "largest");
    }
  }

  /**
   * A sealing washer, bonded seal or flat ring for a thread that seals between two faces.
   *
   * @param facts what it tells of itself
   * @param thread the thread it goes on as the trade names it, such as "G 1/4" or "M5"
   */
  record SealingWasher(PartFacts facts, String thread) implements Accessory {
    /**
     * Checks the components.
     *
     * @param facts what it tells of itself
     * @param thread the thread it goes on as the trade names it, such as "G 1/4" or "M5"
     * @throws IllegalArgumentException if {@code thread} is blank
     */
    public SealingWasher {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(thread, "thread");
      if (thread.isBlank()) {
        throw new IllegalArgumentException("thread of sealing washer " + facts.id()
            + " must not be blank, was \"" + thread + "\"");
      }
    }

    /** Whether a joint that needs a washer, as {@link org.airfit.joint.Mating#sealItem()} names it, may have it. */
    boolean isFor(String item) {
      return bare(item).endsWith("for" + bare(thread));
    }

    private static String bare(String text) {
      return text.replace(" ", "").toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A cable, sock or chain across a joint of a hose, that holds the hose when the joint parts.
   *
   * @param facts what it tells of itself
   * @param from the smallest hose it is for
   * @param to the largest hose it is for
   */
  record WhipRestraint(PartFacts facts, HoseBore from, HoseBore to) implements Accessory {
    /**
     * Checks the components.
     *
     * @param facts what it tells of itself
     * @param from the smallest hose it is for
     * @param to the largest hose it is for
     * @throws IllegalArgumentException if {@code to} is smaller than {@code from}
     */
    public WhipRestraint {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(from, "from");
      Objects.requireNonNull(to, "to");
      if (to.compareTo(from) < 0) {
        throw new IllegalArgumentException(
            "hoses that " + facts.id() + " is for must be in order, were " + from + " to " + to);
      }
    }

    /** Whether it is for a hose. */
    boolean isFor(HoseBore bore) {
      return bore.compareTo(from) >= 0 && bore.compareTo(to) <= 0;
    }
  }

  /**
   * A valve at the lowest point of a pipe, to let water out.
   *
   * @param facts what it tells of itself
   */
  record Drain(PartFacts facts) implements Accessory {
    /**
     * Refuses {@code null}.
     *
     * @param facts what it tells of itself
     */
    public Drain {
      Objects.requireNonNull(facts, "facts");
    }
  }

  /**
   * A cap that keeps dirt out of a plug while it is not in a socket.
   *
   * @param facts what it tells of itself
   * @param profile the id of the profile of the plugs it goes on
   */
  record EndCap(PartFacts facts, String profile) implements Accessory {
    /**
     * Checks the components.
     *
     * @param facts what it tells of itself
     * @param profile the id of the profile of the plugs it goes on
     * @throws IllegalArgumentException if {@code profile} is blank
     */
    public EndCap {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(profile, "profile");
      if (profile.isBlank()) {
        throw new IllegalArgumentException(
            "profile of end cap " + facts.id() + " must not be blank, was \"" + profile + "\"");
      }
    }
  }

  /**
   * A hook or holder to hang a hose on.
   *
   * @param facts what it tells of itself
   */
  record HoseHook(PartFacts facts) implements Accessory {
    /**
     * Refuses {@code null}.
     *
     * @param facts what it tells of itself
     */
    public HoseHook {
      Objects.requireNonNull(facts, "facts");
    }
  }
}
