package org.airfit.jobsheet;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.air.AirState;
import org.airfit.files.NetworkJob;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.network.BranchFlow;
import org.airfit.network.Network;
import org.airfit.network.NetworkResult;
import org.airfit.network.SupplyFlow;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.Supply;
import org.airfit.quantity.ConductanceUnit;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.working.UnitSystem;

/**
 * One thing of a network that can be changed, in steps of which the first is the least: a regulator set higher, a
 * hose or pipe in the sizes that exist, a part that lets more through, a supply that holds more.
 */
final class NetworkLever {

  /** So many sizes above that of today are tried, and bores that are none of a size: our choice. */
  private static final int MOST_SIZES = 5;

  /** Of so many pipes and parts each is tried: our choice. */
  private static final int MOST_BRANCHES = 24;

  /** What a part is tried with, as a multiple of what it lets through now: our choice. */
  private static final List<Double> LARGER = List.of(1.25, 1.5, 2.0, 3.0, 4.0);

  /** A supply is tried up to this much of its gauge pressure: our choice. */
  private static final double HIGHEST_SUPPLY = 1.5;

  private static final double BAR = 1.0e5;

  /** A Cv is rounded up, so that a part of so much has what was tried. */
  private static final MathContext CV_DIGITS = new MathContext(3, RoundingMode.CEILING);

  /** One step: what becomes of the network, the words for it, and for a supply the highest pressure there is then. */
  private record Step(
      String words, UnaryOperator<Network> change, Optional<GaugePressure> highest) {

    Step(String words, UnaryOperator<Network> change) {
      this(words, change, Optional.empty());
    }
  }

  /** What is changed; a setting and a supply raise the pressure for all that is behind them. */
  enum Kind {
    SETTING,
    SIZE,
    SUPPLY
  }

  private final Kind kind;
  private final List<Step> steps;

  private NetworkLever(Kind kind, List<Step> steps) {
    this.kind = kind;
    this.steps = List.copyOf(steps);
  }

  /**
   * All of a network, what costs least first: settings, hoses, parts, pipes, supplies; that order is our choice. Of
   * very many pipes and parts those that lose most, as none can bring much more than it loses.
   *
   * @param isSettledBest whether no drop is short with the best of what is not known: then a part whose C is told is
   *     not to be changed, only its b to be asked
   */
  static List<NetworkLever> all(NetworkJob job, NetworkResult.Solved now, boolean isSettledBest) {
    Set<NetworkJob.Branch> most = job.branches().stream()
        .sorted(Comparator.comparingDouble(branch -> -loss(now, branch)))
        .limit(MOST_BRANCHES)
        .collect(Collectors.toSet());
    List<NetworkJob.Branch> branches =
        job.branches().stream().filter(most::contains).toList();
    return Stream.of(
            branches.stream()
                .flatMap(branch -> branch.regulator().stream()
                    .map(regulator -> regulator(job, now, branch.name(), regulator))),
            branches.stream()
                .filter(NetworkJob.Branch::isHose)
                .flatMap(branch -> branch.pipe().stream().map(hose -> line(job, branch, hose))),
            branches.stream()
                .filter(branch -> !isSettledBest || !isRatioAloneOpen(branch))
                .flatMap(branch ->
                    branch.part().stream().map(part -> part(branch.name(), part, job.units()))),
            branches.stream()
                .filter(branch -> !branch.isHose())
                .flatMap(branch -> branch.pipe().stream().map(pipe -> line(job, branch, pipe))),
            now.supplies().stream()
                .filter(supply -> !supply.idle())
                .map(supply -> supply(job, supply)))
        .flatMap(each -> each)
        .filter(lever -> lever.steps() > 0)
        .toList();
  }

  private static boolean isRatioAloneOpen(NetworkJob.Branch branch) {
    return branch
        .capacity()
        .filter(capacity -> !capacity.isExact()
            && capacity.least().conductance().equals(capacity.most().conductance()))
        .isPresent();
  }

  private static double loss(NetworkResult.Solved now, NetworkJob.Branch branch) {
    BranchFlow flow = now.through(branch.name());
    return Math.abs(flow.inlet().pascals() - flow.outlet().pascals());
  }

  /** How many steps it has. */
  int steps() {
    return steps.size();
  }

  /** A step in words, such as "slipway: a 13 mm hose instead of 10 mm". */
  String words(int step) {
    return steps.get(step).words();
  }

  /** The network with it at a step. */
  Network at(Network network, int step) {
    return steps.get(step).change().apply(network);
  }

