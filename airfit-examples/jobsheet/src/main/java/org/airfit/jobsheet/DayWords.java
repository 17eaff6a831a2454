package org.airfit.jobsheet;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.air.AirState;
import org.airfit.network.DayChange;
import org.airfit.network.DayCost;
import org.airfit.network.DayPrice;
import org.airfit.network.DayResult;
import org.airfit.network.LineReceiver;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.Energy;
import org.airfit.quantity.EnergyUnit;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.Volume;
import org.airfit.quantity.VolumeUnit;
import org.airfit.working.UnitSystem;

/** What a sheet of a day says in sentences, alike in the text and on the page. */
final class DayWords {

  private final DaySheet sheet;
  private final UnitSystem units;

  DayWords(DaySheet sheet) {
    this.sheet = sheet;
    this.units = sheet.job().units();
  }

  /** What and what is said of it. */
  record Line(String what, String said) {}

  /** The answer in one sentence. */
  String headline() {
    List<DayResult.UseDay> lacking =
        sheet.day().uses().stream().filter(DayResult.UseDay::isShort).toList();
    if (lacking.isEmpty()) {
      String all = sheet.cold().isShort()
          ? "Every user has the pressure it needs as long as the walls keep the receivers warm,"
              + " and not without their heat."
          : "Every user has the pressure it needs all day.";
      return all
          + closest()
              .map(use -> " Nearest to its need comes " + worst(use) + ".")
              .orElse("");
    }
    return "Below their need: "
        + lacking.stream().map(this::worst).collect(Collectors.joining("; ")) + ".";
  }

  /** The user with the least margin. */
  private Optional<DayResult.UseDay> closest() {
    return sheet.day().uses().stream()
        .filter(use -> use.need().isPresent() && use.lowest().isPresent())
        .min(Comparator.comparingDouble(
            use -> use.lowest().orElseThrow().atTool().pascals()
                - use.need().orElseThrow().pascals()));
  }

  private String worst(DayResult.UseDay use) {
    DayResult.Lowest lowest = use.lowest().orElseThrow();
    return use.name() + " with " + units.sayBoth(lowest.atTool(), use.need().orElseThrow())
        + " at " + sheet.clock(lowest.when())
        + use.need().map(need -> ", needed " + units.say(need)).orElse("")
        + (use.isShort() ? ", below that for " + said(use.below()) + " in all" : "");
  }

  List<Line> inShort() {
    List<Line> lines = new ArrayList<>();
    lines.add(new Line("Pressure", headline()));
    lines.add(new Line("Receivers get colder", cold()));
    sheet
        .bunched()
        .ifPresent(bunched -> lines.add(new Line("Averages hide peaks", bunched(bunched))));
    lines.add(new Line("Air", air()));
    lines.add(new Line(
        "Energy",
        energy(sheet.day().energy()) + " in " + said(sheet.job().day().length())
            + compressorsInShort()));
    sheet.job().price().ifPresent(price -> lines.add(new Line("Money", money(price))));
    return lines;
  }

  private String money(DayPrice price) {
    DayCost least = price.leastCost(sheet.day());
    DayCost most = price.mostCost(sheet.day());
    return between(least.perDay(), most.perDay(), 2) + " for the electricity of this day, "
        + between(least.perYear(), most.perYear(), 0) + " in a year with " + price.timesInYear()
        + " such days, at " + price.perKilowattHour().shown() + " a kWh.";
  }

  /** Money between two, such as "4.10 to 4.35 EUR"; one amount where both read alike. */
  private static String between(Money least, Money most, int decimals) {
    String first = least.format(decimals);
    String last = most.format(decimals);
    return first.equals(last) ? last : first.substring(0, first.indexOf(' ')) + " to " + last;
  }

