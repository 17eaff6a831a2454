package org.airfit.select;

import java.util.Objects;
import java.util.Optional;
import org.airfit.joint.End;
import org.airfit.line.ConduitRange;
import org.airfit.plant.SupplyRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.Range;

/** A part's place between the outlet and the tool, as a {@link Layout} has it: what stands there, or what shall. */
public sealed interface Slot {

  /** {@return what it is called, different from the other slots of its layout} */
  String name();

  /**
   * A quick coupling: a socket and the plug that goes into it.
   *
   * @param name what it is called, such as "outlet"
   * @param profile the profile it must have; empty if any will do
   * @param sameAs the coupling of which it must have the profile, by name; empty if it may be another
   * @param socket the socket that is there; empty if one is to be chosen
   * @param plug the plug that is there; empty if one is to be chosen
   */
  record Coupling(
      String name,
      Optional<String> profile,
      Optional<String> sameAs,
      Optional<Part.Socket> socket,
      Optional<Part.Plug> plug)
      implements Slot {

    /**
     * Checks the components.
     *
     * @param name what it is called, such as "outlet"
     * @param profile the profile it must have; empty if any will do
     * @param sameAs the coupling of which it must have the profile, by name; empty if it may be another
     * @param socket the socket that is there; empty if one is to be chosen
     * @param plug the plug that is there; empty if one is to be chosen
     * @throws IllegalArgumentException if {@code name} is blank
     */
    public Coupling {
      requireName(name);
      Objects.requireNonNull(profile, "profile");
      Objects.requireNonNull(sameAs, "sameAs");
      Objects.requireNonNull(socket, "socket");
      Objects.requireNonNull(plug, "plug");
    }

    /** {@return the slot in words, such as "outlet: coupling of profile gannet"} */
    @Override
    public String toString() {
      return name + ": coupling"
          + profile.map(id -> " of profile " + id).orElse("")
          + sameAs.map(other -> " of the same profile as " + other).orElse("")
          + socket.map(there -> ", the socket is " + there.name()).orElse("")
          + plug.map(there -> ", the plug is " + there.name()).orElse("");
    }

    /**
     * Obtains this for plugs of one profile.
     *
     * @param id the id of the profile
     * @return this with the profile
     */
    public Coupling ofProfile(String id) {
      return new Coupling(
          name, Optional.of(Objects.requireNonNull(id, "id")), sameAs, socket, plug);
    }

    /**
     * Obtains this with the profile of another coupling of the layout, whichever that is: the plugs of both are then
     * of one profile.
     *
     * @param coupling what the other coupling is called
     * @return this, tied to the other
     */
    public Coupling ofSameProfileAs(String coupling) {
      return new Coupling(
          name, profile, Optional.of(Objects.requireNonNull(coupling, "coupling")), socket, plug);
    }

    /**
     * Obtains this with the socket that is there and stays.
     *
     * @param there the socket
     * @return this with the socket
     */
    public Coupling withSocket(Part.Socket there) {
      return new Coupling(
          name, profile, sameAs, Optional.of(Objects.requireNonNull(there, "there")), plug);
    }

    /**
     * Obtains this with the plug that is there and stays.
     *
     * @param there the plug
     * @return this with the plug
     */
    public Coupling withPlug(Part.Plug there) {
      return new Coupling(
          name, profile, sameAs, socket, Optional.of(Objects.requireNonNull(there, "there")));
    }
  }

