package org.airfit.files;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.airfit.air.AirPurity;
import org.airfit.air.AirState;
import org.airfit.air.AirTreatment;
import org.airfit.air.Compression;
import org.airfit.air.DewPoint;
import org.airfit.air.FilterLoss;
import org.airfit.air.PipeSlope;
import org.airfit.air.PurityClass;
import org.airfit.air.TreatmentKind;
import org.airfit.air.TreatmentRating;
import org.airfit.air.TreatmentStage;
import org.airfit.air.TreatmentSupply;
import org.airfit.plant.AirPlant;
import org.airfit.plant.ElementCost;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Density;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;

/** What a file of water and purity says, a JSON object; docs/water-file.md has the fields. */
public final class WaterFile {

  private static final String VERSION = "airfitWater";

  private static final int MOST_TRAINS = 10;

  private static final int MOST_STAGES = 20;

  private static final int MOST_COMPRESSION = 2;

  private static final int MOST_HOURS = 8784;

  /** The temperatures of air that the core takes [°C]: of a stage, and with a relative humidity. */
  private static final int COLDEST = -100;

  private static final int COLDEST_HUMID = -40;
  private static final int HOTTEST = 100;

  private static final String FLOW = "a free-air flow such as \"200 scfm\" or \"95 L/s ANR\"";
  private static final String TEMPERATURES = "temperatures such as \"5 to 35 °C\"";
  private static final String CONTENT = "a content such as \"0.1 mg/m3\"";
  private static final String WITH = "with the air";
  private static final String AGAINST = "against the air";

  private static final List<PurityClass> PARTICLES = List.of(
      PurityClass.CLASS_1,
      PurityClass.CLASS_2,
      PurityClass.CLASS_3,
      PurityClass.CLASS_4,
      PurityClass.CLASS_5,
      PurityClass.CLASS_6,
      PurityClass.CLASS_7);

  private final Field file;

  /** What compresses the air, and the mean flow. */
  private record Plant(AirPlant plant, MassFlow mean) {}

  /** An element that costs something to change. */
  private record Priced(Field row, String name, Optional<Money> element) {}

  private WaterFile(Field file) {
    this.file = file;
  }

  /**
   * Reads a file of water and purity.
   *
   * @param document a JSON object
   * @return what is asked, and the trains
   * @throws WrongFileException if a field is missing, misspelt or refused
   */
  public static WaterJob read(Document document) throws WrongFileException {
    Field file = FileForm.of(document, VERSION);
    return new WaterFile(file).read();
  }

  private WaterJob read() throws WrongFileException {
    String title = file.field("title", "what is asked").text();
    String customer = file.field("customer", "whose air it is").text();
    Duration time =
        TimeField.of(file.field("shift", "the time for which water is counted, such as 8 h"));
    Optional<AirPurity> asked = file.find(
        "asked", "classes of particles, water and oil such as \"[1:4:2]\"", AirPurity::parse);
    Field pressure = file.field("pressure", Accepted.GAUGE);
    UnitSystem units = units(pressure);
    TreatmentSupply supply = supply(pressure);
    Optional<Plant> plant = plant(supply);
    Field trains = file.field("trains", "a list of trains, each with a name and stages");
    List<Field> items = trains.items();
    if (items.isEmpty() || items.size() > MOST_TRAINS) {
      throw trains.wrong("must hold 1 to " + MOST_TRAINS + " trains, held " + items.size());
    }
    List<WaterJob.Train> read = new ArrayList<>();
    for (Field item : items) {
      WaterJob.Train train = train(item, supply, plant);
      if (read.stream().anyMatch(other -> other.name().equals(train.name()))) {
        throw item.field("name", "").wrong("stands twice; give each train its own");
      }
      read.add(train);
    }
    file.requireNothingElse();
    return new WaterJob(title, customer, time, asked, read, units);
  }

  private UnitSystem units(Field pressure) throws WrongFileException {
    Optional<UnitSystem> told = TypedUnits.told(file);
    return told.isPresent() ? told.get() : TypedUnits.ofPressure(pressure);
  }