  /** What a change saves in money, or costs more. */
  private String saved(DayPrice price, DayResult now, DayResult then) {
    DayCost least = price.leastSaved(now, then);
    DayCost most = price.mostSaved(now, then);
    if (least.kilowattHours() >= 0.0) {
      return "; saves " + between(least.perDay(), most.perDay(), 2) + " a day, "
          + between(least.perYear(), most.perYear(), 0) + " in a year";
    }
    Money more = least.perDay().times(-1.0);
    Money moreInYear = least.perYear().times(-1.0);
    if (most.kilowattHours() <= 0.0) {
      return "; costs " + between(most.perDay().times(-1.0), more, 2) + " more a day, "
          + between(most.perYear().times(-1.0), moreInYear, 0) + " more in a year";
    }
    return "; saves no money for certain: between " + more.format(2) + " more and "
        + most.perDay().format(2) + " less a day, " + moreInYear.format(0) + " more and "
        + most.perYear().format(0) + " less in a year";
  }

  private String cold() {
    List<String> less = new ArrayList<>();
    for (int i = 0; i < sheet.day().uses().size(); i++) {
      DayResult.UseDay warm = sheet.day().uses().get(i);
      DayResult.UseDay cold = sheet.cold().uses().get(i);
      if (warm.need().isPresent() && !warm.isShort() && cold.isShort()) {
        less.add(worst(cold));
      }
    }
    return "The pressures are those of air that the walls keep at one temperature. Without their"
        + " heat "
        + (less.isEmpty()
            ? none() + " falls below its need"
            : these() + ": " + String.join("; ", less))
        + "; the truth lies between.";
  }

  private String bunched(DayResult bunched) {
    String users = sheet.job().day().uses().stream()
        .filter(use -> use.when().averagedOver().isPresent())
        .map(use ->
            use.name() + ", averages of " + said(use.when().averagedOver().orElseThrow()))
        .collect(Collectors.joining("; "));
    List<String> lacking = new ArrayList<>();
    for (int i = 0; i < bunched.uses().size(); i++) {
      if (bunched.uses().get(i).isShort() && !sheet.day().uses().get(i).isShort()) {
        lacking.add(worst(bunched.uses().get(i)));
      }
    }
    return "Recorded were " + users
        + ": a peak that is shorter does not show. With the same air taken in bursts"
        + " at the largest flow told "
        + (lacking.isEmpty()
            ? none() + " falls below its need"
            : these() + ": " + String.join("; ", lacking))
        + ". Record at 1 s before a receiver is bought by this.";
  }

  private String these() {
    return "these fall below their need" + (sheet.day().isShort() ? " as well" : "");
  }

  private String none() {
    return sheet.day().isShort() ? "no other user" : "no user";
  }

  private String air() {
    DayResult.Balance balance = sheet.day().balance();
    double taken = balance.takenKilograms();
    return amount(balance.madeKilograms()) + " made, " + amount(taken)
        + " taken. Artificial demand, taken only"
        + " because the pressure was higher than needed: " + amount(sheet.day().tooMuchKilograms())
        + share(sheet.day().tooMuchKilograms(), taken)
        + ". Taken by what needs no pressure, such as leaks: "
        + amount(sheet.day().withoutNeedKilograms())
        + share(sheet.day().withoutNeedKilograms(), taken) + ".";
  }

  private static String share(double part, double whole) {
    return whole > 0.0 ? " (" + Amounts.fixed(100.0 * part / whole, 1) + " %)" : "";
  }

  private String compressorsInShort() {
    return sheet.day().compressors().isEmpty()
        ? ""
        : "; of it "
            + energy(Energy.ofJoules(sheet.day().compressors().stream()
                .mapToDouble(did -> did.idleEnergy().joules())
                .sum()))
            + " idling";
  }

  private static String count(int number, String what) {
    return number + " " + what + (number == 1 ? "" : "s");
  }

  /** What a compressor did. */
  String did(DayResult.CompressorDay did) {
    return "loaded " + Amounts.fixed(100.0 * did.loadedShare(), 1) + " % of the time, idling "
        + said(did.idle()) + ", " + count(did.starts(), "start") + ", at most "
        + did.mostStartsInAnHour()
        + " in the busiest hour, " + count(did.loads(), "load") + ", " + energy(did.energy());
  }

  /** What a user had. */
  String had(DayResult.UseDay use) {
    if (use.lowest().isEmpty()) {
      return "did not run";
    }
    return (use.need().isPresent()
            ? "lowest " + worst(use).substring(use.name().length() + 6)
            : "no need told")
        + "; took " + amount(use.takenKilograms())
        + (use.tooMuchKilograms() > 0.0
            ? ", of it " + amount(use.tooMuchKilograms()) + " for nothing"
            : "")
        + (use.missedKilograms() > 0.0005 * use.takenKilograms()
            ? ", missed " + amount(use.missedKilograms())
            : "");
  }

