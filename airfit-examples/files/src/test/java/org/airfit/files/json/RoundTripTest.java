package org.airfit.files.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.DoubleFunction;
import org.airfit.air.AirState;
import org.airfit.air.Compression;
import org.airfit.files.Csv;
import org.airfit.files.Disk;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.JobFile;
import org.airfit.files.JobLabel;
import org.airfit.files.Json;
import org.airfit.files.MeasuredSet;
import org.airfit.files.NetworkJob;
import org.airfit.files.Shop;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.ControlValve;
import org.airfit.flow.FlowElements;
import org.airfit.flow.FlowLoss;
import org.airfit.flow.Orifice;
import org.airfit.flow.RatedPoint;
import org.airfit.flow.Rating;
import org.airfit.joint.End;
import org.airfit.joint.HoseBend;
import org.airfit.joint.Tube;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.PitchCount;
import org.airfit.measure.Reading;
import org.airfit.plant.AirPlant;
import org.airfit.plant.Compressor;
import org.airfit.plant.PistonCompressor;
import org.airfit.plant.Regulator;
import org.airfit.plant.RegulatorCurve;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.Supply;
import org.airfit.plug.Clue;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.Effort;
import org.airfit.plug.GaugeBall;
import org.airfit.plug.GrooveForm;
import org.airfit.plug.KnownPiece;
import org.airfit.plug.KnownPlugs;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.Provenance;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.Density;
import org.airfit.quantity.DynamicViscosity;
import org.airfit.quantity.Energy;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.Power;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.quantity.Velocity;
import org.airfit.quantity.Volume;
import org.airfit.run.ToolDemand;
import org.airfit.select.Accessory;
import org.airfit.select.Catalogue;
import org.airfit.select.DeviceKind;
import org.airfit.select.Layout;
import org.airfit.select.Lubrication;
import org.airfit.select.Material;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;
import org.airfit.select.PlantYear;
import org.airfit.select.RegulatorKind;
import org.airfit.select.Slot;
import org.airfit.select.Subject;
import org.airfit.select.ToolLine;
import org.airfit.select.Topic;
import org.airfit.source.Source;
import org.airfit.thread.ForeignThread;
import org.airfit.thread.Gender;
import org.airfit.thread.ThreadDesignation;
import org.airfit.thread.ThreadFamily;
import org.airfit.thread.ThreadReadings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What can be handed in is written and read as the very same value. */
class RoundTripTest {

  private static final JsonMapper MAPPER = AirfitModule.strictMapper();

  private static Object again(Object value, Class<?> type) throws Exception {
    String text = MAPPER.writeValueAsString(value);
    try {
      return MAPPER.readValue(text, type);
    } catch (WrongJsonException e) {
      throw new AssertionError(text + "\n" + e.getMessage(), e);
    }
  }

  /** What people type. */
  @ParameterizedTest
  @CsvSource({
    "GaugePressure, 90 psig",
    "GaugePressure, 6.2 bar(g)",
    "AbsolutePressure, 1.013 bar(a)",
    "Length, 0.25 in",
    "Length, 11.93 mm",
    "Length, 25 ft",
    "Length, 12.5 m",
    "FreeAirFlow, 16 L/s ANR",
    "FreeAirFlow, 34 scfm (68 °F)",
    "Temperature, 20 °C",
    "Temperature, 70 °F",
    "PressureDrop, 0.4 bar",
    "Volume, 80 US gal",
    "Volume, 300 L",
    "Power, 7.5 kW"
  })
  void a_quantity_is_written_as_it_was_typed(String type, String typed) throws Exception {
    Class<?> quantity = Class.forName("org.airfit.quantity." + type);
    Object value = MAPPER.readValue("\"" + typed + "\"", quantity);
    String text = MAPPER.writeValueAsString(value);
    assertThat(text).isEqualTo("\"" + typed + "\"");
  }

