package org.airfit.select;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.internal.Digits;
import org.airfit.joint.End;
import org.airfit.plant.Regulator;
import org.airfit.quantity.Area;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.working.UnitSystem;

/**
 * Holds the figures of the air of one part against each other.
 *
 * <pre>
 *   C ≤ C(Kv, xT = 1) 3/(2√2)      IEC 60534 with xT ≤ 1, and ISO 6358 with b ≥ 0
 *   C ≤ ψ (π/4) d² / (ρ0 √(R T0))  a discharge coefficient of 1 at most
 *   q ≤ C p1 √(T0/T1)              the full flow of a part is its choked flow at most
 * </pre>
 *
 * <p><b>C against Kv.</b> The choked flow of IEC 60534 rises with xT, and xT is a share of the inlet pressure, so 1 at
 * most. In ISO 6358 a small drop gives C √(2 s/(1 − b)), s = Δp/p1, which must be that of Kv as water and air of a
 * small drop flow alike: Kv = (2/3) √(2/(1 − b)) times the Kv at which C would be reached with xT = 1. It is least at b
 * = 0, 0.943 times. What exceeds even that fits no b and no xT. There is no bound on the other side: behind a passage
 * that widens gently b goes to 1 and Kv to any size, so a C that is small for Kv is never called impossible.
 *
 * <p><b>What printing rounds.</b> A figure of two digits is off by 5 % at most, two of them by 1.05² together; a bore
 * by a quarter of a millimetre, as if it were printed to the half. What lies above the bound by less than that is to be
 * checked, and is not called impossible. Both allowances are our own choice, and so is from where on a Kv that differs
 * from that of C and b is told.
 *
 * <p><b>Sources:</b> IEC 60534-2-1, ISO 6358-1 as {@link FlowCapacity} has them; the choked flow of a nozzle without
 * loss.
 */
final class FlowFaults {

  /** Two figures of two digits, each off by half of its last digit at worst [-]. */
  static final double ROUNDED = 1.05 * 1.05;

  /** What a printed bore may be off [m]. */
  static final double BORE_ROUNDED = 0.25e-3;

  /** How many times the Kv of C and b another Kv may be, or the other way round, before it is told [-]; our choice. */
  static final double FAR_OFF = 1.5;

  /** Kv of ISO 6358 at b = 0 over that of IEC 60534 at xT = 1, for the same C [-]. */
  static final double LEAST_SHARE = 2.0 * Math.sqrt(2.0) / 3.0;

  /** How many times the widest bore of its ends the bore of a part may be before it is told [-]; our choice. */
  static final double BEYOND_ENDS = 2.0;

  /** The widest bore [m] that is not told where no end tells its own; our choice. */
  static final double WIDEST = 0.1;

  private static final String ASK =
      "Ask the maker which of the figures holds, and for C and b by ISO 6358.";

  private final List<ListFault> found;
  private int pairs;
  private int choked;
  private int capacities;
  private int bores;

  FlowFaults(List<ListFault> found) {
    this.found = found;
  }

  /** {@return how many parts had two figures C and Kv} */
  int pairs() {
    return pairs;
  }

  /** {@return how many had a bore or a full flow beside a capacity or each other} */
  int choked() {
    return choked;
  }

  /** {@return how many had a figure of the air at all} */
  int capacities() {
    return capacities;
  }

  /** {@return how many had a bore} */
  int bores() {
    return bores;
  }

  void check(ListedPart article) {
    Part part = article.part();
    beyondEnds(article);
    Optional<CapacityRange> capacity = part.passage();
    open(part, capacity);
    capacity.ifPresent(range -> article.coefficient().ifPresent(kv -> {
      pairs++;
      against(part, range, kv);
    }));
    int figures = (article.bore().isPresent() ? 1 : 0)
        + (article.fullFlow().isPresent() ? 1 : 0)
        + (capacity.isPresent() ? 1 : 0);
    boolean hasBound = article.bore().isPresent() || article.fullFlow().isPresent();
    if (hasBound && figures > 1) {
      choked++;
    }
    article.bore().ifPresent(bore -> {
      capacity.ifPresent(range -> beyondBore(part, range.least().conductance(), bore));
      article.fullFlow().ifPresent(full -> fullBeyondBore(part, full, bore));
    });
    capacity.ifPresent(
        range -> article.fullFlow().ifPresent(full -> fullBeyondOwn(part, range, full)));
  }

