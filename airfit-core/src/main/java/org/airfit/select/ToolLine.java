package org.airfit.select;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.airfit.internal.NamedValues;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;

/**
 * A line behind a {@link Slot.Splitter} with the tool at its end, or several lines that are alike: each has the same
 * parts and the same tool. A line may end in a splitter with lines of its own instead, and each of these again: then it
 * has no tool, but the lines behind it have.
 *
 * <p>This class is immutable, thread-safe and value-based; its methods return a fuller one.
 */
public final class ToolLine {

  private final String tool;
  private final int count;
  private final List<Slot> slots;
  private final List<ToolLine> lines;
  private final NamedValues told;

  /** The tool is blank where lines follow. */
  private ToolLine(
      String tool, int count, List<Slot> slots, List<ToolLine> lines, NamedValues told) {
    this.tool = tool;
    this.count = count;
    this.slots = slots;
    this.lines = lines;
    this.told = told;
  }

  private ToolLine with(NamedValues fuller) {
    requireTool();
    return new ToolLine(tool, count, slots, lines, fuller);
  }

  /**
   * Obtains a line.
   *
   * @param tool what the tool is called, such as "sander"
   * @param demand the air it takes
   * @param least the lowest pressure at its inlet, while it takes that air, at which it works as it should
   * @param inlet how it begins
   * @param slots what stands between the splitter and the tool, in the order the air goes, at least one
   * @return the line
   * @throws IllegalArgumentException if {@code tool} is blank, {@code least} is not above 0 or there is no slot
   */
  public static ToolLine to(
      String tool, FreeAirFlow demand, GaugePressure least, End inlet, List<? extends Slot> slots) {
    return to(
        tool,
        Range.exactly(Objects.requireNonNull(demand, "demand")),
        Range.exactly(Objects.requireNonNull(least, "least")),
        inlet,
        slots);
  }

  /**
   * Obtains a line with what is known of its tool.
   *
   * @param tool what the tool is called, such as "sander"
   * @param demand between which flows the air lies that it takes
   * @param least between which pressures the lowest at its inlet lies at which it works as it should
   * @param inlet how it begins
   * @param slots what stands between the splitter and the tool, in the order the air goes, at least one
   * @return the line
   * @throws IllegalArgumentException if {@code tool} is blank, {@code least} can be 0 or less or there is no slot
   */
  public static ToolLine to(
      String tool,
      Range<FreeAirFlow> demand,
      Range<GaugePressure> least,
      End inlet,
      List<? extends Slot> slots) {
    if (Objects.requireNonNull(tool, "tool").isBlank()) {
      throw new IllegalArgumentException(
          "tool of a line must say which it is, was \"" + tool + "\"");
    }
    Objects.requireNonNull(inlet, "inlet");
    List<Slot> inRow = requireSlots(tool, Objects.requireNonNull(slots, "slots"));
    return new ToolLine(
        tool, 1, inRow, List.of(), ToolTold.of(demand, least).with(ToolTold.INLET, inlet));
  }

  /**
   * Obtains a line that ends in a splitter with lines of its own.
   *
   * @param slots what stands between the splitter where it begins and the one where it ends, in the order the air goes;
   *     the last is a splitter
   * @param lines the lines behind that splitter, which take its outlets in order
   * @return the line
   * @throws IllegalArgumentException if there is no line, if the last slot is no splitter or is one with too few
   *     outlets, or if it would lead to one tool alone
   */
  public static ToolLine toSplitter(List<? extends Slot> slots, List<ToolLine> lines) {
    List<Slot> inRow = List.copyOf(Objects.requireNonNull(slots, "slots"));
    List<ToolLine> behind = List.copyOf(Objects.requireNonNull(lines, "lines"));
    requireSplitter(inRow, behind);
    return new ToolLine("", 1, inRow, behind, NamedValues.NONE);
  }

  /** Lines begin at a splitter with an outlet for each, and it leads to more than one. */
  static void requireSplitter(List<Slot> slots, List<ToolLine> lines) {
    if (slots.isEmpty() || !(slots.get(slots.size() - 1) instanceof Slot.Splitter splitter)) {
      throw new IllegalArgumentException(
          "last slot in front of several lines must be a splitter, was "
              + (slots.isEmpty() ? "none" : slots.get(slots.size() - 1))
              + "; say Slot.splitter(…)");
    }
    int begun = lines.stream().mapToInt(ToolLine::count).sum();
    if (begun + (splitter.others().isPresent() ? 1 : 0) < 2) {
      throw new IllegalArgumentException("lines behind " + splitter.name()
          + " must be at least two, was "
          + (lines.isEmpty() ? "none" : "one to " + lines.get(0).goal())
          + "; put its slots behind those of the layout, or say what others take");
    }
    int outlets = splitter.splitter().map(there -> there.outlets().size()).orElse(begun);
    if (splitter.splitter().isPresent() && outlets < splitter.outlet() + begun) {
      throw new IllegalArgumentException("splitter " + splitter.name() + " must have at least "
          + (splitter.outlet() + begun) + " outlets, one for every line, had " + outlets);
    }
  }

