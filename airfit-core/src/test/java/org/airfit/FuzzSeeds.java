package org.airfit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.air.AirTreatment;
import org.airfit.air.DewPoint;
import org.airfit.air.PipeSlope;
import org.airfit.air.PurityClass;
import org.airfit.air.TreatmentKind;
import org.airfit.air.TreatmentRating;
import org.airfit.air.TreatmentStage;
import org.airfit.air.TreatmentSupply;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.measure.Instrument;
import org.airfit.network.Network;
import org.airfit.network.NetworkResult;
import org.airfit.network.NetworkSimulation;
import org.airfit.plant.Compressor;
import org.airfit.plant.Supply;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.KnownPiece;
import org.airfit.plug.KnownPlugs;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.PlugReading;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Density;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.run.Change;
import org.airfit.run.Contradiction;
import org.airfit.run.Diagnosis;
import org.airfit.run.Explanation;
import org.airfit.run.LargestFlow;
import org.airfit.run.LongestHose;
import org.airfit.run.NextGaugeReading;
import org.airfit.run.RankedChange;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.run.ToolDemand;
import org.airfit.run.WiderHose;
import org.airfit.safety.SafetyRules;
import org.airfit.safety.Situation;
import org.airfit.select.Catalogue;
import org.airfit.select.CatalogueGap;
import org.airfit.select.CouplingInventory;
import org.airfit.select.CouplingPlan;
import org.airfit.select.JobMix;
import org.airfit.select.ListFault;
import org.airfit.select.Material;
import org.airfit.select.Offers;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;
import org.airfit.select.PriceList;
import org.airfit.select.Requirement;
import org.airfit.select.Selection;
import org.airfit.select.Shelf;
import org.airfit.source.Source;
import org.airfit.thread.ThreadIdentification;
import org.airfit.thread.ThreadReadings;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;

/** Whole jobs for {@link Fuzzer}, whose parts chance would seldom put together: a network, a sizing, a selection. */
final class FuzzSeeds {

