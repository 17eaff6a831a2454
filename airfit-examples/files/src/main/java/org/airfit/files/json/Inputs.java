package org.airfit.files.json;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import org.airfit.air.AirState;
import org.airfit.air.Compression;
import org.airfit.files.JobLabel;
import org.airfit.files.MeasuredSet;
import org.airfit.files.Shop;
import org.airfit.files.ShopCatalogue;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.ControlValve;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowCoefficients;
import org.airfit.flow.FlowElements;
import org.airfit.flow.FlowLoss;
import org.airfit.flow.FlowTable;
import org.airfit.flow.Orifice;
import org.airfit.flow.RatedPoint;
import org.airfit.joint.Bore;
import org.airfit.joint.HoseBend;
import org.airfit.joint.Tube;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.line.Wall;
import org.airfit.measure.PartSpread;
import org.airfit.measure.PitchCount;
import org.airfit.measure.PitchGauge;
import org.airfit.measure.Reading;
import org.airfit.plant.AirPlant;
import org.airfit.plant.Compressor;
import org.airfit.plant.PistonCompressor;
import org.airfit.plant.RegulatorCurve;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.Supply;
import org.airfit.plug.Clue;
import org.airfit.plug.Dimension;
import org.airfit.plug.Effort;
import org.airfit.plug.GaugeBall;
import org.airfit.plug.GrooveForm;
import org.airfit.plug.KnownPiece;
import org.airfit.plug.KnownPlugs;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.UniversalSocket;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.run.ToolDemand;
import org.airfit.select.Accessory;
import org.airfit.select.Catalogue;
import org.airfit.select.Layout;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;
import org.airfit.select.PlantYear;
import org.airfit.select.Slot;
import org.airfit.select.Subject;
import org.airfit.select.ToolLine;
import org.airfit.source.Source;
import org.airfit.thread.ForeignThread;
import org.airfit.thread.Gender;
import org.airfit.thread.Limits;
import org.airfit.thread.ThreadDesignation;
import org.airfit.thread.ThreadReadings;

/** Values that are objects and can be handed in: what each is made of, and how it is made again. */
final class Inputs {

  /** By their components, which are all that they hold. */
  private static final List<Class<?>> RECORDS = List.of(
      CapacityRange.class,
      ControlValve.class,
      FlowCoefficients.class,
      FlowLoss.class,
      RatedPoint.class,
      Bore.class,
      HoseBend.class,
      ConduitRange.class,
      PartSpread.Limits.class,
      PartSpread.Normal.class,
      PartSpread.Sample.class,
      PitchCount.class,
      Reading.class,
      AirPlant.class,
      Compressor.class,
      Compressor.Point.class,
      PistonCompressor.class,
      org.airfit.plant.Regulator.class,
      RegulatorCurve.class,
      RegulatorCurve.Point.class,
      Supply.Fixed.class,
      Clue.class,
      Effort.class,
      GaugeBall.class,
      KnownPiece.class,
      PlugReading.class,
      Provenance.class,
      UniversalSocket.class,
      Accessory.Drain.class,
      Accessory.EndCap.class,
      Accessory.HoseClamp.class,
      Accessory.HoseHook.class,
      Accessory.SealingWasher.class,
      Accessory.ThreadSealant.class,
      Accessory.WhipRestraint.class,
      Part.Adapter.class,
      Part.Device.class,
      Part.Hose.class,
      Part.Pipe.class,
      Part.Plug.class,
      Part.Regulator.class,
      Part.Socket.class,
      Part.Splitter.class,
      PlantYear.class,
      Slot.Coupling.class,
      Slot.Hose.class,
      Slot.InLine.class,
      Slot.Pipe.class,
      Slot.Regulated.class,
      Slot.Splitter.class,
      Subject.class,
      Source.class,
      Limits.class,
      ThreadDesignation.class,
      ShopCatalogue.class,
      MeasuredSet.class,
      Shop.class,
      JobLabel.class);

  private static final Map<Class<?>, Input> ALL = all();

  private final Map<String, Object> given;

