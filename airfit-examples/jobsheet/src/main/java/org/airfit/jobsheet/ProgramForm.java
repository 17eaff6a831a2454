package org.airfit.jobsheet;

import java.util.List;
import java.util.Optional;

/**
 * A form in which the program is called, and what the help tells of it.
 *
 * @param word the word before the files; none for the sheet of a job
 * @param files what follows, such as "NETWORK.csv [PAGE.html]"
 * @param does what the program does with them, in one sentence
 * @param reads which file it reads, and the page of the documents that describes it
 * @param writes what it writes, and where
 * @param example the words of a call that works in a clone of the project
 */
record ProgramForm(
    String word, String files, String does, String reads, String writes, String example) {

  private static final String CALL = "java -jar airfit-jobsheet.jar ";
  private static final int WIDTH = 100;

  private static final String PAGE_BESIDE =
      "PAGE.html; without it a page in this folder, with the name of the file that is read";

  private static final String ENDS = """
        No file that is read is written over. Exit code 0: an answer was made; 2: something could not be used, and
        one line on the error output tells what.
      """;

  /** The sheet of a job, which needs no word. */
  static final ProgramForm JOB = new ProgramForm(
      "",
      "JOB.json [PAGE.html]",
      "Prints the sheet of a job, and writes it as a page to hand over and a page with its reasons.",
      "JOB.json, a job and the catalogue that it names (docs/job-file.md)",
      PAGE_BESIDE
          + "; the reasons and the working go into another page, whose name ends in -reasons.html",
      "airfit-examples/jobs/boatyard/weak-sander.json");

  /** All forms, in the order of the help. */
  static final List<ProgramForm> ALL = List.of(
      JOB,
      new ProgramForm(
          "interview",
          "[START.json] CATALOGUE.json NEW-JOB.json",
          "Asks what a job needs, one question at a time, and writes the job file.",
          "CATALOGUE.json, the parts of a shop, and START.json, a job file that may lack anything"
              + " (docs/interview.md)",
          "NEW-JOB.json, which is a job file for the sheet",
          "airfit-examples/jobs/boatyard/catalogue.json job.json"),
      new ProgramForm(
          "network",
          "NETWORK.csv [PAGE.html]",
          "Prints the pressure at each drop of a network, and writes it as a page.",
          "NETWORK.csv, the pipes, supplies and drops of a network (docs/network-file.md)",
          PAGE_BESIDE,
          "airfit-examples/networks/ferry-lane-ring.csv"),
      new ProgramForm(
          "day",
          "DAY.json [PAGE.html]",
          "Prints what the air of a plant does over a day, and writes it as a page.",
          "DAY.json, compressors, receivers and what takes air, hour by hour (docs/day-file.md)",
          PAGE_BESIDE,
          "airfit-examples/days/lock-street/smithy.json"),
      new ProgramForm(
          "diagnosis",
          "DIAGNOSIS.json [PAGE.html]",
          "Tells what is wrong in a run by readings of its gauges, and writes it as a page.",
          "DIAGNOSIS.json, a run and what its gauges read (docs/diagnosis-file.md)",
          PAGE_BESIDE,
          "airfit-examples/diagnoses/saddler-lane/slow-grinder.json"),
      new ProgramForm(
          "leaks",
          "LEDGER.csv [PAGE.html] [NEW.csv]",
          "Prints what the leaks of a ledger cost and which repairs pay first, and writes a page to hang up.",
          "LEDGER.csv, a leak in each row (docs/leak-ledger-file.md)",
          PAGE_BESIDE + "; NEW.csv, the ledger with what was computed, if it is named",
          "airfit-examples/jobs/joinery/leaks.csv"),
      new ProgramForm(
          "inventory",
          "INVENTORY.json [PAGE.html]",
          "Tells which coupling profile to keep, what to change in which order, and which wrong pairs can be made"
              + " on the way.",
          "INVENTORY.json, the couplings of a shop and a catalogue (docs/inventory-file.md)",
          PAGE_BESIDE,
          "airfit-examples/shops/weir-street/inventory.json"),
      new ProgramForm(
          "pricelist",
          "CHECK.json [PAGE.html]",
          "Lists the faults of a price list and what it lacks for the jobs that come, and writes it as a page.",
          "CHECK.json, a price list and the jobs that come (docs/price-list-file.md)",
          PAGE_BESIDE,
          "airfit-examples/shops/canal-row/check.json"),
      new ProgramForm(
          "card",
          "JOB.json [PAGE.html]",
          "Prints the answers of a job as cards to follow with pencil and ruler: what arrives at the tool, which"
              + " thread and which plug it is, each with how far it can be from the exact answer.",
          "JOB.json, a job and the catalogue that it names (docs/job-file.md, docs/pencil-card.md)",
          PAGE_BESIDE,
          "airfit-examples/jobs/boatyard/weak-sander.json"),
      new ProgramForm(
          "water",
          "WATER.json [PAGE.html]",
          "Tells where water falls out of compressed air, which filters and dryers reach the purity asked for, and"
              + " what clogged elements cost.",
          "WATER.json, the air and its treatment (docs/water-file.md)",
          PAGE_BESIDE,
          "airfit-examples/treatments/chapel-yard/print-works.json"),
      new ProgramForm(
          "joint",
          "END END",
          "Tells whether two ends go together, and what goes between them where they do not.",
          "no file; each end in quotation marks, a size, its thread and male or female",
          "no file",
          "\"1/2 NPT male\" \"1/4 NPT female\""),
      new ProgramForm(
          "set",
          "SET.csv|SET.json [OUT.csv|OUT.json|PAGE.html] [A4|Letter]",
          "Checks a reference set of plugs, turns it into the other form, or draws it to true scale.",
          "SET.csv or SET.json, the sizes of plugs that a shop has measured (docs/reference-set-file.md)",
          "OUT.csv, OUT.json or PAGE.html, if one is named",
          "airfit-examples/sets/workshop.csv"));

  /** The form that a word calls. */
  static Optional<ProgramForm> named(String word) {
    return ALL.stream()
        .filter(form -> !form.word.isEmpty() && form.word.equals(word))
        .findFirst();
  }

  /** How the form is called, behind the name of the program: its word and its files. */
  String call() {
    return word.isEmpty() ? files : word + " " + files;
  }

  /** All of it: what the form reads and writes, and an example. */
  String help() {
    StringBuilder out = new StringBuilder(CALL).append(call()).append("\n\n");
    wrapped(out, "  ", "  ", does);
    out.append('\n');
    wrapped(out, "  reads    ", "           ", reads);
    wrapped(out, "  writes   ", "           ", writes);
    out.append("  example  ").append(CALL);
    out.append(word.isEmpty() ? "" : word + " ").append(example).append("\n\n");
    return out.append(ENDS).toString();
  }

  /** What the program tells of itself: each form in a sentence. */
  static String helpOfAll() {
    StringBuilder out = new StringBuilder(CALL).append("...\n\n");
    for (ProgramForm form : ALL) {
      out.append("  ").append(form.call()).append('\n');
      wrapped(out, "      ", "      ", form.does);
    }
    return out.append("""
          --help, -h
              prints this; behind a word, such as "network --help", what that form reads and writes, with an
              example; behind a job file the same for the sheet of a job
          --version
              prints the version

        """).append(ENDS).toString();
  }

  private static void wrapped(StringBuilder out, String first, String further, String text) {
    StringBuilder line = new StringBuilder(first);
    boolean begun = false;
    for (String word : text.split(" ", -1)) {
      if (begun && line.length() + 1 + word.length() > WIDTH) {
        out.append(line).append('\n');
        line = new StringBuilder(further);
        begun = false;
      }
      line.append(begun ? " " : "").append(word);
      begun = true;
    }
    out.append(line).append('\n');
  }
}
