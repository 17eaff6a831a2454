package org.airfit.network;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.internal.Interruption;
import org.airfit.internal.RootFinder;
import org.airfit.internal.Seconds;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.jspecify.annotations.Nullable;

/**
 * Goes through a day: from one change of the demand or of a compressor to the next, in steps as long as their error
 * allows. Where a pressure reaches cut-in, cut-out or what a user needs, or the pressure at the header turns, the step is
 * taken again with the length at which that happens.
 */
final class DaySolver {

  /** The error of a step over the masses [-]: below 0.1 Pa of a plant. */
  static final double USUAL = 1.0e-7;

  static final String SUBJECT = "the simulation of a day";

  /** So often may the compressors of a day be switched. */
  private static final int MOST_SWITCHES = 200_000;

  private static final int MOST_STEPS = 20_000_000;

  /** So many stretches has the course of a day. */
  private static final int STRETCHES = 480;

  /** Half of what is left open of the moment of an event, over the step [-]. */
  private static final double MOMENT = 1.0e-13;

  private static final double SAFE = 0.8;
  private static final double SHORTEST = 1.0e-9; // s

  private final DayPlan day;
  private final double tolerance;
  private final double length;
  private final DayFlows flows;
  private final DaySteps steps;
  private final DayControl control;
  private final List<Schedule> schedules = new ArrayList<>();
  private final List<Fare> fares = new ArrayList<>();
  private final double[] called; // what calls a compressor or sends it to rest
  private final double[] calledThen;
  private final boolean[] enough; // of each user, in this step
  private final double[] low = new double[STRETCHES]; // header
  private final double[] high = new double[STRETCHES];
  private final double[] lowFirst = new double[STRETCHES]; // first receiver
  private final double[] highFirst = new double[STRETCHES];
  private double[] state;
  private double[] then;
  private double now;
  private double since; // the last change of demand or compressors
  private double storedSince; // in the last receiver [kg]
  private int count;
  private double headerBefore; // where the step began
  private double firstBefore;
  private double drawnTo;

  /** Where a user is in its times. */
  private static final class Schedule {
    private final double[] from;
    private final double[] to;
    private final double[] load;
    private int next;

    Schedule(DemandTimes times) {
      List<DemandTimes.Span> spans = times.spans();
      from = spans.stream().mapToDouble(span -> Seconds.of(span.from())).toArray();
      to = spans.stream().mapToDouble(span -> Seconds.of(span.to())).toArray();
      load = spans.stream().mapToDouble(DemandTimes.Span::load).toArray();
    }

    /** The part it takes from a moment on. */
    double at(double now) {
      while (next < to.length && to[next] <= now) {
        next++;
      }
      return next < from.length && from[next] <= now ? load[next] : 0.0;
    }

    /** When that changes. */
    double change(double now) {
      if (next >= from.length) {
        return Double.POSITIVE_INFINITY;
      }
      return from[next] > now ? from[next] : to[next];
    }
  }

  /** How a user fares. */
  private static final class Fare {
    double lowest = Double.POSITIVE_INFINITY;
    double header;
    double flow;
    double when;
    double runs;
    double below;
    DayResult.@Nullable Fall fall;
  }

  DaySolver(DayPlan day, double tolerance) {
    this.day = day;
    this.tolerance = tolerance;
    this.length = Seconds.of(day.length());
    this.flows = new DayFlows(day);
    this.steps = new DaySteps(flows);
    this.control = new DayControl(day, flows);
    this.called = new double[control.watched()];
    this.calledThen = new double[control.watched()];
    this.enough = new boolean[flows.users];
    this.state = flows.start(day);
    this.then = new double[flows.size()];
    for (TimedUse use : day.uses()) {
      schedules.add(new Schedule(use.when()));
      fares.add(new Fare());
    }
    Arrays.fill(low, Double.POSITIVE_INFINITY);
    Arrays.fill(lowFirst, Double.POSITIVE_INFINITY);
  }

