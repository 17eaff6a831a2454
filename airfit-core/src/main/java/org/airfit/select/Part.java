package org.airfit.select;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.internal.Ids;
import org.airfit.joint.End;
import org.airfit.joint.TwoEnded;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.plant.RegulatorCurve;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.RegulatorRange;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;

/** A part that a catalogue can hold. */
public sealed interface Part {

  /** {@return what it tells of itself} */
  PartFacts facts();

  /** {@return what the catalogue calls it} */
  default String id() {
    return facts().id();
  }

  /** {@return what people call it} */
  default String name() {
    return facts().name();
  }

  /**
   * Obtains the same part of which something else is told.
   *
   * @param other what it tells of itself then
   * @return this with {@code other}
   */
  Part withFacts(PartFacts other);

  /**
   * {@return what it lets through, as well as that is known, of a regulator when its valve stands wide open; empty of what
   * has a bore and a length instead, see {@link #line}, and of a plug, whose loss is told with its socket}
   */
  default Optional<CapacityRange> passage() {
    return Optional.empty();
  }

  /**
   * {@return its bore, length, wall and fittings, as well as they are known, where the air goes through it as through a
   * pipe: of a hose, a pipe and an adapter; empty of all else}
   */
  default Optional<ConduitRange> line() {
    return Optional.empty();
  }

  /**
   * The half of a quick coupling that takes the plug.
   *
   * @param facts what it tells of itself
   * @param profiles the ids of the profiles it takes, in the order given; several for a universal socket
   * @param end how it is joined to the line
   * @param capacityRange what it lets through with a plug in it, as well as that is known
   */
  record Socket(PartFacts facts, Set<String> profiles, End end, CapacityRange capacityRange)
      implements Part {
    /**
     * Checks that it takes something.
     *
     * @param facts what it tells of itself
     * @param profiles the ids of the profiles it takes; several for a universal socket
     * @param end how it is joined to the line
     * @param capacityRange what it lets through with a plug in it, as well as that is known
     * @throws IllegalArgumentException if it takes no profile, or one whose id is blank or holds a comma
     */
    public Socket {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(end, "end");
      Objects.requireNonNull(capacityRange, "capacityRange");
      profiles = Collections.unmodifiableSet(
          new LinkedHashSet<>(List.copyOf(Objects.requireNonNull(profiles, "profiles"))));
      if (profiles.isEmpty()) {
        throw new IllegalArgumentException(
            "profiles of socket " + facts.id() + " must be at least one, were none");
      }
      profiles.forEach(profile -> Ids.require("profile of socket " + facts.id(), profile));
    }

    @Override
    public Socket withFacts(PartFacts other) {
      return new Socket(other, profiles, end, capacityRange);
    }

    /**
     * Obtains one whose capacity is known.
     *
     * @param facts what it tells of itself
     * @param profiles the ids of the profiles it takes; several for a universal socket
     * @param end how it is joined to the line
     * @param capacity what it lets through with a plug in it
     * @throws IllegalArgumentException if it takes no profile, or one whose id is blank or holds a comma
     */
    public Socket(PartFacts facts, Set<String> profiles, End end, FlowCapacity capacity) {
      this(facts, profiles, end, CapacityRange.exactly(capacity));
    }

    @Override
    public Optional<CapacityRange> passage() {
      return Optional.of(capacityRange);
    }

    /** {@return what it lets through at least, by which it is judged} */
    public FlowCapacity capacity() {
      return capacityRange.least();
    }
  }

  /**
   * The half of a quick coupling that goes into the socket.
   *
   * @param facts what it tells of itself
   * @param profile the id of its profile
   * @param end how it is joined to hose or tool
   */
  record Plug(PartFacts facts, String profile, End end) implements Part {
    /**
     * Checks the components.
     *
     * @param facts what it tells of itself
     * @param profile the id of its profile
     * @param end how it is joined to hose or tool
     * @throws IllegalArgumentException if {@code profile} is blank or holds a comma
     */
    public Plug {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(profile, "profile");
      Objects.requireNonNull(end, "end");
      Ids.require("profile of plug " + facts.id(), profile);
    }

    @Override
    public Plug withFacts(PartFacts other) {
      return new Plug(other, profile, end);
    }
  }

