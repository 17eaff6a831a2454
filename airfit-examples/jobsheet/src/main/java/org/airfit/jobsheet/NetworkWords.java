package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.files.NetworkJob;
import org.airfit.line.ConduitRange;
import org.airfit.network.BranchFlow;
import org.airfit.network.NetworkResult;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.working.UnitSystem;

/** The sentences of a network sheet that text and page share. */
final class NetworkWords {

  private static final PressureDrop HIGH = PressureDrop.ofPascals(1.0e5);

  private static final String NOTHING = "nothing: no drop is short.";

  private static final String NO_CHANGE = "no change of those tried brings 0.01 bar to ";

  /** Above so many drops their number is told in place of their names: our choice. */
  private static final int MANY = 5;

  private NetworkWords() {}

  /** The whole sheet in a few lines. */
  static List<Answer> inShort(NetworkSheet sheet) {
    List<Answer> lines = new ArrayList<>();
    sheet
        .all()
        .fold(
            solved -> {
              List<DropAnswer> answers = sheet.drops();
              List<DropAnswer> lacking =
                  answers.stream().filter(answer -> !answer.isEnough()).toList();
              List<DropAnswer> depending =
                  answers.stream().filter(DropAnswer::depends).toList();
              List<DropAnswer> surely =
                  lacking.stream().filter(answer -> !answer.depends()).toList();
              DropAnswer worst = sheet.weakest().orElseThrow();
              lines.add(new Answer(
                  "All at once",
                  (surely.isEmpty()
                          ? ""
                          : tooLittle(surely.size(), answers.size()) + names(surely) + ". ")
                      + (depending.isEmpty()
                          ? ""
                          : "it depends on what is not known "
                              + at(depending.size(), answers.size())
                              + names(depending) + ". ")
                      + (surely.isEmpty() && depending.isEmpty() ? enough(answers.size()) : "")
                      + "Weakest is " + worst.drop().name()
                      + " with "
                      + worst.has(sheet.amounts()) + ", needed "
                      + sheet.amounts().pressure(worst.drop().needs()) + "."
                      + withTheBest(sheet, lacking)
                      + beyondTheModel(solved)));
              sheet.forbidden().forEach(each -> lines.add(notAllowed(each)));
              if (!solved.choking().isEmpty()) {
                lines.add(new Answer(
                    "Chokes",
                    solved.choking().stream()
                            .map(BranchFlow::name)
                            .collect(Collectors.joining(", "))
                        + ": no more goes through, whatever the pressure behind."));
              }
              supplies(lines, sheet, solved);
              behindCurves(sheet, solved).ifPresent(lines::add);
              worst(sheet).ifPresent(lines::add);
              lines.add(new Answer("As they run", usual(sheet, answers)));
              lines.add(new Answer("To change", toChange(sheet)));
              List<DropAnswer> high = answers.stream()
                  .filter(answer -> -answer.lack() > HIGH.pascals())
                  .toList();
              if (!high.isEmpty()) {
                lines.add(new Answer(
                    "Set down",
                    "more than " + sheet.amounts().threshold(HIGH) + " above the need at "
                        + names(high) + ": a regulator at the drop spares air and tool."));
              }
              lines.add(new Answer("For repair", repair(sheet)));
              return lines;
            },
            none -> {
              lines.add(new Answer("No answer", none.reason()));
              return lines;
            });
    return lines;
  }

  /** That the numbers are worth no more than a first guess, where the air of a supply is outside its model. */
  private static String beyondTheModel(NetworkResult.Solved solved) {
    return solved.supplies().stream()
        .flatMap(given -> given.supply().still().caution().stream())
        .findFirst()
        .map(InWords::firstGuess)
        .orElse("");
  }

  /** What must be told first: whether every drop has enough, and what a rule forbids. */
  static String headline(NetworkSheet sheet) {
    return inShort(sheet).subList(0, 1 + sheet.forbidden().size()).stream()
        .map(line -> line.what() + ": " + line.answer())
        .collect(Collectors.joining(" "));
  }

