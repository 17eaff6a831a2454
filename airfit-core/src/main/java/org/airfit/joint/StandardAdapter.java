package org.airfit.joint;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;
import org.airfit.thread.Gender;
import org.airfit.thread.ThreadFamily;

/**
 * An adapter of a standard shape, such as a reducing bushing 1/2 NPT male × 1/4 NPT female: what to ask for at a parts
 * counter, whoever makes it.
 *
 * <p>The shapes are those of the standards of pipe fittings (from memory: ASME B16.3, B16.11 and B16.14, ISO 49, SAE
 * J530) and of the trade in hose and push-in fittings (common practice, no source). How far one piece reduces is a
 * choice of this project: four sizes within a family, one size between families, two sizes between a hose or tube and
 * a thread, and between tubes to half the diameter. Whether a maker has every size of a shape is not told here.
 *
 * <p>Only {@link #all()} makes them. This class is immutable, thread-safe and value-based.
 */
public final class StandardAdapter implements TwoEnded {

  /** Where the shapes come from. */
  public static final Source SOURCE = Source.fromMemory(
      "shapes of ASME B16.3, B16.11, B16.14, ISO 49 and SAE J530, and of the trade; how far one piece reduces is a"
          + " choice of this project");

  /** How many sizes one piece reduces within a family. */
  private static final int REDUCES = 4;

  /** How many sizes an adapter between two families reduces. */
  private static final int REDUCES_BETWEEN_FAMILIES = 1;

  /** How many sizes the thread of a hose tail or push-in connector differs from the size nearest to hose or tube. */
  private static final int REDUCES_FROM_HOSE = 2;

  /** The families with couplings, nipples, bushings and reducers of their own. */
  private static final List<ThreadFamily> FAMILIES =
      List.of(ThreadFamily.NPT, ThreadFamily.NPTF, ThreadFamily.BSPT, ThreadFamily.BSPP);

  private static final double[] TUBES_INCHES = {0.125, 0.15625, 0.1875, 0.25, 0.3125, 0.375, 0.5};
  private static final double[] TUBES_MILLIMETRES = {3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0};

  /** Loaded on first use. */
  private static final class Loaded {
    static final List<StandardAdapter> ALL = List.copyOf(make());
  }

  private final AdapterShape shape;
  private final End one;
  private final End other;

  private StandardAdapter(AdapterShape shape, End one, End other) {
    this.shape = shape;
    this.one = one;
    this.other = other;
  }

  /** {@return every adapter of a standard shape, in sizes 1/16 to 4, always in the same order} */
  public static List<StandardAdapter> all() {
    return Loaded.ALL;
  }

  /** Makes them all anew, as {@link #all()} does once. */
  static List<StandardAdapter> make() {
    List<StandardAdapter> all = new ArrayList<>();
    FAMILIES.forEach(family -> ofOneFamily(all, family));
    for (ThreadFamily american : List.of(ThreadFamily.NPT, ThreadFamily.NPTF)) {
      for (ThreadFamily british : List.of(ThreadFamily.BSPT, ThreadFamily.BSPP)) {
        betweenFamilies(all, american, british);
      }
    }
    betweenFamilies(all, ThreadFamily.BSPT, ThreadFamily.BSPP);
    swivels(all);
    hoses(all);
    tubes(all);
    return all;
  }

  private static void ofOneFamily(List<StandardAdapter> all, ThreadFamily family) {
    for (NominalThreadSize large : family.sizes()) {
      all.add(new StandardAdapter(AdapterShape.NIPPLE, male(family, large), male(family, large)));
      all.add(new StandardAdapter(
          AdapterShape.FEMALE_COUPLING, female(family, large), female(family, large)));
      for (NominalThreadSize small : family.sizes()) {
        int steps = large.compareTo(small);
        if (steps >= 1 && steps <= REDUCES) {
          all.add(new StandardAdapter(
              AdapterShape.REDUCING_NIPPLE, male(family, large), male(family, small)));
          all.add(new StandardAdapter(
              AdapterShape.REDUCING_COUPLING, female(family, large), female(family, small)));
          all.add(new StandardAdapter(
              AdapterShape.BUSHING, male(family, large), female(family, small)));
          all.add(new StandardAdapter(
              AdapterShape.REDUCER, female(family, large), male(family, small)));
        }
      }
    }
  }

  private static void betweenFamilies(
      List<StandardAdapter> all, ThreadFamily one, ThreadFamily other) {
    for (NominalThreadSize size : one.sizes()) {
      for (NominalThreadSize second : other.sizes()) {
        if (Math.abs(size.compareTo(second)) <= REDUCES_BETWEEN_FAMILIES) {
          End male = male(one, size);
          End female = female(one, size);
          End farMale = male(other, second);
          End farFemale = female(other, second);
          all.add(new StandardAdapter(AdapterShape.ADAPTER_NIPPLE, male, farMale));
          all.add(new StandardAdapter(AdapterShape.ADAPTER_COUPLING, female, farFemale));
          all.add(new StandardAdapter(AdapterShape.ADAPTER, male, farFemale));
          all.add(new StandardAdapter(AdapterShape.ADAPTER, female, farMale));
        }
      }
    }
  }