  /**
   * A hose with its end fittings.
   *
   * @param facts what it tells of itself
   * @param bore the bore it is named by
   * @param conduitRange its true bore, length and roughness, and the loss of its end fittings, as well as that is known
   * @param upstream how it ends towards the supply
   * @param downstream how it ends towards the tool
   */
  record Hose(
      PartFacts facts, HoseBore bore, ConduitRange conduitRange, End upstream, End downstream)
      implements Part {
    /**
     * Checks the components.
     *
     * @param facts what it tells of itself
     * @param bore the bore it is named by
     * @param conduitRange its true bore, length and roughness, and the loss of its end fittings
     * @param upstream how it ends towards the supply
     * @param downstream how it ends towards the tool
     */
    public Hose {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(bore, "bore");
      Objects.requireNonNull(conduitRange, "conduitRange");
      Objects.requireNonNull(upstream, "upstream");
      Objects.requireNonNull(downstream, "downstream");
    }

    @Override
    public Hose withFacts(PartFacts other) {
      return new Hose(other, bore, conduitRange, upstream, downstream);
    }

    /**
     * Obtains one whose bore and wall are known.
     *
     * @param facts what it tells of itself
     * @param bore the bore it is named by
     * @param conduit its true bore, length and roughness, and the loss of its end fittings
     * @param upstream how it ends towards the supply
     * @param downstream how it ends towards the tool
     */
    public Hose(PartFacts facts, HoseBore bore, Conduit conduit, End upstream, End downstream) {
      this(facts, bore, ConduitRange.exactly(conduit), upstream, downstream);
    }

    @Override
    public Optional<ConduitRange> line() {
      return Optional.of(conduitRange);
    }

    /** {@return the one that lets least through of those it can be, by which the air is judged} */
    public Conduit conduit() {
      return conduitRange.least();
    }

    /**
     * Obtains this with its bore measured.
     *
     * @param measured the true bore
     * @return this with that bore, whatever its name says
     * @throws IllegalArgumentException if {@code measured} is out of the range of {@link Conduit#of}
     */
    public Hose ofTrueBore(Length measured) {
      return new Hose(facts, bore, conduitRange.ofBore(measured), upstream, downstream);
    }

    /**
     * Obtains this with its length measured.
     *
     * @param measured the length, or between which two it lies
     * @return this with that length
     * @throws IllegalArgumentException if {@code measured} is out of the range of {@link Conduit#of}
     */
    public Hose ofLength(Range<Length> measured) {
      return new Hose(facts, bore, conduitRange.ofLength(measured), upstream, downstream);
    }

    /**
     * Obtains this with the rating that is printed on it.
     *
     * @param rating the highest gauge pressure that is printed on it
     * @return this with the rating, or with that of its data where that is lower
     * @throws IllegalArgumentException if {@code rating} is not above 0
     */
    public Hose rated(GaugePressure rating) {
      return withFacts(facts.rated(rating));
    }

    /** {@return the widest its bore can be, by which a limit is judged that no bore may exceed} */
    public Length widestBore() {
      return conduitRange.most().bore();
    }

    /** {@return the shortest it can be: if it reaches then, it reaches} */
    public Length shortest() {
      return conduitRange.most().length();
    }

    /** {@return the longest it can be: if it does not reach then, it does not reach} */
    public Length longest() {
      return conduitRange.least().length();
    }
  }

  /**
   * A part with two ends that stands in the line, such as a filter, a valve or a reel.
   *
   * @param facts what it tells of itself
   * @param kind what it is
   * @param capacityRange what it lets through, as well as that is known
   * @param upstream how it ends towards the supply
   * @param downstream how it ends towards the tool
   */
  record Device(
      PartFacts facts, DeviceKind kind, CapacityRange capacityRange, End upstream, End downstream)
      implements Part {
    /**
     * Checks the components.
     *
     * @param facts what it tells of itself
     * @param kind what it is
     * @param capacityRange what it lets through, as well as that is known
     * @param upstream how it ends towards the supply
     * @param downstream how it ends towards the tool
     */
    public Device {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(kind, "kind");
      Objects.requireNonNull(capacityRange, "capacityRange");
      Objects.requireNonNull(upstream, "upstream");
      Objects.requireNonNull(downstream, "downstream");
    }

    @Override
    public Device withFacts(PartFacts other) {
      return new Device(other, kind, capacityRange, upstream, downstream);
    }

    /**
     * Obtains one whose capacity is known.
     *
     * @param facts what it tells of itself
     * @param kind what it is
     * @param capacity what it lets through
     * @param upstream how it ends towards the supply
     * @param downstream how it ends towards the tool
     */
    public Device(
        PartFacts facts, DeviceKind kind, FlowCapacity capacity, End upstream, End downstream) {
      this(facts, kind, CapacityRange.exactly(capacity), upstream, downstream);
    }

    @Override
    public Optional<CapacityRange> passage() {
      return Optional.of(capacityRange);
    }

    /** {@return what it lets through at least, by which it is judged} */
    public FlowCapacity capacity() {
      return capacityRange.least();
    }
  }