  /** What would change, each gone through again. */
  List<String> changes() {
    List<String> said = new ArrayList<>();
    for (int i = 0; i < sheet.changes().size(); i++) {
      DayChange change = sheet.changes().get(i);
      said.add(what(change) + ": " + outcome(change, sheet.changesCold().get(i)));
    }
    if (isNone(DayChange.Kind.REGULATOR) && sheet.job().day().regulator().isEmpty()) {
      said.add(
          "A regulator in front of the header: no setting leaves every user what it has now, as"
              + " its own valve takes some pressure.");
    }
    if (isNone(DayChange.Kind.BANDS) && sheet.job().day().lowestCutIn().isPresent()) {
      said.add("Cut-in and cut-out of the compressors: not to be lowered, not even by 0.05 bar.");
    }
    said.add("Each of these days was gone through again. A difference below " + energy(oneSwing())
        + " may come from where in its swing the day ends"
        + (sheet.job().price().isPresent()
            ? "; money counts what the receivers then hold more or less."
            : "."));
    return said;
  }

  private boolean isNone(DayChange.Kind kind) {
    return sheet.changes().stream().noneMatch(change -> change.kind() == kind);
  }

  private String what(DayChange change) {
    return switch (change.kind()) {
      case RECEIVER -> {
        LineReceiver last = last(change.day().receivers());
        yield last.name() + " of " + volume(last.volume()) + " in place of "
            + volume(last(sheet.job().day().receivers()).volume());
      }
      case BANDS -> {
        double moved = change.day().lowestCutIn().orElseThrow().pascals()
            - sheet.job().day().lowestCutIn().orElseThrow().pascals();
        yield "Cut-in and cut-out of every compressor "
            + units.say(PressureDrop.ofPascals(Math.abs(moved)))
            + (moved > 0.0 ? " higher" : " lower");
      }
      case REGULATOR -> {
        RegulatorElement regulator = change.day().regulator().orElseThrow();
        yield (base(change).equals(sheet.day()) ? "A" : "With that receiver, a")
            + " regulator in front of the header, set to "
            + units.say(GaugePressure.of(regulator.set(), sheet.job().day().atmosphere()))
            + " and with a C of at least "
            + Amounts.fixed(regulator.capacity().conductance().cubicDecimetresPerSecondBar(), 0)
            + " dm³/(s·bar)";
      }
    };
  }

  private static LineReceiver last(List<LineReceiver> receivers) {
    return receivers.get(receivers.size() - 1);
  }

  /** The day that a change is set beside: where the receiver is changed, a regulator stands beside that. */
  private DayResult base(DayChange change) {
    return change.kind() != DayChange.Kind.REGULATOR
        ? sheet.day()
        : sheet.changes().stream()
            .filter(other -> other.kind() == DayChange.Kind.RECEIVER)
            .findFirst()
            .map(DayChange::result)
            .orElse(sheet.day());
  }

  /** Who is short all the same where the walls give no heat. */
  private static String without(DayResult cold) {
    String lacking = cold.uses().stream()
        .filter(DayResult.UseDay::isShort)
        .map(DayResult.UseDay::name)
        .collect(Collectors.joining(", "));
    return lacking.isEmpty()
        ? ", without heat from the walls too"
        : ", but not without heat from the walls (" + lacking + ")";
  }

