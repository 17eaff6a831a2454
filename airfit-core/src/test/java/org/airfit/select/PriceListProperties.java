package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.airfit.air.AirState;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.line.Conduit;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;

class PriceListProperties {

  /** Choked flow of a nozzle without loss, dm³/(s·bar) for each mm², and Kv of its jet of water, m³/h for each mm². */
  private static final double AIR = 0.19936;

  private static final double WATER = 3600.0e-6 * Math.sqrt(2.0e5 / 1000.0);

  private static final ReferenceSet BIRDS = DemoProfiles.birds();

  private static double printed(double value) {
    return new BigDecimal(value).round(new MathContext(2)).doubleValue();
  }

  private static double between(Random random, double least, double most) {
    return least + random.nextDouble() * (most - least);
  }

  /**
   * A part as physics makes it: air and water contract behind its narrowest place, water to 0.61 at least and choked
   * air by 0.84/0.61 less at most (a sharp edge into a vacuum, from memory: Cunningham 1951); friction takes of both;
   * what widens gently behind it gives water pressure back, so that its Kv is up to three times as large. Then all is
   * printed with two digits, the bore to half a millimetre.
   */
  @Property(tries = 2000)
  void no_part_that_physics_makes_is_called_impossible(@ForAll long seed) {
    Random random = new Random(seed);
    double bore = between(random, 2.0, 30.0);
    double area = Math.PI / 4.0 * bore * bore;
    double water = between(random, 0.61, 1.0);
    double air = between(random, water, Math.min(1.0, water * 0.84 / 0.61));
    double friction = between(random, 0.2, 1.0);
    double back = random.nextBoolean() ? 1.0 : between(random, 1.0, 3.0);
    double c = AIR * area * air * friction;
    double kv = WATER * area * water * friction * back;
    double bar = between(random, 3.0, 17.0);
    AirState inlet = AirState.of(AbsolutePressure.ofBar(bar), Temperature.ofCelsius(20.0));
    double flow = c * bar * between(random, 0.9, 1.0);
    Part.Socket socket = new Part.Socket(
        Shelf.steel("S"),
        Set.of(BIRDS.profiles().get(0).id()),
        End.parse("3/8 NPT male"),
        FlowCapacity.of(
            SonicConductance.ofCubicDecimetresPerSecondBar(printed(c)), between(random, 0.0, 0.9)));
    ListedPart listed = new ListedPart(
        socket,
        Optional.of(ValveCoefficient.ofKv(printed(kv))),
        Optional.of(Length.ofMillimetres(Math.round(2.0 * bore) / 2.0)),
        Optional.of(
            new ListedPart.FullFlow(FreeAirFlow.ofAnrLitresPerSecond(printed(flow)), inlet)));
    assertThat(PriceListCheck.of(PriceList.of(List.of(listed), BIRDS)).faults())
        .as("bore " + bore + " mm, C " + c + ", Kv " + kv)
        .noneMatch(ListFault::isImpossible);
  }

  /** What lies a third above each bound is called impossible, whatever the size. */
  @Property(tries = 300)
  void what_lies_a_third_above_a_bound_is_called_impossible(@ForAll long seed) {
    Random random = new Random(seed);
    double bore = between(random, 5.0, 30.0);
    double c = 1.33 * AIR * Math.PI / 4.0 * bore * bore;
    Part.Socket socket = new Part.Socket(
        Shelf.steel("S"),
        Set.of(BIRDS.profiles().get(0).id()),
        End.parse("3/8 NPT male"),
        FlowCapacity.of(
            SonicConductance.ofCubicDecimetresPerSecondBar(c), between(random, 0.0, 0.9)));
    ListedPart listed = new ListedPart(
        socket,
        Optional.of(ValveCoefficient.ofKv(c / (1.33 * 5.71))),
        Optional.of(Length.ofMillimetres(bore)),
        Optional.empty());
    assertThat(PriceListCheck.of(PriceList.of(List.of(listed), BIRDS)).faults())
        .filteredOn(ListFault::isImpossible)
        .extracting(ListFault::kind)
        .containsExactlyInAnyOrder(FaultKind.C_AGAINST_CV, FaultKind.ABOVE_CHOKING);
  }

  /** Every chain of up to three adapters is built, one after the other. */
  @Property(tries = 60)
  void an_adapter_is_an_orphan_where_no_chain_that_is_built_has_it(@ForAll long seed) {
    Random random = new Random(seed);
    List<String> words = new ArrayList<>();
    for (String size : List.of("1/2", "1", "1-1/2", "2", "3")) {
      words.add(size + " NPT male");
      words.add(size + " NPT female");
    }
    List<Part.Adapter> adapters = new ArrayList<>();
    List<ListedPart> articles = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      Part.Adapter adapter = new Part.Adapter(
          Shelf.steel("A" + i),
          End.parse(words.get(random.nextInt(words.size()))),
          End.parse(words.get(random.nextInt(words.size()))),
          Conduit.of(
              Length.ofMillimetres(9.0), Length.ofMillimetres(30.0), Length.ofMillimetres(0.1)));
      adapters.add(adapter);
      articles.add(ListedPart.of(adapter));
    }
    End there = End.parse(words.get(random.nextInt(words.size())));
    End usual = End.parse(words.get(random.nextInt(words.size())));
    PlugProfile profile = BIRDS.profiles().get(0);
    articles.add(ListedPart.of(new Part.Plug(Shelf.steel("P"), profile.id(), there)));
    PriceList plain = PriceList.of(articles, BIRDS);
    PriceList list =
        new PriceList(articles, BIRDS, plain.caliper(), plain.risk(), List.of(), List.of(usual));
    Set<String> used = new HashSet<>();
    for (End from : List.of(there, usual)) {
      build(from, List.of(there, usual), adapters, new ArrayList<>(), used);
    }
    Set<String> orphans = new HashSet<>();
    for (ListFault fault : PriceListCheck.of(list).faults()) {
      if (fault.kind() == FaultKind.ORPHAN_ADAPTER) {
        orphans.addAll(fault.articles());
      }
    }
    for (Part.Adapter adapter : adapters) {
      assertThat(orphans.contains(adapter.id()))
          .as(adapter.toString())
          .isEqualTo(!used.contains(adapter.id()));
    }
  }

  /** Puts adapters on an end, one on the other, and notes those of each chain that comes to a goal. */
  private static void build(
      End end, List<End> goals, List<Part.Adapter> adapters, List<String> chain, Set<String> used) {
    if (!chain.isEmpty()) {
      for (End goal : goals) {
        if (Mating.of(end, goal).verdict().isSound()) {
          used.addAll(chain);
        }
      }
    }
    if (chain.size() == 3) {
      return;
    }
    for (Part.Adapter adapter : adapters) {
      List<String> longer = new ArrayList<>(chain);
      longer.add(adapter.id());
      if (Mating.of(end, adapter.one()).verdict().isSound()) {
        build(adapter.other(), goals, adapters, longer, used);
      }
      if (Mating.of(end, adapter.other()).verdict().isSound()) {
        build(adapter.one(), goals, adapters, longer, used);
      }
    }
  }
}