  /**
   * A regulator, alone or in one piece with a filter, and a lubricator too: its capacity and its droop are then those
   * of the whole piece.
   *
   * @param facts what it tells of itself
   * @param kind what it is in one piece with
   * @param capacityRange what it lets through when its valve stands wide open, as well as that is known
   * @param droopRange between which losses the one lies by which it holds less than at rest at {@code atFlow}; {@link
   *     org.airfit.plant.Regulator#UNTOLD_DROOP} where nobody told it
   * @param atFlow the flow at which it droops so; empty where it droops so at whatever flow the job has
   * @param upstream how it ends towards the supply
   * @param downstream how it ends towards the tool
   */
  record Regulator(
      PartFacts facts,
      RegulatorKind kind,
      CapacityRange capacityRange,
      Range<PressureDrop> droopRange,
      Optional<FreeAirFlow> atFlow,
      Optional<RegulatorCurve> curve,
      End upstream,
      End downstream)
      implements Part {
    /**
     * Checks the components.
     *
     * @param facts what it tells of itself
     * @param kind what it is in one piece with
     * @param capacityRange what it lets through when its valve stands wide open, as well as that is known
     * @param droopRange between which losses its droop lies
     * @param atFlow the flow at which it droops so, above 0; empty where it droops so at whatever flow the job has
     * @param curve what its maker draws, which counts in place of a droop; empty where that is not told
     * @param upstream how it ends towards the supply
     * @param downstream how it ends towards the tool
     * @throws IllegalArgumentException if {@code atFlow} is not above 0, or stands beside a curve
     */
    public Regulator {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(kind, "kind");
      Objects.requireNonNull(capacityRange, "capacityRange");
      Objects.requireNonNull(droopRange, "droopRange");
      Objects.requireNonNull(atFlow, "atFlow");
      Objects.requireNonNull(curve, "curve");
      Objects.requireNonNull(upstream, "upstream");
      Objects.requireNonNull(downstream, "downstream");
      if (atFlow.isPresent() && !(atFlow.get().cubicMetresPerSecond() > 0.0)) {
        throw new IllegalArgumentException("flow at which regulator " + facts.id()
            + " droops must be above 0, was " + atFlow.get().shown());
      }
      if (atFlow.isPresent() && curve.isPresent()) {
        throw new IllegalArgumentException("flow at which regulator " + facts.id()
            + " droops must not be told beside its curve, was " + atFlow.get().shown());
      }
    }

    @Override
    public Regulator withFacts(PartFacts other) {
      return new Regulator(
          other, kind, capacityRange, droopRange, atFlow, curve, upstream, downstream);
    }

    /**
     * Obtains this with its droop read off a gauge behind it while all works that draws air through it.
     *
     * @param measured by how much the gauge falls
     * @return this, drooping so at whatever flow the job has, in place of what was told of its droop before
     */
    public Regulator ofDroop(PressureDrop measured) {
      return new Regulator(
          facts,
          kind,
          capacityRange,
          Range.exactly(Objects.requireNonNull(measured, "measured")),
          Optional.empty(),
          upstream,
          downstream);
    }

    /**
     * Obtains a regulator that droops in a straight line, or whatever flows.
     *
     * @param facts what it tells of itself
     * @param kind what it is in one piece with
     * @param capacityRange what it lets through when its valve stands wide open, as well as that is known
     * @param droopRange between which losses its droop lies
     * @param atFlow the flow at which it droops so, above 0; empty where it droops so at whatever flow the job has
     * @param upstream how it ends towards the supply
     * @param downstream how it ends towards the tool
     * @throws IllegalArgumentException if {@code atFlow} is not above 0
     */
    public Regulator(
        PartFacts facts,
        RegulatorKind kind,
        CapacityRange capacityRange,
        Range<PressureDrop> droopRange,
        Optional<FreeAirFlow> atFlow,
        End upstream,
        End downstream) {
      this(facts, kind, capacityRange, droopRange, atFlow, Optional.empty(), upstream, downstream);
    }

    /**
     * Obtains a regulator of which not all is known.
     *
     * @param facts what it tells of itself
     * @param kind what it is in one piece with
     * @param range what it does to the air
     * @param upstream how it ends towards the supply
     * @param downstream how it ends towards the tool
     */
    public Regulator(
        PartFacts facts, RegulatorKind kind, RegulatorRange range, End upstream, End downstream) {
      this(
          facts,
          kind,
          Objects.requireNonNull(range, "range").capacity(),
          range.droop(),
          range.atFlow(),
          range.curve(),
          upstream,
          downstream);
    }

    /**
     * Obtains a regulator whose droop is known.
     *
     * @param facts what it tells of itself
     * @param kind what it is in one piece with
     * @param capacityRange what it lets through when its valve stands wide open, as well as that is known
     * @param droop by how much less than at rest it holds at {@code atFlow}
     * @param atFlow the flow at which it droops so, above 0
     * @param upstream how it ends towards the supply
     * @param downstream how it ends towards the tool
     * @throws IllegalArgumentException if {@code atFlow} is not above 0
     */
    public Regulator(
        PartFacts facts,
        RegulatorKind kind,
        CapacityRange capacityRange,
        PressureDrop droop,
        FreeAirFlow atFlow,
        End upstream,
        End downstream) {
      this(
          facts,
          kind,
          capacityRange,
          Range.exactly(Objects.requireNonNull(droop, "droop")),
          Optional.of(Objects.requireNonNull(atFlow, "atFlow")),
          upstream,
          downstream);
    }

    /**
     * Obtains a regulator alone.
     *
     * @param facts what it tells of itself
     * @param capacityRange what its valve lets through when it stands wide open, as well as that is known
     * @param droop by how much less than at rest it holds at {@code atFlow}
     * @param atFlow the flow at which it droops so, above 0
     * @param upstream how it ends towards the supply
     * @param downstream how it ends towards the tool
     * @throws IllegalArgumentException if {@code atFlow} is not above 0
     */
    public Regulator(
        PartFacts facts,
        CapacityRange capacityRange,
        PressureDrop droop,
        FreeAirFlow atFlow,
        End upstream,
        End downstream) {
      this(facts, RegulatorKind.REGULATOR, capacityRange, droop, atFlow, upstream, downstream);
    }

    /**
     * Obtains a regulator alone whose capacity is known.
     *
     * @param facts what it tells of itself
     * @param capacity what its valve lets through when it stands wide open
     * @param droop by how much less than at rest it holds at {@code atFlow}
     * @param atFlow the flow at which it droops so, above 0
     * @param upstream how it ends towards the supply
     * @param downstream how it ends towards the tool
     * @throws IllegalArgumentException if {@code atFlow} is not above 0
     */
    public Regulator(
        PartFacts facts,
        FlowCapacity capacity,
        PressureDrop droop,
        FreeAirFlow atFlow,
        End upstream,
        End downstream) {
      this(facts, CapacityRange.exactly(capacity), droop, atFlow, upstream, downstream);
    }

    /**
     * Obtains this in one piece with what else the kind says.
     *
     * @param other what it is in one piece with
     * @return this of that kind
     */
    public Regulator as(RegulatorKind other) {
      return new Regulator(
          facts, other, capacityRange, droopRange, atFlow, curve, upstream, downstream);
    }

    /**
     * Obtains what it does to the air at worst: its valve lets least through, and it droops most.
     *
     * @param set what it is set to
     * @param atmosphere the pressure around it
     * @return the element; one of which is not known at which flow it droops holds no less than the atmosphere
     * @throws IllegalArgumentException if {@code set} is not above its droop at a flow that is known
     */
    public RegulatorElement element(GaugePressure set, AbsolutePressure atmosphere) {
      Objects.requireNonNull(set, "set");
      Objects.requireNonNull(atmosphere, "atmosphere");
      return range().atWorst(set, atmosphere);
    }

    /** The same with another capacity and droop of those that it may have. */
    RegulatorElement element(
        FlowCapacity valve, PressureDrop drooping, GaugePressure set, AbsolutePressure atmosphere) {
      return range().element(valve, drooping, set, atmosphere);
    }

    /** {@return what it does to the air, as well as that is known} */
    public RegulatorRange range() {
      return new RegulatorRange(capacityRange, droopRange, atFlow, curve);
    }

    /** {@return by how much less than at rest it holds at most, by which it is judged} */
    public PressureDrop droop() {
      return droopRange.most();
    }

    /** {@return what it is, what it lets through and by how much it droops, in one line} */
    @Override
    public String toString() {
      return "Regulator[facts=" + facts + ", kind=" + kind + ", capacityRange=" + capacityRange
          + ", droopRange=" + droopRange
          + atFlow.map(flow -> ", atFlow=" + flow).orElse("")
          + curve.map(drawn -> ", curve=" + drawn).orElse("") + ", upstream=" + upstream
          + ", downstream=" + downstream + "]";
    }

    @Override
    public Optional<CapacityRange> passage() {
      return Optional.of(capacityRange);
    }

    /** {@return what it lets through at least when its valve stands wide open, by which it is judged} */
    public FlowCapacity capacity() {
      return capacityRange.least();
    }
  }

