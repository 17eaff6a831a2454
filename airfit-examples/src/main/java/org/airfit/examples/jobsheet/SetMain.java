package org.airfit.examples.jobsheet;

import java.io.FileDescriptor;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.airfit.drawing.PlugSheet;
import org.airfit.plug.BenchPath;
import org.airfit.plug.Identifier;
import org.airfit.plug.Instrument;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.Separation;
import org.airfit.plug.UniversalSocket;

/** Checks a reference set file, says what it can tell apart and what to measure first, and writes it in the other form or as a page. */
public final class SetMain {

  private static final double RISK = 0.01;

  private static final String USAGE =
      "give a set file, and what to write if anything: SET.csv|SET.json [OUT.csv|OUT.json|PAGE.html]";

  private SetMain() {}

  /**
   * Runs the program; exit code 0 if the set is good, 2 if a file could not be used.
   *
   * @param args the set file, and a file to write: .csv or .json for the set, .html for its sheet to true scale
   */
  public static void main(String[] args) {
    System.exit(run(args, Main.terminal(FileDescriptor.out), Main.terminal(FileDescriptor.err)));
  }

  static int run(String[] args, PrintStream out, PrintStream err) {
    return Main.run(args, USAGE, err, () -> {
      ReferenceSet set = ReferenceSetFile.read(Main.path(args[0], USAGE));
      if (args.length == 2) {
        write(Main.path(args[1], USAGE), set);
      }
      out.print(text(set));
      if (args.length == 2) {
        out.println("Written: " + args[1]);
      }
    });
  }

  private static void write(Path path, ReferenceSet set) throws WrongFileException {
    String name = path.toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".html")) {
      Main.write(path, PlugSheet.of(set, PlugSheet.Paper.A4).html());
    } else if (name.endsWith(".csv") || name.endsWith(".json")) {
      ReferenceSetFile.write(path, set);
    } else {
      throw new WrongFileException(path.toString(), "", "must end in .csv, .json or .html");
    }
  }

  private static String text(ReferenceSet set) {
    StringBuilder out = new StringBuilder(set.toString()).append("\n\n");
    for (PlugProfile profile : set.profiles()) {
      out.append(profile.id())
          .append(": ")
          .append(profile.displayName())
          .append(", ")
          .append(profile.provenance())
          .append("; ")
          .append(profile.dimensions().size())
          .append(" dimensions\n");
    }
    for (UniversalSocket socket : set.sockets()) {
      out.append("socket ")
          .append(socket.name())
          .append(" takes ")
          .append(String.join(", ", socket.profileIds()))
          .append('\n');
    }
    out.append("\nWhich pairs can be told apart\n");
    List<Separation> pairs = Separation.within(set, Instrument.DIGITAL_CALIPER);
    pairs.forEach(pair -> out.append("  ").append(pair.inWords(RISK)).append('\n'));
    if (pairs.isEmpty()) {
      out.append("  There is one profile only.\n");
    }
    return out.append('\n')
        .append(BenchPath.of(Identifier.of(set)))
        .append('\n')
        .toString();
  }
}
