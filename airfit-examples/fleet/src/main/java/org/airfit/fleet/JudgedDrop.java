package org.airfit.fleet;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.files.Job;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.run.ElementLoss;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.run.WiderHose;
import org.airfit.safety.Caution;

/**
 * A drop and the library's answer. What is asked of it beyond the verdict is worked out when it is asked.
 *
 * @param place a job with its supply, conditions and year
 * @param tool a job with its tool
 * @param run its run
 * @param set what the last regulator in the run is set to
 * @param notKnown which of what is connected is not known exactly, and what was taken for it
 * @param result what arrives
 * @param verdict the verdict
 */
record JudgedDrop(
    Job place,
    Job tool,
    Run run,
    Optional<GaugePressure> set,
    Optional<String> notKnown,
    RunResult result,
    DropVerdict verdict) {

  /** Decimals of a sum of money; prices of a kWh have as many. */
  static final int DECIMALS = 4;

  private static final double PASCALS_PER_BAR = 1.0e5;

  /** The element that holds the tool back most, and by how much; by nothing told where the air does not get there. */
  record Restriction(String name, Optional<Double> gainBar) {}

  /** The one wider bore that helps most. */
  record Help(String element, String bore, double gainBar, boolean isEnough) {}

  /** The least pressure at which the tool works as it should, the highest of those it can be. */
  GaugePressure needed() {
    return tool.requirement().least();
  }

  Restriction restriction() {
    return result.fold(
        delivered -> {
          ElementLoss most = delivered.bottleneck();
          return new Restriction(most.name(), Optional.of(most.gain().bar()));
        },
        starved -> new Restriction(starved.element(), Optional.empty()));
  }

  /** Whether the tool can get more than its maker allows. */
  String limit() {
    Optional<GaugePressure> told = tool.requirement().toolRating();
    if (told.isEmpty()) {
      return "not told";
    }
    GaugePressure allowed = told.get();
    if (place.requirement().highest().compareTo(allowed) <= 0) {
      return "met";
    }
    return set.isPresent() && set.get().compareTo(allowed) <= 0
        ? "met while the regulator holds"
        : "not met";
  }

  /** What a wider bore would bring, and how many sizes wider it is. */
  private record Tried(Help help, int sizes) {

    /** Enough before too little; of those that are enough, the fewest sizes wider; then what gains most. */
    static final Comparator<Tried> WORSE = Comparator.<Tried, Boolean>comparing(
            each -> each.help().isEnough())
        .thenComparing(each -> each.help().isEnough() ? -each.sizes() : 0)
        .thenComparingDouble(each -> each.help().gainBar());
  }

  /**
   * The one pipe or hose of which a wider bore would help most: such that the tool has enough with the fewest sizes
   * more, else such that it gains most. Empty where nothing is wanted, or no wider bore brings anything.
   */
  Optional<Help> help() {
    if (verdict.isMet()) {
      return Optional.empty();
    }
    double now = pascals(result);
    List<Tried> all = new ArrayList<>();
    for (String name : run.names()) {
      List<WiderHose> tried =
          WiderHose.tried(run, name, result.massFlow(), needed(), tool.units().system());
      if (!tried.isEmpty()) {
        WiderHose last = tried.get(tried.size() - 1);
        double gain = (pascals(last.result()) - now) / PASCALS_PER_BAR;
        if (gain > 0.0) {
          Help help = new Help(name, last.size().name().label(), gain, last.isEnough());
          all.add(new Tried(help, tried.size()));
        }
      }
    }
    return all.stream().max(Tried.WORSE).map(Tried::help);
  }

  /** The gauge pressure at the tool [Pa]; none where the air does not get there. */
  private static double pascals(RunResult result) {
    return result.fold(delivered -> delivered.atToolGauge().pascals(), starved -> 0.0);
  }

  /** What the pressure lost costs in a year; empty where the row tells no year, or the air does not get there. */
  Optional<Money> cost() {
    return result.fold(
        delivered -> place
            .year()
            .map(year -> year.plant()
                .ofDrop("the run", year.flow().massFlow(), delivered.lost())
                .money()),
        starved -> Optional.empty());
  }

  static BigDecimal rounded(Money money) {
    return money.amount().setScale(DECIMALS, RoundingMode.HALF_EVEN);
  }

  List<Caution> cautions() {
    return result.cautions(tool.units().system());
  }

  /** What was assumed, and what looks like a slip. */
  List<String> remarks() {
    return Stream.of(place.remarks().stream(), tool.remarks().stream(), notKnown.stream())
        .flatMap(told -> told)
        .distinct()
        .toList();
  }
}