  DayResult solve() {
    double storedAtStart = flows.stored(state);
    double try1 = length;
    while (now < length) {
      double next = begin();
      double room = next - now;
      double h = Math.min(try1, room);
      double longest = h;
      double error = steps.step(state, h, then);
      while (!(error <= tolerance) && h > SHORTEST) {
        h *= error < Double.POSITIVE_INFINITY
            ? Math.max(0.1, SAFE * Math.cbrt(tolerance / error))
            : 0.1;
        longest = h;
        error = steps.step(state, h, then);
      }
      boolean whole = h == room;
      double cut = untilEvent(h);
      if (cut < h) {
        h = Math.max(cut, Math.min(h, SHORTEST));
        whole = h == room;
        steps.step(state, h, then);
      }
      accept(h, whole ? next : now + h);
      double grow = error > 0.0 ? Math.min(5.0, SAFE * Math.cbrt(tolerance / error)) : 5.0;
      try1 = Math.max(10.0 * SHORTEST, longest * Math.max(1.0, grow));
      Interruption.check(SUBJECT);
    }
    return result(storedAtStart);
  }

  /** Sets what runs now and looks at it; when it next changes by itself. */
  private double begin() {
    if (++count > MOST_STEPS || control.switches > MOST_SWITCHES) {
      throw new IllegalArgumentException("receivers must be so large that the compressors of a day"
          + " switch at most " + MOST_SWITCHES + " times, was more than " + control.switches
          + " times in " + Digits.significant(now, 4)
          + " s; check the volumes, the bands and the flows");
    }
    boolean changed = control.act(now, flows.pascals(state, 0));
    double next = Math.min(length, control.next(now));
    for (int i = 0; i < flows.users; i++) {
      Schedule schedule = schedules.get(i);
      double part = schedule.at(now);
      if (part != flows.part(i) || now == 0.0) {
        flows.load(i, part);
        changed = true;
      }
      next = Math.min(next, schedule.change(now));
    }
    if (changed || now == 0.0) {
      since = now;
      storedSince = state[flows.receivers - 1];
    }
    steps.begin(state);
    for (int i = 0; i < flows.users; i++) {
      enough[i] = !(flows.above(i) < 0.0);
    }
    note(now, state);
    headerBefore = flows.header;
    firstBefore = flows.pascals(state, 0);
    control.watch(now, flows.pascals(state, 0), called);
    return next;
  }

  /** The length of the step at whose end the first event has just happened; the step itself where none does. */
  private double untilEvent(double h) {
    int last = flows.receivers - 1;
    boolean falls = steps.change(last) < 0.0;
    if (!(happened(falls) > 0.0)) {
      return h;
    }
    double found = RootFinder.find(
        part -> {
          if (part == 0.0) {
            return -1.0;
          }
          steps.step(state, part * h, then);
          return happened(falls);
        },
        0.0,
        1.0,
        MOMENT);
    return Math.min(h, (found + 4.0 * MOMENT) * h);
  }

  /** Above 0 where anything has happened since the step began, which ends where the flows stand now. */
  private double happened(boolean falls) {
    control.watch(now, flows.pascals(then, 0), calledThen);
    double most = -1.0;
    for (int c = 0; c < called.length; c++) {
      if (called[c] <= 0.0) {
        most = Math.max(most, calledThen[c]);
      }
    }
    for (int i = 0; i < flows.users; i++) {
      double above = flows.above(i);
      if (!Double.isNaN(above)) {
        most = Math.max(most, enough[i] ? -above : above);
      }
    }
    if (falls) {
      most = Math.max(most, 1.0e5 * steps.changeAtEnd(flows.receivers - 1));
    }
    return most;
  }

  private void accept(double h, double end) {
    for (int i = 0; i < flows.users; i++) {
      if (flows.runs(i)) {
        Fare fare = fares.get(i);
        fare.runs += h;
        fare.below += enough[i] ? 0.0 : h;
      }
    }
    draw(end);
    note(end, then);
    double[] old = state;
    state = then;
    then = old;
    now = end;
  }