  /** The highest pressure that can occur at a step, by which the work is judged; empty where it stays as it is. */
  Optional<GaugePressure> highest(int step) {
    return steps.get(step).highest();
  }

  /** What is changed. */
  Kind kind() {
    return kind;
  }

  private static NetworkLever line(NetworkJob job, NetworkJob.Branch branch, Conduit conduit) {
    NetworkAmounts amounts = new NetworkAmounts(job.units());
    String old = branch.isHose() ? amounts.hose(conduit.bore()) : amounts.bore(conduit.bore());
    return new NetworkLever(
        Kind.SIZE,
        Wider.all(conduit.bore(), job.units()).stream()
            .limit(MOST_SIZES)
            .map(wider -> new Step(
                branch.name() + ": " + wider.words() + " instead of " + old,
                network -> network.replacing(branch.name(), conduit.withBore(wider.bore()))))
            .toList());
  }

  private static NetworkLever part(String name, FlowCapacity part, UnitSystem units) {
    ConductanceUnit unit = ConductanceUnit.CUBIC_DECIMETRE_PER_SECOND_BAR;
    List<Step> steps = new ArrayList<>();
    for (double times : LARGER) {
      // the number is rounded up before it is solved with, so that what is told is what was tried
      SonicConductance more = SonicConductance.ofCubicMetresPerSecondPascal(
          unit.toSi(Math.ceil(10.0 * times * part.conductance().in(unit) - 1.0e-9) / 10.0));
      FlowCapacity larger = FlowCapacity.of(more, part.criticalPressureRatio())
          .withCrackingPressure(part.crackingPressure());
      steps.add(new Step(
          name + ": one of at least " + more.format(unit, 1) + cv(units, more) + " instead of "
              + part.conductance().format(unit, 1),
          network -> network.replacing(name, larger)));
    }
    return new NetworkLever(Kind.SIZE, steps);
  }

  /** Beside a conductance the Cv that US catalogues print, with which a part has it whatever its xT is. */
  private static String cv(UnitSystem units, SonicConductance conductance) {
    return units.either(
        "",
        " (a Cv of at least "
            + new BigDecimal(CapacityRange.coefficientFor(conductance).cv())
                .round(CV_DIGITS)
                .stripTrailingZeros()
                .toPlainString()
            + " has that)");
  }

  private static NetworkLever regulator(
      NetworkJob job, NetworkResult.Solved now, String name, RegulatorElement regulator) {
    NetworkAmounts amounts = new NetworkAmounts(job.units());
    GaugePressure set = GaugePressure.of(regulator.set(), job.atmosphere());
    GaugePressure inFront = GaugePressure.of(now.through(name).inlet(), job.atmosphere());
    return new NetworkLever(
        Kind.SETTING,
        settings(job, set, inFront.pascals()).stream()
            .map(higher -> new Step(
                name + ": set to " + amounts.pressure(higher) + " instead of "
                    + amounts.pressure(set),
                network ->
                    network.replacing(name, regulator.withSet(higher.absolute(job.atmosphere())))))
            .toList());
  }

  private static NetworkLever supply(NetworkJob job, SupplyFlow supply) {
    NetworkAmounts amounts = new NetworkAmounts(job.units());
    AirState air = supply.supply().still();
    GaugePressure held = GaugePressure.of(air.pressure(), job.atmosphere());
    return new NetworkLever(
        Kind.SUPPLY,
        settings(job, held, HIGHEST_SUPPLY * held.pascals()).stream()
            .map(higher -> {
              GaugePressure highest =
                  job.highest().plus(PressureDrop.ofPascals(higher.pascals() - held.pascals()));
              return new Step(
                  job.supplyAt(supply.node()) + ": one that holds " + amounts.pressure(higher)
                      + " instead of " + amounts.pressure(held),
                  network -> network.replacing(
                      supply.node(),
                      Supply.fixed(
                          AirState.of(higher.absolute(job.atmosphere()), air.temperature())),
                      highest),
                  Optional.of(highest));
            })
            .toList());
  }

  /** Pressures that a gauge can be read to, above one and up to another: tenths of a bar, or whole psi. */
  private static List<GaugePressure> settings(NetworkJob job, GaugePressure above, double upTo) {
    double step = job.units().either(0.1 * BAR, GaugePressure.ofPsi(1.0).pascals());
    List<GaugePressure> settings = new ArrayList<>();
    for (long number = (long) Math.floor(above.pascals() / step + 1.0e-6) + 1;
        number * step <= upTo;
        number++) {
      settings.add(GaugePressure.ofPascals(number * step));
    }
    return settings;
  }
}
