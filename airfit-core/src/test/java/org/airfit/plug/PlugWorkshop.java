package org.airfit.plug;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.airfit.measure.Access;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.source.Source;

/**
 * Draws sets, plugs, wear and readings for simulations, by other laws than the judge's: pieces scatter in a triangle and
 * not in a bell, a caliper is off evenly within its limit and not normally, every reading is rounded to the step, wear
 * falls off as an exponential and not evenly, near copies are changed by an even amount and in a fixed share of their
 * sizes. None of these laws is from a source; they are made to be unlike those of the library.
 */
final class PlugWorkshop {

  /** Middle and half range of each size in one size class, in the order of {@link Dimension} [mm]. */
  private static final double[] MIDDLE = {11.0, 14.2, 17.0, 28.0, 4.6, 9.6, 11.0, 12.6, 7.2};

  private static final double[] HALF_RANGE = {1.6, 1.8, 3.0, 4.0, 1.3, 1.4, 2.4, 1.8, 1.2};

  private static final List<Dimension> ALL = List.of(Dimension.values());

  final SplittableRandom random;

  PlugWorkshop(long seed) {
    this.random = new SplittableRandom(seed);
  }

  /** Standard deviation from piece to piece that a set states [mm]: turned sizes better than lengths and grooves. */
  private static double scatter(Dimension dimension) {
    return dimension.access() == Access.OUTSIDE ? 0.03 : 0.05;
  }

  /** The sizes of a profile, or of a plug of no profile, anywhere in the size class [mm]. */
  Map<Dimension, Double> anySizes() {
    while (true) {
      Map<Dimension, Double> sizes = new EnumMap<>(Dimension.class);
      int i = 0;
      for (Dimension dimension : Dimension.values()) {
        sizes.put(dimension, MIDDLE[i] + HALF_RANGE[i] * random.nextDouble(-1.0, 1.0));
        i++;
      }
      if (possible(sizes)) {
        return sizes;
      }
    }
  }

  private static boolean possible(Map<Dimension, Double> sizes) {
    return at(sizes, Dimension.BORE) + 0.6 < at(sizes, Dimension.GROOVE_DIAMETER)
        && at(sizes, Dimension.BORE) + 0.6 < at(sizes, Dimension.TIP_DIAMETER)
        && at(sizes, Dimension.TIP_DIAMETER) + 0.4 < at(sizes, Dimension.COLLAR_DIAMETER)
        && at(sizes, Dimension.GROOVE_DIAMETER) + 0.8 < at(sizes, Dimension.COLLAR_DIAMETER)
        && at(sizes, Dimension.TIP_TO_COLLAR) + 0.5 < at(sizes, Dimension.TIP_LENGTH)
        && at(sizes, Dimension.TIP_LENGTH) + at(sizes, Dimension.GROOVE_WIDTH) + 0.5
            < at(sizes, Dimension.INSERTION_LENGTH);
  }

  static double at(Map<Dimension, Double> sizes, Dimension dimension) {
    return Objects.requireNonNull(sizes.get(dimension));
  }

  /** A set as if entered from a standard, so that a verdict may say "identified". */
  ReferenceSet set(int profiles) {
    List<PlugProfile> drawn = new ArrayList<>();
    for (int k = 0; k < profiles; k++) {
      PlugProfile.Builder builder = PlugProfile.builder("drawn-" + k)
          .from(Provenance.standardEntered(), Source.demo("drawn by lot"))
          .confirmUnusual();
      anySizes()
          .forEach((dimension, size) -> builder.dimension(
              dimension,
              PartSpread.normal(
                  Length.ofMillimetres(size), Length.ofMillimetres(scatter(dimension)))));
      drawn.add(builder.build());
    }
    return ReferenceSet.of("drawn by lot", drawn);
  }

  /** The same profiles of which only some sizes are known. */
  static ReferenceSet knowing(ReferenceSet whole, Collection<Dimension> sizes) {
    List<PlugProfile> some = new ArrayList<>();
    for (PlugProfile profile : whole.profiles()) {
      PlugProfile.Builder builder = PlugProfile.builder(profile.id())
          .from(profile.provenance(), profile.source())
          .confirmUnusual();
      profile.dimensions().forEach((dimension, spread) -> {
        if (sizes.contains(dimension)) {
          builder.dimension(dimension, spread);
        }
      });
      some.add(builder.build());
    }
    return ReferenceSet.of(whole.name(), some);
  }

  /** A genuine plug as new: its pieces scatter in a triangle with the standard deviation the set states. */
  Map<Dimension, Double> genuine(PlugProfile profile) {
    Map<Dimension, Double> sizes = new EnumMap<>(Dimension.class);
    profile.dimensions().forEach((dimension, spread) -> {
      double half = scatter(dimension) * Math.sqrt(6.0);
      sizes.put(
          dimension,
          spread.nominal().millimetres()
              + half * (random.nextDouble() + random.nextDouble() - 1.0));
    });
    return sizes;
  }

  /** A copy: so many sizes are changed, either way, by an even amount between the two. */
  Map<Dimension, Double> copy(PlugProfile profile, int changed, double least, double most) {
    Map<Dimension, Double> sizes = genuine(profile);
    List<Dimension> left = new ArrayList<>(sizes.keySet());
    for (int i = 0; i < changed; i++) {
      Dimension dimension = left.remove(random.nextInt(left.size()));
      double by = least + (most - least) * random.nextDouble();
      sizes.put(dimension, at(sizes, dimension) + (random.nextBoolean() ? by : -by));
    }
    return sizes;
  }

