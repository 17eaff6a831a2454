package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.files.LeakJob;
import org.airfit.plant.Leak;
import org.airfit.plant.LeakLedger;
import org.airfit.plant.LeakState;
import org.airfit.plant.Payback;
import org.airfit.plant.YearlyCost;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.Money;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.working.UnitSystem;

/** The sheet of a ledger of leaks as plain text, with the working. */
public final class LeakText {

  /** So many repairs are named as those that pay first; our choice. */
  private static final int FIRST = 3;

  /** The working is printed of so many leaks; our choice. */
  private static final int MOST_WORKED = 10;

  private final Lines out = new Lines();
  private final LeakJob job;

  private LeakText(LeakJob job) {
    this.job = job;
  }

  /**
   * Writes the text.
   *
   * @param job the ledger
   * @return lines, the working last
   */
  public static String of(LeakJob job) {
    return of(job, inShort(job));
  }

  /** The same with other lines in short. */
  static String of(LeakJob job, List<Answer> inShort) {
    LeakText text = new LeakText(job);
    text.write(inShort);
    return text.out.toString();
  }

  /** What is longer than a line goes on under its first word. */
  private void line(String text) {
    String words = text.replaceFirst("^ *(- )?", "");
    out.wrapped(text.substring(0, text.length() - words.length()), words);
  }

  private void write(List<Answer> inShort) {
    out.line("LEAKS  " + job.title());
    line("for " + job.customer());
    out.heading("In short");
    inShort.forEach(answer -> line(answer.what() + ": " + answer.answer()));
    out.heading("The dearest first");
    for (LeakLedger.Entry entry : job.ledger().entries()) {
      Leak leak = entry.leak();
      line("  - " + leak.tag() + ", " + leak.place() + ", " + leak.what() + " (rank "
          + rank(entry) + "): " + loses(leak, job.units()) + "; costs in a year: "
          + cost(entry) + "; " + repair(entry));
    }
    if (job.ledger().entries().isEmpty()) {
      line("  - No leak is open.");
    }
    out.heading("Repaired, checked and tight");
    List<String> done = done(job);
    line("  - " + (done.isEmpty() ? "none yet" : String.join(", ", done)));
    out.heading("The whole plant");
    tests(job).forEach(test -> line("  - " + test));
    out.heading("Before anyone looks for leaks or repairs them");
    job.ledger().cautions(job.units()).forEach(caution -> line("  - " + caution));
    out.heading("How it was reckoned");
    notes(job).forEach(note -> line("  - " + note));
    out.heading("The working");
    working();
  }

  private void working() {
    job.tests().forEach(test -> out.add(test.result().working(job.units()).toText() + "\n"));
    int worked = 0;
    for (LeakLedger.Entry entry : job.ledger().entries()) {
      if (entry.most().isPresent() && worked < MOST_WORKED) {
        worked++;
        out.line("Leak " + entry.leak().tag());
        Leak leak = entry.leak();
        boolean isLeft = leak.state() == LeakState.STILL_LEAKS;
        out.add((isLeft ? leak.checked().orElseThrow().left() : leak.found())
                .working(job.units())
                .toText()
            + "\n");
        out.add(entry.most().get().working(job.units()).toText() + "\n");
      }
    }
    job.ledger()
        .round()
        .together()
        .ifPresent(round -> out.add(round.working(job.units()).toText() + "\n"));
  }

  /** The whole sheet in a few lines, for somebody who reads no further. */
  static List<Answer> inShort(LeakJob job) {
    LeakLedger ledger = job.ledger();
    List<Answer> lines = new ArrayList<>();
    lines.add(new Answer("What leaks now", total(ledger.lost(), job.units(), "costs")));
    for (LeakJob.Test test : job.tests()) {
      lines.add(new Answer(
          "Beside the test (" + test.name() + ")",
          ledger.against(test.result(), test.day()).inWords()));
    }
    LeakLedger.Round round = ledger.round();
    if (!round.inOrder().isEmpty()) {
      lines.add(new Answer(
          "Repairs that pay first",
          round.inOrder().stream()
              .limit(FIRST)
              .map(entry -> entry.leak().tag() + " (" + entry.leak().place() + ", "
                  + entry.leak().what() + "): "
                  + entry.payback().map(Payback::inWords).orElse(""))
              .collect(Collectors.joining("; "))));
    }
    round
        .together()
        .ifPresent(
            together -> lines.add(new Answer("All repairs together", round(round, together))));
    String toCheck = ofState(job, LeakState.TO_BE_CHECKED);
    if (!toCheck.isEmpty()) {
      lines.add(new Answer("To be checked again", toCheck + "; until then no repair is done"));
    }
    LeakLedger.Total saved = ledger.saved();
    if (ledger.leaks().stream().anyMatch(leak -> leak.checked().isPresent())) {
      lines.add(new Answer("Saved and checked", total(saved, job.units(), "saves")));
    }
    return lines;
  }