  /** Tells the bore of a passage, or of an adapter, that is far wider than what its ends have. */
  private void beyondEnds(ListedPart article) {
    Part part = article.part();
    Optional<Length> bore = article.bore();
    if (part instanceof Part.Adapter adapter
        && (bore.isEmpty() || adapter.conduit().bore().compareTo(bore.get()) > 0)) {
      bore = Optional.of(adapter.conduit().bore());
    }
    Optional<Length> widest = Ends.all(part).stream()
        .map(End::clearBore)
        .flatMap(Optional::stream)
        .map(each -> each.limits().most())
        .max(Comparator.naturalOrder());
    if (bore.isEmpty()) {
      return;
    }
    bores++;
    Length told = bore.get();
    double limit = widest.map(most -> BEYOND_ENDS * most.metres()).orElse(WIDEST);
    if (told.metres() > limit) {
      found.add(ListFault.of(
          FaultKind.BORE_BEYOND_ENDS,
          List.of(part.id()),
          units -> part.name() + ": a bore of " + units.sayBore(told)
              + " is told, and no more than " + units.sayBore(Length.ofMetres(limit))
              + " counts as in line"
              + (widest.isPresent() ? ", twice what its ends are reckoned to have" : "")
              + ", by our choice.",
          "Look for a slip of the decimal point or of the unit."));
    }
  }

  private void open(Part part, Optional<CapacityRange> capacity) {
    boolean isHose = part instanceof Part.Hose;
    if (capacity.isPresent() || isHose) {
      capacities++;
    }
    List<String> id = List.of(part.id());
    capacity.filter(range -> !range.isExact()).ifPresent(range -> {
      FlowCapacity least = range.least();
      FlowCapacity most = range.most();
      boolean isOneC = least.conductance().equals(most.conductance());
      found.add(ListFault.of(
          FaultKind.AIR_FIGURE_OPEN,
          id,
          units -> part.name() + ": "
              + (isOneC
                  ? "C is " + said(least.conductance()) + ", and b is only known from "
                      + ratio(least) + " to " + ratio(most)
                  : "C is only known from " + said(least.conductance()) + " to "
                      + said(most.conductance()) + ", and b with it")
              + " (" + range.assumption().citation() + ").",
          "Ask the maker for C and b by ISO 6358; with a flow rating, for the drop at which it"
              + " holds."));
    });
    if (part instanceof Part.Hose hose && !hose.conduitRange().isExact()) {
      found.add(ListFault.of(
          FaultKind.AIR_FIGURE_OPEN,
          id,
          units -> part.name() + ": its bore is only known from "
              + units.sayBore(hose.conduit().bore()) + " to " + units.sayBore(hose.widestBore())
              + ", its wall as \"" + hose.conduitRange().assumption().citation() + "\".",
          "Tell the true bore and the kind of wall."));
    }
    if (part instanceof Part.Regulator regulator
        && regulator.curve().isEmpty()
        && regulator.droopRange().equals(Regulator.UNTOLD_DROOP)) {
      found.add(ListFault.of(
          FaultKind.AIR_FIGURE_OPEN,
          id,
          units -> part.name() + ": nobody told by how much it droops; anything from none to "
              + units.say(regulator.droop()) + " is judged.",
          "Tell droop and the flow it belongs to, or the curve that the maker draws."));
    }
  }

  /** C in dm³/(s·bar), the unit of ISO 6358, for every reader: so it stands in the list. */
  private static String said(SonicConductance conductance) {
    return UnitSystem.SI.say(conductance);
  }

  private static String ratio(FlowCapacity capacity) {
    return Digits.significant(capacity.criticalPressureRatio(), 3);
  }

  private void against(Part part, CapacityRange range, ValveCoefficient kv) {
    SonicConductance told = range.least().conductance();
    double c = told.cubicMetresPerSecondPascal();
    SonicConductance at = FlowCapacity.ofValveCoefficient(kv, 1.0).conductance();
    double bound = at.cubicMetresPerSecondPascal() / LEAST_SHARE;
    SonicConductance most = SonicConductance.ofCubicMetresPerSecondPascal(bound);
    if (c > bound) {
      boolean impossible = c > bound * ROUNDED;
      Function<UnitSystem, String> said = units -> part.name() + ": C "
          + (range.isExact() ? "" : "of at least ") + said(told) + " stands beside "
          + coefficient(kv, units) + ", and no b from 0 to 1 and no xT up to 1 gives more than C "
          + said(most) + " with it"
          + (impossible ? "." : "; the excess is no more than two rounded figures can make.");
      found.add(
          impossible
              ? ListFault.impossible(FaultKind.C_AGAINST_CV, List.of(part.id()), said, ASK)
              : ListFault.toCheck(FaultKind.C_AGAINST_CV, List.of(part.id()), said, ASK));
      return;
    }
    if (!range.isExact()) {
      return;
    }
    double b = range.least().criticalPressureRatio();
    double expected =
        kv.kv() * (c / at.cubicMetresPerSecondPascal()) * (2.0 / 3.0) * Math.sqrt(2.0 / (1.0 - b));
    double times = kv.kv() / expected;
    if (times > FAR_OFF || times < 1.0 / FAR_OFF) {
      found.add(ListFault.toCheck(
          FaultKind.C_AGAINST_CV,
          List.of(part.id()),
          units -> part.name() + ": C " + said(told) + " with b "
              + Digits.significant(b, 3) + " passes as much at small drops as "
              + coefficient(ValveCoefficient.ofKv(expected), units) + ", and "
              + coefficient(kv, units) + " is told, "
              + Digits.significant(Math.max(times, 1.0 / times), 3) + " times "
              + (times > 1.0 ? "as much" : "less")
              + ". That can be, but two figures of one part seldom differ so.",
          ASK));
    }
  }

