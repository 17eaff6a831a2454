package org.airfit.files;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.line.PipeDuty;
import org.airfit.network.Network;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.working.UnitSystem;

/**
 * A network as a file tells it: pipes and parts between junctions, and drops with a tool at each.
 *
 * @param title what the network is called
 * @param customer whose network it is
 * @param atmosphere the pressure around it
 * @param supply the air at the supply of the highest pressure
 * @param highest the highest pressure that can occur, by which the work is judged
 * @param network the network
 * @param branches its pipes and parts, in the order of the file
 * @param drops its drops, in the order of the file; the first tools of the network are theirs, in this order
 * @param leaks its leaks, in the order of the file; the other tools of the network
 * @param supplyNames what people call its supplies, by their junction; those without a name are missing
 * @param units the units of its sheet
 * @param asFiled what its file said; empty where it is of no file
 */
public record NetworkJob(
    String title,
    String customer,
    AbsolutePressure atmosphere,
    AirState supply,
    GaugePressure highest,
    Network network,
    List<Branch> branches,
    List<Drop> drops,
    List<Leak> leaks,
    Map<String, String> supplyNames,
    UnitSystem units,
    Optional<AsFiled> asFiled) {

  /**
   * Copies the lists; refuses what is null.
   *
   * @param title what the network is called
   * @param customer whose network it is
   * @param atmosphere the pressure around it
   * @param supply the air at the supply of the highest pressure
   * @param highest the highest pressure that can occur, by which the work is judged
   * @param network the network
   * @param branches its pipes and parts, in the order of the file
   * @param drops its drops, in the order of the file; the first tools of the network are theirs, in this order
   * @param leaks its leaks, in the order of the file; the other tools of the network
   * @param supplyNames what people call its supplies, by their junction; those without a name are missing
   * @param units the units of its sheet
   * @param asFiled what its file said; empty where it is of no file
   */
  public NetworkJob {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(customer, "customer");
    Objects.requireNonNull(atmosphere, "atmosphere");
    Objects.requireNonNull(supply, "supply");
    Objects.requireNonNull(highest, "highest");
    Objects.requireNonNull(network, "network");
    branches = List.copyOf(Objects.requireNonNull(branches, "branches"));
    drops = List.copyOf(Objects.requireNonNull(drops, "drops"));
    leaks = List.copyOf(Objects.requireNonNull(leaks, "leaks"));
    supplyNames = Map.copyOf(Objects.requireNonNull(supplyNames, "supplyNames"));
    Objects.requireNonNull(units, "units");
    Objects.requireNonNull(asFiled, "asFiled");
  }

  /**
   * {@return the same network with the best of what is not known exactly of its pipes and parts, as {@link #network}
   * has the worst; empty where all is known exactly}
   */
  public Optional<Network> networkAtBest() {
    if (branches.stream().allMatch(Branch::isExact)) {
      return Optional.empty();
    }
    Network best = network;
    for (Branch branch : branches) {
      if (!branch.isExact()) {
        best = branch.atBest(best);
      }
    }
    return Optional.of(best);
  }

  /**
   * Says which supply stands at a junction.
   *
   * @param junction the junction
   * @return its name and the junction, such as "screw compressor (at room)"; without a name "the supply at room"
   */
  public String supplyAt(String junction) {
    String name = supplyNames.get(Objects.requireNonNull(junction, "junction"));
    return name == null ? "the supply at " + junction : name + " (at " + junction + ")";
  }

  /**
   * A pipe or a part, with what stands in the file; of a drop, its pipe and its coupling.
   *
   * @param name its name, unique in the network
   * @param duty what a pipe serves, by which its velocity is judged; empty of a hose and for anything else
   * @param told the pipe or hose as well as the file tells it; empty for anything else
   * @param capacity the flow capacity of a part, a check valve or a regulator as well as the file tells it; empty for
   *     anything else
   * @param regulator the regulator as it is reckoned with; empty for anything else
   */
  public record Branch(
      String name,
      Optional<PipeDuty> duty,
      Optional<ConduitRange> told,
      Optional<CapacityRange> capacity,
      Optional<RegulatorElement> regulator) {

    static Branch ofPipe(String name, PipeDuty duty, ConduitRange told) {
      return new Branch(
          name, Optional.of(duty), Optional.of(told), Optional.empty(), Optional.empty());
    }

    /** A hose: rules of velocity are for pipe. */
    static Branch ofHose(String name, ConduitRange told) {
      return new Branch(
          name, Optional.empty(), Optional.of(told), Optional.empty(), Optional.empty());
    }

    /** {@return the pipe or hose as it is reckoned with: what lets least through of all that was told} */
    public Optional<Conduit> pipe() {
      return told.map(ConduitRange::least);
    }

    /** {@return the capacity of a part or a check valve as it is reckoned with: the least that was told} */
    public Optional<FlowCapacity> part() {
      return regulator.isPresent() ? Optional.empty() : capacity.map(CapacityRange::least);
    }

    /** {@return whether all of it is known exactly} */
    public boolean isExact() {
      return told.map(ConduitRange::isExact).orElse(true)
          && capacity.map(CapacityRange::isExact).orElse(true)
          && !isDroopUntold();
    }

    /** A network with this branch at its best: what lets most through of all that was told, and droops least. */
    Network atBest(Network network) {
      Network best = network;
      if (told.isPresent()) {
        best = best.replacing(name, told.get().most());
      }
      if (regulator.isPresent()) {
        RegulatorElement worst = regulator.get();
        RegulatorElement open = RegulatorElement.of(capacity.orElseThrow().most(), worst.set());
        return best.replacing(
            name,
            worst
                .curve()
                .map(curve -> open.withCurve(curve, worst.droop()))
                .or(() -> worst.atFlow().map(flow -> open.withDroop(worst.droop(), flow)))
                .orElse(open));
      }
      return capacity.isPresent() ? best.replacing(name, capacity.get().most()) : best;
    }

    /** {@return whether it is a hose} */
    public boolean isHose() {
      return told.isPresent() && duty.isEmpty();
    }

    /** {@return whether it is a regulator of which nobody told the droop: it is reckoned at the most it may be} */
    public boolean isDroopUntold() {
      return regulator
          .filter(each -> each.atFlow().isEmpty() && each.curve().isEmpty())
          .isPresent();
    }

    static Branch ofPart(String name, CapacityRange capacity) {
      return new Branch(
          name, Optional.empty(), Optional.empty(), Optional.of(capacity), Optional.empty());
    }

    static Branch ofRegulator(String name, RegulatorElement regulator, CapacityRange capacity) {
      return new Branch(
          name, Optional.empty(), Optional.empty(), Optional.of(capacity), Optional.of(regulator));
    }

    /**
     * Refuses what is null.
     *
     * @param name its name, unique in the network
     * @param duty what a pipe serves; empty for anything else
     * @param told the pipe or hose as well as the file tells it; empty for anything else
     * @param capacity the flow capacity of a part, a check valve or a regulator; empty for anything else
     * @param regulator the regulator; empty for anything else
     */
    public Branch {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(duty, "duty");
      Objects.requireNonNull(told, "told");
      Objects.requireNonNull(capacity, "capacity");
      Objects.requireNonNull(regulator, "regulator");
    }
  }

  /**
   * A leak: air that escapes as if a tool that takes more at more pressure stood there.
   *
   * @param name what the leak is called
   * @param junction where it is
   * @param air the free air that escapes
   * @param at the pressure at which so much escapes
   */
  public record Leak(String name, String junction, FreeAirFlow air, GaugePressure at) {

    /**
     * Refuses what is null.
     *
     * @param name what the leak is called
     * @param junction where it is
     * @param air the free air that escapes
     * @param at the pressure at which so much escapes
     */
    public Leak {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(junction, "junction");
      Objects.requireNonNull(air, "air");
      Objects.requireNonNull(at, "at");
    }
  }

  /**
   * A drop and the tool at its end.
   *
   * @param name the name of the drop, unique in the network
   * @param tool what the tool is
   * @param needs the pressure the tool needs
   * @param use the part of the time it runs, in [0, 1]
   */
  public record Drop(String name, String tool, GaugePressure needs, double use) {

    /**
     * Refuses what is null.
     *
     * @param name the name of the drop, unique in the network
     * @param tool what the tool is
     * @param needs the pressure the tool needs
     * @param use the part of the time it runs, in [0, 1]
     */
    public Drop {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(tool, "tool");
      Objects.requireNonNull(needs, "needs");
    }
  }
}