  /** NPSM inside only: outside, NPT goes into it. */
  private static void swivels(List<StandardAdapter> all) {
    for (NominalThreadSize size : ThreadFamily.NPSM.sizes()) {
      End swivel = female(ThreadFamily.NPSM, size);
      all.add(new StandardAdapter(AdapterShape.FEMALE_COUPLING, swivel, swivel));
      for (NominalThreadSize second : ThreadFamily.NPT.sizes()) {
        int steps = size.compareTo(second);
        if (ThreadFamily.NPSM.sizes().contains(second) && steps >= 1 && steps <= REDUCES) {
          all.add(new StandardAdapter(
              AdapterShape.REDUCING_COUPLING, swivel, female(ThreadFamily.NPSM, second)));
        }
        if (Math.abs(steps) <= REDUCES_BETWEEN_FAMILIES) {
          for (Gender gender : Gender.values()) {
            all.add(new StandardAdapter(
                AdapterShape.SWIVEL_ADAPTER,
                swivel,
                new End.Threaded(ThreadFamily.NPT, second, gender)));
          }
        }
      }
    }
  }

  private static void hoses(List<StandardAdapter> all) {
    List<HoseBore> bores = new ArrayList<>();
    for (StandardHose hose : StandardHose.all()) {
      hose.tradeName().ifPresent(bores::add);
      bores.add(hose.nominal());
    }
    for (HoseBore bore : bores) {
      End barb = new End.Barb(bore);
      withThreads(all, AdapterShape.HOSE_TAIL, barb, bore.nominal());
      all.add(new StandardAdapter(
          AdapterShape.HOSE_LENGTH, new End.HoseEnd(bore), new End.HoseEnd(bore)));
      all.add(new StandardAdapter(AdapterShape.HOSE_JOINER, barb, barb));
      for (HoseBore small : bores) {
        int steps = nearest(bore.nominal()).compareTo(nearest(small.nominal()));
        boolean one = StandardHose.of(bore).equals(StandardHose.of(small));
        if (!one && small.compareTo(bore) < 0 && steps <= REDUCES_FROM_HOSE) {
          all.add(
              new StandardAdapter(AdapterShape.REDUCING_HOSE_JOINER, barb, new End.Barb(small)));
        }
      }
    }
  }

  private static void tubes(List<StandardAdapter> all) {
    List<Length> tubes = new ArrayList<>();
    for (double inches : TUBES_INCHES) {
      tubes.add(Length.ofInches(inches));
    }
    for (double millimetres : TUBES_MILLIMETRES) {
      tubes.add(Length.ofMillimetres(millimetres));
    }
    for (Length tube : tubes) {
      End grip = new End.PushIn(tube);
      withThreads(all, AdapterShape.PUSH_IN_CONNECTOR, grip, tube);
      all.add(new StandardAdapter(
          AdapterShape.TUBE_LENGTH, new End.TubeEnd(tube), new End.TubeEnd(tube)));
      all.add(new StandardAdapter(AdapterShape.PUSH_IN_UNION, grip, grip));
      for (Length small : tubes) {
        if (small.compareTo(tube) < 0 && tube.compareTo(small.times(2.0)) <= 0) {
          all.add(new StandardAdapter(
              AdapterShape.REDUCING_PUSH_IN_UNION, grip, new End.PushIn(small)));
        }
      }
    }
  }

  /** Every family with both genders, in the sizes about that of a hose or tube. */
  private static void withThreads(
      List<StandardAdapter> all, AdapterShape shape, End near, Length diameter) {
    NominalThreadSize middle = nearest(diameter);
    for (ThreadFamily family : FAMILIES) {
      for (NominalThreadSize size : family.sizes()) {
        if (Math.abs(size.compareTo(middle)) <= REDUCES_FROM_HOSE) {
          all.add(new StandardAdapter(shape, near, male(family, size)));
          all.add(new StandardAdapter(shape, near, female(family, size)));
        }
      }
    }
  }

  /** The size whose number is nearest to a diameter; a name only, here to put hoses and tubes beside threads. */
  private static NominalThreadSize nearest(Length diameter) {
    return Arrays.stream(NominalThreadSize.values())
        .min(Comparator.comparingDouble(
            size -> Math.abs(Length.parse(size.label() + " in").inches() - diameter.inches())))
        .orElseThrow();
  }

  /** The size of an end; a hose or tube stands at the thread size nearest to its diameter. */
  static NominalThreadSize size(End end) {
    if (end instanceof End.Threaded threaded) {
      return threaded.size();
    }
    if (end instanceof End.Barb barb) {
      return nearest(barb.bore().nominal());
    }
    if (end instanceof End.HoseEnd hose) {
      return nearest(hose.bore().nominal());
    }
    return nearest(end instanceof End.PushIn grip ? grip.outside() : ((End.TubeEnd) end).outside());
  }

  private static End male(ThreadFamily family, NominalThreadSize size) {
    return new End.Threaded(family, size, Gender.MALE);
  }

  private static End female(ThreadFamily family, NominalThreadSize size) {
    return new End.Threaded(family, size, Gender.FEMALE);
  }

  /** {@return its shape} */
  public AdapterShape shape() {
    return shape;
  }

  /** {@return shape and ends, such as "reducing bushing 1/2 NPT male × 1/4 NPT female"} */
  @Override
  public String name() {
    return shape == AdapterShape.HOSE_LENGTH || shape == AdapterShape.TUBE_LENGTH
        ? "length of " + one.label()
        : shape.label() + " " + one.label() + " × " + other.label();
  }

  @Override
  public End one() {
    return one;
  }

  @Override
  public End other() {
    return other;
  }

  /** {@return empty: a shape tells no bore, ask the maker of the piece} */
  @Override
  public Optional<Length> smallestBore() {
    return Optional.empty();
  }

  @Override
  public boolean equals(Object object) {
    return object instanceof StandardAdapter that
        && shape == that.shape
        && one.equals(that.one)
        && other.equals(that.other);
  }

  @Override
  public int hashCode() {
    return Objects.hash(shape, one, other);
  }

  /** {@return the {@link #name()}} */
  @Override
  public String toString() {
    return name();
  }
}
