package org.airfit.jobsheet;

import java.io.PrintStream;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.files.Printable;
import org.airfit.joint.Chain;
import org.airfit.joint.ChainVerdict;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.joint.Seal;
import org.airfit.joint.StandardAdapter;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.safety.Caution;

/** Tells whether two ends go together, and what goes between them where they do not. */
final class JointProgram {

  private static final String USAGE =
      "give two ends, each in quotation marks: joint \"1/2 NPT male\" \"1/4 NPT female\"";

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

  /** What is bought for the joints of a chain beside its parts; one roll or tube of sealant does for all joints. */
  private static String items(Chain<StandardAdapter> chain) {
    Map<String, Integer> items = new LinkedHashMap<>();
    for (Mating joint : chain.matings()) {
      boolean isSealant =
          joint.seal().filter(seal -> seal == Seal.THREAD_SEALANT).isPresent();
      joint
          .sealItem()
          .ifPresent(item -> items.merge(item, 1, isSealant ? Math::max : Integer::sum));
      joint.retainer().ifPresent(item -> items.merge(item, 1, Integer::sum));
    }
    return items.isEmpty()
        ? "nothing"
        : items.entrySet().stream()
            .map(item -> (item.getValue() == 1 ? "" : item.getValue() + " × ") + item.getKey())
            .collect(Collectors.joining("; "));
  }

  private static void tell(String one, String other, PrintStream print) {
    Lines out = new Lines();
    Mating mating = Mating.of(End.parse(one), End.parse(other));
    for (String typed : List.of(one, other)) {
      End.remarkOn(typed).ifPresent(remark -> out.wrapped("", typed.strip() + ": " + remark + "."));
    }
    out.wrapped("", mating.inWords());
    mating.seal().ifPresent(seal -> out.wrapped("", "Kept tight by " + seal.label() + "."));
    Chain<StandardAdapter> chain = Chain.between(mating.one(), mating.other());
    Set<Caution> cautions = new LinkedHashSet<>(mating.cautions());
    if (!chain.adapters().isEmpty()) {
      out.line("");
      out.line("The joints with it:");
      for (Mating joint : chain.matings()) {
        out.wrapped("  - ", joint.inWords());
        joint.seal().ifPresent(seal -> out.wrapped("    ", "Kept tight by " + seal.label() + "."));
        cautions.addAll(joint.cautions());
      }
      cautions.addAll(chain.cautions());
      out.wrapped(
          "  ",
          "The adapter must be rated for the pressure and suit the place: ask its maker. Its bore narrows"
              + " the way.");
    }
    if (chain.verdict() != ChainVerdict.NOT_JOINED) {
      out.line("");
      out.wrapped("", "To buy beside the parts: " + items(chain) + ".");
      chain.assembly().ifPresent(order -> out.wrapped("", "To put it together: " + order));
    }
    if (!cautions.isEmpty()) {
      out.line("");
      out.line("Before anyone connects this");
      cautions.forEach(caution -> out.wrapped("  - ", caution.toString()));
    }
    print.print(out);
  }
}