  /** Which main may be closed: one with which no drop is short then. */
  private static String repair(NetworkSheet sheet) {
    List<String> must = sheet.closures().stream()
        .filter(closure -> !closure.serves())
        .map(NetworkSheet.Closure::pipe)
        .toList();
    String may = (sheet.atBest().isPresent() ? "with the worst of what is not known exactly " : "")
        + (must.isEmpty()
            ? "any one main may be closed with all tools running"
            : must.size() == sheet.closures().size()
                ? "no main may be closed with all tools running"
                : "with all tools running any one main may be closed but "
                    + String.join(", ", must));
    Map<String, List<String>> noFurther = new LinkedHashMap<>();
    sheet.closures().stream()
        .filter(NetworkSheet.Closure::noFurther)
        .forEach(closure -> noFurther
            .computeIfAbsent(closure.answer(), any -> new ArrayList<>())
            .add(closure.pipe()));
    if (noFurther.size() <= 2) {
      return may
          + noFurther.entrySet().stream()
              .map(each ->
                  "; with " + String.join(" or ", each.getValue()) + " closed " + each.getKey())
              .collect(Collectors.joining())
          + ".";
    }
    return may + "; no further drop falls short with one of these closed: "
        + noFurther.values().stream().flatMap(List::stream).collect(Collectors.joining(", "))
        + "; those that are short have still less then, or as little.";
  }

  /** What becomes of the drops with the best of what is not known exactly, where all is not. */
  private static String withTheBest(NetworkSheet sheet, List<DropAnswer> lacking) {
    if (sheet.lackingAtBest().isEmpty()) {
      return lacking.stream().anyMatch(DropAnswer::depends)
          ? " What a regulator holds behind the end of its curve is not told: it depends, see \"Not told\"."
          : "";
    }
    List<String> worst = lacking.stream().map(answer -> answer.drop().name()).toList();
    List<String> best = sheet.lackingAtBest().get();
    List<String> depends = worst.stream().filter(drop -> !best.contains(drop)).toList();
    List<String> newly = best.stream().filter(drop -> !worst.contains(drop)).toList();
    String with = " That is with the worst of what is not known exactly; with the best of it ";
    if (!depends.isEmpty() || !newly.isEmpty()) {
      return with
          + (depends.isEmpty() ? "" : "there is enough at " + String.join(", ", depends))
          + (depends.isEmpty() || newly.isEmpty() ? "" : ", and ")
          + (newly.isEmpty()
              ? ""
              : "too little at " + String.join(", ", newly) + ", as others take more")
          + ": it depends, see \"Not known exactly\".";
    }
    return with + (worst.isEmpty() ? "all have enough too." : "the same drops are short.");
  }

  /** The pipes and parts that are not known exactly: what was taken, and what they may be. */
  private static Optional<Answer> worst(NetworkSheet sheet) {
    List<String> said = new ArrayList<>();
    for (NetworkJob.Branch branch : sheet.job().branches()) {
      branch
          .told()
          .filter(told -> !told.isExact())
          .ifPresent(
              told -> said.add(branch.name() + ": " + worst(told, sheet.job().units())));
      branch
          .capacity()
          .filter(capacity -> !capacity.isExact())
          .ifPresent(capacity -> said.add(branch.name()
              + ": the least that its rating allows taken (" + capacity.assumption() + ")"));
      branch
          .regulator()
          .filter(regulator -> branch.isDroopUntold())
          .ifPresent(regulator ->
              said.add(branch.name() + ": droop of " + sheet.job().units().say(regulator.droop())
                  + " taken, may be down to none; nobody told it (common practice, no source)"));
    }
    return said.isEmpty()
        ? Optional.empty()
        : Optional.of(new Answer(
            "Not known exactly", String.join("; ", said) + ". The worst of each was taken."));
  }

