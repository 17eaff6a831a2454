package org.airfit.select;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.airfit.air.AirState;
import org.airfit.internal.Ids;
import org.airfit.internal.NamedValues;
import org.airfit.internal.NamedValues.Name;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.plant.Regulator;
import org.airfit.plant.Supply;
import org.airfit.plant.SupplyRange;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.run.Run;
import org.airfit.safety.Medium;
import org.airfit.safety.SafetyRule;
import org.airfit.safety.SafetyRules;
import org.jspecify.annotations.Nullable;

/**
 * What a job asks of the parts between an outlet and a tool.
 *
 * <p>A job judged before any part is chosen:
 *
 * <pre>{@code
 * import org.airfit.air.AirState;
 * import org.airfit.joint.End;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.select.JobFindings;
 * import org.airfit.select.Requirement;
 *
 * class JobAlone {
 *   public static void main(String[] args) {
 *     Requirement job = Requirement.forTool(
 *             FreeAirFlow.parse("10 L/s ANR"), GaugePressure.parse("6.2 bar(g)"))
 *         .toolInlet(End.parse("1/4 NPT female"))
 *         .supply(
 *             AirState.of(AbsolutePressure.parse("8 bar(a)"), Temperature.parse("20 °C")),
 *             AbsolutePressure.parse("1 bar(a)"))
 *         .outlet(End.parse("3/8 NPT male"))
 *         .reach(Length.parse("10 m"))
 *         .blowGun(GaugePressure.parse("2 bar(g)"))
 *         .build();
 *     System.out.println(JobFindings.of(job).findings().get(1).outcome()); // met
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Requirement {

  /**
   * Between these, nobody is asked what temperatures a part is allowed at: air of a shop. Our own choice, without a
   * source.
   */
  static final Temperature USUAL_LOWEST = Temperature.ofCelsius(5.0);

  static final Temperature USUAL_HIGHEST = Temperature.ofCelsius(40.0);

  private static final Name<Supply> SUPPLY = Name.of("supply");
  private static final Name<AbsolutePressure> ATMOSPHERE = Name.of("atmosphere");
  private static final Name<GaugePressure> HIGHEST = Name.of("highest");
  private static final Name<Range<GaugePressure>> IN_FRONT = Name.of("in front of the regulator");
  private static final Name<GaugePressure> LOWEST = Name.of("lowest");
  private static final Name<Boolean> REGULATED = Name.flag("regulated");
  private static final Name<GaugePressure> LEAST_SETTING = Name.of("least setting");
  private static final Name<Range<PressureDrop>> DROOP = Name.of("droop");
  private static final Name<GaugePressure> WHEN_FAILED = Name.of("when the regulator fails");
  private static final Name<End> OUTLET = Name.of("outlet");
  private static final Name<Range<Length>> REACH = Name.of("reach");
  private static final Name<Layout> LAYOUT = Name.of("layout");
  private static final Name<String> PROFILE = Name.of("profile");
  private static final Name<Part.Socket> OUTLET_SOCKET = Name.of("outlet socket");
  private static final Name<Part.Plug> TOOL_PLUG = Name.of("tool plug");
  private static final Name<Part.Hose> HOSE = Name.of("hose");
  private static final Name<Environment> ENVIRONMENT = Name.of("environment");
  private static final Name<Lubrication> LUBRICATION = Name.of("lubrication");
  private static final Name<Temperature> COLDEST = Name.of("coldest");
  private static final Name<Temperature> HOTTEST = Name.of("hottest");
  private static final Name<String> MARKING = Name.of("marking");
  private static final Name<Boolean> DROPPED = Name.flag("dropped");
  private static final Name<Boolean> DRAGGED = Name.flag("dragged");
  private static final Name<Boolean> VENT_REQUIRED = Name.flag("vent required");
  private static final Name<List<Piping>> PIPES = new Name<>("pipes", List.of());
  private static final Name<Set<String>> PROFILES_IN_USE = new Name<>("profiles in use", Set.of());
  private static final Name<Medium> MEDIUM = new Name<>("medium", Medium.COMPRESSED_AIR);
  private static final Name<SafetyRules> RULES = new Name<>("rules", SafetyRules.usFederal());
  private static final Name<Boolean> DRIED = Name.of("dried");
  private static final Name<Set<Extra>> EXTRAS = new Name<>("extras", Set.of());
  private static final Name<String> WAY = Name.of("way");
  private static final Name<Objective> OBJECTIVE = new Name<>("objective", Objective.FEWEST_PIECES);

  private static final Range<PressureDrop> NO_DROOP = Range.exactly(PressureDrop.ofPascals(0.0));

  private final NamedValues told;
  private final Layout layout;
  private final List<Requirement> toEachTool;
  private final Run toOutlet;
  private final Run toOutletAtBest;
  private final SupplyRange pressures;
  private final List<SafetyRule> forbidding;
  private final Optional<Boolean> plasticPipes;
  private final List<SafetyRule> forbiddingParts;

  private Requirement(NamedValues told) {
    this.told = told;
    Supply supply = required(SUPPLY);
    AbsolutePressure atmosphere = required(ATMOSPHERE);
    required(OUTLET);
    this.layout = layoutTold();
    this.toEachTool = layout.lines().isEmpty() ? List.of() : lines();
    if (toEachTool.isEmpty()) {
      required(ToolTold.DEMAND);
      required(ToolTold.LEAST);
      required(ToolTold.INLET);
    }
    this.pressures = pressures(supply, atmosphere);
    this.toOutlet = piping(Known.AT_WORST);
    this.toOutletAtBest = piping(Known.AT_BEST);
    this.forbidding = ForbiddingRules.of(rules());
    this.plasticPipes = ForbiddingRules.plastic(pipeConduits());
    this.forbiddingParts = ForbiddingRules.ofParts(forbidding, plasticPipes);
  }

  /** The layout that was told, or that of most jobs with what was told of it. */
  private Layout layoutTold() {
    Layout whole = told.get(LAYOUT);
    if (whole == null) {
      Slot.Coupling outlet = Slot.coupling(Layout.OUTLET);
      Slot.Coupling tool = Slot.coupling(Layout.TOOL);
      Slot.Hose between = Slot.hose(Layout.HOSE, required(REACH));
      return Layout.of(List.of(
          told.find(OUTLET_SOCKET).map(outlet::withSocket).orElse(outlet),
          told.find(HOSE).map(between::with).orElse(between),
          told.find(TOOL_PLUG).map(tool::withPlug).orElse(tool)));
    }
    for (Name<?> name : List.of(REACH, OUTLET_SOCKET, TOOL_PLUG, HOSE)) {
      if (told.get(name) != null) {
        throw new IllegalArgumentException(name.text()
            + " must not be told beside a layout, was told too; say it to a slot of the layout");
      }
    }
    if (whole.hasLubricator() && told.get(LUBRICATION) == Lubrication.DRY) {
      throw new IllegalArgumentException(
          "lubrication must be lubricated where a lubricator stands in the layout, was dry; leave it out, or leave"
              + " out the lubricator");
    }
    return whole;
  }

  /** What is asked of the way to each tool: what was told of the job, of its tool and of the air of the others. */
  private List<Requirement> lines() {
    for (Name<?> name : ToolTold.ALL) {
      if (told.get(name) != null && !Boolean.FALSE.equals(told.get(name))) {
        throw new IllegalArgumentException(
            name.text()
                + " must not be told of a job of several tools, was told; say it to the line of the tool");
      }
    }
    List<Requirement> ways = new ArrayList<>();
    List<Layout> layouts = layout.toEachTool();
    List<ToolLine> lines = layout.toolLines();
    int number = 1;
    for (int i = 0; i < layouts.size(); i++) {
      ToolLine line = lines.get(i);
      String way = ToolLine.named(number, line.count(), line.tool().orElseThrow());
      ways.add(
          new Requirement(told.with(line.told()).with(LAYOUT, layouts.get(i)).with(WAY, way)));
      number += line.count();
    }
    return List.copyOf(ways);
  }

  private SupplyRange pressures(Supply supply, AbsolutePressure atmosphere) {
    SupplyRange range = SupplyRange.of(supply, atmosphere);
    GaugePressure lowest = told.get(LOWEST);
    GaugePressure setting = told.get(LEAST_SETTING);
    if (setting != null && !told.is(REGULATED)) {
      throw new IllegalArgumentException(
          "least setting must be told of a regulator, was " + setting.inFewestDigits()
              + " of a supply without one; say regulated() too, or lowest(…) of a supply that swings");
    }
    if (told.find(DROOP).isPresent() && (!told.is(REGULATED) || supply instanceof Regulator)) {
      throw new IllegalArgumentException(
          "droop must be told of a regulator that does not tell its own, was "
              + told.find(DROOP).get()
              + (told.is(REGULATED)
                  ? " beside that of the supply; leave it out"
                  : " of a supply without one; say regulated() too"));
    }
    if (setting != null && (lowest == null || setting.compareTo(lowest) < 0)) {
      lowest = setting;
    }
    range = lowest == null ? range : range.withLowest(lowest);
    GaugePressure highest = highestInFront();
    range = highest == null ? range : range.withHighest(highest);
    GaugePressure whenFailed = told.get(WHEN_FAILED);
    if (whenFailed != null) {
      range = range.regulated(whenFailed);
    } else if (told.is(REGULATED)) {
      range = range.regulated();
    }
    if (!range.isWhole()) {
      throw new IllegalArgumentException(
          "highest pressure in front of the regulator must be told,"
              + " was missing; say highest(…), or regulated(…) with what its maker tells of a failed one");
    }
    return range;
  }

  /** A pipe between the supply and the outlet, as well as it is known. */
  record Piping(String name, ConduitRange conduit) {}

  private Run piping(Known known) {
    return piping(known.ofSetting(settingRange()), known.ofDroop(droopRange()), known);
  }

  /**
   * The run to the outlet, with the supply's regulator set to so much and drooping by so much, and one end of what is
   * known of the pipes.
   */
  private Run piping(GaugePressure set, PressureDrop droop, Known known) {
    Run run = Run.from(supplySetTo(set, droop, known), required(ATMOSPHERE));
    for (Piping pipe : pipes()) {
      run = run.through(pipe.name(), known.of(pipe.conduit()));
    }
    return run;
  }

  /**
   * The supply with its regulator set to so much. It holds no more than stands in front of it: where that falls below
   * what the regulator holds of the air of the job, it is what counts.
   */
  private Supply supplySetTo(GaugePressure set, PressureDrop droop, Known known) {
    Supply most = required(SUPPLY);
    Supply settled = set.equals(settingRange().most()) ? most : lowered(most, set);
    Supply held = droop.pascals() > 0.0 ? lowered(settled, less(set, droop)) : settled;
    GaugePressure lowest = told.get(LOWEST);
    if (lowest == null) {
      return held;
    }
    AbsolutePressure inFront = lowest.absolute(required(ATMOSPHERE));
    boolean droopsBelow = held instanceof Regulator
        && !(held.pascals(known.of(airAtOutlet()).massFlow().kilogramsPerSecond())
            > inFront.pascals());
    return droopsBelow || held.still().pressure().compareTo(inFront) < 0
        ? held
        : Supply.fixed(held.still().at(inFront));
  }

  /** What a droop leaves of a setting, which is no less than the atmosphere. */
  private static GaugePressure less(GaugePressure set, PressureDrop droop) {
    return GaugePressure.ofPascals(Math.max(0.0, set.pascals() - droop.pascals()));
  }

  /** A regulator that is set lower droops by as much. */
  private Supply lowered(Supply most, GaugePressure set) {
    AirState still = most.still().at(set.absolute(required(ATMOSPHERE)));
    return most instanceof Regulator regulator ? regulator.setTo(still) : Supply.fixed(still);
  }

  /** The run to the outlet at worst, but that the supply's regulator is set to so much. */
  Run toOutletSetTo(GaugePressure set) {
    return piping(set, Known.AT_WORST.ofDroop(droopRange()), Known.AT_WORST);
  }

  /** The run to the outlet at worst, but that the supply's regulator droops by so much. */
  Run toOutletDroopingBy(PressureDrop droop) {
    return piping(Known.AT_WORST.ofSetting(settingRange()), droop, Known.AT_WORST);
  }

  /** Between which losses the droop of the supply's regulator lies, where the supply does not tell it; none else. */
  Range<PressureDrop> droopRange() {
    return told.find(DROOP).orElse(NO_DROOP);
  }

  /**
   * {@return whether it is not told what the regulator at the supply holds while the tools work: its droop may be all that
   * it is set to, as behind the end of its maker's curve}
   */
  public boolean isSupplyUntold() {
    return pressures.whileRegulated().isPresent()
        && droopRange().most().pascals() >= settingRange().least().pascals();
  }

  /** Between which pressures what the supply's regulator is set to lies; of no regulator, the supply's pressure. */
  Range<GaugePressure> settingRange() {
    GaugePressure most = pressures.usual();
    return new Range<>(told.find(LEAST_SETTING).orElse(most), most);
  }

  /**
   * Tells by how much less stands behind the regulator of the supply than the least that it may be set to: its droop, or
   * what is missing in front of it.
   *
   * @param behind what stands behind it while air flows
   * @return the difference, at least 0; empty where no regulator stands at the supply
   */
  public Optional<PressureDrop> belowSetting(AbsolutePressure behind) {
    Objects.requireNonNull(behind, "behind");
    double set = settingRange().least().absolute(required(ATMOSPHERE)).pascals();
    return pressures
        .whileRegulated()
        .map(any -> PressureDrop.ofPascals(Math.max(0.0, set - behind.pascals())));
  }

  /** The lowest that the supply falls to while air is taken, with its regulator set as high as it may be. */
  GaugePressure lowestAtBest() {
    GaugePressure most = pressures.usual();
    return told.find(LOWEST).filter(lowest -> lowest.compareTo(most) < 0).orElse(most);
  }

  private <T> T required(Name<T> name) {
    T value = told.get(name);
    if (value == null) {
      throw new IllegalArgumentException(
          name.text() + " of the requirement must be told, was missing; say it to the builder");
    }
    return value;
  }

  /**
   * Starts a requirement with what the tool takes.
   *
   * @param demand the air it takes
   * @param least the lowest pressure at its inlet, while it takes that air, at which it works as it should
   * @return a builder
   * @throws IllegalArgumentException if {@code least} is not above 0
   */
  public static Builder forTool(FreeAirFlow demand, GaugePressure least) {
    return forTool(
        Range.exactly(Objects.requireNonNull(demand, "demand")),
        Range.exactly(Objects.requireNonNull(least, "least")));
  }

  /**
   * Starts a requirement with what is known of what the tool takes.
   *
   * @param demand between which flows the air lies that it takes
   * @param least between which pressures the lowest at its inlet lies at which it works as it should
   * @return a builder
   * @throws IllegalArgumentException if {@code least} can be 0 or less
   */
  public static Builder forTool(Range<FreeAirFlow> demand, Range<GaugePressure> least) {
    return new Builder(ToolTold.of(demand, least));
  }

  /**
   * Starts a requirement for several tools on one outlet. All of them are taken to work at once, which is the worst
   * case.
   *
   * @param slots the layout with its {@linkplain Layout#lines() lines}, of which each tells its tool
   * @return a builder
   * @throws IllegalArgumentException if the layout has no lines
   */
  public static Builder forTools(Layout slots) {
    if (Objects.requireNonNull(slots, "slots").lines().isEmpty()) {
      throw new IllegalArgumentException("layout of several tools must have lines, was " + slots
          + "; say Layout.of(slots, lines), or forTool(…) for one tool");
    }
    return new Builder(NamedValues.NONE.with(LAYOUT, slots));
  }

  /** {@return a builder with all that was told, to tell more} */
  public Builder toBuilder() {
    return new Builder(told);
  }

  /** {@return the air the tool takes, the most of it where that is not known exactly} */
  public FreeAirFlow demand() {
    return demandRange().most();
  }

  /** {@return the air the tool takes, of several tools that of all together, as well as it is known} */
  public Range<FreeAirFlow> demandRange() {
    return toEachTool.isEmpty()
        ? required(ToolTold.DEMAND)
        : Flows.sum(layout.toolLines().stream().flatMap(line -> line.demands(line.count())));
  }

  /**
   * {@return what is asked of the way to each tool, from the outlet on: the air of its tool, the air that all others
   * take on the way, and what the job tells. Of a job of one tool itself}
   */
  public List<Requirement> toEachTool() {
    return toEachTool.isEmpty() ? List.of(this) : toEachTool;
  }

  /** {@return whether it is of several tools, or of several lines that are alike} */
  public boolean isOfSeveralTools() {
    return !toEachTool.isEmpty();
  }

  /** {@return which line of a job of several tools this is the way along, such as "line 2, sander"; else empty} */
  public Optional<String> way() {
    return told.find(WAY);
  }

  /** What the line of a stretch is called in front of what is said of it; empty in front of all lines. */
  String named(Stretch stretch) {
    if (stretch.line() == Stretch.SHARED) {
      return "";
    }
    return stretch.isToTool()
        ? toEachTool.get(stretch.firstTool()).way().orElse("")
        : ToolLine.namedTo(stretch.count(), stretch.last().name());
  }

  /** Whether its layout was told as one, not only its reach. */
  boolean isLayoutTold() {
    return told.get(LAYOUT) != null;
  }

  /** The air that all tools take, with that of others behind the splitters of their lines. */
  Range<FreeAirFlow> airOfLines() {
    return layout.lines().isEmpty()
        ? demandRange()
        : Flows.sum(layout.lines().stream().flatMap(line -> line.drawn(line.count())));
  }

  /**
   * {@return what others take behind the splitters of the layout and of all its lines, as well as it is known; empty
   * where nobody does}
   */
  public Optional<Range<FreeAirFlow>> airOfOthers() {
    return layout.stretches().stream()
        .flatMap(stretch -> Flows.ofOthers(stretch.slots())
            .flatMap(air -> Collections.nCopies(stretch.count(), air).stream()))
        .reduce(Flows::sum);
  }

  /**
   * {@return the air at the outlet while all work, as well as it is known: that of the tool or of all tools, and of
   * {@linkplain #airOfOthers() others}}
   */
  public Range<FreeAirFlow> airAtOutlet() {
    return Flows.sum(Stream.concat(Stream.of(airOfLines()), Flows.ofOthers(layout.slots())));
  }

  /**
   * {@return the lowest pressure at the tool's inlet at which it works as it should, the highest of those it can be}
   */
  public GaugePressure least() {
    return leastRange().most();
  }

  /**
   * {@return the lowest pressure at the tool's inlet at which it works as it should, as well as it is known; of several
   * tools that of the one which needs most}
   */
  public Range<GaugePressure> leastRange() {
    if (toEachTool.isEmpty()) {
      return required(ToolTold.LEAST);
    }
    return toEachTool.stream()
        .map(Requirement::leastRange)
        .max(Comparator.comparing((Range<GaugePressure> range) -> range.most())
            .thenComparing(range -> range.least()))
        .orElseThrow();
  }

  /**
   * {@return whether what it tells of the air is known exactly: the tool's, setting and droop of the supply's
   * regulator, and the pipes; the slots of its layout tell of themselves}
   */
  public boolean isExact() {
    return settingRange().isExact() && isExactButForSettings();
  }

  /** The same, whatever the regulators are set to. */
  boolean isExactButForSettings() {
    return droopRange().isExact()
        && toEachTool().stream()
            .allMatch(way -> way.airAtOutlet().isExact()
                && way.demandRange().isExact()
                && way.leastRange().isExact())
        && pipes().stream().allMatch(pipe -> pipe.conduit().isExact());
  }

  /** What the tool takes on the average, where that was told in place of what it takes while it runs. */
  Optional<Range<FreeAirFlow>> average() {
    return told.find(ToolTold.AVERAGE);
  }

  /** {@return the highest pressure the tool's maker allows, if that is known; of several tools see their lines} */
  public Optional<GaugePressure> toolRating() {
    return told.find(ToolTold.RATING);
  }

  /**
   * {@return the higher end of a range that is marked on the tool, of which nobody told whether it is a limit; empty
   * where the limit is known, or nothing is marked}
   */
  public Optional<GaugePressure> markedUpTo() {
    return toolRating().isPresent() ? Optional.empty() : told.find(ToolTold.MARKED_UP_TO);
  }

  /**
   * {@return the run from the supply through the pipes to the outlet, with the pipes that let least through of those
   * they can be; it may have no elements}
   */
  public Run toOutlet() {
    return toOutlet;
  }

  /**
   * {@return the highest pressure that can occur at the outlet, by which parts, blow guns and cautions are judged: the
   * supply's unless told; behind a regulator, with the regulator failed}
   */
  public GaugePressure highest() {
    return pressures.highest();
  }

  /** {@return between which pressures the supply can stand} */
  public SupplyRange pressures() {
    return pressures;
  }

  /**
   * {@return between which pressures it can stand at the tool: those of the supply, or what the last regulator of the
   * layout holds, and if that fails what its maker tells, or what stands in front of it}
   */
  public SupplyRange pressuresAtTool() {
    SupplyRange range = pressures;
    for (Slot slot : layout.slots()) {
      if (slot instanceof Slot.Regulated regulated) {
        range = regulated.behind(range);
      }
    }
    return range;
  }

  /**
   * What stands at the tool at most while the regulators hold, each of them set as low as it may be; empty where there
   * is none. A setting is no swing: of a range of settings one is chosen and stays.
   */
  Optional<GaugePressure> heldAtToolWhenSetLowest() {
    Optional<GaugePressure> held =
        pressures.whileRegulated().map(set -> settingRange().least());
    for (Slot slot : layout.slots()) {
      if (slot instanceof Slot.Regulated regulated) {
        GaugePressure set = regulated.setRange().least();
        GaugePressure inFront = held.orElseGet(pressures::highest);
        held = Optional.of(set.compareTo(inFront) < 0 ? set : inFront);
      }
    }
    return held;
  }

  /** {@return how the piping ends at the outlet} */
  public End outlet() {
    return required(OUTLET);
  }

  /**
   * {@return how the tool begins}
   *
   * @throws IllegalStateException if it is of several tools: each line tells its own
   */
  public End toolInlet() {
    if (isOfSeveralTools()) {
      throw new IllegalStateException(
          "a job of several tools has an inlet for each; ask those of toEachTool()");
    }
    return required(ToolTold.INLET);
  }

  /** {@return what stands between the outlet and the tool, and what shall} */
  public Layout layout() {
    return layout;
  }

  /** {@return the profile the shop uses; empty if any will do} */
  public Optional<String> profile() {
    return told.find(PROFILE);
  }

  /** {@return where it will be used, if that was told} */
  public Optional<Environment> environment() {
    return told.find(ENVIRONMENT);
  }

  /**
   * {@return the kind of air at the tool, if that was told} With a lubricator in the layout it is lubricated; in front
   * of the lubricator it may be either.
   */
  public Optional<Lubrication> lubrication() {
    return layout.hasLubricator() ? Optional.of(Lubrication.LUBRICATED) : told.find(LUBRICATION);
  }

  /** The kind of air at a place, if it is known: in front of a lubricator that which was told, behind it oiled. */
  Optional<Lubrication> lubricationAt(@Nullable Slot slot) {
    return slot != null && layout.isBeforeLubricator(slot) ? told.find(LUBRICATION) : lubrication();
  }

  /** {@return whether couplings are dropped on concrete} */
  public boolean isDropped() {
    return told.is(DROPPED);
  }

  /** {@return whether the hose with its socket is dragged} */
  public boolean isDragged() {
    return told.is(DRAGGED);
  }

  /** {@return whether couplings must let the air out before they part} */
  public boolean isVentRequired() {
    return told.is(VENT_REQUIRED);
  }

  /** {@return whether the tool hammers} */
  public boolean isImpactTool() {
    return isAny(ToolTold.IMPACT_TOOL);
  }

  /**
   * {@return whether the tool hangs on a whip hose: one of its own, which the tool inlet is the end of, or the last
   * slot of the layout}
   */
  public boolean hasWhipHose() {
    return told.is(ToolTold.WHIP_HOSE) || layout.endsInWhipHose();
  }

  /** Whether nobody need be asked for a whip hose: it was told of the tool, or one is the last slot of the layout. */
  boolean isWhipHoseTold() {
    return told.find(ToolTold.WHIP_HOSE).isPresent() || layout.endsInWhipHose();
  }

  /** {@return whether it was told that the tool has no whip hose of its own, and none is the last slot of the layout} */
  public boolean lacksWhipHose() {
    return Boolean.FALSE.equals(told.get(ToolTold.WHIP_HOSE)) && !layout.endsInWhipHose();
  }

  /** Whether the tool is so, or one of several. */
  private boolean isAny(Name<Boolean> name) {
    return toEachTool.isEmpty()
        ? told.is(name)
        : toEachTool.stream().anyMatch(way -> way.told.is(name));
  }

  /** {@return whether the tool feeds its fasteners by itself, as a nailer does} */
  public boolean isAutomaticFeed() {
    return isAny(ToolTold.AUTOMATIC_FEED);
  }

  /** {@return whether the air drives abrasive} */
  public boolean isBlasting() {
    return isAny(ToolTold.BLASTING);
  }

  /** {@return whether the air sprays paint} */
  public boolean isPainting() {
    return isAny(ToolTold.PAINTING);
  }

  /** {@return the safety rules it is judged by: US federal law unless told} */
  public SafetyRules rules() {
    return required(RULES);
  }

  /** {@return what the line carries} */
  public Medium medium() {
    return required(MEDIUM);
  }

  /**
   * {@return the profiles that must all go into the socket at the outlet, in the order given; empty where that was not
   * asked for}
   */
  public Set<String> profilesInUse() {
    return required(PROFILES_IN_USE);
  }

  /** {@return whether a dryer stands between the compressor and the pipes, if that was told} */
  public Optional<Boolean> isDried() {
    return told.find(DRIED);
  }

  /** {@return what was asked for beside what the job needs} */
  public Set<Extra> extras() {
    return required(EXTRAS);
  }

  /** {@return the lowest temperature the parts will see, if that was told} */
  public Optional<Temperature> coldest() {
    return told.find(COLDEST);
  }

  /** {@return the highest temperature the parts will see, if that was told} */
  public Optional<Temperature> hottest() {
    return told.find(HOTTEST);
  }

  /** {@return the shop's own mark for parts of this kind of air, if it has one} */
  public Optional<String> marking() {
    return told.find(MARKING);
  }

  /**
   * {@return the pressure at the nozzle when it is blocked, if the tool cleans with air: what its maker tells, else the
   * highest that can occur}
   */
  public Optional<GaugePressure> cleaningDeadEnd() {
    return told.is(ToolTold.BLOW_GUN)
        ? Optional.of(
            told.find(ToolTold.DEAD_END).orElseGet(() -> pressuresAtTool().highest()))
        : Optional.empty();
  }

  /** {@return by what the proposals that fit are put in order} */
  public Objective objective() {
    return required(OBJECTIVE);
  }

  /** What can rise in front of a regulator: as far as was told, or else what stands there. */
  private @Nullable GaugePressure highestInFront() {
    GaugePressure highest = told.get(HIGHEST);
    Range<GaugePressure> stands = told.get(IN_FRONT);
    if (stands == null) {
      return highest;
    }
    if (highest == null) {
      return stands.most();
    }
    if (highest.compareTo(stands.most()) < 0) {
      throw new IllegalArgumentException(
          "highest pressure must be at least what stands in front of the regulator, "
              + stands.most().inFewestDigits() + ", was " + highest.inFewestDigits());
    }
    return highest;
  }

  /** The least that the highest pressure can be: what stands in front of the regulator, or the supply's. */
  GaugePressure leastHighest() {
    return told.find(IN_FRONT).map(Range::most).orElse(pressures.usual());
  }

  /** Whether it was told how far the pressure can rise: as a number, or by what feeds the line. */
  boolean isHighestTold() {
    return told.get(HIGHEST) != null
        || (told.get(IN_FRONT) == null && !(required(SUPPLY) instanceof Supply.Fixed));
  }

  /** Whether it was told between which pressures the compressor runs, so that nobody need ask at which it stops. */
  boolean isCutOutTold() {
    return told.find(IN_FRONT)
        .map(stands -> !stands.isExact())
        .orElseGet(() -> told.find(LOWEST)
            .filter(lowest -> lowest.compareTo(pressures.usual()) < 0)
            .isPresent());
  }

  /** Whether the maker of the regulator told what stands behind a failed one. */
  boolean isFailureTold() {
    return told.get(WHEN_FAILED) != null;
  }

  /** Whether the maker of a tool that cleans told the pressure at its blocked nozzle. */
  boolean isDeadEndTold() {
    return told.get(ToolTold.DEAD_END) != null;
  }

  /** The temperature of the air at the supply; a line is isothermal, so that every part may see it. */
  Temperature supplyTemperature() {
    return toOutlet.stillAir().temperature();
  }

  /** The run from the supply through the pipes to the outlet, with one end of what is known of the pipes. */
  Run toOutlet(Known known) {
    return known == Known.AT_WORST ? toOutlet : toOutletAtBest;
  }

  /** What the pipes between the supply and the outlet are called. */
  List<String> pipeNames() {
    return pipes().stream().map(Piping::name).toList();
  }

  /** The pipes between the supply and the outlet. */
  List<Conduit> pipeConduits() {
    return pipes().stream().map(pipe -> pipe.conduit().least()).toList();
  }

  /** The same with tools that need so much at least. */
  Requirement needing(GaugePressure least) {
    return new Requirement(
        isOfSeveralTools()
            ? told.with(
                LAYOUT,
                Layout.of(
                    layout.slots(),
                    layout.lines().stream().map(line -> line.needing(least)).toList()))
            : ToolTold.needing(told, least));
  }

  /** Those of its safety rules that forbid something. */
  List<SafetyRule> forbidding() {
    return forbidding;
  }

  /** Those of them that single parts decide, asked once as they are wanted of every part of a catalogue. */
  List<SafetyRule> forbiddingParts() {
    return forbiddingParts;
  }

  /** Whether any pipe before the outlet is of plastic; empty where nobody knows. */
  Optional<Boolean> plasticPipes() {
    return plasticPipes;
  }

  List<Piping> pipes() {
    return required(PIPES);
  }

  /** The pressure at the outlet while the tool works; empty where the air does not get there. */
  Optional<AbsolutePressure> atOutlet(Known known) {
    FreeAirFlow demand = known.of(airAtOutlet());
    if (!pipes().isEmpty()) {
      return toOutlet(known)
          .at(demand)
          .fold(delivered -> Optional.of(delivered.atTool()), starved -> Optional.empty());
    }
    return toOutlet(known)
        .supply()
        .at(demand.massFlow())
        .map(AirState::pressure)
        .filter(pressure -> pressure.compareTo(toOutlet.atmosphere()) >= 0);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Requirement that && told.equals(that.told);
  }

  @Override
  public int hashCode() {
    return told.hashCode();
  }

  /** {@return what was told, by name} */
  @Override
  public String toString() {
    return "Requirement" + told;
  }

  /** Collects a requirement. Not thread-safe. */
  public static final class Builder {

    private NamedValues told;

    private Builder(NamedValues told) {
      this.told = told;
    }

    /**
     * Tells what the tool takes on the average, in place of what it takes while it runs: that follows of the duty.
     *
     * @param average what it takes on the average
     * @param leastDuty the least share of the time that it runs [-], in (0, 1]
     * @param mostDuty the most [-], in [{@code leastDuty}, 1]
     * @return this builder
     * @throws IllegalArgumentException if a share is out of range
     */
    public Builder average(Range<FreeAirFlow> average, double leastDuty, double mostDuty) {
      told = ToolTold.averaging(told, average, leastDuty, mostDuty);
      return this;
    }

    /** Tells which share of the time the tool runs, of which an average was told. */
    Builder running(double duty) {
      told = ToolTold.running(told, duty);
      return this;
    }

    /** Tells what the tool takes while it runs, in place of what was told before. */
    Builder taking(Range<FreeAirFlow> air) {
      told = ToolTold.taking(told, air);
      return this;
    }

    /** Tells what the tool needs, in place of what was told before. */
    Builder needingJust(GaugePressure least) {
      told = ToolTold.needingJust(told, least);
      return this;
    }

    /** Tells between which pressures what the regulator of the supply is set to lies, in place of those told before. */
    Builder set(Range<GaugePressure> setting) {
      Supply feed = Objects.requireNonNull(told.get(SUPPLY), "supply");
      AirState still = feed.still()
          .at(setting.most().absolute(Objects.requireNonNull(told.get(ATMOSPHERE), "atmosphere")));
      told = told.with(
              SUPPLY,
              feed instanceof Regulator regulator ? regulator.setTo(still) : Supply.fixed(still))
          .with(LEAST_SETTING, setting.least());
      return this;
    }

    /**
     * Tells the highest pressure the tool's maker allows.
     *
     * @param rating that pressure
     * @return this builder
     * @throws IllegalArgumentException if {@code rating} is not above 0: a tool driven by pressure has no such limit
     */
    public Builder toolRating(GaugePressure rating) {
      told = ToolTold.rated(told, rating);
      return this;
    }

    /**
     * Tells the higher end of a range of pressure that is marked on the tool, such as 100 psig of "90-100 psi", where
     * nobody told whether it is a limit. Up to that the tool surely works; whether it stands more is a question until
     * {@link #toolRating} tells it.
     *
     * @param marked that pressure
     * @return this builder
     * @throws IllegalArgumentException if {@code marked} is not above 0
     */
    public Builder markedUpTo(GaugePressure marked) {
      told = ToolTold.markedUpTo(told, marked);
      return this;
    }

    /**
     * Tells how the tool begins.
     *
     * @param end such as 1/4 NPT female
     * @return this builder
     */
    public Builder toolInlet(End end) {
      told = told.with(ToolTold.INLET, Objects.requireNonNull(end, "end"));
      return this;
    }

    /**
     * Tells the air at the supply and the pressure gauges read against.
     *
     * @param air the air behind the regulator, or in the main
     * @param around the atmosphere
     * @return this builder
     */
    public Builder supply(AirState air, AbsolutePressure around) {
      return supply(Supply.fixed(Objects.requireNonNull(air, "air")), around);
    }

    /**
     * Tells what feeds the outlet and the pressure gauges read against.
     *
     * @param feed the supply: of a compressor flow is judged at cut-in and ratings at cut-out, of a regulator flow
     *     with its droop and ratings with what stands in front of it
     * @param around the atmosphere
     * @return this builder
     */
    public Builder supply(Supply feed, AbsolutePressure around) {
      told = told.with(SUPPLY, Objects.requireNonNull(feed, "feed"));
      told = told.with(ATMOSPHERE, Objects.requireNonNull(around, "around"));
      return this;
    }

    /**
     * Tells the highest pressure that can occur, by which parts, tool and blow gun are judged; behind a regulator, the
     * highest in front of it.
     *
     * @param pressure the setting of the relief valve or the cut-out of the compressor
     * @return this builder
     */
    public Builder highest(GaugePressure pressure) {
      told = told.with(HIGHEST, Objects.requireNonNull(pressure, "pressure"));
      return this;
    }

    /**
     * Tells what stands in front of the regulator of the supply, where nobody told how far that can rise: its most is
     * then taken for the highest, and an {@link Interview} asks for what it can rise to. {@link #highest} tells that.
     *
     * @param gauge between which pressures the gauge in front of the regulator stands
     * @return this builder
     */
    public Builder inFront(Range<GaugePressure> gauge) {
      told = told.with(IN_FRONT, Objects.requireNonNull(gauge, "gauge"));
      return this;
    }

    /**
     * Tells the lowest pressure the supply falls to while air is taken, at which the flow is judged.
     *
     * @param pressure the cut-in of the compressor
     * @return this builder
     */
    public Builder lowest(GaugePressure pressure) {
      told = told.with(LOWEST, Objects.requireNonNull(pressure, "pressure"));
      return this;
    }

    /**
     * Tells that the supply's pressure is what a regulator holds. If it fails open, the highest pressure stands behind
     * it.
     *
     * @return this builder
     */
    public Builder regulated() {
      told = told.with(REGULATED);
      return this;
    }

    /**
     * Tells that the supply's pressure is what a regulator holds, and what its maker tells of a failed one.
     *
     * @param whenFailed the most that stands behind it when it has failed
     * @return this builder
     */
    public Builder regulated(GaugePressure whenFailed) {
      told = told.with(REGULATED);
      told = told.with(WHEN_FAILED, Objects.requireNonNull(whenFailed, "whenFailed"));
      return this;
    }

    /**
     * Tells the lowest that the regulator of the supply may be set to, where that is not known exactly: the supply's
     * pressure is then the highest. A setting is no swing: where the answer turns between the two, it says so.
     *
     * @param setting the lowest that it may be set to
     * @return this builder
     */
    public Builder leastSetting(GaugePressure setting) {
      told = told.with(LEAST_SETTING, Objects.requireNonNull(setting, "setting"));
      return this;
    }

    /**
     * Tells between which losses the droop of the supply's regulator lies while the tool works, where the supply does
     * not tell it: the least is judged at best, the most at worst.
     *
     * @param range the losses; {@link Regulator#UNTOLD_DROOP} where nobody told it
     * @return this builder
     */
    public Builder droop(Range<PressureDrop> range) {
      told = told.with(DROOP, Objects.requireNonNull(range, "range"));
      return this;
    }

    /**
     * Adds a pipe between supply and outlet of which not all is known, the one nearest to the supply first.
     *
     * @param name what to call it
     * @param conduit the pipe as well as it is known
     * @return this builder
     */
    public Builder pipe(String name, ConduitRange conduit) {
      List<Piping> longer = new ArrayList<>(told.find(PIPES).orElse(List.of()));
      longer.add(new Piping(
          Objects.requireNonNull(name, "name"), Objects.requireNonNull(conduit, "conduit")));
      told = told.with(PIPES, List.copyOf(longer));
      return this;
    }

    /**
     * Adds a pipe between supply and outlet, the one nearest to the supply first.
     *
     * @param name what to call it
     * @param conduit the pipe
     * @return this builder
     */
    public Builder pipe(String name, Conduit conduit) {
      return pipe(name, ConduitRange.exactly(Objects.requireNonNull(conduit, "conduit")));
    }

    /**
     * Tells how the piping ends at the outlet.
     *
     * @param end such as 1/2 NPT female
     * @return this builder
     */
    public Builder outlet(End end) {
      told = told.with(OUTLET, Objects.requireNonNull(end, "end"));
      return this;
    }

    /**
     * Tells how much hose is needed, for the layout of most jobs: a coupling at the outlet, a hose, and a coupling at
     * the tool. Any other is told to {@link #layout}.
     *
     * @param least the length at least
     * @return this builder
     */
    public Builder reach(Length least) {
      return reach(Range.exactly(Objects.requireNonNull(least, "least")));
    }

    /**
     * Tells how much hose is needed where that is not known exactly, as {@link #reach(Length)}.
     *
     * @param least between which lengths the least lies
     * @return this builder
     */
    public Builder reach(Range<Length> least) {
      told = told.with(REACH, Objects.requireNonNull(least, "least"));
      return this;
    }

    /**
     * Tells what stands between the outlet and the tool, in the order the air goes.
     *
     * @param slots the couplings, hoses and what is in the line
     * @return this builder
     */
    public Builder layout(Layout slots) {
      told = told.with(LAYOUT, Objects.requireNonNull(slots, "slots"));
      return this;
    }

    /**
     * Tells the profile the shop uses.
     *
     * @param id its id
     * @return this builder
     * @throws IllegalArgumentException if {@code id} is blank or holds a comma
     */
    public Builder profile(String id) {
      told = told.with(PROFILE, Ids.require("profile", Objects.requireNonNull(id, "id")));
      return this;
    }

    /**
     * Tells that the socket at the outlet stays.
     *
     * @param socket that socket
     * @return this builder
     */
    public Builder outletSocket(Part.Socket socket) {
      told = told.with(OUTLET_SOCKET, Objects.requireNonNull(socket, "socket"));
      return this;
    }

    /**
     * Tells that the plug in the tool stays.
     *
     * @param plug that plug
     * @return this builder
     */
    public Builder toolPlug(Part.Plug plug) {
      told = told.with(TOOL_PLUG, Objects.requireNonNull(plug, "plug"));
      return this;
    }

    /**
     * Tells where it will be used.
     *
     * @param where the environment
     * @return this builder
     */
    public Builder environment(Environment where) {
      told = told.with(ENVIRONMENT, Objects.requireNonNull(where, "where"));
      return this;
    }

    /**
     * Tells the kind of air in the line.
     *
     * @param kind dry or lubricated
     * @return this builder
     */
    public Builder lubrication(Lubrication kind) {
      told = told.with(LUBRICATION, Objects.requireNonNull(kind, "kind"));
      return this;
    }

    /**
     * Tells that couplings are dropped on concrete.
     *
     * @return this builder
     */
    public Builder dropped() {
      told = told.with(DROPPED);
      return this;
    }

    /**
     * Tells that the hose with its socket is dragged over floor and edges.
     *
     * @return this builder
     */
    public Builder dragged() {
      told = told.with(DRAGGED);
      return this;
    }

    /**
     * Tells that couplings must let the air out before they part.
     *
     * @return this builder
     */
    public Builder ventRequired() {
      told = told.with(VENT_REQUIRED);
      return this;
    }

    /**
     * Tells that the tool hammers.
     *
     * @return this builder
     */
    public Builder impactTool() {
      told = told.with(ToolTold.IMPACT_TOOL);
      return this;
    }

    /**
     * Tells that the tool hangs on a short whip hose of its own: the tool inlet is the end of that.
     *
     * @return this builder
     */
    public Builder whipHose() {
      told = told.with(ToolTold.WHIP_HOSE);
      return this;
    }

    /**
     * Tells that the tool has no whip hose of its own. Where this is not told it is a question; a percussion tool then
     * needs one in the line.
     *
     * @return this builder
     */
    public Builder noWhipHose() {
      told = told.with(ToolTold.WHIP_HOSE, false);
      return this;
    }

    /**
     * Tells that the tool feeds its fasteners by itself, as a nailer does.
     *
     * @return this builder
     */
    public Builder automaticFeed() {
      told = told.with(ToolTold.AUTOMATIC_FEED);
      return this;
    }

    /**
     * Tells that the air drives abrasive.
     *
     * @return this builder
     */
    public Builder blasting() {
      told = told.with(ToolTold.BLASTING);
      return this;
    }

    /**
     * Tells that the air sprays paint.
     *
     * @return this builder
     */
    public Builder painting() {
      told = told.with(ToolTold.PAINTING);
      return this;
    }

    /**
     * Tells by which safety rules to judge, where not by US federal law alone.
     *
     * @param judging such as {@code SafetyRules.usFederal().with(SafetyRules.ofTable(own))}
     * @return this builder
     */
    public Builder rules(SafetyRules judging) {
      told = told.with(RULES, Objects.requireNonNull(judging, "judging"));
      return this;
    }

    /**
     * Tells what the line carries, where it is not compressed air for tools; everything else is refused.
     *
     * @param carried the medium
     * @return this builder
     */
    public Builder medium(Medium carried) {
      told = told.with(MEDIUM, Objects.requireNonNull(carried, "carried"));
      return this;
    }

    /**
     * Tells that plugs of several profiles are in use and must all go into the socket at the outlet.
     *
     * @param ids the ids of the profiles
     * @return this builder
     */
    public Builder profilesInUse(Set<String> ids) {
      told = told.with(
          PROFILES_IN_USE,
          Collections.unmodifiableSet(
              new LinkedHashSet<>(List.copyOf(Objects.requireNonNull(ids, "ids")))));
      return this;
    }

    /**
     * Tells between which temperatures the parts will live, air and surroundings alike.
     *
     * @param lowest the lowest
     * @param highestOfAll the highest, not below {@code lowest}
     * @return this builder
     * @throws IllegalArgumentException if {@code highestOfAll} is below {@code lowest}
     */
    public Builder temperatures(Temperature lowest, Temperature highestOfAll) {
      Objects.requireNonNull(lowest, "lowest");
      Objects.requireNonNull(highestOfAll, "highestOfAll");
      if (highestOfAll.compareTo(lowest) < 0) {
        throw new IllegalArgumentException(
            "highest temperature of the requirement must be at least "
                + lowest.inFull(TemperatureUnit.CELSIUS) + ", was "
                + highestOfAll.inFull(TemperatureUnit.CELSIUS));
      }
      told = told.with(COLDEST, lowest);
      told = told.with(HOTTEST, highestOfAll);
      return this;
    }

    /**
     * Tells how cold it gets where nobody tells how hot: 40 °C, the highest of a shop, stands for that. What a shop has
     * anyway, from 5 to 40 °C, asks no maker and is left out.
     *
     * @param lowest the lowest
     * @return this builder
     */
    public Builder coldest(Temperature lowest) {
      boolean isHotter = lowest.compareTo(USUAL_HIGHEST) > 0;
      return isHotter || lowest.compareTo(USUAL_LOWEST) < 0
          ? temperatures(lowest, isHotter ? lowest : USUAL_HIGHEST)
          : this;
    }

    /**
     * Tells how hot it gets where nobody tells how cold: 5 °C, the lowest of a shop, stands for that. What a shop has
     * anyway, from 5 to 40 °C, asks no maker and is left out.
     *
     * @param highestOfAll the highest
     * @return this builder
     */
    public Builder hottest(Temperature highestOfAll) {
      boolean isColder = highestOfAll.compareTo(USUAL_LOWEST) < 0;
      return isColder || highestOfAll.compareTo(USUAL_HIGHEST) > 0
          ? temperatures(isColder ? highestOfAll : USUAL_LOWEST, highestOfAll)
          : this;
    }

    /**
     * Tells by what mark this shop keeps parts for this kind of air apart; airfit prescribes none.
     *
     * @param mark such as "green tape", not blank
     * @return this builder
     * @throws IllegalArgumentException if {@code mark} is blank
     */
    public Builder marking(String mark) {
      Objects.requireNonNull(mark, "mark");
      if (mark.isBlank()) {
        throw new IllegalArgumentException("marking must not be blank, was \"" + mark + "\"");
      }
      told = told.with(MARKING, mark);
      return this;
    }

    /**
     * Tells that the hose stays.
     *
     * @param there that hose
     * @return this builder
     */
    public Builder hose(Part.Hose there) {
      told = told.with(HOSE, Objects.requireNonNull(there, "there"));
      return this;
    }

    /**
     * Tells that the tool cleans with air and that nothing in it lets pressure off: when its nozzle is blocked, the
     * highest that can occur stands at it.
     *
     * @return this builder
     */
    public Builder blowGun() {
      told = told.with(ToolTold.BLOW_GUN);
      return this;
    }

    /**
     * Tells that the tool cleans with air and holds the pressure at its nozzle down when that is blocked.
     *
     * @param atBlockedNozzle the pressure that its maker tells for the blocked nozzle, at least 0
     * @return this builder
     * @throws IllegalArgumentException if {@code atBlockedNozzle} is below 0: it would pass every limit
     */
    public Builder blowGun(GaugePressure atBlockedNozzle) {
      told = ToolTold.cleaning(told, atBlockedNozzle);
      return this;
    }

    /**
     * Tells whether a dryer stands between the compressor and the pipes: without one, water collects at low points and
     * must be let out.
     *
     * @param there whether one is there; where it is not told, the bill of materials asks
     * @return this builder
     */
    public Builder dryer(boolean there) {
      told = told.with(DRIED, there);
      return this;
    }

    /**
     * Tells what the bill of materials shall have beside what the job needs.
     *
     * @param asked what was asked for
     * @return this builder
     */
    public Builder extras(Set<Extra> asked) {
      told = told.with(
          EXTRAS,
          Collections.unmodifiableSet(new TreeSet<>(Objects.requireNonNull(asked, "asked"))));
      return this;
    }

    /**
     * Tells by what to put the proposals that fit in order; by the fewest pieces to buy unless told.
     *
     * @param order the order
     * @return this builder
     */
    public Builder objective(Objective order) {
      told = told.with(OBJECTIVE, Objects.requireNonNull(order, "order"));
      return this;
    }

    /**
     * Obtains the requirement.
     *
     * @return the requirement
     * @throws IllegalArgumentException if supply, outlet, tool inlet or the layout (or its reach) was not told, if
     * something of the layout was told beside it, the highest pressure is below the supply, the lowest or the least
     * setting above it, that in front of a regulator is missing, or a setting or a droop is told of a supply without a
     * regulator, or a droop of one that tells its own
     */
    public Requirement build() {
      return new Requirement(told);
    }
  }
}