  /** What one open leak loses and costs, and whether its repair pays, in a few lines. */
  static List<Answer> ofOne(LeakJob job) {
    LeakLedger.Entry entry = job.ledger().entries().get(0);
    List<Answer> lines = new ArrayList<>();
    lines.add(new Answer("It loses", loses(entry.leak(), job.units())));
    lines.add(new Answer("It costs in a year", cost(entry)));
    lines.add(new Answer("To mend it", repair(entry)));
    return lines;
  }

  private static String round(LeakLedger.Round round, Payback together) {
    String left = round.leftOut().isEmpty()
        ? ""
        : "; left out, as their flow or the cost of the repair is not known: "
            + String.join(", ", round.leftOut());
    return "cost " + together.cost().format(2) + " and save "
        + money(together.leastSaved(), Optional.of(together.mostSaved()))
        + " a year: paid back in " + together.inWords() + left;
  }

  private static String ofState(LeakJob job, LeakState state) {
    return job.ledger().leaks().stream()
        .filter(leak -> leak.state() == state)
        .map(Leak::tag)
        .collect(Collectors.joining(", "));
  }

  /** What several leaks lose or save; without a most where one is not measured. */
  private static String total(LeakLedger.Total total, UnitSystem units, String does) {
    String flow = total
        .most()
        .map(most -> flow(new Range<>(total.least(), most), units))
        .orElseGet(() -> "at least " + said(total.least(), units));
    String unknown = total.notMeasured().isEmpty()
        ? ""
        : "; no most can be told while these are not measured: "
            + String.join(", ", total.notMeasured());
    return flow + ", which " + does + " " + money(total.leastMoney(), total.mostMoney()) + " a year"
        + unknown;
  }

  static String money(Money least, Optional<Money> most) {
    if (most.isEmpty()) {
      return "at least " + least.format(0);
    }
    String first = least.format(0);
    String last = most.get().format(0);
    return first.equals(last) ? last : first.substring(0, first.indexOf(' ')) + " to " + last;
  }

  /** A flow between two, such as "4 to 6 scfm". */
  static String flow(Range<MassFlow> flow, UnitSystem units) {
    String least = said(flow.least(), units);
    String most = said(flow.most(), units);
    return least.equals(most) ? most : least.substring(0, least.indexOf(' ')) + " to " + most;
  }

  private static String said(MassFlow flow, UnitSystem units) {
    return units.say(
        FreeAirFlow.from(flow, units.either(ReferenceState.ANR, ReferenceState.SCFM_60F)));
  }

  static String rank(LeakLedger.Entry entry) {
    return entry.bestRank() == entry.worstRank()
        ? String.valueOf(entry.bestRank())
        : entry.bestRank() + " to " + entry.worstRank();
  }

  /** What a leak loses now and how that was found, or why nobody knows. */
  static String loses(Leak leak, UnitSystem units) {
    String method =
        leak.checked().map(check -> check.left().method()).orElse(leak.found().method());
    String before = leak.state() == LeakState.STILL_LEAKS
        ? leak.found().flow().map(flow -> ", before " + flow(flow, units)).orElse("")
        : "";
    return leak.flow()
        .map(flow -> flow(flow, units) + " (" + method + before + ")")
        .orElseGet(() -> "not known: "
            + leak.checked()
                .map(check -> check.left().notKnownBecause())
                .orElse(leak.found().notKnownBecause())
                .map(reason -> method.equals("not measured") ? reason : method + ", " + reason)
                .orElse("what it lost before the repair"));
  }

  static String cost(LeakLedger.Entry entry) {
    return entry
        .least()
        .map(least -> money(least.money(), entry.most().map(YearlyCost::money)))
        .orElse("not known");
  }