  /** The regulators through which more flows than their makers' curves tell. */
  private static Optional<Answer> behindCurves(NetworkSheet sheet, NetworkResult.Solved solved) {
    List<String> behind = new ArrayList<>();
    for (NetworkJob.Branch branch : CurveEnds.regulators(sheet.job(), solved)) {
      MassFlow flow = solved.through(branch.name()).massFlow();
      branch
          .regulator()
          .flatMap(RegulatorElement::curve)
          .ifPresent(
              curve -> behind.add(branch.name() + " with " + sheet.amounts().flow(flow)
                  + " (its curve ends at "
                  + sheet.amounts().flow(curve.end().massFlow()) + ")"));
    }
    return behind.isEmpty()
        ? Optional.empty()
        : Optional.of(new Answer(
            "Not told",
            "what is held behind " + String.join(", ", behind)
                + ". It was reckoned as at the end of the curve, so what is behind has at most what is told here,"
                + " and may have far less: ask the maker, or look at a gauge."));
  }

  private static String worst(ConduitRange told, UnitSystem units) {
    List<String> words = new ArrayList<>();
    if (!told.least().bore().equals(told.most().bore())) {
      words.add("bore of " + units.saySmall(told.least().bore()) + " taken, may be up to "
          + units.saySmall(told.most().bore()));
    }
    if (!told.least().roughness().equals(told.most().roughness())) {
      words.add("roughness of " + roughness(told.least().roughness(), units)
          + " taken, may be down to " + roughness(told.most().roughness(), units));
    }
    if (told.least().fittingLoss() != told.most().fittingLoss()) {
      words.add("fittings with a K of " + Amounts.fixed(told.least().fittingLoss(), 1)
          + " taken, may be down to " + Amounts.fixed(told.most().fittingLoss(), 1));
    }
    return String.join(", ", words);
  }

  /** To a hundredth of a millimetre: a roughness is worth no more digits. */
  private static String roughness(Length roughness, UnitSystem units) {
    return units.either(
        roughness.format(LengthUnit.MILLIMETRE, 2), roughness.format(LengthUnit.INCH, 4));
  }

  private static String enough(int drops) {
    return switch (drops) {
      case 1 -> "the drop has what it needs. ";
      case 2 -> "both drops have what they need. ";
      default -> "all " + drops + " drops have what they need. ";
    };
  }

  private static String tooLittle(int lacking, int drops) {
    return "too little " + at(lacking, drops);
  }

  private static String at(int some, int drops) {
    return "at "
        + (drops == 1
            ? "the drop: "
            : some == drops ? "every drop: " : some + " of " + drops + " drops: ");
  }

  /** How far the answer is from what it was held against; empty where there is no answer. */
  static Optional<String> checked(NetworkSheet sheet) {
    return sheet
        .all()
        .fold(
            solved -> Optional.of(
                "Every law and every balance was evaluated at the answer; none is missed by more than "
                    + Amounts.powerAbove(solved.residual())
                    + " of the highest pressure or of the air supplied."),
            none -> Optional.empty());
  }

  private static Answer notAllowed(ForbiddenWork forbidden) {
    String at = forbidden.drops().isEmpty() ? "" : " at " + String.join(", ", forbidden.drops());
    return new Answer(
        "Not allowed",
        forbidden.ruling().rule().title() + at + ": "
            + forbidden.ruling().rule().demand() + " "
            + InWords.capital(forbidden.ruling().reason()));
  }