  private static String coefficient(ValveCoefficient kv, UnitSystem units) {
    return units == UnitSystem.SI
        ? "Kv " + Digits.significant(kv.kv(), 3)
        : "Cv " + Digits.significant(kv.cv(), 3);
  }

  /** The largest C that a bore can have: that of a nozzle without loss. */
  private static SonicConductance of(Length bore) {
    return FlowCapacity.ofEffectiveArea(Area.ofCircle(bore), 0.5).conductance();
  }

  private static Length wider(Length bore) {
    return Length.ofMetres(bore.metres() + BORE_ROUNDED);
  }

  private void beyondBore(Part part, SonicConductance told, Length bore) {
    SonicConductance most = of(bore);
    if (told.compareTo(most) <= 0) {
      return;
    }
    boolean impossible = told.cubicMetresPerSecondPascal()
        > of(wider(bore)).cubicMetresPerSecondPascal() * Math.sqrt(ROUNDED);
    add(
        impossible,
        part,
        units -> part.name() + ": C " + said(told) + " is told of a bore of "
            + units.sayBore(bore) + ", which lets no more than C "
            + said(most) + " through, without any loss"
            + rest(impossible));
  }

  private void fullBeyondBore(Part part, ListedPart.FullFlow full, Length bore) {
    FreeAirFlow most = flow(of(bore), full.inlet());
    if (full.flow().massFlow().compareTo(most.massFlow()) <= 0) {
      return;
    }
    boolean impossible = full.flow().massFlow().kilogramsPerSecond()
        > flow(of(wider(bore)), full.inlet()).massFlow().kilogramsPerSecond() * Math.sqrt(ROUNDED);
    add(
        impossible,
        part,
        units -> part.name() + ": a full flow of " + units.say(full.flow()) + " from "
            + units.say(full.inlet().pressure()) + " is told of a bore of "
            + units.sayBore(bore) + ", through which the air chokes at "
            + units.say(most.at(full.flow().reference())) + ", without any loss"
            + rest(impossible));
  }

  private void fullBeyondOwn(Part part, CapacityRange range, ListedPart.FullFlow full) {
    FreeAirFlow most = flow(range.most().conductance(), full.inlet());
    double told = full.flow().massFlow().kilogramsPerSecond();
    if (told <= most.massFlow().kilogramsPerSecond()) {
      return;
    }
    boolean impossible = told > most.massFlow().kilogramsPerSecond() * ROUNDED;
    add(
        impossible,
        part,
        units -> part.name() + ": a full flow of " + units.say(full.flow()) + " from "
            + units.say(full.inlet().pressure()) + " is told, and its own C"
            + (range.isExact() ? " " : " of at most ") + said(range.most().conductance())
            + " chokes at " + units.say(most.at(full.flow().reference())) + rest(impossible));
  }

  private static FreeAirFlow flow(SonicConductance c, AirState inlet) {
    return FreeAirFlow.from(FlowCapacity.of(c, 0.5).chokedFlow(inlet), ReferenceState.ANR);
  }

  private static String rest(boolean impossible) {
    return impossible ? "." : "; the excess is no more than rounded figures can make.";
  }

  private void add(boolean impossible, Part part, Function<UnitSystem, String> said) {
    List<String> id = List.of(part.id());
    String toDo =
        "Ask the maker at which pressures the flow was found, and for the narrowest bore.";
    found.add(
        impossible
            ? ListFault.impossible(FaultKind.ABOVE_CHOKING, id, said, toDo)
            : ListFault.toCheck(FaultKind.ABOVE_CHOKING, id, said, toDo));
  }
}
