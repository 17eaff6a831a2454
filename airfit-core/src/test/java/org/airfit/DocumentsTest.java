package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.airfit.air.AirPurity;
import org.airfit.air.AirState;
import org.airfit.air.AirTreatment;
import org.airfit.air.Compression;
import org.airfit.air.DewPoint;
import org.airfit.air.PurityAnswer;
import org.airfit.air.PurityClass;
import org.airfit.air.PurityVerdict;
import org.airfit.air.TreatmentKind;
import org.airfit.air.TreatmentRating;
import org.airfit.air.TreatmentStage;
import org.airfit.air.TreatmentSupply;
import org.airfit.air.WaterBalance;
import org.airfit.flow.FannoFlow;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.flow.FlowElements;
import org.airfit.flow.FlowLoss;
import org.airfit.flow.FlowTable;
import org.airfit.flow.GroupFlow;
import org.airfit.flow.IsentropicFlow;
import org.airfit.flow.IsothermalFlow;
import org.airfit.flow.Orifice;
import org.airfit.flow.OrificeEdge;
import org.airfit.flow.PartsInParallel;
import org.airfit.flow.PartsInSeries;
import org.airfit.joint.AdapterShape;
import org.airfit.joint.Chain;
import org.airfit.joint.End;
import org.airfit.joint.Engagement;
import org.airfit.joint.HoseBend;
import org.airfit.joint.HoseRules;
import org.airfit.joint.Mating;
import org.airfit.joint.Seal;
import org.airfit.joint.StandardAdapter;
import org.airfit.joint.Tube;
import org.airfit.joint.Turning;
import org.airfit.line.BoreStep;
import org.airfit.line.Conduit;
import org.airfit.line.FrictionLaw;
import org.airfit.line.PipeFitting;
import org.airfit.line.Wall;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.network.BranchFlow;
import org.airfit.network.DayChange;
import org.airfit.network.DayResult;
import org.airfit.network.DemandTimes;
import org.airfit.network.LineReceiver;
import org.airfit.network.Network;
import org.airfit.network.NetworkResult;
import org.airfit.network.NetworkSimulation;
import org.airfit.network.PlantDay;
import org.airfit.network.SupplyFlow;
import org.airfit.network.TimedUse;
import org.airfit.plant.AirPlant;
import org.airfit.plant.AirPrice;
import org.airfit.plant.Leak;
import org.airfit.plant.LeakLedger;
import org.airfit.plant.LeakSize;
import org.airfit.plant.LeakTest;
import org.airfit.plant.PistonCompressor;
import org.airfit.plant.PressureBand;
import org.airfit.plant.Supply;
import org.airfit.plant.TimedCompressor;
import org.airfit.plant.YearlyCost;
import org.airfit.plug.AliasLookup;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.PairOutcome;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.PlugVerdict;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.SetComparison;
import org.airfit.plug.SocketAnswer;
import org.airfit.plug.ToldPair;
import org.airfit.plug.UniversalSocket;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Area;
import org.airfit.quantity.DecimalMark;
import org.airfit.quantity.Density;
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
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.quantity.Volume;
import org.airfit.run.Change;
import org.airfit.run.Diagnosis;
import org.airfit.run.ElementLoss;
import org.airfit.run.Explanation;
import org.airfit.run.GaugeClass;
import org.airfit.run.GaugeReading;
import org.airfit.run.GaugeTest;
import org.airfit.run.LargestFlow;
import org.airfit.run.LongestHose;
import org.airfit.run.NextGaugeReading;
import org.airfit.run.PressureGauge;
import org.airfit.run.RankedChange;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.run.Sensitivity;
import org.airfit.run.SupplyNeeded;
import org.airfit.run.ToolDemand;
import org.airfit.run.ToolState;
import org.airfit.run.WiderHose;
import org.airfit.safety.Caution;
import org.airfit.safety.Judgement;
import org.airfit.safety.Medium;
import org.airfit.safety.Ruling;
import org.airfit.safety.SafetyRule;
import org.airfit.safety.SafetyRules;
import org.airfit.safety.Situation;
import org.airfit.select.Accessory;
import org.airfit.select.Bay;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Catalogue;
import org.airfit.select.ChangeOver;
import org.airfit.select.ChangeStep;
import org.airfit.select.CouplingInventory;
import org.airfit.select.DeviceKind;
import org.airfit.select.FaultKind;
import org.airfit.select.Finding;
import org.airfit.select.Interview;
import org.airfit.select.JobFindings;
import org.airfit.select.Layout;
import org.airfit.select.ListFault;
import org.airfit.select.ListedPart;
import org.airfit.select.Material;
import org.airfit.select.MixedPair;
import org.airfit.select.Offer;
import org.airfit.select.Offers;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;
import org.airfit.select.PlantYear;
import org.airfit.select.PossibleAnswer;
import org.airfit.select.PriceList;
import org.airfit.select.PriceListCheck;
import org.airfit.select.Proposal;
import org.airfit.select.Question;
import org.airfit.select.Requirement;
import org.airfit.select.Rule;
import org.airfit.select.RuleOutcome;
import org.airfit.select.Selection;
import org.airfit.select.Shelf;
import org.airfit.select.Slot;
import org.airfit.select.Topic;
import org.airfit.source.Source;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Limits;
import org.airfit.thread.NptThread;
import org.airfit.thread.ThreadForm;
import org.airfit.thread.ThreadIdentification;
import org.airfit.thread.ThreadReadings;
import org.airfit.working.CardAnswer;
import org.airfit.working.Formula;
import org.airfit.working.PencilCard;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Working;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the guide says of its programs is true, by hand or by a source, and the links of all documents lead somewhere.
 * That the programs themselves compile and print what they say is held by {@link SnippetsTest}.
 */
class DocumentsTest {

  private static final Path ROOT = Path.of("..");

  private static String read(String file) throws IOException {
    return Files.readString(ROOT.resolve(file));
  }

  @Test
  void quantities_compare_add_up_and_are_read_back() {
    Optional<Length> widest =
        Stream.of("3/8 in", "1/2 in").map(Length::parse).max(Length::compareTo);
    PressureDrop drops = PressureDrop.parse("4 psi").plus(PressureDrop.parse("6 psi"));
    GaugePressure atTool = GaugePressure.parse("90 psig").minus(drops);
    GaugePressure typed = DecimalMark.COMMA.read("6,2 bar(g)", GaugePressure::parse);
    FreeAirFlow counted = FreeAirFlow.parse("16 L/s at shop (15 °C, 100 kPa(a), dry)");
    assertThat(widest).hasValue(Length.ofInches(0.5));
    assertThat(atTool.psi()).isCloseTo(80.0, within(1e-9));
    assertThat(typed).isEqualTo(GaugePressure.ofBar(6.2));
    assertThat(FreeAirFlow.parse(counted.toString())).isEqualTo(counted);
    assertThat(counted.reference().temperature()).isEqualTo(Temperature.ofCelsius(15));
  }