  /** Every double survives, to the last bit. */
  @Test
  void a_computed_quantity_is_read_as_the_same_double() throws Exception {
    List<DoubleFunction<Object>> kinds = List.of(
        Length::ofMetres,
        Length::ofInches,
        GaugePressure::ofPsi,
        AbsolutePressure::ofPascals,
        PressureDrop::ofBar,
        Area::ofSquareInches,
        Volume::ofUsGallons,
        MassFlow::ofPoundsPerMinute,
        FreeAirFlow::ofScfm68F,
        FreeAirFlow::ofScfm60F,
        FreeAirFlow::ofAnrLitresPerSecond,
        Density::ofPoundsPerCubicFoot,
        DynamicViscosity::ofMicropascalSeconds,
        Energy::ofKilowattHours,
        Power::ofHorsepower,
        SonicConductance::ofCubicDecimetresPerSecondBar,
        Temperature::ofKelvins,
        Velocity::ofFeetPerSecond,
        ValveCoefficient::ofCv);
    SplittableRandom random = new SplittableRandom(20261129L);
    for (DoubleFunction<Object> kind : kinds) {
      for (int i = 0; i < 500; i++) {
        double number = Math.exp(random.nextDouble(-9.0, 9.0));
        Object value = kind.apply(number);
        assertThat(again(value, value.getClass())).isEqualTo(value);
      }
    }
  }

  @Test
  void a_range_is_one_text() throws Exception {
    Slot.Hose hose = Slot.hose("h", new Range<>(Length.parse("25 ft"), Length.parse("30 ft")));
    assertThat(MAPPER.readTree(MAPPER.writeValueAsString(hose)).get("reach").asText())
        .isEqualTo("25 to 30 ft");
    assertThat(again(hose, Slot.class)).isEqualTo(hose);
  }