  private static final AbsolutePressure ATMOSPHERE = AbsolutePressure.ofBar(1.0);
  private static final AirState EIGHT =
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0));

  private FuzzSeeds() {}

  /** {@return the values, and answers to them} */
  static List<Object> values() {
    List<Object> values = new ArrayList<>();
    addNetwork(values);
    addTreatment(values);
    addRun(values);
    addSelection(values);
    addOffers(values);
    addWhatFits(values);
    addPlugs(values);
    values.addAll(SafetyRules.usFederal().rules());
    values.add(Situation.describe().build());
    values.addAll(ThreadIdentification.of(
            ThreadReadings.ofMale(Length.ofMillimetres(13.71), Length.ofMillimetres(7.06), 6)
                .withThreadsPerInch(18.0))
        .explanations());
    Symbol whole = Symbol.of("x", ValueKind.NUMBER);
    Symbol half = Symbol.of("y", ValueKind.NUMBER);
    values.add(Formula.of("Half", "⟨y⟩ = ⟨x⟩ / 2", Source.derived("arithmetic"), half, whole));
    return values;
  }

  private static FlowCapacity part(double litres) {
    return FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(litres), 0.3);
  }

  private static Conduit hose(double boreMm) {
    return Conduit.of(
        Length.ofMillimetres(boreMm), Length.ofMetres(10.0), Length.ofMillimetres(0.01));
  }

  private static ToolDemand tool() {
    return ToolDemand.following(
        "grinder", FreeAirFlow.ofAnrLitresPerSecond(10.0), AbsolutePressure.ofBar(7.2));
  }

  private static void addTreatment(List<Object> values) {
    Range<Temperature> air = new Range<>(Temperature.ofCelsius(15.0), Temperature.ofCelsius(40.0));
    TreatmentSupply supply = new TreatmentSupply(
        ATMOSPHERE,
        new DewPoint(Temperature.ofCelsius(0.0), ATMOSPHERE),
        new DewPoint(Temperature.ofCelsius(25.0), ATMOSPHERE),
        air,
        Range.exactly(GaugePressure.ofBar(7.0)),
        Optional.of(Range.exactly(Temperature.ofCelsius(90.0))),
        Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(60.0)),
        Optional.of(Density.parse("4 mg/m3")),
        Optional.of(Density.parse("0.05 mg/m3")));
    TreatmentRating rating = new TreatmentRating(
        FreeAirFlow.ofAnrLitresPerSecond(80.0),
        GaugePressure.ofBar(6.0),
        Temperature.ofCelsius(45.0),
        Optional.empty(),
        List.of(),
        List.of(new TreatmentRating.TemperatureFactor(Temperature.ofCelsius(45.0), 1.0)),
        List.of());
    TreatmentStage cooler = new TreatmentStage(
        "cooler", TreatmentKind.COOLER, air, true, Optional.empty(), Optional.empty());
    TreatmentStage dryer = new TreatmentStage(
        "dryer",
        TreatmentKind.REFRIGERATED_DRYER,
        air,
        true,
        Optional.of(new TreatmentStage.Duty(
            rating,
            Optional.of(Temperature.ofCelsius(3.0)),
            Optional.of(PurityClass.CLASS_2),
            Optional.empty(),
            Optional.empty())),
        Optional.of(new TreatmentStage.Loss(
            FreeAirFlow.ofAnrLitresPerSecond(80.0),
            GaugePressure.ofBar(6.0),
            PressureDrop.ofBar(0.1),
            PressureDrop.ofBar(0.4))));
    AirTreatment train = new AirTreatment(supply, List.of(cooler, dryer));
    values.add(rating);
    values.add(train);
    values.add(train.water());
    values.add(train.along().get(1).loss().orElseThrow());
    values.add(new PipeSlope(Length.ofMetres(60.0), 0.01, true));
  }

  private static void addNetwork(List<Object> values) {
    Compressor compressor = new Compressor(
        List.of(
            new Compressor.Point(AbsolutePressure.ofBar(5.0), FreeAirFlow.ofAnrLitresPerSecond(60)),
            new Compressor.Point(
                AbsolutePressure.ofBar(9.0), FreeAirFlow.ofAnrLitresPerSecond(50))),
        AbsolutePressure.ofBar(7.0),
        AbsolutePressure.ofBar(8.0),
        Volume.ofCubicMetres(0.5),
        Temperature.ofCelsius(20.0));
    Network network = Network.at(ATMOSPHERE)
        .supply("compressor", compressor)
        .supply("bank", Supply.fixed(EIGHT))
        .line("header", "compressor", "far", hose(40.0))
        .line("link", "bank", "far", hose(20.0))
        .line("dead leg", "far", "end", hose(12.0))
        .part("coupling", "far", "tool", part(6.0))
        .tool("tool", tool())
        .build();
    values.add(compressor);
    values.add(network);
    NetworkSimulation simulation = network.simulate(1L, 20);
    values.add(simulation);
    values.addAll(simulation.tools());
    values.add(network.without("coupling").solve());
    NetworkResult result = network.solve();
    values.add(result);
    if (result instanceof NetworkResult.Solved solved) {
      values.addAll(solved.branches());
      values.addAll(solved.supplies());
      values.addAll(solved.tools());
    }
  }

  private static void addRun(List<Object> values) {
    Run run = Run.from(EIGHT, ATMOSPHERE).through("coupling", part(6.0)).through("hose", hose(9.5));
    GaugePressure six = GaugePressure.ofBar(6.0);
    values.add(run);
    run.largestFlow(six).ifPresent(values::add);
    run.supplyNeeded(tool(), six).ifPresent(values::add);
    values.add(run.at(MassFlow.ofKilogramsPerSecond(0.5)));
    values.addAll(run.sensitivities(run.balance(tool()).massFlow()));
    addJump(values);
    Run wider =
        Run.from(EIGHT, ATMOSPHERE).through("coupling", part(9.0)).through("hose", hose(12.7));
    values.addAll(
        RankedChange.rank(run, tool(), List.of(new Change("wider", wider, Money.parse("30 USD")))));
    values.addAll(WiderHose.triedFromNarrowest(
        run, "hose", MassFlow.ofKilogramsPerSecond(0.01), GaugePressure.ofBar(5.0), UnitSystem.SI));
    values.addAll(LongestHose.ofEverySize(
        run, "hose", MassFlow.ofKilogramsPerSecond(0.01), GaugePressure.ofBar(5.0), UnitSystem.SI));
  }

  /** The largest flow that ends at Re 2300: 7 m of 1 mm leave 3.6 bar before the jump and 3.3 behind it. */
  private static void addJump(List<Object> values) {
    AirState four = EIGHT.at(AbsolutePressure.ofBar(4.0));
    Conduit tube = hose(1.0).withLength(Length.ofMetres(7.0));
    Run run = Run.from(four, ATMOSPHERE).through("tube", tube);
    LargestFlow largest = run.largestFlow(GaugePressure.ofBar(2.45)).orElseThrow();
    values.add(largest.result());
    values.add(((RunResult.Delivered) largest.result()).jump().orElseThrow());
  }

  private static void addPlugs(List<Object> values) {
    ReferenceSet birds = DemoProfiles.birds();
    values.addAll(birds.profiles());
    for (PlugProfile profile : birds.profiles()) {
      List<PlugReading> readings = new ArrayList<>();
      profile.dimensions().forEach((dimension, spread) -> {
        double size = spread.nominal().millimetres();
        // the first in inches, typed as millimetres
        readings.add(PlugReading.of(
            dimension,
            Instrument.DIGITAL_CALIPER,
            Length.ofMillimetres(readings.isEmpty() ? size / 25.4 : size)));
      });
      Identification answer = Identifier.of(birds).identify(readings);
      values.add(answer);
      values.addAll(answer.slips());
    }
    KnownPlugs known = KnownPlugs.of("known", Instrument.DIGITAL_CALIPER);
    for (double size : new double[] {12.00, 12.01, 12.00, 12.02, 12.01, 12.50}) {
      known = known.with(new KnownPiece(
          "no. " + (known.pieces().size() + 1),
          Map.of(Dimension.TIP_DIAMETER, Length.ofMillimetres(size))));
    }
    values.add(known);
    values.addAll(known.outliers());
  }

  private static void addSelection(List<Object> values) {
    Requirement job = Shelf.job().build();
    List<Part> parts = Shelf.parts();
    values.add(job);
    values.addAll(parts);
    for (Catalogue catalogue : List.of(Catalogue.of(parts), Catalogue.of(List.of()))) {
      Selection selection = Selection.of(job, catalogue);
      values.add(catalogue);
      values.add(selection);
      if (selection instanceof Selection.Proposals some) {
        values.addAll(some.proposals());
        some.proposals().forEach(proposal -> {
          values.addAll(proposal.findings());
          values.addAll(proposal.joints());
        });
      }
    }
  }

  /** What comes only of values that fit each other: a diagnosis with its explanations, an inventory of couplings. */
  private static void addWhatFits(List<Object> values) {
    for (Class<?> type : List.<Class<?>>of(
        Diagnosis.class,
        Explanation.class,
        Contradiction.class,
        NextGaugeReading.class,
        CouplingInventory.class,
        CouplingPlan.class,
        PriceList.class,
        ListFault.class,
        JobMix.class,
        CatalogueGap.class)) {
      values.addAll(Samples.of(type));
    }
  }

  private static PartFacts priced(String id, String price) {
    return PartFacts.of(id, "part " + id)
        .withRating(GaugePressure.ofBar(16.0))
        .withMaterial(Material.HARDENED_STEEL)
        .withPrice(Money.parse(price));
  }

  /** Parts with prices, and one of which it is not known whether enough air passes. */
  private static void addOffers(List<Object> values) {
    End female = End.parse("3/8 NPT female");
    List<Part> parts = List.of(
        new Part.Plug(priced("hose plug", "3 EUR"), "finch", female),
        new Part.Plug(priced("tool plug", "2 EUR"), "finch", End.parse("1/4 NPT male")),
        new Part.Hose(
            priced("hose", "25 EUR"),
            HoseBore.of(Length.ofMillimetres(9.5)),
            hose(9.5),
            End.parse("3/8 NPT male"),
            End.parse("3/8 NPT male")));
    Requirement job = Shelf.job().build();
    CapacityRange capacity =
        new CapacityRange(part(2.0), part(9.0), Source.demo("made up for the fuzzer"));
    for (CapacityRange each : List.of(CapacityRange.exactly(part(9.0)), capacity)) {
      List<Part> all = new ArrayList<>(parts);
      all.add(new Part.Socket(priced("socket", "10 EUR"), Set.of("finch"), female, each));
      Catalogue catalogue = Catalogue.of(all);
      Selection.of(job, catalogue)
          .fold(fitting -> fitting.proposals(), nothing -> nothing.nearest())
          .forEach(proposal -> values.addAll(proposal.doubts()));
      values.addAll(Offers.of(job, catalogue).offers());
    }
  }
}
