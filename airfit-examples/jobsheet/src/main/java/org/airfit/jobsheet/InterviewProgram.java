package org.airfit.jobsheet;

import java.io.BufferedReader;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.airfit.files.Disk;
import org.airfit.files.JobFile;
import org.airfit.files.Json;
import org.airfit.files.Printable;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.select.Interview;
import org.airfit.select.Rule;
import org.airfit.select.Subject;

/** Asks what a job file leaves open, one question at a time, and writes the job file with the answers. */
final class InterviewProgram {

  private static final String USAGE =
      "give a job file that may lack anything, if there is one, a catalogue, and the job file to write: interview"
          + " [START.json] CATALOGUE.json NEW-JOB.json";

  private InterviewProgram() {}

  static int run(String[] args, InputStream in, PrintStream out, PrintStream err) {
    if (args.length < 2 || args.length > 3) {
      err.println(USAGE);
      return CommandLine.WRONG_INPUT;
    }
    return CommandLine.run(new String[] {args[args.length - 1]}, USAGE, err, () -> {
      List<Path> files = new ArrayList<>();
      Path catalogue = CommandLine.path(args[args.length - 2], USAGE);
      Path place = CommandLine.path(args[args.length - 1], USAGE);
      files.add(catalogue);
      Map<String, Object> start = args.length == 3
          ? Disk.fields(CommandLine.path(args[0], USAGE), files)
          : new LinkedHashMap<>();
      Disk.requireOther(place, files);
      ShopCatalogue shop = Disk.catalogue(catalogue);
      JobReading reading = fields -> Disk.job(place, fields, new ArrayList<>());
      InterviewTalk talk = new InterviewTalk(
          reading, new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)), out);
      InterviewSoFar known =
          talk.run(InterviewSoFar.begin(start, seen(catalogue, place), shop, reading));
      write(place, known);
      tell(known, place, out);
    });
  }

  /** The catalogue as it is seen from the folder of the file to write. */
  private static String seen(Path catalogue, Path place) {
    Path folder = place.toAbsolutePath().normalize().getParent();
    Path whole = catalogue.toAbsolutePath().normalize();
    return folder == null || !whole.startsWith(whole.getRoot())
        ? whole.toString()
        : folder.relativize(whole).toString().replace('\\', '/');
  }

  /** A job that is whole is read back; of another, what is known is kept. */
  private static void write(Path place, InterviewSoFar file) throws WrongFileException {
    if (file.isWhole()) {
      Disk.writeJob(place, file.fields());
    } else {
      Disk.write(place, Json.write(JobFile.toObject(file.fields())));
    }
  }

  private static void tell(InterviewSoFar known, Path place, PrintStream out)
      throws WrongFileException {
    Interview talk = known.talk();
    Lines lines = new Lines();
    lines.line("");
    if (talk.refusal().isPresent()) {
      lines.wrapped("", talk.refusal().get());
    } else if (!known.isWhole()) {
      lines.wrapped("", "Nothing can be chosen before this is known:");
      known.missing().forEach(subject -> lines.wrapped("  - ", subject.question()));
    } else {
      JobSheet sheet = JobSheet.of(Disk.job(place));
      lines.wrapped("", asked(talk, sheet));
      inShort(lines, sheet);
    }
    notKnown(lines, known);
    lines.line("Written: " + Printable.line(place.toString()));
    out.print(lines);
  }

  /** Whether all was asked, in a sentence. */
  private static String asked(Interview talk, JobSheet sheet) {
    List<Rule> broken = talk.brokenWhateverIsAnswered();
    if (!broken.isEmpty()) {
      return "No one answer to what is left makes anything in the catalogue fit, so that no more is asked. Not met"
          + " whatever the answer: "
          + broken.stream().map(Rule::title).collect(Collectors.joining(", "))
          + ". Two answers together were not tried. What would have to change, and what comes nearest, stands on the sheet of the job.";
    }
    if (talk.next().isPresent()) {
      return "Not all was asked; this is what stands so far.";
    }
    if (sheet.selection().isEmpty()) {
      return "All was asked that is asked here. No parts are chosen before the plug is known: read"
          + " it again, or take atHand out of the file and tell the profile of the couplings.";
    }
    return isKnown(sheet)
        ? "All was asked that can change the proposal."
        : "All was asked that is asked here. What was not answered, and what is not known exactly"
            + " of what others take, of pipes and of parts that stay, was taken at its worst and"
            + " can change the proposal: measure it and write it into the file.";
  }

  /** Whether no number that this talk does not ask for is open. */
  private static boolean isKnown(JobSheet sheet) {
    return sheet.requirement().isExact()
        && sheet
            .selection()
            .map(selection -> selection.<Boolean>fold(
                fitting -> fitting.best().doubts().isEmpty(), nothing -> Boolean.TRUE))
            .orElse(true);
  }

  private static void inShort(Lines lines, JobSheet sheet) {
    for (Answer line : InWords.inShort(sheet)) {
      lines.wrapped(line.what() + ": ", line.answer());
    }
  }

  private static void notKnown(Lines lines, InterviewSoFar known) {
    List<Subject> open = known.stillToAsk();
    if (!open.isEmpty()) {
      lines.wrapped("", "Not known, and better asked before anything is connected:");
      open.forEach(subject -> lines.wrapped("  - ", subject.question()));
    }
  }
}
