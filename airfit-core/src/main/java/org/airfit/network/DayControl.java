package org.airfit.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.airfit.internal.Seconds;
import org.airfit.plant.PressureBand;
import org.airfit.plant.SharedBand;
import org.airfit.plant.TimedCompressor;
import org.airfit.quantity.Energy;
import org.airfit.quantity.FreeAirFlow;
import org.jspecify.annotations.Nullable;

/** What the compressors of a day do: which one is called or sent to rest when, and what each took until then. */
final class DayControl {

  private enum Is {
    STANDING,
    STARTING,
    IDLING,
    BUILDING_UP,
    LOADED
  }

  /** One compressor. */
  private static final class Machine {
    final TimedCompressor of;
    final int number;
    final double cutIn; // Pa, NaN where it shares a band
    final double cutOut;
    Is is = Is.STANDING;
    boolean called;
    double since; // when it began to be that
    double until = Double.POSITIVE_INFINITY; // when it becomes something else by itself
    double wattsBefore; // when it was sent to rest
    double loadedSeconds;
    double idleSeconds;
    double idleJoules;
    double blowDownSeconds; // of idling, that count as loaded: half of a whole blow-down
    int loads;
    final List<Double> starts = new ArrayList<>();

    Machine(TimedCompressor of, int number, double atmosphere) {
      this.of = of;
      this.number = number;
      this.cutIn =
          of.band().map(PressureBand::cutIn).map(p -> p.pascals() + atmosphere).orElse(Double.NaN);
      this.cutOut =
          of.band().map(PressureBand::cutOut).map(p -> p.pascals() + atmosphere).orElse(Double.NaN);
    }

    boolean idles() {
      return is == Is.STARTING || is == Is.IDLING || is == Is.BUILDING_UP;
    }
  }

  private final DayFlows flows;
  private final List<Machine> machines = new ArrayList<>();
  private final @Nullable SharedBand shared;
  private final double sharedIn;
  private final double sharedOut;
  private double waitsUntil = Double.NEGATIVE_INFINITY;

  /** How often any of them was switched. */
  int switches;

  DayControl(DayPlan day, DayFlows flows) {
    this.flows = flows;
    double atmosphere = day.atmosphere().pascals();
    for (int c = 0; c < day.compressors().size(); c++) {
      machines.add(new Machine(day.compressors().get(c), c, atmosphere));
    }
    shared = day.sharedBand().orElse(null);
    sharedIn = shared == null ? Double.NaN : shared.band().cutIn().pascals() + atmosphere;
    sharedOut = shared == null ? Double.NaN : shared.band().cutOut().pascals() + atmosphere;
  }

  /** When something next happens by itself [s]. */
  double next(double now) {
    double next = waitsUntil > now ? waitsUntil : Double.POSITIVE_INFINITY;
    for (Machine machine : machines) {
      next = Math.min(next, machine.until);
    }
    return next;
  }

  /** The values that rise above 0 where the pressure [Pa] at the first receiver calls one or sends it to rest. */
  void watch(double now, double pascals, double[] values) {
    Arrays.fill(values, -1.0);
    if (shared != null) {
      if (now >= waitsUntil) {
        values[0] = anyToCall() ? sharedIn - pascals : -1.0;
        values[1] = anyToRest() ? pascals - sharedOut : -1.0;
      }
      return;
    }
    for (Machine machine : machines) {
      values[machine.number] = machine.called ? pascals - machine.cutOut : machine.cutIn - pascals;
    }
  }

  /** How many values {@link #watch} gives. */
  int watched() {
    return Math.max(2, machines.size());
  }

  private boolean anyToCall() {
    return machines.stream().anyMatch(machine -> !machine.called);
  }

  private boolean anyToRest() {
    return machines.stream().anyMatch(machine -> machine.called);
  }

  /** Does what time and pressure ask for now; whether anything changed. */
  boolean act(double now, double pascals) {
    int before = switches;
    for (Machine machine : machines) {
      if (machine.until <= now) {
        expire(machine, now);
      }
    }
    if (shared != null) {
      actTogether(shared, now, pascals);
    } else {
      for (Machine machine : machines) {
        if (!machine.called && pascals <= machine.cutIn) {
          call(machine, now);
        } else if (machine.called && pascals >= machine.cutOut) {
          rest(machine, now, pascals);
        }
      }
    }
    return switches > before;
  }