  private String outcome(DayChange change, DayResult cold) {
    DayResult then = change.result();
    double saved = base(change).energy().joules() - then.energy().joules();
    List<DayResult.UseDay> lacking =
        then.uses().stream().filter(DayResult.UseDay::isShort).toList();
    String starts = then.compressors().stream()
        .map(did -> did.name() + ": " + count(did.starts(), "start"))
        .collect(Collectors.joining(", "));
    return (lacking.isEmpty()
            ? "every user has what it needs" + without(cold)
            : "still below their need: "
                + lacking.stream().map(this::worst).collect(Collectors.joining("; ")))
        + "; " + energy(Energy.ofJoules(Math.abs(saved)))
        + (saved >= 0.0 ? " less" : " more")
        + (base(change).equals(sheet.day()) ? "" : " than with the receiver alone")
        + sheet.job().price().map(price -> saved(price, base(change), then)).orElse("")
        + ", artificial demand "
        + amount(then.tooMuchKilograms()) + (starts.isEmpty() ? "" : "; " + starts)
        + (change.kind() == DayChange.Kind.BANDS && saved < 0.0
            ? ". Look at the ratings of receivers, relief valves and tools first"
            : "")
        + (change.kind() == DayChange.Kind.REGULATOR
            ? ". It can fail open: parts behind it must stand the pressure in front"
            : "")
        + ".";
  }

  /** What one swing of the receivers is worth: what a day may differ by that ends elsewhere in its swing. */
  private Energy oneSwing() {
    double made = sheet.day().balance().madeKilograms();
    double joules = sheet.day().energy().joules();
    double volume = sheet.job().day().receivers().stream()
        .mapToDouble(receiver -> receiver.volume().cubicMetres())
        .sum();
    double band = sheet.day().course().stream()
            .mapToDouble(stretch -> stretch.highestAtCompressors().pascals())
            .max()
            .orElse(0.0)
        - sheet.day().course().stream()
            .mapToDouble(stretch -> stretch.lowestAtCompressors().pascals())
            .min()
            .orElse(0.0);
    double kilograms =
        volume * band / (AirState.GAS_CONSTANT * sheet.job().day().temperature().kelvins());
    return Energy.ofJoules(made > 0.0 ? kilograms * joules / made : 0.0);
  }

  /** What the answer leaves out, which must be read with it. */
  List<String> limits() {
    List<String> limits = new ArrayList<>(sheet.job().remarks());
    limits.add(
        "The header has one pressure; what users lose together in a main is not in it. A network"
            + " file solved with what runs at the lowest moment tells that.");
    limits.add(
        "A compressor delivers the same free air over its band, and the pressure that calls it is"
            + " that in "
            + sheet.job().day().receivers().get(0).name() + ".");
    if (sheet.job().price().isPresent()) {
      limits.add("Money is that of electricity alone, as if every such day were this one. What a"
          + " receiver, a regulator and their fitting cost is not in it, nor is a charge for the"
          + " highest power.");
    }
    limits.add("Gauge pressures stand above an atmosphere of "
        + new NetworkAmounts(units).absolute(sheet.job().day().atmosphere())
        + ". Free air is counted at "
        + units.either("20 °C, 1 bar(a) and 65 % humidity.", "60 °F and 14.7 psia."));
    return limits;
  }

  /** The user whose lowest moment the working explains: the one with the least margin. */
  Optional<String> explained() {
    return closest().map(DayResult.UseDay::name);
  }

  private String energy(Energy energy) {
    return energy.format(EnergyUnit.KILOWATT_HOUR, energy.kilowattHours() < 10.0 ? 1 : 0);
  }

  private String volume(Volume volume) {
    return volume.format(units.either(VolumeUnit.LITRE, VolumeUnit.US_GALLON), 0);
  }

  /** A mass of air as free air. */
  String amount(double kilograms) {
    double cubicMetres = kilograms
        / units
            .either(ReferenceState.ANR, ReferenceState.SCFM_60F)
            .density()
            .kilogramsPerCubicMetre();
    double value = units.either(cubicMetres, cubicMetres / 0.028_316_846_592);
    return Amounts.fixed(value, value < 10.0 ? 1 : 0) + units.either(" m³ ANR", " scf");
  }

  /** A time as people say it. */
  static String said(Duration time) {
    long seconds = time.plusMillis(500).toMillis() / 1000;
    if (seconds < 120) {
      return Amounts.fixed(1.0e-9 * time.toNanos(), seconds < 10 ? 1 : 0) + " s";
    }
    if (seconds < 7200) {
      return seconds / 60 + " min" + (seconds % 60 == 0 ? "" : " " + seconds % 60 + " s");
    }
    long minutes = (seconds + 30) / 60;
    return minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
  }
}