  private TreatmentSupply supply(Field pressureTold) throws WrongFileException {
    AbsolutePressure atmosphere = FlowFields.atmosphere(
        file.field("atmosphere", "an absolute pressure such as 1.013 bar(a)"));
    Field intake = file.field("intake", "an object with temperature, driest and dampest");
    Range<Temperature> temperature =
        within(intake.field("temperature", TEMPERATURES), COLDEST_HUMID, "that of air taken in");
    DewPoint dry = taken(
        intake.field("driest", "the lowest relative humidity at the coldest, such as 0.3"),
        AirState.of(atmosphere, temperature.least()));
    DewPoint damp = taken(
        intake.field("dampest", "the highest relative humidity at the hottest, such as 0.7"),
        AirState.of(atmosphere, temperature.most()));
    intake.requireNothingElse();
    Range<Temperature> room = file.field("room", TEMPERATURES).range(Temperature::parse);
    Range<GaugePressure> pressure = pressureTold.range(GaugePressure::parse);
    if (!(pressure.least().pascals() > 0.0)) {
      throw pressureTold.refused("behind the compressor it must be above 0 bar(g), 0 psig");
    }
    Optional<Field> behind =
        file.find("discharge", "the temperature of the air behind the compressor, " + TEMPERATURES);
    Optional<Range<Temperature>> discharge =
        behind.isPresent() ? Optional.of(behind.get().range(Temperature::parse)) : Optional.empty();
    Field air = file.field("air", FLOW);
    Range<FreeAirFlow> flow = air.range(FreeAirFlow::parse);
    if (!(flow.least().massFlow().kilogramsPerSecond() > 0.0)) {
      throw air.wrong(
          "was \"" + air.text() + "\"; the least flow through the train must be above 0");
    }
    Optional<Density> mist = Optional.empty();
    Optional<Density> vapour = Optional.empty();
    Optional<Field> oil = file.find("oil", "what the compressor leaves: mist and vapour");
    if (oil.isPresent()) {
      mist = content(oil.get(), "mist");
      vapour = content(oil.get(), "vapour");
      oil.get().requireNothingElse();
    }
    Optional<Density> mistLeft = mist;
    Optional<Density> vapourLeft = vapour;
    return file.build(() -> new TreatmentSupply(
        atmosphere, dry, damp, room, pressure, discharge, flow, mistLeft, vapourLeft));
  }

  private static Range<Temperature> within(Field told, int coldest, String what)
      throws WrongFileException {
    Range<Temperature> range = told.range(Temperature::parse);
    FlowFields.requireWithin(told, range, coldest, HOTTEST, what);
    return range;
  }

  private static DewPoint taken(Field humidity, AirState air) throws WrongFileException {
    double told = humidity.number();
    return humidity.build(() -> DewPoint.of(air, told));
  }

  private static Optional<Density> content(Field row, String field) throws WrongFileException {
    Optional<Field> told = row.find(field, CONTENT);
    return told.isPresent() ? Optional.of(told.get().most(Density::parse)) : Optional.empty();
  }

  private Optional<Plant> plant(TreatmentSupply supply) throws WrongFileException {
    Optional<Field> told =
        file.find("plant", "an object with power, delivery, compression, air, hours, electricity");
    if (told.isEmpty()) {
      return Optional.empty();
    }
    Field row = told.get();
    Power power = row.field("power", "the electric power while it delivers, such as 37 kW")
        .as(Power::parse);
    FreeAirFlow delivery =
        row.field("delivery", "what it delivers then, such as 210 scfm").as(FreeAirFlow::parse);
    Field built = row.field("compressionStages", "1 or 2, as the compressor is built");
    int stages = built.wholeNumber();
    if (stages < 1 || stages > MOST_COMPRESSION) {
      throw built.wrong("must be 1 or 2, was " + stages);
    }
    Field meanTold = row.field("air", "the mean flow over the hours, " + FLOW);
    FreeAirFlow mean = meanTold.as(FreeAirFlow::parse);
    requireAtMost(meanTold, mean, supply.flow().most(), "the most air of the train");
    requireAtMost(meanTold, mean, delivery, "the delivery of the compressor");
    Field hours = row.field("hours", "a whole number of hours in the year under pressure");
    int running = hours.wholeNumber();
    if (running > MOST_HOURS) {
      throw hours.wrong("must be in [0, " + MOST_HOURS + "] h, was " + running);
    }
    Money rate = PriceField.of(row.field("electricity", "the price of a kWh, such as 0.15 USD"));
    row.requireNothingElse();
    AirPlant plant = row.build(() -> AirPlant.measured(
        Compression.staged(
            AirState.of(supply.atmosphere(), supply.room().most()),
            supply.pressure().most().absolute(supply.atmosphere()),
            stages),
        delivery,
        power,
        Duration.ofHours(running),
        rate));
    return Optional.of(new Plant(plant, mean.massFlow()));
  }

  private static void requireAtMost(Field told, FreeAirFlow mean, FreeAirFlow most, String what)
      throws WrongFileException {
    if (mean.massFlow().kilogramsPerSecond()
        > most.massFlow().kilogramsPerSecond() * (1.0 + 1.0e-9)) {
      throw told.wrong("was \"" + told.text() + "\"; the mean flow must be at most " + what);
    }
  }

