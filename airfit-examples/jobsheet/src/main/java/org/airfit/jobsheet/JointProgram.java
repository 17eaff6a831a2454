package org.airfit.jobsheet;

import java.io.PrintStream;
import org.airfit.files.Printable;
import org.airfit.joint.Mating;
import org.airfit.quantity.QuantityFormatException;

/** Tells whether two ends go together, and what goes between them where they do not. */
final class JointProgram {

  private static final String USAGE =
      "give two ends, each in quotation marks, such as \"1/2 NPT male\" \"1/4 NPT female\": joint END END";

  private JointProgram() {}

  static int run(String[] args, PrintStream out, PrintStream err) {
    if (args.length != 2) {
      err.println(USAGE);
      return CommandLine.WRONG_INPUT;
    }
    try {
      tell(args[0], args[1], out);
      return 0;
    } catch (QuantityFormatException e) {
      err.println(Printable.line(String.valueOf(e.getMessage())));
      return CommandLine.WRONG_INPUT;
    }
  }

  private static void tell(String one, String other, PrintStream print) {
    Lines out = new Lines();
    JointAnswer answer = JointAnswer.of(one, other);
    answer.remarks().forEach(remark -> out.wrapped("", remark));
    out.wrapped("", answer.mating().inWords());
    answer
        .mating()
        .seal()
        .ifPresent(seal -> out.wrapped("", "Kept tight by " + seal.label() + "."));
    if (!answer.chain().adapters().isEmpty()) {
      out.line("");
      out.line("The joints with it:");
      for (Mating joint : answer.chain().matings()) {
        out.wrapped("  - ", joint.inWords());
        joint.seal().ifPresent(seal -> out.wrapped("    ", "Kept tight by " + seal.label() + "."));
      }
      answer.toAsk().forEach(ask -> out.wrapped("  ", ask));
    }
    if (answer.isJoined()) {
      out.line("");
      out.wrapped("", "To buy beside the parts: " + answer.toBuy() + ".");
      answer.chain().assembly().ifPresent(order -> out.wrapped("", "To put it together: " + order));
    }
    if (!answer.cautions().isEmpty()) {
      out.line("");
      out.line("Before anyone connects this");
      answer.cautions().forEach(caution -> out.wrapped("  - ", caution.toString()));
    }
    print.print(out);
  }
}