  /**
   * A hose.
   *
   * @param name what it is called, such as "hose"
   * @param reachRange between which lengths the one lies that it must have at least
   * @param isWhip whether it is a short whip hose, that keeps what follows it from the shaking of a tool
   * @param atMost how long it may be at most, where it is to be chosen; empty where nobody told
   * @param bore the bore that its name must say; empty if any will do
   * @param hose the hose that is there; empty if one is to be chosen
   */
  record Hose(
      String name,
      Range<Length> reachRange,
      boolean isWhip,
      Optional<Length> atMost,
      Optional<HoseBore> bore,
      Optional<Part.Hose> hose)
      implements Slot {

    /** How long a whip hose is at most, unless told: a longer one is a hose. Common practice, no source. */
    public static final Length LONGEST_WHIP = Length.of(10.0, LengthUnit.FOOT);

    /**
     * Checks the components.
     *
     * @param name what it is called, such as "hose"
     * @param reachRange between which lengths the one lies that it must have at least
     * @param isWhip whether it is a short whip hose
     * @param atMost how long it may be at most; empty where nobody told
     * @param bore the bore that its name must say; empty if any will do
     * @param hose the hose that is there; empty if one is to be chosen
     * @throws IllegalArgumentException if {@code name} is blank, {@code bore} or {@code atMost} is told of a hose that
     * is there, or {@code atMost} is below the most that {@code reachRange} can be
     */
    public Hose {
      requireName(name);
      Objects.requireNonNull(reachRange, "reachRange");
      Objects.requireNonNull(atMost, "atMost");
      Objects.requireNonNull(bore, "bore");
      Objects.requireNonNull(hose, "hose");
      if (bore.isPresent() && hose.isPresent()) {
        throw new IllegalArgumentException("bore of " + name
            + " must not be told beside the hose that is there, was "
            + bore.get().label()
            + "; leave out one of the two");
      }
      if (atMost.isPresent() && hose.isPresent()) {
        throw new IllegalArgumentException("length at most of " + name
            + " must not be told beside the hose that is there, was "
            + atMost.get().shown()
            + "; leave out one of the two");
      }
      if (atMost.isPresent() && atMost.get().compareTo(reachRange.most()) < 0) {
        throw new IllegalArgumentException("length at most of " + name + " must be at least the "
            + reachRange.most().shown() + " that it may have to reach, was "
            + atMost.get().shown());
      }
    }

    /**
     * Obtains a hose of any bore whose reach is known.
     *
     * @param name what it is called, such as "hose"
     * @param reach how long it must be at least
     * @param isWhip whether it is a short whip hose
     * @param hose the hose that is there; empty if one is to be chosen
     * @throws IllegalArgumentException if {@code name} is blank
     */
    public Hose(String name, Length reach, boolean isWhip, Optional<Part.Hose> hose) {
      this(
          name,
          Range.exactly(Objects.requireNonNull(reach, "reach")),
          isWhip,
          Optional.empty(),
          Optional.empty(),
          hose);
    }

    /** {@return how long it must be at least, the most of it where that is not known exactly} */
    public Length reach() {
      return reachRange.most();
    }

    /** {@return the slot in words, such as "hose: hose of at least 10 m"} */
    @Override
    public String toString() {
      return name + ": " + (isWhip ? "whip hose" : "hose")
          + bore.map(said -> " of " + said.label() + " bore and").orElse("") + " of at least "
          + (reachRange.isExact() ? "" : reachRange.least().format(LengthUnit.METRE) + " to ")
          + reach().format(LengthUnit.METRE)
          + atMost.map(most -> " and at most " + most.format(LengthUnit.METRE)).orElse("")
          + hose.map(there -> ", it is " + there.name()).orElse("");
    }

    /**
     * Obtains this with the hose that is there and stays, whatever its bore.
     *
     * @param there the hose
     * @return this with the hose
     */
    public Hose with(Part.Hose there) {
      return new Hose(
          name,
          reachRange,
          isWhip,
          Optional.empty(),
          Optional.empty(),
          Optional.of(Objects.requireNonNull(there, "there")));
    }

    /**
     * Obtains this with another length. A hose that is there and whose length nobody told is as long as that.
     *
     * @param range between which lengths the one lies that it must have at least
     * @return this with the length
     * @throws IllegalArgumentException if the most of {@code range} is above the length that it may have at most
     */
    public Hose reaching(Range<Length> range) {
      Objects.requireNonNull(range, "range");
      return new Hose(
          name,
          range,
          isWhip,
          atMost,
          bore,
          hose.map(there -> there.conduitRange().isLengthUntold()
              ? new Part.Hose(
                  there.facts(),
                  there.bore(),
                  there.conduitRange().ofUntoldLength(range),
                  there.upstream(),
                  there.downstream())
              : there));
    }

    /**
     * Obtains this for hoses that are not longer.
     *
     * @param most how long it may be at most
     * @return this with the length
     * @throws IllegalArgumentException if the hose is there, or {@code most} is below the most that it may have to
     * reach
     */
    public Hose ofAtMost(Length most) {
      return new Hose(
          name, reachRange, isWhip, Optional.of(Objects.requireNonNull(most, "most")), bore, hose);
    }

    /**
     * {@return how long one that is to be chosen may be at most: what was told, or of a whip hose {@link
     * #LONGEST_WHIP}, or its reach where that is more; empty of any other hose, and of one that is there}
     */
    public Optional<Length> longest() {
      if (hose.isPresent() || atMost.isPresent() || !isWhip) {
        return atMost;
      }
      return Optional.of(reach().compareTo(LONGEST_WHIP) > 0 ? reach() : LONGEST_WHIP);
    }

    /**
     * Obtains this for hoses of one bore.
     *
     * @param said the bore that its name must say
     * @return this with the bore
     * @throws IllegalArgumentException if the hose is there
     */
    public Hose ofBore(HoseBore said) {
      return new Hose(
          name,
          reachRange,
          isWhip,
          atMost,
          Optional.of(Objects.requireNonNull(said, "said")),
          hose);
    }

    /** Whether a hose may stand here by its bore. */
    boolean takes(Part.Hose chosen) {
      return bore.isEmpty() || bore.get().nominal().equals(chosen.bore().nominal());
    }
  }