  @Test
  void the_workings_of_the_guide_are_in_us_units_and_complete() {
    AirState warm = AirState.of(AbsolutePressure.parse("104.7 psia"), Temperature.parse("68 °F"));
    String inPounds = warm.working(UnitSystem.US).toText();
    String forThePaper = warm.working().toLatex();
    assertThat(inPounds).contains("psi", "°R");
    assertThat(forThePaper).contains("\\frac");
    Symbol pressure = Symbol.of("p", ValueKind.PRESSURE);
    Symbol constant = Symbol.of("R", ValueKind.HEAT_CAPACITY);
    Symbol temperature = Symbol.of("T", ValueKind.TEMPERATURE);
    Symbol density = Symbol.of("ρ", ValueKind.DENSITY);
    Source law = Source.handbook("ideal gas");
    Formula gas = Formula.of(
        "Density",
        "⟨ρ⟩ = [144] × ⟨p⟩ / (⟨R⟩ × ⟨T⟩)",
        law,
        density,
        pressure,
        constant,
        temperature);
    Working own = Working.titled("Air in the receiver", UnitSystem.US)
        .given(pressure, warm.pressure().pascals(), 4)
        .given(constant, 287.05287, 5)
        .given(temperature, warm.temperature().kelvins(), 4)
        .step(gas, warm.density().kilogramsPerCubicMetre(), 4)
        .answer(density)
        .build();
    assertThat(own.toText()).contains("144", "lb/ft³");
    assertThat(own.answers()).hasSize(1);
  }

  @Test
  void the_ends_of_the_guide_are_read() {
    End nipple = End.parse("1/4-18 NPT male");
    End sameNipple = End.parse("1/4 MNPT");
    End maleByItsLetter = End.parse("R 1/4");
    End barb = End.parse("3/8 in barb");
    End pushIn = End.parse("8 mm push-in");
    assertThat(pushIn).isEqualTo(new End.PushIn(Length.parse("8 mm")));
    Optional<String> remark = End.remarkOn("3-8 NPT male");
    assertThat(sameNipple).isEqualTo(nipple);
    assertThat(maleByItsLetter).hasToString("R 1/4 male");
    assertThat(barb).isInstanceOf(End.Barb.class);
    assertThat(remark).isPresent();
  }

  @Test
  void the_ends_of_the_guide_with_a_form_beside_the_thread_are_judged() {
    End flare = End.parse("-6 flare male");
    End port = End.parse("9/16-18 O-ring port");
    assertThat(flare).hasToString("37° flare 9/16-18 male");
    assertThat(Mating.of(flare, port).verdict().isSound()).isFalse();
    Mating flares =
        Mating.of(End.parse("37° flare 7/16-20 male"), End.parse("45° flare 7/16-20 nut"));
    assertThat(flares.verdict().isSound()).isFalse();
    assertThat(flares.reason()).contains("swivel adapter", "flare adapter");
    Mating washer = Mating.of(End.parse("G 1/4 male with washer"), End.parse("G 1/4 port"));
    Optional<Seal> tightBy = washer.seal();
    Optional<String> toBuy = washer.sealItem();
    Optional<Turning> turned = washer.turning();
    assertThat(tightBy).contains(Seal.WASHER);
    assertThat(toBuy).contains("sealing washer for G 1/4");
    assertThat(turned).contains(Turning.PART);
    Mating claws = Mating.of(End.parse("two-lug claw"), End.parse("European claw"));
    assertThat(claws.verdict().isSound()).isFalse();
    End tube = End.parse("6 mm tube, wall 1 mm");
    assertThat(tube.clearBore()).isPresent();
  }

  @Test
  void the_threads_of_the_guide_are_judged() {
    ThreadReadings diameters =
        ThreadReadings.ofMale(Length.parse("13.25 mm")).withLastCrest(Length.parse("13.71 mm"));
    ThreadIdentification guess = ThreadIdentification.of(diameters);
    ThreadIdentification sure =
        ThreadIdentification.of(diameters.withPitches(Length.parse("7.06 mm"), 5));
    ThreadIdentification misread = ThreadIdentification.of(diameters.withThreadsPerInch(19));
    ThreadIdentification metric = ThreadIdentification.of(
        ThreadReadings.ofMale(Length.parse("13.9 mm"), Length.parse("7.5 mm"), 5)
            .withLastCrest(Length.parse("13.9 mm")));
    assertThat(guess.identified()).isEmpty();
    assertThat(sure.identified().orElseThrow()).hasToString("1/4 NPT male");
    assertThat(misread.explanations().get(0))
        .hasToString("1/4 NPT male if the leaf of the pitch gauge was misread");
    assertThat(metric.foreign().orElseThrow()).hasToString("M14x1.5 male");
    assertThat(End.remarkOn("R 1/4 female")).isPresent();
  }

