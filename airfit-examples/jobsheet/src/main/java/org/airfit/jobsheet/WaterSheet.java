package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.air.AirTreatment;
import org.airfit.air.DewPoint;
import org.airfit.air.DrainNeed;
import org.airfit.air.FilterLoss;
import org.airfit.air.PipeSlope;
import org.airfit.air.PurityAnswer;
import org.airfit.air.PurityClass;
import org.airfit.air.PurityVerdict;
import org.airfit.air.SlopeVerdict;
import org.airfit.air.TreatmentSupply;
import org.airfit.air.WaterAlongLine;
import org.airfit.air.WaterBalance;
import org.airfit.files.WaterJob;
import org.airfit.plant.ElementCost;
import org.airfit.plant.Payback;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.TemperatureUnit;
import org.airfit.quantity.VolumeUnit;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;

/**
 * Water, purity and pressure loss of trains of filters and dryers, as text and page share it.
 *
 * @param job what is asked
 */
public record WaterSheet(WaterJob job) {

  /** What the sheet does not judge, at the place where its answer is read. */
  static final List<String> LIMITS = List.of(
      "Each stage counts for what its maker warrants, in the worst air that was told: most flow,"
          + " hottest inlet, warmest room, lowest pressure with all elements at change-out. It is"
          + " no measurement: an element that is torn, wet or old does less, and some fail without"
          + " taking more pressure. Change them by age too.",
      "The water is reckoned with the most air that was told, as if it flowed for the whole time."
          + " Warm and cold are the two ends of what was told; the most at a place is the worst of"
          + " all in between, and such worsts do not happen together, so they have no sum.",
      "Air that a desiccant or membrane dryer blows off to dry itself (10 to 18 % of its rating"
          + " where it is not heated, by one public text) is not counted: it has to be in the air"
          + " that was told.",
      "Vapour counts as that of ideal gases: really air at 8 bar (116 psi) keeps 2 to 5 % more,"
          + " and a dew point is off by up to 0.6 K (1 °F). Drains are taken to work; a drain that"
          + " fails lets all of it pass.",
      "A compressor takes in the oil vapour of the air around it, one without oil too: nothing is"
          + " added for it, so that the vapour that was told has to hold it.", // from memory
      "Classes are those of the table of ISO 8573-1:2010 as public texts quote it; the standard"
          + " was not read. Public texts state the dew point at the pressure of the line or at 7"
          + " bar. Editions before 2010 had other limits of particles: say the year with a class.",
      "The loss of a clean element at another flow lies between two laws on which public texts"
          + " disagree: in proportion to the flow, and by its square. Both are in each range.",
      "Money is saved by a new element only where the pressure of the compressor is set lower for"
          + " it.");

  /** In less than so much nobody sees water in a day [kg/s]. */
  private static final double NOTHING = 1.0e-12;

  /**
   * Refuses what is null.
   *
   * @param job what is asked
   */
  public WaterSheet {
    Objects.requireNonNull(job, "job");
  }

  /**
   * Answers a file of water and purity.
   *
   * @param job what is asked
   * @return its sheet
   */
  public static WaterSheet of(WaterJob job) {
    return new WaterSheet(job);
  }

  UnitSystem units() {
    return job.units();
  }

  /** A row of what a train reaches, with reasons. */
  record Reached(String what, String asked, String told, PurityVerdict verdict, String why) {}

  /** A row of the water along a train. */
  record Water(
      String place, String warm, String cold, String most, String need, boolean isMissing) {}

  /** A row of the pressure that elements take. */
  record Loss(
      String name, String clean, String changeOut, String costs, String extra, String paidBack) {}

  /** The whole sheet in a few lines. */
  List<Answer> inShort() {
    List<Answer> lines = new ArrayList<>();
    for (WaterJob.Train train : job.trains()) {
      judged(train)
          .ifPresent(
              answer -> lines.add(new Answer(InWords.capital(train.name()), said(train, answer))));
    }
    for (WaterJob.Train train : job.trains()) {
      String missing = places(train, DrainNeed.MISSING);
      if (!missing.isEmpty()) {
        lines.add(new Answer(
            "Drains, " + train.name(), "Fit one at " + missing + ": water can be there."));
      }
      frozen(train).ifPresent(ice -> lines.add(new Answer("Frost, " + train.name(), ice)));
    }
    WaterAlongLine water = job.trains().get(0).treatment().water();
    lines.add(new Answer(
        "Water taken in",
        "up to " + volume(water.takenIn()) + " in " + shift() + ", with air of a dew point of "
            + said(water.dampest()) + "."));
    for (WaterJob.Train train : job.trains()) {
      dearest(train)
          .ifPresent(
              cost -> lines.add(new Answer("Dearest element, " + train.name(), clogged(cost))));
    }
    return lines;
  }

