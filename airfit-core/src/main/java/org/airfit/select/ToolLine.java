package org.airfit.select;

import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.airfit.internal.NamedValues;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;

/**
 * A line behind a {@link Slot.Splitter} with the tool at its end, or several lines that are alike: each has the same
 * parts and the same tool.
 *
 * <p>This class is immutable, thread-safe and value-based; its methods return a fuller one.
 */
public final class ToolLine {

  private final String tool;
  private final int count;
  private final List<Slot> slots;
  private final NamedValues told;

  private ToolLine(String tool, int count, List<Slot> slots, NamedValues told) {
    this.tool = tool;
    this.count = count;
    this.slots = slots;
    this.told = told;
  }

  private ToolLine with(NamedValues fuller) {
    return new ToolLine(tool, count, slots, fuller);
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
    return new ToolLine(tool, 1, inRow, ToolTold.of(demand, least).with(ToolTold.INLET, inlet));
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
          "number of lines to " + tool + " must be at least 1, was " + number);
    }
    return new ToolLine(tool, number, slots, told);
  }

  /**
   * Obtains this with other slots.
   *
   * @param others what stands between the splitter and the tool, in the order the air goes, at least one
   * @return the line to the same tool
   * @throws IllegalArgumentException if there is no slot
   */
  public ToolLine with(List<? extends Slot> others) {
    return new ToolLine(
        tool, count, requireSlots(tool, Objects.requireNonNull(others, "others")), told);
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
   * Tells the highest pressure the tool's maker allows.
   *
   * @param rating that pressure
   * @return fuller
   * @throws IllegalArgumentException if {@code rating} is not above 0
   */
  public ToolLine withToolRating(GaugePressure rating) {
    return with(ToolTold.rated(told, rating));
  }

  /** {@return this with a tool that hammers} */
  public ToolLine withImpactTool() {
    return with(told.with(ToolTold.IMPACT_TOOL));
  }

  /** {@return this with a tool that hangs on a whip hose of its own: the inlet is the end of that} */
  public ToolLine withOwnWhipHose() {
    return with(told.with(ToolTold.WHIP_HOSE));
  }

  /** {@return this with a tool that cleans with air, with nothing in it that lets pressure off} */
  public ToolLine withBlowGun() {
    return with(told.with(ToolTold.BLOW_GUN));
  }

  /**
   * Tells that the tool cleans with air and holds the pressure at its nozzle down when that is blocked.
   *
   * @param atBlockedNozzle the pressure that its maker tells for the blocked nozzle, at least 0
   * @return fuller
   * @throws IllegalArgumentException if {@code atBlockedNozzle} is below 0
   */
  public ToolLine withBlowGun(GaugePressure atBlockedNozzle) {
    return with(ToolTold.cleaning(told, atBlockedNozzle));
  }

  /** {@return this with a tool that feeds its fasteners by itself} */
  public ToolLine withAutomaticFeed() {
    return with(told.with(ToolTold.AUTOMATIC_FEED));
  }

  /** {@return this with a tool whose air drives abrasive} */
  public ToolLine withBlasting() {
    return with(told.with(ToolTold.BLASTING));
  }

  /** {@return this with a tool that sprays paint} */
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

  /** {@return what the tool is called} */
  public String tool() {
    return tool;
  }

  /** {@return how many such lines there are} */
  public int count() {
    return count;
  }

  /** {@return what stands between the splitter and the tool, in the order the air goes, never empty} */
  public List<Slot> slots() {
    return slots;
  }

  /** {@return the air that one of its tools takes, as well as it is known} */
  public Range<FreeAirFlow> demandRange() {
    return Objects.requireNonNull(told.get(ToolTold.DEMAND));
  }

  /** The air that so many of its tools take, each once, whatever others take beside them. */
  Stream<Range<FreeAirFlow>> demands(int tools) {
    return Collections.nCopies(tools, demandRange()).stream();
  }

  /** What so many of its lines draw: each tool, and others behind a splitter on the way to it. */
  Stream<Range<FreeAirFlow>> drawn(int lines) {
    Range<FreeAirFlow> one =
        Flows.sum(Stream.concat(Stream.of(demandRange()), Flows.ofOthers(slots)));
    return Collections.nCopies(lines, one).stream();
  }

  /** {@return how the tool begins} */
  public End inlet() {
    return Objects.requireNonNull(told.get(ToolTold.INLET));
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
        && told.equals(that.told);
  }

  @Override
  public int hashCode() {
    return Objects.hash(tool, count, slots, told);
  }

  /** {@return the line in words, such as "3 lines to sander: hose"} */
  @Override
  public String toString() {
    return (count == 1 ? "line" : count + " lines") + " to " + tool + ": "
        + String.join(", ", slots.stream().map(Slot::name).toList());
  }
}
