package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.airfit.safety.Medium;
import org.jspecify.annotations.Nullable;

/**
 * What a job asks of the parts between a wall outlet and a tool.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Requirement {

  private final Builder told;
  private final FreeAirFlow demand;
  private final GaugePressure least;
  private final Run toOutlet;
  private final End outlet;
  private final End toolInlet;
  private final Length reach;
  private final GaugePressure highest;
  private final Set<Material> suited;
  private final @Nullable GaugePressure cleaningDeadEnd;

  private Requirement(Builder told) {
    this.told = told;
    this.demand = told.demand;
    this.least = told.least;
    AirState supply = required(told.supply, "supply");
    AbsolutePressure atmosphere = required(told.atmosphere, "atmosphere");
    this.outlet = required(told.outlet, "outlet");
    this.toolInlet = required(told.toolInlet, "tool inlet");
    this.reach = required(told.reach, "reach");
    Run run = Run.from(supply, atmosphere);
    for (Piping pipe : told.pipes) {
      run = run.through(pipe.name(), pipe.conduit());
    }
    this.toOutlet = run;
    this.suited = Rule.suited(told.place, told.dropped);
    GaugePressure gauge =
        GaugePressure.ofPascals(supply.pressure().pascals() - atmosphere.pascals());
    this.cleaningDeadEnd = told.blowGun && told.deadEnd == null ? gauge : told.deadEnd;
    this.highest = told.highest == null ? gauge : told.highest;
    if (highest.compareTo(gauge) < 0) {
      throw new IllegalArgumentException(
          "highest pressure must be at least the supply of " + bar(gauge) + ", was " + bar(highest)
              + "; give the setting of the relief valve or the cut-out of the compressor");
    }
  }

  private record Piping(String name, Conduit conduit) {}

  private static <T> T required(@Nullable T value, String name) {
    if (value == null) {
      throw new IllegalArgumentException(
          name + " of the requirement must be told, was missing; say it to the builder");
    }
    return value;
  }

  private static String bar(GaugePressure pressure) {
    return pressure.format(PressureUnit.BAR);
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
    return new Builder(demand, least);
  }

  /** {@return the air the tool takes} */
  public FreeAirFlow demand() {
    return demand;
  }

  /** {@return the lowest pressure at the tool's inlet at which it works as it should} */
  public GaugePressure least() {
    return least;
  }

  /** {@return the highest pressure the tool's maker allows, if that is known} */
  public Optional<GaugePressure> toolRating() {
    return Optional.ofNullable(told.toolRating);
  }

  /** {@return the run from the supply through the pipes to the wall outlet; it may have no elements} */
  public Run toOutlet() {
    return toOutlet;
  }

  /** {@return the highest pressure that can occur; the supply's unless told} */
  public GaugePressure highest() {
    return highest;
  }

  /** {@return how the piping ends at the wall} */
  public End outlet() {
    return outlet;
  }

  /** {@return how the tool begins} */
  public End toolInlet() {
    return toolInlet;
  }

  /** {@return the length of hose at least} */
  public Length reach() {
    return reach;
  }

  /** {@return the profile the shop uses; empty if any will do} */
  public Optional<String> profile() {
    return Optional.ofNullable(told.profile);
  }

  /** {@return the socket on the wall that stays, if one does} */
  public Optional<Part.Socket> wallSocket() {
    return Optional.ofNullable(told.wallSocket);
  }

  /** {@return the plug in the tool that stays, if one does} */
  public Optional<Part.Plug> toolPlug() {
    return Optional.ofNullable(told.toolPlug);
  }

  /** {@return where it will be used, if that was told} */
  public Optional<Environment> place() {
    return Optional.ofNullable(told.place);
  }

  /** {@return the kind of air in the line, if that was told} */
  public Optional<Lubrication> air() {
    return Optional.ofNullable(told.air);
  }

  /** {@return whether couplings are dropped on concrete} */
  public boolean isDropped() {
    return told.dropped;
  }

  /** {@return whether the hose with its socket is dragged} */
  public boolean isDragged() {
    return told.dragged;
  }

  /** {@return whether couplings must let the air out before they part} */
  public boolean isVentRequired() {
    return told.ventRequired;
  }

  /** {@return whether the tool hammers} */
  public boolean isImpactTool() {
    return told.impactTool;
  }

  /** {@return what the line carries} */
  public Medium medium() {
    return told.medium;
  }

  /** {@return the profiles that must all go into the socket on the wall; empty where that was not asked for} */
  public Set<String> profilesInUse() {
    return told.profilesInUse;
  }

  /** {@return the lowest temperature the parts will see, if that was told} */
  public Optional<Temperature> coldest() {
    return Optional.ofNullable(told.coldest);
  }

  /** {@return the highest temperature the parts will see, if that was told} */
  public Optional<Temperature> hottest() {
    return Optional.ofNullable(told.hottest);
  }

  /** {@return the shop's own mark for parts of this kind of air, if it has one} */
  public Optional<String> marking() {
    return Optional.ofNullable(told.marking);
  }

  /** {@return the hose that stays, if one does} */
  public Optional<Part.Hose> hose() {
    return Optional.ofNullable(told.hose);
  }

  /** {@return the pressure at the nozzle when it is blocked, if the tool cleans with air} */
  public Optional<GaugePressure> cleaningDeadEnd() {
    return Optional.ofNullable(cleaningDeadEnd);
  }

  /** {@return by what the proposals that fit are put in order} */
  public Objective ranking() {
    return told.ranking;
  }

  /** The materials that suit the place and the knocks; none where the two exclude one another. */
  Set<Material> suited() {
    return suited;
  }

  /** The air at the wall outlet while the tool works, or null where it does not get there. */
  @Nullable
  AirState atOutlet() {
    AirState supply = toOutlet.stillAir();
    return told.pipes.isEmpty()
        ? supply
        : toOutlet
            .at(demand)
            .<Optional<AirState>>fold(
                delivered -> Optional.of(supply.at(delivered.atTool())),
                starved -> Optional.empty())
            .orElse(null);
  }

  /** Collects a requirement. Not thread-safe. */
  public static final class Builder {

    private final FreeAirFlow demand;
    private final GaugePressure least;
    private final List<Piping> pipes = new ArrayList<>();
    private @Nullable GaugePressure toolRating;
    private @Nullable AirState supply;
    private @Nullable AbsolutePressure atmosphere;
    private @Nullable GaugePressure highest;
    private @Nullable End outlet;
    private @Nullable End toolInlet;
    private @Nullable Length reach;
    private @Nullable String profile;
    private Part.@Nullable Socket wallSocket;
    private Part.@Nullable Plug toolPlug;
    private @Nullable Environment place;
    private @Nullable Lubrication air;
    private boolean dropped;
    private boolean dragged;
    private boolean ventRequired;
    private boolean impactTool;
    private Medium medium = Medium.COMPRESSED_AIR;
    private Set<String> profilesInUse = Set.of();
    private @Nullable Temperature coldest;
    private @Nullable Temperature hottest;
    private @Nullable String marking;
    private Part.@Nullable Hose hose;
    private Objective ranking = Objective.FEWEST_PIECES;
    private boolean blowGun;
    private @Nullable GaugePressure deadEnd;

    private Builder(FreeAirFlow demand, GaugePressure least) {
      if (!(least.pascals() > 0.0)) {
        throw new IllegalArgumentException(
            "least pressure at the tool must be above 0 Pa(g), was " + least);
      }
      this.demand = Objects.requireNonNull(demand);
      this.least = least;
    }

    /**
     * Tells the highest pressure the tool's maker allows.
     *
     * @param rating that pressure
     * @return this builder
     */
    public Builder toolRating(GaugePressure rating) {
      toolRating = rating;
      return this;
    }

    /**
     * Tells how the tool begins.
     *
     * @param end such as 1/4 NPT female
     * @return this builder
     */
    public Builder toolInlet(End end) {
      toolInlet = end;
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
      supply = air;
      atmosphere = around;
      return this;
    }

    /**
     * Tells the highest pressure that can occur, by which parts are rated.
     *
     * @param pressure the setting of the relief valve or the cut-out of the compressor
     * @return this builder
     */
    public Builder highest(GaugePressure pressure) {
      highest = pressure;
      return this;
    }

    /**
     * Adds a pipe between supply and wall outlet, the one nearest to the supply first.
     *
     * @param name what to call it
     * @param conduit the pipe
     * @return this builder
     */
    public Builder pipe(String name, Conduit conduit) {
      pipes.add(new Piping(name, conduit));
      return this;
    }

    /**
     * Tells how the piping ends at the wall.
     *
     * @param end such as 1/2 NPT female
     * @return this builder
     */
    public Builder outlet(End end) {
      outlet = end;
      return this;
    }

    /**
     * Tells how much hose is needed.
     *
     * @param least the length at least
     * @return this builder
     */
    public Builder reach(Length least) {
      reach = least;
      return this;
    }

    /**
     * Tells the profile the shop uses.
     *
     * @param id its id
     * @return this builder
     */
    public Builder profile(String id) {
      profile = id;
      return this;
    }

    /**
     * Tells that the socket on the wall stays.
     *
     * @param socket that socket
     * @return this builder
     */
    public Builder wallSocket(Part.Socket socket) {
      wallSocket = socket;
      return this;
    }

    /**
     * Tells that the plug in the tool stays.
     *
     * @param plug that plug
     * @return this builder
     */
    public Builder toolPlug(Part.Plug plug) {
      toolPlug = plug;
      return this;
    }

    /**
     * Tells where it will be used.
     *
     * @param where the place
     * @return this builder
     */
    public Builder place(Environment where) {
      place = where;
      return this;
    }

    /**
     * Tells the kind of air in the line.
     *
     * @param kind dry or lubricated
     * @return this builder
     */
    public Builder air(Lubrication kind) {
      air = kind;
      return this;
    }

    /**
     * Tells that couplings are dropped on concrete.
     *
     * @return this builder
     */
    public Builder dropped() {
      dropped = true;
      return this;
    }

    /**
     * Tells that the hose with its socket is dragged over floor and edges.
     *
     * @return this builder
     */
    public Builder dragged() {
      dragged = true;
      return this;
    }

    /**
     * Tells that couplings must let the air out before they part.
     *
     * @return this builder
     */
    public Builder ventRequired() {
      ventRequired = true;
      return this;
    }

    /**
     * Tells that the tool hammers.
     *
     * @return this builder
     */
    public Builder impactTool() {
      impactTool = true;
      return this;
    }

    /**
     * Tells what the line carries, where it is not compressed air for tools; everything else is refused.
     *
     * @param carried the medium
     * @return this builder
     */
    public Builder medium(Medium carried) {
      medium = Objects.requireNonNull(carried);
      return this;
    }

    /**
     * Tells that plugs of several profiles are in use and must all go into the socket on the wall.
     *
     * @param ids the ids of the profiles
     * @return this builder
     */
    public Builder profilesInUse(Set<String> ids) {
      profilesInUse = Set.copyOf(ids);
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
      if (highestOfAll.compareTo(lowest) < 0) {
        throw new IllegalArgumentException(
            "highest temperature of the requirement must be at least " + lowest + ", was "
                + highestOfAll);
      }
      coldest = lowest;
      hottest = highestOfAll;
      return this;
    }

    /**
     * Tells by what mark this shop keeps parts for this kind of air apart; airfit prescribes none.
     *
     * @param mark such as "green tape", not blank
     * @return this builder
     * @throws IllegalArgumentException if {@code mark} is blank
     */
    public Builder marking(String mark) {
      if (mark.isBlank()) {
        throw new IllegalArgumentException("marking must not be blank, was \"" + mark + "\"");
      }
      marking = mark;
      return this;
    }

    /**
     * Tells that the hose stays.
     *
     * @param there that hose
     * @return this builder
     */
    public Builder hose(Part.Hose there) {
      hose = there;
      return this;
    }

    /**
     * Tells that the tool cleans with air and that nothing in it lets pressure off: when its nozzle is blocked, the supply's stands at it.
     *
     * @return this builder
     */
    public Builder blowGun() {
      blowGun = true;
      return this;
    }

    /**
     * Tells that the tool cleans with air and holds the pressure at its nozzle down when that is blocked.
     *
     * @param atBlockedNozzle the pressure that its maker tells for the blocked nozzle
     * @return this builder
     */
    public Builder blowGun(GaugePressure atBlockedNozzle) {
      blowGun = true;
      deadEnd = Objects.requireNonNull(atBlockedNozzle);
      return this;
    }

    /**
     * Tells by what to put the proposals that fit in order; by the fewest pieces to buy unless told.
     *
     * @param order the order
     * @return this builder
     */
    public Builder rankedBy(Objective order) {
      ranking = Objects.requireNonNull(order);
      return this;
    }

    /**
     * Obtains the requirement.
     *
     * @return the requirement
     * @throws IllegalArgumentException if supply, outlet, tool inlet or reach was not told, or the highest pressure is below the supply
     */
    public Requirement build() {
      return new Requirement(copy());
    }

    /** A requirement keeps its own copy, so that a builder may go on. */
    private Builder copy() {
      Builder copy = new Builder(demand, least);
      copy.pipes.addAll(pipes);
      copy.toolRating = toolRating;
      copy.supply = supply;
      copy.atmosphere = atmosphere;
      copy.highest = highest;
      copy.outlet = outlet;
      copy.toolInlet = toolInlet;
      copy.reach = reach;
      copy.profile = profile;
      copy.wallSocket = wallSocket;
      copy.toolPlug = toolPlug;
      copy.medium = medium;
      copy.profilesInUse = profilesInUse;
      copy.coldest = coldest;
      copy.hottest = hottest;
      copy.marking = marking;
      copy.hose = hose;
      copy.ranking = ranking;
      copy.blowGun = blowGun;
      copy.deadEnd = deadEnd;
      copy.place = place;
      copy.air = air;
      copy.dropped = dropped;
      copy.dragged = dragged;
      copy.ventRequired = ventRequired;
      copy.impactTool = impactTool;
      return copy;
    }
  }
}