  private Inputs(Map<String, Object> given) {
    this.given = given;
  }

  /**
   * A type that can be handed in.
   *
   * @param accessors the methods that tell what it is made of, in the order in which they are written
   * @param maker makes it of what they told; throws IllegalArgumentException where that makes none
   */
  record Input(List<String> accessors, Function<Map<String, Object>, Object> maker) {}

  /** How a type is made; empty for an answer. */
  static Optional<Input> of(Class<?> type) {
    return Optional.ofNullable(ALL.get(type));
  }

  /** The types that can be handed in as objects. */
  static Set<Class<?>> types() {
    return ALL.keySet();
  }

  private static Map<Class<?>, Input> all() {
    Map<Class<?>, Input> all = new LinkedHashMap<>();
    RECORDS.forEach(type -> all.put(type, ofRecord(type)));
    put(
        all,
        AirState.class,
        of -> AirState.of(of.the("pressure"), of.the("temperature")),
        "pressure",
        "temperature");
    put(all, Compression.class, Inputs::compression, "intake", "discharge", "stages");
    put(
        all,
        FlowCapacity.class,
        of -> FlowCapacity.of(new FlowCoefficients(
            of.the("conductance"),
            of.number("criticalPressureRatio"),
            of.number("subsonicIndex"),
            of.the("crackingPressure"))),
        "conductance",
        "criticalPressureRatio",
        "subsonicIndex",
        "crackingPressure");
    put(
        all,
        FlowTable.class,
        of -> FlowElements.ofTable(of.the("inlet"), of.the("points"), of.the("source")),
        "inlet",
        "points",
        "source");
    put(
        all,
        Orifice.class,
        of -> Orifice.of(of.the("diameter"), of.number("dischargeCoefficient")),
        "diameter",
        "dischargeCoefficient");
    put(
        all,
        Tube.class,
        of -> Tube.of(of.the("kind"), of.the("name"), of.the("type")),
        "kind",
        "type",
        "name");
    put(all, Conduit.class, Inputs::conduit, "bore", "length", "roughness", "wall", "fittingLoss");
    put(
        all,
        RegulatorElement.class,
        Inputs::regulator,
        "capacity",
        "set",
        "droop",
        "atFlow",
        "curve");
    put(
        all,
        PlugProfile.class,
        Inputs::profile,
        "id",
        "displayName",
        "aliases",
        "medium",
        "provenance",
        "source",
        "dimensions",
        "decidingDimensions",
        "missingDimensions",
        "grooveForm",
        "tipLengthBall");
    put(
        all,
        ReferenceSet.class,
        of -> ReferenceSet.of(of.the("name"), of.<List<PlugProfile>>the("profiles"))
            .withSockets(of.<List<UniversalSocket>>the("sockets")),
        "name",
        "profiles",
        "sockets");
    put(all, KnownPlugs.class, Inputs::known, "profileId", "instrument", "pieces");
    put(all, ToolDemand.class, Inputs::demand, "name", "rated", "ratedInlet", "duty", "load");
    put(
        all,
        Catalogue.class,
        of -> Catalogue.of(of.<List<Part>>the("parts"), of.<List<Accessory>>the("accessories")),
        "parts",
        "accessories");
    put(
        all,
        PartFacts.class,
        Inputs::facts,
        "id",
        "name",
        "price",
        "cost",
        "rating",
        "material",
        "lubrication",
        "coldest",
        "hottest",
        "outsideDiameter",
        "staticDissipative",
        "isSleeveGuarded",
        "isVented",
        "isExisting");
    put(
        all,
        Layout.class,
        of -> Layout.of(of.<List<Slot>>the("slots"), of.the("lines")),
        "slots",
        "lines");
    put(
        all,
        ToolLine.class,
        Inputs::line,
        "count",
        "tool",
        "demandRange",
        "leastRange",
        "inlet",
        "toolRating",
        "markedUpTo",
        "isImpactTool",
        "hasOwnWhipHose",
        "hasNoOwnWhipHose",
        "isBlowGun",
        "deadEnd",
        "isAutomaticFeed",
        "isBlasting",
        "isPainting",
        "slots",
        "lines");
    put(all, ForeignThread.class, Inputs::foreign, "name", "gender");
    put(
        all,
        ThreadReadings.class,
        Inputs::thread,
        "gender",
        "firstCrest",
        "lastCrest",
        "diameterUncertainty",
        "pitchCount",
        "gauge",
        "leafPitch",
        "leafMisread",
        "otherPitch",
        "otherPitchUncertainty",
        "taperSeen",
        "flankAngleDegrees",
        "flankAngleUncertaintyDegrees");
    return all;
  }