  private WaterJob.Train train(Field item, TreatmentSupply supply, Optional<Plant> plant)
      throws WrongFileException {
    String name = item.field("name", "what to call the train").text().strip();
    List<TreatmentStage> stages = new ArrayList<>();
    List<WaterJob.Main> mains = new ArrayList<>();
    List<Priced> priced = new ArrayList<>();
    Field listed = item.field("stages", "a list of what the air passes, in its order");
    List<Field> rows = listed.items();
    if (rows.isEmpty() || rows.size() > MOST_STAGES) {
      throw listed.wrong("must hold 1 to " + MOST_STAGES + " stages, held " + rows.size());
    }
    for (Field row : rows) {
      Optional<Range<Temperature>> before = stages.isEmpty()
          ? Optional.empty()
          : Optional.of(stages.get(stages.size() - 1).air());
      TreatmentStage stage = stage(row, before);
      if (stages.stream().anyMatch(other -> other.name().equals(stage.name()))) {
        throw row.field("name", "").wrong("stands twice; give each stage a name of its own");
      }
      stages.add(stage);
      Optional<PipeSlope> slope = slope(row, stage.kind());
      slope.ifPresent(known -> mains.add(new WaterJob.Main(stage.name(), known)));
      Optional<Field> element = row.find("element", "the price of a new element, such as 85 USD");
      if (element.isPresent() && stage.loss().isEmpty()) {
        throw element
            .get()
            .wrong("is told without loss; tell what the element takes clean and at changeOut, or"
                + " leave it out");
      }
      if (stage.loss().isPresent()) {
        Optional<Money> price =
            element.isPresent() ? Optional.of(element(element.get(), plant)) : Optional.empty();
        priced.add(new Priced(row, stage.name(), price));
      }
      row.requireNothingElse();
    }
    item.requireNothingElse();
    AirTreatment treatment = item.build(() -> new AirTreatment(supply, stages));
    List<ElementCost> costs = new ArrayList<>();
    if (plant.isPresent()) {
      for (Priced each : priced) {
        Optional<ElementCost> cost = cost(each, treatment, plant.get());
        cost.ifPresent(costs::add);
      }
    }
    return new WaterJob.Train(name, treatment, mains, costs);
  }

  private static Money element(Field told, Optional<Plant> plant) throws WrongFileException {
    Money price = PriceField.of(told);
    Optional<String> currency =
        plant.map(known -> known.plant().perKilowattHour().currency());
    if (currency.isPresent() && !price.currency().equals(currency.get())) {
      throw told.wrong("is in " + price.currency() + ", and electricity in " + currency.get()
          + "; give both in one currency");
    }
    return price;
  }

  /** What an element costs; none where it has nothing to change, or takes as much clean as at change-out. */
  private static Optional<ElementCost> cost(Priced priced, AirTreatment treatment, Plant plant)
      throws WrongFileException {
    for (AirTreatment.At at : treatment.along()) {
      if (at.stage().name().equals(priced.name()) && at.loss().isPresent()) {
        FilterLoss most = at.loss().get();
        FilterLoss mean = priced
            .row()
            .build(() -> new FilterLoss(
                most.ratedFlow(),
                most.ratedPressure(),
                most.ratedLoss(),
                most.changeOut(),
                plant.mean(),
                at.inlet().most().absolute(treatment.supply().atmosphere())));
        boolean isChanged = most.changeOut().compareTo(most.ratedLoss()) > 0;
        if (isChanged && !mean.isTooSmall()) {
          return Optional.of(priced
              .row()
              .build(() -> new ElementCost(
                  priced.name(),
                  plant.plant(),
                  plant.mean(),
                  mean.clean(),
                  most.changeOut(),
                  priced.element())));
        }
      }
    }
    return Optional.empty();
  }