  static List<Object> values() throws Exception {
    Source source = Source.measured("a bench");
    Length inch = Length.parse("0.25 in");
    GaugePressure bar = GaugePressure.parse("10 bar(g)");
    AbsolutePressure sea = AbsolutePressure.STANDARD_ATMOSPHERE;
    AirState air = AirState.of(AbsolutePressure.ofBar(8.013), Temperature.ofCelsius(20.0));
    AirState around = AirState.of(sea, Temperature.ofCelsius(20.0));
    FreeAirFlow flow = FreeAirFlow.parse("34 scfm (68 °F)");
    End male = End.parse("1/4 NPT male");
    End female = End.parse("1/4 NPT female");
    CapacityRange capacity = Rating.parse("34 scfm at 90 psig").capacity();
    PartFacts facts = PartFacts.of("p-1", "a part")
        .withPrice(Money.parse("12.50 USD"))
        .withCost(Money.parse("7.10 USD"))
        .withRating(bar)
        .withMaterial(Material.BRASS)
        .withLubrication(Lubrication.DRY)
        .withOutsideDiameter(Length.parse("18 mm"))
        .withStaticDissipative(false)
        .withTemperatures(Temperature.parse("-10 °C"), Temperature.parse("60 °C"))
        .withSleeveGuarded()
        .withVent()
        .asExisting();
    Conduit conduit = Conduit.of(inch, Length.parse("25 ft"), Length.parse("0.01 mm"));
    org.airfit.line.ConduitRange run = org.airfit.line.ConduitRange.exactly(conduit);
    Part.Socket socket = new Part.Socket(facts, Set.of("tern"), male, capacity);
    Part.Plug plug = new Part.Plug(facts, "tern", female);
    Part.Hose hose = new Part.Hose(facts, HoseBore.parse("1/4 in"), run, male, male);
    Part.Device filter = new Part.Device(facts, DeviceKind.FILTER, capacity, female, male);
    Part.Regulator regulator = new Part.Regulator(
        facts,
        RegulatorKind.FILTER_REGULATOR,
        capacity,
        PressureDrop.parse("6 psi"),
        flow,
        female,
        male);
    Part.Pipe pipe = new Part.Pipe(facts, run, female, male);
    Part.Splitter splitter = new Part.Splitter(facts, capacity, male, List.of(female, female));
    Part.Adapter adapter = new Part.Adapter(facts, male, female, conduit);
    PartSpread.Sample sample = new PartSpread.Sample(5, inch, Length.parse("0.011 mm"));
    KnownPiece piece = new KnownPiece("no. 1", Map.of(Dimension.TIP_DIAMETER, inch));
    Compression compression = Compression.staged(around, AbsolutePressure.ofBar(8.0), 2);
    AirPlant plant = new AirPlant(
        compression, 0.7, 0.9, java.time.Duration.ofHours(2000), Money.parse("0.2 USD"));
    PlugProfile profile = PlugProfile.builder("tern")
        .displayName("Tern")
        .aliases("T", "TT")
        .from(Provenance.userMeasured(5), source)
        .dimension(Dimension.TIP_DIAMETER, sample)
        .dimension(
            Dimension.COLLAR_DIAMETER,
            new PartSpread.Limits(Length.parse("10.1 mm"), Length.parse("10.2 mm")))
        .deciding(List.of(Dimension.TIP_DIAMETER))
        .grooveForm(GrooveForm.VEE)
        .build();
    PlugProfile partlyKnown = PlugProfile.builder("skua")
        .displayName("Skua")
        .from(Provenance.userMeasured(5), source)
        .dimension(Dimension.TIP_DIAMETER, sample)
        .build();
    PlugProfile known = PlugProfile.builder("skua")
        .displayName("Skua")
        .from(Provenance.userMeasured(5), source)
        .dimension(Dimension.TIP_DIAMETER, sample)
        .deciding(List.of(Dimension.TIP_DIAMETER))
        .build();
    ToolLine tool = ToolLine.to(
            "sander",
            Range.exactly(flow),
            new Range<>(GaugePressure.parse("70 psig"), GaugePressure.parse("80 psig")),
            female,
            List.of(Slot.coupling("at the tool")))
        .withToolRating(bar)
        .withImpactTool()
        .withOwnWhipHose()
        .withBlowGun(GaugePressure.parse("2 bar(g)"))
        .withAutomaticFeed()
        .withBlasting()
        .withPainting();
    Compressor.Point point =
        new Compressor.Point(AbsolutePressure.ofBar(8.0), FreeAirFlow.parse("30 L/s ANR"));
    List<Object> values = new ArrayList<>(List.of(
        air,
        compression,
        Compression.isothermal(around, sea),
        org.airfit.flow.FlowCapacity.of(SonicConductance.parse("8 dm3/(s bar)"), 0.3)
            .withSubsonicIndex(0.55)
            .withCrackingPressure(PressureDrop.parse("0.02 bar")),
        capacity,
        capacity.least().figures(),
        new ControlValve(ValveCoefficient.ofCv(1.7), 0.7),
        new FlowLoss(flow, PressureDrop.parse("0.1 bar")),
        new RatedPoint(flow, sea, PressureDrop.parse("0.1 bar"), Temperature.ofCelsius(20.0)),
        FlowElements.ofTable(
            air,
            List.of(
                new FlowLoss(FreeAirFlow.parse("10 L/s ANR"), PressureDrop.parse("0.1 bar")),
                new FlowLoss(FreeAirFlow.parse("20 L/s ANR"), PressureDrop.parse("0.4 bar"))),
            source),
        Orifice.of(inch, 0.61),
        new HoseBend(90.0, Length.parse("100 mm"), inch),
        Tube.steelPipe(NominalThreadSize.ONE, 40),
        conduit.withWall(Wall.SMOOTH_RUBBER_HOSE).withFittings(1.3),
        conduit,
        run,
        sample,
        new PartSpread.Limits(inch, Length.parse("6.4 mm")),
        new PartSpread.Normal(inch, Length.parse("0.02 mm")),
        new PitchCount(inch, 5, Length.parse("0.05 mm")),
        Reading.by(Instrument.DIGITAL_CALIPER, org.airfit.measure.Access.OUTSIDE, inch),
        Reading.of(inch, Length.parse("0.02 mm"))));
    values.addAll(List.of(
        plant,
        new PlantYear(plant, flow, FreeAirFlow.parse("0.01 L/s ANR")),
        point,
        new Compressor(
            List.of(
                point,
                new Compressor.Point(AbsolutePressure.ofBar(9.0), FreeAirFlow.parse("28 L/s ANR"))),
            AbsolutePressure.ofBar(8.0),
            AbsolutePressure.ofBar(9.0),
            Volume.parse("300 L"),
            Temperature.ofCelsius(20.0)),
        new PistonCompressor(1, 0.05),
        Supply.fixed(air),
        new Regulator(
            air,
            flow,
            AbsolutePressure.ofBar(7.5),
            java.util.Optional.of(AbsolutePressure.ofBar(9.0))),
        RegulatorElement.of(capacity.least(), AbsolutePressure.ofBar(7.0))
            .withDroop(PressureDrop.parse("0.3 bar"), flow),
        RegulatorCurve.parse("90 psig at 0 scfm; 86 psig at 20 scfm"),
        new RegulatorCurve.Point(flow, GaugePressure.parse("86 psi(g)")),
        ToolDemand.following("a sander", flow, AbsolutePressure.ofBar(7.2))
            .withDuty(0.3)
            .withLoad(0.9),
        ToolDemand.fixed("a gun", flow),
        Clue.gauge("tern", true, 0.95),
        Clue.grooveForm(GrooveForm.FLAT, 0.9),
        Effort.usual(),
        new GaugeBall(inch),
        piece,
        KnownPlugs.of("tern", Instrument.DIGITAL_CALIPER).with(piece),
        PlugReading.of(Dimension.BORE, Instrument.DIGITAL_CALIPER, inch),
        Provenance.userMeasured(4),
        profile,
        DemoProfiles.birds(),
        new org.airfit.plug.UniversalSocket("both", Set.of("tern", "gull"), source),
        source));
    values.addAll(List.of(
        facts,
        socket,
        plug,
        hose,
        filter,
        regulator,
        pipe,
        splitter,
        adapter,
        new Accessory.Drain(facts),
        new Accessory.EndCap(facts, "tern"),
        new Accessory.HoseClamp(facts, inch, Length.parse("20 mm")),
        new Accessory.HoseHook(facts),
        new Accessory.SealingWasher(facts, "G 1/4"),
        new Accessory.ThreadSealant(facts, NominalThreadSize.TWO),
        new Accessory.WhipRestraint(facts, HoseBore.parse("1/2 in"), HoseBore.parse("1 in")),
        Slot.coupling("c").withSocket(socket).withPlug(plug),
        Slot.coupling("d").ofSameProfileAs("c"),
        Slot.hose("h", Length.parse("10 m")).ofBore(HoseBore.parse("3/8 in")),
        Slot.inLine("f", DeviceKind.REEL),
        Slot.pipe("p", run, female, male),
        Slot.regulator("r", RegulatorKind.REGULATOR, GaugePressure.parse("85 psi(g)")),
        Slot.splitter("s"),
        Layout.of(List.of(Slot.coupling("c"), Slot.hose("h", Length.parse("10 m")))),
        Catalogue.of(
            List.of(new Part.Plug(PartFacts.of("p-2", "b"), "tern", male)),
            List.of(new Accessory.Drain(PartFacts.of("p-3", "c")))),
        new org.airfit.joint.Bore(
            new org.airfit.thread.Limits(inch, Length.parse("7 mm")), "as sold", source),
        partlyKnown,
        known,
        tool.alike(2),
        tool.withoutOwnWhipHose(),
        Layout.of(
            List.of(Slot.splitter("manifold")),
            List.of(
                tool,
                ToolLine.toSplitter(
                    List.of(Slot.splitter("second")),
                    List.of(tool.with(List.of(Slot.coupling("at another"))).alike(2))))),
        Subject.ofJob(Topic.SUPPLY),
        Subject.of(Topic.AIR_NEEDED, "the sander"),
        new org.airfit.thread.Limits(inch, Length.parse("7 mm")),
        new ThreadDesignation(ThreadFamily.NPT, NominalThreadSize.ONE_QUARTER, Gender.MALE),
        ForeignThread.all(Gender.FEMALE).get(3),
        ThreadReadings.ofMale(Length.parse("13.1 mm"), Length.parse("7.06 mm"), 5)
            .withLastCrest(Length.parse("13.6 mm"))
            .withThreadsPerInch(11.5)
            .withLeafMisread(0.1)
            .withPitch(Length.parse("1.411 mm"), Length.parse("0.01 mm"))
            .withDiameterUncertainty(Length.parse("0.02 mm"))
            .withTaperSeen(true)
            .withFlankAngle(60.0, 1.0),
        ThreadReadings.ofFemale(Length.parse("11.4 mm")).withMetricLeaf(Length.parse("1.25 mm")),
        new JobLabel(
            java.util.Optional.of("17"),
            java.util.Optional.of(java.time.LocalDate.of(2026, 11, 29))),
        new Shop(
            "a shop",
            List.of("a street"),
            java.util.Optional.of("1"),
            java.util.Optional.empty(),
            java.util.Optional.of(30),
            java.util.Optional.empty()),
        new MeasuredSet(
            DemoProfiles.birds(), List.of(KnownPlugs.of("tern", Instrument.DIGITAL_CALIPER))),
        Disk.catalogue(Path.of("..", "jobs", "boatyard", "catalogue.json"))));
    return values;
  }

