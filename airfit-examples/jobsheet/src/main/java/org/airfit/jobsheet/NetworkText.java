package org.airfit.jobsheet;

import org.airfit.line.PipeVelocity;
import org.airfit.quantity.MassFlow;

/** The sheet of a network as plain text, with the working. */
public final class NetworkText {

  private final Lines out = new Lines();

  private NetworkText() {}

  /**
   * Writes the text.
   *
   * @param sheet what is answered
   * @return lines, the working last
   */
  public static String of(NetworkSheet sheet) {
    NetworkText text = new NetworkText();
    text.write(sheet);
    return text.out.toString();
  }

  /**
   * Tells the answer in a sentence or two.
   *
   * @param sheet what is answered
   * @return whether every drop has enough with all tools running, which is weakest, and what a safety rule forbids; of
   *     a network without a solution, why
   */
  public static String headline(NetworkSheet sheet) {
    return NetworkWords.headline(sheet);
  }

  /** What is longer than a line goes on under its first word. */
  private void line(String text) {
    String words = text.replaceFirst("^ *(- )?", "");
    out.wrapped(text.substring(0, text.length() - words.length()), words);
  }

  private void heading(String text) {
    out.heading(text);
  }

  private void write(NetworkSheet sheet) {
    out.line("NETWORK  " + sheet.job().title());
    line("for " + sheet.job().customer());
    heading("In short");
    NetworkWords.inShort(sheet).forEach(line -> line(line.what() + ": " + line.answer()));
    NetworkWords.checked(sheet).ifPresent(checked -> line("Checked: " + checked));
    heading("At the drops, all tools running");
    for (DropAnswer answer : sheet.drops()) {
      line("  " + answer.drop().name() + ", " + answer.drop().tool() + ": "
          + answer.has(sheet.amounts()) + ", needs "
          + sheet.amounts().pressure(answer.drop().needs()) + ": " + answer.verdict() + "; "
          + free(sheet, answer)
          + answer
              .usual()
              .filter(usual -> answer.isTold())
              .map(usual ->
                  "; in 95 % of its running time at least " + sheet.amounts().pressure(usual)
                      + (sheet.atBest().isPresent() ? " at worst" : ""))
              .orElse(""));
    }
    heading("On the way there");
    for (NetworkSheet.BranchAnswer branch : sheet.branches()) {
      line("  " + branch.flow().name() + ": " + flow(sheet, branch)
          + (branch.setsDown() ? ", set down by " : ", pressure loss ")
          + sheet.amounts().loss(branch.flow().drop())
          + branch
              .velocity()
              .map(velocity -> velocity(sheet, velocity))
              .map(v -> ", " + v)
              .orElse("")
          + (branch.flow().chokes() ? ", chokes" : "")
          + (branch.flow().unsettled() ? ", stands at Re 2300" : "")
          + (branch.flow().dead() ? ", dead leg" : "")
          + (branch.flow().standsBy() ? ", stands by" : "")
          + (branch.flow().shut() ? ", shut" : ""));
      branch.flow().warnings().forEach(warning -> line("      note: " + warning));
    }
    heading("What to change");
    NetworkWords.changes(sheet).forEach(change -> line("  - " + change));
    heading("One main closed for repair, all tools running");
    sheet.closures().forEach(closure -> line("  - " + closure.pipe() + ": " + closure.answer()));
    heading("Before anyone works on it");
    sheet.cautions().forEach(caution -> line("  - " + caution));
    heading("The working");
    out.add(sheet.all().working(sheet.job().units()).toText() + "\n");
    line("Pressures stand above an atmosphere of "
        + sheet.amounts().absolute(sheet.job().atmosphere()) + ".");
  }

  /** What a drop gets of the free air it wants. */
  static String free(NetworkSheet sheet, DropAnswer answer) {
    return "gets " + flow(sheet, answer.flow().massFlow()) + " of "
        + flow(sheet, answer.flow().wanted());
  }

  static String flow(NetworkSheet sheet, NetworkSheet.BranchAnswer branch) {
    return flow(sheet, branch.flow().massFlow());
  }

  private static String flow(NetworkSheet sheet, MassFlow flow) {
    return sheet.amounts().flow(flow);
  }

  static String velocity(NetworkSheet sheet, PipeVelocity velocity) {
    return sheet.amounts().velocity(velocity.velocity()) + " ("
        + switch (velocity.verdict()) {
          case WITHIN -> "rule: at most ";
          case ABOVE -> "too fast, rule: at most ";
        }
        + sheet.amounts().velocity(velocity.duty().highest()) + ")";
  }
}