  /** What supplies do not give, and where no air flows. */
  private static void supplies(
      List<Answer> lines, NetworkSheet sheet, NetworkResult.Solved solved) {
    if (!solved.idleSupplies().isEmpty()) {
      boolean one = solved.idleSupplies().size() == 1;
      lines.add(
          new Answer(
              "Idle",
              solved.idleSupplies().stream()
                      .map(supply -> sheet.job().supplyAt(supply.node()))
                      .collect(Collectors.joining(", "))
                  + (one
                      ? " gives nothing: the network stands above its pressure, and its non-return valve is shut."
                      : " give nothing: the network stands above their pressures, and their non-return valves are shut.")));
    }
    solved.supplies().stream()
        .filter(supply -> supply.takenBack().kilogramsPerSecond() > 0.0)
        .forEach(supply -> lines.add(new Answer(
            "Flows back",
            sheet.amounts().flow(supply.takenBack())
                + " into " + sheet.job().supplyAt(supply.node())
                + ", which has no non-return valve: fit one.")));
    if (!solved.shut().isEmpty()) {
      lines.add(new Answer(
          "Shut",
          solved.shut().stream().map(BranchFlow::name).collect(Collectors.joining(", "))
              + ": more pressure stands behind than it lets through, and no air flows."));
    }
    for (int i = 0; i < sheet.job().leaks().size(); i++) {
      NetworkJob.Leak leak = sheet.job().leaks().get(i);
      lines.add(new Answer(
          "Leak",
          leak.name() + " at " + leak.junction() + " loses "
              + sheet
                  .amounts()
                  .flow(solved.tools().get(sheet.job().drops().size() + i).massFlow())
              + ", day and night: mend it."));
    }
    if (!solved.standingBy().isEmpty()) {
      lines.add(new Answer(
          "Standing by",
          solved.standingBy().stream().map(BranchFlow::name).collect(Collectors.joining(", "))
              + ": no air flows through while the supply beyond is idle."));
    }
    if (!solved.deadLegs().isEmpty()) {
      lines.add(new Answer(
          "Dead legs",
          solved.deadLegs().stream().map(BranchFlow::name).collect(Collectors.joining(", "))
              + ": no air flows through, and water may stand there."));
    }
  }

  private static String usual(NetworkSheet sheet, List<DropAnswer> answers) {
    List<DropAnswer> untold =
        answers.stream().filter(answer -> !answer.isTold()).toList();
    List<DropAnswer> lacking = answers.stream()
        .filter(DropAnswer::isTold)
        .filter(answer -> answer
            .usual()
            .filter(pressure -> pressure.compareTo(answer.drop().needs()) < 0)
            .isPresent())
        .toList();
    String drawn = "by their use factors, drawn " + NetworkSheet.TRIALS + " times, "
        + (sheet.atBest().isPresent() ? "with the worst of what is not known exactly, " : "");
    if (!untold.isEmpty()) {
      return drawn + "not told behind the end of a regulator's curve: " + names(untold)
          + (lacking.isEmpty()
              ? "."
              : "; short in more than 5 % of their running time: " + names(lacking) + ".");
    }
    return drawn
        + (lacking.isEmpty()
            ? "every drop has what it needs in 95 % of its running time or more."
            : "short in more than 5 % of their running time: " + names(lacking) + ".");
  }

  private static String names(List<DropAnswer> answers) {
    return answers.stream().map(answer -> answer.drop().name()).collect(Collectors.joining(", "));
  }

  /** The change to name first, in a sentence or two; before it, what is to be settled before anything is changed. */
  private static String toChange(NetworkSheet sheet) {
    if (sheet.changes().isNothing()) {
      return nothing(sheet);
    }
    Optional<String> first = settle(sheet);
    if (first.isEmpty()) {
      return change(sheet);
    }
    boolean isSettledBest = sheet.drops().stream().allMatch(DropAnswer::isEnoughAtBest);
    return first.get() + " With the worst of it: "
        + (isSettledBest ? "what is enough even then stands below." : change(sheet));
  }

  private static String nothing(NetworkSheet sheet) {
    return settle(sheet).orElse(NOTHING);
  }