  @ParameterizedTest
  @MethodSource("values")
  void a_value_that_can_be_handed_in_is_read_as_it_was(Object value) throws Exception {
    assertThat(again(value, value.getClass())).isEqualTo(value);
  }

  @Test
  void no_type_that_can_be_handed_in_is_untried() throws Exception {
    Set<Class<?>> tried = new HashSet<>();
    values().forEach(value -> tried.add(value.getClass()));
    assertThat(Inputs.types()).allSatisfy(type -> assertThat(tried).contains(type));
  }

  /** A sealed value is read as what its kind says, by the type that it is one of. */
  @Test
  void a_value_of_several_kinds_is_read_by_its_kind() throws Exception {
    Set<Class<?>> tried = new LinkedHashSet<>();
    for (Object value : values()) {
      for (Class<?> above : Kinds.sealedTypes()) {
        if (above.isInstance(value)) {
          assertThat(again(value, above)).isEqualTo(value);
          tried.add(above);
        }
      }
    }
    assertThat(tried).hasSizeGreaterThanOrEqualTo(6);
  }

  @Test
  void every_job_and_network_of_the_examples_is_read_as_it_was() throws Exception {
    int tried = 0;
    for (Map<String, Object> answers : Answers.toAll().values()) {
      for (Object value : answers.values()) {
        if (value instanceof Job || value instanceof NetworkJob) {
          assertThat(again(value, value.getClass())).isEqualTo(value);
          tried++;
        }
      }
    }
    assertThat(tried).isGreaterThan(25);
  }

