package org.airfit.plant;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.quantity.Volume;
import org.airfit.quantity.VolumeUnit;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.source.Source;
import org.airfit.working.Formula;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * A receiver that is there, and a user that draws more than the compressor delivers, but only now and then: how long
 * the receiver carries a draw, how long the compressor needs to fill it again, and whether that does.
 *
 * <pre>
 *   ti = V (p1 − p2) / (R T (ṁd − ṁc))
 *   ta = V p1 (1 − (p2/p1)^(1/1.4)) / (R T (ṁd − ṁc))
 *   tf = V (p1 − p2) / (R T ṁc)
 *   tr = td (ṁd − ṁc) / ṁc
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>ti, ta</td><td>the longest and the shortest time that the receiver carries the user</td><td>s</td></tr>
 * <tr><td>tf</td><td>how long the compressor needs to fill it from the least to the full pressure</td><td>s</td></tr>
 * <tr><td>tr</td><td>how long it needs to bring back what one draw took</td><td>s</td></tr>
 * <tr><td>td</td><td>how long a draw lasts</td><td>s</td></tr>
 * <tr><td>V</td><td>volume of the receiver</td><td>m³</td></tr>
 * <tr><td>p1, p2</td><td>pressure when the draw begins and the least it may fall to</td><td>Pa</td></tr>
 * <tr><td>ṁd, ṁc</td><td>flow taken and flow delivered</td><td>kg/s</td></tr>
 * <tr><td>R, T</td><td>287.05287 and temperature in the receiver at the start</td><td>J/(kg K), K</td></tr>
 * </tbody>
 * </table>
 *
 * <p>A draw cools the air in the receiver, and the pressure falls further than at a constant temperature. How much heat
 * the walls give back is not known, so both limits are judged: ti holds where the air stays as warm as it was, ta where
 * no heat comes in at all. What the compressor delivers meanwhile is at least as warm as the air inside, so that it
 * makes ta no shorter. The time to fill is that of cool air; a receiver that is filled with warm air reaches its
 * pressure earlier and falls back as it cools. <b>Source:</b> ti, Esposito, Fluid Power with Applications, section 13;
 * ta, the isentropic p/ρ^1.4 of any handbook of gas dynamics with the same balance of mass.
 *
 * @param receiver its volume, in [1e-6, 1e9] m³
 * @param start the pressure when a draw begins
 * @param least the least pressure it may fall to, below {@code start}
 * @param atmosphere the pressure around it
 * @param temperature the temperature in it, above 0 K
 * @param demand the flow taken while the user draws, as well as it is known
 * @param delivery the flow that the compressor delivers for it, as well as it is known; empty where it is not known at
 *     all, and the receiver then carries the draw alone
 * @param draw how long a draw lasts, above 0 s and no longer than a receiver of 1e9 m³ carries it alone
 * @param every the time from the beginning of a draw to that of the next, longer than the draw
 */
