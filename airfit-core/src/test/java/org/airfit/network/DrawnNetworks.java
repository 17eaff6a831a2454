package org.airfit.network;

import java.util.LinkedHashSet;
import java.util.Random;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.line.Conduit;
import org.airfit.plant.Regulator;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.run.ToolDemand;

/** Networks drawn at random; the same seed gives the same network. All sizes and shares are our choice. */
final class DrawnNetworks {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final double[] HEADERS = {12, 16, 22, 28, 42, 54, 80}; // bores [mm]
  private static final double[] DROPS = {9, 12, 16, 22};
  private static final double[] HOSES = {4, 6, 8, 10, 13};

  private DrawnNetworks() {}

  private static Conduit pipe(double millimetres, double metres) {
    return Conduit.of(
        Length.ofMillimetres(millimetres), Length.ofMetres(metres), Length.ofMillimetres(0.0015));
  }

  static FreeAirFlow air(double kilogramsPerSecond) {
    return FreeAirFlow.from(
        MassFlow.ofKilogramsPerSecond(kilogramsPerSecond), ReferenceState.COMPRESSOR_INLET);
  }

  private static FlowCapacity part(double conductance, double b) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(conductance), b);
  }

  /** Drawn evenly in the logarithm. */
  private static double between(Random random, double least, double most) {
    return least * Math.pow(most / least, random.nextDouble());
  }

  private static double one(Random random, double[] of) {
    return of[random.nextInt(of.length)];
  }

  /** A header, every second time closed to a ring, with up to three supplies and two ways across, drops and tools. */
  static NetworkLaws shop(long seed) {
    Random random = new Random(seed);
    NetworkLaws laws = new NetworkLaws(ATMOSPHERE);
    int nodes = 3 + random.nextInt(20);
    supplies(random, laws, nodes);
    double bore = one(random, HEADERS);
    int mains = random.nextBoolean() ? nodes : nodes - 1;
    for (int i = 0; i < mains; i++) {
      laws.line(
          "main " + i, "h" + i, "h" + (i + 1) % nodes, pipe(bore, between(random, 1.0, 30.0)));
    }
    int across = nodes > 4 ? random.nextInt(3) : 0;
    for (int i = 0; i < across; i++) {
      int from = random.nextInt(nodes);
      int to = (from + 2 + random.nextInt(nodes - 3)) % nodes;
      laws.line(
          "across " + i,
          "h" + from,
          "h" + to,
          pipe(one(random, DROPS), between(random, 2.0, 30.0)));
    }
    for (int i = 0; i < nodes; i++) {
      if (random.nextInt(4) > 0) {
        drop(random, laws, i);
      }
    }
    return laws;
  }

  private static void supplies(Random random, NetworkLaws laws, int nodes) {
    int count = Math.min(nodes, 1 + random.nextInt(3));
    Set<Integer> at = new LinkedHashSet<>();
    while (at.size() < count) {
      at.add(random.nextInt(nodes));
    }
    double highest = 6.5 + 2.0 * random.nextDouble();
    for (int i : at) {
      double bar = random.nextInt(3) == 0 ? highest : highest - 0.5 * random.nextDouble();
      AirState still = AirState.of(AbsolutePressure.ofBar(bar), Temperature.ofCelsius(20.0));
      Supply drooping =
          new Regulator(still, air(between(random, 0.005, 0.1)), AbsolutePressure.ofBar(bar - 0.3));
      laws.supply("h" + i, random.nextInt(3) < 2 ? Supply.fixed(still) : drooping);
    }
  }

  /**
   * A short wide header, every second time closed to a ring, with two to four supplies at one pressure and few tools,
   * so that what flows from supply to supply loses less than a last digit of the pressure.
   */
  static NetworkLaws alike(long seed) {
    Random random = new Random(seed);
    NetworkLaws laws = new NetworkLaws(ATMOSPHERE);
    int nodes = 2 + random.nextInt(5);
    int count = Math.min(nodes, 2 + random.nextInt(3));
    AirState still = AirState.of(
        AbsolutePressure.ofBar(between(random, 2.0, 15.0)), Temperature.ofCelsius(20.0));
    int first = random.nextInt(nodes);
    for (int i = 0; i < count; i++) {
      laws.supply("h" + (first + i) % nodes, Supply.fixed(still));
    }
    int mains = nodes > 2 && random.nextBoolean() ? nodes : nodes - 1;
    for (int i = 0; i < mains; i++) {
      laws.line(
          "main " + i, "h" + i, "h" + (i + 1) % nodes, pipe(100.0, between(random, 0.2, 20.0)));
    }
    for (int i = 0; i < nodes; i++) {
      if (random.nextInt(3) == 0) {
        laws.line("hose " + i, "h" + i, "t" + i, pipe(one(random, HOSES), 10.0));
        laws.tool("t" + i, ToolDemand.fixed("gun " + i, air(between(random, 1.0e-6, 0.01))));
      }
    }
    return laws;
  }

  private static void drop(Random random, NetworkLaws laws, int i) {
    laws.line("drop " + i, "h" + i, "o" + i, pipe(one(random, DROPS), between(random, 2.0, 8.0)));
    laws.part(
        "coupling " + i,
        "o" + i,
        "k" + i,
        part(between(random, 0.5, 10.0), 0.1 + 0.4 * random.nextDouble()));
    laws.line("hose " + i, "k" + i, "t" + i, pipe(one(random, HOSES), between(random, 1.0, 20.0)));
    double flow = between(random, 1.0e-5, 0.02);
    ToolDemand tool = random.nextBoolean()
        ? ToolDemand.fixed("gun " + i, air(flow))
        : ToolDemand.following("tool " + i, air(flow), AbsolutePressure.ofBar(7.2));
    double load = random.nextInt(3) == 0 ? 0.0 : random.nextBoolean() ? 1.0 : random.nextDouble();
    laws.tool("t" + i, tool.withLoad(load));
  }

  /** A tree of pipes and parts from a supply, with more branches across it, and tools of both kinds at most nodes. */
  static NetworkLaws wild(long seed) {
    Random random = new Random(seed);
    int nodes = 2 + random.nextInt(38);
    int across = random.nextInt(15);
    NetworkLaws laws = new NetworkLaws(ATMOSPHERE)
        .supply(
            "n0",
            Supply.fixed(AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0))));
    for (int i = 1; i < nodes + across; i++) {
      int from = i < nodes ? random.nextInt(i) : random.nextInt(nodes);
      int to = i < nodes ? i : (from + 1 + random.nextInt(nodes - 1)) % nodes;
      if (random.nextInt(3) == 0) {
        laws.part("b" + i, "n" + from, "n" + to, part(0.3 + 10.0 * random.nextDouble(), 0.3));
      } else {
        laws.line(
            "b" + i,
            "n" + from,
            "n" + to,
            pipe(5.0 + 40.0 * random.nextDouble(), 0.5 + 30.0 * random.nextDouble()));
      }
    }
    for (int i = 1; i < nodes; i++) {
      double flow = between(random, 1.0e-5, 0.03);
      if (random.nextInt(3) > 0) {
        laws.tool(
            "n" + i,
            random.nextBoolean()
                ? ToolDemand.fixed("gun " + i, air(flow))
                : ToolDemand.following("tool " + i, air(flow), AbsolutePressure.ofBar(7.0)));
      }
    }
    return laws;
  }

  /**
   * A works: a header, every second time closed to a ring, up to three supplies behind check valves, a part of the header
   * behind a regulator or a check valve, and drops with and without a regulator.
   */
  static NetworkLaws works(long seed) {
    Random random = new Random(seed);
    NetworkLaws laws = new NetworkLaws(ATMOSPHERE);
    int nodes = 3 + random.nextInt(16);
    int supplies = 1 + random.nextInt(3);
    for (int i = 0; i < supplies; i++) {
      AirState still = AirState.of(
          AbsolutePressure.ofBar(7.0 + random.nextDouble()), Temperature.ofCelsius(20.0));
      laws.supply("s" + i, Supply.fixed(still));
      // the first always feeds the beginning, so that every node is fed
      String to = "h" + (i == 0 ? 0 : random.nextInt(nodes));
      double cracking = random.nextBoolean() ? 0.0 : 0.1 * random.nextDouble();
      laws.checkValve(
          "check " + i,
          "s" + i,
          to,
          part(between(random, 10.0, 100.0), 0.3)
              .withCrackingPressure(PressureDrop.ofBar(cracking)));
    }
    double bore = one(random, HEADERS);
    int valved = random.nextInt(nodes); // the header beyond it is behind a valve
    int mains = random.nextBoolean() ? nodes : nodes - 1;
    for (int i = 0; i < mains; i++) {
      String to = "h" + (i + 1) % nodes;
      String end = i == valved ? "v" : to;
      laws.line("main " + i, "h" + i, end, pipe(bore, between(random, 1.0, 30.0)));
      if (i == valved && random.nextBoolean()) {
        regulator(random, laws, "zone", "v", to, between(random, 5.0, 50.0));
      } else if (i == valved) {
        laws.checkValve("zone", "v", to, part(between(random, 5.0, 50.0), 0.3));
      }
    }
    for (int i = 0; i < nodes; i++) {
      if (random.nextInt(4) > 0) {
        regulated(random, laws, i);
      }
    }
    return laws;
  }

  private static void regulator(
      Random random, NetworkLaws laws, String name, String from, String to, double conductance) {
    double droop = random.nextBoolean() ? 0.0 : between(random, 1.0e5, 1.0e7);
    laws.regulator(
        name,
        from,
        to,
        part(conductance, 0.2 + 0.3 * random.nextDouble()),
        AbsolutePressure.ofBar(3.0 + 4.5 * random.nextDouble()),
        droop);
  }

  private static void regulated(Random random, NetworkLaws laws, int i) {
    laws.line("drop " + i, "h" + i, "o" + i, pipe(one(random, DROPS), between(random, 2.0, 8.0)));
    if (random.nextBoolean()) {
      regulator(random, laws, "set " + i, "o" + i, "k" + i, between(random, 1.0, 20.0));
    } else {
      laws.part("coupling " + i, "o" + i, "k" + i, part(between(random, 0.5, 10.0), 0.3));
    }
    laws.line("hose " + i, "k" + i, "t" + i, pipe(one(random, HOSES), between(random, 1.0, 20.0)));
    double flow = between(random, 1.0e-5, 0.02);
    ToolDemand tool = random.nextBoolean()
        ? ToolDemand.fixed("gun " + i, air(flow))
        : ToolDemand.following("tool " + i, air(flow), AbsolutePressure.ofBar(6.0));
    laws.tool("t" + i, tool.withLoad(random.nextInt(3) == 0 ? 0.0 : 1.0));
  }
}