  /** What one cooler takes out of the air, in a few lines; it is the first stage of the first train. */
  List<Answer> ofCooler() {
    WaterJob.Train train = job.trains().get(0);
    WaterAlongLine water = train.treatment().water();
    WaterAlongLine.AtPlace cooler = water.most().get(0).most();
    List<Answer> lines = new ArrayList<>();
    lines.add(new Answer(
        "Water that falls out",
        "up to " + volume(cooler.liquid()) + " in " + shift() + " where the air is cooled to "
            + units().say(cooler.air()) + ", of " + volume(water.takenIn())
            + " taken in; the rest stays in the air as vapour."));
    lines.add(
        new Answer("Dew point of the air taken in", "at most " + said(water.dampest()) + "."));
    lines.add(new Answer("Dew point under pressure", underPressure(train)));
    water
        .dampestEnd()
        .ifPresent(end -> lines.add(new Answer(
            "Dew point behind it",
            "at most " + said(end) + ", if a drain takes the water out there. Where the air gets"
                + " colder than that, more falls out.")));
    frozen(train).ifPresent(ice -> lines.add(new Answer("Frost", ice)));
    return lines;
  }

  /** The dew point of the dampest air at the highest pressure. */
  private String underPressure(WaterJob.Train train) {
    TreatmentSupply supply = train.treatment().supply();
    AbsolutePressure highest = supply.pressure().most().absolute(supply.atmosphere());
    try {
      return "at most " + said(supply.dampest().at(highest))
          + ". Water falls out wherever the compressed air gets colder.";
    } catch (IllegalArgumentException e) { // it lies beyond what a dew point is told for
      return "outside of " + units().either("−100 to 100 °C", "−148 to 212 °F") + " at "
          + units().say(highest) + ", where none is told.";
    }
  }

  Optional<PurityAnswer> judged(WaterJob.Train train) {
    return job.asked().map(asked -> train.treatment().judge(asked, units()));
  }

  private static String said(WaterJob.Train train, PurityAnswer answer) {
    String asked = answer.asked().toString();
    if (answer.verdict() == PurityVerdict.REACHED) {
      boolean hasParticles = answer.asked().particles() != PurityClass.NOT_SPECIFIED;
      return asked + " is reached"
          + train
              .treatment()
              .lastBeforeRust()
              .filter(last -> hasParticles)
              .map(last -> "; particles are judged behind " + last.name()
                  + ", and rust and scale of what follows it are not counted")
              .orElse("")
          + ".";
    }
    List<String> missed = new ArrayList<>();
    miss(missed, "particles", answer.particles());
    miss(missed, "water", answer.water());
    miss(missed, "oil", answer.oil());
    return asked + " is "
        + (answer.verdict() == PurityVerdict.NOT_REACHED
            ? "not reached: "
            : "not told to be reached: ")
        + String.join("; ", missed) + ".";
  }

  private static void miss(List<String> missed, String what, PurityAnswer.Part part) {
    if (part.verdict() != PurityVerdict.REACHED) {
      String why = part.told()
          .map(told -> " (class " + told + " for " + part.asked() + ")")
          .orElseGet(() -> part.reasons().isEmpty()
              ? ""
              : " (" + part.reasons().get(0).replaceFirst("\\.$", "") + ")");
      missed.add(what + " " + part.verdict().label() + why);
    }
  }

  List<Reached> reached(PurityAnswer answer) {
    return List.of(
        row("particles", answer.particles()),
        row("water", answer.water()),
        row("oil", answer.oil()));
  }

  private static Reached row(String what, PurityAnswer.Part part) {
    return new Reached(
        what,
        part.asked() == PurityClass.NOT_SPECIFIED ? "not asked" : part.asked().toString(),
        part.told().map(PurityClass::toString).orElse("-"),
        part.verdict(),
        String.join(" ", part.reasons()));
  }

  /** A dryer drains itself, whether its dew point is told or not. */
  private static boolean isDryer(WaterJob.Train train, String name) {
    return train.treatment().stages().stream()
        .anyMatch(stage -> stage.name().equals(name) && stage.kind().isDryer());
  }

  /** The names of the places with one need, such as "receiver and yard main". */
  private static String places(WaterJob.Train train, DrainNeed need) {
    List<String> names = train.treatment().water().most().stream()
        .filter(at -> at.need() == need && !isDryer(train, at.most().name()))
        .map(at -> at.most().name())
        .toList();
    return String.join(", ", names);
  }