  /**
   * A part with two ends that stands in the line: a filter, a valve, a reel.
   *
   * @param name what it is called
   * @param kind what it is
   * @param device the part that is there, of that kind; empty if one is to be chosen
   */
  record InLine(String name, DeviceKind kind, Optional<Part.Device> device) implements Slot {

    /**
     * Checks the components.
     *
     * @param name what it is called
     * @param kind what it is
     * @param device the part that is there; empty if one is to be chosen
     * @throws IllegalArgumentException if {@code name} is blank or {@code device} is of another kind
     */
    public InLine {
      requireName(name);
      Objects.requireNonNull(kind, "kind");
      Objects.requireNonNull(device, "device");
      if (device.isPresent() && device.get().kind() != kind) {
        throw new IllegalArgumentException("device of " + name + " must be of the kind " + kind
            + ", was " + device.get().name() + " of the kind " + device.get().kind());
      }
    }

    /** {@return the slot in words, such as "at the wall: filter, it is Filter 40 µm"} */
    @Override
    public String toString() {
      return name + ": " + kind + device.map(there -> ", it is " + there.name()).orElse("");
    }

    /**
     * Obtains this with the part that is there and stays.
     *
     * @param there the part, of the same kind
     * @return this with the part
     * @throws IllegalArgumentException if {@code there} is of another kind
     */
    public InLine with(Part.Device there) {
      return new InLine(name, kind, Optional.of(Objects.requireNonNull(there, "there")));
    }
  }