  /** What to settle before anything is changed: where it depends on what is not known whether a drop is short. */
  private static Optional<String> settle(NetworkSheet sheet) {
    List<DropAnswer> depending =
        sheet.drops().stream().filter(DropAnswer::depends).toList();
    if (depending.isEmpty()) {
      return Optional.empty();
    }
    boolean isUntold = depending.stream().anyMatch(answer -> !answer.isTold());
    boolean isRange = sheet.atBest().isPresent();
    return Optional.of("settle first what is not known"
        + (isUntold ? ", see \"Not told\"" : "")
        + (isRange ? ", see \"Not known exactly\"" : "")
        + ": on that depends whether there is enough at " + names(depending) + ".");
  }

  private static String change(NetworkSheet sheet) {
    NetworkChanges changes = sheet.changes();
    Optional<NetworkChanges.Change> every =
        changes.forEvery().stream().filter(change -> !change.ofSupply()).findFirst();
    if (every.isPresent()) {
      return forEvery(every.get());
    }
    Optional<NetworkChanges.Change> together =
        changes.together().filter(NetworkChanges.Change::isEnoughForEvery);
    if (together.isPresent()) {
      return together(together.get());
    }
    if (changes.drops().size() + changes.more() == 1) {
      NetworkChanges.OfDrop drop = changes.drops().get(0);
      Optional<String> first = drop.first().map(change -> sentence(sheet, change, drop.drop()));
      if (first.isPresent()) {
        return first.get();
      }
    }
    return changes.forEvery().stream()
        .findFirst()
        .map(NetworkWords::forEvery)
        .orElseGet(() -> forEach(sheet));
  }

  private static String forEvery(NetworkChanges.Change change) {
    return changed(change) + ": then every drop has enough." + pressedMore(change);
  }

  /** What the first changes of all drops bring at once, be it enough or not. */
  private static String together(NetworkChanges.Change all) {
    return changed(all) + ": together they are enough for every drop." + harm(all);
  }

  /** The drops for which nothing is enough, or nothing that harms no other; and what the changes of the others do. */
  private static String forEach(NetworkSheet sheet) {
    NetworkChanges changes = sheet.changes();
    if (changes.drops().size() + changes.more() == 1) {
      NetworkChanges.OfDrop drop = changes.drops().get(0);
      if (!drop.isHarmAlone()) {
        return drop.best()
            .map(best -> tooLittle(sheet, drop, best))
            .orElseGet(() -> NO_CHANGE + drop.drop() + ".");
      }
    }
    List<String> nothing = new ArrayList<>();
    List<String> harmful = new ArrayList<>();
    List<String> enough = new ArrayList<>();
    for (NetworkChanges.OfDrop drop : changes.drops()) {
      if (drop.isHarmAlone()) {
        harmful.add("what is enough for " + drop.drop() + " " + does(drop) + ", see below");
      } else {
        (drop.first().isPresent() ? enough : nothing).add(drop.drop());
      }
    }
    List<String> said = new ArrayList<>();
    if (!nothing.isEmpty()) {
      said.add("no change tried is enough for " + String.join(", ", nothing));
    }
    said.addAll(harmful);
    if (!enough.isEmpty()) {
      said.add(
          nothing.isEmpty() && harmful.isEmpty()
              ? "each of " + String.join(", ", enough) + " has a change of its own below"
              : "what is enough for " + String.join(", ", enough) + " alone stands below");
    }
    changes.together().ifPresent(all -> said.add(tooLittleTogether(sheet, all)));
    if (changes.more() > 0) {
      said.add("drops that were not looked at alone: " + changes.more()
          + "; whether all these changes are enough together was not calculated");
    }
    return String.join("; ", said) + ".";
  }

  private static String tooLittleTogether(NetworkSheet sheet, NetworkChanges.Change all) {
    List<String> lacking = new ArrayList<>();
    if (!all.isEnough()) {
      lacking.add(sheet.weakest().orElseThrow().drop().name());
    }
    lacking.addAll(all.stillShort());
    lacking.addAll(all.newlyShort());
    return "together they are not enough: too little is left at " + String.join(", ", lacking);
  }