  /**
   * A tee, wye or manifold that leads the air to several lines.
   *
   * @param facts what it tells of itself
   * @param capacityRange what it lets through to all its lines together, as well as that is known
   * @param upstream how it ends towards the supply
   * @param outlets how it ends towards the lines, at least two
   */
  record Splitter(PartFacts facts, CapacityRange capacityRange, End upstream, List<End> outlets)
      implements Part {
    /**
     * Checks the components.
     *
     * @param facts what it tells of itself
     * @param capacityRange what it lets through to all its lines together, as well as that is known
     * @param upstream how it ends towards the supply
     * @param outlets how it ends towards the lines, at least two
     * @throws IllegalArgumentException if it has fewer than two outlets
     */
    public Splitter {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(capacityRange, "capacityRange");
      Objects.requireNonNull(upstream, "upstream");
      outlets = List.copyOf(Objects.requireNonNull(outlets, "outlets"));
      if (outlets.size() < 2) {
        throw new IllegalArgumentException(
            "outlets of splitter " + facts.id() + " must be at least two, were " + outlets.size());
      }
    }

    @Override
    public Splitter withFacts(PartFacts other) {
      return new Splitter(other, capacityRange, upstream, outlets);
    }

    /**
     * Obtains one whose capacity is known.
     *
     * @param facts what it tells of itself
     * @param capacity what it lets through to all its lines together
     * @param upstream how it ends towards the supply
     * @param outlets how it ends towards the lines, at least two
     * @throws IllegalArgumentException if it has fewer than two outlets
     */
    public Splitter(PartFacts facts, FlowCapacity capacity, End upstream, List<End> outlets) {
      this(facts, CapacityRange.exactly(capacity), upstream, outlets);
    }

    @Override
    public Optional<CapacityRange> passage() {
      return Optional.of(capacityRange);
    }

    /** {@return what it lets through at least, by which it is judged} */
    public FlowCapacity capacity() {
      return capacityRange.least();
    }
  }