  /** Notes what the users have, as the flows stand. */
  private void note(double at, double[] here) {
    for (int i = 0; i < flows.users; i++) {
      Fare fare = fares.get(i);
      if (flows.runs(i) && flows.atTool[i] < fare.lowest) {
        fare.lowest = flows.atTool[i];
        fare.header = flows.header;
        fare.flow = flows.flows[i];
        fare.when = at;
        fare.fall = new DayResult.Fall(
            DayResult.duration(at - since), storedSince, here[flows.receivers - 1]);
      }
    }
  }

  /** Draws the pressures into the stretches of the day, in a straight line over each step. */
  private void draw(double end) {
    double header = flows.header;
    double first = flows.pascals(then, 0);
    double wide = length / STRETCHES;
    int from = (int) Math.min(STRETCHES - 1.0, Math.floor(drawnTo / wide));
    int to = (int) Math.min(STRETCHES - 1.0, Math.floor(end / wide));
    for (int i = from; i <= to; i++) {
      double begins = Math.max(drawnTo, i * wide);
      double ends = Math.min(end, (i + 1) * wide);
      put(i, low, high, between(begins, end, headerBefore, header));
      put(i, low, high, between(ends, end, headerBefore, header));
      put(i, lowFirst, highFirst, between(begins, end, firstBefore, first));
      put(i, lowFirst, highFirst, between(ends, end, firstBefore, first));
    }
    drawnTo = end;
  }

  private double between(double at, double end, double before, double behind) {
    double part = end > drawnTo ? (at - drawnTo) / (end - drawnTo) : 1.0;
    return before + Math.max(0.0, Math.min(1.0, part)) * (behind - before);
  }

  private static void put(int at, double[] low, double[] high, double value) {
    low[at] = Math.min(low[at], value);
    high[at] = Math.max(high[at], value);
  }

  private GaugePressure gauge(double pascals) {
    return GaugePressure.ofPascals(pascals - day.atmosphere().pascals());
  }

  private DayResult result(double storedAtStart) {
    List<DayResult.Stretch> course = new ArrayList<>();
    for (int i = 0; i < STRETCHES; i++) {
      course.add(new DayResult.Stretch(
          DayResult.duration(i * length / STRETCHES),
          gauge(low[i]),
          gauge(high[i]),
          gauge(lowFirst[i]),
          gauge(highFirst[i])));
    }
    List<DayResult.UseDay> uses = new ArrayList<>();
    double taken = 0.0;
    for (int i = 0; i < flows.users; i++) {
      Fare fare = fares.get(i);
      TimedUse use = day.uses().get(i);
      taken += state[flows.taken(i)];
      Optional<DayResult.Lowest> lowest = fare.runs > 0.0
          ? Optional.of(new DayResult.Lowest(
              gauge(fare.lowest),
              DayResult.duration(fare.when),
              AbsolutePressure.ofPascals(fare.header),
              MassFlow.ofKilogramsPerSecond(fare.flow),
              Objects.requireNonNull(fare.fall)))
          : Optional.empty();
      uses.add(new DayResult.UseDay(
          use.name(),
          use.need(),
          DayResult.duration(fare.runs),
          use.need().isPresent()
              ? DayResult.duration(Math.min(fare.below, fare.runs))
              : Duration.ZERO,
          lowest,
          summed(state[flows.taken(i)]),
          summed(state[flows.tooMuch(i)]),
          summed(state[flows.missed(i)])));
    }
    return new DayResult(
        day,
        uses,
        control.end(now, state),
        control.idleSeconds(),
        course,
        new DayResult.Balance(
            summed(state[flows.made()]), summed(taken), storedAtStart, flows.stored(state)));
  }

  /** A sum of what is never below 0; the steps, of which some count less than nothing, may leave a rounding below it. */
  private static double summed(double kilograms) {
    return Math.max(0.0, kilograms);
  }
}