  /** What to change, each in a sentence: for every drop, then for each that is short; last what harms another drop. */
  static List<String> changes(NetworkSheet sheet) {
    NetworkChanges changes = sheet.changes();
    if (changes.isNothing()) {
      return List.of(nothing(sheet));
    }
    List<String> lines = new ArrayList<>();
    settle(sheet).ifPresent(first -> lines.add(first + " With the worst of it:"));
    String weakest = sheet.weakest().orElseThrow().drop().name();
    List<String> atSupply = new ArrayList<>();
    for (NetworkChanges.Change change : changes.forEvery()) {
      (change.ofSupply() ? atSupply : lines).add(sentence(sheet, change, weakest));
    }
    changes
        .together()
        .filter(NetworkChanges.Change::isEnoughForEvery)
        .ifPresent(all -> lines.add(together(all)));
    boolean isSupplyForEvery = !atSupply.isEmpty();
    List<String> harmful = new ArrayList<>();
    for (NetworkChanges.OfDrop drop : changes.drops()) {
      for (NetworkChanges.Change change : drop.single()) {
        if (change.isHarm()) {
          harmful.add(sentence(sheet, change, drop.drop()));
        } else if (!change.ofSupply()) {
          lines.add(sentence(sheet, change, drop.drop()));
        } else if (!isSupplyForEvery) {
          atSupply.add(sentence(sheet, change, drop.drop()));
        }
      }
      drop.two()
          .ifPresent(two -> (two.isHarm() ? harmful : lines)
              .add(before(drop, isSupplyForEvery) + sentence(sheet, two, drop.drop())));
      drop.best().ifPresent(best -> lines.add(tooLittle(sheet, drop, best)));
      if (changes.forEvery().isEmpty()
          && drop.first().or(drop::best).isEmpty()
          && !drop.isHarmAlone()) {
        lines.add(NO_CHANGE + drop.drop() + ".");
      }
    }
    changes
        .together()
        .filter(all -> !all.isEnoughForEvery())
        .ifPresent(all -> lines.add("the first change of each drop at once, " + changed(all) + ": "
            + tooLittleTogether(sheet, all) + "." + forbidden(all)
            + pressedMore(all)));
    lines.addAll(atSupply);
    lines.addAll(harmful);
    if (changes.more() > 0) {
      lines.add("drops that are short beside these, and lack less: " + changes.more()
          + "; change what lacks most first, and calculate again.");
    }
    raising(sheet).ifPresent(lines::add);
    return List.copyOf(lines);
  }

  /** What goes with a change that raises the pressure, as the last of the changes. */
  static Optional<String> raising(NetworkSheet sheet) {
    return sheet.changes().raises()
        ? Optional.of(
            "a higher setting or supply raises the pressure at every tool behind it: ask their makers first"
                + " what they allow, and look at the ratings of all that is in the line.")
        : Optional.empty();
  }

  /** Why two changes are told. */
  private static String before(NetworkChanges.OfDrop drop, boolean isSupplyForEvery) {
    boolean isHarm = drop.single().stream().anyMatch(NetworkChanges.Change::isHarm);
    boolean isSupply = isSupplyForEvery
        || drop.single().stream().anyMatch(change -> change.ofSupply() && !change.isHarm());
    String but = isSupply ? " but at the supply" : "";
    return isHarm
        ? "every single change" + but + " that is enough for " + drop.drop() + " " + does(drop)
            + ", these two are enough without that: "
        : "no single change" + but + " is enough for " + drop.drop() + ", these two are: ";
  }