  /** {@return what it leads to: what its tool is called, or the splitter at its end} */
  public String goal() {
    return isToTool() ? tool : slots.get(slots.size() - 1).name();
  }

  /**
   * Obtains so many lines that are alike: of the same parts, each counted for every line, and to tools that take as
   * much.
   *
   * @param number how many, at least 1
   * @return this so many times
   * @throws IllegalArgumentException if {@code number} is below 1
   */
  public ToolLine alike(int number) {
    if (number < 1) {
      throw new IllegalArgumentException(
          "number of lines to " + goal() + " must be at least 1, was " + number);
    }
    return new ToolLine(tool, number, slots, lines, told);
  }

  /**
   * Obtains this with other slots.
   *
   * @param others what stands between the splitter and the tool, in the order the air goes, at least one
   * @return the line to the same tool, or with the same lines behind it
   * @throws IllegalArgumentException if there is no slot, or lines are behind it and the last is no splitter that has an
   *     outlet for each
   */
  public ToolLine with(List<? extends Slot> others) {
    Objects.requireNonNull(others, "others");
    return isToTool()
        ? new ToolLine(tool, count, requireSlots(tool, others), lines, told)
        : toSplitter(others, lines).alike(count);
  }

  /** This with its slots changed, and those of the lines behind it. */
  ToolLine withSlots(UnaryOperator<List<Slot>> change) {
    return isToTool()
        ? with(change.apply(slots))
        : toSplitter(
                change.apply(slots),
                lines.stream().map(line -> line.withSlots(change)).toList())
            .alike(count);
  }

  /** This with something else told of one of its tools, tools alike counted as one, from 0. */
  ToolLine withTool(int number, UnaryOperator<ToolLine> change) {
    if (isToTool()) {
      return change.apply(this);
    }
    return toSplitter(slots, withTool(lines, number, change)).alike(count);
  }

  /** This with tools that need so much at least. */
  ToolLine needing(GaugePressure least) {
    return isToTool()
        ? with(ToolTold.needing(told, least))
        : toSplitter(slots, lines.stream().map(line -> line.needing(least)).toList())
            .alike(count);
  }

  /** Lines with something else told of one of the tools behind them, counted through all of them. */
  static List<ToolLine> withTool(List<ToolLine> lines, int number, UnaryOperator<ToolLine> change) {
    List<ToolLine> changed = new ArrayList<>();
    int first = 0;
    for (ToolLine line : lines) {
      int tools = line.toolLines().size();
      boolean isBehind = number >= first && number < first + tools;
      changed.add(isBehind ? line.withTool(number - first, change) : line);
      first += tools;
    }
    return changed;
  }

  private static List<Slot> requireSlots(String tool, List<? extends Slot> slots) {
    List<Slot> inRow = List.copyOf(slots);
    if (inRow.isEmpty()) {
      throw new IllegalArgumentException("slots of the line to " + tool
          + " must be at least one, were none; say Slot.coupling(…), Slot.hose(…)");
    }
    return inRow;
  }

  /**
   * Tells what the tool takes on the average, in place of what it takes while it runs: that follows of the duty.
   *
   * @param average what it takes on the average
   * @param leastDuty the least share of the time that it runs [-], in (0, 1]
   * @param mostDuty the most [-], in [{@code leastDuty}, 1]
   * @return fuller
   * @throws IllegalArgumentException if a share is out of range
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public ToolLine withAverage(Range<FreeAirFlow> average, double leastDuty, double mostDuty) {
    return with(ToolTold.averaging(told, average, leastDuty, mostDuty));
  }

  /** This with a tool that runs so much of the time, of which an average was told. */
  ToolLine running(double duty) {
    return with(ToolTold.running(told, duty));
  }

  /** This with a tool that takes so much while it runs. */
  ToolLine taking(Range<FreeAirFlow> air) {
    return with(ToolTold.taking(told, air));
  }

  /** This with a tool that needs just so much. */
  ToolLine needingJust(GaugePressure least) {
    return with(ToolTold.needingJust(told, least));
  }