  /** Wears a plug where metal rubs or locks, by so much on average; never more than the allowance that is usual. */
  void wear(Map<Dimension, Double> sizes, double mean, double most) {
    sizes.replaceAll((dimension, size) -> {
      double gone = Math.min(most, -mean * Math.log(1.0 - random.nextDouble()));
      return size + dimension.wear().sign() * gone;
    });
  }

  /** A caliper of the class: off by the same in all its readings, evenly within the limit less the rounding. */
  Caliper caliper(Instrument instrument) {
    double limit =
        instrument.limitOfError(Access.OUTSIDE, Length.ofMillimetres(10.0)).millimetres();
    double step = instrument.step().millimetres();
    return new Caliper(instrument, (limit - 0.5 * step) * random.nextDouble(-1.0, 1.0));
  }

  /** One caliper in hand. */
  final class Caliper {

    private final Instrument instrument;
    private final double off;

    private Caliper(Instrument instrument, double off) {
      this.instrument = instrument;
      this.off = off;
    }

    /** Reads a size: its own error, that of depth and inside jaws, that of the hand, rounded to the step [mm]. */
    double shows(Dimension dimension, double size) {
      double step = instrument.step().millimetres();
      double hand = switch (dimension.access()) {
        case OUTSIDE -> 0.01;
        case STEP, GROOVE -> 0.1;
        case BORE -> 0.05;
      };
      double inside = dimension.access() == Access.OUTSIDE ? 0.0 : 0.02;
      double shown =
          size + off + inside * random.nextDouble(-1.0, 1.0) + hand * random.nextDouble(-1.0, 1.0);
      return step * Math.rint(shown / step);
    }

    PlugReading read(Dimension dimension, Map<Dimension, Double> plug) {
      return PlugReading.of(
          dimension, instrument, Length.ofMillimetres(shows(dimension, at(plug, dimension))));
    }
  }

  /** Two profiles whose turned sizes lie so far apart [mm], all one way or in turn: only the caliper parts them. */
  ReferenceSet pair(double apart) {
    Map<Dimension, Double> one = anySizes();
    boolean alike = random.nextBoolean();
    List<PlugProfile> both = new ArrayList<>();
    for (int k = 0; k < 2; k++) {
      PlugProfile.Builder builder = PlugProfile.builder("pair-" + k)
          .from(Provenance.standardEntered(), Source.demo("drawn by lot"))
          .confirmUnusual();
      int side = 1;
      for (Dimension dimension :
          List.of(Dimension.TIP_DIAMETER, Dimension.COLLAR_DIAMETER, Dimension.SHOULDER_DIAMETER)) {
        builder.dimension(
            dimension,
            PartSpread.normal(
                Length.ofMillimetres(at(one, dimension) + k * side * apart * 0.5),
                Length.ofMillimetres(scatter(dimension))));
        side = alike ? side : -side;
      }
      both.add(builder.build());
    }
    return ReferenceSet.of("pair", both);
  }

  /** Five readings of a plug, the last a slip. */
  List<PlugReading> withSlip(Map<Dimension, Double> plug, Caliper caliper, String what) {
    List<Dimension> left = new ArrayList<>(plug.keySet());
    List<PlugReading> taken = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      taken.add(caliper.read(left.remove(random.nextInt(left.size())), plug));
    }
    Dimension last = left.get(random.nextInt(left.size()));
    double shown = caliper.shows(last, at(plug, last));
    taken.add(PlugReading.of(
        last,
        caliper.instrument,
        Length.ofMillimetres(
            switch (what) {
              case "inches typed" -> Math.rint(shown / 25.4 * 100.0) / 100.0;
              case "another size" -> another(plug, caliper, last);
              case "digits exchanged" -> exchanged(shown);
              case "decimal point" -> List.of(0.1, 0.1, 0.01, 10.0).get(random.nextInt(4)) * shown;
              default -> shown + (random.nextBoolean() ? 1.0 : -1.0) * random.nextDouble(0.5, 2.0);
            })));
    return taken;
  }

  /** The caliper at another size that differs by half a millimetre at least. */
  private double another(Map<Dimension, Double> plug, Caliper caliper, Dimension instead) {
    while (true) {
      Dimension other = ALL.get(random.nextInt(ALL.size()));
      if (Math.abs(at(plug, other) - at(plug, instead)) > 0.5) {
        return caliper.shows(other, at(plug, other));
      }
    }
  }

  /** Two digits that stand side by side changed places, by half a millimetre at least. */
  private double exchanged(double shown) {
    String digits = Long.toString(Math.round(shown * 100.0));
    for (int i = 1; i < digits.length(); i++) {
      StringBuilder typed = new StringBuilder(digits);
      typed.setCharAt(i, digits.charAt(i - 1));
      typed.setCharAt(i - 1, digits.charAt(i));
      double mm = Double.parseDouble(typed.toString()) / 100.0;
      if (mm > 0.0 && Math.abs(mm - shown) > 0.5) {
        return mm;
      }
    }
    return shown + 0.9;
  }
}