  /** What the changes do that are enough for a drop and harm another. */
  private static String does(NetworkChanges.OfDrop drop) {
    List<NetworkChanges.Change> all =
        Stream.concat(drop.single().stream(), drop.two().stream()).toList();
    List<String> does = new ArrayList<>();
    if (all.stream().anyMatch(change -> !change.newlyShort().isEmpty())) {
      does.add("leaves too little at another drop");
    }
    if (all.stream().anyMatch(change -> !change.newlyForbidden().isEmpty())) {
      does.add("is not allowed");
    }
    return String.join(" or ", does);
  }

  private static String changed(NetworkChanges.Change change) {
    return String.join("; and ", change.what());
  }

  private static String gives(NetworkSheet sheet, NetworkChanges.Change change, String drop) {
    return changed(change) + (change.what().size() > 1 ? " give " : " gives ") + drop + " "
        + sheet.amounts().loss(PressureDrop.ofPascals(change.pascals())) + " more";
  }

  /** A change to a network and what solving it again gives, in a sentence. */
  private static String sentence(NetworkSheet sheet, NetworkChanges.Change change, String drop) {
    return gives(sheet, change, drop) + ", which is enough"
        + (change.isEnoughForEvery()
            ? (sheet.job().drops().size() == 1 ? "" : " for every drop")
            : change.stillShort().isEmpty() ? "" : forIt(sheet, change))
        + "."
        + harm(change)
        + (change.newCautions().isEmpty()
            ? ""
            : " It brings a caution with it: " + String.join(", ", change.newCautions()) + ".")
        + highest(sheet, change);
  }

  /** That a change is enough for a drop but not for every one that is short. */
  private static String forIt(NetworkSheet sheet, NetworkChanges.Change change) {
    int others = sheet.changes().drops().size() + sheet.changes().more() - 1;
    List<String> still = change.stillShort();
    return still.size() == others
        ? " for it alone"
        : " for it, not for "
            + (still.size() > MANY ? still.size() + " others" : String.join(", ", still));
  }

  /** What is worse after a change than now. */
  private static String harm(NetworkChanges.Change change) {
    return (change.newlyShort().isEmpty()
            ? ""
            : " But then too little is left at " + String.join(", ", change.newlyShort())
                + (change.newlyShort().size() == 1
                    ? ", which has enough now."
                    : ", which have enough now."))
        + forbidden(change)
        + pressedMore(change);
  }

  private static String forbidden(NetworkChanges.Change change) {
    return change.newlyForbidden().isEmpty()
        ? ""
        : " But then it is not allowed any more: " + String.join(", ", change.newlyForbidden())
            + ".";
  }

  private static String pressedMore(NetworkChanges.Change change) {
    return change.pressedMore().isEmpty()
        ? ""
        : (change.what().size() > 1 ? " But they give" : " But it gives")
            + " still more pressure to " + String.join(", ", change.pressedMore())
            + ", where the pressure is not allowed already.";
  }

  /** The highest pressure after a change, where that is another than what the supply is said to hold. */
  private static String highest(NetworkSheet sheet, NetworkChanges.Change change) {
    return change
        .highest()
        .map(sheet.amounts()::pressure)
        .filter(words -> change.what().stream().noneMatch(what -> what.contains(words)))
        .map(words -> " The highest pressure (cut-out) rises by as much, to " + words
            + " instead of " + sheet.amounts().pressure(sheet.job().highest()) + ".")
        .orElse("");
  }

  private static String tooLittle(
      NetworkSheet sheet, NetworkChanges.OfDrop drop, NetworkChanges.Change best) {
    if (best.isUntold()) {
      return "of no change tried it is told that it is enough for " + drop.drop()
          + ": a regulator in front of it works behind the end of its curve. Ask its maker what it holds there,"
          + " or take one whose curve goes so far.";
    }
    return "no single change is enough for " + drop.drop()
        + ", nor are two of those that bring most: "
        + gives(sheet, best, drop.drop()) + ", and "
        + sheet.amounts().loss(PressureDrop.ofPascals(best.lackAfter())) + " are still missing."
        + harm(best);
  }
}