  /**
   * A regulator at a set point, alone or in one piece with a filter, and a lubricator too.
   *
   * @param name what it is called, such as "regulator"
   * @param kind what it is in one piece with
   * @param setRange between which pressures what it is set to lies, above 0: flow is judged at the lowest, what must
   *     be borne at the highest
   * @param ifFails what can stand behind it when it fails, as its maker tells; empty if that is not known: what is in
   *     front of it then counts
   * @param regulator the regulator that is there; empty if one is to be chosen
   */
  record Regulated(
      String name,
      RegulatorKind kind,
      Range<GaugePressure> setRange,
      Optional<GaugePressure> ifFails,
      Optional<Part.Regulator> regulator)
      implements Slot {

    /**
     * Checks the components.
     *
     * @param name what it is called, such as "regulator"
     * @param kind what it is in one piece with
     * @param setRange between which pressures what it is set to lies, above 0
     * @param ifFails what can stand behind it when it fails, at least all of {@code setRange}; empty if that is not
     *     known
     * @param regulator the regulator that is there; empty if one is to be chosen
     * @throws IllegalArgumentException if {@code name} is blank, {@code setRange} is not above 0, {@code ifFails} is
     *     below its end or {@code regulator} is of another kind
     */
    public Regulated {
      requireName(name);
      Objects.requireNonNull(kind, "kind");
      Objects.requireNonNull(setRange, "setRange");
      Objects.requireNonNull(ifFails, "ifFails");
      Objects.requireNonNull(regulator, "regulator");
      if (!(setRange.least().pascals() > 0.0)) {
        throw new IllegalArgumentException("set point of " + name + " must be above 0 bar(g), was "
            + setRange.least().inFewestDigits());
      }
      if (ifFails.isPresent() && ifFails.get().compareTo(setRange.most()) < 0) {
        throw new IllegalArgumentException("pressure behind " + name
            + " when it fails must be at least the " + setRange.most().inFewestDigits()
            + " it is set to, was " + ifFails.get().inFewestDigits()
            + "; leave it out where its maker does not tell it");
      }
      if (regulator.isPresent() && regulator.get().kind() != kind) {
        throw new IllegalArgumentException(
            "regulator of " + name + " must be of the kind " + kind + ", was "
                + regulator.get().name() + " of the kind " + regulator.get().kind());
      }
    }

    /**
     * Obtains one of which is known exactly what it is set to.
     *
     * @param name what it is called, such as "regulator"
     * @param kind what it is in one piece with
     * @param set what it is set to, above 0
     * @param ifFails what can stand behind it when it fails, at least {@code set}; empty if that is not known
     * @param regulator the regulator that is there; empty if one is to be chosen
     * @throws IllegalArgumentException if {@code name} is blank, {@code set} is not above 0, {@code ifFails} is below
     *     it or {@code regulator} is of another kind
     */
    public Regulated(
        String name,
        RegulatorKind kind,
        GaugePressure set,
        Optional<GaugePressure> ifFails,
        Optional<Part.Regulator> regulator) {
      this(name, kind, Range.exactly(Objects.requireNonNull(set, "set")), ifFails, regulator);
    }

    /**
     * Obtains one of a regulator alone.
     *
     * @param name what it is called, such as "regulator"
     * @param set what it is set to, above 0
     * @param ifFails what can stand behind it when it fails, at least {@code set}; empty if that is not known
     * @param regulator the regulator that is there; empty if one is to be chosen
     * @throws IllegalArgumentException if {@code name} is blank, {@code set} is not above 0, {@code ifFails} is below
     *     it or {@code regulator} is of another kind
     */
    public Regulated(
        String name,
        GaugePressure set,
        Optional<GaugePressure> ifFails,
        Optional<Part.Regulator> regulator) {
      this(name, RegulatorKind.REGULATOR, set, ifFails, regulator);
    }

    /** {@return what it is set to, the most of it where that is not known exactly} */
    public GaugePressure set() {
      return setRange.most();
    }

    /** {@return the slot in words, such as "regulator: set to 6 bar(g)"} */
    @Override
    public String toString() {
      return name + ": " + (kind == RegulatorKind.REGULATOR ? "" : kind + " ") + "set to "
          + (setRange.isExact() ? "" : setRange.least().format(PressureUnit.BAR) + " to ")
          + set().format(PressureUnit.BAR)
          + regulator.map(there -> ", it is " + there.name()).orElse("");
    }

    /**
     * Between which pressures it can stand behind this, from those in front of it, all of them known. If it fails, what
     * stands in front of it counts, or what its maker tells if that is less. While it holds, the most that it can be
     * set to counts.
     */
    SupplyRange behind(SupplyRange inFront) {
      GaugePressure most = inFront.whileRegulated().orElse(inFront.highest());
      SupplyRange held =
          SupplyRange.of(set().compareTo(most) < 0 ? set() : most).withHighest(inFront.highest());
      return ifFails
          .filter(failed -> failed.compareTo(inFront.highest()) < 0)
          .map(held::regulated)
          .orElseGet(held::regulated);
    }

    /**
     * Obtains this with the regulator that is there and stays.
     *
     * @param there the regulator, of the same kind
     * @return this with the regulator
     * @throws IllegalArgumentException if {@code there} is of another kind
     */
    public Regulated with(Part.Regulator there) {
      return new Regulated(
          name, kind, setRange, ifFails, Optional.of(Objects.requireNonNull(there, "there")));
    }

    /**
     * Obtains this where it is not known exactly what it is set to.
     *
     * @param range between which pressures that lies, above 0
     * @return this set so
     * @throws IllegalArgumentException if {@code range} is not above 0, or can be above what stands behind it when it
     *     fails
     */
    public Regulated withSetRange(Range<GaugePressure> range) {
      return new Regulated(name, kind, Objects.requireNonNull(range, "range"), ifFails, regulator);
    }

    /**
     * Obtains this with what its maker tells of a regulator that fails.
     *
     * @param behind what can then stand behind it, at least what it is set to
     * @return this with the pressure
     * @throws IllegalArgumentException if {@code behind} is below what it is set to
     */
    public Regulated failingAt(GaugePressure behind) {
      return new Regulated(
          name, kind, setRange, Optional.of(Objects.requireNonNull(behind, "behind")), regulator);
    }
  }

