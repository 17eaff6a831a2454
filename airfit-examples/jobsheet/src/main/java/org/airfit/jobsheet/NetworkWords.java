package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.files.NetworkJob;
import org.airfit.network.BranchFlow;
import org.airfit.network.NetworkResult;
import org.airfit.quantity.PressureDrop;

/** The sentences of a network sheet that text and page share. */
final class NetworkWords {

  private static final PressureDrop HIGH = PressureDrop.ofPascals(1.0e5);

  private NetworkWords() {}

  /** The whole sheet in a few lines. */
  static List<Answer> inShort(NetworkSheet sheet) {
    List<Answer> lines = new ArrayList<>();
    sheet
        .all()
        .fold(
            solved -> {
              List<NetworkSheet.DropAnswer> answers = sheet.drops();
              List<NetworkSheet.DropAnswer> lacking =
                  answers.stream().filter(answer -> !answer.isEnough()).toList();
              NetworkSheet.DropAnswer worst = sheet.weakest().orElseThrow();
              lines.add(new Answer(
                  "All at once",
                  (lacking.isEmpty()
                          ? "all " + answers.size() + " drops have what they need. "
                          : "too little at " + lacking.size() + " of " + answers.size() + " drops: "
                              + names(lacking) + ". ")
                      + "Weakest is " + worst.drop().name() + " with "
                      + sheet.amounts().pressure(worst.flow().atTool()) + ", needed "
                      + sheet.amounts().pressure(worst.drop().needs()) + "."));
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
              lines.add(new Answer("As they run", usual(answers)));
              lines.add(new Answer(
                  "To change",
                  sheet.improvements().isEmpty()
                      ? nothing(sheet)
                      : sentence(
                          sheet, sheet.improvements().get(0), worst.drop().name())));
              List<NetworkSheet.DropAnswer> high = answers.stream()
                  .filter(answer -> -answer.lack() > HIGH.pascals())
                  .toList();
              if (!high.isEmpty()) {
                lines.add(new Answer(
                    "Set down",
                    "more than " + sheet.amounts().threshold(HIGH) + " above the need at "
                        + names(high) + ": a regulator at the drop spares air and tool."));
              }
              List<String> must = sheet.closures().stream()
                  .filter(c -> !c.serves())
                  .map(NetworkSheet.Closure::pipe)
                  .toList();
              lines.add(new Answer(
                  "For repair",
                  must.isEmpty()
                      ? "any one main may be closed with all tools running."
                      : "with all tools running any one main may be closed but "
                          + String.join(", ", must) + "."));
              return lines;
            },
            none -> {
              lines.add(new Answer("No answer", none.reason()));
              return lines;
            });
    return lines;
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

  private static Answer notAllowed(NetworkSheet.Forbidden forbidden) {
    String at = forbidden.drops().isEmpty() ? "" : " at " + String.join(", ", forbidden.drops());
    return new Answer(
        "Not allowed",
        forbidden.ruling().rule().title() + at + ": "
            + forbidden.ruling().rule().demand() + " " + forbidden.ruling().reason());
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

  private static String usual(List<NetworkSheet.DropAnswer> answers) {
    List<NetworkSheet.DropAnswer> lacking = answers.stream()
        .filter(answer -> answer
            .usual()
            .filter(pressure -> pressure.compareTo(answer.drop().needs()) < 0)
            .isPresent())
        .toList();
    return "by their use factors, drawn " + NetworkSheet.TRIALS + " times, "
        + (lacking.isEmpty()
            ? "every drop has what it needs in 95 % of its running time or more."
            : "short in more than 5 % of their running time: " + names(lacking) + ".");
  }

  private static String names(List<NetworkSheet.DropAnswer> answers) {
    return answers.stream().map(answer -> answer.drop().name()).collect(Collectors.joining(", "));
  }

  /** Why no change is proposed. */
  static String nothing(NetworkSheet sheet) {
    return sheet.drops().stream().allMatch(NetworkSheet.DropAnswer::isEnough)
        ? "nothing: no drop is short."
        : "no single change cures what the weakest drop lacks, or brings a quarter of it: change several, or the"
            + " supply.";
  }

  /** A change to a network and what solving it again gives, in a sentence. */
  static String sentence(NetworkSheet sheet, NetworkSheet.Improvement improvement, String weakest) {
    return improvement.what() + " gives " + weakest + " "
        + sheet.amounts().loss(PressureDrop.ofPascals(improvement.pascals())) + " more"
        + (improvement.lackAfter() <= 0.0
            ? ", which is enough for every drop."
            : ", not enough by itself.");
  }
}