  @Test
  void the_tool_of_the_guide_balances() {
    AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
    Conduit wider =
        Conduit.of(Length.parse("1/2 in"), Length.parse("15 m"), Length.parse("0.01 mm"));
    Run run = Run.from(
            AirState.of(
                GaugePressure.parse("7 bar(g)").absolute(atmosphere), Temperature.parse("20 °C")),
            atmosphere)
        .through("hose", wider.withBore(Length.parse("3/8 in")));
    ToolDemand wrench = ToolDemand.following(
        "wrench",
        FreeAirFlow.parse("25 scfm"),
        GaugePressure.parse("90 psig").absolute(atmosphere));
    MassFlow taken = FreeAirFlow.parse("25 scfm").massFlow();
    List<LongestHose> longest =
        LongestHose.ofEverySize(run, "hose", taken, GaugePressure.parse("85 psig"), UnitSystem.US);
    List<WiderHose> narrowest = WiderHose.triedFromNarrowest(
        run, "hose", taken, GaugePressure.parse("85 psig"), UnitSystem.US);
    String inFeet = LongestHose.inWords(longest, UnitSystem.US);
    List<Sensitivity> matter = run.sensitivities(taken);
    assertThat(narrowest.get(narrowest.size() - 1).isEnough()).isTrue();
    assertThat(inFeet).startsWith("1/4 in hose: ").contains("1/2 in hose: up to ");
    assertThat(matter.get(0).input()).isEqualTo(Sensitivity.Input.BORE);
    RunResult balanced = run.balance(wrench);
    List<RankedChange> ranked = RankedChange.rank(
        run,
        wrench,
        List.of(new Change("wider hose", run.replacing("hose", wider), Money.parse("30 USD"))));
    Optional<SupplyNeeded> raised = run.supplyNeeded(wrench, GaugePressure.parse("90 psig"));
    Optional<LargestFlow> most = run.largestFlow(GaugePressure.parse("85 psig"));
    RunResult.Delivered fed = (RunResult.Delivered) balanced;
    Optional<ElementLoss> choking = fed.choking();
    List<ElementLoss> largestLossFirst = fed.ranked();
    FreeAirFlow mean = wrench.withDuty(0.5).withLoad(0.8).meanFlow();
    PencilCard card = fed.pencilCard(UnitSystem.US);
    String toPrint = card.toText();
    CardAnswer atTool = card.answers().get(0);
    OptionalDouble psiApart = atTool.apart();
    String figure = card.charts().get(0).toSvg();
    assertThat(toPrint).contains("pt = ");
    assertThat(psiApart.orElseThrow()).isLessThan(0.03 * atTool.exact());
    assertThat(figure).startsWith("<svg");
    PressureGauge gauge = PressureGauge.ofClass(
        "gauge A",
        GaugeClass.parse("1.6"),
        GaugePressure.parse("10 bar(g)"),
        PressureDrop.parse("0.1 bar"));
    GaugeTest test = GaugeTest.of(run, wrench);
    Diagnosis diagnosis = test.read(List.of(
        new GaugeReading(gauge, "supply", ToolState.AT_REST, GaugePressure.parse("7.0 bar(g)")),
        new GaugeReading(gauge, "supply", ToolState.RUNNING, GaugePressure.parse("6.9 bar(g)")),
        new GaugeReading(gauge, "hose", ToolState.AT_REST, GaugePressure.parse("7.0 bar(g)")),
        new GaugeReading(gauge, "hose", ToolState.RUNNING, GaugePressure.parse("3.4 bar(g)"))));
    List<String> said = diagnosis.inWords(UnitSystem.SI);
    List<Explanation> mostProbableFirst = diagnosis.explanations();
    Optional<NextGaugeReading> readNext = diagnosis.next();
    assertThat(said).isNotEmpty();
    assertThat(mostProbableFirst).hasSizeGreaterThan(4);
    assertThat(readNext).isNotNull();
    FlowElement filter = FlowElements.ofTable(
        AirState.of(AbsolutePressure.parse("104.7 psia"), Temperature.parse("68 °F")),
        List.of(
            new FlowLoss(FreeAirFlow.parse("10 scfm"), PressureDrop.parse("0.4 psi")),
            new FlowLoss(FreeAirFlow.parse("30 scfm"), PressureDrop.parse("3.1 psi"))),
        Source.measured("sheet of the filter"));
    RunResult filtered = run.through("filter", filter).balance(wrench);
    assertThat(most.orElseThrow().stopping()).isEmpty();
    assertThat(choking).isEmpty();
    assertThat(largestLossFirst).extracting(ElementLoss::name).containsExactly("hose");
    assertThat(mean).isEqualTo(FreeAirFlow.parse("10 scfm"));
    assertThat(((RunResult.Delivered) filtered).atTool()).isLessThan(fed.atTool());
    assertThat(filtered.working(UnitSystem.US).toText()).contains("sheet of the filter");
    assertThat(ranked.get(0).gain().pascals()).isPositive();
    assertThat(raised.orElseThrow().needed()).isGreaterThan(AbsolutePressure.ofPsi(104.0));
  }

  @Test
  void the_header_of_the_guide_has_elbows_and_a_next_size_up() {
    PipeFitting elbow = PipeFitting.of(PipeFitting.Method.LENGTH, "elbow 90°, standard, threaded");
    Conduit header = Conduit.of(
            Tube.steelPipe(NominalThreadSize.ONE, 40).bore(),
            Length.parse("30 m"),
            Wall.COMMERCIAL_STEEL.roughness())
        .withFittings(List.of(elbow, elbow));
    Optional<Tube> up =
        Tube.nextSizeUp(Tube.Kind.STEEL_PIPE, "40", header.bore().times(1.1));
    assertThat(header.fittingLoss()).isBetween(1.2, 1.5); // 2 × 30 × 0.0225
    assertThat(up).contains(Tube.steelPipe(NominalThreadSize.ONE_AND_A_QUARTER, 40));
  }

  @Test
  void the_parts_of_the_guide_are_what_it_says() {
    AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
    AirState air = AirState.of(
        GaugePressure.parse("7 bar(g)").absolute(atmosphere), Temperature.parse("20 °C"));
    FlowCapacity coupler = FlowCapacity.of(SonicConductance.parse("6 dm³/(s·bar)"), 0.3);
    Length bore = Tube.steelPipe(NominalThreadSize.ONE, 40).bore();
    PipeFitting valve =
        PipeFitting.ofValveCoefficient("globe valve", ValveCoefficient.ofKv(12.0), bore);
    PipeFitting wider = BoreStep.enlargement(bore, bore.times(1.25));
    PipeFitting narrower = BoreStep.contraction(bore.times(1.25), bore);
    double byRennels = BoreStep.contractionAfterRennels(bore.times(1.25), bore).k(bore);
    double onTheWiderBore = PipeFitting.onBore(valve.k(bore), bore, bore.times(1.25));
    FlowTable filter = FlowElements.ofTable(
        air,
        List.of(
            new FlowLoss(FreeAirFlow.parse("20 scfm"), PressureDrop.ofPsi(0.8)),
            new FlowLoss(FreeAirFlow.parse("40 scfm"), PressureDrop.ofPsi(3.0))),
        Source.demo("sheet of a filter"));
    // 1.6e9 D⁴/Kv² with D 26.64 mm
    assertThat(valve.k(bore)).isCloseTo(5.6, within(0.05));
    assertThat(wider.k(bore)).isCloseTo(0.36 * 0.36, within(1.0e-9));
    assertThat(narrower.k(bore)).isCloseTo(0.5 * 0.36, within(1.0e-9));
    assertThat(byRennels).isBetween(1.19 * 0.18, 1.35 * 0.18);
    assertThat(onTheWiderBore).isCloseTo(valve.k(bore) * Math.pow(1.25, 4.0), within(1.0e-9));
    assertThat(filter.points()).hasSize(2);
    GroupFlow both = PartsInParallel.of(List.of(coupler, coupler)).flow(air, atmosphere);
    FlowCapacity oneForTwo = PartsInParallel.of(List.of(coupler, coupler)).approximation();
    FlowCapacity oneForARow = PartsInSeries.of(List.of(coupler, coupler)).approximation();
    assertThat(both.massFlow().kilogramsPerSecond())
        .isCloseTo(2.0 * coupler.chokedFlow(air).kilogramsPerSecond(), within(1.0e-12));
    assertThat(oneForTwo.conductance().cubicDecimetresPerSecondBar())
        .isCloseTo(12.0, within(1.0e-9));
    assertThat(oneForARow.conductance().cubicDecimetresPerSecondBar())
        .isCloseTo(6.0 / Math.cbrt(2.0), within(1.0e-9));
    IsentropicFlow throat = IsentropicFlow.subsonicAtAreaRatio(2.0);
    IsentropicFlow nozzle = IsentropicFlow.atPressureRatio(0.9);
    double sections = nozzle.areaRatio();
    FannoFlow rubbed = FannoFlow.atMach(0.3);
    double slower = rubbed.densityRatio() * rubbed.stagnationPressureRatio();
    IsothermalFlow warm = IsothermalFlow.atResistance(rubbed.resistanceLeft());
    double sharp = OrificeEdge.sharpCoefficient(0.5);
    double fromColebrook = FrictionLaw.HAALAND.deviation();
    // tables of isentropic flow, from memory: A/A* 2.035 at M 0.30, 1.977 at M 0.31; p/p0 0.9 at M
    // 0.39, A/A* 1.62
    assertThat(throat.mach()).isCloseTo(0.306, within(1.0e-3));
    assertThat(sections).isCloseTo(1.62, within(0.02));
    assertThat(slower).isGreaterThan(rubbed.densityRatio());
    assertThat(warm.resistanceLeft()).isCloseTo(rubbed.resistanceLeft(), within(1.0e-9));
    assertThat(sharp).isBetween(0.7, 0.84);
    assertThat(fromColebrook).isEqualTo(0.0143);
  }