  /**
   * A tee, wye or manifold behind which the air goes to several lines: to those of a {@link Layout} of several tools,
   * or to others of whom only their air is known.
   *
   * @param name what it is called, such as "manifold"
   * @param others the air that others take from it, beside the tool or the tools of the layout; empty if none do
   * @param outlet the outlet, counted from 0, at which the line to the tool goes on; of several lines the first
   * @param splitter the splitter that is there; empty if one is to be chosen
   */
  record Splitter(
      String name,
      Optional<Range<FreeAirFlow>> others,
      int outlet,
      Optional<Part.Splitter> splitter)
      implements Slot {

    /**
     * Checks the components.
     *
     * @param name what it is called, such as "manifold"
     * @param others the air that others take from it; empty if none do
     * @param outlet the outlet, counted from 0, at which the line to the tool goes on
     * @param splitter the splitter that is there, with such an outlet; empty if one is to be chosen
     * @throws IllegalArgumentException if {@code name} is blank, or {@code outlet} is negative or none of the splitter
     */
    public Splitter {
      requireName(name);
      Objects.requireNonNull(others, "others");
      Objects.requireNonNull(splitter, "splitter");
      int outlets = splitter.map(there -> there.outlets().size()).orElse(Integer.MAX_VALUE);
      if (outlet < 0 || outlet >= outlets) {
        throw new IllegalArgumentException("outlet of " + name + " must be at least 0"
            + splitter
                .map(there -> " and below the " + outlets + " of " + there.name())
                .orElse("")
            + ", was " + outlet);
      }
    }

    /** {@return the slot in words, such as "manifold: splitter"} */
    @Override
    public String toString() {
      return name + ": splitter"
          + others.map(air -> ", others take " + air).orElse("")
          + splitter.map(there -> ", it is " + there.name()).orElse("");
    }

    /**
     * Obtains this with the splitter that is there and stays.
     *
     * @param there the splitter
     * @return this with the splitter
     * @throws IllegalArgumentException if it has not so many outlets
     */
    public Splitter with(Part.Splitter there) {
      return new Splitter(
          name, others, outlet, Optional.of(Objects.requireNonNull(there, "there")));
    }

    /**
     * Obtains this with others who take air from it.
     *
     * @param air all that they take together, as well as it is known
     * @return this with their air
     */
    public Splitter sharedWith(Range<FreeAirFlow> air) {
      return new Splitter(name, Optional.of(Objects.requireNonNull(air, "air")), outlet, splitter);
    }

    /** This as it is on the way to one tool, with the air of all others. */
    Splitter onTheWay(Range<FreeAirFlow> air, int at) {
      return new Splitter(name, Optional.of(air), at, splitter);
    }
  }

  /**
   * Piping that is there, between two other parts.
   *
   * @param name what it is called, such as "pipe to the booth"
   * @param pipe the piping
   */
  record Pipe(String name, Part.Pipe pipe) implements Slot {

    /**
     * Checks the components.
     *
     * @param name what it is called, such as "pipe to the booth"
     * @param pipe the piping
     * @throws IllegalArgumentException if {@code name} is blank
     */
    public Pipe {
      requireName(name);
      Objects.requireNonNull(pipe, "pipe");
    }

    /** {@return the slot in words, such as "pipe to the booth: pipe that is there"} */
    @Override
    public String toString() {
      return name + ": pipe that is there";
    }
  }