public record ReceiverUse(
    Volume receiver,
    GaugePressure start,
    GaugePressure least,
    AbsolutePressure atmosphere,
    Temperature temperature,
    Range<FreeAirFlow> demand,
    Optional<Range<FreeAirFlow>> delivery,
    Duration draw,
    Duration every)
    implements Worked {

  private static final double EXPONENT = 1.4;

  /** A cubic kilometre, which no receiver holds [m³]: a choice of this project. */
  private static final double LARGEST = 1.0e9;

  /** A cubic centimetre, less than any receiver holds [m³]: a choice of this project. */
  private static final double SMALLEST = 1.0e-6;

  private static final Source HANDBOOK =
      Source.handbook("Esposito, Fluid Power with Applications, example 13-7, solved for the time");

  private static final Source ISENTROPIC = Source.derived(
      "balance of mass with p/ρ^1.4 constant, as no heat comes in: the shortest it can be");

  private static final Source BALANCE = Source.derived("balance of mass");

  private static final Symbol RECEIVER = Symbol.of("V", ValueKind.VOLUME);
  private static final Symbol START = Symbol.of("p1", ValueKind.PRESSURE);
  private static final Symbol LEAST = Symbol.of("p2", ValueKind.PRESSURE);
  private static final Symbol GAS_CONSTANT = Symbol.of("R", ValueKind.HEAT_CAPACITY);
  private static final Symbol KELVINS = Symbol.of("T", ValueKind.TEMPERATURE);
  private static final Symbol MOST_TAKEN = Symbol.of("ṁd", ValueKind.MASS_FLOW);
  private static final Symbol LEAST_TAKEN = Symbol.of("ṁd0", ValueKind.MASS_FLOW);
  private static final Symbol LEAST_DELIVERED = Symbol.of("ṁc", ValueKind.MASS_FLOW);
  private static final Symbol MOST_DELIVERED = Symbol.of("ṁc0", ValueKind.MASS_FLOW);
  private static final Symbol DRAW = Symbol.of("td", ValueKind.SECONDS);
  private static final Symbol LONGEST = Symbol.of("ti", ValueKind.SECONDS);
  private static final Symbol SHORTEST = Symbol.of("ta", ValueKind.SECONDS);
  private static final Symbol FILLING = Symbol.of("tf", ValueKind.SECONDS);
  private static final Symbol BRINGING_BACK = Symbol.of("tr", ValueKind.SECONDS);
  private static final Symbol NEEDED = Symbol.of("Vn", ValueKind.VOLUME);

  private static final Formula CARRIES_SHORTEST = Formula.of(
      "The shortest that the receiver carries the draw: no heat comes in",
      "⟨ta⟩ = [144] × ⟨V⟩ × ⟨p1⟩ × (1 − (⟨p2⟩ / ⟨p1⟩)^(1 / 1.4)) / (⟨R⟩ × ⟨T⟩ × (⟨ṁd⟩ − ⟨ṁc⟩))",
      ISENTROPIC,
      SHORTEST,
      RECEIVER,
      START,
      LEAST,
      GAS_CONSTANT,
      KELVINS,
      MOST_TAKEN,
      LEAST_DELIVERED);

  /** Where the flows are known exactly. */
  private static final Formula CARRIES_LONGEST_EXACT = carriesLongest(MOST_TAKEN, LEAST_DELIVERED);

  private static final Formula CARRIES_LONGEST = carriesLongest(LEAST_TAKEN, MOST_DELIVERED);

  private static final Formula FILLS = Formula.of(
      "To fill it from the least pressure",
      "⟨tf⟩ = [144] × ⟨V⟩ × (⟨p1⟩ − ⟨p2⟩) / (⟨R⟩ × ⟨T⟩ × ⟨ṁc⟩)",
      HANDBOOK,
      FILLING,
      RECEIVER,
      START,
      LEAST,
      GAS_CONSTANT,
      KELVINS,
      LEAST_DELIVERED);

  private static final Formula BRINGS_BACK = Formula.of(
      "To bring back what one draw takes",
      "⟨tr⟩ = ⟨td⟩ × (⟨ṁd⟩ − ⟨ṁc⟩) / ⟨ṁc⟩",
      BALANCE,
      BRINGING_BACK,
      DRAW,
      MOST_TAKEN,
      LEAST_DELIVERED);

  private static final Formula WOULD_CARRY = Formula.of(
      "The receiver that carries the draw, whatever heat comes in",
      "⟨Vn⟩ = ⟨td⟩ × (⟨ṁd⟩ − ⟨ṁc⟩) × ⟨R⟩ × ⟨T⟩ / ([144] × ⟨p1⟩ × (1 − (⟨p2⟩ / ⟨p1⟩)^(1 / 1.4)))",
      ISENTROPIC,
      NEEDED,
      DRAW,
      MOST_TAKEN,
      LEAST_DELIVERED,
      GAS_CONSTANT,
      KELVINS,
      START,
      LEAST);

  private static Formula carriesLongest(Symbol taken, Symbol delivered) {
    return Formula.of(
        "The longest: the air stays as warm as it was",
        "⟨ti⟩ = [144] × ⟨V⟩ × (⟨p1⟩ − ⟨p2⟩) / (⟨R⟩ × ⟨T⟩ × (⟨" + taken.text() + "⟩ − ⟨"
            + delivered.text() + "⟩))",
        HANDBOOK,
        LONGEST,
        RECEIVER,
        START,
        LEAST,
        GAS_CONSTANT,
        KELVINS,
        taken,
        delivered);
  }

  /**
   * Checks the components.
   *
   * @param receiver its volume, in [1e-6, 1e9] m³
   * @param start the pressure when a draw begins
   * @param least the least pressure it may fall to, below {@code start}
   * @param atmosphere the pressure around it
   * @param temperature the temperature in it, above 0 K
   * @param demand the flow taken while the user draws, as well as it is known
   * @param delivery the flow that the compressor delivers for it, as well as it is known; empty where it is not known
   *     at all
   * @param draw how long a draw lasts, above 0 s
   * @param every the time from the beginning of a draw to that of the next, longer than the draw
   * @throws IllegalArgumentException if an argument is out of range, or a receiver of 1e9 m³ alone does not carry the
   *     draw
   */
  public ReceiverUse {
    Objects.requireNonNull(receiver, "receiver");
    Objects.requireNonNull(start, "start");
    Objects.requireNonNull(least, "least");
    Objects.requireNonNull(atmosphere, "atmosphere");
    Objects.requireNonNull(temperature, "temperature");
    Objects.requireNonNull(demand, "demand");
    Objects.requireNonNull(delivery, "delivery");
    Objects.requireNonNull(draw, "draw");
    Objects.requireNonNull(every, "every");
    double volume = receiver.cubicMetres();
    if (!(volume >= SMALLEST && volume <= LARGEST)) {
      throw new IllegalArgumentException("volume of the receiver must be in [1e-6, 1e9] m³, was "
          + receiver.shown() + "; check its unit");
    }
    if (least.compareTo(start) >= 0) {
      throw new IllegalArgumentException("least pressure must be below that at the start, "
          + start.inFewestDigits() + ", was " + least.inFewestDigits());
    }
    if (least.absolute(atmosphere).pascals() < 0.0) {
      throw new IllegalArgumentException(
          "least pressure must not lie below a perfect vacuum, was " + least.inFewestDigits());
    }
    if (!(temperature.kelvins() > 0.0)) {
      throw new IllegalArgumentException("temperature must be above 0 K, was "
          + Digits.significant(temperature.kelvins(), 12) + " K");
    }
    if (draw.isNegative() || draw.isZero()) {
      throw new IllegalArgumentException("draw must last more than 0 s, was " + Seconds.told(draw));
    }
    if (every.compareTo(draw) <= 0) {
      throw new IllegalArgumentException("time from draw to draw must be longer than the draw of "
          + Seconds.told(draw) + ", was " + Seconds.told(every));
    }
    double needed = Seconds.of(draw)
        * kilograms(demand.most())
        / givenCold(
            start.absolute(atmosphere).pascals(),
            least.absolute(atmosphere).pascals(),
            temperature.kelvins());
    if (!(needed <= LARGEST)) {
      throw new IllegalArgumentException("draw must be one that a receiver of 1e9 m³ carries, was "
          + Seconds.told(draw) + " of " + demand.most().shown() + " between "
          + start.inFewestDigits() + " and " + least.inFewestDigits()
          + "; check the units of the flow and of the two pressures");
    }
  }

  private double startPascals() {
    return start.absolute(atmosphere).pascals();
  }

  private double leastPascals() {
    return least.absolute(atmosphere).pascals();
  }

  private static double kilograms(FreeAirFlow flow) {
    return flow.massFlow().kilogramsPerSecond();
  }

  private double leastDelivered() {
    return delivery.map(known -> kilograms(known.least())).orElse(0.0);
  }

  private double mostDelivered() {
    return delivery.map(known -> kilograms(known.most())).orElse(0.0);
  }

  private boolean areFlowsExact() {
    return demand.isExact() && delivery.map(Range::isExact).orElse(true);
  }

  private double mostLacking() {
    return kilograms(demand.most()) - leastDelivered();
  }

  private double leastLacking() {
    return kilograms(demand.least()) - mostDelivered();
  }

  /** The mass that the receiver gives at a constant temperature [kg]. */
  private double givesWarm() {
    return receiver.cubicMetres()
        * (startPascals() - leastPascals())
        / (AirState.GAS_CONSTANT * temperature.kelvins());
  }

  /** The mass that it gives where no heat comes in [kg]. */
  private double givesCold() {
    return receiver.cubicMetres()
        * givenCold(startPascals(), leastPascals(), temperature.kelvins());
  }

  /** The same of a cubic metre [kg/m³]: p1 (1 − (p2/p1)^(1/1.4)) / (R T). */
  private static double givenCold(double start, double least, double kelvins) {
    return start
        * (1.0 - Math.pow(least / start, 1.0 / EXPONENT))
        / (AirState.GAS_CONSTANT * kelvins);
  }

  private static Optional<Duration> lasting(double kilograms, double flow) {
    double seconds = kilograms / flow;
    return flow > 0.0 && seconds < Long.MAX_VALUE
        ? Optional.of(duration(seconds))
        : Optional.empty();
  }

  private static Duration duration(double seconds) {
    long whole = (long) seconds;
    return Duration.ofSeconds(whole, Math.round(1.0e9 * (seconds - whole)));
  }

  /**
   * {@return how long the receiver carries the user in any case; empty where the compressor keeps up, so that it carries
   * it without end}
   */
  public Optional<Duration> carriesAtLeast() {
    return lasting(givesCold(), mostLacking());
  }

  /** {@return how long it carries the user at best; empty where the compressor may keep up} */
  public Optional<Duration> carriesAtMost() {
    return lasting(givesWarm(), leastLacking());
  }

  /**
   * {@return how long the compressor needs, by the least that it may deliver, to fill the receiver from its least
   * pressure to that at the start while nobody draws; empty where its delivery is not known or nothing}
   */
  public Optional<Duration> filling() {
    return lasting(givesWarm(), leastDelivered());
  }

  /**
   * {@return how long the compressor needs in any case to bring back what one draw took, 0 s where it keeps up; empty
   * where its delivery is not known or nothing}
   */
  public Optional<Duration> bringingBack() {
    return lasting(Seconds.of(draw) * Math.max(0.0, mostLacking()), leastDelivered());
  }

  /** {@return the smallest receiver that carries the draw whatever is not known; nothing where the compressor keeps up} */
  public Volume needed() {
    return Volume.ofCubicMetres(
        Math.max(0.0, Seconds.of(draw) * mostLacking()) / givesCold() * receiver.cubicMetres());
  }

  private boolean isLongEnough(Optional<Duration> time) {
    return time.map(lasts -> lasts.compareTo(draw) >= 0).orElse(true);
  }

  /** Whether the flow delivered all the time is at least what is drawn on the average. */
  private boolean isBroughtBack(double taken, double delivered) {
    return Seconds.of(draw) * taken <= Seconds.of(every) * delivered;
  }

  /** {@return whether the receiver and its compressor do} */
  public ReceiverVerdict verdict() {
    if (!isLongEnough(carriesAtMost())) {
      return ReceiverVerdict.TOO_SMALL;
    }
    if (delivery.isPresent() && !isBroughtBack(kilograms(demand.least()), mostDelivered())) {
      return ReceiverVerdict.NOT_FILLED;
    }
    return isLongEnough(carriesAtLeast())
            && isBroughtBack(kilograms(demand.most()), leastDelivered())
        ? ReceiverVerdict.MET
        : ReceiverVerdict.DEPENDS;
  }

  /** {@return the warnings that go with a receiver} */
  public List<Caution> cautions() {
    return List.of(SafetyRules.usFederal().reminder("Receiver protection"));
  }

  /**
   * Tells the answer.
   *
   * @param units the units
   * @return sentences: how long it carries a draw, how long it takes to fill, and whether that does
   */
  public List<String> inWords(UnitSystem units) {
    return inWords(units, verdict());
  }

  /**
   * Tells the answer with the verdict of somebody who judged it at more than one least pressure, because that is not
   * known exactly.
   *
   * @param units the units
   * @param judged the verdict
   * @return sentences: how long it carries a draw, how long it takes to fill, and whether that does
   */
  public List<String> inWords(UnitSystem units, ReceiverVerdict judged) {
    Objects.requireNonNull(units, "units");
    Objects.requireNonNull(judged, "judged");
    List<String> sentences = new ArrayList<>();
    sentences.add(carryingInWords(units));
    sentences.add(fillingInWords(units));
    sentences.add(verdictInWords(units, judged));
    return List.copyOf(sentences);
  }

  private String carryingInWords(UnitSystem units) {
    String from = "From " + units.say(start, least) + " down to " + units.say(least, start)
        + " the receiver of " + said(receiver, units) + " carries ";
    Optional<Duration> shortest = carriesAtLeast();
    if (shortest.isEmpty()) {
      return from + "the draw without end, as the compressor keeps up with it.";
    }
    String longest =
        carriesAtMost().map(time -> said(time, RoundingMode.HALF_EVEN)).orElse("without end");
    String lasts = said(shortest.get(), RoundingMode.FLOOR);
    return from + "a draw of " + said(demand, units) + " for "
        + (longest.equals(lasts) ? lasts : lasts + " to " + longest)
        + (delivery.isPresent() ? ", with the compressor running" : ", without the compressor")
        + "; it is needed for " + said(draw, RoundingMode.HALF_EVEN) + ". "
        + (longest.equals(lasts)
            ? ""
            : "The shorter time is that of air that gets colder as it expands, the longer one that of air"
                + " that the walls keep warm"
                + (areFlowsExact() ? "." : ", each with what the flows may be."));
  }

  private String fillingInWords(UnitSystem units) {
    if (delivery.isEmpty()) {
      return "How long the compressor needs to fill it cannot be told: ask what it delivers at that"
          + " pressure, less what others take.";
    }
    Optional<Duration> fills = filling();
    if (fills.isEmpty()) {
      return "The compressor delivers nothing for it, and nothing fills it again.";
    }
    Duration rest = every.minus(draw);
    return "The compressor delivers " + said(delivery.get(), units) + " and fills it from "
        + units.say(least, start) + " to " + units.say(start, least) + " in "
        + said(fills.get(), RoundingMode.CEILING)
        + "; what one draw takes it "
        + bringingBack()
            .map(time -> "brings back in " + said(time, RoundingMode.CEILING))
            .orElse("does not bring back in any time")
        + ", and from draw to draw there are " + said(rest, RoundingMode.FLOOR) + ".";
  }

  private String verdictInWords(UnitSystem units, ReceiverVerdict judged) {
    String verdict = "The receiver for this user: " + judged + ".";
    String larger = isLongEnough(carriesAtLeast())
        ? ""
        : " A receiver of " + saidUp(needed(), units)
            + " carries the draw in any case between these pressures.";
    boolean isShort =
        delivery.isPresent() && !isBroughtBack(kilograms(demand.most()), leastDelivered());
    String more = isShort
        ? " On the average the draws take " + units.say(onAverage())
            + ", which the compressor must deliver beside what others take; no receiver makes up for that."
        : "";
    String ask = delivery.isEmpty()
        ? " To be asked: what does the compressor deliver? On the average the draws take "
            + units.say(onAverage()) + "."
        : "";
    return verdict + larger + more + ask;
  }

  /** What the draws take on the average, by the most that one may take. */
  private FreeAirFlow onAverage() {
    FreeAirFlow most = demand.most();
    return FreeAirFlow.from(
        most.massFlow().times(Seconds.of(draw) / Seconds.of(every)), most.reference());
  }

  private static String said(Range<FreeAirFlow> flow, UnitSystem units) {
    return flow.isExact()
        ? units.say(flow.least())
        : units.say(flow.least()) + " to " + units.say(flow.most());
  }

  /** A volume as it is told on receivers. */
  private static String said(Volume volume, UnitSystem units) {
    return volume.format(units.either(VolumeUnit.LITRE, VolumeUnit.US_GALLON));
  }

  /** The same with two digits, rounded up. */
  private static String saidUp(Volume volume, UnitSystem units) {
    VolumeUnit unit = units.either(VolumeUnit.LITRE, VolumeUnit.US_GALLON);
    double value = volume.in(unit);
    double step = Math.pow(10.0, Math.floor(Math.log10(value)) - 1.0);
    return said(Volume.of(step * Math.ceil(value / step - 1.0e-9), unit), units);
  }

  /** A time as people say it; one that must last is rounded down, one that is waited for up. */
  private static String said(Duration time, RoundingMode rounding) {
    BigDecimal seconds = BigDecimal.valueOf(Seconds.of(time));
    if (seconds.doubleValue() < 120.0) {
      return tenths(seconds, rounding) + " s";
    }
    return seconds.doubleValue() < 7200.0
        ? twoUnits(seconds, 60, "min", 1, "s", rounding)
        : twoUnits(seconds, 3600, "h", 60, "min", rounding);
  }

  /** In whole small units, as "9 min 30 s"; without the small ones where there are none. */
  private static String twoUnits(
      BigDecimal seconds, int large, String big, int small, String rest, RoundingMode rounding) {
    long whole = seconds
        .divide(BigDecimal.valueOf(small), 7, RoundingMode.HALF_EVEN)
        .setScale(0, rounding)
        .longValue();
    long left = whole % (large / small);
    return whole / (large / small) + " " + big + (left == 0 ? "" : " " + left + " " + rest);
  }

  /** With one decimal; what differs from it by a rounding of its calculation only is not rounded away from it. */
  private static String tenths(BigDecimal seconds, RoundingMode rounding) {
    BigDecimal value = seconds.setScale(7, RoundingMode.HALF_EVEN);
    return Digits.plain(value.setScale(1, rounding).doubleValue());
  }

  @Override
  public Working working(UnitSystem units) {
    Working.Builder working =
        Working.titled("A receiver for a user that draws now and then", units);
    boolean lacks = mostLacking() > 0.0;
    if (!lacks && delivery.isEmpty()) {
      return working.answer("Nothing is drawn.").build();
    }
    working
        .given(RECEIVER, receiver.cubicMetres(), 6)
        .given(START, startPascals(), 6)
        .given(LEAST, leastPascals(), 6)
        .given(GAS_CONSTANT, AirState.GAS_CONSTANT, 8)
        .given(KELVINS, temperature.kelvins(), 6)
        .given(LEAST_DELIVERED, leastDelivered(), 6);
    List<Symbol> answers = new ArrayList<>();
    if (lacks) {
      carrying(working, answers);
    }
    if (leastDelivered() > 0.0) {
      working.step(FILLS, givesWarm() / leastDelivered(), 4);
      answers.add(FILLING);
    }
    if (lacks && (leastDelivered() > 0.0 || !isLongEnough(carriesAtLeast()))) {
      broughtBack(working, answers);
    }
    if (!lacks) {
      working.note("The compressor keeps up with the draw.");
    }
    return working.answer(answers.toArray(new Symbol[0])).build();
  }

  private void carrying(Working.Builder working, List<Symbol> answers) {
    working
        .given(MOST_TAKEN, kilograms(demand.most()), 6)
        .step(CARRIES_SHORTEST, givesCold() / mostLacking(), 4);
    answers.add(SHORTEST);
    if (areFlowsExact()) {
      working.step(CARRIES_LONGEST_EXACT, givesWarm() / mostLacking(), 4);
      answers.add(LONGEST);
    } else if (leastLacking() > 0.0) {
      working
          .given(LEAST_TAKEN, kilograms(demand.least()), 6)
          .given(MOST_DELIVERED, mostDelivered(), 6)
          .step(CARRIES_LONGEST, givesWarm() / leastLacking(), 4);
      answers.add(LONGEST);
    }
  }

  private void broughtBack(Working.Builder working, List<Symbol> answers) {
    working.given(DRAW, Seconds.of(draw), 6);
    if (leastDelivered() > 0.0) {
      working.step(BRINGS_BACK, Seconds.of(draw) * mostLacking() / leastDelivered(), 4);
      answers.add(BRINGING_BACK);
    }
    if (!isLongEnough(carriesAtLeast())) {
      working.step(WOULD_CARRY, needed().cubicMetres(), 4);
      answers.add(NEEDED);
    }
  }
}