  private static void put(
      Map<Class<?>, Input> all,
      Class<?> type,
      Function<Inputs, Object> maker,
      String... accessors) {
    all.put(type, new Input(List.of(accessors), given -> maker.apply(new Inputs(given))));
  }

  private static Input ofRecord(Class<?> type) {
    RecordComponent[] components = type.getRecordComponents();
    List<String> names = Stream.of(components).map(RecordComponent::getName).toList();
    Class<?>[] types = Stream.of(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
    return new Input(names, given -> {
      Object[] values = names.stream().map(given::get).toArray();
      try {
        Constructor<?> whole = type.getConstructor(types);
        return whole.newInstance(values);
      } catch (InvocationTargetException e) {
        if (e.getCause() instanceof IllegalArgumentException refused) {
          throw refused;
        }
        throw new IllegalStateException(
            type.getName() + " failed with " + Arrays.toString(values), e);
      } catch (ReflectiveOperationException e) {
        throw new IllegalStateException(type.getName() + " must have a public constructor", e);
      }
    });
  }

  /** What the accessor of this name told; its caller knows the type. */
  @SuppressWarnings({"unchecked", "TypeParameterUnusedInFormals"
  }) // the maker knows its own accessors
  private <T> T the(String accessor) {
    return (T) Objects.requireNonNull(given.get(accessor), accessor);
  }

  private double number(String accessor) {
    return this.<Double>the(accessor);
  }

  private boolean yes(String accessor) {
    return this.<Boolean>the(accessor);
  }

  private <T> Optional<T> maybe(String accessor) {
    return this.the(accessor);
  }

  private static Object compression(Inputs of) {
    int stages = of.<Integer>the("stages");
    return stages == 0
        ? Compression.isothermal(of.the("intake"), of.the("discharge"))
        : Compression.staged(of.the("intake"), of.the("discharge"), stages);
  }

  private static Object conduit(Inputs of) {
    Conduit plain = Conduit.of(
            of.<Length>the("bore"), of.<Length>the("length"), of.<Length>the("roughness"))
        .withFittings(of.number("fittingLoss"));
    return of.<Wall>maybe("wall").map(plain::withWall).orElse(plain);
  }

  private static Object profile(Inputs of) {
    PlugProfile.Builder builder = PlugProfile.builder(of.the("id"))
        .displayName(of.the("displayName"))
        .aliases(of.<Collection<String>>the("aliases").toArray(String[]::new))
        .medium(of.the("medium"))
        .from(of.the("provenance"), of.the("source"));
    Map<Dimension, PartSpread> dimensions = of.the("dimensions");
    dimensions.forEach(builder::dimension);
    Set<Dimension> deciding = of.the("decidingDimensions");
    Set<Dimension> missing = of.the("missingDimensions");
    if (missing.isEmpty() || !deciding.equals(dimensions.keySet())) {
      builder.deciding(deciding); // those that decide were named: nothing else does
    }
    of.<GrooveForm>maybe("grooveForm").ifPresent(builder::grooveForm);
    of.<GaugeBall>maybe("tipLengthBall").ifPresent(builder::tipLengthBy);
    return builder
        .confirmUnusual()
        .build(); // whoever built it has confirmed it; the impossible is refused
  }

  private static Object regulator(Inputs of) {
    RegulatorElement plain = RegulatorElement.of(of.the("capacity"), of.the("set"));
    PressureDrop droop = of.the("droop");
    Optional<FreeAirFlow> atFlow = of.maybe("atFlow");
    Optional<RegulatorCurve> curve = of.maybe("curve");
    if (curve.isPresent()) {
      return plain.withCurve(curve.get(), droop);
    }
    return atFlow
        .map(flow -> plain.withDroop(droop, flow))
        .orElseGet(() -> plain.withDroopAtAnyFlow(droop));
  }

  private static Object known(Inputs of) {
    KnownPlugs plugs = KnownPlugs.of(of.the("profileId"), of.the("instrument"));
    for (KnownPiece piece : of.<List<KnownPiece>>the("pieces")) {
      plugs = plugs.with(piece);
    }
    return plugs;
  }

  private static Object demand(Inputs of) {
    Optional<AbsolutePressure> inlet = of.maybe("ratedInlet");
    ToolDemand tool = inlet.isPresent()
        ? ToolDemand.following(of.the("name"), of.the("rated"), inlet.get())
        : ToolDemand.fixed(of.the("name"), of.the("rated"));
    return tool.withDuty(of.number("duty")).withLoad(of.number("load"));
  }

  private static Object facts(Inputs of) {
    PartFacts facts = PartFacts.of(of.the("id"), of.the("name"));
    facts = with(facts, of.maybe("price"), (PartFacts known, Money it) -> known.withPrice(it));
    facts = with(facts, of.maybe("cost"), (PartFacts known, Money it) -> known.withCost(it));
    facts = with(facts, of.maybe("rating"), PartFacts::withRating);
    facts = with(facts, of.maybe("material"), PartFacts::withMaterial);
    facts = with(facts, of.maybe("lubrication"), PartFacts::withLubrication);
    facts = with(facts, of.maybe("outsideDiameter"), PartFacts::withOutsideDiameter);
    facts = with(facts, of.maybe("staticDissipative"), PartFacts::withStaticDissipative);
    Optional<Temperature> coldest = of.maybe("coldest");
    Optional<Temperature> hottest = of.maybe("hottest");
    requireBoth("coldest", coldest.isPresent(), "hottest", hottest.isPresent());
    if (coldest.isPresent() && hottest.isPresent()) {
      facts = facts.withTemperatures(coldest.get(), hottest.get());
    }
    facts = of.yes("isSleeveGuarded") ? facts.withSleeveGuarded() : facts;
    facts = of.yes("isVented") ? facts.withVent() : facts;
    return of.yes("isExisting") ? facts.asExisting() : facts;
  }

  private static <T> PartFacts with(
      PartFacts facts, Optional<T> told, BiFunction<PartFacts, T, PartFacts> change) {
    return told.map(value -> change.apply(facts, value)).orElse(facts);
  }

  private static Object line(Inputs of) {
    List<ToolLine> behind = of.the("lines");
    int count = of.<Integer>the("count");
    if (!behind.isEmpty()) {
      return ToolLine.toSplitter(of.<List<Slot>>the("slots"), behind).alike(count);
    }
    Optional<String> tool = of.maybe("tool");
    if (tool.isEmpty()
        || !of.given.keySet().containsAll(List.of("demandRange", "leastRange", "inlet"))) {
      throw new IllegalArgumentException(
          "one of tool, air, pressure and inlet of a line to a tool is missing; accepted: all four, or the lines"
              + " behind a splitter");
    }
    ToolLine line = ToolLine.to(
        tool.get(),
        of.<Range<FreeAirFlow>>the("demandRange"),
        of.<Range<GaugePressure>>the("leastRange"),
        of.the("inlet"),
        of.<List<Slot>>the("slots"));
    line = of.<GaugePressure>maybe("toolRating").map(line::withToolRating).orElse(line);
    line = of.<GaugePressure>maybe("markedUpTo").map(line::withMarkedUpTo).orElse(line);
    line = of.yes("isImpactTool") ? line.withImpactTool() : line;
    line = of.yes("hasOwnWhipHose") ? line.withOwnWhipHose() : line;
    line = of.yes("hasNoOwnWhipHose") ? line.withoutOwnWhipHose() : line;
    line = of.yes("isBlowGun") ? line.withBlowGun() : line;
    line = of.<GaugePressure>maybe("deadEnd").map(line::withBlowGun).orElse(line);
    line = of.yes("isAutomaticFeed") ? line.withAutomaticFeed() : line;
    line = of.yes("isBlasting") ? line.withBlasting() : line;
    line = of.yes("isPainting") ? line.withPainting() : line;
    return line.alike(count);
  }

  private static Object foreign(Inputs of) {
    String name = of.the("name");
    return ForeignThread.find(name, of.the("gender"))
        .orElseThrow(() -> new IllegalArgumentException(
            "name \"" + Plain.shown(name) + "\" is no thread known here; accepted: such as "
                + ForeignThread.all(of.the("gender")).get(0).name()));
  }

  private static Object thread(Inputs of) {
    Length crest = of.the("firstCrest");
    ThreadReadings read = (of.<Gender>the("gender") == Gender.MALE
            ? ThreadReadings.ofMale(crest)
            : ThreadReadings.ofFemale(crest))
        .withDiameterUncertainty(of.the("diameterUncertainty"));
    read = with(read, of.maybe("lastCrest"), ThreadReadings::withLastCrest);
    Optional<PitchCount> count = of.maybe("pitchCount");
    if (count.isPresent()) {
      read = read.withPitches(count.get().over(), count.get().pitches());
      if (!read.pitchCount().equals(count)) {
        throw new IllegalArgumentException("pitchCount.uncertainty must be "
            + Words.of(read.pitchCount().orElseThrow().uncertainty())
            + ", that of any length over pitches");
      }
    }
    read = leaf(of, read);
    Optional<Length> other = of.maybe("otherPitch");
    Optional<Length> uncertainty = of.maybe("otherPitchUncertainty");
    requireBoth("otherPitch", other.isPresent(), "otherPitchUncertainty", uncertainty.isPresent());
    if (other.isPresent() && uncertainty.isPresent()) {
      read = read.withPitch(other.get(), uncertainty.get());
    }
    read = with(read, of.maybe("taperSeen"), ThreadReadings::withTaperSeen);
    OptionalDouble angle = of.the("flankAngleDegrees");
    OptionalDouble doubt = of.the("flankAngleUncertaintyDegrees");
    requireBoth(
        "flankAngleDegrees", angle.isPresent(), "flankAngleUncertaintyDegrees", doubt.isPresent());
    return angle.isPresent() && doubt.isPresent()
        ? read.withFlankAngle(angle.getAsDouble(), doubt.getAsDouble())
        : read;
  }

  private static ThreadReadings leaf(Inputs of, ThreadReadings read) {
    Optional<PitchGauge> gauge = of.maybe("gauge");
    Optional<Length> pitch = of.maybe("leafPitch");
    OptionalDouble misread = of.the("leafMisread");
    requireBoth("gauge", gauge.isPresent(), "leafPitch", pitch.isPresent());
    if (gauge.isEmpty() || pitch.isEmpty()) {
      return read;
    }
    double perInch = new BigDecimal(1.0 / pitch.get().inches()) // as it stands on the leaf
        .round(new MathContext(12))
        .doubleValue();
    ThreadReadings with = gauge.get() == PitchGauge.INCH
        ? read.withThreadsPerInch(perInch)
        : read.withMetricLeaf(pitch.get());
    return misread.isPresent() ? with.withLeafMisread(misread.getAsDouble()) : with;
  }

  private static void requireBoth(String one, boolean isOne, String other, boolean isOther) {
    if (isOne != isOther) {
      throw new IllegalArgumentException(
          one + " and " + other + " go together; tell both or leave both out");
    }
  }

  private static <T> ThreadReadings with(
      ThreadReadings read, Optional<T> told, BiFunction<ThreadReadings, T, ThreadReadings> change) {
    return told.map(value -> change.apply(read, value)).orElse(read);
  }
}