  /**
   * Tells the highest pressure the tool's maker allows.
   *
   * @param rating that pressure
   * @return fuller
   * @throws IllegalArgumentException if {@code rating} is not above 0
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public ToolLine withToolRating(GaugePressure rating) {
    return with(ToolTold.rated(told, rating));
  }

  /**
   * Tells the higher end of a range of pressure that is marked on the tool, such as 100 psig of "90-100 psi", where
   * nobody told whether it is a limit.
   *
   * @param marked that pressure
   * @return fuller
   * @throws IllegalArgumentException if {@code marked} is not above 0
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public ToolLine withMarkedUpTo(GaugePressure marked) {
    return with(ToolTold.markedUpTo(told, marked));
  }

  /**
   * {@return this with a tool that hammers}
   *
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public ToolLine withImpactTool() {
    return with(told.with(ToolTold.IMPACT_TOOL));
  }

  /**
   * {@return this with a tool that hangs on a whip hose of its own: the inlet is the end of that}
   *
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public ToolLine withOwnWhipHose() {
    return with(told.with(ToolTold.WHIP_HOSE));
  }

  /**
   * {@return this with a tool that has no whip hose of its own: where it is not told, that is a question}
   *
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public ToolLine withoutOwnWhipHose() {
    return with(told.with(ToolTold.WHIP_HOSE, false));
  }

  /**
   * {@return this with a tool that cleans with air, with nothing in it that lets pressure off}
   *
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public ToolLine withBlowGun() {
    return with(told.with(ToolTold.BLOW_GUN));
  }

  /**
   * Tells that the tool cleans with air and holds the pressure at its nozzle down when that is blocked.
   *
   * @param atBlockedNozzle the pressure that its maker tells for the blocked nozzle, at least 0
   * @return fuller
   * @throws IllegalArgumentException if {@code atBlockedNozzle} is below 0
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public ToolLine withBlowGun(GaugePressure atBlockedNozzle) {
    return with(ToolTold.cleaning(told, atBlockedNozzle));
  }

  /**
   * {@return this with a tool that feeds its fasteners by itself}
   *
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public ToolLine withAutomaticFeed() {
    return with(told.with(ToolTold.AUTOMATIC_FEED));
  }

  /**
   * {@return this with a tool whose air drives abrasive}
   *
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public ToolLine withBlasting() {
    return with(told.with(ToolTold.BLASTING));
  }

  /**
   * {@return this with a tool that sprays paint}
   *
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public ToolLine withPainting() {
    return with(told.with(ToolTold.PAINTING));
  }

  /**
   * Names lines as a {@link Requirement#way} is named.
   *
   * @param number which line of the layout it is, counted from 1; of lines that are alike the first
   * @param count how many are alike
   * @param tool what their tool is called
   * @return such as "line 3, ratchet" or "lines 1 and 2, sander"
   */
  public static String named(int number, int count, String tool) {
    Objects.requireNonNull(tool, "tool");
    int last = number + count - 1;
    return (count == 1
            ? "line " + number
            : "lines " + number + (count == 2 ? " and " : " to ") + last)
        + ", " + tool;
  }

  /**
   * Names lines that end in a splitter, as what is said of their parts names them.
   *
   * @param count how many are alike
   * @param splitter what the splitter is called
   * @return such as "line to bench manifold" or "2 lines to bench manifold"
   */
  static String namedTo(int count, String splitter) {
    return (count == 1 ? "line to " : count + " lines to ") + splitter;
  }

  /** {@return whether it ends at a tool, and not in a splitter with lines of its own} */
  public boolean isToTool() {
    return lines.isEmpty();
  }

  /** {@return the lines behind the splitter at its end; empty where it ends at a tool} */
  public List<ToolLine> lines() {
    return lines;
  }

  /**
   * {@return the lines that end at a tool, as often as there are such lines in all: itself, or of the lines behind it
   * their own, as often as this is there}
   */
  public List<ToolLine> toolLines() {
    if (isToTool()) {
      return List.of(this);
    }
    List<ToolLine> all = new ArrayList<>();
    for (ToolLine line : lines) {
      line.toolLines().forEach(each -> all.add(each.alike(count * each.count)));
    }
    return List.copyOf(all);
  }

  private void requireTool() {
    if (!isToTool()) {
      throw new IllegalStateException(
          "a line that ends in a splitter has no tool; ask or tell those of its lines()");
    }
  }

  /** {@return what the tool is called; empty if it ends in a splitter: each of its {@link #lines} tells its own} */
  public Optional<String> tool() {
    return isToTool() ? Optional.of(tool) : Optional.empty();
  }

  /** {@return how many such lines there are} */
  public int count() {
    return count;
  }