  private static void requireName(String name) {
    if (Objects.requireNonNull(name, "name").isBlank()) {
      throw new IllegalArgumentException(
          "name of a slot must say which it is, was \"" + name + "\"");
    }
  }

  /**
   * Obtains a coupling to be chosen.
   *
   * @param name what it is called, such as "outlet"
   * @return the slot
   * @throws IllegalArgumentException if {@code name} is blank
   */
  static Coupling coupling(String name) {
    return new Coupling(
        name, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /**
   * Obtains a hose to be chosen.
   *
   * @param name what it is called, such as "hose"
   * @param reach how long it must be at least
   * @return the slot
   * @throws IllegalArgumentException if {@code name} is blank
   */
  static Hose hose(String name, Length reach) {
    return new Hose(name, reach, false, Optional.empty());
  }

  /**
   * Obtains a hose to be chosen, of which it is not known exactly how long it must be.
   *
   * @param name what it is called, such as "hose"
   * @param reach between which lengths the one lies that it must have at least
   * @return the slot
   * @throws IllegalArgumentException if {@code name} is blank
   */
  static Hose hose(String name, Range<Length> reach) {
    return new Hose(
        name,
        Objects.requireNonNull(reach, "reach"),
        /* isWhip= */ false,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /**
   * Obtains a whip hose to be chosen: a short hose between a percussion tool and its coupling.
   *
   * @param name what it is called, such as "whip hose"
   * @param reach how long it must be at least
   * @return the slot
   * @throws IllegalArgumentException if {@code name} is blank
   */
  static Hose whipHose(String name, Length reach) {
    return new Hose(name, reach, true, Optional.empty());
  }

  /**
   * Obtains a regulator to be chosen.
   *
   * @param name what it is called, such as "regulator"
   * @param set what it is to be set to
   * @return the slot
   * @throws IllegalArgumentException if {@code name} is blank or {@code set} is not above 0
   */
  static Regulated regulator(String name, GaugePressure set) {
    return regulator(name, RegulatorKind.REGULATOR, set);
  }

  /**
   * Obtains a regulator to be chosen that is in one piece with a filter, or with a filter and a lubricator.
   *
   * @param name what it is called, such as "filter regulator"
   * @param kind what it is in one piece with
   * @param set what it is to be set to
   * @return the slot
   * @throws IllegalArgumentException if {@code name} is blank or {@code set} is not above 0
   */
  static Regulated regulator(String name, RegulatorKind kind, GaugePressure set) {
    return new Regulated(name, kind, set, Optional.empty(), Optional.empty());
  }

  /**
   * Obtains a part that is there and stays.
   *
   * @param name what it is called
   * @param device the part
   * @return the slot
   * @throws IllegalArgumentException if {@code name} is blank
   */
  static InLine inLine(String name, Part.Device device) {
    return inLine(name, Objects.requireNonNull(device, "device").kind()).with(device);
  }

  /**
   * Obtains a part in the line to be chosen.
   *
   * @param name what it is called, such as "filter"
   * @param kind what it is
   * @return the slot
   * @throws IllegalArgumentException if {@code name} is blank
   */
  static InLine inLine(String name, DeviceKind kind) {
    return new InLine(name, kind, Optional.empty());
  }

  /**
   * Obtains a splitter to be chosen.
   *
   * @param name what it is called, such as "manifold"
   * @return the slot
   * @throws IllegalArgumentException if {@code name} is blank
   */
  static Splitter splitter(String name) {
    return new Splitter(name, Optional.empty(), 0, Optional.empty());
  }

  /**
   * Obtains piping that is there behind the outlet, such as between a regulator and the next part. Its rating is not
   * judged, as that of the piping in front of the outlet is not.
   *
   * @param name what it is called, such as "pipe to the booth"
   * @param conduit its bore, length, wall and fittings, as well as they are known
   * @param upstream how it ends towards the supply
   * @param downstream how it ends towards the tool
   * @return the slot
   * @throws IllegalArgumentException if {@code name} is blank
   */
  static Pipe pipe(String name, ConduitRange conduit, End upstream, End downstream) {
    requireName(name);
    PartFacts facts = PartFacts.of(name, name).asExisting();
    return new Pipe(name, new Part.Pipe(facts, conduit, upstream, downstream));
  }
}