  /** The rules of the works stand in a file of their own. */
  @Test
  void a_job_that_names_a_table_of_rules_is_read_as_it_was() throws Exception {
    Path file = Path.of("..", "jobs", "boatyard", "weak-sander.json");
    Map<String, Object> fields = new LinkedHashMap<>(Disk.fields(file, new ArrayList<>()));
    fields.put("rules", Map.of("own", "works.csv"));
    List<List<String>> rows = Csv.read("works.csv", """
        jurisdiction,citation,text,source,basis,quantity,operator,limit,unit,asks
        the works,rule 3,hoses stay below {limit},notice board,practice,line pressure,<,9,bar,forbids
        """);
    String catalogue = Files.readString(file.resolveSibling("catalogue.json"));
    Job job = JobFile.read(new Document(
        "job.json",
        fields,
        name -> name.equals("works.csv")
            ? Document.of(name, rows)
            : Document.of(name, Json.read(name, catalogue))));
    assertThat(job.asFiled().orElseThrow().files()).containsOnlyKeys("works.csv");
    assertThat(again(job, Job.class)).isEqualTo(job);
    String json = MAPPER.writeValueAsString(job);
    assertThatThrownBy(() -> MAPPER.readValue(
            json.replace("\"files\":{\"works.csv\"", "\"files\":{\"w.csv\""), Job.class))
        .hasMessageContaining("works.csv");
    assertThatThrownBy(
            () -> MAPPER.readValue(json.replace("\"supply\":", "\"supplly\":"), Job.class))
        .hasMessageContaining("job.supply")
        .hasMessageContaining("accepted");
    Job other =
        job.withRequirement(job.requirement().toBuilder().marking("yellow band").build());
    assertThatThrownBy(() -> MAPPER.writeValueAsString(other))
        .hasMessageContaining("as its file says it");
  }

  /** Each word, and each double among the quantities, of the answers to all jobs and of all catalogues. */
  @Test
  void every_text_of_the_examples_answers_is_read_as_the_value_it_was() throws Exception {
    Map<Class<?>, Integer> tried = new LinkedHashMap<>();
    Set<Object> known = new HashSet<>();
    for (Map<String, Object> answers : Answers.toAll().values()) {
      for (Object value : Answers.in(new ArrayList<>(answers.values()))) {
        Class<?> type = value instanceof Enum<?> one ? one.getDeclaringClass() : value.getClass();
        boolean isRead =
            (Words.isWord(type) && !(value instanceof Range)) || Inputs.of(type).isPresent();
        if (isRead && known.add(value)) {
          assertThat(again(value, type)).as(type.getName()).isEqualTo(value);
          tried.merge(type, 1, Integer::sum);
        }
      }
    }
    assertThat(tried.keySet()).hasSizeGreaterThan(50);
    assertThat(tried.values().stream().mapToInt(each -> each).sum()).isGreaterThan(2_000);
  }
}