  private static TreatmentStage stage(Field row, Optional<Range<Temperature>> before)
      throws WrongFileException {
    String name = row.field("name", "what to call the stage").text().strip();
    TreatmentKind kind = row.field("kind", "such as coalescing filter")
        .oneOf(List.of(TreatmentKind.values()), TreatmentKind::toString);
    boolean isDrained = row.flag("drain");
    Optional<Field> told = row.find("air", TEMPERATURES);
    Range<Temperature> air;
    if (told.isPresent()) {
      air = within(told.get(), COLDEST, "that of air behind a stage");
    } else if (before.isPresent() && (kind.isFilter() || kind == TreatmentKind.SEPARATOR)) {
      air = before.get();
    } else {
      Field needed = row.field("air", "the temperature of the air that leaves it, " + TEMPERATURES);
      air = within(needed, COLDEST, "that of air behind a stage");
    }
    Optional<TreatmentRating> rating = rating(row);
    Optional<TreatmentStage.Duty> duty = duty(row, rating);
    Optional<Field> point = row.find("dewPoint");
    if (kind == TreatmentKind.REFRIGERATED_DRYER
        && point.isPresent()
        && duty.flatMap(TreatmentStage.Duty::dewPoint)
            .filter(dry -> dry.celsius() < 0.0)
            .isPresent()) {
      throw point
          .get()
          .wrong(
              "was \"" + point.get().text() + "\"; the condensate of a refrigerated dryer freezes"
                  + " below 0 °C (32 °F), so it must be at least that");
    }
    Optional<TreatmentStage.Loss> loss = loss(row, rating);
    return row.build(() -> new TreatmentStage(name, kind, air, isDrained, duty, loss));
  }

  private static Optional<TreatmentRating> rating(Field row) throws WrongFileException {
    Optional<Field> told = row.find("rated", "an object with flow, pressure and inlet");
    if (told.isEmpty()) {
      return Optional.empty();
    }
    Field rated = told.get();
    FreeAirFlow flow = rated.field("flow", FLOW).as(FreeAirFlow::parse);
    GaugePressure pressure = rated.field("pressure", Accepted.GAUGE).as(GaugePressure::parse);
    Temperature inlet = rated
        .field("inlet", "the inlet temperature that it is rated at, such as 35 °C")
        .as(Temperature::parse);
    Optional<Temperature> room = rated.find(
        "room",
        "the temperature of the room that it is rated at, such as 25 °C",
        Temperature::parse);
    List<TreatmentRating.PressureFactor> byPressure = factors(
        rated,
        "byPressure",
        Accepted.GAUGE,
        GaugePressure::parse,
        /* isRising= */ true,
        TreatmentRating.PressureFactor::new);
    List<TreatmentRating.TemperatureFactor> byInlet = byTemperature(rated, "byInlet");
    List<TreatmentRating.TemperatureFactor> byRoom = byTemperature(rated, "byRoom");
    rated.requireNothingElse();
    return Optional.of(rated.build(
        () -> new TreatmentRating(flow, pressure, inlet, room, byPressure, byInlet, byRoom)));
  }

  private static String plain(double factor) {
    return BigDecimal.valueOf(factor).stripTrailingZeros().toPlainString();
  }

  private static List<TreatmentRating.TemperatureFactor> byTemperature(Field rated, String name)
      throws WrongFileException {
    return factors(
        rated,
        name,
        "a temperature such as 40 °C",
        Temperature::parse,
        /* isRising= */ false,
        TreatmentRating.TemperatureFactor::new);
  }

  /** The points of a table of factors, which rise with what they are told at, or fall. */
  private static <T extends Comparable<T>, R> List<R> factors(
      Field rated,
      String name,
      String accepted,
      Function<String, T> parser,
      boolean isRising,
      BiFunction<T, Double, R> made)
      throws WrongFileException {
    Optional<Field> told =
        rated.find(name, "a list such as [{\"at\": \"8 bar(g)\", \"factor\": 1.06}]");
    List<R> factors = new ArrayList<>();
    if (told.isEmpty()) {
      return factors;
    }
    List<T> places = new ArrayList<>();
    double lastFactor = 0.0;
    String before = "";
    for (Field point : told.get().items()) {
      Field typed = point.field("at", accepted);
      T at = typed.as(parser);
      double factor = point
          .field("factor", "a factor of the flow such as " + (isRising ? "1.06" : "0.85"))
          .number();
      point.requireNothingElse();
      if (!places.isEmpty()) {
        boolean isOff = isRising ? factor < lastFactor : factor > lastFactor;
        if (isOff || at.compareTo(places.get(places.size() - 1)) <= 0) {
          throw point.wrong("was " + plain(factor) + " at \"" + typed.text() + "\" behind "
              + plain(lastFactor) + " at \"" + before + "\"; "
              + (isRising
                  ? "pressures must rise, and factors must not fall as they rise"
                  : "temperatures must rise, and factors must fall as that rises"));
        }
      }
      places.add(at);
      lastFactor = factor;
      before = typed.text();
      factors.add(point.build(() -> made.apply(at, factor)));
    }
    return factors;
  }