  /**
   * {@return what stands between the splitter and the tool, or the splitter at its end with that, in the order the air
   * goes, never empty}
   */
  public List<Slot> slots() {
    return slots;
  }

  /** Its slots, and behind them those of the lines behind it. */
  List<Slot> allSlots() {
    List<Slot> all = new ArrayList<>(slots);
    lines.forEach(line -> all.addAll(line.allSlots()));
    return all;
  }

  /**
   * {@return the air that one of its tools takes, as well as it is known}
   *
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public Range<FreeAirFlow> demandRange() {
    requireTool();
    return Objects.requireNonNull(told.get(ToolTold.DEMAND));
  }

  /** The air that so many of its tools take, each once, whatever others take beside them. */
  Stream<Range<FreeAirFlow>> demands(int tools) {
    return Collections.nCopies(tools, demandRange()).stream();
  }

  /** What so many of its lines draw: each tool, and others behind a splitter on the way to it. */
  Stream<Range<FreeAirFlow>> drawn(int lines) {
    Range<FreeAirFlow> one = Flows.sum(Stream.concat(atEnd(), Flows.ofOthers(slots)));
    return Collections.nCopies(lines, one).stream();
  }

  /** What is drawn at its end: by its tool, or by the lines behind it. */
  private Stream<Range<FreeAirFlow>> atEnd() {
    return isToTool()
        ? Stream.of(demandRange())
        : lines.stream().flatMap(line -> line.drawn(line.count));
  }

  /**
   * {@return how the tool begins}
   *
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public End inlet() {
    requireTool();
    return Objects.requireNonNull(told.get(ToolTold.INLET));
  }

  /**
   * {@return the least pressure that its tool works at, as well as it is known}
   *
   * @throws IllegalStateException if it ends in a splitter: each line behind that tells its own
   */
  public Range<GaugePressure> leastRange() {
    requireTool();
    return Objects.requireNonNull(told.get(ToolTold.LEAST));
  }

  /** {@return the highest pressure that the maker of its tool allows; empty where it was not told} */
  public Optional<GaugePressure> toolRating() {
    return told.find(ToolTold.RATING);
  }

  /**
   * {@return the higher end of a range that is marked on its tool, of which nobody told whether it is a limit; empty where
   * the limit is known, or nothing is marked}
   */
  public Optional<GaugePressure> markedUpTo() {
    return toolRating().isPresent() ? Optional.empty() : told.find(ToolTold.MARKED_UP_TO);
  }

  /** {@return whether its tool hammers} */
  public boolean isImpactTool() {
    return told.is(ToolTold.IMPACT_TOOL);
  }

  /** {@return whether its tool has a whip hose of its own, which the inlet is the end of} */
  public boolean hasOwnWhipHose() {
    return told.is(ToolTold.WHIP_HOSE);
  }

  /** {@return whether it was told that its tool has no whip hose of its own} */
  public boolean hasNoOwnWhipHose() {
    return Boolean.FALSE.equals(told.get(ToolTold.WHIP_HOSE));
  }

  /** {@return whether its tool cleans with air} */
  public boolean isBlowGun() {
    return told.is(ToolTold.BLOW_GUN);
  }

  /** {@return the pressure at the blocked nozzle of its blow gun; empty where its maker does not tell it} */
  public Optional<GaugePressure> deadEnd() {
    return told.find(ToolTold.DEAD_END);
  }

  /** {@return whether its tool feeds its fasteners by itself, as a nailer does} */
  public boolean isAutomaticFeed() {
    return told.is(ToolTold.AUTOMATIC_FEED);
  }

  /** {@return whether its tool blasts} */
  public boolean isBlasting() {
    return told.is(ToolTold.BLASTING);
  }

  /** {@return whether its tool sprays paint} */
  public boolean isPainting() {
    return told.is(ToolTold.PAINTING);
  }

  /** What was told of the tool. */
  NamedValues told() {
    return told;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ToolLine that
        && tool.equals(that.tool)
        && count == that.count
        && slots.equals(that.slots)
        && lines.equals(that.lines)
        && told.equals(that.told);
  }

  @Override
  public int hashCode() {
    return Objects.hash(tool, count, slots, lines, told);
  }

  /** {@return the line in words, such as "3 lines to sander: hose"; the lines behind it in brackets} */
  @Override
  public String toString() {
    return (count == 1 ? "line to " : count + " lines to ") + goal() + ": "
        + String.join(", ", slots.stream().map(Slot::name).toList())
        + (isToTool()
            ? ""
            : " (" + String.join("; ", lines.stream().map(ToolLine::toString).toList()) + ")");
  }
}