  static String repair(LeakLedger.Entry entry) {
    Leak leak = entry.leak();
    if (leak.state() == LeakState.TO_BE_CHECKED) {
      return "repaired on " + leak.repairedOn().orElseThrow() + ", to be checked again";
    }
    String cost =
        leak.repair().map(money -> "repair " + money.format(2)).orElse("repair not priced");
    String still = leak.checked()
        .map(check -> "checked on " + check.on() + " and still leaks, ")
        .orElse("");
    return still
        + cost
        + entry.payback().map(payback -> ", paid back in " + payback.inWords()).orElse("");
  }

  /** The tags of what is tight, with the day on which that was seen. */
  static List<String> done(LeakJob job) {
    return job.ledger().leaks().stream()
        .filter(leak -> leak.state() == LeakState.DONE)
        .map(leak -> leak.tag() + " (" + leak.place() + ", checked on "
            + leak.checked().orElseThrow().on() + ")")
        .toList();
  }

  /** Each test of the whole plant, what the ledger explains of it, and whether two tests agree. */
  static List<String> tests(LeakJob job) {
    if (job.tests().isEmpty()) {
      return List.of(
          "No test of the whole plant was told: whether these are all leaks nobody knows."
              + " Time the compressor while nothing is in use, or let the pressure fall.");
    }
    List<String> lines = new ArrayList<>();
    FreeAirFlow delivery = job.ledger().price().delivery();
    for (LeakJob.Test test : job.tests()) {
      Range<MassFlow> leak = test.result().leak();
      LeakLedger.Explained explained = job.ledger().against(test.result(), test.day());
      lines.add(test.name() + test.day().map(day -> " on " + day).orElse("") + ", "
          + test.result().method() + ": " + flow(leak, job.units()) + " at "
          + job.units().sayBoth(test.result().at()) + ", "
          + percent(leak.least(), leak.most(), delivery.massFlow())
          + " of what the compressor delivers. " + explained.inWords()
          + " Not explained: " + flow(explained.missing(), job.units()) + ".");
    }
    for (int i = 1; i < job.tests().size(); i++) {
      Range<MassFlow> first = job.tests().get(0).result().leak();
      Range<MassFlow> other = job.tests().get(i).result().leak();
      if (other.least().compareTo(first.most()) > 0 || first.least().compareTo(other.most()) > 0) {
        lines.add(job.tests().get(0).name() + " and " + job.tests().get(i).name()
            + " do not agree within their errors: unless leaks were repaired in between, one of"
            + " them, or what it rests on, is wrong.");
      }
    }
    return lines;
  }

  private static String percent(MassFlow least, MassFlow most, MassFlow whole) {
    long first = Math.round(100.0 * least.kilogramsPerSecond() / whole.kilogramsPerSecond());
    long last = Math.round(100.0 * most.kilogramsPerSecond() / whole.kilogramsPerSecond());
    return first == last ? last + " %" : first + " to " + last + " %";
  }

  /** What the figures rest on, and where they end. */
  static List<String> notes(LeakJob job) {
    LeakLedger ledger = job.ledger();
    List<String> notes = new ArrayList<>();
    notes.add("Costs are those of all the air that leaks, by the plant's own figures: "
        + ledger.price().loaded().format(org.airfit.quantity.PowerUnit.KILOWATT) + " for "
        + job.units().say(ledger.price().delivery()) + ", "
        + ledger.price().time().toHours() + " h a year, "
        + ledger.price().perKilowattHour().shown() + " per kWh. A repair saves less where the"
        + " compressor goes on taking power unloaded; paybacks take that off.");
    notes.add(
        "Each flow is a range that holds what was told, with its errors. The leaks stand in the"
            + " order of what they cost at least; a rank goes from the best to the worst that it"
            + " can be within the ranges of all, and a leak that nobody measured may be the"
            + " dearest.");
    boolean hasHole =
        ledger.leaks().stream().anyMatch(leak -> leak.found().method().equals("hole"));
    if (hasHole) {
      notes.add(
          "Holes are reckoned with all discharge coefficients published for their edge, at the"
              + " pressure in front of the hole. A bag measures better.");
    }
    boolean isHeard = ledger.leaks().stream()
        .anyMatch(leak ->
            leak.found().flow().isEmpty() && leak.found().method().startsWith("ultrasonic"));
    if (isHeard) {
      notes.add("An ultrasonic reading finds a leak and tells no flow: no published relation by"
          + " decibels gives its scatter.");
    }
    if (!job.tests().isEmpty()) {
      notes.add(
          "The tests of the whole plant hold if nothing was in use, no drain was open and every"
              + " leak is choked. Their bounds are for all errors that were told at once.");
    }
    return notes;
  }
}