  private static Optional<TreatmentStage.Duty> duty(Field row, Optional<TreatmentRating> rating)
      throws WrongFileException {
    Optional<Field> point =
        row.find("dewPoint", "the pressure dew point behind a dryer, such as 3 °C");
    Optional<Field> particles = row.find("particles", "the class behind it that its maker tells");
    Optional<Field> mist = row.find("oilMist", "an object with leaves and testedWith");
    Optional<Field> vapour = row.find("oilVapour", "an object with leaves and testedWith");
    if (point.isEmpty() && particles.isEmpty() && mist.isEmpty() && vapour.isEmpty()) {
      return Optional.empty();
    }
    if (rating.isEmpty()) {
      row.field(
          "rated", "for which air the maker tells it: an object with flow, pressure and inlet");
    }
    Optional<Temperature> dewPoint =
        point.isPresent() ? Optional.of(point.get().as(Temperature::parse)) : Optional.empty();
    Optional<PurityClass> behind = particles.isPresent()
        ? Optional.of(particles.get().oneOf(PARTICLES, PurityClass::toString))
        : Optional.empty();
    Optional<TreatmentStage.Retention> ofMist = retention(mist);
    Optional<TreatmentStage.Retention> ofVapour = retention(vapour);
    return Optional.of(row.build(
        () -> new TreatmentStage.Duty(rating.orElseThrow(), dewPoint, behind, ofMist, ofVapour)));
  }

  private static Optional<TreatmentStage.Retention> retention(Optional<Field> told)
      throws WrongFileException {
    if (told.isEmpty()) {
      return Optional.empty();
    }
    Field row = told.get();
    Field left = row.field("leaves", CONTENT);
    Density leaves = left.most(Density::parse);
    Field coming = row.field("testedWith", CONTENT);
    Density tested = coming.as(Density::parse);
    row.requireNothingElse();
    if (tested.compareTo(leaves) < 0) {
      throw coming.wrong("was \"" + coming.text() + "\"; a filter is tested with at least what it"
          + " leaves, \"" + left.text() + "\"");
    }
    return Optional.of(row.build(() -> new TreatmentStage.Retention(leaves, tested)));
  }

  private static Optional<TreatmentStage.Loss> loss(Field row, Optional<TreatmentRating> rating)
      throws WrongFileException {
    Optional<Field> told = row.find("loss", "an object with clean and changeOut");
    if (told.isEmpty()) {
      return Optional.empty();
    }
    Field loss = told.get();
    Optional<Field> at = loss.find("flow", FLOW);
    Optional<Field> under = loss.find("pressure", Accepted.GAUGE);
    FreeAirFlow flow = at.isEmpty() && rating.isPresent()
        ? rating.get().flow()
        : loss.field("flow", FLOW + ", at which it is told").as(FreeAirFlow::parse);
    GaugePressure pressure = under.isEmpty() && rating.isPresent()
        ? rating.get().pressure()
        : loss.field("pressure", Accepted.GAUGE).as(GaugePressure::parse);
    Field cleanTold = loss.field("clean", "the pressure it takes clean, such as 0.1 bar");
    PressureDrop clean = cleanTold.as(PressureDrop::parse);
    Optional<Field> changed =
        loss.find("changeOut", "the pressure at which its element is changed, such as 0.35 bar");
    PressureDrop changeOut = changed.isPresent() ? changed.get().as(PressureDrop::parse) : clean;
    loss.requireNothingElse();
    if (changed.isPresent() && changeOut.compareTo(clean) < 0) {
      throw changed
          .get()
          .wrong("was \"" + changed.get().text() + "\"; must be at least that of the clean element,"
              + " \"" + cleanTold.text() + "\"");
    }
    return Optional.of(loss.build(() -> new TreatmentStage.Loss(flow, pressure, clean, changeOut)));
  }

  private static Optional<PipeSlope> slope(Field row, TreatmentKind kind)
      throws WrongFileException {
    Optional<Field> told = row.find("main", "an object with length, slope and waterRuns");
    if (told.isEmpty()) {
      return Optional.empty();
    }
    Field main = told.get();
    if (kind != TreatmentKind.PIPE) {
      throw main.wrong("belongs to a pipe alone, which a " + kind + " is not; leave it out");
    }
    Length length = main.field("length", "a length such as 60 m").as(Length::parse);
    double slope =
        main.field("slope", "how much it falls, such as 0.01 for 1 in 100").number();
    boolean isWithAir = main.field("waterRuns", WITH + ", " + AGAINST)
        .oneOf(List.of(WITH, AGAINST), word -> word)
        .equals(WITH);
    main.requireNothingElse();
    return Optional.of(main.build(() -> new PipeSlope(length, slope, isWithAir)));
  }
}