  /** Where water falls out below freezing. */
  private Optional<String> frozen(WaterJob.Train train) {
    List<WaterAlongLine.AtMost> frozen = train.treatment().water().most().stream()
        .filter(at ->
            at.most().air().celsius() < 0.0 && at.most().liquid().kilogramsPerSecond() > NOTHING)
        .toList();
    return frozen.isEmpty()
        ? Optional.empty()
        : Optional.of(frozen.stream()
                .map(at -> at.most().name() + " gets as cold as "
                    + units().say(at.most().air()))
                .collect(Collectors.joining("; "))
            + ": what falls out there freezes, and no drain takes ice out. The dew point has to"
            + " lie below the coldest pipe.");
  }

  /** Water as people measure it: litres or gallons in the time that was told. */
  String volume(MassFlow water) {
    double value = amount(water);
    if (water.kilogramsPerSecond() <= NOTHING) {
      return "none";
    }
    return (value < 0.01 ? "< 0.01" : Amounts.digits(value, value < 1.0 ? 2 : 3))
        + units().either(" L", " gal");
  }

  /** The number of that alone. */
  double amount(MassFlow water) {
    return WaterBalance.litres(water, job.shift())
        .in(units().either(VolumeUnit.LITRE, VolumeUnit.US_GALLON));
  }

  String shift() {
    double hours = job.shift().toMillis() / 3.6e6;
    return Amounts.digits(hours, 4) + " h";
  }

  List<Water> water(WaterJob.Train train) {
    WaterAlongLine water = train.treatment().water();
    List<WaterAlongLine.AtPlace> warm = water.warmDay();
    List<WaterAlongLine.AtPlace> cold = water.coldDay();
    List<WaterAlongLine.AtMost> most = water.most();
    List<Water> rows = new ArrayList<>();
    for (int i = 0; i < most.size(); i++) {
      WaterAlongLine.AtMost at = most.get(i);
      boolean isDryer = isDryer(train, at.most().name());
      rows.add(new Water(
          at.most().name(),
          at(warm.get(i)),
          at(cold.get(i)),
          volume(at.most().liquid()),
          isDryer ? "drains itself" : need(at),
          at.need() == DrainNeed.MISSING && !isDryer));
    }
    return rows;
  }

  private String at(WaterAlongLine.AtPlace at) {
    return volume(at.liquid()) + " at " + units().say(at.air());
  }

  private String need(WaterAlongLine.AtMost at) {
    double more = at.withoutDryer().kilogramsPerSecond() - at.most().liquid().kilogramsPerSecond();
    return at.need().label()
        + (more > NOTHING ? "; if the dryer stands still, up to " + volume(at.withoutDryer()) : "");
  }

  private String said(DewPoint point) {
    return point
            .temperature()
            .format(units().either(TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT), 1)
        + (point.isFrostPoint() ? " (frost point)" : "") + " at " + units().say(point.pressure());
  }

  /** What comes in, what leaves as liquid and what stays as vapour on a warm day, in one sentence. */
  String balance(WaterJob.Train train) {
    WaterAlongLine water = train.treatment().water();
    List<WaterAlongLine.AtPlace> warm = water.warmDay();
    double drained =
        warm.stream().mapToDouble(at -> at.drainedOff().kilogramsPerSecond()).sum();
    WaterAlongLine.AtPlace end = warm.get(warm.size() - 1);
    return "Warm: " + volume(water.takenIn()) + " in with the air in " + shift() + "; "
        + volume(MassFlow.ofKilogramsPerSecond(drained)) + " leave by drains and dryers, "
        + volume(end.vapour()) + " go on as vapour, "
        + (end.carriedOn().kilogramsPerSecond() > NOTHING
            ? volume(end.carriedOn()) + " as liquid."
            : "none as liquid.")
        + end.dewPoint().map(this::outdoors).orElse("");
  }

  private String outdoors(DewPoint point) {
    String here = " The dew point at the end is " + said(point);
    try {
      return here + ", which is "
          + said(point.at(job.trains().get(0).treatment().supply().atmosphere()))
          + " once it is let out.";
    } catch (IllegalArgumentException e) {
      return here + "."; // let out it would lie below -100 °C
    }
  }

  /** Dryers that do not count in the worst air, so that more water may come than is told of the places behind them. */
  Optional<String> undried(WaterJob.Train train) {
    List<String> idle = train.treatment().idleDryers(units());
    return idle.isEmpty()
        ? Optional.empty()
        : Optional.of("These amounts take it that each dryer does what its maker says. "
            + idle.get(0) + " Then up to as much may come behind it as if it stood still.");
  }

