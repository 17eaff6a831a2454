package org.airfit.examples.jobsheet;

import java.util.List;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.line.PipeDuty;
import org.airfit.network.Network;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;

/** A network as a file tells it: pipes and parts between junctions, and drops with a tool at each. */
record NetworkJob(
    String title,
    String customer,
    AbsolutePressure atmosphere,
    AirState supply,
    Network network,
    List<Branch> branches,
    List<Drop> drops) {

  /** A pipe or a part, with what stands in the file; of a drop, its pipe and its coupling. */
  record Branch(
      String name, Optional<PipeDuty> duty, Optional<Conduit> pipe, Optional<FlowCapacity> part) {}

  /** A drop: the pressure its tool needs. */
  record Drop(String name, String tool, GaugePressure needs, double use) {}
}
