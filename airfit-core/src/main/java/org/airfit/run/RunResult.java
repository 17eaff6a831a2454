package org.airfit.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.air.AirState;
import org.airfit.internal.Later;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.MassFlowUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.PressureUnit;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.PencilCard;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/** What becomes of a flow on its way to the tool: it is delivered at a pressure, or an element stops it. */
public sealed interface RunResult extends Worked {

  /**
   * Handles both cases.
   *
   * @param <R> what is made of them
   * @param delivered what to make of a flow that arrives
   * @param starved what to make of a flow that does not
   * @return what was made
   */
  <R> R fold(
      Function<? super Delivered, ? extends R> delivered,
      Function<? super Starved, ? extends R> starved);

  /** {@return the flow asked for, or the flow that a tool and the run agree on} */
  MassFlow massFlow();

  /** {@return the warnings that go with it} */
  default List<Caution> cautions() {
    return cautions(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return the warnings that go with it
   */
  List<Caution> cautions(UnitSystem units);

  /**
   * The flow arrives.
   *
   * <p>This class is immutable, thread-safe and value-based.
   */
  final class Delivered implements RunResult {

    private static final Source SUM =
        Source.derived("the drops of the elements, one after another");

    /** What a computed loss may be too small by, as a part of it; see {@link #justEnough}. */
    private static final double LEFT_OUT = 0.1;

    /**
     * What a usual gauge may be off: 1.6 % of its range of 0 to 10 bar, which is class 1.6 of EN 837-1:1996 (accuracy
     * classes, from memory). That a gauge is of this class and range is common practice, no source.
     */
    public static final PressureDrop GAUGE_ERROR = PressureDrop.ofPascals(0.016 * 10.0e5);

    private static final Symbol AT_SUPPLY = Symbol.of("ps", ValueKind.SAID_PRESSURE);
    private static final Symbol AT_TOOL = Symbol.of("pt", ValueKind.SAID_PRESSURE);

    private final Arrival arrival;

    Delivered(Arrival arrival) {
      this.arrival = arrival;
    }

    /** The same as the answer for a tool that takes this flow. */
    Delivered to(ToolDemand tool) {
      return new Delivered(arrival.to(tool));
    }

    @Override
    public MassFlow massFlow() {
      return arrival.massFlow();
    }

    /** {@return the pressure at the supply} */
    public AbsolutePressure atSupply() {
      return arrival.atSupply();
    }

    /** {@return the pressure at the tool} */
    public AbsolutePressure atTool() {
      return arrival.atTool();
    }

    /**
     * {@return the jump of friction at which it stands: the pressure at the tool is then only one of those between two}
     *
     * <p>Empty but for the flow that a tool and the run agree on, and for the largest flow that still arrives at a
     * pressure.
     */
    public Optional<FrictionJump> jump() {
      return arrival.jump();
    }

    /** {@return the least pressure at the tool, on which a judgement counts: below {@link #atTool} at a jump alone} */
    public AbsolutePressure leastAtTool() {
      return arrival.jump().map(FrictionJump::least).orElse(arrival.atTool());
    }

    /** {@return the pressure at the tool as a gauge there shows it} */
    public GaugePressure atToolGauge() {
      return GaugePressure.of(arrival.atTool(), arrival.atmosphere());
    }

    /**
     * Tells what is left over where there is just enough: so little that it would be lost too if the elements lost a
     * tenth more than was computed. A tenth is our own choice: friction factors of commercial pipe and hose are told to
     * about that (from memory), and measured ones leave a smooth curve by half of it.
     *
     * @param needed the pressure that the tool needs
     * @return what is over, which may be nothing; empty where there is too little, or clearly enough
     */
    public Optional<PressureDrop> justEnough(GaugePressure needed) {
      double over =
          atToolGauge().pascals() - Objects.requireNonNull(needed, "needed").pascals();
      return over >= 0.0 && over < LEFT_OUT * arrival.lostByElements()
          ? Optional.of(PressureDrop.ofPascals(over))
          : Optional.empty();
    }

    /**
     * Tells what is left over where a usual gauge does not show it surely: less than {@link #GAUGE_ERROR}.
     *
     * @param needed the pressure that the tool needs
     * @return what is over, which may be nothing; empty where there is too little, or more than a gauge may be off
     */
    public Optional<PressureDrop> lessThanAGaugeShows(GaugePressure needed) {
      double over =
          atToolGauge().pascals() - Objects.requireNonNull(needed, "needed").pascals();
      return over >= 0.0 && over < GAUGE_ERROR.pascals()
          ? Optional.of(PressureDrop.ofPascals(over))
          : Optional.empty();
    }

    /** {@return what each element loses, in order from the supply} */
    public List<ElementLoss> shares() {
      return arrival.shares();
    }

    /**
     * Obtains what one element loses.
     *
     * @param element its name; no two elements of a run have the same
     * @return its share
     * @throws IllegalArgumentException if the run has no element of that name
     */
    public ElementLoss share(String element) {
      Objects.requireNonNull(element, "element");
      return arrival.shares().stream()
          .filter(share -> share.name().equals(element))
          .findFirst()
          .orElseThrow(() -> new IllegalArgumentException("element must be one of the run, of "
              + arrival.shares().stream().map(ElementLoss::name).toList()
              + ", was \"" + element + "\""));
    }

    @Override
    public List<Caution> cautions(UnitSystem units) {
      return RunPath.withAir(
          arrival.cautions(), arrival.supply().still(), Objects.requireNonNull(units, "units"));
    }

    /** {@return all that is lost between supply and tool, without what regulators take down to what they are set to} */
    public PressureDrop lost() {
      return PressureDrop.ofPascals(arrival.lost());
    }

    /** {@return the element without which the tool would gain most: the one that holds it back} */
    public ElementLoss bottleneck() {
      return arrival.bottleneck();
    }

    /**
     * Tells the {@link #bottleneck} and why it is that.
     *
     * @param units the units of its number
     * @return such as "hose. Without its loss the tool would gain most: 0.42 bar."
     */
    public String bottleneckInWords(UnitSystem units) {
      ElementLoss most = bottleneck();
      return most.name() + ". Without its loss the tool would gain most: "
          + Objects.requireNonNull(units, "units").say(most.gain()) + ".";
    }

    /** {@return what each element loses, the largest loss first} */
    public List<ElementLoss> ranked() {
      return arrival.shares().stream()
          .sorted(Comparator.comparing(ElementLoss::lost).reversed())
          .toList();
    }

    /**
     * {@return the element that chokes, if one does; where several do, the first of them, which holds the flow}
     *
     * <p>Those behind it choke at the low pressure that it leaves; {@link ElementLoss#chokes} tells of each.
     */
    public Optional<ElementLoss> choking() {
      return arrival.shares().stream().filter(ElementLoss::chokes).findFirst();
    }

    /** What the pressure behind a choking element is. */
    private String behindChoking(int element) {
      return arrival.shares().stream()
          .skip(element + 1L)
          .filter(ElementLoss::chokes)
          .findFirst()
          .map(next -> " is the least at which " + next.name() + " passes the flow.")
          .orElse(" is what the tool leaves of the flow.");
    }

    @Override
    public <R> R fold(
        Function<? super Delivered, ? extends R> delivered,
        Function<? super Starved, ? extends R> starved) {
      Objects.requireNonNull(starved, "starved");
      return Objects.requireNonNull(delivered, "delivered").apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      Working.Builder working = Working.titled("Pressure of the air from supply to tool", units);
      double given = arrival.supply().pascals(arrival.fromSupply().kilogramsPerSecond());
      if (given > arrival.atSupply().pascals()) {
        working.note("The supply gives this flow at any pressure from "
            + AbsolutePressure.ofPascals(given).format(units.pressureUnit())
            + " down: it sinks until the tool takes no more.");
      } else if (!arrival.supply().holds()) {
        working.include(arrival.supply().working(arrival.fromSupply(), units));
      }
      working.given(AT_SUPPLY, arrival.atSupply().pascals(), 6);
      List<Symbol> symbols = new ArrayList<>(List.of(AT_TOOL, AT_SUPPLY));
      StringBuilder lost = new StringBuilder();
      for (int i = 0; i < arrival.shares().size(); i++) {
        ElementLoss share = arrival.shares().get(i);
        Symbol drop =
            Symbol.of("Δp" + (i + 1), "\\Delta p_{" + (i + 1) + "}", ValueKind.SAID_PRESSURE);
        symbols.add(drop);
        lost.append(" − ⟨").append(drop.text()).append('⟩');
        working.note(share.name() + ": from " + share.inlet().format(units.pressureUnit()) + " to "
            + share.outlet().format(units.pressureUnit()));
        working.include(share.working(units));
        if (share.chokes()) {
          working.note(share.name() + " chokes: it lets no more through, and the pressure behind it"
              + behindChoking(i));
        }
        if (share.unsettled()) {
          working.note(
              share.name() + " is at Re 2300, where friction jumps: its loss lies between the"
                  + " laminar and the turbulent one.");
        }
        working.given(drop, share.drop().pascals(), 4);
      }
      working
          .step(
              Formula.of(
                  "Pressure at the tool",
                  "⟨pt⟩ = ⟨ps⟩" + lost,
                  SUM,
                  symbols.toArray(Symbol[]::new)),
              arrival.atTool().pascals(),
              4)
          .answer(AT_TOOL)
          .note("A gauge there shows " + atToolGauge().format(units.pressureUnit()) + ".");
      arrival
          .jump()
          .filter(jump -> jump.shows(units.pressureUnit()))
          .ifPresent(jump -> working.note(both(jump, units)));
      arrival
          .tool()
          .ifPresent(tool -> working
              .note(
                  "The flow was found by search: at the pressure that arrives, the tool takes it.")
              .include(tool.working(arrival.atTool(), arrival.atmosphere(), units)));
      return working.build();
    }

    /**
     * Obtains the same on one page for a pencil and a ruler: rounded values, short steps, the friction factor and the
     * curve of ISO 6358 read off figures, and how far the result can be from this one.
     *
     * <p>An element for which no pencil has an equation, such as a regulator, or one that chokes, keeps the drop that
     * was computed, and the card says so. What {@link #cautions} says goes with the card too.
     *
     * @param units the units to show numbers in
     * @return the card; its answers are the gauge pressure at the tool and how much lower that is than at the supply
     */
    public PencilCard pencilCard(UnitSystem units) {
      return RunCard.of(arrival, Objects.requireNonNull(units, "units"));
    }

    private static String both(FrictionJump jump, UnitSystem units) {
      return "No flow is steady here: laminar, the air arrives with "
          + jump.most().format(units.pressureUnit()) + ", turbulent with "
          + jump.least().format(units.pressureUnit()) + ". Count on the lower one.";
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Delivered that && arrival.equals(that.arrival);
    }

    @Override
    public int hashCode() {
      return arrival.hashCode();
    }

    /** {@return the answer in one line, such as "0.012 kg/s at 6.2 bar(g)"} */
    @Override
    public String toString() {
      return arrival.massFlow().format(MassFlowUnit.KILOGRAM_PER_SECOND) + " at "
          + atToolGauge().format(PressureUnit.BAR);
    }
  }

  /**
   * The flow cannot pass, whatever the tool does: an element chokes, or would need less than the atmosphere behind it, or
   * the supply does not give that much. Or it is not told whether it passes, where more flows through a regulator than
   * its maker's curve tells, see {@link #endOfCurve}.
   *
   * <p>What lets how much through, and what was lost before, is worked out when it is first asked for.
   *
   * <p>This class is immutable, thread-safe and value-based.
   */
  final class Starved implements RunResult {

    private record Stop(
        MassFlow massFlow,
        String element,
        AbsolutePressure inlet,
        Optional<FreeAirFlow> endOfCurve,
        Later<MassFlow> largest,
        Later<List<ElementLoss>> before,
        Later<Worked> reached,
        AirState still,
        Later<List<Caution>> cautions) {}

    private final Stop stop;

    Starved(
        MassFlow massFlow,
        String element,
        AbsolutePressure inlet,
        Optional<FreeAirFlow> endOfCurve,
        Later<MassFlow> largest,
        Later<List<ElementLoss>> before,
        Later<Worked> reached,
        AirState still,
        Later<List<Caution>> cautions) {
      this.stop =
          new Stop(massFlow, element, inlet, endOfCurve, largest, before, reached, still, cautions);
    }

    @Override
    public MassFlow massFlow() {
      return stop.massFlow;
    }

    /** {@return the element that stops it, or a regulator behind the end of its curve; "supply" where that gives no more} */
    public String element() {
      return stop.element;
    }

    /**
     * {@return the flow at which the maker's curve of a regulator ends, where {@link #element} is one through which more
     * flows, so that nobody told whether it holds enough to let the flow through; empty where the flow stops for sure}
     */
    public Optional<FreeAirFlow> endOfCurve() {
      return stop.endOfCurve;
    }

    /** {@return the pressure in front of it; of a supply, while nothing flows} */
    public AbsolutePressure inlet() {
      return stop.inlet;
    }

    /** {@return the largest flow it lets through from that pressure into the open, or at which its curve ends} */
    public MassFlow largest() {
      return stop.largest.get();
    }

    /** {@return what the elements before it lose; their gain is told as 0} */
    public List<ElementLoss> before() {
      return stop.before.get();
    }

    @Override
    public List<Caution> cautions(UnitSystem units) {
      return RunPath.withAir(
          stop.cautions.get(), stop.still, Objects.requireNonNull(units, "units"));
    }

    @Override
    public <R> R fold(
        Function<? super Delivered, ? extends R> delivered,
        Function<? super Starved, ? extends R> starved) {
      Objects.requireNonNull(delivered, "delivered");
      return Objects.requireNonNull(starved, "starved").apply(this);
    }

    @Override
    public Working working(UnitSystem units) {
      return stop.reached.get().working(units);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Starved that && stop.equals(that.stop);
    }

    @Override
    public int hashCode() {
      return stop.hashCode();
    }

    /** {@return the answer in one line, such as "0.2 kg/s does not pass hose, which lets 0.031 kg/s through"} */
    @Override
    public String toString() {
      if (stop.endOfCurve.isPresent()) {
        return stop.massFlow.format(MassFlowUnit.KILOGRAM_PER_SECOND) + " through " + stop.element
            + " is more than its curve tells, up to "
            + largest().format(MassFlowUnit.KILOGRAM_PER_SECOND);
      }
      return stop.massFlow.format(MassFlowUnit.KILOGRAM_PER_SECOND) + " does not pass "
          + stop.element + ", which lets "
          + largest().format(MassFlowUnit.KILOGRAM_PER_SECOND) + " through";
    }
  }
}