  @Test
  void the_layout_of_the_guide_has_six_slots() {
    Part.Device filter = new Part.Device(
        PartFacts.of("F-1", "Filter 40 µm"),
        DeviceKind.FILTER,
        FlowCapacity.of(SonicConductance.parse("6 dm³/(s·bar)"), 0.3),
        End.parse("1/2 NPT female"),
        End.parse("1/2 NPT female"));
    Layout layout = Layout.of(List.of(
        Slot.inLine("filter", filter),
        Slot.regulator("regulator", GaugePressure.parse("90 psig")),
        Slot.coupling("outlet").ofProfile("gannet"),
        Slot.hose("hose", Length.parse("30 ft")),
        Slot.coupling("tool"),
        Slot.whipHose("whip hose", Length.parse("2 ft"))));
    assertThat(layout).hasToString("filter, regulator, outlet, hose, tool, whip hose");
    assertThat(layout.slots())
        .extracting(Slot::toString)
        .containsExactly(
            "filter: filter, it is Filter 40 µm",
            "regulator: set to 6.205 bar(g)",
            "outlet: coupling of profile gannet",
            "hose: hose of at least 9.144 m",
            "tool: coupling",
            "whip hose: whip hose of at least 0.6096 m");
  }

  /** The flow at which it turns is held against the largest that the run carries. */
  @Test
  void the_range_of_the_guide_depends_on_the_air_the_tool_takes() {
    Range<FreeAirFlow> air = Range.parse("8 to 30 L/s ANR", FreeAirFlow::parse);
    Range<GaugePressure> needed = Range.exactly(GaugePressure.parse("6.2 bar(g)"));
    Requirement.Builder job = Requirement.forTool(air, needed);
    Proposal proposal = Selection.of(
            job.toolInlet(End.parse("1/4 NPT female"))
                .supply(
                    AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)),
                    AbsolutePressure.ofBar(1.0))
                .outlet(End.parse("3/8 NPT male"))
                .reach(Length.ofMetres(10.0))
                .build(),
            Catalogue.of(Shelf.parts()))
        .fold(Selection.Proposals::best, nothing -> nothing.nearest().get(0));
    assertThat(proposal.doubts())
        .singleElement()
        .asString()
        .startsWith("air the tool takes: 8 to 30 L/s ANR; enough if at most 12.9 L/s ANR");
    String enough = proposal.doubts().get(0).enoughIf(UnitSystem.SI).orElseThrow();
    double largest = FreeAirFlow.from(
            proposal.run().largestFlow(GaugePressure.ofBar(6.2)).orElseThrow().massFlow(),
            ReferenceState.ANR)
        .litresPerSecond();
    double told = FreeAirFlow.parse(enough.substring("at most ".length())).litresPerSecond();
    assertThat(told).isBetween(largest - 0.1, largest);
  }

  /** By hand: 2 × 18 + 4 + 5 + 36 for the parts, and 2.40 for the tape. */
  @Test
  void the_bill_and_the_offers_of_the_guide_are_complete() {
    AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
    List<Part> parts = List.of(
        new Part.Socket(
            sold("S-1", "18 USD"),
            Set.of("gannet"),
            End.parse("3/8 NPT female"),
            FlowCapacity.of(SonicConductance.parse("8 dm³/(s·bar)"), 0.3)),
        new Part.Plug(sold("P-1", "4 USD"), "gannet", End.parse("3/8 NPT female")),
        new Part.Plug(sold("P-2", "5 USD"), "gannet", End.parse("1/4 NPT male")),
        new Part.Hose(
            sold("H-1", "36 USD"),
            HoseBore.parse("3/8 in"),
            Conduit.of(Length.parse("3/8 in"), Length.parse("30 ft"), Length.parse("0.01 mm")),
            End.parse("3/8 NPT male"),
            End.parse("3/8 NPT male")));
    Requirement requirement = Requirement.forTool(
            FreeAirFlow.parse("22 scfm"), GaugePressure.parse("80 psig"))
        .supply(
            AirState.of(
                GaugePressure.parse("110 psig").absolute(atmosphere), Temperature.parse("20 °C")),
            atmosphere)
        .outlet(End.parse("3/8 NPT male"))
        .toolInlet(End.parse("1/4 NPT female"))
        .reach(Length.parse("25 ft"))
        .build();
    Proposal proposal = Selection.of(requirement, Catalogue.of(parts))
        .fold(Selection.Proposals::best, nothing -> nothing.nearest().get(0));
    Accessory tape = new Accessory.ThreadSealant(
        PartFacts.of("T-1", "Sealing tape").withPrice(Money.parse("2.40 USD")),
        NominalThreadSize.TWO);
    BillOfMaterials bill = BillOfMaterials.of(proposal, Catalogue.of(parts, List.of(tape)));
    Optional<String> total = bill.totalInWords();
    List<String> toAsk = bill.questions();
    assertThat(total).contains("83.40 USD. Tax is left to the shop.");
    assertThat(toAsk).isEmpty();
    AirPlant plant = new AirPlant(
        Compression.adiabatic(
            AirState.of(atmosphere, Temperature.parse("20 °C")),
            GaugePressure.parse("110 psig").absolute(atmosphere)),
        0.75,
        0.9,
        Duration.ofHours(2500),
        Money.parse("0.16 USD"));
    PlantYear year =
        new PlantYear(plant, FreeAirFlow.parse("22 scfm"), FreeAirFlow.parse("0.05 scfm"));
    Offers offers = Offers.of(requirement, Catalogue.of(parts, List.of(tape)), year);
    Optional<Offer> later = offers.offer(Offer.Aim.LEAST_IN_A_YEAR);
    assertThat(later).hasValueSatisfying(offer -> assertThat(offer.aims()).hasSize(2));
    assertThat(offers.isProven()).isTrue();
  }

  private static PartFacts sold(String id, String price) {
    return PartFacts.of(id, "part " + id)
        .withRating(GaugePressure.parse("150 psig"))
        .withMaterial(Material.BRASS)
        .withPrice(Money.parse(price));
  }

  @Test
  void the_talk_of_the_guide_asks_for_the_limit_of_the_tool() {
    Requirement job = Requirement.forTool(
            FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.2))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(
            AirState.of(
                GaugePressure.ofBar(7.0).absolute(AbsolutePressure.STANDARD_ATMOSPHERE),
                Temperature.ofCelsius(20.0)),
            AbsolutePressure.STANDARD_ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .reach(Length.ofMetres(10.0))
        .build();
    Catalogue catalogue = Catalogue.of(Shelf.parts());
    Interview talk = Interview.of(job, catalogue).with(Topic.MEDIUM, "compressed air");
    Question question = talk.next(UnitSystem.US).orElseThrow();
    String why = question.why();
    List<PossibleAnswer> answers = question.answers();
    Interview after = talk.with(question.topic(), "110 psig");
    assertThat(question.topic()).isEqualTo(Topic.TOOL_RATING);
    assertThat(why).contains("a regulator can fail open");
    assertThat(answers)
        .extracting(PossibleAnswer::inWords)
        .containsExactly("less than 101.5 psig", "101.6 psig or more");
    assertThat(after.requirement().orElseThrow().toolRating()).contains(GaugePressure.ofPsi(110.0));
  }

  @Test
  void the_rules_of_the_guide_forbid_thirty_psi() {
    SafetyRules rules = SafetyRules.bundled().in("US-CA");
    Situation gun =
        Situation.describe().cleaning(GaugePressure.parse("30 psig")).build();
    Ruling construction = Ruling.of(rules.rule("29 CFR 1926.302(b)(4)"), gun);
    String notAllowed = construction.reason();
    List<Caution> cautions = rules.cautions(gun);
    assertThat(construction.judgement()).isEqualTo(Judgement.NOT_ALLOWED);
    assertThat(notAllowed).isEqualTo("30 psig against less than 30 psig.");
    assertThat(cautions)
        .extracting(Caution::title)
        .contains("Cleaning pressure (construction)", "Before anyone connects this");
  }

  @Test
  void the_job_of_the_guide_is_judged_before_its_parts_are_chosen() {
    Requirement job = Shelf.job().blowGun(GaugePressure.parse("60 psig")).build();
    JobFindings before = JobFindings.of(job);
    List<Finding> ofTheJob = before.findings();
    List<Caution> ofTheWork = before.cautions();
    assertThat(ofTheJob)
        .extracting(Finding::rule)
        .containsExactly(Rule.TOOL_RATED, Rule.CLEANING_PRESSURE, Rule.SAFETY_RULES_ALLOW);
    assertThat(ofTheJob.get(1).outcome()).isEqualTo(RuleOutcome.UNMET);
    assertThat(ofTheWork).extracting(Caution::title).contains("Eye protection");
  }

  /** The table of the rules file stands in the document, word for word. */
  @Test
  void the_example_of_the_rules_file_is_read() throws IOException {
    String table = Pattern.compile("(?m)^ {4}")
        .matcher(read("docs/rules-file.md").split("An example:\n\n", 2)[1])
        .replaceAll("");
    SafetyRule rule = SafetyRules.ofTable(table).rules().get(0);
    assertThat(rule.title()).isEqualTo("rule 7");
    assertThat(rule.limit()).contains("25 psig");
    assertThat(rule.operator()).contains("<=");
  }

  @Test
  void the_ring_of_the_guide_is_solved() {
    AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
    AirState supply = AirState.of(
        GaugePressure.parse("7 bar(g)").absolute(atmosphere), Temperature.parse("20 °C"));
    Conduit main = Conduit.of(Length.parse("1 in"), Length.parse("30 m"), Length.parse("0.045 mm"));
    FlowCapacity coupler = FlowCapacity.of(SonicConductance.parse("6 dm³/(s·bar)"), 0.3);
    ToolDemand wrench = ToolDemand.following(
        "wrench", FreeAirFlow.parse("25 scfm"), AbsolutePressure.parse("104.7 psia"));
    Network ring = Network.at(atmosphere)
        .supply("compressor", Supply.fixed(supply))
        .line("north", "compressor", "bench", main)
        .line("south", "compressor", "bench", main)
        .part("coupler", "bench", "tool", coupler)
        .tool("tool", wrench.withDuty(0.3))
        .build();
    NetworkResult steady = ring.solve();
    NetworkSimulation shop = ring.simulate(42, 1000);
    NetworkResult.Solved flowing = (NetworkResult.Solved) steady;
    Map<String, AbsolutePressure> pressures = flowing.pressures();
    List<BranchFlow> branches = flowing.branches();
    List<SupplyFlow> supplies = flowing.supplies();
    assertThat(pressures).containsOnlyKeys("compressor", "bench", "tool");
    assertThat(branches).extracting(BranchFlow::name).containsExactly("north", "south", "coupler");
    assertThat(supplies.get(0).given()).isGreaterThan(MassFlow.ofKilogramsPerSecond(0.0));
    assertThat(shop.unsolved()).isZero();
  }

  @Test
  void the_water_of_the_guide_comes_out_at_the_cooler() {
    DewPoint intake = DewPoint.of(
        AirState.of(AbsolutePressure.parse("14.7 psia"), Temperature.parse("80 °F")), 0.75);
    AbsolutePressure inLine = AbsolutePressure.parse("114.7 psia");
    WaterBalance water = WaterBalance.ofDryAir(FreeAirFlow.parse("500 scfm").massFlow(), intake)
        .through("aftercooler", new DewPoint(Temperature.parse("100 °F"), inLine))
        .through("dryer", new DewPoint(Temperature.parse("38 °F"), inLine));
    Volume perShift = water.stages().get(0).collected(Duration.ofHours(8));
    DewPoint outdoors = water.behind().at(AbsolutePressure.parse("14.7 psia"));
    String letOut = outdoors.in(UnitSystem.US);
    assertThat(perShift.usGallons())
        .isCloseTo(25.0, within(0.3)); // CAGI, quoted: (0.1521 - 0.0478) × 240
    assertThat(letOut).contains("°F (frost point) at 14.7 psi");
    assertThat(outdoors.temperature().fahrenheit()).isCloseTo(-5.0, within(1.0));
  }

  @Test
  void the_filters_of_the_guide_reach_oil_and_not_water() {
    TreatmentSupply supply = new TreatmentSupply(
        AbsolutePressure.parse("1.0 bar(a)"),
        new DewPoint(Temperature.parse("-5 °C"), AbsolutePressure.parse("1.0 bar(a)")),
        new DewPoint(Temperature.parse("26 °C"), AbsolutePressure.parse("1.0 bar(a)")),
        Range.parse("10 to 35 °C", Temperature::parse),
        Range.parse("7.0 to 7.8 bar(g)", GaugePressure::parse),
        Optional.of(Range.parse("70 to 95 °C", Temperature::parse)),
        Range.parse("40 to 70 L/s ANR", FreeAirFlow::parse),
        Optional.of(Density.parse("4 mg/m3")),
        Optional.of(Density.parse("0.05 mg/m3")));
    TreatmentStage cooler = new TreatmentStage(
        "aftercooler",
        TreatmentKind.COOLER,
        Range.parse("18 to 40 °C", Temperature::parse),
        true,
        Optional.empty(),
        Optional.empty());
    TreatmentRating rating = new TreatmentRating(
        FreeAirFlow.parse("80 L/s ANR"),
        GaugePressure.parse("6 bar(g)"),
        Temperature.parse("45 °C"),
        Optional.empty(),
        List.of(),
        List.of(),
        List.of());
    TreatmentStage filter = new TreatmentStage(
        "fine filter",
        TreatmentKind.COALESCING_FILTER,
        Range.parse("18 to 40 °C", Temperature::parse),
        true,
        Optional.of(new TreatmentStage.Duty(
            rating,
            Optional.empty(),
            Optional.of(PurityClass.CLASS_1),
            Optional.of(new TreatmentStage.Retention(
                Density.parse("0.01 mg/m3"), Density.parse("10 mg/m3"))),
            Optional.empty())),
        Optional.empty());
    AirTreatment train = new AirTreatment(supply, List.of(cooler, filter));
    PurityAnswer purity = train.judge(AirPurity.parse("[1:4:2]"), UnitSystem.SI);
    PurityVerdict ofOil = purity.oil().verdict();
    PurityVerdict ofWater = purity.water().verdict();
    List<String> why = purity.water().reasons();
    assertThat(ofOil).isEqualTo(PurityVerdict.REACHED);
    assertThat(ofWater).isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(why).singleElement().asString().contains("at most 40.0 °C");
    assertThat(purity.particles().told()).hasValue(PurityClass.CLASS_1);
  }

  /** By hand: 2 ft³ in 26 s and 2.2 ft³ in 24 s are 4.62 and 5.5 cfm at 68 °F, 1.5 % less at 60 °F. */
  @Test
  void the_leaks_of_the_guide_explain_a_part_of_the_test() {
    AirPrice price = new AirPrice(
        Power.parse("18 kW"),
        Range.parse("4 to 5 kW", Power::parse),
        FreeAirFlow.parse("100 scfm"),
        Duration.ofHours(4000),
        Money.parse("0.12 USD"));
    AirState outside = AirState.of(AbsolutePressure.parse("14.7 psia"), Temperature.parse("68 °F"));
    LeakSize bag = LeakSize.ofBag(
        Range.parse("2 to 2.2 ft3", Volume::parse),
        Duration.ofSeconds(25),
        Duration.ofSeconds(1),
        outside);
    Leak clamp = new Leak(
        "12",
        "bay 1",
        "hose clamp",
        bag,
        Optional.of(Money.parse("15 USD")),
        Optional.empty(),
        Optional.empty());
    Leak drain = new Leak(
        "13",
        "room",
        "drain",
        LeakSize.notMeasured(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
    LeakLedger ledger = new LeakLedger(price, List.of(clamp, drain));
    LeakLedger.Total lost = ledger.lost();
    String paidBack = ledger.round().inOrder().get(0).payback().orElseThrow().inWords();
    assertThat(FreeAirFlow.from(lost.least(), ReferenceState.SCFM_60F).cubicFeetPerMinute())
        .isCloseTo(4.62 * 0.985, within(0.01));
    assertThat(lost.most()).isEmpty();
    // 4.55 to 5.42 scfm of 100, of 13 to 14 kW for 4000 h at 0.12 USD: 284 to 364 USD a year
    assertThat(paidBack).isEqualTo("2.2 to 2.8 weeks");
    LeakTest test = LeakTest.of(
        new LeakTest.Cycling(
            Duration.ofSeconds(190),
            Duration.ofSeconds(990),
            5,
            Duration.ofMillis(500),
            Range.parse("95 to 105 scfm", FreeAirFlow::parse),
            Range.parse("100 to 110 psig", GaugePressure::parse)),
        AbsolutePressure.parse("14.7 psia"),
        GaugePressure.parse("105 psig"));
    String explained = ledger.against(test, Optional.empty()).inWords();
    // 187.5 and 192.5 of 1180 s, times 95 and 105 scfm, times 119.7/124.7 and 119.7/114.7: 14.5 to
    // 17.9 scfm
    assertThat(explained)
        .isEqualTo(
            "The measured leaks explain 25 to 37 % of what the test shows: look on, and first"
                + " measure what is found. A leak is not measured: 13.");
  }

  /** By hand: 2 sockets at 8 and 3 plugs at 3, the fourth from the shelf. */
  @Test
  void the_inventory_of_the_guide_keeps_one_profile() {
    Catalogue halves = Catalogue.of(List.of(
        new Part.Socket(
            PartFacts.of("S-W", "socket wren").withPrice(Money.parse("8 USD")),
            Set.of("wren"),
            End.parse("3/8 NPT male"),
            FlowCapacity.of(SonicConductance.parse("6 dm3/(s bar)"), 0.3)),
        new Part.Plug(
            PartFacts.of("P-W", "plug wren").withPrice(Money.parse("3 USD")),
            "wren",
            End.parse("1/4 NPT male"))));
    Optional<End> drop = Optional.of(End.parse("3/8 NPT female"));
    Optional<End> inlet = Optional.of(End.parse("1/4 NPT female"));
    Optional<Range<GaugePressure>> pressure =
        Optional.of(Range.parse("90 to 100 psig", GaugePressure::parse));
    Bay forge = new Bay(
        "forge",
        Medium.COMPRESSED_AIR,
        pressure,
        List.of(new Bay.Sockets("drops", Set.of("wren"), drop, 3)),
        List.of(new Bay.Plugs("grinders", "wren", inlet, 5, Optional.empty())));
    Bay paint = new Bay(
        "paint",
        Medium.COMPRESSED_AIR,
        pressure,
        List.of(new Bay.Sockets("drops", Set.of("finch"), drop, 2)),
        List.of(new Bay.Plugs("spray guns", "finch", inlet, 4, Optional.empty())));
    ToldPair tried =
        new ToldPair("finch", "wren", PairOutcome.LETS_GO, Source.measured("bench trial"));
    ChangeOver change = ChangeOver.of(new CouplingInventory(
        List.of(forge, paint),
        halves,
        List.of(new CouplingInventory.OnShelf("P-W", 1)),
        Optional.empty(),
        List.of(tried),
        AirState.of(AbsolutePressure.parse("14.7 psia"), Temperature.parse("68 °F")),
        Optional.empty()));
    String keep = change.inWords(UnitSystem.US).get(0);
    List<MixedPair> wrong = change.possibleNow();
    List<ChangeStep> order = change.steps();
    assertThat(keep)
        .isEqualTo(
            "Keep wren for all bays: 2 sockets and 4 plugs are changed, which costs 25.00 USD; the"
                + " work is not counted.");
    assertThat(wrong)
        .extracting(MixedPair::outcome)
        .containsExactlyInAnyOrder(PairOutcome.LETS_GO, PairOutcome.NOT_TOLD);
    assertThat(order).hasSize(1);
  }

  /** By hand: 5.71 dm³/(s·bar) for Kv 1 and so 4.94 for Cv 1; 1.2 Cv make 5.93, all in dm³/(s·bar). */
  @Test
  void the_price_list_of_the_guide_has_a_figure_that_no_part_can_have() {
    Part.Socket printed = new Part.Socket(
        PartFacts.of("S-1", "socket wren")
            .withRating(GaugePressure.parse("16 bar(g)"))
            .withPrice(Money.parse("9 USD")),
        Set.of("demo-heron"),
        End.parse("3/8 NPT male"),
        FlowCapacity.of(SonicConductance.parse("9 dm3/(s bar)"), 0.3));
    ListedPart article = new ListedPart(
        printed, Optional.of(ValveCoefficient.parse("1.2 Cv")), Optional.empty(), Optional.empty());
    PriceListCheck checked =
        PriceListCheck.of(PriceList.of(List.of(article), DemoProfiles.birds()));
    List<ListFault> faults = checked.faults();
    String worst = faults.get(0).inWords(UnitSystem.US);
    assertThat(worst)
        .isEqualTo(
            "socket wren: C 9 dm³/(s·bar) stands beside Cv 1.2, and no b from 0 to 1 and no xT up"
                + " to 1 gives more than C 5.931 dm³/(s·bar) with it.");
    assertThat(faults).extracting(ListFault::isImpossible).containsExactly(true, false);
    assertThat(faults.get(1).kind()).isEqualTo(FaultKind.NO_OTHER_HALF);
  }

  /** By hand: 60 L/s over 12 s of starting and 18 s beside 40 L/s take 1080 L of free air, 2.2 bar of 500 L. */
  @Test
  void the_receiver_of_the_guide_is_too_small_for_its_press() {
    AbsolutePressure around = AbsolutePressure.parse("1.0 bar(a)");
    TimedCompressor screw = new TimedCompressor(
        "screw",
        FreeAirFlow.parse("40 L/s ANR"),
        Optional.of(
            new PressureBand(GaugePressure.parse("7 bar(g)"), GaugePressure.parse("8 bar(g)"))),
        Duration.ofSeconds(12),
        Duration.ofSeconds(3),
        Optional.of(Duration.ofMinutes(6)),
        Duration.ofSeconds(40),
        Power.parse("17 kW"),
        Power.parse("5 kW"),
        GaugePressure.parse("7.5 bar(g)"));
    TimedUse press = new TimedUse(
        "press",
        Optional.empty(),
        ToolDemand.fixed("press", FreeAirFlow.parse("60 L/s ANR")),
        Optional.of(GaugePressure.parse("6 bar(g)")),
        DemandTimes.repeated(
            Duration.ofHours(8),
            Duration.ofSeconds(30),
            Duration.ofMinutes(10),
            Duration.ofHours(16)));
    PlantDay day = PlantDay.at(around, Temperature.parse("20 °C"))
        .receiver(new LineReceiver(
            "receiver", Optional.empty(), Volume.parse("500 L"), GaugePressure.parse("7.5 bar(g)")))
        .compressor(screw)
        .use(press)
        .build();
    DayResult found = day.simulate();
    DayChange larger = DayChange.largerReceiver(day).orElseThrow();
    assertThat(found.isShort()).isTrue();
    assertThat(larger.result().isShort()).isFalse();
    assertThat(larger.day().receivers().get(0).volume().litres()).isBetween(501.0, 2000.0);
  }

  @Test
  void the_hole_of_the_guide_costs_money() {
    AirState intake = AirState.of(AbsolutePressure.STANDARD_ATMOSPHERE, Temperature.parse("20 °C"));
    AbsolutePressure discharge = AbsolutePressure.parse("8 bar(a)");
    AirState line = intake.at(discharge);
    AirPlant plant = new AirPlant(
        Compression.adiabatic(intake, discharge),
        0.75,
        0.92,
        Duration.ofHours(4000),
        Money.parse("0.11 USD"));
    YearlyCost hole = plant.ofFlow(
        "hole of 3 mm",
        Orifice.sharp(Length.parse("3 mm")).flow(line, intake.pressure()).massFlow());
    Compression cooled = Compression.staged(intake, discharge, 2);
    PistonCompressor twoStage = new PistonCompressor(2, 0.08);
    double massShare =
        twoStage.massShareAt(Length.parse("1500 m"), GaugePressure.parse("7 bar(g)"));
    assertThat(hole.money()).isGreaterThan(Money.parse("1000 USD"));
    assertThat(cooled.joulesPerKilogram()).isLessThan(plant.compression().joulesPerKilogram());
    assertThat(cooled.intake()).isEqualTo(intake);
    assertThat(massShare).isBetween(0.5, 1.0);
  }

  @Test
  void the_plug_of_the_guide_is_ambiguous_as_it_says() {
    PlugReading tip = PlugReading.of(
        Dimension.TIP_DIAMETER, Instrument.DIGITAL_CALIPER, Length.parse("18.78 mm"));
    PlugReading length =
        PlugReading.of(Dimension.TIP_LENGTH, Instrument.DIGITAL_CALIPER, Length.parse("21.05 mm"));
    Identification answer = Identifier.of(DemoProfiles.birds()).identify(List.of(tip, length));
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.AMBIGUOUS);
    assertThat(answer.nextReadings()).isNotEmpty();
  }

  @Test
  void the_settings_and_sets_of_the_guide_say_what_it_says() {
    ReferenceSet birds = DemoProfiles.birds();
    PlugReading tip = PlugReading.of(
        Dimension.TIP_DIAMETER, Instrument.DIGITAL_CALIPER, Length.parse("18.78 mm"));
    PlugReading length =
        PlugReading.of(Dimension.TIP_LENGTH, Instrument.DIGITAL_CALIPER, Length.parse("21.05 mm"));
    Identification doubtful = Identifier.of(birds)
        .withUnknownPrior(0.2)
        .withConfidence(0.99)
        .identify(List.of(tip, length));
    Identifier trusting =
        Identifier.of(birds).withoutNearCopies().withWearAllowance(Identifier.usualWear());
    assertThat(trusting.identify(List.of(tip, length)).nearCopyProbability()).isZero();
    Identification usual = Identifier.of(birds).identify(List.of(tip, length));
    assertThat(doubtful.unknownProbability()).isGreaterThan(usual.unknownProbability());

    AliasLookup meant = birds.lookUp("demo heron");
    assertThat(meant.profiles()).extracting(PlugProfile::id).containsExactly("demo-heron");
    assertThat(meant.warning()).contains("measure the plug");

    PlugProfile stork = PlugProfile.builder("demo-stork")
        .from(Provenance.synthetic(), Source.demo("invented"))
        .dimension(
            Dimension.TIP_DIAMETER,
            PartSpread.normal(Length.parse("16 mm"), Length.parse("0.03 mm")))
        .build();
    UniversalSocket wide = new UniversalSocket(
        "wide socket", Set.of("demo-heron", "demo-curlew"), Source.demo("invented"));
    ReferenceSet others = ReferenceSet.of("others", List.of(stork));
    ReferenceSet both =
        SetComparison.of(birds, others, Instrument.DIGITAL_CALIPER).merged("both shops");
    assertThat(both.profiles()).hasSize(birds.profiles().size() + 1);
    both = both.withSockets(List.of(wide));
    List<UniversalSocket> sockets =
        SocketAnswer.alone(both, Set.of("demo-heron", "demo-curlew")).universalSockets();
    assertThat(sockets).containsExactly(wide);
  }

  @Test
  void the_pair_of_the_guide_is_not_one_to_build() {
    Mating mating = Mating.of(End.parse("1/2 NPT male"), End.parse("G 1/2 female"));
    assertThat(mating.verdict().isSound()).isFalse();
    assertThat(mating.inWords()).contains("1/2 NPT male", "G 1/2 female");
  }

  @Test
  void what_goes_between_two_sizes_is_the_reducer_of_the_guide() {
    Mating sizes = Mating.of(End.parse("1/2 NPT male"), End.parse("1/4 NPT female"));
    List<StandardAdapter> between = sizes.between();
    Chain<StandardAdapter> standard = Chain.between(sizes.one(), sizes.other());
    assertThat(between).extracting(StandardAdapter::shape).containsExactly(AdapterShape.REDUCER);
    assertThat(standard.adapters()).isEqualTo(between);
    assertThat(standard.matings()).hasSize(2);
  }

  @Test
  void the_thread_the_tube_and_the_hose_of_the_guide_measure_what_their_standards_say() {
    NptThread thread = NptThread.of(NominalThreadSize.ONE_QUARTER);
    double effectiveTurns = thread.effectiveTurns();
    Limits flatOfCrest = thread.crestFlat();
    Length sharpTriangle = thread.sharpHeight();
    double halfAngleOfCone = ThreadForm.coneHalfAngleDegrees();
    double turnsInAll = Engagement.of(thread).totalTurns();
    assertThat(effectiveTurns).isCloseTo(7.23, within(0.005));
    assertThat(flatOfCrest.least()).isLessThan(flatOfCrest.most());
    assertThat(sharpTriangle).isGreaterThan(thread.height());
    assertThat(halfAngleOfCone).isCloseTo(1.78991, within(0.000005));
    assertThat(turnsInAll).isCloseTo(7.1, within(0.005));

    BsptThread taper = BsptThread.of(NominalThreadSize.ONE_QUARTER);
    Optional<Length> pipeOfEurope = taper.pipeDiameterEn10255();
    Optional<Length> pipeOfJapan = taper.pipeDiameterJis();
    double radiusOfCrest = ThreadForm.ROUND_55.crestRadiusOverPitch().orElseThrow();
    assertThat(pipeOfEurope).contains(Length.parse("13.5 mm"));
    assertThat(pipeOfJapan).contains(Length.parse("13.8 mm"));
    assertThat(radiusOfCrest).isCloseTo(0.137329, within(0.0000005));

    Tube pipe = Tube.steelPipe(NominalThreadSize.ONE_QUARTER, 40);
    Length wall = pipe.wall();
    Area clear = pipe.boreArea();
    assertThat(wall).isEqualTo(Length.parse("0.088 in"));
    assertThat(clear.squareInches()).isCloseTo(0.104, within(0.0005));

    HoseBend bend = new HoseBend(90.0, Length.parse("300 mm"), Length.parse("19 mm"));
    Length hoseInTheBend = bend.length();
    Length usuallyBentNoCloser = HoseBend.usualLeastRadius(Length.parse("10 mm"));
    GaugePressure leastBurst = HoseRules.leastBurst(GaugePressure.parse("10 bar(g)"));
    GaugePressure test = HoseRules.test(GaugePressure.parse("10 bar(g)"));
    Length cutMayBeOff = HoseRules.cutTolerance(Length.parse("25 ft"));
    assertThat(hoseInTheBend.millimetres()).isCloseTo(0.5 * Math.PI * 309.5, within(0.001));
    assertThat(usuallyBentNoCloser.millimetres()).isCloseTo(60.0, within(1.0e-9));
    assertThat(leastBurst.bar()).isCloseTo(40.0, within(1.0e-9));
    assertThat(test.bar()).isCloseTo(15.0, within(1.0e-9));
    assertThat(cutMayBeOff.inches()).isCloseTo(3.0, within(1.0e-9));
  }

  /** The documents and pages that people read on the web, where headings are places that links lead to. */
  static Stream<Path> documents() throws IOException {
    List<Path> all = new ArrayList<>();
    for (String folder :
        List.of("", "docs", "docs/verification", "notebooks", "notebooks/kernel")) {
      try (Stream<Path> files = Files.list(ROOT.resolve(folder))) {
        files.filter(file -> file.toString().endsWith(".md")).sorted().forEach(all::add);
      }
    }
    return all.stream().map(Path::normalize);
  }

  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#\\s]*)(?:#([^)\\s]*))?\\)");
  private static final Pattern CODE = Pattern.compile("(?s)```.*?```|`[^`\n]*`");

  @ParameterizedTest
  @MethodSource("documents")
  void links_lead_to_files_and_headings_that_are_there(Path document) throws IOException {
    assertThat(dead(document, Files.readString(document))).isEmpty();
  }

  @Test
  void a_link_that_leads_nowhere_is_noticed() throws IOException {
    Path guide = ROOT.resolve("docs/guide.md");
    assertThat(dead(guide, "[a](gone.md) [b](faq.md#gone) [c](faq.md#safety) `[d](gone.md)`"))
        .containsExactly("gone.md", "faq.md#gone");
  }

  /** The links of a text that stands in a document, of those that lead nowhere. */
  private static List<String> dead(Path document, String text) throws IOException {
    List<String> dead = new ArrayList<>();
    Matcher link = LINK.matcher(CODE.matcher(text).replaceAll(""));
    while (link.find()) {
      Path target = link.group(1).isEmpty() ? document : document.resolveSibling(link.group(1));
      String place = link.group(2);
      if (!Files.exists(target) || (place != null && !places(target).contains(place))) {
        dead.add(link.group(1) + (place == null ? "" : "#" + place));
      }
    }
    return dead;
  }

  /** The names of the headings of a document, as GitHub makes them, and of its places. */
  private static Set<String> places(Path document) throws IOException {
    String text = Files.readString(document);
    Set<String> places = new HashSet<>();
    Matcher heading = Pattern.compile("(?m)^#+ +(.*)$")
        .matcher(Pattern.compile("(?s)```.*?```").matcher(text).replaceAll(""));
    while (heading.find()) {
      String name = heading
          .group(1)
          .replaceAll("\\[([^\\]]*)\\]\\([^)]*\\)", "$1")
          .toLowerCase(Locale.ROOT)
          .replaceAll("[^\\p{L}\\p{N}\\p{M} _-]", "")
          .replace(' ', '-');
      String numbered = name;
      for (int n = 1; !places.add(numbered); n++) {
        numbered = name + "-" + n;
      }
    }
    Matcher named = Pattern.compile("<a id=\"([^\"]+)\">").matcher(text);
    while (named.find()) {
      places.add(named.group(1));
    }
    return places;
  }
}