  /**
   * Piping that is there behind the outlet, such as between a regulator and a second outlet. A catalogue has none to
   * choose from.
   *
   * @param facts what it tells of itself
   * @param conduitRange its bore, length, wall and fittings, as well as they are known
   * @param upstream how it ends towards the supply
   * @param downstream how it ends towards the tool
   */
  record Pipe(PartFacts facts, ConduitRange conduitRange, End upstream, End downstream)
      implements Part {
    /**
     * Checks the components.
     *
     * @param facts what it tells of itself
     * @param conduitRange its bore, length, wall and fittings, as well as they are known
     * @param upstream how it ends towards the supply
     * @param downstream how it ends towards the tool
     */
    public Pipe {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(conduitRange, "conduitRange");
      Objects.requireNonNull(upstream, "upstream");
      Objects.requireNonNull(downstream, "downstream");
    }

    @Override
    public Pipe withFacts(PartFacts other) {
      return new Pipe(other, conduitRange, upstream, downstream);
    }

    @Override
    public Optional<ConduitRange> line() {
      return Optional.of(conduitRange);
    }

    /** {@return the one that lets least through of those it can be, by which the air is judged} */
    public Conduit conduit() {
      return conduitRange.least();
    }
  }

  /**
   * A bushing, nipple, hose tail or other piece between two ends.
   *
   * @param facts what it tells of itself
   * @param one one of its ends
   * @param other its other end
   * @param conduit its smallest bore and its length, with the loss where the air enters and leaves it
   */
  record Adapter(PartFacts facts, End one, End other, Conduit conduit) implements Part, TwoEnded {
    /**
     * Checks the components.
     *
     * @param facts what it tells of itself
     * @param one one of its ends
     * @param other its other end
     * @param conduit its smallest bore and its length, with the loss where the air enters and leaves it
     */
    public Adapter {
      Objects.requireNonNull(facts, "facts");
      Objects.requireNonNull(one, "one");
      Objects.requireNonNull(other, "other");
      Objects.requireNonNull(conduit, "conduit");
    }

    @Override
    public Adapter withFacts(PartFacts other) {
      return new Adapter(other, one, this.other, conduit);
    }

    @Override
    public String name() {
      return facts.name();
    }

    @Override
    public Optional<ConduitRange> line() {
      return Optional.of(ConduitRange.exactly(conduit));
    }

    /** {@return the bore of its conduit, never empty} */
    @Override
    public Optional<Length> smallestBore() {
      return Optional.of(conduit.bore());
    }
  }
}
