package org.airfit.files;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.PipeDuty;
import org.airfit.network.Network;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;

/**
 * A network as a file tells it: pipes and parts between junctions, and drops with a tool at each.
 *
 * @param title what the network is called
 * @param customer whose network it is
 * @param atmosphere the pressure around it
 * @param supply the air at the supply of the highest pressure
 * @param network the network
 * @param branches its pipes and parts, in the order of the file
 * @param drops its drops, in the order of the file, which is that of the network's tools
 */
public record NetworkJob(
    String title,
    String customer,
    AbsolutePressure atmosphere,
    AirState supply,
    Network network,
    List<Branch> branches,
    List<Drop> drops) {

  /**
   * Copies the lists; refuses what is null.
   *
   * @param title what the network is called
   * @param customer whose network it is
   * @param atmosphere the pressure around it
   * @param supply the air at the supply of the highest pressure
   * @param network the network
   * @param branches its pipes and parts, in the order of the file
   * @param drops its drops, in the order of the file, which is that of the network's tools
   */
  public NetworkJob {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(customer, "customer");
    Objects.requireNonNull(atmosphere, "atmosphere");
    Objects.requireNonNull(supply, "supply");
    Objects.requireNonNull(network, "network");
    branches = List.copyOf(Objects.requireNonNull(branches, "branches"));
    drops = List.copyOf(Objects.requireNonNull(drops, "drops"));
  }

  /**
   * A pipe or a part, with what stands in the file; of a drop, its pipe and its coupling.
   *
   * @param name its name, unique in the network
   * @param duty what a pipe serves; empty for a part
   * @param pipe the pipe; empty for a part
   * @param part the flow capacity of a part; empty for a pipe
   */
  public record Branch(
      String name, Optional<PipeDuty> duty, Optional<Conduit> pipe, Optional<FlowCapacity> part) {

    /**
     * Refuses what is null.
     *
     * @param name its name, unique in the network
     * @param duty what a pipe serves; empty for a part
     * @param pipe the pipe; empty for a part
     * @param part the flow capacity of a part; empty for a pipe
     */
    public Branch {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(duty, "duty");
      Objects.requireNonNull(pipe, "pipe");
      Objects.requireNonNull(part, "part");
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