  private void actTogether(SharedBand band, double now, double pascals) {
    if (now < waitsUntil) {
      return;
    }
    if (pascals <= sharedIn) {
      for (Machine machine : machines) {
        if (!machine.called) {
          call(machine, now);
          waitsUntil = now + Seconds.of(band.pause());
          return;
        }
      }
    } else if (pascals >= sharedOut) {
      for (int c = machines.size() - 1; c >= 0; c--) {
        if (machines.get(c).called) {
          rest(machines.get(c), now, pascals);
          waitsUntil = now + Seconds.of(band.pause());
          return;
        }
      }
    }
  }

  private void call(Machine machine, double now) {
    machine.called = true;
    boolean stands = machine.is == Is.STANDING;
    if (stands) {
      machine.starts.add(now);
    }
    become(machine, stands ? Is.STARTING : Is.BUILDING_UP, now);
    double delay = Seconds.of(stands ? machine.of.startDelay() : machine.of.loadDelay());
    machine.until = now + delay;
    if (delay == 0.0) {
      expire(machine, now);
    }
  }

  /** What was waited for has come. */
  private void expire(Machine machine, double now) {
    if (machine.is == Is.IDLING) {
      become(machine, Is.STANDING, now);
    } else {
      machine.loads++;
      become(machine, Is.LOADED, now);
    }
    machine.until = Double.POSITIVE_INFINITY;
  }

  /** Sends it to rest; where it was not loaded yet it falls back to what it was. */
  private void rest(Machine machine, double now, double pascals) {
    machine.called = false;
    machine.wattsBefore =
        machine.is == Is.LOADED ? flows.loadedWatts(machine.number, pascals) : 0.0;
    become(machine, Is.IDLING, now);
    machine.until =
        machine.of.runOn().map(time -> now + Seconds.of(time)).orElse(Double.POSITIVE_INFINITY);
    if (machine.until <= now) {
      expire(machine, now);
    }
  }

  private void become(Machine machine, Is other, double now) {
    book(machine, now);
    machine.is = other;
    flows.load(machine.number, other == Is.LOADED);
    switches++;
  }

  /** Adds up the time it was what it is until now. */
  private void book(Machine machine, double now) {
    double seconds = now - machine.since;
    machine.since = now;
    if (machine.is == Is.LOADED) {
      machine.loadedSeconds += seconds;
    } else if (machine.idles()) {
      machine.idleSeconds += seconds;
      double idle = machine.of.idlePower().watts();
      machine.idleJoules += idle * seconds;
      double fall = Seconds.of(machine.of.blowDown());
      double falling = Math.min(seconds, fall);
      if (machine.is == Is.IDLING && fall > 0.0 && machine.wattsBefore > idle) {
        double alike = falling * (1.0 - falling / (2.0 * fall));
        machine.blowDownSeconds += alike;
        machine.idleJoules += (machine.wattsBefore - idle) * alike;
      }
    }
  }

  /** Ends the day: what each compressor did. */
  List<DayResult.CompressorDay> end(double now, double[] state) {
    List<DayResult.CompressorDay> answers = new ArrayList<>();
    for (Machine machine : machines) {
      book(machine, now);
      FreeAirFlow delivery = machine.of.delivery();
      answers.add(new DayResult.CompressorDay(
          machine.of.name(),
          DayResult.duration(machine.loadedSeconds),
          DayResult.duration(machine.idleSeconds),
          DayResult.duration(Math.max(0.0, now - machine.loadedSeconds - machine.idleSeconds)),
          machine.starts.size(),
          mostInAnHour(machine.starts),
          machine.loads,
          Energy.ofJoules(state[flows.energy(machine.number)]),
          Energy.ofJoules(machine.idleJoules),
          machine.loadedSeconds * delivery.massFlow().kilogramsPerSecond()));
    }
    return answers;
  }

  /** By how much the energy of each compressor grows with its idle power [s], once the day has ended. */
  List<Double> idleSeconds() {
    return machines.stream()
        .map(machine -> machine.idleSeconds - machine.blowDownSeconds)
        .toList();
  }

  private static int mostInAnHour(List<Double> starts) {
    int most = 0;
    int first = 0;
    for (int i = 0; i < starts.size(); i++) {
      while (starts.get(i) - starts.get(first) >= 3600.0) {
        first++;
      }
      most = Math.max(most, i - first + 1);
    }
    return most;
  }
}