  /** Each place where a drain belongs, with what is there to be told of the fall of mains. */
  List<String> drains(WaterJob.Train train) {
    List<String> said = new ArrayList<>();
    for (WaterAlongLine.AtMost at : train.treatment().water().most()) {
      if (at.need() == DrainNeed.MISSING && !isDryer(train, at.most().name())) {
        said.add(at.most().name() + ": up to " + volume(at.most().liquid()) + " in " + shift()
            + " and no drain. Fit one at its lowest point, or dry the air to a dew point below "
            + units().say(at.most().air()) + ".");
      }
    }
    frozen(train).ifPresent(said::add);
    train.mains().forEach(main -> said.add(fall(main)));
    said.add(
        "A drain belongs wherever water falls out: behind the cooler, at the receiver, at filters,"
            + " in front of the dryer, at low points, at the foot of risers and at the end of a"
            + " main. Take branches off the top of a main.");
    return said;
  }

  private String fall(WaterJob.Main main) {
    PipeSlope slope = main.slope();
    String least = Amounts.digits(100.0 * slope.leastSlope(), 3) + " %";
    return main.name() + ", " + units().say(slope.length()) + " long, "
        + slope.verdict().label() + ": it falls "
        + Amounts.digits(100.0 * slope.slope(), 3) + " %, "
        + units().say(slope.fall()) + " in all; at least " + least + " is "
        + (slope.isWithAir()
            ? "common practice where water runs with the air"
            : "asked for where water runs against the air")
        + ". Drip legs on it: " + slope.fewestLegs()
        + (slope.nearestLegs() == slope.fewestLegs() ? "" : " to " + slope.nearestLegs())
        + ", every 200 to 300 ft (61 to 91 m) and at its end."
        + (slope.verdict() == SlopeVerdict.TOO_FLAT ? " Water stands in it." : "");
  }

  List<Loss> losses(WaterJob.Train train) {
    List<Loss> rows = new ArrayList<>();
    for (AirTreatment.At at : train.treatment().along()) {
      if (at.loss().isPresent()) {
        FilterLoss loss = at.loss().get();
        Optional<ElementCost> cost = train.costs().stream()
            .filter(each -> each.what().equals(at.stage().name()))
            .findFirst();
        rows.add(new Loss(
            at.stage().name(),
            between(loss.clean()),
            loss.changeOut().compareTo(loss.ratedLoss()) > 0
                ? units().say(loss.changeOut())
                : "no element",
            cost.map(this::year).orElse("-"),
            cost.map(each -> money(each.leastExtra(), each.mostExtra())).orElse("-"),
            paidBack(loss, cost)));
      }
    }
    return rows;
  }

  private static String paidBack(FilterLoss loss, Optional<ElementCost> cost) {
    if (cost.filter(each -> each.mostExtra().amount().signum() == 0).isPresent()) {
      return "saves nothing";
    }
    if (loss.changeOut().compareTo(loss.ratedLoss()) > 0 && loss.isTooSmall()) {
      return "too small: clean it may take what it is changed at";
    }
    return cost.flatMap(ElementCost::payback).map(Payback::inWords).orElse("-");
  }

  private String year(ElementCost cost) {
    return money(cost.cleanLeast().money(), cost.cleanMost().money()) + " clean, "
        + cost.atChangeOut().money().format(0) + " at change-out";
  }

  static String money(Money least, Money most) {
    String first = least.format(0);
    String last = most.format(0);
    return first.equals(last) ? last : first.substring(0, first.indexOf(' ')) + " to " + last;
  }

  String between(Range<PressureDrop> range) {
    String first = units().say(range.least());
    String last = units().say(range.most());
    if (first.equals(last)) {
      return last;
    }
    boolean isSmall = first.startsWith("<"); // such as "< 0.1 psi"
    return (isSmall ? first : first.substring(0, first.indexOf(' '))) + " to " + last;
  }

  /** All stages of a train together. */
  String lossInAll(WaterJob.Train train) {
    List<String> notTold = train.treatment().along().stream()
        .filter(at -> at.loss().isEmpty())
        .map(at -> at.stage().name())
        .toList();
    return "Together " + between(train.treatment().cleanLoss()) + " clean and up to "
        + units().say(train.treatment().changeOutLoss())
        + " with all elements at change-out, with the most air at the lowest pressure."
        + (notTold.isEmpty() ? "" : " Not told of: " + String.join(", ", notTold) + ".");
  }

  private static Optional<ElementCost> dearest(WaterJob.Train train) {
    return train.costs().stream().max((one, other) -> one.mostExtra().compareTo(other.mostExtra()));
  }

  private String clogged(ElementCost cost) {
    return cost.what() + " costs " + money(cost.leastExtra(), cost.mostExtra())
        + " a year more at change-out than clean"
        + cost.payback()
            .filter(payback -> cost.mostExtra().amount().signum() > 0)
            .map(payback -> "; a new element for " + payback.cost().format(2) + " is paid back in "
                + payback.inWords())
            .orElse("")
        + ", if the compressor is set lower for it.";
  }

  List<Caution> cautions() {
    return job.trains().get(0).treatment().cautions();
  }
}
